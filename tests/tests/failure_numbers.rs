//! Every failure of every area as plain numbers, and back: what the C door hands out, and what its full text is made of again.

use core::fmt::Debug;

use reckohm::distribution::{BeyondReach, DistributionError, ElementFault};
use reckohm::fit::{FitError, List};
use reckohm::marking::{ChipScheme, Colour, Edition, Fault, MarkingError, MarkingForm, Unwritable};
use reckohm::measurement::MeasurementError;
use reckohm::meter::{Form, Marks, Meter, MeterError, Misfit, MisfitText};
use reckohm::number::{Detail, FINITE, Kind, NumberError, OutOfRange, PROBABILITY};
use reckohm::preferred::PreferredError;
use reckohm::sensor::{OutsideDomain, Quantity, SensorError};
use reckohm::uncertainty::EstimateError;
use reckohm::verdict::{LimitsError, VerdictError};

/// The kind, the argument, what was given and the ends of what is allowed, the index.
type Numbers = (Kind, u16, [f64; 3], u64);

fn plain((kind, argument, [given, lower, upper], index): Numbers) -> Detail {
    Detail { argument, given, lower, upper, index, ..Detail::new(kind) }
}

/// Both ways through the methods of an area's error.
macro_rules! held {
    ($error:expr, $type:ident, $wanted:expr) => {{
        let (error, wanted): ($type, Detail) = ($error, $wanted);
        assert_eq!((error.detail(), error.kind()), (wanted, wanted.kind), "{error}");
        back(&error, $type::from_detail(&wanted));
    }};
}

fn back<E: Debug + PartialEq>(error: &E, again: Option<E>) {
    assert_eq!(again.as_ref(), Some(error));
}

const PERCENT: OutOfRange = OutOfRange { row: &PROBABILITY, given: 95.0 };
const INFINITE: OutOfRange = OutOfRange { row: &FINITE, given: f64::INFINITY };
const TOO_LARGE: EstimateError = EstimateError::TooLarge { largest: 3e38 };

fn percent() -> Detail {
    Detail { row: 1, ..plain((Kind::OutOfRange, 0, [95.0, 0.0, 1.0], 0)) }
}

fn infinite() -> Detail {
    Detail { row: 3, ..plain((Kind::NotFinite, 0, [f64::INFINITY, f64::MIN, f64::MAX], 0)) }
}

fn too_large() -> Detail {
    plain((Kind::ResultOutOfRange, 350, [0.0, 0.0, 3e38], 0))
}

/// As the fifth element of an array in which nine failed.
fn fifth(detail: Detail) -> Detail {
    Detail { index: 5, failed: 9, ..detail }
}

#[test]
fn of_number_texts() {
    for (error, numbers) in [
        (NumberError::Empty, (Kind::Empty, 10, [0.0; 3], 0)),
        (NumberError::TooLong { length: 200 }, (Kind::TextTooLong, 10, [200.0, 0.0, 128.0], 128)),
        (NumberError::UnexpectedByte { at: 3, byte: 44 }, (Kind::UnexpectedByte, 10, [44.0, 0.0, 0.0], 3)),
        (NumberError::MissingDigits { at: 4, of_exponent: false }, (Kind::MissingDigits, 10, [0.0; 3], 4)),
        (NumberError::MissingDigits { at: 4, of_exponent: true }, (Kind::MissingDigits, 11, [0.0; 3], 4)),
        (NumberError::TooLarge { largest: 3e38 }, (Kind::ResultOutOfRange, 10, [0.0, -3e38, 3e38], 0)),
    ] {
        held!(error, NumberError, plain(numbers));
    }
    held!(PERCENT, OutOfRange, percent());
    held!(INFINITE, OutOfRange, infinite());
}

