//! What is known about a value: the estimate with the shape of its uncertainty, and the intervals that follow from it.
//!
//! A value and a standard uncertainty are not enough for a verdict: where a meter's accuracy clause dominates, the error
//! is rectangular, not normal, and 1.65 u or 2 u are the wrong factors. An [`Estimate`] therefore carries its parts, and
//! [`Estimate::expanded`] finds the half-width that holds the coverage probability asked for: the quantile of the parts
//! added together, without a simulation.
//!
//! What coverage means here: over meters whose error lies anywhere within their clause with equal probability. One
//! meter at the edge of its clause is wrong the same way on every part.

mod convolution;
mod coverage;
mod degrees_of_freedom;
mod error;
mod estimate;
mod noise;
mod repeats;
mod root;
mod shape;
mod squares;

pub use coverage::Expanded;
pub use degrees_of_freedom::effective_dof;
pub use error::EstimateError;
pub use estimate::{Estimate, TypeA};

pub(crate) use convolution::{
    EDGED_FROM, WIDE_FROM, any_rectangular, edged_rectangular, one_rectangular, wide_rectangular,
};
pub(crate) use coverage::COVERAGE_BY_CONVENTION;
pub(crate) use degrees_of_freedom::welch_satterthwaite;
pub(crate) use estimate::checked_parts;
pub(crate) use repeats::spread;
pub(crate) use root::root;
pub(crate) use shape::{Shape, least};
pub(crate) use squares::lift;
