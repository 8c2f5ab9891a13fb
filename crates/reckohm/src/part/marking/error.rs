//! What can be wrong with a marking.

use thiserror::Error;

use super::message;
use super::{ChipScheme, Colour, Edition, Fault, MarkingForm, Unwritable};
use crate::number::{Detail, Kind, OutOfRange, Readable};

// Arguments of a detail, in the block of this folder; those of forms, faults and reasons stand with them.
const NO_TOLERANCE: u16 = 113;
const ZERO_OHM_LINK: u16 = 114;
const NOT_DECIMAL: u16 = 115;
const TOLERANCE_LETTER: u16 = 116;
const MULTIPLIER_LETTER: u16 = 117;
const COLOUR: u16 = 160;
const CHIP: u16 = MarkingForm::Chip.argument();

/// What can be wrong with a marking. An index is a byte offset in the text, or a band where a list of colours was given.
#[derive(Clone, Copy, Debug, PartialEq, Error)]
#[non_exhaustive]
pub enum MarkingError {
    /// A number outside its range.
    #[error("marking of a value: {0}")]
    Range(#[from] OutOfRange),
    /// A number that is no decimal of at most 15 figures.
    #[error(
        "marking of a value: {} given, a decimal of at most 15 figures allowed; round it to the figures that are to be \
         marked",
        Readable(*given)
    )]
    NotDecimal {
        /// What was given.
        given: f64,
    },
    /// Nothing to read.
    #[error("{form}: nothing given, needed: {}", message::Needed(*.form))]
    Empty {
        /// Which code was to be read.
        form: MarkingForm,
    },
    /// A byte that cannot stand where it stands.
    #[error("{form}: {} at byte {index}, {}", message::Byte(*.byte), message::Bytes(*.form))]
    UnexpectedByte {
        /// Which code was to be read.
        form: MarkingForm,
        /// The byte.
        byte: u8,
        /// Its offset.
        index: u64,
    },
    /// A word that is no colour.
    #[error(
        "colour bands: the word at byte {index} is no colour, black, brown, red, orange, yellow, green, blue, violet, \
         grey, white, gold, silver and pink allowed, or their two-letter codes (IEC 60757)"
    )]
    UnknownColour {
        /// Where the word begins.
        index: u64,
    },
    /// A count of bands that has no meaning.
    #[error(
        "colour bands: {count} bands given, 3 to 6 allowed, or one black band alone; \
         a band that is worn off cannot be left out"
    )]
    BandCount {
        /// How many bands.
        count: u64,
    },
    /// A colour that cannot stand in its place.
    #[error("colour bands: {}", message::Misplaced { colour: *.colour, band: *.band, bands: *.bands, edition: *.edition })]
    MisplacedColour {
        /// The colour.
        colour: Colour,
        /// Its place, counted from 1.
        band: u8,
        /// How many bands there are.
        bands: u8,
        /// The edition it was read by.
        edition: Edition,
        /// Where it begins in the text.
        index: u64,
    },
    /// A letter-and-digit code or a chip code of the wrong form.
    #[error("{}", message::Faulty(*.fault, *.index))]
    Fault {
        /// What is wrong.
        fault: Fault,
        /// Where.
        index: u64,
    },
    /// A letter of which no source could be read.
    #[error("letter code: {}", message::Doubtful { letter: *.letter, index: *.index, multiplier: *.multiplier })]
    DoubtfulLetter {
        /// The letter.
        letter: u8,
        /// Its offset.
        index: u64,
        /// Whether it stands in the place of the decimal point, and not as the tolerance.
        multiplier: bool,
    },
    /// A multiplier letter of a chip code on which sources disagree.
    #[error("chip code: {}", message::Disputed { letter: *.letter, index: *.index, scheme: *.scheme })]
    DoubtfulMultiplier {
        /// The letter: R, S, H or G.
        letter: u8,
        /// Its offset.
        index: u64,
        /// The scheme that was named, and does not have it either.
        scheme: Option<ChipScheme>,
    },
    /// A value that cannot be written in a code.
    #[error("{}", message::NotWritten { reason: *.reason, nominal_ohm: *.nominal_ohm, tolerance: *.tolerance })]
    Unwritable {
        /// Why.
        reason: Unwritable,
        /// The nominal value.
        nominal_ohm: f64,
        /// The tolerance, if it is known.
        tolerance: Option<f64>,
    },
    /// A marking that does not say its tolerance.
    #[error(
        "marking without a tolerance: its limits and bands need one, as \"4K7J\" says 5 %; \
         take it from the data sheet and give the value with it"
    )]
    NoTolerance,
    /// Limits asked for of a zero-ohm link.
    #[error(
        "zero-ohm link: it has no limits from a tolerance, only a largest resistance; \
         take that from the data sheet and give it as an upper limit alone"
    )]
    ZeroOhmLink,
}

impl MarkingError {
    /// What happened, in one word.
    pub fn kind(&self) -> Kind {
        match self {
            MarkingError::Range(range) => range.kind(),
            MarkingError::NotDecimal { .. } | MarkingError::Unwritable { .. } => Kind::NoSuchMarking,
            MarkingError::Empty { .. } => Kind::Empty,
            MarkingError::UnexpectedByte { .. } => Kind::UnexpectedByte,
            MarkingError::UnknownColour { .. } => Kind::UnknownColour,
            MarkingError::BandCount { .. } => Kind::WrongCount,
            MarkingError::MisplacedColour { .. } => Kind::MisplacedColour,
            MarkingError::Fault { .. } => Kind::WrongForm,
            MarkingError::DoubtfulLetter { .. } | MarkingError::DoubtfulMultiplier { .. } => Kind::DoubtfulCode,
            MarkingError::NoTolerance | MarkingError::ZeroOhmLink => Kind::MissingArgument,
        }
    }

