//! Chip codes, read and written: three or four characters on a resistor for surface mounting.
//!
//! | code | meaning | example |
//! |---|---|---|
//! | three figures | two figures, a power of ten | 472 is 4.7 kohm |
//! | four figures | three figures, a power of ten | 4701 is 4.7 kohm |
//! | with R | R is the decimal point | 4R7, R047, 10R0 |
//! | two figures and a letter | the place in E96, a multiplier letter; 1 % | 68C is 49.9 kohm |
//! | 0, 000, 0000 | zero-ohm link | |
//!
//! Multiplier letters: Z 10^-3, Y 10^-2, X 10^-1, A 1, B 10, C 10^2, D 10^3, E 10^4, F 10^5. On R, S, H and G sources
//! disagree, or there is only one: they are refused unless the caller names a [`ChipScheme`]. So are two figures and R:
//! "10R" could be 10 ohm as well.

use super::figures::Figures;
use super::{Fault, MarkText, Marking, MarkingError, MarkingForm, Unwritable};
use crate::number::Decimal;
use crate::part::preferred::{self, Series};

const FORM: MarkingForm = MarkingForm::Chip;
const ONE_PERCENT: Decimal = Decimal::new(1, -2);
const TWO_PERCENT: Decimal = Decimal::new(2, -2);

/// The letters that no source read contradicts, from 10^-3 upwards.
const LETTERS: [u8; 9] = *b"ZYXABCDEF";

/// Which list a multiplier letter is meant to be of, for the letters R, S, H and G alone.
///
/// ```
/// use reckohm::marking::{ChipScheme, Marking};
/// assert_eq!(Marking::from_chip("09R", Some(ChipScheme::Military))?.nominal_ohm(), 12.1);
/// assert_eq!(Marking::from_chip("09R", Some(ChipScheme::CommonList))?.nominal_ohm(), 1.21);
/// assert!(Marking::from_chip("09R", None).is_err());
/// # Ok::<(), reckohm::marking::MarkingError>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[repr(u8)]
pub enum ChipScheme {
    /// As a reference page gives it for parts to the military specification: R is 10^-1, S is 10^-2.
    Military = 1,
    /// As lists in common use have it: R is 10^-2 beside Y, S is 10^-1 beside X, H is 10 beside B.
    CommonList = 2,
    /// As one data sheet continues the letters upwards: G is 10^6, H is 10^7.
    LargeValues = 3,
}

impl ChipScheme {
    /// Every scheme, in the order of its number.
    pub const ALL: [ChipScheme; 3] = [ChipScheme::Military, ChipScheme::CommonList, ChipScheme::LargeValues];

    /// Its number, at the C door.
    ///
    /// ```
    /// # use reckohm::marking::ChipScheme;
    /// assert_eq!(ChipScheme::Military.number(), 1);
    /// ```
    pub const fn number(self) -> u8 {
        self as u8
    }

    /// The scheme with this number, if there is one.
    ///
    /// ```
    /// # use reckohm::marking::ChipScheme;
    /// assert_eq!(ChipScheme::from_number(2), Some(ChipScheme::CommonList));
    /// assert_eq!(ChipScheme::from_number(0), None);
    /// ```
    pub fn from_number(number: u8) -> Option<ChipScheme> {
        ChipScheme::ALL.into_iter().find(|scheme| scheme.number() == number)
    }

    /// Its name in words.
    ///
    /// ```
    /// # use reckohm::marking::ChipScheme;
    /// assert_eq!(ChipScheme::CommonList.name(), "common list");
    /// ```
    pub const fn name(self) -> &'static str {
        match self {
            ChipScheme::Military => "military",
            ChipScheme::CommonList => "common list",
            ChipScheme::LargeValues => "large values",
        }
    }

    fn exponent(self, letter: u8) -> Option<i32> {
        match (self, letter) {
            (ChipScheme::Military, b'R') => Some(-1),
            (ChipScheme::Military, b'S') => Some(-2),
            (ChipScheme::CommonList, b'R') => Some(-2),
            (ChipScheme::CommonList, b'S') => Some(-1),
            (ChipScheme::CommonList, b'H') => Some(1),
            (ChipScheme::LargeValues, b'G') => Some(6),
            (ChipScheme::LargeValues, b'H') => Some(7),
            _ => None,
        }
    }
}

/// One of the three forms of a chip code, to be written.
///
/// ```
/// use reckohm::marking::{ChipForm, Marking};
/// let marking = Marking::from_letters("49K9F")?;
/// assert_eq!(marking.to_chip_as(ChipForm::FourCharacters)?.as_str(), "4992");
/// assert_eq!(marking.to_chip_as(ChipForm::CodeAndLetter)?.as_str(), "68C");
/// # Ok::<(), reckohm::marking::MarkingError>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[repr(u8)]
pub enum ChipForm {
    /// Two figures and a power of ten, or two figures and R.
    ThreeCharacters = 1,
    /// Three figures and a power of ten, or three figures and R.
    FourCharacters = 2,
    /// The place in E96 and a letter, which says 1 % as well.
    CodeAndLetter = 3,
}

