//! What stands beside a verdict: the next step, and what the reading fits if it does not fit the marking.

use reckohm::marking::{Edition, both_ways};
use reckohm::meter::{Meter, Step};
use reckohm::preferred::{Series, nearest};
use reckohm::verdict::{Answer, Limits, NextStep, Verdict};

use crate::judged::{Beyond, Judgement, Outcome};
use crate::rounded::plain;
use crate::tray::Line;

/// Leads that are more than this part of what remains are worth a remark.
const LEADS_MATTER: f64 = 0.1;

/// The remark on a line; empty if there is nothing to say.
pub fn remark(line: &Line, outcome: &Outcome, meter: &Meter<'_>) -> String {
    match outcome {
        Outcome::Refused(_) => "see below".to_owned(),
        Outcome::Beyond(Beyond { step, .. }) => match step {
            Step::Up(index) => format!("step up to {}", label(meter, *index)),
            _ => "open, or not for this meter".to_owned(),
        },
        Outcome::Judged(judgement) => {
            let parts = [
                next_step(&judgement.verdict),
                scatter_unknown(judgement),
                leads(judgement),
                negative(judgement),
                misfit(line, judgement, meter),
                finer_span(judgement, meter),
            ];
            parts.into_iter().flatten().collect::<Vec<_>>().join("; ")
        }
    }
}

fn label(meter: &Meter<'_>, index: usize) -> String {
    meter.span(index).map(|span| span.label().to_string()).unwrap_or_default()
}

fn next_step(verdict: &Verdict) -> Option<String> {
    let said = match verdict.next_step {
        NextStep::None => return None,
        NextStep::TighterMeter if verdict.acceptance_lower_ohm.is_none() => {
            "this span can accept no part: a tighter meter"
        }
        NextStep::TighterMeter => "a tighter span or meter, or compare with a known part",
        other => other.name(),
    };
    Some(said.to_owned())
}

fn scatter_unknown(judgement: &Judgement) -> Option<String> {
    (judgement.readings.len() == 1).then(|| "one reading: its scatter is unknown".to_owned())
}

fn leads(judgement: &Judgement) -> Option<String> {
    let ohm = judgement.leads?.ohm();
    let part_ohm = judgement.measurement.estimate().value();
    (ohm > LEADS_MATTER * part_ohm.abs()).then(|| format!("{} of leads taken off", plain(ohm)))
}

fn negative(judgement: &Judgement) -> Option<String> {
    let negative = judgement.readings.iter().any(|reading| reading.negative());
    negative.then(|| "negative: not distinguishable from zero".to_owned())
}

fn finer_span(judgement: &Judgement, meter: &Meter<'_>) -> Option<String> {
    match judgement.step {
        Step::Down(index) => Some(format!("{} would show it finer", label(meter, index))),
        _ => None,
    }
}

/// What a reading that does not conform would fit. Hints for a person, not verdicts: the value lies within those limits.
fn misfit(line: &Line, judgement: &Judgement, meter: &Meter<'_>) -> Option<String> {
    if judgement.verdict.answer != Answer::DoesNotConform {
        return None;
    }
    let ohm = judgement.measurement.estimate().value();
    other_end(line, ohm)
        .or_else(|| other_span(judgement, ohm, meter))
        .or_else(|| decade_off(judgement, ohm))
        .or_else(|| neighbour(judgement, ohm))
}

/// Bands that were read from the wrong end.
fn other_end(line: &Line, ohm: f64) -> Option<String> {
    if line.code != "bands" {
        return None;
    }
    let marking = both_ways(&line.marking, Edition::E2016).ok()?.backward.marking().ok()?;
    marking.limits().ok()?.contains(ohm).then(|| format!("would fit the bands read from the other end: {marking}"))
}

/// A display of the same digits on a span a thousand times higher or lower: kilo written for mega and the like.
fn other_span(judgement: &Judgement, ohm: f64, meter: &Meter<'_>) -> Option<String> {
    let full_scale_ohm = meter.span(judgement.span_index).ok()?.full_scale_ohm();
    [1.0e-3, 1.0e3].into_iter().find_map(|factor| {
        let fits = judgement.wanted.limits.contains(ohm * factor);
        let span = meter.spans().iter().find(|span| span.full_scale_ohm() == full_scale_ohm * factor);
        span.filter(|_| fits).map(|span| format!("would fit if it was read on {}", span.label()))
    })
}

/// A decade off: the multiplier's band misread, or the wrong part.
fn decade_off(judgement: &Judgement, ohm: f64) -> Option<String> {
    let nominal_ohm = judgement.wanted.nominal_ohm?;
    [0.1, 10.0].into_iter().find_map(|factor| {
        let fits = judgement.wanted.limits.contains(ohm * factor);
        fits.then(|| format!("a decade off: would fit {}; a band misread?", plain(nominal_ohm / factor)))
    })
}

/// The preferred value that it fits with the tolerance of the marking.
fn neighbour(judgement: &Judgement, ohm: f64) -> Option<String> {
    judgement.wanted.marking?;
    let preferred_ohm = nearest(ohm, Series::E24).ok()?;
    let limits = Limits::from_tolerance(preferred_ohm, judgement.wanted.tolerance?).ok()?;
    limits.contains(ohm).then(|| format!("would fit {} of E24", plain(preferred_ohm)))
}
