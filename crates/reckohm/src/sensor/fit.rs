//! Sensors from measured points: the parameters of their formula by least squares, with their covariance.
//!
//! The points are resistances in ohm against the quantity. An error of the quantity, each point's own and what all share (that
//! of the reference thermometer), enters by the slope of the formula; the shared part is in the covariance whole. The
//! model's domain is what the points span: who knows better asks for a wider one.

use core::marker::PhantomData;

use super::ZERO_CELSIUS_IN_KELVIN;
use super::b_value::BValueThermistor;
use super::error::SensorError;
use super::model::{Formula, Model, Thermometer};
use super::steinhart_hart::SteinhartHart;
use crate::fit::{Curve, Fit, Points, Start, curve, rough};
use crate::number::{RESISTANCE, Real, Scalar, THERMISTOR_TEMPERATURE};

/// Where the B-value begins if the points are all at one temperature, which the fit then refuses.
const COMMON_B_KELVIN: f64 = 4000.0;

/// A formula as a curve.
struct Forward<F>(PhantomData<F>);

impl<F: Formula<P>, const P: usize> Curve<P> for Forward<F> {
    fn at<S: Scalar>(&self, parameters: &[S; P], quantity: S) -> S {
        F::forward(parameters, quantity)
    }
}

impl<F: Formula<P>, R: Real, const P: usize> Model<F, R, P> {
    /// Fits the parameters of any formula, from a start that may hold some of them by equal bounds.
    ///
    /// Given: points of resistance in ohm against the quantity; the start; if wanted, room for the residuals in ohm. Returned:
    /// the sensor, whose domain is what the points span, and the fit with its covariance.
    ///
    /// Source: as of [`curve`](crate::fit::curve()).
    ///
    /// ```
    /// use reckohm::fit::{Points, Start};
    /// use reckohm::sensor::BValueThermistor;
    ///
    /// // The rated resistance alone, of a part whose B-value is known.
    /// let points = Points::new(&[20.0, 30.0], &[12_500.0, 8050.0])?.with_each_u_y(&[13.0, 8.0])?;
    /// let free = [0.0, f64::INFINITY];
    /// let bounds = [free, [25.0; 2], [3977.0; 2], [25.0; 2], [85.0; 2]];
    /// let start = Start::at([10_000.0, 25.0, 3977.0, 25.0, 85.0])?.with_bounds(bounds)?;
    /// let (thermistor, fit) = BValueThermistor::fit_from(&points, &start, None)?;
    /// assert_eq!((thermistor.b_kelvin(), thermistor.domain()), (3977.0, [20.0, 30.0]));
    /// assert!((thermistor.rated_ohm() - 10_003.0).abs() < 10.0 && fit.u()[2] == 0.0);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    ///
    /// # Errors
    /// [`SensorError::Fit`] if there is no fit; as of [`from_parameters`](Model::from_parameters) if what comes out is no
    /// sensor. Nothing is written without a fit.
    pub fn fit_from(
        points: &Points<'_, R>,
        start: &Start<R, P>,
        residuals: Option<&mut [R]>,
    ) -> Result<(Self, Fit<R, P>), SensorError> {
        let fit = curve(&Forward::<F>(PhantomData), points, start, residuals)?;
        let domain = points.ends().unwrap_or([R::ZERO; 2]);
        Ok((Model::from_parameters(fit.parameters(), domain)?, fit))
    }
}

impl<F: Thermometer<P>, R: Real, const P: usize> Model<F, R, P> {
    /// What the fit of this model leaves uncertain of a temperature that it reads, as a standard uncertainty in kelvin: the
    /// parameters alone, with all correlation between them, the resistance exact. Beside
    /// [`temperature_estimate`](Model::temperature_estimate), which is of the resistance and counts the parameters as exact, it
    /// is an independent part.
    ///
    /// Given: the resistance in ohm, within those at the ends of the domain; the fit that the model came with.
    ///
    /// Source: JCGM 100 5.2.2.
    ///
    /// ```
    /// use reckohm::fit::Points;
    /// use reckohm::sensor::SteinhartHart;
    ///
    /// let (temperature_c, ohm) = ([0.0, 25.0, 50.0], [32_128.0, 9814.0, 3542.0]);
    /// // 1.6 ohm, 0.43 ohm and 0.12 ohm are a millikelvin; the reference thermometer is known to 0.05 K.
    /// let points = Points::new(&temperature_c, &ohm)?.with_each_u_y(&[1.6, 0.43, 0.12])?.with_common_u_x(0.05)?;
    /// let (thermistor, fit) = SteinhartHart::<f64>::fit_three_terms(&points, 1.0, None)?;
    /// // No more is known of what the thermistor reads than of the thermometer that it was fitted by.
    /// assert!((thermistor.temperature_u_kelvin(9814.0, &fit)? - 0.05).abs() < 1e-4);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    ///
    /// # Errors
    /// [`SensorError::Domain`] for a resistance beyond those at the ends of the domain, NaN included.
    pub fn temperature_u_kelvin(&self, resistance_ohm: R, fit: &Fit<R, P>) -> Result<R, SensorError> {
        let ohm = self.legal_resistance().check(resistance_ohm)?;
        Ok(fit.u_of(&self.inverse_by_parameters(ohm)))
    }
}

