//! Limits in single precision.

use reckohm::verdict::Limits;

use crate::answer::one;
use crate::detail::{rko_detail, rko_status};
use crate::limits::rko_limits_f32;
use crate::pointer::item;

/// `rko_limits_new` for `float`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rko_limits_new_f32(
    lower_ohm: f32,
    upper_ohm: f32,
    limits: *mut rko_limits_f32,
    detail: *mut rko_detail,
) -> rko_status {
    unsafe { one(limits, 3, detail, || Ok(Limits::new(lower_ohm, upper_ohm)?.into())) }
}

/// `rko_limits_at_most` for `float`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rko_limits_at_most_f32(
    upper_ohm: f32,
    limits: *mut rko_limits_f32,
    detail: *mut rko_detail,
) -> rko_status {
    unsafe { one(limits, 2, detail, || Ok(Limits::at_most(upper_ohm)?.into())) }
}

/// `rko_limits_at_least` for `float`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rko_limits_at_least_f32(
    lower_ohm: f32,
    limits: *mut rko_limits_f32,
    detail: *mut rko_detail,
) -> rko_status {
    unsafe { one(limits, 2, detail, || Ok(Limits::at_least(lower_ohm)?.into())) }
}

/// `rko_limits_from_tolerance` for `float`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rko_limits_from_tolerance_f32(
    nominal_ohm: f32,
    tolerance: f32,
    limits: *mut rko_limits_f32,
    detail: *mut rko_detail,
) -> rko_status {
    unsafe { one(limits, 3, detail, || Ok(Limits::from_tolerance(nominal_ohm, tolerance)?.into())) }
}

/// `rko_limits_contains` for `float`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rko_limits_contains_f32(
    limits: *const rko_limits_f32,
    ohm: f32,
    contains: *mut u8,
    detail: *mut rko_detail,
) -> rko_status {
    unsafe { one(contains, 3, detail, || Ok(u8::from(item(limits, 1)?.to_core()?.contains(ohm)))) }
}
