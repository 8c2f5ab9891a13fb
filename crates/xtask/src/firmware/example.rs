//! The example, a frost alarm's controller: the same program on the host and on a board has to print the same lines.

use std::path::Path;

use super::board::Board;
use super::{emulator, image};
use crate::c_door::SYSTEM;
use crate::tools::{cargo, command, output, present, root, run, target};

const PROGRAM: &str = "examples/firmware/frost_alarm.c";

/// What the program prints on the host, with the host's library; `None` where there is no C compiler for it.
pub fn on_host() -> Result<Option<String>, String> {
    if !present("gcc") {
        return Ok(None);
    }
    run(&mut cargo(&["build", "--quiet", "--package", "reckohm-c"]))?;
    let built = target().join("firmware/frost_alarm");
    let strict = ["-std=c99", "-O1", "-Wall", "-Wextra", "-Wpedantic", "-Werror", "-ffp-contract=off"];
    let mut compile = command("gcc", &strict);
    compile.args(["-Ibindings/c/include", "-Iexamples/firmware/board", PROGRAM, "examples/firmware/host.c"]);
    run(compile.arg(target().join("debug/libreckohm_c.a")).args(SYSTEM).arg("-o").arg(&built))?;
    output(&mut command(&built.display().to_string(), &[])).map(Some)
}

/// Runs the program on a board and compares.
pub fn run_on(board: &Board, object: &Path, expected: &str) -> Result<String, String> {
    let built = image::link(board, "frost_alarm", "-Os", &[&root().join(PROGRAM), object], &[])?;
    let printed = emulator::run(board, &built, None, &root(), &[])?;
    if printed != expected {
        return Err(format!("the frost alarm on {} prints\n{printed}and on the host\n{expected}", board.processor));
    }
    Ok(format!("{} lines of the frost alarm, the same as on the host", expected.lines().count()))
}
