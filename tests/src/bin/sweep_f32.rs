//! Tries every argument of the single-precision logarithm and exponential, all 2³² of them, on two threads:
//! `cargo run --release -p reckohm-tests --bin sweep_f32`. It ends with an error if one is off by more than 1 unit in the
//! last place. What it printed stands in the documentation of `reckohm::number::elementary`.

use std::process::ExitCode;
use std::thread;

use reckohm_tests::sweep::{Worst, sweep};

/// Progress is printed this often.
const PARTS: u32 = 16;

fn main() -> ExitCode {
    let mut worst = [Worst::default(); 2];
    for part in 0..PARTS {
        let length = 1 << (32 - PARTS.trailing_zeros());
        let first = part * length;
        let middle = first + length / 2;
        let halves = [first..=middle - 1, middle..=first + (length - 1)];
        let found = halves.map(|half| thread::spawn(move || sweep(half, 1)));
        for thread in found {
            let [logarithm, exponential] = thread.join().expect("a sweep does not panic");
            worst = [worst[0].with(logarithm), worst[1].with(exponential)];
        }
        println!("{} of {PARTS} parts, worst so far ln {:.6}, exp {:.6}", part + 1, worst[0].units, worst[1].units);
    }
    for (name, Worst { units, argument, tried }) in ["ln_f32", "exp_f32"].iter().zip(worst) {
        println!("{name}: {tried} arguments, worst {units:.6} units in the last place at {argument:e}");
    }
    if worst.iter().all(|worst| worst.units <= 1.0) { ExitCode::SUCCESS } else { ExitCode::FAILURE }
}
