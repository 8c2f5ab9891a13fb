//! A normal term and a type A term together, as a mixture of normal distributions.
//!
//! A Student t variable with ν degrees of freedom is normal with variance ν/V, V being chi-square with ν degrees of
//! freedom (Student 1908; any textbook). So whatever is convolved with u·normal + s·t(ν) is, for each V, a convolution
//! with one normal distribution of variance u² + s²·ν/V, which has a closed form, and one integral over V is left.
//! With d = ln(V/ν) its weight is exp(ν/2·(d - e^d + 1)) up to a constant that drops out, smooth and falling off on
//! both sides, so the trapezoidal rule converges exponentially: no case distinction, no kink where s is small against
//! a rectangular term, and the tails keep their relative accuracy since every term is positive.

use crate::number::{Real, by_type};

/// Step of the rule for few degrees of freedom; for many the weight narrows, and the step with it. Against the incomplete
/// beta function at 40 digits the rule errs by 4e-15 at most (12 degrees of freedom), at a step of 0.25 by 2e-11. In single
/// precision the wider step errs by 2.3e-6 at most, of which a narrow one leaves half, to rounding.
const STEP: f64 = 0.2;
const STEP_F32: f64 = 0.35;
/// Degrees of freedom from which the step narrows.
const NARROWS_FROM: f64 = 12.0;
/// A term that is this small part of the sum, and those beyond it, changes nothing.
const NEGLIGIBLE: f64 = 1e-18;
const NEGLIGIBLE_F32: f64 = 1e-9;
/// More degrees of freedom than this are taken as infinitely many: the difference is below 1e-15.
const NORMAL_FROM: f64 = 1e15;
const NORMAL_FROM_F32: f64 = 1e10;

/// Normal standard deviation `u` and type A standard deviation `s` with `dof` degrees of freedom.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Noise<R> {
    pub(crate) u: R,
    pub(crate) s: R,
    pub(crate) dof: R,
}

impl<R: Real> Noise<R> {
    /// The mean of `tail(standard deviation)` over the mixture; `tail` is positive and grows with its argument.
    pub(crate) fn mean(&self, tail: impl Fn(R) -> R) -> R {
        let negligible = by_type::<R>(NEGLIGIBLE_F32, NEGLIGIBLE);
        let narrows_from = R::lit(NARROWS_FROM);
        let Noise { u, s, dof } = *self;
        if s == R::ZERO {
            return tail(u);
        }
        if dof > by_type(NORMAL_FROM_F32, NORMAL_FROM) {
            return tail((u * u + s * s).square_root());
        }
        let widest = by_type::<R>(STEP_F32, STEP);
        let step = if dof > narrows_from { widest * (narrows_from / dof).square_root() } else { widest };
        let weight = |d: R| (R::lit(0.5) * dof * deviation(d)).exponential();
        // Where a square is too large, the type A term is the wider by far; the normal one is taken as its share.
        let spread = |d: R| {
            let squares = u * u + s * s * (-d).exponential();
            if squares.finite() {
                return squares.square_root();
            }
            let wide = s * (R::lit(-0.5) * d).exponential();
            wide * (R::ONE + (u / wide) * (u / wide)).square_root()
        };
        let term = |d: R, w: R| w * tail(spread(d));
        let (mut weights, mut sum) = (R::ONE, term(R::ZERO, R::ONE));
        // To the right both weight and tail fall.
        let mut d = step;
        loop {
            let w = weight(d);
            let t = term(d, w);
            weights += w;
            sum += t;
            // Asked so that a tail that is no number ends it as well.
            let counts = w > negligible || t > negligible * sum;
            if !counts {
                break;
            }
            d += step;
        }
        // To the left the tail grows while the weight falls: go on past the largest term.
        d = -step;
        loop {
            let w = weight(d);
            let t = term(d, w);
            weights += w;
            sum += t;
            if w == R::ZERO || w <= negligible && sum > R::ZERO && t <= negligible * sum {
                break;
            }
            d -= step;
        }
        sum / weights
    }
}

/// d - e^d + 1 without the cancellation near zero.
fn deviation<R: Real>(d: R) -> R {
    if d.magnitude() > R::lit(0.35) {
        return d - d.exponential() + R::ONE;
    }
    // -(d²/2! + d³/3! + …), 14 terms: below 0.35 the next one is under 1e-19 of the first; 8 and 1e-9 in single precision.
    let mut sum = R::ZERO;
    let mut n = by_type::<R>(9.0, 15.0);
    while n >= R::lit(3.0) {
        sum = (R::ONE + sum) * d / n;
        n -= R::ONE;
    }
    -(R::ONE + sum) * d * d / R::lit(2.0)
}

#[cfg(test)]
mod tests {
    use super::{Noise, deviation};
    use crate::number::{normal, student_t};

    #[test]
    fn mixture_is_student_t() {
        for dof in [1.0, 1.5, 2.0, 4.0, 9.0, 12.4, 12.6, 40.0, 1e3, 1e6, 1e10] {
            for t in [0.0, 0.3, 1.0, 2.5, 6.0, 20.0, 1e3, 1e8] {
                let noise = Noise { u: 0.0, s: 1.0, dof };
                let expected = student_t::above(t, dof);
                if expected < 1e-290 {
                    continue;
                }
                let relative = noise.mean(|s| normal::above(t / s)) / expected - 1.0;
                assert!(f64::abs(relative) < 1e-13, "{dof} {t} {relative:e}");
            }
        }
    }

    /// Single precision, whose step is wider, against the double form of the same argument.
    #[test]
    fn single_precision_is_the_mixture_too() {
        let mut worst = 0.0_f64;
        for dof in [1.0_f32, 1.5, 2.0, 4.0, 9.0, 12.0, 12.5, 40.0, 1e3, 1e6] {
            for t in [0.0_f32, 0.3, 1.0, 2.5, 6.0, 20.0] {
                let expected = student_t::above(f64::from(t), f64::from(dof));
                if expected < 1e-30 {
                    continue;
                }
                let found = Noise { u: 0.0, s: 1.0, dof }.mean(|s| normal::above(t / s));
                worst = worst.max((f64::from(found) / expected - 1.0).abs());
            }
        }
        assert!(worst < 3e-6, "{worst:e}");
    }

    #[test]
    fn deviation_joins_smoothly() {
        for d in [0.35f64, -0.35] {
            let inside = deviation(d * 0.999_999_999);
            let outside = deviation(d * 1.000_000_001);
            assert!((inside / outside - 1.0).abs() < 1e-8);
            let plain = d - libm::exp(d) + 1.0;
            assert!((deviation(d) / plain - 1.0).abs() < 1e-14);
        }
    }
}
