//! `reckohm.marking`.

use pyo3::prelude::*;
use pyo3::types::{PyBytes, PyString, PyTuple};
use reckohm::marking as core;

mod both_ways;

use both_ways::{BandReading, BothWays};

use crate::errors::Failure;
use crate::values::{Number, again, choice, hash_of, shown, text_or_bytes, wrong_type};
use crate::verdict::Limits;

const EDITIONS: [(&str, core::Edition); 3] =
    [("1974", core::Edition::E1974), ("2004", core::Edition::E2004), ("2016", core::Edition::E2016)];
const FORMS: [(&str, core::ChipForm); 3] = [
    ("three characters", core::ChipForm::ThreeCharacters),
    ("four characters", core::ChipForm::FourCharacters),
    ("code and letter", core::ChipForm::CodeAndLetter),
];

/// An edition by its year, 2016 where none is named.
fn edition_of(year: Option<&Bound<'_, PyAny>>) -> PyResult<core::Edition> {
    match year {
        None => Ok(core::Edition::E2016),
        Some(year) => match year.str() {
            Ok(text) => choice("edition", &text.into_any(), &EDITIONS),
            Err(_) => Err(wrong_type(year, "a year of an edition")?),
        },
    }
}

fn scheme_of(name: &Bound<'_, PyAny>) -> PyResult<core::ChipScheme> {
    choice("scheme", name, &core::ChipScheme::ALL.map(|scheme| (scheme.name(), scheme)))
}

/// The text of bands: a text as it is, a sequence of words or codes joined by blanks.
fn bands_text(bands: &Bound<'_, PyAny>) -> PyResult<Vec<u8>> {
    if bands.is_instance_of::<PyString>() || bands.is_instance_of::<PyBytes>() {
        return text_or_bytes(bands);
    }
    let refused = |_| wrong_type(bands, "a text or a sequence of colours").unwrap_or_else(|error| error);
    let words: PyResult<Vec<Vec<u8>>> = bands.try_iter().map_err(refused)?.map(|word| text_or_bytes(&word?)).collect();
    Ok(words?.join(&b' '))
}

/// What a resistor is marked as. Two markings are equal if they say the same, in whatever code.
///
/// A marking says what a part was sold as, not what it is; a colour is easily misread (see `both_ways`). It is made by
/// `from_bands`, `from_letters`, `from_chip` or `from_value`.
///
/// Examples
/// --------
/// >>> from reckohm.marking import Marking
/// >>> marking = Marking.from_bands("yellow violet red gold")
/// >>> marking.nominal_ohm, marking.tolerance, marking.limits
/// (4700.0, 0.05, Limits(4465.0, 4935.0))
/// >>> print(marking)
/// 4.7 kohm, 5 %
/// >>> marking.to_letters()
/// '4K7J'
#[pyclass(frozen, eq, from_py_object, module = "reckohm.marking")]
#[derive(Clone, Copy, PartialEq)]
pub struct Marking(pub core::Marking);

impl Marking {
    fn parts(&self) -> (f64, Option<f64>, Option<f64>) {
        (self.0.nominal_ohm(), self.0.tolerance(), self.0.tcr_ppm_per_kelvin())
    }
}

// A Python object is never taken by value.
#[allow(clippy::wrong_self_convention)]
#[pymethods]
impl Marking {
    #[classattr]
    fn __match_args__() -> (&'static str, &'static str) {
        ("nominal_ohm", "tolerance")
    }

    /// What colour bands say (IEC 60062): three to six, or the single black band of a zero-ohm link.
    ///
    /// Parameters
    /// ----------
    /// bands : str or sequence of str
    ///     Colours in reading order, as words in any case or two-letter codes (IEC 60757).
    /// edition : int
    ///     1974, 2004 or 2016: editions of IEC 60062 differ in a few colours.
    ///
    /// Raises
    /// ------
    /// TextError
    ///     A word that is no colour, or a colour that cannot stand in its place; ``index`` is the byte offset.
    /// CountError
    ///     A count of bands that has no meaning, or none.
    ///
    /// Examples
    /// --------
    /// >>> from reckohm.marking import Marking
    /// >>> print(Marking.from_bands(["BN", "GN", "RD", "GD"]))
    /// 1.5 kohm, 5 %
    #[staticmethod]
    #[pyo3(signature = (bands, *, edition=None), text_signature = "(bands, *, edition=2016)")]
    fn from_bands(bands: &Bound<'_, PyAny>, edition: Option<&Bound<'_, PyAny>>) -> PyResult<Marking> {
        let (text, edition) = (bands_text(bands)?, edition_of(edition)?);
        Ok(Marking(core::Marking::from_bands(&text, edition).map_err(|error| Failure::from(error).in_text(&text))?))
    }

