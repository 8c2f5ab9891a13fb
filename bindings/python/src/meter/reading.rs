//! `reckohm.meter.Reading` and `Readings`.

use pyo3::exceptions::PyIndexError;
use pyo3::prelude::*;
use pyo3::types::{PyBytes, PyString, PyTuple};
use reckohm::meter as core;

use super::span::Span;
use crate::values::{again, hash_of};

/// What a span's display or a meter's reply said; it comes from `Span.read` or `Span.read_reply`.
///
/// Examples
/// --------
/// >>> from reckohm.meter import Meter
/// >>> reading = Meter.example_hand_held().spans[2].read("4.70")
/// >>> reading.ohm, reading.counts, reading.over, reading.negative
/// (4700.0, 470, False, False)
/// >>> print(reading)
/// 4700 ohm on 20 kohm
#[pyclass(frozen, eq, from_py_object, module = "reckohm.meter")]
#[derive(Clone)]
pub struct Reading {
    span: Span,
    pub(crate) reading: core::Reading,
    text: Vec<u8>,
    reply: bool,
}

impl PartialEq for Reading {
    fn eq(&self, other: &Reading) -> bool {
        self.span == other.span && self.reading == other.reading
    }
}

impl Reading {
    pub(super) fn new(span: Span, reading: core::Reading, text: Vec<u8>, reply: bool) -> Reading {
        Reading { span, reading, text, reply }
    }

    pub(crate) fn core_span(&self) -> &core::Span {
        &self.span.0
    }

    fn given<'py>(&self, py: Python<'py>) -> Bound<'py, PyAny> {
        match std::str::from_utf8(&self.text) {
            Ok(text) => PyString::new(py, text).into_any(),
            Err(_) => PyBytes::new(py, &self.text).into_any(),
        }
    }

    fn method(&self) -> &'static str {
        if self.reply { "read_reply" } else { "read" }
    }
}

#[pymethods]
impl Reading {
    #[classattr]
    fn __match_args__() -> (&'static str, &'static str) {
        ("ohm", "over")
    }

    /// The resistance in ohm, with its sign. Of an over-range reading it is the span's full scale, a bound that the
    /// resistance lies beyond and not its value: look at `over` first.
    #[getter]
    fn ohm(&self) -> f64 {
        self.reading.ohm()
    }

    /// How many steps of the display it is, with its sign; 0 for a reply over the wire and for over-range.
    #[getter]
    fn counts(&self) -> i64 {
        self.reading.counts()
    }

    /// Whether the resistance is beyond the span: there is no value.
    #[getter]
    fn over(&self) -> bool {
        self.reading.over()
    }

    /// Whether a minus was shown: legal in zeroed mode and on a short, not distinguishable from zero.
    #[getter]
    fn negative(&self) -> bool {
        self.reading.negative()
    }

    /// The span it was read on.
    #[getter]
    fn span(&self) -> Span {
        self.span
    }

    /// The text that was read.
    #[getter]
    fn text<'py>(&self, py: Python<'py>) -> Bound<'py, PyAny> {
        self.given(py)
    }

    fn __hash__(&self, py: Python<'_>) -> PyResult<isize> {
        hash_of(py, (self.span.__hash__(py)?, self.ohm(), self.over(), self.negative()))
    }

    fn __reduce__<'py>(&self, py: Python<'py>) -> PyResult<(Bound<'py, PyAny>, Bound<'py, PyTuple>)> {
        again(py, (self.span, self.method(), self.given(py)))
    }

    fn __repr__(&self, py: Python<'_>) -> PyResult<String> {
        Ok(format!("{}.{}({})", self.span.__repr__(py)?, self.method(), self.given(py).repr()?))
    }

    fn __str__(&self) -> String {
        let label = self.span.0.label();
        if self.over() {
            return format!("beyond {label}");
        }
        let sign = if self.negative() && self.ohm() == 0.0 { "-" } else { "" };
        format!("{sign}{} ohm on {label}", self.ohm().abs().copysign(if sign.is_empty() { self.ohm() } else { 1.0 }))
    }
}

