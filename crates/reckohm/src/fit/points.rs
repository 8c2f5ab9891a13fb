//! The points that are fitted, with what is known of their errors.

use super::error::{FitError, List};
use crate::number::arrays::first_bad;
use crate::number::{FIT_COMMON_U, FIT_POINT, FIT_U_X, FIT_U_Y, FIT_WEIGHT, RangeRow, Real};

/// What is known of the scatter of y.
#[derive(Clone, Copy, Debug, PartialEq)]
enum Scatter<'a, R> {
    /// Nothing: the same for all, found from the residuals.
    Alike,
    /// How the variances go, up to a factor found from the residuals.
    Weights(&'a [R]),
    /// The standard uncertainty of all.
    Known(R),
    /// The standard uncertainty of each.
    KnownEach(&'a [R]),
}

/// Standard uncertainties of x.
#[derive(Clone, Copy, Debug, PartialEq)]
enum Width<'a, R> {
    One(R),
    Each(&'a [R]),
}

/// Standard uncertainties of the errors that all points share.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Common<R> {
    pub(super) x: R,
    pub(super) y: R,
    pub(super) fraction_of_y: R,
}

/// Points to be fitted, y against x. They are the caller's slices; what is known of their errors is added by name.
///
/// - Nothing said: x is exact, and y scatters alike at all points, by as much as the residuals show.
/// - [`with_weights`](Points::with_weights): the variances of y go as the reciprocals of the weights; the factor is found from
///   the residuals.
/// - [`with_u_y`](Points::with_u_y), [`with_each_u_y`](Points::with_each_u_y): the standard uncertainties of y are known, and
///   the residuals only show whether they are right.
/// - [`with_u_x`](Points::with_u_x), [`with_each_u_x`](Points::with_each_u_x): x is uncertain as well, each point by itself.
/// - [`with_common_u_x`](Points::with_common_u_x), [`with_common_u_y`](Points::with_common_u_y),
///   [`with_common_fraction`](Points::with_common_fraction): an error that all points share. No number of points averages it;
///   it is in the covariance of the parameters whole.
///
/// Give x and y in units in which their squares are numbers of the type; what the square of is 0 counts as 0.
///
/// `X` is the number type for a curve of one x, and `[R; P]` for the rows of a linear model.
///
/// ```
/// use reckohm::fit::{Points, polynomial};
///
/// // A platinum element against a thermometer whose own error, 0.03 K, all points share; gradients differ by 0.01 K.
/// let temperature_c = [0.0, 10.0, 20.0, 30.0, 40.0];
/// let ohm = [100.01, 103.90, 107.80, 111.67, 115.55];
/// let points = Points::new(&temperature_c, &ohm)?.with_u_y(0.005)?.with_u_x(0.01)?.with_common_u_x(0.03)?;
/// let line = polynomial::<f64, 2>(&points, None)?;
/// // 0.03 K of the thermometer are 0.012 ohm of the intercept: far more than five points alone leave.
/// assert!(line.u()[0] > 0.012 && line.u()[0] < 0.014);
/// # Ok::<(), reckohm::fit::FitError>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Points<'a, R = f64, X = R> {
    x: &'a [X],
    y: &'a [R],
    scatter: Scatter<'a, R>,
    u_x: Option<Width<'a, R>>,
    common: Common<R>,
}

impl<'a, R: Real> Points<'a, R> {
    /// Points of a curve.
    ///
    /// Given: x and y in any units, finite, as many of each.
    ///
    /// # Errors
    /// [`FitError::Lengths`], and [`FitError::Element`] for a number that is not finite.
    ///
    /// ```
    /// use reckohm::fit::Points;
    /// assert!(Points::new(&[1.0, 2.0], &[4.7, 10.0]).is_ok());
    /// assert!(Points::new(&[1.0, 2.0], &[4.7]).is_err());
    /// ```
    pub fn new(x: &'a [R], y: &'a [R]) -> Result<Self, FitError> {
        all(&FIT_POINT, x.iter().copied())?;
        Points::of(x, y)
    }

