//! What a flight starts from: place, float, iron, air, heading and airspeed.

use compass::aircraft::Aircraft;
use compass::deviation::AircraftIron;
use compass::field::MagneticField;
use compass::float_settings::FloatSettings;
use compass::free_flight::Controls;
use compass::gust::RoughAir;
use compass::heading::MagneticHeading;
use compass::heading_indicator::HeadingIndicator;
use compass::range::OutOfRange;
use compass::simulation::{Simulation, Situation};
use compass::steady::level_deviation;
use compass::unit::{KNOT, NANOTESLA};
use earth::FieldSource;
use flights::air::SeededAir;
use flights::{Recorded, Scenario, ScenarioFile, Start};

/// Airspeed at the start of the first flight, in knots; chosen: a light aircraft's cruise.
pub(crate) const HOME_AIRSPEED: f64 = 100.0;
/// Latitude of the first flight, in degrees north; chosen.
pub(crate) const HOME_LATITUDE: f64 = 52.0;

/// A float that can be chosen.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(crate) enum FloatChoice {
    /// The standard float.
    #[default]
    Standard,
    /// Quick and well damped.
    Brisk,
    /// Slow and heavily damped.
    Sluggish,
    /// Swings several times before it rests.
    LightlyDamped,
    /// The standard float on a pivot that holds it a little.
    StickyPivot,
}

impl FloatChoice {
    /// Every choice once.
    pub(crate) const ALL: [Self; 5] = [
        Self::Standard,
        Self::Brisk,
        Self::Sluggish,
        Self::LightlyDamped,
        Self::StickyPivot,
    ];

    /// The choice that these settings are, if they are one.
    pub(crate) fn of(settings: FloatSettings) -> Option<Self> {
        Self::ALL.into_iter().find(|it| it.settings() == settings)
    }

    /// The settings that this stands for.
    pub(crate) fn settings(self) -> FloatSettings {
        match self {
            Self::Standard => FloatSettings::default(),
            Self::Brisk => FloatSettings::brisk(),
            Self::Sluggish => FloatSettings::sluggish(),
            Self::LightlyDamped => FloatSettings::lightly_damped(),
            Self::StickyPivot => FloatSettings::default().with_sticky_pivot(),
        }
    }
}

/// An aircraft's iron that can be chosen.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(crate) enum IronChoice {
    /// None.
    #[default]
    None,
    /// Something magnetised ahead of the compass.
    MagnetAhead,
    /// A frame of soft iron.
    SoftFrame,
}

impl IronChoice {
    /// Every choice once.
    pub(crate) const ALL: [Self; 3] = [Self::None, Self::MagnetAhead, Self::SoftFrame];

    /// The choice that this iron is, if it is one.
    pub(crate) fn of(iron: AircraftIron) -> Option<Self> {
        let same = |it: &Self| {
            let hard = it.hard_nanotesla().map(|part| part * NANOTESLA);
            AircraftIron::new(hard, it.soft()) == Ok(iron)
        };
        Self::ALL.into_iter().find(same)
    }

    /// Its fixed field in nanotesla: forward, right, down. All are chosen, for a deviation of
    /// several degrees where the horizontal field is some 20 000 nT: enough to be seen at once.
    pub(crate) fn hard_nanotesla(self) -> [f64; 3] {
        match self {
            Self::None => [0.0; 3],
            Self::MagnetAhead => [3000.0, -800.0, 0.0],
            Self::SoftFrame => [0.0; 3],
        }
    }

    /// Its soft iron's matrix, row by row. Chosen likewise.
    pub(crate) fn soft(self) -> [[f64; 3]; 3] {
        match self {
            Self::None | Self::MagnetAhead => [[0.0; 3]; 3],
            Self::SoftFrame => [[0.1, 0.0, 0.0], [0.0, -0.1, 0.0], [0.0; 3]],
        }
    }
}

/// Every roughness of the air once.
pub(crate) const AIRS: [RoughAir; 4] = [
    RoughAir::Still,
    RoughAir::Light,
    RoughAir::Moderate,
    RoughAir::Severe,
];

