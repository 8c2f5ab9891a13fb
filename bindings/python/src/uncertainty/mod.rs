//! `reckohm.uncertainty`.

use pyo3::basic::CompareOp;
use pyo3::prelude::*;
use pyo3::types::PyTuple;
use reckohm::uncertainty as core;

mod expanded;

pub use expanded::Expanded;
use expanded::Method;

use crate::errors::Failure;
use crate::values::{Number, hash_of, input_type_error, shown, stated};

/// A value with the shape of its uncertainty.
///
/// Up to two rectangular parts (a meter's accuracy clause, the step of a display), one normal part for all other known
/// ones, up to two type A parts (the scatter of repeats), and one-sided parts for effects that can only push the true
/// value one way. Intervals and verdicts come from the parts, not from a factor times ``u``. Parts are added by the
/// ``with_…`` methods, each of which gives a new estimate.
///
/// Two estimates have no order: ``a < b`` raises; `reckohm.verdict.judge` says whether one lies within limits.
///
/// Parameters
/// ----------
/// value : float
///     The value.
/// u : float
///     Its standard uncertainty: normal if ``dof`` is infinite, else of type A.
/// dof : float
///     Degrees of freedom, 1 or more: one less than the number of repeats.
///
/// Raises
/// ------
/// RangeError
///     A number outside its range.
///
/// Examples
/// --------
/// A display shows 4880 ohm, the clause allows 69 ohm either way, and the scatter is known to be 3 ohm:
///
/// >>> from reckohm.uncertainty import Estimate
/// >>> part = Estimate(4880, 3).with_rectangular(69)
/// >>> part
/// Estimate(4880.0, 3.0).with_rectangular(69.0)
/// >>> print(part)
/// 4880 ± 66
/// >>> round(part.expanded().coverage_factor, 3)
/// 1.646
#[pyclass(frozen, from_py_object, module = "reckohm.uncertainty")]
#[derive(Clone, Copy, PartialEq)]
pub struct Estimate(pub core::Estimate);

type Parts = (f64, (f64, f64), f64, ((f64, f64), (f64, f64)), f64, f64);

impl Estimate {
    fn parts(&self) -> Parts {
        let ([a, b], [first, second]) = (self.0.rectangular(), self.0.type_a());
        let type_a = ((first.s, first.dof), (second.s, second.dof));
        (self.0.value(), (a, b), self.0.normal_u(), type_a, self.0.below(), self.0.above())
    }
}

#[pymethods]
impl Estimate {
    #[classattr]
    fn __match_args__() -> (&'static str, &'static str) {
        ("value", "u")
    }

    /// NumPy leaves operators with arrays to this class, and does not take estimates apart.
    #[classattr]
    fn __array_ufunc__() -> Option<bool> {
        None
    }

    #[new]
    #[pyo3(signature = (value, u=Number(0.0), dof=Number(f64::INFINITY)), text_signature = "(value, u=0.0, dof=inf)")]
    fn new(value: Number, u: Number, dof: Number) -> Result<Estimate, Failure> {
        Ok(Estimate(core::Estimate::new(value.0, u.0, dof.0)?))
    }

    /// The same with one more rectangular part: an error anywhere within ±half_width with equal probability.
    ///
    /// Examples
    /// --------
    /// >>> from reckohm.uncertainty import Estimate
    /// >>> Estimate(0.0).with_rectangular(0.1).with_rectangular(3).rectangular
    /// (3.0, 0.1)
    fn with_rectangular(&self, half_width: Number) -> Result<Estimate, Failure> {
        Ok(Estimate(self.0.with_rectangular(half_width.0)?))
    }

    /// The same with one more normal part of standard uncertainty ``u``; such parts add by variance.
    ///
    /// Examples
    /// --------
    /// >>> from reckohm.uncertainty import Estimate
    /// >>> Estimate(0.0, 3).with_normal(4).normal_u
    /// 5.0
    fn with_normal(&self, u: Number) -> Result<Estimate, Failure> {
        Ok(Estimate(self.0.with_normal(u.0)?))
    }

