//! What an evaluation takes into account, one condition at a time, and every message in full.

use reckohm::measurement::{AdviceKind, Contribution, Distribution, MeasurementError, Setup, evaluate};
use reckohm::meter::{Leads, Meter, Reading, Span};
use reckohm::number::Kind;
use reckohm::uncertainty::{Estimate, EstimateError, effective_dof};

fn span(full_scale: f64) -> &'static Span {
    let spans = Meter::example_hand_held().spans();
    spans.iter().rfind(|span| span.full_scale_ohm() <= full_scale).unwrap()
}

fn read(span: &Span, texts: &[&str]) -> Vec<Reading> {
    texts.iter().map(|text| span.read(text.as_bytes()).unwrap()).collect()
}

fn exact(value: f64) -> Estimate {
    Estimate::exact(value).unwrap()
}

#[test]
fn one_reading_gives_the_clause_and_says_that_scatter_is_unknown() {
    let span = span(20e3);
    let measured = evaluate(span, &read(span, &["4.88"]), &Setup::new()).unwrap();
    let half_width = span.clause_half_width_ohm(4880.0, None).unwrap();
    assert_eq!(measured.estimate(), &exact(4880.0).with_rectangular(half_width).unwrap());
    assert!((measured.budget().expanded().half_width - 0.95 * half_width).abs() < 1e-9);
    let kinds: Vec<_> = measured.advice().map(|advice| advice.kind).collect();
    assert_eq!(kinds, [AdviceKind::Dominates, AdviceKind::ScatterUnknown, AdviceKind::Substitution]);
    let substitution = measured.advice().last().unwrap();
    assert_eq!(substitution.expanded_then_ohm, 0.0);
}

#[test]
fn repeats_divide_the_scatter_and_nothing_else() {
    let span = span(20e3);
    let clause = |n: usize| {
        let texts: Vec<_> = (0..n).map(|i| if i % 2 == 0 { "4.87" } else { "4.89" }).collect();
        let measured = evaluate(span, &read(span, &texts), &Setup::new()).unwrap();
        let row = |c| *measured.budget().row(c).unwrap();
        (row(Contribution::Scatter), row(Contribution::AccuracyClause))
    };
    let (two, clause_two) = clause(2);
    let (eight, clause_eight) = clause(8);
    assert_eq!(two.distribution, Distribution::StudentT);
    assert_eq!((two.dof, eight.dof), (1.0, 7.0));
    // ±10 ohm about the mean: s = 10·√(n/(n-1)), of the mean that over √n.
    assert!((two.width - 10.0).abs() < 1e-9 && (eight.width - 10.0 / 7f64.sqrt()).abs() < 1e-9);
    assert_eq!(clause_two.width.to_bits(), clause_eight.width.to_bits());
    let measured = evaluate(span, &read(span, &["4.87", "4.90", "4.88"]), &Setup::new()).unwrap();
    assert_eq!(measured.budget().u_ohm().to_bits(), measured.estimate().u().to_bits());
}

#[test]
fn equal_readings_have_a_floor_of_scatter() {
    let span = span(20e3);
    let equal = evaluate(span, &read(span, &["4.88"; 4]), &Setup::new()).unwrap();
    assert!(equal.scatter_at_floor());
    let row = equal.budget().row(Contribution::Scatter).unwrap();
    assert!((row.width - 0.3 * span.step_ohm() / 2.0).abs() < 1e-12);
    let known = evaluate(span, &read(span, &["4.88"; 4]), &Setup::new().with_repeatability(8.0).unwrap()).unwrap();
    let row = known.budget().row(Contribution::Scatter).unwrap();
    assert_eq!((row.width, row.dof, known.scatter_at_floor()), (4.0, f64::INFINITY, false));
}

#[test]
fn leads_on_the_same_span_share_the_gain_error() {
    let span = span(200.0);
    let shorted = span.read(b"0.4").unwrap();
    let leads = Leads::from_reading(&shorted, span).unwrap();
    let at = |setup: Setup<'_>| evaluate(span, &read(span, &["10.4"]), &setup).unwrap();
    let with = at(Setup::new().with_leads(leads));
    assert!((with.estimate().value() - 10.0).abs() < 1e-12);
    let fixed = span.clause_half_width_ohm(0.0, None).unwrap();
    let gain = span.clause_half_width_ohm(10.0, None).unwrap() - fixed;
    let half_width = |m: &reckohm::measurement::Measurement| m.estimate().rectangular()[0];
    assert!((half_width(&with) - (gain + fixed * 2f64.sqrt())).abs() < 1e-12);
    let common = at(Setup::new().with_leads(leads).with_zero_error_common(true));
    assert!((half_width(&common) - gain).abs() < 1e-12);
    let independent = at(Setup::new().with_leads(leads).with_zero_error_common(false));
    assert_eq!(independent, with);
    // Without the leads taken off the advice says so; with them it does not.
    let has = |m: &reckohm::measurement::Measurement| m.advice().any(|a| a.kind == AdviceKind::LeadsNotTakenOff);
    assert!(has(&at(Setup::new())) && !has(&with));
}

