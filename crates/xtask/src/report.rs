//! What a run of several steps did: each step's answer and time, and a table of them at the end.

use std::fmt::Write as _;
use std::time::{Duration, Instant};

/// How a step ended. An `Err` of the step is its failure.
pub enum Outcome {
    /// It ran and held; the text says what was counted, or is empty.
    Passed(String),
    /// It could not run because this tool is missing.
    Missing(&'static str),
}

struct Row {
    name: String,
    took: Duration,
    answer: Answer,
}

enum Answer {
    Passed(String),
    NotRun(String),
    Failed(String),
}

/// Runs steps one after another; a failed one does not hide those after it.
pub struct Report {
    require_all: bool,
    rows: Vec<Row>,
}

impl Report {
    /// With `require_all` a missing tool is a failure.
    pub fn new(require_all: bool) -> Self {
        Report { require_all, rows: Vec::new() }
    }

    /// Whether a missing tool is a failure; then no step saves itself anything either.
    pub fn requires_all(&self) -> bool {
        self.require_all
    }

    /// Runs one step and prints its name before and its answer after. True if it did not fail.
    pub fn step(&mut self, name: &str, work: impl FnOnce() -> Result<Outcome, String>) -> bool {
        println!("\n== {name}");
        let start = Instant::now();
        let answer = match work() {
            Ok(Outcome::Passed(said)) => Answer::Passed(said),
            Ok(Outcome::Missing(tool)) if self.require_all => {
                Answer::Failed(format!("{tool} missing, and all is required"))
            }
            Ok(Outcome::Missing(tool)) => Answer::NotRun(format!("not run: {tool} missing")),
            Err(why) => Answer::Failed(why),
        };
        let took = start.elapsed();
        match &answer {
            Answer::Passed(said) => println!("ok {said} ({:.1} s)", took.as_secs_f64()),
            Answer::NotRun(said) => println!("{said}"),
            Answer::Failed(why) => println!("FAILED: {why}"),
        }
        let held = !matches!(answer, Answer::Failed(_));
        self.rows.push(Row { name: name.to_owned(), took, answer });
        held
    }

    /// Prints the table; an error if a step failed.
    pub fn finish(self) -> Result<(), String> {
        let (table, failed) = self.table();
        print!("{table}");
        if failed == 0 { Ok(()) } else { Err(format!("{failed} of {} steps failed", self.rows.len())) }
    }

    fn table(&self) -> (String, usize) {
        let widest = self.rows.iter().map(|row| row.name.chars().count()).max().unwrap_or(0);
        let mut table = String::from("\nsummary\n");
        let mut failed = 0;
        for row in &self.rows {
            let said = match &row.answer {
                Answer::Passed(said) if said.is_empty() => "ok".to_owned(),
                Answer::Passed(said) => format!("ok: {said}"),
                Answer::NotRun(said) => said.clone(),
                Answer::Failed(why) => {
                    failed += 1;
                    format!("FAILED: {}", why.lines().next().unwrap_or_default())
                }
            };
            // Writing to a String cannot fail.
            let _ = writeln!(table, "  {:widest$}  {:7.1} s  {said}", row.name, row.took.as_secs_f64());
        }
        (table, failed)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn three_steps(require_all: bool) -> Report {
        let mut report = Report::new(require_all);
        assert!(report.step("first", || Ok(Outcome::Passed("2 things".into()))));
        report.step("second", || Ok(Outcome::Missing("cmake")));
        assert!(!report.step("third", || Err("it broke\nbadly".into())));
        report
    }

    #[test]
    fn a_missing_tool_is_named_and_a_failure_counted() {
        let (table, failed) = three_steps(false).table();
        assert_eq!(failed, 1);
        assert!(table.contains("not run: cmake missing"));
        assert!(table.contains("ok: 2 things"));
        assert!(table.contains("FAILED: it broke\n"));
        assert!(three_steps(false).finish().is_err());
    }

    #[test]
    fn a_missing_tool_fails_where_all_is_required() {
        let (table, failed) = three_steps(true).table();
        assert_eq!(failed, 2);
        assert!(table.contains("FAILED: cmake missing"));
    }
}
