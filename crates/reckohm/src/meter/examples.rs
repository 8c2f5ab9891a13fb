//! Two meters for demonstrations and tests. Both are invented: no such instrument exists, and their numbers are of the
//! usual size for their kind and no more than that.

use super::clause::USUAL_BAND_C;
use super::{Clause, Marks, Meter, Span};
use crate::number::Decimal;

const fn hand_held(
    label: &'static str,
    full_scale_ohm: f64,
    step: (f64, i32),
    unit: i8,
    clause: (Clause, f64),
) -> Span {
    let step = (step.0, Decimal::new(1, step.1));
    Span::of(label, (full_scale_ohm, 2000), step, unit, Marks::ONE_ALONE.and(Marks::OL), clause)
}

/// ±(fraction of reading + counts), a tenth more for each kelvin outside 23 ± 5 °C.
const fn clause(fraction_of_reading: f64, counts: f64) -> Clause {
    Clause {
        temperature_coefficient_per_kelvin: Some(0.1),
        ..Clause::of(fraction_of_reading, 0.0, counts, USUAL_BAND_C)
    }
}

static HAND_HELD: [Span; 6] = [
    hand_held("200 ohm", 200.0, (0.1, -1), 0, (clause(0.008, 3.0), 0.3)),
    hand_held("2 kohm", 2.0e3, (1.0, 0), 3, (clause(0.008, 3.0), 3.0)),
    hand_held("20 kohm", 20.0e3, (10.0, 1), 3, (clause(0.008, 3.0), 30.0)),
    hand_held("200 kohm", 200.0e3, (100.0, 2), 3, (clause(0.008, 3.0), 300.0)),
    hand_held("2 Mohm", 2.0e6, (1.0e3, 3), 6, (clause(0.01, 3.0), 3.0e3)),
    hand_held("20 Mohm", 20.0e6, (10.0e3, 4), 6, (clause(0.02, 5.0), 50.0e3)),
];

const fn bench(label: &'static str, full_scale_ohm: f64, step: (f64, i32), unit: i8, clause: (Clause, f64)) -> Span {
    let step = (step.0, Decimal::new(1, step.1));
    Span::of(label, (full_scale_ohm, 120_000), step, unit, Marks::OL, clause)
}

/// ±(fraction of reading + fraction of span) after zeroing, a tenth more for each kelvin outside 23 ± 5 °C.
const fn zeroed(fraction_of_reading: f64, fraction_of_span: f64) -> Clause {
    Clause {
        temperature_coefficient_per_kelvin: Some(0.1),
        zeroing_required: true,
        ..Clause::of(fraction_of_reading, fraction_of_span, 0.0, USUAL_BAND_C)
    }
}

static BENCH: [Span; 7] = [
    bench("100 ohm", 120.0, (0.001, -3), 0, (zeroed(0.00015, 0.00008), 0.0096)),
    bench("1 kohm", 1.2e3, (0.01, -2), 3, (zeroed(0.00012, 0.00002), 0.024)),
    bench("10 kohm", 12.0e3, (0.1, -1), 3, (zeroed(0.00012, 0.00002), 0.24)),
    bench("100 kohm", 120.0e3, (1.0, 0), 3, (zeroed(0.00012, 0.00002), 2.4)),
    bench("1 Mohm", 1.2e6, (10.0, 1), 6, (zeroed(0.00015, 0.00002), 24.0)),
    bench("10 Mohm", 12.0e6, (100.0, 2), 6, (zeroed(0.0005, 0.00002), 240.0)),
    bench("100 Mohm", 120.0e6, (1.0e3, 3), 6, (zeroed(0.01, 0.00002), 2.4e3)),
];

impl Meter<'static> {
    /// An invented hand-held meter of 2000 counts, for demonstrations: spans of 200 ohm, 2, 20 and 200 kohm
    /// (±(0.8 % + 3 counts)), 2 Mohm (±(1 % + 3 counts)) and 20 Mohm (±(2 % + 5 counts)); a lone "1" or "OL" means
    /// over-range; 23 ± 5 °C, a tenth more for each kelvin outside.
    ///
    /// ```
    /// use reckohm::meter::Meter;
    /// let labels: Vec<_> = Meter::example_hand_held().spans().iter().map(|span| span.label().to_string()).collect();
    /// assert_eq!(labels, ["200 ohm", "2 kohm", "20 kohm", "200 kohm", "2 Mohm", "20 Mohm"]);
    /// ```
    pub fn example_hand_held() -> Meter<'static> {
        Meter { spans: &HAND_HELD }
    }

    /// An invented bench meter of 5½ digits with 20 % beyond each span's name, for demonstrations: 100 ohm to 100 Mohm in
    /// decades, ±(fraction of reading + fraction of full scale) after zeroing; "OL" means over-range; 23 ± 5 °C, a tenth
    /// more for each kelvin outside.
    ///
    /// ```
    /// use reckohm::meter::Meter;
    /// let span = Meter::example_bench().spans()[2]; // 10 kohm
    /// assert_eq!(span.read(b"4.7012")?.ohm(), 4701.2);
    /// assert!(span.clause().zeroing_required());
    /// # Ok::<(), reckohm::meter::MeterError>(())
    /// ```
    pub fn example_bench() -> Meter<'static> {
        Meter { spans: &BENCH }
    }
}
