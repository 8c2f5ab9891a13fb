//! `reckohm.preferred`.

use pyo3::prelude::*;
use pyo3::types::PyString;
use reckohm::preferred::{self as core, PreferredError};
use reckohm::verdict::Column;

use crate::errors::Failure;
use crate::formula::{Kernel, Refusal};
use crate::values::text_of;
use crate::vector::vector_functions;

/// A series by its name.
struct Series(core::Series);

impl Series {
    /// What stands for it among the numbers of a ufunc.
    fn code(&self) -> f64 {
        f64::from(self.0.count())
    }
}

impl<'a, 'py> FromPyObject<'a, 'py> for Series {
    type Error = PyErr;

    fn extract(name: Borrowed<'a, 'py, PyAny>) -> PyResult<Series> {
        let name = name.to_owned();
        let name = text_of(&name)?;
        Ok(Series(core::Series::from_name(&name).map_err(|error| Failure::from(error).in_text(name.as_bytes()))?))
    }
}

/// The series that a number stands for.
fn series_of(code: f64) -> Result<core::Series, PreferredError> {
    core::Series::from_count(code as u32).ok_or(PreferredError::UnknownSeries)
}

macro_rules! kernels {
    ($($kernel:ident = $double:path | $single:path $(, $into:path | $into_single:path)?;)+) => {
        $(struct $kernel;
        kernels!($kernel, f64, $double, core::check $(, $into)?);
        kernels!($kernel, f32, $single, core::check_f32 $(, $into_single)?);)+
    };
    ($kernel:ident, $real:ty, $function:path, $check:path $(, $into:path)?) => {
        impl Kernel<2, $real> for $kernel {
            const LEAST_A_THREAD: usize = 1 << 14;

            fn evaluate([ohm, series]: [$real; 2]) -> Result<$real, Refusal> {
                Ok(<$real>::from($function(ohm, series_of(f64::from(series))?)?))
            }

            // The series is one for all wherever a name stood for it.
            $(fn fill(inputs: [Column<'_, $real>; 2], out: &mut [$real], valid: &mut [bool]) -> Option<usize> {
                let [Column::Each(ohm), Column::One(code)] = inputs else { return None };
                $into(ohm, series_of(f64::from(code)).ok()?, out, valid).ok()
            })?

            fn takes(inputs: [Column<'_, $real>; 2], _: usize) -> Option<bool> {
                let [Column::Each(ohm), Column::One(code)] = inputs else { return None };
                Some(series_of(f64::from(code)).is_ok() && $check(ohm).is_ok())
            }
        }
    };
}

kernels! {
    Nearest = core::nearest | core::nearest_f32, core::nearest_into_valid | core::nearest_f32_into_valid;
    Below = core::below | core::below_f32, core::below_into_valid | core::below_f32_into_valid;
    Above = core::above | core::above_f32, core::above_into_valid | core::above_f32_into_valid;
    Contains = core::contains | core::contains_f32;
}

vector_functions! {
    /// The preferred value nearest to a resistance (IEC 60063): least \|v - ohm\|/ohm, the lower one on a tie.
    ///
    /// Parameters
    /// ----------
    /// ohm : float or array-like
    ///     Resistance in ohm, in (0, 1e15].
    /// series : str
    ///     "E3", "E6", "E12", "E24", "E48", "E96" or "E192".
    /// out : numpy.ndarray, optional
    ///     Where the results go; untouched on an error.
    /// where : array-like of bool, optional
    ///     Which elements are computed; needs ``out``.
    /// on_invalid : {"raise", "nan", "mask"}
    ///     What happens if elements are refused: an error that names the first one, NaN in their place, or a pair of the
    ///     values and a mask of the good ones.
    ///
    /// Returns
    /// -------
    /// float or array
    ///     Of the shape of ``ohm``; ``float32`` for ``float32``, then the one nearest to the decimal.
    ///
    /// Raises
    /// ------
    /// RangeError
    ///     A resistance outside its range, or NaN.
    ///
    /// Examples
    /// --------
    /// >>> from reckohm.preferred import nearest
    /// >>> nearest(4900, "E12")
    /// 4700.0
    /// >>> nearest([1.1, 9700], "E24")
    /// array([1.1e+00, 1.0e+04])
    fn nearest(ohm; series: Series) = Nearest -> Number, "preferred_nearest";

    /// The highest preferred value that is not above a resistance: itself, if it is one.
    ///
    /// Parameters
    /// ----------
    /// ohm : float or array-like
    ///     Resistance in ohm, in (0, 1e15].
    /// series : str
    ///     "E3" to "E192".
    /// out, where, on_invalid
    ///     As of `nearest`.
    ///
    /// Raises
    /// ------
    /// RangeError
    ///     A resistance outside its range, or NaN.
    ///
    /// Examples
    /// --------
    /// >>> from reckohm.preferred import below
    /// >>> below([4900, 4700], "E12")
    /// array([4700., 4700.])
    fn below(ohm; series: Series) = Below -> Number, "preferred_below";

    /// The lowest preferred value that is not below a resistance: itself, if it is one.
    ///
    /// Parameters
    /// ----------
    /// ohm : float or array-like
    ///     Resistance in ohm, in (0, 1e15].
    /// series : str
    ///     "E3" to "E192".
    /// out, where, on_invalid
    ///     As of `nearest`.
    ///
    /// Raises
    /// ------
    /// RangeError
    ///     A resistance outside its range, or NaN.
    ///
    /// Examples
    /// --------
    /// >>> from reckohm.preferred import above
    /// >>> above(9.0, "E12")
    /// 10.0
    fn above(ohm; series: Series) = Above -> Number, "preferred_above";

    /// Whether a resistance is a preferred value of a series, in any decade.
    ///
    /// Parameters
    /// ----------
    /// ohm : float or array-like
    ///     Resistance in ohm, in (0, 1e15].
    /// series : str
    ///     "E3" to "E192".
    /// out, where, on_invalid
    ///     As of `nearest`; there is no NaN among yes and no, so ``"nan"`` is refused.
    ///
    /// Returns
    /// -------
    /// bool or array of bool
    ///
    /// Raises
    /// ------
    /// RangeError
    ///     A resistance outside its range, or NaN.
    ///
    /// Examples
    /// --------
    /// >>> from reckohm.preferred import contains
    /// >>> contains(0.0047, "E3")
    /// True
    /// >>> contains([2700, 2710], "E192")  # E24 is not part of E192
    /// array([False,  True])
    fn contains(ohm; series: Series) = Contains -> Truth, "preferred_contains";
}

/// The values of a series in the decade [1, 10).
///
/// Parameters
/// ----------
/// series : str
///     "E3" to "E192".
///
/// Returns
/// -------
/// tuple of float
///
/// Examples
/// --------
/// >>> from reckohm.preferred import decade
/// >>> decade("E6")
/// (1.0, 1.5, 2.2, 3.3, 4.7, 6.8)
#[pyfunction]
fn decade<'py>(py: Python<'py>, series: Series) -> PyResult<Bound<'py, pyo3::types::PyTuple>> {
    let mut values = vec![0.0; usize::from(series.0.count())];
    core::decade_into(series.0, &mut values).map_err(Failure::from)?;
    pyo3::types::PyTuple::new(py, values)
}