#[test]
fn of_distributions() {
    let beyond = BeyondReach { probability: 1e-300, lower: 1e-200, upper: 0.75 };
    let far = plain((Kind::ResultOutOfRange, 21, [1e-300, 1e-200, 0.75], 0));
    let element = |fault: ElementFault| DistributionError::Element { fault, index: 5, failed: 9 };
    for (error, detail) in [
        (PERCENT.into(), percent()),
        (beyond.into(), far),
        (element(INFINITE.into()), fifth(infinite())),
        (element(beyond.into()), fifth(far)),
        (DistributionError::Lengths { needed: 3, room: 2 }, plain((Kind::WrongCount, 20, [2.0, 3.0, 3.0], 0))),
    ] {
        held!(error, DistributionError, detail);
    }
}

#[test]
fn of_preferred_values_and_limits() {
    for (error, detail) in [
        (PERCENT.into(), percent()),
        (PreferredError::Element { range: INFINITE, index: 5, failed: 9 }, fifth(infinite())),
        (PreferredError::Lengths { needed: 3, room: 2 }, plain((Kind::WrongCount, 101, [2.0, 3.0, 3.0], 0))),
        (PreferredError::UnknownSeries, plain((Kind::UnknownSeries, 0, [0.0; 3], 0))),
    ] {
        held!(error, PreferredError, detail);
    }
    let endless = f64::INFINITY;
    for (error, detail) in [
        (PERCENT.into(), percent()),
        (LimitsError::NoLowerLimit { given: endless }, plain((Kind::NotFinite, 191, [endless, 0.0, 0.0], 0))),
        (LimitsError::NoUpperLimit { given: -endless }, plain((Kind::NotFinite, 192, [-endless, 0.0, 0.0], 0))),
        (LimitsError::BothOpen, plain((Kind::Empty, 193, [0.0; 3], 0))),
        (
            LimitsError::Crossed { lower_ohm: 9.0, upper_ohm: 8.0 },
            plain((Kind::Contradiction, 194, [0.0, 9.0, 8.0], 0)),
        ),
    ] {
        held!(error, LimitsError, detail);
    }
}

#[test]
fn of_markings() {
    let (form, tolerance) = (MarkingForm::Letters, Some(0.02));
    let misplaced =
        MarkingError::MisplacedColour { colour: Colour::Grey, band: 4, bands: 5, edition: Edition::E2004, index: 7 };
    for (error, numbers) in [
        (MarkingError::NotDecimal { given: 0.3 }, (Kind::NoSuchMarking, 115, [0.3, 0.0, 0.0], 0)),
        (MarkingError::Empty { form }, (Kind::Empty, 111, [0.0; 3], 0)),
        (MarkingError::UnexpectedByte { form, byte: 35, index: 2 }, (Kind::UnexpectedByte, 111, [35.0, 0.0, 0.0], 2)),
        (MarkingError::UnknownColour { index: 4 }, (Kind::UnknownColour, 0, [0.0; 3], 4)),
        (MarkingError::BandCount { count: 2 }, (Kind::WrongCount, 110, [2.0, 3.0, 6.0], 0)),
        (misplaced, (Kind::MisplacedColour, 168, [4.0, 5.0, 2004.0], 7)),
        (MarkingError::Fault { fault: Fault::SmallLetter, index: 1 }, (Kind::WrongForm, 125, [0.0; 3], 1)),
        (
            MarkingError::DoubtfulLetter { letter: b'L', index: 3, multiplier: true },
            (Kind::DoubtfulCode, 117, [76.0, 0.0, 0.0], 3),
        ),
        (
            MarkingError::DoubtfulLetter { letter: b'L', index: 3, multiplier: false },
            (Kind::DoubtfulCode, 116, [76.0, 0.0, 0.0], 3),
        ),
        (
            MarkingError::DoubtfulMultiplier { letter: b'S', index: 2, scheme: None },
            (Kind::DoubtfulCode, 112, [83.0, 0.0, 0.0], 2),
        ),
        (
            MarkingError::DoubtfulMultiplier { letter: b'S', index: 2, scheme: ChipScheme::from_number(3) },
            (Kind::DoubtfulCode, 112, [83.0, 3.0, 0.0], 2),
        ),
        (
            MarkingError::Unwritable { reason: Unwritable::ChipNotE96, nominal_ohm: 4.71, tolerance },
            (Kind::NoSuchMarking, 152, [4.71, 0.02, 0.0], 0),
        ),
        (
            MarkingError::Unwritable { reason: Unwritable::ChipLarge, nominal_ohm: 4.7e15, tolerance: None },
            (Kind::NoSuchMarking, 150, [4.7e15, 0.0, 0.0], 0),
        ),
        (MarkingError::NoTolerance, (Kind::MissingArgument, 113, [0.0; 3], 0)),
        (MarkingError::ZeroOhmLink, (Kind::MissingArgument, 114, [0.0; 3], 0)),
    ] {
        held!(error, MarkingError, plain(numbers));
    }
    held!(PERCENT.into(), MarkingError, percent());
}

