//! Sensors: a file a formula, and one for what they share.

mod b_value;
mod kept;
mod steinhart_hart;
mod thermometer;

pub use b_value::*;
pub use steinhart_hart::*;
