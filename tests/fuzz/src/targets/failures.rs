//! Failures made again from any plain numbers: no sentence panics, and what an area takes as its own it gives back.

use core::ffi::c_char;

use reckohm::distribution::DistributionError;
use reckohm::marking::MarkingError;
use reckohm::measurement::MeasurementError;
use reckohm::meter::{MeterError, Misfit};
use reckohm::number::{Detail, Kind, NumberError, OutOfRange, RANGES, RangeRow};
use reckohm::preferred::PreferredError;
use reckohm::sensor::SensorError;
use reckohm::uncertainty::EstimateError;
use reckohm::verdict::{LimitsError, VerdictError};
use reckohm_c::{RKO_TEXT_CAPACITY, rko_detail, rko_detail_text};

use crate::input::Input;

fn draw(input: &mut Input<'_>) -> Detail {
    let kind = match input.below(4) {
        0 => Kind::from_number(i32::from(input.u16())).unwrap_or(Kind::Empty),
        _ => Kind::ALL[usize::from(input.byte()) % Kind::ALL.len()],
    };
    let row = if input.below(4) == 0 { input.u16() } else { RANGES[input.below(RANGES.len())].number };
    let argument =
        if input.below(4) == 0 { input.u16() } else { u16::from(input.byte()) + 100 * input.below(5) as u16 };
    let (given, lower, upper) = (input.number(), input.number(), input.number());
    let (index, failed) = (input.i64() as u64, input.i64() as u64);
    Detail { row, argument, given, lower, upper, index, failed, ..Detail::new(kind) }
}

/// Made again, shown, and turned into plain numbers that are taken as the same once more.
macro_rules! areas {
    ($detail:ident: $($error:ident,)+) => {$(
        if let Some(error) = $error::from_detail(&$detail) {
            let sentence = error.to_string();
            // A misfit is said with the digits of a display, and no display has 300 of them.
            let most = if Misfit::from_detail(&$detail).is_some() { 5000 } else { RKO_TEXT_CAPACITY };
            assert!((20..most).contains(&sentence.len()), "{sentence}");
            let again = $error::from_detail(&error.detail());
            assert_eq!(again.map(|again| again.to_string()), Some(sentence), "{error:?}");
        }
    )+};
}

/// The sentence at the C door, into room of any size: all of it or nothing.
fn sentence(detail: Detail, capacity: usize) {
    let Detail { kind, row, argument, given, lower, upper, index, failed } = detail;
    let of = rko_detail { given, lower, upper, index, failed, status: kind.number(), row, argument };
    let mut room = [0x5a_u8; 2 * RKO_TEXT_CAPACITY];
    let capacity = capacity.min(room.len());
    let mut why = of;
    // SAFETY: both structs and `capacity` bytes are there.
    let status = unsafe { rko_detail_text(&of, room.as_mut_ptr().cast::<c_char>(), capacity, &mut why) };
    if status == 0 {
        let end = room.iter().position(|byte| *byte == 0).expect("a closing zero");
        assert!(end < capacity && std::str::from_utf8(&room[..end]).is_ok());
        assert!(room[end + 1..].iter().all(|byte| *byte == 0x5a), "written beyond the text");
    } else {
        assert_eq!((status, why.status), (Kind::BufferTooSmall.number(), status));
        assert!(why.index as usize > capacity && room.iter().all(|byte| *byte == 0x5a));
    }
}

/// The plain numbers of a failure, then the room for its sentence.
pub fn target(data: &[u8]) {
    let mut input = Input::new(data);
    let detail = draw(&mut input);
    areas! {
        detail: DistributionError, EstimateError, LimitsError, MarkingError, MeasurementError, MeterError, Misfit,
        NumberError, OutOfRange, PreferredError, SensorError, VerdictError,
    }
    sentence(detail, usize::from(input.u16()) % (2 * RKO_TEXT_CAPACITY));
    let row = RangeRow::from_number(detail.row);
    if let Some(row) = row {
        let within = row.check(detail.given);
        assert_eq!(
            within.is_ok(),
            detail.given >= row.lower && detail.given <= row.upper && !at_open_end(row, detail.given)
        );
    }
    assert_eq!(Kind::from_number(detail.kind.number()), Some(detail.kind));
}

fn at_open_end(row: &RangeRow, x: f64) -> bool {
    (row.lower_open && x == row.lower) || (row.upper_open && x == row.upper)
}
