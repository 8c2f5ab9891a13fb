//! `cargo xtask fuzz [--runs N] [TARGET …]`: libFuzzer on the targets of `tests/fuzz`, from their committed seeds.

use std::fs;

use crate::tools::{cargo, present, root, run, target};

/// The target that goes through the C door, which has unsafe code: an address sanitizer watches it. The core has none, and
/// without the sanitizer its targets make twice as many runs.
const WITH_UNSAFE_CODE: &str = "c_bytes";
/// Longer than whatever a target reads; without it libFuzzer spends most of its time on texts of thousands of bytes.
const LONGEST: &str = "-max_len=512";
/// So many runs of a target where none are asked for.
const RUNS: &str = "1000000";

/// Runs the targets named, or all of them, one after another; stops at the first input that one fails on.
pub fn command(words: &[&str]) -> Result<(), String> {
    let (runs, named) = match words {
        ["--runs", runs, named @ ..] => (*runs, named),
        named => (RUNS, named),
    };
    runs.parse::<u64>().map_err(|_| format!("--runs takes a whole number, {runs} given"))?;
    if !present("cargo-fuzz") {
        return Err("not run: cargo-fuzz missing; `cargo install cargo-fuzz --locked` brings it".into());
    }
    let known = targets()?;
    if let Some(unknown) = named.iter().find(|name| !known.iter().any(|known| known == *name)) {
        return Err(format!("no target of this name: {unknown}; there are: {}", known.join(", ")));
    }
    let all: Vec<&str> = known.iter().map(String::as_str).collect();
    for name in if named.is_empty() { &all } else { named } {
        let seeds = target().join("fuzz-corpus").join(name);
        let folder = seeds.display().to_string();
        run(&mut cargo(&["run", "--quiet", "--package", "reckohm-fuzz", "--bin", "seeds", "--", name, &folder]))?;
        let runs = format!("-runs={runs}");
        let sanitizer = if *name == WITH_UNSAFE_CODE { "address" } else { "none" };
        let mut fuzz = cargo(&[
            "fuzz",
            "run",
            "--fuzz-dir",
            "tests/fuzz/libfuzzer",
            "--sanitizer",
            sanitizer,
            name,
            &folder,
            "--",
            &runs,
            LONGEST,
            "-print_final_stats=1",
        ]);
        // Sanitizers are unstable options of the compiler; they are allowed for this step alone.
        run(fuzz.env("RUSTC_BOOTSTRAP", "1"))?;
    }
    Ok(())
}

/// The names of the targets, as their programs for libFuzzer have them.
fn targets() -> Result<Vec<String>, String> {
    let folder = root().join("tests/fuzz/libfuzzer/fuzz_targets");
    let files = fs::read_dir(&folder).map_err(|error| format!("{}: {error}", folder.display()))?;
    let mut names: Vec<String> =
        files.flatten().filter_map(|file| Some(file.path().file_stem()?.to_str()?.to_owned())).collect();
    names.sort();
    Ok(names)
}
