//! Hand-outs: every answer of a worksheet found again by another route, and what stands on the
//! other sheets against the formulas and swings it comes from.

mod worksheet;

use compass::angle::half_turn;
use compass::deviation::AircraftIron;
use compass::field::MagneticField;
use compass::float_settings::FloatSettings;
use compass::gust::RoughAir;
use compass::heading::CompassHeading;
use compass::maths;
use compass::simulation::Situation;
use compass::unit::{KNOT, NANOTESLA};
use lessons::roll_out::Lead;
use lessons::sheet::deviation::Swing;
use lessons::sheet::plan::{LessonPlan, TimeRow};
use lessons::sheet::{Part, Sheet, Site, Table, aids, deviation, plan, roll_outs};

/// A field by hand: horizontal and vertical intensity in nT, variation in degrees.
fn site(latitude: f64, [horizontal, vertical]: [f64; 2], variation: f64) -> Site {
    let field = MagneticField::new(
        horizontal * NANOTESLA,
        vertical * NANOTESLA,
        variation.to_radians(),
    );
    Site {
        name: "Somewhere".to_owned(),
        latitude: latitude.to_radians(),
        situation: Situation {
            field: field.unwrap(),
            iron: AircraftIron::NONE,
            float: FloatSettings::default(),
            air: RoughAir::Still,
        },
        bank: 15_f64.to_radians(),
        airspeed: 100.0 * KNOT,
        lead: Lead::HalfBank,
    }
}

fn sites() -> [Site; 3] {
    [
        site(30.0, [24_000.0, 39_000.0], 2.0),
        site(52.0, [19_500.0, 45_000.0], 0.0),
        site(-41.0, [21_000.0, -50_000.0], 23.0),
    ]
}

/// Degrees between two angles, the short way.
fn apart(a: f64, b: f64) -> f64 {
    half_turn((a - b).to_radians()).to_degrees().abs()
}

/// The last table of a sheet.
fn table(sheet: &Sheet) -> &Table {
    let mut tables = sheet.parts.iter().filter_map(|part| match part {
        Part::Table(table) => Some(table),
        _ => None,
    });
    tables.next_back().unwrap()
}

#[test]
fn no_place_is_without_sheets() {
    // Over the magnetic pole and on the magnetic equator too.
    for (latitude, field) in [
        (0.0, [30_000.0, 0.0]),
        (4.0, [28_000.0, -6_000.0]),
        (-90.0, [0.0, -60_000.0]),
    ] {
        let site = site(latitude, field, 0.0);
        let [task, key] = lessons::sheet::worksheet::sheets(&site, 3).unwrap();
        assert_eq!(table(&task).rows.len(), table(&key).rows.len());
        assert!(aids::sheet(&site).unwrap().parts.len() >= 3);
    }
}

#[test]
fn the_rose_stands_for_the_table() {
    let [site, .., other] = sites();
    let sheet = roll_outs::sheet(&site, Some(&other)).unwrap();
    let rows = &table(&sheet).rows;
    assert_eq!(rows.len(), 12);
    let Some(Part::RollOutRose(places)) = sheet.parts.last() else {
        panic!("the rose comes last");
    };
    assert_eq!((places.len(), places[0].allowances.len()), (2, 36));
    let lead = site.bank.to_degrees() / 2.0;
    for (row, allowance) in rows.iter().zip(places[0].allowances.iter().step_by(3)) {
        let target = allowance.target.degrees();
        // The reading on the sheet is that many degrees past the target, less the lead.
        for (cell, again) in [
            (&row[4], target + lead - allowance.left.to_degrees()),
            (&row[9], target - lead + allowance.right.to_degrees()),
        ] {
            let reading: f64 = cell.trim_end_matches('°').parse().unwrap();
            assert!(apart(reading, again) <= 0.5 + 1e-9, "{row:?}: {again}");
        }
    }
    // Undershoot on north and overshoot on south here, the other way round in the south.
    let on = |place: usize, index: usize| places[place].allowances[index].right;
    assert!(on(0, 0) < 0.0 && on(0, 18) > 0.0 && on(1, 0) > 0.0 && on(1, 18) < 0.0);
}

