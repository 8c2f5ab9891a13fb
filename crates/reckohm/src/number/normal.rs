//! The standard normal distribution: density, both tails, quantile, and the first two repeated integrals of the upper
//! tail. Unchecked forms for the rest of the core, free of tables and of loops whose length depends on the argument, so
//! that a loop over them is compiled to vector instructions. The quantile has a form with a branch besides, quicker alone.
//!
//! With φ the density and Q the upper tail, Mills' ratio R = Q/φ and likewise ∫Q/φ = 1 − z·R and ∫∫Q/φ = ((1 + z²)·R − z)/2
//! fall as 1/z, 1/z² and 1/z³ far out. Times (z + 1), (z + 1)², (z + 1)³ they are smooth and of the size of one from 0 to
//! infinity, and a polynomial of t = (z − 4)/(z + 4) gives each to full relative accuracy without any cancellation.
//!
//! A quantile is a simple number, of which next to nothing is rounded away, and a ratio of polynomials for the rest: near
//! the centre 2q with q = ½ − p, in the tail r − 1, where r = √(−2·ln p) is the place at which φ(r)·√(2π) is p. The two
//! meet at p = 0.1.
//!
//! All coefficients are interpolations at Chebyshev nodes, with 60 digits, made for this file by
//! `tests/oracles/normal_series.py`.
//! Source: Abramowitz and Stegun, Handbook of Mathematical Functions, 26.2 and 7.2.

use super::polynomial::{polynomial, polynomial_at_each};
use super::scalar::{Real, by_type};

