//! Writes a target's seeds as files, which is how libFuzzer reads them: `seeds TARGET FOLDER`.

use std::process::ExitCode;
use std::{env, fs};

use reckohm_fuzz::{TARGETS, corpus};

fn main() -> ExitCode {
    let words: Vec<String> = env::args().skip(1).collect();
    let [target, folder] = words.as_slice() else {
        eprintln!("two words needed: seeds TARGET FOLDER");
        return ExitCode::FAILURE;
    };
    if !TARGETS.iter().any(|known| known.name == target) {
        eprintln!("no target of this name: {target}");
        return ExitCode::FAILURE;
    }
    let written = fs::create_dir_all(folder).and_then(|()| {
        corpus::read(target)
            .iter()
            .enumerate()
            .try_for_each(|(index, seed)| fs::write(format!("{folder}/seed-{index}"), seed))
    });
    match written {
        Ok(()) => ExitCode::SUCCESS,
        Err(error) => {
            eprintln!("{folder}: {error}");
            ExitCode::FAILURE
        }
    }
}
