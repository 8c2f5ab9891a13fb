//! The tray judged through every door, and the files with every digit compared: the doors hold no maths of their own, so
//! each number must have the same bits, and each message the same words.

use std::path::{Path, PathBuf};

use crate::python;
use crate::report::Outcome;
use crate::tools::{cargo, run, target};

/// Fewer rows than this would mean that the tray was not judged.
const LEAST_ROWS: usize = 500;

/// Judges the tray at each door and compares.
pub fn check() -> Result<Outcome, String> {
    let folder = target().join("tray");
    std::fs::create_dir_all(&folder).map_err(|error| format!("{}: {error}", folder.display()))?;
    let [rust, notebook] = ["rust.csv", "notebook.csv"].map(|name| folder.join(name));
    for old in [&rust, &notebook] {
        // A file of an earlier run must not stand in for one that was not written.
        let _ = std::fs::remove_file(old);
    }
    let mut tray = cargo(&["run", "--quiet", "--package", "reckohm-examples", "--bin", "tray", "--"]);
    run(tray.arg("--quiet").arg("--csv").arg(&rust))?;
    python::notebook(Path::new("examples/notebooks/tray.ipynb"), &notebook)?;

    let rust = read(&rust)?;
    if rust.lines().count() < LEAST_ROWS {
        return Err(format!("only {} rows, at least {LEAST_ROWS} expected", rust.lines().count()));
    }
    compare(&rust, &read(&notebook)?, "notebook")?;
    Ok(Outcome::Passed(format!("{} rows alike from Rust and the notebook", rust.lines().count())))
}

/// The check as a command of its own.
pub fn command() -> Result<(), String> {
    if let Outcome::Passed(said) = check()? {
        println!("{said}");
    }
    Ok(())
}

fn read(path: &PathBuf) -> Result<String, String> {
    std::fs::read_to_string(path).map_err(|error| format!("{}: {error}", path.display()))
}

/// The first difference as an error.
fn compare(rust: &str, other: &str, name: &str) -> Result<(), String> {
    let mut others = other.lines();
    for row in rust.lines() {
        match others.next() {
            Some(other) if other == row => {}
            Some(other) => return Err(format!("Rust and {name} differ:\n  Rust: {row}\n  {name}: {other}")),
            None => return Err(format!("Rust has a row that {name} has not:\n  {row}")),
        }
    }
    others.next().map_or(Ok(()), |row| Err(format!("{name} has a row that Rust has not:\n  {row}")))
}

#[cfg(test)]
mod tests {
    use super::compare;

    #[test]
    fn a_bit_a_word_or_a_row_is_a_difference() {
        let rows = "line,part\n1,a,value,4.0,4010\n2,b,message,no,\n";
        assert_eq!(compare(rows, rows, "C"), Ok(()));
        for other in [
            rows.replace("4010", "4011"),
            rows.replace("no", "not"),
            rows.replace("2,b,message,no,\n", ""),
            format!("{rows}3,c\n"),
        ] {
            assert!(compare(rows, &other, "C").is_err(), "{other}");
        }
    }
}
