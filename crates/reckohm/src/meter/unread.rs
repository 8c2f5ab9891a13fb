//! Why a display text is no reading, as firmware has it: what is wrong and where, and nothing of what else it could be.

use core::fmt;

use super::error_detail::PREPARED;
use super::grid::LONGEST_DISPLAY_TEXT;
use crate::number::{Detail, Kind};

/// A text that a [prepared span](super::PreparedSpan) does not read. [`Span::read`](super::Span::read) refuses the same texts
/// for the same reasons, and says more about them.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Unread {
    kind: Kind,
    at: u32,
}

impl Unread {
    pub(super) const fn at(kind: Kind, at: usize) -> Unread {
        Unread { kind, at: at as u32 }
    }

    /// What is wrong, in one word: that of the error that [`Span::read`](super::Span::read) gives.
    pub const fn kind(&self) -> Kind {
        self.kind
    }

    /// The offset of the byte where it shows, from the start of the text.
    pub const fn offset(&self) -> usize {
        self.at as usize
    }

    /// The same as plain numbers; the offset is the index.
    pub const fn detail(&self) -> Detail {
        Detail { argument: PREPARED, index: self.at as u64, ..Detail::new(self.kind) }
    }

    /// Back from plain numbers, if they are of this.
    ///
    /// ```
    /// use reckohm::meter::{Meter, Unread};
    /// let prepared = Meter::example_hand_held().span(1)?.prepared(None)?;
    /// let unread = prepared.read(b"1.46").unwrap_err();
    /// assert_eq!(Unread::from_detail(&unread.detail()), Some(unread));
    /// # Ok::<(), reckohm::meter::MeterError>(())
    /// ```
    pub const fn from_detail(detail: &Detail) -> Option<Unread> {
        let of_this = detail.argument == PREPARED && Unread::words(detail.kind).is_some();
        if of_this { Some(Unread { kind: detail.kind, at: detail.index as u32 }) } else { None }
    }

    /// What is wrong, in the words of a message.
    const fn words(kind: Kind) -> Option<&'static str> {
        Some(match kind {
            Kind::Empty => "nothing but blanks",
            Kind::TextTooLong => "too many bytes",
            Kind::UnexpectedByte => "a byte that cannot stand there",
            Kind::MissingDigits => "no digit",
            Kind::MarkNotOfSpan => "an over-range mark of other spans",
            Kind::MissingPoint => "digits without their point",
            Kind::TooFewDecimals => "too few digits behind the point",
            Kind::TooManyDecimals => "too many digits behind the point",
            Kind::TooManyDigits => "too many digits in front of the point",
            Kind::BeyondFullScale => "a value beyond the span",
            Kind::OffGrid => "a value between two steps",
            Kind::AmbiguousText => "a lone 1 that may be over-range or a value",
            _ => return None,
        })
    }
}

impl fmt::Display for Unread {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let wrong = Unread::words(self.kind).unwrap_or("something else");
        write!(
            f,
            "display text on a prepared span: {wrong} given at offset {}, at most {LONGEST_DISPLAY_TEXT} bytes as the span's \
             display shows them allowed; read it on the span itself to see what it could be",
            self.at
        )
    }
}

impl core::error::Error for Unread {}
