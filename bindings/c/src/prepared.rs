//! Prepared spans: what a reading asks of a span, worked out once, for firmware.

use core::ffi::c_char;

use reckohm::meter::{PreparedParts, PreparedSpan};
use reckohm::number::Real;

use crate::answer::{DoorError, Outcome, one};
use crate::detail::rko_detail;
use crate::pointer::{item, items};
use crate::reading::rko_reading;
use crate::span::{OfCaller, rko_span};
use crate::twins::{twin_structs, twins};

twin_structs! {
    /// A span with everything worked out that a reading asks of it, for processors on which each instruction counts.
    ///
    /// `rko_span_prepare` fills one. Its numbers never change: firmware may hold them as constants that a program on the desk
    /// has printed, and then links nothing of what checks a span. It is taken as it stands; one that something has written over
    /// gives `RKO_CORRUPT_MEMORY`, or readings of another span.
    struct rko_prepared_span = rko_prepared_span_f32 [48, 32] {
        /// The part of the accuracy clause that grows with the reading, as a fraction of it.
        fraction_of_reading: f64 [0, 0],
        /// What the accuracy clause comes to at a reading of 0, in ohm.
        fixed_ohm: f64 [8, 4],
        /// By what factor the clause is wider at the meter's temperature: 1 within its band.
        widening: f64 [16, 8],
        /// The first value in ohm that the display no longer shows.
        full_scale_ohm: f64 [24, 12],
        /// The same in steps of the display.
        full_scale_counts: u32 [32, 16],
        /// The step is so many times a power of ten: 1, 2 or 5.
        step_digits: u8 [36, 20],
        /// That power of ten, of ohm.
        step_power: i8 [37, 21],
        /// The power of ten of the display's unit, of ohm.
        unit_power: i8 [38, 22],
        /// The power of ten of the first digit of the largest value shown, of ohm.
        leading_power: i8 [39, 23],
        /// How over-range is shown: a sum of `RKO_MARK_...`.
        marks: u32 [40, 24],
        /// Must be 0.
        reserved: u32 [44, 28],
    }
}

/// A prepared span of a caller's, in either precision.
trait Prepared: Copy {
    type Real: Real;

    fn of(prepared: PreparedSpan<Self::Real>) -> Self;

    /// The prepared span as it stands.
    fn restored(self) -> Outcome<PreparedSpan<Self::Real>>;
}

macro_rules! of_the_core {
    ($($real:ident: $prepared:ident;)+) => {$(
        impl Prepared for $prepared {
            type Real = $real;

            fn of(prepared: PreparedSpan<$real>) -> $prepared {
                let parts = prepared.parts();
                $prepared {
                    fraction_of_reading: parts.fraction_of_reading,
                    fixed_ohm: parts.fixed_ohm,
                    widening: parts.widening,
                    full_scale_ohm: parts.full_scale_ohm,
                    full_scale_counts: parts.counts,
                    step_digits: parts.step_digits,
                    step_power: parts.step_power,
                    unit_power: parts.unit_power,
                    leading_power: parts.leading_power,
                    marks: u32::from(parts.marks),
                    reserved: 0,
                }
            }

            // Inlined, so that small processors do not copy what comes out from one stack frame to the next.
            #[inline(always)]
            fn restored(self) -> Outcome<PreparedSpan<$real>> {
                let parts = PreparedParts {
                    fraction_of_reading: self.fraction_of_reading,
                    fixed_ohm: self.fixed_ohm,
                    widening: self.widening,
                    full_scale_ohm: self.full_scale_ohm,
                    counts: self.full_scale_counts,
                    step_digits: self.step_digits,
                    step_power: self.step_power,
                    unit_power: self.unit_power,
                    leading_power: self.leading_power,
                    marks: u8::try_from(self.marks).unwrap_or(u8::MAX),
                };
                PreparedSpan::restored(parts).filter(|_| self.reserved == 0).ok_or(CORRUPT.into())
            }
        }
    )+};
}

of_the_core! {
    f64: rko_prepared_span;
    f32: rko_prepared_span_f32;
}

const CORRUPT: DoorError = DoorError::CorruptMemory { argument: 1 };

twins! {
    /// Works out what readings ask of a span.
    ///
    /// Given: `span`; `meter_temperature_c`, in [-60, 120] degrees Celsius, or null for a meter within its band.
    /// Written: `prepared`.
    /// Statuses: those of `rko_span_check`; `RKO_MISSING_ARGUMENT` outside the band without a temperature coefficient;
    /// `RKO_CONTRADICTION` where a value shown is not one rounding of whole numbers that the number type holds: in float with
    /// a full scale of more than 2^24 times the power of ten of the step, or with a step above 1e10 ohm; in double never.
    fn rko_span_prepare = rko_span_prepare_f32(
        span: *const rko_span,
        meter_temperature_c: *const f64,
        prepared: *mut rko_prepared_span,
        detail: *mut rko_detail,
    ) {
        one(prepared, 3, detail, || {
            let span = item(span, 1)?.to_core(1)?;
            Ok(Prepared::of(span.prepared(meter_temperature_c.as_ref().copied())?))
        })
    }

    /// What a display text means on a prepared span: the reading of `rko_span_read`, to the bit.
    ///
    /// Given: `prepared`; `text`, at most 32 bytes, and its `length`.
    /// Written: `reading`.
    /// Statuses: those that `rko_span_read` has of a text, where it has them. The detail holds the byte's offset as its index and
    /// no other number: `rko_span_read` says what else the text could be. `RKO_NULL_POINTER`, `RKO_CORRUPT_MEMORY`.
    fn rko_prepared_span_read = rko_prepared_span_read_f32(
        prepared: *const rko_prepared_span,
        text: *const c_char,
        length: usize,
        reading: *mut rko_reading,
        detail: *mut rko_detail,
    ) {
        one(reading, 4, detail, || {
            let prepared = item(prepared, 1)?.restored()?;
            let reading = prepared.read(items(text.cast::<u8>(), length, 2)?)?;
            if reading.ohm().finite() { Ok(reading.into()) } else { Err(CORRUPT.into()) }
        })
    }

    /// The accuracy clause of a prepared span at a reading: the half-width of `rko_span_clause_half_width_ohm`, to the bit.
    ///
    /// Given: `prepared`; `ohm`, finite.
    /// Written: `half_width_ohm`.
    /// Statuses: `RKO_NOT_FINITE`; `RKO_NULL_POINTER`, `RKO_CORRUPT_MEMORY`.
    fn rko_prepared_span_clause_half_width_ohm = rko_prepared_span_clause_half_width_ohm_f32(
        prepared: *const rko_prepared_span,
        ohm: f64,
        half_width_ohm: *mut f64,
        detail: *mut rko_detail,
    ) {
        one(half_width_ohm, 3, detail, || {
            let half_width_ohm = item(prepared, 1)?.restored()?.clause_half_width_ohm(ohm)?;
            if half_width_ohm.finite() && half_width_ohm >= 0.0 { Ok(half_width_ohm) } else { Err(CORRUPT.into()) }
        })
    }
}
