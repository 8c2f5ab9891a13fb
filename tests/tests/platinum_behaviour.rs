//! Platinum thermometers: how exact both ways are, round trips, arrays, uncertain values, and what is said of a failure.

use proptest::prelude::*;
use reckohm::batch::{VectorBits, limit_vector_bits};
use reckohm::number::{Dual, Real};
use reckohm::sensor::{
    Construction, Formula, OutsideDomain, Platinum, PlatinumFormula, PlatinumStandard, PlatinumTolerance, Quantity,
    SensorError, ToleranceClass,
};
use reckohm::uncertainty::Estimate;
use reckohm_tests::allowed;
use reckohm_tests::random::{Random, cases};

const IEC: PlatinumStandard = PlatinumStandard::Iec60751;

fn pt100<R: Real>() -> Platinum<R> {
    Platinum::new(R::lit(100.0), IEC).unwrap()
}

/// Resistance and slope of a Pt100 of IEC 60751 at so many thousandths of a degree Celsius, in whole numbers, so that each is the
/// double nearest to the exact value.
fn exact(thousandths: i64) -> (f64, f64) {
    let t = i128::from(thousandths);
    let c = if t < 0 { -4183 } else { 0 };
    let ten = |power: u32| 10_i128.pow(power);
    // In units of 1e-27 for R0 = 1: t counts 1e-3, A 1e-7, B 1e-10, C 1e-15.
    let ratio = ten(27) + 39_083 * t * ten(17) - 5775 * t * t * ten(11) + c * (t - 100_000) * t * t * t;
    // The same by the derivative, in units of 1e-24 a kelvin.
    let slope = 39_083 * ten(17) - 2 * 5775 * t * ten(11) + c * (4 * t - 300_000) * t * t;
    let nearest = |whole: i128, power: i32| format!("{whole}e{power}").parse::<f64>().unwrap();
    (nearest(ratio, -25), nearest(slope, -22))
}

/// Every hundredth of a degree over the whole range, against exact decimals.
#[test]
fn both_ways_are_exact_to_a_few_roundings() {
    let (platinum, single) = (pt100::<f64>(), pt100::<f32>());
    let [mut ohm, mut slope, mut kelvin] = [0.0_f64; 3];
    let [mut ohm_f32, mut slope_f32, mut kelvin_f32] = [0.0_f64; 3];
    let mut count = 0;
    for hundredths in -20_000..=85_000 {
        let (at, (exact_ohm, exact_slope)) = (f64::from(hundredths) / 100.0, exact(i64::from(hundredths) * 10));
        ohm = ohm.max((platinum.resistance_ohm(at).unwrap() / exact_ohm - 1.0).abs());
        slope = slope.max((platinum.slope(at).unwrap() / exact_slope - 1.0).abs());
        kelvin = kelvin.max((platinum.temperature_c(exact_ohm).unwrap() - at).abs());
        let narrow = at as f32;
        let beside = exact_slope * (f64::from(narrow) - at);
        ohm_f32 = ohm_f32.max((f64::from(single.resistance_ohm(narrow).unwrap()) / (exact_ohm + beside) - 1.0).abs());
        slope_f32 = slope_f32.max((f64::from(single.slope(narrow).unwrap()) / exact_slope - 1.0).abs());
        let narrow = exact_ohm as f32;
        let beside = (f64::from(narrow) - exact_ohm) / exact_slope;
        kelvin_f32 = kelvin_f32.max((f64::from(single.temperature_c(narrow).unwrap()) - (at + beside)).abs());
        count += 1;
    }
    println!("{count} temperatures: ohm {ohm:e}, slope {slope:e}, kelvin {kelvin:e}");
    println!("in single precision: ohm {ohm_f32:e}, slope {slope_f32:e}, kelvin {kelvin_f32:e}");
    // Design: 1e-9 K, and 0.01 K in single precision.
    assert!(kelvin < 1e-9 && kelvin_f32 < 0.01);
    allowed::hold("sensor.platinum.resistance_ohm", ohm);
    allowed::hold("sensor.platinum.slope", slope);
    allowed::hold("sensor.platinum.temperature_c", kelvin);
    allowed::hold("sensor.platinum.resistance_ohm_f32", ohm_f32);
    allowed::hold("sensor.platinum.slope_f32", slope_f32);
    allowed::hold("sensor.platinum.temperature_c_f32", kelvin_f32);
}

