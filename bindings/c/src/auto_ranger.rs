//! A meter that finds its span by itself, reading after reading: a state machine in memory of the caller's.

use core::mem::{align_of, size_of};

use reckohm::meter::{AutoRanger, Meter, RangerAction};
use reckohm::number::Real;

use crate::answer::{DoorError, Outcome, answer, one};
use crate::detail::{rko_detail, rko_status};
use crate::pointer::{item, place};
use crate::reading::rko_reading;
use crate::seal::seal;
use crate::span::{Spans, rko_span};
use crate::twins::twins;

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

/// `rko_auto_ranger` for `float`.
#[repr(C)]
#[derive(Clone, Copy, Debug)]
pub struct rko_auto_ranger_f32 {
    /// Not for reading or writing.
    pub opaque: [u64; 32],
}

/// Memory of a caller's that holds an auto-ranger of the core, with a seal in its last 32-bit word.
///
/// # Safety
/// Plain numbers laid out as in C, as aligned as the core's auto-ranger, with room for it and the seal.
unsafe trait Kept: Copy {
    /// What the auto-ranger's numbers are.
    type Real: Real;

    /// All zero.
    const EMPTY: Self;

    /// What the seal begins with.
    const KIND: u32;

    fn of(ranger: AutoRanger<Self::Real>) -> Self {
        let mut made = Self::EMPTY;
        *made.core() = ranger;
        made.close();
        made
    }

    fn words(&mut self) -> &mut [u32] {
        // SAFETY: the same memory as words; every bit pattern is a word.
        unsafe { core::slice::from_raw_parts_mut(core::ptr::from_mut(self).cast(), size_of::<Self>() / 4) }
    }

    fn seal_now(&mut self) -> u32 {
        seal(self.words().get(..size_of::<AutoRanger<Self::Real>>() / 4).unwrap_or_default(), Self::KIND)
    }

    fn is_whole(&mut self) -> bool {
        let seal = self.seal_now();
        self.words().last() == Some(&seal)
    }

    fn close(&mut self) {
        let seal = self.seal_now();
        if let Some(last) = self.words().last_mut() {
            *last = seal;
        }
    }

    /// The core's auto-ranger in this memory.
    fn core(&mut self) -> &mut AutoRanger<Self::Real> {
        // SAFETY: large and aligned enough, as the trait asks; the core's type is plain numbers laid out as in C, so that
        // every bit pattern is one.
        unsafe { &mut *core::ptr::from_mut(self).cast() }
    }
}

macro_rules! kept {
    ($($real:ident: $ranger:ident of $size:literal bytes, $used:literal of them in use, kind $kind:literal;)+) => {$(
        const _: () = {
            assert!(size_of::<$ranger>() == $size);
            assert!(size_of::<AutoRanger<$real>>() == $used && $used + 4 <= $size);
            assert!(align_of::<$ranger>() >= align_of::<AutoRanger<$real>>());
        };

        // SAFETY: as just asserted, and a struct of whole numbers.
        unsafe impl Kept for $ranger {
            type Real = $real;
            const EMPTY: $ranger = $ranger { opaque: [0; $size / 8] };
            const KIND: u32 = $kind;
        }
    )+};
}

kept! {
    f64: rko_auto_ranger of 512 bytes, 440 of them in use, kind 0x524b_0064;
    f32: rko_auto_ranger_f32 of 256 bytes, 232 of them in use, kind 0x524b_0032;
}

/// What is at this pointer, if it is as we left it.
unsafe fn kept<'a, K: Kept>(ranger: *mut K) -> Outcome<&'a mut K> {
    // SAFETY: not null, and the caller of this door promises memory for one.
    let ranger = unsafe { &mut *place(ranger, 1)? };
    if ranger.is_whole() { Ok(ranger) } else { Err(DoorError::CorruptMemory { argument: 1 }.into()) }
}

unsafe fn step<K: Kept>(
    ranger: *mut K,
    action: (*mut u32, u16),
    next: (*mut usize, u16),
    detail: *mut rko_detail,
    work: impl FnOnce(&mut AutoRanger<K::Real>) -> Outcome<RangerAction>,
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

twins! {
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
    fn rko_auto_ranger_init = rko_auto_ranger_init_f32(
        spans: *const rko_span,
        count: usize,
        start: usize,
        discard: u32,
        hysteresis: f64,
        widest_hysteresis: f64,
        ranger: *mut rko_auto_ranger,
        detail: *mut rko_detail,
    ) {
        one(ranger, 7, detail, || {
            let mut room = Spans::ROOM;
            let spans = room.fill(spans, count, 1)?;
            let made = AutoRanger::new(&Meter::new(spans)?)?.with_start(start)?.with_discard(discard);
            Ok(Kept::of(made.with_hysteresis(hysteresis, widest_hysteresis)?))
        })
    }

    /// Takes in a reading on the span that was asked for, and says what to do.
    ///
    /// Given: `ranger`, which goes on by one step; `reading`, of which `ohm` and `over` are read.
    /// Written: `action`, one of `RKO_RANGER_...`; `next`, the index of the span for the next reading.
    /// Statuses: `RKO_CORRUPT_MEMORY`; `RKO_BEYOND_FULL_SCALE` and `RKO_CONTRADICTION` for a reading of another span;
    /// `RKO_OUT_OF_RANGE`, `RKO_NOT_FINITE`, `RKO_UNKNOWN_CODE`, `RKO_NULL_POINTER`. The auto-ranger is as before then.
    fn rko_auto_ranger_step = rko_auto_ranger_step_f32(
        ranger: *mut rko_auto_ranger,
        reading: *const rko_reading,
        action: *mut u32,
        next: *mut usize,
        detail: *mut rko_detail,
    ) {
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

    /// Takes in a resistance measured on the span that was asked for, and says what to do. At or beyond the span's full scale it
    /// is over-range: give the full scale where there is no value.
    ///
    /// Given: `ranger`, which goes on by one step; `ohm`, finite.
    /// Written: `action`, one of `RKO_RANGER_...`; `next`, the index of the span for the next reading.
    /// Statuses: `RKO_CORRUPT_MEMORY`, `RKO_NOT_FINITE`, `RKO_NULL_POINTER`. The auto-ranger is as before then.
    fn rko_auto_ranger_step_ohm = rko_auto_ranger_step_ohm_f32(
        ranger: *mut rko_auto_ranger,
        ohm: f64,
        action: *mut u32,
        next: *mut usize,
        detail: *mut rko_detail,
    ) {
        step(ranger, (action, 3), (next, 4), detail, |ranger| Ok(ranger.step_ohm(ohm)?))
    }

    /// Begins anew for another part: what was learnt of the last one is forgotten, and no readings are discarded.
    ///
    /// Given: `ranger`; `index`, the span to begin on, from 0.
    /// Statuses: `RKO_CORRUPT_MEMORY`, `RKO_NO_SUCH_SPAN`, `RKO_NULL_POINTER`. The auto-ranger is as before then.
    fn rko_auto_ranger_restart = rko_auto_ranger_restart_f32(
        ranger: *mut rko_auto_ranger,
        index: usize,
        detail: *mut rko_detail,
    ) {
        answer(detail, || {
            let ranger = kept(ranger)?;
            ranger.core().restart(index)?;
            ranger.close();
            Ok(())
        })
    }
}
