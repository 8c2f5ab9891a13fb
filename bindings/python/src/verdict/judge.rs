//! `reckohm.verdict.judge` and its `Verdict`.

use pyo3::prelude::*;
use pyo3::types::{PyList, PyTuple};
use reckohm::verdict as core;

use super::limits::Limits;
use super::rule::Rule;
use crate::errors::Failure;
use crate::uncertainty::Estimate;
use crate::values::{hash_of, wrong_type};

/// A verdict and what it rests on; it comes from `judge`.
///
/// Examples
/// --------
/// >>> from reckohm.uncertainty import Estimate
/// >>> from reckohm.verdict import Limits, Rule, judge
/// >>> part = Estimate(4880, 3).with_rectangular(69)
/// >>> verdict = judge(part, Limits.from_tolerance(4700, 0.05), Rule.guarded(0.05))
/// >>> verdict.answer, verdict.side
/// ('undecided', 'inside')
/// >>> round(verdict.conformance_probability, 3)
/// 0.899
/// >>> verdict.next_step
/// 'use a span or meter with a tighter clause, or compare with a known part'
#[pyclass(frozen, eq, module = "reckohm.verdict")]
#[derive(Clone, Copy, PartialEq)]
pub struct Verdict {
    estimate: Estimate,
    limits: Limits,
    verdict: core::Verdict,
}

impl Verdict {
    fn of(estimate: Estimate, limits: Limits, rule: Rule) -> Result<Verdict, Failure> {
        let verdict = core::judge(&estimate.0, &limits.0, rule.0)?;
        Ok(Verdict { estimate, limits, verdict })
    }
}

#[pymethods]
impl Verdict {
    #[classattr]
    fn __match_args__() -> (&'static str, &'static str) {
        ("answer", "side")
    }

    /// "conforms", "does not conform" or "undecided".
    #[getter]
    fn answer(&self) -> &'static str {
        self.verdict.answer.name()
    }

    /// Where the value itself lies: "inside" or "outside" the limits.
    #[getter]
    fn side(&self) -> &'static str {
        self.verdict.side.name()
    }

    /// Probability that the part lies within its limits, from this measurement alone, without a prior.
    #[getter]
    fn conformance_probability(&self) -> f64 {
        self.verdict.conformance_probability
    }

    /// How far inside a limit a value must lie to conform, in ohm; 0 under simple acceptance, None where the rule cannot be
    /// met by any value.
    #[getter]
    fn guard_band_ohm(&self) -> Option<f64> {
        self.verdict.guard_band_ohm
    }

    /// The lowest value that conforms, in ohm; minus infinite without a lower limit, None where no value can conform.
    #[getter]
    fn acceptance_lower_ohm(&self) -> Option<f64> {
        self.verdict.acceptance_lower_ohm
    }

    /// The highest value that conforms, in ohm; infinite without an upper limit, None where no value can conform.
    #[getter]
    fn acceptance_upper_ohm(&self) -> Option<f64> {
        self.verdict.acceptance_upper_ohm
    }

    /// How far the value lies from the nearest limit, in ohm: a guard band below this would decide it.
    #[getter]
    fn distance_ohm(&self) -> f64 {
        self.verdict.distance_ohm
    }

    /// Test uncertainty ratio, (upper limit - lower limit)/(2 U95); None for a single limit or an exact value.
    #[getter]
    fn tur(&self) -> Option<f64> {
        self.verdict.tur
    }

    /// What to do next, in words; "none" where the answer stands.
    #[getter]
    fn next_step(&self) -> &'static str {
        self.verdict.next_step.name()
    }

    /// The rule that gave the answer.
    #[getter]
    fn rule(&self) -> Rule {
        Rule(self.verdict.rule)
    }

    /// The estimate that was judged.
    #[getter]
    fn estimate(&self) -> Estimate {
        self.estimate
    }

    /// The limits that it was judged against.
    #[getter]
    fn limits(&self) -> Limits {
        self.limits
    }

    fn __hash__(&self, py: Python<'_>) -> PyResult<isize> {
        hash_of(py, (self.estimate, self.limits, self.rule()))
    }

    fn __reduce__<'py>(&self, py: Python<'py>) -> PyResult<(Bound<'py, PyAny>, Bound<'py, PyTuple>)> {
        let judge = py.import("reckohm.verdict")?.getattr("judge")?;
        Ok((judge, (self.estimate, self.limits, self.rule()).into_pyobject(py)?))
    }

    fn __repr__(&self) -> String {
        let (limits, rule) = (self.limits.__repr__(), self.rule().__repr__());
        format!("judge({}, {limits}, {rule})", self.estimate.__repr__())
    }

    fn __str__(&self) -> String {
        self.verdict.to_string()
    }

    fn _repr_html_(slf: &Bound<'_, Self>) -> PyResult<Py<PyAny>> {
        Ok(slf.py().import("reckohm._tables")?.call_method1("verdict", (slf,))?.unbind())
    }
}

