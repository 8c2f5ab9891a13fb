//! `cargo xtask firmware`: the core and the C door built for three processors without an operating system, proved, and run on
//! emulated boards.

mod board;
mod conformance;
mod emulator;
mod example;
mod figures;
mod image;
mod object;
mod proofs;
mod stack;
mod sysroot;

use std::collections::BTreeSet;
use std::fmt::Write as _;
use std::path::PathBuf;

use board::{BOARDS, Board};
use figures::Figures;

use crate::report::Outcome;
use crate::tools::present;

/// The first tool that is not there; what provides it stands in `.ci/run`.
fn missing() -> Result<Option<&'static str>, String> {
    for board in &BOARDS {
        for tool in [board.tool("gcc"), board.emulator.to_owned()] {
            if !present(&tool) {
                return Ok(Some(match board.tools {
                    _ if tool == board.emulator => board.emulator,
                    "arm-none-eabi-" => "arm-none-eabi-gcc",
                    _ => "riscv64-unknown-elf-gcc",
                }));
            }
        }
        if sysroot::compiler(board)?.is_none() {
            return Ok(Some("a Rust compiler for bare metal (rustc-web with rust-web-src, or rustup's target)"));
        }
    }
    Ok(None)
}

/// The step of `cargo xtask test`. Without `whole` the boards get a part of the costly vectors alone.
pub fn check(whole: bool, write: bool) -> Result<Outcome, String> {
    if let Some(tool) = missing()? {
        return Ok(Outcome::Missing(tool));
    }
    let functions = object::functions()?;
    let rows = conformance::rows(whole)?;
    let Some(expected) = example::on_host()? else { return Ok(Outcome::Missing("gcc")) };
    // The boards side by side: emulating takes the longest.
    let answers: Vec<Result<(String, Vec<Figures>), String>> = std::thread::scope(|scope| {
        let boards: Vec<_> =
            BOARDS.iter().map(|board| scope.spawn(|| on(board, &functions, &expected, &rows, whole))).collect();
        boards.into_iter().map(|board| board.join().unwrap_or(Err("a thread broke off".to_owned()))).collect()
    });
    let mut all = Vec::new();
    for answer in answers {
        let (said, figures) = answer?;
        println!("\n{said}");
        all.extend(figures);
    }
    let table = figures::table(&all);
    println!("{table}\n{}", figures::goals(&all));
    if write {
        figures::write(&table)?;
    }
    let rest = if whole { "all vectors" } else { "part of the costly vectors; `cargo xtask firmware` runs all" };
    Ok(Outcome::Passed(format!("{} functions on {} processors, {rest}", functions.len(), BOARDS.len())))
}

/// Builds, proves and runs for one board; says what came out.
fn on(
    board: &Board,
    functions: &BTreeSet<String>,
    expected: &str,
    rows: &[PathBuf],
    whole: bool,
) -> Result<(String, Vec<Figures>), String> {
    let mut said = format!("{}, {}\n", board.processor, board.target);
    let compiler = sysroot::compiler(board)?.ok_or("the compiler went away")?;
    let _ = writeln!(said, "built by {}", compiler.version);
    let (object, archive) = object::build(board, &compiler, functions)?;
    let _ = writeln!(said, "proved by linking: {}", proofs::run(board, &object, functions)?);
    let _ = writeln!(said, "the proof itself: {}", proofs::see(board, &compiler)?);
    if board.wrong_subtraction {
        let _ = writeln!(said, "linked in the wrong order: {}", proofs::wrong_order(board, &archive)?);
    }
    let figures = figures::measure(board, &object)?;
    let _ = writeln!(said, "{}", example::run_on(board, &object, expected)?);
    for line in conformance::run(board, &object, rows, whole)? {
        let _ = writeln!(said, "{line}");
    }
    Ok((said, figures))
}

/// The command: as the step, but a missing tool is an error; with `--write` the figures go into the page that holds them.
pub fn command(words: &[&str]) -> Result<(), String> {
    let has = |word| words.contains(&word);
    if let Some(other) = words.iter().find(|word| !["--quick", "--write"].contains(word)) {
        return Err(format!("no option of this command: {other}"));
    }
    match check(!has("--quick"), has("--write"))? {
        Outcome::Passed(said) => {
            println!("{said}");
            Ok(())
        }
        Outcome::Missing(tool) => Err(format!("not run: {tool} missing")),
    }
}
