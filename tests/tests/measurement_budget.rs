//! The rows of a budget, its words, and the words of the advice, each said here a second time.

use reckohm::measurement::{Advice, AdviceKind, Budget, Contribution, Distribution, Setup, evaluate};
use reckohm::meter::{Clause, Leads, Marks, Meter, Reading, Span};
use reckohm::uncertainty::Estimate;

fn twenty() -> &'static Span {
    &Meter::example_hand_held().spans()[2]
}

fn exact(value: f64) -> Estimate {
    Estimate::exact(value).unwrap()
}

fn read(span: &Span, texts: &[&str]) -> Vec<Reading> {
    texts.iter().map(|text| span.read(text.as_bytes()).unwrap()).collect()
}

/// The budget of one reading of 4.88 kilohm.
fn budget(setup: &Setup<'_>) -> Budget {
    *evaluate(twenty(), &read(twenty(), &["4.88"]), setup).unwrap().budget()
}

#[test]
fn every_contribution_and_distribution_has_its_words() {
    let expected = [
        ("scatter of the readings", "ohm"),
        ("accuracy clause of the meter", "ohm"),
        ("step of the display", "ohm"),
        ("leads", "ohm"),
        ("parallel path", "S"),
        ("known temperature coefficient", "1/K"),
        ("limit of the temperature coefficient", "1/K"),
        ("temperature of the part", "K"),
    ];
    assert_eq!(Contribution::ALL.map(|contribution| (contribution.name(), contribution.unit())), expected);
    let distributions =
        [Distribution::Normal, Distribution::Rectangular, Distribution::StudentT, Distribution::Combined];
    assert_eq!(distributions.map(Distribution::name), ["normal", "rectangular", "Student t", "several parts"]);
}

#[test]
fn a_row_says_of_which_shape_its_input_is() {
    let plain = exact(1e6);
    let shapes = [
        (plain.with_rectangular(1e3), Distribution::Rectangular, 1e3),
        (plain.with_normal(1e3), Distribution::Normal, 1e3),
        (plain.with_type_a(1e3, 4.0), Distribution::StudentT, 1e3),
        (Ok(plain), Distribution::Normal, 0.0),
        (plain.with_one_sided(3e3, 0.0), Distribution::Combined, 3e3 / 3_f64.sqrt()),
        (plain.with_one_sided(0.0, 3e3), Distribution::Combined, 3e3 / 3_f64.sqrt()),
        (
            plain.with_rectangular(3e3).and_then(|path| path.with_rectangular(3e3)),
            Distribution::Combined,
            18e6_f64.sqrt() / 3_f64.sqrt(),
        ),
        (plain.with_type_a(3e3, 4.0).and_then(|path| path.with_type_a(4e3, 9.0)), Distribution::Combined, 5e3),
        (
            plain.with_rectangular(3e3).and_then(|path| path.with_normal(1e3)),
            Distribution::Combined,
            (3e6 + 1e6_f64).sqrt(),
        ),
        (plain.with_normal(3e3).and_then(|path| path.with_type_a(4e3, 4.0)), Distribution::Combined, 5e3),
    ];
    for (path, distribution, width_ohm) in shapes {
        let path = path.unwrap();
        let setup = Setup::new().with_parallel_path(path).unwrap();
        let row = *budget(&setup).row(Contribution::ParallelPath).unwrap();
        assert_eq!(row.distribution, distribution, "{path:?}");
        // The input is the conductance 1/R: its width is that of the path over R².
        let one_sided = path.below() > 0.0 || path.above() > 0.0;
        let width =
            if one_sided { exact(0.0).with_one_sided(path.below(), path.above()).unwrap().u() } else { width_ohm };
        assert!((row.width / 1e12_f64.recip() - width).abs() <= 1e-9 * width, "{path:?}: {}", row.width);
        assert_eq!(row.value, 1e-6);
    }
}

