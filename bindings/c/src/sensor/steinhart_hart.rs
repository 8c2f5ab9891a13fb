//! A thermistor by its Steinhart-Hart coefficients.

use core::mem::{offset_of, size_of};

use reckohm::sensor::{SteinhartHart, SteinhartHartFormula};

use super::kept::{self, Kept, keeps};
use crate::answer::one;
use crate::detail::{rko_detail, rko_status};
use crate::estimate::rko_estimate;
use crate::pointer::item;

/// A thermistor by its Steinhart-Hart coefficients: 1/T = a + b·L + c·L² + d·L³ with L = ln(R/R_ref), R the resistance at zero
/// power and T in kelvin. `rko_steinhart_hart_three_terms` or `rko_steinhart_hart_four_terms` fills it; its members are for
/// reading. It may be copied, and stored by a program that is linked with the same library.
///
/// Source: Steinhart and Hart, Deep-Sea Research 15 (1968) 497.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct rko_steinhart_hart {
    /// a, 1/K.
    pub a: f64,
    /// b, the coefficient of L, 1/K.
    pub b: f64,
    /// c, the coefficient of L², 1/K; 0 with three terms.
    pub c: f64,
    /// d, the coefficient of L³, 1/K.
    pub d: f64,
    /// R_ref, ohm.
    pub reference_ohm: f64,
    /// The lower end of the domain, degrees Celsius.
    pub lower_c: f64,
    /// The upper end of the domain, degrees Celsius.
    pub upper_c: f64,
    /// The resistance at the warm end of the domain, ohm.
    pub lowest_ohm: f64,
    /// The resistance at the cold end of the domain, ohm.
    pub highest_ohm: f64,
}

const _: () = {
    assert!(size_of::<rko_steinhart_hart>() == 72);
    assert!(offset_of!(rko_steinhart_hart, a) == 0);
    assert!(offset_of!(rko_steinhart_hart, b) == 8);
    assert!(offset_of!(rko_steinhart_hart, c) == 16);
    assert!(offset_of!(rko_steinhart_hart, d) == 24);
    assert!(offset_of!(rko_steinhart_hart, reference_ohm) == 32);
    assert!(offset_of!(rko_steinhart_hart, lower_c) == 40);
    assert!(offset_of!(rko_steinhart_hart, upper_c) == 48);
    assert!(offset_of!(rko_steinhart_hart, lowest_ohm) == 56);
    assert!(offset_of!(rko_steinhart_hart, highest_ohm) == 64);
};

keeps!(rko_steinhart_hart: SteinhartHartFormula, f64, [a, b, c, d, reference_ohm]);

/// Fills a thermistor of three terms: 1/T = a + b·L + d·L³, as Steinhart and Hart gave it. The equation is for zero power:
/// self-heating by the meter's current is not in it.
///
/// Given: `coefficients`, three of them: a, b and d in 1/K (often called A, B and C); `reference_ohm`, in (0, 1e15]: 1 where they
/// are for ln R, and the rated resistance where they are for the logarithm of the ratio to it; `lower_c` and `upper_c`, the
/// domain, which is that of the points that the coefficients were found from, within -200 to 1000.
/// Written: `thermistor`.
/// Statuses: `RKO_OUT_OF_RANGE`, `RKO_NOT_FINITE`, `RKO_CONTRADICTION` (a domain without extent, or coefficients that give no
/// resistance that falls smoothly over it), `RKO_NULL_POINTER`.
/// Source: Steinhart and Hart, Deep-Sea Research 15 (1968) 497.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rko_steinhart_hart_three_terms(
    coefficients: *const f64,
    reference_ohm: f64,
    lower_c: f64,
    upper_c: f64,
    thermistor: *mut rko_steinhart_hart,
    detail: *mut rko_detail,
) -> rko_status {
    unsafe {
        one(thermistor, 5, detail, || {
            let coefficients = *item(coefficients.cast::<[f64; 3]>(), 1)?;
            let made = SteinhartHart::<f64>::three_terms(coefficients, reference_ohm, [lower_c, upper_c])?;
            Ok(rko_steinhart_hart::of(made))
        })
    }
}

