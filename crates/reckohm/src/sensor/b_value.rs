//! Thermistors by rated resistance and B-value: ceramic parts whose resistance falls steeply as they warm, used wherever a
//! temperature between frost and boiling is wanted cheaply. The data sheet states one resistance and one B-value.
//!
//! ```text
//! R = R_N·exp(B·(1/T − 1/T_N))          T = t + 273.15
//!
//! R    zero-power resistance in ohm          T    temperature in kelvin, t in degrees Celsius
//! R_N  rated zero-power resistance in ohm    T_N  its temperature in kelvin, 25 °C as a rule
//! B    B-value in kelvin
//! ```
//!
//! Source: IEC 60539-1, terms and definitions of the B-value and the rated zero-power resistance (the standard itself was
//! not read; the equation is that of every textbook). A B-value is found from the resistances at two temperatures and is
//! written with them, B25/85: the equation is exact at these two and bends away from the part elsewhere, by half a kelvin
//! and more at frost where they are 25 and 85. So they are kept with the model, and its domain is what lies between them and the rated
//! temperature unless a wider one is asked for.
//!
//! How exact: rows `sensor.b_value.…` of `tests/allowed_errors.csv`. Left out: self-heating by the meter's current (the
//! equation is for zero power), and the tolerances of R_N and B.
//!
//! ```
//! use reckohm::sensor::BValueThermistor;
//! use reckohm::uncertainty::Estimate;
//!
//! let thermistor = BValueThermistor::<f64>::new(10_000.0, 25.0, 3977.0, [25.0, 85.0])?.with_domain([-25.0, 85.0])?;
//! let temperature = thermistor.temperature_estimate(&Estimate::exact(31_000.0)?.with_rectangular(250.0)?)?;
//! assert!((temperature.value() - 1.69).abs() < 0.01);
//! assert!((temperature.expanded(0.95)?.half_width - 0.1455).abs() < 0.001);
//! # Ok::<(), Box<dyn std::error::Error>>(())
//! ```

use super::ZERO_CELSIUS_IN_KELVIN;
use super::error::{Quantity, SensorError};
use super::model::{Formula, Model, Thermometer};
use crate::number::{B_VALUE, RESISTANCE, Real, Scalar, THERMISTOR_TEMPERATURE};

/// The formula of a B-value. Parameters: rated resistance in ohm, its temperature in degrees Celsius, B-value in kelvin, and
/// the two temperatures in degrees Celsius that the B-value belongs to, which the curve does not depend on.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct BValueFormula;

impl Formula<5> for BValueFormula {
    const QUANTITY: Quantity = Quantity::Temperature;

    fn check<R: Real>(parameters: &[R; 5], domain: [R; 2]) -> Result<(), SensorError> {
        let [rated_ohm, rated_c, b_kelvin, first_c, second_c] = *parameters;
        RESISTANCE.check(rated_ohm)?;
        B_VALUE.check(b_kelvin)?;
        for temperature_c in [rated_c, first_c, second_c].into_iter().chain(domain) {
            THERMISTOR_TEMPERATURE.check(temperature_c)?;
        }
        two_temperatures(first_c, second_c)
    }

    #[inline(always)]
    fn forward<S: Scalar>([rated_ohm, rated_c, b, ..]: &[S; 5], temperature_c: S) -> S {
        let one = S::lit(1.0);
        *rated_ohm * (*b * (one / kelvin(temperature_c) - one / kelvin(*rated_c))).exponential()
    }

    /// 1/T = 1/T_N + ln(R/R_N)/B, both sides multiplied by B: one division less.
    #[inline(always)]
    fn inverse<S: Scalar>([rated_ohm, rated_c, b, ..]: &[S; 5], resistance_ohm: S) -> S {
        let t = *b / (*b / kelvin(*rated_c) + (resistance_ohm / *rated_ohm).natural_log());
        t - S::lit(ZERO_CELSIUS_IN_KELVIN)
    }
}

impl Thermometer<5> for BValueFormula {}

#[inline(always)]
fn kelvin<S: Scalar>(temperature_c: S) -> S {
    temperature_c + S::lit(ZERO_CELSIUS_IN_KELVIN)
}

/// A B-value belongs to two temperatures.
fn two_temperatures<R: Real>(first_c: R, second_c: R) -> Result<(), SensorError> {
    if first_c == second_c { Err(SensorError::OneTemperature { given_c: first_c.to_f64() }) } else { Ok(()) }
}

/// A thermistor by its rated resistance and its B-value (IEC 60539-1).
pub type BValueThermistor<R = f64> = Model<BValueFormula, R, 5>;

impl<R: Real> BValueThermistor<R> {
    /// A thermistor as its data sheet states it. Its domain is what the rated temperature and the two of the B-value span;
    /// [`with_domain`](Model::with_domain) asks for another.
    ///
    /// Given: the rated zero-power resistance in ohm, in (0, 1e15]; its temperature in degrees Celsius, −200 to 1000; the
    /// B-value in kelvin, 100 to 20 000; the two temperatures in degrees Celsius that it belongs to.
    ///
    /// ```
    /// use reckohm::sensor::BValueThermistor;
    /// let thermistor = BValueThermistor::<f64>::new(10_000.0, 25.0, 3977.0, [25.0, 85.0])?;
    /// assert!((thermistor.resistance_ohm(85.0)? - 1070.0).abs() < 1.0);
    /// let single = BValueThermistor::<f32>::new(10_000.0, 25.0, 3977.0, [25.0, 85.0])?;
    /// assert_eq!(single.resistance_ohm(25.0)?, 10_000.0_f32);
    /// # Ok::<(), reckohm::sensor::SensorError>(())
    /// ```
    ///
    /// # Errors
    /// [`SensorError::Range`] for a number outside its range; [`SensorError::OneTemperature`] if the two temperatures are one.
    pub fn new(
        rated_ohm: R,
        rated_temperature_c: R,
        b_kelvin: R,
        b_temperatures_c: [R; 2],
    ) -> Result<Self, SensorError> {
        let [first_c, second_c] = b_temperatures_c;
        let parameters = [rated_ohm, rated_temperature_c, b_kelvin, first_c, second_c];
        let lower = first_c.smaller(second_c).smaller(rated_temperature_c);
        let upper = first_c.larger(second_c).larger(rated_temperature_c);
        // Before the domain that follows from them, which would be blamed else.
        two_temperatures(first_c, second_c)?;
        Model::from_parameters(parameters, [lower, upper])
    }

    /// The rated zero-power resistance in ohm.
    pub fn rated_ohm(&self) -> R {
        let [rated_ohm, ..] = self.parameters();
        rated_ohm
    }

    /// The temperature of the rated resistance in degrees Celsius.
    pub fn rated_temperature_c(&self) -> R {
        let [_, rated_temperature_c, ..] = self.parameters();
        rated_temperature_c
    }

    /// The B-value in kelvin.
    pub fn b_kelvin(&self) -> R {
        let [_, _, b_kelvin, ..] = self.parameters();
        b_kelvin
    }

    /// The two temperatures in degrees Celsius that the B-value belongs to.
    pub fn b_temperatures_c(&self) -> [R; 2] {
        let [_, _, _, first_c, second_c] = self.parameters();
        [first_c, second_c]
    }
}
