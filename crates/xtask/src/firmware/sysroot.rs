//! The compiler for bare metal with its `core`: rustup's where its target is installed, else Debian's `rustc-web` with a `core`
//! built once from `rust-web-src`.

use std::fs;
use std::path::{Path, PathBuf};

use super::board::Board;
use crate::tools::{cargo, command, output, run, target};

/// Debian's compiler by its full path: rustup's own come first on PATH.
const DEBIAN: &str = "/usr/bin/rustc";
const DEBIAN_SOURCE: &str = "/usr/lib/rustlib/src/rust";

/// A compiler, and where its `core` lies when that is not with it.
pub struct Compiler {
    /// The program.
    pub program: String,
    /// The folder with `lib/rustlib` in it.
    pub sysroot: Option<PathBuf>,
    /// What it says of itself.
    pub version: String,
}

/// The compiler for a board; `Ok(None)` where there is none.
pub fn compiler(board: &Board) -> Result<Option<Compiler>, String> {
    let usual = std::env::var("RUSTC").unwrap_or_else(|_| "rustc".to_owned());
    let libraries = output(&mut command(&usual, &["--print", "target-libdir", "--target", board.target]))?;
    if holds_core(Path::new(libraries.trim())) {
        return Ok(Some(Compiler { version: version(&usual)?, program: usual, sysroot: None }));
    }
    if !Path::new(DEBIAN).exists() || !Path::new(DEBIAN_SOURCE).exists() {
        return Ok(None);
    }
    let version = version(DEBIAN)?;
    same_version(&version)?;
    let sysroot = built(board, &version)?;
    Ok(Some(Compiler { program: DEBIAN.to_owned(), sysroot: Some(sysroot), version }))
}

fn version(program: &str) -> Result<String, String> {
    output(&mut command(program, &["--version"])).map(|said| said.trim().to_owned())
}

/// The source must be the compiler's own: another's `core` does not build, or worse.
fn same_version(compiler: &str) -> Result<(), String> {
    let source = fs::canonicalize(DEBIAN_SOURCE).map_err(|error| format!("{DEBIAN_SOURCE}: {error}"))?;
    let name = source.file_name().unwrap_or_default().to_string_lossy().into_owned();
    // The folder is called rustc-1.96.0, and the compiler says "rustc 1.96.0 (...)".
    if name == compiler.split(' ').take(2).collect::<Vec<_>>().join("-") {
        return Ok(());
    }
    Err(format!("{DEBIAN} is \"{compiler}\", and rust-web-src is {name}: install both in the same version"))
}

fn holds_core(folder: &Path) -> bool {
    fs::read_dir(folder).is_ok_and(|entries| {
        entries.filter_map(Result::ok).any(|entry| {
            let name = entry.file_name().to_string_lossy().into_owned();
            name.starts_with("libcore-") && name.ends_with(".rlib")
        })
    })
}

/// Builds `core` and what the compiler calls for it, unless this version's are there already.
fn built(board: &Board, version: &str) -> Result<PathBuf, String> {
    let wrong = |place: &Path, error: std::io::Error| format!("{}: {error}", place.display());
    let number = version.split(' ').nth(1).unwrap_or("unknown");
    let sysroot = target().join("firmware").join(format!("core-{number}"));
    let libraries = sysroot.join("lib/rustlib").join(board.target).join("lib");
    if holds_core(&libraries) {
        return Ok(sysroot);
    }
    let package = target().join("firmware/core-source");
    let source = package.join("src");
    fs::create_dir_all(&source).map_err(|error| wrong(&source, error))?;
    let manifest = "[package]\nname = \"nothing\"\nedition = \"2024\"\n[lib]\n[workspace]\n";
    fs::write(package.join("Cargo.toml"), manifest).map_err(|error| wrong(&package, error))?;
    fs::write(source.join("lib.rs"), "#![no_std]\n").map_err(|error| wrong(&source, error))?;

    let building = target().join("firmware/core-build");
    let mut build = cargo(&["build", "--quiet", "--release", "-Zbuild-std=core"]);
    build.args(["-Zbuild-std-features=compiler-builtins-mem", "--target", board.target, "--target-dir"]);
    build.arg(&building).current_dir(&package);
    // Building `core` is an unstable option of cargo; so is saying how much stack each function takes. With its bitcode in it
    // `core` is optimised together with what uses it.
    build.env("RUSTC", DEBIAN).env("RUSTC_BOOTSTRAP", "1");
    build.env("CARGO_ENCODED_RUSTFLAGS", "-Zemit-stack-sizes\u{1f}-Cembed-bitcode=yes");
    run(&mut build)?;

    fs::create_dir_all(&libraries).map_err(|error| wrong(&libraries, error))?;
    let made = building.join(board.target).join("release/deps");
    let mut made: Vec<PathBuf> = fs::read_dir(&made)
        .map_err(|error| wrong(&made, error))?
        .filter_map(|entry| Some(entry.ok()?.path()))
        .collect();
    // `core` last: it says that all is there.
    made.sort_by_key(|file| file.file_name().is_some_and(|name| name.to_string_lossy().starts_with("libcore-")));
    for file in made {
        let name = file.file_name().unwrap_or_default().to_string_lossy().into_owned();
        if name.ends_with(".rlib") && (name.starts_with("libcore-") || name.starts_with("libcompiler_builtins-")) {
            let to = libraries.join(&name);
            fs::copy(&file, &to).map_err(|error| wrong(&to, error))?;
        }
    }
    if holds_core(&libraries) { Ok(sysroot) } else { Err(format!("no core in {}", building.display())) }
}
