//! The search for the parameters of a curve: Levenberg and Marquardt's step, bounded as Moré does, and finished by Gauss and
//! Newton's on the triangle.
//!
//! Source: Moré, The Levenberg-Marquardt algorithm: implementation and theory, Lecture Notes in Mathematics 630 (1978). Ours
//! are the bounds of the parameters, by projection, and the end: the sum of squares tells a minimum only to half the digits, so
//! near it the part of the residuals that the parameters could still explain has to shrink instead, which is 0 there
//! (the relative offset of Bates and Watts, Technometrics 23, 1981).

use super::curve::{Curve, Fitted};
use super::error::FitError;
use super::fitted::{RESIDUALS, SIDES, Stop};
use super::start::Start;
use super::triangle::Triangle;
use crate::number::pair::Pair;
use crate::number::{Real, by_type};

/// A fit has settled when its parameters could explain no more than this part of the residuals: in single precision, some
/// 256 units of their last digit.
const SETTLED: f64 = 1.0e-6;
const SETTLED_SINGLE: f64 = 3.0e-5;
/// So many units of the last digit of the residuals are not worth another step.
const ENOUGH: f64 = 64.0;
/// A step of the end game has to leave less than this part of what was left.
const SHRINKS: f64 = 0.95;
/// From here on the end game is played, unless rounding asks for it sooner.
const NEAR: f64 = 1.0e-4;
/// So many units of the last digit of the points is what rounding of the model makes.
const ROUNDING: f64 = 8.0;
/// The least part of the promised gain for which a step is taken.
const TAKEN: f64 = 1.0e-4;
/// The most trials of one damping; the bound of the step has then been met to a tenth.
const DAMPINGS: usize = 12;

/// Where a search is.
#[derive(Clone, Copy)]
struct Here<R, const P: usize> {
    parameters: [R; P],
    /// The linear problem here, of all parameters.
    whole: Triangle<R, P, SIDES>,
    /// Those that are at a bound and pushed against it.
    held: [bool; P],
    /// The linear problem of the others.
    free: Triangle<R, P, SIDES>,
    /// The root of the sum of squares of the residuals.
    size: R,
    /// The part of it that the free parameters could still explain, linearly.
    left: R,
    /// What rounding of the model's values makes of it.
    rounding: R,
}

/// Where a search ended.
pub(super) struct Found<R, const P: usize> {
    pub(super) parameters: [R; P],
    pub(super) triangle: Triangle<R, P, SIDES>,
    pub(super) held: [bool; P],
    pub(super) stop: Stop,
    pub(super) steps: usize,
}

pub(super) struct Search<'s, 'm, 'a, C, R, const P: usize> {
    pub(super) fitted: &'s Fitted<'m, 'a, C, R, P>,
    pub(super) start: &'s Start<R, P>,
}