    /// The same as plain numbers. `argument` says which code, fault, reason or (160 + its number) colour it is; `given` is
    /// the byte, letter, count of bands, place of the band or nominal value; `lower` is how many bands there are, the scheme
    /// or the tolerance (0 for none of these), `upper` the year of the edition.
    pub fn detail(&self) -> Detail {
        let detail = Detail::new(self.kind());
        match *self {
            MarkingError::Range(range) => range.detail(),
            MarkingError::NotDecimal { given } => Detail { argument: NOT_DECIMAL, given, ..detail },
            MarkingError::Empty { form } => Detail { argument: form.argument(), ..detail },
            MarkingError::UnexpectedByte { form, byte, index } => {
                Detail { argument: form.argument(), given: f64::from(byte), index, ..detail }
            }
            MarkingError::UnknownColour { index } => Detail { index, ..detail },
            MarkingError::BandCount { count } => Detail {
                argument: MarkingForm::Bands.argument(),
                given: count as f64,
                lower: 3.0,
                upper: 6.0,
                ..detail
            },
            MarkingError::MisplacedColour { colour, band, bands, edition, index } => Detail {
                argument: COLOUR.wrapping_add(u16::from(colour.number())),
                given: f64::from(band),
                lower: f64::from(bands),
                upper: f64::from(edition.year()),
                index,
                ..detail
            },
            MarkingError::Fault { fault, index } => Detail { argument: fault.argument(), index, ..detail },
            MarkingError::DoubtfulLetter { letter, index, multiplier } => {
                let argument = if multiplier { MULTIPLIER_LETTER } else { TOLERANCE_LETTER };
                Detail { argument, given: f64::from(letter), index, ..detail }
            }
            MarkingError::DoubtfulMultiplier { letter, index, scheme } => Detail {
                argument: CHIP,
                given: f64::from(letter),
                lower: scheme.map_or(0.0, |scheme| f64::from(scheme.number())),
                index,
                ..detail
            },
            MarkingError::Unwritable { reason, nominal_ohm, tolerance } => Detail {
                argument: reason.argument(),
                given: nominal_ohm,
                lower: tolerance.unwrap_or_default(),
                ..detail
            },
            MarkingError::NoTolerance => Detail { argument: NO_TOLERANCE, ..detail },
            MarkingError::ZeroOhmLink => Detail { argument: ZERO_OHM_LINK, ..detail },
        }
    }

    /// Back from plain numbers, if they are of such an error.
    pub fn from_detail(detail: &Detail) -> Option<MarkingError> {
        let Detail { argument, given, lower, index, .. } = *detail;
        // A conversion from a float saturates; what it cannot have come from is then no known number.
        let byte = given as u8;
        Some(match (detail.kind, argument) {
            (Kind::NoSuchMarking, NOT_DECIMAL) => MarkingError::NotDecimal { given },
            (Kind::NoSuchMarking, _) => MarkingError::Unwritable {
                reason: Unwritable::from_argument(argument)?,
                nominal_ohm: given,
                tolerance: (lower > 0.0).then_some(lower),
            },
            (Kind::Empty, _) => MarkingError::Empty { form: MarkingForm::from_argument(argument)? },
            (Kind::UnexpectedByte, _) => {
                MarkingError::UnexpectedByte { form: MarkingForm::from_argument(argument)?, byte, index }
            }
            (Kind::UnknownColour, _) => MarkingError::UnknownColour { index },
            (Kind::WrongCount, _) => match MarkingForm::from_argument(argument)? {
                MarkingForm::Bands => MarkingError::BandCount { count: given as u64 },
                _ => return None,
            },
            (Kind::MisplacedColour, _) => MarkingError::MisplacedColour {
                colour: Colour::from_number(u8::try_from(argument.wrapping_sub(COLOUR)).ok()?)?,
                band: byte,
                bands: lower as u8,
                edition: Edition::from_year(detail.upper as u16)?,
                index,
            },
            (Kind::WrongForm, _) => MarkingError::Fault { fault: Fault::from_argument(argument)?, index },
            (Kind::DoubtfulCode, MULTIPLIER_LETTER | TOLERANCE_LETTER) if byte.is_ascii_graphic() => {
                MarkingError::DoubtfulLetter { letter: byte, index, multiplier: argument == MULTIPLIER_LETTER }
            }
            (Kind::DoubtfulCode, CHIP) if byte.is_ascii_graphic() => {
                MarkingError::DoubtfulMultiplier { letter: byte, index, scheme: ChipScheme::from_number(lower as u8) }
            }
            (Kind::MissingArgument, NO_TOLERANCE) => MarkingError::NoTolerance,
            (Kind::MissingArgument, ZERO_OHM_LINK) => MarkingError::ZeroOhmLink,
            _ => OutOfRange::from_detail(detail)?.into(),
        })
    }

    /// With the index of a band changed for the offset of its word.
    pub(super) fn at(self, starts: &[u64]) -> MarkingError {
        match self {
            MarkingError::MisplacedColour { colour, band, bands, edition, index } => {
                let index = starts.get(index as usize).copied().unwrap_or(index);
                MarkingError::MisplacedColour { colour, band, bands, edition, index }
            }
            other => other,
        }
    }
}