/// Fills a thermistor of four terms: 1/T = a + b·L + c·L² + d·L³.
///
/// Given: `coefficients`, four of them: a, b, c and d in 1/K; all else as of `rko_steinhart_hart_three_terms`.
/// Written: `thermistor`.
/// Statuses: as of `rko_steinhart_hart_three_terms`.
/// Source: common practice.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rko_steinhart_hart_four_terms(
    coefficients: *const f64,
    reference_ohm: f64,
    lower_c: f64,
    upper_c: f64,
    thermistor: *mut rko_steinhart_hart,
    detail: *mut rko_detail,
) -> rko_status {
    unsafe {
        one(thermistor, 5, detail, || {
            let coefficients = *item(coefficients.cast::<[f64; 4]>(), 1)?;
            let made = SteinhartHart::<f64>::four_terms(coefficients, reference_ohm, [lower_c, upper_c])?;
            Ok(rko_steinhart_hart::of(made))
        })
    }
}

/// The same thermistor over another domain: a narrower one, or a wider one over which its parameters are known to hold.
///
/// Given: `thermistor`, as it was filled; `lower_c` and `upper_c`, -200 to 1000, the lower one first.
/// Written: `with_it`, which may be `thermistor` itself.
/// Statuses: `RKO_OUT_OF_RANGE`, `RKO_NOT_FINITE`, `RKO_CONTRADICTION`, `RKO_CORRUPT_MEMORY`, `RKO_NULL_POINTER`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rko_steinhart_hart_with_domain(
    thermistor: *const rko_steinhart_hart,
    lower_c: f64,
    upper_c: f64,
    with_it: *mut rko_steinhart_hart,
    detail: *mut rko_detail,
) -> rko_status {
    unsafe { kept::with_domain(thermistor, [lower_c, upper_c], with_it, detail) }
}

/// The resistance of a thermistor, ohm.
///
/// Given: `thermistor`, as it was filled; `temperature_c`, within its domain.
/// Written: `resistance_ohm`.
/// Statuses: `RKO_OUTSIDE_DOMAIN`, `RKO_NOT_FINITE`, `RKO_CORRUPT_MEMORY`, `RKO_NULL_POINTER`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rko_steinhart_hart_resistance_ohm(
    thermistor: *const rko_steinhart_hart,
    temperature_c: f64,
    resistance_ohm: *mut f64,
    detail: *mut rko_detail,
) -> rko_status {
    unsafe { kept::resistance_ohm(thermistor, temperature_c, resistance_ohm, detail) }
}

/// `rko_steinhart_hart_resistance_ohm` for each of `count` values.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rko_steinhart_hart_resistance_ohm_n(
    thermistor: *const rko_steinhart_hart,
    temperature_c: *const f64,
    count: usize,
    resistance_ohm: *mut f64,
    valid: *mut u8,
    detail: *mut rko_detail,
) -> rko_status {
    unsafe { kept::resistance_ohm_n(thermistor, temperature_c, count, resistance_ohm, valid, detail) }
}

/// How much the resistance of a thermistor changes with the temperature, ohm a kelvin: the derivative of the formula itself.
///
/// Given: `thermistor`, as it was filled; `temperature_c`, within its domain.
/// Written: `slope_ohm_per_kelvin`.
/// Statuses: `RKO_OUTSIDE_DOMAIN`, `RKO_NOT_FINITE`, `RKO_CORRUPT_MEMORY`, `RKO_NULL_POINTER`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rko_steinhart_hart_slope_ohm_per_kelvin(
    thermistor: *const rko_steinhart_hart,
    temperature_c: f64,
    slope_ohm_per_kelvin: *mut f64,
    detail: *mut rko_detail,
) -> rko_status {
    unsafe { kept::slope(thermistor, temperature_c, slope_ohm_per_kelvin, detail) }
}

