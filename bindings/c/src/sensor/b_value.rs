//! A thermistor by its rated resistance and B-value.

use reckohm::sensor::{BValueFormula, BValueThermistor};

use super::kept::{Kept, keeps};
use super::thermometer::thermometer;
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
}

thermometer! {
    rko_b_value_thermistor:
    rko_b_value_thermistor_with_domain = rko_b_value_thermistor_with_domain_f32,
    rko_b_value_thermistor_resistance_ohm = rko_b_value_thermistor_resistance_ohm_f32,
    rko_b_value_thermistor_resistance_ohm_n = rko_b_value_thermistor_resistance_ohm_n_f32,
    rko_b_value_thermistor_slope_ohm_per_kelvin = rko_b_value_thermistor_slope_ohm_per_kelvin_f32,
    rko_b_value_thermistor_slope_ohm_per_kelvin_n = rko_b_value_thermistor_slope_ohm_per_kelvin_n_f32,
    rko_b_value_thermistor_temperature_c = rko_b_value_thermistor_temperature_c_f32,
    rko_b_value_thermistor_temperature_c_n = rko_b_value_thermistor_temperature_c_n_f32,
    rko_b_value_thermistor_resistance_estimate = rko_b_value_thermistor_resistance_estimate_f32,
    rko_b_value_thermistor_temperature_estimate = rko_b_value_thermistor_temperature_estimate_f32,
}
