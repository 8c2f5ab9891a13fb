//! Whole numbers of fixed room, and a whole number times a power of ten as a 64-bit mantissa: what correct rounding of a
//! decimal text needs. No heap, no table, no path that can panic.
//!
//! Room: a text of at most [`MAX_DIGITS`] digits whose value lies in the range of an `f64` needs 5^451 at most on the
//! side of the divisor (1048 bits) and 10^310 on the other (1030 bits); 34 limbs hold 1088.

/// More digits than this are never handed to [`Big::push_digit`].
pub(crate) const MAX_DIGITS: usize = 128;

const LIMBS: usize = 34;
const FIVE_TO_13: u32 = 1_220_703_125;

/// A whole number, least limb first. A result that needs more room loses its upper limbs: callers keep within the room.
#[derive(Clone, Copy)]
pub(crate) struct Big {
    limbs: [u32; LIMBS],
}

impl Big {
    pub(crate) fn from_u64(value: u64) -> Big {
        let mut limbs = [0; LIMBS];
        for (limb, shift) in limbs.iter_mut().zip([0_u32, 32]) {
            *limb = (value >> shift) as u32;
        }
        Big { limbs }
    }

    /// `self = self * factor + add`.
    fn multiply_add(&mut self, factor: u32, add: u32) {
        let mut carry = u64::from(add);
        for limb in &mut self.limbs {
            let product = u64::from(*limb).wrapping_mul(u64::from(factor)).wrapping_add(carry);
            *limb = product as u32;
            carry = product >> 32;
        }
    }

    /// Appends a decimal digit.
    pub(crate) fn push_digit(&mut self, digit: u8) {
        self.multiply_add(10, u32::from(digit));
    }

    fn multiply_by_five_to(&mut self, power: u32) {
        let mut left = power;
        while left >= 13 {
            self.multiply_add(FIVE_TO_13, 0);
            left = left.wrapping_sub(13);
        }
        while left > 0 {
            self.multiply_add(5, 0);
            left = left.wrapping_sub(1);
        }
    }

    fn bit_length(&self) -> u32 {
        let mut length = 0;
        for (limb, base) in self.limbs.iter().zip((0_u32..).step_by(32)) {
            if *limb != 0 {
                length = base.wrapping_add(32).wrapping_sub(limb.leading_zeros());
            }
        }
        length
    }

    fn shift_left(&mut self, count: u32) {
        let (words, bits) = ((count / 32) as usize, count % 32);
        let from = self.limbs;
        let at = |index: Option<usize>| u64::from(index.and_then(|i| from.get(i)).copied().unwrap_or(0));
        for (index, limb) in self.limbs.iter_mut().enumerate() {
            let upper = at(index.checked_sub(words));
            let lower = at(index.checked_sub(words.wrapping_add(1)));
            *limb = (((upper << 32) | lower) >> (32 - bits)) as u32;
        }
    }

    fn is_at_least(&self, other: &Big) -> bool {
        for (a, b) in self.limbs.iter().zip(&other.limbs).rev() {
            if a != b {
                return a > b;
            }
        }
        true
    }

    fn subtract(&mut self, other: &Big) {
        let mut borrow = 0_u64;
        for (limb, take) in self.limbs.iter_mut().zip(&other.limbs) {
            let difference = u64::from(*limb).wrapping_sub(u64::from(*take)).wrapping_sub(borrow);
            *limb = difference as u32;
            borrow = difference >> 63;
        }
    }

    fn is_zero(&self) -> bool {
        self.limbs.iter().all(|limb| *limb == 0)
    }
}

/// A positive number as `mantissa * 2^exponent`, the mantissa with its top bit set or the next one; `inexact` says that
/// something positive, less than one unit of the mantissa, was left away.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Binary {
    pub(crate) mantissa: u64,
    pub(crate) exponent: i32,
    pub(crate) inexact: bool,
}

