//! Many measurements as columns of numbers: value, standard uncertainty, degrees of freedom, rectangular half-width, each one
//! number for all or a number for each.
//!
//! An array is gone through in stretches. Where each element of a stretch has a normal part and one rectangular part at
//! most, which is what a meter leaves, its two tails come from loops without branches, by the same formulas that a single
//! estimate goes through; any other stretch is asked for estimate by estimate. The bits are those of the single call.

use core::ops::Range;

use super::answer::{Answer, Decision, Side, accepts, answer, rejects};
use super::column::{Column, STRETCH};
use super::error::VerdictError;
use super::rule::{Rule, RuleKind};
use crate::number::arrays::{ArrayFault, same_length};
use crate::number::batch::{self, ManyPerElement, PerElement};
use crate::number::{Real, by_type};
use crate::part::conformance::{Ends, Place, conformance_probability};
use crate::part::limits::Limits;
use crate::uncertainty::{
    EDGED_FROM, Estimate, EstimateError, WIDE_FROM, any_rectangular, edged_rectangular, lift, wide_rectangular,
};

/// Many measurements, each of a value with standard uncertainty `u`, normal or of type A by its degrees of freedom, and one
/// rectangular part, a meter's accuracy clause say.
///
/// ```
/// use reckohm::verdict::{Answer, Column, Columns, Decision, Limits, Rule};
/// let measured = Columns {
///     value: Column::Each(&[4860.0, 4880.0, 4999.0]),
///     u: Column::One(3.0),
///     dof: Column::One(f64::INFINITY),
///     rectangular: Column::Each(&[68.88, 69.04, 69.992]),
/// };
/// let limits = Limits::from_tolerance(4700.0, 0.05)?;
/// let mut probability = [0.0; 3];
/// measured.conformance_probability_into(&limits, &mut probability)?;
/// assert!((probability[1] - 0.898).abs() < 5e-4);
/// let mut decisions = [Decision::UNMADE; 3];
/// measured.answer_into(&limits, Rule::guarded(0.05)?, &mut decisions)?;
/// assert_eq!(decisions.map(|each| each.answer), [Answer::Conforms, Answer::Undecided, Answer::DoesNotConform]);
/// assert_eq!(decisions.map(|each| each.conformance_probability), probability);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Columns<'a, R = f64> {
    /// Values.
    pub value: Column<'a, R>,
    /// Standard uncertainties.
    pub u: Column<'a, R>,
    /// Degrees of freedom of these; infinite for a normal part.
    pub dof: Column<'a, R>,
    /// Half-widths of a rectangular part.
    pub rectangular: Column<'a, R>,
}

