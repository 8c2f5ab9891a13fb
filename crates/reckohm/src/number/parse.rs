//! A number from its text, correctly rounded, without a table and without a path that can panic.
//!
//! The form is that of numbers in the answers of remote-controlled instruments (IEEE 488.2 NR1, NR2, NR3, read
//! generously): `[+-]? (digits [. digits*] | . digits) ([Ee] [+-]? digits)?`, with blanks and line ends around it left
//! away. No decimal comma, no blank inside, no names of infinities, no unit.

use core::fmt;

use super::bignum::{Big, DOUBLE, Format, MAX_DIGITS, SINGLE};
use super::decimal::Decimal;
use super::kind::{Detail, Kind};
use super::nearest::round_digits;

/// The longest text that is read, in bytes, blanks included.
pub const LONGEST_NUMBER_TEXT: usize = 128;

/// Why a text is not a number. Offsets count bytes from the start of the text as given.
#[derive(Clone, Copy, Debug, PartialEq)]
#[non_exhaustive]
pub enum NumberError {
    /// Nothing there, or nothing but blanks.
    Empty,
    /// More bytes than [`LONGEST_NUMBER_TEXT`].
    TooLong {
        /// How many bytes were given.
        length: u64,
    },
    /// A byte that cannot stand where it stands.
    UnexpectedByte {
        /// Its offset.
        at: u64,
        /// The byte.
        byte: u8,
    },
    /// A digit is missing: the text, or the blank-free part of it, ends too early.
    MissingDigits {
        /// Where the digit should stand.
        at: u64,
        /// Whether it is a digit of the exponent.
        of_exponent: bool,
    },
    /// Beyond the largest number of the type.
    TooLarge {
        /// The largest.
        largest: f64,
    },
}

/// `Detail::argument` of a text that should be a number.
const NUMBER_TEXT: u16 = 10;
/// `Detail::argument` of the exponent of such a text.
const NUMBER_EXPONENT: u16 = 11;

impl NumberError {
    /// What happened, in one word.
    pub fn kind(&self) -> Kind {
        match self {
            NumberError::Empty => Kind::Empty,
            NumberError::TooLong { .. } => Kind::TextTooLong,
            NumberError::UnexpectedByte { .. } => Kind::UnexpectedByte,
            NumberError::MissingDigits { .. } => Kind::MissingDigits,
            NumberError::TooLarge { .. } => Kind::ResultOutOfRange,
        }
    }

    /// The same as plain numbers; the offset is the index.
    pub fn detail(&self) -> Detail {
        let detail = Detail { argument: NUMBER_TEXT, ..Detail::new(self.kind()) };
        match *self {
            NumberError::Empty => detail,
            NumberError::TooLong { length } => Detail {
                given: length as f64,
                upper: LONGEST_NUMBER_TEXT as f64,
                index: LONGEST_NUMBER_TEXT as u64,
                ..detail
            },
            NumberError::UnexpectedByte { at, byte } => Detail { given: f64::from(byte), index: at, ..detail },
            NumberError::MissingDigits { at, of_exponent } => {
                Detail { argument: if of_exponent { NUMBER_EXPONENT } else { NUMBER_TEXT }, index: at, ..detail }
            }
            NumberError::TooLarge { largest } => Detail { lower: -largest, upper: largest, ..detail },
        }
    }

    /// Back from plain numbers, if they are of this error.
    pub fn from_detail(detail: &Detail) -> Option<NumberError> {
        if !matches!(detail.argument, NUMBER_TEXT | NUMBER_EXPONENT) {
            return None;
        }
        match detail.kind {
            Kind::Empty => Some(NumberError::Empty),
            Kind::TextTooLong => Some(NumberError::TooLong { length: detail.given as u64 }),
            Kind::UnexpectedByte => Some(NumberError::UnexpectedByte { at: detail.index, byte: detail.given as u8 }),
            Kind::MissingDigits => {
                Some(NumberError::MissingDigits { at: detail.index, of_exponent: detail.argument == NUMBER_EXPONENT })
            }
            Kind::ResultOutOfRange => Some(NumberError::TooLarge { largest: detail.upper }),
            _ => None,
        }
    }
}

/// A byte as it should be shown: itself in quotes where it is printable, and always its number.
pub(crate) struct Shown(pub(crate) u8);