#[test]
fn of_spans_and_clauses() {
    for (error, numbers) in [
        (MeterError::LabelEmpty, (Kind::Empty, 201, [0.0; 3], 0)),
        (MeterError::LabelTooLong { length: 17 }, (Kind::TextTooLong, 201, [17.0, 0.0, 15.0], 15)),
        (MeterError::LabelByte { at: 3, byte: 9 }, (Kind::UnexpectedByte, 201, [9.0, 0.0, 0.0], 3)),
        (MeterError::UnknownResolution { given_ohm: 3.0 }, (Kind::UnknownResolution, 0, [3.0, 0.0, 0.0], 0)),
        (MeterError::UnknownDisplayUnit { given_ohm: 7.0 }, (Kind::UnknownDisplayUnit, 0, [7.0, 0.0, 0.0], 0)),
        (
            MeterError::NotWholeSteps { full_scale_ohm: 2001.0, resolution_ohm: 2.0 },
            (Kind::Contradiction, 203, [2001.0, 2.0, 0.0], 0),
        ),
        (
            MeterError::TooFineForUnit { resolution_ohm: 0.1, display_unit_ohm: 1e9 },
            (Kind::Contradiction, 204, [1e9, 0.1, 0.0], 0),
        ),
        (
            MeterError::TooFineToPrepare { full_scale_ohm: 2e8, resolution_ohm: 1.0 },
            (Kind::Contradiction, 215, [2e8, 1.0, 0.0], 0),
        ),
        (MeterError::UnknownMarks { bits: 77 }, (Kind::UnknownMarks, 0, [77.0, 0.0, 15.0], 0)),
        (MeterError::BandReversed { lower_c: 28.0, upper_c: 18.0 }, (Kind::Contradiction, 205, [0.0, 28.0, 18.0], 0)),
        (
            MeterError::CoefficientMissing { temperature_c: 40.0, lower_c: 18.0, upper_c: 28.0 },
            (Kind::MissingArgument, 208, [40.0, 18.0, 28.0], 0),
        ),
        (MeterError::ClauseWithoutParts, (Kind::MissingArgument, 210, [0.0; 3], 0)),
        (MeterError::NoSpans, (Kind::Empty, 207, [0.0; 3], 0)),
        (
            MeterError::SpansNotAscending { index: 2, given_ohm: 200.0, before_ohm: 2000.0 },
            (Kind::Contradiction, 206, [200.0, 2000.0, 0.0], 2),
        ),
        (MeterError::NoSuchSpan { index: 7, count: 6 }, (Kind::NoSuchSpan, 0, [7.0, 0.0, 6.0], 7)),
        (
            MeterError::NoSpanHolds { upper_limit_ohm: 5e7, full_scale_ohm: 2e7 },
            (Kind::NoSpanHolds, 0, [5e7, 0.0, 2e7], 0),
        ),
        (MeterError::LeadsOverRange, (Kind::OverRangeReading, 209, [0.0; 3], 0)),
        (MeterError::WireNotInTable { area_mm2: 0.6, class: 5 }, (Kind::WireNotInTable, 0, [0.6, 0.0, 0.0], 5)),
    ] {
        held!(error, MeterError, plain(numbers));
    }
    held!(PERCENT.into(), MeterError, percent());
    held!(TOO_LARGE.into(), MeterError, too_large());
}

