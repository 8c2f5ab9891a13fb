//! Everything that can be written is read back as the same, and everything that can be read says its own value.

use proptest::prelude::*;
use reckohm::marking::{BandReading, ChipForm, ChipScheme, Colour, Direction, Doubt, Edition, Marking, both_ways};
use reckohm::number::Decimal;
use reckohm::preferred::{self, Series};

/// Every preferred value of every series in these decades.
fn stock(orders: std::ops::RangeInclusive<i32>) -> impl Iterator<Item = Decimal> {
    Series::ALL.into_iter().flat_map(move |series| {
        let shift = 1 - i32::from(series.figures());
        orders.clone().flat_map(move |order| {
            preferred::decade(series).iter().map(move |v| Decimal::new((*v).into(), order + shift))
        })
    })
}

const COEFFICIENTS: [u16; 9] = [1, 5, 10, 15, 20, 25, 50, 100, 250];

#[test]
fn every_stock_value_and_tolerance_in_bands() {
    let mut written = 0;
    for edition in Edition::ALL {
        let tolerances: Vec<f64> =
            Colour::ALL.into_iter().filter_map(|colour| colour.tolerance(edition)).chain([0.2]).collect();
        // 0.1 ohm to 1 Gohm with two or three figures fits every edition's multipliers but for pink.
        for nominal in stock(0..=9) {
            for &tolerance in &tolerances {
                let marking = Marking::from_value(nominal.to_f64(), Some(tolerance), None).unwrap();
                let figures = nominal.normalised().digits.to_string().len();
                let Ok(bands) = marking.to_bands(edition) else {
                    assert!(tolerance == 0.2 && figures == 3, "{marking} in {edition:?}");
                    continue;
                };
                written += 1;
                assert_eq!(Marking::from_band_list(bands.colours(), edition), Ok(marking));
                assert_eq!(Marking::from_bands(bands.to_string(), edition), Ok(marking));
                let usual = if tolerance == 0.2 {
                    3
                } else if tolerance > 0.02 && figures < 3 {
                    4
                } else {
                    5
                };
                assert_eq!(bands.colours().len(), usual, "{marking}");
                assert_eq!(bands.reversed().reversed(), bands);
            }
            for coefficient in COEFFICIENTS {
                let marking = Marking::from_value(nominal.to_f64(), Some(0.01), Some(coefficient)).unwrap();
                let bands = marking.to_bands(edition).unwrap();
                assert_eq!(bands.colours().len(), 6);
                assert_eq!(Marking::from_band_list(bands.colours(), edition), Ok(marking));
            }
        }
    }
    assert!(written > 80_000, "{written}");
}

/// Every row of three, four and five colours: what decodes is written and read back the same.
#[test]
fn every_row_of_bands_that_says_something_can_be_written_again() {
    let colours = Colour::ALL;
    for edition in Edition::ALL {
        let mut decoded = 0_u32;
        let mut check = |bands: &[Colour]| {
            let Ok(marking) = Marking::from_band_list(bands, edition) else { return };
            decoded += 1;
            let again = marking.to_bands(edition).unwrap();
            assert_eq!(Marking::from_band_list(again.colours(), edition), Ok(marking), "{bands:?}");
            let limits = marking.limits().unwrap();
            assert!(limits.contains(marking.nominal_ohm()) && limits.lower_ohm() > 0.0);
        };
        for a in colours {
            for b in colours {
                for c in colours {
                    check(&[a, b, c]);
                    for d in colours {
                        check(&[a, b, c, d]);
                        for e in colours {
                            check(&[a, b, c, d, e]);
                        }
                    }
                }
            }
        }
        // 90 two-figure and 900 three-figure values.
        let multipliers = colours.iter().filter(|c| c.multiplier_exponent(edition).is_some()).count() as u32;
        let tolerances = colours.iter().filter(|c| c.tolerance(edition).is_some()).count() as u32;
        assert_eq!(decoded, 90 * multipliers + 90 * multipliers * tolerances + 900 * multipliers * tolerances);
    }
}

#[test]
fn every_stock_value_in_letters_and_on_chips() {
    let letters = [0.0005, 0.001, 0.0025, 0.005, 0.01, 0.02, 0.05, 0.1, 0.2];
    for nominal in stock(-1..=14) {
        for tolerance in letters.map(Some).into_iter().chain([None]) {
            let marking = Marking::from_value(nominal.to_f64(), tolerance, None).unwrap();
            let text = marking.to_letters().unwrap();
            assert_eq!(Marking::from_letters(text.as_bytes()), Ok(marking), "{text}");
        }
        let plain = Marking::from_value(nominal.to_f64(), None, None).unwrap();
        if nominal <= Decimal::new(999, 9) {
            let chip = plain.to_chip().unwrap();
            assert_eq!(Marking::from_chip(chip.as_str(), None), Ok(plain), "{chip}");
        }
    }
}

