//! Where a monotone function crosses zero: bracketing, with inverse quadratic steps.

use crate::number::{Real, by_type};

/// The point between `low` and `high` where `f` changes sign, to the last few bits; `f_low` and `f_high` are its values
/// there and must differ in sign. Chandrupatla's method (Advances in Engineering Software 28, 1997): an inverse
/// quadratic step where the three last points allow it, else a bisection, so it ends after some 110 calls at most, never by
/// the number of turns, and after about 10 as a rule. The order of operations is fixed, hence the bits.
pub(crate) fn root<R: Real>(mut f: impl FnMut(R) -> R, low: R, f_low: R, high: R, f_high: R) -> R {
    let (mut b, mut f_b) = (low, f_low);
    let (mut a, mut f_a) = (high, f_high);
    let half = R::lit(0.5);
    let mut t = half;
    for _ in 0..200 {
        let x = a + t * (b - a);
        let f_x = f(x);
        let (c, f_c);
        if (f_x > R::ZERO) == (f_a > R::ZERO) {
            (c, f_c) = (a, f_a);
        } else {
            (c, f_c) = (b, f_b);
            (b, f_b) = (a, f_a);
        }
        (a, f_a) = (x, f_x);
        let (best, f_best) = if f_a.magnitude() < f_b.magnitude() { (a, f_a) } else { (b, f_b) };
        let width = (b - a).magnitude();
        let least = R::lit(2.0) * R::SPACING_AT_ONE * best.magnitude() + by_type(1e-37, 1e-305);
        if f_best == R::ZERO || width <= R::lit(2.0) * least {
            return best;
        }
        let (xi, phi) = ((a - b) / (c - b), (f_a - f_b) / (f_c - f_b));
        let quadratic = phi * phi < xi && (R::ONE - phi) * (R::ONE - phi) < R::ONE - xi;
        let step = if quadratic {
            f_a / (f_b - f_a) * f_c / (f_b - f_c) + (c - a) / (b - a) * f_a / (f_c - f_a) * f_b / (f_c - f_b)
        } else {
            half
        };
        let edge = least / width;
        t = if step <= edge {
            edge
        } else if step >= R::ONE - edge {
            R::ONE - edge
        } else {
            step
        };
    }
    a
}

#[cfg(test)]
mod tests {
    use super::root;

    #[test]
    fn finds_roots_of_steep_and_flat_functions() {
        let cube = |x: f64| x * x * x - 2.0;
        let mut calls = 0;
        let counted = |x| {
            calls += 1;
            cube(x)
        };
        let found = root(counted, 0.0, -2.0, 1e6, cube(1e6));
        assert!((found - 1.259_921_049_894_873_2).abs() < 4e-16, "{found}");
        assert!(calls < 60, "{calls}");
        let flat = |x: f64| (x - 1.0) * (x - 1.0) * (x - 1.0);
        assert!((root(flat, 0.0, -1.0, 3.0, 8.0) - 1.0).abs() < 1e-15);
    }
}
