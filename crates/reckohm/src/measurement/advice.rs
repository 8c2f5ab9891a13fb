//! What dominates a result, what would help, and the number it would bring.

use core::fmt;

use super::budget::{Budget, Contribution, Term};
use super::evaluate::{Scatter, clause_part, combine};
use super::setup::Setup;
use crate::meter::Span;
use crate::uncertainty::{Estimate, EstimateError};

/// The most pieces of advice that one measurement gets.
pub(super) const MOST: usize = 5;

/// A part of the variance from which a contribution is worth working on.
const WORTH_IT: f64 = 0.1;
/// How many readings are suggested at least.
const MORE_READINGS: usize = 10;
/// What leads of a hand-held touched together may read, ohm (common practice).
const LEADS_OHM: f64 = 2.0;

/// What a piece of advice says.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[repr(u8)]
#[non_exhaustive]
pub enum AdviceKind {
    /// This contribution dominates.
    Dominates = 1,
    /// One reading alone does not show its scatter: take more.
    ScatterUnknown = 2,
    /// More readings would help.
    MoreReadings = 3,
    /// Another span of this meter would help.
    OtherSpan = 4,
    /// The leads were not taken off and may matter.
    LeadsNotTakenOff = 5,
    /// A four-wire connection would take the leads out.
    FourWire = 6,
    /// A comparison with a known part on the same span would take the meter's error out.
    Substitution = 7,
    /// The parallel path should be disconnected rather than corrected for.
    DisconnectPath = 8,
    /// Measuring nearer to the reference temperature would help.
    NearerReference = 9,
}

/// A piece of advice.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Advice {
    /// What it says.
    pub kind: AdviceKind,
    /// The contribution that it is about.
    pub contribution: Contribution,
    /// That contribution's part of the variance, 0 to 1.
    pub share: f64,
    /// Expanded uncertainty as it stands, ohm.
    pub expanded_now_ohm: f64,
    /// Expanded uncertainty that following the advice would bring, all else equal, ohm; as it stands where no number can
    /// be given.
    pub expanded_then_ohm: f64,
    /// How many readings, for [`AdviceKind::MoreReadings`] and [`AdviceKind::ScatterUnknown`]; the index of the span for
    /// [`AdviceKind::OtherSpan`]; else 0.
    pub number: u32,
}

impl fmt::Display for Advice {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let Advice { contribution, share, expanded_now_ohm: now, expanded_then_ohm: then, number, .. } = *self;
        let name = contribution.name();
        match self.kind {
            AdviceKind::Dominates => {
                write!(f, "the {name} dominates: {:.0} % of the variance; U is {} ohm", 100.0 * share, Three(now))
            }
            AdviceKind::ScatterUnknown => write!(
                f,
                "one reading alone does not show its scatter: take {number}, or give the repeatability known from \
                 before; U of {} ohm holds for a reading without scatter only",
                Three(now)
            ),
            AdviceKind::MoreReadings => {
                write!(f, "take {number} readings in all: U from {} to {} ohm", Three(now), Three(then))
            }
            AdviceKind::OtherSpan => {
                write!(f, "use span number {} of this meter: U from {} to {} ohm", number + 1, Three(now), Three(then))
            }
            AdviceKind::LeadsNotTakenOff => write!(
                f,
                "the leads are in the reading, and those of a hand-held read 0.1 to 2 ohm (common practice): touch the \
                 tips together, read, and take that off"
            ),
            AdviceKind::FourWire => {
                write!(
                    f,
                    "connect by four wires, so that the leads drop out: U from {} to {} ohm",
                    Three(now),
                    Three(then)
                )
            }
            AdviceKind::Substitution => write!(
                f,
                "compare with a known part of like value on the same span: the meter's error drops out, and U goes \
                 from {} to {} ohm and what the known part brings",
                Three(now),
                Three(then)
            ),
            AdviceKind::DisconnectPath => write!(
                f,
                "disconnect the parallel path rather than correct for it: U from {} to {} ohm",
                Three(now),
                Three(then)
            ),
            AdviceKind::NearerReference => {
                write!(f, "measure at the reference temperature: U from {} to {} ohm", Three(now), Three(then))
            }
        }
    }
}

/// A positive number with three figures, as a person would write it beside others of its sort.
struct Three(f64);

