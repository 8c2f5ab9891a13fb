//! The colours of the bands and what each stands for: IEC 60062 in three editions, two-letter codes of IEC 60757.

use core::fmt;

use crate::number::Decimal;

/// An edition of IEC 60062, where editions differ in what a colour means.
///
/// The earlier two stand for the parts of their time: grey is a tolerance of 0.05 % in 2004 and 0.01 % in 2016, yellow
/// (0.02 %) and the multiplier pink are of 2016 alone, and orange (0.05 %) is named in 1974 and 2016 but not in 2004.
///
/// ```
/// use reckohm::marking::{Colour, Edition};
/// assert_eq!(Colour::Grey.tolerance(Edition::E2004), Some(0.0005));
/// assert_eq!(Colour::Grey.tolerance(Edition::E2016), Some(0.0001));
/// assert_eq!(Edition::default(), Edition::E2016);
/// ```
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash, PartialOrd, Ord)]
#[repr(u16)]
pub enum Edition {
    /// IEC 62:1974. Grey as a tolerance could not be read in it and is not accepted.
    E1974 = 1974,
    /// IEC 60062:2004, also EN 60062:2005.
    E2004 = 2004,
    /// IEC 60062:2016, the default.
    #[default]
    E2016 = 2016,
}

impl Edition {
    /// Every edition, the oldest first.
    pub const ALL: [Edition; 3] = [Edition::E1974, Edition::E2004, Edition::E2016];

    /// Its year.
    ///
    /// ```
    /// # use reckohm::marking::Edition;
    /// assert_eq!(Edition::E2016.year(), 2016);
    /// ```
    pub const fn year(self) -> u16 {
        self as u16
    }

    /// The edition of this year, if there is one.
    ///
    /// ```
    /// # use reckohm::marking::Edition;
    /// assert_eq!(Edition::from_year(2004), Some(Edition::E2004));
    /// assert_eq!(Edition::from_year(2005), None);
    /// ```
    pub fn from_year(year: u16) -> Option<Edition> {
        Edition::ALL.into_iter().find(|edition| edition.year() == year)
    }
}

/// The colour of a band.
///
/// Its number at the C door is its digit, then 10 gold, 11 silver, 12 pink.
///
/// ```
/// use reckohm::marking::Colour;
/// assert_eq!(Colour::from_word("Violet"), Some(Colour::Violet));
/// assert_eq!(Colour::from_word("vt"), Some(Colour::Violet));
/// assert_eq!((Colour::Violet.word(), Colour::Violet.code()), ("violet", "VT"));
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[repr(u8)]
pub enum Colour {
    /// 0
    Black = 0,
    /// 1
    Brown = 1,
    /// 2
    Red = 2,
    /// 3
    Orange = 3,
    /// 4
    Yellow = 4,
    /// 5
    Green = 5,
    /// 6
    Blue = 6,
    /// 7
    Violet = 7,
    /// 8
    Grey = 8,
    /// 9
    White = 9,
    /// A multiplier of 10^-1, a tolerance of 5 %.
    Gold = 10,
    /// A multiplier of 10^-2, a tolerance of 10 %.
    Silver = 11,
    /// A multiplier of 10^-3.
    Pink = 12,
}

/// What a band stands for, by its place.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Role {
    Alone,
    FirstFigure,
    Figure,
    Multiplier,
    Tolerance,
    Coefficient,
}

impl Role {
    /// The role of a band, counted from 1, among so many.
    pub(super) fn of(band: u8, bands: u8) -> Role {
        let figures = if bands < 5 { 2 } else { 3 };
        match (band, bands) {
            (_, 1) => Role::Alone,
            (1, _) => Role::FirstFigure,
            (band, _) if band <= figures => Role::Figure,
            (band, _) if band == figures + 1 => Role::Multiplier,
            (band, _) if band == figures + 2 => Role::Tolerance,
            _ => Role::Coefficient,
        }
    }

    pub(super) fn allows(self, colour: Colour, edition: Edition) -> bool {
        match self {
            Role::Alone => colour == Colour::Black,
            Role::FirstFigure => colour.digit().is_some_and(|digit| digit > 0),
            Role::Figure => colour.digit().is_some(),
            Role::Multiplier => colour.multiplier_exponent(edition).is_some(),
            Role::Tolerance => colour.tolerance_decimal(edition).is_some(),
            Role::Coefficient => colour.tcr_ppm_per_kelvin().is_some(),
        }
    }
}

impl fmt::Display for Role {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Role::Alone => "the zero-ohm link",
            Role::FirstFigure => "the first figure",
            Role::Figure => "a figure",
            Role::Multiplier => "the multiplier",
            Role::Tolerance => "the tolerance",
            Role::Coefficient => "the temperature coefficient",
        })
    }
}

impl Colour {
    /// Every colour, in the order of its number.
    pub const ALL: [Colour; 13] = [
        Colour::Black,
        Colour::Brown,
        Colour::Red,
        Colour::Orange,
        Colour::Yellow,
        Colour::Green,
        Colour::Blue,
        Colour::Violet,
        Colour::Grey,
        Colour::White,
        Colour::Gold,
        Colour::Silver,
        Colour::Pink,
    ];

    /// Its number, as [`from_number`](Colour::from_number) takes it.
    ///
    /// ```
    /// # use reckohm::marking::Colour;
    /// assert_eq!(Colour::Gold.number(), 10);
    /// ```
    pub const fn number(self) -> u8 {
        self as u8
    }

    /// The colour with this number, if there is one.
    ///
    /// ```
    /// # use reckohm::marking::Colour;
    /// assert_eq!(Colour::from_number(2), Some(Colour::Red));
    /// assert_eq!(Colour::from_number(13), None);
    /// ```
    pub fn from_number(number: u8) -> Option<Colour> {
        Colour::ALL.get(usize::from(number)).copied()
    }

