//! Images run on emulated boards.

use std::path::Path;
use std::process::Command;

use super::board::Board;
use crate::tools::command;

/// Runs an image to its end and gives what it said; any exit code but 0 is an error. The words are the program's arguments;
/// files are sought from the folder. With `counting` a counter of the processor's counts instructions.
pub fn run(
    board: &Board,
    image: &Path,
    counting: Option<&str>,
    folder: &Path,
    words: &[String],
) -> Result<String, String> {
    let mut start = emulator(board, counting, words);
    start.arg("-kernel").arg(image).current_dir(folder);
    let done = start.output().map_err(|error| format!("could not start {}: {error}", board.emulator))?;
    // What goes through the debugger's door arrives on stderr.
    let said = String::from_utf8_lossy(&done.stderr).into_owned();
    if done.status.success() {
        Ok(said)
    } else {
        Err(format!("{} on {}: {}\n{said}", image.display(), board.processor, done.status))
    }
}

fn emulator(board: &Board, counting: Option<&str>, words: &[String]) -> Command {
    let mut semihosting = "enable=on,target=native,arg=program".to_owned();
    for word in words {
        semihosting.push_str(",arg=");
        semihosting.push_str(word);
    }
    let mut emulator = command(board.emulator, board.emulated);
    emulator.args(["-nographic", "-monitor", "none", "-serial", "none"]);
    if let Some(by) = counting {
        emulator.args(["-icount", by]);
    }
    emulator.args(["-semihosting-config", &semihosting]);
    emulator
}
