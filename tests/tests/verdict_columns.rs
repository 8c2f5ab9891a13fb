//! Columns of measurements: at every width of vector instructions the bits of the single call, and nothing written where one
//! of them cannot be judged.

use reckohm::batch::{VectorBits, limit_vector_bits};
use reckohm::number::{Kind, Real};
use reckohm::uncertainty::Estimate;
use reckohm::verdict::{Column, Columns, Decision, Limits, Rule, VerdictError, answer, conformance_probability};
use reckohm_tests::random::Random;

const WIDTHS: [VectorBits; 3] = [VectorBits::Upto128, VectorBits::Upto256, VectorBits::Upto512];

/// How a column comes about: one number, or one for each element.
fn numbers<R: Real>(random: &mut Random, count: usize, mut draw: impl FnMut(&mut Random) -> f64) -> (Vec<R>, bool) {
    let each = random.below(2) == 0;
    let first = R::of_f64(draw(random));
    ((0..count).map(|_| if each { R::of_f64(draw(random)) } else { first }).collect(), each)
}

fn column<R: Real>(numbers: &(Vec<R>, bool)) -> Column<'_, R> {
    if numbers.1 { Column::Each(&numbers.0) } else { Column::One(numbers.0.first().copied().unwrap_or(R::ONE)) }
}

/// Widths of parts: none, such as meters leave, near where another formula takes over, and next to nothing.
fn width(random: &mut Random) -> f64 {
    match random.below(5) {
        0 => 0.0,
        1 => 69.0,
        2 => 4.0 + random.unit(),
        3 => 10f64.powf(6.0 * random.unit() - 4.0),
        _ => 3.0,
    }
}

fn every_width_has_the_bits_of_the_single_call<R: Real>(seed: u64, bits_of: fn(R) -> u64) {
    let mut random = Random::new(seed);
    let lit = R::of_f64;
    let all_limits = [
        Limits::from_tolerance(lit(4700.0), lit(0.05)).unwrap(),
        Limits::at_most(lit(4700.0)).unwrap(),
        Limits::at_least(lit(4700.0)).unwrap(),
    ];
    let rules = [Rule::simple_acceptance(), Rule::guarded(lit(0.05)).unwrap(), Rule::max_risk(lit(0.01)).unwrap()];
    let mut answers = [0; 3];
    for case in 0..120 {
        let count = [0, 1, 7, 16, 255, 256, 257, 700][case % 8];
        let value = numbers::<R>(&mut random, count, |random| match random.below(20) {
            0 => 4935.0,
            1 => -4.7,
            2 => 1e-30,
            _ => 4300.0 + 800.0 * random.unit(),
        });
        let u = numbers(&mut random, count, width);
        let a = numbers(&mut random, count, width);
        // Mostly normal parts; a general shape here and there takes a stretch from the fast loops.
        let general = random.below(3) == 0;
        let few = |random: &mut Random| if general && random.below(200) == 0 { 4.0 } else { f64::INFINITY };
        let dof = numbers(&mut random, count, few);
        let measured = Columns { value: column(&value), u: column(&u), dof: column(&dof), rectangular: column(&a) };
        let (limits, rule) = (all_limits[case % 3], random.one_of(&rules));
        let single: Vec<Estimate<R>> = (0..count).map(|index| measured.estimate(index).unwrap()).collect();
        let wanted: Vec<Decision<R>> = single.iter().map(|each| answer(each, &limits, rule)).collect();
        for bits in WIDTHS {
            limit_vector_bits(bits);
            let mut probability = vec![R::ONE; count];
            measured.conformance_probability_into(&limits, &mut probability).unwrap();
            let mut decisions = vec![Decision::UNMADE; count];
            measured.answer_into(&limits, rule, &mut decisions).unwrap();
            for index in 0..count {
                let by_itself = conformance_probability(&single[index], &limits);
                assert_eq!(bits_of(by_itself), bits_of(probability[index]), "{bits:?} {:?}", single[index]);
                assert_eq!(bits_of(by_itself), bits_of(decisions[index].conformance_probability));
                assert_eq!(decisions[index], wanted[index], "{bits:?} {:?} {limits:?} {rule}", single[index]);
            }
            // Cut in two anywhere, as for two threads.
            let middle = random.below(count as u64 + 1) as usize;
            let (head, tail) = decisions.split_at_mut(middle);
            head.fill(Decision::UNMADE);
            tail.fill(Decision::UNMADE);
            measured.part(0..middle).answer_into(&limits, rule, head).unwrap();
            measured.part(middle..count).answer_into(&limits, rule, tail).unwrap();
            assert_eq!(decisions, wanted);
        }
        for decision in wanted {
            answers[decision.answer as usize - 1] += 1;
        }
    }
    limit_vector_bits(VectorBits::Upto512);
    assert!(answers.iter().all(|count| *count > 100), "{answers:?}");
}

