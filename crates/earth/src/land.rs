//! The outlines of the world's land, coarse and without names.
//!
//! From Natural Earth's land at 1:110 million (public domain), as packaged in world-atlas; see
//! `crates/earth/data/README.md`. Places are rounded to a minute of arc, 0.93 km at most: far
//! below what a scale of 1:110 million can show.
//!
//! # Layout of the data
//! One outline after another: how many places, then for each the steps in latitude and longitude
//! from the one before (the first from 0, 0) in minutes of arc. Every number is a varint: seven
//! bits to a byte from the lowest up, the eighth bit set on all bytes but the last, signs folded
//! in (0, −1, 1, −2 … are 0, 1, 2, 3 …). The first place is not repeated at the end. Land lies
//! to the right of the way along an outline, so that a lake's runs the other way round.

use compass::angle::half_turn;
use std::f64::consts::{FRAC_PI_2, TAU};

/// The outlines' places, quantised.
const DATA: &[u8] = include_bytes!("../data/land-110m.bin");

/// Quantised places in one degree.
const PER_DEGREE: f64 = 60.0;

/// One closed outline of land, or of a lake within it, land to the right of the way along it.
#[derive(Clone, Debug, PartialEq)]
pub struct Outline {
    places: Vec<(f64, f64)>,
    pole: Option<f64>,
}

impl Outline {
    /// Latitude and longitude in radians, north and east positive, the first place not repeated.
    ///
    /// Longitude runs on without a jump, and so may lie beyond ±π where land crosses the
    /// antimeridian. An outline around a pole ([`Self::pole`]) ends a whole turn from where it
    /// began.
    pub fn places(&self) -> &[(f64, f64)] {
        &self.places
    }

    /// The latitude of the pole that the land within this outline covers, if it does.
    pub fn pole(&self) -> Option<f64> {
        self.pole
    }

    /// The outline with its first place repeated at the end, and led over the pole if it goes
    /// around one: a polygon that closes on an equirectangular map.
    pub fn closed(&self) -> Vec<(f64, f64)> {
        let mut places = self.places.clone();
        let (Some(&first), Some(&last)) = (self.places.first(), self.places.last()) else {
            return places;
        };
        let end = last.1 + half_turn(first.1 - last.1);
        places.push((first.0, end));
        if let Some(pole) = self.pole {
            places.extend([(pole, end), (pole, first.1), first]);
        }
        places
    }

    /// The area within the outline on a sphere of radius 1, negative for a lake. Between two
    /// places the outline is a straight line on an equirectangular map.
    pub fn area(&self) -> f64 {
        let closed = self.closed();
        let sides = closed.iter().zip(closed.iter().skip(1));
        sides.map(|(&from, &to)| under(from, to)).sum()
    }

    fn new(quantised: &[(i32, i32)]) -> Self {
        let radians = |part: i32| (f64::from(part) / PER_DEGREE).to_radians();
        let mut places: Vec<(f64, f64)> = Vec::with_capacity(quantised.len());
        for &(latitude, longitude) in quantised {
            let longitude = match places.last() {
                None => radians(longitude),
                Some(&(_, before)) => before + half_turn(radians(longitude) - before),
            };
            places.push((radians(latitude), longitude));
        }
        let pole = places.first().zip(places.last()).and_then(|(first, last)| {
            let turned = last.1 + half_turn(first.1 - last.1) - first.1;
            // Land lies to the right: south of an outline that goes around eastward.
            (turned.abs() > TAU / 2.0).then_some(-FRAC_PI_2 * turned.signum())
        });
        Self { places, pole }
    }
}

/// All outlines of land and of the lakes within it.
pub fn outlines() -> Vec<Outline> {
    let mut numbers = Numbers { rest: DATA };
    let mut outlines = Vec::with_capacity(128);
    while let Some(count) = numbers.next() {
        let mut at = (0, 0);
        let quantised: Vec<(i32, i32)> = (0..count)
            .map_while(|_| {
                at = (at.0 + numbers.next()?, at.1 + numbers.next()?);
                Some(at)
            })
            .collect();
        outlines.push(Outline::new(&quantised));
    }
    outlines
}

/// The numbers in the data.
struct Numbers {
    rest: &'static [u8],
}

impl Iterator for Numbers {
    type Item = i32;

