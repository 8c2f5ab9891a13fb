//! A formula for each element of arrays: one plain loop over the same formula that a single number goes through.
//!
//! A formula that is free of branches and tables ([`elementary`](super::elementary) is) becomes vector instructions. With
//! the feature `batch` the width is chosen when the program runs: 512 or 256 bits on x86-64 that has them, else 128; without
//! the feature the loop is the one that the compiler makes for its target. No result depends on the width: every element
//! goes through the same operations in the same order, and none is fused.

use super::scalar::Real;

/// A formula of `N` numbers, to be evaluated for each element of arrays. Mark `of` as `#[inline(always)]`: what is not
/// inlined is not widened.
pub trait PerElement<R, const N: usize>: Copy {
    /// The result for one element.
    fn of(self, inputs: [R; N]) -> R;
}

/// Writes the formula's result for each element, as many as the shortest of the slices has.
///
/// ```
/// use reckohm::batch::{PerElement, map};
///
/// #[derive(Clone, Copy)]
/// struct Parallel;
///
/// impl PerElement<f64, 2> for Parallel {
///     #[inline(always)]
///     fn of(self, [a, b]: [f64; 2]) -> f64 {
///         a * b / (a + b)
///     }
/// }
///
/// let mut ohm = [0.0; 3];
/// map(Parallel, [&[100.0, 200.0, 300.0], &[300.0, 600.0, 600.0]], &mut ohm);
/// assert_eq!(ohm, [75.0, 150.0, 200.0]);
/// ```
pub fn map<F: PerElement<R, N>, R: Real, const N: usize>(formula: F, inputs: [&[R]; N], out: &mut [R]) {
    #[cfg(feature = "batch")]
    width::map(formula, inputs, out);
    #[cfg(not(feature = "batch"))]
    plain(formula, inputs, out);
}

/// A formula of `N` numbers with `M` results: what belongs together is quicker together.
pub(crate) trait ManyPerElement<R, const N: usize, const M: usize>: Copy {
    /// The results for one element.
    fn of(self, inputs: [R; N]) -> [R; M];
}

/// Writes the formula's results for each element, as many as the shortest of the slices has.
pub(crate) fn map_many<F: ManyPerElement<R, N, M>, R: Real, const N: usize, const M: usize>(
    formula: F,
    inputs: [&[R]; N],
    outs: [&mut [R]; M],
) {
    #[cfg(feature = "batch")]
    width::map_many(formula, inputs, outs);
    #[cfg(not(feature = "batch"))]
    plain_many(formula, inputs, outs);
}

/// Whether a formula that gives 0 for what it refuses and anything else for what it takes refuses none of the elements.
///
/// ```
/// use reckohm::batch::{PerElement, takes_all};
///
/// #[derive(Clone, Copy)]
/// struct Positive;
///
/// impl PerElement<f64, 1> for Positive {
///     #[inline(always)]
///     fn of(self, [x]: [f64; 1]) -> f64 {
///         if x > 0.0 { 1.0 } else { 0.0 }
///     }
/// }
///
/// assert!(takes_all(Positive, [&[1.0, 2.0]]));
/// assert!(!takes_all(Positive, [&[1.0, f64::NAN]]));
/// ```
pub fn takes_all<F: PerElement<R, N>, R: Real, const N: usize>(formula: F, inputs: [&[R]; N]) -> bool {
    #[cfg(feature = "batch")]
    {
        width::takes_all(formula, inputs)
    }
    #[cfg(not(feature = "batch"))]
    {
        plain_takes_all(formula, inputs)
    }
}

#[inline(always)]
fn plain<F: PerElement<R, N>, R: Real, const N: usize>(formula: F, inputs: [&[R]; N], out: &mut [R]) {
    let count = inputs.iter().fold(out.len(), |count, input| count.min(input.len()));
    let inputs = inputs.map(|input| input.get(..count).unwrap_or_default());
    for (index, place) in out.iter_mut().take(count).enumerate() {
        *place = formula.of(inputs.map(|input| input.get(index).copied().unwrap_or_default()));
    }
}

