//! What the display shows, to a reading and back: over-range marks, sign, point, number of digits, grid.

use super::error::MeterError;
use super::inline_text::DisplayText;
use super::marks::Marks;
use super::misfit::{Form, Misfit, MisfitText};
use super::reading::Reading;
use super::span::{Span, steps_in};
use crate::number::{Decimal, FINITE, Real, is_blank};

/// The longest text that is read as a display's, in bytes, blanks included.
pub const LONGEST_DISPLAY_TEXT: usize = 32;

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
        if text.len() > LONGEST_DISPLAY_TEXT {
            return Err(MeterError::TextTooLong { length: text.len() as u64 });
        }
        let (body, start) = without_blanks(text);
        if let Some((mark, negative)) = over_range_mark(body) {
            if self.marks().contains(mark) {
                return Ok(self.over(negative));
            }
            if mark != Marks::BLANK {
                return Err(MeterError::MarkNotOfSpan { at: start as u64, mark });
            }
            if body.is_empty() {
                return Err(MeterError::TextEmpty);
            }
        }
        let typed = Typed::scan(body, start)?;
        self.fit(&typed)
    }

    fn over(&self, negative: bool) -> Reading<R> {
        let ohm = if negative { -self.full_scale_ohm() } else { self.full_scale_ohm() };
        Reading { ohm, counts: 0, over: true, negative }
    }

    fn fit(&self, typed: &Typed) -> Result<Reading<R>, MeterError> {
        let unit = typed.unit.unwrap_or(self.unit_power());
        let decimals = self.decimals_in(unit);
        let value = Decimal::new(typed.digits, unit.wrapping_sub(typed.fraction)).scaled(typed.dropped);
        let at = typed.at as u64;
        let misfit = |text: MisfitText, at: u64, could_be: Option<Decimal>| {
            Err(MeterError::Text(Misfit {
                text,
                at,
                given: R::nearest_double(value.scaled(unit.wrapping_neg())),
                given_decimals: typed.fraction as u8,
                could_be_ohm: could_be.map_or(0.0, R::nearest_double),
                largest_ohm: R::nearest_double(self.largest()),
                form: Form { unit: unit as i8, decimals: decimals as u8 },
            }))
        };
        if typed.is_lone_one() && self.marks().contains(Marks::ONE_ALONE) {
            if decimals > 0 || self.step_is_coarser_than_unit() {
                return Ok(self.over(typed.negative));
            }
            return misfit(MisfitText::AmbiguousOne, at, None);
        }
        let beyond = value >= self.at_counts(self.full_scale_counts());
        if typed.unit.is_some() && beyond {
            return misfit(MisfitText::BeyondFullScale, at, None);
        }
        let shown = |decimal: Decimal| (decimal <= self.largest()).then_some(decimal);
        if typed.fraction < decimals {
            if typed.point {
                return misfit(MisfitText::TooFewDecimals, typed.end as u64, shown(value));
            }
            // The digits with the point put where this span has it, if all of them are there.
            let restored = (typed.whole > decimals).then_some(value.scaled(decimals.wrapping_neg()));
            return misfit(MisfitText::MissingPoint, typed.end as u64, restored.and_then(shown));
        }
        if typed.fraction > decimals {
            return misfit(MisfitText::TooManyDecimals, typed.end as u64, shown(value));
        }
        if beyond {
            return misfit(MisfitText::BeyondFullScale, at, None);
        }
        if typed.whole > self.whole_digits_in(unit) {
            return misfit(MisfitText::TooManyDigits, at, shown(value));
        }
        let step = self.resolution();
        match steps_in(value, step) {
            Some(counts) => {
                let counts = if typed.negative { counts.wrapping_neg() } else { counts };
                Ok(Reading { ohm: self.at_counts(counts).to_real(), counts, over: false, negative: typed.negative })
            }
            None => misfit(MisfitText::OffGrid, at, Some(step)),
        }
    }

    /// Whether a lone "1" in the display's unit is off the grid, so that it cannot be a value.
    fn step_is_coarser_than_unit(&self) -> bool {
        self.resolution() > Decimal::new(1, self.unit_power())
    }

    /// How many digits stand in front of the point at most, in a unit of 10^`unit` ohm.
    fn whole_digits_in(&self, unit: i32) -> i32 {
        let largest = self.largest();
        let order = largest.digits.unsigned_abs().checked_ilog10().unwrap_or_default() as i32;
        order.wrapping_add(largest.exponent).wrapping_sub(unit).wrapping_add(1).max(1)
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
        let unit = self.unit_power();
        let decimals = self.decimals_in(unit);
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

/// The text without blanks and line ends around it, and the offset where it starts.
fn without_blanks(text: &[u8]) -> (&[u8], usize) {
    let (mut body, mut start) = (text, 0_usize);
    while let Some((_, rest)) = body.split_first().filter(|(first, _)| is_blank(**first)) {
        (body, start) = (rest, start.wrapping_add(1));
    }
    while let Some((_, rest)) = body.split_last().filter(|(last, _)| is_blank(**last)) {
        body = rest;
    }
    (body, start)
}

/// The over-range mark that a text without surrounding blanks is, if it is one that no number looks like, and its sign.
fn over_range_mark(body: &[u8]) -> Option<(Marks, bool)> {
    let solid = || body.iter().copied().filter(|byte| !matches!(byte, b'.' | b',') && !is_blank(*byte));
    let points = body.iter().filter(|byte| matches!(byte, b'.' | b',')).count();
    let mut solid_rest = solid();
    match solid().count() {
        0 if points <= 1 => return Some((Marks::BLANK, false)),
        0 => return None,
        2.. if solid_rest.all(|byte| byte == b'-') => return Some((Marks::DASHES, false)),
        _ => {}
    }
    let signed = body.first().is_some_and(|byte| matches!(byte, b'-' | b'+'));
    let mut letters = solid().skip(usize::from(signed));
    let (o, l, end) = (letters.next(), letters.next(), letters.next());
    let is_ol = matches!(o, Some(b'O' | b'o' | b'0')) && matches!(l, Some(b'L' | b'l')) && end.is_none();
    (is_ol && points <= 1).then_some((Marks::OL, body.first() == Some(&b'-')))
}

/// A display text that has the form of a number.
struct Typed {
    negative: bool,
    /// The digits as one whole number, and how many at the end of it are left away because they do not fit.
    digits: i64,
    dropped: i32,
    /// Digits in front of the point, and behind it.
    whole: i32,
    fraction: i32,
    point: bool,
    /// The power of ten of the multiplier letter.
    unit: Option<i32>,
    /// Offsets of the first digit or point, and of the first byte after the digits.
    at: usize,
    end: usize,
}

impl Typed {
    fn scan(body: &[u8], start: usize) -> Result<Typed, MeterError> {
        let mut typed = Typed {
            negative: body.first() == Some(&b'-'),
            digits: 0,
            dropped: 0,
            whole: 0,
            fraction: 0,
            point: false,
            unit: None,
            at: start,
            end: start,
        };
        let signed = body.first().is_some_and(|byte| matches!(byte, b'-' | b'+'));
        let mut bytes = body.iter().copied().zip(start..).skip(usize::from(signed)).peekable();
        typed.at = start.wrapping_add(usize::from(signed));
        typed.end = typed.at;
        while let Some((byte, at)) = bytes.next_if(|(byte, _)| matches!(byte, b'0'..=b'9' | b'.' | b',')) {
            if !byte.is_ascii_digit() {
                if typed.point {
                    return Err(MeterError::TextByte { at: at as u64, byte });
                }
                typed.point = true;
            } else {
                typed.append(byte.wrapping_sub(b'0'));
            }
            typed.end = at.wrapping_add(1);
        }
        let seen = typed.whole.wrapping_add(typed.fraction) > 0;
        let after = bytes.peek().copied();
        while bytes.next_if(|(byte, _)| seen && is_blank(*byte)).is_some() {}
        typed.unit = bytes.next_if(|_| seen).map(|(byte, at)| multiplier(byte).ok_or((byte, at))).transpose().map_err(
            // A blank inside the number is what is wrong, not the digit after it.
            |wrong| {
                let (byte, at) = after.filter(|_| wrong.0.is_ascii_digit()).unwrap_or(wrong);
                MeterError::TextByte { at: at as u64, byte }
            },
        )?;
        match bytes.next() {
            Some((byte, at)) => Err(MeterError::TextByte { at: at as u64, byte }),
            None if !seen => Err(MeterError::TextWithoutDigits { at: typed.end as u64 }),
            None => Ok(typed),
        }
    }

    fn append(&mut self, digit: u8) {
        if self.digits < 10_i64.pow(17) {
            self.digits = self.digits.wrapping_mul(10).wrapping_add(i64::from(digit));
        } else {
            self.dropped = self.dropped.wrapping_add(1);
        }
        let place = if self.point { &mut self.fraction } else { &mut self.whole };
        *place = place.wrapping_add(1);
    }

    /// A single "1" and no other digit, with or without a point behind it.
    fn is_lone_one(&self) -> bool {
        self.digits == 1 && self.whole == 1 && self.fraction == 0 && self.unit.is_none()
    }
}

/// The power of ten that a multiplier letter stands for. A small "m" is none: it would be milli, and is written for mega.
fn multiplier(byte: u8) -> Option<i32> {
    match byte {
        b'k' | b'K' => Some(3),
        b'M' => Some(6),
        b'G' => Some(9),
        _ => None,
    }
}
