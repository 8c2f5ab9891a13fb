//! `reckohm.meter.Span`.

use pyo3::prelude::*;
use pyo3::types::{PyBytes, PyDict, PyString, PyTuple};
use reckohm::meter as core;

use super::reading::{Reading, Readings};
use crate::errors::Failure;
use crate::values::{Number, Pair, choice, hash_of, text_of, text_or_bytes, wrong_type};

const MARKS: [(&str, core::Marks); 4] = [
    ("1", core::Marks::ONE_ALONE),
    ("OL", core::Marks::OL),
    ("blank", core::Marks::BLANK),
    ("dashes", core::Marks::DASHES),
];

/// The marks by their names: one text, or a sequence of them.
fn marks_of(names: &Bound<'_, PyAny>) -> PyResult<core::Marks> {
    let one = |name: &Bound<'_, PyAny>| choice("over_range_marks", name, &MARKS);
    if names.is_instance_of::<PyString>() {
        return one(names);
    }
    let refused = |_| wrong_type(names, "a name or a sequence of names").unwrap_or_else(|error| error);
    names.try_iter().map_err(refused)?.try_fold(core::Marks::NONE, |marks, name| Ok(marks | one(&name?)?))
}

/// One setting of a meter: what its display can show there, and how good it is.
///
/// The accuracy clause is ±(``fraction_of_reading`` of the reading + ``fraction_of_span`` of full scale +
/// ``accuracy_counts`` steps of the display), as the meter's specification states it; it bounds the sum. Unless told
/// otherwise it is a limit, the rounding by the display is inside the counts, it holds from 18 to 28 °C, and nothing is
/// known outside of that (all common practice).
///
/// Parameters
/// ----------
/// label : str
///     What stands beside the meter's knob, 1 to 15 bytes.
/// full_scale_ohm : float
///     The first value that the display no longer shows: 20e3 for a display of 2000 counts on 20 kohm.
/// resolution_ohm : float
///     The step of the last digit: 1, 2 or 5 times a power of ten.
/// display_unit_ohm : float
///     The unit that the display shows in: 0.001, 1, 1e3, 1e6 or 1e9.
/// over_range_marks : str or sequence of str
///     How a value beyond the span is marked: "1" (alone), "OL", "blank", "dashes".
/// fraction_of_reading, accuracy_counts, fraction_of_span : float
///     The clause.
/// coverage_factor : float, optional
///     If the clause is stated as an expanded uncertainty of a normal error, its coverage factor; a limit without it.
/// step_included : bool
///     Whether the rounding by the display's step is inside the counts.
/// temperature_band_c : tuple of float
///     Meter temperatures at which the clause holds as it stands.
/// temperature_coefficient_per_kelvin : float, optional
///     How much wider the clause is for each kelvin outside the band, as a part of itself; a tenth is common.
/// zeroing_required : bool
///     Whether the clause holds only after zeroing.
///
/// Raises
/// ------
/// RangeError, ContradictionError, MissingError, TextError, MeterError
///     Numbers that no meter has, or that contradict one another.
///
/// Examples
/// --------
/// >>> from reckohm.meter import Span
/// >>> span = Span("20 kohm", 20e3, 10, display_unit_ohm=1e3, over_range_marks=["1", "OL"],
/// ...             fraction_of_reading=0.008, accuracy_counts=3)
/// >>> span.read("4.70").ohm
/// 4700.0
/// >>> round(span.clause_half_width_ohm(4700), 6)
/// 67.6
#[pyclass(frozen, eq, from_py_object, module = "reckohm.meter")]
#[derive(Clone, Copy, PartialEq)]
pub struct Span(pub core::Span);

#[pymethods]
impl Span {
    #[classattr]
    fn __match_args__() -> (&'static str, &'static str, &'static str) {
        ("label", "full_scale_ohm", "resolution_ohm")
    }

