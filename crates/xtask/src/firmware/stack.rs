//! The deepest stack below a function: what the compiler says that each function takes, added up along the calls of an image.

use std::collections::{BTreeMap, BTreeSet};
use std::fs;
use std::path::Path;

use super::board::Board;
use crate::tools::{command, output};

/// The deepest stack of the calls below `from`, `from` itself left out (it is the caller's own). `object` is where the compiler
/// said what each function takes. A function without a word of the compiler's, from another library, is an error.
pub fn deepest(board: &Board, image: &Path, object: &Path, from: &str) -> Result<u64, String> {
    let frames = frames(board, object)?;
    let code =
        output(&mut command(&board.tool("objdump"), &["-d", "--no-show-raw-insn", &image.display().to_string()]))?;
    let calls = calls(&code);
    let below = calls.get(from).ok_or(format!("no function {from} in {}", image.display()))?;
    let mut deepest = 0;
    for callee in below.iter().filter(|callee| callee.starts_with("rko_")) {
        deepest = deepest.max(down(callee, &calls, &frames, &mut Vec::new())?);
    }
    Ok(deepest)
}

/// Functions that the compiler's library has in assembly, of which it says nothing, and what they push.
const IN_ASSEMBLY: [(&str, u64); 4] =
    [("__aeabi_uldivmod", 24), ("__aeabi_ldivmod", 24), ("__aeabi_uidivmod", 8), ("__aeabi_idivmod", 16)];

fn down(
    function: &str,
    calls: &BTreeMap<String, BTreeSet<String>>,
    frames: &BTreeMap<String, u64>,
    path: &mut Vec<String>,
) -> Result<u64, String> {
    if path.iter().any(|held| held == function) {
        return Err(format!("{function} calls itself: {path:?}"));
    }
    let in_assembly = IN_ASSEMBLY.iter().find(|(name, _)| *name == function).map(|(_, size)| size);
    let own = frames.get(function).or(in_assembly);
    let own = own.ok_or(format!("the compiler does not say what {function} takes, below {path:?}"))?;
    path.push(function.to_owned());
    let mut deepest = 0;
    for callee in calls.get(function).into_iter().flatten() {
        deepest = deepest.max(down(callee, calls, frames, path)?);
    }
    path.pop();
    Ok(own + deepest)
}

/// Who calls whom: a line `address <name>:` begins a function, and a branch names its target, `<name>` or `<name+0x…>`.
fn calls(code: &str) -> BTreeMap<String, BTreeSet<String>> {
    let mut all: BTreeMap<String, BTreeSet<String>> = BTreeMap::new();
    let mut function = String::new();
    for line in code.lines() {
        let Some((before, after)) = line.split_once('<') else { continue };
        let Some((name, rest)) = after.split_once('>') else { continue };
        if rest == ":" {
            function = name.to_owned();
            all.entry(function.clone()).or_default();
        } else if before.split('\t').nth(1).is_some_and(branches) && name != function && !name.contains(['+', '-']) {
            all.entry(function.clone()).or_default().insert(name.to_owned());
        }
    }
    all
}

/// Branches, calls and jumps of both machines; what else names a place only computes with it.
fn branches(instruction: &str) -> bool {
    instruction.starts_with(['b', 'j']) || instruction.starts_with("cb")
}

