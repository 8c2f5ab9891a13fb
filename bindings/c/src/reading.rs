//! Readings: display texts and replies over the wire.

use core::ffi::c_char;

use reckohm::meter::{MeterError, Reading, Span};
use reckohm::number::{Detail, Kind};

use crate::answer::{DoorError, Failure, Outcome, one};
use crate::array::{Results, array, twice};
use crate::detail::{rko_detail, rko_status};
use crate::estimate::rko_estimate;
use crate::pointer::{item, items};
use crate::span::{OfCaller, rko_span};
use crate::twins::{twin_structs, twins};

twin_structs! {
    /// One reading on one span.
    struct rko_reading = rko_reading_f32 [24, 24] {
        /// The resistance in ohm, with its sign. Of an over-range reading it is the span's full scale, a bound that the
        /// resistance lies beyond and not its value.
        ohm: f64 [0, 0],
        /// How many display steps it is, with its sign; 0 for a reply over the wire and for over-range.
        counts: i64 [8, 8],
        /// 1 if the resistance is beyond the span: there is no value. Else 0.
        over: u32 [16, 16],
        /// 1 if a minus was shown; legal on a short, and not distinguishable from zero. Else 0.
        negative: u32 [20, 20],
    }
}

macro_rules! of_the_core {
    ($($real:ident: $reading:ident;)+) => {$(
        impl $reading {
            pub(crate) fn to_core(self, span: &Span<$real>, argument: u16) -> Outcome<Reading<$real>> {
                for flag in [self.over, self.negative] {
                    if flag > 1 {
                        return Err(DoorError::UnknownCode { argument, given: f64::from(flag) }.into());
                    }
                }
                Ok(span.reading(self.ohm, self.counts, self.over == 1, self.negative == 1)?)
            }
        }

        impl From<Reading<$real>> for $reading {
            fn from(reading: Reading<$real>) -> $reading {
                $reading {
                    ohm: reading.ohm(),
                    counts: reading.counts(),
                    over: u32::from(reading.over()),
                    negative: u32::from(reading.negative()),
                }
            }
        }
    )+};
}

of_the_core! {
    f64: rko_reading;
    f32: rko_reading_f32;
}

/// A way to read a text on a span.
type Read<R> = fn(&Span<R>, &[u8]) -> Result<Reading<R>, MeterError>;

unsafe fn read_one<S: OfCaller, T: From<Reading<S::Real>>>(
    read: Read<S::Real>,
    span: *const S,
    text: (*const c_char, usize),
    reading: *mut T,
    detail: *mut rko_detail,
) -> rko_status {
    // SAFETY: as the caller of this door promises.
    unsafe {
        one(reading, 4, detail, || {
            let span = item(span, 1)?.to_core(1)?;
            Ok(read(&span, items(text.0.cast::<u8>(), text.1, 2)?)?.into())
        })
    }
}

/// The texts of an array: `offsets` begins each, and ends the one before.
unsafe fn texts<'a>(bytes: *const c_char, offsets: *const i64, count: usize) -> Outcome<(&'a [u8], &'a [i64])> {
    if count == 0 {
        return Ok((&[], &[]));
    }
    // SAFETY: the caller of this door promises `count + 1` offsets, and as many bytes as the last of them says.
    unsafe {
        let offsets = items(offsets, count.saturating_add(1), 3)?;
        let mut before = 0;
        for (index, offset) in offsets.iter().enumerate() {
            if *offset < before {
                return Err(
                    DoorError::Offsets { index: index as u64, given: *offset as f64, before: before as f64 }.into()
                );
            }
            before = *offset;
        }
        Ok((items(bytes.cast::<u8>(), before as usize, 2)?, offsets))
    }
}

/// A text error of an array keeps the byte as the lower end, since the index is the element.
fn offset_as_lower(error: MeterError) -> Failure {
    let Failure(detail) = error.into();
    Failure(match detail.kind {
        Kind::UnexpectedByte | Kind::MissingDigits | Kind::MarkNotOfSpan => {
            Detail { lower: detail.index as f64, ..detail }
        }
        _ => detail,
    })
}

unsafe fn read_each<S: OfCaller, T: From<Reading<S::Real>>>(
    read: Read<S::Real>,
    span: *const S,
    (bytes, offsets): (*const c_char, *const i64),
    results: Results<T>,
) -> rko_status {
    let count = results.count;
    let asked = |(span, bytes, offsets): (Span<S::Real>, &[u8], &[i64]), index: usize| -> Outcome<T> {
        let ends = offsets.get(index..).and_then(|rest| rest.first_chunk::<2>());
        let text = ends.and_then(|[from, to]| bytes.get(*from as usize..*to as usize)).unwrap_or_default();
        read(&span, text).map(T::from).map_err(offset_as_lower)
    };
    // SAFETY: as the caller of this door promises.
    unsafe {
        array(
            results,
            || {
                let (bytes, offsets) = texts(bytes, offsets, count)?;
                Ok((item(span, 1)?.to_core(1)?, bytes, offsets))
            },
            |inputs, output| twice(output, |index| asked(inputs, index)),
            asked,
        )
    }
}

