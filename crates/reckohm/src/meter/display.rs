//! What the display shows, to a reading and back: over-range marks, sign, point, number of digits, grid.

use super::error::MeterError;
use super::grid::Said;
use super::inline_text::DisplayText;
use super::marks::Marks;
use super::misfit::{Form, Misfit, MisfitText};
use super::reading::Reading;
use super::span::Span;
use super::typed::{Typed, over_range_mark, without_blanks};
use super::unread::Unread;
use crate::number::{Decimal, FINITE, Kind, Real};

impl<R: Real> Span<R> {
    /// The reading that a display text means on this span, the text being what the display shows, in the display's unit.
    ///
    /// - **Number:** all the digits that the span shows behind the point, a comma being a point too; zeros in front may be
    ///   there or not; a plus or a minus in front (a negative reading is kept). The value is exactly the digits times the
    ///   step.
    /// - **Over-range**, only as the span's marks say: a lone "1" (also "1."); "OL" as OL, O.L, .OL, 0L, 0.L, O L in any
    ///   case; blank digits; two or more dashes. A minus in front of "1" or "OL" is kept as the sign.
    /// - **Multiplier letter** after the number, k or K, M, or G: the number is then in kilohm, megohm or gigohm whatever
    ///   the display's unit, and must have as many digits behind the point as the step asks for in that unit.
    /// - Blanks and line ends around the text are left away.
    ///
    /// # Errors
    /// [`MeterError`], each with the byte's offset in the text as given: nothing there; more than 32 bytes; a byte that
    /// cannot stand there; a missing digit; an over-range mark that this span does not have; and as [`MeterError::Text`] a
    /// missing point, too few or too many decimals, too many digits, off the grid of a step of 2 or 5, at or beyond full
    /// scale, and a lone "1" where it may be over-range or one step. Where the text would fit another reading, that is named.
    ///
    /// ```
    /// use reckohm::meter::Meter;
    /// let span = &Meter::example_hand_held().spans()[1]; // 2 kohm, shows up to 1.999
    /// assert_eq!(span.read(b"1.462")?.ohm(), 1462.0);
    /// assert_eq!(span.read(b"-0.003")?.ohm(), -3.0);
    /// assert!(span.read(b"1")?.over());
    /// let message = span.read(b"1462").unwrap_err();
    /// assert_eq!(message.detail().lower, 1462.0, "what it could be, in ohm");
    /// # Ok::<(), reckohm::meter::MeterError>(())
    /// ```
    pub fn read(&self, text: &[u8]) -> Result<Reading<R>, MeterError> {
        match self.grid().read(text) {
            Ok(shown) => Ok(self.reading_of(shown)),
            Err(unread) => Err(self.explained(text, unread)),
        }
    }

    fn reading_of(&self, shown: Said) -> Reading<R> {
        match shown {
            Said::Over { negative } => Reading::beyond(self.full_scale_ohm(), negative),
            Said::Value { counts, negative } => {
                Reading::of_value(self.at_counts(i64::from(counts)).to_real(), counts, negative)
            }
        }
    }

    /// The same refusal with what was given, what is allowed, and what else the text could be.
    #[cold]
    fn explained(&self, text: &[u8], unread: Unread) -> MeterError {
        // Not a byte of it is looked at.
        if unread.kind() == Kind::TextTooLong {
            return MeterError::TextTooLong { length: text.len() as u64 };
        }
        let at = unread.offset() as u64;
        let (body, start) = without_blanks(text);
        if let (Some(text), Ok(typed)) = (MisfitText::from_kind(unread.kind()), Typed::scan(body, start)) {
            return self.misfit(text, at, &typed).into();
        }
        match (unread.kind(), over_range_mark(body)) {
            (Kind::Empty, _) => MeterError::TextEmpty,
            (Kind::MarkNotOfSpan, Some((mark, _))) => MeterError::MarkNotOfSpan { at, mark },
            (Kind::MissingDigits, _) => MeterError::TextWithoutDigits { at },
            _ => MeterError::TextByte { at, byte: text.get(unread.offset()).copied().unwrap_or_default() },
        }
    }

