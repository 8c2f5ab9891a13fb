//! Quantiles against the tails that they belong to, tails against their complements and against the beta function, which is
//! computed by other means.

use reckohm::distribution::{self, DistributionError};
use reckohm::number::special::beta_regularised;

use crate::accepted;
use crate::input::Input;

/// A tail comes back from its quantile but for this, times the steepness of the tail.
const ROUNDINGS: f64 = 40.0 * f64::EPSILON;

fn close(found: f64, expected: f64, steepness: f64) -> bool {
    // Below the normal doubles a last place is a larger part.
    (found - expected).abs() <= (ROUNDINGS * steepness).min(1.0) * expected + 4.0 * f64::from_bits(1)
}

fn normal(z: f64, p: f64) {
    if let Some(above) = accepted!(DistributionError, distribution::normal_above(z)) {
        assert!((0.0..=1.0).contains(&above));
        assert_eq!(distribution::normal_below(-z), Ok(above));
        assert!((distribution::normal_below(z).expect("legal") + above - 1.0).abs() <= f64::EPSILON);
        assert!(
            distribution::normal_above(z.next_up().min(f64::MAX)).is_ok_and(|next| next <= above * (1.0 + ROUNDINGS))
        );
    }
    let Some(z) = accepted!(DistributionError, distribution::normal_quantile_above(p)) else {
        assert!(!(p > 0.0 && p < 1.0));
        return;
    };
    assert!(z.is_finite() && (p >= 0.5) == (z <= 0.0), "{p} {z}");
    assert_eq!(distribution::normal_quantile(p), Ok(0.0 - z));
    let again = distribution::normal_above(z).expect("finite");
    assert!(close(again, p, 1.0 + z * z), "{p:e} came back as {again:e}");
}

fn student(t: f64, p: f64, dof: f64) {
    if let Some(above) = accepted!(DistributionError, distribution::t_above(t, dof)) {
        assert!((0.0..=1.0).contains(&above), "{t} {dof}: {above}");
        assert_eq!(distribution::t_below(-t, dof), Ok(above));
        assert!((distribution::t_below(t, dof).expect("legal") + above - 1.0).abs() <= f64::EPSILON);
        // I_x(dof/2, 1/2) with x = dof/(dof + t²), and from the centre by 1 - x, whichever is rounded less.
        let square = t * t;
        if (1e-3..1e6).contains(&dof) && (1e-12..1e12).contains(&square) && t > 0.0 {
            let sum = dof + square;
            let half = if square > dof || above < 0.1 {
                0.5 * beta_regularised(0.5 * dof, 0.5, dof / sum).expect("within its ranges")
            } else {
                0.5 - 0.5 * beta_regularised(0.5, 0.5 * dof, square / sum).expect("within its ranges")
            };
            let rounded = if above < 0.1 { dof / 80.0 } else { 1.0 };
            assert!(close(above, half, 50.0 * (1.0 + square.min(dof)) + rounded), "{t} {dof}: {above:e} {half:e}");
        }
    }
    let Some(t) = accepted!(DistributionError, distribution::t_quantile_above(p, dof)) else {
        let possible = p > 0.0 && p < 1.0 && dof > 0.0;
        assert!(!possible || distribution::t_above(f64::MAX, dof).is_ok_and(|least| p.min(1.0 - p) <= least * 1.001));
        return;
    };
    assert!(t.is_finite() && (p >= 0.5) == (t <= 0.0), "{p} {dof}: {t}");
    assert_eq!(distribution::t_quantile(p, dof), Ok(0.0 - t));
    let again = distribution::t_above(t, dof).expect("finite");
    let steepness = 1.0 + (t * t).min(dof);
    assert!(close(again, p, 50.0 * (steepness + dof.min(1e3))), "{p:e}, {dof}: {t:e} gives {again:e}");
}

/// A value, a probability and degrees of freedom.
pub fn target(data: &[u8]) {
    let mut input = Input::new(data);
    let value = match input.below(4) {
        0 => input.number(),
        1 => -input.size(-3..2),
        _ => input.size(-3..2),
    };
    let p = if input.below(8) == 0 { input.number() } else { input.fraction() };
    let dof = match input.below(4) {
        0 => input.number(),
        1 => f64::from(input.byte()),
        _ => input.size(-2..7),
    };
    normal(value, p);
    student(value, p, dof);
}
