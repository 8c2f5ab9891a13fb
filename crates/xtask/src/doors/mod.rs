//! `cargo xtask doors`: every public function of the core, and what stands behind it at each door.
//!
//! The functions are found by program; `tests/doors.csv` says for each what its doors, vectors and error cases are. The
//! command fails where the two differ, and where the list names something that is not there.
//!
//! A `-` needs a reason in the last column, but for these rules:
//! - a plain getter (only `self` goes in, no `Result` comes out) needs no vector and no example of its own;
//! - what cannot fail needs no error case;
//! - the methods of an error are how the doors carry it: a status and a detail in C, an exception in Python;
//! - `number` is the extension point for people who write sensors of their own: it is there in Rust alone.

mod evidence;
mod source;
mod surface;
mod table;

use std::collections::BTreeSet;
use std::path::Path;

use evidence::Evidence;
use surface::Function;
use table::Row;

const TABLE: &str = "tests/doors.csv";
/// A reason with these words excuses a name in C that no C test has yet, and fails once one has.
const NO_C_TEST: &str = "no C test";

/// The public functions, a line each.
pub fn list(root: &Path) -> Result<String, String> {
    let mut text = String::new();
    for function in functions(root)? {
        let notes = [(function.getter, "getter"), (function.fallible, "fallible"), (function.example, "example")];
        let notes: Vec<&str> = notes.iter().filter(|(holds, _)| *holds).map(|(_, note)| *note).collect();
        text.push_str(&format!("{}\t{}\n", function.path, notes.join(" ")));
    }
    Ok(text)
}

/// Compares the functions with the list and the list with what is there.
pub fn check(root: &Path) -> Result<String, String> {
    let functions = functions(root)?;
    let rows = table::read(&root.join(TABLE))?;
    let evidence = Evidence::read(root)?;
    let wrong = compare(&functions, &rows, &evidence);
    if wrong.is_empty() {
        let count = |cell: fn(&Row) -> &Vec<String>| rows.iter().map(|row| cell(row).len()).sum::<usize>();
        let vectors: usize = evidence.vectors.values().map(|rows| rows.results + rows.errors).sum();
        Ok(format!(
            "{} functions; {} names in C, {} in Python; {vectors} vector rows",
            functions.len(),
            count(|row| &row.c),
            count(|row| &row.python)
        ))
    } else {
        Err(format!("{} gaps between the core and {TABLE}\n{}", wrong.len(), wrong.join("\n")))
    }
}

fn functions(root: &Path) -> Result<Vec<Function>, String> {
    surface::functions(&source::Source::read(root)?)
}

fn compare(functions: &[Function], rows: &[Row], evidence: &Evidence) -> Vec<String> {
    let mut wrong = Vec::new();
    let mut listed = BTreeSet::new();
    for row in rows {
        if !row.core.is_empty() && !listed.insert(row.core.as_str()) {
            wrong.push(format!("{}: listed twice", row.core));
        }
    }
    for function in functions {
        match rows.iter().find(|row| row.core == function.path) {
            Some(row) => check_row(function, row, evidence, &mut wrong),
            None => wrong.push(format!("{}: a public function that the list does not have", function.path)),
        }
    }
    for row in rows {
        if row.core.is_empty() {
            check_names(row, evidence, &mut wrong);
            if row.reason.is_empty() {
                wrong.push(format!("{}: only at the doors, without a reason", row.name()));
            }
        } else if !functions.iter().any(|function| function.path == row.core) {
            wrong.push(format!("{}: listed, but the core has no such public function", row.core));
        }
    }
    let named_c: BTreeSet<&String> = rows.iter().flat_map(|row| &row.c).collect();
    wrong.extend(
        evidence
            .c_header
            .iter()
            .filter(|name| !named_c.contains(name))
            .map(|name| format!("{name}: in the C header, in no row")),
    );
    let named_vectors: BTreeSet<&String> = rows.iter().flat_map(|row| &row.vector).collect();
    wrong.extend(
        evidence
            .vectors
            .keys()
            .filter(|name| !named_vectors.contains(name))
            .map(|name| format!("{name}: has vectors, but is in no row")),
    );
    wrong
}

fn check_row(function: &Function, row: &Row, evidence: &Evidence, wrong: &mut Vec<String>) {
    let path = &function.path;
    let of_an_error = path.rsplit("::").nth(1).is_some_and(|name| name.ends_with("Error"));
    let rust_only = path.starts_with("number::") || of_an_error;
    let unreasoned = row.reason.is_empty();
    check_names(row, evidence, wrong);
    for (cells, door) in [(&row.c, "C"), (&row.python, "Python")] {
        if cells.is_empty() && unreasoned && !rust_only {
            wrong.push(format!("{path}: not at the {door} door, and no reason given"));
        }
    }
    if row.vector.is_empty() && unreasoned && !rust_only && !function.getter {
        wrong.push(format!("{path}: no vector, and no reason given"));
    }
    match (row.example.as_str(), function.example) {
        ("doc", false) => wrong.push(format!("{path}: its documentation has no example that runs")),
        ("-", true) => wrong.push(format!("{path}: its documentation has an example; say doc")),
        ("-", false) if unreasoned && !function.getter && !of_an_error => {
            wrong.push(format!("{path}: no example, and no reason given"));
        }
        ("doc" | "-", _) => {}
        (other, _) => wrong.push(format!("{path}: the column example holds doc or -, not {other:?}")),
    }
    match (row.errors.as_str(), function.fallible) {
        ("-", true) if unreasoned => {
            wrong.push(format!("{path}: it can fail, but no error case is named, and no reason given"))
        }
        ("-", _) => {}
        (_, false) => wrong.push(format!("{path}: an error case is named, but it cannot fail")),
        ("vector", true) => {
            let errors: usize =
                row.vector.iter().filter_map(|name| evidence.vectors.get(name)).map(|rows| rows.errors).sum();
            if errors == 0 {
                wrong.push(format!("{path}: no vector row of it ends in an error"));
            }
        }
        (place, true) if !evidence.has_test(place) => wrong.push(format!("{path}: there is no test {place}")),
        (_, true) => {}
    }
}

/// Everything that a row names has to be there.
fn check_names(row: &Row, evidence: &Evidence, wrong: &mut Vec<String>) {
    let of = row.name();
    let untested = row.reason.contains(NO_C_TEST);
    for name in &row.c {
        if !evidence.c_header.contains(name) {
            wrong.push(format!("{of}: {name} is not in the C header"));
        } else if !evidence.c_tests.contains(name) && !untested {
            wrong.push(format!("{of}: {name} is named in no C test"));
        }
    }
    if untested && row.c.iter().all(|name| evidence.c_tests.contains(name)) {
        wrong.push(format!("{of}: its reason says {NO_C_TEST:?}, but there is one for each of its names in C"));
    }
    for name in row.python.iter().filter(|name| !evidence.python.contains(*name)) {
        wrong.push(format!("{of}: {name} is not in the Python stubs"));
    }
    for name in row.vector.iter().filter(|name| !evidence.vectors.contains_key(*name)) {
        wrong.push(format!("{of}: no vector row has the function {name}"));
    }
}
