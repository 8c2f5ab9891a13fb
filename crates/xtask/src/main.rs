//! The project's own commands: `cargo xtask <command>`. `cargo xtask` alone lists them.

mod assembly;
mod bench;
mod c_door;
mod c_package;
mod coverage;
mod demo;
mod firmware;
mod fuzz;
mod mutants;
mod order;
mod python;
mod readme;
mod report;
mod same_numbers;
mod test;
mod tools;

use std::process::ExitCode;

const USAGE: &str = "\
cargo xtask <command>

  test [--require-all]   build and test every door; --require-all (or CI=true) fails where a tool is missing
  demo [--part NAME]     judge the examples' tray: a table, one part's budget in full, a count
  bench [GROUP …]        measure beside NumPy, SciPy, C and pure Python; groups: arrays c python growth import memory
  bench --assembly       list the loops over arrays in the C library's machine code, with their vector instructions and calls
  same-numbers           judge the examples' tray through every door and compare every digit and message
  install --prefix DIR   build the C door for release and lay it out there, with CMake and pkg-config packages
  order                  check that each folder of the core uses only those before it
  doors [--list]         compare every public function of the core with what each door has, or list the functions
  header [--check]       make the C header from the C door's source, or compare the committed one with a fresh one
  firmware [--quick] [--write]    the C door for three processors without an operating system: build, prove, run on emulated
                         boards, measure; --quick leaves most of the costly vectors out, --write keeps the figures
  fuzz [--runs N] [TARGET …]      libFuzzer on the targets of tests/fuzz, from their seeds (needs cargo-fuzz)
  mutants [PLACE] [--shard K/N]   break the core, or a folder or file of it, in small ways: do its tests notice?
  coverage [--uncovered]          which lines and branches the Rust tests reach (needs cargo-llvm-cov)
  stubs --check          hold the Python stubs to the module (mypy's stubtest)
";

/// Starts the other program, which is built only when asked for.
fn generate(words: &[&str]) -> Result<(), String> {
    let fixed = ["run", "--quiet", "--package", "xtask", "--features", "generate", "--bin", "xtask-generate", "--"];
    tools::run(tools::cargo(&fixed).args(words))
}

fn main() -> ExitCode {
    let words: Vec<String> = std::env::args().skip(1).collect();
    let words: Vec<&str> = words.iter().map(String::as_str).collect();
    let outcome = match words.as_slice() {
        ["test"] => test::run_all(std::env::var("CI").is_ok_and(|value| value == "true")),
        ["test", "--require-all"] => test::run_all(true),
        ["bench", "--assembly"] => assembly::show(),
        ["bench", words @ ..] => bench::run_all(words),
        ["demo", words @ ..] => demo::run_all(words),
        ["same-numbers"] => python::environment().and_then(|_| python::build()).and_then(|()| same_numbers::command()),
        ["install", "--prefix", folder] => std::path::absolute(folder)
            .map_err(|error| format!("no folder: {folder}: {error}"))
            .and_then(|prefix| c_package::install(&prefix)),
        ["order"] => order::check().map(|said| println!("{said}")),
        ["doors"] | ["doors", "--list"] | ["header"] | ["header", "--check"] => generate(&words),
        ["firmware", words @ ..] => firmware::command(words),
        ["fuzz", words @ ..] => fuzz::command(words),
        ["coverage", words @ ..] => coverage::command_line(words),
        ["mutants", words @ ..] => mutants::run(words),
        ["stubs", "--check"] => python::environment().and_then(|_| python::stubs()),
        [] | ["help" | "--help" | "-h"] => {
            print!("{USAGE}");
            Ok(())
        }
        _ => Err(format!("unknown command: {}\n\n{USAGE}", words.join(" "))),
    };
    match outcome {
        Ok(()) => ExitCode::SUCCESS,
        Err(message) => {
            eprintln!("{message}");
            ExitCode::FAILURE
        }
    }
}
