//! Preferred values.

use core::ffi::c_char;

use reckohm::preferred::{self, Series};

use crate::answer::{Outcome, code, one};
use crate::array::{Results, array, twice};
use crate::detail::{rko_detail, rko_status};
use crate::parts::{Asked, in_parts};
use crate::pointer::{element, items, items_mut};
use crate::twins::twins;

/// From so many elements on a thread is worth it.
const LEAST: usize = 1 << 14;

fn named(series: u32, argument: u16) -> Outcome<Series> {
    code(series, argument, Series::from_count)
}

/// The values of one decade, in [1, 10), in ascending order.
///
/// Given: `series`, its number of values in a decade: 3, 6, 12, 24, 48, 96 or 192.
/// Written: `values`, as many as `series` says.
/// Statuses: `RKO_UNKNOWN_CODE`, `RKO_NULL_POINTER`.
/// Source: IEC 60063:2015.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rko_preferred_decade(series: u32, values: *mut f64, detail: *mut rko_detail) -> rko_status {
    unsafe {
        crate::answer::answer(detail, || {
            let series = named(series, 1)?;
            let values = items_mut(values, usize::from(series.count()), 2)?;
            Ok(preferred::decade_into(series, values)?)
        })
    }
}

twins! {
    /// The preferred value with the least |v - ohm|/ohm, the lower one on a tie. Values of the next decade count.
    ///
    /// Given: `ohm`, in (0, 1e15]; `series`, its number of values in a decade: 3, 6, 12, 24, 48, 96 or 192.
    /// Written: `nearest_ohm`.
    /// Statuses: `RKO_OUT_OF_RANGE`, `RKO_NOT_FINITE`, `RKO_UNKNOWN_CODE`, `RKO_NULL_POINTER`.
    /// Source: IEC 60063:2015.
    fn rko_preferred_nearest_ohm = rko_preferred_nearest_ohm_f32(
        ohm: f64,
        series: u32,
        nearest_ohm: *mut f64,
        detail: *mut rko_detail,
    )
    asking preferred: nearest = nearest_f32
    {
        one(nearest_ohm, 3, detail, || Ok(asked::nearest(ohm, named(series, 2)?)?))
    }

    /// `rko_preferred_nearest_ohm` for each of `count` resistances, all against one series.
    fn rko_preferred_nearest_ohm_n = rko_preferred_nearest_ohm_n_f32(
        ohm: *const f64,
        count: usize,
        series: u32,
        nearest_ohm: *mut f64,
        valid: *mut u8,
        detail: *mut rko_detail,
    )
    asking preferred: check = check_f32, nearest_into = nearest_f32_into, nearest_into_valid = nearest_f32_into_valid, nearest = nearest_f32
    {
        in_parts(
            Results { count, output: nearest_ohm, position: 4, valid, detail },
            LEAST,
            || Ok((items(ohm, count, 1)?, named(series, 3)?)),
            Asked {
                check: |(ohm, _)| Ok(asked::check(ohm)?),
                whole: |(ohm, series), output: &mut [_]| Ok(asked::nearest_into(ohm, series, output)?),
                masked: |(ohm, series), output: &mut [_], valid: &mut [bool]| {
                    Ok(asked::nearest_into_valid(ohm, series, output, valid)?)
                },
                one: |(ohm, series), index| Ok(asked::nearest(*element(ohm, index)?, series)?),
            },
        )
    }

    /// The highest preferred value that is not above this resistance: itself, if it is one.
    ///
    /// Given: `ohm`, in (0, 1e15]; `series`, its number of values in a decade: 3, 6, 12, 24, 48, 96 or 192.
    /// Written: `below_ohm`.
    /// Statuses: `RKO_OUT_OF_RANGE`, `RKO_NOT_FINITE`, `RKO_UNKNOWN_CODE`, `RKO_NULL_POINTER`.
    /// Source: IEC 60063:2015.
    fn rko_preferred_below_ohm = rko_preferred_below_ohm_f32(
        ohm: f64,
        series: u32,
        below_ohm: *mut f64,
        detail: *mut rko_detail,
    )
    asking preferred: below = below_f32
    {
        one(below_ohm, 3, detail, || Ok(asked::below(ohm, named(series, 2)?)?))
    }

    /// `rko_preferred_below_ohm` for each of `count` resistances, all against one series.
    fn rko_preferred_below_ohm_n = rko_preferred_below_ohm_n_f32(
        ohm: *const f64,
        count: usize,
        series: u32,
        below_ohm: *mut f64,
        valid: *mut u8,
        detail: *mut rko_detail,
    )
    asking preferred: check = check_f32, below_into = below_f32_into, below_into_valid = below_f32_into_valid, below = below_f32
    {
        in_parts(
            Results { count, output: below_ohm, position: 4, valid, detail },
            LEAST,
            || Ok((items(ohm, count, 1)?, named(series, 3)?)),
            Asked {
                check: |(ohm, _)| Ok(asked::check(ohm)?),
                whole: |(ohm, series), output: &mut [_]| Ok(asked::below_into(ohm, series, output)?),
                masked: |(ohm, series), output: &mut [_], valid: &mut [bool]| {
                    Ok(asked::below_into_valid(ohm, series, output, valid)?)
                },
                one: |(ohm, series), index| Ok(asked::below(*element(ohm, index)?, series)?),
            },
        )
    }

    /// The lowest preferred value that is not below this resistance: itself, if it is one.
    ///
    /// Given: `ohm`, in (0, 1e15]; `series`, its number of values in a decade: 3, 6, 12, 24, 48, 96 or 192.
    /// Written: `above_ohm`.
    /// Statuses: `RKO_OUT_OF_RANGE`, `RKO_NOT_FINITE`, `RKO_UNKNOWN_CODE`, `RKO_NULL_POINTER`.
    /// Source: IEC 60063:2015.
    fn rko_preferred_above_ohm = rko_preferred_above_ohm_f32(
        ohm: f64,
        series: u32,
        above_ohm: *mut f64,
        detail: *mut rko_detail,
    )
    asking preferred: above = above_f32
    {
        one(above_ohm, 3, detail, || Ok(asked::above(ohm, named(series, 2)?)?))
    }

    /// `rko_preferred_above_ohm` for each of `count` resistances, all against one series.
    fn rko_preferred_above_ohm_n = rko_preferred_above_ohm_n_f32(
        ohm: *const f64,
        count: usize,
        series: u32,
        above_ohm: *mut f64,
        valid: *mut u8,
        detail: *mut rko_detail,
    )
    asking preferred: check = check_f32, above_into = above_f32_into, above_into_valid = above_f32_into_valid, above = above_f32
    {
        in_parts(
            Results { count, output: above_ohm, position: 4, valid, detail },
            LEAST,
            || Ok((items(ohm, count, 1)?, named(series, 3)?)),
            Asked {
                check: |(ohm, _)| Ok(asked::check(ohm)?),
                whole: |(ohm, series), output: &mut [_]| Ok(asked::above_into(ohm, series, output)?),
                masked: |(ohm, series), output: &mut [_], valid: &mut [bool]| {
                    Ok(asked::above_into_valid(ohm, series, output, valid)?)
                },
                one: |(ohm, series), index| Ok(asked::above(*element(ohm, index)?, series)?),
            },
        )
    }

    /// Whether this resistance is a preferred value of the series, in any decade.
    ///
    /// Given: `ohm`, in (0, 1e15]; `series`, its number of values in a decade: 3, 6, 12, 24, 48, 96 or 192.
    /// Written: `contains`, 1 if it is, else 0.
    /// Statuses: `RKO_OUT_OF_RANGE`, `RKO_NOT_FINITE`, `RKO_UNKNOWN_CODE`, `RKO_NULL_POINTER`.
    /// Source: IEC 60063:2015.
    fn rko_preferred_contains = rko_preferred_contains_f32(
        ohm: f64,
        series: u32,
        contains: *mut u8,
        detail: *mut rko_detail,
    )
    asking preferred: contains = contains_f32
    {
        one(contains, 3, detail, || Ok(u8::from(asked::contains(ohm, named(series, 2)?)?)))
    }

    /// `rko_preferred_contains` for each of `count` resistances, all against one series.
    fn rko_preferred_contains_n = rko_preferred_contains_n_f32(
        ohm: *const f64,
        count: usize,
        series: u32,
        contains: *mut u8,
        valid: *mut u8,
        detail: *mut rko_detail,
    )
    asking preferred: contains = contains_f32
    {
        array(
            Results { count, output: contains, position: 4, valid, detail },
            || Ok((items(ohm, count, 1)?, named(series, 3)?)),
            |(ohm, series), output| {
                twice(output, |index| Ok(u8::from(asked::contains(*element(ohm, index)?, series)?)))
            },
            |(ohm, series), index| Ok(u8::from(asked::contains(*element(ohm, index)?, series)?)),
        )
    }
}

