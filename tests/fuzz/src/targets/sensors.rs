//! Thermistors of either precision from hostile numbers: a resistance leads back to its temperature, slopes have their sign.

use reckohm::number::Real;
use reckohm::sensor::{BValueThermistor, Model, SensorError, SteinhartHart, Thermometer};
use reckohm::uncertainty::Estimate;

use crate::accepted;
use crate::input::Input;

fn real<R: Real>(input: &mut Input<'_>) -> R {
    R::of_f64(input.number())
}

/// What a sensor of any formula keeps.
fn ask<F: Thermometer<P>, R: Real, const P: usize>(model: &Model<F, R, P>, input: &mut Input<'_>) {
    let again = Model::<F, R, P>::from_parameters(model.parameters(), model.domain());
    assert!(again.is_ok_and(|again| again.ends_ohm() == model.ends_ohm()));
    let [lower, upper] = model.domain();
    let [least, most] = model.ends_ohm();
    assert!(lower < upper && least <= most && R::ZERO <= least && most.finite());
    let part = R::of_f64(input.fraction());
    let inside = lower + part * (upper - lower);
    for quantity in [real(input), lower, upper, inside] {
        let resistance = accepted!(SensorError, model.resistance_ohm(quantity));
        assert_eq!(resistance.is_some(), quantity.finite() && lower <= quantity && quantity <= upper, "{quantity:?}");
        let Some(resistance) = resistance else { continue };
        assert!(resistance.finite() && R::ZERO <= resistance, "{resistance:?}");
        if let Some(slope) = accepted!(SensorError, model.slope(quantity)) {
            assert!(slope.finite(), "{slope:?}");
        }
        if let Some(back) = accepted!(SensorError, model.temperature_c(resistance)) {
            assert!(lower <= back && back <= upper, "{back:?}");
        }
        let Ok(estimate) = Estimate::exact(quantity).and_then(|exact| exact.with_normal(R::of_f64(input.size(-6..3))))
        else {
            continue;
        };
        if let Some(found) = accepted!(SensorError, model.resistance_estimate(&estimate)) {
            assert!(found.value() == resistance && found.u().finite());
        }
    }
    let ohm = real(input);
    // A resistance a few roundings beyond an end counts as that end's.
    let temperature = accepted!(SensorError, model.temperature_c(ohm));
    assert!(temperature.is_none_or(|found| lower <= found && found <= upper), "{ohm:?}: {temperature:?}");
    let exact = Estimate::exact(least).expect("finite");
    if let Some(found) = accepted!(SensorError, model.temperature_estimate(&exact)) {
        assert!(lower <= found.value() && found.value() <= upper);
    }
}

/// One of the formulas with numbers of its sort, some of them hostile.
fn of_precision<R: Real>(input: &mut Input<'_>) {
    let hostile = input.byte();
    let mut number = |bit: u32, ordinary: f64| {
        if hostile & 1 << bit != 0 && input.flag() { real::<R>(input) } else { R::of_f64(ordinary) }
    };
    let (rated, b) = (number(0, 1e4), number(1, 3977.0));
    let temperatures = [number(2, 25.0), number(3, 25.0), number(4, 85.0)];
    if let Some(model) =
        accepted!(SensorError, BValueThermistor::new(rated, temperatures[0], b, [temperatures[1], temperatures[2]]))
    {
        ask(&model, input);
    }
    let mut number = |bit: u32, ordinary: f64| {
        if hostile & 1 << bit != 0 && input.flag() { real::<R>(input) } else { R::of_f64(ordinary) }
    };
    let coefficients = [number(5, 3.354e-3), number(6, 2.56e-4), number(7, 2.1e-6), number(0, 7.3e-8)];
    let domain = [number(1, -40.0), number(2, 125.0)];
    if let Some(model) = accepted!(SensorError, SteinhartHart::four_terms(coefficients, number(3, 1e4), domain)) {
        ask(&model, input);
    }
}

/// Either precision, then the formulas.
pub fn target(data: &[u8]) {
    let mut input = Input::new(data);
    if input.flag() { of_precision::<f32>(&mut input) } else { of_precision::<f64>(&mut input) }
}