    /// The same points with one standard uncertainty of x for all, in the unit of x; each errs by itself.
    ///
    /// Given: 0 or more, finite.
    ///
    /// # Errors
    /// [`FitError::Range`]. A fit of such points needs u(y) as well.
    ///
    /// ```
    /// use reckohm::fit::Points;
    /// assert!(Points::new(&[1.0, 2.0], &[4.7, 10.0])?.with_u_x(0.1)?.with_u_x(-0.1).is_err());
    /// # Ok::<(), reckohm::fit::FitError>(())
    /// ```
    pub fn with_u_x(self, u_x: R) -> Result<Self, FitError> {
        Ok(Points { u_x: Some(Width::One(FIT_U_X.check(u_x)?)), ..self })
    }

    /// The same points with a standard uncertainty of each x.
    ///
    /// Given: one for each point, 0 or more, finite.
    ///
    /// # Errors
    /// [`FitError::Lengths`], and [`FitError::Element`] for a number outside.
    ///
    /// ```
    /// use reckohm::fit::Points;
    /// assert!(Points::new(&[1.0, 2.0], &[4.7, 10.0])?.with_each_u_x(&[0.1, 0.2]).is_ok());
    /// # Ok::<(), reckohm::fit::FitError>(())
    /// ```
    pub fn with_each_u_x(self, u_x: &'a [R]) -> Result<Self, FitError> {
        self.along(List::UX, u_x.len())?;
        all(&FIT_U_X, u_x.iter().copied())?;
        Ok(Points { u_x: Some(Width::Each(u_x)), ..self })
    }

    /// The same points with an error of x that all share, by its standard uncertainty in the unit of x: that of the
    /// reference thermometer.
    ///
    /// Given: 0 or more, finite.
    ///
    /// # Errors
    /// [`FitError::Range`].
    ///
    /// ```
    /// use reckohm::fit::{Points, polynomial};
    /// let (x, y) = ([1.0, 2.0, 3.0], [2.0, 4.0, 6.0]);
    /// let line = polynomial::<f64, 2>(&Points::new(&x, &y)?.with_u_y(0.1)?.with_common_u_x(0.5)?, None)?;
    /// let alone = polynomial::<f64, 2>(&Points::new(&x, &y)?.with_u_y(0.1)?, None)?;
    /// // Half a unit of x at a slope of 2 shifts the line by one.
    /// assert!((line.covariance()[0][0] - alone.covariance()[0][0] - 1.0).abs() < 1e-14);
    /// # Ok::<(), reckohm::fit::FitError>(())
    /// ```
    pub fn with_common_u_x(self, u_x: R) -> Result<Self, FitError> {
        Ok(Points { common: Common { x: FIT_COMMON_U.check(u_x)?, ..self.common }, ..self })
    }

    /// The least x and the largest; none without points.
    pub(crate) fn ends(&self) -> Option<[R; 2]> {
        let first = *self.x.first()?;
        let wider = |[lower, upper]: [R; 2], x: &R| [lower.smaller(*x), upper.larger(*x)];
        Some(self.x.iter().fold([first; 2], wider))
    }

    /// Whether x is uncertain, each point by itself.
    pub(super) fn x_is_uncertain(&self) -> bool {
        self.u_x.is_some()
    }

    /// Standard uncertainty of x of a point.
    pub(super) fn u_x(&self, index: usize) -> R {
        match self.u_x {
            None => R::ZERO,
            Some(Width::One(u)) => u,
            Some(Width::Each(each)) => each.get(index).copied().unwrap_or(R::ZERO),
        }
    }
}

impl<'a, R: Real, const P: usize> Points<'a, R, [R; P]> {
    /// Points of a linear model: for each the numbers that the parameters are multiplied by, 1 for a constant.
    ///
    /// Given: finite numbers, a row for each y.
    ///
    /// # Errors
    /// [`FitError::Lengths`], and [`FitError::Element`] for a number that is not finite.
    ///
    /// ```
    /// use reckohm::fit::{Points, linear};
    /// // A drift with temperature and time: y = b0 + b1·temperature + b2·time.
    /// let rows = [[1.0, 20.0, 0.0], [1.0, 25.0, 1.0], [1.0, 30.0, 1.5], [1.0, 20.0, 3.0]];
    /// let fit = linear(&Points::of_rows(&rows, &[10.0, 15.5, 21.0, 10.9])?.with_u_y(0.1)?, None)?;
    /// assert!((fit.parameters()[1] - 1.0_f64).abs() < 0.1);
    /// # Ok::<(), reckohm::fit::FitError>(())
    /// ```
    pub fn of_rows(rows: &'a [[R; P]], y: &'a [R]) -> Result<Self, FitError> {
        let worst = |row: &[R; P]| row.iter().copied().find(|x| !x.finite()).unwrap_or(R::ZERO);
        all(&FIT_POINT, rows.iter().map(worst))?;
        Points::of(rows, y)
    }
}

