//! Stepping through the spans of a meter from reading to reading.

use super::{Meter, MeterError, Reading};
use crate::number::FINITE;

/// A lower span is gone to only if the reading with its accuracy clause is below this part of its full scale. What lies
/// between here and full scale stays, so that a reading near the end of a span does not send the meter up and down.
const STEP_DOWN_BELOW: f64 = 0.95;

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

impl Meter<'_> {
    /// The span for the next reading, after this reading on the span with this index.
    ///
    /// Over-range goes up by one span. A reading that, with its accuracy clause, is below 95 % of a lower span's full scale
    /// goes down to the lowest such span; the 5 % are the hysteresis. No state is kept: call it after each reading.
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
    pub fn next_span(&self, index: usize, reading: &Reading) -> Result<Step, MeterError> {
        let span = self.span(index)?;
        if reading.over() {
            let next = index.wrapping_add(1);
            return Ok(if next < self.spans().len() { Step::Up(next) } else { Step::BeyondHighest });
        }
        let ohm = FINITE.check(reading.ohm())?.abs();
        let bound = ohm + span.clause_half_width_ohm(ohm, None)?;
        let lower = self.spans().iter().take(index).position(|lower| bound < STEP_DOWN_BELOW * lower.full_scale_ohm());
        Ok(lower.map_or(Step::Stay, Step::Down))
    }
}
