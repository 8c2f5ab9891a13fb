//! Markings: bands, letters and chip codes.

use core::ffi::c_char;
use core::mem::{offset_of, size_of};

use reckohm::marking::{BandReading, Bands, ChipForm, ChipScheme, Colour, Direction, Edition, Marking, both_ways};

use crate::answer::{DoorError, Failure, Outcome, answer, code, one};
use crate::bytes::write_bytes;
use crate::detail::{RKO_OK, rko_detail, rko_status};
use crate::limits::rko_limits;
use crate::pointer::{item, items, place};

/// IEC 62:1974.
pub const RKO_EDITION_1974: u32 = 1974;
/// IEC 60062:2004, also EN 60062:2005.
pub const RKO_EDITION_2004: u32 = 2004;
/// IEC 60062:2016.
pub const RKO_EDITION_2016: u32 = 2016;

/// The code of gold; those of the colours that are digits are these digits, black 0 to white 9.
pub const RKO_COLOUR_GOLD: u8 = 10;
/// The code of silver.
pub const RKO_COLOUR_SILVER: u8 = 11;
/// The code of pink.
pub const RKO_COLOUR_PINK: u8 = 12;

/// No scheme is named: a multiplier letter on which makers disagree is refused.
pub const RKO_CHIP_SCHEME_NONE: u32 = 0;
/// R is 10^-1 and S 10^-2, as in military lists.
pub const RKO_CHIP_SCHEME_MILITARY: u32 = 1;
/// R is 10^-2, S 10^-1 and H 10^1, as in the common list.
pub const RKO_CHIP_SCHEME_COMMON_LIST: u32 = 2;
/// G is 10^6 and H 10^7.
pub const RKO_CHIP_SCHEME_LARGE_VALUES: u32 = 3;

/// Two figures and a multiplier, or R as the point.
pub const RKO_CHIP_FORM_THREE_CHARACTERS: u32 = 1;
/// Three figures and a multiplier, or R as the point.
pub const RKO_CHIP_FORM_FOUR_CHARACTERS: u32 = 2;
/// A two-digit code of the 1 % series and a multiplier letter.
pub const RKO_CHIP_FORM_CODE_AND_LETTER: u32 = 3;

/// The marking says its tolerance.
pub const RKO_MARKING_HAS_TOLERANCE: u32 = 1;
/// The marking says its temperature coefficient.
pub const RKO_MARKING_HAS_TCR: u32 = 2;

/// The bands say nothing in this direction.
pub const RKO_DOUBT_DOES_NOT_DECODE: u32 = 1;
/// It would begin with gold or silver, which stand at the end.
pub const RKO_DOUBT_TOLERANCE_COLOUR_FIRST: u32 = 2;
/// The value is in no series of preferred values.
pub const RKO_DOUBT_IN_NO_SERIES: u32 = 4;
/// The tolerance is unusual for so many bands.
pub const RKO_DOUBT_UNUSUAL_TOLERANCE: u32 = 8;

/// Neither direction is more plausible.
pub const RKO_DIRECTION_NEITHER: u32 = 0;
/// The direction in which the bands were given.
pub const RKO_DIRECTION_FORWARD: u32 = 1;
/// The other direction.
pub const RKO_DIRECTION_BACKWARD: u32 = 2;

/// What a resistor is marked as.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct rko_marking {
    /// Nominal value in ohm; 0 for a zero-ohm link.
    pub nominal_ohm: f64,
    /// Tolerance, a fraction; read only with `RKO_MARKING_HAS_TOLERANCE`, else 0.
    pub tolerance: f64,
    /// Temperature coefficient in ppm/K, plus or minus, a limit; read only with `RKO_MARKING_HAS_TCR`, else 0.
    pub tcr_ppm_per_kelvin: u32,
    /// A sum of `RKO_MARKING_HAS_...`.
    pub has: u32,
}

