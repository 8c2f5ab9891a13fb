//! Verdicts.

use core::fmt;

use super::answer::{Answer, Side, accepts, decide, is_at_most};
use super::error::VerdictError;
use super::rule::{Rule, RuleKind};
use crate::number::Real;
use crate::part::conformance::{Ends, conformance_probability, test_uncertainty_ratio};
use crate::part::limits::Limits;
use crate::uncertainty::{COVERAGE_BY_CONVENTION, Estimate, Shape, least, root};

/// What to do next.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[repr(u8)]
#[non_exhaustive]
pub enum NextStep {
    /// Nothing: the answer stands.
    None = 1,
    /// More readings: their scatter keeps the answer open.
    Repeat = 2,
    /// A tighter clause (another span or meter), or a comparison with a known part: the meter keeps the answer open.
    TighterMeter = 3,
    /// Taking away what pushes the reading to one side (leakage, a body across the part).
    RemoveOneSided = 4,
}

impl NextStep {
    /// The step in words.
    pub const fn name(self) -> &'static str {
        match self {
            NextStep::None => "none",
            NextStep::Repeat => "take more readings",
            NextStep::TighterMeter => "use a span or meter with a tighter clause, or compare with a known part",
            NextStep::RemoveOneSided => "take away what pushes the reading to one side",
        }
    }
}

/// A verdict and what it rests on.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Verdict<R = f64> {
    /// The answer.
    pub answer: Answer,
    /// Where the value itself lies.
    pub side: Side,
    /// Probability that the part lies within its limits, from the shape of this measurement alone, no prior; one-sided
    /// parts are taken where they make it smallest.
    pub conformance_probability: R,
    /// Guard band, ohm: how far inside a limit a value must lie to conform. 0 under simple acceptance; none where the rule
    /// cannot be met by any value.
    pub guard_band_ohm: Option<R>,
    /// The lowest value that conforms, ohm; minus infinite without a lower limit; none where no value can conform.
    pub acceptance_lower_ohm: Option<R>,
    /// The highest value that conforms, ohm; infinite without an upper limit; none where no value can conform.
    pub acceptance_upper_ohm: Option<R>,
    /// How far the value lies from the nearest limit, ohm: a guard band below this would decide it.
    pub distance_ohm: R,
    /// Test uncertainty ratio, (upper limit - lower limit)/(2·U) at a coverage probability of 0.95; none for a single
    /// limit or an exact value.
    pub tur: Option<R>,
    /// What to do next.
    pub next_step: NextStep,
    /// The rule that gave the answer.
    pub rule: Rule<R>,
}

impl<R: Real> fmt::Display for Verdict<R> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.answer.name())?;
        if self.answer == Answer::Undecided {
            write!(f, ", {} the limits", self.side.name())?;
        }
        write!(f, " ({}); conformance probability {:.3}", self.rule, self.conformance_probability)?;
        if self.next_step != NextStep::None {
            write!(f, "; next: {}", self.next_step.name())?;
        }
        Ok(())
    }
}

