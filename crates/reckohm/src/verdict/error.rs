//! What can go wrong with a verdict.

use crate::number::{Detail, Kind, OutOfRange};
use crate::part::limits::LimitsError;
use crate::uncertainty::EstimateError;

/// Why no verdict could be given.
#[derive(Clone, Copy, Debug, PartialEq, thiserror::Error)]
#[non_exhaustive]
pub enum VerdictError {
    /// A number outside its range.
    #[error("{0}")]
    Range(#[from] OutOfRange),
    /// The estimate is not usable.
    #[error("{0}")]
    Estimate(#[from] EstimateError),
    /// The limits are not usable.
    #[error("{0}")]
    Limits(#[from] LimitsError),
    /// Arrays of different lengths.
    #[error(
        "judging an array: room for {room} verdicts given for {estimates} estimates; as many as estimates allowed; \
         give arrays of one length"
    )]
    Lengths {
        /// How many estimates.
        estimates: usize,
        /// How many places for verdicts.
        room: usize,
    },
}

const LENGTHS: u16 = 400;

impl VerdictError {
    /// What happened, in one word.
    pub fn kind(&self) -> Kind {
        self.detail().kind
    }

    /// The same as plain numbers.
    pub fn detail(&self) -> Detail {
        match self {
            VerdictError::Range(range) => range.detail(),
            VerdictError::Estimate(error) => error.detail(),
            VerdictError::Limits(error) => error.detail(),
            VerdictError::Lengths { estimates, room } => Detail {
                argument: LENGTHS,
                given: *room as f64,
                upper: *estimates as f64,
                ..Detail::new(Kind::WrongCount)
            },
        }
    }

    /// Back from plain numbers, if they are of this area.
    pub fn from_detail(detail: &Detail) -> Option<VerdictError> {
        match (detail.kind, detail.argument) {
            (Kind::WrongCount, LENGTHS) => {
                Some(VerdictError::Lengths { estimates: detail.upper as usize, room: detail.given as usize })
            }
            _ => EstimateError::from_detail(detail)
                .map(VerdictError::Estimate)
                .or_else(|| LimitsError::from_detail(detail).map(VerdictError::Limits)),
        }
    }
}
