//! Numbers from texts against the standard library's parser, to the bit.

use reckohm::number::{LONGEST_NUMBER_TEXT, NumberError, parse_number, parse_number_f32};

use crate::accepted;

const BLANK: [char; 4] = [' ', '\t', '\r', '\n'];

/// The number part of a text of the right form. The standard library takes the same form, and names of infinities too.
pub(crate) fn number_of(text: &[u8]) -> Option<&str> {
    let text = std::str::from_utf8(text).ok()?.trim_matches(BLANK);
    let legal = |letter: char| letter.is_ascii_digit() || "+-.eE".contains(letter);
    (text.len() <= LONGEST_NUMBER_TEXT && text.chars().all(legal) && text.parse::<f64>().is_ok()).then_some(text)
}

fn refused(error: NumberError, text: &[u8], infinite: bool) {
    match error {
        NumberError::TooLong { length } => assert!(text.len() > LONGEST_NUMBER_TEXT && length == text.len() as u64),
        NumberError::Empty => assert!(text.iter().all(|byte| b" \t\r\n".contains(byte))),
        NumberError::UnexpectedByte { at, byte } => assert_eq!(text.get(at as usize), Some(&byte)),
        NumberError::MissingDigits { at, .. } => {
            assert!(text[at as usize..].iter().all(|byte| b" \t\r\n".contains(byte)));
        }
        NumberError::TooLarge { .. } => assert!(infinite),
        _ => panic!("a new kind of error: {error:?}"),
    }
}

/// The bytes are the text.
pub fn target(data: &[u8]) {
    let expected = number_of(data).filter(|_| data.len() <= LONGEST_NUMBER_TEXT);
    let wide = expected.map(|text| text.parse::<f64>().expect("tried before"));
    let single = expected.map(|text| text.parse::<f32>().expect("the same form"));
    let found = parse_number(data);
    match accepted!(NumberError, found) {
        Some(x) => assert_eq!(Some(x.to_bits()), wide.map(f64::to_bits)),
        None => {
            assert!(wide.is_none_or(f64::is_infinite), "{wide:?}");
            refused(found.expect_err("refused"), data, wide.is_some());
        }
    }
    let found = parse_number_f32(data);
    match accepted!(NumberError, found) {
        Some(x) => assert_eq!(Some(x.to_bits()), single.map(f32::to_bits)),
        None => {
            assert!(single.is_none_or(f32::is_infinite), "{single:?}");
            refused(found.expect_err("refused"), data, single.is_some());
        }
    }
}
