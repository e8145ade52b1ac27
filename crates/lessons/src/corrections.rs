//! Corrections: from true to magnetic to compass and back, line by line, as on paper.
//!
//! Variation and deviation are east positive. Wind is left out: these are headings, not tracks;
//! [`crate::wind`] goes between the two.

use compass::angle::half_turn;
use compass::heading::{CompassHeading, MagneticHeading, TrueHeading};
use compass::range::{OutOfRange, Range};
use compass::unit::Unit;
use std::f64::consts::TAU;
use thiserror::Error;

/// Deviation that a card can hold; chosen: the limit for any heading is 10° (14 CFR
/// 25.1327(b)), and nobody should be taught with more than four times as much.
pub const DEVIATION: Range = Range::new("deviation", Unit::Degree, -40.0, 40.0);

/// A deviation card: the deviation (magnetic − compass, east positive) on headings by compass.
#[derive(Clone, Debug, PartialEq)]
pub struct DeviationCard {
    /// By compass heading, from north round.
    entries: Vec<(CompassHeading, f64)>,
}

/// Why a deviation card cannot be used.
#[derive(Clone, Copy, Debug, PartialEq, Error)]
pub enum CardError {
    /// A deviation is beyond its range.
    #[error(transparent)]
    OutOfRange(#[from] OutOfRange),
    /// There is nothing to interpolate between.
    #[error("a deviation card needs at least four headings, not {0}")]
    TooFew(usize),
    /// One heading stands on it twice.
    #[error("a deviation card names each heading once, but {0:03}° stands on it twice")]
    Twice(u16),
    /// Between two headings the deviation changes by more than the headings do.
    #[error(
        "between {0:03}° and {1:03}° the deviation changes faster than the heading: no compass could be steered by it"
    )]
    TooSteep(u16, u16),
}

impl DeviationCard {
    /// A card from pairs of compass heading and deviation in radians, in any order.
    ///
    /// # Errors
    /// Fewer than four headings, one twice, a deviation beyond [`DEVIATION`], or deviations so
    /// steep that a magnetic heading would have several compass headings.
    pub fn new(mut entries: Vec<(CompassHeading, f64)>) -> Result<Self, CardError> {
        if entries.len() < 4 {
            return Err(CardError::TooFew(entries.len()));
        }
        for (_, deviation) in &entries {
            DEVIATION.check(*deviation)?;
        }
        entries.sort_by(|a, b| a.0.radians().total_cmp(&b.0.radians()));
        let card = Self { entries };
        for ([from, deviation], [to, next]) in card.stretches() {
            let names = [from, to].map(|it| CompassHeading::from_radians(it).whole_degrees());
            // Headings are read to a tenth of a degree at the best.
            if to - from < 1e-3 {
                return Err(CardError::Twice(names[0]));
            }
            if (next - deviation).abs() >= to - from {
                return Err(CardError::TooSteep(names[0], names[1]));
            }
        }
        Ok(card)
    }

    /// A card without deviation.
    pub fn none() -> Self {
        let quarters = [0.0, 90.0, 180.0, 270.0];
        Self {
            entries: quarters
                .map(|it| (CompassHeading::from_degrees(it), 0.0))
                .to_vec(),
        }
    }

    /// The headings and deviations (rad) on it, from north round.
    pub fn entries(&self) -> &[(CompassHeading, f64)] {
        &self.entries
    }

    /// The deviation in radians on a compass heading, in proportion between its neighbours.
    pub fn on(&self, compass: CompassHeading) -> f64 {
        let found = self.stretches().find_map(|([from, here], [to, next])| {
            let along = compass.radians() - from;
            // The last stretch runs over north.
            let along = if along < 0.0 { along + TAU } else { along };
            (along <= to - from).then(|| here + (next - here) * along / (to - from))
        });
        found.unwrap_or(0.0)
    }

    /// The magnetic heading that a compass heading stands for.
    pub fn to_magnetic(&self, compass: CompassHeading) -> MagneticHeading {
        compass.to_magnetic(self.on(compass))
    }

    /// The compass heading to steer for a magnetic heading: exact, since both go round together.
    pub fn to_compass(&self, magnetic: MagneticHeading) -> CompassHeading {
        let found = self.stretches().find_map(|([from, here], [to, next])| {
            let (start, length) = (from + here, to - from + next - here);
            let along = (magnetic.radians() - start).rem_euclid(TAU);
            // On a line of the card rounding may put it just before: within none of them.
            let along = if along > TAU - 1e-9 { 0.0 } else { along };
            (along <= length).then(|| from + (to - from) * along / length)
        });
        CompassHeading::from_radians(found.unwrap_or_else(|| magnetic.radians()))
    }

    /// Neighbours on the card: compass heading and deviation of each, the second heading always
    /// the greater.
    fn stretches(&self) -> impl Iterator<Item = ([f64; 2], [f64; 2])> + '_ {
        let count = self.entries.len();
        (0..count).map(move |index| {
            let (from, here) = self.entries[index];
            let (to, next) = self.entries[(index + 1) % count];
            let over_north = if index + 1 == count { TAU } else { 0.0 };
            ([from.radians(), here], [to.radians() + over_north, next])
        })
    }
}

/// The working of one correction, whichever way it was asked: what stands on the paper.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Working {
    /// True heading.
    pub true_heading: TrueHeading,
    /// Variation in radians, east positive.
    pub variation: f64,
    /// Magnetic heading.
    pub magnetic: MagneticHeading,
    /// Deviation on that compass heading in radians, east positive.
    pub deviation: f64,
    /// Compass heading.
    pub compass: CompassHeading,
}

