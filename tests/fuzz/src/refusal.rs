//! What every error must keep: it can be made again from its plain numbers, and its sentence fits the C door's room.

use core::fmt::{Debug, Display};

use reckohm::number::{Detail, Kind};

/// The longest sentence: `RKO_TEXT_CAPACITY` without the closing zero.
const LONGEST: usize = 1023;

/// Checks one error against its plain numbers.
pub fn sound<E: Debug + Display>(
    error: &E,
    kind: Kind,
    plain: impl Fn(&E) -> Detail,
    from_detail: impl Fn(&Detail) -> Option<E>,
) {
    let detail = plain(error);
    assert_eq!(detail.kind, kind, "{error:?}");
    let again = from_detail(&detail).unwrap_or_else(|| panic!("not made again: {error:?}"));
    // By words, since a NaN that was given is equal to nothing. A range error may come back as that of another layer.
    assert_eq!(format!("{detail:?}"), format!("{:?}", plain(&again)));
    let sentence = error.to_string();
    assert_eq!(again.to_string(), sentence);
    assert!((30..=LONGEST).contains(&sentence.len()), "{} bytes: {sentence}", sentence.len());
    // The source of some ranges speaks of it; shown as a number it is only where it was given.
    let shown = sentence.replace("no infinity and no NaN enters", "");
    assert!(!shown.contains("NaN") || format!("{error:?}").contains("NaN"), "{sentence}");
}

/// Checks the error of a result, if it is one; gives what there is else.
#[macro_export]
macro_rules! accepted {
    ($error:ident, $result:expr) => {
        match $result {
            Ok(value) => Some(value),
            Err(error) => {
                $crate::refusal::sound(&error, error.kind(), $error::detail, $error::from_detail);
                None
            }
        }
    };
}
