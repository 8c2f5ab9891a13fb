//! Linear fits against the certified results of NIST's Statistical Reference Datasets: nine digits or more of each parameter
//! and standard deviation. `cargo test -p reckohm-tests --test fit_certified_linear -- --nocapture` prints what is reached.

use reckohm::fit::{Fit, Points, Stop, linear, polynomial};
use reckohm_tests::certified::{DataSet, digits};

const NEEDED: f64 = 9.0;

/// Prints the digits of a fit, and fails where there are fewer than needed.
fn hold<const P: usize>(name: &str, set: &DataSet, fit: &Fit<f64, P>) {
    assert_eq!((fit.stop(), fit.degrees_of_freedom()), (Stop::Solved, set.degrees_of_freedom), "{name}");
    assert_eq!(set.parameters.len(), P, "{name}");
    let (mut of_parameters, mut of_sds) = (f64::INFINITY, f64::INFINITY);
    for ((parameter, found), u) in set.parameters.iter().zip(fit.parameters()).zip(fit.u()) {
        of_parameters = of_parameters.min(digits(found, &parameter.certified));
        // A printed standard deviation of 0 is that of exact decimals; what is left is their rounding to binary numbers.
        let u = if parameter.sd.parse() == Ok(0.0) { u / found } else { u };
        of_sds = of_sds.min(digits(u, &parameter.sd));
    }
    let size = set.y.iter().fold(0.0_f64, |most, y| most.max(y.abs()));
    let residual = fit.residual_sd().unwrap();
    let residual = if set.residual_sd.parse() == Ok(0.0) { residual / size } else { residual };
    let of_residual = digits(residual, &set.residual_sd);
    println!(
        "{name}: parameters {of_parameters:.1}, standard deviations {of_sds:.1}, residual {of_residual:.1} digits"
    );
    assert!(of_parameters >= NEEDED && of_sds >= NEEDED && of_residual >= NEEDED, "{name}");
}

fn hold_polynomial<const P: usize>(name: &str) {
    let set = DataSet::read(name);
    let fit = polynomial::<f64, P>(&Points::new(&set.one_x(), &set.y).unwrap(), None).unwrap();
    hold(name, &set, &fit);
}

#[test]
fn polynomials_have_the_certified_parameters_and_standard_deviations() {
    hold_polynomial::<2>("norris");
    hold_polynomial::<3>("pontius");
    hold_polynomial::<6>("wampler1");
    hold_polynomial::<6>("wampler2");
    hold_polynomial::<6>("wampler3");
    hold_polynomial::<6>("wampler5");
    hold_polynomial::<11>("filip");
}

#[test]
fn a_line_through_the_origin_has_the_certified_slope() {
    let set = DataSet::read("noint1");
    let rows: Vec<[f64; 1]> = set.one_x().into_iter().map(|x| [x]).collect();
    hold("noint1", &set, &linear(&Points::of_rows(&rows, &set.y).unwrap(), None).unwrap());
}

#[test]
fn six_nearly_dependent_columns_have_the_certified_parameters() {
    let set = DataSet::read("longley");
    let row = |x: &Vec<f64>| -> [f64; 7] { std::array::from_fn(|k| if k == 0 { 1.0 } else { x[k - 1] }) };
    let rows: Vec<[f64; 7]> = set.x.iter().map(row).collect();
    hold("longley", &set, &linear(&Points::of_rows(&rows, &set.y).unwrap(), None).unwrap());
}

/// Why a polynomial is not fitted by rows of its powers: the powers themselves are rounded. Seven digits of Filip are left.
#[test]
fn rows_of_rounded_powers_lose_digits() {
    let set = DataSet::read("filip");
    let row = |x| -> [f64; 11] { std::array::from_fn(|k| (0..k).fold(1.0, |power, _| power * x)) };
    let rows: Vec<[f64; 11]> = set.one_x().into_iter().map(row).collect();
    let fit = linear(&Points::of_rows(&rows, &set.y).unwrap(), None).unwrap();
    let each = set.parameters.iter().zip(fit.parameters());
    let least = each.map(|(parameter, found)| digits(found, &parameter.certified)).fold(f64::INFINITY, f64::min);
    println!("filip by rows: {least:.1} digits");
    assert!((6.0..9.0).contains(&least), "{least}");
}
