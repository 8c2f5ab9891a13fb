//! Sensors: round trips, arrays, uncertain values, and what is said of a failure.

use reckohm::number::{Detail, Dual, Kind, Real};
use reckohm::sensor::{
    BValueFormula, BValueThermistor, Formula, Model, OutsideDomain, Quantity, SensorError, SteinhartHart,
    SteinhartHartFormula, Thermometer,
};
use reckohm::uncertainty::Estimate;
use reckohm_tests::random::Random;

fn frost_alarm<R: Real>() -> BValueThermistor<R> {
    let [rated_ohm, rated_c, b, first_c, second_c, lower_c] = [10_000.0, 25.0, 3977.0, 25.0, 85.0, -40.0].map(R::lit);
    BValueThermistor::new(rated_ohm, rated_c, b, [first_c, second_c]).unwrap().with_domain([lower_c, second_c]).unwrap()
}

fn by_coefficients<R: Real>() -> SteinhartHart<R> {
    let [a, b, d, one, lower_c, upper_c] = [1.129148e-3, 2.34125e-4, 8.76741e-8, 1.0, -40.0, 125.0].map(R::lit);
    SteinhartHart::three_terms([a, b, d], one, [lower_c, upper_c]).unwrap()
}

/// A share of a model's domain.
fn within<F: Formula<5>, R: Real>(model: &Model<F, R, 5>, share: f64) -> R {
    let [lower, upper] = model.domain();
    (lower + (upper - lower) * R::lit(share)).larger(lower).smaller(upper)
}

/// Resistance to temperature to resistance, the worst relative difference; and temperature there and back, the worst in
/// kelvin.
fn round_trips<F: Thermometer<5>, R: Real>(model: &Model<F, R, 5>, random: &mut Random, count: usize) -> (f64, f64) {
    let mut worst = (0.0_f64, 0.0_f64);
    for _ in 0..count {
        let ohm = model.resistance_ohm(within(model, random.unit())).unwrap();
        let there = model.temperature_c(ohm).unwrap();
        let back = model.resistance_ohm(there).unwrap();
        let there_again = model.temperature_c(back).unwrap();
        worst.0 = worst.0.max(((back - ohm) / ohm).to_f64().abs());
        worst.1 = worst.1.max((there_again - there).to_f64().abs());
    }
    worst
}

#[test]
fn there_and_back_is_the_same_to_rounding() {
    let mut random = Random::new(1);
    let (mut double, mut single) = ((0.0_f64, 0.0_f64), (0.0_f64, 0.0_f64));
    let worse = |a: (f64, f64), b: (f64, f64)| (a.0.max(b.0), a.1.max(b.1));
    double = worse(double, round_trips(&frost_alarm::<f64>(), &mut random, 20_000));
    double = worse(double, round_trips(&by_coefficients::<f64>(), &mut random, 20_000));
    single = worse(single, round_trips(&frost_alarm::<f32>(), &mut random, 20_000));
    single = worse(single, round_trips(&by_coefficients::<f32>(), &mut random, 20_000));
    println!("relative in ohm, kelvin: double {double:?}, single {single:?}");
    // Design: 1e-12 relative, 0.01 K in single precision.
    assert!(double.0 < 1e-13 && double.1 < 1e-11, "{double:?}");
    assert!(single.0 < 1e-4 && single.1 < 1e-3, "{single:?}");
    assert!(double.0 > 0.0 && single.0 > 0.0);
}

/// What a legal temperature converts to is a legal resistance, on the very edge as well, where it may round beyond; and its
/// temperature is within the domain.
#[test]
fn nothing_is_lost_at_the_edge() {
    fn walk<F: Thermometer<5>>(model: &Model<F, f64, 5>) {
        let [lower, upper] = model.domain();
        let (mut cold, mut hot) = (lower, upper);
        for _ in 0..3000 {
            for t in [cold, hot] {
                let back = model.temperature_c(model.resistance_ohm(t).unwrap()).unwrap();
                assert!(lower <= back && back <= upper && (back - t).abs() < 1e-10, "{t} {back}");
                model.resistance_ohm(back).unwrap();
            }
            (cold, hot) = (cold.next_up(), hot.next_down());
        }
        let [highest, lowest] = [lower, upper].map(|t| model.resistance_ohm(t).unwrap());
        assert_eq!(model.ends_ohm(), [lowest, highest]);
        assert_eq!(model.temperature_c(highest * (1.0 + 2e-13)), Ok(lower));
        assert_eq!(model.temperature_c(lowest * (1.0 - 2e-13)), Ok(upper));
        assert!(model.temperature_c(highest * (1.0 + 3e-13)).is_err());
        assert!(model.temperature_c(lowest * (1.0 - 3e-13)).is_err());
    }
    walk(&frost_alarm());
    walk(&by_coefficients());
    walk(&BValueThermistor::new(1000.0, 300.0, 20_000.0, [200.0, 420.0]).unwrap());
    walk(&SteinhartHart::four_terms([3.354016e-3, 2.6e-4, 1.5e-6, -4.0e-8], 470.0, [-30.0, 90.0]).unwrap());
    let single = by_coefficients::<f32>();
    let mut t = -40.0_f32;
    for _ in 0..3000 {
        let back = single.temperature_c(single.resistance_ohm(t).unwrap()).unwrap();
        assert!(-40.0 <= back && (back - t).abs() < 1e-3, "{t} {back}");
        t = t.next_up();
    }
}

