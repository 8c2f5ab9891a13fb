//! What can be wrong with a question about preferred values.

use thiserror::Error;

use crate::number::arrays::ArrayFault;
use crate::number::{Detail, Kind, OutOfRange};

/// The argument of a detail about the lengths of two slices, in the block of this folder.
const LENGTHS: u16 = 101;

/// What can be wrong with a question about preferred values.
#[derive(Clone, Copy, Debug, PartialEq, Error)]
#[non_exhaustive]
pub enum PreferredError {
    /// A resistance outside its range.
    #[error("preferred value: {0}")]
    Range(#[from] OutOfRange),
    /// Resistances of an array outside their range; nothing was written.
    #[error("preferred values: element {index}, the first of {failed} that failed: {range}")]
    Element {
        /// The first failure.
        range: OutOfRange,
        /// Its index, counted from 0.
        index: u64,
        /// How many elements failed in all.
        failed: u64,
    },
    /// Two slices of different lengths, or one too short for a decade.
    #[error(
        "preferred values: room for {room} results given, {needed} needed; give an output with one place for each result"
    )]
    Lengths {
        /// How many results there are.
        needed: u64,
        /// How many places were given for them.
        room: u64,
    },
    /// A name that is not that of a series.
    #[error("preferred values: no series has this name, E3, E6, E12, E24, E48, E96 or E192 allowed (IEC 60063)")]
    UnknownSeries,
}

impl From<ArrayFault<OutOfRange>> for PreferredError {
    fn from(fault: ArrayFault<OutOfRange>) -> PreferredError {
        match fault {
            ArrayFault::Lengths { needed, room } => PreferredError::Lengths { needed, room },
            ArrayFault::Element { fault: range, index, failed } => PreferredError::Element { range, index, failed },
        }
    }
}

impl PreferredError {
    /// What happened, in one word.
    pub fn kind(&self) -> Kind {
        match self {
            PreferredError::Range(range) | PreferredError::Element { range, .. } => range.kind(),
            PreferredError::Lengths { .. } => Kind::WrongCount,
            PreferredError::UnknownSeries => Kind::UnknownSeries,
        }
    }

    /// The same as plain numbers; for two lengths `given` is the room and `lower` what is needed.
    pub fn detail(&self) -> Detail {
        match *self {
            PreferredError::Range(range) => range.detail(),
            PreferredError::Element { range, index, failed } => Detail { index, failed, ..range.detail() },
            PreferredError::Lengths { needed, room } => Detail {
                argument: LENGTHS,
                given: room as f64,
                lower: needed as f64,
                upper: needed as f64,
                ..Detail::new(Kind::WrongCount)
            },
            PreferredError::UnknownSeries => Detail::new(Kind::UnknownSeries),
        }
    }

    /// Back from plain numbers, if they are of such an error.
    pub fn from_detail(detail: &Detail) -> Option<PreferredError> {
        match (detail.kind, detail.argument) {
            (Kind::UnknownSeries, _) => Some(PreferredError::UnknownSeries),
            (Kind::WrongCount, LENGTHS) => {
                Some(PreferredError::Lengths { needed: detail.lower as u64, room: detail.given as u64 })
            }
            _ => {
                let range = OutOfRange::from_detail(detail)?;
                let Detail { index, failed, .. } = *detail;
                Some(if failed == 0 { range.into() } else { PreferredError::Element { range, index, failed } })
            }
        }
    }
}
