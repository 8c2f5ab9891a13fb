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
//! s, so that the differences would cancel, the average over it is taken by Gauss-Legendre nodes instead.

use crate::number::normal;

/// Where a difference would begin to cancel: half-width over s, times one plus the steepness of the tail.
const AVERAGE_BELOW: f64 = 0.7;

/// Below this part of s a half-width changes no digit.
const VANISHES_BELOW: f64 = 1e-9;

/// Positive nodes and weights of the ten-point Gauss-Legendre rule. Source: computed at 40 digits.
const NODES: [(f64, f64); 5] = [
    (0.148_874_338_981_631_21, 0.295_524_224_714_752_87),
    (0.433_395_394_129_247_19, 0.269_266_719_309_996_36),
    (0.679_409_568_299_024_41, 0.219_086_362_515_982_04),
    (0.865_063_366_688_984_51, 0.149_451_349_150_580_59),
    (0.973_906_528_517_171_72, 0.066_671_344_308_688_138),
];

/// The mean of `f` over plus and minus `half_width` around `x`.
fn average(x: f64, half_width: f64, f: impl Fn(f64) -> f64) -> f64 {
    NODES.iter().fold(0.0, |sum, (node, weight)| {
        let shift = half_width * node;
        sum + 0.5 * weight * (f(x + shift) + f(x - shift))
    })
}

/// Probability that rectangular(a) + rectangular(b) + normal(s) exceeds `x`; a >= b >= 0, s >= 0, `x` finite.
pub(crate) fn upper_tail(x: f64, a: f64, b: f64, s: f64) -> f64 {
    if x < 0.0 { 1.0 - right_of_centre(-x, a, b, s) } else { right_of_centre(x, a, b, s) }
}

fn right_of_centre(x: f64, a: f64, b: f64, s: f64) -> f64 {
    if s == 0.0 {
        return without_noise(x, a, b);
    }
    if a < VANISHES_BELOW * s {
        return normal::above(x / s);
    }
    let steepness = if x > a { (x - a) / s } else { 0.0 };
    if b < VANISHES_BELOW * s {
        one_rectangular(x, a, s)
    } else if b / s * (1.0 + steepness) < AVERAGE_BELOW {
        average(x, b, |x| if x < 0.0 { 1.0 - one_rectangular(-x, a, s) } else { one_rectangular(x, a, s) })
    } else {
        two_rectangular(x, a, b, s)
    }
}

/// The same without a normal term: rectangular, or trapezoidal. An exact value (a = 0) counts half at its own place.
fn without_noise(x: f64, a: f64, b: f64) -> f64 {
    if a == 0.0 {
        return if x > 0.0 { 0.0 } else { 0.5 };
    }
    if x >= a + b {
        0.0
    } else if x > a - b {
        (a + b - x) / (4.0 * a) * ((a + b - x) / (2.0 * b))
    } else {
        (a - x) / (2.0 * a)
    }
}

fn one_rectangular(x: f64, a: f64, s: f64) -> f64 {
    let half = a / s;
    if half * (1.0 + x / s) < AVERAGE_BELOW {
        return average(x / s, half, normal::above);
    }
    let (near, far) = ((x - a) / s, (x + a) / s);
    let noise = normal::first_integral(near.abs()) - normal::first_integral(far);
    without_noise(x, a, 0.0) + noise / (2.0 * half)
}

fn two_rectangular(x: f64, a: f64, b: f64, s: f64) -> f64 {
    let scale = s / (2.0 * a) * (s / (2.0 * b));
    let (inner, outer) = ((x - a + b) / s, (x - a - b) / s);
    let signed = |z: f64| if z < 0.0 { -normal::second_integral(-z) } else { normal::second_integral(z) };
    let far = normal::second_integral((x + a + b) / s) - normal::second_integral((x + a - b) / s);
    let step = if outer < 0.0 && inner >= 0.0 { 0.5 } else { 0.0 };
    without_noise(x, a, b) + scale * (step + (signed(outer) - signed(inner)) + far)
}
