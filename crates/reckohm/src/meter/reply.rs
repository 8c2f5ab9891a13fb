//! A meter's answer over the wire, to a reading.

use super::error::MeterError;
use super::reading::Reading;
use super::span::Span;
use crate::number::Real;

// Numbers that SCPI-1999 sends for what is no reading.
const INFINITY: f64 = 9.9e37;
const NOT_A_NUMBER: f64 = 9.91e37;
/// Single-precision devices send the two marks 3.1e-8 and less off; the marks themselves are 1e-3 apart.
const SAME: f64 = 1.0e-6;
/// From here on a number is neither a reading nor one of the marks.
const UNDEFINED_FROM: f64 = 9.0e37;

impl<R: Real> Span<R> {
    /// The reading that a meter's answer means on this span, in ohm, in the numeric forms NR1, NR2 and NR3 of IEEE 488.2.
    ///
    /// 9.9E37 is over-range and -9.9E37 over-range with a minus, as SCPI-1999 sends infinities (each within 1e-6, since
    /// devices of single precision are a little off). A negative reading is kept. The text is at most 128 bytes; blanks and
    /// line ends around the number are left away. The step of a reply is taken to be the span's resolution.
    ///
    /// # Errors
    /// [`MeterError`]: a text that is not a number; 9.91E37, which stands for "no reading"; any other number of 9e37 or more;
    /// a number at or beyond the span's full scale.
    ///
    /// Source: SCPI-1999 and IEEE 488.2 as reprinted in programming guides of several instruments.
    ///
    /// ```
    /// use reckohm::meter::Meter;
    /// let span = &Meter::example_bench().spans()[1];
    /// assert_eq!(span.read_reply(b"+1.00234567E+03\n")?.ohm(), 1002.34567);
    /// assert!(span.read_reply(b"9.90000000E+37")?.over());
    /// assert!(span.read_reply(b"+9.91000E+37").is_err());
    /// # Ok::<(), reckohm::meter::MeterError>(())
    /// ```
    pub fn read_reply(&self, text: &[u8]) -> Result<Reading<R>, MeterError> {
        let ohm = R::parsed(text)?;
        let magnitude = ohm.magnitude();
        let is = |mark: f64| (magnitude - R::lit(mark)).magnitude() <= R::lit(SAME) * R::lit(mark);
        let negative = ohm.has_minus();
        if is(INFINITY) {
            let bound = self.full_scale_ohm();
            return Ok(Reading { ohm: if negative { -bound } else { bound }, counts: 0, over: true, negative });
        }
        if is(NOT_A_NUMBER) {
            return Err(MeterError::NoReading);
        }
        if magnitude >= R::lit(UNDEFINED_FROM) {
            return Err(MeterError::UndefinedMark { given: ohm.to_f64() });
        }
        if magnitude >= self.full_scale_ohm() {
            return Err(MeterError::BeyondFullScale {
                given_ohm: ohm.to_f64(),
                full_scale_ohm: self.full_scale_ohm().to_f64(),
            });
        }
        // A reply of -0 is 0, with its minus kept as the mark.
        Ok(Reading { ohm: ohm + R::ZERO, counts: 0, over: false, negative })
    }
}
