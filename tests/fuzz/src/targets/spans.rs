//! Labels, marks, clauses and spans from hostile numbers: whatever is accepted is a legal span in every respect.

use reckohm::meter::{Clause, Label, Leads, Marks, Meter, MeterError, Span, Step};

use crate::accepted;
use crate::input::Input;

/// A clause, each part set or not.
fn clause(input: &mut Input<'_>) -> Option<Clause> {
    let part = |input: &mut Input<'_>| if input.flag() { input.number() } else { input.decimal(-9..1) };
    let mut clause = accepted!(MeterError, Clause::new(part(input), part(input)))?;
    let set = input.byte();
    if set & 1 != 0 {
        clause = accepted!(MeterError, clause.with_fraction_of_span(part(input)))?;
    }
    if set & 2 != 0 {
        clause = accepted!(MeterError, clause.with_coverage_factor(part(input)))?;
    }
    if set & 4 != 0 {
        clause = clause.with_step_outside_counts();
    }
    if set & 8 != 0 {
        let (lower, upper) = (input.number(), input.number());
        clause = accepted!(MeterError, clause.with_temperature_band_c(lower, upper))?;
        assert!(lower <= upper && lower >= -60.0 && upper <= 120.0);
    }
    if set & 16 != 0 {
        clause = accepted!(MeterError, clause.with_temperature_coefficient_per_kelvin(part(input)))?;
    }
    if set & 32 != 0 {
        clause = clause.with_zeroing_required();
    }
    Some(clause)
}

fn label(input: &mut Input<'_>) -> Label {
    let count = input.below(20);
    let text = String::from_utf8_lossy(input.take(count)).into_owned();
    let legal = (1..=15).contains(&text.len()) && !text.bytes().any(|byte| byte < 0x20 || byte == 0x7f);
    match accepted!(MeterError, Label::new(&text)) {
        Some(label) => {
            assert!(legal);
            assert_eq!((label.as_str(), label.as_bytes()), (text.as_str(), text.as_bytes()));
            label
        }
        None => {
            assert!(!legal, "{text:?}");
            Label::new("span").expect("legal")
        }
    }
}

/// A label, a clause, the numbers of a span, then what it is asked.
pub fn target(data: &[u8]) {
    let mut input = Input::new(data);
    let bits = input.byte();
    let marks = accepted!(MeterError, Marks::from_bits(bits));
    assert_eq!(marks.is_some(), bits < 16);
    let label = label(&mut input);
    let Some(clause) = clause(&mut input) else { return };
    let ohm = |input: &mut Input<'_>| if input.below(8) == 0 { input.number() } else { input.decimal(-6..13) };
    let resolution = match input.below(8) {
        0 => input.number(),
        1 => input.decimal(-9..12),
        _ => input.one_of(&[0.001, 0.01, 0.1, 1.0, 10.0, 100.0, 0.002, 0.05]),
    };
    let full_scale = ohm(&mut input);
    let unit = if input.below(8) == 0 { input.number() } else { input.one_of(&[0.001, 1.0, 1e3, 1e6, 1e9]) };
    let made = Span::new(label.as_str(), full_scale, resolution, unit, marks.unwrap_or_default(), clause);
    let Some(span) = accepted!(MeterError, made) else { return };

    assert_eq!((span.full_scale_ohm(), span.step_ohm(), span.display_unit_ohm()), (full_scale, resolution, unit));
    let counts = span.full_scale_counts();
    assert!((10..=1_000_000_000).contains(&counts));
    assert!((counts as f64 * resolution / full_scale - 1.0).abs() < 1e-14, "{counts} steps of {resolution}");
    ask(&span, &mut input);
}

fn ask(span: &Span, input: &mut Input<'_>) {
    let temperature = if input.flag() { Some(input.number()) } else { None };
    let reading = input.number();
    let widening = accepted!(MeterError, span.clause().widening(temperature));
    assert!(widening.is_none_or(|factor| factor.is_finite() && factor >= 1.0));
    if let Some(half_width) = accepted!(MeterError, span.clause_half_width_ohm(reading, temperature)) {
        assert!(half_width >= 0.0 && half_width.is_finite() || reading.abs() > 1e300, "{half_width}");
        let less = span.clause_half_width_ohm(0.5 * reading, temperature).expect("the same temperature");
        assert!(less <= half_width);
    }

    // The plain numbers of a failure hold counts up to 2^53 exactly.
    let (ohm, counts, over, negative) = (input.number(), input.i64() >> 11, input.flag(), input.flag());
    let spans = [*span];
    let meter = Meter::new(&spans).expect("one span is a meter");
    if let Some(reading) = accepted!(MeterError, span.reading(ohm, counts, over, negative)) {
        assert!(reading.ohm().abs() <= span.full_scale_ohm());
        assert_eq!(over, reading.ohm().abs() == span.full_scale_ohm());
        let step = accepted!(MeterError, meter.next_span(0, &reading));
        assert!(step.is_none_or(|step| step == if over { Step::BeyondHighest } else { Step::Stay }));
        let leads = accepted!(MeterError, Leads::from_reading(&reading, span));
        assert_eq!(leads.is_none(), over);
    }
    accepted!(MeterError, meter.span(usize::from(input.byte())));
    if let Some(choice) = accepted!(MeterError, meter.choose_at(input.number(), input.number(), temperature)) {
        let chosen = choice.chosen().expect("assessed before");
        assert!(chosen.holds && chosen.expanded_ohm.is_finite() && !chosen.tur.is_nan());
        assert!((0.0..=1.0).contains(&chosen.conformance_probability_at_centre));
    }
    let wire = (input.number(), input.one_of(&[0.5, 0.75, 1.5, 2.5, 240.0, 630.0, 0.6, f64::NAN]), input.byte());
    if let Some(leads) = accepted!(MeterError, Leads::from_wire(wire.0, wire.1, wire.2)) {
        assert!(leads.ohm() >= 0.0 && leads.half_width_ohm() >= 0.0 && leads.ohm().is_finite());
    }
}
