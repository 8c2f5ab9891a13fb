//! The whole conformance set on the boards: the C door's own test programs read the vectors from the host, and compare.

use std::fs;
use std::hash::{DefaultHasher, Hash, Hasher};
use std::path::{Path, PathBuf};

use super::board::Board;
use super::{emulator, image};
use crate::tools::{root, target};

/// Programs of `bindings/c/tests` beside those that run vectors.
const OTHERS: [&str; 3] = ["arithmetic", "behaviour", "layouts"];

/// Files whose rows integrate again and again, which takes minutes in emulated software arithmetic.
const COSTLY: [&str; 3] = ["measurement.tsv", "uncertainty.tsv", "verdict.tsv"];
/// Of those, one row in so many where not all are asked for.
const EVERY: usize = 12;

/// Runs every program on a board; gives what each said. What held before is not run again: minutes of emulation. It counts as
/// the same only where every byte of the image and of the rows is.
pub fn run(board: &Board, object: &Path, rows: &[PathBuf], whole: bool) -> Result<Vec<String>, String> {
    let mut said = Vec::new();
    // Each function has its own frame: inlined, those of all cases of a program would add up.
    let mut flags = vec!["-fno-inline".to_owned()];
    if !whole {
        flags.push(format!("-DRKO_TEST_EVERY={EVERY}"));
    }
    for program in programs()? {
        let name = program.file_stem().unwrap_or_default().to_string_lossy().into_owned();
        let built = image::link(board, &name, "-Os", &[&program, object], &flags)?;
        let rows = if name.ends_with("_vectors") { rows } else { &[] };
        let held = built.with_extension(format!("held-{:016x}", hash(&built, rows)?));
        let answer = match fs::read_to_string(&held) {
            Ok(before) => format!("{before}(of the same bytes, before)\n"),
            Err(_) => {
                let words: Vec<String> = rows
                    .iter()
                    .map(|file| file.file_name().unwrap_or_default().to_string_lossy().into_owned())
                    .collect();
                let answer = emulator::run(board, &built, None, &folder(), &words)?;
                fs::write(&held, &answer).map_err(|error| format!("{}: {error}", held.display()))?;
                answer
            }
        };
        said.extend(answer.lines().map(str::to_owned));
    }
    Ok(said)
}

fn hash(image: &Path, rows: &[PathBuf]) -> Result<u64, String> {
    let mut hasher = DefaultHasher::new();
    for file in std::iter::once(image).chain(rows.iter().map(PathBuf::as_path)) {
        fs::read(file).map_err(|error| format!("{}: {error}", file.display()))?.hash(&mut hasher);
    }
    Ok(hasher.finish())
}

fn folder() -> PathBuf {
    target().join("firmware/rows")
}

fn programs() -> Result<Vec<PathBuf>, String> {
    let tests = root().join("bindings/c/tests");
    let mut programs = listed(&tests, "_vectors.c")?;
    if programs.is_empty() {
        return Err(format!("no program that runs vectors in {}", tests.display()));
    }
    programs.extend(OTHERS.map(|name| tests.join(format!("{name}.c"))));
    Ok(programs)
}

/// The vectors as a board reads them; gives the files. Without `whole` a part of the costly ones is left out.
pub fn rows(whole: bool) -> Result<Vec<PathBuf>, String> {
    let folder = folder();
    fs::create_dir_all(&folder).map_err(|error| format!("{}: {error}", folder.display()))?;
    let mut written = Vec::new();
    for file in listed(&root().join("tests/vectors"), ".tsv")? {
        let text = fs::read_to_string(&file).map_err(|error| format!("{}: {error}", file.display()))?;
        let costly = COSTLY.iter().any(|name| file.ends_with(name));
        let every = if costly && !whole { EVERY } else { 1 };
        let to = folder.join(file.file_name().unwrap_or_default());
        fs::write(&to, with_bits(&text, every)).map_err(|error| format!("{}: {error}", to.display()))?;
        written.push(to);
    }
    Ok(written)
}

fn listed(folder: &Path, ending: &str) -> Result<Vec<PathBuf>, String> {
    let entries = fs::read_dir(folder).map_err(|error| format!("{}: {error}", folder.display()))?;
    let mut files: Vec<PathBuf> = entries.filter_map(|entry| Some(entry.ok()?.path())).collect();
    files.retain(|file| file.to_string_lossy().ends_with(ending));
    files.sort();
    Ok(files)
}

/// Rows whose inputs, where they are numbers, have their bits behind them: a board's own library need not read decimals. What is
/// there for people alone, such as the source, is left out; a line stays the line that it was. Of all lines one in `every` is kept.
fn with_bits(rows: &str, every: usize) -> String {
    let mut text = String::new();
    for (place, row) in rows.lines().enumerate() {
        let mut cells: Vec<String> = row.split('\t').map(str::to_owned).collect();
        if !row.starts_with('#') && cells.len() == 6 && cells[0] != "function" && place % every == 0 {
            cells[1] = cells[1].split('|').map(input).collect::<Vec<_>>().join("|");
            cells[5].clear();
            text.push_str(&cells.join("\t"));
        }
        text.push('\n');
    }
    text
}

fn input(cell: &str) -> String {
    cell.parse::<f64>().map_or_else(|_| cell.to_owned(), |number| format!("{cell}@{:016x}", number.to_bits()))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn numbers_get_their_bits_and_words_stay() {
        let rows = "# said\nfunction\tin\tout\tbits\tstatus\tsource\nf.g\t1|4K7J||-0.1\t2\t4000000000000000\t0\tbook\n";
        assert_eq!(
            with_bits(rows, 1),
            "\n\nf.g\t1@3ff0000000000000|4K7J||-0.1@bfb999999999999a\t2\t4000000000000000\t0\t\n"
        );
    }
}
