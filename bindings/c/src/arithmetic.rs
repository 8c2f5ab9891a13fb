//! Whether the processor, as its program has set it up, computes as the results here need it.

use core::hint::black_box;

use crate::answer::{DoorError, Outcome, answer};
use crate::detail::{rko_detail, rko_status};

/// In a detail: numbers of double precision near zero are flushed to it.
pub const RKO_ARITHMETIC_FLUSHED: u16 = 1;
/// In a detail: numbers of single precision near zero are flushed to it.
pub const RKO_ARITHMETIC_FLUSHED_F32: u16 = 2;
/// In a detail: results of double precision are rounded other than to the nearest.
pub const RKO_ARITHMETIC_ROUNDED: u16 = 3;
/// In a detail: results of single precision are rounded other than to the nearest.
pub const RKO_ARITHMETIC_ROUNDED_F32: u16 = 4;
/// In a detail: a subtraction of double precision has a wrong last digit.
pub const RKO_ARITHMETIC_SUBTRACTED: u16 = 5;

/// Whether the arithmetic is as every result of this library needs it: IEEE 754, rounded to the nearest, numbers near zero kept.
/// A program that sets its processor up otherwise, or is linked with another double-precision arithmetic, gets other
/// digits, and is told so here. Ask once after the start, and on each thread that changes the rounding.
///
/// Given: nothing.
/// Statuses: `RKO_WRONG_ARITHMETIC`; the detail's `argument` is one of `RKO_ARITHMETIC_...`, `given` what came out and
/// `lower` what it has to be.
/// Source: IEEE 754-2019, 4.3.1 and 7.5.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rko_arithmetic_check(detail: *mut rko_detail) -> rko_status {
    // SAFETY: as the caller of this door promises.
    unsafe {
        answer(detail, || {
            flushed()?;
            rounded()?;
            // One library's subtraction for Cortex-M, which a linker prefers to the compiler's, gets this wrong.
            of_doubles(
                RKO_ARITHMETIC_SUBTRACTED,
                black_box(1.0) - black_box(f64::from_bits(0x3de3_4f2a_050c_605b)),
                f64::from_bits(0x3fef_ffff_ffec_b0d6),
            )
        })
    }
}

/// A result near zero, and an operand.
fn flushed() -> Outcome<()> {
    let (least, half) = (f64::from_bits(1), f64::MIN_POSITIVE / 2.0);
    of_doubles(RKO_ARITHMETIC_FLUSHED, black_box(f64::MIN_POSITIVE) * black_box(0.5), half)?;
    of_doubles(RKO_ARITHMETIC_FLUSHED, black_box(least) * black_box(9_007_199_254_740_992.0), f64::MIN_POSITIVE * 2.0)?;
    let (least, half) = (f32::from_bits(1), f32::MIN_POSITIVE / 2.0);
    of_floats(RKO_ARITHMETIC_FLUSHED_F32, black_box(f32::MIN_POSITIVE) * black_box(0.5), half)?;
    of_floats(RKO_ARITHMETIC_FLUSHED_F32, black_box(least) * black_box(16_777_216.0), f32::MIN_POSITIVE * 2.0)
}

/// A tie with an even number below it and one with an even number above it: no direction gets both right.
fn rounded() -> Outcome<()> {
    let (step, next) = (f64::EPSILON, 1.0 + f64::EPSILON);
    of_doubles(RKO_ARITHMETIC_ROUNDED, black_box(1.0) + black_box(step / 2.0), 1.0)?;
    of_doubles(RKO_ARITHMETIC_ROUNDED, black_box(next) + black_box(step / 2.0), next + step)?;
    let (step, next) = (f32::EPSILON, 1.0 + f32::EPSILON);
    of_floats(RKO_ARITHMETIC_ROUNDED_F32, black_box(1.0) + black_box(step / 2.0), 1.0)?;
    of_floats(RKO_ARITHMETIC_ROUNDED_F32, black_box(next) + black_box(step / 2.0), next + step)
}

/// By their bits: a comparison may take a number near zero for zero as well.
fn of_doubles(argument: u16, given: f64, expected: f64) -> Outcome<()> {
    if black_box(given).to_bits() == expected.to_bits() {
        return Ok(());
    }
    Err(DoorError::WrongArithmetic { argument, given, expected }.into())
}

fn of_floats(argument: u16, given: f32, expected: f32) -> Outcome<()> {
    if black_box(given).to_bits() == expected.to_bits() {
        return Ok(());
    }
    Err(DoorError::WrongArithmetic { argument, given: f64::from(given), expected: f64::from(expected) }.into())
}
