//! The C door's functions that take bytes, lengths and offsets: each against the core, with what they must not touch kept.
//! Every text lies in memory of exactly its size, so that the address sanitizer sees a byte too many.

use core::ffi::c_char;

use reckohm::marking::{ChipForm, ChipScheme, Colour, Edition, Marking};
use reckohm::meter::{Meter, Reading, Span};
use reckohm::number::Kind;
use reckohm::preferred::Series;
use reckohm_c::*;

use crate::input::Input;

/// A text in memory of its own size.
fn alone(text: &[u8]) -> Box<[u8]> {
    text.into()
}

fn chars(text: &[u8]) -> *const c_char {
    text.as_ptr().cast()
}

const NO_MARKING: rko_marking = rko_marking { nominal_ohm: -1.0, tolerance: -1.0, tcr_ppm_per_kelvin: 77, has: 77 };
const NO_READING: rko_reading = rko_reading { ohm: -1.5, counts: 77, over: 77, negative: 77 };
const NO_DETAIL: rko_detail =
    rko_detail { given: 0.0, lower: 0.0, upper: 0.0, index: 0, failed: 0, status: -1, row: 0, argument: 0 };

/// The answer of a call with one marking as its output.
fn marking(call: impl Fn(*mut rko_marking, *mut rko_detail) -> rko_status, expected: Result<Marking, Kind>) {
    let (mut found, mut detail) = (NO_MARKING, NO_DETAIL);
    let status = call(&mut found, &mut detail);
    assert_eq!((status, detail.status), (expected.map_or_else(Kind::number, |_| 0), status));
    match expected {
        Ok(marking) => {
            assert_eq!(
                (found.nominal_ohm, found.tolerance),
                (marking.nominal_ohm(), marking.tolerance().unwrap_or(0.0))
            );
            assert_eq!(f64::from(found.tcr_ppm_per_kelvin), marking.tcr_ppm_per_kelvin().unwrap_or(0.0));
        }
        Err(_) => assert_eq!(found, NO_MARKING, "written on failure"),
    }
    assert_eq!(call(&mut found, core::ptr::null_mut()), status, "another answer without a detail");
    assert_eq!(call(core::ptr::null_mut(), &mut detail), Kind::NullPointer.number());
}

fn markings(text: &[u8], edition: u32, scheme: u32) {
    let core_edition = u16::try_from(edition).ok().and_then(Edition::from_year);
    let unknown = Err(Kind::UnknownCode);
    // SAFETY: every pointer is to a live value or text, or null.
    unsafe {
        let by_words = core_edition.map_or(unknown, |edition| Marking::from_bands(text, edition).map_err(|e| e.kind()));
        marking(|out, detail| rko_marking_from_bands(chars(text), text.len(), edition, out, detail), by_words);
        let colours: Option<Vec<Colour>> = text.iter().take(7).map(|byte| Colour::from_number(*byte)).collect();
        let by_codes = core_edition.zip(colours).map_or(unknown, |(edition, colours)| {
            Marking::from_band_list(&colours, edition).map_err(|error| error.kind())
        });
        marking(|out, detail| rko_marking_from_band_list(text.as_ptr(), text.len(), edition, out, detail), by_codes);
        let letters = Marking::from_letters(text).map_err(|error| error.kind());
        marking(|out, detail| rko_marking_from_letters(chars(text), text.len(), out, detail), letters);
        let core_scheme = u8::try_from(scheme).ok().and_then(ChipScheme::from_number);
        let chip = if scheme == 0 || core_scheme.is_some() {
            Marking::from_chip(text, core_scheme).map_err(|error| error.kind())
        } else {
            unknown
        };
        marking(|out, detail| rko_marking_from_chip(chars(text), text.len(), scheme, out, detail), chip);
        if let Ok(marking) = letters {
            let given = rko_marking {
                nominal_ohm: marking.nominal_ohm(),
                tolerance: marking.tolerance().unwrap_or(0.0),
                tcr_ppm_per_kelvin: 0,
                has: u32::from(marking.tolerance().is_some()),
            };
            written(&given, &marking, text.len() % 12);
        }
        let mut series = 77;
        let status = rko_preferred_series(chars(text), text.len(), &mut series, core::ptr::null_mut());
        let named = std::str::from_utf8(text).ok().and_then(|name| Series::from_name(name).ok());
        let expected = named.map_or((Kind::UnknownSeries.number(), 77), |series| (0, u32::from(series.count())));
        assert_eq!((status, series), expected);
    }
}

/// A code into room of this size: all of it with a closing zero, or nothing.
fn written(given: &rko_marking, marking: &Marking, capacity: usize) {
    let check = |call: &dyn Fn(*mut c_char) -> rko_status, text: Option<&str>| {
        let mut room = vec![0x5a_u8; capacity].into_boxed_slice();
        let status = call(room.as_mut_ptr().cast());
        match text {
            Some(text) if text.len() < capacity => {
                assert_eq!((status, &room[..text.len()], room[text.len()]), (0, text.as_bytes(), 0));
                assert!(room[text.len() + 1..].iter().all(|byte| *byte == 0x5a));
            }
            text => {
                assert!(room.iter().all(|byte| *byte == 0x5a), "written on failure");
                assert_eq!(status == Kind::BufferTooSmall.number(), text.is_some());
                assert_ne!(status, 0);
            }
        }
    };
    let none = core::ptr::null_mut();
    // SAFETY: the marking and `capacity` bytes are there.
    unsafe {
        let letters = marking.to_letters().ok();
        check(&|room| rko_marking_to_letters(given, room, capacity, none), letters.as_ref().map(|text| text.as_str()));
        let chip = marking.to_chip().ok();
        check(&|room| rko_marking_to_chip(given, room, capacity, none), chip.as_ref().map(|text| text.as_str()));
        let four = marking.to_chip_as(ChipForm::FourCharacters).ok();
        check(&|room| rko_marking_to_chip_as(given, 2, room, capacity, none), four.as_ref().map(|text| text.as_str()));
    }
}

