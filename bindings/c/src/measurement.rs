//! From readings to an estimate with its budget and advice.

use core::mem::{offset_of, size_of};

use reckohm::measurement::{Advice, Measurement, Row, Setup, evaluate_from};
use reckohm::meter::Span;

use crate::answer::{DoorError, Outcome, one};
use crate::array::all_good;
use crate::detail::{rko_detail, rko_status};
use crate::estimate::{rko_estimate, rko_expanded};
use crate::leads::rko_leads;
use crate::pointer::{element, item, items};
use crate::reading::rko_reading;
use crate::span::{OfCaller as _, Spans, rko_span};

/// The leads are taken off.
pub const RKO_SETUP_LEADS: u32 = 1;
/// A path in parallel is taken off.
pub const RKO_SETUP_PARALLEL_PATH: u32 = 2;
/// The temperature coefficient is known, and corrects; needs `RKO_SETUP_TEMPERATURE`.
pub const RKO_SETUP_KNOWN_TCR: u32 = 4;
/// The temperature coefficient has a marked limit, and widens; needs `RKO_SETUP_TEMPERATURE`.
pub const RKO_SETUP_TCR_LIMIT: u32 = 8;
/// The temperature of the part and its reference temperature are given; needs a coefficient.
pub const RKO_SETUP_TEMPERATURE: u32 = 16;
/// The temperature of the meter is given.
pub const RKO_SETUP_METER_TEMPERATURE: u32 = 32;
/// The standard deviation of single readings is known from before.
pub const RKO_SETUP_REPEATABILITY: u32 = 64;
/// The fixed part of the meter's error is the same in the readings of part and leads.
pub const RKO_SETUP_ZERO_ERROR_COMMON: u32 = 128;
/// It is independent between them. With neither bit the wider of the two is taken; both are a contradiction of codes.
pub const RKO_SETUP_ZERO_ERROR_INDEPENDENT: u32 = 256;

/// How many rows a measurement has room for.
pub const RKO_ROWS_MOST: usize = 8;
/// How many pieces of advice a measurement has room for.
pub const RKO_ADVICE_MOST: usize = 8;

/// The conditions of a measurement. What `flags` does not name is not there and not read.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct rko_setup {
    /// Coverage probability of the expanded uncertainty, in (0, 1); `rko_setup_new` makes it 0.95.
    pub coverage_probability: f64,
    /// Standard deviation of single readings known from before, ohm.
    pub repeatability_ohm: f64,
    /// Marked limit of the temperature coefficient, ppm/K, 0 to 1e6.
    pub tcr_limit_ppm_per_kelvin: f64,
    /// Reference temperature of the nominal value, degrees Celsius.
    pub reference_temperature_c: f64,
    /// Temperature of the meter, degrees Celsius.
    pub meter_temperature_c: f64,
    /// Path in parallel with the part, ohm, above 0.
    pub parallel_path_ohm: rko_estimate,
    /// Known temperature coefficient, ppm/K.
    pub known_tcr_ppm_per_kelvin: rko_estimate,
    /// Temperature of the part, degrees Celsius.
    pub temperature_c: rko_estimate,
    /// The leads.
    pub leads: rko_leads,
    /// A sum of `RKO_SETUP_...`.
    pub flags: u32,
    /// Must be 0.
    pub reserved: u32,
}

/// One row of a budget.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct rko_row {
    /// Value of the input, in its unit.
    pub value: f64,
    /// Half-width of a rectangular input, else its standard uncertainty, in its unit.
    pub width: f64,
    /// How much the result changes with the input, ohm per its unit.
    pub sensitivity: f64,
    /// Contribution to the standard uncertainty, ohm.
    pub u_ohm: f64,
    /// Part of the variance, 0 to 1.
    pub share: f64,
    /// Degrees of freedom; infinite where they are not from repeats.
    pub dof: f64,
    /// What it is: 1 scatter of the readings, 2 accuracy clause of the meter, 3 step of the display, 4 leads, 5 parallel path,
    /// 6 known temperature coefficient, 7 limit of the temperature coefficient, 8 temperature of the part.
    pub contribution: u32,
    /// 1 normal, 2 rectangular, 3 Student t, 4 several parts.
    pub distribution: u32,
}

