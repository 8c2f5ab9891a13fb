//! Every message of a marking in full, and again from its plain numbers.

use reckohm::marking::{ChipForm, ChipScheme, Edition, Marking, MarkingError, both_ways};
use reckohm::number::{Detail, Kind};

#[track_caller]
fn said<T: core::fmt::Debug>(result: Result<T, MarkingError>, kind: Kind, index: u64, text: &str) {
    let error = result.unwrap_err();
    assert_eq!(error.to_string(), text);
    assert_eq!((error.kind(), error.detail().index), (kind, index));
    let again = MarkingError::from_detail(&error.detail()).unwrap();
    assert_eq!(again, error);
    assert_eq!(again.to_string(), text);
}

fn bands(text: &str) -> Result<Marking, MarkingError> {
    Marking::from_bands(text, Edition::E2016)
}

fn value(ohm: f64, tolerance: f64) -> Marking {
    Marking::from_value(ohm, Some(tolerance), None).unwrap()
}

#[test]
fn of_a_value_to_be_marked() {
    said(
        Marking::from_value(0.0, None, None),
        Kind::OutOfRange,
        0,
        "marking of a value: resistance: 0 ohm given, more than 0 ohm to 1000000000000000 ohm allowed \
         (our rule: beyond it is insulation, not a resistance); give ohm, not kilohm; a short is stated by a limit, not by 0",
    );
    said(
        Marking::from_value(4700.0, Some(5.0), None),
        Kind::OutOfRange,
        0,
        "marking of a value: tolerance: 5 given, more than 0 to less than 1 allowed (IEC 60062); \
         give a fraction, not percent: 5 % is 0.05",
    );
    said(
        Marking::from_value(4700.0, Some(0.05), Some(0)),
        Kind::OutOfRange,
        0,
        "marking of a value: marked temperature coefficient: 0 ppm/K given, 1 ppm/K to 10000 ppm/K allowed (IEC 60062); \
         give parts per million a kelvin: 0.01 %/K is 100",
    );
    said(
        Marking::from_value(1.0 / 3.0, None, None),
        Kind::NoSuchMarking,
        0,
        "marking of a value: 0.3333333333333333 given, a decimal of at most 15 figures allowed; \
         round it to the figures that are to be marked",
    );
    said(
        Marking::from_chip("472", None).unwrap().limits(),
        Kind::MissingArgument,
        0,
        "marking without a tolerance: its limits and bands need one, as \"4K7J\" says 5 %; \
         take it from the data sheet and give the value with it",
    );
    said(
        Marking::ZERO_OHM_LINK.limits(),
        Kind::MissingArgument,
        0,
        "zero-ohm link: it has no limits from a tolerance, only a largest resistance; \
         take that from the data sheet and give it as an upper limit alone",
    );
}

