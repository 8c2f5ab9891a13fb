//! A tray judged through every door, and the files with every digit compared: the doors hold no maths and no words of their
//! own, so each number must have the same bits and each message the same words. Once with the examples' tray, once with a
//! tray in which each line is wrong in another way.

use std::ffi::OsStr;
use std::path::{Path, PathBuf};

use crate::report::Outcome;
use crate::tools::{present, root, target};
use crate::{demo, python};

/// The trays, and how many rows they come to at least: fewer would mean that they were not judged.
const TRAYS: [(&str, usize); 2] = [(demo::TRAY, 800), ("tests/tray_of_mistakes.csv", 150)];

/// Judges each tray at each door and compares.
pub fn check() -> Result<Outcome, String> {
    if !present("gcc") {
        return Ok(Outcome::Missing("gcc"));
    }
    let mut rows = 0;
    for (tray, least) in TRAYS {
        let compared = alike(tray)?;
        if compared < least {
            return Err(format!("{tray}: only {compared} rows, at least {least} expected"));
        }
        rows += compared;
    }
    Ok(Outcome::Passed(format!("{rows} rows alike from Rust, C and the notebook")))
}

/// One tray; how many rows were compared.
fn alike(tray: &str) -> Result<usize, String> {
    let folder = target().join("tray");
    std::fs::create_dir_all(&folder).map_err(|error| format!("{}: {error}", folder.display()))?;
    let [rust, c, notebook] = ["rust.csv", "c.csv", "notebook.csv"].map(|name| folder.join(name));
    for old in [&rust, &c, &notebook] {
        // A file of an earlier run must not stand in for one that was not written.
        let _ = std::fs::remove_file(old);
    }
    let (quiet, csv, file) = (OsStr::new("--quiet"), OsStr::new("--csv"), root().join(tray));
    demo::tray(&[file.as_os_str(), quiet, csv, rust.as_os_str()])?;
    demo::jig(&[file.as_os_str(), quiet, csv, c.as_os_str()])?;
    python::notebook(Path::new("examples/notebooks/tray.ipynb"), &file, &notebook)?;
    let rust = read(&rust)?;
    compare(&rust, &read(&c)?, "C")?;
    compare(&rust, &read(&notebook)?, "notebook")?;
    Ok(rust.lines().count())
}

/// The check as a command of its own.
pub fn command() -> Result<(), String> {
    match check()? {
        Outcome::Passed(said) => println!("{said}"),
        Outcome::Missing(tool) => return Err(format!("not run: {tool} missing")),
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
