//! Conformance probabilities of JCGM 106 (figures from memory or as reprinted, recomputed), guard bands and verdicts by
//! the shape of the error.

use proptest::prelude::*;
use reckohm::uncertainty::Estimate;
use reckohm::verdict::{
    Answer, Limits, NextStep, Rule, Side, conformance_probability, conformance_probability_into, judge, judge_into,
};

fn normal(value: f64, u: f64) -> Estimate {
    Estimate::new(value, u, f64::INFINITY).unwrap()
}

/// The computed column of the check file for one quantity.
fn checks(example: &str) -> Vec<(String, f64)> {
    let text = include_str!("../checks/verdict_jcgm106.csv");
    let mut reader = csv::Reader::from_reader(text.as_bytes());
    let records: Vec<_> = reader.records().map(|r| r.unwrap()).filter(|r| &r[0] == example).collect();
    assert!(!records.is_empty(), "{example}");
    records.iter().map(|r| (r[1].to_owned(), r[4].parse().unwrap())).collect()
}

/// Agreement with a figure of 12 digits.
fn agrees(found: f64, computed: f64) {
    assert!((found - computed).abs() <= 6e-12 * computed.abs().max(1e-3), "{found} {computed}");
}

#[test]
fn one_limit_table_of_jcgm_106() {
    for (quantity, z) in checks("JCGM 106 7.3 Table 1") {
        let p: f64 = quantity.rsplit(' ').next().unwrap().parse().unwrap();
        agrees(normal(0.0, 1.0).quantile_above(1.0 - p).unwrap(), z);
    }
    for (quantity, p) in checks("one-sided probability of conformity") {
        let z: f64 = quantity.rsplit(' ').next().unwrap().parse().unwrap();
        agrees(conformance_probability(&normal(-z, 1.0), &Limits::at_most(0.0).unwrap()), p);
        agrees(conformance_probability(&normal(z, 1.0), &Limits::at_least(0.0).unwrap()), p);
    }
}

#[test]
fn zener_case_of_jcgm_106() {
    let p = conformance_probability(&normal(-5.47, 0.05), &Limits::at_most(-5.40).unwrap());
    agrees(p, checks("JCGM 106 Zener diode")[0].1);
    assert_eq!(format!("{p:.2}"), "0.92");
}

#[test]
fn two_limits_of_jcgm_106() {
    let limits = Limits::new(-0.2, 0.2).unwrap();
    for (quantity, p) in checks("two-sided probability of conformity") {
        let figure = |name: &str| -> f64 {
            let after = quantity.split(name).nth(1).unwrap();
            after.split(';').next().unwrap().trim().parse().unwrap()
        };
        let found = conformance_probability(&normal(figure("y = "), figure("u = ")), &limits);
        // 0.2 - 0.15 and its like are not exact in binary: in the tails the figure moves by z²·1e-16.
        assert!((found - p).abs() <= 1e-11 * p.max(1e-3), "{quantity}: {found} {p}");
    }
}

/// Abramowitz and Stegun, table 26.2: Q(8) = 6.220 960 574 27e-16, Q(10) = 7.619 853 024e-24. One less the rest would be 0.
#[test]
fn beyond_either_limit_a_small_probability_keeps_its_digits() {
    let limits = Limits::new(-1.0, 1.0).unwrap();
    let (over, under) = (normal(9.0, 1.0), normal(-9.0, 1.0));
    let p = conformance_probability(&over, &limits);
    assert!((p / (6.220_960_574_27e-16 - 7.619_853_024e-24) - 1.0).abs() < 1e-11, "{p:e}");
    assert_eq!(conformance_probability(&under, &limits).to_bits(), p.to_bits());
}

#[test]
fn guard_bands_follow_the_shape() {
    let rule = Rule::guarded(0.05).unwrap();
    let limits = Limits::at_most(100.0).unwrap();
    let band = |e: Estimate| judge(&e, &limits, rule).unwrap().guard_band_ohm.unwrap();
    assert_eq!(format!("{:.3}", band(normal(90.0, 1.0))), "1.645");
    let rectangular = Estimate::exact(90.0).unwrap().with_rectangular(1.0).unwrap();
    assert_eq!(format!("{:.3} {:.3}", band(rectangular), band(rectangular) / rectangular.u()), "0.900 1.559");
    // t(0.95) at 4 degrees of freedom, GUM table G.2 for 90 % two-sided: 2.13.
    assert_eq!(format!("{:.2}", band(Estimate::new(90.0, 1.0, 4.0).unwrap())), "2.13");
    // 0.83·U on an honest rectangular U leaves a risk of 10.6 %.
    let u = rectangular.expanded(0.95).unwrap().half_width;
    let at = Estimate::exact(100.0 - 0.83 * u).unwrap().with_rectangular(1.0).unwrap();
    assert_eq!(format!("{:.3}", 1.0 - conformance_probability(&at, &limits)), "0.106");
}

