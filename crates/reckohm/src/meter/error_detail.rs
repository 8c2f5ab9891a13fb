//! The failures around a meter as plain numbers, and back.

use super::error::MeterError;
use super::grid::LONGEST_DISPLAY_TEXT;
use super::marks::Marks;
use super::misfit::Misfit;
use super::unread::Unread;
use crate::number::{Detail, Kind, NumberError, OutOfRange};
use crate::uncertainty::EstimateError;

// Arguments of a detail, in the block of this folder, for the kinds that other areas have too.
const LABEL: u16 = 201;
const DISPLAY: u16 = 202;
const STEPS: u16 = 203;
const DECIMALS: u16 = 204;
const BAND: u16 = 205;
const ORDER: u16 = 206;
const METER: u16 = 207;
const COEFFICIENT: u16 = 208;
const LEADS: u16 = 209;
const CLAUSE: u16 = 210;
const READING: u16 = 211;
const ANOTHER_SPAN: u16 = 212;
const RANGER: u16 = 213;
const WIDEST: u16 = 214;
const PREPARING: u16 = 215;
/// The argument of a detail that is of a text on a prepared span.
pub(super) const PREPARED: u16 = 216;

impl MeterError {
    /// What happened, in one word.
    pub fn kind(&self) -> Kind {
        self.detail().kind
    }

