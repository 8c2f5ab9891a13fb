//! The way from a decimal to the nearest plain number and back, for each of the two types in its own arithmetic.

use super::bignum::{Big, Binary, DOUBLE, Format, SINGLE, times_power_of_ten};
use super::decimal::{Decimal, nineteen_digits};
use super::parse::{NumberError, parse_number, parse_number_f32};

/// A plain number that a decimal can be rounded to, and that may be the nearest one to a decimal of few digits.
pub trait NearDecimal: Sized {
    /// The nearest number, ties to the even one; an infinity beyond the largest, 0 below half the smallest subnormal.
    fn nearest(decimal: Decimal) -> Self;

    /// `magnitude * 10^exponent` where one multiplication or division of two exact numbers gives the nearest number.
    fn by_one_operation(magnitude: u64, exponent: i32) -> Option<Self>;

    /// The nearest double, for the numbers of a failure; found without arithmetic in double where this type is `f32`.
    fn nearest_double(decimal: Decimal) -> f64;

    /// The number that a text means.
    fn parsed(text: &[u8]) -> Result<Self, NumberError>;

    /// The one decimal whose nearest number this is, of at most as many digits as survive the way through this type.
    fn shortest_decimal(self) -> Option<Decimal>;
}

/// The powers of ten that an `f64` holds exactly.
const POWERS_OF_TEN: [f64; 23] = [
    1e0, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15, 1e16, 1e17, 1e18, 1e19, 1e20,
    1e21, 1e22,
];
/// The powers of ten that an `f32` holds exactly.
const POWERS_OF_TEN_F32: [f32; 11] = [1e0, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10];

macro_rules! near_decimal {
    ($real:ident, $bits:ident, $whole:ident, $format:ident, $powers:ident, $figures:literal, $double:path, $parse:path) => {
        impl NearDecimal for $real {
            #[inline(always)]
            fn by_one_operation(magnitude: u64, exponent: i32) -> Option<$real> {
                if magnitude > 1 << $real::MANTISSA_DIGITS {
                    return None;
                }
                let power = $powers.get(exponent.unsigned_abs() as usize)?;
                let whole = magnitude as $bits as $real;
                Some(if exponent >= 0 { whole * power } else { whole / power })
            }

            fn nearest(decimal: Decimal) -> $real {
                let magnitude = decimal.digits.unsigned_abs();
                let positive = match $real::by_one_operation(magnitude, decimal.exponent) {
                    Some(value) => value,
                    None => $real::from_bits(round_magnitude(magnitude, decimal.exponent, $format) as $bits),
                };
                if decimal.digits < 0 { -positive } else { positive }
            }

            fn nearest_double(decimal: Decimal) -> f64 {
                $double(decimal)
            }

            fn parsed(text: &[u8]) -> Result<$real, NumberError> {
                $parse(text)
            }

            fn shortest_decimal(self) -> Option<Decimal> {
                const FRACTION_BITS: u32 = $real::MANTISSA_DIGITS - 1;
                const HIDDEN: $bits = 1 << FRACTION_BITS;
                const FIGURES: i32 = $figures;

                /// `x * 10^scale` as a whole number, right at least where a decimal of so many figures rounds to `x`.
                fn whole(x: $real, mantissa: u64, exponent: i32, scale: i32) -> u64 {
                    match $powers.get(scale.unsigned_abs() as usize) {
                        // Off by 1/16 at most from the rounding, after 1/8 at most from the decimal to `x`.
                        Some(power) if scale >= 0 => (x * power + 0.5) as $bits as u64,
                        Some(power) => (x / power + 0.5) as $bits as u64,
                        None => {
                            let exact = times_power_of_ten(Big::from_u64(mantissa), scale);
                            // The result has at most 54 bits, so 10 or more are dropped; the last of them rounds.
                            let drop = exact.exponent.wrapping_add(exponent).wrapping_neg() as u32;
                            let last = exact.mantissa.wrapping_shr(drop.wrapping_sub(1));
                            (last >> 1).wrapping_add(last & 1)
                        }
                    }
                }

                // A whole number of so few figures is its own decimal.
                let count = self as $whole;
                if count as $real == self && count.unsigned_abs() < (10 as $bits).pow(FIGURES as u32) {
                    return Some(Decimal::new(i64::from(count), 0).normalised());
                }
                if !self.is_normal() {
                    return None;
                }
                let bits = self.to_bits() & ($bits::MAX >> 1);
                let mantissa = ((bits & (HIDDEN - 1)) | HIDDEN) as u64;
                let biased = (bits >> FRACTION_BITS) as i32;
                let power_of_two = biased.wrapping_sub($real::MAX_EXP - 1);
                let exponent = power_of_two.wrapping_sub(FRACTION_BITS as i32);
                // The power of ten of the first digit, or one too few, never one too many: log10(2) is 315652/2^20 and
                // 8e-7 more, and the 1000 keep the product on the low side for negative exponents too.
                let order = power_of_two.wrapping_mul(315_652).wrapping_sub(1000) >> 20;
                let size = $real::from_bits(bits);
                let mut scale = (FIGURES - 1).wrapping_sub(order);
                let mut digits = whole(size, mantissa, exponent, scale);
                if digits > 10_u64.pow(FIGURES as u32) {
                    scale = scale.wrapping_sub(1);
                    digits = whole(size, mantissa, exponent, scale);
                }
                let digits = if self < 0.0 { (digits as i64).wrapping_neg() } else { digits as i64 };
                let found = Decimal::new(digits, scale.wrapping_neg()).normalised();
                ($real::nearest(found).to_bits() == self.to_bits()).then_some(found)
            }
        }
    };
}

near_decimal!(f64, u64, i64, DOUBLE, POWERS_OF_TEN, 15, f64::nearest, parse_number);
near_decimal!(f32, u32, i32, SINGLE, POWERS_OF_TEN_F32, 6, double_by_whole_numbers, parse_number_f32);

fn double_by_whole_numbers(decimal: Decimal) -> f64 {
    let positive = f64::from_bits(round_magnitude(decimal.digits.unsigned_abs(), decimal.exponent, DOUBLE));
    if decimal.digits < 0 { -positive } else { positive }
}

fn round_magnitude(magnitude: u64, exponent: i32, format: Format) -> u64 {
    if magnitude == 0 {
        return 0;
    }
    round_digits(Big::from_u64(magnitude), nineteen_digits(magnitude, exponent).1, exponent, format)
}

/// Bits of `digits * 10^exponent`, of which the first digit stands at 10^`order`. Decides the far ends by `order`, so that
/// the division stays within its room.
pub(super) fn round_digits(digits: Big, order: i64, exponent: i32, format: Format) -> u64 {
    if order < -324 {
        return 0;
    }
    if order > 308 {
        return Binary { mantissa: 1, exponent: 1100, inexact: false }.round(format);
    }
    times_power_of_ten(digits, exponent).round(format)
}
