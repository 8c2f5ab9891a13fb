//! Expanded uncertainties and quantiles of an estimate against a bisection of its tail.

use reckohm::distribution::{normal_quantile_above, t_quantile_above};
use reckohm::uncertainty::{Estimate, EstimateError};

use crate::accepted;
use crate::input::Input;

/// An estimate around 0 of any parts, of like or of very different sizes.
pub(crate) fn draw(input: &mut Input<'_>) -> Option<Estimate> {
    let wide = input.below(8) == 0;
    let size = |input: &mut Input<'_>| if wide { input.size(-140..150) } else { input.size(-3..3) };
    let mut estimate = Estimate::exact(0.0).expect("finite");
    for _ in 0..input.below(6) {
        let part = match input.below(8) {
            0..3 => estimate.with_rectangular(size(input)),
            3..5 => estimate.with_normal(size(input)),
            5 => estimate.with_type_a(size(input), f64::from(input.byte() % 30)),
            6 => estimate.with_type_a(size(input), input.size(0..8)),
            _ => match input.below(4) {
                0 => estimate.with_normal(input.number()),
                1 => estimate.with_rectangular(input.number()),
                2 => estimate.with_type_a(input.number(), input.number()),
                _ => estimate.with_one_sided(input.number(), input.number()),
            },
        };
        estimate = accepted!(EstimateError, part)?;
    }
    Some(estimate)
}

/// A quantile may be off by this part of itself; the steps of the root and the roundings of the tail leave so much.
const ALLOWED: f64 = 1e-9;
/// Parts below this have no square that is a double.
const SMALLEST: f64 = 1e-150;
/// Below this the library tells no tail from zero, and its quantile is a bound.
const LEAST: f64 = 1e-299;

/// Where the tail falls to q, by halving from both ends.
fn bisected(estimate: &Estimate, q: f64, (mut low, mut high): (f64, f64), steps: usize) -> f64 {
    for _ in 0..steps {
        let middle = low + 0.5 * (high - low);
        if estimate.probability_above(middle).expect("finite") > q {
            low = middle;
        } else {
            high = middle;
        }
    }
    high
}

fn quantile(estimate: &Estimate, q: f64) {
    let Some(x) = accepted!(EstimateError, estimate.quantile_above(q)) else { return };
    assert!(x >= 0.0 && x.is_finite(), "{x}");
    // One-sided parts move the tail of probability_above; the quantile is that of the other parts.
    let plain = Estimate::from_parts(0.0, estimate.rectangular(), estimate.normal_u(), estimate.type_a(), 0.0, 0.0);
    let plain = plain.expect("parts of an estimate");
    if plain.u() == 0.0 || q < LEAST || x > 1e300 {
        return;
    }
    // Two type A parts cost a root for each tail: their quantile is looked for beside where it should be.
    let [_, second] = plain.type_a();
    let (from, steps) =
        if second.s == 0.0 { ((0.0, 2.0 * x + 1e-6 * plain.u()), 48) } else { ((0.99 * x, 1.01 * x), 34) };
    let found = bisected(&plain, q, from, steps);
    let flat = flatness(&plain, q, x);
    assert!((x - found).abs() <= ALLOWED * x + flat, "{estimate:?} at {q:e}: {x:e}, by bisection {found:e}");
}

/// How far a rounding of the tail moves the quantile, where the tail hardly changes; and what counts as nothing.
fn flatness(estimate: &Estimate, q: f64, x: f64) -> f64 {
    let near_half = if q > 0.4 { 1e-14 / (0.5 - q).max(1e-16) } else { 0.0 };
    near_half * x + 1e-13 * estimate.u()
}

/// Rectangular parts in full, the others' quantiles by their squares.
fn guaranteed_width(estimate: &Estimate, q: f64) -> f64 {
    let ([a, b], parts) = (estimate.rectangular(), estimate.type_a());
    let normal = estimate.normal_u() * normal_quantile_above(q).expect("a tail");
    let squares = parts.into_iter().filter(|part| part.s > 0.0).fold(normal * normal, |sum, part| {
        let width = part.s * t_quantile_above(q, part.dof).expect("one degree of freedom or more");
        sum + width * width
    });
    a + b + squares.sqrt()
}

fn intervals(estimate: &Estimate, p: f64) {
    let Some(expanded) = accepted!(EstimateError, estimate.expanded(p)) else { return };
    assert_eq!(expanded.coverage_probability, p);
    assert_eq!(estimate.quantile_above(0.5 * (1.0 - p)), Ok(expanded.half_width));
    assert!(expanded.lower <= estimate.value() && estimate.value() <= expanded.upper);
    assert!(expanded.u == estimate.u() && expanded.coverage_factor.is_finite() && expanded.coverage_factor >= 0.0);
    if let Some(guaranteed) = accepted!(EstimateError, estimate.expanded_guaranteed(p)) {
        let expected = guaranteed_width(estimate, 0.5 * (1.0 - p));
        assert!((guaranteed.half_width - expected).abs() <= 1e-12 * expected, "{estimate:?} at {p}: {expected}");
    }
    accepted!(EstimateError, estimate.expanded_welch_satterthwaite(p));
    let doubled = accepted!(EstimateError, estimate.times(-2.0)).and_then(|doubled| doubled.expanded(p).ok());
    assert!(doubled.is_none_or(|doubled| {
        // Twice every part is twice the interval, but for the steps of the root.
        (doubled.half_width - 2.0 * expanded.half_width).abs() <= 1e-12 * doubled.half_width
    }));
}

/// An estimate, a tail probability and a coverage probability.
pub fn target(data: &[u8]) {
    let mut input = Input::new(data);
    let q = match input.below(8) {
        0 => input.number(),
        1 => input.one_of(&[0.5, 0.05, 0.025, 0.4999999, 1e-300, 1e-9]),
        _ => 0.5 * input.fraction(),
    };
    let p = if input.below(8) == 0 { input.number() } else { input.fraction() };
    let Some(estimate) = draw(&mut input) else { return };
    assert!(estimate.u().is_finite() && estimate.effective_dof() >= 1.0);
    let sizes = [estimate.rectangular(), estimate.type_a().map(|part| part.s), [estimate.normal_u(), estimate.below()]];
    if sizes.concat().iter().chain([&estimate.above()]).any(|size| *size > 0.0 && *size < SMALLEST) {
        return;
    }
    quantile(&estimate, q);
    intervals(&estimate, p);
    let x = input.number();
    for probability in [estimate.probability_above(x), estimate.probability_below(x)] {
        let probability = accepted!(EstimateError, probability);
        assert_eq!(probability.is_some(), x.is_finite());
        assert!(probability.is_none_or(|probability| (0.0..=1.0).contains(&probability)));
    }
}
