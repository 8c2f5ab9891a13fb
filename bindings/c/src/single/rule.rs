//! Decision rules in single precision.

use reckohm::verdict::Rule;

use crate::answer::one;
use crate::detail::{rko_detail, rko_status};
use crate::rule::rko_rule_f32;

/// `rko_rule_simple_acceptance` for `float`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rko_rule_simple_acceptance_f32(
    rule: *mut rko_rule_f32,
    detail: *mut rko_detail,
) -> rko_status {
    unsafe { one(rule, 1, detail, || Ok(Rule::simple_acceptance().into())) }
}

/// `rko_rule_guarded` for `float`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rko_rule_guarded_f32(
    risk: f32,
    rule: *mut rko_rule_f32,
    detail: *mut rko_detail,
) -> rko_status {
    unsafe { one(rule, 2, detail, || Ok(Rule::guarded(risk)?.into())) }
}

/// `rko_rule_max_risk` for `float`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rko_rule_max_risk_f32(
    risk: f32,
    rule: *mut rko_rule_f32,
    detail: *mut rko_detail,
) -> rko_status {
    unsafe { one(rule, 2, detail, || Ok(Rule::max_risk(risk)?.into())) }
}