/// A part of 4.7 kohm, 5 %, on a span of ±(0.8 % + 3 counts of 10 ohm).
fn reading(shown: f64, scatter: f64) -> Estimate {
    Estimate::exact(shown).unwrap().with_rectangular(0.008 * shown + 30.0).unwrap().with_normal(scatter).unwrap()
}

#[test]
fn a_part_walks_through_the_three_answers() {
    let limits = Limits::from_tolerance(4700.0, 0.05).unwrap();
    assert_eq!((limits.lower_ohm(), limits.upper_ohm()), (4465.0, 4935.0));
    let rule = Rule::guarded(0.05).unwrap();
    let at = |shown: f64| judge(&reading(shown, 3.0), &limits, rule).unwrap();
    let expanded = reading(4880.0, 3.0).expanded(0.95).unwrap();
    assert_eq!(format!("{:.0} {:.3}", expanded.half_width, expanded.coverage_factor), "66 1.646");
    assert_eq!(
        format!("{:.0} {:.0}", at(4880.0).guard_band_ohm.unwrap(), at(4880.0).acceptance_upper_ohm.unwrap()),
        "62 4873"
    );
    assert_eq!(format!("{:.2}", at(4880.0).tur.unwrap()), "3.57");
    assert_eq!(at(4860.0).answer, Answer::Conforms);
    assert_eq!(at(4860.0).next_step, NextStep::None);
    for (shown, p, side) in
        [(4880.0, "0.898", Side::Inside), (4930.0, "0.536", Side::Inside), (4960.0, "0.321", Side::Outside)]
    {
        let verdict = at(shown);
        assert_eq!((verdict.answer, verdict.side), (Answer::Undecided, side));
        assert_eq!(format!("{:.3}", verdict.conformance_probability), p);
        assert_eq!(verdict.next_step, NextStep::TighterMeter);
    }
    let first = (4960..5100).find(|r| at(f64::from(*r)).answer == Answer::DoesNotConform);
    assert_eq!(first, Some(4998));
    // Without the scatter, 4900 has 0.753 by its shape, where a normal distribution would claim 0.81.
    let p = conformance_probability(&reading(4900.0, 0.0), &limits);
    assert_eq!(format!("{p:.3}"), "0.753");
    let as_normal = conformance_probability(&normal(4900.0, reading(4900.0, 0.0).u()), &limits);
    assert_eq!(format!("{as_normal:.2}"), "0.81");
}

#[test]
fn simple_acceptance_has_two_answers_and_inclusive_limits() {
    let limits = Limits::new(10.0, 20.0).unwrap();
    let at = |x: f64| judge(&normal(x, 5.0), &limits, Rule::simple_acceptance()).unwrap();
    assert_eq!(at(20.0).answer, Answer::Conforms);
    assert_eq!(at(20.0_f64.next_up()).answer, Answer::DoesNotConform);
    assert_eq!(at(10.0).side, Side::Inside);
    assert!((at(20.0).conformance_probability - 0.477).abs() < 5e-4);
}

#[test]
fn bounded_risk_counts_both_limits() {
    let limits = Limits::new(-1.0, 1.0).unwrap();
    let rule = Rule::max_risk(0.05).unwrap();
    // TUR 1: at the very centre the probability is 0.95, so only the centre can be accepted.
    let u = 1.0 / 1.959963984540054;
    let centre = judge(&normal(0.0, u * 0.999_999), &limits, rule).unwrap();
    assert_eq!(centre.answer, Answer::Conforms);
    assert_eq!(format!("{:.3} {:.3}", centre.tur.unwrap(), centre.conformance_probability), "1.000 0.950");
    let wider = judge(&normal(0.0, u * 1.001), &limits, rule).unwrap();
    assert_eq!((wider.answer, wider.acceptance_lower_ohm, wider.guard_band_ohm), (Answer::Undecided, None, None));
    // The guarded rule looks at each limit by itself and still accepts there.
    assert_eq!(judge(&normal(0.0, u * 1.001), &limits, Rule::guarded(0.05).unwrap()).unwrap().answer, Answer::Conforms);
    // Where the rule accepts up to, the risk is what was agreed.
    let verdict = judge(&normal(0.0, 0.4), &limits, rule).unwrap();
    let edge = verdict.acceptance_upper_ohm.unwrap();
    assert!((1.0 - conformance_probability(&normal(edge, 0.4), &limits) - 0.05).abs() < 1e-12);
    assert_eq!(verdict.acceptance_lower_ohm.unwrap(), -edge);
}

