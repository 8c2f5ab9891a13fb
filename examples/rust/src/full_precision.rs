//! The judged tray with every digit, a row a quantity: to compare with what the other doors make of the same file.
//!
//! Columns: line, part, quantity, value, bits. A number stands as a decimal of 17 figures, from which the same number is
//! read again, and as the hexadecimal bits of the double. A text has no bits.

use std::path::Path;

use reckohm::measurement::Row;
use reckohm::meter::{Meter, Step};

use crate::judged::{Judgement, Outcome};
use crate::table::Entry;

/// Writes the file.
pub fn write(path: &Path, entries: &[Entry], meter: &Meter<'_>) -> Result<(), csv::Error> {
    let mut rows = Rows { writer: csv::Writer::from_path(path)?, line: String::new(), part: String::new() };
    rows.writer.write_record(["line", "part", "quantity", "value", "bits"])?;
    for (line, outcome) in entries {
        (rows.line, rows.part) = (line.number.to_string(), line.part.clone());
        match outcome {
            Outcome::Refused(why) => {
                rows.text("outcome", "refused")?;
                rows.text("status", &why.status().to_string())?;
                rows.text("message", &why.to_string())?;
            }
            Outcome::Beyond(beyond) => {
                rows.text("outcome", "beyond the span")?;
                rows.text("next span", next_span(beyond.step, meter))?;
            }
            Outcome::Judged(judgement) => rows.judgement(judgement, meter)?,
        }
    }
    rows.writer.flush()?;
    Ok(())
}

fn next_span<'a>(step: Step, meter: &Meter<'a>) -> &'a str {
    match step {
        Step::Stay => "stay",
        Step::BeyondHighest => "none",
        Step::Up(index) | Step::Down(index) => meter.spans().get(index).map_or("none", |span| span.label().as_str()),
    }
}

struct Rows {
    writer: csv::Writer<std::fs::File>,
    line: String,
    part: String,
}

impl Rows {
    fn text(&mut self, quantity: &str, value: &str) -> Result<(), csv::Error> {
        self.writer.write_record([&self.line, &self.part, quantity, value, ""])
    }

    fn number(&mut self, quantity: &str, value: f64) -> Result<(), csv::Error> {
        let bits = format!("{:016x}", value.to_bits());
        self.writer.write_record([&self.line, &self.part, quantity, &decimal(value), &bits])
    }

    /// A number that may not be there.
    fn perhaps(&mut self, quantity: &str, value: Option<f64>) -> Result<(), csv::Error> {
        match value {
            Some(value) => self.number(quantity, value),
            None => self.text(quantity, "none"),
        }
    }

    fn judgement(&mut self, judgement: &Judgement, meter: &Meter<'_>) -> Result<(), csv::Error> {
        let Judgement { wanted, measurement, verdict, .. } = judgement;
        let budget = measurement.budget();
        self.text("outcome", verdict.answer.name())?;
        self.text("next span", next_span(judgement.step, meter))?;
        self.number("lower limit", wanted.limits.lower_ohm())?;
        self.number("upper limit", wanted.limits.upper_ohm())?;
        self.number("value", measurement.estimate().value())?;
        self.number("u", budget.expanded().u)?;
        self.number("effective degrees of freedom", budget.effective_dof())?;
        self.number("expanded uncertainty", budget.expanded().half_width)?;
        self.number("coverage factor", budget.expanded().coverage_factor)?;
        for row in budget.rows() {
            self.budget_row(row)?;
        }
        self.number("conformance probability", verdict.conformance_probability)?;
        self.perhaps("guard band", verdict.guard_band_ohm)?;
        self.perhaps("lower acceptance limit", verdict.acceptance_lower_ohm)?;
        self.perhaps("upper acceptance limit", verdict.acceptance_upper_ohm)?;
        self.perhaps("test uncertainty ratio", verdict.tur)?;
        self.text("side", verdict.side.name())?;
        self.text("next step", verdict.next_step.name())?;
        for advice in measurement.advice() {
            self.text("advice", &advice.to_string())?;
        }
        Ok(())
    }

    fn budget_row(&mut self, row: &Row) -> Result<(), csv::Error> {
        let name = row.contribution.name();
        self.number(&format!("{name}: sensitivity"), row.sensitivity)?;
        self.number(&format!("{name}: u"), row.u_ohm)?;
        self.number(&format!("{name}: share"), row.share)
    }
}

/// Seventeen figures with an exponent of a sign and at least two digits, as C writes them.
fn decimal(value: f64) -> String {
    let text = format!("{value:.16e}");
    match text.split_once('e') {
        Some((figures, exponent)) => match exponent.strip_prefix('-') {
            Some(exponent) => format!("{figures}e-{exponent:0>2}"),
            None => format!("{figures}e+{exponent:0>2}"),
        },
        None => text,
    }
}

#[cfg(test)]
mod tests {
    #[test]
    fn decimals_are_written_as_c_writes_them() {
        let written = [4663.25, 0.05, -1.0, 1e-100, f64::INFINITY, 0.0].map(super::decimal);
        let expected = [
            "4.6632500000000000e+03",
            "5.0000000000000003e-02",
            "-1.0000000000000000e+00",
            "1.0000000000000000e-100",
            "inf",
            "0.0000000000000000e+00",
        ];
        assert_eq!(written, expected);
    }
}