/// The bands of a resistor in reading order.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct rko_bands {
    /// Colours: 0 to 9 as digits, `RKO_COLOUR_GOLD`, `RKO_COLOUR_SILVER`, `RKO_COLOUR_PINK`; 0 beyond `count`.
    pub colours: [u8; 6],
    /// How many bands, 1 to 6.
    pub count: u8,
    /// 0.
    pub reserved: u8,
}

/// One reading direction of a row of bands.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct rko_band_reading {
    /// What the bands say; all zero unless `status` is `RKO_OK`.
    pub marking: rko_marking,
    /// The bands in this direction.
    pub bands: rko_bands,
    /// `RKO_OK`, or why the bands say nothing in this direction.
    pub status: i32,
    /// A sum of `RKO_DOUBT_...`; 0 if nothing speaks against it.
    pub doubts: u32,
}

/// Both reading directions of a row of bands.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct rko_both_ways {
    /// As the bands were given.
    pub forward: rko_band_reading,
    /// From the other end.
    pub backward: rko_band_reading,
    /// `RKO_DIRECTION_NEITHER`, `RKO_DIRECTION_FORWARD` or `RKO_DIRECTION_BACKWARD`.
    pub more_plausible: u32,
    /// 0.
    pub reserved: u32,
}

const _: () = {
    assert!(size_of::<rko_marking>() == 24);
    assert!(offset_of!(rko_marking, nominal_ohm) == 0);
    assert!(offset_of!(rko_marking, tolerance) == 8);
    assert!(offset_of!(rko_marking, tcr_ppm_per_kelvin) == 16);
    assert!(offset_of!(rko_marking, has) == 20);
    assert!(size_of::<rko_bands>() == 8);
    assert!(offset_of!(rko_bands, colours) == 0);
    assert!(offset_of!(rko_bands, count) == 6);
    assert!(offset_of!(rko_bands, reserved) == 7);
    assert!(size_of::<rko_band_reading>() == 40);
    assert!(offset_of!(rko_band_reading, marking) == 0);
    assert!(offset_of!(rko_band_reading, bands) == 24);
    assert!(offset_of!(rko_band_reading, status) == 32);
    assert!(offset_of!(rko_band_reading, doubts) == 36);
    assert!(size_of::<rko_both_ways>() == 88);
    assert!(offset_of!(rko_both_ways, forward) == 0);
    assert!(offset_of!(rko_both_ways, backward) == 40);
    assert!(offset_of!(rko_both_ways, more_plausible) == 80);
    assert!(offset_of!(rko_both_ways, reserved) == 84);
};

impl rko_marking {
    pub(crate) fn to_core(self, argument: u16) -> Outcome<Marking> {
        if self.has & !(RKO_MARKING_HAS_TOLERANCE | RKO_MARKING_HAS_TCR) != 0 {
            return Err(DoorError::UnknownCode { argument, given: f64::from(self.has) }.into());
        }
        let has = |bit: u32| self.has & bit != 0;
        if self.nominal_ohm == 0.0 && self.has == 0 {
            return Ok(Marking::ZERO_OHM_LINK);
        }
        let tolerance = has(RKO_MARKING_HAS_TOLERANCE).then_some(self.tolerance);
        // A coefficient that does not fit is out of range as well.
        let tcr = has(RKO_MARKING_HAS_TCR).then(|| u16::try_from(self.tcr_ppm_per_kelvin).unwrap_or(u16::MAX));
        Ok(Marking::from_value(self.nominal_ohm, tolerance, tcr)?)
    }
}

impl From<Marking> for rko_marking {
    fn from(marking: Marking) -> rko_marking {
        let (tolerance, tcr) = (marking.tolerance(), marking.tcr_ppm_per_kelvin());
        let bit = |there: bool, bit: u32| if there { bit } else { 0 };
        rko_marking {
            nominal_ohm: marking.nominal_ohm(),
            tolerance: tolerance.unwrap_or(0.0),
            tcr_ppm_per_kelvin: tcr.unwrap_or(0.0) as u32,
            has: bit(tolerance.is_some(), RKO_MARKING_HAS_TOLERANCE) | bit(tcr.is_some(), RKO_MARKING_HAS_TCR),
        }
    }
}

