//! Every message of a meter in full, and the way through plain numbers and back.

use reckohm::meter::{AutoRanger, Clause, Label, Leads, Marks, Meter, MeterError, RangerState, Span};
use reckohm::number::{Detail, Kind};
use reckohm::uncertainty::EstimateError;

fn hand_held(index: usize) -> Span {
    *Meter::example_hand_held().span(index).unwrap()
}

fn ranger() -> AutoRanger {
    AutoRanger::new(&Meter::example_hand_held()).unwrap()
}

fn clause() -> Clause {
    Clause::new(0.008, 3.0).unwrap()
}

fn span(resolution_ohm: f64, display_unit_ohm: f64, marks: Marks) -> Span {
    Span::new("2 kohm", 2.0e3, resolution_ohm, display_unit_ohm, marks, clause()).unwrap()
}

fn made(full_scale_ohm: f64, resolution_ohm: f64, display_unit_ohm: f64) -> MeterError {
    Span::new("span", full_scale_ohm, resolution_ohm, display_unit_ohm, Marks::OL, clause()).unwrap_err()
}

fn without_parts() -> MeterError {
    let nothing = Clause::new(0.0, 0.0).unwrap();
    assert!(Span::new("span", 2.0e3, 1.0, 1.0, Marks::OL, nothing.with_step_outside_counts()).is_ok());
    Span::new("span", 2.0e3, 1.0, 1.0, Marks::OL, nothing).unwrap_err()
}

