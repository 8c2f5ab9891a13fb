//! From readings on one span to a measurement.

use super::advice::{self, Advice};
use super::budget::{Budget, Contribution, Term, of_terms};
use super::error::MeasurementError;
use super::model::{Inputs, with_sensitivities};
use super::setup::Setup;
use crate::meter::{Reading, Span};
use crate::number::elementary::sqrt;
use crate::uncertainty::{Estimate, EstimateError, spread};

/// Equal readings are not free of scatter: a reading's standard deviation is at least this part of the display's step,
/// about that of a rounding error (1/√12 = 0.289). One of the two stated exceptions to "no number that changes a
/// measurement"; [`Measurement::scatter_at_floor`] says when it was used.
const SCATTER_FLOOR: f64 = 0.3;

/// A measured part: the estimate, the budget behind it, and what would make it better.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Measurement {
    pub(super) estimate: Estimate,
    pub(super) budget: Budget,
    pub(super) advice: [Option<Advice>; advice::MOST],
    pub(super) readings: usize,
    pub(super) scatter_at_floor: bool,
}

impl Measurement {
    /// The resistance, ohm, with the shape of its uncertainty.
    pub fn estimate(&self) -> &Estimate {
        &self.estimate
    }

    /// The budget.
    pub fn budget(&self) -> &Budget {
        &self.budget
    }

    /// What dominates, and what would help, the most useful first.
    pub fn advice(&self) -> impl Iterator<Item = &Advice> {
        self.advice.iter().flatten()
    }

    /// How many readings it was made from.
    pub fn readings(&self) -> usize {
        self.readings
    }

    /// Whether the readings agreed so well that their scatter was taken as 0.3 of the display's step each.
    pub fn scatter_at_floor(&self) -> bool {
        self.scatter_at_floor
    }
}

/// Evaluates readings of one part on one span: their mean, less the leads, less a parallel path, at the reference
/// temperature, with the uncertainty of each (JCGM 100).
///
/// - The accuracy clause is one rectangular part (or a normal one, where the maker states a coverage factor). It is
///   common to all readings, so more readings do not make it smaller.
/// - The scatter of n readings is a type A part with n - 1 degrees of freedom. One reading alone has none: its scatter is
///   unknown, and the advice says so, unless a repeatability is set.
/// - Leads that were read on the same span share the meter's gain error, so only the difference carries it.
///
/// ```
/// use reckohm::measurement::{Setup, evaluate};
/// use reckohm::meter::Meter;
/// let meter = Meter::example_hand_held();
/// let span = &meter.spans()[2]; // 20 kilohm
/// let readings = [span.read(b"4.66")?, span.read(b"4.67")?, span.read(b"4.66")?];
/// let measured = evaluate(span, &readings, &Setup::new())?;
/// assert!((measured.estimate().value() - 4663.333).abs() < 0.001);
/// let dominant = measured.budget().dominant().map(|row| row.contribution.name());
/// assert_eq!(dominant, Some("accuracy clause of the meter"));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # Errors
/// No reading; a reading beyond the span, with its index; leads beyond the span; a parallel path at or below what is
/// shown; a temperature without a coefficient or the other way round; a meter outside its temperature band whose
/// clause has no coefficient; a result that does not fit the number type.
pub fn evaluate(span: &Span, readings: &[Reading], setup: &Setup<'_>) -> Result<Measurement, MeasurementError> {
    evaluate_from(span, readings.iter().copied(), setup)
}

/// [`evaluate`] for readings that do not lie in a slice. They are gone through several times.
///
/// ```
/// use reckohm::measurement::{Setup, evaluate, evaluate_from};
/// use reckohm::meter::Meter;
/// let span = &Meter::example_hand_held().spans()[2]; // 20 kilohm
/// let readings = [span.read(b"4.66")?, span.read(b"4.67")?];
/// let from = evaluate_from(span, readings.into_iter(), &Setup::new())?;
/// assert_eq!(from, evaluate(span, &readings, &Setup::new())?);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # Errors
/// As [`evaluate`].
pub fn evaluate_from(
    span: &Span,
    readings: impl Iterator<Item = Reading> + Clone,
    setup: &Setup<'_>,
) -> Result<Measurement, MeasurementError> {
    let scatter = Scatter::of(span, readings, setup)?;
    let (inputs, inputs_u) = inputs(span, &scatter, setup)?;
    let (value, sensitivities) = with_sensitivities(&inputs);
    let terms = weigh(&inputs_u, sensitivities);
    let estimate = combine(value, &terms)?;
    let budget = of_terms(&terms, &estimate, setup.coverage_probability)?;
    let advice = advice::advise(span, &scatter, setup, &terms, &budget)?;
    Ok(Measurement { estimate, budget, advice, readings: scatter.count, scatter_at_floor: scatter.at_floor })
}

