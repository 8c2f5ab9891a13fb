//! Prepared spans: the readings, refusals and half-widths of the spans that they come from, in either precision.

use reckohm::meter::{Clause, Marks, Meter, MeterError, PreparedParts, PreparedSpan, Span, Unread};
use reckohm::number::{Kind, Real};
use reckohm_tests::random::Random;

/// Spans of every unit, step and set of marks, among them displays that end in noughts.
fn spans<R: Real>() -> Vec<Span<R>> {
    let mut made = Vec::new();
    for unit in [1e-3, 1.0, 1e3, 1e6, 1e9] {
        for step in [0.1, 0.2, 1.0, 5.0, 10.0, 200.0] {
            for counts in [10.0, 2000.0, 6000.0] {
                for marks in 0..16 {
                    let marks = Marks::from_bits(marks).unwrap();
                    let clause = Clause::new(R::lit(0.008), R::lit(3.0)).unwrap();
                    let (full_scale, step) = (R::lit(counts * step), R::lit(step));
                    made.extend(Span::new("span", full_scale, step, R::lit(unit), marks, clause));
                }
            }
        }
    }
    assert!(made.len() > 1000);
    made
}

/// A text as a display or a hand may write it, or nearly.
fn text(random: &mut Random) -> Vec<u8> {
    const BYTES: &[u8] = b"0011223344556789..,--+ kKMGOL\tx";
    let digits = |random: &mut Random, most: u64| -> String {
        (0..random.below(most)).map(|_| char::from(b'0' + random.below(10) as u8)).collect()
    };
    match random.below(4) {
        0 => (0..random.below(36)).map(|_| BYTES[random.below(BYTES.len() as u64) as usize]).collect(),
        1 => [&b"1"[..], b"OL", b"0.L", b" -1. ", b"---", b"", b".", b"1 k"][random.below(8) as usize].to_vec(),
        _ => {
            let letter = ["", "", "k", " M", "G"][random.below(5) as usize];
            format!("{}.{}{letter}", digits(random, 6), digits(random, 5)).into_bytes()
        }
    }
}

fn reads_alike<R: Real>() -> [usize; 3] {
    let (spans, mut random) = (spans::<R>(), Random::new(20_261_126));
    let mut seen = [0; 3];
    for _ in 0..200_000 {
        let span = &spans[random.below(spans.len() as u64) as usize];
        let Ok(prepared) = span.prepared(None) else { continue };
        let text = text(&mut random);
        match (prepared.read(&text), span.read(&text)) {
            (Ok(reading), Ok(expected)) => {
                assert_eq!(reading, expected, "{text:?}");
                assert!(reading.ohm().to_f64().to_bits() == expected.ohm().to_f64().to_bits());
                seen[usize::from(reading.over())] += 1;
            }
            (Err(unread), Err(expected)) => {
                assert_eq!(unread.kind(), expected.kind(), "{text:?}");
                assert_eq!(Unread::from_detail(&unread.detail()), Some(unread));
                assert_eq!(MeterError::from_detail(&unread.detail()), Some(MeterError::Unread(unread)));
                if unread.kind() != Kind::TextTooLong {
                    assert_eq!(unread.detail().index, expected.detail().index, "{text:?}");
                }
                seen[2] += 1;
            }
            other => panic!("{text:?} on {span:?}: {other:?}"),
        }
    }
    seen
}

#[test]
fn a_prepared_span_reads_what_its_span_reads() {
    for seen in [reads_alike::<f64>(), reads_alike::<f32>()] {
        assert!(seen.iter().all(|count| *count > 1000), "{seen:?}");
    }
}

#[test]
fn its_clause_is_that_of_the_span_at_the_temperature_it_was_prepared_for() {
    for span in Meter::example_hand_held().spans().iter().chain(Meter::example_bench().spans()) {
        for temperature in [None, Some(18.0), Some(23.0), Some(35.0), Some(-60.0)] {
            let prepared = span.prepared(temperature).unwrap();
            assert_eq!(PreparedSpan::restored(prepared.parts()), Some(prepared));
            for ohm in [0.0, 1.0, -3.0, 0.7 * span.full_scale_ohm()] {
                let found = prepared.clause_half_width_ohm(ohm).unwrap();
                assert_eq!(found.to_bits(), span.clause_half_width_ohm(ohm, temperature).unwrap().to_bits());
            }
            assert_eq!(prepared.clause_half_width_ohm(f64::NAN).unwrap_err().kind(), Kind::NotFinite);
        }
    }
    assert!(Meter::example_bench().spans()[0].prepared(Some(121.0)).is_err());
}

#[test]
fn what_is_not_one_rounding_is_not_prepared() {
    let clause = Clause::new(0.01_f32, 2.0).unwrap();
    let fine = Span::new("fine", 2.0e8_f32, 1.0, 1.0, Marks::OL, clause).unwrap();
    let error = fine.prepared(None).unwrap_err();
    assert_eq!(error, MeterError::TooFineToPrepare { full_scale_ohm: 2.0e8, resolution_ohm: 1.0 });
    assert_eq!(
        error.to_string(),
        "preparing a span: a full scale of 200000000 ohm with a step of 1 ohm given, values that are one rounding of whole \
         numbers allowed: up to 16777216 of the step's last place, which is at most 1e10 ohm, in float, and any span in \
         double; read on the span itself, or prepare it in double"
    );
    let clause = Clause::new(0.01, 2.0).unwrap();
    let in_double = |full_scale, step, unit| Span::new("fine", full_scale, step, unit, Marks::OL, clause).unwrap();
    assert!(in_double(2.0e8, 1.0, 1.0).prepared(None).is_ok());
    let coarse = in_double(1.0e15, 1.0e9, 1.0e-3).prepared(None).unwrap();
    assert_eq!(coarse.read(b"3000000000000").unwrap().counts(), 3);
    assert!(coarse.read(b"3000000000001").is_err());
}

#[test]
fn numbers_of_no_span_are_not_restored() {
    let parts = Meter::example_hand_held().spans()[2].prepared(None).unwrap().parts();
    for broken in [
        PreparedParts { step_digits: 0, ..parts },
        PreparedParts { step_digits: 3, ..parts },
        PreparedParts { marks: 16, ..parts },
        PreparedParts { step_power: -128, ..parts },
    ] {
        assert_eq!(PreparedSpan::restored(broken), None);
    }
    let clause = Clause::new(0.01_f32, 2.0).unwrap();
    let parts = Span::new("float", 2.0e4_f32, 10.0, 1.0e3, Marks::OL, clause).unwrap().prepared(None).unwrap().parts();
    assert_eq!(
        PreparedSpan::restored(PreparedParts { counts: 1 << 24, ..parts }).map(|span| span.parts().counts),
        Some(1 << 24)
    );
    assert_eq!(PreparedSpan::restored(PreparedParts { counts: (1 << 24) + 1, ..parts }), None);
}

#[test]
fn a_refusal_says_what_and_where() {
    let prepared = Meter::example_hand_held().spans()[2].prepared(None).unwrap();
    assert_eq!(
        prepared.read(b" 4880").unwrap_err().to_string(),
        "display text on a prepared span: digits without their point given at offset 5, at most 32 bytes as the span's display \
         shows them allowed; read it on the span itself to see what it could be"
    );
}
