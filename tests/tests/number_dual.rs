//! Dual numbers: their value is the plain result to the bit, their partial derivatives are the exact ones.

use proptest::prelude::*;
use reckohm::number::{DEGREES_OF_FREEDOM, Dual, FINITE, Real, Scalar, TOLERANCE};

/// Uses every operation, in two pieces chosen by a select.
fn formula<S: Scalar>([a, b, c]: [S; 3]) -> S {
    let hot = (a * b.natural_log() - c.exponential()) / (S::lit(1.0) + a.square_root());
    let cold = -(a - b) * c / b;
    S::select(a.is_below(b), cold, hot)
}

/// The partial derivatives of [`formula`], by hand.
fn slopes([a, b, c]: [f64; 3]) -> [f64; 3] {
    if a < b {
        return [-c / b, c * a / (b * b), -(a - b) / b];
    }
    let (root, power) = (a.sqrt(), c.exp());
    let below = 1.0 + root;
    [b.ln() / below - (a * b.ln() - power) / (below * below) * 0.5 / root, a / b / below, -power / below]
}

fn variables<R: Real>(x: [R; 3]) -> [Dual<R, 3>; 3] {
    let [a, b, c] = x;
    [Dual::variable(a, 0), Dual::variable(b, 1), Dual::variable(c, 2)]
}

proptest! {
    #[test]
    fn the_value_is_the_plain_result_to_the_bit(x in [0.1..20.0, 0.1..20.0, -3.0..3.0_f64]) {
        prop_assert_eq!(formula(variables(x)).value().to_bits(), formula(x).to_bits());
        let single = x.map(|x| x as f32);
        prop_assert_eq!(formula(variables(single)).value().to_bits(), formula(single).to_bits());
    }

    #[test]
    fn the_partials_are_the_exact_derivatives(x in [0.1..20.0, 0.1..20.0, -3.0..3.0_f64]) {
        for (found, exact) in formula(variables(x)).partials().iter().zip(slopes(x)) {
            prop_assert!((found - exact).abs() <= 1e-13 * (1.0 + exact.abs()), "{} {}", found, exact);
        }
    }

    /// A pass for each variable gives the same bits as one pass for all of them.
    #[test]
    fn one_pass_or_three_give_the_same_bits(x in [0.1..20.0, 0.1..20.0, -3.0..3.0_f64]) {
        let together = formula(variables(x)).partials();
        for (place, exact) in together.iter().enumerate() {
            let mut single = x.map(Dual::<f64, 1>::constant);
            single[place] = Dual::variable(x[place], 0);
            prop_assert_eq!(formula(single).partials()[0].to_bits(), exact.to_bits());
        }
    }
}

#[test]
fn constants_have_no_partials() {
    assert_eq!(Dual::<f64, 2>::constant(3.0).partials(), [0.0; 2]);
    assert_eq!(<Dual<f64, 2> as Scalar>::lit(0.1).value(), 0.1);
    assert_eq!(<Dual<f32, 2> as Scalar>::of(0.1).value(), 0.1_f32);
    assert_eq!(Dual::<f64, 2>::variable(3.0, 1).partials(), [0.0, 1.0]);
    // An index with no place is a constant, not a panic.
    assert_eq!(Dual::<f64, 2>::variable(3.0, 2).partials(), [0.0; 2]);
    assert_eq!(Dual::with_partials(3.0, [4.0]).partials(), [4.0]);
}

#[test]
fn the_plain_numbers_say_what_they_are() {
    assert_eq!(<f64 as Real>::SPACING_AT_ONE, f64::EPSILON);
    assert_eq!(<f32 as Real>::SPACING_AT_ONE, f32::EPSILON);
    assert_eq!(<f32 as Real>::of_f64(0.1), 0.1_f32);
    assert_eq!(0.1_f32.to_f64(), f64::from(0.1_f32));
    assert!(1.0.finite() && !f64::INFINITY.finite() && !f32::NAN.finite());
    assert_eq!((-2.5).magnitude(), 2.5);
    assert_eq!(((-2.5).larger(1.0), (-2.5).smaller(1.0), 1.0.larger(-2.5), 1.0.smaller(-2.5)), (1.0, -2.5, 1.0, -2.5));
    assert!(f64::NAN.larger(1.0).is_nan() && 1.0.smaller(f64::NAN) == 1.0);
    // Half of the bits each: the squares and the rest are exact.
    assert_eq!(f64::from_bits(0x3fff_ffff_ffff_ffff).upper_half().to_bits(), 0x3fff_ffff_f800_0000);
    assert_eq!(f32::from_bits(0x3fff_ffff).upper_half().to_bits(), 0x3fff_f000);
    assert_eq!((1e-30_f32.log_of_one_more(), 1e-30_f32.exponential_less_one()), (1e-30, 1e-30));
    assert!(1.0.is_below(2.0) && !2.0.is_below(1.0) && !1.0.is_below(1.0));
    assert!(!f64::NAN.is_below(1.0) && !1.0.is_below(f64::NAN));
}

#[test]
fn ends_of_a_range_are_rounded_to_the_type_and_stay_finite() {
    assert_eq!(FINITE.check(f32::MAX), Ok(f32::MAX));
    assert!(FINITE.check(f32::INFINITY).is_err() && FINITE.check(-f32::INFINITY).is_err());
    assert!(DEGREES_OF_FREEDOM.check(f32::INFINITY).is_ok());
    assert_eq!(TOLERANCE.check(1.5_f32).unwrap_err(), TOLERANCE.check(1.5).unwrap_err());
}
