//! A tray of parts, judged: reads the tray file, prints each part with its verdict, one part's budget in full, what was
//! wrong with the lines that could not be used, and a count of the answers.

mod detail;
mod full_precision;
mod judged;
mod refusal;
mod remark;
mod rounded;
mod table;
mod tray;

use std::path::{Path, PathBuf};
use std::process::ExitCode;

use lexopt::prelude::*;
use reckohm::meter::Meter;
use reckohm::verdict::Rule;

use crate::judged::Outcome;
use crate::refusal::Refusal;
use crate::table::Entry;

/// The risk of accepting a part that does not conform, and of rejecting one that does, that the workshop agreed on.
const RISK: f64 = 0.05;

const HELP: &str = "\
tray [FILE] [--part NAME] [--csv FILE] [--quiet]

Judges a tray of resistive parts: marking and limits, what the display showed, leads taken off, uncertainty budget, verdict
(guarded at each limit, risk 0.05). Without FILE it reads the examples' own tray; its head says what stands in each column.

  --part NAME   the part whose budget is printed in full (if not given, the one whose verdict is the most open)
  --csv FILE    write the judged tray with every digit, a row a quantity
  --quiet       print nothing else
  --help        print this

Safety: measure resistance only on a part that is out of its circuit, with the circuit off and its capacitors discharged;
let a lamp cool; keep fingers off the tips, and never send a meter's current through a body; the low spans of a meter drive
a current that can heat a small part. Local codes and the advice of licensed people come before anything that is said here.
";

struct Arguments {
    tray: PathBuf,
    part: Option<String>,
    csv: Option<PathBuf>,
    quiet: bool,
}

fn arguments() -> Result<Option<Arguments>, lexopt::Error> {
    let examples = Path::new(env!("CARGO_MANIFEST_DIR")).parent();
    let tray = examples.map(|folder| folder.join("tray.csv")).unwrap_or_default();
    let mut arguments = Arguments { tray, part: None, csv: None, quiet: false };
    let mut parser = lexopt::Parser::from_env();
    while let Some(argument) = parser.next()? {
        match argument {
            Long("part") => arguments.part = Some(parser.value()?.string()?),
            Long("csv") => arguments.csv = Some(parser.value()?.into()),
            Long("quiet") => arguments.quiet = true,
            Long("help") | Short('h') => return Ok(None),
            Value(path) => arguments.tray = path.into(),
            _ => return Err(argument.unexpected()),
        }
    }
    Ok(Some(arguments))
}

fn main() -> ExitCode {
    let outcome = match arguments() {
        Ok(Some(arguments)) => run(&arguments),
        Ok(None) => {
            print!("{HELP}");
            Ok(())
        }
        Err(error) => Err(format!("{error}; tray --help says what it takes")),
    };
    match outcome {
        Ok(()) => ExitCode::SUCCESS,
        Err(message) => {
            eprintln!("{message}");
            ExitCode::FAILURE
        }
    }
}

fn run(arguments: &Arguments) -> Result<(), String> {
    let meter = Meter::example_hand_held();
    let rule = Rule::guarded(RISK).map_err(|error| error.to_string())?;
    let mut entries = Vec::new();
    let mut unreadable = Vec::new();
    for line in tray::read(&arguments.tray)? {
        match line {
            Ok(line) => {
                let outcome = judged::judge_line(&line, &meter, rule);
                entries.push((line, outcome));
            }
            Err(why) => unreadable.push(why),
        }
    }
    if !arguments.quiet {
        print(&entries, &unreadable, arguments, &meter, rule)?;
    }
    if let Some(path) = &arguments.csv {
        full_precision::write(path, &entries, &meter)
            .map_err(|error| format!("writing {}: {error}", path.display()))?;
    }
    Ok(())
}

fn print(
    entries: &[Entry],
    unreadable: &[Refusal],
    arguments: &Arguments,
    meter: &Meter<'_>,
    rule: Rule,
) -> Result<(), String> {
    let chosen: Vec<&Entry> = match &arguments.part {
        Some(part) => entries.iter().filter(|(line, _)| line.part == *part).collect(),
        None => most_open(entries).into_iter().collect(),
    };
    if let (Some(part), []) = (&arguments.part, chosen.as_slice()) {
        return Err(format!("part {part} asked for, which is not in {}", arguments.tray.display()));
    }
    println!("The tray, judged: {rule}\n{}", table::tray(entries, meter).trim_fmt());
    chosen.into_iter().for_each(|entry| detail::print(entry, meter));
    println!("\nLines that could not be used:");
    for text in table::refused(entries, unreadable) {
        println!("  {text}");
    }
    println!("\n{}", table::count(entries, unreadable).trim_fmt());
    Ok(())
}

/// The judged part whose conformance probability is nearest to one half.
fn most_open(entries: &[Entry]) -> Option<&Entry> {
    let distance = |(_, outcome): &Entry| match outcome {
        Outcome::Judged(judgement) => (judgement.verdict.conformance_probability - 0.5).abs(),
        _ => f64::INFINITY,
    };
    entries.iter().filter(|entry| distance(entry).is_finite()).min_by(|a, b| distance(a).total_cmp(&distance(b)))
}
