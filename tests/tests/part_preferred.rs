//! Preferred values against the printed tables, against brute force, and against themselves in other decades.

use std::path::PathBuf;

use proptest::prelude::*;
use reckohm::number::{Decimal, Detail, Kind};
use reckohm::preferred::{self, PreferredError, Series};
use reckohm_tests::random::cases;

fn rows(file: &str) -> Vec<csv::StringRecord> {
    let path = PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("checks").join(file);
    let rows: Vec<_> = csv::Reader::from_path(path).unwrap().records().map(Result::unwrap).collect();
    assert!(!rows.is_empty());
    rows
}

/// Every preferred value of a series in the decades that a test needs, ascending, as decimals.
fn all(series: Series, orders: std::ops::RangeInclusive<i32>) -> Vec<Decimal> {
    let figures = i32::from(series.figures());
    let values = preferred::decade(series);
    orders.flat_map(|order| values.iter().map(move |v| Decimal::new(i64::from(*v), order + 1 - figures))).collect()
}

#[test]
fn every_printed_value_is_there_and_no_other() {
    let table = rows("part_series.csv");
    assert_eq!(table.len(), 381);
    for series in Series::ALL {
        let printed: Vec<_> = table.iter().filter(|row| &row[0] == series.name()).collect();
        assert_eq!(printed.len(), usize::from(series.count()), "{series}");
        let mut decade = vec![0.0; printed.len()];
        preferred::decade_into(series, &mut decade).unwrap();
        for (index, row) in printed.iter().enumerate() {
            assert_eq!(row[1].parse::<usize>().unwrap(), index);
            assert_eq!(decade[index], row[2].parse::<f64>().unwrap());
            let whole = row[2].replace('.', "").parse::<u16>().unwrap();
            assert_eq!(preferred::decade(series)[index], whole, "{series}");
            assert_eq!(row[2].len() - 1, usize::from(series.figures()));
        }
    }
}

#[test]
fn the_rule_holds_but_for_the_nine_known_departures() {
    // Floats decide the rounding safely: from E48 on no value lies within 0.0011 of a tie, and below that none does either
    // by much more than a float's error.
    let mut departures = Vec::new();
    for series in Series::ALL {
        let count = usize::from(series.count());
        let scale = if series.figures() == 2 { 10.0 } else { 100.0 };
        for (index, &value) in preferred::decade(series).iter().enumerate() {
            let rule = (scale * 10f64.powf(index as f64 / count as f64)).round() as u16;
            if rule != value {
                departures.push((series.name(), value, rule));
            }
        }
    }
    assert_eq!(
        departures,
        [
            ("E3", 47, 46),
            ("E6", 33, 32),
            ("E6", 47, 46),
            ("E12", 27, 26),
            ("E12", 33, 32),
            ("E12", 39, 38),
            ("E12", 47, 46),
            ("E12", 82, 83),
            ("E24", 27, 26),
            ("E24", 30, 29),
            ("E24", 33, 32),
            ("E24", 36, 35),
            ("E24", 39, 38),
            ("E24", 43, 42),
            ("E24", 47, 46),
            ("E24", 82, 83),
            ("E192", 920, 919),
        ]
    );
}

#[test]
fn the_usual_tolerance_is_the_listed_one() {
    let table = rows("part_series_tolerance.csv");
    assert_eq!(table.len(), 7);
    for row in table {
        let series = Series::from_name(&row[0]).unwrap();
        assert_eq!(preferred::tolerance(series), row[1].parse().ok(), "{series}");
    }
}

#[test]
fn shared_values_of_e24_and_the_finer_series_are_the_known_few() {
    let shared = |finer: Series| -> Vec<u16> {
        let finer = preferred::decade(finer);
        preferred::decade(Series::E24).iter().copied().filter(|v| finer.contains(&(v * 10))).collect()
    };
    assert_eq!(shared(Series::E192), [10, 11, 12, 13, 15, 16, 18, 20, 24, 47, 75]);
    assert_eq!(shared(Series::E96), [10, 11, 13, 15, 20, 75]);
    assert_eq!(shared(Series::E48), [10, 11, 75]);
}

