//! Flights for tasks: written as scenario files, and flown as those.

use super::identity::DrillError;
use super::task::Flight;
use compass::deviation::AircraftIron;
use compass::float_settings::FloatSettings;
use compass::free_flight::Controls;
use compass::gust::RoughAir;
use compass::simulation::{Moment, STEPS_PER_SECOND, Situation};
use compass::unit::{KNOT, Unit};
use earth::FieldSource;
use flights::air::SeededAir;
use flights::{Recorded, Scenario, ScenarioError, Start};

/// Steps between two moments that are looked at: a tenth of a second, in which a card turns by a
/// few degrees at most.
pub(super) const LOOK_EVERY: u64 = STEPS_PER_SECOND / 10;

/// A flight that is being laid out: straight and level until a control is moved.
#[derive(Clone)]
pub(super) struct Course {
    source: FieldSource,
    situation: Situation,
    air: SeededAir,
    start: Start,
    now: Controls,
    inputs: Vec<(u64, Controls)>,
}

impl Course {
    /// With the standard float, no iron and still air.
    pub(super) fn new(
        source: FieldSource,
        heading_deg: f64,
        speed_kt: f64,
    ) -> Result<Self, DrillError> {
        let field = source.field().map_err(|error| {
            DrillError::Flight(ScenarioError {
                path: "field".to_owned(),
                reason: error.to_string(),
            })
        })?;
        Ok(Self {
            source,
            situation: Situation {
                field,
                iron: AircraftIron::NONE,
                float: FloatSettings::default(),
                air: RoughAir::Still,
            },
            air: SeededAir { seed: 0 },
            start: Start {
                heading_deg: heading_deg.rem_euclid(360.0),
                speed_kt,
            },
            now: Controls::level(speed_kt * KNOT),
            inputs: Vec::new(),
        })
    }

    /// At a latitude alone.
    pub(super) fn at_latitude(
        latitude_deg: f64,
        heading_deg: f64,
        speed_kt: f64,
    ) -> Result<Self, DrillError> {
        let latitude = latitude_deg * Unit::Degree.in_si();
        Self::new(FieldSource::Latitude { latitude }, heading_deg, speed_kt)
    }

    pub(super) fn situation(&self) -> Situation {
        self.situation
    }

    /// In rough air.
    pub(super) fn rough(mut self, air: RoughAir, seed: u64) -> Self {
        self.situation.air = air;
        self.air = SeededAir { seed };
        self
    }

    /// With iron.
    pub(super) fn iron(mut self, iron: AircraftIron) -> Self {
        self.situation.iron = iron;
        self
    }

    /// With a liquid that turns with the bowl at once: no swirl.
    pub(super) fn without_swirl(mut self) -> Self {
        self.situation.float.liquid_spin_up = 0.0;
        self
    }

    /// The controls from a time on, after every time so far.
    pub(super) fn bank(mut self, from_s: f64, bank_deg: f64) -> Self {
        self.now = self.now.with_bank(bank_deg * Unit::Degree.in_si());
        self.moved(from_s)
    }

    /// The throttle from a time on, not before any time so far.
    pub(super) fn speed(mut self, from_s: f64, speed_kt: f64) -> Self {
        self.now = self.now.with_airspeed(speed_kt * KNOT);
        self.moved(from_s)
    }

    fn moved(mut self, from_s: f64) -> Self {
        let step = (from_s * STEPS_PER_SECOND as f64).round() as u64;
        match self.inputs.last_mut() {
            Some((last, controls)) if *last >= step => *controls = self.now,
            _ => self.inputs.push((step, self.now)),
        }
        self
    }

    /// The flight, lasting so many seconds, to be watched between two times.
    pub(super) fn flight(&self, seconds: f64, watch_s: [f64; 2]) -> Flight {
        let steps = (seconds * STEPS_PER_SECOND as f64).round() as u64;
        let json = Recorded {
            source: self.source,
            situation: self.situation,
            air: self.air,
            start: self.start,
            inputs: &self.inputs,
            steps,
        }
        .to_json();
        Flight {
            // What was just written as JSON is JSON.
            scenario: serde_json::from_str(&json).unwrap_or_default(),
            watch_from_s: watch_s[0],
            watch_to_s: watch_s[1],
            asked_at_s: None,
        }
    }
}

/// A flight's moments from its start to its end, a tenth of a second apart.
pub(super) fn moments(scenario: &Scenario) -> Result<Vec<Moment>, ScenarioError> {
    let mut flight = scenario.simulation()?;
    let steps = (scenario.duration() * STEPS_PER_SECOND as f64 + 1e-6) as u64;
    let mut found = vec![flight.moment()];
    for (step, numbers) in (0..steps).zip(scenario.air().in_turn()) {
        flight.step(&scenario.controls_at(step), numbers);
        if (step + 1).is_multiple_of(LOOK_EVERY) {
            found.push(flight.moment());
        }
    }
    Ok(found)
}

/// The moments of a task's flight.
pub(super) fn fly(flight: &Flight) -> Result<Vec<Moment>, DrillError> {
    Ok(moments(&flight.read()?)?)
}

/// Reading less heading, degrees.
pub(super) fn error_deg(moment: &Moment) -> f64 {
    let reading = moment.reading.compass;
    reading.error_from(moment.motion.heading).to_degrees()
}

/// The moments from one time to another, seconds.
pub(super) fn between(moments: &[Moment], from_s: f64, to_s: f64) -> &[Moment] {
    let from = moments.partition_point(|it| it.time < from_s - 1e-6);
    let to = moments.partition_point(|it| it.time <= to_s + 1e-6);
    &moments[from.min(to)..to]
}

/// Root mean square.
pub(super) fn rms(values: impl Iterator<Item = f64>) -> f64 {
    let (sum, count) = values.fold((0.0, 0.0), |(sum, count), it| (sum + it * it, count + 1.0));
    if count > 0.0 {
        (sum / count).sqrt()
    } else {
        0.0
    }
}
