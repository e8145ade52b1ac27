//! Marking a heading held in rough air.

use super::super::course::{between, rms};
use super::super::words;
use super::{Found, Off, ended_too_soon, figure};
use compass::heading::MagneticHeading;
use compass::simulation::{Moment, STEPS_PER_SECOND};
use flights::Scenario;

/// A heading held: mean and root mean square of what it was off.
pub(super) fn held(
    scenario: &Scenario,
    moments: &[Moment],
    target_deg: f64,
    [from_s, to_s]: [f64; 2],
    tolerance: f64,
) -> Found {
    if let Some(reason) = ended_too_soon(moments, to_s) {
        return Found {
            result: Err(reason),
            figures: Vec::new(),
            happened: "The heading was not held to the end.".to_owned(),
        };
    }
    let target = MagneticHeading::from_degrees(target_deg);
    let off: Vec<f64> = between(moments, from_s, to_s)
        .iter()
        .map(|it| it.motion.heading.right_of(target).to_degrees())
        .collect();
    let mean = off.iter().sum::<f64>() / off.len().max(1) as f64;
    let root = rms(off.iter().copied());
    let greatest = off.iter().fold(0.0_f64, |a, b| a.max(b.abs()));
    let turns = reversals(scenario, [from_s, to_s]);
    Found {
        // The root mean square is never below the mean.
        result: Ok(Off {
            error_deg: root,
            passed: root <= tolerance,
            mistake: if mean.abs() > root / 2.0 {
                "held another heading"
            } else {
                "chased the swing"
            },
        }),
        figures: vec![
            figure("mean off the heading", mean, "°"),
            figure("greatest off the heading", greatest, "°"),
            figure("turns from one side to the other", f64::from(turns), ""),
        ],
        happened: format!(
            "The heading was off by {}° on the whole, its middle by {}°, and by {}° at the most, with \
             {turns} turns from one side to the other.",
            words::tidy(root),
            words::tidy(mean.abs()),
            greatest.round()
        ),
    }
}

/// How often the bank that is asked for changes from one side to the other: the mark of chasing.
fn reversals(scenario: &Scenario, [from_s, to_s]: [f64; 2]) -> u32 {
    let [from, to] = [from_s, to_s].map(|it| (it * STEPS_PER_SECOND as f64) as u64);
    let (mut side, mut count) = (0.0, 0);
    for step in from..to {
        let bank = scenario.controls_at(step).bank();
        if bank != 0.0 && bank.signum() != side {
            count += u32::from(side != 0.0);
            side = bank.signum();
        }
    }
    count
}
