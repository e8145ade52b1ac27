//! Making demonstrations: whatever is done can be undone to the bit, and what is made is what
//! plays.

use lessons::demonstration::{
    Act, Answer, Compare, Demonstration, Figure, Flown, LONGEST_TEXT, Measured, Question, Speed,
    View,
};
use lessons::making::{Draft, Entry, Kind, Making, Step};
use proptest::prelude::*;

/// A right turn from west through north and on, 46 s.
const FLIGHT: &str = r#"{"field": {"latitude_deg": 45}, "start": {"heading_deg": 270, "speed_kt": 100},
    "legs": [{"seconds": 3}, {"seconds": 3, "bank_deg": 15}, {"seconds": 40}]}"#;
const LENGTH: f64 = 46.0;

fn draft() -> Draft {
    Draft::from_json(FLIGHT, "Onto north").unwrap()
}

fn typed(entry: Entry, text: &str) -> Draft {
    let mut draft = draft();
    draft.type_in(entry, text);
    draft
}

/// What is said of an entry.
fn said(draft: &Draft, entry: Entry) -> Vec<String> {
    let faults = draft.faults().into_iter();
    let here = faults.filter(|it| it.entry == Some(entry));
    here.map(|it| it.said).collect()
}

/// Does something to a draft, chosen by the numbers.
fn tamper(draft: &mut Draft, what: u8, which: usize, at: f64) {
    let id = draft
        .cues()
        .get(which % draft.cues().len().max(1))
        .map(|it| it.id);
    let id = id.unwrap_or(7);
    let text = format!("{at}");
    match what % 18 {
        0..=4 => {
            draft.put(at, Kind::ALL[which % Kind::ALL.len()].act());
        }
        5 => draft.move_cue(id, at),
        6 => draft.remove_cue(id),
        7 => {
            draft.duplicate_cue(id);
        }
        8 => {
            let cue = draft.cue(id).cloned();
            let offers = cue.map_or_else(Vec::new, |it| draft.offers(&it));
            if let Some(act) = offers.get(which % offers.len().max(1)) {
                draft.set_act(id, act.clone());
            }
        }
        9 => draft.start_at(at),
        10 => draft.end_at(at),
        11 => draft.toggle_view(View::Timeline),
        12 => draft.add_note(),
        13 => draft.remove_note(which % 3),
        14 => draft.add_choice(id),
        15 => draft.remove_choice(id, which % 3),
        16 => {
            draft.measure_lag_at(at);
        }
        _ => {
            let entries = [
                Entry::Title,
                Entry::Name,
                Entry::From,
                Entry::To,
                Entry::Latitude,
                Entry::LookFor,
                Entry::Rule,
                Entry::CueTime(id),
                Entry::CueText(id),
                Entry::CueChoice(id, 0),
                Entry::CueLatitude(id),
                Entry::NoteMinutes(0),
                Entry::NoteSay(0),
            ];
            let text = if which.is_multiple_of(2) {
                "north"
            } else {
                &text
            };
            draft.type_in(entries[which % entries.len()], text);
        }
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    #[test]
    fn every_change_is_undone_and_done_again_to_the_bit(
        changes in prop::collection::vec((any::<u8>(), any::<usize>(), -10.0..60.0), 1..150),
    ) {
        let mut making = Making::new(draft());
        let mut stood = vec![making.draft().clone()];
        for (what, which, at) in changes {
            making.change(Step::New, |draft| tamper(draft, what, which, at));
            if making.draft() != &stood[stood.len() - 1] {
                stood.push(making.draft().clone());
            }
        }
        let last = stood.len() - 1;
        for before in stood[..last].iter().rev() {
            prop_assert!(making.undo());
            prop_assert_eq!(making.draft(), before);
        }
        prop_assert!(!making.undo() && !making.can_undo());
        for after in &stood[1..] {
            prop_assert!(making.redo());
            prop_assert_eq!(making.draft(), after);
        }
        prop_assert!(!making.redo() && !making.can_redo());
    }

    #[test]
    fn whatever_is_done_cues_stay_in_order_and_on_the_flight_and_the_draft_is_read_again(
        changes in prop::collection::vec((any::<u8>(), any::<usize>(), -10.0..60.0), 1..80),
    ) {
        let mut draft = draft();
        for (what, which, at) in changes {
            tamper(&mut draft, what, which, at);
            prop_assert!(draft.cues().is_sorted_by_key(|it| it.cue.at_s));
            prop_assert!(draft.cues().iter().all(|it| (0.0..=LENGTH).contains(&it.cue.at_s)));
            let mut ids: Vec<u32> = draft.cues().iter().map(|it| it.id).collect();
            ids.sort_unstable();
            ids.dedup();
            prop_assert_eq!(ids.len(), draft.cues().len());
        }
        let written = draft.demonstration();
        let again = Draft::from_json(&written.to_json(), "").unwrap();
        prop_assert_eq!(again.demonstration(), written);
        // What no sentence speaks against can be played.
        if draft.faults().is_empty() {
            prop_assert!(draft.demonstration().check_shape().is_ok());
        }
    }
}

#[test]
fn typing_is_one_step_and_so_is_a_drag() {
    let mut making = Making::new(draft());
    let caption = Kind::Caption.act();
    let id = making.change(Step::New, |draft| draft.put(10.0, caption));
    for text in ["W", "Wa", "Wat", "Watch"] {
        let entry = Entry::CueText(id);
        making.change(Step::In(entry), |draft| draft.type_in(entry, text));
    }
    making.end_step();
    making.change(Step::New, |draft| draft.move_cue(id, 11.0));
    for at in [12.0, 15.0, 19.5] {
        making.change(Step::GoesOn, |draft| draft.move_cue(id, at));
    }
    assert_eq!(making.draft().text(Entry::CueTime(id)), "19.5");
    making.undo();
    assert_eq!(making.draft().text(Entry::CueTime(id)), "10");
    assert_eq!(making.draft().text(Entry::CueText(id)), "Watch");
    making.undo();
    assert_eq!(making.draft().text(Entry::CueText(id)), "");
    making.undo();
    assert!(making.draft().cues().is_empty());
    // A change that changes nothing is no step.
    making.change(Step::New, |draft| draft.start_at(0.0));
    assert!(!making.can_undo());
}

#[test]
fn a_trimmed_flight_is_flown_whole_and_its_cues_beyond_are_left_out() {
    let mut draft = draft();
    for at in [1.0, 10.0, 20.0, 40.0] {
        draft.put(at, Act::Caption(format!("At {at}")));
    }
    let figure = draft.measure_lag_at(17.0);
    assert_eq!(draft.measure_lag_at(17.0), figure, "measured once");
    let whole = Flown::new(draft.demonstration()).unwrap();
    draft.start_at(5.0);
    draft.end_at(30.0);
    let cut = Flown::new(draft.demonstration()).unwrap();
    assert_eq!(cut.plays(), [5.0, 30.0]);
    // The float at the start is as the flight before it left it.
    assert_eq!(cut.record().digest(), whole.record().digest());
    assert_eq!(cut.figures(), whole.figures());
    let captions: Vec<(f64, f64)> = cut.captions().iter().map(|it| (it.from, it.to)).collect();
    assert_eq!(captions, [(10.0, 20.0), (20.0, 30.0)]);
    assert_eq!(draft.cues().len(), 4, "the draft keeps them");
    draft.end_at(99.0);
    assert_eq!(draft.text(Entry::To), "", "the flight's end is no cut");
}

#[test]
fn a_duplicate_elsewhere_says_the_figures_of_its_own_place() {
    let file = r#"{
        "demonstration": 1, "name": "onto-north", "title": "A right turn onto north",
        "scenario": {
            "field": {"latitude_deg": 45}, "start": {"heading_deg": 270, "speed_kt": 100},
            "legs": [{"seconds": 3}, {"seconds": 3, "bank_deg": 15}, {"seconds": 40}]
        },
        "figures": {"on_north": {"lag_on": {"heading_deg": 360}}}, "headline": "on_north",
        "cues": [{"at_s": 2, "do": {"caption": "On north the compass {on_north}."}}],
        "claims": [{"figure": "on_north", "least": 10, "most": 60}]
    }"#;
    let original = Demonstration::from_json(file).unwrap();
    let mut draft = Draft::of(original.clone()).unwrap();
    assert_eq!(draft.demonstration(), original);
    draft.type_in(Entry::Latitude, "-45");
    let moved = draft.demonstration();
    assert_eq!(moved, original.clone().at_latitude_deg(-45.0));
    let (here, there) = (Flown::new(original).unwrap(), Flown::new(moved).unwrap());
    let lag = |flown: &Flown| match flown.figures()["on_north"] {
        Measured::Lag(degrees) => degrees,
        other => panic!("{other:?}"),
    };
    assert!(lag(&here) > 10.0 && lag(&there) < -10.0);
    assert!(there.captions()[0].text.contains("leads"));
}

