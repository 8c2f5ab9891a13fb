//! What stands behind the doors: functions of the C header and of its tests, names in the Python stubs, rows of vectors.

use std::collections::{BTreeMap, BTreeSet};
use std::path::{Path, PathBuf};

/// Rows of one vector function.
#[derive(Default)]
pub struct Rows {
    pub results: usize,
    pub errors: usize,
}

/// Everything that the list is compared with.
pub struct Evidence {
    pub c_header: BTreeSet<String>,
    pub c_tests: BTreeSet<String>,
    pub python: BTreeSet<String>,
    pub vectors: BTreeMap<String, Rows>,
    root: PathBuf,
}

impl Evidence {
    /// Reads what is there; a door that does not stand yet has no names.
    pub fn read(root: &Path) -> Result<Self, String> {
        let header = root.join("bindings/c/include/reckohm.h");
        let header = if header.exists() { read(&header)? } else { String::new() };
        let mut c_tests = BTreeSet::new();
        for file in files(&root.join("bindings/c/tests"), &["c", "cpp", "h"])? {
            c_tests.extend(c_names(&without_comments(&read(&file)?)));
        }
        let mut python = BTreeSet::new();
        let package = root.join("bindings/python/python/reckohm");
        for file in files(&package, &["pyi"])? {
            let module = file.strip_prefix(&package).unwrap_or(&file).with_extension("");
            let module = module.iter().map(|step| step.to_string_lossy()).collect::<Vec<_>>().join(".");
            let module = module.strip_suffix("__init__").unwrap_or(&module).trim_end_matches('.').to_owned();
            python.extend(stub_names(&module, &read(&file)?));
        }
        let mut vectors = BTreeMap::new();
        for file in files(&root.join("tests/vectors"), &["tsv"])? {
            count_rows(&read(&file)?, &mut vectors).map_err(|why| format!("{}: {why}", file.display()))?;
        }
        let c_header = c_calls(&without_comments(&header));
        Ok(Evidence { c_header, c_tests, python, vectors, root: root.to_path_buf() })
    }

    /// Whether a test is where `file:test` says.
    pub fn has_test(&self, place: &str) -> bool {
        let Some((file, test)) = place.split_once(':') else { return false };
        let text = std::fs::read_to_string(self.root.join(file)).unwrap_or_default();
        ["fn ", "def "].iter().any(|word| text.contains(&format!("{word}{test}(")))
    }
}

fn read(file: &Path) -> Result<String, String> {
    std::fs::read_to_string(file).map_err(|error| format!("could not read {}: {error}", file.display()))
}

fn files(folder: &Path, kinds: &[&str]) -> Result<Vec<PathBuf>, String> {
    let mut found = Vec::new();
    if !folder.exists() {
        return Ok(found);
    }
    let wrong = |error| format!("could not read {}: {error}", folder.display());
    for entry in std::fs::read_dir(folder).map_err(wrong)? {
        let path = entry.map_err(wrong)?.path();
        if path.is_dir() {
            found.extend(files(&path, kinds)?);
        } else if path.extension().is_some_and(|kind| kinds.iter().any(|known| kind == *known)) {
            found.push(path);
        }
    }
    found.sort();
    Ok(found)
}

fn without_comments(text: &str) -> String {
    let mut kept = String::new();
    let mut rest = text;
    while let Some(start) = rest.find("/*") {
        kept.push_str(&rest[..start]);
        rest = rest[start..].find("*/").map_or("", |end| &rest[start + end + 2..]);
    }
    kept.push_str(rest);
    kept.lines().map(|line| line.find("//").map_or(line, |at| &line[..at])).collect::<Vec<_>>().join("\n")
}

/// Every `rko_…` word.
fn c_names(text: &str) -> BTreeSet<String> {
    words(text).filter(|word| word.starts_with("rko_")).map(str::to_owned).collect()
}

/// Every `rko_…` word with a list of parameters behind it.
fn c_calls(text: &str) -> BTreeSet<String> {
    let mut found = BTreeSet::new();
    for (at, _) in text.match_indices('(') {
        if let Some(word) = words(text[..at].trim_end()).next_back()
            && word.starts_with("rko_")
            && text[..at].trim_end().ends_with(word)
            // A pointer to a function stands behind a type's name, not behind a function's.
            && !text[at..].starts_with("(*")
        {
            found.insert(word.to_owned());
        }
    }
    found
}