#[test]
fn the_aids_are_mirrored_south_of_the_magnetic_equator() {
    let [northern, _, southern] = sites();
    let first = |site: &Site| match &aids::sheet(site).unwrap().parts[0] {
        Part::Table(table) => table.rows[0][0].clone(),
        other => panic!("no table: {other:?}"),
    };
    assert_eq!(first(&northern), "Undershoot north, overshoot south");
    assert_eq!(first(&southern), "Overshoot north, undershoot south");
    // Where the dip points up under a northern latitude, the card says whom to believe.
    let between = aids::sheet(&site(8.0, [27_000.0, -9_000.0], 0.0)).unwrap();
    assert!(between.title.contains("south"));
    assert!(
        matches!(&between.parts[0], Part::Paragraph(words) if words.contains("follows the dip"))
    );
}

#[test]
fn the_aids_hold_the_rules_against_the_closed_form() {
    let [site, ..] = sites();
    let sheet = aids::sheet(&site).unwrap();
    let dip = site.situation.field.dip();
    for (row, bank) in table(&sheet).rows.iter().zip(aids::BANKS) {
        // E. Williams, Compass Errors (2001), eq. 2, half the bank before north in a right turn.
        let (bank, heading) = (bank.to_radians(), -bank.to_radians() / 2.0);
        let east = maths::sin(heading) * maths::cos(bank) - maths::tan(dip) * maths::sin(bank);
        let closed = maths::atan2(east, maths::cos(heading)) - heading;
        let minus = |degrees: f64| format!("−{:.0}°", -degrees);
        assert_eq!(
            row[1..4],
            [minus(-30.0), minus(-30.0), minus(closed.to_degrees())]
        );
    }
}

#[test]
fn a_deviation_card_says_what_to_steer() {
    // NGA, Handbook of Magnetic Compass Adjustment (2004), §501: east positive, by compass.
    let published = [10.5, 20.0, 11.5, -1.2, -5.5, -8.0, -12.5, -6.8];
    let found: Vec<(f64, f64)> = (0..8)
        .map(|it| 45.0 * f64::from(it))
        .zip(published)
        .collect();
    let swing = Swing {
        name: "§501".to_owned(),
        found: (found.iter())
            .map(|(compass, it)| (CompassHeading::from_degrees(*compass), it.to_radians()))
            .collect(),
    };
    let sheet = deviation::sheet(&swing).unwrap();
    let Part::Table(steer) = &sheet.parts[0] else {
        panic!("the card comes first");
    };
    let deviation = |compass: f64| {
        let index = (compass / 45.0).floor() as usize;
        let [here, next] = [index % 8, (index + 1) % 8].map(|it| published[it]);
        here + (next - here) * (compass / 45.0 - index as f64)
    };
    for (band, first) in [(1, 0.0), (3, 180.0)] {
        for (step, cell) in steer.rows[band][1..].iter().enumerate() {
            let magnetic = first + 30.0 * step as f64;
            let off = |compass: f64| apart(compass + deviation(compass), magnetic);
            let all = (0..3600).map(|it| f64::from(it) / 10.0);
            let again = all.min_by(|a, b| off(*a).total_cmp(&off(*b))).unwrap();
            let steered: f64 = cell.trim_end_matches('°').parse().unwrap();
            assert!(apart(steered, again) <= 0.55, "{magnetic}: {cell}, {again}");
        }
    }
    let said = format!("{:?}", sheet.parts);
    assert!(
        said.contains("Greatest deviation 20°: BEYOND the limit of 10°"),
        "{said}"
    );
    // By least squares 11.94, 7.96, 5.00 and 1.50 (computed beforehand).
    assert!(
        said.contains("B 11.9° E, C 8° E, D 5° E, E 1.5° E"),
        "{said}"
    );
    assert!(
        sheet
            .caution
            .contains("licensed people by the aircraft’s maintenance data")
    );
}

#[test]
fn a_plan_leaves_out_what_is_not_given() {
    let bare = plan::sheet(&LessonPlan {
        title: "Onto north".to_owned(),
        ..LessonPlan::default()
    });
    assert!(bare.parts.is_empty() && bare.caution.contains("licensed instructor"));
    let whole = plan::sheet(&LessonPlan {
        look_for: "Which way.".to_owned(),
        times: vec![TimeRow::default()],
        notes: vec!["Wait.".to_owned()],
        question: "Which way?".to_owned(),
        answer: "North.".to_owned(),
        rule: "As much as the latitude.".to_owned(),
        figures: vec![("lag".to_owned(), "23°".to_owned())],
        ..LessonPlan::default()
    });
    let headings = whole
        .parts
        .iter()
        .filter(|part| matches!(part, Part::Heading(_)));
    assert_eq!((headings.count(), whole.parts.len()), (7, 14));
}
