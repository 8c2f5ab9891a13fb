//! What a formula needs of a number. A formula is written once, generic over [`Scalar`], and runs on `f32`, `f64` and
//! [`Dual`](super::Dual) alike.
//!
//! The names of the functions are ones that `f64` does not have itself: an inherent `ln` would win over the trait's
//! without a word, and with it another maths library.

use core::fmt::{Debug, Display};
use core::ops::{Add, AddAssign, Div, DivAssign, Mul, MulAssign, Neg, Sub, SubAssign};

use super::elementary;
use super::nearest::NearDecimal;

/// A number that a formula can be evaluated with.
///
/// ```
/// use reckohm::number::{Dual, Scalar};
///
/// fn parallel<S: Scalar>(a: S, b: S) -> S {
///     a * b / (a + b)
/// }
///
/// assert_eq!(parallel(300.0_f64, 600.0), 200.0);
/// assert_eq!(parallel(300.0_f32, 600.0), 200.0);
/// let with_slope = parallel(Dual::<f64, 1>::variable(300.0, 0), Dual::constant(600.0));
/// assert_eq!(with_slope.value(), 200.0);
/// assert!((with_slope.partials()[0] - 4.0 / 9.0).abs() < 1e-15);
/// ```
pub trait Scalar:
    Copy
    + Debug
    + Neg<Output = Self>
    + Add<Output = Self>
    + Sub<Output = Self>
    + Mul<Output = Self>
    + Div<Output = Self>
    + 'static
{
    /// The plain number underneath: `f32` or `f64`.
    type Real: Real;

    /// A plain number as this one, without partial derivatives.
    ///
    /// ```
    /// use reckohm::number::{Dual, Scalar};
    /// assert_eq!(<Dual<f64, 1> as Scalar>::of(4.7).value(), 4.7);
    /// ```
    fn of(x: Self::Real) -> Self;

    /// The plain result.
    fn value(self) -> Self::Real;

    /// A constant of the formula, rounded to the number in use.
    ///
    /// ```
    /// use reckohm::number::Scalar;
    /// assert_eq!(<f32 as Scalar>::lit(0.1), 0.1_f32);
    /// ```
    fn lit(c: f64) -> Self;

    /// Whether the plain value is less than the other's; false if either is NaN.
    ///
    /// ```
    /// use reckohm::number::Scalar;
    /// assert!(1.0.is_below(2.0) && !f64::NAN.is_below(2.0));
    /// ```
    #[inline(always)]
    fn is_below(self, other: Self) -> bool {
        self.value() < other.value()
    }

    /// The first if `yes`, else the second. Both have been computed: this is how a formula in pieces stays free of
    /// branches.
    ///
    /// ```
    /// use reckohm::number::Scalar;
    /// fn magnitude<S: Scalar>(x: S) -> S {
    ///     S::select(x.is_below(S::lit(0.0)), -x, x)
    /// }
    /// assert_eq!(magnitude(-4.7), 4.7);
    /// ```
    fn select(yes: bool, a: Self, b: Self) -> Self;

    /// Square root, exactly rounded.
    fn square_root(self) -> Self;

    /// Natural logarithm.
    fn natural_log(self) -> Self;

    /// Exponential.
    fn exponential(self) -> Self;
}

/// A plain number: `f32` or `f64`, and no other.
pub trait Real:
    Scalar<Real = Self>
    + PartialOrd
    + Display
    + Default
    + AddAssign
    + SubAssign
    + MulAssign
    + DivAssign
    + Send
    + Sync
    + NearDecimal
    + OnlyPlainNumbers
{
    /// The distance from 1 to the next larger number.
    const SPACING_AT_ONE: Self;
    /// Nought.
    const ZERO: Self;
    /// One.
    const ONE: Self;
    /// Positive infinity.
    const INFINITE: Self;
    /// The largest finite number.
    const LARGEST: Self;
    /// The smallest positive number with all its digits.
    const SMALLEST_NORMAL: Self;

    /// From double precision, rounded to nearest.
    ///
    /// ```
    /// use reckohm::number::Real;
    /// assert_eq!(<f32 as Real>::of_f64(0.1), 0.1_f32);
    /// ```
    fn of_f64(x: f64) -> Self;

    /// To double precision, exactly.
    fn to_f64(self) -> f64;

    /// A number of things, rounded to nearest.
    ///
    /// ```
    /// use reckohm::number::Real;
    /// assert_eq!(<f32 as Real>::of_count(16_777_217), 16_777_216.0);
    /// ```
    fn of_count(count: usize) -> Self;

    /// Its whole part, towards zero; beyond what an `i64` holds the nearest that it holds.
    ///
    /// ```
    /// use reckohm::number::Real;
    /// assert_eq!((2.75_f32.whole_part(), 1e30.whole_part()), (2, i64::MAX));
    /// ```
    fn whole_part(self) -> i64;

    /// Whether it has a minus, that of a negative zero included.
    ///
    /// ```
    /// use reckohm::number::Real;
    /// assert!((-0.0_f32).has_minus() && !0.0.has_minus());
    /// ```
    fn has_minus(self) -> bool;

    /// Neither infinite nor NaN.
    fn finite(self) -> bool;

    /// Its absolute value.
    fn magnitude(self) -> Self;

    /// The larger of the two; this one where they cannot be compared.
    ///
    /// ```
    /// use reckohm::number::Real;
    /// assert_eq!((1.0_f32.larger(2.0), 1.0_f32.smaller(2.0)), (2.0, 1.0));
    /// ```
    fn larger(self, other: Self) -> Self;

    /// The smaller of the two; this one where they cannot be compared.
    ///
    /// ```
    /// use reckohm::number::Real;
    /// assert_eq!(4.7_f32.smaller(10.0), 4.7);
    /// ```
    fn smaller(self, other: Self) -> Self;

    /// Its upper half: as many leading bits as make its square exact.
    ///
    /// ```
    /// use reckohm::number::Real;
    /// let (x, upper) = (0.1_f64, 0.1_f64.upper_half());
    /// assert!(x - upper < 1e-8 && upper * upper + (x - upper) * (x + upper) == x * x);
    /// ```
    fn upper_half(self) -> Self;

    /// ln(1 + x), to full relative accuracy near 0.
    ///
    /// ```
    /// use reckohm::number::Real;
    /// assert_eq!(1e-20_f64.log_of_one_more(), 1e-20);
    /// ```
    fn log_of_one_more(self) -> Self;

    /// exp(x) − 1, to full relative accuracy near 0.
    ///
    /// ```
    /// use reckohm::number::Real;
    /// assert_eq!(1e-20_f64.exponential_less_one(), 1e-20);
    /// ```
    fn exponential_less_one(self) -> Self;
}

