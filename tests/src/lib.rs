//! What the tests of this package share: published tables and the cross-door vectors, read from their files.

pub mod allowed;
pub mod certified;
pub mod oracle;
pub mod random;
pub mod sweep;
pub mod vectors;

/// The README's Rust program, compiled and run.
#[cfg(doctest)]
#[doc = include_str!("../../README.md")]
pub struct Readme;
