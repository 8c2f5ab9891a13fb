//! Estimates in single precision.

use reckohm::uncertainty::{Estimate, effective_dof};

use crate::answer::one;
use crate::detail::{rko_detail, rko_status};
use crate::estimate::{rko_estimate_f32, rko_expanded_f32};
use crate::pointer::{item, items};

/// `rko_estimate_new` for `float`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rko_estimate_new_f32(
    value: f32,
    u: f32,
    dof: f32,
    estimate: *mut rko_estimate_f32,
    detail: *mut rko_detail,
) -> rko_status {
    unsafe { one(estimate, 4, detail, || Ok(Estimate::new(value, u, dof)?.into())) }
}

/// `rko_estimate_from_repeats` for `float`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rko_estimate_from_repeats_f32(
    observations: *const f32,
    count: usize,
    mean: *mut rko_estimate_f32,
    detail: *mut rko_detail,
) -> rko_status {
    unsafe { one(mean, 3, detail, || Ok(Estimate::from_repeats(items(observations, count, 1)?)?.into())) }
}

/// `rko_effective_dof` for `float`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rko_effective_dof_f32(
    u: *const f32,
    dof: *const f32,
    count: usize,
    effective: *mut f32,
    detail: *mut rko_detail,
) -> rko_status {
    unsafe { one(effective, 4, detail, || Ok(effective_dof(items(u, count, 1)?, items(dof, count, 2)?)?)) }
}

/// `rko_estimate_with_rectangular` for `float`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rko_estimate_with_rectangular_f32(
    estimate: *const rko_estimate_f32,
    half_width: f32,
    with_it: *mut rko_estimate_f32,
    detail: *mut rko_detail,
) -> rko_status {
    unsafe { one(with_it, 3, detail, || Ok(item(estimate, 1)?.to_core()?.with_rectangular(half_width)?.into())) }
}

/// `rko_estimate_with_normal` for `float`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rko_estimate_with_normal_f32(
    estimate: *const rko_estimate_f32,
    u: f32,
    with_it: *mut rko_estimate_f32,
    detail: *mut rko_detail,
) -> rko_status {
    unsafe { one(with_it, 3, detail, || Ok(item(estimate, 1)?.to_core()?.with_normal(u)?.into())) }
}

/// `rko_estimate_with_type_a` for `float`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rko_estimate_with_type_a_f32(
    estimate: *const rko_estimate_f32,
    s: f32,
    dof: f32,
    with_it: *mut rko_estimate_f32,
    detail: *mut rko_detail,
) -> rko_status {
    unsafe { one(with_it, 4, detail, || Ok(item(estimate, 1)?.to_core()?.with_type_a(s, dof)?.into())) }
}

/// `rko_estimate_with_one_sided` for `float`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rko_estimate_with_one_sided_f32(
    estimate: *const rko_estimate_f32,
    below: f32,
    above: f32,
    with_it: *mut rko_estimate_f32,
    detail: *mut rko_detail,
) -> rko_status {
    unsafe { one(with_it, 4, detail, || Ok(item(estimate, 1)?.to_core()?.with_one_sided(below, above)?.into())) }
}

/// `rko_estimate_times` for `float`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rko_estimate_times_f32(
    estimate: *const rko_estimate_f32,
    constant: f32,
    product: *mut rko_estimate_f32,
    detail: *mut rko_detail,
) -> rko_status {
    unsafe { one(product, 3, detail, || Ok(item(estimate, 1)?.to_core()?.times(constant)?.into())) }
}

/// `rko_estimate_u` for `float`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rko_estimate_u_f32(
    estimate: *const rko_estimate_f32,
    u: *mut f32,
    detail: *mut rko_detail,
) -> rko_status {
    unsafe { one(u, 2, detail, || Ok(item(estimate, 1)?.to_core()?.u())) }
}

/// `rko_estimate_effective_dof` for `float`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rko_estimate_effective_dof_f32(
    estimate: *const rko_estimate_f32,
    dof: *mut f32,
    detail: *mut rko_detail,
) -> rko_status {
    unsafe { one(dof, 2, detail, || Ok(item(estimate, 1)?.to_core()?.effective_dof())) }
}

/// `rko_estimate_expanded` for `float`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rko_estimate_expanded_f32(
    estimate: *const rko_estimate_f32,
    coverage_probability: f32,
    expanded: *mut rko_expanded_f32,
    detail: *mut rko_detail,
) -> rko_status {
    unsafe { one(expanded, 3, detail, || Ok(item(estimate, 1)?.to_core()?.expanded(coverage_probability)?.into())) }
}

/// `rko_estimate_expanded_welch_satterthwaite` for `float`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rko_estimate_expanded_welch_satterthwaite_f32(
    estimate: *const rko_estimate_f32,
    coverage_probability: f32,
    expanded: *mut rko_expanded_f32,
    detail: *mut rko_detail,
) -> rko_status {
    unsafe {
        one(expanded, 3, detail, || {
            Ok(item(estimate, 1)?.to_core()?.expanded_welch_satterthwaite(coverage_probability)?.into())
        })
    }
}

/// `rko_estimate_expanded_guaranteed` for `float`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rko_estimate_expanded_guaranteed_f32(
    estimate: *const rko_estimate_f32,
    coverage_probability: f32,
    expanded: *mut rko_expanded_f32,
    detail: *mut rko_detail,
) -> rko_status {
    unsafe {
        one(expanded, 3, detail, || Ok(item(estimate, 1)?.to_core()?.expanded_guaranteed(coverage_probability)?.into()))
    }
}

/// `rko_estimate_quantile_above` for `float`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rko_estimate_quantile_above_f32(
    estimate: *const rko_estimate_f32,
    tail_probability: f32,
    distance: *mut f32,
    detail: *mut rko_detail,
) -> rko_status {
    unsafe { one(distance, 3, detail, || Ok(item(estimate, 1)?.to_core()?.quantile_above(tail_probability)?)) }
}

/// `rko_estimate_probability_above` for `float`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rko_estimate_probability_above_f32(
    estimate: *const rko_estimate_f32,
    x: f32,
    probability: *mut f32,
    detail: *mut rko_detail,
) -> rko_status {
    unsafe { one(probability, 3, detail, || Ok(item(estimate, 1)?.to_core()?.probability_above(x)?)) }
}

/// `rko_estimate_probability_below` for `float`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rko_estimate_probability_below_f32(
    estimate: *const rko_estimate_f32,
    x: f32,
    probability: *mut f32,
    detail: *mut rko_detail,
) -> rko_status {
    unsafe { one(probability, 3, detail, || Ok(item(estimate, 1)?.to_core()?.probability_below(x)?)) }
}
