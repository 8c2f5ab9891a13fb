//! Pointers from a caller, checked before they are followed.

use crate::answer::{DoorError, Outcome};

/// Where one output goes.
pub(crate) fn place<T>(output: *mut T, argument: u16) -> Outcome<*mut T> {
    if output.is_null() { Err(DoorError::NullPointer { argument }.into()) } else { Ok(output) }
}

/// Where an array of outputs goes; it may be null when it has no elements.
pub(crate) fn fill<T>(output: *mut T, count: usize, argument: u16) -> Outcome<*mut T> {
    fits::<T>(count)?;
    if count == 0 { Ok(output) } else { place(output, argument) }
}

/// One input.
pub(crate) unsafe fn item<'a, T>(input: *const T, argument: u16) -> Outcome<&'a T> {
    // SAFETY: the caller of this door promises that what is not null can be read.
    unsafe { input.as_ref() }.ok_or(DoorError::NullPointer { argument }.into())
}

/// An array of inputs; it may be null when it has no elements.
pub(crate) unsafe fn items<'a, T>(input: *const T, count: usize, argument: u16) -> Outcome<&'a [T]> {
    fits::<T>(count)?;
    if count == 0 {
        return Ok(&[]);
    }
    if input.is_null() {
        return Err(DoorError::NullPointer { argument }.into());
    }
    // SAFETY: not null, of a size that memory can have, and the caller promises that `count` elements can be read.
    Ok(unsafe { core::slice::from_raw_parts(input, count) })
}

/// One element of an array of inputs. Every index asked for is below the count, but not every version of the compiler
/// sees that; asked in this way, none leaves a panic that could be reached.
pub(crate) fn element<T>(items: &[T], index: usize) -> Outcome<&T> {
    items.get(index).ok_or(DoorError::CountTooLarge { count: index as f64, most: items.len() as f64 }.into())
}

/// An array of outputs; it may be null when it has no elements.
pub(crate) unsafe fn items_mut<'a, T>(output: *mut T, count: usize, argument: u16) -> Outcome<&'a mut [T]> {
    fits::<T>(count)?;
    if count == 0 {
        return Ok(&mut []);
    }
    let output = place(output, argument)?;
    // SAFETY: not null, of a size that memory can have, and the caller promises memory for `count` elements, whose types
    // in this door have no illegal bits.
    Ok(unsafe { core::slice::from_raw_parts_mut(output, count) })
}

/// A count that no memory could hold is a mistake, such as a negative number.
fn fits<T>(count: usize) -> Outcome<()> {
    let most = isize::MAX as usize / size_of::<T>().max(1);
    if count <= most {
        return Ok(());
    }
    Err(DoorError::CountTooLarge { count: count as f64, most: most as f64 }.into())
}
