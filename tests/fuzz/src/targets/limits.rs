//! Tolerance limits against whole-number arithmetic of any size.

use num_bigint::BigInt;
use reckohm::number::Decimal;
use reckohm::verdict::{Limits, LimitsError};

use crate::accepted;
use crate::input::{Input, written};

/// Digits and power of ten of the shortest text that gives this double, if it has 15 digits at most.
fn digits(x: f64) -> Option<(BigInt, i32)> {
    let text = format!("{x:e}");
    let (mantissa, exponent) = text.split_once('e')?;
    let (whole, fraction) = mantissa.split_once('.').unwrap_or((mantissa, ""));
    let figures = format!("{whole}{fraction}");
    let exponent = exponent.parse::<i32>().ok()? - fraction.len() as i32;
    (x.is_normal() && figures.len() <= 15).then(|| (figures.parse().expect("digits"), exponent))
}

fn ten_to(power: i32) -> BigInt {
    BigInt::from(10).pow(u32::try_from(power).expect("not negative"))
}

/// Both exact limits rounded once, if no step of the way needs more than 63 bits.
fn exact(nominal: f64, tolerance: f64) -> Option<(f64, f64)> {
    let ((nominal, e), (tolerance, f)) = (digits(nominal)?, digits(tolerance)?);
    let limit = |factor: BigInt| {
        // Trailing zeros of 1 - t take no room.
        let (mut factor, mut f) = (factor, f);
        while &factor % 10 == BigInt::ZERO {
            (factor, f) = (factor / 10, f + 1);
        }
        let product = &nominal * &factor;
        (i64::try_from(&product).is_ok()).then(|| written(&format!("{product}e{}", e + f)))
    };
    // A tolerance that needs more than 18 places cannot be taken from 1 in 63 bits.
    let one = (f >= -18).then(|| ten_to(-f))?;
    let room = i64::try_from(&one).is_ok() && i64::try_from(&(&one + &tolerance)).is_ok();
    room.then_some(())?;
    Some((limit(&one - &tolerance)?, limit(one + tolerance)?))
}

fn check(nominal: f64, tolerance: f64, limits: Limits) {
    let (lower, upper) = (limits.lower_ohm(), limits.upper_ohm());
    assert!(0.0 <= lower && lower <= nominal && nominal <= upper && upper.is_finite());
    assert!(limits.contains(lower) && limits.contains(upper) && limits.contains(nominal));
    assert!(!limits.contains(upper.next_up()) && !limits.contains(lower.next_down()) && !limits.contains(f64::NAN));
    match exact(nominal, tolerance) {
        Some(expected) => assert_eq!((lower, upper), expected, "{nominal} {tolerance}"),
        None => {
            let half_width = nominal * tolerance;
            assert_eq!((lower, upper), (nominal - half_width, nominal + half_width), "{nominal} {tolerance}");
        }
    }
}

/// A nominal value and a tolerance, then two ends.
pub fn target(data: &[u8]) {
    let mut input = Input::new(data);
    let nominal = match input.below(4) {
        0 => input.number(),
        1 => {
            written(&format!("{}e{}", input.i64().unsigned_abs() % 1_000_000_000_000_000, input.below(16) as i32 - 15))
        }
        _ => input.decimal(-9..12),
    };
    let tolerance = match input.below(4) {
        0 => input.number(),
        1 => input.fraction(),
        _ => input.decimal(-9..-4),
    };
    if let Some(limits) = accepted!(LimitsError, Limits::from_tolerance(nominal, tolerance)) {
        check(nominal, tolerance, limits);
    } else {
        assert!(!(nominal > 0.0 && nominal <= 1e15 && tolerance > 0.0 && tolerance < 1.0));
    }

    let (lower, upper) = (input.number(), input.number());
    let legal = lower <= upper && lower < f64::INFINITY && upper > f64::NEG_INFINITY;
    let legal = legal && (lower.is_finite() || upper.is_finite());
    let made = accepted!(LimitsError, Limits::new(lower, upper));
    assert_eq!(made.is_some(), legal, "{lower} {upper}");
    assert_eq!(accepted!(LimitsError, Limits::at_most(upper)).is_some(), upper.is_finite());
    assert_eq!(accepted!(LimitsError, Limits::at_least(lower)).is_some(), lower.is_finite());
    let probe = input.number();
    assert!(made.is_none_or(|limits| limits.contains(probe) == (lower <= probe && probe <= upper)));
    // The only zero that is a decimal.
    assert_eq!(Decimal::shortest(0.0), Some(Decimal::ZERO));
}
