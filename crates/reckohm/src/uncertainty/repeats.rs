//! Repeated observations: their mean and its scatter.

use super::error::EstimateError;
use super::estimate::Estimate;
use super::squares::lift;
use crate::number::{FINITE, Real};

/// Mean and standard deviation of single observations (JCGM 100 4.2.1, 4.2.2), and their number; 0, 0 and 0 for none.
/// Differences are taken against the first, so that equal observations give their mean exactly and no scatter.
pub(crate) fn spread<R: Real>(observations: impl Iterator<Item = R> + Clone) -> (R, R, usize) {
    let Some(first) = observations.clone().next() else { return (R::ZERO, R::ZERO, 0) };
    let count = observations.clone().count();
    let n = R::of_count(count);
    let mean = first + observations.clone().fold(R::ZERO, |sum, x| sum + (x - first)) / n;
    if count < 2 {
        return (mean, R::ZERO, count);
    }
    let largest = observations.clone().fold(R::ZERO, |largest, x| largest.larger((x - mean).magnitude()));
    let lift = lift(largest);
    let squares = observations.fold(R::ZERO, |sum, x| {
        let lifted = (x - mean) * lift;
        sum + lifted * lifted
    });
    (mean, (squares / (n - R::ONE)).square_root() / lift, count)
}

impl<R: Real> Estimate<R> {
    /// The mean of repeated observations with the standard deviation of the mean as a type A part (JCGM 100 4.2.3).
    ///
    /// ```
    /// use reckohm::uncertainty::Estimate;
    /// // Five resistances worked out from voltage, current and phase (JCGM 100 H.2, approach 2).
    /// let r = Estimate::from_repeats(&[127.6725_f64, 127.8924, 127.5063, 127.7104, 127.8765])?;
    /// assert_eq!(format!("{:.3} {:.3}", r.value(), r.u()), "127.732 0.071");
    /// assert_eq!(r.effective_dof().round(), 4.0);
    /// # Ok::<(), reckohm::uncertainty::EstimateError>(())
    /// ```
    ///
    /// # Errors
    /// Fewer than two observations; a range error for one that is not finite; a result that does not fit the number type.
    pub fn from_repeats(observations: &[R]) -> Result<Estimate<R>, EstimateError> {
        for x in observations {
            FINITE.check(*x)?;
        }
        let (mean, single, count) = spread(observations.iter().copied());
        if count < 2 {
            return Err(EstimateError::TooFewRepeats { given: count });
        }
        if !(mean.finite() && single.finite()) {
            return Err(EstimateError::too_large::<R>());
        }
        let n = R::of_count(count);
        Estimate::exact(mean)?.with_type_a(single / n.square_root(), n - R::ONE)
    }
}
