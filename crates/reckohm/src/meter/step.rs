//! Stepping through the spans of a meter from reading to reading.

use super::span::Span;
use super::{Meter, MeterError, Reading};
use crate::number::{FINITE, Real};

/// The hysteresis of a meter that steps through its spans by itself, as a fraction of the lower span's full scale. A lower
/// span is gone to only if the reading with its accuracy clause is below its full scale by that much, so that a reading
/// near the end of a span does not send the meter up and down. Common practice.
pub const HYSTERESIS_BY_CONVENTION: f64 = 0.05;

/// One span as the steps see it, in plain numbers laid out as in C: the C door keeps them in memory of the caller's.
#[derive(Clone, Copy, Debug, PartialEq)]
#[repr(C)]
pub(super) struct Rung<R> {
    pub(super) full_scale_ohm: R,
    fraction_of_reading: R,
    fixed_ohm: R,
}

impl<R: Real> Rung<R> {
    pub(super) const NONE: Rung<R> = Rung { full_scale_ohm: R::ZERO, fraction_of_reading: R::ZERO, fixed_ohm: R::ZERO };

    pub(super) fn of(span: &Span<R>) -> Rung<R> {
        Rung {
            full_scale_ohm: span.full_scale_ohm(),
            fraction_of_reading: span.clause().fraction_of_reading(),
            fixed_ohm: span.fixed_ohm(),
        }
    }

    /// The lowest of the spans below that surely holds what this one reads: the reading with its accuracy clause is below
    /// the full scale there by the hysteresis.
    pub(super) fn lowest_that_holds(
        &self,
        magnitude_ohm: R,
        hysteresis: R,
        mut full_scales_below: impl Iterator<Item = R>,
    ) -> Option<usize> {
        let bound = magnitude_ohm + (self.fraction_of_reading * magnitude_ohm + self.fixed_ohm);
        let part = R::ONE - hysteresis;
        full_scales_below.position(|full_scale| bound < part * full_scale)
    }
}

/// What to do with the span after a reading. Indices count a meter's spans from 0.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Step {
    /// Stay on this span.
    Stay,
    /// The reading is beyond this span: go to this higher one.
    Up(usize),
    /// The reading fits a lower span: go to this one, the lowest that surely holds it.
    Down(usize),
    /// The reading is beyond the highest span: open, or not for this meter.
    BeyondHighest,
}

impl<R: Real> Meter<'_, R> {
    /// The span for the next reading, after this reading on the span with this index.
    ///
    /// Over-range goes up by one span. A reading that, with its accuracy clause, is below 95 % of a lower span's full scale
    /// goes down to the lowest such span; the 5 % are the hysteresis ([`HYSTERESIS_BY_CONVENTION`]). No state is kept: call
    /// it after each reading, or use an [`AutoRanger`](super::AutoRanger), which also lets the input settle and comes to rest
    /// where a reading wobbles by more than the hysteresis.
    ///
    /// # Errors
    /// [`MeterError::NoSuchSpan`]; [`MeterError::Range`] for a reading that is not finite, which no reading of a span is.
    ///
    /// ```
    /// use reckohm::meter::{Meter, Step};
    /// let meter = Meter::example_hand_held();
    /// let on = |index: usize, text: &[u8]| meter.next_span(index, &meter.span(index)?.read(text)?);
    /// assert_eq!(on(1, b"1")?, Step::Up(2));
    /// assert_eq!(on(2, b"4.70")?, Step::Stay);
    /// assert_eq!(on(3, b"4.7")?, Step::Down(2));
    /// assert_eq!(on(5, b"OL")?, Step::BeyondHighest);
    /// # Ok::<(), reckohm::meter::MeterError>(())
    /// ```
    pub fn next_span(&self, index: usize, reading: &Reading<R>) -> Result<Step, MeterError> {
        let span = self.span(index)?;
        if reading.over() {
            let next = index.wrapping_add(1);
            return Ok(if next < self.spans().len() { Step::Up(next) } else { Step::BeyondHighest });
        }
        let ohm = FINITE.check(reading.ohm())?.magnitude();
        let below = self.spans().iter().take(index).map(Span::full_scale_ohm);
        let lower = Rung::of(span).lowest_that_holds(ohm, R::lit(HYSTERESIS_BY_CONVENTION), below);
        Ok(lower.map_or(Step::Stay, Step::Down))
    }
}
