//! The uncertainty budget: a row a contribution.

use core::fmt;

use crate::uncertainty::{Estimate, EstimateError, Expanded, welch_satterthwaite};

/// Where a contribution comes from.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[repr(u8)]
#[non_exhaustive]
pub enum Contribution {
    /// Scatter of the readings, or the repeatability known from before.
    Scatter = 1,
    /// The meter's accuracy clause.
    AccuracyClause = 2,
    /// Rounding by the display, where the clause does not hold it.
    DisplayStep = 3,
    /// The leads.
    Leads = 4,
    /// A path in parallel with the part.
    ParallelPath = 5,
    /// A known temperature coefficient.
    KnownCoefficient = 6,
    /// A temperature coefficient of which only the limit is known.
    CoefficientLimit = 7,
    /// The temperature of the part.
    Temperature = 8,
}

impl Contribution {
    /// Every contribution, in the order of the rows.
    pub const ALL: [Contribution; 8] = [
        Contribution::Scatter,
        Contribution::AccuracyClause,
        Contribution::DisplayStep,
        Contribution::Leads,
        Contribution::ParallelPath,
        Contribution::KnownCoefficient,
        Contribution::CoefficientLimit,
        Contribution::Temperature,
    ];

    /// Its name in words.
    pub const fn name(self) -> &'static str {
        match self {
            Contribution::Scatter => "scatter of the readings",
            Contribution::AccuracyClause => "accuracy clause of the meter",
            Contribution::DisplayStep => "step of the display",
            Contribution::Leads => "leads",
            Contribution::ParallelPath => "parallel path",
            Contribution::KnownCoefficient => "known temperature coefficient",
            Contribution::CoefficientLimit => "limit of the temperature coefficient",
            Contribution::Temperature => "temperature of the part",
        }
    }

    /// Unit of the input, in which its value and width are given.
    pub const fn unit(self) -> &'static str {
        match self {
            Contribution::ParallelPath => "S",
            Contribution::KnownCoefficient | Contribution::CoefficientLimit => "1/K",
            Contribution::Temperature => "K",
            _ => "ohm",
        }
    }
}

/// The distribution assumed for a contribution.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[repr(u8)]
#[non_exhaustive]
pub enum Distribution {
    /// Normal; the width is a standard uncertainty.
    Normal = 1,
    /// Rectangular; the width is a half-width.
    Rectangular = 2,
    /// Student's t; the width is the standard deviation of the mean.
    StudentT = 3,
    /// Several parts; the width is their combined standard uncertainty.
    Combined = 4,
}

impl Distribution {
    /// Its name in words.
    pub const fn name(self) -> &'static str {
        match self {
            Distribution::Normal => "normal",
            Distribution::Rectangular => "rectangular",
            Distribution::StudentT => "Student t",
            Distribution::Combined => "several parts",
        }
    }
}

/// One contribution.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Row {
    /// Where it comes from.
    pub contribution: Contribution,
    /// Best value of the input, in its unit.
    pub value: f64,
    /// Half-width or standard uncertainty of the input, as the distribution says, in its unit.
    pub width: f64,
    /// The distribution.
    pub distribution: Distribution,
    /// Partial derivative of the result with respect to the input, ohm per unit.
    pub sensitivity: f64,
    /// Standard uncertainty that it brings to the result, ohm.
    pub u_ohm: f64,
    /// Its part of the result's variance, 0 to 1.
    pub share: f64,
    /// Degrees of freedom.
    pub dof: f64,
}

/// The budget of a result: a row a contribution, and what they add up to.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Budget {
    pub(super) rows: [Option<Row>; 8],
    pub(super) value_ohm: f64,
    pub(super) u_ohm: f64,
    pub(super) effective_dof: f64,
    pub(super) expanded: Expanded,
}

impl Budget {
    /// The contributions that are there, in the order of [`Contribution::ALL`].
    pub fn rows(&self) -> impl Iterator<Item = &Row> {
        self.rows.iter().flatten()
    }

