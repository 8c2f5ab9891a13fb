//! Polynomials whose coefficients are constants, by Horner's rule.

use super::scalar::Real;

/// A polynomial, its constant first.
///
/// It goes three terms at a time: where a compiler that looks for size leaves this a loop, as on a small processor, the loop
/// itself would cost more than the terms.
#[inline(always)]
pub(crate) fn polynomial<R: Real>(coefficients: &[R], x: R) -> R {
    let [sum] = polynomial_at_each(coefficients, [x]);
    sum
}

/// The same polynomial at several places, term by term in turn: each waits for its own last term only, which takes less than
/// a quarter of the time for four.
#[inline(always)]
pub(crate) fn polynomial_at_each<R: Real, const N: usize>(coefficients: &[R], x: [R; N]) -> [R; N] {
    let mut sums = [R::ZERO; N];
    let mut add = |coefficient: R| {
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
