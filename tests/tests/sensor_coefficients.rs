//! Which Steinhart-Hart coefficients are taken: those with which Newton's method is known to arrive, by the worst product of
//! its first error and of the curvature over twice the slope, looked for point by point.

use reckohm::sensor::{SensorError, SteinhartHart};
use reckohm_tests::random::Random;

/// The largest product that is taken.
const LARGEST: f64 = 0.125;

/// 1/T = a + b·L·(1 + g·L + k·L²), from `hot` to `cold`, two values of L.
#[derive(Clone, Copy, Debug)]
struct Curve {
    a: f64,
    b: f64,
    g: f64,
    k: f64,
    hot: f64,
    cold: f64,
}

impl Curve {
    fn at(&self, l: f64) -> f64 {
        self.a + self.b * l * (1.0 + self.g * l + self.k * l * l)
    }

    /// How far from `l` the method begins, at (1/T - a)/b.
    fn first_error(&self, l: f64) -> f64 {
        (self.at(l) - self.a) / self.b - l
    }

    /// The slope over b.
    fn slope(&self, l: f64) -> f64 {
        1.0 + 2.0 * self.g * l + 3.0 * self.k * l * l
    }

    fn points(from: f64, to: f64) -> impl Iterator<Item = f64> {
        (0..=400).map(move |n| from + (to - from) * f64::from(n) / 400.0)
    }

    /// The worst product over all that the method can pass, infinite where the curve turns.
    fn worst_product(&self) -> f64 {
        let error = Curve::points(self.hot, self.cold).map(|l| self.first_error(l).abs()).fold(0.0, f64::max);
        let [from_hot, from_cold] = [self.hot, self.cold].map(|l| l + self.first_error(l));
        let from = from_hot.min(self.hot) - LARGEST * error;
        let to = from_cold.max(self.cold) + LARGEST * error;
        let half_curvature = Curve::points(from, to).map(|l| (self.g + 3.0 * self.k * l).abs()).fold(0.0, f64::max);
        let slope = Curve::points(from, to).map(|l| self.slope(l)).fold(f64::INFINITY, f64::min);
        if slope > 0.0 { error * half_curvature / slope } else { f64::INFINITY }
    }

    /// Whether the error of the start is largest at an end, where its two terms add up: then the bound on it is no more
    /// than the error itself.
    fn terms_add_up(&self) -> bool {
        let farther = if self.hot.abs() > self.cold.abs() { self.hot } else { self.cold };
        self.g * self.k * farther >= 0.0
    }

    fn model(&self) -> Result<SteinhartHart, SensorError> {
        let Curve { a, b, g, k, .. } = *self;
        let domain = [self.cold, self.hot].map(|l| 1.0 / self.at(l) - 273.15);
        SteinhartHart::four_terms([a, b, b * g, b * k], 1.0, domain)
    }

    /// Bent so many times as much.
    fn bent(&self, times: f64) -> Curve {
        Curve { g: self.g * times, k: self.k * times * times, ..*self }
    }

    fn random(random: &mut Random) -> Curve {
        let size = 4.0 * random.unit();
        let ends = [size * (2.0 * random.unit() - 1.0), size * if random.below(2) == 0 { 1.0 } else { -1.0 }];
        let terms = random.below(3);
        let mut shape = |most: f64, of: u64| if terms == of { 0.0 } else { most * (2.0 * random.unit() - 1.0) / size };
        let (g, k) = (shape(0.4, 1), shape(0.4, 2) / size);
        Curve { a: 3.4e-3, b: 2.5e-4, g, k, hot: ends[0].min(ends[1]), cold: ends[0].max(ends[1]) }
    }
}

#[test]
fn coefficients_are_taken_where_the_steps_are_known_to_suffice_and_nowhere_else() {
    let mut random = Random::new(1968);
    let (mut taken, mut refused, mut turning) = (0, 0, 0);
    for _ in 0..20_000 {
        let curve = Curve::random(&mut random);
        if Curve::points(curve.hot, curve.cold).any(|l| curve.slope(l) <= 0.0) {
            // Other ends of L may belong to the same domain.
            continue;
        }
        let worst = curve.worst_product();
        let model = curve.model();
        match model {
            Ok(_) => {
                assert!(worst < LARGEST * 1.0001, "taken: {curve:?} {worst}");
                taken += 1;
            }
            Err(SensorError::Coefficients { .. }) if curve.terms_add_up() => {
                assert!(worst > LARGEST * 0.9999, "refused: {curve:?} {worst}");
                refused += 1;
                let turn = -curve.g / (3.0 * curve.k);
                turning += i32::from(curve.k > 0.0 && curve.hot < turn && turn < curve.cold);
            }
            Err(SensorError::Coefficients { .. }) => {}
            Err(other) => panic!("{curve:?}: {other}"),
        }
    }
    assert!(taken > 3000 && refused > 3000 && turning > 300, "{taken} {refused} {turning}");
}

/// Curves with a turn of the slope in their domain, bent until the product is an eighth: 0.2 % less is taken, 0.2 % more is not.
#[test]
fn the_border_is_where_the_worst_product_is_an_eighth() {
    let mut random = Random::new(1969);
    let mut tried = 0;
    while tried < 100 {
        let curve = Curve::random(&mut random);
        let turn = -curve.g / (3.0 * curve.k);
        // Bending moves the turn, at 1/times of its place, and leaves what it is for the slope.
        let turns = curve.k > 0.0 && curve.g != 0.0 && curve.hot < turn && turn < curve.cold;
        if !(turns && curve.terms_add_up()) {
            continue;
        }
        let (mut less, mut more) = (0.0, 8.0);
        for _ in 0..40 {
            let middle = 0.5 * (less + more);
            if curve.bent(middle).worst_product() < LARGEST { less = middle } else { more = middle }
        }
        assert!(curve.bent(0.998 * less).model().is_ok(), "{:?}", curve.bent(less));
        assert!(
            matches!(curve.bent(1.002 * less).model(), Err(SensorError::Coefficients { .. })),
            "{:?}",
            curve.bent(less)
        );
        tried += 1;
    }
}

/// So narrow that both ends are one temperature in kelvin, over which no resistance falls.
#[test]
fn a_domain_without_extent_in_kelvin_is_refused() {
    let over = |domain| SteinhartHart::three_terms([1.129148e-3, 2.34125e-4, 8.76741e-8], 1.0, domain);
    assert!(matches!(over([0.0, 1e-20]), Err(SensorError::Coefficients { .. })));
    assert!(over([0.0, 1e-10]).is_ok());
}
