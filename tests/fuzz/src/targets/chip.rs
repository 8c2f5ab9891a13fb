//! Chip codes against a second reader, whose E96 values come from the rule 10^(i/96), and against their inverse.

use reckohm::marking::{ChipForm, ChipScheme, Marking, MarkingError};

use crate::accepted;
use crate::input::{Input, written};

/// Letters with their powers of ten that hold whatever the scheme, then those of one scheme alone.
const LETTERS: [(Option<ChipScheme>, &str); 4] = [
    (None, "Z-3 Y-2 X-1 A0 B1 C2 D3 E4 F5"),
    (Some(ChipScheme::Military), "R-1 S-2"),
    (Some(ChipScheme::CommonList), "R-2 S-1 H1"),
    (Some(ChipScheme::LargeValues), "G6 H7"),
];

/// Nominal value and whether it says 1 %, or `None` where it is no such code.
fn read(text: &[u8], scheme: Option<ChipScheme>) -> Option<(f64, bool)> {
    let text = std::str::from_utf8(text).ok()?;
    if matches!(text, "0" | "000" | "0000") {
        return Some((0.0, false));
    }
    if !matches!(text.len(), 3 | 4) || !text.is_ascii() {
        return None;
    }
    let digits = |text: &str| text.bytes().all(|byte| byte.is_ascii_digit());
    let (front, last) = text.split_at(text.len() - 1);
    if digits(text) {
        return (!text.starts_with('0')).then(|| (written(&format!("{front}e{last}")), false));
    }
    if text.len() == 3 && digits(front) {
        let code: u32 = front.parse().ok()?;
        let rows = LETTERS.iter().filter(|(of, _)| of.is_none() || *of == scheme);
        let row = rows.flat_map(|(_, rows)| rows.split(' ')).find(|row| &row[..1] == last)?;
        let figures = (100.0 * 10.0_f64.powf(f64::from(code.checked_sub(1)?) / 96.0)).round();
        return (code <= 96).then(|| (written(&format!("{figures}e{}", &row[1..])), true));
    }
    let (before, after) = text.split_once('R').filter(|(before, after)| digits(before) && digits(after))?;
    let value = written(&format!("0{before}.{after}0"));
    (value > 0.0 && (!before.starts_with('0') || before == "0")).then_some((value, false))
}

/// The first byte chooses the scheme, the rest is the text.
pub fn target(data: &[u8]) {
    let mut input = Input::new(data);
    let scheme = ChipScheme::from_number(input.below(4) as u8);
    let text = input.rest();
    let found = Marking::from_chip(text, scheme);
    let Some(marking) = accepted!(MarkingError, found) else {
        assert_eq!(read(text, scheme), None, "{found:?}");
        return;
    };
    let (ohm, one_percent) = read(text, scheme).expect("read here too");
    assert_eq!(marking.nominal_ohm(), ohm);
    assert_eq!(marking.tolerance(), one_percent.then_some(0.01));
    assert_eq!(marking.is_zero_ohm_link(), ohm == 0.0);
    for form in [ChipForm::ThreeCharacters, ChipForm::FourCharacters, ChipForm::CodeAndLetter] {
        let Some(again) = accepted!(MarkingError, marking.to_chip_as(form)) else { continue };
        let read = Marking::from_chip(again.as_str(), None).expect("what was written can be read");
        assert_eq!(read.nominal(), marking.nominal(), "{again}");
        assert_eq!(read.tolerance().is_some(), form == ChipForm::CodeAndLetter, "{again}");
    }
    // A code of figures and R alone is written again in the form of its own length, from R on without a needless zero.
    if !one_percent && ohm > 0.0 && !text.starts_with(b"0R") {
        let form = if text.len() == 3 { ChipForm::ThreeCharacters } else { ChipForm::FourCharacters };
        let again = marking.to_chip_as(form).expect("it has this form");
        assert_eq!(Marking::from_chip(again.as_str(), None), Ok(marking));
    }
}
