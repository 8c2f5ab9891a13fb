//! Which span a part goes on, what it will show there, and whether this meter can judge the part at all.

use super::error::MeterError;
use super::inline_text::DisplayText;
use super::span::Span;
use super::{Meter, MeterError::NoSpanHolds};
use crate::number::{RESISTANCE, TOLERANCE};
use crate::part::conformance::{conformance_probability, test_uncertainty_ratio};
use crate::part::limits::Limits;
use crate::uncertainty::{COVERAGE_BY_CONVENTION, Estimate};

/// A span accepts no part if not even one at the centre of its tolerance conforms with this probability; a convention.
const LEAST_CONFORMANCE: f64 = 0.95;

/// Why a span was chosen or lost.
#[derive(Clone, Copy, Debug, PartialEq)]
#[non_exhaustive]
pub enum Outcome {
    /// This is the chosen one: of the spans that show every conforming part, that with the least expanded uncertainty.
    Chosen,
    /// A conforming part at the upper limit would be over-range here.
    OverRange,
    /// Its expanded uncertainty is wider than the chosen one's.
    Wider {
        /// How many times as wide.
        factor: f64,
    },
}

/// What one span would make of the part.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Assessment {
    /// Whether every part up to the upper limit is shown.
    pub holds: bool,
    /// What a part of exactly the nominal value shows.
    pub expected_display: DisplayText,
    /// The same in ohm; the full scale where it is over-range.
    pub expected_ohm: f64,
    /// The same in steps of the display; the full scale's where it is over-range.
    pub counts_used: i64,
    /// The expanded uncertainty in ohm, at a coverage probability of 0.95, of one reading of the nominal value: the meter's
    /// clause and the display's step where that is not inside it. Scatter, leads and temperature are not in it.
    pub expanded_ohm: f64,
    /// Test uncertainty ratio: the width of the tolerance over that of the coverage interval.
    pub tur: f64,
    /// The probability that a part that reads exactly the nominal value conforms.
    pub conformance_probability_at_centre: f64,
    /// Whether that probability is 0.95 at least, so that a part can be accepted here at a risk of 5 %.
    pub accepts_some: bool,
    /// Whether it was chosen, and if not, why.
    pub outcome: Outcome,
}

/// The choice of a span for a part. What each span would make of the part is computed when asked for.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Choice<'a> {
    meter: Meter<'a>,
    part: Part,
    index: usize,
    expanded_ohm: f64,
}

#[derive(Clone, Copy, Debug, PartialEq)]
struct Part {
    nominal_ohm: f64,
    limits: Limits,
    meter_temperature_c: Option<f64>,
}

impl<'a> Meter<'a> {
    /// The span for a part of this nominal value in ohm, in (0, 1e15], and this tolerance as a fraction, in (0, 1): of the
    /// spans that show every conforming part, the one with the least expanded uncertainty; the lower one of equals.
    ///
    /// # Errors
    /// [`MeterError::Range`]; [`MeterError::NoSpanHolds`] if the upper limit is beyond the highest span.
    ///
    /// ```
    /// use reckohm::meter::{Meter, Outcome};
    /// let choice = Meter::example_hand_held().choose(4700.0, 0.05)?;
    /// assert_eq!(choice.index(), 2); // 20 kohm
    /// let chosen = choice.assessment(2)?;
    /// assert_eq!(chosen.expected_display.as_str(), "4.70");
    /// assert!((chosen.expanded_ohm - 0.95 * (0.008 * 4700.0 + 30.0)).abs() < 1e-9);
    /// assert_eq!(choice.assessment(1)?.outcome, Outcome::OverRange);
    /// # Ok::<(), reckohm::meter::MeterError>(())
    /// ```
    pub fn choose(&self, nominal_ohm: f64, tolerance: f64) -> Result<Choice<'a>, MeterError> {
        self.choose_at(nominal_ohm, tolerance, None)
    }

    /// The same with the meter at this temperature in °C, which widens the clauses outside their bands.
    ///
    /// # Errors
    /// As [`choose`](Meter::choose); and [`MeterError::CoefficientMissing`] for a span whose clause has no temperature
    /// coefficient, if the temperature is outside its band.
    ///
    /// ```
    /// use reckohm::meter::Meter;
    /// let choice = Meter::example_hand_held().choose_at(4700.0, 0.05, Some(35.0))?;
    /// assert!((choice.chosen()?.expanded_ohm - 0.95 * 1.7 * (0.008 * 4700.0 + 30.0)).abs() < 1e-9);
    /// # Ok::<(), reckohm::meter::MeterError>(())
    /// ```
    pub fn choose_at(
        &self,
        nominal_ohm: f64,
        tolerance: f64,
        meter_temperature_c: Option<f64>,
    ) -> Result<Choice<'a>, MeterError> {
        let nominal_ohm = RESISTANCE.check(nominal_ohm)?;
        let tolerance = TOLERANCE.check(tolerance)?;
        let limits = Limits::around_value(nominal_ohm, tolerance);
        let part = Part { nominal_ohm, limits, meter_temperature_c };
        let mut best: Option<(usize, f64)> = None;
        for (index, span) in self.spans().iter().enumerate() {
            let expanded_ohm = part.expanded_ohm(span)?;
            if part.is_held_by(span) && best.is_none_or(|(_, least)| expanded_ohm < least) {
                best = Some((index, expanded_ohm));
            }
        }
        let full_scale_ohm = self.spans().last().map_or(0.0, Span::full_scale_ohm);
        let (index, expanded_ohm) = best.ok_or(NoSpanHolds { upper_limit_ohm: limits.upper_ohm(), full_scale_ohm })?;
        Ok(Choice { meter: *self, part, index, expanded_ohm })
    }
}

