//! The form of a display text: a number with its sign, point and letter, or an over-range mark.

use super::marks::Marks;
use super::unread::Unread;
use crate::number::{Kind, is_blank};

/// A display text that has the form of a number.
#[derive(Clone, Copy)]
pub(super) struct Typed {
    pub(super) negative: bool,
    /// The digits as one whole number, and how many at the end of it are left away because they do not fit.
    pub(super) digits: u64,
    pub(super) dropped: i32,
    /// Digits in front of the point, and behind it.
    pub(super) whole: i32,
    pub(super) fraction: i32,
    pub(super) point: bool,
    /// The power of ten of the multiplier letter.
    pub(super) unit: Option<i32>,
    /// Offsets of the first digit or point, and of the first byte after the digits.
    pub(super) at: usize,
    pub(super) end: usize,
}

/// Up to here another digit fits.
const MOST_DIGITS: u64 = 10_u64.pow(17);

impl Typed {
    /// The number that a text without surrounding blanks has the form of; it begins at this offset.
    pub(super) fn scan(body: &[u8], start: usize) -> Result<Typed, Unread> {
        let mut typed = Typed {
            negative: false,
            digits: 0,
            dropped: 0,
            whole: 0,
            fraction: 0,
            point: false,
            unit: None,
            at: start,
            end: start,
        };
        let mut rest = body;
        if let Some((b'-' | b'+', after)) = rest.split_first() {
            typed.negative = body.first() == Some(&b'-');
            typed.at = start.wrapping_add(1);
            rest = after;
        }
        typed.end = typed.at;
        while let Some((byte, after)) = rest.split_first() {
            let digit = byte.wrapping_sub(b'0');
            if digit <= 9 {
                typed.append(digit);
            } else if !matches!(byte, b'.' | b',') {
                break;
            } else if typed.point {
                return Err(Unread::at(Kind::UnexpectedByte, typed.end));
            } else {
                typed.point = true;
            }
            typed.end = typed.end.wrapping_add(1);
            rest = after;
        }
        if rest.is_empty() && typed.has_digits() {
            return Ok(typed);
        }
        typed.with_letter(rest)
    }

    /// The same with the multiplier letter that stands behind the digits, maybe after blanks, and nothing else.
    fn with_letter(self, rest: &[u8]) -> Result<Typed, Unread> {
        if !self.has_digits() {
            let kind = if rest.is_empty() { Kind::MissingDigits } else { Kind::UnexpectedByte };
            return Err(Unread::at(kind, self.end));
        }
        let (letter, start) = without_blanks(rest);
        let at = self.end.wrapping_add(start);
        match letter {
            [byte] if multiplier(*byte).is_some() => Ok(Typed { unit: multiplier(*byte), ..self }),
            [byte, ..] if multiplier(*byte).is_some() => Err(Unread::at(Kind::UnexpectedByte, at.wrapping_add(1))),
            // A blank inside the number is what is wrong, not the digit after it.
            [byte, ..] if byte.is_ascii_digit() => Err(Unread::at(Kind::UnexpectedByte, self.end)),
            _ => Err(Unread::at(Kind::UnexpectedByte, at)),
        }
    }

    fn append(&mut self, digit: u8) {
        if self.digits < MOST_DIGITS {
            self.digits = self.digits.wrapping_mul(10).wrapping_add(u64::from(digit));
        } else {
            self.dropped = self.dropped.wrapping_add(1);
        }
        let place = if self.point { &mut self.fraction } else { &mut self.whole };
        *place = place.wrapping_add(1);
    }

    const fn has_digits(&self) -> bool {
        self.whole != 0 || self.fraction != 0
    }

    /// A single "1" and no other digit, with or without a point behind it.
    pub(super) const fn is_lone_one(&self) -> bool {
        self.digits == 1 && self.whole == 1 && self.fraction == 0 && self.unit.is_none()
    }
}

/// The power of ten that a multiplier letter stands for. A small "m" is none: it would be milli, and is written for mega.
const fn multiplier(byte: u8) -> Option<i32> {
    match byte {
        b'k' | b'K' => Some(3),
        b'M' => Some(6),
        b'G' => Some(9),
        _ => None,
    }
}

/// The text without blanks and line ends around it, and the offset where it starts.
pub(super) fn without_blanks(text: &[u8]) -> (&[u8], usize) {
    let (mut body, mut start) = (text, 0_usize);
    while let Some((_, rest)) = body.split_first().filter(|(first, _)| is_blank(**first)) {
        (body, start) = (rest, start.wrapping_add(1));
    }
    while let Some((_, rest)) = body.split_last().filter(|(last, _)| is_blank(**last)) {
        body = rest;
    }
    (body, start)
}

/// The over-range mark that a text without surrounding blanks is, if it is one that no number looks like, and its sign.
pub(super) fn over_range_mark(body: &[u8]) -> Option<(Marks, bool)> {
    let sign = body.first().copied().filter(|byte| matches!(byte, b'-' | b'+'));
    // The last two bytes behind the sign that are neither points nor blanks, and how many there are.
    let (mut letters, mut behind_sign) = ([0; 2], 0_usize);
    let (mut points, mut dashes) = (0_usize, true);
    for byte in body.get(usize::from(sign.is_some())..).unwrap_or_default() {
        if matches!(byte, b'.' | b',') {
            points = points.wrapping_add(1);
        } else if !is_blank(*byte) {
            letters = [letters[1], *byte];
            behind_sign = behind_sign.wrapping_add(1);
            dashes &= *byte == b'-';
        }
    }
    let minus = sign == Some(b'-');
    match (sign, behind_sign) {
        (None, 0) if points <= 1 => Some((Marks::BLANK, false)),
        (None, 2..) if dashes => Some((Marks::DASHES, false)),
        (Some(b'-'), 1..) if dashes => Some((Marks::DASHES, false)),
        (_, 2) if points <= 1 && matches!(letters, [b'O' | b'o' | b'0', b'L' | b'l']) => Some((Marks::OL, minus)),
        _ => None,
    }
}
