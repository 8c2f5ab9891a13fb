//! What can go wrong with a fit.

use core::fmt;

use crate::number::{Detail, Kind, OutOfRange, Readable, Real};

/// What tells the failures of this area apart in [`Detail::argument`].
const LENGTHS: u16 = 500;
const TOO_FEW: u16 = 510;
const BOUNDS: u16 = 511;
const START: u16 = 512;
const MISSING_U_Y: u16 = 513;
const TOO_LARGE: u16 = 514;

/// A list that goes along with the y of the points.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[non_exhaustive]
pub enum List {
    /// The x of the points, or the rows of a linear model.
    X,
    /// Standard uncertainties of y.
    UY,
    /// Standard uncertainties of x.
    UX,
    /// Weights.
    Weights,
    /// Room for the residuals.
    Residuals,
}

impl List {
    const ALL: [List; 5] = [List::X, List::UY, List::UX, List::Weights, List::Residuals];

    const fn argument(self) -> u16 {
        match self {
            List::X => LENGTHS,
            List::UY => LENGTHS + 1,
            List::UX => LENGTHS + 2,
            List::Weights => LENGTHS + 3,
            List::Residuals => LENGTHS + 4,
        }
    }

    const fn name(self) -> &'static str {
        match self {
            List::X => "x",
            List::UY => "standard uncertainties of y",
            List::UX => "standard uncertainties of x",
            List::Weights => "weights",
            List::Residuals => "places for residuals",
        }
    }
}

impl fmt::Display for List {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.name())
    }
}

/// Why there is no fit.
#[derive(Clone, Copy, Debug, PartialEq, thiserror::Error)]
#[non_exhaustive]
pub enum FitError {
    /// A number outside its range.
    #[error("fit: {0}")]
    Range(#[from] OutOfRange),
    /// Numbers of the points outside their range.
    #[error("fit: point {index}, the first of {failed} that failed: {fault}")]
    Element {
        /// The first failure.
        fault: OutOfRange,
        /// Its index, counted from 0.
        index: u64,
        /// How many points failed in all.
        failed: u64,
    },
    /// A list that is not as long as that of y.
    #[error("points of a fit: {given} {list} given, {needed} needed; give one for each y")]
    Lengths {
        /// Which list.
        list: List,
        /// How many y there are.
        needed: u64,
        /// How long the list is.
        given: u64,
    },
    /// Fewer points than the parameters need.
    #[error(
        "points of a fit: {given} given, {needed} or more needed; one for each free parameter, and one more where their \
         scatter is to be found from the residuals: give u(y) to do without that one"
    )]
    TooFewPoints {
        /// How many there are.
        given: u64,
        /// How many are needed.
        needed: u64,
    },
    /// Parameters that the points do not tell apart.
    #[error(
        "parameter {parameter} of a fit: the points given do not determine it, points at which it makes a difference of its \
         own needed; spread the points wider, hold a parameter by equal bounds, take a simpler model, or begin elsewhere"
    )]
    Undetermined {
        /// The first one, counted from 0, that those before it can stand in for.
        parameter: u64,
    },
    /// A lower bound above the upper one.
    #[error(
        "bounds of parameter {parameter} of a fit: {} to {} given, a lower bound not above the upper one allowed; equal ones \
         hold the parameter where it is",
        Readable(*lower),
        Readable(*upper)
    )]
    BoundsCrossed {
        /// Which parameter, counted from 0.
        parameter: u64,
        /// The lower bound.
        lower: f64,
        /// The upper bound.
        upper: f64,
    },
    /// A start that is not within its bounds.
    #[error(
        "start of parameter {parameter} of a fit: {} given, {} to {} allowed, its bounds; begin within them",
        Readable(*given),
        Readable(*lower),
        Readable(*upper)
    )]
    StartOutside {
        /// Which parameter, counted from 0.
        parameter: u64,
        /// Where it was to begin.
        given: f64,
        /// The lower bound.
        lower: f64,
        /// The upper bound.
        upper: f64,
    },
    /// A model that gives no number where the fit begins.
    #[error(
        "model of a fit: no finite number at point {index}, x {}, with the parameters at which it begins; finite values and \
         slopes needed at every point, and a curve that hardly bends within the uncertainty of x; begin elsewhere",
        Readable(*x)
    )]
    ModelNotFinite {
        /// The first point at which it does, counted from 0.
        index: u64,
        /// The x of that point.
        x: f64,
    },
    /// Parameters that still moved when the fit had to stop.
    #[error(
        "fit: after {steps} steps the parameters could still explain {left:.1e} of the residuals, {allowed:.1e} at most \
         allowed; begin nearer, bound the parameters, or allow more steps"
    )]
    NotSettled {
        /// How many steps were made.
        steps: u64,
        /// The part of the residuals that the parameters could still explain: its length over that of all.
        left: f64,
        /// How large that part may be.
        allowed: f64,
    },
    /// Uncertain x with nothing to weigh them against.
    #[error(
        "points of a fit: u(x) given without u(y), both needed; what x and y contribute is weighed against one another"
    )]
    MissingUncertaintyOfY,
    /// Results that the number type cannot hold.
    #[error(
        "fit: a result or the square of one is too large for the number type, at most {largest:.1e} allowed; give x and y in \
         larger units"
    )]
    TooLarge {
        /// The largest number of the type.
        largest: f64,
    },
}

