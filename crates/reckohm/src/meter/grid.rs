//! What a span's display can show, in whole numbers: which text is which reading, and in what way any other is none.
//!
//! All of it is small arithmetic on whole numbers, so that firmware can afford it: a value is a number of steps.

use super::marks::Marks;
use super::typed::{Typed, over_range_mark, without_blanks};
use super::unread::Unread;
use crate::number::{Decimal, Kind};

/// The longest text that is read as a display's, in bytes, blanks included.
pub const LONGEST_DISPLAY_TEXT: usize = 32;

/// The values that a display shows: multiples of a step up to a full scale, in a unit.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Grid {
    /// The full scale, the first value that is not shown, in steps.
    pub(super) counts: u32,
    /// The step is so many times a power of ten in ohm: 1, 2 or 5.
    pub(super) step_digits: u8,
    pub(super) step_power: i8,
    /// The power of ten of the display's unit in ohm.
    pub(super) unit: i8,
    /// The power of ten of the first digit of the largest value shown, in ohm.
    pub(super) leading: i8,
    pub(super) marks: Marks,
}

/// What a text says on a grid.
#[derive(Clone, Copy)]
pub(super) enum Said {
    /// A value of so many steps.
    Value { counts: u32, negative: bool },
    /// An over-range mark, with a minus in front or without.
    Over { negative: bool },
}

impl Grid {
    pub(super) const fn new(counts: u32, step: Decimal, unit: i8, marks: Marks) -> Grid {
        let (step_digits, step_power) = (step.digits as u8, step.exponent as i8);
        let largest = (counts.wrapping_sub(1) as u64).wrapping_mul(step_digits as u64);
        let order = match largest.checked_ilog10() {
            Some(order) => order as i8,
            None => 0,
        };
        Grid { counts, step_digits, step_power, unit, leading: order.wrapping_add(step_power), marks }
    }

    /// The step, exactly.
    pub(super) const fn step(&self) -> Decimal {
        Decimal::new(self.step_digits as i64, self.step_power as i32)
    }

    /// How many digits the display shows behind the point in a unit of 10^`unit` ohm.
    pub(super) const fn decimals_in(&self, unit: i32) -> i32 {
        let decimals = unit.wrapping_sub(self.step_power as i32);
        if decimals > 0 { decimals } else { 0 }
    }

    /// How many digits stand in front of the point at most, in a unit of 10^`unit` ohm.
    fn whole_digits_in(&self, unit: i32) -> i32 {
        i32::from(self.leading).wrapping_sub(unit).wrapping_add(1).max(1)
    }

    /// What a text says on this span.
    pub(super) fn read(&self, text: &[u8]) -> Result<Said, Unread> {
        if text.len() > LONGEST_DISPLAY_TEXT {
            return Err(Unread::at(Kind::TextTooLong, 0));
        }
        let (body, start) = without_blanks(text);
        // A text that has the form of a number is no mark.
        match Typed::scan(body, start) {
            Ok(typed) => self.fit(&typed),
            Err(unread) => match over_range_mark(body) {
                Some((mark, negative)) if self.marks.contains(mark) => Ok(Said::Over { negative }),
                Some((mark, _)) if mark != Marks::BLANK => Err(Unread::at(Kind::MarkNotOfSpan, start)),
                Some(_) if body.is_empty() => Err(Unread::at(Kind::Empty, 0)),
                _ => Err(unread),
            },
        }
    }

    fn fit(&self, typed: &Typed) -> Result<Said, Unread> {
        let unit = typed.unit.unwrap_or(i32::from(self.unit));
        let decimals = self.decimals_in(unit);
        if typed.is_lone_one() && self.marks.contains(Marks::ONE_ALONE) {
            // Where it is not one step it cannot be a value.
            return if self.step_digits == 1 && self.step_power == self.unit {
                Err(Unread::at(Kind::AmbiguousText, typed.at))
            } else {
                Ok(Said::Over { negative: typed.negative })
            };
        }
        let power = unit.wrapping_sub(typed.fraction).wrapping_add(typed.dropped);
        let (counts, whole) = self.steps(typed.digits, power.wrapping_sub(i32::from(self.step_power)));
        let beyond = counts >= u64::from(self.counts);
        // With a letter the digits say how much it is, whatever their form.
        let wrong = if typed.unit.is_some() && beyond {
            Some((Kind::BeyondFullScale, typed.at))
        } else if typed.fraction < decimals {
            Some((if typed.point { Kind::TooFewDecimals } else { Kind::MissingPoint }, typed.end))
        } else if typed.fraction > decimals {
            Some((Kind::TooManyDecimals, typed.end))
        } else if beyond {
            Some((Kind::BeyondFullScale, typed.at))
        } else if typed.whole > self.whole_digits_in(unit) {
            Some((Kind::TooManyDigits, typed.at))
        } else {
            None
        };
        if let Some((kind, at)) = wrong {
            return Err(Unread::at(kind, at));
        }
        if whole {
            Ok(Said::Value { counts: counts as u32, negative: typed.negative })
        } else {
            Err(Unread::at(Kind::OffGrid, typed.at))
        }
    }

    /// How many whole steps a number times a power of ten of the step's last digit is, and whether nothing is left over; the
    /// largest number where there are too many.
    fn steps(&self, digits: u64, power: i32) -> (u64, bool) {
        let (mut found, mut whole, mut left) = (digits, true, power);
        while left > 0 && found > 0 {
            (found, left) = (found.saturating_mul(10), left.wrapping_sub(1));
        }
        while left < 0 && found > 0 {
            let (tenth, rest) = tenth(found);
            whole &= rest == 0;
            (found, left) = (tenth, left.wrapping_add(1));
        }
        match self.step_digits {
            2 => (found >> 1, whole & (found & 1 == 0)),
            5 => {
                let (fifth, rest) = tenth(found.saturating_mul(2));
                (fifth, whole & (rest == 0))
            }
            _ => (found, whole),
        }
    }
}

/// A tenth, cut to a whole number, and what is left over. By pieces of 16 bits, since a small processor has no division of 64
/// bits, and the function in its place would be a tenth of the code for reading.
fn tenth(number: u64) -> (u64, u32) {
    let (mut tenth, mut rest) = (0_u64, 0_u32);
    for shift in [48_u32, 32, 16, 0] {
        let piece = rest << 16 | (number >> shift) as u32 & 0xffff;
        tenth = tenth << 16 | u64::from(piece / 10);
        rest = piece % 10;
    }
    (tenth, rest)
}
