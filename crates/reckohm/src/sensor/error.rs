//! What can go wrong with a sensor.

use core::fmt;
use core::ops::Range;

use crate::fit::FitError;
use crate::number::arrays::ArrayFault;
use crate::number::{Detail, Kind, OutOfRange, Readable, Real};
use crate::uncertainty::EstimateError;

/// What a sensor's model turns into another.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[non_exhaustive]
pub enum Quantity {
    /// Temperature in degrees Celsius.
    Temperature,
    /// Resistance in ohm.
    Resistance,
}

impl Quantity {
    const ALL: [Quantity; 2] = [Quantity::Temperature, Quantity::Resistance];

    /// What tells it apart in [`Detail::argument`].
    const fn argument(self) -> u16 {
        match self {
            Quantity::Temperature => 450,
            Quantity::Resistance => 451,
        }
    }

    const fn name(self) -> &'static str {
        match self {
            Quantity::Temperature => "temperature",
            Quantity::Resistance => "resistance",
        }
    }

    const fn unit(self) -> &'static str {
        match self {
            Quantity::Temperature => "degree Celsius",
            Quantity::Resistance => "ohm",
        }
    }

    const fn hint(self) -> &'static str {
        match self {
            Quantity::Resistance => {
                "look for a short, an open lead or a reading on another span; ask for a wider domain only where the model is \
                 known to hold"
            }
            _ => "ask for a wider domain only where the model is known to hold",
        }
    }
}

/// A value that belongs to nothing in the domain of a sensor's model.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct OutsideDomain {
    /// What it is a value of.
    pub quantity: Quantity,
    /// What was given.
    pub given: f64,
    /// The lower end of what is allowed.
    pub lower: f64,
    /// The upper end of what is allowed.
    pub upper: f64,
}

impl OutsideDomain {
    fn kind(&self) -> Kind {
        if self.given.is_finite() { Kind::OutsideDomain } else { Kind::NotFinite }
    }

    fn detail(&self) -> Detail {
        let OutsideDomain { quantity, given, lower, upper } = *self;
        Detail { argument: quantity.argument(), given, lower, upper, ..Detail::new(self.kind()) }
    }

    fn from_detail(detail: &Detail) -> Option<OutsideDomain> {
        let Detail { kind, argument, given, lower, upper, .. } = *detail;
        let quantity = Quantity::ALL.into_iter().find(|quantity| quantity.argument() == argument)?;
        matches!(kind, Kind::OutsideDomain | Kind::NotFinite).then_some(OutsideDomain { quantity, given, lower, upper })
    }
}

impl fmt::Display for OutsideDomain {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let OutsideDomain { quantity, given, lower, upper } = *self;
        let (name, unit, hint) = (quantity.name(), quantity.unit(), quantity.hint());
        write!(f, "{name} of a sensor: {} {unit} given, ", Readable(given))?;
        write!(f, "{} {unit} to {} {unit} allowed, ", Readable(lower), Readable(upper))?;
        write!(f, "the domain of its model; {hint}")
    }
}

impl core::error::Error for OutsideDomain {}

/// Tells two lengths of this area from those of others in [`Detail::argument`].
const LENGTHS: u16 = 452;
/// The same for two temperatures of a B-value, for the ends of a domain and for coefficients.
const B_TEMPERATURES: u16 = 453;
const DOMAIN: u16 = 454;
const COEFFICIENTS: u16 = 455;
/// The same for coefficients of platinum and for the range of a tolerance.
const PLATINUM_COEFFICIENTS: u16 = 456;
const TOLERANCE_RANGE: u16 = 457;
/// The rows of ranges of fits.
const FIT_ROWS: Range<u16> = 500..550;

