//! From a failure of the core to an exception: the one place where exceptions are raised from Rust.

use core::fmt::Display;

use pyo3::prelude::*;
use pyo3::sync::PyOnceLock;
use reckohm::number::{Detail, OutOfRange};
use reckohm::preferred::PreferredError;
use reckohm::uncertainty::EstimateError;
use reckohm::verdict::{LimitsError, VerdictError};

/// A failure of the core: its numbers and its text.
#[derive(Clone, Debug)]
pub struct Failure {
    detail: Detail,
    message: String,
    text: Option<String>,
}

impl Failure {
    fn of(detail: Detail, error: impl Display) -> Failure {
        Failure { detail, message: error.to_string(), text: None }
    }

    /// The same, of a text that was given.
    pub fn in_text(self, text: &str) -> Failure {
        Failure { text: Some(text.to_owned()), ..self }
    }

    /// The exception, of the class that `reckohm.errors` holds for its status.
    pub fn raise(&self, py: Python<'_>) -> PyErr {
        self.exception(py).map_or_else(|failed| failed, PyErr::from_value)
    }

    fn exception<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyAny>> {
        static FROM_CORE: PyOnceLock<Py<PyAny>> = PyOnceLock::new();
        let from_core = FROM_CORE.import(py, "reckohm.errors", "_from_core")?;
        let Detail { kind, row, argument, given, lower, upper, index, .. } = self.detail;
        from_core.call1((
            kind.number(),
            kind.name(),
            self.message.as_str(),
            row,
            argument,
            given,
            lower,
            upper,
            index,
            self.text.as_deref(),
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

failures!(EstimateError, VerdictError, PreferredError, LimitsError, OutOfRange);
