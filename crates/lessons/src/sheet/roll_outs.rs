//! The roll-out table and rose of a place.

use super::{CAUTION, Column, Part, RosePlace, Sheet, Site, Table, signs};
use crate::roll_out::{Lead, Plan, Planner};
use compass::heading::{CompassHeading, MagneticHeading};
use compass::range::OutOfRange;
use compass::rule_of_thumb::Turn;

/// By how much to undershoot or overshoot by the simulated float: how far past the target, in the
/// turn's direction, its card reads when the roll-out should begin, the lead put aside; rad, negative for short of it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Allowance {
    /// The heading to come out on.
    pub target: MagneticHeading,
    /// In a left turn.
    pub left: f64,
    /// In a right turn.
    pub right: f64,
}

/// What is planned for one target.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RollOut {
    /// The heading to come out on.
    pub target: MagneticHeading,
    /// By a left turn.
    pub left: Plan,
    /// By a right turn.
    pub right: Plan,
}

/// The targets of the table are these many degrees apart, those of the rose a third of that.
pub const EVERY: u16 = 30;

/// Plans for every ten degrees, from north round.
///
/// # Errors
/// Bank or airspeed beyond what can be flown, or a float that cannot be simulated there.
pub fn planned(site: &Site) -> Result<Vec<RollOut>, OutOfRange> {
    let planner = site.planner()?;
    targets()
        .map(|target| RollOut::planned(&planner, target))
        .collect()
}

/// What is planned for: every ten degrees, from north round.
pub fn targets() -> impl Iterator<Item = MagneticHeading> {
    let steps = (0..360).step_by(usize::from(EVERY) / 3);
    steps.map(|degrees| MagneticHeading::from_degrees(f64::from(degrees)))
}

impl RollOut {
    /// Plans for one target, both ways round.
    ///
    /// # Errors
    /// A float that cannot be simulated there.
    pub fn planned(planner: &Planner, target: MagneticHeading) -> Result<Self, OutOfRange> {
        Ok(Self {
            target,
            left: planner.plan(target, Turn::Left)?,
            right: planner.plan(target, Turn::Right)?,
        })
    }
}

/// How far past the target, in the turn's direction, a reading lies, the lead put aside.
pub(super) fn allowance(
    reading: CompassHeading,
    target: MagneticHeading,
    turn: Turn,
    lead: f64,
) -> f64 {
    let side = match turn {
        Turn::Left => -1.0,
        Turn::Right => 1.0,
    };
    side * reading.error_from(target.turned_by(-side * lead))
}

/// The allowances of what was planned with a lead, rad.
pub fn allowances(planned: &[RollOut], lead: f64) -> Vec<Allowance> {
    (planned.iter())
        .map(|it| Allowance {
            target: it.target,
            left: allowance(it.left.float, it.target, Turn::Left, lead),
            right: allowance(it.right.float, it.target, Turn::Right, lead),
        })
        .collect()
}

/// The sheet of a place; on its rose a second place too, where one is given.
///
/// # Errors
/// As [`planned`].
pub fn sheet(site: &Site, beside: Option<&Site>) -> Result<Sheet, OutOfRange> {
    let here = planned(site)?;
    let other = beside.map(planned).transpose()?;
    Ok(sheet_of(site, &here, beside.zip(other.as_deref())))
}

/// The same from what is planned already.
pub fn sheet_of(site: &Site, here: &[RollOut], beside: Option<(&Site, &[RollOut])>) -> Sheet {
    let mut places = vec![RosePlace {
        name: beside.map_or_else(String::new, |_| site.name.clone()),
        allowances: allowances(here, site.lead()),
    }];
    if let Some((other, planned)) = beside {
        places.push(RosePlace {
            name: other.name.clone(),
            allowances: allowances(planned, other.lead()),
        });
    }
    Sheet {
        title: "When to begin to roll out".to_owned(),
        under: site.conditions(),
        parts: vec![
            Part::Paragraph(
                "Begin to roll out of a turn that is flown by the compass when it reads:"
                    .to_owned(),
            ),
            Part::Table(table(here, EVERY)),
            Part::Paragraph(format!(
                "Each figure leaves {} as lead to stop the turn in. Latitude: the \
                 rule of thumb, the latitude on north and south and in proportion between (the \
                 proportion is common practice). 15° + ½: the same with 15° and half the \
                 latitude. Closed form: a card at rest, square to the apparent vertical. Float: \
                 the simulated card after a quarter turn. Off if bare: how far short of (−) or \
                 past (+) the target the simulated aircraft comes out when it rolls out as if the \
                 compass did not err; “never” where the card does not come to show it.",
                lead_words(site),
            )),
            Part::Heading("Undershoot and overshoot, by the simulated float".to_owned()),
            Part::RollOutRose(places),
        ],
        caution: CAUTION.to_owned(),
    }
}

fn lead_words(site: &Site) -> String {
    let lead = signs::degrees(site.lead());
    match site.lead {
        Lead::HalfBank => format!("half the bank, {lead},"),
        Lead::RollRate(rate) => format!(
            "{lead}, what the heading gains while the bank comes off at {} a second,",
            signs::degrees(rate)
        ),
    }
}

/// The readings at which to begin, of what was planned for targets `every` so many degrees.
pub fn table(planned: &[RollOut], every: u16) -> Table {
    let rows = (planned.iter())
        .filter(|it| it.target.whole_degrees() % every.max(1) == 0)
        .map(row);
    let answers = [
        ("latitude", 1.05),
        ("15° + ½", 1.0),
        ("closed form", 1.0),
        ("float", 1.0),
        ("off if bare", 1.0),
    ];
    let columns = [("target", 1.1)].into_iter().chain(answers).chain(answers);
    Table {
        groups: vec![
            (String::new(), 1),
            ("left turn".to_owned(), answers.len()),
            ("right turn".to_owned(), answers.len()),
        ],
        columns: columns
            .map(|(title, share)| Column::figures(title, share))
            .collect(),
        rows: rows.collect(),
        to_write_in: false,
    }
}

fn row(it: &RollOut) -> Vec<String> {
    let mut cells = vec![signs::heading(it.target.whole_degrees())];
    for plan in [&it.left, &it.right] {
        let readings = [plan.rule, plan.half_rule, plan.steady, plan.float];
        cells.extend(readings.map(signs::reading));
        cells.push(
            plan.bare_overshoot
                .map_or_else(|| "never".to_owned(), signs::signed),
        );
    }
    cells
}
