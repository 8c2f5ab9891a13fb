//! Decimals and texts of numbers against the standard library's own reading of the same text, on random and on hard cases:
//! ties, just above and just below ties, subnormal numbers, the largest, many digits.

use reckohm::number::{Decimal, parse_number, parse_number_f32};
use reckohm_tests::random::{Random, cases};

/// Our reading of a text, both number types, to the bit; where the standard library finds an infinity, an error.
fn assert_same(text: &str) {
    let (double, single) = (text.trim().parse::<f64>().unwrap(), text.trim().parse::<f32>().unwrap());
    match parse_number(text.as_bytes()) {
        Ok(found) => assert_eq!(found.to_bits(), double.to_bits(), "{text}"),
        Err(error) => assert!(double.is_infinite(), "{text}: {error}"),
    }
    match parse_number_f32(text.as_bytes()) {
        Ok(found) => assert_eq!(found.to_bits(), single.to_bits(), "f32 {text}"),
        Err(error) => assert!(single.is_infinite(), "f32 {text}: {error}"),
    }
}

fn assert_decimal(decimal: Decimal) {
    let text = format!("{}e{}", decimal.digits, decimal.exponent);
    let (double, single) = (text.parse::<f64>().unwrap(), text.parse::<f32>().unwrap());
    assert_eq!(decimal.to_f64().to_bits(), double.to_bits(), "{text}");
    assert_eq!(decimal.to_f32().to_bits(), single.to_bits(), "f32 {text}");
}

/// Decimal digits of a whole number, for exact expansions; least digit first.
struct Digits(Vec<u8>);

impl Digits {
    fn new(value: u64) -> Digits {
        Digits(value.to_string().bytes().rev().map(|b| b - b'0').collect())
    }

    fn times(&mut self, factor: u8) {
        let mut carry = 0_u32;
        for digit in &mut self.0 {
            carry += u32::from(*digit) * u32::from(factor);
            *digit = (carry % 10) as u8;
            carry /= 10;
        }
        while carry > 0 {
            self.0.push((carry % 10) as u8);
            carry /= 10;
        }
    }

    fn text(&self) -> String {
        self.0.iter().rev().map(|digit| char::from(digit + b'0')).collect()
    }
}

#[test]
fn random_decimals() {
    let mut random = Random::new(1);
    for _ in 0..cases(600_000) {
        let digits = random.bits() as i64 >> random.below(64);
        assert_decimal(Decimal::new(digits, random.between(-345, 330) as i32));
        assert_decimal(Decimal::new(digits, random.between(-25, 25) as i32));
        assert_decimal(Decimal::new(digits, random.between(-60, 40) as i32));
    }
}

#[test]
fn decimals_at_the_ends() {
    for digits in [0, 1, -1, 9, i64::MAX, i64::MIN, i64::MIN + 1, 1 << 53, (1 << 53) + 1, (1 << 24) + 1, 1 << 24] {
        for exponent in (-400..=400).chain([i32::MIN, i32::MIN + 1, i32::MAX, i32::MAX - 1, -100_000, 100_000]) {
            if (-400..=400).contains(&exponent) {
                assert_decimal(Decimal::new(digits, exponent));
                continue;
            }
            let (expected, sign) = (if exponent > 0 && digits != 0 { f64::INFINITY } else { 0.0 }, digits < 0);
            let found = Decimal::new(digits, exponent);
            assert_eq!(found.to_f64(), if sign { -expected } else { expected }, "{found:?}");
            assert_eq!(f64::from(found.to_f32()), if sign { -expected } else { expected }, "{found:?}");
        }
    }
}

#[test]
fn random_texts() {
    let mut random = Random::new(2);
    for _ in 0..cases(1_000_000) {
        let mut text = String::from(random.one_of(&["", "-", "+", " ", "\t-"]));
        let (whole, fraction) = (random.between(0, 24), random.between(0, 24));
        for _ in 0..whole {
            text.push(char::from(b'0' + random.below(10) as u8));
        }
        if fraction > 0 || whole == 0 {
            text.push('.');
        }
        for _ in 0..fraction.max(i64::from(whole == 0)) {
            text.push(char::from(b'0' + random.below(10) as u8));
        }
        if random.below(3) > 0 {
            let exponent = if random.below(2) == 0 { random.between(-350, 320) } else { random.between(-30, 30) };
            text.push_str(random.one_of(&["e", "E"]));
            text.push_str(&if random.below(2) == 0 { format!("{exponent:+04}") } else { exponent.to_string() });
        }
        text.push_str(random.one_of(&["", "\n", "\r\n", " "]));
        assert_same(&text);
    }
}

