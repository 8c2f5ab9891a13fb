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
use crate::slices::Element;

/// A formula of `N` numbers of type `R`. A zero-size type, since a closure has no address that NumPy could call.
pub trait Kernel<const N: usize, R: Real>: 'static {
    /// The error of the core; its text is made only where it is raised.
    type Error: Into<Failure>;

    /// From so many elements on a thread more is worth it, as measured by `cargo xtask bench growth`.
    const LEAST_A_THREAD: usize;

    /// The result, or why there is none.
    fn evaluate(inputs: [R; N]) -> Result<R, Self::Error>;

    /// Writes the result of each element that has one and says which those are; gives how many have none. What the core has
    /// a function of arrays for is asked of that.
    fn fill(inputs: [Column<'_, R>; N], out: &mut [R], valid: &mut [bool]) -> usize {
        by_itself::<Self, R, N>(inputs, out, valid)
    }

    /// Whether each of so many elements has a result.
    fn takes(inputs: [Column<'_, R>; N], count: usize) -> bool {
        each_takes::<Self, R, N>(inputs, count)
    }
}

/// What [`Kernel::fill`] is where nothing is quicker: each element by itself.
pub fn by_itself<K: Kernel<N, R> + ?Sized, R: Real, const N: usize>(
    inputs: [Column<'_, R>; N],
    out: &mut [R],
    valid: &mut [bool],
) -> usize {
    let mut refused = 0;
    for (index, (place, valid)) in out.iter_mut().zip(valid).enumerate() {
        let result = K::evaluate(inputs.map(|input| at(input, index)));
        *valid = result.is_ok();
        match result {
            Ok(result) => *place = result,
            Err(_) => refused += 1,
        }
    }
    refused
}

/// What [`Kernel::takes`] is where nothing is quicker.
pub fn each_takes<K: Kernel<N, R> + ?Sized, R: Real, const N: usize>(inputs: [Column<'_, R>; N], count: usize) -> bool {
    (0..count).all(|index| K::evaluate(inputs.map(|input| at(input, index))).is_ok())
}

/// One of a column's numbers.
pub fn at<R: Real>(column: Column<'_, R>, index: usize) -> R {
    match column {
        Column::One(x) => x,
        Column::Each(all) => all[index],
    }
}

/// The number types that have a loop.
pub trait Real: reckohm::number::Real + Element {
    /// NumPy's code of the type.
    const CODE: &'static str;
    const NAN: Self;
}

impl Real for f64 {
    const CODE: &'static str = "f8";
    const NAN: f64 = f64::NAN;
}

impl Real for f32 {
    const CODE: &'static str = "f4";
    const NAN: f32 = f32::NAN;
}

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

/// A new ufunc of `N` numbers, without a loop as yet: one for `float32`, which it takes as it is, and one for `float64`, as
/// which all else is taken, are to be added.
pub fn new<'py, const N: usize>(py: Python<'py>, name: &str, output: Output) -> PyResult<Bound<'py, PyAny>> {
    // NumPy keeps the pointer: the name lives as long as the process.
    let name: &'static CStr = Box::leak(CString::new(name)?.into_boxed_c_str());
    let promote: Promoter = match output {
        Output::Number => promoter::<N, false>,
        Output::Truth => promoter::<N, true>,
    };
    let table = Table::of(py)?;
    let any_dtype = py.import("numpy")?.getattr("dtype")?;
    let operands = PyTuple::new(py, core::iter::repeat_n(any_dtype, N + 1))?;
    // SAFETY: the pointer types are those of NumPy's declarations, all that is passed outlives the calls, and a promoter's
    // capsule has the name that NumPy asks for.
    unsafe {
        let from_func_and_data: FromFuncAndData = table.slot(SLOT_FROM_FUNC_AND_DATA)?;
        let add_promoter: AddPromoter = table.slot(SLOT_ADD_PROMOTER)?;
        let (inputs, text) = (N as c_int, c"".as_ptr());
        let made = from_func_and_data(null(), null(), null(), 0, inputs, 1, IDENTITY_NONE, name.as_ptr(), text, 0);
        let ufunc = Bound::from_owned_ptr_or_err(py, made)?;
        let promote = PyCapsule::new_with_pointer(py, NonNull::new_unchecked(promote as *mut c_void), PROMOTER_NAME)?;
        if add_promoter(ufunc.as_ptr(), operands.as_ptr(), promote.as_ptr()) < 0 {
            return Err(PyErr::fetch(py));
        }
        Ok(ufunc)
    }
}

/// Adds the loop over numbers of type `R` to a ufunc.
pub fn add_loop<K: Kernel<N, R>, R: Real, const N: usize>(
    ufunc: &Bound<'_, PyAny>,
    refused: Refused,
    output: Output,
) -> PyResult<()> {
    let py = ufunc.py();
    let strided: Loop = match (refused, output) {
        (Refused::Raise, Output::Number) => strided_loop::<K, R, N, true, false>,
        (Refused::Nan, Output::Number) => strided_loop::<K, R, N, false, false>,
        (_, Output::Truth) => strided_loop::<K, R, N, true, true>,
    };
    let number = dtype_class(py, R::CODE)?;
    let result = dtype_class(py, if output == Output::Truth { "?" } else { R::CODE })?;
    let mut dtypes: Vec<_> = core::iter::repeat_n(number.as_ptr(), N).chain([result.as_ptr()]).collect();
    let mut slots = [
        ffi::PyType_Slot { slot: METHOD_STRIDED_LOOP, pfunc: strided as *mut c_void },
        ffi::PyType_Slot { slot: 0, pfunc: null_mut() },
    ];
    let mut spec = Spec {
        name: c"reckohm".as_ptr(),
        inputs: N as c_int,
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

/// So many elements are computed at a time; where they do not lie one behind the other they are gathered first.
const BLOCK: usize = 512;

/// The loop over one stretch of elements. NumPy calls it without the interpreter lock.
///
/// # Safety
/// Called by NumPy alone, with `N + 1` pointers and strides of aligned numbers of type `R` (the last a byte if `TRUTH`) and as many
/// elements as it says. The output may be one of the inputs, element by element.
unsafe extern "C" fn strided_loop<K: Kernel<N, R>, R: Real, const N: usize, const RAISE: bool, const TRUTH: bool>(
    _context: *mut c_void,
    data: *const *mut c_char,
    dimensions: *const isize,
    strides: *const isize,
    _auxiliary: *mut c_void,
) -> c_int {
    let mut gathered = [[R::ZERO; BLOCK]; N];
    let (mut results, mut valid) = ([R::ZERO; BLOCK], [true; BLOCK]);
    // SAFETY: as the contract above.
    let (count, at) = unsafe {
        let at = |operand: usize, element: usize| (*data.add(operand)).offset(element as isize * *strides.add(operand));
        (*dimensions as usize, at)
    };
    let mut start = 0;
    while start < count {
        let many = BLOCK.min(count - start);
        let mut rooms = gathered.iter_mut();
        // SAFETY: as the contract above. What is read here is not written before `fill` is done.
        let inputs: [Column<'_, R>; N] = core::array::from_fn(|operand| unsafe {
            let first = at(operand, start).cast::<R>();
            let stride = *strides.add(operand);
            match rooms.next() {
                _ if stride == 0 => Column::One(*first),
                _ if stride == size_of::<R>() as isize => Column::Each(core::slice::from_raw_parts(first, many)),
                Some(room) => {
                    for (element, place) in room.iter_mut().take(many).enumerate() {
                        *place = *at(operand, start + element).cast::<R>();
                    }
                    Column::Each(&room[..many])
                }
                None => Column::One(*first),
            }
        });
        let refused = K::fill(inputs, &mut results[..many], &mut valid[..many]);
        if refused > 0 {
            for element in (0..many).filter(|element| !valid[*element]) {
                if !RAISE {
                    results[element] = R::NAN;
                } else if let Err(failure) = K::evaluate(inputs.map(|input| self::at(input, element))) {
                    Python::attach(|py| failure.into().raise(py).restore(py));
                    return -1;
                }
            }
        }
        for (element, result) in results[..many].iter().enumerate() {
            // SAFETY: as the contract above.
            unsafe {
                if TRUTH {
                    *at(N, start + element) = (*result != R::ZERO) as c_char;
                } else {
                    *at(N, start + element).cast::<R>() = *result;
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
/// Called by NumPy alone, with `N + 1` dtype classes given and room for as many, of which it takes over a reference each.
unsafe extern "C" fn promoter<const N: usize, const TRUTH: bool>(
    _ufunc: *mut ffi::PyObject,
    given: *const *mut ffi::PyObject,
    _signature: *const *mut ffi::PyObject,
    wanted: *mut *mut ffi::PyObject,
) -> c_int {
    Python::attach(|py| {
        let choose = || -> PyResult<()> {
            let (double, single) = (dtype_class(py, "f8")?, dtype_class(py, "f4")?);
            // SAFETY: as the contract above.
            let is = |class: &Bound<'_, PyAny>, operand| unsafe { *given.add(operand) == class.as_ptr() };
            let plain = |operand| -> PyResult<bool> {
                // SAFETY: as the contract above.
                let class = unsafe { Bound::from_borrowed_ptr_or_err(py, *given.add(operand)) }?;
                Ok(class.getattr("__name__")?.extract::<String>()?.starts_with("_Py"))
            };
            let mut all_single = (0..N).any(|operand| is(&single, operand));
            for operand in 0..N {
                all_single = all_single && (is(&single, operand) || plain(operand)?);
            }
            let number = if all_single { single } else { double };
            let result = if TRUTH { dtype_class(py, "?")? } else { number.clone() };
            // SAFETY: as the contract above; `into_ptr` gives the references away.
            unsafe {
                for operand in 0..N {
                    *wanted.add(operand) = number.clone().into_ptr();
                }
                *wanted.add(N) = result.into_ptr();
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
