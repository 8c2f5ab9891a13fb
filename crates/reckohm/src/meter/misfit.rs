//! A number in a display text that a span does not show in this way, and what it may have been.

use core::fmt;

use crate::number::{Detail, Kind};

/// What is wrong with the number in a display text.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[non_exhaustive]
pub enum MisfitText {
    /// No point where the span shows one.
    MissingPoint,
    /// Fewer digits behind the point than the span shows.
    TooFewDecimals,
    /// More digits behind the point than the span shows.
    TooManyDecimals,
    /// More digits in front of the point than the span has.
    TooManyDigits,
    /// At full scale or beyond it.
    BeyondFullScale,
    /// Not a multiple of a step of 2 or 5 in the last digit, or of a step coarser than the unit.
    OffGrid,
    /// A lone "1" that may be over-range or one step.
    AmbiguousOne,
}

/// How a number is shown: the unit's power of ten in ohm and the digits behind the point.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Form {
    /// The power of ten of the unit in ohm: -3, 0, 3, 6 or 9.
    pub unit: i8,
    /// How many digits stand behind the point: 18 at most, since a step is 1e-9 ohm at least.
    pub decimals: u8,
}

/// A number in a display text that the span does not show in this way.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Misfit {
    /// What is wrong.
    pub text: MisfitText,
    /// The offset of the byte where it shows.
    pub at: u64,
    /// The number as given, without its sign, in the unit of `form`.
    pub given: f64,
    /// How many digits it has behind the point.
    pub given_decimals: u8,
    /// Another reading of this span in ohm that the text would fit, 0 if there is none; where the number is off the grid,
    /// the step.
    pub could_be_ohm: f64,
    /// The largest value in ohm that the span shows.
    pub largest_ohm: f64,
    /// How the span shows numbers, in the unit that the text is written in.
    pub form: Form,
}

impl MisfitText {
    const fn kind(self) -> Kind {
        match self {
            MisfitText::MissingPoint => Kind::MissingPoint,
            MisfitText::TooFewDecimals => Kind::TooFewDecimals,
            MisfitText::TooManyDecimals => Kind::TooManyDecimals,
            MisfitText::TooManyDigits => Kind::TooManyDigits,
            MisfitText::BeyondFullScale => Kind::BeyondFullScale,
            MisfitText::OffGrid => Kind::OffGrid,
            MisfitText::AmbiguousOne => Kind::AmbiguousText,
        }
    }

    pub(super) const fn from_kind(kind: Kind) -> Option<MisfitText> {
        Some(match kind {
            Kind::MissingPoint => MisfitText::MissingPoint,
            Kind::TooFewDecimals => MisfitText::TooFewDecimals,
            Kind::TooManyDecimals => MisfitText::TooManyDecimals,
            Kind::TooManyDigits => MisfitText::TooManyDigits,
            Kind::BeyondFullScale => MisfitText::BeyondFullScale,
            Kind::OffGrid => MisfitText::OffGrid,
            Kind::AmbiguousText => MisfitText::AmbiguousOne,
            _ => return None,
        })
    }
}

impl Misfit {
    /// The same as plain numbers: given, the other reading in ohm as the lower end, the largest shown in ohm as the upper
    /// end, the offset as index. The argument holds the form: digits given behind the point times 512, digits shown behind
    /// the point times 8, and 1 to 5 for milliohm, ohm, kilohm, megohm, gigohm.
    pub fn detail(&self) -> Detail {
        let unit = u16::from((self.form.unit.wrapping_div(3).wrapping_add(2)) as u8);
        let decimals = u16::from(self.form.decimals).wrapping_mul(8);
        let given_decimals = u16::from(self.given_decimals).wrapping_mul(512);
        Detail {
            argument: given_decimals.wrapping_add(decimals).wrapping_add(unit),
            given: self.given,
            lower: self.could_be_ohm,
            upper: self.largest_ohm,
            index: self.at,
            ..Detail::new(self.text.kind())
        }
    }

