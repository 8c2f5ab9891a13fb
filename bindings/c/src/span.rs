//! Spans of a meter.

use core::ffi::c_char;
use core::mem::MaybeUninit;

use reckohm::meter::{Clause, Marks, Meter, MeterError, Span};
use reckohm::number::Real;

use crate::answer::{DoorError, Outcome, answer, one};
use crate::bytes::write_bytes;
use crate::detail::{rko_detail, rko_status};
use crate::pointer::{item, items, items_mut, place};
use crate::twins::{twin_structs, twins};

/// Over-range is shown as a lone "1" at the left.
pub const RKO_MARK_ONE_ALONE: u32 = 1;
/// Over-range is shown as "OL" in any of its spellings.
pub const RKO_MARK_OL: u32 = 2;
/// Over-range is shown by blank digits.
pub const RKO_MARK_BLANK: u32 = 4;
/// Over-range is shown by dashes.
pub const RKO_MARK_DASHES: u32 = 8;

/// The clause is an expanded uncertainty with the coverage factor given, not a limit.
pub const RKO_SPAN_COVERAGE: u32 = 1;
/// The rounding by the display's step comes on top of the counts.
pub const RKO_SPAN_STEP_OUTSIDE_COUNTS: u32 = 2;
/// The clause has a temperature coefficient.
pub const RKO_SPAN_HAS_TEMPERATURE_COEFFICIENT: u32 = 4;
/// The clause holds only after the meter was zeroed with its leads shorted.
pub const RKO_SPAN_ZEROING_REQUIRED: u32 = 8;

/// The most spans that one call takes.
pub const RKO_SPANS_MOST: usize = 16;

twin_structs! {
    /// One setting of a meter, with what its display can show there and how good it is.
    ///
    /// `rko_span_new` fills one with the usual conditions; change members afterwards, and see them checked by `rko_span_check`
    /// or by any call that takes the span.
    struct rko_span = rko_span_f32 [104, 64] {
        /// The first value in ohm that the display no longer shows: 2000 for 2000 counts of 1 ohm. In (0, 1e15].
        full_scale_ohm: f64 [0, 0],
        /// The step of the last digit in ohm: 1, 2 or 5 times a power of ten.
        resolution_ohm: f64 [8, 4],
        /// The unit that the display shows in, in ohm: 0.001, 1, 1e3, 1e6 or 1e9.
        display_unit_ohm: f64 [16, 8],
        /// The part of the accuracy clause that grows with the reading, a fraction in [0, 1).
        fraction_of_reading: f64 [24, 12],
        /// The part that is a fraction of full scale, in [0, 1).
        fraction_of_span: f64 [32, 16],
        /// The part in counts, multiples of the resolution, in [0, 1e6].
        accuracy_counts: f64 [40, 20],
        /// The coverage factor of the clause, in (0, 10]; read only with `RKO_SPAN_COVERAGE`.
        coverage_factor: f64 [48, 24],
        /// The lowest meter temperature at which the clause holds as it stands, degrees Celsius, in [-60, 120].
        temperature_lower_c: f64 [56, 28],
        /// The highest one.
        temperature_upper_c: f64 [64, 32],
        /// How much wider the clause is, as a part of itself, for each kelvin outside, in [0, 1]; read only with
        /// `RKO_SPAN_HAS_TEMPERATURE_COEFFICIENT`.
        temperature_coefficient_per_kelvin: f64 [72, 36],
        /// How over-range is shown: a sum of `RKO_MARK_...`.
        marks: u32 [80, 40],
        /// A sum of `RKO_SPAN_...`.
        flags: u32 [84, 44],
        /// What stands beside the meter's knob: 1 to 15 bytes of UTF-8 and a closing zero.
        label: [c_char; 16] [88, 48],
    }
}

fn marks(bits: u32) -> Result<Marks, MeterError> {
    Marks::from_bits(u8::try_from(bits).unwrap_or(u8::MAX))
}

fn text(bytes: &[u8]) -> Result<&str, MeterError> {
    core::str::from_utf8(bytes).map_err(|error| {
        let at = error.valid_up_to();
        MeterError::LabelByte { at: at as u64, byte: bytes.get(at).copied().unwrap_or_default() }
    })
}

