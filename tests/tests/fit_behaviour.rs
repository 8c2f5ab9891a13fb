//! What fits refuse and how they say it, how they end, and properties that hold for any points.

use proptest::prelude::*;
use reckohm::fit::{Curve, Fit, FitError, Points, Start, Stop, curve, linear, polynomial};
use reckohm::number::{Kind, Real, Scalar};

const X: [f64; 6] = [0.0, 1.0, 2.0, 3.0, 4.0, 5.0];
const Y: [f64; 6] = [1500.0, 1303.3, 1183.9, 1111.6, 1067.6, 1041.0];

/// b0 + b1·exp(−t/b2).
struct Settling;

impl Curve<3> for Settling {
    fn at<S: Scalar>(&self, [end, away, tau]: &[S; 3], time_s: S) -> S {
        *end + *away * (-time_s / *tau).exponential()
    }
}

/// b0·b1·x: no points tell the two apart.
struct Product;

impl Curve<2> for Product {
    fn at<S: Scalar>(&self, [a, b]: &[S; 2], x: S) -> S {
        *a * *b * x
    }
}

/// b0 + b1·x, as a curve.
struct Line;

impl Curve<2> for Line {
    fn at<S: Scalar>(&self, [a, b]: &[S; 2], x: S) -> S {
        *a + *b * x
    }
}

fn points() -> Points<'static> {
    Points::new(&X, &Y).unwrap()
}

fn settling(start: [f64; 3]) -> Result<Fit<f64, 3>, FitError> {
    curve(&Settling, &points(), &Start::at(start).unwrap(), None)
}

fn said<T>(result: Result<T, FitError>, kind: Kind, text: &str) {
    let error = result.err().unwrap_or_else(|| panic!("no error where {text:?} was to be said"));
    assert_eq!((error.to_string().as_str(), error.kind()), (text, kind));
    assert_eq!(FitError::from_detail(&error.detail()), Some(error), "{error}");
}

#[test]
fn every_message_of_the_points() {
    said(
        Points::new(&[1.0, f64::INFINITY, 2.0, f64::NAN], &[0.0; 4]),
        Kind::NotFinite,
        "fit: point 1, the first of 2 that failed: number of a point to be fitted: inf given, -1.7976931348623157e308 to \
         1.7976931348623157e308 allowed (our rule: no infinity and no NaN enters); look for an empty field in the table of \
         points; leave out what was not measured",
    );
    assert_eq!(Points::new(&X, &[0.0, 0.0, f64::INFINITY, 0.0, 0.0, 0.0]).unwrap_err().detail().index, 2);
    assert_eq!(Points::of_rows(&[[1.0, 2.0], [1.0, f64::NAN]], &[0.0; 2]).unwrap_err().detail().index, 1);
    said(Points::new(&X, &Y[..5]), Kind::WrongCount, "points of a fit: 6 x given, 5 needed; give one for each y");
    said(
        points().with_weights(&[1.0]),
        Kind::WrongCount,
        "points of a fit: 1 weights given, 6 needed; give one for each y",
    );
    said(
        points().with_each_u_y(&[]),
        Kind::WrongCount,
        "points of a fit: 0 standard uncertainties of y given, 6 needed; give one for each y",
    );
    said(
        points().with_each_u_x(&[0.1; 7]),
        Kind::WrongCount,
        "points of a fit: 7 standard uncertainties of x given, 6 needed; give one for each y",
    );
    said(
        points().with_u_y(0.0),
        Kind::OutOfRange,
        "fit: standard uncertainty of y of a point: 0 given, more than 0 allowed (JCGM 100 2.3.1); give more than 0, in the \
         unit of y; leave all of them out if none is known",
    );
    said(
        points().with_weights(&[1.0, 1.0, -2.0, 1.0, 1.0, 0.0]),
        Kind::OutOfRange,
        "fit: point 2, the first of 2 that failed: weight of a point: -2 given, more than 0 allowed (our rule); a weight goes \
         as the reciprocal of the variance; leave a point out instead of giving it no weight",
    );
    said(
        points().with_each_u_x(&[0.1, 0.1, 0.1, 0.1, 0.1, -0.1]),
        Kind::OutOfRange,
        "fit: point 5, the first of 1 that failed: standard uncertainty of x of a point: -0.1 given, 0 or more allowed \
         (JCGM 100 2.3.1); give a width in the unit of x, never negative; 0 means that x is exact",
    );
    said(
        points().with_common_u_x(-1.0),
        Kind::OutOfRange,
        "fit: standard uncertainty of an error that all points share: -1 given, 0 or more allowed (JCGM 100 F.1.2.4); give a \
         width, never negative; 0 means that there is no such error",
    );
    for refused in [points().with_u_x(-1.0), points().with_common_u_y(f64::NAN), points().with_common_fraction(-0.1)] {
        assert!(refused.is_err());
    }
}

