//! What holds at every place and date, and what no input can break.
#![cfg(not(target_family = "wasm"))]

use compass::unit::NANOTESLA;
use earth::date::DECIMAL_YEAR;
use earth::place::{ALTITUDE, LATITUDE, LONGITUDE};
use earth::{Date, FieldSource, Place, PlaceField, wmm};
use proptest::num::f64::ANY;
use proptest::prelude::*;

prop_compose! {
    fn somewhere()(
        latitude in LATITUDE.least..=LATITUDE.most,
        longitude in LONGITUDE.least..=LONGITUDE.most,
        altitude in ALTITUDE.least..=ALTITUDE.most,
    ) -> Place {
        Place::new(
            LATITUDE.accept(latitude).unwrap(),
            LONGITUDE.accept(longitude).unwrap(),
            ALTITUDE.accept(altitude).unwrap(),
        )
        .unwrap()
    }
}

prop_compose! {
    fn some_time()(year in wmm::VALID_FROM..wmm::VALID_UNTIL) -> Date {
        Date::from_decimal_year(year).unwrap()
    }
}

proptest! {
    #![proptest_config(ProptestConfig {
        failure_persistence: None,
        ..ProptestConfig::default()
    })]

    #[test]
    fn components_and_elements_agree(place in somewhere(), date in some_time()) {
        let field = PlaceField::at(place, date).unwrap();
        let (north, east, down) = (field.north(), field.east(), field.down());
        let (h, f) = (field.horizontal(), field.total());
        prop_assert!([north, east, down, h, f].iter().all(|value| value.is_finite()));
        prop_assert!(h >= 0.0);
        // The Earth's field at these altitudes is within 15 000 and 70 000 nT.
        prop_assert!((15_000.0..70_000.0).contains(&(f / NANOTESLA)), "{f}");

        // Rounding alone: a few last bits of the largest term.
        let rounding = 1e-15 * f;
        prop_assert_eq!(h, (north * north + east * east).sqrt());
        prop_assert!((f * f - (h * h + down * down)).abs() <= rounding * f);
        let (sin, cos) = compass::maths::sin_cos(field.dip());
        prop_assert!((f * sin - down).abs() <= rounding && (f * cos - h).abs() <= rounding);
        let (sin, cos) = compass::maths::sin_cos(field.variation());
        prop_assert!((h * sin - east).abs() <= rounding && (h * cos - north).abs() <= rounding);

        let doubt = field.uncertainty();
        prop_assert!(doubt.variation >= 0.26_f64.to_radians());
        prop_assert!(doubt.variation <= std::f64::consts::PI);
    }

    #[test]
    fn a_whole_turn_of_longitude_changes_nothing(
        latitude in LATITUDE.least..=LATITUDE.most,
        west in -180.0..0.0,
        date in some_time(),
    ) {
        let at = |longitude: f64| {
            let place = Place::new(latitude.to_radians(), longitude.to_radians(), 0.0).unwrap();
            PlaceField::at(place, date).unwrap()
        };
        let (one, other) = (at(west), at(west + 360.0));
        // The longitudes differ by a last bit of 360°, 1e-13°, and with m = 12 so do the sums.
        let slack = 1e-6 * NANOTESLA;
        prop_assert!((one.north() - other.north()).abs() < slack);
        prop_assert!((one.east() - other.east()).abs() < slack);
        prop_assert!((one.down() - other.down()).abs() < slack);
    }

    #[test]
    fn no_number_at_all_breaks_it(a in ANY, b in ANY, c in ANY, year in ANY) {
        let dates = [Date::from_decimal_year(year), Date::from_decimal_year(2026.0)];
        for date in dates.into_iter().flatten() {
            prop_assert!(DECIMAL_YEAR.accept(date.decimal_year()).is_ok());
            for (latitude, longitude, altitude) in [(a, b, c), (a, 0.0, 0.0), (0.0, b, 0.0)] {
                if let Ok(place) = Place::new(latitude, longitude, altitude) {
                    let field = FieldSource::Place { place, date }.field();
                    prop_assert!(field.is_ok() || date.decimal_year() != 2026.0);
                }
            }
        }
        for source in [
            FieldSource::Latitude { latitude: a },
            FieldSource::ByHand { horizontal: a, dip: b },
        ] {
            if let Ok(field) = source.field() {
                prop_assert!(field.horizontal() >= 0.0 && field.total().is_finite());
            }
        }
    }

    #[test]
    fn no_text_at_all_breaks_a_date(text in ".*", shape in "[0-9]{4}-[0-9]{2}-[0-9]{2}") {
        for text in [text, shape] {
            if let Ok(date) = Date::parse(&text) {
                prop_assert_eq!(date.to_string(), text);
            }
        }
    }
}
