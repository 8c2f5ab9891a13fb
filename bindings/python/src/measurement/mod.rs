//! `reckohm.measurement`.

use pyo3::prelude::*;
use pyo3::types::{PyDict, PyList, PyString, PyTuple};
use reckohm::measurement as core;
use reckohm::uncertainty as uncertainty_core;

mod budget;

pub use budget::Budget;

use crate::errors::{Failure, contradiction};
use crate::meter::{Leads, Meter, Reading};
use crate::uncertainty::Estimate;
use crate::values::{Number, hash_of, wrong_type};

/// A quantity that may be uncertain: an `Estimate`, or a number, which then is exact.
#[derive(Clone, Copy, PartialEq)]
struct Quantity(uncertainty_core::Estimate);

impl<'a, 'py> FromPyObject<'a, 'py> for Quantity {
    type Error = PyErr;

    fn extract(value: Borrowed<'a, 'py, PyAny>) -> PyResult<Quantity> {
        if let Ok(estimate) = value.cast::<Estimate>() {
            return Ok(Quantity(estimate.get().0));
        }
        match value.extract::<Number>() {
            Ok(number) => Ok(Quantity(uncertainty_core::Estimate::exact(number.0).map_err(Failure::from)?)),
            Err(_) => Err(wrong_type(&value.to_owned(), "a float, an int or an Estimate")?),
        }
    }
}

/// What was said beside the readings.
#[derive(Clone, PartialEq)]
struct Options {
    leads: Option<Leads>,
    shunt_ohm: Option<Quantity>,
    known_tcr: Option<Quantity>,
    tcr_limit: Option<f64>,
    temperature_c: Option<Quantity>,
    reference_temperature_c: Option<f64>,
    meter_temperature_c: Option<f64>,
    repeatability_ohm: Option<f64>,
    zero_error_common: Option<bool>,
    meter: Option<Meter>,
    coverage_probability: f64,
}

impl Options {
    fn setup(&self) -> Result<core::Setup<'_>, core::MeasurementError> {
        let mut setup = core::Setup::new().with_coverage_probability(self.coverage_probability)?;
        if let Some(leads) = &self.leads {
            setup = setup.with_leads(leads.leads);
        }
        if let Some(Quantity(path)) = self.shunt_ohm {
            setup = setup.with_parallel_path(path)?;
        }
        if let Some(Quantity(coefficient)) = self.known_tcr {
            setup = setup.with_known_tcr(coefficient)?;
        }
        if let Some(limit) = self.tcr_limit {
            setup = setup.with_tcr_limit(limit)?;
        }
        match (self.temperature_c, self.reference_temperature_c) {
            (Some(Quantity(temperature)), Some(reference)) => setup = setup.with_temperature(temperature, reference)?,
            (None, None) => {}
            _ => return Err(core::MeasurementError::TemperatureMissing),
        }
        if let Some(temperature) = self.meter_temperature_c {
            setup = setup.with_meter_temperature(temperature)?;
        }
        if let Some(repeatability) = self.repeatability_ohm {
            setup = setup.with_repeatability(repeatability)?;
        }
        if let Some(common) = self.zero_error_common {
            setup = setup.with_zero_error_common(common);
        }
        if let Some(meter) = &self.meter {
            setup = setup.with_spans(&meter.spans);
        }
        Ok(setup)
    }

    /// The options that were given, as Python names them.
    fn given<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyDict>> {
        let options = PyDict::new(py);
        let quantity = |quantity: Quantity| Estimate(quantity.0);
        if let Some(leads) = &self.leads {
            options.set_item("leads", leads.clone())?;
        }
        let quantities =
            [("shunt_ohm", self.shunt_ohm), ("known_tcr", self.known_tcr), ("temperature_c", self.temperature_c)];
        for (name, given) in quantities {
            if let Some(given) = given {
                options.set_item(name, quantity(given))?;
            }
        }
        let numbers = [
            ("tcr_limit", self.tcr_limit),
            ("reference_temperature_c", self.reference_temperature_c),
            ("meter_temperature_c", self.meter_temperature_c),
            ("repeatability_ohm", self.repeatability_ohm),
        ];
        for (name, given) in numbers {
            if let Some(given) = given {
                options.set_item(name, given)?;
            }
        }
        if let Some(common) = self.zero_error_common {
            options.set_item("zero_error_common", common)?;
        }
        if let Some(meter) = &self.meter {
            options.set_item("meter", meter.clone())?;
        }
        if self.coverage_probability != 0.95 {
            options.set_item("coverage_probability", self.coverage_probability)?;
        }
        Ok(options)
    }
}

