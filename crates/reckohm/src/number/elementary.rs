//! The one gate to logarithm, exponential and square root. Everything in this library goes through here, so that a result
//! has the same bits on every machine.

/// Natural logarithm.
#[inline]
pub fn ln(x: f64) -> f64 {
    libm::log(x)
}

/// Natural logarithm in single precision.
#[inline]
pub fn ln_f32(x: f32) -> f32 {
    libm::logf(x)
}

/// Exponential.
#[inline]
pub fn exp(x: f64) -> f64 {
    libm::exp(x)
}

/// Exponential in single precision.
#[inline]
pub fn exp_f32(x: f32) -> f32 {
    libm::expf(x)
}

/// Square root, exactly rounded: from the hardware with the feature `std`, else in software, with the same bits.
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
