//! The kinds of task.

use serde::{Deserialize, Serialize};

/// A kind of task.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Kind {
    /// Say beforehand what the compass will do.
    Predict,
    /// Say what the heading is while the compass errs.
    Read,
    /// Roll out of a turn on the compass alone.
    RollOut,
    /// Turn by the clock alone.
    TimedTurn,
    /// Hold a heading in rough air.
    HoldHeading,
    /// Set a drifting heading indicator at good moments.
    SetGyro,
    /// Say which error a stretch of flight shows.
    NameTheCause,
    /// Go between true, magnetic and compass headings on paper.
    Corrections,
}

impl Kind {
    /// All of them, in the order in which they are best learnt; chosen.
    pub const ALL: [Self; 8] = [
        Self::Predict,
        Self::Read,
        Self::RollOut,
        Self::TimedTurn,
        Self::HoldHeading,
        Self::SetGyro,
        Self::NameTheCause,
        Self::Corrections,
    ];

    /// Its name, as files and the command line have it.
    pub fn name(self) -> &'static str {
        match self {
            Self::Predict => "predict",
            Self::Read => "read",
            Self::RollOut => "roll-out",
            Self::TimedTurn => "timed-turn",
            Self::HoldHeading => "hold-heading",
            Self::SetGyro => "set-gyro",
            Self::NameTheCause => "name-the-cause",
            Self::Corrections => "corrections",
        }
    }

    /// What is to be done, in a few words.
    pub fn description(self) -> &'static str {
        match self {
            Self::Predict => "say beforehand what the compass will do",
            Self::Read => "say what the heading is while the compass errs",
            Self::RollOut => "turn to a heading on the compass alone and roll out",
            Self::TimedTurn => "turn to a heading by the clock alone",
            Self::HoldHeading => "hold a heading in rough air by the swinging card",
            Self::SetGyro => "set a drifting heading indicator, at good moments only",
            Self::NameTheCause => "watch a stretch of flight and say which error it shows",
            Self::Corrections => "go between true, magnetic and compass headings on paper",
        }
    }

    /// Whether the answer is flown and marked, rather than chosen.
    pub fn is_flown(self) -> bool {
        matches!(
            self,
            Self::RollOut | Self::TimedTurn | Self::HoldHeading | Self::SetGyro
        )
    }

    /// The least latitude, in degrees either way, at which it can be asked; chosen: nearer the
    /// equator the errors that it asks about are too small to be told apart.
    pub fn least_latitude_deg(self) -> f64 {
        match self {
            Self::Read | Self::HoldHeading | Self::SetGyro => 20.0,
            _ => 0.0,
        }
    }

    /// PCG's stream for it: chosen, one for each, so that kinds with the same seed differ.
    pub(super) fn stream(self) -> u64 {
        0x6472_696c_6c00 + self as u64
    }
}
