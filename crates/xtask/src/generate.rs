//! What needs a parser of Rust: the C header and the list of doors. Started by `cargo xtask`, never by hand.

mod doors;
mod expansion;
mod header;

use std::path::Path;
use std::process::ExitCode;

fn main() -> ExitCode {
    let package = Path::new(env!("CARGO_MANIFEST_DIR"));
    let root = package.ancestors().nth(2).unwrap_or(package);
    let words: Vec<String> = std::env::args().skip(1).collect();
    let words: Vec<&str> = words.iter().map(String::as_str).collect();
    let shown = |text: Result<String, String>| text.map(|text| println!("{}", text.trim_end()));
    let outcome = match words.as_slice() {
        ["doors"] => shown(doors::check(root)),
        ["doors", "--list"] => shown(doors::list(root)),
        ["header"] => header::run(root, false),
        ["header", "--check"] => header::run(root, true),
        _ => Err(format!("unknown command: {}", words.join(" "))),
    };
    match outcome {
        Ok(()) => ExitCode::SUCCESS,
        Err(message) => {
            eprintln!("{message}");
            ExitCode::FAILURE
        }
    }
}
