//! The floating magnetic compass of an aircraft: the physics alone, without input or output,
//! clock or randomness.
//!
//! # Axes, signs, units
//! Earth axes are north-east-down, x toward magnetic north. Body axes are x forward, y right,
//! z down; the bowl is fixed to the airframe and has the same. Card axes are x through the north
//! mark, z down ([`frame`]). Heading is clockwise from north in [0, 2π); bank and rate of turn
//! are positive right, pitch positive nose up, dip and vertical intensity positive down,
//! variation and deviation positive east. Everything is SI and radians ([`unit`]).
//!
//! # Data flow
//! Pilot's inputs ([`free_flight`], [`legs`]) → [`aircraft`] → [`motion`] → [`compass_float`] →
//! [`reading`] → [`record`]. The [`field`], the [`deviation`] by iron and the [`gust`]s feed the
//! float. [`steady`] is the independent route: closed forms without any float.
//!
//! # Example
//! A right turn through north at 15° of bank where the dip is 65°:
//!
//! ```
//! use compass::{
//!     aircraft::Aircraft,
//!     deviation::AircraftIron,
//!     field::MagneticField,
//!     float_settings::FloatSettings,
//!     free_flight::Controls,
//!     gust::{GustNumbers, RoughAir, StillAir},
//!     heading::MagneticHeading,
//!     reading::Difference,
//!     simulation::{STEPS_PER_SECOND, Simulation, Situation},
//! };
//!
//! let situation = Situation {
//!     field: MagneticField::from_dip(20e-6, 65_f64.to_radians())?,
//!     iron: AircraftIron::NONE,
//!     float: FloatSettings::default(),
//!     air: RoughAir::Still,
//! };
//! let controls = Controls::level(50.0).with_bank(15_f64.to_radians());
//! let aircraft = Aircraft::free(MagneticHeading::from_degrees(320.0), &controls);
//! let mut flight = Simulation::new(situation, aircraft, controls)?;
//! for step in 0..15 * STEPS_PER_SECOND {
//!     flight.step(&controls, StillAir.at(step));
//! }
//! assert!(matches!(flight.difference(), Difference::Lags(_)));
//! # Ok::<(), compass::range::OutOfRange>(())
//! ```

pub mod aircraft;
pub mod angle;
pub mod cause;
pub mod compass_float;
pub mod deviation;
pub mod field;
pub mod float_settings;
pub mod frame;
pub mod free_flight;
pub mod gust;
pub mod heading;
pub mod heading_indicator;
pub mod legs;
pub mod maths;
pub mod motion;
pub mod range;
pub mod reading;
pub mod record;
pub mod rule_of_thumb;
pub mod simulation;
pub mod steady;
pub mod unit;