impl fmt::Display for Shown {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self.0 {
            byte @ 0x21..=0x7e => write!(f, "\"{}\" (byte 0x{byte:02x})", char::from(byte)),
            0x20 => write!(f, "a blank (byte 0x20)"),
            byte => write!(f, "byte 0x{byte:02x}"),
        }
    }
}

impl fmt::Display for NumberError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match *self {
            NumberError::Empty => write!(
                f,
                "number from text: nothing but blanks given, a number such as 1002.34 or 1.00234E+03 allowed; look for an \
                 answer that did not arrive"
            ),
            NumberError::TooLong { length } => write!(
                f,
                "number from text: {length} bytes given, at most {LONGEST_NUMBER_TEXT} allowed; give one number at a time"
            ),
            NumberError::UnexpectedByte { at, byte } => write!(
                f,
                "number from text: {} given at offset {at}, only a number such as 1002.34 or 1.00234E+03 allowed; no \
                 comma, no blank inside, no unit, no name",
                Shown(byte)
            ),
            NumberError::MissingDigits { at, of_exponent } => {
                let part = if of_exponent { " of the exponent" } else { "" };
                write!(
                    f,
                    "number from text: it ends at offset {at} where a digit{part} is needed, a number such as 1002.34 or \
                     1.00234E+03 allowed; look for an answer that was cut off"
                )
            }
            NumberError::TooLarge { largest } => write!(
                f,
                "number from text: a number beyond the type's largest given, -{largest:e} to {largest:e} allowed; look \
                 at the exponent"
            ),
        }
    }
}

impl core::error::Error for NumberError {}

/// The number that a text shows, rounded to the nearest `f64`, ties to the even one, whatever its number of digits.
///
/// Given: at most 128 bytes, of the form at the head of this page. Too small a number becomes a subnormal number or 0 with
/// its sign, as rounding demands.
///
/// # Errors
/// [`NumberError`], each with the byte's offset; a number beyond the largest `f64` is [`NumberError::TooLarge`], never an
/// infinity.
///
/// Source: IEEE 488.2 numeric response data, as reprinted in programming guides of several instruments.
///
/// ```
/// use reckohm::number::{NumberError, parse_number};
/// assert_eq!(parse_number(b"+1.00234567E+03\n"), Ok(1002.34567));
/// assert_eq!(parse_number(b"1,002"), Err(NumberError::UnexpectedByte { at: 1, byte: b',' }));
/// ```
pub fn parse_number(text: &[u8]) -> Result<f64, NumberError> {
    let written = Written::scan(text)?;
    let positive = match written.decimal() {
        Some(decimal) => decimal.to_f64(),
        None => f64::from_bits(written.round(DOUBLE)),
    };
    if positive.is_infinite() {
        return Err(NumberError::TooLarge { largest: f64::MAX });
    }
    Ok(if written.negative { -positive } else { positive })
}

/// The same for the nearest `f32`, rounded once from the text.
///
/// # Errors
/// As [`parse_number`], with the largest `f32` as the limit.
///
/// ```
/// # use reckohm::number::parse_number_f32;
/// assert_eq!(parse_number_f32(b"0.1"), Ok(0.1_f32));
/// assert!(parse_number_f32(b"1e39").is_err());
/// ```
pub fn parse_number_f32(text: &[u8]) -> Result<f32, NumberError> {
    let written = Written::scan(text)?;
    let positive = match written.decimal() {
        Some(decimal) => decimal.to_f32(),
        None => f32::from_bits(written.round(SINGLE) as u32),
    };
    if positive.is_infinite() {
        return Err(NumberError::TooLarge { largest: f64::from(f32::MAX) });
    }
    Ok(if written.negative { -positive } else { positive })
}

/// A text that has the right form.
struct Written<'a> {
    negative: bool,
    /// Digits and at most one point, from the first digit that is not 0 on.
    digits: &'a [u8],
    /// How many digits there are from there on.
    count: usize,
    /// Power of ten of the last digit.
    exponent: i64,
}

/// Exponents beyond this are cut: far outside every number type for any text of legal length.
const EXPONENT_LIMIT: i64 = 100_000;