/// What a flight starts from; its field is known to be one.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Setting {
    /// What sets the field.
    pub(crate) source: FieldSource,
    /// The float.
    pub(crate) float: FloatSettings,
    /// The aircraft's iron.
    pub(crate) iron: AircraftIron,
    /// The air.
    pub(crate) air: RoughAir,
    /// The heading at the start, in whole degrees from 1 to 360.
    pub(crate) heading: u16,
    /// Airspeed at the start, m/s.
    pub(crate) airspeed: f64,
    field: MagneticField,
}

impl Setting {
    /// A setting by the field's source, the rest as at home.
    ///
    /// # Errors
    /// The source gives no field.
    pub(crate) fn new(source: FieldSource) -> Result<Self, earth::Error> {
        Ok(Self {
            field: source.field()?,
            source,
            float: FloatSettings::default(),
            iron: AircraftIron::NONE,
            air: RoughAir::default(),
            heading: 360,
            airspeed: HOME_AIRSPEED * KNOT,
        })
    }

    /// What a scripted flight starts from; its heading to the nearest whole degree.
    pub(crate) fn of_scenario(scenario: &Scenario) -> Self {
        let situation = scenario.situation();
        Self {
            source: scenario.source(),
            float: situation.float,
            iron: situation.iron,
            air: situation.air,
            heading: scenario.heading().whole_degrees(),
            airspeed: scenario.controls().airspeed(),
            field: situation.field,
        }
    }

    /// The same by another source of the field.
    ///
    /// # Errors
    /// The source gives no field.
    pub(crate) fn at_source(&self, source: FieldSource) -> Result<Self, earth::Error> {
        let field = source.field()?;
        Ok(Self {
            source,
            field,
            ..*self
        })
    }

    /// The first flight's setting.
    ///
    /// # Errors
    /// None is known: the latitude is a constant within its range.
    pub(crate) fn home() -> Result<Self, earth::Error> {
        Self::new(FieldSource::Latitude {
            latitude: HOME_LATITUDE.to_radians(),
        })
    }

    /// The field here.
    pub(crate) fn field(&self) -> MagneticField {
        self.field
    }

    /// Whether the variation here is known, and so true headings are.
    pub(crate) fn has_variation(&self) -> bool {
        matches!(self.source, FieldSource::Place { .. })
    }

    /// The same as a file: a flight that has not begun.
    pub(crate) fn to_file(self) -> ScenarioFile {
        Recorded {
            source: self.source,
            situation: self.situation(),
            air: SeededAir { seed: 0 },
            start: self.start(),
            inputs: &[],
            steps: 0,
        }
        .to_file()
    }

    /// The heading at the start in degrees, and the airspeed in knots.
    pub(crate) fn start(&self) -> Start {
        Start {
            heading_deg: f64::from(self.heading),
            speed_kt: self.airspeed / KNOT,
        }
    }

    /// A heading indicator without a drift of its own; where no latitude is known, the Earth does
    /// not turn it either.
    ///
    /// # Errors
    /// None is known: no drift is within its range.
    pub(crate) fn indicator(&self) -> Result<HeadingIndicator, OutOfRange> {
        HeadingIndicator::agreeing(self.source.latitude().unwrap_or(0.0), 0.0)
    }

    /// The deviation in degrees, east positive, in level flight on magnetic north, east, south and
    /// west; none where nothing is left of the field.
    pub(crate) fn level_deviations(&self) -> [Option<f64>; 4] {
        [0.0, 90.0, 180.0, 270.0].map(|degrees| {
            let heading = MagneticHeading::from_degrees(degrees);
            level_deviation(&self.field, &self.iron, heading).map(f64::to_degrees)
        })
    }

    /// Straight and level at the start, the card at rest, and the controls for it.
    ///
    /// # Errors
    /// A float setting beyond its range.
    pub(crate) fn at_start(&self) -> Result<(Simulation, Controls), OutOfRange> {
        let controls = Controls::level(self.airspeed);
        let heading = MagneticHeading::from_degrees(f64::from(self.heading));
        let aircraft = Aircraft::free(heading, &controls);
        let flight = Simulation::new(self.situation(), aircraft, controls)?;
        Ok((flight, controls))
    }

    /// What the flight takes place in.
    pub(crate) fn situation(&self) -> Situation {
        Situation {
            field: self.field,
            iron: self.iron,
            float: self.float,
            air: self.air,
        }
    }
}
