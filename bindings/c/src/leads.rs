//! The leads between meter and part.

use core::mem::{offset_of, size_of};

use reckohm::meter::Leads;

use crate::answer::{DoorError, Outcome, one};
use crate::detail::{rko_detail, rko_status};
use crate::pointer::item;
use crate::reading::rko_reading;
use crate::span::{OfCaller as _, rko_span};

/// The leads were read with their tips touching.
pub const RKO_LEADS_FROM_READING: u32 = 1;
/// The leads were reckoned from their wire.
pub const RKO_LEADS_FROM_WIRE: u32 = 2;

/// The leads between meter and part. Made by `rko_leads_from_reading` or `rko_leads_from_wire`; the members tell what they
/// were made from, and `ohm` and `half_width_ohm` what that comes to: these two are not read again.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct rko_leads {
    /// Resistance of the leads, there and back, ohm.
    pub ohm: f64,
    /// Half-width of what is known about it, ohm; a reading's is that of its span, and 0 here.
    pub half_width_ohm: f64,
    /// Length of one lead, metre, if from its wire, else 0.
    pub length_m: f64,
    /// Cross-section, square millimetre, if from its wire, else 0.
    pub area_mm2: f64,
    /// The reading, if from one.
    pub reading: rko_reading,
    /// The span that the reading was taken on, if from a reading.
    pub span: rko_span,
    /// `RKO_LEADS_FROM_READING` or `RKO_LEADS_FROM_WIRE`.
    pub source: u32,
    /// Class of the conductor, 1, 2 or 5, if from its wire, else 0.
    pub wire_class: u32,
}

const _: () = {
    assert!(size_of::<rko_leads>() == 168);
    assert!(offset_of!(rko_leads, ohm) == 0);
    assert!(offset_of!(rko_leads, half_width_ohm) == 8);
    assert!(offset_of!(rko_leads, length_m) == 16);
    assert!(offset_of!(rko_leads, area_mm2) == 24);
    assert!(offset_of!(rko_leads, reading) == 32);
    assert!(offset_of!(rko_leads, span) == 56);
    assert!(offset_of!(rko_leads, source) == 160);
    assert!(offset_of!(rko_leads, wire_class) == 164);
};

fn wire(length_m: f64, area_mm2: f64, wire_class: u32) -> Outcome<Leads> {
    Ok(Leads::from_wire(length_m, area_mm2, u8::try_from(wire_class).unwrap_or(u8::MAX))?)
}

impl rko_leads {
    /// All zero: no leads.
    pub(crate) const NONE: rko_leads = rko_leads {
        ohm: 0.0,
        half_width_ohm: 0.0,
        length_m: 0.0,
        area_mm2: 0.0,
        reading: rko_reading { ohm: 0.0, counts: 0, over: 0, negative: 0 },
        span: rko_span::NONE,
        source: 0,
        wire_class: 0,
    };

    pub(crate) fn to_core(self, argument: u16) -> Outcome<Leads> {
        match self.source {
            RKO_LEADS_FROM_READING => {
                let span = self.span.to_core(argument)?;
                Ok(Leads::from_reading(&self.reading.to_core(&span, argument)?, &span)?)
            }
            RKO_LEADS_FROM_WIRE => wire(self.length_m, self.area_mm2, self.wire_class),
            other => Err(DoorError::UnknownCode { argument, given: f64::from(other) }.into()),
        }
    }
}

/// The leads as read with their tips touching one another.
///
/// Given: `reading`, within its span; `span`, that it was taken on.
/// Written: `leads`.
/// Statuses: those of `rko_span_check`; `RKO_OVER_RANGE_READING`, `RKO_CONTRADICTION`, `RKO_BEYOND_FULL_SCALE`,
/// `RKO_UNKNOWN_CODE`, `RKO_NULL_POINTER`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rko_leads_from_reading(
    reading: *const rko_reading,
    span: *const rko_span,
    leads: *mut rko_leads,
    detail: *mut rko_detail,
) -> rko_status {
    unsafe {
        one(leads, 3, detail, || {
            let (reading, span) = (item(reading, 1)?, item(span, 2)?.to_core(2)?);
            let made = Leads::from_reading(&reading.to_core(&span, 1)?, &span)?;
            Ok(rko_leads {
                ohm: made.ohm(),
                half_width_ohm: made.half_width_ohm(),
                reading: *reading,
                span: (&span).into(),
                source: RKO_LEADS_FROM_READING,
                ..rko_leads::NONE
            })
        })
    }
}

/// The leads as reckoned from their wire, both conductors, copper at 20 degrees Celsius.
///
/// Given: `length_m` of one lead; `area_mm2` and `wire_class`, as IEC 60228 lists them.
/// Written: `leads`.
/// Statuses: `RKO_OUT_OF_RANGE`, `RKO_NOT_FINITE`, `RKO_WIRE_NOT_IN_TABLE`, `RKO_NULL_POINTER`.
/// Source: IEC 60228.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rko_leads_from_wire(
    length_m: f64,
    area_mm2: f64,
    wire_class: u32,
    leads: *mut rko_leads,
    detail: *mut rko_detail,
) -> rko_status {
    unsafe {
        one(leads, 4, detail, || {
            let made = wire(length_m, area_mm2, wire_class)?;
            Ok(rko_leads {
                ohm: made.ohm(),
                half_width_ohm: made.half_width_ohm(),
                length_m,
                area_mm2,
                source: RKO_LEADS_FROM_WIRE,
                wire_class,
                ..rko_leads::NONE
            })
        })
    }
}