/// Four figures behind the letter are the most that there are.
#[test]
fn a_fraction_of_an_ohm_has_up_to_four_figures_in_letters() {
    let letters = |ohm: f64| Marking::from_value(ohm, None, None).unwrap().to_letters().map(|text| text.to_string());
    assert_eq!((letters(0.1234), letters(0.0047)), (Ok("R1234".to_owned()), Ok("R0047".to_owned())));
    assert!(letters(0.00123).is_err());
}

#[test]
fn every_chip_code_of_three_and_four_figures() {
    for code in 0..=9999_u32 {
        for width in [3, 4] {
            let text = format!("{code:0width$}");
            if text.len() != width {
                continue;
            }
            let read = Marking::from_chip(&text, None);
            let (digits, power) = (code / 10, code % 10);
            if code == 0 {
                assert_eq!(read, Ok(Marking::ZERO_OHM_LINK));
            } else if text.starts_with('0') {
                assert!(read.is_err(), "{text}");
            } else {
                let marking = read.unwrap();
                assert_eq!(marking.nominal_ohm(), format!("{digits}e{power}").parse::<f64>().unwrap());
                let form = if width == 3 { ChipForm::ThreeCharacters } else { ChipForm::FourCharacters };
                assert_eq!(marking.to_chip_as(form).unwrap(), text.as_str());
            }
        }
    }
}

#[test]
fn every_chip_code_with_a_point() {
    for code in 0..=999_u32 {
        for (width, count) in [(2, 100), (3, 1000)] {
            if code >= count {
                continue;
            }
            let figures = format!("{code:0width$}");
            for place in 0..=width {
                let text = format!("{}R{}", &figures[..place], &figures[place..]);
                let read = Marking::from_chip(&text, None);
                if width == 2 && place == 2 || code == 0 || figures.starts_with('0') && place > 1 {
                    assert!(read.is_err(), "{text}");
                    continue;
                }
                let value: f64 = format!("0{}", text.replace('R', ".")).parse().unwrap();
                assert_eq!(read.unwrap().nominal_ohm(), value, "{text}");
            }
        }
    }
}

#[test]
fn every_place_of_e96_with_every_letter() {
    for code in 0..=99_usize {
        for letter in b'A'..=b'Z' {
            let text = format!("{code:02}{}", char::from(letter));
            let read = Marking::from_chip(&text, None);
            let power = "ZYXABCDEF".find(char::from(letter)).map(|place| place as i32 - 3);
            match (preferred::decade(Series::E96).get(code.wrapping_sub(1)), power) {
                (Some(figures), Some(power)) => {
                    let marking = read.unwrap();
                    assert_eq!(marking.nominal_ohm(), format!("{figures}e{power}").parse::<f64>().unwrap());
                    assert_eq!(marking.tolerance(), Some(0.01));
                    assert_eq!(marking.to_chip_as(ChipForm::CodeAndLetter).unwrap(), text.as_str());
                }
                _ => assert!(read.is_err(), "{text}"),
            }
        }
    }
}

#[test]
fn a_scheme_changes_only_the_letters_in_dispute() {
    for scheme in ChipScheme::ALL {
        assert_eq!(ChipScheme::from_number(scheme.number()), Some(scheme));
        for text in ["472", "4701", "R047", "0", "68C", "01F", "4K7", "00A"] {
            assert_eq!(Marking::from_chip(text, Some(scheme)), Marking::from_chip(text, None));
        }
    }
}

#[test]
fn both_ends_give_their_reasons() {
    let doubts = |text: &str| {
        let ways = both_ways(text, Edition::E2016).unwrap();
        let list = |reading: BandReading| reading.doubts().collect::<Vec<_>>();
        (list(ways.forward), list(ways.backward), ways.more_plausible())
    };
    use Doubt::{DoesNotDecode, InNoSeries, ToleranceColourFirst, UnusualTolerance};
    assert_eq!(
        doubts("yellow violet red gold"),
        (vec![], vec![DoesNotDecode, ToleranceColourFirst], Some(Direction::Forward))
    );
    assert_eq!(
        doubts("gold red violet yellow"),
        (vec![DoesNotDecode, ToleranceColourFirst], vec![], Some(Direction::Backward))
    );
    // White is no tolerance.
    assert_eq!(doubts("red red red white").0, [DoesNotDecode]);
    // 1 kohm or 110 ohm, both in stock.
    assert_eq!(doubts("brown black black brown brown"), (vec![], vec![], None));
    // 2.26 kohm at 1 %, or 11.6 kohm at 2 %, which nobody makes.
    assert_eq!(doubts("red red blue brown brown"), (vec![], vec![InNoSeries], Some(Direction::Forward)));
    assert_eq!(doubts("brown brown blue red red"), (vec![InNoSeries], vec![], Some(Direction::Backward)));
    // Two figures with 1 % are unusual, three with 5 % too.
    assert_eq!(doubts("brown green red brown").0, [UnusualTolerance]);
    assert_eq!(doubts("brown black black red gold").0, [UnusualTolerance]);
    assert_eq!(doubts("brown brown blue red gold").0, [InNoSeries, UnusualTolerance]);
    // The link and a palindrome are the same from both ends.
    assert_eq!(doubts("black"), (vec![], vec![], None));
    // One band alone begins and ends with itself.
    assert_eq!(doubts("gold"), (vec![DoesNotDecode], vec![DoesNotDecode], None));
    assert_eq!(doubts("red red red"), (vec![], vec![], None));
    // The error of the backward reading points into the text as given.
    let ways = both_ways("red violet brown gold", Edition::E2016).unwrap();
    assert_eq!(ways.backward.marking().unwrap_err().detail().index, 17);
    assert_eq!(ways.forward.bands().to_string(), "red violet brown gold");
}

