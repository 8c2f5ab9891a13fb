//! Fits of curves against the certified results of NIST's Statistical Reference Datasets: nine digits or more of each
//! parameter and standard deviation, from both published starts.
//! `cargo test -p reckohm-tests --test fit_certified_curves -- --nocapture` prints what is reached.

use reckohm::fit::{Curve, Points, Start, Stop, curve};
use reckohm::number::Scalar;
use reckohm_tests::certified::{DataSet, digits};

const NEEDED: f64 = 9.0;

/// A model as a type of its own, since a closure cannot be generic over the number.
macro_rules! model {
    ($name:ident, $count:literal, |$p:ident, $x:ident| $y:expr) => {
        struct $name;

        impl Curve<$count> for $name {
            fn at<S: Scalar>(&self, $p: &[S; $count], $x: S) -> S {
                $y
            }
        }
    };
}

fn one<S: Scalar>() -> S {
    S::lit(1.0)
}

/// Coefficients of 1, x, x², …
fn series<S: Scalar>(coefficients: &[S], x: S) -> S {
    coefficients.iter().rev().fold(S::lit(0.0), |sum, c| sum * x + *c)
}

model!(Saturating, 2, |p, x| p[0] * (one::<S>() - (-p[1] * x).exponential()));
model!(Chwirut, 3, |p, x| (-p[0] * x).exponential() / (p[1] + p[2] * x));
model!(Power, 2, |p, x| p[0] * (p[1] * x.natural_log()).exponential());
model!(Cubics, 7, |p, x| series(&p[..4], x) / (one::<S>() + x * series(&p[4..], x)));
model!(Quadratics, 5, |p, x| series(&p[..3], x) / (one::<S>() + x * series(&p[3..], x)));
model!(Exponentials, 6, |p, x| {
    let term = |k: usize| p[k] * (-p[k + 1] * x).exponential();
    term(0) + term(2) + term(4)
});
model!(Kowalik, 4, |p, x| p[0] * (x * x + x * p[1]) / (x * x + x * p[2] + p[3]));
model!(Meyer, 3, |p, x| p[0] * (p[1] / (x + p[2])).exponential());
model!(Sigmoid, 4, |p, x| {
    let growth = one::<S>() + (p[1] - p[2] * x).exponential();
    p[0] / (growth.natural_log() / p[3]).exponential()
});

/// What a set says that cannot be had to nine digits, and the digits that can.
struct Exception {
    set: &'static str,
    sds: f64,
}

/// Lanczos1's y are a sum of three exponentials, printed to 13 digits, so its residuals, 9e-14, are nothing but the rounding of
/// its y. A binary sum of that size, some ulps of 2.2e-16, is known to a few thousandths of them.
const EXCEPTIONS: [Exception; 1] = [Exception { set: "lanczos1", sds: 2.5 }];

/// The degrees of freedom of a set. Rat43 prints 9, but has 15 points and 4 parameters, and its printed residual
/// standard deviation is the root of its sum of squares over 11.
fn degrees_of_freedom(name: &str, set: &DataSet) -> usize {
    let right = set.y.len() - set.parameters.len();
    assert!(set.degrees_of_freedom == right || (name, set.degrees_of_freedom) == ("rat43", 9), "{name}");
    right
}

fn hold<C: Curve<P>, const P: usize>(name: &str, model: &C) {
    let set = DataSet::read(name);
    let x = set.one_x();
    let points = Points::new(&x, &set.y).unwrap();
    assert_eq!((set.parameters.len(), set.linear), (P, false), "{name}");
    for which in 0..2 {
        let start = std::array::from_fn(|k| set.parameters[k].starts.expect("starts")[which]);
        let fit = curve(model, &points, &Start::at(start).unwrap(), None);
        let fit = fit.unwrap_or_else(|error| panic!("{name} from start {}: {error}", which + 1));
        let least = |printed: fn(&reckohm_tests::certified::Parameter) -> &str, found: [f64; P]| {
            let both = set.parameters.iter().zip(found);
            both.map(|(parameter, found)| digits(found, printed(parameter))).fold(f64::INFINITY, f64::min)
        };
        let of_parameters = least(|parameter| &parameter.certified, fit.parameters());
        let of_sds = least(|parameter| &parameter.sd, fit.u());
        let of_residual = digits(fit.residual_sd().unwrap(), &set.residual_sd);
        println!(
            "{name} from start {}: parameters {of_parameters:.1}, standard deviations {of_sds:.1}, residual {of_residual:.1} \
             digits; {} after {} steps",
            which + 1,
            fit.stop().name(),
            fit.steps()
        );
        let needed =
            EXCEPTIONS.iter().find(|exception| exception.set == name).map_or(NEEDED, |exception| exception.sds);
        assert!(of_parameters >= NEEDED, "{name}: {:?}", fit.parameters());
        assert!(of_sds >= needed && of_residual >= needed, "{name}: {:?}", fit.u());
        assert_eq!(fit.degrees_of_freedom(), degrees_of_freedom(name, &set), "{name}");
        assert!(matches!(fit.stop(), Stop::Settled | Stop::Rounding), "{name}: {:?}", fit.stop());
    }
}

#[test]
fn sets_of_lower_difficulty() {
    hold("misra1a", &Saturating);
    hold("chwirut2", &Chwirut);
    hold("danwood", &Power);
    hold("lanczos3", &Exponentials);
}

#[test]
fn sets_of_average_difficulty() {
    hold("hahn1", &Cubics);
    hold("kirby2", &Quadratics);
    hold("lanczos1", &Exponentials);
}

#[test]
fn sets_of_higher_difficulty() {
    hold("boxbod", &Saturating);
    hold("mgh09", &Kowalik);
    hold("mgh10", &Meyer);
    hold("rat43", &Sigmoid);
    hold("thurber", &Cubics);
}
