//! The distributions in single precision: against double precision on the same arguments, and over arrays.

use reckohm::distribution::*;
use reckohm_tests::allowed;
use reckohm_tests::oracle::Worst;
use reckohm_tests::random::Random;

/// Degrees of freedom from one half to a hundred million, and infinite.
fn dof(random: &mut Random) -> f32 {
    if random.below(10) == 0 {
        f32::INFINITY
    } else {
        (0.5 * 10.0_f64.powf(8.3 * random.unit() * random.unit())) as f32
    }
}

/// Probabilities down to 1e-30, and near one half.
fn probability(random: &mut Random) -> f32 {
    if random.below(3) == 0 {
        (0.02 + 0.47 * random.unit()) as f32
    } else {
        10.0_f64.powf(-30.0 * random.unit()) as f32
    }
}

/// What single precision says against what double does of the same arguments; tails that single precision cannot hold
/// with all its digits are left out.
fn take(worst: &mut Worst, inputs: &str, single: f32, double: f64) {
    if double.abs() > f64::from(f32::MIN_POSITIVE) && double.abs() < f64::from(f32::MAX) {
        worst.take(inputs, f64::from(single), double);
    }
}

#[test]
fn single_precision_is_as_good_as_it_can_be() {
    let mut random = Random::new(24);
    let mut worst: [Worst; 5] = Default::default();
    for _ in 0..20_000 {
        let z = (13.0 * random.unit()) as f32;
        let (p, nu) = (probability(&mut random), dof(&mut random));
        let t = 10.0_f64.powf(-3.0 + 6.0 * random.unit()) as f32;
        let inputs = format!("{z} {p} {t} {nu}");
        let (z2, p2, t2, nu2) = (f64::from(z), f64::from(p), f64::from(t), f64::from(nu));
        take(&mut worst[0], &inputs, normal_above_f32(z).unwrap(), normal_above(z2).unwrap());
        take(&mut worst[1], &inputs, normal_below_f32(z).unwrap(), normal_below(z2).unwrap());
        take(&mut worst[2], &inputs, t_above_f32(t, nu).unwrap(), t_above(t2, nu2).unwrap());
        take(&mut worst[3], &inputs, t_below_f32(t, nu).unwrap(), t_below(t2, nu2).unwrap());
        if let Ok(quantile) = t_quantile_above_f32(p, nu) {
            take(&mut worst[4], &inputs, quantile, t_quantile_above(p2, nu2).unwrap());
        }
    }
    let names = ["normal_above_f32", "normal_below_f32", "t_above_f32", "t_below_f32", "t_quantile_above_f32"];
    for (name, found) in names.iter().zip(&worst) {
        println!("{name}: {found:?}");
    }
    for (name, found) in names.iter().zip(worst) {
        assert!(found.tried > 10_000, "{name}: {found:?}");
        allowed::hold(&format!("distribution.{name}"), found.relative);
    }
}

/// Every 1009th of all the probabilities there are, subnormal ones included, and those about where the two fits meet.
#[test]
fn a_normal_quantile_is_near_the_exact_one_at_any_probability_and_falls() {
    let meeting = 0.1_f32.to_bits();
    let bits = (1..1.0_f32.to_bits()).step_by(1009).chain(meeting - 1000..meeting + 1000);
    let (mut worst, mut last, mut rises) = (Worst::default(), f32::INFINITY, 0);
    for bits in bits {
        let p = f32::from_bits(bits);
        let z = normal_quantile_above_f32(p).unwrap();
        take(&mut worst, &format!("{p:e}"), z, normal_quantile_above(f64::from(p)).unwrap());
        rises += u32::from(z > last && bits != meeting - 1000);
        last = z;
    }
    println!("{worst:?}");
    assert!(worst.tried > 1_000_000, "{worst:?}");
    allowed::hold("distribution.normal_quantile_above_f32", worst.relative);
    assert_eq!(rises, 0);
    assert_eq!(normal_quantile_above_f32(0.5), Ok(0.0));
}

#[test]
fn arrays_give_the_bits_of_single_calls_or_say_which_failed() {
    let mut random = Random::new(25);
    let z: Vec<f32> = (0..1003).map(|_| (26.0 * random.unit() - 13.0) as f32).collect();
    let p: Vec<f32> = (0..1003).map(|_| probability(&mut random)).collect();
    let mut out = vec![0.0; 1003];
    let same = |out: &[f32], one: &dyn Fn(usize) -> f32| {
        out.iter().enumerate().all(|(index, found)| found.to_bits() == one(index).to_bits())
    };
    normal_above_f32_into(&z, &mut out).unwrap();
    assert!(same(&out, &|index| normal_above_f32(z[index]).unwrap()));
    normal_below_f32_into(&z, &mut out).unwrap();
    assert!(same(&out, &|index| normal_below_f32(z[index]).unwrap()));
    normal_quantile_f32_into(&p, &mut out).unwrap();
    assert!(same(&out, &|index| normal_quantile_f32(p[index]).unwrap()));
    normal_quantile_above_f32_into(&p, &mut out).unwrap();
    assert!(same(&out, &|index| normal_quantile_above_f32(p[index]).unwrap()));
    t_above_f32_into(&z, 4.0, &mut out).unwrap();
    assert!(same(&out, &|index| t_above_f32(z[index], 4.0).unwrap()));
    t_below_f32_into(&z, 4.0, &mut out).unwrap();
    assert!(same(&out, &|index| t_below_f32(z[index], 4.0).unwrap()));
    t_quantile_f32_into(&p, 4.0, &mut out).unwrap();
    assert!(same(&out, &|index| t_quantile_f32(p[index], 4.0).unwrap()));
    t_quantile_above_f32_into(&p, 4.0, &mut out).unwrap();
    assert!(same(&out, &|index| t_quantile_above_f32(p[index], 4.0).unwrap()));

    let wrong = [0.5, 0.0, 0.1, f32::NAN];
    let mut out = [7.0_f32; 4];
    let mut valid = [false; 4];
    let failures = [
        normal_quantile_f32_into(&wrong, &mut out),
        normal_quantile_above_f32_into(&wrong, &mut out),
        t_quantile_f32_into(&wrong, 3.0, &mut out),
        t_quantile_above_f32_into(&wrong, 3.0, &mut out),
        normal_quantile_f32_check(&wrong),
        t_quantile_f32_check(&wrong, 3.0),
    ];
    for failure in failures {
        assert!(matches!(failure, Err(DistributionError::Element { index: 1, failed: 2, .. })), "{failure:?}");
    }
    assert_eq!(out, [7.0; 4]);
    assert_eq!(t_quantile_f32_into_valid(&wrong, 3.0, &mut out, &mut valid), Ok(2));
    assert_eq!((valid, out[1], out[3]), ([true, false, true, false], 7.0, 7.0));
    assert_eq!(out[2].to_bits(), t_quantile_f32(0.1, 3.0).unwrap().to_bits());
}
