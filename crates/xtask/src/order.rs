//! The core's folders follow the job, and each may use only those before it.

use std::collections::BTreeSet;
use std::path::{Path, PathBuf};

use crate::tools;

/// The folders in the order of the job.
const ORDER: [&str; 11] =
    ["number", "fit", "uncertainty", "part", "meter", "measurement", "verdict", "lot", "sensor", "network", "circuit"];

/// Reads every source file of the core; an error lists each use of a later folder.
pub fn check() -> Result<String, String> {
    let source = tools::root().join("crates/reckohm/src");
    let mut wrong = Vec::new();
    let (mut folders, mut files) = (0, 0);
    for folder in folders_of(&source)? {
        let name = folder.file_name().and_then(|name| name.to_str()).unwrap_or_default().to_owned();
        let Some(place) = ORDER.iter().position(|known| *known == name) else {
            wrong.push(format!(
                "{name}/: this folder has no place in the order; give it one in crates/xtask/src/order.rs"
            ));
            continue;
        };
        folders += 1;
        for file in source_files(&folder)? {
            files += 1;
            let text = read(&file)?;
            let shown = file.strip_prefix(&source).unwrap_or(&file).display();
            for (line, used) in uses(&text) {
                if ORDER.iter().position(|known| *known == used).is_some_and(|other| other > place) {
                    wrong.push(format!("{shown}:{line}: {name}/ uses {used}/, which comes after it"));
                }
            }
        }
    }
    if files == 0 {
        return Err(format!("found no source file under {}", source.display()));
    }
    if wrong.is_empty() {
        Ok(format!("{folders} folders, {files} files: each uses only those before it"))
    } else {
        Err(format!("{} uses against the order\n{}", wrong.len(), wrong.join("\n")))
    }
}

fn folders_of(source: &Path) -> Result<Vec<PathBuf>, String> {
    Ok(entries(source)?.into_iter().filter(|path| path.is_dir()).collect())
}

fn source_files(folder: &Path) -> Result<Vec<PathBuf>, String> {
    let mut files = Vec::new();
    for path in entries(folder)? {
        if path.is_dir() {
            files.extend(source_files(&path)?);
        } else if path.extension().is_some_and(|kind| kind == "rs") {
            files.push(path);
        }
    }
    Ok(files)
}

fn entries(folder: &Path) -> Result<Vec<PathBuf>, String> {
    let wrong = |error| format!("could not read {}: {error}", folder.display());
    let mut paths = Vec::new();
    for entry in std::fs::read_dir(folder).map_err(wrong)? {
        paths.push(entry.map_err(wrong)?.path());
    }
    paths.sort();
    Ok(paths)
}

fn read(file: &Path) -> Result<String, String> {
    std::fs::read_to_string(file).map_err(|error| format!("could not read {}: {error}", file.display()))
}

/// The folders that a file's code names by `crate::` or by `super::`, with the line of each; comments do not count.
fn uses(text: &str) -> BTreeSet<(usize, String)> {
    let code: String = text.lines().map(|line| format!("{}\n", before_comment(line))).collect();
    let mut found = BTreeSet::new();
    for root in ["crate::", "super::"] {
        for (at, _) in code.match_indices(root) {
            let line = 1 + code[..at].matches('\n').count();
            let after = &code[at + root.len()..];
            for name in first_names(after).into_iter().filter(|name| !name.is_empty()) {
                found.insert((line, name));
            }
        }
    }
    found
}

fn before_comment(line: &str) -> &str {
    line.find("//").map_or(line, |at| &line[..at])
}

/// The first name of a path, or of each path in a braced list.
fn first_names(path: &str) -> Vec<String> {
    let Some(list) = path.strip_prefix('{') else {
        return vec![leading_name(path)];
    };
    let mut names = Vec::new();
    let (mut depth, mut start) = (0_usize, 0);
    for (at, letter) in list.char_indices() {
        match letter {
            '{' => depth += 1,
            '}' if depth > 0 => depth -= 1,
            ',' | '}' if depth == 0 => {
                names.push(leading_name(list[start..at].trim_start()));
                start = at + 1;
                if letter == '}' {
                    break;
                }
            }
            _ => {}
        }
    }
    names
}

fn leading_name(path: &str) -> String {
    path.chars().take_while(|letter| letter.is_alphanumeric() || *letter == '_').collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn named(text: &str) -> Vec<String> {
        uses(text).into_iter().map(|(_, name)| name).collect()
    }

    #[test]
    fn sees_paths_lists_and_paths_in_expressions() {
        assert_eq!(named("use crate::meter::Span;"), ["meter"]);
        assert_eq!(named("use crate::{\n    number::{Kind, range},\n    verdict,\n};"), ["number", "verdict"]);
        assert_eq!(named("fn f() { super::super::lot::g() }\nlet x = crate::sensor::T;"), ["lot", "super", "sensor"]);
        assert_eq!(named("pub(crate) fn f() {} // crate::circuit::g\n/// [`crate::lot`]"), Vec::<String>::new());
    }

    #[test]
    fn counts_lines_from_one() {
        assert_eq!(uses("\n\nuse crate::part::X;").into_iter().next(), Some((3, "part".to_owned())));
    }

    #[test]
    fn the_core_itself_is_in_order() {
        check().unwrap();
    }
}