    /// What a letter-and-digit code says (IEC 60062).
    ///
    /// Raises
    /// ------
    /// TextError
    ///     Another form, or a letter of which no source could be read; ``index`` is the byte offset.
    ///
    /// Examples
    /// --------
    /// >>> from reckohm.marking import Marking
    /// >>> Marking.from_letters("4K7J").nominal_ohm
    /// 4700.0
    #[staticmethod]
    fn from_letters(text: &Bound<'_, PyAny>) -> PyResult<Marking> {
        let text = text_or_bytes(text)?;
        Ok(Marking(core::Marking::from_letters(&text).map_err(|error| Failure::from(error).in_text(&text))?))
    }

    /// What a code on a chip resistor says.
    ///
    /// Parameters
    /// ----------
    /// text : str
    ///     Three or four characters, as "472", "4701", "01C" or "R047".
    /// scheme : str, optional
    ///     Which list the multiplier letters R, S, H and G are meant to be of, on which sources disagree: "military",
    ///     "common list" or "large values". Without it such a code is refused.
    ///
    /// Raises
    /// ------
    /// TextError
    ///     Another form, or a letter on which sources disagree; ``index`` is the byte offset.
    ///
    /// Examples
    /// --------
    /// >>> from reckohm.marking import Marking
    /// >>> print(Marking.from_chip("68C"))
    /// 49.9 kohm, 1 %
    /// >>> Marking.from_chip("09R", scheme="military").nominal_ohm
    /// 12.1
    #[staticmethod]
    #[pyo3(signature = (text, *, scheme=None))]
    fn from_chip(text: &Bound<'_, PyAny>, scheme: Option<&Bound<'_, PyAny>>) -> PyResult<Marking> {
        let text = text_or_bytes(text)?;
        let scheme = scheme.map(scheme_of).transpose()?;
        Ok(Marking(core::Marking::from_chip(&text, scheme).map_err(|error| Failure::from(error).in_text(&text))?))
    }

    /// The marking of a part that is to be marked, or whose label says it in words.
    ///
    /// Parameters
    /// ----------
    /// nominal_ohm : float
    ///     Nominal value in ohm, a decimal of at most 15 figures.
    /// tolerance : float, optional
    ///     As a fraction.
    /// tcr_ppm_per_kelvin : int, optional
    ///     Temperature coefficient, plus or minus.
    ///
    /// Examples
    /// --------
    /// >>> from reckohm.marking import Marking
    /// >>> Marking.from_value(4700, 0.05) == Marking.from_letters("4K7J")
    /// True
    #[staticmethod]
    #[pyo3(signature = (nominal_ohm, tolerance=None, tcr_ppm_per_kelvin=None))]
    fn from_value(
        nominal_ohm: Number,
        tolerance: Option<Number>,
        tcr_ppm_per_kelvin: Option<Number>,
    ) -> Result<Marking, Failure> {
        let coefficient = match tcr_ppm_per_kelvin {
            Some(Number(given)) => {
                let checked = reckohm::number::MARKED_COEFFICIENT.check(given).map_err(core::MarkingError::Range)?;
                if checked.fract() != 0.0 {
                    return Err(core::MarkingError::NotDecimal { given }.into());
                }
                Some(checked as u16)
            }
            None => None,
        };
        let tolerance = tolerance.map(|tolerance| tolerance.0);
        Ok(Marking(core::Marking::from_value(nominal_ohm.0, tolerance, coefficient)?))
    }

    /// The nominal value in ohm, 0 for the zero-ohm link.
    #[getter]
    fn nominal_ohm(&self) -> f64 {
        self.0.nominal_ohm()
    }

    /// The tolerance as a fraction, None where the marking does not say it.
    #[getter]
    fn tolerance(&self) -> Option<f64> {
        self.0.tolerance()
    }

    /// The temperature coefficient in ppm/K, plus or minus, None where the marking does not say it: a limit, not a
    /// correction.
    #[getter]
    fn tcr_ppm_per_kelvin(&self) -> Option<f64> {
        self.0.tcr_ppm_per_kelvin()
    }

