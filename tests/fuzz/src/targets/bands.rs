//! Texts of colour bands against a second reader with a table of its own, against their inverse, and from both ends.

use reckohm::marking::{Edition, Marking, MarkingError, both_ways};
use reckohm::number::Decimal;

use crate::accepted;
use crate::input::{Input, written};

/// Word, code, power of ten as a multiplier, tolerance in ppm in 1974, 2004 and 2016 (0 for none), ppm/K (0 for none).
type Row = (&'static str, &'static str, i32, [u32; 3], u16);

/// Colours as IEC 60062 lists them, in the order of their figures; the last three have none.
const COLOURS: [Row; 13] = [
    ("black", "bk", 0, [0, 0, 0], 250),
    ("brown", "bn", 1, [10_000, 10_000, 10_000], 100),
    ("red", "rd", 2, [20_000, 20_000, 20_000], 50),
    ("orange", "og", 3, [500, 0, 500], 15),
    ("yellow", "ye", 4, [0, 0, 200], 25),
    ("green", "gn", 5, [5_000, 5_000, 5_000], 20),
    ("blue", "bu", 6, [2_500, 2_500, 2_500], 10),
    ("violet", "vt", 7, [1_000, 1_000, 1_000], 5),
    ("grey", "gy", 8, [0, 500, 100], 1),
    ("white", "wh", 9, [0, 0, 0], 0),
    ("gold", "gd", -1, [50_000, 50_000, 50_000], 0),
    ("silver", "sr", -2, [100_000, 100_000, 100_000], 0),
    ("pink", "pk", -3, [0, 0, 0], 0),
];

const BAND_SEPARATORS: &str = " \t,-";

#[derive(Debug, PartialEq)]
enum Fault {
    Byte(u64),
    Word(u64),
    Count(u64),
    Place(u64),
}

/// Digits, power of ten, tolerance in ppm, ppm/K.
type Said = (i64, i32, Option<u32>, Option<u16>);

/// What the text says, found by splitting it into words first.
fn read(text: &[u8], edition: usize) -> Result<Said, Fault> {
    let separator = |byte: &u8| BAND_SEPARATORS.as_bytes().contains(byte);
    let bad = text.iter().position(|byte| !byte.is_ascii_alphabetic() && !separator(byte));
    let legal = &text[..bad.unwrap_or(text.len())];
    let mut words: Vec<(usize, String)> = Vec::new();
    let mut at = 0;
    for word in legal.split(separator) {
        if !word.is_empty() {
            words.push((at, String::from_utf8_lossy(word).to_lowercase()));
        }
        at += word.len() + 1;
    }
    // A word that a bad byte cuts off is not looked at.
    if bad.is_some() && legal.last().is_some_and(|last| !separator(last)) {
        words.pop();
    }
    let mut colours = Vec::new();
    for (at, word) in &words {
        let word = if word == "gray" { "grey" } else { word };
        match COLOURS.iter().position(|row| row.0 == word || row.1 == word) {
            Some(colour) => colours.push(colour),
            None => return Err(Fault::Word(*at as u64)),
        }
    }
    if let Some(at) = bad {
        return Err(Fault::Byte(at as u64));
    }
    if !matches!(colours.len(), 1 | 3 | 4 | 5 | 6) {
        return Err(Fault::Count(colours.len() as u64));
    }
    decode(&colours, edition).map_err(|band| Fault::Place(words[band].0 as u64))
}

/// What the colours say, or the first band that cannot stand where it stands.
fn decode(colours: &[usize], edition: usize) -> Result<Said, usize> {
    if let [only] = colours {
        return if *only == 0 { Ok((0, 0, None, None)) } else { Err(0) };
    }
    let figures = if colours.len() < 5 { 2 } else { 3 };
    let mut digits = 0;
    for (band, &colour) in colours[..figures].iter().enumerate() {
        if colour > 9 || (band == 0 && colour == 0) {
            return Err(band);
        }
        digits = digits * 10 + colour as i64;
    }
    if COLOURS[colours[figures]].0 == "pink" && edition < 2 {
        return Err(figures);
    }
    let exponent = COLOURS[colours[figures]].2;
    let tolerance = match colours.get(figures + 1) {
        None => 200_000,
        Some(colour) => COLOURS[*colour].3[edition],
    };
    if tolerance == 0 {
        return Err(figures + 1);
    }
    let coefficient = colours.get(figures + 2).map(|colour| COLOURS[*colour].4);
    if coefficient == Some(0) {
        return Err(figures + 2);
    }
    Ok((digits, exponent, Some(tolerance), coefficient))
}

fn agrees(found: &Result<Marking, MarkingError>, expected: &Result<Said, Fault>) {
    match (found, expected) {
        (Ok(marking), Ok((digits, exponent, tolerance, coefficient))) => {
            assert_eq!(marking.nominal(), Decimal::new(*digits, *exponent));
            assert_eq!(marking.nominal_ohm(), written(&format!("{digits}e{exponent}")));
            assert_eq!(marking.tolerance(), tolerance.map(|ppm| written(&format!("{ppm}e-6"))));
            assert_eq!(marking.tcr_ppm_per_kelvin(), coefficient.map(f64::from));
        }
        (Err(MarkingError::UnexpectedByte { index, .. }), Err(Fault::Byte(at))) => assert_eq!(index, at),
        (Err(MarkingError::UnknownColour { index }), Err(Fault::Word(at))) => assert_eq!(index, at),
        (Err(MarkingError::Empty { .. }), Err(Fault::Count(0))) => {}
        (Err(MarkingError::BandCount { count }), Err(Fault::Count(counted))) => assert_eq!(count, counted),
        (Err(MarkingError::MisplacedColour { index, .. }), Err(Fault::Place(at))) => assert_eq!(index, at),
        _ => panic!("{found:?}, but {expected:?}"),
    }
}

/// The first byte chooses the edition, the rest is the text.
pub fn target(data: &[u8]) {
    let mut input = Input::new(data);
    let edition = input.below(3);
    let text = input.rest();
    let found = Marking::from_bands(text, Edition::ALL[edition]);
    agrees(&found, &read(text, edition));
    let edition = Edition::ALL[edition];
    if let Some(marking) = accepted!(MarkingError, found) {
        let again = marking.to_bands(edition).expect("what bands say, bands can say");
        assert_eq!(Marking::from_bands(again.to_string(), edition), Ok(marking));
        assert_eq!(Marking::from_band_list(again.colours(), edition), Ok(marking));
    }
    let Some(ways) = accepted!(MarkingError, both_ways(text, edition)) else { return };
    assert_eq!(ways.forward.marking(), found);
    let turned = ways.backward.bands();
    assert_eq!(turned.reversed(), ways.forward.bands());
    assert_eq!(ways.backward.marking().ok(), Marking::from_bands(turned.to_string(), edition).ok());
}
