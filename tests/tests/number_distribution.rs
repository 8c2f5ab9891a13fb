//! The distributions against exact values (`oracles/distribution.py`), the vectors that all doors share, the printed
//! table of Student's t, and what must hold between the functions.

use proptest::prelude::*;
use reckohm::distribution::*;
use reckohm_tests::vectors::{self, Outcome, Row, single};
use reckohm_tests::{allowed, oracle};

/// The result of a function of this area by its name, `None` for another name.
fn call(function: &str, given: &[f64]) -> Option<Result<f64, DistributionError>> {
    Some(match (function, given) {
        ("normal_below", [z]) => normal_below(*z),
        ("normal_above", [z]) => normal_above(*z),
        ("normal_quantile", [p]) => normal_quantile(*p),
        ("normal_quantile_above", [p]) => normal_quantile_above(*p),
        ("t_below", [t, dof]) => t_below(*t, *dof),
        ("t_above", [t, dof]) => t_above(*t, *dof),
        ("t_quantile", [p, dof]) => t_quantile(*p, *dof),
        ("t_quantile_above", [p, dof]) => t_quantile_above(*p, *dof),
        _ => return None,
    })
}

#[test]
fn the_shared_vectors_hold() {
    let run = |row: &Row| -> Option<Outcome> {
        let result = call(row.function.strip_prefix("distribution.")?, &row.numbers_from(0))?;
        Some(single(result, DistributionError::kind))
    };
    let rows = vectors::run("distribution.tsv", |_| 1e-12, run);
    assert!(rows >= 500, "{rows}");
}

/// Probabilities from 1e-300 to one half and the other side of it, degrees of freedom from 0.1 to 1e12 and infinite.
#[test]
fn the_grid_of_exact_values_is_met_within_the_allowed_errors() {
    let worst = oracle::worst(include_str!("../checks/distribution_grid.tsv"), |function, given| {
        call(function, given).expect("a function of this area").expect("a legal argument")
    });
    println!("{worst:?}");
    assert_eq!(worst.len(), 8);
    for (function, found) in worst {
        assert!(found.tried >= 15, "{function}: {found:?}");
        allowed::hold(&format!("distribution.{function}"), found.relative);
    }
}

/// JCGM 100 table G.2 (NIST TN 1297 table B.1): every printed digit, two-sided. 68.27 %, 95.45 % and 99.73 % stand for one,
/// two and three standard deviations of the normal distribution.
#[test]
fn the_printed_table_of_student_t_is_met_but_for_one_misprint() {
    let text = include_str!("../checks/measure_gum_t_table.csv");
    let mut reader = csv::ReaderBuilder::new().comment(Some(b'#')).from_reader(text.as_bytes());
    let mut count = 0;
    let mut differing = Vec::new();
    for record in reader.records().map(Result::unwrap) {
        let dof: f64 = record[0].parse().unwrap();
        let beyond = match &record[1] {
            "68.27" => 2.0 * normal_above(1.0).unwrap(),
            "95.45" => 2.0 * normal_above(2.0).unwrap(),
            "99.73" => 2.0 * normal_above(3.0).unwrap(),
            percent => 1.0 - percent.parse::<f64>().unwrap() / 100.0,
        };
        let t = t_quantile_above(beyond / 2.0, dof).unwrap();
        let (printed, computed): (f64, f64) = (record[2].parse().unwrap(), record[3].parse().unwrap());
        // The tail of 99.73 % is not 1 - 0.9973 to ten digits, and the column may have been worked out from either.
        let exact = t_quantile_above(0.5 * (1.0 - record[1].parse::<f64>().unwrap() / 100.0), dof).unwrap();
        assert!((t / computed - 1.0).abs() < 1e-9 || (exact / computed - 1.0).abs() < 1e-9, "{record:?} {t} {exact}");
        let decimals = record[2].split('.').nth(1).map_or(0, str::len);
        if format!("{t:.decimals$}") != format!("{printed:.decimals$}") {
            differing.push((dof, record[1].to_owned(), printed, t));
        }
        count += 1;
    }
    assert_eq!(count, 168);
    // Printed 1.70 where 1.6896 rounds to 1.69: a misprint of the table.
    assert_eq!(differing.len(), 1, "{differing:?}");
    let (dof, percent, printed, t) = &differing[0];
    assert_eq!((*dof, percent.as_str(), *printed), (35.0, "90", 1.70));
    assert!((t - 1.6896).abs() < 5e-5);
}

#[test]
fn one_and_two_degrees_of_freedom_have_closed_forms() {
    for t in [1e-12, 1e-3, 0.3, 1.0, 1.7, 1.8, 5.0, 1e3, 1e8, 1e150, 1e200, 1e300] {
        let tail = (1.0_f64 / t).atan() / std::f64::consts::PI;
        assert!((t_above(t, 1.0).unwrap() / tail - 1.0).abs() < 2e-13, "{t}");
        // Two: 1/2·(1 − t/√(2 + t²)) = 1/(√(2 + t²)·(√(2 + t²) + t)).
        let root = 2.0_f64.sqrt().hypot(t);
        let tail = if t < 1e150 { 1.0 / (root * (root + t)) } else { 0.5 / root / root };
        let found = t_above(t, 2.0).unwrap();
        assert!((found / tail - 1.0).abs() < 2e-13 || found < 1e-300 && tail < 1e-300, "{t} {found:e} {tail:e}");
    }
}

