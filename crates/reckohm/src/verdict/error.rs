//! What can go wrong with a verdict.

use crate::number::arrays::ArrayFault;
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
    /// Measurements of an array that no estimate can hold; nothing was written.
    #[error("judging an array: element {index}, the first of {failed} that failed: {fault}")]
    Element {
        /// The first failure.
        fault: EstimateError,
        /// Its index, counted from 0.
        index: u64,
        /// How many elements failed in all.
        failed: u64,
    },
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

impl From<ArrayFault<EstimateError>> for VerdictError {
    fn from(fault: ArrayFault<EstimateError>) -> VerdictError {
        match fault {
            ArrayFault::Lengths { needed, room } => {
                VerdictError::Lengths { estimates: needed as usize, room: room as usize }
            }
            ArrayFault::Element { fault, index, failed } => VerdictError::Element { fault, index, failed },
        }
    }
}

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
            VerdictError::Element { fault, index, failed } => {
                Detail { index: *index, failed: *failed, ..fault.detail() }
            }
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
            _ if detail.failed > 0 => EstimateError::from_detail(detail).map(|fault| VerdictError::Element {
                fault,
                index: detail.index,
                failed: detail.failed,
            }),
            _ => EstimateError::from_detail(detail)
                .map(VerdictError::Estimate)
                .or_else(|| LimitsError::from_detail(detail).map(VerdictError::Limits)),
        }
    }
}
