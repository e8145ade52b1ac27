//! The compass swing: an aircraft with hidden iron on the ramp, two adjusters, and a curve.
//!
//! A training aid. A real swing is the work of licensed people by the aircraft's maintenance data
//! and the rules of the local authority.

mod heeling;

pub use heeling::{Banked, STEERS};

use crate::corrections::DeviationCard;
use compass::deviation::{AircraftIron, Coefficients, DeviationError, eight_points};
use compass::field::MagneticField;
use compass::heading::{CompassHeading, MagneticHeading};
use compass::range::{OutOfRange, Range};
use compass::steady::level_deviation;
use compass::unit::{NANOTESLA, Unit};
use rand_core::Rng;
use rand_pcg::Pcg32;

/// What one adjuster can add to the field; chosen: it takes away some 15° of deviation where the
/// horizontal intensity is 20 000 nT.
pub const ADJUSTER: Range = Range::new("adjuster", Unit::Nanotesla, -6000.0, 6000.0);

/// The greatest deviation allowed on any heading in level flight, rad: 10°.
///
/// Source: 14 CFR 25.1327(b); 23.1327 before it was replaced.
pub const LIMIT: f64 = 10.0 * std::f64::consts::PI / 180.0;

/// PCG's stream for hidden iron; chosen, so that other uses of a seed can have streams of their
/// own.
const STREAM: u64 = 0x6972_6f6e;

/// The greatest part of the hidden hard iron along each axis, T; chosen: together some ten to
/// fifteen degrees at mid-latitudes, within what the adjusters take away.
const HIDDEN_HARD: f64 = 4000.0 * NANOTESLA;
/// The greatest element of the hidden soft iron; chosen: one to two degrees, which no adjuster
/// takes away.
const HIDDEN_SOFT: f64 = 0.03;

/// The greatest part along each axis of what radios and lights add while they are on, T; chosen: a
/// degree or two where the horizontal intensity is 20 000 nT, enough to be seen in a swing.
const HIDDEN_ELECTRIC: f64 = 700.0 * NANOTESLA;

/// Where the two adjusters stand: small magnets beside the card.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Adjusters {
    /// Field added to the right, T: it is seen on north and south.
    pub north_south: f64,
    /// Field added forward, T: it is seen on east and west.
    pub east_west: f64,
}

/// An aircraft on the ramp, level, to be turned to any heading.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Ramp {
    field: MagneticField,
    iron: [[f64; 3]; 4],
    /// What radios and lights add to the hard iron while they are on, T.
    electric: [f64; 3],
    electric_on: bool,
    adjusters: Adjusters,
}

/// A cardinal heading of the swing, and what is done on it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Adjustment {
    /// The magnetic heading, set by an outside reference.
    pub heading: MagneticHeading,
    /// The deviation found there, rad.
    pub found: f64,
    /// The deviation left there, rad: none on the first two, half on the others.
    pub left: f64,
    /// Where the adjusters then stand.
    pub adjusters: Adjusters,
}

impl Ramp {
    /// An aircraft with known iron, in a field.
    ///
    /// # Errors
    /// A part of the iron beyond [`compass::deviation::HARD_IRON`] or
    /// [`compass::deviation::SOFT_IRON`].
    pub fn new(
        field: MagneticField,
        hard: [f64; 3],
        soft: [[f64; 3]; 3],
    ) -> Result<Self, OutOfRange> {
        AircraftIron::new(hard, soft)?;
        let [a, b, c] = soft;
        Ok(Self {
            field,
            iron: [hard, a, b, c],
            electric: [0.0; 3],
            electric_on: false,
            adjusters: Adjusters::default(),
        })
    }

    /// The same aircraft with known iron in place of its own; its radios and lights stay.
    ///
    /// # Errors
    /// As [`Ramp::new`].
    pub fn with_iron(self, hard: [f64; 3], soft: [[f64; 3]; 3]) -> Result<Self, OutOfRange> {
        let iron = Self::new(self.field, hard, soft)?.iron;
        Ok(Self { iron, ..self })
    }

