//! A thermistor by its rated resistance and B-value, in single precision.

use core::mem::{offset_of, size_of};

use reckohm::sensor::{BValueFormula, BValueThermistor};

use super::kept::{self, Kept, keeps};
use crate::answer::one;
use crate::detail::{rko_detail, rko_status};
use crate::estimate::rko_estimate_f32;

/// As `rko_b_value_thermistor`, for `float`.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct rko_b_value_thermistor_f32 {
    /// As of `rko_b_value_thermistor`.
    pub rated_ohm: f32,
    /// As of `rko_b_value_thermistor`.
    pub rated_temperature_c: f32,
    /// As of `rko_b_value_thermistor`.
    pub b_kelvin: f32,
    /// As of `rko_b_value_thermistor`.
    pub b_first_c: f32,
    /// As of `rko_b_value_thermistor`.
    pub b_second_c: f32,
    /// As of `rko_b_value_thermistor`.
    pub lower_c: f32,
    /// As of `rko_b_value_thermistor`.
    pub upper_c: f32,
    /// As of `rko_b_value_thermistor`.
    pub lowest_ohm: f32,
    /// As of `rko_b_value_thermistor`.
    pub highest_ohm: f32,
}

const _: () = {
    assert!(size_of::<rko_b_value_thermistor_f32>() == 36);
    assert!(offset_of!(rko_b_value_thermistor_f32, rated_ohm) == 0);
    assert!(offset_of!(rko_b_value_thermistor_f32, rated_temperature_c) == 4);
    assert!(offset_of!(rko_b_value_thermistor_f32, b_kelvin) == 8);
    assert!(offset_of!(rko_b_value_thermistor_f32, b_first_c) == 12);
    assert!(offset_of!(rko_b_value_thermistor_f32, b_second_c) == 16);
    assert!(offset_of!(rko_b_value_thermistor_f32, lower_c) == 20);
    assert!(offset_of!(rko_b_value_thermistor_f32, upper_c) == 24);
    assert!(offset_of!(rko_b_value_thermistor_f32, lowest_ohm) == 28);
    assert!(offset_of!(rko_b_value_thermistor_f32, highest_ohm) == 32);
};

keeps!(rko_b_value_thermistor_f32: BValueFormula, f32, [rated_ohm, rated_temperature_c, b_kelvin, b_first_c, b_second_c]);

/// `rko_b_value_thermistor_new` for `float`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rko_b_value_thermistor_new_f32(
    rated_ohm: f32,
    rated_temperature_c: f32,
    b_kelvin: f32,
    b_first_c: f32,
    b_second_c: f32,
    thermistor: *mut rko_b_value_thermistor_f32,
    detail: *mut rko_detail,
) -> rko_status {
    unsafe {
        one(thermistor, 6, detail, || {
            let b_temperatures_c = [b_first_c, b_second_c];
            let made = BValueThermistor::<f32>::new(rated_ohm, rated_temperature_c, b_kelvin, b_temperatures_c)?;
            Ok(rko_b_value_thermistor_f32::of(made))
        })
    }
}

/// `rko_b_value_thermistor_with_domain` for `float`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rko_b_value_thermistor_with_domain_f32(
    thermistor: *const rko_b_value_thermistor_f32,
    lower_c: f32,
    upper_c: f32,
    with_it: *mut rko_b_value_thermistor_f32,
    detail: *mut rko_detail,
) -> rko_status {
    unsafe { kept::with_domain(thermistor, [lower_c, upper_c], with_it, detail) }
}

/// `rko_b_value_thermistor_resistance_ohm` for `float`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rko_b_value_thermistor_resistance_ohm_f32(
    thermistor: *const rko_b_value_thermistor_f32,
    temperature_c: f32,
    resistance_ohm: *mut f32,
    detail: *mut rko_detail,
) -> rko_status {
    unsafe { kept::resistance_ohm(thermistor, temperature_c, resistance_ohm, detail) }
}

/// `rko_b_value_thermistor_resistance_ohm_n` for `float`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rko_b_value_thermistor_resistance_ohm_n_f32(
    thermistor: *const rko_b_value_thermistor_f32,
    temperature_c: *const f32,
    count: usize,
    resistance_ohm: *mut f32,
    valid: *mut u8,
    detail: *mut rko_detail,
) -> rko_status {
    unsafe { kept::resistance_ohm_n(thermistor, temperature_c, count, resistance_ohm, valid, detail) }
}

/// `rko_b_value_thermistor_slope_ohm_per_kelvin` for `float`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rko_b_value_thermistor_slope_ohm_per_kelvin_f32(
    thermistor: *const rko_b_value_thermistor_f32,
    temperature_c: f32,
    slope_ohm_per_kelvin: *mut f32,
    detail: *mut rko_detail,
) -> rko_status {
    unsafe { kept::slope(thermistor, temperature_c, slope_ohm_per_kelvin, detail) }
}

/// `rko_b_value_thermistor_slope_ohm_per_kelvin_n` for `float`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rko_b_value_thermistor_slope_ohm_per_kelvin_n_f32(
    thermistor: *const rko_b_value_thermistor_f32,
    temperature_c: *const f32,
    count: usize,
    slope_ohm_per_kelvin: *mut f32,
    valid: *mut u8,
    detail: *mut rko_detail,
) -> rko_status {
    unsafe { kept::slope_n(thermistor, temperature_c, count, slope_ohm_per_kelvin, valid, detail) }
}

/// `rko_b_value_thermistor_temperature_c` for `float`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rko_b_value_thermistor_temperature_c_f32(
    thermistor: *const rko_b_value_thermistor_f32,
    resistance_ohm: f32,
    temperature_c: *mut f32,
    detail: *mut rko_detail,
) -> rko_status {
    unsafe { kept::temperature_c(thermistor, resistance_ohm, temperature_c, detail) }
}

/// `rko_b_value_thermistor_temperature_c_n` for `float`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rko_b_value_thermistor_temperature_c_n_f32(
    thermistor: *const rko_b_value_thermistor_f32,
    resistance_ohm: *const f32,
    count: usize,
    temperature_c: *mut f32,
    valid: *mut u8,
    detail: *mut rko_detail,
) -> rko_status {
    unsafe { kept::temperature_c_n(thermistor, resistance_ohm, count, temperature_c, valid, detail) }
}

/// `rko_b_value_thermistor_resistance_estimate` for `float`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rko_b_value_thermistor_resistance_estimate_f32(
    thermistor: *const rko_b_value_thermistor_f32,
    temperature: *const rko_estimate_f32,
    resistance: *mut rko_estimate_f32,
    detail: *mut rko_detail,
) -> rko_status {
    unsafe { kept::estimate(thermistor, temperature, false, rko_estimate_f32::to_core, resistance, detail) }
}

/// `rko_b_value_thermistor_temperature_estimate` for `float`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rko_b_value_thermistor_temperature_estimate_f32(
    thermistor: *const rko_b_value_thermistor_f32,
    resistance: *const rko_estimate_f32,
    temperature: *mut rko_estimate_f32,
    detail: *mut rko_detail,
) -> rko_status {
    unsafe { kept::estimate(thermistor, resistance, true, rko_estimate_f32::to_core, temperature, detail) }
}