#[test]
fn every_value_of_every_decade_is_its_own_neighbour() {
    for series in Series::ALL {
        for decimal in all(series, -12..=14) {
            let ohm = decimal.to_f64();
            assert_eq!(preferred::nearest(ohm, series), Ok(ohm));
            assert_eq!(preferred::neighbours(ohm, series), Ok((ohm, ohm)));
            assert_eq!(preferred::contains(ohm, series), Ok(true));
            assert!(preferred::coarsest(ohm).unwrap().unwrap() <= series);
            // A float beside it is none, and lies on the right side.
            assert_eq!(preferred::contains(ohm.next_up(), series), Ok(false));
            assert_eq!(preferred::below(ohm.next_up(), series), Ok(ohm));
            assert_eq!(preferred::above(ohm.next_down(), series), Ok(ohm));
        }
    }
}

#[test]
fn a_tie_as_written_goes_to_the_lower_value() {
    for series in Series::ALL {
        let values = all(series, -6..=9);
        for pair in values.windows(2) {
            let sum = pair[0].checked_add(pair[1]).unwrap();
            let middle = sum.checked_mul(Decimal::new(5, -1)).unwrap().to_f64();
            assert_eq!(preferred::nearest(middle, series), Ok(pair[0].to_f64()), "{middle}");
            assert_eq!(preferred::nearest(middle.next_up(), series), Ok(pair[1].to_f64()), "{middle}");
            let middle = sum.checked_mul(Decimal::new(5, -1)).unwrap().to_f32();
            assert_eq!(preferred::nearest_f32(middle, series), Ok(pair[0].to_f32()), "{middle}");
            assert_eq!(preferred::nearest_f32(middle.next_up(), series), Ok(pair[1].to_f32()), "{middle}");
        }
    }
}

#[test]
fn single_precision_knows_its_own_floats() {
    for series in Series::ALL {
        let values = all(series, -30..=14);
        let stride = values.len().div_ceil(cases(values.len() as u32) as usize);
        for decimal in values.iter().step_by(stride) {
            let ohm = decimal.to_f32();
            assert_eq!(preferred::contains_f32(ohm, series), Ok(true));
            assert_eq!(preferred::neighbours_f32(ohm.next_up(), series).unwrap().0, ohm);
            assert_eq!(preferred::neighbours_f32(ohm.next_down(), series).unwrap().1, ohm);
        }
    }
}

#[test]
fn both_ends_of_the_legal_range() {
    for series in Series::ALL {
        assert_eq!(preferred::neighbours(1.0e15, series), Ok((1.0e15, 1.0e15)));
        assert_eq!(preferred::above(1.0e15_f64.next_down(), series), Ok(1.0e15));
        // The smallest subnormal is the float nearest to a preferred value of each series.
        assert_eq!(preferred::nearest(5e-324, series), Ok(5e-324));
        assert_eq!(preferred::contains(5e-324, series), Ok(true));
        assert_eq!(preferred::contains_f32(f32::from_bits(1), series), Ok(true));
        for units in 1..=u64::from(cases(2000)) {
            let x = f64::from_bits(units);
            let (lower, upper) = preferred::neighbours(x, series).unwrap();
            assert!(lower > 0.0 && lower <= x && x <= upper, "{x:e} in {series}: {lower:e} {upper:e}");
        }
        for wrong in [0.0, -0.0, -4700.0, 1.0e15_f64.next_up(), f64::NAN, f64::INFINITY, f64::NEG_INFINITY] {
            let error = preferred::nearest(wrong, series).unwrap_err();
            assert_eq!(error.kind(), if wrong.is_finite() { Kind::OutOfRange } else { Kind::NotFinite });
            assert!(preferred::below(wrong, series).is_err());
            assert!(preferred::above(wrong, series).is_err());
            assert!(preferred::neighbours(wrong, series).is_err());
            assert!(preferred::contains(wrong, series).is_err());
            assert!(preferred::coarsest(wrong).is_err());
            assert!(preferred::nearest_f32(wrong as f32, series).is_err() || wrong.is_finite() && wrong > 0.0);
        }
    }
}