impl<'a, R: Real, X> Points<'a, R, X> {
    fn of(x: &'a [X], y: &'a [R]) -> Result<Self, FitError> {
        let common = Common { x: R::ZERO, y: R::ZERO, fraction_of_y: R::ZERO };
        let points = Points { x, y, scatter: Scatter::Alike, u_x: None, common };
        points.along(List::X, x.len())?;
        all(&FIT_POINT, y.iter().copied())?;
        Ok(points)
    }

    /// The same points with weights, which go as the reciprocals of the variances of y; only their ratios count.
    ///
    /// Given: one for each point, more than 0, finite. What was said of u(y) is forgotten.
    ///
    /// # Errors
    /// [`FitError::Lengths`], and [`FitError::Element`] for a number outside.
    ///
    /// ```
    /// use reckohm::fit::{Points, polynomial};
    /// // A mean of three, the last one twice as sure: it counts as two readings.
    /// let points = Points::new(&[0.0; 3], &[1.0, 2.0, 4.0])?.with_weights(&[1.0, 1.0, 2.0])?;
    /// assert_eq!(polynomial::<f64, 1>(&points, None)?.parameters(), [2.75]);
    /// # Ok::<(), reckohm::fit::FitError>(())
    /// ```
    pub fn with_weights(self, weights: &'a [R]) -> Result<Self, FitError> {
        self.along(List::Weights, weights.len())?;
        all(&FIT_WEIGHT, weights.iter().copied())?;
        Ok(Points { scatter: Scatter::Weights(weights), ..self })
    }

    /// The same points with one standard uncertainty of y for all, known from elsewhere, in the unit of y; each errs by
    /// itself.
    ///
    /// Given: more than 0, finite. What was said of weights is forgotten.
    ///
    /// # Errors
    /// [`FitError::Range`].
    ///
    /// ```
    /// use reckohm::fit::{Points, polynomial};
    /// let points = Points::new(&[0.0, 0.0], &[4.0, 5.0])?.with_u_y(0.5)?;
    /// assert!((polynomial::<f64, 1>(&points, None)?.u()[0] - 0.5_f64 / 2.0_f64.sqrt()).abs() < 1e-15);
    /// # Ok::<(), reckohm::fit::FitError>(())
    /// ```
    pub fn with_u_y(self, u_y: R) -> Result<Self, FitError> {
        Ok(Points { scatter: Scatter::Known(FIT_U_Y.check(u_y)?), ..self })
    }

    /// The same points with a known standard uncertainty of each y.
    ///
    /// Given: one for each point, more than 0, finite. What was said of weights is forgotten.
    ///
    /// # Errors
    /// [`FitError::Lengths`], and [`FitError::Element`] for a number outside.
    ///
    /// ```
    /// use reckohm::fit::{Points, polynomial};
    /// let points = Points::new(&[0.0, 0.0], &[4.0, 5.0])?.with_each_u_y(&[0.5, 1.0])?;
    /// assert!((polynomial::<f64, 1>(&points, None)?.parameters()[0] - 4.2).abs() < 1e-15);
    /// # Ok::<(), reckohm::fit::FitError>(())
    /// ```
    pub fn with_each_u_y(self, u_y: &'a [R]) -> Result<Self, FitError> {
        self.along(List::UY, u_y.len())?;
        all(&FIT_U_Y, u_y.iter().copied())?;
        Ok(Points { scatter: Scatter::KnownEach(u_y), ..self })
    }