#[test]
fn every_message_of_a_fit() {
    let few = Points::new(&X[..2], &Y[..2]).unwrap();
    said(
        polynomial::<f64, 2>(&few, None),
        Kind::WrongCount,
        "points of a fit: 2 given, 3 or more needed; one for each free parameter, and one more where their scatter is to be \
         found from the residuals: give u(y) to do without that one",
    );
    assert!(polynomial::<f64, 2>(&few.with_u_y(1.0).unwrap(), None).is_ok());
    said(
        polynomial::<f64, 2>(&points(), Some(&mut [0.0; 5])),
        Kind::WrongCount,
        "points of a fit: 5 places for residuals given, 6 needed; give one for each y",
    );
    said(
        polynomial::<f64, 2>(&Points::new(&[3.0; 6], &Y).unwrap(), None),
        Kind::Undetermined,
        "parameter 1 of a fit: the points given do not determine it, points at which it makes a difference of its own needed; \
         spread the points wider, hold a parameter by equal bounds, take a simpler model, or begin elsewhere",
    );
    // A column is a multiple of another, but for rounding.
    let rows = X.map(|x| [0.1 * x, 1.0, 0.3 * x]);
    let dependent = linear(&Points::of_rows(&rows, &Y).unwrap(), None).unwrap_err();
    assert_eq!(dependent, FitError::Undetermined { parameter: 2 });
    let product = curve(&Product, &points(), &Start::at([10.0, 30.0]).unwrap(), None);
    assert_eq!(product.unwrap_err(), FitError::Undetermined { parameter: 1 });
    said(
        curve(&Settling, &points().with_u_x(0.1).unwrap(), &Start::at([1e3, 500.0, 2.0]).unwrap(), None),
        Kind::MissingArgument,
        "points of a fit: u(x) given without u(y), both needed; what x and y contribute is weighed against one another",
    );
    assert_eq!(
        polynomial::<f64, 2>(&points().with_u_x(0.1).unwrap(), None).unwrap_err(),
        FitError::MissingUncertaintyOfY
    );
    said(
        settling([1000.0, 500.0, -1e-3]),
        Kind::ModelNotFinite,
        "model of a fit: no finite number at point 1, x 1, with the parameters at which it begins; finite values and slopes \
         needed at every point, and a curve that hardly bends within the uncertainty of x; begin elsewhere",
    );
    said(
        Start::at([1.0, f64::INFINITY]),
        Kind::NotFinite,
        "fit: parameter at which a fit begins: inf given, -1.7976931348623157e308 to 1.7976931348623157e308 allowed (our rule: \
         no infinity and no NaN enters); give a guess of the right order of magnitude and sign",
    );
    let start = Start::at([1.0, 2.0]).unwrap();
    said(
        start.with_bounds([[0.0, 1.0], [3.0, 2.0]]),
        Kind::Contradiction,
        "bounds of parameter 1 of a fit: 3 to 2 given, a lower bound not above the upper one allowed; equal ones hold the \
         parameter where it is",
    );
    said(
        start.with_bounds([[0.0, 0.5], [2.0, 2.0]]),
        Kind::Contradiction,
        "start of parameter 0 of a fit: 1 given, 0 to 0.5 allowed, its bounds; begin within them",
    );
    assert_eq!(start.with_bounds([[f64::NAN, 1.0], [2.0, 2.0]]).unwrap_err().kind(), Kind::NotFinite);
    let hasty = Start::at([0.0, 1.0, 1.0]).unwrap().with_most_steps(2);
    let error = curve(&Settling, &points(), &hasty, None).unwrap_err();
    let FitError::NotSettled { steps: 2, left, allowed } = error else { panic!("{error}") };
    assert!(left > 1e-3 && left <= 1.0 && allowed == 1e-6);
    said(
        Err::<(), _>(FitError::NotSettled { steps: 2, left: 0.25, allowed }),
        Kind::NotSettled,
        "fit: after 2 steps the parameters could still explain 2.5e-1 of the residuals, 1.0e-6 at most allowed; begin nearer, \
         bound the parameters, or allow more steps",
    );
    said(
        polynomial::<f64, 2>(&Points::new(&[-1.6e308, 1.6e308, 0.0], &[0.0; 3]).unwrap(), None),
        Kind::ResultOutOfRange,
        "fit: a result or the square of one is too large for the number type, at most 1.8e308 allowed; give x and y in larger \
         units",
    );
}

