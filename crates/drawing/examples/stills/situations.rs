//! Situations worth a picture, shared by the stills and the snapshot tests.

use compass::frame::{Body, Card, Rotation, Vector};
use compass::heading::{CompassHeading, MagneticHeading};
use drawing::card_face::{CardFaceView, Words, level};
use kurbo::Size;

/// A card that reads about `reading` degrees, tilted in the bowl by `right` degrees (its right
/// side down) and `aft` degrees (its near side down).
fn tilted(reading: f64, right: f64, aft: f64) -> Rotation<Card, Body> {
    // A rotation of the airframe's axes by bank and pitch is one of the bowl's by the same.
    let tilt = Rotation::from_attitude(0.0, aft.to_radians(), right.to_radians());
    let square = level(CompassHeading::from_degrees(reading));
    Rotation::from_quaternion(tilt.quaternion.mul_quat(square.quaternion))
}

fn view(heading: f64, reading: f64, words: &'static str) -> CardFaceView<'static> {
    CardFaceView {
        attitude: tilted(reading, 0.0, 0.0),
        heading: MagneticHeading::from_degrees(heading),
        reading: CompassHeading::from_degrees(reading),
        apparent_vertical: Vector::z_axis(),
        at_stop: false,
        show_reference: true,
        show_compass: true,
        words: Words {
            error: Some(words),
            stop: Some("card touches its stop"),
            cover: Some("What does the compass show?"),
        },
    }
}

/// The stage of a page 1920 wide.
pub(crate) const STAGE: Size = Size::new(1200.0, 520.0);
/// A window among others.
pub(crate) const SMALL: Size = Size::new(800.0, 360.0);
/// A phone held upright.
pub(crate) const PHONE: Size = Size::new(370.0, 240.0);

/// Each situation with its name.
pub(crate) fn situations() -> [(&'static str, CardFaceView<'static>); 10] {
    let north = view(0.0, 0.0, "agrees");
    let lag = CardFaceView {
        attitude: tilted(344.0, 3.0, -0.5),
        ..view(7.0, 344.0, "lags 23°")
    };
    let lead = CardFaceView {
        attitude: tilted(230.0, -2.0, 0.5),
        ..view(190.0, 230.0, "leads 40°")
    };
    let southern = CardFaceView {
        attitude: tilted(22.0, -3.0, 0.4),
        ..view(2.0, 22.0, "leads 20°")
    };
    let accelerating = CardFaceView {
        attitude: tilted(82.0, 0.0, -8.0),
        apparent_vertical: Vector::new(-0.14, 0.0, 1.0),
        ..view(90.0, 82.0, "8° toward north")
    };
    let slowing = CardFaceView {
        attitude: tilted(97.0, 1.0, 7.0),
        apparent_vertical: Vector::new(0.12, 0.0, 1.0),
        ..view(90.0, 97.0, "7° toward south")
    };
    let slipping = CardFaceView {
        attitude: tilted(275.0, 7.0, 0.0),
        apparent_vertical: Vector::new(0.0, -0.12, 1.0),
        ..view(270.0, 275.0, "5°")
    };
    let at_stop = CardFaceView {
        attitude: tilted(60.0, 17.0, 6.0),
        at_stop: true,
        ..view(300.0, 60.0, "120°")
    };
    let no_compass = CardFaceView {
        show_compass: false,
        ..lag
    };
    let no_reference = CardFaceView {
        show_reference: false,
        ..lag
    };
    [
        ("north", north),
        ("lag", lag),
        ("lead", lead),
        ("southern", southern),
        ("accelerating", accelerating),
        ("slowing", slowing),
        ("slipping", slipping),
        ("stop", at_stop),
        ("no-compass", no_compass),
        ("no-reference", no_reference),
    ]
}
