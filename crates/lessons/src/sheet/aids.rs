//! The card of memory aids for a hemisphere, each with its limits and what it comes to here.

use super::roll_outs::allowance;
use super::tasks::half_latitude;
use super::{CAUTION, Column, Part, Sheet, Site, Table, signs};
use compass::heading::MagneticHeading;
use compass::motion::coordinated_bank;
use compass::range::OutOfRange;
use compass::rule_of_thumb::Turn;
use compass::steady::{bank_without_revolution, in_speed_change};
use compass::unit::KNOT;

/// The banks that the rules are held against, degrees: the usual one, the ends of what the
/// handbook gives them for (15° to 18°: FAA-H-8083-15B), and two steeper.
pub const BANKS: [f64; 5] = [10.0, 15.0, 18.0, 25.0, 30.0];

/// Below this dip the errors are small enough to say so, rad: 15°; chosen, there the closed form
/// gives 4° at 15° of bank.
const SMALL_DIP: f64 = 15.0 * std::f64::consts::PI / 180.0;

/// The card for a place.
///
/// # Errors
/// An airspeed beyond what can be flown, or a float that cannot be simulated there.
pub fn sheet(site: &Site) -> Result<Sheet, OutOfRange> {
    let northern = site.is_northern();
    let mut parts = Vec::new();
    if let Some(words) = warning(site) {
        parts.push(Part::Paragraph(words));
    }
    let rows = aids(site);
    parts.push(Part::Table(Table {
        columns: vec![
            Column::words("Aid", 0.2),
            Column::words("What it says", 0.39),
            Column::words("Where it stops", 0.41),
        ],
        rows: rows.into_iter().map(Vec::from).collect(),
        ..Table::default()
    }));
    parts.push(Part::Heading(
        "What the rules come to here, onto north".to_owned(),
    ));
    parts.push(Part::Table(onto_north(site)?));
    Ok(Sheet {
        title: format!(
            "Memory aids {} of the magnetic equator",
            if northern { "north" } else { "south" }
        ),
        under: site.where_and_how_fast(),
        parts,
        caution: CAUTION.to_owned(),
    })
}

/// What a reader has to know before the aids, where the place asks for it.
fn warning(site: &Site) -> Option<String> {
    let dip = site.situation.field.dip();
    if dip.abs() < SMALL_DIP {
        Some(format!(
            "Near the magnetic equator: the dip here is only {}, and all these errors are small.",
            signs::degrees(dip.abs())
        ))
    } else if dip * site.latitude < 0.0 {
        Some(
            "The magnetic equator is not the Earth’s: here latitude and dip have different signs. \
             The compass follows the dip, the rules of thumb by latitude mislead."
                .to_owned(),
        )
    } else {
        None
    }
}

