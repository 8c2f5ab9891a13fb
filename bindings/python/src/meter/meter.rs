//! `reckohm.meter.Meter` and its `Choice`.

use pyo3::prelude::*;
use pyo3::types::PyTuple;
use reckohm::meter as core;

use super::reading::Reading;
use super::span::Span;
use crate::errors::{Failure, contradiction};
use crate::values::{Number, Whole, hash_of, shown, wrong_type};

/// A meter: its spans, from the lowest to the highest.
///
/// Parameters
/// ----------
/// spans : sequence of Span
///     The spans in ascending order.
///
/// Raises
/// ------
/// CountError
///     No span.
/// ContradictionError
///     Spans that are not in ascending order.
///
/// Examples
/// --------
/// >>> from reckohm.meter import Meter
/// >>> meter = Meter.example_hand_held()
/// >>> [span.label for span in meter.spans]
/// ['200 ohm', '2 kohm', '20 kohm', '200 kohm', '2 Mohm', '20 Mohm']
/// >>> meter.choose(4700, tolerance=0.05).span.label
/// '20 kohm'
#[pyclass(frozen, eq, from_py_object, module = "reckohm.meter")]
#[derive(Clone, PartialEq)]
pub struct Meter {
    pub(crate) spans: Vec<core::Span>,
}

impl Meter {
    pub(super) fn core(&self) -> Result<core::Meter<'_>, Failure> {
        Ok(core::Meter::new(&self.spans)?)
    }

    fn of(meter: core::Meter<'_>) -> Meter {
        Meter { spans: meter.spans().to_vec() }
    }

    pub(super) fn record<'py>(
        py: Python<'py>,
        name: &str,
        fields: impl pyo3::call::PyCallArgs<'py>,
    ) -> PyResult<Bound<'py, PyAny>> {
        py.import("reckohm.meter")?.getattr(name)?.call1(fields)
    }
}

#[pymethods]
impl Meter {
    #[classattr]
    fn __match_args__() -> (&'static str,) {
        ("spans",)
    }