#[test]
fn many_degrees_of_freedom_pass_into_the_normal_distribution() {
    for z in [0.0, 0.5, 1.7, 1.8, 4.0, 12.0, 30.0] {
        let normal = normal_above(z).unwrap();
        assert_eq!(t_above(z, f64::INFINITY).unwrap(), normal);
        for dof in [1e20, 0.9e24, 1e24, 1e30, 1e300, f64::MAX] {
            assert!((t_above(z, dof).unwrap() / normal - 1.0).abs() < 3e-13, "{z} {dof:e}");
        }
    }
}

#[test]
fn the_tail_ends_where_the_doubles_end() {
    assert_eq!(normal_above(40.0).unwrap(), 0.0);
    assert_eq!(normal_above(1e308).unwrap(), 0.0);
    assert_eq!(normal_below(40.0).unwrap(), 1.0);
    let smallest = normal_quantile_above(5e-324).unwrap();
    assert!((smallest - 38.4674).abs() < 1e-4, "{smallest}");
    // A quantile of a fraction of a degree of freedom just within, and just beyond, the largest double.
    let tail = t_above(f64::MAX, 0.1).unwrap();
    assert!(t_quantile_above(tail * 1.0001, 0.1).unwrap() > 1e307);
    // With so heavy tails the largest probability is well below one.
    let detail = t_quantile(1e-4, 0.01).unwrap_err().detail();
    assert_eq!((detail.given, detail.lower + detail.upper), (1e-4, 1.0));
    assert!(t_quantile(detail.upper - 1e-6, 0.01).is_ok() && t_quantile(detail.upper + 1e-6, 0.01).is_err());
    let error = t_quantile_above(tail * 0.9999, 0.1).unwrap_err();
    assert!(matches!(error, DistributionError::Beyond(BeyondReach { lower, .. }) if lower == tail), "{error:?}");
    assert!(t_above(f64::MAX, 5e-324).unwrap() <= 0.5);
    assert_eq!(t_above(f64::MIN, 1e20).unwrap(), 1.0);
}

#[test]
fn arrays_say_which_element_failed_and_write_nothing() {
    let mut out = [7.0; 4];
    let error = normal_quantile_into(&[0.1, 0.0, 2.0, 0.5], &mut out).unwrap_err();
    assert!(matches!(error, DistributionError::Element { index: 1, failed: 2, .. }), "{error:?}");
    assert_eq!(normal_quantile_check(&[0.1, 0.0, 2.0, 0.5]), Err(error));
    assert_eq!(out, [7.0; 4]);
    let error = t_quantile_above_into(&[0.1, 1e-300, 1e-200, 0.5], 0.1, &mut out).unwrap_err();
    assert!(matches!(error, DistributionError::Element { index: 1, failed: 2, .. }), "{error:?}");
    assert_eq!(out, [7.0; 4]);
    assert_eq!(t_quantile_above_check(&[0.1, 1e-300, 1e-200, 0.5], 0.1), Err(error));
    assert!(matches!(t_below_check(&[0.0; 4], -1.0).unwrap_err(), DistributionError::Range(_)));
    assert!(matches!(t_below_into(&[0.0; 4], -1.0, &mut out).unwrap_err(), DistributionError::Range(_)));
    assert!(matches!(
        normal_above_into(&[0.0; 3], &mut out).unwrap_err(),
        DistributionError::Lengths { needed: 3, room: 4 }
    ));
    assert_eq!(out, [7.0; 4]);
    assert_eq!(normal_above_into(&[], &mut []), Ok(()));
    let mut valid = [false; 4];
    assert_eq!(t_quantile_into_valid(&[0.1, 1e-300, f64::NAN, 0.5], 0.1, &mut out, &mut valid), Ok(2));
    assert_eq!((valid, out[1], out[2]), ([true, false, false, true], 7.0, 7.0));
    assert_eq!([out[0], out[3]], [t_quantile(0.1, 0.1).unwrap(), 0.0]);
}

