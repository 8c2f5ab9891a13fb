//! `reckohm.verdict`.

use pyo3::prelude::*;

mod columns;
mod conformance;
mod judge;
mod limits;
mod rule;

pub use limits::Limits;

/// What the module holds.
pub fn fill(compiled: &Bound<'_, PyModule>, module: &Bound<'_, PyModule>) -> PyResult<()> {
    module.add_class::<Limits>()?;
    module.add_class::<rule::Rule>()?;
    module.add_class::<judge::Verdict>()?;
    conformance::CONFORMANCE.add(compiled)?;
    compiled.setattr("_judge_columns", wrap_pyfunction!(columns::judge_columns, compiled)?)?;
    module.add_function(wrap_pyfunction!(judge::judge, module)?)?;
    module.add_function(wrap_pyfunction!(conformance::conformance_probability, module)?)
}