/// Seals [`Real`], so that a formula may rely on what it knows of the two types.
pub trait OnlyPlainNumbers: super::normal::NormalSeries + super::quadrature::Nodes + super::student_t::HasEnds {}
impl OnlyPlainNumbers for f32 {}
impl OnlyPlainNumbers for f64 {}

/// The first in single precision, the second in double: where an end or a number of steps depends on the digits.
#[inline(always)]
pub(crate) fn by_type<R: Real>(single: f64, double: f64) -> R {
    R::lit(if size_of::<R>() == size_of::<f32>() { single } else { double })
}

macro_rules! real {
    ($real:ident, $sqrt:path, $ln:path, $exp:path, $log_1p:path, $exp_m1:path, $lower_half:literal) => {
        impl Scalar for $real {
            type Real = $real;

            #[inline(always)]
            fn of(x: $real) -> $real {
                x
            }

            #[inline(always)]
            fn value(self) -> $real {
                self
            }

            #[inline(always)]
            fn lit(c: f64) -> $real {
                c as $real
            }

            #[inline(always)]
            fn select(yes: bool, a: $real, b: $real) -> $real {
                if yes { a } else { b }
            }

            #[inline(always)]
            fn square_root(self) -> $real {
                $sqrt(self)
            }

            #[inline(always)]
            fn natural_log(self) -> $real {
                $ln(self)
            }

            #[inline(always)]
            fn exponential(self) -> $real {
                $exp(self)
            }
        }

        impl Real for $real {
            const SPACING_AT_ONE: $real = $real::EPSILON;
            const ZERO: $real = 0.0;
            const ONE: $real = 1.0;
            const INFINITE: $real = $real::INFINITY;
            const LARGEST: $real = $real::MAX;
            const SMALLEST_NORMAL: $real = $real::MIN_POSITIVE;

            #[inline(always)]
            fn of_f64(x: f64) -> $real {
                x as $real
            }

            #[inline(always)]
            fn to_f64(self) -> f64 {
                f64::from(self)
            }

            #[inline(always)]
            fn of_count(count: usize) -> $real {
                count as $real
            }

            #[inline(always)]
            fn whole_part(self) -> i64 {
                self as i64
            }

            #[inline(always)]
            fn has_minus(self) -> bool {
                self.is_sign_negative()
            }

            #[inline(always)]
            fn finite(self) -> bool {
                self.is_finite()
            }

            #[inline(always)]
            fn magnitude(self) -> $real {
                self.abs()
            }

            #[inline(always)]
            fn larger(self, other: $real) -> $real {
                if self < other { other } else { self }
            }

            #[inline(always)]
            fn smaller(self, other: $real) -> $real {
                if other < self { other } else { self }
            }

            #[inline(always)]
            fn upper_half(self) -> $real {
                $real::from_bits(self.to_bits() & !$lower_half)
            }

            #[inline(always)]
            fn log_of_one_more(self) -> $real {
                $log_1p(self)
            }

            #[inline(always)]
            fn exponential_less_one(self) -> $real {
                $exp_m1(self)
            }
        }
    };
}

real!(f64, elementary::sqrt, elementary::ln, elementary::exp, libm::log1p, libm::expm1, 0x07ff_ffff);
real!(f32, elementary::sqrt_f32, elementary::ln_f32, elementary::exp_f32, libm::log1pf, libm::expm1f, 0x0fff);