impl<'a, R: Real> Columns<'a, R> {
    /// These elements of each column.
    ///
    /// ```
    /// use reckohm::verdict::{Column, Columns};
    /// let (values, one) = ([1.0, 2.0, 3.0], Column::One(0.0));
    /// let all = Columns { value: Column::Each(&values), u: one, dof: Column::One(4.0), rectangular: one };
    /// assert_eq!(all.part(1..2), Columns { value: Column::Each(&[2.0]), ..all });
    /// ```
    #[inline]
    pub fn part(self, elements: Range<usize>) -> Columns<'a, R> {
        Columns {
            value: self.value.part(elements.clone()),
            u: self.u.part(elements.clone()),
            dof: self.dof.part(elements.clone()),
            rectangular: self.rectangular.part(elements),
        }
    }

    /// One of the measurements as an estimate.
    ///
    /// ```
    /// use reckohm::verdict::{Column, Columns};
    /// let one = Column::One(0.0);
    /// let all = Columns { value: Column::Each(&[1.0, f64::NAN]), u: one, dof: Column::One(4.0), rectangular: one };
    /// assert_eq!(all.estimate(0)?.value(), 1.0);
    /// assert!(all.estimate(1).is_err());
    /// # Ok::<(), reckohm::uncertainty::EstimateError>(())
    /// ```
    ///
    /// # Errors
    /// [`EstimateError`] for what no estimate can hold.
    pub fn estimate(&self, index: usize) -> Result<Estimate<R>, EstimateError> {
        Estimate::new(self.value.at(index), self.u.at(index), self.dof.at(index))?
            .with_rectangular(self.rectangular.at(index))
    }

    /// Whether each of `count` measurements can be judged, as what writes results asks first.
    ///
    /// ```
    /// use reckohm::verdict::{Column, Columns};
    /// let one = Column::One(0.0);
    /// let all = Columns { value: Column::Each(&[1.0, f64::NAN]), u: one, dof: Column::One(4.0), rectangular: one };
    /// assert!(all.check(2).unwrap_err().to_string().contains("element 1, the first of 1 that failed"));
    /// assert!(all.check(3).is_err() && all.part(0..1).check(1).is_ok());
    /// ```
    ///
    /// # Errors
    /// [`VerdictError::Lengths`] if a column has another number of elements; [`VerdictError::Element`] with the first failing
    /// index and how many failed.
    pub fn check(&self, count: usize) -> Result<(), VerdictError> {
        self.fit(count)?;
        let mut first = None;
        let mut failed = 0_u64;
        self.stretches(count, |stretch, elements| {
            if stretch.plain {
                return;
            }
            for index in elements {
                if let Err(fault) = self.estimate(index) {
                    first = first.or(Some((fault, index as u64)));
                    failed = failed.wrapping_add(1);
                }
            }
        });
        match first {
            Some((fault, index)) => Err(ArrayFault::Element { fault, index, failed }.into()),
            None => Ok(()),
        }
    }

    /// [`conformance_probability`](super::conformance_probability) of each measurement.
    ///
    /// ```
    /// use reckohm::verdict::{Column, Columns, Limits};
    /// let (u, normal) = (Column::One(0.5), Column::One(f64::INFINITY));
    /// let all = Columns { value: Column::Each(&[1.0, 2.0]), u, dof: normal, rectangular: Column::One(0.0) };
    /// let mut out = [0.0; 2];
    /// all.conformance_probability_into(&Limits::at_most(2.0)?, &mut out)?;
    /// assert_eq!(out[1], 0.5);
    /// # Ok::<(), reckohm::verdict::VerdictError>(())
    /// ```
    ///
    /// # Errors
    /// [`VerdictError::Lengths`] if a column has another number of elements than `out`; [`VerdictError::Element`] with the first
    /// failing index and how many failed. Then nothing is written.
    pub fn conformance_probability_into(&self, limits: &Limits<R>, out: &mut [R]) -> Result<(), VerdictError> {
        self.check(out.len())?;
        self.probabilities(limits, out, &mut []);
        Ok(())
    }

    /// [`conformance_probability`](super::conformance_probability) of each measurement, some of which may be illegal: `valid`
    /// says which were good, the places of the others are left as they are, and the count of those others is returned.
    ///
    /// ```
    /// use reckohm::verdict::{Column, Columns, Limits};
    /// let one = Column::One(0.0);
    /// let all = Columns { value: Column::Each(&[1.0, f64::NAN]), u: one, dof: Column::One(4.0), rectangular: one };
    /// let (mut out, mut valid) = ([7.0; 2], [true; 2]);
    /// assert_eq!(all.conformance_probability_into_valid(&Limits::at_most(2.0)?, &mut out, &mut valid)?, 1);
    /// assert_eq!((out, valid), ([1.0, 7.0], [true, false]));
    /// # Ok::<(), reckohm::verdict::VerdictError>(())
    /// ```
    ///
    /// # Errors
    /// [`VerdictError::Lengths`]; then nothing is written.
    pub fn conformance_probability_into_valid(
        &self,
        limits: &Limits<R>,
        out: &mut [R],
        valid: &mut [bool],
    ) -> Result<usize, VerdictError> {
        self.fit(out.len())?;
        same_length::<EstimateError>(out.len(), valid.len())?;
        Ok(self.probabilities(limits, out, valid))
    }

    /// [`answer`](super::answer) of each measurement.
    ///
    /// ```
    /// use reckohm::verdict::{Answer, Column, Columns, Decision, Limits, Rule};
    /// let (u, normal) = (Column::One(0.5), Column::One(f64::INFINITY));
    /// let all = Columns { value: Column::Each(&[1.0, 2.0]), u, dof: normal, rectangular: Column::One(0.0) };
    /// let mut out = [Decision::UNMADE; 2];
    /// all.answer_into(&Limits::at_most(2.0)?, Rule::guarded(0.05)?, &mut out)?;
    /// assert_eq!(out.map(|each| each.answer), [Answer::Conforms, Answer::Undecided]);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    ///
    /// # Errors
    /// [`VerdictError::Lengths`] if a column has another number of elements than `out`; [`VerdictError::Element`] with the first
    /// failing index and how many failed. Then nothing is written.
    pub fn answer_into(&self, limits: &Limits<R>, rule: Rule<R>, out: &mut [Decision<R>]) -> Result<(), VerdictError> {
        self.check(out.len())?;
        self.decisions(limits, rule, out, &mut []);
        Ok(())
    }

    /// [`answer`](super::answer) of each measurement, some of which may be illegal: `valid` says which were good, the places of
    /// the others are left as they are, and the count of those others is returned.
    ///
    /// ```
    /// use reckohm::verdict::{Answer, Column, Columns, Decision, Limits, Rule};
    /// let one = Column::One(0.0);
    /// let all = Columns { value: Column::Each(&[1.0, f64::NAN]), u: one, dof: Column::One(4.0), rectangular: one };
    /// let (mut out, mut valid) = ([Decision::UNMADE; 2], [true; 2]);
    /// let rule = Rule::simple_acceptance();
    /// assert_eq!(all.answer_into_valid(&Limits::at_most(2.0)?, rule, &mut out, &mut valid)?, 1);
    /// assert_eq!((out[0].answer, out[1]), (Answer::Conforms, Decision::UNMADE));
    /// # Ok::<(), reckohm::verdict::VerdictError>(())
    /// ```
    ///
    /// # Errors
    /// [`VerdictError::Lengths`]; then nothing is written.
    pub fn answer_into_valid(
        &self,
        limits: &Limits<R>,
        rule: Rule<R>,
        out: &mut [Decision<R>],
        valid: &mut [bool],
    ) -> Result<usize, VerdictError> {
        self.fit(out.len())?;
        same_length::<EstimateError>(out.len(), valid.len())?;
        Ok(self.decisions(limits, rule, out, valid))
    }

    fn fit(&self, count: usize) -> Result<(), VerdictError> {
        self.value.fits(count)?;
        self.u.fits(count)?;
        self.dof.fits(count)?;
        self.rectangular.fits(count)
    }

    fn probabilities(&self, limits: &Limits<R>, out: &mut [R], valid: &mut [bool]) -> usize {
        let (lower, upper) = (limits.lower_ohm(), limits.upper_ohm());
        let mut failed = 0_usize;
        self.stretches(out.len(), |stretch, elements| {
            let Some(out) = out.get_mut(elements.clone()) else { return };
            let marks = valid.get_mut(elements.clone()).unwrap_or_default();
            if !stretch.plain {
                failed = failed.wrapping_add(
                    self.one_by_one(elements, out, marks, |estimate| conformance_probability(&estimate, limits)),
                );
                return;
            }
            marks.fill(true);
            let (mut above, mut below) = ([R::ZERO; STRETCH], [R::ZERO; STRETCH]);
            let tails = stretch.tails(limits, &mut above, &mut below);
            batch::map(Inside { lower, upper }, tails, out);
        });
        failed
    }

    fn decisions(&self, limits: &Limits<R>, rule: Rule<R>, out: &mut [Decision<R>], valid: &mut [bool]) -> usize {
        let (lower, upper) = (limits.lower_ohm(), limits.upper_ohm());
        let mut failed = 0_usize;
        self.stretches(out.len(), |stretch, elements| {
            let Some(out) = out.get_mut(elements.clone()) else { return };
            let marks = valid.get_mut(elements.clone()).unwrap_or_default();
            if !stretch.plain {
                let decided = |estimate: Estimate<R>| answer(&estimate, limits, rule);
                failed = failed.wrapping_add(self.one_by_one(elements, out, marks, decided));
                return;
            }
            marks.fill(true);
            let (mut above, mut below) = ([R::ZERO; STRETCH], [R::ZERO; STRETCH]);
            let tails = stretch.tails(limits, &mut above, &mut below);
            let (mut probability, mut code) = ([R::ZERO; STRETCH], [R::ZERO; STRETCH]);
            let decided = Decided { lower, upper, risk: rule.risk(), kind: rule.kind() };
            batch::map_many(decided, tails, [&mut probability, &mut code]);
            for ((out, probability), code) in out.iter_mut().zip(probability).zip(code) {
                *out = decision(code, probability);
            }
        });
        failed
    }

    /// Each estimate by itself; writes nothing for those that cannot be.
    fn one_by_one<T>(
        &self,
        elements: Range<usize>,
        out: &mut [T],
        valid: &mut [bool],
        ask: impl Fn(Estimate<R>) -> T,
    ) -> usize {
        let mut failed = 0_usize;
        let mut valid = valid.iter_mut();
        for (index, place) in elements.zip(out) {
            let estimate = self.estimate(index).ok();
            if let Some(mark) = valid.next() {
                *mark = estimate.is_some();
            }
            match estimate {
                Some(estimate) => *place = ask(estimate),
                None => failed = failed.wrapping_add(1),
            }
        }
        failed
    }

    /// Goes through the elements stretch by stretch.
    fn stretches(&self, count: usize, mut work: impl FnMut(Stretch<'_, R>, Range<usize>)) {
        let columns = [self.value, self.u, self.dof, self.rectangular];
        let rooms = columns.map(|column| [if let Column::One(x) = column { x } else { R::ZERO }; STRETCH]);
        let [value, u, dof, rectangular] = &rooms;
        let parts = match (self.u, self.rectangular) {
            (Column::One(u), Column::One(a)) => Some((u, a)),
            _ => None,
        };
        let mut start = 0;
        while start < count {
            let end = count.min(start.saturating_add(STRETCH));
            let numbers = [
                self.value.slice(start..end, value),
                self.u.slice(start..end, u),
                self.dof.slice(start..end, dof),
                self.rectangular.slice(start..end, rectangular),
            ];
            let plain = batch::takes_all(Plain, numbers);
            work(Stretch { numbers, parts, plain }, start..end);
            start = end;
        }
    }
}