/// What the formulas here know of a type of number.
pub trait NormalSeries: Sized + 'static {
    /// Beyond it every tail is below the smallest number of the type.
    const FARTHEST: Self;
    /// R·(z + 1) in powers of t; the constant is such that the tail at 0 is one half, exactly.
    const RATIO: &'static [Self];
    /// ∫Q/φ·(z + 1)² in powers of t.
    const FIRST: &'static [Self];
    /// ∫∫Q/φ·(z + 1)³ in powers of t.
    const SECOND: &'static [Self];
    /// z/q − 2 as a ratio of polynomials of 0.16 − q², for q = ½ − p up to 0.4.
    const NEAR: [&'static [Self]; 2];
    /// z + 1 − r as a ratio of polynomials of r − 2, for r = √(−2·ln p) from p = 0.1 to the smallest number of the type.
    const FAR: [&'static [Self]; 2];
    /// 1/(2n(2n + 1)), 1/(2n) and 1/(2n + 1) for each term of the series of an averaged tail, n from 1 on.
    const AVERAGED: &'static [[Self; 3]];
}

/// 1/√(2π).
const DENSITY_AT_ZERO: f64 = 0.398_942_280_401_432_677_939_946;

/// The density φ(z).
#[inline(always)]
pub(crate) fn density<R: Real>(z: R) -> R {
    let z = z.magnitude().smaller(R::FARTHEST);
    // z² in two pieces, of which the first is exact: rounded as a whole, an error of 1e-16 in z² = 1400 would be one of
    // 1e-13 in the result. The rest is small enough for a few terms of the exponential's series.
    let upper = z.upper_half();
    let rest = R::lit(-0.5) * (z - upper) * (z + upper);
    let of_rest =
        R::ONE + rest * (R::ONE + rest * (R::lit(0.5) + rest * (R::lit(1.0 / 6.0) + rest * R::lit(1.0 / 24.0))));
    // Far out it is 0, and not by an underflow, at which processors stumble: a loop would take twice as long there.
    let exponent = R::lit(-0.5) * upper * upper;
    let nothing = exponent < by_type(-104.5, -746.0);
    let result = R::lit(DENSITY_AT_ZERO) * R::select(nothing, R::ZERO, exponent).exponential() * of_rest;
    R::select(nothing, R::ZERO, result)
}

/// A place z ≥ 0 with what the ratios share.
#[derive(Clone, Copy)]
struct Place<R> {
    /// (z − 4)/(z + 4).
    t: R,
    /// 1/(z + 1).
    fall: R,
}

impl<R: Real> Place<R> {
    #[inline(always)]
    fn at(z: R) -> Place<R> {
        Place { t: (z - R::lit(4.0)) / (z + R::lit(4.0)), fall: R::ONE / (z + R::ONE) }
    }

    /// Q/φ.
    #[inline(always)]
    fn ratio(self) -> R {
        polynomial(R::RATIO, self.t) * self.fall
    }

    /// ∫∫Q/φ.
    #[inline(always)]
    fn second(self) -> R {
        polynomial(R::SECOND, self.t) * (self.fall * self.fall) * self.fall
    }
}

/// Mills' ratio Q/φ at z ≥ 0.
#[inline(always)]
pub(crate) fn mills_ratio<R: Real>(z: R) -> R {
    Place::at(z.smaller(R::FARTHEST)).ratio()
}

/// The probability of more than z, to full relative accuracy in its tail.
#[inline(always)]
pub(crate) fn above<R: Real>(z: R) -> R {
    let tail = density(z) * mills_ratio(z.magnitude());
    R::select(z < R::ZERO, R::ONE - tail, tail)
}

/// The probability of less than z.
#[inline(always)]
pub(crate) fn below<R: Real>(z: R) -> R {
    above(-z)
}

/// The integral of the upper tail from each z ≥ 0 to infinity, φ(z) − z·Q(z): the mean excess over z.
#[inline(always)]
pub(crate) fn first_integral<R: Real, const N: usize>(z: [R; N]) -> [R; N] {
    let z = z.map(|z| z.smaller(R::FARTHEST));
    let places = z.map(Place::at);
    let mut results = polynomial_at_each(R::FIRST, places.map(|place| place.t));
    for ((result, z), Place { fall, .. }) in results.iter_mut().zip(z).zip(places) {
        *result = density(z) * (*result * (fall * fall));
    }
    results
}

/// The integral of the first integral from z ≥ 0 to infinity, ((1 + z²)·Q(z) − z·φ(z))/2.
#[inline(always)]
pub(crate) fn second_integral<R: Real>(z: R) -> R {
    let z = z.smaller(R::FARTHEST);
    density(z) * Place::at(z).second()
}

/// The mean of the tail over ±h around z ≥ 0, for h·(1 + z) up to 0.7: Q(z) + φ(z)·Σ h²ⁿ·He₂ₙ₋₁(z)/(2n + 1)!, n from 1
/// on, the Taylor series with Hermite polynomials He (Abramowitz and Stegun 22.11.8, 26.2.31), of which
/// w = hᵏ·Heₖ/k! is carried.
#[inline(always)]
pub(crate) fn above_averaged<R: Real>(z: R, h: R) -> R {
    let (hz, hh) = (h * z, h * h);
    let (mut before, mut w) = (R::ONE, hz);
    let mut sum = R::ZERO;
    for [term, even, odd] in R::AVERAGED {
        sum += w * *term;
        before = (hz * w - hh * before) * *even;
        (before, w) = (w, before);
        before = (hz * w - hh * before) * *odd;
        (before, w) = (w, before);
    }
    density(z) * (mills_ratio(z) + h * sum)
}

/// The z that is exceeded with probability p, for 0 < p < 1.
#[inline(always)]
pub(crate) fn quantile_above<R: Real>(p: R) -> R {
    let tail = smaller_tail(p);
    let distance = if is_central(tail) { Distance::near_centre(tail) } else { Distance::far_out(tail) };
    distance.signed(p)
}

/// [`quantile_above`] with both cases computed and one selected, so that a loop over it is free of branches.
#[inline(always)]
pub(crate) fn any_quantile_above<R: Real>(p: R) -> R {
    let tail = smaller_tail(p);
    let (near, far) = (Distance::near_centre(tail), Distance::far_out(tail));
    let central = is_central(tail);
    let distance = Distance {
        most: R::select(central, near.most, far.most),
        top: R::select(central, near.top, far.top),
        bottom: R::select(central, near.bottom, far.bottom),
    };
    distance.signed(p)
}

#[inline(always)]
fn smaller_tail<R: Real>(p: R) -> R {
    R::select(p > R::lit(0.5), R::ONE - p, p)
}

#[inline(always)]
fn is_central<R: Real>(tail: R) -> bool {
    tail > R::lit(0.1)
}

/// How far from the centre a tail begins: what is simple of it, and a ratio for the rest. Not divided yet, so that a loop
/// with both cases has one division.
struct Distance<R> {
    most: R,
    top: R,
    bottom: R,
}

impl<R: Real> Distance<R> {
    /// The tail's distance from one half is exact next to one half, so that a small z has all its digits.
    #[inline(always)]
    fn near_centre(tail: R) -> Distance<R> {
        let q = R::lit(0.5) - tail;
        let x = R::lit(0.16) - q * q;
        let [top, bottom] = R::NEAR;
        Distance { most: q + q, top: q * polynomial(top, x), bottom: polynomial(bottom, x) }
    }

    /// Both subtractions from r are exact, and the addition again: r is 2.1 or more.
    #[inline(always)]
    fn far_out(tail: R) -> Distance<R> {
        let r = (R::lit(-2.0) * tail.natural_log()).square_root();
        let x = r - R::lit(2.0);
        let [top, bottom] = R::FAR;
        Distance { most: x + R::ONE, top: polynomial(top, x), bottom: polynomial(bottom, x) }
    }

    #[inline(always)]
    fn signed(self, p: R) -> R {
        let z = self.most + self.top / self.bottom;
        R::select(p > R::lit(0.5), -z, z)
    }
}

impl NormalSeries for f64 {
    const FARTHEST: f64 = 40.0;
    /// Relative error 2.2e-18.
    const RATIO: &'static [f64] = &[
        1.1832619145678032,
        -0.2423996705218073,
        0.03509188023474879,
        0.07169048120135199,
        -0.08070800967910208,
        0.044959129079742866,
        -0.012539103619132748,
        -0.0007159509440900037,
        0.0017418487568626208,
        -0.00023670144360946117,
        -0.00022021544114358193,
        5.326539299682329e-05,
        3.415812556964133e-05,
        -8.601063508249684e-06,
        -6.551008720979987e-06,
        1.0084564568212721e-06,
        1.385385555354974e-06,
        1.2576543437552085e-08,
        -2.787286168943164e-07,
        -5.9118868942483805e-08,
        4.279862128690463e-08,
        2.1119480985059662e-08,
        -2.081136854535032e-09,
        -3.395960921761565e-09,
        -6.570796138641301e-10,
    ];
    /// Relative error 2.7e-18.
    const FIRST: &'static [f64] = &[
        1.334761708643933,
        -0.3468644384456948,
        -0.17268170834609736,
        0.3535472764761413,
        -0.22126150638039832,
        0.027117664484217242,
        0.056082893345544,
        -0.03889109205641897,
        0.004677620803947842,
        0.005832613443615438,
        -0.0019358219977034141,
        -0.0008822510436469925,
        0.0004262403041838683,
        0.00017448909471011963,
        -8.087623065698764e-05,
        -4.348833932303993e-05,
        1.248661813502104e-05,
        1.1577821226687794e-05,
        -7.694794385513592e-07,
        -2.841006812924774e-06,
        -4.3946067615843445e-07,
        5.527538542425751e-07,
        2.1416942032108584e-07,
        -6.433451786208832e-08,
        -4.516338517796386e-08,
        1.140247984335461e-09,
        3.1607903756422548e-09,
    ];
    /// Relative error 1.2e-18.
    const SECOND: &'static [f64] = &[
        1.4431568456582125,
        -0.2822964255350961,
        -0.612339789337559,
        0.697948747500448,
        -0.17539326731031474,
        -0.227035350023274,
        0.20864213770982296,
        -0.02152159455897085,
        -0.058093542443262626,
        0.025460177959613525,
        0.00851967736963501,
        -0.007323408994771835,
        -0.001462925112147676,
        0.0017708822728787963,
        0.0004068390859943754,
        -0.0003996626948826179,
        -0.00014656213230253694,
        7.7701168892973e-05,
        5.1618933660339376e-05,
        -8.938309673952168e-06,
        -1.566249914347498e-05,
        -1.752586770684349e-06,
        3.6659700794506454e-06,
        1.495933027922128e-06,
        -4.966488427442022e-07,
        -4.74998970908972e-07,
        -2.263701405318265e-08,
        6.856035642195924e-08,
        1.7743738953587448e-08,
    ];
    /// Relative error 2.8e-18.
    const NEAR: [&'static [f64]; 2] = [
        &[
            1.2038789138615011,
            33.14714006514147,
            318.7275978764748,
            1172.4903363202584,
            462.19751118461,
            -5561.911541583289,
            -8319.68113003187,
            -2312.717255669271,
        ],
        &[
            1.0,
            34.00795132989591,
            447.7726452096011,
            2881.3377867309,
            9419.941027396253,
            14764.658626168088,
            9321.14609016506,
            1500.509028535662,
        ],
    ];
    /// Relative error 6.2e-18.
    const FAR: [&'static [f64]; 2] = [
        &[
            0.10151962849875165,
            0.43523925683695946,
            0.5301917616763464,
            0.30834042770827613,
            0.10116707379088039,
            0.019920196887976346,
            0.0023545284078262717,
            0.0001601738492170372,
            5.82629053408063e-06,
            1.0153428478999899e-07,
            7.062668173918215e-10,
            1.3122701878034668e-12,
        ],
        &[
            1.0,
            1.878539387104218,
            1.4891838068843364,
            0.6540507343406793,
            0.1751026888134531,
            0.02942608852320835,
            0.003064389874755126,
            0.0001889167500730797,
            6.394489604531404e-06,
            1.0615167231221831e-07,
            7.169960117518531e-10,
            1.3132517686486705e-12,
        ],
    ];
    const AVERAGED: &'static [[f64; 3]] = &averaged();
}

