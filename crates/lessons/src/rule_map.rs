//! How good the rule of thumb is, anywhere: by how much a compass lags at north in a turn, and
//! how far that is from the latitude that the rule takes.
//!
//! ```text
//! dip, intensity ── closed form ──────────────┐
//!              └── float, flown ── LagTable ──┼── less the rule → degrees
//! latitude ─────── rule ──────────────────────┘
//! ```
//!
//! A lag less the rule that is above zero under-leads: who follows the rule rolls out past north.
//! Below zero it over-leads: who follows it stops short of north. This holds in both hemispheres;
//! south of the magnetic equator lag and rule are both negative, a lead.
//!
//! ```
//! use earth::FieldSource;
//! use lessons::rule_map::{OntoNorth, less_rule, steady_lag};
//!
//! let latitude = 45_f64.to_radians();
//! let field = FieldSource::Latitude { latitude }.field()?;
//! let lag = steady_lag(field.dip(), 15_f64.to_radians());
//! assert!((less_rule(lag, latitude).to_degrees() + 17.6).abs() < 0.1, "over-leads by 17.6°");
//! let flown = OntoNorth::default().lag(field)?;
//! assert!((flown - lag).abs().to_degrees() < 5.0);
//! # Ok::<(), earth::Error>(())
//! ```

mod table;

pub use table::LagTable;

use crate::roll_out::Crossing;
use compass::aircraft::Aircraft;
use compass::angle::half_turn;
use compass::deviation::AircraftIron;
use compass::field::MagneticField;
use compass::float_settings::FloatSettings;
use compass::free_flight::Controls;
use compass::gust::{NUMBERS, RoughAir};
use compass::heading::MagneticHeading;
use compass::range::OutOfRange;
use compass::rule_of_thumb::{self, Turn};
use compass::simulation::{STEPS_PER_SECOND, Simulation, Situation};
use compass::steady::in_turn;
use compass::unit::KNOT;
use std::f64::consts::FRAC_PI_2;

/// How near a lag must come to the rule for the rule to be called good there, rad. Chosen: half of
/// the ten degrees between two figures of a heading indicator, and what the rule is taught to.
pub const GOOD: f64 = 5.0 * std::f64::consts::PI / 180.0;

/// The longest that a turn onto north is flown. A quarter at the least bank and the greatest
/// speed that can be planned takes 400 s.
const LONGEST: u64 = 600 * STEPS_PER_SECOND;

/// How the turn onto north is flown: to the right, a quarter round, in still air, by a compass in
/// an aircraft without iron. To the left it is the mirror image.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct OntoNorth {
    /// Bank, rad, above zero; see [`crate::roll_out::BANK`].
    pub bank: f64,
    /// Airspeed, m/s.
    pub airspeed: f64,
    /// The float.
    pub float: FloatSettings,
}

impl Default for OntoNorth {
    /// The standard float at 15° of bank, for which the rule is given, and 100 kt: chosen, a light
    /// aircraft's cruise.
    fn default() -> Self {
        Self {
            bank: 15_f64.to_radians(),
            airspeed: 100.0 * KNOT,
            float: FloatSettings::default(),
        }
    }
}

impl OntoNorth {
    /// By how much the simulated compass lags as the aircraft comes through north, rad, from −π
    /// to π; negative for a lead.
    ///
    /// # Errors
    /// A float that cannot be simulated in this field.
    pub fn lag(&self, field: MagneticField) -> Result<f64, OutOfRange> {
        self.lag_after(field, FRAC_PI_2)
    }

    /// The same after another part of a turn, rad.
    fn lag_after(&self, field: MagneticField, turned: f64) -> Result<f64, OutOfRange> {
        let situation = Situation {
            field,
            iron: AircraftIron::NONE,
            float: self.float,
            air: RoughAir::Still,
        };
        let level = Controls::level(self.airspeed);
        let start = Aircraft::free(MagneticHeading::from_radians(-turned), &level);
        let mut flight = Simulation::new(situation, start, level)?;
        let turning = level.with_bank(self.bank);
        let mut north = Crossing::of(0.0);
        for _ in 0..LONGEST {
            flight.step(&turning, [0.0; NUMBERS]);
            let heading = flight.motion().heading.radians();
            let reading = flight.reading().compass.radians();
            if let Some(reading) = north.passed(heading, reading, 1.0) {
                return Ok(half_turn(-reading));
            }
        }
        // A turn always comes to north within its time.
        Ok(half_turn(-flight.reading().compass.radians()))
    }
}

