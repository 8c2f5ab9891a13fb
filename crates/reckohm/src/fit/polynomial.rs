//! Polynomials, on an axis shifted and scaled so that their powers stay apart.

use super::curve::Curve;
use super::error::FitError;
use super::fitted::Fit;
use super::linear::solve;
use super::nonlinear::search;
use super::points::Points;
use super::start::Start;
use crate::number::pair::Pair;
use crate::number::{Real, Scalar};

/// The axis on which the points lie between -1 and 1: t = (x - centre)/half.
#[derive(Clone, Copy)]
struct Axis<R> {
    centre: R,
    half: R,
}

/// Fits a polynomial of `P` coefficients, that of degree 0 first: y = b0 + b1·x + b2·x² + …, by least squares. `P` is 2 for
/// a line.
///
/// Given: the points; if wanted, room for the residuals, y less the fitted value at x, in the unit of y. Returned: the
/// coefficients with their covariance.
///
/// It is solved on an axis shifted and scaled to the points, and turned into powers of x with twice the digits, so that the
/// coefficients keep the digits of the points. Their values on far away x may cancel all the same: the certified data set
/// Filip has coefficients of 1e3 whose curve is of the order of 1.
///
/// Source: as of [`linear`](super::linear()); for uncertain x as of [`curve`](super::curve()).
///
/// # Errors
/// [`FitError::TooFewPoints`]; [`FitError::Undetermined`] if there are fewer different x than coefficients;
/// [`FitError::MissingUncertaintyOfY`] and [`FitError::NotSettled`] for uncertain x; [`FitError::Lengths`] for the room;
/// [`FitError::TooLarge`]. Nothing is written then.
///
/// ```
/// use reckohm::fit::{Points, polynomial};
///
/// // JCGM 100 H.3 in short: corrections of a thermometer, against the reading less 20 °C.
/// let (above_20_c, correction): (_, [f64; 4]) = ([1.521, 3.003, 4.513, 6.511], [-0.171, -0.159, -0.156, -0.160]);
/// let line = polynomial::<f64, 2>(&Points::new(&above_20_c, &correction)?, None)?;
/// let [at_20_c, slope] = line.parameters();
/// assert!((at_20_c + 0.16937).abs() < 1e-5 && (slope - 0.002024).abs() < 1e-6);
/// assert_eq!(line.degrees_of_freedom(), 2);
/// # Ok::<(), reckohm::fit::FitError>(())
/// ```
pub fn polynomial<R: Real, const P: usize>(
    points: &Points<'_, R>,
    residuals: Option<&mut [R]>,
) -> Result<Fit<R, P>, FitError> {
    let axis = Axis::of(points)?;
    let basis = |x: &R| powers(axis.at(*x));
    let slopes = |x: &R| slopes(axis.at(*x)).map(|slope| slope / Pair::of(axis.half));
    let map = |coefficients| axis.in_powers_of_x(coefficients);
    if points.x_is_uncertain() {
        let exact_x = solve(points, None, basis, slopes, |coefficients| coefficients)?;
        return search(&OnAxis { axis }, points, &Start::at(exact_x.parameters())?, residuals, map);
    }
    solve(points, residuals, basis, slopes, map)
}

/// The polynomial on its axis, for points whose x is uncertain: no longer linear then.
struct OnAxis<R> {
    axis: Axis<R>,
}

impl<R: Real, const P: usize> Curve<P> for OnAxis<R> {
    fn at<S: Scalar>(&self, coefficients: &[S; P], x: S) -> S {
        let t = (x - S::lit(self.axis.centre.to_f64())) / S::lit(self.axis.half.to_f64());
        crate::number::polynomial::polynomial(coefficients, t)
    }
}

impl<R: Real> Axis<R> {
    fn of(points: &Points<'_, R>) -> Result<Self, FitError> {
        let [lower, upper] = points.ends().unwrap_or([R::ZERO; 2]);
        let (centre, half) = ((lower + upper) * R::lit(0.5), (upper - lower) * R::lit(0.5));
        if !(centre.finite() && half.finite()) {
            return Err(FitError::too_large::<R>());
        }
        // All points at one x: nothing but the first coefficient is determined, as the elimination will find.
        Ok(Axis { centre, half: if half == R::ZERO { R::ONE } else { half } })
    }

    fn at(&self, x: R) -> Pair<R> {
        (Pair::of(x) - Pair::of(self.centre)) / Pair::of(self.half)
    }

    /// The same polynomial in powers of x: the scale is taken off, then the shift, by Horner's scheme.
    fn in_powers_of_x<const P: usize>(&self, mut coefficients: [Pair<R>; P]) -> [Pair<R>; P] {
        let mut power = Pair::ONE;
        for coefficient in &mut coefficients {
            *coefficient = *coefficient / power;
            power = power * Pair::of(self.half);
        }
        let shift = -Pair::of(self.centre);
        for from in 0..P {
            let mut above = Pair::ZERO;
            for coefficient in coefficients.iter_mut().skip(from).rev() {
                *coefficient = *coefficient + shift * above;
                above = *coefficient;
            }
        }
        coefficients
    }
}

/// 1, t, t², …
fn powers<R: Real, const P: usize>(t: Pair<R>) -> [Pair<R>; P] {
    let mut power = Pair::ONE;
    [Pair::<R>::ONE; P].map(|_| {
        let this = power;
        power = power * t;
        this
    })
}

/// Their slopes: 0, 1, 2·t, …
fn slopes<R: Real, const P: usize>(t: Pair<R>) -> [Pair<R>; P] {
    let (mut power, mut degree) = (Pair::ZERO, R::ZERO);
    [Pair::<R>::ONE; P].map(|_| {
        let this = Pair::of(degree) * power;
        power = if degree == R::ZERO { Pair::ONE } else { power * t };
        degree += R::ONE;
        this
    })
}
