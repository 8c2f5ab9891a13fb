//! Short texts that live inside their owner: no heap, no lifetime.

use core::fmt;
use core::hash::{Hash, Hasher};

use super::error::MeterError;

/// A text of at most `CAPACITY` bytes, stored in place.
#[derive(Clone, Copy)]
pub struct InlineText<const CAPACITY: usize> {
    bytes: [u8; CAPACITY],
    length: u8,
}

/// The label of a span: 1 to 15 bytes without control characters, as it stands beside the meter's knob.
pub type Label = InlineText<15>;

/// What a display shows, with its point and its sign.
pub type DisplayText = InlineText<24>;

impl<const CAPACITY: usize> InlineText<CAPACITY> {
    pub(super) const EMPTY: Self = InlineText { bytes: [0; CAPACITY], length: 0 };

    /// The text.
    pub fn as_str(&self) -> &str {
        core::str::from_utf8(self.as_bytes()).unwrap_or_default()
    }

    /// The text's bytes.
    pub fn as_bytes(&self) -> &[u8] {
        self.bytes.get(..usize::from(self.length)).unwrap_or_default()
    }

    /// Appends a byte; one too many is left away.
    pub(super) fn push(&mut self, byte: u8) {
        if let Some(place) = self.bytes.get_mut(usize::from(self.length)) {
            *place = byte;
            self.length = self.length.wrapping_add(1);
        }
    }

    pub(super) fn extend(&mut self, bytes: &[u8]) {
        bytes.iter().for_each(|byte| self.push(*byte));
    }
}

impl Label {
    /// A label from its text.
    ///
    /// # Errors
    /// [`MeterError`] for an empty text, for more than 15 bytes (a letter outside ASCII has two or more), and for a control
    /// character.
    ///
    /// ```
    /// use reckohm::meter::Label;
    /// assert_eq!(Label::new("20 kohm")?.as_str(), "20 kohm");
    /// assert!(Label::new("a label that is too long").is_err());
    /// # Ok::<(), reckohm::meter::MeterError>(())
    /// ```
    pub fn new(text: &str) -> Result<Label, MeterError> {
        let mut label = Label::EMPTY;
        if text.is_empty() {
            return Err(MeterError::LabelEmpty);
        }
        if text.len() > label.bytes.len() {
            return Err(MeterError::LabelTooLong { length: text.len() as u64 });
        }
        if let Some((at, byte)) = text.bytes().enumerate().find(|(_, byte)| byte.is_ascii_control()) {
            return Err(MeterError::LabelByte { at: at as u64, byte });
        }
        label.extend(text.as_bytes());
        Ok(label)
    }

    /// A label known when compiling, of at most 15 bytes.
    pub(super) const fn of(text: &'static str) -> Label {
        let mut label = Label::EMPTY;
        let mut rest = text.as_bytes();
        while let Some((byte, after)) = rest.split_first() {
            label.bytes[label.length as usize] = *byte;
            label.length += 1;
            rest = after;
        }
        label
    }
}

impl<const CAPACITY: usize> PartialEq for InlineText<CAPACITY> {
    fn eq(&self, other: &Self) -> bool {
        self.as_bytes() == other.as_bytes()
    }
}

impl<const CAPACITY: usize> Eq for InlineText<CAPACITY> {}

impl<const CAPACITY: usize> Hash for InlineText<CAPACITY> {
    fn hash<H: Hasher>(&self, state: &mut H) {
        self.as_bytes().hash(state);
    }
}

impl<const CAPACITY: usize> fmt::Display for InlineText<CAPACITY> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.pad(self.as_str())
    }
}

impl<const CAPACITY: usize> fmt::Debug for InlineText<CAPACITY> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        fmt::Debug::fmt(self.as_str(), f)
    }
}
