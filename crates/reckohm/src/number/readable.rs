//! Numbers in sentences.

use core::fmt;

/// From here on, and below the least one, a number is written with its power of ten.
const LARGE: f64 = 1.0e16;
const SMALL: f64 = 1.0e-9;

/// A number with all its digits, as a person would write it: a sentence with 300 zeros tells nobody anything, and does not
/// fit the room that the C door states.
pub(crate) struct Readable(pub(crate) f64);

impl fmt::Display for Readable {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let magnitude = self.0.abs();
        if magnitude == 0.0 || (SMALL..LARGE).contains(&magnitude) {
            fmt::Display::fmt(&self.0, f)
        } else {
            fmt::LowerExp::fmt(&self.0, f)
        }
    }
}
