//! Display texts to readings: every count of the demonstration spans there and back, over-range marks, signs, commas,
//! multiplier letters, and all that a span does not show.

use proptest::prelude::*;
use reckohm::meter::{Clause, Marks, Meter, MeterError, MisfitText, Span};
use reckohm::number::{Decimal, Kind};
use reckohm_tests::random::cases;

fn clause() -> Clause {
    Clause::new(0.008, 3.0).unwrap()
}

fn hand_held(index: usize) -> &'static Span {
    Meter::example_hand_held().span(index).unwrap()
}

/// The text of a count, made in another way: whole numbers and string insertion.
fn text_of(counts: i64, digits: i64, decimals: usize, zeros: usize) -> String {
    let whole = (counts.abs() * digits).to_string() + &"0".repeat(zeros);
    let padded = format!("{whole:0>width$}", width = decimals + 1);
    let (front, back) = padded.split_at(padded.len() - decimals);
    format!("{}{front}{}{back}", if counts < 0 { "-" } else { "" }, if decimals > 0 { "." } else { "" })
}

#[test]
fn every_count_of_every_hand_held_span_there_and_back() {
    for (span, (decimals, exponent)) in
        Meter::example_hand_held().spans().iter().zip([(1, -1), (3, 0), (2, 1), (1, 2), (3, 3), (2, 4)])
    {
        for counts in -1999..=1999_i64 {
            let text = text_of(counts, 1, decimals, 0);
            let reading = span.read(text.as_bytes()).unwrap_or_else(|error| panic!("{}: {error}", span.label()));
            let ohm: f64 = format!("{counts}e{exponent}").parse().unwrap();
            assert_eq!(reading.ohm(), ohm, "{text}");
            assert_eq!((reading.counts(), reading.over(), reading.negative()), (counts, false, counts < 0));
            assert_eq!(span.display_text(reading.ohm()).unwrap().as_str(), text);
            // Without the zero in front, with a comma, with a plus, with blanks.
            if let Some(short) = text.strip_prefix("0.") {
                assert_eq!(span.read(format!(".{short}").as_bytes()), Ok(reading));
            }
            assert_eq!(span.read(text.replace('.', ",").as_bytes()), Ok(reading));
            assert_eq!(span.read(format!(" {text}\r\n").as_bytes()), Ok(reading));
            if counts >= 0 {
                assert_eq!(span.read(format!("+{text}").as_bytes()), Ok(reading));
            }
        }
        for counts in [2000, 2001, 19_999] {
            let error = span.read(text_of(counts, 1, decimals, 0).as_bytes()).unwrap_err();
            assert_eq!(error.kind(), Kind::BeyondFullScale);
        }
    }
}

#[test]
fn every_count_of_a_step_of_two_and_of_a_step_coarser_than_the_unit() {
    let two = Span::new("20 kohm", 20.0e3, 2.0, 1.0e3, Marks::OL, clause()).unwrap();
    let coarse = Span::new("20 kohm", 20.0e3, 50.0, 1.0, Marks::OL, clause()).unwrap();
    for counts in -9999..=9999_i64 {
        let text = text_of(counts, 2, 3, 0);
        let reading = two.read(text.as_bytes()).unwrap();
        assert_eq!((reading.counts(), reading.ohm()), (counts, (counts * 2) as f64));
        assert_eq!(two.display_text(reading.ohm()).unwrap().as_str(), text);
        let odd = text_of(2 * counts + 1, 1, 3, 0);
        assert_eq!(two.read(odd.as_bytes()).unwrap_err().misfit(), Some(MisfitText::OffGrid), "{odd}");
    }
    for counts in -399..=399_i64 {
        let text = if counts == 0 { "0".to_owned() } else { text_of(counts, 5, 0, 1) };
        let reading = coarse.read(text.as_bytes()).unwrap();
        assert_eq!((reading.counts(), reading.ohm()), (counts, (counts * 50) as f64));
        assert_eq!(coarse.display_text(reading.ohm()).unwrap().as_str(), text);
        for off in [1, 10, 25, 49] {
            let text = (counts.abs() * 50 + off).to_string();
            assert_eq!(coarse.read(text.as_bytes()).unwrap_err().misfit(), Some(MisfitText::OffGrid), "{text}");
        }
    }
}

