//! How parts of an estimate are kept, merged and scaled, and which are too large for the number type.

use reckohm::number::{Kind, Real};
use reckohm::uncertainty::{Estimate, EstimateError, TypeA};
use reckohm::verdict::{Limits, Rule, answer_of_value};

fn exact() -> Estimate {
    Estimate::exact(0.0).unwrap()
}

fn of_repeats(parts: &[(f64, f64)]) -> [TypeA; 2] {
    let added = parts.iter().try_fold(exact(), |estimate, (s, dof)| estimate.with_type_a(*s, *dof));
    added.unwrap().type_a()
}

/// Every order in which three can come.
fn orders<T: Copy>([a, b, c]: [T; 3]) -> [[T; 3]; 6] {
    [[a, b, c], [a, c, b], [b, a, c], [b, c, a], [c, a, b], [c, b, a]]
}

/// Two rectangular parts are kept, the wider ones; the narrowest becomes normal, with half-width over the root of three.
#[test]
fn the_narrowest_of_three_rectangular_parts_becomes_normal() {
    for parts in orders([5.0, 4.0, 3.0_f64.sqrt()]) {
        let added = parts.iter().try_fold(exact(), |estimate, part| estimate.with_rectangular(*part)).unwrap();
        assert_eq!(added.rectangular(), [5.0, 4.0]);
        assert!((added.normal_u() - 1.0).abs() < 1e-15, "{parts:?} {}", added.normal_u());
    }
}

/// Of three parts of type A the two nearest in degrees of freedom become one, with the fewer of the two; the part with the
/// fewest stands first.
#[test]
fn the_two_nearest_of_three_type_a_parts_become_one() {
    let cases = [
        ([(3.0, 2.0), (4.0, 3.0), (1.0, 40.0)], [(5.0, 2.0), (1.0, 40.0)]),
        ([(1.0, 2.0), (3.0, 30.0), (4.0, 40.0)], [(1.0, 2.0), (5.0, 30.0)]),
        ([(3.0, 2.0), (4.0, 10.0), (1.0, 80.0)], [(5.0, 2.0), (1.0, 80.0)]),
    ];
    for (parts, wanted) in cases {
        for parts in orders(parts) {
            assert_eq!(of_repeats(&parts).map(|part| (part.s, part.dof)), wanted, "{parts:?}");
        }
    }
    let two = of_repeats(&[(1.0, 9.0), (2.0, 4.0)]);
    assert_eq!(two.map(|part| (part.s, part.dof)), [(2.0, 4.0), (1.0, 9.0)]);
    let alike = of_repeats(&[(1.0, 4.0), (2.0, 4.0)]);
    assert_eq!(alike.map(|part| part.s), [1.0, 2.0], "as they came");
}

/// So many degrees of freedom are as good as infinitely many.
#[test]
fn very_many_degrees_of_freedom_are_a_normal_part() {
    let normal = exact().with_normal(5.0).unwrap();
    let repeats = exact().with_normal(3.0).unwrap().with_type_a(4.0, 1e16).unwrap();
    for x in [0.0, 1.0, 7.0, 30.0] {
        assert_eq!(repeats.probability_above(x), normal.probability_above(x), "{x}");
    }
}

#[test]
fn a_constant_scales_every_part_and_a_negative_one_turns_the_sides() {
    let parts = |scale: f64, below: f64, above: f64| {
        let type_a = [TypeA { s: 0.25 * scale, dof: 4.0 }, TypeA { s: 0.5 * scale, dof: 9.0 }];
        Estimate::from_parts(3.0 * scale, [2.0 * scale, scale], 0.75 * scale, type_a, below, above).unwrap()
    };
    let plain = parts(1.0, 0.125, 0.5);
    assert_eq!(plain.times(2.0), Ok(parts(2.0, 0.25, 1.0)));
    let turned = plain.times(-2.0).unwrap();
    assert_eq!((turned.value(), turned.below(), turned.above()), (-6.0, 1.0, 0.25));
    assert_eq!((turned.rectangular(), turned.type_a()), ([4.0, 2.0], parts(2.0, 0.0, 0.0).type_a()));
    // Nothing of anything leaves no part, not parts of no width.
    assert_eq!(plain.times(0.0).unwrap(), exact());
    assert_eq!(plain.times(0.0).unwrap().type_a(), [TypeA::NONE; 2]);
}

