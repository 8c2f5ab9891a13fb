//! Thermistors against published coefficients and tables.

use std::collections::BTreeMap;
use std::path::PathBuf;

use reckohm::sensor::{BValueThermistor, SteinhartHart};

struct Row {
    kind: String,
    set: String,
    key: String,
    value: String,
    computed: String,
}

fn rows() -> Vec<Row> {
    let path = PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("checks/sensor_thermistor.csv");
    let mut reader = csv::ReaderBuilder::new().comment(Some(b'#')).from_path(path).unwrap();
    let rows = reader.records().map(Result::unwrap).map(|row| {
        let [kind, set, key, value, computed] = [0, 1, 2, 3, 4].map(|column| row[column].to_owned());
        Row { kind, set, key, value, computed }
    });
    rows.collect()
}

/// The number in front of a unit, if this is one.
fn with_unit(text: &str, unit: &str) -> Option<f64> {
    text.strip_suffix(unit)?.trim().parse().ok()
}

/// Half a unit in the last digit as written.
fn half_digit(text: &str) -> f64 {
    let (digits, exponent) = text.split_once('e').unwrap_or((text, "0"));
    let decimals = digits.split_once('.').map_or(0, |(_, decimals)| decimals.len());
    0.5 * 10.0_f64.powi(exponent.parse::<i32>().unwrap() - decimals as i32)
}

/// The coefficients of each set that are of this kind of row, over the widest domain that its rows ask for.
fn models(rows: &[Row], kind: &str) -> BTreeMap<String, SteinhartHart> {
    let mut coefficients = BTreeMap::<String, Vec<f64>>::new();
    for row in rows.iter().filter(|row| row.kind == kind) {
        let text = if kind == "fit" { &row.computed } else { &row.value };
        coefficients.entry(row.set.clone()).or_default().push(text.parse().unwrap());
    }
    let model = |coefficients: Vec<f64>| {
        let [a, b, d] = coefficients[..] else { panic!("{coefficients:?}") };
        SteinhartHart::three_terms([a, b, d], 1.0, [-60.0, 130.0]).unwrap()
    };
    coefficients.into_iter().map(|(set, coefficients)| (set, model(coefficients))).collect()
}

#[test]
fn every_evaluated_coefficient_set_comes_out_to_the_last_digit() {
    let rows = rows();
    let (printed, fitted) = (models(&rows, "coef"), models(&rows, "fit"));
    let mut count = 0;
    for row in rows.iter().filter(|row| row.kind == "eval") {
        let model = printed.get(&row.set).unwrap_or_else(|| &fitted[&row.set]);
        let computed: f64 = row.computed.parse().unwrap();
        let found = match (with_unit(&row.key, "ohm"), row.key.strip_prefix("R at ")) {
            (Some(ohm), None) => model.temperature_c(ohm).unwrap(),
            (None, Some(at)) => {
                model.resistance_ohm(with_unit(at.split(" from").next().unwrap(), "C").unwrap()).unwrap()
            }
            _ => panic!("{}", row.key),
        };
        let rounding = 1e-14 * found.abs().max(273.15);
        assert!((found - computed).abs() <= half_digit(&row.computed) + rounding, "{} {}: {found}", row.set, row.key);
        count += 1;
    }
    assert_eq!(count, 53);
}

/// Every printed pair of resistance and temperature, by the curve through three of the points of its table.
#[test]
fn printed_points_come_out_to_the_last_digit_but_for_two() {
    let rows = rows();
    let fitted = models(&rows, "fit");
    let (mut count, mut differing) = (0, Vec::new());
    for row in rows.iter().filter(|row| row.kind == "point") {
        let (Some(at), Some(printed)) = (with_unit(&row.key, "C"), with_unit(&row.value, "ohm")) else { continue };
        let ohm = fitted[&row.set].resistance_ohm(at).unwrap();
        if format!("{ohm:.0}") != format!("{printed}") {
            differing.push((row.set.as_str(), at, printed, ohm));
        }
        count += 1;
    }
    assert_eq!(count, 10);
    // The curve goes through 0, 25 and 50 °C; the table's own fit was of all points.
    let [(_, 30.0, 7908.0, a_fit), (_, 40.0, 5331.0, a_misprint)] = differing[..] else { panic!("{differing:?}") };
    assert!((a_fit - 7907.28).abs() < 0.01, "{a_fit}");
    // 5231 is meant.
    assert!((a_misprint - 5230.69).abs() < 0.01, "{a_misprint}");
}

/// The printed coefficients of one source do not give its own points, by up to 0.76 K; they were rounded too far.
#[test]
fn coefficients_that_were_printed_with_too_few_digits_are_known() {
    let rows = rows();
    let printed = &models(&rows, "coef")["SH-ED"];
    let misses: Vec<f64> = [(2045.0, -50.0), (100.0, 25.0), (15.0, 100.0)]
        .map(|(ohm, at)| printed.temperature_c(ohm).unwrap() - at)
        .to_vec();
    for (miss, expected) in misses.iter().zip([0.166_348_8, 0.762_026, 0.458_185]) {
        assert!((miss - expected).abs() < 1e-6, "{misses:?}");
    }
}

/// B-values of two resistances, by way of the curve: rated at one of them, it has to give the other.
#[test]
fn b_values_of_two_resistances() {
    let mut count = 0;
    for row in rows().iter().filter(|row| row.kind == "beta") {
        let (name, from) = row.key.split_once(" from ").unwrap();
        let (first, second) = name.strip_prefix('B').unwrap().split_once('/').unwrap();
        let (rated, other) = from.strip_suffix(" ohm").unwrap().split_once(" and ").unwrap();
        let [first, second, rated, other, b] =
            [first, second, rated, other, &row.computed].map(|text| text.parse::<f64>().unwrap());
        let thermistor = BValueThermistor::new(rated, first, b, [first, second]).unwrap();
        let ohm = thermistor.resistance_ohm(second).unwrap();
        // B is given to ten figures or so.
        assert!((ohm / other - 1.0).abs() < 1e-10, "{}: {ohm}", row.key);
        count += 1;
    }
    assert_eq!(count, 3);
}

/// How far a B-value is from its part where it does not belong: B25/50 of the printed table, read at frost.
#[test]
fn a_b_value_bends_away_from_its_part_at_frost() {
    let thermistor = BValueThermistor::new(9814.0, 25.0, 3_927.567_044_78, [25.0, 50.0]).unwrap();
    assert!(thermistor.temperature_c(32_128.0).is_err());
    let at_frost: f64 = thermistor.with_domain([-10.0, 50.0]).unwrap().temperature_c(32_128.0).unwrap();
    assert!((at_frost - 0.375_694_442).abs() < 1e-8, "{at_frost}");
}