/// Some elements, side by side.
struct Stretch<'a, R> {
    /// Values, standard uncertainties, degrees of freedom, half-widths.
    numbers: [&'a [R]; 4],
    /// Standard deviation and half-width where they are the same for all.
    parts: Option<(R, R)>,
    /// Whether the fast loops take each of them.
    plain: bool,
}

impl<'a, R: Real> Stretch<'a, R> {
    /// The values with their tails beyond the upper and the lower limit.
    fn tails(&self, limits: &Limits<R>, above: &'a mut [R; STRETCH], below: &'a mut [R; STRETCH]) -> [&'a [R]; 3] {
        let [value, u, _, a] = self.numbers;
        let (lower, upper) = (limits.lower_ohm(), limits.upper_ohm());
        let outs = [above.as_mut_slice(), below.as_mut_slice()];
        let at_least = |ratio: f64| batch::takes_all(AtLeast(R::lit(ratio)), [u, a]);
        match self.parts {
            Some((s, a)) if at_least(WIDE_FROM) => batch::map_many(WideOf { lower, upper, s, a }, [value], outs),
            Some((s, a)) if at_least(EDGED_FROM) => batch::map_many(EdgedOf { lower, upper, s, a }, [value], outs),
            None if at_least(WIDE_FROM) => batch::map_many(WideEach { lower, upper }, [value, u, a], outs),
            _ => batch::map_many(AnyEach { lower, upper }, [value, u, a], outs),
        }
        [value, above, below]
    }
}

