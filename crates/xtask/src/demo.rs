//! `cargo xtask demo`: the examples' tray judged, first by the Rust program, then by the C jig program.

use std::time::Instant;

use crate::tools::{cargo, run};

/// Builds and runs the demonstration; the words go to the Rust program.
pub fn run_all(words: &[&str]) -> Result<(), String> {
    let start = Instant::now();
    run(cargo(&["run", "--quiet", "--package", "reckohm-examples", "--bin", "tray", "--"]).args(words))?;
    println!("\nBuilt and run in {:.0} s.", start.elapsed().as_secs_f64());
    Ok(())
}
