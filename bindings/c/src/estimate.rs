//! Estimates: a value with the shape of its uncertainty.

use reckohm::uncertainty::{Estimate, Expanded, TypeA, effective_dof};

use crate::answer::{Outcome, one};
use crate::detail::rko_detail;
use crate::pointer::{item, items};
use crate::twins::{twin_structs, twins};

twin_structs! {
    /// A value with the shape of its uncertainty, all in one unit.
    ///
    /// Where a meter's accuracy clause dominates, the error is rectangular, not normal, and no fixed factor of u is right:
    /// intervals and verdicts come from these parts. A struct of zeros but for its `value` is an exact value.
    struct rko_estimate = rko_estimate_f32 [80, 40] {
        /// The value.
        value: f64 [0, 0],
        /// Half-widths of up to two rectangular parts, 0 or more: a meter's clause, the step of a display.
        rectangular: [f64; 2] [8, 4],
        /// Standard uncertainty of all normal parts together, 0 or more.
        normal_u: f64 [24, 12],
        /// Up to two type A parts: the standard deviation of a mean, 0 or more.
        type_a_s: [f64; 2] [32, 16],
        /// Their degrees of freedom, 1 or more, infinite allowed; not read where `type_a_s` is 0, and infinite there in results.
        type_a_dof: [f64; 2] [48, 24],
        /// How far below the value the true one may lie for a one-sided reason, 0 or more.
        below: f64 [64, 32],
        /// How far above the value the true one may lie for a one-sided reason (leakage, a body across), 0 or more.
        above: f64 [72, 36],
    }
}

twin_structs! {
    /// An expanded uncertainty with all that it takes to be read, in the unit of its estimate.
    struct rko_expanded = rko_expanded_f32 [48, 24] {
        /// U, the half-width without the one-sided parts.
        half_width: f64 [0, 0],
        /// k = U/u, for information; 0 if u is 0.
        coverage_factor: f64 [8, 4],
        /// The probability that the interval is to hold.
        coverage_probability: f64 [16, 8],
        /// Lower end of the coverage interval, the one-sided part included.
        lower: f64 [24, 12],
        /// Upper end of the coverage interval, the one-sided part included.
        upper: f64 [32, 16],
        /// u, the combined standard uncertainty.
        u: f64 [40, 20],
    }
}

macro_rules! of_the_core {
    ($($real:ident: $estimate:ident, $expanded:ident;)+) => {$(
        impl $estimate {
            pub(crate) fn to_core(self) -> Outcome<Estimate<$real>> {
                let $estimate { value, rectangular, normal_u, type_a_s: [s, t], type_a_dof: [of_s, of_t], below, above } =
                    self;
                let part = |s: $real, dof: $real| if s == 0.0 { TypeA::NONE } else { TypeA { s, dof } };
                Ok(Estimate::from_parts(value, rectangular, normal_u, [part(s, of_s), part(t, of_t)], below, above)?)
            }
        }

        impl From<Estimate<$real>> for $estimate {
            fn from(estimate: Estimate<$real>) -> $estimate {
                let [first, second] = estimate.type_a();
                $estimate {
                    value: estimate.value(),
                    rectangular: estimate.rectangular(),
                    normal_u: estimate.normal_u(),
                    type_a_s: [first.s, second.s],
                    type_a_dof: [first.dof, second.dof],
                    below: estimate.below(),
                    above: estimate.above(),
                }
            }
        }

        impl From<Expanded<$real>> for $expanded {
            fn from(expanded: Expanded<$real>) -> $expanded {
                let Expanded { half_width, coverage_factor, coverage_probability, lower, upper, u } = expanded;
                $expanded { half_width, coverage_factor, coverage_probability, lower, upper, u }
            }
        }
    )+};
}

of_the_core! {
    f64: rko_estimate, rko_expanded;
    f32: rko_estimate_f32, rko_expanded_f32;
}