#[test]
fn the_name_goes_along_with_the_title_until_it_is_given_by_hand() {
    let mut draft = draft();
    assert_eq!(draft.name(), "onto-north");
    draft.type_in(Entry::Title, "Vom Westen: 30° Nord!");
    assert_eq!(draft.name(), "vom-westen-30-nord");
    draft.type_in(Entry::Name, "west");
    draft.type_in(Entry::Title, "Another");
    assert_eq!(draft.name(), "west");
    assert_eq!(typed(Entry::Title, "北").name(), "demonstration");
}

#[test]
fn every_fault_is_a_sentence_at_its_own_entry() {
    let long = "x".repeat(LONGEST_TEXT + 1);
    for (entry, text, says) in [
        (Entry::Title, "  ", "a title has 1 to 100 characters, not 0"),
        (Entry::Name, "Two Words", "lower-case letters"),
        (Entry::From, "soon", "a number of seconds from 0 to 46"),
        (
            Entry::From,
            "60",
            "from 0 to 46 s, the flight's end, not 60",
        ),
        (Entry::To, "0", "after the start at 0 s, not at 0 s"),
        (Entry::To, "-1", "from 0 to 46 s"),
        (
            Entry::Latitude,
            "95",
            "from -90 to 90, such as 52, not \"95\"",
        ),
        (Entry::Latitude, "NaN", "not \"NaN\""),
        (
            Entry::LookFor,
            "{lag}",
            "\"lag\" is none of the figures (there are none)",
        ),
        (Entry::Rule, &long, "at most 1000 characters, not 1001"),
    ] {
        let draft = typed(entry, text);
        assert_eq!(draft.text(entry), text);
        let all = said(&draft, entry);
        assert!(
            all.iter().any(|it| it.contains(says)),
            "{entry:?} {text}: {all:?}"
        );
    }
    let mut draft = draft();
    let ask = draft.put(5.0, Kind::Ask.act());
    let chapter = draft.put(5.0, Kind::Chapter.act());
    let two = draft.put(6.0, Act::Compare(Compare::LatitudeDeg(0)));
    draft.add_note();
    draft.remove_choice(ask, 1);
    draft.type_in(Entry::NoteMinutes(0), "0");
    draft.type_in(Entry::CueTime(two), "99");
    draft.type_in(Entry::CueLatitude(two), "45.5");
    for (entry, says) in [
        (Entry::CueText(ask), "the question has no words yet"),
        (Entry::CueText(ask), "there must be 2 to 6 choices, not 1"),
        (Entry::CueChoice(ask, 0), "the choice has no words yet"),
        (Entry::CueText(chapter), "the chapter has no title yet"),
        (
            Entry::CueTime(two),
            "from 0 to 46, the flight's end, not \"99\"",
        ),
        (Entry::CueLatitude(two), "a whole number from -90 to 90"),
        (Entry::NoteMinutes(0), "from 0.5 to 60, not 0"),
    ] {
        let all = said(&draft, entry);
        assert!(all.iter().any(|it| it.contains(says)), "{entry:?}: {all:?}");
    }
    // What was meant before still holds, and what belonged to a cue goes with it.
    assert_eq!(draft.cue(two).unwrap().at_s, 6.0);
    draft.remove_cue(two);
    assert!(said(&draft, Entry::CueTime(two)).is_empty());
}

