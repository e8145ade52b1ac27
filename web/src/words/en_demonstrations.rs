//! English, for the demonstrations.

use super::Button;
use super::demonstrations::{DemonstrationWords, Group};
use super::en::clock;
use lessons::demonstration::Demonstration;

/// The words of the demonstrations.
pub(super) const DEMONSTRATIONS: DemonstrationWords = DemonstrationWords {
    title: "Demonstrations",
    keys: "Play on, skip; cue before",

    player: "Demonstration",
    play: Button {
        label: "Play",
        name: "Play the demonstration",
    },
    pause: Button {
        label: "Pause",
        name: "Pause the demonstration",
    },
    last_cue: Button {
        label: "Back",
        name: "Back to the cue before",
    },
    next_cue: Button {
        label: "Next",
        name: "Next: on from here, or to the next cue",
    },
    again: Button {
        label: "Again",
        name: "Again from the start",
    },
    chapter: "Chapter",
    captions: Button {
        label: "Captions",
        name: "Captions",
    },
    loops: Button {
        label: "Loop",
        name: "Loop: play it over and over",
    },
    take_controls: Button {
        label: "Take the controls",
        name: "Take the controls and fly from here",
    },
    flying: "You have the controls.",
    come_back: Button {
        label: "Return to the demonstration",
        name: "Return to the demonstration, where you left it",
    },
    leave: Button {
        label: "Leave",
        name: "Leave the demonstration",
    },
    change: Button {
        label: "Change it",
        name: "Change it: make a demonstration of your own from it",
    },
    opened: |title, look_for| format!("{title}. {look_for}"),
    stands: "Stands still",

    hands: "hands",
    hands_for: |choice| format!("Hands for: {choice}"),
    hands_wrong: |typed| {
        format!("Hands are counted in whole numbers from 0 to 999, not \u{201c}{typed}\u{201d}.")
    },
    counted: |count| match count {
        1 => "1 hand".to_owned(),
        _ => format!("{count} hands"),
    },
    right: "Right",
    not_right: "Not so",
    measured: |words| format!("Measured on this flight: {words}."),
    asked: |posed| {
        let choices = posed.choices.join("; or ");
        format!("Question: {} {choices}?", posed.question)
    },
    answered: |posed| {
        let right = posed.choices.get(posed.right).map_or("", String::as_str);
        match &posed.measured {
            Some(words) => format!("Answer: {right}. Measured: {words}."),
            None => format!("Answer: {right}."),
        }
    },

    rule: "Rule of thumb",
    next: |title| format!("Next: {title}"),

    about: "Each asks your class one question and lets the compass answer. The figures are computed for the place.",
    latitude: "At latitude",
    as_made: "each where it was made",
    to_as_made: "Each where it was made",
    measuring: |done, of| format!("Measured: {done} of {of}"),
    headline: |figure| {
        let mut letters = figure.chars();
        let first = letters
            .next()
            .map(|it| it.to_uppercase().collect::<String>());
        first.unwrap_or_default() + letters.as_str()
    },
    groups: |all| grouped(all),
    open_file: "Open a file",
    too_long: |length, most| {
        format!("The file has {length} bytes; one that can be opened has at most {most}.")
    },
    unreadable: "The file could not be read: choose it again.",
    not_found: |name| {
        format!("There is no demonstration called \u{201c}{name}\u{201d}: choose one below.")
    },
    no_latitude: |text| {
        format!("A latitude is whole degrees from -90 to 90, not \u{201c}{text}\u{201d}.")
    },

    plan: Button {
        label: "Lesson plan",
        name: "Lesson plan: read it, print it",
    },
    print: Button {
        label: "Print",
        name: "Print the lesson plan",
    },
    close_plan: Button {
        label: "Back",
        name: "Back to the demonstration",
    },
    notes: |minutes| format!("What to say: {minutes} minutes in all"),
    minutes: |minutes| format!("{minutes} min"),
    course: "What happens",
    clock,
    plan_stop: "It stands still. Press Page Down to go on.",
    plan_answer: "The answer is shown.",
    plan_question: |posed| {
        let choices = posed.choices.iter().enumerate().map(|(index, choice)| {
            let mark = if index == posed.right { "☑" } else { "☐" };
            format!(" {mark} {choice}")
        });
        let choices: String = choices.collect();
        let measured = posed.measured.as_ref();
        let measured = measured.map_or_else(String::new, |it| format!(" Measured: {it}."));
        format!("Question: {}{choices}.{measured}", posed.question)
    },
    figure: |name, said| format!("{name}: {said}"),
    figures: "Measured on this flight",
};

/// The groups of the catalogue, by the names of their demonstrations; what is in none comes last.
const GROUPS: &[(&str, &[&str])] = &[
    ("Where nothing errs", &["steady-flight", "equator-turn"]),
    (
        "Turns onto north and south",
        &[
            "north-from-west",
            "north-from-east",
            "south-from-east",
            "south-from-west",
            "part-way-north",
            "part-way-south",
        ],
    ),
    (
        "Turns off north and south",
        &["off-north-right", "off-north-left", "off-south-right"],
    ),
    ("A whole circle", &["full-circle-right", "full-circle-left"]),
    (
        "Speed, climb and descent",
        &[
            "speed-east",
            "speed-west",
            "speed-north",
            "speed-south",
            "climb-descent",
        ],
    ),
    (
        "From latitude to latitude",
        &["middle-latitudes", "high-latitude", "near-pole"],
    ),
    (
        "South of the equator",
        &[
            "southern-onto-north",
            "southern-onto-south",
            "southern-off-south",
            "southern-speed",
        ],
    ),
    (
        "The limits of the card",
        &[
            "steep-bank",
            "swirl",
            "rough-air",
            "indicator-in-turn",
            "iron",
        ],
    ),
];

fn grouped(all: &[Demonstration]) -> Vec<Group> {
    let place = |name: &&str| all.iter().position(|it| it.name == *name);
    let mut groups: Vec<Group> = GROUPS
        .iter()
        .map(|(title, names)| (*title, names.iter().filter_map(place).collect()))
        .collect();
    let known = |index: &usize| groups.iter().any(|(_, of)| of.contains(index));
    let rest: Vec<usize> = (0..all.len()).filter(|it| !known(it)).collect();
    groups.push(("More", rest));
    groups.retain(|(_, of)| !of.is_empty());
    groups
}

#[cfg(test)]
mod tests {
    use super::*;
    use lessons::demonstration::catalogue;

    #[test]
    fn every_demonstration_of_the_catalogue_is_in_one_group() {
        let all: Vec<Demonstration> = catalogue::FILES
            .iter()
            .map(|(name, text)| {
                Demonstration::from_json(text).unwrap_or_else(|it| panic!("{name}: {it}"))
            })
            .collect();
        let groups = grouped(&all);
        assert!(
            groups.iter().all(|(title, _)| *title != "More"),
            "{groups:?}"
        );
        let mut places: Vec<usize> = groups.into_iter().flat_map(|it| it.1).collect();
        places.sort_unstable();
        assert_eq!(places, (0..all.len()).collect::<Vec<_>>());
    }
}