    /// The same with one more type A part: the standard deviation of a mean, with one degree of freedom less than repeats.
    ///
    /// Examples
    /// --------
    /// >>> from reckohm.uncertainty import Estimate
    /// >>> Estimate(0.0).with_type_a(0.3, 2).with_type_a(0.4, 9).u
    /// 0.5
    fn with_type_a(&self, s: Number, dof: Number) -> Result<Estimate, Failure> {
        Ok(Estimate(self.0.with_type_a(s.0, dof.0)?))
    }

    /// The mean of repeated observations, with the standard deviation of the mean as a type A part (JCGM 100 4.2.3).
    ///
    /// Examples
    /// --------
    /// >>> from reckohm.uncertainty import Estimate
    /// >>> mean = Estimate.from_repeats([127.6725, 127.8924, 127.5063, 127.7104, 127.8765])
    /// >>> round(mean.value, 3), round(mean.u, 3)
    /// (127.732, 0.071)
    #[staticmethod]
    fn from_repeats(observations: Vec<f64>) -> Result<Estimate, Failure> {
        Ok(Estimate(core::Estimate::from_repeats(&observations)?))
    }

    /// The same with one-sided parts: the true value may lie up to ``below`` under the value or ``above`` over it.
    ///
    /// Examples
    /// --------
    /// 9.9 Mohm shown, with 1 Gohm of leakage across: the part may be up to 0.1 Mohm more.
    ///
    /// >>> from reckohm.uncertainty import Estimate
    /// >>> Estimate(9.9e6, 1e4).with_one_sided(0, 1e5).above
    /// 100000.0
    fn with_one_sided(&self, below: Number, above: Number) -> Result<Estimate, Failure> {
        Ok(Estimate(self.0.with_one_sided(below.0, above.0)?))
    }

    /// The estimate of ``constant`` times this: every part scaled, one-sided parts changing sides with the sign.
    ///
    /// Examples
    /// --------
    /// >>> from reckohm.uncertainty import Estimate
    /// >>> Estimate(2.0).with_rectangular(0.5).times(-2)
    /// Estimate(-4.0).with_rectangular(1.0)
    fn times(&self, constant: Number) -> Result<Estimate, Failure> {
        Ok(Estimate(self.0.times(constant.0)?))
    }

    /// The value.
    #[getter]
    fn value(&self) -> f64 {
        self.0.value()
    }

    /// Standard uncertainty of all parts together (JCGM 100, 5.1.2), for information.
    #[getter]
    fn u(&self) -> f64 {
        self.0.u()
    }

    /// Effective degrees of freedom by the Welch-Satterthwaite formula (JCGM 100, G.4.1), for information.
    #[getter]
    fn effective_dof(&self) -> f64 {
        self.0.effective_dof()
    }

    /// Half-widths of the two rectangular parts, the wider first; 0 where there is none.
    #[getter]
    fn rectangular(&self) -> (f64, f64) {
        self.parts().1
    }

    /// Standard uncertainty of the normal part.
    #[getter]
    fn normal_u(&self) -> f64 {
        self.0.normal_u()
    }

    /// The type A parts as pairs of standard deviation of the mean and degrees of freedom.
    #[getter]
    fn type_a<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyTuple>> {
        PyTuple::new(
            py,
            self.0.type_a().into_iter().filter(|part| part.s != 0.0).map(|part| (part.s, part.dof)).collect::<Vec<_>>(),
        )
    }

    /// How far below the value the true value may lie for a one-sided reason.
    #[getter]
    fn below(&self) -> f64 {
        self.0.below()
    }

    /// How far above the value the true value may lie for a one-sided reason.
    #[getter]
    fn above(&self) -> f64 {
        self.0.above()
    }

