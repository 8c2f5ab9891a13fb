//! Preferred values: the stock that resistors are made in (IEC 60063:2015, series E3 to E192).
//!
//! A preferred value is a decimal of two or three figures times a power of ten. Here it stays one: a number is a preferred
//! value if it is the float nearest to that decimal, and a number half-way between two of them, as written, is a tie. So
//! 1.1 lies half-way between 1.0 and 1.2, although in binary it does not.
//!
//! Resistances are in ohm, in (0, 1e15].
//!
//! ```
//! use reckohm::preferred::{self, Series};
//! assert_eq!(preferred::nearest(4900.0, Series::E12)?, 4700.0);
//! assert_eq!(preferred::neighbours(4900.0, Series::E24)?, (4700.0, 5100.0));
//! assert_eq!(preferred::coarsest(4990.0)?, Some(Series::E96));
//! # Ok::<(), reckohm::preferred::PreferredError>(())
//! ```

mod arrays;
mod error;
mod search;
mod series;

pub use arrays::*;
pub use error::PreferredError;
pub use series::Series;

use crate::number::RESISTANCE;

/// The values of one decade as whole numbers: 10 to 91 with two figures, 100 to 988 with three (IEC 60063, Tables 1 and 2).
///
/// ```
/// use reckohm::preferred::{Series, decade};
/// assert_eq!(decade(Series::E6), [10, 15, 22, 33, 47, 68]);
/// assert_eq!(decade(Series::E192).last(), Some(&988));
/// ```
pub const fn decade(series: Series) -> &'static [u16] {
    series.whole_numbers()
}

/// The tolerance that a series is usual with, as a fraction; `None` for E3, which has none given. E192 is also used for
/// tighter ones. (IEC 60063; the figures are those of every textbook.)
///
/// ```
/// use reckohm::preferred::{Series, tolerance};
/// assert_eq!(tolerance(Series::E24), Some(0.05));
/// assert_eq!(tolerance(Series::E3), None);
/// ```
pub const fn tolerance(series: Series) -> Option<f64> {
    match series {
        Series::E3 => None,
        Series::E6 => Some(0.2),
        Series::E12 => Some(0.1),
        Series::E24 => Some(0.05),
        Series::E48 => Some(0.02),
        Series::E96 => Some(0.01),
        Series::E192 => Some(0.005),
    }
}

/// The preferred value with the least |v − ohm|/ohm, the lower one on a tie. Values of the next decade count.
///
/// # Errors
/// [`PreferredError::Range`] for a resistance outside (0, 1e15] ohm, NaN included.
///
/// ```
/// use reckohm::preferred::{Series, nearest};
/// assert_eq!(nearest(1.1, Series::E12)?, 1.0);
/// assert_eq!(nearest(9700.0, Series::E24)?, 10_000.0);
/// # Ok::<(), reckohm::preferred::PreferredError>(())
/// ```
pub fn nearest(ohm: f64, series: Series) -> Result<f64, PreferredError> {
    Ok(search::nearest(RESISTANCE.check(ohm)?, series))
}

/// The highest preferred value that is not above this resistance: itself, if it is one.
///
/// # Errors
/// [`PreferredError::Range`] for a resistance outside (0, 1e15] ohm, NaN included.
///
/// ```
/// use reckohm::preferred::{Series, below};
/// assert_eq!(below(4900.0, Series::E12)?, 4700.0);
/// assert_eq!(below(4700.0, Series::E12)?, 4700.0);
/// # Ok::<(), reckohm::preferred::PreferredError>(())
/// ```
pub fn below(ohm: f64, series: Series) -> Result<f64, PreferredError> {
    Ok(search::below(RESISTANCE.check(ohm)?, series))
}

