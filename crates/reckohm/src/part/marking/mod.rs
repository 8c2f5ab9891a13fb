//! Markings: what the bands or the print on a resistor say (IEC 60062, colour codes of IEC 60757).
//!
//! A marking is whole figures times a power of ten, a tolerance and sometimes a temperature coefficient. It is kept as
//! such, and [`limits`](Marking::limits) are computed exactly and rounded once. Codes on which sources disagree, or for which
//! none could be read, are refused with the reason.
//!
//! A marking says what a part was sold as, not what it is, and a colour is easily misread: see [`both_ways`].
//!
//! ```
//! use reckohm::marking::{Edition, Marking};
//! let marking = Marking::from_bands("yellow violet red gold", Edition::E2016)?;
//! assert_eq!(marking.nominal_ohm(), 4700.0);
//! assert_eq!(marking.limits()?.upper_ohm(), 4935.0);
//! assert_eq!(marking.to_letters()?.as_str(), "4K7J");
//! assert_eq!(marking.to_string(), "4.7 kohm, 5 %");
//! # Ok::<(), reckohm::marking::MarkingError>(())
//! ```

mod bands;
mod chip;
mod colour;
mod error;
mod fault;
mod figures;
mod letters;
mod message;
mod text;
mod ways;

use core::fmt;

pub use bands::Bands;
pub use chip::{ChipForm, ChipScheme};
pub use colour::{Colour, Edition};
pub use error::MarkingError;
pub use fault::{Fault, MarkingForm, Unwritable};
pub use text::MarkText;
pub use ways::{BandReading, BothWays, Direction, Doubt, both_ways};

use crate::number::{Decimal, MARKED_COEFFICIENT, RESISTANCE, TOLERANCE};
use crate::part::limits::Limits;

/// What a resistor is marked as. Two markings are equal if they say the same, in whatever code.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Marking {
    nominal: Decimal,
    tolerance: Option<Decimal>,
    tcr_ppm_per_kelvin: Option<u16>,
}

impl Marking {
    /// The marking of a zero-ohm link: one black band, or "0". It has no tolerance, only a largest resistance that its maker
    /// states.
    pub const ZERO_OHM_LINK: Marking = Marking { nominal: Decimal::ZERO, tolerance: None, tcr_ppm_per_kelvin: None };

    fn new(nominal: Decimal, tolerance: Option<Decimal>, tcr_ppm_per_kelvin: Option<u16>) -> Marking {
        Marking { nominal: nominal.normalised(), tolerance, tcr_ppm_per_kelvin }
    }

    /// The marking of a part of this nominal value in ohm, in (0, 1e15], tolerance as a fraction, in (0, 1), and temperature
    /// coefficient in ppm/K, 1 to 10 000; for a part that is to be marked, or one whose label says it in words.
    ///
    /// # Errors
    /// [`MarkingError::Range`] for a number outside its range, [`MarkingError::NotDecimal`] for one that is no decimal of at
    /// most 15 figures.
    ///
    /// ```
    /// use reckohm::marking::{Edition, Marking};
    /// let marking = Marking::from_value(4700.0, Some(0.05), None)?;
    /// assert_eq!(marking, Marking::from_letters("4K7J")?);
    /// assert_eq!(marking.to_bands(Edition::E2016)?.to_string(), "yellow violet red gold");
    /// assert!(Marking::from_value(1.0 / 3.0, None, None).is_err());
    /// # Ok::<(), reckohm::marking::MarkingError>(())
    /// ```
    pub fn from_value(
        nominal_ohm: f64,
        tolerance: Option<f64>,
        tcr_ppm_per_kelvin: Option<u16>,
    ) -> Result<Marking, MarkingError> {
        let decimal = |given: f64| Decimal::shortest(given).ok_or(MarkingError::NotDecimal { given });
        let nominal = decimal(RESISTANCE.check(nominal_ohm)?)?;
        let tolerance = match tolerance {
            Some(tolerance) => Some(decimal(TOLERANCE.check(tolerance)?)?),
            None => None,
        };
        if let Some(coefficient) = tcr_ppm_per_kelvin {
            MARKED_COEFFICIENT.check(f64::from(coefficient))?;
        }
        Ok(Marking::new(nominal, tolerance, tcr_ppm_per_kelvin))
    }

