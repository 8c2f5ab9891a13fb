//! Platinum resistance thermometers: a wire or film whose resistance rises with temperature along a curve that is
//! standardised, so that any part of one standard may take the place of another. "Pt100" has 100 ohm at 0 °C, "Pt1000" 1000.
//!
//! ```text
//! −200 °C to 0 °C:   R = R0·(1 + A·t + B·t² + C·(t − 100 °C)·t³)
//!    0 °C to 850 °C:  R = R0·(1 + A·t + B·t²)
//!
//! R   resistance in ohm at t               t        temperature in degrees Celsius
//! R0  resistance in ohm at 0 °C            A, B, C  coefficients in 1/K, 1/K² and 1/K⁴
//! ```
//!
//! Source: the equations are those of IEC 60751:2008, 4.2, known as Callendar's and Van Dusen's; `forward` is both, with C
//! taken as 0 from 0 °C on. The text of the standard was not read: equations and coefficients are as a dozen printed
//! tables give them, which come out digit for digit (`tests/checks/sensor_SOURCES.md`). [`PlatinumStandard`] has the
//! coefficients, [`PlatinumTolerance`](super::PlatinumTolerance) the tolerance classes.
//!
//! From resistance to temperature, with x = (R − R0)/R0, exact near 0 °C where R/R0 − 1 would not be:
//!
//! - from 0 °C on the quadratic equation has one root on the curve, t = 2·x/(A + √(A² + 4·B·x)), written so that nothing
//!   cancels;
//! - below 0 °C that root is where Newton's method starts, some kelvin off at −200 °C. Three steps always, so that a loop over
//!   an array needs no branch; the last one in the number of the caller, so that it carries all partial derivatives
//!   (implicit function theorem). Every model has been checked for this when it was made: with h the product of the first
//!   error and of the curvature over twice the slope, both at their worst, each step squares h, and h of more than 1/256 is
//!   refused. So when the last step begins, less than (1/256)³ = 6e-8 of the first error is left, good for the derivatives;
//!   the last step leaves (1/256)⁷ = 1.4e-17 of it.
//!
//! How exact: rows `sensor.platinum.…` of `tests/allowed_errors.csv`. Left out: self-heating by the meter's current, the leads
//! (`meter` has them), and hysteresis.
//!
//! ```
//! use reckohm::sensor::{Platinum, PlatinumStandard};
//! use reckohm::uncertainty::Estimate;
//!
//! let pt100 = Platinum::<f64>::new(100.0, PlatinumStandard::Iec60751)?;
//! let temperature = pt100.temperature_estimate(&Estimate::exact(138.51)?.with_rectangular(0.05)?)?;
//! assert!((temperature.value() - 100.01).abs() < 0.005);
//! assert!((temperature.rectangular()[0] - 0.132).abs() < 0.001);
//! # Ok::<(), Box<dyn std::error::Error>>(())
//! ```

use super::error::{Quantity, SensorError};
use super::model::{Formula, Model, Thermometer};
use crate::number::{Dual, PLATINUM_COEFFICIENT, PLATINUM_TEMPERATURE, RESISTANCE, Real, Scalar};

/// The lowest and the highest temperature of the equations in degrees Celsius (IEC 60751).
const RANGE_C: [f64; 2] = [PLATINUM_TEMPERATURE.lower, PLATINUM_TEMPERATURE.upper];
/// How many steps Newton's method takes in all, the last one in the number of the caller.
const STEPS: u32 = 3;
/// The largest product of first error and curvature over twice the slope with which the steps are known to suffice.
const LARGEST_H: f64 = 1.0 / 256.0;
/// The largest first error in kelvin.
const LARGEST_FIRST_ERROR: f64 = 6.25;

/// The formula of IEC 60751. Parameters: R0 in ohm, A in 1/K, B in 1/K² and C in 1/K⁴.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct PlatinumFormula;

impl Formula<4> for PlatinumFormula {
    const QUANTITY: Quantity = Quantity::Temperature;

    fn check<R: Real>(parameters: &[R; 4], domain: [R; 2]) -> Result<(), SensorError> {
        let [r0_ohm, a, b, c] = *parameters;
        RESISTANCE.check(r0_ohm)?;
        PLATINUM_COEFFICIENT.check(a)?;
        for temperature_c in domain {
            PLATINUM_TEMPERATURE.check(temperature_c)?;
        }
        if rises_smoothly(a, b, c) {
            return Ok(());
        }
        let [a, b, c] = [a, b, c].map(Real::to_f64);
        Err(SensorError::PlatinumCoefficients { a, b, c })
    }

