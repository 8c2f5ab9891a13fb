//! Both reading directions of a row of bands, and what speaks against each.

use core::fmt;

use super::{Bands, Edition, Marking, MarkingError};
use crate::number::Decimal;
use crate::part::preferred;

/// What speaks against a reading, the gravest first.
///
/// ```
/// use reckohm::marking::Doubt;
/// assert_eq!(Doubt::InNoSeries.to_string(), "the value is in no series of preferred values, E3 to E192");
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
#[repr(u8)]
pub enum Doubt {
    /// The bands say nothing in this direction; the marking's error says why.
    DoesNotDecode = 1,
    /// It would begin with gold or silver, which stand for a multiplier or a tolerance alone.
    ToleranceColourFirst = 2,
    /// The value is in no series of preferred values.
    InNoSeries = 3,
    /// Four bands that say less than 5 %, or five or six that say more than 2 %.
    UnusualTolerance = 4,
}

impl Doubt {
    /// Every doubt, the gravest first.
    pub const ALL: [Doubt; 4] =
        [Doubt::DoesNotDecode, Doubt::ToleranceColourFirst, Doubt::InNoSeries, Doubt::UnusualTolerance];

    /// Its name in one or a few words, as the enumeration has it.
    ///
    /// ```
    /// # use reckohm::marking::Doubt;
    /// assert_eq!(Doubt::InNoSeries.name(), "in no series");
    /// ```
    pub const fn name(self) -> &'static str {
        match self {
            Doubt::DoesNotDecode => "does not decode",
            Doubt::ToleranceColourFirst => "tolerance colour first",
            Doubt::InNoSeries => "in no series",
            Doubt::UnusualTolerance => "unusual tolerance",
        }
    }

    /// Its bit in a set of doubts; a graver one outweighs all lighter ones together.
    const fn bit(self) -> u8 {
        match self {
            Doubt::DoesNotDecode => 8,
            Doubt::ToleranceColourFirst => 4,
            Doubt::InNoSeries => 2,
            Doubt::UnusualTolerance => 1,
        }
    }
}

impl fmt::Display for Doubt {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Doubt::DoesNotDecode => "the bands say nothing in this direction",
            Doubt::ToleranceColourFirst => "it would begin with gold or silver, which stand at the end",
            Doubt::InNoSeries => "the value is in no series of preferred values, E3 to E192",
            Doubt::UnusualTolerance => {
                "the tolerance is unusual for so many bands: four are usual for 5 % and wider, five and six for 2 % and tighter"
            }
        })
    }
}

/// A reading direction.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[repr(u8)]
pub enum Direction {
    /// As the bands were given.
    Forward = 1,
    /// From the other end.
    Backward = 2,
}

impl Direction {
    /// Its name.
    ///
    /// ```
    /// # use reckohm::marking::Direction;
    /// assert_eq!(Direction::Backward.name(), "backward");
    /// ```
    pub const fn name(self) -> &'static str {
        match self {
            Direction::Forward => "forward",
            Direction::Backward => "backward",
        }
    }
}

/// A row of bands read in one direction.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BandReading {
    bands: Bands,
    marking: Result<Marking, MarkingError>,
    doubts: u8,
}

impl BandReading {
    fn of(bands: Bands, marking: Result<Marking, MarkingError>) -> BandReading {
        let mut doubts = 0;
        let mut doubt = |applies: bool, doubt: Doubt| doubts |= if applies { doubt.bit() } else { 0 };
        let first = bands.colours().first();
        let many = bands.colours().len() > 1;
        doubt(many && first.is_some_and(|colour| colour.digit().is_none()), Doubt::ToleranceColourFirst);
        match marking {
            Err(_) => doubt(true, Doubt::DoesNotDecode),
            Ok(marking) if marking.is_zero_ohm_link() => {}
            Ok(marking) => {
                let known = matches!(preferred::coarsest(marking.nominal_ohm()), Ok(Some(_)));
                doubt(!known, Doubt::InNoSeries);
                let unusual = marking.tolerance.is_some_and(|tolerance| match bands.colours().len() {
                    4 => tolerance < Decimal::new(5, -2),
                    5 | 6 => tolerance > Decimal::new(2, -2),
                    _ => false,
                });
                doubt(unusual, Doubt::UnusualTolerance);
            }
        }
        BandReading { bands, marking, doubts }
    }