#[test]
fn the_words_of_a_marking() {
    let said = |text: &str| Marking::from_letters(text).unwrap().to_string();
    assert_eq!(said("4K7J"), "4.7 kohm, 5 %");
    assert_eq!(said("R047"), "0.047 ohm");
    assert_eq!(said("R47G"), "0.47 ohm, 2 %");
    assert_eq!(said("100RA"), "100 ohm, 0.05 %");
    assert_eq!(said("1K0C"), "1 kohm, 0.25 %");
    assert_eq!(said("332G"), "332 Gohm");
    assert_eq!(said("999R"), "999 ohm");
    assert_eq!(said("10T"), "10 Tohm");
    assert_eq!(said("59K04"), "59.04 kohm");
    assert_eq!(said("20MM"), "20 Mohm, 20 %");
    let marking = Marking::from_bands("red yellow white orange grey red", Edition::E2016).unwrap();
    assert_eq!(marking.to_string(), "249 kohm, 0.01 %, 50 ppm/K");
    assert_eq!(Marking::ZERO_OHM_LINK.to_string(), "zero-ohm link");
    let odd = Marking::from_value(1.0e-7, Some(0.5), None).unwrap();
    assert_eq!(odd.to_string(), "0.0000001 ohm, 50 %");
    let odd = Marking::from_value(1.23456789012345, Some(0.00123), Some(7)).unwrap();
    assert_eq!(odd.to_string(), "1.23456789012345 ohm, 0.123 %, 7 ppm/K");
    assert_eq!(Marking::from_value(1.0e15, None, None).unwrap().to_string(), "1000 Tohm");
}

#[test]
fn what_says_the_same_is_equal_in_every_code() {
    use std::collections::HashSet;
    let all: HashSet<Marking> = [
        Marking::from_letters("10KF"),
        Marking::from_chip("01C", None),
        Marking::from_bands("brown black black red brown", Edition::E2016),
        Marking::from_bands("BN BK OG BN", Edition::E1974),
        Marking::from_value(10_000.0, Some(0.01), None),
    ]
    .map(Result::unwrap)
    .into();
    assert_eq!(all.len(), 1);
    assert_eq!(Marking::from_chip("0", None), Marking::from_bands("bk", Edition::E2004));
}

proptest! {
    #[test]
    fn no_bytes_make_it_panic(text in prop::collection::vec(any::<u8>(), 0..20)) {
        for edition in Edition::ALL {
            let _ = Marking::from_bands(&text, edition);
            let _ = both_ways(&text, edition);
        }
        let _ = Marking::from_letters(&text);
        let _ = Marking::from_chip(&text, None);
    }

    #[test]
    fn a_text_of_likely_characters_is_read_back_or_refused(text in "[0-9RKMGTFJZYXAC]{1,6}") {
        if let Ok(marking) = Marking::from_letters(&text) {
            prop_assert_eq!(Marking::from_letters(marking.to_letters().unwrap().as_str()), Ok(marking));
        }
        if let Ok(marking) = Marking::from_chip(&text, None) {
            let form = match text.len() {
                _ if marking.tolerance().is_some() => ChipForm::CodeAndLetter,
                4 => ChipForm::FourCharacters,
                _ => ChipForm::ThreeCharacters,
            };
            prop_assert_eq!(Marking::from_chip(marking.to_chip_as(form).unwrap().as_str(), None), Ok(marking));
        }
    }

    #[test]
    fn limits_are_exact_for_every_marking(digits in 1_i64..10_000, exponent in -4_i32..=9, t in 1_i64..9999) {
        let (nominal, tolerance) = (Decimal::new(digits, exponent), Decimal::new(t, -4));
        let marking = Marking::from_value(nominal.to_f64(), Some(tolerance.to_f64()), None).unwrap();
        let limits = marking.limits().unwrap();
        prop_assert_eq!(limits.lower_ohm(), Decimal::new(digits * (10_000 - t), exponent - 4).to_f64());
        prop_assert_eq!(limits.upper_ohm(), Decimal::new(digits * (10_000 + t), exponent - 4).to_f64());
    }
}