/// One piece of advice.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct rko_advice {
    /// Part of the variance that it is about.
    pub share: f64,
    /// Expanded uncertainty as it is, ohm.
    pub expanded_now_ohm: f64,
    /// Expanded uncertainty that following the advice would bring, ohm.
    pub expanded_then_ohm: f64,
    /// 1 what dominates, 2 the scatter is unknown, 3 more readings, 4 another span, 5 the leads are not taken off, 6 four
    /// wires, 7 substitution, 8 disconnect the parallel path, 9 nearer to the reference temperature.
    pub kind: u32,
    /// The contribution that it is about, as in `rko_row`.
    pub contribution: u32,
    /// How many readings, or the index of the span, from 0; else 0.
    pub number: u32,
    /// 0.
    pub reserved: u32,
}

/// A measured part: the estimate, the budget behind it, and what would make it better.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct rko_measurement {
    /// The resistance in ohm, with the shape of its uncertainty.
    pub estimate: rko_estimate,
    /// Its expanded uncertainty.
    pub expanded: rko_expanded,
    /// Effective degrees of freedom by the Welch-Satterthwaite formula, for information.
    pub effective_dof: f64,
    /// How many readings it was made from.
    pub readings: u64,
    /// The budget, `row_count` rows; all zero beyond.
    pub rows: [rko_row; RKO_ROWS_MOST],
    /// The advice, `advice_count` pieces, the most useful first; all zero beyond.
    pub advice: [rko_advice; RKO_ADVICE_MOST],
    /// How many rows.
    pub row_count: u32,
    /// How many pieces of advice.
    pub advice_count: u32,
    /// 1 if the readings agreed so well that their scatter was taken as 0.3 of the display's step each, else 0.
    pub scatter_at_floor: u32,
    /// 0.
    pub reserved: u32,
}

const _: () = {
    assert!(size_of::<rko_setup>() == 456);
    assert!(offset_of!(rko_setup, coverage_probability) == 0);
    assert!(offset_of!(rko_setup, repeatability_ohm) == 8);
    assert!(offset_of!(rko_setup, tcr_limit_ppm_per_kelvin) == 16);
    assert!(offset_of!(rko_setup, reference_temperature_c) == 24);
    assert!(offset_of!(rko_setup, meter_temperature_c) == 32);
    assert!(offset_of!(rko_setup, parallel_path_ohm) == 40);
    assert!(offset_of!(rko_setup, known_tcr_ppm_per_kelvin) == 120);
    assert!(offset_of!(rko_setup, temperature_c) == 200);
    assert!(offset_of!(rko_setup, leads) == 280);
    assert!(offset_of!(rko_setup, flags) == 448);
    assert!(offset_of!(rko_setup, reserved) == 452);
    assert!(size_of::<rko_row>() == 56);
    assert!(offset_of!(rko_row, value) == 0);
    assert!(offset_of!(rko_row, width) == 8);
    assert!(offset_of!(rko_row, sensitivity) == 16);
    assert!(offset_of!(rko_row, u_ohm) == 24);
    assert!(offset_of!(rko_row, share) == 32);
    assert!(offset_of!(rko_row, dof) == 40);
    assert!(offset_of!(rko_row, contribution) == 48);
    assert!(offset_of!(rko_row, distribution) == 52);
    assert!(size_of::<rko_advice>() == 40);
    assert!(offset_of!(rko_advice, share) == 0);
    assert!(offset_of!(rko_advice, expanded_now_ohm) == 8);
    assert!(offset_of!(rko_advice, expanded_then_ohm) == 16);
    assert!(offset_of!(rko_advice, kind) == 24);
    assert!(offset_of!(rko_advice, contribution) == 28);
    assert!(offset_of!(rko_advice, number) == 32);
    assert!(offset_of!(rko_advice, reserved) == 36);
    assert!(size_of::<rko_measurement>() == 928);
    assert!(offset_of!(rko_measurement, estimate) == 0);
    assert!(offset_of!(rko_measurement, expanded) == 80);
    assert!(offset_of!(rko_measurement, effective_dof) == 128);
    assert!(offset_of!(rko_measurement, readings) == 136);
    assert!(offset_of!(rko_measurement, rows) == 144);
    assert!(offset_of!(rko_measurement, advice) == 592);
    assert!(offset_of!(rko_measurement, row_count) == 912);
    assert!(offset_of!(rko_measurement, advice_count) == 916);
    assert!(offset_of!(rko_measurement, scatter_at_floor) == 920);
    assert!(offset_of!(rko_measurement, reserved) == 924);
};

