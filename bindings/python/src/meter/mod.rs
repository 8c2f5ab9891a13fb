//! `reckohm.meter`.

use pyo3::prelude::*;

mod auto_ranger;
mod leads;
#[allow(clippy::module_inception)]
mod meter;
mod reading;
mod span;

pub use leads::Leads;
pub use meter::Meter;
pub use reading::Reading;

/// What the module holds.
pub fn fill(_compiled: &Bound<'_, PyModule>, module: &Bound<'_, PyModule>) -> PyResult<()> {
    module.add_class::<span::Span>()?;
    module.add_class::<Reading>()?;
    module.add_class::<reading::Readings>()?;
    module.add_class::<Meter>()?;
    module.add_class::<meter::Choice>()?;
    module.add_class::<auto_ranger::AutoRanger>()?;
    module.add_class::<Leads>()?;
    module.add_function(wrap_pyfunction!(reading::_readings, module)?)
}
