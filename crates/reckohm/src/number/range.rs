//! The legal ranges, each once. Checks, messages, the C header, the docs and the test points all read a row here.

use core::fmt;

use super::kind::{Detail, Kind};
use super::readable::Readable;
use super::scalar::Real;

/// One legal range: its numbers.
#[derive(Debug, PartialEq)]
#[non_exhaustive]
pub struct RangeRow {
    /// Its number, never used again for another range.
    pub number: u16,
    /// Lower end.
    pub lower: f64,
    /// Upper end; infinite only where an infinite value is meant.
    pub upper: f64,
    /// Whether the lower end itself is left out.
    pub lower_open: bool,
    /// Whether the upper end itself is left out.
    pub upper_open: bool,
}

/// What a range is called. It stands apart from the numbers, so that firmware which prints no sentence holds no words.
#[derive(Clone, Copy, Debug, PartialEq)]
#[non_exhaustive]
pub struct RangeWords {
    /// What the number is, in words of the trade, as the message begins.
    pub name: &'static str,
    /// Its unit, empty for a pure number.
    pub unit: &'static str,
    /// Where the range comes from.
    pub source: &'static str,
    /// What to do about a number outside.
    pub hint: &'static str,
}

impl RangeRow {
    /// The number itself if it is within this range, whose ends are rounded to the type of the number.
    ///
    /// # Errors
    /// [`OutOfRange`] for anything else, NaN included.
    ///
    /// ```
    /// use reckohm::number::PROBABILITY;
    /// assert_eq!(PROBABILITY.check(0.95), Ok(0.95));
    /// assert!(PROBABILITY.check(95.0).is_err() && PROBABILITY.check(f64::NAN).is_err());
    /// assert!(PROBABILITY.check(0.95_f32).is_ok());
    /// ```
    // Inlined, so that the ends of a range of floats are floats already, and no double is rounded on each call.
    #[inline(always)]
    pub fn check<R: Real>(&'static self, given: R) -> Result<R, OutOfRange> {
        let (lower, upper) = (end::<R>(self.lower), end::<R>(self.upper));
        let above = if self.lower_open { given > lower } else { given >= lower };
        let below = if self.upper_open { given < upper } else { given <= upper };
        if above & below { Ok(given) } else { Err(OutOfRange { row: self, given: given.to_f64() }) }
    }

    /// The row with this number, if there is one.
    ///
    /// ```
    /// use reckohm::number::{PROBABILITY, RangeRow};
    /// assert_eq!(RangeRow::from_number(PROBABILITY.number), Some(&PROBABILITY));
    /// ```
    pub fn from_number(number: u16) -> Option<&'static RangeRow> {
        RANGES.iter().copied().find(|row| row.number == number)
    }

    /// What it is called.
    ///
    /// ```
    /// use reckohm::number::PROBABILITY;
    /// assert_eq!(PROBABILITY.words().name, "probability");
    /// ```
    pub fn words(&self) -> RangeWords {
        let of_this = RANGES.iter().zip(WORDS).find(|(row, _)| row.number == self.number);
        // Rows stand in this file alone, each with its words.
        of_this.map_or(RangeWords { name: "", unit: "", source: "", hint: "" }, |(_, words)| *words)
    }
}

/// An end of a range in the type of the number; a finite one stays finite.
#[inline(always)]
fn end<R: Real>(end: f64) -> R {
    let rounded = R::of_f64(end);
    if end.is_infinite() { rounded } else { rounded.smaller(R::LARGEST).larger(-R::LARGEST) }
}

/// A number outside its legal range: which range, and what was given.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct OutOfRange {
    /// The range.
    pub row: &'static RangeRow,
    /// What was given.
    pub given: f64,
}