fn words(text: &str) -> impl DoubleEndedIterator<Item = &str> {
    text.split(|letter: char| !letter.is_ascii_alphanumeric() && letter != '_').filter(|word| !word.is_empty())
}

/// The dotted names that a stub declares: functions, classes, and what stands inside them.
fn stub_names(module: &str, text: &str) -> BTreeSet<String> {
    let mut found = BTreeSet::new();
    let mut around: Vec<(usize, String)> = Vec::new();
    for line in text.lines() {
        let bare = line.trim_start();
        let indent = line.len() - bare.len();
        let Some((name, opens)) = declared(bare) else { continue };
        around.retain(|(outer, _)| *outer < indent);
        let mut full: Vec<&str> = if module.is_empty() { Vec::new() } else { vec![module] };
        full.extend(around.iter().map(|(_, name)| name.as_str()));
        full.push(name);
        found.insert(full.join("."));
        if opens {
            around.push((indent, name.to_owned()));
        }
    }
    found
}

/// The name that a stub's line declares, and whether more names stand inside it.
fn declared(line: &str) -> Option<(&str, bool)> {
    let name = |text: &str| text.find(|letter: char| !letter.is_alphanumeric() && letter != '_').unwrap_or(text.len());
    for (start, opens) in [("def ", false), ("class ", true)] {
        if let Some(rest) = line.strip_prefix(start) {
            return Some((&rest[..name(rest)], opens));
        }
    }
    let end = name(line);
    let after = line[end..].trim_start();
    (end > 0 && (after.starts_with(": ") || after.starts_with("= "))).then(|| (&line[..end], false))
}

/// Counts the rows of a vector file by function.
fn count_rows(text: &str, counted: &mut BTreeMap<String, Rows>) -> Result<(), String> {
    let mut lines = text.lines().filter(|line| !line.starts_with('#') && !line.is_empty());
    let header: Vec<&str> = lines.next().ok_or("no header line")?.split('\t').collect();
    let column = |name| header.iter().position(|held| *held == name).ok_or(format!("no column {name}"));
    let (function, status) = (column("function")?, column("status")?);
    for line in lines {
        let cells: Vec<&str> = line.split('\t').collect();
        let cell = |at: usize| cells.get(at).copied().ok_or(format!("a row has too few cells: {line}"));
        let rows = counted.entry(cell(function)?.to_owned()).or_default();
        match cell(status)? {
            "0" => rows.results += 1,
            number if number.parse::<u16>().is_ok() => rows.errors += 1,
            other => return Err(format!("status {other:?} is no number: {line}")),
        }
    }
    Ok(())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn declarations_of_a_header_are_found_and_comments_are_not() {
        let header = "/* calls rko_old(x) */\nint32_t rko_span_read(const rko_span *span);\ntypedef rko_status (*f)(int); // rko_no(";
        assert_eq!(c_calls(&without_comments(header)).into_iter().collect::<Vec<_>>(), ["rko_span_read"]);
    }

    #[test]
    fn stub_names_carry_their_module_and_class() {
        let stub = "import x\nOL: str\nclass Span:\n    def read(\n        self, text: str\n    ) -> None: ...\n    @property\n    def ohm(self) -> float: ...\ndef f(a: int) -> int: ...\n";
        let names = stub_names("meter", stub);
        for name in ["meter.OL", "meter.Span", "meter.Span.read", "meter.Span.ohm", "meter.f"] {
            assert!(names.contains(name), "{name}");
        }
        assert!(!names.contains("meter.read"));
    }

    #[test]
    fn rows_are_counted_by_function_and_status() {
        let mut counted = BTreeMap::new();
        let text = "# made\nfunction\tinputs\toutputs\tbits\tstatus\tsource\na.f\t1\t2\t3\t0\tx\na.f\t1\t\t\t104\tx\n";
        count_rows(text, &mut counted).unwrap();
        assert_eq!((counted["a.f"].results, counted["a.f"].errors), (1, 1));
        assert!(count_rows("function\tstatus\na.f\tok\n", &mut counted).is_err());
    }
}
