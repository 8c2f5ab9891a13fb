//! A span: one setting of a meter, with what its display can show there and how good it is.

use super::clause::{Clause, half_width_ohm};
use super::error::MeterError;
use super::grid::Grid;
use super::inline_text::Label;
use super::marks::Marks;
use crate::number::{DISPLAY_COUNTS, Decimal, FINITE, Real, SPAN_FULL_SCALE, SPAN_RESOLUTION};

/// At most this many digits behind the point of a display.
const MOST_DECIMALS: i32 = 9;

/// One setting of a meter. A value that exists is legal: the full scale is a whole number of steps, and the display's unit
/// and step go together.
///
/// **Full scale** is the first value that the display no longer shows: a display of 2000 counts on its 2 kilohm span shows
/// 1.999 at most, and its full scale is 2000 ohm.
///
/// ```
/// use reckohm::meter::{Clause, Marks, Span};
/// let clause = Clause::new(0.008, 3.0)?;
/// let span = Span::new("20 kohm", 20.0e3_f64, 10.0, 1.0e3, Marks::ONE_ALONE, clause)?;
/// assert_eq!(span.full_scale_counts(), 2000);
/// assert_eq!(span.read(b"4.70")?.ohm(), 4700.0);
/// assert_eq!(span.display_text(4700.0)?.as_str(), "4.70");
/// assert_eq!(span.clause_half_width_ohm(4900.0, None)?, 69.2);
/// # Ok::<(), reckohm::meter::MeterError>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Span<R = f64> {
    label: Label,
    full_scale_ohm: R,
    step_ohm: R,
    grid: Grid,
    clause: Clause<R>,
    /// What the clause comes to at a reading of 0, in ohm.
    fixed_ohm: R,
}

impl<R: Real> Span<R> {
    /// A span from its numbers.
    ///
    /// Given: a label of 1 to 15 bytes; the full scale in ohm, in (0, 1e15]; the resolution, that is the step of the last
    /// digit, in ohm: 1, 2 or 5 times a power of ten, of which the full scale is 10 to 1e9 times as large; the unit that
    /// the display shows in, in ohm: 0.001, 1, 1e3, 1e6 or 1e9; how over-range is marked; the accuracy clause.
    ///
    /// # Errors
    /// [`MeterError`]: a label that does not fit, a number outside its range, a resolution or a unit that no display has, a
    /// full scale that is no whole number of steps, more than nine decimals in this unit, a clause without any part.
    ///
    /// ```
    /// use reckohm::meter::{Clause, Marks, Span};
    /// let clause = Clause::new(0.008, 3.0)?;
    /// assert!(Span::new("2 kohm", 2.0e3, 1.0, 1.0e3, Marks::OL, clause).is_ok());
    /// assert!(Span::new("2 kohm", 2.0e3, 3.0, 1.0e3, Marks::OL, clause).is_err());
    /// # Ok::<(), reckohm::meter::MeterError>(())
    /// ```
    pub fn new(
        label: &str,
        full_scale_ohm: R,
        resolution_ohm: R,
        display_unit_ohm: R,
        marks: Marks,
        clause: Clause<R>,
    ) -> Result<Span<R>, MeterError> {
        let label = Label::new(label)?;
        SPAN_FULL_SCALE.check(full_scale_ohm)?;
        SPAN_RESOLUTION.check(resolution_ohm)?;
        let step = Decimal::shortest(resolution_ohm)
            .filter(|step| matches!(step.digits, 1 | 2 | 5))
            .ok_or_else(|| MeterError::UnknownResolution { given_ohm: resolution_ohm.to_f64() })?;
        let unit = unit_power(display_unit_ohm)
            .ok_or_else(|| MeterError::UnknownDisplayUnit { given_ohm: display_unit_ohm.to_f64() })?;
        DISPLAY_COUNTS.check(full_scale_ohm / resolution_ohm)?;
        let full_scale_counts = Decimal::shortest(full_scale_ohm)
            .and_then(|full_scale| steps_in(full_scale, step))
            .and_then(|counts| u32::try_from(counts).ok())
            .ok_or_else(|| MeterError::NotWholeSteps {
                full_scale_ohm: full_scale_ohm.to_f64(),
                resolution_ohm: resolution_ohm.to_f64(),
            })?;
        if i32::from(unit).wrapping_sub(step.exponent) > MOST_DECIMALS {
            return Err(MeterError::TooFineForUnit {
                resolution_ohm: resolution_ohm.to_f64(),
                display_unit_ohm: display_unit_ohm.to_f64(),
            });
        }
        let fixed_ohm = fixed_part_ohm(&clause, full_scale_ohm, step);
        if clause.step_included && clause.fraction_of_reading == R::ZERO && fixed_ohm == R::ZERO {
            return Err(MeterError::ClauseWithoutParts);
        }
        let grid = Grid::new(full_scale_counts, step, unit, marks);
        Ok(Span { label, full_scale_ohm, step_ohm: resolution_ohm, grid, clause, fixed_ohm })
    }

