//! Which area of the core a failure comes from: its numbers say so, and its sentence is made by that area.

#[cfg(feature = "text")]
use core::fmt;

use reckohm::distribution::DistributionError;
use reckohm::marking::MarkingError;
use reckohm::measurement::MeasurementError;
use reckohm::meter::{MeterError, Unread};
use reckohm::number::{Detail, Kind, OutOfRange};
use reckohm::preferred::PreferredError;
use reckohm::sensor::SensorError;
use reckohm::uncertainty::EstimateError;
use reckohm::verdict::{LimitsError, VerdictError};

use crate::answer::Failure;

fn of_range(detail: &Detail) -> bool {
    matches!(detail.kind, Kind::OutOfRange | Kind::NotFinite)
}

/// Each area's error becomes plain numbers. A range error names no argument of its own, so it gets the number of its
/// area, from the same blocks; the sentence of a failure is then asked of that area alone.
macro_rules! areas {
    ($($error:ident = $area:literal,)+) => {
        $(impl From<$error> for Failure {
            fn from(error: $error) -> Failure {
                let detail = error.detail();
                Failure(if detail.argument == 0 && of_range(&detail) { Detail { argument: $area, ..detail } } else { detail })
            }
        })+

        /// Writes the sentence of a failure, if it is of one of the areas.
        #[cfg(feature = "text")]
        pub(crate) fn sentence(detail: &Detail, f: &mut fmt::Formatter<'_>) -> Option<fmt::Result> {
            let plain = Detail { argument: 0, ..*detail };
            match detail.argument {
                _ if !of_range(detail) => {}
                $($area => return $error::from_detail(&plain).map(|error| fmt::Display::fmt(&error, f)),)+
                0 => return OutOfRange::from_detail(detail).map(|error| fmt::Display::fmt(&error, f)),
                _ => {}
            }
            $(if let Some(error) = $error::from_detail(detail) {
                return Some(fmt::Display::fmt(&error, f));
            })+
            None
        }
    };
}

areas! {
    PreferredError = 199,
    MarkingError = 198,
    LimitsError = 197,
    MeterError = 299,
    MeasurementError = 349,
    EstimateError = 399,
    VerdictError = 449,
    SensorError = 499,
    DistributionError = 89,
}

/// As of a text on a span, without the numbers of what else it could be.
impl From<Unread> for Failure {
    fn from(unread: Unread) -> Failure {
        Failure(unread.detail())
    }
}

impl From<OutOfRange> for Failure {
    fn from(error: OutOfRange) -> Failure {
        Failure(error.detail())
    }
}

/// Whether an area's own sentence says which element of an array failed.
#[cfg(feature = "text")]
pub(crate) fn names_elements(detail: &Detail) -> bool {
    let plain = Detail { argument: 0, ..*detail };
    let of_preferred = matches!(PreferredError::from_detail(&plain), Some(PreferredError::Element { .. }));
    let of_distribution = matches!(DistributionError::from_detail(detail), Some(DistributionError::Element { .. }))
        || matches!(DistributionError::from_detail(&plain), Some(DistributionError::Element { .. }));
    let of_sensor = matches!(SensorError::from_detail(detail), Some(SensorError::Element { .. }));
    let of_columns = matches!(VerdictError::from_detail(&plain), Some(VerdictError::Element { .. }));
    of_sensor
        || detail.argument == 199 && of_preferred
        || detail.argument == 449 && of_columns
        || matches!(detail.argument, 21 | 89) && of_distribution
}
