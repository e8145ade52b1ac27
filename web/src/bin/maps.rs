//! The page of maps; and what its workers compute, called by `static/map-worker.js`.

use leptos::wasm_bindgen::prelude::*;

fn main() {
    web::maps();
}

/// The field at every node of the mesh on some of its rows: dip, variation and horizontal
/// intensity in turn, in SI and radians. Nothing for a day outside the model's life.
#[wasm_bindgen(wasm_bindgen = leptos::wasm_bindgen)]
pub fn survey(date: &str, from: usize, rows: usize) -> Vec<f64> {
    web::surveyed_rows(date, from, rows)
}

/// The lags at north at nodes of the table, rad; bank in radians, airspeed in m/s, the float by
/// the name that addresses have for it. What cannot be flown is no number.
#[wasm_bindgen(wasm_bindgen = leptos::wasm_bindgen)]
pub fn lags(bank: f64, airspeed: f64, float: &str, nodes: &[u32]) -> Vec<f64> {
    web::lags_of_nodes(bank, airspeed, float, nodes)
}
