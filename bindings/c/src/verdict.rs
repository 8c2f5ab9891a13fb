//! Verdicts.

use reckohm::verdict::{self, Decision, Verdict, conformance_probability, judge};

use crate::answer::one;
use crate::array::{Results, all_good, array};
use crate::detail::rko_detail;
use crate::estimate::rko_estimate;
use crate::limits::rko_limits;
use crate::pointer::{element, item, items};
use crate::rule::rko_rule;
use crate::twins::{twin_structs, twins};

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

twin_structs! {
    /// A verdict and what it rests on.
    struct rko_verdict = rko_verdict_f32 [80, 52] {
        /// The probability that the part lies within its limits, from this measurement alone, no prior; one-sided parts are
        /// taken where they make it smallest.
        conformance_probability: f64 [0, 0],
        /// How far inside a limit a value must lie to conform, ohm; read it only if `has` says so, else 0.
        guard_band_ohm: f64 [8, 4],
        /// The lowest value that conforms, ohm; minus infinity without a lower limit; read it only if `has` says so, else 0.
        acceptance_lower_ohm: f64 [16, 8],
        /// The highest value that conforms, ohm; infinity without an upper limit; read it only if `has` says so, else 0.
        acceptance_upper_ohm: f64 [24, 12],
        /// How far the value lies from the nearest limit, ohm.
        distance_ohm: f64 [32, 16],
        /// Test uncertainty ratio, (upper limit - lower limit)/(2 U) at a coverage probability of 0.95; read it only if `has`
        /// says so, else 0.
        tur: f64 [40, 20],
        /// The rule that gave the answer.
        rule: rko_rule [48, 24],
        /// `RKO_ANSWER_CONFORMS`, `RKO_ANSWER_DOES_NOT_CONFORM` or `RKO_ANSWER_UNDECIDED`.
        answer: u32 [64, 36],
        /// Where the value itself lies: `RKO_SIDE_INSIDE` or `RKO_SIDE_OUTSIDE`.
        side: u32 [68, 40],
        /// What to do next: one of `RKO_NEXT_STEP_...`.
        next_step: u32 [72, 44],
        /// A sum of `RKO_VERDICT_HAS_...`.
        has: u32 [76, 48],
    }

    /// What a verdict answers, without what else it shows.
    struct rko_decision = rko_decision_f32 [16, 12] {
        /// The probability that the part lies within its limits, from this measurement alone, no prior; one-sided parts are
        /// taken where they make it smallest.
        conformance_probability: f64 [0, 0],
        /// `RKO_ANSWER_CONFORMS`, `RKO_ANSWER_DOES_NOT_CONFORM` or `RKO_ANSWER_UNDECIDED`.
        answer: u32 [8, 4],
        /// Where the value itself lies: `RKO_SIDE_INSIDE` or `RKO_SIDE_OUTSIDE`.
        side: u32 [12, 8],
    }
}