/// Each failure, its kind and its text.
fn messages() -> Vec<(MeterError, Kind, &'static str)> {
    vec![
        (
            hand_held(1).reading(-3.0, 3, false, true).unwrap_err(),
            Kind::Contradiction,
            "reading from its numbers: -3 ohm with 3 counts given, counts times the step of 1 ohm (or none, for a reply), a sign that is marked, and the full scale where it is over-range allowed; give them as they were read",
        ),
        (
            hand_held(1).read(b"1462").unwrap_err(),
            Kind::MissingPoint,
            "display text: 1462 given without its point, 0.000 to 1.999 kohm is shown here; it could be 1.462 kohm; write all digits and the point as the display shows them",
        ),
        (
            hand_held(0).read(b"110").unwrap_err(),
            Kind::MissingPoint,
            "display text: 110 given without its point, 0.0 to 199.9 ohm is shown here; it could be 11.0 or 110.0 ohm; write all digits and the point as the display shows them",
        ),
        (
            hand_held(2).read(b"4").unwrap_err(),
            Kind::MissingPoint,
            "display text: 4 given without its point, 0.00 to 19.99 kohm is shown here; it could be 4.00 kohm; write all digits and the point as the display shows them",
        ),
        (
            hand_held(1).read(b"4700").unwrap_err(),
            Kind::MissingPoint,
            "display text: 4700 given without its point, 0.000 to 1.999 kohm is shown here; it fits no reading here; write all digits and the point as the display shows them",
        ),
        (
            hand_held(2).read(b"470").unwrap_err(),
            Kind::MissingPoint,
            "display text: 470 given without its point, 0.00 to 19.99 kohm is shown here; it could be 4.70 kohm; write all digits and the point as the display shows them",
        ),
        (
            hand_held(1).read(b"1.46").unwrap_err(),
            Kind::TooFewDecimals,
            "display text: 1.46 given with 2 digits behind the point, 0.000 to 1.999 kohm is shown here; it could be 1.460 kohm with its last digits left out, or the reading of a higher span; write all digits as the display shows them",
        ),
        (
            hand_held(1).read(b"14.6").unwrap_err(),
            Kind::TooFewDecimals,
            "display text: 14.6 given with 1 digit behind the point, 0.000 to 1.999 kohm is shown here; it could be the reading of a higher span; look at the span that it was read on",
        ),
        (
            hand_held(1).read(b"1.4620").unwrap_err(),
            Kind::TooManyDecimals,
            "display text: 1.4620 given with 4 digits behind the point, 0.000 to 1.999 kohm is shown here; it could be the reading of a lower span; look at the span that it was read on",
        ),
        (
            hand_held(2).read(b"14.7123").unwrap_err(),
            Kind::TooManyDecimals,
            "display text: 14.7123 given with 4 digits behind the point, 0.00 to 19.99 kohm is shown here; it could be the reading of a lower span; look at the span that it was read on",
        ),
        (
            hand_held(1).read(b"0001.462").unwrap_err(),
            Kind::TooManyDigits,
            "display text: 1.462 given with too many digits in front of the point, 0.000 to 1.999 kohm is shown here; it could be 1.462 kohm; leave the first zeros away",
        ),
        (
            hand_held(1).read(b"4.700").unwrap_err(),
            Kind::BeyondFullScale,
            "display text: 4.700 given, which is beyond the span, 0.000 to 1.999 kohm is shown here; look at the span that it was read on, and at the display's unit",
        ),
        (
            hand_held(1).read(b"4.700M").unwrap_err(),
            Kind::BeyondFullScale,
            "display text: 4.700 given, which is beyond the span, 0.000000 to 0.001999 Mohm is shown here; look at the span that it was read on, and at the display's unit",
        ),
        (
            hand_held(1).read(b"1.462m").unwrap_err(),
            Kind::UnexpectedByte,
            "display text: \"m\" (byte 0x6d) given at offset 5, digits with one point or comma, a minus in front and k, M or G behind allowed, or an over-range mark of this span; write it as the display shows it, without a unit",
        ),
        (
            hand_held(1).read(b"-").unwrap_err(),
            Kind::MissingDigits,
            "display text: no digit given up to offset 1, at least one needed; write it as the display shows it",
        ),
        (
            hand_held(1).read(b"").unwrap_err(),
            Kind::Empty,
            "display text: nothing but blanks given, what the span's display shows allowed; blank digits are no over-range mark of this span",
        ),
        (
            hand_held(1).read(b"---").unwrap_err(),
            Kind::MarkNotOfSpan,
            "display text: dashes given at offset 0, which is no over-range mark of this span; look at the span the text was read on, or add the mark to the span",
        ),
        (
            hand_held(1).read(&[b'1'; 40]).unwrap_err(),
            Kind::TextTooLong,
            "display text: 40 bytes given, at most 32 allowed; give one reading at a time, without a note",
        ),
        (
            hand_held(1).read(b"1\xff").unwrap_err(),
            Kind::UnexpectedByte,
            "display text: byte 0xff given at offset 1, digits with one point or comma, a minus in front and k, M or G behind allowed, or an over-range mark of this span; write it as the display shows it, without a unit",
        ),
        (
            hand_held(1).read(b"1 2").unwrap_err(),
            Kind::UnexpectedByte,
            "display text: a blank (byte 0x20) given at offset 1, digits with one point or comma, a minus in front and k, M or G behind allowed, or an over-range mark of this span; write it as the display shows it, without a unit",
        ),
        (
            span(1.0, 1.0e3, Marks::OL).read(b"1").unwrap_err(),
            Kind::MissingPoint,
            "display text: 1 given without its point, 0.000 to 1.999 kohm is shown here; it could be 1.000 kohm, or over-range if this meter marks it by a lone 1; write all digits and the point as the display shows them",
        ),
        (
            span(1.0, 1.0, Marks::ONE_ALONE).read(b"1").unwrap_err(),
            Kind::AmbiguousText,
            "display text: a lone 1 given, which may be over-range or a value of 1 ohm on this span, 0 to 1999 ohm is shown here; write the value with a zero in front (01), and over-range by another mark of the span",
        ),
        (
            span(2.0, 1.0e3, Marks::NONE).read(b"1.461").unwrap_err(),
            Kind::OffGrid,
            "display text: 1.461 given, which is no multiple of the step of 2 ohm, 0.000 to 1.998 kohm is shown here; look at the last digit",
        ),
        (
            span(2.0, 1.0e3, Marks::NONE).read(b"OL").unwrap_err(),
            Kind::MarkNotOfSpan,
            "display text: \"OL\" given at offset 0, which is no over-range mark of this span; look at the span the text was read on, or add the mark to the span",
        ),
        (
            span(2.0, 1.0e3, Marks::NONE).display_text(2.5e3).unwrap_err(),
            Kind::BeyondFullScale,
            "reading on a span: 2500 ohm given, less than 2000 ohm allowed (its full scale); look at whether the meter was on another span",
        ),
        (
            hand_held(1).read_reply(b"2500").unwrap_err(),
            Kind::BeyondFullScale,
            "reading on a span: 2500 ohm given, less than 2000 ohm allowed (its full scale); look at whether the meter was on another span",
        ),
        (
            hand_held(1).read_reply(b"9.91E37").unwrap_err(),
            Kind::NoReading,
            "meter's reply: 9.91E37 given, which stands for no reading (SCPI-1999), a number below the span's full scale allowed; look at whether the meter had finished, and at its function",
        ),
        (
            hand_held(1).read_reply(b"9.95E37").unwrap_err(),
            Kind::UndefinedMark,
            "meter's reply: 9.95e37 given, which is neither a reading nor a mark of SCPI-1999 (9.9E37 over-range, 9.91E37 no reading), a number below the span's full scale allowed; look into the meter's manual for what it stands for",
        ),
        (
            hand_held(1).read_reply(b"1,002").unwrap_err(),
            Kind::UnexpectedByte,
            "meter's reply: number from text: \",\" (byte 0x2c) given at offset 1, only a number such as 1002.34 or 1.00234E+03 allowed; no comma, no blank inside, no unit, no name",
        ),
        (
            hand_held(1).read_reply(b"1.0E400").unwrap_err(),
            Kind::ResultOutOfRange,
            "meter's reply: number from text: a number beyond the type's largest given, -1.7976931348623157e308 to 1.7976931348623157e308 allowed; look at the exponent",
        ),
        (
            Label::new("").unwrap_err(),
            Kind::Empty,
            "label of a span: an empty text given, 1 to 15 bytes allowed; write what stands beside the meter's knob",
        ),
        (
            Label::new("0123456789abcdef").unwrap_err(),
            Kind::TextTooLong,
            "label of a span: 16 bytes given, 1 to 15 allowed; a letter outside ASCII has two bytes or more",
        ),
        (
            Label::new("a\tb").unwrap_err(),
            Kind::UnexpectedByte,
            "label of a span: byte 0x09 given at offset 1, only characters that can be seen allowed; look for a tab or a line end",
        ),
        (
            made(0.0, 1.0, 1.0),
            Kind::OutOfRange,
            "full scale of a span: 0 ohm given, more than 0 ohm to 1000000000000000 ohm allowed (our rule: beyond it is insulation, not a resistance); give the first value in ohm that the display no longer shows",
        ),
        (
            made(2.0e3, 0.0, 1.0),
            Kind::OutOfRange,
            "resolution of a span: 0 ohm given, 0.000000001 ohm to 1000000000000 ohm allowed (our rule); give the step of the last digit in ohm",
        ),
        (
            made(2.0e3, 1.0e3, 1.0),
            Kind::OutOfRange,
            "full scale of a span over its resolution: 2 given, 10 to 1000000000 allowed (our rule: two digits to nine); give both in ohm: a display of 2000 counts has 2000",
        ),
        (
            made(2.0e3, 3.0, 1.0),
            Kind::UnknownResolution,
            "resolution of a span: 3 ohm given, 1, 2 or 5 times a power of ten allowed; give the step of the last digit in ohm",
        ),
        (
            made(2.0e3, 1.0, 10.0),
            Kind::UnknownDisplayUnit,
            "display unit of a span: 10 ohm given, 0.001, 1, 1000, 1000000 or 1000000000 ohm allowed; a display in kilohm has 1000",
        ),
        (
            made(2000.5, 1.0, 1.0),
            Kind::Contradiction,
            "full scale of a span: 2000.5 ohm given with a step of 1 ohm, a whole number of steps allowed; it is the first value that the display no longer shows: 2000 for a display of 2000 counts",
        ),
        (
            made(2.0e3, 0.01, 1.0e9),
            Kind::Contradiction,
            "display unit of a span: 1000000000 ohm given with a step of 0.01 ohm, at most 9 digits behind the point allowed; look at the unit that the display shows",
        ),
        (
            Marks::from_bits(17).unwrap_err(),
            Kind::UnknownMarks,
            "over-range marks of a span: the bits 17 given, 0 to 15 allowed: 1 a lone \"1\", 2 \"OL\", 4 blank digits, 8 dashes; add those that the meter uses",
        ),
        (
            Clause::new(1.6, 3.0).unwrap_err(),
            Kind::OutOfRange,
            "fraction in an accuracy clause: 1.6 given, 0 to less than 1 allowed (our rule); give a fraction, not percent: 0.8 % is 0.008",
        ),
        (
            Clause::new(0.008, -3.0).unwrap_err(),
            Kind::OutOfRange,
            "counts in an accuracy clause: -3 given, 0 to 1000000 allowed (our rule); give how many steps of the last digit: 3 for +3 counts",
        ),
        (
            clause().with_fraction_of_span(-0.1).unwrap_err(),
            Kind::OutOfRange,
            "fraction in an accuracy clause: -0.1 given, 0 to less than 1 allowed (our rule); give a fraction, not percent: 0.8 % is 0.008",
        ),
        (
            clause().with_coverage_factor(0.0).unwrap_err(),
            Kind::OutOfRange,
            "coverage factor: 0 given, more than 0 to 10 allowed (JCGM 100 6.3); 2 is common for 95 %; leave it out if the clause is a limit",
        ),
        (
            clause().with_temperature_band_c(28.0, 18.0).unwrap_err(),
            Kind::Contradiction,
            "temperature band of an accuracy clause: 28 to 18 degree Celsius given, the lower end at or below the upper one allowed; exchange them",
        ),
        (
            clause().with_temperature_band_c(28.0, 180.0).unwrap_err(),
            Kind::OutOfRange,
            "temperature of the meter: 180 degree Celsius given, -60 degree Celsius to 120 degree Celsius allowed (our rule); give degrees Celsius of the meter's surroundings, not of the part",
        ),
        (
            clause().with_temperature_coefficient_per_kelvin(10.0).unwrap_err(),
            Kind::OutOfRange,
            "temperature coefficient of an accuracy clause: 10 per kelvin given, 0 per kelvin to 1 per kelvin allowed (our rule); give a part of the clause for each kelvin: a tenth is 0.1",
        ),
        (
            clause().widening(Some(35.0)).unwrap_err(),
            Kind::MissingArgument,
            "accuracy at the meter's temperature: 35 degree Celsius given, 18 to 28 allowed without temperature_coefficient_per_kelvin; take it from the meter's specification, a tenth of the clause a kelvin (0.1) is common, or measure within the band",
        ),
        // With every zero written out this was a sentence of 1078 bytes, more than the C door's RKO_TEXT_CAPACITY.
        (
            clause().with_temperature_band_c(-2.5e-310, -1e-320).unwrap().widening(Some(9.6e-309)).unwrap_err(),
            Kind::MissingArgument,
            "accuracy at the meter's temperature: 9.6e-309 degree Celsius given, -2.5e-310 to -1e-320 allowed without temperature_coefficient_per_kelvin; take it from the meter's specification, a tenth of the clause a kelvin (0.1) is common, or measure within the band",
        ),
        (
            without_parts(),
            Kind::MissingArgument,
            "accuracy clause of a span: no fraction and no counts given, at least one part above 0 needed, or the display's step outside the counts; no meter is without error",
        ),
        (
            hand_held(1).estimate(&hand_held(1).read(b"1").unwrap(), None).unwrap_err(),
            Kind::OverRangeReading,
            "estimate of a reading: it is beyond its span and has no value, a reading with a value needed; measure on a higher span",
        ),
        (
            Meter::<f64>::new(&[]).unwrap_err(),
            Kind::Empty,
            "meter: no span given, at least one needed; give the spans from the lowest to the highest",
        ),
        (
            Meter::new(&[hand_held(1), hand_held(0)]).unwrap_err(),
            Kind::Contradiction,
            "meter: span 1 has a full scale of 200 ohm, more than the 2000 ohm of the span before it allowed; give the spans from the lowest to the highest, counted from 0",
        ),
        (
            Meter::example_hand_held().span(6).unwrap_err(),
            Kind::NoSuchSpan,
            "meter: span 6 asked for, 0 to 5 allowed; spans are counted from 0",
        ),
        (
            ranger().step(&hand_held(1).read(b"1").unwrap()).unwrap_err(),
            Kind::Contradiction,
            "auto-ranger: a reading beyond 2000 ohm given, one on the span with a full scale of 20000000 ohm allowed; put the meter on the span that was asked for, then measure",
        ),
        (
            ranger().with_hysteresis(0.0, 0.5).unwrap_err(),
            Kind::OutOfRange,
            "hysteresis of an auto-ranger: 0 given, 0.001 to 0.9 allowed (our rule); give a fraction of the lower span's full scale: 5 % is 0.05",
        ),
        (
            ranger().with_hysteresis(0.2, 0.1).unwrap_err(),
            Kind::Contradiction,
            "hysteresis of an auto-ranger: 0.2 given, and 0.1 for the widest that it becomes, the first or more allowed there; exchange them",
        ),
        (
            ranger().with_state(RangerState { left: 3, ..ranger().state() }).unwrap_err(),
            Kind::Contradiction,
            "auto-ranger: a state of 3 readings to discard and a hysteresis of 0.05 given, at most 0 readings and a hysteresis between the first and the widest allowed; give it with the arguments it was stored under",
        ),
        (
            MeterError::TooManySpans { count: 17, most: 16 },
            Kind::WrongCount,
            "auto-ranger: 17 spans given, at most 16 allowed; leave out those that are not stepped through",
        ),
        (
            Meter::example_hand_held().choose(2.0e7, 0.05).unwrap_err(),
            Kind::NoSpanHolds,
            "choosing a span: the part may have up to 21000000 ohm, less than 20000000 ohm allowed (the full scale of the highest span); use another meter, or a known part in parallel",
        ),
        (
            Meter::example_hand_held().choose(2.0e7, 5.0).unwrap_err(),
            Kind::OutOfRange,
            "tolerance: 5 given, more than 0 to less than 1 allowed (IEC 60062); give a fraction, not percent: 5 % is 0.05",
        ),
        (
            hand_held(1).clause_half_width_ohm(f64::INFINITY, None).unwrap_err(),
            Kind::NotFinite,
            "number: inf given, -1.7976931348623157e308 to 1.7976931348623157e308 allowed (our rule: no infinity and no NaN enters); look for an empty field or a division by zero before this call",
        ),
        (
            Leads::from_reading(&hand_held(0).read(b"1").unwrap(), &hand_held(0)).unwrap_err(),
            Kind::OverRangeReading,
            "leads from a reading: the reading is beyond its span and has no value, a reading with the tips touching one another needed; look for a broken lead",
        ),
        (
            Leads::from_wire(1.0, 0.6, 5).unwrap_err(),
            Kind::WireNotInTable,
            "leads from a wire: 0.6 mm2 of class 5 given, which is not in the table: IEC 60228 has 0.5 to 400 mm2 in class 1, to 630 mm2 in classes 2 and 5; read the leads with their tips touching instead",
        ),
        (
            Leads::from_wire(0.0, 0.6, 5).unwrap_err(),
            Kind::OutOfRange,
            "length of one lead: 0 m given, more than 0 m to 100000 m allowed (our rule); give metres of one of the two leads; both are reckoned",
        ),
        (
            MeterError::Uncertainty(EstimateError::TooLarge { largest: f64::MAX }),
            Kind::ResultOutOfRange,
            "uncertainty of an estimate: the result, or the square of a part, is too large for the number type; at most 1.8e308 allowed; give the parts in a larger unit",
        ),
    ]
}

