//! What a verdict shows beside its answer: its words, the acceptance limits, and what to do next.

use reckohm::number::Real;
use reckohm::uncertainty::{Estimate, TypeA};
use reckohm::verdict::{Answer, Limits, NextStep, Rule, conformance_probability, judge};
use reckohm_tests::random::Random;

#[test]
fn a_verdict_says_its_answer_its_rule_and_what_to_do_next() {
    let limits = Limits::at_most(100.0).unwrap();
    let said = |value: f64, rule| {
        judge(&Estimate::exact(value).unwrap().with_normal(1.0).unwrap(), &limits, rule).unwrap().to_string()
    };
    let guarded = Rule::guarded(0.05).unwrap();
    assert_eq!(
        said(100.0, guarded),
        "undecided, inside the limits (guarded at each limit, risk 0.05); conformance probability 0.500; next: take more \
         readings"
    );
    assert_eq!(
        said(101.0, Rule::max_risk(0.01).unwrap()),
        "undecided, outside the limits (risk of being outside at most 0.01); conformance probability 0.159; next: take \
         more readings"
    );
    assert_eq!(said(90.0, guarded), "conforms (guarded at each limit, risk 0.05); conformance probability 1.000");
    assert_eq!(
        said(101.0, Rule::simple_acceptance()),
        "does not conform (simple acceptance); conformance probability 0.159"
    );
}

/// Parts in a unit: half-widths, normal, type A, below, above.
type Parts = ([f64; 2], f64, [f64; 2], f64, f64);

/// What contributes the largest variance: a²/3 for each half-width and one-sided width, s² for each scatter, added within the
/// meter, the scatter and the one-sided parts.
#[test]
fn the_next_step_is_against_the_largest_share_however_small_the_unit() {
    let (meter, repeat, one_sided) = (NextStep::TighterMeter, NextStep::Repeat, NextStep::RemoveOneSided);
    let cases: [(Parts, NextStep); 12] = [
        (([1.0, 0.0], 0.5, [0.0, 0.0], 0.0, 0.0), meter),
        (([1.0, 0.0], 0.6, [0.0, 0.0], 0.0, 0.0), repeat),
        (([1.0, 0.0], 0.0, [0.6, 0.0], 0.0, 0.0), repeat),
        // Two that are each less than the other side.
        (([1.0, 1.0], 0.7, [0.0, 0.0], 0.0, 0.0), meter),
        (([1.0, 0.0], 0.4, [0.0, 0.5], 0.0, 0.0), repeat),
        (([1.0, 0.0], 0.0, [0.4, 0.5], 0.0, 0.0), repeat),
        (([1.0, 0.0], 0.0, [0.0, 0.0], 0.8, 0.8), one_sided),
        (([1.0, 0.0], 0.0, [0.0, 0.0], 1.1, 0.0), one_sided),
        (([1.0, 0.0], 0.0, [0.0, 0.0], 0.0, 0.9), meter),
        // More than one of the other two, and less than the other.
        (([0.5, 0.0], 1.0, [0.0, 0.0], 0.0, 1.5), repeat),
        (([1.5, 0.0], 0.5, [0.0, 0.0], 0.0, 1.2), meter),
        (([0.5, 0.0], 0.5, [0.0, 0.0], 0.0, 1.2), one_sided),
    ];
    for unit in [1.0, 1e-8, 1e-170, 1e100] {
        for ((rectangular, normal, scatter, below, above), step) in cases {
            let type_a = scatter.map(|s| TypeA { s: s * unit, dof: 9.0 });
            let rectangular = rectangular.map(|a| a * unit);
            let (normal, below, above) = (normal * unit, below * unit, above * unit);
            let estimate = Estimate::from_parts(0.0, rectangular, normal, type_a, below, above).unwrap();
            let verdict = judge(&estimate, &Limits::at_most(0.0).unwrap(), Rule::guarded(0.001).unwrap()).unwrap();
            assert_eq!((verdict.answer, verdict.next_step), (Answer::Undecided, step), "{unit} {estimate:?}");
        }
    }
}

/// Of limits that are close together for the measurement, a part is likely outside one or the other; each by itself tells
/// nothing.
#[test]
fn a_part_that_is_hardly_within_narrow_limits_does_not_conform_where_both_ends_count() {
    let limits = Limits::new(-1.0, 1.0).unwrap();
    let part = Estimate::exact(0.5).unwrap().with_normal(20.0).unwrap();
    let both = judge(&part, &limits, Rule::max_risk(0.05).unwrap()).unwrap();
    assert_eq!(both.answer, Answer::DoesNotConform);
    assert!(both.conformance_probability < 0.05);
    assert_eq!(judge(&part, &limits, Rule::guarded(0.05).unwrap()).unwrap().answer, Answer::Undecided);
}

