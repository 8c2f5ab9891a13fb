//! Functions and structs for `double` and their twins for `float`, each written once.

/// The type in a signature or struct for `double` as its twin has it.
macro_rules! in_float {
    (f64) => {
        f32
    };
    ([f64; $count:literal]) => {
        [f32; $count]
    };
    (rko_auto_ranger) => {
        crate::auto_ranger::rko_auto_ranger_f32
    };
    (rko_b_value_thermistor) => {
        crate::sensor::rko_b_value_thermistor_f32
    };
    (rko_decision) => {
        crate::verdict::rko_decision_f32
    };
    (rko_estimate) => {
        crate::estimate::rko_estimate_f32
    };
    (rko_expanded) => {
        crate::estimate::rko_expanded_f32
    };
    (rko_limits) => {
        crate::limits::rko_limits_f32
    };
    (rko_prepared_span) => {
        crate::prepared::rko_prepared_span_f32
    };
    (rko_reading) => {
        crate::reading::rko_reading_f32
    };
    (rko_rule) => {
        crate::rule::rko_rule_f32
    };
    (rko_span) => {
        crate::span::rko_span_f32
    };
    (rko_steinhart_hart) => {
        crate::sensor::rko_steinhart_hart_f32
    };
    (rko_verdict) => {
        crate::verdict::rko_verdict_f32
    };
    ($both:tt) => {
        $both
    };
}
pub(crate) use in_float;

/// Makes functions of the C door in pairs, `fn rko_name = rko_name_f32(…)`, written as the one for `double`. The body is
/// compiled once for each: what it asks of the core follows from the types of the signature, and where the core's functions
/// have names of their own for each, `asked` has the right ones of those behind `asking`.
macro_rules! twins {
    ($(
        $(#[$about:meta])*
        fn $double:ident = $float:ident($($argument:ident: $(*$pointer:ident)? $type:ident),* $(,)?)
        $(asking $area:ident: $($asked:ident = $asked_in_float:ident),+)?
        { $($body:tt)* }
    )+) => {$(
        $(#[$about])*
        #[allow(clippy::too_many_arguments)]
        #[unsafe(no_mangle)]
        pub unsafe extern "C" fn $double($($argument: $(*$pointer)? $type),*) -> crate::detail::rko_status {
            $(mod asked { pub(super) use reckohm::$area::{$($asked),+}; })?
            unsafe { $($body)* }
        }

        #[doc = concat!(" `", stringify!($double), "` for `float`.")]
        #[allow(clippy::too_many_arguments)]
        #[unsafe(no_mangle)]
        pub unsafe extern "C" fn $float(
            $($argument: $(*$pointer)? crate::twins::in_float!($type)),*
        ) -> crate::detail::rko_status {
            $(mod asked { pub(super) use reckohm::$area::{$($asked_in_float as $asked),+}; })?
            unsafe { $($body)* }
        }
    )+};
}
pub(crate) use twins;

/// Makes structs of the C door in pairs, `struct rko_name = rko_name_f32`, written as the one for `double`. The numbers in
/// brackets are sizes and offsets, first of the one and then of the other: none ever changes.
macro_rules! twin_structs {
    ($(
        $(#[$about:meta])*
        struct $double:ident = $float:ident [$size:literal, $size_in_float:literal] {
            $($(#[$about_member:meta])* $member:ident: $type:tt [$offset:literal, $offset_in_float:literal],)+
        }
    )+) => {$(
        $(#[$about])*
        #[repr(C)]
        #[derive(Clone, Copy, Debug, PartialEq)]
        pub struct $double {
            $($(#[$about_member])* pub $member: $type,)+
        }

        #[doc = concat!(" `", stringify!($double), "` for `float`: the members mean the same.")]
        #[allow(missing_docs)]
        #[repr(C)]
        #[derive(Clone, Copy, Debug, PartialEq)]
        pub struct $float {
            $(pub $member: crate::twins::in_float!($type),)+
        }

        const _: () = {
            use core::mem::{offset_of, size_of};
            assert!(size_of::<$double>() == $size && size_of::<$float>() == $size_in_float);
            $(
                assert!(offset_of!($double, $member) == $offset);
                assert!(offset_of!($float, $member) == $offset_in_float);
            )+
        };
    )+};
}
pub(crate) use twin_structs;