#[test]
fn every_message_in_full() {
    for (error, kind, text) in messages() {
        assert_eq!(error.to_string(), text);
        assert_eq!(error.kind(), kind, "{text}");
    }
}

#[test]
fn plain_numbers_and_back() {
    for (error, kind, text) in messages() {
        let detail = error.detail();
        assert_eq!(detail.kind, kind);
        let again = MeterError::from_detail(&detail).unwrap_or_else(|| panic!("{text}"));
        assert_eq!(again, error);
        assert_eq!(again.to_string(), text);
    }
    // What other areas have is not taken for a meter's.
    for kind in [Kind::Contradiction, Kind::MissingArgument, Kind::Empty, Kind::WrongCount, Kind::OverRangeReading] {
        assert_eq!(MeterError::from_detail(&Detail { argument: 299, ..Detail::new(kind) }), None);
    }
}

/// Every kind of this area's block is raised by one of the messages.
#[test]
fn every_kind_of_the_block_has_a_message() {
    for kind in Kind::ALL.iter().filter(|kind| (200..300).contains(&kind.number())) {
        assert!(messages().iter().any(|(_, found, _)| found == kind), "{}", kind.name());
    }
}

/// A fuzzer found that the digits behind the point of a very small span ran into those given.
#[test]
fn a_span_of_many_decimals_keeps_its_message() {
    let clause = Clause::new(0.01, 2.0).unwrap();
    for (full_scale, step) in [(2e-3, 1e-6), (2e-4, 1e-7), (2e-6, 1e-9)] {
        let span = Span::new("small", full_scale, step, 1e-3, Marks::OL, clause).unwrap();
        let error = span.read(b"1G").unwrap_err();
        let again = MeterError::from_detail(&error.detail()).unwrap();
        assert_eq!(again, error);
        assert_eq!(again.to_string(), error.to_string());
        assert!(error.to_string().len() < 1024);
    }
}
