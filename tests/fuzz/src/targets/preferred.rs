//! The search for preferred values against the whole table, all decades, by exact comparison.

use std::sync::OnceLock;

use num_bigint::BigInt;
use reckohm::preferred::{self, PreferredError, Series};

use crate::accepted;
use crate::input::{Input, written};

/// A preferred value: as written, and its floats.
#[derive(Clone, Copy)]
struct Value {
    digits: u32,
    exponent: i32,
    double: f64,
    single: f32,
}

/// Decades around every legal resistance, subnormal numbers included.
const ORDERS: core::ops::RangeInclusive<i32> = -327..=16;

fn table(series: Series) -> &'static [Value] {
    static TABLES: [OnceLock<Vec<Value>>; 7] = [const { OnceLock::new() }; 7];
    let place = Series::ALL.iter().position(|known| *known == series).expect("every series is listed");
    TABLES[place].get_or_init(|| {
        let shift = 1 - i32::from(series.figures());
        let decade = move |order: i32| preferred::decade(series).iter().map(move |digits| (*digits, order + shift));
        let values = ORDERS.flat_map(decade).map(|(digits, exponent)| {
            let text = format!("{digits}e{exponent}");
            let single = text.parse().expect("a number");
            Value { digits: digits.into(), exponent, double: written(&text), single }
        });
        let values: Vec<Value> = values.collect();
        // Halving it finds what looking at every value would.
        assert!(values.is_sorted_by(|a, b| a.double <= b.double && a.single <= b.single));
        values
    })
}

/// Half-way between two preferred values: digits and power of ten.
fn middle(lower: Value, upper: Value) -> (u32, i32) {
    let exponent = lower.exponent.min(upper.exponent);
    let at = |value: Value| value.digits * 10_u32.pow((value.exponent - exponent) as u32);
    ((at(lower) + at(upper)) * 5, exponent - 1)
}

/// Whether a positive finite double is less than digits·10^exponent, exactly.
fn is_less(x: f64, (digits, exponent): (u32, i32)) -> bool {
    let bits = x.to_bits();
    let (fraction, power) = (bits & ((1 << 52) - 1), (bits >> 52) as i32);
    let mantissa = if power == 0 { fraction } else { fraction | 1 << 52 };
    // Both sides times 10^330 and 2^1100.
    let x = BigInt::from(mantissa) << (power.max(1) - 1075 + 1100) as u32;
    let ten_to = |power: i32| BigInt::from(10).pow(power as u32);
    x * ten_to(330) < (BigInt::from(digits) * ten_to(exponent + 330)) << 1100_u32
}

struct Expected<F> {
    below: F,
    above: F,
    nearest: F,
}

/// `wide` is `x` as a double; a value half-way as written, which is the float of the middle, is a tie.
fn expected<F>(x: F, wide: f64, series: Series, of: impl Fn(&Value) -> F) -> Expected<F>
where
    F: Copy + PartialOrd + core::str::FromStr<Err: core::fmt::Debug>,
{
    let table = table(series);
    // Among subnormal numbers several values round to the same one; the highest of them counts.
    let last =
        table.partition_point(|value| of(value) <= x).checked_sub(1).expect("the table begins below every double");
    let (lower, upper) = (table[last], table[last + 1]);
    let below = of(&lower);
    let middle = middle(lower, upper);
    let tie = format!("{}e{}", middle.0, middle.1).parse::<F>().expect("a number") == x;
    Expected {
        below,
        above: if below == x { x } else { of(&upper) },
        nearest: if tie || is_less(wide, middle) { below } else { of(&upper) },
    }
}

fn double(ohm: f64, series: Series) {
    let found = accepted!(PreferredError, preferred::nearest(ohm, series));
    let Some(nearest) = found else {
        assert!(!(ohm > 0.0 && ohm <= 1e15));
        for refused in [preferred::below(ohm, series), preferred::above(ohm, series)] {
            assert!(accepted!(PreferredError, refused).is_none());
        }
        return;
    };
    let expected = expected(ohm, ohm, series, |value| value.double);
    assert_eq!(nearest, expected.nearest, "{ohm:e} in {series}");
    assert_eq!(preferred::neighbours(ohm, series), Ok((expected.below, expected.above)), "{ohm:e} in {series}");
    assert_eq!(preferred::below(ohm, series), Ok(expected.below));
    assert_eq!(preferred::above(ohm, series), Ok(expected.above));
    assert_eq!(preferred::contains(ohm, series), Ok(expected.below == ohm));
    let holds = |series: &Series| table(*series).binary_search_by(|value| value.double.total_cmp(&ohm)).is_ok();
    let coarsest = Series::ALL.into_iter().find(holds);
    assert_eq!(preferred::coarsest(ohm), Ok(coarsest), "{ohm:e}");
}

fn single(ohm: f32, series: Series) {
    let found = accepted!(PreferredError, preferred::nearest_f32(ohm, series));
    assert_eq!(found.is_some(), ohm > 0.0 && f64::from(ohm) <= 1e15);
    if found.is_none() {
        return;
    }
    let expected = expected(ohm, f64::from(ohm), series, |value| value.single);
    assert_eq!(preferred::neighbours_f32(ohm, series), Ok((expected.below, expected.above)), "{ohm:e} in {series}");
    assert_eq!(found, Some(expected.nearest), "{ohm:e} in {series}");
    assert_eq!(preferred::contains_f32(ohm, series), Ok(expected.below == ohm));
}

/// A series, a resistance, and the same as a float.
pub fn target(data: &[u8]) {
    let mut input = Input::new(data);
    let series = input.one_of(&Series::ALL);
    let ohm = match input.below(4) {
        0 => input.number(),
        1 => f64::from_bits(u64::from_le_bytes(input.bytes()) % (1e15_f64.to_bits() + 2)),
        2 => input.decimal(-12..13),
        _ => {
            // A value of the table, half-way to the next one, and the doubles beside them.
            let table = table(series);
            let place = usize::from(input.u16()) % (table.len() - 1);
            let (digits, exponent) = middle(table[place], table[place + 1]);
            let x = input.one_of(&[table[place].double, written(&format!("{digits}e{exponent}"))]);
            input.one_of(&[x, x.next_up(), x.next_down()])
        }
    };
    double(ohm, series);
    single(ohm as f32, series);
    let name = String::from_utf8_lossy(input.rest()).into_owned();
    let named = accepted!(PreferredError, Series::from_name(&name));
    assert_eq!(named.map(|series| series.name().to_owned()), named.map(|_| name.to_uppercase()));
}
