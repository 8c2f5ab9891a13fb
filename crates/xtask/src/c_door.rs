//! The C door's tests: each program of `bindings/c/tests` compiled as C99 and as C++11 with every warning an error, linked
//! with the static library, run, and run again under valgrind, with the compiler's sanitizers, and where a program has
//! threads of its own under helgrind.

use std::path::{Path, PathBuf};

use crate::report::{Outcome, Report};
use crate::tools::{cargo, command, output, present, root, run, target};

const STRICT: [&str; 6] = ["-Wall", "-Wextra", "-Wpedantic", "-Werror", "-ffp-contract=off", "-Ibindings/c/include"];
/// What the C compiler watches; the library beside it is built to be watched for addresses too.
const SANITIZED: [&str; 3] = ["-std=c99", "-fsanitize=address,undefined", "-fno-sanitize-recover=all"];
/// What a static Rust library needs of the system (`cargo rustc -p reckohm-c --crate-type staticlib -- --print native-static-libs`).
pub const SYSTEM: [&str; 3] = ["-lgcc_s", "-lc", "-lm"];

/// Builds the library and runs the programs, a step a language.
pub fn steps(report: &mut Report) {
    if !report
        .step("C library", || run(&mut cargo(&["build", "--quiet", "--package", "reckohm-c"])).map(|()| passed("")))
    {
        return;
    }
    report.step("C tests", || with("gcc", "c", "-std=c99"));
    report.step("C tests as C++", || with("g++", "c++", "-std=c++11"));
    report.step("C tests under valgrind", under_valgrind);
    report.step("C tests under sanitizers", under_sanitizers);
    report.step("C threads under helgrind", under_helgrind);
    report.step("C door under hostile calls", hostile);
}

fn with(compiler: &'static str, language: &str, standard: &str) -> Result<Outcome, String> {
    if !present(compiler) {
        return Ok(Outcome::Missing(compiler));
    }
    let programs = programs()?;
    for program in &programs {
        let built = compile(compiler, language, standard, program)?;
        run(&mut started(&built, program)?)?;
    }
    Ok(passed(&format!("{} programs", programs.len())))
}

fn under_valgrind() -> Result<Outcome, String> {
    if let Some(tool) = lacking(&["gcc", "valgrind"]) {
        return Ok(Outcome::Missing(tool));
    }
    let programs = programs()?;
    let known = format!("--suppressions={}", root().join("bindings/c/tests/valgrind.supp").display());
    for program in &programs {
        watched(program, &["--leak-check=full", &known])?;
    }
    Ok(passed(&format!("{} programs", programs.len())))
}

fn under_sanitizers() -> Result<Outcome, String> {
    if let Some(tool) = lacking(&["gcc"]) {
        return Ok(Outcome::Missing(tool));
    }
    // For a target named, so that only what runs on it is instrumented. The sanitizer is an unstable option of the
    // compiler; it is allowed for this step alone.
    let host = output(&mut command("rustc", &["--print", "host-tuple"]))?;
    let folder = target().join("sanitized");
    let mut build = cargo(&["build", "--quiet", "--package", "reckohm-c", "--target", host.trim(), "--target-dir"]);
    run(build.arg(&folder).env("RUSTC_BOOTSTRAP", "1").env("RUSTFLAGS", "-Zsanitizer=address"))?;
    let library = folder.join(host.trim()).join("debug/libreckohm_c.a");
    let programs = programs()?;
    for program in &programs {
        let built = linked("gcc", "sanitized", &SANITIZED, program, &library)?;
        run(&mut started(&built, program)?)?;
    }
    Ok(passed(&format!("{} programs", programs.len())))
}

/// Sees every access to memory, the library's too, which a thread sanitizer of the C compiler does not.
fn under_helgrind() -> Result<Outcome, String> {
    if let Some(tool) = lacking(&["gcc", "valgrind"]) {
        return Ok(Outcome::Missing(tool));
    }
    watched(&root().join("bindings/c/tests/threads.c"), &["--tool=helgrind"])?;
    Ok(passed(""))
}

/// Every function of the header by the shared library, which cargo builds beside the static one.
fn hostile() -> Result<Outcome, String> {
    let python = std::env::var("PYTHON").unwrap_or_else(|_| "python3".to_owned());
    if !present(&python) {
        return Ok(Outcome::Missing("python3"));
    }
    let library = target().join("debug/libreckohm_c.so");
    let mut call = command(&python, &["bindings/c/tests/hostile.py", "bindings/c/include/reckohm.h"]);
    run(call.arg(library))?;
    Ok(passed(""))
}

/// Runs the program in valgrind; what valgrind finds is a failure.
fn watched(program: &Path, arguments: &[&str]) -> Result<(), String> {
    let built = compile("gcc", "c", "-std=c99", program)?;
    let plain = started(&built, program)?;
    let mut watched = command("valgrind", &["--quiet", "--error-exitcode=99"]);
    watched.args(arguments).arg(plain.get_program()).args(plain.get_args());
    run(&mut watched)
}

fn lacking(tools: &[&'static str]) -> Option<&'static str> {
    tools.iter().copied().find(|tool| !present(tool))
}

fn passed(said: &str) -> Outcome {
    Outcome::Passed(said.to_owned())
}

/// Every program, sorted; none at all is an error.
fn programs() -> Result<Vec<PathBuf>, String> {
    let programs = listed(&root().join("bindings/c/tests"), "c")?;
    if programs.is_empty() { Err("no program in bindings/c/tests".to_owned()) } else { Ok(programs) }
}

fn listed(folder: &Path, kind: &str) -> Result<Vec<PathBuf>, String> {
    let wrong = |error| format!("could not read {}: {error}", folder.display());
    let entries = std::fs::read_dir(folder).map_err(wrong)?.collect::<Result<Vec<_>, _>>().map_err(wrong)?;
    let mut files: Vec<PathBuf> = entries.iter().map(std::fs::DirEntry::path).collect();
    files.retain(|file| file.extension().is_some_and(|held| held == kind));
    files.sort();
    Ok(files)
}

fn compile(compiler: &str, language: &str, standard: &str, program: &Path) -> Result<PathBuf, String> {
    let library = target().join("debug/libreckohm_c.a");
    linked(compiler, language, &["-x", language, standard], program, &library)
}

fn linked(compiler: &str, ending: &str, options: &[&str], program: &Path, library: &Path) -> Result<PathBuf, String> {
    let folder = target().join("c-tests");
    std::fs::create_dir_all(&folder).map_err(|error| format!("could not make {}: {error}", folder.display()))?;
    let name = program.file_stem().unwrap_or_default().to_string_lossy();
    let built = folder.join(format!("{name}-{ending}"));
    let mut link = command(compiler, &["-g", "-O1", "-pthread"]);
    link.args(options).args(STRICT).arg(program).args(["-x", "none"]).arg(library).args(SYSTEM);
    run(link.arg("-o").arg(&built))?;
    Ok(built)
}

/// The program with its arguments: those that read vectors get every file.
fn started(built: &Path, program: &Path) -> Result<std::process::Command, String> {
    let mut start = command(&built.display().to_string(), &[]);
    if program.file_stem().is_some_and(|name| name.to_string_lossy().ends_with("vectors")) {
        start.args(listed(&root().join("tests/vectors"), "tsv")?);
    }
    Ok(start)
}
