//! A sensor's model as plain numbers that a caller keeps, and what is asked of it.
//!
//! For one number the model is taken as it stands, and only the result is looked at, so that a call costs little more than
//! the formula; a struct that something has written over shows in a result that no sensor has. Arrays and estimates check the
//! whole model first.

use reckohm::number::Real;
use reckohm::sensor::{Model, Thermometer};
use reckohm::uncertainty::Estimate;

use crate::answer::{DoorError, Outcome, one};
use crate::array::Results;
use crate::detail::{rko_detail, rko_status};
use crate::estimate::{rko_estimate, rko_estimate_f32};
use crate::parts::{Asked, in_parts};
use crate::pointer::{element, item, items};

/// From so many elements on a thread is worth it.
const LEAST_A_THREAD: usize = 1 << 15;

/// A struct that holds a model.
pub(super) trait Kept: Copy {
    type Formula: Thermometer<5> + Sync;
    type Number: Real + Send + Sync;

    fn of(model: Model<Self::Formula, Self::Number, 5>) -> Self;

    /// The model as it stands.
    fn model(self) -> Model<Self::Formula, Self::Number, 5>;
}

/// Says how a struct's members are the numbers of its model.
macro_rules! keeps {
    ($name:ident: $formula:ty, $number:ty, [$($parameter:ident),+]) => {
        impl $crate::sensor::kept::Kept for $name {
            type Formula = $formula;
            type Number = $number;

            fn of(model: reckohm::sensor::Model<$formula, $number, 5>) -> $name {
                let [$($parameter),+] = model.parameters();
                let ([lower_c, upper_c], [lowest_ohm, highest_ohm]) = (model.domain(), model.ends_ohm());
                $name { $($parameter,)+ lower_c, upper_c, lowest_ohm, highest_ohm }
            }

            fn model(self) -> reckohm::sensor::Model<$formula, $number, 5> {
                let $name { $($parameter,)+ lower_c, upper_c, lowest_ohm, highest_ohm } = self;
                reckohm::sensor::Model::restored([$($parameter),+], [lower_c, upper_c], [lowest_ohm, highest_ohm])
            }
        }
    };
}
pub(super) use keeps;

type ModelOf<K> = Model<<K as Kept>::Formula, <K as Kept>::Number, 5>;
type Inputs<'a, K> = (&'a [<K as Kept>::Number], ModelOf<K>);

/// What a sound model gives, or else that the struct is not as it was filled.
fn sound<T>(value: T, holds: bool) -> Outcome<T> {
    if holds { Ok(value) } else { Err(DoorError::CorruptMemory { argument: 1 }.into()) }
}

/// The model, seen to be the one that its parameters make.
fn whole<K: Kept>(kept: &K) -> Outcome<ModelOf<K>> {
    let model = kept.model();
    let made = ModelOf::<K>::from_parameters(model.parameters(), model.domain());
    sound(model, made.is_ok_and(|made| made.ends_ohm() == model.ends_ohm()))
}

fn resistance_of<R: Real, F: Thermometer<5>>(model: &Model<F, R, 5>, temperature_c: R) -> Outcome<R> {
    let [lower, upper] = model.domain();
    sound((), lower < upper)?;
    let ohm = model.resistance_ohm(temperature_c)?;
    sound(ohm, ohm > R::ZERO && ohm.finite())
}

fn slope_of<R: Real, F: Thermometer<5>>(model: &Model<F, R, 5>, temperature_c: R) -> Outcome<R> {
    let [lower, upper] = model.domain();
    sound((), lower < upper)?;
    let slope = model.slope(temperature_c)?;
    sound(slope, slope.finite())
}

fn temperature_of<R: Real, F: Thermometer<5>>(model: &Model<F, R, 5>, resistance_ohm: R) -> Outcome<R> {
    let ([lower, upper], [lowest, highest]) = (model.domain(), model.ends_ohm());
    sound((), R::ZERO < lowest && lowest < highest)?;
    let temperature_c = model.temperature_c(resistance_ohm)?;
    sound(temperature_c, lower <= temperature_c && temperature_c <= upper)
}

/// The same sensor over another domain.
pub(super) unsafe fn with_domain<K: Kept>(
    kept: *const K,
    domain: [K::Number; 2],
    output: *mut K,
    detail: *mut rko_detail,
) -> rko_status {
    // SAFETY: as the caller of this door promises.
    unsafe { one(output, 4, detail, || Ok(K::of(whole(item(kept, 1)?)?.with_domain(domain)?))) }
}

/// A conversion of one number and of many: the first by the model as it stands.
macro_rules! conversions {
    ($($one:ident, $many:ident: $of:ident, $check:ident, $into:ident, $masked:ident;)+) => {$(
        pub(super) unsafe fn $one<K: Kept>(
            kept: *const K,
            x: K::Number,
            output: *mut K::Number,
            detail: *mut rko_detail,
        ) -> rko_status {
            // SAFETY: as the caller of this door promises.
            unsafe { one(output, 3, detail, || $of(&item(kept, 1)?.model(), x)) }
        }

        pub(super) unsafe fn $many<K: Kept>(
            kept: *const K,
            x: *const K::Number,
            count: usize,
            output: *mut K::Number,
            valid: *mut u8,
            detail: *mut rko_detail,
        ) -> rko_status {
            // SAFETY: as the caller of this door promises.
            unsafe {
                in_parts(
                    Results { count, output, position: 4, valid, detail },
                    LEAST_A_THREAD,
                    || Ok((items(x, count, 2)?, whole(item(kept, 1)?)?)),
                    Asked {
                        check: |(x, model): Inputs<'_, K>| Ok(model.$check(x)?),
                        whole: |(x, model): Inputs<'_, K>, output: &mut [_]| Ok(model.$into(x, output)?),
                        masked: |(x, model): Inputs<'_, K>, output: &mut [_], valid: &mut [bool]| {
                            Ok(model.$masked(x, output, valid)?)
                        },
                        one: |(x, model): Inputs<'_, K>, index| $of(&model, *element(x, index)?),
                    },
                )
            }
        }
    )+};
}

conversions! {
    resistance_ohm, resistance_ohm_n: resistance_of, check_quantities, resistance_ohm_into, resistance_ohm_into_valid;
    slope, slope_n: slope_of, check_quantities, slope_into, slope_into_valid;
    temperature_c, temperature_c_n: temperature_of, check_resistances, temperature_c_into, temperature_c_into_valid;
}

/// A struct that holds an estimate.
pub(super) trait Uncertain<R: Real>: Copy + From<Estimate<R>> {
    fn estimate(self) -> Outcome<Estimate<R>>;
}

impl Uncertain<f64> for rko_estimate {
    fn estimate(self) -> Outcome<Estimate<f64>> {
        self.to_core()
    }
}

impl Uncertain<f32> for rko_estimate_f32 {
    fn estimate(self) -> Outcome<Estimate<f32>> {
        self.to_core()
    }
}

/// The resistance where the temperature is uncertain, or with `of_resistance` the other way.
pub(super) unsafe fn estimate<K: Kept, E: Uncertain<K::Number>>(
    kept: *const K,
    given: *const E,
    of_resistance: bool,
    output: *mut E,
    detail: *mut rko_detail,
) -> rko_status {
    // SAFETY: as the caller of this door promises.
    unsafe {
        one(output, 3, detail, || {
            let (model, given) = (whole(item(kept, 1)?)?, item(given, 2)?.estimate()?);
            Ok(if of_resistance { model.temperature_estimate(&given) } else { model.resistance_estimate(&given) }?
                .into())
        })
    }
}
