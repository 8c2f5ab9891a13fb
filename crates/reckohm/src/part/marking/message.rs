//! The words of a marking and of what is wrong with one. Nothing here is reached where nothing is printed.

use core::fmt;

use super::colour::Role;
use super::{ChipScheme, Colour, Edition, Fault, Marking, MarkingForm, Unwritable};
use crate::number::{Decimal, Readable};

/// A marking as a person would say it.
pub(super) fn marking(marking: &Marking, f: &mut fmt::Formatter<'_>) -> fmt::Result {
    if marking.is_zero_ohm_link() {
        return f.write_str("zero-ohm link");
    }
    ohm(marking.nominal, f)?;
    if let Some(tolerance) = marking.tolerance {
        f.write_str(", ")?;
        plain(tolerance.scaled(2), f)?;
        f.write_str(" %")?;
    }
    match marking.tcr_ppm_per_kelvin {
        Some(coefficient) => write!(f, ", {coefficient} ppm/K"),
        None => Ok(()),
    }
}

/// A value with the prefix that leaves one to three figures before the point; below 1 ohm there is none, since a small m
/// is too easily taken for mega.
fn ohm(value: Decimal, f: &mut fmt::Formatter<'_>) -> fmt::Result {
    let prefixes = [(12, "T"), (9, "G"), (6, "M"), (3, "k")];
    let found = prefixes.into_iter().find(|(power, _)| value >= Decimal::new(1, *power));
    let (power, prefix) = found.unwrap_or((0, ""));
    plain(value.scaled(0_i32.wrapping_sub(power)), f)?;
    write!(f, " {prefix}ohm")
}

/// A positive decimal in full, without an exponent; all that occur here are short.
fn plain(value: Decimal, f: &mut fmt::Formatter<'_>) -> fmt::Result {
    let value = value.normalised();
    let (mut whole, mut fraction, mut unit, mut places) = (value.digits.unsigned_abs(), 0, 1_u64, 0_usize);
    for _ in 0..value.exponent.min(18) {
        whole = whole.wrapping_mul(10);
    }
    for _ in 0..value.exponent.wrapping_neg().clamp(0, 330) {
        // Past the last digit only zeros are added after the point.
        if unit <= 1_000_000_000_000_000_000 {
            fraction += whole % 10 * unit;
            unit = unit.wrapping_mul(10);
        }
        whole /= 10;
        places = places.wrapping_add(1);
    }
    if places == 0 { write!(f, "{whole}") } else { write!(f, "{whole}.{fraction:0places$}") }
}

/// What is needed where nothing was given.
pub(super) struct Needed(pub(super) MarkingForm);

impl fmt::Display for Needed {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self.0 {
            MarkingForm::Bands => "3 to 6 colours, as in \"yellow violet red gold\", or one black band",
            MarkingForm::Letters => "figures with a letter among them, as in 4K7 or 33KK",
            MarkingForm::Chip => "three or four characters, as in 472, 4701, R047 or 68C, or 0",
        })
    }
}

/// A byte as it can be printed.
pub(super) struct Byte(pub(super) u8);

impl fmt::Display for Byte {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self.0 {
            b' ' => f.write_str("a blank"),
            0x21..=0x7e => write!(f, "{:?}", char::from(self.0)),
            _ => write!(f, "the byte 0x{:02X}", self.0),
        }
    }
}

/// Which bytes a code is made of.
pub(super) struct Bytes(pub(super) MarkingForm);

impl fmt::Display for Bytes {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self.0 {
            MarkingForm::Bands => "letters with blanks, commas or hyphens between the colours allowed; write the words out",
            MarkingForm::Letters => {
                "figures, one letter R, K, M, G or T, and at the end one of A, B, C, D, F, G, J, K, M allowed, without blanks"
            }
            MarkingForm::Chip => {
                "figures, one R, or two figures and one letter Z, Y, X, A to F allowed, without blanks; \
                 a code such as 4K7 is a letter code"
            }
        })
    }
}

