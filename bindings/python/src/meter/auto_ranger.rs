//! `reckohm.meter.AutoRanger`.

use pyo3::prelude::*;
use pyo3::types::PyDict;
use reckohm::meter as core;

use super::meter::Meter;
use super::reading::Reading;
use super::span::Span;
use crate::errors::{Failure, contradiction};
use crate::values::{Number, Whole, wrong_type};

/// Index, readings left to discard, hysteresis, contested span, whether the last switch was a step down.
type State = (usize, u32, f64, Option<usize>, bool);

/// A meter that finds its span by itself, reading after reading.
///
/// It is fed each reading and says what to do next. Over-range goes up one span at a time. A reading that, with its accuracy
/// clause, is below a lower span's full scale by the hysteresis goes straight to the lowest such span. Each time that turns
/// out wrong the hysteresis doubles, up to the widest, so that a reading that wobbles about the end of a span does not switch
/// for ever; once the readings have left the neighbourhood of that end, by the widest hysteresis, it is as at first.
///
/// Parameters
/// ----------
/// meter : Meter
///     Of 16 spans at most.
/// start : int, optional
///     The span to begin on, counted from 0; the highest, which is the gentlest, if left out.
/// discard : int
///     How many readings are discarded after each switch, while the input settles.
/// hysteresis : float
///     A fraction of the lower span's full scale, in [0.001, 0.9]; 0.05 by convention.
/// widest_hysteresis : float
///     The widest that it becomes; 0.5 by convention.
///
/// Raises
/// ------
/// RangeError, ContradictionError
///     A hysteresis outside its range, or the widest less than the first.
/// MeterError
///     A start that is no span of the meter.
/// CountError
///     More than 16 spans.
///
/// Examples
/// --------
/// >>> from reckohm.meter import AutoRanger, Meter
/// >>> meter = Meter.example_hand_held()
/// >>> ranger = AutoRanger(meter, start=1)
/// >>> step = ranger.step(ranger.span.read("OL"))
/// >>> step.kind, step.span.label
/// ('switch', '20 kohm')
/// >>> ranger.step(ranger.span.read("4.70")).kind
/// 'accept'
#[pyclass(eq, module = "reckohm.meter")]
#[derive(Clone, PartialEq)]
pub struct AutoRanger {
    meter: Meter,
    start: usize,
    ranger: core::AutoRanger,
}

