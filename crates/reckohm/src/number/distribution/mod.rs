//! The standard normal distribution and Student's t: probabilities below and above a value, and the values that belong to
//! a probability, both tails to full relative accuracy.
//!
//! Take the function of the tail that you mean. `1 - normal_below(9.0)` is 0, `normal_above(9.0)` is 1.1e-19; in the same
//! way the quantile of a small risk comes from `…_quantile_above(risk)`, not from `…_quantile(1 - risk)`.
//!
//! A tail below the smallest double is 0: that of the normal distribution from about 38.5 on. A quantile beyond the largest
//! double, as a fraction of a degree of freedom can have, is an error. The forms ending in `_f32` are the same formulas in
//! single precision, with its ends: tails to 1.2e-38 keep their digits, and no quantile is beyond the largest `f32`.
//!
//! ```
//! use reckohm::distribution::{normal_quantile_above, t_quantile_above};
//!
//! // The factor of a 95 % interval: 2.5 % in each tail.
//! assert!((normal_quantile_above(0.025)? - 1.959_963_984_540_054).abs() < 1e-14);
//! assert!((t_quantile_above(0.025, 4.0)? - 2.776_445_105_197_797).abs() < 1e-13);
//! # Ok::<(), reckohm::distribution::DistributionError>(())
//! ```

mod arrays;
mod error;
mod formula;
mod single;

pub use arrays::*;
pub use error::{BeyondReach, DistributionError, ElementFault};
pub use single::*;

use formula::{NormalAbove, NormalBelow, NormalQuantile, NormalQuantileAbove};
use formula::{TAbove, TBelow, TQuantile, TQuantileAbove, answer};

/// Probability that a standard normal value is below `z`.
///
/// Given: `z`, any finite number. Returned: a probability; 0 where it is below the smallest double, from about −38.5 on.
///
/// # Errors
/// [`DistributionError::Range`] if `z` is infinite or NaN.
///
/// Source: Abramowitz and Stegun 26.2.
///
/// ```
/// use reckohm::distribution::normal_below;
/// assert_eq!(normal_below(0.0)?, 0.5);
/// assert!((normal_below(1.0)? - 0.841_344_746_068_543).abs() < 1e-15);
/// # Ok::<(), reckohm::distribution::DistributionError>(())
/// ```
pub fn normal_below(z: f64) -> Result<f64, DistributionError> {
    answer(NormalBelow, z)
}

/// Probability that a standard normal value is above `z`.
///
/// Given: `z`, any finite number. Returned: a probability; 0 where it is below the smallest double, from about 38.5 on.
///
/// # Errors
/// [`DistributionError::Range`] if `z` is infinite or NaN.
///
/// Source: Abramowitz and Stegun 26.2.
///
/// ```
/// use reckohm::distribution::normal_above;
/// let tail = normal_above(9.0)?;
/// assert!((tail / 1.128_588_405_953_840_6e-19 - 1.0).abs() < 1e-14);
/// # Ok::<(), reckohm::distribution::DistributionError>(())
/// ```
pub fn normal_above(z: f64) -> Result<f64, DistributionError> {
    answer(NormalAbove, z)
}

/// The value that a standard normal value is below with probability `p`.
///
/// Given: `p`, more than 0 and less than 1. Returned: −38.5 to 8.3, for the doubles next to 1 are not as close as those
/// next to 0.
///
/// # Errors
/// [`DistributionError::Range`] if `p` is not between 0 and 1.
///
/// Source: Abramowitz and Stegun 26.2, solved by Newton's method.
///
/// ```
/// use reckohm::distribution::normal_quantile;
/// assert!((normal_quantile(0.975)? - 1.959_963_984_540_054).abs() < 1e-14);
/// assert_eq!(normal_quantile(0.5)?, 0.0);
/// assert!(normal_quantile(97.5).is_err());
/// # Ok::<(), reckohm::distribution::DistributionError>(())
/// ```
pub fn normal_quantile(p: f64) -> Result<f64, DistributionError> {
    answer(NormalQuantile, p)
}