impl OutOfRange {
    /// [`Kind::NotFinite`] for NaN and for an infinity where the range is finite, else [`Kind::OutOfRange`].
    pub fn kind(&self) -> Kind {
        // Asked of the bits, so that a range of floats needs no comparison of doubles.
        let not_finite = self.given.to_bits() << 1 >= f64::INFINITY.to_bits() << 1;
        if not_finite { Kind::NotFinite } else { Kind::OutOfRange }
    }

    /// The same as plain numbers.
    pub fn detail(&self) -> Detail {
        Detail {
            row: self.row.number,
            given: self.given,
            lower: self.row.lower,
            upper: self.row.upper,
            ..Detail::new(self.kind())
        }
    }

    /// Back from plain numbers, if they are of a range error.
    ///
    /// ```
    /// use reckohm::number::{OutOfRange, PROBABILITY};
    /// let error = PROBABILITY.check(95.0).unwrap_err();
    /// assert_eq!(OutOfRange::from_detail(&error.detail()), Some(error));
    /// ```
    pub fn from_detail(detail: &Detail) -> Option<OutOfRange> {
        if !matches!(detail.kind, Kind::OutOfRange | Kind::NotFinite) {
            return None;
        }
        Some(OutOfRange { row: RangeRow::from_number(detail.row)?, given: detail.given })
    }
}

impl fmt::Display for OutOfRange {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let RangeWords { name, unit, source, hint } = self.row.words();
        let RangeRow { lower, upper, lower_open, upper_open, .. } = self.row;
        let gap = if unit.is_empty() { "" } else { " " };
        let (lower, upper) = (Readable(*lower), Readable(*upper));
        write!(f, "{name}: {}{gap}{unit} given, ", Readable(self.given))?;
        match (lower_open, self.row.upper.is_infinite()) {
            (true, true) => write!(f, "more than {lower}{gap}{unit} allowed")?,
            (false, true) => write!(f, "{lower}{gap}{unit} or more allowed")?,
            (_, false) => {
                let from = if *lower_open { "more than " } else { "" };
                let to = if *upper_open { "less than " } else { "" };
                write!(f, "{from}{lower}{gap}{unit} to {to}{upper}{gap}{unit} allowed")?;
            }
        }
        write!(f, " ({source}); {hint}")
    }
}

impl core::error::Error for OutOfRange {}

