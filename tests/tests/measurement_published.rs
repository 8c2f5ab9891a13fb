//! Published budgets: JCGM 100 (GUM) H.2 by approach 2, and EA-4/02 S3, as far as their figures can be reproduced.

use std::collections::HashMap;

use reckohm::uncertainty::Estimate;

/// One row of a check file: what, the printed figure, our own beforehand.
fn rows(text: &str, example: &str) -> HashMap<String, (String, String)> {
    let mut reader = csv::ReaderBuilder::new().comment(Some(b'#')).from_reader(text.as_bytes());
    reader
        .records()
        .map(|record| record.unwrap())
        .filter(|record| &record[0] == example)
        .map(|record| (record[1].to_owned(), (record[3].to_owned(), record[4].to_owned())))
        .collect()
}

/// Agrees with a printed figure to half of its last digit, and with one computed beforehand to 1e-11.
fn agrees(found: f64, row: &(String, String)) {
    let (printed, computed) = row;
    if let Ok(computed) = computed.parse::<f64>() {
        assert!((found - computed).abs() <= 1e-11 * computed.abs(), "{found} against computed {computed}");
    }
    if !printed.is_empty() {
        let decimals = printed.split('.').nth(1).map_or(0, str::len);
        assert_eq!(format!("{found:.decimals$}"), *printed);
    }
}

#[test]
fn gum_h_2_by_approach_2() {
    let text = include_str!("../checks/measure_gum_h2.csv");
    let observed = rows(text, "H.2");
    let number = |key: String| observed[&key].0.parse::<f64>().unwrap();
    let each: Vec<[f64; 3]> = (1..=5)
        .map(|i| {
            let volt = number(format!("obs{i}.voltage"));
            let ampere = number(format!("obs{i}.current")) * 1e-3;
            let phase = number(format!("obs{i}.phase"));
            let z = volt / ampere;
            [z * phase.cos(), z * phase.sin(), z]
        })
        .collect();
    let expected = rows(text, "H.2 approach 2");
    for (i, name) in ["R", "X", "Z"].into_iter().enumerate() {
        let column: Vec<f64> = each.iter().map(|row| row[i]).collect();
        for (k, value) in column.iter().enumerate() {
            agrees(*value, &expected[&format!("obs{}.{name}", k + 1)]);
        }
        let mean = Estimate::from_repeats(&column).unwrap();
        agrees(mean.value(), &expected[&format!("value.{name}")]);
        agrees(mean.u(), &expected[&format!("u.{name}")]);
        assert!((mean.effective_dof() - 4.0).abs() < 1e-12);
    }
}

/// Inputs and result from memory, consistent with each other to ten digits.
#[test]
fn ea_4_02_s_3() {
    let expected = rows(include_str!("../checks/measure_ea402.csv"), "S3");
    let number = |key: &str| expected[key].0.parse::<f64>().unwrap();
    let ratios: Vec<f64> = (1..=5).map(|i| number(&format!("ratio.obs{i}"))).collect();
    let ratio = Estimate::from_repeats(&ratios).unwrap();
    assert_eq!(format!("{:.7}", ratio.value()), expected["ratio.mean"].0);
    let drift = number("dR_D.value");
    let standard = number("R_S.value") + drift;
    let value = standard * ratio.value();
    let e = Estimate::exact(value).unwrap();
    let e = e.with_normal(0.0025).unwrap().with_rectangular(0.010).unwrap();
    let e = e.with_rectangular(0.00275).unwrap().with_rectangular(0.0055).unwrap();
    // Triangular ±1.0e-6 on the ratio, u = a/√6; both ratio terms with the sensitivity 10 kohm as printed.
    let e = e.with_normal(1.0e-6 / 6f64.sqrt() * 1e4).unwrap();
    let e = e.with_type_a(ratio.u() * 1e4, 4.0).unwrap();
    assert_eq!(format!("{value:.3}"), expected["R_X"].0);
    assert!((e.u() * 1e3 / 8.3279149051 - 1.0).abs() < 1e-9, "{}", e.u());
    assert_eq!(format!("{:.2}", e.u() * 1e3), expected["u(R_X)"].0);
    // Printed U = 17 mohm is 2·u; by the shape the factor is a little under 2.
    assert_eq!(format!("{:.0}", 2e3 * e.u()), expected["U"].0);
    let expanded = e.expanded(0.95).unwrap();
    assert!((1.90..1.97).contains(&expanded.coverage_factor), "{}", expanded.coverage_factor);
    let dof = e.effective_dof();
    assert!((7.6e4..7.8e4).contains(&dof), "{dof}");
}
