//! The allowed errors: `allowed_errors.csv`, one row a function and door, with the reason and the worst that was seen.
//!
//! A row fails when its bound is exceeded, and as well when it is far too loose for what is found, so that a bound that
//! was widened once cannot linger.

use std::fs;
use std::path::Path;

/// A bound may be this many times what is found.
const LOOSEST: f64 = 25.0;

/// One row of the file.
#[derive(Clone, Debug, PartialEq)]
pub struct Allowed {
    /// The public path without `reckohm::`, with what sets the row apart behind a colon where a function has several.
    pub function: String,
    /// `rust`, `c` or `python`; the doors hold no maths, so that `rust` speaks for all where the bits are compared.
    pub door: String,
    /// The largest error that is allowed.
    pub bound: f64,
    /// `relative`, `ulp` for units in the last place, or `kelvin`.
    pub unit: String,
    /// Why this much and not less.
    pub reason: String,
    /// The worst that was seen when the row was written.
    pub worst_seen: f64,
}

/// All rows.
pub fn rows() -> Vec<Allowed> {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("allowed_errors.csv");
    parse(&fs::read_to_string(path).expect("allowed_errors.csv can be read"))
}

fn parse(text: &str) -> Vec<Allowed> {
    let mut reader = csv::ReaderBuilder::new().comment(Some(b'#')).from_reader(text.as_bytes());
    let headings = reader.headers().expect("headings").clone();
    assert_eq!(headings, ["function", "door", "bound", "unit", "reason", "worst_seen"][..]);
    let number = |text: &str| text.parse::<f64>().unwrap_or_else(|_| panic!("{text:?} is no number"));
    let row = |record: csv::StringRecord| Allowed {
        function: record[0].to_owned(),
        door: record[1].to_owned(),
        bound: number(&record[2]),
        unit: record[3].to_owned(),
        reason: record[4].to_owned(),
        worst_seen: number(&record[5]),
    };
    reader.records().map(|record| row(record.expect("a row"))).collect()
}

/// The row of a function at the Rust door.
pub fn row(function: &str) -> Allowed {
    let found = rows().into_iter().find(|row| row.function == function && row.door == "rust");
    found.unwrap_or_else(|| panic!("allowed_errors.csv has no row {function}"))
}

/// Holds the worst error that a test found against the function's row.
pub fn hold(function: &str, found: f64) {
    if let Err(problem) = judge(&row(function), found) {
        panic!("{function}: {problem}");
    }
}

/// What is wrong between a row and the worst error found, if anything.
pub fn judge(row: &Allowed, found: f64) -> Result<(), String> {
    let Allowed { bound, unit, worst_seen, .. } = row;
    if found.is_nan() || found > *bound {
        return Err(format!("{found:e} {unit} found, {bound:e} allowed"));
    }
    // Nothing better than the rounding of the result can be asked.
    let rounding = match unit.as_str() {
        "ulp" => 0.5,
        // Kelvin temperatures of sensors are some hundreds.
        "kelvin" => 128.0 * f64::EPSILON,
        _ => f64::EPSILON / 2.0,
    };
    if *bound > LOOSEST * found.max(rounding) {
        return Err(format!("{bound:e} {unit} allowed is far too loose, only {found:e} found"));
    }
    if (found - worst_seen).abs() > 0.1 * worst_seen.max(rounding) {
        return Err(format!("{found:e} {unit} found, but {worst_seen:e} written down as the worst seen"));
    }
    Ok(())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_row_is_whole_and_stands_once() {
        let rows = rows();
        assert!(!rows.is_empty());
        for row in &rows {
            assert!(["rust", "c", "python"].contains(&row.door.as_str()), "{row:?}");
            assert!(["relative", "ulp", "kelvin"].contains(&row.unit.as_str()), "{row:?}");
            assert!(row.bound > 0.0 && row.worst_seen <= row.bound && row.reason.len() > 10, "{row:?}");
            assert_eq!(
                rows.iter().filter(|other| (&other.function, &other.door) == (&row.function, &row.door)).count(),
                1
            );
        }
    }

    #[test]
    fn exceeded_and_loose_and_outdated_rows_fail() {
        let row = &parse("function,door,bound,unit,reason,worst_seen\nf,rust,1e-12,relative,because,2e-13\n")[0];
        assert_eq!(judge(row, 2.1e-13), Ok(()));
        assert!(judge(row, 1.1e-12).unwrap_err().contains("allowed"));
        assert!(judge(row, f64::NAN).unwrap_err().contains("NaN"));
        assert!(judge(row, 3e-14).unwrap_err().contains("too loose"));
        assert!(judge(row, 5e-13).unwrap_err().contains("written down"));
    }
}
