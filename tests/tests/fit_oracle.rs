//! Fits with errors of their own in both variables, with shared errors and with bounds, against 60 digits
//! (`tests/oracles/fit.py`); and JCGM 100 H.3 as a line.

use std::collections::HashMap;

use reckohm::fit::{Curve, Fit, Points, Start, Stop, curve, polynomial};
use reckohm::number::Scalar;

/// 12 digits of each number; the minimum is as flat as it is, and the model's values are rounded.
const RELATIVE: f64 = 1e-12;

type Case = HashMap<String, Vec<f64>>;

fn case(name: &str) -> Case {
    let table = include_str!("../checks/fit_oracle.tsv");
    let rows = table.lines().filter(|line| line.split('\t').next() == Some(name));
    let numbers = |text: &str| text.split(' ').map(|x| x.parse().unwrap()).collect();
    let case: Case = rows
        .map(|line| {
            let [_, quantity, values] = line.split('\t').collect::<Vec<_>>()[..] else { panic!("{line}") };
            (quantity.to_owned(), numbers(values))
        })
        .collect();
    assert!(case.len() >= 6, "{name}");
    case
}

fn points(case: &Case) -> Points<'_> {
    let points = Points::new(&case["x"], &case["y"]).unwrap().with_each_u_y(&case["u_y"]).unwrap();
    case.get("u_x").map_or(points, |u_x| points.with_each_u_x(u_x).unwrap())
}

fn hold<const P: usize>(name: &str, case: &Case, fit: &Fit<f64, P>) {
    let near = |found: f64, exact: f64, size: f64| {
        assert!(
            (found - exact).abs() <= RELATIVE * size,
            "{name}: {found:?} for {exact:?}, off by {:e}",
            found - exact
        );
    };
    let (covariance, u) = (&case["covariance"], fit.u());
    for (k, (found, exact)) in fit.parameters().into_iter().zip(&case["parameters"]).enumerate() {
        // What is smaller than its uncertainty has its digits in units of that.
        near(found, *exact, exact.abs().max(u[k]));
        for (l, found) in fit.covariance()[k].into_iter().enumerate() {
            near(found, covariance[k * P + l], u[k] * u[l]);
        }
    }
    near(fit.sum_of_squares(), case["sum_of_squares"][0], case["sum_of_squares"][0]);
    assert_eq!((case["parameters"].len(), covariance.len()), (P, P * P), "{name}");
}

/// York's line (Canadian Journal of Physics 44, 1966): y = 5.479910 - 0.480533·x, from memory, beside the digits of the oracle.
#[test]
fn a_line_with_errors_of_both_variables() {
    let case = case("york");
    let fit = polynomial::<f64, 2>(&points(&case), None).unwrap();
    hold("york", &case, &fit);
    let [at_0, slope] = fit.parameters();
    assert_eq!((format!("{at_0:.6}"), format!("{slope:.6}")), ("5.479910".to_owned(), "-0.480533".to_owned()));
    assert_eq!((fit.stop(), fit.degrees_of_freedom()), (Stop::Settled, 8));
}

#[test]
fn a_parabola_with_errors_of_both_variables_and_all_shared_ones() {
    let case = case("parabola_in_both");
    let shared = points(&case).with_common_u_x(0.25).unwrap().with_common_u_y(0.5).unwrap();
    let fit = polynomial::<f64, 3>(&shared.with_common_fraction(0.0625).unwrap(), None).unwrap();
    hold("parabola_in_both", &case, &fit);
}

#[test]
fn a_line_whose_points_share_errors() {
    let case = case("line_common");
    let shared = points(&case).with_common_u_x(0.03).unwrap().with_common_fraction(0.0001).unwrap();
    let fit = polynomial::<f64, 2>(&shared, None).unwrap();
    hold("line_common", &case, &fit);
    // Far more than the points by themselves leave.
    let alone = polynomial::<f64, 2>(&points(&case), None).unwrap();
    assert!(fit.u()[0] > 3.0 * alone.u()[0]);
}

struct Thermistor;

impl Curve<2> for Thermistor {
    fn at<S: Scalar>(&self, [rated_ohm, b_kelvin]: &[S; 2], temperature_c: S) -> S {
        let one = S::lit(1.0);
        *rated_ohm * (*b_kelvin * (one / (temperature_c + S::lit(273.15)) - one / S::lit(298.15))).exponential()
    }
}

#[test]
fn a_thermistor_with_errors_of_both_variables_and_a_shared_thermometer() {
    let case = case("thermistor_in_both");
    let shared = points(&case).with_common_u_x(0.05).unwrap().with_common_fraction(0.001).unwrap();
    for start in [[10_000.0, 3950.0], [5000.0, 3000.0], [20_000.0, 5000.0]] {
        let fit = curve(&Thermistor, &shared, &Start::at(start).unwrap(), None).unwrap();
        hold("thermistor_in_both", &case, &fit);
    }
}

