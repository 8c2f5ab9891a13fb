//! Thermistors by Steinhart and Hart's equation: the reciprocal temperature as a polynomial of the logarithm of the
//! resistance, through three or four points measured on the part. It follows a thermistor far better over a wide range than a
//! B-value does, hundredths of a kelvin over 100 K against tenths and more (common practice, from memory).
//!
//! ```text
//! 1/T = a + b·L + c·L² + d·L³          L = ln(R/R_ref),  T = t + 273.15
//!
//! T      temperature in kelvin, t in degrees Celsius      a, b, c, d   coefficients in 1/K
//! R      resistance in ohm                                R_ref        1 ohm, or the rated resistance
//! ```
//!
//! Source: Steinhart and Hart, Calibration curves for thermistors, Deep-Sea Research 15 (1968) 497: with c = 0, "three terms",
//! and R_ref = 1 ohm; the fourth term and the ratio to a rated resistance are common practice. It is not said on a sheet
//! of coefficients which of the two logarithms they are for; with the wrong one the temperature is off by hundreds of kelvin.
//!
//! From temperature to resistance Newton's method solves for L, from L = (1/T − a)/b on: five steps in double precision, four
//! in single, the last one in the number of the caller, so that it carries all partial derivatives (implicit function
//! theorem). Every model has been checked for this when it was made: with h the product of the first error and of the
//! curvature over twice the slope, both at their worst over the domain, each step squares h, and h of more than 1/8 is
//! refused. So when the last step begins, less than (1/8)^15 = 2.8e-14 of the first error is left, in single precision
//! (1/8)^7 = 4.8e-7, good for the derivatives; the last step squares it once more.
//!
//! How exact: rows `sensor.steinhart_hart.…` of `tests/allowed_errors.csv`. Left out: self-heating by the meter's current,
//! and the uncertainty of the coefficients, which belongs to their fit.
//!
//! ```
//! use reckohm::sensor::SteinhartHart;
//! use reckohm::uncertainty::Estimate;
//!
//! let thermistor = SteinhartHart::<f64>::three_terms([1.129148e-3, 2.34125e-4, 8.76741e-8], 1.0, [-40.0, 125.0])?;
//! let temperature = thermistor.temperature_estimate(&Estimate::exact(31_000.0)?.with_rectangular(250.0)?)?;
//! assert!((temperature.value() - 1.02).abs() < 0.01);
//! assert!((temperature.expanded(0.95)?.half_width - 0.151).abs() < 0.001);
//! # Ok::<(), Box<dyn std::error::Error>>(())
//! ```

use super::ZERO_CELSIUS_IN_KELVIN;
use super::error::{Quantity, SensorError};
use super::model::{Formula, Model, Thermometer};
use crate::number::{Dual, RESISTANCE, Real, Scalar, THERMISTOR_TEMPERATURE};

/// The largest product of first error and curvature over twice the slope with which the steps are known to suffice.
const LARGEST_H: f64 = 0.125;
/// How well the ends of the domain have to be found, in units of the spacing at one: coefficients so large that they cancel
/// to less have no digits left.
const ROUNDING: f64 = 128.0;

/// How many steps Newton's method takes in all, the last one in the number of the caller.
#[inline(always)]
fn steps<R: Real>() -> u32 {
    if R::SPACING_AT_ONE < R::lit(1e-10) { 5 } else { 4 }
}

/// The formula of Steinhart and Hart. Parameters: a, b, c, d in 1/K and the reference resistance in ohm.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct SteinhartHartFormula;

impl Formula<5> for SteinhartHartFormula {
    const QUANTITY: Quantity = Quantity::Temperature;

    fn check<R: Real>(parameters: &[R; 5], domain: [R; 2]) -> Result<(), SensorError> {
        let [_, b, _, _, reference_ohm] = *parameters;
        RESISTANCE.check(reference_ohm)?;
        for temperature_c in domain {
            THERMISTOR_TEMPERATURE.check(temperature_c)?;
        }
        if steps_suffice(parameters, domain) {
            return Ok(());
        }
        let [lower_c, upper_c] = domain.map(Real::to_f64);
        Err(SensorError::Coefficients { b: b.to_f64(), lower_c, upper_c })
    }