impl Working {
    /// From a true heading to the compass heading to steer.
    pub fn from_true(true_heading: TrueHeading, variation: f64, card: &DeviationCard) -> Self {
        Self::from_compass(
            card.to_compass(true_heading.to_magnetic(variation)),
            variation,
            card,
        )
    }

    /// From a compass heading to the true heading.
    pub fn from_compass(compass: CompassHeading, variation: f64, card: &DeviationCard) -> Self {
        let deviation = card.on(compass);
        let magnetic = compass.to_magnetic(deviation);
        Self {
            true_heading: magnetic.to_true(variation),
            variation: half_turn(variation),
            magnetic,
            deviation,
            compass,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn card(entries: &[(f64, f64)]) -> Result<DeviationCard, CardError> {
        let entries = entries.iter().map(|(heading, deviation)| {
            let heading = CompassHeading::from_degrees(*heading);
            (heading, deviation.to_radians())
        });
        DeviationCard::new(entries.collect())
    }

    /// Invented, as an aircraft's card might be.
    fn usual() -> DeviationCard {
        card(&[
            (0.0, 2.0),
            (45.0, 1.0),
            (90.0, -3.0),
            (135.0, -4.0),
            (180.0, -1.0),
            (225.0, 0.0),
            (270.0, 3.0),
            (315.0, 4.0),
        ])
        .unwrap()
    }

    #[test]
    fn variation_west_and_deviation_east_by_hand() {
        // Worked by hand. True 075°, variation 10° west: magnetic 085°. Between 045° and 090° the
        // deviation falls from +1° to −3°; compass 087.9° has −2.8° there, and 087.9 − 2.8 = 085.
        let true_heading = TrueHeading::from_degrees(75.0);
        let working = Working::from_true(true_heading, -10_f64.to_radians(), &usual());
        assert!((working.magnetic.degrees() - 85.0).abs() < 1e-9);
        let compass = 45.0 + (85.0 - 46.0) * 45.0 / 41.0;
        assert!((working.compass.degrees() - compass).abs() < 1e-9);
        assert!((working.deviation.to_degrees() - (85.0 - compass)).abs() < 1e-9);
    }

    #[test]
    fn a_card_that_cannot_be_steered_by_is_refused_in_a_sentence() {
        let said = |entries: &[(f64, f64)]| card(entries).unwrap_err().to_string();
        assert_eq!(
            said(&[(0.0, 1.0), (90.0, 1.0)]),
            "a deviation card needs at least four headings, not 2"
        );
        assert_eq!(
            said(&[(0.0, 1.0), (90.0, 1.0), (360.0, 2.0), (180.0, 0.0)]),
            "a deviation card names each heading once, but 360° stands on it twice"
        );
        assert_eq!(
            said(&[(0.0, 1.0), (20.0, -30.0), (180.0, 0.0), (270.0, 0.0)]),
            "between 360° and 020° the deviation changes faster than the heading: no compass \
             could be steered by it"
        );
        assert!(said(&[(0.0, 50.0), (90.0, 0.0), (180.0, 0.0), (270.0, 0.0)]).contains("40°"));
    }

    #[test]
    fn every_line_of_a_card_leads_back_to_itself_however_it_is_added_up() {
        // A card on which neither neighbour of north reaches it by rounding.
        let deviations = [4.0, -3.0, -6.0, -5.0, -4.0, -1.0, 6.0, 9.0];
        let entries: Vec<_> = (0..8)
            .map(|i| 45.0 * f64::from(i))
            .zip(deviations)
            .collect();
        let card = card(&entries).unwrap();
        for (line, deviation) in card.entries() {
            for variation in -40..=40 {
                let variation = f64::from(variation);
                // From whole degrees, so that the sum in radians is a bit more or less.
                let degrees = (line.degrees() + deviation.to_degrees()).round() + variation;
                let true_heading = TrueHeading::from_degrees(degrees);
                let working = Working::from_true(true_heading, variation.to_radians(), &card);
                let off = working.compass.right_of(*line).to_degrees();
                assert!(off.abs() < 1e-7, "{} {variation}: {off}", line.degrees());
            }
        }
    }

    proptest! {
        #[test]
        fn there_and_back_is_where_one_was(
            compass in 0.0..360.0_f64,
            variation in -40.0..40.0_f64,
            deviations in proptest::collection::vec(-10.0..10.0_f64, 8),
        ) {
            let entries: Vec<_> = (0..8).map(|i| 45.0 * f64::from(i)).zip(deviations).collect();
            let card = card(&entries).unwrap();
            let compass = CompassHeading::from_degrees(compass);
            let there = Working::from_compass(compass, variation.to_radians(), &card);
            let back = Working::from_true(there.true_heading, variation.to_radians(), &card);
            prop_assert!(back.compass.right_of(compass).abs() < 1e-9);
            prop_assert!(back.magnetic.right_of(there.magnetic).abs() < 1e-9);
        }

        #[test]
        fn between_two_headings_the_deviation_lies_between_theirs(compass in 0.0..360.0_f64) {
            let deviation = usual().on(CompassHeading::from_degrees(compass)).to_degrees();
            prop_assert!((-4.0..=4.0).contains(&deviation));
        }
    }
}