    /// The colour of this word ("gray" as well as "grey") or two-letter code, in any case.
    ///
    /// ```
    /// # use reckohm::marking::Colour;
    /// assert_eq!(Colour::from_word("GRAY"), Some(Colour::Grey));
    /// assert_eq!(Colour::from_word("purple"), None);
    /// ```
    pub fn from_word(word: impl AsRef<[u8]>) -> Option<Colour> {
        let word = word.as_ref();
        if word.eq_ignore_ascii_case(b"gray") {
            return Some(Colour::Grey);
        }
        Colour::ALL.into_iter().find(|colour| {
            word.eq_ignore_ascii_case(colour.word().as_bytes()) || word.eq_ignore_ascii_case(colour.code().as_bytes())
        })
    }

    /// Its word.
    ///
    /// ```
    /// # use reckohm::marking::Colour;
    /// assert_eq!(Colour::Grey.word(), "grey");
    /// ```
    pub const fn word(self) -> &'static str {
        match self {
            Colour::Black => "black",
            Colour::Brown => "brown",
            Colour::Red => "red",
            Colour::Orange => "orange",
            Colour::Yellow => "yellow",
            Colour::Green => "green",
            Colour::Blue => "blue",
            Colour::Violet => "violet",
            Colour::Grey => "grey",
            Colour::White => "white",
            Colour::Gold => "gold",
            Colour::Silver => "silver",
            Colour::Pink => "pink",
        }
    }

    /// Its two-letter code (IEC 60757).
    ///
    /// ```
    /// # use reckohm::marking::Colour;
    /// assert_eq!(Colour::Orange.code(), "OG");
    /// ```
    pub const fn code(self) -> &'static str {
        match self {
            Colour::Black => "BK",
            Colour::Brown => "BN",
            Colour::Red => "RD",
            Colour::Orange => "OG",
            Colour::Yellow => "YE",
            Colour::Green => "GN",
            Colour::Blue => "BU",
            Colour::Violet => "VT",
            Colour::Grey => "GY",
            Colour::White => "WH",
            Colour::Gold => "GD",
            Colour::Silver => "SR",
            Colour::Pink => "PK",
        }
    }

    /// The figure it stands for, if it can stand for one.
    ///
    /// ```
    /// # use reckohm::marking::Colour;
    /// assert_eq!((Colour::Blue.digit(), Colour::Gold.digit()), (Some(6), None));
    /// ```
    pub const fn digit(self) -> Option<u8> {
        if self.number() < 10 { Some(self.number()) } else { None }
    }

    /// The power of ten it stands for as a multiplier, if it can.
    ///
    /// ```
    /// # use reckohm::marking::{Colour, Edition};
    /// assert_eq!(Colour::Silver.multiplier_exponent(Edition::E1974), Some(-2));
    /// assert_eq!(Colour::Pink.multiplier_exponent(Edition::E2004), None);
    /// ```
    pub const fn multiplier_exponent(self, edition: Edition) -> Option<i32> {
        match (self, edition) {
            (Colour::Pink, Edition::E2016) => Some(-3),
            (Colour::Pink, _) => None,
            (Colour::Silver, _) => Some(-2),
            (Colour::Gold, _) => Some(-1),
            _ => Some(self.number() as i32),
        }
    }

    /// The tolerance it stands for, as a fraction, if it can.
    ///
    /// ```
    /// # use reckohm::marking::{Colour, Edition};
    /// assert_eq!(Colour::Brown.tolerance(Edition::E2016), Some(0.01));
    /// assert_eq!(Colour::White.tolerance(Edition::E2016), None);
    /// ```
    pub fn tolerance(self, edition: Edition) -> Option<f64> {
        self.tolerance_decimal(edition).map(Decimal::to_f64)
    }

    pub(super) const fn tolerance_decimal(self, edition: Edition) -> Option<Decimal> {
        let (digits, exponent) = match (self, edition) {
            (Colour::Brown, _) => (1, -2),
            (Colour::Red, _) => (2, -2),
            (Colour::Orange, Edition::E1974 | Edition::E2016) => (5, -4),
            (Colour::Yellow, Edition::E2016) => (2, -4),
            (Colour::Green, _) => (5, -3),
            (Colour::Blue, _) => (25, -4),
            (Colour::Violet, _) => (1, -3),
            (Colour::Grey, Edition::E2004) => (5, -4),
            (Colour::Grey, Edition::E2016) => (1, -4),
            (Colour::Gold, _) => (5, -2),
            (Colour::Silver, _) => (1, -1),
            _ => return None,
        };
        Some(Decimal::new(digits, exponent))
    }

    /// The temperature coefficient it stands for in ppm/K, plus or minus, if it can; the same in every edition.
    ///
    /// ```
    /// # use reckohm::marking::Colour;
    /// assert_eq!(Colour::Red.tcr_ppm_per_kelvin(), Some(50));
    /// ```
    pub const fn tcr_ppm_per_kelvin(self) -> Option<u16> {
        match self {
            Colour::Black => Some(250),
            Colour::Brown => Some(100),
            Colour::Red => Some(50),
            Colour::Orange => Some(15),
            Colour::Yellow => Some(25),
            Colour::Green => Some(20),
            Colour::Blue => Some(10),
            Colour::Violet => Some(5),
            Colour::Grey => Some(1),
            Colour::White | Colour::Gold | Colour::Silver | Colour::Pink => None,
        }
    }
}

impl fmt::Display for Colour {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.word())
    }
}