    #[new]
    #[pyo3(
        signature = (
            label, full_scale_ohm, resolution_ohm, *, display_unit_ohm, over_range_marks, fraction_of_reading,
            accuracy_counts, fraction_of_span=Number(0.0), coverage_factor=None, step_included=true,
            temperature_band_c=Pair(18.0, 28.0), temperature_coefficient_per_kelvin=None,
            zeroing_required=false,
        ),
        text_signature = "(label, full_scale_ohm, resolution_ohm, *, display_unit_ohm, over_range_marks, \
            fraction_of_reading, accuracy_counts, fraction_of_span=0.0, coverage_factor=None, step_included=True, \
            temperature_band_c=(18.0, 28.0), temperature_coefficient_per_kelvin=None, zeroing_required=False)"
    )]
    #[allow(clippy::too_many_arguments)]
    fn new(
        label: &Bound<'_, PyAny>,
        full_scale_ohm: Number,
        resolution_ohm: Number,
        display_unit_ohm: Number,
        over_range_marks: &Bound<'_, PyAny>,
        fraction_of_reading: Number,
        accuracy_counts: Number,
        fraction_of_span: Number,
        coverage_factor: Option<Number>,
        step_included: bool,
        temperature_band_c: Pair,
        temperature_coefficient_per_kelvin: Option<Number>,
        zeroing_required: bool,
    ) -> PyResult<Span> {
        let label = text_of(label)?;
        let marks = marks_of(over_range_marks)?;
        let make = || -> Result<core::Span, core::MeterError> {
            let Pair(lower, upper) = temperature_band_c;
            let mut clause = core::Clause::new(fraction_of_reading.0, accuracy_counts.0)?
                .with_fraction_of_span(fraction_of_span.0)?
                .with_temperature_band_c(lower, upper)?;
            if let Some(factor) = coverage_factor {
                clause = clause.with_coverage_factor(factor.0)?;
            }
            if let Some(coefficient) = temperature_coefficient_per_kelvin {
                clause = clause.with_temperature_coefficient_per_kelvin(coefficient.0)?;
            }
            if !step_included {
                clause = clause.with_step_outside_counts();
            }
            if zeroing_required {
                clause = clause.with_zeroing_required();
            }
            core::Span::new(&label, full_scale_ohm.0, resolution_ohm.0, display_unit_ohm.0, marks, clause)
        };
        Ok(Span(make().map_err(Failure::from)?))
    }

    /// What stands beside the meter's knob.
    #[getter]
    fn label(&self) -> &str {
        self.0.label().as_str()
    }

    /// The first value that the display no longer shows, in ohm.
    #[getter]
    fn full_scale_ohm(&self) -> f64 {
        self.0.full_scale_ohm()
    }

    /// The same in steps of the display.
    #[getter]
    fn full_scale_counts(&self) -> i64 {
        self.0.full_scale_counts()
    }

    /// The step of the last digit, in ohm.
    #[getter]
    fn resolution_ohm(&self) -> f64 {
        self.0.step_ohm()
    }

    /// The unit that the display shows in, in ohm.
    #[getter]
    fn display_unit_ohm(&self) -> f64 {
        self.0.display_unit_ohm()
    }

    /// How a value beyond the span is marked.
    #[getter]
    fn over_range_marks<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyTuple>> {
        let marks = self.0.marks();
        PyTuple::new(
            py,
            MARKS.iter().filter(|(_, mark)| marks.contains(*mark)).map(|(name, _)| *name).collect::<Vec<_>>(),
        )
    }

    /// The part of the clause that grows with the reading.
    #[getter]
    fn fraction_of_reading(&self) -> f64 {
        self.0.clause().fraction_of_reading()
    }

    /// The part of the clause in steps of the display.
    #[getter]
    fn accuracy_counts(&self) -> f64 {
        self.0.clause().counts()
    }

    /// The part of the clause that is a fraction of full scale.
    #[getter]
    fn fraction_of_span(&self) -> f64 {
        self.0.clause().fraction_of_span()
    }

    /// The coverage factor where the clause is a stated coverage, None where it is a limit.
    #[getter]
    fn coverage_factor(&self) -> Option<f64> {
        self.0.clause().coverage_factor()
    }

    /// Whether the rounding by the display's step is inside the counts.
    #[getter]
    fn step_included(&self) -> bool {
        self.0.clause().step_included()
    }

    /// Meter temperatures in °C at which the clause holds as it stands.
    #[getter]
    fn temperature_band_c(&self) -> (f64, f64) {
        self.0.clause().temperature_band_c()
    }

    /// How much wider the clause is for each kelvin outside the band, None where that is not known.
    #[getter]
    fn temperature_coefficient_per_kelvin(&self) -> Option<f64> {
        self.0.clause().temperature_coefficient_per_kelvin()
    }

    /// Whether the clause holds only after zeroing.
    #[getter]
    fn zeroing_required(&self) -> bool {
        self.0.clause().zeroing_required()
    }

    /// Half-width of the accuracy clause at a value, in ohm.
    ///
    /// Parameters
    /// ----------
    /// ohm : float
    ///     The value shown.
    /// meter_temperature_c : float, optional
    ///     Temperature of the meter, where it may be outside the band.
    ///
    /// Raises
    /// ------
    /// MissingError
    ///     A temperature outside the band, of a clause without a temperature coefficient.
    ///
    /// Examples
    /// --------
    /// >>> from reckohm.meter import Meter
    /// >>> span = Meter.example_hand_held().spans[2]
    /// >>> round(span.clause_half_width_ohm(4700, meter_temperature_c=35), 2)
    /// 114.92
    #[pyo3(signature = (ohm, *, meter_temperature_c=None))]
    fn clause_half_width_ohm(&self, ohm: Number, meter_temperature_c: Option<Number>) -> Result<f64, Failure> {
        Ok(self.0.clause_half_width_ohm(ohm.0, meter_temperature_c.map(|given| given.0))?)
    }

    /// What the display will show for a resistance, the over-range mark beyond full scale.
    ///
    /// Examples
    /// --------
    /// >>> from reckohm.meter import Meter
    /// >>> span = Meter.example_hand_held().spans[1]
    /// >>> span.display_text(1462.3), span.display_text(2300)
    /// ('1.462', '1')
    fn display_text(&self, ohm: Number) -> Result<String, Failure> {
        Ok(self.0.display_text(ohm.0)?.as_str().to_owned())
    }

    /// What the display showed, as a reading in ohm.
    ///
    /// The text is taken as the display shows it, in the display's unit: over-range marks of the span are understood, a
    /// decimal comma, a minus in front, k, M or G behind. Whatever this span cannot show is an error that says which and
    /// names the readings that it could be: a missing point, too many digits, a value beyond full scale or off the grid.
    ///
    /// Parameters
    /// ----------
    /// text : str or sequence of str
    ///     What the display showed, never a number: digits count.
    /// on_invalid : {"raise", "mask"}
    ///     For a sequence: an error that names the first bad text, or a pair of the readings and a mask of the good ones.
    ///
    /// Returns
    /// -------
    /// Reading or Readings
    ///
    /// Raises
    /// ------
    /// DisplayError, TextError, CountError
    ///     A text that is no reading of this span; ``index`` is the byte offset, or the element of a sequence.
    ///
    /// Examples
    /// --------
    /// >>> from reckohm.meter import Meter
    /// >>> span = Meter.example_hand_held().spans[1]
    /// >>> span.read("1.462").ohm, span.read("1").over
    /// (1462.0, True)
    /// >>> span.read(["1.462", "1.463", "1.462"]).ohm
    /// array([1462., 1463., 1462.])
    #[pyo3(signature = (text, *, on_invalid="raise"))]
    fn read<'py>(&self, text: &Bound<'py, PyAny>, on_invalid: &str) -> PyResult<Bound<'py, PyAny>> {
        self.readings(text, on_invalid, false)
    }

    /// What a reply over the wire says (IEEE 488.2, SCPI-1999), as a reading in ohm.
    ///
    /// 9.9E37 is over-range, 9.91E37 is no reading and an error.
    ///
    /// Parameters
    /// ----------
    /// text : str, bytes or a sequence of them
    ///     The reply, in ohm.
    /// on_invalid : {"raise", "mask"}
    ///     As of `read`.
    ///
    /// Returns
    /// -------
    /// Reading or Readings
    ///
    /// Raises
    /// ------
    /// DisplayError, TextError, CountError
    ///     A reply that is no reading.
    ///
    /// Examples
    /// --------
    /// >>> from reckohm.meter import Meter
    /// >>> span = Meter.example_bench().spans[2]
    /// >>> span.read_reply(b"+4.70120000E+03").ohm, span.read_reply("9.9E37").over
    /// (4701.2, True)
    #[pyo3(signature = (text, *, on_invalid="raise"))]
    fn read_reply<'py>(&self, text: &Bound<'py, PyAny>, on_invalid: &str) -> PyResult<Bound<'py, PyAny>> {
        self.readings(text, on_invalid, true)
    }

    pub(crate) fn __hash__(&self, py: Python<'_>) -> PyResult<isize> {
        hash_of(py, (self.label(), self.full_scale_ohm(), self.resolution_ohm(), self.display_unit_ohm()))
    }

    fn __getnewargs_ex__<'py>(&self, py: Python<'py>) -> PyResult<((String, f64, f64), Bound<'py, PyDict>)> {
        let options = PyDict::new(py);
        options.set_item("display_unit_ohm", self.display_unit_ohm())?;
        options.set_item("over_range_marks", self.over_range_marks(py)?)?;
        options.set_item("fraction_of_reading", self.fraction_of_reading())?;
        options.set_item("accuracy_counts", self.accuracy_counts())?;
        if self.fraction_of_span() != 0.0 {
            options.set_item("fraction_of_span", self.fraction_of_span())?;
        }
        if let Some(factor) = self.coverage_factor() {
            options.set_item("coverage_factor", factor)?;
        }
        if !self.step_included() {
            options.set_item("step_included", false)?;
        }
        if self.temperature_band_c() != (18.0, 28.0) {
            options.set_item("temperature_band_c", self.temperature_band_c())?;
        }
        if let Some(coefficient) = self.temperature_coefficient_per_kelvin() {
            options.set_item("temperature_coefficient_per_kelvin", coefficient)?;
        }
        if self.zeroing_required() {
            options.set_item("zeroing_required", true)?;
        }
        Ok(((self.label().to_owned(), self.full_scale_ohm(), self.resolution_ohm()), options))
    }

    pub(crate) fn __repr__(&self, py: Python<'_>) -> PyResult<String> {
        let ((label, full_scale_ohm, resolution_ohm), options) = self.__getnewargs_ex__(py)?;
        let label = PyString::new(py, &label).repr()?;
        let mut text = format!("Span({label}, {full_scale_ohm:?}, {resolution_ohm:?}");
        for (name, value) in options {
            text += &format!(", {name}={}", value.repr()?);
        }
        Ok(text + ")")
    }
}

