//! Error function, logarithm of the gamma function, regularised incomplete beta function: what the distributions are
//! made of, for whoever writes a formula of their own.

use super::elementary::{exp, ln, sqrt};
use super::polynomial::polynomial;
use super::{BETA_ARGUMENT, BETA_PARAMETER, DEVIATE, GAMMA_ARGUMENT, OutOfRange};

/// The error function, 2/√π times the integral of exp(−t²) from 0 to `x`.
///
/// Given: `x`, any finite number. Returned: −1 to 1.
///
/// # Errors
/// [`OutOfRange`] if `x` is infinite or NaN.
///
/// Source: Abramowitz and Stegun 7.1; computed by libm.
///
/// ```
/// use reckohm::number::special::erf;
/// assert!((erf(0.5)? - 0.520_499_877_813_046_5).abs() < 1e-15);
/// # Ok::<(), reckohm::number::OutOfRange>(())
/// ```
pub fn erf(x: f64) -> Result<f64, OutOfRange> {
    Ok(libm::erf(DEVIATE.check(x)?))
}

/// The complementary error function 1 − erf(`x`), to full relative accuracy in its tail.
///
/// Given: `x`, any finite number. Returned: 0 to 2; 0 where it is below the smallest double, from about 27.2 on.
///
/// # Errors
/// [`OutOfRange`] if `x` is infinite or NaN.
///
/// Source: Abramowitz and Stegun 7.1; computed by libm.
///
/// ```
/// use reckohm::number::special::erfc;
/// assert!((erfc(10.0)? / 2.088_487_583_762_545e-45 - 1.0).abs() < 1e-14);
/// # Ok::<(), reckohm::number::OutOfRange>(())
/// ```
pub fn erfc(x: f64) -> Result<f64, OutOfRange> {
    Ok(libm::erfc(DEVIATE.check(x)?))
}

/// The natural logarithm of the gamma function.
///
/// Given: `x`, more than 0, up to 2.5e305, beyond which the result is larger than any double.
///
/// # Errors
/// [`OutOfRange`] otherwise.
///
/// Source: Abramowitz and Stegun 6.1; computed by libm.
///
/// ```
/// use reckohm::number::special::ln_gamma;
/// assert!((ln_gamma(5.0)? - 24.0_f64.ln()).abs() < 1e-15);
/// # Ok::<(), reckohm::number::OutOfRange>(())
/// ```
pub fn ln_gamma(x: f64) -> Result<f64, OutOfRange> {
    Ok(libm::lgamma(GAMMA_ARGUMENT.check(x)?))
}

/// The regularised incomplete beta function I_x(a, b): the probability that a beta variable with parameters `a` and `b` is
/// below `x`.
///
/// Given: `a`, `b`, more than 0, up to 1e9; `x`, from 0 to 1. Returned: 0 to 1.
///
/// # Errors
/// [`OutOfRange`] otherwise.
///
/// Source: Abramowitz and Stegun 26.5; continued fraction of DiDonato and Morris, ACM Transactions on Mathematical Software
/// 18 (1992), formula 9.
///
/// ```
/// use reckohm::number::special::beta_regularised;
/// // With a = 2, b = 1 it is x².
/// assert!((beta_regularised(2.0, 1.0, 0.3)? - 0.09).abs() < 1e-16);
/// assert_eq!(beta_regularised(3.0, 3.0, 0.5)?, 0.5);
/// # Ok::<(), reckohm::number::OutOfRange>(())
/// ```
pub fn beta_regularised(a: f64, b: f64, x: f64) -> Result<f64, OutOfRange> {
    let (a, b, x) = (BETA_PARAMETER.check(a)?, BETA_PARAMETER.check(b)?, BETA_ARGUMENT.check(x)?);
    if x == 0.0 || x == 1.0 {
        return Ok(x);
    }
    let sides = Sides::new(a, b, x);
    // The fraction converges fast on the side of the mean where the smaller tail is.
    let result = if sides.excess <= 0.0 { sides.tail() } else { 1.0 - sides.swapped().tail() };
    // One half is exact by symmetry, whichever side rounding takes it to.
    Ok(if a == b && x == 0.5 { 0.5 } else { result.clamp(0.0, 1.0) })
}

/// The arguments of the beta function from one side.
#[derive(Clone, Copy)]
struct Sides {
    a: f64,
    b: f64,
    x: f64,
    y: f64,
    /// (a + b)·x − a, without the error of a rounded product: its sign tells the side of the mean.
    excess: f64,
}

impl Sides {
    fn new(a: f64, b: f64, x: f64) -> Sides {
        // a + b and its product with x to twice the precision (Dekker, Knuth), then the exact difference from a.
        let sum = a + b;
        let (larger, smaller) = if a > b { (a, b) } else { (b, a) };
        let lost = smaller - (sum - larger);
        let (product, rest) = exact_product(sum, x);
        Sides { a, b, x, y: 1.0 - x, excess: (product - a) + (rest + lost * x) }
    }

    fn swapped(self) -> Sides {
        Sides { a: self.b, b: self.a, x: self.y, y: self.x, excess: -self.excess }
    }

    /// I_x(a, b) for x at or below the mean: xᵃ·yᵇ/B(a, b) over the continued fraction.
    fn tail(self) -> f64 {
        self.front() / self.fraction()
    }

