//! Numbers: scalars and dual numbers, elementary and special functions, decimals, legal ranges, and what can go wrong.

pub(crate) mod arrays;
pub mod batch;
mod bignum;
mod decimal;
pub mod distribution;
mod dual;
pub mod elementary;
mod kind;
mod nearest;
pub(crate) mod normal;
pub(crate) mod pair;
mod parse;
pub(crate) mod polynomial;
pub(crate) mod quadrature;
mod range;
mod readable;
mod scalar;
pub mod special;
pub(crate) mod student_t;

pub use decimal::Decimal;
pub use dual::Dual;
pub use kind::{Detail, Kind};
pub use parse::{LONGEST_NUMBER_TEXT, NumberError, parse_number, parse_number_f32};
pub(crate) use parse::{Shown, is_blank};
pub use range::*;
pub(crate) use readable::Readable;
pub(crate) use scalar::by_type;
pub use scalar::{Real, Scalar};