    /// An aircraft whose iron nobody has seen: the same seed hides the same.
    pub fn hidden(field: MagneticField, seed: u64) -> Self {
        let mut generator = Pcg32::new(seed, STREAM);
        let mut upto = |most: f64| {
            let fraction = (f64::from(generator.next_u32()) + 0.5) / 4_294_967_296.0;
            most * (2.0 * fraction - 1.0)
        };
        let mut iron = [[0.0; 3]; 4];
        for (index, row) in iron.iter_mut().enumerate() {
            let most = if index == 0 { HIDDEN_HARD } else { HIDDEN_SOFT };
            *row = std::array::from_fn(|_| upto(most));
        }
        let electric = std::array::from_fn(|_| upto(HIDDEN_ELECTRIC));
        Self {
            field,
            iron,
            electric,
            electric_on: false,
            adjusters: Adjusters::default(),
        }
    }

    /// With radios and lights on or off. Off when an aircraft comes to the ramp; on, they add to
    /// the hard iron of one whose iron is hidden.
    #[must_use]
    pub fn with_radios_and_lights(self, electric_on: bool) -> Self {
        Self {
            electric_on,
            ..self
        }
    }

    /// Where the adjusters stand.
    pub fn adjusters(&self) -> Adjusters {
        self.adjusters
    }

    /// Sets the adjusters, each as far as it goes.
    #[must_use]
    pub fn with_adjusters(self, adjusters: Adjusters) -> Self {
        let most = ADJUSTER.most * NANOTESLA;
        let within = |it: f64| {
            if it.is_nan() {
                0.0
            } else {
                it.clamp(-most, most)
            }
        };
        Self {
            adjusters: Adjusters {
                north_south: within(adjusters.north_south),
                east_west: within(adjusters.east_west),
            },
            ..self
        }
    }

    /// The aircraft's iron, the adjusters with it: what is flown with.
    pub fn iron(&self) -> AircraftIron {
        let [hard, a, b, c] = self.iron;
        let Adjusters {
            north_south,
            east_west,
        } = self.adjusters;
        let on = if self.electric_on { 1.0 } else { 0.0 };
        let electric = self.electric.map(|part| on * part);
        let hard = [
            hard[0] + east_west + electric[0],
            hard[1] + north_south + electric[1],
            hard[2] + electric[2],
        ];
        // Checked apart, and small together.
        AircraftIron::new(hard, [a, b, c]).unwrap_or(AircraftIron::NONE)
    }

    /// The deviation (magnetic − compass, rad, east positive) on a magnetic heading; none where
    /// the iron leaves the card no direction.
    pub fn deviation(&self, heading: MagneticHeading) -> Option<f64> {
        level_deviation(&self.field, &self.iron(), heading)
    }

    /// What the compass reads on a magnetic heading.
    pub fn reading(&self, heading: MagneticHeading) -> Option<CompassHeading> {
        Some(heading.to_compass(-self.deviation(heading)?))
    }

    /// The swing of adjustment: all of the error away on north and on east, half of what is
    /// found on south and on west. Gives what was done, and the ramp afterwards.
    ///
    /// Source: the usual procedure of maintenance manuals, as in US Army TM 1-1500-204-23-4,
    /// ch. 4; the half on the opposite heading is common practice.
    pub fn adjusted(self) -> (Self, [Adjustment; 4]) {
        let mut ramp = self;
        let done = [(0.0, 0.0), (90.0, 0.0), (180.0, 0.5), (270.0, 0.5)].map(|(degrees, keep)| {
            let heading = MagneticHeading::from_degrees(degrees);
            let found = ramp.deviation(heading).unwrap_or(0.0);
            ramp = ramp.brought_to(heading, keep * found);
            Adjustment {
                heading,
                found,
                left: ramp.deviation(heading).unwrap_or(0.0),
                adjusters: ramp.adjusters,
            }
        });
        (ramp, done)
    }

    /// Turns the adjuster that acts on this cardinal heading until the deviation there is
    /// `wanted`, as far as it goes. Between two positions of the adjuster the deviation changes
    /// steadily, so halving finds the one.
    #[must_use]
    pub fn brought_to(self, heading: MagneticHeading, wanted: f64) -> Self {
        let on_north_south = {
            let eighth = (heading.degrees() / 45.0).floor() as i32;
            matches!(eighth, 0 | 3 | 4 | 7)
        };
        let at = |position: f64| {
            let adjusters = if on_north_south {
                Adjusters {
                    north_south: position,
                    ..self.adjusters
                }
            } else {
                Adjusters {
                    east_west: position,
                    ..self.adjusters
                }
            };
            self.with_adjusters(adjusters)
        };
        let over = |ramp: &Self| ramp.deviation(heading).unwrap_or(0.0) - wanted;
        let most = ADJUSTER.most * NANOTESLA;
        let (mut low, mut high) = (-most, most);
        let rises = over(&at(high)) > over(&at(low));
        for _ in 0..60 {
            let middle = 0.5 * (low + high);
            if (over(&at(middle)) < 0.0) == rises {
                low = middle;
            } else {
                high = middle;
            }
        }
        at(0.5 * (low + high))
    }

