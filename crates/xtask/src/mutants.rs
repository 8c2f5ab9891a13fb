//! Breaks the core in small ways, one at a time, and asks its tests whether they notice (cargo-mutants).
//!
//! A mutant costs a build and a run of the tests, so each place of the core names the tests that know it, and tests that
//! try very many random cases try few of them.

use std::path::Path;

use crate::tools;

/// The places of the core in the order of the job, each with the test programs that are asked about its mutants. Every
/// folder stands here; a file has a line of its own where fewer programs, or others, know it.
const PLACES: &[(&str, &[&str])] = &[
    ("number", &["number_dual", "number_elementary", "plain_numbers", "single_vectors"]),
    ("number/arrays.rs", &["number_distribution", "number_distribution_f32", "part_preferred", "sensor_behaviour"]),
    ("number/batch.rs", &["batch_widths", "number_distribution_f32", "verdict_columns"]),
    ("number/bignum.rs", &[IN_FILE, "decimal_rounding"]),
    ("number/decimal.rs", &["decimal_arithmetic", "decimal_rounding", "plain_numbers"]),
    ("number/parse.rs", &["decimal_messages", "decimal_rounding", "plain_numbers"]),
    ("number/distribution", &["failure_numbers", "number_distribution", "number_distribution_f32", "number_special"]),
    ("number/nearest.rs", &["decimal_arithmetic", "decimal_rounding", "meter_spans"]),
    ("number/normal.rs", TAILS),
    ("number/quadrature.rs", &["estimate_vectors", "uncertainty_coverage"]),
    (
        "number/range.rs",
        &["decimal_messages", "failure_numbers", "number_distribution", "part_messages", "plain_numbers"],
    ),
    ("number/readable.rs", &["meter_messages", "part_messages"]),
    ("number/special.rs", &[IN_FILE, "number_special"]),
    ("number/student_t.rs", TAILS),
    ("number/pair.rs", &[IN_FILE, "fit_certified_linear", "fit_oracle"]),
    ("fit", &["failure_numbers", "fit_behaviour", "fit_certified_curves", "fit_certified_linear", "fit_oracle"]),
    (
        "uncertainty",
        &[
            IN_FILE,
            "estimate_parts",
            "estimate_vectors",
            "failure_numbers",
            "measurement_behaviour",
            "single_vectors",
            "uncertainty_coverage",
            "verdict_answer",
            "verdict_published",
        ],
    ),
    (
        "part",
        &[
            "part_checks",
            "part_limits",
            "part_messages",
            "part_vectors",
            "plain_numbers",
            "single_vectors",
            "verdict_answer",
            "verdict_columns",
            "verdict_published",
            "verdict_shown",
        ],
    ),
    (
        "part/marking",
        &["part_checks", "part_messages", "part_round_trips", "part_vectors", "plain_numbers", "words_and_keys"],
    ),
    ("part/preferred", &[IN_FILE, "part_checks", "part_preferred", "part_vectors", "plain_numbers"]),
    (
        "meter",
        &[
            IN_FILE,
            "failure_numbers",
            "meter_choice",
            "meter_display",
            "meter_estimate",
            "meter_leads",
            "meter_messages",
            "meter_prepared",
            "meter_replies",
            "meter_single_vectors",
            "meter_spans",
            "meter_vectors",
            "words_and_keys",
        ],
    ),
    ("meter/auto_ranger.rs", &["meter_auto_ranger", "meter_messages", "meter_vectors"]),
    ("meter/step.rs", &["meter_auto_ranger", "meter_vectors"]),
    ("measurement", &["estimate_vectors", "measurement_behaviour", "measurement_budget", "measurement_published"]),
    (
        "verdict",
        &[
            "estimate_vectors",
            "failure_numbers",
            "plain_numbers",
            "single_vectors",
            "verdict_answer",
            "verdict_columns",
            "verdict_published",
            "verdict_shown",
            "words_and_keys",
        ],
    ),
    (
        "sensor",
        &[
            "failure_numbers",
            "sensor_behaviour",
            "sensor_coefficients",
            "sensor_fit",
            "sensor_published",
            "sensor_vectors",
            "words_and_keys",
        ],
    ),
];
/// The tests within the core's own files.
const IN_FILE: &str = "in-file";
/// What is built on the distributions knows more of them than their own tests.
const TAILS: &[&str] = &[
    "estimate_vectors",
    "number_distribution",
    "number_distribution_f32",
    "number_special",
    "single_vectors",
    "uncertainty_coverage",
];

