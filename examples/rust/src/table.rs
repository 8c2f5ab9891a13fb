//! The judged tray as a table, the lines that were refused, and the count of each answer.

use comfy_table::{Cell, CellAlignment, ColumnConstraint, LineStyle, Table, TableStyle, Width};
use reckohm::meter::Meter;
use reckohm::verdict::{Answer, Limits, Side};

use crate::judged::{Judgement, Outcome};
use crate::refusal::Refusal;
use crate::remark::remark;
use crate::rounded::{from_to, plain, probability, two_figures, with_uncertainty};
use crate::tray::{Line, Wanted};

/// One line of the tray and what became of it.
pub type Entry = (Line, Outcome);

/// Nothing but a line under the header.
const STYLE: TableStyle = TableStyle::new().header_separator(LineStyle::none().fill('─').junction('─'));

/// Columns that wrap, and at what width; the others are as wide as their content.
const WRAPPED: [(&str, u16); 2] = [("marking", 22), ("next step, remark", 34)];

/// An empty table in the style of all tables here.
pub fn table(columns: &[&str]) -> Table {
    let mut table = Table::new();
    table.load_style(STYLE).set_header(columns);
    for (column, name) in table.column_iter_mut().zip(columns) {
        column.set_padding((0, 2));
        if let Some((_, width)) = WRAPPED.iter().find(|(wrapped, _)| wrapped == name) {
            column.set_constraint(ColumnConstraint::UpperBoundary(Width::Fixed(*width)));
        }
    }
    table
}

/// The judged tray, a row a line.
pub fn tray(entries: &[Entry], meter: &Meter<'_>) -> Table {
    let columns = [
        "line",
        "part",
        "marking",
        "nominal or limits",
        "span",
        "mean ± U95",
        "verdict",
        "p conf.",
        "TUR",
        "next step, remark",
    ];
    let mut table = table(&columns);
    for (line, outcome) in entries {
        let [asked, mean, verdict, chance, tur] = match outcome {
            Outcome::Judged(judgement) => judged(judgement),
            Outcome::Beyond(beyond) => {
                [wanted(&beyond.wanted), String::new(), "beyond the span".to_owned(), String::new(), String::new()]
            }
            Outcome::Refused(_) => [String::new(), String::new(), "refused".to_owned(), String::new(), String::new()],
        };
        let marking = if line.marking.is_empty() { format!("({})", line.kind) } else { line.marking.clone() };
        let right = |text: String| Cell::new(text).set_alignment(CellAlignment::Right);
        table.add_row([
            right(line.number.to_string()),
            Cell::new(&line.part),
            Cell::new(marking),
            Cell::new(asked),
            right(line.span.clone()),
            right(mean),
            Cell::new(verdict),
            right(chance),
            right(tur),
            Cell::new(remark(line, outcome, meter)),
        ]);
    }
    table
}

fn judged(judgement: &Judgement) -> [String; 5] {
    let (estimate, verdict) = (judgement.measurement.estimate(), &judgement.verdict);
    let expanded = judgement.measurement.budget().expanded();
    let answer = match (verdict.answer, verdict.side) {
        (Answer::Undecided, Side::Inside) => "undecided, inside".to_owned(),
        (Answer::Undecided, Side::Outside) => "undecided, outside".to_owned(),
        (answer, _) => answer.name().to_owned(),
    };
    [
        wanted(&judgement.wanted),
        with_uncertainty(estimate.value(), expanded.half_width),
        answer,
        probability(verdict.conformance_probability),
        verdict.tur.map(two_figures).unwrap_or_default(),
    ]
}

fn wanted(wanted: &Wanted) -> String {
    match (wanted.nominal_ohm, wanted.tolerance) {
        (Some(nominal), Some(tolerance)) => format!("{}, {} %", plain(nominal), 100.0 * tolerance),
        _ => limits(&wanted.limits),
    }
}

/// Limits in words.
pub fn limits(limits: &Limits) -> String {
    let (lower, upper) = (limits.lower_ohm(), limits.upper_ohm());
    if lower.is_infinite() {
        format!("at most {}", plain(upper))
    } else if upper.is_infinite() {
        format!("at least {}", plain(lower))
    } else {
        from_to(lower, upper)
    }
}

/// The lines that were refused, each with its number and what was wrong.
pub fn refused(entries: &[Entry], unreadable: &[Refusal]) -> Vec<String> {
    let of_entries = entries.iter().filter_map(|(line, outcome)| match outcome {
        Outcome::Refused(why) => Some((line.number, format!("line {}, {}: {why}", line.number, line.part))),
        _ => None,
    });
    let of_lines = unreadable.iter().map(|why| match why {
        Refusal::Line { line, .. } => (*line, format!("line {line}: {why}")),
        _ => (0, why.to_string()),
    });
    let mut all: Vec<(u64, String)> = of_entries.chain(of_lines).collect();
    all.sort();
    all.into_iter().map(|(_, text)| text).collect()
}

/// How often each answer was given.
pub fn count(entries: &[Entry], unreadable: &[Refusal]) -> Table {
    let of = |answer: Answer| {
        entries
            .iter()
            .filter(|(_, outcome)| matches!(outcome, Outcome::Judged(judgement) if judgement.verdict.answer == answer))
            .count()
    };
    let beyond = entries.iter().filter(|(_, outcome)| matches!(outcome, Outcome::Beyond(_))).count();
    let refused = entries.iter().filter(|(_, outcome)| matches!(outcome, Outcome::Refused(_))).count();
    let mut table = table(&["answer", "lines"]);
    let rows = [
        (Answer::Conforms.name(), of(Answer::Conforms)),
        (Answer::DoesNotConform.name(), of(Answer::DoesNotConform)),
        (Answer::Undecided.name(), of(Answer::Undecided)),
        ("beyond the span", beyond),
        ("refused", refused + unreadable.len()),
        ("in all", entries.len() + unreadable.len()),
    ];
    for (name, number) in rows {
        table.add_row([Cell::new(name), Cell::new(number).set_alignment(CellAlignment::Right)]);
    }
    table
}
