//! A meter that finds its span by itself, reading after reading.
//!
//! The state machine for firmware and jig programs: it is fed each reading and says what to do next. Its memory is a few
//! plain numbers of fixed size, so it lives in a static or on the stack.
//!
//! - **Over-range** goes up one span at a time; at the highest it is said to be beyond it, as often as it is shown.
//! - **Down** goes at once to the lowest span that surely holds the reading: where the reading with its accuracy clause is
//!   below the full scale by the hysteresis.
//! - **After each switch** so many readings are discarded while the input settles.
//! - **It comes to rest.** Each time a step down turns out wrong (over-range sends it up again), the hysteresis doubles, up to
//!   the widest. A reading that leaves the neighbourhood of that span's end, by the widest hysteresis to either side, has
//!   moved in earnest, and the hysteresis is as at first again. With h and w, at most log2(w/h), rounded up, and one more
//!   steps down are taken while the readings stay between (1 − x) and (1 + x) of the end of a span, where
//!   (1 − x)/(1 + x) is 1 − w or more: up to a third to either side for the usual w of one half.

use super::step::{HYSTERESIS_BY_CONVENTION, Rung};
use super::{Meter, MeterError, Reading, Span};
use crate::number::{HYSTERESIS, MEASURED_RESISTANCE, Real};

/// The most spans that an auto-ranger steps through.
pub const MOST_RANGED_SPANS: usize = 16;

/// The widest that the hysteresis of an auto-ranger becomes, as a fraction of the lower span's full scale; a convention.
pub const WIDEST_HYSTERESIS_BY_CONVENTION: f64 = 0.5;

/// The place of a span that there is none of.
const NO_SPAN: u32 = u32::MAX;

/// What to do after a reading. Indices count a meter's spans from 0.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum RangerAction {
    /// Do not use this reading, the input is still settling after a switch; measure again on this span.
    Again {
        /// How many readings will be discarded after this one.
        left: u32,
    },
    /// Put the meter on this span and measure there; this reading is not the one to use.
    Switch {
        /// The span to go to.
        to: usize,
    },
    /// Use this reading; no span shows it better. Going on, measure on this span.
    Accept,
    /// The reading is beyond the highest span: open, or not for this meter.
    BeyondHighest,
    /// The reading is less than one step of the lowest span: a short, or not for this meter. It is a value, and may be used
    /// as one.
    BelowLowest,
}

/// Where an auto-ranger stands, in plain numbers: to be stored, and to go on from.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RangerState<R = f64> {
    /// The span that the next reading is to be taken on.
    pub index: usize,
    /// How many readings are still to be discarded.
    pub left: u32,
    /// The hysteresis at this time.
    pub hysteresis: R,
    /// The span on which a step down turned out wrong, while the readings stay near its end.
    pub contested: Option<usize>,
    /// Whether the last switch was a step down.
    pub descended: bool,
}

/// Finds the span for each reading from the readings before.
///
/// ```
/// use reckohm::meter::{AutoRanger, Meter, RangerAction};
/// let meter = Meter::example_hand_held();
/// let mut ranger = AutoRanger::new(&meter)?.with_discard(1);
/// assert_eq!(ranger.index(), 5, "it begins on the highest span");
/// // 4.7 kohm, as each span shows it: 0.00 Mohm on 20 Mohm may be 50 kohm, on 200 kohm it is 4.7, on 20 kohm 4.70.
/// let mut seen = Vec::new();
/// for text in ["0.00", "4.7", "4.7", "4.70", "4.70", "4.71"] {
///     let reading = meter.span(ranger.index())?.read(text.as_bytes())?;
///     seen.push(ranger.step(&reading)?);
/// }
/// use RangerAction::{Accept, Again, Switch};
/// let again = Again { left: 0 };
/// assert_eq!(seen, [Switch { to: 3 }, again, Switch { to: 2 }, again, Accept, Accept]);
/// # Ok::<(), reckohm::meter::MeterError>(())
/// ```
// Nothing but plain numbers, laid out as in C, so that no bytes are illegal: the C door keeps one in memory of the caller's.
#[derive(Clone, Copy, Debug, PartialEq)]
#[repr(C)]
pub struct AutoRanger<R = f64> {
    rungs: [Rung<R>; MOST_RANGED_SPANS],
    lowest_step_ohm: R,
    hysteresis: R,
    widest_hysteresis: R,
    /// The hysteresis at this time.
    wide: R,
    count: u32,
    index: u32,
    discard: u32,
    left: u32,
    contested: u32,
    /// 1 after a step down, else 0.
    descended: u32,
}