twins! {
    /// What a display text means on a span: digits as the display shows them, over-range marks of that span, a minus, a decimal
    /// comma, a letter k, M or G behind.
    ///
    /// Given: `span`; `text`, at most 32 bytes, and its `length`.
    /// Written: `reading`.
    /// Statuses: those of `rko_span_check`; `RKO_EMPTY`, `RKO_TEXT_TOO_LONG`, `RKO_UNEXPECTED_BYTE`, `RKO_MISSING_DIGITS`,
    /// `RKO_MARK_NOT_OF_SPAN`, `RKO_MISSING_POINT`, `RKO_TOO_FEW_DECIMALS`, `RKO_TOO_MANY_DECIMALS`, `RKO_TOO_MANY_DIGITS`,
    /// `RKO_OFF_GRID`, `RKO_BEYOND_FULL_SCALE`, `RKO_AMBIGUOUS_TEXT`; `RKO_NULL_POINTER`.
    fn rko_span_read = rko_span_read_f32(
        span: *const rko_span,
        text: *const c_char,
        length: usize,
        reading: *mut rko_reading,
        detail: *mut rko_detail,
    ) {
        read_one(Span::read, span, (text, length), reading, detail)
    }

    /// `rko_span_read` for each of `count` texts on one span.
    ///
    /// Given: `bytes`, the texts one after another; `offsets`, `count + 1` of them, ascending from 0 or more: text i is the bytes
    /// from `offsets[i]` to before `offsets[i + 1]`. In the detail of a bad element `index` is the element, and the byte is
    /// `lower` for `RKO_UNEXPECTED_BYTE`, `RKO_MISSING_DIGITS` and `RKO_MARK_NOT_OF_SPAN`.
    /// Statuses: those of `rko_span_read`, and `RKO_CONTRADICTION` for offsets that do not ascend.
    fn rko_span_read_n = rko_span_read_n_f32(
        span: *const rko_span,
        bytes: *const c_char,
        offsets: *const i64,
        count: usize,
        readings: *mut rko_reading,
        valid: *mut u8,
        detail: *mut rko_detail,
    ) {
 let results = Results { count, output: readings, position: 5, valid, detail };
        read_each(Span::read, span, (bytes, offsets), results)
    }

    /// What a meter's answer over the wire means on a span, in ohm, in the numeric forms NR1, NR2 and NR3; 9.9E37 is over-range.
    ///
    /// Given: `span`; `text`, at most 128 bytes, and its `length`.
    /// Written: `reading`.
    /// Statuses: those of `rko_span_check`; `RKO_EMPTY`, `RKO_TEXT_TOO_LONG`, `RKO_UNEXPECTED_BYTE`, `RKO_MISSING_DIGITS`,
    /// `RKO_RESULT_OUT_OF_RANGE`, `RKO_NO_READING`, `RKO_UNDEFINED_MARK`, `RKO_BEYOND_FULL_SCALE`; `RKO_NULL_POINTER`.
    /// Source: IEEE 488.2, SCPI-1999, as reprinted in programming guides of several instruments.
    fn rko_span_read_reply = rko_span_read_reply_f32(
        span: *const rko_span,
        text: *const c_char,
        length: usize,
        reading: *mut rko_reading,
        detail: *mut rko_detail,
    ) {
        read_one(Span::read_reply, span, (text, length), reading, detail)
    }

    /// `rko_span_read_reply` for each of `count` texts on one span, given as for `rko_span_read_n`.
    fn rko_span_read_reply_n = rko_span_read_reply_n_f32(
        span: *const rko_span,
        bytes: *const c_char,
        offsets: *const i64,
        count: usize,
        readings: *mut rko_reading,
        valid: *mut u8,
        detail: *mut rko_detail,
    ) {
 let results = Results { count, output: readings, position: 5, valid, detail };
        read_each(Span::read_reply, span, (bytes, offsets), results)
    }

    /// The estimate that a single reading stands for: its value with the meter's error, as the accuracy clause means it at that
    /// value, and with the step of the display where the clause does not hold it.
    ///
    /// What `rko_measurement_evaluate` makes of the reading where nothing else is set than the meter's temperature, to the bit,
    /// without a budget: all that a small processor needs for a verdict. Nothing is known of the scatter of a single reading:
    /// add it with `rko_estimate_with_type_a`, or with `rko_estimate_with_normal` as it is known from before.
    ///
    /// Given: `span`; `reading`, taken on it; `meter_temperature_c`, in [-60, 120] degrees Celsius, or null for a meter within
    /// its band.
    /// Written: `estimate`, in ohm.
    /// Statuses: those of `rko_span_check`; `RKO_OVER_RANGE_READING`; `RKO_BEYOND_FULL_SCALE` and `RKO_CONTRADICTION` for a
    /// reading of another span; `RKO_MISSING_ARGUMENT` outside the band without a temperature coefficient;
    /// `RKO_RESULT_OUT_OF_RANGE`.
    /// Source: JCGM 100 4.3.7.
    fn rko_span_estimate = rko_span_estimate_f32(
        span: *const rko_span,
        reading: *const rko_reading,
        meter_temperature_c: *const f64,
        estimate: *mut rko_estimate,
        detail: *mut rko_detail,
    ) {
        one(estimate, 4, detail, || {
            let (span, reading) = (item(span, 1)?.to_core(1)?, item(reading, 2)?);
            Ok(span.estimate(&reading.to_core(&span, 2)?, meter_temperature_c.as_ref().copied())?.into())
        })
    }
}
