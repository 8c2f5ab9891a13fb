//! Verdicts.

use core::mem::{offset_of, size_of};

use reckohm::verdict::{Limits, Rule, Verdict, conformance_probability, judge};

use crate::answer::{Outcome, one};
use crate::array::{Results, all_good, array};
use crate::detail::{rko_detail, rko_status};
use crate::estimate::rko_estimate;
use crate::limits::rko_limits;
use crate::pointer::{element, item, items};
use crate::rule::{rko_rule, rko_rule_f32};

/// The part conforms at the agreed risk.
pub const RKO_ANSWER_CONFORMS: u32 = 1;
/// The part does not conform at the agreed risk.
pub const RKO_ANSWER_DOES_NOT_CONFORM: u32 = 2;
/// The measurement cannot tell at the agreed risk.
pub const RKO_ANSWER_UNDECIDED: u32 = 3;

/// The value lies within the limits, or at one.
pub const RKO_SIDE_INSIDE: u32 = 1;
/// The value lies beyond a limit.
pub const RKO_SIDE_OUTSIDE: u32 = 2;

/// Nothing more to do: the answer stands.
pub const RKO_NEXT_STEP_NONE: u32 = 1;
/// Take more readings: their scatter keeps the answer open.
pub const RKO_NEXT_STEP_REPEAT: u32 = 2;
/// Use a span or meter with a tighter clause, or compare with a known part.
pub const RKO_NEXT_STEP_TIGHTER_METER: u32 = 3;
/// Take away what pushes the reading to one side (leakage, a body across the part).
pub const RKO_NEXT_STEP_REMOVE_ONE_SIDED: u32 = 4;

/// The verdict has a guard band; without this bit no value can meet the rule.
pub const RKO_VERDICT_HAS_GUARD_BAND: u32 = 1;
/// The verdict has acceptance limits; without this bit no value can conform.
pub const RKO_VERDICT_HAS_ACCEPTANCE: u32 = 2;
/// The verdict has a test uncertainty ratio; there is none for a single limit or an exact value.
pub const RKO_VERDICT_HAS_TUR: u32 = 4;

/// A verdict and what it rests on.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct rko_verdict {
    /// The probability that the part lies within its limits, from this measurement alone, no prior; one-sided parts are
    /// taken where they make it smallest.
    pub conformance_probability: f64,
    /// How far inside a limit a value must lie to conform, ohm; read it only if `has` says so, else 0.
    pub guard_band_ohm: f64,
    /// The lowest value that conforms, ohm; minus infinity without a lower limit; read it only if `has` says so, else 0.
    pub acceptance_lower_ohm: f64,
    /// The highest value that conforms, ohm; infinity without an upper limit; read it only if `has` says so, else 0.
    pub acceptance_upper_ohm: f64,
    /// How far the value lies from the nearest limit, ohm.
    pub distance_ohm: f64,
    /// Test uncertainty ratio, (upper limit - lower limit)/(2 U) at a coverage probability of 0.95; read it only if `has`
    /// says so, else 0.
    pub tur: f64,
    /// The rule that gave the answer.
    pub rule: rko_rule,
    /// `RKO_ANSWER_CONFORMS`, `RKO_ANSWER_DOES_NOT_CONFORM` or `RKO_ANSWER_UNDECIDED`.
    pub answer: u32,
    /// Where the value itself lies: `RKO_SIDE_INSIDE` or `RKO_SIDE_OUTSIDE`.
    pub side: u32,
    /// What to do next: one of `RKO_NEXT_STEP_...`.
    pub next_step: u32,
    /// A sum of `RKO_VERDICT_HAS_...`.
    pub has: u32,
}

const _: () = {
    assert!(size_of::<rko_verdict>() == 80);
    assert!(offset_of!(rko_verdict, conformance_probability) == 0);
    assert!(offset_of!(rko_verdict, guard_band_ohm) == 8);
    assert!(offset_of!(rko_verdict, acceptance_lower_ohm) == 16);
    assert!(offset_of!(rko_verdict, acceptance_upper_ohm) == 24);
    assert!(offset_of!(rko_verdict, distance_ohm) == 32);
    assert!(offset_of!(rko_verdict, tur) == 40);
    assert!(offset_of!(rko_verdict, rule) == 48);
    assert!(offset_of!(rko_verdict, answer) == 64);
    assert!(offset_of!(rko_verdict, side) == 68);
    assert!(offset_of!(rko_verdict, next_step) == 72);
    assert!(offset_of!(rko_verdict, has) == 76);
};

