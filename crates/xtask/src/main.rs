//! The project's own commands: `cargo xtask <command>`. `cargo xtask` alone lists them.

mod order;
mod python;
mod report;
mod test;
mod tools;

use std::process::ExitCode;

const USAGE: &str = "\
cargo xtask <command>

  test [--require-all]   build and test every door; --require-all (or CI=true) fails where a tool is missing
  order                  check that each folder of the core uses only those before it
  stubs --check          hold the Python stubs to the module (mypy's stubtest)
";

fn main() -> ExitCode {
    let words: Vec<String> = std::env::args().skip(1).collect();
    let words: Vec<&str> = words.iter().map(String::as_str).collect();
    let outcome = match words.as_slice() {
        ["test"] => test::run_all(std::env::var("CI").is_ok_and(|value| value == "true")),
        ["test", "--require-all"] => test::run_all(true),
        ["order"] => order::check().map(|said| println!("{said}")),
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