#[inline(always)]
fn plain_many<F: ManyPerElement<R, N, M>, R: Real, const N: usize, const M: usize>(
    formula: F,
    inputs: [&[R]; N],
    outs: [&mut [R]; M],
) {
    let count = inputs.iter().fold(usize::MAX, |count, input| count.min(input.len()));
    let count = outs.iter().fold(count, |count, out| count.min(out.len()));
    let inputs = inputs.map(|input| input.get(..count).unwrap_or_default());
    let mut outs = outs.map(|out| out.get_mut(..count).unwrap_or_default());
    for index in 0..count {
        let results = formula.of(inputs.map(|input| input.get(index).copied().unwrap_or_default()));
        for (out, result) in outs.iter_mut().zip(results) {
            if let Some(place) = out.get_mut(index) {
                *place = result;
            }
        }
    }
}

#[inline(always)]
fn plain_takes_all<F: PerElement<R, N>, R: Real, const N: usize>(formula: F, inputs: [&[R]; N]) -> bool {
    let count = inputs.iter().fold(usize::MAX, |count, input| count.min(input.len()));
    let inputs = inputs.map(|input| input.get(..count).unwrap_or_default());
    // No early end and a whole number to keep, or the loop would not be widened.
    let mut refused = 0_u32;
    for index in 0..count {
        let taken = formula.of(inputs.map(|input| input.get(index).copied().unwrap_or_default()));
        refused |= u32::from(taken == R::ZERO);
    }
    refused == 0
}

#[cfg(feature = "batch")]
pub use width::{VectorBits, limit_vector_bits};

#[cfg(feature = "batch")]
mod width {
    use core::sync::atomic::{AtomicU8, Ordering};

    use multiversion::multiversion;
    use multiversion::target::match_target;

    use super::{ManyPerElement, PerElement, plain, plain_many, plain_takes_all};
    use crate::number::scalar::Real;

    /// How wide vector instructions may be at most.
    #[derive(Clone, Copy, Debug, PartialEq, Eq)]
    #[repr(u8)]
    pub enum VectorBits {
        /// The two numbers of type `f64` that every x86-64 has.
        Upto128 = 1,
        /// AVX2.
        Upto256 = 2,
        /// AVX-512, where the processor has it.
        Upto512 = 3,
    }

    /// The only state there is, and no result depends on it.
    static LIMIT: AtomicU8 = AtomicU8::new(VectorBits::Upto512 as u8);

    /// Limits the width of the loops in this process from now on, to measure what it brings, or to show that it changes
    /// no bit.
    ///
    /// ```
    /// use reckohm::batch::{VectorBits, limit_vector_bits};
    /// limit_vector_bits(VectorBits::Upto256);
    /// limit_vector_bits(VectorBits::Upto512);
    /// ```
    pub fn limit_vector_bits(bits: VectorBits) {
        LIMIT.store(bits as u8, Ordering::Relaxed);
    }

    fn limit() -> VectorBits {
        match LIMIT.load(Ordering::Relaxed) {
            1 => VectorBits::Upto128,
            2 => VectorBits::Upto256,
            _ => VectorBits::Upto512,
        }
    }

    #[inline]
    pub(super) fn map<F: PerElement<R, N>, R: Real, const N: usize>(formula: F, inputs: [&[R]; N], out: &mut [R]) {
        match limit() {
            VectorBits::Upto128 => map_128(formula, inputs, out),
            VectorBits::Upto256 => map_256(formula, inputs, out),
            VectorBits::Upto512 => map_512(formula, inputs, out),
        }
    }

    #[inline]
    pub(super) fn map_many<F: ManyPerElement<R, N, M>, R: Real, const N: usize, const M: usize>(
        formula: F,
        inputs: [&[R]; N],
        outs: [&mut [R]; M],
    ) {
        match limit() {
            VectorBits::Upto128 => map_many_128(formula, inputs, outs),
            VectorBits::Upto256 => map_many_256(formula, inputs, outs),
            VectorBits::Upto512 => map_many_512(formula, inputs, outs),
        }
    }

