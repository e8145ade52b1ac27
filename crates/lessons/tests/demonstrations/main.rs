//! The catalogue against its own flights: each claim, each number of each text, each moment that
//! a caption speaks of, and each question's answer; by the code that plays it and by a second
//! route through the rows of the flight.

mod broken;
mod independent;
mod mirror;
mod moments;
mod texts;
mod topics;

use lessons::demonstration::{Demonstration, Flown, catalogue};
use std::sync::LazyLock;

/// The catalogue in order, each flown once for all checks.
static CATALOGUE: LazyLock<Vec<Flown>> = LazyLock::new(|| {
    let names = catalogue::FILES.iter();
    let read = names.map(|(name, _)| catalogue::find(name).unwrap().unwrap());
    read.map(|it| flown(&it)).collect()
});

fn named(name: &str) -> &'static Flown {
    let mut all = CATALOGUE.iter();
    all.find(|it| it.demonstration().name == name).unwrap()
}

fn flown(demonstration: &Demonstration) -> Flown {
    Flown::new(demonstration.clone()).unwrap()
}

/// When the pilot first moves the controls.
fn first_command(demonstration: &Demonstration) -> f64 {
    let file = serde_json::to_value(&demonstration.scenario).unwrap();
    file["controls"][0]["time_s"].as_f64().unwrap_or(f64::MAX)
}
