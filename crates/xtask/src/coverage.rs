//! `cargo xtask coverage [--uncovered]`: which lines and branches of the core the Rust tests reach
//! (cargo-llvm-cov), a folder a row.
//!
//! What runs in the programs that are tests is counted: the tests, the fuzz targets on their seeds. The C programs, the
//! Python door and the examples in the documentation run as well in `cargo xtask test`, and are not counted.

use std::collections::BTreeMap;
use std::path::Path;

use crate::tools::{cargo, command, output, present, root, run, target};

/// What is counted, by where it lies.
const COUNTED: &str = "crates/reckohm/src";

/// What a file's tests reach; of each line the calls counted.
#[derive(Default)]
struct Reached {
    lines: BTreeMap<u32, u64>,
    branches: u64,
    branches_taken: u64,
}

/// Runs the tests and prints the table, and the lines that none reaches if asked.
pub fn command_line(words: &[&str]) -> Result<(), String> {
    let uncovered = match words {
        [] => false,
        ["--uncovered"] => true,
        _ => return Err(format!("unknown arguments: {}; cargo xtask coverage [--uncovered]", words.join(" "))),
    };
    if !present("cargo-llvm-cov") {
        return Err("not run: cargo-llvm-cov missing; `cargo install --locked cargo-llvm-cov` brings it".to_owned());
    }
    let report = target().join("coverage.lcov");
    let mut tests = cargo(&["llvm-cov", "--branch", "--lcov", "--output-path"]);
    tests.arg(&report);
    for package in ["reckohm", "reckohm-tests", "reckohm-c", "reckohm-fuzz"] {
        tests.args(["--package", package]);
    }
    // Simulations of millions of measurements reach no line that others do not, and take very long with counters in.
    tests.args(["--", "--skip", "intervals_hold"]);
    for (variable, tool) in [("LLVM_COV", "llvm-cov"), ("LLVM_PROFDATA", "llvm-profdata")] {
        if std::env::var_os(variable).is_none() {
            tests.env(variable, of_the_compiler(tool)?);
        }
    }
    // Branches are an unstable option of the compiler; it is allowed for this step alone. Random cases find nothing more here.
    run(tests.env("RUSTC_BOOTSTRAP", "1").env("RECKOHM_FEW_CASES", "1").env("RECKOHM_FUZZ_RUNS", "200"))?;
    let text = std::fs::read_to_string(&report).map_err(|error| format!("{}: {error}", report.display()))?;
    let files = read(&text, &root());
    if files.is_empty() {
        return Err(format!("{}: no file of ours in it", report.display()));
    }
    print!("{}", table(&files));
    if uncovered {
        for (file, reached) in &files {
            for (line, _) in reached.lines.iter().filter(|(_, calls)| **calls == 0) {
                println!("{file}:{line}");
            }
        }
    }
    Ok(())
}

/// The tool that reads what this compiler writes: of the same version of LLVM, as Debian names it.
fn of_the_compiler(tool: &str) -> Result<String, String> {
    let about = output(&mut command("rustc", &["--version", "--verbose"]))?;
    let version = about.lines().find_map(|line| line.strip_prefix("LLVM version: ")).unwrap_or_default();
    let major = version.split('.').next().unwrap_or_default();
    let named = format!("{tool}-{major}");
    if present(&named) {
        return Ok(named);
    }
    Err(format!(
        "not run: {named} missing; Debian's package llvm-{major} brings it, or name one in LLVM_COV and LLVM_PROFDATA"
    ))
}

/// The files that are counted, from a report in lcov's form.
fn read(report: &str, root: &Path) -> BTreeMap<String, Reached> {
    let mut files: BTreeMap<String, Reached> = BTreeMap::new();
    let mut here: Option<String> = None;
    for line in report.lines() {
        let Some((word, rest)) = line.split_once(':') else { continue };
        if word == "SF" {
            let file = Path::new(rest).strip_prefix(root).unwrap_or(Path::new(rest)).display().to_string();
            here = file.starts_with(COUNTED).then_some(file);
        }
        let Some(file) = &here else { continue };
        let reached = files.entry(file.clone()).or_default();
        let numbers: Vec<&str> = rest.split(',').collect();
        match (word, numbers.as_slice()) {
            ("DA", [line, calls, ..]) => {
                if let (Ok(line), Ok(calls)) = (line.parse(), calls.parse::<u64>()) {
                    *reached.lines.entry(line).or_default() += calls;
                }
            }
            ("BRDA", [.., taken]) => {
                reached.branches += 1;
                reached.branches_taken += u64::from(!matches!(*taken, "-" | "0"));
            }
            _ => {}
        }
    }
    files
}

fn table(files: &BTreeMap<String, Reached>) -> String {
    let mut folders: BTreeMap<&str, [u64; 4]> = BTreeMap::new();
    for (file, reached) in files {
        let below = file[COUNTED.len()..].trim_start_matches('/');
        let folder = below.split_once('/').map_or("itself", |(folder, _)| folder);
        for row in [folder, "all"] {
            let sums = folders.entry(row).or_default();
            sums[0] += reached.lines.values().filter(|calls| **calls > 0).count() as u64;
            sums[1] += reached.lines.len() as u64;
            sums[2] += reached.branches_taken;
            sums[3] += reached.branches;
        }
    }
    let mut text = String::from("| folder | lines | reached | branches | taken |\n|---|---|---|---|---|\n");
    for (folder, [lines_reached, lines, taken, branches]) in folders {
        let (by_lines, by_branches) = (percent(lines_reached, lines), percent(taken, branches));
        text += &format!("| `{folder}` | {lines} | {by_lines} | {branches} | {by_branches} |\n");
    }
    text
}

fn percent(part: u64, whole: u64) -> String {
    if whole == 0 { "none".to_owned() } else { format!("{:.2} %", 100.0 * part as f64 / whole as f64) }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn lines_and_branches_of_ours_are_counted() {
        let report = "SF:/r/crates/reckohm/src/number/a.rs\nDA:1,3\nDA:2,0\nBRDA:1,0,0,3\nBRDA:1,0,1,-\nend_of_record\n\
                      SF:/r/other/b.rs\nDA:1,0\nBRDA:1,0,0,0\nend_of_record\n\
                      SF:/r/crates/reckohm/src/lib.rs\nDA:9,1\nend_of_record\n";
        let files = read(report, Path::new("/r"));
        assert_eq!(files.keys().collect::<Vec<_>>(), ["crates/reckohm/src/lib.rs", "crates/reckohm/src/number/a.rs"]);
        let table = table(&files);
        assert!(table.contains("| `number` | 2 | 50.00 % | 2 | 50.00 % |"), "{table}");
        assert!(table.contains("| `all` | 3 | 66.67 % | 2 | 50.00 % |"), "{table}");
        assert!(table.contains("| `itself` | 1 | 100.00 % | 0 | none |"), "{table}");
    }
}
