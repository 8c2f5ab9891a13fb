//! Student's t distribution with any degrees of freedom from a fraction to infinity: density, tail, quantile. Unchecked
//! forms for the rest of the core.
//!
//! With a = ν/2, x = ν/(ν + t²), y = 1 − x and f the density, the upper tail is the incomplete beta function
//! ½·I_x(a, ½). Far out it is f·t/(2K) with the continued fraction K = β₀ + α₁/(β₁ + α₂/(β₂ + …)) of DiDonato and Morris
//! (ACM Transactions on Mathematical Software 18, 1992, formula 9), written with a·y so that nothing cancels for large ν,
//! where it becomes the fraction of the normal tail. Near the centre the probability between 0 and t is the series
//! f·t·Σ (a + ½)ₙ/(3/2)ₙ·yⁿ, all of whose terms are positive. Neither needs a table, and both hold for every ν.

use core::f64::consts::PI;

use super::normal;
use super::polynomial::polynomial;
use super::scalar::Real;

/// Ends and numbers of steps, which depend on how many digits a number has.
pub struct Ends<R: 'static> {
    /// From this many degrees of freedom on the distribution is the normal one to the last bit wherever its tail has all
    /// its digits.
    as_normal: R,
    /// Fewer degrees of freedom are taken as this many.
    fewest: R,
    /// Up to this t²/ν it can be worked with as it is.
    largest_square: R,
    /// The exponential of this is finite.
    highest_exponent: R,
    /// The series is used up to this t² and this y.
    central_square: R,
    central_y: R,
    /// Terms of the series: they fall at least by y·(a + ½ + n)/(3/2 + n), and leave less than a tenth of a rounding at
    /// both corners of the region.
    terms: u32,
    /// Steps of the continued fraction: the first, and the second over t² more. Found by trial: with fewer the error grows.
    steps: R,
    more_steps: R,
    /// From here on [`gamma_ratio`] is its asymptotic series.
    asymptotic: R,
    /// Coefficients of [`gamma_ratio`], from the first inverse square on.
    gamma_ratio: &'static [R],
    /// Corrections of the start value of a quantile. On logarithmic scales both the tail and the probability from the
    /// centre are concave, so Newton's method converges from any start; found by trial as well.
    corrections: u32,
}

/// A number that the formulas here have their ends for.
pub trait HasEnds: Sized + 'static {
    /// The ends of its type.
    const STUDENT_T: Ends<Self>;
}

impl HasEnds for f64 {
    const STUDENT_T: Ends<f64> = Ends {
        as_normal: 1.0e24,
        fewest: 1.0e-300,
        largest_square: 1.0e200,
        highest_exponent: 709.0,
        central_square: 3.0,
        central_y: 0.5,
        terms: 80,
        steps: 12.0,
        more_steps: 180.0,
        asymptotic: 10.0,
        gamma_ratio: &[
            0.015625,
            -0.0023193359375,
            0.0012035369873046875,
            -0.001298762857913970947265625,
            0.002385557512752711772918701,
            -0.006670963462056533899158239,
            0.02641215466006485712568974,
        ],
        corrections: 10,
    };
}

impl HasEnds for f32 {
    const STUDENT_T: Ends<f32> = Ends {
        as_normal: 1.0e12,
        fewest: 1.0e-36,
        largest_square: 1.0e36,
        highest_exponent: 88.0,
        central_square: 1.0,
        central_y: 0.3,
        terms: 14,
        steps: 3.0,
        more_steps: 32.0,
        asymptotic: 4.0,
        gamma_ratio: &[0.015625, -0.002_319_336, 0.001_203_537],
        corrections: 5,
    };
}

/// The density at t.
pub(crate) fn density<R: Real>(t: R, dof: R) -> R {
    if dof >= R::STUDENT_T.as_normal { normal::density(t) } else { Place::at(t.magnitude(), dof).density() }
}

/// The probability of more than t, to full relative accuracy in its tail.
pub(crate) fn above<R: Real>(t: R, dof: R) -> R {
    if dof >= R::STUDENT_T.as_normal {
        return normal::above(t);
    }
    let place = Place::at(t.magnitude(), dof);
    let tail = if place.is_central() { R::lit(0.5) - place.between() } else { place.tail() };
    if t < R::ZERO { R::ONE - tail } else { tail }
}

