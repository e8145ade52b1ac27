//! How long the world maps of the rule of thumb take, on one core, and what reading them off a
//! table errs by: `cargo run --release -p lessons --example rule_map`. With `all` after `--`, the
//! latter for every float that can be chosen and banks from the least to the greatest.

use compass::field::{MagneticField, Zone};
use compass::float_settings::FloatSettings;
use earth::Date;
use earth::grid::{FieldGrid, Mesh, Node, Survey};
use lessons::rule_map::{LagTable, OntoNorth, less_rule, steady_lag};
use std::error::Error;
use std::time::Instant;

fn main() -> Result<(), Box<dyn Error>> {
    let turn = OntoNorth::default();
    let mesh = Mesh::every(2.0)?;

    let start = Instant::now();
    let grid = FieldGrid::gather(Survey::new(mesh, Date::parse("2026-05-01")?, 0.0)?)?;
    let surveyed = start.elapsed();
    let places = || {
        let of = move |(index, node): (usize, &Node)| {
            (mesh.latitude((index / mesh.columns()) as f64), *node)
        };
        grid.nodes().iter().enumerate().map(of)
    };
    let closed: f64 = places()
        .map(|(latitude, node)| less_rule(steady_lag(node.dip, turn.bank), latitude))
        .sum();
    println!(
        "closed form: {} places in {:?}, of which {surveyed:?} for the field (sum {closed:.3})",
        grid.nodes().len(),
        start.elapsed()
    );

    let fields: Vec<MagneticField> = grid.nodes().iter().filter_map(|it| it.field()).collect();
    let start = Instant::now();
    let (table, flown) = solved(turn, &fields)?;
    let solved_in = start.elapsed();
    let read = fields.iter().filter(|it| table.lag(**it).is_some()).count();
    println!(
        "float: {flown} turns in {solved_in:?}, {read} places in {:?}",
        start.elapsed()
    );
    errs_by(turn, &fields, &table, 23)?;

    if std::env::args().any(|it| it == "all") {
        let sample = spread(&fields);
        for (name, float) in floats() {
            for bank in [5_f64, 15.0, 30.0, 60.0] {
                println!("{name}, {bank}° of bank");
                let turn = OntoNorth {
                    bank: bank.to_radians(),
                    float,
                    ..turn
                };
                errs_by(turn, &sample, &solved(turn, &sample)?.0, 1)?;
            }
        }
    }
    Ok(())
}

/// Fields from the flattest to the steepest of each zone, and the weakest ones: there a table errs
/// most.
fn spread(fields: &[MagneticField]) -> Vec<MagneticField> {
    let sorted = |zone: Zone, by: fn(&MagneticField) -> f64| {
        let mut fields: Vec<MagneticField> = (fields.iter().copied())
            .filter(|it| it.zone() == zone)
            .collect();
        fields.sort_by(|a, b| by(a).total_cmp(&by(b)));
        fields
    };
    let steepness = |zone: Zone, count: usize| {
        let fields = sorted(zone, |it| -it.dip().abs());
        let every = fields.len() / count;
        fields.into_iter().step_by(every).take(count)
    };
    let weakest = sorted(Zone::Reliable, |it| it.total());
    steepness(Zone::Reliable, 5)
        .chain(weakest.into_iter().step_by(100).take(4))
        .chain(steepness(Zone::Caution, 2))
        .collect()
}

/// The floats that a map can be made for.
fn floats() -> [(&'static str, FloatSettings); 5] {
    [
        ("standard", FloatSettings::default()),
        ("brisk", FloatSettings::brisk()),
        ("sluggish", FloatSettings::sluggish()),
        ("lightly damped", FloatSettings::lightly_damped()),
        ("sticky pivot", FloatSettings::default().with_sticky_pivot()),
    ]
}

/// The table for one way to turn in all these fields, and how many turns it took.
fn solved(turn: OntoNorth, fields: &[MagneticField]) -> Result<(LagTable, usize), Box<dyn Error>> {
    let mut table = LagTable::default();
    let needed = LagTable::needed(fields.iter().copied());
    for &node in &needed {
        table.put(node, turn.lag(LagTable::field(node)?)?);
    }
    Ok((table, needed.len()))
}

/// Prints what the table errs by at every so-manieth place.
fn errs_by(
    turn: OntoNorth,
    fields: &[MagneticField],
    table: &LagTable,
    every: usize,
) -> Result<(), Box<dyn Error>> {
    for zone in [Zone::Reliable, Zone::Caution] {
        // There are far fewer places of caution.
        let every = if zone == Zone::Caution { 1 } else { every };
        let asked = fields.iter().filter(|it| it.zone() == zone).step_by(every);
        let (mut worst, mut count) = ((0.0_f64, MagneticField::new(0.0, 0.0, 0.0)?), 0);
        for &field in asked {
            let off = (table.lag(field).unwrap_or(f64::NAN) - turn.lag(field)?).abs();
            if off > worst.0 || off.is_nan() {
                worst = (off, field);
            }
            count += 1;
        }
        println!(
            "{zone:?}: at {count} places the table errs by {:.4}° at most, where the dip is {:.1}° \
             and H {:.0} nT",
            worst.0.to_degrees(),
            worst.1.dip().to_degrees(),
            worst.1.horizontal() * 1e9
        );
    }
    Ok(())
}