/// The value that a standard normal value is above with probability `p`.
///
/// Given: `p`, more than 0 and less than 1. Returned: −8.3 to 38.5.
///
/// # Errors
/// [`DistributionError::Range`] if `p` is not between 0 and 1.
///
/// Source: Abramowitz and Stegun 26.2, solved by Newton's method.
///
/// ```
/// use reckohm::distribution::normal_quantile_above;
/// assert!((normal_quantile_above(0.05)? - 1.644_853_626_951_472_7).abs() < 1e-14);
/// assert!((normal_quantile_above(1e-300)? - 37.047096299361199).abs() < 1e-12);
/// # Ok::<(), reckohm::distribution::DistributionError>(())
/// ```
pub fn normal_quantile_above(p: f64) -> Result<f64, DistributionError> {
    answer(NormalQuantileAbove, p)
}

/// Probability that a value of Student's t with `dof` degrees of freedom is below `t`.
///
/// Given: `t`, any finite number; `dof`, more than 0, fractions and infinity included. Returned: a probability.
///
/// # Errors
/// [`DistributionError::Range`] if `t` is infinite or NaN, or `dof` is not above 0.
///
/// Source: Abramowitz and Stegun 26.7.
///
/// ```
/// use reckohm::distribution::t_below;
/// // With one degree of freedom it is 1/2 + arctan(t)/π.
/// assert!((t_below(1.0, 1.0)? - 0.75).abs() < 1e-15);
/// assert!((t_below(-2.0, f64::INFINITY)? - 0.022_750_131_948_179_2).abs() < 1e-16);
/// # Ok::<(), reckohm::distribution::DistributionError>(())
/// ```
pub fn t_below(t: f64, dof: f64) -> Result<f64, DistributionError> {
    answer(TBelow::with(dof)?, t)
}

/// Probability that a value of Student's t with `dof` degrees of freedom is above `t`.
///
/// Given: `t`, any finite number; `dof`, more than 0, fractions and infinity included. Returned: a probability.
///
/// # Errors
/// [`DistributionError::Range`] if `t` is infinite or NaN, or `dof` is not above 0.
///
/// Source: Abramowitz and Stegun 26.7.
///
/// ```
/// use reckohm::distribution::t_above;
/// assert!((t_above(2.776_445_105_197_797, 4.0)? - 0.025).abs() < 1e-15);
/// # Ok::<(), reckohm::distribution::DistributionError>(())
/// ```
pub fn t_above(t: f64, dof: f64) -> Result<f64, DistributionError> {
    answer(TAbove::with(dof)?, t)
}

/// The value that Student's t with `dof` degrees of freedom is below with probability `p`.
///
/// Given: `p`, more than 0 and less than 1; `dof`, more than 0, fractions and infinity included.
///
/// # Errors
/// [`DistributionError::Range`] if `p` or `dof` is outside; [`DistributionError::Beyond`] if the value is larger than any
/// double, which only a few degrees of freedom or fewer allow.
///
/// Source: Abramowitz and Stegun 26.7, solved by Newton's method.
///
/// ```
/// use reckohm::distribution::t_quantile;
/// assert!((t_quantile(0.975, 9.0)? - 2.262_157_162_798_205).abs() < 1e-13);
/// assert!(t_quantile(1e-300, 0.1).is_err());
/// # Ok::<(), reckohm::distribution::DistributionError>(())
/// ```
pub fn t_quantile(p: f64, dof: f64) -> Result<f64, DistributionError> {
    answer(TQuantile::with(dof)?, p)
}

/// The value that Student's t with `dof` degrees of freedom is above with probability `p`.
///
/// Given: `p`, more than 0 and less than 1; `dof`, more than 0, fractions and infinity included.
///
/// # Errors
/// [`DistributionError::Range`] if `p` or `dof` is outside; [`DistributionError::Beyond`] if the value is larger than any
/// double, which only a few degrees of freedom or fewer allow.
///
/// Source: Abramowitz and Stegun 26.7, solved by Newton's method.
///
/// ```
/// use reckohm::distribution::t_quantile_above;
/// // The tail of one degree of freedom falls as 1/(π·t).
/// assert!((t_quantile_above(1e-300, 1.0)? / 3.183_098_861_837_907e299 - 1.0).abs() < 1e-12);
/// # Ok::<(), reckohm::distribution::DistributionError>(())
/// ```
pub fn t_quantile_above(p: f64, dof: f64) -> Result<f64, DistributionError> {
    answer(TQuantileAbove::with(dof)?, p)
}