#[test]
fn sensitivities_have_the_signs_and_sizes_of_the_model() {
    let leads = Leads::from_wire(1.0, 0.75, 5).unwrap();
    let setup = Setup::new().with_leads(leads).with_parallel_path(exact(1e6).with_normal(1.0).unwrap()).unwrap();
    let setup = setup.with_known_tcr(exact(200.0).with_normal(1.0).unwrap()).unwrap().with_tcr_limit(50.0).unwrap();
    let setup = setup.with_temperature(exact(30.0).with_normal(0.1).unwrap(), 20.0).unwrap();
    let clause = Clause::new(0.01, 2.0).unwrap().with_step_outside_counts();
    let span = Span::new("20 kohm", 20e3, 10.0, 1e3, Marks::OL, clause).unwrap();
    let measured = evaluate(&span, &read(&span, &["4.86", "4.90"]), &setup).unwrap();
    let shown = 4880.0 - leads.ohm();
    let factor = 1.0 + 200e-6 * 10.0;
    let part = shown / (1.0 - shown / 1e6);
    let by_shown = (part / shown).powi(2) / factor;
    let expected = [
        by_shown,
        by_shown,
        by_shown,
        -by_shown,
        part * part / factor,
        -part * 10.0 / (factor * factor),
        -part * 10.0 / (factor * factor),
        -part * 200e-6 / (factor * factor),
    ];
    assert!((measured.estimate().value() - part / factor).abs() < 1e-9);
    for (contribution, expected) in Contribution::ALL.into_iter().zip(expected) {
        let row = measured.budget().row(contribution).unwrap();
        assert!((row.sensitivity / expected - 1.0).abs() < 1e-12, "{contribution:?}: {}", row.sensitivity);
    }
    assert_eq!(measured.readings(), 2);
    assert_eq!(measured.budget().row(Contribution::DisplayStep).unwrap().width, 5.0);
    let shares: Vec<f64> = measured.budget().rows().map(|row| row.u_ohm.powi(2)).collect();
    let variance: f64 = shares.iter().sum();
    for (row, square) in measured.budget().rows().zip(shares) {
        assert!((row.share - square / variance).abs() < 1e-12, "{row:?}");
    }
    // A lead read on a span whose step is outside its counts brings half of that step.
    let leads = Leads::from_reading(&span.read(b"0.10").unwrap(), &span).unwrap();
    let with_leads = evaluate(&span, &read(&span, &["4.86"]), &Setup::new().with_leads(leads)).unwrap();
    assert_eq!(with_leads.budget().row(Contribution::Leads).unwrap().width, 5.0);
}

#[test]
fn the_largest_share_dominates_and_nothing_does_where_nothing_is_uncertain() {
    let one = budget(&Setup::new());
    assert_eq!(one.dominant(), one.row(Contribution::AccuracyClause));
    let wide = Setup::new().with_parallel_path(exact(1e5).with_normal(3e4).unwrap()).unwrap();
    let path = budget(&wide);
    assert_eq!(path.dominant(), path.row(Contribution::ParallelPath));
    let narrow = Setup::new().with_parallel_path(exact(1e6).with_normal(1.0).unwrap()).unwrap();
    let clause = budget(&narrow);
    assert_eq!(clause.dominant(), clause.row(Contribution::AccuracyClause));
    let span = Span::new("exact", 2e3, 1.0, 1e3, Marks::OL, Clause::new(0.01, 0.0).unwrap()).unwrap();
    let nothing = evaluate(&span, &read(&span, &["0.000"]), &Setup::new()).unwrap();
    assert_eq!(nothing.budget().dominant(), None);
    assert!(nothing.budget().rows().all(|row| row.share == 0.0));
}

#[test]
fn a_budget_gives_its_numbers_and_its_text() {
    let setup = Setup::new().with_repeatability(20.0).unwrap().with_coverage_probability(0.99).unwrap();
    let measured = evaluate(twenty(), &read(twenty(), &["4.88"; 4]), &setup).unwrap();
    let found = measured.budget();
    assert_eq!(found.value_ohm(), 4880.0);
    assert_eq!(found.effective_dof(), f64::INFINITY);
    let half_width = twenty().clause_half_width_ohm(4880.0, None).unwrap();
    let (scatter, clause) = (10.0_f64, half_width / 3_f64.sqrt());
    assert!((found.u_ohm() - scatter.hypot(clause)).abs() < 1e-12);
    let share = 100.0 * scatter * scatter / (scatter * scatter + clause * clause);
    let expanded = found.expanded();
    let rows: Vec<f64> = found.rows().map(|row| row.u_ohm).collect();
    let text = format!(
        "scatter of the readings: {} ohm (normal, {share:.1} % of the variance)\n\
         accuracy clause of the meter: {} ohm (rectangular, {:.1} % of the variance)\n\
         result 4880 ohm, u {} ohm, U {} ohm (factor {:.3}, coverage probability 0.99)",
        rows[0],
        rows[1],
        100.0 - share,
        found.u_ohm(),
        expanded.half_width,
        expanded.coverage_factor
    );
    assert_eq!(found.to_string(), text);
    let scattered = evaluate(twenty(), &read(twenty(), &["4.00", "5.00", "4.50"]), &Setup::new()).unwrap();
    let dof = scattered.budget().effective_dof();
    assert!((2.0..2.5).contains(&dof), "{dof}");
}

#[test]
fn conditions_are_kept_as_they_were_set() {
    let leads = Leads::from_wire(1.0, 0.75, 5).unwrap();
    assert_eq!(Setup::new().leads(), None);
    assert_eq!(Setup::new().with_leads(leads).leads(), Some(&leads));
    assert_eq!(Setup::new().zero_error_common(), None);
    for common in [true, false] {
        assert_eq!(Setup::new().with_zero_error_common(common).zero_error_common(), Some(common));
    }
    assert_eq!(Setup::new().coverage_probability(), 0.95);
    assert_eq!(Setup::new().with_coverage_probability(0.5).unwrap().coverage_probability(), 0.5);
    assert!(Setup::new().spans().is_empty());
    assert_eq!(Setup::new().with_spans(Meter::example_hand_held().spans()).spans().len(), 6);
}