    #[inline]
    pub(super) fn takes_all<F: PerElement<R, N>, R: Real, const N: usize>(formula: F, inputs: [&[R]; N]) -> bool {
        match limit() {
            VectorBits::Upto128 => takes_all_128(formula, inputs),
            VectorBits::Upto256 => takes_all_256(formula, inputs),
            VectorBits::Upto512 => takes_all_512(formula, inputs),
        }
    }

    // Each width is compiled once: a processor that lacks one goes on to the next narrower.

    #[multiversion(targets("x86_64+avx512f+avx512dq+avx512vl"))]
    fn map_512<F: PerElement<R, N>, R: Real, const N: usize>(formula: F, inputs: [&[R]; N], out: &mut [R]) {
        match_target! {
            "x86_64+avx512f+avx512dq+avx512vl" => plain(formula, inputs, out),
            _ => map_256(formula, inputs, out),
        }
    }

    #[multiversion(targets("x86_64+avx2"))]
    fn map_256<F: PerElement<R, N>, R: Real, const N: usize>(formula: F, inputs: [&[R]; N], out: &mut [R]) {
        match_target! {
            "x86_64+avx2" => plain(formula, inputs, out),
            _ => map_128(formula, inputs, out),
        }
    }

    #[inline(never)]
    fn map_128<F: PerElement<R, N>, R: Real, const N: usize>(formula: F, inputs: [&[R]; N], out: &mut [R]) {
        plain(formula, inputs, out);
    }

    #[multiversion(targets("x86_64+avx512f+avx512dq+avx512vl"))]
    fn map_many_512<F: ManyPerElement<R, N, M>, R: Real, const N: usize, const M: usize>(
        formula: F,
        inputs: [&[R]; N],
        outs: [&mut [R]; M],
    ) {
        match_target! {
            "x86_64+avx512f+avx512dq+avx512vl" => plain_many(formula, inputs, outs),
            _ => map_many_256(formula, inputs, outs),
        }
    }

    #[multiversion(targets("x86_64+avx2"))]
    fn map_many_256<F: ManyPerElement<R, N, M>, R: Real, const N: usize, const M: usize>(
        formula: F,
        inputs: [&[R]; N],
        outs: [&mut [R]; M],
    ) {
        match_target! {
            "x86_64+avx2" => plain_many(formula, inputs, outs),
            _ => map_many_128(formula, inputs, outs),
        }
    }

    #[inline(never)]
    fn map_many_128<F: ManyPerElement<R, N, M>, R: Real, const N: usize, const M: usize>(
        formula: F,
        inputs: [&[R]; N],
        outs: [&mut [R]; M],
    ) {
        plain_many(formula, inputs, outs);
    }

    #[multiversion(targets("x86_64+avx512f+avx512dq+avx512vl"))]
    fn takes_all_512<F: PerElement<R, N>, R: Real, const N: usize>(formula: F, inputs: [&[R]; N]) -> bool {
        match_target! {
            "x86_64+avx512f+avx512dq+avx512vl" => plain_takes_all(formula, inputs),
            _ => takes_all_256(formula, inputs),
        }
    }

    #[multiversion(targets("x86_64+avx2"))]
    fn takes_all_256<F: PerElement<R, N>, R: Real, const N: usize>(formula: F, inputs: [&[R]; N]) -> bool {
        match_target! {
            "x86_64+avx2" => plain_takes_all(formula, inputs),
            _ => takes_all_128(formula, inputs),
        }
    }

    #[inline(never)]
    fn takes_all_128<F: PerElement<R, N>, R: Real, const N: usize>(formula: F, inputs: [&[R]; N]) -> bool {
        plain_takes_all(formula, inputs)
    }
}
