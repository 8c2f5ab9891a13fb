//! The functions that every thermometer of the C door has, written once.

/// Makes the functions for a struct that holds a model: each name with that of its twin, in the order of the list.
macro_rules! thermometer {
    (
        $model:ident:
        $with_domain:ident = $with_domain_f32:ident,
        $resistance_ohm:ident = $resistance_ohm_f32:ident,
        $resistance_ohm_n:ident = $resistance_ohm_n_f32:ident,
        $slope_ohm_per_kelvin:ident = $slope_ohm_per_kelvin_f32:ident,
        $slope_ohm_per_kelvin_n:ident = $slope_ohm_per_kelvin_n_f32:ident,
        $temperature_c:ident = $temperature_c_f32:ident,
        $temperature_c_n:ident = $temperature_c_n_f32:ident,
        $resistance_estimate:ident = $resistance_estimate_f32:ident,
        $temperature_estimate:ident = $temperature_estimate_f32:ident $(,)?
    ) => {
        $crate::twins::twins! {
            /// The same thermistor over another domain: a narrower one, or a wider one over which its parameters are known to hold.
            ///
            /// Given: `thermistor`, as it was filled; `lower_c` and `upper_c`, -200 to 1000, the lower one first.
            /// Written: `with_it`, which may be `thermistor` itself.
            /// Statuses: `RKO_OUT_OF_RANGE`, `RKO_NOT_FINITE`, `RKO_CONTRADICTION`, `RKO_CORRUPT_MEMORY`, `RKO_NULL_POINTER`.
            fn $with_domain = $with_domain_f32(
                thermistor: *const $model,
                lower_c: f64,
                upper_c: f64,
                with_it: *mut $model,
                detail: *mut rko_detail,
            ) {
                $crate::sensor::kept::with_domain(thermistor, [lower_c, upper_c], with_it, detail)
            }

            /// The resistance of a thermistor, ohm.
            ///
            /// Given: `thermistor`, as it was filled; `temperature_c`, within its domain.
            /// Written: `resistance_ohm`.
            /// Statuses: `RKO_OUTSIDE_DOMAIN`, `RKO_NOT_FINITE`, `RKO_CORRUPT_MEMORY`, `RKO_NULL_POINTER`.
            fn $resistance_ohm = $resistance_ohm_f32(
                thermistor: *const $model,
                temperature_c: f64,
                resistance_ohm: *mut f64,
                detail: *mut rko_detail,
            ) {
                $crate::sensor::kept::resistance_ohm(thermistor, temperature_c, resistance_ohm, detail)
            }

            #[doc = concat!(" `", stringify!($resistance_ohm), "` for each of `count` values.")]
            fn $resistance_ohm_n = $resistance_ohm_n_f32(
                thermistor: *const $model,
                temperature_c: *const f64,
                count: usize,
                resistance_ohm: *mut f64,
                valid: *mut u8,
                detail: *mut rko_detail,
            ) {
                $crate::sensor::kept::resistance_ohm_n(thermistor, temperature_c, count, resistance_ohm, valid, detail)
            }

            /// How much the resistance of a thermistor changes with the temperature, ohm a kelvin: the derivative of the formula itself.
            ///
            /// Given: `thermistor`, as it was filled; `temperature_c`, within its domain.
            /// Written: `slope_ohm_per_kelvin`.
            /// Statuses: `RKO_OUTSIDE_DOMAIN`, `RKO_NOT_FINITE`, `RKO_CORRUPT_MEMORY`, `RKO_NULL_POINTER`.
            fn $slope_ohm_per_kelvin = $slope_ohm_per_kelvin_f32(
                thermistor: *const $model,
                temperature_c: f64,
                slope_ohm_per_kelvin: *mut f64,
                detail: *mut rko_detail,
            ) {
                $crate::sensor::kept::slope(thermistor, temperature_c, slope_ohm_per_kelvin, detail)
            }

            #[doc = concat!(" `", stringify!($slope_ohm_per_kelvin), "` for each of `count` values.")]
            fn $slope_ohm_per_kelvin_n = $slope_ohm_per_kelvin_n_f32(
                thermistor: *const $model,
                temperature_c: *const f64,
                count: usize,
                slope_ohm_per_kelvin: *mut f64,
                valid: *mut u8,
                detail: *mut rko_detail,
            ) {
                $crate::sensor::kept::slope_n(thermistor, temperature_c, count, slope_ohm_per_kelvin, valid, detail)
            }

            /// The temperature of a thermistor, degrees Celsius.
            ///
            /// Given: `thermistor`, as it was filled; `resistance_ohm`, within the resistances at the ends of its domain.
            /// Written: `temperature_c`.
            /// Statuses: `RKO_OUTSIDE_DOMAIN`, `RKO_NOT_FINITE`, `RKO_CORRUPT_MEMORY`, `RKO_NULL_POINTER`.
            fn $temperature_c = $temperature_c_f32(
                thermistor: *const $model,
                resistance_ohm: f64,
                temperature_c: *mut f64,
                detail: *mut rko_detail,
            ) {
                $crate::sensor::kept::temperature_c(thermistor, resistance_ohm, temperature_c, detail)
            }

            #[doc = concat!(" `", stringify!($temperature_c), "` for each of `count` values.")]
            fn $temperature_c_n = $temperature_c_n_f32(
                thermistor: *const $model,
                resistance_ohm: *const f64,
                count: usize,
                temperature_c: *mut f64,
                valid: *mut u8,
                detail: *mut rko_detail,
            ) {
                $crate::sensor::kept::temperature_c_n(thermistor, resistance_ohm, count, temperature_c, valid, detail)
            }

            /// The resistance where the temperature is uncertain: every part of the estimate scaled by the slope there. This is linear, so it
            /// holds as long as the slope changes little within the uncertainty; the parameters count as exact.
            ///
            /// Given: `thermistor`, as it was filled; `temperature`, in degrees Celsius, its value within the domain.
            /// Written: `resistance`, in ohm.
            /// Statuses: `RKO_OUTSIDE_DOMAIN`, `RKO_OUT_OF_RANGE`, `RKO_NOT_FINITE`, `RKO_RESULT_OUT_OF_RANGE`, `RKO_CORRUPT_MEMORY`,
            /// `RKO_NULL_POINTER`.
            /// Source: JCGM 100 5.1.
            fn $resistance_estimate = $resistance_estimate_f32(
                thermistor: *const $model,
                temperature: *const rko_estimate,
                resistance: *mut rko_estimate,
                detail: *mut rko_detail,
            ) {
                $crate::sensor::kept::estimate(thermistor, temperature, false, resistance, detail)
            }

            /// The temperature where the resistance is uncertain: every part of the estimate divided by the slope there. This is linear, so
            /// it holds as long as the slope changes little within the uncertainty; the parameters count as exact.
            ///
            /// Given: `thermistor`, as it was filled; `resistance`, in ohm, its value within the domain.
            /// Written: `temperature`, in degrees Celsius.
            /// Statuses: `RKO_OUTSIDE_DOMAIN`, `RKO_OUT_OF_RANGE`, `RKO_NOT_FINITE`, `RKO_RESULT_OUT_OF_RANGE`, `RKO_CORRUPT_MEMORY`,
            /// `RKO_NULL_POINTER`.
            /// Source: JCGM 100 5.1.
            fn $temperature_estimate = $temperature_estimate_f32(
                thermistor: *const $model,
                resistance: *const rko_estimate,
                temperature: *mut rko_estimate,
                detail: *mut rko_detail,
            ) {
                $crate::sensor::kept::estimate(thermistor, resistance, true, temperature, detail)
            }
        }
    };
}
pub(super) use thermometer;
