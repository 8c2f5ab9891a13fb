//! Which span a part goes on, why the others lost, and the steps from span to span.

use reckohm::meter::{Clause, Marks, Meter, MeterError, Outcome, Span, Step};
use reckohm::number::Kind;
use reckohm::verdict::Limits;

fn close(found: f64, expected: f64) {
    assert!((found - expected).abs() <= 1e-12 * expected.abs(), "{found} instead of {expected}");
}

/// METROLOGY's example part, 4k7 at 5 % on ±(0.8 % + 3 x 10 ohm), with every other span's reason.
#[test]
fn four_kilohm_seven_on_the_hand_held() {
    let meter = Meter::example_hand_held();
    let choice = meter.choose(4700.0, 0.05).unwrap();
    assert_eq!(choice.index(), 2);
    assert_eq!(choice.part_ohm(), (4700.0, 4465.0, 4935.0));
    let chosen = choice.chosen().unwrap();
    // One rectangular of 0.008 * 4700 + 30 = 67.6: its 95 % are 0.95 of it.
    close(chosen.expanded_ohm, 64.22);
    close(chosen.tur, 235.0 / 64.22);
    assert_eq!(chosen.conformance_probability_at_centre, 1.0);
    assert!(chosen.holds && chosen.accepts_some);
    assert_eq!((chosen.expected_display.as_str(), chosen.expected_ohm, chosen.counts_used), ("4.70", 4700.0, 470));
    assert_eq!(chosen.outcome, Outcome::Chosen);
    for index in [0, 1] {
        let lost = choice.assessment(index).unwrap();
        assert_eq!((lost.outcome, lost.holds), (Outcome::OverRange, false));
        assert_eq!(lost.expected_display.as_str(), "1");
        assert_eq!(lost.counts_used, 2000);
    }
    for (index, half_width, display) in [(3, 337.6, "4.7"), (4, 47.0 + 3000.0, "0.005"), (5, 94.0 + 50_000.0, "0.00")] {
        let lost = choice.assessment(index).unwrap();
        let Outcome::Wider { factor } = lost.outcome else { panic!("{index} {:?}", lost.outcome) };
        close(factor, half_width / 67.6);
        close(lost.expanded_ohm, 0.95 * half_width);
        close(lost.tur, 235.0 / (0.95 * half_width));
        assert_eq!(lost.expected_display.as_str(), display);
        // A rectangular error is within ±235 with probability 235/a, where that is less than 1.
        close(lost.conformance_probability_at_centre, (235.0_f64 / half_width).min(1.0));
        assert_eq!(lost.accepts_some, half_width < 235.0 / 0.95);
    }
}

/// The part's upper limit decides, not its nominal value; full scale itself is not shown.
#[test]
fn a_part_near_the_end_of_a_span() {
    let meter = Meter::example_hand_held();
    assert_eq!(meter.choose(1.9e3, 0.05).unwrap().index(), 1); // 1995
    assert_eq!(meter.choose(1.9e3, 0.0523).unwrap().index(), 1); // 1999.37, shown as 1999
    assert_eq!(meter.choose(1.9e3, 0.0525).unwrap().index(), 2); // 1999.75, which would be shown as 2000
}

/// At a TUR of 1 the probability at the very centre is 0.95.
#[test]
fn at_a_test_uncertainty_ratio_of_one() {
    let clause = Clause::new(0.0, 10.0).unwrap();
    let span = Span::new("1 kohm", 2.0e3, 1.0, 1.0, Marks::OL, clause).unwrap();
    let spans = [span];
    let meter = Meter::new(&spans).unwrap();
    let at = |tolerance: f64| meter.choose(1.0e3, tolerance).unwrap().chosen().unwrap();
    let one = at(0.0095);
    close(one.tur, 1.0);
    close(one.conformance_probability_at_centre, 0.95);
    assert!(!at(0.0094).accepts_some && at(0.0096).accepts_some);
    close(at(0.005).conformance_probability_at_centre, 0.5);
}

#[test]
fn a_meter_too_coarse_for_the_part_is_flagged() {
    let choice = Meter::example_hand_held().choose(220.0, 0.01).unwrap();
    let chosen = choice.chosen().unwrap();
    assert_eq!(choice.index(), 1);
    assert!(!chosen.accepts_some);
    close(chosen.conformance_probability_at_centre, 2.2 / 4.76);
    let bench = Meter::example_bench().choose(220.0, 0.01).unwrap().chosen().unwrap();
    assert!(bench.accepts_some && bench.tur > 10.0);
}

