//! The one model of all sensors: a formula with its parameters and its domain.

use core::fmt::Debug;
use core::marker::PhantomData;

use super::error::{OutsideDomain, Quantity, SensorError};
use crate::number::{Dual, END_RESISTANCE, Real, SENSOR_PARAMETER, Scalar};
use crate::uncertainty::Estimate;

/// How far beyond the resistances at the ends of its domain a model takes one, as a fraction in units of the spacing at
/// one: what the conversion of a legal temperature rounds to is a legal resistance.
const ROUNDING: f64 = 1024.0;

/// The formula of a sensor with `P` parameters: a zero-size type. [`Model`] makes a sensor of it, so that who has a sensor
/// of their own writes these three functions.
///
/// ```
/// use reckohm::number::{Real, Scalar};
/// use reckohm::sensor::{Formula, Model, Quantity, SensorError, Thermometer};
///
/// /// A copper coil: R = R0·(1 + α·t).
/// #[derive(Clone, Copy, Debug, PartialEq)]
/// struct Coil;
///
/// impl Formula<2> for Coil {
///     const QUANTITY: Quantity = Quantity::Temperature;
///
///     fn check<R: Real>(_: &[R; 2], _: [R; 2]) -> Result<(), SensorError> {
///         Ok(())
///     }
///
///     fn forward<S: Scalar>([r0, alpha]: &[S; 2], temperature_c: S) -> S {
///         *r0 * (S::lit(1.0) + *alpha * temperature_c)
///     }
///
///     fn inverse<S: Scalar>([r0, alpha]: &[S; 2], resistance_ohm: S) -> S {
///         (resistance_ohm / *r0 - S::lit(1.0)) / *alpha
///     }
/// }
///
/// impl Thermometer<2> for Coil {}
///
/// let coil = Model::<Coil, f64, 2>::from_parameters([100.0, 0.00427], [-40.0, 150.0])?;
/// assert!((coil.temperature_c(142.7)? - 100.0).abs() < 1e-12);
/// assert!((coil.slope(20.0)? - 0.427).abs() < 1e-15);
/// # Ok::<(), SensorError>(())
/// ```
pub trait Formula<const P: usize>: Copy + Debug + PartialEq + 'static {
    /// What the resistance stands for.
    const QUANTITY: Quantity;

    /// Whether these parameters make a sensor over this domain, whose ends are finite and in order. The resistances at its
    /// ends are checked besides.
    ///
    /// # Errors
    /// Whatever is wrong with them.
    fn check<R: Real>(parameters: &[R; P], domain: [R; 2]) -> Result<(), SensorError>;

    /// The resistance in ohm. No checks: callers have checked.
    fn forward<S: Scalar>(parameters: &[S; P], quantity: S) -> S;

    /// The quantity that belongs to a resistance in ohm. No checks: callers have checked.
    fn inverse<S: Scalar>(parameters: &[S; P], resistance_ohm: S) -> S;
}

/// A formula whose quantity is a temperature in degrees Celsius: its model answers to `temperature_c`.
pub trait Thermometer<const P: usize>: Formula<P> {}

/// A sensor: the parameters of a formula, and the domain over which they are known to hold. Legal by construction.
///
/// ```
/// use reckohm::sensor::SteinhartHart;
/// let thermistor = SteinhartHart::<f64>::three_terms([1.129148e-3, 2.34125e-4, 8.76741e-8], 1.0, [-40.0, 125.0])?;
/// let ohm = thermistor.resistance_ohm(0.0)?;
/// assert!((ohm - 32_650.374_707_927).abs() < 1e-8);
/// assert!(thermistor.temperature_c(ohm)?.abs() < 1e-12);
/// assert!(thermistor.resistance_ohm(126.0).is_err());
/// # Ok::<(), reckohm::sensor::SensorError>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Model<F, R, const P: usize> {
    parameters: [R; P],
    domain: [R; 2],
    /// The resistances at the ends of the domain, the lower one first.
    ends_ohm: [R; 2],
    formula: PhantomData<F>,
}