/// Why there is no sensor, or no result of one.
#[derive(Clone, Copy, Debug, PartialEq, thiserror::Error)]
#[non_exhaustive]
pub enum SensorError {
    /// A parameter outside its range.
    #[error("{0}")]
    Range(#[from] OutOfRange),
    /// A value outside the model's domain.
    #[error("{0}")]
    Domain(#[from] OutsideDomain),
    /// Values of an array outside the model's domain; nothing was written.
    #[error("sensor: element {index}, the first of {failed} that failed: {fault}")]
    Element {
        /// The first failure.
        fault: OutsideDomain,
        /// Its index, counted from 0.
        index: u64,
        /// How many elements failed in all.
        failed: u64,
    },
    /// Two slices of different lengths.
    #[error("sensor: room for {room} results given, {needed} needed; give an output with one place for each result")]
    Lengths {
        /// How many results there are.
        needed: u64,
        /// How many places were given for them.
        room: u64,
    },
    /// A B-value of one temperature.
    #[error(
        "B-value of a thermistor: {} degree Celsius given for both of its temperatures, two different ones allowed \
         (IEC 60539-1); B25/85 belongs to 25 and 85",
        Readable(*given_c)
    )]
    OneTemperature {
        /// The temperature in degrees Celsius.
        given_c: f64,
    },
    /// A domain that ends where it begins, or before.
    #[error(
        "domain of a sensor or of its tolerance: {} to {} given, a lower end below the upper one allowed; give the ends \
         between which it is known to hold, the lower one first",
        Readable(*lower),
        Readable(*upper)
    )]
    Domainless {
        /// The lower end.
        lower: f64,
        /// The upper end.
        upper: f64,
    },
    /// Steinhart-Hart coefficients without one smooth curve over the domain.
    #[error(
        "Steinhart-Hart coefficients: {} per kelvin given for the logarithm itself, with others that give no resistance that \
         falls smoothly from {} to {} degree Celsius; the logarithm's own coefficient is positive and outweighs \
         those of its powers; check the order, and whether they are for ln(R/ohm) or for the ratio to a rated resistance",
        Readable(*b),
        Readable(*lower_c),
        Readable(*upper_c)
    )]
    Coefficients {
        /// The coefficient of the logarithm itself, in 1/K.
        b: f64,
        /// The lower end of the domain in degrees Celsius.
        lower_c: f64,
        /// The upper end of the domain in degrees Celsius.
        upper_c: f64,
    },
    /// The points do not give the parameters.
    #[error("{0}")]
    Fit(#[from] FitError),
    /// Callendar-Van Dusen coefficients without one smooth curve over the range of IEC 60751.
    #[error(
        "Callendar-Van Dusen coefficients: A = {} per kelvin, B = {}, C = {} given, which give no resistance that rises smoothly \
         from -200 to 850 degree Celsius; of platinum A is near 0.0039, B near -5.8e-7 and C near -4.2e-12 or 0 \
         (IEC 60751); check the order, the signs and the powers of ten",
        Readable(*a),
        Readable(*b),
        Readable(*c)
    )]
    PlatinumCoefficients {
        /// A in 1/K.
        a: f64,
        /// B in 1/K².
        b: f64,
        /// C in 1/K⁴.
        c: f64,
    },
    /// A temperature at which a tolerance is not stated.
    #[error(
        "tolerance of a platinum thermometer: {} degree Celsius given, {} degree Celsius to {} degree Celsius allowed, the \
         range that it is stated for (IEC 60751 has one for each class); nothing is promised outside; where the maker states \
         more, give that tolerance with its range",
        Readable(*given_c),
        Readable(*lower_c),
        Readable(*upper_c)
    )]
    OutsideTolerance {
        /// What was given, in degrees Celsius.
        given_c: f64,
        /// The lower end of the range in degrees Celsius.
        lower_c: f64,
        /// The upper end of the range in degrees Celsius.
        upper_c: f64,
    },
    /// The estimate, or what comes out of it, is not usable.
    #[error("{0}")]
    Estimate(#[from] EstimateError),
}

impl From<ArrayFault<OutsideDomain>> for SensorError {
    fn from(fault: ArrayFault<OutsideDomain>) -> SensorError {
        match fault {
            ArrayFault::Lengths { needed, room } => SensorError::Lengths { needed, room },
            ArrayFault::Element { fault, index, failed } => SensorError::Element { fault, index, failed },
        }
    }
}

