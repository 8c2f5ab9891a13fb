//! Which span a part goes on, and how to step through the spans.

use core::ffi::c_char;
use core::mem::{offset_of, size_of};

use reckohm::meter::{Assessment, Meter, Outcome as Lot, Step};

use crate::answer::{answer, one};
use crate::detail::{rko_detail, rko_status};
use crate::pointer::{item, items_mut, place};
use crate::reading::rko_reading;
use crate::span::{Spans, rko_span};
use crate::twins::twins;

/// Of the spans that show every conforming part, this has the least expanded uncertainty.
pub const RKO_OUTCOME_CHOSEN: u32 = 1;
/// A conforming part at the upper limit would be over-range here.
pub const RKO_OUTCOME_OVER_RANGE: u32 = 2;
/// The expanded uncertainty here is wider than the chosen span's.
pub const RKO_OUTCOME_WIDER: u32 = 3;

/// Stay on this span.
pub const RKO_STEP_STAY: u32 = 1;
/// Go up to the span given.
pub const RKO_STEP_UP: u32 = 2;
/// Go down to the span given.
pub const RKO_STEP_DOWN: u32 = 3;
/// The resistance is beyond the highest span.
pub const RKO_STEP_BEYOND_HIGHEST: u32 = 4;

/// What one span would make of a part.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct rko_assessment {
    /// What a part of exactly the nominal value shows, in ohm; the full scale where it is over-range.
    pub expected_ohm: f64,
    /// The expanded uncertainty in ohm, at a coverage probability of 0.95, of one reading of the nominal value, from the
    /// meter alone.
    pub expanded_ohm: f64,
    /// Test uncertainty ratio: the width of the tolerance over that of the coverage interval.
    pub tur: f64,
    /// The probability that a part that reads exactly the nominal value conforms.
    pub conformance_probability_at_centre: f64,
    /// How many times as wide as the chosen span's the expanded uncertainty is; 0 unless `RKO_OUTCOME_WIDER`.
    pub wider_factor: f64,
    /// What is shown, in steps of the display; the full scale's where it is over-range.
    pub counts_used: i64,
    /// 1 if every part up to the upper limit is shown, else 0.
    pub holds: u32,
    /// 1 if a part can be accepted here at a risk of 5 %, else 0.
    pub accepts_some: u32,
    /// `RKO_OUTCOME_CHOSEN`, `RKO_OUTCOME_OVER_RANGE` or `RKO_OUTCOME_WIDER`.
    pub outcome: u32,
    /// 0.
    pub reserved: u32,
    /// What a part of exactly the nominal value shows, with a closing zero.
    pub expected_display: [c_char; 32],
}

const _: () = {
    assert!(size_of::<rko_assessment>() == 96);
    assert!(offset_of!(rko_assessment, expected_ohm) == 0);
    assert!(offset_of!(rko_assessment, expanded_ohm) == 8);
    assert!(offset_of!(rko_assessment, tur) == 16);
    assert!(offset_of!(rko_assessment, conformance_probability_at_centre) == 24);
    assert!(offset_of!(rko_assessment, wider_factor) == 32);
    assert!(offset_of!(rko_assessment, counts_used) == 40);
    assert!(offset_of!(rko_assessment, holds) == 48);
    assert!(offset_of!(rko_assessment, accepts_some) == 52);
    assert!(offset_of!(rko_assessment, outcome) == 56);
    assert!(offset_of!(rko_assessment, reserved) == 60);
    assert!(offset_of!(rko_assessment, expected_display) == 64);
};

impl From<Assessment> for rko_assessment {
    fn from(assessment: Assessment) -> rko_assessment {
        let mut expected_display = [0; 32];
        for (place, byte) in expected_display.iter_mut().zip(assessment.expected_display.as_bytes()) {
            *place = *byte as c_char;
        }
        let (outcome, wider_factor) = match assessment.outcome {
            Lot::Chosen => (RKO_OUTCOME_CHOSEN, 0.0),
            Lot::Wider { factor } => (RKO_OUTCOME_WIDER, factor),
            _ => (RKO_OUTCOME_OVER_RANGE, 0.0),
        };
        rko_assessment {
            expected_ohm: assessment.expected_ohm,
            expanded_ohm: assessment.expanded_ohm,
            tur: assessment.tur,
            conformance_probability_at_centre: assessment.conformance_probability_at_centre,
            wider_factor,
            counts_used: assessment.counts_used,
            holds: u32::from(assessment.holds),
            accepts_some: u32::from(assessment.accepts_some),
            outcome,
            reserved: 0,
            expected_display,
        }
    }
}

