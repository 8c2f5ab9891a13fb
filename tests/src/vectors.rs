//! The vectors that every door runs: one file an area in `vectors/`, a call a row.
//!
//! Tab-separated, with `#` comments and one line of headings: function, inputs, outputs, bits, status, source. Inputs and
//! outputs are joined by `|`; numbers are decimals that parse to the exact double, texts stand as they are, with `\xNN`
//! for bytes outside printable ASCII and for `|`, `\` and the tab. An output's decimal comes from outside (a printed value,
//! an independent computation) wherever there is one; `bits` holds what this library gives, 16 hexadecimal digits a
//! double, `-` for a text. A row with a status other than 0 is an error: it has neither outputs nor bits.
//!
//! After a deliberate change of results, `UPDATE_BITS=1 cargo test -p reckohm-tests` writes the bits anew; such a run
//! fails all the same, and the change belongs in the changelog as value-breaking.

use std::fmt::Write as _;
use std::fs;
use std::path::{Path, PathBuf};

use reckohm::number::Kind;

/// The first line that is no comment.
const HEADINGS: &str = "function\tinputs\toutputs\tbits\tstatus\tsource";

/// One call: what goes in, and what must come out.
#[derive(Clone, Debug, PartialEq)]
pub struct Row {
    /// Its line in the file, counted from 1.
    pub line: usize,
    /// The public path without `reckohm::`.
    pub function: String,
    /// What goes in, with the escapes undone.
    pub inputs: Vec<Vec<u8>>,
    /// What must come out, with the escapes undone.
    pub outputs: Vec<Vec<u8>>,
    /// The bits of each output, `None` for a text.
    pub bits: Vec<Option<u64>>,
    /// 0, or the number of the error's kind.
    pub status: i32,
    /// Where the outputs come from.
    pub source: String,
}

impl Row {
    /// The input at this place as text.
    pub fn text(&self, place: usize) -> &[u8] {
        self.inputs.get(place).unwrap_or_else(|| panic!("line {}: no input {place}", self.line))
    }

    /// The input at this place as text that is known to be printable.
    pub fn word(&self, place: usize) -> &str {
        std::str::from_utf8(self.text(place)).unwrap_or_else(|_| panic!("line {}: input {place} is no word", self.line))
    }

    /// The input at this place as a number; `nan` and `inf` are numbers here.
    pub fn number(&self, place: usize) -> f64 {
        self.word(place).parse().unwrap_or_else(|_| panic!("line {}: input {place} is no number", self.line))
    }

    /// The input at this place as a number, or `None` where it is empty.
    pub fn optional(&self, place: usize) -> Option<f64> {
        (!self.text(place).is_empty()).then(|| self.number(place))
    }

    /// All inputs from this place on as numbers.
    pub fn numbers_from(&self, place: usize) -> Vec<f64> {
        (place..self.inputs.len()).map(|place| self.number(place)).collect()
    }
}

/// One result of a call.
#[derive(Clone, Debug, PartialEq)]
pub enum Output {
    /// A double.
    Number(f64),
    /// Anything that is written, not computed.
    Text(Vec<u8>),
}

impl From<f64> for Output {
    fn from(x: f64) -> Output {
        Output::Number(x)
    }
}

impl From<&str> for Output {
    fn from(text: &str) -> Output {
        Output::Text(text.as_bytes().to_vec())
    }
}

impl From<String> for Output {
    fn from(text: String) -> Output {
        Output::Text(text.into_bytes())
    }
}

impl From<bool> for Output {
    fn from(yes: bool) -> Output {
        Output::from(if yes { "true" } else { "false" })
    }
}

/// What a call gave: its outputs, or the kind of its error.
pub type Outcome = Result<Vec<Output>, Kind>;

/// A single number as an outcome.
pub fn single<E>(result: Result<f64, E>, kind: impl Fn(&E) -> Kind) -> Outcome {
    result.map(|x| vec![Output::Number(x)]).map_err(|error| kind(&error))
}

/// The file with this name in `vectors/`.
pub fn path(name: &str) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("vectors").join(name)
}

/// The rows of a file in `vectors/`.
pub fn read(name: &str) -> Vec<Row> {
    let text = fs::read_to_string(path(name)).unwrap_or_else(|error| panic!("vectors/{name}: {error}"));
    parse(&text).unwrap_or_else(|problem| panic!("vectors/{name}: {problem}"))
}

/// The rows of a text in the form of the vector files.
pub fn parse(text: &str) -> Result<Vec<Row>, String> {
    let mut lines = (1..).zip(text.lines()).filter(|(_, line)| !line.is_empty() && !line.starts_with('#'));
    match lines.next() {
        Some((_, HEADINGS)) => {}
        other => return Err(format!("expected the headings, found {other:?}")),
    }
    lines.map(|(line, text)| parse_row(line, text).map_err(|problem| format!("line {line}: {problem}"))).collect()
}

