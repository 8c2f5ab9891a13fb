//! Short texts into the caller's room, without formatting.

use core::ffi::c_char;

use crate::answer::{DoorError, Outcome};

/// Writes bytes with a closing zero into `capacity` bytes at `buffer`, or nothing at all.
pub(crate) unsafe fn write_bytes(bytes: &[u8], buffer: *mut c_char, capacity: usize) -> Outcome<()> {
    let needed = bytes.len().saturating_add(1);
    if needed > capacity {
        return Err(DoorError::BufferTooSmall { needed: needed as u64, capacity: capacity as f64 }.into());
    }
    // SAFETY: the caller promises `capacity` bytes at `buffer`, which never overlap a text of our own.
    unsafe {
        core::ptr::copy_nonoverlapping(bytes.as_ptr(), buffer.cast::<u8>(), bytes.len());
        buffer.add(bytes.len()).write(0);
    }
    Ok(())
}
