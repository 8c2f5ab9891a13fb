//! The search in a decade. Candidates are decimals, rounded to the number type once; rounding keeps their order, so that
//! comparing the rounded ones with `x` is exact and a typed 4.7 is the preferred value 4.7.

use super::Series;
use crate::number::{Decimal, Real};

/// What the search needs of a number type.
pub(super) trait Float: Real {
    /// The power of two of the leading bit.
    fn power_of_two(self) -> i32;
}

macro_rules! float {
    ($float:ident, $bits:ident) => {
        impl Float for $float {
            fn power_of_two(self) -> i32 {
                const FRACTION_BITS: u32 = $float::MANTISSA_DIGITS - 1;
                let bits = self.to_bits() & ($bits::MAX >> 1);
                // A subnormal number has its leading bit below those of the exponent.
                let normal = (bits >> FRACTION_BITS) as i32;
                let leading = ($bits::BITS - 1).wrapping_sub(bits.leading_zeros()).wrapping_sub(FRACTION_BITS) as i32;
                let biased = if normal > 0 { normal } else { leading.wrapping_add(1) };
                biased.wrapping_sub($float::MAX_EXP - 1)
            }
        }
    };
}

float!(f64, u64);
float!(f32, u32);

/// A preferred value and the next higher one, as whole numbers times the same power of ten.
#[derive(Clone, Copy)]
pub(super) struct Place {
    lower: u16,
    upper: u16,
    exponent: i32,
}

impl Place {
    /// Where `x` (positive and finite) is: the highest preferred value that rounds to `x` or less, and the next one.
    pub(super) fn of<F: Float>(x: F, series: Series) -> Place {
        let mut order = order_at_most(x);
        while F::nearest(Decimal::new(1, order.wrapping_add(1))) <= x {
            order = order.wrapping_add(1);
        }
        // Only among subnormal numbers can a power of ten round upwards past `x`.
        while F::nearest(Decimal::new(1, order)) > x {
            order = order.wrapping_sub(1);
        }
        let exponent = order.wrapping_add(1).wrapping_sub(i32::from(series.figures()));
        let values = series.whole_numbers();
        let above = values.partition_point(|&value| F::nearest(Decimal::new(i64::from(value), exponent)) <= x);
        let first = values.first().copied().unwrap_or_default();
        let lower = values.get(above.wrapping_sub(1)).copied().unwrap_or(first);
        let upper = values.get(above).copied().unwrap_or(first.wrapping_mul(10));
        Place { lower, upper, exponent }
    }

    fn lower<F: Float>(self) -> F {
        F::nearest(Decimal::new(i64::from(self.lower), self.exponent))
    }

    fn upper<F: Float>(self) -> F {
        F::nearest(Decimal::new(i64::from(self.upper), self.exponent))
    }

    /// Half-way between the two. A number of few figures is the only one that rounds to its float, so `x` at this float is
    /// a tie, and `x` beside it lies to that side of the exact middle.
    fn middle<F: Float>(self) -> F {
        let sum = i64::from(self.lower).wrapping_add(i64::from(self.upper));
        F::nearest(Decimal::new(sum.wrapping_mul(5), self.exponent.wrapping_sub(1)))
    }
}

/// The power of ten at or below `x`, or one less.
fn order_at_most<F: Float>(x: F) -> i32 {
    // 315652 / 2^20 is just below log10(2); for negative powers the 1000 keep the product on the low side.
    x.power_of_two().wrapping_mul(315_652).wrapping_sub(1000) >> 20
}

pub(super) fn below<F: Float>(x: F, series: Series) -> F {
    Place::of(x, series).lower()
}

pub(super) fn above<F: Float>(x: F, series: Series) -> F {
    neighbours(x, series).1
}

pub(super) fn neighbours<F: Float>(x: F, series: Series) -> (F, F) {
    let place = Place::of(x, series);
    let lower = place.lower();
    (lower, if lower == x { x } else { place.upper() })
}

pub(super) fn nearest<F: Float>(x: F, series: Series) -> F {
    let place = Place::of(x, series);
    if x <= place.middle() { place.lower() } else { place.upper() }
}

pub(super) fn contains<F: Float>(x: F, series: Series) -> bool {
    below(x, series) == x
}

#[cfg(test)]
mod tests {
    use super::order_at_most;
    use crate::number::Decimal;

    /// The start of the search is never above the right power of ten and at most one below it.
    #[test]
    fn search_starts_beside_the_right_power_of_ten() {
        for power in -323..=308 {
            let edge = Decimal::new(1, power).to_f64();
            for x in [edge, edge.next_up(), edge * 3.0, edge * 9.9] {
                if x.is_finite() {
                    assert!((power - 1..=power).contains(&order_at_most(x)), "{x:e}");
                }
            }
        }
        assert!((-325..=-324).contains(&order_at_most(5e-324)));
    }

    #[test]
    fn it_does_so_for_floats_too() {
        for power in -44..=38 {
            let edge = Decimal::new(1, power).to_f32();
            for x in [edge, edge.next_up(), edge * 3.0, edge * 9.0] {
                if x.is_finite() {
                    // Among subnormal numbers an edge may have been rounded below its power of ten.
                    let lowest = if x.is_normal() { power - 1 } else { power - 2 };
                    assert!((lowest..=power).contains(&order_at_most(x)), "{x:e}");
                }
            }
        }
        assert!((-46..=-45).contains(&order_at_most(1e-45_f32)));
    }
}
