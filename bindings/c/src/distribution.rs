//! The normal and Student t distributions.

use reckohm::distribution;

use crate::answer::one;
use crate::array::{Results, array};
use crate::detail::{rko_detail, rko_status};
use crate::pointer::{element, items};

/// The probability that a standard normal value is below `z`; 0 where it is below the smallest double.
///
/// Given: `z`, any finite number.
/// Written: `probability`.
/// Statuses: `RKO_NOT_FINITE`, `RKO_NULL_POINTER`.
/// Source: Abramowitz and Stegun 26.2.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rko_normal_below(z: f64, probability: *mut f64, detail: *mut rko_detail) -> rko_status {
    unsafe { one(probability, 2, detail, || Ok(distribution::normal_below(z)?)) }
}

/// `rko_normal_below` for each of `count` values.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rko_normal_below_n(
    z: *const f64,
    count: usize,
    probability: *mut f64,
    valid: *mut u8,
    detail: *mut rko_detail,
) -> rko_status {
    unsafe {
        array(
            Results { count, output: probability, position: 3, valid, detail },
            || items(z, count, 1),
            |z, output| Ok(distribution::normal_below_into(z, output)?),
            |z, index| Ok(distribution::normal_below(*element(z, index)?)?),
        )
    }
}

/// The probability that a standard normal value is above `z`, to full relative accuracy in its tail.
///
/// Given: `z`, any finite number.
/// Written: `probability`.
/// Statuses: `RKO_NOT_FINITE`, `RKO_NULL_POINTER`.
/// Source: Abramowitz and Stegun 26.2.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rko_normal_above(z: f64, probability: *mut f64, detail: *mut rko_detail) -> rko_status {
    unsafe { one(probability, 2, detail, || Ok(distribution::normal_above(z)?)) }
}

/// `rko_normal_above` for each of `count` values.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rko_normal_above_n(
    z: *const f64,
    count: usize,
    probability: *mut f64,
    valid: *mut u8,
    detail: *mut rko_detail,
) -> rko_status {
    unsafe {
        array(
            Results { count, output: probability, position: 3, valid, detail },
            || items(z, count, 1),
            |z, output| Ok(distribution::normal_above_into(z, output)?),
            |z, index| Ok(distribution::normal_above(*element(z, index)?)?),
        )
    }
}

/// The value that a standard normal value is below with probability `p`.
///
/// Given: `p`, more than 0 and less than 1.
/// Written: `quantile`.
/// Statuses: `RKO_OUT_OF_RANGE`, `RKO_NOT_FINITE`, `RKO_NULL_POINTER`.
/// Source: Abramowitz and Stegun 26.2.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rko_normal_quantile(p: f64, quantile: *mut f64, detail: *mut rko_detail) -> rko_status {
    unsafe { one(quantile, 2, detail, || Ok(distribution::normal_quantile(p)?)) }
}

/// `rko_normal_quantile` for each of `count` values.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rko_normal_quantile_n(
    p: *const f64,
    count: usize,
    quantile: *mut f64,
    valid: *mut u8,
    detail: *mut rko_detail,
) -> rko_status {
    unsafe {
        array(
            Results { count, output: quantile, position: 3, valid, detail },
            || items(p, count, 1),
            |p, output| Ok(distribution::normal_quantile_into(p, output)?),
            |p, index| Ok(distribution::normal_quantile(*element(p, index)?)?),
        )
    }
}

/// The value that a standard normal value is above with probability `p`: take it for a small risk.
///
/// Given: `p`, more than 0 and less than 1.
/// Written: `quantile`.
/// Statuses: `RKO_OUT_OF_RANGE`, `RKO_NOT_FINITE`, `RKO_NULL_POINTER`.
/// Source: Abramowitz and Stegun 26.2.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rko_normal_quantile_above(p: f64, quantile: *mut f64, detail: *mut rko_detail) -> rko_status {
    unsafe { one(quantile, 2, detail, || Ok(distribution::normal_quantile_above(p)?)) }
}

/// `rko_normal_quantile_above` for each of `count` values.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rko_normal_quantile_above_n(
    p: *const f64,
    count: usize,
    quantile: *mut f64,
    valid: *mut u8,
    detail: *mut rko_detail,
) -> rko_status {
    unsafe {
        array(
            Results { count, output: quantile, position: 3, valid, detail },
            || items(p, count, 1),
            |p, output| Ok(distribution::normal_quantile_above_into(p, output)?),
            |p, index| Ok(distribution::normal_quantile_above(*element(p, index)?)?),
        )
    }
}

