//! The distribution of the error that an estimate stands for: tails and quantiles.
//!
//! Several type A parts have no common distribution that holds its coverage (Welch-Satterthwaite falls to 88 %), so the
//! distribution is defined by its quantiles: at the tail probability q in use the type A parts count as one of
//! s(q)·t(ν) with ν the fewest degrees of freedom and s(q) = √(Σ t(q, νᵢ)²·sᵢ²)/t(q, ν), which is Banerjee's bound
//! (Biometrika 48, 1961) at that q; s is found anew for every q.

use super::convolution::upper_tail;
use super::estimate::{Estimate, TypeA};
use super::noise::Noise;
use super::root;
use super::squares::lift;
use crate::number::{Real, by_type, normal, student_t};

/// Nearer to one half than this, quantiles are taken in proportion to the density at the centre.
const CENTRE: f64 = 1e-7;

/// The parts without value and one-sided widths; symmetric around zero.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Shape<R = f64> {
    a: R,
    b: R,
    u: R,
    first: TypeA<R>,
    second: TypeA<R>,
    /// What the parts were multiplied by, so that the squares of the smallest are numbers yet.
    lift: R,
}

impl<R: Real> Shape<R> {
    pub(crate) fn of(estimate: &Estimate<R>) -> Shape<R> {
        let [a, b] = estimate.rectangular;
        let [first, second] = estimate.type_a;
        let lift = lift(a.larger(estimate.normal_u).larger(first.s).larger(second.s));
        let lifted = |part: TypeA<R>| TypeA { s: part.s * lift, ..part };
        let u = estimate.normal_u * lift;
        Shape { a: a * lift, b: b * lift, u, first: lifted(first), second: lifted(second), lift }
    }

    /// No uncertainty at all.
    fn is_exact(&self) -> bool {
        self.a == R::ZERO && self.u == R::ZERO && self.first.s == R::ZERO
    }

    /// The type A parts as one, at the upper tail probability `q` (at most one half).
    fn type_a(&self, q: R) -> TypeA<R> {
        let TypeA { s, dof } = self.first;
        if self.second.s == R::ZERO {
            return self.first;
        }
        let ratio = if R::lit(0.5) - q < R::lit(CENTRE) {
            student_t::density(R::ZERO, dof) / student_t::density(R::ZERO, self.second.dof)
        } else {
            student_t::quantile_above(q, self.second.dof) / student_t::quantile_above(q, dof)
        };
        let other = ratio * self.second.s;
        TypeA { s: (s * s + other * other).square_root(), dof }
    }

    /// Probability of an error above `x` (at least 0), the type A parts taken as `type_a`.
    fn tail_with(&self, x: R, type_a: TypeA<R>) -> R {
        if self.a == R::ZERO && self.u == R::ZERO {
            return student_t::above(x / type_a.s, type_a.dof);
        }
        Noise { u: self.u, s: type_a.s, dof: type_a.dof }.mean(|s| upper_tail(x, self.a, self.b, s))
    }

    /// Probability of an error above `x`; an exact value counts as exceeding what is below it.
    pub(crate) fn above(&self, x: R) -> R {
        if self.is_exact() {
            return if x < R::ZERO { R::ONE } else { R::ZERO };
        }
        if x < R::ZERO {
            return R::ONE - self.right_of_centre(-x * self.lift);
        }
        self.right_of_centre(x * self.lift)
    }

    fn right_of_centre(&self, x: R) -> R {
        if x == R::INFINITE {
            return R::ZERO;
        }
        if self.second.s == R::ZERO {
            return self.tail_with(x, self.first);
        }
        // The q whose quantile is x: the tail at x with the s that belongs to q is q itself.
        let excess = |ln_q: R| {
            let q = ln_q.exponential();
            self.tail_with(x, self.type_a(q)).larger(least()).natural_log() - ln_q
        };
        let half = R::lit(0.5).natural_log();
        if excess(half) >= R::ZERO {
            return R::lit(0.5);
        }
        let low = least::<R>().natural_log();
        let f_low = excess(low);
        if f_low <= R::ZERO {
            return R::ZERO;
        }
        root(excess, low, f_low, half, excess(half)).exponential()
    }

    /// The error exceeded with probability `q`, 0 < q <= 1/2.
    pub(crate) fn quantile_above(&self, q: R) -> R {
        if self.is_exact() || q >= R::lit(0.5) {
            return R::ZERO;
        }
        self.lifted_quantile_above(q) / self.lift
    }

    fn lifted_quantile_above(&self, q: R) -> R {
        let type_a = self.type_a(q);
        if self.a == R::ZERO && type_a.s == R::ZERO {
            return self.u * normal::quantile_above(q);
        }
        if self.a == R::ZERO && self.u == R::ZERO {
            return type_a.s * student_t::quantile_above(q, type_a.dof);
        }
        // Beyond both rectangular parts and the q/2 quantiles of the two others there is less than q. The smallest q has
        // no half that is a number.
        let half = R::lit(0.5) * q;
        let (normal, repeats) = self.quantiles(if half > R::ZERO { half } else { q }, type_a);
        let high = self.a + self.b + repeats + normal;
        if !high.finite() {
            return high;
        }
        let ln_q = q.natural_log();
        let excess = |x: R| self.tail_with(x, type_a).larger(least()).natural_log() - ln_q;
        let (f_low, f_high) = (excess(R::ZERO), excess(high));
        if f_low <= R::ZERO {
            return R::ZERO;
        }
        if f_high >= R::ZERO {
            return high;
        }
        root(excess, R::ZERO, f_low, high, f_high)
    }

    /// A half-width that holds the two-sided probability whose upper tail is `q` for **every** error within the
    /// rectangular parts, not only on average over them: a + b + the quantile of the rest by Banerjee's bound.
    pub(crate) fn guaranteed(&self, q: R) -> R {
        let (normal, repeats) = self.quantiles(q, self.type_a(q));
        (self.a + self.b + (normal * normal + repeats * repeats).square_root()) / self.lift
    }

    /// The quantiles of the normal and the type A part, each alone.
    fn quantiles(&self, q: R, type_a: TypeA<R>) -> (R, R) {
        let normal = if self.u == R::ZERO { R::ZERO } else { self.u * normal::quantile_above(q) };
        let repeats = if type_a.s == R::ZERO { R::ZERO } else { type_a.s * student_t::quantile_above(q, type_a.dof) };
        (normal, repeats)
    }
}

/// The smallest tail probability told apart from zero.
#[inline(always)]
pub(crate) fn least<R: Real>() -> R {
    by_type(1.2e-38, 1e-300)
}
