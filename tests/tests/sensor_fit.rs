//! Thermistors fitted from points: published ones, ones of a known part, and what is refused.

use reckohm::fit::{FitError, Points, Start, Stop};
use reckohm::number::{Detail, Kind, Real};
use reckohm::sensor::{BValueThermistor, SensorError, SteinhartHart};
use reckohm_tests::random::Random;

/// The rows of `checks/sensor_thermistor.csv` of this kind and set: key, value, computed.
fn rows(kind: &str, set: &str) -> Vec<[String; 3]> {
    let text = include_str!("../checks/sensor_thermistor.csv");
    let mut reader = csv::ReaderBuilder::new().comment(Some(b'#')).from_reader(text.as_bytes());
    let rows = reader.records().map(Result::unwrap).filter(|row| &row[0] == kind && &row[1] == set);
    rows.map(|row| [2, 3, 4].map(|column| row[column].to_owned())).collect()
}

/// The printed resistances at these temperatures.
fn printed<const N: usize>(set: &str, at: [f64; N]) -> [f64; N] {
    let rows = rows("point", set);
    at.map(|c| {
        let [_, ohm, _] = rows.iter().find(|[key, ..]| *key == format!("{c} C")).unwrap();
        ohm.strip_suffix(" ohm").unwrap().parse().unwrap()
    })
}

/// Through three printed points, to the digits of the exact solution.
#[test]
fn three_points_give_the_coefficients_of_their_exact_curve() {
    for (set, at) in [("SH-ED", [-50.0, 25.0, 100.0]), ("SH-LD", [0.0, 25.0, 50.0])] {
        let ohm = printed(set, at);
        let u_ohm = ohm.map(|ohm| 1e-3 * ohm);
        let points = Points::new(&at, &ohm).unwrap().with_each_u_y(&u_ohm).unwrap();
        let mut residuals = [77.0; 3];
        let (thermistor, fit) = SteinhartHart::fit_three_terms(&points, 1.0, Some(&mut residuals)).unwrap();
        let [a, b, c, d] = thermistor.coefficients();
        assert_eq!((c, fit.held(), fit.stop()), (0.0, [false, false, true, false, true], Stop::Exact));
        let computed = rows("fit", set);
        assert_eq!(computed.len(), 3);
        for ((found, [key, _, exact]), digits) in [a, b, d].into_iter().zip(&computed).zip([1e-12, 1e-12, 1e-11]) {
            let exact: f64 = exact.parse().unwrap();
            assert!((found / exact - 1.0).abs() < digits, "{set} {key}: {found} for {exact}");
        }
        assert!(residuals.into_iter().zip(ohm).all(|(r, ohm)| r.abs() < 1e-12 * ohm), "{residuals:?}");
        assert_eq!(thermistor.domain(), [at[0], at[2]]);
    }
}

/// B25/50 of two printed resistances.
#[test]
fn two_points_give_their_b_value() {
    let at = [25.0, 50.0];
    let ohm = printed("SH-LD", at);
    let points = Points::new(&at, &ohm).unwrap().with_u_y(1.0).unwrap();
    let (thermistor, fit) = BValueThermistor::fit(&points, 25.0, None).unwrap();
    let [_, _, computed] = &rows("beta", "SH-LD")[0];
    let b: f64 = computed.parse().unwrap();
    assert!((thermistor.b_kelvin() / b - 1.0).abs() < 1e-11, "{} for {b}", thermistor.b_kelvin());
    assert!((thermistor.rated_ohm() / ohm[0] - 1.0).abs() < 1e-14);
    assert_eq!((thermistor.b_temperatures_c(), fit.degrees_of_freedom()), (at, 0));
    // The error of either resistance reaches B by 1/(R·(1/T1 - 1/T2)).
    let span = 1.0 / 298.15 - 1.0 / 323.15;
    let by_hand = (1.0 / (ohm[0] * span)).hypot(1.0 / (ohm[1] * span));
    assert!((fit.u()[2] / by_hand - 1.0).abs() < 1e-9, "{} for {by_hand}", fit.u()[2]);
}

