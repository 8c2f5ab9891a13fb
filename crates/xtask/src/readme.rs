//! The README's C program, compiled and run as a reader would, and its output compared with what the README shows.
//! (Its Rust block is a documentation test of `tests/`, its Python block a doctest of the Python door.)

use crate::report::Outcome;
use crate::tools::{cargo, command, output, present, root, run, target};

/// Compiles, runs, compares.
pub fn c_block() -> Result<Outcome, String> {
    if !present("gcc") {
        return Ok(Outcome::Missing("gcc"));
    }
    let readme = std::fs::read_to_string(root().join("README.md")).map_err(|error| format!("README.md: {error}"))?;
    let (program, shown) = blocks(&readme).ok_or("README.md has no block of C with a block of text behind it")?;

    run(&mut cargo(&["build", "--quiet", "--package", "reckohm-c"]))?;
    let target = target();
    let folder = target.join("readme");
    std::fs::create_dir_all(&folder).map_err(|error| format!("{}: {error}", folder.display()))?;
    let source = folder.join("readme.c");
    std::fs::write(&source, program).map_err(|error| format!("{}: {error}", source.display()))?;
    let built = folder.join("readme");
    let strict = ["-std=c99", "-Wall", "-Wextra", "-Wpedantic", "-Werror", "-ffp-contract=off", "-Ibindings/c/include"];
    let mut compile = command("gcc", &strict);
    compile.arg(&source).arg(target.join("debug/libreckohm_c.a")).args(["-lgcc_s", "-lc", "-lm", "-o"]).arg(&built);
    run(&mut compile)?;

    let printed = output(&mut command(&built.display().to_string(), &[]))?;
    if printed == shown {
        Ok(Outcome::Passed("it prints what the README shows".to_owned()))
    } else {
        Err(format!("it prints\n{printed}and the README shows\n{shown}"))
    }
}

/// The first block of C, and the first block of text after it.
fn blocks(readme: &str) -> Option<(String, String)> {
    let (program, rest) = fenced(readme, "c")?;
    let (shown, _) = fenced(rest, "text")?;
    Some((program.to_owned(), shown.to_owned()))
}

fn fenced<'a>(text: &'a str, kind: &str) -> Option<(&'a str, &'a str)> {
    let opening = format!("\n```{kind}\n");
    let inside = &text[text.find(&opening)? + opening.len()..];
    inside.find("```").map(|end| (&inside[..end], &inside[end..]))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_text_after_the_program_is_its_output() {
        let readme = "a\n```text\nbefore\n```\n```c\nint x;\n```\nprints\n\n```text\n1\n```\n";
        assert_eq!(blocks(readme), Some(("int x;\n".to_owned(), "1\n".to_owned())));
        assert_eq!(blocks("no block"), None);
    }
}
