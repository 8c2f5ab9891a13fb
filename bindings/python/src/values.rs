//! Numbers on their way in and in reprs, shared by all classes.

use pyo3::prelude::*;
use pyo3::sync::PyOnceLock;
use pyo3::types::{PyBool, PyBytes, PyFloat, PyString, PyTuple};

/// A plain number argument: float, int, a NumPy scalar; no bool and no text.
#[derive(Clone, Copy, PartialEq)]
pub struct Number(pub f64);

impl<'a, 'py> FromPyObject<'a, 'py> for Number {
    type Error = PyErr;

    fn extract(value: Borrowed<'a, 'py, PyAny>) -> PyResult<Number> {
        if let Ok(float) = value.cast::<PyFloat>() {
            return Ok(Number(float.value()));
        }
        // An array of one element would pass for a number: it is none here.
        let scalar = match value.getattr_opt("shape")? {
            Some(shape) => shape.len()? == 0,
            None => true,
        };
        let truth = value.is_instance_of::<PyBool>() || &*value.get_type().name()?.to_cow()? == "bool";
        if let (true, false, Ok(number)) = (scalar, truth, value.extract::<f64>()) {
            return Ok(Number(number));
        }
        Err(wrong_type(&value.to_owned(), "a float or an int")?)
    }
}

/// A tuple of two numbers.
#[derive(Clone, Copy)]
pub struct Pair(pub f64, pub f64);

impl<'a, 'py> FromPyObject<'a, 'py> for Pair {
    type Error = PyErr;

    fn extract(value: Borrowed<'a, 'py, PyAny>) -> PyResult<Pair> {
        match value.cast::<PyTuple>().ok().filter(|tuple| tuple.len() == 2) {
            Some(tuple) => {
                let numbers = tuple.extract::<(Number, Number)>()?;
                Ok(Pair(numbers.0.0, numbers.1.0))
            }
            None => Err(wrong_type(&value.to_owned(), "a tuple of two numbers")?),
        }
    }
}

/// A place or a count: an int from 0 on that its type holds.
#[derive(Clone, Copy)]
pub struct Whole<T>(pub T);

impl<'a, 'py, T: TryFrom<u64>> FromPyObject<'a, 'py> for Whole<T> {
    type Error = PyErr;

    fn extract(value: Borrowed<'a, 'py, PyAny>) -> PyResult<Whole<T>> {
        match value.extract::<u64>().ok().and_then(|whole| T::try_from(whole).ok()) {
            Some(whole) => Ok(Whole(whole)),
            None => Err(wrong_type(&value.to_owned(), "an int from 0 on")?),
        }
    }
}

/// The exception for a value of the wrong type.
pub fn wrong_type(given: &Bound<'_, PyAny>, allowed: &str) -> PyResult<PyErr> {
    // Python writes no int of more than some thousand digits.
    let shown = given.repr().map_or_else(|_| "a value that cannot be written".to_owned(), |text| text.to_string());
    let message = format!("{shown} ({}) given, {allowed} allowed", given.get_type().name()?);
    input_type_error(given.py(), &message)
}

/// The text, which must be one.
pub fn text_of<'a>(given: &'a Bound<'_, PyAny>) -> PyResult<std::borrow::Cow<'a, str>> {
    match given.cast::<PyString>() {
        // One half of a surrogate pair is no character.
        Ok(text) => text.to_cow().or_else(|_| Err(wrong_type(given, "a text of whole characters")?)),
        Err(_) => Err(wrong_type(given, "a text")?),
    }
}

/// The bytes of a text, or bytes themselves: what was read off a part or came over a wire.
pub fn text_or_bytes(given: &Bound<'_, PyAny>) -> PyResult<Vec<u8>> {
    if let Ok(bytes) = given.cast::<PyBytes>() {
        return Ok(bytes.as_bytes().to_vec());
    }
    Ok(text_of(given)?.as_bytes().to_vec())
}

/// One of several by its name.
pub fn choice<T: Copy>(argument: &str, given: &Bound<'_, PyAny>, choices: &[(&str, T)]) -> PyResult<T> {
    let name = text_of(given)?;
    if let Some((_, chosen)) = choices.iter().find(|(word, _)| *word == name) {
        return Ok(*chosen);
    }
    let allowed: Vec<&str> = choices.iter().map(|(word, _)| *word).collect();
    static REFUSE: PyOnceLock<Py<PyAny>> = PyOnceLock::new();
    let refuse = REFUSE.import(given.py(), "reckohm.errors", "_not_a_choice")?;
    Err(PyErr::from_value(refuse.call1((argument, name, allowed))?))
}

/// `InputTypeError` with this text.
pub fn input_type_error(py: Python<'_>, message: &str) -> PyResult<PyErr> {
    static CLASS: PyOnceLock<Py<PyAny>> = PyOnceLock::new();
    let class = CLASS.import(py, "reckohm.errors", "InputTypeError")?;
    Ok(PyErr::from_value(class.call1((message,))?))
}

/// A number as Python reads it back.
pub fn shown(x: f64) -> String {
    match x {
        f64::INFINITY => "float('inf')".to_owned(),
        f64::NEG_INFINITY => "-float('inf')".to_owned(),
        x => format!("{x:?}"),
    }
}

/// The hash of a tuple, for a class that is equal when its parts are.
pub fn hash_of<'py>(
    py: Python<'py>,
    parts: impl IntoPyObject<'py, Target = PyTuple, Output = Bound<'py, PyTuple>, Error = PyErr>,
) -> PyResult<isize> {
    parts.into_pyobject(py)?.hash()
}

/// What pickle calls to have a result anew: a method of its owner, or a function of a module, by name.
pub fn again<'py>(
    py: Python<'py>,
    call: impl IntoPyObject<'py, Target = PyTuple, Output = Bound<'py, PyTuple>, Error = PyErr>,
) -> PyResult<(Bound<'py, PyAny>, Bound<'py, PyTuple>)> {
    static CALL: PyOnceLock<Py<PyAny>> = PyOnceLock::new();
    Ok((CALL.import(py, "reckohm._again", "call")?.clone(), call.into_pyobject(py)?))
}

/// A value with its half-width, this to two digits and the value to the same place (JCGM 100, 7.2.6).
pub fn stated(value: f64, half_width: f64) -> String {
    if half_width == 0.0 {
        return format!("{value} exactly");
    }
    let two_digits = format!("{half_width:.1e}");
    let exponent = two_digits.split_once('e').and_then(|(_, exponent)| exponent.parse::<i32>().ok()).unwrap_or(0);
    let places = 1 - exponent;
    if let Ok(places @ 0..=12) = usize::try_from(places) {
        return format!("{value:.places$} ± {half_width:.places$}");
    }
    if exponent > 15 || places > 12 {
        let digits = format!("{:e}", value.abs().max(f64::MIN_POSITIVE));
        let ahead = digits.split_once('e').and_then(|(_, e)| e.parse::<i32>().ok()).unwrap_or(0) - exponent + 1;
        let ahead = usize::try_from(ahead).unwrap_or(0).min(17);
        return format!("{value:.ahead$e} ± {two_digits}");
    }
    let step = 10_i64.pow(places.unsigned_abs()) as f64;
    format!("{} ± {}", (value / step).round() * step, (half_width / step).round() * step)
}
