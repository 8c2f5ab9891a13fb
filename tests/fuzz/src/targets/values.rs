//! Values into every code and back: what is written says the same, and what is refused has no such code.

use reckohm::marking::{ChipForm, Edition, Marking, MarkingError};

use crate::accepted;
use crate::input::Input;

/// Nominal value, tolerance and coefficient: hostile numbers and such as stand on parts.
pub fn target(data: &[u8]) {
    let mut input = Input::new(data);
    let edition = Edition::ALL[input.below(3)];
    let nominal = match input.below(4) {
        0 => input.number(),
        1 => input.decimal(-6..16),
        _ => f64::from(input.u16() % 1000) * 10.0_f64.powi(i32::from(input.byte() % 16) - 4),
    };
    let tolerance = match input.below(8) {
        0 => None,
        1 => Some(input.number()),
        _ => Some(input.one_of(&[0.2, 0.1, 0.05, 0.02, 0.01, 0.005, 0.0025, 0.001, 0.0005, 0.0002, 0.0001, 0.03])),
    };
    let coefficient = match input.below(4) {
        0 => Some(input.u16()),
        1 => Some(input.one_of(&[250, 100, 50, 15, 25, 20, 10, 5, 1])),
        _ => None,
    };
    let Some(marking) = accepted!(MarkingError, Marking::from_value(nominal, tolerance, coefficient)) else { return };
    assert_eq!((marking.nominal_ohm(), marking.tolerance()), (nominal, tolerance));
    let figures = marking.nominal().normalised().digits.to_string().len();

    let bands = accepted!(MarkingError, marking.to_bands(edition));
    if let Some(bands) = bands {
        assert_eq!(Marking::from_band_list(bands.colours(), edition), Ok(marking));
    }
    // Two figures from 10 ohm to 99 Mohm with 5 %, 1 % or 20 % have bands in every edition.
    let everyday = figures <= 2 && (10.0..99e6).contains(&nominal) && coefficient.is_none();
    assert!(bands.is_some() || !everyday || !matches!(tolerance, Some(0.05 | 0.01 | 0.2)), "{marking}");

    if let Some(letters) = accepted!(MarkingError, marking.to_letters()) {
        let plain = Marking::from_value(nominal, tolerance, None).expect("legal with a coefficient");
        assert_eq!(Marking::from_letters(letters.as_bytes()), Ok(plain));
    } else {
        // Up to four figures from 0.1 ohm on with 5 % have letters.
        assert!(figures > 4 || !(0.1..1e15).contains(&nominal) || tolerance != Some(0.05), "{marking}");
    }

    for form in [ChipForm::ThreeCharacters, ChipForm::FourCharacters, ChipForm::CodeAndLetter] {
        let Some(chip) = accepted!(MarkingError, marking.to_chip_as(form)) else { continue };
        let read = Marking::from_chip(chip.as_bytes(), None).expect("what was written can be read");
        assert_eq!(read.nominal(), marking.nominal());
    }
    // Four characters hold all that three do, and every value of three figures from 1 ohm on.
    let four = marking.to_chip_as(ChipForm::FourCharacters).is_ok();
    assert_eq!(accepted!(MarkingError, marking.to_chip()).is_some(), four);
    assert!(four || figures > 3 || !(1.0..=999e9).contains(&nominal), "{marking}");
    assert!(marking.to_string().contains("ohm"));
}