fn parse_row(line: usize, text: &str) -> Result<Row, String> {
    let columns: Vec<&str> = text.split('\t').collect();
    let [function, inputs, outputs, bits, status, source] = columns[..] else {
        return Err(format!("{} columns instead of 6", columns.len()));
    };
    let row = Row {
        line,
        function: function.to_owned(),
        inputs: items(inputs).map(unescape).collect::<Result<_, _>>()?,
        outputs: items(outputs).map(unescape).collect::<Result<_, _>>()?,
        bits: items(bits).map(parse_bits).collect::<Result<_, _>>()?,
        status: status.parse().map_err(|_| format!("status {status:?}"))?,
        source: source.to_owned(),
    };
    if row.status == 0 && (row.outputs.is_empty() || row.bits.len() != row.outputs.len()) {
        return Err(format!("{} outputs with bits for {}", row.outputs.len(), row.bits.len()));
    }
    if row.status != 0 && (!row.outputs.is_empty() || !row.bits.is_empty()) {
        return Err("an error with outputs".to_owned());
    }
    if row.status != 0 && Kind::from_number(row.status).is_none() {
        return Err(format!("no kind of error has the number {}", row.status));
    }
    if row.function.is_empty() || row.source.is_empty() {
        return Err("no function or no source".to_owned());
    }
    Ok(row)
}

/// The items of a column; an empty column has none. A single empty text is written `\x`.
fn items(column: &str) -> impl Iterator<Item = &str> {
    column.split('|').filter(move |_| !column.is_empty())
}

fn parse_bits(text: &str) -> Result<Option<u64>, String> {
    match text {
        "-" => Ok(None),
        _ if text.len() == 16 => u64::from_str_radix(text, 16).map(Some).map_err(|_| format!("bits {text:?}")),
        _ => Err(format!("bits {text:?}")),
    }
}

/// The bytes that an item stands for.
pub fn unescape(item: &str) -> Result<Vec<u8>, String> {
    if item == r"\x" {
        return Ok(Vec::new());
    }
    let mut bytes = Vec::with_capacity(item.len());
    let mut rest = item;
    while let Some(at) = rest.find('\\') {
        bytes.extend_from_slice(&rest.as_bytes()[..at]);
        let code = rest.get(at + 2..at + 4).filter(|_| rest.as_bytes().get(at + 1) == Some(&b'x'));
        let byte = code.and_then(|code| u8::from_str_radix(code, 16).ok());
        bytes.push(byte.ok_or_else(|| format!("escape in {item:?}"))?);
        rest = &rest[at + 4..];
    }
    bytes.extend_from_slice(rest.as_bytes());
    Ok(bytes)
}

/// The item that stands for these bytes.
pub fn escape(bytes: &[u8]) -> String {
    let mut item = String::new();
    for &byte in bytes {
        match byte {
            b' '..=b'~' if byte != b'|' && byte != b'\\' => item.push(char::from(byte)),
            _ => write!(item, "\\x{byte:02x}").expect("a text takes what is written to it"),
        }
    }
    if item.is_empty() { r"\x".to_owned() } else { item }
}

/// Runs every row of a file and panics with the rows that came out otherwise; gives the number of rows.
///
/// `call` calls the function that a row names, `None` if it knows no such function. `bound` is the relative difference
/// that a function's results may have from the decimals of the file; against the bits nothing may differ.
pub fn run(name: &str, bound: impl Fn(&Row) -> f64, call: impl Fn(&Row) -> Option<Outcome>) -> usize {
    let rows = read(name);
    if std::env::var_os("UPDATE_BITS").is_some() {
        update_bits(name, &rows, &call);
        panic!("vectors/{name}: bits written anew; run again without UPDATE_BITS");
    }
    let mut problems = Vec::new();
    for row in &rows {
        let problem = match call(row) {
            None => Some("no such function".to_owned()),
            Some(outcome) => compare(row, &outcome, bound(row)),
        };
        problems.extend(problem.map(|problem| format!("line {}, {}: {problem}", row.line, row.function)));
    }
    let count = problems.len();
    problems.truncate(20);
    assert!(count == 0, "vectors/{name}: {count} of {} rows differ\n{}", rows.len(), problems.join("\n"));
    rows.len()
}

/// What is wrong with an outcome, if anything.
pub fn compare(row: &Row, outcome: &Outcome, bound: f64) -> Option<String> {
    let outputs = match outcome {
        Err(kind) if kind.number() == row.status => return None,
        Err(kind) => return Some(format!("error {} ({}) instead of {}", kind.number(), kind.name(), row.status)),
        Ok(outputs) if row.status != 0 => return Some(format!("{outputs:?} instead of error {}", row.status)),
        Ok(outputs) => outputs,
    };
    if outputs.len() != row.outputs.len() {
        return Some(format!("{} outputs instead of {}", outputs.len(), row.outputs.len()));
    }
    outputs.iter().zip(&row.outputs).zip(&row.bits).find_map(|((output, expected), bits)| match (output, bits) {
        (Output::Text(text), None) if text == expected => None,
        (Output::Text(text), _) => Some(format!("{:?} instead of {:?}", escape(text), escape(expected))),
        (Output::Number(x), _) => {
            let decimal: f64 = match std::str::from_utf8(expected).ok().and_then(|text| text.parse().ok()) {
                Some(decimal) => decimal,
                None => return Some(format!("the output {:?} is no number", escape(expected))),
            };
            // Equal infinities differ by NaN, which is not within the bound, hence the first comparison.
            let close = *x == decimal || (x - decimal).abs() <= bound * decimal.abs();
            match *bits {
                _ if !close => Some(format!("{x:e} instead of {decimal:e}, allowed {bound:e} relative")),
                Some(bits) if x.to_bits() == bits => None,
                Some(bits) => Some(format!("bits {:016x} instead of {bits:016x}", x.to_bits())),
                None => Some("no bits in the file".to_owned()),
            }
        }
    })
}

