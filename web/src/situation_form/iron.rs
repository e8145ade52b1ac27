//! The aircraft's iron: its own field, and how it answers to the Earth's.

use super::entry::{Entry, Fault, number, typed};
use crate::setting::IronChoice;
use compass::deviation::AircraftIron;

/// An axis of the airframe.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Axis {
    /// Fore and aft, forward positive.
    Fore,
    /// Athwartships, right positive.
    Right,
    /// Up and down, down positive.
    Down,
}

impl Axis {
    /// Every axis once, in the order of the body axes.
    pub(crate) const ALL: [Self; 3] = [Self::Fore, Self::Right, Self::Down];

    fn index(self) -> usize {
        match self {
            Self::Fore => 0,
            Self::Right => 1,
            Self::Down => 2,
        }
    }
}

/// What stands in the iron's entries.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct IronForm {
    hard: [String; 3],
    soft: [[String; 3]; 3],
}

impl From<IronChoice> for IronForm {
    fn from(choice: IronChoice) -> Self {
        Self {
            hard: choice.hard_nanotesla().map(typed),
            soft: choice.soft().map(|row| row.map(typed)),
        }
    }
}

impl IronForm {
    /// What was typed for the hard iron.
    pub(super) fn hard(&self, axis: Axis) -> &str {
        &self.hard[axis.index()]
    }

    /// Where to type for the hard iron.
    pub(super) fn hard_mut(&mut self, axis: Axis) -> &mut String {
        &mut self.hard[axis.index()]
    }

    /// What was typed for the soft iron.
    pub(super) fn soft(&self, along: Axis, by: Axis) -> &str {
        &self.soft[along.index()][by.index()]
    }

    /// Where to type for the soft iron.
    pub(super) fn soft_mut(&mut self, along: Axis, by: Axis) -> &mut String {
        &mut self.soft[along.index()][by.index()]
    }

    /// The iron that is meant; each fault is noted.
    pub(super) fn iron(&self, faults: &mut Vec<Fault>) -> Option<AircraftIron> {
        let hard = Axis::ALL.map(|axis| number(self.hard(axis), Entry::Hard(axis), faults));
        let soft = Axis::ALL.map(|along| {
            Axis::ALL.map(|by| number(self.soft(along, by), Entry::Soft(along, by), faults))
        });
        let [Some(x), Some(y), Some(z)] = hard else {
            return None;
        };
        // What is missing has its fault already.
        let soft = soft.map(|row| row.map(Option::unwrap_or_default));
        AircraftIron::new([x, y, z], soft).ok()
    }

    /// The preset that stands here, if one does.
    pub(crate) fn choice(&self) -> Option<IronChoice> {
        let mut faults = Vec::new();
        let iron = self.iron(&mut faults).filter(|_| faults.is_empty());
        iron.and_then(IronChoice::of)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_preset_is_known_again_and_a_changed_number_makes_it_the_users_own() {
        for choice in IronChoice::ALL {
            let mut form = IronForm::from(choice);
            assert_eq!(form.choice(), Some(choice));
            *form.soft_mut(Axis::Down, Axis::Right) = "0.02".to_owned();
            assert_eq!(form.choice(), None);
        }
    }

    #[test]
    fn every_wrong_number_is_named() {
        let mut form = IronForm::from(IronChoice::None);
        *form.hard_mut(Axis::Right) = "60000".to_owned();
        *form.soft_mut(Axis::Fore, Axis::Down) = "0.6".to_owned();
        let mut faults = Vec::new();
        form.iron(&mut faults);
        let named: Vec<Entry> = faults.iter().map(|fault| fault.entry).collect();
        let wrong = [
            Entry::Hard(Axis::Right),
            Entry::Soft(Axis::Fore, Axis::Down),
        ];
        assert_eq!(named, wrong);
    }
}
