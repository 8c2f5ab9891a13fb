//! Pointers from a caller, checked before they are followed.

use crate::answer::{DoorError, Outcome};

/// Where one output goes.
pub(crate) fn place<T>(output: *mut T, argument: u16) -> Outcome<*mut T> {
    if output.is_null() { Err(DoorError::NullPointer { argument }.into()) } else { Ok(output) }
}

/// One input.
pub(crate) unsafe fn item<'a, T>(input: *const T, argument: u16) -> Outcome<&'a T> {
    // SAFETY: the caller of this door promises that what is not null can be read.
    unsafe { input.as_ref() }.ok_or(DoorError::NullPointer { argument }.into())
}