#[test]
fn every_double_reads_its_own_shortest_text_and_its_17_digits() {
    let mut random = Random::new(3);
    for _ in 0..cases(300_000) {
        let x = f64::from_bits(random.bits());
        if x.is_finite() {
            assert_eq!(parse_number(format!("{x:e}").as_bytes()).map(f64::to_bits), Ok(x.to_bits()));
            assert_eq!(parse_number(format!("{x:.16e}").as_bytes()).map(f64::to_bits), Ok(x.to_bits()));
            assert_same(&format!("{x:.16e}"));
            assert_same(&format!("{x:.100e}"));
        }
        let y = f32::from_bits(random.bits() as u32);
        if y.is_finite() {
            assert_eq!(parse_number_f32(format!("{y:e}").as_bytes()).map(f32::to_bits), Ok(y.to_bits()));
        }
    }
}

/// Exact ties between two neighbours, one unit of the last digit below, and a digit appended above.
#[test]
fn ties_with_many_digits() {
    let mut random = Random::new(4);
    let mut longest = 0;
    for _ in 0..cases(60_000) {
        let odd = (random.bits() >> 10) | (1 << 53) | 1;
        let power = random.between(-85, 120);
        let mut digits = Digits::new(odd);
        for _ in 0..power.unsigned_abs() {
            digits.times(if power < 0 { 5 } else { 2 });
        }
        let (tie, exponent) = (digits.text(), power.min(0));
        longest = longest.max(tie.len());
        assert_same(&format!("{tie}e{exponent}"));
        assert_same(&format!("{tie}1e{}", exponent - 1));
        if digits.0[0] > 0 {
            digits.0[0] -= 1;
            assert_same(&format!("{}9e{}", digits.text(), exponent - 1));
        }
    }
    assert!(longest > 70, "long texts were tried: {longest}");
    // The same for f32, whose ties are doubles.
    for _ in 0..cases(200_000) {
        let x = f32::from_bits(random.bits() as u32 & 0x7fff_ffff);
        let next = f32::from_bits(x.to_bits() + 1);
        if next.is_finite() {
            let tie = (f64::from(x) + f64::from(next)) / 2.0;
            assert_same(&format!("{tie:.110e}"));
            assert_same(&format!("{:.60e}", f64::from_bits(tie.to_bits() + 1)));
            assert_same(&format!("{:.60e}", f64::from_bits(tie.to_bits() - 1)));
        }
    }
}

#[test]
fn named_hard_cases() {
    for text in [
        "0",
        "-0",
        "0e999999999999",
        "-0.0E-99999",
        "1e-400",
        "1e400",
        "-1e400",
        "1e99999999999999999999",
        "1e-99999999999999999999",
        "4.9406564584124654e-324",
        "2.4703282292062327e-324",
        "2.4703282292062328e-324",
        "2.47032822920623272088e-324",
        "2.2250738585072014e-308",
        "2.2250738585072011e-308",
        "2.2250738585072012e-308",
        "2.225073858507201136057409796709131975934819546351645648e-308",
        "1.7976931348623157e308",
        "1.7976931348623158e308",
        "1.7976931348623159e308",
        "1.79769313486231580793e308",
        "179769313486231570e291",
        "3.4028235e38",
        "3.40282356e38",
        "3.4028235677973366e38",
        "3.4028235677973365e38",
        "1.401298464e-45",
        "7.006492321624085e-46",
        "7.006492321624086e-46",
        "9007199254740993",
        "9007199254740992.999999999999999999",
        "9007199254740993.00000000000000000000000001",
        "9007199254740995",
        "16777217",
        "16777217.0000000000000000001",
        "8388608.5",
        "8388609.5",
        "8.5e22",
        "1e22",
        "1e23",
        "9.5e21",
        "123456789012345678e5",
        "9.9e37",
        "9.91e37",
        "9.900000302096328e37",
        "000000000000000000000000001.5",
        ".000000000000000000000000000000000000000001e42",
        "89255.0e-22",
        "104110013277974872254e-225",
        "6.9294956446009195e15",
        "1448997445238699",
        "0.500000000000000166533453693773481063544750213623046875",
        "3.518437208883201171875e13",
        "62.5364939768271845828",
        "8.10109172351e-10",
        "1.50000000000000011102230246251565",
    ] {
        assert_same(text);
    }
    let longest = format!("0.{}1", "0".repeat(125));
    assert_eq!(longest.len(), 128);
    assert_same(&longest);
    assert_same(&format!("{}e200", "9".repeat(124)));
    assert_same(&format!("{}e-440", "7".repeat(123)));
    assert_same(&format!("{}.e-451", "7".repeat(122)));
}

