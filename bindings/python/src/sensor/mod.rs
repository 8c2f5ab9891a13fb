//! `reckohm.sensor`.

mod kernel;

use kernel::{Conversion, Named, Resistance, Slope, Temperature};
use pyo3::prelude::*;
use pyo3::types::{PyDict, PyFloat, PySet, PyTuple};
use reckohm::sensor::{BValueFormula, BValueThermistor, Model, SensorError, SteinhartHart, SteinhartHartFormula};

use crate::errors::Failure;
use crate::uncertainty::Estimate;
use crate::values::{Number, Pair, again, hash_of, input_type_error, shown, wrong_type};
use crate::vector::{Input, Options};

/// A thermistor: a part whose resistance falls steeply as it warms.
///
/// It comes from `Thermistor.b_value` or `Thermistor.steinhart_hart`. What lies outside its domain is refused, never
/// extrapolated. The equations are for zero power: self-heating by the meter's current is not in them.
///
/// Examples
/// --------
/// The thermistor of a greenhouse's frost alarm: 10 kohm at 25 °C, B25/85 = 3977 K. Frost lies outside the two temperatures
/// that this B-value belongs to, so it is asked for by name:
///
/// >>> from reckohm.sensor import Thermistor
/// >>> thermistor = Thermistor.b_value(10_000, 25, 3977, (25, 85)).with_domain((-25, 85))
/// >>> round(thermistor.temperature_c(32_650), 2)
/// 0.71
/// >>> thermistor.resistance_ohm([0.0, 25.0]).round(1)
/// array([33900.4, 10000. ])
///
/// What is known of the resistance is known of the temperature:
///
/// >>> from reckohm.uncertainty import Estimate
/// >>> print(thermistor.temperature_c(Estimate(31_000).with_rectangular(250)))
/// 1.69 ± 0.15
#[pyclass(frozen, eq, from_py_object, module = "reckohm.sensor")]
#[derive(Clone, Copy, PartialEq)]
pub struct Thermistor(Formula);

#[derive(Clone, Copy, PartialEq)]
enum Formula {
    BValue(BValueThermistor),
    SteinhartHart(SteinhartHart),
}

/// Does the same with the model, whichever formula it has.
macro_rules! with_model {
    ($thermistor:expr, $model:ident => $work:expr) => {
        match &$thermistor.0 {
            Formula::BValue($model) => $work,
            Formula::SteinhartHart($model) => $work,
        }
    };
}

#[pymethods]
impl Thermistor {
    /// A thermistor by its rated resistance and B-value, as its data sheet states it (IEC 60539-1):
    /// R = rated_ohm·exp(b_kelvin·(1/T - 1/T_rated)).
    ///
    /// Parameters
    /// ----------
    /// rated_ohm : float
    ///     Rated zero-power resistance in ohm, in (0, 1e15].
    /// rated_temperature_c : float
    ///     Its temperature in degrees Celsius, 25 as a rule.
    /// b_kelvin : float
    ///     B-value in kelvin, 100 to 20 000.
    /// b_temperatures_c : tuple of float
    ///     The two temperatures in degrees Celsius that it belongs to: (25, 85) of B25/85.
    ///
    /// Returns
    /// -------
    /// Thermistor
    ///     Its domain is what these temperatures span; `with_domain` asks for another.
    ///
    /// Raises
    /// ------
    /// RangeError
    ///     A number outside its range.
    /// ContradictionError
    ///     Both temperatures of the B-value are the same.
    ///
    /// Examples
    /// --------
    /// >>> from reckohm.sensor import Thermistor
    /// >>> Thermistor.b_value(10_000, 25, 3977, (25, 85)).resistance_ohm(25.0)
    /// 10000.0
    #[staticmethod]
    fn b_value(
        rated_ohm: Number,
        rated_temperature_c: Number,
        b_kelvin: Number,
        b_temperatures_c: Pair,
    ) -> Result<Thermistor, Failure> {
        let Pair(first_c, second_c) = b_temperatures_c;
        let made = BValueThermistor::new(rated_ohm.0, rated_temperature_c.0, b_kelvin.0, [first_c, second_c])?;
        Ok(Thermistor(Formula::BValue(made)))
    }