    /// The swing of record: the deviation on headings by compass, `every` degrees apart by the
    /// outside reference.
    pub fn swing(&self, every: u16) -> Vec<(CompassHeading, f64)> {
        (0..360)
            .step_by(usize::from(every.max(1)))
            .filter_map(|degrees| {
                let heading = MagneticHeading::from_degrees(f64::from(degrees));
                let deviation = self.deviation(heading)?;
                Some((heading.to_compass(-deviation), deviation))
            })
            .collect()
    }
}

/// The coefficients of a swing by least squares, and the greatest residual, rad.
///
/// # Errors
/// A swing of too few headings.
pub fn fitted(swing: &[(CompassHeading, f64)]) -> Result<(Coefficients, f64), DeviationError> {
    let coefficients = Coefficients::from_least_squares(swing)?;
    let residual = greatest(&residuals(swing, &coefficients));
    Ok((coefficients, residual))
}

/// The coefficients by the handbook's means, from the deviations on the eight points by compass:
/// in proportion between the headings that were swung.
pub fn by_means(card: &DeviationCard) -> Coefficients {
    Coefficients::from_eight_points(eight_points().map(|point| card.on(point)))
}

/// What a swing has over coefficients, heading by heading, rad.
pub fn residuals(
    swing: &[(CompassHeading, f64)],
    coefficients: &Coefficients,
) -> Vec<(CompassHeading, f64)> {
    let over = |(heading, deviation): &(CompassHeading, f64)| {
        (*heading, deviation - coefficients.on(*heading))
    };
    swing.iter().map(over).collect()
}

/// The greatest deviation of a swing, rad: to be held against [`LIMIT`].
pub fn greatest(swing: &[(CompassHeading, f64)]) -> f64 {
    (swing.iter()).fold(0.0, |most, (_, deviation)| most.max(deviation.abs()))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn means_and_least_squares_agree_on_an_adjusted_compass() {
        let field = MagneticField::new(20e-6, 40e-6, 0.0).unwrap();
        for (seed, every) in (0..50).zip([30, 45].into_iter().cycle()) {
            let swing = Ramp::hidden(field, seed).adjusted().0.swing(every);
            let (fit, _) = fitted(&swing).unwrap();
            let card = DeviationCard::new(swing.clone()).unwrap();
            let means = by_means(&card);
            // Straight lines between headings 30° apart cut off up to a thirtieth of a sine
            // (1 − cos 15°) and an eighth of one of twice the heading (1 − cos 30°); all is
            // within a few degrees after the adjustment.
            for (mean, least) in [
                (means.a, fit.a),
                (means.b, fit.b),
                (means.c, fit.c),
                (means.d, fit.d),
                (means.e, fit.e),
            ] {
                assert!(
                    (mean - least).to_degrees().abs() < 0.4,
                    "{seed}: {means:?} {fit:?}"
                );
            }
            let left = residuals(&swing, &fit);
            let sum: f64 = left.iter().map(|(_, residual)| residual).sum();
            assert!(sum.abs() < 1e-9);
        }
    }

    #[test]
    fn radios_and_lights_are_seen_while_they_are_on() {
        let field = MagneticField::new(20e-6, 40e-6, 0.0).unwrap();
        for seed in 0..50 {
            let off = Ramp::hidden(field, seed);
            let on = off.with_radios_and_lights(true);
            let changed = |degrees: f64| {
                let heading = MagneticHeading::from_degrees(degrees);
                (on.deviation(heading).unwrap() - off.deviation(heading).unwrap()).abs()
            };
            // Two parts of 700 nT at once, 990 nT, across what hidden iron leaves of 20 000 nT,
            // some 14 000 nT: 4°.
            let most = [0.0, 90.0, 180.0, 270.0].map(changed).into_iter();
            let most = most.fold(0.0, f64::max).to_degrees();
            assert!(most > 0.01 && most < 4.0, "{seed}: {most}");
            assert_eq!(on.with_radios_and_lights(false), off);
        }
    }
}
