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
use crate::number::elementary::{exp, ln, sqrt};
use crate::number::{normal, student_t};

/// Nearer to one half than this, quantiles are taken in proportion to the density at the centre.
const CENTRE: f64 = 1e-7;

/// The parts without value and one-sided widths; symmetric around zero.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Shape {
    a: f64,
    b: f64,
    u: f64,
    first: TypeA,
    second: TypeA,
}

impl Shape {
    pub(crate) fn of(estimate: &Estimate) -> Shape {
        let [a, b] = estimate.rectangular;
        let [first, second] = estimate.type_a;
        Shape { a, b, u: estimate.normal_u, first, second }
    }

    /// No uncertainty at all.
    fn is_exact(&self) -> bool {
        self.a == 0.0 && self.u == 0.0 && self.first.s == 0.0
    }

    /// The type A parts as one, at the upper tail probability `q` (at most one half).
    fn type_a(&self, q: f64) -> TypeA {
        let TypeA { s, dof } = self.first;
        if self.second.s == 0.0 {
            return self.first;
        }
        let ratio = if 0.5 - q < CENTRE {
            student_t::density(0.0, dof) / student_t::density(0.0, self.second.dof)
        } else {
            student_t::quantile_above(q, self.second.dof) / student_t::quantile_above(q, dof)
        };
        let other = ratio * self.second.s;
        TypeA { s: sqrt(s * s + other * other), dof }
    }

    /// Probability of an error above `x` (at least 0), the type A parts taken as `type_a`.
    fn tail_with(&self, x: f64, type_a: TypeA) -> f64 {
        if self.a == 0.0 && self.u == 0.0 {
            return student_t::above(x / type_a.s, type_a.dof);
        }
        Noise { u: self.u, s: type_a.s, dof: type_a.dof }.mean(|s| upper_tail(x, self.a, self.b, s))
    }

    /// Probability of an error above `x`; an exact value counts as exceeding what is below it.
    pub(crate) fn above(&self, x: f64) -> f64 {
        if self.is_exact() {
            return if x < 0.0 { 1.0 } else { 0.0 };
        }
        if x < 0.0 {
            return 1.0 - self.right_of_centre(-x);
        }
        self.right_of_centre(x)
    }

    fn right_of_centre(&self, x: f64) -> f64 {
        if x.is_infinite() {
            return 0.0;
        }
        if self.second.s == 0.0 {
            return self.tail_with(x, self.first);
        }
        // The q whose quantile is x: the tail at x with the s that belongs to q is q itself.
        let excess = |ln_q: f64| {
            let q = exp(ln_q);
            ln(self.tail_with(x, self.type_a(q)).max(LEAST)) - ln_q
        };
        let half = ln(0.5);
        if excess(half) >= 0.0 {
            return 0.5;
        }
        let low = ln(LEAST);
        let f_low = excess(low);
        if f_low <= 0.0 {
            return 0.0;
        }
        exp(root(excess, low, f_low, half, excess(half)))
    }

    /// The error exceeded with probability `q`, 0 < q <= 1/2.
    pub(crate) fn quantile_above(&self, q: f64) -> f64 {
        if self.is_exact() || q >= 0.5 {
            return 0.0;
        }
        let type_a = self.type_a(q);
        if self.a == 0.0 && type_a.s == 0.0 {
            return self.u * normal::quantile_above(q);
        }
        if self.a == 0.0 && self.u == 0.0 {
            return type_a.s * student_t::quantile_above(q, type_a.dof);
        }
        // Beyond both rectangular parts and the q/2 quantiles of the two others there is less than q.
        let noise = if type_a.s == 0.0 { 0.0 } else { type_a.s * student_t::quantile_above(0.5 * q, type_a.dof) };
        let normal = if self.u == 0.0 { 0.0 } else { self.u * normal::quantile_above(0.5 * q) };
        let high = self.a + self.b + noise + normal;
        let excess = |x: f64| ln(self.tail_with(x, type_a).max(LEAST)) - ln(q);
        let (f_low, f_high) = (excess(0.0), excess(high));
        if f_low <= 0.0 {
            return 0.0;
        }
        if f_high >= 0.0 {
            return high;
        }
        root(excess, 0.0, f_low, high, f_high)
    }

    /// A half-width that holds the two-sided probability whose upper tail is `q` for **every** error within the
    /// rectangular parts, not only on average over them: a + b + the quantile of the rest by Banerjee's bound.
    pub(crate) fn guaranteed(&self, q: f64) -> f64 {
        let type_a = self.type_a(q);
        let normal = if self.u == 0.0 { 0.0 } else { self.u * normal::quantile_above(q) };
        let repeats = if type_a.s == 0.0 { 0.0 } else { type_a.s * student_t::quantile_above(q, type_a.dof) };
        self.a + self.b + sqrt(normal * normal + repeats * repeats)
    }
}

/// The smallest tail probability told apart from zero.
const LEAST: f64 = 1e-300;