/// Points none: an error of its own kind of count, also with u(y).
#[test]
fn no_points_are_too_few() {
    let none = Points::<f64>::new(&[], &[]).unwrap().with_u_y(1.0).unwrap();
    assert_eq!(polynomial::<f64, 1>(&none, None), Err(FitError::TooFewPoints { given: 0, needed: 1 }));
    let held = Start::at([1.0, 2.0]).unwrap().with_bounds([[1.0, 1.0], [2.0, 2.0]]).unwrap();
    assert_eq!(curve(&Line, &none, &held, None), Err(FitError::TooFewPoints { given: 0, needed: 1 }));
}

#[test]
fn nothing_is_written_on_failure_and_residuals_are_those_of_the_curve() {
    let mut room = [77.0; 6];
    assert!(polynomial::<f64, 2>(&Points::new(&[3.0; 6], &Y).unwrap(), Some(&mut room)).is_err());
    let hasty = Start::at([0.0, 1.0, 1.0]).unwrap().with_most_steps(1);
    assert!(curve(&Settling, &points(), &hasty, Some(&mut room)).is_err());
    assert_eq!(room, [77.0; 6]);
    let start = Start::at([1000.0, 500.0, 2.0]).unwrap();
    let fit = curve(&Settling, &points(), &start, Some(&mut room)).unwrap();
    for ((x, y), residual) in X.into_iter().zip(Y).zip(room) {
        assert_eq!(residual, y - Settling.at(&fit.parameters(), x));
    }
    let sum: f64 = room.iter().map(|r| r * r).sum();
    assert!((fit.sum_of_squares() / sum - 1.0).abs() < 1e-10);
}

#[test]
fn ends_are_named() {
    assert_eq!(
        [Stop::Solved, Stop::Settled, Stop::Rounding, Stop::Exact].map(Stop::name),
        ["solved", "settled", "rounding", "exact"]
    );
    let exact = X.map(|x| Settling.at(&[1000.0, 500.0, 2.0], x));
    let start = Start::at([900.0, 600.0, 1.0]).unwrap();
    let fit = curve(&Settling, &Points::new(&X, &exact).unwrap(), &start, None).unwrap();
    assert_eq!(fit.stop(), Stop::Exact);
    for (found, wanted) in fit.parameters().into_iter().zip([1000.0, 500.0, 2.0]) {
        assert!((found / wanted - 1.0).abs() < 1e-13, "{found}");
    }
    let fit = settling([900.0, 600.0, 1.0]).unwrap();
    assert_eq!((fit.stop(), fit.degrees_of_freedom(), fit.held()), (Stop::Settled, 3, [false; 3]));
    assert!(fit.steps() > 1 && fit.steps() < 30);
    // As many points as parameters: through all of them, and no scatter to be seen.
    let three = Points::new(&X[..3], &Y[..3]).unwrap().with_u_y(0.1).unwrap();
    let fit = curve(&Settling, &three, &start, None).unwrap();
    assert_eq!((fit.degrees_of_freedom(), fit.residual_sd(), fit.stop()), (0, None, Stop::Exact));
    assert!(fit.u().into_iter().all(|u| u > 0.0));
}

