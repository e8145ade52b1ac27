//! Readings to shapes to SVG: one drawing for screen, video, print and command line.
//!
//! Every drawing is a pure function from plain data and a size to [`shape::Shape`]s. Colours
//! are roles, resolved by a [`theme::Theme`]; [`svg::Picture`] writes shapes as a standalone
//! document, and a page may paint the same shapes on a canvas. Nothing here knows a clock, a
//! file or a browser, nor any language: words come from the caller.
//!
//! - [`card_face`]: the floating card in its window, the gap scale on which the error is a
//!   length, and the heading ruler, all on one lubber line.
//! - [`rose`]: the same two directions seen from above.
//! - [`bowl_view`]: the bowl, cut away, in three dimensions, with the field and the verticals.
//! - [`torque_ledger`]: the torques about the card's axis, as bars that sum to the net.
//! - [`plan_view`]: the aircraft, its track and both directions from above.
//! - [`heading_dial`]: the heading indicator.
//! - [`strip_chart`]: the flight against time; [`error_chart`]: the error against heading.
//! - [`world_map`]: land, contours and a place, flat or as a globe; [`dipole_earth`]: dip and latitude.
//! - [`roll_out_rose`]: undershoot and overshoot by target; [`deviation_curve`]: a swing;
//!   [`heeling_chart`]: what is left of it in a bank.
//! - [`skill_rose`], [`forgetting_curve`], [`bars`]: how practice goes.
//! - [`mark_scale`]: how far off a flown task ended, against what was allowed; [`turn_chart`]: one turn
//!   flown in several ways.
//! - [`sheet`]: pages for print, with words, tables and pictures.
//! - [`still`]: card, readings, rose and words as one frame, for videos and stills.
//! - [`qr_code`]: a link, for phones to read.
//!
//! ```
//! use compass::frame::{Rotation, Vector};
//! use compass::heading::{CompassHeading, MagneticHeading};
//! use drawing::card_face::{CardFaceView, Words, card_face, describe, level};
//! use drawing::svg::Picture;
//! use drawing::theme::Theme;
//!
//! let reading = CompassHeading::from_degrees(344.0);
//! let view = CardFaceView {
//!     attitude: level(reading),
//!     heading: MagneticHeading::from_degrees(7.0),
//!     reading,
//!     apparent_vertical: Vector::z_axis(),
//!     at_stop: false,
//!     show_reference: true,
//!     show_compass: true,
//!     words: Words { error: Some("lags 23°"), ..Words::default() },
//! };
//! let size = kurbo::Size::new(1200.0, 520.0);
//! assert_eq!(describe(&view).difference, Some(-23));
//! let svg = Picture {
//!     size,
//!     shapes: &card_face(&view, size),
//!     theme: &Theme::day(),
//!     id: "card",
//!     title: "Compass card",
//!     description: "Heading 007°, compass 344°: the compass lags by 23°.",
//!     ground: true,
//! }
//! .to_svg();
//! assert!(svg.starts_with("<svg"));
//! ```

pub mod bars;
mod bowl;
pub mod bowl_view;
pub mod card_face;
pub mod chart;
pub mod deviation_curve;
pub mod dipole_earth;
mod drum;
pub mod error_chart;
pub mod figures;
pub mod forgetting_curve;
pub mod heading_dial;
pub mod heeling_chart;
mod labels;
pub mod layout;
mod lettering;
pub mod mark_scale;
mod outline;
pub mod plan_view;
pub mod qr_code;
pub mod roll_out_rose;
pub mod rose;
mod round;
mod scales;
pub mod shape;
pub mod sheet;
pub mod skill_rose;
pub mod stage3d;
pub mod still;
pub mod strip_chart;
pub mod svg;
pub mod theme;
pub mod torque_ledger;
pub mod turn_chart;
pub mod world_map;