#[test]
fn of_colour_bands() {
    said(
        bands(" - "),
        Kind::Empty,
        0,
        "colour bands: nothing given, needed: 3 to 6 colours, as in \"yellow violet red gold\", or one black band",
    );
    said(
        bands("red;red"),
        Kind::UnexpectedByte,
        3,
        "colour bands: ';' at byte 3, letters with blanks, commas or hyphens between the colours allowed; \
         write the words out",
    );
    said(
        both_ways(b"red \xff", Edition::E2016),
        Kind::UnexpectedByte,
        4,
        "colour bands: the byte 0xFF at byte 4, letters with blanks, commas or hyphens between the colours allowed; \
         write the words out",
    );
    said(
        bands("red purple red"),
        Kind::UnknownColour,
        4,
        "colour bands: the word at byte 4 is no colour, black, brown, red, orange, yellow, green, blue, violet, grey, white, \
         gold, silver and pink allowed, or their two-letter codes (IEC 60757)",
    );
    said(
        bands("red red"),
        Kind::WrongCount,
        0,
        "colour bands: 2 bands given, 3 to 6 allowed, or one black band alone; a band that is worn off cannot be left out",
    );
    said(
        bands("red"),
        Kind::MisplacedColour,
        0,
        "colour bands: red as the only band given, black allowed (zero-ohm link); a resistor has three bands at least",
    );
    said(
        bands("gold red violet yellow"),
        Kind::MisplacedColour,
        0,
        "colour bands: gold as band 1 of 4 given, where the first figure stands; brown, red, orange, yellow, green, blue, \
         violet, grey or white allowed (IEC 60062:2016); try the other end, or look at the colour again",
    );
    said(
        bands("black red violet gold"),
        Kind::MisplacedColour,
        0,
        "colour bands: black as band 1 of 4 given, where the first figure stands; brown, red, orange, yellow, green, blue, \
         violet, grey or white allowed (IEC 60062:2016); a value does not begin with 0: try the other end",
    );
    said(
        Marking::from_bands("red  pink red", Edition::E2016),
        Kind::MisplacedColour,
        5,
        "colour bands: pink as band 2 of 3 given, where a figure stands; black, brown, red, orange, yellow, green, blue, \
         violet, grey or white allowed (IEC 60062:2016); try the other end, or look at the colour again",
    );
    said(
        Marking::from_bands("red red red pink red", Edition::E2004),
        Kind::MisplacedColour,
        12,
        "colour bands: pink as band 4 of 5 given, where the multiplier stands; black, brown, red, orange, yellow, green, \
         blue, violet, grey, white, gold or silver allowed (IEC 60062:2004); another edition has it",
    );
    said(
        Marking::from_bands("red red red yellow", Edition::E2004),
        Kind::MisplacedColour,
        12,
        "colour bands: yellow as band 4 of 4 given, where the tolerance stands; brown, red, green, blue, violet, grey, gold \
         or silver allowed (IEC 60062:2004); other editions have it; on high-voltage parts yellow and grey can stand for \
         gold and silver, 5 % and 10 %",
    );
    said(
        Marking::from_bands("red red red orange", Edition::E2004),
        Kind::MisplacedColour,
        12,
        "colour bands: orange as band 4 of 4 given, where the tolerance stands; brown, red, green, blue, violet, grey, gold \
         or silver allowed (IEC 60062:2004); another edition has it",
    );
    said(
        bands("red red red red red white"),
        Kind::MisplacedColour,
        20,
        "colour bands: white as band 6 of 6 given, where the temperature coefficient stands; black, brown, red, orange, \
         yellow, green, blue, violet or grey allowed (IEC 60062:2016); try the other end, or look at the colour again",
    );
}

#[test]
fn of_letter_codes() {
    let read =
        |text: &str, kind: Kind, index: u64, expected: &str| said(Marking::from_letters(text), kind, index, expected);
    read("", Kind::Empty, 0, "letter code: nothing given, needed: figures with a letter among them, as in 4K7 or 33KK");
    read(
        "4K7 J",
        Kind::UnexpectedByte,
        3,
        "letter code: a blank at byte 3, figures, one letter R, K, M, G or T, and at the end one of A, B, C, D, F, G, J, K, M \
         allowed, without blanks",
    );
    read(
        "472",
        Kind::WrongForm,
        3,
        "letter code: no letter R, K, M, G or T at byte 3, where the figures end, one of them needed in the place of the \
         decimal point, as in 4K7; figures alone are a chip code",
    );
    for text in ["4E7", "4Z7"] {
        read(
            text,
            Kind::WrongForm,
            1,
            "letter code: no letter R, K, M, G or T at byte 1, where the figures end, one of them needed in the place of the \
             decimal point, as in 4K7; figures alone are a chip code",
        );
    }
    read(
        "R",
        Kind::WrongForm,
        0,
        "letter code: no figure beside the letter at byte 0, one to three figures before it or, for R, figures after it \
         needed, as in 4K7 and R47",
    );
    read(
        "1000R",
        Kind::WrongForm,
        3,
        "letter code: one figure too many at byte 3, three before the letter and four in all allowed, as in 332K and 59R04; \
         larger values take the next letter",
    );
    read(
        "04K7",
        Kind::WrongForm,
        0,
        "marking: a needless 0 at byte 0, a first figure of 1 to 9 allowed, or one 0 before R; \
         the first figure is significant, so look at it again",
    );
    read(
        "0R0",
        Kind::WrongForm,
        0,
        "marking: every figure is 0, a value above 0 allowed; a zero-ohm link is marked 0 or 000, or with one black band",
    );
    read(
        "4k7",
        Kind::WrongForm,
        1,
        "marking: a small letter at byte 1, capital letters allowed; a small m would be milli, where M is mega",
    );
    read(
        "K47",
        Kind::WrongForm,
        0,
        "letter code: a letter other than R at byte 0 before all figures, figures before it needed; \
         write 470R for 0.47 kohm",
    );
    read(
        "4L7",
        Kind::DoubtfulCode,
        1,
        "letter code: the letter L at byte 1, R, K, M, G or T allowed (IEC 60062:2004, Table 2a); \
         as milliohm it is in no source that could be read, so write R047 for 47 milliohm",
    );
    read(
        "4K7W",
        Kind::DoubtfulCode,
        3,
        "letter code: the letter W at byte 3, A, B, C, D, F, G, J, K or M allowed as a tolerance; \
         no source for its meaning could be read, so give the tolerance as a number",
    );
    read(
        "4K7Z",
        Kind::DoubtfulCode,
        3,
        "letter code: the letter Z at byte 3, A, B, C, D, F, G, J, K or M allowed as a tolerance; \
         it is said to be an unequal tolerance for capacitors, but no source could be read",
    );
}

