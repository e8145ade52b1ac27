//! Writes stills of the card face and the rose, to be looked at:
//! `cargo run -p drawing --example stills -- FOLDER`.

mod situations;

use compass::heading::{CompassHeading, MagneticHeading};
use drawing::card_face::card_face;
use drawing::rose::{RoseView, rose};
use drawing::shape::Shape;
use drawing::svg::Picture;
use drawing::theme::Theme;
use kurbo::Size;
use situations::{PHONE, SMALL, STAGE, situations};
use std::path::PathBuf;

fn main() -> std::io::Result<()> {
    let folder = PathBuf::from(
        std::env::args_os()
            .nth(1)
            .unwrap_or_else(|| "stills".into()),
    );
    std::fs::create_dir_all(&folder)?;
    let save = |name: &str, theme: &Theme, size: Size, shapes: &[Shape]| {
        let svg = Picture {
            size,
            shapes,
            theme,
            id: name,
            title: name,
            description: name,
            ground: true,
        }
        .to_svg();
        std::fs::write(folder.join(format!("{name}.svg")), svg)
    };
    let (day, night) = (Theme::day(), Theme::night());

    for (name, view) in situations() {
        save(name, &day, STAGE, &card_face(&view, STAGE))?;
        save(
            &format!("{name}-night"),
            &night,
            STAGE,
            &card_face(&view, STAGE),
        )?;
        save(
            &format!("{name}-small"),
            &day,
            SMALL,
            &card_face(&view, SMALL),
        )?;
        save(
            &format!("{name}-phone"),
            &day,
            PHONE,
            &card_face(&view, PHONE),
        )?;
    }

    let plan = Size::new(420.0, 420.0);
    for (name, heading, reading) in [("rose-lag", 7.0, 344.0), ("rose-agrees", 90.0, 90.0)] {
        let view = RoseView {
            heading: MagneticHeading::from_degrees(heading),
            reading: CompassHeading::from_degrees(reading),
            show_heading: true,
            show_compass: true,
        };
        save(name, &day, plan, &rose(&view, plan))?;
        save(&format!("{name}-night"), &night, plan, &rose(&view, plan))?;
        let small = Size::new(180.0, 180.0);
        save(&format!("{name}-small"), &day, small, &rose(&view, small))?;
    }
    Ok(())
}
