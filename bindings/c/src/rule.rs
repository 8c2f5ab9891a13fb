//! Decision rules.

use reckohm::verdict::{Rule, RuleKind};

use crate::answer::{DoorError, Outcome, one};
use crate::detail::rko_detail;
use crate::twins::{twin_structs, twins};

/// The value alone decides (JCGM 106 8.2): two answers, and half of the parts at a limit are judged wrongly.
pub const RKO_RULE_SIMPLE_ACCEPTANCE: u32 = 1;
/// A guard band at each limit by itself (JCGM 106 8.3).
pub const RKO_RULE_GUARDED: u32 = 2;
/// The probability of being outside either limit is bounded.
pub const RKO_RULE_MAX_RISK: u32 = 3;

twin_structs! {
    /// A decision rule, agreed before the measurement (ISO/IEC 17025 7.8.6).
    struct rko_rule = rko_rule_f32 [16, 12] {
        /// The agreed risk, in (0, 0.5); 0 and not read for simple acceptance.
        risk: f64 [0, 0],
        /// `RKO_RULE_SIMPLE_ACCEPTANCE`, `RKO_RULE_GUARDED` or `RKO_RULE_MAX_RISK`.
        kind: u32 [8, 4],
        /// Must be 0.
        reserved: u32 [12, 8],
    }
}

macro_rules! of_the_core {
    ($($real:ident: $rule:ident;)+) => {$(
        impl $rule {
            // Inlined, so that small processors do not copy what comes out from one stack frame to the next.
            #[inline(always)]
            pub(crate) fn to_core(self, argument: u16) -> Outcome<Rule<$real>> {
                let $rule { risk, kind, reserved } = self;
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

        impl From<Rule<$real>> for $rule {
            fn from(rule: Rule<$real>) -> $rule {
                let kind = match rule.kind() {
                    RuleKind::Guarded => RKO_RULE_GUARDED,
                    RuleKind::MaxRisk => RKO_RULE_MAX_RISK,
                    _ => RKO_RULE_SIMPLE_ACCEPTANCE,
                };
                $rule { risk: rule.risk().unwrap_or(0.0), kind, reserved: 0 }
            }
        }
    )+};
}

of_the_core! {
    f64: rko_rule;
    f32: rko_rule_f32;
}

twins! {
    /// The rule by which the value alone decides.
    ///
    /// Written: `rule`.
    /// Statuses: `RKO_NULL_POINTER`.
    /// Source: JCGM 106 8.2.
    fn rko_rule_simple_acceptance = rko_rule_simple_acceptance_f32(rule: *mut rko_rule, detail: *mut rko_detail) {
        one(rule, 1, detail, || Ok(Rule::simple_acceptance().into()))
    }

    /// The rule with a guard band at each limit by itself: a part conforms only if the probability that it lies beyond that
    /// limit is at most `risk`, and does not conform only if the probability that it lies on the good side is at most `risk`.
    ///
    /// Given: `risk`, in (0, 0.5).
    /// Written: `rule`.
    /// Statuses: `RKO_OUT_OF_RANGE`, `RKO_NOT_FINITE`, `RKO_NULL_POINTER`.
    /// Source: JCGM 106 8.3.
    fn rko_rule_guarded = rko_rule_guarded_f32(risk: f64, rule: *mut rko_rule, detail: *mut rko_detail) {
        one(rule, 2, detail, || Ok(Rule::guarded(risk)?.into()))
    }

    /// The rule that bounds the probability of lying outside the limits, either of them.
    ///
    /// Given: `risk`, in (0, 0.5).
    /// Written: `rule`.
    /// Statuses: `RKO_OUT_OF_RANGE`, `RKO_NOT_FINITE`, `RKO_NULL_POINTER`.
    /// Source: JCGM 106 8.3.
    fn rko_rule_max_risk = rko_rule_max_risk_f32(risk: f64, rule: *mut rko_rule, detail: *mut rko_detail) {
        one(rule, 2, detail, || Ok(Rule::max_risk(risk)?.into()))
    }
}