/// A measured part: its estimate, the budget behind it, and what would make it better; it comes from `evaluate`.
///
/// Examples
/// --------
/// >>> from reckohm.measurement import evaluate
/// >>> from reckohm.meter import Meter
/// >>> meter = Meter.example_hand_held()
/// >>> measured = evaluate(meter.spans[2].read(["4.66", "4.67", "4.66"]), meter=meter)
/// >>> print(measured.estimate)
/// 4663 ± 66
/// >>> print(measured.advice[0])
/// the accuracy clause of the meter dominates: 99 % of the variance; U is 65.5 ohm
#[pyclass(frozen, eq, from_py_object, module = "reckohm.measurement")]
#[derive(Clone, PartialEq)]
pub struct Measurement {
    readings: Vec<Reading>,
    options: Options,
    measurement: core::Measurement,
}

#[pymethods]
impl Measurement {
    #[classattr]
    fn __match_args__() -> (&'static str, &'static str, &'static str) {
        ("estimate", "budget", "advice")
    }

    /// The resistance in ohm, with the shape of its uncertainty.
    #[getter]
    fn estimate(&self) -> Estimate {
        Estimate(*self.measurement.estimate())
    }

    /// The uncertainty budget.
    #[getter]
    fn budget(&self) -> Budget {
        Budget { measurement: self.clone() }
    }

    /// What dominates, and what would help, the most useful first.
    #[getter]
    fn advice<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyTuple>> {
        let class = py.import("reckohm.measurement")?.getattr("Advice")?;
        let made = self.measurement.advice().map(|advice| {
            let name = kind_name(advice.kind);
            let contribution = advice.contribution.name();
            let (now, then) = (advice.expanded_now_ohm, advice.expanded_then_ohm);
            class.call1((name, contribution, advice.share, now, then, advice.number, advice.to_string()))
        });
        PyTuple::new(py, made.collect::<PyResult<Vec<_>>>()?)
    }

    /// The readings it was made from.
    #[getter]
    fn readings<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyTuple>> {
        PyTuple::new(py, self.readings.clone())
    }

    /// Whether the readings agreed so well that their scatter was taken as 0.3 of the display's step each.
    #[getter]
    fn scatter_at_floor(&self) -> bool {
        self.measurement.scatter_at_floor()
    }

    fn __hash__(&self, py: Python<'_>) -> PyResult<isize> {
        let [estimate, readings] = [Bound::new(py, self.estimate())?.hash()?, self.readings(py)?.hash()?];
        hash_of(py, (estimate, readings))
    }

    fn __reduce__<'py>(&self, py: Python<'py>) -> PyResult<(Bound<'py, PyAny>, Bound<'py, PyAny>)> {
        let evaluate = py.import("reckohm._again")?.getattr("evaluate")?;
        let readings = PyList::new(py, self.readings.clone())?;
        Ok((evaluate, (readings, self.options.given(py)?).into_pyobject(py)?.into_any()))
    }

    fn __repr__(&self, py: Python<'_>) -> PyResult<String> {
        let mut text = format!("evaluate({}", PyList::new(py, self.readings.clone())?.repr()?);
        for (name, value) in self.options.given(py)? {
            text += &format!(", {name}={}", value.repr()?);
        }
        Ok(text + ")")
    }

    fn __str__(&self) -> String {
        let mut lines = vec![self.measurement.budget().to_string()];
        lines.extend(self.measurement.advice().map(ToString::to_string));
        lines.join("\n")
    }

    fn _repr_html_(slf: &Bound<'_, Self>) -> PyResult<Py<PyAny>> {
        Ok(slf.py().import("reckohm._tables")?.call_method1("measurement", (slf,))?.unbind())
    }
}