/// `rko_steinhart_hart_slope_ohm_per_kelvin` for each of `count` values.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rko_steinhart_hart_slope_ohm_per_kelvin_n(
    thermistor: *const rko_steinhart_hart,
    temperature_c: *const f64,
    count: usize,
    slope_ohm_per_kelvin: *mut f64,
    valid: *mut u8,
    detail: *mut rko_detail,
) -> rko_status {
    unsafe { kept::slope_n(thermistor, temperature_c, count, slope_ohm_per_kelvin, valid, detail) }
}

/// The temperature of a thermistor, degrees Celsius.
///
/// Given: `thermistor`, as it was filled; `resistance_ohm`, within the resistances at the ends of its domain.
/// Written: `temperature_c`.
/// Statuses: `RKO_OUTSIDE_DOMAIN`, `RKO_NOT_FINITE`, `RKO_CORRUPT_MEMORY`, `RKO_NULL_POINTER`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rko_steinhart_hart_temperature_c(
    thermistor: *const rko_steinhart_hart,
    resistance_ohm: f64,
    temperature_c: *mut f64,
    detail: *mut rko_detail,
) -> rko_status {
    unsafe { kept::temperature_c(thermistor, resistance_ohm, temperature_c, detail) }
}

/// `rko_steinhart_hart_temperature_c` for each of `count` values.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rko_steinhart_hart_temperature_c_n(
    thermistor: *const rko_steinhart_hart,
    resistance_ohm: *const f64,
    count: usize,
    temperature_c: *mut f64,
    valid: *mut u8,
    detail: *mut rko_detail,
) -> rko_status {
    unsafe { kept::temperature_c_n(thermistor, resistance_ohm, count, temperature_c, valid, detail) }
}

/// The resistance where the temperature is uncertain: every part of the estimate scaled by the slope there. This is linear, so it
/// holds as long as the slope changes little within the uncertainty; the parameters count as exact.
///
/// Given: `thermistor`, as it was filled; `temperature`, in degrees Celsius, its value within the domain.
/// Written: `resistance`, in ohm.
/// Statuses: `RKO_OUTSIDE_DOMAIN`, `RKO_OUT_OF_RANGE`, `RKO_NOT_FINITE`, `RKO_RESULT_OUT_OF_RANGE`, `RKO_CORRUPT_MEMORY`,
/// `RKO_NULL_POINTER`.
/// Source: JCGM 100 5.1.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rko_steinhart_hart_resistance_estimate(
    thermistor: *const rko_steinhart_hart,
    temperature: *const rko_estimate,
    resistance: *mut rko_estimate,
    detail: *mut rko_detail,
) -> rko_status {
    unsafe { kept::estimate(thermistor, temperature, false, rko_estimate::to_core, resistance, detail) }
}

/// The temperature where the resistance is uncertain: every part of the estimate divided by the slope there. This is linear, so
/// it holds as long as the slope changes little within the uncertainty; the parameters count as exact.
///
/// Given: `thermistor`, as it was filled; `resistance`, in ohm, its value within the domain.
/// Written: `temperature`, in degrees Celsius.
/// Statuses: `RKO_OUTSIDE_DOMAIN`, `RKO_OUT_OF_RANGE`, `RKO_NOT_FINITE`, `RKO_RESULT_OUT_OF_RANGE`, `RKO_CORRUPT_MEMORY`,
/// `RKO_NULL_POINTER`.
/// Source: JCGM 100 5.1.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rko_steinhart_hart_temperature_estimate(
    thermistor: *const rko_steinhart_hart,
    resistance: *const rko_estimate,
    temperature: *mut rko_estimate,
    detail: *mut rko_detail,
) -> rko_status {
    unsafe { kept::estimate(thermistor, resistance, true, rko_estimate::to_core, temperature, detail) }
}