impl rko_span {
    /// All zero: no span.
    pub(crate) const NONE: rko_span = rko_span {
        full_scale_ohm: 0.0,
        resolution_ohm: 0.0,
        display_unit_ohm: 0.0,
        fraction_of_reading: 0.0,
        fraction_of_span: 0.0,
        accuracy_counts: 0.0,
        coverage_factor: 0.0,
        temperature_lower_c: 0.0,
        temperature_upper_c: 0.0,
        temperature_coefficient_per_kelvin: 0.0,
        marks: 0,
        flags: 0,
        label: [0; 16],
    };
}

/// A span of a caller's, in either precision.
pub(crate) trait OfCaller: Copy {
    /// What its numbers are.
    type Real: Real;

    /// The span as the core has it; `argument` is its position.
    fn to_core(self, argument: u16) -> Outcome<Span<Self::Real>>;
}

macro_rules! of_the_core {
    ($($real:ident: $span:ident;)+) => {$(
        impl OfCaller for $span {
            type Real = $real;

            fn to_core(self, argument: u16) -> Outcome<Span<$real>> {
                const ALL: u32 = RKO_SPAN_COVERAGE
                    | RKO_SPAN_STEP_OUTSIDE_COUNTS
                    | RKO_SPAN_HAS_TEMPERATURE_COEFFICIENT
                    | RKO_SPAN_ZEROING_REQUIRED;
                if self.flags & !ALL != 0 {
                    return Err(DoorError::UnknownCode { argument, given: f64::from(self.flags) }.into());
                }
                let has = |flag: u32| self.flags & flag != 0;
                let mut clause = Clause::new(self.fraction_of_reading, self.accuracy_counts)?
                    .with_fraction_of_span(self.fraction_of_span)?
                    .with_temperature_band_c(self.temperature_lower_c, self.temperature_upper_c)?;
                if has(RKO_SPAN_COVERAGE) {
                    clause = clause.with_coverage_factor(self.coverage_factor)?;
                }
                if has(RKO_SPAN_STEP_OUTSIDE_COUNTS) {
                    clause = clause.with_step_outside_counts();
                }
                if has(RKO_SPAN_HAS_TEMPERATURE_COEFFICIENT) {
                    clause = clause.with_temperature_coefficient_per_kelvin(self.temperature_coefficient_per_kelvin)?;
                }
                if has(RKO_SPAN_ZEROING_REQUIRED) {
                    clause = clause.with_zeroing_required();
                }
                let label = self.label.map(|byte| byte as u8);
                let length = label.iter().position(|byte| *byte == 0).unwrap_or(label.len());
                let label = text(label.get(..length).unwrap_or_default())?;
                let Self { full_scale_ohm, resolution_ohm, display_unit_ohm, .. } = self;
                Ok(Span::new(label, full_scale_ohm, resolution_ohm, display_unit_ohm, marks(self.marks)?, clause)?)
            }
        }

        impl From<&Span<$real>> for $span {
            fn from(span: &Span<$real>) -> $span {
                let clause = span.clause();
                let bit = |yes: bool, flag: u32| if yes { flag } else { 0 };
                let mut label = [0; 16];
                for (place, byte) in label.iter_mut().zip(span.label().as_bytes()) {
                    *place = *byte as c_char;
                }
                let (temperature_lower_c, temperature_upper_c) = clause.temperature_band_c();
                let coefficient = clause.temperature_coefficient_per_kelvin();
                $span {
                    full_scale_ohm: span.full_scale_ohm(),
                    resolution_ohm: span.step_ohm(),
                    display_unit_ohm: span.display_unit_ohm(),
                    fraction_of_reading: clause.fraction_of_reading(),
                    fraction_of_span: clause.fraction_of_span(),
                    accuracy_counts: clause.counts(),
                    coverage_factor: clause.coverage_factor().unwrap_or(0.0),
                    temperature_lower_c,
                    temperature_upper_c,
                    temperature_coefficient_per_kelvin: coefficient.unwrap_or(0.0),
                    marks: u32::from(span.marks().bits()),
                    flags: bit(clause.coverage_factor().is_some(), RKO_SPAN_COVERAGE)
                        | bit(!clause.step_included(), RKO_SPAN_STEP_OUTSIDE_COUNTS)
                        | bit(coefficient.is_some(), RKO_SPAN_HAS_TEMPERATURE_COEFFICIENT)
                        | bit(clause.zeroing_required(), RKO_SPAN_ZEROING_REQUIRED),
                    label,
                }
            }
        }
    )+};
}