/// The probability of being inside, from value and tails.
#[derive(Clone, Copy)]
struct Inside<R> {
    lower: R,
    upper: R,
}

impl<R: Real> PerElement<R, 3> for Inside<R> {
    #[inline(always)]
    fn of(self, [value, above, below]: [R; 3]) -> R {
        Place::with_tails(value, self.lower, self.upper, above, below).inside()
    }
}

/// That probability, and answer and side as a number that [`decision`] reads.
#[derive(Clone, Copy)]
struct Decided<R> {
    lower: R,
    upper: R,
    risk: Option<R>,
    kind: RuleKind,
}

impl<R: Real> ManyPerElement<R, 3, 2> for Decided<R> {
    #[inline(always)]
    fn of(self, [value, above, below]: [R; 3]) -> [R; 2] {
        let Decided { lower, upper, risk, kind } = self;
        let place = Place::with_tails(value, lower, upper, above, below);
        let (probability, inside) = (place.inside(), (lower <= value) & (value <= upper));
        let (conforms, fails) = match risk {
            None => (inside, !inside),
            Some(risk) => {
                let ends = Ends { lowest: place, highest: place };
                (accepts(ends, kind, risk), rejects(ends, kind, risk, || probability))
            }
        };
        let answer = R::select(conforms, R::ZERO, R::select(fails, R::ONE, R::lit(2.0)));
        [probability, R::select(inside, answer, answer + R::lit(3.0))]
    }
}

