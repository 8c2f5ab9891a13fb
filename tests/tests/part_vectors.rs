//! The vectors of preferred values and markings, which every door runs.

use reckohm::marking::{self, ChipScheme, Edition, Marking, MarkingError};
use reckohm::number::Kind;
use reckohm::preferred::{self, PreferredError, Series};
use reckohm::verdict::Limits;
use reckohm_tests::vectors::{self, Outcome, Output, Row};

fn number_or_nothing(x: Option<f64>) -> Output {
    x.map_or(Output::from(""), Output::from)
}

fn preferred_call(row: &Row) -> Option<Outcome> {
    let series = |place: usize| Series::from_name(std::str::from_utf8(row.text(place)).unwrap());
    let outcome = |result: Result<Vec<Output>, PreferredError>| result.map_err(|error| error.kind());
    Some(outcome(match row.function.as_str() {
        "preferred.decade" => series(0).map(|series| {
            let mut values = vec![0.0; usize::from(series.count())];
            preferred::decade_into(series, &mut values).unwrap();
            values.into_iter().map(Output::from).collect()
        }),
        "preferred.tolerance" => series(0).map(|series| vec![number_or_nothing(preferred::tolerance(series))]),
        "preferred.nearest" => {
            series(1).and_then(|series| preferred::nearest(row.number(0), series)).map(|x| vec![x.into()])
        }
        "preferred.below" => {
            series(1).and_then(|series| preferred::below(row.number(0), series)).map(|x| vec![x.into()])
        }
        "preferred.above" => {
            series(1).and_then(|series| preferred::above(row.number(0), series)).map(|x| vec![x.into()])
        }
        "preferred.neighbours" => series(1)
            .and_then(|series| preferred::neighbours(row.number(0), series))
            .map(|(lower, upper)| vec![lower.into(), upper.into()]),
        "preferred.contains" => {
            series(1).and_then(|series| preferred::contains(row.number(0), series)).map(|yes| vec![yes.into()])
        }
        "preferred.coarsest" => {
            preferred::coarsest(row.number(0)).map(|series| vec![series.map_or("", Series::name).into()])
        }
        _ => return None,
    }))
}

fn said(marking: Marking) -> Vec<Output> {
    let limits = marking.limits().ok();
    vec![
        marking.nominal_ohm().into(),
        number_or_nothing(marking.tolerance()),
        number_or_nothing(marking.tcr_ppm_per_kelvin()),
        number_or_nothing(limits.map(|limits| limits.lower_ohm())),
        number_or_nothing(limits.map(|limits| limits.upper_ohm())),
    ]
}

fn edition(row: &Row, place: usize) -> Edition {
    Edition::from_year(row.number(place) as u16).unwrap()
}

fn given(row: &Row) -> Result<Marking, MarkingError> {
    Marking::from_value(row.number(0), row.optional(1), row.optional(2).map(|x| x as u16))
}

fn written(text: Result<impl ToString, MarkingError>) -> Result<Vec<Output>, MarkingError> {
    text.map(|text| vec![text.to_string().into()])
}

fn both_ways(row: &Row) -> Result<Vec<Output>, MarkingError> {
    let ways = marking::both_ways(row.text(0), edition(row, 1))?;
    let mut outputs = Vec::new();
    for reading in [ways.forward, ways.backward] {
        outputs.push(number_or_nothing(reading.marking().ok().map(|marking| marking.nominal_ohm())));
        let doubts: Vec<_> = reading.doubts().map(|doubt| doubt.name()).collect();
        outputs.push(doubts.join(", ").into());
    }
    outputs.push(ways.more_plausible().map_or("", |direction| direction.name()).into());
    Ok(outputs)
}

fn marking_call(row: &Row) -> Option<Outcome> {
    let result = match row.function.as_str() {
        "marking.from_bands" => Marking::from_bands(row.text(0), edition(row, 1)).map(said),
        "marking.from_letters" => Marking::from_letters(row.text(0)).map(said),
        "marking.from_chip" => {
            let scheme = ChipScheme::ALL.into_iter().find(|scheme| scheme.name() == row.word(1));
            assert_eq!(scheme.is_none(), row.word(1).is_empty());
            Marking::from_chip(row.text(0), scheme).map(said)
        }
        "marking.to_bands" => given(row).and_then(|marking| written(marking.to_bands(edition(row, 3)))),
        "marking.to_letters" => given(row).and_then(|marking| written(marking.to_letters())),
        "marking.to_chip" => given(row).and_then(|marking| written(marking.to_chip())),
        "marking.both_ways" => both_ways(row),
        "verdict.limits.from_tolerance" => {
            let limits = Limits::from_tolerance(row.number(0), row.number(1));
            return Some(
                limits
                    .map(|limits| vec![limits.lower_ohm().into(), limits.upper_ohm().into()])
                    .map_err(|error| error.kind()),
            );
        }
        _ => return None,
    };
    Some(result.map_err(|error| error.kind()))
}

#[test]
fn preferred_values() {
    assert!(vectors::run("preferred.tsv", |_| 0.0, preferred_call) >= 700);
}

#[test]
fn markings() {
    assert!(vectors::run("marking.tsv", |_| 0.0, marking_call) >= 900);
}

/// Every kind of error that this area gives has a row.
#[test]
fn every_kind_of_error_is_in_the_vectors() {
    let rows: Vec<Row> = ["preferred.tsv", "marking.tsv"].into_iter().flat_map(vectors::read).collect();
    let own = Kind::ALL.iter().filter(|kind| (100..200).contains(&kind.number()));
    let shared = [Kind::OutOfRange, Kind::NotFinite, Kind::Empty, Kind::WrongCount, Kind::MissingArgument];
    for kind in own.chain(&shared).chain(&[Kind::UnexpectedByte]) {
        assert!(rows.iter().any(|row| row.status == kind.number()), "no row with {}", kind.name());
    }
}
