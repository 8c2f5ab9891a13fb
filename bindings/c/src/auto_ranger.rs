//! A meter that finds its span by itself, reading after reading: a state machine in memory of the caller's.

use core::mem::{align_of, size_of};

use reckohm::meter::{AutoRanger, Meter, RangerAction};

use crate::answer::{DoorError, Outcome, answer, one};
use crate::detail::{rko_detail, rko_status};
use crate::pointer::{item, place};
use crate::reading::rko_reading;
use crate::seal::seal;
use crate::span::{Spans, rko_span};

/// The usual hysteresis of an auto-ranger, as a fraction of the lower span's full scale; common practice.
pub const RKO_HYSTERESIS_BY_CONVENTION: f64 = 0.05;
/// The usual widest hysteresis of an auto-ranger; a convention.
pub const RKO_WIDEST_HYSTERESIS_BY_CONVENTION: f64 = 0.5;

const _: () = {
    assert!(RKO_HYSTERESIS_BY_CONVENTION == reckohm::meter::HYSTERESIS_BY_CONVENTION);
    assert!(RKO_WIDEST_HYSTERESIS_BY_CONVENTION == reckohm::meter::WIDEST_HYSTERESIS_BY_CONVENTION);
};

/// Do not use this reading, the input is still settling; measure again on this span.
pub const RKO_RANGER_AGAIN: u32 = 1;
/// Put the meter on the span given and measure there; this reading is not the one to use.
pub const RKO_RANGER_SWITCH: u32 = 2;
/// Use this reading; no span shows it better.
pub const RKO_RANGER_ACCEPT: u32 = 3;
/// The reading is beyond the highest span: open, or not for this meter.
pub const RKO_RANGER_BEYOND_HIGHEST: u32 = 4;
/// The reading is less than one step of the lowest span: a short, or not for this meter. It may be used as a value.
pub const RKO_RANGER_BELOW_LOWEST: u32 = 5;

/// An auto-ranger: the state machine that finds the span for each reading. Its content is the library's own, with room to
/// spare; every call sees whether it is as the last one left it. It may be copied as a whole, stored, and used again by the
/// same build of the library.
#[repr(C)]
#[derive(Clone, Copy, Debug)]
pub struct rko_auto_ranger {
    /// Not for reading or writing.
    pub opaque: [u64; 64],
}

/// So many 32-bit words are in use; the seal is in the last word.
const WORDS: usize = size_of::<AutoRanger>() / 4;
const SEAL_PLACE: usize = size_of::<rko_auto_ranger>() / 4 - 1;
/// What the seal begins with.
const KIND: u32 = 0x524b_0064;

const _: () = {
    assert!(size_of::<rko_auto_ranger>() == 512);
    assert!(size_of::<AutoRanger>() == 440 && WORDS < SEAL_PLACE);
    assert!(align_of::<rko_auto_ranger>() >= align_of::<AutoRanger>());
};

impl rko_auto_ranger {
    fn of(ranger: AutoRanger) -> rko_auto_ranger {
        let mut made = rko_auto_ranger { opaque: [0; 64] };
        *made.core() = ranger;
        made.close();
        made
    }

    fn words(&self) -> &[u32; SEAL_PLACE + 1] {
        // SAFETY: the same memory as words of half the size; every bit pattern is a word.
        unsafe { &*core::ptr::from_ref(self).cast() }
    }

    fn seal_now(&self) -> u32 {
        seal(self.words().get(..WORDS).unwrap_or_default(), KIND)
    }

    fn close(&mut self) {
        let seal = self.seal_now();
        // SAFETY: as of `words`.
        let words: &mut [u32; SEAL_PLACE + 1] = unsafe { &mut *core::ptr::from_mut(self).cast() };
        words[SEAL_PLACE] = seal;
    }

    /// The core's auto-ranger in this memory.
    fn core(&mut self) -> &mut AutoRanger {
        // SAFETY: large and aligned enough, as asserted above; the core's type is plain numbers laid out as in C, so that
        // every bit pattern is one.
        unsafe { &mut *core::ptr::from_mut(self).cast() }
    }
}

/// What is at this pointer, if it is as we left it.
unsafe fn kept<'a>(ranger: *mut rko_auto_ranger) -> Outcome<&'a mut rko_auto_ranger> {
    // SAFETY: not null, and the caller of this door promises memory for one.
    let ranger = unsafe { &mut *place(ranger, 1)? };
    if ranger.words()[SEAL_PLACE] != ranger.seal_now() {
        return Err(DoorError::CorruptMemory { argument: 1 }.into());
    }
    Ok(ranger)
}

