//! The normal and Student t distributions in single precision.

use reckohm::distribution;

use crate::answer::one;
use crate::array::{Results, array};
use crate::detail::{rko_detail, rko_status};
use crate::pointer::{element, items};

/// `rko_normal_below` for `float`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rko_normal_below_f32(z: f32, probability: *mut f32, detail: *mut rko_detail) -> rko_status {
    unsafe { one(probability, 2, detail, || Ok(distribution::normal_below_f32(z)?)) }
}

/// `rko_normal_below_n` for `float`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rko_normal_below_n_f32(
    z: *const f32,
    count: usize,
    probability: *mut f32,
    valid: *mut u8,
    detail: *mut rko_detail,
) -> rko_status {
    unsafe {
        array(
            Results { count, output: probability, position: 3, valid, detail },
            || items(z, count, 1),
            |z, output| Ok(distribution::normal_below_f32_into(z, output)?),
            |z, index| Ok(distribution::normal_below_f32(*element(z, index)?)?),
        )
    }
}

/// `rko_normal_above` for `float`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rko_normal_above_f32(z: f32, probability: *mut f32, detail: *mut rko_detail) -> rko_status {
    unsafe { one(probability, 2, detail, || Ok(distribution::normal_above_f32(z)?)) }
}

/// `rko_normal_above_n` for `float`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rko_normal_above_n_f32(
    z: *const f32,
    count: usize,
    probability: *mut f32,
    valid: *mut u8,
    detail: *mut rko_detail,
) -> rko_status {
    unsafe {
        array(
            Results { count, output: probability, position: 3, valid, detail },
            || items(z, count, 1),
            |z, output| Ok(distribution::normal_above_f32_into(z, output)?),
            |z, index| Ok(distribution::normal_above_f32(*element(z, index)?)?),
        )
    }
}

/// `rko_normal_quantile` for `float`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rko_normal_quantile_f32(p: f32, quantile: *mut f32, detail: *mut rko_detail) -> rko_status {
    unsafe { one(quantile, 2, detail, || Ok(distribution::normal_quantile_f32(p)?)) }
}

/// `rko_normal_quantile_n` for `float`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rko_normal_quantile_n_f32(
    p: *const f32,
    count: usize,
    quantile: *mut f32,
    valid: *mut u8,
    detail: *mut rko_detail,
) -> rko_status {
    unsafe {
        array(
            Results { count, output: quantile, position: 3, valid, detail },
            || items(p, count, 1),
            |p, output| Ok(distribution::normal_quantile_f32_into(p, output)?),
            |p, index| Ok(distribution::normal_quantile_f32(*element(p, index)?)?),
        )
    }
}

/// `rko_normal_quantile_above` for `float`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rko_normal_quantile_above_f32(
    p: f32,
    quantile: *mut f32,
    detail: *mut rko_detail,
) -> rko_status {
    unsafe { one(quantile, 2, detail, || Ok(distribution::normal_quantile_above_f32(p)?)) }
}

/// `rko_normal_quantile_above_n` for `float`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rko_normal_quantile_above_n_f32(
    p: *const f32,
    count: usize,
    quantile: *mut f32,
    valid: *mut u8,
    detail: *mut rko_detail,
) -> rko_status {
    unsafe {
        array(
            Results { count, output: quantile, position: 3, valid, detail },
            || items(p, count, 1),
            |p, output| Ok(distribution::normal_quantile_above_f32_into(p, output)?),
            |p, index| Ok(distribution::normal_quantile_above_f32(*element(p, index)?)?),
        )
    }
}

/// `rko_t_below` for `float`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rko_t_below_f32(
    t: f32,
    dof: f32,
    probability: *mut f32,
    detail: *mut rko_detail,
) -> rko_status {
    unsafe { one(probability, 3, detail, || Ok(distribution::t_below_f32(t, dof)?)) }
}

/// `rko_t_below_n` for `float`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rko_t_below_n_f32(
    t: *const f32,
    count: usize,
    dof: f32,
    probability: *mut f32,
    valid: *mut u8,
    detail: *mut rko_detail,
) -> rko_status {
    unsafe {
        array(
            Results { count, output: probability, position: 4, valid, detail },
            || items(t, count, 1),
            |t, output| Ok(distribution::t_below_f32_into(t, dof, output)?),
            |t, index| Ok(distribution::t_below_f32(*element(t, index)?, dof)?),
        )
    }
}

/// `rko_t_above` for `float`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rko_t_above_f32(
    t: f32,
    dof: f32,
    probability: *mut f32,
    detail: *mut rko_detail,
) -> rko_status {
    unsafe { one(probability, 3, detail, || Ok(distribution::t_above_f32(t, dof)?)) }
}

/// `rko_t_above_n` for `float`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rko_t_above_n_f32(
    t: *const f32,
    count: usize,
    dof: f32,
    probability: *mut f32,
    valid: *mut u8,
    detail: *mut rko_detail,
) -> rko_status {
    unsafe {
        array(
            Results { count, output: probability, position: 4, valid, detail },
            || items(t, count, 1),
            |t, output| Ok(distribution::t_above_f32_into(t, dof, output)?),
            |t, index| Ok(distribution::t_above_f32(*element(t, index)?, dof)?),
        )
    }
}

/// `rko_t_quantile` for `float`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rko_t_quantile_f32(
    p: f32,
    dof: f32,
    quantile: *mut f32,
    detail: *mut rko_detail,
) -> rko_status {
    unsafe { one(quantile, 3, detail, || Ok(distribution::t_quantile_f32(p, dof)?)) }
}

/// `rko_t_quantile_n` for `float`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rko_t_quantile_n_f32(
    p: *const f32,
    count: usize,
    dof: f32,
    quantile: *mut f32,
    valid: *mut u8,
    detail: *mut rko_detail,
) -> rko_status {
    unsafe {
        array(
            Results { count, output: quantile, position: 4, valid, detail },
            || items(p, count, 1),
            |p, output| Ok(distribution::t_quantile_f32_into(p, dof, output)?),
            |p, index| Ok(distribution::t_quantile_f32(*element(p, index)?, dof)?),
        )
    }
}

/// `rko_t_quantile_above` for `float`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rko_t_quantile_above_f32(
    p: f32,
    dof: f32,
    quantile: *mut f32,
    detail: *mut rko_detail,
) -> rko_status {
    unsafe { one(quantile, 3, detail, || Ok(distribution::t_quantile_above_f32(p, dof)?)) }
}

/// `rko_t_quantile_above_n` for `float`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rko_t_quantile_above_n_f32(
    p: *const f32,
    count: usize,
    dof: f32,
    quantile: *mut f32,
    valid: *mut u8,
    detail: *mut rko_detail,
) -> rko_status {
    unsafe {
        array(
            Results { count, output: quantile, position: 4, valid, detail },
            || items(p, count, 1),
            |p, output| Ok(distribution::t_quantile_above_f32_into(p, dof, output)?),
            |p, index| Ok(distribution::t_quantile_above_f32(*element(p, index)?, dof)?),
        )
    }
}
