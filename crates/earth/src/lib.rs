//! The Earth's magnetic field at the aircraft.
//!
//! There are three ways to set it, gathered in [`FieldSource`], and each ends in a
//! [`MagneticField`](compass::field::MagneticField):
//!
//! ```text
//! place and date ── wmm ───────┐
//! latitude ──────── dipole ────┼──→ MagneticField → the float
//! dip and H ────────────────────┘
//! ```
//!
//! [`wmm`] gives more than that: the components north, east and down, and how far to trust each.
//! SI units and radians inside; degrees, feet and nanotesla only in the ranges and sentences
//! that people read. [`grid`] surveys the whole Earth, [`contours`] draws lines through a survey,
//! and [`land`] is the outline of the land. The same inputs give the same bits on every platform.
//!
//! Deliberately absent: the fields of rocks, cities and magnetic storms; the height of the geoid
//! (altitudes are above the WGS 84 ellipsoid); models before WMM2025 or after it.
//!
//! ```
//! use compass::unit::FOOT;
//! use earth::{Date, FieldSource, Place};
//!
//! let place = Place::new(51.5_f64.to_radians(), -0.5_f64.to_radians(), 3000.0 * FOOT)?;
//! let source = FieldSource::Place { place, date: Date::parse("2026-05-01")? };
//! let field = source.field()?;
//! assert!((field.dip().to_degrees() - 66.5).abs() < 0.5);
//!
//! let too_late = FieldSource::Place { place, date: Date::parse("2031-01-01")? };
//! assert_eq!(
//!     too_late.field().unwrap_err().to_string(),
//!     "date must be from 2025-01-01 to 2029-12-31, the life of WMM2025, not 2031-01-01"
//! );
//! # Ok::<(), earth::Error>(())
//! ```

pub mod contours;
pub mod date;
pub mod dipole;
mod error;
pub mod grid;
pub mod land;
pub mod place;
mod source;
pub mod wmm;

pub use date::Date;
pub use error::Error;
pub use place::Place;
pub use source::FieldSource;
pub use wmm::{PlaceField, Uncertainty};
