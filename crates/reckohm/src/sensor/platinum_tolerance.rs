//! How far a platinum thermometer may be from the curve of its standard: the tolerance classes of IEC 60751.
//!
//! ```text
//! tolerance = ±(a + b·|t|)      a, in kelvin, at 0 °C;   b, in kelvin a kelvin;   t in degrees Celsius
//!
//! class   a     b        thermometer,    thermometer,   resistor,        resistor,
//!                        wire wound      film           wire wound       film
//! AA     0.1   0.0017    −50 to 250        0 to 150     −100 to 350        0 to 150   (W 0.1,  F 0.1)
//! A      0.15  0.002    −100 to 450      −30 to 300     −100 to 450      −30 to 300   (W 0.15, F 0.15)
//! B      0.3   0.005    −196 to 600      −50 to 500     −196 to 660      −50 to 500   (W 0.3,  F 0.3)
//! C      0.6   0.01     −196 to 600      −50 to 600     −196 to 660      −50 to 600   (W 0.6,  F 0.6)
//! ```
//!
//! Source: IEC 60751:2008, tables 2 (resistors) and 3 (thermometers), as printed by makers and in a trade text
//! (`tests/checks/sensor_SOURCES.md`); the standard itself was not read. Outside its range a class promises nothing, so a
//! temperature there is refused. Tables with rounded limits differ in the last digit: class B at 850 °C is 4.55 K, where
//! 4.6 is printed.
//!
//! ```
//! use reckohm::sensor::{Construction, Platinum, PlatinumStandard, PlatinumTolerance, ToleranceClass};
//! use reckohm::uncertainty::Estimate;
//!
//! // 119.40 ohm ± 0.02 ohm, read on any film Pt100 of class B: what is known of the temperature?
//! let pt100 = Platinum::<f64>::new(100.0, PlatinumStandard::Iec60751)?;
//! let class_b = PlatinumTolerance::iec_60751(ToleranceClass::B, Construction::FilmThermometer);
//! let by_the_meter = pt100.temperature_estimate(&Estimate::exact(119.40)?.with_rectangular(0.02)?)?;
//! let temperature = by_the_meter.with_rectangular(class_b.tolerance_kelvin(by_the_meter.value())?)?;
//! assert!((temperature.value() - 50.01).abs() < 0.005);
//! let [of_part, of_meter] = temperature.rectangular();
//! assert!((of_part - 0.55).abs() < 0.001 && (of_meter - 0.052).abs() < 0.001);
//! # Ok::<(), Box<dyn std::error::Error>>(())
//! ```

use super::error::SensorError;
use super::model::Formula;
use super::platinum::{Platinum, PlatinumFormula};
use crate::number::{PLATINUM_TEMPERATURE, PLATINUM_TOLERANCE, PLATINUM_TOLERANCE_SHARE, Real};

/// A tolerance class of thermometers; resistors, called by W or F and the first number, have the same tolerances.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[non_exhaustive]
pub enum ToleranceClass {
    /// ±(0.1 K + 0.0017·|t|); W 0.1 and F 0.1.
    Aa,
    /// ±(0.15 K + 0.002·|t|); W 0.15 and F 0.15.
    A,
    /// ±(0.3 K + 0.005·|t|); W 0.3 and F 0.3.
    B,
    /// ±(0.6 K + 0.01·|t|); W 0.6 and F 0.6.
    C,
}

impl ToleranceClass {
    /// All of them, the tightest first.
    pub const ALL: [ToleranceClass; 4] = [ToleranceClass::Aa, ToleranceClass::A, ToleranceClass::B, ToleranceClass::C];
}

/// What the class is of: the range over which it holds differs.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[non_exhaustive]
pub enum Construction {
    /// A thermometer with a wire-wound resistor.
    WireWoundThermometer,
    /// A thermometer with a film resistor.
    FilmThermometer,
    /// A bare wire-wound resistor, class W.
    WireWoundResistor,
    /// A bare film resistor, class F.
    FilmResistor,
}

impl Construction {
    /// All of them.
    pub const ALL: [Construction; 4] = [
        Construction::WireWoundThermometer,
        Construction::FilmThermometer,
        Construction::WireWoundResistor,
        Construction::FilmResistor,
    ];
}

/// How far a thermometer may be from the curve of its standard, and over which range that holds. Legal by construction.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PlatinumTolerance<R = f64> {
    at_zero_kelvin: R,
    share: R,
    range_c: [R; 2],
}

impl<R: Real> PlatinumTolerance<R> {
    /// The tolerance of a class of IEC 60751.
    ///
    /// ```
    /// use reckohm::sensor::{Construction, PlatinumTolerance, ToleranceClass};
    /// let class_a = PlatinumTolerance::<f64>::iec_60751(ToleranceClass::A, Construction::FilmThermometer);
    /// assert_eq!(class_a.range_c(), [-30.0, 300.0]);
    /// assert!((class_a.tolerance_kelvin(100.0)? - 0.35).abs() < 1e-15);
    /// # Ok::<(), reckohm::sensor::SensorError>(())
    /// ```
    pub fn iec_60751(class: ToleranceClass, construction: Construction) -> Self {
        use Construction::{FilmResistor, FilmThermometer, WireWoundResistor, WireWoundThermometer};
        let (at_zero_kelvin, share) = match class {
            ToleranceClass::Aa => (0.1, 0.0017),
            ToleranceClass::A => (0.15, 0.002),
            ToleranceClass::B => (0.3, 0.005),
            ToleranceClass::C => (0.6, 0.01),
        };
        let range_c = match (class, construction) {
            (ToleranceClass::Aa, WireWoundThermometer) => [-50.0, 250.0],
            (ToleranceClass::Aa, WireWoundResistor) => [-100.0, 350.0],
            (ToleranceClass::Aa, FilmThermometer | FilmResistor) => [0.0, 150.0],
            (ToleranceClass::A, WireWoundThermometer | WireWoundResistor) => [-100.0, 450.0],
            (ToleranceClass::A, FilmThermometer | FilmResistor) => [-30.0, 300.0],
            (ToleranceClass::B | ToleranceClass::C, WireWoundThermometer) => [-196.0, 600.0],
            (ToleranceClass::B | ToleranceClass::C, WireWoundResistor) => [-196.0, 660.0],
            (ToleranceClass::B, FilmThermometer | FilmResistor) => [-50.0, 500.0],
            (ToleranceClass::C, FilmThermometer | FilmResistor) => [-50.0, 600.0],
        };
        let [at_zero_kelvin, share] = [at_zero_kelvin, share].map(R::lit);
        PlatinumTolerance { at_zero_kelvin, share, range_c: range_c.map(R::lit) }
    }

