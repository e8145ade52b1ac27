//! A heading indicator along a flight, set at given times.

use super::identity::DrillError;
use super::task::Aim;
use compass::angle::half_turn;
use compass::heading::MagneticHeading;
use compass::heading_indicator::HeadingIndicator;
use compass::range::OutOfRange;
use compass::simulation::Moment;
use compass::unit::Unit;

/// How an indicator starts.
pub(super) struct Settings {
    pub(super) latitude_deg: f64,
    pub(super) drift_deg_h: f64,
    /// Indication less heading.
    pub(super) error_at_start_deg: f64,
}

impl Settings {
    /// Those of a task, where it has an indicator.
    pub(super) fn of(aim: &Aim, latitude_deg: f64) -> Option<Self> {
        match aim {
            Aim::SetGyro {
                error_at_start_deg,
                drift_deg_h,
                ..
            } => Some(Self {
                latitude_deg,
                drift_deg_h: *drift_deg_h,
                error_at_start_deg: *error_at_start_deg,
            }),
            Aim::RollOut { .. } | Aim::TimedTurn { .. } | Aim::HoldHeading { .. } => None,
        }
    }

    /// The indicator as the flight starts on a heading.
    pub(super) fn at_start(
        &self,
        heading: MagneticHeading,
    ) -> Result<HeadingIndicator, OutOfRange> {
        let drift = self.drift_deg_h * Unit::DegreePerHour.in_si();
        let agreeing = HeadingIndicator::agreeing(self.latitude_deg.to_radians(), drift)?;
        let shown = heading.to_compass(self.error_at_start_deg.to_radians());
        Ok(agreeing.set_to(shown, heading, 0.0))
    }
}

/// What it carried.
pub(super) struct Carried {
    /// Time in seconds, and indication less heading in degrees.
    pub(super) errors: Vec<(f64, f64)>,
    /// Time, and what it was set wrong by, degrees.
    pub(super) set: Vec<(f64, f64)>,
    /// Its own drift and the Earth's rotation together, degrees an hour.
    pub(super) drift_deg_h: f64,
}

/// Follows an indicator over a flight's moments, set by the compass at the first moment that is
/// not before each time.
pub(super) fn indicator(
    settings: &Settings,
    moments: &[Moment],
    set_s: &[f64],
) -> Result<Carried, DrillError> {
    let north = MagneticHeading::from_degrees(0.0);
    let heading = moments.first().map_or(north, |it| it.motion.heading);
    let mut indicator = settings.at_start(heading)?;
    let mut due = set_s.to_vec();
    due.sort_by(f64::total_cmp);
    let mut due = due.into_iter().peekable();
    let mut carried = Carried {
        errors: Vec::with_capacity(moments.len()),
        set: Vec::new(),
        drift_deg_h: (indicator.earth_drift() + indicator.mechanical_drift())
            / Unit::DegreePerHour.in_si(),
    };
    for moment in moments {
        let mut set = false;
        while due.next_if(|it| *it <= moment.time + 1e-9).is_some() {
            set = true;
        }
        if set {
            let reading = moment.reading.compass;
            indicator = indicator.set_to(reading, moment.motion.heading, moment.time);
            let wrong = indicator.error_when_set().to_degrees();
            carried.set.push((moment.time, wrong));
        }
        let error = half_turn(indicator.error(moment.time)).to_degrees();
        carried.errors.push((moment.time, error));
    }
    Ok(carried)
}
