//! Numbers: scalars and dual numbers, elementary and special functions, decimals, legal ranges, and what can go wrong.

mod kind;
mod range;

pub use kind::{Detail, Kind};
pub use range::{OutOfRange, RANGES, RangeRow};