/// The series with the fewest values that holds this resistance.
///
/// Given: `ohm`, in (0, 1e15].
/// Written: `series`, its number of values in a decade; 0 if no series holds the resistance.
/// Statuses: `RKO_OUT_OF_RANGE`, `RKO_NOT_FINITE`, `RKO_NULL_POINTER`.
/// Source: IEC 60063:2015.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rko_preferred_coarsest(ohm: f64, series: *mut u32, detail: *mut rko_detail) -> rko_status {
    unsafe { one(series, 2, detail, || Ok(preferred::coarsest(ohm)?.map_or(0, |series| u32::from(series.count())))) }
}

/// `rko_preferred_coarsest` for each of `count` resistances.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rko_preferred_coarsest_n(
    ohm: *const f64,
    count: usize,
    series: *mut u32,
    valid: *mut u8,
    detail: *mut rko_detail,
) -> rko_status {
    let asked = |ohm: &[f64], index: usize| -> Outcome<u32> {
        Ok(preferred::coarsest(*element(ohm, index)?)?.map_or(0, |series| u32::from(series.count())))
    };
    unsafe {
        array(
            Results { count, output: series, position: 3, valid, detail },
            || items(ohm, count, 1),
            |ohm, output| twice(output, |index| asked(ohm, index)),
            asked,
        )
    }
}

