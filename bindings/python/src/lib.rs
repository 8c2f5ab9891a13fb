//! The Python door of `reckohm`: pyo3 functions and classes, with NumPy ufuncs behind them. No maths of its own.

use pyo3::exceptions::PyValueError;
use pyo3::prelude::*;
use reckohm::batch::{VectorBits, limit_vector_bits};
use reckohm::number::Kind;

mod arrays;
mod distribution;
mod errors;
mod formula;
mod marking;
mod measurement;
mod meter;
mod preferred;
mod sensor;
mod slices;
mod ufunc;
mod uncertainty;
mod values;
mod vector;
mod verdict;

/// Limits the width of vector instructions in this process, for the benchmarks: 128, 256 or 512 bits.
#[pyfunction]
fn _limit_vector_bits(bits: u32) -> PyResult<()> {
    let bits = match bits {
        128 => VectorBits::Upto128,
        256 => VectorBits::Upto256,
        512 => VectorBits::Upto512,
        other => return Err(PyValueError::new_err(format!("{other} bits given, 128, 256 or 512 allowed"))),
    };
    limit_vector_bits(bits);
    Ok(())
}

/// Limits the number of threads of a call in this process, for tests and benchmarks; 0 takes the limit away.
#[pyfunction]
fn _limit_threads(threads: usize) {
    reckohm_threads::limit(threads);
}

/// The compiled part of `reckohm`: import from `reckohm` itself.
#[pymodule]
#[pyo3(name = "_core")]
fn core_module(module: &Bound<'_, PyModule>) -> PyResult<()> {
    type Fill = fn(&Bound<'_, PyModule>, &Bound<'_, PyModule>) -> PyResult<()>;
    let parts: &[(&str, Fill)] = &[
        ("distribution", distribution::fill),
        ("marking", marking::fill),
        ("measurement", measurement::fill),
        ("meter", meter::fill),
        ("preferred", preferred::fill),
        ("sensor", sensor::fill),
        ("uncertainty", uncertainty::fill),
        ("verdict", verdict::fill),
    ];
    for (name, fill) in parts {
        let part = PyModule::new(module.py(), &format!("reckohm.{name}"))?;
        fill(module, &part)?;
        module.setattr(format!("_{name}"), part)?;
    }
    // Not by `add_function`, which would list it as public.
    module.setattr("_limit_vector_bits", wrap_pyfunction!(_limit_vector_bits, module)?)?;
    module.setattr("_limit_threads", wrap_pyfunction!(_limit_threads, module)?)?;
    // Status numbers with their names, for the test that raises each of them.
    let kinds: Vec<_> = Kind::ALL.iter().map(|kind| (kind.number(), kind.name())).collect();
    module.setattr("_kinds", kinds)
}
