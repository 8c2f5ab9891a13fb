//! Squares that small numbers do not fall out of.

use crate::number::{Real, by_type};

/// 2^-400: the squares of smaller numbers begin to lose digits that count beside the largest.
const SMALL: f64 = f64::from_bits((1023 - 400) << 52);
const SMALL_F32: f64 = f64::from_bits((1023 - 40) << 52);
/// 2^600: lifts the smallest number there is to where its square is one.
const LIFT: f64 = f64::from_bits((1023 + 600) << 52);
const LIFT_F32: f64 = f64::from_bits((1023 + 100) << 52);

/// A power of two that lifts numbers of which `largest` is the largest so far that their squares are not lost below the
/// smallest number; 1 where that is not needed. What is too large to be squared gives an infinite sum, which is refused.
pub(crate) fn lift<R: Real>(largest: R) -> R {
    if largest < by_type(SMALL_F32, SMALL) { by_type(LIFT_F32, LIFT) } else { R::ONE }
}

/// Numbers from 0 on times their [`lift`], and the lift.
pub(super) fn lifted<R: Real, const N: usize>(numbers: [R; N]) -> ([R; N], R) {
    let lift = lift(numbers.into_iter().fold(R::ZERO, R::larger));
    (numbers.map(|x| x * lift), lift)
}
