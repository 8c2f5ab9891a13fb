//! What can go wrong when readings are evaluated.

use crate::meter::MeterError;
use crate::number::{Detail, Kind, OutOfRange, Readable};
use crate::uncertainty::EstimateError;

/// Why readings could not be turned into an estimate.
#[derive(Clone, Copy, Debug, PartialEq, thiserror::Error)]
#[non_exhaustive]
pub enum MeasurementError {
    /// A number outside its range.
    #[error("{0}")]
    Range(#[from] OutOfRange),
    /// A part of the uncertainty could not be formed.
    #[error("{0}")]
    Estimate(#[from] EstimateError),
    /// The span could not give its part.
    #[error("{0}")]
    Meter(#[from] MeterError),
    /// No reading at all.
    #[error("evaluating readings: none given, one or more needed; read the display at least once")]
    NoReading,
    /// A reading beyond the span.
    #[error(
        "evaluating readings: reading {index} is beyond the span and has no value; only readings within the span \
         allowed; step up to the next span and read again"
    )]
    OverRange {
        /// Which one, counted from 0.
        index: usize,
    },
    /// Shown resistance at or above that of a path in parallel with it.
    #[error(
        "taking off a parallel path: {} ohm remain after the leads with a path of {} ohm across; less than the path \
         allowed, since the part and the path together are below either; measure the path again or disconnect it",
        Readable(*shown_ohm),
        Readable(*path_ohm)
    )]
    PathContradiction {
        /// What remained after the leads.
        shown_ohm: f64,
        /// The path.
        path_ohm: f64,
    },
    /// The temperature of the part without a coefficient.
    #[error(
        "bringing the part to its reference temperature: temperature_c given without a coefficient; known_tcr or \
         tcr_limit allowed; give the marked limit, or leave the temperature out"
    )]
    CoefficientMissing,
    /// A coefficient without the temperatures that it needs.
    #[error(
        "bringing the part to its reference temperature: a coefficient, temperature_c and \
         reference_temperature_c not all given; all of them or none allowed; measure the temperature beside the part"
    )]
    TemperatureMissing,
    /// The correction for temperature leaves nothing.
    #[error(
        "bringing the part to its reference temperature: the resistance would change by the factor {}; a positive \
         factor allowed; a linear coefficient does not hold so far from the reference",
        Readable(*factor)
    )]
    CorrectionTooLarge {
        /// 1 + coefficient × temperature difference.
        factor: f64,
    },
}

const NO_READING: u16 = 300;
const PATH: u16 = 302;
const COEFFICIENT: u16 = 303;
const TEMPERATURE: u16 = 304;
const CORRECTION: u16 = 305;

impl MeasurementError {
    /// What happened, in one word.
    pub fn kind(&self) -> Kind {
        self.detail().kind
    }

    /// The same as plain numbers.
    pub fn detail(&self) -> Detail {
        let of = |kind, argument| Detail { argument, ..Detail::new(kind) };
        match *self {
            MeasurementError::Range(range) => range.detail(),
            MeasurementError::Estimate(error) => error.detail(),
            MeasurementError::Meter(error) => error.detail(),
            MeasurementError::NoReading => of(Kind::Empty, NO_READING),
            MeasurementError::OverRange { index } => {
                Detail { index: index as u64, ..Detail::new(Kind::OverRangeReading) }
            }
            MeasurementError::PathContradiction { shown_ohm, path_ohm } => {
                Detail { given: shown_ohm, upper: path_ohm, ..of(Kind::Contradiction, PATH) }
            }
            MeasurementError::CoefficientMissing => of(Kind::MissingArgument, COEFFICIENT),
            MeasurementError::TemperatureMissing => of(Kind::MissingArgument, TEMPERATURE),
            MeasurementError::CorrectionTooLarge { factor } => {
                Detail { given: factor, ..of(Kind::Contradiction, CORRECTION) }
            }
        }
    }

    /// Back from plain numbers, if they are of this area.
    pub fn from_detail(detail: &Detail) -> Option<MeasurementError> {
        Some(match (detail.kind, detail.argument) {
            (Kind::Empty, NO_READING) => MeasurementError::NoReading,
            (Kind::OverRangeReading, _) => MeasurementError::OverRange { index: detail.index as usize },
            (Kind::Contradiction, PATH) => {
                MeasurementError::PathContradiction { shown_ohm: detail.given, path_ohm: detail.upper }
            }
            (Kind::Contradiction, CORRECTION) => MeasurementError::CorrectionTooLarge { factor: detail.given },
            (Kind::MissingArgument, COEFFICIENT) => MeasurementError::CoefficientMissing,
            (Kind::MissingArgument, TEMPERATURE) => MeasurementError::TemperatureMissing,
            _ => {
                return EstimateError::from_detail(detail)
                    .map(MeasurementError::Estimate)
                    .or_else(|| MeterError::from_detail(detail).map(MeasurementError::Meter));
            }
        })
    }
}
