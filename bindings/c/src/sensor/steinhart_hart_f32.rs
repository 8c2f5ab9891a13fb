//! A thermistor by its Steinhart-Hart coefficients, in single precision.

use core::mem::{offset_of, size_of};

use reckohm::sensor::{SteinhartHart, SteinhartHartFormula};

use super::kept::{self, Kept, keeps};
use crate::answer::one;
use crate::detail::{rko_detail, rko_status};
use crate::estimate::rko_estimate_f32;
use crate::pointer::item;

/// As `rko_steinhart_hart`, for `float`.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct rko_steinhart_hart_f32 {
    /// As of `rko_steinhart_hart`.
    pub a: f32,
    /// As of `rko_steinhart_hart`.
    pub b: f32,
    /// As of `rko_steinhart_hart`.
    pub c: f32,
    /// As of `rko_steinhart_hart`.
    pub d: f32,
    /// As of `rko_steinhart_hart`.
    pub reference_ohm: f32,
    /// As of `rko_steinhart_hart`.
    pub lower_c: f32,
    /// As of `rko_steinhart_hart`.
    pub upper_c: f32,
    /// As of `rko_steinhart_hart`.
    pub lowest_ohm: f32,
    /// As of `rko_steinhart_hart`.
    pub highest_ohm: f32,
}

const _: () = {
    assert!(size_of::<rko_steinhart_hart_f32>() == 36);
    assert!(offset_of!(rko_steinhart_hart_f32, a) == 0);
    assert!(offset_of!(rko_steinhart_hart_f32, b) == 4);
    assert!(offset_of!(rko_steinhart_hart_f32, c) == 8);
    assert!(offset_of!(rko_steinhart_hart_f32, d) == 12);
    assert!(offset_of!(rko_steinhart_hart_f32, reference_ohm) == 16);
    assert!(offset_of!(rko_steinhart_hart_f32, lower_c) == 20);
    assert!(offset_of!(rko_steinhart_hart_f32, upper_c) == 24);
    assert!(offset_of!(rko_steinhart_hart_f32, lowest_ohm) == 28);
    assert!(offset_of!(rko_steinhart_hart_f32, highest_ohm) == 32);
};

keeps!(rko_steinhart_hart_f32: SteinhartHartFormula, f32, [a, b, c, d, reference_ohm]);

/// `rko_steinhart_hart_three_terms` for `float`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rko_steinhart_hart_three_terms_f32(
    coefficients: *const f32,
    reference_ohm: f32,
    lower_c: f32,
    upper_c: f32,
    thermistor: *mut rko_steinhart_hart_f32,
    detail: *mut rko_detail,
) -> rko_status {
    unsafe {
        one(thermistor, 5, detail, || {
            let coefficients = *item(coefficients.cast::<[f32; 3]>(), 1)?;
            let made = SteinhartHart::<f32>::three_terms(coefficients, reference_ohm, [lower_c, upper_c])?;
            Ok(rko_steinhart_hart_f32::of(made))
        })
    }
}

/// `rko_steinhart_hart_four_terms` for `float`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rko_steinhart_hart_four_terms_f32(
    coefficients: *const f32,
    reference_ohm: f32,
    lower_c: f32,
    upper_c: f32,
    thermistor: *mut rko_steinhart_hart_f32,
    detail: *mut rko_detail,
) -> rko_status {
    unsafe {
        one(thermistor, 5, detail, || {
            let coefficients = *item(coefficients.cast::<[f32; 4]>(), 1)?;
            let made = SteinhartHart::<f32>::four_terms(coefficients, reference_ohm, [lower_c, upper_c])?;
            Ok(rko_steinhart_hart_f32::of(made))
        })
    }
}

/// `rko_steinhart_hart_with_domain` for `float`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rko_steinhart_hart_with_domain_f32(
    thermistor: *const rko_steinhart_hart_f32,
    lower_c: f32,
    upper_c: f32,
    with_it: *mut rko_steinhart_hart_f32,
    detail: *mut rko_detail,
) -> rko_status {
    unsafe { kept::with_domain(thermistor, [lower_c, upper_c], with_it, detail) }
}

