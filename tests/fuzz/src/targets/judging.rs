//! Verdicts against what their rule promises: the acceptance interval, the risk, and the order of answers.

use reckohm::uncertainty::Estimate;
use reckohm::verdict::{
    Answer, Limits, LimitsError, NextStep, Rule, RuleKind, Side, Verdict, VerdictError, conformance_probability, judge,
};

use super::coverage::draw;
use crate::accepted;
use crate::input::Input;

/// What a root and a difference of probabilities may be off by.
const SLACK: f64 = 1e-9;

fn rule(input: &mut Input<'_>) -> Option<Rule> {
    let risk = if input.below(8) == 0 { input.number() } else { 0.5 * input.fraction() };
    let made = match input.below(3) {
        0 => return Some(Rule::simple_acceptance()),
        1 => Rule::guarded(risk),
        _ => Rule::max_risk(risk),
    };
    assert_eq!(made.is_ok(), risk > 0.0 && risk < 0.5);
    made.ok()
}

fn limits(input: &mut Input<'_>) -> Option<Limits> {
    let size = |input: &mut Input<'_>| input.size(-3..4) - 1.0;
    accepted!(
        LimitsError,
        match input.below(4) {
            0 => Limits::at_most(size(input)),
            1 => Limits::at_least(size(input)),
            2 => Limits::new(input.number(), input.number()),
            _ => {
                let lower = size(input);
                Limits::new(lower, lower + input.size(-4..4))
            }
        }
    )
}

/// The same parts around another value.
fn at(estimate: &Estimate, value: f64) -> Option<Estimate> {
    let parts = (estimate.rectangular(), estimate.normal_u(), estimate.type_a(), estimate.below(), estimate.above());
    Estimate::from_parts(value, parts.0, parts.1, parts.2, parts.3, parts.4).ok()
}

/// An estimate, limits and a rule.
pub fn target(data: &[u8]) {
    let mut input = Input::new(data);
    let Some(rule) = rule(&mut input) else { return };
    let Some(limits) = limits(&mut input) else { return };
    let value = if input.below(8) == 0 { input.number() } else { input.size(-3..4) - 1.0 };
    let Some(estimate) = draw(&mut input).and_then(|estimate| at(&estimate, value)) else { return };
    let Some(verdict) = accepted!(VerdictError, judge(&estimate, &limits, rule)) else { return };
    coherent(&estimate, &limits, &verdict);
    promised(&estimate, &limits, &verdict);
}

fn coherent(estimate: &Estimate, limits: &Limits, verdict: &Verdict) {
    let value = estimate.value();
    let p = verdict.conformance_probability;
    assert!((0.0..=1.0).contains(&p), "{p}");
    assert_eq!(p, conformance_probability(estimate, limits));
    assert_eq!(verdict.side == Side::Inside, limits.contains(value));
    assert_eq!(verdict.answer != Answer::Undecided, verdict.next_step == NextStep::None);
    assert!(verdict.distance_ohm >= 0.0 && verdict.tur.is_none_or(|tur| tur >= 0.0 && tur.is_finite()));
    assert!(verdict.guard_band_ohm.is_none_or(|band| band >= 0.0));
    assert_eq!(verdict.acceptance_lower_ohm.is_some(), verdict.acceptance_upper_ohm.is_some());
    let accepted = verdict.acceptance_lower_ohm.zip(verdict.acceptance_upper_ohm);
    let within = accepted.is_some_and(|(lower, upper)| {
        assert!(lower <= upper && lower >= limits.lower_ohm() && upper <= limits.upper_ohm());
        (lower..=upper).contains(&value)
    });
    assert_eq!(verdict.answer == Answer::Conforms, within);
    assert!(verdict.to_string().len() < 1024);
}

fn promised(estimate: &Estimate, limits: &Limits, verdict: &Verdict) {
    let value = estimate.value();
    let Some(risk) = verdict.rule.risk() else {
        assert_ne!(verdict.answer, Answer::Undecided);
        return;
    };
    let beyond = estimate.probability_above(limits.upper_ohm().min(f64::MAX)).expect("finite");
    let short = estimate.probability_below(limits.lower_ohm().max(f64::MIN)).expect("finite");
    // Where the value is far larger than its uncertainty, the place of the limit itself is rounded.
    let rounded = 1e-12 * (value.abs() + verdict.distance_ohm) > estimate.u();
    if rounded {
        return;
    }
    match (verdict.rule.kind(), verdict.answer) {
        (RuleKind::Guarded, Answer::Conforms) => assert!(beyond.max(short) <= risk + SLACK, "{beyond} {short} {risk}"),
        (RuleKind::MaxRisk, Answer::Conforms) => {
            assert!(1.0 - verdict.conformance_probability <= risk + SLACK, "{verdict:?}");
        }
        (RuleKind::Guarded | RuleKind::MaxRisk, Answer::DoesNotConform) => {
            assert!(verdict.conformance_probability <= risk + SLACK, "{verdict:?}");
            // Between limits that are close for the uncertainty even a value inside may fail a bound on both of them.
            assert!(verdict.side == Side::Outside || verdict.rule.kind() == RuleKind::MaxRisk);
        }
        _ => {}
    }
}
