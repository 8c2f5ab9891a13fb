//! Tables of exact values, and the worst relative error of a function over one.

use std::collections::BTreeMap;

/// The worst that was seen of one function.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Worst {
    /// The relative error; where the exact value is 0, the result itself.
    pub relative: f64,
    /// What was given there.
    pub inputs: String,
    /// How many rows there were.
    pub tried: usize,
}

impl Worst {
    /// Takes one more row.
    pub fn take(&mut self, inputs: &str, result: f64, exact: f64) {
        let relative = if exact == 0.0 { result.abs() } else { (result / exact - 1.0).abs() };
        self.tried += 1;
        if relative > self.relative || relative.is_nan() {
            self.relative = if relative.is_nan() { f64::INFINITY } else { relative };
            self.inputs = inputs.to_owned();
        }
    }
}

/// The worst of each function over a table of tab-separated rows: function, inputs joined by `|`, exact value. Comments
/// begin with `#`; the first line after them holds the headings.
pub fn worst(table: &str, call: impl Fn(&str, &[f64]) -> f64) -> BTreeMap<String, Worst> {
    let number = |text: &str| text.parse::<f64>().unwrap_or_else(|_| panic!("{text:?} is no number"));
    let mut worst = BTreeMap::<String, Worst>::new();
    for line in table.lines().filter(|line| !line.starts_with('#')).skip(1) {
        let [function, inputs, exact] = line.split('\t').collect::<Vec<_>>()[..] else { panic!("{line:?}") };
        let given: Vec<f64> = inputs.split('|').map(number).collect();
        worst.entry(function.to_owned()).or_default().take(inputs, call(function, &given), number(exact));
    }
    worst
}
