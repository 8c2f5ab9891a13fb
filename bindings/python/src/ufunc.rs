//! Formulas as NumPy ufuncs. With `slices` the only file with unsafe code.
//!
//! NumPy is asked for its own table of functions at run time, so nothing here links to it. Slots of that table and the
//! layout of `PyArrayMethod_Spec` are part of NumPy's stable interface since 2.0 (`numpy/ufuncobject.h`,
//! `numpy/dtype_api.h`).

use core::ffi::{CStr, c_char, c_int, c_void};
use core::ptr::{NonNull, null, null_mut};
use std::ffi::CString;

use pyo3::exceptions::PyImportError;
use pyo3::ffi;
use pyo3::prelude::*;
use pyo3::types::{PyCapsule, PyTuple};

use reckohm::verdict::Column;

use crate::errors::Failure;
use crate::formula::{Formula, Inputs, Kernel, Real};

/// What a ufunc's loop does with an element that the formula refuses.
#[derive(Clone, Copy, PartialEq)]
pub enum Refused {
    /// Stop and raise: for calls that NumPy itself makes, a chunk of a lazy array say.
    Raise,
    /// Write NaN, which no formula gives otherwise, and go on: the caller looks for them.
    Nan,
}

/// What a ufunc's output is.
#[derive(Clone, Copy, PartialEq)]
pub enum Output {
    Number,
    Truth,
}

type Loop = unsafe extern "C" fn(*mut c_void, *const *mut c_char, *const isize, *const isize, *mut c_void) -> c_int;

/// The addresses of a formula's loops that NumPy calls.
pub struct Loops {
    raise: Loop,
    nan: Loop,
    truth: Loop,
}

impl Loops {
    pub const fn of<K: Kernel<N, R>, R: Real, const N: usize>() -> Loops {
        Loops {
            raise: formula_loop::<K, R, N, true, false>,
            nan: formula_loop::<K, R, N, false, false>,
            truth: formula_loop::<K, R, N, true, true>,
        }
    }
}

/// `PyArrayMethod_Spec` of `numpy/dtype_api.h`.
#[repr(C)]
struct Spec {
    name: *const c_char,
    inputs: c_int,
    outputs: c_int,
    casting: c_int,
    flags: c_int,
    dtypes: *mut *mut ffi::PyObject,
    slots: *mut ffi::PyType_Slot,
}

const SLOT_FROM_FUNC_AND_DATA: usize = 1;
const SLOT_ADD_LOOP_FROM_SPEC: usize = 43;
const SLOT_ADD_PROMOTER: usize = 44;
const METHOD_STRIDED_LOOP: c_int = 5;
const METHOD_NO_FLOATINGPOINT_ERRORS: c_int = 2;
const CASTING_NONE: c_int = 0;
const IDENTITY_NONE: c_int = -1;
const PROMOTER_NAME: &CStr = c"numpy._ufunc_promoter";

type FromFuncAndData = unsafe extern "C" fn(
    *const c_void,
    *const c_void,
    *const c_char,
    c_int,
    c_int,
    c_int,
    c_int,
    *const c_char,
    *const c_char,
    c_int,
) -> *mut ffi::PyObject;
type AddLoopFromSpec = unsafe extern "C" fn(*mut ffi::PyObject, *mut Spec) -> c_int;
type AddPromoter = unsafe extern "C" fn(*mut ffi::PyObject, *mut ffi::PyObject, *mut ffi::PyObject) -> c_int;

/// NumPy's table of functions.
#[derive(Clone, Copy)]
struct Table(*const *const c_void);

impl Table {
    fn of(py: Python<'_>) -> PyResult<Table> {
        let capsule = py.import("numpy._core._multiarray_umath")?.getattr("_UFUNC_API")?;
        // SAFETY: a live capsule without a name; the table lives as long as the process.
        let table = unsafe { ffi::PyCapsule_GetPointer(capsule.as_ptr(), null()) }.cast::<*const c_void>();
        if table.is_null() { Err(PyErr::fetch(py)) } else { Ok(Table(table)) }
    }

    /// # Safety
    /// `F` is the type that `numpy/__ufunc_api.h` declares for this slot.
    unsafe fn slot<F: Copy>(self, index: usize) -> PyResult<F> {
        const { assert!(size_of::<F>() == size_of::<*const c_void>()) };
        // SAFETY: every slot used here exists since NumPy 2.0; the type is the caller's promise.
        unsafe {
            let entry = self.0.add(index);
            if (*entry).is_null() {
                return Err(PyImportError::new_err("reckohm needs NumPy 2.0 or later"));
            }
            Ok(*entry.cast::<F>())
        }
    }
}

