//! Large arrays over the cores of the machine, for the doors that have an operating system under them.
//!
//! An array is cut into one part a core, as long as each part is worth a thread. No result depends on it: each element is
//! computed by itself.
#![forbid(unsafe_code)]

use std::num::NonZero;
use std::ops::Range;
use std::sync::atomic::{AtomicUsize, Ordering};
use std::sync::{Mutex, OnceLock, PoisonError};
use std::thread;

/// The only state there is, and no result depends on it; 0 is as many as there are cores.
static LIMIT: AtomicUsize = AtomicUsize::new(0);

/// Limits how many threads a call in this process may use from now on; 0 takes the limit away. For programs that spread
/// calls over the cores themselves, and for measuring.
///
/// ```
/// reckohm_threads::limit(1);
/// reckohm_threads::limit(0);
/// ```
pub fn limit(threads: usize) {
    LIMIT.store(threads, Ordering::Relaxed);
}

/// The cores that this process may use, as they were when it was first asked: the answer is read from files of the system.
fn cores() -> usize {
    static CORES: OnceLock<usize> = OnceLock::new();
    *CORES.get_or_init(|| thread::available_parallelism().map_or(1, NonZero::get))
}

/// Into how many parts so many elements go, none of less than `least` elements.
fn parts(count: usize, least: usize) -> usize {
    let worth = count / least.max(1);
    if worth < 2 {
        return 1;
    }
    match LIMIT.load(Ordering::Relaxed) {
        0 => worth.min(cores()),
        // More threads than cores help nobody, but show that nothing depends on them.
        limit => worth.min(limit),
    }
}

/// Outputs that can be cut in two.
pub trait Cut: Sized + Send {
    /// The first so many elements, and the rest.
    fn cut(self, at: usize) -> (Self, Self);
}

impl<T: Send> Cut for &mut [T] {
    fn cut(self, at: usize) -> (Self, Self) {
        self.split_at_mut(at)
    }
}

impl<A: Cut, B: Cut> Cut for (A, B) {
    fn cut(self, at: usize) -> (Self, Self) {
        let ((a, more_a), (b, more_b)) = (self.0.cut(at), self.1.cut(at));
        ((a, b), (more_a, more_b))
    }
}

/// Outputs of nothing: for work that only looks.
impl Cut for () {
    fn cut(self, _: usize) -> ((), ()) {
        ((), ())
    }
}

/// Does the work for all of `count` elements, in parts of at least `least`, each with its part of the outputs; gives the
/// sum of what the parts give. The caller's own thread takes a part, and a thread that cannot be had is done without.
///
/// ```
/// let mut squares = [0; 100];
/// let sum = reckohm_threads::in_parts(100, 10, squares.as_mut_slice(), |elements, out| {
///     for (n, place) in elements.zip(out.iter_mut()) {
///         *place = n * n;
///     }
///     out.len()
/// });
/// assert_eq!((sum, squares[9], squares[99]), (100, 81, 9801));
/// ```
pub fn in_parts<O: Cut>(count: usize, least: usize, out: O, work: impl Fn(Range<usize>, O) -> usize + Sync) -> usize {
    let parts = parts(count, least);
    if parts == 1 {
        return work(0..count, out);
    }
    let (mut start, mut rest) = (0, out);
    let mut shares = Vec::with_capacity(parts);
    for left in (1..=parts).rev() {
        // The first parts are one longer where it does not come out even.
        let end = start + (count - start).div_ceil(left);
        let (out, more) = rest.cut(end - start);
        shares.push(Mutex::new(Some((start..end, out))));
        (start, rest) = (end, more);
    }
    // Each share is taken once: by a thread of its own, or by the caller's, which goes on to those that no thread has begun.
    on_threads(parts, &|share| {
        let taken = shares.get(share).and_then(|share| share.lock().unwrap_or_else(PoisonError::into_inner).take());
        taken.map_or(0, |(elements, out)| work(elements, out))
    })
}

/// Takes each of so many shares, and gives the sum of what they give. Not generic: what starts threads is compiled once.
fn on_threads(shares: usize, take: &(dyn Fn(usize) -> usize + Sync)) -> usize {
    thread::scope(|scope| {
        let spawn = |share| thread::Builder::new().spawn_scoped(scope, move || take(share)).ok();
        let threads: Vec<_> = (1..shares).filter_map(spawn).collect();
        let own = (0..shares).map(take).sum::<usize>();
        threads.into_iter().fold(own, |sum, thread| match thread.join() {
            Ok(of_share) => sum + of_share,
            Err(panic) => std::panic::resume_unwind(panic),
        })
    })
}

#[cfg(test)]
mod tests {
    use super::{in_parts, limit};

    #[test]
    fn every_element_is_in_one_part() {
        for threads in [1, 2, 3, 7] {
            limit(threads);
            for count in [0, 1, 2, 5, 6, 7, 100, 101] {
                let (mut seen, mut mask) = (vec![0; count], vec![false; count]);
                let outputs = (seen.as_mut_slice(), mask.as_mut_slice());
                let parts = in_parts(count, 3, outputs, |elements, (seen, mask)| {
                    assert_eq!((elements.len(), elements.len()), (seen.len(), mask.len()));
                    for ((index, place), mask) in elements.zip(seen).zip(mask) {
                        (*place, *mask) = (*place + index + 1, true);
                    }
                    1
                });
                assert!(parts <= threads && parts <= 1.max(count / 3), "{threads} {count} {parts}");
                assert_eq!(parts > 1, threads > 1 && count >= 6);
                assert!(seen.iter().enumerate().all(|(index, seen)| *seen == index + 1));
                assert!(mask.iter().all(|seen| *seen));
            }
        }
        limit(0);
    }
}
