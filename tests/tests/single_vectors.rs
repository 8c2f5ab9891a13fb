//! The vectors of the twins for single precision, run through the Rust door.

use reckohm::distribution as d;
use reckohm::number::Kind;
use reckohm::uncertainty::{Estimate, EstimateError, TypeA};
use reckohm::verdict::{Limits, Rule, Verdict, answer, conformance_probability, judge};
use reckohm_tests::vectors::{Outcome, Output, Row, run};

/// All inputs are numbers of single precision but for those that no number type holds.
fn float(row: &Row, place: usize) -> f32 {
    row.number(place) as f32
}

fn number(x: f32) -> Output {
    Output::Number(f64::from(x))
}

fn estimate(row: &Row) -> Result<Estimate<f32>, EstimateError> {
    let n = |place| float(row, place);
    let type_a = [TypeA { s: n(4), dof: n(5) }, TypeA { s: n(6), dof: n(7) }];
    Estimate::from_parts(n(0), [n(1), n(2)], n(3), type_a, n(8), n(9))
}

fn distribution(row: &Row, function: &str) -> Option<Outcome> {
    let x = float(row, 0);
    let result = match function {
        "normal_below" => d::normal_below_f32(x),
        "normal_above" => d::normal_above_f32(x),
        "normal_quantile" => d::normal_quantile_f32(x),
        "normal_quantile_above" => d::normal_quantile_above_f32(x),
        "t_below" => d::t_below_f32(x, float(row, 1)),
        "t_above" => d::t_above_f32(x, float(row, 1)),
        "t_quantile" => d::t_quantile_f32(x, float(row, 1)),
        "t_quantile_above" => d::t_quantile_above_f32(x, float(row, 1)),
        _ => return None,
    };
    Some(result.map(|x| vec![number(x)]).map_err(|error| error.kind()))
}

fn uncertainty(row: &Row, function: &str) -> Option<Outcome> {
    let (e, x) = (estimate(row), float(row, 10));
    let result = match function {
        "expanded" => e
            .and_then(|e| e.expanded(x))
            .map(|e| [e.half_width, e.coverage_factor, e.lower, e.upper, e.u].map(number).to_vec()),
        "expanded_guaranteed" => e.and_then(|e| e.expanded_guaranteed(x)).map(|e| vec![number(e.half_width)]),
        "expanded_welch_satterthwaite" => {
            e.and_then(|e| e.expanded_welch_satterthwaite(x)).map(|e| vec![number(e.half_width)])
        }
        "quantile_above" => e.and_then(|e| e.quantile_above(x)).map(|x| vec![number(x)]),
        "probability_above" => e.and_then(|e| e.probability_above(x)).map(|x| vec![number(x)]),
        "probability_below" => e.and_then(|e| e.probability_below(x)).map(|x| vec![number(x)]),
        _ => return None,
    };
    Some(result.map_err(|error| error.kind()))
}

fn rule(row: &Row) -> Result<Rule<f32>, Kind> {
    let risk = row.optional(13).unwrap_or(0.0) as f32;
    match row.word(12) {
        "guarded" => Rule::guarded(risk),
        "max risk" => Rule::max_risk(risk),
        _ => Ok(Rule::simple_acceptance()),
    }
    .map_err(|error| error.kind())
}

fn columns(v: &Verdict<f32>) -> Vec<Output> {
    let optional = |x: Option<f32>| x.map_or(Output::from(""), number);
    vec![
        v.answer.name().into(),
        v.side.name().into(),
        number(v.conformance_probability),
        optional(v.guard_band_ohm),
        optional(v.acceptance_lower_ohm),
        optional(v.acceptance_upper_ohm),
        number(v.distance_ohm),
        optional(v.tur),
        v.next_step.name().into(),
    ]
}

fn verdict(row: &Row, function: &str) -> Option<Outcome> {
    let parts = || {
        let limits = Limits::new(float(row, 10), float(row, 11)).map_err(|error| error.kind())?;
        Ok((estimate(row).map_err(|error| error.kind())?, limits))
    };
    Some(match function {
        "conformance_probability" => parts().map(|(e, limits)| vec![number(conformance_probability(&e, &limits))]),
        "judge" => parts().and_then(|(e, limits)| {
            let verdict = judge(&e, &limits, rule(row)?).map_err(|error| error.kind())?;
            // The decision alone is the verdict's.
            let decision = answer(&e, &limits, rule(row)?);
            assert_eq!((decision.answer, decision.side), (verdict.answer, verdict.side), "line {}", row.line);
            assert_eq!(decision.conformance_probability.to_bits(), verdict.conformance_probability.to_bits());
            Ok(columns(&verdict))
        }),
        _ => return None,
    })
}

fn call(row: &Row) -> Option<Outcome> {
    let (area, function) = row.function.strip_suffix("_f32")?.split_once('.')?;
    match area {
        "distribution" => distribution(row, function),
        "uncertainty" => uncertainty(row, function),
        "verdict" => verdict(row, function),
        _ => None,
    }
}

#[test]
fn single_precision() {
    let count = run("single.tsv", |_| 2e-5, call);
    assert!(count > 1000, "{count}");
}

#[test]
fn arithmetic() {
    let count = run("arithmetic_single.tsv", |_| 0.0, call);
    assert!(count > 20, "{count}");
}
