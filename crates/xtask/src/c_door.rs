//! The C door's tests: each program of `bindings/c/tests` compiled as C99 and as C++11 with every warning an error, linked
//! with the static library, run, and run again under valgrind.

use std::path::{Path, PathBuf};

use crate::report::{Outcome, Report};
use crate::tools::{cargo, command, present, root, run, target};

const STRICT: [&str; 6] = ["-Wall", "-Wextra", "-Wpedantic", "-Werror", "-ffp-contract=off", "-Ibindings/c/include"];
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
    for tool in ["gcc", "valgrind"] {
        if !present(tool) {
            return Ok(Outcome::Missing(tool));
        }
    }
    let programs = programs()?;
    for program in &programs {
        let built = compile("gcc", "c", "-std=c99", program)?;
        let plain = started(&built, program)?;
        let mut watched = command("valgrind", &["--quiet", "--leak-check=full", "--error-exitcode=99"]);
        watched.arg(plain.get_program()).args(plain.get_args());
        run(&mut watched)?;
    }
    Ok(passed(&format!("{} programs", programs.len())))
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
    let folder = target().join("c-tests");
    std::fs::create_dir_all(&folder).map_err(|error| format!("could not make {}: {error}", folder.display()))?;
    let name = program.file_stem().unwrap_or_default().to_string_lossy();
    let built = folder.join(format!("{name}-{language}"));
    let mut compile = command(compiler, &["-g", "-O1", standard, "-x", language]);
    compile.args(STRICT).arg(program).args(["-x", "none"]).arg(target().join("debug/libreckohm_c.a"));
    run(compile.args(SYSTEM).arg("-o").arg(&built))?;
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
