//! `cargo xtask bench --assembly`: what the compiler made of the loops over arrays, read from the C library's machine code:
//! vector instructions or not, and whether anything is called from within, a maths library's function say.

use std::collections::BTreeMap;

use crate::tools::{cargo, output, present, run, target};

/// Every loop of `reckohm::batch` for each width has its own function, whose name begins so.
const LOOPS: &str = "reckohm::number::batch::width::";

/// What one function holds.
#[derive(Default)]
struct Found {
    instructions: usize,
    registers: [usize; 3],
    calls: Vec<String>,
}

/// Builds the C library for release with names that tell a loop's formula, and prints a table of its loops.
pub fn show() -> Result<(), String> {
    if !present("objdump") {
        return Err("not run: objdump missing".to_owned());
    }
    let folder = target().join("assembly");
    let mut build = cargo(&["build", "--quiet", "--release", "--package", "reckohm-c", "--target-dir"]);
    run(build.arg(&folder).env("RUSTFLAGS", "-C symbol-mangling-version=v0"))?;
    let library = folder.join("release/libreckohm_c.so");
    let listing =
        output(crate::tools::command("objdump", &["--disassemble", "--demangle", "--no-show-raw-insn"]).arg(library))?;
    println!("| loop | formula | width | instructions | zmm | ymm | xmm | calls |");
    println!("|---|---|---|--:|--:|--:|--:|---|");
    for ((name, formula, width), found) in loops(&listing) {
        let [zmm, ymm, xmm] = found.registers;
        let calls = if found.calls.is_empty() { "none".to_owned() } else { found.calls.join(", ") };
        println!("| {name} | {formula} | {width} | {} | {zmm} | {ymm} | {xmm} | {calls} |", found.instructions);
    }
    Ok(())
}

fn loops(listing: &str) -> BTreeMap<(String, String, &'static str), Found> {
    let mut all: BTreeMap<(String, String, &'static str), Found> = BTreeMap::new();
    let mut current = None;
    for line in listing.lines() {
        if let Some(name) = line.strip_suffix(">:").and_then(|line| line.split_once(" <")).map(|(_, name)| name) {
            current = loop_of(name);
            continue;
        }
        let (Some(key), Some((_, instruction))) = (&current, line.split_once(":\t")) else { continue };
        let found = all.entry(key.clone()).or_default();
        found.instructions += 1;
        for (register, count) in ["%zmm", "%ymm", "%xmm"].into_iter().zip(&mut found.registers) {
            *count += usize::from(instruction.contains(register));
        }
        if instruction.starts_with("call") {
            let callee = instruction.split_once('<').map_or("*", |(_, callee)| callee.trim_end_matches('>'));
            let callee = last_words(callee);
            if !found.calls.contains(&callee) {
                found.calls.push(callee);
            }
        }
    }
    all
}

/// The loop, the formula and the width that a function's name tells; `None` for any other function.
fn loop_of(name: &str) -> Option<(String, String, &'static str)> {
    let of_loops = name.split_once(LOOPS)?.1;
    let (path, parameters) = of_loops.split_once("::<").or_else(|| of_loops.split_once('<'))?;
    let function = path.split("::").next()?;
    let version = path.rsplit("::").next()?;
    // What takes a narrower way out of a wide one stands elsewhere as well. The loops of 128 bits are within the function that
    // chooses, which calls the others, and are left out.
    let width = match function.rsplit('_').next()? {
        "512" if version.contains("avx512") => "512",
        "256" if version.contains("avx2") => "256",
        _ => return None,
    };
    let function = function.trim_end_matches("_512").trim_end_matches("_256");
    Some((function.to_owned(), formula(parameters), width))
}

/// The formula and its number type, without the paths before their names.
fn formula(parameters: &str) -> String {
    let mut text = String::new();
    for word in parameters.trim_end_matches('>').split_inclusive(['<', '>', ',', ' ']) {
        text.push_str(word.rsplit("::").next().unwrap_or(word));
    }
    text
}

fn last_words(path: &str) -> String {
    let plain = path.split_once('<').map_or(path, |(before, _)| before).trim_end_matches("::");
    plain.rsplit("::").take(2).collect::<Vec<_>>().into_iter().rev().collect::<Vec<_>>().join("::")
}
