//! The words of codes and structs, for tables and logs. Only in libraries built for hosts.

use core::ffi::c_char;
use core::fmt::Display;

use reckohm::marking::Doubt;
use reckohm::measurement::{Advice, AdviceKind, Contribution, Distribution};
use reckohm::verdict::{Answer, NextStep, Side, Verdict};

use crate::answer::{Outcome, answer, code};
use crate::detail::{rko_detail, rko_status};
use crate::marking::rko_marking;
use crate::measurement::rko_advice;
use crate::pointer::item;
use crate::text::write_text;
use crate::verdict::{RKO_VERDICT_HAS_ACCEPTANCE, RKO_VERDICT_HAS_GUARD_BAND, RKO_VERDICT_HAS_TUR, rko_verdict};

const ADVICE: [AdviceKind; 9] = [
    AdviceKind::Dominates,
    AdviceKind::ScatterUnknown,
    AdviceKind::MoreReadings,
    AdviceKind::OtherSpan,
    AdviceKind::LeadsNotTakenOff,
    AdviceKind::FourWire,
    AdviceKind::Substitution,
    AdviceKind::DisconnectPath,
    AdviceKind::NearerReference,
];
const DISTRIBUTIONS: [Distribution; 4] =
    [Distribution::Normal, Distribution::Rectangular, Distribution::StudentT, Distribution::Combined];
const ANSWERS: [Answer; 3] = [Answer::Conforms, Answer::DoesNotConform, Answer::Undecided];
const SIDES: [Side; 2] = [Side::Inside, Side::Outside];
const NEXT_STEPS: [NextStep; 4] = [NextStep::None, NextStep::Repeat, NextStep::TighterMeter, NextStep::RemoveOneSided];

/// Of these the one with this number, which counts from 1.
fn named<T: Copy>(given: u32, argument: u16, all: &[T]) -> Outcome<T> {
    code(given, argument, |given| all.get(given.checked_sub(1)? as usize).copied())
}

unsafe fn say<T: Display>(
    text: impl FnOnce() -> Outcome<T>,
    buffer: *mut c_char,
    capacity: usize,
    detail: *mut rko_detail,
) -> rko_status {
    // SAFETY: as the caller of this door promises.
    unsafe { answer(detail, || write_text(&text()?, buffer, capacity, 2)) }
}

/// A verdict in one line, for a person to read.
///
/// Given: `verdict`, as a function has written it; `buffer`, of `capacity` bytes.
/// Written: the text in UTF-8 with a closing zero.
/// Statuses: `RKO_UNKNOWN_CODE`, `RKO_BUFFER_TOO_SMALL`, `RKO_OUT_OF_RANGE` for a rule's risk, `RKO_NULL_POINTER`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rko_verdict_text(
    verdict: *const rko_verdict,
    buffer: *mut c_char,
    capacity: usize,
    detail: *mut rko_detail,
) -> rko_status {
    let text = || {
        // SAFETY: as the caller of this door promises.
        let verdict = unsafe { item(verdict, 1)? };
        let has = |bit: u32, x: f64| (verdict.has & bit != 0).then_some(x);
        Ok(Verdict {
            answer: named(verdict.answer, 1, &ANSWERS)?,
            side: named(verdict.side, 1, &SIDES)?,
            conformance_probability: verdict.conformance_probability,
            guard_band_ohm: has(RKO_VERDICT_HAS_GUARD_BAND, verdict.guard_band_ohm),
            acceptance_lower_ohm: has(RKO_VERDICT_HAS_ACCEPTANCE, verdict.acceptance_lower_ohm),
            acceptance_upper_ohm: has(RKO_VERDICT_HAS_ACCEPTANCE, verdict.acceptance_upper_ohm),
            distance_ohm: verdict.distance_ohm,
            tur: has(RKO_VERDICT_HAS_TUR, verdict.tur),
            next_step: named(verdict.next_step, 1, &NEXT_STEPS)?,
            rule: verdict.rule.to_core(1)?,
        })
    };
    // SAFETY: as the caller of this door promises.
    unsafe { say(text, buffer, capacity, detail) }
}

/// An answer in words: "conforms", "does not conform", "undecided".
///
/// Given: `answer`, one of `RKO_ANSWER_...`; `buffer`, of `capacity` bytes.
/// Written: the text with a closing zero.
/// Statuses: `RKO_UNKNOWN_CODE`, `RKO_BUFFER_TOO_SMALL`, `RKO_NULL_POINTER`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rko_answer_text(
    answer: u32,
    buffer: *mut c_char,
    capacity: usize,
    detail: *mut rko_detail,
) -> rko_status {
    unsafe { say(|| Ok(named(answer, 1, &ANSWERS)?.name()), buffer, capacity, detail) }
}

/// A side in words: "inside", "outside".
///
/// Given: `side`, one of `RKO_SIDE_...`; `buffer`, of `capacity` bytes.
/// Written: the text with a closing zero.
/// Statuses: `RKO_UNKNOWN_CODE`, `RKO_BUFFER_TOO_SMALL`, `RKO_NULL_POINTER`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rko_side_text(
    side: u32,
    buffer: *mut c_char,
    capacity: usize,
    detail: *mut rko_detail,
) -> rko_status {
    unsafe { say(|| Ok(named(side, 1, &SIDES)?.name()), buffer, capacity, detail) }
}

