//! A column of numbers: one for all elements, or one for each.

use core::ops::Range;

use super::error::VerdictError;
use crate::number::Real;
use crate::number::arrays::same_length;
use crate::uncertainty::EstimateError;

/// So many elements at a time: their numbers and tails stay in the nearest cache, and one that needs the general shape takes
/// no more than these from the fast loops.
pub(super) const STRETCH: usize = 256;

/// One number for all elements, or a number for each.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Column<'a, R = f64> {
    /// The same for all.
    One(R),
    /// One for each.
    Each(&'a [R]),
}

impl<'a, R: Real> Column<'a, R> {
    /// These elements of it; none beyond its end.
    ///
    /// ```
    /// use reckohm::verdict::Column;
    /// assert_eq!(Column::Each(&[1.0, 2.0, 3.0]).part(1..3), Column::Each(&[2.0, 3.0]));
    /// assert_eq!(Column::<f64>::One(1.0).part(1..3), Column::One(1.0));
    /// ```
    #[inline]
    pub fn part(self, elements: Range<usize>) -> Column<'a, R> {
        match self {
            Column::One(x) => Column::One(x),
            Column::Each(all) => Column::Each(all.get(elements).unwrap_or_default()),
        }
    }

    pub(super) fn at(self, index: usize) -> R {
        match self {
            Column::One(x) => x,
            Column::Each(all) => all.get(index).copied().unwrap_or_default(),
        }
    }

    pub(super) fn fits(self, count: usize) -> Result<(), VerdictError> {
        match self {
            Column::One(_) => Ok(()),
            Column::Each(all) => Ok(same_length::<EstimateError>(all.len(), count)?),
        }
    }

    /// A slice of as many numbers as a stretch has; one number for all was written into `room` before.
    pub(super) fn slice(self, elements: Range<usize>, room: &'a [R; STRETCH]) -> &'a [R] {
        match self {
            Column::One(_) => room.get(..elements.len()).unwrap_or_default(),
            Column::Each(all) => all.get(elements).unwrap_or_default(),
        }
    }
}