    fn next(&mut self) -> Option<i32> {
        let mut folded = 0_u32;
        for shift in [0, 7, 14, 21, 28] {
            let (&byte, rest) = self.rest.split_first()?;
            self.rest = rest;
            folded |= u32::from(byte & 0x7F) << shift;
            if byte < 0x80 {
                break;
            }
        }
        Some((folded >> 1).cast_signed() ^ -(folded & 1).cast_signed())
    }
}

/// The area between a side of an outline and the equator: the integral of sin(latitude) over
/// longitude, with sin(latitude) taken as straight along the side.
fn under(from: (f64, f64), to: (f64, f64)) -> f64 {
    let height = |latitude: f64| compass::maths::sin(latitude);
    (height(from.0) + height(to.0)) / 2.0 * (to.1 - from.1)
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::f64::consts::PI;

    fn share_of_the_earth(areas: impl Iterator<Item = f64>) -> f64 {
        areas.sum::<f64>() / (4.0 * PI)
    }

    #[test]
    fn the_data_is_whole() {
        let outlines = outlines();
        assert_eq!(outlines.len(), 126);
        let places: usize = outlines.iter().map(|outline| outline.places().len()).sum();
        assert_eq!(places, 4994, "as many as were converted");
        assert!(outlines.iter().all(|outline| outline.places().len() >= 3));
    }

    #[test]
    fn land_is_as_large_as_it_is() {
        // Land is 148.94 of the Earth's 510.07 million km², 29.2 % (CIA, The World Factbook,
        // "World"). That counts lakes and the ice shelves of Antarctica, which Natural Earth
        // leaves out: the Caspian Sea is 0.07 %, the shelves 1.56 million km² (Rignot et al.
        // 2013, Science 341), 0.31 %. The coarse outlines add a few tenths of doubt.
        let share = share_of_the_earth(outlines().iter().map(Outline::area));
        assert!((share - 0.288).abs() < 0.006, "{share}");
    }

    #[test]
    fn one_outline_goes_around_the_south_pole_and_one_lake_is_cut_out() {
        let outlines = outlines();
        let poles: Vec<f64> = outlines.iter().filter_map(Outline::pole).collect();
        assert_eq!(poles, [-FRAC_PI_2]);
        let lakes = outlines.iter().filter(|outline| outline.area() < 0.0);
        assert_eq!(lakes.count(), 1);
    }

    #[test]
    fn longitude_never_jumps() {
        for outline in outlines() {
            let closed = outline.closed();
            let shore = closed.len() - if outline.pole().is_some() { 3 } else { 0 };
            let steps = closed[..shore].windows(2).map(|two| two[1].1 - two[0].1);
            assert!(steps.map(f64::abs).fold(0.0, f64::max) < 0.5);
        }
    }

    #[test]
    fn places_known_to_be_land_or_sea_are() {
        let outlines = outlines();
        let polygons: Vec<_> = outlines.iter().map(Outline::closed).collect();
        // Crossings of the meridian to the north, east-going less west-going.
        let is_land = |latitude: f64, longitude: f64| {
            let (latitude, longitude) = (latitude.to_radians(), longitude.to_radians());
            [-TAU, 0.0, TAU]
                .iter()
                .flat_map(|turn| polygons.iter().map(move |p| (p, longitude + turn)))
                .map(|(polygon, longitude)| winding(polygon, latitude, longitude))
                .sum::<i32>()
                != 0
        };
        for (latitude, longitude) in [
            (51.0, -1.0),
            (30.0, -95.0),
            (-25.0, 135.0),
            (67.0, -175.0),
            (-89.0, 10.0),
            (-89.0, -170.0),
        ] {
            assert!(is_land(latitude, longitude), "{latitude} {longitude}");
        }
        for (latitude, longitude) in [
            (42.0, 51.0),
            (0.0, -30.0),
            (89.0, 0.0),
            (0.0, 179.9),
            (-50.0, -179.9),
        ] {
            assert!(!is_land(latitude, longitude), "{latitude} {longitude}");
        }
    }

    fn winding(polygon: &[(f64, f64)], latitude: f64, longitude: f64) -> i32 {
        let sides = polygon.iter().zip(polygon.iter().skip(1));
        sides
            .map(|(from, to)| {
                let east = from.1 <= longitude && longitude < to.1;
                let west = to.1 <= longitude && longitude < from.1;
                if !(east || west) {
                    return 0;
                }
                let share = (longitude - from.1) / (to.1 - from.1);
                let north = from.0 + share * (to.0 - from.0) > latitude;
                i32::from(east && north) - i32::from(west && north)
            })
            .sum()
    }
}
