//! Comparison, sums and products of decimals against whole-number arithmetic of 128 bits.

use core::cmp::Ordering;
use core::hash::{Hash, Hasher};
use std::collections::HashSet;
use std::collections::hash_map::DefaultHasher;

use reckohm::number::Decimal;
use reckohm_tests::random::{Random, cases};

fn hash(decimal: Decimal) -> u64 {
    let mut hasher = DefaultHasher::new();
    decimal.hash(&mut hasher);
    hasher.finish()
}

/// The value times 10^15, exact for the exponents used here.
fn wide(decimal: Decimal) -> i128 {
    i128::from(decimal.digits) * 10_i128.pow((decimal.exponent + 15) as u32)
}

#[test]
fn order_sum_and_product_are_exact() {
    let mut random = Random::new(11);
    let tried = cases(400_000);
    let (mut equal, mut lost) = (0, 0);
    for _ in 0..tried {
        let mut draw = || {
            let digits = random.between(-999, 999) * random.one_of(&[1, 10, 100, 1_000_000, 1_000_000_000_000]);
            Decimal::new(digits, random.between(-15, 4) as i32)
        };
        let (a, mut b) = (draw(), draw());
        if random.below(100) == 0 && a.exponent > -15 {
            b = Decimal::new(a.digits * 10, a.exponent - 1);
        }
        let order = wide(a).cmp(&wide(b));
        assert_eq!(a.cmp(&b), order, "{a:?} {b:?}");
        assert_eq!(b.cmp(&a), order.reverse());
        assert_eq!(a == b, order == Ordering::Equal);
        if a == b {
            assert_eq!(hash(a), hash(b));
            equal += 1;
        }
        match a.checked_add(b) {
            Some(sum) => assert_eq!(wide(sum), wide(a) + wide(b), "{a:?} {b:?}"),
            None => lost += 1,
        }
        let product = a.checked_mul(b).expect("six digits fit, trailing zeros apart");
        assert_eq!(product.to_f64(), {
            let text = format!("{}e{}", i128::from(a.digits) * i128::from(b.digits), a.exponent + b.exponent);
            text.parse::<f64>().unwrap() + 0.0
        });
    }
    assert!(equal > tried / 4000, "equal values in different forms were met: {equal}");
    assert!(lost > 0, "some sums are too wide");
}

#[test]
fn far_exponents_compare_and_do_not_wrap() {
    let (tiny, huge) = (Decimal::new(9, i32::MIN), Decimal::new(1, i32::MAX));
    assert!(tiny < huge && Decimal::ZERO < tiny && Decimal::new(-9, i32::MIN) < Decimal::ZERO);
    assert!(Decimal::new(-1, i32::MAX) < tiny);
    assert_eq!(Decimal::new(0, i32::MAX), Decimal::new(0, i32::MIN));
    assert_eq!(hash(Decimal::new(0, 7)), hash(Decimal::ZERO));
    assert_eq!(tiny.checked_mul(tiny), None);
    assert_eq!(huge.checked_add(tiny), None);
    assert_eq!(huge.checked_add(Decimal::ZERO), Some(huge));
    assert_eq!(Decimal::ZERO.checked_add(tiny), Some(tiny));
    assert_eq!(huge.scaled(5).exponent, i32::MAX);
    assert_eq!(Decimal::new(10, i32::MAX).normalised().exponent, i32::MAX);
    assert_eq!(Decimal::new(10, i32::MAX).cmp(&huge), Ordering::Greater);
    assert_eq!(Decimal::new(i64::MIN, 0).checked_mul(Decimal::new(-1, 0)), None);
    assert_eq!(Decimal::new(i64::MIN, 0).checked_add(Decimal::new(-1, 0)), None);
    assert!(Decimal::new(i64::MIN, 0) < Decimal::new(i64::MIN + 1, 0));
    assert_eq!(huge.digits_at(i32::MIN), None);
    assert_eq!(tiny.digits_at(i32::MAX), None);
    assert_eq!(Decimal::new(5, 3).digits_at(1), Some(500));
    assert_eq!(Decimal::new(-500, 1).digits_at(3), Some(-5));
    assert_eq!(Decimal::new(i64::MAX, 3).digits_at(3), Some(i64::MAX));
}

#[test]
fn negative_is_what_is_less_than_zero() {
    let negative = [-1, 0, 1].map(|digits| Decimal::new(digits, 3).is_negative());
    assert_eq!(negative, [true, false, false]);
}

/// Equal numbers have to have one hash; others should not.
#[test]
fn different_numbers_hash_apart() {
    let hashes: HashSet<u64> = (-50..50).map(|n| hash(Decimal::new(n, 0))).collect();
    assert_eq!(hashes.len(), 100);
}

/// Every zero that an exponent has room for is left away, however many there are.
#[test]
fn no_trailing_zero_stays() {
    for zeros in 0..=18 {
        for room in 0..=20 {
            for digits in [1, 7, -9] {
                let plain = Decimal::new(digits * 10_i64.pow(zeros), i32::MAX - room).normalised();
                let stripped = zeros.min(room as u32);
                assert_eq!(plain.exponent, i32::MAX - room + stripped as i32);
                assert_eq!(plain.digits, digits * 10_i64.pow(zeros - stripped));
            }
        }
    }
}

/// n·(1 ± t) in binary misses the decimal limit in many cases; as decimals it never does.
#[test]
fn a_limit_is_rounded_once() {
    let mut missed = 0;
    for nominal in [10, 11, 12, 13, 15, 16, 18, 20, 22, 24, 27, 30, 33, 36, 39, 43, 47, 51, 56, 62, 68, 75, 82, 91] {
        for exponent in -1..=6 {
            for (digits, power) in [(1, -1), (5, -2), (2, -2), (1, -2), (5, -3), (25, -4), (1, -3)] {
                let (n, t) = (Decimal::new(nominal, exponent), Decimal::new(digits, power));
                let upper = n.checked_mul(Decimal::ONE.checked_add(t).unwrap()).unwrap();
                let whole = nominal * (10_i64.pow(-power as u32) + digits);
                let literal: f64 = format!("{whole}e{}", exponent + power).parse().unwrap();
                assert_eq!(upper.to_f64(), literal);
                missed += i32::from(n.to_f64() * (1.0 + t.to_f64()) != literal);
            }
        }
    }
    assert!(missed > 100, "binary arithmetic misses {missed} of 1344");
}