    /// The bands in this direction.
    ///
    /// ```
    /// # use reckohm::marking::{Edition, both_ways};
    /// let ways = both_ways("red violet brown gold", Edition::E2016)?;
    /// assert_eq!(ways.backward.bands().to_string(), "gold brown violet red");
    /// # Ok::<(), reckohm::marking::MarkingError>(())
    /// ```
    pub fn bands(&self) -> Bands {
        self.bands
    }

    /// What they say.
    ///
    /// # Errors
    /// [`MarkingError::MisplacedColour`] if they say nothing, with the offset of the word in the text that was given.
    ///
    /// ```
    /// # use reckohm::marking::{Edition, both_ways};
    /// let ways = both_ways("red violet brown gold", Edition::E2016)?;
    /// assert_eq!(ways.forward.marking()?.nominal_ohm(), 270.0);
    /// assert!(ways.backward.marking().is_err());
    /// # Ok::<(), reckohm::marking::MarkingError>(())
    /// ```
    pub fn marking(&self) -> Result<Marking, MarkingError> {
        self.marking
    }

    /// What speaks against this reading, the gravest first; nothing if it is plausible.
    ///
    /// ```
    /// # use reckohm::marking::{Doubt, Edition, both_ways};
    /// let ways = both_ways("red red blue brown brown", Edition::E2016)?;
    /// assert_eq!(ways.forward.doubts().count(), 0); // 2.26 kohm, 1 %
    /// assert!(ways.backward.doubts().eq([Doubt::InNoSeries])); // 11.6 kohm, 2 %
    /// # Ok::<(), reckohm::marking::MarkingError>(())
    /// ```
    pub fn doubts(&self) -> impl Iterator<Item = Doubt> + use<> {
        let doubts = self.doubts;
        Doubt::ALL.into_iter().filter(move |doubt| doubts & doubt.bit() != 0)
    }
}

/// A row of bands read from both ends.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BothWays {
    /// As the bands were given.
    pub forward: BandReading,
    /// From the other end.
    pub backward: BandReading,
}

impl BothWays {
    /// The direction with the lighter doubts, where a graver one outweighs all lighter ones together; `None` if neither is
    /// more plausible: then the gap before the last band or the wider end band must tell, or a measurement.
    ///
    /// ```
    /// use reckohm::marking::{Direction, Edition, both_ways};
    /// let ways = both_ways("gold red violet yellow", Edition::E2016)?;
    /// assert_eq!(ways.more_plausible(), Some(Direction::Backward));
    /// // 1 kohm or 110 ohm, both 1 %:
    /// assert_eq!(both_ways("brown black black brown brown", Edition::E2016)?.more_plausible(), None);
    /// # Ok::<(), reckohm::marking::MarkingError>(())
    /// ```
    pub fn more_plausible(&self) -> Option<Direction> {
        match self.forward.doubts.cmp(&self.backward.doubts) {
            core::cmp::Ordering::Less => Some(Direction::Forward),
            core::cmp::Ordering::Greater => Some(Direction::Backward),
            core::cmp::Ordering::Equal => None,
        }
    }
}

/// Reads bands from both ends; the text is that of [`Marking::from_bands`].
///
/// # Errors
/// [`MarkingError`] for a text that is no row of bands: a word that is no colour, another count of bands, other bytes. A
/// colour in the wrong place is an error of that reading alone.
///
/// ```
/// use reckohm::marking::{Direction, Edition, both_ways};
/// let ways = both_ways("gold red violet yellow", Edition::E2016)?;
/// assert_eq!(ways.more_plausible(), Some(Direction::Backward));
/// assert_eq!(ways.backward.marking()?.to_string(), "4.7 kohm, 5 %");
/// # Ok::<(), reckohm::marking::MarkingError>(())
/// ```
pub fn both_ways(text: impl AsRef<[u8]>, edition: Edition) -> Result<BothWays, MarkingError> {
    let (bands, mut starts) = Bands::parse(text.as_ref())?;
    let forward = BandReading::of(bands, bands.decode(edition).map_err(|error| error.at(&starts)));
    if let Some(used) = starts.get_mut(..bands.colours().len()) {
        used.reverse();
    }
    let turned = bands.reversed();
    let backward = BandReading::of(turned, turned.decode(edition).map_err(|error| error.at(&starts)));
    Ok(BothWays { forward, backward })
}
