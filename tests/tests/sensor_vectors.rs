//! The vectors of sensors, which every door runs, and how far their results are from the exact values.

use std::collections::BTreeMap;

use reckohm::number::{Kind, Real};
use reckohm::sensor::{BValueThermistor, Model, SensorError, SteinhartHart, Thermometer};
use reckohm::uncertainty::{Estimate, TypeA};
use reckohm_tests::allowed;
use reckohm_tests::vectors::{self, Outcome, Output, Row};

/// The seven numbers of a model and what follows them.
fn inputs<R: Real>(row: &Row) -> ([R; 5], [R; 2], Vec<R>) {
    let numbers: Vec<R> = row.numbers_from(0).into_iter().map(R::of_f64).collect();
    let (head, rest) = numbers.split_at(7);
    ([head[0], head[1], head[2], head[3], head[4]], [head[5], head[6]], rest.to_vec())
}

fn b_value<R: Real>(row: &Row) -> Result<BValueThermistor<R>, SensorError> {
    let ([rated_ohm, rated_c, b_kelvin, first_c, second_c], domain, _) = inputs(row);
    BValueThermistor::new(rated_ohm, rated_c, b_kelvin, [first_c, second_c])?.with_domain(domain)
}

fn steinhart_hart<R: Real>(row: &Row) -> Result<SteinhartHart<R>, SensorError> {
    let ([a, b, c, d, reference_ohm], domain, _) = inputs(row);
    if c == R::ZERO {
        return SteinhartHart::three_terms([a, b, d], reference_ohm, domain);
    }
    SteinhartHart::four_terms([a, b, c, d], reference_ohm, domain)
}

fn plain<F: Thermometer<5>, R: Real>(
    model: Result<Model<F, R, 5>, SensorError>,
    quantity: &str,
    x: R,
) -> Option<Result<Vec<Output>, SensorError>> {
    let model = match model {
        Ok(model) => model,
        Err(error) => return Some(Err(error)),
    };
    let result = match quantity {
        "resistance_ohm" => model.resistance_ohm(x),
        "temperature_c" => model.temperature_c(x),
        "slope" => model.slope(x),
        _ => return None,
    };
    Some(result.map(|x| vec![Output::Number(x.to_f64())]))
}

fn uncertain<F: Thermometer<5>, R: Real>(
    model: Result<Model<F, R, 5>, SensorError>,
    quantity: &str,
    given: Vec<R>,
) -> Option<Result<Vec<Output>, SensorError>> {
    let [value, a, b, u, s, dof, below, above] = given[..] else { return None };
    let type_a = if s == R::ZERO { TypeA::NONE } else { TypeA { s, dof } };
    let estimate = Estimate::from_parts(value, [a, b], u, [type_a, TypeA::NONE], below, above).unwrap();
    let result = match quantity {
        "resistance_estimate" => model.and_then(|model| model.resistance_estimate(&estimate)),
        "temperature_estimate" => model.and_then(|model| model.temperature_estimate(&estimate)),
        _ => return None,
    };
    Some(result.map(|found| {
        let [a, b] = found.rectangular();
        let [first, second] = found.type_a();
        assert_eq!((first.dof, second), (type_a.dof, TypeA::NONE));
        let parts = [found.value(), a, b, found.normal_u(), first.s, found.below(), found.above()];
        parts.map(|part| Output::Number(part.to_f64())).to_vec()
    }))
}

fn call(row: &Row) -> Option<Outcome> {
    let (formula, quantity) = row.function.strip_prefix("sensor.")?.split_once('.')?;
    let (quantity, single) = quantity.strip_suffix("_f32").map_or((quantity, false), |quantity| (quantity, true));
    let plainly = row.inputs.len() == 8;
    let result = match (formula, single) {
        ("b_value", true) if plainly => plain(b_value::<f32>(row), quantity, row.number(7) as f32),
        ("b_value", false) if plainly => plain(b_value::<f64>(row), quantity, row.number(7)),
        ("steinhart_hart", true) if plainly => plain(steinhart_hart::<f32>(row), quantity, row.number(7) as f32),
        ("steinhart_hart", false) if plainly => plain(steinhart_hart::<f64>(row), quantity, row.number(7)),
        ("b_value", true) => uncertain(b_value::<f32>(row), quantity, inputs(row).2),
        ("b_value", false) => uncertain(b_value::<f64>(row), quantity, inputs(row).2),
        ("steinhart_hart", true) => uncertain(steinhart_hart::<f32>(row), quantity, inputs(row).2),
        ("steinhart_hart", false) => uncertain(steinhart_hart::<f64>(row), quantity, inputs(row).2),
        _ => None,
    };
    result.map(|result| result.map_err(|error| error.kind()))
}

/// The exact value of a row.
fn exact(row: &Row) -> f64 {
    std::str::from_utf8(&row.outputs[0]).unwrap().parse().unwrap()
}

/// Temperatures are judged in kelvin, all else by the relative difference.
fn bound(row: &Row) -> f64 {
    match (row.status, row.function.contains("temperature_c"), row.function.ends_with("_f32")) {
        (0, true, false) => 1e-10 / exact(row).abs(),
        (0, true, true) => 0.01 / exact(row).abs(),
        (_, _, true) => 1e-5,
        _ => 1e-12,
    }
}

#[test]
fn thermistors() {
    let rows = vectors::run("sensor.tsv", bound, call);
    assert!(rows >= 1500, "{rows}");
}

#[test]
fn every_kind_of_error_is_in_the_vectors() {
    let rows = vectors::read("sensor.tsv");
    for kind in [Kind::OutsideDomain, Kind::OutOfRange, Kind::NotFinite, Kind::Contradiction] {
        assert!(rows.iter().any(|row| row.status == kind.number()), "no row with {}", kind.name());
    }
}

/// The worst error of each function over its vectors; temperatures in kelvin, all else relative.
#[test]
fn exact_values_are_met_within_the_allowed_errors() {
    let mut worst = BTreeMap::<String, (f64, usize)>::new();
    for row in vectors::read("sensor.tsv").iter().filter(|row| row.status == 0 && row.inputs.len() == 8) {
        let Some(Ok(outputs)) = call(row) else { panic!("line {}", row.line) };
        let Output::Number(found) = outputs[0] else { panic!("line {}", row.line) };
        let difference = (found - exact(row)).abs();
        let error = if row.function.contains("temperature_c") { difference } else { difference / exact(row).abs() };
        let worst = worst.entry(row.function.clone()).or_default();
        *worst = (if worst.0 < error { error } else { worst.0 }, worst.1 + 1);
    }
    println!("{worst:#?}");
    assert_eq!(worst.len(), 12);
    for (function, (error, tried)) in worst {
        assert!(tried >= 75, "{function}: {tried}");
        allowed::hold(&function, error);
    }
}
