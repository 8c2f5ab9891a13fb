//! What a part is said to be: preferred values, markings, and the limits that follow from them.

pub mod conformance;
pub mod limits;
pub mod marking;
pub mod preferred;