/// A new ufunc of so many numbers, without a loop as yet: one for `float32`, which it takes as it is, and one for `float64`,
/// as which all else is taken, are to be added.
pub fn new<'py>(py: Python<'py>, name: &str, inputs: usize, output: Output) -> PyResult<Bound<'py, PyAny>> {
    // NumPy keeps the pointer: the name lives as long as the process.
    let name: &'static CStr = Box::leak(CString::new(name)?.into_boxed_c_str());
    let promote: Promoter = match output {
        Output::Number => promoter::<false>,
        Output::Truth => promoter::<true>,
    };
    let table = Table::of(py)?;
    let any_dtype = py.import("numpy")?.getattr("dtype")?;
    let operands = PyTuple::new(py, core::iter::repeat_n(any_dtype, inputs + 1))?;
    // SAFETY: the pointer types are those of NumPy's declarations, all that is passed outlives the calls, and a promoter's
    // capsule has the name that NumPy asks for.
    unsafe {
        let from_func_and_data: FromFuncAndData = table.slot(SLOT_FROM_FUNC_AND_DATA)?;
        let add_promoter: AddPromoter = table.slot(SLOT_ADD_PROMOTER)?;
        let (inputs, text) = (inputs as c_int, c"".as_ptr());
        let made = from_func_and_data(null(), null(), null(), 0, inputs, 1, IDENTITY_NONE, name.as_ptr(), text, 0);
        let ufunc = Bound::from_owned_ptr_or_err(py, made)?;
        let promote = PyCapsule::new_with_pointer(py, NonNull::new_unchecked(promote as *mut c_void), PROMOTER_NAME)?;
        if add_promoter(ufunc.as_ptr(), operands.as_ptr(), promote.as_ptr()) < 0 {
            return Err(PyErr::fetch(py));
        }
        Ok(ufunc)
    }
}

/// Adds a formula's loop over numbers of type `R` to a ufunc.
pub fn add_loop<R: Real>(
    ufunc: &Bound<'_, PyAny>,
    formula: &Formula<R>,
    refused: Refused,
    output: Output,
) -> PyResult<()> {
    let py = ufunc.py();
    let strided = match (refused, output) {
        (Refused::Raise, Output::Number) => formula.loops.raise,
        (Refused::Nan, Output::Number) => formula.loops.nan,
        (_, Output::Truth) => formula.loops.truth,
    };
    let number = dtype_class(py, R::CODE)?;
    let result = dtype_class(py, if output == Output::Truth { "?" } else { R::CODE })?;
    let mut dtypes: Vec<_> = core::iter::repeat_n(number.as_ptr(), formula.inputs).chain([result.as_ptr()]).collect();
    let mut slots = [
        ffi::PyType_Slot { slot: METHOD_STRIDED_LOOP, pfunc: strided as *mut c_void },
        ffi::PyType_Slot { slot: 0, pfunc: null_mut() },
    ];
    let mut spec = Spec {
        name: c"reckohm".as_ptr(),
        inputs: formula.inputs as c_int,
        outputs: 1,
        casting: CASTING_NONE,
        flags: METHOD_NO_FLOATINGPOINT_ERRORS,
        dtypes: dtypes.as_mut_ptr(),
        slots: slots.as_mut_ptr(),
    };
    // SAFETY: the pointer type is that of NumPy's declaration, and NumPy copies the spec.
    unsafe {
        let add: AddLoopFromSpec = Table::of(py)?.slot(SLOT_ADD_LOOP_FROM_SPEC)?;
        if add(ufunc.as_ptr(), &mut spec) < 0 { Err(PyErr::fetch(py)) } else { Ok(()) }
    }
}

/// The loop of a formula, no more than an address of its own for [`strided`]: NumPy has no place for anything else. NumPy calls
/// it without the interpreter lock.
///
/// # Safety
/// As [`strided`].
unsafe extern "C" fn formula_loop<K: Kernel<N, R>, R: Real, const N: usize, const RAISE: bool, const TRUTH: bool>(
    _context: *mut c_void,
    data: *const *mut c_char,
    dimensions: *const isize,
    strides: *const isize,
    _auxiliary: *mut c_void,
) -> c_int {
    let (refused, output) =
        (if RAISE { Refused::Raise } else { Refused::Nan }, if TRUTH { Output::Truth } else { Output::Number });
    // SAFETY: the caller's promise.
    unsafe { strided(Formula::of::<K, N>(), refused, output, data, *dimensions as usize, strides) }
}

/// So many elements are computed at a time; where they do not lie one behind the other they are gathered first.
const BLOCK: usize = 512;

