//! What a flight starts from: place, float, iron, air and heading.

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
use compass::unit::KNOT;
use earth::FieldSource;
use flights::Start;

/// Airspeed at the start, in knots; chosen: a light aircraft's cruise.
const AIRSPEED: f64 = 100.0;
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
}

impl FloatChoice {
    /// Every choice once.
    pub(crate) const ALL: [Self; 4] = [
        Self::Standard,
        Self::Brisk,
        Self::Sluggish,
        Self::LightlyDamped,
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
        })
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

    /// The heading at the start in degrees, and the airspeed in knots.
    pub(crate) fn start(&self) -> Start {
        Start {
            heading_deg: f64::from(self.heading),
            speed_kt: AIRSPEED,
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

    /// Straight and level at the start, the card at rest, and the controls for it.
    ///
    /// # Errors
    /// A float setting beyond its range.
    pub(crate) fn at_start(&self) -> Result<(Simulation, Controls), OutOfRange> {
        let controls = Controls::level(AIRSPEED * KNOT);
        let heading = MagneticHeading::from_degrees(f64::from(self.heading));
        let situation = Situation {
            field: self.field,
            iron: self.iron,
            float: self.float,
            air: self.air,
        };
        let flight = Simulation::new(situation, Aircraft::free(heading, &controls), controls)?;
        Ok((flight, controls))
    }
}
