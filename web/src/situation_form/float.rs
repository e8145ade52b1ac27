//! The float, number by number, each in the unit in which people read it.

use super::entry::{Entry, Fault, number, parse, typed};
use crate::setting::FloatChoice;
use compass::float_settings::{
    BALANCE, DAMPING_RATIO, FRICTION_ANGLE, FloatSettings, INERTIA_RATIO, LEVEL_TILT,
    LIQUID_SPIN_UP, REFERENCE, VIBRATION, YAW_PERIOD,
};
use compass::range::Range;

/// A number of the float, in the order of the form.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum FloatEntry {
    /// Undamped yaw period.
    YawPeriod,
    /// Damping ratio of yaw.
    YawDamping,
    /// Tilt in level flight in the reference field.
    LevelTilt,
    /// Damping ratio of tilt.
    TiltDamping,
    /// Transverse over polar moment of inertia.
    InertiaRatio,
    /// Time in which the liquid takes up the bowl's turning.
    LiquidSpinUp,
    /// Vertical intensity in which the balance weight levels the card.
    Balance,
    /// Angle at which the pivot's friction holds the card.
    Friction,
    /// How much of it vibration takes away.
    Vibration,
    /// Horizontal intensity that period and damping hold in.
    ReferenceHorizontal,
    /// Vertical intensity that the tilt holds in.
    ReferenceVertical,
}

/// Where a number of the float comes from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Mark {
    /// Chosen, as no published figure was found.
    Chosen,
    /// Agrees with what training texts give.
    CommonPractice,
    /// Made from a standard's bound.
    Standard,
    /// The user's own.
    Own,
}

impl FloatEntry {
    /// Every number once.
    pub(crate) const ALL: [Self; 11] = [
        Self::YawPeriod,
        Self::YawDamping,
        Self::LevelTilt,
        Self::TiltDamping,
        Self::InertiaRatio,
        Self::LiquidSpinUp,
        Self::Balance,
        Self::Friction,
        Self::Vibration,
        Self::ReferenceHorizontal,
        Self::ReferenceVertical,
    ];

    /// The values that it may take.
    pub(crate) fn range(self) -> Range {
        match self {
            Self::YawPeriod => YAW_PERIOD,
            Self::YawDamping | Self::TiltDamping => DAMPING_RATIO,
            Self::LevelTilt => LEVEL_TILT,
            Self::InertiaRatio => INERTIA_RATIO,
            Self::LiquidSpinUp => LIQUID_SPIN_UP,
            Self::Balance => BALANCE,
            Self::Friction => FRICTION_ANGLE,
            Self::Vibration => VIBRATION,
            Self::ReferenceHorizontal | Self::ReferenceVertical => REFERENCE,
        }
    }

    fn part(self, settings: &mut FloatSettings) -> &mut f64 {
        match self {
            Self::YawPeriod => &mut settings.yaw_period,
            Self::YawDamping => &mut settings.yaw_damping_ratio,
            Self::LevelTilt => &mut settings.level_tilt,
            Self::TiltDamping => &mut settings.tilt_damping_ratio,
            Self::InertiaRatio => &mut settings.inertia_ratio,
            Self::LiquidSpinUp => &mut settings.liquid_spin_up,
            Self::Balance => &mut settings.balance_vertical,
            Self::Friction => &mut settings.friction_angle,
            Self::Vibration => &mut settings.vibration,
            Self::ReferenceHorizontal => &mut settings.reference_horizontal,
            Self::ReferenceVertical => &mut settings.reference_vertical,
        }
    }

    /// What it is in some settings, as it would be typed.
    fn text_of(self, mut settings: FloatSettings) -> String {
        typed(*self.part(&mut settings) / self.range().unit.in_si())
    }

    /// Where a preset's number comes from: see the presets' own words in
    /// [`compass::float_settings`].
    fn source(self, choice: FloatChoice) -> Mark {
        match self {
            Self::LevelTilt => Mark::CommonPractice,
            Self::Friction if choice == FloatChoice::StickyPivot => Mark::Standard,
            _ => Mark::Chosen,
        }
    }
}