twins! {
    /// An estimate from a value and its standard uncertainty.
    ///
    /// Given: `value`, finite; `u`, 0 or more; `dof`, degrees of freedom, 1 or more: infinite makes a normal part, else a type A
    /// part.
    /// Written: `estimate`.
    /// Statuses: `RKO_OUT_OF_RANGE`, `RKO_NOT_FINITE`, `RKO_RESULT_OUT_OF_RANGE`, `RKO_NULL_POINTER`.
    /// Source: JCGM 100.
    fn rko_estimate_new = rko_estimate_new_f32(
        value: f64,
        u: f64,
        dof: f64,
        estimate: *mut rko_estimate,
        detail: *mut rko_detail,
    ) {
        one(estimate, 4, detail, || Ok(Estimate::new(value, u, dof)?.into()))
    }

    /// The mean of repeated observations, with the standard deviation of the mean as a type A part.
    ///
    /// Given: `observations`, finite, and their `count`, 2 or more.
    /// Written: `mean`.
    /// Statuses: `RKO_WRONG_COUNT` for fewer than two, `RKO_NOT_FINITE`, `RKO_RESULT_OUT_OF_RANGE`, `RKO_NULL_POINTER`.
    /// Source: JCGM 100 4.2.3.
    fn rko_estimate_from_repeats = rko_estimate_from_repeats_f32(
        observations: *const f64,
        count: usize,
        mean: *mut rko_estimate,
        detail: *mut rko_detail,
    ) {
        one(mean, 3, detail, || Ok(Estimate::from_repeats(items(observations, count, 1)?)?.into()))
    }

    /// Effective degrees of freedom of a sum of parts, by the Welch-Satterthwaite formula: not cut to a whole number, infinite
    /// where no part has finite ones.
    ///
    /// Given: `u`, the standard uncertainty of each part, 0 or more; `dof`, its degrees of freedom, 1 or more; their `count`.
    /// Written: `effective_dof`.
    /// Statuses: `RKO_OUT_OF_RANGE`, `RKO_NOT_FINITE`, `RKO_NULL_POINTER`.
    /// Source: JCGM 100 G.4.1, equation G.2b.
    fn rko_effective_dof = rko_effective_dof_f32(
        u: *const f64,
        dof: *const f64,
        count: usize,
        effective: *mut f64,
        detail: *mut rko_detail,
    ) {
        one(effective, 4, detail, || Ok(effective_dof(items(u, count, 1)?, items(dof, count, 2)?)?))
    }

    /// The same estimate with one more rectangular part: an error that lies anywhere within plus or minus `half_width` with
    /// equal probability. The two widest are kept as they are; a third goes into the normal part.
    ///
    /// Given: `estimate`; `half_width`, 0 or more, finite.
    /// Written: `with_it`, which may be `estimate` itself.
    /// Statuses: `RKO_OUT_OF_RANGE`, `RKO_NOT_FINITE`, `RKO_RESULT_OUT_OF_RANGE`, `RKO_NULL_POINTER`.
    /// Source: JCGM 100 4.3.7.
    fn rko_estimate_with_rectangular = rko_estimate_with_rectangular_f32(
        estimate: *const rko_estimate,
        half_width: f64,
        with_it: *mut rko_estimate,
        detail: *mut rko_detail,
    ) {
        one(with_it, 3, detail, || Ok(item(estimate, 1)?.to_core()?.with_rectangular(half_width)?.into()))
    }

    /// The same estimate with one more normal part; such parts add by variance.
    ///
    /// Given: `estimate`; `u`, 0 or more, finite.
    /// Written: `with_it`, which may be `estimate` itself.
    /// Statuses: `RKO_OUT_OF_RANGE`, `RKO_NOT_FINITE`, `RKO_RESULT_OUT_OF_RANGE`, `RKO_NULL_POINTER`.
    /// Source: JCGM 100 5.1.2.
    fn rko_estimate_with_normal = rko_estimate_with_normal_f32(
        estimate: *const rko_estimate,
        u: f64,
        with_it: *mut rko_estimate,
        detail: *mut rko_detail,
    ) {
        one(with_it, 3, detail, || Ok(item(estimate, 1)?.to_core()?.with_normal(u)?.into()))
    }

    /// The same estimate with one more type A part.
    ///
    /// Given: `estimate`; `s`, the standard deviation of a mean, 0 or more, finite; `dof`, its degrees of freedom, 1 or more, one
    /// less than the number of repeats.
    /// Written: `with_it`, which may be `estimate` itself.
    /// Statuses: `RKO_OUT_OF_RANGE`, `RKO_NOT_FINITE`, `RKO_RESULT_OUT_OF_RANGE`, `RKO_NULL_POINTER`.
    /// Source: JCGM 100 4.2.
    fn rko_estimate_with_type_a = rko_estimate_with_type_a_f32(
        estimate: *const rko_estimate,
        s: f64,
        dof: f64,
        with_it: *mut rko_estimate,
        detail: *mut rko_detail,
    ) {
        one(with_it, 4, detail, || Ok(item(estimate, 1)?.to_core()?.with_type_a(s, dof)?.into()))
    }

    /// The same estimate with one-sided parts, such as leakage or a body across the part.
    ///
    /// Given: `estimate`; `below` and `above`, how far the true value may lie under and over the value, 0 or more, finite.
    /// Written: `with_it`, which may be `estimate` itself.
    /// Statuses: `RKO_OUT_OF_RANGE`, `RKO_NOT_FINITE`, `RKO_RESULT_OUT_OF_RANGE`, `RKO_NULL_POINTER`.
    fn rko_estimate_with_one_sided = rko_estimate_with_one_sided_f32(
        estimate: *const rko_estimate,
        below: f64,
        above: f64,
        with_it: *mut rko_estimate,
        detail: *mut rko_detail,
    ) {
        one(with_it, 4, detail, || Ok(item(estimate, 1)?.to_core()?.with_one_sided(below, above)?.into()))
    }

    /// The estimate of a constant times the value: every part scaled, one-sided parts changing sides with the sign.
    ///
    /// Given: `estimate`; `constant`, finite.
    /// Written: `product`, which may be `estimate` itself.
    /// Statuses: `RKO_OUT_OF_RANGE`, `RKO_NOT_FINITE`, `RKO_RESULT_OUT_OF_RANGE`, `RKO_NULL_POINTER`.
    fn rko_estimate_times = rko_estimate_times_f32(
        estimate: *const rko_estimate,
        constant: f64,
        product: *mut rko_estimate,
        detail: *mut rko_detail,
    ) {
        one(product, 3, detail, || Ok(item(estimate, 1)?.to_core()?.times(constant)?.into()))
    }

    /// The combined standard uncertainty u, for information: intervals and verdicts come from the parts.
    ///
    /// Given: `estimate`.
    /// Written: `u`, in the estimate's unit.
    /// Statuses: `RKO_OUT_OF_RANGE`, `RKO_NOT_FINITE`, `RKO_RESULT_OUT_OF_RANGE`, `RKO_NULL_POINTER`.
    /// Source: JCGM 100 5.1.2.
    fn rko_estimate_u = rko_estimate_u_f32(estimate: *const rko_estimate, u: *mut f64, detail: *mut rko_detail) {
        one(u, 2, detail, || Ok(item(estimate, 1)?.to_core()?.u()))
    }

    /// The effective degrees of freedom by the Welch-Satterthwaite formula, for information.
    ///
    /// Given: `estimate`.
    /// Written: `dof`; infinite for an estimate without type A parts.
    /// Statuses: `RKO_OUT_OF_RANGE`, `RKO_NOT_FINITE`, `RKO_RESULT_OUT_OF_RANGE`, `RKO_NULL_POINTER`.
    /// Source: JCGM 100 G.4.1.
    fn rko_estimate_effective_dof = rko_estimate_effective_dof_f32(
        estimate: *const rko_estimate,
        dof: *mut f64,
        detail: *mut rko_detail,
    ) {
        one(dof, 2, detail, || Ok(item(estimate, 1)?.to_core()?.effective_dof()))
    }

    /// The expanded uncertainty at a coverage probability: the quantile of all parts of the shape added together.
    ///
    /// Given: `estimate`; `coverage_probability`, in (0, 1), 0.95 by convention.
    /// Written: `expanded`.
    /// Statuses: `RKO_OUT_OF_RANGE`, `RKO_NOT_FINITE`, `RKO_RESULT_OUT_OF_RANGE`, `RKO_NULL_POINTER`.
    /// Source: our coverage rule; coverage is over meters whose error is uniform within their clause.
    fn rko_estimate_expanded = rko_estimate_expanded_f32(
        estimate: *const rko_estimate,
        coverage_probability: f64,
        expanded: *mut rko_expanded,
        detail: *mut rko_detail,
    ) {
        one(expanded, 3, detail, || Ok(item(estimate, 1)?.to_core()?.expanded(coverage_probability)?.into()))
    }

    /// The expanded uncertainty by effective degrees of freedom and Student's t, as published budgets state it. For comparison
    /// with these: it does not hold its coverage probability for few repeats.
    ///
    /// Given: `estimate`; `coverage_probability`, in (0, 1).
    /// Written: `expanded`.
    /// Statuses: `RKO_OUT_OF_RANGE`, `RKO_NOT_FINITE`, `RKO_RESULT_OUT_OF_RANGE`, `RKO_NULL_POINTER`.
    /// Source: JCGM 100 G.4.
    fn rko_estimate_expanded_welch_satterthwaite = rko_estimate_expanded_welch_satterthwaite_f32(
        estimate: *const rko_estimate,
        coverage_probability: f64,
        expanded: *mut rko_expanded,
        detail: *mut rko_detail,
    ) {
        one(expanded, 3, detail, || {
            Ok(item(estimate, 1)?.to_core()?.expanded_welch_satterthwaite(coverage_probability)?.into())
        })
    }

    /// A half-width that holds its probability for every meter within its clause, also for one at its very edge. Wider than
    /// that of `rko_estimate_expanded`, and made without a search.
    ///
    /// Given: `estimate`; `coverage_probability`, in (0, 1).
    /// Written: `expanded`.
    /// Statuses: `RKO_OUT_OF_RANGE`, `RKO_NOT_FINITE`, `RKO_RESULT_OUT_OF_RANGE`, `RKO_NULL_POINTER`.
    fn rko_estimate_expanded_guaranteed = rko_estimate_expanded_guaranteed_f32(
        estimate: *const rko_estimate,
        coverage_probability: f64,
        expanded: *mut rko_expanded,
        detail: *mut rko_detail,
    ) {
        one(expanded, 3, detail, || Ok(item(estimate, 1)?.to_core()?.expanded_guaranteed(coverage_probability)?.into()))
    }

    /// The distance from the value that the error exceeds, to one side, with a given probability: the guard band of a
    /// one-sided decision. One-sided parts are not in it.
    ///
    /// Given: `estimate`; `tail_probability`, in (0, 0.5].
    /// Written: `distance`, in the estimate's unit.
    /// Statuses: `RKO_OUT_OF_RANGE`, `RKO_NOT_FINITE`, `RKO_RESULT_OUT_OF_RANGE`, `RKO_NULL_POINTER`.
    fn rko_estimate_quantile_above = rko_estimate_quantile_above_f32(
        estimate: *const rko_estimate,
        tail_probability: f64,
        distance: *mut f64,
        detail: *mut rko_detail,
    ) {
        one(distance, 3, detail, || Ok(item(estimate, 1)?.to_core()?.quantile_above(tail_probability)?))
    }

    /// The probability that the true value lies above `x`, one-sided parts taken where they make it largest.
    ///
    /// Given: `estimate`; `x`, finite, in the estimate's unit.
    /// Written: `probability`.
    /// Statuses: `RKO_OUT_OF_RANGE`, `RKO_NOT_FINITE`, `RKO_RESULT_OUT_OF_RANGE`, `RKO_NULL_POINTER`.
    fn rko_estimate_probability_above = rko_estimate_probability_above_f32(
        estimate: *const rko_estimate,
        x: f64,
        probability: *mut f64,
        detail: *mut rko_detail,
    ) {
        one(probability, 3, detail, || Ok(item(estimate, 1)?.to_core()?.probability_above(x)?))
    }

    /// The probability that the true value lies below `x`, one-sided parts taken where they make it largest.
    ///
    /// Given: `estimate`; `x`, finite, in the estimate's unit.
    /// Written: `probability`.
    /// Statuses: `RKO_OUT_OF_RANGE`, `RKO_NOT_FINITE`, `RKO_RESULT_OUT_OF_RANGE`, `RKO_NULL_POINTER`.
    fn rko_estimate_probability_below = rko_estimate_probability_below_f32(
        estimate: *const rko_estimate,
        x: f64,
        probability: *mut f64,
        detail: *mut rko_detail,
    ) {
        one(probability, 3, detail, || Ok(item(estimate, 1)?.to_core()?.probability_below(x)?))
    }
}