#[test]
fn a_stated_coverage_is_normal_and_a_step_outside_the_counts_is_added() {
    let limit = Clause::new(0.0, 2.0).unwrap();
    let spans = [limit.with_coverage_factor(2.0).unwrap(), limit.with_step_outside_counts()]
        .map(|clause| Span::new("2 kohm", 2.0e3, 1.0, 1.0, Marks::OL, clause).unwrap());
    let [normal, apart] = spans.map(|span| {
        let spans = [span];
        Meter::new(&spans).unwrap().choose(1.0e3, 0.05).unwrap().chosen().unwrap().expanded_ohm
    });
    close(normal, 1.959963984540054); // U = 2 with k = 2 is u = 1
    // Rectangular of 2 and of 0.5: P(|x + y| > q) for 1.5 < q < 2.5 is (2.5 - q)²/(2 * 2 * 0.5 * 2) doubled on both sides.
    close(apart, 2.5 - (0.05_f64 * 4.0 * 2.0 * 0.5).sqrt());
}

#[test]
fn temperature_outside_the_band() {
    let meter = Meter::example_hand_held();
    let inside = meter.choose_at(4700.0, 0.05, Some(28.0)).unwrap().chosen().unwrap();
    let outside = meter.choose_at(4700.0, 0.05, Some(35.0)).unwrap().chosen().unwrap();
    close(outside.expanded_ohm / inside.expanded_ohm, 1.7);
    let cold = meter.choose_at(4700.0, 0.05, Some(8.0)).unwrap().chosen().unwrap();
    close(cold.expanded_ohm / inside.expanded_ohm, 2.0);
    let clause = Clause::new(0.008, 3.0).unwrap();
    let spans = [Span::new("20 kohm", 20.0e3, 10.0, 1.0e3, Marks::OL, clause).unwrap()];
    let plain = Meter::new(&spans).unwrap();
    assert!(plain.choose_at(4700.0, 0.05, Some(28.0)).is_ok());
    let error = plain.choose_at(4700.0, 0.05, Some(28.1)).unwrap_err();
    assert_eq!(error.kind(), Kind::MissingArgument);
    assert_eq!(spans[0].clause_half_width_ohm(0.0, Some(-5.0)).unwrap_err().kind(), Kind::MissingArgument);
    assert_eq!(spans[0].clause_half_width_ohm(0.0, Some(500.0)).unwrap_err().kind(), Kind::OutOfRange);
}

#[test]
fn just_outside_the_band_on_either_side() {
    let span = Meter::example_hand_held().span(2).unwrap();
    for (temperature_c, widening) in [(18.0, 1.0), (17.5, 1.05), (17.0, 1.1), (28.0, 1.0), (28.5, 1.05), (29.0, 1.1)] {
        close(span.clause().widening(Some(temperature_c)).unwrap(), widening);
        close(span.clause_half_width_ohm(-4700.0, Some(temperature_c)).unwrap(), 67.6 * widening);
    }
}

/// Two spans that are equally good: the lower one, which uses more of its display.
#[test]
fn of_equals_the_lower_span_is_chosen() {
    let clause = Clause::new(0.01, 0.0).unwrap();
    let spans = [2.0e3, 20.0e3].map(|top| Span::new("span", top, 1.0, 1.0, Marks::OL, clause).unwrap());
    let choice = Meter::new(&spans).unwrap().choose(1.0e3, 0.05).unwrap();
    assert_eq!(choice.index(), 0);
    assert_eq!(choice.assessment(1).unwrap().outcome, Outcome::Wider { factor: 1.0 });
}

/// Chosen by brute force: the least half-width among the spans that show the upper limit.
#[test]
fn the_choice_is_the_least_uncertainty_that_holds() {
    for meter in [Meter::example_hand_held(), Meter::example_bench()] {
        let mut chosen_spans = std::collections::BTreeSet::new();
        for exponent in 0..8 {
            for mantissa in [1.0, 1.1, 1.5, 1.9, 2.2, 3.3, 4.7, 6.8, 9.1] {
                for tolerance in [0.001, 0.01, 0.05, 0.2] {
                    let nominal: f64 = mantissa * 10_f64.powi(exponent);
                    let limits = Limits::from_tolerance(nominal, tolerance).unwrap();
                    let holds = |span: &Span| {
                        !span.read(span.display_text(limits.upper_ohm()).unwrap().as_bytes()).is_ok_and(|r| r.over())
                    };
                    let best = (0..meter.spans().len()).filter(|i| holds(&meter.spans()[*i])).min_by(|a, b| {
                        let width = |i: &usize| meter.spans()[*i].clause_half_width_ohm(nominal, None).unwrap();
                        width(a).total_cmp(&width(b))
                    });
                    match (meter.choose(nominal, tolerance), best) {
                        (Ok(choice), Some(best)) => {
                            assert_eq!(choice.index(), best, "{nominal} {tolerance}");
                            chosen_spans.insert(best);
                            for index in 0..meter.spans().len() {
                                let one = choice.assessment(index).unwrap();
                                assert_eq!(one.holds, holds(&meter.spans()[index]));
                                assert_eq!(one.outcome == Outcome::Chosen, index == best);
                                assert!((0.0..=1.0).contains(&one.conformance_probability_at_centre));
                            }
                        }
                        (Err(MeterError::NoSpanHolds { .. }), None) => {}
                        (found, best) => panic!("{nominal} {tolerance}: {found:?} {best:?}"),
                    }
                }
            }
        }
        assert_eq!(chosen_spans.len(), meter.spans().len(), "every span is the right one for some part");
    }
}

