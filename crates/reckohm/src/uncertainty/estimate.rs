//! The estimate: a value and the parts of its uncertainty.

use super::degrees_of_freedom::welch_satterthwaite;
use super::error::EstimateError;
use super::squares::lifted;
use crate::number::{FINITE, HALF_WIDTH, ONE_SIDED_HALF_WIDTH, Real, STANDARD_UNCERTAINTY, TYPE_A_DEGREES_OF_FREEDOM};

/// A part of the uncertainty found from repeats: the standard deviation of the mean and its degrees of freedom.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TypeA<R = f64> {
    /// Standard deviation of the mean.
    pub s: R,
    /// Degrees of freedom, one less than the number of repeats; infinite where there is no such part.
    pub dof: R,
}

impl<R: Real> TypeA<R> {
    /// No part of this sort.
    pub const NONE: TypeA<R> = TypeA { s: R::ZERO, dof: R::INFINITE };
}

/// A value with the shape of its uncertainty: up to two rectangular parts, one normal part for all other known ones,
/// up to two type A parts, and one-sided parts for effects that can only push the true value one way.
///
/// Parts beyond these are merged as they come, never to a narrower result of the type A parts: a third rectangular part
/// leaves the two widest as they are and adds the narrowest to the normal part as a/√3; of three type A parts the two
/// nearest in degrees of freedom become one of √(s₁² + s₂²) with the smaller degrees of freedom.
///
/// ```
/// use reckohm::uncertainty::Estimate;
/// // 4880 ohm shown; the clause allows ±69 ohm; three ohm of scatter, known from before.
/// let part = Estimate::exact(4880.0_f64)?.with_rectangular(69.0)?.with_normal(3.0)?;
/// let u95 = part.expanded(0.95)?;
/// assert!((u95.half_width - 65.8).abs() < 0.1);
/// assert!((u95.coverage_factor - 1.647).abs() < 0.001);
/// # Ok::<(), reckohm::uncertainty::EstimateError>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Estimate<R = f64> {
    pub(super) value: R,
    pub(super) rectangular: [R; 2],
    pub(super) normal_u: R,
    pub(super) type_a: [TypeA<R>; 2],
    pub(super) below: R,
    pub(super) above: R,
}

impl<R: Real> Estimate<R> {
    /// A value without uncertainty, to which parts are added.
    ///
    /// ```
    /// assert_eq!(reckohm::uncertainty::Estimate::exact(100.0)?.u(), 0.0);
    /// # Ok::<(), reckohm::uncertainty::EstimateError>(())
    /// ```
    ///
    /// # Errors
    /// A range error for a value that is not finite.
    pub fn exact(value: R) -> Result<Estimate<R>, EstimateError> {
        Ok(Estimate {
            value: FINITE.check(value)?,
            rectangular: [R::ZERO; 2],
            normal_u: R::ZERO,
            type_a: [TypeA::NONE; 2],
            below: R::ZERO,
            above: R::ZERO,
        })
    }

    /// A value with a standard uncertainty `u`: normal if `dof` is infinite, else of type A with so many degrees of
    /// freedom (1 or more).
    ///
    /// ```
    /// use reckohm::uncertainty::Estimate;
    /// let mean_of_five = Estimate::new(1000.2, 0.4, 4.0)?;
    /// assert_eq!(mean_of_five.effective_dof(), 4.0);
    /// # Ok::<(), reckohm::uncertainty::EstimateError>(())
    /// ```
    ///
    /// # Errors
    /// A range error for a value that is not finite, a negative or infinite `u`, degrees of freedom below 1.
    pub fn new(value: R, u: R, dof: R) -> Result<Estimate<R>, EstimateError> {
        let dof = TYPE_A_DEGREES_OF_FREEDOM.check(dof)?;
        let estimate = Estimate::exact(value)?;
        if dof == R::INFINITE { estimate.with_normal(u) } else { estimate.with_type_a(u, dof) }
    }

