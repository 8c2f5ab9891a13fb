//! Expanded uncertainties.

use pyo3::prelude::*;
use pyo3::types::PyTuple;
use reckohm::uncertainty as core;

use super::Estimate;
use crate::errors::Failure;
use crate::values::{again, hash_of, shown, stated};

/// How an expanded uncertainty was found.
#[derive(Clone, Copy, PartialEq)]
pub(super) enum Method {
    Expanded,
    WelchSatterthwaite,
    Guaranteed,
}

impl Method {
    fn name(self) -> &'static str {
        match self {
            Method::Expanded => "expanded",
            Method::WelchSatterthwaite => "expanded_welch_satterthwaite",
            Method::Guaranteed => "expanded_guaranteed",
        }
    }
}

/// An expanded uncertainty with all that it takes to be read: how wide, with what factor, for what probability.
///
/// It comes from `Estimate.expanded` and its siblings.
///
/// Examples
/// --------
/// >>> from reckohm.uncertainty import Estimate
/// >>> u95 = Estimate(1000.0).with_rectangular(10).expanded()
/// >>> u95
/// Estimate(1000.0).with_rectangular(10.0).expanded(0.95)
/// >>> print(u95)
/// 1000.0 ± 9.5 (k = 1.65, 95 %)
/// >>> (u95.lower, u95.upper)
/// (990.5, 1009.5)
#[pyclass(frozen, eq, module = "reckohm.uncertainty")]
#[derive(Clone, Copy, PartialEq)]
pub struct Expanded {
    estimate: Estimate,
    method: Method,
    expanded: core::Expanded,
}

impl Expanded {
    /// By the coverage rule of this library.
    pub fn stated(estimate: Estimate, coverage_probability: f64) -> Result<Expanded, Failure> {
        Expanded::of(estimate, Method::Expanded, coverage_probability)
    }

    pub(super) fn of(estimate: Estimate, method: Method, coverage_probability: f64) -> Result<Expanded, Failure> {
        let expanded = match method {
            Method::Expanded => estimate.0.expanded(coverage_probability)?,
            Method::WelchSatterthwaite => estimate.0.expanded_welch_satterthwaite(coverage_probability)?,
            Method::Guaranteed => estimate.0.expanded_guaranteed(coverage_probability)?,
        };
        Ok(Expanded { estimate, method, expanded })
    }
}

#[pymethods]
impl Expanded {
    #[classattr]
    fn __match_args__() -> (&'static str, &'static str, &'static str) {
        ("half_width", "coverage_factor", "coverage_probability")
    }

    /// U, the half-width without one-sided parts.
    #[getter]
    fn half_width(&self) -> f64 {
        self.expanded.half_width
    }

    /// U/u, for information; 0 if u is 0.
    #[getter]
    fn coverage_factor(&self) -> f64 {
        self.expanded.coverage_factor
    }

    /// The probability that the interval is to hold.
    #[getter]
    fn coverage_probability(&self) -> f64 {
        self.expanded.coverage_probability
    }

    /// Lower end of the coverage interval, the one-sided part included.
    #[getter]
    fn lower(&self) -> f64 {
        self.expanded.lower
    }

    /// Upper end of the coverage interval, the one-sided part included.
    #[getter]
    fn upper(&self) -> f64 {
        self.expanded.upper
    }

    /// Combined standard uncertainty.
    #[getter]
    fn u(&self) -> f64 {
        self.expanded.u
    }

    /// The estimate that it is of.
    #[getter]
    fn estimate(&self) -> Estimate {
        self.estimate
    }

    fn __hash__(&self, py: Python<'_>) -> PyResult<isize> {
        hash_of(py, (self.estimate.parts(), self.method.name(), self.expanded.coverage_probability))
    }

    fn __reduce__<'py>(&self, py: Python<'py>) -> PyResult<(Bound<'py, PyAny>, Bound<'py, PyTuple>)> {
        again(py, (self.estimate, self.method.name(), self.expanded.coverage_probability))
    }

    fn __repr__(&self) -> String {
        let probability = shown(self.expanded.coverage_probability);
        format!("{}.{}({probability})", self.estimate.__repr__(), self.method.name())
    }

    fn __str__(&self) -> String {
        format!(
            "{} (k = {:.2}, {} %)",
            stated(self.estimate.0.value(), self.expanded.half_width),
            self.expanded.coverage_factor,
            100.0 * self.expanded.coverage_probability
        )
    }
}
