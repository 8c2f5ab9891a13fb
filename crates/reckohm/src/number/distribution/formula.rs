//! What each function takes, and its formula: once for a single number and for arrays, in either precision.

use super::{BeyondReach, DistributionError, ElementFault};
use crate::number::arrays::Question;
use crate::number::batch::PerElement;
use crate::number::{DEGREES_OF_FREEDOM, DEVIATE, OutOfRange, PROBABILITY, Real, normal, student_t};

/// The answer for one number.
#[inline]
pub(super) fn answer<R: Real>(question: impl Question<R, Fault = ElementFault>, x: R) -> Result<R, DistributionError> {
    question.fault(x)?;
    Ok(question.alone(x))
}

/// Writes a question each: its name, the number asked for and the degrees of freedom if it has any, what may be wrong with
/// it, and the formula; a second one has the same bits and is quicker for a number alone.
macro_rules! questions {
    ($($name:ident($x:ident), $fault:ident, $formula:expr $(, $alone:expr)?;)+) => {$(
        #[derive(Clone, Copy)]
        pub(super) struct $name;

        impl<R: Real> PerElement<R, 1> for $name {
            #[inline(always)]
            fn of(self, [$x]: [R; 1]) -> R {
                $formula
            }
        }

        impl<R: Real> Question<R> for $name {
            type Fault = ElementFault;

            #[inline(always)]
            fn fault(self, x: R) -> Result<(), ElementFault> {
                $fault(x)
            }

            $(#[inline(always)]
            fn alone(self, $x: R) -> R {
                $alone
            })?
        }
    )+};
    (of $class:ident: $($name:ident($x:ident, $dof:ident), $formula:expr;)+) => {$(
        #[derive(Clone, Copy)]
        pub(super) struct $name<R>($class<R>);

        impl<R: Real> $name<R> {
            #[inline]
            pub(super) fn with(dof: R) -> Result<$name<R>, OutOfRange> {
                Ok($name($class::with(dof)?))
            }
        }

        impl<R: Real> PerElement<R, 1> for $name<R> {
            #[inline(always)]
            fn of(self, [$x]: [R; 1]) -> R {
                let $dof = self.0.dof;
                $formula
            }
        }

        impl<R: Real> Question<R> for $name<R> {
            type Fault = ElementFault;

            #[inline(always)]
            fn fault(self, x: R) -> Result<(), ElementFault> {
                self.0.fault(x)
            }
        }
    )+};
}

questions! {
    NormalBelow(z), deviate, normal::below(z);
    NormalAbove(z), deviate, normal::above(z);
    NormalQuantile(p), probability, positive_zero(-normal::any_quantile_above(p)),
        positive_zero(-normal::quantile_above(p));
    NormalQuantileAbove(p), probability, positive_zero(normal::any_quantile_above(p)),
        positive_zero(normal::quantile_above(p));
}

questions! {
    of Tail:
    TBelow(t, dof), student_t::above(-t, dof);
    TAbove(t, dof), student_t::above(t, dof);
}

questions! {
    of Quantile:
    TQuantile(p, dof), positive_zero(-student_t::quantile_above(p, dof));
    TQuantileAbove(p, dof), positive_zero(student_t::quantile_above(p, dof));
}

/// Legal degrees of freedom of a tail.
#[derive(Clone, Copy)]
pub(super) struct Tail<R> {
    dof: R,
}

impl<R: Real> Tail<R> {
    #[inline]
    fn with(dof: R) -> Result<Tail<R>, OutOfRange> {
        Ok(Tail { dof: DEGREES_OF_FREEDOM.check(dof)? })
    }

    #[inline(always)]
    fn fault(self, t: R) -> Result<(), ElementFault> {
        deviate(t)
    }
}

/// Legal degrees of freedom of a quantile.
#[derive(Clone, Copy)]
pub(super) struct Quantile<R> {
    dof: R,
    /// The logarithm of the least probability whose quantile is a number of its type.
    ln_least: R,
}

impl<R: Real> Quantile<R> {
    #[inline]
    fn with(dof: R) -> Result<Quantile<R>, OutOfRange> {
        let dof = DEGREES_OF_FREEDOM.check(dof)?;
        Ok(Quantile { dof, ln_least: student_t::ln_farthest_tail(dof) })
    }

    /// Whether the quantile exists and is a number of its type.
    #[inline(always)]
    fn fault(self, p: R) -> Result<(), ElementFault> {
        probability(p)?;
        if self.ln_least <= p.smaller(R::ONE - p).natural_log() {
            return Ok(());
        }
        let lower = student_t::above(R::LARGEST, self.dof);
        Err(BeyondReach { probability: p.to_f64(), lower: lower.to_f64(), upper: (R::ONE - lower).to_f64() }.into())
    }
}

#[inline(always)]
fn deviate<R: Real>(x: R) -> Result<(), ElementFault> {
    DEVIATE.check(x)?;
    Ok(())
}

#[inline(always)]
fn probability<R: Real>(p: R) -> Result<(), ElementFault> {
    PROBABILITY.check(p)?;
    Ok(())
}

/// A negative zero made positive: the median is 0 from both sides.
#[inline(always)]
fn positive_zero<R: Real>(x: R) -> R {
    x + R::ZERO
}
