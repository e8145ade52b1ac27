//! Free flight: the pilot's controls move a light aircraft.
//!
//! Bank, airspeed and pitch each follow their command the same way: the rate of change heads for
//! (command − value) × gain, no faster than a limit, and takes a short lag to get there, so that
//! every roll-in and speed change begins and ends smoothly.

use crate::heading::MagneticHeading;
use crate::maths;
use crate::motion::Kinematics;
use crate::range::Range;
use crate::unit::{KNOT, STANDARD_GRAVITY, Unit};

/// Bank that the pilot can command, right positive.
pub const BANK_COMMAND: Range = Range::new("bank", Unit::Degree, -60.0, 60.0);
/// Airspeed that the pilot can command by the throttle; chosen for light aircraft.
pub const AIRSPEED_COMMAND: Range = Range::new("airspeed", Unit::Knot, 60.0, 250.0);
/// Climb or descent angle that the pilot can command; chosen.
pub const PITCH_COMMAND: Range = Range::new("climb angle", Unit::Degree, -10.0, 10.0);
/// Rudder: −1 full left, 1 full right.
pub const RUDDER: Range = Range::new("rudder", Unit::Number, -1.0, 1.0);

/// Below this airspeed (m/s) the model does not go, however it is flown; chosen, as it has no
/// stall.
const SLOWEST: f64 = 40.0 * KNOT;

/// What the pilot asks for. Always within the ranges of this module.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Controls {
    bank: f64,
    airspeed: f64,
    pitch: f64,
    rudder: f64,
}

impl Controls {
    /// Straight and level at `airspeed` m/s, or the nearest allowed.
    pub fn level(airspeed: f64) -> Self {
        Self {
            bank: 0.0,
            airspeed: nearest(AIRSPEED_COMMAND, airspeed, AIRSPEED_COMMAND.least * KNOT),
            pitch: 0.0,
            rudder: 0.0,
        }
    }

    /// Commanded bank in radians, right positive.
    pub fn bank(&self) -> f64 {
        self.bank
    }

    /// The airspeed, m/s, at which the throttle's thrust balances the drag in level flight.
    pub fn airspeed(&self) -> f64 {
        self.airspeed
    }

    /// Commanded climb angle in radians, up positive.
    pub fn pitch(&self) -> f64 {
        self.pitch
    }

    /// Rudder, −1 full left to 1 full right, beyond what co-ordinates the turn.
    pub fn rudder(&self) -> f64 {
        self.rudder
    }

    /// With another bank (radians, right positive), or the nearest allowed.
    #[must_use]
    pub fn with_bank(self, bank: f64) -> Self {
        Self {
            bank: nearest(BANK_COMMAND, bank, self.bank),
            ..self
        }
    }

    /// With another airspeed (m/s), or the nearest allowed.
    #[must_use]
    pub fn with_airspeed(self, airspeed: f64) -> Self {
        Self {
            airspeed: nearest(AIRSPEED_COMMAND, airspeed, self.airspeed),
            ..self
        }
    }

    /// With another climb angle (radians, up positive), or the nearest allowed.
    #[must_use]
    pub fn with_pitch(self, pitch: f64) -> Self {
        Self {
            pitch: nearest(PITCH_COMMAND, pitch, self.pitch),
            ..self
        }
    }

    /// With another rudder (−1 to 1), or the nearest allowed.
    #[must_use]
    pub fn with_rudder(self, rudder: f64) -> Self {
        Self {
            rudder: nearest(RUDDER, rudder, self.rudder),
            ..self
        }
    }
}

/// The allowed value nearest to `si`; `otherwise` when that is not a number.
fn nearest(range: Range, si: f64, otherwise: f64) -> f64 {
    if si.is_nan() {
        return otherwise;
    }
    let unit = range.unit.in_si();
    si.clamp(range.least * unit, range.most * unit)
}

/// How one quantity follows its command.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Response {
    /// Rate of change per unit of what is missing, 1/s: the inverse of the time constant.
    pub gain: f64,
    /// The greatest rate of change, per second.
    pub limit: f64,
    /// Seconds that the rate lags behind. Below a quarter of 1/gain nothing overshoots.
    pub lag: f64,
}