    /// An estimate from its parts as they stand in the struct of the C door: the wider rectangular part first.
    ///
    /// ```
    /// use reckohm::uncertainty::{Estimate, TypeA};
    /// let parts = Estimate::from_parts(10.0, [0.2, 0.1], 0.05, [TypeA::NONE; 2], 0.0, 0.0)?;
    /// assert_eq!(parts, Estimate::exact(10.0)?.with_rectangular(0.1)?.with_rectangular(0.2)?.with_normal(0.05)?);
    /// # Ok::<(), reckohm::uncertainty::EstimateError>(())
    /// ```
    ///
    /// # Errors
    /// A range error for the first part outside its range.
    pub fn from_parts(
        value: R,
        rectangular: [R; 2],
        normal_u: R,
        type_a: [TypeA<R>; 2],
        below: R,
        above: R,
    ) -> Result<Estimate<R>, EstimateError> {
        let [a, b] = rectangular;
        let [first, second] = type_a;
        let mut made = Estimate::exact(value)?;
        made.add_rectangular(a)?;
        made.add_rectangular(b)?;
        made.add_normal(normal_u)?;
        made.add_type_a(first.s, first.dof)?;
        made.add_type_a(second.s, second.dof)?;
        made.add_one_sided(below, above)?;
        // Once for all: u grows with each part.
        made.checked()
    }

    /// The same with one more rectangular part: an error that lies anywhere within ±`half_width` with equal probability,
    /// as a meter's accuracy clause or the step of a display.
    ///
    /// ```
    /// use reckohm::uncertainty::Estimate;
    /// let e = Estimate::exact(0.0)?.with_rectangular(0.1)?.with_rectangular(3.0)?.with_rectangular(1.0)?;
    /// assert_eq!(e.rectangular(), [3.0, 1.0]);
    /// # Ok::<(), reckohm::uncertainty::EstimateError>(())
    /// ```
    ///
    /// # Errors
    /// A range error for a negative or infinite half-width.
    pub fn with_rectangular(mut self, half_width: R) -> Result<Estimate<R>, EstimateError> {
        self.add_rectangular(half_width)?;
        self.checked()
    }

    fn add_rectangular(&mut self, half_width: R) -> Result<(), EstimateError> {
        let half_width = HALF_WIDTH.check(half_width)?;
        let [a, b] = self.rectangular;
        // The earlier one stays first on a tie.
        let (wide, middle, narrow) = if half_width > a {
            (half_width, a, b)
        } else if half_width > b {
            (a, half_width, b)
        } else {
            (a, b, half_width)
        };
        self.rectangular = [wide, middle];
        if narrow > R::ZERO {
            let ([u, narrow], lift) = lifted([self.normal_u, narrow]);
            self.normal_u = (u * u + narrow * narrow / R::lit(3.0)).square_root() / lift;
        }
        Ok(())
    }

    /// The same with one more normal part of standard uncertainty `u`; such parts add by variance.
    ///
    /// ```
    /// use reckohm::uncertainty::Estimate;
    /// assert_eq!(Estimate::exact(0.0)?.with_normal(3.0)?.with_normal(4.0)?.normal_u(), 5.0);
    /// # Ok::<(), reckohm::uncertainty::EstimateError>(())
    /// ```
    ///
    /// # Errors
    /// A range error for a negative or infinite `u`.
    pub fn with_normal(mut self, u: R) -> Result<Estimate<R>, EstimateError> {
        self.add_normal(u)?;
        self.checked()
    }

    fn add_normal(&mut self, u: R) -> Result<(), EstimateError> {
        let u = STANDARD_UNCERTAINTY.check(u)?;
        if u > R::ZERO {
            self.normal_u = if self.normal_u == R::ZERO { u } else { root_sum_square(self.normal_u, u) };
        }
        Ok(())
    }