/// Both tails of a value, a line each: name, fields, further numbers, the tails at the two distances. Beyond an open end there
/// is nothing.
macro_rules! tails {
    ($($(#[$doc:meta])+ $name:ident { $($field:ident),* }($count:literal: $distances:ident $(, $x:ident)*) $formula:expr;)+) => {$(
        $(#[$doc])+
        #[derive(Clone, Copy)]
        struct $name<R> { lower: R, upper: R $(, $field: R)* }

        impl<R: Real> ManyPerElement<R, $count, 2> for $name<R> {
            #[inline(always)]
            fn of(self, [value $(, $x)*]: [R; $count]) -> [R; 2] {
                let $name { lower, upper $(, $field)* } = self;
                let $distances = [(value - upper).magnitude(), (value - lower).magnitude()];
                $formula
            }
        }
    )+};
}

tails! {
    /// Where only the value differs and the half-width is wide.
    WideOf { s, a }(1: distances) wide_rectangular(distances, a, s);
    /// Where only the value differs and no tail is narrow.
    EdgedOf { s, a }(1: distances) edged_rectangular(distances, a, s);
    /// Where each half-width is wide.
    WideEach {}(3: distances, u, a) wide_rectangular(distances, a, u);
    /// Anything else.
    AnyEach {}(3: distances, u, a) {
        // Not by `map`, whose closure the compiler calls, and a loop with a call is not widened.
        let ([to_upper, to_lower], s) = (distances, u);
        [any_rectangular(to_upper, a, s), any_rectangular(to_lower, a, s)]
    };
}

/// Answer and side by the number that [`Decided`] gives.
const DECISIONS: [(Answer, Side); 6] = [
    (Answer::Conforms, Side::Inside),
    (Answer::DoesNotConform, Side::Inside),
    (Answer::Undecided, Side::Inside),
    (Answer::Conforms, Side::Outside),
    (Answer::DoesNotConform, Side::Outside),
    (Answer::Undecided, Side::Outside),
];

/// Answer and side are looked up, so that no branch depends on which come next.
#[inline(always)]
fn decision<R: Real>(code: R, conformance_probability: R) -> Decision<R> {
    let found = usize::try_from(code.whole_part()).ok().and_then(|code| DECISIONS.get(code));
    let (answer, side) = found.copied().unwrap_or((Answer::Undecided, Side::Outside));
    Decision { answer, side, conformance_probability }
}

/// Whether the fast loops take an element: a normal part and one rectangular part at most, both far from the ends of the
/// number type, where a shape is [lifted](lift) or an estimate refused.
#[derive(Clone, Copy)]
struct Plain;

impl<R: Real> PerElement<R, 4> for Plain {
    #[inline(always)]
    fn of(self, [value, u, dof, a]: [R; 4]) -> R {
        let (largest, widest) = (by_type::<R>(1e30, 1e300), by_type::<R>(1e15, 1e100));
        let size = a.larger(u);
        let taken = (value.magnitude() <= largest)
            & (u >= R::ZERO)
            & (a >= R::ZERO)
            & (size <= widest)
            & ((size == R::ZERO) | (lift(size) == R::ONE))
            & (dof == R::INFINITE);
        R::select(taken, R::ONE, R::ZERO)
    }
}

/// Whether a half-width is at least so many times the standard deviation.
#[derive(Clone, Copy)]
struct AtLeast<R>(R);

impl<R: Real> PerElement<R, 2> for AtLeast<R> {
    #[inline(always)]
    fn of(self, [u, a]: [R; 2]) -> R {
        R::select(a >= self.0 * u, R::ONE, R::ZERO)
    }
}