impl Response {
    fn acceleration(&self, value: f64, rate: f64, command: f64, disturbance: f64) -> f64 {
        let wanted = (self.gain * (command - value)).clamp(-self.limit, self.limit);
        (wanted + disturbance - rate) / self.lag
    }
}

/// How an aircraft answers its controls.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Handling {
    /// Roll: gain 1/s, limit rad/s, lag s.
    pub roll: Response,
    /// Throttle against drag: gain 1/s, limit m/s², lag s.
    pub throttle: Response,
    /// Pitch: gain 1/s, limit rad/s, lag s.
    pub pitch: Response,
    /// Seconds in which the pilot's power makes up for a climb or descent; until then speed is
    /// traded for height.
    pub power_follows_climb: f64,
    /// Sideways acceleration at full rudder, m/s².
    pub rudder_acceleration: f64,
}

impl Default for Handling {
    /// A light aircraft, every value chosen: rolls at up to 15° a second and settles on a bank in
    /// about a second; gains or loses at most 0.1 g and closes on a speed with a time constant
    /// of 5 s; pitches at up to 3° a second; full rudder tips the ball by about 9°.
    fn default() -> Self {
        Self {
            roll: Response {
                gain: 1.2,
                limit: 15.0_f64.to_radians(),
                lag: 0.15,
            },
            throttle: Response {
                gain: 0.2,
                limit: 0.1 * STANDARD_GRAVITY,
                lag: 1.0,
            },
            pitch: Response {
                gain: 0.8,
                limit: 3.0_f64.to_radians(),
                lag: 0.25,
            },
            power_follows_climb: 6.0,
            rudder_acceleration: 1.5,
        }
    }
}

/// The aircraft's state in free flight.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FreeFlight {
    handling: Handling,
    state: State,
}

/// heading, bank, bank rate, airspeed, thrust less drag per mass, pitch, pitch rate, and the sine
/// of the climb angle that the power holds.
type State = [f64; 8];
const HEADING: usize = 0;
const BANK: usize = 1;
const BANK_RATE: usize = 2;
const AIRSPEED: usize = 3;
const THRUST: usize = 4;
const PITCH: usize = 5;
const PITCH_RATE: usize = 6;
const POWERED_CLIMB: usize = 7;

impl FreeFlight {
    /// Straight and level on `heading` radians at the controls' airspeed.
    pub fn level(handling: Handling, heading: f64, controls: &Controls) -> Self {
        let mut state = [0.0; 8];
        state[HEADING] = heading;
        state[AIRSPEED] = controls.airspeed;
        Self { handling, state }
    }

    /// Under way as an aircraft that moves so.
    pub fn under_way(handling: Handling, kinematics: &Kinematics) -> Self {
        let mut state = [0.0; 8];
        state[HEADING] = kinematics.heading;
        state[BANK] = kinematics.bank;
        state[BANK_RATE] = kinematics.bank_rate;
        state[AIRSPEED] = kinematics.airspeed;
        state[THRUST] = kinematics.airspeed_rate;
        state[PITCH] = kinematics.pitch;
        state[PITCH_RATE] = kinematics.pitch_rate;
        // Power holds what climb there is.
        state[POWERED_CLIMB] = maths::sin(kinematics.pitch);
        Self { handling, state }
    }

    /// Flies on for `duration` seconds with the controls held, by one classical Runge-Kutta step.
    /// `roll_gust` is the rolling velocity of the air in rad/s.
    pub fn advance(&mut self, controls: &Controls, roll_gust: f64, duration: f64) {
        let slope = |state: &State| self.slope(state, controls, roll_gust);
        let moved =
            |by: &State, h: f64| -> State { std::array::from_fn(|i| self.state[i] + h * by[i]) };
        let k1 = slope(&self.state);
        let k2 = slope(&moved(&k1, duration / 2.0));
        let k3 = slope(&moved(&k2, duration / 2.0));
        let k4 = slope(&moved(&k3, duration));
        self.state = std::array::from_fn(|i| {
            self.state[i] + duration / 6.0 * (k1[i] + 2.0 * (k2[i] + k3[i]) + k4[i])
        });
        self.state[AIRSPEED] = self.state[AIRSPEED].max(SLOWEST);
    }

    /// Magnetic heading now.
    pub fn heading(&self) -> MagneticHeading {
        MagneticHeading::from_radians(self.state[HEADING])
    }