/// Coefficients of all sorts: either they are refused, or the steps suffice over the whole domain.
#[test]
fn the_steps_suffice_for_all_coefficients_that_are_taken() {
    fn tried<R: Real>(random: &mut Random, worst: &mut [f64; 2]) -> bool {
        let mut spread = |size: f64| size * (2.0 * random.unit() - 1.0);
        let b = 10.0_f64.powf(-3.6 + spread(0.6));
        let a = 2e-3 + spread(4e-3);
        let (c, d) = (b * spread(0.1) * spread(1.0), b * spread(0.02) * spread(1.0));
        let [lower, upper] = [-40.0 + spread(80.0), 80.0 + spread(60.0)];
        let [a, b, c, d, lower, upper] = [a, b, c, d, lower, upper].map(R::of_f64);
        let Ok(model) = SteinhartHart::four_terms([a, b, c, d], R::ONE, [lower, upper]) else { return false };
        let mut last = R::INFINITE;
        for n in 0..=40 {
            let t = within(&model, f64::from(n) / 40.0);
            let ohm = model.resistance_ohm(t).unwrap();
            assert!(ohm < last, "falls: {model:?}");
            last = ohm;
            let back = model.temperature_c(ohm).unwrap();
            let p = model.parameters().map(Dual::<R, 1>::constant);
            let [back_slope] = SteinhartHartFormula::inverse(&p, Dual::variable(ohm, 0)).partials();
            let product = (model.slope(t).unwrap() * back_slope).to_f64();
            *worst = [worst[0].max((back - t).to_f64().abs()), worst[1].max((product - 1.0).abs())];
        }
        true
    }
    let mut random = Random::new(2);
    let (mut double, mut single) = ([0.0; 2], [0.0; 2]);
    let taken = (0..20_000).filter(|_| tried::<f64>(&mut random, &mut double)).count();
    let taken_single = (0..5000).filter(|_| tried::<f32>(&mut random, &mut single)).count();
    println!("{taken} and {taken_single} taken, worst in kelvin and of the slopes {double:?}, {single:?}");
    assert!((4000..18_000).contains(&taken) && (1000..4500).contains(&taken_single), "{taken} {taken_single}");
    assert!(double[0] < 1e-11 && double[1] < 1e-12, "{double:?}");
    assert!(single[0] < 1e-3 && single[1] < 1e-4, "{single:?}");
}

/// The slope is the limit of differences, and the product of the slopes of both directions is 1.
#[test]
fn slopes_are_those_of_the_curve() {
    fn compare<F: Thermometer<5>>(model: &Model<F, f64, 5>) {
        for n in 1..60 {
            let t = within(model, f64::from(n) / 60.0);
            let slope = model.slope(t).unwrap();
            let difference = (model.resistance_ohm(t + 1e-3).unwrap() - model.resistance_ohm(t - 1e-3).unwrap()) / 2e-3;
            assert!(slope < 0.0 && (difference / slope - 1.0).abs() < 1e-8, "{t}: {slope} {difference}");
            let ohm = model.resistance_ohm(t).unwrap();
            let p = model.parameters().map(Dual::<f64, 1>::constant);
            let [back] = F::inverse(&p, Dual::variable(ohm, 0)).partials();
            assert!((back * slope - 1.0).abs() < 1e-13, "{t}: {}", back * slope);
        }
    }
    compare(&frost_alarm());
    compare(&by_coefficients());
}

