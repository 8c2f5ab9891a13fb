//! The same functions for many values at once. Every element is checked before anything is written.

use super::{DistributionError, ElementFault, positive_zero, quantile_fault};
use crate::number::{DEGREES_OF_FREEDOM, DEVIATE, PROBABILITY, normal, student_t};

/// Writes `answer` of each value, after all of them have been checked.
fn into(
    values: &[f64],
    out: &mut [f64],
    check: impl Fn(f64) -> Result<(), ElementFault>,
    answer: impl Fn(f64) -> f64,
) -> Result<(), DistributionError> {
    lengths(values.len(), out.len())?;
    let mut first = None;
    let mut failed = 0_u64;
    for (index, x) in values.iter().enumerate() {
        if let Err(fault) = check(*x) {
            first = first.or(Some((fault, index as u64)));
            failed = failed.wrapping_add(1);
        }
    }
    if let Some((fault, index)) = first {
        return Err(DistributionError::Element { fault, index, failed });
    }
    for (x, place) in values.iter().zip(out) {
        *place = answer(*x);
    }
    Ok(())
}

/// Writes `answer` of each legal value, says which those were, and counts the others.
fn into_valid(
    values: &[f64],
    out: &mut [f64],
    valid: &mut [bool],
    check: impl Fn(f64) -> Result<(), ElementFault>,
    answer: impl Fn(f64) -> f64,
) -> Result<usize, DistributionError> {
    lengths(values.len(), out.len())?;
    lengths(values.len(), valid.len())?;
    let mut failed = 0_usize;
    for ((x, place), valid) in values.iter().zip(out).zip(valid) {
        *valid = check(*x).is_ok();
        if *valid {
            *place = answer(*x);
        } else {
            failed = failed.wrapping_add(1);
        }
    }
    Ok(failed)
}

fn lengths(needed: usize, room: usize) -> Result<(), DistributionError> {
    if needed == room {
        return Ok(());
    }
    Err(DistributionError::Lengths { needed: needed as u64, room: room as u64 })
}

fn deviate(x: f64) -> Result<(), ElementFault> {
    DEVIATE.check(x)?;
    Ok(())
}

fn probability(p: f64) -> Result<(), ElementFault> {
    PROBABILITY.check(p)?;
    Ok(())
}

macro_rules! array_forms {
    ($($one:ident, $into:ident, $valid:ident, $values:ident $([$dof:ident])?, $check:expr, $answer:expr,
        $good:literal, $bad:literal;)+) => {$(
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
        pub fn $into($values: &[f64], $($dof: f64,)? out: &mut [f64]) -> Result<(), DistributionError> {
            $(let $dof = DEGREES_OF_FREEDOM.check($dof)?;)?
            into($values, out, $check, $answer)
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
            $values: &[f64],
            $($dof: f64,)?
            out: &mut [f64],
            valid: &mut [bool],
        ) -> Result<usize, DistributionError> {
            $(let $dof = DEGREES_OF_FREEDOM.check($dof)?;)?
            into_valid($values, out, valid, $check, $answer)
        }
    )+};
}

array_forms! {
    normal_below, normal_below_into, normal_below_into_valid, z, deviate, normal::below, "", "f64::NAN";
    normal_above, normal_above_into, normal_above_into_valid, z, deviate, normal::above, "", "f64::NAN";
    normal_quantile, normal_quantile_into, normal_quantile_into_valid, p, probability,
        |p| positive_zero(-normal::quantile_above(p)), "", "1.5";
    normal_quantile_above, normal_quantile_above_into, normal_quantile_above_into_valid, p, probability,
        |p| positive_zero(normal::quantile_above(p)), "", "1.5";
    t_below, t_below_into, t_below_into_valid, t [dof], deviate, |t| student_t::above(-t, dof), ", 4.0", "f64::NAN";
    t_above, t_above_into, t_above_into_valid, t [dof], deviate, |t| student_t::above(t, dof), ", 4.0", "f64::NAN";
    t_quantile, t_quantile_into, t_quantile_into_valid, p [dof], |p| quantile_fault(p, dof),
        |p| positive_zero(-student_t::quantile_above(p, dof)), ", 0.1", "1e-300";
    t_quantile_above, t_quantile_above_into, t_quantile_above_into_valid, p [dof], |p| quantile_fault(p, dof),
        |p| positive_zero(student_t::quantile_above(p, dof)), ", 0.1", "1e-300";
}