    /// The same as plain numbers; an offset in a text, a span's number, is the index.
    pub fn detail(&self) -> Detail {
        let of = |kind, argument| Detail { argument, ..Detail::new(kind) };
        match *self {
            MeterError::Range(range) => range.detail(),
            MeterError::Reply(error) => error.detail(),
            MeterError::Uncertainty(error) => error.detail(),
            MeterError::LabelEmpty => of(Kind::Empty, LABEL),
            MeterError::LabelTooLong { length } => {
                Detail { given: length as f64, upper: 15.0, index: 15, ..of(Kind::TextTooLong, LABEL) }
            }
            MeterError::LabelByte { at, byte } => {
                Detail { given: f64::from(byte), index: at, ..of(Kind::UnexpectedByte, LABEL) }
            }
            MeterError::UnknownResolution { given_ohm } => {
                Detail { given: given_ohm, ..Detail::new(Kind::UnknownResolution) }
            }
            MeterError::UnknownDisplayUnit { given_ohm } => {
                Detail { given: given_ohm, ..Detail::new(Kind::UnknownDisplayUnit) }
            }
            MeterError::NotWholeSteps { full_scale_ohm, resolution_ohm } => {
                Detail { given: full_scale_ohm, lower: resolution_ohm, ..of(Kind::Contradiction, STEPS) }
            }
            MeterError::TooFineForUnit { resolution_ohm, display_unit_ohm } => {
                Detail { given: display_unit_ohm, lower: resolution_ohm, ..of(Kind::Contradiction, DECIMALS) }
            }
            MeterError::TooFineToPrepare { full_scale_ohm, resolution_ohm } => {
                Detail { given: full_scale_ohm, lower: resolution_ohm, ..of(Kind::Contradiction, PREPARING) }
            }
            MeterError::Unread(unread) => unread.detail(),
            MeterError::UnknownMarks { bits } => {
                Detail { given: f64::from(bits), upper: 15.0, ..Detail::new(Kind::UnknownMarks) }
            }
            MeterError::BandReversed { lower_c, upper_c } => {
                Detail { lower: lower_c, upper: upper_c, ..of(Kind::Contradiction, BAND) }
            }
            MeterError::CoefficientMissing { temperature_c, lower_c, upper_c } => Detail {
                given: temperature_c,
                lower: lower_c,
                upper: upper_c,
                ..of(Kind::MissingArgument, COEFFICIENT)
            },
            MeterError::ClauseWithoutParts => of(Kind::MissingArgument, CLAUSE),
            MeterError::TextEmpty => of(Kind::Empty, DISPLAY),
            MeterError::TextTooLong { length } => Detail {
                given: length as f64,
                upper: LONGEST_DISPLAY_TEXT as f64,
                index: LONGEST_DISPLAY_TEXT as u64,
                ..of(Kind::TextTooLong, DISPLAY)
            },
            MeterError::TextByte { at, byte } => {
                Detail { given: f64::from(byte), index: at, ..of(Kind::UnexpectedByte, DISPLAY) }
            }
            MeterError::TextWithoutDigits { at } => Detail { index: at, ..of(Kind::MissingDigits, DISPLAY) },
            MeterError::MarkNotOfSpan { at, mark } => {
                Detail { given: f64::from(mark.bits()), index: at, ..Detail::new(Kind::MarkNotOfSpan) }
            }
            MeterError::Text(misfit) => misfit.detail(),
            MeterError::NoReading => Detail::new(Kind::NoReading),
            MeterError::UndefinedMark { given } => Detail { given, ..Detail::new(Kind::UndefinedMark) },
            MeterError::BeyondFullScale { given_ohm, full_scale_ohm } => {
                Detail { given: given_ohm, upper: full_scale_ohm, ..Detail::new(Kind::BeyondFullScale) }
            }
            MeterError::NotOneReading { ohm, counts, step_ohm } => {
                Detail { given: ohm, lower: counts as f64, upper: step_ohm, ..of(Kind::Contradiction, READING) }
            }
            MeterError::ReadingOverRange => of(Kind::OverRangeReading, READING),
            MeterError::NoSpans => of(Kind::Empty, METER),
            MeterError::SpansNotAscending { index, given_ohm, before_ohm } => {
                Detail { given: given_ohm, lower: before_ohm, index, ..of(Kind::Contradiction, ORDER) }
            }
            MeterError::TooManySpans { count, most } => {
                Detail { given: count as f64, upper: most as f64, ..of(Kind::WrongCount, METER) }
            }
            MeterError::HysteresisReversed { hysteresis, widest } => {
                Detail { given: widest, lower: hysteresis, ..of(Kind::Contradiction, WIDEST) }
            }
            MeterError::ReadingOfAnotherSpan { given_ohm, full_scale_ohm } => {
                Detail { given: given_ohm, upper: full_scale_ohm, ..of(Kind::Contradiction, ANOTHER_SPAN) }
            }
            MeterError::StrangeState { left, discard, hysteresis } => Detail {
                given: hysteresis,
                index: u64::from(left),
                upper: f64::from(discard),
                ..of(Kind::Contradiction, RANGER)
            },
            MeterError::NoSuchSpan { index, count } => {
                Detail { given: index as f64, upper: count as f64, index, ..Detail::new(Kind::NoSuchSpan) }
            }
            MeterError::NoSpanHolds { upper_limit_ohm, full_scale_ohm } => {
                Detail { given: upper_limit_ohm, upper: full_scale_ohm, ..Detail::new(Kind::NoSpanHolds) }
            }
            MeterError::LeadsOverRange => of(Kind::OverRangeReading, LEADS),
            MeterError::WireNotInTable { area_mm2, class } => {
                Detail { given: area_mm2, index: u64::from(class), ..Detail::new(Kind::WireNotInTable) }
            }
        }
    }