of_the_core! {
    f64: rko_span;
    f32: rko_span_f32;
}

/// Room on the stack for the spans of a caller as the core has them. It is filled where it lies: it takes some kilobytes, and
/// is not to be moved about on a small processor's stack.
pub(crate) struct Spans<R>([MaybeUninit<Span<R>>; RKO_SPANS_MOST]);

impl<R: Real> Spans<R> {
    /// Room for as many spans as a call takes.
    pub(crate) const ROOM: Spans<R> = Spans([const { MaybeUninit::uninit() }; RKO_SPANS_MOST]);

    /// Takes over the spans at this pointer; `argument` is its position.
    pub(crate) unsafe fn fill<S: OfCaller<Real = R>>(
        &mut self,
        spans: *const S,
        count: usize,
        argument: u16,
    ) -> Outcome<&[Span<R>]> {
        if count > RKO_SPANS_MOST {
            return Err(DoorError::CountTooLarge { count: count as f64, most: RKO_SPANS_MOST as f64 }.into());
        }
        // SAFETY: the caller of this door promises that `count` spans can be read.
        let given = unsafe { items(spans, count, argument)? };
        for (place, span) in self.0.iter_mut().zip(given) {
            place.write(span.to_core(argument)?);
        }
        // SAFETY: `count` of them, no more than there is room for, have just been written.
        Ok(unsafe { core::slice::from_raw_parts(self.0.as_ptr().cast(), count) })
    }
}