/// By how much a card that stands square to the apparent vertical lags at north, rad, where the
/// dip is `dip` rad and the bank `bank` rad: the closed form, [`compass::steady::in_turn`].
pub fn steady_lag(dip: f64, bank: f64) -> f64 {
    half_turn(-in_turn(MagneticHeading::from_radians(0.0), bank.abs(), dip).radians())
}

/// By how much the rule of thumb says that the compass lags at north at a latitude, rad.
pub fn rule_lag(latitude: f64) -> f64 {
    -rule_of_thumb::in_turn(MagneticHeading::from_radians(0.0), Turn::Right, latitude)
}

/// A lag at north less the rule's at a latitude, rad: below zero the rule over-leads, above zero
/// it under-leads.
pub fn less_rule(lag: f64, latitude: f64) -> f64 {
    lag - rule_lag(latitude)
}

/// How good the rule is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Verdict {
    /// It gives too early a roll-out, by more than [`GOOD`].
    OverLeads,
    /// It comes within [`GOOD`].
    Good,
    /// It gives too late a roll-out, by more than [`GOOD`].
    UnderLeads,
}

impl Verdict {
    /// Of a lag less the rule, rad.
    pub fn of(less_rule: f64) -> Self {
        if less_rule < -GOOD {
            Self::OverLeads
        } else if less_rule > GOOD {
            Self::UnderLeads
        } else {
            Self::Good
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::roll_out::Planner;
    use compass::heading::MagneticHeading;
    use earth::FieldSource;

    #[test]
    fn the_planner_reads_the_same_from_the_same_turn() {
        for latitude in [-55_f64, -20.0, 0.0, 35.0, 62.0] {
            let latitude = latitude.to_radians();
            let field = FieldSource::Latitude { latitude }.field().unwrap();
            for bank in [10_f64, 15.0, 25.0] {
                let turn = OntoNorth {
                    bank: bank.to_radians(),
                    ..OntoNorth::default()
                };
                let situation = Situation {
                    field,
                    iron: AircraftIron::NONE,
                    float: turn.float,
                    air: RoughAir::Still,
                };
                let planner = Planner::new(situation, latitude, turn.bank, turn.airspeed).unwrap();
                // The planner reads half the bank before its target, a quarter turn from where it
                // began: so that is north, and the turn less than a quarter by as much.
                let target = MagneticHeading::from_radians(turn.bank / 2.0);
                let plan = planner.plan(target, Turn::Right).unwrap();
                let turned = FRAC_PI_2 - turn.bank / 2.0;
                let lag = turn.lag_after(field, turned).unwrap();
                let off = half_turn(lag + plan.float.radians());
                // The same flight, but begun on a heading that differs by rounding.
                assert!(off.abs() < 1e-7, "{latitude} {bank}: {off}");
                // North and the planner's target are the same place of the closed form.
                let steady = half_turn(-plan.steady.radians());
                assert!((steady - steady_lag(field.dip(), turn.bank)).abs() < 1e-12);
            }
        }
    }

    #[test]
    fn where_the_dip_obeys_the_dipole_thirty_degrees_of_bank_make_the_rule_exact() {
        // physics.md: lag = latitude exactly when the dip obeys the dipole and the bank is 30°,
        // since 2 tan(latitude) sin 30° = tan(latitude).
        for latitude in [-70_f64, -30.0, 10.0, 45.0, 60.0] {
            let latitude = latitude.to_radians();
            let dip = earth::dipole::field(latitude).unwrap().dip();
            let off = less_rule(steady_lag(dip, 30_f64.to_radians()), latitude);
            assert!(off.abs() < 1e-12, "{off}");
        }
    }

    #[test]
    fn the_published_lag_over_leads() {
        // The check table of the closed form: dip 58.5°, 15° of bank, lag 22.9° at 30° N, 95° W.
        let off = less_rule(
            steady_lag(58.5_f64.to_radians(), 15_f64.to_radians()),
            30_f64.to_radians(),
        );
        // One decimal is published, of the dip too.
        assert!((off.to_degrees() + 7.1).abs() < 0.1);
        assert_eq!(Verdict::of(off), Verdict::OverLeads);
        assert_eq!(Verdict::of(-off), Verdict::UnderLeads);
        assert_eq!(Verdict::of(GOOD), Verdict::Good);
    }

    #[test]
    fn a_float_that_cannot_be_simulated_is_refused() {
        let field = MagneticField::new(20e-6, 40e-6, 0.0).unwrap();
        let turn = OntoNorth {
            float: FloatSettings {
                yaw_period: 0.0,
                ..FloatSettings::default()
            },
            ..OntoNorth::default()
        };
        assert!(turn.lag(field).is_err());
    }
}
