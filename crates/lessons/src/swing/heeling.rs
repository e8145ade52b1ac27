//! Heeling error: what the iron does when the aircraft is banked.

use super::Ramp;
use compass::angle::half_turn;
use compass::deviation::AircraftIron;
use compass::heading::MagneticHeading;
use compass::motion::{Kinematics, Motion, coordinated_rate_of_turn};
use compass::steady::{square_card_intensity, square_card_with_iron};
use compass::unit::KNOT;

/// How an aircraft is banked.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Banked {
    /// In a coordinated turn: the card banks with the airframe.
    #[default]
    InATurn,
    /// Straight on with a wing down: the card stays level.
    WingDown,
}

impl Banked {
    /// Attitude and accelerations; the airspeed does not matter to where a card stands square.
    fn flown(self, heading: MagneticHeading, bank: f64) -> Kinematics {
        let airspeed = 100.0 * KNOT;
        Kinematics {
            heading: heading.radians(),
            pitch: 0.0,
            bank,
            airspeed,
            rate_of_turn: match self {
                Self::InATurn => coordinated_rate_of_turn(bank, airspeed),
                Self::WingDown => 0.0,
            },
            pitch_rate: 0.0,
            bank_rate: 0.0,
            airspeed_rate: 0.0,
        }
    }
}

/// The part of the horizontal intensity that must lie in a banked card's plane; chosen: with less,
/// iron turns the card more than four times as far as level, and near 90° less the dip right
/// round, which says more of the turn than of the iron.
pub const STEERS: f64 = 0.25;

impl Ramp {
    /// The deviation on a heading while banked (rad, right positive): what the iron adds to the
    /// error of a card square to the apparent vertical, so that the error of the turn itself is
    /// left out. None where either card has no direction, and where less of the Earth's field
    /// steers the card than [`STEERS`] of what does level.
    pub fn deviation_in_bank(
        &self,
        heading: MagneticHeading,
        bank: f64,
        banked: Banked,
    ) -> Option<f64> {
        let motion = Motion::of(&banked.flown(heading, bank));
        let steers = square_card_intensity(&self.field, &motion);
        if steers < STEERS * self.field.horizontal() {
            return None;
        }
        let [without, with] = [AircraftIron::NONE, self.iron()]
            .map(|iron| square_card_with_iron(&self.field, &iron, &motion));
        Some(half_turn(without?.radians() - with?.radians()))
    }
}
