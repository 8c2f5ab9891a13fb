//! Sensors: parts whose resistance stands for something else, and the formulas between the two.
//!
//! A sensor is a [`Model`]: a [`Formula`], its parameters, and the domain over which they are known to hold. Every model
//! converts both ways, gives its slope from the same formula by [`Dual`](crate::number::Dual), takes slices, and takes an
//! [`Estimate`](crate::uncertainty::Estimate) where the resistance is uncertain. One file here is one sensor:
//!
//! - [`BValueThermistor`]: a thermistor by its rated resistance and B-value (IEC 60539-1);
//! - [`SteinhartHart`]: a thermistor by three or four coefficients of 1/T in powers of ln R (Steinhart and Hart 1968);
//! - [`Platinum`]: a platinum resistance thermometer (IEC 60751), with [`PlatinumTolerance`] for its tolerance class.
//!
//! Thermistors have a `fit…` from measured points, with the covariance of their parameters ([`fit`](crate::fit));
//! [`Model::fit_from`] fits any of them.
//!
//! Temperatures are in degrees Celsius, resistances in ohm. What lies outside the domain is refused, never extrapolated:
//! who knows better asks for a wider one.
//!
//! ```
//! use reckohm::sensor::BValueThermistor;
//!
//! // The thermistor of a greenhouse's frost alarm: 10 kohm at 25 °C, B25/85 = 3977 K.
//! let thermistor = BValueThermistor::<f64>::new(10_000.0, 25.0, 3977.0, [25.0, 85.0])?;
//! // Frost lies outside the two temperatures that this B-value belongs to, so it is asked for by name.
//! assert!(thermistor.temperature_c(32_650.0).is_err());
//! let thermistor = thermistor.with_domain([-25.0, 85.0])?;
//! let outside = thermistor.temperature_c(32_650.0)?;
//! assert!((outside - 0.71).abs() < 0.01);
//! # Ok::<(), reckohm::sensor::SensorError>(())
//! ```

mod arrays;
mod b_value;
mod error;
mod fit;
mod model;
mod platinum;
mod platinum_tolerance;
mod steinhart_hart;

pub use b_value::{BValueFormula, BValueThermistor};
pub use error::{OutsideDomain, Quantity, SensorError};
pub use model::{Formula, Model, Thermometer};
pub use platinum::{Platinum, PlatinumFormula, PlatinumStandard};
pub use platinum_tolerance::{Construction, PlatinumTolerance, ToleranceClass};
pub use steinhart_hart::{SteinhartHart, SteinhartHartFormula};

/// 0 °C in kelvin, by definition of the degree Celsius (BIPM, SI brochure 2.3.1).
const ZERO_CELSIUS_IN_KELVIN: f64 = 273.15;
