//! Uncertainty budgets.

use pyo3::prelude::*;
use pyo3::types::{PyDict, PyList, PyTuple};
use reckohm::measurement as core;

use super::Measurement;
use crate::errors::Failure;
use crate::uncertainty::Expanded;

/// An uncertainty budget: a row a contribution, and what they add up to. It is that of a `Measurement`.
///
/// Examples
/// --------
/// >>> from reckohm.measurement import evaluate
/// >>> from reckohm.meter import Meter
/// >>> budget = evaluate(Meter.example_hand_held().spans[2].read(["4.66", "4.67", "4.66"])).budget
/// >>> for row in budget.rows:
/// ...     print(f"{row.contribution}: {row.u_ohm:.1f} ohm, {100 * row.share:.0f} %")
/// scatter of the readings: 3.3 ohm, 1 %
/// accuracy clause of the meter: 38.9 ohm, 99 %
/// >>> print(budget.expanded)
/// 4663 ± 66 (k = 1.68, 95 %)
#[pyclass(frozen, eq, module = "reckohm.measurement")]
#[derive(Clone, PartialEq)]
pub struct Budget {
    pub(super) measurement: Measurement,
}

impl Budget {
    fn core(&self) -> &core::Budget {
        self.measurement.measurement.budget()
    }
}

#[pymethods]
impl Budget {
    #[classattr]
    fn __match_args__() -> (&'static str, &'static str) {
        ("rows", "expanded")
    }

    /// The contributions that are there.
    #[getter]
    fn rows<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyTuple>> {
        let class = py.import("reckohm.measurement")?.getattr("BudgetRow")?;
        let made = self.core().rows().map(|row| {
            class.call1((
                row.contribution.name(),
                row.value,
                row.contribution.unit(),
                row.width,
                row.distribution.name(),
                row.sensitivity,
                row.u_ohm,
                row.share,
                row.dof,
            ))
        });
        PyTuple::new(py, made.collect::<PyResult<Vec<_>>>()?)
    }

    /// The result in ohm.
    #[getter]
    fn value_ohm(&self) -> f64 {
        self.core().value_ohm()
    }

    /// Combined standard uncertainty in ohm.
    #[getter]
    fn u_ohm(&self) -> f64 {
        self.core().u_ohm()
    }

    /// Effective degrees of freedom (Welch-Satterthwaite; JCGM 100, G.4.1), for information.
    #[getter]
    fn effective_dof(&self) -> f64 {
        self.core().effective_dof()
    }

    /// The expanded uncertainty, with its coverage factor and probability, from the shape of all parts.
    #[getter]
    fn expanded(&self) -> Result<Expanded, Failure> {
        Expanded::stated(self.measurement.estimate(), self.core().expanded().coverage_probability)
    }

    /// The budget as plain values, which are valid JSON: infinite degrees of freedom are None.
    ///
    /// Returns
    /// -------
    /// dict
    ///
    /// Examples
    /// --------
    /// >>> import json
    /// >>> from reckohm.measurement import evaluate
    /// >>> from reckohm.meter import Meter
    /// >>> budget = evaluate(Meter.example_hand_held().spans[2].read("4.66")).budget
    /// >>> json.loads(json.dumps(budget.to_dict(), allow_nan=False))["rows"][0]["distribution"]
    /// 'rectangular'
    #[allow(clippy::wrong_self_convention)]
    fn to_dict<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyDict>> {
        let finite = |x: f64| x.is_finite().then_some(x);
        let rows = PyList::empty(py);
        for row in self.core().rows() {
            let cells = PyDict::new(py);
            cells.set_item("contribution", row.contribution.name())?;
            cells.set_item("value", row.value)?;
            cells.set_item("unit", row.contribution.unit())?;
            cells.set_item("width", row.width)?;
            cells.set_item("distribution", row.distribution.name())?;
            cells.set_item("sensitivity", row.sensitivity)?;
            cells.set_item("u_ohm", row.u_ohm)?;
            cells.set_item("share", row.share)?;
            cells.set_item("dof", finite(row.dof))?;
            rows.append(cells)?;
        }
        let expanded = self.core().expanded();
        let result = PyDict::new(py);
        result.set_item("value_ohm", self.value_ohm())?;
        result.set_item("u_ohm", self.u_ohm())?;
        result.set_item("effective_dof", finite(self.effective_dof()))?;
        result.set_item("half_width_ohm", expanded.half_width)?;
        result.set_item("coverage_factor", expanded.coverage_factor)?;
        result.set_item("coverage_probability", expanded.coverage_probability)?;
        result.set_item("lower_ohm", expanded.lower)?;
        result.set_item("upper_ohm", expanded.upper)?;
        result.set_item("rows", rows)?;
        Ok(result)
    }

    fn __hash__(&self, py: Python<'_>) -> PyResult<isize> {
        self.measurement.__hash__(py)
    }

    fn __reduce__<'py>(&self, py: Python<'py>) -> PyResult<(Bound<'py, PyAny>, Bound<'py, PyAny>)> {
        let attribute = py.import("builtins")?.getattr("getattr")?;
        Ok((attribute, (self.measurement.clone(), "budget").into_pyobject(py)?.into_any()))
    }

    fn __repr__(&self, py: Python<'_>) -> PyResult<String> {
        Ok(format!("{}.budget", self.measurement.__repr__(py)?))
    }

    fn __str__(&self) -> String {
        self.core().to_string()
    }

    fn _repr_html_(slf: &Bound<'_, Self>) -> PyResult<Py<PyAny>> {
        Ok(slf.py().import("reckohm._tables")?.call_method1("budget", (slf,))?.unbind())
    }
}