#[test]
fn leads_of_wire_and_of_another_span_bring_their_own_part() {
    let (low, high) = (span(200.0), span(2e3));
    let wire = Leads::from_wire(1.0, 0.75, 5).unwrap();
    let measured = evaluate(low, &read(low, &["10.4"]), &Setup::new().with_leads(wire)).unwrap();
    let row = measured.budget().row(Contribution::Leads).unwrap();
    assert_eq!((row.width, row.sensitivity), (wire.half_width_ohm(), -1.0));
    let leads = Leads::from_reading(&low.read(b"0.4").unwrap(), low).unwrap();
    let measured = evaluate(high, &read(high, &["0.500"]), &Setup::new().with_leads(leads)).unwrap();
    let row = measured.budget().row(Contribution::Leads).unwrap();
    assert!((row.width - low.clause_half_width_ohm(0.4, None).unwrap()).abs() < 1e-12);
}

#[test]
fn a_parallel_path_is_taken_off_with_its_uncertainty() {
    // 10 Mohm with 1 Mohm across shows 909 kohm: 1 % of the path is 10 % of the part, 1 % of the reading 11 %.
    let span = span(2e6);
    let path = exact(1e6).with_normal(1e4).unwrap();
    let measured = evaluate(span, &read(span, &["0.909"]), &Setup::new().with_parallel_path(path).unwrap()).unwrap();
    let shown = 909e3;
    let part = shown * 1e6 / (1e6 - shown);
    assert!((measured.estimate().value() / part - 1.0).abs() < 1e-12);
    let row = |c| *measured.budget().row(c).unwrap();
    let ratio = row(Contribution::ParallelPath).u_ohm / part / 0.01;
    assert!((ratio - shown / (1e6 - shown)).abs() < 1e-9, "{ratio}");
    let sensitivity = row(Contribution::AccuracyClause).sensitivity;
    assert!((sensitivity / (1e6 / (1e6 - shown)).powi(2) - 1.0).abs() < 1e-12);
    assert!(measured.advice().any(|a| a.kind == AdviceKind::DisconnectPath));
}

#[test]
fn a_marked_coefficient_widens_and_a_known_one_corrects() {
    // 10 kohm, 100 ppm/K, 12 K: ±12 ohm, rectangular.
    let span = span(20e3);
    let readings = read(span, &["10.00"]);
    let warm = exact(32.0);
    let setup = Setup::new().with_tcr_limit(100.0).unwrap().with_temperature(warm, 20.0).unwrap();
    let measured = evaluate(span, &readings, &setup).unwrap();
    assert_eq!(measured.estimate().value(), 10e3);
    assert!((measured.estimate().rectangular()[1] - 12.0).abs() < 1e-9);
    let known = exact(100.0).with_normal(5.0).unwrap();
    let temperature = warm.with_rectangular(0.5).unwrap();
    let setup = Setup::new().with_known_tcr(known).unwrap().with_temperature(temperature, 20.0).unwrap();
    let measured = evaluate(span, &readings, &setup).unwrap();
    assert!((measured.estimate().value() - 10e3 / 1.0012).abs() < 1e-9);
    let row = measured.budget().row(Contribution::Temperature).unwrap();
    assert!((row.u_ohm - 10e3 * 100e-6 * 0.5 / 3f64.sqrt()).abs() < 1e-2);
}

#[test]
fn a_warm_meter_widens_its_clause() {
    let span = span(20e3);
    let readings = read(span, &["10.00"]);
    let plain = evaluate(span, &readings, &Setup::new()).unwrap().estimate().rectangular()[0];
    let warm = evaluate(span, &readings, &Setup::new().with_meter_temperature(35.0).unwrap());
    let widened = warm.unwrap().estimate().rectangular()[0];
    assert!((widened / plain - 1.7).abs() < 1e-12, "{widened} {plain}");
}

#[test]
fn advice_names_a_better_span_with_its_number() {
    let meter = Meter::example_hand_held();
    let (coarse, fine) = (span(20e3), span(2e3));
    let setup = Setup::new().with_spans(meter.spans());
    let measured = evaluate(coarse, &read(coarse, &["1.46", "1.47", "1.46"]), &setup).unwrap();
    let advice = measured.advice().find(|a| a.kind == AdviceKind::OtherSpan).unwrap();
    assert_eq!(&meter.spans()[advice.number as usize], fine);
    assert!(advice.expanded_then_ohm < 0.6 * advice.expanded_now_ohm);
    let text = advice.to_string();
    assert!(text.starts_with("use span number 2 of this meter: U from ") && text.ends_with(" ohm"), "{text}");
}

