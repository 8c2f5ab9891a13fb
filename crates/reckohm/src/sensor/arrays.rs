//! The same conversions for many values at once. Every element is checked before anything is written.

use super::error::SensorError;
use super::model::{Formula, Legal, Model, Thermometer};
use crate::number::Real;
use crate::number::batch::{PerElement, map, takes_all};

/// How many elements with a mask go through the formula at a time, by way of a place of their own.
const BLOCK: usize = 64;

/// A model's conversions, each as a formula of one number.
#[derive(Clone, Copy)]
struct Forward<F, R, const P: usize>(Model<F, R, P>);
#[derive(Clone, Copy)]
struct Slope<F, R, const P: usize>(Model<F, R, P>);
#[derive(Clone, Copy)]
struct Inverse<F, R, const P: usize>(Model<F, R, P>);

impl<F: Formula<P>, R: Real, const P: usize> PerElement<R, 1> for Forward<F, R, P> {
    #[inline(always)]
    fn of(self, [quantity]: [R; 1]) -> R {
        self.0.forward(quantity)
    }
}

impl<F: Formula<P>, R: Real, const P: usize> PerElement<R, 1> for Slope<F, R, P> {
    #[inline(always)]
    fn of(self, [quantity]: [R; 1]) -> R {
        self.0.slope_at(quantity)
    }
}

impl<F: Formula<P>, R: Real, const P: usize> PerElement<R, 1> for Inverse<F, R, P> {
    #[inline(always)]
    fn of(self, [resistance_ohm]: [R; 1]) -> R {
        self.0.inverse(resistance_ohm)
    }
}

impl<R: Real> PerElement<R, 1> for Legal<R> {
    #[inline(always)]
    fn of(self, [x]: [R; 1]) -> R {
        if self.holds(x) { R::ONE } else { R::ZERO }
    }
}

/// Writes the answer for each value, after all of them have been checked.
fn into<R: Real>(
    legal: Legal<R>,
    values: &[R],
    out: &mut [R],
    answer: impl PerElement<R, 1>,
) -> Result<(), SensorError> {
    lengths(values.len(), out.len())?;
    if !takes_all(legal, [values]) {
        return Err(first_of(legal, values));
    }
    map(answer, [values], out);
    Ok(())
}

/// The first illegal value, and how many there are.
#[cold]
fn first_of<R: Real>(legal: Legal<R>, values: &[R]) -> SensorError {
    let failed = values.iter().filter(|x| !legal.holds(**x)).count() as u64;
    let index = values.iter().position(|x| !legal.holds(*x)).unwrap_or_default();
    let fault = legal.outside(values.get(index).copied().unwrap_or_default());
    SensorError::Element { fault, index: index as u64, failed }
}

/// Writes the answer for each legal value, says which those were, and counts the others. The others go through the formula
/// as well, and what comes out is dropped: so the loop has no branches.
fn into_valid<R: Real>(
    legal: Legal<R>,
    values: &[R],
    out: &mut [R],
    valid: &mut [bool],
    answer: impl PerElement<R, 1>,
) -> Result<usize, SensorError> {
    lengths(values.len(), out.len())?;
    lengths(values.len(), valid.len())?;
    let mut failed = 0_usize;
    let mut answers = [R::ZERO; BLOCK];
    for ((values, out), valid) in values.chunks(BLOCK).zip(out.chunks_mut(BLOCK)).zip(valid.chunks_mut(BLOCK)) {
        map(answer, [values], &mut answers);
        for (((x, place), valid), answer) in values.iter().zip(out).zip(valid).zip(answers) {
            *valid = legal.holds(*x);
            *place = if *valid { answer } else { *place };
            failed = failed.wrapping_add(usize::from(!*valid));
        }
    }
    Ok(failed)
}

fn lengths(needed: usize, room: usize) -> Result<(), SensorError> {
    if needed == room {
        return Ok(());
    }
    Err(SensorError::Lengths { needed: needed as u64, room: room as u64 })
}

impl<F: Formula<P>, R: Real, const P: usize> Model<F, R, P> {
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
        into(self.legal_quantity(), quantity, out, Forward(*self))
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
        into_valid(self.legal_quantity(), quantity, out, valid, Forward(*self))
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
        into(self.legal_quantity(), quantity, out, Slope(*self))
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
        into_valid(self.legal_quantity(), quantity, out, valid, Slope(*self))
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
        into(self.legal_resistance(), resistance_ohm, out, Inverse(*self))
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
        into_valid(self.legal_resistance(), resistance_ohm, out, valid, Inverse(*self))
    }
}
