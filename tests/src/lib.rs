//! What the tests of this package share: published tables and the cross-door vectors, read from their files.

pub mod random;

pub mod vectors;