/// As `rko_verdict`, for `float`.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct rko_verdict_f32 {
    /// As of `rko_verdict`.
    pub conformance_probability: f32,
    /// As of `rko_verdict`.
    pub guard_band_ohm: f32,
    /// As of `rko_verdict`.
    pub acceptance_lower_ohm: f32,
    /// As of `rko_verdict`.
    pub acceptance_upper_ohm: f32,
    /// As of `rko_verdict`.
    pub distance_ohm: f32,
    /// As of `rko_verdict`.
    pub tur: f32,
    /// As of `rko_verdict`.
    pub rule: rko_rule_f32,
    /// As of `rko_verdict`.
    pub answer: u32,
    /// As of `rko_verdict`.
    pub side: u32,
    /// As of `rko_verdict`.
    pub next_step: u32,
    /// As of `rko_verdict`.
    pub has: u32,
}

const _: () = {
    assert!(size_of::<rko_verdict_f32>() == 52);
    assert!(offset_of!(rko_verdict_f32, conformance_probability) == 0);
    assert!(offset_of!(rko_verdict_f32, guard_band_ohm) == 4);
    assert!(offset_of!(rko_verdict_f32, acceptance_lower_ohm) == 8);
    assert!(offset_of!(rko_verdict_f32, acceptance_upper_ohm) == 12);
    assert!(offset_of!(rko_verdict_f32, distance_ohm) == 16);
    assert!(offset_of!(rko_verdict_f32, tur) == 20);
    assert!(offset_of!(rko_verdict_f32, rule) == 24);
    assert!(offset_of!(rko_verdict_f32, answer) == 36);
    assert!(offset_of!(rko_verdict_f32, side) == 40);
    assert!(offset_of!(rko_verdict_f32, next_step) == 44);
    assert!(offset_of!(rko_verdict_f32, has) == 48);
};

macro_rules! from_core {
    ($plain:ident, $number:ty) => {
        impl From<Verdict<$number>> for $plain {
            fn from(verdict: Verdict<$number>) -> $plain {
                let bit = |there: bool, bit: u32| if there { bit } else { 0 };
                $plain {
                    conformance_probability: verdict.conformance_probability,
                    guard_band_ohm: verdict.guard_band_ohm.unwrap_or(0.0),
                    acceptance_lower_ohm: verdict.acceptance_lower_ohm.unwrap_or(0.0),
                    acceptance_upper_ohm: verdict.acceptance_upper_ohm.unwrap_or(0.0),
                    distance_ohm: verdict.distance_ohm,
                    tur: verdict.tur.unwrap_or(0.0),
                    rule: verdict.rule.into(),
                    answer: verdict.answer as u32,
                    side: verdict.side as u32,
                    next_step: verdict.next_step as u32,
                    has: bit(verdict.guard_band_ohm.is_some(), RKO_VERDICT_HAS_GUARD_BAND)
                        | bit(verdict.acceptance_lower_ohm.is_some(), RKO_VERDICT_HAS_ACCEPTANCE)
                        | bit(verdict.tur.is_some(), RKO_VERDICT_HAS_TUR),
                }
            }
        }
    };
}
from_core!(rko_verdict, f64);
from_core!(rko_verdict_f32, f32);

// The codes are the core's own numbers.
const _: () = {
    use reckohm::verdict::{Answer, NextStep, Side};
    assert!(Answer::Conforms as u32 == RKO_ANSWER_CONFORMS);
    assert!(Answer::DoesNotConform as u32 == RKO_ANSWER_DOES_NOT_CONFORM);
    assert!(Answer::Undecided as u32 == RKO_ANSWER_UNDECIDED);
    assert!(Side::Inside as u32 == RKO_SIDE_INSIDE);
    assert!(Side::Outside as u32 == RKO_SIDE_OUTSIDE);
    assert!(NextStep::None as u32 == RKO_NEXT_STEP_NONE);
    assert!(NextStep::Repeat as u32 == RKO_NEXT_STEP_REPEAT);
    assert!(NextStep::TighterMeter as u32 == RKO_NEXT_STEP_TIGHTER_METER);
    assert!(NextStep::RemoveOneSided as u32 == RKO_NEXT_STEP_REMOVE_ONE_SIDED);
};