/// Judges an estimate against limits under a rule.
///
/// Parameters
/// ----------
/// estimate : Estimate or sequence of Estimate
///     What was measured.
/// limits : Limits or sequence of Limits
///     The limits, the same for all estimates or one for each.
/// rule : Rule
///     The rule agreed on beforehand; there is no default.
///
/// Returns
/// -------
/// Verdict or list of Verdict
///
/// Raises
/// ------
/// CountError
///     Two sequences of different lengths.
/// RangeError
///     An expanded uncertainty that no number holds.
///
/// Examples
/// --------
/// >>> from reckohm.uncertainty import Estimate
/// >>> from reckohm.verdict import Limits, Rule, judge
/// >>> limits = Limits.from_tolerance(4700, 0.05)
/// >>> tray = [Estimate(shown, 3).with_rectangular(0.008 * shown + 30) for shown in (4860, 4880, 4999)]
/// >>> for verdict in judge(tray, limits, Rule.guarded(0.05)):
/// ...     print(verdict)
/// conforms (guarded at each limit, risk 0.05); conformance probability 1.000
/// undecided, inside the limits (guarded at each limit, risk 0.05); conformance probability 0.898; next: use a span or meter with a tighter clause, or compare with a known part
/// does not conform (guarded at each limit, risk 0.05); conformance probability 0.043
#[pyfunction]
pub(super) fn judge<'py>(
    py: Python<'py>,
    estimate: &Bound<'py, PyAny>,
    limits: &Bound<'py, PyAny>,
    rule: &Bound<'py, PyAny>,
) -> PyResult<Bound<'py, PyAny>> {
    let rule = rule.cast::<Rule>().map_err(|_| refused(rule, "a Rule"))?.get();
    if let (Ok(estimate), Ok(limits)) = (estimate.cast::<Estimate>(), limits.cast::<Limits>()) {
        return Ok(Bound::new(py, Verdict::of(*estimate.get(), *limits.get(), *rule)?)?.into_any());
    }
    let verdicts = pairs(estimate, limits)?
        .into_iter()
        .map(|(estimate, limits)| Verdict::of(estimate, limits, *rule))
        .collect::<Result<Vec<_>, _>>()?;
    Ok(PyList::new(py, verdicts)?.into_any())
}

pub(super) fn refused(given: &Bound<'_, PyAny>, allowed: &str) -> PyErr {
    wrong_type(given, allowed).unwrap_or_else(|error| error)
}

/// The estimates, each with its limits; a single one of either goes with all of the other.
fn pairs(estimate: &Bound<'_, PyAny>, limits: &Bound<'_, PyAny>) -> PyResult<Vec<(Estimate, Limits)>> {
    let (words, limit_words) = ("an Estimate or a sequence of them", "Limits or a sequence of them");
    let estimates = all_of::<Estimate>(estimate, words)?;
    let limits = all_of::<Limits>(limits, limit_words)?;
    match (estimates, limits) {
        (All::One(estimate), All::One(limits)) => Ok(vec![(estimate, limits)]),
        (All::One(estimate), All::Many(limits)) => Ok(limits.into_iter().map(|each| (estimate, each)).collect()),
        (All::Many(estimates), All::One(limits)) => Ok(estimates.into_iter().map(|each| (each, limits)).collect()),
        (All::Many(estimates), All::Many(limits)) => {
            if estimates.len() != limits.len() {
                let (estimates, room) = (estimates.len(), limits.len());
                return Err(Failure::from(core::VerdictError::Lengths { estimates, room }).into());
            }
            Ok(estimates.into_iter().zip(limits).collect())
        }
    }
}

pub(super) enum All<T> {
    One(T),
    Many(Vec<T>),
}

pub(super) fn all_of<T: pyo3::PyClass<Frozen = pyo3::pyclass::boolean_struct::True> + Copy + Sync>(
    given: &Bound<'_, PyAny>,
    allowed: &str,
) -> PyResult<All<T>> {
    if let Ok(one) = given.cast::<T>() {
        return Ok(All::One(*one.get()));
    }
    let each = |item: PyResult<Bound<'_, PyAny>>| {
        let item = item?;
        item.cast::<T>().map(|item| *item.get()).map_err(|_| refused(&item, allowed))
    };
    let items = given.try_iter().map_err(|_| refused(given, allowed))?;
    Ok(All::Many(items.map(each).collect::<PyResult<_>>()?))
}
