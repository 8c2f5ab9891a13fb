//! From a failure of the core to an exception: the one place where exceptions are raised from Rust.

use core::fmt::Display;

use pyo3::prelude::*;
use pyo3::sync::PyOnceLock;
use pyo3::types::{PyBytes, PyString};
use reckohm::distribution::DistributionError;
use reckohm::marking::MarkingError;
use reckohm::measurement::MeasurementError;
use reckohm::meter::MeterError;
use reckohm::number::{Detail, Kind, OutOfRange};
use reckohm::preferred::PreferredError;
use reckohm::sensor::SensorError;
use reckohm::uncertainty::EstimateError;
use reckohm::verdict::{LimitsError, VerdictError};

/// A failure of the core: its numbers and its text.
#[derive(Clone, Debug)]
pub struct Failure {
    detail: Detail,
    message: String,
    text: Option<Vec<u8>>,
    /// Whether the index of the detail says which item of a list it is.
    of_list: bool,
}

impl Failure {
    fn of(detail: Detail, error: impl Display) -> Failure {
        Failure { detail, message: error.to_string(), text: None, of_list: false }
    }

    /// The same, of a text that was given.
    pub fn in_text(self, text: &[u8]) -> Failure {
        Failure { text: Some(text.to_vec()), ..self }
    }

    /// The same, of an item of a list: the index says which.
    pub fn at_index(self) -> Failure {
        Failure { of_list: true, ..self }
    }

    /// The exception, of the class that `reckohm.errors` holds for its status.
    pub fn raise(&self, py: Python<'_>) -> PyErr {
        self.exception(py).map_or_else(|failed| failed, PyErr::from_value)
    }

    /// The exception of an element of a sequence, with its index and how many failed.
    pub fn raise_in_array(&self, py: Python<'_>, index: usize, failed: usize, size: usize) -> PyErr {
        let made = self.exception(py).and_then(|one| one.call_method1("_in_array", (index, failed, size)));
        made.map_or_else(|failed| failed, PyErr::from_value)
    }

    fn exception<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyAny>> {
        static FROM_CORE: PyOnceLock<Py<PyAny>> = PyOnceLock::new();
        let from_core = FROM_CORE.import(py, "reckohm.errors", "_from_core")?;
        let Detail { kind, row, given, lower, upper, index, .. } = self.detail;
        let text = match &self.text {
            None => py.None().into_bound(py),
            Some(bytes) => match core::str::from_utf8(bytes) {
                Ok(text) => PyString::new(py, text).into_any(),
                Err(_) => PyBytes::new(py, bytes).into_any(),
            },
        };
        from_core.call1((
            kind.number(),
            kind.name(),
            self.message.as_str(),
            row,
            given,
            lower,
            upper,
            index,
            text,
            self.of_list,
        ))
    }
}

impl From<Failure> for PyErr {
    fn from(failure: Failure) -> PyErr {
        Python::attach(|py| failure.raise(py))
    }
}

macro_rules! failures {
    ($($error:ty),+ $(,)?) => {
        $(impl From<$error> for Failure {
            fn from(error: $error) -> Failure { Failure::of(error.detail(), error) }
        })+
    };
}

failures!(
    DistributionError,
    MeasurementError,
    MarkingError,
    MeterError,
    EstimateError,
    VerdictError,
    PreferredError,
    LimitsError,
    SensorError,
    OutOfRange
);

/// Two arguments that contradict one another in a way that only objects can.
pub fn contradiction(py: Python<'_>, message: &str) -> PyErr {
    let kind = Kind::Contradiction;
    let class = py.import("reckohm.errors").and_then(|errors| errors.getattr("ContradictionError"));
    let made = class.and_then(|class| class.call1((message, kind.number(), kind.name())));
    made.map_or_else(|failed| failed, PyErr::from_value)
}
