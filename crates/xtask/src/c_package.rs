//! The C door installed to a prefix, and a separate project that finds it there by CMake and by pkg-config.

use std::fs;
use std::path::{Path, PathBuf};

use crate::report::{Outcome, Report};
use crate::tools::{cargo, command, output, present, root, run, target};

/// Name for the dynamic linker, as the library's build script sets it.
const SONAME: &str = "libreckohm.so.0";
const VERSION: &str = env!("CARGO_PKG_VERSION");
/// What the test project's program prints.
const EXPECTED: &str = "conforms\n";

/// `cargo xtask install --prefix FOLDER`: builds the library for release and lays it out there.
pub fn install(prefix: &Path) -> Result<(), String> {
    run(&mut cargo(&["build", "--quiet", "--release", "--package", "reckohm-c"]))?;
    let built = target().join("release");
    let library = prefix.join("lib");
    let package = library.join("cmake/reckohm");
    for folder in [&prefix.join("include"), &library.join("pkgconfig"), &package] {
        fs::create_dir_all(folder).map_err(|error| format!("could not make {}: {error}", folder.display()))?;
    }
    let shared = format!("libreckohm.so.{VERSION}");
    copy(&root().join("bindings/c/include/reckohm.h"), &prefix.join("include/reckohm.h"))?;
    copy(&built.join("libreckohm_c.a"), &library.join("libreckohm.a"))?;
    copy(&built.join("libreckohm_c.so"), &library.join(&shared))?;
    link(&shared, &library.join(SONAME))?;
    link(SONAME, &library.join("libreckohm.so"))?;
    filled("reckohm.pc", &library.join("pkgconfig/reckohm.pc"))?;
    filled("reckohm-config.cmake", &package.join("reckohm-config.cmake"))?;
    filled("reckohm-config-version.cmake", &package.join("reckohm-config-version.cmake"))?;
    println!("installed to {}", prefix.display());
    Ok(())
}

/// Installs to a new folder and uses it from a separate project, a step a way.
pub fn steps(report: &mut Report) {
    let prefix = target().join("c-package/prefix");
    // What an earlier run left must not stand in for what this one forgot.
    let cleared = || if prefix.exists() { fs::remove_dir_all(&prefix).map_err(|e| e.to_string()) } else { Ok(()) };
    if !report.step("C package", || cleared().and_then(|()| install(&prefix)).map(|()| passed("installed"))) {
        return;
    }
    report.step("C package by CMake", || by_cmake(&prefix));
    report.step("C package by pkg-config", || by_pkg_config(&prefix));
}

fn by_cmake(prefix: &Path) -> Result<Outcome, String> {
    if !present("cmake") {
        return Ok(Outcome::Missing("cmake"));
    }
    let build = target().join("c-package/cmake");
    if build.exists() {
        fs::remove_dir_all(&build).map_err(|error| error.to_string())?;
    }
    let mut configure = command("cmake", &["-S", "bindings/c/tests/package"]);
    configure.arg("-B").arg(&build).arg(format!("-DCMAKE_PREFIX_PATH={}", prefix.display()));
    run(&mut configure)?;
    run(command("cmake", &["--build"]).arg(&build))?;
    judged(&build.join("judge_static"), None)?;
    judged(&build.join("judge_shared"), None)?;
    Ok(passed("shared and static"))
}

fn by_pkg_config(prefix: &Path) -> Result<Outcome, String> {
    for tool in ["pkg-config", "gcc"] {
        if !present(tool) {
            return Ok(Outcome::Missing(tool));
        }
    }
    let folder = target().join("c-package");
    let library = prefix.join("lib");
    let flags = |words: &[&str]| -> Result<Vec<String>, String> {
        let mut ask = command("pkg-config", words);
        ask.arg("reckohm").env("PKG_CONFIG_PATH", library.join("pkgconfig"));
        Ok(output(&mut ask)?.split_whitespace().map(str::to_owned).collect())
    };
    let shared = folder.join("judge-shared");
    compiled(&flags(&["--cflags", "--libs"])?, &shared)?;
    judged(&shared, Some(&library))?;
    // Of the two libraries in the folder the linker takes the shared one: name the archive in its place.
    let mut words = flags(&["--static", "--cflags", "--libs"])?;
    words.iter_mut().filter(|word| *word == "-lreckohm").for_each(|word| *word = "-l:libreckohm.a".to_owned());
    let fixed = folder.join("judge-static");
    compiled(&words, &fixed)?;
    judged(&fixed, None)?;
    Ok(passed("shared and static"))
}

fn compiled(flags: &[String], program: &Path) -> Result<(), String> {
    let mut compile = command("gcc", &["-std=c99", "-Wall", "-Wextra", "-Werror", "bindings/c/tests/package/judge.c"]);
    run(compile.args(flags).arg("-o").arg(program))
}

/// Runs the program and compares what it prints.
fn judged(program: &Path, library: Option<&PathBuf>) -> Result<(), String> {
    let mut start = command(&program.display().to_string(), &[]);
    if let Some(folder) = library {
        start.env("LD_LIBRARY_PATH", folder);
    }
    let printed = output(&mut start)?;
    if printed == EXPECTED { Ok(()) } else { Err(format!("{} printed {printed:?}", program.display())) }
}

fn copy(from: &Path, to: &Path) -> Result<(), String> {
    fs::copy(from, to).map(|_| ()).map_err(|error| format!("could not copy {}: {error}", from.display()))
}

fn link(to: &str, at: &Path) -> Result<(), String> {
    if at.is_symlink() {
        fs::remove_file(at).map_err(|error| format!("could not replace {}: {error}", at.display()))?;
    }
    std::os::unix::fs::symlink(to, at).map_err(|error| format!("could not link {}: {error}", at.display()))
}

/// A file of `bindings/c/package` with the version filled in.
fn filled(name: &str, to: &Path) -> Result<(), String> {
    let from = root().join("bindings/c/package").join(name);
    let text = fs::read_to_string(&from).map_err(|error| format!("could not read {}: {error}", from.display()))?;
    let minor = VERSION.rsplit_once('.').map_or(VERSION, |(minor, _)| minor);
    let text = text.replace("@VERSION@", VERSION).replace("@MINOR@", minor);
    fs::write(to, text).map_err(|error| format!("could not write {}: {error}", to.display()))
}

fn passed(said: &str) -> Outcome {
    Outcome::Passed(said.to_owned())
}
