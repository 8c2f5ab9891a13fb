//! Other programs: where they are, whether they are there, and what they answered.

use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};

/// The repository's root: this package lies two folders below it.
pub fn root() -> PathBuf {
    let package = Path::new(env!("CARGO_MANIFEST_DIR"));
    package.ancestors().nth(2).unwrap_or(package).to_path_buf()
}

/// Where cargo puts what it builds.
pub fn target() -> PathBuf {
    std::env::var_os("CARGO_TARGET_DIR").map_or_else(|| root().join("target"), |folder| root().join(folder))
}

/// A command that starts in the repository's root.
pub fn command(program: &str, arguments: &[&str]) -> Command {
    let mut command = Command::new(program);
    command.args(arguments).current_dir(root());
    command
}

/// The cargo that runs us, so that the same toolchain builds everything.
pub fn cargo(arguments: &[&str]) -> Command {
    let cargo = std::env::var("CARGO").unwrap_or_else(|_| "cargo".to_owned());
    command(&cargo, arguments)
}

/// Runs to the end with the output shown; anything but success is an error that names the command.
pub fn run(command: &mut Command) -> Result<(), String> {
    println!("$ {}", shown(command));
    match command.status() {
        Ok(status) if status.success() => Ok(()),
        Ok(status) => Err(format!("{status}: {}", shown(command))),
        Err(error) => Err(format!("could not start: {}: {error}", shown(command))),
    }
}

/// Runs to the end and gives what it printed; what it said on stderr is shown.
pub fn output(command: &mut Command) -> Result<String, String> {
    match command.stderr(Stdio::inherit()).output() {
        Ok(output) if output.status.success() => {
            String::from_utf8(output.stdout).map_err(|_| format!("printed other than UTF-8: {}", shown(command)))
        }
        Ok(output) => {
            Err(format!("{}: {}\n{}", output.status, shown(command), String::from_utf8_lossy(&output.stdout)))
        }
        Err(error) => Err(format!("could not start: {}: {error}", shown(command))),
    }
}

/// Whether a program can be started at all.
pub fn present(program: &str) -> bool {
    Command::new(program).arg("--version").stdout(Stdio::null()).stderr(Stdio::null()).status().is_ok()
}

fn shown(command: &Command) -> String {
    let mut words = vec![command.get_program().to_string_lossy().into_owned()];
    words.extend(command.get_args().map(|word| word.to_string_lossy().into_owned()));
    words.join(" ")
}
