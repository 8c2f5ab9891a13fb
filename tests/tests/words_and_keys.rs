//! What values are called when they are shown, and that they may be keys of a table: lines that no other test reaches.

use std::collections::HashSet;
use std::hash::{BuildHasher, BuildHasherDefault, DefaultHasher};

use reckohm::marking::{ChipForm, Doubt, Edition, MarkText, Marking, MarkingError};
use reckohm::measurement::Setup;
use reckohm::meter::{Label, Marks, Meter, MeterError};
use reckohm::number::Kind;
use reckohm::number::special::beta_regularised;
use reckohm::preferred::{self, Series};
use reckohm::sensor::BValueThermistor;
use reckohm::uncertainty::{Estimate, EstimateError};
use reckohm::verdict::{Answer, Decision, Limits, Rule, Side, answer};

fn hash(text: MarkText) -> u64 {
    BuildHasherDefault::<DefaultHasher>::default().hash_one(text)
}

#[test]
fn texts_of_parts_and_labels_are_shown_compared_and_kept_as_keys() {
    let marking = Marking::from_value(4700.0, Some(0.05), None).unwrap();
    let letters = marking.to_letters().unwrap();
    assert_eq!((letters.to_string(), format!("{letters:?}")), ("4K7J".to_owned(), "\"4K7J\"".to_owned()));
    assert!(letters == "4K7J" && letters == *"4K7J" && letters != "4K7" && letters != *"4K7");
    assert!(letters == marking.to_letters().unwrap() && letters != marking.to_chip().unwrap());
    let keys: HashSet<_> = [letters, letters, marking.to_chip().unwrap()].into_iter().collect();
    assert_eq!(keys.len(), 2);
    let hashes = ["4K7J", "4K7", "470K"].map(|text| hash(Marking::from_letters(text).unwrap().to_letters().unwrap()));
    assert!(hashes[0] == hash(letters) && hashes[0] != hashes[1] && hashes[1] != hashes[2]);
    let label = Label::new("20 kohm").unwrap();
    assert_eq!((format!("[{label:>9}]"), format!("{label:?}")), ("[  20 kohm]".to_owned(), "\"20 kohm\"".to_owned()));
    let keys: HashSet<_> = [label, Label::new("20 kohm").unwrap(), Label::new("2 kohm").unwrap()].into_iter().collect();
    assert_eq!(keys.len(), 2);
}

#[test]
fn doubts_and_decisions_say_what_they_are() {
    let said = [Doubt::DoesNotDecode, Doubt::ToleranceColourFirst, Doubt::InNoSeries, Doubt::UnusualTolerance];
    assert_eq!(
        said.map(|doubt| doubt.to_string()),
        [
            "the bands say nothing in this direction",
            "it would begin with gold or silver, which stand at the end",
            "the value is in no series of preferred values, E3 to E192",
            "the tolerance is unusual for so many bands: four are usual for 5 % and wider, five and six for 2 % and tighter",
        ]
    );
    let (limits, rule) = (Limits::at_most(100.0).unwrap(), Rule::guarded(0.05).unwrap());
    let said =
        |value: f64| answer(&Estimate::exact(value).unwrap().with_normal(1.0).unwrap(), &limits, rule).to_string();
    assert_eq!(said(100.0), "undecided, inside the limits; conformance probability 0.500");
    assert_eq!(said(101.0), "undecided, outside the limits; conformance probability 0.159");
    assert_eq!(said(90.0), "conforms; conformance probability 1.000");
    assert_eq!(said(110.0), "does not conform; conformance probability 0.000");
    let unmade = Decision::<f64>::UNMADE;
    assert_eq!((unmade.answer, unmade.side), (Answer::Undecided, Side::Outside));
}

#[test]
fn marks_add_up_and_name_themselves() {
    let both = Marks::OL | Marks::DASHES;
    assert_eq!(both, Marks::OL.and(Marks::DASHES));
    assert!(both.contains(Marks::OL) && both.contains(Marks::DASHES) && !both.contains(Marks::BLANK));
    let span = &Meter::example_hand_held().spans()[1];
    let empty = span.read(b"").unwrap_err();
    assert_eq!((empty.kind(), empty.misfit()), (Kind::Empty, None));
    assert!(span.read(b"3.000").unwrap_err().misfit().is_some());
    let choice = Meter::example_hand_held().choose(4700.0, 0.05).unwrap();
    assert_eq!(choice.meter().spans(), Meter::example_hand_held().spans());
    let beyond = span.reading(2000.0, 0, false, false);
    assert_eq!(beyond, Err(MeterError::BeyondFullScale { given_ohm: 2000.0, full_scale_ohm: 2000.0 }));
}

#[test]
fn corners_of_numbers() {
    assert_eq!((beta_regularised(2.0, 3.0, 0.0), beta_regularised(2.0, 3.0, 1.0)), (Ok(0.0), Ok(1.0)));
    let (mut lower, mut upper) = ([0.0; 2], [0.0; 2]);
    preferred::neighbours_into(&[4900.0, 1.0], Series::E12, &mut lower, &mut upper).unwrap();
    assert_eq!((lower, upper), ([4700.0, 1.0], [5600.0, 1.0]));
    assert!(matches!(Estimate::from_repeats(&[f64::MAX, f64::MIN]), Err(EstimateError::TooLarge { .. })));
    let link = Marking::from_letters("0R0").or_else(|_| Marking::from_chip("000", None)).unwrap();
    assert!(matches!(link.to_chip_as(ChipForm::CodeAndLetter), Err(MarkingError::Unwritable { .. })), "{link}");
    assert!(Marking::from_bands("black", Edition::E2016).unwrap().is_zero_ohm_link());
    assert_eq!(Setup::default().coverage_probability(), Setup::new().coverage_probability());
    let thermistor = BValueThermistor::<f64>::new(1e4, 25.0, 3977.0, [25.0, 85.0]).unwrap();
    let [least, most] = thermistor.ends_ohm();
    assert_eq!((most, thermistor.resistance_ohm(85.0)), (1e4, Ok(least)));
    let restored = BValueThermistor::restored(thermistor.parameters(), thermistor.domain(), thermistor.ends_ohm());
    assert_eq!(restored, thermistor);
}
