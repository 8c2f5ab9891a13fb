//! The upper tail of two rectangular terms and one normal term added together, in closed form.
//!
//! With Q the upper tail of the normal distribution, H its integral from z to infinity and M the integral of H, and
//! half-widths a >= b and standard deviation s, the probability that the sum exceeds x is
//!
//! - one rectangular: (s/2a)·[H((x-a)/s) - H((x+a)/s)]
//! - two: (s²/4ab)·[M((x+a+b)/s) - M((x+a-b)/s) - M((x-a+b)/s) + M((x-a-b)/s)]
//!
//! Source: elementary convolution, ours; the limits (b = 0, s = 0) are the rectangular and trapezoidal distributions
//! of JCGM 101 6.4. Two things keep every digit: left of zero H(z) = H(-z) - z and M(z) = (1+z²)/2 - M(-z), whose
//! polynomial parts add up to the tail without noise and are written as such; and where a half-width is small against
//! s, so that the differences would cancel, the average over it is taken instead: of the normal tail by its Taylor
//! series, of the tail with one rectangular term by Gauss-Legendre nodes.

use crate::number::quadrature::average;
use crate::number::{Real, normal};

/// Where a difference would begin to cancel: half-width over s, times one plus the steepness of the tail. Below it the
/// averages have all their digits.
const AVERAGE_BELOW: f64 = 0.7;

/// Below this part of s a half-width changes no digit.
const VANISHES_BELOW: f64 = 1e-9;

/// Probability that rectangular(a) + rectangular(b) + normal(s) exceeds `x`; a >= b >= 0, s >= 0, `x` finite.
pub(crate) fn upper_tail<R: Real>(x: R, a: R, b: R, s: R) -> R {
    if x < R::ZERO { R::ONE - right_of_centre(-x, a, b, s) } else { right_of_centre(x, a, b, s) }
}

fn right_of_centre<R: Real>(x: R, a: R, b: R, s: R) -> R {
    if b <= R::lit(VANISHES_BELOW) * s {
        return one_rectangular(x, a, s);
    }
    if s == R::ZERO {
        return trapezoidal(x, a, b);
    }
    let steepness = if x > a { (x - a) / s } else { R::ZERO };
    if b / s * (R::ONE + steepness) < R::lit(AVERAGE_BELOW) {
        let tail = |x: R| if x < R::ZERO { R::ONE - one_rectangular(-x, a, s) } else { one_rectangular(x, a, s) };
        average(x, b, tail)
    } else {
        two_rectangular(x, a, b, s)
    }
}

/// Without a normal term, a >= b > 0.
fn trapezoidal<R: Real>(x: R, a: R, b: R) -> R {
    let beyond = a + b - x;
    if x >= a + b {
        R::ZERO
    } else if x > a - b {
        beyond / (R::lit(4.0) * a) * (beyond / (R::lit(2.0) * b))
    } else {
        (a - x) / (R::lit(2.0) * a)
    }
}

/// Probability that rectangular(a) + normal(s) exceeds `x`, from 0 to infinity; either of a and s may be 0. An exact value
/// (both) exceeds nothing. All cases are computed and one is selected, so that a loop over it is free of branches.
#[inline(always)]
pub(crate) fn one_rectangular<R: Real>(x: R, a: R, s: R) -> R {
    // Kept finite, since 0 times infinity would be no number: farther out there is nothing.
    let (z, half) = ((x / s).smaller(R::FARTHEST), a / s);
    let flat = without_noise(x, a);
    let noise = at_edge(x, a, s) - normal::first_integral((x + a) / s);
    let wide = flat + noise / (half + half);
    let narrow = normal::above_averaged(z, half);
    let tail = R::select(half * (R::ONE + z) < R::lit(AVERAGE_BELOW), narrow, wide);
    R::select(s == R::ZERO, flat, tail)
}

/// From this half-width over s on, [`wide_rectangular`] has the bits of [`one_rectangular`].
pub(crate) const WIDE_FROM: f64 = 16.0;

/// [`one_rectangular`] for half-widths of at least [`WIDE_FROM`] times s, with the same bits in less than half of the time:
/// what the far edge takes away is below the last digit. It is less than exp(-2ax/s²) of what the near edge adds, and where
/// that is not below 2^-60, x < 1.4 s, the near edge is 14 s away and itself adds less than 1e-40 to a tail of 0.4 or more.
#[inline(always)]
pub(crate) fn wide_rectangular<R: Real>(x: R, a: R, s: R) -> R {
    let half = a / s;
    let flat = without_noise(x, a);
    R::select(s == R::ZERO, flat, flat + at_edge(x, a, s) / (half + half))
}

/// The tail of the rectangular part alone.
#[inline(always)]
fn without_noise<R: Real>(x: R, a: R) -> R {
    R::select(x < a, (a - x) / (a + a), R::ZERO)
}

/// What the noise adds at the near edge, over the slope.
#[inline(always)]
fn at_edge<R: Real>(x: R, a: R, s: R) -> R {
    normal::first_integral(((x - a) / s).magnitude())
}

fn two_rectangular<R: Real>(x: R, a: R, b: R, s: R) -> R {
    let scale = s / (R::lit(2.0) * a) * (s / (R::lit(2.0) * b));
    let (inner, outer) = ((x - a + b) / s, (x - a - b) / s);
    let signed = |z: R| if z < R::ZERO { -normal::second_integral(-z) } else { normal::second_integral(z) };
    let far = normal::second_integral((x + a + b) / s) - normal::second_integral((x + a - b) / s);
    let step = if outer < R::ZERO && inner >= R::ZERO { R::lit(0.5) } else { R::ZERO };
    trapezoidal(x, a, b) + scale * (step + (signed(outer) - signed(inner)) + far)
}
