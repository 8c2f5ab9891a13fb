//! The same conversions for many values at once. Every element is checked before anything is written.

use super::error::{OutsideDomain, SensorError};
use super::model::{Formula, Model, Thermometer};
use crate::number::Real;
use crate::number::arrays::{Question, answer_into, answer_into_valid, check};
use crate::number::batch::PerElement;

/// A model's conversions, each as a formula of one number.
macro_rules! conversions {
    ($($name:ident: $legal:ident, $formula:ident;)+) => {$(
        #[derive(Clone, Copy)]
        struct $name<F, R, const P: usize>(Model<F, R, P>);

        impl<F: Formula<P>, R: Real, const P: usize> PerElement<R, 1> for $name<F, R, P> {
            #[inline(always)]
            fn of(self, [x]: [R; 1]) -> R {
                self.0.$formula(x)
            }
        }

        impl<F: Formula<P>, R: Real, const P: usize> Question<R> for $name<F, R, P> {
            type Fault = OutsideDomain;

            #[inline(always)]
            fn fault(self, x: R) -> Result<(), OutsideDomain> {
                self.0.$legal().check(x).map(|_| ())
            }
        }
    )+};
}

conversions! {
    Forward: legal_quantity, forward;
    Slope: legal_quantity, slope_at;
    Inverse: legal_resistance, inverse;
}

impl<F: Formula<P>, R: Real, const P: usize> Model<F, R, P> {
    /// Whether each of many values lies within the domain, as [`resistance_ohm_into`](Model::resistance_ohm_into) and
    /// [`slope_into`](Model::slope_into) ask before they write: for who goes through an array part by part.
    ///
    /// ```
    /// use reckohm::sensor::BValueThermistor;
    /// let thermistor = BValueThermistor::<f64>::new(10_000.0, 25.0, 3977.0, [25.0, 85.0])?;
    /// assert!(thermistor.check_quantities(&[25.0, 85.0]).is_ok());
    /// assert!(thermistor.check_quantities(&[25.0, 86.0]).is_err());
    /// # Ok::<(), reckohm::sensor::SensorError>(())
    /// ```
    ///
    /// # Errors
    /// [`SensorError::Element`] with the first failing index and how many failed if a value is outside the domain.
    pub fn check_quantities(&self, quantity: &[R]) -> Result<(), SensorError> {
        Ok(check(Forward(*self), quantity)?)
    }

    /// Whether each of many resistances in ohm lies within those at the ends of the domain.
    ///
    /// ```
    /// use reckohm::sensor::BValueThermistor;
    /// let thermistor = BValueThermistor::<f64>::new(10_000.0, 25.0, 3977.0, [25.0, 85.0])?;
    /// assert!(thermistor.check_resistances(&[10_000.0, 1100.0]).is_ok());
    /// assert!(thermistor.check_resistances(&[10_000.0, 0.0]).is_err());
    /// # Ok::<(), reckohm::sensor::SensorError>(())
    /// ```
    ///
    /// # Errors
    /// [`SensorError::Element`] with the first failing index and how many failed if a resistance is beyond those.
    pub fn check_resistances(&self, resistance_ohm: &[R]) -> Result<(), SensorError> {
        Ok(check(Inverse(*self), resistance_ohm)?)
    }

    /// [`resistance_ohm`](Model::resistance_ohm) of each of many values.
    ///
    /// ```
    /// use reckohm::sensor::BValueThermistor;
    /// let thermistor = BValueThermistor::<f64>::new(10_000.0, 25.0, 3977.0, [25.0, 85.0])?;
    /// let mut ohm = [0.0; 2];
    /// thermistor.resistance_ohm_into(&[25.0, 85.0], &mut ohm)?;
    /// assert_eq!(ohm, [10_000.0, thermistor.resistance_ohm(85.0)?]);
    /// assert!(thermistor.resistance_ohm_into(&[25.0, 86.0], &mut ohm).is_err());
    /// # Ok::<(), reckohm::sensor::SensorError>(())
    /// ```
    ///
    /// # Errors
    /// [`SensorError::Lengths`] if the two slices differ in length; [`SensorError::Element`] with the first failing index and
    /// how many failed if a value is outside the domain. Then nothing is written.
    pub fn resistance_ohm_into(&self, quantity: &[R], out: &mut [R]) -> Result<(), SensorError> {
        Ok(answer_into(Forward(*self), quantity, out)?)
    }

    /// [`resistance_ohm`](Model::resistance_ohm) of each of many values, some of which may be illegal: `valid` says which were
    /// good, the places of the others are left as they are, and the count of those others is returned.
    ///
    /// ```
    /// use reckohm::sensor::BValueThermistor;
    /// let thermistor = BValueThermistor::<f64>::new(10_000.0, 25.0, 3977.0, [25.0, 85.0])?;
    /// let (mut ohm, mut valid) = ([7.0; 2], [true; 2]);
    /// assert_eq!(thermistor.resistance_ohm_into_valid(&[25.0, f64::NAN], &mut ohm, &mut valid)?, 1);
    /// assert_eq!((ohm, valid), ([10_000.0, 7.0], [true, false]));
    /// # Ok::<(), reckohm::sensor::SensorError>(())
    /// ```
    ///
    /// # Errors
    /// [`SensorError::Lengths`] if the slices differ in length; then nothing is written.
    pub fn resistance_ohm_into_valid(
        &self,
        quantity: &[R],
        out: &mut [R],
        valid: &mut [bool],
    ) -> Result<usize, SensorError> {
        Ok(answer_into_valid(Forward(*self), quantity, out, valid)?)
    }

