//! Formulas as this door calls them: what goes over arrays reaches a formula by the addresses of its functions, some hundred
//! elements at a time, and is compiled once for each type of number instead of once for each formula.

use reckohm::distribution::DistributionError;
use reckohm::preferred::PreferredError;
use reckohm::sensor::SensorError;
use reckohm::verdict::{Column, VerdictError};

use crate::errors::Failure;
use crate::slices::Element;
use crate::ufunc::Loops;

/// The number types that have a loop.
pub trait Real: reckohm::number::Real + Element {
    /// NumPy's code of the type.
    const CODE: &'static str;
    const NAN: Self;
}

impl Real for f64 {
    const CODE: &'static str = "f8";
    const NAN: f64 = f64::NAN;
}

impl Real for f32 {
    const CODE: &'static str = "f4";
    const NAN: f32 = f32::NAN;
}

/// As many inputs as any formula has: a thermistor's value, parameters and domain.
const MOST: usize = 8;

/// Something of each input; what stands behind those that a formula has is not read.
pub type Inputs<T> = [T; MOST];

/// A formula of `N` numbers of type `R`. A zero-size type, since a closure has no address that NumPy could call.
pub trait Kernel<const N: usize, R: Real>: 'static {
    /// From so many elements on a thread more is worth it, as measured by `cargo xtask bench growth`.
    const LEAST_A_THREAD: usize;

    /// The result, or why there is none.
    fn evaluate(inputs: [R; N]) -> Result<R, Refusal>;

    /// Writes the result of each element that has one and says which those are; gives how many have none. `None` where the
    /// core has no function of arrays for such columns: then each element is asked for by itself.
    fn fill(inputs: [Column<'_, R>; N], out: &mut [R], valid: &mut [bool]) -> Option<usize> {
        Some(by_itself(out, valid, |element| Self::evaluate(inputs.map(|column| at(column, element)))))
    }

    /// Whether each of so many elements has a result; `None` as above.
    fn takes(inputs: [Column<'_, R>; N], count: usize) -> Option<bool>;
}

/// Each element by itself; gives how many have no result.
fn by_itself<R: Real>(out: &mut [R], valid: &mut [bool], evaluate: impl Fn(usize) -> Result<R, Refusal>) -> usize {
    let mut refused = 0;
    for (element, (place, valid)) in out.iter_mut().zip(valid).enumerate() {
        let result = evaluate(element);
        *valid = result.is_ok();
        match result {
            Ok(result) => *place = result,
            Err(_) => refused += 1,
        }
    }
    refused
}

/// Why a formula has no result, in the words of its area. The text is made only where it is raised.
pub enum Refusal {
    Distribution(DistributionError),
    Preferred(PreferredError),
    Sensor(SensorError),
    Verdict(VerdictError),
}

macro_rules! refusals {
    ($($area:ident($error:ty)),+) => {
        $(impl From<$error> for Refusal {
            fn from(error: $error) -> Refusal { Refusal::$area(error) }
        })+

        impl From<Refusal> for Failure {
            fn from(refusal: Refusal) -> Failure {
                match refusal { $(Refusal::$area(error) => error.into()),+ }
            }
        }
    };
}
refusals!(Distribution(DistributionError), Preferred(PreferredError), Sensor(SensorError), Verdict(VerdictError));

type Fill<R> = fn(&Inputs<Column<'_, R>>, &mut [R], &mut [bool]) -> Option<usize>;

/// The functions of a formula for numbers of type `R`.
pub struct Formula<R: Real> {
    /// How many numbers it is of.
    pub inputs: usize,
    pub least_a_thread: usize,
    /// Its loops for NumPy.
    pub loops: Loops,
    evaluate: fn(&Inputs<Column<'_, R>>, usize) -> Result<R, Refusal>,
    fill: Fill<R>,
    takes: fn(&Inputs<Column<'_, R>>, usize) -> Option<bool>,
}

impl<R: Real> Formula<R> {
    pub const fn of<K: Kernel<N, R>, const N: usize>() -> &'static Formula<R> {
        const { assert!(N <= MOST) };
        &const {
            Formula {
                inputs: N,
                least_a_thread: K::LEAST_A_THREAD,
                loops: Loops::of::<K, R, N>(),
                evaluate: |inputs, element| K::evaluate(first(inputs).map(|column| at(column, element))),
                fill: |inputs, out, valid| K::fill(first(inputs), out, valid),
                takes: |inputs, count| K::takes(first(inputs), count),
            }
        }
    }

    /// The result for one element, or why there is none.
    pub fn evaluate(&self, inputs: &Inputs<Column<'_, R>>, element: usize) -> Result<R, Refusal> {
        (self.evaluate)(inputs, element)
    }

    /// Writes the result of each element that has one and says which those are; gives how many have none.
    pub fn fill(&self, inputs: &Inputs<Column<'_, R>>, out: &mut [R], valid: &mut [bool]) -> usize {
        (self.fill)(inputs, out, valid)
            .unwrap_or_else(|| by_itself(out, valid, |element| self.evaluate(inputs, element)))
    }

    /// Whether each of so many elements has a result.
    pub fn takes(&self, inputs: &Inputs<Column<'_, R>>, count: usize) -> bool {
        let by_itself = || (0..count).all(|element| self.evaluate(inputs, element).is_ok());
        (self.takes)(inputs, count).unwrap_or_else(by_itself)
    }
}

/// The first `N` of them.
#[inline(always)]
fn first<T: Copy, const N: usize>(inputs: &Inputs<T>) -> [T; N] {
    core::array::from_fn(|input| inputs[input])
}

/// One of a column's numbers.
#[inline(always)]
fn at<R: Real>(column: Column<'_, R>, element: usize) -> R {
    match column {
        Column::One(x) => x,
        Column::Each(all) => all[element],
    }
}

/// A formula in both types of numbers.
#[derive(Clone, Copy)]
pub struct Formulas {
    pub single: &'static Formula<f32>,
    pub double: &'static Formula<f64>,
}

impl Formulas {
    pub const fn of<K: Kernel<N, f32> + Kernel<N, f64>, const N: usize>() -> Formulas {
        Formulas { single: Formula::of::<K, N>(), double: Formula::of::<K, N>() }
    }
}
