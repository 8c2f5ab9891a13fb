//! What else is known about a measurement besides its readings.

use super::error::MeasurementError;
use crate::meter::{Leads, Span};
use crate::number::{
    COEFFICIENT_LIMIT, COVERAGE_PROBABILITY, FINITE, KNOWN_COEFFICIENT, PARALLEL_PATH, PART_TEMPERATURE, REPEATABILITY,
};
use crate::uncertainty::{COVERAGE_BY_CONVENTION, Estimate};

/// The conditions of a measurement. Whatever is not set is not there: no leads, no parallel path, no correction for
/// temperature, a meter within its temperature band.
///
/// ```
/// use reckohm::measurement::Setup;
/// use reckohm::uncertainty::Estimate;
/// let setup = Setup::new()
///     .with_tcr_limit(100.0)?
///     .with_temperature(Estimate::exact(32.0)?.with_rectangular(1.0)?, 20.0)?;
/// assert_eq!(setup.coverage_probability(), 0.95);
/// # Ok::<(), reckohm::measurement::MeasurementError>(())
/// ```
#[derive(Clone, Copy, Debug)]
pub struct Setup<'a> {
    pub(super) leads: Option<Leads>,
    pub(super) path_ohm: Option<Estimate>,
    pub(super) known_tcr: Option<Estimate>,
    pub(super) tcr_limit: Option<f64>,
    pub(super) temperature: Option<(Estimate, f64)>,
    pub(super) meter_temperature_c: Option<f64>,
    pub(super) repeatability_ohm: Option<f64>,
    pub(super) zero_error_common: Option<bool>,
    pub(super) spans: &'a [Span],
    pub(super) coverage_probability: f64,
}

impl Default for Setup<'_> {
    fn default() -> Self {
        Setup::new()
    }
}

