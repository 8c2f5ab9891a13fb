//! A maker's accuracy clause: ±(fraction of the reading + fraction of the span + counts), and the conditions it holds under.

use super::error::MeterError;
use crate::number::{
    ACCURACY_COUNTS, ACCURACY_FRACTION, COVERAGE_FACTOR, METER_TEMPERATURE, Real, TEMPERATURE_COEFFICIENT_OF_CLAUSE,
};
use crate::uncertainty::{Estimate, EstimateError};

/// The meter temperatures in °C at which a clause holds unless it says otherwise: 23 ± 5 °C, common practice.
pub(super) const USUAL_BAND_C: (f64, f64) = (18.0, 28.0);

/// An accuracy clause as the meter's specification states it.
///
/// The clause bounds the sum of its parts, not each by itself. Unless told otherwise it is a limit (the error is somewhere
/// within, no value likelier than another), the rounding by the display's own step is inside the counts (common practice),
/// it holds from 18 °C to 28 °C (23 ± 5 °C, common practice), and nothing is known outside of that.
///
/// ```
/// use reckohm::meter::Clause;
/// // ±(0.8 % + 3 counts), a tenth of it more for each kelvin outside 23 ± 5 °C
/// let clause = Clause::new(0.008_f64, 3.0)?.with_temperature_coefficient_per_kelvin(0.1)?;
/// assert_eq!(clause.widening(Some(23.0)), Ok(1.0));
/// assert!((clause.widening(Some(35.0))? - 1.7).abs() < 1e-15);
/// # Ok::<(), reckohm::meter::MeterError>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Clause<R = f64> {
    pub(super) fraction_of_reading: R,
    pub(super) fraction_of_span: R,
    pub(super) counts: R,
    pub(super) coverage_factor: Option<R>,
    pub(super) step_included: bool,
    pub(super) temperature_band_c: (R, R),
    pub(super) temperature_coefficient_per_kelvin: Option<R>,
    pub(super) zeroing_required: bool,
}

/// A clause at a reading: fraction of the reading's magnitude and what does not depend on it, together, times the widening.
#[inline(always)]
pub(super) fn half_width_ohm<R: Real>(fraction_of_reading: R, ohm: R, fixed_ohm: R, widening: R) -> R {
    (fraction_of_reading * ohm.magnitude() + fixed_ohm) * widening
}

impl<R: Real> Clause<R> {
    /// ±(fraction of the reading + counts): 0.8 % + 3 counts is `Clause::new(0.008, 3.0)`.
    ///
    /// Given: the fraction in [0, 1); the counts, that is multiples of the span's step, in [0, 1e6].
    ///
    /// # Errors
    /// [`MeterError::Range`].
    ///
    /// ```
    /// # use reckohm::meter::Clause;
    /// assert!(Clause::new(0.8, 3.0).is_ok(), "80 %: legal, if hardly meant");
    /// assert!(Clause::new(1.0, 3.0).is_err());
    /// ```
    pub fn new(fraction_of_reading: R, counts: R) -> Result<Clause<R>, MeterError> {
        Ok(Clause {
            fraction_of_reading: ACCURACY_FRACTION.check(fraction_of_reading)?,
            counts: ACCURACY_COUNTS.check(counts)?,
            ..Clause::of(R::ZERO, R::ZERO, R::ZERO, (R::lit(USUAL_BAND_C.0), R::lit(USUAL_BAND_C.1)))
        })
    }

    pub(super) const fn of(
        fraction_of_reading: R,
        fraction_of_span: R,
        counts: R,
        temperature_band_c: (R, R),
    ) -> Clause<R> {
        Clause {
            fraction_of_reading,
            fraction_of_span,
            counts,
            coverage_factor: None,
            step_included: true,
            temperature_band_c,
            temperature_coefficient_per_kelvin: None,
            zeroing_required: false,
        }
    }

    /// The same with a part that is a fraction of the span's full scale, in [0, 1).
    ///
    /// # Errors
    /// [`MeterError::Range`].
    ///
    /// ```
    /// # use reckohm::meter::Clause;
    /// let clause = Clause::new(0.0002, 0.0)?.with_fraction_of_span(0.00004)?;
    /// assert_eq!(clause.fraction_of_span(), 0.00004);
    /// # Ok::<(), reckohm::meter::MeterError>(())
    /// ```
    pub fn with_fraction_of_span(self, fraction: R) -> Result<Clause<R>, MeterError> {
        Ok(Clause { fraction_of_span: ACCURACY_FRACTION.check(fraction)?, ..self })
    }

    /// The same, but stated as an expanded uncertainty of a normal error with this coverage factor, in (0, 10], instead of
    /// as a limit.
    ///
    /// # Errors
    /// [`MeterError::Range`].
    ///
    /// ```
    /// # use reckohm::meter::Clause;
    /// assert_eq!(Clause::new(0.01, 2.0)?.with_coverage_factor(2.0)?.coverage_factor(), Some(2.0));
    /// # Ok::<(), reckohm::meter::MeterError>(())
    /// ```
    pub fn with_coverage_factor(self, coverage_factor: R) -> Result<Clause<R>, MeterError> {
        Ok(Clause { coverage_factor: Some(COVERAGE_FACTOR.check(coverage_factor)?), ..self })
    }

    /// The same, but with the rounding by the display's step on top of the counts instead of inside them.
    ///
    /// ```
    /// # use reckohm::meter::Clause;
    /// assert!(!Clause::new(0.01, 2.0)?.with_step_outside_counts().step_included());
    /// # Ok::<(), reckohm::meter::MeterError>(())
    /// ```
    pub const fn with_step_outside_counts(self) -> Clause<R> {
        Clause { step_included: false, ..self }
    }

