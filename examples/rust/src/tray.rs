//! The tray file: one line a part, as written down at the bench. The file's head says what stands in each column.

use std::fs::File;
use std::path::Path;

use reckohm::marking::{Edition, Marking};
use reckohm::verdict::Limits;

use crate::refusal::Refusal;

const COLUMNS: [&str; 13] = [
    "part",
    "kind",
    "code",
    "marking",
    "nominal",
    "tolerance",
    "lower",
    "upper",
    "span",
    "shown",
    "leads",
    "part_c",
    "note",
];

/// One line as it was written: texts only, nothing of it is believed yet.
pub struct Line {
    /// Its number in the file, counted from 1.
    pub number: u64,
    pub part: String,
    pub kind: String,
    pub code: String,
    pub marking: String,
    pub span: String,
    pub note: String,
    nominal: String,
    tolerance: String,
    lower: String,
    upper: String,
    shown: String,
    leads: String,
    part_c: String,
}

/// What a part is meant to be.
pub struct Wanted {
    pub marking: Option<Marking>,
    pub nominal_ohm: Option<f64>,
    pub tolerance: Option<f64>,
    pub limits: Limits,
}

/// Reads the file. A line that is not a line of the table at all is an error by itself and does not hide the others.
pub fn read(path: &Path) -> Result<Vec<Result<Line, Refusal>>, String> {
    let attempt = |error: &dyn std::error::Error| format!("reading the tray {}: {error}", path.display());
    let file = File::open(path).map_err(|error| attempt(&error))?;
    let mut reader = csv::ReaderBuilder::new().comment(Some(b'#')).trim(csv::Trim::All).from_reader(file);
    let headers = reader.headers().map_err(|error| attempt(&error))?;
    if !headers.iter().eq(COLUMNS) {
        return Err(format!("reading the tray {}: the columns must be {}", path.display(), COLUMNS.join(",")));
    }
    let lines = reader.records().map(|record| match record {
        Ok(record) => Ok(Line::of(&record)),
        Err(error) => {
            Err(Refusal::Line { line: error.position().map_or(0, csv::Position::line), why: error.to_string() })
        }
    });
    Ok(lines.collect())
}

impl Line {
    fn of(record: &csv::StringRecord) -> Line {
        let field = |name: &str| {
            let index = COLUMNS.iter().position(|column| *column == name);
            index.and_then(|index| record.get(index)).unwrap_or_default().to_owned()
        };
        Line {
            number: record.position().map_or(0, csv::Position::line),
            part: field("part"),
            kind: field("kind"),
            code: field("code"),
            marking: field("marking"),
            span: field("span"),
            note: field("note"),
            nominal: field("nominal"),
            tolerance: field("tolerance"),
            lower: field("lower"),
            upper: field("upper"),
            shown: field("shown"),
            leads: field("leads"),
            part_c: field("part_c"),
        }
    }

    /// What each reading showed.
    pub fn shown(&self) -> impl Iterator<Item = &[u8]> {
        self.shown.split(';').map(|text| text.trim().as_bytes())
    }

    /// What the leads showed, if they were read.
    pub fn leads(&self) -> Option<&[u8]> {
        (!self.leads.is_empty()).then_some(self.leads.as_bytes())
    }

    /// The temperature of the part, if it was taken.
    pub fn part_c(&self) -> Result<Option<f64>, Refusal> {
        number("part_c", &self.part_c)
    }

    /// What the part is meant to be: its marking, or what the kit's sheet says.
    pub fn wanted(&self) -> Result<Wanted, Refusal> {
        let marking = match self.code.as_str() {
            "" => None,
            "bands" => Some(Marking::from_bands(&self.marking, Edition::E2016)?),
            "letters" => Some(Marking::from_letters(&self.marking)?),
            "chip" => Some(Marking::from_chip(&self.marking, None)?),
            _ => return Err(Refusal::UnknownCode(self.code.clone())),
        };
        let nominal_ohm = match (number("nominal", &self.nominal)?, marking) {
            (None, Some(marking)) => Some(marking.nominal_ohm()),
            (nominal, _) => nominal,
        };
        let tolerance = match (number("tolerance", &self.tolerance)?, marking) {
            (None, Some(marking)) => marking.tolerance(),
            (tolerance, _) => tolerance,
        };
        let limits = match (number("lower", &self.lower)?, number("upper", &self.upper)?) {
            (Some(lower), Some(upper)) => Limits::new(lower, upper)?,
            (Some(lower), None) => Limits::at_least(lower)?,
            (None, Some(upper)) => Limits::at_most(upper)?,
            (None, None) => match (nominal_ohm, tolerance) {
                (Some(nominal), Some(tolerance)) => Limits::from_tolerance(nominal, tolerance)?,
                _ => return Err(Refusal::NoLimits),
            },
        };
        Ok(Wanted { marking, nominal_ohm, tolerance, limits })
    }
}

/// A number of the file; an empty field is none.
fn number(column: &'static str, text: &str) -> Result<Option<f64>, Refusal> {
    if text.is_empty() {
        return Ok(None);
    }
    text.parse().map(Some).map_err(|_| Refusal::NotANumber { column, text: text.to_owned() })
}
