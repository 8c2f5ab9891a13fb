//! Verdicts.

use core::fmt;

use super::error::VerdictError;
use super::rule::{Rule, RuleKind};
use crate::number::elementary::ln;
use crate::part::conformance::{Conformance, conformance_probability, test_uncertainty_ratio};
use crate::part::limits::Limits;
use crate::uncertainty::{COVERAGE_BY_CONVENTION, Estimate, Shape, root};

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
pub struct Verdict {
    /// The answer.
    pub answer: Answer,
    /// Where the value itself lies.
    pub side: Side,
    /// Probability that the part lies within its limits, from the shape of this measurement alone, no prior; one-sided
    /// parts are taken where they make it smallest.
    pub conformance_probability: f64,
    /// Guard band, ohm: how far inside a limit a value must lie to conform. 0 under simple acceptance; none where the rule
    /// cannot be met by any value.
    pub guard_band_ohm: Option<f64>,
    /// The lowest value that conforms, ohm; minus infinite without a lower limit; none where no value can conform.
    pub acceptance_lower_ohm: Option<f64>,
    /// The highest value that conforms, ohm; infinite without an upper limit; none where no value can conform.
    pub acceptance_upper_ohm: Option<f64>,
    /// How far the value lies from the nearest limit, ohm: a guard band below this would decide it.
    pub distance_ohm: f64,
    /// Test uncertainty ratio, (upper limit - lower limit)/(2·U) at a coverage probability of 0.95; none for a single
    /// limit or an exact value.
    pub tur: Option<f64>,
    /// What to do next.
    pub next_step: NextStep,
    /// The rule that gave the answer.
    pub rule: Rule,
}

impl fmt::Display for Verdict {
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
pub fn judge(estimate: &Estimate, limits: &Limits, rule: Rule) -> Result<Verdict, VerdictError> {
    let shape = Shape::of(estimate);
    let (lower, upper) = (limits.lower_ohm(), limits.upper_ohm());
    let value = estimate.value();
    let chance = Conformance::of(estimate, limits, &shape);
    let side = if limits.contains(value) { Side::Inside } else { Side::Outside };
    let guard = match rule.risk() {
        None => Some(0.0),
        Some(risk) => guard_band(&shape, upper - lower, risk, rule.kind()),
    };
    let (one_sided_low, one_sided_high) =
        if rule.kind() == RuleKind::SimpleAcceptance { (0.0, 0.0) } else { (estimate.below(), estimate.above()) };
    let acceptance =
        guard.map(|w| (lower + w + one_sided_low, upper - w - one_sided_high)).filter(|(low, high)| low <= high);
    let accepted = acceptance.is_some_and(|(low, high)| value >= low && value <= high);
    let rejected = match rule.risk() {
        None => !accepted,
        Some(risk) => match rule.kind() {
            RuleKind::MaxRisk => chance.best <= risk,
            _ => {
                let w = shape.quantile_above(risk);
                value >= upper + w + estimate.below() || value <= lower - w - estimate.above()
            }
        },
    };
    let answer = if accepted {
        Answer::Conforms
    } else if rejected {
        Answer::DoesNotConform
    } else {
        Answer::Undecided
    };
    let tur = test_uncertainty_ratio(limits, estimate.expanded(COVERAGE_BY_CONVENTION)?.half_width);
    Ok(Verdict {
        answer,
        side,
        conformance_probability: chance.worst,
        guard_band_ohm: guard,
        acceptance_lower_ohm: acceptance.map(|(low, _)| low),
        acceptance_upper_ohm: acceptance.map(|(_, high)| high),
        distance_ohm: (value - lower).abs().min((upper - value).abs()),
        tur: tur.is_finite().then_some(tur),
        next_step: if answer == Answer::Undecided { next_step(estimate) } else { NextStep::None },
        rule,
    })
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
pub fn judge_into(
    estimates: &[Estimate],
    limits: &Limits,
    rule: Rule,
    verdicts: &mut [Verdict],
) -> Result<(), VerdictError> {
    same_length(estimates.len(), verdicts.len())?;
    for estimate in estimates {
        estimate.expanded(COVERAGE_BY_CONVENTION)?;
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
pub fn conformance_probability_into(
    estimates: &[Estimate],
    limits: &Limits,
    probabilities: &mut [f64],
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
fn guard_band(shape: &Shape, width: f64, risk: f64, kind: RuleKind) -> Option<f64> {
    let one_limit = shape.quantile_above(risk);
    if kind == RuleKind::Guarded || width.is_infinite() {
        return Some(one_limit);
    }
    // Both limits count: the tails beyond the near and the far one add up to the risk.
    let half = 0.5 * width;
    let excess = |w: f64| ln((shape.above(w) + shape.above(width - w)).max(1e-300)) - ln(risk);
    let at_middle = excess(half);
    if at_middle > 0.0 {
        return None;
    }
    if one_limit >= half {
        return Some(half);
    }
    let at_one_limit = excess(one_limit);
    if at_one_limit <= 0.0 {
        return Some(one_limit);
    }
    Some(root(excess, one_limit, at_one_limit, half, at_middle))
}

/// What keeps the answer open most.
fn next_step(estimate: &Estimate) -> NextStep {
    let [a, b] = estimate.rectangular();
    let [first, second] = estimate.type_a();
    let meter = (a * a + b * b) / 3.0;
    let scatter = first.s * first.s + second.s * second.s + estimate.normal_u() * estimate.normal_u();
    let one_sided = (estimate.below() * estimate.below() + estimate.above() * estimate.above()) / 3.0;
    if one_sided > meter && one_sided > scatter {
        NextStep::RemoveOneSided
    } else if scatter > meter {
        NextStep::Repeat
    } else {
        NextStep::TighterMeter
    }
}
