//! Limits of a resistance.

use reckohm::verdict::Limits;

use crate::answer::{Outcome, one};
use crate::detail::rko_detail;
use crate::pointer::item;
use crate::twins::{twin_structs, twins};

twin_structs! {
    /// Limits of a resistance, both included. An infinite end is left open; at least one is finite.
    struct rko_limits = rko_limits_f32 [16, 8] {
        /// The lower end in ohm; minus infinity leaves it open.
        lower_ohm: f64 [0, 0],
        /// The upper end in ohm; infinity leaves it open.
        upper_ohm: f64 [8, 4],
    }
}

macro_rules! of_the_core {
    ($($real:ident: $limits:ident;)+) => {$(
        impl $limits {
            // Inlined, so that small processors do not copy what comes out from one stack frame to the next.
            #[inline(always)]
            pub(crate) fn to_core(self) -> Outcome<Limits<$real>> {
                Ok(Limits::new(self.lower_ohm, self.upper_ohm)?)
            }
        }

        impl From<Limits<$real>> for $limits {
            fn from(limits: Limits<$real>) -> $limits {
                $limits { lower_ohm: limits.lower_ohm(), upper_ohm: limits.upper_ohm() }
            }
        }
    )+};
}

of_the_core! {
    f64: rko_limits;
    f32: rko_limits_f32;
}

twins! {
    /// Limits from their two ends.
    ///
    /// Given: `lower_ohm`, minus infinity for none; `upper_ohm`, infinity for none, not below the lower one.
    /// Written: `limits`.
    /// Statuses: `RKO_NOT_FINITE`, `RKO_EMPTY` (both open), `RKO_CONTRADICTION` (crossed), `RKO_NULL_POINTER`.
    /// Source: JCGM 106 3.3.
    fn rko_limits_new = rko_limits_new_f32(
        lower_ohm: f64,
        upper_ohm: f64,
        limits: *mut rko_limits,
        detail: *mut rko_detail,
    ) {
        one(limits, 3, detail, || Ok(Limits::new(lower_ohm, upper_ohm)?.into()))
    }

    /// An upper limit alone: a contact, a fuse, a zero-ohm link.
    ///
    /// Given: `upper_ohm`, finite.
    /// Written: `limits`.
    /// Statuses: `RKO_NOT_FINITE`, `RKO_EMPTY`, `RKO_NULL_POINTER`.
    fn rko_limits_at_most = rko_limits_at_most_f32(upper_ohm: f64, limits: *mut rko_limits, detail: *mut rko_detail) {
        one(limits, 2, detail, || Ok(Limits::at_most(upper_ohm)?.into()))
    }

    /// A lower limit alone: the dark resistance of a photoresistor.
    ///
    /// Given: `lower_ohm`, finite.
    /// Written: `limits`.
    /// Statuses: `RKO_NOT_FINITE`, `RKO_EMPTY`, `RKO_NULL_POINTER`.
    fn rko_limits_at_least = rko_limits_at_least_f32(lower_ohm: f64, limits: *mut rko_limits, detail: *mut rko_detail) {
        one(limits, 2, detail, || Ok(Limits::at_least(lower_ohm)?.into()))
    }

    /// Limits around a nominal value, computed in decimals and rounded once.
    ///
    /// Given: `nominal_ohm`, in (0, 1e15]; `tolerance`, a fraction in (0, 1).
    /// Written: `limits`.
    /// Statuses: `RKO_OUT_OF_RANGE`, `RKO_NOT_FINITE`, `RKO_NULL_POINTER`.
    fn rko_limits_from_tolerance = rko_limits_from_tolerance_f32(
        nominal_ohm: f64,
        tolerance: f64,
        limits: *mut rko_limits,
        detail: *mut rko_detail,
    ) {
        one(limits, 3, detail, || Ok(Limits::from_tolerance(nominal_ohm, tolerance)?.into()))
    }

    /// Whether a resistance lies within limits, both ends included.
    ///
    /// Given: `limits`; `ohm`, any number; NaN never lies within.
    /// Written: `contains`, 1 if it does, else 0.
    /// Statuses: `RKO_NOT_FINITE`, `RKO_EMPTY`, `RKO_CONTRADICTION`, for the limits; `RKO_NULL_POINTER`.
    fn rko_limits_contains = rko_limits_contains_f32(
        limits: *const rko_limits,
        ohm: f64,
        contains: *mut u8,
        detail: *mut rko_detail,
    ) {
        one(contains, 3, detail, || Ok(u8::from(item(limits, 1)?.to_core()?.contains(ohm))))
    }
}
