//! The vectors of estimates and verdicts, run through the Rust door.

use reckohm::measurement::{MeasurementError, Setup, evaluate};
use reckohm::meter::{Leads, Meter};
use reckohm::number::Kind;
use reckohm::uncertainty::{Estimate, EstimateError, TypeA, effective_dof};
use reckohm::verdict::{Limits, Rule, Verdict, VerdictError, conformance_probability, judge};
use reckohm_tests::vectors::{Outcome, Output, Row, run};

fn estimate(row: &Row) -> Result<Estimate, EstimateError> {
    let n = |place| row.number(place);
    let type_a = [TypeA { s: n(4), dof: n(5) }, TypeA { s: n(6), dof: n(7) }];
    Estimate::from_parts(n(0), [n(1), n(2)], n(3), type_a, n(8), n(9))
}

fn numbers<const N: usize>(result: Result<[f64; N], EstimateError>) -> Outcome {
    result.map(|all| all.map(Output::Number).to_vec()).map_err(|error| error.kind())
}

fn uncertainty(row: &Row) -> Option<Outcome> {
    let half_width = |e: &reckohm::uncertainty::Expanded| [e.half_width];
    Some(match row.function.as_str() {
        "uncertainty.expanded" => numbers(
            estimate(row)
                .and_then(|e| e.expanded(row.number(10)))
                .map(|e| [e.half_width, e.coverage_factor, e.lower, e.upper, e.u]),
        ),
        "uncertainty.expanded_guaranteed" => {
            numbers(estimate(row).and_then(|e| e.expanded_guaranteed(row.number(10))).map(|e| half_width(&e)))
        }
        "uncertainty.expanded_welch_satterthwaite" => {
            numbers(estimate(row).and_then(|e| e.expanded_welch_satterthwaite(row.number(10))).map(|e| half_width(&e)))
        }
        "uncertainty.quantile_above" => {
            numbers(estimate(row).and_then(|e| e.quantile_above(row.number(10))).map(|x| [x]))
        }
        "uncertainty.probability_above" => {
            numbers(estimate(row).and_then(|e| e.probability_above(row.number(10))).map(|x| [x]))
        }
        "uncertainty.probability_below" => {
            numbers(estimate(row).and_then(|e| e.probability_below(row.number(10))).map(|x| [x]))
        }
        "uncertainty.effective_dof" => {
            let (u, dof): (Vec<_>, Vec<_>) = row.numbers_from(0).chunks(2).map(|part| (part[0], part[1])).unzip();
            numbers(effective_dof(&u, &dof).map(|dof| [dof]))
        }
        "uncertainty.from_repeats" => numbers(Estimate::from_repeats(&row.numbers_from(0)).map(|e| [e.value(), e.u()])),
        _ => return None,
    })
}

#[test]
fn estimates() {
    // The tail of two type A parts is itself the root of an equation: its last digits are the ill-conditioned ones.
    let count = run("uncertainty.tsv", |_| 2e-12, uncertainty);
    assert!(count > 500, "{count}");
}

fn rule(row: &Row) -> Result<Rule, Kind> {
    let risk = row.optional(13).unwrap_or(0.0);
    match row.word(12) {
        "guarded" => Rule::guarded(risk),
        "max risk" => Rule::max_risk(risk),
        _ => Ok(Rule::simple_acceptance()),
    }
    .map_err(|error| error.kind())
}

fn parts(row: &Row) -> Result<(Estimate, Limits), Kind> {
    let limits = Limits::new(row.number(10), row.number(11)).map_err(|error| error.kind())?;
    Ok((estimate(row).map_err(|error| error.kind())?, limits))
}

fn columns(v: &Verdict) -> Vec<Output> {
    let optional = |x: Option<f64>| x.map_or(Output::from(""), Output::Number);
    vec![
        v.answer.name().into(),
        v.side.name().into(),
        v.conformance_probability.into(),
        optional(v.guard_band_ohm),
        optional(v.acceptance_lower_ohm),
        optional(v.acceptance_upper_ohm),
        v.distance_ohm.into(),
        optional(v.tur),
        v.next_step.name().into(),
    ]
}

fn verdict(row: &Row) -> Option<Outcome> {
    Some(match row.function.as_str() {
        "verdict.conformance_probability" => {
            parts(row).map(|(e, limits)| vec![conformance_probability(&e, &limits).into()])
        }
        "verdict.judge" => parts(row).and_then(|(e, limits)| {
            let verdict = judge(&e, &limits, rule(row)?).map_err(|error: VerdictError| error.kind())?;
            Ok(columns(&verdict))
        }),
        _ => return None,
    })
}

#[test]
fn verdicts() {
    let count = run("verdict.tsv", |_| 2e-12, verdict);
    assert!(count > 1000, "{count}");
}

#[test]
fn arithmetic() {
    let count = run("arithmetic.tsv", |_| 0.0, verdict);
    assert!(count > 30, "{count}");
}

fn measured(row: &Row) -> Result<[f64; 3], Kind> {
    let spans = Meter::example_hand_held().spans();
    let span = &spans[row.number(0) as usize];
    let read = |text: &str| span.read(text.as_bytes()).map_err(|error| error.kind());
    let readings = row.word(1).split_whitespace().map(read).collect::<Result<Vec<_>, _>>()?;
    let [path, path_u, known, known_u, limit, temperature, half_width, reference, meter, repeatability, p] =
        std::array::from_fn(|i| row.optional(3 + i));
    let exact = |value: f64| Estimate::exact(value).map_err(|error| error.kind());
    let kind = |error: MeasurementError| error.kind();
    let mut setup = Setup::new();
    if !row.word(2).is_empty() {
        let leads = Leads::from_reading(&read(row.word(2))?, span).map_err(|error| error.kind())?;
        setup = setup.with_leads(leads);
    }
    if let (Some(path), Some(u)) = (path, path_u) {
        setup = setup.with_parallel_path(exact(path)?.with_normal(u).map_err(|e| e.kind())?).map_err(kind)?;
    }
    if let (Some(known), Some(u)) = (known, known_u) {
        setup = setup.with_known_tcr(exact(known)?.with_normal(u).map_err(|e| e.kind())?).map_err(kind)?;
    }
    if let Some(limit) = limit {
        setup = setup.with_tcr_limit(limit).map_err(kind)?;
    }
    if let (Some(temperature), Some(reference)) = (temperature, reference) {
        let temperature = exact(temperature)?.with_rectangular(half_width.unwrap_or(0.0)).map_err(|e| e.kind())?;
        setup = setup.with_temperature(temperature, reference).map_err(kind)?;
    }
    if let Some(meter) = meter {
        setup = setup.with_meter_temperature(meter).map_err(kind)?;
    }
    if let Some(repeatability) = repeatability {
        setup = setup.with_repeatability(repeatability).map_err(kind)?;
    }
    if let Some(p) = p {
        setup = setup.with_coverage_probability(p).map_err(kind)?;
    }
    let measured = evaluate(span, &readings, &setup).map_err(kind)?;
    let estimate = measured.estimate();
    Ok([estimate.value(), estimate.u(), measured.budget().expanded().half_width])
}

#[test]
fn measurements() {
    let call = |row: &Row| match row.function.as_str() {
        "measurement.evaluate" => Some(measured(row).map(|all| all.map(Output::Number).to_vec())),
        _ => None,
    };
    let count = run("measurement.tsv", |_| 2e-12, call);
    assert!(count > 100, "{count}");
}
