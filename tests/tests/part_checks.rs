//! Markings against every row of the check files on colours, bands, letters and chip codes.

use std::path::PathBuf;

use reckohm::marking::{ChipForm, ChipScheme, Colour, Edition, Marking, MarkingError};
use reckohm::preferred::{self, Series};

fn rows(file: &str, count: usize) -> Vec<csv::StringRecord> {
    let path = PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("checks").join(file);
    let rows: Vec<_> = csv::Reader::from_path(path).unwrap().records().map(Result::unwrap).collect();
    assert_eq!(rows.len(), count, "{file}");
    rows
}

fn number(text: &str) -> Option<f64> {
    (!text.is_empty()).then(|| text.parse().unwrap())
}

/// 100, a multiplier that takes it back to 1 ohm or so, and these bands behind.
fn with_tolerance(colour: Colour, edition: Edition) -> Result<Marking, MarkingError> {
    Marking::from_band_list(&[Colour::Brown, Colour::Black, Colour::Black, Colour::Black, colour], edition)
}

#[test]
fn every_colour_means_what_the_table_says() {
    let table = rows("part_colours.csv", 14);
    for row in table.iter().filter(|row| &row[0] != "none") {
        let colour = Colour::from_word(&row[0]).unwrap();
        assert_eq!((colour.word(), colour.code()), (&row[0], &row[1]));
        assert_eq!(Colour::from_word(&row[1]), Some(colour));
        assert_eq!(colour.digit().map(f64::from), number(&row[2]), "{colour}");
        for edition in Edition::ALL {
            let exponent = number(&row[3]).filter(|_| colour != Colour::Pink || edition == Edition::E2016);
            assert_eq!(colour.multiplier_exponent(edition).map(f64::from), exponent, "{colour} {edition:?}");
            let column = match edition {
                Edition::E2016 => 4,
                Edition::E2004 => 6,
                Edition::E1974 => 7,
            };
            let tolerance = number(&row[column]);
            assert_eq!(colour.tolerance(edition), tolerance, "{colour} {edition:?}");
            assert_eq!(with_tolerance(colour, edition).ok().and_then(|m| m.tolerance()), tolerance, "{colour}");
            let six = [Colour::Brown, Colour::Black, Colour::Black, Colour::Black, Colour::Brown, colour];
            let coefficient = number(&row[8]);
            let marking = Marking::from_band_list(&six, edition);
            assert_eq!(marking.ok().and_then(|m| m.tcr_ppm_per_kelvin()), coefficient, "{colour}");
            // As a multiplier, on 10 × 10^e.
            let three = Marking::from_band_list(&[Colour::Brown, Colour::Black, colour], edition);
            let ohm = exponent.map(|e| format!("1e{}", e as i32 + 1).parse::<f64>().unwrap());
            assert_eq!(three.ok().map(|m| m.nominal_ohm()), ohm, "{colour}");
        }
        assert_eq!(colour.tcr_ppm_per_kelvin().map(f64::from), number(&row[8]), "{colour}");
    }
    assert_eq!(table.iter().filter(|row| Colour::from_word(&row[0]).is_some()).count(), Colour::ALL.len());
    // No band at all: 20 %, in every edition.
    let none = table.iter().find(|row| &row[0] == "none").unwrap();
    for edition in Edition::ALL {
        let marking = Marking::from_bands("red red red", edition).unwrap();
        assert_eq!(marking.tolerance(), number(&none[4]));
    }
}

#[test]
fn every_count_of_bands_means_what_the_table_says() {
    let table = rows("part_band_rules.csv", 5);
    for row in table {
        let count: usize = row[0].parse().unwrap();
        if count == 1 {
            let link = Marking::from_bands("black", Edition::E2016).unwrap();
            assert!(link.is_zero_ohm_link() && link.tolerance().is_none() && link.limits().is_err());
            continue;
        }
        // 123 × 10^1 (or 12 × 10^1), then 1 %, then 100 ppm/K: every count reads its own part of one row of colours.
        let figures: usize = row[1].parse().unwrap();
        let all: &[Colour] = if figures == 2 {
            &[Colour::Brown, Colour::Red, Colour::Brown, Colour::Gold]
        } else {
            &[Colour::Brown, Colour::Red, Colour::Orange, Colour::Brown, Colour::Gold, Colour::Brown]
        };
        let marking = Marking::from_band_list(&all[..count], Edition::E2016).unwrap();
        assert_eq!(marking.nominal_ohm(), if figures == 2 { 120.0 } else { 1230.0 });
        let positions: Vec<&str> = row[2].split(' ').collect();
        assert_eq!(positions.len(), count);
        assert_eq!(positions.iter().filter(|name| **name == "digit").count(), figures);
        let banded = positions.contains(&"tolerance").then_some(0.05);
        assert_eq!(marking.tolerance(), banded.or(number(&row[3])));
        assert_eq!(marking.tcr_ppm_per_kelvin(), positions.contains(&"tcr").then_some(100.0));
    }
}