/// The readings of the part: mean, spread and number.
#[derive(Clone, Copy, Debug)]
pub(super) struct Scatter {
    pub(super) mean: f64,
    /// Standard deviation of a single reading; 0 where it is unknown.
    pub(super) single: f64,
    /// Degrees of freedom of `single`; infinite where it is known from before, 0 where it is unknown.
    pub(super) dof: f64,
    pub(super) count: usize,
    pub(super) at_floor: bool,
}

impl Scatter {
    fn of(
        span: &Span,
        readings: impl Iterator<Item = Reading> + Clone,
        setup: &Setup<'_>,
    ) -> Result<Scatter, MeasurementError> {
        if let Some(index) = readings.clone().position(|reading| reading.over()) {
            return Err(MeasurementError::OverRange { index });
        }
        let (mean, observed, count) = spread(readings.map(|reading| reading.ohm()));
        if count == 0 {
            return Err(MeasurementError::NoReading);
        }
        if let Some(single) = setup.repeatability_ohm {
            return Ok(Scatter { mean, single, dof: f64::INFINITY, count, at_floor: false });
        }
        if count == 1 {
            return Ok(Scatter { mean, single: 0.0, dof: 0.0, count, at_floor: false });
        }
        let floor = SCATTER_FLOOR * span.step_ohm();
        let at_floor = observed < floor;
        Ok(Scatter { mean, single: if at_floor { floor } else { observed }, dof: count as f64 - 1.0, count, at_floor })
    }

    /// The mean with its scatter, as if it came from `count` readings.
    pub(super) fn of_mean(&self, count: usize) -> Result<Estimate, EstimateError> {
        let s = self.single / sqrt(count as f64);
        let mean = Estimate::exact(self.mean)?;
        if self.dof.is_infinite() {
            mean.with_normal(s)
        } else if self.dof == 0.0 {
            Ok(mean)
        } else {
            mean.with_type_a(s, count as f64 - 1.0)
        }
    }
}

/// The inputs of the model as numbers, and as estimates with the contribution that each stands for.
type InputsWithU = (Inputs<f64>, [Option<(Contribution, Estimate)>; 8]);

fn inputs(span: &Span, scatter: &Scatter, setup: &Setup<'_>) -> Result<InputsWithU, MeasurementError> {
    let (leads, clause) = leads_and_clause(span, scatter.mean, setup)?;
    let step = if span.clause().step_included() { 0.0 } else { 0.5 * span.step_ohm() };
    let path = match setup.path_ohm {
        None => None,
        Some(path) => {
            let remaining = scatter.mean - leads.value();
            if remaining >= path.value() {
                return Err(MeasurementError::PathContradiction { shown_ohm: remaining, path_ohm: path.value() });
            }
            // d(1/R) = -dR/R²
            let per_ohm = -1.0 / (path.value() * path.value());
            let conductance = path.times(per_ohm)?;
            Some(conductance.at(1.0 / path.value())?)
        }
    };
    let (known, within, warmer) = temperature(setup)?;
    let value = |input: &Option<Estimate>| input.map_or(0.0, |estimate| estimate.value());
    let numbers = Inputs {
        shown: scatter.mean,
        meter: 0.0,
        step: 0.0,
        leads: leads.value(),
        path: value(&path),
        coefficient: value(&known),
        coefficient_within: 0.0,
        warmer: value(&warmer),
    };
    let factor = 1.0 + numbers.coefficient * numbers.warmer;
    if factor <= 0.0 {
        return Err(MeasurementError::CorrectionTooLarge { factor });
    }
    let of = |contribution, input: Option<Estimate>| input.map(|estimate| (contribution, estimate));
    let repeats = (scatter.dof != 0.0).then(|| scatter.of_mean(scatter.count)).transpose()?;
    let rounding = (step > 0.0).then(|| Estimate::exact(0.0)?.with_rectangular(step)).transpose()?;
    let estimates = [
        of(Contribution::Scatter, repeats),
        of(Contribution::AccuracyClause, Some(clause)),
        of(Contribution::DisplayStep, rounding),
        of(Contribution::Leads, setup.leads.is_some().then_some(leads)),
        of(Contribution::ParallelPath, path),
        of(Contribution::KnownCoefficient, known),
        of(Contribution::CoefficientLimit, within),
        of(Contribution::Temperature, warmer),
    ];
    Ok((numbers, estimates))
}

