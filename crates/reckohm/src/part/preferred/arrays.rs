//! The same questions for many resistances at once. Every element is checked before anything is written.

use super::search;
use super::{PreferredError, Series};
use crate::number::RESISTANCE;
use crate::number::arrays::{all_good, same_length};

/// Writes `answer` of each resistance, after all of them have been checked.
fn into<X: search::Float, T>(ohm: &[X], out: &mut [T], answer: impl Fn(X) -> T) -> Result<(), PreferredError> {
    same_length(ohm.len(), out.len())?;
    all_good(ohm, |x| RESISTANCE.check(x).map(|_| ()))?;
    for (x, place) in ohm.iter().zip(out) {
        *place = answer(*x);
    }
    Ok(())
}

/// Writes `answer` of each legal resistance, says which those were, and counts the others.
fn into_valid<X: search::Float, T>(
    ohm: &[X],
    out: &mut [T],
    valid: &mut [bool],
    answer: impl Fn(X) -> T,
) -> Result<usize, PreferredError> {
    same_length(ohm.len(), out.len())?;
    same_length(ohm.len(), valid.len())?;
    let mut failed = 0_usize;
    for ((x, place), valid) in ohm.iter().zip(out).zip(valid) {
        *valid = RESISTANCE.check(*x).is_ok();
        if *valid {
            *place = answer(*x);
        } else {
            failed = failed.wrapping_add(1);
        }
    }
    Ok(failed)
}

/// Whether each of many resistances in ohm is within its range, as the functions that write results ask first: for who goes
/// through an array part by part.
///
/// # Errors
/// [`PreferredError::Element`] with the first failing index and how many failed if a resistance is outside (0, 1e15] ohm.
///
/// ```
/// use reckohm::preferred::check;
/// assert!(check(&[0.47, 500.0]).is_ok() && check(&[0.47, -1.0]).is_err());
/// ```
pub fn check(ohm: &[f64]) -> Result<(), PreferredError> {
    Ok(all_good(ohm, |x| RESISTANCE.check(x).map(|_| ()))?)
}

/// As [`check`], for `f32`.
///
/// # Errors
/// As for [`check`].
///
/// ```
/// use reckohm::preferred::check_f32;
/// assert!(check_f32(&[0.47, 500.0]).is_ok() && check_f32(&[0.47, -1.0]).is_err());
/// ```
pub fn check_f32(ohm: &[f32]) -> Result<(), PreferredError> {
    Ok(all_good(ohm, |x| RESISTANCE.check(x).map(|_| ()))?)
}

macro_rules! array_forms {
    ($($one:ident, $into:ident, $valid:ident, $x:ty => $result:ty, $same:ident, $empty:literal, $example:literal;)+) => {$(
        #[doc = concat!("[`", stringify!($same), "`](super::", stringify!($same), ") for each of many resistances in ohm.")]
        ///
        /// # Errors
        /// [`PreferredError::Lengths`] if the two slices differ in length; [`PreferredError::Element`] with the first
        /// failing index and how many failed if a resistance is outside (0, 1e15] ohm; then nothing is written.
        ///
        /// ```
        #[doc = concat!("use reckohm::preferred::{Series, ", stringify!($into), "};")]
        #[doc = concat!("let mut out = [", $empty, "; 2];")]
        #[doc = concat!(stringify!($into), "(&[0.47, 500.0], Series::E12, &mut out)?;")]
        #[doc = concat!("assert_eq!(out, ", $example, ");")]
        #[doc = concat!("assert!(", stringify!($into), "(&[0.47, -1.0], Series::E12, &mut out).is_err());")]
        /// # Ok::<(), reckohm::preferred::PreferredError>(())
        /// ```
        pub fn $into(ohm: &[$x], series: Series, out: &mut [$result]) -> Result<(), PreferredError> {
            into(ohm, out, |x| search::$one(x, series))
        }

        #[doc = concat!("[`", stringify!($same), "`](super::", stringify!($same), ") for each of many resistances in ohm, ")]
        /// some of which may be illegal: `valid` says which were good, the places of the others are left as they are, and
        /// the count of those others is returned.
        ///
        /// # Errors
        /// [`PreferredError::Lengths`] if the slices differ in length; then nothing is written.
        ///
        /// ```
        #[doc = concat!("use reckohm::preferred::{Series, ", stringify!($valid), "};")]
        #[doc = concat!("let (mut out, mut valid) = ([", $empty, "; 3], [true; 3]);")]
        #[doc = concat!("let failed = ", stringify!($valid), "(&[0.47, 500.0, -1.0], Series::E12, &mut out, &mut valid)?;")]
        /// assert_eq!((failed, valid), (1, [true, true, false]));
        #[doc = concat!("assert_eq!(out[..2], ", $example, ");")]
        /// # Ok::<(), reckohm::preferred::PreferredError>(())
        /// ```
        pub fn $valid(
            ohm: &[$x],
            series: Series,
            out: &mut [$result],
            valid: &mut [bool],
        ) -> Result<usize, PreferredError> {
            into_valid(ohm, out, valid, |x| search::$one(x, series))
        }
    )+};
}