/// Why a colour cannot stand in its place.
pub(super) struct Misplaced {
    pub(super) colour: Colour,
    pub(super) band: u8,
    pub(super) bands: u8,
    pub(super) edition: Edition,
}

impl fmt::Display for Misplaced {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let Misplaced { colour, band, bands, edition } = *self;
        let role = Role::of(band, bands);
        if role == Role::Alone {
            return write!(
                f,
                "{colour} as the only band given, black allowed (zero-ohm link); a resistor has three bands at least"
            );
        }
        write!(f, "{colour} as band {band} of {bands} given, where {role} stands; ")?;
        let mut allowed = Colour::ALL.into_iter().filter(|colour| role.allows(*colour, edition)).peekable();
        let mut first = true;
        while let Some(colour) = allowed.next() {
            let gap = if first {
                ""
            } else if allowed.peek().is_some() {
                ", "
            } else {
                " or "
            };
            write!(f, "{gap}{colour}")?;
            first = false;
        }
        write!(f, " allowed (IEC 60062:{}); ", edition.year())?;
        f.write_str(match (role, colour) {
            (Role::FirstFigure, Colour::Black) => "a value does not begin with 0: try the other end",
            (Role::Tolerance, Colour::Yellow | Colour::Grey) => {
                "other editions have it; on high-voltage parts yellow and grey can stand for gold and silver, 5 % and 10 %"
            }
            (Role::Tolerance, Colour::Orange) | (Role::Multiplier, Colour::Pink) => "another edition has it",
            _ => "try the other end, or look at the colour again",
        })
    }
}

/// What is wrong with the form of a code.
pub(super) struct Faulty(pub(super) Fault, pub(super) u64);

impl fmt::Display for Faulty {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let Faulty(fault, index) = *self;
        match fault {
            Fault::NoMultiplierLetter => write!(
                f,
                "letter code: no letter R, K, M, G or T at byte {index}, where the figures end, one of them needed in the \
                 place of the decimal point, as in 4K7; figures alone are a chip code"
            ),
            Fault::NoFigure => write!(
                f,
                "letter code: no figure beside the letter at byte {index}, one to three figures before it or, \
                 for R, figures after it needed, as in 4K7 and R47"
            ),
            Fault::TooManyFigures => write!(
                f,
                "letter code: one figure too many at byte {index}, three before the letter and four in all allowed, \
                 as in 332K and 59R04; larger values take the next letter"
            ),
            Fault::LeadingZero => write!(
                f,
                "marking: a needless 0 at byte {index}, a first figure of 1 to 9 allowed, or one 0 before R; \
                 the first figure is significant, so look at it again"
            ),
            Fault::ZeroValue => f.write_str(
                "marking: every figure is 0, a value above 0 allowed; \
                 a zero-ohm link is marked 0 or 000, or with one black band",
            ),
            Fault::SmallLetter => write!(
                f,
                "marking: a small letter at byte {index}, capital letters allowed; a small m would be milli, where M is mega"
            ),
            Fault::LetterFirst => write!(
                f,
                "letter code: a letter other than R at byte {index} before all figures, figures before it needed; \
                 write 470R for 0.47 kohm"
            ),
            Fault::ChipLength => f.write_str(
                "chip code: neither three nor four characters given, three or four allowed, or 0 for a zero-ohm link; \
                 longer codes are often a maker's own",
            ),
            Fault::ChipCodeNumber => f.write_str(
                "chip code: the two figures before the letter are no place in E96, 01 to 96 allowed; look at them again",
            ),
        }
    }
}

/// A letter of which no source could be read.
pub(super) struct Doubtful {
    pub(super) letter: u8,
    pub(super) index: u64,
    pub(super) multiplier: bool,
}