/// Tests that are left out: cargo-mutants does not look into macros, and this one tries nothing else.
const LEFT_OUT: [&str; 1] = ["single_precision_is_within_its_bound_on_a_stride_of_all_arguments"];

/// Tries the mutants of one folder or file, or those of the whole core place by place; with a shard, a sample of them.
pub fn run(words: &[&str]) -> Result<(), String> {
    let (asked, shard) = match words {
        [] => (None, None),
        ["--shard", shard] => (None, Some(*shard)),
        [place] => (Some(*place), None),
        [place, "--shard", shard] => (Some(*place), Some(*shard)),
        _ => return Err(format!("unknown arguments: {}; cargo xtask mutants [PLACE] [--shard K/N]", words.join(" "))),
    };
    if !tools::present("cargo-mutants") {
        return Err("cargo-mutants is not here; cargo install --locked cargo-mutants".to_owned());
    }
    let places = match asked {
        Some(place) => vec![place],
        None => PLACES.iter().map(|(place, _)| *place).collect(),
    };
    let missed: Vec<String> = places.into_iter().filter_map(|place| of(place, shard).err()).collect();
    if missed.is_empty() { Ok(()) } else { Err(missed.join("\n")) }
}

fn of(place: &str, shard: Option<&str>) -> Result<(), String> {
    let within = |inner: &str, outer: &str| Path::new(inner).starts_with(outer);
    let known = PLACES.iter().filter(|(known, _)| within(place, known)).max_by_key(|(known, _)| known.len());
    let (known, tests) = known.ok_or_else(|| format!("no test is named for {place} in crates/xtask/src/mutants.rs"))?;
    let results = tools::target().join("mutants").join(place.replace('/', "-"));
    std::fs::create_dir_all(&results).map_err(|error| format!("could not make {}: {error}", results.display()))?;
    let mut command = tools::cargo(&["mutants", "--package", "reckohm", "--profile", "mutants", "--timeout", "20"]);
    command.arg("--output").arg(&results).args(["--file", &files(place)]);
    for (inner, _) in PLACES.iter().filter(|(inner, _)| inner != known && within(inner, place)) {
        command.args(["--exclude", &files(inner)]);
    }
    if let Some(shard) = shard {
        command.args(["--shard", shard]);
    }
    // As arguments of cargo, not of its tests, so that nothing else is built either.
    command.arg("--cargo-arg=--package=reckohm-tests");
    command.args(tests.iter().map(|test| match *test {
        IN_FILE => "--cargo-arg=--lib".to_owned(),
        test => format!("--cargo-arg=--test={test}"),
    }));
    command.args(["--", "--"]).args(LEFT_OUT.iter().flat_map(|test| ["--skip", test]));
    // The copies of the tree share what they build of other packages, from run to run.
    command.env("CARGO_TARGET_DIR", tools::target().join("mutants/build")).env("RECKOHM_FEW_CASES", "1");
    tools::run(&mut command)
}

fn files(place: &str) -> String {
    format!("crates/reckohm/src/{place}{}", if place.ends_with(".rs") { "" } else { "/**" })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_folder_of_the_core_and_every_place_and_test_that_is_named_is_there() {
        let source = tools::root().join("crates/reckohm/src");
        for folder in std::fs::read_dir(&source).unwrap().flatten().filter(|entry| entry.path().is_dir()) {
            let name = folder.file_name().into_string().unwrap();
            assert!(PLACES.iter().any(|(place, _)| *place == name), "no tests are named for {name}");
        }
        for (place, tests) in PLACES {
            assert!(source.join(place).exists(), "{place}");
            for test in tests.iter().filter(|test| **test != IN_FILE) {
                assert!(tools::root().join(format!("tests/tests/{test}.rs")).exists(), "{place}: {test}");
            }
        }
    }
}
