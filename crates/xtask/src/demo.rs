//! `cargo xtask demo`: the examples' tray judged, first by the Rust program, then by the C jig program.

use std::ffi::OsStr;
use std::path::PathBuf;
use std::time::Instant;

use crate::tools::{cargo, command, present, root, run, target};

/// The tray, below the repository's root.
pub const TRAY: &str = "examples/tray.csv";

/// Builds and runs the demonstration; the words go to the Rust program.
pub fn run_all(words: &[&str]) -> Result<(), String> {
    let start = Instant::now();
    tray(&words.iter().map(OsStr::new).collect::<Vec<_>>())?;
    println!("\nThe same tray through the C door:\n");
    if present("gcc") {
        jig(&[OsStr::new(TRAY)])?;
    } else {
        println!("not run: gcc missing");
    }
    println!("\nBuilt and run in {:.0} s.", start.elapsed().as_secs_f64());
    Ok(())
}

/// Builds and runs the Rust program.
pub fn tray(words: &[&OsStr]) -> Result<(), String> {
    run(cargo(&["run", "--quiet", "--package", "reckohm-examples", "--bin", "tray", "--"]).args(words))
}

/// Builds and runs the C jig program.
pub fn jig(words: &[&OsStr]) -> Result<(), String> {
    run(&mut cargo(&["build", "--quiet", "--package", "reckohm-c"]))?;
    let built = target().join("jig");
    let strict = ["-std=c99", "-O1", "-Wall", "-Wextra", "-Wpedantic", "-Werror", "-ffp-contract=off"];
    let mut compile = command("gcc", &strict);
    compile.arg("-Ibindings/c/include").args(sources()?).arg(target().join("debug/libreckohm_c.a"));
    run(compile.args(["-lgcc_s", "-lc", "-lm", "-o"]).arg(&built))?;
    run(command(&built.display().to_string(), &[]).args(words))
}

/// The C files of the jig program, sorted.
fn sources() -> Result<Vec<PathBuf>, String> {
    let folder = root().join("examples/c");
    let entries = std::fs::read_dir(&folder).map_err(|error| format!("{}: {error}", folder.display()))?;
    let mut files: Vec<PathBuf> = entries.filter_map(|entry| entry.ok().map(|entry| entry.path())).collect();
    files.retain(|file| file.extension().is_some_and(|kind| kind == "c"));
    files.sort();
    Ok(files)
}
