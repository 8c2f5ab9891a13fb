//! Calls on arrays whose core functions are loops: whole stretches at a time with a mask or without, and over the cores where
//! there is an operating system and enough to do.

use core::ops::Range;

use reckohm::number::Detail;

use crate::answer::{Failure, Outcome, answer};
use crate::array::Results;
use crate::detail::{rko_detail, rko_status};
use crate::pointer::items_mut;

/// Inputs of which a part can be taken; what all elements share stays what it is.
pub(crate) trait Part: Copy + Sync {
    /// These elements.
    fn part(self, elements: Range<usize>) -> Self;
}

impl<X: Sync> Part for &[X] {
    fn part(self, elements: Range<usize>) -> Self {
        self.get(elements).unwrap_or_default()
    }
}

impl<X: Sync, S: Copy + Sync> Part for (&[X], S) {
    fn part(self, elements: Range<usize>) -> Self {
        (self.0.part(elements), self.1)
    }
}

/// The four things asked of the core: whether all elements are good, their results, the results of the good ones with a mask of
/// them and how many are not, and one element's result or what is wrong with it.
pub(crate) struct Asked<C, W, V, O> {
    pub(crate) check: C,
    pub(crate) whole: W,
    pub(crate) masked: V,
    pub(crate) one: O,
}

/// Answers an array call. Without a mask everything is checked before anything is written; with one, what is bad is marked and
/// left as it was. `least` elements are worth a thread.
pub(crate) unsafe fn in_parts<I: Part, T: Send>(
    results: Results<T>,
    least: usize,
    inputs: impl FnOnce() -> Outcome<I>,
    asked: Asked<
        impl Fn(I) -> Outcome<()> + Sync,
        impl Fn(I, &mut [T]) -> Outcome<()> + Sync,
        impl Fn(I, &mut [T], &mut [bool]) -> Outcome<usize> + Sync,
        impl Fn(I, usize) -> Outcome<T>,
    >,
) -> rko_status {
    let Results { count, output, position, valid, detail } = results;
    let Asked { check, whole, masked, one } = asked;
    if valid.is_null() {
        let work = || {
            let inputs = inputs()?;
            // SAFETY: the caller promises `count` elements behind the pointer.
            let output = unsafe { items_mut(output, count, position)? };
            let good = over_cores(count, least, (), |elements, ()| usize::from(check(inputs.part(elements)).is_err()));
            if good > 0 {
                // Once more from the start, for the first of all and their number.
                check(inputs)?;
            }
            let failed = over_cores(count, least, output, |elements, out| {
                usize::from(whole(inputs.part(elements), out).is_err())
            });
            if failed > 0 { check(inputs) } else { Ok(()) }
        };
        // SAFETY: as the caller of this door promises.
        return unsafe { answer(detail, work) };
    }
    let mut first: Option<Detail> = None;
    let work = || {
        let inputs = inputs()?;
        // SAFETY: the caller promises `count` elements behind the pointers.
        let (output, valid) = unsafe { (items_mut(output, count, position)?, items_mut(valid, count, position)?) };
        let refused = over_cores(count, least, (&mut *output, &mut *valid), |elements, (output, valid)| {
            stretches(inputs.part(elements), output, valid, &masked)
        });
        if refused > 0 {
            let index = valid.iter().position(|mark| *mark == 0).unwrap_or_default();
            if let Err(Failure(why)) = one(inputs, index) {
                first = Some(Detail { index: index as u64, failed: refused as u64, ..why });
            }
        }
        Ok(())
    };
    // SAFETY: as the caller of this door promises.
    let status = unsafe { answer(detail, work) };
    if let (Some(why), false) = (first, detail.is_null()) {
        // SAFETY: not null, and the caller gives memory for one.
        unsafe { detail.write(rko_detail::from(why)) };
    }
    status
}

/// Results with a mask of bytes, stretch by stretch; gives how many elements were refused.
fn stretches<I: Part, T>(
    inputs: I,
    output: &mut [T],
    valid: &mut [u8],
    masked: &impl Fn(I, &mut [T], &mut [bool]) -> Outcome<usize>,
) -> usize {
    const STRETCH: usize = 256;
    let (mut start, mut refused) = (0_usize, 0_usize);
    let mut marks = valid.chunks_mut(STRETCH);
    // Not zipped: that divides by the length of a stretch, and not every compiler sees that it is not 0.
    for output in output.chunks_mut(STRETCH) {
        let Some(valid) = marks.next() else { break };
        let mut good = [false; STRETCH];
        let good = good.get_mut(..output.len()).unwrap_or_default();
        let end = start.wrapping_add(output.len());
        match masked(inputs.part(start..end), output, good) {
            Ok(here) => refused = refused.wrapping_add(here),
            Err(_) => refused = refused.wrapping_add(output.len()),
        }
        for (mark, good) in valid.iter_mut().zip(good) {
            *mark = u8::from(*good);
        }
        start = end;
    }
    refused
}

#[cfg(feature = "std")]
use reckohm_threads::in_parts as over_cores;

/// Without an operating system there is one core.
#[cfg(not(feature = "std"))]
fn over_cores<O>(count: usize, _least: usize, out: O, work: impl Fn(Range<usize>, O) -> usize) -> usize {
    work(0..count, out)
}

/// Limits how many threads a call on large arrays may use in this process from now on; 0 takes the limit away, which is how it
/// begins: as many as there are cores that the process may use. For programs that spread calls over the cores themselves. No
/// result depends on it. In a library for bare metal it does nothing.
#[unsafe(no_mangle)]
pub extern "C" fn rko_limit_threads(threads: u32) {
    #[cfg(feature = "std")]
    reckohm_threads::limit(threads as usize);
    #[cfg(not(feature = "std"))]
    let _ = threads;
}