    /// The same with one more type A part: `s` is the standard deviation of the mean, `dof` one less than the number of
    /// repeats; infinite degrees of freedom make it a normal part.
    ///
    /// ```
    /// use reckohm::uncertainty::Estimate;
    /// let e = Estimate::exact(0.0)?.with_type_a(0.3, 2.0)?.with_type_a(0.4, 9.0)?;
    /// assert_eq!(e.u(), 0.5);
    /// # Ok::<(), reckohm::uncertainty::EstimateError>(())
    /// ```
    ///
    /// # Errors
    /// A range error for a negative or infinite `s`, degrees of freedom below 1.
    pub fn with_type_a(mut self, s: R, dof: R) -> Result<Estimate<R>, EstimateError> {
        self.add_type_a(s, dof)?;
        self.checked()
    }

    fn add_type_a(&mut self, s: R, dof: R) -> Result<(), EstimateError> {
        let s = STANDARD_UNCERTAINTY.check(s)?;
        let dof = TYPE_A_DEGREES_OF_FREEDOM.check(dof)?;
        if s == R::ZERO {
            return Ok(());
        }
        if dof == R::INFINITE {
            return self.add_normal(s);
        }
        let new = TypeA { s, dof };
        let [first, second] = self.type_a;
        self.type_a = if first.s == R::ZERO {
            [new, second]
        } else if second.s == R::ZERO {
            ordered(first, new)
        } else {
            merge_nearest(first, second, new)
        };
        Ok(())
    }

    /// The same with one-sided parts: the true value may lie up to `below` under the value, or up to `above` over it, for a
    /// reason that the other parts do not hold (leakage, a body across the part). They widen intervals and decide
    /// verdicts at their worst, since nothing is known of where within they lie.
    ///
    /// ```
    /// use reckohm::uncertainty::Estimate;
    /// // 9.9 Mohm shown with 1 Gohm of leakage across: the part may be up to 0.1 Mohm more.
    /// let part = Estimate::exact(9.9e6)?.with_normal(1e4)?.with_one_sided(0.0, 1e5)?;
    /// let u95 = part.expanded(0.95)?;
    /// assert_eq!(u95.upper, part.value() + u95.half_width + 1e5);
    /// # Ok::<(), reckohm::uncertainty::EstimateError>(())
    /// ```
    ///
    /// # Errors
    /// A range error for a negative or infinite width.
    pub fn with_one_sided(mut self, below: R, above: R) -> Result<Estimate<R>, EstimateError> {
        self.add_one_sided(below, above)?;
        self.checked()
    }

    fn add_one_sided(&mut self, below: R, above: R) -> Result<(), EstimateError> {
        self.below += ONE_SIDED_HALF_WIDTH.check(below)?;
        self.above += ONE_SIDED_HALF_WIDTH.check(above)?;
        Ok(())
    }

    /// The estimate of `constant · x`: every part scaled, one-sided parts changing sides with the sign.
    ///
    /// ```
    /// use reckohm::uncertainty::Estimate;
    /// let doubled = Estimate::exact(2.0)?.with_rectangular(0.5)?.times(-2.0)?;
    /// assert_eq!((doubled.value(), doubled.rectangular()), (-4.0, [1.0, 0.0]));
    /// # Ok::<(), reckohm::uncertainty::EstimateError>(())
    /// ```
    ///
    /// # Errors
    /// A range error for a constant that is not finite; an error if the result does not fit the number type.
    pub fn times(mut self, constant: R) -> Result<Estimate<R>, EstimateError> {
        let c = FINITE.check(constant)?;
        let size = c.magnitude();
        self.value *= c;
        self.rectangular = self.rectangular.map(|a| a * size);
        self.normal_u *= size;
        self.type_a =
            self.type_a.map(|a| if a.s * size == R::ZERO { TypeA::NONE } else { TypeA { s: a.s * size, ..a } });
        let (below, above) = (self.below * size, self.above * size);
        (self.below, self.above) = if c < R::ZERO { (above, below) } else { (below, above) };
        self.checked()
    }

    /// The same parts around another value.
    ///
    /// # Errors
    /// A range error for a value that is not finite.
    pub(crate) fn at(self, value: R) -> Result<Estimate<R>, EstimateError> {
        Estimate { value: FINITE.check(value)?, ..self }.checked()
    }

    /// The value.
    pub fn value(&self) -> R {
        self.value
    }

