//! `cargo xtask test`: every door built and tested, in the order in which a failure says most.

use crate::report::{Outcome, Report};
use crate::tools::{cargo, root, run};
use crate::{c_door, c_package, firmware, generate, order, python, readme, same_numbers};

/// Runs every step; the table at the end says what each did.
pub fn run_steps(report: &mut Report) {
    report.step("formatting", || done(run(&mut cargo(&["fmt", "--all", "--check"]))));
    report.step("lints", || {
        done(run(&mut cargo(&[
            "clippy",
            "--quiet",
            "--workspace",
            "--all-targets",
            "--all-features",
            "--",
            "-D",
            "warnings",
        ])))
    });
    report.step("order of folders", || order::check().map(Outcome::Passed));
    report.step("core without heap", || core_with(&[]));
    report.step("core with alloc", || core_with(&["--features", "alloc"]));
    report.step("Rust tests", || done(run(&mut cargo(&["test", "--quiet"]))));
    report.step("tests of these commands", || {
        done(run(&mut cargo(&["test", "--quiet", "--package", "xtask", "--features", "generate"])))
    });
    report.step("C header", || done(generate(&["header", "--check"])));
    c_door::steps(report);
    c_package::steps(report);
    report.step("README's C program", readme::c_block);
    let whole = report.requires_all();
    report.step("firmware images", || firmware::check(whole, false));
    python_steps(report);
    report.step("list of doors", || done(generate(&["doors"])));
}

fn python_steps(report: &mut Report) {
    if !root().join("bindings/python").exists() {
        return;
    }
    let ready = report.step("Python environment", || match python::missing() {
        Some(tool) => Ok(Outcome::Missing(tool)),
        None => python::environment().map(Outcome::Passed),
    });
    if !ready || python::missing().is_some() {
        return;
    }
    if report.step("Python module", || done(python::build())) {
        report.step("Python stubs", || done(python::stubs()));
        report.step("Python tests", || done(python::tests()));
        report.step("the tray, the same at every door", same_numbers::check);
    }
}

fn core_with(features: &[&str]) -> Result<Outcome, String> {
    let mut command = cargo(&["build", "--quiet", "--package", "reckohm", "--no-default-features"]);
    done(run(command.args(features)))
}

fn done(outcome: Result<(), String>) -> Result<Outcome, String> {
    outcome.map(|()| Outcome::Passed(String::new()))
}

/// The command: an error if a step failed.
pub fn run_all(require_all: bool) -> Result<(), String> {
    let mut report = Report::new(require_all);
    run_steps(&mut report);
    report.finish()
}