impl rko_setup {
    /// As the core has it; `argument` is the position of the setup.
    fn to_core(self, spans: &[Span], argument: u16) -> Outcome<Setup<'_>> {
        const ZERO_ERROR: u32 = RKO_SETUP_ZERO_ERROR_COMMON | RKO_SETUP_ZERO_ERROR_INDEPENDENT;
        const ALL: u32 = 2 * RKO_SETUP_ZERO_ERROR_INDEPENDENT - 1;
        let has = |flag: u32| self.flags & flag != 0;
        if self.reserved != 0 || self.flags & !ALL != 0 || self.flags & ZERO_ERROR == ZERO_ERROR {
            let given = if self.reserved != 0 { self.reserved } else { self.flags };
            return Err(DoorError::UnknownCode { argument, given: f64::from(given) }.into());
        }
        let mut setup = Setup::new().with_spans(spans).with_coverage_probability(self.coverage_probability)?;
        if has(RKO_SETUP_LEADS) {
            setup = setup.with_leads(self.leads.to_core(argument)?);
        }
        if has(RKO_SETUP_PARALLEL_PATH) {
            setup = setup.with_parallel_path(self.parallel_path_ohm.to_core()?)?;
        }
        if has(RKO_SETUP_KNOWN_TCR) {
            setup = setup.with_known_tcr(self.known_tcr_ppm_per_kelvin.to_core()?)?;
        }
        if has(RKO_SETUP_TCR_LIMIT) {
            setup = setup.with_tcr_limit(self.tcr_limit_ppm_per_kelvin)?;
        }
        if has(RKO_SETUP_TEMPERATURE) {
            setup = setup.with_temperature(self.temperature_c.to_core()?, self.reference_temperature_c)?;
        }
        if has(RKO_SETUP_METER_TEMPERATURE) {
            setup = setup.with_meter_temperature(self.meter_temperature_c)?;
        }
        if has(RKO_SETUP_REPEATABILITY) {
            setup = setup.with_repeatability(self.repeatability_ohm)?;
        }
        if has(ZERO_ERROR) {
            setup = setup.with_zero_error_common(has(RKO_SETUP_ZERO_ERROR_COMMON));
        }
        Ok(setup)
    }
}

impl rko_row {
    const NONE: rko_row = rko_row {
        value: 0.0,
        width: 0.0,
        sensitivity: 0.0,
        u_ohm: 0.0,
        share: 0.0,
        dof: 0.0,
        contribution: 0,
        distribution: 0,
    };
}

impl From<&Row> for rko_row {
    fn from(row: &Row) -> rko_row {
        let &Row { contribution, value, width, distribution, sensitivity, u_ohm, share, dof, .. } = row;
        let (contribution, distribution) = (contribution as u32, distribution as u32);
        rko_row { value, width, sensitivity, u_ohm, share, dof, contribution, distribution }
    }
}

impl rko_advice {
    const NONE: rko_advice = rko_advice {
        share: 0.0,
        expanded_now_ohm: 0.0,
        expanded_then_ohm: 0.0,
        kind: 0,
        contribution: 0,
        number: 0,
        reserved: 0,
    };
}

impl From<&Advice> for rko_advice {
    fn from(advice: &Advice) -> rko_advice {
        let &Advice { kind, contribution, share, expanded_now_ohm, expanded_then_ohm, number, .. } = advice;
        let (kind, contribution) = (kind as u32, contribution as u32);
        rko_advice { share, expanded_now_ohm, expanded_then_ohm, kind, contribution, number, reserved: 0 }
    }
}

