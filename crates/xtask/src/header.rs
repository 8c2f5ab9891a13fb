//! `cargo xtask header`: the C header, made by cbindgen from the C door's source as the compiler expands it, so that functions
//! which a macro makes are in it. Status numbers and legal ranges are written from the core's own lists, so that no list
//! stands twice. With `--check` the committed header is compared.

use std::fmt::Write as _;
use std::fs;
use std::path::Path;

use cbindgen::{Builder, Config, DocumentationStyle, EnumConfig, Language, Style};
use reckohm::number::{Kind, RANGES, RangeRow};

use crate::expansion::{expanded, folder};

/// Where the committed header lies, below the repository's root.
pub const HEADER: &str = "bindings/c/include/reckohm.h";

const HEAD: &str = r#"/*
 * reckohm.h: resistive parts measured, stated with an honest uncertainty, and judged.
 *
 * Made by `cargo xtask header` from bindings/c/src: do not edit. This header is the manual of the C door.
 *
 * Rules that hold for every function
 *   Answer     A status: RKO_OK (0), or the number of what went wrong (listed below). Outputs come after inputs and are
 *              untouched unless the answer is RKO_OK.
 *   Detail     The last argument may be null. Otherwise every call writes it: all zero after a success, else what was
 *              given, what is allowed and where. rko_detail_text makes a sentence of it (host libraries).
 *   Pointers   Null is answered with RKO_NULL_POINTER unless the item says that it may be null; the array arguments of
 *              a call with a count of 0 may be null. What is not null must be aligned and point to as many elements as
 *              the call says. Outputs must not overlap inputs or each other.
 *   Codes      Choices are whole numbers of fixed width with named constants; any other number is RKO_UNKNOWN_CODE.
 *   Flags      A member or argument called `has_...` or a flag is 0 or a sum of the listed bits.
 *   Texts in   Bytes and their number, no closing zero needed. A text error's detail has the byte as its `index`.
 *   Texts out  UTF-8 with a closing zero, or nothing at all and RKO_BUFFER_TOO_SMALL.
 *   Arrays     Functions ending in _n do what the one without it does, element by element. With `valid` null the first
 *              bad element is the answer, the detail has its index and how many failed, and nothing is written. With
 *              `valid` an array of one byte an element the answer is RKO_OK, each byte says 1 for good or 0 for bad, bad
 *              elements of the outputs are untouched, and the detail tells the first bad one and how many failed.
 *   Structs    Plain and owned by the caller; none ever grows. Members called `reserved` must be 0.
 *   Numbers    No NaN is accepted and none is given. Resistances are in ohm, temperatures in degrees Celsius, differences
 *              in kelvin, tolerances and probabilities fractions (0.05 for 5 %). Results have the same bits on every
 *              processor and through every door; keep it so in your own code with -ffp-contract=off, round to nearest
 *              and no flush to zero.
 *   Float      Structs and functions whose name ends in _f32 are the twins in float of those without it, with the same
 *              members, arguments, ranges and statuses. They compute in float alone: of double there is nothing but the
 *              members of a detail. Each number is rounded once, to float, where the twin rounds it to double.
 *   Threads    Every function may be called from any thread at any time. There is no locale, and no state but the limit of
 *              rko_limit_threads. A host library splits calls on large arrays over the cores and takes some heap for
 *              that; nothing else does. Arrays may be split as you like: the results are the same.
 *
 * Caution: measure only parts that are disconnected and discharged. Hot filaments burn, and no meter goes across a person
 * or an energised circuit. Follow local codes, and leave mains work to licensed people.
 *
 * Licence: MIT OR Apache-2.0.
 */"#;

/// Writes the header, or with `check` compares the committed one with a fresh one.
///
/// # Errors
/// A text for a person: what could not be read, or that the header is out of date and how to make it anew.
pub fn run(root: &Path, check: bool) -> Result<(), String> {
    let fresh = fresh(root)?;
    let path = root.join(HEADER);
    if !check {
        return fs::write(&path, fresh).map_err(|error| format!("{}: {error}", path.display()));
    }
    let committed = fs::read_to_string(&path).map_err(|error| format!("{}: {error}", path.display()))?;
    if committed == fresh {
        return Ok(());
    }
    let place = committed
        .lines()
        .zip(fresh.lines())
        .position(|(old, new)| old != new)
        .map_or_else(|| "at its end".to_owned(), |line| format!("in line {}", line + 1));
    Err(format!("{HEADER} differs from a fresh one {place}; make it anew: cargo xtask header"))
}

/// The header's text.
fn fresh(root: &Path) -> Result<String, String> {
    let config = Config {
        language: Language::C,
        style: Style::Tag,
        cpp_compat: true,
        documentation_style: DocumentationStyle::C,
        no_includes: true,
        sys_includes: vec!["stddef.h".into(), "stdint.h".into()],
        include_guard: Some("RECKOHM_H".into()),
        header: Some(HEAD.into()),
        after_includes: Some(lists()),
        line_length: 120,
        usize_is_size_t: true,
        enumeration: EnumConfig { prefix_with_name: false, ..EnumConfig::default() },
        ..Config::default()
    };
    let source = folder(root).join("reckohm_c.rs");
    fs::write(&source, expanded(root, "reckohm-c", "reckohm_c")?)
        .map_err(|error| format!("{}: {error}", source.display()))?;
    let mut text = Vec::new();
    Builder::new()
        .with_config(config)
        .with_src(&source)
        .generate()
        .map_err(|error| format!("cbindgen: {error}"))?
        .write(&mut text);
    String::from_utf8(text).map_err(|error| error.to_string())
}

/// The statuses and the ranges, from the core's lists.
fn lists() -> String {
    let mut text = String::from("\n/* Statuses, the same numbers at every door. */\n");
    for kind in Kind::ALL {
        let name = format!("RKO_{}", constant_case(kind.name()));
        // Writing to a String cannot fail.
        let _ = write!(text, "\n/** {} */\n#define {name} {}\n", kind.meaning(), kind.number());
    }
    text.push_str("\n/*\n * Ranges: the `row` of a detail, what it is of, what is allowed, and the source.\n *\n");
    for row in RANGES {
        let words = row.words();
        let _ = writeln!(text, " * {:>4}  {}: {} ({})", row.number, words.name, allowed(row, words.unit), words.source);
    }
    text.push_str(" */\n");
    text
}

/// What a range allows, in the usual notation: a round bracket leaves the end out.
fn allowed(row: &RangeRow, unit: &str) -> String {
    let unit = if unit.is_empty() { String::new() } else { format!(" {unit}") };
    if row.lower <= f64::MIN && row.upper >= f64::MAX && row.upper.is_finite() {
        return format!("any finite number{unit}");
    }
    let open = if row.lower_open { '(' } else { '[' };
    let close = if row.upper_open { ')' } else { ']' };
    format!("{open}{}, {}{close}{unit}", plain(row.lower), plain(row.upper))
}

/// A number as a person would write it.
fn plain(number: f64) -> String {
    match number.abs() {
        size if size != 0.0 && !(1e-4..1e7).contains(&size) && size.is_finite() => format!("{number:e}"),
        _ => number.to_string(),
    }
}

/// `OutOfRange` as `OUT_OF_RANGE`.
fn constant_case(name: &str) -> String {
    let mut constant = String::new();
    for (place, letter) in name.chars().enumerate() {
        if place > 0 && letter.is_uppercase() {
            constant.push('_');
        }
        constant.extend(letter.to_uppercase());
    }
    constant
}
