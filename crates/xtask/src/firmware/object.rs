//! The library as one object: the core, the C door and all that the compiler calls for them, linked into one another, so that no
//! other library's arithmetic can take the place of ours. Its only names are the door's.

use std::collections::BTreeSet;
use std::fs;
use std::path::{Path, PathBuf};

use super::board::Board;
use super::sysroot::Compiler;
use crate::tools::{cargo, command, root, run, target};

/// Where all of a board's files go.
pub fn folder(board: &Board) -> Result<PathBuf, String> {
    let folder = target().join("firmware").join(board.target);
    fs::create_dir_all(&folder).map_err(|error| format!("{}: {error}", folder.display()))?;
    Ok(folder)
}

/// Builds the object; gives its path and that of the library that it was made of.
pub fn build(board: &Board, compiler: &Compiler, functions: &BTreeSet<String>) -> Result<(PathBuf, PathBuf), String> {
    let archive = archive(board, compiler)?;
    Ok((one_object(board, &archive, functions, "reckohm.o")?, archive))
}

fn archive(board: &Board, compiler: &Compiler) -> Result<PathBuf, String> {
    // A folder of its own: the host's builds are of another compiler.
    let building = target().join("firmware/build");
    let mut build =
        cargo(&["rustc", "--quiet", "--profile", "firmware", "--package", "reckohm-c", "--no-default-features"]);
    build.args(["--features", "firmware", "--crate-type", "staticlib", "--target", board.target, "--target-dir"]);
    build.arg(&building);
    // The last crate is where all is compiled; saying how much stack each function takes is an unstable option, allowed to it alone.
    build.args(["--", "-Zemit-stack-sizes"]).env("RUSTC_BOOTSTRAP", "reckohm_c");
    build.env("RUSTC", &compiler.program);
    if let Some(sysroot) = &compiler.sysroot {
        build.env("CARGO_ENCODED_RUSTFLAGS", format!("--sysroot\u{1f}{}", sysroot.display()));
    }
    run(&mut build)?;
    Ok(building.join(board.target).join("firmware/libreckohm_c.a"))
}

/// Links what the functions need of an archive into one object whose only global names they are.
pub fn one_object(board: &Board, archive: &Path, functions: &BTreeSet<String>, name: &str) -> Result<PathBuf, String> {
    let folder = folder(board)?;
    let (names, all, object) =
        (folder.join(format!("names-{name}")), folder.join(format!("whole-{name}")), folder.join(name));
    let list: String = functions.iter().map(|function| format!("{function}\n")).collect();
    fs::write(&names, list).map_err(|error| format!("{}: {error}", names.display()))?;

    let mut link = command(&board.tool("ld"), board.relocatable);
    link.args(["-r", "--gc-sections"]);
    for function in functions {
        link.arg("-u").arg(function);
    }
    quietly(link.arg(archive).arg("-o").arg(&all))?;

    // Left out: the compiler's bitcode, tables for unwinding, and what it says of stacks (a linker that drops unused functions
    // keeps those that such a table speaks of).
    let mut cut = command(&board.tool("objcopy"), &[]);
    for section in [".llvmbc", ".llvmcmd", ".ARM.exidx*", ".stack_sizes"] {
        cut.args(["-R", section]);
    }
    cut.arg(format!("--keep-global-symbols={}", names.display()));
    quietly(cut.arg(&all).arg(&object))?;
    Ok(object)
}

/// Runs without a word unless it fails: the names of all functions would be in it.
pub fn quietly(command: &mut std::process::Command) -> Result<(), String> {
    let program = command.get_program().to_string_lossy().into_owned();
    match command.output() {
        Ok(done) if done.status.success() => Ok(()),
        Ok(done) => Err(format!("{program}: {}\n{}", done.status, String::from_utf8_lossy(&done.stderr))),
        Err(error) => Err(format!("could not start {program}: {error}")),
    }
}

/// Every function of the header but those that make sentences, which firmware has not.
pub fn functions() -> Result<BTreeSet<String>, String> {
    let read = |place: &str| fs::read_to_string(root().join(place)).map_err(|error| format!("{place}: {error}"));
    let mut functions = declared(&read("bindings/c/include/reckohm.h")?);
    for file in ["bindings/c/src/text.rs", "bindings/c/src/words.rs"] {
        for name in exported(&read(file)?) {
            if !functions.remove(&name) {
                return Err(format!("{name} of {file} is not in the header"));
            }
        }
    }
    if functions.is_empty() { Err("no function in the header".to_owned()) } else { Ok(functions) }
}

/// The functions that a header declares: each declaration begins a line with its type.
fn declared(header: &str) -> BTreeSet<String> {
    header
        .lines()
        .filter(|line| line.starts_with(|first: char| first.is_ascii_alphabetic()))
        .filter_map(called)
        .collect()
}

/// The functions that a file of the C door exports.
fn exported(source: &str) -> BTreeSet<String> {
    source.lines().filter(|line| line.contains("extern \"C\" fn rko_")).filter_map(called).collect()
}

/// The first name of ours that a parenthesis follows.
fn called(line: &str) -> Option<String> {
    let (before, _) = line.split_once('(')?;
    let name = before.rsplit([' ', '*']).next()?;
    name.starts_with("rko_").then(|| name.to_owned())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn functions_are_read_from_declarations_alone() {
        let header = "/* rko_old(x) */\n * rko_word(y)\nrko_status rko_span_read(const struct rko_span *span,\nuint32_t rko_abi_version(void);\n";
        assert_eq!(declared(header).into_iter().collect::<Vec<_>>(), ["rko_abi_version", "rko_span_read"]);
        let source = "pub unsafe extern \"C\" fn rko_side_text(\n    side: u32,\nfn rko_inner(";
        assert_eq!(exported(source).into_iter().collect::<Vec<_>>(), ["rko_side_text"]);
    }

    #[test]
    fn the_header_has_functions_that_firmware_has_not() {
        let functions = functions().unwrap();
        assert!(functions.contains("rko_judge") && !functions.contains("rko_verdict_text"));
    }
}
