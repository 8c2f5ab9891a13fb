//! Decimal numbers that stay decimal: whole digits times a power of ten, compared exactly and rounded once.
//!
//! A marking "4K7", a display text "1.462" and a limit of 4700 ohm less 5 % are decimal. Computed in binary, 4.7 × 10^e
//! misses the nearest binary number of its decimal in one case of six; kept as digits and rounded at the end, never.

use core::cmp::Ordering;
use core::hash::{Hash, Hasher};

use super::bignum::{Big, Binary, DOUBLE, Format, SINGLE, times_power_of_ten};

/// The powers of ten that an `f64` holds exactly.
pub(crate) const POWERS_OF_TEN: [f64; 23] = [
    1e0, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15, 1e16, 1e17, 1e18, 1e19, 1e20,
    1e21, 1e22,
];

/// Exactly `digits * 10^exponent`.
///
/// Equality, order and hash are those of the value: 10 × 10^0 equals 1 × 10^1.
///
/// ```
/// use reckohm::number::Decimal;
/// let marked = Decimal::new(47, 2);
/// assert_eq!(marked.to_f64(), 4700.0);
/// assert_eq!(marked, Decimal::new(4700, 0));
/// assert!(Decimal::new(1, -1) < Decimal::new(11, -2));
/// ```
#[derive(Clone, Copy, Debug)]
pub struct Decimal {
    /// The digits, with the sign.
    pub digits: i64,
    /// The power of ten they are multiplied by.
    pub exponent: i32,
}

impl Decimal {
    /// Zero.
    pub const ZERO: Decimal = Decimal::new(0, 0);
    /// One.
    pub const ONE: Decimal = Decimal::new(1, 0);

    /// `digits * 10^exponent`. Every pair is legal.
    ///
    /// ```
    /// # use reckohm::number::Decimal;
    /// assert_eq!(Decimal::new(-5, -2).to_f64(), -0.05);
    /// ```
    pub const fn new(digits: i64, exponent: i32) -> Decimal {
        Decimal { digits, exponent }
    }

    /// The nearest `f64`, ties to the even one. Beyond the largest it is an infinity, and what is less than half the
    /// smallest subnormal is 0: the caller checks where that can happen.
    ///
    /// ```
    /// # use reckohm::number::Decimal;
    /// assert_eq!(Decimal::new(1462, -3).scaled(3).to_f64(), 1462.0);
    /// assert_eq!(Decimal::new(9_007_199_254_740_993, 0).to_f64(), 9_007_199_254_740_992.0);
    /// assert_eq!(Decimal::new(1, 400).to_f64(), f64::INFINITY);
    /// ```
    pub fn to_f64(self) -> f64 {
        let magnitude = self.digits.unsigned_abs();
        let positive = match exact_double(magnitude, self.exponent) {
            Some(value) => value,
            None => f64::from_bits(round_magnitude(magnitude, self.exponent, DOUBLE)),
        };
        if self.digits < 0 { -positive } else { positive }
    }

    /// The nearest `f32`, ties to the even one, rounded once; over- and underflow as in [`to_f64`](Decimal::to_f64).
    ///
    /// ```
    /// # use reckohm::number::Decimal;
    /// assert_eq!(Decimal::new(5, -2).to_f32(), 0.05_f32);
    /// ```
    pub fn to_f32(self) -> f32 {
        let magnitude = self.digits.unsigned_abs();
        let positive = match exact_single(magnitude, self.exponent) {
            Some(value) => value,
            None => f32::from_bits(round_magnitude(magnitude, self.exponent, SINGLE) as u32),
        };
        if self.digits < 0 { -positive } else { positive }
    }