#[pymethods]
impl AutoRanger {
    #[new]
    #[pyo3(signature = (
        meter, *, start=None, discard=Whole(0),
        hysteresis=Number(core::HYSTERESIS_BY_CONVENTION), widest_hysteresis=Number(core::WIDEST_HYSTERESIS_BY_CONVENTION)
    ), text_signature = "(meter, *, start=None, discard=0, hysteresis=0.05, widest_hysteresis=0.5)")]
    fn new(
        meter: &Bound<'_, PyAny>,
        start: Option<Whole<usize>>,
        discard: Whole<u32>,
        hysteresis: Number,
        widest_hysteresis: Number,
    ) -> PyResult<AutoRanger> {
        let Ok(meter) = meter.extract::<Meter>() else { return Err(wrong_type(meter, "a Meter")?) };
        let make = || {
            let fresh = core::AutoRanger::new(&meter.core()?)?.with_discard(discard.0);
            let start = start.map_or(fresh.index(), |start| start.0);
            let made = fresh.with_start(start)?.with_hysteresis(hysteresis.0, widest_hysteresis.0)?;
            Ok::<_, Failure>((made, start))
        };
        let (ranger, start) = make()?;
        Ok(AutoRanger { meter, start, ranger })
    }

    /// The meter.
    #[getter]
    fn meter(&self) -> Meter {
        self.meter.clone()
    }

    /// The index of the span that the next reading is to be taken on.
    #[getter]
    fn index(&self) -> usize {
        self.ranger.index()
    }

    /// The span that the next reading is to be taken on.
    #[getter]
    fn span(&self) -> Result<Span, Failure> {
        Ok(Span(*self.meter.core()?.span(self.index())?))
    }

    /// How many readings are discarded after each switch.
    #[getter]
    fn discard(&self) -> u32 {
        self.ranger.discard()
    }

    /// The hysteresis at first.
    #[getter]
    fn hysteresis(&self) -> f64 {
        self.ranger.hysteresis()
    }

    /// The widest that the hysteresis becomes.
    #[getter]
    fn widest_hysteresis(&self) -> f64 {
        self.ranger.widest_hysteresis()
    }

    /// Takes in a reading on the span that was asked for, and says what to do.
    ///
    /// Parameters
    /// ----------
    /// reading : Reading
    ///     A reading on `span`.
    ///
    /// Returns
    /// -------
    /// RangerStep
    ///
    /// Raises
    /// ------
    /// ContradictionError
    ///     A reading on another span; the auto-ranger is as before then.
    ///
    /// Examples
    /// --------
    /// >>> from reckohm.meter import AutoRanger, Meter
    /// >>> ranger = AutoRanger(Meter.example_hand_held(), start=2, discard=1)
    /// >>> [ranger.step(ranger.span.read(text)).kind for text in ("1.20", "1.200", "1.203")]
    /// ['switch', 'again', 'accept']
    fn step<'py>(&mut self, py: Python<'py>, reading: &Bound<'py, PyAny>) -> PyResult<Bound<'py, PyAny>> {
        let Ok(reading) = reading.cast::<Reading>() else { return Err(wrong_type(reading, "a Reading")?) };
        let reading = reading.get();
        let wanted = self.span()?;
        if *reading.core_span() != wanted.0 {
            let (given, wanted) = (reading.core_span().label(), wanted.0.label());
            return Err(contradiction(
                py,
                &format!(
                    "auto-ranger: a reading on {given} given, one on {wanted} allowed; put the meter on the span that was \
                     asked for, then measure"
                ),
            ));
        }
        let action = self.ranger.step(&reading.reading).map_err(Failure::from)?;
        self.said(py, action)
    }

    /// Takes in a resistance measured on the span that was asked for, and says what to do. At or beyond the span's full scale
    /// it is over-range.
    ///
    /// Parameters
    /// ----------
    /// ohm : float
    ///     The resistance; where there is no value, the full scale.
    ///
    /// Returns
    /// -------
    /// RangerStep
    ///
    /// Raises
    /// ------
    /// RangeError
    ///     A number that is not finite; the auto-ranger is as before then.
    ///
    /// Examples
    /// --------
    /// >>> from reckohm.meter import AutoRanger, Meter
    /// >>> ranger = AutoRanger(Meter.example_bench())
    /// >>> [ranger.step_ohm(4701.2).kind for _ in range(2)], ranger.span.label
    /// (['switch', 'accept'], '10 kohm')
    fn step_ohm<'py>(&mut self, py: Python<'py>, ohm: Number) -> PyResult<Bound<'py, PyAny>> {
        let action = self.ranger.step_ohm(ohm.0).map_err(Failure::from)?;
        self.said(py, action)
    }

    /// Begins anew for another part: what was learnt of the last one is forgotten, and no readings are discarded.
    ///
    /// Parameters
    /// ----------
    /// index : int, optional
    ///     The span to begin on; the one that it was made with, if left out.
    ///
    /// Examples
    /// --------
    /// >>> from reckohm.meter import AutoRanger, Meter
    /// >>> ranger = AutoRanger(Meter.example_hand_held())
    /// >>> ranger.step_ohm(4700).kind, ranger.index
    /// ('switch', 3)
    /// >>> ranger.restart()
    /// >>> ranger.index
    /// 5
    #[pyo3(signature = (index=None))]
    fn restart(&mut self, index: Option<Whole<usize>>) -> Result<(), Failure> {
        Ok(self.ranger.restart(index.map_or(self.start, |index| index.0))?)
    }

    fn __getnewargs_ex__<'py>(&self, py: Python<'py>) -> PyResult<((Meter,), Bound<'py, PyDict>)> {
        Ok(((self.meter.clone(),), self.options(py)?))
    }

    fn __getstate__(&self) -> State {
        let core::RangerState { index, left, hysteresis, contested, descended } = self.ranger.state();
        (index, left, hysteresis, contested, descended)
    }

    fn __setstate__(&mut self, state: State) -> Result<(), Failure> {
        let (index, left, hysteresis, contested, descended) = state;
        self.ranger = self.ranger.with_state(core::RangerState { index, left, hysteresis, contested, descended })?;
        Ok(())
    }

    fn __repr__(&self, py: Python<'_>) -> PyResult<String> {
        let mut text = format!("AutoRanger({}", self.meter.__repr__(py)?);
        for (name, value) in self.options(py)? {
            text += &format!(", {name}={}", value.repr()?);
        }
        Ok(text + ")")
    }
}

impl AutoRanger {
    fn options<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyDict>> {
        let options = PyDict::new(py);
        options.set_item("start", self.start)?;
        options.set_item("discard", self.discard())?;
        options.set_item("hysteresis", self.hysteresis())?;
        options.set_item("widest_hysteresis", self.widest_hysteresis())?;
        Ok(options)
    }

    fn said<'py>(&self, py: Python<'py>, action: core::RangerAction) -> PyResult<Bound<'py, PyAny>> {
        let (kind, left) = match action {
            core::RangerAction::Again { left } => ("again", left),
            core::RangerAction::Switch { .. } => ("switch", 0),
            core::RangerAction::Accept => ("accept", 0),
            core::RangerAction::BeyondHighest => ("beyond highest", 0),
            core::RangerAction::BelowLowest => ("below lowest", 0),
        };
        Meter::record(py, "RangerStep", (kind, self.index(), self.span()?, left))
    }
}
