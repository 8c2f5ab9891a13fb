//! Single precision from hostile floats: whatever is accepted gives numbers, probabilities within 0 and 1, intervals about
//! their value, and near what double precision gives.

use reckohm::distribution::{self, DistributionError};
use reckohm::marking::Marking;
use reckohm::uncertainty::{Estimate, EstimateError};
use reckohm::verdict::{Limits, LimitsError, Rule, VerdictError, answer, conformance_probability, judge};

use crate::accepted;
use crate::input::Input;

/// Any float: hostile doubles rounded, raw bits, and such as people measure.
fn number(input: &mut Input<'_>) -> f32 {
    match input.below(4) {
        0 => f32::from_le_bytes(input.bytes()),
        1 => input.number() as f32,
        2 => input.size(-3..4) as f32,
        _ => -(input.size(-3..4) as f32),
    }
}

fn fraction(input: &mut Input<'_>) -> f32 {
    if input.below(8) == 0 { number(input) } else { input.fraction() as f32 }
}

/// A tail in either precision, where single precision has normal numbers.
fn near(single: f32, double: f64, part: f64) -> bool {
    (f64::from(single) - double).abs() <= part * double + f64::from(f32::MIN_POSITIVE)
}

fn distributions(x: f32, p: f32, dof: f32) {
    let (wide_x, wide_p, wide_dof) = (f64::from(x), f64::from(p), f64::from(dof));
    if let Some(above) = accepted!(DistributionError, distribution::normal_above_f32(x)) {
        assert!((0.0..=1.0).contains(&above) && distribution::normal_below_f32(-x) == Ok(above));
        assert!(near(above, distribution::normal_above(wide_x).expect("legal"), 3e-6), "{x}: {above}");
    }
    if let Some(above) = accepted!(DistributionError, distribution::t_above_f32(x, dof)) {
        assert!((0.0..=1.0).contains(&above) && distribution::t_below_f32(-x, dof) == Ok(above));
        if (0.5..1e6).contains(&dof) && x.abs() < 1e6 {
            assert!(near(above, distribution::t_above(wide_x, wide_dof).expect("legal"), 1e-4), "{x} {dof}: {above}");
        }
    }
    if let Some(z) = accepted!(DistributionError, distribution::normal_quantile_above_f32(p)) {
        let double = distribution::normal_quantile_above(wide_p).expect("legal");
        assert!((f64::from(z) - double).abs() <= 3e-6 * (1.0 + double.abs()), "{p}: {z}");
        assert_eq!(distribution::normal_quantile_f32(p), Ok(0.0 - z));
    }
    if let Some(t) = accepted!(DistributionError, distribution::t_quantile_above_f32(p, dof)) {
        assert!(t.is_finite() && (p >= 0.5) == (t <= 0.0), "{p} {dof}: {t}");
        assert_eq!(distribution::t_quantile_f32(p, dof), Ok(0.0 - t));
    }
}

fn draw(input: &mut Input<'_>) -> Option<Estimate<f32>> {
    let mut estimate = accepted!(EstimateError, Estimate::exact(number(input)))?;
    for _ in 0..input.below(5) {
        let size = number(input);
        let size = if input.flag() { size.abs() } else { size };
        let part = match input.below(4) {
            0 => estimate.with_rectangular(size),
            1 => estimate.with_normal(size),
            2 => estimate.with_type_a(size, number(input)),
            _ => estimate.with_one_sided(size, number(input)),
        };
        estimate = accepted!(EstimateError, part)?;
    }
    Some(estimate)
}

fn limits(input: &mut Input<'_>) -> Option<Limits<f32>> {
    match input.below(4) {
        0 => accepted!(LimitsError, Limits::new(number(input), number(input))),
        1 => accepted!(LimitsError, Limits::at_most(number(input))),
        2 => accepted!(LimitsError, Limits::at_least(number(input))),
        _ => {
            let (nominal, tolerance) = (number(input), fraction(input));
            let marked = Marking::from_value(f64::from(nominal), None, None);
            let limits = accepted!(LimitsError, Limits::from_tolerance(nominal, tolerance))?;
            assert!(marked.is_ok() || f64::from(nominal) != f64::from(nominal).round() || nominal >= 1e15);
            Some(limits)
        }
    }
}

/// A value, a probability, degrees of freedom; an estimate, what it is asked; limits and a rule.
pub fn target(data: &[u8]) {
    let mut input = Input::new(data);
    distributions(number(&mut input), fraction(&mut input), number(&mut input));
    let (q, p, x) = (fraction(&mut input), fraction(&mut input), number(&mut input));
    let Some(estimate) = draw(&mut input) else { return };
    assert!(estimate.u().is_finite() && estimate.u() >= 0.0 && estimate.effective_dof() >= 1.0);
    let quantile = accepted!(EstimateError, estimate.quantile_above(q));
    assert!(quantile.is_none_or(|quantile| quantile.is_finite() && quantile >= 0.0), "{estimate:?} at {q:e}");
    for interval in [estimate.expanded(p), estimate.expanded_guaranteed(p), estimate.expanded_welch_satterthwaite(p)] {
        let Some(interval) = accepted!(EstimateError, interval) else { continue };
        assert!(interval.lower <= estimate.value() && estimate.value() <= interval.upper, "{interval:?}");
        assert!(interval.coverage_factor >= 0.0 && interval.half_width.is_finite());
    }
    for tail in [estimate.probability_above(x), estimate.probability_below(x)] {
        let tail = accepted!(EstimateError, tail);
        assert!(tail.is_none_or(|tail| (0.0..=1.0).contains(&tail)), "{estimate:?} beyond {x:e}");
    }
    let Some(limits) = limits(&mut input) else { return };
    let conforming = conformance_probability(&estimate, &limits);
    assert!((0.0..=1.0).contains(&conforming), "{estimate:?} within {limits:?}: {conforming}");
    let rule = match input.below(3) {
        0 => Ok(Rule::simple_acceptance()),
        1 => Rule::guarded(fraction(&mut input)),
        _ => Rule::max_risk(fraction(&mut input)),
    };
    let Ok(rule) = rule else { return };
    let decision = answer(&estimate, &limits, rule);
    assert!((0.0..=1.0).contains(&decision.conformance_probability));
    if let Some(verdict) = accepted!(VerdictError, judge(&estimate, &limits, rule)) {
        assert_eq!(verdict.answer, decision.answer, "{estimate:?} within {limits:?} by {rule:?}");
    }
}
