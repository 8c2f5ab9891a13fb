//! What spans, clauses, labels and marks say back of what they were made from, and where the borders of a clause are.

use std::collections::HashSet;
use std::hash::{BuildHasher, BuildHasherDefault, DefaultHasher};

use reckohm::meter::{Clause, Label, Marks, Meter, Span};
use reckohm::number::{Kind, Real};

fn clause() -> Clause {
    Clause::new(0.008, 3.0).unwrap()
}

fn close(found: f64, expected: f64) {
    assert!((found - expected).abs() <= 1e-15 * expected.abs(), "{found} instead of {expected}");
}

#[test]
fn a_clause_says_back_what_it_was_made_of() {
    let plain = clause();
    assert_eq!((plain.fraction_of_reading(), plain.fraction_of_span(), plain.counts()), (0.008, 0.0, 3.0));
    assert_eq!((plain.coverage_factor(), plain.temperature_coefficient_per_kelvin()), (None, None));
    assert!(plain.step_included() && !plain.zeroing_required());
    let full = plain.with_coverage_factor(2.0).unwrap().with_temperature_coefficient_per_kelvin(0.1).unwrap();
    let full = full.with_fraction_of_span(0.001).unwrap().with_step_outside_counts().with_zeroing_required();
    assert_eq!((full.coverage_factor(), full.temperature_coefficient_per_kelvin()), (Some(2.0), Some(0.1)));
    assert_eq!(full.fraction_of_span(), 0.001);
    assert!(!full.step_included() && full.zeroing_required());
    assert!(Meter::example_bench().spans().iter().all(|span| span.clause().zeroing_required()));
    assert!(Meter::example_hand_held().spans().iter().all(|span| !span.clause().zeroing_required()));
}

/// The ends of the band belong to it, and a band may be one temperature.
#[test]
fn a_clause_holds_as_it_stands_at_both_ends_of_its_band() {
    let band = |lower, upper| clause().with_temperature_band_c(lower, upper).unwrap();
    for (lower, upper) in [(18.0, 28.0), (23.0, 23.0)] {
        let clause = band(lower, upper);
        assert_eq!(clause.temperature_band_c(), (lower, upper));
        assert_eq!((clause.widening(Some(lower)), clause.widening(Some(upper))), (Ok(1.0), Ok(1.0)));
        for outside in [lower - 0.5, upper + 0.5] {
            assert_eq!(clause.widening(Some(outside)).unwrap_err().kind(), Kind::MissingArgument);
            let widened = clause.with_temperature_coefficient_per_kelvin(0.1).unwrap();
            assert_eq!(widened.widening(Some(outside)), Ok(1.05));
        }
    }
}

/// Numbers that are no short decimals are added in binary.
#[test]
fn a_clause_of_long_fractions_counts_span_and_steps() {
    let clause = Clause::new(0.0, 1.0 / 7.0).unwrap().with_fraction_of_span(0.01 / 3.0).unwrap();
    let span = Span::new("2 kohm", 2.0e3, 0.1, 1.0, Marks::OL, clause).unwrap();
    close(span.clause_half_width_ohm(0.0, None).unwrap(), 20.0 / 3.0 + 0.1 / 7.0);
}

/// Half a step to either side, whatever the step is.
#[test]
fn the_rounding_of_a_display_is_half_a_step_where_the_clause_does_not_hold_it() {
    let clause = clause().with_step_outside_counts();
    for (full_scale_ohm, step) in [(2.0e6, 1.0e3), (2.0e3, 0.5), (20.0, 0.01)] {
        let span = Span::new("span", full_scale_ohm, step, 1.0, Marks::OL, clause).unwrap();
        let estimate = span.estimate(&span.reading(0.0, 0, false, false).unwrap(), None).unwrap();
        assert_eq!(estimate.rectangular(), [3.0 * step, 0.5 * step]);
    }
}

#[test]
fn marks_that_are_given_twice_are_there_once() {
    assert_eq!((Marks::OL | Marks::OL, Marks::OL.and(Marks::OL | Marks::BLANK)), (Marks::OL, Marks::OL | Marks::BLANK));
    assert_eq!((Marks::ONE_ALONE | Marks::DASHES).bits(), 9);
}