impl fmt::Display for Doubtful {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let Doubtful { letter, index, multiplier } = *self;
        write!(f, "the letter {} at byte {index}, ", char::from(letter))?;
        if multiplier {
            return f.write_str(
                "R, K, M, G or T allowed (IEC 60062:2004, Table 2a); as milliohm it is in no source that could be read, \
                 so write R047 for 47 milliohm",
            );
        }
        f.write_str("A, B, C, D, F, G, J, K or M allowed as a tolerance; ")?;
        f.write_str(match letter {
            b'Q' | b'T' | b'S' | b'Z' => {
                "it is said to be an unequal tolerance for capacitors, but no source could be read"
            }
            _ => "no source for its meaning could be read, so give the tolerance as a number",
        })
    }
}

/// A multiplier letter on which sources disagree.
pub(super) struct Disputed {
    pub(super) letter: u8,
    pub(super) index: u64,
    pub(super) scheme: Option<ChipScheme>,
}

impl fmt::Display for Disputed {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let Disputed { letter, index, scheme } = *self;
        write!(f, "the letter {} at byte {index}, ", char::from(letter))?;
        if let Some(scheme) = scheme {
            write!(f, "which the {} scheme that was named does not have; ", scheme.name())?;
        }
        f.write_str(match letter {
            b'R' => {
                "x0.1 in the military scheme and x0.01 in the common list scheme; name the scheme, \
                 or write 10R0 for a decimal point"
            }
            b'S' => "x0.01 in the military scheme and x0.1 in the common list scheme; name the scheme",
            b'H' => "x10 in the common list scheme and x10^7 in the large values scheme; name the scheme",
            _ => "x10^6 in the large values scheme, from a single source; name the scheme if it is meant",
        })
    }
}

/// Why a value cannot be written in a code.
pub(super) struct NotWritten {
    pub(super) reason: Unwritable,
    pub(super) nominal_ohm: f64,
    pub(super) tolerance: Option<f64>,
}

impl fmt::Display for NotWritten {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let NotWritten { reason, nominal_ohm, tolerance } = *self;
        let form = match reason.argument() {
            ..=143 => MarkingForm::Bands,
            144..=148 => MarkingForm::Letters,
            _ => MarkingForm::Chip,
        };
        write!(f, "{form} for {} ohm", Readable(nominal_ohm))?;
        if let Some(tolerance) = tolerance {
            write!(f, ", tolerance {}", Readable(tolerance))?;
        }
        f.write_str(match reason {
            Unwritable::BandFigures => ": more figures than bands, three allowed; use a letter code",
            Unwritable::BandMultiplier => {
                ": no colour for the multiplier, 10^-2 to 10^9 allowed, from edition 2016 on 10^-3; use a letter code"
            }
            Unwritable::BandTolerance => {
                ": no band for this tolerance, those of the edition allowed, and 20 % only with two figures and no coefficient; \
                 use a letter code"
            }
            Unwritable::BandCoefficient => {
                ": no colour for the temperature coefficient, 1, 5, 10, 15, 20, 25, 50, 100 and 250 ppm/K allowed; leave it out"
            }
            Unwritable::LettersFigures => ": more than four figures, four allowed; round the value first",
            Unwritable::LettersLarge => ": 1000 Tohm or more, less allowed; T is the last letter",
            Unwritable::LettersSmall => ": more than four places after R, four allowed; there is no letter for milliohm",
            Unwritable::LettersTolerance => {
                ": no letter for this tolerance, 0.05, 0.1, 0.25, 0.5, 1, 2, 5, 10 and 20 % allowed; mark it without tolerance"
            }
            Unwritable::LettersZero => ": no code for 0, a value above 0 allowed; use one black band or the chip code 0",
            Unwritable::ChipFigures => ": more figures than the code holds, two of three or three of four characters allowed",
            Unwritable::ChipLarge => ": no figure for the multiplier, up to 10^9 allowed; use a letter code",
            Unwritable::ChipSmall => ": more places after R than the code holds, two of three or three of four allowed",
            Unwritable::ChipNotE96 => ": not a value of E96, which these codes count; use four characters",
            Unwritable::ChipNoLetter => ": no letter for the multiplier, Z (10^-3) to F (10^5) allowed; use four characters",
            Unwritable::ChipTolerance => ": the code says 1 %, a tolerance of 0.01 allowed; use four characters",
        })
    }
}