/// What is made of a known part gives that part back, in both precisions and from any number of points.
#[test]
fn points_of_a_known_part_give_it_back() {
    fn held<R: Real>(digits: f64) {
        let mut random = Random::new(7);
        for _ in 0..40 {
            let count = 5 + (random.unit() * 20.0) as usize;
            let [rated, b] = [1e2 * 1e4_f64.powf(random.unit()), 2500.0 + 2500.0 * random.unit()].map(R::lit);
            let (at, ends) = (R::lit(25.0), [R::lit(-30.0), R::lit(90.0)]);
            let part = BValueThermistor::<R>::new(rated, at, b, ends).unwrap();
            let step = 120.0 / (count - 1) as f64;
            let c: Vec<R> = (0..count).map(|k| R::lit(-30.0 + step * k as f64).smaller(ends[1])).collect();
            let ohm: Vec<R> = c.iter().map(|c| part.resistance_ohm(*c).unwrap()).collect();
            let u: Vec<R> = ohm.iter().map(|ohm| *ohm * R::lit(1e-3)).collect();
            let points = Points::new(&c, &ohm).unwrap().with_each_u_y(&u).unwrap();
            let (found, _) = BValueThermistor::fit(&points, at, None).unwrap();
            let off = |a: R, b: R| ((a - b) / b).to_f64().abs();
            assert!(off(found.rated_ohm(), rated) < digits && off(found.b_kelvin(), b) < digits, "{found:?} {part:?}");
            // A B-value is a Steinhart-Hart curve without its third term.
            let (curve, _) = SteinhartHart::fit_three_terms(&points, rated, None).unwrap();
            for (c, ohm) in c.iter().zip(&ohm) {
                // At an end of the domain by a rounding more or less.
                let found = curve.resistance_ohm(*c).unwrap();
                assert!(off(found, *ohm) < 10.0 * digits, "{c:?}: {found:?} {ohm:?}");
            }
        }
    }
    held::<f64>(1e-12);
    held::<f32>(2e-4);
}

/// The whole printed table but for its misprint, in four terms, comes out to the printed ohm.
#[test]
fn a_printed_table_is_met_within_its_rounding() {
    let at = [0.0, 10.0, 20.0, 25.0, 30.0, 50.0];
    let ohm = printed("SH-LD", at);
    let points = Points::new(&at, &ohm).unwrap().with_u_y(0.3).unwrap();
    let mut residuals = [0.0; 6];
    let (thermistor, fit) = SteinhartHart::fit_three_terms(&points, 1.0, Some(&mut residuals)).unwrap();
    assert!(residuals.iter().all(|r| r.abs() < 0.65), "{residuals:?}");
    assert!(fit.residual_sd().unwrap() < 2.0, "{fit:?}");
    // At 40 °C the table prints 5331, where 5231 is meant.
    assert!((thermistor.resistance_ohm(40.0).unwrap() - 5231.0).abs() < 0.7);
}

#[test]
fn what_is_no_thermistor_is_refused() {
    let at = [10.0, 20.0, 30.0, 40.0];
    let fit = |at: &[f64], ohm: &[f64]| {
        let points = Points::new(at, ohm).unwrap().with_u_y(1.0).unwrap();
        BValueThermistor::fit(&points, 25.0, None).map(|(thermistor, _)| thermistor)
    };
    let same = fit(&[25.0; 4], &[10_000.0, 10_001.0, 9999.0, 10_000.0]).unwrap_err();
    assert_eq!(same, SensorError::Fit(FitError::Undetermined { parameter: 2 }));
    assert_eq!(same.kind(), Kind::Undetermined);
    assert_eq!(SensorError::from_detail(&same.detail()), Some(same));
    let negative = fit(&at, &[20_000.0, 12_000.0, -8000.0, 5000.0]).unwrap_err();
    assert_eq!((negative.kind(), negative.detail().given), (Kind::OutOfRange, -8000.0));
    let in_kelvin = fit(&[1283.15, 1293.15, 1303.15, 1313.15], &[20e3, 12e3, 8e3, 5e3]).unwrap_err();
    assert_eq!((in_kelvin.kind(), in_kelvin.detail().given), (Kind::OutOfRange, 1283.15));
    // A resistance that rises is that of no such part.
    let rising = fit(&at, &[8000.0, 9000.0, 10_000.0, 11_000.0]).unwrap_err();
    assert_eq!(rising.detail().row, reckohm::number::B_VALUE.number, "{rising}");
    let points = Points::new(&at[..3], &[20_254.0, 12_556.0, 8025.0]).unwrap();
    let few = SteinhartHart::fit_three_terms(&points, 1.0, None).unwrap_err();
    assert_eq!(few, SensorError::Fit(FitError::TooFewPoints { given: 3, needed: 4 }));
    assert!(SteinhartHart::fit_four_terms(&points, -1.0, None).is_err());
    let none = Points::new(&[], &[]).unwrap().with_u_y(1.0).unwrap();
    assert!(matches!(BValueThermistor::fit(&none, 25.0, None), Err(SensorError::Fit(FitError::TooFewPoints { .. }))));
    // A range of a fit keeps its own words through plain numbers.
    let start: SensorError = Start::at([f64::INFINITY]).unwrap_err().into();
    assert_eq!(SensorError::from_detail(&start.detail()), Some(start));
    let other = Detail { row: 1, given: 95.0, ..Detail::new(Kind::OutOfRange) };
    assert!(matches!(SensorError::from_detail(&other), Some(SensorError::Range(_))));
}

