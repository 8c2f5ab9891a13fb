//! The largest resistance of copper conductors.

/// A cross-section in mm², and the largest resistance in ohm a kilometre at 20 °C.
type Row = (f64, f64);

/// Class 1, solid: IEC 60228 as reprinted, plain copper.
static CLASS_1: &[Row] = &[
    (0.5, 36.0),
    (0.75, 24.5),
    (1.0, 18.1),
    (1.5, 12.1),
    (2.5, 7.41),
    (4.0, 4.61),
    (6.0, 3.08),
    (10.0, 1.83),
    (16.0, 1.15),
    (25.0, 0.727),
    (35.0, 0.524),
    (50.0, 0.387),
    (70.0, 0.268),
    (95.0, 0.193),
    (120.0, 0.153),
    (150.0, 0.124),
    (185.0, 0.101),
    (240.0, 0.0775),
    (300.0, 0.0620),
    (400.0, 0.0465),
];

/// Class 2, stranded: IEC 60228 as reprinted, plain copper.
static CLASS_2: &[Row] = &[
    (0.5, 36.0),
    (0.75, 24.5),
    (1.0, 18.1),
    (1.5, 12.1),
    (2.5, 7.41),
    (4.0, 4.61),
    (6.0, 3.08),
    (10.0, 1.83),
    (16.0, 1.15),
    (25.0, 0.727),
    (35.0, 0.524),
    (50.0, 0.387),
    (70.0, 0.268),
    (95.0, 0.193),
    (120.0, 0.153),
    (150.0, 0.124),
    (185.0, 0.0991),
    (240.0, 0.0754),
    (300.0, 0.0601),
    (400.0, 0.0470),
    (500.0, 0.0366),
    (630.0, 0.0283),
];

/// Class 5, flexible: IEC 60228 as reprinted, plain copper.
static CLASS_5: &[Row] = &[
    (0.5, 39.0),
    (0.75, 26.0),
    (1.0, 19.5),
    (1.5, 13.3),
    (2.5, 7.98),
    (4.0, 4.95),
    (6.0, 3.30),
    (10.0, 1.91),
    (16.0, 1.21),
    (25.0, 0.780),
    (35.0, 0.554),
    (50.0, 0.386),
    (70.0, 0.272),
    (95.0, 0.206),
    (120.0, 0.161),
    (150.0, 0.129),
    (185.0, 0.106),
    (240.0, 0.0801),
    (300.0, 0.0641),
    (400.0, 0.0486),
    (500.0, 0.0384),
    (630.0, 0.0287),
];

/// Conductivity of annealed copper at 20 °C in m/(ohm mm²): IEC 60028, from memory.
pub(super) const COPPER_CONDUCTIVITY: f64 = 58.0;

/// The largest resistance of a plain copper conductor in ohm a kilometre at 20 °C, if the table has it.
pub(super) fn largest_ohm_per_km(area_mm2: f64, class: u8) -> Option<f64> {
    let table = match class {
        1 => CLASS_1,
        2 => CLASS_2,
        5 => CLASS_5,
        _ => return None,
    };
    table.iter().find(|(area, _)| *area == area_mm2).map(|(_, ohm_per_km)| *ohm_per_km)
}
