//! The numbers that stand for things at the C door: codes of choices, and of a failure what was given and what is allowed.

use reckohm::distribution;
use reckohm::marking::{ChipForm, ChipScheme, Colour, Edition, Marking, MarkingError};
use reckohm::number::{Decimal, Detail, Kind, RangeRow, Scalar, TOLERANCE, parse_number, parse_number_f32};
use reckohm::preferred::{self, PreferredError, Series};
use reckohm::uncertainty::Estimate;
use reckohm::verdict::{Limits, Rule, VerdictError, judge, judge_into};

#[test]
fn every_choice_is_found_by_its_number_and_no_other_number_is_one() {
    for (colour, number) in Colour::ALL.into_iter().zip(0_u8..) {
        assert_eq!((colour as u8, Colour::from_number(number)), (number, Some(colour)));
    }
    assert_eq!((Colour::from_number(13), Colour::from_number(255)), (None, None));
    for scheme in ChipScheme::ALL {
        assert_eq!(ChipScheme::from_number(scheme.number()), Some(scheme));
    }
    assert_eq!((ChipScheme::from_number(0), ChipScheme::from_number(4)), (None, None));
    let forms = [0, 1, 2, 3, 4].map(ChipForm::from_number);
    let [three, four, code] = [ChipForm::ThreeCharacters, ChipForm::FourCharacters, ChipForm::CodeAndLetter];
    assert_eq!(forms, [None, Some(three), Some(four), Some(code), None]);
    for kind in Kind::ALL {
        assert_eq!(Kind::from_number(kind.number()), Some(*kind));
    }
    assert_eq!((Kind::from_number(0), Kind::from_number(-1), Kind::from_number(99_999)), (None, None, None));
    assert_eq!(RangeRow::from_number(TOLERANCE.number), Some(&TOLERANCE));
    assert_eq!(RangeRow::from_number(0), None);
    for edition in Edition::ALL {
        assert_eq!(Edition::from_year(edition.year()), Some(edition));
    }
    assert_eq!(Edition::from_year(2015), None);
}

fn allowed(detail: Detail) -> (f64, f64, f64) {
    (detail.given, detail.lower, detail.upper)
}

#[test]
fn a_range_says_what_was_given_and_its_ends() {
    let error = TOLERANCE.check(5.0).unwrap_err();
    assert_eq!((allowed(error.detail()), error.detail().row), ((5.0, 0.0, 1.0), TOLERANCE.number));
    assert_eq!(error.kind(), Kind::OutOfRange);
    for x in [f64::NAN, f64::INFINITY, f64::NEG_INFINITY] {
        assert_eq!(TOLERANCE.check(x).unwrap_err().kind(), Kind::NotFinite);
    }
    let marked = Marking::from_value(-1.0, None, None).unwrap_err().detail();
    assert_eq!(allowed(marked), (-1.0, 0.0, 1e15));
}

#[test]
fn a_number_text_says_how_long_it_may_be_and_how_large_the_number() {
    let long = parse_number(&[b'1'; 200]).unwrap_err().detail();
    assert_eq!((allowed(long), long.index), ((200.0, 0.0, 128.0), 128));
    let large = parse_number(b"1e999").unwrap_err().detail();
    assert_eq!(allowed(large), (0.0, -f64::MAX, f64::MAX));
    let single = parse_number_f32(b"1e39").unwrap_err().detail();
    let most = f64::from(f32::MAX);
    assert_eq!(allowed(single), (0.0, -most, most));
    // The longest that is read, and nothing but zeros.
    assert_eq!(parse_number(&[b'0'; 128]), Ok(0.0));
    assert!(parse_number(&[b'0'; 129]).is_err());
    // 17, 18 and 19 digits, where whole numbers stop being enough.
    for text in ["12345678901234567", "123456789012345678", "1234567890123456789", "-0.000999999999999999999"] {
        assert_eq!(parse_number(text.as_bytes()), Ok(text.parse::<f64>().unwrap()));
    }
}

#[test]
fn markings_say_the_counts_and_figures_that_are_allowed() {
    let two = Marking::from_bands("red red", Edition::E2016).unwrap_err();
    assert_eq!(two, MarkingError::BandCount { count: 2 });
    assert_eq!(allowed(two.detail()), (2.0, 3.0, 6.0));
}

#[test]
fn arrays_say_how_much_room_was_given_and_is_needed() {
    let mut room = [0.0; 2];
    let error = preferred::nearest_into(&[1.0; 3], Series::E12, &mut room).unwrap_err();
    assert_eq!(error, PreferredError::Lengths { needed: 3, room: 2 });
    assert_eq!(allowed(error.detail()), (2.0, 3.0, 3.0));
    let error = distribution::normal_below_into(&[1.0; 3], &mut room).unwrap_err();
    assert_eq!(allowed(error.detail()), (2.0, 3.0, 3.0));
    let estimate = Estimate::exact(1.0_f64).unwrap();
    let (limits, rule) = (Limits::at_most(2.0).unwrap(), Rule::simple_acceptance());
    let mut verdicts = [judge(&estimate, &limits, rule).unwrap(); 2];
    let error = judge_into(&[estimate; 3], &limits, rule, &mut verdicts).unwrap_err();
    assert_eq!(error, VerdictError::Lengths { estimates: 3, room: 2 });
    assert_eq!(allowed(error.detail()), (2.0, 0.0, 3.0));
    let mut coarsest = [None; 2];
    assert!(preferred::coarsest_into(&[1.0; 3], &mut coarsest).is_err());
    preferred::coarsest_into(&[4.7, 4.99], &mut coarsest).unwrap();
    assert_eq!(coarsest, [Some(Series::E3), Some(Series::E96)]);
}

#[test]
fn decimals_and_plain_numbers_compare_as_numbers_do() {
    assert_eq!((Decimal::new(47, 2).to_real::<f64>(), Decimal::new(5, -2).to_real::<f32>()), (4700.0, 0.05));
    assert!(1.0.is_below(2.0) && !2.0.is_below(2.0) && !2.0.is_below(1.0));
    assert!(!Scalar::is_below(f64::NAN, 1.0) && !Scalar::is_below(1.0, f64::NAN));
}