    /// The row of one contribution, if it is there.
    ///
    /// ```
    /// use reckohm::measurement::{Contribution, Setup, evaluate};
    /// use reckohm::meter::Meter;
    /// let span = Meter::example_hand_held().span(2)?;
    /// let measured = evaluate(span, &[span.read(b"4.88")?], &Setup::new())?;
    /// let clause = measured.budget().row(Contribution::AccuracyClause).map(|row| row.share);
    /// assert_eq!(clause, Some(1.0));
    /// assert_eq!(measured.budget().row(Contribution::Leads), None);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn row(&self, contribution: Contribution) -> Option<&Row> {
        self.rows().find(|row| row.contribution == contribution)
    }

    /// The row with the largest share; none where nothing is uncertain.
    pub fn dominant(&self) -> Option<&Row> {
        self.rows().fold(None, |best: Option<&Row>, row| match best {
            Some(b) if b.share >= row.share => best,
            _ if row.share > 0.0 => Some(row),
            _ => best,
        })
    }

    /// The result, ohm.
    pub fn value_ohm(&self) -> f64 {
        self.value_ohm
    }

    /// Combined standard uncertainty, ohm.
    pub fn u_ohm(&self) -> f64 {
        self.u_ohm
    }

    /// Effective degrees of freedom (Welch-Satterthwaite, JCGM 100 G.4.1), for information.
    pub fn effective_dof(&self) -> f64 {
        self.effective_dof
    }

    /// The expanded uncertainty from the shape of all parts.
    pub fn expanded(&self) -> &Expanded {
        &self.expanded
    }
}

impl fmt::Display for Budget {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        for row in self.rows() {
            writeln!(
                f,
                "{}: {} ohm ({}, {:.1} % of the variance)",
                row.contribution.name(),
                row.u_ohm,
                row.distribution.name(),
                100.0 * row.share
            )?;
        }
        write!(
            f,
            "result {} ohm, u {} ohm, U {} ohm (factor {:.3}, coverage probability {})",
            self.value_ohm,
            self.u_ohm,
            self.expanded.half_width,
            self.expanded.coverage_factor,
            self.expanded.coverage_probability
        )
    }
}

/// An input of the model with its uncertainty, before it is weighed by its sensitivity.
#[derive(Clone, Copy, Debug)]
pub(super) struct Term {
    pub(super) contribution: Contribution,
    /// Value and parts of the input, in its unit.
    pub(super) input: Estimate,
    pub(super) sensitivity: f64,
}

impl Term {
    /// Adds this input's parts, weighed, to a result.
    pub(super) fn add_to(&self, result: Estimate) -> Result<Estimate, EstimateError> {
        let weighed = self.input.times(self.sensitivity)?;
        let [a, b] = weighed.rectangular();
        let [first, second] = weighed.type_a();
        result
            .with_rectangular(a)?
            .with_rectangular(b)?
            .with_normal(weighed.normal_u())?
            .with_type_a(first.s, first.dof)?
            .with_type_a(second.s, second.dof)?
            .with_one_sided(weighed.below(), weighed.above())
    }

    fn row(&self) -> Row {
        let [a, b] = self.input.rectangular();
        let [first, second] = self.input.type_a();
        let normal_u = self.input.normal_u();
        let u = self.input.u();
        let one_sided = self.input.below() != 0.0 || self.input.above() != 0.0;
        let (distribution, width) = match (a > 0.0, normal_u > 0.0, first.s > 0.0) {
            _ if one_sided || b > 0.0 || second.s > 0.0 => (Distribution::Combined, u),
            (true, false, false) => (Distribution::Rectangular, a),
            (false, false, true) => (Distribution::StudentT, first.s),
            (false, _, false) => (Distribution::Normal, normal_u),
            _ => (Distribution::Combined, u),
        };
        Row {
            contribution: self.contribution,
            value: self.input.value(),
            width,
            distribution,
            sensitivity: self.sensitivity,
            u_ohm: (self.sensitivity * u).abs(),
            share: 0.0,
            dof: self.input.effective_dof(),
        }
    }
}

/// The budget of these terms around a result.
pub(super) fn of_terms(
    terms: &[Option<Term>; 8],
    estimate: &Estimate,
    coverage_probability: f64,
) -> Result<Budget, EstimateError> {
    let rows = terms.map(|term| term.map(|term| term.row()));
    // Largest first would be more exact by nothing that matters with eight terms; the order is that of the rows.
    let variance = rows.iter().flatten().fold(0.0, |sum, row| sum + row.u_ohm * row.u_ohm);
    let share = |row: Row| if variance > 0.0 { row.u_ohm * row.u_ohm / variance } else { 0.0 };
    let rows = rows.map(|row| row.map(|row| Row { share: share(row), ..row }));
    Ok(Budget {
        rows,
        value_ohm: estimate.value(),
        // The same sum as the estimate's, to the bit.
        u_ohm: estimate.u(),
        effective_dof: welch_satterthwaite(estimate.u(), rows.iter().flatten().map(|row| (row.u_ohm, row.dof))),
        expanded: estimate.expanded(coverage_probability)?,
    })
}
