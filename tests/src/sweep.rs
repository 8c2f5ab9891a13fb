//! The single-precision logarithm and exponential against double precision, argument by argument.
//!
//! The reference is libm's function in double precision, whose own error is some 1e-9 of a unit in the last place of
//! single precision: good enough to judge by.

use reckohm::number::elementary::{exp_f32, ln_f32};

/// The worst that was seen of one function.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Worst {
    /// The error in units in the last place of the exact result.
    pub units: f64,
    /// Where.
    pub argument: f32,
    /// How many arguments were judged.
    pub tried: u64,
}

impl Worst {
    /// The worse of the two, and the arguments of both.
    pub fn with(self, other: Worst) -> Worst {
        let worse = if other.units > self.units { other } else { self };
        Worst { tried: self.tried + other.tried, ..worse }
    }

    fn take(&mut self, argument: f32, units: f64) {
        self.tried += 1;
        // A NaN is worse than anything.
        if units > self.units || units.is_nan() {
            *self = Worst { units: if units.is_nan() { f64::INFINITY } else { units }, argument, ..*self };
        }
    }
}

/// The worst error of logarithm and exponential over the arguments whose bits are in this range, each `stride`-th.
pub fn sweep(bits: std::ops::RangeInclusive<u32>, stride: usize) -> [Worst; 2] {
    let mut worst = [Worst::default(); 2];
    let [logarithm, exponential] = &mut worst;
    for bits in bits.step_by(stride) {
        let x = f32::from_bits(bits);
        logarithm.take(x, units_in_last_place(ln_f32(x), libm::log(f64::from(x))));
        exponential.take(x, units_in_last_place(exp_f32(x), libm::exp(f64::from(x))));
    }
    worst
}

/// The distance of a single-precision result from the exact one, in units in the last place of the exact one, subnormal
/// ones included. 0 where both are NaN or the same infinity; an infinite result counts as the first power of two that is
/// out of range.
pub fn units_in_last_place(result: f32, exact: f64) -> f64 {
    const BEYOND: f64 = 2.0 * (1_u128 << 127) as f64;
    if result.is_nan() && exact.is_nan() {
        return 0.0;
    }
    // From half a unit beyond the largest number on, infinity is the right answer.
    if f64::from(result) == exact
        || result.is_infinite() && exact.abs() >= BEYOND && result.is_sign_negative() == (exact < 0.0)
    {
        return 0.0;
    }
    let result = if result.is_infinite() { BEYOND.copysign(f64::from(result)) } else { f64::from(result) };
    let exponent = ((exact.to_bits() >> 52) & 0x7ff) as i32 - 1023;
    let unit = 2.0_f64.powi(exponent.clamp(-126, 127) - 23);
    (result - exact).abs() / unit
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn units_are_those_of_the_exact_result() {
        assert_eq!(units_in_last_place(1.0, 1.0 + f64::from(f32::EPSILON)), 1.0);
        assert_eq!(units_in_last_place(1.0, 1.0 - f64::from(f32::EPSILON)), 2.0);
        assert_eq!(units_in_last_place(0.0, f64::from(f32::from_bits(3))), 3.0);
        assert_eq!(units_in_last_place(f32::INFINITY, 1e300), 0.0);
        assert_eq!(units_in_last_place(f32::INFINITY, f64::from(f32::MAX)), 1.0);
        assert!(units_in_last_place(f32::NAN, 1.0).is_nan());
        assert!(units_in_last_place(f32::NEG_INFINITY, 1e300) > 1e6);
        assert!(units_in_last_place(f32::MAX, 1e300) > 1e6);
    }
}
