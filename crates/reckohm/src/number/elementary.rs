//! The one gate to logarithm, exponential and square root. Everything in this library goes through here, so that a result
//! has the same bits on every machine; libraries of the platform differ in the last bit, and from one version to the next.
//!
//! The functions are free of branches and tables: ranges are told apart by selects, exponents by integer operations on
//! the bits, so that a loop over them is compiled to vector instructions of any width, with the same bits again. No fused
//! multiply-add is used. A NaN gives a NaN whose bits mean nothing; no public function of this library lets one in.
//!
//! - `ln`: x = 2ᵏ·(1 + f) with 1 + f in [√½, √2), s = f/(2 + f) and ln(1 + f) = 2·artanh(s) by an odd polynomial.
//! - `exp`: x = k·ln 2 + r with |r| ≤ ½·ln 2, a polynomial for exp(r) whose leading 1 + r is added without error, and 2ᵏ
//!   in two factors, so that a subnormal result is rounded once.
//!
//! The coefficients are minimax fits made for this file (Remez, 50 digits); the splits of ln 2 leave the product with k
//! exact.
//!
//! How exact: double precision against exact values in `tests/allowed_errors.csv`. Single precision was tried on every
//! argument there is; `cargo run --release -p reckohm-tests --bin sweep_f32` does it again in a few minutes, and printed:
//!
//! ```text
//! ln_f32: 4294967296 arguments, worst 0.834788 units in the last place at 1.4054595e0
//! exp_f32: 4294967296 arguments, worst 0.764437 units in the last place at -8.771553e1
//! ```

use core::f64::consts::LOG2_E;

use super::polynomial::polynomial;

/// ln 2 in two parts; the first has 42 bits.
const LN_2_UPPER: f64 = 0.693_147_180_559_890_3;
const LN_2_LOWER: f64 = 5.497_923_018_708_371e-14;
/// ln 2 in two parts; the first has 15 bits.
const LN_2_UPPER_F32: f32 = 0.693_145_75;
const LN_2_LOWER_F32: f32 = 1.428_606_8e-6;

/// (2·artanh(s) − 2s)/s³ in powers of s², relative error of the logarithm 2^−57.6.
const ARTANH: [f64; 7] = [
    0.666_666_666_666_667,
    0.399_999_999_998_984_5,
    0.285_714_286_263_982_4,
    0.222_222_110_729_480_67,
    0.181_828_932_133_448_25,
    0.153_315_970_915_109_37,
    0.146_178_714_167_527_78,
];
/// The same in single precision, 2^−35.8.
const ARTANH_F32: [f32; 4] = [0.666_666_7, 0.400_001_23, 0.285_507_38, 0.233_323_83];

/// (exp(r) − 1 − r)/r² in powers of r, absolute error of the exponential 2^−62.
const EXPONENTIAL: [f64; 11] = [
    0.5,
    0.166_666_666_666_666_7,
    0.041_666_666_666_666_685,
    0.008_333_333_333_326_082,
    0.001_388_888_888_887_429,
    0.000_198_412_698_750_037_73,
    2.480_158_734_759_154_5e-5,
    2.755_725_516_835_245_6e-6,
    2.755_725_267_215_910_5e-7,
    2.510_531_333_691_690_6e-8,
    2.092_166_981_933_587_2e-9,
];
/// The same in single precision.
const EXPONENTIAL_F32: [f32; 6] = [0.5, 0.166_666_67, 0.041_666_463, 0.008_333_286, 0.001_393_373_2, 0.000_199_077_07];