    #[new]
    fn new(spans: &Bound<'_, PyAny>) -> PyResult<Meter> {
        let refused = |_| wrong_type(spans, "a sequence of Span").unwrap_or_else(|error| error);
        let each = |span: PyResult<Bound<'_, PyAny>>| {
            let span = span?;
            let found = span.cast::<Span>().map(|span| span.get().0);
            found.map_err(|_| wrong_type(&span, "a Span").unwrap_or_else(|error| error))
        };
        let spans = spans.try_iter().map_err(refused)?.map(each).collect::<PyResult<Vec<_>>>()?;
        core::Meter::new(&spans).map_err(Failure::from)?;
        Ok(Meter { spans })
    }

    /// An invented hand-held meter of 2000 counts, for demonstrations; no such instrument exists.
    ///
    /// Examples
    /// --------
    /// >>> from reckohm.meter import Meter
    /// >>> Meter.example_hand_held().spans[0].full_scale_ohm
    /// 200.0
    #[staticmethod]
    fn example_hand_held() -> Meter {
        Meter::of(core::Meter::example_hand_held())
    }

    /// An invented bench meter of five and a half digits, for demonstrations; no such instrument exists.
    ///
    /// Examples
    /// --------
    /// >>> from reckohm.meter import Meter
    /// >>> Meter.example_bench().spans[2].zeroing_required
    /// True
    #[staticmethod]
    fn example_bench() -> Meter {
        Meter::of(core::Meter::example_bench())
    }

    /// The spans, from the lowest to the highest.
    #[getter]
    fn spans<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyTuple>> {
        PyTuple::new(py, self.spans.iter().map(|span| Span(*span)).collect::<Vec<_>>())
    }

    /// The span with this index, counted from 0.
    ///
    /// Raises
    /// ------
    /// MeterError
    ///     An index that belongs to no span.
    ///
    /// Examples
    /// --------
    /// >>> from reckohm.meter import Meter
    /// >>> Meter.example_hand_held().span(0).label
    /// '200 ohm'
    fn span(&self, index: Whole<usize>) -> Result<Span, Failure> {
        Ok(Span(*self.core()?.span(index.0)?))
    }

    /// Which span a part goes on: of the spans that show every conforming part, the one with the least expanded
    /// uncertainty.
    ///
    /// Parameters
    /// ----------
    /// nominal_ohm : float
    ///     Nominal value of the part.
    /// tolerance : float
    ///     Its tolerance as a fraction.
    /// meter_temperature_c : float, optional
    ///     Temperature of the meter, where it may be outside the band of its clauses.
    ///
    /// Returns
    /// -------
    /// Choice
    ///
    /// Raises
    /// ------
    /// RangeError
    ///     A number outside its range.
    /// MeterError
    ///     A part beyond every span.
    ///
    /// Examples
    /// --------
    /// >>> from reckohm.meter import Meter
    /// >>> choice = Meter.example_hand_held().choose(4700, tolerance=0.05)
    /// >>> choice.span.label, choice.chosen.expected_display
    /// ('20 kohm', '4.70')
    #[pyo3(signature = (nominal_ohm, *, tolerance, meter_temperature_c=None))]
    fn choose(
        &self,
        nominal_ohm: Number,
        tolerance: Number,
        meter_temperature_c: Option<Number>,
    ) -> Result<Choice, Failure> {
        let part = (nominal_ohm.0, tolerance.0, meter_temperature_c.map(|given| given.0));
        let index = self.core()?.choose_at(part.0, part.1, part.2)?.index();
        Ok(Choice { meter: self.clone(), part, index })
    }

    /// The span for the next reading, after this one.
    ///
    /// Over-range goes up by one span; a reading that, with its accuracy clause, is below 95 % of a lower span's full scale
    /// goes down to the lowest such span. The 5 % are the hysteresis.
    ///
    /// Parameters
    /// ----------
    /// reading : Reading
    ///     A reading on a span of this meter.
    ///
    /// Returns
    /// -------
    /// Step
    ///
    /// Raises
    /// ------
    /// ContradictionError
    ///     A reading on a span that is not one of this meter's.
    ///
    /// Examples
    /// --------
    /// >>> from reckohm.meter import Meter
    /// >>> meter = Meter.example_hand_held()
    /// >>> step = meter.next_span(meter.spans[1].read("1"))
    /// >>> step.kind, step.span.label
    /// ('up', '20 kohm')
    fn next_span<'py>(&self, py: Python<'py>, reading: &Bound<'py, PyAny>) -> PyResult<Bound<'py, PyAny>> {
        let Ok(reading) = reading.cast::<Reading>() else { return Err(wrong_type(reading, "a Reading")?) };
        let reading = reading.get();
        let Some(index) = self.spans.iter().position(|span| span == reading.core_span()) else {
            let label = reading.core_span().label();
            return Err(contradiction(
                py,
                &format!(
                    "next span: a reading on {label} given, one on a span of this meter allowed; look at the meter"
                ),
            ));
        };
        let step = self.core()?.next_span(index, &reading.reading).map_err(Failure::from)?;
        let (kind, index) = match step {
            core::Step::Stay => ("stay", Some(index)),
            core::Step::Up(index) => ("up", Some(index)),
            core::Step::Down(index) => ("down", Some(index)),
            core::Step::BeyondHighest => ("beyond highest", None),
        };
        let span = index.and_then(|index| self.spans.get(index)).map(|span| Span(*span));
        Meter::record(py, "Step", (kind, index, span))
    }

    pub(crate) fn __hash__(&self, py: Python<'_>) -> PyResult<isize> {
        self.spans(py)?.hash()
    }

    fn __getnewargs__<'py>(&self, py: Python<'py>) -> PyResult<(Bound<'py, PyTuple>,)> {
        Ok((self.spans(py)?,))
    }

    pub(crate) fn __repr__(&self, py: Python<'_>) -> PyResult<String> {
        if self.spans == core::Meter::example_hand_held().spans() {
            return Ok("Meter.example_hand_held()".to_owned());
        }
        if self.spans == core::Meter::example_bench().spans() {
            return Ok("Meter.example_bench()".to_owned());
        }
        let spans = self.spans.iter().map(|span| Span(*span).__repr__(py)).collect::<PyResult<Vec<_>>>()?;
        Ok(format!("Meter([{}])", spans.join(", ")))
    }
}

/// Which span a part goes on, and what every span would make of it; it comes from `Meter.choose`.
///
/// Examples
/// --------
/// >>> from reckohm.meter import Meter
/// >>> choice = Meter.example_hand_held().choose(220, tolerance=0.01)
/// >>> choice
/// Meter.example_hand_held().choose(220.0, tolerance=0.01)
/// >>> choice.span.label, choice.chosen.accepts_some
/// ('2 kohm', False)
/// >>> [assessment.outcome for assessment in choice.assessments]
/// ['over-range', 'chosen', 'wider', 'wider', 'wider', 'wider']
#[pyclass(frozen, eq, module = "reckohm.meter")]
#[derive(Clone, PartialEq)]
pub struct Choice {
    meter: Meter,
    part: (f64, f64, Option<f64>),
    index: usize,
}

