//! The decision alone: the answer of a verdict, without what else a verdict shows.

use core::mem::{offset_of, size_of};

use reckohm::verdict::{Decision, answer};

use crate::answer::one;
use crate::detail::{rko_detail, rko_status};
use crate::estimate::{rko_estimate, rko_estimate_f32};
use crate::limits::{rko_limits, rko_limits_f32};
use crate::pointer::item;
use crate::rule::{rko_rule, rko_rule_f32};

/// What a verdict answers.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct rko_decision {
    /// The probability that the part lies within its limits, from this measurement alone, no prior; one-sided parts are
    /// taken where they make it smallest.
    pub conformance_probability: f64,
    /// `RKO_ANSWER_CONFORMS`, `RKO_ANSWER_DOES_NOT_CONFORM` or `RKO_ANSWER_UNDECIDED`.
    pub answer: u32,
    /// Where the value itself lies: `RKO_SIDE_INSIDE` or `RKO_SIDE_OUTSIDE`.
    pub side: u32,
}

/// As `rko_decision`, for `float`.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct rko_decision_f32 {
    /// As of `rko_decision`.
    pub conformance_probability: f32,
    /// As of `rko_decision`.
    pub answer: u32,
    /// As of `rko_decision`.
    pub side: u32,
}

const _: () = {
    assert!(size_of::<rko_decision>() == 16);
    assert!(offset_of!(rko_decision, conformance_probability) == 0);
    assert!(offset_of!(rko_decision, answer) == 8);
    assert!(offset_of!(rko_decision, side) == 12);
    assert!(size_of::<rko_decision_f32>() == 12);
    assert!(offset_of!(rko_decision_f32, conformance_probability) == 0);
    assert!(offset_of!(rko_decision_f32, answer) == 4);
    assert!(offset_of!(rko_decision_f32, side) == 8);
};

macro_rules! from_core {
    ($plain:ident, $number:ty) => {
        impl From<Decision<$number>> for $plain {
            fn from(decision: Decision<$number>) -> $plain {
                $plain {
                    conformance_probability: decision.conformance_probability,
                    answer: decision.answer as u32,
                    side: decision.side as u32,
                }
            }
        }
    };
}
from_core!(rko_decision, f64);
from_core!(rko_decision_f32, f32);

/// Decides on an estimate in ohm against limits under a rule: the answer of `rko_judge`, always, without the guard band, the
/// acceptance limits and the ratio, so that no quantile is searched for. It is small and quick enough for firmware.
///
/// Given: `estimate`; `limits`; `rule`, without a default, since it is agreed beforehand.
/// Written: `decision`.
/// Statuses: `RKO_OUT_OF_RANGE`, `RKO_NOT_FINITE`, `RKO_EMPTY`, `RKO_CONTRADICTION`, `RKO_RESULT_OUT_OF_RANGE`,
/// `RKO_UNKNOWN_CODE`, `RKO_NULL_POINTER`.
/// Source: JCGM 106, ISO 14253-1; the shape of the estimate decides, not u alone.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rko_judge_answer(
    estimate: *const rko_estimate,
    limits: *const rko_limits,
    rule: *const rko_rule,
    decision: *mut rko_decision,
    detail: *mut rko_detail,
) -> rko_status {
    unsafe {
        one(decision, 4, detail, || {
            let (estimate, limits, rule) = (item(estimate, 1)?, item(limits, 2)?, item(rule, 3)?);
            Ok(answer(&estimate.to_core()?, &limits.to_core()?, rule.to_core(3)?).into())
        })
    }
}

/// `rko_judge_answer` for `float`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rko_judge_answer_f32(
    estimate: *const rko_estimate_f32,
    limits: *const rko_limits_f32,
    rule: *const rko_rule_f32,
    decision: *mut rko_decision_f32,
    detail: *mut rko_detail,
) -> rko_status {
    unsafe {
        one(decision, 4, detail, || {
            let (estimate, limits, rule) = (item(estimate, 1)?, item(limits, 2)?, item(rule, 3)?);
            Ok(answer(&estimate.to_core()?, &limits.to_core()?, rule.to_core(3)?).into())
        })
    }
}