/// The logarithm of the probability of more than the largest number.
pub(crate) fn ln_farthest_tail<R: Real>(dof: R) -> R {
    if dof >= R::STUDENT_T.as_normal { -R::INFINITE } else { Place::at(R::LARGEST, dof).ln_tail() }
}

/// The t that is exceeded with probability p, for 0 < p < 1; the largest number where it is beyond it.
pub(crate) fn quantile_above<R: Real>(p: R, dof: R) -> R {
    if dof >= R::STUDENT_T.as_normal {
        return normal::quantile_above(p);
    }
    if p > R::lit(0.5) {
        return -quantile_above(R::ONE - p, dof);
    }
    let from_centre = R::lit(0.5) - p;
    if from_centre == R::ZERO {
        return R::ZERO;
    }
    // Above this probability the quantile is found from the distance to one half, which is exact there.
    if p > R::lit(0.3) { central_quantile(from_centre, dof) } else { tail_quantile(p, dof) }
}

fn central_quantile<R: Real>(from_centre: R, dof: R) -> R {
    let wanted = from_centre.natural_log();
    let mut t = from_centre / Place::at(R::ZERO, dof).density();
    for _ in 0..R::STUDENT_T.corrections {
        let place = Place::at(t, dof);
        let probability = if place.is_central() { place.between() } else { R::lit(0.5) - place.tail() };
        t *= ((wanted - probability.natural_log()) * probability / (t * place.density())).exponential();
    }
    t
}

fn tail_quantile<R: Real>(p: R, dof: R) -> R {
    let wanted = p.natural_log();
    let mut t = tail_start(p, dof);
    for _ in 0..R::STUDENT_T.corrections {
        let place = Place::at(t, dof);
        // The tail over t times the density: the step of the logarithm of t for one of the logarithm of the tail.
        let (ln_tail, slope) = if place.is_central() {
            let tail = R::lit(0.5) - place.between();
            (tail.natural_log(), tail / (t * place.density()))
        } else {
            (place.ln_tail(), R::lit(0.5) / (place.first_step() - place.taken()))
        };
        let step = (ln_tail - wanted) * slope;
        t = (t * step.smaller(R::STUDENT_T.highest_exponent).larger(-R::STUDENT_T.highest_exponent).exponential())
            .smaller(R::LARGEST);
    }
    t
}

/// A start value for a quantile in the tail.
fn tail_start<R: Real>(p: R, dof: R) -> R {
    let a = R::lit(0.5) * dof;
    if dof < R::lit(3.0) {
        // The tail is nearly a power of t there: ½·xᵃ·Γ(a + ½)/(Γ(a)·a·√π).
        let front = a * R::lit(PI).square_root() / gamma_ratio(a);
        let ln_x = (((R::lit(2.0) * p).natural_log() + front.natural_log()) / a).smaller(R::lit(-0.7));
        let ln_rest = (R::ONE - ln_x.exponential()).natural_log();
        return (R::lit(0.5) * (dof.natural_log() + ln_rest - ln_x))
            .smaller(R::STUDENT_T.highest_exponent)
            .exponential();
    }
    // Wallace's approximation to the normal quantile, solved for t (Biometrika 46, 1959).
    let eightfold = R::lit(8.0) * dof;
    let normal = normal::quantile_above(p) * (eightfold + R::lit(3.0)) / (eightfold + R::ONE);
    (dof * (normal * normal / dof).smaller(R::STUDENT_T.highest_exponent).exponential_less_one()).square_root()
}

/// A place t ≥ 0 on the distribution, with what the formulas share.
#[derive(Clone, Copy)]
struct Place<R> {
    t: R,
    dof: R,
    half_dof: R,
    /// ν/(ν + t²).
    x: R,
    /// t²/(ν + t²).
    y: R,
    /// ln(1 + t²/ν).
    ln_growth: R,
}

impl<R: Real> Place<R> {
    fn at(t: R, dof: R) -> Place<R> {
        // With fewer, every number but 0 is as far out as any other; its half would have lost digits.
        let dof = dof.larger(R::STUDENT_T.fewest);
        let half_dof = R::lit(0.5) * dof;
        let square = t * t / dof;
        if square < R::STUDENT_T.largest_square {
            let whole = R::ONE + square;
            Place { t, dof, half_dof, x: R::ONE / whole, y: square / whole, ln_growth: square.log_of_one_more() }
        } else {
            // What x is added to has no digit that it would change.
            let ln_growth = R::lit(2.0) * t.natural_log() - dof.natural_log();
            Place { t, dof, half_dof, x: R::ZERO, y: R::ONE, ln_growth }
        }
    }

