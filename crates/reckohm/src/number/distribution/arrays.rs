//! The same functions for many values at once. Every element is checked before anything is written.

use super::DistributionError;
use super::formula::{NormalAbove, NormalBelow, NormalQuantile, NormalQuantileAbove};
use super::formula::{TAbove, TBelow, TQuantile, TQuantileAbove};
use crate::number::arrays::{answer_into, answer_into_valid, check};

macro_rules! array_forms {
    ($real:ident: $($one:ident, $check:ident, $into:ident, $valid:ident, $question:ident, $values:ident $([$dof:ident])?,
        $good:literal, $bad:literal;)+) => {$(
        #[doc = concat!("Whether each of many values has its [`", stringify!($one), "`](super::", stringify!($one), "), as ")]
        #[doc = concat!("[`", stringify!($into), "`] asks before it writes: for who goes through an array part by part.")]
        ///
        /// # Errors
        $(#[doc = concat!("[`DistributionError::Range`] if `", stringify!($dof), "` is not above 0;")])?
        /// [`DistributionError::Element`] with the first failing index and how many failed if the function refuses an
        /// element.
        ///
        /// ```
        #[doc = concat!("use reckohm::distribution::", stringify!($check), ";")]
        #[doc = concat!("assert!(", stringify!($check), "(&[0.25, 0.5]", $good, ").is_ok());")]
        #[doc = concat!("assert!(", stringify!($check), "(&[0.25, ", $bad, "]", $good, ").is_err());")]
        /// ```
        pub fn $check($values: &[$real]$(, $dof: $real)?) -> Result<(), DistributionError> {
            Ok(check($question$(::with($dof)?)?, $values)?)
        }

        #[doc = concat!("[`", stringify!($one), "`](super::", stringify!($one), ") of each of many values.")]
        ///
        /// # Errors
        $(#[doc = concat!("[`DistributionError::Range`] if `", stringify!($dof), "` is not above 0;")])?
        /// [`DistributionError::Lengths`] if the two slices differ in length; [`DistributionError::Element`] with the
        /// first failing index and how many failed if the function refuses an element. Then nothing is written.
        ///
        /// ```
        #[doc = concat!("use reckohm::distribution::{", stringify!($one), ", ", stringify!($into), "};")]
        /// let mut out = [7.0; 2];
        #[doc = concat!("assert!(", stringify!($into), "(&[0.25, ", $bad, "]", $good, ", &mut out).is_err());")]
        /// assert_eq!(out, [7.0; 2]);
        #[doc = concat!(stringify!($into), "(&[0.25, 0.5]", $good, ", &mut out)?;")]
        #[doc = concat!("assert_eq!(out, [", stringify!($one), "(0.25", $good, ")?, ", stringify!($one), "(0.5", $good, ")?]);")]
        /// # Ok::<(), reckohm::distribution::DistributionError>(())
        /// ```
        pub fn $into($values: &[$real], $($dof: $real,)? out: &mut [$real]) -> Result<(), DistributionError> {
            Ok(answer_into($question$(::with($dof)?)?, $values, out)?)
        }

        #[doc = concat!("[`", stringify!($one), "`](super::", stringify!($one), ") of each of many values, some of which ")]
        /// may be illegal: `valid` says which were good, the places of the others are left as they are, and the count of
        /// those others is returned.
        ///
        /// # Errors
        $(#[doc = concat!("[`DistributionError::Range`] if `", stringify!($dof), "` is not above 0;")])?
        /// [`DistributionError::Lengths`] if the slices differ in length. Then nothing is written.
        ///
        /// ```
        #[doc = concat!("use reckohm::distribution::{", stringify!($one), ", ", stringify!($valid), "};")]
        /// let (mut out, mut valid) = ([7.0; 2], [true; 2]);
        #[doc = concat!("let failed = ", stringify!($valid), "(&[0.25, ", $bad, "]", $good, ", &mut out, &mut valid)?;")]
        /// assert_eq!((failed, valid), (1, [true, false]));
        #[doc = concat!("assert_eq!(out, [", stringify!($one), "(0.25", $good, ")?, 7.0]);")]
        /// # Ok::<(), reckohm::distribution::DistributionError>(())
        /// ```
        pub fn $valid(
            $values: &[$real],
            $($dof: $real,)?
            out: &mut [$real],
            valid: &mut [bool],
        ) -> Result<usize, DistributionError> {
            Ok(answer_into_valid($question$(::with($dof)?)?, $values, out, valid)?)
        }
    )+};
}

array_forms! { f64:
    normal_below, normal_below_check, normal_below_into, normal_below_into_valid, NormalBelow, z, "", "f64::NAN";
    normal_above, normal_above_check, normal_above_into, normal_above_into_valid, NormalAbove, z, "", "f64::NAN";
    normal_quantile, normal_quantile_check, normal_quantile_into, normal_quantile_into_valid,
        NormalQuantile, p, "", "1.5";
    normal_quantile_above, normal_quantile_above_check, normal_quantile_above_into, normal_quantile_above_into_valid,
        NormalQuantileAbove, p, "", "1.5";
    t_below, t_below_check, t_below_into, t_below_into_valid, TBelow, t [dof], ", 4.0", "f64::NAN";
    t_above, t_above_check, t_above_into, t_above_into_valid, TAbove, t [dof], ", 4.0", "f64::NAN";
    t_quantile, t_quantile_check, t_quantile_into, t_quantile_into_valid, TQuantile, p [dof], ", 0.1", "1e-300";
    t_quantile_above, t_quantile_above_check, t_quantile_above_into, t_quantile_above_into_valid,
        TQuantileAbove, p [dof], ", 0.1", "1e-300";
}

array_forms! { f32:
    normal_below_f32, normal_below_f32_check, normal_below_f32_into, normal_below_f32_into_valid,
        NormalBelow, z, "", "f32::NAN";
    normal_above_f32, normal_above_f32_check, normal_above_f32_into, normal_above_f32_into_valid,
        NormalAbove, z, "", "f32::NAN";
    normal_quantile_f32, normal_quantile_f32_check, normal_quantile_f32_into, normal_quantile_f32_into_valid,
        NormalQuantile, p, "", "1.5";
    normal_quantile_above_f32, normal_quantile_above_f32_check, normal_quantile_above_f32_into,
        normal_quantile_above_f32_into_valid,
        NormalQuantileAbove, p, "", "1.5";
    t_below_f32, t_below_f32_check, t_below_f32_into, t_below_f32_into_valid, TBelow, t [dof], ", 4.0", "f32::NAN";
    t_above_f32, t_above_f32_check, t_above_f32_into, t_above_f32_into_valid, TAbove, t [dof], ", 4.0", "f32::NAN";
    t_quantile_f32, t_quantile_f32_check, t_quantile_f32_into, t_quantile_f32_into_valid,
        TQuantile, p [dof], ", 0.1", "1e-30";
    t_quantile_above_f32, t_quantile_above_f32_check, t_quantile_above_f32_into, t_quantile_above_f32_into_valid,
        TQuantileAbove, p [dof], ", 0.1",
        "1e-30";
}