#[test]
fn arrays_check_all_before_they_write_any() {
    let mut out = [7.0; 4];
    let wrong = [4700.0, -1.0, 5.0, f64::NAN];
    let error = preferred::nearest_into(&wrong, Series::E12, &mut out).unwrap_err();
    assert!(matches!(error, PreferredError::Element { index: 1, failed: 2, .. }));
    assert_eq!(out, [7.0; 4]);
    assert_eq!(preferred::check(&wrong), Err(error));
    assert!(matches!(preferred::check_f32(&[1.0, -1.0]), Err(PreferredError::Element { index: 1, failed: 1, .. })));
    let mut valid = [false; 4];
    assert_eq!(preferred::nearest_into_valid(&wrong, Series::E12, &mut out, &mut valid), Ok(2));
    assert_eq!((out, valid), ([4700.0, 7.0, 4.7, 7.0], [true, false, true, false]));
    assert_eq!(preferred::nearest_into(&[], Series::E12, &mut []), Ok(()));
    let too_short = PreferredError::Lengths { needed: 4, room: 3 };
    let lengths = Err(too_short);
    assert_eq!(preferred::nearest_into(&[1.0; 4], Series::E12, &mut out[..3]), lengths);
    let Detail { kind, given, lower, upper, .. } = too_short.detail();
    assert_eq!((kind, given, lower, upper), (Kind::WrongCount, 3.0, 4.0, 4.0));
    let mut bits = [false; 3];
    assert_eq!(preferred::contains_into(&[1.0; 4], Series::E12, &mut bits), lengths);
    assert_eq!(preferred::below_into_valid(&[1.0; 4], Series::E12, &mut [0.0; 4], &mut bits).map(|_| ()), lengths);
    let mut other = [7.0; 4];
    assert!(preferred::neighbours_into(&wrong, Series::E12, &mut out, &mut other).is_err());
    assert_eq!(other, [7.0; 4]);
}

#[test]
fn the_coarsest_series_of_each_of_many() {
    let mut series = [Some(Series::E3); 4];
    assert!(preferred::coarsest_into(&[4700.0, 0.0, 1.0, 1.0], &mut series).is_err());
    assert_eq!(series, [Some(Series::E3); 4]);
    assert_eq!(preferred::coarsest_into(&[5100.0, 9.19, 10.2, 0.068], &mut series), Ok(()));
    assert_eq!(series, [Some(Series::E24), None, Some(Series::E96), Some(Series::E6)]);
}

#[test]
fn names_and_counts_lead_to_the_series_and_back() {
    for series in Series::ALL {
        assert_eq!(Series::from_name(series.name()), Ok(series));
        assert_eq!(Series::from_name(&series.to_string().to_lowercase()), Ok(series));
        assert_eq!(Series::from_count(u32::from(series.count())), Some(series));
        assert_eq!(preferred::decade(series).len(), usize::from(series.count()));
    }
    for wrong in ["", "E", "12", "E13", "E 12", "E012", "\u{ff25}12"] {
        assert_eq!(Series::from_name(wrong), Err(PreferredError::UnknownSeries), "{wrong}");
    }
}

#[test]
fn every_message_in_full() {
    let said = |error: PreferredError, text: &str| {
        assert_eq!(error.to_string(), text);
        assert_eq!(PreferredError::from_detail(&error.detail()).unwrap().to_string(), text);
    };
    said(
        preferred::nearest(0.0, Series::E12).unwrap_err(),
        "preferred value: resistance: 0 ohm given, more than 0 ohm to 1000000000000000 ohm allowed \
         (our rule: beyond it is insulation, not a resistance); give ohm, not kilohm; a short is stated by a limit, not by 0",
    );
    said(
        preferred::below_into(&[1.0, f64::NAN], Series::E12, &mut [0.0; 2]).unwrap_err(),
        "preferred values: element 1, the first of 1 that failed: resistance: NaN ohm given, \
         more than 0 ohm to 1000000000000000 ohm allowed (our rule: beyond it is insulation, not a resistance); \
         give ohm, not kilohm; a short is stated by a limit, not by 0",
    );
    said(
        preferred::decade_into(Series::E12, &mut [0.0; 6]).unwrap_err(),
        "preferred values: room for 6 results given, 12 needed; give an output with one place for each result",
    );
    said(
        Series::from_name("E13").unwrap_err(),
        "preferred values: no series has this name, E3, E6, E12, E24, E48, E96 or E192 allowed (IEC 60063)",
    );
    assert_eq!(PreferredError::from_detail(&Detail::new(Kind::Empty)), None);
}