impl NormalSeries for f32 {
    const FARTHEST: f32 = 15.0;
    /// Relative error 2.5e-9.
    const RATIO: &'static [f32] = &[
        1.1832619,
        -0.24239965,
        0.035091884,
        0.07168965,
        -0.08070795,
        0.044967532,
        -0.012538508,
        -0.0007517848,
        0.0017316913,
        -0.00016728531,
        -0.00018642933,
    ];
    /// Relative error 5.2e-9.
    const FIRST: &'static [f32] = &[
        1.3347617,
        -0.34686443,
        -0.17268148,
        0.35354668,
        -0.2212663,
        0.027127292,
        0.05612339,
        -0.038945615,
        0.0044996603,
        0.0059474274,
        -0.0015213328,
        -0.00089570193,
    ];
    /// Relative error 6.8e-9.
    const SECOND: &'static [f32] = &[
        1.4431568,
        -0.28229642,
        -0.6123397,
        0.69794834,
        -0.17539787,
        -0.2270292,
        0.20871043,
        -0.021534419,
        -0.05851494,
        0.025252696,
        0.009653281,
        -0.006172853,
        -0.0024428137,
    ];
    /// Relative error 1.0e-8.
    const NEAR: [&'static [f32]; 2] =
        [&[1.2038789, 9.672234, -4.1531277, -45.954586], &[1.0, 14.508535, 53.330666, 39.759293]];
    /// Relative error 9.6e-10.
    const FAR: [&'static [f32]; 2] = [
        &[0.10151966, 0.3336146, 0.15841003, 0.018612554, 0.00043764757],
        &[1.0, 0.8775082, 0.2381883, 0.021165429, 0.00044094835],
    ];
    const AVERAGED: &'static [[f32; 3]] = &averaged_f32();
}

macro_rules! averaged {
    ($name:ident, $real:ident, $terms:literal) => {
        const fn $name() -> [[$real; 3]; $terms] {
            let mut table = [[0.0; 3]; $terms];
            let mut n = 0;
            while n < $terms {
                let even = 2.0 * (n as f64 + 1.0);
                table[n] =
                    [(1.0 / (even * (even + 1.0))) as $real, (1.0 / even) as $real, (1.0 / (even + 1.0)) as $real];
                n += 1;
            }
            table
        }
    };
}

// The terms fall as 0.7²ⁿ/(2n + 1)!, times a Hermite polynomial.
averaged!(averaged, f64, 9);
averaged!(averaged_f32, f32, 4);
