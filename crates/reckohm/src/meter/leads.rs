//! The leads between meter and part: read with their tips touching, or reckoned from their wire.

use super::error::MeterError;
use super::reading::Reading;
use super::span::Span;
use super::wire::{COPPER_CONDUCTIVITY, largest_ohm_per_km};
use crate::number::{FINITE, WIRE_LENGTH};

/// The resistance of both leads together.
///
/// ```
/// use reckohm::meter::{Leads, Meter};
/// let span = &Meter::example_hand_held().spans()[0]; // 200 ohm
/// let leads = Leads::from_reading(&span.read(b"0.3")?, span)?;
/// assert_eq!(leads.ohm(), 0.3);
/// assert_eq!(leads.span(), Some(span));
/// # Ok::<(), reckohm::meter::MeterError>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Leads {
    ohm: f64,
    half_width_ohm: f64,
    read_on: Option<(Reading, Span)>,
}

impl Leads {
    /// The leads from a reading with their tips touching one another, on this span. Its accuracy comes from the span's
    /// clause when the reading is evaluated; a negative reading is kept.
    ///
    /// # Errors
    /// [`MeterError::LeadsOverRange`] for an over-range reading.
    ///
    /// ```
    /// # use reckohm::meter::{Leads, Meter};
    /// let span = &Meter::example_hand_held().spans()[0];
    /// assert!(Leads::from_reading(&span.read(b"OL")?, span).is_err());
    /// # Ok::<(), reckohm::meter::MeterError>(())
    /// ```
    pub fn from_reading(reading: &Reading, span: &Span) -> Result<Leads, MeterError> {
        if reading.over() {
            return Err(MeterError::LeadsOverRange);
        }
        Ok(Leads { ohm: reading.ohm(), half_width_ohm: 0.0, read_on: Some((*reading, *span)) })
    }

    /// Two leads of plain copper wire, each of this length in metres, in (0, 1e5]: cross-section in mm² and class (1 solid,
    /// 2 stranded, 5 flexible) as IEC 60228 has them, at 20 °C.
    ///
    /// The value is that of annealed copper of the full cross-section (1/58 ohm mm² a metre); its half-width reaches up to
    /// the table's largest resistance. Plugs, contacts and a temperature other than 20 °C (0.4 % a kelvin) are not in it.
    ///
    /// # Errors
    /// [`MeterError::Range`] for the length or an area that is not finite; [`MeterError::WireNotInTable`].
    ///
    /// Source: IEC 60228 as reprinted; the conductivity of copper (IEC 60028) from memory.
    ///
    /// ```
    /// # use reckohm::meter::Leads;
    /// let leads = Leads::from_wire(1.0, 0.75, 5)?; // two leads of a metre each
    /// assert!((leads.ohm() - 0.0460).abs() < 1e-4);
    /// assert!((leads.ohm() + leads.half_width_ohm() - 0.052).abs() < 1e-12); // 26.0 ohm/km at most
    /// # Ok::<(), reckohm::meter::MeterError>(())
    /// ```
    pub fn from_wire(length_m: f64, area_mm2: f64, class: u8) -> Result<Leads, MeterError> {
        let length_m = WIRE_LENGTH.check(length_m)?;
        let area_mm2 = FINITE.check(area_mm2)?;
        let ohm_per_km = largest_ohm_per_km(area_mm2, class).ok_or(MeterError::WireNotInTable { area_mm2, class })?;
        let ohm = 2.0 * length_m / (COPPER_CONDUCTIVITY * area_mm2);
        let largest_ohm = 2.0 * length_m * ohm_per_km / 1000.0;
        Ok(Leads { ohm, half_width_ohm: largest_ohm - ohm, read_on: None })
    }

    /// The resistance in ohm.
    pub const fn ohm(&self) -> f64 {
        self.ohm
    }

    /// The rectangular half-width in ohm of leads reckoned from their wire; 0 for leads that were read, whose accuracy is
    /// that of the span.
    pub const fn half_width_ohm(&self) -> f64 {
        self.half_width_ohm
    }

    /// The span that they were read on, if they were read.
    pub const fn span(&self) -> Option<&Span> {
        match &self.read_on {
            Some((_, span)) => Some(span),
            None => None,
        }
    }

    /// The reading, if they were read.
    pub const fn reading(&self) -> Option<&Reading> {
        match &self.read_on {
            Some((reading, _)) => Some(reading),
            None => None,
        }
    }
}
