//! The decision alone: it is that of the whole verdict, and single precision decides as double does.

use reckohm::uncertainty::Estimate;
use reckohm::verdict::{Answer, Limits, Rule, RuleKind, answer, judge};
use reckohm_tests::random::Random;

/// An estimate around limits of 4700 ohm, its parts of any mixture.
fn estimate(random: &mut Random, value: f64) -> Estimate {
    let mut part = |most: f64| if random.below(3) == 0 { 0.0 } else { most * random.unit() };
    let (a, b, u, s, below, above) = (part(80.0), part(20.0), part(30.0), part(10.0), part(5.0), part(5.0));
    let dof = 1.0 + random.below(9) as f64;
    let shaped = Estimate::exact(value).and_then(|e| e.with_rectangular(a)?.with_rectangular(b)?.with_normal(u));
    shaped.and_then(|e| e.with_type_a(s, dof)?.with_one_sided(below, above)).unwrap()
}

fn rule(random: &mut Random) -> Rule {
    let risk = random.one_of(&[0.05, 0.01, 0.001, 0.3]);
    match random.below(3) {
        0 => Rule::simple_acceptance(),
        1 => Rule::guarded(risk).unwrap(),
        _ => Rule::max_risk(risk).unwrap(),
    }
}

#[test]
fn the_answer_is_that_of_the_verdict_and_agrees_with_its_acceptance_limits() {
    let mut random = Random::new(106);
    let limits = Limits::from_tolerance(4700.0, 0.05).unwrap();
    let mut seen = [0; 3];
    for case in 0..150 {
        let (value, rule) = (4300.0 + 800.0 * random.unit(), rule(&mut random));
        let shape = estimate(&mut random, value);
        // Half of the values at an acceptance limit itself, or a few spacings off it.
        let first = judge(&shape, &limits, rule).unwrap();
        let shape = match first.acceptance_upper_ohm {
            Some(end) if case % 2 == 0 => {
                let near = f64::from_bits(end.to_bits() + random.below(7) - 3);
                let [a, b] = shape.rectangular();
                Estimate::from_parts(near, [a, b], shape.normal_u(), shape.type_a(), shape.below(), shape.above())
                    .unwrap()
            }
            _ => shape,
        };
        let verdict = judge(&shape, &limits, rule).unwrap();
        let decision = answer(&shape, &limits, rule);
        assert_eq!((decision.answer, decision.side), (verdict.answer, verdict.side));
        assert_eq!(decision.conformance_probability.to_bits(), verdict.conformance_probability.to_bits());
        let within = verdict
            .acceptance_lower_ohm
            .zip(verdict.acceptance_upper_ohm)
            .is_some_and(|(low, high)| (low..=high).contains(&shape.value()));
        assert_eq!(within, verdict.answer == Answer::Conforms, "{shape:?} {rule}");
        seen[verdict.answer as usize - 1] += 1;
    }
    assert!(seen.iter().all(|count| *count > 10), "{seen:?}");
}

#[test]
fn single_precision_decides_as_double_does_but_next_to_the_risk() {
    let mut random = Random::new(32);
    let limits = Limits::from_tolerance(4700.0, 0.05).unwrap();
    let single_limits = Limits::from_tolerance(4700.0_f32, 0.05).unwrap();
    let (mut same, mut worst) = (0, 0.0_f64);
    for _ in 0..1000 {
        let value = f64::from((4300.0 + 800.0 * random.unit()) as f32);
        let (shape, rule) = (estimate(&mut random, value), rule(&mut random));
        let narrow = |x: f64| x as f32;
        let [a, b] = shape.rectangular().map(narrow);
        let type_a =
            shape.type_a().map(|part| reckohm::uncertainty::TypeA { s: narrow(part.s), dof: narrow(part.dof) });
        let (u, below, above) = (narrow(shape.normal_u()), narrow(shape.below()), narrow(shape.above()));
        let single = Estimate::from_parts(narrow(value), [a, b], u, type_a, below, above).unwrap();
        let single_rule = match (rule.kind(), rule.risk().map(narrow)) {
            (RuleKind::Guarded, Some(risk)) => Rule::guarded(risk).unwrap(),
            (RuleKind::MaxRisk, Some(risk)) => Rule::max_risk(risk).unwrap(),
            _ => Rule::simple_acceptance(),
        };
        let (double, float) = (answer(&shape, &limits, rule), answer(&single, &single_limits, single_rule));
        let off = (double.conformance_probability - f64::from(float.conformance_probability)).abs();
        worst = worst.max(off);
        same += usize::from(double.answer == float.answer);
    }
    // Parts rounded to single precision shift a probability by what a spacing of the value is to the narrowest part.
    assert!(worst < 2e-5, "{worst}");
    assert!(same >= 998, "{same} of 1000 alike");
}