// One test, since the width is the whole process's.
#[test]
fn every_width_has_the_bits_of_the_single_call_in_either_precision() {
    every_width_has_the_bits_of_the_single_call::<f64>(106, f64::to_bits);
    every_width_has_the_bits_of_the_single_call::<f32>(32, |x| u64::from(x.to_bits()));
}

#[test]
fn the_first_that_cannot_be_judged_is_named_and_nothing_written() {
    let limits = Limits::at_most(100.0).unwrap();
    let rule = Rule::guarded(0.05).unwrap();
    let good = vec![99.0; 600];
    let normal = vec![f64::INFINITY; 600];
    let bad: [(usize, f64); 4] = [(0, f64::NAN), (1, -1.0), (2, 0.5), (3, f64::INFINITY)];
    for (which, number) in bad {
        let mut columns = [good.clone(), vec![1.0; 600], normal.clone(), vec![2.0; 600]];
        columns[which][300] = number;
        columns[which][599] = number;
        let [value, u, dof, rectangular] = columns.each_ref().map(|column| Column::Each(column.as_slice()));
        let measured = Columns { value, u, dof, rectangular };
        let (mut out, mut decisions) = (vec![7.0; 600], vec![Decision::UNMADE; 600]);
        let error = measured.conformance_probability_into(&limits, &mut out).unwrap_err();
        assert!(matches!(error, VerdictError::Element { index: 300, failed: 2, .. }), "{error}");
        assert!(
            error.to_string().starts_with("judging an array: element 300, the first of 2 that failed: "),
            "{error}"
        );
        let again = VerdictError::from_detail(&error.detail()).unwrap();
        assert_eq!((again.to_string(), again.kind()), (error.to_string(), error.kind()));
        let of_answers = measured.answer_into(&limits, rule, &mut decisions).unwrap_err();
        assert_eq!(of_answers.to_string(), error.to_string());
        assert!(out.iter().all(|x| *x == 7.0) && decisions.iter().all(|made| *made == Decision::UNMADE));

        let mut valid = vec![true; 600];
        assert_eq!(measured.conformance_probability_into_valid(&limits, &mut out, &mut valid), Ok(2));
        for (index, (x, valid)) in out.iter().zip(&valid).enumerate() {
            assert_eq!((*x == 7.0, *valid), (index == 300 || index == 599, !(index == 300 || index == 599)));
        }
        let mut valid = vec![true; 600];
        assert_eq!(measured.answer_into_valid(&limits, rule, &mut decisions, &mut valid), Ok(2));
        assert_eq!((decisions[300], valid[300], valid[301]), (Decision::UNMADE, false, true));
        assert_eq!(decisions[301].conformance_probability, out[301]);
    }
}

#[test]
fn columns_of_another_length_are_refused() {
    let limits = Limits::at_most(100.0).unwrap();
    let three = [1.0; 3];
    let measured = Columns {
        value: Column::Each(&three),
        u: Column::Each(&three[..2]),
        dof: Column::One(f64::INFINITY),
        rectangular: Column::One(0.0),
    };
    let error = measured.conformance_probability_into(&limits, &mut [0.0; 3]).unwrap_err();
    assert_eq!(error, VerdictError::Lengths { estimates: 2, room: 3 });
    assert_eq!(error.kind(), Kind::WrongCount);
    let all = Columns { u: Column::One(1.0), ..measured };
    assert!(all.conformance_probability_into_valid(&limits, &mut [0.0; 3], &mut [true; 2]).is_err());
}