array_forms! {
    nearest, nearest_into, nearest_into_valid, f64 => f64, nearest, "0.0", "[0.47, 470.0]";
    below, below_into, below_into_valid, f64 => f64, below, "0.0", "[0.47, 470.0]";
    above, above_into, above_into_valid, f64 => f64, above, "0.0", "[0.47, 560.0]";
    contains, contains_into, contains_into_valid, f64 => bool, contains, "false", "[true, false]";
    nearest, nearest_f32_into, nearest_f32_into_valid, f32 => f32, nearest_f32, "0.0", "[0.47, 470.0]";
    below, below_f32_into, below_f32_into_valid, f32 => f32, below_f32, "0.0", "[0.47, 470.0]";
    above, above_f32_into, above_f32_into_valid, f32 => f32, above_f32, "0.0", "[0.47, 560.0]";
    contains, contains_f32_into, contains_f32_into_valid, f32 => bool, contains_f32, "false", "[true, false]";
}

/// [`neighbours`](super::neighbours) of each of many resistances in ohm: the values at or below into one slice, those at or
/// above into the other.
///
/// # Errors
/// [`PreferredError::Lengths`] if the slices differ in length; [`PreferredError::Element`] with the first failing index
/// and how many failed if a resistance is outside (0, 1e15] ohm; then nothing is written.
///
/// ```
/// use reckohm::preferred::{Series, neighbours_into};
/// let (mut lower, mut upper) = ([0.0; 2], [0.0; 2]);
/// neighbours_into(&[4900.0, 0.5], Series::E12, &mut lower, &mut upper)?;
/// assert_eq!((lower, upper), ([4700.0, 0.47], [5600.0, 0.56]));
/// # Ok::<(), reckohm::preferred::PreferredError>(())
/// ```
pub fn neighbours_into(
    ohm: &[f64],
    series: Series,
    lower: &mut [f64],
    upper: &mut [f64],
) -> Result<(), PreferredError> {
    same_length(ohm.len(), upper.len())?;
    below_into(ohm, series, lower)?;
    above_into(ohm, series, upper)
}

/// [`coarsest`](super::coarsest) of each of many resistances in ohm.
///
/// # Errors
/// As for [`nearest_into`].
///
/// ```
/// use reckohm::preferred::{Series, coarsest_into};
/// let mut series = [None; 3];
/// coarsest_into(&[4700.0, 5100.0, 9.19], &mut series)?;
/// assert_eq!(series, [Some(Series::E3), Some(Series::E24), None]);
/// # Ok::<(), reckohm::preferred::PreferredError>(())
/// ```
pub fn coarsest_into(ohm: &[f64], out: &mut [Option<Series>]) -> Result<(), PreferredError> {
    into(ohm, out, |x| Series::ALL.into_iter().find(|series| search::contains(x, *series)))
}

/// The values of one decade in [1, 10), in ascending order, each the float nearest to its decimal.
///
/// # Errors
/// [`PreferredError::Lengths`] unless there is room for exactly [`Series::count`] values.
///
/// ```
/// use reckohm::preferred::{Series, decade_into};
/// let mut values = [0.0; 6];
/// decade_into(Series::E6, &mut values)?;
/// assert_eq!(values, [1.0, 1.5, 2.2, 3.3, 4.7, 6.8]);
/// # Ok::<(), reckohm::preferred::PreferredError>(())
/// ```
pub fn decade_into(series: Series, out: &mut [f64]) -> Result<(), PreferredError> {
    let values = series.whole_numbers();
    same_length(values.len(), out.len())?;
    let scale = if series.figures() == 2 { 10.0 } else { 100.0 };
    for (value, place) in values.iter().zip(out) {
        // A whole number by 10 or 100: one correctly rounded division, so the float nearest to the decimal.
        *place = f64::from(*value) / scale;
    }
    Ok(())
}