impl From<Bands> for rko_bands {
    fn from(bands: Bands) -> rko_bands {
        let mut colours = [0; 6];
        for (place, colour) in colours.iter_mut().zip(bands.colours()) {
            *place = colour.number();
        }
        rko_bands { colours, count: bands.colours().len() as u8, reserved: 0 }
    }
}

impl From<BandReading> for rko_band_reading {
    fn from(reading: BandReading) -> rko_band_reading {
        const NONE: rko_marking = rko_marking { nominal_ohm: 0.0, tolerance: 0.0, tcr_ppm_per_kelvin: 0, has: 0 };
        let (marking, status) = match reading.marking() {
            Ok(marking) => (marking.into(), RKO_OK),
            Err(error) => (NONE, error.kind().number()),
        };
        let doubts = reading.doubts().fold(0, |bits, doubt| bits | 1 << (doubt as u32).saturating_sub(1));
        rko_band_reading { marking, bands: reading.bands().into(), status, doubts }
    }
}

fn edition_of(year: u32, argument: u16) -> Outcome<Edition> {
    code(year, argument, |year| Edition::from_year(u16::try_from(year).ok()?))
}

unsafe fn bytes<'a>(text: *const c_char, length: usize) -> Outcome<&'a [u8]> {
    // SAFETY: the caller of this door promises `length` bytes.
    unsafe { items(text.cast::<u8>(), length, 1) }
}

/// A marking from its bands in words or two-letter codes, with blanks, commas or dashes between.
///
/// Given: `text` and its `length`; `edition`, `RKO_EDITION_2016` or an earlier one.
/// Written: `marking`.
/// Statuses: `RKO_EMPTY`, `RKO_UNEXPECTED_BYTE`, `RKO_WRONG_COUNT`, `RKO_UNKNOWN_COLOUR`, `RKO_MISPLACED_COLOUR`,
/// `RKO_UNKNOWN_CODE`, `RKO_NULL_POINTER`.
/// Source: IEC 60062, IEC 60757.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rko_marking_from_bands(
    text: *const c_char,
    length: usize,
    edition: u32,
    marking: *mut rko_marking,
    detail: *mut rko_detail,
) -> rko_status {
    unsafe {
        one(marking, 4, detail, || Ok(Marking::from_bands(bytes(text, length)?, edition_of(edition, 3)?)?.into()))
    }
}

/// A marking from the codes of its bands.
///
/// Given: `colours`, `count` codes as in `rko_bands`; `edition`.
/// Written: `marking`.
/// Statuses: those of `rko_marking_from_bands`; `RKO_UNKNOWN_CODE` for a colour, whose index is in the detail.
/// Source: IEC 60062.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rko_marking_from_band_list(
    colours: *const u8,
    count: usize,
    edition: u32,
    marking: *mut rko_marking,
    detail: *mut rko_detail,
) -> rko_status {
    unsafe {
        one(marking, 4, detail, || {
            let edition = edition_of(edition, 3)?;
            // Room for one more than any marking has, so that the core says what it thinks of too many.
            let mut list = [Colour::Black; 7];
            for (index, (place, given)) in list.iter_mut().zip(items(colours, count, 1)?).enumerate() {
                *place = code(u32::from(*given), 1, |_| Colour::from_number(*given))
                    .map_err(|Failure(why)| Failure(reckohm::number::Detail { index: index as u64, ..why }))?;
            }
            Ok(Marking::from_band_list(list.get(..count).unwrap_or(&list), edition)?.into())
        })
    }
}

/// A marking from letters and digits, such as 4K7J.
///
/// Given: `text` and its `length`.
/// Written: `marking`.
/// Statuses: `RKO_EMPTY`, `RKO_UNEXPECTED_BYTE`, `RKO_WRONG_COUNT`, `RKO_WRONG_FORM`, `RKO_DOUBTFUL_CODE`,
/// `RKO_NULL_POINTER`.
/// Source: IEC 60062.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rko_marking_from_letters(
    text: *const c_char,
    length: usize,
    marking: *mut rko_marking,
    detail: *mut rko_detail,
) -> rko_status {
    unsafe { one(marking, 3, detail, || Ok(Marking::from_letters(bytes(text, length)?)?.into())) }
}