/// The value of a dual number is the plain result, to the bit, whatever it is a derivative by; and the curve does not depend
/// on the two temperatures of a B-value.
#[test]
fn dual_numbers_have_the_bits_of_plain_ones() {
    fn compare<F: Formula<5>>(model: &Model<F, f64, 5>) -> [f64; 5] {
        let parameters = model.parameters();
        let mut index = 0;
        let lifted = parameters.map(|p| {
            index += 1;
            Dual::<f64, 5>::variable(p, index - 1)
        });
        let mut partials = [0.0; 5];
        for n in 0..200 {
            let t = within(model, f64::from(n) / 199.0);
            let ohm = F::forward(&lifted, Dual::constant(t));
            assert_eq!(ohm.value().to_bits(), model.resistance_ohm(t).unwrap().to_bits());
            let back = F::inverse(&lifted, Dual::constant(ohm.value()));
            assert_eq!(back.value().to_bits(), F::inverse(&parameters, ohm.value()).to_bits());
            partials = ohm.partials();
        }
        partials
    }
    let [by_rated, .., by_first, by_second] = compare::<BValueFormula>(&frost_alarm());
    assert!(by_rated > 0.0 && [by_first, by_second] == [0.0, 0.0]);
    let by_coefficients = compare::<SteinhartHartFormula>(&by_coefficients());
    assert!(by_coefficients.iter().all(|partial| *partial != 0.0), "{by_coefficients:?}");
}

#[test]
fn arrays_give_the_bits_of_single_calls() {
    fn compare<F: Thermometer<5>, R: Real>(model: &Model<F, R, 5>) {
        let temperatures: Vec<R> = (0..1003).map(|n| within(model, f64::from(n) / 1002.0)).collect();
        let (mut ohm, mut slope, mut back) = (vec![R::ZERO; 1003], vec![R::ZERO; 1003], vec![R::ZERO; 1003]);
        model.resistance_ohm_into(&temperatures, &mut ohm).unwrap();
        model.slope_into(&temperatures, &mut slope).unwrap();
        model.temperature_c_into(&ohm, &mut back).unwrap();
        for n in 0..1003 {
            let t = temperatures[n];
            assert_eq!(model.resistance_ohm(t).unwrap(), ohm[n]);
            assert_eq!(model.slope(t).unwrap(), slope[n]);
            assert_eq!(model.temperature_c(ohm[n]).unwrap(), back[n]);
        }
        model.temperature_c_into(&[], &mut []).unwrap();
    }
    compare(&frost_alarm::<f64>());
    compare(&frost_alarm::<f32>());
    compare(&by_coefficients::<f64>());
    compare(&by_coefficients::<f32>());
}

#[test]
fn arrays_say_which_element_failed_and_write_nothing() {
    let model = frost_alarm::<f64>();
    let [lower, upper] = [85.0, -40.0].map(|t| model.resistance_ohm(t).unwrap());
    let mut out = [7.0; 4];
    let fault = OutsideDomain { quantity: Quantity::Resistance, given: 0.0, lower, upper };
    let expected = Err(SensorError::Element { fault, index: 1, failed: 2 });
    assert_eq!(model.temperature_c_into(&[1e4, 0.0, 2e4, 1e9], &mut out), expected);
    assert_eq!(model.check_resistances(&[1e4, 0.0, 2e4, 1e9]), expected);
    let fault = OutsideDomain { quantity: Quantity::Temperature, given: 86.0, lower: -40.0, upper: 85.0 };
    let expected = Err(SensorError::Element { fault, index: 3, failed: 1 });
    assert_eq!(model.resistance_ohm_into(&[0.0, 1.0, 2.0, 86.0], &mut out), expected);
    assert_eq!(model.slope_into(&[0.0, 1.0, 2.0, 86.0], &mut out), expected);
    assert_eq!(model.check_quantities(&[0.0, 1.0, 2.0, 86.0]), expected);
    let lengths = SensorError::Lengths { needed: 3, room: 4 };
    assert_eq!(model.temperature_c_into(&[1e4; 3], &mut out), Err(lengths));
    assert_eq!(model.resistance_ohm_into(&[25.0; 3], &mut out), Err(lengths));
    assert_eq!(model.slope_into(&[25.0; 3], &mut out), Err(lengths));
    assert_eq!(
        model.slope_into_valid(&[25.0; 4], &mut out, &mut [true; 3]),
        Err(SensorError::Lengths { needed: 4, room: 3 })
    );
    assert_eq!(model.temperature_c_into_valid(&[1e4; 3], &mut out, &mut [true; 3]), Err(lengths));
    assert_eq!(model.resistance_ohm_into_valid(&[25.0; 3], &mut out, &mut [true; 3]), Err(lengths));
    assert_eq!(out, [7.0; 4]);
}