impl SensorError {
    /// The failure of a domain whose ends are in the wrong order.
    pub(super) fn domainless<R: Real>([lower, upper]: [R; 2]) -> SensorError {
        SensorError::Domainless { lower: lower.to_f64(), upper: upper.to_f64() }
    }

    /// What happened, in one word.
    pub fn kind(&self) -> Kind {
        self.detail().kind
    }

    /// The same as plain numbers; for two lengths `given` is the room, `lower` and `upper` what is needed; for
    /// coefficients of platinum they are A, B and C.
    pub fn detail(&self) -> Detail {
        let contradiction = Detail::new(Kind::Contradiction);
        match *self {
            SensorError::Range(range) => range.detail(),
            SensorError::Domain(outside) => outside.detail(),
            SensorError::Element { fault, index, failed } => Detail { index, failed, ..fault.detail() },
            SensorError::Lengths { needed, room } => Detail {
                argument: LENGTHS,
                given: room as f64,
                lower: needed as f64,
                upper: needed as f64,
                ..Detail::new(Kind::WrongCount)
            },
            SensorError::OneTemperature { given_c } => {
                Detail { argument: B_TEMPERATURES, given: given_c, ..contradiction }
            }
            SensorError::Domainless { lower, upper } => Detail { argument: DOMAIN, lower, upper, ..contradiction },
            SensorError::Coefficients { b, lower_c, upper_c } => {
                Detail { argument: COEFFICIENTS, given: b, lower: lower_c, upper: upper_c, ..contradiction }
            }
            SensorError::Fit(error) => error.detail(),
            SensorError::PlatinumCoefficients { a, b, c } => {
                Detail { argument: PLATINUM_COEFFICIENTS, given: a, lower: b, upper: c, ..contradiction }
            }
            SensorError::OutsideTolerance { given_c, lower_c, upper_c } => {
                let kind = if given_c.is_finite() { Kind::OutsideDomain } else { Kind::NotFinite };
                Detail {
                    argument: TOLERANCE_RANGE,
                    given: given_c,
                    lower: lower_c,
                    upper: upper_c,
                    ..Detail::new(kind)
                }
            }
            SensorError::Estimate(error) => error.detail(),
        }
    }

    /// Back from plain numbers, if they are of such an error.
    pub fn from_detail(detail: &Detail) -> Option<SensorError> {
        let Detail { kind, argument, given, lower, upper, index, failed, .. } = *detail;
        match (kind, argument) {
            (Kind::WrongCount, LENGTHS) => Some(SensorError::Lengths { needed: lower as u64, room: given as u64 }),
            (Kind::Contradiction, B_TEMPERATURES) => Some(SensorError::OneTemperature { given_c: given }),
            (Kind::Contradiction, DOMAIN) => Some(SensorError::Domainless { lower, upper }),
            (Kind::Contradiction, COEFFICIENTS) => {
                Some(SensorError::Coefficients { b: given, lower_c: lower, upper_c: upper })
            }
            (Kind::Contradiction, PLATINUM_COEFFICIENTS) => {
                Some(SensorError::PlatinumCoefficients { a: given, b: lower, c: upper })
            }
            (Kind::OutsideDomain | Kind::NotFinite, TOLERANCE_RANGE) => {
                Some(SensorError::OutsideTolerance { given_c: given, lower_c: lower, upper_c: upper })
            }
            _ => match OutsideDomain::from_detail(detail) {
                Some(fault) if failed == 0 => Some(fault.into()),
                Some(fault) => Some(SensorError::Element { fault, index, failed }),
                // A range error of a fit is one of its rows; those of others are told apart by nothing.
                None if OutOfRange::from_detail(detail).is_none() || FIT_ROWS.contains(&detail.row) => {
                    let of_fit = FitError::from_detail(detail).map(SensorError::Fit);
                    of_fit.or_else(|| EstimateError::from_detail(detail).map(SensorError::Estimate))
                }
                None => OutOfRange::from_detail(detail).map(SensorError::Range),
            },
        }
    }
}