/// A start where the model is flat in a parameter has nothing to go by, and says so.
#[test]
fn a_flat_start_is_no_silent_result() {
    let error = settling([1000.0, 500.0, 1e-4]).unwrap_err();
    assert!(matches!(error, FitError::Undetermined { parameter: 2 }), "{error}");
}

/// In single precision as well, within its digits.
#[test]
fn floats_are_fitted_with_their_own_digits() {
    let (x, y) = (X.map(|x| x as f32), Y.map(|y| y as f32));
    let start = Start::at([900.0_f32, 600.0, 1.0]).unwrap();
    let single = curve(&Settling, &Points::new(&x, &y).unwrap(), &start, None).unwrap();
    let double = settling([900.0, 600.0, 1.0]).unwrap();
    for k in 0..3 {
        // A hundredth of its standard uncertainty: the rounding of 1500 is 1e-4 ohm.
        let off = f64::from(single.parameters()[k]) - double.parameters()[k];
        assert!(off.abs() < 0.01 * double.u()[k], "{single:?} {double:?}");
        assert!((f64::from(single.u()[k]) / double.u()[k] - 1.0).abs() < 0.01, "{single:?} {double:?}");
    }
    let line = polynomial::<f32, 2>(&Points::new(&[1e4, 2e4, 3e4], &[1.0, 2.0, 3.0]).unwrap(), None).unwrap();
    assert!((line.parameters()[1] - 1e-4).abs() < 1e-11, "{line:?}");
}

/// A weight says how often a point counts, and 1/u² says the same as u, up to the factor that the residuals show.
#[test]
fn weights_are_repeats_and_reciprocal_variances() {
    let often = [1.0, 3.0, 1.0, 2.0, 1.0, 4.0];
    let weighted = polynomial::<f64, 2>(&points().with_weights(&often).unwrap(), None).unwrap();
    let repeated = |all: &[f64]| -> Vec<f64> {
        all.iter().zip(often).flat_map(|(number, often)| vec![*number; often as usize]).collect()
    };
    let (x, y) = (repeated(&X), repeated(&Y));
    let repeats = polynomial::<f64, 2>(&Points::new(&x, &y).unwrap(), None).unwrap();
    assert_eq!((weighted.degrees_of_freedom(), repeats.degrees_of_freedom()), (4, 10));

    let u = often.map(|often| 1.0 / f64::sqrt(often));
    let known = polynomial::<f64, 2>(&points().with_each_u_y(&u).unwrap(), None).unwrap();
    let factor = weighted.residual_sd().unwrap();
    for k in 0..2 {
        assert!((weighted.parameters()[k] / repeats.parameters()[k] - 1.0).abs() < 1e-13);
        assert!((weighted.parameters()[k] / known.parameters()[k] - 1.0).abs() < 1e-13);
        assert!((weighted.u()[k] / (known.u()[k] * factor) - 1.0).abs() < 1e-13);
    }
    assert!((weighted.sum_of_squares() / repeats.sum_of_squares() - 1.0).abs() < 1e-13);
    // Counted alike they are another line.
    let alike = polynomial::<f64, 2>(&points(), None).unwrap();
    assert!((alike.parameters()[1] / weighted.parameters()[1] - 1.0).abs() > 0.01);
}

fn a_line_as_a_curve<R: Real>(points: &Points<'_, R>) -> Fit<R, 2> {
    curve(&Line, points, &Start::at([R::ZERO; 2]).unwrap(), None).unwrap()
}

