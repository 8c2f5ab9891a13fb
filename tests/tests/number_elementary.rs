//! The elementary functions against exact values (`oracles/elementary.py`), single precision against double.

use reckohm::number::Scalar;
use reckohm::number::elementary::{exp, exp_f32, ln, ln_f32, sqrt, sqrt_f32};
use reckohm_tests::allowed;
use reckohm_tests::sweep::sweep;

const ORACLE: &str = include_str!("../checks/elementary_f64.tsv");

/// The error of a result in units in the last place of the exact one, which lies `remainder` units from `nearest`.
fn units(result: f64, nearest: f64, remainder: f64) -> f64 {
    let exponent = (((nearest.to_bits() >> 52) & 0x7ff) as i32).max(1) - 1075;
    // Both steps of the scaling are exact: the results are whole numbers of units.
    let scale = 2.0_f64.powi(-exponent / 2);
    let rest = 2.0_f64.powi(-exponent - -exponent / 2);
    ((result - nearest) * scale * rest - remainder).abs()
}

#[test]
fn double_precision_is_within_its_bound_of_exact_values() {
    let mut worst = [(0.0_f64, 0.0); 2];
    let mut count = [0; 2];
    for line in ORACLE.lines().skip(2) {
        let columns: Vec<&str> = line.split('\t').collect();
        let double = |text: &str| f64::from_bits(u64::from_str_radix(text, 16).unwrap());
        let (x, nearest) = (double(columns[1]), double(columns[2]));
        let (which, result) = if columns[0] == "ln" { (0, ln(x)) } else { (1, exp(x)) };
        let error = units(result, nearest, columns[3].parse().unwrap());
        count[which] += 1;
        if error > worst[which].0 || error.is_nan() {
            worst[which] = (error, x);
        }
    }
    println!("ln and exp, worst error and where: {worst:?}");
    assert!(count[0] > 5000 && count[1] > 5000, "{count:?}");
    allowed::hold("number.elementary.ln", worst[0].0);
    allowed::hold("number.elementary.exp", worst[1].0);
}

/// One argument in 1009 (a prime, so that every last digit takes its turn); `sweep_f32` tries them all.
#[test]
fn single_precision_is_within_its_bound_on_a_stride_of_all_arguments() {
    let [logarithm, exponential] = sweep(0..=u32::MAX, 1009);
    println!("{logarithm:?} {exponential:?}");
    assert!(logarithm.tried > 4_000_000);
    allowed::hold("number.elementary.ln_f32", logarithm.units);
    allowed::hold("number.elementary.exp_f32", exponential.units);
}

#[test]
fn special_values_come_out_as_they_should() {
    assert_eq!(ln(0.0), f64::NEG_INFINITY);
    assert_eq!(ln(-0.0), f64::NEG_INFINITY);
    assert_eq!(ln(f64::INFINITY), f64::INFINITY);
    assert_eq!(ln(1.0).to_bits(), 0.0_f64.to_bits());
    assert!(ln(-1.0).is_nan() && ln(f64::NEG_INFINITY).is_nan() && ln(-5e-324).is_nan() && ln(f64::NAN).is_nan());
    assert_eq!(ln_f32(0.0), f32::NEG_INFINITY);
    assert_eq!(ln_f32(f32::INFINITY), f32::INFINITY);
    assert_eq!(ln_f32(1.0).to_bits(), 0.0_f32.to_bits());
    assert!(ln_f32(-1.0).is_nan() && ln_f32(f32::NAN).is_nan());

    assert_eq!([exp(0.0), exp(-0.0), exp(f64::NEG_INFINITY), exp(-1e300)], [1.0, 1.0, 0.0, 0.0]);
    assert_eq!([exp(f64::INFINITY), exp(1e300), exp(709.782712893385)], [f64::INFINITY; 3]);
    assert!(exp(709.782712893384) > 1.797693e308 && exp(709.782712893384) < f64::INFINITY);
    assert_eq!([exp(-745.1332191019411), exp(-745.1332191019412), exp(-745.14)], [5e-324, 0.0, 0.0]);
    assert!(exp(f64::NAN).is_nan() && exp_f32(f32::NAN).is_nan());
    assert_eq!([exp_f32(0.0), exp_f32(f32::NEG_INFINITY), exp_f32(-104.0)], [1.0, 0.0, 0.0]);
    assert_eq!([exp_f32(f32::INFINITY), exp_f32(88.73)], [f32::INFINITY; 2]);
    assert_eq!(exp_f32(-103.9), f32::from_bits(1));
}

#[test]
fn the_square_root_is_exactly_rounded() {
    for x in [2.0, 3.0, 0.1, 5e-324, 2.2250738585072011e-308, 1.7976931348623157e308, 1e300, 7.0e-20] {
        assert_eq!(sqrt(x).to_bits(), libm::sqrt(x).to_bits(), "{x}");
        let single = x as f32;
        assert_eq!(sqrt_f32(single).to_bits(), libm::sqrtf(single).to_bits(), "{x}");
    }
    assert_eq!(sqrt(4.0), 2.0);
    assert_eq!(sqrt_f32(9.0), 3.0);
    assert!(sqrt(-1.0).is_nan());
}

#[test]
fn a_formula_reaches_the_same_functions() {
    for x in [0.3_f64, 2.0, 1234.5] {
        assert_eq!(Scalar::natural_log(x).to_bits(), ln(x).to_bits());
        assert_eq!(Scalar::exponential(x / 10.0).to_bits(), exp(x / 10.0).to_bits());
        assert_eq!(Scalar::square_root(x).to_bits(), sqrt(x).to_bits());
        assert_eq!(Scalar::natural_log(x as f32).to_bits(), ln_f32(x as f32).to_bits());
    }
}

/// A loop over the functions is compiled to vector instructions; its bits are those of the single calls.
#[test]
fn a_loop_has_the_bits_of_single_calls() {
    let arguments: Vec<f64> = (0..4099).map(|n| f64::from(n) * 0.173 + 1e-3).collect();
    let mut logarithms = vec![0.0; arguments.len()];
    for (out, x) in logarithms.iter_mut().zip(&arguments) {
        *out = ln(*x);
    }
    for (out, x) in logarithms.iter().zip(&arguments) {
        assert_eq!(out.to_bits(), std::hint::black_box(ln)(std::hint::black_box(*x)).to_bits(), "{x}");
    }
}