#[test]
fn of_chip_codes() {
    let read =
        |text: &str, scheme, kind, index, expected: &str| said(Marking::from_chip(text, scheme), kind, index, expected);
    read(
        "",
        None,
        Kind::Empty,
        0,
        "chip code: nothing given, needed: three or four characters, as in 472, 4701, R047 or 68C, or 0",
    );
    read(
        "4K7",
        None,
        Kind::UnexpectedByte,
        1,
        "chip code: 'K' at byte 1, figures, one R, or two figures and one letter Z, Y, X, A to F allowed, without blanks; \
         a code such as 4K7 is a letter code",
    );
    read(
        "47",
        None,
        Kind::WrongForm,
        0,
        "chip code: neither three nor four characters given, three or four allowed, or 0 for a zero-ohm link; \
         longer codes are often a maker's own",
    );
    read(
        "97A",
        None,
        Kind::WrongForm,
        0,
        "chip code: the two figures before the letter are no place in E96, 01 to 96 allowed; look at them again",
    );
    read(
        "10R",
        None,
        Kind::DoubtfulCode,
        2,
        "chip code: the letter R at byte 2, x0.1 in the military scheme and x0.01 in the common list scheme; \
         name the scheme, or write 10R0 for a decimal point",
    );
    read(
        "01S",
        None,
        Kind::DoubtfulCode,
        2,
        "chip code: the letter S at byte 2, x0.01 in the military scheme and x0.1 in the common list scheme; name the scheme",
    );
    read(
        "01H",
        Some(ChipScheme::Military),
        Kind::DoubtfulCode,
        2,
        "chip code: the letter H at byte 2, which the military scheme that was named does not have; \
         x10 in the common list scheme and x10^7 in the large values scheme; name the scheme",
    );
    read(
        "01G",
        Some(ChipScheme::CommonList),
        Kind::DoubtfulCode,
        2,
        "chip code: the letter G at byte 2, which the common list scheme that was named does not have; \
         x10^6 in the large values scheme, from a single source; name the scheme if it is meant",
    );
    read(
        "01R",
        Some(ChipScheme::LargeValues),
        Kind::DoubtfulCode,
        2,
        "chip code: the letter R at byte 2, which the large values scheme that was named does not have; \
         x0.1 in the military scheme and x0.01 in the common list scheme; name the scheme, or write 10R0 for a decimal point",
    );
}

