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

/// Probability that rectangular(a) + rectangular(b) + normal(s) exceeds `x`; a >= b >= 0, s >= 0, `x` finite and not below 0.
pub(crate) fn upper_tail<R: Real>(x: R, a: R, b: R, s: R) -> R {
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
/// (both) exceeds nothing.
pub(crate) fn one_rectangular<R: Real>(x: R, a: R, s: R) -> R {
    if s == R::ZERO {
        without_noise(x, a)
    } else if a >= R::lit(WIDE_FROM) * s {
        with_near_edge(x, a, s, excess(near_edge(x, a, s)))
    } else if is_narrow(x, a, s) {
        narrow_rectangular(x, a, s)
    } else {
        with_both_edges(x, a, s, excess(near_edge(x, a, s)), excess(far_edge(x, a, s)))
    }
}

/// A function of its own for all the edges: small processors have it once. Of two limits one is mostly so far away that nothing
/// needs to be computed.
fn excess<R: Real>(z: R) -> R {
    if z >= R::FARTHEST {
        return R::ZERO;
    }
    let [excess] = normal::first_integral([z]);
    excess
}

/// [`one_rectangular`] with all cases computed and one selected, so that a loop over it is free of branches.
#[inline(always)]
pub(crate) fn any_rectangular<R: Real>(x: R, a: R, s: R) -> R {
    let [wide] = edged_rectangular([x], a, s);
    let tail = R::select(is_narrow(x, a, s), narrow_rectangular(x, a, s), wide);
    R::select(s == R::ZERO, without_noise(x, a), tail)
}

/// From this half-width over s on, the near edge alone gives the bits of both.
pub(crate) const WIDE_FROM: f64 = 16.0;
/// From this half-width over s on no tail is narrow, rounding included.
pub(crate) const EDGED_FROM: f64 = 0.75;

/// Where the half-width is too small against s for the difference of its two edges.
#[inline(always)]
fn is_narrow<R: Real>(x: R, a: R, s: R) -> bool {
    a / s * (R::ONE + distance(x, s)) < R::lit(AVERAGE_BELOW)
}

/// Kept finite, since 0 times infinity would be no number: farther out there is nothing.
#[inline(always)]
fn distance<R: Real>(x: R, s: R) -> R {
    (x / s).smaller(R::FARTHEST)
}

#[inline(always)]
fn narrow_rectangular<R: Real>(x: R, a: R, s: R) -> R {
    normal::above_averaged(distance(x, s), a / s)
}

/// How far from the edge of the rectangle on its own side `x` lies, in s.
#[inline(always)]
fn near_edge<R: Real>(x: R, a: R, s: R) -> R {
    ((x - a) / s).magnitude()
}

/// How far from the edge on the other side.
#[inline(always)]
fn far_edge<R: Real>(x: R, a: R, s: R) -> R {
    (x + a) / s
}

/// The tail without noise, and what the noise adds or takes at the two edges.
#[inline(always)]
fn with_both_edges<R: Real>(x: R, a: R, s: R, near: R, far: R) -> R {
    let half = a / s;
    without_noise(x, a) + (near - far) / (half + half)
}

/// The same for half-widths of at least [`WIDE_FROM`] times s in half of the time: what the far edge takes away is below the
/// last digit. It is less than exp(-2ax/s²) of what the near edge adds, and where that is not below 2^-60, x < 1.4 s, the
/// near edge is 14 s away and itself adds less than 1e-40 to a tail of 0.4 or more.
#[inline(always)]
fn with_near_edge<R: Real>(x: R, a: R, s: R, near: R) -> R {
    let half = a / s;
    without_noise(x, a) + near / (half + half)
}

/// [`with_both_edges`] at several distances at once, since that takes hardly longer than one.
#[inline(always)]
pub(crate) fn edged_rectangular<R: Real, const N: usize>(x: [R; N], a: R, s: R) -> [R; N] {
    let near = normal::first_integral(x.map(|x| near_edge(x, a, s)));
    let mut far = normal::first_integral(x.map(|x| far_edge(x, a, s)));
    for ((far, near), x) in far.iter_mut().zip(near).zip(x) {
        *far = with_both_edges(x, a, s, near, *far);
    }
    far
}

/// [`with_near_edge`] at several distances at once. Here s may be 0 as well.
#[inline(always)]
pub(crate) fn wide_rectangular<R: Real, const N: usize>(x: [R; N], a: R, s: R) -> [R; N] {
    let mut near = normal::first_integral(x.map(|x| near_edge(x, a, s)));
    for (near, x) in near.iter_mut().zip(x) {
        *near = R::select(s == R::ZERO, without_noise(x, a), with_near_edge(x, a, s, *near));
    }
    near
}

/// The tail of the rectangular part alone.
#[inline(always)]
fn without_noise<R: Real>(x: R, a: R) -> R {
    R::select(x < a, (a - x) / (a + a), R::ZERO)
}

fn two_rectangular<R: Real>(x: R, a: R, b: R, s: R) -> R {
    let scale = s / (R::lit(2.0) * a) * (s / (R::lit(2.0) * b));
    let (inner, outer) = ((x - a + b) / s, (x - a - b) / s);
    let signed = |z: R| if z < R::ZERO { -normal::second_integral(-z) } else { normal::second_integral(z) };
    let far = normal::second_integral((x + a + b) / s) - normal::second_integral((x + a - b) / s);
    let step = if outer < R::ZERO && inner >= R::ZERO { R::lit(0.5) } else { R::ZERO };
    trapezoidal(x, a, b) + scale * (step + (signed(outer) - signed(inner)) + far)
}

#[cfg(test)]
mod tests {
    use super::{WIDE_FROM, any_rectangular, edged_rectangular, one_rectangular, wide_rectangular};
    use crate::number::Real;

    /// Half-widths from where the far edge is left out, and all about the near edge and the centre.
    fn every_way_has_the_same_bits<R: Real>(bits: fn(R) -> u64) {
        for step in 0..400 {
            let half = WIDE_FROM * (1.0 + f64::from(step) * f64::from(step) / 1e4);
            for place in 0..400 {
                let z = if place % 2 == 0 { half + f64::from(place - 200) / 4.0 } else { f64::from(place) / 80.0 };
                let (x, a) = (R::of_f64(3.0 * z).larger(R::ZERO), R::of_f64(3.0 * half));
                let s = R::of_f64(3.0);
                let [edged] = edged_rectangular([x], a, s);
                let [wide] = wide_rectangular([x], a, s);
                assert_eq!(bits(wide), bits(edged), "{x} {a} {s}");
            }
        }
        // Narrow and wide alike, without either part, and with none.
        for half in [0.0, 1e-3, 0.2, 0.69, 0.7, 0.71, 1.0, 5.0, 15.9, 16.0, 1e6] {
            for z in [0.0, 1e-3, 0.3, 1.0, 4.0, 15.0, 40.0, f64::INFINITY] {
                for s in [0.0, 1.0, 3.0] {
                    let (x, a, s) = (R::of_f64(3.0 * z), R::of_f64(3.0 * half), R::of_f64(s));
                    assert_eq!(bits(any_rectangular(x, a, s)), bits(one_rectangular(x, a, s)), "{x} {a} {s}");
                }
            }
        }
    }

    #[test]
    fn every_way_to_one_rectangular_part_has_the_same_bits() {
        every_way_has_the_same_bits::<f64>(f64::to_bits);
        every_way_has_the_same_bits::<f32>(|x| u64::from(x.to_bits()));
    }
}
