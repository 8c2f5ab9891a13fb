//! One part in full: what was written down, which span it belongs on, the budget, the verdict and the advice.

use comfy_table::{Cell, CellAlignment, Table};
use reckohm::measurement::Budget;
use reckohm::meter::{Meter, MeterError, Outcome as Choice};

use crate::judged::{Judgement, Outcome};
use crate::rounded::{beside, decimals_of_two_figures, plain, two_figures, with_uncertainty};
use crate::table::{Entry, limits, table};

/// Everything about one line.
pub fn print((line, outcome): &Entry, meter: &Meter<'_>) {
    println!("\nPart {}, line {}: {}", line.part, line.number, line.kind);
    if !line.note.is_empty() {
        println!("  note: {}", line.note);
    }
    match outcome {
        Outcome::Refused(why) => println!("  refused: {why}"),
        Outcome::Beyond(_) => println!("  beyond the span {}: no value, no budget", line.span),
        Outcome::Judged(judgement) => print_judgement(judgement, meter),
    }
}

fn print_judgement(judgement: &Judgement, meter: &Meter<'_>) {
    let Judgement { wanted, measurement, verdict, .. } = judgement;
    println!("  readings: {}", shown(judgement, meter));
    if let Some(leads) = judgement.leads {
        println!("  leads: {}", plain(leads.ohm()));
    }
    if let (Some(nominal), Some(tolerance)) = (wanted.nominal_ohm, wanted.tolerance) {
        match spans(meter, nominal, tolerance) {
            Ok(spans) => {
                println!(
                    "\nWhat each span would make of {}, {} %:\n{}",
                    plain(nominal),
                    100.0 * tolerance,
                    spans.trim_fmt()
                )
            }
            Err(error) => println!("  no span: {error}"),
        }
    }
    println!("\nBudget, in ohm:\n{}", budget(measurement.budget()).trim_fmt());
    let expanded = measurement.budget().expanded();
    println!(
        "result: {} (coverage probability {}, coverage factor {:.3})",
        with_uncertainty(measurement.estimate().value(), expanded.half_width),
        expanded.coverage_probability,
        expanded.coverage_factor
    );
    if measurement.scatter_at_floor() {
        println!("the readings agree so well that their scatter was taken as 0.3 of the display's step");
    }
    println!("limits: {}", limits(&wanted.limits));
    if let (Some(guard), Some(lower), Some(upper)) =
        (verdict.guard_band_ohm, verdict.acceptance_lower_ohm, verdict.acceptance_upper_ohm)
    {
        let tenth = 0.1 * guard;
        let ends = match (lower.is_finite(), upper.is_finite()) {
            (true, true) => format!("from {} to {}", beside(lower, tenth), beside(upper, tenth)),
            (true, false) => format!("from {}", beside(lower, tenth)),
            _ => format!("up to {}", beside(upper, tenth)),
        };
        println!("guard band: {} ohm, so a mean {ends} conforms", two_figures(guard));
    }
    println!("verdict: {verdict}");
    println!("\nAdvice:");
    for advice in measurement.advice() {
        println!("  - {advice}");
    }
}

/// The readings again as the display showed them, with their unit.
fn shown(judgement: &Judgement, meter: &Meter<'_>) -> String {
    let Ok(span) = meter.span(judgement.span_index) else {
        return String::new();
    };
    let texts = judgement.readings.iter().filter_map(|reading| span.display_text(reading.ohm()).ok());
    let texts: Vec<String> = texts.map(|text| text.to_string()).collect();
    let unit = plain(span.display_unit_ohm());
    format!("{} {}", texts.join(", "), unit.trim_start_matches("1 "))
}

/// Each span of the meter for this part, and why it was chosen or lost.
fn spans(meter: &Meter<'_>, nominal_ohm: f64, tolerance: f64) -> Result<Table, MeterError> {
    let choice = meter.choose(nominal_ohm, tolerance)?;
    let mut table = table(&["span", "would show", "U95 in ohm", "TUR", "choice"]);
    for (index, span) in meter.spans().iter().enumerate() {
        let assessment = choice.assessment(index)?;
        let outcome = match assessment.outcome {
            Choice::Chosen => "chosen".to_owned(),
            Choice::OverRange => "over-range at the upper limit".to_owned(),
            Choice::Wider { factor } => format!("{} times as wide", two_figures(factor)),
            _ => String::new(),
        };
        let number = |number: f64| if assessment.holds { two_figures(number) } else { String::new() };
        table.add_row([
            left(span.label()),
            right(assessment.expected_display),
            right(number(assessment.expanded_ohm)),
            right(number(assessment.tur)),
            left(outcome),
        ]);
    }
    Ok(table)
}

fn budget(budget: &Budget) -> Table {
    let columns = [
        "contribution",
        "value",
        "width",
        "unit",
        "distribution",
        "sensitivity",
        "u in ohm",
        "share of variance",
        "dof",
    ];
    let mut table = table(&columns);
    for row in budget.rows() {
        table.add_row([
            left(row.contribution.name()),
            right(beside_in_unit(row.value, row.width)),
            right(two_figures(row.width)),
            left(row.contribution.unit()),
            left(row.distribution.name()),
            right(format!("{:.4}", row.sensitivity)),
            right(two_figures(row.u_ohm)),
            right(format!("{:.1} %", 100.0 * row.share)),
            right(degrees_of_freedom(row.dof)),
        ]);
    }
    table.add_row([
        left("combined"),
        right(beside_in_unit(budget.value_ohm(), budget.u_ohm())),
        left(""),
        left(""),
        left(""),
        left(""),
        right(two_figures(budget.u_ohm())),
        right("100.0 %"),
        right(degrees_of_freedom(budget.effective_dof())),
    ]);
    table
}

/// A value with the digits that go with its width, without a unit.
fn beside_in_unit(value: f64, width: f64) -> String {
    let decimals = if width > 0.0 { decimals_of_two_figures(width) } else { 1 };
    format!("{value:.decimals$}")
}

/// Degrees of freedom; more than ten thousand are as good as infinite.
fn degrees_of_freedom(dof: f64) -> String {
    if dof > 1.0e4 { "∞".to_owned() } else { format!("{dof:.1}") }
}

fn left(text: impl ToString) -> Cell {
    Cell::new(text.to_string())
}

fn right(text: impl ToString) -> Cell {
    left(text).set_alignment(CellAlignment::Right)
}