/// The probability that a value of Student's t is below `t`.
///
/// Given: `t`, any finite number; `dof`, degrees of freedom, more than 0, fractions and infinity included.
/// Written: `probability`.
/// Statuses: `RKO_OUT_OF_RANGE`, `RKO_NOT_FINITE`, `RKO_NULL_POINTER`.
/// Source: Abramowitz and Stegun 26.7.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rko_t_below(t: f64, dof: f64, probability: *mut f64, detail: *mut rko_detail) -> rko_status {
    unsafe { one(probability, 3, detail, || Ok(distribution::t_below(t, dof)?)) }
}

/// `rko_t_below` for each of `count` values, all with the same degrees of freedom.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rko_t_below_n(
    t: *const f64,
    count: usize,
    dof: f64,
    probability: *mut f64,
    valid: *mut u8,
    detail: *mut rko_detail,
) -> rko_status {
    unsafe {
        array(
            Results { count, output: probability, position: 4, valid, detail },
            || items(t, count, 1),
            |t, output| Ok(distribution::t_below_into(t, dof, output)?),
            |t, index| Ok(distribution::t_below(*element(t, index)?, dof)?),
        )
    }
}

/// The probability that a value of Student's t is above `t`, to full relative accuracy in its tail.
///
/// Given: `t`, any finite number; `dof`, degrees of freedom, more than 0, fractions and infinity included.
/// Written: `probability`.
/// Statuses: `RKO_OUT_OF_RANGE`, `RKO_NOT_FINITE`, `RKO_NULL_POINTER`.
/// Source: Abramowitz and Stegun 26.7.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rko_t_above(t: f64, dof: f64, probability: *mut f64, detail: *mut rko_detail) -> rko_status {
    unsafe { one(probability, 3, detail, || Ok(distribution::t_above(t, dof)?)) }
}

/// `rko_t_above` for each of `count` values, all with the same degrees of freedom.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rko_t_above_n(
    t: *const f64,
    count: usize,
    dof: f64,
    probability: *mut f64,
    valid: *mut u8,
    detail: *mut rko_detail,
) -> rko_status {
    unsafe {
        array(
            Results { count, output: probability, position: 4, valid, detail },
            || items(t, count, 1),
            |t, output| Ok(distribution::t_above_into(t, dof, output)?),
            |t, index| Ok(distribution::t_above(*element(t, index)?, dof)?),
        )
    }
}

/// The value that Student's t is below with probability `p`.
///
/// Given: `p`, more than 0 and less than 1; `dof`, degrees of freedom, more than 0, fractions and infinity included.
/// Written: `quantile`.
/// Statuses: `RKO_OUT_OF_RANGE`, `RKO_NOT_FINITE`, `RKO_RESULT_OUT_OF_RANGE` (a quantile beyond the largest
/// double), `RKO_NULL_POINTER`.
/// Source: Abramowitz and Stegun 26.7.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rko_t_quantile(p: f64, dof: f64, quantile: *mut f64, detail: *mut rko_detail) -> rko_status {
    unsafe { one(quantile, 3, detail, || Ok(distribution::t_quantile(p, dof)?)) }
}

/// `rko_t_quantile` for each of `count` values, all with the same degrees of freedom.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rko_t_quantile_n(
    p: *const f64,
    count: usize,
    dof: f64,
    quantile: *mut f64,
    valid: *mut u8,
    detail: *mut rko_detail,
) -> rko_status {
    unsafe {
        array(
            Results { count, output: quantile, position: 4, valid, detail },
            || items(p, count, 1),
            |p, output| Ok(distribution::t_quantile_into(p, dof, output)?),
            |p, index| Ok(distribution::t_quantile(*element(p, index)?, dof)?),
        )
    }
}

/// The value that Student's t is above with probability `p`: take it for a small risk.
///
/// Given: `p`, more than 0 and less than 1; `dof`, degrees of freedom, more than 0, fractions and infinity included.
/// Written: `quantile`.
/// Statuses: `RKO_OUT_OF_RANGE`, `RKO_NOT_FINITE`, `RKO_RESULT_OUT_OF_RANGE` (a quantile beyond the largest
/// double), `RKO_NULL_POINTER`.
/// Source: Abramowitz and Stegun 26.7.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rko_t_quantile_above(
    p: f64,
    dof: f64,
    quantile: *mut f64,
    detail: *mut rko_detail,
) -> rko_status {
    unsafe { one(quantile, 3, detail, || Ok(distribution::t_quantile_above(p, dof)?)) }
}

/// `rko_t_quantile_above` for each of `count` values, all with the same degrees of freedom.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rko_t_quantile_above_n(
    p: *const f64,
    count: usize,
    dof: f64,
    quantile: *mut f64,
    valid: *mut u8,
    detail: *mut rko_detail,
) -> rko_status {
    unsafe {
        array(
            Results { count, output: quantile, position: 4, valid, detail },
            || items(p, count, 1),
            |p, output| Ok(distribution::t_quantile_above_into(p, dof, output)?),
            |p, index| Ok(distribution::t_quantile_above(*element(p, index)?, dof)?),
        )
    }
}