impl<'a> Choice<'a> {
    /// The index of the chosen span, counted from 0.
    pub const fn index(&self) -> usize {
        self.index
    }

    /// The meter.
    pub const fn meter(&self) -> Meter<'a> {
        self.meter
    }

    /// Nominal value, lower and upper limit of the part in ohm.
    pub const fn part_ohm(&self) -> (f64, f64, f64) {
        (self.part.nominal_ohm, self.part.limits.lower_ohm(), self.part.limits.upper_ohm())
    }

    /// What the chosen span makes of the part.
    ///
    /// # Errors
    /// As [`assessment`](Choice::assessment).
    ///
    /// ```
    /// use reckohm::meter::Meter;
    /// let chosen = Meter::example_hand_held().choose(220.0, 0.01)?.chosen()?;
    /// assert!(!chosen.accepts_some, "0.8 % and three counts cannot judge one percent");
    /// # Ok::<(), reckohm::meter::MeterError>(())
    /// ```
    pub fn chosen(&self) -> Result<Assessment, MeterError> {
        self.assessment(self.index)
    }

    /// What the span with this index makes of the part, and why it was chosen or lost.
    ///
    /// # Errors
    /// [`MeterError::NoSuchSpan`]; [`MeterError::Uncertainty`] for a result that does not fit the number type.
    ///
    /// ```
    /// use reckohm::meter::{Meter, Outcome};
    /// let choice = Meter::example_hand_held().choose(1.0e3, 0.05)?;
    /// let Outcome::Wider { factor } = choice.assessment(2)?.outcome else { panic!("20 kohm loses") };
    /// assert!((factor - 38.0 / 11.0).abs() < 1e-12);
    /// # Ok::<(), reckohm::meter::MeterError>(())
    /// ```
    pub fn assessment(&self, index: usize) -> Result<Assessment, MeterError> {
        let span = self.meter.span(index)?;
        let Part { nominal_ohm, limits, .. } = self.part;
        let estimate = self.part.estimate(span)?;
        let expanded_ohm = estimate.expanded(COVERAGE_BY_CONVENTION)?.half_width;
        let conformance = conformance_probability(&estimate, &limits);
        let counts_used = span.nearest_counts(nominal_ohm);
        let ratio = test_uncertainty_ratio(&limits, expanded_ohm);
        let holds = self.part.is_held_by(span);
        Ok(Assessment {
            holds,
            expected_display: if counts_used < span.full_scale_counts() || span.marks().bits() != 0 {
                span.display_text(nominal_ohm)?
            } else {
                DisplayText::EMPTY
            },
            expected_ohm: span.at_counts(counts_used).to_f64(),
            counts_used,
            expanded_ohm,
            tur: if ratio < f64::MAX { ratio } else { f64::MAX },
            conformance_probability_at_centre: conformance,
            accepts_some: conformance >= LEAST_CONFORMANCE,
            outcome: if index == self.index {
                Outcome::Chosen
            } else if holds {
                Outcome::Wider { factor: expanded_ohm / self.expanded_ohm }
            } else {
                Outcome::OverRange
            },
        })
    }
}

impl Part {
    fn is_held_by(&self, span: &Span) -> bool {
        span.nearest_counts(self.limits.upper_ohm()) < span.full_scale_counts()
    }

    /// One reading of the nominal value, with the shape of the meter's error.
    fn estimate(&self, span: &Span) -> Result<Estimate, MeterError> {
        span.estimate_at(self.nominal_ohm, self.meter_temperature_c)
    }

    fn expanded_ohm(&self, span: &Span) -> Result<f64, MeterError> {
        Ok(self.estimate(span)?.expanded(COVERAGE_BY_CONVENTION)?.half_width)
    }
}
