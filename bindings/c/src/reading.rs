//! Readings: display texts and replies over the wire.

use core::ffi::c_char;
use core::mem::{offset_of, size_of};

use reckohm::meter::{MeterError, Reading, Span};
use reckohm::number::{Detail, Kind};

use crate::answer::{DoorError, Failure, Outcome, one};
use crate::array::{Results, array, twice};
use crate::detail::{rko_detail, rko_status};
use crate::pointer::{item, items};
use crate::span::rko_span;

/// One reading on one span.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct rko_reading {
    /// The resistance in ohm, with its sign. Of an over-range reading it is the span's full scale, a bound that the
    /// resistance lies beyond and not its value.
    pub ohm: f64,
    /// How many display steps it is, with its sign; 0 for a reply over the wire and for over-range.
    pub counts: i64,
    /// 1 if the resistance is beyond the span: there is no value. Else 0.
    pub over: u32,
    /// 1 if a minus was shown; legal on a short, and not distinguishable from zero. Else 0.
    pub negative: u32,
}

const _: () = {
    assert!(size_of::<rko_reading>() == 24);
    assert!(offset_of!(rko_reading, ohm) == 0);
    assert!(offset_of!(rko_reading, counts) == 8);
    assert!(offset_of!(rko_reading, over) == 16);
    assert!(offset_of!(rko_reading, negative) == 20);
};

impl rko_reading {
    pub(crate) fn to_core(self, span: &Span, argument: u16) -> Outcome<Reading> {
        for flag in [self.over, self.negative] {
            if flag > 1 {
                return Err(DoorError::UnknownCode { argument, given: f64::from(flag) }.into());
            }
        }
        Ok(span.reading(self.ohm, self.counts, self.over == 1, self.negative == 1)?)
    }
}

impl From<Reading> for rko_reading {
    fn from(reading: Reading) -> rko_reading {
        rko_reading {
            ohm: reading.ohm(),
            counts: reading.counts(),
            over: u32::from(reading.over()),
            negative: u32::from(reading.negative()),
        }
    }
}

type Read = fn(&Span, &[u8]) -> Result<Reading, MeterError>;

unsafe fn read_one(
    read: Read,
    span: *const rko_span,
    text: (*const c_char, usize),
    reading: *mut rko_reading,
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

unsafe fn read_each(
    read: Read,
    span: *const rko_span,
    (bytes, offsets): (*const c_char, *const i64),
    results: Results<rko_reading>,
) -> rko_status {
    let count = results.count;
    let asked = |(span, bytes, offsets): (Span, &[u8], &[i64]), index: usize| -> Outcome<rko_reading> {
        let ends = offsets.get(index..).and_then(|rest| rest.first_chunk::<2>());
        let text = ends.and_then(|[from, to]| bytes.get(*from as usize..*to as usize)).unwrap_or_default();
        read(&span, text).map(rko_reading::from).map_err(offset_as_lower)
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

/// What a display text means on a span: digits as the display shows them, over-range marks of that span, a minus, a decimal
/// comma, a letter k, M or G behind.
///
/// Given: `span`; `text`, at most 32 bytes, and its `length`.
/// Written: `reading`.
/// Statuses: those of `rko_span_check`; `RKO_EMPTY`, `RKO_TEXT_TOO_LONG`, `RKO_UNEXPECTED_BYTE`, `RKO_MISSING_DIGITS`,
/// `RKO_MARK_NOT_OF_SPAN`, `RKO_MISSING_POINT`, `RKO_TOO_FEW_DECIMALS`, `RKO_TOO_MANY_DECIMALS`, `RKO_TOO_MANY_DIGITS`,
/// `RKO_OFF_GRID`, `RKO_BEYOND_FULL_SCALE`, `RKO_AMBIGUOUS_TEXT`; `RKO_NULL_POINTER`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rko_span_read(
    span: *const rko_span,
    text: *const c_char,
    length: usize,
    reading: *mut rko_reading,
    detail: *mut rko_detail,
) -> rko_status {
    unsafe { read_one(Span::read, span, (text, length), reading, detail) }
}

/// `rko_span_read` for each of `count` texts on one span.
///
/// Given: `bytes`, the texts one after another; `offsets`, `count + 1` of them, ascending from 0 or more: text i is the bytes
/// from `offsets[i]` to before `offsets[i + 1]`. In the detail of a bad element `index` is the element, and the byte is
/// `lower` for `RKO_UNEXPECTED_BYTE`, `RKO_MISSING_DIGITS` and `RKO_MARK_NOT_OF_SPAN`.
/// Statuses: those of `rko_span_read`, and `RKO_CONTRADICTION` for offsets that do not ascend.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rko_span_read_n(
    span: *const rko_span,
    bytes: *const c_char,
    offsets: *const i64,
    count: usize,
    readings: *mut rko_reading,
    valid: *mut u8,
    detail: *mut rko_detail,
) -> rko_status {
    let results = Results { count, output: readings, position: 5, valid, detail };
    unsafe { read_each(Span::read, span, (bytes, offsets), results) }
}

/// What a meter's answer over the wire means on a span, in ohm, in the numeric forms NR1, NR2 and NR3; 9.9E37 is over-range.
///
/// Given: `span`; `text`, at most 128 bytes, and its `length`.
/// Written: `reading`.
/// Statuses: those of `rko_span_check`; `RKO_EMPTY`, `RKO_TEXT_TOO_LONG`, `RKO_UNEXPECTED_BYTE`, `RKO_MISSING_DIGITS`,
/// `RKO_RESULT_OUT_OF_RANGE`, `RKO_NO_READING`, `RKO_UNDEFINED_MARK`, `RKO_BEYOND_FULL_SCALE`; `RKO_NULL_POINTER`.
/// Source: IEEE 488.2, SCPI-1999, as reprinted in programming guides of several instruments.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rko_span_read_reply(
    span: *const rko_span,
    text: *const c_char,
    length: usize,
    reading: *mut rko_reading,
    detail: *mut rko_detail,
) -> rko_status {
    unsafe { read_one(Span::read_reply, span, (text, length), reading, detail) }
}

/// `rko_span_read_reply` for each of `count` texts on one span, given as for `rko_span_read_n`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rko_span_read_reply_n(
    span: *const rko_span,
    bytes: *const c_char,
    offsets: *const i64,
    count: usize,
    readings: *mut rko_reading,
    valid: *mut u8,
    detail: *mut rko_detail,
) -> rko_status {
    let results = Results { count, output: readings, position: 5, valid, detail };
    unsafe { read_each(Span::read_reply, span, (bytes, offsets), results) }
}