fn kind_name(kind: core::AdviceKind) -> String {
    // The kind's own name in the core, as words.
    let mut name = String::new();
    for letter in format!("{kind:?}").chars() {
        if letter.is_ascii_uppercase() && !name.is_empty() {
            name.push(' ');
        }
        name.push(letter.to_ascii_lowercase());
    }
    name
}

/// The readings, however they are given.
fn readings_of(given: &Bound<'_, PyAny>) -> PyResult<Vec<Reading>> {
    let allowed = "a Reading or a sequence of them";
    if let Ok(one) = given.cast::<Reading>() {
        return Ok(vec![one.get().clone()]);
    }
    if given.is_instance_of::<PyString>() {
        return Err(wrong_type(given, "a Reading, which Span.read makes of a text,")?);
    }
    let refused = |_| wrong_type(given, allowed).unwrap_or_else(|error| error);
    let readings = given.try_iter().map_err(refused)?.map(|item| {
        let item = item?;
        let found = item.cast::<Reading>().map(|reading| reading.get().clone());
        found.map_err(|_| wrong_type(&item, allowed).unwrap_or_else(|error| error))
    });
    readings.collect()
}

/// Evaluates readings of one part on one span: their mean, less the leads, less a parallel path, at the reference
/// temperature, with the uncertainty of each (JCGM 100).
///
/// The meter's accuracy clause is common to all readings, so more readings do not make it smaller; only their scatter
/// does. One reading alone does not show its scatter, and the advice says so.
///
/// Disconnect the part from every circuit and discharge what is across it before measuring.
///
/// Parameters
/// ----------
/// readings : Reading, Readings or sequence of Reading
///     What was shown, all on one span.
/// leads : Leads, optional
///     The leads, to be taken off.
/// shunt_ohm : float or Estimate, optional
///     A path in parallel with the part, to be taken off.
/// known_tcr : float or Estimate, optional
///     A temperature coefficient that is known, in ppm/K: the result is corrected to the reference temperature.
/// tcr_limit : float, optional
///     A marked temperature coefficient, in ppm/K: a limit, which widens the result and corrects nothing.
/// temperature_c : float or Estimate, optional
///     Temperature of the part; it goes with a coefficient and the reference temperature.
/// reference_temperature_c : float, optional
///     The temperature that the nominal value is for.
/// meter_temperature_c : float, optional
///     Temperature of the meter, where it may be outside the band of its clause.
/// repeatability_ohm : float, optional
///     Standard deviation of single readings known from before, in place of the scatter of these.
/// zero_error_common : bool, optional
///     Whether the fixed part of the meter's error is the same in the readings of part and leads on one span; the wider of
///     the two where nothing is said.
/// meter : Meter, optional
///     The meter, so that the advice can say what another span would bring.
/// coverage_probability : float
///     Of the budget's expanded uncertainty.
///
/// Returns
/// -------
/// Measurement
///
/// Raises
/// ------
/// CountError
///     No reading.
/// RangeError
///     A reading beyond the span, with its index, or a number outside its range.
/// ContradictionError
///     Readings on different spans, or a parallel path at or below what is shown.
/// MissingError
///     A temperature without a coefficient or the other way round; a meter outside its band whose clause has no coefficient.
///
/// Examples
/// --------
/// >>> from reckohm.measurement import evaluate
/// >>> from reckohm.meter import Leads, Meter
/// >>> span = Meter.example_hand_held().spans[0]
/// >>> lamp = evaluate(span.read(["02.9", "02.9", "02.8"]), leads=Leads(span.read("00.4")))
/// >>> print(lamp.estimate)
/// 2.47 ± 0.45
/// >>> lamp.budget.rows[1].contribution
/// 'accuracy clause of the meter'
#[pyfunction]
#[pyo3(
    signature = (
        readings, *, leads=None, shunt_ohm=None, known_tcr=None, tcr_limit=None, temperature_c=None,
        reference_temperature_c=None, meter_temperature_c=None, repeatability_ohm=None, zero_error_common=None,
        meter=None, coverage_probability=Number(0.95)
    ),
    text_signature = "(readings, *, leads=None, shunt_ohm=None, known_tcr=None, tcr_limit=None, temperature_c=None, \
        reference_temperature_c=None, meter_temperature_c=None, repeatability_ohm=None, zero_error_common=None, \
        meter=None, coverage_probability=0.95)"
)]
#[allow(clippy::too_many_arguments)]
fn evaluate(
    py: Python<'_>,
    readings: &Bound<'_, PyAny>,
    leads: Option<&Bound<'_, PyAny>>,
    shunt_ohm: Option<Quantity>,
    known_tcr: Option<Quantity>,
    tcr_limit: Option<Number>,
    temperature_c: Option<Quantity>,
    reference_temperature_c: Option<Number>,
    meter_temperature_c: Option<Number>,
    repeatability_ohm: Option<Number>,
    zero_error_common: Option<bool>,
    meter: Option<&Bound<'_, PyAny>>,
    coverage_probability: Number,
) -> PyResult<Measurement> {
    let leads = leads.map(|given| match given.cast::<Leads>() {
        Ok(leads) => Ok(leads.get().clone()),
        Err(_) => Err(wrong_type(given, "Leads").unwrap_or_else(|error| error)),
    });
    let meter = meter.map(|given| match given.cast::<Meter>() {
        Ok(meter) => Ok(meter.get().clone()),
        Err(_) => Err(wrong_type(given, "a Meter").unwrap_or_else(|error| error)),
    });
    let plain = |number: Option<Number>| number.map(|number| number.0);
    let options = Options {
        leads: leads.transpose()?,
        shunt_ohm,
        known_tcr,
        tcr_limit: plain(tcr_limit),
        temperature_c,
        reference_temperature_c: plain(reference_temperature_c),
        meter_temperature_c: plain(meter_temperature_c),
        repeatability_ohm: plain(repeatability_ohm),
        zero_error_common,
        meter: meter.transpose()?,
        coverage_probability: coverage_probability.0,
    };
    let readings = readings_of(readings)?;
    let Some(first) = readings.first() else {
        return Err(Failure::from(core::MeasurementError::NoReading).into());
    };
    let span = *first.core_span();
    if let Some(index) = readings.iter().position(|reading| *reading.core_span() != span) {
        let (one, other) = (span.label(), readings[index].core_span().label());
        return Err(contradiction(
            py,
            &format!(
                "evaluating readings: reading {index} is on {other}, those before it on {one}; readings on one span \
                 allowed; evaluate each span by itself"
            ),
        ));
    }
    let plain: Vec<_> = readings.iter().map(|reading| reading.reading).collect();
    let setup = options.setup().map_err(Failure::from)?;
    let measurement = core::evaluate(&span, &plain, &setup).map_err(|error| {
        let index = matches!(error, core::MeasurementError::OverRange { .. });
        let failure = Failure::from(error);
        if index { failure.at_index() } else { failure }
    })?;
    Ok(Measurement { readings, options, measurement })
}

/// What the module holds.
pub fn fill(_compiled: &Bound<'_, PyModule>, module: &Bound<'_, PyModule>) -> PyResult<()> {
    module.add_class::<Measurement>()?;
    module.add_class::<Budget>()?;
    module.add_function(wrap_pyfunction!(evaluate, module)?)
}
