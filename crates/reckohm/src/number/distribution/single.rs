//! The same functions in single precision.

use super::DistributionError;
use super::formula::{NormalAbove, NormalBelow, NormalQuantile, NormalQuantileAbove};
use super::formula::{TAbove, TBelow, TQuantile, TQuantileAbove, answer};

macro_rules! single_forms {
    ($($one:ident, $double:ident, $question:ident, $x:ident $([$dof:ident])?, $good:literal => $exact:literal, $bad:literal;)+) => {$(
        #[doc = concat!("[`", stringify!($double), "`](super::", stringify!($double), ") in single precision.")]
        ///
        /// # Errors
        /// As for the double form, with the ends of single precision.
        ///
        /// ```
        #[doc = concat!("use reckohm::distribution::", stringify!($one), ";")]
        #[doc = concat!("assert!((", stringify!($one), "(", $good, ")? / ", $exact, " - 1.0).abs() < 1e-6);")]
        #[doc = concat!("assert!(", stringify!($one), "(", $bad, ").is_err());")]
        /// # Ok::<(), reckohm::distribution::DistributionError>(())
        /// ```
        pub fn $one($x: f32 $(, $dof: f32)?) -> Result<f32, DistributionError> {
            answer($question$(::with($dof)?)?, $x)
        }
    )+};
}

single_forms! {
    normal_below_f32, normal_below, NormalBelow, z, "1.0" => "0.841_344_75", "f32::NAN";
    normal_above_f32, normal_above, NormalAbove, z, "9.0" => "1.128_588_4e-19", "f32::INFINITY";
    normal_quantile_f32, normal_quantile, NormalQuantile, p, "0.975" => "1.959_964", "97.5";
    normal_quantile_above_f32, normal_quantile_above, NormalQuantileAbove, p, "1e-30" => "11.464_025", "0.0";
    t_below_f32, t_below, TBelow, t [dof], "1.0, 1.0" => "0.75", "1.0, 0.0";
    t_above_f32, t_above, TAbove, t [dof], "2.776_445_1, 4.0" => "0.025", "f32::NAN, 4.0";
    t_quantile_f32, t_quantile, TQuantile, p [dof], "0.975, 9.0" => "2.262_157_2", "0.5, -1.0";
    t_quantile_above_f32, t_quantile_above, TQuantileAbove, p [dof], "0.025, 4.0" => "2.776_445_1", "1e-30, 0.1";
}