#[test]
fn what_cannot_be_chosen() {
    let meter = Meter::example_hand_held();
    for (nominal, tolerance, kind) in [
        (0.0, 0.05, Kind::OutOfRange),
        (-10.0, 0.05, Kind::OutOfRange),
        (f64::NAN, 0.05, Kind::NotFinite),
        (f64::INFINITY, 0.05, Kind::NotFinite),
        (1.0e3, 0.0, Kind::OutOfRange),
        (1.0e3, 1.0, Kind::OutOfRange),
        (1.0e3, f64::NAN, Kind::NotFinite),
        (19.5e6, 0.05, Kind::NoSpanHolds),
        (1.0e15, 0.05, Kind::NoSpanHolds),
    ] {
        assert_eq!(meter.choose(nominal, tolerance).unwrap_err().kind(), kind, "{nominal} {tolerance}");
    }
    assert_eq!(meter.choose(1.0e3, 0.05).unwrap().assessment(6).unwrap_err().kind(), Kind::NoSuchSpan);
    // The ends of what is legal.
    assert_eq!(meter.choose(f64::MIN_POSITIVE, 0.999).unwrap().chosen().unwrap().expected_display.as_str(), "0.0");
}

/// From every span and for every resistance the meter comes to rest, on the lowest span that shows it or one above it,
/// and stays there when the reading moves by its own uncertainty.
#[test]
fn stepping_comes_to_rest_and_stays() {
    for meter in [Meter::example_hand_held(), Meter::example_bench()] {
        let mut ohm = 0.1;
        while ohm < 3.0e8 {
            let lowest = meter.spans().iter().position(|s| s.nearest_shown(ohm));
            for start in 0..meter.spans().len() {
                let (mut index, mut steps) = (start, 0);
                let rest = loop {
                    let span = meter.span(index).unwrap();
                    let reading = span.read(span.display_text(ohm).unwrap().as_bytes()).unwrap();
                    match meter.next_span(index, &reading).unwrap() {
                        Step::Stay => break Some(index),
                        Step::BeyondHighest => break None,
                        Step::Up(next) => {
                            assert_eq!(next, index + 1);
                            index = next;
                        }
                        Step::Down(next) => {
                            assert!(next < index);
                            index = next;
                        }
                    }
                    steps += 1;
                    assert!(steps <= meter.spans().len(), "{ohm} from {start}");
                };
                match (rest, lowest) {
                    (None, None) => {}
                    (Some(rest), Some(lowest)) => {
                        assert!(rest == lowest || rest == lowest + 1, "{ohm}: {rest} {lowest}");
                        let shaken = ohm + meter.spans()[rest].clause_half_width_ohm(ohm, None).unwrap() * 0.02;
                        let span = meter.span(rest).unwrap();
                        let reading = span.read(span.display_text(shaken).unwrap().as_bytes()).unwrap();
                        if ohm < 0.94 * span.full_scale_ohm() && rest == lowest {
                            assert_eq!(meter.next_span(rest, &reading), Ok(Step::Stay), "{ohm}");
                        }
                    }
                    other => panic!("{ohm} from {start}: {other:?}"),
                }
            }
            ohm *= 1.013;
        }
    }
}

trait Shown {
    fn nearest_shown(&self, ohm: f64) -> bool;
}

impl Shown for Span {
    fn nearest_shown(&self, ohm: f64) -> bool {
        !self.read(self.display_text(ohm).unwrap().as_bytes()).unwrap().over()
    }
}

#[test]
fn single_steps() {
    let meter = Meter::example_hand_held();
    let next = |index: usize, text: &str| {
        let reading = meter.span(index).unwrap().read(text.as_bytes()).unwrap();
        meter.next_span(index, &reading).unwrap()
    };
    assert_eq!(next(0, "1"), Step::Up(1));
    assert_eq!(next(0, "-1"), Step::Up(1));
    assert_eq!(next(5, "OL"), Step::BeyondHighest);
    assert_eq!(next(5, "0.00"), Step::Down(3)); // ±50 kohm: only the 200 kohm span is sure to hold it
    assert_eq!(next(3, "0.0"), Step::Down(1)); // ±300 ohm
    assert_eq!(next(1, "-0.002"), Step::Down(0));
    assert_eq!(next(1, "0.185"), Step::Down(0)); // 185 + 4.48 is below 190
    assert_eq!(next(1, "0.186"), Step::Stay); // 186 + 4.488 is not
    assert_eq!(next(0, "199.9"), Step::Stay);
    let reading = meter.span(0).unwrap().read(b"1").unwrap();
    assert_eq!(meter.next_span(6, &reading).unwrap_err().kind(), Kind::NoSuchSpan);
}
