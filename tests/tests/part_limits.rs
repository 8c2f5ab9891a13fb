//! Limits: what may be a pair of limits, and what every refusal says.

use proptest::prelude::*;
use reckohm::number::{Decimal, Detail, Kind};
use reckohm::verdict::{Limits, LimitsError};

#[track_caller]
fn refused(result: Result<Limits, LimitsError>, kind: Kind, text: &str) {
    let error = result.unwrap_err();
    assert_eq!(error.to_string(), text);
    assert_eq!(error.kind(), kind);
    let again = LimitsError::from_detail(&error.detail()).unwrap();
    assert_eq!(again.to_string(), text);
}

#[test]
fn ends_are_included_and_nan_is_never_within() {
    let limits = Limits::new(990.0, 1010.0).unwrap();
    assert!(limits.contains(990.0) && limits.contains(1010.0));
    assert!(!limits.contains(990.0_f64.next_down()) && !limits.contains(1010.0_f64.next_up()));
    assert!(!limits.contains(f64::NAN));
    assert_eq!((limits.lower_ohm(), limits.upper_ohm()), (990.0, 1010.0));
}

#[test]
fn one_end_may_be_open_and_both_may_coincide() {
    assert_eq!(Limits::at_most(2.0), Limits::new(f64::NEG_INFINITY, 2.0));
    assert_eq!(Limits::at_least(2.0), Limits::new(2.0, f64::INFINITY));
    assert!(Limits::at_most(2.0).unwrap().contains(-1.0e300));
    assert!(Limits::at_least(2.0).unwrap().contains(1.0e300));
    let only = Limits::new(5.0, 5.0).unwrap();
    assert!(only.contains(5.0) && !only.contains(5.0_f64.next_up()));
    assert!(Limits::new(-0.5, -0.1).unwrap().contains(-0.2));
}

#[test]
fn every_refusal_says_what_was_given_and_what_is_allowed() {
    let lower = "limits: NaN given as the lower limit in ohm, a finite number allowed, or minus infinity for none; \
                 a part that must be at least so large has an infinite upper limit";
    refused(Limits::new(f64::NAN, 1.0), Kind::NotFinite, lower);
    refused(Limits::at_least(f64::NAN), Kind::NotFinite, lower);
    refused(
        Limits::at_least(f64::INFINITY),
        Kind::NotFinite,
        "limits: inf given as the lower limit in ohm, a finite number allowed, or minus infinity for none; \
         a part that must be at least so large has an infinite upper limit",
    );
    refused(
        Limits::at_most(f64::NEG_INFINITY),
        Kind::NotFinite,
        "limits: -inf given as the upper limit in ohm, a finite number allowed, or infinity for none; \
         a part that must be at most so large has a lower limit of minus infinity",
    );
    refused(
        Limits::new(1.0, f64::NAN),
        Kind::NotFinite,
        "limits: NaN given as the upper limit in ohm, a finite number allowed, or infinity for none; \
         a part that must be at most so large has a lower limit of minus infinity",
    );
    refused(
        Limits::new(f64::NEG_INFINITY, f64::INFINITY),
        Kind::Empty,
        "limits: both ends open, at least one finite limit needed; with none there is nothing to judge",
    );
    refused(
        Limits::new(4935.0, 4465.0),
        Kind::Contradiction,
        "limits: lower limit 4935 ohm above upper limit 4465 ohm, the lower one first is needed; \
         look for two numbers changed over, or a missing kilo",
    );
    refused(
        Limits::from_tolerance(-1.0, 0.05),
        Kind::OutOfRange,
        "limits from a tolerance: resistance: -1 ohm given, more than 0 ohm to 1000000000000000 ohm allowed \
         (our rule: beyond it is insulation, not a resistance); give ohm, not kilohm; a short is stated by a limit, not by 0",
    );
    refused(
        Limits::from_tolerance(4700.0, 5.0),
        Kind::OutOfRange,
        "limits from a tolerance: tolerance: 5 given, more than 0 to less than 1 allowed (IEC 60062); \
         give a fraction, not percent: 5 % is 0.05",
    );
}

#[test]
fn limits_from_a_tolerance_are_exact_where_both_numbers_are_decimals() {
    // In floats 4.7 kohm less 5 % comes out right, 0.3 ohm more 10 % does not.
    assert_eq!(Limits::from_tolerance(4700.0, 0.05), Limits::new(4465.0, 4935.0));
    assert_eq!(Limits::from_tolerance(0.3, 0.1), Limits::new(0.27, 0.33));
    assert_ne!(0.3 + 0.3 * 0.1, 0.33);
    // 14 figures by 3 fit; 15 by 15 and a third do not, and are within two roundings of the exact limit.
    let wide = Limits::from_tolerance(12345678901234.0, 0.125).unwrap();
    assert_eq!((wide.lower_ohm(), wide.upper_ohm()), (10802469038579.75, 13888888763888.25));
    for (nominal, tolerance) in [(1.23456789012345, 0.123456789012345), (1.0 / 3.0, 0.05), (4700.0, 1.0 / 30.0)] {
        let limits = Limits::from_tolerance(nominal, tolerance).unwrap();
        for (limit, exact) in
            [(limits.lower_ohm(), nominal * (1.0 - tolerance)), (limits.upper_ohm(), nominal * (1.0 + tolerance))]
        {
            assert!(f64::abs(limit - exact) <= 3.0 * f64::EPSILON * nominal, "{limit} {exact}");
        }
    }
}

proptest! {
    #[test]
    fn a_decimal_tolerance_gives_the_decimal_limits(digits in 1_i64..10_000_000, exponent in -6_i32..=8, t in 1_i64..100_000) {
        let (nominal, tolerance) = (Decimal::new(digits, exponent).to_f64(), Decimal::new(t, -5).to_f64());
        prop_assume!(t < 100_000 && nominal <= 1.0e15);
        let limits = Limits::from_tolerance(nominal, tolerance).unwrap();
        prop_assert_eq!(limits.lower_ohm(), Decimal::new(digits * (100_000 - t), exponent - 5).to_f64());
        prop_assert_eq!(limits.upper_ohm(), Decimal::new(digits * (100_000 + t), exponent - 5).to_f64());
    }

    #[test]
    fn any_nominal_lies_within_its_limits(bits in 1_u64..=0x430c_6bf5_2634_0000, tolerance in f64::MIN_POSITIVE..0.999_999) {
        let nominal = f64::from_bits(bits);
        let limits = Limits::from_tolerance(nominal, tolerance).unwrap();
        prop_assert!(limits.contains(nominal) && limits.lower_ohm() >= 0.0);
    }
}

#[test]
fn a_detail_of_something_else_is_no_limits_error() {
    assert_eq!(LimitsError::from_detail(&Detail::new(Kind::WrongCount)), None);
    assert_eq!(LimitsError::from_detail(&Detail::new(Kind::OutOfRange)), None);
    assert_eq!(LimitsError::from_detail(&Detail::new(Kind::Empty)), None);
}