#[test]
fn spans_with_other_units_and_many_digits() {
    let long = Span::new("10 Mohm", 1.2e7, 1.0, 1.0e6, Marks::OL, clause()).unwrap();
    assert_eq!(long.read(b"11.999999").unwrap().ohm(), 11_999_999.0);
    assert_eq!(long.display_text(4_700_001.0).unwrap().as_str(), "4.700001");
    let milli = Span::new("20 mohm", 0.02, 1.0e-5, 1.0e-3, Marks::DASHES, clause()).unwrap();
    assert_eq!(milli.read(b"12.34").unwrap().ohm(), 0.01234);
    assert!(milli.read(b"----").unwrap().over());
    let huge = Span::new("2 Gohm", 2.0e9, 1.0e6, 1.0e9, Marks::OL, clause()).unwrap();
    assert_eq!(huge.read(b"1.234").unwrap().ohm(), 1.234e9);
    let nine = Span::new("nine digits", 1.0e3, 1.0e-6, 1.0, Marks::OL, clause()).unwrap();
    assert_eq!(nine.read(b"999.999999").unwrap().ohm(), 999.999_999);
    assert_eq!(nine.read(b"123.456789").unwrap().counts(), 123_456_789);
    assert_eq!(nine.display_text(0.000_001).unwrap().as_str(), "0.000001");
}

#[test]
fn over_range_marks_only_as_the_span_says() {
    let ol = ["OL", "O.L", ".OL", "0L", "0.L", "O L", "ol", "0.l", "oL.", "O,L", "-OL", "+0L", " OL\n", "O. L", "-.OL"];
    let one = ["1", "1.", "1,", " 1 ", "-1", "+1.", "1   "];
    let dashes = ["--", "---", "- - -", "--.--", "-.-", " ---- "];
    let blank = ["", "   ", ".", "\r\n", " . "];
    for bits in 0..16 {
        let marks = Marks::from_bits(bits).unwrap();
        let span = Span::new("2 kohm", 2.0e3, 1.0, 1.0e3, marks, clause()).unwrap();
        for (mark, texts, otherwise) in [
            (Marks::OL, &ol[..], [Kind::MarkNotOfSpan, Kind::MarkNotOfSpan]),
            (Marks::ONE_ALONE, &one[..], [Kind::MissingPoint, Kind::TooFewDecimals]),
            (Marks::DASHES, &dashes[..], [Kind::MarkNotOfSpan, Kind::MarkNotOfSpan]),
            (Marks::BLANK, &blank[..], [Kind::Empty, Kind::MissingDigits]),
        ] {
            for text in texts {
                match span.read(text.as_bytes()) {
                    Ok(reading) => {
                        assert!(marks.contains(mark) && reading.over(), "{text:?} {marks:?}");
                        let minus = text.starts_with('-') && mark != Marks::DASHES;
                        assert_eq!((reading.negative(), reading.counts()), (minus, 0), "{text:?}");
                        assert_eq!(reading.ohm(), if minus { -2.0e3 } else { 2.0e3 });
                    }
                    Err(error) => {
                        assert!(!marks.contains(mark), "{text:?} {error}");
                        assert!(otherwise.contains(&error.kind()), "{text:?} {error}");
                    }
                }
            }
        }
        // Never over-range, whatever the marks: other digits, other letters.
        for text in [
            "11", "1.0", "10", "01", "2", "OLL", "L", "LO", "OL1", "O..L", "1OL", "8L", "-", "..", "1-", "O", "--OL",
            "OVL",
        ] {
            assert!(!span.read(text.as_bytes()).is_ok_and(|reading| reading.over()), "{text:?}");
        }
    }
}

