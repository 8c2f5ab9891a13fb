//! Models that are linear in their parameters.

use super::error::{FitError, List};
use super::fitted::{End, Fit, RESIDUALS, SIDES, Stop, sides};
use super::points::Points;
use super::triangle::Triangle;
use crate::number::Real;
use crate::number::pair::Pair;

/// Fits a model that is linear in its parameters: y = b0·x0 + b1·x1 + …, by least squares.
///
/// Given: the points, of which each x is the row of numbers that the parameters are multiplied by; if wanted, room for the
/// residuals, y less the fitted value, in the unit of y. Returned: the parameters with their covariance.
///
/// Source: Householder QR, Lawson and Hanson, Solving Least Squares Problems, chapter 27, with columns scaled and with twice the
/// digits; JCGM 100 H.3 for the covariance. Columns that are nearly combinations of one another keep the digits of their input.
///
/// # Errors
/// [`FitError::TooFewPoints`]; [`FitError::Undetermined`] if the rows do not tell the parameters apart;
/// [`FitError::Lengths`] for the room; [`FitError::TooLarge`]. Nothing is written then.
///
/// ```
/// use reckohm::fit::{Points, linear};
///
/// // Two standard resistors in all ways that two terminals have: alone, and in series.
/// let rows = [[1.0, 0.0], [0.0, 1.0], [1.0, 1.0]];
/// let ohm = [100.02, 199.99, 300.04];
/// let mut residuals = [0.0; 3];
/// let fit = linear(&Points::of_rows(&rows, &ohm)?, Some(&mut residuals))?;
/// let [first, second]: [f64; 2] = fit.parameters();
/// assert!((first - 100.03).abs() < 1e-12 && (second - 200.0).abs() < 1e-12);
/// assert!((residuals[2] - 0.01).abs() < 1e-12);
/// assert_eq!(fit.degrees_of_freedom(), 1);
/// # Ok::<(), reckohm::fit::FitError>(())
/// ```
pub fn linear<R: Real, const P: usize>(
    points: &Points<'_, R, [R; P]>,
    residuals: Option<&mut [R]>,
) -> Result<Fit<R, P>, FitError> {
    let mut largest = [R::ZERO; P];
    for (_, row, _, _) in points.each() {
        for (largest, x) in largest.iter_mut().zip(row) {
            *largest = largest.larger(x.magnitude());
        }
    }
    let scales = largest.map(|largest| Pair::of(if largest == R::ZERO { R::ONE } else { largest }));
    let scaled = |mut row: [Pair<R>; P]| {
        for (x, scale) in row.iter_mut().zip(scales) {
            *x = *x / scale;
        }
        row
    };
    let basis = |row: &[R; P]| scaled(row.map(Pair::of));
    // A shared error of x is not said of rows.
    solve(points, residuals, basis, |_| [Pair::ZERO; P], scaled)
}

/// Solves for the factors of these basis functions, whose slopes by x are given too, and maps them to those of the model.
pub(super) fn solve<R: Real, X, const P: usize>(
    points: &Points<'_, R, X>,
    residuals: Option<&mut [R]>,
    basis: impl Fn(&X) -> [Pair<R>; P],
    slopes: impl Fn(&X) -> [Pair<R>; P],
    map: impl Fn([Pair<R>; P]) -> [Pair<R>; P],
) -> Result<Fit<R, P>, FitError> {
    points.enough_for(P)?;
    if let Some(room) = &residuals {
        points.along(List::Residuals, room.len())?;
    }
    let mut first = Triangle::<R, P, 1>::new();
    for (_, x, y, width) in points.each() {
        first.take(basis(x).map(|b| b / Pair::of(width)), [Pair::of(y) / Pair::of(width)]);
    }
    if let Some(parameter) = first.first_dependent() {
        return Err(FitError::Undetermined { parameter: parameter as u64 });
    }
    let parameters = first.solve(first.side(RESIDUALS));

    // Once more with what is left, for the sum of squares and for the shared errors, which need the slopes.
    let mut triangle = Triangle::<R, P, SIDES>::new();
    for (_, x, y, width) in points.each() {
        let row = basis(x);
        let residual = Pair::of(y) - dot(row, parameters);
        let slope = dot(slopes(x), parameters).value();
        triangle.take(row.map(|b| b / Pair::of(width)), sides(residual, slope, y, points.common(), width));
    }
    let (held, scatter_is_known) = ([false; P], points.scatter_is_known());
    let end =
        End { parameters, triangle, held, points: points.count(), scatter_is_known, stop: Stop::Solved, steps: 1 };
    let fit = end.fit(map)?;
    if let Some(room) = residuals {
        for (place, (_, x, y, _)) in room.iter_mut().zip(points.each()) {
            *place = (Pair::of(y) - dot(basis(x), parameters)).value();
        }
    }
    Ok(fit)
}

/// The least-squares factors of these rows, for a start; none if the rows do not tell them apart.
pub(crate) fn rough<R: Real, const P: usize>(rows: impl Iterator<Item = ([R; P], R)>) -> Option<[R; P]> {
    let mut triangle = Triangle::<R, P, 1>::new();
    for (row, wanted) in rows {
        triangle.take(row.map(Pair::of), [Pair::of(wanted)]);
    }
    triangle.first_dependent().is_none().then(|| triangle.solve(triangle.side(RESIDUALS)).map(Pair::value))
}

fn dot<R: Real, const P: usize>(a: [Pair<R>; P], b: [Pair<R>; P]) -> Pair<R> {
    a.into_iter().zip(b).fold(Pair::ZERO, |sum, (a, b)| sum + a * b)
}
