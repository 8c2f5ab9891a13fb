//! Platinum thermometers against printed tables, to their last digit.

use std::path::PathBuf;

use reckohm::sensor::{Construction, Platinum, PlatinumStandard, PlatinumTolerance, ToleranceClass};

fn rows(file: &str) -> Vec<Vec<String>> {
    let path = PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("checks").join(file);
    let mut reader = csv::ReaderBuilder::new().comment(Some(b'#')).flexible(true).from_path(path).unwrap();
    reader.records().map(|row| row.unwrap().iter().map(str::to_owned).collect()).collect()
}

fn number(text: &str) -> f64 {
    text.parse().unwrap_or_else(|_| panic!("{text:?} is no number"))
}

/// Rounded to as many decimals as are printed. No printed value of these files is a tie.
fn as_printed(found: f64, printed: &str) -> String {
    let decimals = printed.split_once('.').map_or(0, |(_, decimals)| decimals.len());
    format!("{found:.decimals$}")
}

fn pt100(standard: PlatinumStandard) -> Platinum {
    Platinum::new(100.0, standard).unwrap()
}

#[test]
fn every_printed_resistance_comes_out_but_for_five() {
    let platinum = pt100(PlatinumStandard::Iec60751);
    let mut odd = Vec::new();
    let rows = rows("sensor_platinum_iec60751.csv");
    for row in &rows {
        let [at, printed, source, computed, matches] = &row[..] else { panic!("{row:?}") };
        let ohm = platinum.resistance_ohm(number(at)).unwrap();
        // Not by its digits: some of these are ties.
        assert!((ohm - number(computed)).abs() <= 0.5e-5 + 1e-13 * ohm, "{at} °C: {ohm}");
        let agrees = as_printed(ohm, printed) == *printed;
        assert_eq!(if agrees { "1" } else { "0" }, matches, "{at} °C: {ohm}, {source} prints {printed}");
        if !agrees {
            odd.push((number(at), printed.as_str(), source.as_str()));
        }
    }
    assert_eq!(rows.len(), 1208);
    let expected = [
        // A misprint of 35.54, which two other tables have.
        (-160.0, "35.34", "S-PT-T2"),
        // Two left over from the table of 1983, which the source has from 0 °C on.
        (-58.0, "77.13", "S-PT-C4"),
        (-41.0, "83.88", "S-PT-C4"),
        // Of 90.98.
        (-23.0, "90.93", "S-PT-C4"),
        // 310.487, cut off; a second table has 310.49.
        (590.0, "310.48", "S-PT-C3"),
    ];
    assert_eq!(odd, expected);
    println!("{} printed resistances, {} odd", rows.len(), odd.len());
}

/// Who is right about the five: the other tables for the same temperature, and the standard of 1983.
#[test]
fn the_five_odd_ones_have_their_causes() {
    let rows = rows("sensor_platinum_iec60751.csv");
    let others = |at: &str, source: &str| -> Vec<String> {
        let at_same = rows.iter().filter(|row| row[0] == at && row[2] != source);
        at_same.map(|row| row[1].clone()).collect()
    };
    assert_eq!(others("-160", "S-PT-T2"), ["35.54", "35.54", "35.543"]);
    assert_eq!(others("-58", "S-PT-C4"), ["77.12"]);
    assert_eq!(others("-41", "S-PT-C4"), ["83.87"]);
    assert_eq!(others("-23", "S-PT-C4"), ["90.98"]);
    assert_eq!(others("590", "S-PT-C3"), ["310.49"]);
    let of_1983 = pt100(PlatinumStandard::Iec751Of1983);
    for (at, printed) in [(-58.0, "77.13"), (-41.0, "83.88")] {
        assert_eq!(as_printed(of_1983.resistance_ohm(at).unwrap(), printed), printed);
    }
}

/// Worked out in exact decimals, every degree from −200 to 850 °C.
#[test]
fn every_computed_resistance_and_slope_comes_out() {
    let platinum = pt100(PlatinumStandard::Iec60751);
    let rows = rows("sensor_platinum_computed.csv");
    for row in &rows {
        let [at, six_decimals, two_decimals, slope] = &row[..] else { panic!("{row:?}") };
        let ohm = platinum.resistance_ohm(number(at)).unwrap();
        // Where the seventh decimal is an exact 5 the files round up, which no binary number can.
        assert!((ohm - number(six_decimals)).abs() <= 0.5e-6 + 1e-13 * ohm, "{at} °C: {ohm}");
        assert_eq!(as_printed(ohm, two_decimals), *two_decimals, "{at} °C: {ohm}");
        let found = platinum.slope(number(at)).unwrap();
        assert!((found - number(slope)).abs() <= 0.5e-8 + 1e-13, "{at} °C: {found}");
    }
    assert_eq!(rows.len(), 1051);
    println!("{} computed resistances and slopes", rows.len());
}

