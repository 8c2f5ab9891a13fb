//! Decision rules.

use core::fmt;

use crate::number::{OutOfRange, RISK, Real};

/// Which sort of rule.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[repr(u8)]
#[non_exhaustive]
pub enum RuleKind {
    /// The value alone decides (JCGM 106 8.2).
    SimpleAcceptance = 1,
    /// A guard band at each limit by itself (JCGM 106 8.3).
    Guarded = 2,
    /// The probability of being outside either limit is bounded.
    MaxRisk = 3,
}

/// A decision rule, agreed before the measurement.
///
/// ```
/// use reckohm::verdict::{Rule, RuleKind};
/// let rule = Rule::guarded(0.05)?;
/// assert_eq!((rule.kind(), rule.risk()), (RuleKind::Guarded, Some(0.05)));
/// assert!(Rule::guarded(5.0).unwrap_err().to_string().contains("fraction, not percent"));
/// # Ok::<(), reckohm::number::OutOfRange>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Rule<R = f64> {
    kind: RuleKind,
    risk: R,
}

impl<R: Real> Rule<R> {
    /// The value alone decides: two answers, and half of the parts at a limit are judged wrongly.
    ///
    /// ```
    /// use reckohm::verdict::Rule;
    /// assert_eq!(Rule::<f64>::simple_acceptance().risk(), None);
    /// # Ok::<(), reckohm::number::OutOfRange>(())
    /// ```
    pub const fn simple_acceptance() -> Rule<R> {
        Rule { kind: RuleKind::SimpleAcceptance, risk: R::ZERO }
    }

    /// A guard band at each limit by itself: a part "conforms" only if the probability that it lies beyond that limit is
    /// at most `risk`, and "does not conform" only if the probability that it lies on the good side is at most `risk`.
    /// Between the two it is undecided.
    ///
    /// ```
    /// use reckohm::verdict::Rule;
    /// assert_eq!(Rule::guarded(0.05)?.risk(), Some(0.05));
    /// # Ok::<(), reckohm::number::OutOfRange>(())
    /// ```
    ///
    /// # Errors
    /// A range error unless 0 < risk < 0.5.
    pub fn guarded(risk: R) -> Result<Rule<R>, OutOfRange> {
        Ok(Rule { kind: RuleKind::Guarded, risk: RISK.check(risk)? })
    }

    /// A part "conforms" only if the probability that it lies outside its limits, either of them, is at most `risk`, and
    /// "does not conform" only if the probability that it lies within is at most `risk`.
    ///
    /// ```
    /// use reckohm::verdict::Rule;
    /// assert_eq!(Rule::max_risk(0.05)?.risk(), Some(0.05));
    /// assert!(Rule::max_risk(0.5).is_err());
    /// # Ok::<(), reckohm::number::OutOfRange>(())
    /// ```
    ///
    /// # Errors
    /// A range error unless 0 < risk < 0.5.
    pub fn max_risk(risk: R) -> Result<Rule<R>, OutOfRange> {
        Ok(Rule { kind: RuleKind::MaxRisk, risk: RISK.check(risk)? })
    }

    /// Which sort.
    pub const fn kind(&self) -> RuleKind {
        self.kind
    }

    /// The risk agreed on; none for simple acceptance.
    pub fn risk(&self) -> Option<R> {
        (self.kind != RuleKind::SimpleAcceptance).then_some(self.risk)
    }
}

impl<R: Real> fmt::Display for Rule<R> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self.kind {
            RuleKind::SimpleAcceptance => f.write_str("simple acceptance"),
            RuleKind::Guarded => write!(f, "guarded at each limit, risk {}", self.risk),
            RuleKind::MaxRisk => write!(f, "risk of being outside at most {}", self.risk),
        }
    }
}
