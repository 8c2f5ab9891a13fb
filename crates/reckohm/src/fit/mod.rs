//! Least squares: the parameters of a model from measured points, with their covariance, and with what the points' own errors
//! and the errors that they share make of it.
//!
//! - [`polynomial`]: a line or any other polynomial in x;
//! - [`linear`](linear()): any model that is linear in its parameters, by its rows;
//! - [`curve`](curve()): a [`Curve`] of one's own, from a [`Start`].
//!
//! The points come as slices in a [`Points`], to which is added what is known of their errors; the result is a [`Fit`].
//!
//! How exact: the certified results of NIST's Statistical Reference Datasets come out to nine digits and more
//! (`tests/tests/fit_certified_linear.rs`, `fit_certified_curves.rs`).
//!
//! ```
//! use reckohm::fit::{Points, polynomial};
//!
//! // The resistance of a nickel wire as it warms.
//! let temperature_c = [0.0, 20.0, 40.0, 60.0, 80.0];
//! let ohm = [100.00, 111.24, 123.01, 135.35, 148.25];
//! let curve = polynomial::<f64, 3>(&Points::new(&temperature_c, &ohm)?, None)?;
//! let [at_zero, slope, bend] = curve.parameters();
//! assert!((at_zero - 100.0).abs() < 0.01 && (slope - 0.548).abs() < 0.002 && (bend - 6.8e-4).abs() < 2e-5);
//! assert!(curve.residual_sd().is_some_and(|sd| sd < 0.02));
//! # Ok::<(), reckohm::fit::FitError>(())
//! ```

mod curve;
mod error;
mod fitted;
mod linear;
mod nonlinear;
mod points;
mod polynomial;
mod search;
mod start;
mod triangle;

pub use curve::Curve;
pub use error::{FitError, List};
pub use fitted::{Fit, Stop};
pub use linear::linear;
pub(crate) use linear::rough;
pub use nonlinear::curve;
pub use points::Points;
pub use polynomial::polynomial;
pub use start::Start;