    /// The same points with an error of y that all share, by its standard uncertainty in the unit of y: the counts of the
    /// meter's clause on one span.
    ///
    /// Given: 0 or more, finite.
    ///
    /// # Errors
    /// [`FitError::Range`].
    ///
    /// ```
    /// use reckohm::fit::{Points, polynomial};
    /// let points = Points::new(&[0.0, 0.0], &[4.0, 5.0])?.with_u_y(0.3)?.with_common_u_y(0.4)?;
    /// assert!((polynomial::<f64, 1>(&points, None)?.u()[0] - (0.045_f64 + 0.16).sqrt()).abs() < 1e-15);
    /// # Ok::<(), reckohm::fit::FitError>(())
    /// ```
    pub fn with_common_u_y(self, u_y: R) -> Result<Self, FitError> {
        Ok(Points { common: Common { y: FIT_COMMON_U.check(u_y)?, ..self.common }, ..self })
    }

    /// The same points with an error of y that all share as a fraction of it, by its standard uncertainty: the gain of a
    /// meter.
    ///
    /// Given: a fraction, not percent, 0 or more, finite.
    ///
    /// # Errors
    /// [`FitError::Range`].
    ///
    /// ```
    /// use reckohm::fit::{Points, polynomial};
    /// let points = Points::new(&[1.0, 2.0], &[10.0, 20.0])?.with_u_y(1e-9)?.with_common_fraction(0.01)?;
    /// // A gain of one per cent is one per cent of the slope.
    /// assert!((polynomial::<f64, 2>(&points, None)?.u()[1] - 0.1).abs() < 1e-12);
    /// # Ok::<(), reckohm::fit::FitError>(())
    /// ```
    pub fn with_common_fraction(self, fraction: R) -> Result<Self, FitError> {
        Ok(Points { common: Common { fraction_of_y: FIT_COMMON_U.check(fraction)?, ..self.common }, ..self })
    }

    /// The number of points.
    pub(super) fn count(&self) -> usize {
        self.y.len()
    }

    /// The points as they come: index, x, y and the width of y.
    pub(crate) fn each(&self) -> impl Iterator<Item = (usize, &'a X, R, R)> {
        let scatter = self.scatter;
        let pairs = self.x.iter().zip(self.y).enumerate();
        pairs.map(move |(index, (x, y))| (index, x, *y, scatter.width(index)))
    }

    pub(super) fn common(&self) -> Common<R> {
        self.common
    }

    /// Whether the standard uncertainties of y are known, and not to be found from the residuals.
    pub(super) fn scatter_is_known(&self) -> bool {
        matches!(self.scatter, Scatter::Known(_) | Scatter::KnownEach(_))
    }

    /// Whether there are points enough for so many free parameters.
    pub(super) fn enough_for(&self, free: usize) -> Result<(), FitError> {
        let needed = if self.scatter_is_known() { free } else { free + 1 };
        if self.count() < needed.max(1) {
            return Err(FitError::TooFewPoints { given: self.count() as u64, needed: needed.max(1) as u64 });
        }
        if self.u_x.is_some() && !self.scatter_is_known() {
            return Err(FitError::MissingUncertaintyOfY);
        }
        Ok(())
    }

    /// Whether a list has one element for each point.
    pub(super) fn along(&self, list: List, given: usize) -> Result<(), FitError> {
        if given == self.count() {
            return Ok(());
        }
        Err(FitError::Lengths { list, needed: self.count() as u64, given: given as u64 })
    }
}

impl<R: Real> Scatter<'_, R> {
    fn width(&self, index: usize) -> R {
        match self {
            Scatter::Alike => R::ONE,
            Scatter::Weights(each) => R::ONE / each.get(index).copied().unwrap_or(R::ONE).square_root(),
            Scatter::Known(u) => *u,
            Scatter::KnownEach(each) => each.get(index).copied().unwrap_or(R::ONE),
        }
    }
}

/// Whether all of these numbers are within a range.
fn all<R: Real>(row: &'static RangeRow, numbers: impl Iterator<Item = R>) -> Result<(), FitError> {
    match first_bad(numbers, |number| row.check(number)) {
        Some((fault, index, failed)) => Err(FitError::Element { fault, index, failed }),
        None => Ok(()),
    }
}