#[test]
fn a_question_keeps_its_right_answer_while_choices_come_and_go() {
    let mut draft = draft();
    let id = draft.put(5.0, Kind::Ask.act());
    draft.add_choice(id);
    for (index, text) in ["lags", "agrees", "leads"].into_iter().enumerate() {
        draft.type_in(Entry::CueChoice(id, index), text);
    }
    draft.set_right(id, 2);
    draft.set_right(id, 9);
    draft.remove_choice(id, 0);
    let question = |draft: &Draft| match &draft.cue(id).unwrap().act {
        Act::Ask(Question { answer, .. }) => answer.clone(),
        other => panic!("{other:?}"),
    };
    let choices = vec!["agrees".to_owned(), "leads".to_owned()];
    assert_eq!(question(&draft), Answer::Typed { choices, right: 1 });
    let figure = draft.measure_lag_at(17.0);
    let cue = draft.cue(id).unwrap().clone();
    let offers = draft.offers(&cue);
    assert_eq!(offers[0], cue.act);
    draft.set_act(id, offers[1].clone());
    assert_eq!(question(&draft), Answer::Figure(figure.clone()));
    draft.type_in(Entry::CueText(id), "What will it read?");
    assert_eq!(draft.faults(), []);
    let flown = Flown::new(draft.demonstration()).unwrap();
    assert!(matches!(flown.figures()[&figure], Measured::Lag(_)));
    assert_eq!(draft.figures()[&figure], Figure::LagAt(17.0));
}

