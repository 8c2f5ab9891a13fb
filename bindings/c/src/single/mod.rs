//! The twins of functions for `float`, one file for each of theirs; structs stand beside theirs.
//!
//! The header is made from this source as it stands, so every twin is written out; each does no more than hand on to the
//! core's one formula.

mod distribution;
mod estimate;
mod limits;
mod rule;
mod verdict;

pub use distribution::*;
pub use estimate::*;
pub use limits::*;
pub use rule::*;
pub use verdict::*;
