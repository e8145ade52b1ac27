use crate::date::Date;
use crate::dipole;
use crate::error::Error;
use crate::place::Place;
use crate::wmm::PlaceField;
use compass::field::MagneticField;

/// What the Earth's field at the aircraft is set by.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum FieldSource {
    /// A place and a date, by WMM2025.
    Place {
        /// Where.
        place: Place,
        /// When, within the life of the model.
        date: Date,
    },
    /// A latitude alone, by the [`dipole`].
    Latitude {
        /// Radians, north positive.
        latitude: f64,
    },
    /// The field itself, without variation.
    ByHand {
        /// Horizontal intensity in tesla.
        horizontal: f64,
        /// Dip in radians, down positive.
        dip: f64,
    },
}

impl FieldSource {
    /// The field that this sets.
    ///
    /// # Errors
    /// A date outside the model's life, or a value beyond its range.
    pub fn field(self) -> Result<MagneticField, Error> {
        match self {
            Self::Place { place, date } => Ok(PlaceField::at(place, date)?.field()),
            Self::Latitude { latitude } => Ok(dipole::field(latitude)?),
            Self::ByHand { horizontal, dip } => Ok(MagneticField::from_dip(horizontal, dip)?),
        }
    }

    /// The same latitude, or dip, in the other hemisphere.
    #[must_use]
    pub fn other_hemisphere(self) -> Self {
        match self {
            Self::Place { place, date } => {
                match Place::new(-place.latitude(), place.longitude(), place.altitude()) {
                    Ok(place) => Self::Place { place, date },
                    // A latitude's opposite is a latitude.
                    Err(_) => self,
                }
            }
            Self::Latitude { latitude } => Self::Latitude {
                latitude: -latitude,
            },
            Self::ByHand { horizontal, dip } => Self::ByHand {
                horizontal,
                dip: -dip,
            },
        }
    }

    /// The latitude in radians, north positive, where there is one; the rules of thumb need it.
    pub fn latitude(self) -> Option<f64> {
        match self {
            Self::Place { place, .. } => Some(place.latitude()),
            Self::Latitude { latitude } => Some(latitude),
            Self::ByHand { .. } => None,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn by_hand_is_taken_as_it_is_and_has_no_latitude() {
        let by_hand = FieldSource::ByHand {
            horizontal: 20e-6,
            dip: 55_f64.to_radians(),
        };
        let field = by_hand.field().unwrap();
        assert_eq!(field.horizontal(), 20e-6);
        assert!((field.dip().to_degrees() - 55.0).abs() < 1e-12);
        assert_eq!(by_hand.latitude(), None);
    }

    #[test]
    fn the_other_hemisphere_is_the_mirror_and_back() {
        let latitude = FieldSource::Latitude { latitude: 0.7 };
        let mirrored = latitude.other_hemisphere();
        let (one, other) = (latitude.field().unwrap(), mirrored.field().unwrap());
        assert_eq!(one.dip(), -other.dip());
        assert_eq!(mirrored.other_hemisphere(), latitude);
    }

    #[test]
    fn what_is_out_of_range_is_said_in_the_same_words() {
        let refused = FieldSource::Latitude { latitude: 2.0 }.field();
        assert!(refused.unwrap_err().to_string().starts_with("latitude"));
        let refused = FieldSource::ByHand {
            horizontal: f64::NAN,
            dip: 0.0,
        };
        assert!(refused.field().is_err());
    }
}
