//! Evaluations of readings under hostile conditions: a typed error, or a finite result whose budget adds up.

use reckohm::measurement::{Measurement, MeasurementError, Setup, evaluate};
use reckohm::meter::{Leads, Meter, Reading, Span};
use reckohm::uncertainty::Estimate;

use super::coverage::draw;
use crate::accepted;
use crate::input::Input;

/// A value of a fitting size with a few parts of like size; sometimes hostile.
fn around(input: &mut Input<'_>, size: f64) -> Option<Estimate> {
    let value = if input.below(8) == 0 { input.number() } else { size * input.size(-1..1) };
    let scale = 0.01 * size;
    let parts = draw(input).and_then(|parts| parts.times(scale).ok())?;
    Estimate::from_parts(value, parts.rectangular(), parts.normal_u(), parts.type_a(), parts.below(), parts.above())
        .ok()
}

fn reading(input: &mut Input<'_>, span: &Span) -> Option<Reading> {
    if input.below(16) == 0 {
        return span.reading(span.full_scale_ohm(), 0, true, false).ok();
    }
    let counts = i64::from(input.u16()) % span.full_scale_counts();
    let text = span.display_text(counts as f64 * span.step_ohm()).ok()?;
    span.read(text.as_bytes()).ok()
}

fn setup<'a>(input: &mut Input<'_>, spans: &'a [Span], shown: f64) -> Option<Setup<'a>> {
    let set = (input.byte(), input.byte());
    let number = |input: &mut Input<'_>, usual: f64| if input.below(8) == 0 { input.number() } else { usual };
    let mut setup = Setup::new();
    if set.0 & 1 != 0 {
        let span = input.one_of(spans);
        let leads = reading(input, &span).and_then(|reading| Leads::from_reading(&reading, &span).ok());
        setup = setup.with_leads(leads.or_else(|| Leads::from_wire(1.0, 0.75, 5).ok())?);
    }
    if set.0 & 2 != 0 {
        let path = around(input, 100.0 * shown.abs().max(1e-3))?;
        setup = accepted!(MeasurementError, setup.with_parallel_path(path))?;
    }
    if set.0 & 4 != 0 {
        setup = accepted!(MeasurementError, setup.with_known_tcr(around(input, 1e3)?))?;
    }
    if set.0 & 8 != 0 {
        let limit = number(input, 100.0);
        setup = accepted!(MeasurementError, setup.with_tcr_limit(limit))?;
    }
    if set.0 & 16 != 0 {
        let (temperature, reference) = (around(input, 30.0)?, number(input, 20.0));
        setup = accepted!(MeasurementError, setup.with_temperature(temperature, reference))?;
    }
    if set.0 & 32 != 0 {
        let temperature = number(input, 35.0);
        setup = accepted!(MeasurementError, setup.with_meter_temperature(temperature))?;
    }
    if set.0 & 64 != 0 {
        let repeatability = number(input, 0.3);
        setup = accepted!(MeasurementError, setup.with_repeatability(repeatability))?;
    }
    if set.0 & 128 != 0 {
        let p = input.number();
        setup = accepted!(MeasurementError, setup.with_coverage_probability(p))?;
    }
    if set.1 & 1 != 0 {
        setup = setup.with_zero_error_common(set.1 & 2 != 0);
    }
    Some(if set.1 & 4 != 0 { setup.with_spans(spans) } else { setup })
}

/// A span, readings on it, and conditions.
pub fn target(data: &[u8]) {
    let mut input = Input::new(data);
    let meter = if input.flag() { Meter::example_bench() } else { Meter::example_hand_held() };
    let span = input.one_of(meter.spans());
    let count = input.below(6);
    let readings: Vec<Reading> = (0..count).filter_map(|_| reading(&mut input, &span)).collect();
    let shown = readings.first().map_or(0.0, Reading::ohm);
    let Some(setup) = setup(&mut input, meter.spans(), shown) else { return };
    let found = evaluate(&span, &readings, &setup);
    let over = readings.iter().position(|reading| reading.over());
    if let Some(measured) = accepted!(MeasurementError, found) {
        assert!(over.is_none() && measured.readings() == readings.len() && !readings.is_empty());
        adds_up(&measured);
    } else if let Some(index) = over {
        assert_eq!(found, Err(MeasurementError::OverRange { index }));
    } else if readings.is_empty() {
        assert_eq!(found, Err(MeasurementError::NoReading));
    }
}

fn adds_up(measured: &Measurement) {
    let estimate = measured.estimate();
    let budget = measured.budget();
    assert!(estimate.value().is_finite() && estimate.u().is_finite() && budget.u_ohm() == estimate.u());
    assert_eq!(budget.value_ohm(), estimate.value());
    let expanded = budget.expanded();
    assert!(expanded.half_width.is_finite() && expanded.lower <= expanded.upper);
    let (mut squares, mut shares) = (0.0, 0.0);
    for row in budget.rows() {
        for number in [row.value, row.width, row.sensitivity, row.u_ohm, row.share] {
            assert!(number.is_finite(), "{row:?}");
        }
        assert!(row.share >= 0.0 && row.width >= 0.0 && row.u_ohm >= 0.0 && !row.dof.is_nan(), "{row:?}");
        squares += row.u_ohm * row.u_ohm;
        shares += row.share;
    }
    let u = estimate.u();
    assert!((squares.sqrt() - u).abs() <= 1e-9 * u, "{} and {u}", squares.sqrt());
    assert!(u == 0.0 || (shares - 1.0).abs() < 1e-9, "{shares}");
    for advice in measured.advice() {
        assert!((10..1000).contains(&advice.to_string().len()) && !advice.to_string().contains("NaN"), "{advice}");
    }
}
