//! A span with everything worked out beforehand that a reading asks of it: for firmware, where each instruction counts.

use super::clause::half_width_ohm;
use super::error::MeterError;
use super::grid::{Grid, Said};
use super::marks::Marks;
use super::reading::Reading;
use super::span::Span;
use super::unread::Unread;
use crate::number::{FINITE, OutOfRange, Real};

/// What a [`Span`] makes of display texts and readings, in whole numbers and a few coefficients: the same readings and
/// half-widths to the bit, by a fraction of the code. What it leaves out is how a refusal is explained.
///
/// ```
/// use reckohm::meter::Meter;
/// let span = &Meter::example_hand_held().spans()[2]; // 20 kohm, ±(0.8 % + 3 counts)
/// let prepared = span.prepared(None)?;
/// let reading = prepared.read(b"4.70")?;
/// assert_eq!(Ok(reading), span.read(b"4.70"));
/// assert_eq!(prepared.clause_half_width_ohm(reading.ohm())?, 67.6);
/// assert_eq!(prepared.read(b"4700").unwrap_err().kind(), span.read(b"4700").unwrap_err().kind());
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PreparedSpan<R = f64> {
    grid: Grid,
    full_scale_ohm: R,
    fraction_of_reading: R,
    fixed_ohm: R,
    widening: R,
}

/// The plain numbers of a [`PreparedSpan`]: as a C program keeps it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PreparedParts<R = f64> {
    /// The fraction of the reading in its clause.
    pub fraction_of_reading: R,
    /// What the clause comes to at a reading of 0, ohm.
    pub fixed_ohm: R,
    /// By what factor the clause is wider at the meter's temperature.
    pub widening: R,
    /// The first value that the display no longer shows, ohm.
    pub full_scale_ohm: R,
    /// The same in steps.
    pub counts: u32,
    /// The step in ohm is so many times a power of ten: 1, 2 or 5.
    pub step_digits: u8,
    /// That power of ten.
    pub step_power: i8,
    /// The power of ten of the display's unit in ohm.
    pub unit_power: i8,
    /// The power of ten of the first digit of the largest value shown, in ohm.
    pub leading_power: i8,
    /// The bits of the over-range marks.
    pub marks: u8,
}

impl<R: Real> Span<R> {
    /// This span prepared for a meter at this temperature in °C, in [-60, 120]; without one the meter is taken to be within
    /// its clause's band.
    ///
    /// # Errors
    /// Those of [`Clause::widening`](super::Clause::widening); [`MeterError::TooFineToPrepare`] where a value shown is not one
    /// rounding of whole numbers that this precision holds: no span in double precision, and in single precision one whose full
    /// scale is more than 2^24 times the power of ten of its step, or whose step is above 1e10 ohm.
    ///
    /// ```
    /// use reckohm::meter::Meter;
    /// let span = &Meter::example_hand_held().spans()[2];
    /// let warm = span.prepared(Some(35.0))?;
    /// assert_eq!(warm.clause_half_width_ohm(4880.0)?, span.clause_half_width_ohm(4880.0, Some(35.0))?);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn prepared(&self, meter_temperature_c: Option<R>) -> Result<PreparedSpan<R>, MeterError> {
        let prepared = PreparedSpan {
            grid: *self.grid(),
            full_scale_ohm: self.full_scale_ohm(),
            fraction_of_reading: self.clause().fraction_of_reading(),
            fixed_ohm: self.fixed_ohm(),
            widening: self.clause().widening(meter_temperature_c)?,
        };
        if prepared.value_ohm(prepared.grid.counts).is_none() {
            return Err(MeterError::TooFineToPrepare {
                full_scale_ohm: self.full_scale_ohm().to_f64(),
                resolution_ohm: self.step_ohm().to_f64(),
            });
        }
        Ok(prepared)
    }
}

impl<R: Real> PreparedSpan<R> {
    /// Its plain numbers.
    pub const fn parts(&self) -> PreparedParts<R> {
        let PreparedSpan { grid, full_scale_ohm, fraction_of_reading, fixed_ohm, widening } = *self;
        PreparedParts {
            fraction_of_reading,
            fixed_ohm,
            widening,
            full_scale_ohm,
            counts: grid.counts,
            step_digits: grid.step_digits,
            step_power: grid.step_power,
            unit_power: grid.unit,
            leading_power: grid.leading,
            marks: grid.marks.bits(),
        }
    }

    /// A prepared span from the numbers that [`parts`](PreparedSpan::parts) gave. They are taken as they stand: `None` where no
    /// span has such a step, such marks or such powers of ten, else whatever they say.
    ///
    /// ```
    /// use reckohm::meter::{Meter, PreparedSpan};
    /// let prepared = Meter::example_hand_held().spans()[2].prepared(None)?;
    /// assert_eq!(PreparedSpan::restored(prepared.parts()), Some(prepared));
    /// # Ok::<(), reckohm::meter::MeterError>(())
    /// ```
    // Inlined, so that small processors do not copy what comes out from one stack frame to the next.
    #[inline(always)]
    pub fn restored(parts: PreparedParts<R>) -> Option<PreparedSpan<R>> {
        let marks = Marks::from_bits(parts.marks).ok()?;
        let PreparedParts { counts, step_digits, step_power, unit_power: unit, leading_power: leading, .. } = parts;
        let PreparedParts { full_scale_ohm, fraction_of_reading, fixed_ohm, widening, .. } = parts;
        let grid = Grid { counts, step_digits, step_power, unit, leading, marks };
        let prepared = PreparedSpan { grid, full_scale_ohm, fraction_of_reading, fixed_ohm, widening };
        let sound = matches!(step_digits, 1 | 2 | 5) && prepared.value_ohm(counts).is_some();
        sound.then_some(prepared)
    }

    /// So many steps in ohm, rounded once.
    #[inline(always)]
    fn value_ohm(&self, counts: u32) -> Option<R> {
        let step = self.grid.step();
        R::by_one_operation(u64::from(counts).wrapping_mul(step.digits.unsigned_abs()), step.exponent)
    }

    /// The reading that a display text means: that of [`Span::read`].
    ///
    /// # Errors
    /// [`Unread`] where [`Span::read`] refuses the text, for the same reason.
    pub fn read(&self, text: &[u8]) -> Result<Reading<R>, Unread> {
        Ok(match self.grid.read(text)? {
            Said::Over { negative } => Reading::beyond(self.full_scale_ohm, negative),
            Said::Value { counts, negative } => {
                // There always is a value: a smaller number of steps than the full scale's.
                Reading::of_value(self.value_ohm(counts).unwrap_or(self.full_scale_ohm), counts, negative)
            }
        })
    }

    /// The accuracy clause at this reading as a half-width in ohm: that of [`Span::clause_half_width_ohm`].
    ///
    /// # Errors
    /// A range error for a reading that is not finite.
    pub fn clause_half_width_ohm(&self, ohm: R) -> Result<R, OutOfRange> {
        let ohm = FINITE.check(ohm)?;
        Ok(half_width_ohm(self.fraction_of_reading, ohm, self.fixed_ohm, self.widening))
    }
}