#[test]
fn of_readings_and_the_auto_ranger() {
    for (error, numbers) in [
        (NumberError::Empty.into(), (Kind::Empty, 10, [0.0; 3], 0)),
        (MeterError::TextEmpty, (Kind::Empty, 202, [0.0; 3], 0)),
        (MeterError::TextTooLong { length: 40 }, (Kind::TextTooLong, 202, [40.0, 0.0, 32.0], 32)),
        (MeterError::TextByte { at: 2, byte: 35 }, (Kind::UnexpectedByte, 202, [35.0, 0.0, 0.0], 2)),
        (MeterError::TextWithoutDigits { at: 6 }, (Kind::MissingDigits, 202, [0.0; 3], 6)),
        (MeterError::MarkNotOfSpan { at: 1, mark: Marks::BLANK }, (Kind::MarkNotOfSpan, 0, [4.0, 0.0, 0.0], 1)),
        (MeterError::NoReading, (Kind::NoReading, 0, [0.0; 3], 0)),
        (MeterError::UndefinedMark { given: 9.8e37 }, (Kind::UndefinedMark, 0, [9.8e37, 0.0, 0.0], 0)),
        (
            MeterError::BeyondFullScale { given_ohm: 2500.0, full_scale_ohm: 2000.0 },
            (Kind::BeyondFullScale, 0, [2500.0, 0.0, 2000.0], 0),
        ),
        (
            MeterError::NotOneReading { ohm: -3.0, counts: -4, step_ohm: 0.5 },
            (Kind::Contradiction, 211, [-3.0, -4.0, 0.5], 0),
        ),
        (MeterError::ReadingOverRange, (Kind::OverRangeReading, 211, [0.0; 3], 0)),
        (MeterError::TooManySpans { count: 70, most: 16 }, (Kind::WrongCount, 207, [70.0, 0.0, 16.0], 0)),
        (
            MeterError::HysteresisReversed { hysteresis: 0.3, widest: 0.2 },
            (Kind::Contradiction, 214, [0.2, 0.3, 0.0], 0),
        ),
        (
            MeterError::ReadingOfAnotherSpan { given_ohm: 200.0, full_scale_ohm: 2000.0 },
            (Kind::Contradiction, 212, [200.0, 0.0, 2000.0], 0),
        ),
        (
            MeterError::StrangeState { left: 8, discard: 2, hysteresis: 0.4 },
            (Kind::Contradiction, 213, [0.4, 0.0, 2.0], 8),
        ),
    ] {
        held!(error, MeterError, plain(numbers));
    }
}

#[test]
fn of_texts_on_a_prepared_span() {
    let prepared = Meter::example_hand_held().span(1).unwrap().prepared(None).unwrap();
    for (text, kind, at) in
        [("", Kind::Empty, 0), ("14.62", Kind::TooFewDecimals, 5), (" ----", Kind::MarkNotOfSpan, 1)]
    {
        let unread = prepared.read(text.as_bytes()).unwrap_err();
        held!(unread.into(), MeterError, plain((kind, 216, [0.0; 3], at)));
    }
}

/// Digits given behind the point times 512, those shown times 8, and the unit.
#[test]
fn of_numbers_that_a_display_does_not_show() {
    for (text, kind) in [
        (MisfitText::MissingPoint, Kind::MissingPoint),
        (MisfitText::TooFewDecimals, Kind::TooFewDecimals),
        (MisfitText::TooManyDecimals, Kind::TooManyDecimals),
        (MisfitText::TooManyDigits, Kind::TooManyDigits),
        (MisfitText::BeyondFullScale, Kind::BeyondFullScale),
        (MisfitText::OffGrid, Kind::OffGrid),
        (MisfitText::AmbiguousOne, Kind::AmbiguousText),
    ] {
        for (unit, code) in [(-3, 1), (0, 2), (3, 3), (6, 4), (9, 5)] {
            let form = Form { unit, decimals: 18 };
            let (given_decimals, could_be_ohm, largest_ohm) = (7, 14.62, 19.99);
            let misfit = Misfit { text, at: 3, given: 1462.0, given_decimals, could_be_ohm, largest_ohm, form };
            let numbers = (kind, 7 * 512 + 18 * 8 + code, [1462.0, 14.62, 19.99], 3);
            held!(misfit.into(), MeterError, plain(numbers));
        }
    }
}

