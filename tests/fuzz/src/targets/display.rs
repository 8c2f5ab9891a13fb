//! Display texts against a slow reader on whole numbers of any size, and what the display shows against what it means.

use num_bigint::BigInt;
use reckohm::meter::{Clause, Marks, MeterError, MisfitText, Span};
use reckohm::number::Kind;

use crate::accepted;
use crate::input::{Input, written};

/// The power of ten that makes every number here whole.
const FINEST: i32 = 60;

/// A span as plain numbers: step digit and its power of ten, counts of full scale, power of ten of the unit.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Numbers {
    pub(crate) step: (u32, i32),
    pub(crate) counts: u64,
    pub(crate) unit: i32,
    pub(crate) marks: Marks,
}

impl Numbers {
    /// Such as displays have; not all of them are legal.
    pub(crate) fn draw(input: &mut Input<'_>) -> Numbers {
        let step = (input.one_of(&[1, 1, 2, 5]), input.below(16) as i32 - 7);
        let counts = match input.below(4) {
            0 => input.one_of(&[10, 1_000_000_000, 999_999_999]),
            1 => u64::from(input.u16()) + 10,
            _ => input.one_of(&[2000, 4000, 6000, 20_000, 60_000, 120_000]),
        };
        let unit = input.one_of(&[-3, 0, 3, 6, 9]);
        let marks = Marks::from_bits(input.byte() % 16).expect("16 sets of marks");
        Numbers { step, counts, unit, marks }
    }

    pub(crate) fn span(&self) -> Option<Span> {
        let full_scale = written(&format!("{}e{}", self.counts * u64::from(self.step.0), self.step.1));
        let resolution = written(&format!("{}e{}", self.step.0, self.step.1));
        let clause = Clause::new(0.008, 3.0).expect("legal");
        let unit = written(&format!("1e{}", self.unit));
        accepted!(MeterError, Span::new("span", full_scale, resolution, unit, self.marks, clause))
    }

    /// So many steps in units of 10^-FINEST ohm.
    fn whole(&self, counts: i64) -> BigInt {
        BigInt::from(counts) * self.step.0 * ten_to(FINEST + self.step.1)
    }

    fn decimals_in(&self, unit: i32) -> usize {
        (unit - self.step.1).max(0) as usize
    }

    /// How the display shows so many steps.
    fn shown(&self, counts: i64) -> String {
        let decimals = self.decimals_in(self.unit);
        // In units of the last digit shown, which is the unit itself where the step is coarser.
        let last = self.unit - decimals as i32;
        let digits = (self.whole(counts.abs()) / ten_to(FINEST + last)).to_string();
        let digits = format!("{digits:0>width$}", width = decimals + 1);
        let (whole, fraction) = digits.split_at(digits.len() - decimals);
        let sign = if counts < 0 { "-" } else { "" };
        if decimals > 0 { format!("{sign}{whole}.{fraction}") } else { format!("{sign}{whole}") }
    }
}

fn ten_to(power: i32) -> BigInt {
    BigInt::from(10).pow(u32::try_from(power).expect("a whole number"))
}

/// A reading: over-range with its sign, or counts with their sign.
#[derive(Debug, PartialEq)]
enum Seen {
    Over { negative: bool },
    Counts { counts: i64, negative: bool },
}

fn read(span: &Numbers, text: &[u8]) -> Result<Seen, Kind> {
    if text.len() > 32 {
        return Err(Kind::TextTooLong);
    }
    // Latin letters, a char a byte: every byte is looked at by itself.
    let text: String = text.iter().copied().map(char::from).collect();
    let blank = [' ', '\t', '\r', '\n'];
    let text = text.trim_matches(blank);
    let points = text.matches(['.', ',']).count();
    let solid: String = text.chars().filter(|byte| !blank.contains(byte) && !".,".contains(*byte)).collect();
    let negative = text.starts_with('-');
    if solid.is_empty() && points <= 1 {
        if span.marks.contains(Marks::BLANK) {
            return Ok(Seen::Over { negative: false });
        }
        return Err(if text.is_empty() { Kind::Empty } else { Kind::MissingDigits });
    }
    if solid.len() >= 2 && solid.chars().all(|byte| byte == '-') {
        let known = span.marks.contains(Marks::DASHES);
        return if known { Ok(Seen::Over { negative: false }) } else { Err(Kind::MarkNotOfSpan) };
    }
    let letters = if text.starts_with(['-', '+']) { &solid[1..] } else { &solid };
    if matches!(letters.to_lowercase().as_str(), "ol" | "0l") && letters.is_ascii() && points <= 1 {
        let known = span.marks.contains(Marks::OL);
        return if known { Ok(Seen::Over { negative }) } else { Err(Kind::MarkNotOfSpan) };
    }

    let unsigned = text.strip_prefix(['-', '+']).unwrap_or(text).replace(',', ".");
    let number: String = unsigned.chars().take_while(|byte| byte.is_ascii_digit() || *byte == '.').collect();
    let behind = unsigned[number.len()..].trim_start_matches(blank);
    let (whole, fraction) = number.split_once('.').unwrap_or((&number, ""));
    if fraction.contains('.') {
        return Err(Kind::UnexpectedByte);
    }
    if whole.is_empty() && fraction.is_empty() {
        return Err(if unsigned.len() > number.len() { Kind::UnexpectedByte } else { Kind::MissingDigits });
    }
    let letter = match behind {
        "" => None,
        "k" | "K" => Some(3),
        "M" => Some(6),
        "G" => Some(9),
        _ => return Err(Kind::UnexpectedByte),
    };
    fit(span, negative, whole, fraction, number.contains('.'), letter)
}