/// The lowest preferred value that is not below this resistance: itself, if it is one.
///
/// # Errors
/// [`PreferredError::Range`] for a resistance outside (0, 1e15] ohm, NaN included.
///
/// ```
/// use reckohm::preferred::{Series, above};
/// assert_eq!(above(4900.0, Series::E12)?, 5600.0);
/// assert_eq!(above(9.0, Series::E12)?, 10.0);
/// # Ok::<(), reckohm::preferred::PreferredError>(())
/// ```
pub fn above(ohm: f64, series: Series) -> Result<f64, PreferredError> {
    Ok(search::above(RESISTANCE.check(ohm)?, series))
}

/// The preferred values [`below`] and [`above`], which are the same if the resistance is one.
///
/// # Errors
/// [`PreferredError::Range`] for a resistance outside (0, 1e15] ohm, NaN included.
///
/// ```
/// use reckohm::preferred::{Series, neighbours};
/// assert_eq!(neighbours(0.5, Series::E6)?, (0.47, 0.68));
/// # Ok::<(), reckohm::preferred::PreferredError>(())
/// ```
pub fn neighbours(ohm: f64, series: Series) -> Result<(f64, f64), PreferredError> {
    Ok(search::neighbours(RESISTANCE.check(ohm)?, series))
}

/// Whether this resistance is a preferred value of the series in any decade.
///
/// # Errors
/// [`PreferredError::Range`] for a resistance outside (0, 1e15] ohm, NaN included.
///
/// ```
/// use reckohm::preferred::{Series, contains};
/// assert!(contains(0.0047, Series::E3)?);
/// assert!(!contains(2700.0, Series::E192)?); // E24 is not part of E192, which has 2.67 and 2.71
/// # Ok::<(), reckohm::preferred::PreferredError>(())
/// ```
pub fn contains(ohm: f64, series: Series) -> Result<bool, PreferredError> {
    Ok(search::contains(RESISTANCE.check(ohm)?, series))
}

/// The series with the fewest values that holds this resistance, if any does.
///
/// # Errors
/// [`PreferredError::Range`] for a resistance outside (0, 1e15] ohm, NaN included.
///
/// ```
/// use reckohm::preferred::{Series, coarsest};
/// assert_eq!(coarsest(180.0)?, Some(Series::E12));
/// assert_eq!(coarsest(9.19)?, None);
/// # Ok::<(), reckohm::preferred::PreferredError>(())
/// ```
pub fn coarsest(ohm: f64) -> Result<Option<Series>, PreferredError> {
    let ohm = RESISTANCE.check(ohm)?;
    Ok(Series::ALL.into_iter().find(|series| search::contains(ohm, *series)))
}

macro_rules! single_precision {
    ($($name:ident = $wide:ident -> $result:ty, $example:literal;)+) => {$(
        #[doc = concat!("As [`", stringify!($wide), "`], for `f32`: a preferred value is the `f32` nearest to its decimal.")]
        ///
        /// # Errors
        /// [`PreferredError::Range`] for a resistance outside (0, 1e15] ohm, NaN included.
        ///
        /// ```
        #[doc = concat!("use reckohm::preferred::{Series, ", stringify!($name), "};")]
        #[doc = concat!("assert_eq!(", stringify!($name), $example, ");")]
        /// # Ok::<(), reckohm::preferred::PreferredError>(())
        /// ```
        pub fn $name(ohm: f32, series: Series) -> Result<$result, PreferredError> {
            RESISTANCE.check(ohm)?;
            Ok(search::$wide(ohm, series))
        }
    )+};
}

single_precision! {
    nearest_f32 = nearest -> f32, "(1.1, Series::E12)?, 1.0";
    below_f32 = below -> f32, "(0.5, Series::E12)?, 0.47";
    above_f32 = above -> f32, "(0.5, Series::E12)?, 0.56";
    neighbours_f32 = neighbours -> (f32, f32), "(0.5, Series::E12)?, (0.47, 0.56)";
    contains_f32 = contains -> bool, "(0.47, Series::E12)?, true";
}