macro_rules! ranges {
    ($($(#[doc = $doc:literal])+ $name:ident = $number:literal, $words:literal, $unit:literal,
        $open:tt $lower:expr, $upper:expr; $close:tt, $source:literal, $hint:literal;)+) => {
        $($(#[doc = $doc])+
        pub static $name: RangeRow = RangeRow {
            number: $number, lower: $lower, upper: $upper,
            lower_open: ranges!(@open $open), upper_open: ranges!(@open $close),
        };)+
        /// Every range, in the order of its number.
        pub static RANGES: &[&RangeRow] = &[$(&$name),+];
        /// The words of each, in the same order.
        static WORDS: &[RangeWords] = &[$(RangeWords { name: $words, unit: $unit, source: $source, hint: $hint }),+];
    };
    (@open open) => { true };
    (@open closed) => { false };
}

// This list is the one that hands out row numbers: 1–49 any area, 100–199 `part`, 200–299 `meter`,
// 300–349 `measurement`, 350–399 `uncertainty`, 400–449 `verdict`, 450–499 `sensor`, 500–549 `fit`.
ranges! {
    /// A probability that is neither certain nor impossible.
    PROBABILITY = 1, "probability", "", open 0.0, 1.0; open,
        "JCGM 106 3.1", "give a fraction, not percent: 95 % is 0.95";
    /// Degrees of freedom of a distribution.
    DEGREES_OF_FREEDOM = 2, "degrees of freedom", "", open 0.0, f64::INFINITY; closed,
        "JCGM 100 G.3", "n readings have n - 1; infinite is allowed and means normal";
    /// Any finite number.
    FINITE = 3, "number", "", closed f64::MIN, f64::MAX; closed,
        "our rule: no infinity and no NaN enters", "look for an empty field or a division by zero before this call";
    /// A resistance of a part.
    RESISTANCE = 4, "resistance", "ohm", open 0.0, 1.0e15; closed,
        "our rule: beyond it is insulation, not a resistance", "give ohm, not kilohm; a short is stated by a limit, not by 0";
    /// A tolerance as a fraction.
    TOLERANCE = 5, "tolerance", "", open 0.0, 1.0; open,
        "IEC 60062", "give a fraction, not percent: 5 % is 0.05";
    /// Full scale of a span.
    SPAN_FULL_SCALE = 200, "full scale of a span", "ohm", open 0.0, 1.0e15; closed,
        "our rule: beyond it is insulation, not a resistance", "give the first value in ohm that the display no longer shows";
    /// Step of a display.
    SPAN_RESOLUTION = 201, "resolution of a span", "ohm", closed 1.0e-9, 1.0e12; closed,
        "our rule", "give the step of the last digit in ohm";
    /// How many steps a display has.
    DISPLAY_COUNTS = 202, "full scale of a span over its resolution", "", closed 10.0, 1.0e9; closed,
        "our rule: two digits to nine", "give both in ohm: a display of 2000 counts has 2000";
    /// A fraction in an accuracy clause.
    ACCURACY_FRACTION = 203, "fraction in an accuracy clause", "", closed 0.0, 1.0; open,
        "our rule", "give a fraction, not percent: 0.8 % is 0.008";
    /// The counts in an accuracy clause.
    ACCURACY_COUNTS = 204, "counts in an accuracy clause", "", closed 0.0, 1.0e6; closed,
        "our rule", "give how many steps of the last digit: 3 for +3 counts";
    /// Coverage factor of a stated accuracy.
    COVERAGE_FACTOR = 205, "coverage factor", "", open 0.0, 10.0; closed,
        "JCGM 100 6.3", "2 is common for 95 %; leave it out if the clause is a limit";
    /// Temperature of a meter.
    METER_TEMPERATURE = 206, "temperature of the meter", "degree Celsius", closed -60.0, 120.0; closed,
        "our rule", "give degrees Celsius of the meter's surroundings, not of the part";
    /// Temperature coefficient of an accuracy clause.
    TEMPERATURE_COEFFICIENT_OF_CLAUSE = 207, "temperature coefficient of an accuracy clause", "per kelvin",
        closed 0.0, 1.0; closed, "our rule", "give a part of the clause for each kelvin: a tenth is 0.1";
    /// Length of one lead.
    WIRE_LENGTH = 208, "length of one lead", "m", open 0.0, 1.0e5; closed,
        "our rule", "give metres of one of the two leads; both are reckoned";
    /// Hysteresis of an auto-ranger.
    HYSTERESIS = 209, "hysteresis of an auto-ranger", "", closed 0.001, 0.9; closed,
        "our rule", "give a fraction of the lower span's full scale: 5 % is 0.05";
    /// A resistance as measured, which may be negative.
    MEASURED_RESISTANCE = 210, "measured resistance", "ohm", closed f64::MIN, f64::MAX; closed,
        "our rule: no infinity and no NaN enters", "give the full scale of the span where the meter shows over-range";
    /// A temperature coefficient as marked.
    MARKED_COEFFICIENT = 100, "marked temperature coefficient", "ppm/K", closed 1.0, 10_000.0; closed,
        "IEC 60062", "give parts per million a kelvin: 0.01 %/K is 100";
    /// A value of a standardised distribution, or the argument of an error function.
    DEVIATE = 10, "standardised value", "", closed f64::MIN, f64::MAX; closed,
        "our rule: no infinity and no NaN enters", "look for a division by a standard uncertainty of zero before this call";
    /// The argument of the logarithm of the gamma function.
    GAMMA_ARGUMENT = 11, "argument of the gamma function", "", open 0.0, 2.5e305; closed,
        "our rule: beyond it the logarithm of the gamma function is larger than any double", "give a number above 0";
    /// A parameter of the beta function.
    BETA_PARAMETER = 12, "parameter of the beta function", "", open 0.0, 1.0e9; closed,
        "our rule: as far as it was tried", "give a number above 0; for larger ones use the normal approximation";
    /// The argument of the regularised beta function.
    BETA_ARGUMENT = 13, "argument of the beta function", "", closed 0.0, 1.0; closed,
        "Abramowitz and Stegun 26.5", "give a fraction from 0 to 1";
    /// Standard uncertainty of any part.
    STANDARD_UNCERTAINTY = 350, "standard uncertainty", "", closed 0.0, f64::INFINITY; open,
        "JCGM 100 2.3.1", "a standard uncertainty is a width, never negative; 0 means that there is no such part";
    /// Half-width of a rectangular part.
    HALF_WIDTH = 351, "half-width of a rectangular part", "", closed 0.0, f64::INFINITY; open,
        "JCGM 100 4.3.7", "give half of the whole width; 0 means that there is no such part";
    /// Degrees of freedom of a type A part.
    TYPE_A_DEGREES_OF_FREEDOM = 352, "degrees of freedom of a type A part", "", closed 1.0, f64::INFINITY; closed,
        "JCGM 100 4.2.6", "n repeats have n - 1, so one reading alone has no type A part; infinite means known from before";
    /// Width of a one-sided part.
    ONE_SIDED_HALF_WIDTH = 353, "width of a one-sided part", "", closed 0.0, f64::INFINITY; open,
        "our rule", "give how far the true value may lie to that side, never negative; 0 means not at all";
    /// Coverage probability of an interval.
    COVERAGE_PROBABILITY = 354, "coverage probability", "", open 0.0, 1.0; open,
        "JCGM 100 6.2.2", "give a fraction, not percent: 95 % is 0.95";
    /// Probability of one tail.
    TAIL_PROBABILITY = 355, "probability of one tail", "", open 0.0, 0.5; closed,
        "JCGM 106 7.3", "the risk to one side, 5 % is 0.05; beyond one half the other tail is meant";
    /// Spread of repeated readings, known from before.
    REPEATABILITY = 300, "repeatability", "ohm", closed 0.0, f64::INFINITY; open,
        "JCGM 100 4.2.4", "give the standard deviation of single readings, as found on this meter and span before";
    /// Resistance of a path in parallel with the part.
    PARALLEL_PATH = 301, "resistance of a parallel path", "ohm", open 0.0, f64::INFINITY; open,
        "our rule", "leave the path out if there is none";
    /// Temperature coefficient that is known and corrected for.
    KNOWN_COEFFICIENT = 302, "known temperature coefficient", "ppm/K", closed -1.0e6, 1.0e6; closed,
        "our rule", "give parts per million a kelvin: 0.39 %/K is 3900";
    /// Limit of a temperature coefficient, as marked.
    COEFFICIENT_LIMIT = 303, "limit of the temperature coefficient", "ppm/K", closed 0.0, 1.0e6; closed,
        "IEC 60062", "give the marked plus-or-minus value as a positive number";
    /// Temperature of a part.
    PART_TEMPERATURE = 304, "temperature of the part", "degree Celsius", closed -273.15, 3500.0; closed,
        "physics: absolute zero; tungsten melts at about 3422", "give degrees Celsius";
    /// Resistance that a limit or nominal value of a verdict may have.
    RISK = 400, "risk of a wrong verdict", "", open 0.0, 0.5; open,
        "JCGM 106 8.3", "give a fraction, not percent: 5 % is 0.05; at one half and above there is nothing left to guard";
    /// Temperature of a thermistor.
    THERMISTOR_TEMPERATURE = 450, "temperature of a thermistor", "degree Celsius", closed -200.0, 1000.0; closed,
        "our rule: as far as the formulas were tried", "give degrees Celsius, not kelvin";
    /// B-value of a thermistor.
    B_VALUE = 451, "B-value", "K", closed 100.0, 20_000.0; closed,
        "our rule: most thermistors have 2000 to 6000", "give kelvin: ln(R1/R2) over the difference of the reciprocal temperatures";
    /// What the formula of a sensor gives at an end of its domain.
    END_RESISTANCE = 452, "resistance of a sensor at an end of its domain", "ohm", closed 1.0e-6, 1.0e15; closed,
        "our rule: beyond it is a short or insulation, not a sensor", "check the unit of the parameters, or give a narrower domain";
    /// A parameter of a sensor's formula, or an end of its domain.
    SENSOR_PARAMETER = 453, "parameter of a sensor, or an end of its domain", "", closed f64::MIN, f64::MAX; closed,
        "our rule: no infinity and no NaN enters", "look for an empty field among the numbers of the sensor's sheet";
    /// Temperature of a platinum thermometer.
    PLATINUM_TEMPERATURE = 454, "temperature of a platinum thermometer", "degree Celsius", closed -200.0, 850.0; closed,
        "IEC 60751", "give degrees Celsius, not kelvin; the equations go no further";
    /// Coefficient A of platinum.
    PLATINUM_COEFFICIENT = 455, "coefficient A of a platinum thermometer", "per kelvin", closed 0.001, 0.01; closed,
        "our rule: IEC 60751 has 0.0039083", "give a fraction a kelvin, not percent: 3.9083e-3; it comes before B and C";
    /// Tolerance of a platinum thermometer at 0 °C.
    PLATINUM_TOLERANCE = 456, "tolerance of a platinum thermometer at 0 degree Celsius", "K", closed 0.0, 5.0; closed,
        "our rule: IEC 60751 has 0.1 to 0.6", "give kelvin, to one side: class B has 0.3";
    /// How much the tolerance of a platinum thermometer grows.
    PLATINUM_TOLERANCE_SHARE = 457, "growth of the tolerance of a platinum thermometer", "K a kelvin",
        closed 0.0, 0.02; closed, "our rule: IEC 60751 has 0.0017 to 0.01", "give kelvin for each kelvin away from 0 degree Celsius: class B has 0.005";
    /// A number of the points to be fitted.
    FIT_POINT = 500, "number of a point to be fitted", "", closed f64::MIN, f64::MAX; closed,
        "our rule: no infinity and no NaN enters", "look for an empty field in the table of points; leave out what was not measured";
    /// Standard uncertainty of y of a point.
    FIT_U_Y = 501, "standard uncertainty of y of a point", "", open 0.0, f64::INFINITY; open,
        "JCGM 100 2.3.1", "give more than 0, in the unit of y; leave all of them out if none is known";
    /// Standard uncertainty of x of a point.
    FIT_U_X = 502, "standard uncertainty of x of a point", "", closed 0.0, f64::INFINITY; open,
        "JCGM 100 2.3.1", "give a width in the unit of x, never negative; 0 means that x is exact";
    /// Weight of a point.
    FIT_WEIGHT = 503, "weight of a point", "", open 0.0, f64::INFINITY; open,
        "our rule", "a weight goes as the reciprocal of the variance; leave a point out instead of giving it no weight";
    /// Standard uncertainty of an error that all points share.
    FIT_COMMON_U = 504, "standard uncertainty of an error that all points share", "", closed 0.0, f64::INFINITY; open,
        "JCGM 100 F.1.2.4", "give a width, never negative; 0 means that there is no such error";
    /// A parameter at which a fit begins.
    FIT_START = 505, "parameter at which a fit begins", "", closed f64::MIN, f64::MAX; closed,
        "our rule: no infinity and no NaN enters", "give a guess of the right order of magnitude and sign";
    /// A bound of a parameter.
    FIT_BOUND = 506, "bound of a parameter", "", closed f64::NEG_INFINITY, f64::INFINITY; closed,
        "our rule", "give the bounds as numbers, the lower one first; an infinite one means none";
}
