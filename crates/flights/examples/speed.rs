//! How many seconds of flight one second computes: `cargo run --release -p flights --example speed`.

use compass::aircraft::Aircraft;
use compass::deviation::AircraftIron;
use compass::field::MagneticField;
use compass::float_settings::FloatSettings;
use compass::free_flight::Controls;
use compass::gust::{GustNumbers, RoughAir};
use compass::heading::MagneticHeading;
use compass::simulation::{STEPS_PER_SECOND, Simulation, Situation};
use flights::air::SeededAir;
use std::error::Error;
use std::time::Instant;

/// Seconds of flight to compute.
const FLOWN: u64 = 3600;

fn main() -> Result<(), Box<dyn Error>> {
    for air in [RoughAir::Still, RoughAir::Moderate] {
        let situation = Situation {
            field: MagneticField::new(19.5e-6, 44.2e-6, 0.0)?,
            iron: AircraftIron::NONE,
            float: FloatSettings::default(),
            air,
        };
        let controls = Controls::level(50.0).with_bank(0.3);
        let aircraft = Aircraft::free(MagneticHeading::from_degrees(0.0), &controls);
        let mut flight = Simulation::new(situation, aircraft, controls)?;
        let numbers = SeededAir { seed: 1 };
        let start = Instant::now();
        for step in 0..FLOWN * STEPS_PER_SECOND {
            flight.step(&controls, numbers.at(step));
        }
        let rate = FLOWN as f64 / start.elapsed().as_secs_f64();
        println!(
            "{air:?} air: {rate:.0} seconds of flight a second (last reading {:.3}°)",
            flight.reading().compass.degrees()
        );
    }
    Ok(())
}
