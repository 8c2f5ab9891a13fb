//! Texts into the caller's room: counted first, written only if they fit.

use core::ffi::c_char;
use core::fmt::{self, Display, Write};

use reckohm::number::{Detail, Kind};

use crate::answer::{DoorError, Outcome, answer};
use crate::area;
use crate::detail::{rko_detail, rko_status};
use crate::pointer::{item, place};

/// Bytes that hold every text of this library with its closing zero.
pub const RKO_TEXT_CAPACITY: usize = 1024;

/// Counts the bytes of a text.
struct Counted(usize);

impl Write for Counted {
    fn write_str(&mut self, part: &str) -> fmt::Result {
        self.0 += part.len();
        Ok(())
    }
}

/// Writes a text to bytes that are known to be enough.
struct Room {
    next: *mut u8,
    left: usize,
}

impl Write for Room {
    fn write_str(&mut self, part: &str) -> fmt::Result {
        if part.len() > self.left {
            return Err(fmt::Error);
        }
        // SAFETY: `left` bytes can be written from `next` on, and a text never overlaps its own room.
        unsafe {
            core::ptr::copy_nonoverlapping(part.as_ptr(), self.next, part.len());
            self.next = self.next.add(part.len());
        }
        self.left -= part.len();
        Ok(())
    }
}

/// Writes a text with its closing zero into `capacity` bytes at `buffer`, or nothing at all.
pub(crate) unsafe fn write_text(
    text: &dyn Display,
    buffer: *mut c_char,
    capacity: usize,
    position: u16,
) -> Outcome<()> {
    let buffer = place(buffer, position)?.cast::<u8>();
    let mut counted = Counted(0);
    // Counting never fails, and no text of the core's does.
    let _ = write!(counted, "{text}");
    let needed = counted.0.saturating_add(1);
    if needed > capacity {
        return Err(DoorError::BufferTooSmall { needed: needed as u64, capacity: capacity as f64 }.into());
    }
    let mut room = Room { next: buffer, left: capacity - 1 };
    let _ = write!(room, "{text}");
    // SAFETY: `left` counted one byte less than there is.
    unsafe { room.next.write(0) };
    Ok(())
}

/// The sentence of a failure, made by the same words as in the other doors.
struct Sentence(rko_detail);

impl Display for Sentence {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let rko_detail { status, index, failed, .. } = self.0;
        if status == 0 {
            return f.write_str("no failure");
        }
        let Some(detail) = self.0.to_core() else {
            return write!(
                f,
                "status {status} is none of this library's; see that header and library are of one version"
            );
        };
        if let Some(error) = DoorError::from_detail(&detail) {
            return error.fmt(f);
        }
        if failed > 0 && !area::names_elements(&detail) {
            write!(f, "element {index}, the first of {failed} that failed: ")?;
        }
        let detail = match detail.kind {
            // In an array of texts the index is the element, and the byte is the lower end.
            Kind::UnexpectedByte | Kind::MissingDigits | Kind::MarkNotOfSpan if failed > 0 => {
                Detail { index: detail.lower as u64, lower: 0.0, ..detail }
            }
            _ => detail,
        };
        area::sentence(&detail, f).unwrap_or_else(|| f.write_str(detail.kind.meaning()))
    }
}

/// The full text of a failure, for a person to read: what was attempted, what was given, what is allowed, and a hint.
/// Only in libraries built for hosts.
///
/// Given: `of`, as a function has written it; `buffer`, of `capacity` bytes.
/// Written: the text in UTF-8 with a closing zero.
/// Statuses: `RKO_NULL_POINTER`; `RKO_BUFFER_TOO_SMALL`, when nothing is written and the detail's `index` is the number
/// of bytes needed (`RKO_TEXT_CAPACITY` is always enough). `of` and `detail` may be the same.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rko_detail_text(
    of: *const rko_detail,
    buffer: *mut c_char,
    capacity: usize,
    detail: *mut rko_detail,
) -> rko_status {
    unsafe {
        answer(detail, || {
            let of = *item(of, 1)?;
            write_text(&Sentence(of), buffer, capacity, 2)
        })
    }
}
