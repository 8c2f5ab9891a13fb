//! What all functions over arrays share: every element is checked before anything is written, and a failure says which
//! element was the first and how many there are.

use super::batch::{self, PerElement};
use super::scalar::Real;

/// A formula of one number that does not take every number.
pub(crate) trait Question<R: Real>: PerElement<R, 1> {
    /// What can be wrong with the number.
    type Fault;

    /// Why there is no answer for this number, if there is none.
    fn fault(self, x: R) -> Result<(), Self::Fault>;

    /// The answer for one number that is no part of a loop, with the same bits.
    #[inline(always)]
    fn alone(self, x: R) -> R {
        self.of([x])
    }
}

/// Why an array was not worked on; nothing was written.
pub(crate) enum ArrayFault<F> {
    /// Two slices of different lengths.
    Lengths { needed: u64, room: u64 },
    /// Elements that were refused: the first one's fault and index, and how many there are.
    Element { fault: F, index: u64, failed: u64 },
}

/// Whether each value has an answer.
pub(crate) fn check<R: Real, Q: Question<R>>(question: Q, values: &[R]) -> Result<(), ArrayFault<Q::Fault>> {
    if batch::takes_all(Taken(question), [values]) { Ok(()) } else { all_good(values, |x| question.fault(x)) }
}

/// Writes the answer for each value, after all of them have been checked.
pub(crate) fn answer_into<R: Real, Q: Question<R>>(
    question: Q,
    values: &[R],
    out: &mut [R],
) -> Result<(), ArrayFault<Q::Fault>> {
    same_length(values.len(), out.len())?;
    check(question, values)?;
    batch::map(question, [values], out);
    Ok(())
}

/// Writes the answer for each legal value, says which those were, and counts the others.
pub(crate) fn answer_into_valid<R: Real, Q: Question<R>>(
    question: Q,
    values: &[R],
    out: &mut [R],
    valid: &mut [bool],
) -> Result<usize, ArrayFault<Q::Fault>> {
    /// So many elements at a time: one bad element keeps no more than these from the fast loop.
    const STRETCH: usize = 512;
    same_length(values.len(), out.len())?;
    same_length(values.len(), valid.len())?;
    let mut failed = 0_usize;
    // Not zipped: that divides by the length of a stretch, and not every compiler sees that it is not 0.
    let (mut outs, mut marks) = (out.chunks_mut(STRETCH), valid.chunks_mut(STRETCH));
    for values in values.chunks(STRETCH) {
        let (Some(out), Some(valid)) = (outs.next(), marks.next()) else { break };
        if batch::takes_all(Taken(question), [values]) {
            valid.fill(true);
            batch::map(question, [values], out);
            continue;
        }
        for ((x, place), valid) in values.iter().zip(out).zip(valid) {
            *valid = question.fault(*x).is_ok();
            if *valid {
                *place = question.alone(*x);
            } else {
                failed = failed.wrapping_add(1);
            }
        }
    }
    Ok(failed)
}

/// Whether every element is good; else the first that is not, and how many are not.
pub(crate) fn all_good<X: Copy, F>(values: &[X], check: impl Fn(X) -> Result<(), F>) -> Result<(), ArrayFault<F>> {
    match first_bad(values.iter().copied(), check) {
        Some((fault, index, failed)) => Err(ArrayFault::Element { fault, index, failed }),
        None => Ok(()),
    }
}

/// The first element that is not good, if there is one: what is wrong with it, its index, and how many are not good.
pub(crate) fn first_bad<X, T, F>(
    elements: impl Iterator<Item = X>,
    check: impl Fn(X) -> Result<T, F>,
) -> Option<(F, u64, u64)> {
    let mut first = None;
    let mut failed = 0_u64;
    for (index, x) in elements.enumerate() {
        if let Err(fault) = check(x) {
            first = first.or(Some((fault, index as u64)));
            failed = failed.wrapping_add(1);
        }
    }
    first.map(|(fault, index)| (fault, index, failed))
}

/// Whether there is a place for each result.
pub(crate) fn same_length<F>(needed: usize, room: usize) -> Result<(), ArrayFault<F>> {
    if needed == room {
        return Ok(());
    }
    Err(ArrayFault::Lengths { needed: needed as u64, room: room as u64 })
}

/// Whether a question has an answer: 1, or 0.
#[derive(Clone, Copy)]
struct Taken<Q>(Q);

impl<R: Real, Q: Question<R>> PerElement<R, 1> for Taken<Q> {
    #[inline(always)]
    fn of(self, [x]: [R; 1]) -> R {
        R::select(self.0.fault(x).is_ok(), R::ONE, R::ZERO)
    }
}
