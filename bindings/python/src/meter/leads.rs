//! `reckohm.meter.Leads`.

use pyo3::prelude::*;
use pyo3::types::PyTuple;
use reckohm::meter as core;

use super::reading::Reading;
use crate::errors::Failure;
use crate::values::{Number, again, hash_of, shown, wrong_type};

/// The resistance of both leads together.
///
/// Parameters
/// ----------
/// reading : Reading
///     What was shown with the tips touching one another. Its accuracy comes from its span's clause when it is evaluated; a
///     negative reading is kept.
///
/// Raises
/// ------
/// RangeError
///     An over-range reading: a broken lead.
///
/// Examples
/// --------
/// >>> from reckohm.meter import Leads, Meter
/// >>> span = Meter.example_hand_held().spans[0]
/// >>> Leads(span.read("0.3")).ohm
/// 0.3
#[pyclass(frozen, eq, from_py_object, module = "reckohm.meter")]
#[derive(Clone)]
pub struct Leads {
    pub(crate) leads: core::Leads,
    made: Made,
}

#[derive(Clone)]
enum Made {
    Read(Reading),
    Wire(f64, f64, u8),
}

impl PartialEq for Leads {
    fn eq(&self, other: &Leads) -> bool {
        self.leads == other.leads
    }
}

#[pymethods]
impl Leads {
    #[classattr]
    fn __match_args__() -> (&'static str,) {
        ("ohm",)
    }

    #[new]
    fn new(reading: &Bound<'_, PyAny>) -> PyResult<Leads> {
        let Ok(reading) = reading.cast::<Reading>() else {
            return Err(wrong_type(reading, "a Reading, or a wire by Leads.from_wire,")?);
        };
        let reading = reading.get().clone();
        let leads = core::Leads::from_reading(&reading.reading, reading.core_span()).map_err(Failure::from)?;
        Ok(Leads { leads, made: Made::Read(reading) })
    }

    /// Two leads of plain copper wire, from the table of IEC 60228, at 20 °C.
    ///
    /// The value is that of annealed copper of the full cross-section; its half-width reaches up to the table's largest
    /// resistance. Plugs, contacts and other temperatures (0.4 % a kelvin) are not in it.
    ///
    /// Parameters
    /// ----------
    /// length_m : float
    ///     Length of each lead.
    /// area_mm2 : float
    ///     Cross-section.
    /// conductor_class : int
    ///     1 solid, 2 stranded, 5 flexible.
    ///
    /// Raises
    /// ------
    /// RangeError
    ///     A length outside its range.
    /// MeterError
    ///     A conductor that is not in the table.
    ///
    /// Examples
    /// --------
    /// >>> from reckohm.meter import Leads
    /// >>> leads = Leads.from_wire(1.0, 0.75, 5)
    /// >>> round(leads.ohm, 4), round(leads.half_width_ohm, 4)
    /// (0.046, 0.006)
    #[staticmethod]
    fn from_wire(length_m: Number, area_mm2: Number, conductor_class: Number) -> Result<Leads, Failure> {
        // Whatever is no class at all is not in the table either.
        let class = if conductor_class.0.fract() == 0.0 { conductor_class.0 as u8 } else { 0 };
        let leads = core::Leads::from_wire(length_m.0, area_mm2.0, class)?;
        Ok(Leads { leads, made: Made::Wire(length_m.0, area_mm2.0, class) })
    }

    /// The resistance in ohm.
    #[getter]
    fn ohm(&self) -> f64 {
        self.leads.ohm()
    }

    /// The rectangular half-width in ohm of leads reckoned from their wire; 0 for leads that were read, whose accuracy is
    /// that of the span.
    #[getter]
    fn half_width_ohm(&self) -> f64 {
        self.leads.half_width_ohm()
    }

    /// The reading, None for leads reckoned from their wire.
    #[getter]
    fn reading(&self) -> Option<Reading> {
        match &self.made {
            Made::Read(reading) => Some(reading.clone()),
            Made::Wire(..) => None,
        }
    }

    fn __hash__(&self, py: Python<'_>) -> PyResult<isize> {
        hash_of(py, (self.ohm(), self.half_width_ohm()))
    }

    fn __reduce__<'py>(&self, py: Python<'py>) -> PyResult<(Bound<'py, PyAny>, Bound<'py, PyTuple>)> {
        let class = py.get_type::<Leads>();
        match &self.made {
            Made::Read(reading) => Ok((class.into_any(), PyTuple::new(py, [reading.clone()])?)),
            Made::Wire(length_m, area_mm2, of) => again(py, (class, "from_wire", *length_m, *area_mm2, *of)),
        }
    }

    fn __repr__(&self, py: Python<'_>) -> PyResult<String> {
        Ok(match &self.made {
            Made::Read(reading) => format!("Leads({})", Bound::new(py, reading.clone())?.repr()?),
            Made::Wire(length_m, area_mm2, class) => {
                format!("Leads.from_wire({}, {}, {class})", shown(*length_m), shown(*area_mm2))
            }
        })
    }
}