    /// Airspeed now, m/s.
    pub fn airspeed(&self) -> f64 {
        self.state[AIRSPEED]
    }

    /// Attitude, airspeed and their rates now, with the controls held.
    pub fn kinematics(&self, controls: &Controls) -> Kinematics {
        let slope = self.slope(&self.state, controls, 0.0);
        Kinematics {
            heading: self.state[HEADING],
            pitch: self.state[PITCH],
            bank: self.state[BANK],
            airspeed: self.state[AIRSPEED],
            rate_of_turn: slope[HEADING],
            pitch_rate: self.state[PITCH_RATE],
            bank_rate: self.state[BANK_RATE],
            airspeed_rate: slope[AIRSPEED],
        }
    }

    fn slope(&self, s: &State, controls: &Controls, roll_gust: f64) -> State {
        let handling = &self.handling;
        let airspeed = s[AIRSPEED].max(SLOWEST);
        let (sin_pitch, cos_pitch) = maths::sin_cos(s[PITCH]);
        let sideways =
            STANDARD_GRAVITY * maths::tan(s[BANK]) + handling.rudder_acceleration * controls.rudder;
        let mut slope = [0.0; 8];
        slope[HEADING] = sideways / (airspeed * cos_pitch);
        slope[BANK] = s[BANK_RATE];
        slope[BANK_RATE] =
            handling
                .roll
                .acceleration(s[BANK], s[BANK_RATE], controls.bank, roll_gust);
        slope[AIRSPEED] = s[THRUST] - STANDARD_GRAVITY * (sin_pitch - s[POWERED_CLIMB]);
        slope[THRUST] =
            handling
                .throttle
                .acceleration(s[AIRSPEED], s[THRUST], controls.airspeed, 0.0);
        slope[PITCH] = s[PITCH_RATE];
        slope[PITCH_RATE] =
            handling
                .pitch
                .acceleration(s[PITCH], s[PITCH_RATE], controls.pitch, 0.0);
        slope[POWERED_CLIMB] = (sin_pitch - s[POWERED_CLIMB]) / handling.power_follows_climb;
        slope
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn flown(controls: Controls, seconds: f64) -> Kinematics {
        let mut flight = FreeFlight::level(Handling::default(), 0.0, &Controls::level(50.0));
        let h = 0.01;
        for _ in 0..(seconds / h) as u32 {
            flight.advance(&controls, 0.0, h);
        }
        flight.kinematics(&controls)
    }

    #[test]
    fn bank_and_speed_settle_on_the_command_without_overshoot() {
        let controls = Controls::level(60.0).with_bank(0.4);
        let mut flight = FreeFlight::level(Handling::default(), 0.0, &Controls::level(50.0));
        for _ in 0..12_000 {
            flight.advance(&controls, 0.0, 0.01);
            let now = flight.kinematics(&controls);
            assert!(now.bank <= 0.4 + 1e-9 && now.airspeed <= 60.0 + 1e-9);
            assert!(now.airspeed_rate <= 0.1 * STANDARD_GRAVITY + 1e-9);
        }
        let settled = flight.kinematics(&controls);
        assert!((settled.bank - 0.4).abs() < 1e-6 && (settled.airspeed - 60.0).abs() < 1e-4);
    }

    #[test]
    fn an_abrupt_climb_costs_speed_and_power_brings_it_back() {
        let climb = Controls::level(50.0).with_pitch(0.1);
        let (soon, late) = (flown(climb, 6.0), flown(climb, 90.0));
        assert!(soon.airspeed < 49.0, "{}", soon.airspeed);
        assert!((late.airspeed - 50.0).abs() < 0.05);
    }

    #[test]
    fn rudder_skids_the_turn() {
        let kicked = flown(Controls::level(50.0).with_rudder(1.0), 1.0);
        assert!(kicked.rate_of_turn > 0.0 && kicked.bank == 0.0);
    }

    #[test]
    fn a_command_beyond_its_range_becomes_the_nearest() {
        assert_eq!(Controls::level(0.0).airspeed(), 60.0 * KNOT);
        let banked = Controls::level(50.0).with_bank(-9.0);
        assert_eq!(banked.bank(), -60.0_f64.to_radians());
        assert_eq!(
            banked.with_bank(f64::NAN),
            banked,
            "no number changes nothing"
        );
    }
}