/// What each function of an object takes. The section of stack sizes holds an address and a number in groups of seven bits for
/// each; a relocation says which symbol the address is of, the symbol in which section it lies, and that has the function in it.
fn frames(board: &Board, object: &Path) -> Result<BTreeMap<String, u64>, String> {
    let readelf = |what: &str| output(&mut command(&board.tool("readelf"), &[what, &object.display().to_string()]));
    let bytes = fs::read(object).map_err(|error| format!("{}: {error}", object.display()))?;
    let mut sizes: &[u8] = &[];
    let mut sections = BTreeMap::new();
    for line in readelf("-SW")?.lines() {
        // [number] name type address offset size …
        let Some((number, row)) = line.split_once('[').and_then(|(_, rest)| rest.split_once(']')) else { continue };
        let cells: Vec<&str> = row.split_whitespace().collect();
        let [name, _, _, offset, size, ..] = cells.as_slice() else { continue };
        sections.insert(number.trim().to_owned(), (*name).to_owned());
        if *name == ".stack_sizes" {
            let number = |digits| usize::from_str_radix(digits, 16).unwrap_or(usize::MAX);
            sizes = bytes.get(number(offset)..).and_then(|rest| rest.get(..number(size))).unwrap_or_default();
        }
    }
    let mut symbols = BTreeMap::new();
    let mut functions: BTreeMap<String, Vec<String>> = BTreeMap::new();
    for line in readelf("-sW")?.lines() {
        // number: value size type binding visibility section name
        let cells: Vec<&str> = line.split_whitespace().collect();
        if let [number, _, _, kind, _, _, section, name, ..] = cells.as_slice()
            && let Ok(number) = number.trim_end_matches(':').parse::<usize>()
        {
            symbols.insert(number, (*section).to_owned());
            if *kind == "FUNC" {
                functions.entry((*section).to_owned()).or_default().push((*name).to_owned());
            }
        }
    }
    let mut frames = BTreeMap::new();
    let relocations = readelf("-rW")?;
    let of_sizes = relocations.lines().skip_while(|line| !line.contains(".stack_sizes'"));
    for line in of_sizes.skip(2).take_while(|line| !line.is_empty()) {
        // offset, symbol and type, …
        let mut cells = line.split_whitespace().map(|cell| usize::from_str_radix(cell, 16));
        let (Some(Ok(offset)), Some(Ok(about))) = (cells.next(), cells.next()) else { continue };
        let Some(section) = symbols.get(&(about >> 8)) else { continue };
        let size = number_at(sizes, offset + 4);
        if let Some(name) = sections.get(section).and_then(|name| name.strip_prefix(".text.")) {
            frames.insert(name.trim_start_matches("unlikely.").to_owned(), size);
        }
        // A function may have several names.
        frames.extend(functions.get(section).into_iter().flatten().map(|name| (name.clone(), size)));
    }
    if frames.is_empty() { Err(format!("no stack sizes in {}", object.display())) } else { Ok(frames) }
}

/// A number in groups of seven bits, the lowest first, each but the last with its eighth bit set.
fn number_at(bytes: &[u8], place: usize) -> u64 {
    let from = bytes.get(place..).unwrap_or_default();
    let length = from.iter().position(|byte| byte & 0x80 == 0).map_or(from.len(), |last| last + 1);
    from[..length].iter().rev().fold(0, |so_far, byte| so_far << 7 | u64::from(byte & 0x7f))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn numbers_are_read_in_groups_of_seven_bits() {
        assert_eq!((number_at(&[9, 8, 0xe5, 0x8e, 0x26, 1], 2), number_at(&[7], 0)), (624_485, 7));
    }

    #[test]
    fn calls_are_read_from_branches_and_not_from_constants() {
        let code = "00000010 <rko_a>:\n  10:\tpush\t{r4, lr}\n  12:\tbl\t40 <b>\n  14:\tbeq.n\t18 <rko_a+0x8>\n\
                    00000040 <b>:\n  40:\tb.w\t60 <c>\n  44:\t.word\t0x00000070 <d>\n  48:\tlui\ta0,0x5 <c-0x20>\n00000060 <c>:\n  60:\tbx\tlr\n";
        let calls = calls(code);
        assert_eq!(calls["rko_a"].iter().collect::<Vec<_>>(), ["b"]);
        assert_eq!(calls["b"].iter().collect::<Vec<_>>(), ["c"]);
        assert!(calls["c"].is_empty());
        let frames = BTreeMap::from([("rko_a".to_owned(), 16), ("b".to_owned(), 24), ("c".to_owned(), 0)]);
        assert_eq!(down("rko_a", &calls, &frames, &mut Vec::new()), Ok(40));
    }
}