/// A loop over one stretch of elements.
///
/// # Safety
/// Called by NumPy alone, with as many pointers and strides as the formula has inputs, of aligned numbers of type `R`, one more
/// for the output (a byte for a truth), and as many elements as it says. The output may be one of the inputs, element by
/// element.
unsafe fn strided<R: Real>(
    formula: &Formula<R>,
    refused: Refused,
    output: Output,
    data: *const *mut c_char,
    count: usize,
    strides: *const isize,
) -> c_int {
    let (mut results, mut valid) = ([R::ZERO; BLOCK], [true; BLOCK]);
    // SAFETY: as the contract above.
    let stride = |operand: usize| unsafe { *strides.add(operand) };
    // SAFETY: as the contract above.
    let at =
        |operand: usize, element: usize| unsafe { (*data.add(operand)).offset(element as isize * stride(operand)) };
    let in_a_row = size_of::<R>() as isize;
    let scattered = (0..formula.inputs).filter(|operand| ![0, in_a_row].contains(&stride(*operand))).count();
    let mut rooms = vec![[R::ZERO; BLOCK]; scattered];
    let mut start = 0;
    while start < count {
        let many = BLOCK.min(count - start);
        let mut columns: Inputs<_> = [Column::One(R::ZERO); _];
        let mut rooms = rooms.iter_mut();
        for (operand, column) in columns.iter_mut().enumerate().take(formula.inputs) {
            let first = at(operand, start).cast::<R>();
            // SAFETY: as the contract above. What is read here is not written before `fill` is done.
            unsafe {
                *column = if stride(operand) == 0 {
                    Column::One(*first)
                } else if stride(operand) == in_a_row {
                    Column::Each(core::slice::from_raw_parts(first, many))
                } else {
                    let room = rooms.next().expect("a room for each operand that is scattered");
                    for (element, place) in room.iter_mut().take(many).enumerate() {
                        *place = *at(operand, start + element).cast::<R>();
                    }
                    Column::Each(&room[..many])
                };
            }
        }
        if formula.fill(&columns, &mut results[..many], &mut valid[..many]) > 0 {
            for element in (0..many).filter(|element| !valid[*element]) {
                if refused == Refused::Nan {
                    results[element] = R::NAN;
                } else if let Err(refusal) = formula.evaluate(&columns, element) {
                    Python::attach(|py| Failure::from(refusal).raise(py).restore(py));
                    return -1;
                }
            }
        }
        let out = formula.inputs;
        for (element, result) in results[..many].iter().enumerate() {
            // SAFETY: as the contract above.
            unsafe {
                match output {
                    Output::Number => *at(out, start + element).cast::<R>() = *result,
                    Output::Truth => *at(out, start + element) = (*result != R::ZERO) as c_char,
                }
            }
        }
        start += many;
    }
    0
}

type Promoter = unsafe extern "C" fn(
    *mut ffi::PyObject,
    *const *mut ffi::PyObject,
    *const *mut ffi::PyObject,
    *mut *mut ffi::PyObject,
) -> c_int;

/// Which loop takes the operands: without this NumPy refuses plain floats and mixed types. Plain Python numbers go with
/// the type of the others.
///
/// # Safety
/// Called by NumPy alone, with one of the ufuncs of this file, a dtype class given for each of its operands and room for as
/// many, of which it takes over a reference each.
unsafe extern "C" fn promoter<const TRUTH: bool>(
    ufunc: *mut ffi::PyObject,
    given: *const *mut ffi::PyObject,
    _signature: *const *mut ffi::PyObject,
    wanted: *mut *mut ffi::PyObject,
) -> c_int {
    Python::attach(|py| {
        let choose = || -> PyResult<()> {
            let (double, single) = (dtype_class(py, "f8")?, dtype_class(py, "f4")?);
            // SAFETY: as the contract above.
            let inputs = unsafe { Bound::from_borrowed_ptr_or_err(py, ufunc) }?.getattr("nin")?.extract::<usize>()?;
            // SAFETY: as the contract above.
            let is = |class: &Bound<'_, PyAny>, operand| unsafe { *given.add(operand) == class.as_ptr() };
            let plain = |operand| -> PyResult<bool> {
                // SAFETY: as the contract above.
                let class = unsafe { Bound::from_borrowed_ptr_or_err(py, *given.add(operand)) }?;
                Ok(class.getattr("__name__")?.extract::<String>()?.starts_with("_Py"))
            };
            let mut all_single = (0..inputs).any(|operand| is(&single, operand));
            for operand in 0..inputs {
                all_single = all_single && (is(&single, operand) || plain(operand)?);
            }
            let number = if all_single { single } else { double };
            let result = if TRUTH { dtype_class(py, "?")? } else { number.clone() };
            // SAFETY: as the contract above; `into_ptr` gives the references away.
            unsafe {
                for operand in 0..inputs {
                    *wanted.add(operand) = number.clone().into_ptr();
                }
                *wanted.add(inputs) = result.into_ptr();
            }
            Ok(())
        };
        choose().map_or_else(
            |error| {
                error.restore(py);
                -1
            },
            |()| 0,
        )
    })
}

/// NumPy's class of the dtype with this code.
fn dtype_class<'py>(py: Python<'py>, code: &str) -> PyResult<Bound<'py, PyAny>> {
    Ok(py.import("numpy")?.getattr("dtype")?.call1((code,))?.get_type().into_any())
}
