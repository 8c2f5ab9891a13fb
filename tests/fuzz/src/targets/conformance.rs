//! Conformance probabilities against a plain numerical integral over the densities of the parts.

use core::f64::consts::PI;

use reckohm::uncertainty::Estimate;
use reckohm::verdict::{Limits, conformance_probability};

use crate::input::Input;

/// The widest panel of an integral by Simpson's rule.
const PANEL: f64 = 0.01;
/// What the integral errs by at most, and the difference that rounding leaves.
const ALLOWED: f64 = 1e-9;

fn simpson(from: f64, to: f64, f: impl Fn(f64) -> f64) -> f64 {
    let panels = 2 * (8 + ((to - from) / (2.0 * PANEL)) as usize);
    let step = (to - from) / panels as f64;
    let sum = (0..=panels).fold(0.0, |sum, place| {
        let weight = if place == 0 || place == panels { 1.0 } else { 2.0 + 2.0 * (place % 2) as f64 };
        sum + weight * f(from + step * place as f64)
    });
    sum * step / 3.0
}

/// The probability of less than x for two rectangular parts: from the trapezoid's second differences of a square.
fn rectangular_below(x: f64, a: f64, b: f64) -> f64 {
    if a == 0.0 {
        return if x < 0.0 { 0.0 } else { 1.0 };
    }
    if b == 0.0 {
        return ((x + a) / (2.0 * a)).clamp(0.0, 1.0);
    }
    if x.abs() >= a + b {
        return if x < 0.0 { 0.0 } else { 1.0 };
    }
    let half_square = |x: f64| if x > 0.0 { 0.5 * x * x } else { 0.0 };
    let sum = half_square(x + a + b) - half_square(x + a - b) - half_square(x - a + b) + half_square(x - a - b);
    (sum / (4.0 * a * b)).clamp(0.0, 1.0)
}

/// What the noise is made of: a normal part, or one of type A.
#[derive(Clone, Copy, Debug)]
enum Noise {
    Normal(f64),
    TypeA(f64, u32),
}

/// The density of Student's t with a whole number of degrees of freedom; its constant from the recurrence of the gamma
/// function.
fn t_density(t: f64, dof: u32) -> f64 {
    let constant = (3..=dof).rev().step_by(2).fold(1.0, |product, n| product * f64::from(n - 1) / f64::from(n - 2));
    let first =
        if dof.is_multiple_of(2) { 1.0 / (2.0 * f64::from(dof).sqrt()) } else { 1.0 / (PI * f64::from(dof).sqrt()) };
    first * constant * (1.0 + t * t / f64::from(dof)).powf(-0.5 * (f64::from(dof) + 1.0))
}

impl Noise {
    /// A place of the line squeezed into an interval: by the logarithm, nearly, for the heavy tails.
    fn squeezed(self, x: f64) -> f64 {
        match self {
            Noise::Normal(u) => (x / u).clamp(-10.0, 10.0),
            Noise::TypeA(s, _) => (x / s).asinh().clamp(-32.0, 32.0),
        }
    }

    /// The place again, and the density there by the squeezed place.
    fn at(self, squeezed: f64) -> (f64, f64) {
        match self {
            Noise::Normal(u) => (u * squeezed, (-0.5 * squeezed * squeezed).exp() / (2.0 * PI).sqrt()),
            Noise::TypeA(s, dof) => {
                let t = squeezed.sinh();
                (s * t, t_density(t, dof) * squeezed.cosh())
            }
        }
    }
}

/// The probability within two limits of rectangular parts + noise, in pieces that have no corner.
fn integrated((lower, upper): (f64, f64), (a, b): (f64, f64), noise: Noise) -> f64 {
    if a == 0.0 {
        return simpson(noise.squeezed(lower), noise.squeezed(upper), |w| noise.at(w).1);
    }
    let corners = [lower, upper].map(|limit| [-a - b, -a + b, a - b, a + b].map(|end| noise.squeezed(limit + end)));
    let ends = [f64::NEG_INFINITY, f64::INFINITY].map(|end| noise.squeezed(end));
    let mut places = [&corners[0][..], &corners[1], &ends].concat();
    places.sort_by(f64::total_cmp);
    let within = |w: f64| {
        let (shift, density) = noise.at(w);
        density * (rectangular_below(upper - shift, a, b) - rectangular_below(lower - shift, a, b))
    };
    places.windows(2).map(|piece| simpson(piece[0], piece[1], within)).sum()
}

/// Parts, a value and limits of like size.
pub fn target(data: &[u8]) {
    let mut input = Input::new(data);
    let value = 100.0 * f64::from(input.u16()) / 65_536.0;
    let (wide, narrow) = (input.size(-2..2), input.size(-2..2));
    let parts = match input.below(4) {
        0 => (0.0, 0.0),
        1 => (wide, 0.0),
        _ => (wide.max(narrow), wide.min(narrow)),
    };
    let noise = if input.flag() {
        Noise::Normal(input.size(-2..2))
    } else {
        Noise::TypeA(input.size(-2..2), 1 + u32::from(input.byte()) % 40)
    };
    let limits = match input.below(4) {
        0 => Limits::at_most(50.0),
        1 => Limits::at_least(50.0),
        _ => Limits::new(50.0 - input.size(-1..2), 50.0 + input.size(-1..2)),
    };
    let limits = limits.expect("in order");
    let estimate = Estimate::exact(value).and_then(|exact| exact.with_rectangular(parts.0)?.with_rectangular(parts.1));
    let estimate = estimate.and_then(|estimate| match noise {
        Noise::Normal(u) => estimate.with_normal(u),
        Noise::TypeA(s, dof) => estimate.with_type_a(s, f64::from(dof)),
    });
    let estimate = estimate.expect("legal parts");
    let found = conformance_probability(&estimate, &limits);
    let expected = integrated((limits.lower_ohm() - value, limits.upper_ohm() - value), parts, noise);
    assert!((found - expected).abs() <= ALLOWED, "{estimate:?} {limits:?}: {found}, integrated {expected}");
}
