//! How likely a part lies within its limits, given a measurement of it.

use super::limits::Limits;
use crate::number::Real;
use crate::uncertainty::{Estimate, Shape};

/// Probability that the true value lies within the limits, from the estimate's shape alone, no prior; one-sided parts are
/// taken where they make it smallest (JCGM 106 7).
///
/// ```
/// use reckohm::uncertainty::Estimate;
/// use reckohm::verdict::{Limits, conformance_probability};
/// // A Zener voltage of -5.47 V, u = 0.05 V, against an upper limit of -5.40 V (JCGM 106, example; figures from memory).
/// let measured = Estimate::new(-5.47, 0.05, f64::INFINITY)?;
/// let p = conformance_probability(&measured, &Limits::at_most(-5.40)?);
/// assert!((p - 0.92).abs() < 0.005);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn conformance_probability(estimate: &Estimate, limits: &Limits) -> f64 {
    Conformance::of(estimate, limits, &Shape::of(estimate)).worst
}

/// Test uncertainty ratio: the width of the limits over that of the coverage interval, (upper - lower)/(2·U).
pub(crate) fn test_uncertainty_ratio(limits: &Limits, expanded: f64) -> f64 {
    (limits.upper_ohm() - limits.lower_ohm()) / (2.0 * expanded)
}

/// Probability of being inside the limits with the value at `x`, from the tails at the distances to both, by a sum that
/// keeps its digits where it is small. Both cases are computed and one is selected.
#[inline(always)]
pub(crate) fn inside<R: Real>(x: R, lower: R, upper: R, tail: impl Fn(R) -> R) -> R {
    let (over, under) = (x - upper, lower - x);
    let (beyond_upper, beyond_lower) = (tail(over.magnitude()), tail(under.magnitude()));
    let outside = over > R::ZERO || under > R::ZERO;
    let some = (beyond_upper - beyond_lower).magnitude();
    R::select(outside, some, R::ONE - (beyond_upper + beyond_lower).smaller(R::ONE))
}

/// Bounds of the probability of being inside over where the one-sided parts may lie.
pub(crate) struct Conformance {
    /// Where being inside is least likely.
    pub(crate) worst: f64,
    /// Where being inside is likeliest.
    pub(crate) best: f64,
}

impl Conformance {
    /// The shape is symmetric and has one peak, so the probability of being inside falls with the distance from the middle of
    /// the limits: it is smallest at one of the two ends of the one-sided parts, largest where these come nearest to it.
    pub(crate) fn of(estimate: &Estimate, limits: &Limits, shape: &Shape) -> Conformance {
        let (lower, upper) = (limits.lower_ohm(), limits.upper_ohm());
        let at = |x: f64| inside(x, lower, upper, |distance| shape.above(distance));
        let (lowest, highest) = (estimate.value() - estimate.below(), estimate.value() + estimate.above());
        if lowest == highest {
            let only = at(lowest);
            return Conformance { worst: only, best: only };
        }
        let middle = if lower.is_infinite() {
            lowest
        } else if upper.is_infinite() {
            highest
        } else {
            (lower + 0.5 * (upper - lower)).max(lowest).min(highest)
        };
        let (low, high) = (at(lowest), at(highest));
        Conformance { worst: low.min(high), best: at(middle) }
    }
}
