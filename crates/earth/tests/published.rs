//! Published values, each with its source and the reason for its tolerance.

use compass::field::Zone;
use compass::unit::{FOOT, NANOTESLA};
use earth::{Date, FieldSource, Place, PlaceField, dipole};

/// Degrees, kilometres and a decimal year, as the tables have them.
fn at(latitude: f64, longitude: f64, altitude_km: f64, date: Date) -> PlaceField {
    let place = Place::new(
        latitude.to_radians(),
        longitude.to_radians(),
        altitude_km * 1000.0,
    )
    .unwrap();
    PlaceField::at(place, date).unwrap()
}

fn close(what: &str, got: f64, published: f64, tolerance: f64) {
    assert!(
        (got - published).abs() <= tolerance,
        "{what}: {got}, published {published}, tolerance {tolerance}"
    );
}

/// NOAA/NCEI's own hundred, each row of the file.
///
/// Tolerances. Angles are printed to 0.01°: half of that, and the last bits. Components are
/// printed to a millionth of a nanotesla, but the published north component carries errors of its
/// own up to 0.0007 nT, and with it H and F: a separate synthesis, by differences of the potential,
/// misses it by the same amounts, while east and down agree to 0.000 002 nT.
#[test]
fn every_test_value_of_noaa_is_met() {
    const ANGLE: f64 = 0.005 + 1e-9;
    const NORTHERLY: f64 = 0.001;
    const EAST_AND_DOWN: f64 = 0.000_003;
    let text = include_str!("data/wmm2025_test_values.txt");
    let mut rows = 0;
    for row in text.lines().filter(|line| !line.starts_with('#')) {
        let column: Vec<f64> = row
            .split_whitespace()
            .map(|field| field.parse().unwrap())
            .collect();
        let date = Date::from_decimal_year(column[0]).unwrap();
        let field = at(column[2], column[3], column[1], date);
        close(row, field.variation().to_degrees(), column[4], ANGLE);
        close(row, field.dip().to_degrees(), column[5], ANGLE);
        close(row, field.horizontal() / NANOTESLA, column[6], NORTHERLY);
        close(row, field.north() / NANOTESLA, column[7], NORTHERLY);
        close(row, field.east() / NANOTESLA, column[8], EAST_AND_DOWN);
        close(row, field.down() / NANOTESLA, column[9], EAST_AND_DOWN);
        close(row, field.total() / NANOTESLA, column[10], NORTHERLY);
        rows += 1;
    }
    assert_eq!(rows, 100);
}

/// Rows of the table of test values in the WMM2025 technical report (NOAA/NCEI and BGS, 2024).
///
/// Tolerances: half of the last printed figure (0.1 nT, 0.01°), and 0.001 nT for the published
/// values' own error, as above.
#[test]
fn the_rows_of_the_technical_report_are_met() {
    #[rustfmt::skip]
    const ROWS: [[f64; 11]; 6] = [
        // date, km, latitude, longitude, X, Y, Z, H, F, I, D
        [2025.0,   0.0,  80.0,   0.0,  6521.6,   145.9,  54791.5,  6523.2, 55178.5,  83.21,  1.28],
        [2025.0,   0.0,   0.0, 120.0, 39677.8,  -109.6, -10580.2, 39677.9, 41064.3, -14.93, -0.16],
        [2025.0, 100.0, -80.0, 240.0,  5907.6, 14780.3, -49540.7, 15917.1, 52035.0, -72.19, 68.21],
        [2027.5,   0.0,  80.0,   0.0,  6500.8,   294.5,  54869.4,  6507.5, 55253.9,  83.24,  2.59],
        [2027.5,   0.0,   0.0, 120.0, 39701.6,  -167.4, -10381.8, 39702.0, 41036.9, -14.65, -0.24],
        [2027.5, 100.0, -80.0, 240.0,  5984.0, 14760.1, -49317.7, 15927.0, 51825.7, -72.10, 67.93],
    ];
    for row in ROWS {
        let [year, km, latitude, longitude, x, y, z, h, f, i, d] = row;
        let field = at(
            latitude,
            longitude,
            km,
            Date::from_decimal_year(year).unwrap(),
        );
        let what = format!("{row:?}");
        for (got, published) in [
            (field.north(), x),
            (field.east(), y),
            (field.down(), z),
            (field.horizontal(), h),
            (field.total(), f),
        ] {
            close(&what, got / NANOTESLA, published, 0.051);
        }
        close(&what, field.dip().to_degrees(), i, 0.005 + 1e-9);
        close(&what, field.variation().to_degrees(), d, 0.005 + 1e-9);
    }
}