#[test]
fn labels_are_told_apart_by_their_text_alone() {
    let label = |text| Label::new(text).unwrap();
    assert!(label("20 kohm") == label("20 kohm") && label("20 kohm") != label("2 kohm") && label("2") != label("20"));
    let hash = |label: Label| BuildHasherDefault::<DefaultHasher>::default().hash_one(label);
    assert_eq!(hash(label("20 kohm")), hash(label("20 kohm")));
    let hashes: HashSet<u64> = ["20 kohm", "2 kohm", "2", "20"].map(|text| hash(label(text))).into_iter().collect();
    assert_eq!(hashes.len(), 4);
}

/// Without a mark the display is left open, where it would be beyond; with one it shows the mark.
#[test]
fn a_span_without_marks_is_assessed_all_the_same() {
    let span = |full_scale_ohm, step| Span::new("span", full_scale_ohm, step, 1.0e3, Marks::NONE, clause()).unwrap();
    let spans = [span(2.0e3, 1.0), span(20.0e3, 10.0), span(200.0e3, 100.0)];
    let choice = Meter::new(&spans).unwrap().choose(4700.0, 0.05).unwrap();
    let displays = [0, 1, 2].map(|index| choice.assessment(index).unwrap().expected_display);
    assert_eq!(displays.each_ref().map(|text| text.as_str()), ["", "4.70", "4.7"]);
}

/// Of the same text the same is said: what was given, what it could be, and the largest shown.
#[test]
fn a_misfit_is_told_alike_in_either_precision_and_in_every_unit() {
    fn said<R: Real>([full_scale, step, unit]: [f64; 3], text: &str) -> Option<String> {
        let lit = R::of_f64;
        let clause = Clause::new(lit(0.01), lit(3.0)).unwrap();
        let span = Span::new("span", lit(full_scale), lit(step), lit(unit), Marks::OL, clause).unwrap();
        span.read(text.as_bytes()).err().map(|error| error.to_string())
    }
    let mut refused = 0;
    for span in [[2.0, 0.001, 1.0], [2.0e3, 1.0, 1.0e3], [2.0, 1.0e-3, 1.0e-3], [2.0e9, 1.0e6, 1.0e9]] {
        for text in ["0", "1462", "1", "0.1", "-1.46", "4.7000", "2.000", "99999.99", "0.1000000000000000055"] {
            let double = said::<f64>(span, text);
            refused += usize::from(double.is_some());
            assert_eq!(double, said::<f32>(span, text), "{text}");
        }
    }
    assert!(refused > 20, "{refused}");
    assert_eq!(
        said::<f64>([2.0, 1.0e-3, 1.0e-3], "2000").unwrap(),
        "display text: 2000 given, which is beyond the span, 0 to 1999 milliohm is shown here; look at the span that it was \
         read on, and at the display's unit"
    );
    assert_eq!(
        said::<f64>([2.0e9, 1.0e6, 1.0e9], "1462").unwrap(),
        "display text: 1462 given without its point, 0.000 to 1.999 Gohm is shown here; it could be 1.462 Gohm; write all \
         digits and the point as the display shows them"
    );
}

#[test]
fn numbers_that_are_not_of_one_reading_are_refused() {
    let span = Span::new("2 kohm", 2.0e3, 0.5, 1.0, Marks::OL, clause()).unwrap();
    let numbers = [
        // Counts of half an ohm, a reply without counts, a short shown with a minus, and beyond the span to either side.
        (1462.5, 2925, false, false, true),
        (-3.0, -6, false, true, true),
        (1462.5, 0, false, false, true),
        (0.0, 0, false, false, true),
        (0.0, 0, false, true, true),
        (2000.0, 0, true, false, true),
        (-2000.0, 0, true, true, true),
        // A sign that is not the value's.
        (3.0, 6, false, true, false),
        (-3.0, -6, false, false, false),
        (-2000.0, 0, true, false, false),
        // Other counts than the value's, and counts beyond the span.
        (3.0, 5, false, false, false),
        (3.0, -6, false, false, false),
        (2000.0, 4000, true, false, false),
        // Beyond another span.
        (200.0, 0, true, false, false),
        (0.0, 0, true, false, false),
    ];
    for (ohm, counts, over, negative, is_one) in numbers {
        let reading = span.reading(ohm, counts, over, negative);
        match reading {
            Ok(reading) => {
                let found = (reading.ohm(), reading.counts(), reading.over(), reading.negative());
                assert_eq!((found, is_one), ((ohm, counts, over, negative), true));
            }
            Err(error) => assert_eq!((error.kind(), is_one), (Kind::Contradiction, false), "{ohm} {counts}"),
        }
    }
    assert_eq!(span.reading(2000.0, 4000, false, false).unwrap_err().kind(), Kind::BeyondFullScale);
}