    /// Whether this is the zero-ohm link.
    #[getter]
    fn is_zero_ohm_link(&self) -> bool {
        self.0.is_zero_ohm_link()
    }

    /// The limits that the marking sets, computed in decimals and rounded once; MissingError without a tolerance.
    #[getter]
    fn limits(&self) -> Result<Limits, Failure> {
        Ok(Limits(self.0.limits()?))
    }

    /// The colour bands that say this.
    ///
    /// Parameters
    /// ----------
    /// edition : int
    ///     1974, 2004 or 2016.
    ///
    /// Returns
    /// -------
    /// str
    ///     Colours in reading order, with a blank between them.
    ///
    /// Raises
    /// ------
    /// TextError
    ///     A value that bands cannot say.
    /// MissingError
    ///     No tolerance.
    ///
    /// Examples
    /// --------
    /// >>> from reckohm.marking import Marking
    /// >>> Marking.from_letters("1K0F").to_bands()
    /// 'brown black black brown brown'
    #[pyo3(signature = (*, edition=None), text_signature = "($self, *, edition=2016)")]
    fn to_bands(&self, edition: Option<&Bound<'_, PyAny>>) -> PyResult<String> {
        Ok(self.0.to_bands(edition_of(edition)?).map_err(Failure::from)?.to_string())
    }

    /// The letter-and-digit code that says this.
    ///
    /// Raises
    /// ------
    /// TextError
    ///     A value that the code cannot say.
    ///
    /// Examples
    /// --------
    /// >>> from reckohm.marking import Marking
    /// >>> Marking.from_chip("R047").to_letters()
    /// 'R047'
    fn to_letters(&self) -> Result<String, Failure> {
        Ok(self.0.to_letters()?.as_str().to_owned())
    }

    /// The chip code that says this value, without the tolerance, which most forms do not hold.
    ///
    /// Parameters
    /// ----------
    /// form : str, optional
    ///     "three characters", "four characters" or "code and letter"; the usual one for the tolerance where none is named.
    ///
    /// Raises
    /// ------
    /// TextError
    ///     A value that the form cannot say.
    ///
    /// Examples
    /// --------
    /// >>> from reckohm.marking import Marking
    /// >>> marking = Marking.from_letters("49K9F")
    /// >>> marking.to_chip(), marking.to_chip(form="code and letter")
    /// ('4992', '68C')
    #[pyo3(signature = (*, form=None))]
    fn to_chip(&self, form: Option<&Bound<'_, PyAny>>) -> PyResult<String> {
        let text = match form {
            None => self.0.to_chip(),
            Some(form) => self.0.to_chip_as(choice("form", form, &FORMS)?),
        };
        Ok(text.map_err(Failure::from)?.as_str().to_owned())
    }

    fn __hash__(&self, py: Python<'_>) -> PyResult<isize> {
        hash_of(py, self.parts())
    }

    fn __reduce__<'py>(&self, py: Python<'py>) -> PyResult<(Bound<'py, PyAny>, Bound<'py, PyTuple>)> {
        if self.0.is_zero_ohm_link() {
            return again(py, (py.get_type::<Marking>(), "from_chip", "0"));
        }
        let (nominal_ohm, tolerance, coefficient) = self.parts();
        again(py, (py.get_type::<Marking>(), "from_value", nominal_ohm, tolerance, coefficient))
    }

    fn __repr__(&self) -> String {
        if self.0.is_zero_ohm_link() {
            return "Marking.from_chip('0')".to_owned();
        }
        let (nominal_ohm, tolerance, coefficient) = self.parts();
        let mut text = format!("Marking.from_value({}", shown(nominal_ohm));
        match (tolerance, coefficient) {
            (None, None) => {}
            (Some(tolerance), None) => text += &format!(", {}", shown(tolerance)),
            (tolerance, Some(coefficient)) => {
                let tolerance = tolerance.map_or("None".to_owned(), shown);
                text += &format!(", {tolerance}, {coefficient}");
            }
        }
        text + ")"
    }

    fn __str__(&self) -> String {
        self.0.to_string()
    }
}

/// What the module holds.
pub fn fill(_compiled: &Bound<'_, PyModule>, module: &Bound<'_, PyModule>) -> PyResult<()> {
    module.add_class::<Marking>()?;
    module.add_class::<BandReading>()?;
    module.add_class::<BothWays>()?;
    module.add_function(wrap_pyfunction!(both_ways::both_ways, module)?)
}
