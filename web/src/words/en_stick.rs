//! English, for a stick.

use super::StickWords;

/// The words for a stick.
pub(super) const STICK: StickWords = StickWords {
    stick: "Stick",
    bank: "Bank",
    speed: "Airspeed",
    axis: |axis| format!("Axis {axis}"),
    no_axis: "None",
    reversed: "Reversed",
    dead_zone: "Dead zone",
    per_cent: |per_cent| format!("{per_cent} %"),
    find: "Find",
    find_bank: "Find the axis for the bank",
    find_speed: "Find the axis for the airspeed",
    move_right: "Move the stick to the right.",
    move_fast: "Move the throttle to full power.",
    buttons: "Buttons: 1 level, 2 pause, 3 cover, 4 tell, 5 slower, 6 faster.",
    ranges: |bank, [slow, fast]| {
        format!("Full stick banks {bank}°; the throttle sets {slow} to {fast} kt.")
    },
};
