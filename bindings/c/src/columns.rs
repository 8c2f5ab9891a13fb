//! Many measurements as columns of numbers, judged at once.

use core::ops::Range;

use reckohm::verdict::{Column, Columns, Decision, Limits, Rule, answer, conformance_probability};

use crate::answer::{DoorError, Failure, Outcome};
use crate::array::Results;
use crate::detail::{rko_detail, rko_status};
use crate::limits::rko_limits;
use crate::parts::{Asked, Part, in_parts};
use crate::pointer::{item, items};
use crate::rule::rko_rule;
use crate::twins::twins;
use crate::verdict::rko_decision;

/// Of `one_for_all` in the functions on columns: `u` points to one number that holds for all elements.
pub const RKO_ONE_U: u32 = 1;
/// Of `one_for_all`: so does `dof`.
pub const RKO_ONE_DOF: u32 = 2;
/// Of `one_for_all`: so does `rectangular`.
pub const RKO_ONE_RECTANGULAR: u32 = 4;

/// The columns as a caller gives them.
struct Pointers<R> {
    value: *const R,
    u: *const R,
    dof: *const R,
    rectangular: *const R,
    one_for_all: u32,
}

impl<R: reckohm::number::Real> Pointers<R> {
    unsafe fn measured<'a>(self, count: usize) -> Outcome<Columns<'a, R>> {
        if self.one_for_all > (RKO_ONE_U | RKO_ONE_DOF | RKO_ONE_RECTANGULAR) {
            return Err(DoorError::UnknownCode { argument: 5, given: f64::from(self.one_for_all) }.into());
        }
        let column = |numbers: *const R, one: u32, none: R, argument: u16| -> Outcome<Column<'a, R>> {
            if numbers.is_null() {
                return Ok(Column::One(none));
            }
            // SAFETY: the caller promises one number, or `count`, behind each pointer that is not null.
            unsafe {
                if self.one_for_all & one != 0 {
                    Ok(Column::One(*item(numbers, argument)?))
                } else {
                    Ok(Column::Each(items(numbers, count, argument)?))
                }
            }
        };
        Ok(Columns {
            // SAFETY: as above.
            value: Column::Each(unsafe { items(self.value, count, 1)? }),
            u: column(self.u, RKO_ONE_U, R::ZERO, 2)?,
            dof: column(self.dof, RKO_ONE_DOF, R::INFINITE, 3)?,
            rectangular: column(self.rectangular, RKO_ONE_RECTANGULAR, R::ZERO, 4)?,
        })
    }
}

/// The core's columns, which are parts of what the caller gives memory for.
#[derive(Clone, Copy)]
struct Given<'a, R, S> {
    measured: Columns<'a, R>,
    shared: S,
}

impl<R: reckohm::number::Real, S: Copy + Sync> Part for Given<'_, R, S> {
    fn part(self, elements: Range<usize>) -> Self {
        Given { measured: self.measured.part(elements), ..self }
    }
}

/// From so many elements on a thread is worth it.
const LEAST: usize = 1 << 13;

twins! {
    /// The probability that the true value lies within the limits for each of `count` measurements in columns, as
    /// `rko_conformance_probability` has it for the estimate of one. It is by far the quickest way to many.
    ///
    /// Given: `value`, in ohm; `u`, standard uncertainties in ohm, null for none; `dof`, degrees of freedom of these, null or
    /// infinite for normal parts; `rectangular`, half-widths in ohm of one rectangular part each, a meter's accuracy clause
    /// say, null for none; `one_for_all`, a sum of `RKO_ONE_...`: which of the three point to one number for all; `limits`.
    /// Written: `probability`.
    /// Statuses: `RKO_OUT_OF_RANGE`, `RKO_NOT_FINITE`, `RKO_EMPTY`, `RKO_CONTRADICTION`, `RKO_RESULT_OUT_OF_RANGE`,
    /// `RKO_UNKNOWN_CODE`, `RKO_NULL_POINTER`.
    /// Source: JCGM 106 7.
    fn rko_columns_conformance_probability_n = rko_columns_conformance_probability_n_f32(
        value: *const f64,
        u: *const f64,
        dof: *const f64,
        rectangular: *const f64,
        one_for_all: u32,
        count: usize,
        limits: *const rko_limits,
        probability: *mut f64,
        valid: *mut u8,
        detail: *mut rko_detail,
    ) {
        probabilities(
            Pointers { value, u, dof, rectangular, one_for_all },
            || item(limits, 7)?.to_core(),
            Results { count, output: probability, position: 8, valid, detail },
        )
    }

    /// The decision on each of `count` measurements in columns, as `rko_judge_answer` has it for the estimate of one.
    ///
    /// Given: the columns as of `rko_columns_conformance_probability_n`; `limits` and `rule`, the same for all.
    /// Written: `decisions`.
    /// Statuses: `RKO_OUT_OF_RANGE`, `RKO_NOT_FINITE`, `RKO_EMPTY`, `RKO_CONTRADICTION`, `RKO_RESULT_OUT_OF_RANGE`,
    /// `RKO_UNKNOWN_CODE`, `RKO_NULL_POINTER`.
    /// Source: JCGM 106, ISO 14253-1.
    fn rko_columns_judge_answer_n = rko_columns_judge_answer_n_f32(
        value: *const f64,
        u: *const f64,
        dof: *const f64,
        rectangular: *const f64,
        one_for_all: u32,
        count: usize,
        limits: *const rko_limits,
        rule: *const rko_rule,
        decisions: *mut rko_decision,
        valid: *mut u8,
        detail: *mut rko_detail,
    ) {
        answers(
            Pointers { value, u, dof, rectangular, one_for_all },
            || Ok((item(limits, 7)?.to_core()?, item(rule, 8)?.to_core(8)?)),
            Results { count, output: decisions, position: 9, valid, detail },
        )
    }
}

