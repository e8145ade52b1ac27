//! Snapshots of whole pictures: what changes here was meant to change, and was looked at
//! (`cargo run -p drawing --example stills -- FOLDER`).

#[path = "../examples/stills/situations.rs"]
mod situations;

use compass::heading::{CompassHeading, MagneticHeading};
use compass::heading_indicator::GyroHeading;
use drawing::card_face::card_face;
use drawing::heading_dial::{DialFigures, DialView, describe, heading_dial};
use drawing::rose::{RoseView, rose};
use drawing::shape::Shape;
use drawing::svg::Picture;
use drawing::theme::Theme;
use kurbo::Size;
use situations::{PHONE, SMALL, STAGE, situations};

fn check(name: &str, theme: &Theme, size: Size, shapes: &[Shape]) {
    let svg = Picture {
        size,
        shapes,
        theme,
        id: name,
        title: "A title",
        description: "A sentence.",
        ground: true,
    }
    .to_svg();
    insta::with_settings!({ omit_expression => true }, {
        insta::assert_snapshot!(name, svg);
    });
}

#[test]
fn card_face_on_the_stage() {
    for (name, view) in situations() {
        check(name, &Theme::day(), STAGE, &card_face(&view, STAGE));
    }
}

#[test]
fn card_face_in_other_sizes_and_by_night() {
    let [(_, north), (_, lag), ..] = situations();
    check(
        "north-small",
        &Theme::day(),
        SMALL,
        &card_face(&north, SMALL),
    );
    check(
        "lag-phone-night",
        &Theme::night(),
        PHONE,
        &card_face(&lag, PHONE),
    );
}

#[test]
fn rose_with_a_lag_and_with_one_pointer() {
    let size = Size::new(420.0, 420.0);
    let view = RoseView {
        heading: MagneticHeading::from_degrees(7.0),
        reading: CompassHeading::from_degrees(344.0),
        show_heading: true,
        show_compass: true,
    };
    check("rose", &Theme::day(), size, &rose(&view, size));
    let one = RoseView {
        show_heading: false,
        ..view
    };
    check("rose-compass", &Theme::day(), size, &rose(&one, size));
}

#[test]
fn heading_dial_set_wrong_and_alone() {
    let size = Size::new(420.0, 420.0);
    let view = DialView {
        indication: GyroHeading::from_degrees(344.0),
        heading: Some(MagneticHeading::from_degrees(7.0)),
        compass: Some(CompassHeading::from_degrees(352.0)),
    };
    check("dial", &Theme::day(), size, &heading_dial(&view, size));
    let told = DialFigures {
        indication: 344,
        error: Some(-23),
    };
    assert_eq!(describe(&view), told);
    let alone = DialView {
        heading: None,
        compass: None,
        ..view
    };
    check(
        "dial-alone-night",
        &Theme::night(),
        SMALL,
        &heading_dial(&alone, SMALL),
    );
    assert_eq!(describe(&alone).error, None);
}

#[test]
fn no_size_breaks_the_heading_dial() {
    let view = DialView {
        indication: GyroHeading::from_degrees(0.0),
        heading: Some(MagneticHeading::from_degrees(180.0)),
        compass: None,
    };
    for side in [0.0, -5.0, 7.9, f64::NAN, f64::INFINITY] {
        assert!(heading_dial(&view, Size::new(side, 100.0)).is_empty());
    }
    assert!(!heading_dial(&view, Size::new(8.0, 90.0)).is_empty());
}