/// A decimal of up to six figures, as someone would write it, with its exact value times 10^12 as a whole number.
fn written() -> impl Strategy<Value = (f64, u128)> {
    (1_u64..1_000_000, -6_i32..=6).prop_map(|(digits, exponent)| {
        (Decimal::new(digits as i64, exponent).to_f64(), u128::from(digits) * 10_u128.pow((exponent + 12) as u32))
    })
}

proptest! {
    #[test]
    fn nearest_is_the_least_distance_of_all((ohm, exact) in written(), which in 0_usize..7) {
        let series = Series::ALL[which];
        let values = all(series, -9..=14);
        let whole = |v: &Decimal| v.digits as u128 * 10_u128.pow((v.exponent + 12) as u32);
        // min_by_key keeps the first, which is the lower one, on a tie.
        let best = values.iter().min_by_key(|v| whole(v).abs_diff(exact)).unwrap();
        prop_assert_eq!(preferred::nearest(ohm, series), Ok(best.to_f64()));
        let below = values.iter().rfind(|v| whole(v) <= exact).unwrap();
        let above = values.iter().find(|v| whole(v) >= exact).unwrap();
        prop_assert_eq!(preferred::neighbours(ohm, series), Ok((below.to_f64(), above.to_f64())));
        prop_assert_eq!(preferred::below(ohm, series), Ok(below.to_f64()));
        prop_assert_eq!(preferred::above(ohm, series), Ok(above.to_f64()));
        prop_assert_eq!(preferred::contains(ohm, series), Ok(whole(below) == exact));
    }

    #[test]
    fn a_power_of_ten_changes_nothing_but_the_decade(digits in 1_i64..1_000_000, from in -20_i32..=5, to in -20_i32..=5,
        which in 0_usize..7) {
        let series = Series::ALL[which];
        let at = |exponent| {
            let found = preferred::nearest(Decimal::new(digits, exponent).to_f64(), series).unwrap();
            Decimal::shortest(found).unwrap()
        };
        prop_assert_eq!(at(from).scaled(to - from), at(to));
    }

    #[test]
    fn more_ohm_is_never_less_preferred(a in 1.0e-9..1.0e15, b in 1.0e-9..1.0e15, which in 0_usize..7) {
        let series = Series::ALL[which];
        let (a, b): (f64, f64) = if a < b { (a, b) } else { (b, a) };
        prop_assert!(preferred::nearest(a, series) .unwrap()<= preferred::nearest(b, series).unwrap());
        prop_assert!(preferred::below(a, series).unwrap() <= preferred::below(b, series).unwrap());
        prop_assert!(preferred::above(a, series).unwrap() <= preferred::above(b, series).unwrap());
    }

    #[test]
    fn any_float_lies_between_its_neighbours(bits in 1_u64..=0x430c_6bf5_2634_0000, which in 0_usize..7) {
        let series = Series::ALL[which];
        let x = f64::from_bits(bits);
        let (lower, upper) = preferred::neighbours(x, series).unwrap();
        let nearest = preferred::nearest(x, series).unwrap();
        prop_assert!(0.0 < lower && lower <= x && x <= upper && upper <= 1.0e15);
        prop_assert!(nearest == lower || nearest == upper);
        prop_assert!(preferred::contains(lower, series).unwrap() && preferred::contains(upper, series).unwrap());
    }
}