    /// Whether the series is used; elsewhere the continued fraction is.
    fn is_central(self) -> bool {
        self.t * self.t <= R::STUDENT_T.central_square && self.y <= R::STUDENT_T.central_y
    }

    fn density(self) -> R {
        gamma_ratio(self.half_dof) / (R::lit(PI) * self.dof).square_root()
            * (-(self.half_dof + R::lit(0.5)) * self.ln_growth).exponential()
    }

    /// The probability between 0 and t, where [`is_central`](Self::is_central).
    fn between(self) -> R {
        let mut term = R::ONE;
        let mut sum = R::ONE;
        let mut n = R::ZERO;
        for _ in 0..R::STUDENT_T.terms {
            term *= (self.half_dof + R::lit(0.5) + n) / (R::lit(1.5) + n) * self.y;
            sum += term;
            n += R::ONE;
        }
        self.t * self.density() * sum
    }

    /// The upper tail, outside the central region.
    fn tail(self) -> R {
        self.tail_front() * (-self.half_dof * self.ln_growth).exponential()
    }

    /// The logarithm of the upper tail, outside the central region; it does not underflow.
    fn ln_tail(self) -> R {
        self.tail_front().natural_log() - self.half_dof * self.ln_growth
    }

    /// The tail without its factor xᵃ, which alone can underflow: t·x^½ is √(ν·y), and the root of ν cancels.
    fn tail_front(self) -> R {
        gamma_ratio(self.half_dof)
            * (self.y / R::lit(PI)).square_root()
            * (R::lit(0.5) / (self.first_step() - self.taken()))
    }

    /// β₀ of the continued fraction.
    fn first_step(self) -> R {
        let Place { half_dof: a, x, y, .. } = self;
        a / (a + R::ONE) * (a * y - R::lit(0.5) * x + R::ONE)
    }

    /// What the rest of the continued fraction takes from β₀: −α₁/(β₁ + α₂/(β₂ + …)).
    fn taken(self) -> R {
        let Place { half_dof: a, x, y, .. } = self;
        let (half, one, two) = (R::lit(0.5), R::ONE, R::lit(2.0));
        let mut n = R::STUDENT_T.steps
            + whole_part(R::STUDENT_T.more_steps / (self.t * self.t).larger(R::STUDENT_T.central_square));
        let mut rest = R::ZERO;
        while n > half {
            let divisor = a + two * n - one;
            let numerator = ((a + n - one) / divisor) * ((a + n - half) / divisor) * n * (n - half) * x * x;
            let step = n - n * (n - half) * x / divisor
                + (a + n) / (a + two * n + one) * (a * y - half * x + one + n * (two - x));
            rest = numerator / (step - rest);
            n -= one;
        }
        rest
    }
}

/// The whole part of a number from 0 on that is far below the inverse of the spacing at 1.
#[inline(always)]
fn whole_part<R: Real>(x: R) -> R {
    // Adding it leaves no room for a fraction, so that the sum is rounded to a whole number.
    let rounder = R::ONE / R::SPACING_AT_ONE;
    let nearest = (x + rounder) - rounder;
    if nearest > x { nearest - R::ONE } else { nearest }
}

/// Γ(a + ½)/Γ(a). For large a by the asymptotic series in 1/(a − ¼)² (Abramowitz and Stegun 6.1.47 with the mean of the
/// arguments in the middle, which leaves even powers alone; coefficients computed); smaller ones are led up to it.
fn gamma_ratio<R: Real>(a: R) -> R {
    let mut below = R::ONE;
    let mut a = a;
    while a < R::STUDENT_T.asymptotic {
        below *= a / (a + R::lit(0.5));
        a += R::ONE;
    }
    let middle = a - R::lit(0.25);
    let inverse = R::ONE / (middle * middle);
    let series = polynomial(R::STUDENT_T.gamma_ratio, inverse);
    below * middle.square_root() * (R::ONE + series * inverse)
}
