//! Figures: how large an image is, how many instructions a call takes and how deep its stack goes, beside the same computation in C.

use std::fmt::Write as _;
use std::fs;
use std::path::Path;

use super::board::Board;
use super::{emulator, image, stack};
use crate::tools::{command, output, root};

/// The C compiler's level for all of the figures' programs; our object is small by its own profile.
const LEVEL: &str = "-Os";

/// One number type on one board.
pub struct Figures {
    /// The processor.
    pub processor: &'static str,
    /// "double" or "float".
    pub number: &'static str,
    /// Bytes of the whole image that reads, estimates and judges: ours, and by hand.
    pub bytes: [u64; 2],
    /// The deepest stack of that by the compiler's own account of each function.
    pub reckoned_stack: u64,
    /// What is counted: name, then instructions and stack of ours, and of the one by hand.
    pub rows: Vec<(String, [u64; 4])>,
}

/// Measures on a board.
pub fn measure(board: &Board, object: &Path) -> Result<Vec<Figures>, String> {
    let whole = object.with_file_name("whole-reckohm.o");
    [("double", None), ("float", Some("-DIN_FLOAT"))]
        .into_iter()
        .map(|(number, flag)| {
            let flags: Vec<String> = flag.into_iter().map(str::to_owned).collect();
            let source = |name: &str| root().join("examples/firmware/figures").join(name);
            let (ours, by_hand) = (source("ours.c"), source("by_hand.c"));

            let judges = source("read_and_judge.c");
            let ours_alone = image::link(board, &format!("judges_{number}"), LEVEL, &[&judges, &ours, object], &flags)?;
            let mut other = flags.clone();
            other.push("-DBY_HAND".to_owned());
            let name = format!("judges_by_hand_{number}");
            let by_hand_alone = image::link(board, &name, LEVEL, &[&judges, &by_hand], &other)?;
            for alone in [&ours_alone, &by_hand_alone] {
                emulator::run(board, alone, None, &root(), &[])?;
            }

            let sources: [&Path; 4] = [&source("measure.c"), &ours, &by_hand, object];
            let measures = image::link(board, &format!("measure_{number}"), LEVEL, &sources, &flags)?;
            let said = emulator::run(board, &measures, Some(board.counting), &root(), &[])?;
            Ok(Figures {
                processor: board.processor,
                number,
                bytes: [bytes(board, &ours_alone)?, bytes(board, &by_hand_alone)?],
                reckoned_stack: stack::deepest(board, &ours_alone, &whole, "ours_read_and_judge")?,
                rows: said.lines().map(row).collect::<Result<_, _>>()?,
            })
        })
        .collect()
}

fn row(line: &str) -> Result<(String, [u64; 4]), String> {
    let wrong = || format!("no figures: {line}");
    let mut cells = line.split('\t');
    let name = cells.next().ok_or_else(wrong)?.to_owned();
    let numbers: Vec<u64> = cells.map(|cell| cell.parse().map_err(|_| wrong())).collect::<Result<_, _>>()?;
    Ok((name, numbers.try_into().map_err(|_| wrong())?))
}

/// What an image takes of a board's flash: code, constants, and the first values of variables.
fn bytes(board: &Board, image: &Path) -> Result<u64, String> {
    let said = output(&mut command(&board.tool("size"), &[&image.display().to_string()]))?;
    let sizes: Vec<u64> =
        said.lines().nth(1).unwrap_or_default().split_whitespace().filter_map(|cell| cell.parse().ok()).collect();
    match sizes.as_slice() {
        [text, data, ..] => Ok(text + data),
        _ => Err(format!("no sizes: {said}")),
    }
}

/// The figures as Markdown.
pub fn table(all: &[Figures]) -> String {
    let mut text = String::from(
        "| processor, number | image that reads, estimates, judges: ours, by hand (bytes) | its stack: painted, by the compiler, by hand painted (bytes) |\n|---|---|---|\n",
    );
    for figures in all {
        let [ours, by_hand] = figures.bytes;
        let (painted, other) = figures.rows.first().map_or((0, 0), |(_, [_, ours, _, by_hand])| (*ours, *by_hand));
        let Figures { processor, number, reckoned_stack, .. } = figures;
        let _ = writeln!(text, "| {processor}, {number} | {ours}, {by_hand} | {painted}, {reckoned_stack}, {other} |");
    }
    text.push_str("\n| computation | processor, number | instructions: ours, by hand | ratio | stack: ours, by hand (bytes) |\n|---|---|---|---|---|\n");
    let names: Vec<&String> = all.first().map_or(Vec::new(), |first| first.rows.iter().map(|(name, _)| name).collect());
    for name in names {
        for figures in all {
            let Figures { processor, number, rows, .. } = figures;
            for (_, [ours, ours_stack, by_hand, by_hand_stack]) in rows.iter().filter(|(held, _)| held == name) {
                let ratio = *ours as f64 / *by_hand as f64;
                let _ = writeln!(
                    text,
                    "| {name} | {processor}, {number} | {ours}, {by_hand} | {ratio:.2} | {ours_stack}, {by_hand_stack} |"
                );
            }
        }
    }
    text
}

/// What the figures have to hold: on the Cortex-M4F in float.
pub fn goals(all: &[Figures]) -> String {
    let mut said = String::new();
    for figures in all.iter().filter(|held| held.processor == "Cortex-M4F" && held.number == "float") {
        if let Some((name, [instructions, stack, by_hand, _])) = figures.rows.first() {
            let met = |holds: bool| if holds { "met" } else { "missed" };
            let _ = writeln!(
                said,
                "Goals on the Cortex-M4F in float, {name}: no more instructions than by hand, {}; an image within 8192 bytes, {}; \
                 within 512 bytes of stack, {}.",
                met(instructions <= by_hand),
                met(figures.bytes[0] <= 8192),
                met((*stack).max(figures.reckoned_stack) <= 512),
            );
        }
    }
    said
}

/// Writes the tables into the page that holds them, between its two marks.
pub fn write(text: &str) -> Result<(), String> {
    const PAGE: &str = "examples/firmware/README.md";
    const MARKS: [&str; 2] = ["<!-- figures: written by cargo xtask firmware --write -->\n", "<!-- end of figures -->"];
    let page = root().join(PAGE);
    let wrong = |error| format!("{PAGE}: {error}");
    let before = fs::read_to_string(&page).map_err(wrong)?;
    let [from, to] = MARKS.map(|mark| before.find(mark));
    let (Some(from), Some(to)) = (from, to) else { return Err(format!("{PAGE} has no place for the figures")) };
    let head = &before[..from + MARKS[0].len()];
    fs::write(&page, format!("{head}\n{text}\n{}", &before[to..])).map_err(wrong)
}