/// Whichever value they were shown for, and never beyond the limits; and one a little farther out, by this part of the
/// limits, does not conform.
fn an_acceptance_limit_is_the_last_value_that_conforms<R: Real>(seed: u64, little: f64) {
    let mut random = Random::new(seed);
    let mut ends = 0;
    for _ in 0..200 {
        let unit = 2.0_f64.powi(random.between(-30, 30) as i32);
        let mut part = |most: f64| R::of_f64(if random.below(3) == 0 { 0.0 } else { unit * most * random.unit() });
        let rectangular = [part(8.0), part(2.0)];
        let (normal, s, below, above) = (part(3.0), part(1.0), part(0.5), part(0.5));
        let dof = R::of_f64(1.0 + random.below(9) as f64);
        let type_a = [TypeA { s, dof }, TypeA { s: R::ZERO, dof: R::ONE }];
        let at = |value: R| Estimate::from_parts(value, rectangular, normal, type_a, below, above).unwrap();
        let [lower, upper] = [465.0 * unit, 535.0 * unit].map(R::of_f64);
        let limits = match random.below(4) {
            0 => Limits::at_most(upper),
            1 => Limits::at_least(lower),
            _ => Limits::new(lower, upper),
        }
        .unwrap();
        let risk = R::of_f64(random.one_of(&[0.05, 0.01, 1e-4, 0.3]));
        let rule = if random.below(2) == 0 { Rule::guarded(risk) } else { Rule::max_risk(risk) }.unwrap();
        let value = R::of_f64(unit * (440.0 + 120.0 * random.unit()));
        let verdict = judge(&at(value), &limits, rule).unwrap();
        let answer = |value: R| judge(&at(value), &limits, rule).unwrap().answer;
        let (Some(low), Some(high)) = (verdict.acceptance_lower_ohm, verdict.acceptance_upper_ohm) else {
            assert_ne!(answer(R::of_f64(500.0 * unit)), Answer::Conforms, "{:?} {limits:?} {rule:?}", at(value));
            continue;
        };
        let farther = R::of_f64(little * 500.0 * unit);
        for (end, out) in [(low, -farther), (high, farther)] {
            if !end.finite() {
                assert!(end == limits.lower_ohm() || end == limits.upper_ohm());
                continue;
            }
            assert_eq!(answer(end), Answer::Conforms, "{end:?} of {:?} {limits:?} {rule:?}", at(value));
            assert_ne!(answer(end + out), Answer::Conforms, "{end:?} of {:?} {limits:?} {rule:?}", at(value));
            ends += 1;
        }
        let within = low <= value && value <= high;
        assert_eq!(within, verdict.answer == Answer::Conforms, "{:?} {limits:?} {rule:?}", at(value));
    }
    assert!(ends > 200, "{ends}");
}

#[test]
fn an_acceptance_limit_is_the_last_value_that_conforms_in_either_precision() {
    an_acceptance_limit_is_the_last_value_that_conforms::<f64>(8, 1e-10);
    an_acceptance_limit_is_the_last_value_that_conforms::<f32>(16, 1e-3);
}

/// Where a value is judged that lies beyond an acceptance limit, the limits shown are those that a value inside is shown, in
/// whatever unit.
#[test]
fn the_acceptance_limits_are_the_same_for_every_value() {
    for unit in [1e-9, 1.0, 1e9] {
        let limits = Limits::new(-unit, unit).unwrap();
        for rule in [Rule::guarded(0.05).unwrap(), Rule::max_risk(0.01).unwrap()] {
            let shown = |value: f64| {
                let part = Estimate::exact(value * unit).unwrap().with_rectangular(0.1 * unit).unwrap();
                let verdict = judge(&part.with_normal(0.02 * unit).unwrap(), &limits, rule).unwrap();
                (verdict.acceptance_lower_ohm.unwrap(), verdict.acceptance_upper_ohm.unwrap())
            };
            let (low, high) = shown(0.1);
            assert!(-unit < low && low < 0.0 && 0.0 < high && high < unit);
            for value in [-30.0, -1.5, -1.0, -0.95, -0.3, 0.3, 0.95, 1.0, 1.5, 30.0] {
                assert_eq!(shown(value), (low, high), "{value} {unit} {rule}");
            }
        }
    }
}

/// A part does not conform where it is unlikely to be within even at the place that its one-sided parts allow nearest to the
/// middle of the limits: a risk just above that probability rejects it, one just below does not.
#[test]
fn the_place_nearest_to_the_middle_rejects() {
    let two = Limits::new(498.0, 502.0).unwrap();
    for (limits, value, below, above, nearest) in [
        (two, 506.0, 20.0, 0.0, 500.0),
        (two, 493.0, 1.0, 20.0, 500.0),
        (two, 510.0, 6.0, 9.0, 504.0),
        (two, 490.0, 9.0, 6.0, 496.0),
        (Limits::at_most(500.0).unwrap(), 510.0, 6.0, 9.0, 504.0),
        (Limits::at_least(500.0).unwrap(), 490.0, 9.0, 6.0, 496.0),
    ] {
        let at = |value: f64| Estimate::exact(value).unwrap().with_normal(10.0).unwrap();
        let likeliest = conformance_probability(&at(nearest), &limits);
        let part = at(value).with_one_sided(below, above).unwrap();
        let answer = |risk: f64| judge(&part, &limits, Rule::max_risk(risk).unwrap()).unwrap().answer;
        assert_eq!(answer(likeliest * (1.0 + 1e-9)), Answer::DoesNotConform, "{value} {limits:?}");
        assert_eq!(answer(likeliest * (1.0 - 1e-9)), Answer::Undecided, "{value} {limits:?}");
    }
}
