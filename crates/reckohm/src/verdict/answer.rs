//! The decision alone: what a verdict answers, without the guard band, the acceptance limits and the ratio that it shows.
//!
//! A rule bounds probabilities, and these are tails of the estimate's shape at its distances from the limits. Two tails
//! decide; no quantile is searched for, which keeps this small and quick. [`judge`](super::judge) decides by this too, so
//! that the two never differ.

use core::fmt;

use super::rule::{Rule, RuleKind};
use crate::number::Real;
use crate::part::conformance::{Ends, likeliest, place_of_value};
use crate::part::limits::Limits;
use crate::uncertainty::{Estimate, EstimateError, Shape};

/// The three answers.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[repr(u8)]
pub enum Answer {
    /// The part conforms at the agreed risk.
    Conforms = 1,
    /// The part does not conform at the agreed risk.
    DoesNotConform = 2,
    /// The measurement cannot tell at the agreed risk.
    Undecided = 3,
}

impl Answer {
    /// The answer in words.
    pub const fn name(self) -> &'static str {
        match self {
            Answer::Conforms => "conforms",
            Answer::DoesNotConform => "does not conform",
            Answer::Undecided => "undecided",
        }
    }
}

/// On which side of its limits the value itself lies; a value at a limit is inside.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[repr(u8)]
pub enum Side {
    /// Within the limits.
    Inside = 1,
    /// Beyond a limit.
    Outside = 2,
}

impl Side {
    /// The side in words.
    pub const fn name(self) -> &'static str {
        match self {
            Side::Inside => "inside",
            Side::Outside => "outside",
        }
    }
}

/// What a verdict answers.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Decision<R = f64> {
    /// The answer.
    pub answer: Answer,
    /// Where the value itself lies.
    pub side: Side,
    /// Probability that the part lies within its limits, from the shape of this measurement alone, no prior; one-sided
    /// parts are taken where they make it smallest.
    pub conformance_probability: R,
}

impl<R: Real> Decision<R> {
    /// What stands in an array of decisions before they are made: nothing is known, so it is undecided.
    pub const UNMADE: Decision<R> =
        Decision { answer: Answer::Undecided, side: Side::Outside, conformance_probability: R::ZERO };
}

impl<R: Real> fmt::Display for Decision<R> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.answer.name())?;
        if self.answer == Answer::Undecided {
            write!(f, ", {} the limits", self.side.name())?;
        }
        write!(f, "; conformance probability {:.3}", self.conformance_probability)
    }
}

/// Decides on one estimate against limits under a rule: the answer of [`judge`](super::judge), always, without what else a
/// verdict shows. It cannot fail.
///
/// A probability that equals the agreed risk but for the rounding of tails is at most that risk.
///
/// ```
/// use reckohm::uncertainty::Estimate;
/// use reckohm::verdict::{Answer, Limits, Rule, answer};
/// // In single precision, as on a small processor.
/// let limits = Limits::from_tolerance(4700.0_f32, 0.05)?;
/// let reading = Estimate::exact(4860.0_f32)?.with_rectangular(68.9)?.with_normal(3.0)?;
/// let decision = answer(&reading, &limits, Rule::guarded(0.05)?);
/// assert_eq!(decision.answer, Answer::Conforms);
/// assert!((decision.conformance_probability - 0.9996).abs() < 1e-2);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn answer<R: Real>(estimate: &Estimate<R>, limits: &Limits<R>, rule: Rule<R>) -> Decision<R> {
    decide(estimate, limits, rule, &Shape::of(estimate))
}

/// [`answer`] for a value whose error is spread evenly within `half_width`, normal with standard uncertainty `u`, or both: a
/// reading with its meter's clause and a known scatter. The decision is that of an estimate of these parts, to the bit, in a
/// fraction of the code: nothing in it knows of degrees of freedom or of a second rectangular part.
///
/// ```
/// use reckohm::uncertainty::Estimate;
/// use reckohm::verdict::{Limits, Rule, answer, answer_of_value};
/// let (limits, rule) = (Limits::from_tolerance(4700.0_f32, 0.05)?, Rule::guarded(0.05)?);
/// let whole = answer(&Estimate::exact(4860.0_f32)?.with_rectangular(68.9)?.with_normal(3.0)?, &limits, rule);
/// assert_eq!(answer_of_value(4860.0, 68.9, 3.0, &limits, rule)?, whole);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # Errors
/// A range error for a value that is no finite number, a negative or infinite half-width or `u`; too large where a square
/// of them does not fit the number type.
pub fn answer_of_value<R: Real>(
    value: R,
    half_width: R,
    u: R,
    limits: &Limits<R>,
    rule: Rule<R>,
) -> Result<Decision<R>, EstimateError> {
    let (place, value) = place_of_value(value, half_width, u, limits)?;
    let ends = Ends { lowest: place, highest: place };
    Ok(decided(ends, limits.contains(value), rule, || place.inside()))
}

/// The decision with the estimate's shape at hand.
pub(super) fn decide<R: Real>(
    estimate: &Estimate<R>,
    limits: &Limits<R>,
    rule: Rule<R>,
    shape: &Shape<R>,
) -> Decision<R> {
    let ends = Ends::of(estimate, limits, shape);
    decided(ends, limits.contains(estimate.value()), rule, || likeliest(estimate, limits, shape))
}

#[inline(always)]
fn decided<R: Real>(ends: Ends<R>, inside: bool, rule: Rule<R>, likeliest: impl FnOnce() -> R) -> Decision<R> {
    let answer = match rule.risk() {
        None if inside => Answer::Conforms,
        None => Answer::DoesNotConform,
        Some(risk) if accepts(ends, rule.kind(), risk) => Answer::Conforms,
        Some(risk) if rejects(ends, rule.kind(), risk, likeliest) => Answer::DoesNotConform,
        Some(_) => Answer::Undecided,
    };
    Decision { answer, side: if inside { Side::Inside } else { Side::Outside }, conformance_probability: ends.worst() }
}

/// Whether the probability of being beyond the limits is at most the risk: beyond each by itself, or beyond either.
#[inline(always)]
pub(super) fn accepts<R: Real>(ends: Ends<R>, kind: RuleKind, risk: R) -> bool {
    let Ends { lowest, highest } = ends;
    match kind {
        RuleKind::MaxRisk => is_at_most(lowest.outside().larger(highest.outside()), risk),
        _ => is_at_most(highest.of_upper().0.larger(lowest.of_lower().0), risk),
    }
}

/// Whether the probability of being on the good side of a limit, or of both, is at most the risk, wherever the one-sided
/// parts push the value.
#[inline(always)]
pub(super) fn rejects<R: Real>(ends: Ends<R>, kind: RuleKind, risk: R, likeliest: impl FnOnce() -> R) -> bool {
    let Ends { lowest, highest } = ends;
    match kind {
        RuleKind::MaxRisk => is_at_most(likeliest(), risk),
        _ => is_at_most(lowest.of_upper().1.smaller(highest.of_lower().1), risk),
    }
}

/// A tail has no more digits than this many times the spacing at 1 leaves, and what is equal to the risk in all of them
/// meets it: a value may be typed to lie just so far inside its limit.
const ROUNDING_OF_TAILS: f64 = 256.0;

/// Whether a probability is at most the risk agreed on, to the digits that it has.
#[inline(always)]
pub(super) fn is_at_most<R: Real>(probability: R, risk: R) -> bool {
    probability <= risk * (R::ONE + R::lit(ROUNDING_OF_TAILS) * R::SPACING_AT_ONE)
}