fn aids(site: &Site) -> Vec<[String; 3]> {
    let northern = site.is_northern();
    let side = |north: &'static str, south: &'static str| if northern { north } else { south };
    let dip = site.situation.field.dip();
    let east = MagneticHeading::from_degrees(90.0);
    let on_east = in_speed_change(east, 0.1, dip).error_from(east);
    let standard = coordinated_bank(3_f64.to_radians(), site.airspeed);
    let knots = site.airspeed / KNOT;
    [
        (
            side(
                "Undershoot north, overshoot south",
                "Overshoot north, undershoot south",
            ),
            side(
                "Turning by the compass, begin to roll out before it shows a northerly target and \
                 after it shows a southerly one.",
                "Turning by the compass, begin to roll out after it shows a northerly target and \
                 before it shows a southerly one.",
            )
            .to_owned(),
            "Nothing on east and west, in between in proportion (common practice). The card has \
             its own time: after a short turn it is not yet there."
                .to_owned(),
        ),
        (
            "By the latitude",
            format!(
                "On north and south by the latitude, here {}.",
                signs::size(site.latitude)
            ),
            "FAA-H-8083-15B, for 15° to 18° of bank. The table below shows how it fares here."
                .to_owned(),
        ),
        (
            "15° and half the latitude",
            format!(
                "The same with 15° and half the latitude, here {}.",
                signs::size(half_latitude(site.latitude))
            ),
            "Common practice. It equals the first at 30° of latitude.".to_owned(),
        ),
        (
            "30, 20, 10",
            "30° onto headings within 30° of north or south, 20° in the next 30°, 10° in the last."
                .to_owned(),
            "Common practice where latitudes near 50° are home; too much nearer the equator."
                .to_owned(),
        ),
        (
            "Half the bank",
            "Whatever the compass does, lead the roll-out by half the bank.".to_owned(),
            "FAA-H-8083-15B. A slow roll needs more.".to_owned(),
        ),
        (
            side(
                "Off north the wrong way, off south too fast",
                "Off south the wrong way, off north too fast",
            ),
            side(
                "Turning off north the card first shows a turn the other way; off south it runs \
                 ahead.",
                "Turning off south the card first shows a turn the other way; off north it runs \
                 ahead.",
            )
            .to_owned(),
            format!(
                "Steeper than {} of bank here (90° less the dip), a card in a steady turn never \
                 comes all the way round.",
                signs::size(bank_without_revolution(dip))
            ),
        ),
        (
            side(
                "Accelerate north, decelerate south",
                "Accelerate south, decelerate north",
            ),
            side(
                "On easterly and westerly headings the card swings to the north while speed is \
                 gained, to the south while it is lost.",
                "On easterly and westerly headings the card swings to the south while speed is \
                 gained, to the north while it is lost.",
            )
            .to_owned(),
            format!(
                "Nothing on north and south; gone when the speed holds. At 0.1 g on east here {} \
                 (closed form).",
                signs::size(on_east)
            ),
        ),
        (
            "Straight, level, steady",
            "Read the compass, and set a heading indicator by it, only in straight and level \
             flight at a steady speed."
                .to_owned(),
            "After a turn wait until the card rests; in rough air take the middle of its swings."
                .to_owned(),
        ),
        (
            "Turn by the clock",
            "Standard rate is 3° a second: the angle divided by 3 is the time in seconds. Bank: \
             15\u{a0}% of the speed in knots, or a tenth of it and 7."
                .to_owned(),
            format!(
                "Common practice. At {} kt the rules give {}° and {}°, the balance of forces {}.",
                signs::plain(knots),
                signs::plain(0.15 * knots),
                signs::plain(0.1 * knots + 7.0),
                signs::degrees(standard)
            ),
        ),
        (
            "Variation east, magnetic least; variation west, magnetic best",
            "From true to magnetic take easterly variation away, add westerly; with deviation the \
             same from magnetic to compass."
                .to_owned(),
            "Custom of the trade. From compass to true the other way round.".to_owned(),
        ),
    ]
    .map(|(aid, says, stops)| [aid.to_owned(), says, stops])
    .into()
}

/// Rules, closed form and float onto north by a right turn, by bank.
fn onto_north(site: &Site) -> Result<Table, OutOfRange> {
    let north = MagneticHeading::from_degrees(0.0);
    let mut rows = Vec::new();
    for degrees in BANKS {
        let bank = degrees.to_radians();
        let plan = site.planner_at(bank)?.plan(north, Turn::Right)?;
        let mut row = vec![format!("{degrees:.0}°")];
        row.extend(
            [plan.rule, plan.half_rule, plan.steady, plan.float]
                .map(|reading| signs::signed(allowance(reading, north, Turn::Right, 0.5 * bank))),
        );
        rows.push(row);
    }
    Ok(Table {
        groups: vec![
            (String::new(), 1),
            (
                "overshoot (+) or undershoot (−) beside the lead".to_owned(),
                4,
            ),
        ],
        columns: [
            "bank",
            "latitude",
            "15° + ½ latitude",
            "closed form",
            "simulated float",
        ]
        .map(|title| Column::figures(title, 1.0))
        .into(),
        rows,
        to_write_in: false,
    })
}