#[test]
fn of_estimates_and_measurements() {
    for (error, detail) in [
        (PERCENT.into(), percent()),
        (TOO_LARGE, too_large()),
        (EstimateError::TooFewRepeats { given: 1 }, plain((Kind::WrongCount, 351, [1.0, 2.0, 0.0], 0))),
        (EstimateError::Lengths { u: 3, dof: 2 }, plain((Kind::WrongCount, 352, [3.0, 0.0, 2.0], 0))),
    ] {
        held!(error, EstimateError, detail);
    }
    for (error, numbers) in [
        (MeasurementError::NoReading, (Kind::Empty, 300, [0.0; 3], 0)),
        (MeasurementError::OverRange { index: 4 }, (Kind::OverRangeReading, 0, [0.0; 3], 4)),
        (
            MeasurementError::PathContradiction { shown_ohm: 900.0, path_ohm: 800.0 },
            (Kind::Contradiction, 302, [900.0, 0.0, 800.0], 0),
        ),
        (MeasurementError::CoefficientMissing, (Kind::MissingArgument, 303, [0.0; 3], 0)),
        (MeasurementError::TemperatureMissing, (Kind::MissingArgument, 304, [0.0; 3], 0)),
        (MeasurementError::CorrectionTooLarge { factor: -0.5 }, (Kind::Contradiction, 305, [-0.5, 0.0, 0.0], 0)),
        (MeterError::NoReading.into(), (Kind::NoReading, 0, [0.0; 3], 0)),
    ] {
        held!(error, MeasurementError, plain(numbers));
    }
    held!(TOO_LARGE.into(), MeasurementError, too_large());
}

#[test]
fn of_verdicts() {
    for (error, detail) in [
        (VerdictError::Estimate(PERCENT.into()), percent()),
        (TOO_LARGE.into(), too_large()),
        (LimitsError::BothOpen.into(), plain((Kind::Empty, 193, [0.0; 3], 0))),
        (VerdictError::Element { fault: TOO_LARGE, index: 5, failed: 9 }, fifth(too_large())),
        (VerdictError::Lengths { estimates: 3, room: 2 }, plain((Kind::WrongCount, 400, [2.0, 0.0, 3.0], 0))),
    ] {
        held!(error, VerdictError, detail);
    }
}

#[test]
fn of_sensors() {
    let outside = |quantity, given| OutsideDomain { quantity, given, lower: -40.0, upper: 85.0 };
    let warm = outside(Quantity::Temperature, 86.0);
    let open = outside(Quantity::Resistance, f64::INFINITY);
    let (of_warm, of_open) = (
        plain((Kind::OutsideDomain, 450, [86.0, -40.0, 85.0], 0)),
        plain((Kind::NotFinite, 451, [f64::INFINITY, -40.0, 85.0], 0)),
    );
    for (error, detail) in [
        (PERCENT.into(), percent()),
        (TOO_LARGE.into(), too_large()),
        (warm.into(), of_warm),
        (open.into(), of_open),
        (SensorError::Element { fault: open, index: 5, failed: 9 }, fifth(of_open)),
        (SensorError::Lengths { needed: 3, room: 2 }, plain((Kind::WrongCount, 452, [2.0, 3.0, 3.0], 0))),
        (SensorError::OneTemperature { given_c: 25.0 }, plain((Kind::Contradiction, 453, [25.0, 0.0, 0.0], 0))),
        (SensorError::Domainless { lower: 85.0, upper: 25.0 }, plain((Kind::Contradiction, 454, [0.0, 85.0, 25.0], 0))),
        (
            SensorError::Coefficients { b: 1e-9, lower_c: -40.0, upper_c: 125.0 },
            plain((Kind::Contradiction, 455, [1e-9, -40.0, 125.0], 0)),
        ),
        (
            SensorError::PlatinumCoefficients { a: 3.9e-3, b: 5.8e-3, c: -4e-12 },
            plain((Kind::Contradiction, 456, [3.9e-3, 5.8e-3, -4e-12], 0)),
        ),
        (
            SensorError::OutsideTolerance { given_c: 700.0, lower_c: -196.0, upper_c: 600.0 },
            plain((Kind::OutsideDomain, 457, [700.0, -196.0, 600.0], 0)),
        ),
        (
            SensorError::OutsideTolerance { given_c: f64::INFINITY, lower_c: -196.0, upper_c: 600.0 },
            plain((Kind::NotFinite, 457, [f64::INFINITY, -196.0, 600.0], 0)),
        ),
    ] {
        held!(error, SensorError, detail);
    }
}

