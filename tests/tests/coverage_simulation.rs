//! 95 % intervals hold 95 % over meters whose error lies anywhere within the clause with equal probability.
//! Seeds are fixed; a case fails below 95 % less four standard errors of the simulation.

use rand::{RngExt, SeedableRng};
use rand_chacha::ChaCha8Rng;
use rand_distr::{Distribution, StandardNormal};
use reckohm::measurement::{Setup, evaluate};
use reckohm::meter::Meter;
use reckohm::uncertainty::Estimate;

const TRIALS: u32 = 5_000;

fn within(random: &mut ChaCha8Rng, half_width: f64) -> f64 {
    (2.0 * random.random::<f64>() - 1.0) * half_width
}

fn held_enough(held: u32, trials: u32, what: &str) {
    let fraction = f64::from(held) / f64::from(trials);
    let least = 0.95 - 4.0 * (0.95f64 * 0.05 / f64::from(trials)).sqrt();
    assert!(fraction >= least, "{what}: {fraction} held, {least} wanted");
    println!("{what}: {fraction:.4} held");
}

#[test]
fn intervals_hold_for_one_and_two_rectangular_parts_and_few_repeats() {
    let mut random = ChaCha8Rng::seed_from_u64(20_260_101);
    for n in [2_u32, 3, 5, 10] {
        for b in [0.0, 0.6] {
            for scatter in [0.1, 0.5, 2.0] {
                let mut held = 0;
                for trial in 0..TRIALS {
                    let meter = within(&mut random, 1.0) + within(&mut random, b);
                    let readings: Vec<f64> = (0..n)
                        .map(|_| {
                            meter
                                + scatter * <StandardNormal as Distribution<f64>>::sample(&StandardNormal, &mut random)
                        })
                        .collect();
                    let e = Estimate::from_repeats(&readings).unwrap();
                    let e = e.with_rectangular(1.0).unwrap().with_rectangular(b).unwrap();
                    // The interval holds the true value, 0, exactly if the tail beyond it is at least 2.5 %: one evaluation
                    // in place of a search. The interval itself is looked at now and then.
                    let holds = e.probability_above(0.0).unwrap().min(e.probability_below(0.0).unwrap()) >= 0.025;
                    if trial % 200 == 0 {
                        let interval = e.expanded(0.95).unwrap();
                        assert_eq!(holds, interval.lower <= 0.0 && interval.upper >= 0.0);
                    }
                    held += u32::from(holds);
                }
                held_enough(held, TRIALS, &format!("{n} readings, second part {b}, scatter {scatter}"));
            }
        }
    }
}

/// The whole line: a part, a meter with an error of its own, a display that rounds, texts, readings, evaluation.
#[test]
fn intervals_hold_from_display_text_on() {
    let mut random = ChaCha8Rng::seed_from_u64(20_260_102);
    let meter = Meter::example_hand_held();
    let span = meter
        .spans()
        .iter()
        .find(|span| span.full_scale_ohm() == 20_000.0 || span.full_scale_ohm() == 19_990.0)
        .unwrap();
    let step = span.step_ohm();
    for n in [2_u32, 3, 5, 10] {
        for scatter in [0.2, 1.0, 4.0] {
            let (mut held, trials) = (0, 2_000);
            for _ in 0..trials {
                let part = 3_000.0 + 9_000.0 * random.random::<f64>();
                // The error uniform within the clause as a whole: the display's rounding is inside its counts.
                let limit = span.clause_half_width_ohm(part, None).unwrap() - 0.5 * step;
                let shown = part + within(&mut random, limit);
                let readings: Vec<_> = (0..n)
                    .map(|_| {
                        let noise = <StandardNormal as Distribution<f64>>::sample(&StandardNormal, &mut random);
                        let text = format!("{:.2}", (shown + scatter * step * noise) / 1000.0);
                        span.read(text.as_bytes()).unwrap()
                    })
                    .collect();
                let measured = evaluate(span, &readings, &Setup::new()).unwrap();
                let e = measured.estimate();
                held += u32::from(e.probability_above(part).unwrap().min(e.probability_below(part).unwrap()) >= 0.025);
            }
            held_enough(held, trials, &format!("from text: {n} readings, scatter {scatter} steps"));
        }
    }
}
