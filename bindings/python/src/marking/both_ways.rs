//! A row of bands read in both directions.

use pyo3::prelude::*;
use pyo3::types::PyTuple;
use reckohm::marking as core;

use super::{Marking, bands_text, edition_of};
use crate::errors::Failure;
use crate::values::hash_of;

/// A row of bands read in one direction; it comes from `both_ways`.
///
/// Examples
/// --------
/// >>> from reckohm.marking import both_ways
/// >>> forward = both_ways("gold red violet yellow").forward
/// >>> forward.marking is None, forward.reasons[0]
/// (True, 'the bands say nothing in this direction')
#[pyclass(frozen, eq, module = "reckohm.marking")]
#[derive(Clone, PartialEq)]
pub struct BandReading {
    ways: BothWays,
    direction: core::Direction,
}

impl BandReading {
    fn reading(&self) -> core::BandReading {
        match self.direction {
            core::Direction::Forward => self.ways.ways.forward,
            core::Direction::Backward => self.ways.ways.backward,
        }
    }

    fn name(&self) -> &'static str {
        self.direction.name()
    }
}

#[pymethods]
impl BandReading {
    #[classattr]
    fn __match_args__() -> (&'static str, &'static str) {
        ("marking", "doubts")
    }

    /// The bands in this direction.
    #[getter]
    fn bands(&self) -> String {
        self.reading().bands().to_string()
    }

    /// What they say, None if they say nothing.
    #[getter]
    fn marking(&self) -> Option<Marking> {
        self.reading().marking().ok().map(Marking)
    }

    /// Why they say nothing, None if they say something.
    #[getter]
    fn error<'py>(&self, py: Python<'py>) -> Option<Bound<'py, PyAny>> {
        let error = self.reading().marking().err()?;
        Some(Failure::from(error).in_text(self.ways.text.as_bytes()).raise(py).into_value(py).into_bound(py).into_any())
    }

    /// What speaks against this reading, by its short names, the gravest first; empty if it is plausible.
    #[getter]
    fn doubts<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyTuple>> {
        PyTuple::new(py, self.reading().doubts().map(|doubt| doubt.name()).collect::<Vec<_>>())
    }

    /// The doubts, each as a sentence.
    #[getter]
    fn reasons<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyTuple>> {
        PyTuple::new(py, self.reading().doubts().map(|doubt| doubt.to_string()).collect::<Vec<_>>())
    }

    fn __hash__(&self, py: Python<'_>) -> PyResult<isize> {
        hash_of(py, (self.ways.__hash__(py)?, self.name()))
    }

    fn __reduce__<'py>(&self, py: Python<'py>) -> PyResult<(Bound<'py, PyAny>, Bound<'py, PyTuple>)> {
        let attribute = py.import("builtins")?.getattr("getattr")?;
        Ok((attribute, (self.ways.clone(), self.name()).into_pyobject(py)?))
    }

    fn __repr__(&self) -> String {
        format!("{}.{}", self.ways.__repr__(), self.name())
    }
}

/// A row of bands read from both ends; it comes from `both_ways`.
///
/// Examples
/// --------
/// >>> from reckohm.marking import both_ways
/// >>> both_ways("gold red violet yellow").more_plausible
/// 'backward'
#[pyclass(frozen, eq, module = "reckohm.marking")]
#[derive(Clone, PartialEq)]
pub struct BothWays {
    text: String,
    edition: core::Edition,
    ways: core::BothWays,
}

#[pymethods]
impl BothWays {
    #[classattr]
    fn __match_args__() -> (&'static str, &'static str) {
        ("forward", "backward")
    }

    /// The bands as they were given.
    #[getter]
    fn forward(&self) -> BandReading {
        BandReading { ways: self.clone(), direction: core::Direction::Forward }
    }

    /// The bands from the other end.
    #[getter]
    fn backward(&self) -> BandReading {
        BandReading { ways: self.clone(), direction: core::Direction::Backward }
    }

    /// "forward" or "backward", whichever less speaks against; None if that is the same: then the wider gap or a measurement
    /// must tell.
    #[getter]
    fn more_plausible(&self) -> Option<&'static str> {
        self.ways.more_plausible().map(core::Direction::name)
    }

    fn __hash__(&self, py: Python<'_>) -> PyResult<isize> {
        hash_of(py, (self.text.as_str(), self.edition.year()))
    }

    fn __reduce__<'py>(&self, py: Python<'py>) -> PyResult<(Bound<'py, PyAny>, Bound<'py, PyTuple>)> {
        let both_ways = py.import("reckohm._again")?.getattr("both_ways")?;
        Ok((both_ways, (self.text.as_str(), self.edition.year()).into_pyobject(py)?))
    }

    fn __repr__(&self) -> String {
        format!("both_ways('{}', edition={})", self.text, self.edition.year())
    }
}

/// Reads bands from both ends, and says what speaks against each.
///
/// Parameters
/// ----------
/// bands : str or sequence of str
///     As of `Marking.from_bands`.
/// edition : int
///     1974, 2004 or 2016.
///
/// Returns
/// -------
/// BothWays
///
/// Raises
/// ------
/// TextError
///     A word that is no colour. A colour in the wrong place is the matter of that reading alone.
///
/// Examples
/// --------
/// >>> from reckohm.marking import both_ways
/// >>> ways = both_ways("brown black black brown brown")
/// >>> print(ways.forward.marking, "or", ways.backward.marking)
/// 1 kohm, 1 % or 110 ohm, 1 %
/// >>> ways.more_plausible is None
/// True
#[pyfunction]
#[pyo3(signature = (bands, *, edition=None), text_signature = "(bands, *, edition=2016)")]
pub(super) fn both_ways(bands: &Bound<'_, PyAny>, edition: Option<&Bound<'_, PyAny>>) -> PyResult<BothWays> {
    let (text, edition) = (bands_text(bands)?, edition_of(edition)?);
    let given = core::both_ways(&text, edition).map_err(|error| Failure::from(error).in_text(&text))?;
    // Kept as words with a blank between them, so that the same bands are equal however they were written.
    let text = given.forward.bands().to_string();
    let ways = core::both_ways(&text, edition).map_err(Failure::from)?;
    Ok(BothWays { text, edition, ways })
}