#[test]
fn of_values_that_cannot_be_written() {
    let kind = Kind::NoSuchMarking;
    let e2016 = Edition::E2016;
    said(
        value(4702.0, 0.01).to_bands(e2016),
        kind,
        0,
        "colour bands for 4702 ohm, tolerance 0.01: more figures than bands, three allowed; use a letter code",
    );
    said(
        value(0.0047, 0.01).to_bands(e2016),
        kind,
        0,
        "colour bands for 0.0047 ohm, tolerance 0.01: no colour for the multiplier, 10^-2 to 10^9 allowed, \
         from edition 2016 on 10^-3; use a letter code",
    );
    said(
        value(4700.0, 0.03).to_bands(e2016),
        kind,
        0,
        "colour bands for 4700 ohm, tolerance 0.03: no band for this tolerance, those of the edition allowed, \
         and 20 % only with two figures and no coefficient; use a letter code",
    );
    said(
        Marking::from_value(4700.0, Some(0.01), Some(30)).unwrap().to_bands(e2016),
        kind,
        0,
        "colour bands for 4700 ohm, tolerance 0.01: no colour for the temperature coefficient, \
         1, 5, 10, 15, 20, 25, 50, 100 and 250 ppm/K allowed; leave it out",
    );
    said(
        Marking::from_value(12_345.0, None, None).unwrap().to_letters(),
        kind,
        0,
        "letter code for 12345 ohm: more than four figures, four allowed; round the value first",
    );
    said(
        value(1.0e15, 0.01).to_letters(),
        kind,
        0,
        "letter code for 1000000000000000 ohm, tolerance 0.01: 1000 Tohm or more, less allowed; T is the last letter",
    );
    said(
        value(0.00047, 0.01).to_letters(),
        kind,
        0,
        "letter code for 0.00047 ohm, tolerance 0.01: more than four places after R, four allowed; \
         there is no letter for milliohm",
    );
    said(
        value(4700.0, 0.03).to_letters(),
        kind,
        0,
        "letter code for 4700 ohm, tolerance 0.03: no letter for this tolerance, 0.05, 0.1, 0.25, 0.5, 1, 2, 5, 10 and 20 % \
         allowed; mark it without tolerance",
    );
    said(
        Marking::ZERO_OHM_LINK.to_letters(),
        kind,
        0,
        "letter code for 0 ohm: no code for 0, a value above 0 allowed; use one black band or the chip code 0",
    );
    said(
        value(4990.0, 0.01).to_chip_as(ChipForm::ThreeCharacters),
        kind,
        0,
        "chip code for 4990 ohm, tolerance 0.01: more figures than the code holds, \
         two of three or three of four characters allowed",
    );
    said(
        value(1.0e12, 0.01).to_chip(),
        kind,
        0,
        "chip code for 1000000000000 ohm, tolerance 0.01: no figure for the multiplier, up to 10^9 allowed; use a letter code",
    );
    said(
        value(0.0047, 0.01).to_chip(),
        kind,
        0,
        "chip code for 0.0047 ohm, tolerance 0.01: more places after R than the code holds, \
         two of three or three of four allowed",
    );
    said(
        value(4700.0, 0.01).to_chip_as(ChipForm::CodeAndLetter),
        kind,
        0,
        "chip code for 4700 ohm, tolerance 0.01: not a value of E96, which these codes count; use four characters",
    );
    said(
        value(4.99e8, 0.01).to_chip_as(ChipForm::CodeAndLetter),
        kind,
        0,
        "chip code for 499000000 ohm, tolerance 0.01: no letter for the multiplier, Z (10^-3) to F (10^5) allowed; \
         use four characters",
    );
    said(
        value(4990.0, 0.05).to_chip_as(ChipForm::CodeAndLetter),
        kind,
        0,
        "chip code for 4990 ohm, tolerance 0.05: the code says 1 %, a tolerance of 0.01 allowed; use four characters",
    );
}

#[test]
fn a_detail_of_something_else_is_no_marking_error() {
    for kind in Kind::ALL {
        let foreign = Detail { argument: 9999, ..Detail::new(*kind) };
        let stands_alone = *kind == Kind::UnknownColour;
        assert_eq!(MarkingError::from_detail(&foreign).is_some(), stands_alone, "{}", kind.name());
    }
}