type Read = fn(&Span, &[u8]) -> Result<Reading, reckohm::meter::MeterError>;
type ReadEach = unsafe extern "C" fn(
    *const rko_span,
    *const c_char,
    *const i64,
    usize,
    *mut rko_reading,
    *mut u8,
    *mut rko_detail,
) -> rko_status;

fn seen(reading: &Reading) -> rko_reading {
    let flag = |yes: bool| u32::from(yes);
    let (ohm, counts) = (reading.ohm(), reading.counts());
    rko_reading { ohm, counts, over: flag(reading.over()), negative: flag(reading.negative()) }
}

/// Texts that lie one after another, with offsets that may be anything.
fn array(span: &Span, given: &rko_span, bytes: &[u8], offsets: &[i64], (read, each): (Read, ReadEach)) {
    let count = offsets.len() - 1;
    let ascending = offsets[0] >= 0 && offsets.windows(2).all(|pair| pair[0] <= pair[1]);
    if ascending && offsets[count] as usize > bytes.len() {
        return; // What the caller has promised.
    }
    let (mut out, mut detail) = (vec![NO_READING; count], NO_DETAIL);
    let none = core::ptr::null_mut();
    // SAFETY: as many readings, mask bytes and offsets as the count says, and as many bytes as the last offset says.
    let status = unsafe { each(given, chars(bytes), offsets.as_ptr(), count, out.as_mut_ptr(), none, &mut detail) };
    if count > 0 && !ascending {
        assert_eq!((status, detail.argument), (Kind::Contradiction.number(), 91));
        assert!(out.iter().all(|reading| *reading == NO_READING));
        return;
    }
    let text = |index: usize| &bytes[offsets[index] as usize..offsets[index + 1] as usize];
    let expected: Vec<_> = (0..count).map(|index| read(span, text(index))).collect();
    let failed = expected.iter().filter(|reading| reading.is_err()).count();
    let first = expected.iter().position(Result::is_err).unwrap_or_default();
    let kind = expected.get(first).and_then(|reading| reading.err()).map_or(0, |error| error.kind().number());
    assert_eq!((status, detail.status, detail.failed, detail.index), (kind, kind, failed as u64, first as u64));
    if failed > 0 {
        assert!(out.iter().all(|reading| *reading == NO_READING), "written on failure");
    }
    let (mut out, mut valid) = (vec![NO_READING; count], vec![9_u8; count]);
    // SAFETY: as above.
    let status = unsafe {
        each(given, chars(bytes), offsets.as_ptr(), count, out.as_mut_ptr(), valid.as_mut_ptr(), &mut detail)
    };
    assert_eq!((status, detail.failed), (0, failed as u64));
    for ((reading, valid), expected) in out.iter().zip(valid).zip(expected) {
        assert_eq!(valid, u8::from(expected.is_ok()));
        assert_eq!(*reading, expected.map_or(NO_READING, |reading| seen(&reading)));
    }
}

fn readings(input: &mut Input<'_>) {
    let place = input.below(6);
    let span = &Meter::example_hand_held().spans()[place];
    let mut spans = [const { unsafe { core::mem::zeroed::<rko_span>() } }; RKO_SPANS_MOST];
    let mut filled = 0;
    // SAFETY: room for the most spans that there are.
    let status =
        unsafe { rko_meter_example_hand_held(spans.as_mut_ptr(), spans.len(), &mut filled, core::ptr::null_mut()) };
    assert_eq!((status, filled), (0, 6));
    let count = input.below(6);
    let mut offsets = vec![0_i64; count + 1];
    for place in 0..=count {
        let before = if place == 0 { 0 } else { offsets[place - 1] };
        offsets[place] =
            if input.below(16) == 0 { input.i64() } else { before.wrapping_add(i64::from(input.byte() % 8)) };
    }
    let bytes = alone(input.rest());
    array(span, &spans[place], &bytes, &offsets, (Span::read, rko_span_read_n));
    array(span, &spans[place], &bytes, &offsets, (Span::read_reply, rko_span_read_reply_n));
    let mut reading = NO_READING;
    let none = core::ptr::null_mut();
    // SAFETY: the text is there.
    let status = unsafe { rko_span_read(&spans[place], chars(&bytes), bytes.len(), &mut reading, none) };
    let expected = span.read(&bytes);
    assert_eq!(status, expected.map_or_else(|error| error.kind().number(), |_| 0));
    assert_eq!(reading, expected.map_or(NO_READING, |reading| seen(&reading)));
}

/// A choice of functions, codes, and the bytes.
pub fn target(data: &[u8]) {
    let mut input = Input::new(data);
    if input.flag() {
        readings(&mut input);
        return;
    }
    let edition = input.one_of(&[RKO_EDITION_2016, RKO_EDITION_2004, RKO_EDITION_1974, 0, u32::MAX, 2016 + 65_536]);
    let scheme = input.one_of(&[0, 1, 2, 3, 4, 256, 257, u32::MAX]);
    let text = alone(input.rest());
    markings(&text, edition, scheme);
}