impl<C: Curve<P>, R: Real, const P: usize> Search<'_, '_, '_, C, R, P> {
    pub(super) fn run(&self) -> Result<Found<R, P>, FitError> {
        let begin = self.here(self.start.parameters());
        let mut here = begin.map_err(|(index, x)| FitError::ModelNotFinite { index: index as u64, x: x.to_f64() })?;
        let mut scales = [R::ZERO; P];
        let mut bound = R::INFINITE;
        let mut steps = 0;
        while here.size > here.rounding && here.left > near(&here) {
            for (scale, length) in scales.iter_mut().zip(here.whole.column_lengths()) {
                *scale = scale.larger(length);
            }
            // The first step is no longer than the start itself: a longer one is lost where the certified data set MGH10 begins.
            if steps == 0 {
                let size = length(here.parameters.map(Pair::of), scales);
                bound = if size > R::ZERO { size } else { R::ONE };
            }
            match self.step(&here, scales, &mut bound, &mut steps)? {
                Some(next) => here = next,
                // The sum of squares cannot be told from a smaller one any more.
                None => break,
            }
        }
        self.finish(here, steps)
    }

    fn here(&self, parameters: [R; P]) -> Result<Here<R, P>, (usize, R)> {
        let (whole, size_of_points) = self.fitted.triangle(&parameters)?;
        // Uphill of the explained part is downhill of the sum of squares.
        let downhill = whole.transposed_times(whole.side(RESIDUALS));
        let mut held = [false; P];
        let sides = parameters.iter().zip(self.start.bounds()).zip(downhill);
        for (held, ((parameter, [lower, upper]), downhill)) in held.iter_mut().zip(sides) {
            let downhill = downhill.value();
            *held = (*parameter <= lower && downhill <= R::ZERO) || (*parameter >= upper && downhill >= R::ZERO);
            *held |= lower == upper;
        }
        let free = whole.holding(held);
        let size = (whole.explained(RESIDUALS) + whole.left_over(RESIDUALS)).square_root().value();
        let left = free.explained(RESIDUALS).square_root().value();
        let rounding = R::lit(ROUNDING) * R::SPACING_AT_ONE * size_of_points;
        Ok(Here { parameters, whole, held, free, size, left, rounding })
    }

    /// The next place with a smaller sum of squares, the bound of the step adapted; none where the step has shrunk to
    /// nothing.
    fn step(
        &self,
        here: &Here<R, P>,
        scales: [R; P],
        bound: &mut R,
        steps: &mut usize,
    ) -> Result<Option<Here<R, P>>, FitError> {
        let size = length(here.parameters.map(Pair::of), scales);
        loop {
            if *steps >= self.start.most_steps() {
                return Err(self.not_settled(here, *steps));
            }
            *steps += 1;
            let step = bounded(&here.free, scales, *bound);
            let parameters = self.within_bounds(here.parameters, step, R::ONE);
            let moved = difference(parameters, here.parameters);
            let moved_by = length(moved, scales);
            let before = here.whole.explained(RESIDUALS);
            let promised = (before - here.whole.missed(moved)).value();
            let gained = match self.fitted.sum_of_squares(&parameters) {
                Some(after) => (before + here.whole.left_over(RESIDUALS) - after).value(),
                None => -R::INFINITE,
            };
            let good = promised > R::ZERO && gained >= R::lit(0.75) * promised;
            let poor = !(promised > R::ZERO && gained >= R::lit(0.25) * promised);
            if poor {
                *bound = R::lit(0.25) * bound.smaller(moved_by);
            } else if good {
                *bound = bound.larger(R::lit(2.0) * moved_by);
            }
            if promised > R::ZERO && gained >= R::lit(TAKEN) * promised {
                if let Ok(next) = self.here(parameters) {
                    return Ok(Some(next));
                }
                *bound = R::lit(0.25) * bound.smaller(moved_by);
            }
            if *bound <= R::SPACING_AT_ONE * size || *bound == R::ZERO {
                return Ok(None);
            }
        }
    }

    /// Gauss and Newton's steps for as long as each leaves less to explain than the one before.
    fn finish(&self, begin: Here<R, P>, steps: usize) -> Result<Found<R, P>, FitError> {
        let (mut here, mut steps) = (begin, steps);
        while steps < self.start.most_steps() {
            if let Some(parameter) = here.free.first_dependent() {
                return Err(FitError::Undetermined { parameter: parameter as u64 });
            }
            if here.left <= R::lit(ENOUGH) * R::SPACING_AT_ONE * here.size {
                break;
            }
            let step = here.free.solve(here.free.side(RESIDUALS));
            let shorter = [1.0, 0.5, 0.25].into_iter().find_map(|part| {
                let parameters = self.within_bounds(here.parameters, step, R::lit(part));
                let next = self.here(parameters).ok()?;
                (next.left < R::lit(SHRINKS) * here.left).then_some(next)
            });
            let Some(next) = shorter else { break };
            here = next;
            steps += 1;
        }
        let stop = if here.size <= here.rounding {
            Stop::Exact
        } else if here.left <= settled::<R>() * here.size {
            Stop::Settled
        } else if here.left <= here.rounding {
            Stop::Rounding
        } else {
            return Err(self.not_settled(&here, steps));
        };
        Ok(Found { parameters: here.parameters, triangle: here.free, held: here.held, stop, steps })
    }

    fn not_settled(&self, here: &Here<R, P>, steps: usize) -> FitError {
        let left = (here.left / here.size).to_f64();
        FitError::NotSettled { steps: steps as u64, left, allowed: settled::<R>().to_f64() }
    }

    /// The parameters after this part of a step, taken to the bounds where it leads beyond them.
    fn within_bounds(&self, mut parameters: [R; P], step: [Pair<R>; P], part: R) -> [R; P] {
        for ((parameter, step), [lower, upper]) in parameters.iter_mut().zip(step).zip(self.start.bounds()) {
            let moved = *parameter + part * step.value();
            *parameter = moved.larger(lower).smaller(upper);
        }
        parameters
    }
}

