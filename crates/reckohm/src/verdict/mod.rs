//! Verdicts on resistive parts.

pub use crate::part::limits::{Limits, LimitsError};
