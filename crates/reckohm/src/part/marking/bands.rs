//! Colour bands, read and written (IEC 60062).
//!
//! | bands | meaning |
//! |---|---|
//! | 1 | black alone: zero-ohm link |
//! | 3 | figure, figure, multiplier; no tolerance band means 20 % |
//! | 4 | figure, figure, multiplier, tolerance |
//! | 5 | figure, figure, figure, multiplier, tolerance |
//! | 6 | as 5, then the temperature coefficient |
//!
//! Left out: a failure-rate band as the fifth after four-band coding (US military parts) reads as five bands; the
//! interrupted band for the temperature coefficient of edition 2016, of which only the abstract could be read.

use core::fmt;

use super::colour::Role;
use super::figures::Figures;
use super::{Colour, Edition, Marking, MarkingError, MarkingForm, Unwritable};
use crate::number::Decimal;

const TWENTY_PERCENT: Decimal = Decimal::new(2, -1);
const TWO_PERCENT: Decimal = Decimal::new(2, -2);

/// The bands of a resistor in reading order, one to six of them.
///
/// ```
/// use reckohm::marking::{Colour, Edition, Marking};
/// let bands = Marking::from_letters("1K0F")?.to_bands(Edition::E2016)?;
/// assert_eq!(bands.to_string(), "brown black black brown brown");
/// assert_eq!(bands.colours()[3], Colour::Brown);
/// # Ok::<(), reckohm::marking::MarkingError>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Bands {
    colours: [Colour; 6],
    count: u8,
}

impl Bands {
    const NONE: Bands = Bands { colours: [Colour::Black; 6], count: 0 };

    /// The colours in reading order.
    ///
    /// ```
    /// # use reckohm::marking::{Colour, Edition, Marking};
    /// let bands = Marking::ZERO_OHM_LINK.to_bands(Edition::E2016)?;
    /// assert_eq!(bands.colours(), [Colour::Black]);
    /// # Ok::<(), reckohm::marking::MarkingError>(())
    /// ```
    pub fn colours(&self) -> &[Colour] {
        self.colours.get(..usize::from(self.count)).unwrap_or(&[])
    }

    /// The same bands from the other end.
    ///
    /// ```
    /// # use reckohm::marking::{Edition, Marking};
    /// let bands = Marking::from_letters("1K0F")?.to_bands(Edition::E2016)?;
    /// assert_eq!(bands.reversed().to_string(), "brown brown black black brown");
    /// # Ok::<(), reckohm::marking::MarkingError>(())
    /// ```
    pub fn reversed(&self) -> Bands {
        let mut turned = Bands::NONE;
        for colour in self.colours().iter().rev() {
            turned.push(*colour);
        }
        turned
    }

    /// Adds a band; more than six are counted but not kept.
    fn push(&mut self, colour: Colour) {
        if let Some(place) = self.colours.get_mut(usize::from(self.count)) {
            *place = colour;
        }
        self.count = self.count.saturating_add(1);
    }

    pub(super) fn of(colours: &[Colour]) -> Result<Bands, MarkingError> {
        let mut bands = Bands::NONE;
        for colour in colours {
            bands.push(*colour);
        }
        bands.checked(colours.len() as u64)
    }

    fn checked(self, count: u64) -> Result<Bands, MarkingError> {
        match count {
            0 => Err(MarkingError::Empty { form: MarkingForm::Bands }),
            1 | 3..=6 => Ok(self),
            _ => Err(MarkingError::BandCount { count }),
        }
    }

