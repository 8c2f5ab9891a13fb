//! What can go wrong with an estimate.

use crate::number::{Detail, Kind, OutOfRange, Real};

/// Why an estimate could not be made, or an interval not be stated.
#[derive(Clone, Copy, Debug, PartialEq, thiserror::Error)]
#[non_exhaustive]
pub enum EstimateError {
    /// A number outside its range.
    #[error("{0}")]
    Range(#[from] OutOfRange),
    /// The result would not fit the number type.
    #[error(
        "uncertainty of an estimate: the result, or the square of a part, is too large for the number type; at most \
         {largest:.1e} allowed; \
         give the parts in a larger unit"
    )]
    TooLarge {
        /// The largest number of the type.
        largest: f64,
    },
    /// Too few observations to show their scatter.
    #[error(
        "mean of repeated observations: {given} given, 2 or more needed; one alone does not show its scatter: give its \
         standard uncertainty known from before instead"
    )]
    TooFewRepeats {
        /// How many.
        given: usize,
    },
    /// As many standard uncertainties as degrees of freedom are needed.
    #[error(
        "effective degrees of freedom: {u} standard uncertainties given with {dof} degrees of freedom; as many of \
         each allowed; give infinite degrees of freedom where a part has none"
    )]
    Lengths {
        /// How many standard uncertainties.
        u: usize,
        /// How many degrees of freedom.
        dof: usize,
    },
}

impl EstimateError {
    /// A result beyond the largest number of its type.
    pub(super) fn too_large<R: Real>() -> EstimateError {
        EstimateError::TooLarge { largest: R::LARGEST.to_f64() }
    }

    /// What happened, in one word.
    pub fn kind(&self) -> Kind {
        self.detail().kind
    }

    /// The same as plain numbers.
    pub fn detail(&self) -> Detail {
        match self {
            EstimateError::Range(range) => range.detail(),
            EstimateError::TooFewRepeats { given } => {
                Detail { argument: 351, given: *given as f64, lower: 2.0, ..Detail::new(Kind::WrongCount) }
            }
            EstimateError::Lengths { u, dof } => {
                Detail { argument: 352, given: *u as f64, upper: *dof as f64, ..Detail::new(Kind::WrongCount) }
            }
            EstimateError::TooLarge { largest } => {
                Detail { argument: 350, upper: *largest, ..Detail::new(Kind::ResultOutOfRange) }
            }
        }
    }

    /// Back from plain numbers, if they are of this area.
    pub fn from_detail(detail: &Detail) -> Option<EstimateError> {
        match detail.kind {
            Kind::ResultOutOfRange if detail.argument == 350 => Some(EstimateError::TooLarge { largest: detail.upper }),
            Kind::WrongCount if detail.argument == 351 => {
                Some(EstimateError::TooFewRepeats { given: detail.given as usize })
            }
            Kind::WrongCount if detail.argument == 352 => {
                Some(EstimateError::Lengths { u: detail.given as usize, dof: detail.upper as usize })
            }
            _ => OutOfRange::from_detail(detail).map(EstimateError::Range),
        }
    }
}