/// What a model takes for a value of one quantity.
#[derive(Clone, Copy)]
pub(super) struct Legal<R> {
    quantity: Quantity,
    /// The ends as they are said.
    ends: [R; 2],
    /// The ends as they are compared with.
    lower: R,
    upper: R,
}

impl<R: Real> Legal<R> {
    #[inline(always)]
    pub(super) fn holds(&self, x: R) -> bool {
        (self.lower <= x) & (x <= self.upper)
    }

    #[inline(always)]
    pub(super) fn check(&self, x: R) -> Result<R, OutsideDomain> {
        if self.holds(x) { Ok(x) } else { Err(self.outside(x)) }
    }

    /// The failure of a value that is not legal.
    pub(super) fn outside(&self, x: R) -> OutsideDomain {
        let [lower, upper] = self.ends.map(Real::to_f64);
        OutsideDomain { quantity: self.quantity, given: x.to_f64(), lower, upper }
    }
}

impl<F: Formula<P>, R: Real, const P: usize> Model<F, R, P> {
    /// A sensor with these parameters over this domain, `[lower end, upper end]` in the unit of the quantity.
    ///
    /// ```
    /// use reckohm::sensor::{BValueFormula, BValueThermistor, Model};
    /// let by_name = BValueThermistor::<f64>::new(10_000.0, 25.0, 3977.0, [25.0, 85.0])?;
    /// assert_eq!(Model::<BValueFormula, f64, 5>::from_parameters(by_name.parameters(), by_name.domain())?, by_name);
    /// # Ok::<(), reckohm::sensor::SensorError>(())
    /// ```
    ///
    /// # Errors
    /// [`SensorError::Range`] for a parameter that is not finite, an end that is not, or a resistance at an end that no sensor
    /// has; [`SensorError::Domainless`] for ends in the wrong order; whatever the formula finds wrong.
    pub fn from_parameters(parameters: [R; P], domain: [R; 2]) -> Result<Self, SensorError> {
        for parameter in parameters {
            SENSOR_PARAMETER.check(parameter)?;
        }
        let [lower, upper] = domain;
        let ordered = SENSOR_PARAMETER.check(lower)? < SENSOR_PARAMETER.check(upper)?;
        if !ordered {
            return Err(SensorError::domainless(domain));
        }
        F::check(&parameters, domain)?;
        let at_lower = END_RESISTANCE.check(F::forward(&parameters, lower))?;
        let at_upper = END_RESISTANCE.check(F::forward(&parameters, upper))?;
        let ends_ohm = [at_lower.smaller(at_upper), at_lower.larger(at_upper)];
        Ok(Model { parameters, domain, ends_ohm, formula: PhantomData })
    }

    /// The same sensor over another domain: a narrower one, or a wider one over which its parameters are known to hold.
    ///
    /// ```
    /// use reckohm::sensor::BValueThermistor;
    /// let thermistor = BValueThermistor::<f64>::new(10_000.0, 25.0, 3977.0, [25.0, 85.0])?;
    /// assert_eq!(thermistor.domain(), [25.0, 85.0]);
    /// assert_eq!(thermistor.with_domain([-25.0, 85.0])?.domain(), [-25.0, 85.0]);
    /// # Ok::<(), reckohm::sensor::SensorError>(())
    /// ```
    ///
    /// # Errors
    /// As for a new one.
    pub fn with_domain(&self, domain: [R; 2]) -> Result<Self, SensorError> {
        Model::from_parameters(self.parameters, domain)
    }

    /// The parameters, in the order of the formula.
    pub fn parameters(&self) -> [R; P] {
        self.parameters
    }

    /// The ends between which the model holds, in the unit of its quantity.
    pub fn domain(&self) -> [R; 2] {
        self.domain
    }

    /// The resistances in ohm at the ends of the domain, the lower one first.
    pub fn ends_ohm(&self) -> [R; 2] {
        self.ends_ohm
    }

