//! Calls on arrays: all or nothing without a mask, each for itself with one.

use reckohm::number::Detail;

use crate::answer::{Failure, Outcome, answer};
use crate::detail::{rko_detail, rko_status};
use crate::pointer::{fill, items_mut};

/// Where the results of an array call go.
pub(crate) struct Results<T> {
    /// How many elements.
    pub(crate) count: usize,
    /// The output array.
    pub(crate) output: *mut T,
    /// Its position among the function's arguments, from 1.
    pub(crate) position: u16,
    /// The mask, or null.
    pub(crate) valid: *mut u8,
    /// The detail, or null.
    pub(crate) detail: *mut rko_detail,
}

/// Answers an array call. Without a mask `whole` does all the work, checking everything before it writes; with a mask
/// `one` is asked for each element, and a failed one is marked and left as it was.
pub(crate) unsafe fn array<I: Copy, T>(
    results: Results<T>,
    inputs: impl FnOnce() -> Outcome<I>,
    whole: impl FnOnce(I, &mut [T]) -> Outcome<()>,
    one: impl Fn(I, usize) -> Outcome<T>,
) -> rko_status {
    let Results { count, output, position, valid, detail } = results;
    if valid.is_null() {
        let work = || {
            let inputs = inputs()?;
            // SAFETY: the caller promises `count` elements behind the pointer.
            whole(inputs, unsafe { items_mut(output, count, position)? })
        };
        // SAFETY: as the caller of this door promises.
        return unsafe { answer(detail, work) };
    }
    let mut first: Option<Detail> = None;
    let mut failed = 0_u64;
    let work = || {
        let inputs = inputs()?;
        let output = fill(output, count, position)?;
        for index in 0..count {
            let done = one(inputs, index);
            // SAFETY: a mask has `count` bytes, and so many elements are promised behind the output.
            unsafe { valid.add(index).write(u8::from(done.is_ok())) };
            match done {
                // SAFETY: as above.
                Ok(value) => unsafe { output.add(index).write(value) },
                Err(Failure(why)) => {
                    failed = failed.wrapping_add(1);
                    first.get_or_insert(Detail { index: index as u64, ..why });
                }
            }
        }
        Ok(())
    };
    // SAFETY: as the caller of this door promises.
    let status = unsafe { answer(detail, work) };
    if let (Some(why), false) = (first, detail.is_null()) {
        // SAFETY: not null, and the caller gives memory for one.
        unsafe { detail.write(rko_detail::from(Detail { failed, ..why })) };
    }
    status
}

/// The whole of an array by asking for each element twice: once to see whether all are good, once to write.
pub(crate) fn twice<T>(output: &mut [T], one: impl Fn(usize) -> Outcome<T>) -> Outcome<()> {
    all_good(output.len(), |index| one(index).map(|_| ()))?;
    for (index, place) in output.iter_mut().enumerate() {
        *place = one(index)?;
    }
    Ok(())
}

/// Whether every element is good; else the first that is not, and how many are not.
pub(crate) fn all_good(count: usize, check: impl Fn(usize) -> Outcome<()>) -> Outcome<()> {
    let mut first: Option<Detail> = None;
    let mut failed = 0_u64;
    for index in 0..count {
        if let Err(Failure(why)) = check(index) {
            failed = failed.wrapping_add(1);
            first.get_or_insert(Detail { index: index as u64, ..why });
        }
    }
    match first {
        Some(why) => Err(Failure(Detail { failed, ..why })),
        None => Ok(()),
    }
}
