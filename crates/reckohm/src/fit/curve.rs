//! Models that are not linear in their parameters: what a caller writes, and what it says at each point.

use super::fitted::{RESIDUALS, SIDES, sides};
use super::points::Points;
use super::triangle::Triangle;
use crate::number::pair::Pair;
use crate::number::{Dual, Real, Scalar};

/// The most corrections of an x; each takes a fraction of what the one before it left.
const CORRECTIONS: usize = 60;
/// A correction of less than this part of the standard uncertainty of x may be rounding: in single precision kelvin
/// temperatures come in steps of 3e-5.
const SMALL: f64 = 1.0e-2;

/// A model with `P` parameters: y of an x. It is written once, for every number, and its exact slopes come from
/// [`Dual`](crate::number::Dual).
///
/// ```
/// use reckohm::fit::{Curve, Points, Start, curve};
/// use reckohm::number::Scalar;
///
/// /// A reading that settles: b0 + b1·exp(-t/b2).
/// struct Settling;
///
/// impl Curve<3> for Settling {
///     fn at<S: Scalar>(&self, [end, away, tau]: &[S; 3], time_s: S) -> S {
///         *end + *away * (-time_s / *tau).exponential()
///     }
/// }
///
/// let time_s = [0.0, 1.0, 2.0, 3.0, 4.0, 5.0];
/// let ohm = [1500.0, 1303.3, 1183.9, 1111.6, 1067.6, 1041.0];
/// let fit = curve(&Settling, &Points::new(&time_s, &ohm)?, &Start::at([1000.0, 600.0, 1.0])?, None)?;
/// let [end, _, tau] = fit.parameters();
/// assert!((end - 1000.0_f64).abs() < 0.5 && (tau - 2.0).abs() < 0.005);
/// # Ok::<(), reckohm::fit::FitError>(())
/// ```
pub trait Curve<const P: usize> {
    /// y of this x, with these parameters. No checks: what is not finite is not taken.
    fn at<S: Scalar>(&self, parameters: &[S; P], x: S) -> S;
}

/// A point as the model has it.
struct Place<R> {
    /// Where on the x axis: the measured x, or where the curve is nearest where that is uncertain.
    x: R,
    /// y less the curve's value there, and less what the slope makes of the shift of x.
    residual: R,
    /// The curve's slope there; 0 where nothing asks for it.
    slope: R,
    /// Width of the residual.
    width: R,
}

/// The points with one model.
pub(super) struct Fitted<'m, 'a, C, R, const P: usize> {
    pub(super) model: &'m C,
    pub(super) points: &'m Points<'a, R>,
}

impl<C: Curve<P>, R: Real, const P: usize> Fitted<'_, '_, C, R, P> {
    /// The point at this x, y and width of y. None where the model gives no finite number.
    fn place(&self, parameters: &[R; P], index: usize, x: R, y: R, width: R) -> Option<Place<R>> {
        let u_x = self.points.u_x(index);
        let plain = || Place { x, residual: y - self.model.at(parameters, x), slope: R::ZERO, width };
        let place = if u_x > R::ZERO {
            self.nearest(parameters, [x, y], [u_x, width])?
        } else if self.points.common().x > R::ZERO {
            Place { slope: self.slope(parameters, x).partials().into_iter().next()?, ..plain() }
        } else {
            plain()
        };
        (place.residual.finite() && place.slope.finite() && place.width.finite()).then_some(place)
    }

    /// The curve's value with its slope by x.
    fn slope(&self, parameters: &[R; P], x: R) -> Dual<R, 1> {
        self.model.at(&parameters.map(Dual::constant), Dual::variable(x, 0))
    }

    /// Where the curve is nearest to a point, in units of the standard uncertainties of x and y: the adjusted x of Deming
    /// (Statistical Adjustment of Data, 1943), iterated as Britt and Luecke do (Technometrics 15, 1973). There the square of
    /// the residual over its width is that of the distance, with the same derivatives by the parameters.
    fn nearest(&self, parameters: &[R; P], [x, y]: [R; 2], [u_x, u_y]: [R; 2]) -> Option<Place<R>> {
        let mut at = x;
        let mut last = R::INFINITE;
        for _ in 0..CORRECTIONS {
            let curve = self.slope(parameters, at);
            let slope = curve.partials().into_iter().next()?;
            let (of_x, of_y) = (slope * u_x, u_y);
            let variance = of_x * of_x + of_y * of_y;
            let residual = y - curve.value() - slope * (x - at);
            let next = x + u_x * (of_x / variance) * residual;
            let move_by = (next - at).magnitude();
            let rounding = R::SPACING_AT_ONE * at.magnitude().larger(x.magnitude());
            // What no longer shrinks and is small is rounding of the model's values.
            if move_by <= rounding || (move_by >= last && move_by <= R::lit(SMALL) * u_x) {
                return Some(Place { x: at, residual, slope, width: variance.square_root() });
            }
            (at, last) = (next, move_by);
        }
        None
    }

    /// The sum of squares of the residuals over their widths.
    pub(super) fn sum_of_squares(&self, parameters: &[R; P]) -> Option<Pair<R>> {
        let mut sum = Pair::ZERO;
        for (index, x, y, width) in self.points.each() {
            let place = self.place(parameters, index, *x, y, width)?;
            sum = sum + (Pair::of(place.residual) / Pair::of(place.width)).squared();
        }
        sum.value().finite().then_some(sum)
    }

    /// The linear problem at these parameters, and the size of the points over their widths, of which the residuals have the
    /// rounding; or the first point at which there is none.
    pub(super) fn triangle(&self, parameters: &[R; P]) -> Result<(Triangle<R, P, SIDES>, R), (usize, R)> {
        let variables = Dual::variables(*parameters);
        let mut triangle = Triangle::new();
        let mut squares = Pair::ZERO;
        for (index, x, y, width) in self.points.each() {
            let place = self.place(parameters, index, *x, y, width).ok_or((index, *x))?;
            let partials = self.model.at(&variables, Dual::constant(place.x)).partials();
            if !partials.iter().copied().all(Real::finite) {
                return Err((index, *x));
            }
            let row = partials.map(|partial| Pair::of(partial) / Pair::of(place.width));
            let by_x = if self.points.x_is_uncertain() { place.slope * *x } else { R::ZERO };
            let size = y.magnitude() + by_x.magnitude();
            squares = squares + (Pair::of(size) / Pair::of(place.width)).squared();
            triangle.take(row, sides(Pair::of(place.residual), place.slope, y, self.points.common(), place.width));
        }
        let total = triangle.explained(RESIDUALS) + triangle.left_over(RESIDUALS);
        let size = squares.square_root().value();
        if total.value().finite() { Ok((triangle, size)) } else { Err((0, R::ZERO)) }
    }

    /// y less the fitted value at x.
    pub(super) fn residuals_into(&self, parameters: &[R; P], room: &mut [R]) {
        for (place, (_, x, y, _)) in room.iter_mut().zip(self.points.each()) {
            *place = y - self.model.at(parameters, *x);
        }
    }
}
