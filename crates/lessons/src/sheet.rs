//! What stands on the hand-outs: words and figures, for a place.
//!
//! [`roll_outs`]: when to begin to roll out, all round. [`aids`]: the memory aids and their
//! limits. [`worksheet`]: tasks from a seed, and their key. [`deviation`]: a deviation card.
//! [`plan`]: a lesson. Each gives [`Sheet`]s; to draw and to write them is others' work. Their
//! words keep to the letters and signs that the font of the pages holds.

pub mod aids;
pub mod deviation;
mod lot;
mod measures;
pub mod plan;
pub mod roll_outs;
mod signs;
mod tasks;
pub mod worksheet;

use crate::roll_out::{BANK, Lead, Planner};
use compass::heading::CompassHeading;
use compass::range::OutOfRange;
use compass::simulation::Situation;
use compass::unit::KNOT;
use roll_outs::Allowance;

/// What stands at the foot of each sheet.
pub const CAUTION: &str = "For training, not for navigation. The figures are computed from models \
    of the Earth’s field and of a compass float, and no real compass is bound by them. The \
    aircraft’s manual, the local rules and a licensed instructor come first.";

/// One sheet of paper.
#[derive(Clone, Debug, PartialEq)]
pub struct Sheet {
    /// Its title.
    pub title: String,
    /// For where and for what it was computed.
    pub under: String,
    /// What stands on it, from top to bottom.
    pub parts: Vec<Part>,
    /// What stands at its foot.
    pub caution: String,
}

/// One part of a sheet.
#[derive(Clone, Debug, PartialEq)]
pub enum Part {
    /// A heading.
    Heading(String),
    /// A paragraph.
    Paragraph(String),
    /// A list.
    Points(Vec<String>),
    /// A table.
    Table(Table),
    /// The roll-out rose of one place or two.
    RollOutRose(Vec<RosePlace>),
    /// Deviation (rad, east positive) by compass heading.
    Deviations(Vec<(CompassHeading, f64)>),
}

/// A place on a roll-out rose.
#[derive(Clone, Debug, PartialEq)]
pub struct RosePlace {
    /// What it is called.
    pub name: String,
    /// By how much to undershoot or overshoot there.
    pub allowances: Vec<Allowance>,
}

/// A table of words and figures.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Table {
    /// Words over several columns, and how many each stands over; may be empty.
    pub groups: Vec<(String, usize)>,
    /// Its columns.
    pub columns: Vec<Column>,
    /// Its cells, row by row, as many in each as there are columns.
    pub rows: Vec<Vec<String>>,
    /// Whether something is to be written into it by hand.
    pub to_write_in: bool,
}

/// A column of a table.
#[derive(Clone, Debug, PartialEq)]
pub struct Column {
    /// What stands over it.
    pub title: String,
    /// Its share of the width.
    pub share: f64,
    /// Whether it holds figures.
    pub figures: bool,
}

impl Column {
    /// A column of words.
    pub fn words(title: &str, share: f64) -> Self {
        Self {
            title: title.to_owned(),
            share,
            figures: false,
        }
    }

    /// A column of figures.
    pub fn figures(title: &str, share: f64) -> Self {
        Self {
            figures: true,
            ..Self::words(title, share)
        }
    }
}

/// Where and with what the hand-outs are computed.
#[derive(Clone, Debug, PartialEq)]
pub struct Site {
    /// What the place is called.
    pub name: String,
    /// Latitude, rad, north positive: what the rules of thumb take.
    pub latitude: f64,
    /// The field there, and the compass; the air is still.
    pub situation: Situation,
    /// Bank of the turns, rad; its side does not matter.
    pub bank: f64,
    /// Airspeed, m/s.
    pub airspeed: f64,
    /// How the lead is reckoned; worksheets and memory aids take half the bank all the same.
    pub lead: Lead,
}

impl Site {
    /// What plans roll-outs here.
    ///
    /// # Errors
    /// Bank or airspeed beyond what can be flown, or a float that cannot be simulated here.
    pub fn planner(&self) -> Result<Planner, OutOfRange> {
        self.planner_at(self.bank)?.with_lead(self.lead)
    }

    /// The lead that roll-outs here leave, rad.
    pub fn lead(&self) -> f64 {
        self.lead.of(self.bank(), self.airspeed)
    }

    /// What plans roll-outs with half of another bank (rad) as lead.
    fn planner_at(&self, bank: f64) -> Result<Planner, OutOfRange> {
        Planner::new(self.situation, self.latitude, bank, self.airspeed)
    }

    /// Whether the dip points down, as it does north of the magnetic equator.
    pub fn is_northern(&self) -> bool {
        self.situation.field.dip() >= 0.0
    }

    /// The bank without its side, kept to what can be planned, rad.
    fn bank(&self) -> f64 {
        BANK.check(self.bank.abs()).unwrap_or(self.bank.abs())
    }

    fn conditions(&self) -> String {
        format!(
            "{} Bank {}.",
            self.where_and_how_fast(),
            signs::degrees(self.bank())
        )
    }

    fn where_and_how_fast(&self) -> String {
        format!(
            "{}. Dip {}. Airspeed {} kt.",
            self.name,
            signs::dip(self.situation.field.dip()),
            signs::plain(self.airspeed / KNOT),
        )
    }
}