/// Next to 0 °C, where the pieces meet, the temperature keeps its digits on both sides.
#[test]
fn the_pieces_meet_at_nought() {
    let platinum = pt100::<f64>();
    assert_eq!(platinum.temperature_c(100.0), Ok(0.0));
    assert_eq!(platinum.resistance_ohm(0.0), Ok(100.0));
    assert_eq!(platinum.slope(0.0), platinum.slope(-0.0));
    let (mut below, mut above) = (100.0_f64, 100.0_f64);
    for _ in 0..1000 {
        (below, above) = (below.next_down(), above.next_up());
        for ohm in [below, above] {
            let linear = (ohm - 100.0) / 100.0 / 3.9083e-3;
            assert!((platinum.temperature_c(ohm).unwrap() / linear - 1.0).abs() < 1e-12, "{ohm}");
        }
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(cases(2000)))]

    /// Any resistance at 0 °C, any standard.
    #[test]
    fn there_and_back_is_the_same_to_rounding(log_r0 in -1.0..6.0_f64, which in 0..3_usize, share in 0.0..=1.0_f64) {
        let platinum = Platinum::new(10.0_f64.powf(log_r0), PlatinumStandard::ALL[which]).unwrap();
        let at = (-200.0 + 1050.0 * share).clamp(-200.0, 850.0);
        let ohm = platinum.resistance_ohm(at).unwrap();
        let back = platinum.temperature_c(ohm).unwrap();
        prop_assert!((back - at).abs() < 2e-12, "{back} {at}");
        prop_assert!((platinum.resistance_ohm(back).unwrap() / ohm - 1.0).abs() < 1e-14);
        let single = Platinum::new(10.0_f64.powf(log_r0) as f32, PlatinumStandard::ALL[which]).unwrap();
        let at = at as f32;
        let back = single.temperature_c(single.resistance_ohm(at).unwrap()).unwrap();
        prop_assert!((back - at).abs() < 2e-3, "{back} {at}");
    }

    /// Coefficients around those of platinum and far from them: either they are refused, or both ways fit, slopes too.
    #[test]
    fn the_steps_suffice_for_all_coefficients_that_are_taken(
        a in 1e-3..1e-2_f64, b in -2e-6..2e-6_f64, c in -6e-12..6e-12_f64, share in 0.0..=1.0_f64,
    ) {
        if let Ok(platinum) = Platinum::from_coefficients(100.0, [a, b, c], [-200.0, 850.0]) {
            let at = (-200.0 + 1050.0 * share).clamp(-200.0, 850.0);
            let ohm = platinum.resistance_ohm(at).unwrap();
            let back = platinum.temperature_c(ohm).unwrap();
            prop_assert!((back - at).abs() < 1e-10, "{back} {at}");
            let p = platinum.parameters().map(Dual::<f64, 1>::constant);
            let [back_slope] = PlatinumFormula::inverse(&p, Dual::variable(ohm, 0)).partials();
            prop_assert!((back_slope * platinum.slope(at).unwrap() - 1.0).abs() < 1e-9);
        }
        if let Ok(platinum) = Platinum::from_coefficients(100.0, [a as f32, b as f32, c as f32], [-200.0, 850.0]) {
            let at = ((-200.0 + 1050.0 * share) as f32).clamp(-200.0, 850.0);
            let back = platinum.temperature_c(platinum.resistance_ohm(at).unwrap()).unwrap();
            prop_assert!((back - at).abs() < 0.01, "{back} {at}");
        }
    }
}