/// A lone "1" on a span that shows whole ohms may be a value: neither answer is given.
#[test]
fn a_lone_one_may_mean_two_things() {
    let whole = Span::new("2000 ohm", 2.0e3, 1.0, 1.0, Marks::ONE_ALONE, clause()).unwrap();
    for text in ["1", "1.", "-1"] {
        assert_eq!(whole.read(text.as_bytes()).unwrap_err().misfit(), Some(MisfitText::AmbiguousOne), "{text}");
    }
    assert_eq!(whole.read(b"01").unwrap().ohm(), 1.0);
    assert_eq!(whole.read(b"0001").unwrap().ohm(), 1.0);
    assert_eq!(whole.read(b"2").unwrap().ohm(), 2.0);
    let without = Span::new("2000 ohm", 2.0e3, 1.0, 1.0, Marks::OL, clause()).unwrap();
    assert_eq!(without.read(b"1").unwrap().ohm(), 1.0);
    let coarse = Span::new("20 kohm", 20.0e3, 10.0, 1.0, Marks::ONE_ALONE, clause()).unwrap();
    assert!(coarse.read(b"1").unwrap().over(), "1 is no multiple of 10, so it cannot be a value");
}

#[test]
fn multiplier_letters_rescale_exactly() {
    let span = hand_held(1); // kilohm, 1.999
    for text in ["1.462k", "1.462K", "1.462 k", "+1,462 K\n", "0.001462M"] {
        assert_eq!(span.read(text.as_bytes()).unwrap().ohm(), 1462.0, "{text}");
    }
    assert_eq!(span.read(b"-0.003k").unwrap().ohm(), -3.0);
    let ohms = Span::new("2000 ohm", 2.0e3, 1.0, 1.0, Marks::OL, clause()).unwrap();
    assert_eq!(ohms.read(b"1.462k").unwrap().ohm(), 1462.0);
    let megohm = hand_held(5); // megohm, 19.99, step 10 kohm
    assert_eq!(megohm.read(b"4.70M").unwrap().ohm(), 4.7e6);
    assert_eq!(megohm.read(b"4700k").unwrap().ohm(), 4.7e6);
    assert_eq!(megohm.read(b"4701k").unwrap_err().misfit(), Some(MisfitText::OffGrid));
    assert_eq!(megohm.read(b"0.00470G").unwrap().ohm(), 4.7e6);
    for (text, misfit) in [
        ("1.46k", MisfitText::TooFewDecimals),
        ("1.4620k", MisfitText::TooManyDecimals),
        ("1.462M", MisfitText::BeyondFullScale),
        ("0.0014M", MisfitText::TooFewDecimals),
        ("1.462000M", MisfitText::BeyondFullScale),
        ("1k", MisfitText::MissingPoint),
        ("4.700k", MisfitText::BeyondFullScale),
    ] {
        assert_eq!(span.read(text.as_bytes()).unwrap_err().misfit(), Some(misfit), "{text}");
    }
    for (text, at) in
        [("1.462m", 5), ("1.462R", 5), ("1k462", 2), ("1.462kk", 6), ("1.462k ohm", 6), ("k", 0), ("1.462 ohm", 6)]
    {
        let error = span.read(text.as_bytes()).unwrap_err();
        assert!(matches!(error, MeterError::TextByte { at: found, .. } if found == at), "{text}: {error}");
    }
}

