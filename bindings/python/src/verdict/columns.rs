//! What `reckohm.verdict.judge` asks for arrays of numbers; `reckohm._verdicts` makes the arrays and keeps what comes out.

use pyo3::prelude::*;
use reckohm::verdict::{Answer, Column, Columns, Decision, Limits as CoreLimits, Rule as CoreRule, RuleKind, Side};
use reckohm_threads::in_parts;

use super::limits::Limits;
use super::rule::Rule;
use crate::errors::Failure;
use crate::formula::Real;
use crate::slices::Array;
use crate::values::wrong_type;

/// From so many elements on a second thread is worth it.
const LEAST_A_THREAD: usize = 1 << 16;

/// A column as `_verdicts` gives it: a float, or an array that lies in one piece.
enum Given<'py> {
    One(f64),
    Each(Array<'py>),
}

impl<'py> Given<'py> {
    fn of(value: &Bound<'py, PyAny>) -> PyResult<Given<'py>> {
        match Array::of(value)? {
            Some(array) => Ok(Given::Each(array)),
            None => Ok(Given::One(value.extract()?)),
        }
    }

    fn column<R: Real>(&self) -> PyResult<Column<'_, R>> {
        match self {
            Given::One(number) => Ok(Column::One(R::of_f64(*number))),
            Given::Each(array) => match array.slice::<R>() {
                Some(all) => Ok(Column::Each(all)),
                None => Err(wrong_type(array.object(), "an array in one piece")?),
            },
        }
    }
}

/// Writes the probability and the code of each decision: the answer's number, three more where the value itself is outside,
/// 0 (and NaN) where nothing can be judged. Gives how many those are.
#[pyfunction]
#[pyo3(name = "_judge_columns")]
pub(super) fn judge_columns<'py>(
    py: Python<'py>,
    columns: [Bound<'py, PyAny>; 4],
    limits: &Bound<'py, Limits>,
    rule: &Bound<'py, Rule>,
    probability: &Bound<'py, PyAny>,
    code: &Bound<'py, PyAny>,
) -> PyResult<usize> {
    let [value, u, dof, rectangular] = columns;
    let columns = [Given::of(&value)?, Given::of(&u)?, Given::of(&dof)?, Given::of(&rectangular)?];
    let (limits, rule) = (limits.get().0, rule.get().0);
    let Some(room) = Array::of(probability)? else {
        return Err(wrong_type(probability, "an array")?);
    };
    if room.holds::<f32>() {
        let limits = CoreLimits::new(limits.lower_ohm() as f32, limits.upper_ohm() as f32).map_err(Failure::from)?;
        let rule = match (rule.kind(), rule.risk().map(|risk| risk as f32)) {
            (RuleKind::Guarded, Some(risk)) => CoreRule::guarded(risk).map_err(Failure::from)?,
            (RuleKind::MaxRisk, Some(risk)) => CoreRule::max_risk(risk).map_err(Failure::from)?,
            _ => CoreRule::simple_acceptance(),
        };
        write::<f32>(py, &columns, &limits, rule, room, code)
    } else {
        write::<f64>(py, &columns, &limits, rule, room, code)
    }
}

fn write<R: Real>(
    py: Python<'_>,
    columns: &[Given<'_>; 4],
    limits: &CoreLimits<R>,
    rule: CoreRule<R>,
    mut room: Array<'_>,
    code: &Bound<'_, PyAny>,
) -> PyResult<usize> {
    let [value, u, dof, rectangular] = columns;
    let measured = Columns {
        value: value.column::<R>()?,
        u: u.column::<R>()?,
        dof: dof.column::<R>()?,
        rectangular: rectangular.column::<R>()?,
    };
    let Some(mut codes) = Array::of(code)? else { return Err(wrong_type(code, "an array")?) };
    // SAFETY: `_verdicts` has just made both, and nothing else sees them yet.
    let (Some(probability), Some(codes)) = (unsafe { (room.slice_mut::<R>(), codes.slice_mut::<u8>()) }) else {
        return Err(wrong_type(code, "a fresh array")?);
    };
    let count = probability.len().min(codes.len());
    let outs = (&mut probability[..count], &mut codes[..count]);
    Ok(py.detach(|| {
        in_parts(count, LEAST_A_THREAD, outs, |elements, outs| part(&measured.part(elements), limits, rule, outs))
    }))
}

/// One thread's part; gives how many elements cannot be judged.
fn part<R: Real>(
    measured: &Columns<'_, R>,
    limits: &CoreLimits<R>,
    rule: CoreRule<R>,
    (probability, codes): (&mut [R], &mut [u8]),
) -> usize {
    const STRETCH: usize = 512;
    let (mut decisions, mut valid) = ([Decision::UNMADE; STRETCH], [false; STRETCH]);
    let mut refused = 0;
    for (index, (probability, codes)) in probability.chunks_mut(STRETCH).zip(codes.chunks_mut(STRETCH)).enumerate() {
        let (start, many) = (index * STRETCH, probability.len());
        let (decisions, valid) = (&mut decisions[..many], &mut valid[..many]);
        let here = measured.part(start..start + many).answer_into_valid(limits, rule, decisions, valid);
        // Columns of another length than the results have nothing that could be judged.
        refused += here.unwrap_or_else(|_| {
            valid.fill(false);
            many
        });
        for (((probability, code), decision), valid) in probability.iter_mut().zip(codes).zip(decisions).zip(valid) {
            (*probability, *code) = if *valid {
                (decision.conformance_probability, code_of(decision.answer, decision.side))
            } else {
                (R::NAN, 0)
            };
        }
    }
    refused
}

fn code_of(answer: Answer, side: Side) -> u8 {
    answer as u8 + if side == Side::Outside { 3 } else { 0 }
}
