//! Resistive parts measured, stated with an honest uncertainty, and judged.
#![no_std]
#![forbid(unsafe_code)]

#[cfg(feature = "std")]
extern crate std;

pub mod fit;
pub mod measurement;
pub mod meter;
pub mod number;
mod part;
pub mod sensor;
pub mod uncertainty;
pub mod verdict;

pub use number::{batch, distribution};
pub use part::{marking, preferred};