#[test]
fn a_mask_leaves_the_bad_places_alone() {
    let model = frost_alarm::<f64>();
    let (mut out, mut valid) = ([7.0; 4], [false; 4]);
    assert_eq!(model.temperature_c_into_valid(&[1e4, f64::NAN, -1.0, 2e4], &mut out, &mut valid), Ok(2));
    assert_eq!(valid, [true, false, false, true]);
    assert_eq!(out, [25.0, 7.0, 7.0, model.temperature_c(2e4).unwrap()]);
    let (mut out, mut valid) = ([7.0; 3], [false; 3]);
    assert_eq!(model.slope_into_valid(&[f64::INFINITY, 0.0, 99.0], &mut out, &mut valid), Ok(2));
    assert_eq!((out, valid), ([7.0, model.slope(0.0).unwrap(), 7.0], [false, true, false]));
    assert_eq!(model.resistance_ohm_into_valid(&[-40.0, 0.0, 85.0], &mut out, &mut valid), Ok(0));
    assert_eq!((out[1], valid), (model.resistance_ohm(0.0).unwrap(), [true; 3]));
}

/// Linear propagation (JCGM 100 5.1): parts by the slope, one-sided ones on the other side.
#[test]
fn an_uncertain_resistance_gives_an_uncertain_temperature() {
    let model = frost_alarm::<f64>();
    let ohm = Estimate::exact(30_000.0).unwrap().with_rectangular(60.0).unwrap().with_normal(20.0).unwrap();
    let ohm = ohm.with_type_a(10.0, 4.0).unwrap().with_one_sided(0.0, 300.0).unwrap();
    let found = model.temperature_estimate(&ohm).unwrap();
    assert_eq!(found.value(), model.temperature_c(30_000.0).unwrap());
    let kelvin_per_ohm = 1.0 / model.slope(found.value()).unwrap().abs();
    for (part, ohm) in [
        (found.rectangular()[0], 60.0),
        (found.normal_u(), 20.0),
        (found.type_a()[0].s, 10.0),
        // More ohm than shown is colder than shown.
        (found.below(), 300.0),
        (found.u(), ohm.u()),
    ] {
        assert!((part / (ohm * kelvin_per_ohm) - 1.0).abs() < 1e-12, "{part} {ohm}");
    }
    assert_eq!((found.above(), found.type_a()[0].dof), (0.0, 4.0));
    let back = model.resistance_estimate(&found).unwrap();
    assert!((back.value() / 30_000.0 - 1.0).abs() < 1e-12 && (back.u() / ohm.u() - 1.0).abs() < 1e-12);
    assert!(model.temperature_estimate(&Estimate::exact(1.0).unwrap().with_normal(1.0).unwrap()).is_err());
    // In single precision the same, to its digits.
    let narrow =
        Estimate::exact(30_000.0_f32).unwrap().with_rectangular(60.0).unwrap().with_one_sided(0.0, 300.0).unwrap();
    let single = frost_alarm::<f32>().temperature_estimate(&narrow).unwrap();
    assert!((f64::from(single.value()) - found.value()).abs() < 1e-4);
    assert!((f64::from(single.rectangular()[0]) / found.rectangular()[0] - 1.0).abs() < 1e-5);
    assert!((f64::from(single.below()) / found.below() - 1.0).abs() < 1e-5);
    let far = Estimate::exact(25.0).unwrap().with_normal(1e153).unwrap();
    assert!(matches!(model.resistance_estimate(&far), Err(SensorError::Estimate(_))));
}

