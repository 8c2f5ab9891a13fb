//! One line of the tray, from what the display showed to a verdict.

use reckohm::measurement::{Measurement, Setup, evaluate};
use reckohm::meter::{Leads, Meter, Reading, Span, Step};
use reckohm::uncertainty::Estimate;
use reckohm::verdict::{Rule, Verdict, judge};

use crate::refusal::Refusal;
use crate::tray::{Line, Wanted};

/// The temperature that nominal values hold at in °C (common practice).
const REFERENCE_TEMPERATURE_C: f64 = 20.0;

/// What became of a line.
pub enum Outcome {
    /// It was measured and judged.
    Judged(Box<Judgement>),
    /// At least one reading was beyond the span, so there is no value.
    Beyond(Beyond),
    /// It could not be used.
    Refused(Refusal),
}

/// A measured part with its verdict.
pub struct Judgement {
    pub wanted: Wanted,
    pub span_index: usize,
    pub readings: Vec<Reading>,
    pub leads: Option<Leads>,
    pub measurement: Measurement,
    pub verdict: Verdict,
    /// What the meter should do after the last reading.
    pub step: Step,
}

/// A part that was beyond the span.
pub struct Beyond {
    pub wanted: Wanted,
    pub step: Step,
}

/// Judges a line: marking and limits, display texts to readings, leads off, budget, verdict.
pub fn judge_line(line: &Line, meter: &Meter<'_>, rule: Rule) -> Outcome {
    judged(line, meter, rule).unwrap_or_else(Outcome::Refused)
}

fn judged(line: &Line, meter: &Meter<'_>, rule: Rule) -> Result<Outcome, Refusal> {
    let wanted = line.wanted()?;
    let (span_index, span) = span_with_label(meter, &line.span)?;
    let readings = line.shown().map(|text| span.read(text)).collect::<Result<Vec<_>, _>>()?;
    if let Some(over) = readings.iter().find(|reading| reading.over()) {
        return Ok(Outcome::Beyond(Beyond { wanted, step: meter.next_span(span_index, over)? }));
    }
    let leads = line.leads().map(|text| Leads::from_reading(&span.read(text)?, span)).transpose()?;
    let mut setup = Setup::new().with_spans(meter.spans());
    if let Some(leads) = leads {
        setup = setup.with_leads(leads);
    }
    if let Some(part_c) = line.part_c()? {
        setup = setup.with_temperature(Estimate::exact(part_c)?, REFERENCE_TEMPERATURE_C)?;
        if let Some(limit) = wanted.marking.and_then(|marking| marking.tcr_ppm_per_kelvin()) {
            setup = setup.with_tcr_limit(limit)?;
        }
    }
    let measurement = evaluate(span, &readings, &setup)?;
    let verdict = judge(measurement.estimate(), &wanted.limits, rule)?;
    let step = match readings.last() {
        Some(last) => meter.next_span(span_index, last)?,
        None => Step::Stay,
    };
    Ok(Outcome::Judged(Box::new(Judgement { wanted, span_index, readings, leads, measurement, verdict, step })))
}

fn span_with_label<'a>(meter: &Meter<'a>, label: &str) -> Result<(usize, &'a Span), Refusal> {
    let mut spans = meter.spans().iter().enumerate();
    spans.find(|(_, span)| span.label().as_str() == label).ok_or_else(|| Refusal::UnknownSpan(label.to_owned()))
}
