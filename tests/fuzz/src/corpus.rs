//! The committed seeds: a text file a target, an input a line, bytes outside printable ASCII as `\xNN`.

use std::fmt::Write as _;
use std::fs;
use std::path::{Path, PathBuf};

/// The file of a target's seeds.
pub fn file(target: &str) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("corpus").join(format!("{target}.txt"))
}

/// The seeds of a target.
pub fn read(target: &str) -> Vec<Vec<u8>> {
    let file = file(target);
    let text = fs::read_to_string(&file).unwrap_or_else(|error| panic!("{}: {error}", file.display()));
    text.lines().map(unescape).collect()
}

/// The text of these seeds, the shortest first.
pub fn lines(seeds: &[Vec<u8>]) -> String {
    let mut seeds: Vec<&Vec<u8>> = seeds.iter().collect();
    seeds.sort_by(|a, b| (a.len(), a).cmp(&(b.len(), b)));
    seeds.dedup();
    seeds.into_iter().fold(String::new(), |text, seed| text + &escape(seed) + "\n")
}

fn escape(seed: &[u8]) -> String {
    seed.iter().fold(String::new(), |mut line, byte| {
        match byte {
            b' '..=b'~' if *byte != b'\\' => line.push(char::from(*byte)),
            _ => write!(line, "\\x{byte:02x}").expect("a text takes what is written to it"),
        }
        line
    })
}

fn unescape(line: &str) -> Vec<u8> {
    let mut parts = line.split("\\x");
    let mut seed = parts.next().unwrap_or_default().as_bytes().to_vec();
    for part in parts {
        let (code, rest) = part.split_at(2);
        seed.push(u8::from_str_radix(code, 16).unwrap_or_else(|_| panic!("escape in {line:?}")));
        seed.extend_from_slice(rest.as_bytes());
    }
    seed
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn seeds_come_back() {
        let every_byte: Vec<u8> = (0..=255).collect();
        for seed in [every_byte, Vec::new(), b"\\x41 \\".to_vec()] {
            assert_eq!(unescape(&escape(&seed)), seed);
        }
        assert_eq!(lines(&[b"bb".to_vec(), b"a".to_vec(), b"bb".to_vec()]), "a\nbb\n");
    }
}