    #[inline(always)]
    fn forward<S: Scalar>(parameters: &[S; 5], temperature_c: S) -> S {
        let [.., reference_ohm] = *parameters;
        reference_ohm * logarithm(parameters, reciprocal(temperature_c)).exponential()
    }

    #[inline(always)]
    fn inverse<S: Scalar>(parameters: &[S; 5], resistance_ohm: S) -> S {
        let [.., reference_ohm] = *parameters;
        let l = (resistance_ohm / reference_ohm).natural_log();
        S::lit(1.0) / polynomial(parameters, l) - S::lit(ZERO_CELSIUS_IN_KELVIN)
    }
}

impl Thermometer<5> for SteinhartHartFormula {}

/// 1/T.
#[inline(always)]
fn reciprocal<S: Scalar>(temperature_c: S) -> S {
    S::lit(1.0) / (temperature_c + S::lit(ZERO_CELSIUS_IN_KELVIN))
}

/// a + b·L + c·L² + d·L³.
#[inline(always)]
fn polynomial<S: Scalar>([a, b, c, d, _]: &[S; 5], l: S) -> S {
    *a + l * (*b + l * (*c + l * *d))
}

/// The L at which the polynomial is `y`.
#[inline(always)]
fn logarithm<S: Scalar>(parameters: &[S; 5], y: S) -> S {
    let plain = parameters.map(|parameter| Dual::<S::Real, 1>::constant(parameter.value()));
    let at = |l: S::Real| polynomial(&plain, Dual::variable(l, 0));
    let [a, b, ..] = parameters;
    let mut l = (y.value() - a.value()) / b.value();
    for _ in 1..steps::<S::Real>() {
        let here = at(l);
        let [slope] = here.partials();
        l -= (here.value() - y.value()) / slope;
    }
    let [slope] = at(l).partials();
    S::of(l) - (polynomial(parameters, S::of(l)) - y) / S::of(slope)
}

/// Whether Newton's method is known to find every L of the domain: it does if the worst of |L error of the start|·|y″|/(2·y′)
/// over all points that it can pass is at most [`LARGEST_H`]. A NaN anywhere means no.
fn steps_suffice<R: Real>(parameters: &[R; 5], domain: [R; 2]) -> bool {
    let [a, b, c, d, _] = *parameters;
    let [cold, hot] = domain.map(reciprocal);
    let [l_cold, l_hot] = [cold, hot].map(|y| logarithm(parameters, y));
    let put_back = |l: R, y: R| (polynomial(parameters, l) - y).magnitude() <= R::lit(ROUNDING) * R::SPACING_AT_ONE * y;
    if !(b > R::ZERO && l_hot < l_cold && put_back(l_cold, cold) && put_back(l_hot, hot)) {
        return false;
    }
    // y = a + b·L·(1 + g·L + k·L²): the start errs by g·L² + k·L³, the slope is b·(1 + 2·g·L + 3·k·L²).
    let (g, k) = (c / b, d / b);
    let [start_cold, start_hot] = [cold, hot].map(|y| (y - a) / b);
    let largest = l_cold.magnitude().larger(l_hot.magnitude());
    let first_error = (g.magnitude() + k.magnitude() * largest) * largest * largest;
    // Starts lie between the two starts, solutions between the two ends, and a step overshoots by h of the error at most.
    let beyond = R::lit(LARGEST_H) * first_error;
    let [low, high] = [start_hot.smaller(l_hot) - beyond, start_cold.larger(l_cold) + beyond];
    let three_k = R::lit(3.0) * k;
    let slope = |l: R| R::ONE + (R::lit(2.0) * g + three_k * l) * l;
    let bend = |l: R| (g + three_k * l).magnitude();
    let turns = three_k > R::ZERO && three_k * low < -g && -g < three_k * high;
    let at_turn = if turns { R::ONE - g * g / three_k } else { R::INFINITE };
    let least_slope = slope(low).smaller(slope(high)).smaller(at_turn);
    least_slope > R::ZERO && bend(low).larger(bend(high)) * first_error <= R::lit(LARGEST_H) * least_slope
}