/// A shared error of the thermometer is one of every temperature that is read, and what the points by themselves leave is what
/// refits of scattered points show.
#[test]
fn what_a_fit_leaves_uncertain_is_what_refits_scatter_by() {
    let c = [0.0, 10.0, 20.0, 30.0, 40.0, 50.0];
    let part = SteinhartHart::three_terms([1.129148e-3, 2.34125e-4, 8.76741e-8], 1.0, [0.0, 50.0]).unwrap();
    let ohm = c.map(|c| part.resistance_ohm(c).unwrap());
    let u = ohm.map(|ohm| 1e-4 * ohm);
    let points = Points::new(&c, &ohm).unwrap().with_each_u_y(&u).unwrap();
    let (thermistor, fit) = SteinhartHart::fit_three_terms(&points, 1.0, None).unwrap();
    let (_, shared) = SteinhartHart::fit_three_terms(&points.with_common_u_x(0.05).unwrap(), 1.0, None).unwrap();
    let reads = [ohm[0], ohm[2], 9000.0, ohm[4], ohm[5]];
    let stated = reads.map(|ohm| thermistor.temperature_u_kelvin(ohm, &fit).unwrap());

    let mut random = Random::new(11);
    let count = 4000;
    let mut squares = [0.0; 5];
    for _ in 0..count {
        // Twelve uniform numbers less six: near enough to normal for a variance.
        let mut scatter = || (0..12).map(|_| random.unit()).sum::<f64>() - 6.0;
        let mut off = ohm;
        for (ohm, u) in off.iter_mut().zip(u) {
            *ohm += u * scatter();
        }
        let points = Points::new(&c, &off).unwrap().with_each_u_y(&u).unwrap();
        let (again, _) = SteinhartHart::fit_three_terms(&points, 1.0, None).unwrap();
        let again = again.with_domain([-5.0, 55.0]).unwrap();
        for (square, ohm) in squares.iter_mut().zip(reads) {
            *square += (again.temperature_c(ohm).unwrap() - thermistor.temperature_c(ohm).unwrap()).powi(2);
        }
    }
    for ((square, stated), ohm) in squares.into_iter().zip(stated).zip(reads) {
        let seen = (square / f64::from(count)).sqrt();
        // Four times the standard deviation of a standard deviation of 4000.
        assert!((seen / stated - 1.0).abs() < 4.0 / (2.0 * f64::from(count)).sqrt(), "{ohm}: {seen} for {stated}");
        let with_shared = thermistor.temperature_u_kelvin(ohm, &shared).unwrap();
        assert!((with_shared / 0.05_f64.hypot(stated) - 1.0).abs() < 1e-3, "{ohm}: {with_shared}");
    }
    assert!(thermistor.temperature_u_kelvin(1.0, &fit).is_err());
}

/// In single precision too, where a rounded covariance of such coefficients is nothing but rounding.
#[test]
fn what_a_fit_leaves_uncertain_keeps_its_digits_in_single_precision() {
    fn stated<R: Real>() -> [f64; 3] {
        let c = [0.0, 10.0, 25.0, 40.0, 50.0].map(R::lit);
        let ohm = [32_128.0, 19_549.0, 9814.0, 5231.0, 3542.0].map(R::lit);
        let u = ohm.map(|ohm| ohm * R::lit(1e-3));
        let points = Points::new(&c, &ohm).unwrap().with_each_u_y(&u).unwrap();
        let (thermistor, fit) = SteinhartHart::<R>::fit_three_terms(&points, R::lit(1.0), None).unwrap();
        [30_000.0, 10_000.0, 4000.0].map(|ohm| thermistor.temperature_u_kelvin(R::lit(ohm), &fit).unwrap().to_f64())
    }
    for (single, double) in stated::<f32>().into_iter().zip(stated::<f64>()) {
        assert!((single / double - 1.0).abs() < 1e-2, "{single} for {double}");
    }
}
