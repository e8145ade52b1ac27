//! A free flight as a scenario file.

use crate::air::SeededAir;
use crate::file::{Control, Field, Float, Intensity, Iron, RoughAir, ScenarioFile};
use compass::free_flight::Controls;
use compass::simulation::{STEP, Situation};
use compass::unit::Unit;
use compass::{deviation::AircraftIron, float_settings::FloatSettings, gust};
use earth::FieldSource;

/// Where a free flight starts, straight and level, in the units of a file.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Start {
    /// Magnetic heading, −360° to 360°.
    pub heading_deg: f64,
    /// Airspeed.
    pub speed_kt: f64,
}

/// All that a free flight was flown from: with the physics, all there is to know of it.
#[derive(Clone, Copy, Debug)]
pub struct Recorded<'a> {
    /// What sets the field.
    pub source: FieldSource,
    /// What it took place in; its field is the source's.
    pub situation: Situation,
    /// The air's white numbers.
    pub air: SeededAir,
    /// Where it started.
    pub start: Start,
    /// The controls, each with the step from which on they were held, in order.
    pub inputs: &'a [(u64, Controls)],
    /// How many steps were flown.
    pub steps: u64,
}

impl Recorded<'_> {
    /// The flight as a scenario file's text; see [`to_file`](Self::to_file).
    pub fn to_json(&self) -> String {
        self.to_file().to_json()
    }

    /// The flight as a scenario file, in which [`Scenario`](crate::Scenario) reads the same flight:
    /// to the bit where each command and setting is a decimal number in its unit, as those that
    /// are typed or stepped are, and to the last bit or two of any other.
    pub fn to_file(&self) -> ScenarioFile {
        let air = self.situation.air;
        ScenarioFile {
            field: field(self.source),
            float: float(&self.situation.float),
            iron: (!self.situation.iron.is_none()).then(|| iron(&self.situation.iron)),
            rough_air: (air != gust::RoughAir::Still).then(|| RoughAir {
                intensity: intensity(air),
                seed: self.air.seed,
            }),
            start: crate::file::Start {
                heading_deg: self.start.heading_deg,
                speed_kt: self.start.speed_kt,
            },
            legs: None,
            controls: Some(self.inputs.iter().map(control).collect()),
            duration_s: Some(self.steps as f64 * STEP),
        }
    }
}

fn control((step, controls): &(u64, Controls)) -> Control {
    Control {
        time_s: *step as f64 * STEP,
        bank_deg: Some(written(Unit::Degree, controls.bank())),
        airspeed_kt: Some(written(Unit::Knot, controls.airspeed())),
        pitch_deg: Some(written(Unit::Degree, controls.pitch())),
        rudder: Some(controls.rudder()),
    }
}

fn field(source: FieldSource) -> Field {
    let mut field = Field::default();
    match source {
        FieldSource::Place { place, date } => {
            field.latitude_deg = Some(written(Unit::Degree, place.latitude()));
            field.longitude_deg = Some(written(Unit::Degree, place.longitude()));
            field.altitude_ft = Some(written(Unit::Foot, place.altitude()));
            field.date = Some(date.to_string());
        }
        FieldSource::Latitude { latitude } => {
            field.latitude_deg = Some(written(Unit::Degree, latitude));
        }
        FieldSource::ByHand { horizontal, dip } => {
            field.horizontal_nt = Some(written(Unit::Nanotesla, horizontal));
            field.dip_deg = Some(written(Unit::Degree, dip));
        }
    }
    field
}

fn float(settings: &FloatSettings) -> Float {
    Float {
        yaw_period_s: Some(settings.yaw_period),
        yaw_damping_ratio: Some(settings.yaw_damping_ratio),
        reference_horizontal_nt: Some(written(Unit::Nanotesla, settings.reference_horizontal)),
        reference_vertical_nt: Some(written(Unit::Nanotesla, settings.reference_vertical)),
        level_tilt_deg: Some(written(Unit::Degree, settings.level_tilt)),
        inertia_ratio: Some(settings.inertia_ratio),
        tilt_damping_ratio: Some(settings.tilt_damping_ratio),
        liquid_spin_up_s: Some(settings.liquid_spin_up),
        balance_vertical_nt: Some(written(Unit::Nanotesla, settings.balance_vertical)),
        friction_angle_deg: Some(written(Unit::Degree, settings.friction_angle)),
        vibration: Some(settings.vibration),
    }
}

fn iron(iron: &AircraftIron) -> Iron {
    Iron {
        hard_nt: iron.hard().map(|value| written(Unit::Nanotesla, value)),
        soft: iron.soft(),
    }
}

fn intensity(air: gust::RoughAir) -> Intensity {
    match air {
        gust::RoughAir::Still => Intensity::Still,
        gust::RoughAir::Light => Intensity::Light,
        gust::RoughAir::Moderate => Intensity::Moderate,
        gust::RoughAir::Severe => Intensity::Severe,
    }
}

/// The shortest number in a unit that is read as this very value; where there is none, the
/// nearest one.
fn written(unit: Unit, si: f64) -> f64 {
    let near = si / unit.in_si();
    // Seventeen figures tell any two numbers apart.
    let shorter = (0..17).filter_map(|digits| format!("{near:.digits$e}").parse().ok());
    shorter
        .chain([near.next_up(), near.next_down()])
        .find(|value: &f64| value * unit.in_si() == si)
        .unwrap_or(near)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_written_is_what_was_typed() {
        for tenths in -1800..=1800_i32 {
            let typed = f64::from(tenths) / 10.0;
            for unit in [Unit::Degree, Unit::Knot, Unit::Foot, Unit::Nanotesla] {
                assert_eq!(written(unit, typed * unit.in_si()), typed);
            }
        }
        let odd = std::f64::consts::FRAC_PI_4;
        assert!((written(Unit::Degree, odd) - 45.0).abs() < 1e-12);
        assert_eq!(written(Unit::Degree, 0.0), 0.0);
    }
}
