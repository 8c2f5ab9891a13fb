//! What is proved by linking and by looking at what was linked.

use std::collections::BTreeSet;
use std::path::Path;

use super::board::Board;
use super::object::{folder, one_object, quietly};
use super::sysroot::Compiler;
use super::{emulator, image};
use crate::tools::{command, output, root};

/// A symbol of an object.
struct Symbol {
    name: String,
    global: bool,
    defined: bool,
}

/// Parts of names that the compiler gives to what must not be there.
const FORBIDDEN: [(&str, &str); 5] = [
    ("3fmt", "formatting"),
    ("9panicking", "a panic"),
    ("rko_a_panic_can_be_reached", "a panic"),
    ("rust_alloc", "a heap"),
    ("malloc", "a heap"),
];

/// Every function forced into an image that links, and an object with no names but theirs and nothing in it that must not be.
pub fn run(board: &Board, object: &Path, functions: &BTreeSet<String>) -> Result<String, String> {
    let wrong = faults(board, object, functions)?;
    if !wrong.is_empty() {
        return Err(format!("the object for {}:\n{}", board.processor, wrong.join("\n")));
    }
    everything_links(board, object, functions)?;
    Ok(format!("{} functions", functions.len()))
}

/// An image with every function in it. It is larger than some boards' memory, so it is linked for a large one, and not run.
fn everything_links(board: &Board, object: &Path, functions: &BTreeSet<String>) -> Result<(), String> {
    let image = folder(board)?.join("every_function.elf");
    let mut link = command(&board.tool("ld"), board.relocatable);
    link.args(["--gc-sections", "-e", "0"]);
    for function in functions {
        link.arg("-u").arg(function);
    }
    quietly(link.arg(object).arg("-o").arg(&image))
}

fn faults(board: &Board, object: &Path, functions: &BTreeSet<String>) -> Result<Vec<String>, String> {
    let read = |what: &str| output(&mut command(&board.tool("readelf"), &[what, &object.display().to_string()]));
    let symbols = symbols(&read("-sW")?);
    Ok([names(&symbols, functions), contents(&symbols), memory(&read("-SW")?)].concat())
}

/// The symbols as readelf prints them, a line each: number, value, size, type, binding, visibility, section, name.
fn symbols(said: &str) -> Vec<Symbol> {
    said.lines()
        .filter_map(|line| {
            let cells: Vec<&str> = line.split_whitespace().collect();
            let [number, _, _, kind, binding, _, section, name] = cells.as_slice() else { return None };
            let counted = number.strip_suffix(':').is_some_and(|number| number.parse::<u32>().is_ok());
            (counted && *kind != "SECTION").then(|| Symbol {
                name: (*name).to_owned(),
                global: *binding != "LOCAL",
                defined: *section != "UND",
            })
        })
        .collect()
}

/// Globals are the door's functions, all of them, and nothing is left undefined.
fn names(symbols: &[Symbol], functions: &BTreeSet<String>) -> Vec<String> {
    let named = |held: fn(&Symbol) -> bool| -> BTreeSet<String> {
        symbols.iter().filter(|symbol| held(symbol)).map(|symbol| symbol.name.clone()).collect()
    };
    let global = named(|symbol| symbol.defined && symbol.global);
    let undefined = named(|symbol| !symbol.defined);
    let mut wrong: Vec<String> = undefined.iter().map(|name| format!("{name} is used and defined nowhere")).collect();
    wrong.extend(global.difference(functions).map(|name| format!("{name} is global and no function of the door")));
    wrong.extend(functions.difference(&global).map(|name| format!("{name} is in the header and not in the object")));
    wrong
}

/// No formatting, no panic, no heap.
fn contents(symbols: &[Symbol]) -> Vec<String> {
    let mut wrong = Vec::new();
    for symbol in symbols {
        for (part, what) in FORBIDDEN {
            if symbol.name.contains(part) {
                wrong.push(format!("{what}: {}", symbol.name));
            }
        }
    }
    wrong
}

/// No section that can be written to has a size: number, name, type, address, offset, size, entry size, flags, ...
fn memory(said: &str) -> Vec<String> {
    let mut wrong = Vec::new();
    for line in said.lines() {
        let Some((_, row)) = line.split_once(']') else { continue };
        let cells: Vec<&str> = row.split_whitespace().collect();
        if let [name, _, _, _, size, _, flags, ..] = cells.as_slice()
            && flags.contains('W')
            && size.contains(|digit| digit != '0')
        {
            wrong.push(format!("memory of its own: {name}"));
        }
    }
    wrong
}

