//! NumPy's own arrays of one shape: the core's functions of arrays on the memory as it lies there, over the cores if there is
//! enough of it, with the interpreter lock released.

use pyo3::prelude::*;
use pyo3::sync::PyOnceLock;
use pyo3::types::PyTuple;
use reckohm::verdict::Column;
use reckohm_threads::in_parts;

use crate::formula::{Formula, Inputs, Real};
use crate::slices::Array;
use crate::ufunc::Output;
use crate::vector::{Input, Options, Vector};

/// An argument on this way.
enum Operand<'py> {
    One(f64),
    Each(Array<'py>),
}

/// The call, if it can be done here and nothing is refused: `None` leaves it to NumPy, with nothing written.
pub fn arrays<'py>(
    py: Python<'py>,
    vector: &Vector,
    inputs: &[Input<'_, 'py>],
    options: &Options<'_, 'py>,
) -> PyResult<Option<Bound<'py, PyAny>>> {
    if vector.output == Output::Truth || options.where_.is_some() || !matches!(options.on_invalid, "raise" | "nan") {
        return Ok(None);
    }
    let mut operands = Vec::with_capacity(inputs.len());
    let (mut shape, mut all_single): (Option<Vec<isize>>, bool) = (None, true);
    for input in inputs {
        if let Some(number) = input.plain() {
            operands.push(Operand::One(number));
            continue;
        }
        let Input::Given(value) = input else { return Ok(None) };
        let Some(array) = Array::of(value)? else { return Ok(None) };
        let same = shape.as_deref().is_none_or(|shape| shape == array.shape());
        if !same || array.shape().is_empty() || !array.is_numeric() {
            return Ok(None);
        }
        shape.get_or_insert_with(|| array.shape().to_vec());
        all_single &= array.is_of::<f32>();
        operands.push(Operand::Each(array));
    }
    let Some(shape) = shape else { return Ok(None) };
    if all_single {
        of_type(py, vector.formulas.single, operands, &shape, options)
    } else {
        of_type(py, vector.formulas.double, operands, &shape, options)
    }
}

fn of_type<'py, R: Real>(
    py: Python<'py>,
    formula: &Formula<R>,
    mut operands: Vec<Operand<'py>>,
    shape: &[isize],
    options: &Options<'_, 'py>,
) -> PyResult<Option<Bound<'py, PyAny>>> {
    // What does not lie one behind the other is copied once: so the cores can share it.
    for operand in &mut operands {
        if let Operand::Each(array) = operand
            && !array.is_plain::<R>()
        {
            static COPY: PyOnceLock<Py<PyAny>> = PyOnceLock::new();
            let copy = COPY.import(py, "numpy", "ascontiguousarray")?.call1((array.object(), R::CODE))?;
            let Some(copy) = Array::of(&copy)? else { return Ok(None) };
            *array = copy;
        }
    }
    let fresh = options.out.is_none();
    let out = match options.out {
        Some(out) => out.clone(),
        None => {
            static EMPTY: PyOnceLock<Py<PyAny>> = PyOnceLock::new();
            EMPTY.import(py, "numpy", "empty")?.call1((PyTuple::new(py, shape)?, R::CODE))?
        }
    };
    let Some(mut room) = Array::of(&out)? else { return Ok(None) };
    let fits = room.is_plain::<R>() && room.is_writeable() && room.shape() == shape;
    let apart = operands.iter().all(|operand| match operand {
        Operand::One(_) => true,
        Operand::Each(array) => !array.overlaps::<R>(&room),
    });
    if !fits || !apart || (!fresh && options.on_invalid == "nan") {
        return Ok(None);
    }
    let mut columns: Inputs<_> = [Column::One(R::ZERO); _];
    for (column, operand) in columns.iter_mut().zip(&operands) {
        *column = match operand {
            Operand::One(number) => Column::One(R::of_f64(*number)),
            Operand::Each(array) => match array.slice::<R>() {
                Some(slice) => Column::Each(slice),
                None => return Ok(None),
            },
        };
    }
    // SAFETY: the output is fresh, or apart from all inputs.
    let Some(results) = (unsafe { room.slice_mut::<R>() }) else { return Ok(None) };
    let nan = options.on_invalid == "nan";
    let done = py.detach(|| {
        // A given output is not touched unless all is well.
        if !fresh && !takes(formula, &columns, results.len()) {
            return false;
        }
        fill(formula, &columns, results, nan) == 0 || nan
    });
    Ok(done.then_some(out))
}

/// Whether each element has a result.
fn takes<R: Real>(formula: &Formula<R>, columns: &Inputs<Column<'_, R>>, count: usize) -> bool {
    let refusing = in_parts(count, formula.least_a_thread, (), |elements, ()| {
        let count = elements.len();
        usize::from(!formula.takes(&columns.map(|column| column.part(elements.clone())), count))
    });
    refusing == 0
}

/// Writes the results; where an element has none it stops, or writes NaN and goes on. Gives how many it met.
fn fill<R: Real>(formula: &Formula<R>, columns: &Inputs<Column<'_, R>>, out: &mut [R], nan: bool) -> usize {
    /// So many at a time: checked and computed while they are in the nearest cache.
    const STRETCH: usize = 1024;
    in_parts(out.len(), formula.least_a_thread, out, |elements, out| {
        let mut valid = [true; STRETCH];
        let mut refused = 0;
        for (index, out) in out.chunks_mut(STRETCH).enumerate() {
            let start = elements.start + index * STRETCH;
            let inputs = columns.map(|column| column.part(start..start + out.len()));
            let here = formula.fill(&inputs, out, &mut valid[..out.len()]);
            if here == 0 {
                continue;
            }
            refused += here;
            if !nan {
                return refused;
            }
            for (place, _) in out.iter_mut().zip(valid).filter(|(_, valid)| !valid) {
                *place = R::NAN;
            }
        }
        refused
    })
}
