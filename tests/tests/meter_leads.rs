//! Leads: read with their tips touching, or reckoned from their wire.

use std::path::PathBuf;

use reckohm::meter::{Leads, Meter, MeterError};
use reckohm::number::Kind;

/// Every printed conductor of classes 1, 2 and 5: the largest resistance is the printed one, and the value is that of
/// annealed copper of the full cross-section.
#[test]
fn every_printed_conductor() {
    let path = PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("checks/sensor_leads.csv");
    let mut reader = csv::ReaderBuilder::new().comment(Some(b'#')).from_path(path).unwrap();
    let mut rows = 0;
    for row in reader.records().map(Result::unwrap) {
        let (class, area, printed): (u8, f64, f64) =
            (row[0].parse().unwrap(), row[1].parse().unwrap(), row[2].parse().unwrap());
        for length in [0.1, 1.0, 25.0, 1.0e5] {
            let leads = Leads::from_wire(length, area, class).unwrap();
            let largest = leads.ohm() + leads.half_width_ohm();
            let expected = 2.0 * length * printed / 1000.0;
            assert!((largest - expected).abs() <= 4.0 * f64::EPSILON * expected, "{row:?} {largest} {expected}");
            let copper = 2.0 * length / 58.0 / area;
            assert!((leads.ohm() - copper).abs() <= 4.0 * f64::EPSILON * copper, "{row:?}");
            assert!(leads.half_width_ohm() > 0.0, "the table's largest is above pure copper: {row:?}");
            assert_eq!((leads.span(), leads.reading()), (None, None));
        }
        rows += 1;
    }
    assert_eq!(rows, 64);
}

#[test]
fn conductors_that_are_not_in_the_table() {
    for (length, area, class, kind) in [
        (1.0, 0.6, 5, Kind::WireNotInTable),
        (1.0, 500.0, 1, Kind::WireNotInTable),
        (1.0, 0.5, 3, Kind::WireNotInTable),
        (1.0, 0.5, 0, Kind::WireNotInTable),
        (1.0, -0.5, 5, Kind::WireNotInTable),
        (1.0, f64::NAN, 5, Kind::NotFinite),
        (1.0, f64::INFINITY, 5, Kind::NotFinite),
        (0.0, 0.5, 5, Kind::OutOfRange),
        (-1.0, 0.5, 5, Kind::OutOfRange),
        (1.0e6, 0.5, 5, Kind::OutOfRange),
        (f64::NAN, 0.5, 5, Kind::NotFinite),
    ] {
        assert_eq!(Leads::from_wire(length, area, class).unwrap_err().kind(), kind, "{length} {area} {class}");
    }
}

#[test]
fn leads_from_a_reading() {
    let span = Meter::example_hand_held().span(0).unwrap();
    let reading = span.read(b"0.3").unwrap();
    let leads = Leads::from_reading(&reading, span).unwrap();
    assert_eq!((leads.ohm(), leads.half_width_ohm()), (0.3, 0.0));
    assert_eq!((leads.span(), leads.reading()), (Some(span), Some(&reading)));
    assert_eq!(Leads::from_reading(&span.read(b"-0.1").unwrap(), span).unwrap().ohm(), -0.1);
    assert_eq!(Leads::from_reading(&span.read(b"1").unwrap(), span), Err(MeterError::LeadsOverRange));
}