impl<R: Real> BValueThermistor<R> {
    /// Fits the rated resistance and the B-value. The B-value belongs to the least and the largest temperature of the points.
    ///
    /// Given: points of zero-power resistance in ohm, in (0, 1e15], against the temperature in degrees Celsius, −200 to 1000;
    /// the temperature in degrees Celsius that the rated resistance is stated at; if wanted, room for the residuals in ohm.
    /// Resistances span decades: give u(y) of each, or weights that go as 1/R², unless the ohms of all points are alike sure.
    ///
    /// Source: IEC 60539-1 for the formula; as of [`curve`](crate::fit::curve()).
    ///
    /// ```
    /// use reckohm::fit::Points;
    /// use reckohm::sensor::BValueThermistor;
    ///
    /// let (temperature_c, ohm) = ([10.0, 20.0, 30.0, 40.0], [20_271.0, 12_555.0, 8025.0, 5279.0]);
    /// let u_ohm = ohm.map(|ohm| 0.001 * ohm);
    /// // The reference thermometer is known to 0.1 K, for all points alike.
    /// let points = Points::new(&temperature_c, &ohm)?.with_each_u_y(&u_ohm)?.with_common_u_x(0.1)?;
    /// let (thermistor, fit) = BValueThermistor::<f64>::fit(&points, 25.0, None)?;
    /// assert!((thermistor.rated_ohm() - 10_000.0).abs() < 5.0 && (thermistor.b_kelvin() - 3977.0).abs() < 10.0);
    /// // At 4.5 % a kelvin, 0.1 K is 45 ohm of the rated resistance.
    /// assert!((fit.u()[0] - 45.0).abs() < 2.0);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    ///
    /// # Errors
    /// [`SensorError::Range`] for a resistance or temperature outside; [`SensorError::Fit`] if there is no fit, such as of points
    /// at one temperature; as of [`new`](Self::new) if what comes out is no thermistor.
    pub fn fit(
        points: &Points<'_, R>,
        rated_temperature_c: R,
        residuals: Option<&mut [R]>,
    ) -> Result<(Self, Fit<R, 5>), SensorError> {
        THERMISTOR_TEMPERATURE.check(rated_temperature_c)?;
        legal(points)?;
        let rated = reciprocal(rated_temperature_c);
        let line = points.each().map(|(_, c, ohm, _)| ([R::ONE, reciprocal(*c) - rated], ohm.natural_log()));
        let flat = || {
            let first = points.each().map(|(_, _, ohm, _)| ohm).next().unwrap_or(R::ONE);
            [first.natural_log(), R::lit(COMMON_B_KELVIN)]
        };
        let [log_ohm, b_kelvin] = rough(line).unwrap_or_else(flat);
        let [lower, upper] = points.ends().unwrap_or([rated_temperature_c; 2]);
        let (free, held) = ([R::ZERO, R::INFINITE], [rated_temperature_c, lower, upper].map(|c| [c; 2]));
        let [rated_c, first_c, second_c] = held;
        let begin = [log_ohm.exponential(), rated_temperature_c, b_kelvin, lower, upper];
        let whole = [-R::INFINITE, R::INFINITE];
        let start = Start::at(begin)?.with_bounds([free, rated_c, whole, first_c, second_c])?;
        Model::fit_from(points, &start, residuals)
    }
}

