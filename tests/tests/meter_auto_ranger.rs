//! The auto-ranger: where it comes to rest, how often it switches at most, and what it refuses.

use proptest::prelude::*;
use reckohm::meter::{AutoRanger, Clause, Marks, Meter, RangerAction, RangerState, Reading, Span, Step};
use reckohm::number::Kind;
use reckohm_tests::random::Random;

use RangerAction::{Accept, Again, BelowLowest, BeyondHighest, Switch};

fn hand_held() -> AutoRanger {
    AutoRanger::new(&Meter::example_hand_held()).unwrap()
}

/// What the meter shows of this resistance on this span.
fn shown(meter: &Meter, index: usize, ohm: f64) -> Reading {
    let span = meter.span(index).unwrap();
    span.read(span.display_text(ohm).unwrap().as_bytes()).unwrap()
}

fn step(ranger: &mut AutoRanger, meter: &Meter, ohm: f64) -> RangerAction {
    ranger.step(&shown(meter, ranger.index(), ohm)).unwrap()
}

/// How often the hysteresis can double.
fn doublings(ranger: &AutoRanger) -> usize {
    (ranger.widest_hysteresis() / ranger.hysteresis()).log2().ceil() as usize
}

/// A ladder of spans of 200 to 20 000 counts, each end 1.02 to 20 times the one before.
fn ladder(random: &mut Random) -> Vec<Span> {
    let count = 2 + random.below(15) as usize;
    let mut ends = vec![10.0_f64.powi(random.between(-2, 3) as i32).max(0.1)];
    while ends.len() < count {
        let ratio = if random.below(2) == 0 { 10.0 } else { 1.02 + 19.0 * random.unit() * random.unit() };
        let next = ends[ends.len() - 1] * ratio;
        if next > 1.0e9 {
            break;
        }
        ends.push(next);
    }
    let clause = Clause::new(0.01 * random.unit(), 3.0 * random.unit() + 0.1).unwrap();
    let mut spans: Vec<Span> = Vec::new();
    for end in ends {
        // The step as the decimal that was meant.
        let step: f64 = format!("1e{}", (end / 2000.0).log10().floor()).parse().unwrap();
        let end = format!("{:.6}", (end / step).round() * step).parse().unwrap();
        let span = Span::new("span", end, step, 1.0, Marks::OL, clause).unwrap();
        if spans.last().is_none_or(|before| before.full_scale_ohm() < end) {
            spans.push(span);
        }
    }
    spans
}

