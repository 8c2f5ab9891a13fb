//! Student's t distribution with any degrees of freedom from a fraction to infinity: density, tail, quantile. Unchecked
//! forms for the rest of the core.
//!
//! With a = ν/2, x = ν/(ν + t²), y = 1 − x and f the density, the upper tail is the incomplete beta function
//! ½·I_x(a, ½). Far out it is f·t/(2K) with the continued fraction K = β₀ + α₁/(β₁ + α₂/(β₂ + …)) of DiDonato and Morris
//! (ACM Transactions on Mathematical Software 18, 1992, formula 9), written with a·y so that nothing cancels for large ν,
//! where it becomes the fraction of the normal tail. Near the centre the probability between 0 and t is the series
//! f·t·Σ (a + ½)ₙ/(3/2)ₙ·yⁿ, all of whose terms are positive. Neither needs a table, and both hold for every ν.

use core::f64::consts::PI;

use super::elementary::{exp, ln, sqrt};
use super::normal;

/// From here on the distribution is the normal one to the last bit wherever its tail is a normal double.
const AS_NORMAL: f64 = 1.0e24;

/// Fewer degrees of freedom are taken as this many.
const FEWEST: f64 = 1.0e-300;

/// The density at t.
pub(crate) fn density(t: f64, dof: f64) -> f64 {
    if dof >= AS_NORMAL { normal::density(t) } else { Place::at(t.abs(), dof).density() }
}

/// The probability of more than t, to full relative accuracy in its tail.
pub(crate) fn above(t: f64, dof: f64) -> f64 {
    if dof >= AS_NORMAL {
        return normal::above(t);
    }
    let place = Place::at(t.abs(), dof);
    let tail = if place.is_central() { 0.5 - place.between() } else { place.tail() };
    if t < 0.0 { 1.0 - tail } else { tail }
}

/// Whether the t that is exceeded with probability p up to one half is a double.
pub(crate) fn is_reached(p: f64, dof: f64) -> bool {
    dof >= AS_NORMAL || Place::at(f64::MAX, dof).ln_tail() <= ln(p)
}

/// The t that is exceeded with probability p, for 0 < p < 1; the largest double where it is beyond it.
pub(crate) fn quantile_above(p: f64, dof: f64) -> f64 {
    if dof >= AS_NORMAL {
        return normal::quantile_above(p);
    }
    if p > 0.5 {
        return -quantile_above(1.0 - p, dof);
    }
    let from_centre = 0.5 - p;
    if from_centre == 0.0 {
        return 0.0;
    }
    if p > CENTRAL { central_quantile(from_centre, dof) } else { tail_quantile(p, dof) }
}

/// Above this probability the quantile is found from the distance to one half, which is exact there.
const CENTRAL: f64 = 0.3;

/// Corrections of the start value of a quantile. On logarithmic scales both the tail and the probability from the centre
/// are concave, so Newton's method converges from any start.
const STEPS: usize = 10;

fn central_quantile(from_centre: f64, dof: f64) -> f64 {
    let wanted = ln(from_centre);
    let mut t = from_centre / Place::at(0.0, dof).density();
    for _ in 0..STEPS {
        let place = Place::at(t, dof);
        let probability = if place.is_central() { place.between() } else { 0.5 - place.tail() };
        t *= exp((wanted - ln(probability)) * probability / (t * place.density()));
    }
    t
}

fn tail_quantile(p: f64, dof: f64) -> f64 {
    let wanted = ln(p);
    let mut t = tail_start(p, dof);
    for _ in 0..STEPS {
        let place = Place::at(t, dof);
        // The tail over t times the density: the step of the logarithm of t for one of the logarithm of the tail.
        let (ln_tail, slope) = if place.is_central() {
            let tail = 0.5 - place.between();
            (ln(tail), tail / (t * place.density()))
        } else {
            (place.ln_tail(), 0.5 / (place.first_step() - place.taken()))
        };
        let step = (ln_tail - wanted) * slope;
        t = (t * exp(step.clamp(-700.0, 700.0))).min(f64::MAX);
    }
    t
}

/// A start value for a quantile in the tail.
fn tail_start(p: f64, dof: f64) -> f64 {
    let a = 0.5 * dof;
    if dof < 3.0 {
        // The tail is nearly a power of t there: ½·xᵃ·Γ(a + ½)/(Γ(a)·a·√π).
        let ln_x = ((ln(2.0 * p) + ln(a * sqrt(PI) / gamma_ratio(a))) / a).min(-0.7);
        return exp((0.5 * (ln(dof) + ln(1.0 - exp(ln_x)) - ln_x)).min(709.0));
    }
    // Wallace's approximation to the normal quantile, solved for t (Biometrika 46, 1959).
    let normal = normal::quantile_above(p) * (8.0 * dof + 3.0) / (8.0 * dof + 1.0);
    sqrt(dof * libm::expm1((normal * normal / dof).min(709.0)))
}

