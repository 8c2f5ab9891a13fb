//! The targets, a file each.

pub mod arrays;
pub mod bands;
pub mod c_bytes;
pub mod chip;
pub mod conformance;
pub mod coverage;
pub mod decimals;
pub mod display;
pub mod distributions;
pub mod evaluation;
pub mod failures;
pub mod judging;
pub mod letters;
pub mod limits;
pub mod number_text;
pub mod preferred;
pub mod replies;
pub mod sensors;
pub mod single;
pub mod spans;
pub mod values;
