//! English, for films, stills and animations.

use super::en::{ENGLISH, clock};
use super::{Button, FilmWords};
use crate::film::kit::{Container, Formats};

/// The words of films, stills and animations.
pub(super) const FILM: FilmWords = FilmWords {
    keys: "Two at once; film",
    show: Button {
        label: "Film",
        name: "Film: make a video or a still of the flight",
    },
    title: "Film",
    close: Button {
        label: "Close",
        name: "Close what makes films",
    },

    time: "Time",
    clock,
    place: |setting| {
        let dip = setting.field().dip().to_degrees();
        let side = if dip < 0.0 { "up" } else { "down" };
        format!("{}, dip {:.0}° {side}", (ENGLISH.place)(setting), dip.abs())
    },

    span: |[from, to], marked| {
        let what = if marked { "The loop" } else { "The flight" };
        format!("{what}, {} to {}", clock(from), clock(to))
    },
    nothing: "Nothing is flown yet: fly first, then film it.",
    name: "Title",
    size: "Size",
    fps: |fps| format!("{fps} a second"),
    frames: "Frames",
    speed: "Speed",
    slower: |times| match times {
        1 => "As flown",
        2 => "Half",
        _ => "A quarter",
    },
    format: "Format",
    container: |container| match container {
        Container::Mp4 => "MP4",
        Container::WebM => "WebM",
    },
    formats,
    torques: "Torques",
    strips: "Chart so far",

    render: Button {
        label: "Make video",
        name: "Make video, frame by frame",
    },
    gif: Button {
        label: "GIF",
        name: "GIF: make a short animation for slides, 960 by 540, 10 frames a second",
    },
    gif_too_long: "A GIF of more than a minute is too large for slides: mark a loop of less.",
    png: Button {
        label: "PNG still",
        name: "PNG still: save this moment as a picture of dots",
    },
    svg: Button {
        label: "SVG still",
        name: "SVG still: save this moment as a drawing",
    },
    progress: |done, all, left| {
        let left = match left {
            None => String::new(),
            Some(seconds) if seconds < 90.0 => format!(", {:.0} s left", seconds.ceil()),
            Some(seconds) => format!(", {:.0} min left", (seconds / 60.0).ceil()),
        };
        format!("Frame {done} of {all}{left}")
    },
    cancel: Button {
        label: "Cancel",
        name: "Cancel: nothing is saved",
    },
    cancelled: "Cancelled.",
    save: |ending, bytes| {
        let kind = match ending {
            "gif" => "GIF",
            "webm" => "WebM",
            _ => "MP4",
        };
        format!("Save {kind}, {:.1} MB", bytes / 1e6)
    },
    captions: "Save captions",
    chapters: "Save chapters",
    ready: "Done: save it.",
    failed: |said| match said {
        "" => "This cannot be loaded: it needs the network once.".to_owned(),
        _ => format!("The browser gave up: {said}"),
    },

    live: "Live",
    microphone: "With microphone",
    record: Button {
        label: "Record",
        name: "Record what is flown from now on",
    },
    recording: "Recording",
    held: "Recording paused",
    hold: Button {
        label: "Pause",
        name: "Pause the recording",
    },
    go_on: Button {
        label: "Go on",
        name: "Go on recording",
    },
    end: Button {
        label: "Stop",
        name: "Stop the recording",
    },
    level: "Microphone level",
    refused: "No microphone: allow it for this page, or record without.",
    narrate: Button {
        label: "Narrate first",
        name: "Narrate first: the flight is replayed, and what you say is laid under the video",
    },
    narration: |seconds| format!("Narration of {} goes under the video", clock(seconds)),
    drop: Button {
        label: "Discard",
        name: "Discard the narration",
    },
};

/// Which formats are offered, and why not more.
fn formats(formats: Option<&Formats>, narrated: bool) -> String {
    let Some(formats) = formats else {
        return String::new();
    };
    let sound = match formats.sound.as_deref() {
        Some(codec) if narrated && codec != "aac" => {
            " Narration in an MP4 is Opus, as this browser has no AAC: some players are mute."
        }
        _ => "",
    };
    match (&formats.mp4, &formats.webm) {
        (Some(_), Some(codec)) => {
            format!("MP4 for slides (H.264), WebM ({}).{sound}", named(codec))
        }
        (Some(_), None) => {
            format!("MP4 (H.264) only: this browser encodes nothing that WebM takes.{sound}")
        }
        (None, Some(codec)) => format!(
            "WebM ({}) only: this browser does not encode H.264 at this size, which MP4 takes.",
            named(codec)
        ),
        (None, None) => "No video: this browser encodes none at this size. Record live, or make a \
                         GIF."
            .to_owned(),
    }
}

fn named(codec: &str) -> String {
    codec.to_uppercase()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_offered_is_said_with_the_reason() {
        let of = |mp4: Option<&str>, webm: Option<&str>| {
            let found = Formats {
                mp4: mp4.map(str::to_owned),
                webm: webm.map(str::to_owned),
                sound: Some("opus".to_owned()),
            };
            formats(Some(&found), false)
        };
        assert_eq!(
            of(Some("avc"), Some("vp9")),
            "MP4 for slides (H.264), WebM (VP9)."
        );
        assert!(of(None, Some("vp8")).starts_with("WebM (VP8) only: this browser does not"));
        assert!(of(Some("avc"), None).starts_with("MP4 (H.264) only"));
        assert!(of(None, None).starts_with("No video"));
    }

    #[test]
    fn the_time_left_is_rounded_up() {
        assert_eq!((FILM.progress)(3, 90, Some(3.2)), "Frame 3 of 90, 4 s left");
        assert_eq!(
            (FILM.progress)(3, 90, Some(121.0)),
            "Frame 3 of 90, 3 min left"
        );
        assert_eq!((FILM.progress)(0, 90, None), "Frame 0 of 90");
    }
}
