//! The vectors of meters in single precision, run through the Rust door.

use reckohm::meter::{AutoRanger, Clause, Marks, Meter, MeterError, RangerAction, Span, Step};
use reckohm_tests::vectors::{self, Output, Row};

/// How many inputs a span is.
const SPAN: usize = 14;

fn float(row: &Row, place: usize) -> f32 {
    row.number(place) as f32
}

fn optional(row: &Row, place: usize) -> Option<f32> {
    row.optional(place).map(|x| x as f32)
}

fn number(x: f32) -> Output {
    Output::Number(f64::from(x))
}

fn span(row: &Row) -> Result<Span<f32>, MeterError> {
    let mut clause = Clause::new(float(row, 5), float(row, 7))?.with_fraction_of_span(float(row, 6))?;
    if let Some(factor) = optional(row, 8) {
        clause = clause.with_coverage_factor(factor)?;
    }
    if row.word(9) == "false" {
        clause = clause.with_step_outside_counts();
    }
    clause = clause.with_temperature_band_c(float(row, 10), float(row, 11))?;
    if let Some(coefficient) = optional(row, 12) {
        clause = clause.with_temperature_coefficient_per_kelvin(coefficient)?;
    }
    if row.word(13) == "true" {
        clause = clause.with_zeroing_required();
    }
    let marks = Marks::from_bits(row.word(4).parse().unwrap())?;
    Span::new(row.word(0), float(row, 1), float(row, 2), float(row, 3), marks, clause)
}

/// A demonstration meter with its numbers rounded to single precision.
fn spans(row: &Row) -> Vec<Span<f32>> {
    let meter = match row.word(0) {
        "hand_held" => Meter::example_hand_held(),
        "bench" => Meter::example_bench(),
        other => panic!("line {}: no meter {other:?}", row.line),
    };
    let of = |span: &Span| {
        let clause = span.clause();
        let made = Clause::new(clause.fraction_of_reading() as f32, clause.counts() as f32)?
            .with_fraction_of_span(clause.fraction_of_span() as f32)?;
        let (top, step, unit) = (span.full_scale_ohm(), span.step_ohm(), span.display_unit_ohm());
        Span::new(span.label().as_str(), top as f32, step as f32, unit as f32, span.marks(), made)
    };
    meter.spans().iter().map(of).collect::<Result<_, _>>().unwrap()
}

fn index(row: &Row, place: usize) -> usize {
    row.word(place).parse().unwrap()
}

fn next_span(row: &Row) -> Result<Vec<Output>, MeterError> {
    let (spans, from) = (spans(row), index(row, 1));
    let meter = Meter::new(&spans)?;
    let (word, to) = match meter.next_span(from, &meter.span(from)?.read(row.text(2))?)? {
        Step::Stay => ("stay", from),
        Step::Up(to) => ("up", to),
        Step::Down(to) => ("down", to),
        Step::BeyondHighest => ("beyond highest", from),
    };
    Ok(vec![word.into(), (to as f64).into()])
}

fn ranged(row: &Row, as_shown: bool) -> Result<Vec<Output>, MeterError> {
    let spans = spans(row);
    let meter = Meter::new(&spans)?;
    let fresh = AutoRanger::new(&meter)?.with_start(index(row, 1))?.with_discard(row.word(2).parse().unwrap());
    let mut ranger = fresh.with_hysteresis(float(row, 3), float(row, 4))?;
    let mut said = Vec::new();
    for place in 5..row.inputs.len() {
        let (span, ohm) = (meter.span(ranger.index())?, float(row, place));
        let action = if as_shown {
            ranger.step(&span.read(span.display_text(ohm)?.as_bytes())?)?
        } else {
            ranger.step_ohm(ohm)?
        };
        let word = match action {
            RangerAction::Again { .. } => "again",
            RangerAction::Switch { .. } => "switch",
            RangerAction::Accept => "accept",
            RangerAction::BeyondHighest => "beyond highest",
            RangerAction::BelowLowest => "below lowest",
        };
        said.extend([Output::from(word), (ranger.index() as f64).into()]);
    }
    Ok(said)
}

fn call(row: &Row) -> Option<Result<Vec<Output>, MeterError>> {
    Some(match row.function.strip_suffix("_f32")? {
        "meter.span" => span(row).map(|span| vec![(span.full_scale_counts() as f64).into()]),
        "meter.span.read" => span(row).and_then(|span| span.read(row.text(SPAN))).map(|reading| {
            let counts = Output::from(reading.counts() as f64);
            vec![number(reading.ohm()), counts, reading.over().into(), reading.negative().into()]
        }),
        "meter.span.read_reply" => span(row)
            .and_then(|span| span.read_reply(row.text(SPAN)))
            .map(|reading| vec![number(reading.ohm()), reading.over().into(), reading.negative().into()]),
        "meter.span.display_text" => {
            span(row).and_then(|span| span.display_text(float(row, SPAN))).map(|text| vec![text.as_str().into()])
        }
        "meter.span.clause_half_width_ohm" => span(row)
            .and_then(|span| span.clause_half_width_ohm(float(row, SPAN), optional(row, SPAN + 1)))
            .map(|ohm| vec![number(ohm)]),
        "meter.span.estimate" => span(row).and_then(|span| {
            let estimate = span.estimate(&span.read(row.text(SPAN))?, optional(row, SPAN + 1))?;
            let [a, b] = estimate.rectangular();
            Ok([estimate.value(), a, b, estimate.normal_u()].map(number).to_vec())
        }),
        "meter.next_span" => next_span(row),
        "meter.auto_ranger.step" => ranged(row, true),
        "meter.auto_ranger.step_ohm" => ranged(row, false),
        _ => return None,
    })
}

#[test]
fn every_row() {
    // Readings and counts are exact; a clause is a few roundings of numbers that were rounded themselves.
    let bound = |row: &Row| match row.function.as_str() {
        "meter.span.clause_half_width_ohm_f32" | "meter.span.estimate_f32" => 4.0e-7,
        _ => 0.0,
    };
    let rows = vectors::run("meter_single.tsv", bound, |row| Some(call(row)?.map_err(|error| error.kind())));
    assert!(rows > 900, "{rows} rows");
}