/// The leads with what is theirs alone, and the meter's error in the difference of both readings.
///
/// On one span the gain part of the clause is common to both readings, so it counts for their difference only. The fixed
/// part (counts and part of span) cancels if the caller says that it is common, adds as two independent ones otherwise.
fn leads_and_clause(span: &Span, shown: f64, setup: &Setup<'_>) -> Result<(Estimate, Estimate), MeasurementError> {
    let at = |span: &Span, ohm: f64| span.clause_half_width_ohm(ohm, setup.meter_temperature_c);
    let Some(leads) = setup.leads else {
        return Ok((Estimate::exact(0.0)?, clause_part(span, at(span, shown)?)?));
    };
    let ohm = leads.ohm();
    let own = Estimate::exact(ohm)?.with_rectangular(leads.half_width_ohm())?;
    let Some(leads_span) = leads.span() else {
        return Ok((own, clause_part(span, at(span, shown)?)?));
    };
    let step = if leads_span.clause().step_included() { 0.0 } else { 0.5 * leads_span.step_ohm() };
    let own = own.with_rectangular(step)?;
    if leads_span != span {
        let clause = clause_part(leads_span, at(leads_span, ohm)?)?;
        let [half_width, _] = clause.rectangular();
        let own = own.with_rectangular(half_width)?.with_normal(clause.normal_u())?;
        return Ok((own, clause_part(span, at(span, shown)?)?));
    }
    let fixed = at(span, 0.0)?;
    let gain = at(span, (shown - ohm).abs())? - fixed;
    let fixed = if setup.zero_error_common == Some(true) { 0.0 } else { fixed * sqrt(2.0) };
    Ok((own, clause_part(span, gain + fixed)?))
}

/// The meter's error as its clause means it.
pub(super) fn clause_part(span: &Span, half_width: f64) -> Result<Estimate, EstimateError> {
    span.clause().added_to(Estimate::exact(0.0)?, half_width)
}

/// Known coefficient, coefficient within its limit (both 1/K), and temperature above the reference.
type OfTemperature = (Option<Estimate>, Option<Estimate>, Option<Estimate>);

fn temperature(setup: &Setup<'_>) -> Result<OfTemperature, MeasurementError> {
    const PER_MILLION: f64 = 1e-6;
    let wanted = setup.known_tcr.is_some() || setup.tcr_limit.is_some();
    let Some((temperature, reference)) = setup.temperature else {
        return if wanted { Err(MeasurementError::TemperatureMissing) } else { Ok((None, None, None)) };
    };
    if !wanted {
        return Err(MeasurementError::CoefficientMissing);
    }
    let known = setup.known_tcr.map(|tcr| tcr.times(PER_MILLION)).transpose()?;
    let within =
        setup.tcr_limit.map(|limit| Estimate::exact(0.0)?.with_rectangular(limit * PER_MILLION)).transpose()?;
    let warmer = temperature.at(temperature.value() - reference)?;
    Ok((known, within, Some(warmer)))
}

/// Each input with its sensitivity.
fn weigh(inputs: &[Option<(Contribution, Estimate)>; 8], sensitivities: [f64; 8]) -> [Option<Term>; 8] {
    let mut sensitivities = sensitivities.into_iter();
    inputs.map(|input| {
        let sensitivity = sensitivities.next().unwrap_or(0.0);
        input.map(|(contribution, input)| Term { contribution, input, sensitivity })
    })
}

/// The result with the parts of all terms, in the order of the rows.
pub(super) fn combine(value: f64, terms: &[Option<Term>; 8]) -> Result<Estimate, EstimateError> {
    terms.iter().flatten().try_fold(Estimate::exact(value)?, |result, term| term.add_to(result))
}
