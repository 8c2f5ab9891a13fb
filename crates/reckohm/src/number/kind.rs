//! What can go wrong, numbered once for all doors. This file is the one list that hands out status numbers:
//! 1–89 any area, 90–99 the C door, 100–199 `part`, 200–299 `meter`, 300–349 `measurement`, 350–399 `uncertainty`,
//! 400–449 `verdict`, 450–499 `sensor`, 500–549 `fit`. A number is never used again for something else.

macro_rules! kinds {
    ($($(#[doc = $doc:literal])+ $name:ident = $number:literal,)+) => {
        /// What happened, in one word: the status number of the C door and the exception class of the Python door
        /// follow from it one to one.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
        #[repr(i32)]
        #[non_exhaustive]
        pub enum Kind { $($(#[doc = $doc])+ $name = $number,)+ }

        impl Kind {
            /// Every kind, in the order of its number.
            pub const ALL: &'static [Kind] = &[$(Kind::$name),+];

            /// Its status number, the same at all doors.
            pub const fn number(self) -> i32 { self as i32 }

            /// The kind with this status number, if there is one.
            ///
            /// ```
            /// use reckohm::number::Kind;
            /// assert_eq!(Kind::from_number(Kind::Empty.number()), Some(Kind::Empty));
            /// assert_eq!(Kind::from_number(-1), None);
            /// ```
            pub const fn from_number(number: i32) -> Option<Kind> {
                match number { $($number => Some(Kind::$name),)+ _ => None }
            }

            /// Its name, as written in this list.
            pub const fn name(self) -> &'static str {
                match self { $(Kind::$name => stringify!($name),)+ }
            }

            /// What it means, as written in this list.
            pub const fn meaning(self) -> &'static str {
                match self { $(Kind::$name => concat!($($doc),+).trim_ascii(),)+ }
            }
        }
    };
}

kinds! {
    /// A number outside its legal range; the range row says which and what is allowed.
    OutOfRange = 1,
    /// A NaN, or an infinity where a finite number is needed.
    NotFinite = 2,
    /// Nothing given where at least one is needed.
    Empty = 3,
    /// Two arguments that contradict one another.
    Contradiction = 4,
    /// The result is beyond what the number type can hold.
    ResultOutOfRange = 5,
    /// A condition was given without the coefficient or value that it needs.
    MissingArgument = 6,
    /// More items than a fixed capacity holds, or arrays of different lengths.
    WrongCount = 7,
    /// A byte that cannot stand where it stands in a text; the index is its offset.
    UnexpectedByte = 20,
    /// A text ends where a digit is needed; the index is the offset.
    MissingDigits = 21,
    /// A text with more bytes than are read.
    TextTooLong = 22,
    /// A null pointer where memory is needed; the argument's position, from 1, says which. Only the C door has it.
    NullPointer = 90,
    /// A whole number that stands for none of the named choices. Only the C door has it.
    UnknownCode = 91,
    /// A text or list that does not fit into the room given for it. Only the C door has it.
    BufferTooSmall = 92,
    /// Memory of the library's own that was never filled by it, or was changed from outside since. Only the C door has it.
    CorruptMemory = 93,
    /// Arithmetic that is not as the results need it: rounded otherwise, or numbers near zero flushed. Only the C door has it.
    WrongArithmetic = 94,
    /// A name that is not that of a series of preferred values.
    UnknownSeries = 100,
    /// A display text without its point.
    MissingPoint = 200,
    /// A display text with fewer digits behind the point than the span shows.
    TooFewDecimals = 201,
    /// A display text with more digits behind the point than the span shows.
    TooManyDecimals = 202,
    /// A display text with more digits in front of the point than the span has.
    TooManyDigits = 203,
    /// A value that is at or beyond the span's full scale.
    BeyondFullScale = 204,
    /// A display text that is no multiple of the span's step.
    OffGrid = 205,
    /// A display text that may mean two things on this span.
    AmbiguousText = 206,
    /// An over-range mark that the span does not have.
    MarkNotOfSpan = 207,
    /// A reply that stands for no reading.
    NoReading = 210,
    /// A reply that is neither a reading nor a defined mark.
    UndefinedMark = 211,
    /// A step that no display has.
    UnknownResolution = 220,
    /// A unit that no display shows in.
    UnknownDisplayUnit = 221,
    /// Bits that stand for no over-range mark.
    UnknownMarks = 222,
    /// A part that is beyond every span of the meter.
    NoSpanHolds = 230,
    /// An index that belongs to no span of the meter.
    NoSuchSpan = 231,
    /// A conductor that is not in the table.
    WireNotInTable = 240,
    /// A word that is no colour; the index is where it begins.
    UnknownColour = 101,
    /// A colour that cannot stand in its place.
    MisplacedColour = 102,
    /// A code of the wrong form.
    WrongForm = 103,
    /// A code on which sources disagree, or of which none could be read.
    DoubtfulCode = 104,
    /// A value that no marking of this form says.
    NoSuchMarking = 105,

    /// A reading beyond the span was given where a value is needed.
    OverRangeReading = 300,

    /// A value outside the domain of a sensor's model.
    OutsideDomain = 450,

    /// A parameter of a fit that the points do not determine; the index says which, counted from 0.
    Undetermined = 500,
    /// A fit whose parameters still moved when it had to stop.
    NotSettled = 501,
    /// A model that gives no finite number where a fit begins; the index is that of the point.
    ModelNotFinite = 502,
}

/// A failure as plain numbers, the same for every area: what the C door hands out, and from which the full text is made
/// again. Fields that a failure does not use are 0.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Detail {
    /// What happened.
    pub kind: Kind,
    /// The number of the range row concerned, 0 if none.
    pub row: u16,
    /// A number that says which of several cases or arguments it was, 0 if only one is possible; numbers in the blocks
    /// at the head of this file, so that a kind that several areas share still belongs to one of them.
    pub argument: u16,
    /// What was given.
    pub given: f64,
    /// The lower end of what is allowed.
    pub lower: f64,
    /// The upper end of what is allowed.
    pub upper: f64,
    /// Where: the index of the element, band or byte.
    pub index: u64,
    /// How many elements failed in all, 0 outside arrays.
    pub failed: u64,
}

impl Detail {
    /// A failure of this kind with every other field 0.
    ///
    /// ```
    /// use reckohm::number::{Detail, Kind};
    /// let detail = Detail { index: 3, failed: 2, ..Detail::new(Kind::Empty) };
    /// assert_eq!((detail.kind, detail.given), (Kind::Empty, 0.0));
    /// ```
    pub const fn new(kind: Kind) -> Detail {
        Detail { kind, row: 0, argument: 0, given: 0.0, lower: 0.0, upper: 0.0, index: 0, failed: 0 }
    }
}