    /// [`slope`](Model::slope) at each of many values.
    ///
    /// ```
    /// use reckohm::sensor::BValueThermistor;
    /// let thermistor = BValueThermistor::<f64>::new(10_000.0, 25.0, 3977.0, [25.0, 85.0])?;
    /// let mut slope = [0.0; 2];
    /// thermistor.slope_into(&[25.0, 85.0], &mut slope)?;
    /// assert_eq!(slope, [thermistor.slope(25.0)?, thermistor.slope(85.0)?]);
    /// # Ok::<(), reckohm::sensor::SensorError>(())
    /// ```
    ///
    /// # Errors
    /// As for [`resistance_ohm_into`](Model::resistance_ohm_into).
    pub fn slope_into(&self, quantity: &[R], out: &mut [R]) -> Result<(), SensorError> {
        Ok(answer_into(Slope(*self), quantity, out)?)
    }

    /// [`slope`](Model::slope) at each of many values, some of which may be illegal.
    ///
    /// ```
    /// use reckohm::sensor::BValueThermistor;
    /// let thermistor = BValueThermistor::<f64>::new(10_000.0, 25.0, 3977.0, [25.0, 85.0])?;
    /// let (mut slope, mut valid) = ([7.0; 2], [true; 2]);
    /// assert_eq!(thermistor.slope_into_valid(&[24.0, 25.0], &mut slope, &mut valid)?, 1);
    /// assert_eq!((slope, valid), ([7.0, thermistor.slope(25.0)?], [false, true]));
    /// # Ok::<(), reckohm::sensor::SensorError>(())
    /// ```
    ///
    /// # Errors
    /// As for [`resistance_ohm_into_valid`](Model::resistance_ohm_into_valid).
    pub fn slope_into_valid(&self, quantity: &[R], out: &mut [R], valid: &mut [bool]) -> Result<usize, SensorError> {
        Ok(answer_into_valid(Slope(*self), quantity, out, valid)?)
    }
}

impl<F: Thermometer<P>, R: Real, const P: usize> Model<F, R, P> {
    /// [`temperature_c`](Model::temperature_c) of each of many resistances in ohm.
    ///
    /// ```
    /// use reckohm::sensor::BValueThermistor;
    /// let thermistor = BValueThermistor::<f32>::new(10_000.0, 25.0, 3977.0, [25.0, 85.0])?;
    /// let mut temperature_c = [0.0_f32; 2];
    /// thermistor.temperature_c_into(&[10_000.0, 1100.0], &mut temperature_c)?;
    /// assert_eq!(temperature_c, [25.0, thermistor.temperature_c(1100.0)?]);
    /// assert!(thermistor.temperature_c_into(&[10_000.0, 0.0], &mut temperature_c).is_err());
    /// # Ok::<(), reckohm::sensor::SensorError>(())
    /// ```
    ///
    /// # Errors
    /// [`SensorError::Lengths`] if the two slices differ in length; [`SensorError::Element`] with the first failing index and
    /// how many failed if a resistance is beyond those at the ends of the domain. Then nothing is written.
    pub fn temperature_c_into(&self, resistance_ohm: &[R], out: &mut [R]) -> Result<(), SensorError> {
        Ok(answer_into(Inverse(*self), resistance_ohm, out)?)
    }

    /// [`temperature_c`](Model::temperature_c) of each of many resistances in ohm, some of which may be illegal: `valid` says
    /// which were good, the places of the others are left as they are, and the count of those others is returned.
    ///
    /// ```
    /// use reckohm::sensor::BValueThermistor;
    /// let thermistor = BValueThermistor::<f64>::new(10_000.0, 25.0, 3977.0, [25.0, 85.0])?;
    /// let (mut temperature_c, mut valid) = ([7.0; 2], [true; 2]);
    /// assert_eq!(thermistor.temperature_c_into_valid(&[10_000.0, 1e9], &mut temperature_c, &mut valid)?, 1);
    /// assert_eq!((temperature_c, valid), ([25.0, 7.0], [true, false]));
    /// # Ok::<(), reckohm::sensor::SensorError>(())
    /// ```
    ///
    /// # Errors
    /// [`SensorError::Lengths`] if the slices differ in length; then nothing is written.
    pub fn temperature_c_into_valid(
        &self,
        resistance_ohm: &[R],
        out: &mut [R],
        valid: &mut [bool],
    ) -> Result<usize, SensorError> {
        Ok(answer_into_valid(Inverse(*self), resistance_ohm, out, valid)?)
    }
}