#[test]
fn one_sided_parts_decide_at_their_worst() {
    let limits = Limits::new(9.0, 11.0).unwrap();
    let rule = Rule::guarded(0.05).unwrap();
    let e = normal(10.8, 0.05);
    assert_eq!(judge(&e, &limits, rule).unwrap().answer, Answer::Conforms);
    let leaky = e.with_one_sided(0.0, 0.5).unwrap();
    let verdict = judge(&leaky, &limits, rule).unwrap();
    assert_eq!((verdict.answer, verdict.next_step), (Answer::Undecided, NextStep::RemoveOneSided));
    assert!(verdict.conformance_probability < 1e-6);
    let below = e.with_one_sided(0.5, 0.0).unwrap();
    assert_eq!(judge(&below, &limits, rule).unwrap().answer, Answer::Conforms);
}

#[test]
fn exact_values_are_judged_exactly() {
    let limits = Limits::from_tolerance(100.0, 0.01).unwrap();
    for rule in [Rule::simple_acceptance(), Rule::guarded(0.01).unwrap(), Rule::max_risk(0.01).unwrap()] {
        let at = |x: f64| judge(&Estimate::exact(x).unwrap(), &limits, rule).unwrap();
        assert_eq!((at(101.0).answer, at(101.0).conformance_probability, at(101.0).tur), (Answer::Conforms, 1.0, None));
        assert_eq!((at(101.0_f64.next_up()).answer, at(98.9).conformance_probability), (Answer::DoesNotConform, 0.0));
    }
}

#[test]
fn arrays_are_the_scalars() {
    let limits = Limits::from_tolerance(4700.0, 0.05).unwrap();
    let rule = Rule::guarded(0.05).unwrap();
    let parts: Vec<Estimate> = (0..40).map(|i| reading(4400.0 + 20.0 * f64::from(i), 3.0)).collect();
    let mut verdicts = vec![judge(&parts[0], &limits, rule).unwrap(); 40];
    judge_into(&parts, &limits, rule, &mut verdicts).unwrap();
    let mut p = vec![0.0; 40];
    conformance_probability_into(&parts, &limits, &mut p).unwrap();
    for ((part, verdict), p) in parts.iter().zip(&verdicts).zip(&p) {
        assert_eq!(*verdict, judge(part, &limits, rule).unwrap());
        assert_eq!(p.to_bits(), conformance_probability(part, &limits).to_bits());
    }
    let error = judge_into(&parts, &limits, rule, &mut verdicts[..3]).unwrap_err();
    assert_eq!(
        error.to_string(),
        "judging an array: room for 3 verdicts given for 40 estimates; as many as estimates allowed; give arrays of one \
         length"
    );
}

proptest! {
    /// A tighter measurement never turns a sound acceptance into a rejection, and answers do not depend on the unit.
    #[test]
    fn verdicts_scale_by_powers_of_two(x in 0.5f64..2.0, a in 0.0f64..0.2, u in 0.0f64..0.1, power in -20i32..20) {
        let scale = 2f64.powi(power);
        let e = Estimate::exact(x).unwrap().with_rectangular(a).unwrap().with_normal(u).unwrap();
        let rule = Rule::guarded(0.05).unwrap();
        let plain = judge(&e, &Limits::new(0.9, 1.1).unwrap(), rule).unwrap();
        let scaled = judge(&e.times(scale).unwrap(), &Limits::new(0.9 * scale, 1.1 * scale).unwrap(), rule).unwrap();
        prop_assert_eq!(plain.answer, scaled.answer);
        prop_assert_eq!(plain.conformance_probability.to_bits(), scaled.conformance_probability.to_bits());
    }

    /// The probability of conforming falls as the value moves away from the middle of the limits.
    #[test]
    fn conformance_falls_away_from_the_middle(
        x in 0.0f64..2.0, step in 1e-3f64..0.5, a in 0.0f64..1.0, b in 0.0f64..1.0, u in 0.0f64..0.5, s in 0.0f64..0.5,
        dof in 1.0f64..40.0,
    ) {
        let at = |x: f64| {
            let e = Estimate::exact(x).unwrap().with_rectangular(a).unwrap().with_rectangular(b).unwrap();
            let e = e.with_normal(u).unwrap().with_type_a(s, dof).unwrap();
            conformance_probability(&e, &Limits::new(-1.0, 1.0).unwrap())
        };
        prop_assert!(at(x + step) <= at(x) + 1e-12);
        prop_assert!((at(x) - at(-x)).abs() < 1e-12);
    }
}
