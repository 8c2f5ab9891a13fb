//! The committed list `tests/doors.csv`.

use std::path::Path;

/// One line. A cell with several names separates them by spaces; `-` is none.
pub struct Row {
    /// The path in the core; empty for what only the doors have.
    pub core: String,
    pub c: Vec<String>,
    pub python: Vec<String>,
    pub vector: Vec<String>,
    /// `doc` or `-`.
    pub example: String,
    /// `vector`, `file:test`, or `-`.
    pub errors: String,
    pub reason: String,
}

impl Row {
    /// What messages call it.
    pub fn name(&self) -> &str {
        let door = self.c.first().or(self.python.first()).map_or("a row without any name", String::as_str);
        if self.core.is_empty() { door } else { &self.core }
    }
}

const COLUMNS: [&str; 7] = ["core", "c", "python", "vector", "example", "errors", "reason"];

/// Reads the list.
pub fn read(file: &Path) -> Result<Vec<Row>, String> {
    let wrong = |error| format!("could not read {}: {error}", file.display());
    let mut reader = csv::ReaderBuilder::new().comment(Some(b'#')).from_path(file).map_err(wrong)?;
    let header = reader.headers().map_err(wrong)?;
    if header != COLUMNS.as_slice() {
        return Err(format!("{}: the columns are {}, not {}", file.display(), COLUMNS.join(","), header.as_slice()));
    }
    let mut rows = Vec::new();
    for record in reader.into_records() {
        let record = record.map_err(wrong)?;
        let cell = |at: usize| record.get(at).unwrap_or_default().trim().to_owned();
        let names = |at: usize| cell(at).split_whitespace().filter(|name| *name != "-").map(str::to_owned).collect();
        let core = cell(0);
        rows.push(Row {
            core: if core == "-" { String::new() } else { core },
            c: names(1),
            python: names(2),
            vector: names(3),
            example: cell(4),
            errors: cell(5),
            reason: cell(6),
        });
    }
    Ok(rows)
}