impl ChipForm {
    /// The form with this number, if there is one.
    ///
    /// ```
    /// # use reckohm::marking::ChipForm;
    /// assert_eq!(ChipForm::from_number(3), Some(ChipForm::CodeAndLetter));
    /// assert_eq!(ChipForm::from_number(4), None);
    /// ```
    pub fn from_number(number: u8) -> Option<ChipForm> {
        match number {
            1 => Some(ChipForm::ThreeCharacters),
            2 => Some(ChipForm::FourCharacters),
            3 => Some(ChipForm::CodeAndLetter),
            _ => None,
        }
    }
}

impl Marking {
    /// What this chip code says. `scheme` matters only for the multiplier letters R, S, H and G.
    ///
    /// # Errors
    /// [`MarkingError`] for another form, for a letter on which sources disagree
    /// ([`MarkingError::DoubtfulMultiplier`]) and for other bytes; the index is the byte offset in the text.
    ///
    /// ```
    /// use reckohm::marking::Marking;
    /// assert_eq!(Marking::from_chip("472", None)?.nominal_ohm(), 4700.0);
    /// assert_eq!(Marking::from_chip("R047", None)?.nominal_ohm(), 0.047);
    /// let marking = Marking::from_chip("68C", None)?;
    /// assert_eq!((marking.nominal_ohm(), marking.tolerance()), (49_900.0, Some(0.01)));
    /// # Ok::<(), reckohm::marking::MarkingError>(())
    /// ```
    pub fn from_chip(text: impl AsRef<[u8]>, scheme: Option<ChipScheme>) -> Result<Marking, MarkingError> {
        read(text.as_ref(), scheme)
    }

    /// The chip code that says this value: four characters for 2 % and tighter, else three where two figures are enough,
    /// "0" for the zero-ohm link. The tolerance and the temperature coefficient are left out: these codes do not hold them.
    ///
    /// # Errors
    /// [`MarkingError::Unwritable`] with the reason: more than three figures, too large or too small a value.
    ///
    /// ```
    /// use reckohm::marking::Marking;
    /// assert_eq!(Marking::from_letters("4K7J")?.to_chip()?.as_str(), "472");
    /// assert_eq!(Marking::from_letters("4K7F")?.to_chip()?.as_str(), "4701");
    /// # Ok::<(), reckohm::marking::MarkingError>(())
    /// ```
    pub fn to_chip(&self) -> Result<MarkText, MarkingError> {
        let four = ChipForm::FourCharacters;
        if self.tolerance.is_some_and(|tolerance| tolerance <= TWO_PERCENT) {
            return self.to_chip_as(four);
        }
        self.to_chip_as(ChipForm::ThreeCharacters).or_else(|_| self.to_chip_as(four))
    }

    /// The chip code of this form that says this value.
    ///
    /// # Errors
    /// [`MarkingError::Unwritable`] with the reason: too many figures, too large or too small a value, and for
    /// [`ChipForm::CodeAndLetter`] a value that is not of E96 or a tolerance other than 1 %.
    ///
    /// ```
    /// use reckohm::marking::{ChipForm, Marking};
    /// let marking = Marking::from_letters("10K")?;
    /// assert_eq!(marking.to_chip_as(ChipForm::ThreeCharacters)?.as_str(), "103");
    /// assert!(marking.to_chip_as(ChipForm::CodeAndLetter).is_err()); // it would say 1 %
    /// # Ok::<(), reckohm::marking::MarkingError>(())
    /// ```
    pub fn to_chip_as(&self, form: ChipForm) -> Result<MarkText, MarkingError> {
        let mut text = MarkText::default();
        if self.is_zero_ohm_link() {
            if form == ChipForm::CodeAndLetter {
                return Err(self.unwritable(Unwritable::ChipNotE96));
            }
            text.push(b'0');
            return Ok(text);
        }
        let figures = Figures::of(self.nominal).ok_or(self.unwritable(Unwritable::ChipFigures))?;
        let room = match form {
            ChipForm::ThreeCharacters => 2,
            ChipForm::FourCharacters => 3,
            ChipForm::CodeAndLetter => return self.code_and_letter(figures),
        };
        if figures.count > room {
            return Err(self.unwritable(Unwritable::ChipFigures));
        }
        let exponent = figures.order.wrapping_add(1).wrapping_sub(room);
        if exponent >= 0 {
            if exponent > 9 {
                return Err(self.unwritable(Unwritable::ChipLarge));
            }
            for place in 0..room {
                text.push_digit(figures.figure(place));
            }
            text.push_digit(exponent as u8);
            return Ok(text);
        }
        // Zeros between R and the first figure take the places of figures.
        let zeros = figures.order.wrapping_add(1).min(0).wrapping_neg();
        if zeros.saturating_add(figures.count) > room {
            return Err(self.unwritable(Unwritable::ChipSmall));
        }
        let before = figures.order.wrapping_add(1).max(0);
        for place in 0..room {
            if place == before {
                text.push(b'R');
            }
            text.push_digit(figures.figure(place.wrapping_sub(zeros)));
        }
        Ok(text)
    }

