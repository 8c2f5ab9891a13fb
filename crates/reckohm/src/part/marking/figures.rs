//! The significant figures of a value, to be written in one of the codes.

use crate::number::Decimal;

/// Up to four figures without trailing zeros, and the power of ten of the first one.
#[derive(Clone, Copy)]
pub(super) struct Figures {
    whole: u16,
    pub(super) count: i32,
    /// The power of ten of the first figure.
    pub(super) order: i32,
}

impl Figures {
    /// The figures of a normalised value above 0; `None` if there are more than four.
    pub(super) fn of(value: Decimal) -> Option<Figures> {
        let whole = u16::try_from(value.digits).ok().filter(|whole| (1..=9999).contains(whole))?;
        let count = match whole {
            0..=9 => 1,
            10..=99 => 2,
            100..=999 => 3,
            _ => 4,
        };
        Some(Figures { whole, count, order: value.exponent.checked_add(count)?.checked_sub(1)? })
    }

    /// The figure at this place, counted from 0 at the first one; 0 beyond the last.
    pub(super) fn figure(&self, place: i32) -> u8 {
        let down_to = match self.count.wrapping_sub(place) {
            1 => self.whole,
            2 => self.whole / 10,
            3 => self.whole / 100,
            4 => self.whole / 1000,
            _ => 0,
        };
        (down_to % 10) as u8
    }

    /// The first three figures as a whole number, for a value that has no more.
    pub(super) fn three(&self) -> u16 {
        match self.count {
            1 => self.whole.wrapping_mul(100),
            2 => self.whole.wrapping_mul(10),
            _ => self.whole,
        }
    }
}
