//! A number with twice the digits of its type: the sum of two of them, the second below the last digit of the first. For
//! sums and eliminations whose terms nearly cancel.
//!
//! Source: Dekker, A floating-point technique for extending the available precision, Numerische Mathematik 18 (1971), and
//! Knuth, The Art of Computer Programming 2, 4.2.2. Products are split by [`Real::upper_half`]; no fused multiply-add is
//! used, so the bits are the same everywhere. A few units of the last of its digits are lost in each operation. Numbers so
//! small that the lower part would be subnormal have less than all digits; an infinity ends as a NaN.

use core::ops::{Add, Div, Mul, Neg, Sub};

use super::scalar::Real;

/// The unevaluated sum of two numbers.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Pair<R> {
    upper: R,
    lower: R,
}

/// The sum and what its rounding lost.
#[inline(always)]
fn sum<R: Real>(a: R, b: R) -> Pair<R> {
    let upper = a + b;
    let of_b = upper - a;
    let of_a = upper - of_b;
    Pair { upper, lower: (a - of_a) + (b - of_b) }
}

/// The same where the first is the larger.
#[inline(always)]
fn sum_in_order<R: Real>(a: R, b: R) -> Pair<R> {
    let upper = a + b;
    Pair { upper, lower: b - (upper - a) }
}

/// The product and what its rounding lost.
#[inline(always)]
fn product<R: Real>(a: R, b: R) -> Pair<R> {
    let upper = a * b;
    let (a_upper, b_upper) = (a.upper_half(), b.upper_half());
    let (a_lower, b_lower) = (a - a_upper, b - b_upper);
    let lower = ((a_upper * b_upper - upper) + a_upper * b_lower + a_lower * b_upper) + a_lower * b_lower;
    Pair { upper, lower }
}

impl<R: Real> Pair<R> {
    pub(crate) const ZERO: Self = Pair { upper: R::ZERO, lower: R::ZERO };
    pub(crate) const ONE: Self = Pair { upper: R::ONE, lower: R::ZERO };

    /// A plain number, exactly.
    #[inline(always)]
    pub(crate) fn of(x: R) -> Self {
        Pair { upper: x, lower: R::ZERO }
    }

    /// The nearest plain number.
    #[inline(always)]
    pub(crate) fn value(self) -> R {
        self.upper
    }

    pub(crate) fn squared(self) -> Self {
        self * self
    }

    /// Square root of what is not negative.
    pub(crate) fn square_root(self) -> Self {
        let root = self.upper.square_root();
        if root == R::ZERO {
            return Pair::ZERO;
        }
        let rest = (self - product(root, root)).upper;
        sum_in_order(root, rest / (root + root))
    }
}

impl<R: Real> Neg for Pair<R> {
    type Output = Self;

    fn neg(self) -> Self {
        Pair { upper: -self.upper, lower: -self.lower }
    }
}

impl<R: Real> Add for Pair<R> {
    type Output = Self;

    fn add(self, other: Self) -> Self {
        let upper = sum(self.upper, other.upper);
        let lower = sum(self.lower, other.lower);
        let first = sum_in_order(upper.upper, upper.lower + lower.upper);
        sum_in_order(first.upper, first.lower + lower.lower)
    }
}

impl<R: Real> Sub for Pair<R> {
    type Output = Self;

    fn sub(self, other: Self) -> Self {
        self + -other
    }
}

impl<R: Real> Mul for Pair<R> {
    type Output = Self;

    fn mul(self, other: Self) -> Self {
        let leading = product(self.upper, other.upper);
        let cross = self.upper * other.lower + self.lower * other.upper;
        sum_in_order(leading.upper, leading.lower + cross)
    }
}

impl<R: Real> Div for Pair<R> {
    type Output = Self;

    /// Long division by three digits, each a plain number.
    fn div(self, other: Self) -> Self {
        let first = self.upper / other.upper;
        let rest = self - other * Pair::of(first);
        let second = rest.upper / other.upper;
        let rest = rest - other * Pair::of(second);
        let third = rest.upper / other.upper;
        sum_in_order(first, second) + Pair::of(third)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// What no plain number can tell: 1/3 times 3 is one to twice the digits, and √2 squared is 2.
    #[test]
    fn twice_the_digits_are_kept() {
        fn held<R: Real>() {
            let of = |x: f64| Pair::of(R::lit(x));
            let unit = (R::SPACING_AT_ONE * R::SPACING_AT_ONE).to_f64();
            let third = Pair::<R>::ONE / of(3.0);
            assert_ne!(third.lower, R::ZERO);
            for (found, exact) in [
                (third * of(3.0), of(1.0)),
                (of(2.0).square_root().squared(), of(2.0)),
                (of(7.0) / of(11.0) * of(11.0) / of(7.0), of(1.0)),
                ((third + of(1e4)) - of(1e4), third),
            ] {
                let missed = (found - exact).value().to_f64().abs();
                assert!(missed <= 8e4 * unit && found.value() == exact.value(), "{found:?} {exact:?}");
            }
            // The rounding of a product is all in the lower part.
            let x = R::lit(0.1);
            let square = product(x, x);
            let (upper, rest) = (x.upper_half(), x - x.upper_half());
            assert!(upper * rest != R::ZERO && square.lower != R::ZERO);
            assert_eq!(Pair::<R>::ZERO.square_root(), Pair::ZERO);
        }
        held::<f64>();
        held::<f32>();
    }

    /// Each operation against whole numbers of 128 bits, on numbers with all their digits.
    #[test]
    fn products_and_sums_are_those_of_whole_numbers() {
        let mut state = 0x9e37_79b9_7f4a_7c15_u64;
        for _ in 0..10_000 {
            let mut draw = || {
                state = state.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
                (state >> 12) as i64 - (1 << 51)
            };
            let (a, b) = (draw(), draw());
            let exact = i128::from(a) * i128::from(b);
            let found = Pair::of(a as f64) * Pair::of(b as f64);
            assert!((found.upper as i128 + found.lower as i128 - exact).abs() <= 1, "{a} {b}");
            let exact = exact + i128::from(a);
            let found = found + Pair::of(a as f64);
            assert!((found.upper as i128 + found.lower as i128 - exact).abs() <= 2, "{a} {b}");
        }
    }
}