/// A place t ≥ 0 on the distribution, with what the formulas share.
#[derive(Clone, Copy)]
struct Place {
    t: f64,
    dof: f64,
    half_dof: f64,
    /// ν/(ν + t²).
    x: f64,
    /// t²/(ν + t²).
    y: f64,
    /// ln(1 + t²/ν).
    ln_growth: f64,
}

impl Place {
    fn at(t: f64, dof: f64) -> Place {
        // With fewer, every double but 0 is as far out as any other; its half would be below the smallest double.
        let dof = dof.max(FEWEST);
        let half_dof = 0.5 * dof;
        let direct = t * t / dof;
        let scaled = t / sqrt(dof);
        // The direct square carries one rounding less, which counts where it is multiplied by a large ν.
        let square = if t < 1.0e150 && direct < 1.0e200 { direct } else { scaled * scaled };
        if square < 1.0e200 {
            let whole = 1.0 + square;
            Place { t, dof, half_dof, x: 1.0 / whole, y: square / whole, ln_growth: libm::log1p(square) }
        } else {
            let inverse = sqrt(dof) / t;
            Place { t, dof, half_dof, x: inverse * inverse, y: 1.0, ln_growth: 2.0 * ln(t) - ln(dof) }
        }
    }

    /// Whether the series is used; elsewhere the continued fraction is.
    fn is_central(self) -> bool {
        self.t * self.t <= 3.0 && self.y <= 0.5
    }

    fn density(self) -> f64 {
        gamma_ratio(self.half_dof) / sqrt(PI * self.dof) * exp(-(self.half_dof + 0.5) * self.ln_growth)
    }

    /// The probability between 0 and t, where [`is_central`](Self::is_central).
    fn between(self) -> f64 {
        let mut term = 1.0;
        let mut sum = 1.0;
        let mut n = 0.0;
        // Terms fall at least by y·(a + ½ + n)/(3/2 + n); 80 reach 1e-17 at both corners of the region.
        while n < 80.0 {
            term *= (self.half_dof + 0.5 + n) / (1.5 + n) * self.y;
            sum += term;
            n += 1.0;
        }
        self.t * self.density() * sum
    }

    /// The upper tail, outside the central region.
    fn tail(self) -> f64 {
        self.tail_front() * exp(-self.half_dof * self.ln_growth)
    }

    /// The logarithm of the upper tail, outside the central region; it does not underflow.
    fn ln_tail(self) -> f64 {
        ln(self.tail_front()) - self.half_dof * self.ln_growth
    }

    /// The tail without its factor xᵃ, which alone can underflow: t·x^½ is √(ν·y), and the root of ν cancels.
    fn tail_front(self) -> f64 {
        gamma_ratio(self.half_dof) * sqrt(self.y / PI) * (0.5 / (self.first_step() - self.taken()))
    }

    /// β₀ of the continued fraction.
    fn first_step(self) -> f64 {
        let Place { half_dof: a, x, y, .. } = self;
        a / (a + 1.0) * (a * y - 0.5 * x + 1.0)
    }

    /// What the rest of the continued fraction takes from β₀: −α₁/(β₁ + α₂/(β₂ + …)).
    fn taken(self) -> f64 {
        let Place { half_dof: a, x, y, .. } = self;
        let steps = 12 + (180.0 / (self.t * self.t).max(3.0)) as u32;
        let mut n = f64::from(steps);
        let mut rest = 0.0;
        while n > 0.5 {
            let divisor = a + 2.0 * n - 1.0;
            let numerator = ((a + n - 1.0) / divisor) * ((a + n - 0.5) / divisor) * n * (n - 0.5) * x * x;
            let step = n - n * (n - 0.5) * x / divisor
                + (a + n) / (a + 2.0 * n + 1.0) * (a * y - 0.5 * x + 1.0 + n * (2.0 - x));
            rest = numerator / (step - rest);
            n -= 1.0;
        }
        rest
    }
}

/// Γ(a + ½)/Γ(a). For large a by the asymptotic series in 1/(a − ¼)² (Abramowitz and Stegun 6.1.47 with the mean of the
/// arguments in the middle, which leaves even powers alone; coefficients computed); smaller ones are led up to it.
fn gamma_ratio(a: f64) -> f64 {
    let mut below = 1.0;
    let mut a = a;
    while a < 10.0 {
        below *= a / (a + 0.5);
        a += 1.0;
    }
    let middle = a - 0.25;
    let inverse = 1.0 / (middle * middle);
    let mut series = 0.0;
    for coefficient in GAMMA_RATIO.iter().rev() {
        series = series * inverse + coefficient;
    }
    below * sqrt(middle) * (1.0 + series * inverse)
}

/// Coefficients of [`gamma_ratio`], from the first inverse square on.
const GAMMA_RATIO: [f64; 7] = [
    0.015625,
    -0.0023193359375,
    0.0012035369873046875,
    -0.001298762857913970947265625,
    0.002385557512752711772918701,
    -0.006670963462056533899158239,
    0.02641215466006485712568974,
];