/// How much may be left where the end game begins: the sum of squares shows the square of it, which has to be above the
/// rounding of that sum.
fn near<R: Real, const P: usize>(here: &Here<R, P>) -> R {
    let visible = R::lit(2.0) * (here.rounding / here.size).square_root();
    R::lit(NEAR).larger(visible) * here.size
}

fn settled<R: Real>() -> R {
    by_type(SETTLED_SINGLE, SETTLED)
}

fn difference<R: Real, const P: usize>(a: [R; P], b: [R; P]) -> [Pair<R>; P] {
    let mut difference = a.map(Pair::of);
    for (a, b) in difference.iter_mut().zip(b) {
        *a = *a - Pair::of(b);
    }
    difference
}

/// The length of a vector on axes scaled so.
fn length<R: Real, const P: usize>(vector: [Pair<R>; P], scales: [R; P]) -> R {
    let squares = vector.into_iter().zip(scales).map(|(x, scale)| (x * Pair::of(scale)).squared());
    squares.fold(Pair::ZERO, |sum, x| sum + x).square_root().value()
}

/// The step that explains the most while it is no longer than the bound, to a tenth: damped until it is (Moré 1978, 5).
fn bounded<R: Real, const P: usize>(free: &Triangle<R, P, SIDES>, scales: [R; P], bound: R) -> [Pair<R>; P] {
    let wanted = free.side(RESIDUALS);
    // The damping lies between these: at the upper one the step is short enough for certain.
    let uphill = free.transposed_times(wanted);
    let steepest = uphill.into_iter().zip(scales).map(|(g, scale)| {
        let scale = if scale > R::ZERO { scale } else { R::ONE };
        (g / Pair::of(scale)).squared()
    });
    let (mut lower, mut upper) = (R::ZERO, steepest.fold(Pair::ZERO, |sum, x| sum + x).square_root().value() / bound);
    let mut damping = R::ZERO;
    if free.first_dependent().is_some() {
        damping = R::lit(1e-3) * upper;
    }
    let mut step = [Pair::ZERO; P];
    for _ in 0..DAMPINGS {
        let damped = damped(free, scales, damping);
        step = damped.solve(damped.side(RESIDUALS));
        let long = length(step, scales);
        let excess = long - bound;
        let fits = excess <= R::lit(0.1) * bound && (damping == R::ZERO || excess >= -R::lit(0.1) * bound);
        // A step of 0, or one that is not finite, is none that damping could mend.
        if fits || !long.finite() || long == R::ZERO {
            break;
        }
        if excess > R::ZERO {
            lower = lower.larger(damping);
        } else {
            upper = upper.smaller(damping);
        }
        // Newton's step for the reciprocal of the length.
        let mut unit = step;
        for (x, scale) in unit.iter_mut().zip(scales) {
            *x = *x * Pair::of(scale).squared() / Pair::of(long);
        }
        let slope = damped.solve_transposed(unit).into_iter().fold(Pair::ZERO, |sum, x| sum + x.squared()).value();
        damping += (excess / bound) / slope;
        if !(damping > lower && damping < upper) {
            damping = (R::lit(1e-3) * upper).larger((lower * upper).square_root());
        }
    }
    step
}

/// The linear problem with the squares of the scaled step added, so many times.
fn damped<R: Real, const P: usize>(free: &Triangle<R, P, SIDES>, scales: [R; P], damping: R) -> Triangle<R, P, SIDES> {
    let mut damped = *free;
    if damping > R::ZERO {
        let root = damping.square_root();
        for (place, scale) in scales.into_iter().enumerate() {
            damped.take_unit(place, root * if scale > R::ZERO { scale } else { R::ONE });
        }
    }
    damped
}