fn advice(kind: AdviceKind, expanded_now_ohm: f64) -> Advice {
    Advice {
        kind,
        contribution: Contribution::Scatter,
        share: 0.625,
        expanded_now_ohm,
        expanded_then_ohm: 1.5,
        number: 7,
    }
}

#[test]
fn advice_writes_three_figures_of_any_size() {
    let written = [
        (0.0, "0"),
        (5e-4, "5.00e-4"),
        (9.999e-4, "1.00e-3"),
        (0.001, "0.00100"),
        (0.009_99, "0.00999"),
        (0.01, "0.0100"),
        (0.0999, "0.0999"),
        (0.1, "0.100"),
        (0.999, "0.999"),
        (1.0, "1.00"),
        (9.99, "9.99"),
        (10.0, "10.0"),
        (99.9, "99.9"),
        (100.0, "100"),
        (999_999.0, "999999"),
        (1e6, "1.00e6"),
    ];
    for (ohm, text) in written {
        let said = advice(AdviceKind::MoreReadings, ohm).to_string();
        assert_eq!(said, format!("take 7 readings in all: U from {text} to 1.50 ohm"));
    }
}

#[test]
fn every_advice_in_full() {
    let said = |kind| advice(kind, 12.0).to_string();
    assert_eq!(
        said(AdviceKind::Dominates),
        "the scatter of the readings dominates: 62 % of the variance; U is 12.0 ohm"
    );
    assert_eq!(
        said(AdviceKind::ScatterUnknown),
        "one reading alone does not show its scatter: take 7, or give the repeatability known from before; U of 12.0 ohm \
         holds for a reading without scatter only"
    );
    assert_eq!(said(AdviceKind::OtherSpan), "use span number 8 of this meter: U from 12.0 to 1.50 ohm");
    assert_eq!(
        said(AdviceKind::LeadsNotTakenOff),
        "the leads are in the reading, and those of a hand-held read 0.1 to 2 ohm (common practice): touch the tips \
         together, read, and take that off"
    );
    assert_eq!(
        said(AdviceKind::FourWire),
        "connect by four wires, so that the leads drop out: U from 12.0 to 1.50 ohm"
    );
    assert_eq!(
        said(AdviceKind::Substitution),
        "compare with a known part of like value on the same span: the meter's error drops out, and U goes from 12.0 to \
         1.50 ohm and what the known part brings"
    );
    assert_eq!(
        said(AdviceKind::DisconnectPath),
        "disconnect the parallel path rather than correct for it: U from 12.0 to 1.50 ohm"
    );
    assert_eq!(said(AdviceKind::NearerReference), "measure at the reference temperature: U from 12.0 to 1.50 ohm");
}

#[test]
fn the_best_of_several_spans_is_advised_wherever_it_stands() {
    let spans = Meter::example_hand_held().spans();
    // 150 kilohm on 2 Mohm: 20 Mohm is worse, 200 kohm better.
    let (used, worse, better) = (spans[4], spans[5], spans[3]);
    for (among, index) in [([worse, used, better], 2), ([better, used, worse], 0)] {
        let setup = Setup::new().with_spans(&among);
        let measured = evaluate(&used, &read(&used, &["0.150"]), &setup).unwrap();
        let advice = *measured.advice().find(|advice| advice.kind == AdviceKind::OtherSpan).unwrap();
        assert_eq!(advice.number, index);
        let half_width = better.clause_half_width_ohm(150e3, None).unwrap();
        assert!((advice.expanded_then_ohm / (0.95 * half_width) - 1.0).abs() < 1e-9);
    }
    let only_worse = [worse, used];
    let measured = evaluate(&used, &read(&used, &["0.150"]), &Setup::new().with_spans(&only_worse)).unwrap();
    assert!(measured.advice().all(|advice| advice.kind != AdviceKind::OtherSpan));
}

#[test]
fn a_parallel_path_is_compared_with_what_is_left_without_leads_and_keeps_its_side() {
    let leads = Leads::from_wire(10.0, 0.75, 5).unwrap();
    // Between what is shown without the leads and what is shown: no contradiction.
    let path = exact(4880.0 - 0.5 * leads.ohm());
    let setup = Setup::new().with_leads(leads).with_parallel_path(path).unwrap();
    assert!(evaluate(twenty(), &read(twenty(), &["4.88"]), &setup).is_ok());
    let path = exact(4880.0 - 1.5 * leads.ohm());
    let setup = Setup::new().with_leads(leads).with_parallel_path(path).unwrap();
    assert!(evaluate(twenty(), &read(twenty(), &["4.88"]), &setup).is_err());
    // A path that may be lower takes more from the reading: the part may be higher.
    let path = exact(1e6).with_one_sided(3e3, 0.0).unwrap();
    let setup = Setup::new().with_parallel_path(path).unwrap();
    let measured = evaluate(twenty(), &read(twenty(), &["4.88"]), &setup).unwrap();
    let (below, above) = (measured.estimate().below(), measured.estimate().above());
    assert!(below == 0.0 && above > 0.0, "{below} {above}");
}
