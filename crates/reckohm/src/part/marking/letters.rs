//! Letter-and-digit codes, read and written (IEC 60062:2004, clause 4.2.1 and Table 2a): a letter R, K, M, G or T in the
//! place of the decimal point, then, if at all, a letter for the tolerance.
//!
//! Tolerance letters: A 0.05 %, B 0.1 %, C 0.25 %, D 0.5 %, F 1 %, G 2 %, J 5 %, K 10 %, M 20 %. Not accepted, since no
//! source for them could be read: E, L, P, W, N, the unequal Q, S, T, Z, and L in the place of the decimal point.

use super::figures::Figures;
use super::{Fault, MarkText, Marking, MarkingError, MarkingForm, Unwritable};
use crate::number::Decimal;

const MULTIPLIERS: [u8; 5] = *b"RKMGT";

/// Tolerance letters and what they stand for, as digits and a power of ten.
const TOLERANCES: [(u8, Decimal); 9] = [
    (b'A', Decimal::new(5, -4)),
    (b'B', Decimal::new(1, -3)),
    (b'C', Decimal::new(25, -4)),
    (b'D', Decimal::new(5, -3)),
    (b'F', Decimal::new(1, -2)),
    (b'G', Decimal::new(2, -2)),
    (b'J', Decimal::new(5, -2)),
    (b'K', Decimal::new(1, -1)),
    (b'M', Decimal::new(2, -1)),
];

const FORM: MarkingForm = MarkingForm::Letters;

impl Marking {
    /// What this letter-and-digit code says, such as "4K7", "R47", "47K3F": up to three figures before the letter and four
    /// in all; capital letters only, since a small m would be milli. A single 0 before R is accepted.
    ///
    /// # Errors
    /// [`MarkingError`] for another form, for a letter without a source ([`MarkingError::DoubtfulLetter`]) and for other
    /// bytes; the index is the byte offset in the text.
    ///
    /// ```
    /// use reckohm::marking::Marking;
    /// let marking = Marking::from_letters("47K3F")?;
    /// assert_eq!((marking.nominal_ohm(), marking.tolerance()), (47_300.0, Some(0.01)));
    /// assert_eq!(Marking::from_letters("0R47")?, Marking::from_letters("R47")?);
    /// assert!(Marking::from_letters("4k7").is_err());
    /// # Ok::<(), reckohm::marking::MarkingError>(())
    /// ```
    pub fn from_letters(text: impl AsRef<[u8]>) -> Result<Marking, MarkingError> {
        read(text.as_ref())
    }

    /// The letter-and-digit code that says this value, and its tolerance if it has one. A temperature coefficient is left
    /// out: these codes do not hold one.
    ///
    /// # Errors
    /// [`MarkingError::Unwritable`] with the reason: more than four figures, too large or too small a value, a tolerance
    /// without a letter, the zero-ohm link.
    ///
    /// ```
    /// use reckohm::marking::{Edition, Marking};
    /// let marking = Marking::from_bands("green red gold silver", Edition::E2016)?;
    /// assert_eq!(marking.to_letters()?.as_str(), "5R2K");
    /// # Ok::<(), reckohm::marking::MarkingError>(())
    /// ```
    pub fn to_letters(&self) -> Result<MarkText, MarkingError> {
        if self.is_zero_ohm_link() {
            return Err(self.unwritable(Unwritable::LettersZero));
        }
        let figures = Figures::of(self.nominal).ok_or(self.unwritable(Unwritable::LettersFigures))?;
        let mut text = MarkText::default();
        if figures.order < 0 {
            // All figures stand after the letter, at least two of them, as in R10.
            let zeros = figures.order.wrapping_neg().wrapping_sub(1);
            let after = zeros.saturating_add(figures.count).max(2);
            if after > 4 {
                return Err(self.unwritable(Unwritable::LettersSmall));
            }
            text.push(b'R');
            for place in 0..after {
                text.push_digit(figures.figure(place.wrapping_sub(zeros)));
            }
        } else {
            let letter = MULTIPLIERS.get((figures.order / 3) as usize);
            let letter = *letter.ok_or(self.unwritable(Unwritable::LettersLarge))?;
            let before = figures.order % 3 + 1;
            // At least two figures in all, as in 1K0.
            for place in 0..figures.count.max(before).max(2) {
                if place == before {
                    text.push(letter);
                }
                text.push_digit(figures.figure(place));
            }
            if figures.count <= before && before > 1 {
                text.push(letter);
            }
        }
        if let Some(tolerance) = self.tolerance {
            let letter = TOLERANCES.iter().find(|(_, value)| *value == tolerance);
            text.push(letter.ok_or(self.unwritable(Unwritable::LettersTolerance))?.0);
        }
        Ok(text)
    }
}