    /// The bands of a text, and the offset of each word.
    pub(super) fn parse(text: &[u8]) -> Result<(Bands, [u64; 6]), MarkingError> {
        let form = MarkingForm::Bands;
        let (mut bands, mut starts, mut count) = (Bands::NONE, [0; 6], 0_u64);
        let mut start = None;
        let end = core::iter::once((text.len(), b' '));
        for (index, byte) in text.iter().copied().enumerate().chain(end) {
            match (byte, start) {
                (b' ' | b'\t' | b',' | b'-', None) => {}
                (b' ' | b'\t' | b',' | b'-', Some(first)) => {
                    let colour = text.get(first..index).and_then(Colour::from_word);
                    let colour = colour.ok_or(MarkingError::UnknownColour { index: first as u64 })?;
                    if let Some(place) = starts.get_mut(usize::from(bands.count)) {
                        *place = first as u64;
                    }
                    bands.push(colour);
                    count = count.wrapping_add(1);
                    start = None;
                }
                (byte, first) if byte.is_ascii_alphabetic() => start = first.or(Some(index)),
                _ => return Err(MarkingError::UnexpectedByte { form, byte, index: index as u64 }),
            }
        }
        Ok((bands.checked(count)?, starts))
    }

    /// What these bands say in this edition; an error's index is that of the band, counted from 0.
    pub(super) fn decode(&self, edition: Edition) -> Result<Marking, MarkingError> {
        let (mut digits, mut exponent) = (0_i64, 0);
        let mut tolerance = if self.count == 3 { Some(TWENTY_PERCENT) } else { None };
        let mut coefficient = None;
        for (index, &colour) in self.colours().iter().enumerate() {
            let band = (index as u8).wrapping_add(1);
            let role = Role::of(band, self.count);
            if !role.allows(colour, edition) {
                let index = index as u64;
                return Err(MarkingError::MisplacedColour { colour, band, bands: self.count, edition, index });
            }
            match role {
                Role::Alone | Role::FirstFigure | Role::Figure => {
                    let digit = i64::from(colour.digit().unwrap_or_default());
                    digits = digits.wrapping_mul(10).wrapping_add(digit);
                }
                Role::Multiplier => exponent = colour.multiplier_exponent(edition).unwrap_or_default(),
                Role::Tolerance => tolerance = colour.tolerance_decimal(edition),
                Role::Coefficient => coefficient = colour.tcr_ppm_per_kelvin(),
            }
        }
        Ok(Marking::new(Decimal::new(digits, exponent), tolerance, coefficient))
    }
}

/// The words, with blanks between.
impl fmt::Display for Bands {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        for (index, colour) in self.colours().iter().enumerate() {
            if index > 0 {
                f.write_str(" ")?;
            }
            f.write_str(colour.word())?;
        }
        Ok(())
    }
}

impl Marking {
    /// What these bands say: words in any case ("gray" as well as "grey") or two-letter codes of IEC 60757, with blanks,
    /// commas or hyphens between; three to six bands, or one black band alone.
    ///
    /// # Errors
    /// [`MarkingError`] for a word that is no colour, a colour that cannot stand in its place in this edition, another count of
    /// bands, and for other bytes; the index is the byte offset in the text.
    ///
    /// ```
    /// use reckohm::marking::{Edition, Marking};
    /// let marking = Marking::from_bands("brown green grey silver red", Edition::E2016)?;
    /// assert_eq!((marking.nominal_ohm(), marking.tolerance()), (1.58, Some(0.02)));
    /// assert_eq!(Marking::from_bands("BN-GN-GY-SR-RD", Edition::E2016)?, marking);
    /// assert!(Marking::from_bands("gold red green brown", Edition::E2016).is_err());
    /// # Ok::<(), reckohm::marking::MarkingError>(())
    /// ```
    pub fn from_bands(text: impl AsRef<[u8]>, edition: Edition) -> Result<Marking, MarkingError> {
        let (bands, starts) = Bands::parse(text.as_ref())?;
        bands.decode(edition).map_err(|error| error.at(&starts))
    }

    /// What these colours say; as [`from_bands`](Marking::from_bands), but an error's index is that of the band, from 0.
    ///
    /// # Errors
    /// [`MarkingError`] for a colour that cannot stand in its place in this edition and for another count of bands.
    ///
    /// ```
    /// use reckohm::marking::{Colour, Edition, Marking};
    /// let marking = Marking::from_band_list(&[Colour::Red, Colour::Red, Colour::Orange], Edition::E2016)?;
    /// assert_eq!((marking.nominal_ohm(), marking.tolerance()), (22_000.0, Some(0.2)));
    /// # Ok::<(), reckohm::marking::MarkingError>(())
    /// ```
    pub fn from_band_list(colours: &[Colour], edition: Edition) -> Result<Marking, MarkingError> {
        Bands::of(colours)?.decode(edition)
    }

