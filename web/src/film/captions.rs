//! What is said in a film and what its parts are called, and both as WebVTT files beside it.

use std::fmt::Write;

/// Captions and chapters along a flight; seconds since its start, in order.
#[derive(Clone, Debug, Default, PartialEq)]
pub(crate) struct Captions {
    /// From when to when what is said.
    pub(crate) cues: Vec<(f64, f64, String)>,
    /// From when on which chapter.
    pub(crate) chapters: Vec<(f64, String)>,
}

impl Captions {
    /// What is said at a time; nothing between two captions.
    pub(crate) fn cue_at(&self, time: f64) -> &str {
        let now = |(from, to, _): &&(f64, f64, String)| *from <= time && time < *to;
        self.cues.iter().rfind(now).map_or("", |(.., said)| said)
    }

    /// The chapter at a time; nothing before the first.
    pub(crate) fn chapter_at(&self, time: f64) -> &str {
        let before = |(from, _): &&(f64, String)| *from <= time;
        self.chapters
            .iter()
            .rfind(before)
            .map_or("", |(_, name)| name)
    }

    /// The captions of a film from one time of the flight to another that runs so many times slower.
    pub(crate) fn captions_vtt(&self, span: [f64; 2], slower: u32) -> String {
        vtt(&self.cues, span, slower)
    }

    /// The chapters of such a film: each lasts until the next.
    pub(crate) fn chapters_vtt(&self, span: [f64; 2], slower: u32) -> String {
        let nexts = self.chapters.iter().skip(1).map(|(from, _)| *from);
        let lasting: Vec<_> = self
            .chapters
            .iter()
            .zip(nexts.chain([f64::INFINITY]))
            .map(|((from, name), to)| (*from, to, name.clone()))
            .collect();
        vtt(&lasting, span, slower)
    }
}

fn vtt(cues: &[(f64, f64, String)], [start, end]: [f64; 2], slower: u32) -> String {
    let mut text = "WEBVTT\n".to_owned();
    let place = |time: f64| {
        let after = (time.clamp(start, end) - start) * f64::from(slower);
        let thousandths = (1000.0 * after).round() as u64;
        let (seconds, thousandths) = (thousandths / 1000, thousandths % 1000);
        let (minutes, seconds) = (seconds / 60, seconds % 60);
        format!(
            "{:02}:{:02}:{seconds:02}.{thousandths:03}",
            minutes / 60,
            minutes % 60
        )
    };
    let within = cues
        .iter()
        .filter(|(from, to, _)| *from < end && *to > start);
    for (from, to, said) in within {
        // Writing to a string cannot fail.
        let _ = write!(
            text,
            "\n{} --> {}\n{}\n",
            place(*from),
            place(*to),
            plain(said)
        );
    }
    text
}

/// Words as one line, with what the format takes for marks written out.
fn plain(said: &str) -> String {
    let line: Vec<&str> = said.split_whitespace().collect();
    line.join(" ")
        .replace('&', "&amp;")
        .replace('<', "&lt;")
        .replace('>', "&gt;")
}

#[cfg(test)]
mod tests {
    use super::*;

    fn captions() -> Captions {
        Captions {
            cues: vec![
                (1.0, 2.5, "Rolling <in>\n\nR & D -->".to_owned()),
                (8.0, 9.0, "Too late".to_owned()),
            ],
            chapters: vec![(0.0, "Level".to_owned()), (3.0, "Turn".to_owned())],
        }
    }

    #[test]
    fn the_files_hold_what_lies_within_the_film_at_its_own_times() {
        assert_eq!(
            captions().captions_vtt([0.5, 4.0], 4),
            "WEBVTT\n\n00:00:02.000 --> 00:00:08.000\nRolling &lt;in&gt; R &amp; D --&gt;\n"
        );
        assert_eq!(
            captions().chapters_vtt([1.0, 4.0], 1),
            "WEBVTT\n\n00:00:00.000 --> 00:00:02.000\nLevel\n\n\
             00:00:02.000 --> 00:00:03.000\nTurn\n"
        );
        let long = Captions {
            cues: vec![(3725.25, 3726.0, "Late".to_owned())],
            ..Captions::default()
        };
        assert!(
            long.captions_vtt([0.0, 4000.0], 1)
                .contains("01:02:05.250 --> 01:02:06.000")
        );
    }

    #[test]
    fn each_time_has_its_caption_and_chapter() {
        let captions = captions();
        assert_eq!(captions.cue_at(0.9), "");
        assert!(captions.cue_at(1.0).starts_with("Rolling"));
        assert_eq!(captions.cue_at(2.5), "");
        assert_eq!(captions.chapter_at(2.9), "Level");
        assert_eq!(captions.chapter_at(99.0), "Turn");
        assert_eq!(Captions::default().chapter_at(1.0), "");
    }
}
