//! A deviation card: what to steer for a magnetic heading, and the swing it comes from.

use super::{Column, Part, Sheet, Table, signs};
use crate::corrections::{CardError, DeviationCard};
use crate::swing::{LIMIT, Ramp, fitted, greatest};
use compass::field::MagneticField;
use compass::heading::{CompassHeading, MagneticHeading};

/// What stands at the foot of a deviation card.
pub const CAUTION: &str = "For training, not for navigation, and not to be put into an aircraft. A \
    real swing is the work of licensed people by the aircraft’s maintenance data and the rules of \
    the local authority; the aircraft’s manual and a licensed instructor come first.";

/// A swing by headings, and what is said of it.
#[derive(Clone, Debug, PartialEq)]
pub struct Swing {
    /// Whose it is and where it was swung.
    pub name: String,
    /// Deviation (rad, east positive) by compass heading.
    pub found: Vec<(CompassHeading, f64)>,
}

impl Swing {
    /// The swing of an aircraft with iron hidden by a seed, every `every` degrees: of record after
    /// the adjustment, or as it was found before. `name` says where.
    pub fn hidden(name: &str, field: MagneticField, seed: u64, every: u16, adjusted: bool) -> Self {
        let found = Ramp::hidden(field, seed);
        let (ramp, when) = if adjusted {
            (found.adjusted().0, "adjusted")
        } else {
            (found, "as found")
        };
        Self {
            name: format!("Invented aircraft {seed}, {when}. {name}."),
            found: ramp.swing(every),
        }
    }
}

/// The card of a swing.
///
/// # Errors
/// A swing from which no card can be made.
pub fn sheet(swing: &Swing) -> Result<Sheet, CardError> {
    let card = DeviationCard::new(swing.found.clone())?;
    let most = greatest(&swing.found);
    let verdict = if most <= LIMIT { "within" } else { "BEYOND" };
    let mut summary = vec![format!(
        "Greatest deviation {}: {verdict} the limit of {} on any heading in level flight (14 CFR \
         25.1327(b)).",
        signs::degrees(most),
        signs::degrees(LIMIT)
    )];
    if let Ok((fit, residual)) = fitted(&swing.found) {
        let parts = [
            ("A", fit.a),
            ("B", fit.b),
            ("C", fit.c),
            ("D", fit.d),
            ("E", fit.e),
        ];
        let parts = parts.map(|(name, part)| format!("{name} {}", signs::east_west(part)));
        summary.push(format!(
            "Coefficients by least squares: {}; the swing strays from their curve by at most {}.",
            parts.join(", "),
            signs::degrees(residual)
        ));
    }
    Ok(Sheet {
        title: "Deviation card".to_owned(),
        under: swing.name.clone(),
        parts: vec![
            Part::Table(to_steer(&card)),
            Part::Heading("The swing".to_owned()),
            Part::Table(found(&swing.found)),
            Part::Deviations(swing.found.clone()),
            Part::Points(summary),
            Part::Table(Table {
                columns: ["Engine", "Radios and lights", "Date", "Swung by"]
                    .map(|title| Column::words(title, 1.0))
                    .into(),
                rows: vec![vec!["running / stopped".to_owned(), "on / off".to_owned()]],
                to_write_in: true,
                ..Table::default()
            }),
        ],
        caution: CAUTION.to_owned(),
    })
}

/// For a magnetic heading, steer: every 30°, in two bands as on a card in an aircraft.
fn to_steer(card: &DeviationCard) -> Table {
    let steer = |degrees: u16| {
        let magnetic = MagneticHeading::from_degrees(f64::from(degrees));
        signs::heading(card.to_compass(magnetic).whole_degrees())
    };
    let bands = [
        ["N", "030°", "060°", "E", "120°", "150°"],
        ["S", "210°", "240°", "W", "300°", "330°"],
    ];
    let mut rows = Vec::new();
    for (names, first) in bands.into_iter().zip([0, 180]) {
        let named = ["For magnetic"].into_iter().chain(names).map(str::to_owned);
        rows.push(named.collect());
        let steered = (0..6_u16).map(|step| steer(first + 30 * step));
        rows.push(["Steer".to_owned()].into_iter().chain(steered).collect());
    }
    Table {
        columns: std::iter::once(Column::words("", 1.4))
            .chain((0..6).map(|_| Column::figures("", 1.0)))
            .collect(),
        rows,
        ..Table::default()
    }
}

/// Headings and deviations as they were found, in bands of at most eight.
fn found(swing: &[(CompassHeading, f64)]) -> Table {
    let bands = swing.len().div_ceil(8).max(1);
    let across = swing.len().div_ceil(bands).max(1);
    let mut rows = Vec::new();
    for band in swing.chunks(across) {
        let fill = |first: &str, cells: Vec<String>| {
            let mut row = vec![first.to_owned()];
            row.extend(cells);
            row.resize(across + 1, String::new());
            row
        };
        let headings = band
            .iter()
            .map(|(it, _)| signs::heading(it.whole_degrees()));
        rows.push(fill("Compass", headings.collect()));
        let deviations = band.iter().map(|(_, it)| signs::east_west(*it));
        rows.push(fill("Deviation", deviations.collect()));
    }
    Table {
        columns: std::iter::once(Column::words("", 1.5))
            .chain((0..across).map(|_| Column::figures("", 1.0)))
            .collect(),
        rows,
        ..Table::default()
    }
}