fn fit(
    span: &Numbers,
    negative: bool,
    whole: &str,
    fraction: &str,
    point: bool,
    letter: Option<i32>,
) -> Result<Seen, Kind> {
    let unit = letter.unwrap_or(span.unit);
    let decimals = span.decimals_in(unit);
    if whole == "1" && fraction.is_empty() && letter.is_none() && span.marks.contains(Marks::ONE_ALONE) {
        let sure = decimals > 0 || span.step.1 > unit || (span.step.1 == unit && span.step.0 > 1);
        return if sure { Ok(Seen::Over { negative }) } else { Err(Kind::AmbiguousText) };
    }
    let digits: BigInt = format!("0{whole}{fraction}").parse().expect("digits");
    let value = digits * ten_to(FINEST + unit - fraction.len() as i32);
    let beyond = value >= span.whole(span.counts as i64);
    if beyond && letter.is_some() {
        return Err(Kind::BeyondFullScale);
    }
    if fraction.len() < decimals {
        return Err(if point { Kind::TooFewDecimals } else { Kind::MissingPoint });
    }
    if fraction.len() > decimals {
        return Err(Kind::TooManyDecimals);
    }
    if beyond {
        return Err(Kind::BeyondFullScale);
    }
    let largest = (span.whole(span.counts as i64 - 1) / ten_to(FINEST + unit)).to_string();
    if whole.len() > largest.len() {
        return Err(Kind::TooManyDigits);
    }
    let step = span.whole(1);
    if &value % &step != BigInt::ZERO {
        return Err(Kind::OffGrid);
    }
    let counts = i64::try_from(&value / &step).expect("below full scale");
    Ok(Seen::Counts { counts: if negative { -counts } else { counts }, negative })
}

/// The first bytes make the span, then a resistance to be shown; the rest is the text.
pub fn target(data: &[u8]) {
    let mut input = Input::new(data);
    let numbers = Numbers::draw(&mut input);
    let Some(span) = numbers.span() else { return };
    assert_eq!(span.full_scale_counts(), numbers.counts as i64);
    show(&numbers, &span, &mut input);

    let text = input.rest();
    let found = span.read(text);
    if let Some(prepared) = accepted!(MeterError, span.prepared(None)) {
        assert_eq!(prepared.read(text).map_err(|unread| unread.kind()), found.map_err(|error| error.kind()));
    }
    match (accepted!(MeterError, found), read(&numbers, text)) {
        (Some(reading), Ok(Seen::Over { negative })) => {
            assert!(reading.over() && reading.negative() == negative && reading.counts() == 0);
            assert_eq!(reading.ohm().abs(), span.full_scale_ohm());
            assert_eq!(reading.ohm() < 0.0, negative);
        }
        (Some(reading), Ok(Seen::Counts { counts, negative })) => {
            assert_eq!((reading.over(), reading.negative(), reading.counts()), (false, negative, counts));
            assert_eq!(reading.ohm(), written(&format!("{}e{}", counts * i64::from(numbers.step.0), numbers.step.1)));
            let again = span.reading(reading.ohm(), reading.counts(), false, negative);
            assert_eq!(again, Ok(reading));
        }
        (None, Err(kind)) => assert_eq!(found.map_err(|error| error.kind()), Err(kind)),
        (_, expected) => panic!("{found:?}, but {expected:?}"),
    }
}

/// A legal number of steps and any resistance, shown and read again.
fn show(numbers: &Numbers, span: &Span, input: &mut Input<'_>) {
    let full_scale = span.full_scale_counts();
    let counts = input.i64() % full_scale;
    let ohm = written(&format!("{}e{}", counts * i64::from(numbers.step.0), numbers.step.1));
    let shown = span.display_text(ohm).expect("within the span");
    assert_eq!(shown.as_str(), numbers.shown(counts));
    match span.read(shown.as_bytes()) {
        Ok(reading) => assert_eq!((reading.over(), reading.counts(), reading.ohm()), (false, counts, ohm)),
        Err(error) => assert_eq!((error.misfit(), counts.abs()), (Some(MisfitText::AmbiguousOne), 1)),
    }

    let any = input.number();
    let least_over = span.full_scale_ohm() - span.step_ohm();
    let Some(shown) = accepted!(MeterError, span.display_text(any)) else {
        assert!(!any.is_finite() || (numbers.marks == Marks::NONE && any.abs() >= least_over));
        return;
    };
    if let Ok(reading) = span.read(shown.as_bytes()) {
        if reading.over() {
            assert!(any.abs() >= least_over);
        } else {
            let off = (reading.ohm() - any).abs();
            assert!(off <= 0.5 * span.step_ohm() + 1e-15 * any.abs(), "{any} shown as {shown}");
        }
    }
}