impl FitError {
    pub(super) fn too_large<R: Real>() -> FitError {
        FitError::TooLarge { largest: R::LARGEST.to_f64() }
    }

    /// What happened, in one word.
    pub fn kind(&self) -> Kind {
        self.detail().kind
    }

    /// The same as plain numbers; for two lengths `given` is that of the list, `lower` and `upper` what is needed.
    pub fn detail(&self) -> Detail {
        match *self {
            FitError::Range(range) => range.detail(),
            FitError::Element { fault, index, failed } => Detail { index, failed, ..fault.detail() },
            FitError::Lengths { list, needed, given } => Detail {
                argument: list.argument(),
                given: given as f64,
                lower: needed as f64,
                upper: needed as f64,
                ..Detail::new(Kind::WrongCount)
            },
            FitError::TooFewPoints { given, needed } => {
                Detail { argument: TOO_FEW, given: given as f64, lower: needed as f64, ..Detail::new(Kind::WrongCount) }
            }
            FitError::Undetermined { parameter } => Detail { index: parameter, ..Detail::new(Kind::Undetermined) },
            FitError::BoundsCrossed { parameter, lower, upper } => {
                Detail { argument: BOUNDS, lower, upper, index: parameter, ..Detail::new(Kind::Contradiction) }
            }
            FitError::StartOutside { parameter, given, lower, upper } => {
                Detail { argument: START, given, lower, upper, index: parameter, ..Detail::new(Kind::Contradiction) }
            }
            FitError::ModelNotFinite { index, x } => Detail { given: x, index, ..Detail::new(Kind::ModelNotFinite) },
            FitError::NotSettled { steps, left, allowed } => {
                Detail { given: left, upper: allowed, index: steps, ..Detail::new(Kind::NotSettled) }
            }
            FitError::MissingUncertaintyOfY => Detail { argument: MISSING_U_Y, ..Detail::new(Kind::MissingArgument) },
            FitError::TooLarge { largest } => {
                Detail { argument: TOO_LARGE, upper: largest, ..Detail::new(Kind::ResultOutOfRange) }
            }
        }
    }

    /// Back from plain numbers, if they are of such an error.
    pub fn from_detail(detail: &Detail) -> Option<FitError> {
        let Detail { kind, argument, given, lower, upper, index, failed, .. } = *detail;
        Some(match (kind, argument) {
            (Kind::WrongCount, TOO_FEW) => FitError::TooFewPoints { given: given as u64, needed: lower as u64 },
            (Kind::WrongCount, _) => {
                let list = List::ALL.into_iter().find(|list| list.argument() == argument)?;
                FitError::Lengths { list, needed: lower as u64, given: given as u64 }
            }
            (Kind::Undetermined, _) => FitError::Undetermined { parameter: index },
            (Kind::Contradiction, BOUNDS) => FitError::BoundsCrossed { parameter: index, lower, upper },
            (Kind::Contradiction, START) => FitError::StartOutside { parameter: index, given, lower, upper },
            (Kind::ModelNotFinite, _) => FitError::ModelNotFinite { index, x: given },
            (Kind::NotSettled, _) => FitError::NotSettled { steps: index, left: given, allowed: upper },
            (Kind::MissingArgument, MISSING_U_Y) => FitError::MissingUncertaintyOfY,
            (Kind::ResultOutOfRange, TOO_LARGE) => FitError::TooLarge { largest: upper },
            _ => {
                let fault = OutOfRange::from_detail(detail)?;
                if failed == 0 { FitError::Range(fault) } else { FitError::Element { fault, index, failed } }
            }
        })
    }
}