/// A marking from the print on a chip resistor, such as 472, 4701, 01C or R047.
///
/// Given: `text` and its `length`; `scheme`, one of `RKO_CHIP_SCHEME_...`.
/// Written: `marking`.
/// Statuses: those of `rko_marking_from_letters`; `RKO_UNKNOWN_CODE` for a scheme.
/// Source: common practice, with the reason for each doubtful letter in the text of its failure.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rko_marking_from_chip(
    text: *const c_char,
    length: usize,
    scheme: u32,
    marking: *mut rko_marking,
    detail: *mut rko_detail,
) -> rko_status {
    unsafe {
        one(marking, 4, detail, || {
            let scheme = match scheme {
                RKO_CHIP_SCHEME_NONE => None,
                given => Some(code(given, 3, |given| ChipScheme::from_number(u8::try_from(given).ok()?))?),
            };
            Ok(Marking::from_chip(bytes(text, length)?, scheme)?.into())
        })
    }
}

/// The marking of a part of this value; the same as filling the struct, checked.
///
/// Given: `nominal_ohm`, in (0, 1e15]; `tolerance`, a fraction in (0, 1), or 0 for none; `tcr_ppm_per_kelvin`, 1 to 10000,
/// or 0 for none.
/// Written: `marking`.
/// Statuses: `RKO_OUT_OF_RANGE`, `RKO_NOT_FINITE`, `RKO_NO_SUCH_MARKING`, `RKO_NULL_POINTER`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rko_marking_from_value(
    nominal_ohm: f64,
    tolerance: f64,
    tcr_ppm_per_kelvin: u32,
    marking: *mut rko_marking,
    detail: *mut rko_detail,
) -> rko_status {
    unsafe {
        one(marking, 4, detail, || {
            let tolerance = (tolerance != 0.0).then_some(tolerance);
            let tcr = (tcr_ppm_per_kelvin != 0).then(|| u16::try_from(tcr_ppm_per_kelvin).unwrap_or(u16::MAX));
            Ok(Marking::from_value(nominal_ohm, tolerance, tcr)?.into())
        })
    }
}

/// The limits that a marking sets, exact and rounded once.
///
/// Given: `marking`.
/// Written: `limits`.
/// Statuses: `RKO_MISSING_ARGUMENT` without a tolerance and for a zero-ohm link; `RKO_OUT_OF_RANGE`, `RKO_NOT_FINITE`,
/// `RKO_UNKNOWN_CODE`, `RKO_NULL_POINTER`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rko_marking_limits(
    marking: *const rko_marking,
    limits: *mut rko_limits,
    detail: *mut rko_detail,
) -> rko_status {
    unsafe { one(limits, 2, detail, || Ok(item(marking, 1)?.to_core(1)?.limits()?.into())) }
}

/// The bands that say a marking.
///
/// Given: `marking`; `edition`.
/// Written: `bands`.
/// Statuses: `RKO_NO_SUCH_MARKING` for what bands cannot say; those of `rko_marking_limits`.
/// Source: IEC 60062.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rko_marking_to_bands(
    marking: *const rko_marking,
    edition: u32,
    bands: *mut rko_bands,
    detail: *mut rko_detail,
) -> rko_status {
    unsafe {
        one(bands, 3, detail, || {
            let edition = edition_of(edition, 2)?;
            Ok(item(marking, 1)?.to_core(1)?.to_bands(edition)?.into())
        })
    }
}

/// The letters and digits that say a marking.
///
/// Given: `marking`; `buffer`, of `capacity` bytes; 9 hold every such text.
/// Written: the text with a closing zero.
/// Statuses: `RKO_NO_SUCH_MARKING`, `RKO_BUFFER_TOO_SMALL`; those of `rko_marking_limits`.
/// Source: IEC 60062.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rko_marking_to_letters(
    marking: *const rko_marking,
    buffer: *mut c_char,
    capacity: usize,
    detail: *mut rko_detail,
) -> rko_status {
    unsafe {
        answer(detail, || {
            let buffer = place(buffer, 2)?;
            write_bytes(item(marking, 1)?.to_core(1)?.to_letters()?.as_bytes(), buffer, capacity)
        })
    }
}