struct Settling;

impl Curve<3> for Settling {
    fn at<S: Scalar>(&self, [end, away, tau]: &[S; 3], time_s: S) -> S {
        *end + *away * (-time_s / *tau).exponential()
    }
}

/// Held by equal bounds, and held by a bound that it runs into: the same fit.
#[test]
fn a_parameter_at_a_bound_counts_as_known() {
    let case = case("settling_held");
    let points = points(&case).with_common_u_y(0.25).unwrap();
    let free = [f64::NEG_INFINITY, f64::INFINITY];
    for (start, bounds) in [
        ([1010.0, 490.0, 2.0], [1010.0, 1010.0]),
        ([1010.0, 490.0, 2.0], [1010.0, 2000.0]),
        ([1100.0, 400.0, 1.0], [1010.0, 2000.0]),
    ] {
        let start = Start::at(start).unwrap().with_bounds([bounds, free, free]).unwrap();
        let fit = curve(&Settling, &points, &start, None).unwrap();
        hold("settling_held", &case, &fit);
        assert_eq!((fit.held(), fit.degrees_of_freedom()), ([true, false, false], 4));
    }
    // Without the bound it lies beyond.
    let fit = curve(&Settling, &points, &Start::at([1100.0, 400.0, 1.0]).unwrap(), None).unwrap();
    assert!(fit.parameters()[0] < 1005.0 && fit.held() == [false; 3], "{fit:?}");
}

/// JCGM 100 H.3: corrections of a thermometer against its reading less 20 °C.
#[test]
fn gum_h_3() {
    let text = include_str!("../checks/measure_gum_h2.csv");
    let mut reader = csv::ReaderBuilder::new().comment(Some(b'#')).from_reader(text.as_bytes());
    let rows = reader.records().map(Result::unwrap).filter(|row| &row[0] == "H.3");
    let rows: HashMap<String, (String, String)> =
        rows.map(|row| (row[1].to_owned(), (row[3].to_owned(), row[4].to_owned()))).collect();
    let number = |key: &str| rows[key].0.parse::<f64>().unwrap();
    let column = |of: &str| (1..=11).map(|k| number(&format!("row{k}.{of}"))).collect::<Vec<_>>();
    let (reading, correction) = (column("reading"), column("correction"));
    // To 1e-11 of the value computed beforehand, and to the last printed digit.
    let agrees = |found: f64, key: &str| {
        let (printed, computed) = &rows[key];
        let computed: f64 = computed.parse().unwrap();
        assert!((found - computed).abs() <= 1e-11 * computed.abs(), "{key}: {found} for {computed}");
        let decimals = printed.split('.').nth(1).map_or(0, str::len);
        assert_eq!(format!("{found:.decimals$}"), *printed, "{key}");
    };

    let above: Vec<f64> = reading.iter().map(|t| t - number("reference")).collect();
    let mut residuals = [0.0; 11];
    let line = polynomial::<f64, 2>(&Points::new(&above, &correction).unwrap(), Some(&mut residuals)).unwrap();
    let ([intercept, slope], [u_intercept, u_slope]) = (line.parameters(), line.u());
    agrees(intercept, "intercept");
    agrees(u_intercept, "intercept.u");
    agrees(slope, "slope");
    agrees(u_slope, "slope.u");
    agrees(line.covariance()[0][1] / (u_intercept * u_slope), "r.intercept.slope");
    agrees(line.residual_sd().unwrap(), "s");
    agrees(line.degrees_of_freedom() as f64, "dof");
    agrees(intercept + slope * 10.0, "correction at 30 degC");
    agrees(line.u_of(&[1.0, 10.0]), "u at 30 degC");
    for (k, residual) in residuals.into_iter().enumerate() {
        let computed: f64 = rows[&format!("row{}.residual", k + 1)].1.parse().unwrap();
        // They cancel from a correction of 0.17: their last digits are its.
        assert!((residual - computed).abs() < 1e-14, "{residual} for {computed}");
    }

    // About the mean reading the two parameters are not correlated.
    let mean = reading.iter().sum::<f64>() / 11.0;
    let centred: Vec<f64> = reading.iter().map(|t| t - mean).collect();
    let line = polynomial::<f64, 2>(&Points::new(&centred, &correction).unwrap(), None).unwrap();
    agrees(line.parameters()[0], "intercept at mean");
    agrees(line.u()[0], "intercept at mean.u");
    assert!(line.covariance()[0][1].abs() < 1e-14 * line.u()[0] * line.u()[1] * 10.0, "{:?}", line.covariance());
}