    /// The model that these numbers were taken from, for who keeps one outside of Rust: nothing is checked or computed, so that
    /// it costs nothing. With other numbers than those of a model its results mean nothing, and may be no numbers.
    ///
    /// ```
    /// use reckohm::sensor::{BValueThermistor, Model};
    /// let thermistor = BValueThermistor::<f64>::new(10_000.0, 25.0, 3977.0, [25.0, 85.0])?;
    /// let (parameters, domain, ends_ohm) = (thermistor.parameters(), thermistor.domain(), thermistor.ends_ohm());
    /// assert_eq!(BValueThermistor::restored(parameters, domain, ends_ohm), thermistor);
    /// # Ok::<(), reckohm::sensor::SensorError>(())
    /// ```
    pub fn restored(parameters: [R; P], domain: [R; 2], ends_ohm: [R; 2]) -> Self {
        Model { parameters, domain, ends_ohm, formula: PhantomData }
    }

    /// The resistance in ohm.
    ///
    /// Given: the quantity, within the domain. Returned: the resistance in ohm.
    ///
    /// ```
    /// use reckohm::sensor::BValueThermistor;
    /// let thermistor = BValueThermistor::<f64>::new(10_000.0, 25.0, 3977.0, [25.0, 85.0])?;
    /// assert_eq!(thermistor.resistance_ohm(25.0)?, 10_000.0);
    /// # Ok::<(), reckohm::sensor::SensorError>(())
    /// ```
    ///
    /// # Errors
    /// [`SensorError::Domain`] for a value outside the domain, NaN included.
    pub fn resistance_ohm(&self, quantity: R) -> Result<R, SensorError> {
        Ok(self.forward(self.legal_quantity().check(quantity)?))
    }

    /// The slope: how much the resistance changes with the quantity, in ohm by the unit of the quantity.
    ///
    /// Given: the quantity, within the domain. Returned: the derivative of the formula itself, exact to rounding.
    ///
    /// ```
    /// use reckohm::sensor::BValueThermistor;
    /// let thermistor = BValueThermistor::<f64>::new(10_000.0, 25.0, 3950.0, [25.0, 85.0])?;
    /// // Of a thermistor -B/T² of the resistance in each kelvin: 4.44 % at 25 °C.
    /// assert!((thermistor.slope(25.0)? / 10_000.0 + 0.0444).abs() < 1e-4);
    /// # Ok::<(), reckohm::sensor::SensorError>(())
    /// ```
    ///
    /// # Errors
    /// [`SensorError::Domain`] for a value outside the domain, NaN included.
    pub fn slope(&self, quantity: R) -> Result<R, SensorError> {
        Ok(self.slope_at(self.legal_quantity().check(quantity)?))
    }

    pub(super) fn legal_quantity(&self) -> Legal<R> {
        let [lower, upper] = self.domain;
        Legal { quantity: F::QUANTITY, ends: self.domain, lower, upper }
    }

    pub(super) fn legal_resistance(&self) -> Legal<R> {
        let [lower, upper] = self.ends_ohm;
        let rounding = R::lit(ROUNDING) * R::SPACING_AT_ONE;
        Legal {
            quantity: Quantity::Resistance,
            ends: self.ends_ohm,
            lower: lower * (R::ONE - rounding),
            upper: upper * (R::ONE + rounding),
        }
    }

    #[inline(always)]
    pub(super) fn forward(&self, quantity: R) -> R {
        F::forward(&self.parameters, quantity)
    }

    #[inline(always)]
    pub(super) fn slope_at(&self, quantity: R) -> R {
        let [slope] = F::forward(&self.lifted(), Dual::<R, 1>::variable(quantity, 0)).partials();
        slope
    }

    /// The quantity of a legal resistance, brought back to the domain where it rounds beyond.
    #[inline(always)]
    pub(super) fn inverse(&self, resistance_ohm: R) -> R {
        let [lower, upper] = self.domain;
        F::inverse(&self.parameters, resistance_ohm).larger(lower).smaller(upper)
    }

    /// The quantity of a resistance by each of the parameters.
    pub(super) fn inverse_by_parameters(&self, resistance_ohm: R) -> [R; P] {
        F::inverse(&Dual::variables(self.parameters), Dual::constant(resistance_ohm)).partials()
    }