/// The convergence that is promised: for any constant resistance, from any span, within one switch more than there are spans
/// it comes to rest on the lowest span that shows it; only from above, and only where the reading is within hysteresis and
/// clause of the end of that span, on the one above. There it stays.
fn comes_to_rest(ranger: &mut AutoRanger, meter: &Meter, ohm: f64, from: usize) -> Result<(), TestCaseError> {
    let count = meter.spans().len();
    let mut switches = 0;
    let rest = loop {
        match step(ranger, meter, ohm) {
            Switch { .. } => {
                switches += 1;
                prop_assert!(switches <= count, "{} switches for {} ohm from {}", switches, ohm, from);
                for left in (0..ranger.discard()).rev() {
                    prop_assert_eq!(step(ranger, meter, ohm), Again { left });
                }
            }
            Again { .. } => prop_assert!(false, "a reading discarded without a switch"),
            rest => break rest,
        }
    };
    let holds = |index: usize| !shown(meter, index, ohm).over();
    let at = ranger.index();
    match (0..count).find(|index| holds(*index)) {
        None => prop_assert_eq!((rest, at), (BeyondHighest, count - 1)),
        Some(lowest) => {
            prop_assert!(at == lowest || from > lowest, "{} ohm from {}: {} instead of {}", ohm, from, at, lowest);
            prop_assert!(at >= lowest);
            if at > lowest {
                let reading = shown(meter, at, ohm).ohm().abs();
                let bound = reading + meter.spans()[at].clause_half_width_ohm(reading, None).unwrap();
                for below in lowest..at {
                    let end = meter.spans()[below].full_scale_ohm();
                    prop_assert!(bound >= 0.95 * end * (1.0 - 1e-12), "{} ohm would fit {}", ohm, below);
                }
            }
            let below = at == 0 && shown(meter, 0, ohm).ohm() < meter.spans()[0].step_ohm();
            prop_assert_eq!(rest, if below { BelowLowest } else { Accept });
        }
    }
    for _ in 0..20 {
        prop_assert_eq!(step(ranger, meter, ohm), rest, "it does not stay");
    }
    Ok(())
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 400, ..ProptestConfig::default() })]

    #[test]
    fn a_constant_resistance_comes_to_rest_on_the_lowest_span_that_holds_it(seed: u64, discard in 0_u32..4) {
        let mut random = Random::new(seed);
        let made = ladder(&mut random);
        for meter in [Meter::new(&made).unwrap(), Meter::example_hand_held(), Meter::example_bench()] {
            let spans = meter.spans();
            let (lowest, top) = (spans[0].full_scale_ohm(), spans[spans.len() - 1].full_scale_ohm());
            let fresh = AutoRanger::new(&meter).unwrap().with_discard(discard);
            for _ in 0..8 {
                let size = (lowest / 1.0e4) * (4.0e4 * top / lowest).powf(random.unit());
                let end = spans[random.below(spans.len() as u64) as usize].full_scale_ohm();
                let near = end * (1.0 - 0.1 * random.unit());
                let ohm = random.one_of(&[size, -size, end, near, 0.0]);
                let start = random.below(spans.len() as u64) as usize;
                comes_to_rest(&mut fresh.with_start(start).unwrap(), &meter, ohm, start)?;
            }
        }
    }

    /// However the readings move within x of the end of a span, it comes to rest: the steps down come in at most log2(w/h) + 1
    /// bouts, and a bout has at most as many switches as there are spans.
    #[test]
    fn no_sequence_near_the_end_of_a_span_keeps_it_switching(
        seed: u64, hysteresis in 0.001_f64..0.5, widening in 0.0_f64..1.0, share in 0.0_f64..1.0, kind in 0..4,
    ) {
        let mut random = Random::new(seed);
        let made = ladder(&mut random);
        let widest = hysteresis + (0.9 - hysteresis) * widening;
        // (1 - x)/(1 + x) = 1 - w.
        let x = share * widest / (2.0 - widest);
        for meter in [Meter::new(&made).unwrap(), Meter::example_hand_held(), Meter::example_bench()] {
            let spans = meter.spans();
            let end = spans[random.below(spans.len() as u64) as usize].full_scale_ohm();
            let start = random.below(spans.len() as u64) as usize;
            let fresh = AutoRanger::new(&meter).unwrap().with_hysteresis(hysteresis, widest).unwrap();
            let mut ranger = fresh.with_start(start).unwrap();
            let (low, high) = (end * (1.0 - x), end * (1.0 + x));
            let (mut bouts, mut switches, mut went_down) = (0, 0, false);
            for turn in 0..2000 {
                let ohm = match kind {
                    0 => low + (high - low) * random.unit(),
                    1 => random.one_of(&[low, high, end]),
                    // The worst that can be done: beyond the span where possible, else as low as possible.
                    2 => if high >= spans[ranger.index()].full_scale_ohm() { high } else { low },
                    // The same with long quiet stretches between.
                    _ => if turn % 64 < 60 { end } else if high >= spans[ranger.index()].full_scale_ohm() { high } else { low },
                };
                let at = ranger.index();
                if let Switch { to } = ranger.step_ohm(ohm).unwrap() {
                    switches += 1;
                    bouts += usize::from(to < at && !went_down);
                    went_down = to < at;
                }
            }
            let most = doublings(&fresh) + 1;
            prop_assert!(bouts <= most, "{} bouts, {} at most", bouts, most);
            prop_assert!(switches <= 2 * (most + 1) * spans.len(), "{} switches", switches);
        }
    }

    /// What happened before is forgotten once the readings are far away: then it is as good as new.
    #[test]
    fn a_contested_end_does_not_keep_it_from_other_parts(seed: u64) {
        let mut random = Random::new(seed);
        let meter = Meter::example_hand_held();
        for end in [200.0, 2.0e3, 20.0e3, 200.0e3, 2.0e6] {
            let mut ranger = AutoRanger::new(&meter).unwrap();
            for _ in 0..50 {
                ranger.step_ohm(random.one_of(&[0.68 * end, 1.3 * end])).unwrap();
            }
            let ohm = end * random.one_of(&[0.001, 0.01, 0.1, 0.4, 2.5, 10.0, 100.0]);
            let from = ranger.index();
            comes_to_rest(&mut ranger, &meter, ohm, from)?;
            prop_assert_eq!(ranger.state().hysteresis, ranger.hysteresis());
        }
    }

    /// The state is the whole of what it knows, and it agrees with the stateless step while nothing is contested.
    #[test]
    fn the_state_is_all_that_it_knows(seed: u64, discard in 0_u32..3) {
        let mut random = Random::new(seed);
        let meter = Meter::example_bench();
        let fresh = AutoRanger::new(&meter).unwrap().with_discard(discard);
        let mut ranger = fresh;
        for _ in 0..300 {
            let ohm = random.one_of(&[110.0, 130.0, 1.1e3, 1.3e3, 9.0e3, 13.0e3, 1.0e7, 2.0e8, -3.0, 0.0]);
            let mut again = fresh.with_state(ranger.state()).unwrap();
            prop_assert_eq!(again, ranger);
            let index = ranger.index();
            let reading = shown(&meter, index, ohm);
            let (state, action) = (ranger.state(), ranger.step(&reading).unwrap());
            prop_assert_eq!(again.step(&reading).unwrap(), action);
            prop_assert_eq!(again, ranger);
            if state.left == 0 && ranger.state().hysteresis == fresh.hysteresis() {
                let without_state = match meter.next_span(index, &reading).unwrap() {
                    Step::Up(to) | Step::Down(to) => Switch { to },
                    Step::BeyondHighest => BeyondHighest,
                    Step::Stay if index == 0 && reading.ohm() < 0.001 => BelowLowest,
                    Step::Stay => Accept,
                };
                prop_assert_eq!(action, without_state);
            }
        }
    }
}