    /// A tolerance that maker and user agreed on: a third of class B is 0.1 K and 0.005/3.
    ///
    /// Given: the tolerance at 0 °C in kelvin, 0 to 5; how much it grows with each kelvin away from there, 0 to 0.02; the range
    /// over which it holds in degrees Celsius, within −200 to 850.
    ///
    /// ```
    /// use reckohm::sensor::PlatinumTolerance;
    /// let third = PlatinumTolerance::<f64>::new(0.1, 0.005 / 3.0, [-50.0, 150.0])?;
    /// assert!((third.tolerance_kelvin(-30.0)? - 0.15).abs() < 1e-15);
    /// assert!(PlatinumTolerance::new(0.1, 0.5, [-50.0, 150.0]).is_err());
    /// # Ok::<(), reckohm::sensor::SensorError>(())
    /// ```
    ///
    /// # Errors
    /// [`SensorError::Range`] for a number outside its range; [`SensorError::Domainless`] for a range without extent.
    pub fn new(at_zero_kelvin: R, share: R, range_c: [R; 2]) -> Result<Self, SensorError> {
        PLATINUM_TOLERANCE.check(at_zero_kelvin)?;
        PLATINUM_TOLERANCE_SHARE.check(share)?;
        let [lower, upper] = range_c;
        let ordered = PLATINUM_TEMPERATURE.check(lower)? < PLATINUM_TEMPERATURE.check(upper)?;
        if ordered {
            Ok(PlatinumTolerance { at_zero_kelvin, share, range_c })
        } else {
            Err(SensorError::domainless(range_c))
        }
    }

    /// The ends in degrees Celsius between which it holds.
    pub fn range_c(&self) -> [R; 2] {
        self.range_c
    }

    /// The tolerance in kelvin: how far the temperature that a conforming part shows by the curve of its standard may be from
    /// that which it has, to either side. As an uncertainty it is the half-width of a rectangular part.
    ///
    /// Given: the temperature in degrees Celsius, within the range. Returned: the half-width in kelvin, never negative.
    ///
    /// ```
    /// use reckohm::sensor::{Construction, PlatinumTolerance, ToleranceClass};
    /// let class_b = PlatinumTolerance::<f64>::iec_60751(ToleranceClass::B, Construction::WireWoundThermometer);
    /// assert_eq!(class_b.tolerance_kelvin(-100.0)?, 0.8);
    /// assert!(class_b.tolerance_kelvin(-200.0).is_err());
    /// # Ok::<(), reckohm::sensor::SensorError>(())
    /// ```
    ///
    /// # Errors
    /// [`SensorError::OutsideTolerance`] for a temperature outside the range, NaN included.
    pub fn tolerance_kelvin(&self, temperature_c: R) -> Result<R, SensorError> {
        let [lower, upper] = self.range_c;
        if (lower <= temperature_c) & (temperature_c <= upper) {
            return Ok(self.at_zero_kelvin + self.share * temperature_c.magnitude());
        }
        let [given_c, lower_c, upper_c] = [temperature_c, lower, upper].map(Real::to_f64);
        Err(SensorError::OutsideTolerance { given_c, lower_c, upper_c })
    }

    /// The resistances in ohm between which a conforming part is at this temperature, the lower one first: those of the curve at
    /// the two ends of the tolerance. Tables print the tolerance times the slope, which is the same to their digits.
    ///
    /// ```
    /// use reckohm::sensor::{Construction, Platinum, PlatinumStandard, PlatinumTolerance, ToleranceClass};
    /// use reckohm::verdict::Limits;
    /// // A Pt100 of class A in an ice bath: 0.15 K are 0.06 ohm.
    /// let pt100 = Platinum::<f64>::new(100.0, PlatinumStandard::Iec60751)?;
    /// let class_a = PlatinumTolerance::iec_60751(ToleranceClass::A, Construction::FilmThermometer);
    /// let [lower, upper] = class_a.limits_ohm(&pt100, 0.0)?;
    /// assert!((lower - 99.94).abs() < 0.002 && (upper - 100.06).abs() < 0.002);
    /// assert!(Limits::new(lower, upper)?.contains(100.05));
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    ///
    /// # Errors
    /// [`SensorError::OutsideTolerance`] for a temperature outside the range; [`SensorError::Domain`] for one outside the
    /// thermometer's domain.
    pub fn limits_ohm(&self, platinum: &Platinum<R>, temperature_c: R) -> Result<[R; 2], SensorError> {
        let tolerance = self.tolerance_kelvin(temperature_c)?;
        let t = platinum.legal_quantity().check(temperature_c)?;
        // Beyond the ends of the domain the curve is continued by no more than the tolerance.
        Ok([t - tolerance, t + tolerance].map(|t| PlatinumFormula::forward(&platinum.parameters(), t)))
    }
}
