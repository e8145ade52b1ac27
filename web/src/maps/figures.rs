//! The map in figures: along meridians as a table, and at every node of its mesh as a file.

use super::atlas::Atlas;
use super::shown::{self, off_grid};
use compass::field::Zone;
use compass::unit::NANOTESLA;
use earth::grid::{Grid, Quantity};
use leptos::prelude::*;
use lessons::rule_map::rule_lag;
use lessons::sheet::{Column, Table};

/// Nodes between two figures of the table, along a meridian and along a parallel.
const APART: [usize; 2] = [10, 30];

/// The quantity of the map along meridians every 60° and parallels every 20°; without rows until
/// it is computed.
pub(crate) fn table(atlas: Atlas) -> Table {
    let words = atlas.own();
    let show = atlas.show().get();
    let mut table = Table {
        groups: Vec::new(),
        columns: vec![Column::figures(words.latitude, 1.0)],
        rows: Vec::new(),
        to_write_in: false,
    };
    let Some(grid) = grid(atlas, show) else {
        return table;
    };
    let mesh = grid.mesh();
    // From 90° to −90° stand no figures of use at the poles themselves.
    let rows = (APART[0] / 2..mesh.rows()).step_by(APART[0]);
    let columns: Vec<usize> = (0..mesh.columns() - 1).step_by(APART[1]).collect();
    for &column in &columns {
        let longitude = mesh.longitude(column as f64).to_degrees();
        let title = (words.longitude)(longitude.round());
        table.columns.push(Column::figures(&title, 1.0));
    }
    for row in rows.rev() {
        let latitude = mesh.latitude(row as f64).to_degrees().round();
        let cells = columns.iter().map(|column| {
            let value = grid.values()[row * mesh.columns() + column];
            (words.figure)(show, value)
        });
        let name = (words.on_latitude)(latitude);
        table.rows.push([name].into_iter().chain(cells).collect());
    }
    table
}

fn grid(atlas: Atlas, show: shown::Show) -> Option<Grid> {
    let world = atlas.work.world().get()?;
    let turn = atlas.meant().with(|meant| meant.turn);
    let lags = atlas.work.lags().get();
    match show {
        shown::Show::Dip => Some(world.field.of(Quantity::Dip)),
        shown::Show::Variation => Some(world.field.of(Quantity::Variation)),
        shown::Show::Horizontal => Some(world.field.of(Quantity::Horizontal)),
        shown::Show::Steady | shown::Show::Simulated => {
            let turn = turn?;
            let lags = lags.filter(|lags| lags.turn == turn);
            off_grid(show, &world.field, turn.bank, lags.as_deref())
        }
    }
}

/// Everything at every node, from south to north, for machines: the lags where the map is of one.
pub(crate) fn csv(atlas: Atlas) -> String {
    let show = atlas.show().get();
    let Some(world) = atlas.work.world().get() else {
        return String::new();
    };
    let off = show.is_of_rule().then(|| grid(atlas, show)).flatten();
    let mut out = "latitude_deg,longitude_deg,dip_deg,variation_deg,horizontal_nt,zone".to_owned();
    if off.is_some() {
        out += ",rule_lag_deg,lag_deg,lag_less_rule_deg";
    }
    out += "\r\n";
    let grid = world.field.of(Quantity::Dip);
    let mesh = grid.mesh();
    for (index, node) in world.field.nodes().iter().enumerate() {
        let latitude = mesh.latitude((index / mesh.columns()) as f64);
        let longitude = mesh.longitude((index % mesh.columns()) as f64);
        let zone = match Zone::of(node.horizontal) {
            Zone::Reliable => "reliable",
            Zone::Caution => "caution",
            Zone::Unreliable => "unreliable",
        };
        out += &format!(
            "{:.1},{:.1},{:.3},{:.3},{:.1},{zone}",
            latitude.to_degrees(),
            longitude.to_degrees(),
            node.dip.to_degrees(),
            node.variation.to_degrees(),
            node.horizontal / NANOTESLA,
        );
        if let Some(off) = off.as_ref().map(|off| off.values()[index]) {
            let rule = rule_lag(latitude).to_degrees();
            out += &match off.is_finite() {
                true => format!(
                    ",{rule:.3},{:.3},{:.3}",
                    rule + off.to_degrees(),
                    off.to_degrees()
                ),
                false => format!(",{rule:.3},,"),
            };
        }
        out += "\r\n";
    }
    out
}