    /// The expanded uncertainty: the half-width that holds this probability, found from all parts added together.
    ///
    /// What it means: over meters whose error lies anywhere within their clause with equal probability. One meter at the
    /// edge of its clause is wrong the same way on every part.
    ///
    /// Parameters
    /// ----------
    /// coverage_probability : float
    ///     Between 0 and 1; 0.95 is the convention.
    ///
    /// Returns
    /// -------
    /// Expanded
    ///
    /// Raises
    /// ------
    /// RangeError
    ///     A probability outside its range, or a result that no number holds.
    ///
    /// Examples
    /// --------
    /// >>> from reckohm.uncertainty import Estimate
    /// >>> round(Estimate(0.0).with_rectangular(1).expanded(0.95).half_width, 12)
    /// 0.95
    #[pyo3(signature = (coverage_probability=Number(0.95)), text_signature = "($self, coverage_probability=0.95)")]
    fn expanded(&self, coverage_probability: Number) -> Result<Expanded, Failure> {
        Expanded::of(*self, Method::Expanded, coverage_probability.0)
    }

    /// The expanded uncertainty by effective degrees of freedom and Student's t (JCGM 100, G.4), as published budgets
    /// state it.
    ///
    /// For comparison with such budgets: it does not hold its coverage probability for few repeats.
    ///
    /// Examples
    /// --------
    /// >>> from reckohm.uncertainty import Estimate
    /// >>> round(Estimate(0.0, 1.0, 4).expanded_welch_satterthwaite(0.95).coverage_factor, 3)
    /// 2.776
    #[pyo3(signature = (coverage_probability=Number(0.95)), text_signature = "($self, coverage_probability=0.95)")]
    fn expanded_welch_satterthwaite(&self, coverage_probability: Number) -> Result<Expanded, Failure> {
        Expanded::of(*self, Method::WelchSatterthwaite, coverage_probability.0)
    }

    /// The half-width that holds for every meter within its clause, not only over all of them.
    ///
    /// Rectangular parts count in full, the others by their quantiles.
    ///
    /// Examples
    /// --------
    /// >>> from reckohm.uncertainty import Estimate
    /// >>> Estimate(0.0).with_rectangular(1).expanded_guaranteed().half_width
    /// 1.0
    #[pyo3(signature = (coverage_probability=Number(0.95)), text_signature = "($self, coverage_probability=0.95)")]
    fn expanded_guaranteed(&self, coverage_probability: Number) -> Result<Expanded, Failure> {
        Expanded::of(*self, Method::Guaranteed, coverage_probability.0)
    }

    /// How far from the value a bound must lie for the true value to be beyond it with this probability.
    ///
    /// Examples
    /// --------
    /// >>> from reckohm.uncertainty import Estimate
    /// >>> round(Estimate(0.0, 1.0).quantile_above(0.05), 4)
    /// 1.6449
    fn quantile_above(&self, tail_probability: Number) -> Result<f64, Failure> {
        Ok(self.0.quantile_above(tail_probability.0)?)
    }

    /// The probability that the true value is above ``x``.
    ///
    /// Examples
    /// --------
    /// >>> from reckohm.uncertainty import Estimate
    /// >>> Estimate(10.0, 1.0).probability_above(10)
    /// 0.5
    fn probability_above(&self, x: Number) -> Result<f64, Failure> {
        Ok(self.0.probability_above(x.0)?)
    }

    /// The probability that the true value is below ``x``.
    ///
    /// Examples
    /// --------
    /// >>> from reckohm.uncertainty import Estimate
    /// >>> Estimate(10.0).with_rectangular(2).probability_below(9)
    /// 0.25
    fn probability_below(&self, x: Number) -> Result<f64, Failure> {
        Ok(self.0.probability_below(x.0)?)
    }

    fn __richcmp__(&self, other: &Bound<'_, PyAny>, op: CompareOp) -> PyResult<bool> {
        let equal = other.cast::<Estimate>().is_ok_and(|other| other.get() == self);
        match op {
            CompareOp::Eq => Ok(equal),
            CompareOp::Ne => Ok(!equal),
            _ => Err(input_type_error(
                other.py(),
                "estimates: order of two asked for, but values that are uncertain have none; \
                 ask reckohm.verdict.judge whether one lies within limits, or compare .value",
            )?),
        }
    }