/// The library as it is before it becomes one object, with gcc's own subtraction linked in first: the self-test of the arithmetic
/// has to see it.
pub fn wrong_order(board: &Board, archive: &Path) -> Result<String, String> {
    let test = root().join("bindings/c/tests/arithmetic.c");
    let first = ["-Wl,-u,__aeabi_dsub", "-lgcc"].map(str::to_owned);
    let image = image::link(board, "wrong_order", "-Os", &[&test, archive], &first)?;
    match emulator::run(board, &image, None, &root(), &[]) {
        Err(said) if said.contains("does not hold: rko_arithmetic_check(NULL) == RKO_OK") => {
            Ok("gcc's subtraction takes the place of ours, and the self-test sees it".to_owned())
        }
        Err(other) => Err(other),
        Ok(_) => Ok("this gcc's subtraction is right".to_owned()),
    }
}

/// The proofs see what they are to see: objects of `wrong.rs`, each with one thing in it that must not be there.
pub fn see(board: &Board, compiler: &Compiler) -> Result<String, String> {
    const CASES: [(&str, &str); 4] = [
        ("panics", "a panic"),
        ("formats", "formatting"),
        ("remembers", "memory of its own"),
        ("allocates", "malloc is used and defined nowhere"),
    ];
    let functions = BTreeSet::from(["rko_wrong".to_owned()]);
    for (case, expected) in std::iter::once(("nothing", "")).chain(CASES) {
        let archive = folder(board)?.join(format!("{case}.a"));
        let mut build =
            command(&compiler.program, &["--crate-type", "staticlib", "--edition", "2024", "-Copt-level=s", "-Clto"]);
        build.args(["--target", board.target, "--cfg", case]);
        if let Some(sysroot) = &compiler.sysroot {
            build.arg("--sysroot").arg(sysroot);
        }
        quietly(build.arg(root().join("crates/xtask/src/firmware/wrong/wrong.rs")).arg("-o").arg(&archive))?;
        let object = one_object(board, &archive, &functions, &format!("{case}.o"))?;
        let wrong = faults(board, &object, &functions)?;
        let held = if expected.is_empty() {
            wrong.is_empty() && everything_links(board, &object, &functions).is_ok()
        } else {
            wrong.iter().any(|fault| fault.contains(expected))
        };
        if !held {
            return Err(format!("an object that {case} was judged: {wrong:?}"));
        }
    }
    Ok(format!("{} wrong objects found out", CASES.len()))
}

#[cfg(test)]
mod tests {
    use super::*;

    const SYMBOLS: &str = "\
   Num:    Value  Size Type    Bind   Vis      Ndx Name
     0: 00000000     0 NOTYPE  LOCAL  DEFAULT  UND 
    12: 00000000    22 FUNC    LOCAL  DEFAULT    7 _RNv7reckohm4read
    71: 00000001    60 FUNC    GLOBAL DEFAULT   12 rko_judge
";

    fn judged(line: &str, functions: &[&str]) -> Vec<String> {
        let symbols = symbols(&format!("{SYMBOLS}{line}\n"));
        let functions = functions.iter().map(|name| (*name).to_owned()).collect();
        [names(&symbols, &functions), contents(&symbols)].concat()
    }

    #[test]
    fn names_are_the_doors_and_nothing_is_undefined() {
        assert_eq!(judged("", &["rko_judge"]), Vec::<String>::new());
        assert_eq!(judged("", &["rko_judge", "rko_n"]), ["rko_n is in the header and not in the object"]);
        let other = "72: 00000001 60 FUNC WEAK DEFAULT 12 __aeabi_dsub";
        assert_eq!(judged(other, &["rko_judge"]), ["__aeabi_dsub is global and no function of the door"]);
        let missing = "72: 00000000 0 NOTYPE GLOBAL DEFAULT UND memcpy";
        assert_eq!(judged(missing, &["rko_judge"]), ["memcpy is used and defined nowhere"]);
        let formats = "72: 00000001 60 FUNC LOCAL DEFAULT 12 _ZN4core3fmt5write17h0E";
        assert_eq!(judged(formats, &["rko_judge"]), ["formatting: _ZN4core3fmt5write17h0E"]);
    }

    #[test]
    fn memory_that_is_written_to_is_found() {
        let sections = "\
  [ 0]                   NULL            00000000 000000 000000 00      0   0  0
  [ 2] .text.rko_judge   PROGBITS        00000000 000034 000010 00  AX  0   0  2
  [ 3] .data             PROGBITS        00000000 000044 000000 00  WA  0   0  1
  [ 4] .bss.count        NOBITS          00000000 000044 000004 00  WA  0   0  4
";
        assert_eq!(memory(sections), ["memory of its own: .bss.count"]);
    }
}