    /// The same, holding from `lower` to `upper` °C, each in [-60, 120].
    ///
    /// # Errors
    /// [`MeterError::Range`]; [`MeterError::BandReversed`] if the lower end is above the upper one.
    ///
    /// ```
    /// # use reckohm::meter::Clause;
    /// assert_eq!(Clause::new(0.01, 2.0)?.with_temperature_band_c(20.0, 26.0)?.temperature_band_c(), (20.0, 26.0));
    /// # Ok::<(), reckohm::meter::MeterError>(())
    /// ```
    pub fn with_temperature_band_c(self, lower: R, upper: R) -> Result<Clause<R>, MeterError> {
        let band = (METER_TEMPERATURE.check(lower)?, METER_TEMPERATURE.check(upper)?);
        if lower > upper {
            return Err(MeterError::BandReversed { lower_c: lower.to_f64(), upper_c: upper.to_f64() });
        }
        Ok(Clause { temperature_band_c: band, ..self })
    }

    /// The same, wider by this part of itself for each kelvin outside the band, in [0, 1]; a tenth is common.
    ///
    /// # Errors
    /// [`MeterError::Range`].
    ///
    /// ```
    /// # use reckohm::meter::Clause;
    /// let clause = Clause::new(0.01, 2.0)?.with_temperature_coefficient_per_kelvin(0.1)?;
    /// assert_eq!(clause.temperature_coefficient_per_kelvin(), Some(0.1));
    /// # Ok::<(), reckohm::meter::MeterError>(())
    /// ```
    pub fn with_temperature_coefficient_per_kelvin(self, coefficient: R) -> Result<Clause<R>, MeterError> {
        let coefficient = TEMPERATURE_COEFFICIENT_OF_CLAUSE.check(coefficient)?;
        Ok(Clause { temperature_coefficient_per_kelvin: Some(coefficient), ..self })
    }

    /// The same, valid only after the meter was zeroed with its leads shorted.
    ///
    /// ```
    /// # use reckohm::meter::Clause;
    /// assert!(Clause::new(0.01, 2.0)?.with_zeroing_required().zeroing_required());
    /// # Ok::<(), reckohm::meter::MeterError>(())
    /// ```
    pub const fn with_zeroing_required(self) -> Clause<R> {
        Clause { zeroing_required: true, ..self }
    }

    /// The part that grows with the reading, as a fraction of it.
    pub const fn fraction_of_reading(&self) -> R {
        self.fraction_of_reading
    }

    /// The part that is a fraction of the span's full scale.
    pub const fn fraction_of_span(&self) -> R {
        self.fraction_of_span
    }

    /// The part in counts, multiples of the span's step.
    pub const fn counts(&self) -> R {
        self.counts
    }

    /// The coverage factor if the clause is a stated coverage of a normal error; `None` if it is a limit.
    pub const fn coverage_factor(&self) -> Option<R> {
        self.coverage_factor
    }

    /// Whether the rounding by the display's step is inside the counts.
    pub const fn step_included(&self) -> bool {
        self.step_included
    }

    /// Lower and upper end of the meter temperatures in °C at which the clause holds as it stands.
    pub const fn temperature_band_c(&self) -> (R, R) {
        self.temperature_band_c
    }

    /// How much wider it is, as a part of itself, for each kelvin outside the band, if that is known.
    pub const fn temperature_coefficient_per_kelvin(&self) -> Option<R> {
        self.temperature_coefficient_per_kelvin
    }

    /// Whether it holds only after zeroing.
    pub const fn zeroing_required(&self) -> bool {
        self.zeroing_required
    }

    /// An estimate with the meter's error added as the clause means it: a limit is a rectangular part, a stated coverage a
    /// normal one.
    pub(crate) fn added_to(&self, estimate: Estimate<R>, half_width_ohm: R) -> Result<Estimate<R>, EstimateError> {
        match self.coverage_factor {
            None => estimate.with_rectangular(half_width_ohm),
            Some(factor) => estimate.with_normal(half_width_ohm / factor),
        }
    }

    /// By what factor the clause is wider at this meter temperature in °C: 1 within the band and where no temperature is
    /// given, which means that the meter is within it.
    ///
    /// ```
    /// # use reckohm::meter::Clause;
    /// let clause = Clause::new(0.008, 3.0)?;
    /// assert_eq!(clause.widening(None), Ok(1.0));
    /// assert!(clause.widening(Some(35.0)).is_err(), "outside 23 ± 5 °C, and no coefficient is known");
    /// # Ok::<(), reckohm::meter::MeterError>(())
    /// ```
    ///
    /// # Errors
    /// [`MeterError::Range`] for a temperature outside [-60, 120] °C; [`MeterError::CoefficientMissing`] outside the band if
    /// the clause has no temperature coefficient.
    pub fn widening(&self, meter_temperature_c: Option<R>) -> Result<R, MeterError> {
        let Some(given) = meter_temperature_c else { return Ok(R::ONE) };
        let temperature_c = METER_TEMPERATURE.check(given)?;
        let (lower_c, upper_c) = self.temperature_band_c;
        let outside = if temperature_c < lower_c {
            lower_c - temperature_c
        } else if temperature_c > upper_c {
            temperature_c - upper_c
        } else {
            return Ok(R::ONE);
        };
        match self.temperature_coefficient_per_kelvin {
            Some(coefficient) => Ok(R::ONE + coefficient * outside),
            None => Err(MeterError::CoefficientMissing {
                temperature_c: temperature_c.to_f64(),
                lower_c: lower_c.to_f64(),
                upper_c: upper_c.to_f64(),
            }),
        }
    }
}
