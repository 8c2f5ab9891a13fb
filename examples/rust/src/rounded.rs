//! Numbers as a person writes them: the digits follow the uncertainty.

/// The unit that a resistance is best written in: its name and how many ohm it is.
fn unit(ohm: f64) -> (&'static str, f64) {
    match ohm.abs() {
        size if size >= 1.0e6 => ("Mohm", 1.0e6),
        size if size >= 1.0e3 => ("kohm", 1.0e3),
        _ => ("ohm", 1.0),
    }
}

/// A value with its expanded uncertainty, this one to two figures and the value to the same place: "4.663 ± 0.065 kohm".
pub fn with_uncertainty(ohm: f64, expanded_ohm: f64) -> String {
    let (name, factor) = unit(ohm.abs().max(expanded_ohm));
    let expanded = expanded_ohm / factor;
    if expanded <= 0.0 {
        return plain(ohm);
    }
    let decimals = decimals_of_two_figures(expanded);
    let value = to_place(ohm, factor, decimals);
    format!("{value:.decimals$} ± {expanded:.decimals$} {name}")
}

/// A value with the digits that go with this uncertainty: "4.663 kohm" beside 64 ohm.
pub fn beside(ohm: f64, uncertainty_ohm: f64) -> String {
    let (name, factor) = unit(ohm.abs().max(uncertainty_ohm));
    let decimals = if uncertainty_ohm > 0.0 { decimals_of_two_figures(uncertainty_ohm / factor) } else { 0 };
    format!("{:.decimals$} {name}", to_place(ohm, factor, decimals))
}

/// A resistance rounded to this many decimals of a unit, and given in it. Rounded as whole ohms where the place is whole:
/// 8825 ohm is 8.83 kohm, though the nearest number to 8.825 lies below it.
fn to_place(ohm: f64, factor: f64, decimals: usize) -> f64 {
    let steps_of_unit = 10_f64.powi(decimals as i32);
    let steps = if factor >= steps_of_unit { ohm / (factor / steps_of_unit) } else { ohm * (steps_of_unit / factor) };
    steps.round() / steps_of_unit
}

/// A number to two figures, or to whole ones if it has more in front of the point.
pub fn two_figures(number: f64) -> String {
    if number == 0.0 {
        return "0".to_owned();
    }
    let decimals = decimals_of_two_figures(number.abs());
    format!("{number:.decimals$}")
}

/// A resistance that is a plain decimal, such as a limit: "4.7 kohm".
pub fn plain(ohm: f64) -> String {
    let (name, factor) = unit(ohm);
    format!("{} {name}", ohm / factor)
}

/// Two limits that are plain decimals, the unit once if it is the same: "1.06 to 1.11 kohm".
pub fn from_to(lower_ohm: f64, upper_ohm: f64) -> String {
    let (lower, upper) = (plain(lower_ohm), plain(upper_ohm));
    match lower.strip_suffix(unit(upper_ohm).0) {
        Some(lower) if unit(lower_ohm).0 == unit(upper_ohm).0 => format!("{lower}to {upper}"),
        _ => format!("{lower} to {upper}"),
    }
}

/// A probability: three decimals, and never 0 or 1 where it is only near.
pub fn probability(p: f64) -> String {
    match p {
        p if p > 0.999 && p < 1.0 => "> 0.999".to_owned(),
        p if p < 0.001 && p > 0.0 => "< 0.001".to_owned(),
        p => format!("{p:.3}"),
    }
}

/// How many digits behind the point show two figures of a positive number; 0 where it has two in front of it.
pub fn decimals_of_two_figures(number: f64) -> usize {
    // The exponent after rounding to two figures: 0.0996 is 0.10, not 0.100.
    let text = format!("{number:.1e}");
    let exponent: i32 = text.split('e').nth(1).and_then(|exponent| exponent.parse().ok()).unwrap_or(0);
    usize::try_from(1 - exponent).unwrap_or(0)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn digits_follow_the_uncertainty() {
        assert_eq!(with_uncertainty(4663.3, 64.9), "4.663 ± 0.065 kohm");
        assert_eq!(with_uncertainty(999.6, 9.96), "1000 ± 10 ohm");
        assert_eq!(with_uncertainty(2.5667, 0.448), "2.57 ± 0.45 ohm");
        assert_eq!(with_uncertainty(-0.0667, 0.31), "-0.07 ± 0.31 ohm");
        assert_eq!(with_uncertainty(2.2033e6, 89.5e3), "2.203 ± 0.089 Mohm");
        assert_eq!(with_uncertainty(8825.0, 158.0), "8.83 ± 0.16 kohm");
        assert_eq!(with_uncertainty(5.0, 0.0), "5 ohm");
    }

    #[test]
    fn the_unit_of_limits_stands_once() {
        assert_eq!(from_to(1060.0, 1110.0), "1.06 to 1.11 kohm");
        assert_eq!(from_to(975.0, 1025.0), "975 ohm to 1.025 kohm");
        assert_eq!(from_to(2.0, 3.2), "2 to 3.2 ohm");
        assert_eq!(beside(9003.4, 1003.0), "9.0 kohm");
    }

    #[test]
    fn a_probability_is_never_rounded_to_certainty() {
        assert_eq!(
            [0.9999, 1.0, 0.0004, 0.0, 0.7531].map(probability),
            ["> 0.999", "1.000", "< 0.001", "0.000", "0.753"]
        );
    }
}
