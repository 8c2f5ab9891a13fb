//! What can be wrong with the form of a code, and why a value cannot be written in one.

use core::fmt;

/// One of the three ways to mark a part.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[repr(u16)]
pub enum MarkingForm {
    /// Colour bands.
    Bands = 110,
    /// A letter-and-digit code.
    Letters = 111,
    /// A chip code.
    Chip = 112,
}

impl MarkingForm {
    const ALL: [MarkingForm; 3] = [MarkingForm::Bands, MarkingForm::Letters, MarkingForm::Chip];

    pub(super) const fn argument(self) -> u16 {
        self as u16
    }

    pub(super) fn from_argument(argument: u16) -> Option<MarkingForm> {
        MarkingForm::ALL.into_iter().find(|form| form.argument() == argument)
    }
}

impl fmt::Display for MarkingForm {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            MarkingForm::Bands => "colour bands",
            MarkingForm::Letters => "letter code",
            MarkingForm::Chip => "chip code",
        })
    }
}

macro_rules! numbered {
    ($(#[doc = $head:literal])+ $type:ident { $($(#[doc = $doc:literal])+ $name:ident = $number:literal,)+ }) => {
        $(#[doc = $head])+
        #[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
        #[repr(u16)]
        #[non_exhaustive]
        pub enum $type { $($(#[doc = $doc])+ $name = $number,)+ }

        impl $type {
            /// Every case, in the order of its number.
            pub const ALL: &'static [$type] = &[$($type::$name),+];

            pub(super) const fn argument(self) -> u16 {
                self as u16
            }

            pub(super) fn from_argument(argument: u16) -> Option<$type> {
                $type::ALL.iter().copied().find(|case| case.argument() == argument)
            }
        }
    };
}

numbered! {
    /// What is wrong with the form of a letter-and-digit code or a chip code.
    Fault {
        /// No letter R, K, M, G or T among the figures of a letter code.
        NoMultiplierLetter = 120,
        /// No figure beside the letter.
        NoFigure = 121,
        /// More figures than a letter code holds.
        TooManyFigures = 122,
        /// A needless 0 in front.
        LeadingZero = 123,
        /// Every figure is 0.
        ZeroValue = 124,
        /// A small letter.
        SmallLetter = 125,
        /// A letter other than R in front of all figures.
        LetterFirst = 126,
        /// A chip code of neither three nor four characters.
        ChipLength = 127,
        /// A place that E96 does not have.
        ChipCodeNumber = 128,
    }
}

numbered! {
    /// Why a value cannot be written in a code.
    Unwritable {
        /// More significant figures than bands for them.
        BandFigures = 140,
        /// A multiplier for which there is no colour.
        BandMultiplier = 141,
        /// A tolerance for which there is no colour in its place.
        BandTolerance = 142,
        /// A temperature coefficient for which there is no colour.
        BandCoefficient = 143,
        /// More than four figures.
        LettersFigures = 144,
        /// A value beyond the letter T.
        LettersLarge = 145,
        /// A value that needs more than four places after R.
        LettersSmall = 146,
        /// A tolerance without a letter.
        LettersTolerance = 147,
        /// The zero-ohm link.
        LettersZero = 148,
        /// More figures than the form of chip code holds.
        ChipFigures = 149,
        /// A multiplier above 10^9.
        ChipLarge = 150,
        /// A value that needs more places after R.
        ChipSmall = 151,
        /// A value that is not in E96.
        ChipNotE96 = 152,
        /// A multiplier without a letter.
        ChipNoLetter = 153,
        /// A tolerance other than 1 %.
        ChipTolerance = 154,
    }
}
