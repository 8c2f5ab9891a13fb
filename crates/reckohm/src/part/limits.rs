//! Limits of a resistance: the two ends that a conforming part lies between, or one of them alone.

use thiserror::Error;

use crate::number::{Decimal, Detail, Kind, OutOfRange, RESISTANCE, Readable, Real, TOLERANCE};

/// The tolerance limits of a resistance, both included (JCGM 106:2012, clause 3.3).
///
/// A limit that is not set is an infinite end. A value that exists is legal: the lower end is at or below the upper one,
/// and at least one of them is finite. Limits may be negative, since the reading of a short may be.
///
/// ```
/// use reckohm::verdict::Limits;
/// let limits = Limits::from_tolerance(4700.0, 0.05)?;
/// assert_eq!((limits.lower_ohm(), limits.upper_ohm()), (4465.0, 4935.0));
/// assert!(limits.contains(4935.0));
/// assert!(!limits.contains(4935.1));
/// # Ok::<(), reckohm::verdict::LimitsError>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Limits<R = f64> {
    lower_ohm: R,
    upper_ohm: R,
}

impl<R: Real> Limits<R> {
    /// Limits with these two ends in ohm; minus infinity below or infinity above leaves that end open.
    ///
    /// # Errors
    /// [`LimitsError`] for NaN, for an infinity at the wrong end, for a lower end above the upper one, and if both ends are
    /// left open.
    ///
    /// ```
    /// use reckohm::verdict::Limits;
    /// assert!(Limits::new(990.0, 1010.0)?.contains(990.0));
    /// assert!(Limits::new(1010.0, 990.0).is_err());
    /// # Ok::<(), reckohm::verdict::LimitsError>(())
    /// ```
    pub fn new(lower_ohm: R, upper_ohm: R) -> Result<Limits<R>, LimitsError> {
        let (none_below, none_above) = (-R::INFINITE, R::INFINITE);
        if !lower_ohm.finite() && lower_ohm != none_below {
            return Err(LimitsError::NoLowerLimit { given: lower_ohm.to_f64() });
        }
        if !upper_ohm.finite() && upper_ohm != none_above {
            return Err(LimitsError::NoUpperLimit { given: upper_ohm.to_f64() });
        }
        if lower_ohm == none_below && upper_ohm == none_above {
            return Err(LimitsError::BothOpen);
        }
        if lower_ohm > upper_ohm {
            return Err(LimitsError::Crossed { lower_ohm: lower_ohm.to_f64(), upper_ohm: upper_ohm.to_f64() });
        }
        Ok(Limits { lower_ohm, upper_ohm })
    }

    /// An upper limit alone, in ohm: a contact, a fuse, a zero-ohm link.
    ///
    /// # Errors
    /// [`LimitsError`] for NaN or an infinity.
    ///
    /// ```
    /// use reckohm::verdict::Limits;
    /// let link = Limits::at_most(0.05)?;
    /// assert!(link.contains(-0.01) && !link.contains(0.06));
    /// # Ok::<(), reckohm::verdict::LimitsError>(())
    /// ```
    pub fn at_most(upper_ohm: R) -> Result<Limits<R>, LimitsError> {
        Limits::new(-R::INFINITE, upper_ohm)
    }

    /// A lower limit alone, in ohm: the dark resistance of a photoresistor.
    ///
    /// # Errors
    /// [`LimitsError`] for NaN or an infinity.
    ///
    /// ```
    /// use reckohm::verdict::Limits;
    /// assert!(Limits::at_least(1.0e6)?.contains(20.0e6));
    /// # Ok::<(), reckohm::verdict::LimitsError>(())
    /// ```
    pub fn at_least(lower_ohm: R) -> Result<Limits<R>, LimitsError> {
        Limits::new(lower_ohm, R::INFINITE)
    }

    /// Limits around a nominal value in ohm, in (0, 1e15], from its tolerance as a fraction, in (0, 1).
    ///
    /// Both numbers are taken as the decimals that they were written as, the limits are computed exactly and rounded once.
    /// Only where a number is no decimal of 15 figures (6 for an `f32`), or the product has more than 18, is it a product of
    /// floats.
    ///
    /// # Errors
    /// [`LimitsError`] for a number outside its range.
    ///
    /// ```
    /// use reckohm::verdict::Limits;
    /// let limits = Limits::from_tolerance(2260.0, 0.01)?;
    /// assert_eq!(limits, Limits::new(2237.4, 2282.6)?);
    /// # Ok::<(), reckohm::verdict::LimitsError>(())
    /// ```
    pub fn from_tolerance(nominal_ohm: R, tolerance: R) -> Result<Limits<R>, LimitsError> {
        let nominal_ohm = RESISTANCE.check(nominal_ohm)?;
        let tolerance = TOLERANCE.check(tolerance)?;
        Ok(Limits::around_value(nominal_ohm, tolerance))
    }

    /// Limits around a nominal value that is legal already.
    pub(crate) fn around_value(nominal_ohm: R, tolerance: R) -> Limits<R> {
        match Decimal::shortest(nominal_ohm).zip(Decimal::shortest(tolerance)) {
            Some((nominal, tolerance)) => Limits::around(nominal, tolerance),
            None => Limits::around_floats(nominal_ohm, tolerance),
        }
    }

    /// Limits around a marked value, which is legal already.
    pub(super) fn around(nominal: Decimal, tolerance: Decimal) -> Limits<R> {
        Limits::from_decimal(nominal, tolerance)
            .unwrap_or_else(|| Limits::around_floats(nominal.to_real(), tolerance.to_real()))
    }