twins! {
    /// A span with the usual conditions: the clause is a limit, the display's step is inside its counts, it holds from 18 to 28
    /// degrees Celsius (common practice), and there is no part of full scale.
    ///
    /// Given: `label`, 1 to 15 bytes of UTF-8, and `label_length`; `full_scale_ohm`, `resolution_ohm`, `display_unit_ohm`,
    /// `marks`, `fraction_of_reading`, `accuracy_counts`, as the members of `rko_span`.
    /// Written: `span`.
    /// Statuses: `RKO_OUT_OF_RANGE`, `RKO_NOT_FINITE`, `RKO_EMPTY`, `RKO_TEXT_TOO_LONG`, `RKO_UNEXPECTED_BYTE`,
    /// `RKO_CONTRADICTION`, `RKO_MISSING_ARGUMENT`, `RKO_UNKNOWN_RESOLUTION`, `RKO_UNKNOWN_DISPLAY_UNIT`, `RKO_UNKNOWN_MARKS`,
    /// `RKO_NULL_POINTER`.
    /// Source: the meter's specification.
    fn rko_span_new = rko_span_new_f32(
        label: *const c_char,
        label_length: usize,
        full_scale_ohm: f64,
        resolution_ohm: f64,
        display_unit_ohm: f64,
        marks_of_span: u32,
        fraction_of_reading: f64,
        accuracy_counts: f64,
        span: *mut rko_span,
        detail: *mut rko_detail,
    ) {
        one(span, 9, detail, || {
            let label = text(items(label.cast::<u8>(), label_length, 1)?)?;
            let clause = Clause::new(fraction_of_reading, accuracy_counts)?;
            let marks = marks(marks_of_span)?;
            Ok((&Span::new(label, full_scale_ohm, resolution_ohm, display_unit_ohm, marks, clause)?).into())
        })
    }

    /// Whether a span is legal: the answer is the status.
    ///
    /// Given: `span`.
    /// Statuses: those of `rko_span_new`, and `RKO_UNKNOWN_CODE` for an unknown flag.
    fn rko_span_check = rko_span_check_f32(span: *const rko_span, detail: *mut rko_detail) {
        answer(detail, || item(span, 1)?.to_core(1).map(|_| ()))
    }

    /// The full scale of a span in steps of its display.
    ///
    /// Given: `span`.
    /// Written: `counts`.
    /// Statuses: those of `rko_span_check`.
    fn rko_span_full_scale_counts = rko_span_full_scale_counts_f32(
        span: *const rko_span,
        counts: *mut i64,
        detail: *mut rko_detail,
    ) {
        one(counts, 2, detail, || Ok(item(span, 1)?.to_core(1)?.full_scale_counts()))
    }

    /// The accuracy clause of a span at a reading.
    ///
    /// Given: `span`; `ohm`, finite; `meter_temperature_c`, in [-60, 120] degrees Celsius, or null for a meter within its band.
    /// Written: `half_width_ohm`.
    /// Statuses: those of `rko_span_check`; `RKO_MISSING_ARGUMENT` outside the band without a temperature coefficient.
    fn rko_span_clause_half_width_ohm = rko_span_clause_half_width_ohm_f32(
        span: *const rko_span,
        ohm: f64,
        meter_temperature_c: *const f64,
        half_width_ohm: *mut f64,
        detail: *mut rko_detail,
    ) {
        one(half_width_ohm, 4, detail, || {
            let temperature = meter_temperature_c.as_ref().copied();
            Ok(item(span, 1)?.to_core(1)?.clause_half_width_ohm(ohm, temperature)?)
        })
    }

    /// What the display of a span shows for a resistance.
    ///
    /// Given: `span`; `ohm`, finite; `buffer`, of `capacity` bytes; 25 hold every such text.
    /// Written: the text with a closing zero.
    /// Statuses: those of `rko_span_check`; `RKO_BEYOND_FULL_SCALE` if the span has no mark; `RKO_BUFFER_TOO_SMALL`.
    fn rko_span_display_text = rko_span_display_text_f32(
        span: *const rko_span,
        ohm: f64,
        buffer: *mut c_char,
        capacity: usize,
        detail: *mut rko_detail,
    ) {
        answer(detail, || {
            let buffer = place(buffer, 3)?;
            write_bytes(item(span, 1)?.to_core(1)?.display_text(ohm)?.as_bytes(), buffer, capacity)
        })
    }
}

unsafe fn example(
    meter: Meter<'_>,
    spans: *mut rko_span,
    capacity: usize,
    count: *mut usize,
    detail: *mut rko_detail,
) -> rko_status {
    // SAFETY: as the caller of this door promises.
    unsafe {
        one(count, 3, detail, || {
            let needed = meter.spans().len();
            if needed > capacity {
                return Err(DoorError::BufferTooSmall { needed: needed as u64, capacity: capacity as f64 }.into());
            }
            for (place, span) in items_mut(spans, needed, 1)?.iter_mut().zip(meter.spans()) {
                *place = span.into();
            }
            Ok(needed)
        })
    }
}

/// An invented hand-held meter of 2000 counts, for demonstrations.
///
/// Given: `spans`, room for `capacity` of them; `RKO_SPANS_MOST` is enough.
/// Written: `spans`, from the lowest to the highest, and their `count`.
/// Statuses: `RKO_BUFFER_TOO_SMALL`, `RKO_NULL_POINTER`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rko_meter_example_hand_held(
    spans: *mut rko_span,
    capacity: usize,
    count: *mut usize,
    detail: *mut rko_detail,
) -> rko_status {
    unsafe { example(Meter::example_hand_held(), spans, capacity, count, detail) }
}

/// An invented bench meter of 5 1/2 digits, for demonstrations.
///
/// Given: `spans`, room for `capacity` of them; `RKO_SPANS_MOST` is enough.
/// Written: `spans`, from the lowest to the highest, and their `count`.
/// Statuses: `RKO_BUFFER_TOO_SMALL`, `RKO_NULL_POINTER`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rko_meter_example_bench(
    spans: *mut rko_span,
    capacity: usize,
    count: *mut usize,
    detail: *mut rko_detail,
) -> rko_status {
    unsafe { example(Meter::example_bench(), spans, capacity, count, detail) }
}