    fn misfit(&self, text: MisfitText, at: u64, typed: &Typed) -> Misfit {
        let unit = typed.unit.unwrap_or(i32::from(self.grid().unit));
        let decimals = self.grid().decimals_in(unit);
        let value = Decimal::new(typed.digits as i64, unit.wrapping_sub(typed.fraction)).scaled(typed.dropped);
        let shown = |decimal: Decimal| if decimal <= self.largest() { Some(decimal) } else { None };
        let could_be = match text {
            MisfitText::TooFewDecimals | MisfitText::TooManyDecimals | MisfitText::TooManyDigits => shown(value),
            // The digits with the point put where this span has it, if all of them are there.
            MisfitText::MissingPoint if typed.whole > decimals => shown(value.scaled(decimals.wrapping_neg())),
            MisfitText::OffGrid => Some(self.resolution()),
            MisfitText::MissingPoint | MisfitText::BeyondFullScale | MisfitText::AmbiguousOne => None,
        };
        Misfit {
            text,
            at,
            given: R::nearest_double(value.scaled(unit.wrapping_neg())),
            given_decimals: typed.fraction as u8,
            could_be_ohm: could_be.map_or(0.0, R::nearest_double),
            largest_ohm: R::nearest_double(self.largest()),
            form: Form { unit: unit as i8, decimals: decimals as u8 },
        }
    }

    /// What the display shows for this resistance in ohm: the nearest step in the display's unit, or beyond full scale the
    /// first of the span's over-range marks, in the order "1", "OL", blank digits (an empty text), dashes.
    ///
    /// # Errors
    /// [`MeterError::Range`] for a number that is not finite; [`MeterError::BeyondFullScale`] beyond full scale if the span
    /// has no mark.
    ///
    /// ```
    /// use reckohm::meter::Meter;
    /// let span = &Meter::example_hand_held().spans()[1]; // 2 kohm
    /// assert_eq!(span.display_text(1500.0)?.as_str(), "1.500");
    /// assert_eq!(span.display_text(-0.6)?.as_str(), "-0.001");
    /// assert_eq!(span.display_text(4700.0)?.as_str(), "1");
    /// # Ok::<(), reckohm::meter::MeterError>(())
    /// ```
    pub fn display_text(&self, ohm: R) -> Result<DisplayText, MeterError> {
        let ohm = FINITE.check(ohm)?;
        let counts = self.nearest_counts(ohm);
        let mut text = DisplayText::EMPTY;
        if counts.abs() < self.full_scale_counts() {
            self.write_counts(counts, &mut text);
            return Ok(text);
        }
        let marks = self.marks();
        if !marks.contains(Marks::BLANK) && marks == Marks::NONE {
            return Err(MeterError::BeyondFullScale {
                given_ohm: ohm.to_f64(),
                full_scale_ohm: self.full_scale_ohm().to_f64(),
            });
        }
        let sign: &[u8] = if ohm < R::ZERO { b"-" } else { b"" };
        if marks.contains(Marks::ONE_ALONE) {
            text.extend(sign);
            text.extend(b"1");
        } else if marks.contains(Marks::OL) {
            text.extend(sign);
            text.extend(b"OL");
        } else if marks.contains(Marks::DASHES) && !marks.contains(Marks::BLANK) {
            text.extend(b"----");
        }
        Ok(text)
    }

    /// The nearest number of steps; beyond the display's reach the full scale's.
    pub(super) fn nearest_counts(&self, ohm: R) -> i64 {
        let steps = ohm.magnitude() / self.step_ohm();
        // So many steps are a whole number as they are, and one half more would be rounded.
        let half = if steps * R::SPACING_AT_ONE < R::ONE { R::lit(0.5) } else { R::ZERO };
        let steps = (steps + half).whole_part().min(self.full_scale_counts());
        if ohm < R::ZERO { steps.wrapping_neg() } else { steps }
    }

    fn write_counts(&self, counts: i64, text: &mut DisplayText) {
        let unit = i32::from(self.grid().unit);
        let decimals = self.grid().decimals_in(unit);
        let shown = self.at_counts(counts).scaled(unit.wrapping_neg());
        // All digits as one whole number, least first; a step coarser than the unit brings its zeros with it.
        let mut rest = shown.digits_at(decimals.wrapping_neg()).unwrap_or(0).unsigned_abs();
        let mut reversed = DisplayText::EMPTY;
        let mut place = 0;
        while rest > 0 || place <= decimals {
            if place == decimals && decimals > 0 {
                reversed.push(b'.');
            }
            reversed.push(b'0'.wrapping_add((rest % 10) as u8));
            rest /= 10;
            place = i32::wrapping_add(place, 1);
        }
        if counts < 0 {
            text.push(b'-');
        }
        reversed.as_bytes().iter().rev().for_each(|byte| text.push(*byte));
    }
}