    fn around_floats(nominal_ohm: R, tolerance: R) -> Limits<R> {
        let half_width_ohm = nominal_ohm * tolerance;
        Limits { lower_ohm: nominal_ohm - half_width_ohm, upper_ohm: nominal_ohm + half_width_ohm }
    }

    /// The exact nominal·(1 ± tolerance), each rounded once; `None` where an exact product has too many digits.
    fn from_decimal(nominal: Decimal, tolerance: Decimal) -> Option<Limits<R>> {
        let less = Decimal::new(tolerance.digits.wrapping_neg(), tolerance.exponent);
        let lower = nominal.checked_mul(Decimal::ONE.checked_add(less)?)?;
        let upper = nominal.checked_mul(Decimal::ONE.checked_add(tolerance)?)?;
        Some(Limits { lower_ohm: lower.to_real(), upper_ohm: upper.to_real() })
    }

    /// The lower end in ohm, minus infinity if it is open.
    pub const fn lower_ohm(&self) -> R {
        self.lower_ohm
    }

    /// The upper end in ohm, infinity if it is open.
    pub const fn upper_ohm(&self) -> R {
        self.upper_ohm
    }

    /// Whether this resistance in ohm is within the limits, both ends included; NaN never is.
    ///
    /// ```
    /// use reckohm::verdict::Limits;
    /// let limits = Limits::from_tolerance(4700.0, 0.05)?;
    /// assert!(limits.contains(4935.0) && !limits.contains(4935.0_f64.next_up()));
    /// # Ok::<(), reckohm::verdict::LimitsError>(())
    /// ```
    pub fn contains(&self, ohm: R) -> bool {
        self.lower_ohm <= ohm && ohm <= self.upper_ohm
    }
}

// Arguments of a detail, in the block of this folder.
const LOWER: u16 = 191;
const UPPER: u16 = 192;
const BOTH_OPEN: u16 = 193;
const CROSSED: u16 = 194;

/// What can be wrong with a pair of limits.
#[derive(Clone, Copy, Debug, PartialEq, Error)]
#[non_exhaustive]
pub enum LimitsError {
    /// A nominal value or a tolerance outside its range.
    #[error("limits from a tolerance: {0}")]
    Range(#[from] OutOfRange),
    /// NaN or plus infinity as the lower end.
    #[error(
        "limits: {} given as the lower limit in ohm, a finite number allowed, or minus infinity for none; a part that \
         must be at least so large has an infinite upper limit",
        Readable(*given)
    )]
    NoLowerLimit {
        /// What was given.
        given: f64,
    },
    /// NaN or minus infinity as the upper end.
    #[error(
        "limits: {} given as the upper limit in ohm, a finite number allowed, or infinity for none; a part that must \
         be at most so large has a lower limit of minus infinity",
        Readable(*given)
    )]
    NoUpperLimit {
        /// What was given.
        given: f64,
    },
    /// Both ends left open, which every part would meet.
    #[error("limits: both ends open, at least one finite limit needed; with none there is nothing to judge")]
    BothOpen,
    /// The lower end above the upper one.
    #[error(
        "limits: lower limit {} ohm above upper limit {} ohm, the lower one first is needed; look for two numbers \
         changed over, or a missing kilo",
        Readable(*lower_ohm),
        Readable(*upper_ohm)
    )]
    Crossed {
        /// The lower end given.
        lower_ohm: f64,
        /// The upper end given.
        upper_ohm: f64,
    },
}

impl LimitsError {
    /// What happened, in one word.
    pub fn kind(&self) -> Kind {
        match self {
            LimitsError::Range(range) => range.kind(),
            LimitsError::NoLowerLimit { .. } | LimitsError::NoUpperLimit { .. } => Kind::NotFinite,
            LimitsError::BothOpen => Kind::Empty,
            LimitsError::Crossed { .. } => Kind::Contradiction,
        }
    }

    /// The same as plain numbers: `argument` is 191 for the lower limit and 192 for the upper one where one of them is at
    /// fault, 193 and 194 for both; `lower` and `upper` are the two limits that crossed.
    pub fn detail(&self) -> Detail {
        let detail = Detail::new(self.kind());
        match *self {
            LimitsError::Range(range) => range.detail(),
            LimitsError::NoLowerLimit { given } => Detail { argument: LOWER, given, ..detail },
            LimitsError::NoUpperLimit { given } => Detail { argument: UPPER, given, ..detail },
            LimitsError::BothOpen => Detail { argument: BOTH_OPEN, ..detail },
            LimitsError::Crossed { lower_ohm, upper_ohm } => {
                Detail { argument: CROSSED, lower: lower_ohm, upper: upper_ohm, ..detail }
            }
        }
    }

    /// Back from plain numbers, if they are of such an error.
    pub fn from_detail(detail: &Detail) -> Option<LimitsError> {
        let given = detail.given;
        match (detail.kind, detail.argument) {
            (Kind::NotFinite, LOWER) => Some(LimitsError::NoLowerLimit { given }),
            (Kind::NotFinite, UPPER) => Some(LimitsError::NoUpperLimit { given }),
            (Kind::Empty, BOTH_OPEN) => Some(LimitsError::BothOpen),
            (Kind::Contradiction, CROSSED) => {
                Some(LimitsError::Crossed { lower_ohm: detail.lower, upper_ohm: detail.upper })
            }
            _ => OutOfRange::from_detail(detail).map(LimitsError::Range),
        }
    }
}
