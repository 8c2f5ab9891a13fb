//! What comes out of a fit.

use super::error::FitError;
use super::points::Common;
use super::triangle::Triangle;
use crate::number::Real;
use crate::number::pair::Pair;

/// The right-hand sides of a fit: its residuals, and an error of one standard uncertainty of each kind that all points share.
pub(super) const SIDES: usize = 4;
pub(super) const RESIDUALS: usize = 0;
const COMMON: [usize; 3] = [1, 2, 3];

/// Why a fit stopped.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[non_exhaustive]
pub enum Stop {
    /// The model is linear in its parameters: solved at once.
    Solved,
    /// The part of the residuals that the parameters could still explain is less than a millionth of them, in single
    /// precision less than thirty millionths.
    Settled,
    /// What is left of the step and of the gain is rounding of the model's values; the residuals are above it.
    Rounding,
    /// The curve goes through all points, but for rounding.
    Exact,
}

impl Stop {
    /// It in one word.
    ///
    /// ```
    /// assert_eq!(reckohm::fit::Stop::Settled.name(), "settled");
    /// ```
    pub const fn name(self) -> &'static str {
        match self {
            Stop::Solved => "solved",
            Stop::Settled => "settled",
            Stop::Rounding => "rounding",
            Stop::Exact => "exact",
        }
    }
}

/// Fitted parameters with their covariance.
///
/// The covariance has two parts: the scatter of the points, each by itself, and whole, whatever the number of points, the
/// errors that they share. Where u(y) is known, the first follows from it and is not scaled by the residuals; else it is found
/// from them (JCGM 100 H.3). A parameter held by its bounds counts as exact: its variance is 0, and it takes no degree of
/// freedom.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Fit<R, const P: usize> {
    parameters: [R; P],
    /// What an error of one standard uncertainty in each independent direction makes of the parameters.
    directions: [[R; P]; P],
    /// The same of each error that all points share.
    shared: [[R; P]; COMMON.len()],
    sum_of_squares: R,
    degrees_of_freedom: usize,
    held: [bool; P],
    stop: Stop,
    steps: usize,
}

/// What a fit ends with, on the axis it was made on.
pub(super) struct End<R, const P: usize> {
    pub(super) parameters: [Pair<R>; P],
    pub(super) triangle: Triangle<R, P, SIDES>,
    pub(super) held: [bool; P],
    pub(super) points: usize,
    pub(super) scatter_is_known: bool,
    pub(super) stop: Stop,
    pub(super) steps: usize,
}

/// The right-hand sides of a point, each divided by its width: the residual, and what the shared errors do to it.
pub(super) fn sides<R: Real>(residual: Pair<R>, slope: R, y: R, common: Common<R>, width: R) -> [Pair<R>; SIDES] {
    let by_x = Pair::of(slope) * Pair::of(common.x);
    let by_fraction = Pair::of(y) * Pair::of(common.fraction_of_y);
    [residual, by_x, Pair::of(common.y), by_fraction].map(|side| side / Pair::of(width))
}

impl<R: Real, const P: usize> End<R, P> {
    /// The fit, with its parameters turned into those of the model as the caller has it: a linear map.
    pub(super) fn fit(self, map: impl Fn([Pair<R>; P]) -> [Pair<R>; P]) -> Result<Fit<R, P>, FitError> {
        if let Some(parameter) = self.triangle.first_dependent() {
            return Err(FitError::Undetermined { parameter: parameter as u64 });
        }
        let free = self.held.iter().filter(|held| !**held).count();
        let degrees_of_freedom = self.points.saturating_sub(free);
        let squares = self.triangle.left_over(RESIDUALS);
        let factor =
            if self.scatter_is_known { Pair::ONE } else { squares / Pair::of(R::of_count(degrees_of_freedom)) };

        let scale = factor.square_root();
        let mut directions = [[R::ZERO; P]; P];
        let free = directions.iter_mut().enumerate().zip(self.held).filter(|(_, held)| !held);
        for ((column, direction), _) in free {
            *direction = map(self.triangle.inverse_column(column).map(|x| x * scale)).map(Pair::value);
        }
        let fit = Fit {
            parameters: map(self.parameters).map(Pair::value),
            directions,
            shared: COMMON.map(|side| map(self.triangle.solve(self.triangle.side(side))).map(Pair::value)),
            sum_of_squares: squares.value(),
            degrees_of_freedom,
            held: self.held,
            stop: self.stop,
            steps: self.steps,
        };
        let covariance = fit.covariance();
        let numbers = covariance.iter().flatten().chain(&fit.parameters).chain([&fit.sum_of_squares]);
        if numbers.copied().all(Real::finite) { Ok(fit) } else { Err(FitError::too_large::<R>()) }
    }
}

