//! What can go wrong around a meter.

use thiserror::Error;

use super::grid::LONGEST_DISPLAY_TEXT;
use super::marks::Marks;
use super::misfit::{Misfit, MisfitText};
use super::unread::Unread;
use crate::number::{NumberError, OutOfRange, Readable, Shown};
use crate::uncertainty::EstimateError;

/// Why a span, a reading, a choice or the leads could not be had. Offsets count bytes from the start of the text as given.
#[derive(Clone, Copy, Debug, PartialEq, Error)]
#[non_exhaustive]
pub enum MeterError {
    /// A number outside its range.
    #[error("{0}")]
    Range(#[from] OutOfRange),
    /// A reply that is not a number.
    #[error("meter's reply: {0}")]
    Reply(#[from] NumberError),
    /// The uncertainty on a span could not be stated.
    #[error("{0}")]
    Uncertainty(#[from] EstimateError),

    /// A label of no bytes.
    #[error("label of a span: an empty text given, 1 to 15 bytes allowed; write what stands beside the meter's knob")]
    LabelEmpty,
    /// A label of more than 15 bytes.
    #[error("label of a span: {length} bytes given, 1 to 15 allowed; a letter outside ASCII has two bytes or more")]
    LabelTooLong {
        /// How many bytes were given.
        length: u64,
    },
    /// A control character in a label.
    #[error(
        "label of a span: {} given at offset {at}, only characters that can be seen allowed; look for a tab or a line end",
        Shown(*byte)
    )]
    LabelByte {
        /// Its offset.
        at: u64,
        /// The byte.
        byte: u8,
    },
    /// A resolution that no display has.
    #[error(
        "resolution of a span: {} ohm given, 1, 2 or 5 times a power of ten allowed; give the step of the last digit \
         in ohm",
        Readable(*given_ohm)
    )]
    UnknownResolution {
        /// What was given, in ohm.
        given_ohm: f64,
    },
    /// A unit that no display shows in.
    #[error(
        "display unit of a span: {} ohm given, 0.001, 1, 1000, 1000000 or 1000000000 ohm allowed; a display in kilohm \
         has 1000",
        Readable(*given_ohm)
    )]
    UnknownDisplayUnit {
        /// What was given, in ohm.
        given_ohm: f64,
    },
    /// A full scale that is no whole number of steps.
    #[error(
        "full scale of a span: {} ohm given with a step of {} ohm, a whole number of steps allowed; it is the first \
         value that the display no longer shows: 2000 for a display of 2000 counts",
        Readable(*full_scale_ohm),
        Readable(*resolution_ohm)
    )]
    NotWholeSteps {
        /// The full scale in ohm.
        full_scale_ohm: f64,
        /// The step in ohm.
        resolution_ohm: f64,
    },
    /// More digits behind the point than a display has.
    #[error(
        "display unit of a span: {} ohm given with a step of {} ohm, at most 9 digits behind the point allowed; look \
         at the unit that the display shows",
        Readable(*display_unit_ohm),
        Readable(*resolution_ohm)
    )]
    TooFineForUnit {
        /// The step in ohm.
        resolution_ohm: f64,
        /// The unit in ohm.
        display_unit_ohm: f64,
    },
    /// A span whose values are not one rounding of whole numbers in this precision.
    #[error(
        "preparing a span: a full scale of {} ohm with a step of {} ohm given, values that are one rounding of whole numbers \
         allowed: up to 16777216 of the step's last place, which is at most 1e10 ohm, in float, and any span in double; read on \
         the span itself, or prepare it in double",
        Readable(*full_scale_ohm),
        Readable(*resolution_ohm)
    )]
    TooFineToPrepare {
        /// The full scale in ohm.
        full_scale_ohm: f64,
        /// The step in ohm.
        resolution_ohm: f64,
    },
    /// Bits that stand for no over-range mark.
    #[error(
        "over-range marks of a span: the bits {bits} given, 0 to 15 allowed: 1 a lone \"1\", 2 \"OL\", 4 blank digits, 8 \
         dashes; add those that the meter uses"
    )]
    UnknownMarks {
        /// What was given.
        bits: u8,
    },
    /// A temperature band whose ends are exchanged.
    #[error(
        "temperature band of an accuracy clause: {} to {} degree Celsius given, the lower end at or below the upper \
         one allowed; exchange them",
        Readable(*lower_c),
        Readable(*upper_c)
    )]
    BandReversed {
        /// The lower end.
        lower_c: f64,
        /// The upper end.
        upper_c: f64,
    },
    /// The meter is outside its clause's band, and the clause has no temperature coefficient.
    #[error(
        "accuracy at the meter's temperature: {} degree Celsius given, {} to {} allowed without \
         temperature_coefficient_per_kelvin; take it from the meter's specification, a tenth of the clause a kelvin \
         (0.1) is common, or measure within the band",
        Readable(*temperature_c),
        Readable(*lower_c),
        Readable(*upper_c)
    )]
    CoefficientMissing {
        /// The meter's temperature.
        temperature_c: f64,
        /// The lower end of the band.
        lower_c: f64,
        /// The upper end of the band.
        upper_c: f64,
    },
    /// An accuracy clause without any part, with the step inside of it.
    #[error(
        "accuracy clause of a span: no fraction and no counts given, at least one part above 0 needed, or the display's step \
         outside the counts; no meter is without error"
    )]
    ClauseWithoutParts,

    /// A display text with nothing in it, on a span that does not mark over-range by blank digits.
    #[error(
        "display text: nothing but blanks given, what the span's display shows allowed; blank digits are no over-range \
         mark of this span"
    )]
    TextEmpty,
    /// A display text of too many bytes.
    #[error(
        "display text: {length} bytes given, at most {LONGEST_DISPLAY_TEXT} allowed; give one reading at a time, without a \
         note"
    )]
    TextTooLong {
        /// How many bytes were given.
        length: u64,
    },
    /// A byte that cannot stand where it stands in a display text.
    #[error(
        "display text: {} given at offset {at}, digits with one point or comma, a minus in front and k, M or G behind \
         allowed, or an over-range mark of this span; write it as the display shows it, without a unit",
        Shown(*byte)
    )]
    TextByte {
        /// Its offset.
        at: u64,
        /// The byte.
        byte: u8,
    },
    /// A display text without any digit.
    #[error("display text: no digit given up to offset {at}, at least one needed; write it as the display shows it")]
    TextWithoutDigits {
        /// Where a digit should stand.
        at: u64,
    },
    /// An over-range mark that this span does not have.
    #[error(
        "display text: {} given at offset {at}, which is no over-range mark of this span; look at the span the text was \
         read on, or add the mark to the span",
        mark.words()
    )]
    MarkNotOfSpan {
        /// Its offset.
        at: u64,
        /// The mark.
        mark: Marks,
    },
    /// A number in a display text that this span does not show in this way.
    #[error("{0}")]
    Text(Misfit),
    /// A display text that a prepared span does not read.
    #[error("{0}")]
    Unread(#[from] Unread),

    /// The reply that stands for "no reading".
    #[error(
        "meter's reply: 9.91E37 given, which stands for no reading (SCPI-1999), a number below the span's full scale \
         allowed; look at whether the meter had finished, and at its function"
    )]
    NoReading,
    /// A reply that is neither a reading nor a mark of SCPI-1999.
    #[error(
        "meter's reply: {given:e} given, which is neither a reading nor a mark of SCPI-1999 (9.9E37 over-range, 9.91E37 \
         no reading), a number below the span's full scale allowed; look into the meter's manual for what it stands for"
    )]
    UndefinedMark {
        /// What was given.
        given: f64,
    },
    /// A value that the span does not show, and no mark for it.
    #[error(
        "reading on a span: {} ohm given, less than {} ohm allowed (its full scale); look at whether the meter was on \
         another span",
        Readable(*given_ohm),
        Readable(*full_scale_ohm)
    )]
    BeyondFullScale {
        /// What was given, in ohm.
        given_ohm: f64,
        /// The full scale in ohm.
        full_scale_ohm: f64,
    },

    /// Numbers that are not those of one reading.
    #[error(
        "reading from its numbers: {} ohm with {counts} counts given, counts times the step of {} ohm (or none, for a \
         reply), a sign that is marked, and the full scale where it is over-range allowed; give them as they were \
         read",
        Readable(*ohm),
        Readable(*step_ohm)
    )]
    NotOneReading {
        /// The resistance.
        ohm: f64,
        /// The counts.
        counts: i64,
        /// The step of the span.
        step_ohm: f64,
    },

    /// A reading that is a bound and no value.
    #[error(
        "estimate of a reading: it is beyond its span and has no value, a reading with a value needed; measure on a higher \
         span"
    )]
    ReadingOverRange,

    /// A meter without spans.
    #[error("meter: no span given, at least one needed; give the spans from the lowest to the highest")]
    NoSpans,
    /// Spans that are not in ascending order.
    #[error(
        "meter: span {index} has a full scale of {} ohm, more than the {} ohm of the span before it allowed; give the \
         spans from the lowest to the highest, counted from 0",
        Readable(*given_ohm),
        Readable(*before_ohm)
    )]
    SpansNotAscending {
        /// Which span, counted from 0.
        index: u64,
        /// Its full scale in ohm.
        given_ohm: f64,
        /// The full scale of the one before, in ohm.
        before_ohm: f64,
    },
    /// More spans than are stepped through.
    #[error("auto-ranger: {count} spans given, at most {most} allowed; leave out those that are not stepped through")]
    TooManySpans {
        /// How many spans there are.
        count: u64,
        /// How many are allowed.
        most: u64,
    },
    /// A hysteresis that is less at its widest than at first.
    #[error(
        "hysteresis of an auto-ranger: {} given, and {} for the widest that it becomes, the first or more allowed there; \
         exchange them",
        Readable(*hysteresis),
        Readable(*widest)
    )]
    HysteresisReversed {
        /// The hysteresis at first.
        hysteresis: f64,
        /// The widest.
        widest: f64,
    },
    /// A reading that is beyond another span than the auto-ranger's.
    #[error(
        "auto-ranger: a reading beyond {} ohm given, one on the span with a full scale of {} ohm allowed; put the meter on \
         the span that was asked for, then measure",
        Readable(*given_ohm),
        Readable(*full_scale_ohm)
    )]
    ReadingOfAnotherSpan {
        /// The bound of the reading in ohm.
        given_ohm: f64,
        /// The full scale of the auto-ranger's span in ohm.
        full_scale_ohm: f64,
    },
    /// A state that no auto-ranger of these arguments has.
    #[error(
        "auto-ranger: a state of {left} readings to discard and a hysteresis of {} given, at most {discard} readings and a \
         hysteresis between the first and the widest allowed; give it with the arguments it was stored under",
        Readable(*hysteresis)
    )]
    StrangeState {
        /// How many readings are still to be discarded.
        left: u32,
        /// How many are discarded after a switch.
        discard: u32,
        /// The hysteresis.
        hysteresis: f64,
    },
    /// An index that belongs to no span of the meter.
    #[error("meter: span {index} asked for, 0 to {} allowed; spans are counted from 0", count.saturating_sub(1))]
    NoSuchSpan {
        /// What was asked for.
        index: u64,
        /// How many spans there are.
        count: u64,
    },
    /// A part that is beyond every span of the meter.
    #[error(
        "choosing a span: the part may have up to {} ohm, less than {} ohm allowed (the full scale of the highest \
         span); use another meter, or a known part in parallel",
        Readable(*upper_limit_ohm),
        Readable(*full_scale_ohm)
    )]
    NoSpanHolds {
        /// The upper limit of the part in ohm.
        upper_limit_ohm: f64,
        /// The full scale of the highest span in ohm.
        full_scale_ohm: f64,
    },

    /// A reading of the leads that is beyond its span.
    #[error(
        "leads from a reading: the reading is beyond its span and has no value, a reading with the tips touching one \
         another needed; look for a broken lead"
    )]
    LeadsOverRange,
    /// A conductor that is not in the table.
    #[error(
        "leads from a wire: {} mm2 of class {class} given, which is not in the table: IEC 60228 has 0.5 to 400 mm2 in \
         class 1, to 630 mm2 in classes 2 and 5; read the leads with their tips touching instead",
        Readable(*area_mm2)
    )]
    WireNotInTable {
        /// The cross-section in mm².
        area_mm2: f64,
        /// The class.
        class: u8,
    },
}

impl From<Misfit> for MeterError {
    fn from(misfit: Misfit) -> MeterError {
        MeterError::Text(misfit)
    }
}

impl MeterError {
    /// What is wrong with the number in a display text, if that is the error.
    pub fn misfit(&self) -> Option<MisfitText> {
        match self {
            MeterError::Text(misfit) => Some(misfit.text),
            _ => None,
        }
    }
}
