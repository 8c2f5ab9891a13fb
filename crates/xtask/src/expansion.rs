//! A crate's source as the compiler sees it once every macro has made its functions.

use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};

/// Where cargo puts what is built for this.
pub fn folder(root: &Path) -> PathBuf {
    std::env::var_os("CARGO_TARGET_DIR").map_or_else(|| root.join("target"), |folder| root.join(folder)).join("doors")
}

/// The compiler's own expansion of a package's library. Printing it is an unstable option, allowed for this one crate in
/// this one step; it has a folder of its own, so that the ordinary build is not rebuilt for the changed environment.
pub fn expanded(root: &Path, package: &str, library: &str) -> Result<String, String> {
    let cargo = std::env::var("CARGO").unwrap_or_else(|_| "cargo".to_owned());
    let output = Command::new(cargo)
        .args(["rustc", "--quiet", "--package", package, "--lib", "--profile", "check", "--target-dir"])
        .arg(folder(root))
        .args(["--", "-Zunpretty=expanded"])
        .env("RUSTC_BOOTSTRAP", library)
        .current_dir(root)
        .stderr(Stdio::inherit())
        .output()
        .map_err(|error| format!("could not start cargo: {error}"))?;
    if !output.status.success() {
        return Err(format!("{package} does not compile: {}", output.status));
    }
    String::from_utf8(output.stdout).map_err(|_| format!("the expansion of {package} is not UTF-8"))
}