/// The span of a meter for a part: of the spans that show every conforming part, the one with the least expanded
/// uncertainty; and what every span would make of the part.
///
/// Given: `spans`, `count` of them, at most `RKO_SPANS_MOST`, from the lowest to the highest; `nominal_ohm`, in (0, 1e15];
/// `tolerance`, a fraction in (0, 1); `meter_temperature_c`, or null for a meter within its temperature band.
/// Written: `assessments`, `count` of them; `chosen`, the index of the chosen span, from 0.
/// Statuses: those of `rko_span_check`; `RKO_EMPTY`, `RKO_CONTRADICTION` (order of the spans), `RKO_WRONG_COUNT`,
/// `RKO_NO_SPAN_HOLDS`, `RKO_MISSING_ARGUMENT`, `RKO_NULL_POINTER`.
#[unsafe(no_mangle)]
#[allow(clippy::too_many_arguments)]
pub unsafe extern "C" fn rko_meter_choose(
    spans: *const rko_span,
    count: usize,
    nominal_ohm: f64,
    tolerance: f64,
    meter_temperature_c: *const f64,
    assessments: *mut rko_assessment,
    chosen: *mut usize,
    detail: *mut rko_detail,
) -> rko_status {
    unsafe {
        one(chosen, 7, detail, || {
            let mut room = Spans::ROOM;
            let spans = room.fill(spans, count, 1)?;
            let output = items_mut(assessments, count, 6)?;
            let choice = Meter::new(spans)?.choose_at(nominal_ohm, tolerance, meter_temperature_c.as_ref().copied())?;
            for index in 0..count {
                choice.assessment(index)?;
            }
            for (index, place) in output.iter_mut().enumerate() {
                *place = choice.assessment(index)?.into();
            }
            Ok(choice.index())
        })
    }
}

twins! {
    /// The next span after a reading: up after over-range, down where a lower span shows it as well, else stay.
    ///
    /// Given: `spans`, `count` of them, at most `RKO_SPANS_MOST`, from the lowest to the highest; `index`, the span that the
    /// reading was taken on, from 0; `reading`.
    /// Written: `step`, one of `RKO_STEP_...`; `next`, the index of the span to go to, `index` itself for the others.
    /// Statuses: those of `rko_span_check`; `RKO_EMPTY`, `RKO_CONTRADICTION`, `RKO_WRONG_COUNT`, `RKO_NO_SUCH_SPAN`,
    /// `RKO_BEYOND_FULL_SCALE`, `RKO_UNKNOWN_CODE`, `RKO_NULL_POINTER`.
    fn rko_meter_next_span = rko_meter_next_span_f32(
        spans: *const rko_span,
        count: usize,
        index: usize,
        reading: *const rko_reading,
        step: *mut u32,
        next: *mut usize,
        detail: *mut rko_detail,
    ) {
        answer(detail, || {
            let mut room = Spans::ROOM;
            let meter = Meter::new(room.fill(spans, count, 1)?)?;
            let (step, next) = (place(step, 5)?, place(next, 6)?);
            let reading = item(reading, 4)?.to_core(meter.span(index)?, 4)?;
            let (code, to) = next_step(meter.next_span(index, &reading)?, index);
            step.write(code);
            next.write(to);
            Ok(())
        })
    }
}

fn next_step(step: Step, index: usize) -> (u32, usize) {
    match step {
        Step::Stay => (RKO_STEP_STAY, index),
        Step::Up(to) => (RKO_STEP_UP, to),
        Step::Down(to) => (RKO_STEP_DOWN, to),
        Step::BeyondHighest => (RKO_STEP_BEYOND_HIGHEST, index),
    }
}
