//! A target on its seeds, and on mutations of them with a fixed seed: what a fuzzer once found stays found.

use std::panic::{AssertUnwindSafe, catch_unwind};

use crate::corpus;
use crate::mutation::Mutation;

/// How many mutations each target is tried on; `RECKOHM_FUZZ_RUNS` asks for another number.
pub const RUNS: usize = 10_000;

/// Panics with the first input that the target panics on.
pub fn replay(name: &str, target: fn(&[u8]), runs: usize) {
    let seeds = corpus::read(name);
    assert!(!seeds.is_empty(), "no seeds for {name}");
    let runs = std::env::var("RECKOHM_FUZZ_RUNS").map_or(runs, |runs| runs.parse().expect("a number of runs"));
    let mut mutation = Mutation::new(name.len() as u64);
    let made: Vec<Vec<u8>> = (0..runs).map(|_| mutation.of(&seeds)).collect();
    for input in seeds.iter().chain(&made) {
        if catch_unwind(AssertUnwindSafe(|| target(input))).is_err() {
            panic!(
                "{name} fails on this input, as a line of its seeds:\n{}",
                corpus::lines(std::slice::from_ref(input))
            );
        }
    }
}