/// How many of such coefficients are taken: the property above would hold as well if none were.
#[test]
fn coefficients_are_taken_and_refused() {
    let mut random = Random::new(7);
    let mut count = |spread: f64| {
        let mut near = |value: f64| value * (1.0 + spread * (2.0 * random.unit() - 1.0));
        let taken = (0..1000).filter(|_| {
            let coefficients = IEC.coefficients().map(&mut near);
            Platinum::from_coefficients(100.0, coefficients, [-200.0, 850.0]).is_ok()
        });
        taken.count()
    };
    let taken = [count(0.1), count(1.0), count(3.0)];
    println!("{taken:?} of 1000 taken");
    assert!(taken[0] == 1000 && (100..900).contains(&taken[1]) && taken[2] < taken[1], "{taken:?}");
}

/// What a legal temperature converts to is a legal resistance, on the very edge as well, whatever R0 is.
#[test]
fn nothing_is_lost_at_the_edge() {
    for r0_ohm in [0.1, 10.0, 25.5, 99.9, 100.0, 1000.0 / 3.0] {
        let platinum = Platinum::new(r0_ohm, IEC).unwrap();
        let single = Platinum::new(r0_ohm as f32, IEC).unwrap();
        let (mut cold, mut hot) = (-200.0_f64, 850.0_f64);
        let (mut cold_f32, mut hot_f32) = (-200.0_f32, 850.0_f32);
        for _ in 0..1000 {
            for at in [cold, hot] {
                let back = platinum.temperature_c(platinum.resistance_ohm(at).unwrap()).unwrap();
                assert!((-200.0..=850.0).contains(&back) && (back - at).abs() < 1e-11, "{at} {back}");
            }
            for at in [cold_f32, hot_f32] {
                let back = single.temperature_c(single.resistance_ohm(at).unwrap()).unwrap();
                assert!((-200.0..=850.0).contains(&back) && (back - at).abs() < 2e-3, "{at} {back}");
            }
            (cold, hot) = (cold.next_up(), hot.next_down());
            (cold_f32, hot_f32) = (cold_f32.next_up(), hot_f32.next_down());
        }
    }
}

/// The value of a dual number is the plain result, to the bit, in every piece; the slopes both ways are reciprocal.
#[test]
fn dual_numbers_have_the_bits_of_plain_ones() {
    let platinum = pt100::<f64>();
    let mut index = 0;
    let lifted = platinum.parameters().map(|parameter| {
        index += 1;
        Dual::<f64, 5>::variable(parameter, index)
    });
    for step in 0..=2100 {
        let at = -200.0 + 0.5 * f64::from(step);
        let ohm = PlatinumFormula::forward(&lifted, Dual::variable(at, 0));
        assert_eq!(ohm.value().to_bits(), platinum.resistance_ohm(at).unwrap().to_bits());
        let back = PlatinumFormula::inverse(&lifted, Dual::variable(ohm.value(), 0));
        let plain = PlatinumFormula::inverse(&platinum.parameters(), ohm.value());
        assert_eq!(back.value().to_bits(), plain.to_bits());
        let [slope, by_forward @ ..] = ohm.partials();
        let [by_ohm, by_inverse @ ..] = back.partials();
        assert!((slope * by_ohm - 1.0).abs() < 1e-11, "{at}: {}", slope * by_ohm - 1.0);
        // dt/dp = −(∂R/∂p)/(∂R/∂t) for every parameter.
        for (forward, inverse) in by_forward.iter().zip(by_inverse) {
            let expected = -forward / slope;
            assert!((inverse - expected).abs() <= 1e-9 * expected.abs(), "{at}: {inverse} {expected}");
        }
    }
}