/// The coefficients of the standards are those that were read, and the mean rise that they are called by.
#[test]
fn coefficients_are_as_read() {
    let other = rows("sensor_platinum_other.csv");
    let read = |name: &str| -> Vec<f64> {
        let of_name = other.iter().filter(|row| row[0] == "coef" && row[1] == name);
        of_name.map(|row| number(&row[3])).collect()
    };
    assert_eq!(PlatinumStandard::Iec60751.coefficients()[..], read("Pt_385_IEC60751"));
    assert_eq!(PlatinumStandard::Gost6651.coefficients()[..], read("Pt_GOST_6651_2009"));
    // Printed with five digits; of A the printed table settles the sixth, below, of B it is from memory.
    let of_1983 = PlatinumStandard::Iec751Of1983.coefficients();
    for ((ours, printed), unit) in of_1983.iter().zip(read("Pt_385_DIN43760_IPTS68")).zip([1e-7, 1e-11, 1e-16]) {
        assert!((ours - printed).abs() <= 0.51 * unit, "{ours} {printed}");
    }
    let tolerance = rows("sensor_platinum_tolerance.csv");
    let read: Vec<f64> = tolerance.iter().filter(|row| row[0] == "coef").map(|row| number(&row[3])).collect();
    let [a, b, c] = PlatinumStandard::Iec60751.coefficients();
    assert_eq!(read[..3], [a, b, c]);
    assert!((a + 100.0 * b - read[3]).abs() < 1e-18);
    for standard in PlatinumStandard::ALL {
        let (name, rise) = match standard {
            PlatinumStandard::Iec60751 => ("Pt_385_IEC60751", "0.003851"),
            PlatinumStandard::Iec751Of1983 => ("Pt_385_DIN43760_IPTS68", "0.003850"),
            _ => ("Pt_GOST_6651_2009", "0.00391"),
        };
        let ratio = pt100(standard).resistance_ohm(100.0).unwrap() / 100.0;
        assert_eq!(as_printed((ratio - 1.0) / 100.0, rise), rise);
        assert!(other.iter().any(|row| row[0] == "check" && row[1] == name && row[3] == rise), "{name}");
    }
}

/// The printed table of 1983: the sixth digit of A is as it needs it; with five digits, six more values miss. The sixth of B shows in
/// no printed value: that one is held to the computed column alone.
#[test]
fn the_table_of_1983_comes_out_but_for_one() {
    let [a, _, c] = PlatinumStandard::Iec751Of1983.coefficients();
    let by = |a, b| Platinum::from_coefficients(100.0, [a, b, c], [0.0, 850.0]).unwrap();
    let all = rows("sensor_platinum_other.csv");
    let table: Vec<_> = all.iter().filter(|row| row[0] == "table").collect();
    assert_eq!(table.len(), 81);
    let misses = |platinum: &Platinum| -> Vec<(&str, &str)> {
        let missed =
            table.iter().filter(|row| as_printed(platinum.resistance_ohm(number(&row[2])).unwrap(), &row[3]) != row[3]);
        missed.map(|row| (row[2].as_str(), row[3].as_str())).collect()
    };
    let of_1983 = pt100(PlatinumStandard::Iec751Of1983);
    // 229.67 by either: a slip of the source.
    assert_eq!(misses(&of_1983), [("350", "229.62")]);
    assert_eq!(misses(&by(3.9080e-3, -5.8019e-7)).len(), 7);
    let printed_b = by(a, -5.8019e-7);
    assert_eq!(misses(&printed_b).len(), 1);
    let at_most = printed_b.resistance_ohm(850.0).unwrap() - of_1983.resistance_ohm(850.0).unwrap();
    assert!((at_most - 0.000_361).abs() < 1e-6, "{at_most}");
    for row in &table {
        let ohm = of_1983.resistance_ohm(number(&row[2])).unwrap();
        assert!((ohm - number(&row[4])).abs() <= 0.5e-5 + 1e-13 * ohm, "{row:?}: {ohm}");
    }
}

