//! Decimal numbers against whole numbers of any size, and their floats against the standard library's parser.

use core::cmp::Ordering;
use core::hash::{Hash, Hasher};
use std::collections::hash_map::DefaultHasher;

use num_bigint::BigInt;
use reckohm::number::Decimal;

use crate::input::Input;

fn draw(input: &mut Input<'_>) -> Decimal {
    let exponent = match input.below(8) {
        0 => input.one_of(&[i32::MIN, i32::MAX, i32::MIN + 1, i32::MAX - 1]),
        1 => i32::from(input.u16() as i16),
        _ => i32::from(input.byte() as i8) / 4,
    };
    Decimal::new(input.i64(), exponent)
}

/// Digits without trailing zeros, as far as the exponent goes, and their exponent.
fn plain(decimal: Decimal) -> (BigInt, i64) {
    let (mut digits, mut exponent) = (decimal.digits, i64::from(decimal.exponent));
    while digits != 0 && digits % 10 == 0 && exponent < i64::from(i32::MAX) {
        (digits, exponent) = (digits / 10, exponent + 1);
    }
    (BigInt::from(digits), if digits == 0 { 0 } else { exponent })
}

fn ten_to(power: i64) -> BigInt {
    BigInt::from(10).pow(u32::try_from(power).expect("not negative"))
}

/// The difference of exponents beyond which 19 digits cannot reach one another.
const FAR: i64 = 40;

fn compare(a: Decimal, b: Decimal) -> Ordering {
    let ((x, e), (y, f)) = (plain(a), plain(b));
    let least = e.min(f);
    if (e - f).abs() <= FAR {
        return (x * ten_to(e - least)).cmp(&(y * ten_to(f - least)));
    }
    if x.sign() != y.sign() {
        return x.sign().cmp(&y.sign());
    }
    let by_exponent = e.cmp(&f);
    if x < BigInt::ZERO { by_exponent.reverse() } else { by_exponent }
}

fn fits(digits: &BigInt) -> bool {
    i64::try_from(digits).is_ok()
}

fn hash(decimal: Decimal) -> u64 {
    let mut hasher = DefaultHasher::new();
    decimal.hash(&mut hasher);
    hasher.finish()
}

fn equals(decimal: Decimal, digits: BigInt, exponent: i64) -> bool {
    let (found, at) = plain(decimal);
    let least = at.min(exponent);
    found == BigInt::ZERO && digits == BigInt::ZERO || found * ten_to(at - least) == digits * ten_to(exponent - least)
}

fn add(a: Decimal, b: Decimal) {
    let ((x, e), (y, f)) = (plain(a), plain(b));
    let sum = a.checked_add(b);
    if x == BigInt::ZERO || y == BigInt::ZERO {
        assert_eq!(sum, Some(if x == BigInt::ZERO { b } else { a }));
        return;
    }
    let exponent = e.min(f);
    if (e - f).abs() > FAR {
        assert_eq!(sum, None);
        return;
    }
    let (x, y) = (x * ten_to(e - exponent), y * ten_to(f - exponent));
    let room = fits(&x) && fits(&y) && fits(&(&x + &y));
    assert_eq!(sum.is_some(), room, "{a:?} + {b:?}");
    assert!(sum.is_none_or(|sum| equals(sum, x + y, exponent)), "{a:?} + {b:?}");
}

fn multiply(a: Decimal, b: Decimal) {
    let product = a.checked_mul(b);
    let ((x, e), (y, f)) = (plain(a), plain(b));
    if let Some(product) = product {
        assert!(equals(product, x * y, e + f) || a.digits == 0 || b.digits == 0, "{a:?} * {b:?}");
        return;
    }
    assert!(!fits(&(x * y)) || i32::try_from(e + f).is_err(), "{a:?} * {b:?}");
}

fn floats(a: Decimal) {
    let text = format!("{}e{}", a.digits, a.exponent);
    // The sign of a zero is that of its digits, and a whole 0 has none.
    let expected: f64 = text.parse().expect("a number");
    assert_eq!(a.to_f64().to_bits(), expected.to_bits(), "{text}");
    let expected: f32 = text.parse().expect("a number");
    assert_eq!(a.to_f32().to_bits(), expected.to_bits(), "{text}");
}

fn shortest(x: f64) {
    // The standard library's shortest text that gives x again; it is the only one of 15 digits, if it has no more.
    let text = format!("{:e}", x + 0.0);
    let figures = text.bytes().take_while(|byte| *byte != b'e').filter(u8::is_ascii_digit).count();
    match Decimal::shortest(x) {
        Some(found) => {
            assert_eq!(found.to_f64(), x);
            assert_eq!(found.normalised().digits, found.digits);
            assert_eq!(format!("{:e}", found.to_f64()), text);
            assert!(found.digits.unsigned_abs() < 1_000_000_000_000_000);
        }
        None => assert!(!x.is_normal() && x != 0.0 || figures > 15, "{text}"),
    }
}

/// Two decimals, an exponent and a double.
pub fn target(data: &[u8]) {
    let mut input = Input::new(data);
    let a = draw(&mut input);
    let b = match input.below(8) {
        0 => a,
        1 => Decimal::new(a.digits.wrapping_add(1), a.exponent),
        2 => a.normalised(),
        _ => draw(&mut input),
    };
    let order = compare(a, b);
    assert_eq!((a.cmp(&b), b.cmp(&a), a == b), (order, order.reverse(), order.is_eq()), "{a:?} {b:?}");
    assert!(order.is_ne() || hash(a) == hash(b), "{a:?} {b:?}");
    assert_eq!(a.normalised(), a);
    assert_eq!(a.is_negative(), a < Decimal::ZERO);
    add(a, b);
    multiply(a, b);
    floats(a);

    let exponent = i32::from(input.byte() as i8) / 4;
    let whole = (i64::from(a.exponent) - i64::from(exponent)).abs() <= FAR;
    if let (Some(digits), true) = (a.digits_at(exponent), whole) {
        assert_eq!(Decimal::new(digits, exponent), a);
    } else if whole && a.digits != 0 {
        let (digits, at) = plain(a);
        let down = at >= i64::from(exponent);
        assert!(!down || !fits(&(digits * ten_to(at - i64::from(exponent)))), "{a:?} at {exponent}");
    }
    shortest(input.number());
}