#[test]
fn arrays_give_the_bits_of_single_calls() {
    fn compare<R: Real>(count: usize) {
        let platinum = pt100::<R>();
        let mut random = Random::new(11);
        let at: Vec<R> = (0..count).map(|_| R::of_f64(-200.0 + 1050.0 * random.unit())).collect();
        let ohm: Vec<R> = at.iter().map(|at| platinum.resistance_ohm(*at).unwrap()).collect();
        let mut out = vec![R::ZERO; count];
        platinum.resistance_ohm_into(&at, &mut out).unwrap();
        assert_eq!(out, ohm);
        platinum.slope_into(&at, &mut out).unwrap();
        assert!(at.iter().zip(&out).all(|(at, slope)| platinum.slope(*at).unwrap() == *slope));
        platinum.temperature_c_into(&ohm, &mut out).unwrap();
        assert!(ohm.iter().zip(&out).all(|(ohm, at)| platinum.temperature_c(*ohm).unwrap() == *at));
        let mut valid = vec![false; count];
        let mut masked = vec![R::ZERO; count];
        assert_eq!(platinum.temperature_c_into_valid(&ohm, &mut masked, &mut valid), Ok(0));
        assert!(masked == out && valid.iter().all(|valid| *valid));
    }
    for bits in [VectorBits::Upto128, VectorBits::Upto256, VectorBits::Upto512] {
        limit_vector_bits(bits);
        for count in [0, 1, 7, 16, 33, 1003] {
            compare::<f64>(count);
            compare::<f32>(count);
        }
    }
    limit_vector_bits(VectorBits::Upto512);
}

#[test]
fn arrays_say_which_element_failed_and_write_nothing() {
    let platinum = pt100::<f64>();
    let mut out = [7.0; 3];
    let [lower, upper] = platinum.ends_ohm();
    let fault = OutsideDomain { quantity: Quantity::Resistance, given: 0.0, lower, upper };
    let expected = Err(SensorError::Element { fault, index: 1, failed: 2 });
    assert_eq!(platinum.temperature_c_into(&[100.0, 0.0, 400.0], &mut out), expected);
    assert_eq!(out, [7.0; 3]);
    let mut valid = [true; 3];
    assert_eq!(platinum.temperature_c_into_valid(&[100.0, f64::NAN, 400.0], &mut out, &mut valid), Ok(2));
    assert_eq!((out, valid), ([0.0, 7.0, 7.0], [true, false, false]));
}

/// Linear propagation (JCGM 100 5.1); a rising sensor keeps the sides of one-sided parts.
#[test]
fn an_uncertain_resistance_gives_an_uncertain_temperature() {
    let platinum = pt100::<f64>();
    for ohm in [60.0, 175.0] {
        let given = Estimate::exact(ohm).unwrap().with_rectangular(0.05).unwrap().with_normal(0.02).unwrap();
        let given = given.with_type_a(0.01, 4.0).unwrap().with_one_sided(0.0, 0.3).unwrap();
        let found = platinum.temperature_estimate(&given).unwrap();
        assert_eq!(Ok(found.value()), platinum.temperature_c(ohm));
        let slope = platinum.slope(found.value()).unwrap();
        for (part, ohm) in [
            (found.rectangular()[0], 0.05),
            (found.normal_u(), 0.02),
            (found.type_a()[0].s, 0.01),
            (found.above(), 0.3),
        ] {
            assert!((part * slope / ohm - 1.0).abs() < 1e-11, "{part} {ohm}");
        }
        assert_eq!((found.below(), found.type_a()[0].dof), (0.0, 4.0));
        let back = platinum.resistance_estimate(&found).unwrap();
        assert!((back.value() / ohm - 1.0).abs() < 1e-13 && (back.u() / given.u() - 1.0).abs() < 1e-11);
    }
}