    #[inline(always)]
    fn forward<S: Scalar>(parameters: &[S; 4], temperature_c: S) -> S {
        let [r0_ohm, ..] = *parameters;
        r0_ohm * (S::lit(1.0) + rise(parameters, temperature_c))
    }

    #[inline(always)]
    fn inverse<S: Scalar>(parameters: &[S; 4], resistance_ohm: S) -> S {
        let [r0_ohm, a, b, _] = *parameters;
        let x = (resistance_ohm - r0_ohm) / r0_ohm;
        let by_root = S::lit(2.0) * x / (a + (a * a + S::lit(4.0) * b * x).square_root());
        S::select(x.is_below(S::lit(0.0)), by_steps(parameters, x, by_root.value()), by_root)
    }
}

impl Thermometer<4> for PlatinumFormula {}

/// R/R0 − 1.
#[inline(always)]
fn rise<S: Scalar>([_, a, b, c]: &[S; 4], t: S) -> S {
    let zero = S::lit(0.0);
    let c = S::select(t.is_below(zero), *c, zero);
    t * (*a + t * (*b + c * ((t - S::lit(100.0)) * t)))
}

/// The temperature at which the resistance has risen by `x`, from this start on.
#[inline(always)]
fn by_steps<S: Scalar>(parameters: &[S; 4], x: S, start: S::Real) -> S {
    let plain = parameters.map(|parameter| Dual::<S::Real, 1>::constant(parameter.value()));
    let at = |t: S::Real| rise(&plain, Dual::variable(t, 0));
    let mut t = start;
    for _ in 1..STEPS {
        let here = at(t);
        let [slope] = here.partials();
        t -= (here.value() - x.value()) / slope;
    }
    let [slope] = at(t).partials();
    S::of(t) - (rise(parameters, S::of(t)) - x) / S::of(slope)
}

/// Whether these coefficients give one curve that rises all over the range of the equations, and Newton's method is known to
/// find every temperature below 0 °C: it does if the worst of |error of the start|·|R″|/(2·R′) over all points that it can
/// pass is at most [`LARGEST_H`]. A NaN anywhere means no.
fn rises_smoothly<R: Real>(a: R, b: R, c: R) -> bool {
    let [coldest, hottest] = RANGE_C.map(R::lit);
    let coldest = -coldest;
    let reach = coldest + R::lit(LARGEST_FIRST_ERROR);
    let two_b = R::lit(2.0) * b;
    // Both for R0 = 1. |R″| = |2·B + C·(12·t² − 600·t)|, and R′ is A at 0 °C.
    let bend = two_b.magnitude() + c.magnitude() * (R::lit(12.0) * reach + R::lit(600.0)) * reach;
    let least_slope = (a - reach * bend).smaller(a + two_b * hottest);
    // The start leaves out the term with C.
    let left_out = c.magnitude() * (coldest + R::lit(100.0)) * coldest * coldest * coldest;
    let first_error = left_out / least_slope;
    least_slope >= R::lit(0.25) * a
        && first_error <= R::lit(LARGEST_FIRST_ERROR)
        && first_error * bend <= R::lit(2.0 * LARGEST_H) * least_slope
}

/// Coefficients of the curve that have a standard's name. Others are given as numbers, to [`Platinum::from_coefficients`].
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[non_exhaustive]
pub enum PlatinumStandard {
    /// IEC 60751 since its amendment of 1995, and EN 60751: A = 3.9083e-3, B = −5.775e-7, C = −4.183e-12; 138.51 ohm of a Pt100
    /// at 100 °C, on the temperature scale of 1990.
    Iec60751,
    /// IEC 751:1983 and DIN 43760, still copied from table to table: A = 3.90802e-3, B = −5.80195e-7, C = −4.2735e-12; 138.50 ohm
    /// of a Pt100 at 100 °C. Its temperatures are on the scale of 1968; they are not converted here. The last
    /// digit of B was not read in print: it makes 0.00036 ohm at 850 °C.
    Iec751Of1983,
    /// GOST 6651-2009, platinum with 0.00391 a kelvin between 0 and 100 °C: A = 3.9690e-3, B = −5.841e-7, C = −4.330e-12.
    Gost6651,
}

