//! Writes stills of the stage, flown by the simulation itself, to be looked at:
//! `cargo run -p drawing --example stage -- FOLDER`.

mod flights;

use compass::reading::Difference;
use drawing::bowl_view::{self, BowlView, Camera, Parts, bowl_view};
use drawing::plan_view::{self, Fit, PlanView, plan_view};
use drawing::shape::Shape;
use drawing::svg::Picture;
use drawing::theme::Theme;
use drawing::torque_ledger::{self, LedgerView, torque_ledger};
use flights::{COURSES, Course, Flown, fly};
use kurbo::Size;
use std::path::{Path, PathBuf};

struct Folder(PathBuf);

impl Folder {
    fn save(&self, name: &str, theme: &Theme, size: Size, shapes: &[Shape]) -> std::io::Result<()> {
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
        std::fs::write(Path::new(&self.0).join(format!("{name}.svg")), svg)
    }
}

const SQUARE: Size = Size::new(420.0, 420.0);
const LARGE: Size = Size::new(900.0, 700.0);
const SMALL: Size = Size::new(340.0, 300.0);

fn main() -> std::io::Result<()> {
    let folder = Folder(PathBuf::from(
        std::env::args_os()
            .nth(1)
            .unwrap_or_else(|| "stills".into()),
    ));
    std::fs::create_dir_all(&folder.0)?;
    let (day, night) = (Theme::day(), Theme::night());
    for course in &COURSES {
        let flown = fly(course, 8.0);
        bowls(&folder, course, &flown, [&day, &night])?;
        ledgers(&folder, course, &flown, [&day, &night])?;
        plans(&folder, course, &flown, [&day, &night])?;
    }
    Ok(())
}

fn bowls(
    folder: &Folder,
    course: &Course,
    flown: &Flown,
    [day, night]: [&Theme; 2],
) -> std::io::Result<()> {
    let motion = &flown.moment.motion;
    let bank = motion.bank.to_degrees().round();
    let bank = match bank {
        bank if bank > 0.0 => format!("bank {bank}° right"),
        bank if bank < 0.0 => format!("bank {}° left", -bank),
        _ => "wings level".to_owned(),
    };
    let dip = match flown.field.dip().to_degrees().round() {
        dip if dip < 0.0 => format!("dip −{}°", -dip),
        dip => format!("dip {dip}°"),
    };
    let view = BowlView {
        moment: &flown.moment,
        field: &flown.field,
        camera: Camera::default(),
        parts: Parts::ALL,
        words: bowl_view::Words {
            dip: Some(&dip),
            vertical_pull: Some("Z pulls"),
            true_vertical: Some("true vertical"),
            apparent_vertical: Some("apparent vertical"),
            bank: Some(&bank),
            ..bowl_view::Words::default()
        },
    };
    let name = format!("bowl-{}", course.name);
    folder.save(&name, day, SQUARE, &bowl_view(&view, SQUARE))?;
    folder.save(
        &format!("{name}-large"),
        day,
        LARGE,
        &bowl_view(&view, LARGE),
    )?;
    folder.save(
        &format!("{name}-small"),
        day,
        SMALL,
        &bowl_view(&view, SMALL),
    )?;
    folder.save(
        &format!("{name}-night"),
        night,
        SQUARE,
        &bowl_view(&view, SQUARE),
    )?;
    for (preset, camera) in [
        ("seat", Camera::pilots_seat()),
        ("behind", Camera::behind()),
        ("side", Camera::side()),
        ("above", Camera::above()),
    ] {
        let view = BowlView { camera, ..view };
        folder.save(
            &format!("{name}-{preset}"),
            day,
            SQUARE,
            &bowl_view(&view, SQUARE),
        )?;
    }
    println!("{name}: {:?}", bowl_view::describe(&view));
    Ok(())
}

fn ledgers(
    folder: &Folder,
    course: &Course,
    flown: &Flown,
    [day, night]: [&Theme; 2],
) -> std::io::Result<()> {
    let torques = flown.moment.torques;
    let view = LedgerView {
        torques,
        scale: torque_ledger::steady_scale(&torques, torque_ledger::SMALLEST_SCALE),
        words: torque_ledger::Words {
            parts: [
                "vertical field",
                "balance weight",
                "aircraft’s iron",
                "liquid’s drag",
                "friction",
                "horizontal field",
            ],
            net: "net torque",
            anticlockwise: "turns the card anticlockwise",
            clockwise: "turns the card clockwise",
        },
    };
    let name = format!("ledger-{}", course.name);
    for (suffix, theme, size) in [
        ("", day, Size::new(640.0, 300.0)),
        ("-night", night, Size::new(640.0, 300.0)),
        ("-small", day, Size::new(340.0, 220.0)),
        ("-square", day, SQUARE),
    ] {
        let shapes = torque_ledger(&view, size);
        folder.save(&format!("{name}{suffix}"), theme, size, &shapes)?;
    }
    println!("{name}: {:?}", torque_ledger::describe(&view));
    Ok(())
}

fn plans(
    folder: &Folder,
    course: &Course,
    flown: &Flown,
    [day, night]: [&Theme; 2],
) -> std::io::Result<()> {
    let moment = &flown.moment;
    let heading = moment.motion.heading;
    let reading = moment.reading.compass;
    let words = [
        format!("heading {:03}°", heading.whole_degrees()),
        format!("compass {:03}°", reading.whole_degrees()),
        match moment.difference() {
            Difference::Agrees => "agrees".to_owned(),
            Difference::Lags(by) => format!("lags {by}°"),
            Difference::Leads(by) => format!("leads {by}°"),
            Difference::ReadsMore(by) => format!("{by}° more"),
            Difference::ReadsLess(by) => format!("{by}° less"),
        },
    ];
    let view = PlanView {
        heading,
        reading,
        variation: flown.field.variation(),
        track: &flown.track,
        later: &[],
        fit: Fit::Whole,
        show_heading: true,
        show_compass: true,
        words: plan_view::Words {
            magnetic_north: Some("magnetic north"),
            true_north: Some("true north"),
            variation: Some("8° east"),
            heading: Some(&words[0]),
            compass: Some(&words[1]),
            error: Some(&words[2]),
            scale: None,
        },
    };
    let name = format!("plan-{}", course.name);
    for (suffix, theme, size, fit) in [
        ("", day, SQUARE, Fit::Whole),
        ("-night", night, SQUARE, Fit::Whole),
        ("-small", day, SMALL, Fit::Whole),
        ("-large", day, LARGE, Fit::Follow(2000.0)),
    ] {
        let view = PlanView { fit, ..view };
        let bar = plan_view::scale_bar(&view, size).map(|metres| format!("{metres} m"));
        let words = plan_view::Words {
            scale: bar.as_deref(),
            ..view.words
        };
        let shapes = plan_view(&PlanView { words, ..view }, size);
        folder.save(&format!("{name}{suffix}"), theme, size, &shapes)?;
    }
    println!("{name}: {:?}", plan_view::describe(&view));
    Ok(())
}
