//! Fits of curves that are not linear in their parameters.

use super::curve::{Curve, Fitted};
use super::error::{FitError, List};
use super::fitted::{End, Fit};
use super::points::Points;
use super::search::Search;
use super::start::Start;
use crate::number::Real;
use crate::number::pair::Pair;

/// Fits the parameters of a curve by least squares, by Levenberg and Marquardt's method with exact slopes.
///
/// Given: the curve, the points, where to begin; if wanted, room for the residuals, y less the fitted value at the x given,
/// in the unit of y. Returned: the parameters with their covariance. Where x is uncertain as well, the distances of the points
/// from the curve are fitted, in units of the standard uncertainties of both.
///
/// It finds the minimum that its start leads to: begin near where there are several. The covariance is that of the
/// curve's tangent at the minimum (JCGM 100 H.3), good where the curve is nearly straight within the uncertainties.
///
/// Source: Moré, Lecture Notes in Mathematics 630 (1978); for uncertain x Britt and Luecke, Technometrics 15 (1973).
///
/// # Errors
/// [`FitError::TooFewPoints`], [`FitError::MissingUncertaintyOfY`], [`FitError::Lengths`] for the room;
/// [`FitError::ModelNotFinite`] where it begins; [`FitError::Undetermined`] if the points do not tell the parameters apart;
/// [`FitError::NotSettled`] after the most steps allowed; [`FitError::TooLarge`]. Nothing is written then.
///
/// ```
/// use reckohm::fit::{Curve, Points, Start, Stop, curve};
/// use reckohm::number::Scalar;
///
/// /// A thermistor: the logarithm of its resistance against the temperature.
/// struct LogOfThermistor;
///
/// impl Curve<2> for LogOfThermistor {
///     fn at<S: Scalar>(&self, [at_25_c, b_kelvin]: &[S; 2], temperature_c: S) -> S {
///         let (one, zero) = (S::lit(1.0), S::lit(273.15));
///         *at_25_c + *b_kelvin * (one / (temperature_c + zero) - one / S::lit(298.15))
///     }
/// }
///
/// let temperature_c = [0.0, 25.0, 50.0];
/// let log_ohm = [32_128.0_f64, 9814.0, 3542.0].map(f64::ln);
/// let points = Points::new(&temperature_c, &log_ohm)?.with_u_y(1e-3)?.with_common_u_x(0.1)?;
/// let mut residuals = [0.0; 3];
/// let fit = curve(&LogOfThermistor, &points, &Start::at([9.0, 4000.0])?, Some(&mut residuals))?;
/// assert_eq!(fit.stop(), Stop::Settled);
/// // No one B-value fits all three: off by 3 per mille, of which u(y) allows one.
/// assert!((fit.parameters()[1] - 3894.0).abs() < 20.0);
/// assert!(residuals[0].abs() > 2e-3);
/// # Ok::<(), reckohm::fit::FitError>(())
/// ```
pub fn curve<C: Curve<P>, R: Real, const P: usize>(
    model: &C,
    points: &Points<'_, R>,
    start: &Start<R, P>,
    residuals: Option<&mut [R]>,
) -> Result<Fit<R, P>, FitError> {
    search(model, points, start, residuals, |parameters| parameters)
}

/// The same with the parameters mapped to others, linearly.
pub(super) fn search<C: Curve<P>, R: Real, const P: usize>(
    model: &C,
    points: &Points<'_, R>,
    start: &Start<R, P>,
    residuals: Option<&mut [R]>,
    map: impl Fn([Pair<R>; P]) -> [Pair<R>; P],
) -> Result<Fit<R, P>, FitError> {
    let free = start.bounds().iter().filter(|[lower, upper]| lower != upper).count();
    points.enough_for(free)?;
    if let Some(room) = &residuals {
        points.along(List::Residuals, room.len())?;
    }
    let fitted = Fitted { model, points };
    let found = Search { fitted: &fitted, start }.run()?;
    let end = End {
        parameters: found.parameters.map(Pair::of),
        triangle: found.triangle,
        held: found.held,
        points: points.count(),
        scatter_is_known: points.scatter_is_known(),
        stop: found.stop,
        steps: found.steps,
    };
    let fit = end.fit(map)?;
    if let Some(room) = residuals {
        fitted.residuals_into(&found.parameters, room);
    }
    Ok(fit)
}
