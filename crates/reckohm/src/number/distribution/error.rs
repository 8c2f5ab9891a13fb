//! What can be wrong with a question about a distribution.

use core::fmt;

use thiserror::Error;

use crate::number::arrays::ArrayFault;
use crate::number::{Detail, Kind, OutOfRange};

/// Tells two lengths of this area from those of others in [`Detail::argument`].
const LENGTHS: u16 = 20;
/// Tells a quantile beyond the largest number in [`Detail::argument`].
const QUANTILE: u16 = 21;

/// Why there is no probability and no quantile.
#[derive(Clone, Copy, Debug, PartialEq, Error)]
#[non_exhaustive]
pub enum DistributionError {
    /// A number outside its range.
    #[error("distribution: {0}")]
    Range(#[from] OutOfRange),
    /// A quantile beyond the largest number of its type.
    #[error("distribution: {0}")]
    Beyond(#[from] BeyondReach),
    /// Elements of an array that failed; nothing was written.
    #[error("distribution: element {index}, the first of {failed} that failed: {fault}")]
    Element {
        /// The first failure.
        fault: ElementFault,
        /// Its index, counted from 0.
        index: u64,
        /// How many elements failed in all.
        failed: u64,
    },
    /// Two slices of different lengths.
    #[error(
        "distribution: room for {room} results given, {needed} needed; give an output with one place for each result"
    )]
    Lengths {
        /// How many results there are.
        needed: u64,
        /// How many places were given for them.
        room: u64,
    },
}

/// What can be wrong with one element of an array.
#[derive(Clone, Copy, Debug, PartialEq, Error)]
#[non_exhaustive]
pub enum ElementFault {
    /// A number outside its range.
    #[error("{0}")]
    Range(#[from] OutOfRange),
    /// A quantile beyond the largest number of its type.
    #[error("{0}")]
    Beyond(#[from] BeyondReach),
}

/// A quantile of Student's t that no number of its type can hold: with a few degrees of freedom or a fraction of one the
/// tails reach that far.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BeyondReach {
    /// The probability given.
    pub probability: f64,
    /// The smallest probability whose quantile is a number of its type, at these degrees of freedom.
    pub lower: f64,
    /// The largest.
    pub upper: f64,
}

impl fmt::Display for BeyondReach {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let BeyondReach { probability, lower, upper } = self;
        write!(
            f,
            "quantile of Student's t: probability {probability:e} given, {lower:e} to {upper:e} allowed with these degrees \
             of freedom, for beyond them it is larger than any number of its precision; give a probability less extreme, or \
             more degrees of freedom"
        )
    }
}

impl core::error::Error for BeyondReach {}

impl ElementFault {
    fn detail(&self) -> Detail {
        match *self {
            ElementFault::Range(range) => range.detail(),
            ElementFault::Beyond(BeyondReach { probability, lower, upper }) => {
                Detail { argument: QUANTILE, given: probability, lower, upper, ..Detail::new(Kind::ResultOutOfRange) }
            }
        }
    }

    fn from_detail(detail: &Detail) -> Option<ElementFault> {
        match (detail.kind, detail.argument) {
            (Kind::ResultOutOfRange, QUANTILE) => Some(ElementFault::Beyond(BeyondReach {
                probability: detail.given,
                lower: detail.lower,
                upper: detail.upper,
            })),
            _ => OutOfRange::from_detail(detail).map(ElementFault::Range),
        }
    }
}

impl From<ArrayFault<ElementFault>> for DistributionError {
    fn from(fault: ArrayFault<ElementFault>) -> DistributionError {
        match fault {
            ArrayFault::Lengths { needed, room } => DistributionError::Lengths { needed, room },
            ArrayFault::Element { fault, index, failed } => DistributionError::Element { fault, index, failed },
        }
    }
}

impl From<ElementFault> for DistributionError {
    fn from(fault: ElementFault) -> DistributionError {
        match fault {
            ElementFault::Range(range) => DistributionError::Range(range),
            ElementFault::Beyond(beyond) => DistributionError::Beyond(beyond),
        }
    }
}

impl DistributionError {
    /// What happened, in one word.
    pub fn kind(&self) -> Kind {
        self.detail().kind
    }

    /// The same as plain numbers; for two lengths `given` is the room, `lower` and `upper` what is needed.
    pub fn detail(&self) -> Detail {
        match *self {
            DistributionError::Range(range) => ElementFault::Range(range).detail(),
            DistributionError::Beyond(beyond) => ElementFault::Beyond(beyond).detail(),
            DistributionError::Element { fault, index, failed } => Detail { index, failed, ..fault.detail() },
            DistributionError::Lengths { needed, room } => Detail {
                argument: LENGTHS,
                given: room as f64,
                lower: needed as f64,
                upper: needed as f64,
                ..Detail::new(Kind::WrongCount)
            },
        }
    }

    /// Back from plain numbers, if they are of such an error.
    pub fn from_detail(detail: &Detail) -> Option<DistributionError> {
        if (detail.kind, detail.argument) == (Kind::WrongCount, LENGTHS) {
            return Some(DistributionError::Lengths { needed: detail.lower as u64, room: detail.given as u64 });
        }
        let fault = ElementFault::from_detail(detail)?;
        if detail.failed == 0 {
            return Some(fault.into());
        }
        Some(DistributionError::Element { fault, index: detail.index, failed: detail.failed })
    }
}