    /// β₀ + α₁/(β₁ + α₂/(β₂ + …)), by Lentz's method. The number of steps grows as the square root of the smaller of a
    /// and b and is bounded; with the largest parameters allowed the bound is not reached.
    fn fraction(self) -> f64 {
        let Sides { a, b, x, excess, .. } = self;
        let lead = 1.0 - excess;
        let step =
            |n: f64| n + n * (b - n) * x / (a + 2.0 * n - 1.0) + (a + n) / (a + 2.0 * n + 1.0) * (lead + n * (2.0 - x));
        let mut value = a / (a + 1.0) * lead;
        let mut upper = value;
        let mut lower = 0.0;
        let mut n = 1.0;
        while n < 2.0e5 {
            let divisor = a + 2.0 * n - 1.0;
            let numerator = ((a + n - 1.0) / divisor) * ((a + b + n - 1.0) / divisor) * n * (b - n) * x * x;
            let denominator = step(n);
            lower = 1.0 / nonzero(denominator + numerator * lower);
            upper = nonzero(denominator + numerator / upper);
            let factor = upper * lower;
            value *= factor;
            if (factor - 1.0).abs() < 1.0e-16 {
                break;
            }
            n += 1.0;
        }
        value
    }

    /// xᵃ·yᵇ/B(a, b). Gamma functions are taken apart by Stirling's formula, so that what is left in the exponent is the
    /// distance from the mean and no difference of large numbers.
    fn front(self) -> f64 {
        let Sides { a, b, x, y, excess } = self;
        let sum = a + b;
        let (mean, rest) = (a / sum, b / sum);
        let off = excess / sum;
        let exponent = a * ln_less_linear(off / mean, x, mean) + b * ln_less_linear(-off / rest, y, rest);
        let correction = stirling_rest(sum) - stirling_rest(a) - stirling_rest(b);
        sqrt(a / sum * b / (2.0 * core::f64::consts::PI)) * exp(exponent + correction)
    }
}

/// ln(1 + u) − u, where 1 + u = value/mean.
fn ln_less_linear(u: f64, value: f64, mean: f64) -> f64 {
    if u.abs() > 0.4 {
        return ln(value / mean) - u;
    }
    // 2·artanh(r) − u with r = u/(2 + u).
    let r = u / (2.0 + u);
    let square = r * r;
    let mut series = 0.0;
    let mut n = 27.0;
    while n > 2.0 {
        series = (series + 1.0 / n) * square;
        n -= 2.0;
    }
    r * (2.0 * series - u)
}

/// The rest of Stirling's formula: ln Γ(x) − (x − ½)·ln x + x − ln √(2π).
fn stirling_rest(x: f64) -> f64 {
    const LN_ROOT_TWO_PI: f64 = 0.918_938_533_204_672_741_780_330;
    if x < 12.0 {
        return libm::lgamma(x) - (x - 0.5) * ln(x) + x - LN_ROOT_TWO_PI;
    }
    let inverse = 1.0 / (x * x);
    polynomial(&STIRLING, inverse) / x
}

/// Coefficients of [`stirling_rest`] (Abramowitz and Stegun 6.1.41).
const STIRLING: [f64; 8] = [
    1.0 / 12.0,
    -1.0 / 360.0,
    1.0 / 1260.0,
    -1.0 / 1680.0,
    1.0 / 1188.0,
    -691.0 / 360_360.0,
    1.0 / 156.0,
    -3617.0 / 122_400.0,
];

/// Keeps a step of Lentz's method from a division by zero.
fn nonzero(x: f64) -> f64 {
    if x.abs() < 1.0e-300 { 1.0e-300 } else { x }
}

/// A product and what its rounding lost, for factors up to 1e290 (Dekker).
fn exact_product(a: f64, b: f64) -> (f64, f64) {
    const SPLITTER: f64 = 134_217_729.0;
    let split = |x: f64| {
        let scaled = SPLITTER * x;
        let upper = scaled - (scaled - x);
        (upper, x - upper)
    };
    let product = a * b;
    let ((a_upper, a_lower), (b_upper, b_lower)) = (split(a), split(b));
    let lost = ((a_upper * b_upper - product) + a_upper * b_lower + a_lower * b_upper) + a_lower * b_lower;
    (product, lost)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn two_to(exponent: i64) -> f64 {
        f64::from_bits(((1023 + exponent) << 52) as u64)
    }

    #[test]
    fn the_rest_of_stirlings_formula_has_all_its_digits() {
        // ln((n-1)!) less Stirling's formula, by an arbitrary precision program.
        for (n, rest) in [
            (12.0, 0.006_942_840_107_209_529_865_664),
            (13.0, 0.006_408_994_188_004_207_068_44),
            (20.0, 0.004_166_319_691_996_922_457_463),
            (40.0, 0.002_083_289_938_302_421_748_749),
        ] {
            let found = stirling_rest(n);
            assert!((found / rest - 1.0_f64).abs() <= 4e-16, "{n}: {found:e}");
        }
        // Below twelve by the gamma function: it has fewer digits.
        assert!((stirling_rest(11.999_999_999) - stirling_rest(12.0)).abs() < 1e-12);
    }

    #[test]
    fn a_product_and_what_it_lost_are_exact() {
        let (a, b) = (1.0 + two_to(-30), 1.0 - two_to(-31));
        assert_eq!(exact_product(a, b), (1.0 + two_to(-31), -two_to(-61)));
        assert_eq!(exact_product(3.0, -7.0), (-21.0, 0.0));
        // 0.1 * 0.1 less its rounding, times 2^110: whole numbers of 53 bits each.
        let (product, lost) = exact_product(0.1, 0.1);
        let whole = (0.1 * two_to(56)) as i128;
        assert_eq!(whole * whole, (product * two_to(112)) as i128 + (lost * two_to(112)) as i128);
    }

    #[test]
    fn what_is_nearly_nothing_is_no_divisor() {
        assert_eq!([0.0, -1e-301, 1e-300, -2.0].map(nonzero), [1e-300, 1e-300, 1e-300, -2.0]);
    }
}