/// Judges an estimate in ohm against limits under a rule.
///
/// Given: `estimate`; `limits`; `rule`, without a default, since it is agreed beforehand.
/// Written: `verdict`.
/// Statuses: `RKO_OUT_OF_RANGE`, `RKO_NOT_FINITE`, `RKO_EMPTY`, `RKO_CONTRADICTION`, `RKO_RESULT_OUT_OF_RANGE`,
/// `RKO_UNKNOWN_CODE`, `RKO_NULL_POINTER`.
/// Source: JCGM 106, ISO 14253-1; the shape of the estimate decides, not u alone.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rko_judge(
    estimate: *const rko_estimate,
    limits: *const rko_limits,
    rule: *const rko_rule,
    verdict: *mut rko_verdict,
    detail: *mut rko_detail,
) -> rko_status {
    unsafe {
        one(verdict, 4, detail, || {
            let (estimate, limits, rule) = (item(estimate, 1)?, item(limits, 2)?, item(rule, 3)?);
            Ok(judge(&estimate.to_core()?, &limits.to_core()?, rule.to_core(3)?)?.into())
        })
    }
}

/// `rko_judge` for each of `count` estimates, all against the same limits under one rule.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rko_judge_n(
    estimates: *const rko_estimate,
    count: usize,
    limits: *const rko_limits,
    rule: *const rko_rule,
    verdicts: *mut rko_verdict,
    valid: *mut u8,
    detail: *mut rko_detail,
) -> rko_status {
    let asked = |(estimates, limits, rule): (&[rko_estimate], Limits, Rule), index: usize| -> Outcome<rko_verdict> {
        Ok(judge(&element(estimates, index)?.to_core()?, &limits, rule)?.into())
    };
    unsafe {
        array(
            Results { count, output: verdicts, position: 5, valid, detail },
            || Ok((items(estimates, count, 1)?, item(limits, 3)?.to_core()?, item(rule, 4)?.to_core(4)?)),
            |inputs, verdicts| {
                // An estimate that is legal and has an expanded uncertainty can be judged.
                all_good(count, |index| Ok(element(inputs.0, index)?.to_core()?.expanded(0.95).map(|_| ())?))?;
                for (index, verdict) in verdicts.iter_mut().enumerate() {
                    *verdict = asked(inputs, index)?;
                }
                Ok(())
            },
            asked,
        )
    }
}

/// The probability that the true value lies within the limits, from the estimate's shape alone, no prior; one-sided parts
/// are taken where they make it smallest.
///
/// Given: `estimate`, in ohm; `limits`.
/// Written: `probability`.
/// Statuses: `RKO_OUT_OF_RANGE`, `RKO_NOT_FINITE`, `RKO_EMPTY`, `RKO_CONTRADICTION`, `RKO_RESULT_OUT_OF_RANGE`,
/// `RKO_NULL_POINTER`.
/// Source: JCGM 106 7.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rko_conformance_probability(
    estimate: *const rko_estimate,
    limits: *const rko_limits,
    probability: *mut f64,
    detail: *mut rko_detail,
) -> rko_status {
    unsafe {
        one(probability, 3, detail, || {
            let (estimate, limits) = (item(estimate, 1)?, item(limits, 2)?);
            Ok(conformance_probability(&estimate.to_core()?, &limits.to_core()?))
        })
    }
}

/// `rko_conformance_probability` for each of `count` estimates, all against the same limits.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rko_conformance_probability_n(
    estimates: *const rko_estimate,
    count: usize,
    limits: *const rko_limits,
    probability: *mut f64,
    valid: *mut u8,
    detail: *mut rko_detail,
) -> rko_status {
    let asked = |(estimates, limits): (&[rko_estimate], Limits), index: usize| -> Outcome<f64> {
        Ok(conformance_probability(&element(estimates, index)?.to_core()?, &limits))
    };
    unsafe {
        array(
            Results { count, output: probability, position: 4, valid, detail },
            || Ok((items(estimates, count, 1)?, item(limits, 3)?.to_core()?)),
            |inputs, output| {
                all_good(count, |index| element(inputs.0, index)?.to_core().map(|_| ()))?;
                for (index, place) in output.iter_mut().enumerate() {
                    *place = asked(inputs, index)?;
                }
                Ok(())
            },
            asked,
        )
    }
}
