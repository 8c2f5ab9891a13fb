//! Repeated observations: their mean and its scatter.

use super::error::EstimateError;
use super::estimate::Estimate;
use crate::number::FINITE;
use crate::number::elementary::sqrt;

/// Mean and standard deviation of single observations (JCGM 100 4.2.1, 4.2.2), and their number; 0, 0 and 0 for none.
/// Differences are taken against the first, so that equal observations give their mean exactly and no scatter.
pub(crate) fn spread(observations: impl Iterator<Item = f64> + Clone) -> (f64, f64, usize) {
    let Some(first) = observations.clone().next() else { return (0.0, 0.0, 0) };
    let count = observations.clone().count();
    let n = count as f64;
    let mean = first + observations.clone().fold(0.0, |sum, x| sum + (x - first)) / n;
    if count < 2 {
        return (mean, 0.0, count);
    }
    let squares = observations.fold(0.0, |sum, x| sum + (x - mean) * (x - mean));
    (mean, sqrt(squares / (n - 1.0)), count)
}

impl Estimate {
    /// The mean of repeated observations with the standard deviation of the mean as a type A part (JCGM 100 4.2.3).
    ///
    /// ```
    /// use reckohm::uncertainty::Estimate;
    /// // Five resistances worked out from voltage, current and phase (JCGM 100 H.2, approach 2).
    /// let r = Estimate::from_repeats(&[127.6725, 127.8924, 127.5063, 127.7104, 127.8765])?;
    /// assert_eq!(format!("{:.3} {:.3}", r.value(), r.u()), "127.732 0.071");
    /// assert_eq!(r.effective_dof().round(), 4.0);
    /// # Ok::<(), reckohm::uncertainty::EstimateError>(())
    /// ```
    ///
    /// # Errors
    /// Fewer than two observations; a range error for one that is not finite; a result that does not fit the number type.
    pub fn from_repeats(observations: &[f64]) -> Result<Estimate, EstimateError> {
        for x in observations {
            FINITE.check(*x)?;
        }
        let (mean, single, count) = spread(observations.iter().copied());
        if count < 2 {
            return Err(EstimateError::TooFewRepeats { given: count });
        }
        if !(mean.is_finite() && single.is_finite()) {
            return Err(EstimateError::TooLarge);
        }
        let n = count as f64;
        Estimate::exact(mean)?.with_type_a(single / sqrt(n), n - 1.0)
    }
}