    /// A thermistor by its Steinhart-Hart coefficients (Steinhart and Hart 1968): 1/T = a + b·L + c·L² + d·L³ with
    /// L = ln(R/reference_ohm).
    ///
    /// Parameters
    /// ----------
    /// coefficients : sequence of float
    ///     Three of them are a, b and d in 1/K (often called A, B and C), four are a, b, c and d.
    /// reference_ohm : float
    ///     1 where they are for ln R, and the rated resistance in ohm where they are for the logarithm of the ratio to it.
    /// domain_c : tuple of float
    ///     The ends in degrees Celsius between which they hold: of the points that they were found from.
    ///
    /// Returns
    /// -------
    /// Thermistor
    ///
    /// Raises
    /// ------
    /// RangeError
    ///     A number outside its range.
    /// ContradictionError
    ///     A domain without extent, or coefficients that give no resistance that falls smoothly over it.
    ///
    /// Examples
    /// --------
    /// >>> from reckohm.sensor import Thermistor
    /// >>> thermistor = Thermistor.steinhart_hart([1.129148e-3, 2.34125e-4, 8.76741e-8], 1.0, (-40, 125))
    /// >>> round(thermistor.temperature_c(10_000), 4)
    /// 24.9997
    #[staticmethod]
    fn steinhart_hart(coefficients: &Bound<'_, PyAny>, reference_ohm: Number, domain_c: Pair) -> PyResult<Thermistor> {
        const ALLOWED: &str = "a sequence of three or four numbers";
        let refused = || wrong_type(coefficients, ALLOWED).unwrap_or_else(|error| error);
        // Neither a set nor a mapping says which number is which.
        if coefficients.is_instance_of::<PyDict>() || coefficients.is_instance_of::<PySet>() {
            return Err(refused());
        }
        let given = coefficients.try_iter().map_err(|_| refused())?;
        // No more than one too many is asked for: the sequence may have no end.
        let given = given.take(5).map(|number| Ok(number?.extract::<Number>()?.0)).collect::<PyResult<Vec<f64>>>()?;
        let domain = [domain_c.0, domain_c.1];
        let made = match given[..] {
            [a, b, d] => SteinhartHart::three_terms([a, b, d], reference_ohm.0, domain),
            [a, b, c, d] => SteinhartHart::four_terms([a, b, c, d], reference_ohm.0, domain),
            _ => return Err(refused()),
        };
        Ok(Thermistor(Formula::SteinhartHart(made.map_err(Failure::from)?)))
    }

    /// The same thermistor over another domain: a narrower one, or a wider one over which its parameters are known to hold.
    ///
    /// Parameters
    /// ----------
    /// domain_c : tuple of float
    ///     The two ends in degrees Celsius, the lower one first.
    ///
    /// Returns
    /// -------
    /// Thermistor
    ///
    /// Raises
    /// ------
    /// RangeError
    ///     An end outside -200 to 1000 degrees Celsius.
    /// ContradictionError
    ///     Ends in the wrong order, or coefficients that do not hold over it.
    ///
    /// Examples
    /// --------
    /// >>> from reckohm.sensor import Thermistor
    /// >>> Thermistor.b_value(10_000, 25, 3977, (25, 85)).with_domain((-25, 85)).domain_c
    /// (-25.0, 85.0)
    fn with_domain(&self, domain_c: Pair) -> Result<Thermistor, Failure> {
        let domain = [domain_c.0, domain_c.1];
        Ok(Thermistor(match &self.0 {
            Formula::BValue(model) => Formula::BValue(model.with_domain(domain)?),
            Formula::SteinhartHart(model) => Formula::SteinhartHart(model.with_domain(domain)?),
        }))
    }