impl<R: Real> AutoRanger<R> {
    /// An auto-ranger over the spans of this meter, which it keeps a copy of. It begins on the highest span, discards no
    /// readings, and has the usual hysteresis ([`HYSTERESIS_BY_CONVENTION`], [`WIDEST_HYSTERESIS_BY_CONVENTION`]).
    ///
    /// # Errors
    /// [`MeterError::TooManySpans`] for more than 16.
    ///
    /// ```
    /// use reckohm::meter::{AutoRanger, Meter};
    /// let meter = Meter::example_bench();
    /// assert_eq!(AutoRanger::new(&meter)?.index(), 6);
    /// # Ok::<(), reckohm::meter::MeterError>(())
    /// ```
    pub fn new(meter: &Meter<'_, R>) -> Result<AutoRanger<R>, MeterError> {
        let spans = meter.spans();
        if spans.len() > MOST_RANGED_SPANS {
            return Err(MeterError::TooManySpans { count: spans.len() as u64, most: MOST_RANGED_SPANS as u64 });
        }
        let mut rungs = [Rung::NONE; MOST_RANGED_SPANS];
        for (rung, span) in rungs.iter_mut().zip(spans) {
            *rung = Rung::of(span);
        }
        Ok(AutoRanger {
            rungs,
            lowest_step_ohm: spans.first().map_or(R::ZERO, Span::step_ohm),
            hysteresis: R::lit(HYSTERESIS_BY_CONVENTION),
            widest_hysteresis: R::lit(WIDEST_HYSTERESIS_BY_CONVENTION),
            wide: R::lit(HYSTERESIS_BY_CONVENTION),
            count: spans.len() as u32,
            index: (spans.len() as u32).saturating_sub(1),
            discard: 0,
            left: 0,
            contested: NO_SPAN,
            descended: 0,
        })
    }

    /// Takes in a reading on the span that was asked for, and says what to do.
    ///
    /// # Errors
    /// [`MeterError::BeyondFullScale`] and [`MeterError::ReadingOfAnotherSpan`] for a reading that is not of the span with
    /// this [`index`](AutoRanger::index). The auto-ranger is as before then.
    ///
    /// ```
    /// use reckohm::meter::{AutoRanger, Meter, RangerAction};
    /// let meter = Meter::example_hand_held();
    /// let mut ranger = AutoRanger::new(&meter)?.with_start(0)?;
    /// assert_eq!(ranger.step(&meter.span(0)?.read(b"OL")?)?, RangerAction::Switch { to: 1 });
    /// assert_eq!(ranger.step(&meter.span(1)?.read(b"1.462")?)?, RangerAction::Accept);
    /// assert!(ranger.step(&meter.span(2)?.read(b"4.70")?).is_err(), "it is on the span of 2 kohm");
    /// # Ok::<(), reckohm::meter::MeterError>(())
    /// ```
    pub fn step(&mut self, reading: &Reading<R>) -> Result<RangerAction, MeterError> {
        self.step_shown(reading.ohm(), reading.over())
    }

    /// The same, beginning on the span with this index.
    ///
    /// # Errors
    /// [`MeterError::NoSuchSpan`].
    ///
    /// ```
    /// # use reckohm::meter::{AutoRanger, Meter};
    /// let ranger = AutoRanger::new(&Meter::example_hand_held())?;
    /// assert_eq!(ranger.with_start(1)?.index(), 1);
    /// assert!(ranger.with_start(6).is_err());
    /// # Ok::<(), reckohm::meter::MeterError>(())
    /// ```
    pub fn with_start(self, index: usize) -> Result<AutoRanger<R>, MeterError> {
        Ok(AutoRanger { index: self.place(index)?, ..self })
    }

    /// The same, discarding this many readings after each switch, while the input settles.
    ///
    /// ```
    /// # use reckohm::meter::{AutoRanger, Meter};
    /// assert_eq!(AutoRanger::new(&Meter::example_hand_held())?.with_discard(2).discard(), 2);
    /// # Ok::<(), reckohm::meter::MeterError>(())
    /// ```
    pub const fn with_discard(self, readings: u32) -> AutoRanger<R> {
        AutoRanger { discard: readings, ..self }
    }

