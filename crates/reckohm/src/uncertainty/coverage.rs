//! Expanded uncertainty and tail probabilities of an estimate.

use super::error::EstimateError;
use super::estimate::Estimate;
use super::shape::Shape;
use crate::number::{COVERAGE_PROBABILITY, FINITE, Real, TAIL_PROBABILITY, student_t};

/// The coverage probability where the caller names none: the trade's convention, and named in every result.
pub(crate) const COVERAGE_BY_CONVENTION: f64 = 0.95;

/// An expanded uncertainty with all that it takes to be read: how wide, with what factor, for what probability.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Expanded<R = f64> {
    /// U, the half-width without one-sided parts.
    pub half_width: R,
    /// k = U/u, for information; 0 if u is 0.
    pub coverage_factor: R,
    /// The probability that the interval is to hold.
    pub coverage_probability: R,
    /// Lower end of the coverage interval, the one-sided part included.
    pub lower: R,
    /// Upper end of the coverage interval, the one-sided part included.
    pub upper: R,
    /// Combined standard uncertainty.
    pub u: R,
}

impl<R: Real> Estimate<R> {
    /// The expanded uncertainty at a coverage probability: the quantile of all parts of the shape added together (the
    /// coverage rule of this library; see the module's head). Exact up to rounding; no simulation.
    ///
    /// `coverage_probability` lies between 0 and 1, both excluded; 0.95 is the convention.
    ///
    /// ```
    /// use reckohm::uncertainty::Estimate;
    /// let lone_rectangular = Estimate::exact(0.0_f64)?.with_rectangular(1.0)?.expanded(0.95)?;
    /// assert!((lone_rectangular.half_width - 0.95).abs() < 1e-15);
    /// assert!((lone_rectangular.coverage_factor - 1.645).abs() < 5e-4); // not 2, and only by chance that of a normal
    /// # Ok::<(), reckohm::uncertainty::EstimateError>(())
    /// ```
    ///
    /// # Errors
    /// A range error for the probability; an error if the result does not fit the number type.
    pub fn expanded(&self, coverage_probability: R) -> Result<Expanded<R>, EstimateError> {
        let p = COVERAGE_PROBABILITY.check(coverage_probability)?;
        self.interval(p, Shape::of(self).quantile_above(R::lit(0.5) * (R::ONE - p)))
    }

    /// The expanded uncertainty by effective degrees of freedom and Student's t (JCGM 100 G.4), as published budgets
    /// state it. The degrees of freedom are not cut to whole ones. Simulation shows that this method does not hold its
    /// coverage probability for few repeats; it stands here for comparison with such budgets.
    ///
    /// ```
    /// use reckohm::uncertainty::Estimate;
    /// let e = Estimate::exact(0.0_f64)?.with_type_a(1.0, 4.0)?;
    /// assert!((e.expanded_welch_satterthwaite(0.95)?.coverage_factor - 2.776).abs() < 1e-3);
    /// # Ok::<(), reckohm::uncertainty::EstimateError>(())
    /// ```
    ///
    /// # Errors
    /// A range error for the probability; an error if the result does not fit the number type.
    pub fn expanded_welch_satterthwaite(&self, coverage_probability: R) -> Result<Expanded<R>, EstimateError> {
        let p = COVERAGE_PROBABILITY.check(coverage_probability)?;
        let factor = student_t::quantile_above(R::lit(0.5) * (R::ONE - p), self.effective_dof());
        self.interval(p, factor * self.u())
    }

    /// A half-width that holds `coverage_probability` for every meter within its clause, also for one at its very edge:
    /// rectangular half-widths in full, the rest by its quantile. Wider than [`Estimate::expanded`], which holds it over
    /// meters spread evenly within their clause.
    ///
    /// ```
    /// use reckohm::uncertainty::Estimate;
    /// let e = Estimate::exact(0.0_f64)?.with_rectangular(1.0)?.with_type_a(0.1, 4.0)?;
    /// assert!((e.expanded_guaranteed(0.95)?.half_width - 1.2776).abs() < 1e-4);
    /// # Ok::<(), reckohm::uncertainty::EstimateError>(())
    /// ```
    ///
    /// # Errors
    /// A range error for the probability; an error if the result does not fit the number type.
    pub fn expanded_guaranteed(&self, coverage_probability: R) -> Result<Expanded<R>, EstimateError> {
        let p = COVERAGE_PROBABILITY.check(coverage_probability)?;
        self.interval(p, Shape::of(self).guaranteed(R::lit(0.5) * (R::ONE - p)))
    }

    /// The distance from the value that the error exceeds, to one side, with probability `tail_probability` (above 0, at
    /// most one half): the guard band of a one-sided decision. One-sided parts are not in it.
    ///
    /// ```
    /// use reckohm::uncertainty::Estimate;
    /// let lone_rectangular = Estimate::exact(0.0_f64)?.with_rectangular(1.0)?;
    /// assert!((lone_rectangular.quantile_above(0.05)? - 0.9).abs() < 1e-15);
    /// # Ok::<(), reckohm::uncertainty::EstimateError>(())
    /// ```
    ///
    /// # Errors
    /// A range error for the probability; an error if the result does not fit the number type.
    pub fn quantile_above(&self, tail_probability: R) -> Result<R, EstimateError> {
        let q = TAIL_PROBABILITY.check(tail_probability)?;
        finite(Shape::of(self).quantile_above(q))
    }

    /// Probability that the true value lies above `x`, one-sided parts taken where they make it largest.
    ///
    /// ```
    /// use reckohm::uncertainty::Estimate;
    /// let reading = Estimate::exact(4880.0_f64)?.with_rectangular(69.0)?.with_normal(3.0)?;
    /// assert!((reading.probability_above(4935.0)? - 0.1014).abs() < 1e-4);
    /// # Ok::<(), reckohm::uncertainty::EstimateError>(())
    /// ```
    ///
    /// # Errors
    /// A range error if `x` is not finite.
    pub fn probability_above(&self, x: R) -> Result<R, EstimateError> {
        let x = FINITE.check(x)?;
        Ok(Shape::of(self).above(x - self.value - self.above))
    }

    /// Probability that the true value lies below `x`, one-sided parts taken where they make it largest.
    ///
    /// ```
    /// use reckohm::uncertainty::Estimate;
    /// assert_eq!(Estimate::new(10.0, 1.0, f64::INFINITY)?.probability_below(10.0)?, 0.5);
    /// # Ok::<(), reckohm::uncertainty::EstimateError>(())
    /// ```
    ///
    /// # Errors
    /// A range error if `x` is not finite.
    pub fn probability_below(&self, x: R) -> Result<R, EstimateError> {
        let x = FINITE.check(x)?;
        Ok(Shape::of(self).above(self.value - self.below - x))
    }

    fn interval(&self, coverage_probability: R, half_width: R) -> Result<Expanded<R>, EstimateError> {
        let u = self.u();
        Ok(Expanded {
            half_width: finite(half_width)?,
            coverage_factor: if u == R::ZERO { R::ZERO } else { half_width / u },
            coverage_probability,
            lower: finite(self.value - half_width - self.below)?,
            upper: finite(self.value + half_width + self.above)?,
            u,
        })
    }
}

fn finite<R: Real>(x: R) -> Result<R, EstimateError> {
    if x.finite() { Ok(x) } else { Err(EstimateError::too_large::<R>()) }
}
