//! The normal and Student t distributions.

use crate::answer::one;
use crate::array::Results;
use crate::detail::rko_detail;
use crate::parts::{Asked, in_parts};
use crate::pointer::{element, items};
use crate::twins::twins;

/// From so many elements on a thread is worth it: a few nanoseconds an element, some ten, some hundred, thousands.
const CHEAP: usize = 1 << 17;
const MIDDLING: usize = 1 << 16;
const DEAR: usize = 1 << 11;
const DEAREST: usize = 1 << 7;

twins! {
    /// The probability that a standard normal value is below `z`; 0 where it is below the smallest number of its type.
    ///
    /// Given: `z`, any finite number.
    /// Written: `probability`.
    /// Statuses: `RKO_NOT_FINITE`, `RKO_NULL_POINTER`.
    /// Source: Abramowitz and Stegun 26.2.
    fn rko_normal_below = rko_normal_below_f32(z: f64, probability: *mut f64, detail: *mut rko_detail)
    asking distribution: normal_below = normal_below_f32
    {
        one(probability, 2, detail, || Ok(asked::normal_below(z)?))
    }

    /// `rko_normal_below` for each of `count` values.
    fn rko_normal_below_n = rko_normal_below_n_f32(
        z: *const f64,
        count: usize,
        probability: *mut f64,
        valid: *mut u8,
        detail: *mut rko_detail,
    )
    asking distribution: normal_below_check = normal_below_f32_check, normal_below_into = normal_below_f32_into,
        normal_below_into_valid = normal_below_f32_into_valid, normal_below = normal_below_f32
    {
        in_parts(
            Results { count, output: probability, position: 3, valid, detail },
            CHEAP,
            || items(z, count, 1),
            Asked {
                check: |z| Ok(asked::normal_below_check(z)?),
                whole: |z, output: &mut [_]| Ok(asked::normal_below_into(z, output)?),
                masked: |z, output: &mut [_], valid: &mut [bool]| Ok(asked::normal_below_into_valid(z, output, valid)?),
                one: |z, index| Ok(asked::normal_below(*element(z, index)?)?),
            },
        )
    }

    /// The probability that a standard normal value is above `z`, to full relative accuracy in its tail.
    ///
    /// Given: `z`, any finite number.
    /// Written: `probability`.
    /// Statuses: `RKO_NOT_FINITE`, `RKO_NULL_POINTER`.
    /// Source: Abramowitz and Stegun 26.2.
    fn rko_normal_above = rko_normal_above_f32(z: f64, probability: *mut f64, detail: *mut rko_detail)
    asking distribution: normal_above = normal_above_f32
    {
        one(probability, 2, detail, || Ok(asked::normal_above(z)?))
    }

    /// `rko_normal_above` for each of `count` values.
    fn rko_normal_above_n = rko_normal_above_n_f32(
        z: *const f64,
        count: usize,
        probability: *mut f64,
        valid: *mut u8,
        detail: *mut rko_detail,
    )
    asking distribution: normal_above_check = normal_above_f32_check, normal_above_into = normal_above_f32_into,
        normal_above_into_valid = normal_above_f32_into_valid, normal_above = normal_above_f32
    {
        in_parts(
            Results { count, output: probability, position: 3, valid, detail },
            CHEAP,
            || items(z, count, 1),
            Asked {
                check: |z| Ok(asked::normal_above_check(z)?),
                whole: |z, output: &mut [_]| Ok(asked::normal_above_into(z, output)?),
                masked: |z, output: &mut [_], valid: &mut [bool]| Ok(asked::normal_above_into_valid(z, output, valid)?),
                one: |z, index| Ok(asked::normal_above(*element(z, index)?)?),
            },
        )
    }

    /// The value that a standard normal value is below with probability `p`.
    ///
    /// Given: `p`, more than 0 and less than 1.
    /// Written: `quantile`.
    /// Statuses: `RKO_OUT_OF_RANGE`, `RKO_NOT_FINITE`, `RKO_NULL_POINTER`.
    /// Source: Abramowitz and Stegun 26.2.
    fn rko_normal_quantile = rko_normal_quantile_f32(p: f64, quantile: *mut f64, detail: *mut rko_detail)
    asking distribution: normal_quantile = normal_quantile_f32
    {
        one(quantile, 2, detail, || Ok(asked::normal_quantile(p)?))
    }

    /// `rko_normal_quantile` for each of `count` values.
    fn rko_normal_quantile_n = rko_normal_quantile_n_f32(
        p: *const f64,
        count: usize,
        quantile: *mut f64,
        valid: *mut u8,
        detail: *mut rko_detail,
    )
    asking distribution: normal_quantile_check = normal_quantile_f32_check, normal_quantile_into = normal_quantile_f32_into,
        normal_quantile_into_valid = normal_quantile_f32_into_valid, normal_quantile = normal_quantile_f32
    {
        in_parts(
            Results { count, output: quantile, position: 3, valid, detail },
            MIDDLING,
            || items(p, count, 1),
            Asked {
                check: |p| Ok(asked::normal_quantile_check(p)?),
                whole: |p, output: &mut [_]| Ok(asked::normal_quantile_into(p, output)?),
                masked: |p, output: &mut [_], valid: &mut [bool]| Ok(asked::normal_quantile_into_valid(p, output, valid)?),
                one: |p, index| Ok(asked::normal_quantile(*element(p, index)?)?),
            },
        )
    }

    /// The value that a standard normal value is above with probability `p`: take it for a small risk.
    ///
    /// Given: `p`, more than 0 and less than 1.
    /// Written: `quantile`.
    /// Statuses: `RKO_OUT_OF_RANGE`, `RKO_NOT_FINITE`, `RKO_NULL_POINTER`.
    /// Source: Abramowitz and Stegun 26.2.
    fn rko_normal_quantile_above = rko_normal_quantile_above_f32(p: f64, quantile: *mut f64, detail: *mut rko_detail)
    asking distribution: normal_quantile_above = normal_quantile_above_f32
    {
        one(quantile, 2, detail, || Ok(asked::normal_quantile_above(p)?))
    }

    /// `rko_normal_quantile_above` for each of `count` values.
    fn rko_normal_quantile_above_n = rko_normal_quantile_above_n_f32(
        p: *const f64,
        count: usize,
        quantile: *mut f64,
        valid: *mut u8,
        detail: *mut rko_detail,
    )
    asking distribution: normal_quantile_above_check = normal_quantile_above_f32_check, normal_quantile_above_into = normal_quantile_above_f32_into,
        normal_quantile_above_into_valid = normal_quantile_above_f32_into_valid, normal_quantile_above = normal_quantile_above_f32
    {
        in_parts(
            Results { count, output: quantile, position: 3, valid, detail },
            MIDDLING,
            || items(p, count, 1),
            Asked {
                check: |p| Ok(asked::normal_quantile_above_check(p)?),
                whole: |p, output: &mut [_]| Ok(asked::normal_quantile_above_into(p, output)?),
                masked: |p, output: &mut [_], valid: &mut [bool]| Ok(asked::normal_quantile_above_into_valid(p, output, valid)?),
                one: |p, index| Ok(asked::normal_quantile_above(*element(p, index)?)?),
            },
        )
    }

    /// The probability that a value of Student's t is below `t`.
    ///
    /// Given: `t`, any finite number; `dof`, degrees of freedom, more than 0, fractions and infinity included.
    /// Written: `probability`.
    /// Statuses: `RKO_OUT_OF_RANGE`, `RKO_NOT_FINITE`, `RKO_NULL_POINTER`.
    /// Source: Abramowitz and Stegun 26.7.
    fn rko_t_below = rko_t_below_f32(t: f64, dof: f64, probability: *mut f64, detail: *mut rko_detail)
    asking distribution: t_below = t_below_f32
    {
        one(probability, 3, detail, || Ok(asked::t_below(t, dof)?))
    }

    /// `rko_t_below` for each of `count` values, all with the same degrees of freedom.
    fn rko_t_below_n = rko_t_below_n_f32(
        t: *const f64,
        count: usize,
        dof: f64,
        probability: *mut f64,
        valid: *mut u8,
        detail: *mut rko_detail,
    )
    asking distribution: t_below_check = t_below_f32_check, t_below_into = t_below_f32_into,
        t_below_into_valid = t_below_f32_into_valid, t_below = t_below_f32
    {
        in_parts(
            Results { count, output: probability, position: 4, valid, detail },
            DEAR,
            || items(t, count, 1),
            Asked {
                check: |t| Ok(asked::t_below_check(t, dof)?),
                whole: |t, output: &mut [_]| Ok(asked::t_below_into(t, dof, output)?),
                masked: |t, output: &mut [_], valid: &mut [bool]| Ok(asked::t_below_into_valid(t, dof, output, valid)?),
                one: |t, index| Ok(asked::t_below(*element(t, index)?, dof)?),
            },
        )
    }

    /// The probability that a value of Student's t is above `t`, to full relative accuracy in its tail.
    ///
    /// Given: `t`, any finite number; `dof`, degrees of freedom, more than 0, fractions and infinity included.
    /// Written: `probability`.
    /// Statuses: `RKO_OUT_OF_RANGE`, `RKO_NOT_FINITE`, `RKO_NULL_POINTER`.
    /// Source: Abramowitz and Stegun 26.7.
    fn rko_t_above = rko_t_above_f32(t: f64, dof: f64, probability: *mut f64, detail: *mut rko_detail)
    asking distribution: t_above = t_above_f32
    {
        one(probability, 3, detail, || Ok(asked::t_above(t, dof)?))
    }

    /// `rko_t_above` for each of `count` values, all with the same degrees of freedom.
    fn rko_t_above_n = rko_t_above_n_f32(
        t: *const f64,
        count: usize,
        dof: f64,
        probability: *mut f64,
        valid: *mut u8,
        detail: *mut rko_detail,
    )
    asking distribution: t_above_check = t_above_f32_check, t_above_into = t_above_f32_into,
        t_above_into_valid = t_above_f32_into_valid, t_above = t_above_f32
    {
        in_parts(
            Results { count, output: probability, position: 4, valid, detail },
            DEAR,
            || items(t, count, 1),
            Asked {
                check: |t| Ok(asked::t_above_check(t, dof)?),
                whole: |t, output: &mut [_]| Ok(asked::t_above_into(t, dof, output)?),
                masked: |t, output: &mut [_], valid: &mut [bool]| Ok(asked::t_above_into_valid(t, dof, output, valid)?),
                one: |t, index| Ok(asked::t_above(*element(t, index)?, dof)?),
            },
        )
    }

    /// The value that Student's t is below with probability `p`.
    ///
    /// Given: `p`, more than 0 and less than 1; `dof`, degrees of freedom, more than 0, fractions and infinity included.
    /// Written: `quantile`.
    /// Statuses: `RKO_OUT_OF_RANGE`, `RKO_NOT_FINITE`, `RKO_RESULT_OUT_OF_RANGE` (a quantile beyond the largest
    /// number of its type), `RKO_NULL_POINTER`.
    /// Source: Abramowitz and Stegun 26.7.
    fn rko_t_quantile = rko_t_quantile_f32(p: f64, dof: f64, quantile: *mut f64, detail: *mut rko_detail)
    asking distribution: t_quantile = t_quantile_f32
    {
        one(quantile, 3, detail, || Ok(asked::t_quantile(p, dof)?))
    }

    /// `rko_t_quantile` for each of `count` values, all with the same degrees of freedom.
    fn rko_t_quantile_n = rko_t_quantile_n_f32(
        p: *const f64,
        count: usize,
        dof: f64,
        quantile: *mut f64,
        valid: *mut u8,
        detail: *mut rko_detail,
    )
    asking distribution: t_quantile_check = t_quantile_f32_check, t_quantile_into = t_quantile_f32_into,
        t_quantile_into_valid = t_quantile_f32_into_valid, t_quantile = t_quantile_f32
    {
        in_parts(
            Results { count, output: quantile, position: 4, valid, detail },
            DEAREST,
            || items(p, count, 1),
            Asked {
                check: |p| Ok(asked::t_quantile_check(p, dof)?),
                whole: |p, output: &mut [_]| Ok(asked::t_quantile_into(p, dof, output)?),
                masked: |p, output: &mut [_], valid: &mut [bool]| Ok(asked::t_quantile_into_valid(p, dof, output, valid)?),
                one: |p, index| Ok(asked::t_quantile(*element(p, index)?, dof)?),
            },
        )
    }

    /// The value that Student's t is above with probability `p`: take it for a small risk.
    ///
    /// Given: `p`, more than 0 and less than 1; `dof`, degrees of freedom, more than 0, fractions and infinity included.
    /// Written: `quantile`.
    /// Statuses: `RKO_OUT_OF_RANGE`, `RKO_NOT_FINITE`, `RKO_RESULT_OUT_OF_RANGE` (a quantile beyond the largest
    /// number of its type), `RKO_NULL_POINTER`.
    /// Source: Abramowitz and Stegun 26.7.
    fn rko_t_quantile_above = rko_t_quantile_above_f32(p: f64, dof: f64, quantile: *mut f64, detail: *mut rko_detail)
    asking distribution: t_quantile_above = t_quantile_above_f32
    {
        one(quantile, 3, detail, || Ok(asked::t_quantile_above(p, dof)?))
    }

    /// `rko_t_quantile_above` for each of `count` values, all with the same degrees of freedom.
    fn rko_t_quantile_above_n = rko_t_quantile_above_n_f32(
        p: *const f64,
        count: usize,
        dof: f64,
        quantile: *mut f64,
        valid: *mut u8,
        detail: *mut rko_detail,
    )
    asking distribution: t_quantile_above_check = t_quantile_above_f32_check, t_quantile_above_into = t_quantile_above_f32_into,
        t_quantile_above_into_valid = t_quantile_above_f32_into_valid, t_quantile_above = t_quantile_above_f32
    {
        in_parts(
            Results { count, output: quantile, position: 4, valid, detail },
            DEAREST,
            || items(p, count, 1),
            Asked {
                check: |p| Ok(asked::t_quantile_above_check(p, dof)?),
                whole: |p, output: &mut [_]| Ok(asked::t_quantile_above_into(p, dof, output)?),
                masked: |p, output: &mut [_], valid: &mut [bool]| Ok(asked::t_quantile_above_into_valid(p, dof, output, valid)?),
                one: |p, index| Ok(asked::t_quantile_above(*element(p, index)?, dof)?),
            },
        )
    }
}