/// Many readings on one span, with their numbers as arrays; they come from `Span.read` of a sequence.
///
/// Examples
/// --------
/// >>> from reckohm.meter import Meter
/// >>> span = Meter.example_hand_held().spans[2]
/// >>> readings = span.read(["4.70", "1", "4.72"])
/// >>> len(readings), readings.over
/// (3, array([False,  True, False]))
/// >>> readings[2].ohm
/// 4720.0
/// >>> readings, valid = span.read(["4.70", "hello"], on_invalid="mask")
/// >>> valid, readings[1] is None
/// (array([ True, False]), True)
#[pyclass(frozen, eq, sequence, module = "reckohm.meter")]
#[derive(Clone, PartialEq)]
pub struct Readings {
    span: Span,
    readings: Vec<Option<Reading>>,
}

impl Readings {
    pub(super) fn new(span: Span, readings: Vec<Option<Reading>>) -> Readings {
        Readings { span, readings }
    }

    fn array<'py, T: IntoPyObject<'py> + Copy>(
        &self,
        py: Python<'py>,
        dtype: &str,
        of: impl Fn(&Reading) -> T,
        without: T,
    ) -> PyResult<Bound<'py, PyAny>> {
        let values: Vec<T> = self.readings.iter().map(|reading| reading.as_ref().map_or(without, &of)).collect();
        let list = pyo3::types::PyList::new(py, values)?;
        py.import("numpy")?.call_method1("array", (list, dtype))
    }
}

#[pymethods]
impl Readings {
    /// The resistances in ohm, NaN where there is no reading; of over-range readings the span's full scale.
    #[getter]
    fn ohm<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyAny>> {
        self.array(py, "f8", |reading| reading.ohm(), f64::NAN)
    }

    /// Steps of the display, 0 where there is no reading.
    #[getter]
    fn counts<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyAny>> {
        self.array(py, "i8", |reading| reading.counts(), 0)
    }

    /// Which are beyond the span.
    #[getter]
    fn over<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyAny>> {
        self.array(py, "?", |reading| reading.over(), false)
    }

    /// Which showed a minus.
    #[getter]
    fn negative<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyAny>> {
        self.array(py, "?", |reading| reading.negative(), false)
    }

    /// The span they were read on.
    #[getter]
    fn span(&self) -> Span {
        self.span
    }

    fn __len__(&self) -> usize {
        self.readings.len()
    }

    fn __getitem__(&self, index: isize) -> PyResult<Option<Reading>> {
        let at = if index < 0 { index + self.readings.len() as isize } else { index };
        let found = usize::try_from(at).ok().and_then(|at| self.readings.get(at));
        found.cloned().ok_or_else(|| PyIndexError::new_err(format!("reading {index} of {}", self.readings.len())))
    }

    fn __hash__(&self, py: Python<'_>) -> PyResult<isize> {
        PyTuple::new(py, self.readings.to_vec())?.hash()
    }

    fn __reduce__<'py>(&self, py: Python<'py>) -> PyResult<(Bound<'py, PyAny>, Bound<'py, PyAny>)> {
        let make = py.import("reckohm.meter")?.getattr("_readings")?;
        Ok((make, (self.span, self.readings.clone()).into_pyobject(py)?.into_any()))
    }

    fn __repr__(&self, py: Python<'_>) -> PyResult<String> {
        let lost = self.readings.iter().any(Option::is_none);
        let method = match self.readings.iter().flatten().next() {
            Some(reading) => reading.method(),
            None => "read",
        };
        let texts = self.readings.iter().map(|reading| match reading {
            Some(reading) => Ok(reading.given(py).repr()?.to_string()),
            None => Ok("'no reading'".to_owned()),
        });
        let texts = texts.collect::<PyResult<Vec<_>>>()?.join(", ");
        let (option, first) = if lost { (", on_invalid='mask'", "[0]") } else { ("", "") };
        Ok(format!("{}.{method}([{texts}]{option}){first}", self.span.__repr__(py)?))
    }
}

/// Readings from a pickle.
#[pyfunction]
pub(super) fn _readings(span: Span, readings: Vec<Option<Reading>>) -> Readings {
    Readings { span, readings }
}