/// A sequence that would send a meter without memory up and down for ever.
#[test]
fn a_wobble_of_a_tenth_costs_four_switches() {
    let meter = Meter::example_hand_held();
    let mut ranger = hand_held().with_start(1).unwrap();
    let mut actions = Vec::new();
    for _ in 0..10 {
        for ohm in [2200.0, 1800.0] {
            actions.push(step(&mut ranger, &meter, ohm));
        }
    }
    let (up, down) = (Switch { to: 2 }, Switch { to: 1 });
    assert_eq!(actions[..4], [up, down, up, Accept]); // 1800 + 44.4 is below 1900, not below 1800
    assert!(actions[4..].iter().all(|action| *action == Accept));
    assert_eq!(
        ranger.state(),
        RangerState { index: 2, left: 0, hysteresis: 0.1, contested: Some(1), descended: false }
    );
    // Without the state it goes on for ever.
    let stateless = |index: usize, ohm: f64| meter.next_span(index, &shown(&meter, index, ohm)).unwrap();
    assert_eq!((stateless(1, 2200.0), stateless(2, 1800.0)), (Step::Up(2), Step::Down(1)));
}

/// The bound is reached: a third to either side takes all doublings there are.
#[test]
fn the_worst_wobble_takes_every_doubling() {
    let mut ranger = hand_held().with_start(1).unwrap();
    let mut downs = 0;
    for _ in 0..1000 {
        let ohm = if ranger.index() == 1 { 2000.0 * 1.33 } else { 2000.0 * 0.67 };
        if ranger.step_ohm(ohm).unwrap() == (Switch { to: 1 }) {
            downs += 1;
        }
    }
    assert_eq!((downs, doublings(&ranger)), (3, 4)); // 1340 + 40.7 is below 1900, 1800 and 1600, not below 1200
    assert_eq!(ranger.state().hysteresis, 0.4);
    // Beyond half of the end it is no wobble any more.
    assert_eq!(ranger.step_ohm(990.0).unwrap(), Switch { to: 1 });
    assert_eq!(ranger.state().hysteresis, 0.05);
}