    /// The same with this hysteresis, and the widest that it becomes, both as a fraction of the lower span's full scale, in
    /// [0.001, 0.9].
    ///
    /// # Errors
    /// [`MeterError::Range`]; [`MeterError::HysteresisReversed`] if the widest is less than the first.
    ///
    /// ```
    /// # use reckohm::meter::{AutoRanger, Meter};
    /// let ranger = AutoRanger::new(&Meter::example_hand_held())?;
    /// assert_eq!(ranger.with_hysteresis(0.1, 0.4)?.hysteresis(), 0.1);
    /// assert!(ranger.with_hysteresis(0.0, 0.4).is_err(), "none at all would flap for ever");
    /// # Ok::<(), reckohm::meter::MeterError>(())
    /// ```
    pub fn with_hysteresis(self, hysteresis: R, widest_hysteresis: R) -> Result<AutoRanger<R>, MeterError> {
        let (hysteresis, widest) = (HYSTERESIS.check(hysteresis)?, HYSTERESIS.check(widest_hysteresis)?);
        if widest < hysteresis {
            return Err(MeterError::HysteresisReversed { hysteresis: hysteresis.to_f64(), widest: widest.to_f64() });
        }
        Ok(AutoRanger { hysteresis, widest_hysteresis: widest, wide: hysteresis, contested: NO_SPAN, ..self })
    }

    /// The span that the next reading is to be taken on.
    pub const fn index(&self) -> usize {
        self.index as usize
    }

    /// How many readings are discarded after each switch.
    pub const fn discard(&self) -> u32 {
        self.discard
    }

    /// The hysteresis at first, as a fraction of the lower span's full scale.
    pub const fn hysteresis(&self) -> R {
        self.hysteresis
    }

    /// The widest that the hysteresis becomes.
    pub const fn widest_hysteresis(&self) -> R {
        self.widest_hysteresis
    }

    /// Begins anew on the span with this index, for another part: what was learnt of the last one is forgotten, and no
    /// readings are discarded.
    ///
    /// # Errors
    /// [`MeterError::NoSuchSpan`].
    ///
    /// ```
    /// # use reckohm::meter::{AutoRanger, Meter};
    /// let mut ranger = AutoRanger::new(&Meter::example_hand_held())?;
    /// ranger.restart(2)?;
    /// assert_eq!(ranger.index(), 2);
    /// # Ok::<(), reckohm::meter::MeterError>(())
    /// ```
    pub fn restart(&mut self, index: usize) -> Result<(), MeterError> {
        let index = self.place(index)?;
        *self = AutoRanger { index, left: 0, wide: self.hysteresis, contested: NO_SPAN, descended: 0, ..*self };
        Ok(())
    }

    /// Where it stands.
    pub fn state(&self) -> RangerState<R> {
        RangerState {
            index: self.index(),
            left: self.left,
            hysteresis: self.wide,
            contested: (self.contested != NO_SPAN).then_some(self.contested as usize),
            descended: self.descended != 0,
        }
    }

    /// The same, going on from where another one with the same spans and arguments stood.
    ///
    /// # Errors
    /// [`MeterError::NoSuchSpan`]; [`MeterError::StrangeState`] for numbers that no such auto-ranger has.
    ///
    /// ```
    /// # use reckohm::meter::{AutoRanger, Meter};
    /// let fresh = AutoRanger::new(&Meter::example_hand_held())?;
    /// let mut used = fresh;
    /// used.step_ohm(4700.0)?;
    /// assert_eq!(fresh.with_state(used.state())?, used);
    /// # Ok::<(), reckohm::meter::MeterError>(())
    /// ```
    pub fn with_state(self, state: RangerState<R>) -> Result<AutoRanger<R>, MeterError> {
        let contested = state.contested.map_or(Ok(NO_SPAN), |index| self.place(index))?;
        let within = state.hysteresis >= self.hysteresis && state.hysteresis <= self.widest_hysteresis;
        if state.left > self.discard || !within {
            let RangerState { left, hysteresis, .. } = state;
            return Err(MeterError::StrangeState { left, discard: self.discard, hysteresis: hysteresis.to_f64() });
        }
        Ok(AutoRanger {
            index: self.place(state.index)?,
            left: state.left,
            wide: state.hysteresis,
            contested,
            descended: u32::from(state.descended),
            ..self
        })
    }

    /// Takes in a resistance in ohm, measured on the span that was asked for, and says what to do. At or beyond its full
    /// scale it is over-range.
    ///
    /// # Errors
    /// [`MeterError::Range`] for a number that is not finite: give the full scale where there is no value. The auto-ranger is
    /// as before then.
    ///
    /// ```
    /// use reckohm::meter::{AutoRanger, Meter, RangerAction};
    /// let mut ranger = AutoRanger::new(&Meter::example_hand_held())?;
    /// assert_eq!(ranger.step_ohm(180.0e3)?, RangerAction::Switch { to: 4 }); // ±53.6 kohm there, so 200 kohm may not hold it
    /// assert_eq!(ranger.step_ohm(180.0e3)?, RangerAction::Switch { to: 3 });
    /// assert_eq!(ranger.step_ohm(180.0e3)?, RangerAction::Accept);
    /// # Ok::<(), reckohm::meter::MeterError>(())
    /// ```
    pub fn step_ohm(&mut self, ohm: R) -> Result<RangerAction, MeterError> {
        let ohm = MEASURED_RESISTANCE.check(ohm)?;
        let over = ohm.magnitude() >= self.here().full_scale_ohm;
        Ok(self.advance(ohm, over))
    }