/// Judges one estimate against limits under a rule.
///
/// ```
/// use reckohm::uncertainty::Estimate;
/// use reckohm::verdict::{Answer, Limits, Rule, Side, judge};
/// let limits = Limits::from_tolerance(4700.0, 0.05)?;
/// let rule = Rule::guarded(0.05)?;
/// let at = |shown: f64| Estimate::exact(shown)?.with_rectangular(0.008 * shown + 30.0)?.with_normal(3.0);
/// assert_eq!(judge(&at(4860.0)?, &limits, rule)?.answer, Answer::Conforms);
/// let open = judge(&at(4880.0)?, &limits, rule)?;
/// assert_eq!((open.answer, open.side), (Answer::Undecided, Side::Inside));
/// assert!((open.conformance_probability - 0.898).abs() < 5e-4);
/// assert_eq!(judge(&at(4999.0)?, &limits, rule)?.answer, Answer::DoesNotConform);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # Errors
/// An error if the expanded uncertainty does not fit the number type.
pub fn judge<R: Real>(estimate: &Estimate<R>, limits: &Limits<R>, rule: Rule<R>) -> Result<Verdict<R>, VerdictError> {
    let shape = Shape::of(estimate);
    let (lower, upper) = (limits.lower_ohm(), limits.upper_ohm());
    let value = estimate.value();
    let decision = decide(estimate, limits, rule, &shape);
    let guard = match rule.risk() {
        None => Some(R::ZERO),
        Some(risk) => guard_band(&shape, upper - lower, risk, rule.kind()),
    };
    let acceptance = match (rule.risk(), guard) {
        (None, _) => Some((lower, upper)),
        (Some(risk), Some(guard)) => {
            let accepted = |x: R| accepts(Ends::at(x, estimate, limits, &shape), rule.kind(), risk);
            let outermost = (lower + guard + estimate.below(), upper - guard - estimate.above());
            acceptance_limits(outermost, value, decision.answer == Answer::Conforms, accepted)
        }
        (Some(_), None) => None,
    };
    let tur = test_uncertainty_ratio(limits, estimate.expanded(R::lit(COVERAGE_BY_CONVENTION))?.half_width);
    Ok(Verdict {
        answer: decision.answer,
        side: decision.side,
        conformance_probability: decision.conformance_probability,
        guard_band_ohm: guard,
        acceptance_lower_ohm: acceptance.map(|(low, _)| low),
        acceptance_upper_ohm: acceptance.map(|(_, high)| high),
        distance_ohm: (value - lower).magnitude().smaller((upper - value).magnitude()),
        tur: tur.finite().then_some(tur),
        next_step: if decision.answer == Answer::Undecided { next_step(estimate) } else { NextStep::None },
        rule,
    })
}

/// The lowest and the highest value that conforms. Quantiles put them at `outermost`, rounded; the answer is found by tails.
/// So that the two agree to the last digit, each is taken as far inwards as it takes for a value there to conform (hardly
/// ever, and then by some spacings of its number), and on the right side of the value judged.
fn acceptance_limits<R: Real>(
    outermost: (R, R),
    value: R,
    conforms: bool,
    accepted: impl Fn(R) -> bool,
) -> Option<(R, R)> {
    let (low, high) = outermost;
    let value_is_high = high - value < value - low;
    let from_low = || inwards(low, high, |x| accepted(x) && (conforms || value_is_high || x > value));
    let from_high = || inwards(high, low, |x| accepted(x) && (conforms || !value_is_high || x < value));
    let found = if low <= high { from_low().zip(from_high()).filter(|(low, high)| low <= high) } else { None };
    if conforms {
        let (low, high) = found.unwrap_or((value, value));
        return Some((low.smaller(value), high.larger(value)));
    }
    found
}

/// The first of ever longer steps from one end towards the other where something holds.
fn inwards<R: Real>(from: R, towards: R, holds: impl Fn(R) -> bool) -> Option<R> {
    if !from.finite() {
        return Some(from);
    }
    let size = R::SPACING_AT_ONE * from.magnitude().larger(R::SMALLEST_NORMAL);
    let down = towards < from;
    let mut step = if down { -size } else { size };
    let mut x = from;
    while x.finite() && if down { x >= towards } else { x <= towards } {
        if holds(x) {
            return Some(x);
        }
        x = from + step;
        step += step;
    }
    None
}