impl<R: Real> SteinhartHart<R> {
    /// Fits the equation with three terms: 1/T = a + b·L + d·L³.
    ///
    /// Given: points of zero-power resistance in ohm, in (0, 1e15], against the temperature in degrees Celsius, −200 to 1000,
    /// three or more, and one more where u(y) is not given; the reference resistance in ohm that the logarithm is of the
    /// ratio to, 1 for ln R; if wanted, room for the residuals in ohm. As to u(y) and weights see
    /// [`BValueThermistor::fit`](super::BValueThermistor::fit).
    ///
    /// Source: Steinhart and Hart, Deep-Sea Research 15 (1968); as of [`curve`](crate::fit::curve()).
    ///
    /// ```
    /// use reckohm::fit::Points;
    /// use reckohm::sensor::SteinhartHart;
    ///
    /// let (temperature_c, ohm) = ([0.0, 25.0, 50.0], [32_128.0, 9814.0, 3542.0]);
    /// let points = Points::new(&temperature_c, &ohm)?.with_each_u_y(&[1.0, 0.5, 0.5])?;
    /// let (thermistor, fit) = SteinhartHart::<f64>::fit_three_terms(&points, 1.0, None)?;
    /// assert!((thermistor.temperature_c(19_549.0)? - 10.000_138).abs() < 1e-6);
    /// assert_eq!(fit.degrees_of_freedom(), 0);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    ///
    /// # Errors
    /// [`SensorError::Range`] for a resistance or temperature outside; [`SensorError::Fit`] if there is no fit; as of
    /// [`three_terms`](Self::three_terms) if what comes out is no thermistor.
    pub fn fit_three_terms(
        points: &Points<'_, R>,
        reference_ohm: R,
        residuals: Option<&mut [R]>,
    ) -> Result<(Self, Fit<R, 5>), SensorError> {
        let rows = logarithms(points, reference_ohm)?.map(|(l, y)| ([R::ONE, l, l * l * l], y));
        let begin = rough(rows).map(|[a, b, d]| [a, b, R::ZERO, d]);
        fit_terms(points, begin, true, reference_ohm, residuals)
    }

    /// Fits the equation with four terms: 1/T = a + b·L + c·L² + d·L³.
    ///
    /// Given: as of [`fit_three_terms`](Self::fit_three_terms), a point more.
    ///
    /// ```
    /// use reckohm::fit::Points;
    /// use reckohm::sensor::SteinhartHart;
    ///
    /// let part = SteinhartHart::<f64>::four_terms([3.354016e-3, 2.57e-4, 2.4e-6, 9.0e-8], 10_000.0, [-20.0, 80.0])?;
    /// let temperature_c = [-20.0, 0.0, 20.0, 40.0, 60.0, 80.0];
    /// let ohm = temperature_c.map(|c| part.resistance_ohm(c).unwrap_or(f64::NAN));
    /// let weights = ohm.map(|ohm| 1.0 / (ohm * ohm));
    /// let points = Points::new(&temperature_c, &ohm)?.with_weights(&weights)?;
    /// let (thermistor, _) = SteinhartHart::fit_four_terms(&points, 10_000.0, None)?;
    /// for (found, wanted) in thermistor.coefficients().into_iter().zip(part.coefficients()) {
    ///     assert!((found / wanted - 1.0).abs() < 1e-9);
    /// }
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    ///
    /// # Errors
    /// As of [`fit_three_terms`](Self::fit_three_terms).
    pub fn fit_four_terms(
        points: &Points<'_, R>,
        reference_ohm: R,
        residuals: Option<&mut [R]>,
    ) -> Result<(Self, Fit<R, 5>), SensorError> {
        let rows = logarithms(points, reference_ohm)?.map(|(l, y)| ([R::ONE, l, l * l, l * l * l], y));
        fit_terms(points, rough(rows), false, reference_ohm, residuals)
    }
}

/// The logarithm of the ratio to the reference resistance, and 1/T, of each point.
fn logarithms<R: Real>(points: &Points<'_, R>, reference_ohm: R) -> Result<impl Iterator<Item = (R, R)>, SensorError> {
    RESISTANCE.check(reference_ohm)?;
    legal(points)?;
    Ok(points.each().map(move |(_, c, ohm, _)| ((ohm / reference_ohm).natural_log(), reciprocal(*c))))
}

/// From the straight fit of 1/T, which weighs the points otherwise; from a curve of common steepness where that has none.
fn fit_terms<R: Real>(
    points: &Points<'_, R>,
    begin: Option<[R; 4]>,
    three: bool,
    reference_ohm: R,
    residuals: Option<&mut [R]>,
) -> Result<(SteinhartHart<R>, Fit<R, 5>), SensorError> {
    let common = [R::lit(1.0e-3), R::ONE / R::lit(COMMON_B_KELVIN), R::ZERO, R::ZERO];
    let [a, b, c, d] = begin.unwrap_or(common);
    let free = [-R::INFINITE, R::INFINITE];
    let of_square = if three { [c; 2] } else { free };
    let start = Start::at([a, b, c, d, reference_ohm])?;
    Model::fit_from(points, &start.with_bounds([free, free, of_square, free, [reference_ohm; 2]])?, residuals)
}

/// Whether all points are such as thermistors have.
fn legal<R: Real>(points: &Points<'_, R>) -> Result<(), SensorError> {
    for (_, temperature_c, ohm, _) in points.each() {
        THERMISTOR_TEMPERATURE.check(*temperature_c)?;
        RESISTANCE.check(ohm)?;
    }
    Ok(())
}

/// 1/T.
fn reciprocal<R: Real>(temperature_c: R) -> R {
    R::ONE / (temperature_c + R::lit(ZERO_CELSIUS_IN_KELVIN))
}