#[test]
fn open_goes_up_one_at_a_time_and_stays_beyond() {
    let meter = Meter::example_hand_held();
    let mut ranger = hand_held().with_start(0).unwrap().with_discard(1);
    let mut ups = 0;
    for _ in 0..30 {
        match step(&mut ranger, &meter, 1.0e9) {
            Switch { to } => {
                ups += 1;
                assert_eq!(to, ups);
                assert_eq!(step(&mut ranger, &meter, 1.0e9), Again { left: 0 });
            }
            other => assert_eq!((other, ups, ranger.index()), (BeyondHighest, 5, 5)),
        }
    }
    // A negative over-range is one too.
    assert_eq!(ranger.step_ohm(-1.0e9).unwrap(), BeyondHighest);
}

#[test]
fn far_below_goes_straight_to_the_lowest_that_surely_holds() {
    let meter = Meter::example_bench();
    let mut ranger = AutoRanger::new(&meter).unwrap();
    assert_eq!(step(&mut ranger, &meter, 4700.0), Switch { to: 2 }); // ±2.4 kohm on 100 Mohm: 7.1 is below 11.4
    assert_eq!(step(&mut ranger, &meter, 4700.0), Accept);
    ranger.restart(5).unwrap();
    assert_eq!(step(&mut ranger, &meter, 15.0), Switch { to: 1 }); // ±240 ohm on 10 Mohm
    assert_eq!(step(&mut ranger, &meter, 15.0), Switch { to: 0 });
    assert_eq!(step(&mut ranger, &meter, 15.0), Accept);
}

#[test]
fn below_what_the_lowest_span_resolves() {
    let mut ranger = hand_held().with_start(0).unwrap();
    for (ohm, action) in
        [(0.0, BelowLowest), (-0.0, BelowLowest), (0.09, BelowLowest), (-0.3, BelowLowest), (0.1, Accept)]
    {
        assert_eq!(ranger.step_ohm(ohm).unwrap(), action, "{ohm}");
    }
    // On a higher span 0 is only a reason to go down.
    ranger.restart(1).unwrap();
    assert_eq!(ranger.step_ohm(0.0).unwrap(), Switch { to: 0 });
}

/// While the input settles nothing counts, not even over-range.
#[test]
fn settling_readings_are_discarded() {
    let mut ranger = hand_held().with_start(1).unwrap().with_discard(3);
    assert_eq!(ranger.step_ohm(1500.0).unwrap(), Accept, "none at first");
    assert_eq!(ranger.step_ohm(2500.0).unwrap(), Switch { to: 2 });
    for left in [2, 1, 0] {
        assert_eq!(ranger.step_ohm(1.0e9).unwrap(), Again { left });
    }
    assert_eq!(ranger.step_ohm(2500.0).unwrap(), Accept);
    assert_eq!(ranger.step_ohm(100.0).unwrap(), Switch { to: 0 });
    ranger.restart(0).unwrap();
    assert_eq!(ranger.step_ohm(100.0).unwrap(), Accept, "none after a restart");
}