#[test]
fn every_published_and_computed_row_of_bands() {
    for row in rows("part_tcr_examples.csv", 26) {
        let marking = Marking::from_bands(&row[0], Edition::E2016).unwrap();
        assert_eq!(marking.nominal_ohm(), number(&row[1]).unwrap(), "{}", &row[0]);
        assert_eq!(marking.tolerance(), number(&row[2]), "{}", &row[0]);
        assert_eq!(marking.tcr_ppm_per_kelvin(), number(&row[3]), "{}", &row[0]);
        if let Some((lower, upper)) = number(&row[4]).zip(number(&row[5])) {
            let limits = marking.limits().unwrap();
            assert_eq!((limits.lower_ohm(), limits.upper_ohm()), (lower, upper), "{}", &row[0]);
        }
        // Written again it is the same bands.
        assert_eq!(marking.to_bands(Edition::E2016).unwrap().to_string(), row[0].to_string());
    }
}

#[test]
fn every_printed_code() {
    let (mut letters, mut chips) = (0, 0);
    for row in rows("part_letter_codes.csv", 95) {
        let (code, ohm, tolerance) = (&row[0], number(&row[1]).unwrap(), number(&row[2]));
        let marking = match &row[4] {
            "letter_and_digit" | "rkm_tolerance" | "rkm_four_figures" => {
                letters += 1;
                let marking = Marking::from_letters(code).unwrap();
                assert_eq!(marking.to_letters().unwrap(), code);
                marking
            }
            "chip3" | "chip4" | "chip_zero" => {
                chips += 1;
                let marking = Marking::from_chip(code, None).unwrap();
                let form = if &row[4] == "chip4" { ChipForm::FourCharacters } else { ChipForm::ThreeCharacters };
                let written = marking.to_chip_as(form).unwrap();
                assert_eq!(written, if code == "000" { "0" } else { code });
                marking
            }
            "chip_e96" => {
                chips += 1;
                let marking = Marking::from_chip(code, None).unwrap();
                assert_eq!(marking.to_chip_as(ChipForm::CodeAndLetter).unwrap(), code);
                marking
            }
            "chip_e96_mil_rs" => {
                chips += 1;
                assert!(matches!(Marking::from_chip(code, None), Err(MarkingError::DoubtfulMultiplier { .. })));
                Marking::from_chip(code, Some(ChipScheme::Military)).unwrap()
            }
            other => panic!("no such kind of code: {other}"),
        };
        assert_eq!(marking.nominal_ohm(), ohm, "{code}");
        assert_eq!(marking.tolerance(), tolerance, "{code}");
    }
    assert_eq!((letters, chips), (64, 31));
}

#[test]
fn every_tolerance_letter_is_read_or_refused_as_its_source_deserves() {
    for row in rows("part_tolerance_letters.csv", 18) {
        let read = Marking::from_letters(format!("4K7{}", &row[0]));
        if &row[3] == "MEM" {
            let letter = row[0].as_bytes()[0];
            assert_eq!(read, Err(MarkingError::DoubtfulLetter { letter, index: 3, multiplier: false }));
        } else {
            assert_eq!(row[1], row[2]);
            assert_eq!(read.unwrap().tolerance(), number(&row[1]), "{}", &row[0]);
        }
    }
}

#[test]
fn every_place_of_e96() {
    for row in rows("part_chip_e96_codes.csv", 96) {
        let marking = Marking::from_chip(format!("{}A", &row[0]), None).unwrap();
        assert_eq!(marking.nominal_ohm(), number(&row[1]).unwrap(), "{}", &row[0]);
        let place: usize = row[0].parse().unwrap();
        assert_eq!(preferred::decade(Series::E96)[place - 1].to_string(), &row[1]);
    }
}

#[test]
fn every_multiplier_letter_is_read_or_refused() {
    for row in rows("part_chip_multiplier_letters.csv", 13) {
        let code = format!("30{}", &row[0]); // place 30 is 200
        let expected = format!("200e{}", &row[1]).parse::<f64>().unwrap();
        if &row[2] == "yes" {
            assert_eq!(Marking::from_chip(&code, None).unwrap().nominal_ohm(), expected, "{code}");
            for scheme in ChipScheme::ALL {
                assert_eq!(Marking::from_chip(&code, Some(scheme)).unwrap().nominal_ohm(), expected, "{code}");
            }
        } else {
            let letter = row[0].as_bytes()[0];
            let refused = MarkingError::DoubtfulMultiplier { letter, index: 2, scheme: None };
            assert_eq!(Marking::from_chip(&code, None), Err(refused));
            let scheme = if &row[3] == "MIL-SYM" { ChipScheme::Military } else { ChipScheme::LargeValues };
            assert_eq!(Marking::from_chip(&code, Some(scheme)).unwrap().nominal_ohm(), expected, "{code}");
        }
    }
    // The common list, from memory alone: the other way round.
    for (code, ohm) in [("30R", 2.0), ("30S", 20.0), ("30H", 2000.0)] {
        assert_eq!(Marking::from_chip(code, Some(ChipScheme::CommonList)).unwrap().nominal_ohm(), ohm);
    }
    let refused = MarkingError::DoubtfulMultiplier { letter: b'G', index: 2, scheme: Some(ChipScheme::CommonList) };
    assert_eq!(Marking::from_chip("30G", Some(ChipScheme::CommonList)), Err(refused));
}
