//! Texts that are not numbers: which error, at which byte, and its full text; and the way through plain numbers and back.

use proptest::prelude::*;
use reckohm::number::{Detail, Kind, NumberError, parse_number, parse_number_f32};
use reckohm_tests::random::cases;

#[test]
fn every_message_in_full() {
    for (text, error, message) in [
        (
            "",
            NumberError::Empty,
            "number from text: nothing but blanks given, a number such as 1002.34 or 1.00234E+03 allowed; look for an answer that did not arrive",
        ),
        (
            "1,002",
            NumberError::UnexpectedByte { at: 1, byte: b',' },
            "number from text: \",\" (byte 0x2c) given at offset 1, only a number such as 1002.34 or 1.00234E+03 allowed; no comma, no blank inside, no unit, no name",
        ),
        (
            "1.0 E3",
            NumberError::UnexpectedByte { at: 3, byte: b' ' },
            "number from text: a blank (byte 0x20) given at offset 3, only a number such as 1002.34 or 1.00234E+03 allowed; no comma, no blank inside, no unit, no name",
        ),
        (
            "12\u{0}",
            NumberError::UnexpectedByte { at: 2, byte: 0 },
            "number from text: byte 0x00 given at offset 2, only a number such as 1002.34 or 1.00234E+03 allowed; no comma, no blank inside, no unit, no name",
        ),
        (
            "-",
            NumberError::MissingDigits { at: 1, of_exponent: false },
            "number from text: it ends at offset 1 where a digit is needed, a number such as 1002.34 or 1.00234E+03 allowed; look for an answer that was cut off",
        ),
        (
            "1.0E\n",
            NumberError::MissingDigits { at: 4, of_exponent: true },
            "number from text: it ends at offset 4 where a digit of the exponent is needed, a number such as 1002.34 or 1.00234E+03 allowed; look for an answer that was cut off",
        ),
        (
            "-1e309",
            NumberError::TooLarge { largest: f64::MAX },
            "number from text: a number beyond the type's largest given, -1.7976931348623157e308 to 1.7976931348623157e308 allowed; look at the exponent",
        ),
    ] {
        assert_eq!(parse_number(text.as_bytes()), Err(error), "{text:?}");
        assert_eq!(error.to_string(), message);
    }
    let long = parse_number(&[b'1'; 129]).unwrap_err();
    assert_eq!(long, NumberError::TooLong { length: 129 });
    assert_eq!(long.to_string(), "number from text: 129 bytes given, at most 128 allowed; give one number at a time");
    assert_eq!(
        parse_number_f32(b"1e39").unwrap_err().to_string(),
        "number from text: a number beyond the type's largest given, -3.4028234663852886e38 to 3.4028234663852886e38 allowed; look at the exponent"
    );
}

#[test]
fn more_texts_that_are_no_number() {
    use NumberError::{Empty, MissingDigits, UnexpectedByte};
    for (text, error) in [
        ("  \t\r\n", Empty),
        (".", MissingDigits { at: 1, of_exponent: false }),
        ("+.\n", MissingDigits { at: 2, of_exponent: false }),
        ("+-1", UnexpectedByte { at: 1, byte: b'-' }),
        ("1.2.3", UnexpectedByte { at: 3, byte: b'.' }),
        ("..1", UnexpectedByte { at: 1, byte: b'.' }),
        (".e5", UnexpectedByte { at: 1, byte: b'e' }),
        ("e5", UnexpectedByte { at: 0, byte: b'e' }),
        ("1e", MissingDigits { at: 2, of_exponent: true }),
        ("1e+", MissingDigits { at: 3, of_exponent: true }),
        ("1e+-3", UnexpectedByte { at: 3, byte: b'-' }),
        ("1e3.0", UnexpectedByte { at: 3, byte: b'.' }),
        ("INF", UnexpectedByte { at: 0, byte: b'I' }),
        ("nan", UnexpectedByte { at: 0, byte: b'n' }),
        ("0x1p3", UnexpectedByte { at: 1, byte: b'x' }),
        ("#HA2F", UnexpectedByte { at: 0, byte: b'#' }),
        ("1.0E3 OHM", UnexpectedByte { at: 5, byte: b' ' }),
        ("1 2", UnexpectedByte { at: 1, byte: b' ' }),
        ("1_000", UnexpectedByte { at: 1, byte: b'_' }),
        ("- 1", UnexpectedByte { at: 1, byte: b' ' }),
        ("1d3", UnexpectedByte { at: 1, byte: b'd' }),
    ] {
        assert_eq!(parse_number(text.as_bytes()), Err(error), "{text:?}");
        assert_eq!(parse_number_f32(text.as_bytes()), Err(error), "{text:?}");
    }
    assert_eq!(parse_number(b"\xff1"), Err(UnexpectedByte { at: 0, byte: 0xff }));
}

#[test]
fn plain_numbers_and_back() {
    for error in [
        NumberError::Empty,
        NumberError::TooLong { length: 4000 },
        NumberError::UnexpectedByte { at: 7, byte: 0xc3 },
        NumberError::MissingDigits { at: 3, of_exponent: false },
        NumberError::MissingDigits { at: 3, of_exponent: true },
        NumberError::TooLarge { largest: f64::MAX },
    ] {
        let detail = error.detail();
        assert_eq!(detail.kind, error.kind());
        assert_eq!(NumberError::from_detail(&detail), Some(error));
        assert_eq!(NumberError::from_detail(&Detail { argument: 0, ..detail }), None);
        assert_eq!(NumberError::from_detail(&Detail { kind: Kind::Contradiction, ..detail }), None);
    }
}

/// The form, written a second time and in another way.
fn is_number(text: &[u8]) -> bool {
    let Ok(text) = std::str::from_utf8(text) else { return false };
    let text = text.trim_matches([' ', '\t', '\r', '\n']);
    let plain = text.bytes().all(|b| b.is_ascii_digit() || b"+-.eE".contains(&b));
    plain && text.parse::<f64>().is_ok()
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(cases(20_000)))]
    #[test]
    fn any_bytes_give_a_number_or_a_documented_error(text in proptest::collection::vec(any::<u8>(), 0..140)) {
        let _ = parse_number_f32(&text);
        prop_assert_eq!(parse_number(&text).is_ok(), text.len() <= 128 && is_number(&text));
    }

    #[test]
    fn likely_bytes_are_taken_as_the_standard_library_takes_them(text in "[ \t]{0,2}[-+.eE0-9 ]{0,12}[\r\n]{0,2}") {
        let (bytes, trimmed) = (text.as_bytes(), text.trim());
        match parse_number(bytes) {
            Ok(found) => prop_assert_eq!(found.to_bits(), trimmed.parse::<f64>().unwrap().to_bits()),
            Err(NumberError::TooLarge { .. }) => prop_assert!(trimmed.parse::<f64>().unwrap().is_infinite()),
            Err(_) => prop_assert!(!is_number(bytes), "{:?}", text),
        }
    }
}
