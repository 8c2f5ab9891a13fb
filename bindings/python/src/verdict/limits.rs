//! `reckohm.verdict.Limits`.

use pyo3::prelude::*;
use reckohm::verdict as core;

use crate::errors::Failure;
use crate::values::{Number, hash_of, shown};

/// Tolerance limits of a resistance, both included (JCGM 106, 3.3).
///
/// Parameters
/// ----------
/// lower_ohm, upper_ohm : float
///     The two ends; minus infinity below or infinity above leaves that end open.
///
/// Raises
/// ------
/// RangeError
///     NaN, or an infinity at the wrong end.
/// ContradictionError
///     A lower end above the upper one.
/// CountError
///     Both ends open.
///
/// Examples
/// --------
/// >>> from reckohm.verdict import Limits
/// >>> limits = Limits.from_tolerance(4700, 0.05)
/// >>> limits
/// Limits(4465.0, 4935.0)
/// >>> 4935.0 in limits
/// True
#[pyclass(frozen, eq, from_py_object, module = "reckohm.verdict")]
#[derive(Clone, Copy, PartialEq)]
pub struct Limits(pub core::Limits);

#[pymethods]
impl Limits {
    #[classattr]
    fn __match_args__() -> (&'static str, &'static str) {
        ("lower_ohm", "upper_ohm")
    }

    #[new]
    fn new(lower_ohm: Number, upper_ohm: Number) -> Result<Limits, Failure> {
        Ok(Limits(core::Limits::new(lower_ohm.0, upper_ohm.0)?))
    }

    /// An upper limit alone, in ohm: a contact, a fuse, a zero-ohm link.
    ///
    /// Examples
    /// --------
    /// >>> from reckohm.verdict import Limits
    /// >>> Limits.at_most(0.05)
    /// Limits.at_most(0.05)
    #[staticmethod]
    fn at_most(upper_ohm: Number) -> Result<Limits, Failure> {
        Ok(Limits(core::Limits::at_most(upper_ohm.0)?))
    }

    /// A lower limit alone, in ohm: the dark resistance of a photoresistor.
    ///
    /// Examples
    /// --------
    /// >>> from reckohm.verdict import Limits
    /// >>> Limits.at_least(1e6).upper_ohm
    /// inf
    #[staticmethod]
    fn at_least(lower_ohm: Number) -> Result<Limits, Failure> {
        Ok(Limits(core::Limits::at_least(lower_ohm.0)?))
    }

    /// Limits around a nominal value in ohm, from its tolerance as a fraction.
    ///
    /// Parameters
    /// ----------
    /// nominal_ohm : float
    ///     In (0, 1e15].
    /// tolerance : float
    ///     A fraction in (0, 1), not percent.
    ///
    /// Examples
    /// --------
    /// >>> from reckohm.verdict import Limits
    /// >>> Limits.from_tolerance(2260, 0.01)
    /// Limits(2237.4, 2282.6)
    #[staticmethod]
    fn from_tolerance(nominal_ohm: Number, tolerance: Number) -> Result<Limits, Failure> {
        Ok(Limits(core::Limits::from_tolerance(nominal_ohm.0, tolerance.0)?))
    }

    /// The lower end in ohm, minus infinity if it is open.
    #[getter]
    fn lower_ohm(&self) -> f64 {
        self.0.lower_ohm()
    }

    /// The upper end in ohm, infinity if it is open.
    #[getter]
    fn upper_ohm(&self) -> f64 {
        self.0.upper_ohm()
    }

    /// Whether this resistance in ohm lies within, both ends included; NaN never does.
    ///
    /// Examples
    /// --------
    /// >>> from reckohm.verdict import Limits
    /// >>> Limits(990, 1010).contains(1010)
    /// True
    fn contains(&self, ohm: Number) -> bool {
        self.0.contains(ohm.0)
    }

    fn __contains__(&self, ohm: Number) -> bool {
        self.0.contains(ohm.0)
    }

    fn __getnewargs__(&self) -> (f64, f64) {
        (self.0.lower_ohm(), self.0.upper_ohm())
    }

    fn __hash__(&self, py: Python<'_>) -> PyResult<isize> {
        hash_of(py, self.__getnewargs__())
    }

    pub(crate) fn __repr__(&self) -> String {
        let (lower, upper) = self.__getnewargs__();
        if lower.is_infinite() {
            format!("Limits.at_most({})", shown(upper))
        } else if upper.is_infinite() {
            format!("Limits.at_least({})", shown(lower))
        } else {
            format!("Limits({}, {})", shown(lower), shown(upper))
        }
    }
}