/// Fills an auto-ranger.
///
/// Over-range goes up one span at a time. A reading that, with its accuracy clause, is below a lower span's full scale by the
/// hysteresis goes straight to the lowest such span. Each time that turns out wrong the hysteresis doubles, up to the widest,
/// so that a reading that wobbles about the end of a span does not switch for ever; once the readings have left the
/// neighbourhood of that end, by the widest hysteresis, it is as at first.
///
/// Given: `spans`, `count` of them, at most `RKO_SPANS_MOST`, from the lowest to the highest; `start`, the span to begin on,
/// from 0: `count - 1` is the gentlest; `discard`, how many readings are discarded after each switch while the input settles;
/// `hysteresis`, a fraction in [0.001, 0.9], usually `RKO_HYSTERESIS_BY_CONVENTION`; `widest_hysteresis`, as much or more,
/// usually `RKO_WIDEST_HYSTERESIS_BY_CONVENTION`.
/// Written: `ranger`.
/// Statuses: those of `rko_span_check`; `RKO_EMPTY`, `RKO_CONTRADICTION` (order of the spans, or the widest hysteresis is less),
/// `RKO_WRONG_COUNT`, `RKO_NO_SUCH_SPAN`, `RKO_NULL_POINTER`.
#[unsafe(no_mangle)]
#[allow(clippy::too_many_arguments)]
pub unsafe extern "C" fn rko_auto_ranger_init(
    spans: *const rko_span,
    count: usize,
    start: usize,
    discard: u32,
    hysteresis: f64,
    widest_hysteresis: f64,
    ranger: *mut rko_auto_ranger,
    detail: *mut rko_detail,
) -> rko_status {
    unsafe {
        one(ranger, 7, detail, || {
            let spans = Spans::of(spans, count, 1)?;
            let made = AutoRanger::new(&Meter::new(spans.as_slice())?)?.with_start(start)?.with_discard(discard);
            Ok(rko_auto_ranger::of(made.with_hysteresis(hysteresis, widest_hysteresis)?))
        })
    }
}

/// Takes in a reading on the span that was asked for, and says what to do.
///
/// Given: `ranger`, which goes on by one step; `reading`, of which `ohm` and `over` are read.
/// Written: `action`, one of `RKO_RANGER_...`; `next`, the index of the span for the next reading.
/// Statuses: `RKO_CORRUPT_MEMORY`; `RKO_BEYOND_FULL_SCALE` and `RKO_CONTRADICTION` for a reading of another span;
/// `RKO_OUT_OF_RANGE`, `RKO_NOT_FINITE`, `RKO_UNKNOWN_CODE`, `RKO_NULL_POINTER`. The auto-ranger is as before then.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rko_auto_ranger_step(
    ranger: *mut rko_auto_ranger,
    reading: *const rko_reading,
    action: *mut u32,
    next: *mut usize,
    detail: *mut rko_detail,
) -> rko_status {
    unsafe {
        step(ranger, (action, 3), (next, 4), detail, |ranger| {
            let reading = item(reading, 2)?;
            let over = match reading.over {
                0 => false,
                1 => true,
                other => return Err(DoorError::UnknownCode { argument: 2, given: f64::from(other) }.into()),
            };
            Ok(ranger.step_shown(reading.ohm, over)?)
        })
    }
}

/// Takes in a resistance measured on the span that was asked for, and says what to do. At or beyond the span's full scale it
/// is over-range: give the full scale where there is no value.
///
/// Given: `ranger`, which goes on by one step; `ohm`, finite.
/// Written: `action`, one of `RKO_RANGER_...`; `next`, the index of the span for the next reading.
/// Statuses: `RKO_CORRUPT_MEMORY`, `RKO_NOT_FINITE`, `RKO_NULL_POINTER`. The auto-ranger is as before then.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rko_auto_ranger_step_ohm(
    ranger: *mut rko_auto_ranger,
    ohm: f64,
    action: *mut u32,
    next: *mut usize,
    detail: *mut rko_detail,
) -> rko_status {
    unsafe { step(ranger, (action, 3), (next, 4), detail, |ranger| Ok(ranger.step_ohm(ohm)?)) }
}

unsafe fn step(
    ranger: *mut rko_auto_ranger,
    action: (*mut u32, u16),
    next: (*mut usize, u16),
    detail: *mut rko_detail,
    work: impl FnOnce(&mut AutoRanger) -> Outcome<RangerAction>,
) -> rko_status {
    // SAFETY: as the caller of this door promises.
    unsafe {
        answer(detail, || {
            let ranger = kept(ranger)?;
            let (action, next) = (place(action.0, action.1)?, place(next.0, next.1)?);
            let found = work(ranger.core())?;
            ranger.close();
            action.write(match found {
                RangerAction::Again { .. } => RKO_RANGER_AGAIN,
                RangerAction::Switch { .. } => RKO_RANGER_SWITCH,
                RangerAction::Accept => RKO_RANGER_ACCEPT,
                RangerAction::BeyondHighest => RKO_RANGER_BEYOND_HIGHEST,
                RangerAction::BelowLowest => RKO_RANGER_BELOW_LOWEST,
            });
            next.write(ranger.core().index());
            Ok(())
        })
    }
}

/// Begins anew for another part: what was learnt of the last one is forgotten, and no readings are discarded.
///
/// Given: `ranger`; `index`, the span to begin on, from 0.
/// Statuses: `RKO_CORRUPT_MEMORY`, `RKO_NO_SUCH_SPAN`, `RKO_NULL_POINTER`. The auto-ranger is as before then.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rko_auto_ranger_restart(
    ranger: *mut rko_auto_ranger,
    index: usize,
    detail: *mut rko_detail,
) -> rko_status {
    unsafe {
        answer(detail, || {
            let ranger = kept(ranger)?;
            ranger.core().restart(index)?;
            ranger.close();
            Ok(())
        })
    }
}