    /// Back from plain numbers, if they are of this.
    pub fn from_detail(detail: &Detail) -> Option<Misfit> {
        let unit = match detail.argument % 8 {
            code @ 1..=5 => (code as i8).wrapping_sub(2).wrapping_mul(3),
            _ => return None,
        };
        Some(Misfit {
            text: MisfitText::from_kind(detail.kind)?,
            at: detail.index,
            given: detail.given,
            given_decimals: (detail.argument / 512) as u8,
            could_be_ohm: detail.lower,
            largest_ohm: detail.upper,
            form: Form { unit, decimals: (detail.argument / 8 % 64) as u8 },
        })
    }

    /// The name of the unit, and how many ohm it is.
    const fn unit(&self) -> (&'static str, f64) {
        match self.form.unit {
            -3 => ("milliohm", 1.0e-3),
            3 => ("kohm", 1.0e3),
            6 => ("Mohm", 1.0e6),
            9 => ("Gohm", 1.0e9),
            _ => ("ohm", 1.0),
        }
    }
}

impl fmt::Display for Misfit {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let Misfit { given, could_be_ohm, largest_ohm, .. } = *self;
        let (name, unit) = self.unit();
        let (decimals, given_decimals) = (usize::from(self.form.decimals), usize::from(self.given_decimals));
        let plural = if given_decimals == 1 { "" } else { "s" };
        match self.text {
            MisfitText::MissingPoint => write!(f, "display text: {given:.0} given without its point")?,
            MisfitText::TooFewDecimals | MisfitText::TooManyDecimals => write!(
                f,
                "display text: {given:.given_decimals$} given with {given_decimals} digit{plural} behind the point"
            )?,
            MisfitText::TooManyDigits => {
                write!(f, "display text: {given:.given_decimals$} given with too many digits in front of the point")?;
            }
            MisfitText::BeyondFullScale => {
                write!(f, "display text: {given:.given_decimals$} given, which is beyond the span")?;
            }
            MisfitText::OffGrid => write!(
                f,
                "display text: {given:.given_decimals$} given, which is no multiple of the step of {could_be_ohm} ohm"
            )?,
            MisfitText::AmbiguousOne => {
                write!(f, "display text: a lone 1 given, which may be over-range or a value of 1 {name} on this span")?
            }
        }
        write!(f, ", {:.decimals$} to {:.decimals$} {name} is shown here", 0.0, largest_ohm / unit)?;
        let other = could_be_ohm / unit;
        match self.text {
            MisfitText::MissingPoint => {
                let as_it_is = given * unit <= largest_ohm;
                match (could_be_ohm > 0.0, as_it_is) {
                    (true, true) => write!(f, "; it could be {other:.decimals$} or {given:.decimals$} {name}")?,
                    (true, false) => write!(f, "; it could be {other:.decimals$} {name}")?,
                    (false, true) => write!(f, "; it could be {given:.decimals$} {name}")?,
                    (false, false) => write!(f, "; it fits no reading here")?,
                }
                if given == 1.0 {
                    write!(f, ", or over-range if this meter marks it by a lone 1")?;
                }
                write!(f, "; write all digits and the point as the display shows them")
            }
            MisfitText::TooFewDecimals if could_be_ohm > 0.0 => write!(
                f,
                "; it could be {other:.decimals$} {name} with its last digits left out, or the reading of a higher span; \
                 write all digits as the display shows them"
            ),
            MisfitText::TooFewDecimals => {
                write!(f, "; it could be the reading of a higher span; look at the span that it was read on")
            }
            MisfitText::TooManyDecimals => {
                write!(f, "; it could be the reading of a lower span; look at the span that it was read on")
            }
            MisfitText::TooManyDigits => {
                write!(f, "; it could be {other:.decimals$} {name}; leave the first zeros away")
            }
            MisfitText::BeyondFullScale => {
                write!(f, "; look at the span that it was read on, and at the display's unit")
            }
            MisfitText::OffGrid => write!(f, "; look at the last digit"),
            MisfitText::AmbiguousOne => {
                write!(f, "; write the value with a zero in front (01), and over-range by another mark of the span")
            }
        }
    }
}
