//! How every function of this door answers: a status, the detail if it is asked for, the outputs last.

use reckohm::number::{Detail, Kind};
use thiserror::Error;

use crate::detail::{rko_detail, rko_status};
use crate::pointer::place;

/// The argument of a detail about a count that no memory can hold.
const COUNT: u16 = 90;
/// The argument of a detail about offsets of texts.
const OFFSETS: u16 = 91;

/// What only a C caller can get wrong.
#[derive(Clone, Copy, Debug, PartialEq, Error)]
pub(crate) enum DoorError {
    /// A null pointer, at this position from 1.
    #[error(
        "argument {argument} is a null pointer, memory is needed there; only the last argument, a mask, and an array of no \
         elements may be null"
    )]
    NullPointer { argument: u16 },
    /// A number that stands for nothing.
    #[error(
        "argument {argument}: the code {given} stands for nothing here; use one of the constants that the header lists for it"
    )]
    UnknownCode { argument: u16, given: f64 },
    /// More elements than a call takes or memory can hold.
    #[error("{count} elements given, at most {most} allowed; look for a negative count")]
    CountTooLarge { count: f64, most: f64 },
    /// Offsets of texts that do not ascend.
    #[error(
        "offsets of texts: {given} given for offset {index}, {before} or more allowed; each text ends where the next begins"
    )]
    Offsets { index: u64, given: f64, before: f64 },
    /// A text that does not fit.
    #[error(
        "the text needs {needed} bytes with its closing zero, {capacity} given; nothing was written; RKO_TEXT_CAPACITY bytes hold every text"
    )]
    BufferTooSmall { needed: u64, capacity: f64 },
    /// A struct of ours whose bytes are not as we left them.
    #[error(
        "argument {argument}: memory that this library has not filled, or that was changed since, given; one as its own \
         function leaves it allowed; fill it first, copy it only as a whole, and look for what writes beyond its end"
    )]
    CorruptMemory { argument: u16 },
    /// Arithmetic other than what every result needs.
    #[error(
        "arithmetic of this processor as it is set up: {given:e} came out, only {expected:e} allowed; {}",
        remedy(*argument)
    )]
    WrongArithmetic { argument: u16, given: f64, expected: f64 },
}

/// What to do about arithmetic that is wrong in one of the ways of `RKO_ARITHMETIC_...`.
fn remedy(argument: u16) -> &'static str {
    match argument {
        1 | 2 => {
            "numbers near zero are flushed to it: switch that off (FZ in FPSCR, FTZ and DAZ in MXCSR, no -ffast-math at the link)"
        }
        3 | 4 => "results are not rounded to the nearest: set that (fesetround(FE_TONEAREST), RMode 0 in FPSCR)",
        _ => "a subtraction of another library took the place of ours: link the one object of this library, as it is",
    }
}

impl DoorError {
    pub(crate) fn detail(self) -> Detail {
        match self {
            DoorError::NullPointer { argument } => Detail { argument, ..Detail::new(Kind::NullPointer) },
            DoorError::UnknownCode { argument, given } => Detail { argument, given, ..Detail::new(Kind::UnknownCode) },
            DoorError::CountTooLarge { count, most } => {
                Detail { argument: COUNT, given: count, upper: most, ..Detail::new(Kind::WrongCount) }
            }
            DoorError::Offsets { index, given, before } => {
                Detail { argument: OFFSETS, given, lower: before, index, ..Detail::new(Kind::Contradiction) }
            }
            DoorError::CorruptMemory { argument } => Detail { argument, ..Detail::new(Kind::CorruptMemory) },
            DoorError::WrongArithmetic { argument, given, expected } => {
                Detail { argument, given, lower: expected, upper: expected, ..Detail::new(Kind::WrongArithmetic) }
            }
            DoorError::BufferTooSmall { needed, capacity } => {
                Detail { index: needed, given: capacity, lower: needed as f64, ..Detail::new(Kind::BufferTooSmall) }
            }
        }
    }

    #[cfg(feature = "text")]
    pub(crate) fn from_detail(detail: &Detail) -> Option<DoorError> {
        let &Detail { kind, argument, given, lower, index, upper, .. } = detail;
        match kind {
            Kind::NullPointer => Some(DoorError::NullPointer { argument }),
            Kind::UnknownCode => Some(DoorError::UnknownCode { argument, given }),
            Kind::WrongCount if argument == COUNT => Some(DoorError::CountTooLarge { count: given, most: upper }),
            Kind::Contradiction if argument == OFFSETS => Some(DoorError::Offsets { index, given, before: lower }),
            Kind::CorruptMemory => Some(DoorError::CorruptMemory { argument }),
            Kind::WrongArithmetic => Some(DoorError::WrongArithmetic { argument, given, expected: lower }),
            Kind::BufferTooSmall => Some(DoorError::BufferTooSmall { needed: index, capacity: given }),
            _ => None,
        }
    }
}

/// Why a call did not succeed, whatever area it comes from: the plain numbers that every area's error has.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Failure(pub(crate) Detail);

impl From<DoorError> for Failure {
    fn from(error: DoorError) -> Failure {
        Failure(error.detail())
    }
}

/// What the work behind a call comes to.
pub(crate) type Outcome<T> = Result<T, Failure>;

/// Does the work and answers; the work writes its outputs itself, last.
pub(crate) unsafe fn answer(detail: *mut rko_detail, work: impl FnOnce() -> Outcome<()>) -> rko_status {
    let found = match work() {
        Ok(()) => rko_detail::NONE,
        Err(Failure(failure)) => failure.into(),
    };
    if !detail.is_null() {
        // SAFETY: not null, and the caller gives memory for one.
        unsafe { detail.write(found) };
    }
    found.status
}

/// Does work with one output, and writes it if all went well. The output may be one of the inputs: it is written last.
pub(crate) unsafe fn one<T>(
    output: *mut T,
    position: u16,
    detail: *mut rko_detail,
    work: impl FnOnce() -> Outcome<T>,
) -> rko_status {
    let whole = || {
        let output = place(output, position)?;
        let value = work()?;
        // SAFETY: checked not to be null, and the caller gives memory for one.
        unsafe { output.write(value) };
        Ok(())
    };
    // SAFETY: as the caller of this door promises.
    unsafe { answer(detail, whole) }
}

/// A whole number from the caller as the choice that it stands for.
pub(crate) fn code<T>(given: u32, argument: u16, choice: impl FnOnce(u32) -> Option<T>) -> Outcome<T> {
    choice(given).ok_or(DoorError::UnknownCode { argument, given: f64::from(given) }.into())
}
