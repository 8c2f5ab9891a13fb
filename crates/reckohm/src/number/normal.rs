//! The standard normal distribution: density, both tails, quantile, and the first two repeated integrals of the upper
//! tail. Unchecked forms for the rest of the core.
//!
//! With φ the density and Q the upper tail, Mills' ratio R = Q/φ has the continued fraction (Laplace)
//!
//! R = 1/(z + c₁), c₁ = 1/(z + c₂), c₂ = 2/(z + c₃), …, cₙ = n/(z + cₙ₊₁),
//!
//! and its own steps give the repeated integrals without any cancellation: ∫Q = φ·R·c₁ and ∫∫Q = φ·R·c₁·c₂/2.
//! Below z = 2 the textbook formulas from erfc lose at most a digit and a half and are used instead.
//! Source: Abramowitz and Stegun, Handbook of Mathematical Functions, 26.2.14 and 7.2.

use super::elementary::{exp, ln, sqrt};

/// 1/√(2π).
const DENSITY_AT_ZERO: f64 = 0.398_942_280_401_432_677_939_946;
/// ln √(2π).
const LN_ROOT_TWO_PI: f64 = 0.918_938_533_204_672_741_780_330;
/// 1/√2.
const HALF_ROOT: f64 = core::f64::consts::FRAC_1_SQRT_2;
/// From here on the continued fraction is used.
const JOINT: f64 = 2.0;
/// Beyond it every tail is below the smallest double.
const FARTHEST: f64 = 40.0;
/// Clears the lower 27 of the 53 significant bits, so that the square of what is left is exact.
const UPPER_HALF: u64 = 0xffff_ffff_f800_0000;

/// The density φ(z).
pub(crate) fn density(z: f64) -> f64 {
    let z = z.abs().min(FARTHEST);
    // z² in two pieces: rounded as a whole, an error of 1e-16 in z² = 1400 would be one of 1e-13 in the result.
    let upper = f64::from_bits(z.to_bits() & UPPER_HALF);
    DENSITY_AT_ZERO * exp(-0.5 * upper * upper) * exp(-0.5 * (z - upper) * (z + upper))
}

/// The probability of more than z, to full relative accuracy in its tail.
pub(crate) fn above(z: f64) -> f64 {
    let distance = z.abs().min(FARTHEST);
    let tail = if distance < JOINT {
        0.5 * libm::erfc(distance * HALF_ROOT)
    } else {
        density(distance) * Mills::at(distance).ratio
    };
    if z < 0.0 { 1.0 - tail } else { tail }
}

/// The probability of less than z.
pub(crate) fn below(z: f64) -> f64 {
    above(-z)
}

/// The integral of the upper tail from z to infinity, φ(z) − z·Q(z): the mean excess over z.
pub(crate) fn first_integral(z: f64) -> f64 {
    if z < JOINT {
        density(z) - z * above(z)
    } else {
        let z = z.min(FARTHEST);
        let Mills { ratio, first, .. } = Mills::at(z);
        density(z) * ratio * first
    }
}

/// The integral of the first integral from z to infinity, ((1 + z²)·Q(z) − z·φ(z))/2.
pub(crate) fn second_integral(z: f64) -> f64 {
    if z < JOINT {
        0.5 * ((1.0 + z * z) * above(z) - z * density(z))
    } else {
        let z = z.min(FARTHEST);
        let Mills { ratio, first, second } = Mills::at(z);
        0.5 * density(z) * ratio * first * second
    }
}

/// The z that is exceeded with probability p, for 0 < p < 1.
pub(crate) fn quantile_above(p: f64) -> f64 {
    if p > 0.5 {
        return -quantile_above(1.0 - p);
    }
    // Start: Abramowitz and Stegun 26.2.23, within 4.5e-4 in all of the tail.
    let root = sqrt(-2.0 * ln(p));
    let top = 2.515517 + root * (0.802853 + root * 0.010328);
    let bottom = 1.0 + root * (1.432788 + root * (0.189269 + root * 0.001308));
    let mut z = root - top / bottom;
    if p > 0.2 {
        // Near the centre the distance from one half, which is exact, decides; there the slope is nearly constant.
        let wanted = 0.5 - p;
        for _ in 0..STEPS {
            z += (wanted - 0.5 * libm::erf(z * HALF_ROOT)) / density(z);
        }
        z.max(0.0)
    } else {
        // Newton on the logarithm of the tail, which is nearly quadratic in z.
        let wanted = ln(p) + LN_ROOT_TWO_PI;
        for _ in 0..STEPS {
            let ratio = if z < JOINT { above(z) / density(z) } else { Mills::at(z).ratio };
            z += (ln(ratio) - 0.5 * z * z - wanted) * ratio;
        }
        z
    }
}

/// Corrections of the start value, whose error of 4.5e-4 falls to 1e-7, 1e-14 and then to rounding.
const STEPS: usize = 3;

/// Mills' ratio and the first two steps of its continued fraction.
struct Mills {
    ratio: f64,
    first: f64,
    second: f64,
}

impl Mills {
    /// At z from [`JOINT`] to [`FARTHEST`]. The number of steps leaves less than half a unit in the last place at every z.
    fn at(z: f64) -> Mills {
        let steps = 16 + (400.0 / (z * z)) as u32;
        let last = f64::from(steps);
        // The rest of the fraction, as if its steps no longer changed.
        let mut step = 0.5 * (sqrt(z * z + 4.0 * last) - z);
        let mut n = last;
        while n > 2.5 {
            step = n / (z + step);
            n -= 1.0;
        }
        let second = 2.0 / (z + step);
        let first = 1.0 / (z + second);
        Mills { ratio: 1.0 / (z + first), first, second }
    }
}
