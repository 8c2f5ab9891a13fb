//! Polynomials, by Horner's rule.

use super::scalar::Scalar;

/// A polynomial, its constant first.
///
/// It goes three terms at a time: where a compiler that looks for size leaves this a loop, as on a small processor, the loop
/// itself would cost more than the terms.
#[inline(always)]
pub(crate) fn polynomial<S: Scalar>(coefficients: &[S], x: S) -> S {
    let [sum] = polynomial_at_each(coefficients, [x]);
    sum
}

/// The same polynomial at several places, term by term in turn: each waits for its own last term only, which takes less than
/// a quarter of the time for four.
#[inline(always)]
pub(crate) fn polynomial_at_each<S: Scalar, const N: usize>(coefficients: &[S], x: [S; N]) -> [S; N] {
    let mut sums = [S::lit(0.0); N];
    let mut add = |coefficient: S| {
        for (sum, x) in sums.iter_mut().zip(x) {
            *sum = *sum * x + coefficient;
        }
    };
    let (threes, highest) = coefficients.as_chunks::<3>();
    for coefficient in highest.iter().rev() {
        add(*coefficient);
    }
    for [low, middle, high] in threes.iter().rev() {
        add(*high);
        add(*middle);
        add(*low);
    }
    sums
}
