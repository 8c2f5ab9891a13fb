//! `cargo xtask bench`: builds what the benchmarks need for release, then runs `benches/python/run.py`, which prints tables.

use std::path::PathBuf;

use crate::tools::{cargo, command, present, run, target};
use crate::{c_door, python};

const REQUIREMENTS: &str = "benches/requirements.txt";

/// Builds and runs; the words are groups and options of `run.py`.
pub fn run_all(words: &[&str]) -> Result<(), String> {
    if let Some(tool) = ["gcc", "size"].into_iter().find(|tool| !present(tool)) {
        return Err(format!("not run: {tool} missing"));
    }
    if let Some(tool) = python::missing() {
        return Err(format!("not run: {tool} missing"));
    }
    python::environment()?;
    python::install(&["-r", REQUIREMENTS])?;
    let wheel = python::wheel(&target().join("wheels"))?;
    python::install(&["--force-reinstall", "--no-deps", &wheel.display().to_string()])?;
    run(&mut cargo(&["build", "--quiet", "--release", "--package", "reckohm-c"]))?;
    let mut bench = python::inside("python", &["benches/python/run.py"]);
    bench.args(words).arg("--scalar-c").arg(scalar_c()?).arg("--wheel").arg(wheel);
    bench.arg("--library").arg(target().join("release/libreckohm_c.so"));
    run(&mut bench)
}

/// The C program, compiled as a careful user compiles.
fn scalar_c() -> Result<PathBuf, String> {
    let program = target().join("scalar-calls");
    let flags = ["-O2", "-std=c99", "-Wall", "-Wextra", "-Wpedantic", "-Werror", "-Ibindings/c/include"];
    let mut compile = command("gcc", &flags);
    compile.arg("benches/c/scalar.c").arg(target().join("release/libreckohm_c.a"));
    run(compile.args(c_door::SYSTEM).arg("-o").arg(&program))?;
    Ok(program)
}
