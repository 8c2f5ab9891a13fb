//! The conversions of sensors as formulas for arrays: the value, then the model's five parameters and the two ends of its
//! domain, so that a ufunc is the same for all sensors of a formula.

use core::marker::PhantomData;

use reckohm::sensor::{Model, SensorError, Thermometer};
use reckohm::verdict::Column;

use crate::formula::{Formulas, Kernel, Real, Refusal};
use crate::ufunc::Output;
use crate::vector::Vector;

/// From so many elements on a second thread is worth it.
const LEAST_A_THREAD: usize = 1 << 17;

/// The model that the seven numbers behind the value make.
fn model<F: Thermometer<5>, R: Real>(numbers: [R; 8]) -> Result<Model<F, R, 5>, SensorError> {
    let [_, a, b, c, d, e, lower, upper] = numbers;
    Model::from_parameters([a, b, c, d, e], [lower, upper])
}

/// The same of columns, where it is one for all elements.
fn one_model<F: Thermometer<5>, R: Real>(inputs: [Column<'_, R>; 8]) -> Option<(&[R], Model<F, R, 5>)> {
    let [Column::Each(x), rest @ ..] = inputs else { return None };
    let mut numbers = [R::ZERO; 8];
    for (place, column) in numbers.iter_mut().skip(1).zip(rest) {
        let Column::One(number) = column else { return None };
        *place = number;
    }
    Some((x, model(numbers).ok()?))
}

/// What is asked of a sensor, whatever its formula and number.
pub trait Conversion: 'static {
    /// The formula's ufunc for it.
    fn vector<F: Named>() -> Vector;
    fn one<F: Named, R: Real>(model: &Model<F, R, 5>, x: R) -> Result<R, SensorError>;
    fn each<F: Named, R: Real>(
        model: &Model<F, R, 5>,
        x: &[R],
        out: &mut [R],
        valid: &mut [bool],
    ) -> Result<usize, SensorError>;
    fn check<F: Named, R: Real>(model: &Model<F, R, 5>, x: &[R]) -> Result<(), SensorError>;
}

macro_rules! conversions {
    ($($(#[$doc:meta])* $name:ident: $one:ident, $each:ident, $check:ident;)+) => {$(
        $(#[$doc])*
        pub struct $name;

        impl Conversion for $name {
            fn vector<F: Named>() -> Vector {
                F::VECTORS.$one
            }

            fn one<F: Named, R: Real>(model: &Model<F, R, 5>, x: R) -> Result<R, SensorError> {
                model.$one(x)
            }

            fn each<F: Named, R: Real>(
                model: &Model<F, R, 5>,
                x: &[R],
                out: &mut [R],
                valid: &mut [bool],
            ) -> Result<usize, SensorError> {
                model.$each(x, out, valid)
            }

            fn check<F: Named, R: Real>(model: &Model<F, R, 5>, x: &[R]) -> Result<(), SensorError> {
                model.$check(x)
            }
        }
    )+};
}

conversions! {
    /// Resistance in ohm from temperature.
    Resistance: resistance_ohm, resistance_ohm_into_valid, check_quantities;
    /// Slope in ohm a kelvin at a temperature.
    Slope: slope, slope_into_valid, check_quantities;
    /// Temperature in degrees Celsius from resistance.
    Temperature: temperature_c, temperature_c_into_valid, check_resistances;
}

/// A conversion by a formula.
pub struct By<C, F>(PhantomData<(C, F)>);

impl<C: Conversion, F: Named, R: Real> Kernel<8, R> for By<C, F> {
    const LEAST_A_THREAD: usize = LEAST_A_THREAD;

    fn evaluate(inputs: [R; 8]) -> Result<R, Refusal> {
        let [x, ..] = inputs;
        Ok(C::one(&model::<F, R>(inputs)?, x)?)
    }

    fn fill(inputs: [Column<'_, R>; 8], out: &mut [R], valid: &mut [bool]) -> Option<usize> {
        let (x, model) = one_model::<F, R>(inputs)?;
        C::each(&model, x, out, valid).ok()
    }

    fn takes(inputs: [Column<'_, R>; 8], _: usize) -> Option<bool> {
        let (x, model) = one_model::<F, R>(inputs)?;
        Some(C::check(&model, x).is_ok())
    }
}

/// The three conversions of a formula at this door.
pub struct Vectors {
    pub resistance_ohm: Vector,
    pub slope: Vector,
    pub temperature_c: Vector,
}

/// A formula and the names of its ufuncs.
pub trait Named: Thermometer<5> {
    const VECTORS: Vectors;
}

macro_rules! named {
    ($formula:ty: $resistance:literal, $slope:literal, $temperature:literal, [$($parameter:literal),+]) => {
        impl Named for $formula {
            const VECTORS: Vectors = Vectors {
                resistance_ohm: Vector {
                    name: $resistance,
                    arguments: &["temperature_c", $($parameter,)+ "domain_c[0]", "domain_c[1]"],
                    output: Output::Number,
                    formulas: Formulas::of::<By<Resistance, $formula>, 8>(),
                },
                slope: Vector {
                    name: $slope,
                    arguments: &["temperature_c", $($parameter,)+ "domain_c[0]", "domain_c[1]"],
                    output: Output::Number,
                    formulas: Formulas::of::<By<Slope, $formula>, 8>(),
                },
                temperature_c: Vector {
                    name: $temperature,
                    arguments: &["resistance_ohm", $($parameter,)+ "domain_c[0]", "domain_c[1]"],
                    output: Output::Number,
                    formulas: Formulas::of::<By<Temperature, $formula>, 8>(),
                },
            };
        }
    };
}
named!(reckohm::sensor::BValueFormula: "sensor_b_value_resistance_ohm", "sensor_b_value_slope",
    "sensor_b_value_temperature_c",
    ["rated_ohm", "rated_temperature_c", "b_kelvin", "b_temperatures_c[0]", "b_temperatures_c[1]"]);
named!(reckohm::sensor::SteinhartHartFormula: "sensor_steinhart_hart_resistance_ohm", "sensor_steinhart_hart_slope",
    "sensor_steinhart_hart_temperature_c", ["a", "b", "c", "d", "reference_ohm"]);
