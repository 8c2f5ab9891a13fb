//! From readings to an estimate with its budget: what contributes, what dominates, and what would help.
//!
//! The measurement model is, with every quantity an input of its own,
//!
//! ```text
//! shown  = mean of the readings + error of the meter + step of the display - leads
//! part   = shown / (1 - shown · g)                       g: conductance of a path in parallel
//! result = part / (1 + (α + δα)·(t - t_ref))             α known coefficient, δα within a marked limit
//! ```
//!
//! Sensitivities are the exact partial derivatives of this formula (dual numbers); none is written by hand.

mod advice;
mod budget;
mod error;
mod evaluate;
mod model;
mod setup;

pub use advice::{Advice, AdviceKind};
pub use budget::{Budget, Contribution, Distribution, Row};
pub use error::MeasurementError;
pub use evaluate::{Measurement, evaluate, evaluate_from};
pub use setup::Setup;
