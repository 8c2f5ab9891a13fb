//! A short text held in place, since the core has no heap.

use core::fmt;
use core::hash::{Hash, Hasher};

/// What is printed on a part: at most eight figures and letters.
///
/// ```
/// use reckohm::marking::Marking;
/// let printed = Marking::from_letters("4K7J")?.to_chip()?;
/// assert_eq!(printed.as_str(), "472");
/// # Ok::<(), reckohm::marking::MarkingError>(())
/// ```
#[derive(Clone, Copy, Default)]
pub struct MarkText {
    bytes: [u8; 8],
    length: u8,
}

impl MarkText {
    /// The text.
    ///
    /// ```
    /// # use reckohm::marking::Marking;
    /// assert_eq!(Marking::from_chip("R047", None)?.to_letters()?.as_str(), "R047");
    /// # Ok::<(), reckohm::marking::MarkingError>(())
    /// ```
    pub fn as_str(&self) -> &str {
        // Only ASCII is ever pushed.
        core::str::from_utf8(self.as_bytes()).unwrap_or("")
    }

    /// The text as bytes, all of them ASCII.
    ///
    /// ```
    /// # use reckohm::marking::Marking;
    /// assert_eq!(Marking::from_chip("4701", None)?.to_letters()?.as_bytes(), b"4K7");
    /// # Ok::<(), reckohm::marking::MarkingError>(())
    /// ```
    pub fn as_bytes(&self) -> &[u8] {
        self.bytes.get(..usize::from(self.length)).unwrap_or(&[])
    }

    /// Adds one ASCII character; what no longer fits is left out, but no code is that long.
    pub(super) fn push(&mut self, byte: u8) {
        if let Some(place) = self.bytes.get_mut(usize::from(self.length)) {
            *place = byte;
            self.length = self.length.wrapping_add(1);
        }
    }

    pub(super) fn push_digit(&mut self, digit: u8) {
        self.push(b'0'.wrapping_add(digit));
    }
}

impl fmt::Display for MarkText {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.pad(self.as_str())
    }
}

impl fmt::Debug for MarkText {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        fmt::Debug::fmt(self.as_str(), f)
    }
}

impl PartialEq for MarkText {
    fn eq(&self, other: &MarkText) -> bool {
        self.as_bytes() == other.as_bytes()
    }
}

impl Eq for MarkText {}

impl Hash for MarkText {
    fn hash<H: Hasher>(&self, state: &mut H) {
        self.as_bytes().hash(state);
    }
}

impl PartialEq<str> for MarkText {
    fn eq(&self, other: &str) -> bool {
        self.as_str() == other
    }
}

impl PartialEq<&str> for MarkText {
    fn eq(&self, other: &&str) -> bool {
        self.as_str() == *other
    }
}
