//! `dipwise fly`: a scenario file, flown.

use crate::failure::Failure;
use crate::input;
use crate::rows::Rows;
use clap::Args;
use flights::Scenario;

/// Fly a scenario file and print the flight, row by row.
#[derive(Args)]
pub(crate) struct Fly {
    /// The scenario file; - reads standard input.
    #[arg(value_name = "SCENARIO.json")]
    scenario: String,
    #[command(flatten)]
    rows: Rows,
}

impl Fly {
    /// Flies and prints.
    pub(crate) fn run(self) -> Result<(), Failure> {
        self.rows.check()?;
        let text = input::text(&self.scenario)?;
        let place = input::place(&self.scenario);
        self.rows.write(place, Scenario::from_json(&text))
    }
}
