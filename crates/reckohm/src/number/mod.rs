//! Numbers: scalars and dual numbers, elementary and special functions, decimals, legal ranges, and what can go wrong.

mod bignum;
mod decimal;
mod dual;
pub mod elementary;
mod kind;
#[allow(dead_code)] // Its users come with the folders after this one.
pub(crate) mod normal;
mod parse;
mod range;
mod scalar;
#[allow(dead_code)]
pub(crate) mod student_t;

pub use decimal::Decimal;
pub use dual::Dual;
pub use kind::{Detail, Kind};
pub use parse::{LONGEST_NUMBER_TEXT, NumberError, parse_number, parse_number_f32};
pub(crate) use parse::{Shown, is_blank};
pub use range::*;
pub use scalar::{Real, Scalar};