macro_rules! of_the_core {
    ($($real:ident: $verdict:ident, $decision:ident;)+) => {$(
        impl From<Verdict<$real>> for $verdict {
            fn from(verdict: Verdict<$real>) -> $verdict {
                let bit = |there: bool, bit: u32| if there { bit } else { 0 };
                $verdict {
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

        impl From<Decision<$real>> for $decision {
            fn from(decision: Decision<$real>) -> $decision {
                let Decision { answer, side, conformance_probability } = decision;
                $decision { conformance_probability, answer: answer as u32, side: side as u32 }
            }
        }
    )+};
}

of_the_core! {
    f64: rko_verdict, rko_decision;
    f32: rko_verdict_f32, rko_decision_f32;
}

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

twins! {
    /// Judges an estimate in ohm against limits under a rule.
    ///
    /// Given: `estimate`; `limits`; `rule`, without a default, since it is agreed beforehand.
    /// Written: `verdict`.
    /// Statuses: `RKO_OUT_OF_RANGE`, `RKO_NOT_FINITE`, `RKO_EMPTY`, `RKO_CONTRADICTION`, `RKO_RESULT_OUT_OF_RANGE`,
    /// `RKO_UNKNOWN_CODE`, `RKO_NULL_POINTER`.
    /// Source: JCGM 106, ISO 14253-1; the shape of the estimate decides, not u alone.
    fn rko_judge = rko_judge_f32(
        estimate: *const rko_estimate,
        limits: *const rko_limits,
        rule: *const rko_rule,
        verdict: *mut rko_verdict,
        detail: *mut rko_detail,
    ) {
        one(verdict, 4, detail, || {
            let (estimate, limits, rule) = (item(estimate, 1)?, item(limits, 2)?, item(rule, 3)?);
            Ok(judge(&estimate.to_core()?, &limits.to_core()?, rule.to_core(3)?)?.into())
        })
    }

    /// `rko_judge` for each of `count` estimates, all against the same limits under one rule.
    fn rko_judge_n = rko_judge_n_f32(
        estimates: *const rko_estimate,
        count: usize,
        limits: *const rko_limits,
        rule: *const rko_rule,
        verdicts: *mut rko_verdict,
        valid: *mut u8,
        detail: *mut rko_detail,
    ) {
        array(
            Results { count, output: verdicts, position: 5, valid, detail },
            || Ok((items(estimates, count, 1)?, item(limits, 3)?.to_core()?, item(rule, 4)?.to_core(4)?)),
            |(estimates, limits, rule), verdicts| {
                // An estimate that is legal and has an expanded uncertainty can be judged.
                all_good(count, |index| Ok(element(estimates, index)?.to_core()?.expanded(0.95).map(|_| ())?))?;
                for (estimate, verdict) in estimates.iter().zip(verdicts) {
                    *verdict = judge(&estimate.to_core()?, &limits, rule)?.into();
                }
                Ok(())
            },
            |(estimates, limits, rule), index| {
                Ok(judge(&element(estimates, index)?.to_core()?, &limits, rule)?.into())
            },
        )
    }

    /// The answer of `rko_judge`, always the same one, without the guard band, the acceptance limits and what else a verdict
    /// shows: no search, so that it is small and quick enough for a small processor.
    ///
    /// Given: `estimate`, in ohm; `limits`; `rule`, without a default, since it is agreed beforehand.
    /// Written: `decision`.
    /// Statuses: `RKO_OUT_OF_RANGE`, `RKO_NOT_FINITE`, `RKO_EMPTY`, `RKO_CONTRADICTION`, `RKO_RESULT_OUT_OF_RANGE`,
    /// `RKO_UNKNOWN_CODE`, `RKO_NULL_POINTER`.
    /// Source: JCGM 106, ISO 14253-1; the shape of the estimate decides, not u alone.
    fn rko_judge_answer = rko_judge_answer_f32(
        estimate: *const rko_estimate,
        limits: *const rko_limits,
        rule: *const rko_rule,
        decision: *mut rko_decision,
        detail: *mut rko_detail,
    ) {
        one(decision, 4, detail, || {
            let (estimate, limits, rule) = (item(estimate, 1)?, item(limits, 2)?, item(rule, 3)?);
            Ok(verdict::answer(&estimate.to_core()?, &limits.to_core()?, rule.to_core(3)?).into())
        })
    }

    /// The answer of `rko_judge_answer`, to the bit, for a value whose error is spread evenly within a half-width, normal, or
    /// both: a reading with its meter's clause and a known scatter. It needs no estimate, and takes a fraction of the code: where
    /// nothing else is linked, firmware has no part of what other estimates need.
    ///
    /// Given: `value`, finite; `half_width`, 0 or more, as of `rko_span_clause_half_width_ohm`; `u`, the standard uncertainty of
    /// the scatter, 0 or more; `limits`; `rule`.
    /// Written: `decision`.
    /// Statuses: `RKO_OUT_OF_RANGE`, `RKO_NOT_FINITE`, `RKO_EMPTY`, `RKO_CONTRADICTION`, `RKO_RESULT_OUT_OF_RANGE`,
    /// `RKO_UNKNOWN_CODE`, `RKO_NULL_POINTER`.
    /// Source: JCGM 106, ISO 14253-1.
    fn rko_judge_value = rko_judge_value_f32(
        value: f64,
        half_width: f64,
        u: f64,
        limits: *const rko_limits,
        rule: *const rko_rule,
        decision: *mut rko_decision,
        detail: *mut rko_detail,
    ) {
        one(decision, 6, detail, || {
            let (limits, rule) = (item(limits, 4)?, item(rule, 5)?);
            Ok(verdict::answer_of_value(value, half_width, u, &limits.to_core()?, rule.to_core(5)?)?.into())
        })
    }

    /// The probability that the true value lies within the limits, from the estimate's shape alone, no prior; one-sided parts
    /// are taken where they make it smallest.
    ///
    /// Given: `estimate`, in ohm; `limits`.
    /// Written: `probability`.
    /// Statuses: `RKO_OUT_OF_RANGE`, `RKO_NOT_FINITE`, `RKO_EMPTY`, `RKO_CONTRADICTION`, `RKO_RESULT_OUT_OF_RANGE`,
    /// `RKO_NULL_POINTER`.
    /// Source: JCGM 106 7.
    fn rko_conformance_probability = rko_conformance_probability_f32(
        estimate: *const rko_estimate,
        limits: *const rko_limits,
        probability: *mut f64,
        detail: *mut rko_detail,
    ) {
        one(probability, 3, detail, || {
            let (estimate, limits) = (item(estimate, 1)?, item(limits, 2)?);
            Ok(conformance_probability(&estimate.to_core()?, &limits.to_core()?))
        })
    }

    /// `rko_conformance_probability` for each of `count` estimates, all against the same limits.
    fn rko_conformance_probability_n = rko_conformance_probability_n_f32(
        estimates: *const rko_estimate,
        count: usize,
        limits: *const rko_limits,
        probability: *mut f64,
        valid: *mut u8,
        detail: *mut rko_detail,
    ) {
        array(
            Results { count, output: probability, position: 4, valid, detail },
            || Ok((items(estimates, count, 1)?, item(limits, 3)?.to_core()?)),
            |(estimates, limits), output| {
                all_good(count, |index| element(estimates, index)?.to_core().map(|_| ()))?;
                for (estimate, place) in estimates.iter().zip(output) {
                    *place = conformance_probability(&estimate.to_core()?, &limits);
                }
                Ok(())
            },
            |(estimates, limits), index| {
                Ok(conformance_probability(&element(estimates, index)?.to_core()?, &limits))
            },
        )
    }
}
