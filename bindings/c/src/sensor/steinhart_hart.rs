//! A thermistor by its Steinhart-Hart coefficients.

use reckohm::sensor::{SteinhartHart, SteinhartHartFormula};

use super::kept::{Kept, keeps};
use super::thermometer::thermometer;
use crate::answer::one;
use crate::detail::rko_detail;
use crate::estimate::rko_estimate;
use crate::pointer::item;
use crate::twins::{twin_structs, twins};

twin_structs! {
    /// A thermistor by its Steinhart-Hart coefficients: 1/T = a + b·L + c·L² + d·L³ with L = ln(R/R_ref), R the resistance at zero
    /// power and T in kelvin. `rko_steinhart_hart_three_terms` or `rko_steinhart_hart_four_terms` fills it; its members are for
    /// reading. It may be copied, and stored by a program that is linked with the same library.
    ///
    /// Source: Steinhart and Hart, Deep-Sea Research 15 (1968) 497.
    struct rko_steinhart_hart = rko_steinhart_hart_f32 [72, 36] {
        /// a, 1/K.
        a: f64 [0, 0],
        /// b, the coefficient of L, 1/K.
        b: f64 [8, 4],
        /// c, the coefficient of L², 1/K; 0 with three terms.
        c: f64 [16, 8],
        /// d, the coefficient of L³, 1/K.
        d: f64 [24, 12],
        /// R_ref, ohm.
        reference_ohm: f64 [32, 16],
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

keeps!(rko_steinhart_hart: SteinhartHartFormula, f64, [a, b, c, d, reference_ohm]);
keeps!(rko_steinhart_hart_f32: SteinhartHartFormula, f32, [a, b, c, d, reference_ohm]);

twins! {
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
    fn rko_steinhart_hart_three_terms = rko_steinhart_hart_three_terms_f32(
        coefficients: *const f64,
        reference_ohm: f64,
        lower_c: f64,
        upper_c: f64,
        thermistor: *mut rko_steinhart_hart,
        detail: *mut rko_detail,
    ) {
        one(thermistor, 5, detail, || {
            let coefficients = *item(coefficients.cast::<[_; 3]>(), 1)?;
            Ok(Kept::of(SteinhartHart::three_terms(coefficients, reference_ohm, [lower_c, upper_c])?))
        })
    }

    /// Fills a thermistor of four terms: 1/T = a + b·L + c·L² + d·L³.
    ///
    /// Given: `coefficients`, four of them: a, b, c and d in 1/K; all else as of `rko_steinhart_hart_three_terms`.
    /// Written: `thermistor`.
    /// Statuses: as of `rko_steinhart_hart_three_terms`.
    /// Source: common practice.
    fn rko_steinhart_hart_four_terms = rko_steinhart_hart_four_terms_f32(
        coefficients: *const f64,
        reference_ohm: f64,
        lower_c: f64,
        upper_c: f64,
        thermistor: *mut rko_steinhart_hart,
        detail: *mut rko_detail,
    ) {
        one(thermistor, 5, detail, || {
            let coefficients = *item(coefficients.cast::<[_; 4]>(), 1)?;
            Ok(Kept::of(SteinhartHart::four_terms(coefficients, reference_ohm, [lower_c, upper_c])?))
        })
    }
}

thermometer! {
    rko_steinhart_hart:
    rko_steinhart_hart_with_domain = rko_steinhart_hart_with_domain_f32,
    rko_steinhart_hart_resistance_ohm = rko_steinhart_hart_resistance_ohm_f32,
    rko_steinhart_hart_resistance_ohm_n = rko_steinhart_hart_resistance_ohm_n_f32,
    rko_steinhart_hart_slope_ohm_per_kelvin = rko_steinhart_hart_slope_ohm_per_kelvin_f32,
    rko_steinhart_hart_slope_ohm_per_kelvin_n = rko_steinhart_hart_slope_ohm_per_kelvin_n_f32,
    rko_steinhart_hart_temperature_c = rko_steinhart_hart_temperature_c_f32,
    rko_steinhart_hart_temperature_c_n = rko_steinhart_hart_temperature_c_n_f32,
    rko_steinhart_hart_resistance_estimate = rko_steinhart_hart_resistance_estimate_f32,
    rko_steinhart_hart_temperature_estimate = rko_steinhart_hart_temperature_estimate_f32,
}