unsafe fn probabilities<R: reckohm::number::Real>(
    pointers: Pointers<R>,
    limits: impl FnOnce() -> Outcome<Limits<R>>,
    results: Results<R>,
) -> rko_status {
    let count = results.count;
    // SAFETY: as the caller of this door promises.
    let inputs = || Ok(Given { measured: unsafe { pointers.measured(count)? }, shared: limits()? });
    let asked = Asked {
        check: |given: Given<'_, R, Limits<R>>| Ok(given.measured.check(length(&given.measured))?),
        whole: |given: Given<'_, R, Limits<R>>, output: &mut [R]| {
            Ok(given.measured.conformance_probability_into(&given.shared, output)?)
        },
        masked: |given: Given<'_, R, Limits<R>>, output: &mut [R], valid: &mut [bool]| {
            Ok(given.measured.conformance_probability_into_valid(&given.shared, output, valid)?)
        },
        one: |given: Given<'_, R, Limits<R>>, index: usize| {
            let estimate = given.measured.estimate(index).map_err(of_estimate)?;
            Ok(conformance_probability(&estimate, &given.shared))
        },
    };
    // SAFETY: as above.
    unsafe { in_parts(results, LEAST, inputs, asked) }
}

unsafe fn answers<R: reckohm::number::Real, D: From<Decision<R>> + Send>(
    pointers: Pointers<R>,
    agreed: impl FnOnce() -> Outcome<Agreed<R>>,
    results: Results<D>,
) -> rko_status {
    let count = results.count;
    // SAFETY: as the caller of this door promises.
    let inputs = || Ok(Given { measured: unsafe { pointers.measured(count)? }, shared: agreed()? });
    let asked = Asked {
        check: |given: Given<'_, R, Agreed<R>>| Ok(given.measured.check(length(&given.measured))?),
        whole: |given: Given<'_, R, Agreed<R>>, output: &mut [D]| {
            given.measured.check(output.len())?;
            decided(given, output, &mut []).map(|_| ())
        },
        masked: decided,
        one: |given: Given<'_, R, Agreed<R>>, index: usize| {
            let estimate = given.measured.estimate(index).map_err(of_estimate)?;
            let (limits, rule) = given.shared;
            Ok(answer(&estimate, &limits, rule).into())
        },
    };
    // SAFETY: as above.
    unsafe { in_parts(results, LEAST, inputs, asked) }
}

type Agreed<R> = (Limits<R>, Rule<R>);

/// Decisions as this door's structs, stretch by stretch, with a mask if there is one.
fn decided<R: reckohm::number::Real, D: From<Decision<R>>>(
    given: Given<'_, R, Agreed<R>>,
    output: &mut [D],
    valid: &mut [bool],
) -> Outcome<usize> {
    const STRETCH: usize = 256;
    let (limits, rule) = given.shared;
    let (mut start, mut refused) = (0_usize, 0_usize);
    let mut marks = valid.iter_mut();
    for output in output.chunks_mut(STRETCH) {
        let (mut decisions, mut good) = ([Decision::UNMADE; STRETCH], [false; STRETCH]);
        let end = start.wrapping_add(output.len());
        let (Some(decisions), Some(good)) = (decisions.get_mut(..output.len()), good.get_mut(..output.len())) else {
            break;
        };
        let measured = given.measured.part(start..end);
        refused = refused.wrapping_add(measured.answer_into_valid(&limits, rule, decisions, good)?);
        for ((place, decision), good) in output.iter_mut().zip(decisions).zip(good) {
            if *good {
                *place = D::from(*decision);
            }
            if let Some(mark) = marks.next() {
                *mark = *good;
            }
        }
        start = end;
    }
    Ok(refused)
}

/// How many measurements these columns have: there is a value for each.
fn length<R>(measured: &Columns<'_, R>) -> usize {
    match measured.value {
        Column::Each(values) => values.len(),
        Column::One(_) => 0,
    }
}

/// What is wrong with one of an array of measurements, as an area says it that names elements.
fn of_estimate(error: reckohm::uncertainty::EstimateError) -> Failure {
    reckohm::verdict::VerdictError::from(error).into()
}