/// The usual print of a marking on a chip resistor.
///
/// Given: `marking`; `buffer`, of `capacity` bytes; 9 hold every such text.
/// Written: the text with a closing zero.
/// Statuses: `RKO_NO_SUCH_MARKING`, `RKO_BUFFER_TOO_SMALL`; those of `rko_marking_limits`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rko_marking_to_chip(
    marking: *const rko_marking,
    buffer: *mut c_char,
    capacity: usize,
    detail: *mut rko_detail,
) -> rko_status {
    unsafe {
        answer(detail, || {
            let buffer = place(buffer, 2)?;
            write_bytes(item(marking, 1)?.to_core(1)?.to_chip()?.as_bytes(), buffer, capacity)
        })
    }
}

/// The print of a marking on a chip resistor in a form that is named.
///
/// Given: `marking`; `form`, one of `RKO_CHIP_FORM_...`; `buffer`, of `capacity` bytes; 9 hold every such text.
/// Written: the text with a closing zero.
/// Statuses: `RKO_NO_SUCH_MARKING`, `RKO_BUFFER_TOO_SMALL`; those of `rko_marking_limits`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rko_marking_to_chip_as(
    marking: *const rko_marking,
    form: u32,
    buffer: *mut c_char,
    capacity: usize,
    detail: *mut rko_detail,
) -> rko_status {
    unsafe {
        answer(detail, || {
            let buffer = place(buffer, 3)?;
            let form = code(form, 2, |form| ChipForm::from_number(u8::try_from(form).ok()?))?;
            write_bytes(item(marking, 1)?.to_core(1)?.to_chip_as(form)?.as_bytes(), buffer, capacity)
        })
    }
}

/// Both reading directions of a row of bands, with what speaks against each.
///
/// Given: `text` and its `length`; `edition`.
/// Written: `ways`; a direction that does not decode has its own status there.
/// Statuses: `RKO_EMPTY`, `RKO_UNEXPECTED_BYTE`, `RKO_WRONG_COUNT`, `RKO_UNKNOWN_COLOUR`, `RKO_UNKNOWN_CODE`,
/// `RKO_NULL_POINTER`.
/// Source: IEC 60062.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rko_marking_both_ways(
    text: *const c_char,
    length: usize,
    edition: u32,
    ways: *mut rko_both_ways,
    detail: *mut rko_detail,
) -> rko_status {
    unsafe {
        one(ways, 4, detail, || {
            let found = both_ways(bytes(text, length)?, edition_of(edition, 3)?)?;
            Ok(rko_both_ways {
                forward: found.forward.into(),
                backward: found.backward.into(),
                more_plausible: match found.more_plausible() {
                    None => RKO_DIRECTION_NEITHER,
                    Some(Direction::Forward) => RKO_DIRECTION_FORWARD,
                    Some(Direction::Backward) => RKO_DIRECTION_BACKWARD,
                },
                reserved: 0,
            })
        })
    }
}

/// The word of a band's colour.
///
/// Given: `colour`, a code as in `rko_bands`; `buffer`, of `capacity` bytes; 7 hold every word.
/// Written: the word with a closing zero.
/// Statuses: `RKO_UNKNOWN_CODE`, `RKO_BUFFER_TOO_SMALL`, `RKO_NULL_POINTER`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rko_colour_word(
    colour: u8,
    buffer: *mut c_char,
    capacity: usize,
    detail: *mut rko_detail,
) -> rko_status {
    unsafe {
        answer(detail, || {
            let buffer = place(buffer, 2)?;
            let colour = code(u32::from(colour), 1, |_| Colour::from_number(colour))?;
            write_bytes(colour.word().as_bytes(), buffer, capacity)
        })
    }
}
