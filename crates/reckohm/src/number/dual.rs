//! Dual numbers: a value together with its exact partial derivatives. The sensitivity coefficients of a budget and the
//! slopes of a sensor come from here; none is written by hand.

use core::ops::{Add, Div, Mul, Neg, Sub};

use super::scalar::{Real, Scalar};

/// A value with its partial derivatives by `N` variables. Its value is the plain result of the same formula, to the bit.
///
/// ```
/// use reckohm::number::{Dual, Scalar};
///
/// // The resistance 12 V / 3 mA, and how it moves with each of the two.
/// let voltage = Dual::<f64, 2>::variable(12.0, 0);
/// let current = Dual::<f64, 2>::variable(0.003, 1);
/// let resistance = voltage / current;
/// assert_eq!(resistance.value(), 12.0 / 0.003);
/// let [by_voltage, by_current] = resistance.partials();
/// assert!((by_voltage - 1.0 / 0.003).abs() < 1e-9);
/// assert!((by_current + 12.0 / 0.003 / 0.003).abs() < 1e-6);
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Dual<R, const N: usize> {
    value: R,
    partials: [R; N],
}

impl<R: Real, const N: usize> Dual<R, N> {
    /// The variable with this index, counted from 0. An index of `N` or more gives a constant.
    ///
    /// ```
    /// use reckohm::number::Dual;
    /// assert_eq!(Dual::<f64, 2>::variable(3.0, 1).partials(), [0.0, 1.0]);
    /// ```
    #[inline(always)]
    pub fn variable(value: R, index: usize) -> Self {
        let mut partials = [R::lit(0.0); N];
        for (place, partial) in partials.iter_mut().enumerate() {
            *partial = R::select(place == index, R::lit(1.0), R::lit(0.0));
        }
        Dual { value, partials }
    }

    /// Values that are the variables themselves, in this order.
    pub(crate) fn variables(values: [R; N]) -> [Self; N] {
        let mut index = 0_usize;
        values.map(|value| {
            let variable = Dual::variable(value, index);
            index = index.wrapping_add(1);
            variable
        })
    }

    /// A number that depends on no variable.
    ///
    /// ```
    /// use reckohm::number::Dual;
    /// assert_eq!(Dual::<f64, 2>::constant(3.0).partials(), [0.0, 0.0]);
    /// ```
    #[inline(always)]
    pub fn constant(value: R) -> Self {
        Dual { value, partials: [R::lit(0.0); N] }
    }

    /// A value whose partial derivatives are known already.
    ///
    /// ```
    /// use reckohm::number::Dual;
    /// let doubled = Dual::with_partials(3.0, [4.0]) + Dual::with_partials(3.0, [4.0]);
    /// assert_eq!((doubled.value(), doubled.partials()), (6.0, [8.0]));
    /// ```
    #[inline(always)]
    pub fn with_partials(value: R, partials: [R; N]) -> Self {
        Dual { value, partials }
    }

    /// The plain result.
    #[inline(always)]
    pub fn value(self) -> R {
        self.value
    }

    /// The partial derivatives, in the order of the variables.
    #[inline(always)]
    pub fn partials(self) -> [R; N] {
        self.partials
    }

    /// The chain rule for a function of one number: its value and its slope here.
    #[inline(always)]
    fn chain(self, value: R, slope: R) -> Self {
        Dual { value, partials: self.partials.map(|partial| partial * slope) }
    }

    /// The chain rule for a function of two numbers.
    #[inline(always)]
    fn join(self, other: Self, value: R, of_both: impl Fn(R, R) -> R) -> Self {
        let mut partials = self.partials;
        for (mine, theirs) in partials.iter_mut().zip(other.partials) {
            *mine = of_both(*mine, theirs);
        }
        Dual { value, partials }
    }
}

impl<R: Real, const N: usize> Neg for Dual<R, N> {
    type Output = Self;

    #[inline(always)]
    fn neg(self) -> Self {
        Dual { value: -self.value, partials: self.partials.map(|partial| -partial) }
    }
}

impl<R: Real, const N: usize> Add for Dual<R, N> {
    type Output = Self;

    #[inline(always)]
    fn add(self, other: Self) -> Self {
        self.join(other, self.value + other.value, |a, b| a + b)
    }
}

impl<R: Real, const N: usize> Sub for Dual<R, N> {
    type Output = Self;

    #[inline(always)]
    fn sub(self, other: Self) -> Self {
        self.join(other, self.value - other.value, |a, b| a - b)
    }
}

// The product rule, which the lint takes for a slip.
#[allow(clippy::suspicious_arithmetic_impl)]
impl<R: Real, const N: usize> Mul for Dual<R, N> {
    type Output = Self;

    #[inline(always)]
    fn mul(self, other: Self) -> Self {
        self.join(other, self.value * other.value, |a, b| a * other.value + self.value * b)
    }
}

// The quotient rule, which the lint takes for a slip.
#[allow(clippy::suspicious_arithmetic_impl)]
impl<R: Real, const N: usize> Div for Dual<R, N> {
    type Output = Self;

    #[inline(always)]
    fn div(self, other: Self) -> Self {
        let quotient = self.value / other.value;
        self.join(other, quotient, |a, b| (a - quotient * b) / other.value)
    }
}

impl<R: Real, const N: usize> Scalar for Dual<R, N> {
    type Real = R;

    #[inline(always)]
    fn of(x: R) -> Self {
        Dual::constant(x)
    }

    #[inline(always)]
    fn value(self) -> R {
        self.value
    }

    #[inline(always)]
    fn lit(c: f64) -> Self {
        Dual::constant(R::lit(c))
    }

    #[inline(always)]
    fn select(yes: bool, a: Self, b: Self) -> Self {
        a.join(b, R::select(yes, a.value, b.value), |a, b| R::select(yes, a, b))
    }

    #[inline(always)]
    fn square_root(self) -> Self {
        let root = self.value.square_root();
        self.chain(root, R::lit(0.5) / root)
    }

    #[inline(always)]
    fn natural_log(self) -> Self {
        self.chain(self.value.natural_log(), R::lit(1.0) / self.value)
    }

    #[inline(always)]
    fn exponential(self) -> Self {
        let power = self.value.exponential();
        self.chain(power, power)
    }
}
