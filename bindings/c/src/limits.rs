//! Limits of a resistance.

use core::mem::{offset_of, size_of};

use reckohm::verdict::Limits;

use crate::answer::{Outcome, one};
use crate::detail::{rko_detail, rko_status};
use crate::pointer::item;

/// Limits of a resistance, both included. An infinite end is left open; at least one is finite.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct rko_limits {
    /// The lower end in ohm; minus infinity leaves it open.
    pub lower_ohm: f64,
    /// The upper end in ohm; infinity leaves it open.
    pub upper_ohm: f64,
}

const _: () = {
    assert!(size_of::<rko_limits>() == 16);
    assert!(offset_of!(rko_limits, lower_ohm) == 0);
    assert!(offset_of!(rko_limits, upper_ohm) == 8);
};

/// As `rko_limits`, for `float`.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct rko_limits_f32 {
    /// As of `rko_limits`.
    pub lower_ohm: f32,
    /// As of `rko_limits`.
    pub upper_ohm: f32,
}

const _: () = {
    assert!(size_of::<rko_limits_f32>() == 8);
    assert!(offset_of!(rko_limits_f32, lower_ohm) == 0);
    assert!(offset_of!(rko_limits_f32, upper_ohm) == 4);
};

macro_rules! to_and_from_core {
    ($plain:ident, $number:ty) => {
        impl $plain {
            pub(crate) fn to_core(self) -> Outcome<Limits<$number>> {
                Ok(Limits::new(self.lower_ohm, self.upper_ohm)?)
            }
        }

        impl From<Limits<$number>> for $plain {
            fn from(limits: Limits<$number>) -> $plain {
                $plain { lower_ohm: limits.lower_ohm(), upper_ohm: limits.upper_ohm() }
            }
        }
    };
}
to_and_from_core!(rko_limits, f64);
to_and_from_core!(rko_limits_f32, f32);

/// Limits from their two ends.
///
/// Given: `lower_ohm`, minus infinity for none; `upper_ohm`, infinity for none, not below the lower one.
/// Written: `limits`.
/// Statuses: `RKO_NOT_FINITE`, `RKO_EMPTY` (both open), `RKO_CONTRADICTION` (crossed), `RKO_NULL_POINTER`.
/// Source: JCGM 106 3.3.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rko_limits_new(
    lower_ohm: f64,
    upper_ohm: f64,
    limits: *mut rko_limits,
    detail: *mut rko_detail,
) -> rko_status {
    unsafe { one(limits, 3, detail, || Ok(Limits::new(lower_ohm, upper_ohm)?.into())) }
}

/// An upper limit alone: a contact, a fuse, a zero-ohm link.
///
/// Given: `upper_ohm`, finite.
/// Written: `limits`.
/// Statuses: `RKO_NOT_FINITE`, `RKO_EMPTY`, `RKO_NULL_POINTER`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rko_limits_at_most(
    upper_ohm: f64,
    limits: *mut rko_limits,
    detail: *mut rko_detail,
) -> rko_status {
    unsafe { one(limits, 2, detail, || Ok(Limits::at_most(upper_ohm)?.into())) }
}

/// A lower limit alone: the dark resistance of a photoresistor.
///
/// Given: `lower_ohm`, finite.
/// Written: `limits`.
/// Statuses: `RKO_NOT_FINITE`, `RKO_EMPTY`, `RKO_NULL_POINTER`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rko_limits_at_least(
    lower_ohm: f64,
    limits: *mut rko_limits,
    detail: *mut rko_detail,
) -> rko_status {
    unsafe { one(limits, 2, detail, || Ok(Limits::at_least(lower_ohm)?.into())) }
}

/// Limits around a nominal value, computed in decimals and rounded once.
///
/// Given: `nominal_ohm`, in (0, 1e15]; `tolerance`, a fraction in (0, 1).
/// Written: `limits`.
/// Statuses: `RKO_OUT_OF_RANGE`, `RKO_NOT_FINITE`, `RKO_NULL_POINTER`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rko_limits_from_tolerance(
    nominal_ohm: f64,
    tolerance: f64,
    limits: *mut rko_limits,
    detail: *mut rko_detail,
) -> rko_status {
    unsafe { one(limits, 3, detail, || Ok(Limits::from_tolerance(nominal_ohm, tolerance)?.into())) }
}

/// Whether a resistance lies within limits, both ends included.
///
/// Given: `limits`; `ohm`, any number; NaN never lies within.
/// Written: `contains`, 1 if it does, else 0.
/// Statuses: `RKO_NOT_FINITE`, `RKO_EMPTY`, `RKO_CONTRADICTION`, for the limits; `RKO_NULL_POINTER`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rko_limits_contains(
    limits: *const rko_limits,
    ohm: f64,
    contains: *mut u8,
    detail: *mut rko_detail,
) -> rko_status {
    unsafe { one(contains, 3, detail, || Ok(u8::from(item(limits, 1)?.to_core()?.contains(ohm)))) }
}