/// A calendar date, by another implementation: MathWorks' documentation of `wrldmagm`, example
/// for 42.283° N, 71.35° W, 1000 m, 4 July 2028. Tolerances: half of the last printed figure.
/// The variation there changes by 0.0001° in about a day, so this checks the decimal year too.
#[test]
fn a_calendar_date_means_what_others_take_it_to_mean() {
    let field = at(42.283, -71.35, 1.0, Date::parse("2028-07-04").unwrap());
    close("D", field.variation().to_degrees(), -13.6891, 0.000_05);
    close("I", field.dip().to_degrees(), 65.9899, 0.000_05);
    close("X", field.north() / NANOTESLA, 20_139.0, 0.5);
    close("Y", field.east() / NANOTESLA, -4_905.0, 0.5);
    close("Z", field.down() / NANOTESLA, 46_532.0, 0.5);
    close("H", field.horizontal() / NANOTESLA, 20_727.0, 0.5);
    close("F", field.total() / NANOTESLA, 50_940.0, 0.5);
}

/// The documentation of the `world_magnetic_model` package, a separate implementation of the model
/// and its error model: examples for 15 January 2029. Tolerances: half of the last printed figure.
#[test]
fn variation_and_its_uncertainty_are_those_of_another_implementation() {
    let date = Date::parse("2029-01-15").unwrap();

    let faro = at(37.03, -7.91, 0.1, date);
    close("D", faro.variation().to_degrees(), -0.17, 0.005);
    let uncertainty = faro.uncertainty().variation.to_degrees();
    close("its uncertainty", uncertainty, 0.33, 0.005);
    assert_eq!(faro.zone(), Zone::Reliable);

    let arctic = at(80.0, 2.36_f64.to_degrees(), 3000.0 * FOOT / 1000.0, date);
    close("D", arctic.variation().to_degrees(), -26.41, 0.005);
    let uncertainty = arctic.uncertainty().variation.to_degrees();
    close("its uncertainty", uncertainty, 2.07, 0.005);
    close("F", arctic.total() / NANOTESLA, 59_021.0, 0.5);
    assert_eq!(arctic.zone(), Zone::Caution);
}

/// No outside source: computed from tan(dip) = 2 tan(latitude), printed to 0.01°.
#[test]
fn the_dipole_dips_as_the_formula_says() {
    for (latitude, dip) in [
        (10.0_f64, 19.43),
        (20.0, 36.05),
        (30.0, 49.11),
        (40.0, 59.21),
        (45.0, 63.43),
        (50.0, 67.24),
        (60.0, 73.90),
        (70.0, 79.69),
    ] {
        let north = dipole::field(latitude.to_radians()).unwrap();
        close("dip", north.dip().to_degrees(), dip, 0.005);
        let south = dipole::field(-latitude.to_radians()).unwrap();
        assert_eq!(south.dip(), -north.dip());
        assert_eq!(south.horizontal(), north.horizontal());
        assert_eq!(north.variation(), 0.0);
    }
}

/// Every result for the hundred rows, down to the last bit. The number is no published value: it
/// shows that the software mathematics is the one in use (another package that asks for
/// `kinavis-kernel` with its `std` feature would switch it for the platform's own, in silence),
/// and it came out the same under wasm32.
#[test]
fn the_bits_are_those_of_every_platform() {
    let text = include_str!("data/wmm2025_test_values.txt");
    let mut digest = 0xcbf2_9ce4_8422_2325_u64;
    for row in text.lines().filter(|line| !line.starts_with('#')) {
        let column: Vec<f64> = row
            .split_whitespace()
            .take(4)
            .map(|field| field.parse().unwrap())
            .collect();
        let place = Place::new(
            column[2].to_radians(),
            column[3].to_radians(),
            column[1] * 1000.0,
        )
        .unwrap();
        let date = Date::from_decimal_year(column[0]).unwrap();
        let field = FieldSource::Place { place, date }.field().unwrap();
        for value in [field.horizontal(), field.vertical(), field.variation()] {
            // Fowler–Noll–Vo hash, 64 bits, variant 1a, a word at a time.
            digest = (digest ^ value.to_bits()).wrapping_mul(0x0100_0000_01b3);
        }
    }
    assert_eq!(format!("{digest:016x}"), "ca692858bfa3f491");
}
