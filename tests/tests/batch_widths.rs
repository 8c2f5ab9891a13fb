//! Loops over arrays: every width of vector instructions gives the bits of the single call.

use reckohm::batch::{PerElement, VectorBits, limit_vector_bits, map, takes_all};
use reckohm::number::elementary::{exp, exp_f32, ln, ln_f32};
use reckohm_tests::random::Random;

const WIDTHS: [VectorBits; 3] = [VectorBits::Upto128, VectorBits::Upto256, VectorBits::Upto512];

macro_rules! formula {
    ($name:ident, $real:ident, $function:path) => {
        #[derive(Clone, Copy)]
        struct $name;

        impl PerElement<$real, 1> for $name {
            #[inline(always)]
            fn of(self, [x]: [$real; 1]) -> $real {
                $function(x)
            }
        }
    };
}

formula!(Ln, f64, ln);
formula!(Exp, f64, exp);
formula!(LnSingle, f32, ln_f32);
formula!(ExpSingle, f32, exp_f32);

#[test]
fn every_width_has_the_bits_of_the_single_call() {
    let mut random = Random::new(20);
    for bits in WIDTHS {
        limit_vector_bits(bits);
        // Lengths around whole vectors, so that the rest of a loop is looked at as well.
        for count in [0, 1, 3, 7, 8, 15, 16, 17, 31, 64, 1003] {
            let x: Vec<f64> = (0..count).map(|_| 1e-3 + 1e3 * random.unit()).collect();
            let single: Vec<f32> = x.iter().map(|x| *x as f32).collect();
            let (mut double_out, mut single_out) = (vec![0.0; count], vec![0.0; count]);
            map(Ln, [&x], &mut double_out);
            assert!(x.iter().zip(&double_out).all(|(x, y)| y.to_bits() == ln(*x).to_bits()), "{bits:?} {count}");
            map(LnSingle, [&single], &mut single_out);
            assert!(single.iter().zip(&single_out).all(|(x, y)| y.to_bits() == ln_f32(*x).to_bits()));
            map(Exp, [&x], &mut double_out);
            assert!(x.iter().zip(&double_out).all(|(x, y)| y.to_bits() == exp(*x).to_bits()), "{bits:?} {count}");
            map(ExpSingle, [&single], &mut single_out);
            assert!(single.iter().zip(&single_out).all(|(x, y)| y.to_bits() == exp_f32(*x).to_bits()));
        }
    }
    limit_vector_bits(VectorBits::Upto512);
}

#[test]
fn one_refused_element_is_found_wherever_it_is() {
    #[derive(Clone, Copy)]
    struct Positive;
    impl PerElement<f64, 1> for Positive {
        #[inline(always)]
        fn of(self, [x]: [f64; 1]) -> f64 {
            if x > 0.0 { 1.0 } else { 0.0 }
        }
    }
    for count in [1, 8, 9, 100] {
        let mut x = vec![4.7; count];
        assert!(takes_all(Positive, [&x]));
        for index in 0..count {
            x[index] = if index % 2 == 0 { f64::NAN } else { -1.0 };
            assert!(!takes_all(Positive, [&x]), "{index} of {count}");
            x[index] = 4.7;
        }
    }
    assert!(takes_all(Positive, [&[]]));
}

#[test]
fn slices_of_different_lengths_are_gone_through_as_far_as_the_shortest() {
    let mut out = [0.0; 4];
    map(Ln, [&[1.0, 1.0, std::f64::consts::E]], &mut out[..2]);
    map(Ln, [&[std::f64::consts::E]], &mut out);
    assert_eq!(out, [1.0, 0.0, 0.0, 0.0]);
}