impl PlatinumStandard {
    /// All of them.
    pub const ALL: [PlatinumStandard; 3] =
        [PlatinumStandard::Iec60751, PlatinumStandard::Iec751Of1983, PlatinumStandard::Gost6651];

    /// A in 1/K, B in 1/K² and C in 1/K⁴.
    ///
    /// ```
    /// use reckohm::sensor::PlatinumStandard;
    /// let [a, b, _] = PlatinumStandard::Iec60751.coefficients();
    /// // The mean rise between 0 and 100 °C, by which platinum is called.
    /// assert!((a + 100.0 * b - 0.00385055).abs() < 1e-15);
    /// ```
    pub const fn coefficients(self) -> [f64; 3] {
        match self {
            PlatinumStandard::Iec60751 => [3.9083e-3, -5.775e-7, -4.183e-12],
            PlatinumStandard::Iec751Of1983 => [3.90802e-3, -5.80195e-7, -4.2735e-12],
            PlatinumStandard::Gost6651 => [3.9690e-3, -5.841e-7, -4.330e-12],
        }
    }
}

/// A platinum resistance thermometer (IEC 60751).
pub type Platinum<R = f64> = Model<PlatinumFormula, R, 4>;

impl<R: Real> Platinum<R> {
    /// A thermometer of a standard, from −200 °C to 850 °C; [`with_domain`](Model::with_domain) asks for a narrower domain,
    /// which real parts have.
    ///
    /// Given: the resistance at 0 °C in ohm, in (0, 1e15]: 100 of a Pt100.
    ///
    /// ```
    /// use reckohm::sensor::{Platinum, PlatinumStandard};
    /// let pt1000 = Platinum::<f64>::new(1000.0, PlatinumStandard::Iec60751)?.with_domain([-50.0, 200.0])?;
    /// assert!((pt1000.resistance_ohm(100.0)? - 1385.055).abs() < 1e-9);
    /// assert!((pt1000.temperature_c(842.71)? + 40.0).abs() < 0.01);
    /// assert!(pt1000.temperature_c(0.0).is_err());
    /// # Ok::<(), reckohm::sensor::SensorError>(())
    /// ```
    ///
    /// # Errors
    /// [`SensorError::Range`] for a resistance outside its range.
    pub fn new(r0_ohm: R, standard: PlatinumStandard) -> Result<Self, SensorError> {
        let [a, b, c] = standard.coefficients().map(R::lit);
        Model::from_parameters([r0_ohm, a, b, c], RANGE_C.map(R::lit))
    }

    /// A thermometer by coefficients of its own, as a calibration certificate states them.
    ///
    /// Given: the resistance at 0 °C in ohm, in (0, 1e15]; `[A, B, C]` in 1/K, 1/K² and 1/K⁴, C being 0 where nothing below 0 °C
    /// was measured; the domain in degrees Celsius, which is that of the calibration, within −200 to 850.
    ///
    /// ```
    /// use reckohm::sensor::Platinum;
    /// let calibrated = Platinum::<f64>::from_coefficients(99.987, [3.9079e-3, -5.771e-7, 0.0], [0.0, 200.0])?;
    /// assert!((calibrated.resistance_ohm(100.0)? - 138.484).abs() < 0.001);
    /// // A in percent a kelvin.
    /// assert!(Platinum::from_coefficients(100.0, [0.39083, -5.775e-7, 0.0], [0.0, 200.0]).is_err());
    /// # Ok::<(), reckohm::sensor::SensorError>(())
    /// ```
    ///
    /// # Errors
    /// [`SensorError::Range`] for a number outside its range; [`SensorError::Domainless`] for a domain without extent;
    /// [`SensorError::PlatinumCoefficients`] if they give no resistance that rises smoothly from −200 to 850 °C.
    pub fn from_coefficients(r0_ohm: R, [a, b, c]: [R; 3], domain_c: [R; 2]) -> Result<Self, SensorError> {
        Model::from_parameters([r0_ohm, a, b, c], domain_c)
    }

    /// The resistance at 0 °C in ohm.
    pub fn r0_ohm(&self) -> R {
        let [r0_ohm, ..] = self.parameters();
        r0_ohm
    }

    /// A in 1/K, B in 1/K² and C in 1/K⁴.
    pub fn coefficients(&self) -> [R; 3] {
        let [_, a, b, c] = self.parameters();
        [a, b, c]
    }
}