    /// The decimal of at most 15 significant digits whose [`to_f64`](Decimal::to_f64) is exactly `x`, without trailing
    /// zeros; what was meant when someone wrote 0.05 or 4700 in a program. There is at most one, since 15 digits survive
    /// the way through an `f64`. `None` if there is none, for NaN and infinities, and for subnormal numbers, where it
    /// would not be the only one.
    ///
    /// ```
    /// # use reckohm::number::Decimal;
    /// let five_percent = Decimal::shortest(0.05).unwrap();
    /// assert_eq!((five_percent.digits, five_percent.exponent), (5, -2));
    /// let ohm = Decimal::shortest(4700.0).unwrap();
    /// assert_eq!((ohm.digits, ohm.exponent), (47, 2));
    /// assert_eq!(Decimal::shortest(1.0 / 3.0), None);
    /// ```
    pub fn shortest(x: f64) -> Option<Decimal> {
        if x == 0.0 {
            return Some(Decimal::ZERO);
        }
        if !x.is_normal() {
            return None;
        }
        let bits = x.to_bits() & (u64::MAX >> 1);
        let mantissa = (bits & 0x000f_ffff_ffff_ffff) | 0x0010_0000_0000_0000;
        let exponent = ((bits >> 52) as i32).wrapping_sub(1075);
        // The power of ten of the first digit, or one too few, never one too many: log10(2) is 315652/2^20 and 8e-7 more,
        // and the 1000 keep the product on the low side for negative exponents too.
        let order = exponent.wrapping_add(52).wrapping_mul(315_652).wrapping_sub(1000) >> 20;
        let mut scale = 14_i32.wrapping_sub(order);
        let mut digits = fifteen_digits(f64::from_bits(bits), mantissa, exponent, scale);
        if digits > 1_000_000_000_000_000 {
            scale = scale.wrapping_sub(1);
            digits = fifteen_digits(f64::from_bits(bits), mantissa, exponent, scale);
        }
        let digits = if x < 0.0 { (digits as i64).wrapping_neg() } else { digits as i64 };
        let found = Decimal::new(digits, scale.wrapping_neg()).normalised();
        (found.to_f64().to_bits() == x.to_bits()).then_some(found)
    }

    /// The same value without trailing zeros in the digits; zero is 0 × 10^0.
    ///
    /// ```
    /// # use reckohm::number::Decimal;
    /// let plain = Decimal::new(-4700, 0).normalised();
    /// assert_eq!((plain.digits, plain.exponent), (-47, 2));
    /// ```
    pub fn normalised(self) -> Decimal {
        if self.digits == 0 {
            return Decimal::ZERO;
        }
        let mut found = self;
        while found.digits % 10 == 0 {
            let Some(exponent) = found.exponent.checked_add(1) else { break };
            found = Decimal::new(found.digits / 10, exponent);
        }
        found
    }

    /// Times 10^`power`. An exponent beyond what an `i32` holds stays at its end, far beyond any number type.
    ///
    /// ```
    /// # use reckohm::number::Decimal;
    /// assert_eq!(Decimal::new(1462, -3).scaled(3), Decimal::new(1462, 0));
    /// ```
    pub const fn scaled(self, power: i32) -> Decimal {
        Decimal { digits: self.digits, exponent: self.exponent.saturating_add(power) }
    }

    /// The exact product, or `None` where its digits or its exponent do not fit.
    ///
    /// ```
    /// # use reckohm::number::Decimal;
    /// let nominal = Decimal::new(47, 2);
    /// assert_eq!(nominal.checked_mul(Decimal::new(95, -2)), Some(Decimal::new(4465, 0)));
    /// assert_eq!(Decimal::new(i64::MAX, 0).checked_mul(Decimal::new(3, 0)), None);
    /// ```
    pub fn checked_mul(self, other: Decimal) -> Option<Decimal> {
        let plain = |a: Decimal, b: Decimal| {
            Some(Decimal::new(a.digits.checked_mul(b.digits)?, a.exponent.checked_add(b.exponent)?))
        };
        plain(self, other).or_else(|| plain(self.normalised(), other.normalised()))
    }

    /// The exact sum, or `None` where its digits do not fit.
    ///
    /// ```
    /// # use reckohm::number::Decimal;
    /// assert_eq!(Decimal::ONE.checked_add(Decimal::new(-5, -2)), Some(Decimal::new(95, -2)));
    /// assert_eq!(Decimal::new(1, 30).checked_add(Decimal::ONE), None);
    /// ```
    pub fn checked_add(self, other: Decimal) -> Option<Decimal> {
        let (a, b) = (self.normalised(), other.normalised());
        if a.digits == 0 {
            return Some(b);
        }
        if b.digits == 0 {
            return Some(a);
        }
        let exponent = a.exponent.min(b.exponent);
        Some(Decimal::new(a.digits_at(exponent)?.checked_add(b.digits_at(exponent)?)?, exponent))
    }

    /// The digits when the exponent is made to be `exponent`, if they are whole and fit.
    ///
    /// ```
    /// # use reckohm::number::Decimal;
    /// // How many steps of 0.001 kohm are 1.5 kohm?
    /// assert_eq!(Decimal::new(15, -1).digits_at(-3), Some(1500));
    /// assert_eq!(Decimal::new(15, -1).digits_at(0), None);
    /// ```
    pub fn digits_at(self, exponent: i32) -> Option<i64> {
        if self.digits == 0 {
            return Some(0);
        }
        let mut found = self;
        // 19 tenfold steps overflow any i64 or empty it: the loops are short whatever the exponents.
        while found.exponent > exponent {
            found = Decimal::new(found.digits.checked_mul(10)?, found.exponent.wrapping_sub(1));
        }
        while found.exponent < exponent {
            if found.digits % 10 != 0 {
                return None;
            }
            found = Decimal::new(found.digits / 10, found.exponent.wrapping_add(1));
        }
        Some(found.digits)
    }