    /// [`step`](AutoRanger::step) from a reading's numbers: its [`ohm`](Reading::ohm), which beyond the span is the full
    /// scale, and whether it is [`over`](Reading::over).
    ///
    /// # Errors
    /// As [`step`](AutoRanger::step); and [`MeterError::Range`] for a number that is not finite.
    ///
    /// ```
    /// # use reckohm::meter::{AutoRanger, Meter, RangerAction};
    /// let mut ranger = AutoRanger::new(&Meter::example_hand_held())?.with_start(1)?;
    /// assert_eq!(ranger.step_shown(2000.0, true)?, RangerAction::Switch { to: 2 });
    /// assert!(ranger.step_shown(2000.0, true).is_err(), "20 kohm is beyond this span");
    /// # Ok::<(), reckohm::meter::MeterError>(())
    /// ```
    pub fn step_shown(&mut self, ohm: R, over: bool) -> Result<RangerAction, MeterError> {
        let (given_ohm, full_scale_ohm) = (MEASURED_RESISTANCE.check(ohm)?, self.here().full_scale_ohm);
        if !over && ohm.magnitude() >= full_scale_ohm {
            let (given_ohm, full_scale_ohm) = (given_ohm.to_f64(), full_scale_ohm.to_f64());
            return Err(MeterError::BeyondFullScale { given_ohm, full_scale_ohm });
        }
        if over && ohm.magnitude() != full_scale_ohm {
            let (given_ohm, full_scale_ohm) = (given_ohm.to_f64(), full_scale_ohm.to_f64());
            return Err(MeterError::ReadingOfAnotherSpan { given_ohm, full_scale_ohm });
        }
        Ok(self.advance(ohm, over))
    }

    fn place(&self, index: usize) -> Result<u32, MeterError> {
        match u32::try_from(index) {
            Ok(place) if place < self.count => Ok(place),
            _ => Err(MeterError::NoSuchSpan { index: index as u64, count: u64::from(self.count) }),
        }
    }

    fn rung(&self, place: u32) -> Rung<R> {
        self.rungs.get(place as usize).copied().unwrap_or(Rung::NONE)
    }

    fn here(&self) -> Rung<R> {
        self.rung(self.index)
    }

    /// The rules of the head of this file.
    fn advance(&mut self, ohm: R, over: bool) -> RangerAction {
        if self.left > 0 {
            self.left = self.left.wrapping_sub(1);
            return RangerAction::Again { left: self.left };
        }
        let here = self.here();
        let magnitude = if over { here.full_scale_ohm } else { ohm.magnitude() };
        self.relax(magnitude);
        if over {
            let next = self.index.wrapping_add(1);
            if next >= self.count {
                return RangerAction::BeyondHighest;
            }
            if self.descended != 0 {
                self.wide = (self.wide + self.wide).smaller(self.widest_hysteresis);
                self.contested = self.index;
            }
            self.descended = 0;
            return self.switch(next);
        }
        let below = self.rungs.iter().take(self.index as usize).map(|rung| rung.full_scale_ohm);
        match here.lowest_that_holds(magnitude, self.wide, below) {
            Some(to) => {
                self.descended = 1;
                self.switch(to as u32)
            }
            None if self.index == 0 && ohm < self.lowest_step_ohm => RangerAction::BelowLowest,
            None => RangerAction::Accept,
        }
    }

    /// The hysteresis as at first, once a reading has left the neighbourhood of the end that was contested.
    fn relax(&mut self, magnitude: R) {
        if self.contested == NO_SPAN {
            return;
        }
        let (end, part) = (self.rung(self.contested).full_scale_ohm, R::ONE - self.widest_hysteresis);
        if magnitude < part * end || part * magnitude > end {
            self.wide = self.hysteresis;
            self.contested = NO_SPAN;
        }
    }

    fn switch(&mut self, to: u32) -> RangerAction {
        self.index = to;
        self.left = self.discard;
        RangerAction::Switch { to: to as usize }
    }
}
