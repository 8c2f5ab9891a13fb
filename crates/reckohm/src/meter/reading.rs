//! One reading: what a span's display or a meter's reply said, as a number.

use super::error::MeterError;
use super::span::Span;
use crate::number::{FINITE, Real};
use crate::uncertainty::Estimate;

/// A reading on one span. It comes from [`Span::read`](super::Span::read) or
/// [`Span::read_reply`](super::Span::read_reply), so it is within its span or marked as beyond it.
///
/// ```
/// use reckohm::meter::Meter;
/// let span = &Meter::example_hand_held().spans()[1]; // 2 kohm
/// let reading = span.read(b"1.462")?;
/// assert_eq!((reading.ohm(), reading.counts(), reading.over()), (1462.0, 1462, false));
/// assert!(span.read(b"1")?.over());
/// # Ok::<(), reckohm::meter::MeterError>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Reading<R = f64> {
    pub(super) ohm: R,
    pub(super) counts: i64,
    pub(super) over: bool,
    pub(super) negative: bool,
}

impl<R: Real> Reading<R> {
    /// A reading beyond its span.
    pub(super) fn beyond(full_scale_ohm: R, negative: bool) -> Reading<R> {
        let ohm = if negative { -full_scale_ohm } else { full_scale_ohm };
        Reading { ohm, counts: 0, over: true, negative }
    }

    /// A reading of so many ohm and steps; a minus is kept, but not on a value of zero.
    pub(super) fn of_value(magnitude_ohm: R, counts: u32, negative: bool) -> Reading<R> {
        let counts = i64::from(counts);
        let (ohm, counts) =
            if negative && counts != 0 { (-magnitude_ohm, counts.wrapping_neg()) } else { (magnitude_ohm, counts) };
        Reading { ohm, counts, over: false, negative }
    }

    /// The resistance in ohm, with its sign. **Of an over-range reading** it is the span's full scale, a bound that the
    /// resistance lies beyond and not its value: look at [`over`](Reading::over) first.
    pub const fn ohm(&self) -> R {
        self.ohm
    }

    /// How many display steps it is, with its sign: the value is exactly this many times the span's step. 0 for a reply
    /// over the wire and for over-range.
    pub const fn counts(&self) -> i64 {
        self.counts
    }

    /// Whether the resistance is beyond the span: there is no value.
    pub const fn over(&self) -> bool {
        self.over
    }

    /// Whether a minus was shown. Legal in zeroed mode and on a short: such a reading is not distinguishable from zero.
    pub const fn negative(&self) -> bool {
        self.negative
    }
}

impl<R: Real> Span<R> {
    /// A reading of this span again, from its numbers: as it comes back from a file, or through the C door.
    ///
    /// # Errors
    /// [`MeterError::Range`] for a resistance that is not finite; [`MeterError::BeyondFullScale`]; and
    /// [`MeterError::NotOneReading`] if the numbers do not go together.
    ///
    /// ```
    /// use reckohm::meter::Meter;
    /// let span = &Meter::example_hand_held().spans()[1]; // 2 kohm
    /// let reading = span.read(b"-0.003")?;
    /// assert_eq!(span.reading(-3.0, -3, false, true)?, reading);
    /// assert!(span.reading(-3.0, 3, false, true).is_err());
    /// # Ok::<(), reckohm::meter::MeterError>(())
    /// ```
    pub fn reading(&self, ohm: R, counts: i64, over: bool, negative: bool) -> Result<Reading<R>, MeterError> {
        let ohm = FINITE.check(ohm)?;
        let full_scale_ohm = self.full_scale_ohm();
        let magnitude = ohm.magnitude();
        if !over && magnitude >= full_scale_ohm {
            return Err(MeterError::BeyondFullScale {
                given_ohm: ohm.to_f64(),
                full_scale_ohm: full_scale_ohm.to_f64(),
            });
        }
        let sign_fits = ohm == R::ZERO || negative == (ohm < R::ZERO);
        let value_fits = if over { magnitude == full_scale_ohm } else { true };
        // Replies have no counts.
        let counts_fit = counts == 0 || !over && self.at_counts(counts).to_real::<R>() == ohm;
        if sign_fits && value_fits && counts_fit {
            Ok(Reading { ohm, counts, over, negative })
        } else {
            Err(MeterError::NotOneReading { ohm: ohm.to_f64(), counts, step_ohm: self.step_ohm().to_f64() })
        }
    }

    /// The estimate that a single reading of this span stands for: its value with the meter's error, as the accuracy clause
    /// means it at that value, and with the step of the display where the clause does not hold it.
    ///
    /// This is what [`evaluate`](crate::measurement::evaluate) makes of the reading where nothing else is set than the
    /// meter's temperature, to the bit, without a budget and advice: all that firmware needs for a verdict. Nothing is known
    /// of the scatter of a single reading: add it, from a run of readings or as it is known from before.
    ///
    /// Given: the meter's temperature in °C, in [-60, 120]; without one the meter is taken to be within its clause's band.
    ///
    /// # Errors
    /// [`MeterError::ReadingOverRange`]; [`MeterError::Range`] for the temperature; [`MeterError::CoefficientMissing`] outside
    /// the band if the clause has no coefficient; [`MeterError::Uncertainty`] for a result that does not fit the number type.
    ///
    /// ```
    /// use reckohm::meter::Meter;
    /// use reckohm::verdict::{Answer, Limits, Rule, answer};
    /// let span = &Meter::example_hand_held().spans()[2]; // 20 kohm, ±(0.8 % + 3 counts)
    /// let part = span.estimate(&span.read(b"4.70")?, None)?.with_normal(5.0)?;
    /// assert_eq!(part.rectangular(), [67.6, 0.0]);
    /// let decision = answer(&part, &Limits::from_tolerance(4700.0, 0.05)?, Rule::guarded(0.05)?);
    /// assert_eq!(decision.answer, Answer::Conforms);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn estimate(&self, reading: &Reading<R>, meter_temperature_c: Option<R>) -> Result<Estimate<R>, MeterError> {
        if reading.over() {
            return Err(MeterError::ReadingOverRange);
        }
        self.estimate_at(reading.ohm(), meter_temperature_c)
    }

    /// The estimate of a reading of so many ohm.
    pub(super) fn estimate_at(&self, ohm: R, meter_temperature_c: Option<R>) -> Result<Estimate<R>, MeterError> {
        let half_width_ohm = self.clause_half_width_ohm(ohm, meter_temperature_c)?;
        let with_clause = self.clause().added_to(Estimate::exact(ohm)?, half_width_ohm)?;
        let rounding = if self.clause().step_included() { R::ZERO } else { R::lit(0.5) * self.step_ohm() };
        Ok(with_clause.with_rectangular(rounding)?)
    }
}
