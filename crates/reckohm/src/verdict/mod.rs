//! Whether a part conforms: limits, decision rules, and verdicts with three answers.
//!
//! The rule is agreed before the measurement (ISO/IEC 17025 7.8.6, ILAC-G8), so it is an argument without a default:
//!
//! - between a supplier and a customer who must both trust the answer: [`Rule::guarded`] at the agreed risk, each limit by
//!   itself (JCGM 106 8.3, ISO 14253-1);
//! - where the part must work within both limits and the meter is not much better than the tolerance:
//!   [`Rule::max_risk`], which bounds the probability of being outside either limit;
//! - for sorting where a wrong part costs little: [`Rule::simple_acceptance`] (JCGM 106 8.2), which has two answers only
//!   and shows the conformance probability beside them.
//!
//! Every verdict answers for this part and this measurement alone, with no prior knowledge of the process that made it.

mod answer;
mod column;
mod columns;
mod error;
mod judge;
mod rule;

pub use crate::part::conformance::conformance_probability;
pub use crate::part::limits::{Limits, LimitsError};
pub use answer::{Answer, Decision, Side, answer, answer_of_value};
pub use column::Column;
pub use columns::Columns;
pub use error::VerdictError;
pub use judge::{NextStep, Verdict, conformance_probability_into, judge, judge_into};
pub use rule::{Rule, RuleKind};
