//! Special functions and distributions against published-precision values (`checks/measure_special.csv`), and what must
//! hold of the special functions.

use std::collections::BTreeMap;

use proptest::prelude::*;
use reckohm::distribution::*;
use reckohm::number::Kind;
use reckohm::number::special::{beta_regularised, erf, erfc, ln_gamma};
use reckohm_tests::allowed;
use reckohm_tests::oracle::Worst;

/// The public function for a name of the file, and its result.
fn call(name: &str, given: &[f64]) -> (&'static str, f64) {
    match (name, given) {
        ("erf", [x]) => ("number.special.erf", erf(*x).unwrap()),
        ("erfc", [x]) => ("number.special.erfc", erfc(*x).unwrap()),
        ("ln_gamma", [x]) => ("number.special.ln_gamma", ln_gamma(*x).unwrap()),
        ("beta_regularised", [a, b, x]) => ("number.special.beta_regularised", beta_regularised(*a, *b, *x).unwrap()),
        ("normal_cdf", [z]) => ("distribution.normal_below", normal_below(*z).unwrap()),
        ("normal_sf", [z]) => ("distribution.normal_above", normal_above(*z).unwrap()),
        ("normal_quantile", [p]) => ("distribution.normal_quantile", normal_quantile(*p).unwrap()),
        ("normal_quantile_upper", [p]) => ("distribution.normal_quantile_above", normal_quantile_above(*p).unwrap()),
        ("t_cdf", [t, dof]) => ("distribution.t_below", t_below(*t, *dof).unwrap()),
        ("t_sf", [t, dof]) => ("distribution.t_above", t_above(*t, *dof).unwrap()),
        ("t_quantile", [p, dof]) => ("distribution.t_quantile", t_quantile(*p, *dof).unwrap()),
        ("t_quantile_upper", [p, dof]) => ("distribution.t_quantile_above", t_quantile_above(*p, *dof).unwrap()),
        _ => panic!("no function {name} of {} numbers", given.len()),
    }
}

/// Every row that concerns these functions. The arguments are exact doubles and the values belong to exactly those, so a
/// probability next to 1 or an argument next to a zero of the function needs no allowance of its own: the library takes
/// the distance from 1 or from the zero before it rounds anything. Only where the value itself is a subnormal double is
/// its spacing wider than a relative error can say; there one spacing is allowed.
#[test]
fn every_value_of_the_file_is_met_within_the_allowed_errors() {
    let text = include_str!("../checks/measure_special.csv");
    let mut reader = csv::ReaderBuilder::new().comment(Some(b'#')).from_reader(text.as_bytes());
    let mut worst = BTreeMap::<&str, Worst>::new();
    let mut rows = 0;
    let mut subnormal = Vec::new();
    for record in reader.records().map(Result::unwrap) {
        let given: Vec<f64> = record[1].split(';').map(|x| x.trim().parse().unwrap()).collect();
        let exact: f64 = record[2].parse().unwrap();
        let (function, result) = call(&record[0], &given);
        rows += 1;
        if exact != 0.0 && exact.abs() < f64::MIN_POSITIVE {
            assert!((result - exact).abs() <= 5e-324, "{record:?}: {result:e}");
            subnormal.push(record[0].to_owned() + " " + &record[1]);
            continue;
        }
        worst.entry(function).or_default().take(&record[1], result, exact);
    }
    println!("{subnormal:?} {worst:?}");
    assert_eq!(rows, RELEVANT);
    assert_eq!(subnormal, ["erfc 27"]);
    for (function, worst) in worst {
        // The distributions have their rows from a wider grid; here they may be better, not worse.
        if function.starts_with("distribution") {
            assert!(worst.relative <= allowed::row(function).bound, "{function}: {worst:?}");
        } else {
            allowed::hold(function, worst.relative);
        }
    }
}

/// Rows of the file.
const RELEVANT: usize = 220;

#[test]
fn illegal_arguments_are_refused() {
    for x in [f64::NAN, f64::INFINITY, f64::NEG_INFINITY] {
        assert_eq!(erf(x).unwrap_err().kind(), Kind::NotFinite);
        assert_eq!(erfc(x).unwrap_err().kind(), Kind::NotFinite);
        assert_eq!(ln_gamma(x).unwrap_err().kind(), Kind::NotFinite);
        assert_eq!(beta_regularised(x, 1.0, 0.5).unwrap_err().kind(), Kind::NotFinite);
        assert_eq!(beta_regularised(1.0, x, 0.5).unwrap_err().kind(), Kind::NotFinite);
        assert_eq!(beta_regularised(1.0, 1.0, x).unwrap_err().kind(), Kind::NotFinite);
    }
    assert_eq!(ln_gamma(0.0).unwrap_err().kind(), Kind::OutOfRange);
    assert_eq!(ln_gamma(2.6e305).unwrap_err().kind(), Kind::OutOfRange);
    assert!(ln_gamma(2.5e305).unwrap().is_finite());
    assert_eq!(beta_regularised(0.0, 1.0, 0.5).unwrap_err().kind(), Kind::OutOfRange);
    assert_eq!(beta_regularised(1.0, 1.1e9, 0.5).unwrap_err().kind(), Kind::OutOfRange);
    assert_eq!(beta_regularised(1.0, 1.0, 1.1).unwrap_err().kind(), Kind::OutOfRange);
}

