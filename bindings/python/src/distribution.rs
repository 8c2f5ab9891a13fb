//! `reckohm.distribution`.

use pyo3::prelude::*;
use reckohm::distribution as core;
use reckohm::verdict::Column;

use crate::formula::{Kernel, Refusal};
use crate::vector::vector_functions;

macro_rules! kernels {
    ($($kernel:ident($count:literal: $x:ident $(, $dof:ident)?), $least:expr, $double:path | $single:path,
        $check:path | $check_single:path, $into:path | $into_single:path;)+) => {$(
        struct $kernel;
        kernels!($kernel, f64, $count, [$x $(, $dof)?], $least, $double, $check, $into);
        kernels!($kernel, f32, $count, [$x $(, $dof)?], $least, $single, $check_single, $into_single);
    )+};
    ($kernel:ident, $real:ident, $count:literal, [$x:ident $(, $dof:ident)?], $least:expr, $function:path, $check:path,
        $into:path) => {
        impl Kernel<$count, $real> for $kernel {
            const LEAST_A_THREAD: usize = $least;

            fn evaluate([$x $(, $dof)?]: [$real; $count]) -> Result<$real, Refusal> {
                Ok($function($x $(, $dof)?)?)
            }

            fn fill(inputs: [Column<'_, $real>; $count], out: &mut [$real], valid: &mut [bool]) -> Option<usize> {
                let [Column::Each($x) $(, Column::One($dof))?] = inputs else { return None };
                $into($x $(, $dof)?, out, valid).ok()
            }

            fn takes(inputs: [Column<'_, $real>; $count], _: usize) -> Option<bool> {
                let [Column::Each($x) $(, Column::One($dof))?] = inputs else { return None };
                Some($check($x $(, $dof)?).is_ok())
            }
        }
    };
}

/// From so many elements on a second thread is worth it: a few nanoseconds an element, some ten, some hundred, thousands.
const CHEAP: usize = 1 << 17;
const MIDDLING: usize = 1 << 16;
const DEAR: usize = 1 << 11;
const DEAREST: usize = 1 << 7;

kernels! {
    NormalBelow(1: z), CHEAP, core::normal_below | core::normal_below_f32,
        core::normal_below_check | core::normal_below_f32_check,
        core::normal_below_into_valid | core::normal_below_f32_into_valid;
    NormalAbove(1: z), CHEAP, core::normal_above | core::normal_above_f32,
        core::normal_above_check | core::normal_above_f32_check,
        core::normal_above_into_valid | core::normal_above_f32_into_valid;
    NormalQuantile(1: p), MIDDLING, core::normal_quantile | core::normal_quantile_f32,
        core::normal_quantile_check | core::normal_quantile_f32_check,
        core::normal_quantile_into_valid | core::normal_quantile_f32_into_valid;
    NormalQuantileAbove(1: p), MIDDLING, core::normal_quantile_above | core::normal_quantile_above_f32,
        core::normal_quantile_above_check | core::normal_quantile_above_f32_check,
        core::normal_quantile_above_into_valid | core::normal_quantile_above_f32_into_valid;
    TBelow(2: t, dof), DEAR, core::t_below | core::t_below_f32,
        core::t_below_check | core::t_below_f32_check,
        core::t_below_into_valid | core::t_below_f32_into_valid;
    TAbove(2: t, dof), DEAR, core::t_above | core::t_above_f32,
        core::t_above_check | core::t_above_f32_check,
        core::t_above_into_valid | core::t_above_f32_into_valid;
    TQuantile(2: p, dof), DEAREST, core::t_quantile | core::t_quantile_f32,
        core::t_quantile_check | core::t_quantile_f32_check,
        core::t_quantile_into_valid | core::t_quantile_f32_into_valid;
    TQuantileAbove(2: p, dof), DEAREST, core::t_quantile_above | core::t_quantile_above_f32,
        core::t_quantile_above_check | core::t_quantile_above_f32_check,
        core::t_quantile_above_into_valid | core::t_quantile_above_f32_into_valid;
}

vector_functions! {
    /// Probability that a standard normal value is below ``z``.
    ///
    /// Parameters
    /// ----------
    /// z : float or array-like
    ///     Any finite number.
    /// out : numpy.ndarray, optional
    ///     Where the results go; untouched on an error.
    /// where : array-like of bool, optional
    ///     Which elements are computed; needs ``out``.
    /// on_invalid : {"raise", "nan", "mask"}
    ///     What happens if elements are refused: an error that names the first one, NaN in their place, or a pair of the
    ///     values and a mask of the good ones.
    ///
    /// Returns
    /// -------
    /// float or array
    ///     Of the shape of ``z``. 0 where the tail is below the smallest double.
    ///
    /// Raises
    /// ------
    /// RangeError
    ///     A value that is infinite or NaN.
    ///
    /// Examples
    /// --------
    /// >>> from reckohm.distribution import normal_below
    /// >>> normal_below(1.0)
    /// 0.841344746068543
    fn normal_below(z) = NormalBelow -> Number, "distribution_normal_below";

    /// Probability that a standard normal value is above ``z``, to full relative accuracy in its tail.
    ///
    /// Parameters
    /// ----------
    /// z : float or array-like
    ///     Any finite number.
    /// out : numpy.ndarray, optional
    ///     Where the results go; untouched on an error.
    /// where : array-like of bool, optional
    ///     Which elements are computed; needs ``out``.
    /// on_invalid : {"raise", "nan", "mask"}
    ///     What happens if elements are refused: an error that names the first one, NaN in their place, or a pair of the
    ///     values and a mask of the good ones.
    ///
    /// Returns
    /// -------
    /// float or array
    ///     Of the shape of ``z``. 0 where the tail is below the smallest double.
    ///
    /// Raises
    /// ------
    /// RangeError
    ///     A value that is infinite or NaN.
    ///
    /// Examples
    /// --------
    /// >>> from reckohm.distribution import normal_above
    /// >>> normal_above(9.0)
    /// 1.1285884059538408e-19
    fn normal_above(z) = NormalAbove -> Number, "distribution_normal_above";

    /// The value that a standard normal value is below with probability ``p``.
    ///
    /// Parameters
    /// ----------
    /// p : float or array-like
    ///     Probability, more than 0 and less than 1.
    /// out : numpy.ndarray, optional
    ///     Where the results go; untouched on an error.
    /// where : array-like of bool, optional
    ///     Which elements are computed; needs ``out``.
    /// on_invalid : {"raise", "nan", "mask"}
    ///     What happens if elements are refused: an error that names the first one, NaN in their place, or a pair of the
    ///     values and a mask of the good ones.
    ///
    /// Returns
    /// -------
    /// float or array
    ///     Of the shape of ``p``.
    ///
    /// Raises
    /// ------
    /// RangeError
    ///     A probability that is not between 0 and 1.
    ///
    /// Examples
    /// --------
    /// >>> from reckohm.distribution import normal_quantile
    /// >>> normal_quantile(0.5)
    /// 0.0
    fn normal_quantile(p) = NormalQuantile -> Number, "distribution_normal_quantile";

    /// The value that a standard normal value is above with probability ``p``: take it for a small risk, rather than the
    /// quantile of one less the risk.
    ///
    /// Parameters
    /// ----------
    /// p : float or array-like
    ///     Probability, more than 0 and less than 1.
    /// out : numpy.ndarray, optional
    ///     Where the results go; untouched on an error.
    /// where : array-like of bool, optional
    ///     Which elements are computed; needs ``out``.
    /// on_invalid : {"raise", "nan", "mask"}
    ///     What happens if elements are refused: an error that names the first one, NaN in their place, or a pair of the
    ///     values and a mask of the good ones.
    ///
    /// Returns
    /// -------
    /// float or array
    ///     Of the shape of ``p``.
    ///
    /// Raises
    /// ------
    /// RangeError
    ///     A probability that is not between 0 and 1.
    ///
    /// Examples
    /// --------
    /// >>> from reckohm.distribution import normal_quantile_above
    /// >>> round(normal_quantile_above(0.05), 12)
    /// 1.644853626951
    fn normal_quantile_above(p) = NormalQuantileAbove -> Number, "distribution_normal_quantile_above";

    /// Probability that a value of Student's t is below ``t``.
    ///
    /// Parameters
    /// ----------
    /// t : float or array-like
    ///     Any finite number.
    /// dof : float or array-like
    ///     Degrees of freedom, more than 0; fractions and infinity are allowed.
    /// out : numpy.ndarray, optional
    ///     Where the results go; untouched on an error.
    /// where : array-like of bool, optional
    ///     Which elements are computed; needs ``out``.
    /// on_invalid : {"raise", "nan", "mask"}
    ///     What happens if elements are refused: an error that names the first one, NaN in their place, or a pair of the
    ///     values and a mask of the good ones.
    ///
    /// Returns
    /// -------
    /// float or array
    ///     Of the shape of the arguments, broadcast together. 0 where the tail is below the smallest double.
    ///
    /// Raises
    /// ------
    /// RangeError
    ///     A value that is infinite or NaN, or degrees of freedom that are not above 0.
    ///
    /// Examples
    /// --------
    /// >>> from reckohm.distribution import t_below
    /// >>> t_below(1.0, 1)
    /// 0.75
    fn t_below(t, dof) = TBelow -> Number, "distribution_t_below";

    /// Probability that a value of Student's t is above ``t``, to full relative accuracy in its tail.
    ///
    /// Parameters
    /// ----------
    /// t : float or array-like
    ///     Any finite number.
    /// dof : float or array-like
    ///     Degrees of freedom, more than 0; fractions and infinity are allowed.
    /// out : numpy.ndarray, optional
    ///     Where the results go; untouched on an error.
    /// where : array-like of bool, optional
    ///     Which elements are computed; needs ``out``.
    /// on_invalid : {"raise", "nan", "mask"}
    ///     What happens if elements are refused: an error that names the first one, NaN in their place, or a pair of the
    ///     values and a mask of the good ones.
    ///
    /// Returns
    /// -------
    /// float or array
    ///     Of the shape of the arguments, broadcast together. 0 where the tail is below the smallest double.
    ///
    /// Raises
    /// ------
    /// RangeError
    ///     A value that is infinite or NaN, or degrees of freedom that are not above 0.
    ///
    /// Examples
    /// --------
    /// >>> from reckohm.distribution import t_above
    /// >>> round(t_above(2.776, 4), 6)
    /// 0.025011
    fn t_above(t, dof) = TAbove -> Number, "distribution_t_above";

    /// The value that Student's t is below with probability ``p``.
    ///
    /// Parameters
    /// ----------
    /// p : float or array-like
    ///     Probability, more than 0 and less than 1.
    /// dof : float or array-like
    ///     Degrees of freedom, more than 0; fractions and infinity are allowed.
    /// out : numpy.ndarray, optional
    ///     Where the results go; untouched on an error.
    /// where : array-like of bool, optional
    ///     Which elements are computed; needs ``out``.
    /// on_invalid : {"raise", "nan", "mask"}
    ///     What happens if elements are refused: an error that names the first one, NaN in their place, or a pair of the
    ///     values and a mask of the good ones.
    ///
    /// Returns
    /// -------
    /// float or array
    ///     Of the shape of the arguments, broadcast together.
    ///
    /// Raises
    /// ------
    /// RangeError
    ///     A probability that is not between 0 and 1, degrees of freedom that are not above 0, or a quantile beyond the
    ///     largest double, as a fraction of a degree of freedom can have.
    ///
    /// Examples
    /// --------
    /// >>> from reckohm.distribution import t_quantile
    /// >>> round(t_quantile(0.975, 9), 12)
    /// 2.262157162798
    fn t_quantile(p, dof) = TQuantile -> Number, "distribution_t_quantile";

    /// The value that Student's t is above with probability ``p``: take it for a small risk, rather than the quantile of one
    /// less the risk.
    ///
    /// Parameters
    /// ----------
    /// p : float or array-like
    ///     Probability, more than 0 and less than 1.
    /// dof : float or array-like
    ///     Degrees of freedom, more than 0; fractions and infinity are allowed.
    /// out : numpy.ndarray, optional
    ///     Where the results go; untouched on an error.
    /// where : array-like of bool, optional
    ///     Which elements are computed; needs ``out``.
    /// on_invalid : {"raise", "nan", "mask"}
    ///     What happens if elements are refused: an error that names the first one, NaN in their place, or a pair of the
    ///     values and a mask of the good ones.
    ///
    /// Returns
    /// -------
    /// float or array
    ///     Of the shape of the arguments, broadcast together.
    ///
    /// Raises
    /// ------
    /// RangeError
    ///     A probability that is not between 0 and 1, degrees of freedom that are not above 0, or a quantile beyond the
    ///     largest double, as a fraction of a degree of freedom can have.
    ///
    /// Examples
    /// --------
    /// >>> from reckohm.distribution import t_quantile_above
    /// >>> round(t_quantile_above(0.025, 4), 12)
    /// 2.776445105198
    fn t_quantile_above(p, dof) = TQuantileAbove -> Number, "distribution_t_quantile_above";
}

pub fn fill(compiled: &Bound<'_, PyModule>, module: &Bound<'_, PyModule>) -> PyResult<()> {
    add_functions(compiled, module)
}