#[test]
fn the_shortest_decimal_is_found_and_is_the_only_one() {
    let mut random = Random::new(5);
    for _ in 0..cases(400_000) {
        let size = random.between(1, 15);
        let digits = random.between(1, 10_i64.pow(size as u32) - 1) * random.one_of(&[1, -1]);
        for exponent in [random.between(-307, 293), random.between(-20, 20)] {
            let decimal = Decimal::new(digits, exponent as i32);
            if !decimal.to_f64().is_normal() {
                continue;
            }
            let found = Decimal::shortest(decimal.to_f64()).unwrap_or_else(|| panic!("{decimal:?}"));
            assert_eq!(found, decimal);
            let plain = decimal.normalised();
            assert_eq!((found.digits, found.exponent), (plain.digits, plain.exponent));
        }
        // What the standard library prints as the shortest text decides whether there is one.
        let x = f64::from_bits(random.bits());
        if x.is_normal() {
            let digits = format!("{x:e}").split('e').next().unwrap().bytes().filter(u8::is_ascii_digit).count();
            assert_eq!(Decimal::shortest(x).is_some(), digits <= 15, "{x:e}");
        }
    }
    for power in -307..=308 {
        let x: f64 = format!("1e{power}").parse().unwrap();
        assert_eq!(Decimal::shortest(x), Some(Decimal::new(1, power)));
        assert_eq!(Decimal::shortest(f64::from_bits(x.to_bits() + 1)), None);
        let nines: f64 = format!("9.99999999999999e{power}").parse().unwrap();
        if nines.is_finite() {
            assert_eq!(Decimal::shortest(nines), Some(Decimal::new(999_999_999_999_999, power - 14)));
        }
    }
    assert_eq!(Decimal::shortest(0.0), Some(Decimal::ZERO));
    for none in [f64::NAN, f64::INFINITY, f64::NEG_INFINITY, 5e-324, 1e-310, f64::MAX, f64::MIN_POSITIVE, 0.1 + 0.2] {
        assert_eq!(Decimal::shortest(none), None, "{none:e}");
    }
}

/// Every decimal of six digits at one power of ten, every 97th at all others.
#[test]
fn the_shortest_decimal_of_every_single_precision_number_that_has_one() {
    let stride = (900_000 / cases(900_000)) as usize;
    for power in -43..=33_i32 {
        for digits in (100_000..1_000_000_i64).step_by(stride) {
            if power != 0 && (digits + i64::from(power)) % 97 != 0 {
                continue;
            }
            let decimal = Decimal::new(digits, power);
            let x: f32 = decimal.to_real();
            if !x.is_normal() {
                continue;
            }
            let found = Decimal::shortest(x).unwrap_or_else(|| panic!("{decimal:?}"));
            assert_eq!(found, decimal);
            assert!(found.digits % 10 != 0);
        }
    }
}

/// The standard library's shortest text decides whether there is one, and which; the sign changes nothing.
#[test]
fn the_shortest_decimal_of_a_single_precision_number_is_its_shortest_text() {
    let mut random = Random::new(6);
    let mut found = 0_u32;
    let mut assert_shortest = |x: f32| {
        let text = format!("{x:e}");
        let digits = text.split('e').next().unwrap().bytes().filter(u8::is_ascii_digit).count();
        let shortest = Decimal::shortest(x);
        assert_eq!(shortest.is_some(), digits <= 6, "{x:e}");
        if let Some(decimal) = shortest {
            found += 1;
            assert_eq!(
                format!("{}e{}", decimal.digits, decimal.exponent).parse::<f32>().unwrap().to_bits(),
                x.to_bits()
            );
            assert_eq!(Decimal::shortest(-x), Some(Decimal::new(-decimal.digits, decimal.exponent)));
        }
    };
    let tried = cases(200_000);
    for _ in 0..tried {
        let x = f32::from_bits(random.bits() as u32);
        if x.is_normal() {
            assert_shortest(x);
        }
        // Numbers near a decimal, and beside it.
        let decimal = Decimal::new(random.between(1, 9_999_999), random.between(-44, 32) as i32);
        for x in [decimal.to_f32().next_down(), decimal.to_f32(), decimal.to_f32().next_up()] {
            if x.is_normal() {
                assert_shortest(x);
            }
        }
    }
    assert!(found > tried / 4, "{found}");
    assert_eq!(Decimal::shortest(0.0_f32), Some(Decimal::ZERO));
    for none in [f32::NAN, f32::INFINITY, 1e-45, 1e-39, f32::MAX, f32::MIN_POSITIVE, 1.0_f32 / 3.0] {
        assert_eq!(Decimal::shortest(none), None, "{none:e}");
    }
}