/// `digits * 10^exponent` with `digits` positive, by long division in binary. Both `digits * 10^exponent` and the power of
/// ten must lie within the room stated at the head of this file.
pub(crate) fn times_power_of_ten(digits: Big, exponent: i32) -> Binary {
    let (mut top, mut bottom) = (digits, Big::from_u64(1));
    if exponent >= 0 {
        top.multiply_by_five_to(exponent.unsigned_abs());
    } else {
        bottom.multiply_by_five_to(exponent.unsigned_abs());
    }
    // Both to one length; each bit by which the dividend was lengthened is one off the result's exponent.
    let (a, b) = (top.bit_length(), bottom.bit_length());
    top.shift_left(b.saturating_sub(a));
    bottom.shift_left(a.saturating_sub(b));
    let mut mantissa = 0_u64;
    for _ in 0..64 {
        mantissa <<= 1;
        if top.is_at_least(&bottom) {
            top.subtract(&bottom);
            mantissa |= 1;
        }
        top.shift_left(1);
    }
    let exponent = exponent.wrapping_add(a as i32).wrapping_sub(b as i32).wrapping_sub(63);
    Binary { mantissa, exponent, inexact: !top.is_zero() }
}

/// A binary floating-point format: bits of the mantissa with the leading one, exponent of the smallest subnormal.
#[derive(Clone, Copy)]
pub(crate) struct Format {
    pub(crate) precision: u32,
    pub(crate) least_exponent: i32,
}

pub(crate) const DOUBLE: Format = Format { precision: 53, least_exponent: -1074 };
pub(crate) const SINGLE: Format = Format { precision: 24, least_exponent: -149 };

impl Binary {
    /// Rounded to nearest, ties to even, as the bits of `format` without its sign. Too large gives the bits of infinity,
    /// too small those of 0.
    pub(crate) fn round(self, format: Format) -> u64 {
        if self.mantissa == 0 {
            return 0;
        }
        let lead = self.mantissa.leading_zeros();
        let mantissa = self.mantissa.wrapping_shl(lead);
        let exponent = i64::from(self.exponent).wrapping_sub(i64::from(lead));
        let precision = i64::from(format.precision);
        let least = i64::from(format.least_exponent);
        // The exponent of the last place kept: by the precision, or by the smallest subnormal.
        let unit = exponent.wrapping_add(64).wrapping_sub(precision).max(least);
        let drop = unit.wrapping_sub(exponent);
        if drop > 64 {
            return 0;
        }
        // 11 <= drop <= 64 for both formats.
        let kept = mantissa.checked_shr(drop as u32).unwrap_or(0);
        let rest = mantissa.wrapping_shl(64_i64.wrapping_sub(drop) as u32);
        let half = 1_u64 << 63;
        let up = rest > half || (rest == half && (self.inexact || kept & 1 == 1));
        let rounded = kept.wrapping_add(u64::from(up));
        // With the biased exponent in front, a carry out of the mantissa does the right thing by itself.
        let biased = unit.wrapping_sub(least).wrapping_add(1);
        let hidden = 1_u64.wrapping_shl(format.precision.wrapping_sub(1));
        let bits = if rounded < hidden {
            rounded
        } else {
            (biased as u64).wrapping_mul(hidden).wrapping_add(rounded.wrapping_sub(hidden))
        };
        let infinity = match format.precision {
            24 => u64::from(f32::INFINITY.to_bits()),
            _ => f64::INFINITY.to_bits(),
        };
        bits.min(infinity)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The room is enough at both ends of the range of an `f64`, for the most digits that a text may have.
    #[test]
    fn the_room_suffices_for_the_longest_text() {
        let mut bottom = Big::from_u64(1);
        bottom.multiply_by_five_to(451);
        assert_eq!(bottom.bit_length(), 1048);
        assert!(bottom.limbs.last() == Some(&0), "room for the shift by one of the long division");
        let mut top = Big::from_u64(0);
        for _ in 0..MAX_DIGITS {
            top.push_digit(9);
        }
        assert_eq!(top.bit_length(), 426);
        top.multiply_by_five_to(310 - MAX_DIGITS as u32);
        assert!(top.bit_length() < 1030);
    }

    #[test]
    fn three_tenths_have_the_expected_bits() {
        let found = times_power_of_ten(Big::from_u64(3), -1);
        // 0.3 in hexadecimal is 0.4CCC…, shifted up by one bit.
        assert_eq!(found, Binary { mantissa: 0x9999_9999_9999_9999, exponent: -65, inexact: true });
    }
}