/// A thermistor by three or four Steinhart-Hart coefficients.
pub type SteinhartHart<R = f64> = Model<SteinhartHartFormula, R, 5>;

impl<R: Real> SteinhartHart<R> {
    /// The equation with three terms: 1/T = a + b·L + d·L³, as Steinhart and Hart gave it.
    ///
    /// Given: `[a, b, d]` in 1/K, the coefficients of 1, L and L³ (often called A, B and C); the reference resistance in
    /// ohm, 1 where they are for ln R and the rated resistance where they are for the logarithm of the ratio to it; the
    /// domain in degrees Celsius, which is that of the points that the coefficients were found from, within −200 to 1000.
    ///
    /// ```
    /// use reckohm::sensor::SteinhartHart;
    /// let thermistor = SteinhartHart::<f64>::three_terms([1.129148e-3, 2.34125e-4, 8.76741e-8], 1.0, [-40.0, 125.0])?;
    /// assert!((thermistor.temperature_c(10_000.0)? - 24.999_668_176_696).abs() < 1e-11);
    /// // The last two the wrong way round give no curve, and are refused.
    /// assert!(SteinhartHart::three_terms([1.129148e-3, 8.76741e-8, 2.34125e-4], 1.0, [-40.0, 125.0]).is_err());
    /// # Ok::<(), reckohm::sensor::SensorError>(())
    /// ```
    ///
    /// # Errors
    /// [`SensorError::Range`] for a number outside its range; [`SensorError::Domainless`] for a domain without extent;
    /// [`SensorError::Coefficients`] if they give no resistance that falls smoothly over the domain.
    pub fn three_terms([a, b, d]: [R; 3], reference_ohm: R, domain_c: [R; 2]) -> Result<Self, SensorError> {
        Model::from_parameters([a, b, R::ZERO, d, reference_ohm], domain_c)
    }

    /// The equation with four terms: 1/T = a + b·L + c·L² + d·L³.
    ///
    /// Given: `[a, b, c, d]` in 1/K, the coefficients of 1, L, L² and L³; the reference resistance in ohm, 1 where they are
    /// for ln R and the rated resistance where they are for the logarithm of the ratio to it; the domain in degrees Celsius,
    /// which is that of the points that the coefficients were found from, within −200 to 1000.
    ///
    /// ```
    /// use reckohm::sensor::SteinhartHart;
    /// let coefficients = [3.354016e-3, 2.57e-4, 2.4e-6, 9.0e-8];
    /// let thermistor = SteinhartHart::<f64>::four_terms(coefficients, 10_000.0, [-40.0, 125.0])?;
    /// assert!((thermistor.temperature_c(10_000.0)? - 25.0).abs() < 1e-4);
    /// # Ok::<(), reckohm::sensor::SensorError>(())
    /// ```
    ///
    /// # Errors
    /// As for [`three_terms`](Self::three_terms).
    pub fn four_terms([a, b, c, d]: [R; 4], reference_ohm: R, domain_c: [R; 2]) -> Result<Self, SensorError> {
        Model::from_parameters([a, b, c, d, reference_ohm], domain_c)
    }

    /// The coefficients a, b, c and d in 1/K; with three terms c is 0.
    pub fn coefficients(&self) -> [R; 4] {
        let [a, b, c, d, _] = self.parameters();
        [a, b, c, d]
    }

    /// The reference resistance in ohm that the logarithm is of the ratio to.
    pub fn reference_ohm(&self) -> R {
        let [.., reference_ohm] = self.parameters();
        reference_ohm
    }
}
