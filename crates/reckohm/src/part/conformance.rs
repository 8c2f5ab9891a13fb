//! How likely a part lies within its limits, given a measurement of it.

use super::limits::Limits;
use crate::number::Real;
use crate::uncertainty::{Estimate, EstimateError, Shape, checked_parts, lift, one_rectangular};

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
pub fn conformance_probability<R: Real>(estimate: &Estimate<R>, limits: &Limits<R>) -> R {
    Ends::of(estimate, limits, &Shape::of(estimate)).worst()
}

/// Test uncertainty ratio: the width of the limits over that of the coverage interval, (upper - lower)/(2·U).
pub(crate) fn test_uncertainty_ratio<R: Real>(limits: &Limits<R>, expanded: R) -> R {
    (limits.upper_ohm() - limits.lower_ohm()) / (R::lit(2.0) * expanded)
}

/// One place of the value as seen from the limits: how far beyond each, and the tails at these distances.
#[derive(Clone, Copy)]
pub(crate) struct Place<R> {
    over: R,
    under: R,
    upper_tail: R,
    lower_tail: R,
}

impl<R: Real> Place<R> {
    #[inline(always)]
    pub(crate) fn at(x: R, lower: R, upper: R, tail: impl Fn(R) -> R) -> Place<R> {
        Place::with_tails(x, lower, upper, tail((x - upper).magnitude()), tail((lower - x).magnitude()))
    }

    /// The same with the tails at hand.
    #[inline(always)]
    pub(crate) fn with_tails(x: R, lower: R, upper: R, upper_tail: R, lower_tail: R) -> Place<R> {
        Place { over: x - upper, under: lower - x, upper_tail, lower_tail }
    }

    /// Probability of being inside the limits, by a sum that keeps its digits where it is small. Both cases are computed and
    /// one is selected.
    #[inline(always)]
    pub(crate) fn inside(self) -> R {
        let outside = self.over > R::ZERO || self.under > R::ZERO;
        let some = (self.upper_tail - self.lower_tail).magnitude();
        R::select(outside, some, R::ONE - self.outside_both())
    }

    /// Probability of being outside either limit, with its digits where it is small.
    #[inline(always)]
    pub(crate) fn outside(self) -> R {
        let outside = self.over > R::ZERO || self.under > R::ZERO;
        R::select(outside, R::ONE - self.inside(), self.outside_both())
    }

    #[inline(always)]
    fn outside_both(self) -> R {
        (self.upper_tail + self.lower_tail).smaller(R::ONE)
    }

    /// Probability of being above the upper limit, and of not being above it.
    #[inline(always)]
    pub(crate) fn of_upper(self) -> (R, R) {
        both_sides(self.over > R::ZERO, self.upper_tail)
    }

    /// Probability of being below the lower limit, and of not being below it.
    #[inline(always)]
    pub(crate) fn of_lower(self) -> (R, R) {
        both_sides(self.under > R::ZERO, self.lower_tail)
    }
}

/// The probability of being beyond a limit, and the rest, from the tail at the distance and whether the value is beyond.
#[inline(always)]
fn both_sides<R: Real>(beyond: bool, tail: R) -> (R, R) {
    let rest = R::ONE - tail;
    (R::select(beyond, rest, tail), R::select(beyond, tail, rest))
}

/// The two ends that one-sided parts may push the value to; one place twice without such parts.
///
/// The shape is symmetric and has one peak, so the probability of being inside falls with the distance from the middle of
/// the limits: it is smallest at one of the two ends, largest where they come nearest to the middle.
#[derive(Clone, Copy)]
pub(crate) struct Ends<R> {
    pub(crate) lowest: Place<R>,
    pub(crate) highest: Place<R>,
}

impl<R: Real> Ends<R> {
    pub(crate) fn of(estimate: &Estimate<R>, limits: &Limits<R>, shape: &Shape<R>) -> Ends<R> {
        Ends::at(estimate.value(), estimate, limits, shape)
    }

    /// The same with another value.
    pub(crate) fn at(value: R, estimate: &Estimate<R>, limits: &Limits<R>, shape: &Shape<R>) -> Ends<R> {
        let place = |x: R| Place::at(x, limits.lower_ohm(), limits.upper_ohm(), |distance| shape.above(distance));
        let (lowest, highest) = (value - estimate.below(), value + estimate.above());
        let low = place(lowest);
        Ends { lowest: low, highest: if lowest == highest { low } else { place(highest) } }
    }

    /// Probability of being inside the limits where it is least.
    #[inline(always)]
    pub(crate) fn worst(self) -> R {
        self.lowest.inside().smaller(self.highest.inside())
    }
}

/// The place of a value whose error has one rectangular and one normal part, and the value itself once it is seen to be legal.
pub(crate) fn place_of_value<R: Real>(
    value: R,
    half_width: R,
    u: R,
    limits: &Limits<R>,
) -> Result<(Place<R>, R), EstimateError> {
    let (value, a, u) = checked_parts(value, half_width, u)?;
    let lift = lift(a.larger(u));
    let (a, u) = (a * lift, u * lift);
    let tail = |distance: R| {
        if distance == R::INFINITE { R::ZERO } else { one_rectangular(distance * lift, a, u) }
    };
    Ok((Place::at(value, limits.lower_ohm(), limits.upper_ohm(), tail), value))
}

/// Probability of being inside the limits where the one-sided parts make it largest.
pub(crate) fn likeliest<R: Real>(estimate: &Estimate<R>, limits: &Limits<R>, shape: &Shape<R>) -> R {
    let (lower, upper) = (limits.lower_ohm(), limits.upper_ohm());
    let (lowest, highest) = (estimate.value() - estimate.below(), estimate.value() + estimate.above());
    let nearest = if !lower.finite() {
        lowest
    } else if !upper.finite() {
        highest
    } else {
        (lower + R::lit(0.5) * (upper - lower)).larger(lowest).smaller(highest)
    };
    Place::at(nearest, lower, upper, |distance| shape.above(distance)).inside()
}