#[test]
fn every_message_says_what_was_given_what_is_allowed_and_what_to_do() {
    let model = frost_alarm::<f64>();
    let mut out = [0.0; 2];
    let failures = [
        (
            model.temperature_c(470.0).unwrap_err(),
            "resistance of a sensor: 470 ohm given, 1070.3092720326706 ohm to 412134.5673664589 ohm allowed, the domain of \
             its model; look for a short, an open lead or a reading on another span; ask for a wider domain only where the \
             model is known to hold",
        ),
        (
            model.slope(100.0).unwrap_err(),
            "temperature of a sensor: 100 degree Celsius given, -40 degree Celsius to 85 degree Celsius allowed, the domain \
             of its model; ask for a wider domain only where the model is known to hold",
        ),
        (
            model.resistance_ohm_into(&[f64::NAN, 86.0], &mut out).unwrap_err(),
            "sensor: element 0, the first of 2 that failed: temperature of a sensor: NaN degree Celsius given, -40 degree \
             Celsius to 85 degree Celsius allowed, the domain of its model; ask for a wider domain only where the model is \
             known to hold",
        ),
        (
            model.resistance_ohm_into(&[25.0], &mut out).unwrap_err(),
            "sensor: room for 2 results given, 1 needed; give an output with one place for each result",
        ),
        (
            BValueThermistor::new(10_000.0, 25.0, 3977.0, [25.0, 25.0]).unwrap_err(),
            "B-value of a thermistor: 25 degree Celsius given for both of its temperatures, two different ones allowed (IEC \
             60539-1); B25/85 belongs to 25 and 85",
        ),
        (
            model.with_domain([85.0, 25.0]).unwrap_err(),
            "domain of a sensor or of its tolerance: 85 to 25 given, a lower end below the upper one allowed; give the ends between which it \
             is known to hold, the lower one first",
        ),
        (
            SteinhartHart::three_terms([1.129148e-3, 8.76741e-8, 2.34125e-4], 1.0, [-40.0, 125.0]).unwrap_err(),
            "Steinhart-Hart coefficients: 0.0000000876741 per kelvin given for the logarithm itself, with others that give \
             no resistance that falls smoothly from -40 to 125 degree Celsius; the logarithm's own coefficient is positive \
             and outweighs those of its powers; check the order, and whether they are for ln(R/ohm) or for the ratio to a \
             rated resistance",
        ),
        (
            BValueThermistor::new(10_000.0, 298.15, 3.977, [25.0, 85.0]).unwrap_err(),
            "B-value: 3.977 K given, 100 K to 20000 K allowed (our rule: most thermistors have 2000 to 6000); give kelvin: \
             ln(R1/R2) over the difference of the reciprocal temperatures",
        ),
        (
            model.with_domain([-300.0, 85.0]).unwrap_err(),
            "temperature of a thermistor: -300 degree Celsius given, -200 degree Celsius to 1000 degree Celsius allowed (our \
             rule: as far as the formulas were tried); give degrees Celsius, not kelvin",
        ),
        (
            model.with_domain([-200.0, 85.0]).unwrap_err(),
            "resistance of a sensor at an end of its domain: 6.585482361104802e21 ohm given, 0.000001 ohm to \
             1000000000000000 ohm allowed (our rule: beyond it is a short or insulation, not a sensor); check the unit of \
             the parameters, or give a narrower domain",
        ),
    ];
    for (failure, text) in &failures {
        assert_eq!(failure.to_string(), *text);
        // NaN is not equal to itself: compare what is said.
        let again = SensorError::from_detail(&failure.detail()).unwrap();
        assert_eq!((again.to_string(), again.kind()), (failure.to_string(), failure.kind()));
    }
    let too_large = model.resistance_estimate(&Estimate::exact(25.0).unwrap().with_normal(1e153).unwrap()).unwrap_err();
    assert_eq!(SensorError::from_detail(&too_large.detail()), Some(too_large));
    assert_eq!(SensorError::from_detail(&Detail::new(Kind::UnknownSeries)), None);
}

/// In the order that the arguments stand in: the first wrong one is named.
#[test]
fn the_domain_of_a_b_value_is_what_its_temperatures_span() {
    let domain = |rated_c, pair| BValueThermistor::new(10_000.0, rated_c, 3977.0, pair).unwrap().domain();
    assert_eq!(domain(25.0, [25.0, 85.0]), [25.0, 85.0]);
    assert_eq!(domain(25.0, [50.0, 0.0]), [0.0, 50.0]);
    assert_eq!(domain(20.0, [25.0, 100.0]), [20.0, 100.0]);
    assert_eq!(domain(150.0, [25.0, 100.0]), [25.0, 150.0]);
    let model = frost_alarm::<f64>();
    assert_eq!((model.rated_ohm(), model.rated_temperature_c(), model.b_kelvin()), (10_000.0, 25.0, 3977.0));
    assert_eq!((model.b_temperatures_c(), model.domain()), ([25.0, 85.0], [-40.0, 85.0]));
    let other = by_coefficients::<f64>();
    assert_eq!((other.coefficients(), other.reference_ohm()), ([1.129148e-3, 2.34125e-4, 0.0, 8.76741e-8], 1.0));
}
