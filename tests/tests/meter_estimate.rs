//! The estimate of a single reading, without a budget: to the bit what the whole evaluation makes of it.

use reckohm::measurement::{Setup, evaluate};
use reckohm::meter::{Clause, Marks, Meter, MeterError, Span};
use reckohm_tests::random::Random;

/// Clauses of every sort: a limit or a stated coverage, the step inside or outside, a part of the span.
fn clauses() -> Vec<Clause> {
    let plain = Clause::new(0.008, 3.0).unwrap().with_temperature_coefficient_per_kelvin(0.1).unwrap();
    let of_span = Clause::new(0.0123, 0.7).unwrap().with_fraction_of_span(0.000_37).unwrap();
    let stated = plain.with_coverage_factor(2.0).unwrap();
    let alone = Clause::new(0.0, 0.0).unwrap().with_step_outside_counts();
    vec![plain, of_span, stated, plain.with_step_outside_counts(), stated.with_step_outside_counts(), alone]
}

fn spans() -> Vec<Span> {
    let of = |clause| Span::new("2 kohm", 2.0e3, 1.0, 1.0e3, Marks::OL, clause).unwrap();
    let mut spans: Vec<Span> = clauses().into_iter().map(of).collect();
    spans.extend(Meter::example_hand_held().spans());
    spans.extend(Meter::example_bench().spans());
    spans
}

#[test]
fn an_estimate_has_the_bits_of_an_evaluation_of_the_reading() {
    let mut random = Random::new(11);
    let mut asked = 0;
    for span in spans() {
        for _ in 0..200 {
            let shown = (2.0 * random.unit() - 1.0) * (span.full_scale_ohm() - span.step_ohm());
            let text = span.display_text(if random.below(20) == 0 { 0.0 } else { shown }).unwrap();
            let reading = span.read(text.as_bytes()).unwrap();
            let given = (random.below(2) == 0 && span.clause().temperature_coefficient_per_kelvin().is_some())
                .then(|| 60.0 * random.unit() - 20.0);
            let setup = Setup::new();
            let setup = given.map_or(setup, |given| setup.with_meter_temperature(given).unwrap());
            let estimate = span.estimate(&reading, given).unwrap();
            let whole = *evaluate(&span, &[reading], &setup).unwrap().estimate();
            let bits = |e: reckohm::uncertainty::Estimate| {
                let [a, b] = e.rectangular();
                let [first, second] = e.type_a();
                [e.value(), a, b, e.normal_u(), first.s, first.dof, second.s, second.dof, e.below(), e.above()]
                    .map(f64::to_bits)
            };
            assert_eq!(bits(estimate), bits(whole), "{} on {}", text.as_str(), span.label());
            asked += 1;
        }
    }
    assert_eq!(asked, 200 * 19);
}

#[test]
fn what_has_no_value_or_no_clause_is_refused() {
    let span = spans()[1];
    let reading = span.read(b"1.500").unwrap();
    assert_eq!(span.estimate(&span.read(b"OL").unwrap(), None), Err(MeterError::ReadingOverRange));
    assert!(matches!(span.estimate(&reading, Some(121.0)), Err(MeterError::Range(_))));
    let missing = MeterError::CoefficientMissing { temperature_c: 35.0, lower_c: 18.0, upper_c: 28.0 };
    assert_eq!(span.estimate(&reading, Some(35.0)), Err(missing));
    assert!(span.estimate(&reading, Some(28.0)).is_ok());
}
