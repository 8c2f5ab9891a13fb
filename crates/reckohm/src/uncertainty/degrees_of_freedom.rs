//! Effective degrees of freedom.

use super::error::EstimateError;
use crate::number::{Real, STANDARD_UNCERTAINTY, TYPE_A_DEGREES_OF_FREEDOM};

/// Effective degrees of freedom of a sum of parts, given by their standard uncertainties and degrees of freedom, by the
/// Welch-Satterthwaite formula u⁴/Σ(uᵢ⁴/νᵢ) (JCGM 100 G.4.1, equation G.2b). Parts of infinite degrees of freedom count in u
/// alone; infinite where no part has finite ones. Not cut to a whole number.
///
/// ```
/// use reckohm::uncertainty::effective_dof;
/// // The end gauge of JCGM 100 H.1, in nanometres: 16 after cutting.
/// let dof: f64 = effective_dof(&[25.0, 5.8, 3.9, 6.7, 2.9, 16.6], &[18.0, 24.0, 5.0, 8.0, 50.0, 2.0])?;
/// assert_eq!(dof.floor(), 16.0);
/// # Ok::<(), reckohm::uncertainty::EstimateError>(())
/// ```
///
/// # Errors
/// A range error for a negative or infinite standard uncertainty, degrees of freedom below 1; different lengths.
pub fn effective_dof<R: Real>(u: &[R], dof: &[R]) -> Result<R, EstimateError> {
    if u.len() != dof.len() {
        return Err(EstimateError::Lengths { u: u.len(), dof: dof.len() });
    }
    for (u, dof) in u.iter().zip(dof) {
        STANDARD_UNCERTAINTY.check(*u)?;
        TYPE_A_DEGREES_OF_FREEDOM.check(*dof)?;
    }
    // Relative to the largest part, so that no square leaves the number's range.
    let largest = u.iter().copied().fold(R::ZERO, R::larger);
    if largest == R::ZERO {
        return Ok(R::INFINITE);
    }
    let relative = || u.iter().map(|u| *u / largest);
    let combined = relative().fold(R::ZERO, |sum, u| sum + u * u).square_root();
    Ok(welch_satterthwaite(combined, relative().zip(dof.iter().copied())))
}

/// The formula, from the combined u and the parts that may have finite degrees of freedom.
pub(crate) fn welch_satterthwaite<R: Real>(u: R, parts: impl Iterator<Item = (R, R)>) -> R {
    let sum = parts.fold(R::ZERO, |sum, (part, dof)| {
        let ratio = if part == R::ZERO { R::ZERO } else { part / u };
        sum + ratio * ratio * (ratio * ratio) / dof
    });
    if sum > R::ZERO { R::ONE / sum } else { R::INFINITE }
}