#[test]
fn what_is_refused_leaves_it_as_it_was() {
    let meter = Meter::example_hand_held();
    let mut ranger = hand_held().with_start(1).unwrap().with_discard(2);
    ranger.step_ohm(2500.0).unwrap();
    let before = ranger;
    for (reading, kind) in [
        (shown(&meter, 4, 500.0e3), Kind::BeyondFullScale),
        (shown(&meter, 1, 2500.0), Kind::Contradiction),
        (shown(&meter, 3, 2.5e6), Kind::Contradiction),
    ] {
        assert_eq!(ranger.step(&reading).unwrap_err().kind(), kind);
    }
    for ohm in [f64::NAN, f64::INFINITY, f64::NEG_INFINITY] {
        assert_eq!(ranger.step_ohm(ohm).unwrap_err().kind(), Kind::NotFinite);
    }
    assert_eq!(ranger.restart(6).unwrap_err().kind(), Kind::NoSuchSpan);
    assert_eq!(ranger, before);
    assert_eq!(before.with_start(usize::MAX).unwrap_err().kind(), Kind::NoSuchSpan);
    for (hysteresis, widest, kind) in [
        (0.0, 0.5, Kind::OutOfRange),
        (0.05, 1.0, Kind::OutOfRange),
        (f64::NAN, 0.5, Kind::NotFinite),
        (0.3, 0.2, Kind::Contradiction),
    ] {
        assert_eq!(before.with_hysteresis(hysteresis, widest).unwrap_err().kind(), kind);
    }
    let state = before.state();
    for (strange, kind) in [
        (RangerState { index: 6, ..state }, Kind::NoSuchSpan),
        (RangerState { contested: Some(6), ..state }, Kind::NoSuchSpan),
        (RangerState { left: 3, ..state }, Kind::Contradiction),
        (RangerState { hysteresis: 0.04, ..state }, Kind::Contradiction),
        (RangerState { hysteresis: 0.6, ..state }, Kind::Contradiction),
        (RangerState { hysteresis: f64::NAN, ..state }, Kind::Contradiction),
    ] {
        assert_eq!(before.with_state(strange).unwrap_err().kind(), kind, "{strange:?}");
    }
    let clause = Clause::new(0.01, 2.0).unwrap();
    let many: Vec<Span> =
        (1..=17).map(|n| Span::new("n", f64::from(n) * 100.0, 1.0, 1.0, Marks::OL, clause).unwrap()).collect();
    assert_eq!(AutoRanger::new(&Meter::new(&many).unwrap()).unwrap_err().kind(), Kind::WrongCount);
    assert_eq!(AutoRanger::new(&Meter::new(&many[..16]).unwrap()).unwrap().index(), 15);
}

/// With its clause the reading has to be below the end of the lower span by more than the hysteresis, not by just that.
#[test]
fn a_reading_whose_clause_ends_just_at_the_hysteresis_stays() {
    let count = Clause::new(0.0, 1.0).unwrap();
    let span = |full_scale, step| Span::new("span", full_scale, step, 1.0, Marks::OL, count).unwrap();
    let spans = [span(2.0e3, 1.0), span(20.0e3, 10.0)];
    let meter = Meter::new(&spans).unwrap();
    let mut ranger = AutoRanger::new(&meter).unwrap();
    // 1890 and one count of 10 is 95 % of 2000.
    assert_eq!(meter.next_span(1, &shown(&meter, 1, 1890.0)).unwrap(), Step::Stay);
    assert_eq!(step(&mut ranger, &meter, 1890.0), Accept);
    assert_eq!(meter.next_span(1, &shown(&meter, 1, 1880.0)).unwrap(), Step::Down(0));
    assert_eq!(step(&mut ranger, &meter, 1880.0), Switch { to: 0 });
}

/// For another part, and with another hysteresis, it is as one that has learnt nothing.
#[test]
fn a_restart_forgets_what_was_learnt() {
    let fresh = hand_held().with_start(1).unwrap();
    let mut learnt = fresh;
    for ohm in [2200.0, 1800.0, 2200.0] {
        learnt.step_ohm(ohm).unwrap();
    }
    assert_eq!((learnt.state().contested, learnt.state().hysteresis), (Some(1), 0.1));
    let mut restarted = learnt;
    restarted.restart(1).unwrap();
    assert_eq!(restarted, fresh);
    assert_eq!(learnt.with_hysteresis(0.05, 0.5).unwrap(), fresh.with_start(2).unwrap());
    let mut descended = hand_held().with_discard(1);
    descended.step_ohm(100.0).unwrap();
    assert!(descended.state().descended && descended.state().left == 1);
    descended.restart(5).unwrap();
    assert_eq!(descended, hand_held().with_discard(1));
}
