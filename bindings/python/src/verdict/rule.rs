//! `reckohm.verdict.Rule`.

use pyo3::prelude::*;
use pyo3::types::PyTuple;
use reckohm::verdict as core;

use crate::errors::Failure;
use crate::values::{Number, again, hash_of, shown};

/// A decision rule, agreed before the measurement (ISO/IEC 17025 7.8.6): so it is an argument without a default.
///
/// `simple_acceptance` has two answers and lets the value alone decide; `guarded` keeps a guard band at each limit by
/// itself, as a supplier and a customer agree on; `max_risk` bounds the probability of being outside either limit.
///
/// Examples
/// --------
/// >>> from reckohm.verdict import Rule
/// >>> rule = Rule.guarded(0.05)
/// >>> rule.kind, rule.risk
/// ('guarded', 0.05)
/// >>> print(rule)
/// guarded at each limit, risk 0.05
#[pyclass(frozen, eq, from_py_object, module = "reckohm.verdict")]
#[derive(Clone, Copy, PartialEq)]
pub struct Rule(pub core::Rule);

#[pymethods]
impl Rule {
    #[classattr]
    fn __match_args__() -> (&'static str, &'static str) {
        ("kind", "risk")
    }

    /// The value alone decides (JCGM 106, 8.2): two answers, and half of the parts at a limit are judged wrongly.
    ///
    /// Examples
    /// --------
    /// >>> from reckohm.verdict import Rule
    /// >>> Rule.simple_acceptance().risk is None
    /// True
    #[staticmethod]
    fn simple_acceptance() -> Rule {
        Rule(core::Rule::simple_acceptance())
    }

    /// A guard band at each limit by itself (JCGM 106, 8.3).
    ///
    /// A part "conforms" only if the probability that it lies beyond that limit is at most ``risk``, and "does not
    /// conform" only if the probability that it lies on the good side is at most ``risk``.
    ///
    /// Parameters
    /// ----------
    /// risk : float
    ///     Between 0 and 0.5.
    ///
    /// Examples
    /// --------
    /// >>> from reckohm.verdict import Rule
    /// >>> Rule.guarded(0.05)
    /// Rule.guarded(0.05)
    #[staticmethod]
    fn guarded(risk: Number) -> Result<Rule, Failure> {
        Ok(Rule(core::Rule::guarded(risk.0)?))
    }

    /// The probability of being outside either limit is bounded, for "conforms", and that of being inside, for "does not
    /// conform".
    ///
    /// Parameters
    /// ----------
    /// risk : float
    ///     Between 0 and 0.5.
    ///
    /// Examples
    /// --------
    /// >>> from reckohm.verdict import Rule
    /// >>> Rule.max_risk(0.02).kind
    /// 'max risk'
    #[staticmethod]
    fn max_risk(risk: Number) -> Result<Rule, Failure> {
        Ok(Rule(core::Rule::max_risk(risk.0)?))
    }

    /// Which sort: "simple acceptance", "guarded" or "max risk".
    #[getter]
    fn kind(&self) -> &'static str {
        match self.0.kind() {
            core::RuleKind::SimpleAcceptance => "simple acceptance",
            core::RuleKind::Guarded => "guarded",
            _ => "max risk",
        }
    }

    /// The risk agreed on, None for simple acceptance.
    #[getter]
    fn risk(&self) -> Option<f64> {
        self.0.risk()
    }

    fn __hash__(&self, py: Python<'_>) -> PyResult<isize> {
        hash_of(py, (self.kind(), self.risk()))
    }

    fn __reduce__<'py>(&self, py: Python<'py>) -> PyResult<(Bound<'py, PyAny>, Bound<'py, PyTuple>)> {
        match self.risk() {
            None => again(py, (py.get_type::<Rule>(), self.method())),
            Some(risk) => again(py, (py.get_type::<Rule>(), self.method(), risk)),
        }
    }

    pub(crate) fn __repr__(&self) -> String {
        format!("Rule.{}({})", self.method(), self.risk().map_or(String::new(), shown))
    }

    fn __str__(&self) -> String {
        self.0.to_string()
    }
}

impl Rule {
    /// The method that makes it.
    fn method(&self) -> String {
        self.kind().replace(' ', "_")
    }
}
