//! How a display marks a value beyond its span.

use core::ops::BitOr;

use super::error::MeterError;

/// The over-range marks that a meter uses; any number of them, joined by `|`.
///
/// ```
/// use reckohm::meter::Marks;
/// let marks = Marks::ONE_ALONE | Marks::OL;
/// assert!(marks.contains(Marks::OL) && !marks.contains(Marks::DASHES));
/// assert_eq!(marks.bits(), 3);
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Default)]
pub struct Marks(u8);

impl Marks {
    /// None: the meter marks over-range in no way that is written down.
    pub const NONE: Marks = Marks(0);
    /// A lone "1" at the left with the other digits blank.
    pub const ONE_ALONE: Marks = Marks(1);
    /// "OL" in any of its spellings: OL, O.L, .OL, 0L, 0.L, O L.
    pub const OL: Marks = Marks(2);
    /// All digits blank; a point may be left.
    pub const BLANK: Marks = Marks(4);
    /// Dashes in place of the digits.
    pub const DASHES: Marks = Marks(8);

    /// Both sets together, where `|` cannot be used: in constants.
    ///
    /// ```
    /// # use reckohm::meter::Marks;
    /// const USUAL: Marks = Marks::ONE_ALONE.and(Marks::OL);
    /// assert_eq!(USUAL, Marks::ONE_ALONE | Marks::OL);
    /// ```
    pub const fn and(self, other: Marks) -> Marks {
        Marks(self.0 | other.0)
    }

    /// Whether all of `other` are among these.
    ///
    /// ```
    /// # use reckohm::meter::Marks;
    /// assert!((Marks::OL | Marks::DASHES).contains(Marks::OL));
    /// assert!(!Marks::OL.contains(Marks::OL | Marks::DASHES));
    /// ```
    pub const fn contains(self, other: Marks) -> bool {
        self.0 & other.0 == other.0
    }

    /// The set as a number, one bit a mark: 1 a lone "1", 2 "OL", 4 blank digits, 8 dashes.
    pub const fn bits(self) -> u8 {
        self.0
    }

    /// The set with these bits.
    ///
    /// # Errors
    /// [`MeterError::UnknownMarks`] for a bit that stands for none.
    ///
    /// ```
    /// # use reckohm::meter::Marks;
    /// assert_eq!(Marks::from_bits(2), Ok(Marks::OL));
    /// assert!(Marks::from_bits(16).is_err());
    /// ```
    pub const fn from_bits(bits: u8) -> Result<Marks, MeterError> {
        if bits < 16 { Ok(Marks(bits)) } else { Err(MeterError::UnknownMarks { bits }) }
    }

    /// The mark in words; of several, the first.
    pub(super) const fn words(self) -> &'static str {
        if self.0 == 0 {
            "no mark"
        } else if self.contains(Marks::ONE_ALONE) {
            "a lone \"1\""
        } else if self.contains(Marks::OL) {
            "\"OL\""
        } else if self.contains(Marks::BLANK) {
            "blank digits"
        } else {
            "dashes"
        }
    }
}

impl BitOr for Marks {
    type Output = Marks;
    fn bitor(self, other: Marks) -> Marks {
        self.and(other)
    }
}
