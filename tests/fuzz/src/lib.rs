//! Fuzz targets: each a plain function of bytes that panics where the library is wrong. libFuzzer calls them
//! (`cargo xtask fuzz`), and so does an ordinary test, on the corpus and on mutations of it with a fixed seed.
//!
//! A target asks more than that nothing panics: it compares with a slow, obvious second computation of its own, or with
//! the inverse.

pub mod corpus;
pub mod input;
pub mod mutation;
pub mod refusal;
#[cfg(test)]
mod replay;
pub mod targets;

/// A target with its name, which is also that of its corpus and of its program for libFuzzer.
#[derive(Clone, Copy)]
pub struct Target {
    /// Its name.
    pub name: &'static str,
    /// Panics where the library is wrong.
    pub run: fn(&[u8]),
}

macro_rules! targets {
    ($($name:ident $($runs:literal)?,)+) => {
        /// Every target.
        pub const TARGETS: &[Target] = &[$(Target { name: stringify!($name), run: targets::$name::target },)+];

        #[cfg(test)]
        mod on_its_seeds {
            $(#[test]
            fn $name() {
                let runs = [crate::replay::RUNS $(, $runs)?];
                crate::replay::replay(stringify!($name), crate::targets::$name::target, runs[runs.len() - 1]);
            })+
        }
    };
}

// A number is that of the runs in a test, for a target that takes milliseconds a run.
targets! {
    arrays,
    bands,
    c_bytes,
    chip,
    conformance 200,
    coverage 100,
    decimals,
    display,
    distributions 500,
    evaluation 500,
    failures,
    judging 100,
    letters,
    limits,
    number_text,
    preferred,
    replies,
    sensors,
    single 2000,
    spans,
    values,
}
