//! A meter: its spans with their accuracy clauses, what its display and its replies say, which span a part goes on, how to
//! step through the spans, and the leads.

mod auto_ranger;
mod choose;
mod clause;
mod display;
mod error;
mod error_detail;
mod examples;
mod grid;
mod inline_text;
mod leads;
mod marks;
mod misfit;
mod prepared;
mod reading;
mod reply;
mod span;
mod step;
mod typed;
mod unread;
mod wire;

pub use auto_ranger::{AutoRanger, MOST_RANGED_SPANS, RangerAction, RangerState, WIDEST_HYSTERESIS_BY_CONVENTION};
pub use choose::{Assessment, Choice, Outcome};
pub use clause::Clause;
pub use error::MeterError;
pub use grid::LONGEST_DISPLAY_TEXT;
pub use inline_text::{DisplayText, InlineText, Label};
pub use leads::Leads;
pub use marks::Marks;
pub use misfit::{Form, Misfit, MisfitText};
pub use prepared::{PreparedParts, PreparedSpan};
pub use reading::Reading;
pub use span::Span;
pub use step::{HYSTERESIS_BY_CONVENTION, Step};
pub use unread::Unread;

use crate::number::Real;

/// A meter as the list of its spans, from the lowest to the highest.
///
/// ```
/// use reckohm::meter::Meter;
/// let meter = Meter::example_hand_held();
/// assert_eq!(meter.spans().len(), 6);
/// let choice = meter.choose(4700.0, 0.05)?;
/// assert_eq!(meter.spans()[choice.index()].label().as_str(), "20 kohm");
/// # Ok::<(), reckohm::meter::MeterError>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Meter<'a, R = f64> {
    spans: &'a [Span<R>],
}

impl<'a, R: Real> Meter<'a, R> {
    /// A meter with these spans.
    ///
    /// # Errors
    /// [`MeterError::NoSpans`]; [`MeterError::SpansNotAscending`] unless each full scale is larger than the one before.
    ///
    /// ```
    /// use reckohm::meter::Meter;
    /// let spans = Meter::example_bench().spans();
    /// assert!(Meter::new(spans).is_ok());
    /// assert!(Meter::new(&[spans[1], spans[0]]).is_err());
    /// ```
    pub fn new(spans: &'a [Span<R>]) -> Result<Meter<'a, R>, MeterError> {
        if spans.is_empty() {
            return Err(MeterError::NoSpans);
        }
        for ((before, span), index) in spans.iter().zip(spans.iter().skip(1)).zip(1..) {
            let (before_ohm, given_ohm) = (before.full_scale_ohm(), span.full_scale_ohm());
            if given_ohm <= before_ohm {
                let (given_ohm, before_ohm) = (given_ohm.to_f64(), before_ohm.to_f64());
                return Err(MeterError::SpansNotAscending { index, given_ohm, before_ohm });
            }
        }
        Ok(Meter { spans })
    }

    /// Its spans, from the lowest to the highest.
    pub const fn spans(&self) -> &'a [Span<R>] {
        self.spans
    }

    /// The span with this index, counted from 0.
    ///
    /// # Errors
    /// [`MeterError::NoSuchSpan`].
    ///
    /// ```
    /// # use reckohm::meter::Meter;
    /// assert_eq!(Meter::example_hand_held().span(0)?.label().as_str(), "200 ohm");
    /// assert!(Meter::example_hand_held().span(6).is_err());
    /// # Ok::<(), reckohm::meter::MeterError>(())
    /// ```
    pub fn span(&self, index: usize) -> Result<&'a Span<R>, MeterError> {
        let count = self.spans.len() as u64;
        self.spans.get(index).ok_or(MeterError::NoSuchSpan { index: index as u64, count })
    }
}
