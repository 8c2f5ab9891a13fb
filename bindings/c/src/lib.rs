//! The C door: functions and plain structs with the C ABI over the core, and no maths of their own.
//!
//! The header `include/reckohm.h` is made from the documentation here by `cargo xtask header`, so every item is worded
//! for a C reader. Each function checks its pointers and codes, asks the core, and writes its outputs last, so that
//! they are untouched unless the answer is `RKO_OK`. `extern "C"` functions never unwind: a panic would abort.
#![no_std]
#![allow(non_camel_case_types)]
// The rules for pointers are the same everywhere and stand once, at the head of the header.
#![allow(clippy::missing_safety_doc)]
#![warn(unsafe_op_in_unsafe_fn)]

#[cfg(feature = "std")]
extern crate std;

mod answer;
mod area;
mod arithmetic;
mod array;
mod auto_ranger;
mod bytes;
mod choice;
mod columns;
mod detail;
mod distribution;
mod estimate;
mod leads;
mod limits;
mod marking;
mod measurement;
#[cfg(all(feature = "firmware", target_os = "none"))]
mod panic;
mod parts;
mod pointer;
mod preferred;
mod prepared;
mod reading;
mod rule;
mod seal;
mod sensor;
mod span;
#[cfg(feature = "text")]
mod text;
mod twins;
mod verdict;
#[cfg(feature = "text")]
mod words;

pub use arithmetic::*;
pub use auto_ranger::*;
pub use choice::*;
pub use columns::*;
pub use detail::*;
pub use distribution::*;
pub use estimate::*;
pub use leads::*;
pub use limits::*;
pub use marking::*;
pub use measurement::*;
pub use parts::rko_limit_threads;
pub use preferred::*;
pub use reading::*;
pub use rule::*;
pub use sensor::*;
pub use span::*;
#[cfg(feature = "text")]
pub use text::*;
pub use verdict::*;
#[cfg(feature = "text")]
pub use words::*;
