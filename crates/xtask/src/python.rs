//! The Python door: its own environment, the built module, stubs held to it, and its tests.

use std::path::{Path, PathBuf};
use std::process::Command;

use crate::tools::{self, command, output, root, run};

/// The requirements, pinned; a change of this file is what rebuilds the environment.
const REQUIREMENTS: &str = "bindings/python/requirements-dev.txt";

fn folder() -> PathBuf {
    root().join(".venv")
}

/// A program of the environment, run as if the environment were active.
pub fn inside(program: &str, arguments: &[&str]) -> Command {
    let mut command = command(&folder().join("bin").join(program).display().to_string(), arguments);
    command.env("VIRTUAL_ENV", folder()).env_remove("PYTHONPATH").env_remove("PYTHONHOME");
    if let Some(path) = std::env::var_os("PATH") {
        let mut folders = vec![folder().join("bin")];
        folders.extend(std::env::split_paths(&path));
        if let Ok(joined) = std::env::join_paths(folders) {
            command.env("PATH", joined);
        }
    }
    command
}

/// Makes `.venv` with the pinned requirements, unless it already holds them.
pub fn environment() -> Result<String, String> {
    let wanted = std::fs::read_to_string(root().join(REQUIREMENTS))
        .map_err(|error| format!("could not read {REQUIREMENTS}: {error}"))?;
    let python = std::env::var("PYTHON").unwrap_or_else(|_| "python3".to_owned());
    let version = output(&mut command(&python, &["-c", "import sys; print(sys.version)"]))?;
    let wanted = format!("{version}{wanted}");
    let installed = folder().join("installed.txt");
    if std::fs::read_to_string(&installed).is_ok_and(|held| held == wanted) {
        return Ok("kept: requirements have not changed".to_owned());
    }
    run(&mut command(&python, &["-m", "venv", "--clear", ".venv"]))?;
    install(&["-r", REQUIREMENTS])?;
    std::fs::write(&installed, wanted).map_err(|error| format!("could not write {}: {error}", installed.display()))?;
    Ok("made".to_owned())
}

/// Puts packages into the environment.
pub fn install(what: &[&str]) -> Result<(), String> {
    run(inside("python", &["-m", "pip", "install", "--quiet", "--disable-pip-version-check"]).args(what))
}

/// Builds the wheel for release into an emptied folder, and says where it is.
pub fn wheel(folder: &Path) -> Result<PathBuf, String> {
    let wrong = |error: std::io::Error| format!("{}: {error}", folder.display());
    if folder.exists() {
        std::fs::remove_dir_all(folder).map_err(wrong)?;
    }
    let mut build = inside("maturin", &["build", "--release", "--quiet", "--out"]);
    run(build.arg(folder).current_dir(root().join("bindings/python")))?;
    let mut built = std::fs::read_dir(folder).map_err(wrong)?.filter_map(|entry| entry.ok().map(|entry| entry.path()));
    built.next().ok_or_else(|| format!("{}: no wheel was built", folder.display()))
}

/// Builds the module into the environment.
pub fn build() -> Result<(), String> {
    run(inside("maturin", &["develop"]).current_dir(root().join("bindings/python")))
}

/// Holds the stubs to the module.
pub fn stubs() -> Result<(), String> {
    run(inside("python", &["-m", "mypy.stubtest", "reckohm"]).current_dir(root().join("bindings/python")))
}

/// The tests of the door, and the README's Python block.
pub fn tests() -> Result<(), String> {
    let asked = ["-m", "pytest", "--doctest-glob=README.md", "tests", "../../README.md"];
    run(inside("python", &asked).current_dir(root().join("bindings/python")))
}

/// Runs a notebook from top to bottom on this tray; it writes the tray with every digit to the file.
pub fn notebook(notebook: &Path, tray: &Path, written: &Path) -> Result<(), String> {
    let notebook = root().join(notebook);
    let folder = notebook.parent().unwrap_or(&notebook);
    let mut command = inside("jupyter-execute", &[&notebook.display().to_string()]);
    run(command.current_dir(folder).env("RECKOHM_TRAY", tray).env("RECKOHM_TRAY_CSV", written).env("MPLBACKEND", "agg"))
}

/// Whether Python can make an environment here.
pub fn missing() -> Option<&'static str> {
    let python = std::env::var("PYTHON").unwrap_or_else(|_| "python3".to_owned());
    if !tools::present(&python) {
        return Some("python3");
    }
    let venv = output(&mut command(&python, &["-c", "import venv, ensurepip"]));
    if venv.is_err() { Some("python3-venv") } else { None }
}
