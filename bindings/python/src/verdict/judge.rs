//! `reckohm.verdict.judge` and its `Verdict`.

use pyo3::prelude::*;
use pyo3::sync::PyOnceLock;
use pyo3::types::{PyBool, PyList, PyTuple};
use reckohm::verdict as core;

use super::limits::Limits;
use super::rule::Rule;
use crate::errors::Failure;
use crate::uncertainty::Estimate;
use crate::values::{hash_of, input_type_error, wrong_type};
use crate::vector::Input;

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
/// estimate : Estimate, sequence of Estimate, float or array-like
///     What was measured. Where it is numbers, their uncertainty is given by `u`, `dof` and `rectangular`.
/// limits : Limits or sequence of Limits
///     The limits, the same for all estimates or one for each; for numbers the same for all.
/// rule : Rule
///     The rule agreed on beforehand; there is no default.
/// u, dof : float or array-like
///     Standard uncertainty of numbers, and its degrees of freedom, as of `Estimate`.
/// rectangular : float or array-like
///     Half-width of a rectangular part of numbers, a meter's accuracy clause say.
/// on_invalid : {"raise", "nan", "mask"}
///     What happens if some of an array of numbers are refused: an error that names the first one, "invalid" in their place,
///     or a pair of the verdicts and a mask of the good ones.
///
/// Returns
/// -------
/// Verdict, list of Verdict or Verdicts
///     Of an estimate or a number one verdict; of a sequence of estimates a list; of an array of numbers `Verdicts`, which
///     answers for millions of parts: the answers, without guard bands and acceptance limits. ``float32`` for ``float32``,
///     with limits and risk rounded to it.
///
/// Raises
/// ------
/// CountError
///     Two sequences of different lengths.
/// RangeError
///     An expanded uncertainty that no number holds, or a number outside its range.
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
/// >>> judge([4860.0, 4880.0, 4999.0], limits, Rule.guarded(0.05), u=3, rectangular=69).answer
/// array(['conforms', 'undecided', 'does not conform'], dtype='<U16')
#[pyfunction]
#[pyo3(
    signature = (estimate, limits, rule, *, u=None, dof=None, rectangular=None, on_invalid="raise"),
    text_signature = "(estimate, limits, rule, *, u=0.0, dof=inf, rectangular=0.0, on_invalid='raise')"
)]
#[allow(clippy::too_many_arguments)]
pub(super) fn judge<'py>(
    py: Python<'py>,
    estimate: &Bound<'py, PyAny>,
    limits: &Bound<'py, PyAny>,
    rule: &Bound<'py, PyAny>,
    u: Option<&Bound<'py, PyAny>>,
    dof: Option<&Bound<'py, PyAny>>,
    rectangular: Option<&Bound<'py, PyAny>>,
    on_invalid: &str,
) -> PyResult<Bound<'py, PyAny>> {
    let rule_given = rule;
    let rule = rule.cast::<Rule>().map_err(|_| refused(rule, "a Rule"))?.get();
    let only_estimate = u.is_none() && dof.is_none() && rectangular.is_none() && on_invalid == "raise";
    if is_numbers(estimate)? {
        let limits = limits.cast::<Limits>().map_err(|_| refused(limits, "one Limits for all numbers"))?;
        let given = |option: Option<&Bound<'py, PyAny>>, default: f64| match option {
            Some(given) => given.clone(),
            None => pyo3::types::PyFloat::new(py, default).into_any(),
        };
        let (u, dof, rectangular) = (given(u, 0.0), given(dof, f64::INFINITY), given(rectangular, 0.0));
        if let (Some(value), Some(u), Some(dof), Some(rectangular)) =
            (plain(estimate), plain(&u), plain(&dof), plain(&rectangular))
            && on_invalid == "raise"
        {
            let one = reckohm::uncertainty::Estimate::new(value, u, dof).map_err(Failure::from)?;
            let one = Estimate(one.with_rectangular(rectangular).map_err(Failure::from)?);
            return Ok(Bound::new(py, Verdict::of(one, *limits.get(), *rule)?)?.into_any());
        }
        static JUDGE: PyOnceLock<Py<PyAny>> = PyOnceLock::new();
        let arguments = (estimate, limits, rule_given, u, dof, rectangular, on_invalid);
        return JUDGE.import(py, "reckohm._verdicts", "judge")?.call1(arguments);
    }
    if !only_estimate {
        return Err(input_type_error(
            py,
            "judging: options given beside an Estimate, which holds its own uncertainty; they go with plain numbers alone",
        )?);
    }
    if let (Ok(estimate), Ok(limits)) = (estimate.cast::<Estimate>(), limits.cast::<Limits>()) {
        return Ok(Bound::new(py, Verdict::of(*estimate.get(), *limits.get(), *rule)?)?.into_any());
    }
    let verdicts = pairs(estimate, limits)?
        .into_iter()
        .map(|(estimate, limits)| Verdict::of(estimate, limits, *rule))
        .collect::<Result<Vec<_>, _>>()?;
    Ok(PyList::new(py, verdicts)?.into_any())
}

/// A float or an int, but no bool.
fn plain(value: &Bound<'_, PyAny>) -> Option<f64> {
    Input::Given(value).plain()
}

/// Whether numbers were given, one or many, rather than estimates.
fn is_numbers(given: &Bound<'_, PyAny>) -> PyResult<bool> {
    if given.is_instance_of::<Estimate>() {
        return Ok(false);
    }
    if plain(given).is_some() || given.is_instance_of::<PyBool>() {
        return Ok(true);
    }
    if given.is_instance_of::<PyList>() || given.is_instance_of::<PyTuple>() {
        // The first says what it is; an empty one is one of estimates.
        return match given.get_item(0) {
            Ok(first) => is_numbers(&first),
            Err(_) => Ok(false),
        };
    }
    // An array of objects may hold estimates.
    match given.getattr_opt("dtype")? {
        Some(dtype) => Ok(&*dtype.str()?.to_cow()? != "object"),
        None => Ok(false),
    }
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
