//! Verdicts in single precision.

use reckohm::verdict::{conformance_probability, judge};

use crate::answer::one;
use crate::detail::{rko_detail, rko_status};
use crate::estimate::rko_estimate_f32;
use crate::limits::rko_limits_f32;
use crate::pointer::item;
use crate::rule::rko_rule_f32;
use crate::verdict::rko_verdict_f32;

/// `rko_judge` for `float`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rko_judge_f32(
    estimate: *const rko_estimate_f32,
    limits: *const rko_limits_f32,
    rule: *const rko_rule_f32,
    verdict: *mut rko_verdict_f32,
    detail: *mut rko_detail,
) -> rko_status {
    unsafe {
        one(verdict, 4, detail, || {
            let (estimate, limits, rule) = (item(estimate, 1)?, item(limits, 2)?, item(rule, 3)?);
            Ok(judge(&estimate.to_core()?, &limits.to_core()?, rule.to_core(3)?)?.into())
        })
    }
}

/// `rko_conformance_probability` for `float`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rko_conformance_probability_f32(
    estimate: *const rko_estimate_f32,
    limits: *const rko_limits_f32,
    probability: *mut f32,
    detail: *mut rko_detail,
) -> rko_status {
    unsafe {
        one(probability, 3, detail, || {
            let (estimate, limits) = (item(estimate, 1)?, item(limits, 2)?);
            Ok(conformance_probability(&estimate.to_core()?, &limits.to_core()?))
        })
    }
}