impl fmt::Display for Three {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let x = self.0;
        if x == 0.0 {
            return write!(f, "0");
        }
        if !(1e-3..1e6).contains(&x) {
            return write!(f, "{x:.2e}");
        }
        let decimals = if x < 0.01 {
            5
        } else if x < 0.1 {
            4
        } else if x < 1.0 {
            3
        } else if x < 10.0 {
            2
        } else if x < 100.0 {
            1
        } else {
            0
        };
        write!(f, "{x:.decimals$}")
    }
}

/// Collects advice up to the most that there is room for.
struct Collected {
    list: [Option<Advice>; MOST],
}

impl Collected {
    fn add(&mut self, advice: Advice) {
        if let Some(free) = self.list.iter_mut().find(|slot| slot.is_none()) {
            *free = Some(advice);
        }
    }
}

/// What can be said about this measurement, the most useful first.
pub(super) fn advise(
    span: &Span,
    scatter: &Scatter,
    setup: &Setup<'_>,
    terms: &[Option<Term>; 8],
    budget: &Budget,
) -> Result<[Option<Advice>; MOST], EstimateError> {
    let mut collected = Collected { list: [None; MOST] };
    let now = budget.expanded().half_width;
    let share = |contribution| budget.row(contribution).map_or(0.0, |row| row.share);
    let new = |kind, contribution, then: f64, number: u32| Advice {
        kind,
        contribution,
        share: share(contribution),
        expanded_now_ohm: now,
        expanded_then_ohm: then,
        number,
    };
    // U with one contribution changed or left out, all else equal.
    let with = |contribution: Contribution, instead: Option<Estimate>| -> Result<f64, EstimateError> {
        let changed = terms.map(|term| match term {
            Some(term) if term.contribution == contribution => instead.map(|input| Term { input, ..term }),
            _ => term,
        });
        Ok(combine(budget.value_ohm(), &changed)?.expanded(setup.coverage_probability)?.half_width)
    };
    if let Some(row) = budget.dominant() {
        collected.add(new(AdviceKind::Dominates, row.contribution, now, 0));
    }
    if scatter.dof == 0.0 {
        collected.add(new(AdviceKind::ScatterUnknown, Contribution::Scatter, now, 3));
    }
    if let Some((index, then)) = better_span(span, scatter.mean, setup, &with)?
        && then < now
    {
        collected.add(new(AdviceKind::OtherSpan, Contribution::AccuracyClause, then, index));
    }
    if share(Contribution::Scatter) >= WORTH_IT {
        let count = MORE_READINGS.max(scatter.count.saturating_mul(2));
        let then = with(Contribution::Scatter, Some(scatter.of_mean(count)?))?;
        if then < now {
            collected.add(new(AdviceKind::MoreReadings, Contribution::Scatter, then, count as u32));
        }
    }
    if setup.leads.is_none() && now < LEADS_OHM {
        collected.add(new(AdviceKind::LeadsNotTakenOff, Contribution::Leads, now, 0));
    }
    let mut without = |kind, contribution| -> Result<(), EstimateError> {
        if share(contribution) >= WORTH_IT {
            let then = with(contribution, None)?;
            collected.add(new(kind, contribution, then, 0));
        }
        Ok(())
    };
    without(AdviceKind::DisconnectPath, Contribution::ParallelPath)?;
    without(AdviceKind::FourWire, Contribution::Leads)?;
    without(AdviceKind::NearerReference, Contribution::CoefficientLimit)?;
    without(AdviceKind::NearerReference, Contribution::Temperature)?;
    without(AdviceKind::Substitution, Contribution::AccuracyClause)?;
    Ok(collected.list)
}

/// The span of the meter with the least uncertainty for this value, if it is not the one in use, and the U it would bring.
fn better_span(
    span: &Span,
    shown: f64,
    setup: &Setup<'_>,
    with: &impl Fn(Contribution, Option<Estimate>) -> Result<f64, EstimateError>,
) -> Result<Option<(u32, f64)>, EstimateError> {
    let mut best: Option<(u32, f64)> = None;
    for (index, other) in setup.spans.iter().enumerate() {
        if other == span || shown.abs() > other.full_scale_ohm() {
            continue;
        }
        // A span that cannot be used at this meter temperature is no advice.
        let Ok(half_width) = other.clause_half_width_ohm(shown, setup.meter_temperature_c) else { continue };
        let clause = clause_part(other, half_width)?;
        let then = with(Contribution::AccuracyClause, Some(clause))?;
        if best.is_none_or(|(_, u)| then < u) {
            best = Some((index as u32, then));
        }
    }
    Ok(best)
}