#[test]
fn the_messages_say_what_is_allowed() {
    assert_eq!(
        ln_gamma(-1.0).unwrap_err().to_string(),
        "argument of the gamma function: -1 given, more than 0 to 2.5e305 allowed (our rule: beyond it the logarithm of \
         the gamma function is larger than any double); give a number above 0"
    );
    assert_eq!(
        beta_regularised(1.0, 0.0, 0.5).unwrap_err().to_string(),
        "parameter of the beta function: 0 given, more than 0 to 1000000000 allowed (our rule: as far as it was tried); \
         give a number above 0; for larger ones use the normal approximation"
    );
    assert_eq!(
        beta_regularised(1.0, 1.0, -0.5).unwrap_err().to_string(),
        "argument of the beta function: -0.5 given, 0 to 1 allowed (Abramowitz and Stegun 26.5); give a fraction from 0 to 1"
    );
}

/// The largest parameters: near the mean the distribution is normal, with a known skewness correction of order 1/√n.
#[test]
fn the_beta_function_keeps_to_the_normal_distribution_for_the_largest_parameters() {
    for n in [1e7, 1e9_f64] {
        let deviation = 0.5 / (2.0 * n + 1.0).sqrt();
        for z in [-3.0, -1.0, -0.1, 0.1, 1.0, 3.0] {
            let expected = normal_below(z).unwrap();
            let found = beta_regularised(n, n, 0.5 + z * deviation).unwrap();
            // Equal parameters: no skewness, the next term is of order z⁴/n.
            assert!((found / expected - 1.0).abs() < 200.0 / n, "{n} {z} {found} {expected}");
        }
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 1000, ..ProptestConfig::default() })]

    #[test]
    fn the_beta_function_mirrors_and_rises(a in 1e-3..1e4, b in 1e-3..1e4, n in 1_u32..1023) {
        // Multiples of 1/1024, so that 1 − x is exact.
        let x = f64::from(n) / 1024.0;
        let below = beta_regularised(a, b, x).unwrap();
        let mirrored = beta_regularised(b, a, 1.0 - x).unwrap();
        prop_assert!((below + mirrored - 1.0).abs() < 1e-12, "{} {}", below, mirrored);
        prop_assert!(beta_regularised(a, b, x + 1.0 / 1024.0).unwrap() >= below);
    }

    /// I_x(a, 1) = xᵃ.
    #[test]
    fn the_beta_function_meets_its_closed_form(a in 1e-2..200.0, x in 1e-3..0.999) {
        let exact = f64::powf(x, a);
        prop_assume!(exact > 1e-300);
        prop_assert!((beta_regularised(a, 1.0, x).unwrap() / exact - 1.0).abs() < 1e-12);
    }

    /// It is Student's tail with a = dof/2 and b = 1/2, worked out by another route.
    #[test]
    fn the_beta_function_agrees_with_the_tail_of_student_t(dof in 0.1..1e4, t in 0.01..30.0) {
        let x = dof / (dof + t * t);
        let tail = 0.5 * beta_regularised(dof / 2.0, 0.5, x).unwrap();
        let student = t_above(t, dof).unwrap();
        // The rounding of x alone moves the tail by dof/2 roundings, and 1 − x, which counts near the centre, by dof/t².
        prop_assert!((tail / student - 1.0).abs() < 1e-13 + 2.3e-16 * dof * (1.0 + 1.0 / (t * t)), "{} {}", tail, student);
    }

    #[test]
    fn error_functions_add_up(x in -6.0..6.0) {
        let (erf, erfc) = (erf(x).unwrap(), erfc(x).unwrap());
        prop_assert!((erf + erfc - 1.0).abs() < 3e-16);
    }

    #[test]
    fn the_gamma_function_steps_by_its_argument(x in 1e-3..1e6) {
        let step = ln_gamma(x + 1.0).unwrap() - ln_gamma(x).unwrap();
        prop_assert!((step - f64::ln(x)).abs() < 1e-15 * (1.0 + ln_gamma(x).unwrap().abs()) * 4.0 + 1e-12 * x.min(1e-3));
    }
}