impl<'a> Written<'a> {
    fn scan(text: &'a [u8]) -> Result<Written<'a>, NumberError> {
        if text.len() > LONGEST_NUMBER_TEXT {
            return Err(NumberError::TooLong { length: text.len() as u64 });
        }
        let mut cursor = Cursor { rest: text, at: 0 };
        cursor.skip_while(is_blank);
        if cursor.rest.is_empty() {
            return Err(NumberError::Empty);
        }
        let negative = cursor.sign();
        cursor.skip_while(|byte| byte == b'0');
        let start = cursor.rest;
        let leading_zeros = cursor.at > 0 && text.get(cursor.at.wrapping_sub(1)) == Some(&b'0');
        let whole = cursor.skip_while(|byte| byte.is_ascii_digit());
        let mut fraction = 0;
        let (mut digits, mut count) = (start, whole);
        if cursor.take(b'.') {
            if whole == 0 {
                let zeros = cursor.skip_while(|byte| byte == b'0');
                digits = cursor.rest;
                count = cursor.skip_while(|byte| byte.is_ascii_digit());
                fraction = zeros.wrapping_add(count);
            } else {
                fraction = cursor.skip_while(|byte| byte.is_ascii_digit());
                count = whole.wrapping_add(fraction);
            }
        }
        if whole == 0 && fraction == 0 && !leading_zeros {
            return Err(cursor.missing(false));
        }
        let mut exponent = 0;
        if cursor.take(b'e') || cursor.take(b'E') {
            let minus = cursor.sign();
            let (before, mut size) = (cursor.at, 0_i64);
            while let Some(byte) = cursor.rest.first().copied().filter(u8::is_ascii_digit) {
                size = size.wrapping_mul(10).wrapping_add(i64::from(byte.wrapping_sub(b'0'))).min(EXPONENT_LIMIT);
                cursor.skip_one();
            }
            if cursor.at == before {
                return Err(cursor.missing(true));
            }
            exponent = if minus { size.wrapping_neg() } else { size };
        }
        let end = Cursor { rest: cursor.rest, at: cursor.at };
        cursor.skip_while(is_blank);
        if !cursor.rest.is_empty() {
            // A blank inside the number is what is wrong, not the byte after it.
            return Err(end.missing(false));
        }
        Ok(Written { negative, digits, count, exponent: exponent.wrapping_sub(fraction as i64) })
    }

    fn figures(&self) -> impl Iterator<Item = u8> {
        self.digits.iter().filter(|byte| **byte != b'.').take(self.count).map(|byte| byte.wrapping_sub(b'0'))
    }

    /// Digits and exponent where they fit.
    fn decimal(&self) -> Option<Decimal> {
        if self.count > 18 {
            return None;
        }
        let digits = self.figures().fold(0_i64, |sum, digit| sum.wrapping_mul(10).wrapping_add(i64::from(digit)));
        Some(Decimal::new(digits, self.exponent as i32))
    }

    fn round(&self, format: Format) -> u64 {
        let mut digits = Big::from_u64(0);
        for digit in self.figures().take(MAX_DIGITS) {
            digits.push_digit(digit);
        }
        let order = self.exponent.wrapping_add(self.count as i64).wrapping_sub(1);
        round_digits(digits, order, self.exponent as i32, format)
    }
}

/// Blanks and line ends, which may stand around a number.
pub(crate) fn is_blank(byte: u8) -> bool {
    matches!(byte, b' ' | b'\t' | b'\r' | b'\n')
}

struct Cursor<'a> {
    rest: &'a [u8],
    at: usize,
}

impl Cursor<'_> {
    fn skip_one(&mut self) {
        if let Some((_, rest)) = self.rest.split_first() {
            self.rest = rest;
            self.at = self.at.wrapping_add(1);
        }
    }

    /// How many bytes were skipped.
    fn skip_while(&mut self, wanted: impl Fn(u8) -> bool) -> usize {
        let before = self.at;
        while self.rest.first().copied().is_some_and(&wanted) {
            self.skip_one();
        }
        self.at.wrapping_sub(before)
    }

    fn take(&mut self, byte: u8) -> bool {
        let there = self.rest.first() == Some(&byte);
        if there {
            self.skip_one();
        }
        there
    }

    /// Whether a minus was there; a plus is taken too.
    fn sign(&mut self) -> bool {
        let minus = self.take(b'-');
        if !minus {
            self.take(b'+');
        }
        minus
    }

    /// A digit should stand here: either nothing does, or the wrong byte.
    fn missing(&self, of_exponent: bool) -> NumberError {
        let at = self.at as u64;
        match self.rest.first() {
            Some(byte) if !self.rest.iter().all(|byte| is_blank(*byte)) => {
                NumberError::UnexpectedByte { at, byte: *byte }
            }
            _ => NumberError::MissingDigits { at, of_exponent },
        }
    }
}
