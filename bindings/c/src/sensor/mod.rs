//! Sensors: a file a formula, and one for what they share.

mod b_value;
mod b_value_f32;
mod kept;
mod steinhart_hart;
mod steinhart_hart_f32;

pub use b_value::*;
pub use b_value_f32::*;
pub use steinhart_hart::*;
pub use steinhart_hart_f32::*;