/// The preferred values on both sides of a resistance, the same twice if it is one.
///
/// Parameters
/// ----------
/// ohm : float or array-like
///     Resistance in ohm, in (0, 1e15].
/// series : str
///     "E3" to "E192".
/// on_invalid : {"raise", "nan", "mask"}
///     As of `nearest`.
///
/// Returns
/// -------
/// tuple
///     What `below` gives and what `above` gives.
///
/// Raises
/// ------
/// RangeError
///     A resistance outside its range, or NaN.
///
/// Examples
/// --------
/// >>> from reckohm.preferred import neighbours
/// >>> neighbours(4900, "E24")
/// (4700.0, 5100.0)
#[pyfunction]
#[pyo3(signature = (ohm, series, *, on_invalid="raise"))]
fn neighbours<'py>(
    py: Python<'py>,
    ohm: &Bound<'py, PyAny>,
    series: Series,
    on_invalid: &str,
) -> PyResult<(Bound<'py, PyAny>, Bound<'py, PyAny>)> {
    let lower = below(py, ohm, Series(series.0), None, None, on_invalid)?;
    Ok((lower, above(py, ohm, series, None, None, on_invalid)?))
}

/// The tolerance that a series is usual with, as a fraction; None for E3, which has none given.
///
/// Examples
/// --------
/// >>> from reckohm.preferred import tolerance
/// >>> tolerance("E24")
/// 0.05
#[pyfunction]
fn tolerance(series: Series) -> Option<f64> {
    core::tolerance(series.0)
}

/// The series with the fewest values that holds a resistance.
///
/// Parameters
/// ----------
/// ohm : float
///     Resistance in ohm, in (0, 1e15]; a single number.
///
/// Returns
/// -------
/// str or None
///     The name of the series, None if no series holds it.
///
/// Raises
/// ------
/// RangeError
///     A resistance outside its range, or NaN.
///
/// Examples
/// --------
/// >>> from reckohm.preferred import coarsest
/// >>> coarsest(4990)
/// 'E96'
#[pyfunction]
fn coarsest(py: Python<'_>, ohm: crate::values::Number) -> Result<Option<Bound<'_, PyString>>, Failure> {
    Ok(core::coarsest(ohm.0)?.map(|series| PyString::new(py, series.name())))
}

/// What the module holds.
pub fn fill(compiled: &Bound<'_, PyModule>, module: &Bound<'_, PyModule>) -> PyResult<()> {
    add_functions(compiled, module)?;
    module.add_function(wrap_pyfunction!(decade, module)?)?;
    module.add_function(wrap_pyfunction!(neighbours, module)?)?;
    module.add_function(wrap_pyfunction!(tolerance, module)?)?;
    module.add_function(wrap_pyfunction!(coarsest, module)?)
}