/// Writes the bits of every row anew, leaving everything else as it is.
fn update_bits(name: &str, rows: &[Row], call: impl Fn(&Row) -> Option<Outcome>) {
    let text = fs::read_to_string(path(name)).expect("read a moment ago");
    let mut lines: Vec<String> = text.lines().map(str::to_owned).collect();
    for row in rows.iter().filter(|row| row.status == 0) {
        if let Some(Ok(outputs)) = call(row) {
            let mut columns: Vec<String> = lines[row.line - 1].split('\t').map(str::to_owned).collect();
            columns[3] = bits_column(&outputs);
            lines[row.line - 1] = columns.join("\t");
        }
    }
    fs::write(path(name), lines.join("\n") + "\n").expect("vectors can be written");
}

/// The bits column of a row with these outputs.
pub fn bits_column(outputs: &[Output]) -> String {
    let items = outputs.iter().map(|output| match output {
        Output::Number(x) => format!("{:016x}", x.to_bits()),
        Output::Text(_) => "-".to_owned(),
    });
    items.collect::<Vec<_>>().join("|")
}

#[cfg(test)]
mod tests {
    use super::*;

    const FILE: &str = "# made by hand\nfunction\tinputs\toutputs\tbits\tstatus\tsource\n\
        a.half\t1\t0.5\t3fe0000000000000\t0\tby hand\n\
        a.word\tx\\x7c\\x00|\\x\tyes|2\t-|4000000000000000\t0\tby hand\n\
        a.half\tnan\t\t\t2\tby hand\n";

    #[test]
    fn rows_are_read_with_their_escapes_undone() {
        let rows = parse(FILE).unwrap();
        assert_eq!(rows.len(), 3);
        assert_eq!((rows[0].line, rows[0].number(0)), (3, 1.0));
        assert_eq!(rows[1].inputs, [b"x|\0".to_vec(), Vec::new()]);
        assert_eq!(rows[1].bits, [None, Some(2.0_f64.to_bits())]);
        assert!(rows[2].number(0).is_nan() && rows[2].outputs.is_empty() && rows[2].status == 2);
    }

    #[test]
    fn a_difference_is_found_in_value_bits_status_and_text() {
        let rows = parse(FILE).unwrap();
        let half = |x: f64| Ok(vec![Output::Number(x)]);
        assert_eq!(compare(&rows[0], &half(0.5), 0.0), None);
        assert!(compare(&rows[0], &half(0.5000001), 1e-9).unwrap().contains("instead of 5e-1"));
        assert!(compare(&rows[0], &half(0.5000001), 1e-3).unwrap().contains("bits"));
        assert!(compare(&rows[0], &Err(Kind::Empty), 1e-3).unwrap().contains("(Empty) instead of 0"));
        assert!(compare(&rows[0], &Ok(vec![]), 1e-3).unwrap().contains("0 outputs instead of 1"));
        assert_eq!(compare(&rows[2], &Err(Kind::NotFinite), 0.0), None);
        assert!(compare(&rows[2], &half(f64::NAN), 0.0).unwrap().contains("instead of error 2"));
        assert_eq!(compare(&rows[1], &Ok(vec!["yes".into(), 2.0.into()]), 0.0), None);
        assert!(compare(&rows[1], &Ok(vec!["no".into(), 2.0.into()]), 0.0).unwrap().contains("\"no\""));
        assert!(compare(&rows[1], &Ok(vec!["yes".into(), f64::NAN.into()]), 1.0).is_some());
    }

    #[test]
    fn a_broken_row_is_named() {
        let broken = |row: &str| parse(&format!("{HEADINGS}\n{row}\n")).unwrap_err();
        assert_eq!(broken("a\t1\t2"), "line 2: 3 columns instead of 6");
        assert_eq!(broken("a\t1\t2\t\t0\tx"), "line 2: 1 outputs with bits for 0");
        assert_eq!(broken("a\t1\t2\t-\t1\tx"), "line 2: an error with outputs");
        assert_eq!(broken("a\t1\t\t\t999\tx"), "line 2: no kind of error has the number 999");
        assert_eq!(broken("a\t\\q\t\t\t1\tx"), "line 2: escape in \"\\\\q\"");
        assert!(parse("a\tb\n").is_err());
    }

    #[test]
    fn escapes_come_back() {
        let bytes: Vec<u8> = (0..=255).collect();
        assert_eq!(unescape(&escape(&bytes)).unwrap(), bytes);
        assert_eq!(unescape(&escape(b"")).unwrap(), b"");
    }
}