    /// A span of `counts` steps known when compiling, with the numbers that [`Span::new`] would find.
    pub(super) const fn of(
        label: &'static str,
        (full_scale_ohm, full_scale_counts): (R, u32),
        (step_ohm, step): (R, Decimal),
        unit: i8,
        marks: Marks,
        (clause, fixed_ohm): (Clause<R>, R),
    ) -> Span<R> {
        let label = Label::of(label);
        let grid = Grid::new(full_scale_counts, step, unit, marks);
        Span { label, full_scale_ohm, step_ohm, grid, clause, fixed_ohm }
    }

    /// Its label.
    pub const fn label(&self) -> &Label {
        &self.label
    }

    /// The first value in ohm that the display no longer shows.
    pub const fn full_scale_ohm(&self) -> R {
        self.full_scale_ohm
    }

    /// The same in steps of the display.
    pub const fn full_scale_counts(&self) -> i64 {
        self.grid.counts as i64
    }

    /// The step of the display, exactly.
    pub const fn resolution(&self) -> Decimal {
        self.grid.step()
    }

    /// The step of the display in ohm.
    pub const fn step_ohm(&self) -> R {
        self.step_ohm
    }

    /// The unit that the display shows in, in ohm.
    pub fn display_unit_ohm(&self) -> R {
        Decimal::new(1, i32::from(self.grid.unit)).to_real()
    }

    /// How the meter marks over-range on this span.
    pub const fn marks(&self) -> Marks {
        self.grid.marks
    }

    /// The accuracy clause.
    pub const fn clause(&self) -> &Clause<R> {
        &self.clause
    }

    /// The accuracy clause at this reading as a half-width in ohm: fraction of the reading's magnitude, fraction of the
    /// span and counts together, widened if the meter's temperature in °C is outside the clause's band. Without a
    /// temperature the meter is taken to be within it.
    ///
    /// # Errors
    /// [`MeterError::Range`] for a reading that is not finite or a temperature outside [-60, 120] °C;
    /// [`MeterError::CoefficientMissing`] outside the band if the clause has no coefficient.
    ///
    /// ```
    /// use reckohm::meter::Meter;
    /// let span = &Meter::example_hand_held().spans()[1]; // 2 kohm, ±(0.8 % + 3 counts)
    /// assert_eq!(span.clause_half_width_ohm(1500.0, Some(23.0))?, 15.0);
    /// # Ok::<(), reckohm::meter::MeterError>(())
    /// ```
    pub fn clause_half_width_ohm(&self, ohm: R, meter_temperature_c: Option<R>) -> Result<R, MeterError> {
        let ohm = FINITE.check(ohm)?;
        let widening = self.clause.widening(meter_temperature_c)?;
        Ok(half_width_ohm(self.clause.fraction_of_reading, ohm, self.fixed_ohm, widening))
    }

    /// What the clause comes to at a reading of 0, in ohm.
    pub(super) const fn fixed_ohm(&self) -> R {
        self.fixed_ohm
    }

    pub(super) const fn grid(&self) -> &Grid {
        &self.grid
    }

    /// The largest magnitude that the display shows.
    pub(super) fn largest(&self) -> Decimal {
        self.at_counts(self.full_scale_counts().wrapping_sub(1))
    }

    /// So many steps, exactly.
    pub(super) const fn at_counts(&self, counts: i64) -> Decimal {
        let step = self.grid.step();
        Decimal::new(counts.wrapping_mul(step.digits), step.exponent)
    }
}

/// How many steps a value is, if it is a whole number of them. Checked division, since the linker cannot know that no step
/// is 0.
fn steps_in(value: Decimal, step: Decimal) -> Option<i64> {
    let digits = value.digits_at(step.exponent)?;
    if digits.checked_rem(step.digits)? == 0 { digits.checked_div(step.digits) } else { None }
}

/// The part of a clause that does not depend on the reading, rounded once where its numbers are short decimals.
fn fixed_part_ohm<R: Real>(clause: &Clause<R>, full_scale_ohm: R, step: Decimal) -> R {
    let of_span = || {
        if clause.fraction_of_span == R::ZERO {
            return Some(Decimal::ZERO);
        }
        Decimal::shortest(clause.fraction_of_span)?.checked_mul(Decimal::shortest(full_scale_ohm)?)
    };
    let of_counts = || Decimal::shortest(clause.counts)?.checked_mul(step);
    match of_span().and_then(|of_span| of_counts()?.checked_add(of_span)) {
        Some(exact) => exact.to_real(),
        None => clause.fraction_of_span * full_scale_ohm + clause.counts * step.to_real::<R>(),
    }
}

fn unit_power<R: Real>(ohm: R) -> Option<i8> {
    [-3, 0, 3, 6, 9].into_iter().find(|power| Decimal::new(1, i32::from(*power)).to_real::<R>() == ohm)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::meter::Meter;

    /// The demonstration meters are written with their derived numbers; these are the ones that `new` finds.
    #[test]
    fn the_demonstration_spans_are_what_new_makes_of_their_numbers() {
        for span in Meter::example_hand_held().spans().iter().chain(Meter::example_bench().spans()) {
            let made = Span::new(
                span.label.as_str(),
                span.full_scale_ohm,
                span.step_ohm,
                span.display_unit_ohm(),
                span.marks(),
                span.clause,
            );
            assert_eq!(made, Ok(*span));
            assert_eq!(made.map(|made| made.fixed_ohm.to_bits()), Ok(span.fixed_ohm.to_bits()));
            assert_eq!(span.resolution(), span.resolution().normalised());
        }
    }
}
