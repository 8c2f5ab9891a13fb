//! NumPy arrays seen as slices, without a copy. With `ufunc` the only file with unsafe code.
//!
//! The layout of `PyArrayObject_fields` and the head of `PyArray_Descr` are part of NumPy's stable interface
//! (`numpy/ndarraytypes.h`).

use core::ffi::{c_char, c_int};

use pyo3::ffi;
use pyo3::prelude::*;
use pyo3::sync::PyOnceLock;

/// `PyArrayObject_fields`, as far as it is read here.
#[repr(C)]
struct Fields {
    _base: ffi::PyObject,
    data: *mut c_char,
    dimensions: c_int,
    shape: *const isize,
    _strides: *const isize,
    _owner: *mut ffi::PyObject,
    descr: *const Descr,
    flags: c_int,
}

/// `PyArray_Descr`, as far as it is read here.
#[repr(C)]
struct Descr {
    _base: ffi::PyObject,
    _type: *mut ffi::PyTypeObject,
    kind: c_char,
    code: c_char,
    byte_order: c_char,
}

const C_CONTIGUOUS: c_int = 0x0001;
const ALIGNED: c_int = 0x0100;
const WRITEABLE: c_int = 0x0400;

/// What an array may hold to be seen as a slice.
///
/// # Safety
/// The letter is NumPy's for exactly this type, and any bits are one of its values.
pub unsafe trait Element: Copy {
    /// The letter that stands for it in an array's own description.
    const LETTER: u8;
}

// SAFETY: as `numpy/ndarraytypes.h` has them.
unsafe impl Element for f64 {
    const LETTER: u8 = b'd';
}
// SAFETY: as above.
unsafe impl Element for f32 {
    const LETTER: u8 = b'f';
}
// SAFETY: as above.
unsafe impl Element for u8 {
    const LETTER: u8 = b'B';
}

/// A NumPy array, and nothing derived from one.
pub struct Array<'py> {
    array: Bound<'py, PyAny>,
}

impl<'py> Array<'py> {
    /// The array, if it is one.
    pub fn of(value: &Bound<'py, PyAny>) -> PyResult<Option<Array<'py>>> {
        static CLASS: PyOnceLock<Py<PyAny>> = PyOnceLock::new();
        let class = CLASS.import(value.py(), "numpy", "ndarray")?;
        Ok(value.get_type().is(class).then(|| Array { array: value.clone() }))
    }

    fn fields(&self) -> &Fields {
        // SAFETY: `of` lets only NumPy's own arrays in, which have this layout, and the reference keeps it alive.
        unsafe { &*self.array.as_ptr().cast::<Fields>() }
    }

    fn descr(&self) -> &Descr {
        // SAFETY: every array has a type, of this layout.
        unsafe { &*self.fields().descr }
    }

    /// The array itself.
    pub fn object(&self) -> &Bound<'py, PyAny> {
        &self.array
    }

    /// How long it is in each dimension.
    pub fn shape(&self) -> &[isize] {
        let fields = self.fields();
        if fields.dimensions == 0 {
            return &[];
        }
        // SAFETY: so many lengths stand there; `ndarray.resize` refuses while there is another reference.
        unsafe { core::slice::from_raw_parts(fields.shape, fields.dimensions as usize) }
    }

    /// How many elements it has.
    pub fn len(&self) -> usize {
        self.shape().iter().product::<isize>() as usize
    }

    /// Whether it holds floats or whole numbers of any size.
    pub fn is_numeric(&self) -> bool {
        matches!(self.descr().kind as u8, b'f' | b'i' | b'u')
    }

    /// Whether its elements are of this type, in any order of bytes.
    pub fn is_of<E: Element>(&self) -> bool {
        self.descr().code as u8 == E::LETTER
    }

    /// Whether its elements are of this type, in this machine's order of bytes.
    pub fn holds<E: Element>(&self) -> bool {
        self.is_of::<E>() && matches!(self.descr().byte_order as u8, b'=' | b'|')
    }

    /// Whether its elements lie one behind the other, where this type can be read.
    pub fn is_plain<E: Element>(&self) -> bool {
        self.holds::<E>() && self.fields().flags & (C_CONTIGUOUS | ALIGNED) == (C_CONTIGUOUS | ALIGNED)
    }

    /// Whether it may be written to.
    pub fn is_writeable(&self) -> bool {
        self.fields().flags & WRITEABLE != 0
    }

    /// Whether the memory of the two, both plain, has a byte in common.
    pub fn overlaps<E: Element>(&self, other: &Array<'_>) -> bool {
        let span = |array: &Array<'_>| {
            let start = array.fields().data as usize;
            start..start + array.len() * size_of::<E>()
        };
        let (a, b) = (span(self), span(other));
        a.start < b.end && b.start < a.end
    }

    /// Its elements; `None` unless it is plain.
    pub fn slice<E: Element>(&self) -> Option<&[E]> {
        if !self.is_plain::<E>() {
            return None;
        }
        if self.len() == 0 {
            return Some(&[]);
        }
        // SAFETY: so many aligned elements of this type lie there. As everywhere in NumPy, who writes to an array in one
        // thread while another computes with it gets numbers of either moment.
        Some(unsafe { core::slice::from_raw_parts(self.fields().data.cast::<E>(), self.len()) })
    }

    /// Its elements, to be written; `None` unless it is plain and may be written to.
    ///
    /// # Safety
    /// No other slice of the same memory is in use.
    pub unsafe fn slice_mut<E: Element>(&mut self) -> Option<&mut [E]> {
        if !self.is_plain::<E>() || !self.is_writeable() {
            return None;
        }
        if self.len() == 0 {
            return Some(&mut []);
        }
        // SAFETY: as above, and the caller's promise.
        Some(unsafe { core::slice::from_raw_parts_mut(self.fields().data.cast::<E>(), self.len()) })
    }
}