/// What is wrong, at which byte, and which other reading of the span it would fit.
#[test]
fn a_misfit_names_what_it_could_be() {
    use MisfitText::*;
    for (index, text, wrong, at, could_be_ohm) in [
        (1, "1462", MissingPoint, 4, 1462.0),
        (1, " 1462", MissingPoint, 5, 1462.0),
        (1, "-1462", MissingPoint, 5, 1462.0),
        (1, "1004", MissingPoint, 4, 1004.0),
        (1, "4700", MissingPoint, 4, 0.0),
        (1, "470", MissingPoint, 3, 0.0),
        (2, "470", MissingPoint, 3, 4700.0),
        (2, "4", MissingPoint, 1, 0.0),
        (0, "110", MissingPoint, 3, 11.0),
        (1, "1.46", TooFewDecimals, 4, 1460.0),
        (1, "1.", TooFewDecimals, 2, 1000.0),
        (1, "14.6", TooFewDecimals, 4, 0.0),
        (1, "1.4620", TooManyDecimals, 6, 1462.0),
        (2, "4.700", TooManyDecimals, 5, 4700.0),
        (1, "0001.462", TooManyDigits, 0, 1462.0),
        (1, "+00.462", TooManyDigits, 1, 462.0),
        (2, "004.70", TooManyDigits, 0, 4700.0),
        (1, "2.000", BeyondFullScale, 0, 0.0),
        (1, "-4.700", BeyondFullScale, 1, 0.0),
        (1, "99999.999", BeyondFullScale, 0, 0.0),
    ] {
        let span = hand_held(index);
        let marked = span.marks().contains(Marks::ONE_ALONE) && matches!(text, "1" | "1.");
        let span = if marked { Span::new("2 kohm", 2.0e3, 1.0, 1.0e3, Marks::OL, clause()).unwrap() } else { *span };
        let error = span.read(text.as_bytes()).unwrap_err();
        assert_eq!(error.misfit(), Some(wrong), "{text}: {error}");
        let detail = error.detail();
        assert_eq!((detail.index, detail.lower), (at, could_be_ohm), "{text}: {error}");
        assert_eq!(detail.upper, span.full_scale_ohm() - span.step_ohm());
        let given: f64 = text.trim().trim_start_matches(['-', '+']).parse().unwrap();
        assert_eq!(detail.given, given, "{text}");
    }
}

#[test]
fn odd_texts() {
    let span = hand_held(1);
    for (text, kind, at) in [
        (&b"1.4\xff2"[..], Kind::UnexpectedByte, 3),
        (b"\x001.462", Kind::UnexpectedByte, 0),
        (b"1.462\x00", Kind::UnexpectedByte, 5),
        ("1.462Ω".as_bytes(), Kind::UnexpectedByte, 5),
        ("−1.462".as_bytes(), Kind::UnexpectedByte, 0),
        (b"1.4.62", Kind::UnexpectedByte, 3),
        (b"1,4.62", Kind::UnexpectedByte, 3),
        (b"1 462", Kind::UnexpectedByte, 1),
        (b"1. 462", Kind::UnexpectedByte, 2),
        (b"1.462E3", Kind::UnexpectedByte, 5),
        (b"--1.462", Kind::UnexpectedByte, 1),
        (b"+-1.462", Kind::UnexpectedByte, 1),
        (b"- 1.462", Kind::UnexpectedByte, 1),
        (b"nan", Kind::UnexpectedByte, 0),
        (b"over", Kind::UnexpectedByte, 0),
        (b"1.462\x0c", Kind::UnexpectedByte, 5),
        (b"-", Kind::MissingDigits, 1),
        (b"+.", Kind::MissingDigits, 2),
        (b" -.\n", Kind::MissingDigits, 3),
        (b"", Kind::Empty, 0),
        (b"\t \r\n", Kind::Empty, 0),
        (b"000000000000000000000000000001.462", Kind::TextTooLong, 32),
    ] {
        let error = span.read(text).unwrap_err();
        assert_eq!((error.kind(), error.detail().index), (kind, at), "{:?}: {error}", text.escape_ascii().to_string());
    }
    let many = b"0000000000000000000000000001.462";
    assert_eq!(many.len(), 32);
    assert_eq!(span.read(many).unwrap_err().misfit(), Some(MisfitText::TooManyDigits));
    let nines = [b'9'; 32];
    assert_eq!(span.read(&nines).unwrap_err().misfit(), Some(MisfitText::MissingPoint));
    assert_eq!(span.read(&nines).unwrap_err().detail().given, 9.999_999_999_999_999_9e31);
}

#[test]
fn a_negative_reading_is_kept() {
    let span = hand_held(0);
    let reading = span.read(b"-0.1").unwrap();
    assert_eq!((reading.ohm(), reading.counts(), reading.negative()), (-0.1, -1, true));
    let zero = span.read(b"-0.0").unwrap();
    assert_eq!((zero.ohm().to_bits(), zero.counts(), zero.negative()), (0, 0, true));
}

