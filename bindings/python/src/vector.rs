//! The function in front of each ufunc: plain numbers at once, all else through NumPy.

use pyo3::IntoPyObjectExt;
use pyo3::prelude::*;
use pyo3::sync::PyOnceLock;
use pyo3::types::{PyBool, PyFloat, PyInt};

use crate::arrays::arrays;
use crate::errors::Failure;
use crate::formula::{Formulas, Kernel};
use crate::ufunc::{self, Output, Refused};

/// A formula with its name at this door.
pub struct Vector {
    /// The name of the ufunc, which has `_` before it; with `_or_nan` behind it that of its twin.
    pub name: &'static str,
    /// The names of the arguments that may be arrays, as the messages say them.
    pub arguments: &'static [&'static str],
    pub output: Output,
    pub formulas: Formulas,
}

/// The options every vector function has.
pub struct Options<'a, 'py> {
    pub out: Option<&'a Bound<'py, PyAny>>,
    pub where_: Option<&'a Bound<'py, PyAny>>,
    pub on_invalid: &'a str,
}

impl Options<'_, '_> {
    /// Whether none of them is used.
    pub fn are_none(&self) -> bool {
        self.out.is_none() && self.where_.is_none() && self.on_invalid == "raise"
    }
}

/// An argument: what the caller gave, or a number that stands for a name (a series, a rule).
#[derive(Clone, Copy)]
pub enum Input<'a, 'py> {
    Given(&'a Bound<'py, PyAny>),
    Code(f64),
}

impl Input<'_, '_> {
    /// The number, if it is a plain one: float (NumPy's float64 is one) or int, but no bool.
    pub fn plain(&self) -> Option<f64> {
        match self {
            Input::Code(code) => Some(*code),
            Input::Given(value) => {
                if let Ok(float) = value.cast::<PyFloat>() {
                    return Some(float.value());
                }
                if value.is_instance_of::<PyInt>() && !value.is_instance_of::<PyBool>() {
                    return value.extract::<f64>().ok();
                }
                None
            }
        }
    }
}

impl Vector {
    /// One call: floats and ints are computed here, anything else goes through NumPy's arrays.
    pub fn call<'py, K: Kernel<N, f64>, const N: usize>(
        &self,
        py: Python<'py>,
        inputs: [Input<'_, 'py>; N],
        options: Options<'_, 'py>,
    ) -> PyResult<Bound<'py, PyAny>> {
        if options.are_none() {
            let plain = inputs.map(|input| input.plain());
            if plain.iter().all(Option::is_some) {
                let result = K::evaluate(plain.map(Option::unwrap_or_default))
                    .map_err(|refusal| Failure::from(refusal).raise(py))?;
                return match self.output {
                    Output::Number => Ok(PyFloat::new(py, result).into_any()),
                    Output::Truth => (result != 0.0).into_bound_py_any(py),
                };
            }
        }
        self.call_arrays(py, &inputs, options)
    }

    /// What is no plain number: NumPy's own arrays of one shape are computed here; anything else, and what is refused, goes to
    /// NumPy.
    pub fn call_arrays<'py>(
        &self,
        py: Python<'py>,
        inputs: &[Input<'_, 'py>],
        options: Options<'_, 'py>,
    ) -> PyResult<Bound<'py, PyAny>> {
        if let Some(done) = arrays(py, self, inputs, &options)? {
            return Ok(done);
        }
        static CALL: PyOnceLock<Py<PyAny>> = PyOnceLock::new();
        let inputs = inputs.iter().map(|input| match input {
            Input::Given(value) => Ok((*value).clone()),
            Input::Code(code) => code.into_bound_py_any(py),
        });
        let inputs = pyo3::types::PyTuple::new(py, inputs.collect::<PyResult<Vec<_>>>()?)?;
        let names = pyo3::types::PyTuple::new(py, self.arguments)?;
        CALL.import(py, "reckohm._array_call", "call")?.call1((
            self.name,
            inputs,
            names,
            options.out,
            options.where_,
            options.on_invalid,
            self.output == Output::Truth,
        ))
    }

    /// Adds the two ufuncs of the formula to the compiled module, under whose name they pickle.
    pub fn add(&self, module: &Bound<'_, PyModule>) -> PyResult<()> {
        let Formulas { single, double } = self.formulas;
        for (suffix, refused, output) in [("", Refused::Raise, self.output), ("_or_nan", Refused::Nan, Output::Number)]
        {
            let name = format!("_{}{suffix}", self.name);
            let ufunc = ufunc::new(module.py(), &name, double.inputs, output)?;
            ufunc::add_loop(&ufunc, single, refused, output)?;
            ufunc::add_loop(&ufunc, double, refused, output)?;
            module.setattr(name.as_str(), ufunc)?;
        }
        Ok(())
    }
}

/// Writes the functions of a module and the one that adds their ufuncs, a formula a line:
/// `fn name(argument, …; code: Type) = Kernel -> Output, "ufunc";`. A code is a name that stands for a number.
macro_rules! vector_functions {
    ($($(#[$doc:meta])* fn $name:ident($($given:ident),+ $(; $code:ident: $class:ty)?) = $kernel:ident -> $output:ident, $ufunc:literal;)+) => {
        $($(#[$doc])*
        #[pyfunction]
        #[pyo3(signature = ($($given,)+ $($code,)? *, out=None, r#where=None, on_invalid="raise"))]
        #[allow(clippy::too_many_arguments)]
        fn $name<'py>(
            py: Python<'py>,
            $($given: &Bound<'py, PyAny>,)+
            $($code: $class,)?
            out: Option<&Bound<'py, PyAny>>,
            r#where: Option<&Bound<'py, PyAny>>,
            on_invalid: &str,
        ) -> PyResult<Bound<'py, PyAny>> {
            use $crate::vector::{Input, Options};
            let inputs = [$(Input::Given($given),)+ $(Input::Code($code.code()))?];
            $kernel::VECTOR.call::<$kernel, _>(py, inputs, Options { out, where_: r#where, on_invalid })
        }

        impl $kernel {
            const VECTOR: $crate::vector::Vector = $crate::vector::Vector {
                name: $ufunc,
                arguments: &[$(stringify!($given),)+ $(stringify!($code))?],
                output: $crate::ufunc::Output::$output,
                formulas: $crate::formula::Formulas::of::<$kernel, _>(),
            };
        })+

        /// Adds the functions to their module and the ufuncs behind them to the compiled one.
        fn add_functions(compiled: &Bound<'_, PyModule>, module: &Bound<'_, PyModule>) -> PyResult<()> {
            $(module.add_function(wrap_pyfunction!($name, module)?)?;
            $kernel::VECTOR.add(compiled)?;)+
            Ok(())
        }
    };
}
pub(crate) use vector_functions;