/// Each class with its range. Two grades of another standard, whose text was not read, are in the file and not here.
#[test]
fn every_class_is_as_printed() {
    let mut count = 0;
    for row in rows("sensor_platinum_tolerance.csv").iter().filter(|row| row[0] == "class") {
        let construction = match row[1].as_str() {
            "thermometer_wire_wound" => Construction::WireWoundThermometer,
            "thermometer_film" => Construction::FilmThermometer,
            "resistor_wire_wound" => Construction::WireWoundResistor,
            "resistor_film" => Construction::FilmResistor,
            other => {
                assert!(other.starts_with("ASTM_E1137_grade"), "{other}");
                continue;
            }
        };
        let class = match row[2].as_str() {
            "AA" | "W 0.1" | "F 0.1" => ToleranceClass::Aa,
            "A" | "W 0.15" | "F 0.15" => ToleranceClass::A,
            "B" | "W 0.3" | "F 0.3" => ToleranceClass::B,
            "C" | "W 0.6" | "F 0.6" => ToleranceClass::C,
            other => panic!("{other}"),
        };
        let [at_zero, share, lower, upper] = [3, 4, 5, 6].map(|column| number(&row[column]));
        let by_name = PlatinumTolerance::iec_60751(class, construction);
        assert_eq!(by_name, PlatinumTolerance::new(at_zero, share, [lower, upper]).unwrap(), "{row:?}");
        assert_eq!(by_name.range_c(), [lower, upper]);
        count += 1;
    }
    assert_eq!(count, Construction::ALL.len() * ToleranceClass::ALL.len());
}

/// Printed limits in kelvin and in ohm, of classes that then went from −200 to 650 and 850 °C. The curve at the ends of the
/// tolerance and the tolerance times the slope round to the same.
#[test]
fn every_printed_limit_comes_out_but_for_five() {
    let platinum = pt100(PlatinumStandard::Iec60751);
    let (mut count, mut odd) = (0, Vec::new());
    for row in rows("sensor_platinum_tolerance.csv").iter().filter(|row| row[0] == "limit") {
        let (at_zero, share, upper) = if row[1] == "A" { (0.15, 0.002, 650.0) } else { (0.3, 0.005, 850.0) };
        let tolerance = PlatinumTolerance::new(at_zero, share, [-200.0, upper]).unwrap();
        let at = number(&row[2]);
        let kelvin = tolerance.tolerance_kelvin(at).unwrap();
        assert_eq!(as_printed(kelvin, &row[5]), row[5], "{row:?}");
        let ohm = kelvin * platinum.slope(at).unwrap();
        assert_eq!(as_printed(ohm, &row[6]), row[6], "{row:?}");
        let [lower, upper] = tolerance.limits_ohm(&platinum, at).unwrap();
        assert_eq!(as_printed((upper - lower) / 2.0, &row[4]), as_printed(ohm, &row[4]), "{row:?}");
        for (printed, found, matches) in [(&row[3], kelvin, &row[7]), (&row[4], ohm, &row[8])] {
            // 3.55 and 0.35 are no binary numbers: a tie is looked for by hand.
            let agrees = (found - number(printed)).abs() < 0.005 - 1e-9;
            assert_eq!(if agrees { "1" } else { "0" }, matches, "{row:?}");
            if !agrees {
                odd.push((row[1].as_str().to_owned(), at, printed.clone()));
            }
            count += 1;
        }
    }
    assert_eq!(count, 46);
    let odd: Vec<_> = odd.iter().map(|(class, at, printed)| (class.as_str(), *at, printed.as_str())).collect();
    let expected = [
        // 3.55 and 4.55 K rounded to a tenth, and the limit in ohm from 3.6, 3.8 and 4.6 K, cut off after two decimals.
        ("B", 650.0, "3.60"),
        ("B", 650.0, "1.13"),
        ("B", 700.0, "1.17"),
        ("B", 850.0, "4.60"),
        ("B", 850.0, "1.34"),
    ];
    assert_eq!(odd, expected);
    for (at, rounded_kelvin, printed) in [(650.0, 3.6, 1.13), (700.0, 3.8, 1.17), (850.0, 4.6, 1.34)] {
        let ohm: f64 = rounded_kelvin * platinum.slope(at).unwrap();
        assert_eq!((ohm * 100.0).floor() / 100.0, printed);
    }
    println!("{count} printed limits, {} odd", odd.len());
}