/// In a unit so small that squares would be lost, every result is that of ohm, to the bit.
fn adds_as_in_ohm<R: Real>(powers: &[i32]) {
    let shapes = |unit: R| {
        let part = |x: f64| R::lit(x) * unit;
        let none = Estimate::exact(R::ZERO).unwrap();
        let three = [1.5, 0.7, 0.3].iter().try_fold(none, |estimate, x| estimate.with_rectangular(part(*x)));
        let repeats = [(0.3, 3.0), (0.4, 4.0), (0.5, 90.0)];
        let repeats =
            repeats.iter().try_fold(three.unwrap(), |estimate, (s, dof)| estimate.with_type_a(part(*s), R::lit(*dof)));
        let all = repeats.unwrap().with_normal(part(0.2)).unwrap().with_normal(part(0.6)).unwrap();
        let repeats = none.with_type_a(part(0.3), R::lit(3.0)).unwrap().with_type_a(part(0.5), R::lit(90.0)).unwrap();
        [all.with_one_sided(part(0.1), part(0.9)).unwrap(), repeats, repeats.with_normal(part(0.2)).unwrap()]
    };
    for power in powers {
        let unit = R::lit(2.0_f64.powi(*power));
        for (small, ohm) in shapes(unit).iter().zip(shapes(R::ONE)) {
            assert_eq!(small.normal_u(), ohm.normal_u() * unit, "{power}");
            assert_eq!(small.u(), ohm.u() * unit, "{power}");
            assert_eq!(small.type_a().map(|part| part.s), ohm.type_a().map(|part| part.s * unit), "{power}");
            assert_eq!(small.effective_dof(), ohm.effective_dof(), "{power}");
            for q in [0.3, 0.025, 1e-6].map(R::lit) {
                let (found, x) = (small.quantile_above(q).unwrap(), ohm.quantile_above(q).unwrap());
                assert_eq!(found, x * unit, "{power} {q}");
                assert_eq!(small.probability_above(found), ohm.probability_above(x), "{power} {q}");
            }
            let guaranteed = |estimate: &Estimate<R>| estimate.expanded_guaranteed(R::lit(0.95)).unwrap().half_width;
            assert_eq!(guaranteed(small), guaranteed(&ohm) * unit, "{power}");
        }
    }
}

#[test]
fn parts_in_the_smallest_units_add_as_in_ohm() {
    adds_as_in_ohm::<f64>(&[-300, -401, -500, -900]);
    adds_as_in_ohm::<f32>(&[-30, -48, -60, -100]);
    let observed = |unit: f64| Estimate::from_repeats(&[1.0, 2.0, 4.0, 8.0].map(|x| x * unit)).unwrap();
    let unit = 2.0_f64.powi(-700);
    assert_eq!(observed(unit).u(), observed(1.0).u() * unit);
}

/// In units so large that squares of what repeats may come to are no numbers, every quantile is that of ohm.
fn is_as_wide_as_in_ohm<R: Real>(powers: &[i32], allowed: f64) {
    let shape = |unit: R, dof: f64| {
        let repeats = Estimate::exact(R::ZERO).unwrap().with_type_a(unit, R::lit(dof)).unwrap();
        let rectangular = repeats.with_rectangular(R::lit(1.5) * unit).unwrap();
        [repeats.with_normal(R::lit(3.0) * unit).unwrap(), rectangular.with_normal(R::lit(3.0) * unit).unwrap()]
    };
    for (power, dof) in powers.iter().flat_map(|power| [1.0, 3.0, 9.0].map(|dof| (*power, dof))) {
        let unit = R::lit(2.0_f64.powi(power));
        for (large, ohm) in shape(unit, dof).iter().zip(shape(R::ONE, dof)) {
            for q in [0.025, 1e-4, 1e-6, 1e-9].map(R::lit) {
                let (found, wanted) = (large.quantile_above(q).unwrap() / unit, ohm.quantile_above(q).unwrap());
                assert!((found / wanted - R::ONE).magnitude() < R::lit(allowed), "{power} {dof} {q}: {found} {wanted}");
            }
        }
    }
}