proptest! {
    /// Whatever the points, a line comes out the same solved and searched for, and its residuals are at right angles to its
    /// columns.
    #[test]
    fn a_line_is_the_same_solved_and_searched_for(
        y in prop::collection::vec(-1e3..1e3_f64, 3..40),
        step in 0.01..100.0_f64,
        from in -1e4..1e4_f64,
    ) {
        let x: Vec<f64> = (0..y.len()).map(|k| from + step * k as f64).collect();
        let points = Points::new(&x, &y).unwrap();
        let mut residuals = vec![0.0; y.len()];
        let solved = polynomial::<f64, 2>(&points, Some(&mut residuals)).unwrap();
        let searched = a_line_as_a_curve(&points);
        for k in 0..2 {
            let u = solved.u()[k];
            let rounding = 1e-13 * solved.parameters()[k].abs();
            prop_assert!((searched.parameters()[k] - solved.parameters()[k]).abs() <= 1e-6 * u + rounding);
            prop_assert!((searched.u()[k] / u - 1.0).abs() < 1e-6);
        }
        let size = residuals.iter().fold(1.0_f64, |most, r| most.max(r.abs())) * y.len() as f64;
        prop_assert!(residuals.iter().sum::<f64>().abs() < 1e-10 * size);
        let turned: f64 = residuals.iter().enumerate().map(|(k, r)| k as f64 * r).sum();
        prop_assert!(turned.abs() < 1e-10 * size * y.len() as f64);
    }

    /// A parabola through whole numbers is found to the digit, wherever it lies.
    #[test]
    fn an_exact_parabola_is_found(a in -1000..1000_i32, b in -1000..1000_i32, c in -1000..1000_i32, from in -1000..1000_i32) {
        let [a, b, c] = [a, b, c].map(f64::from);
        let x: Vec<f64> = (0..9).map(|k| f64::from(from + k)).collect();
        let y: Vec<f64> = x.iter().map(|x| a + b * x + c * x * x).collect();
        let fit = polynomial::<f64, 3>(&Points::new(&x, &y).unwrap(), None).unwrap();
        for (found, wanted) in fit.parameters().into_iter().zip([a, b, c]) {
            prop_assert!(found == wanted || (wanted == 0.0 && found.abs() < 1e-20), "{found} for {wanted}");
        }
        prop_assert!(fit.sum_of_squares() < 1e-15);
    }

    /// Equal weights are none; u(y) alone does not move the parameters; a shared error does not either, and widens.
    #[test]
    fn widths_that_are_all_alike_do_not_move_the_parameters(
        y in prop::collection::vec(-1e3..1e3_f64, 6), weight in 1e-3..1e3_f64, shared in 0.0..10.0_f64,
    ) {
        let plain = Points::new(&X, &y).unwrap();
        let fit = polynomial::<f64, 2>(&plain, None).unwrap();
        let weights = [weight; 6];
        let weighted = polynomial::<f64, 2>(&plain.with_weights(&weights).unwrap(), None).unwrap();
        let known = plain.with_u_y(fit.residual_sd().unwrap().max(1e-3)).unwrap();
        let absolute = polynomial::<f64, 2>(&known, None).unwrap();
        let widened = polynomial::<f64, 2>(&known.with_common_u_y(shared).unwrap(), None).unwrap();
        for k in 0..2 {
            let near = 1e-13 * (fit.parameters()[k].abs() + fit.u()[k]);
            for other in [weighted, absolute, widened] {
                prop_assert!((other.parameters()[k] - fit.parameters()[k]).abs() <= near);
            }
            prop_assert!((weighted.u()[k] - fit.u()[k]).abs() <= 1e-12 * fit.u()[k]);
        }
        // An error of y that all share moves the line up and down, and nothing else.
        prop_assert!((widened.covariance()[0][0] - absolute.covariance()[0][0] - shared * shared).abs()
            <= 1e-12 * widened.covariance()[0][0]);
        prop_assert_eq!(widened.covariance()[1][1], absolute.covariance()[1][1]);
    }

    /// Whatever the numbers, there is a result of finite numbers or an error, never a NaN.
    #[test]
    fn no_nan_comes_out(
        x in prop::collection::vec(any::<f64>().prop_filter("finite", |x| x.is_finite()), 5),
        y in prop::collection::vec(any::<f64>().prop_filter("finite", |x| x.is_finite()), 5),
        u in 1e-300..1e300_f64,
        start in prop::array::uniform3(any::<f64>().prop_filter("finite", |x| x.is_finite())),
    ) {
        let finite = |fit: &[f64], u: &[f64], square: f64| fit.iter().chain(u).all(|x| x.is_finite()) && square.is_finite();
        let plain = Points::new(&x, &y).unwrap();
        for points in [plain, plain.with_u_y(u).unwrap(), plain.with_u_y(u).unwrap().with_u_x(u).unwrap()] {
            if let Ok(fit) = polynomial::<f64, 3>(&points, None) {
                prop_assert!(finite(&fit.parameters(), &fit.u(), fit.sum_of_squares()));
            }
            let start = Start::at(start).unwrap().with_most_steps(50);
            if let Ok(fit) = curve(&Settling, &points, &start, None) {
                prop_assert!(finite(&fit.parameters(), &fit.u(), fit.sum_of_squares()));
            }
        }
    }
}

