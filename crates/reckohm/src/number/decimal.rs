//! Decimal numbers that stay decimal: whole digits times a power of ten, compared exactly and rounded once.
//!
//! A marking "4K7", a display text "1.462" and a limit of 4700 ohm less 5 % are decimal. Computed in binary, 4.7 × 10^e
//! misses the nearest binary number of its decimal in one case of six; kept as digits and rounded at the end, never.

use core::cmp::Ordering;
use core::hash::{Hash, Hasher};

use super::nearest::NearDecimal;
use super::scalar::Real;

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
        f64::nearest(self)
    }

    /// The nearest `f32`, ties to the even one, rounded once; over- and underflow as in [`to_f64`](Decimal::to_f64).
    ///
    /// ```
    /// # use reckohm::number::Decimal;
    /// assert_eq!(Decimal::new(5, -2).to_f32(), 0.05_f32);
    /// ```
    pub fn to_f32(self) -> f32 {
        f32::nearest(self)
    }

    /// The nearest plain number of either type: [`to_f64`](Decimal::to_f64) or [`to_f32`](Decimal::to_f32).
    ///
    /// ```
    /// # use reckohm::number::Decimal;
    /// assert_eq!(Decimal::new(5, -2).to_real::<f32>(), 0.05_f32);
    /// ```
    pub fn to_real<R: Real>(self) -> R {
        R::nearest(self)
    }

    /// The decimal of at most 15 significant digits, or 6 for an `f32`, whose nearest plain number is exactly `x`, without
    /// trailing zeros; what was meant when someone wrote 0.05 or 4700 in a program. There is at most one, since so many
    /// digits survive the way through the number type. `None` if there is none, for NaN and infinities, and for subnormal
    /// numbers, where it would not be the only one.
    ///
    /// ```
    /// # use reckohm::number::Decimal;
    /// let five_percent = Decimal::shortest(0.05).unwrap();
    /// assert_eq!((five_percent.digits, five_percent.exponent), (5, -2));
    /// assert_eq!(Decimal::shortest(0.05_f32), Some(five_percent));
    /// let ohm = Decimal::shortest(4700.0).unwrap();
    /// assert_eq!((ohm.digits, ohm.exponent), (47, 2));
    /// assert_eq!(Decimal::shortest(1.0 / 3.0), None);
    /// ```
    pub fn shortest<R: Real>(x: R) -> Option<Decimal> {
        x.shortest_decimal()
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
        // As most steps and units of displays are.
        if self.digits.unsigned_abs() < 10 {
            return self;
        }
        let mut found = self;
        let mut even = self.digits.trailing_zeros();
        // Zeros go sixteen, eight, … at a time: after a binary search none is left. Few numbers are divided at all: one that ends in
        // so many zeros is that often even.
        for (zeros, power) in [(16, 10_i64.pow(16)), (8, 10_i64.pow(8)), (4, 10_i64.pow(4)), (2, 100), (1, 10)] {
            if even < zeros {
                continue;
            }
            // Checked, since not every compiler unrolls the loop and sees that no power is 0.
            let (quotient, exponent) = (found.digits.checked_div(power), found.exponent.checked_add_unsigned(zeros));
            if let (Some(digits), Some(exponent)) = (quotient, exponent)
                && digits.wrapping_mul(power) == found.digits
            {
                found = Decimal::new(digits, exponent);
                even = even.wrapping_sub(zeros);
            }
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
        if a == 0 || b == 0 || self.exponent == other.exponent {
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
pub(super) fn nineteen_digits(digits: u64, exponent: i32) -> (u64, i64) {
    let Some(order) = digits.checked_ilog10() else { return (0, 0) };
    let missing = 18_u32.saturating_sub(order);
    (digits.wrapping_mul(10_u64.wrapping_pow(missing)), i64::from(exponent).wrapping_add(18 - i64::from(missing)))
}