#[test]
fn every_message_is_whole_and_comes_back_from_its_numbers() {
    let mut out = [0.0; 2];
    let messages = [
        (
            normal_quantile(95.0).unwrap_err(),
            "distribution: probability: 95 given, more than 0 to less than 1 allowed (JCGM 106 3.1); give a fraction, not \
             percent: 95 % is 0.95",
        ),
        (
            t_above(1.0, 0.0).unwrap_err(),
            "distribution: degrees of freedom: 0 given, more than 0 allowed (JCGM 100 G.3); n readings have n - 1; infinite \
             is allowed and means normal",
        ),
        (
            t_quantile(1e-300, 0.1).unwrap_err(),
            "distribution: quantile of Student's t: probability 1e-300 given, LOWER to 1e0 allowed with these degrees of \
             freedom, for beyond them it is larger than any number of its precision; give a probability less extreme, or more degrees of \
             freedom",
        ),
        (
            t_quantile_into(&[0.5, 1e-300], 0.1, &mut out).unwrap_err(),
            "distribution: element 1, the first of 1 that failed: quantile of Student's t: probability 1e-300 given, LOWER \
             to 1e0 allowed with these degrees of freedom, for beyond them it is larger than any number of its precision; give a probability \
             less extreme, or more degrees of freedom",
        ),
        (
            normal_quantile_above_into(&[0.5, 1.0], &mut out).unwrap_err(),
            "distribution: element 1, the first of 1 that failed: probability: 1 given, more than 0 to less than 1 allowed \
             (JCGM 106 3.1); give a fraction, not percent: 95 % is 0.95",
        ),
        (
            normal_below_into(&[0.5], &mut out).unwrap_err(),
            "distribution: room for 2 results given, 1 needed; give an output with one place for each result",
        ),
    ];
    let lower = format!("{:e}", t_above(f64::MAX, 0.1).unwrap());
    for (error, text) in messages {
        assert_eq!(error.to_string(), text.replace("LOWER", &lower));
        let back = DistributionError::from_detail(&error.detail()).unwrap();
        assert_eq!((back, back.to_string()), (error, error.to_string()));
    }
    let not_finite = normal_above(f64::INFINITY).unwrap_err();
    assert!(not_finite.to_string().starts_with("distribution: standardised value: inf given, "), "{not_finite}");
}

/// Degrees of freedom over the whole range, evenly in their logarithm.
fn degrees() -> impl Strategy<Value = f64> {
    prop_oneof![9 => (-1.0..12.0).prop_map(|exponent: f64| 10.0_f64.powf(exponent)), 1 => Just(f64::INFINITY)]
}

/// Probabilities of a tail, evenly in their logarithm down to 1e-300 and evenly up to one half.
fn tails() -> impl Strategy<Value = f64> {
    prop_oneof![(-300.0..-0.302).prop_map(|exponent: f64| 10.0_f64.powf(exponent)), 1e-6..0.5]
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 2000, ..ProptestConfig::default() })]

    #[test]
    fn both_tails_mirror_each_other(t in -50.0..50.0, dof in degrees()) {
        prop_assert_eq!(t_above(t, dof).unwrap(), t_below(-t, dof).unwrap());
        prop_assert_eq!(normal_above(t).unwrap(), normal_below(-t).unwrap());
        let whole = t_above(t, dof).unwrap() + t_below(t, dof).unwrap();
        prop_assert!((whole - 1.0).abs() <= 2.3e-16);
    }

    #[test]
    fn quantiles_mirror_each_other(p in tails(), dof in degrees()) {
        if let Ok(t) = t_quantile_above(p, dof) {
            prop_assert_eq!(t, -t_quantile(p, dof).unwrap());
        }
        prop_assert_eq!(normal_quantile_above(p).unwrap(), -normal_quantile(p).unwrap());
    }

    /// The tail of a quantile is its probability again, within what one rounding of the quantile moves it.
    #[test]
    fn a_quantile_comes_back_as_its_probability(p in tails(), dof in degrees()) {
        let z = normal_quantile_above(p).unwrap();
        let moved = 2.3e-16 * (z * z + 1.0) + 1e-15;
        prop_assert!((normal_above(z).unwrap() / p - 1.0).abs() < 2.0 * moved, "{}", z);
        if let Ok(t) = t_quantile_above(p, dof) {
            // One relative rounding of t moves the tail by at most min(dof, t²) + 1 roundings.
            let moved = 2.3e-16 * (dof.min(t * t) + 1.0) + 2e-13;
            prop_assert!((t_above(t, dof).unwrap() / p - 1.0).abs() < 2.0 * moved, "{}", t);
        }
    }

    /// The further out, the less probable; steps are as small as rounding lets them be told apart.
    #[test]
    fn tails_fall_and_quantiles_rise(t in 0.0..30.0, step in 1e-9..1.0, dof in degrees(), p in tails()) {
        prop_assert!(normal_above(t + step).unwrap() < normal_above(t).unwrap());
        prop_assert!(t_above(t + step, dof).unwrap() < t_above(t, dof).unwrap());
        prop_assert!(t_above(t + step, dof).unwrap() <= t_above(t + step, 0.9 * dof).unwrap());
        prop_assert!(normal_quantile_above(p * (1.0 - 1e-9)).unwrap() > normal_quantile_above(p).unwrap());
        if let (Ok(far), Ok(near)) = (t_quantile_above(p * (1.0 - 1e-9), dof), t_quantile_above(p, dof)) {
            prop_assert!(far > near);
        }
    }
}
