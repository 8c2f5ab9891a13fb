//! Letter-and-digit codes against a second reader that puts a point in the letter's place, and against their inverse.

use reckohm::marking::{Marking, MarkingError};

use crate::accepted;
use crate::input::written;

const TOLERANCES: &str = "A0.0005 B0.001 C0.0025 D0.005 F0.01 G0.02 J0.05 K0.1 M0.2";

/// Nominal value and tolerance, or `None` where it is no such code.
fn read(text: &[u8]) -> Option<(f64, Option<f64>)> {
    let text = std::str::from_utf8(text).ok()?;
    let place = text.find(|letter: char| !letter.is_ascii_digit())?;
    let (before, rest) = text.split_at(place);
    let exponent = match rest.chars().next()? {
        'R' => 0,
        'K' => 3,
        'M' => 6,
        'G' => 9,
        'T' => 12,
        _ => return None,
    };
    let rest = &rest[1..];
    let after: String = rest.chars().take_while(char::is_ascii_digit).collect();
    let tolerance = match &rest[after.len()..] {
        "" => None,
        letter => {
            let row = TOLERANCES.split(' ').find(|row| &row[..1] == letter)?;
            Some(written(&row[1..]))
        }
    };
    let whole = if before == "0" && exponent == 0 { "" } else { before };
    let room = whole.len() <= 3 && whole.len() + after.len() <= 4;
    let form = !(whole.starts_with('0') || before.is_empty() && exponent > 0);
    let value = written(&format!("0{whole}.{after}0e{exponent}"));
    (room && form && value > 0.0).then_some((value, tolerance))
}

/// The bytes are the text.
pub fn target(data: &[u8]) {
    let found = Marking::from_letters(data);
    let Some(marking) = accepted!(MarkingError, found) else {
        assert_eq!(read(data), None, "{found:?}");
        return;
    };
    assert_eq!(Some((marking.nominal_ohm(), marking.tolerance())), read(data));
    assert_eq!(marking.tcr_ppm_per_kelvin(), None);
    let again = marking.to_letters().expect("what letters say, letters can say");
    assert_eq!(Marking::from_letters(again.as_bytes()), Ok(marking));
    assert!(again.as_bytes().len() <= data.len() + 2, "{again}");
}