/// The tolerance that a series is usual with.
///
/// Given: `series`, its number of values in a decade: 3, 6, 12, 24, 48, 96 or 192.
/// Written: `tolerance`, a fraction; 0 for E3, which has none given.
/// Statuses: `RKO_UNKNOWN_CODE`, `RKO_NULL_POINTER`.
/// Source: IEC 60063.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rko_preferred_tolerance(
    series: u32,
    tolerance: *mut f64,
    detail: *mut rko_detail,
) -> rko_status {
    unsafe { one(tolerance, 2, detail, || Ok(preferred::tolerance(named(series, 1)?).unwrap_or(0.0))) }
}

/// The series of this name.
///
/// Given: `name`, "E3" to "E192", a small "e" will do, and its `length`.
/// Written: `series`, its number of values in a decade, as the other functions take it.
/// Statuses: `RKO_UNKNOWN_SERIES`, `RKO_NULL_POINTER`.
/// Source: IEC 60063:2015.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rko_preferred_series(
    name: *const c_char,
    length: usize,
    series: *mut u32,
    detail: *mut rko_detail,
) -> rko_status {
    unsafe {
        one(series, 3, detail, || {
            // Bytes that are no text are no name either.
            let name = core::str::from_utf8(items(name.cast::<u8>(), length, 1)?).unwrap_or_default();
            Ok(u32::from(Series::from_name(name)?.count()))
        })
    }
}
