//! Why a line was not judged.

use reckohm::marking::MarkingError;
use reckohm::measurement::MeasurementError;
use reckohm::meter::MeterError;
use reckohm::uncertainty::EstimateError;
use reckohm::verdict::{LimitsError, VerdictError};

/// A line that was not judged: what the library said, or what is wrong with the file itself.
#[derive(Debug, thiserror::Error)]
pub enum Refusal {
    #[error(transparent)]
    Marking(#[from] MarkingError),
    #[error(transparent)]
    Limits(#[from] LimitsError),
    #[error(transparent)]
    Meter(#[from] MeterError),
    #[error(transparent)]
    Estimate(#[from] EstimateError),
    #[error(transparent)]
    Measurement(#[from] MeasurementError),
    #[error(transparent)]
    Verdict(#[from] VerdictError),
    #[error("tray file: {why}")]
    Line { line: u64, why: String },
    #[error("tray file: code {0:?} given, bands, letters or chip allowed, or nothing where there is no marking")]
    UnknownCode(String),
    #[error("tray file: {text:?} given as {column}, a number with a point allowed")]
    NotANumber { column: &'static str, text: String },
    #[error("tray file: span {0:?} given, which this meter does not have; write it as it stands beside its knob")]
    UnknownSpan(String),
    #[error("tray file: neither limits nor a tolerance given; one of them is needed to judge a part")]
    NoLimits,
}

impl Refusal {
    /// The status number of what the library said, the same at all doors; 0 where the file itself is at fault.
    pub fn status(&self) -> i32 {
        match self {
            Refusal::Marking(error) => error.kind().number(),
            Refusal::Limits(error) => error.kind().number(),
            Refusal::Meter(error) => error.kind().number(),
            Refusal::Estimate(error) => error.kind().number(),
            Refusal::Measurement(error) => error.kind().number(),
            Refusal::Verdict(error) => error.kind().number(),
            Refusal::Line { .. }
            | Refusal::UnknownCode(_)
            | Refusal::NotANumber { .. }
            | Refusal::UnknownSpan(_)
            | Refusal::NoLimits => 0,
        }
    }
}