    /// Whether this is less than zero.
    pub const fn is_negative(self) -> bool {
        self.digits < 0
    }

    /// Magnitudes by value: first the place of the leading digit, then 19 digits.
    fn compare_magnitude(self, other: Decimal) -> Ordering {
        let (a, b) = (self.digits.unsigned_abs(), other.digits.unsigned_abs());
        if a == 0 || b == 0 {
            return a.cmp(&b);
        }
        let (full_a, order_a) = nineteen_digits(a, self.exponent);
        let (full_b, order_b) = nineteen_digits(b, other.exponent);
        order_a.cmp(&order_b).then(full_a.cmp(&full_b))
    }
}

impl Ord for Decimal {
    fn cmp(&self, other: &Decimal) -> Ordering {
        self.digits.signum().cmp(&other.digits.signum()).then_with(|| {
            let order = self.compare_magnitude(*other);
            if self.digits < 0 { order.reverse() } else { order }
        })
    }
}

impl PartialOrd for Decimal {
    fn partial_cmp(&self, other: &Decimal) -> Option<Ordering> {
        Some(self.cmp(other))
    }
}

impl PartialEq for Decimal {
    fn eq(&self, other: &Decimal) -> bool {
        self.cmp(other) == Ordering::Equal
    }
}

impl Eq for Decimal {}

impl Hash for Decimal {
    fn hash<H: Hasher>(&self, state: &mut H) {
        let plain = self.normalised();
        // An exponent at its upper end keeps its zeros; the leading digits are the same either way.
        nineteen_digits(plain.digits.unsigned_abs(), plain.exponent).hash(state);
        plain.digits.signum().hash(state);
    }
}

/// A positive whole number as 19 digits, and the power of ten of its first digit. (0 gives 0 and 0, whatever the exponent.)
fn nineteen_digits(digits: u64, exponent: i32) -> (u64, i64) {
    let mut full = digits;
    let mut order = i64::from(exponent).wrapping_add(18);
    if full == 0 {
        return (0, 0);
    }
    while full < 1_000_000_000_000_000_000 {
        full = full.wrapping_mul(10);
        order = order.wrapping_sub(1);
    }
    (full, order)
}

/// `x * 10^scale` rounded to a whole number, right at least where a decimal of 15 digits rounds to `x`.
fn fifteen_digits(x: f64, mantissa: u64, exponent: i32, scale: i32) -> u64 {
    let power = POWERS_OF_TEN.get(scale.unsigned_abs() as usize);
    match power {
        // One rounding of a number below 2^50: off by 1/16 at most, after 1/8 at most from the decimal to `x`.
        Some(power) if scale >= 0 => (x * power + 0.5) as u64,
        Some(power) => (x / power + 0.5) as u64,
        None => {
            let exact = times_power_of_ten(Big::from_u64(mantissa), scale);
            // The result has 46 to 54 bits, so 10 to 18 are dropped; the last of them rounds.
            let drop = exact.exponent.wrapping_add(exponent).wrapping_neg() as u32;
            let last = exact.mantissa.wrapping_shr(drop.wrapping_sub(1));
            (last >> 1).wrapping_add(last & 1)
        }
    }
}

/// The `f64` where one multiplication or division of two exact numbers gives it.
fn exact_double(magnitude: u64, exponent: i32) -> Option<f64> {
    if magnitude > 1 << 53 {
        return None;
    }
    let power = POWERS_OF_TEN.get(exponent.unsigned_abs() as usize)?;
    let whole = magnitude as f64;
    Some(if exponent >= 0 { whole * power } else { whole / power })
}

/// The `f32` where one multiplication or division of two exact numbers gives it.
fn exact_single(magnitude: u64, exponent: i32) -> Option<f32> {
    if magnitude > 1 << 24 || exponent.unsigned_abs() > 10 {
        return None;
    }
    let power = *POWERS_OF_TEN.get(exponent.unsigned_abs() as usize)? as f32;
    let whole = magnitude as f32;
    Some(if exponent >= 0 { whole * power } else { whole / power })
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
