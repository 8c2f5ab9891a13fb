//! `reckohm.distribution`.

use pyo3::prelude::*;
use reckohm::distribution::{self as core, DistributionError};

use crate::ufunc::Kernel;
use crate::vector::vector_functions;

macro_rules! kernels {
    ($($kernel:ident($count:literal: $($given:ident),+) = $function:path;)+) => {$(
        struct $kernel;

        impl Kernel<$count> for $kernel {
            type Error = DistributionError;

            fn evaluate([$($given),+]: [f64; $count]) -> Result<f64, DistributionError> {
                $function($($given),+)
            }
        }
    )+};
}

kernels! {
    NormalBelow(1: z) = core::normal_below;
    NormalAbove(1: z) = core::normal_above;
    NormalQuantile(1: p) = core::normal_quantile;
    NormalQuantileAbove(1: p) = core::normal_quantile_above;
    TBelow(2: t, dof) = core::t_below;
    TAbove(2: t, dof) = core::t_above;
    TQuantile(2: p, dof) = core::t_quantile;
    TQuantileAbove(2: p, dof) = core::t_quantile_above;
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
    fn normal_below(z) = NormalBelow -> Number, "distribution_normal_below", add;

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
    fn normal_above(z) = NormalAbove -> Number, "distribution_normal_above", add;

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
    fn normal_quantile(p) = NormalQuantile -> Number, "distribution_normal_quantile", add;

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
    fn normal_quantile_above(p) = NormalQuantileAbove -> Number, "distribution_normal_quantile_above", add;

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
    fn t_below(t, dof) = TBelow -> Number, "distribution_t_below", add;

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
    fn t_above(t, dof) = TAbove -> Number, "distribution_t_above", add;

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
    fn t_quantile(p, dof) = TQuantile -> Number, "distribution_t_quantile", add;

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
    fn t_quantile_above(p, dof) = TQuantileAbove -> Number, "distribution_t_quantile_above", add;
}

pub fn fill(compiled: &Bound<'_, PyModule>, module: &Bound<'_, PyModule>) -> PyResult<()> {
    add_functions(compiled, module)
}