/// The distance over a standard uncertainty this small is infinite; it once came out as no number.
#[test]
fn an_uncertainty_next_to_nothing_leaves_a_probability() {
    let limits = Limits::new(99.0, 101.0).unwrap();
    for u in [4e-317, 5e-324] {
        let part = |value: f64| Estimate::exact(value).unwrap().with_normal(u).unwrap();
        for (value, probability) in [(100.0, 1.0), (102.0, 0.0), (101.0, 0.5)] {
            assert_eq!(
                answer(&part(value), &limits, Rule::guarded(0.05).unwrap()).conformance_probability,
                probability
            );
        }
    }
}

/// Whether the decision on a value with one rectangular and one normal part is that on the estimate of them.
macro_rules! of_value_is_of_estimate {
    ($name:ident, $number:ty, $values:expr, $widths:expr) => {
        #[test]
        fn $name() {
            use reckohm::verdict::answer_of_value;
            let limits: [Limits<$number>; 4] = [
                Limits::new(95.0, 105.0).unwrap(),
                Limits::at_most(101.0).unwrap(),
                Limits::at_least(98.0).unwrap(),
                Limits::new(99.999, 100.001).unwrap(),
            ];
            let rules: [Rule<$number>; 4] = [
                Rule::simple_acceptance(),
                Rule::guarded(0.05).unwrap(),
                Rule::guarded(0.001).unwrap(),
                Rule::max_risk(0.05).unwrap(),
            ];
            let mut seen = [0_usize; 3];
            for value in $values {
                for (half_width, u) in $widths.into_iter().flat_map(|a| $widths.map(|u| (a, u))) {
                    let estimate =
                        Estimate::exact(value).unwrap().with_rectangular(half_width).unwrap().with_normal(u).unwrap();
                    for limits in &limits {
                        for rule in rules {
                            let whole = answer(&estimate, limits, rule);
                            let found = answer_of_value(value, half_width, u, limits, rule).unwrap();
                            let said = format!("{value} {half_width} {u} {limits:?} {rule:?}");
                            assert_eq!((found.answer, found.side), (whole.answer, whole.side), "{said}");
                            assert_eq!(
                                found.conformance_probability.to_bits(),
                                whole.conformance_probability.to_bits(),
                                "{said}"
                            );
                            seen[found.answer as usize - 1] += 1;
                        }
                    }
                }
            }
            assert!(seen.iter().all(|count| *count > 500), "{seen:?}");
        }
    };
}

const VALUES: [f64; 13] = [0.0, 90.0, 94.9, 95.0, 95.3, 98.0, 99.9, 100.0, 100.001, 101.0, 104.0, 105.0, 1e6];
const WIDTHS: [f64; 11] = [0.0, 1e-30, 1e-9, 1e-3, 0.02, 0.3, 0.9, 1.0, 3.0, 40.0, 1e9];
of_value_is_of_estimate!(a_value_in_double_is_judged_as_its_estimate, f64, VALUES, WIDTHS);
of_value_is_of_estimate!(
    a_value_in_single_is_judged_as_its_estimate,
    f32,
    VALUES.map(|x| x as f32),
    WIDTHS.map(|x| x as f32)
);

#[test]
fn what_is_no_value_is_refused() {
    use reckohm::number::Kind;
    use reckohm::verdict::answer_of_value;
    let (limits, rule) = (Limits::new(95.0_f32, 105.0).unwrap(), Rule::guarded(0.05).unwrap());
    let kind =
        |value, half_width, u| answer_of_value(value, half_width, u, &limits, rule).map_err(|error| error.kind());
    assert_eq!(kind(f32::NAN, 1.0, 1.0), Err(Kind::NotFinite));
    assert_eq!(kind(f32::INFINITY, 1.0, 1.0), Err(Kind::NotFinite));
    assert_eq!(kind(100.0, -1.0, 1.0), Err(Kind::OutOfRange));
    assert_eq!(kind(100.0, 1.0, -1.0), Err(Kind::OutOfRange));
    assert_eq!(kind(100.0, f32::NAN, 1.0), Err(Kind::NotFinite));
    assert_eq!(kind(100.0, 1.0, f32::MAX), Err(Kind::ResultOutOfRange));
    assert_eq!(kind(100.0, 1e20, 1.0), Err(Kind::ResultOutOfRange));
    assert!(kind(100.0, 1e18, 1e18).is_ok());
}
