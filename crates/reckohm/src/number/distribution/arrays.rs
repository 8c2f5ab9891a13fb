//! The same functions for many values at once. Every element is checked before anything is written.

use super::formula::{NormalAbove, NormalBelow, NormalQuantile, NormalQuantileAbove, Question};
use super::formula::{TAbove, TBelow, TQuantile, TQuantileAbove};
use super::{DistributionError, ElementFault};
use crate::number::Real;
use crate::number::batch::{self, PerElement};

/// Writes the answer for each value, after all of them have been checked.
fn into<R: Real>(question: impl Question<R>, values: &[R], out: &mut [R]) -> Result<(), DistributionError> {
    lengths(values.len(), out.len())?;
    check(question, values)?;
    batch::map(question, [values], out);
    Ok(())
}

/// Writes the answer for each legal value, says which those were, and counts the others.
fn into_valid<R: Real>(
    question: impl Question<R>,
    values: &[R],
    out: &mut [R],
    valid: &mut [bool],
) -> Result<usize, DistributionError> {
    /// So many elements at a time: one bad element keeps no more than these from the fast loop.
    const STRETCH: usize = 512;
    lengths(values.len(), out.len())?;
    lengths(values.len(), valid.len())?;
    let mut failed = 0_usize;
    for ((values, out), valid) in values.chunks(STRETCH).zip(out.chunks_mut(STRETCH)).zip(valid.chunks_mut(STRETCH)) {
        if batch::takes_all(Taken(question), [values]) {
            valid.fill(true);
            batch::map(question, [values], out);
            continue;
        }
        for ((x, place), valid) in values.iter().zip(out).zip(valid) {
            *valid = question.fault(*x).is_ok();
            if *valid {
                *place = question.of([*x]);
            } else {
                failed = failed.wrapping_add(1);
            }
        }
    }
    Ok(failed)
}

/// The first value that is refused, and how many are.
fn check<R: Real>(question: impl Question<R>, values: &[R]) -> Result<(), DistributionError> {
    if batch::takes_all(Taken(question), [values]) {
        return Ok(());
    }
    let mut first = None;
    let mut failed = 0_u64;
    for (index, x) in values.iter().enumerate() {
        if let Err(fault) = question.fault(*x) {
            first = first.or(Some((fault, index as u64)));
            failed = failed.wrapping_add(1);
        }
    }
    first.map_or(Ok(()), |(fault, index)| Err(DistributionError::Element { fault, index, failed }))
}

/// Whether a question has an answer: 1, or 0.
#[derive(Clone, Copy)]
struct Taken<Q>(Q);

impl<R: Real, Q: Question<R>> PerElement<R, 1> for Taken<Q> {
    #[inline(always)]
    fn of(self, [x]: [R; 1]) -> R {
        let fault: Result<(), ElementFault> = self.0.fault(x);
        R::select(fault.is_ok(), R::ONE, R::ZERO)
    }
}

fn lengths(needed: usize, room: usize) -> Result<(), DistributionError> {
    if needed == room {
        return Ok(());
    }
    Err(DistributionError::Lengths { needed: needed as u64, room: room as u64 })
}

macro_rules! array_forms {
    ($real:ident: $($one:ident, $into:ident, $valid:ident, $question:ident, $values:ident $([$dof:ident])?,
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
        pub fn $into($values: &[$real], $($dof: $real,)? out: &mut [$real]) -> Result<(), DistributionError> {
            into($question$(::with($dof)?)?, $values, out)
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
            into_valid($question$(::with($dof)?)?, $values, out, valid)
        }
    )+};
}

array_forms! { f64:
    normal_below, normal_below_into, normal_below_into_valid, NormalBelow, z, "", "f64::NAN";
    normal_above, normal_above_into, normal_above_into_valid, NormalAbove, z, "", "f64::NAN";
    normal_quantile, normal_quantile_into, normal_quantile_into_valid, NormalQuantile, p, "", "1.5";
    normal_quantile_above, normal_quantile_above_into, normal_quantile_above_into_valid, NormalQuantileAbove, p, "", "1.5";
    t_below, t_below_into, t_below_into_valid, TBelow, t [dof], ", 4.0", "f64::NAN";
    t_above, t_above_into, t_above_into_valid, TAbove, t [dof], ", 4.0", "f64::NAN";
    t_quantile, t_quantile_into, t_quantile_into_valid, TQuantile, p [dof], ", 0.1", "1e-300";
    t_quantile_above, t_quantile_above_into, t_quantile_above_into_valid, TQuantileAbove, p [dof], ", 0.1", "1e-300";
}

array_forms! { f32:
    normal_below_f32, normal_below_f32_into, normal_below_f32_into_valid, NormalBelow, z, "", "f32::NAN";
    normal_above_f32, normal_above_f32_into, normal_above_f32_into_valid, NormalAbove, z, "", "f32::NAN";
    normal_quantile_f32, normal_quantile_f32_into, normal_quantile_f32_into_valid, NormalQuantile, p, "", "1.5";
    normal_quantile_above_f32, normal_quantile_above_f32_into, normal_quantile_above_f32_into_valid,
        NormalQuantileAbove, p, "", "1.5";
    t_below_f32, t_below_f32_into, t_below_f32_into_valid, TBelow, t [dof], ", 4.0", "f32::NAN";
    t_above_f32, t_above_f32_into, t_above_f32_into_valid, TAbove, t [dof], ", 4.0", "f32::NAN";
    t_quantile_f32, t_quantile_f32_into, t_quantile_f32_into_valid, TQuantile, p [dof], ", 0.1", "1e-30";
    t_quantile_above_f32, t_quantile_above_f32_into, t_quantile_above_f32_into_valid, TQuantileAbove, p [dof], ", 0.1",
        "1e-30";
}