    fn code_and_letter(&self, figures: Figures) -> Result<MarkText, MarkingError> {
        if self.tolerance != Some(ONE_PERCENT) {
            return Err(self.unwritable(Unwritable::ChipTolerance));
        }
        let place = preferred::decade(Series::E96).iter().position(|value| *value == figures.three());
        let place = place.filter(|_| figures.count <= 3).ok_or(self.unwritable(Unwritable::ChipNotE96))?;
        // The letters begin at 10^-3, for a value of three figures.
        let letter = usize::try_from(figures.order.wrapping_add(1)).ok().and_then(|index| LETTERS.get(index));
        let letter = *letter.ok_or(self.unwritable(Unwritable::ChipNoLetter))?;
        let code = (place as u8).wrapping_add(1);
        let mut text = MarkText::default();
        text.push_digit(code / 10);
        text.push_digit(code % 10);
        text.push(letter);
        Ok(text)
    }
}

fn read(text: &[u8], scheme: Option<ChipScheme>) -> Result<Marking, MarkingError> {
    let fault = |fault, index: usize| Err(MarkingError::Fault { fault, index: index as u64 });
    match text {
        [] => return Err(MarkingError::Empty { form: FORM }),
        b"0" | b"000" | b"0000" => return Ok(Marking::ZERO_OHM_LINK),
        _ => {}
    }
    for (index, &byte) in text.iter().enumerate() {
        match byte {
            b'0'..=b'9' | b'A'..=b'Z' => {}
            b'a'..=b'z' => return fault(Fault::SmallLetter, index),
            _ => return Err(MarkingError::UnexpectedByte { form: FORM, byte, index: index as u64 }),
        }
    }
    if !(3..=4).contains(&text.len()) {
        return fault(Fault::ChipLength, 0);
    }
    if let &[tens @ b'0'..=b'9', ones @ b'0'..=b'9', letter @ b'A'..=b'Z'] = text {
        return code_and_letter(tens, ones, letter, scheme);
    }
    let (mut digits, mut point, mut last) = (0_i64, None, 0);
    for (index, &byte) in text.iter().enumerate() {
        match (byte, point) {
            (b'0'..=b'9', _) => {
                last = byte.wrapping_sub(b'0');
                digits = digits.wrapping_mul(10).wrapping_add(i64::from(last));
            }
            (b'R', None) => point = Some(index),
            _ => return Err(MarkingError::UnexpectedByte { form: FORM, byte, index: index as u64 }),
        }
    }
    if digits == 0 {
        return fault(Fault::ZeroValue, 0);
    }
    // A 0 in front is legal only as the one figure before R.
    if text.first() == Some(&b'0') && point != Some(1) {
        return fault(Fault::LeadingZero, 0);
    }
    let nominal = match point {
        Some(index) => Decimal::new(digits, index.wrapping_add(1).wrapping_sub(text.len()) as i32),
        None => Decimal::new(digits / 10, i32::from(last)),
    };
    Ok(Marking::new(nominal, None, None))
}

fn code_and_letter(tens: u8, ones: u8, letter: u8, scheme: Option<ChipScheme>) -> Result<Marking, MarkingError> {
    let exponent = match letter {
        b'R' | b'S' | b'H' | b'G' => {
            let found = scheme.and_then(|scheme| scheme.exponent(letter));
            found.ok_or(MarkingError::DoubtfulMultiplier { letter, index: 2, scheme })?
        }
        _ => match LETTERS.iter().position(|known| *known == letter) {
            Some(place) => (place as i32).wrapping_sub(3),
            None => return Err(MarkingError::UnexpectedByte { form: FORM, byte: letter, index: 2 }),
        },
    };
    let code = tens.wrapping_sub(b'0').wrapping_mul(10).wrapping_add(ones.wrapping_sub(b'0'));
    let figures = preferred::decade(Series::E96).get(usize::from(code).wrapping_sub(1));
    let figures = figures.ok_or(MarkingError::Fault { fault: Fault::ChipCodeNumber, index: 0 })?;
    Ok(Marking::new(Decimal::new(i64::from(*figures), exponent), Some(ONE_PERCENT), None))
}
