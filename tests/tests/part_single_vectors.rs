//! The vectors of preferred values and limits in single precision, run through the Rust door.

use reckohm::number::Kind;
use reckohm::preferred::{self, Series};
use reckohm::verdict::Limits;
use reckohm_tests::vectors::{Outcome, Output, Row, run};

fn number(x: f32) -> Output {
    Output::Number(f64::from(x))
}

fn call(row: &Row) -> Option<Outcome> {
    let (function, x) = (row.function.strip_suffix("_f32")?, row.number(0) as f32);
    if function == "verdict.limits.from_tolerance" {
        let limits = Limits::from_tolerance(x, row.number(1) as f32);
        return Some(limits.map(|l| vec![number(l.lower_ohm()), number(l.upper_ohm())]).map_err(|error| error.kind()));
    }
    let series = Series::from_name(row.word(1)).map_err(|error| error.kind());
    let one = |ask: fn(f32, Series) -> Result<f32, preferred::PreferredError>| -> Result<Vec<Output>, Kind> {
        ask(x, series?).map(|x| vec![number(x)]).map_err(|error| error.kind())
    };
    Some(match function {
        "preferred.nearest" => one(preferred::nearest_f32),
        "preferred.below" => one(preferred::below_f32),
        "preferred.above" => one(preferred::above_f32),
        "preferred.contains" => series.and_then(|series| {
            preferred::contains_f32(x, series).map(|yes| vec![yes.into()]).map_err(|error| error.kind())
        }),
        _ => return None,
    })
}

#[test]
fn every_row() {
    // Every result is the one float nearest to a decimal.
    let rows = run("part_single.tsv", |_| 0.0, call);
    assert!(rows > 400, "{rows} rows");
}