#[test]
fn what_the_display_shows_beyond_full_scale() {
    for (bits, text, negative) in [
        (1, "1", "-1"),
        (2, "OL", "-OL"),
        (3, "1", "-1"),
        (4, "", ""),
        (8, "----", "----"),
        (12, "", ""),
        (15, "1", "-1"),
    ] {
        let marks = Marks::from_bits(bits).unwrap();
        let span = Span::new("2 kohm", 2.0e3, 1.0, 1.0e3, marks, clause()).unwrap();
        for ohm in [1999.5, 2000.0, 1.0e300] {
            assert_eq!(span.display_text(ohm).unwrap().as_str(), text, "{marks:?}");
            assert_eq!(span.display_text(-ohm).unwrap().as_str(), negative, "{marks:?}");
        }
        assert!(span.read(text.as_bytes()).unwrap().over());
        assert_eq!(span.display_text(1999.4).unwrap().as_str(), "1.999");
    }
    let none = Span::new("2 kohm", 2.0e3, 1.0, 1.0e3, Marks::NONE, clause()).unwrap();
    assert_eq!(none.display_text(2500.0).unwrap_err().kind(), Kind::BeyondFullScale);
    for bad in [f64::NAN, f64::INFINITY, f64::NEG_INFINITY] {
        assert_eq!(none.display_text(bad).unwrap_err().kind(), Kind::NotFinite);
    }
    assert_eq!(none.display_text(-0.4).unwrap().as_str(), "0.000");
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(cases(30_000)))]
    #[test]
    fn any_bytes_give_a_reading_on_the_grid_or_a_documented_error(
        text in prop_oneof![
            proptest::collection::vec(any::<u8>(), 0..40),
            "[-+ ]?[0-9OoLl.,kKM -]{0,8}".prop_map(String::into_bytes),
        ],
        bits in 0_u8..16,
        exponent in -6_i32..9,
        digits in proptest::sample::select(vec![1_i64, 2, 5]),
        counts in 10_i64..200_000,
        unit in proptest::sample::select(vec![1.0e-3, 1.0, 1.0e3, 1.0e6, 1.0e9]),
    ) {
        let step = Decimal::new(digits, exponent);
        let full_scale = Decimal::new(digits * counts, exponent).to_f64();
        let marks = Marks::from_bits(bits).unwrap();
        let Ok(span) = Span::new("any", full_scale, step.to_f64(), unit, marks, clause()) else { return Ok(()) };
        match span.read(&text) {
            Ok(reading) if reading.over() => {
                prop_assert!(bits != 0);
                prop_assert_eq!(reading.counts(), 0);
            }
            Ok(reading) => {
                prop_assert!(reading.counts().abs() < counts);
                let ohm = Decimal::new(reading.counts() * digits, exponent).to_f64();
                prop_assert_eq!(reading.ohm().to_bits(), ohm.to_bits());
                // What the display shows for it is read as the same value.
                let shown = span.display_text(ohm).unwrap();
                match span.read(shown.as_bytes()) {
                    Ok(again) => prop_assert_eq!(again.counts(), reading.counts()),
                    Err(error) => prop_assert_eq!(error.misfit(), Some(MisfitText::AmbiguousOne)),
                }
            }
            Err(error) => {
                prop_assert!(matches!(error.kind(),
                    Kind::Empty | Kind::TextTooLong | Kind::UnexpectedByte | Kind::MissingDigits | Kind::MarkNotOfSpan
                    | Kind::MissingPoint | Kind::TooFewDecimals | Kind::TooManyDecimals | Kind::TooManyDigits
                    | Kind::BeyondFullScale | Kind::OffGrid | Kind::AmbiguousText), "{}", error);
                let detail = error.detail();
                prop_assert!(detail.index <= text.len() as u64);
                prop_assert_eq!(MeterError::from_detail(&detail), Some(error));
                prop_assert!(!error.to_string().is_empty());
            }
        }
    }
}
