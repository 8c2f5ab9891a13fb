//! Replies over the wire: what SCPI-1999 and IEEE 488.2 let a meter send, as read in programming guides that cite them.

use proptest::prelude::*;
use reckohm::meter::{Clause, Marks, Meter, MeterError, Span};
use reckohm::number::{Kind, NumberError, parse_number};
use reckohm_tests::random::cases;

fn wide() -> Span {
    let clause = Clause::new(0.0002, 2.0).unwrap();
    Span::new("wide", 1.0e6, 0.01, 1.0, Marks::NONE, clause).unwrap()
}

/// The table of texts and their results, and the captured answers among the examples.
#[test]
fn every_text_of_the_table() {
    let span = wide();
    for (text, ohm) in [
        ("+1.00234567E+03", 1002.34567),
        ("1002", 1002.0),
        ("-0.0123", -0.0123),
        ("5.22430E+0", 5.2243),
        ("0.00000E+0", 0.0),
        ("1.0E3\n", 1000.0),
        ("146", 146.0),
        ("+146", 146.0),
        ("-12345", -12345.0),
        ("12.3", 12.3),
        ("+1.2345", 1.2345),
        ("-0.123", -0.123),
        ("2.73E+2", 273.0),
        ("1.50528E-2", 0.0150528),
        ("-5.76047E-4", -0.000576047),
        (" 1.0E3\r\n", 1000.0),
        ("1.234567890123456789E+5", 123_456.789_012_345_68),
    ] {
        let reading = span.read_reply(text.as_bytes()).unwrap_or_else(|error| panic!("{text}: {error}"));
        assert_eq!(reading.ohm().to_bits(), f64::to_bits(ohm), "{text}");
        assert_eq!((reading.over(), reading.counts(), reading.negative()), (false, 0, text.starts_with('-')), "{text}");
    }
    for (text, negative) in [
        ("9.9E37", false),
        ("+9.90000000E+37", false),
        ("-9.9E+37", true),
        ("9.900000302096328E+37", false),
        ("-9.900000302096328e37", true),
    ] {
        let reading = span.read_reply(text.as_bytes()).unwrap();
        assert!(reading.over(), "{text}");
        assert_eq!((reading.negative(), reading.ohm()), (negative, if negative { -1.0e6 } else { 1.0e6 }), "{text}");
    }
    for text in ["9.91e37", "9.91E37", "+9.91000E+37", "-9.91E37", "9.909999530030929e37"] {
        assert_eq!(span.read_reply(text.as_bytes()), Err(MeterError::NoReading), "{text}");
    }
    for (text, kind) in [
        ("1,002", Kind::UnexpectedByte),
        ("0.1,0.2,9.91e37", Kind::UnexpectedByte),
        ("1.0E", Kind::MissingDigits),
        ("INF", Kind::UnexpectedByte),
        ("NAN", Kind::UnexpectedByte),
        ("NINF", Kind::UnexpectedByte),
        ("1.0 E3", Kind::UnexpectedByte),
        ("#HA2F", Kind::UnexpectedByte),
        ("9.95E37", Kind::UndefinedMark),
        ("9E37", Kind::UndefinedMark),
        ("-1E38", Kind::UndefinedMark),
        ("1.0E300", Kind::UndefinedMark),
        ("1.0E400", Kind::ResultOutOfRange),
        ("", Kind::Empty),
        ("\r\n", Kind::Empty),
        ("1.0E3 OHM", Kind::UnexpectedByte),
        ("1.0E6", Kind::BeyondFullScale),
        ("-1000000", Kind::BeyondFullScale),
        ("8.9E37", Kind::BeyondFullScale),
    ] {
        assert_eq!(span.read_reply(text.as_bytes()).unwrap_err().kind(), kind, "{text}");
    }
}

/// The marks are met within 1e-6 and no further.
#[test]
fn the_marks_have_sharp_edges() {
    let span = wide();
    for (mark, factor, is_mark) in [
        (9.9e37, 1.0 + 0.99e-6, true),
        (9.9e37, 1.0 - 0.99e-6, true),
        (9.9e37, 1.0 + 1.01e-6, false),
        (9.9e37, 1.0 - 1.01e-6, false),
        (9.91e37, 1.0 + 0.99e-6, true),
        (9.91e37, 1.0 - 1.01e-6, false),
    ] {
        let found = span.read_reply(format!("{:e}", mark * factor).as_bytes());
        let known = found.is_ok_and(|reading| reading.over()) || found == Err(MeterError::NoReading);
        assert_eq!(known, is_mark, "{mark:e} {factor}");
    }
}

/// 9.9e37 and 9.91e37 as the nearest doubles.
#[test]
fn the_marks_have_these_bits() {
    assert_eq!(parse_number(b"9.9E37").unwrap().to_bits(), 0x47d2_9ead_3677_af6f);
    assert_eq!(parse_number(b"9.91E37").unwrap().to_bits(), 0x47d2_a37d_ced4_6143);
}

#[test]
fn minus_zero_is_zero_with_its_minus_kept() {
    let reading = wide().read_reply(b"-0.00000E+0").unwrap();
    assert_eq!(reading.ohm().to_bits(), 0.0_f64.to_bits());
    assert!(reading.negative() && !reading.over());
}

#[test]
fn a_long_reply_is_an_error() {
    let text = [b'1'; 129];
    assert_eq!(wide().read_reply(&text), Err(MeterError::Reply(NumberError::TooLong { length: 129 })));
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(cases(20_000)))]
    #[test]
    fn any_bytes_give_a_reading_within_the_span_or_an_error(text in proptest::collection::vec(any::<u8>(), 0..140)) {
        for span in Meter::example_bench().spans() {
            if let Ok(reading) = span.read_reply(&text) {
                prop_assert!(reading.over() || reading.ohm().abs() < span.full_scale_ohm());
            }
        }
    }

    #[test]
    fn likely_replies_are_the_number_itself(text in "[+-]?[0-9]{1,4}(\\.[0-9]{0,9})?([eE][+-]?[0-9]{1,2})?\n?") {
        for span in Meter::example_hand_held().spans() {
            let ohm: f64 = text.trim().parse().unwrap();
            match span.read_reply(text.as_bytes()) {
                Ok(reading) if !reading.over() => {
                    prop_assert_eq!(reading.ohm(), ohm);
                    prop_assert!(ohm.abs() < span.full_scale_ohm());
                }
                Ok(_) => prop_assert!((ohm.abs() / 9.9e37 - 1.0).abs() < 2e-6),
                Err(error) => {
                    prop_assert!(ohm.abs() >= span.full_scale_ohm());
                    prop_assert!(matches!(error.kind(), Kind::BeyondFullScale | Kind::UndefinedMark | Kind::NoReading));
                }
            }
        }
    }
}