macro_rules! elementary {
    ($ln:ident, $exp:ident, $float:ident, $bits:ident, $artanh:ident, $exponential:ident, $upper:ident, $lower:ident,
     $log2_e:expr, $lowest:literal, $highest:literal) => {
        /// Natural logarithm, within 1 unit in the last place: −∞ at 0, NaN below, +∞ at +∞.
        ///
        /// ```
        #[doc = concat!("use reckohm::number::elementary::", stringify!($ln), ";")]
        #[doc = concat!("assert_eq!(", stringify!($ln), "(1.0), 0.0);")]
        #[doc = concat!("assert!((", stringify!($ln), "(10.0) - 2.302_585).abs() < 1e-6);")]
        /// ```
        #[inline(always)]
        pub fn $ln(x: $float) -> $float {
            const FRACTION_BITS: u32 = $float::MANTISSA_DIGITS - 1;
            const FRACTION: $bits = (1 << FRACTION_BITS) - 1;
            const BIAS: $bits = $float::MAX_EXP as $bits - 1;
            // An integer below 2^FRACTION_BITS put into the fraction of this power of two is that number above it.
            const COUNTER: $float = ((1 as $bits) << FRACTION_BITS) as $float;
            const ROOT_HALF: $bits = $float::to_bits(core::$float::consts::FRAC_1_SQRT_2);

            // Subnormals are brought up first; the power of two is taken off with the exponent.
            let tiny = x < $float::MIN_POSITIVE;
            let bits = (if tiny { x * (2.0 * COUNTER) } else { x }).to_bits();
            let lift = if tiny { (FRACTION_BITS + 1) as $float } else { 0.0 };
            // The exponent steps up where the fraction passes √2, that is, √½ of the next power of two.
            let shifted = bits.wrapping_add(((BIAS) << FRACTION_BITS).wrapping_sub(ROOT_HALF));
            let exponent = (shifted >> FRACTION_BITS) & (2 * BIAS + 1);
            let k = $float::from_bits(COUNTER.to_bits() | exponent) - (COUNTER + BIAS as $float) - lift;
            let f = $float::from_bits((shifted & FRACTION).wrapping_add(ROOT_HALF)) - 1.0;

            let s = f / (2.0 + f);
            let z = s * s;
            let series = polynomial(&$artanh, z);
            let half_square = 0.5 * f * f;
            // 2·artanh(s) = f − (f²/2 − s·(f²/2 + s²·series)), small parts first.
            let result = k * $upper - ((half_square - (s * (half_square + z * series) + k * $lower)) - f);

            let result = if x < $float::INFINITY { result } else { x };
            let result = if x == 0.0 { $float::NEG_INFINITY } else { result };
            if x < 0.0 { $float::NAN } else { result }
        }

        /// Exponential, within 1 unit in the last place, subnormal results included: 0 far below, +∞ far above.
        ///
        /// ```
        #[doc = concat!("use reckohm::number::elementary::", stringify!($exp), ";")]
        #[doc = concat!("assert_eq!(", stringify!($exp), "(0.0), 1.0);")]
        #[doc = concat!("assert!((", stringify!($exp), "(1.0) - 2.718_282).abs() < 1e-6);")]
        /// ```
        #[inline(always)]
        pub fn $exp(x: $float) -> $float {
            const FRACTION_BITS: u32 = $float::MANTISSA_DIGITS - 1;
            const BIAS: $bits = $float::MAX_EXP as $bits - 1;
            // Adding it rounds to a whole number, which then stands in the lowest bits.
            const ROUNDER: $float = ((3 as $bits) << (FRACTION_BITS - 1)) as $float;
            // Makes k positive before it is halved.
            const LIFT: $bits = 2 * BIAS + 2;

            // Beyond these ends the result is 0 or infinite already.
            let inside = if x < $lowest { $lowest } else { x };
            let inside = if inside > $highest { $highest } else { inside };
            let rounded = inside * $log2_e + ROUNDER;
            let k = rounded - ROUNDER;
            let lifted = rounded.to_bits().wrapping_sub(ROUNDER.to_bits()).wrapping_add(LIFT);

            let upper = inside - k * $upper;
            let lower = k * $lower;
            let r = upper - lower;
            let series = polynomial(&$exponential, r);
            let lead = 1.0 + upper;
            let lost = upper - (lead - 1.0);
            let power = lead + (lost + (r * r * series - lower));

            let half = lifted >> 1;
            let first = $float::from_bits((half.wrapping_add(BIAS).wrapping_sub(LIFT / 2)) << FRACTION_BITS);
            let second = $float::from_bits(
                (lifted.wrapping_sub(half).wrapping_add(BIAS).wrapping_sub(LIFT / 2)) << FRACTION_BITS,
            );
            power * first * second
        }
    };
}

elementary!(ln, exp, f64, u64, ARTANH, EXPONENTIAL, LN_2_UPPER, LN_2_LOWER, LOG2_E, -746.0, 710.0);
elementary!(
    ln_f32,
    exp_f32,
    f32,
    u32,
    ARTANH_F32,
    EXPONENTIAL_F32,
    LN_2_UPPER_F32,
    LN_2_LOWER_F32,
    core::f32::consts::LOG2_E,
    -104.0,
    89.0
);

/// Square root, exactly rounded: from the hardware with the feature `std`, else in software, with the same bits.
///
/// ```
/// use reckohm::number::elementary::sqrt;
/// assert_eq!(sqrt(2.25), 1.5);
/// ```
#[inline(always)]
pub fn sqrt(x: f64) -> f64 {
    #[cfg(feature = "std")]
    {
        x.sqrt()
    }
    #[cfg(not(feature = "std"))]
    {
        libm::sqrt(x)
    }
}

/// Square root in single precision, exactly rounded.
///
/// ```
/// use reckohm::number::elementary::sqrt_f32;
/// assert_eq!(sqrt_f32(2.25), 1.5);
/// ```
#[inline(always)]
pub fn sqrt_f32(x: f32) -> f32 {
    #[cfg(feature = "std")]
    {
        x.sqrt()
    }
    #[cfg(not(feature = "std"))]
    {
        libm::sqrtf(x)
    }
}
