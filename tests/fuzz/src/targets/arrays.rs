//! Array forms against the same questions asked one by one: the same bits, the same first error, nothing written on failure.

use reckohm::distribution::{self, DistributionError};
use reckohm::preferred::{self, PreferredError, Series};
use reckohm::uncertainty::Estimate;
use reckohm::verdict::{
    Limits, Rule, VerdictError, conformance_probability, conformance_probability_into, judge, judge_into,
};

use super::coverage::draw;
use crate::accepted;
use crate::input::Input;

/// What stands in an output before the call, and that no function gives.
const BEFORE: f64 = -7.25;

type One = fn(f64) -> Option<f64>;
type Into = fn(&[f64], &mut [f64]) -> Result<(), Option<(u64, u64)>>;
type IntoValid = fn(&[f64], &mut [f64], &mut [bool]) -> Option<usize>;

/// The three forms of a function of one number; `$index` is where its error says which element failed first.
macro_rules! forms {
    ($module:ident :: $one:ident, $into:ident, $valid:ident $(, $argument:expr)?; $error:ident) => {
        (
            (|x| accepted!($error, $module::$one(x $(, $argument)?))) as One,
            (|xs, out| match $module::$into(xs $(, $argument)?, out) {
                Ok(()) => Ok(()),
                Err(error) => {
                    accepted!($error, Err::<(), _>(error));
                    match error {
                        $error::Element { index, failed, .. } => Err(Some((index, failed))),
                        _ => Err(None),
                    }
                }
            }) as Into,
            (|xs, out, valid| $module::$valid(xs $(, $argument)?, out, valid).ok()) as IntoValid,
        )
    };
}

const FORMS: [(One, Into, IntoValid); 11] = [
    forms!(distribution::normal_below, normal_below_into, normal_below_into_valid; DistributionError),
    forms!(distribution::normal_above, normal_above_into, normal_above_into_valid; DistributionError),
    forms!(distribution::normal_quantile, normal_quantile_into, normal_quantile_into_valid; DistributionError),
    forms!(distribution::normal_quantile_above, normal_quantile_above_into, normal_quantile_above_into_valid;
        DistributionError),
    forms!(distribution::t_below, t_below_into, t_below_into_valid, 2.5; DistributionError),
    forms!(distribution::t_above, t_above_into, t_above_into_valid, 14.0; DistributionError),
    forms!(distribution::t_quantile, t_quantile_into, t_quantile_into_valid, 3.0; DistributionError),
    forms!(distribution::t_quantile_above, t_quantile_above_into, t_quantile_above_into_valid, 0.01; DistributionError),
    forms!(preferred::nearest, nearest_into, nearest_into_valid, Series::E24; PreferredError),
    forms!(preferred::below, below_into, below_into_valid, Series::E96; PreferredError),
    forms!(preferred::above, above_into, above_into_valid, Series::E3; PreferredError),
];

fn bits(values: &[f64]) -> Vec<u64> {
    values.iter().map(|value| value.to_bits()).collect()
}

fn numbers(values: &[f64], (one, into, into_valid): (One, Into, IntoValid)) {
    let expected: Vec<Option<f64>> = values.iter().map(|x| one(*x)).collect();
    let failed = expected.iter().filter(|result| result.is_none()).count();
    let mut out = vec![BEFORE; values.len()];
    match into(values, &mut out) {
        Ok(()) => {
            assert_eq!(failed, 0);
            assert_eq!(bits(&out), expected.iter().map(|x| x.expect("none failed").to_bits()).collect::<Vec<_>>());
        }
        Err(element) => {
            let first = expected.iter().position(Option::is_none).expect("one failed alone");
            assert_eq!(element, Some((first as u64, failed as u64)));
            assert!(out.iter().all(|x| *x == BEFORE), "written on failure");
        }
    }
    let (mut out, mut valid) = (vec![BEFORE; values.len()], vec![false; values.len()]);
    assert_eq!(into_valid(values, &mut out, &mut valid), Some(failed));
    for ((x, valid), expected) in out.iter().zip(valid).zip(&expected) {
        assert_eq!((x.to_bits(), valid), (expected.unwrap_or(BEFORE).to_bits(), expected.is_some()));
    }
    if !values.is_empty() {
        let mut short = vec![BEFORE; values.len() - 1];
        assert_eq!(into(values, &mut short), Err(None));
        assert!(short.iter().all(|x| *x == BEFORE));
    }
}

fn floats(values: &[f32]) {
    let mut out = vec![-7.25_f32; values.len()];
    let mut valid = vec![false; values.len()];
    let failed = preferred::nearest_f32_into_valid(values, Series::E48, &mut out, &mut valid).expect("as long");
    assert_eq!(failed, valid.iter().filter(|valid| !**valid).count());
    for ((x, out), valid) in values.iter().zip(&out).zip(&valid) {
        let expected = preferred::nearest_f32(*x, Series::E48);
        assert_eq!((expected.is_ok(), expected.unwrap_or(-7.25)), (*valid, *out));
    }
    let whole = accepted!(PreferredError, preferred::nearest_f32_into(values, Series::E48, &mut out));
    assert_eq!(whole.is_some(), failed == 0);
}

fn estimates(parts: &[Estimate], limits: &Limits, rule: Rule) {
    let mut out = vec![BEFORE; parts.len()];
    conformance_probability_into(parts, limits, &mut out).expect("as long");
    let one_by_one: Vec<f64> = parts.iter().map(|part| conformance_probability(part, limits)).collect();
    assert_eq!(bits(&out), bits(&one_by_one));
    let Some(first) = parts.first() else { return };
    let Ok(placeholder) = judge(&Estimate::exact(0.0).expect("finite"), limits, rule) else { return };
    let mut verdicts = vec![placeholder; parts.len()];
    let whole = accepted!(VerdictError, judge_into(parts, limits, rule, &mut verdicts));
    let one_by_one: Result<Vec<_>, _> = parts.iter().map(|part| judge(part, limits, rule)).collect();
    match (whole, one_by_one) {
        (Some(()), Ok(expected)) => assert_eq!(verdicts, expected),
        (None, Err(_)) => assert!(verdicts.iter().all(|verdict| *verdict == placeholder), "written on failure"),
        (whole, one_by_one) => panic!("{whole:?}, but {one_by_one:?}"),
    }
    assert!(judge_into(&[*first], limits, rule, &mut []).is_err());
}

/// A function and its elements, then estimates.
pub fn target(data: &[u8]) {
    let mut input = Input::new(data);
    let forms = input.one_of(&FORMS);
    let count = input.below(12);
    let hostile = input.flag();
    let values: Vec<f64> = (0..count).map(|_| if hostile { input.number() } else { input.fraction() }).collect();
    numbers(&values, forms);
    floats(&values.iter().map(|x| *x as f32).collect::<Vec<_>>());
    let limits = Limits::new(-input.size(-3..3), input.size(-3..3)).expect("in order");
    let rule = if input.flag() { Rule::guarded(0.05) } else { Rule::max_risk(0.01) };
    let parts: Vec<Estimate> = (0..input.below(3)).filter_map(|_| draw(&mut input)).collect();
    estimates(&parts, &limits, rule.expect("legal risks"));
}