impl<R: Real, const P: usize> Fit<R, P> {
    /// The parameters, in the order of the model.
    pub fn parameters(&self) -> [R; P] {
        self.parameters
    }

    /// Covariance of the parameters, in the products of their units.
    pub fn covariance(&self) -> [[R; P]; P] {
        let mut covariance = [[Pair::ZERO; P]; P];
        for vector in self.directions.iter().chain(&self.shared) {
            for (row, a) in covariance.iter_mut().zip(vector) {
                for (element, b) in row.iter_mut().zip(vector) {
                    *element = *element + Pair::of(*a) * Pair::of(*b);
                }
            }
        }
        covariance.map(|row| row.map(Pair::value))
    }

    /// Standard uncertainties of the parameters: the roots of the variances.
    ///
    /// ```
    /// use reckohm::fit::{Points, polynomial};
    /// let fit = polynomial::<f64, 1>(&Points::new(&[0.0; 3], &[4.0, 5.0, 6.0])?, None)?;
    /// assert_eq!(fit.u(), [(1.0_f64 / 3.0).sqrt()]);
    /// # Ok::<(), reckohm::fit::FitError>(())
    /// ```
    pub fn u(&self) -> [R; P] {
        let mut u = [R::ZERO; P];
        for (at, u) in u.iter_mut().enumerate() {
            *u = self.length(|vector| vector.get(at).map_or(Pair::ZERO, |x| Pair::of(*x)));
        }
        u
    }

    /// Standard uncertainty of what depends on the parameters, by its partial derivatives by them (JCGM 100 5.2.2). It keeps
    /// digits where parameters are so closely correlated that the products of a rounded covariance would cancel.
    ///
    /// Given: the partial derivatives, such as [`Dual`](crate::number::Dual) has them.
    ///
    /// ```
    /// use reckohm::fit::{Points, polynomial};
    /// let (x, y) = ([0.0, 1.0, 2.0, 3.0], [1.0, 3.1, 4.9, 7.0]);
    /// let line = polynomial::<f64, 2>(&Points::new(&x, &y)?, None)?;
    /// // The line is known best in the middle of its points.
    /// assert!(line.u_of(&[1.0, 1.5]) < line.u_of(&[1.0, 0.0]));
    /// assert_eq!(line.u_of(&[0.0, 1.0]), line.u()[1]);
    /// # Ok::<(), reckohm::fit::FitError>(())
    /// ```
    pub fn u_of(&self, partials: &[R; P]) -> R {
        self.length(|vector| {
            let products = vector.iter().zip(partials).map(|(a, b)| Pair::of(*a) * Pair::of(*b));
            products.fold(Pair::ZERO, |sum, x| sum + x)
        })
    }

    /// The root of the sum of squares of what each independent error makes of a number, where only that has to be a number
    /// and not its square.
    fn length(&self, of: impl Fn(&[R; P]) -> Pair<R>) -> R {
        let vectors = || self.directions.iter().chain(&self.shared);
        let largest = vectors().fold(R::ZERO, |largest, vector| largest.larger(of(vector).value().magnitude()));
        if largest == R::ZERO {
            return R::ZERO;
        }
        let squares = vectors().map(|vector| (of(vector) / Pair::of(largest)).squared());
        (squares.fold(Pair::ZERO, |sum, x| sum + x).square_root() * Pair::of(largest)).value()
    }

    /// The sum of squares of the residuals, each divided by its standard uncertainty, or times the root of its weight, where
    /// one was given.
    pub fn sum_of_squares(&self) -> R {
        self.sum_of_squares
    }

    /// Points less free parameters.
    pub fn degrees_of_freedom(&self) -> usize {
        self.degrees_of_freedom
    }

    /// Residual standard deviation: the root of the sum of squares over the degrees of freedom. In the unit of y where
    /// nothing was said of u(y); where that is known, a pure number about 1 if it is right. None without degrees of freedom.
    pub fn residual_sd(&self) -> Option<R> {
        if self.degrees_of_freedom == 0 {
            return None;
        }
        Some((self.sum_of_squares / R::of_count(self.degrees_of_freedom)).square_root())
    }

    /// Which parameters are held by their bounds.
    pub fn held(&self) -> [bool; P] {
        self.held
    }

    /// Why the fit stopped.
    pub fn stop(&self) -> Stop {
        self.stop
    }

    /// How many steps it took.
    pub fn steps(&self) -> usize {
        self.steps
    }
}