#[test]
fn advice_of_more_readings_brings_what_it_says() {
    let span = span(20e3);
    let texts = ["4.60", "5.10", "4.90"];
    let measured = evaluate(span, &read(span, &texts), &Setup::new()).unwrap();
    let advice = measured.advice().find(|a| a.kind == AdviceKind::MoreReadings).unwrap();
    assert_eq!(advice.number, 10);
    let scatter = measured.budget().row(Contribution::Scatter).unwrap();
    let clause = measured.budget().row(Contribution::AccuracyClause).unwrap();
    let then = exact(0.0)
        .with_rectangular(clause.width)
        .and_then(|e| e.with_type_a(scatter.width * (3f64 / 10.0).sqrt(), 9.0))
        .and_then(|e| e.expanded(0.95))
        .unwrap();
    assert!((advice.expanded_then_ohm / then.half_width - 1.0).abs() < 1e-12);
}

#[test]
fn a_scaled_estimate_refuses_what_does_not_fit() {
    let e = exact(10.0).with_rectangular(0.5).unwrap();
    assert_eq!(e.times(-2.0).unwrap().value(), -20.0);
    for (constant, kind) in
        [(f64::NAN, Kind::NotFinite), (f64::INFINITY, Kind::NotFinite), (1e308, Kind::ResultOutOfRange)]
    {
        assert_eq!(e.times(constant).unwrap_err().kind(), kind, "{constant}");
    }
}

#[test]
fn every_message_in_full_and_back_from_its_numbers() {
    let span = span(20e3);
    let one = read(span, &["4.88"]);
    let over = [one[0], span.read(b"OL").unwrap()];
    let error = |readings: &[Reading], setup: &Setup<'_>| evaluate(span, readings, setup).unwrap_err();
    let plain = Setup::new();
    let cases = [
        (
            error(&[], &plain),
            Kind::Empty,
            "evaluating readings: none given, one or more needed; read the display at least once",
        ),
        (
            error(&over, &plain),
            Kind::OverRangeReading,
            "evaluating readings: reading 1 is beyond the span and has no value; only readings within the span allowed; \
             step up to the next span and read again",
        ),
        (
            error(&one, &plain.with_parallel_path(exact(4000.0)).unwrap()),
            Kind::Contradiction,
            "taking off a parallel path: 4880 ohm remain after the leads with a path of 4000 ohm across; less than the \
             path allowed, since the part and the path together are below either; measure the path again or disconnect it",
        ),
        (
            error(&one, &plain.with_temperature(exact(30.0), 20.0).unwrap()),
            Kind::MissingArgument,
            "bringing the part to its reference temperature: temperature_c given without a coefficient; known_tcr or \
             tcr_limit allowed; give the marked limit, or leave the temperature out",
        ),
        (
            error(&one, &plain.with_tcr_limit(100.0).unwrap()),
            Kind::MissingArgument,
            "bringing the part to its reference temperature: a coefficient, temperature_c and \
             reference_temperature_c not all given; all of them or none allowed; measure the temperature beside the part",
        ),
        (
            error(&one, &plain.with_known_tcr(exact(-1e6)).unwrap().with_temperature(exact(22.0), 20.0).unwrap()),
            Kind::Contradiction,
            "bringing the part to its reference temperature: the resistance would change by the factor -1; a positive \
             factor allowed; a linear coefficient does not hold so far from the reference",
        ),
        (
            plain.with_coverage_probability(95.0).unwrap_err(),
            Kind::OutOfRange,
            "coverage probability: 95 given, more than 0 to less than 1 allowed (JCGM 100 6.2.2); give a fraction, not \
             percent: 95 % is 0.95",
        ),
    ];
    for (error, kind, text) in cases {
        assert_eq!(error.kind(), kind);
        assert_eq!(error.to_string(), text);
        let back = MeasurementError::from_detail(&error.detail()).unwrap();
        assert_eq!(back.to_string(), text);
    }
    let few = Estimate::from_repeats(&[5.0]).unwrap_err();
    assert_eq!(
        few.to_string(),
        "mean of repeated observations: 1 given, 2 or more needed; one alone does not show its scatter: give its \
         standard uncertainty known from before instead"
    );
    let large = exact(0.0).with_normal(1e200).unwrap_err();
    assert_eq!(
        large.to_string(),
        "uncertainty of an estimate: the result, or the square of a part, is too large for the number type; at most \
         1.8e308 allowed; give the \
         parts in a larger unit"
    );
    let lengths = effective_dof(&[1.0, 2.0], &[4.0]).unwrap_err();
    assert_eq!(
        lengths.to_string(),
        "effective degrees of freedom: 2 standard uncertainties given with 1 degrees of freedom; as many of each allowed; \
         give infinite degrees of freedom where a part has none"
    );
    for error in [few, large, lengths] {
        assert_eq!(EstimateError::from_detail(&error.detail()), Some(error));
    }
}