    fn __hash__(&self, py: Python<'_>) -> PyResult<isize> {
        hash_of(py, self.parts())
    }

    fn __reduce__<'py>(&self, py: Python<'py>) -> PyResult<(Bound<'py, PyAny>, Parts)> {
        Ok((py.import("reckohm.uncertainty")?.getattr("_from_parts")?, self.parts()))
    }

    pub(crate) fn __repr__(&self) -> String {
        let (value, (a, b), normal_u, ((s1, dof1), (s2, dof2)), below, above) = self.parts();
        let mut text = format!("Estimate({}", shown(value));
        match (normal_u != 0.0, s1 != 0.0) {
            (true, _) => text += &format!(", {})", shown(normal_u)),
            (false, true) => text += &format!(", {}, {})", shown(s1), shown(dof1)),
            (false, false) => text += ")",
        }
        for half_width in [a, b].into_iter().filter(|half_width| *half_width != 0.0) {
            text += &format!(".with_rectangular({})", shown(half_width));
        }
        if normal_u != 0.0 && s1 != 0.0 {
            text += &format!(".with_type_a({}, {})", shown(s1), shown(dof1));
        }
        if s2 != 0.0 {
            text += &format!(".with_type_a({}, {})", shown(s2), shown(dof2));
        }
        if below != 0.0 || above != 0.0 {
            text += &format!(".with_one_sided({}, {})", shown(below), shown(above));
        }
        text
    }

    fn __str__(&self) -> Result<String, Failure> {
        let half_width = self.0.expanded(0.95)?.half_width;
        let mut text = stated(self.0.value(), half_width);
        for (sign, width) in [("-", self.0.below()), ("+", self.0.above())] {
            if width != 0.0 {
                text += &format!(", and {sign}{} one-sided", shown(width));
            }
        }
        Ok(text)
    }
}

/// Effective degrees of freedom of a sum of parts, by the Welch-Satterthwaite formula (JCGM 100 G.4.1); not cut to a whole
/// number, infinite where no part has finite ones.
///
/// Parameters
/// ----------
/// u : sequence of float
///     Standard uncertainty of each part, 0 or more.
/// dof : sequence of float
///     Degrees of freedom of each part, 1 or more; infinite for a part that only counts in the sum.
///
/// Raises
/// ------
/// RangeError
///     A number outside its range.
/// CountError
///     Sequences of different lengths.
///
/// Examples
/// --------
/// The end gauge of JCGM 100 H.1, in nanometres: 16 after cutting.
///
/// >>> from reckohm.uncertainty import effective_dof
/// >>> int(effective_dof([25, 5.8, 3.9, 6.7, 2.9, 16.6], [18, 24, 5, 8, 50, 2]))
/// 16
#[pyfunction]
fn effective_dof(u: Vec<f64>, dof: Vec<f64>) -> Result<f64, Failure> {
    Ok(core::effective_dof(&u, &dof)?)
}

/// An estimate from its parts, as pickle keeps them.
#[pyfunction]
fn _from_parts(
    value: f64,
    rectangular: (f64, f64),
    normal_u: f64,
    type_a: ((f64, f64), (f64, f64)),
    below: f64,
    above: f64,
) -> Result<Estimate, Failure> {
    let part = |(s, dof)| core::TypeA { s, dof };
    let type_a = [part(type_a.0), part(type_a.1)];
    Ok(Estimate(core::Estimate::from_parts(value, rectangular.into(), normal_u, type_a, below, above)?))
}

/// What the module holds.
pub fn fill(_compiled: &Bound<'_, PyModule>, module: &Bound<'_, PyModule>) -> PyResult<()> {
    module.add_class::<Estimate>()?;
    module.add_class::<Expanded>()?;
    module.add_function(wrap_pyfunction!(effective_dof, module)?)?;
    module.add_function(wrap_pyfunction!(_from_parts, module)?)
}