    /// Half-widths of the rectangular parts, the wider first; 0 where there is none.
    pub fn rectangular(&self) -> [R; 2] {
        self.rectangular
    }

    /// Standard uncertainty of the normal part.
    pub fn normal_u(&self) -> R {
        self.normal_u
    }

    /// The type A parts, fewer degrees of freedom first; [`TypeA::NONE`] where there is none.
    pub fn type_a(&self) -> [TypeA<R>; 2] {
        self.type_a
    }

    /// How far below the value the true value may lie for a one-sided reason.
    pub fn below(&self) -> R {
        self.below
    }

    /// How far above the value the true value may lie for a one-sided reason.
    pub fn above(&self) -> R {
        self.above
    }

    /// Standard uncertainty of all parts together (JCGM 100 5.1.2), a one-sided width w counting w/√3. For information:
    /// intervals and verdicts come from the parts.
    pub fn u(&self) -> R {
        let [a, b] = self.rectangular;
        let [first, second] = self.type_a;
        let ([a, b, u, s, t, below, above], lift) =
            lifted([a, b, self.normal_u, first.s, second.s, self.below, self.above]);
        let three = R::lit(3.0);
        let one_sided = (below * below + above * above) / three;
        ((a * a + b * b) / three + u * u + (s * s + t * t) + one_sided).square_root() / lift
    }

    /// Effective degrees of freedom by the Welch-Satterthwaite formula (JCGM 100 G.4.1), only the type A parts having
    /// finite ones; infinite without such parts. For information.
    pub fn effective_dof(&self) -> R {
        welch_satterthwaite(self.u(), self.type_a.into_iter().map(|part| (part.s, part.dof)))
    }

    /// Itself if every sum of squares that follows from the parts fits the number type.
    fn checked(self) -> Result<Estimate<R>, EstimateError> {
        let u = self.u();
        if (u * R::lit(1e3)).finite() & (self.value.magnitude() + u).finite() {
            Ok(self)
        } else {
            Err(EstimateError::too_large::<R>())
        }
    }
}

/// A value, a half-width and a standard uncertainty, if an estimate of them would be legal.
pub(crate) fn checked_parts<R: Real>(value: R, half_width: R, u: R) -> Result<(R, R, R), EstimateError> {
    let (value, half_width, u) = (FINITE.check(value)?, HALF_WIDTH.check(half_width)?, STANDARD_UNCERTAINTY.check(u)?);
    // As of `checked`, with the squares' bound taken in place of their root: none of the squares may be infinite.
    let (square, size) = (half_width * half_width + u * u, half_width + u);
    if square.finite() & (size * R::lit(1e3)).finite() & (value.magnitude() + size).finite() {
        Ok((value, half_width, u))
    } else {
        Err(EstimateError::too_large::<R>())
    }
}

fn root_sum_square<R: Real>(x: R, y: R) -> R {
    let ([x, y], lift) = lifted([x, y]);
    (x * x + y * y).square_root() / lift
}

/// Fewer degrees of freedom first; the earlier one on a tie.
fn ordered<R: Real>(first: TypeA<R>, second: TypeA<R>) -> [TypeA<R>; 2] {
    if second.dof < first.dof { [second, first] } else { [first, second] }
}

/// Of three parts the two nearest in degrees of freedom become one that is never narrower.
fn merge_nearest<R: Real>(first: TypeA<R>, second: TypeA<R>, new: TypeA<R>) -> [TypeA<R>; 2] {
    let merged = |x: TypeA<R>, y: TypeA<R>| TypeA { s: root_sum_square(x.s, y.s), dof: x.dof.smaller(y.dof) };
    let distance = |x: TypeA<R>, y: TypeA<R>| (x.dof / y.dof).larger(y.dof / x.dof);
    let (p, q, r) = (distance(first, second), distance(first, new), distance(second, new));
    if p <= q && p <= r {
        ordered(merged(first, second), new)
    } else if q <= r {
        ordered(merged(first, new), second)
    } else {
        ordered(first, merged(second, new))
    }
}
