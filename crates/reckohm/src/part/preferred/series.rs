//! The series themselves: IEC 60063:2015, Table 1 (two figures) and Table 2 (three figures).

use core::fmt;

use super::PreferredError;

/// A series of preferred values, named after how many values it has in a decade (IEC 60063).
///
/// Its number at the C door is that count.
///
/// ```
/// use reckohm::preferred::Series;
/// assert_eq!(Series::from_name("E12"), Ok(Series::E12));
/// assert_eq!(Series::E96.count(), 96);
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
#[repr(u8)]
pub enum Series {
    /// Three values a decade.
    E3 = 3,
    /// Six values a decade, usual at 20 %.
    E6 = 6,
    /// Twelve values a decade, usual at 10 %.
    E12 = 12,
    /// Twenty-four values a decade, usual at 5 %.
    E24 = 24,
    /// Forty-eight values a decade, usual at 2 %.
    E48 = 48,
    /// Ninety-six values a decade, usual at 1 %.
    E96 = 96,
    /// A hundred and ninety-two values a decade, usual at 0.5 % and tighter.
    E192 = 192,
}

impl Series {
    /// Every series, the coarsest first.
    pub const ALL: [Series; 7] =
        [Series::E3, Series::E6, Series::E12, Series::E24, Series::E48, Series::E96, Series::E192];

    /// The series with this name, "E3" to "E192"; a small "e" will do.
    ///
    /// # Errors
    /// [`PreferredError::UnknownSeries`] for any other text.
    ///
    /// ```
    /// # use reckohm::preferred::Series;
    /// assert_eq!(Series::from_name("E192"), Ok(Series::E192));
    /// assert!(Series::from_name("E13").is_err());
    /// ```
    pub fn from_name(name: &str) -> Result<Series, PreferredError> {
        Series::ALL
            .into_iter()
            .find(|series| series.name().eq_ignore_ascii_case(name))
            .ok_or(PreferredError::UnknownSeries)
    }

    /// The series with this many values in a decade, if there is one.
    ///
    /// ```
    /// # use reckohm::preferred::Series;
    /// assert_eq!(Series::from_count(24), Some(Series::E24));
    /// assert_eq!(Series::from_count(25), None);
    /// ```
    pub fn from_count(count: u32) -> Option<Series> {
        Series::ALL.into_iter().find(|series| u32::from(series.count()) == count)
    }

    /// Its name, as IEC 60063 writes it.
    ///
    /// ```
    /// # use reckohm::preferred::Series;
    /// assert_eq!(Series::E24.name(), "E24");
    /// ```
    pub const fn name(self) -> &'static str {
        match self {
            Series::E3 => "E3",
            Series::E6 => "E6",
            Series::E12 => "E12",
            Series::E24 => "E24",
            Series::E48 => "E48",
            Series::E96 => "E96",
            Series::E192 => "E192",
        }
    }

    /// How many values it has in a decade.
    ///
    /// ```
    /// # use reckohm::preferred::Series;
    /// assert_eq!(Series::E6.count(), 6);
    /// ```
    pub const fn count(self) -> u8 {
        self as u8
    }

    /// How many figures its values are printed with: two up to E24, three from E48.
    ///
    /// ```
    /// # use reckohm::preferred::Series;
    /// assert_eq!((Series::E24.figures(), Series::E48.figures()), (2, 3));
    /// ```
    pub const fn figures(self) -> u8 {
        match self {
            Series::E3 | Series::E6 | Series::E12 | Series::E24 => 2,
            Series::E48 | Series::E96 | Series::E192 => 3,
        }
    }

    /// Its values in one decade as whole numbers: 10 to 91 with two figures, 100 to 988 with three.
    pub(super) const fn whole_numbers(self) -> &'static [u16] {
        match self {
            Series::E3 => &E3,
            Series::E6 => &E6,
            Series::E12 => &E12,
            Series::E24 => &E24,
            Series::E48 => &E48,
            Series::E96 => &E96,
            Series::E192 => &E192,
        }
    }
}

impl fmt::Display for Series {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.name())
    }
}

// Up to E24 the values are historical and leave the rule 10^(i/n) in eight places: 27 30 33 36 39 43 47 82.
static E3: [u16; 3] = [10, 22, 47];
static E6: [u16; 6] = [10, 15, 22, 33, 47, 68];
static E12: [u16; 12] = [10, 12, 15, 18, 22, 27, 33, 39, 47, 56, 68, 82];
static E24: [u16; 24] =
    [10, 11, 12, 13, 15, 16, 18, 20, 22, 24, 27, 30, 33, 36, 39, 43, 47, 51, 56, 62, 68, 75, 82, 91];

// From E48 on they are 10^(i/n) rounded to three figures, with one exception: 920 in E192, where the rule gives 919.
static E48: [u16; 48] = [
    100, 105, 110, 115, 121, 127, 133, 140, 147, 154, 162, 169, 178, 187, 196, 205, 215, 226, 237, 249, 261, 274, 287,
    301, 316, 332, 348, 365, 383, 402, 422, 442, 464, 487, 511, 536, 562, 590, 619, 649, 681, 715, 750, 787, 825, 866,
    909, 953,
];
static E96: [u16; 96] = [
    100, 102, 105, 107, 110, 113, 115, 118, 121, 124, 127, 130, 133, 137, 140, 143, 147, 150, 154, 158, 162, 165, 169,
    174, 178, 182, 187, 191, 196, 200, 205, 210, 215, 221, 226, 232, 237, 243, 249, 255, 261, 267, 274, 280, 287, 294,
    301, 309, 316, 324, 332, 340, 348, 357, 365, 374, 383, 392, 402, 412, 422, 432, 442, 453, 464, 475, 487, 499, 511,
    523, 536, 549, 562, 576, 590, 604, 619, 634, 649, 665, 681, 698, 715, 732, 750, 768, 787, 806, 825, 845, 866, 887,
    909, 931, 953, 976,
];
static E192: [u16; 192] = [
    100, 101, 102, 104, 105, 106, 107, 109, 110, 111, 113, 114, 115, 117, 118, 120, 121, 123, 124, 126, 127, 129, 130,
    132, 133, 135, 137, 138, 140, 142, 143, 145, 147, 149, 150, 152, 154, 156, 158, 160, 162, 164, 165, 167, 169, 172,
    174, 176, 178, 180, 182, 184, 187, 189, 191, 193, 196, 198, 200, 203, 205, 208, 210, 213, 215, 218, 221, 223, 226,
    229, 232, 234, 237, 240, 243, 246, 249, 252, 255, 258, 261, 264, 267, 271, 274, 277, 280, 284, 287, 291, 294, 298,
    301, 305, 309, 312, 316, 320, 324, 328, 332, 336, 340, 344, 348, 352, 357, 361, 365, 370, 374, 379, 383, 388, 392,
    397, 402, 407, 412, 417, 422, 427, 432, 437, 442, 448, 453, 459, 464, 470, 475, 481, 487, 493, 499, 505, 511, 517,
    523, 530, 536, 542, 549, 556, 562, 569, 576, 583, 590, 597, 604, 612, 619, 626, 634, 642, 649, 657, 665, 673, 681,
    690, 698, 706, 715, 723, 732, 741, 750, 759, 768, 777, 787, 796, 806, 816, 825, 835, 845, 856, 866, 876, 887, 898,
    909, 920, 931, 942, 953, 965, 976, 988,
];
