//! The certified data sets of NIST's Statistical Reference Datasets, as their files in `checks` have them.

use std::fs;
use std::path::Path;

/// One parameter of a data set.
#[derive(Clone, Debug, PartialEq)]
pub struct Parameter {
    /// The two starts; none where the model is linear.
    pub starts: Option<[f64; 2]>,
    /// Its certified value as printed.
    pub certified: String,
    /// Its certified standard deviation as printed.
    pub sd: String,
}

/// One data set.
#[derive(Clone, Debug, PartialEq, Default)]
pub struct DataSet {
    /// The model as printed.
    pub model: String,
    /// Whether it is linear in its parameters.
    pub linear: bool,
    /// The parameters in their order.
    pub parameters: Vec<Parameter>,
    /// The certified residual standard deviation as printed.
    pub residual_sd: String,
    /// The certified degrees of freedom.
    pub degrees_of_freedom: usize,
    /// y of each point.
    pub y: Vec<f64>,
    /// The x of each point, one or more.
    pub x: Vec<Vec<f64>>,
}

impl DataSet {
    /// Reads the set of this name.
    pub fn read(name: &str) -> DataSet {
        let path = Path::new(env!("CARGO_MANIFEST_DIR")).join(format!("checks/sensor_nist_{name}.csv"));
        let text = fs::read_to_string(&path).unwrap_or_else(|error| panic!("{}: {error}", path.display()));
        let mut reader = csv::ReaderBuilder::new().comment(Some(b'#')).from_reader(text.as_bytes());
        let mut set = DataSet::default();
        for record in reader.records().map(|record| record.expect("a row")) {
            let field = |at: usize| record[at].trim().to_owned();
            match (&record[0], &record[1]) {
                ("meta", "model") => set.model = field(2),
                ("meta", "kind") => set.linear = &record[2] == "linear",
                ("stat", "residual_sd") => set.residual_sd = field(2),
                ("stat", "df") => set.degrees_of_freedom = record[2].parse().expect("degrees of freedom"),
                ("param", _) => {
                    let starts = (!record[2].is_empty()).then(|| [number(&record[2]), number(&record[3])]);
                    set.parameters.push(Parameter { starts, certified: field(4), sd: field(5) });
                }
                ("data", _) => {
                    set.y.push(number(&record[2]));
                    set.x.push(record.iter().skip(3).filter(|x| !x.is_empty()).map(number).collect());
                }
                _ => {}
            }
        }
        assert!(!set.parameters.is_empty() && set.y.len() > set.parameters.len(), "{name}: {set:?}");
        set
    }

    /// The only x of each point.
    pub fn one_x(&self) -> Vec<f64> {
        self.x.iter().map(|x| if let [x] = x[..] { x } else { panic!("{x:?}") }).collect()
    }
}

fn number(text: &str) -> f64 {
    text.trim().parse().unwrap_or_else(|_| panic!("{text:?} is no number"))
}

/// How many digits of a printed number a result has: the negative decimal logarithm of the relative error, of the number itself
/// where 0 is printed; no more than are printed.
pub fn digits(found: f64, printed: &str) -> f64 {
    let exact = number(printed);
    let error = if exact == 0.0 { found.abs() } else { (found / exact - 1.0).abs() };
    let mantissa = printed.trim_start_matches('-').split(['e', 'E']).next().unwrap_or_default();
    let significant = mantissa.replace('.', "").trim_start_matches('0').len();
    let most = if exact == 0.0 { 15.0 } else { significant as f64 };
    if error.is_nan() { 0.0 } else { (-error.max(1e-300).log10()).min(most) }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn digits_are_those_that_agree() {
        assert_eq!(digits(1.25, "1.25"), 3.0);
        assert_eq!(digits(-1.25, "-0.125E+01"), 3.0);
        assert!((digits(1.001, "1.0000000") - 3.0).abs() < 1e-6);
        assert_eq!(digits(0.0, "0.000000000000000"), 15.0);
        assert!((digits(1e-9, "0.0") - 9.0).abs() < 1e-6);
        assert_eq!(digits(f64::NAN, "1.0"), 0.0);
    }
}