/// Copies as many as there are, and says how many that was.
fn listed<T>(room: &mut [T], items: impl Iterator<Item = T>) -> u32 {
    let mut count = 0;
    for (place, item) in room.iter_mut().zip(items) {
        *place = item;
        count += 1;
    }
    count
}

impl From<Measurement> for rko_measurement {
    fn from(measured: Measurement) -> rko_measurement {
        let budget = measured.budget();
        let mut rows = [rko_row::NONE; RKO_ROWS_MOST];
        let row_count = listed(&mut rows, budget.rows().map(rko_row::from));
        let mut advice = [rko_advice::NONE; RKO_ADVICE_MOST];
        let advice_count = listed(&mut advice, measured.advice().map(rko_advice::from));
        rko_measurement {
            estimate: (*measured.estimate()).into(),
            expanded: (*budget.expanded()).into(),
            effective_dof: budget.effective_dof(),
            readings: measured.readings() as u64,
            rows,
            advice,
            row_count,
            advice_count,
            scatter_at_floor: u32::from(measured.scatter_at_floor()),
            reserved: 0,
        }
    }
}

/// Conditions with nothing set, and a coverage probability of 0.95.
///
/// Written: `setup`.
/// Statuses: `RKO_NULL_POINTER`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rko_setup_new(setup: *mut rko_setup, detail: *mut rko_detail) -> rko_status {
    const ZERO: rko_estimate = rko_estimate {
        value: 0.0,
        rectangular: [0.0; 2],
        normal_u: 0.0,
        type_a_s: [0.0; 2],
        type_a_dof: [f64::INFINITY; 2],
        below: 0.0,
        above: 0.0,
    };
    unsafe {
        one(setup, 1, detail, || {
            Ok(rko_setup {
                coverage_probability: Setup::new().coverage_probability(),
                repeatability_ohm: 0.0,
                tcr_limit_ppm_per_kelvin: 0.0,
                reference_temperature_c: 0.0,
                meter_temperature_c: 0.0,
                parallel_path_ohm: ZERO,
                known_tcr_ppm_per_kelvin: ZERO,
                temperature_c: ZERO,
                leads: rko_leads::NONE,
                flags: 0,
                reserved: 0,
            })
        })
    }
}

/// Evaluates readings of one part on one span: their mean, less the leads, less a parallel path, at the reference
/// temperature, with the uncertainty of each.
///
/// Given: `span`; `readings`, `count` of them, 1 or more, all within the span; `setup`, or null for `rko_setup_new`;
/// `spans`, `span_count` of them, at most `RKO_SPANS_MOST`, the spans of the meter for advice on another one; null and 0
/// for none.
/// Written: `measurement`.
/// Statuses: those of `rko_span_check`; `RKO_EMPTY` (no reading), `RKO_OVER_RANGE_READING` (with its index),
/// `RKO_CONTRADICTION`, `RKO_MISSING_ARGUMENT`, `RKO_RESULT_OUT_OF_RANGE`, `RKO_WRONG_COUNT`, `RKO_UNKNOWN_CODE`,
/// `RKO_NULL_POINTER`.
/// Source: JCGM 100; our coverage rule.
#[unsafe(no_mangle)]
#[allow(clippy::too_many_arguments)]
pub unsafe extern "C" fn rko_measurement_evaluate(
    span: *const rko_span,
    readings: *const rko_reading,
    count: usize,
    setup: *const rko_setup,
    spans: *const rko_span,
    span_count: usize,
    measurement: *mut rko_measurement,
    detail: *mut rko_detail,
) -> rko_status {
    unsafe {
        one(measurement, 7, detail, || {
            let span = item(span, 1)?.to_core(1)?;
            let readings = items(readings, count, 2)?;
            all_good(count, |index| element(readings, index)?.to_core(&span, 2).map(|_| ()))?;
            let mut room = Spans::ROOM;
            let spans = room.fill(spans, span_count, 5)?;
            let setup = match setup.as_ref() {
                Some(setup) => setup.to_core(spans, 4)?,
                None => Setup::new().with_spans(spans),
            };
            // All have just been seen to be good.
            let readings = readings.iter().filter_map(|reading| reading.to_core(&span, 2).ok());
            Ok(evaluate_from(&span, readings, &setup)?.into())
        })
    }
}
