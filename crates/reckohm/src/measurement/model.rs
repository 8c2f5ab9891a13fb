//! The measurement model of a resistance reading, once, for every number type.

use crate::number::{Dual, Scalar};

/// How many inputs the model has.
pub(super) const INPUTS: usize = 8;

/// The inputs, in their order everywhere.
#[derive(Clone, Copy, Debug)]
pub(super) struct Inputs<S> {
    /// Mean of the readings, ohm.
    pub(super) shown: S,
    /// Error of the meter within its clause, ohm.
    pub(super) meter: S,
    /// Rounding by the display where the clause does not hold it, ohm.
    pub(super) step: S,
    /// Resistance of the leads, ohm.
    pub(super) leads: S,
    /// Conductance of a path in parallel with the part, siemens.
    pub(super) path: S,
    /// Known temperature coefficient, 1/K.
    pub(super) coefficient: S,
    /// Difference to it within the marked limit, 1/K.
    pub(super) coefficient_within: S,
    /// Temperature of the part above the reference, K.
    pub(super) warmer: S,
}

/// Resistance of the part at the reference temperature, ohm. Series leads and a parallel path: Ohm's law; the
/// coefficient as IEC 60115-1 defines it, against the resistance at the reference temperature.
pub(super) fn resistance<S: Scalar>(x: &Inputs<S>) -> S {
    let one = S::lit(1.0);
    let shown = x.shown + x.meter + x.step - x.leads;
    let part = shown / (one - shown * x.path);
    part / (one + (x.coefficient + x.coefficient_within) * x.warmer)
}

/// The result with its sensitivity to each input, in the order of [`Inputs`].
pub(super) fn with_sensitivities(x: &Inputs<f64>) -> (f64, [f64; INPUTS]) {
    let v = |x: f64, i: usize| Dual::<f64, INPUTS>::variable(x, i);
    let y = resistance(&Inputs {
        shown: v(x.shown, 0),
        meter: v(x.meter, 1),
        step: v(x.step, 2),
        leads: v(x.leads, 3),
        path: v(x.path, 4),
        coefficient: v(x.coefficient, 5),
        coefficient_within: v(x.coefficient_within, 6),
        warmer: v(x.warmer, 7),
    });
    (y.value(), y.partials())
}
