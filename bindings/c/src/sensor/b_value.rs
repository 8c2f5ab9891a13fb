//! A thermistor by its rated resistance and B-value.

use reckohm::sensor::{BValueFormula, BValueThermistor};

use super::kept::{self, Kept, keeps};
use crate::answer::one;
use crate::detail::rko_detail;
use crate::estimate::rko_estimate;
use crate::twins::{twin_structs, twins};

twin_structs! {
    /// A thermistor by its rated resistance and B-value: R = R_N·exp(B·(1/T - 1/T_N)), with the resistance R at zero power and T
    /// in kelvin. `rko_b_value_thermistor_new` fills it; its members are for reading. It may be copied, and stored by a program
    /// that is linked with the same library.
    ///
    /// Source: IEC 60539-1.
    struct rko_b_value_thermistor = rko_b_value_thermistor_f32 [72, 36] {
        /// R_N, the rated zero-power resistance, ohm.
        rated_ohm: f64 [0, 0],
        /// T_N, the temperature of the rated resistance, degrees Celsius.
        rated_temperature_c: f64 [8, 4],
        /// B, the B-value, kelvin.
        b_kelvin: f64 [16, 8],
        /// The first of the two temperatures that the B-value belongs to, degrees Celsius: 25 of B25/85.
        b_first_c: f64 [24, 12],
        /// The second of them, degrees Celsius.
        b_second_c: f64 [32, 16],
        /// The lower end of the domain, degrees Celsius.
        lower_c: f64 [40, 20],
        /// The upper end of the domain, degrees Celsius.
        upper_c: f64 [48, 24],
        /// The resistance at the warm end of the domain, ohm.
        lowest_ohm: f64 [56, 28],
        /// The resistance at the cold end of the domain, ohm.
        highest_ohm: f64 [64, 32],
    }
}

keeps!(rko_b_value_thermistor: BValueFormula, f64, [rated_ohm, rated_temperature_c, b_kelvin, b_first_c, b_second_c]);
keeps!(rko_b_value_thermistor_f32: BValueFormula, f32, [rated_ohm, rated_temperature_c, b_kelvin, b_first_c, b_second_c]);