    /// The resistance in ohm at a temperature.
    ///
    /// Parameters
    /// ----------
    /// temperature_c : float, array-like or Estimate
    ///     In degrees Celsius, within the domain.
    /// out, where, on_invalid
    ///     As of `reckohm.preferred.nearest`; for numbers only.
    ///
    /// Returns
    /// -------
    /// float, array or Estimate
    ///     An estimate in gives one out: its parts scaled by the slope, the parameters counted as exact.
    ///
    /// Raises
    /// ------
    /// RangeError
    ///     A temperature outside the domain.
    ///
    /// Examples
    /// --------
    /// >>> from reckohm.sensor import Thermistor
    /// >>> round(Thermistor.b_value(10_000, 25, 3977, (25, 85)).resistance_ohm(85), 1)
    /// 1070.3
    #[pyo3(signature = (temperature_c, *, out=None, r#where=None, on_invalid="raise"))]
    fn resistance_ohm<'py>(
        &self,
        temperature_c: &Bound<'py, PyAny>,
        out: Option<&Bound<'py, PyAny>>,
        r#where: Option<&Bound<'py, PyAny>>,
        on_invalid: &str,
    ) -> PyResult<Bound<'py, PyAny>> {
        let options = Options { out, where_: r#where, on_invalid };
        if let Ok(estimate) = temperature_c.cast::<Estimate>() {
            let estimate = &estimate.get().0;
            return of_estimate(
                options,
                temperature_c,
                || with_model!(self, model => model.resistance_estimate(estimate)),
            );
        }
        with_model!(self, model => ask::<Resistance, _>(model, temperature_c, options))
    }

    /// How much the resistance changes with the temperature, in ohm a kelvin: the derivative of the formula itself.
    ///
    /// Parameters
    /// ----------
    /// temperature_c : float or array-like
    ///     In degrees Celsius, within the domain.
    /// out, where, on_invalid
    ///     As of `reckohm.preferred.nearest`.
    ///
    /// Returns
    /// -------
    /// float or array
    ///
    /// Raises
    /// ------
    /// RangeError
    ///     A temperature outside the domain.
    ///
    /// Examples
    /// --------
    /// >>> from reckohm.sensor import Thermistor
    /// >>> round(Thermistor.b_value(10_000, 25, 3950, (25, 85)).slope(25), 1)
    /// -444.4
    #[pyo3(signature = (temperature_c, *, out=None, r#where=None, on_invalid="raise"))]
    fn slope<'py>(
        &self,
        temperature_c: &Bound<'py, PyAny>,
        out: Option<&Bound<'py, PyAny>>,
        r#where: Option<&Bound<'py, PyAny>>,
        on_invalid: &str,
    ) -> PyResult<Bound<'py, PyAny>> {
        let options = Options { out, where_: r#where, on_invalid };
        with_model!(self, model => ask::<Slope, _>(model, temperature_c, options))
    }

    /// The temperature in degrees Celsius at a resistance.
    ///
    /// Parameters
    /// ----------
    /// resistance_ohm : float, array-like or Estimate
    ///     In ohm, within the resistances at the ends of the domain.
    /// out, where, on_invalid
    ///     As of `reckohm.preferred.nearest`; for numbers only.
    ///
    /// Returns
    /// -------
    /// float, array or Estimate
    ///     An estimate in gives one out: its parts divided by the slope, the parameters counted as exact.
    ///
    /// Raises
    /// ------
    /// RangeError
    ///     A resistance beyond those at the ends of the domain.
    ///
    /// Examples
    /// --------
    /// >>> from reckohm.sensor import Thermistor
    /// >>> Thermistor.b_value(10_000, 25, 3977, (25, 85)).temperature_c(10_000)
    /// 25.0
    #[pyo3(signature = (resistance_ohm, *, out=None, r#where=None, on_invalid="raise"))]
    fn temperature_c<'py>(
        &self,
        resistance_ohm: &Bound<'py, PyAny>,
        out: Option<&Bound<'py, PyAny>>,
        r#where: Option<&Bound<'py, PyAny>>,
        on_invalid: &str,
    ) -> PyResult<Bound<'py, PyAny>> {
        let options = Options { out, where_: r#where, on_invalid };
        if let Ok(estimate) = resistance_ohm.cast::<Estimate>() {
            let estimate = &estimate.get().0;
            return of_estimate(
                options,
                resistance_ohm,
                || with_model!(self, model => model.temperature_estimate(estimate)),
            );
        }
        with_model!(self, model => ask::<Temperature, _>(model, resistance_ohm, options))
    }

    /// The ends between which the model holds, in degrees Celsius.
    #[getter]
    fn domain_c(&self) -> (f64, f64) {
        with_model!(self, model => model.domain().into())
    }

    /// The resistances in ohm at the ends of the domain, the lower one first.
    #[getter]
    fn ends_ohm(&self) -> (f64, f64) {
        with_model!(self, model => model.ends_ohm().into())
    }

    /// The formula: "B-value" or "Steinhart-Hart".
    #[getter]
    fn formula(&self) -> &'static str {
        match self.0 {
            Formula::BValue(_) => "B-value",
            Formula::SteinhartHart(_) => "Steinhart-Hart",
        }
    }

    /// The rated zero-power resistance in ohm; None by Steinhart-Hart coefficients.
    #[getter]
    fn rated_ohm(&self) -> Option<f64> {
        self.by_b_value().map(|model| model.rated_ohm())
    }

    /// The temperature of the rated resistance in degrees Celsius; None by Steinhart-Hart coefficients.
    #[getter]
    fn rated_temperature_c(&self) -> Option<f64> {
        self.by_b_value().map(|model| model.rated_temperature_c())
    }

    /// The B-value in kelvin; None by Steinhart-Hart coefficients.
    #[getter]
    fn b_kelvin(&self) -> Option<f64> {
        self.by_b_value().map(|model| model.b_kelvin())
    }

    /// The two temperatures in degrees Celsius that the B-value belongs to; None by Steinhart-Hart coefficients.
    #[getter]
    fn b_temperatures_c(&self) -> Option<(f64, f64)> {
        self.by_b_value().map(|model| model.b_temperatures_c().into())
    }

    /// a, b, c and d in 1/K, c being 0 with three terms; None by a B-value.
    #[getter]
    fn coefficients(&self) -> Option<(f64, f64, f64, f64)> {
        self.by_steinhart_hart().map(|model| model.coefficients().into())
    }

    /// The resistance in ohm that the logarithm is of the ratio to; None by a B-value.
    #[getter]
    fn reference_ohm(&self) -> Option<f64> {
        self.by_steinhart_hart().map(|model| model.reference_ohm())
    }

    fn __hash__(&self, py: Python<'_>) -> PyResult<isize> {
        let ([a, b, c, d, e], domain) = with_model!(self, model => (model.parameters(), self.domain_c()));
        hash_of(py, (self.formula(), a, b, c, d, e, domain))
    }

    fn __reduce__<'py>(&self, py: Python<'py>) -> PyResult<(Bound<'py, PyAny>, Bound<'py, PyTuple>)> {
        let class = py.get_type::<Thermistor>();
        match &self.0 {
            Formula::BValue(model) => {
                let (rated, of, b) = (model.rated_ohm(), model.rated_temperature_c(), model.b_kelvin());
                let (temperatures, domain) = (self.b_temperatures_c(), self.domain_c());
                let call = py.import("reckohm._again")?.getattr("b_value_thermistor")?;
                Ok((call, (rated, of, b, temperatures, domain).into_pyobject(py)?))
            }
            Formula::SteinhartHart(model) => {
                again(py, (class, "steinhart_hart", self.coefficients(), model.reference_ohm(), self.domain_c()))
            }
        }
    }

    fn __repr__(&self) -> String {
        let pair = |(first, second): (f64, f64)| format!("({}, {})", shown(first), shown(second));
        match &self.0 {
            Formula::BValue(model) => {
                let [first, second] = model.b_temperatures_c();
                let temperatures = pair((first, second));
                let numbers = [model.rated_ohm(), model.rated_temperature_c(), model.b_kelvin()].map(shown).join(", ");
                let made = format!("Thermistor.b_value({numbers}, {temperatures})");
                let own = BValueThermistor::new(
                    model.rated_ohm(),
                    model.rated_temperature_c(),
                    model.b_kelvin(),
                    model.b_temperatures_c(),
                );
                if own.is_ok_and(|own| own.domain() == model.domain()) {
                    made
                } else {
                    format!("{made}.with_domain({})", pair(self.domain_c()))
                }
            }
            Formula::SteinhartHart(model) => {
                let numbers = model.coefficients().map(shown).join(", ");
                let (reference, domain) = (shown(model.reference_ohm()), pair(self.domain_c()));
                format!("Thermistor.steinhart_hart([{numbers}], {reference}, {domain})")
            }
        }
    }

    fn _repr_html_(slf: &Bound<'_, Self>) -> PyResult<Py<PyAny>> {
        Ok(slf.py().import("reckohm._tables")?.call_method1("thermistor", (slf,))?.unbind())
    }
}