/// What stands in the float's entries.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct FloatForm([String; FloatEntry::ALL.len()]);

impl From<FloatChoice> for FloatForm {
    fn from(choice: FloatChoice) -> Self {
        let settings = choice.settings();
        Self(FloatEntry::ALL.map(|entry| entry.text_of(settings)))
    }
}

impl FloatForm {
    /// What was typed.
    pub(super) fn text(&self, entry: FloatEntry) -> &str {
        FloatEntry::ALL
            .iter()
            .zip(&self.0)
            .find(|(it, _)| **it == entry)
            .map_or("", |(_, text)| text)
    }

    /// Where to type.
    pub(super) fn text_mut(&mut self, entry: FloatEntry) -> Option<&mut String> {
        let found = FloatEntry::ALL.iter().position(|it| *it == entry);
        found.and_then(|index| self.0.get_mut(index))
    }

    /// The float that is meant; each fault is noted.
    pub(super) fn settings(&self, faults: &mut Vec<Fault>) -> FloatSettings {
        let mut settings = FloatSettings::default();
        for (entry, text) in FloatEntry::ALL.into_iter().zip(&self.0) {
            if let Some(value) = number(text, Entry::Float(entry), faults) {
                *entry.part(&mut settings) = value;
            }
        }
        settings
    }

    /// The preset that stands here, if one does.
    pub(crate) fn choice(&self) -> Option<FloatChoice> {
        let mut faults = Vec::new();
        let settings = self.settings(&mut faults);
        FloatChoice::of(settings).filter(|_| faults.is_empty())
    }

    /// Where the number comes from that stands in an entry.
    pub(crate) fn mark(&self, entry: FloatEntry) -> Mark {
        let value = |text: &str| parse(text, Entry::Float(entry));
        let here = value(self.text(entry));
        FloatChoice::ALL
            .into_iter()
            .find(|choice| here.is_some() && here == value(&entry.text_of(choice.settings())))
            .map_or(Mark::Own, |choice| entry.source(choice))
    }
}

#[cfg(test)]
mod tests {
    use super::super::entry::Wrong;
    use super::*;

    #[test]
    fn a_preset_fills_every_entry_and_is_known_again_to_the_bit() {
        for choice in FloatChoice::ALL {
            let form = FloatForm::from(choice);
            let mut faults = Vec::new();
            assert_eq!(form.settings(&mut faults), choice.settings());
            assert_eq!((form.choice(), faults), (Some(choice), Vec::new()));
        }
    }

    #[test]
    fn a_number_changed_alone_makes_the_float_the_users_own() {
        let mut form = FloatForm::from(FloatChoice::Brisk);
        assert_eq!(form.mark(FloatEntry::YawPeriod), Mark::Chosen);
        *form.text_mut(FloatEntry::YawPeriod).unwrap() = "4,25".to_owned();
        assert_eq!(form.choice(), None);
        assert_eq!(form.mark(FloatEntry::YawPeriod), Mark::Own);
        assert_eq!(form.mark(FloatEntry::LevelTilt), Mark::CommonPractice);
        let expected = FloatSettings {
            yaw_period: 4.25,
            ..FloatSettings::brisk()
        };
        assert_eq!(form.settings(&mut Vec::new()), expected);
    }

    #[test]
    fn every_number_is_refused_beyond_its_own_range() {
        for entry in FloatEntry::ALL {
            let mut form = FloatForm::from(FloatChoice::Standard);
            let range = entry.range();
            for beyond in [range.least - 1.0, range.most + 1.0] {
                *form.text_mut(entry).unwrap() = typed(beyond);
                let mut faults = Vec::new();
                form.settings(&mut faults);
                let wrong = Wrong::OutOfRange {
                    range,
                    value: beyond,
                };
                let entry = Entry::Float(entry);
                assert_eq!(faults, [Fault { entry, wrong }]);
            }
        }
    }
}