#[test]
fn what_a_cue_is_stands_among_what_it_can_be() {
    let mut draft = draft();
    for kind in Kind::ALL {
        let id = draft.put(1.0, kind.act());
        let cue = draft.cue(id).unwrap();
        assert_eq!(Kind::of(&cue.act), kind);
        let offers = draft.offers(cue);
        assert!(offers.is_empty() || offers.contains(&cue.act), "{kind:?}");
        assert!(offers.iter().all(|it| Kind::of(it) == kind));
    }
    let eighth = Act::Speed(Speed::Eighth);
    let id = draft.put(2.0, eighth.clone());
    assert!(draft.offers(draft.cue(id).unwrap()).contains(&eighth));
}

#[test]
fn a_file_that_is_none_is_refused_with_the_field_and_an_unfinished_one_opens() {
    for (file, says) in [
        ("", "EOF"),
        ("{\"demonstration\": 1, \"nam\": \"x\"}", "nam"),
        (
            r#"{"demonstration": 2, "name": "x", "title": "X", "scenario": SCENARIO}"#,
            "version 2",
        ),
        (
            r#"{"demonstration": 1, "name": "x", "title": "X", "scenario":
            {"field": {"latitude_deg": 95}, "start": {"heading_deg": 0, "speed_kt": 100},
             "legs": [{"seconds": 3}]}}"#,
            "scenario.field.latitude_deg",
        ),
    ] {
        let error = Draft::from_json(&file.replace("SCENARIO", FLIGHT), "T").unwrap_err();
        assert!(error.to_string().contains(says), "{file}: {error}");
    }
    let unfinished = r#"{"demonstration": 1, "name": "", "title": "", "scenario": SCENARIO,
        "cues": [{"at_s": 9, "do": "freeze"}, {"at_s": 2, "do": {"chapter": ""}}]}"#;
    let draft = Draft::from_json(&unfinished.replace("SCENARIO", FLIGHT), "T").unwrap();
    assert_eq!(draft.faults().len(), 3);
    assert_eq!(draft.cues()[0].cue.at_s, 2.0, "put in order");
}