impl Choice {
    fn assess<'py>(&self, py: Python<'py>, index: usize) -> PyResult<Bound<'py, PyAny>> {
        let (nominal_ohm, tolerance, temperature_c) = self.part;
        let meter = self.meter.core()?;
        let choice = meter.choose_at(nominal_ohm, tolerance, temperature_c).map_err(Failure::from)?;
        let made = choice.assessment(index).map_err(Failure::from)?;
        let (outcome, factor) = match made.outcome {
            core::Outcome::Chosen => ("chosen", None),
            core::Outcome::Wider { factor } => ("wider", Some(factor)),
            _ => ("over-range", None),
        };
        let span = Span(*meter.span(index).map_err(Failure::from)?);
        Meter::record(
            py,
            "Assessment",
            (
                span,
                outcome,
                factor,
                made.holds,
                made.expected_display.as_str(),
                made.expected_ohm,
                made.counts_used,
                made.expanded_ohm,
                made.tur,
                made.conformance_probability_at_centre,
                made.accepts_some,
            ),
        )
    }
}

#[pymethods]
impl Choice {
    #[classattr]
    fn __match_args__() -> (&'static str, &'static str) {
        ("span", "index")
    }

    /// The chosen span.
    #[getter]
    fn span(&self) -> Option<Span> {
        self.meter.spans.get(self.index).map(|span| Span(*span))
    }

    /// Its index among the meter's spans.
    #[getter]
    fn index(&self) -> usize {
        self.index
    }

    /// The meter.
    #[getter]
    fn meter(&self) -> Meter {
        self.meter.clone()
    }

    /// Nominal value of the part in ohm.
    #[getter]
    fn nominal_ohm(&self) -> f64 {
        self.part.0
    }

    /// Tolerance of the part.
    #[getter]
    fn tolerance(&self) -> f64 {
        self.part.1
    }

    /// What the chosen span makes of the part.
    #[getter]
    fn chosen<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyAny>> {
        self.assess(py, self.index)
    }

    /// What the span with this index makes of the part, and why it was chosen or lost.
    ///
    /// Raises
    /// ------
    /// MeterError
    ///     An index that belongs to no span.
    ///
    /// Examples
    /// --------
    /// >>> from reckohm.meter import Meter
    /// >>> Meter.example_hand_held().choose(4700, tolerance=0.05).assessment(1).outcome
    /// 'over-range'
    fn assessment<'py>(&self, py: Python<'py>, index: Whole<usize>) -> PyResult<Bound<'py, PyAny>> {
        self.assess(py, index.0)
    }

    /// What every span of the meter makes of the part, and why it was chosen or lost.
    #[getter]
    fn assessments<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyTuple>> {
        let made = (0..self.meter.spans.len()).map(|index| self.assess(py, index)).collect::<PyResult<Vec<_>>>()?;
        PyTuple::new(py, made)
    }

    fn __hash__(&self, py: Python<'_>) -> PyResult<isize> {
        hash_of(py, (self.meter.__hash__(py)?, self.part.0, self.part.1, self.part.2))
    }

    fn __reduce__<'py>(&self, py: Python<'py>) -> PyResult<(Bound<'py, PyAny>, Bound<'py, PyAny>)> {
        let choose = py.import("reckohm._again")?.getattr("choose")?;
        let (nominal_ohm, tolerance, temperature_c) = self.part;
        Ok((choose, (self.meter.clone(), nominal_ohm, tolerance, temperature_c).into_pyobject(py)?.into_any()))
    }

    fn __repr__(&self, py: Python<'_>) -> PyResult<String> {
        let (nominal_ohm, tolerance, temperature_c) = self.part;
        let temperature =
            temperature_c.map_or(String::new(), |given| format!(", meter_temperature_c={}", shown(given)));
        let meter = self.meter.__repr__(py)?;
        Ok(format!("{meter}.choose({}, tolerance={}{temperature})", shown(nominal_ohm), shown(tolerance)))
    }

    fn _repr_html_(slf: &Bound<'_, Self>) -> PyResult<Py<PyAny>> {
        Ok(slf.py().import("reckohm._tables")?.call_method1("choice", (slf,))?.unbind())
    }
}