/// A y that is nearly exact does not make a fit exact where x is not: what its rounding is measured against is the width of
/// both together.
#[test]
fn a_nearly_exact_y_beside_an_uncertain_x_is_fitted_by_x() {
    let x = [0.1, 0.9, 2.1, 2.9, 4.1, 4.9];
    let y = [10.0, 11.0, 12.0, 13.0, 14.0, 15.0];
    let points = Points::new(&x, &y).unwrap().with_u_y(1e-16).unwrap().with_u_x(0.1).unwrap();
    let by_x = polynomial::<f64, 2>(&points, None).unwrap();
    assert_eq!(by_x.stop(), Stop::Settled);
    let from_afar = curve(&Line, &points, &Start::at([3.0, 2.0]).unwrap(), None).unwrap();
    // The line of x against y, turned about.
    let turned = polynomial::<f64, 2>(&Points::new(&y, &x).unwrap().with_u_y(0.1).unwrap(), None).unwrap();
    let [a, b] = turned.parameters();
    for fit in [by_x, from_afar] {
        assert!((fit.parameters()[1] * b - 1.0).abs() < 1e-9, "{fit:?}");
        assert!((fit.parameters()[0] + a / b).abs() < 1e-7, "{fit:?}");
        assert!((fit.sum_of_squares() / turned.sum_of_squares() - 1.0).abs() < 1e-6, "{fit:?} {turned:?}");
    }
}

/// Columns whose squares no number holds are scaled, and a column of nothing is found to say nothing.
#[test]
fn columns_of_any_size_are_fitted() {
    let y = [3.0, 5.5, 7.0, 9.5];
    let of = |large: f64, small: f64| {
        let rows = [0.0, 1.0, 2.0, 3.0].map(|x| [large, small * x]);
        linear(&Points::of_rows(&rows, &y).unwrap(), None).map(|fit| (fit.parameters(), fit.u()))
    };
    let ([a, b], [u_a, u_b]) = of(1.0, 1.0).unwrap();
    let ([large, small], [u_large, u_small]) = of(1e180, 1e-120).unwrap();
    for (found, wanted) in [(large * 1e180, a), (small * 1e-120, b), (u_large * 1e180, u_a), (u_small * 1e-120, u_b)] {
        assert!((found / wanted - 1.0).abs() < 1e-15, "{found} for {wanted}");
    }
    assert_eq!(of(1.0, 0.0), Err(FitError::Undetermined { parameter: 1 }));
    assert_eq!(of(0.0, 1.0), Err(FitError::Undetermined { parameter: 0 }));
}
