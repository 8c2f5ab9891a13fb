//! Where the search for parameters begins, and what bounds it.

use super::error::FitError;
use crate::number::{FIT_BOUND, FIT_START, Real};

/// Steps where none other are asked for: the certified data sets need 250 or fewer.
const STEPS: usize = 1000;

/// Where a fit begins: parameters of the right sign and order of magnitude, bounds if there are any, and how many steps it
/// may take.
///
/// ```
/// use reckohm::fit::Start;
/// // The second parameter is never negative, the third is held at 25.
/// let free = f64::INFINITY;
/// let start = Start::at([1e4, 4000.0, 25.0])?.with_bounds([[-free, free], [0.0, free], [25.0, 25.0]])?;
/// assert_eq!(start.parameters(), [1e4, 4000.0, 25.0]);
/// # Ok::<(), reckohm::fit::FitError>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Start<R, const P: usize> {
    parameters: [R; P],
    bounds: [[R; 2]; P],
    most_steps: usize,
}

impl<R: Real, const P: usize> Start<R, P> {
    /// A start at these parameters, without bounds.
    ///
    /// Given: finite numbers.
    ///
    /// # Errors
    /// [`FitError::Range`].
    ///
    /// ```
    /// use reckohm::fit::Start;
    /// assert!(Start::at([1.0, f64::NAN]).is_err());
    /// ```
    pub fn at(parameters: [R; P]) -> Result<Self, FitError> {
        for parameter in parameters {
            FIT_START.check(parameter)?;
        }
        Ok(Start { parameters, bounds: [[-R::INFINITE, R::INFINITE]; P], most_steps: STEPS })
    }

    /// The same start with a lower and an upper bound of each parameter; infinite where there is none. Equal bounds hold a
    /// parameter where it is. A fit may end at a bound: such a parameter counts as held.
    ///
    /// Given: a lower bound not above the upper one, and the start between them.
    ///
    /// # Errors
    /// [`FitError::Range`] for NaN, [`FitError::BoundsCrossed`], [`FitError::StartOutside`].
    ///
    /// ```
    /// use reckohm::fit::Start;
    /// assert!(Start::at([1.0])?.with_bounds([[0.0, 2.0]]).is_ok());
    /// assert!(Start::at([1.0])?.with_bounds([[2.0, 3.0]]).is_err());
    /// # Ok::<(), reckohm::fit::FitError>(())
    /// ```
    pub fn with_bounds(self, bounds: [[R; 2]; P]) -> Result<Self, FitError> {
        for (index, ([lower, upper], start)) in bounds.into_iter().zip(self.parameters).enumerate() {
            let (lower, upper) = (FIT_BOUND.check(lower)?, FIT_BOUND.check(upper)?);
            let (parameter, ends) = (index as u64, [lower.to_f64(), upper.to_f64()]);
            if lower > upper {
                return Err(FitError::BoundsCrossed { parameter, lower: ends[0], upper: ends[1] });
            }
            if start < lower || start > upper {
                let given = start.to_f64();
                return Err(FitError::StartOutside { parameter, given, lower: ends[0], upper: ends[1] });
            }
        }
        Ok(Start { bounds, ..self })
    }

    /// The same start with another limit of steps; 1000 else. It decides whether there is a result, never what it is.
    ///
    /// ```
    /// use reckohm::fit::Start;
    /// assert_ne!(Start::at([1.0])?.with_most_steps(10), Start::at([1.0])?);
    /// # Ok::<(), reckohm::fit::FitError>(())
    /// ```
    pub fn with_most_steps(self, most_steps: usize) -> Self {
        Start { most_steps, ..self }
    }

    /// The parameters at which it begins.
    pub fn parameters(&self) -> [R; P] {
        self.parameters
    }

    /// Lower and upper bound of each parameter.
    pub fn bounds(&self) -> [[R; 2]; P] {
        self.bounds
    }

    /// How many steps the fit may take.
    pub fn most_steps(&self) -> usize {
        self.most_steps
    }
}
