//! Replies over the wire against the standard library's parser and the marks of SCPI-1999.

use reckohm::meter::MeterError;
use reckohm::number::Kind;

use super::display::Numbers;
use super::number_text::number_of;
use crate::accepted;
use crate::input::Input;

/// The first bytes make the span; the rest is the reply.
pub fn target(data: &[u8]) {
    let mut input = Input::new(data);
    let Some(span) = Numbers::draw(&mut input).span() else { return };
    let text = input.rest();
    let number = number_of(text).filter(|_| text.len() <= 128).map(|text| text.parse::<f64>().expect("tried before"));
    let found = span.read_reply(text);
    let kind = found.map_err(|error| error.kind());
    let reading = accepted!(MeterError, found);
    let Some(ohm) = number else {
        let form = [Kind::Empty, Kind::TextTooLong, Kind::UnexpectedByte, Kind::MissingDigits];
        assert!(kind.is_err_and(|kind| form.contains(&kind)), "{kind:?}");
        return;
    };
    // Ends of the two marks, each within a millionth.
    let within = |mark: f64| (mark * (1.0 - 1e-6)..=mark * (1.0 + 1e-6)).contains(&ohm.abs());
    let at_an_end = [9.9e37, 9.91e37].iter().any(|mark| ((ohm.abs() / mark - 1.0).abs() - 1e-6).abs() < 1e-14);
    if at_an_end {
        return;
    }
    if ohm.is_infinite() {
        assert_eq!(kind, Err(Kind::ResultOutOfRange));
    } else if within(9.9e37) {
        let reading = reading.expect("over-range");
        assert!(reading.over() && reading.counts() == 0 && reading.negative() == (ohm < 0.0));
        assert_eq!(reading.ohm(), span.full_scale_ohm().copysign(ohm));
    } else if within(9.91e37) {
        assert_eq!(kind, Err(Kind::NoReading));
    } else if ohm.abs() >= 9e37 {
        assert_eq!(kind, Err(Kind::UndefinedMark));
    } else if ohm.abs() >= span.full_scale_ohm() {
        assert_eq!(kind, Err(Kind::BeyondFullScale));
    } else {
        let reading = reading.expect("within the span");
        assert_eq!((reading.over(), reading.counts()), (false, 0));
        assert_eq!(reading.negative(), ohm.is_sign_negative());
        assert_eq!(reading.ohm().to_bits(), if ohm == 0.0 { 0 } else { ohm.to_bits() });
        assert_eq!(span.reading(reading.ohm(), 0, false, reading.negative()), Ok(reading));
    }
}
