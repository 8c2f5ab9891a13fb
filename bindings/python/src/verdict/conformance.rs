//! `reckohm.verdict.conformance_probability`.

use pyo3::prelude::*;
use pyo3::types::{PyList, PyTuple};
use reckohm::verdict as core;
use reckohm::verdict::Column;

use super::judge::{All, all_of, refused};
use super::limits::Limits;
use crate::formula::{Formulas, Kernel, Real, Refusal};
use crate::ufunc::Output;
use crate::uncertainty::Estimate;
use crate::values::input_type_error;
use crate::vector::{Input, Options, Vector};

struct ConformanceProbability;

impl<R: Real> Kernel<6, R> for ConformanceProbability {
    const LEAST_A_THREAD: usize = 1 << 13;

    fn evaluate([value, u, dof, rectangular, lower, upper]: [R; 6]) -> Result<R, Refusal> {
        let estimate = reckohm::uncertainty::Estimate::new(value, u, dof)
            .and_then(|estimate| estimate.with_rectangular(rectangular))
            .map_err(core::VerdictError::from)?;
        let limits = core::Limits::new(lower, upper).map_err(core::VerdictError::from)?;
        Ok(core::conformance_probability(&estimate, &limits))
    }

    fn fill(inputs: [Column<'_, R>; 6], out: &mut [R], valid: &mut [bool]) -> Option<usize> {
        let (measured, limits) = measured(inputs)?;
        measured.conformance_probability_into_valid(&limits, out, valid).ok()
    }

    fn takes(inputs: [Column<'_, R>; 6], count: usize) -> Option<bool> {
        Some(measured(inputs)?.0.check(count).is_ok())
    }
}

/// The measurements and the limits that they are all held to, as they are for who calls the function by its name.
fn measured<R: Real>(inputs: [Column<'_, R>; 6]) -> Option<(core::Columns<'_, R>, core::Limits<R>)> {
    let [value, u, dof, rectangular, Column::One(lower), Column::One(upper)] = inputs else { return None };
    Some((core::Columns { value, u, dof, rectangular }, core::Limits::new(lower, upper).ok()?))
}

pub(super) const CONFORMANCE: Vector = Vector {
    name: "verdict_conformance_probability",
    arguments: &["estimate", "u", "dof", "rectangular", "lower", "upper"],
    output: Output::Number,
    formulas: Formulas::of::<ConformanceProbability, 6>(),
};

/// The probability that the true value lies within limits, from the measurement alone, without a prior (JCGM 106, 7).
///
/// Parameters
/// ----------
/// estimate : Estimate, sequence of Estimate, float or array-like
///     What was measured. Where it is numbers, their uncertainty is given by the next three arguments.
/// limits : Limits
///     The limits.
/// u, dof : float or array-like
///     Standard uncertainty of numbers, and its degrees of freedom, as of `Estimate`.
/// rectangular : float or array-like
///     Half-width of a rectangular part of numbers, a meter's accuracy clause say.
/// out, where, on_invalid
///     As of `reckohm.preferred.nearest`; for numbers only.
///
/// Returns
/// -------
/// float or array
///
/// Raises
/// ------
/// RangeError
///     A number outside its range.
///
/// Examples
/// --------
/// >>> from reckohm.uncertainty import Estimate
/// >>> from reckohm.verdict import Limits, conformance_probability
/// >>> conformance_probability(Estimate(100, 1), Limits.at_most(100))
/// 0.5
/// >>> conformance_probability([4700.0, 4935.0], Limits.from_tolerance(4700, 0.05), rectangular=69)
/// array([1. , 0.5])
#[pyfunction]
#[pyo3(
    signature = (estimate, limits, *, u=None, dof=None, rectangular=None, out=None, r#where=None, on_invalid="raise"),
    text_signature = "(estimate, limits, *, u=0.0, dof=inf, rectangular=0.0, out=None, where=None, on_invalid='raise')"
)]
#[allow(clippy::too_many_arguments)]
pub(super) fn conformance_probability<'py>(
    py: Python<'py>,
    estimate: &Bound<'py, PyAny>,
    limits: &Bound<'py, PyAny>,
    u: Option<&Bound<'py, PyAny>>,
    dof: Option<&Bound<'py, PyAny>>,
    rectangular: Option<&Bound<'py, PyAny>>,
    out: Option<&Bound<'py, PyAny>>,
    r#where: Option<&Bound<'py, PyAny>>,
    on_invalid: &str,
) -> PyResult<Bound<'py, PyAny>> {
    let only_estimate = u.is_none()
        && dof.is_none()
        && rectangular.is_none()
        && out.is_none()
        && r#where.is_none()
        && on_invalid == "raise";
    let limits = limits.cast::<Limits>().map_err(|_| refused(limits, "Limits"))?.get();
    let estimates = if let Ok(one) = estimate.cast::<Estimate>() {
        Some(All::One(*one.get()))
    } else if estimate.is_instance_of::<PyList>() || estimate.is_instance_of::<PyTuple>() {
        match estimate.get_item(0) {
            Ok(first) if first.is_instance_of::<Estimate>() => Some(all_of::<Estimate>(estimate, "an Estimate")?),
            _ => None,
        }
    } else {
        None
    };
    let probability = |estimate: &Estimate| core::conformance_probability(&estimate.0, &limits.0);
    match estimates {
        Some(_) if !only_estimate => Err(input_type_error(
            py,
            "conformance probability: options given beside an Estimate, which holds its own uncertainty; \
             they go with plain numbers alone",
        )?),
        Some(All::One(estimate)) => Ok(probability(&estimate).into_pyobject(py)?.into_any()),
        Some(All::Many(estimates)) => {
            let values: Vec<f64> = estimates.iter().map(probability).collect();
            py.import("numpy")?.call_method1("array", (values,))
        }
        None => {
            let given = |option: Option<&'_ Bound<'py, PyAny>>, default: f64| match option {
                Some(given) => given.clone(),
                None => pyo3::types::PyFloat::new(py, default).into_any(),
            };
            let (u, dof) = (given(u, 0.0), given(dof, f64::INFINITY));
            let rectangular = given(rectangular, 0.0);
            let [lower, upper] = [limits.0.lower_ohm(), limits.0.upper_ohm()];
            let inputs = [
                Input::Given(estimate),
                Input::Given(&u),
                Input::Given(&dof),
                Input::Given(&rectangular),
                Input::Code(lower),
                Input::Code(upper),
            ];
            CONFORMANCE.call::<ConformanceProbability, 6>(py, inputs, Options { out, where_: r#where, on_invalid })
        }
    }
}