    /// The bands that say this: one black band for the zero-ohm link, three for 20 %, six where a temperature coefficient is
    /// marked, else four for 5 % and wider and five for 2 % and tighter, or the other of these two where only it can hold the
    /// value.
    ///
    /// # Errors
    /// [`MarkingError::Unwritable`] with the reason where no bands of this edition say it, [`MarkingError::NoTolerance`] if
    /// the tolerance is not known.
    ///
    /// ```
    /// use reckohm::marking::{Edition, Marking};
    /// let marking = Marking::from_letters("4K7J")?;
    /// assert_eq!(marking.to_bands(Edition::E2016)?.to_string(), "yellow violet red gold");
    /// assert!(Marking::from_chip("472", None)?.to_bands(Edition::E2016).is_err());
    /// # Ok::<(), reckohm::marking::MarkingError>(())
    /// ```
    pub fn to_bands(&self, edition: Edition) -> Result<Bands, MarkingError> {
        if self.is_zero_ohm_link() {
            return Bands::of(&[Colour::Black]);
        }
        let tolerance = self.tolerance.ok_or(MarkingError::NoTolerance)?;
        let Some(figures) = Figures::of(self.nominal).filter(|figures| figures.count <= 3) else {
            return Err(self.unwritable(Unwritable::BandFigures));
        };
        if tolerance == TWENTY_PERCENT {
            if self.tcr_ppm_per_kelvin.is_some() || figures.count > 2 {
                return Err(self.unwritable(Unwritable::BandTolerance));
            }
            return self.write(figures, 2, None, None, edition);
        }
        let colour = |matches: &dyn Fn(&Colour) -> bool| Colour::ALL.into_iter().find(|colour| matches(colour));
        let tolerance_band = colour(&|colour| colour.tolerance_decimal(edition) == Some(tolerance));
        if tolerance_band.is_none() {
            return Err(self.unwritable(Unwritable::BandTolerance));
        }
        if let Some(coefficient) = self.tcr_ppm_per_kelvin {
            let band = colour(&|colour| colour.tcr_ppm_per_kelvin() == Some(coefficient));
            if band.is_none() {
                return Err(self.unwritable(Unwritable::BandCoefficient));
            }
            return self.write(figures, 3, tolerance_band, band, edition);
        }
        let (usual, other) = if tolerance > TWO_PERCENT { (2, 3) } else { (3, 2) };
        self.write(figures, usual, tolerance_band, None, edition)
            .or_else(|error| self.write(figures, other, tolerance_band, None, edition).map_err(|_| error))
    }

    /// So many figures, the multiplier, and the bands after it.
    fn write(
        &self,
        figures: Figures,
        count: i32,
        tolerance: Option<Colour>,
        coefficient: Option<Colour>,
        edition: Edition,
    ) -> Result<Bands, MarkingError> {
        if figures.count > count {
            return Err(self.unwritable(Unwritable::BandFigures));
        }
        let exponent = figures.order.wrapping_add(1).wrapping_sub(count);
        let multiplier = Colour::ALL.into_iter().find(|colour| colour.multiplier_exponent(edition) == Some(exponent));
        let multiplier = multiplier.ok_or(self.unwritable(Unwritable::BandMultiplier))?;
        let mut bands = Bands::NONE;
        for place in 0..count {
            bands.push(Colour::from_number(figures.figure(place)).unwrap_or(Colour::Black));
        }
        bands.push(multiplier);
        for band in [tolerance, coefficient].into_iter().flatten() {
            bands.push(band);
        }
        Ok(bands)
    }

    pub(super) fn unwritable(&self, reason: Unwritable) -> MarkingError {
        MarkingError::Unwritable { reason, nominal_ohm: self.nominal_ohm(), tolerance: self.tolerance() }
    }
}