    /// The parameters as dual numbers of which nothing is asked.
    #[inline(always)]
    fn lifted(&self) -> [Dual<R, 1>; P] {
        self.parameters.map(Dual::constant)
    }
}

impl<F: Thermometer<P>, R: Real, const P: usize> Model<F, R, P> {
    /// The temperature in degrees Celsius.
    ///
    /// Given: the resistance in ohm, within those at the ends of the domain. Returned: the temperature, within the domain.
    ///
    /// ```
    /// use reckohm::sensor::BValueThermistor;
    /// let thermistor = BValueThermistor::<f64>::new(10_000.0, 25.0, 3977.0, [25.0, 85.0])?;
    /// assert!((thermistor.temperature_c(1100.0)? - 84.12).abs() < 0.01);
    /// # Ok::<(), reckohm::sensor::SensorError>(())
    /// ```
    ///
    /// # Errors
    /// [`SensorError::Domain`] for a resistance beyond those at the ends of the domain, NaN included.
    pub fn temperature_c(&self, resistance_ohm: R) -> Result<R, SensorError> {
        Ok(self.inverse(self.legal_resistance().check(resistance_ohm)?))
    }
}

impl<F: Formula<P>, R: Real, const P: usize> Model<F, R, P> {
    /// The resistance where the quantity is uncertain: every part of the estimate scaled by the slope there (JCGM 100 5.1).
    /// This is linear, so it holds as long as the slope changes little within the uncertainty; the model's parameters count
    /// as exact.
    ///
    /// ```
    /// use reckohm::sensor::BValueThermistor;
    /// use reckohm::uncertainty::Estimate;
    /// let thermistor = BValueThermistor::<f64>::new(10_000.0, 25.0, 3950.0, [25.0, 85.0])?;
    /// let resistance = thermistor.resistance_estimate(&Estimate::exact(25.0)?.with_normal(0.1)?)?;
    /// assert!((resistance.u() - 44.4).abs() < 0.1);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    ///
    /// # Errors
    /// [`SensorError::Domain`] for a value outside the domain; [`SensorError::Estimate`] if the result is too large for the
    /// number type.
    pub fn resistance_estimate(&self, quantity: &Estimate<R>) -> Result<Estimate<R>, SensorError> {
        let x = self.legal_quantity().check(quantity.value())?;
        propagated(quantity, self.forward(x), self.slope_at(x))
    }
}

impl<F: Thermometer<P>, R: Real, const P: usize> Model<F, R, P> {
    /// The temperature where the resistance is uncertain: every part of the estimate divided by the slope there, one-sided
    /// parts changing sides where it falls (JCGM 100 5.1). This is linear, so it holds as long as the slope changes little
    /// within the uncertainty; the model's parameters count as exact.
    ///
    /// ```
    /// use reckohm::sensor::BValueThermistor;
    /// use reckohm::uncertainty::Estimate;
    /// let thermistor = BValueThermistor::<f64>::new(10_000.0, 25.0, 3950.0, [25.0, 85.0])?;
    /// // One per cent of a meter's clause is 0.225 K.
    /// let temperature = thermistor.temperature_estimate(&Estimate::exact(10_000.0)?.with_rectangular(100.0)?)?;
    /// assert_eq!(temperature.value(), 25.0);
    /// assert!((temperature.rectangular()[0] - 0.225).abs() < 1e-3);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    ///
    /// # Errors
    /// [`SensorError::Domain`] for a resistance beyond those at the ends of the domain; [`SensorError::Estimate`] if the
    /// result is too large for the number type.
    pub fn temperature_estimate(&self, resistance: &Estimate<R>) -> Result<Estimate<R>, SensorError> {
        let ohm = self.legal_resistance().check(resistance.value())?;
        let [slope] = F::inverse(&self.lifted(), Dual::<R, 1>::variable(ohm, 0)).partials();
        propagated(resistance, self.inverse(ohm), slope)
    }
}

/// The parts of an estimate carried through a formula with this value and slope at its own value.
fn propagated<R: Real>(given: &Estimate<R>, value: R, slope: R) -> Result<Estimate<R>, SensorError> {
    Ok(given.at(R::ZERO)?.times(slope)?.at(value)?)
}
