//! The mean of a smooth function over an interval, by a Gauss-Legendre rule whose length fits the type of number.

use super::scalar::Real;

/// Positive nodes with their weights.
pub trait Nodes: Sized + 'static {
    /// Of ten points in double precision, of six in single.
    const NODES: &'static [[Self; 2]];
}

/// Source: computed at 40 digits.
impl Nodes for f64 {
    const NODES: &'static [[f64; 2]] = &[
        [0.148_874_338_981_631_21, 0.295_524_224_714_752_87],
        [0.433_395_394_129_247_19, 0.269_266_719_309_996_36],
        [0.679_409_568_299_024_41, 0.219_086_362_515_982_04],
        [0.865_063_366_688_984_51, 0.149_451_349_150_580_59],
        [0.973_906_528_517_171_72, 0.066_671_344_308_688_138],
    ];
}

/// Source: computed at 40 digits.
impl Nodes for f32 {
    const NODES: &'static [[f32; 2]] =
        &[[0.238619186, 0.467913935], [0.661209386, 0.360761573], [0.932469514, 0.171324492]];
}

/// The mean of `f` over plus and minus `half_width` around `x`.
pub(crate) fn average<R: Real>(x: R, half_width: R, f: impl Fn(R) -> R) -> R {
    let half = R::lit(0.5);
    R::NODES.iter().fold(R::ZERO, |sum, [node, weight]| {
        let shift = half_width * *node;
        sum + half * *weight * (f(x + shift) + f(x - shift))
    })
}