impl Span {
    fn one(&self, text: &[u8], reply: bool) -> Result<Reading, Failure> {
        let read = if reply { self.0.read_reply(text) } else { self.0.read(text) };
        let reading = read.map_err(|error| Failure::from(error).in_text(text))?;
        Ok(Reading::new(*self, reading, text.to_vec(), reply))
    }

    fn readings<'py>(&self, text: &Bound<'py, PyAny>, on_invalid: &str, reply: bool) -> PyResult<Bound<'py, PyAny>> {
        let py = text.py();
        let mask =
            choice("on_invalid", &PyString::new(py, on_invalid).into_any(), &[("raise", false), ("mask", true)])?;
        if text.is_instance_of::<PyString>() || text.is_instance_of::<PyBytes>() {
            let result = self.one(&text_or_bytes(text)?, reply);
            return match (result, mask) {
                (Ok(reading), false) => Ok(Bound::new(py, reading)?.into_any()),
                (Ok(reading), true) => Ok((reading, true).into_pyobject(py)?.into_any()),
                (Err(failure), false) => Err(failure.into()),
                (Err(_), true) => Ok((py.None(), false).into_pyobject(py)?.into_any()),
            };
        }
        let refused =
            |_| wrong_type(text, "a text as the display shows it, or a sequence of texts,").unwrap_or_else(|e| e);
        let texts = text.try_iter().map_err(refused)?;
        let texts = texts.map(|text| text_or_bytes(&text?)).collect::<PyResult<Vec<_>>>()?;
        let results: Vec<_> = texts.iter().map(|text| self.one(text, reply)).collect();
        let valid: Vec<bool> = results.iter().map(Result::is_ok).collect();
        if !mask {
            let failed = valid.iter().filter(|good| !**good).count();
            for (index, result) in results.iter().enumerate() {
                if let Err(failure) = result {
                    return Err(failure.raise_in_array(py, index, failed, texts.len()));
                }
            }
        }
        let readings = Bound::new(py, Readings::new(*self, results.into_iter().map(Result::ok).collect()))?.into_any();
        if !mask {
            return Ok(readings);
        }
        let valid = py.import("numpy")?.call_method1("array", (valid, "bool"))?;
        Ok((readings, valid).into_pyobject(py)?.into_any())
    }
}