/// A next step in words.
///
/// Given: `next_step`, one of `RKO_NEXT_STEP_...`; `buffer`, of `capacity` bytes.
/// Written: the text with a closing zero.
/// Statuses: `RKO_UNKNOWN_CODE`, `RKO_BUFFER_TOO_SMALL`, `RKO_NULL_POINTER`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rko_next_step_text(
    next_step: u32,
    buffer: *mut c_char,
    capacity: usize,
    detail: *mut rko_detail,
) -> rko_status {
    unsafe { say(|| Ok(named(next_step, 1, &NEXT_STEPS)?.name()), buffer, capacity, detail) }
}

/// A contribution of a budget in words, such as "accuracy clause of the meter".
///
/// Given: `contribution`, as in `rko_row`; `buffer`, of `capacity` bytes.
/// Written: the text with a closing zero.
/// Statuses: `RKO_UNKNOWN_CODE`, `RKO_BUFFER_TOO_SMALL`, `RKO_NULL_POINTER`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rko_contribution_text(
    contribution: u32,
    buffer: *mut c_char,
    capacity: usize,
    detail: *mut rko_detail,
) -> rko_status {
    unsafe { say(|| Ok(named(contribution, 1, &Contribution::ALL)?.name()), buffer, capacity, detail) }
}

/// The unit of a contribution's value and width: "ohm", "S", "1/K" or "K".
///
/// Given: `contribution`, as in `rko_row`; `buffer`, of `capacity` bytes.
/// Written: the text with a closing zero.
/// Statuses: `RKO_UNKNOWN_CODE`, `RKO_BUFFER_TOO_SMALL`, `RKO_NULL_POINTER`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rko_contribution_unit_text(
    contribution: u32,
    buffer: *mut c_char,
    capacity: usize,
    detail: *mut rko_detail,
) -> rko_status {
    unsafe { say(|| Ok(named(contribution, 1, &Contribution::ALL)?.unit()), buffer, capacity, detail) }
}

/// A distribution in words, such as "rectangular".
///
/// Given: `distribution`, as in `rko_row`; `buffer`, of `capacity` bytes.
/// Written: the text with a closing zero.
/// Statuses: `RKO_UNKNOWN_CODE`, `RKO_BUFFER_TOO_SMALL`, `RKO_NULL_POINTER`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rko_distribution_text(
    distribution: u32,
    buffer: *mut c_char,
    capacity: usize,
    detail: *mut rko_detail,
) -> rko_status {
    unsafe { say(|| Ok(named(distribution, 1, &DISTRIBUTIONS)?.name()), buffer, capacity, detail) }
}

/// A piece of advice as a sentence.
///
/// Given: `advice`, as a function has written it; `buffer`, of `capacity` bytes.
/// Written: the text in UTF-8 with a closing zero.
/// Statuses: `RKO_UNKNOWN_CODE`, `RKO_BUFFER_TOO_SMALL`, `RKO_NULL_POINTER`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rko_advice_text(
    advice: *const rko_advice,
    buffer: *mut c_char,
    capacity: usize,
    detail: *mut rko_detail,
) -> rko_status {
    let text = || {
        // SAFETY: as the caller of this door promises.
        let advice = unsafe { item(advice, 1)? };
        Ok(Advice {
            kind: named(advice.kind, 1, &ADVICE)?,
            contribution: named(advice.contribution, 1, &Contribution::ALL)?,
            share: advice.share,
            expanded_now_ohm: advice.expanded_now_ohm,
            expanded_then_ohm: advice.expanded_then_ohm,
            number: advice.number,
        })
    };
    // SAFETY: as the caller of this door promises.
    unsafe { say(text, buffer, capacity, detail) }
}

/// A marking as a person would say it, such as "4.7 kohm, 5 %".
///
/// Given: `marking`; `buffer`, of `capacity` bytes.
/// Written: the text with a closing zero.
/// Statuses: those of `rko_marking_from_value`; `RKO_UNKNOWN_CODE`, `RKO_BUFFER_TOO_SMALL`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rko_marking_text(
    marking: *const rko_marking,
    buffer: *mut c_char,
    capacity: usize,
    detail: *mut rko_detail,
) -> rko_status {
    // SAFETY: as the caller of this door promises.
    unsafe { say(|| item(marking, 1)?.to_core(1), buffer, capacity, detail) }
}

/// A doubt about a reading direction as a sentence.
///
/// Given: `doubt`, a single one of `RKO_DOUBT_...`; `buffer`, of `capacity` bytes.
/// Written: the text with a closing zero.
/// Statuses: `RKO_UNKNOWN_CODE`, `RKO_BUFFER_TOO_SMALL`, `RKO_NULL_POINTER`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rko_doubt_text(
    doubt: u32,
    buffer: *mut c_char,
    capacity: usize,
    detail: *mut rko_detail,
) -> rko_status {
    let of =
        |bit: u32| Doubt::ALL.into_iter().find(|doubt| 1_u32.checked_shl((*doubt as u32).wrapping_sub(1)) == Some(bit));
    unsafe { say(|| code(doubt, 1, of), buffer, capacity, detail) }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The lists above stand in the order of the numbers.
    #[test]
    fn the_lists_count_from_one() {
        for (number, contribution) in (1..).zip(Contribution::ALL) {
            assert_eq!(contribution as u32, number);
        }
        for (number, kind) in (1..).zip(ADVICE) {
            assert_eq!(kind as u32, number);
        }
        for (number, distribution) in (1..).zip(DISTRIBUTIONS) {
            assert_eq!(distribution as u32, number);
        }
        for (number, doubt) in (1..).zip(Doubt::ALL) {
            assert_eq!(doubt as u32, number);
        }
    }
}
