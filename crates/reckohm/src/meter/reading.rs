//! One reading: what a span's display or a meter's reply said, as a number.

use super::error::MeterError;
use super::span::Span;
use crate::number::FINITE;

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
pub struct Reading {
    pub(super) ohm: f64,
    pub(super) counts: i64,
    pub(super) over: bool,
    pub(super) negative: bool,
}

impl Reading {
    /// The resistance in ohm, with its sign. **Of an over-range reading** it is the span's full scale, a bound that the
    /// resistance lies beyond and not its value: look at [`over`](Reading::over) first.
    pub const fn ohm(&self) -> f64 {
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

impl Span {
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
    pub fn reading(&self, ohm: f64, counts: i64, over: bool, negative: bool) -> Result<Reading, MeterError> {
        let ohm = FINITE.check(ohm)?;
        let full_scale_ohm = self.full_scale_ohm();
        let magnitude = ohm.abs();
        if !over && magnitude >= full_scale_ohm {
            return Err(MeterError::BeyondFullScale { given_ohm: ohm, full_scale_ohm });
        }
        let sign_fits = ohm == 0.0 || negative == (ohm < 0.0);
        let value_fits = if over { magnitude == full_scale_ohm } else { true };
        // Replies have no counts.
        let counts_fit = counts == 0 || !over && self.at_counts(counts).to_f64() == ohm;
        if sign_fits && value_fits && counts_fit {
            Ok(Reading { ohm, counts, over, negative })
        } else {
            Err(MeterError::NotOneReading { ohm, counts, step_ohm: self.step_ohm() })
        }
    }
}
