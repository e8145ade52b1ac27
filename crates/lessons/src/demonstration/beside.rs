//! The same flight in a second situation.

use super::Compare;
use compass::deviation::AircraftIron;
use compass::float_settings::LIQUID_SPIN_UP;
use compass::unit::NANOTESLA;
use earth::FieldSource;
use flights::{Scenario, ScenarioError};

/// Hard iron of a cockpit with a magnet in it, nanotesla forward, right and down; chosen: some
/// ten degrees of deviation at mid-latitudes, as of a headset left beside the compass.
pub const STRAY_IRON_NT: [f64; 3] = [1500.0, 3000.0, 0.0];

/// The same flight, its situation so changed.
///
/// # Errors
/// A latitude that gives no field.
pub(crate) fn changed(scenario: &Scenario, compare: Compare) -> Result<Scenario, ScenarioError> {
    let source = match compare {
        Compare::OtherHemisphere => scenario.source().other_hemisphere(),
        Compare::LatitudeDeg(degrees) => FieldSource::Latitude {
            latitude: f64::from(degrees).to_radians(),
        },
        Compare::NoVerticalField => FieldSource::ByHand {
            horizontal: scenario.situation().field.horizontal(),
            dip: 0.0,
        },
        _ => scenario.source(),
    };
    let mut situation = *scenario.situation();
    if source != scenario.source() {
        situation.field = source
            .field()
            .map_err(|error| ScenarioError::at("field", error))?;
    }
    match compare {
        // A liquid that stays behind for so long never drags the card round.
        Compare::NoSwirl => situation.float.liquid_spin_up = LIQUID_SPIN_UP.most,
        Compare::OtherIron if situation.iron.is_none() => {
            let hard = STRAY_IRON_NT.map(|it| it * NANOTESLA);
            situation.iron = AircraftIron::new(hard, [[0.0; 3]; 3])
                .map_err(|error| ScenarioError::at("iron", error))?;
        }
        Compare::OtherIron => situation.iron = AircraftIron::NONE,
        _ => {}
    }
    Ok(scenario.clone().in_situation(source, situation))
}
