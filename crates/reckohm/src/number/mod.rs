//! Numbers: scalars and dual numbers, elementary and special functions, decimals, legal ranges, and what can go wrong.

mod bignum;
mod decimal;
mod kind;
mod parse;
mod range;

pub use decimal::Decimal;
pub use kind::{Detail, Kind};
pub use parse::{LONGEST_NUMBER_TEXT, NumberError, parse_number, parse_number_f32};
pub use range::*;