/// `rko_steinhart_hart_resistance_ohm` for `float`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rko_steinhart_hart_resistance_ohm_f32(
    thermistor: *const rko_steinhart_hart_f32,
    temperature_c: f32,
    resistance_ohm: *mut f32,
    detail: *mut rko_detail,
) -> rko_status {
    unsafe { kept::resistance_ohm(thermistor, temperature_c, resistance_ohm, detail) }
}

/// `rko_steinhart_hart_resistance_ohm_n` for `float`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rko_steinhart_hart_resistance_ohm_n_f32(
    thermistor: *const rko_steinhart_hart_f32,
    temperature_c: *const f32,
    count: usize,
    resistance_ohm: *mut f32,
    valid: *mut u8,
    detail: *mut rko_detail,
) -> rko_status {
    unsafe { kept::resistance_ohm_n(thermistor, temperature_c, count, resistance_ohm, valid, detail) }
}

/// `rko_steinhart_hart_slope_ohm_per_kelvin` for `float`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rko_steinhart_hart_slope_ohm_per_kelvin_f32(
    thermistor: *const rko_steinhart_hart_f32,
    temperature_c: f32,
    slope_ohm_per_kelvin: *mut f32,
    detail: *mut rko_detail,
) -> rko_status {
    unsafe { kept::slope(thermistor, temperature_c, slope_ohm_per_kelvin, detail) }
}

/// `rko_steinhart_hart_slope_ohm_per_kelvin_n` for `float`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rko_steinhart_hart_slope_ohm_per_kelvin_n_f32(
    thermistor: *const rko_steinhart_hart_f32,
    temperature_c: *const f32,
    count: usize,
    slope_ohm_per_kelvin: *mut f32,
    valid: *mut u8,
    detail: *mut rko_detail,
) -> rko_status {
    unsafe { kept::slope_n(thermistor, temperature_c, count, slope_ohm_per_kelvin, valid, detail) }
}

/// `rko_steinhart_hart_temperature_c` for `float`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rko_steinhart_hart_temperature_c_f32(
    thermistor: *const rko_steinhart_hart_f32,
    resistance_ohm: f32,
    temperature_c: *mut f32,
    detail: *mut rko_detail,
) -> rko_status {
    unsafe { kept::temperature_c(thermistor, resistance_ohm, temperature_c, detail) }
}

/// `rko_steinhart_hart_temperature_c_n` for `float`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rko_steinhart_hart_temperature_c_n_f32(
    thermistor: *const rko_steinhart_hart_f32,
    resistance_ohm: *const f32,
    count: usize,
    temperature_c: *mut f32,
    valid: *mut u8,
    detail: *mut rko_detail,
) -> rko_status {
    unsafe { kept::temperature_c_n(thermistor, resistance_ohm, count, temperature_c, valid, detail) }
}

/// `rko_steinhart_hart_resistance_estimate` for `float`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rko_steinhart_hart_resistance_estimate_f32(
    thermistor: *const rko_steinhart_hart_f32,
    temperature: *const rko_estimate_f32,
    resistance: *mut rko_estimate_f32,
    detail: *mut rko_detail,
) -> rko_status {
    unsafe { kept::estimate(thermistor, temperature, false, rko_estimate_f32::to_core, resistance, detail) }
}

/// `rko_steinhart_hart_temperature_estimate` for `float`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rko_steinhart_hart_temperature_estimate_f32(
    thermistor: *const rko_steinhart_hart_f32,
    resistance: *const rko_estimate_f32,
    temperature: *mut rko_estimate_f32,
    detail: *mut rko_detail,
) -> rko_status {
    unsafe { kept::estimate(thermistor, resistance, true, rko_estimate_f32::to_core, temperature, detail) }
}
