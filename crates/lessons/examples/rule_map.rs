//! How long the world maps of the rule of thumb take, on one core, and what reading them off a
//! table errs by: `cargo run --release -p lessons --example rule_map`.

use compass::field::{MagneticField, Zone};
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

    let start = Instant::now();
    let fields: Vec<MagneticField> = grid.nodes().iter().filter_map(|it| it.field()).collect();
    let mut table = LagTable::default();
    let needed = LagTable::needed(fields.iter().copied());
    for &node in &needed {
        table.put(node, turn.lag(LagTable::field(node)?)?);
    }
    let flown = start.elapsed();
    let lags: Vec<Option<f64>> = fields.iter().map(|&field| table.lag(field)).collect();
    println!(
        "float: {} turns in {flown:?}, all places in {:?}",
        needed.len(),
        start.elapsed()
    );

    for zone in [Zone::Reliable, Zone::Caution] {
        let asked = fields.iter().zip(&lags).enumerate();
        let asked = asked.filter(|(index, (field, _))| {
            field.zone() == zone && (zone == Zone::Caution || index % 23 == 0)
        });
        let (mut worst, mut count) = ((0.0_f64, MagneticField::new(0.0, 0.0, 0.0)?), 0);
        for (_, (&field, lag)) in asked {
            let off = (lag.unwrap_or(f64::NAN) - turn.lag(field)?).abs();
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