twins! {
    /// Fills a thermistor as its data sheet states it. Its domain is what the rated temperature and the two of the B-value span:
    /// the equation bends away from the part elsewhere, by half a kelvin and more at frost where they are 25 and 85.
    /// `rko_b_value_thermistor_with_domain` asks for another. The equation is for zero power: self-heating by the meter's current
    /// is not in it.
    ///
    /// Given: `rated_ohm`, in (0, 1e15]; `rated_temperature_c`, -200 to 1000, 25 as a rule; `b_kelvin`, 100 to 20 000; `b_first_c`
    /// and `b_second_c`, the two temperatures that the B-value belongs to, -200 to 1000.
    /// Written: `thermistor`.
    /// Statuses: `RKO_OUT_OF_RANGE`, `RKO_NOT_FINITE`, `RKO_CONTRADICTION` (both temperatures are the same), `RKO_NULL_POINTER`.
    /// Source: IEC 60539-1.
    fn rko_b_value_thermistor_new = rko_b_value_thermistor_new_f32(
        rated_ohm: f64,
        rated_temperature_c: f64,
        b_kelvin: f64,
        b_first_c: f64,
        b_second_c: f64,
        thermistor: *mut rko_b_value_thermistor,
        detail: *mut rko_detail,
    ) {
        one(thermistor, 6, detail, || {
            let b_temperatures_c = [b_first_c, b_second_c];
            Ok(Kept::of(BValueThermistor::new(rated_ohm, rated_temperature_c, b_kelvin, b_temperatures_c)?))
        })
    }

    /// The same thermistor over another domain: a narrower one, or a wider one over which its parameters are known to hold.
    ///
    /// Given: `thermistor`, as it was filled; `lower_c` and `upper_c`, -200 to 1000, the lower one first.
    /// Written: `with_it`, which may be `thermistor` itself.
    /// Statuses: `RKO_OUT_OF_RANGE`, `RKO_NOT_FINITE`, `RKO_CONTRADICTION`, `RKO_CORRUPT_MEMORY`, `RKO_NULL_POINTER`.
    fn rko_b_value_thermistor_with_domain = rko_b_value_thermistor_with_domain_f32(
        thermistor: *const rko_b_value_thermistor,
        lower_c: f64,
        upper_c: f64,
        with_it: *mut rko_b_value_thermistor,
        detail: *mut rko_detail,
    ) {
        kept::with_domain(thermistor, [lower_c, upper_c], with_it, detail)
    }

    /// The resistance of a thermistor, ohm.
    ///
    /// Given: `thermistor`, as it was filled; `temperature_c`, within its domain.
    /// Written: `resistance_ohm`.
    /// Statuses: `RKO_OUTSIDE_DOMAIN`, `RKO_NOT_FINITE`, `RKO_CORRUPT_MEMORY`, `RKO_NULL_POINTER`.
    fn rko_b_value_thermistor_resistance_ohm = rko_b_value_thermistor_resistance_ohm_f32(
        thermistor: *const rko_b_value_thermistor,
        temperature_c: f64,
        resistance_ohm: *mut f64,
        detail: *mut rko_detail,
    ) {
        kept::resistance_ohm(thermistor, temperature_c, resistance_ohm, detail)
    }

    /// `rko_b_value_thermistor_resistance_ohm` for each of `count` values.
    fn rko_b_value_thermistor_resistance_ohm_n = rko_b_value_thermistor_resistance_ohm_n_f32(
        thermistor: *const rko_b_value_thermistor,
        temperature_c: *const f64,
        count: usize,
        resistance_ohm: *mut f64,
        valid: *mut u8,
        detail: *mut rko_detail,
    ) {
        kept::resistance_ohm_n(thermistor, temperature_c, count, resistance_ohm, valid, detail)
    }

    /// How much the resistance of a thermistor changes with the temperature, ohm a kelvin: the derivative of the formula itself.
    ///
    /// Given: `thermistor`, as it was filled; `temperature_c`, within its domain.
    /// Written: `slope_ohm_per_kelvin`.
    /// Statuses: `RKO_OUTSIDE_DOMAIN`, `RKO_NOT_FINITE`, `RKO_CORRUPT_MEMORY`, `RKO_NULL_POINTER`.
    fn rko_b_value_thermistor_slope_ohm_per_kelvin = rko_b_value_thermistor_slope_ohm_per_kelvin_f32(
        thermistor: *const rko_b_value_thermistor,
        temperature_c: f64,
        slope_ohm_per_kelvin: *mut f64,
        detail: *mut rko_detail,
    ) {
        kept::slope(thermistor, temperature_c, slope_ohm_per_kelvin, detail)
    }

    /// `rko_b_value_thermistor_slope_ohm_per_kelvin` for each of `count` values.
    fn rko_b_value_thermistor_slope_ohm_per_kelvin_n = rko_b_value_thermistor_slope_ohm_per_kelvin_n_f32(
        thermistor: *const rko_b_value_thermistor,
        temperature_c: *const f64,
        count: usize,
        slope_ohm_per_kelvin: *mut f64,
        valid: *mut u8,
        detail: *mut rko_detail,
    ) {
        kept::slope_n(thermistor, temperature_c, count, slope_ohm_per_kelvin, valid, detail)
    }

    /// The temperature of a thermistor, degrees Celsius.
    ///
    /// Given: `thermistor`, as it was filled; `resistance_ohm`, within the resistances at the ends of its domain.
    /// Written: `temperature_c`.
    /// Statuses: `RKO_OUTSIDE_DOMAIN`, `RKO_NOT_FINITE`, `RKO_CORRUPT_MEMORY`, `RKO_NULL_POINTER`.
    fn rko_b_value_thermistor_temperature_c = rko_b_value_thermistor_temperature_c_f32(
        thermistor: *const rko_b_value_thermistor,
        resistance_ohm: f64,
        temperature_c: *mut f64,
        detail: *mut rko_detail,
    ) {
        kept::temperature_c(thermistor, resistance_ohm, temperature_c, detail)
    }

    /// `rko_b_value_thermistor_temperature_c` for each of `count` values.
    fn rko_b_value_thermistor_temperature_c_n = rko_b_value_thermistor_temperature_c_n_f32(
        thermistor: *const rko_b_value_thermistor,
        resistance_ohm: *const f64,
        count: usize,
        temperature_c: *mut f64,
        valid: *mut u8,
        detail: *mut rko_detail,
    ) {
        kept::temperature_c_n(thermistor, resistance_ohm, count, temperature_c, valid, detail)
    }

    /// The resistance where the temperature is uncertain: every part of the estimate scaled by the slope there. This is linear, so it
    /// holds as long as the slope changes little within the uncertainty; the parameters count as exact.
    ///
    /// Given: `thermistor`, as it was filled; `temperature`, in degrees Celsius, its value within the domain.
    /// Written: `resistance`, in ohm.
    /// Statuses: `RKO_OUTSIDE_DOMAIN`, `RKO_OUT_OF_RANGE`, `RKO_NOT_FINITE`, `RKO_RESULT_OUT_OF_RANGE`, `RKO_CORRUPT_MEMORY`,
    /// `RKO_NULL_POINTER`.
    /// Source: JCGM 100 5.1.
    fn rko_b_value_thermistor_resistance_estimate = rko_b_value_thermistor_resistance_estimate_f32(
        thermistor: *const rko_b_value_thermistor,
        temperature: *const rko_estimate,
        resistance: *mut rko_estimate,
        detail: *mut rko_detail,
    ) {
        kept::estimate(thermistor, temperature, false, resistance, detail)
    }

    /// The temperature where the resistance is uncertain: every part of the estimate divided by the slope there. This is linear, so
    /// it holds as long as the slope changes little within the uncertainty; the parameters count as exact.
    ///
    /// Given: `thermistor`, as it was filled; `resistance`, in ohm, its value within the domain.
    /// Written: `temperature`, in degrees Celsius.
    /// Statuses: `RKO_OUTSIDE_DOMAIN`, `RKO_OUT_OF_RANGE`, `RKO_NOT_FINITE`, `RKO_RESULT_OUT_OF_RANGE`, `RKO_CORRUPT_MEMORY`,
    /// `RKO_NULL_POINTER`.
    /// Source: JCGM 100 5.1.
    fn rko_b_value_thermistor_temperature_estimate = rko_b_value_thermistor_temperature_estimate_f32(
        thermistor: *const rko_b_value_thermistor,
        resistance: *const rko_estimate,
        temperature: *mut rko_estimate,
        detail: *mut rko_detail,
    ) {
        kept::estimate(thermistor, resistance, true, temperature, detail)
    }
}