#[test]
fn of_fits() {
    let lengths = |list| FitError::Lengths { list, needed: 3, given: 2 };
    let of_lengths = |argument| plain((Kind::WrongCount, argument, [2.0, 3.0, 3.0], 0));
    for (error, detail) in [
        (PERCENT.into(), percent()),
        (FitError::Element { fault: INFINITE, index: 5, failed: 9 }, fifth(infinite())),
        (lengths(List::X), of_lengths(500)),
        (lengths(List::UY), of_lengths(501)),
        (lengths(List::UX), of_lengths(502)),
        (lengths(List::Weights), of_lengths(503)),
        (lengths(List::Residuals), of_lengths(504)),
        (FitError::TooFewPoints { given: 2, needed: 3 }, plain((Kind::WrongCount, 510, [2.0, 3.0, 0.0], 0))),
        (FitError::Undetermined { parameter: 4 }, plain((Kind::Undetermined, 0, [0.0; 3], 4))),
        (
            FitError::BoundsCrossed { parameter: 4, lower: 9.0, upper: 8.0 },
            plain((Kind::Contradiction, 511, [0.0, 9.0, 8.0], 4)),
        ),
        (
            FitError::StartOutside { parameter: 4, given: 7.0, lower: 8.0, upper: 9.0 },
            plain((Kind::Contradiction, 512, [7.0, 8.0, 9.0], 4)),
        ),
        (FitError::ModelNotFinite { index: 4, x: 7.0 }, plain((Kind::ModelNotFinite, 0, [7.0, 0.0, 0.0], 4))),
        (
            FitError::NotSettled { steps: 4, left: 0.5, allowed: 1e-6 },
            plain((Kind::NotSettled, 0, [0.5, 0.0, 1e-6], 4)),
        ),
        (FitError::MissingUncertaintyOfY, plain((Kind::MissingArgument, 513, [0.0; 3], 0))),
        (FitError::TooLarge { largest: 3e38 }, plain((Kind::ResultOutOfRange, 514, [0.0, 0.0, 3e38], 0))),
    ] {
        held!(error, FitError, detail);
    }
}

/// Numbers that belong to no failure, or to one of another area.
#[test]
fn what_is_no_failure_is_not_made_into_one() {
    let nothing = |kind, argument| {
        let detail = plain((kind, argument, [77.0, 1.0, 2.0], 0));
        assert_eq!(NumberError::from_detail(&detail), None);
        assert_eq!(DistributionError::from_detail(&detail), None);
        assert_eq!(PreferredError::from_detail(&detail), None);
        assert_eq!(LimitsError::from_detail(&detail), None);
        assert_eq!(MarkingError::from_detail(&detail), None);
        assert_eq!(MeterError::from_detail(&detail), None);
        assert_eq!(EstimateError::from_detail(&detail), None);
        assert_eq!(MeasurementError::from_detail(&detail), None);
        assert_eq!(VerdictError::from_detail(&detail), None);
        assert_eq!(SensorError::from_detail(&detail), None);
        assert_eq!(FitError::from_detail(&detail), None);
    };
    for kind in [Kind::Empty, Kind::Contradiction, Kind::MissingArgument, Kind::WrongCount, Kind::ResultOutOfRange] {
        nothing(kind, 999);
    }
    // Not what a prepared span says of a text.
    nothing(Kind::Contradiction, 216);
    // A row that is none.
    nothing(Kind::OutOfRange, 0);
    nothing(Kind::NotFinite, 0);
}
