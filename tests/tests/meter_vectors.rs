//! The vectors of meters: spans, display texts, replies, clauses, the choice of a span, leads.

use reckohm::meter::{AutoRanger, Clause, Leads, Marks, Meter, MeterError, Outcome, RangerAction, Span, Step};
use reckohm_tests::vectors::{self, Output, Row};

/// How many inputs a span is.
const SPAN: usize = 14;

fn yes(row: &Row, place: usize) -> bool {
    match row.word(place) {
        "true" => true,
        "false" => false,
        other => panic!("line {}: {other:?} is neither true nor false", row.line),
    }
}

fn span(row: &Row) -> Result<Span, MeterError> {
    let mut clause = Clause::new(row.number(5), row.number(7))?.with_fraction_of_span(row.number(6))?;
    if let Some(factor) = row.optional(8) {
        clause = clause.with_coverage_factor(factor)?;
    }
    if !yes(row, 9) {
        clause = clause.with_step_outside_counts();
    }
    clause = clause.with_temperature_band_c(row.number(10), row.number(11))?;
    if let Some(coefficient) = row.optional(12) {
        clause = clause.with_temperature_coefficient_per_kelvin(coefficient)?;
    }
    if yes(row, 13) {
        clause = clause.with_zeroing_required();
    }
    let marks = Marks::from_bits(row.word(4).parse().unwrap())?;
    let label = std::str::from_utf8(row.text(0)).unwrap();
    let span = Span::new(label, row.number(1), row.number(2), row.number(3), marks, clause)?;
    assert_eq!(span.label().as_str(), label);
    Ok(span)
}

fn meter(row: &Row) -> Meter<'static> {
    match row.word(0) {
        "hand_held" => Meter::example_hand_held(),
        "bench" => Meter::example_bench(),
        other => panic!("line {}: no meter {other:?}", row.line),
    }
}

fn index(row: &Row, place: usize) -> usize {
    row.word(place).parse().unwrap()
}

fn call(row: &Row) -> Option<Result<Vec<Output>, MeterError>> {
    Some(match row.function.as_str() {
        "meter.span" => span(row).map(|span| vec![(span.full_scale_counts() as f64).into()]),
        "meter.span.read" => span(row).and_then(|span| span.read(row.text(SPAN))).map(|reading| {
            vec![
                reading.ohm().into(),
                (reading.counts() as f64).into(),
                reading.over().into(),
                reading.negative().into(),
            ]
        }),
        "meter.span.read_reply" => span(row)
            .and_then(|span| span.read_reply(row.text(SPAN)))
            .map(|reading| vec![reading.ohm().into(), reading.over().into(), reading.negative().into()]),
        "meter.span.display_text" => {
            span(row).and_then(|span| span.display_text(row.number(SPAN))).map(|text| vec![text.as_str().into()])
        }
        "meter.span.clause_half_width_ohm" => span(row)
            .and_then(|span| span.clause_half_width_ohm(row.number(SPAN), row.optional(SPAN + 1)))
            .map(|ohm| vec![ohm.into()]),
        "meter.choose" => meter(row)
            .choose_at(row.number(1), row.number(2), row.optional(3))
            .map(|choice| vec![(choice.index() as f64).into()]),
        "meter.choice.assessment" => assessment(row),
        "meter.next_span" => next_span(row),
        "meter.auto_ranger.step" => ranged(row, |ranger, meter, ohm| {
            let span = meter.span(ranger.index())?;
            ranger.step(&span.read(span.display_text(ohm)?.as_bytes())?)
        }),
        "meter.auto_ranger.step_ohm" => ranged(row, |ranger, _, ohm| ranger.step_ohm(ohm)),
        "meter.leads.from_wire" => Leads::from_wire(row.number(0), row.number(1), row.word(2).parse().unwrap())
            .map(|leads| vec![leads.ohm().into(), leads.half_width_ohm().into()]),
        _ => return None,
    })
}

fn assessment(row: &Row) -> Result<Vec<Output>, MeterError> {
    let choice = meter(row).choose_at(row.number(1), row.number(2), row.optional(3))?;
    let found = choice.assessment(index(row, 4))?;
    let (outcome, factor) = match found.outcome {
        Outcome::Chosen => ("chosen", 1.0),
        Outcome::OverRange => ("over-range", 0.0),
        Outcome::Wider { factor } => ("wider", factor),
        other => panic!("{other:?}"),
    };
    Ok(vec![
        found.holds.into(),
        found.expected_display.as_str().into(),
        found.expected_ohm.into(),
        (found.counts_used as f64).into(),
        found.expanded_ohm.into(),
        found.tur.into(),
        found.conformance_probability_at_centre.into(),
        found.accepts_some.into(),
        outcome.into(),
        factor.into(),
    ])
}

fn next_span(row: &Row) -> Result<Vec<Output>, MeterError> {
    let (meter, from) = (meter(row), index(row, 1));
    let reading = meter.span(from)?.read(row.text(2))?;
    let (word, to) = match meter.next_span(from, &reading)? {
        Step::Stay => ("stay", from),
        Step::Up(to) => ("up", to),
        Step::Down(to) => ("down", to),
        Step::BeyondHighest => ("beyond highest", from),
    };
    Ok(vec![word.into(), (to as f64).into()])
}

type Ranging = fn(&mut AutoRanger, &Meter<'static>, f64) -> Result<RangerAction, MeterError>;

fn ranged(row: &Row, step: Ranging) -> Result<Vec<Output>, MeterError> {
    let meter = meter(row);
    let fresh = AutoRanger::new(&meter)?.with_start(index(row, 1))?.with_discard(row.word(2).parse().unwrap());
    let mut ranger = fresh.with_hysteresis(row.number(3), row.number(4))?;
    let mut said = Vec::new();
    for place in 5..row.inputs.len() {
        let action = match step(&mut ranger, &meter, row.number(place))? {
            RangerAction::Again { .. } => "again",
            RangerAction::Switch { .. } => "switch",
            RangerAction::Accept => "accept",
            RangerAction::BeyondHighest => "beyond highest",
            RangerAction::BelowLowest => "below lowest",
        };
        said.extend([Output::from(action), (ranger.index() as f64).into()]);
    }
    Ok(said)
}

#[test]
fn every_row() {
    // Readings and counts are exact; a clause is a few roundings. The half-width of a wire is the small difference of two
    // numbers up to thirty times as large. A conformance probability is one less the tails, so a small one is good to
    // 2e-16 in all, not relative to itself.
    let bound = |row: &Row| match row.function.as_str() {
        "meter.span.clause_half_width_ohm" => 2.0e-15,
        "meter.leads.from_wire" => 3.0e-14,
        "meter.choice.assessment" => match row.outputs.get(6) {
            Some(p) => (2.0e-16 / std::str::from_utf8(p).unwrap().parse::<f64>().unwrap()).max(1.0e-12),
            None => 0.0,
        },
        _ => 0.0,
    };
    let rows = vectors::run("meter.tsv", bound, |row| Some(call(row)?.map_err(|error| error.kind())));
    assert!(rows > 1800, "{rows} rows");
}