/// Judges each of an array of estimates; nothing is written unless all can be judged.
///
/// ```
/// use reckohm::uncertainty::Estimate;
/// use reckohm::verdict::{Answer, Limits, Rule, judge, judge_into};
/// let limits = Limits::at_most(100.0)?;
/// let parts = [Estimate::exact(99.0)?, Estimate::exact(101.0)?];
/// let mut verdicts = [judge(&parts[0], &limits, Rule::simple_acceptance())?; 2];
/// judge_into(&parts, &limits, Rule::simple_acceptance(), &mut verdicts)?;
/// assert_eq!(verdicts[1].answer, Answer::DoesNotConform);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # Errors
/// Different lengths, or the first estimate that cannot be judged.
pub fn judge_into<R: Real>(
    estimates: &[Estimate<R>],
    limits: &Limits<R>,
    rule: Rule<R>,
    verdicts: &mut [Verdict<R>],
) -> Result<(), VerdictError> {
    same_length(estimates.len(), verdicts.len())?;
    for estimate in estimates {
        estimate.expanded(R::lit(COVERAGE_BY_CONVENTION))?;
    }
    for (estimate, verdict) in estimates.iter().zip(verdicts) {
        *verdict = judge(estimate, limits, rule)?;
    }
    Ok(())
}

/// The conformance probability of each of an array of estimates.
///
/// ```
/// use reckohm::uncertainty::Estimate;
/// use reckohm::verdict::{Limits, conformance_probability_into};
/// let parts = [Estimate::exact(99.0)?.with_normal(1.0)?, Estimate::exact(100.0)?.with_normal(1.0)?];
/// let mut p = [0.0; 2];
/// conformance_probability_into(&parts, &Limits::at_most(100.0)?, &mut p)?;
/// assert_eq!(p[1], 0.5);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # Errors
/// Different lengths.
pub fn conformance_probability_into<R: Real>(
    estimates: &[Estimate<R>],
    limits: &Limits<R>,
    probabilities: &mut [R],
) -> Result<(), VerdictError> {
    same_length(estimates.len(), probabilities.len())?;
    for (estimate, probability) in estimates.iter().zip(probabilities) {
        *probability = conformance_probability(estimate, limits);
    }
    Ok(())
}

fn same_length(estimates: usize, room: usize) -> Result<(), VerdictError> {
    if estimates == room { Ok(()) } else { Err(VerdictError::Lengths { estimates, room }) }
}

/// How far inside a limit a value must lie; none if no value between limits `width` apart can meet the rule.
fn guard_band<R: Real>(shape: &Shape<R>, width: R, risk: R, kind: RuleKind) -> Option<R> {
    let one_limit = shape.quantile_above(risk);
    if kind == RuleKind::Guarded || !width.finite() {
        return Some(one_limit);
    }
    // Both limits count: the tails beyond the near and the far one add up to the risk.
    let half = R::lit(0.5) * width;
    let outside = |w: R| shape.above(w) + shape.above(width - w);
    let excess = |w: R| outside(w).larger(least()).natural_log() - risk.natural_log();
    let at_middle = excess(half);
    if at_middle > R::ZERO {
        return is_at_most(outside(half), risk).then_some(half);
    }
    if one_limit >= half {
        return Some(half);
    }
    let at_one_limit = excess(one_limit);
    if at_one_limit <= R::ZERO {
        return Some(one_limit);
    }
    Some(root(excess, one_limit, at_one_limit, half, at_middle))
}

/// What keeps the answer open most.
fn next_step<R: Real>(estimate: &Estimate<R>) -> NextStep {
    let [a, b] = estimate.rectangular();
    let [first, second] = estimate.type_a();
    let three = R::lit(3.0);
    // As parts of u, whose squares are not lost however small it is.
    let u = estimate.u();
    let square = |part: R| (part / u) * (part / u);
    let meter = (square(a) + square(b)) / three;
    let scatter = square(first.s) + square(second.s) + square(estimate.normal_u());
    let one_sided = (square(estimate.below()) + square(estimate.above())) / three;
    if one_sided > meter && one_sided > scatter {
        NextStep::RemoveOneSided
    } else if scatter > meter {
        NextStep::Repeat
    } else {
        NextStep::TighterMeter
    }
}
