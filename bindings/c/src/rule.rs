//! Decision rules.

use core::mem::{offset_of, size_of};

use reckohm::verdict::{Rule, RuleKind};

use crate::answer::{DoorError, Outcome, one};
use crate::detail::{rko_detail, rko_status};

/// The value alone decides (JCGM 106 8.2): two answers, and half of the parts at a limit are judged wrongly.
pub const RKO_RULE_SIMPLE_ACCEPTANCE: u32 = 1;
/// A guard band at each limit by itself (JCGM 106 8.3).
pub const RKO_RULE_GUARDED: u32 = 2;
/// The probability of being outside either limit is bounded.
pub const RKO_RULE_MAX_RISK: u32 = 3;

/// A decision rule, agreed before the measurement (ISO/IEC 17025 7.8.6).
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct rko_rule {
    /// The agreed risk, in (0, 0.5); 0 and not read for simple acceptance.
    pub risk: f64,
    /// `RKO_RULE_SIMPLE_ACCEPTANCE`, `RKO_RULE_GUARDED` or `RKO_RULE_MAX_RISK`.
    pub kind: u32,
    /// Must be 0.
    pub reserved: u32,
}

const _: () = {
    assert!(size_of::<rko_rule>() == 16);
    assert!(offset_of!(rko_rule, risk) == 0);
    assert!(offset_of!(rko_rule, kind) == 8);
    assert!(offset_of!(rko_rule, reserved) == 12);
};

/// As `rko_rule`, for `float`.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct rko_rule_f32 {
    /// As of `rko_rule`.
    pub risk: f32,
    /// As of `rko_rule`.
    pub kind: u32,
    /// Must be 0.
    pub reserved: u32,
}

const _: () = {
    assert!(size_of::<rko_rule_f32>() == 12);
    assert!(offset_of!(rko_rule_f32, risk) == 0);
    assert!(offset_of!(rko_rule_f32, kind) == 4);
    assert!(offset_of!(rko_rule_f32, reserved) == 8);
};

macro_rules! to_and_from_core {
    ($plain:ident, $number:ty) => {
        impl $plain {
            pub(crate) fn to_core(self, argument: u16) -> Outcome<Rule<$number>> {
                let $plain { risk, kind, reserved } = self;
                if reserved != 0 {
                    return Err(DoorError::UnknownCode { argument, given: f64::from(reserved) }.into());
                }
                match kind {
                    RKO_RULE_SIMPLE_ACCEPTANCE => Ok(Rule::simple_acceptance()),
                    RKO_RULE_GUARDED => Ok(Rule::guarded(risk)?),
                    RKO_RULE_MAX_RISK => Ok(Rule::max_risk(risk)?),
                    _ => Err(DoorError::UnknownCode { argument, given: f64::from(kind) }.into()),
                }
            }
        }

        impl From<Rule<$number>> for $plain {
            fn from(rule: Rule<$number>) -> $plain {
                let kind = match rule.kind() {
                    RuleKind::Guarded => RKO_RULE_GUARDED,
                    RuleKind::MaxRisk => RKO_RULE_MAX_RISK,
                    _ => RKO_RULE_SIMPLE_ACCEPTANCE,
                };
                $plain { risk: rule.risk().unwrap_or(0.0), kind, reserved: 0 }
            }
        }
    };
}
to_and_from_core!(rko_rule, f64);
to_and_from_core!(rko_rule_f32, f32);

/// The rule by which the value alone decides.
///
/// Written: `rule`.
/// Statuses: `RKO_NULL_POINTER`.
/// Source: JCGM 106 8.2.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rko_rule_simple_acceptance(rule: *mut rko_rule, detail: *mut rko_detail) -> rko_status {
    unsafe { one(rule, 1, detail, || Ok(Rule::simple_acceptance().into())) }
}

/// The rule with a guard band at each limit by itself: a part conforms only if the probability that it lies beyond that
/// limit is at most `risk`, and does not conform only if the probability that it lies on the good side is at most `risk`.
///
/// Given: `risk`, in (0, 0.5).
/// Written: `rule`.
/// Statuses: `RKO_OUT_OF_RANGE`, `RKO_NOT_FINITE`, `RKO_NULL_POINTER`.
/// Source: JCGM 106 8.3.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rko_rule_guarded(risk: f64, rule: *mut rko_rule, detail: *mut rko_detail) -> rko_status {
    unsafe { one(rule, 2, detail, || Ok(Rule::guarded(risk)?.into())) }
}

/// The rule that bounds the probability of lying outside the limits, either of them.
///
/// Given: `risk`, in (0, 0.5).
/// Written: `rule`.
/// Statuses: `RKO_OUT_OF_RANGE`, `RKO_NOT_FINITE`, `RKO_NULL_POINTER`.
/// Source: JCGM 106 8.3.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rko_rule_max_risk(risk: f64, rule: *mut rko_rule, detail: *mut rko_detail) -> rko_status {
    unsafe { one(rule, 2, detail, || Ok(Rule::max_risk(risk)?.into())) }
}
