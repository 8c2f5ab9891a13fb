//! The bits of fits, as `checks/fit_bits.tsv` holds them: parameters and standard uncertainties, from one machine the same as
//! from another. `UPDATE_BITS=1 cargo test -p reckohm-tests --test fit_bits` writes them anew, and such a change belongs in the
//! changelog as value-breaking.

use std::fmt::Write as _;
use std::fs;
use std::path::Path;

use reckohm::fit::{Curve, Fit, Points, Start, curve, polynomial};
use reckohm::number::{Real, Scalar};
use reckohm::sensor::{BValueThermistor, SteinhartHart};
use reckohm_tests::certified::DataSet;

/// b1·exp(b2/(x + b3)), the thermistor of Meyer's data.
struct Meyer;

impl Curve<3> for Meyer {
    fn at<S: Scalar>(&self, [a, b, c]: &[S; 3], x: S) -> S {
        *a * (*b / (x + *c)).exponential()
    }
}

fn bits<const P: usize>(lines: &mut String, name: &str, fit: &Fit<f64, P>) {
    write!(lines, "{name}\t{}\t", fit.steps()).unwrap();
    let numbers = fit.parameters().into_iter().chain(fit.u()).chain([fit.sum_of_squares()]);
    let bits: Vec<String> = numbers.map(|x| format!("{:016x}", x.to_bits())).collect();
    writeln!(lines, "{}", bits.join("|")).unwrap();
}

fn bits_f32<const P: usize>(lines: &mut String, name: &str, fit: &Fit<f32, P>) {
    write!(lines, "{name}\t{}\t", fit.steps()).unwrap();
    let numbers = fit.parameters().into_iter().chain(fit.u()).chain([fit.sum_of_squares()]);
    let bits: Vec<String> = numbers.map(|x| format!("{:08x}", x.to_bits())).collect();
    writeln!(lines, "{}", bits.join("|")).unwrap();
}

/// Five points of a thermistor, uncertain in both and by a shared thermometer.
fn thermistor<R: Real>(mut held: impl FnMut(&Points<'_, R>)) {
    let c = [0.0, 10.0, 25.0, 40.0, 50.0].map(R::lit);
    let ohm = [32_128.0, 19_549.0, 9814.0, 5231.0, 3542.0].map(R::lit);
    let u = ohm.map(|ohm| ohm * R::lit(1e-3));
    let points = Points::new(&c, &ohm).unwrap().with_each_u_y(&u).unwrap();
    held(&points.with_u_x(R::lit(0.02)).unwrap().with_common_u_x(R::lit(0.05)).unwrap());
}

#[test]
fn fits_have_the_committed_bits() {
    let mut lines = String::from("# Bits of fits, made by tests/tests/fit_bits.rs.\nfit\tsteps\tbits\n");
    let filip = DataSet::read("filip");
    let fit = polynomial::<f64, 11>(&Points::new(&filip.one_x(), &filip.y).unwrap(), None).unwrap();
    bits(&mut lines, "filip", &fit);
    let meyer = DataSet::read("mgh10");
    for (which, start) in [[2.0, 400_000.0, 25_000.0], [0.02, 4000.0, 250.0]].into_iter().enumerate() {
        let points = (meyer.one_x(), meyer.y.clone());
        let points = Points::new(&points.0, &points.1).unwrap();
        let fit = curve(&Meyer, &points, &Start::at(start).unwrap(), None).unwrap();
        bits(&mut lines, &format!("mgh10 from start {}", which + 1), &fit);
    }
    thermistor::<f64>(|points| {
        bits(&mut lines, "b_value", &BValueThermistor::fit(points, 25.0, None).unwrap().1);
        bits(&mut lines, "steinhart_hart", &SteinhartHart::fit_three_terms(points, 1.0, None).unwrap().1);
    });
    thermistor::<f32>(|points| {
        bits_f32(&mut lines, "b_value_f32", &BValueThermistor::fit(points, 25.0, None).unwrap().1);
        bits_f32(&mut lines, "line_f32", &polynomial::<f32, 2>(points, None).unwrap());
    });

    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("checks/fit_bits.tsv");
    if std::env::var_os("UPDATE_BITS").is_some() {
        fs::write(&path, &lines).unwrap();
        panic!("{} written anew; look at what changed, and run again without UPDATE_BITS", path.display());
    }
    assert_eq!(fs::read_to_string(&path).unwrap_or_default(), lines, "bits of fits changed");
}
