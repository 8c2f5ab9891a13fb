//! What a function answers: its status, and the detail of a failure as plain numbers.

use core::mem::{offset_of, size_of};

use reckohm::number::Detail;
#[cfg(feature = "text")]
use reckohm::number::Kind;

/// What a function answers: `RKO_OK`, or the number of what went wrong.
pub type rko_status = i32;

/// The function did what it was asked for, and its outputs are written.
pub const RKO_OK: rko_status = 0;

/// The version of this binary interface. It grows with every change that a compiled caller would feel.
pub const RKO_ABI_VERSION: u32 = 1;

/// A failure as plain numbers.
///
/// Every function takes a pointer to one as its last argument, which may be null. When it is not, each call writes it:
/// all zero after a success, so that it never speaks of an earlier call. Fields that a failure does not use are 0.
/// `rko_detail_text` turns it into a sentence.
#[repr(C)]
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct rko_detail {
    /// What was given, in the unit of the argument it speaks of.
    pub given: f64,
    /// The lower end of what is allowed.
    pub lower: f64,
    /// The upper end of what is allowed.
    pub upper: f64,
    /// Where, from 0: the element of an array, the byte of a text, the band of a marking.
    pub index: u64,
    /// How many elements of the array failed in all; 0 outside arrays.
    pub failed: u64,
    /// What went wrong: the status. In a call with a mask it is that of the first bad element.
    pub status: i32,
    /// The number of the range concerned, as listed at the head of this file; 0 if none.
    pub row: u16,
    /// Which of several arguments or cases; for a null pointer the position of the argument, from 1.
    pub argument: u16,
}

const _: () = {
    assert!(size_of::<rko_detail>() == 48);
    assert!(offset_of!(rko_detail, given) == 0);
    assert!(offset_of!(rko_detail, lower) == 8);
    assert!(offset_of!(rko_detail, upper) == 16);
    assert!(offset_of!(rko_detail, index) == 24);
    assert!(offset_of!(rko_detail, failed) == 32);
    assert!(offset_of!(rko_detail, status) == 40);
    assert!(offset_of!(rko_detail, row) == 44);
    assert!(offset_of!(rko_detail, argument) == 46);
};

impl rko_detail {
    /// What a success leaves behind.
    pub(crate) const NONE: rko_detail =
        rko_detail { given: 0.0, lower: 0.0, upper: 0.0, index: 0, failed: 0, status: RKO_OK, row: 0, argument: 0 };

    /// The same numbers as the core has them, if the status is one of the listed ones.
    #[cfg(feature = "text")]
    pub(crate) fn to_core(self) -> Option<Detail> {
        let rko_detail { given, lower, upper, index, failed, status, row, argument } = self;
        Some(Detail { kind: Kind::from_number(status)?, row, argument, given, lower, upper, index, failed })
    }
}

impl From<Detail> for rko_detail {
    fn from(detail: Detail) -> rko_detail {
        let Detail { kind, row, argument, given, lower, upper, index, failed } = detail;
        rko_detail { given, lower, upper, index, failed, status: kind.number(), row, argument }
    }
}

/// The version of the binary interface that the library was built with. A program compares it with `RKO_ABI_VERSION`
/// of the header that it was compiled with, and does not go on when they differ.
///
/// Returns: the version, a whole number from 1.
#[unsafe(no_mangle)]
pub extern "C" fn rko_abi_version() -> u32 {
    RKO_ABI_VERSION
}