impl Thermistor {
    fn by_b_value(&self) -> Option<&BValueThermistor> {
        if let Formula::BValue(model) = &self.0 { Some(model) } else { None }
    }

    fn by_steinhart_hart(&self) -> Option<&SteinhartHart> {
        if let Formula::SteinhartHart(model) = &self.0 { Some(model) } else { None }
    }
}

/// A float at once, by the model that is there; anything else through the formula for arrays.
fn ask<'py, C: Conversion, F: Named>(
    model: &Model<F, f64, 5>,
    given: &Bound<'py, PyAny>,
    options: Options<'_, 'py>,
) -> PyResult<Bound<'py, PyAny>> {
    let input = Input::Given(given);
    if options.are_none()
        && let Some(x) = input.plain()
    {
        return Ok(PyFloat::new(given.py(), C::one(model, x).map_err(Failure::from)?).into_any());
    }
    let ([a, b, c, d, e], [lower, upper]) = (model.parameters(), model.domain());
    let [a, b, c, d, e, lower, upper] = [a, b, c, d, e, lower, upper].map(Input::Code);
    C::vector::<F>().call_arrays(given.py(), &[input, a, b, c, d, e, lower, upper], options)
}

/// An estimate through the model; options are for numbers.
fn of_estimate<'py>(
    options: Options<'_, 'py>,
    given: &Bound<'py, PyAny>,
    work: impl FnOnce() -> Result<reckohm::uncertainty::Estimate, SensorError>,
) -> PyResult<Bound<'py, PyAny>> {
    let py = given.py();
    if !options.are_none() {
        let message = "sensor: options given beside an Estimate; they go with plain numbers alone";
        return Err(input_type_error(py, message)?);
    }
    Ok(Bound::new(py, Estimate(work().map_err(Failure::from)?))?.into_any())
}

/// Fills the module, and the compiled one with the ufuncs.
pub fn fill(compiled: &Bound<'_, PyModule>, module: &Bound<'_, PyModule>) -> PyResult<()> {
    fn add<F: Named>(compiled: &Bound<'_, PyModule>) -> PyResult<()> {
        Resistance::vector::<F>().add(compiled)?;
        Slope::vector::<F>().add(compiled)?;
        Temperature::vector::<F>().add(compiled)
    }
    add::<BValueFormula>(compiled)?;
    add::<SteinhartHartFormula>(compiled)?;
    module.add_class::<Thermistor>()
}