impl<'a> Setup<'a> {
    /// Nothing set; coverage probability 0.95.
    ///
    /// ```
    /// let setup = reckohm::measurement::Setup::new();
    /// assert!(setup.leads().is_none() && setup.spans().is_empty());
    /// ```
    pub const fn new() -> Setup<'a> {
        Setup {
            leads: None,
            path_ohm: None,
            known_tcr: None,
            tcr_limit: None,
            temperature: None,
            meter_temperature_c: None,
            repeatability_ohm: None,
            zero_error_common: None,
            spans: &[],
            coverage_probability: COVERAGE_BY_CONVENTION,
        }
    }

    /// Takes the resistance of the leads off.
    ///
    /// ```
    /// use reckohm::measurement::Setup;
    /// use reckohm::meter::Leads;
    /// let leads = Leads::from_wire(1.0, 0.75, 5)?;
    /// let setup = Setup::new().with_leads(leads);
    /// assert_eq!(setup.leads(), Some(&leads));
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub const fn with_leads(mut self, leads: Leads) -> Setup<'a> {
        self.leads = Some(leads);
        self
    }

    /// Takes a path in parallel with the part off, given with its uncertainty in ohm.
    ///
    /// ```
    /// use reckohm::measurement::Setup;
    /// use reckohm::uncertainty::Estimate;
    /// // 1 Mohm of other parts on the board, known to 1 %.
    /// assert!(Setup::new().with_parallel_path(Estimate::exact(1e6)?.with_rectangular(1e4)?).is_ok());
    /// assert!(Setup::new().with_parallel_path(Estimate::exact(0.0)?).is_err());
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    ///
    /// # Errors
    /// A range error for a path that is not above 0.
    pub fn with_parallel_path(mut self, path_ohm: Estimate) -> Result<Setup<'a>, MeasurementError> {
        PARALLEL_PATH.check(path_ohm.value())?;
        self.path_ohm = Some(path_ohm);
        Ok(self)
    }

    /// A temperature coefficient that is known, in parts per million a kelvin with its uncertainty: the result is
    /// corrected to the reference temperature. Needs [`Setup::with_temperature`].
    ///
    /// ```
    /// use reckohm::measurement::Setup;
    /// use reckohm::uncertainty::Estimate;
    /// let platinum = Estimate::exact(3850.0)?.with_normal(5.0)?;
    /// assert!(Setup::new().with_known_tcr(platinum).is_ok());
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    ///
    /// # Errors
    /// A range error beyond ±1e6 ppm/K.
    pub fn with_known_tcr(mut self, ppm_per_kelvin: Estimate) -> Result<Setup<'a>, MeasurementError> {
        KNOWN_COEFFICIENT.check(ppm_per_kelvin.value())?;
        self.known_tcr = Some(ppm_per_kelvin);
        Ok(self)
    }

    /// A marked temperature coefficient, in parts per million a kelvin: a limit within which the part's own lies, so it
    /// widens the result and corrects nothing. Needs [`Setup::with_temperature`].
    ///
    /// ```
    /// use reckohm::measurement::Setup;
    /// assert!(Setup::new().with_tcr_limit(100.0).is_ok());
    /// assert!(Setup::new().with_tcr_limit(-100.0).is_err());
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    ///
    /// # Errors
    /// A range error for a negative limit or one beyond 1e6 ppm/K.
    pub fn with_tcr_limit(mut self, ppm_per_kelvin: f64) -> Result<Setup<'a>, MeasurementError> {
        self.tcr_limit = Some(COEFFICIENT_LIMIT.check(ppm_per_kelvin)?);
        Ok(self)
    }

    /// The temperature of the part with its uncertainty, and the reference temperature of its nominal value, both in
    /// degrees Celsius.
    ///
    /// ```
    /// use reckohm::measurement::Setup;
    /// use reckohm::uncertainty::Estimate;
    /// let warm = Estimate::exact(32.0)?.with_rectangular(1.0)?;
    /// assert!(Setup::new().with_temperature(warm, 20.0).is_ok());
    /// assert!(Setup::new().with_temperature(warm, -300.0).is_err());
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    ///
    /// # Errors
    /// A range error for a temperature below absolute zero or above 3500 °C.
    pub fn with_temperature(
        mut self,
        temperature_c: Estimate,
        reference_temperature_c: f64,
    ) -> Result<Setup<'a>, MeasurementError> {
        PART_TEMPERATURE.check(temperature_c.value())?;
        self.temperature = Some((temperature_c, PART_TEMPERATURE.check(reference_temperature_c)?));
        Ok(self)
    }

    /// The temperature of the meter in degrees Celsius, where it may be outside the band of its clause.
    ///
    /// ```
    /// use reckohm::measurement::Setup;
    /// assert!(Setup::new().with_meter_temperature(35.0).is_ok());
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    ///
    /// # Errors
    /// A range error if it is not finite.
    pub fn with_meter_temperature(mut self, meter_temperature_c: f64) -> Result<Setup<'a>, MeasurementError> {
        self.meter_temperature_c = Some(FINITE.check(meter_temperature_c)?);
        Ok(self)
    }

    /// The standard deviation of single readings, known from before in ohm: it takes the place of the scatter of the
    /// readings themselves.
    ///
    /// ```
    /// use reckohm::measurement::Setup;
    /// assert!(Setup::new().with_repeatability(0.3).is_ok());
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    ///
    /// # Errors
    /// A range error for a negative or infinite one.
    pub fn with_repeatability(mut self, repeatability_ohm: f64) -> Result<Setup<'a>, MeasurementError> {
        self.repeatability_ohm = Some(REPEATABILITY.check(repeatability_ohm)?);
        Ok(self)
    }

    /// Whether the fixed part of the meter's error (counts and part of span) is the same in the reading of the part and
    /// in that of the leads on the same span. If nothing is said the wider of the two is taken.
    ///
    /// ```
    /// use reckohm::measurement::Setup;
    /// let setup = Setup::new().with_zero_error_common(true);
    /// assert_eq!(setup.zero_error_common(), Some(true));
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub const fn with_zero_error_common(mut self, common: bool) -> Setup<'a> {
        self.zero_error_common = Some(common);
        self
    }

    /// The spans of the meter, so that the advice can say what another span would bring.
    ///
    /// ```
    /// use reckohm::measurement::Setup;
    /// use reckohm::meter::Meter;
    /// let meter = Meter::example_hand_held();
    /// assert_eq!(Setup::new().with_spans(meter.spans()).spans().len(), meter.spans().len());
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub const fn with_spans(mut self, spans: &'a [Span]) -> Setup<'a> {
        self.spans = spans;
        self
    }

    /// The coverage probability of the budget's expanded uncertainty; 0.95 if not set.
    ///
    /// ```
    /// use reckohm::measurement::Setup;
    /// assert_eq!(Setup::new().with_coverage_probability(0.99)?.coverage_probability(), 0.99);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    ///
    /// # Errors
    /// A range error outside 0 to 1.
    pub fn with_coverage_probability(mut self, coverage_probability: f64) -> Result<Setup<'a>, MeasurementError> {
        self.coverage_probability = COVERAGE_PROBABILITY.check(coverage_probability)?;
        Ok(self)
    }

    /// The leads, if they are taken off.
    pub fn leads(&self) -> Option<&Leads> {
        self.leads.as_ref()
    }

    /// Whether the fixed part of the meter's error is common to both readings, if it was said.
    pub fn zero_error_common(&self) -> Option<bool> {
        self.zero_error_common
    }

    /// The spans of the meter, none if not set.
    pub fn spans(&self) -> &'a [Span] {
        self.spans
    }

    /// The coverage probability in use.
    pub fn coverage_probability(&self) -> f64 {
        self.coverage_probability
    }
}
