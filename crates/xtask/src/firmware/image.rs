//! Images: C programs compiled by the board's own gcc, the board's start, and the object.

use std::path::{Path, PathBuf};
use std::process::Command;

use super::board::Board;
use super::object::{folder, quietly};
use crate::tools::{command, root};

/// What the C programs are compiled with: strict, and no contraction of a multiplication and an addition into one.
const STRICT: [&str; 9] = [
    "-std=c99",
    "-Wall",
    "-Wextra",
    "-Wpedantic",
    "-Werror",
    "-ffreestanding",
    "-ffunction-sections",
    "-fdata-sections",
    "-ffp-contract=off",
];

/// The C compiler for a board with the flags that every file gets.
fn gcc(board: &Board) -> Command {
    let mut gcc = command(&board.tool("gcc"), board.machine);
    gcc.args(STRICT).args(["-DRKO_TEST_ON_BOARD", "-Iexamples/firmware/board", "-Ibindings/c/include"]);
    gcc
}

/// Links sources, the board's own among them, and objects into an image.
pub fn link(board: &Board, name: &str, level: &str, inputs: &[&Path], flags: &[String]) -> Result<PathBuf, String> {
    let image = folder(board)?.join(format!("{name}.elf"));
    let own = root().join("examples/firmware/board");
    let mut link = gcc(board);
    link.args([level, "-nostartfiles", "-nodefaultlibs", "-Wl,--gc-sections"]).args(flags);
    link.arg("-L").arg(&own).arg("-T").arg(own.join(board.memory));
    link.args(["start.c", "semihosting.c", board.start].map(|file| own.join(file)));
    quietly(link.args(inputs).args(["-lm", "-lc", "-lgcc", "-o"]).arg(&image))?;
    Ok(image)
}