/// The bound is of the rounding of a quantile's logarithm, of 20 or less, in the few digits of single precision.
#[test]
fn parts_in_the_largest_units_are_as_wide_as_in_ohm() {
    is_as_wide_as_in_ohm::<f64>(&[300, 490, 500], 1e-13);
    is_as_wide_as_in_ohm::<f32>(&[30, 50, 56, -41], 3e-6);
}

/// The mean, and the root of the squares over one less than the number, over the root of the number: 3, and √(10/3/4).
#[test]
fn repeats_have_their_mean_and_its_scatter() {
    for (observed, mean, u) in
        [([1.0, 2.0, 4.0, 5.0], 3.0, (10.0 / 12.0_f64).sqrt()), ([-1.0, 7.0, 7.0, -1.0], 3.0, (64.0 / 12.0_f64).sqrt())]
    {
        let estimate = Estimate::from_repeats(&observed).unwrap();
        assert_eq!((estimate.value(), estimate.type_a()[0].dof), (mean, 3.0));
        assert!((estimate.u() / u - 1.0).abs() < 1e-15, "{}", estimate.u());
    }
}

fn too_large<T: core::fmt::Debug>(result: Result<T, EstimateError>) -> bool {
    match result {
        Ok(_) => false,
        Err(error) => {
            assert_eq!(error.kind(), Kind::ResultOutOfRange);
            true
        }
    }
}

/// Both the parts, a thousandfold, and the value with them have to be numbers.
#[test]
fn what_does_not_fit_the_number_type_is_refused_and_nothing_else() {
    let with_normal = |value: f64, u: f64| Estimate::exact(value).unwrap().with_normal(u);
    // The squares of these are numbers; of 1e155 they are not.
    for (value, u, refused) in [
        (1e300, 1e150, false),
        (-1e300, 1e150, false),
        (f64::MAX, 1e150, false),
        (0.0, 1e153, false),
        (0.0, 1e155, true),
    ] {
        assert_eq!(too_large(with_normal(value, u)), refused, "{value} {u}");
    }
    // A mean that is a number, of a scatter that is none.
    assert!(too_large(Estimate::from_repeats(&[1e200, -1e200])));
    let (limits, rule) = (Limits::at_most(1.0).unwrap(), Rule::guarded(0.05).unwrap());
    for (value, half_width, u, refused) in [
        (1e300, 1e20, 1e20, false),
        (1.0, 1e153, 1e153, false),
        (1.0, 1e155, 0.0, true),
        (1.0, 0.0, 1e155, true),
        // Each square is a number, their sum is none.
        (1.0, 1.2e154, 1.2e154, true),
    ] {
        assert_eq!(
            too_large(answer_of_value(value, half_width, u, &limits, rule)),
            refused,
            "{value} {half_width} {u}"
        );
    }
}

/// The mean of the tail with one rectangular part over the other one, by Simpson's rule.
#[test]
fn two_rectangular_parts_are_the_mean_of_one_over_the_other() {
    let one = |x: f64, a: f64, s: f64| {
        let part = exact().with_rectangular(a).unwrap().with_normal(s).unwrap();
        part.probability_above(x).unwrap()
    };
    for (a, b) in [(1.0, 0.2), (1.0, 0.65), (1.0, 1.0), (4.0, 0.3), (4.0, 3.0)] {
        let both = exact().with_rectangular(a).unwrap().with_rectangular(b).unwrap().with_normal(1.0).unwrap();
        for x in [0.0, 0.1, a - b, a, a + b, a + b + 0.5, a + b + 3.0] {
            let weight = |n: i32| if n == 0 || n == 8000 { 1.0 } else { f64::from(2 + 2 * (n % 2)) };
            let sum: f64 = (0..=8000).map(|n| weight(n) * one(x + b * f64::from(n - 4000) / 4000.0, a, 1.0)).sum();
            let (mean, found) = (sum / 24000.0, both.probability_above(x).unwrap());
            assert!((found / mean - 1.0).abs() < 2e-12, "{x} {a} {b}: {found:e} {mean:e}");
        }
    }
}