/// The standards between each other: one resistance is 0.0145 K apart by the later curve and the older one at 100 °C, and platinum of
/// another purity rises faster.
#[test]
fn standards_differ() {
    let [iec, of_1983, gost] = PlatinumStandard::ALL.map(|standard| Platinum::new(100.0, standard).unwrap());
    let at: f64 = iec.temperature_c(of_1983.resistance_ohm(100.0).unwrap()).unwrap();
    assert!((at - 99.985_5).abs() < 1e-4, "{at}");
    assert!(gost.resistance_ohm(100.0).unwrap() > 139.1);
    for platinum in [iec, of_1983, gost] {
        assert_eq!((platinum.r0_ohm(), platinum.domain()), (100.0, [-200.0, 850.0]));
        let [a, b, c] = platinum.coefficients();
        assert_eq!(platinum, Platinum::from_coefficients(100.0, [a, b, c], [-200.0, 850.0]).unwrap());
    }
}

/// A class refuses what lies outside its range, on both sides, and both limits lie on the curve.
#[test]
fn classes_hold_within_their_ranges_alone() {
    let platinum = pt100::<f64>();
    for class in ToleranceClass::ALL {
        for construction in Construction::ALL {
            let tolerance = PlatinumTolerance::<f64>::iec_60751(class, construction);
            let [lower, upper] = tolerance.range_c();
            for at in [lower.next_down(), upper.next_up(), f64::NAN, f64::INFINITY] {
                let refused = tolerance.tolerance_kelvin(at).unwrap_err();
                assert!(matches!(refused, SensorError::OutsideTolerance { .. }));
                assert!(tolerance.limits_ohm(&platinum, at).is_err());
            }
            for at in [lower, 0.0, upper] {
                let kelvin = tolerance.tolerance_kelvin(at).unwrap();
                let [low, high] = tolerance.limits_ohm(&platinum, at).unwrap();
                let back = [low, high].map(|ohm| platinum.temperature_c(ohm).unwrap());
                assert!((back[0] - (at - kelvin)).abs() < 1e-11 && (back[1] - (at + kelvin)).abs() < 1e-11);
            }
            let single = PlatinumTolerance::<f32>::iec_60751(class, construction);
            let [at, kelvin] = [upper as f32, single.tolerance_kelvin(upper as f32).unwrap()];
            assert!((f64::from(kelvin) - tolerance.tolerance_kelvin(f64::from(at)).unwrap()).abs() < 1e-5);
        }
    }
    // The limits at the end of the range of all go beyond the model's domain, where the curve is continued.
    let widest = PlatinumTolerance::new(5.0, 0.02, [-200.0, 850.0]).unwrap();
    for at in [-200.0, 850.0] {
        let [low, high] = widest.limits_ohm(&platinum, at).unwrap();
        assert!(0.0 < low && low < platinum.resistance_ohm(at).unwrap() && platinum.resistance_ohm(at).unwrap() < high);
    }
    let narrow = platinum.with_domain([0.0, 100.0]).unwrap();
    assert!(matches!(widest.limits_ohm(&narrow, 101.0), Err(SensorError::Domain(_))));
}