    /// Back from plain numbers, if they are of this area.
    pub fn from_detail(detail: &Detail) -> Option<MeterError> {
        let &Detail { kind, argument, given, lower, upper, index, .. } = detail;
        let byte = given as u8;
        if let Some(unread) = Unread::from_detail(detail) {
            return Some(MeterError::Unread(unread));
        }
        Some(match (kind, argument) {
            (Kind::Empty, LABEL) => MeterError::LabelEmpty,
            (Kind::TextTooLong, LABEL) => MeterError::LabelTooLong { length: given as u64 },
            (Kind::UnexpectedByte, LABEL) => MeterError::LabelByte { at: index, byte },
            (Kind::UnknownResolution, _) => MeterError::UnknownResolution { given_ohm: given },
            (Kind::UnknownDisplayUnit, _) => MeterError::UnknownDisplayUnit { given_ohm: given },
            (Kind::Contradiction, STEPS) => MeterError::NotWholeSteps { full_scale_ohm: given, resolution_ohm: lower },
            (Kind::Contradiction, DECIMALS) => {
                MeterError::TooFineForUnit { resolution_ohm: lower, display_unit_ohm: given }
            }
            (Kind::Contradiction, PREPARING) => {
                MeterError::TooFineToPrepare { full_scale_ohm: given, resolution_ohm: lower }
            }
            (Kind::UnknownMarks, _) => MeterError::UnknownMarks { bits: byte },
            (Kind::Contradiction, BAND) => MeterError::BandReversed { lower_c: lower, upper_c: upper },
            (Kind::MissingArgument, COEFFICIENT) => {
                MeterError::CoefficientMissing { temperature_c: given, lower_c: lower, upper_c: upper }
            }
            (Kind::MissingArgument, CLAUSE) => MeterError::ClauseWithoutParts,
            (Kind::Empty, DISPLAY) => MeterError::TextEmpty,
            (Kind::TextTooLong, DISPLAY) => MeterError::TextTooLong { length: given as u64 },
            (Kind::UnexpectedByte, DISPLAY) => MeterError::TextByte { at: index, byte },
            (Kind::MissingDigits, DISPLAY) => MeterError::TextWithoutDigits { at: index },
            (Kind::MarkNotOfSpan, _) => MeterError::MarkNotOfSpan { at: index, mark: Marks::from_bits(byte).ok()? },
            (Kind::NoReading, _) => MeterError::NoReading,
            (Kind::UndefinedMark, _) => MeterError::UndefinedMark { given },
            (Kind::BeyondFullScale, 0) => MeterError::BeyondFullScale { given_ohm: given, full_scale_ohm: upper },
            (Kind::Contradiction, READING) => {
                MeterError::NotOneReading { ohm: given, counts: lower as i64, step_ohm: upper }
            }
            (Kind::OverRangeReading, READING) => MeterError::ReadingOverRange,
            (Kind::Empty, METER) => MeterError::NoSpans,
            (Kind::Contradiction, ORDER) => {
                MeterError::SpansNotAscending { index, given_ohm: given, before_ohm: lower }
            }
            (Kind::WrongCount, METER) => MeterError::TooManySpans { count: given as u64, most: upper as u64 },
            (Kind::Contradiction, WIDEST) => MeterError::HysteresisReversed { hysteresis: lower, widest: given },
            (Kind::Contradiction, ANOTHER_SPAN) => {
                MeterError::ReadingOfAnotherSpan { given_ohm: given, full_scale_ohm: upper }
            }
            (Kind::Contradiction, RANGER) => {
                MeterError::StrangeState { left: index as u32, discard: upper as u32, hysteresis: given }
            }
            (Kind::NoSuchSpan, _) => MeterError::NoSuchSpan { index, count: upper as u64 },
            (Kind::NoSpanHolds, _) => MeterError::NoSpanHolds { upper_limit_ohm: given, full_scale_ohm: upper },
            (Kind::OverRangeReading, LEADS) => MeterError::LeadsOverRange,
            (Kind::WireNotInTable, _) => MeterError::WireNotInTable { area_mm2: given, class: index as u8 },
            _ => {
                return Misfit::from_detail(detail)
                    .map(MeterError::Text)
                    .or_else(|| NumberError::from_detail(detail).map(MeterError::Reply))
                    .or_else(|| OutOfRange::from_detail(detail).map(MeterError::Range))
                    .or_else(|| EstimateError::from_detail(detail).map(MeterError::Uncertainty));
            }
        })
    }
}