    /// The nominal value in ohm, 0 for the zero-ohm link.
    ///
    /// ```
    /// # use reckohm::marking::Marking;
    /// assert_eq!(Marking::from_letters("R47")?.nominal_ohm(), 0.47);
    /// # Ok::<(), reckohm::marking::MarkingError>(())
    /// ```
    pub fn nominal_ohm(&self) -> f64 {
        self.nominal.to_f64()
    }

    /// The nominal value in ohm as the decimal that is marked.
    ///
    /// ```
    /// # use reckohm::{marking::Marking, number::Decimal};
    /// assert_eq!(Marking::from_letters("4K7")?.nominal(), Decimal::new(47, 2));
    /// # Ok::<(), reckohm::marking::MarkingError>(())
    /// ```
    pub fn nominal(&self) -> Decimal {
        self.nominal
    }

    /// The tolerance as a fraction, if the marking says it.
    ///
    /// ```
    /// # use reckohm::marking::Marking;
    /// assert_eq!(Marking::from_letters("33KK")?.tolerance(), Some(0.1));
    /// assert_eq!(Marking::from_chip("333", None)?.tolerance(), None);
    /// # Ok::<(), reckohm::marking::MarkingError>(())
    /// ```
    pub fn tolerance(&self) -> Option<f64> {
        self.tolerance.map(Decimal::to_f64)
    }

    /// The temperature coefficient in ppm/K, plus or minus, if the marking says it: a limit, not a correction.
    ///
    /// ```
    /// # use reckohm::marking::{Edition, Marking};
    /// let marking = Marking::from_bands("red yellow white orange brown red", Edition::E2016)?;
    /// assert_eq!(marking.tcr_ppm_per_kelvin(), Some(50.0));
    /// # Ok::<(), reckohm::marking::MarkingError>(())
    /// ```
    pub fn tcr_ppm_per_kelvin(&self) -> Option<f64> {
        self.tcr_ppm_per_kelvin.map(f64::from)
    }

    /// Whether this is the zero-ohm link.
    ///
    /// ```
    /// # use reckohm::marking::Marking;
    /// assert!(Marking::from_chip("000", None)?.is_zero_ohm_link());
    /// # Ok::<(), reckohm::marking::MarkingError>(())
    /// ```
    pub fn is_zero_ohm_link(&self) -> bool {
        self.nominal.digits == 0
    }

    /// The limits that the marking sets, nominal·(1 ± tolerance), exact and rounded once.
    ///
    /// # Errors
    /// [`MarkingError::NoTolerance`] if the marking does not say its tolerance, [`MarkingError::ZeroOhmLink`] for the link,
    /// which has none.
    ///
    /// ```
    /// # use reckohm::marking::Marking;
    /// let limits = Marking::from_letters("2K26F")?.limits()?;
    /// assert_eq!((limits.lower_ohm(), limits.upper_ohm()), (2237.4, 2282.6));
    /// # Ok::<(), reckohm::marking::MarkingError>(())
    /// ```
    pub fn limits(&self) -> Result<Limits, MarkingError> {
        if self.is_zero_ohm_link() {
            return Err(MarkingError::ZeroOhmLink);
        }
        let tolerance = self.tolerance.ok_or(MarkingError::NoTolerance)?;
        Ok(Limits::around(self.nominal, tolerance))
    }
}

/// As a person would say it: "4.7 kohm, 5 %", "249 kohm, 1 %, 50 ppm/K", "zero-ohm link".
impl fmt::Display for Marking {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        message::marking(self, f)
    }
}