#[test]
fn every_message_says_what_was_given_what_is_allowed_and_what_to_do() {
    let platinum = pt100::<f64>();
    let class_b = PlatinumTolerance::<f64>::iec_60751(ToleranceClass::B, Construction::FilmThermometer);
    let failures = [
        (
            platinum.temperature_c(0.0).unwrap_err(),
            "resistance of a sensor: 0 ohm given, 18.520080000000007 ohm to 390.48112499999996 ohm allowed, the \
             domain of its model; look for a short, an open lead or a reading on another span; ask for a wider \
             domain only where the model is known to hold",
        ),
        (
            platinum.resistance_ohm(851.0).unwrap_err(),
            "temperature of a sensor: 851 degree Celsius given, -200 degree Celsius to 850 degree Celsius \
             allowed, the domain of its model; ask for a wider domain only where the model is known to hold",
        ),
        (
            Platinum::new(0.0, IEC).unwrap_err(),
            "resistance: 0 ohm given, more than 0 ohm to 1000000000000000 ohm allowed (our rule: beyond it is \
             insulation, not a resistance); give ohm, not kilohm; a short is stated by a limit, not by 0",
        ),
        (
            Platinum::from_coefficients(100.0, [0.39083, -5.775e-7, 0.0], [0.0, 200.0]).unwrap_err(),
            "coefficient A of a platinum thermometer: 0.39083 per kelvin given, 0.001 per kelvin to 0.01 per \
             kelvin allowed (our rule: IEC 60751 has 0.0039083); give a fraction a kelvin, not percent: \
             3.9083e-3; it comes before B and C",
        ),
        (
            Platinum::from_coefficients(100.0, [3.9083e-3, -5.775e-5, 0.0], [0.0, 200.0]).unwrap_err(),
            "Callendar-Van Dusen coefficients: A = 0.0039083 per kelvin, B = -0.00005775, C = 0 given, which give \
             no resistance that rises smoothly from -200 to 850 degree Celsius; of platinum A is near 0.0039, B \
             near -5.8e-7 and C near -4.2e-12 or 0 (IEC 60751); check the order, the signs and the powers of ten",
        ),
        (
            platinum.with_domain([-200.0, 900.0]).unwrap_err(),
            "temperature of a platinum thermometer: 900 degree Celsius given, -200 degree Celsius to 850 degree \
             Celsius allowed (IEC 60751); give degrees Celsius, not kelvin; the equations go no further",
        ),
        (
            platinum.with_domain([100.0, 0.0]).unwrap_err(),
            "domain of a sensor or of its tolerance: 100 to 0 given, a lower end below the upper one allowed; give the ends between \
             which it is known to hold, the lower one first",
        ),
        (
            class_b.tolerance_kelvin(-60.0).unwrap_err(),
            "tolerance of a platinum thermometer: -60 degree Celsius given, -50 degree Celsius to 500 degree \
             Celsius allowed, the range that it is stated for (IEC 60751 has one for each class); nothing is \
             promised outside; where the maker states more, give that tolerance with its range",
        ),
        (
            PlatinumTolerance::new(30.0, 0.005, [0.0, 100.0]).unwrap_err(),
            "tolerance of a platinum thermometer at 0 degree Celsius: 30 K given, 0 K to 5 K allowed (our rule: \
             IEC 60751 has 0.1 to 0.6); give kelvin, to one side: class B has 0.3",
        ),
        (
            PlatinumTolerance::new(0.3, 0.5, [0.0, 100.0]).unwrap_err(),
            "growth of the tolerance of a platinum thermometer: 0.5 K a kelvin given, 0 K a kelvin to 0.02 K a \
             kelvin allowed (our rule: IEC 60751 has 0.0017 to 0.01); give kelvin for each kelvin away from 0 \
             degree Celsius: class B has 0.005",
        ),
        (
            PlatinumTolerance::new(0.3, 0.005, [0.0, 1000.0]).unwrap_err(),
            "temperature of a platinum thermometer: 1000 degree Celsius given, -200 degree Celsius to 850 degree \
             Celsius allowed (IEC 60751); give degrees Celsius, not kelvin; the equations go no further",
        ),
        (
            PlatinumTolerance::new(0.3, 0.005, [100.0, 100.0]).unwrap_err(),
            "domain of a sensor or of its tolerance: 100 to 100 given, a lower end below the upper one allowed; give the ends between \
             which it is known to hold, the lower one first",
        ),
    ];
    for (failure, text) in &failures {
        assert_eq!(failure.to_string(), *text);
        assert_eq!(SensorError::from_detail(&failure.detail()), Some(*failure));
    }
    // NaN is not equal to itself: compare what is said.
    let nan = class_b.tolerance_kelvin(f64::NAN).unwrap_err();
    assert_eq!(SensorError::from_detail(&nan.detail()).unwrap().to_string(), nan.to_string());
}