fn read(text: &[u8]) -> Result<Marking, MarkingError> {
    if text.is_empty() {
        return Err(MarkingError::Empty { form: FORM });
    }
    let fault = |fault, index: usize| Err(MarkingError::Fault { fault, index: index as u64 });
    let count = |text: &[u8]| text.iter().take_while(|byte| byte.is_ascii_digit()).count();

    let split = count(text);
    let Some((before, [letter, rest @ ..])) = text.split_at_checked(split) else {
        return fault(Fault::NoMultiplierLetter, split);
    };
    let exponent = match MULTIPLIERS.iter().position(|known| known == letter) {
        Some(thousands) => (thousands as i32).wrapping_mul(3),
        None => return refuse(*letter, split, true),
    };
    let Some((after, tail)) = rest.split_at_checked(count(rest)) else {
        return fault(Fault::NoFigure, split);
    };
    let tail_index = split.wrapping_add(1).wrapping_add(after.len());

    if before.is_empty() && *letter != b'R' {
        return fault(Fault::LetterFirst, split);
    }
    if before.is_empty() && after.is_empty() {
        return fault(Fault::NoFigure, split);
    }
    let figures_before = if before == b"0" { 0 } else { before.len() };
    if figures_before > 3 {
        return fault(Fault::TooManyFigures, 3);
    }
    let room = 4_usize.saturating_sub(figures_before);
    if after.len() > room {
        return fault(Fault::TooManyFigures, split.wrapping_add(1).wrapping_add(room));
    }
    let mut digits = 0_i64;
    for byte in before.iter().chain(after) {
        digits = digits.wrapping_mul(10).wrapping_add(i64::from(byte.wrapping_sub(b'0')));
    }
    if digits == 0 {
        return fault(Fault::ZeroValue, 0);
    }
    if before.first() == Some(&b'0') && !(before == b"0" && *letter == b'R') {
        return fault(Fault::LeadingZero, 0);
    }

    let tolerance = match tail {
        [] => None,
        [letter, more @ ..] => {
            let Some((_, tolerance)) = TOLERANCES.iter().find(|(known, _)| known == letter) else {
                return refuse(*letter, tail_index, false);
            };
            if let Some(&byte) = more.first() {
                let index = tail_index.wrapping_add(1) as u64;
                return Err(MarkingError::UnexpectedByte { form: FORM, byte, index });
            }
            Some(*tolerance)
        }
    };
    let exponent = exponent.wrapping_sub(after.len() as i32);
    Ok(Marking::new(Decimal::new(digits, exponent), tolerance, None))
}

/// Why this byte cannot stand as the multiplier letter, or as the tolerance letter.
fn refuse(byte: u8, index: usize, multiplier: bool) -> Result<Marking, MarkingError> {
    let index = index as u64;
    Err(match byte {
        b'L' => MarkingError::DoubtfulLetter { letter: byte, index, multiplier },
        b'E' | b'P' | b'W' | b'N' | b'Q' | b'T' | b'S' | b'Z' if !multiplier => {
            MarkingError::DoubtfulLetter { letter: byte, index, multiplier }
        }
        b'a'..=b'z' => MarkingError::Fault { fault: Fault::SmallLetter, index },
        b'A'..=b'Z' if multiplier => MarkingError::Fault { fault: Fault::NoMultiplierLetter, index },
        _ => MarkingError::UnexpectedByte { form: FORM, byte, index },
    })
}
