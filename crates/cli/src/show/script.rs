//! A demonstration as plain text: its cues, texts and figures filled in.

use lessons::demonstration::{Act, Claim, Compare, Cover, Flown, Part, Question, Speed};
use std::fmt::Write;

/// Columns of a text's lines; chosen, for a terminal of the usual width.
const WIDTH: usize = 96;

/// Everything that is said and shown, in order.
pub(crate) fn of(flown: &Flown) -> String {
    let it = flown.demonstration();
    let mut out = format!("{}  {}\n", it.name, flown.said(&it.title));
    let about = [&it.aircraft, &it.place].map(|text| flown.said(text));
    let about: Vec<&str> = about
        .iter()
        .map(String::as_str)
        .filter(|text| !text.is_empty())
        .collect();
    paragraph(&mut out, "", &about.join("; "));
    paragraph(&mut out, "look for: ", &flown.said(&it.look_for));
    out.push('\n');
    for cue in &it.cues {
        let at = format!("{:6.1} s  ", cue.at_s);
        match &cue.act {
            Act::Ask(question) => asked(&mut out, &at, flown, question),
            act => paragraph(&mut out, &at, &said(flown, act)),
        }
    }
    if !it.rule.is_empty() {
        out.push('\n');
        paragraph(&mut out, "rule of thumb: ", &flown.said(&it.rule));
    }
    if !it.notes.is_empty() {
        let minutes: f64 = it.notes.iter().map(|note| note.minutes).sum();
        let _ = writeln!(out, "\nnotes, {minutes} min in all");
        for note in &it.notes {
            let minutes = format!("{:4} min  ", note.minutes);
            paragraph(&mut out, &minutes, &flown.said(&note.say));
        }
    }
    figures(&mut out, flown);
    out
}

fn said(flown: &Flown, act: &Act) -> String {
    match act {
        Act::Chapter(title) => format!("chapter: {}", flown.said(title)),
        Act::Caption(text) if text.is_empty() => "no caption".to_owned(),
        Act::Caption(text) => format!("caption: {}", flown.said(text)),
        Act::Speed(speed) => format!("speed: {}", speed_words(*speed)),
        Act::Freeze => "freeze".to_owned(),
        Act::Highlight(part) => format!("point at: {}", part_words(*part)),
        Act::Ask(question) => format!("question: {}", flown.said(&question.question)),
        Act::Cover(cover) => match cover {
            Cover::Nothing => "uncover".to_owned(),
            Cover::Compass => "cover: the compass".to_owned(),
            Cover::Heading => "cover: the heading".to_owned(),
        },
        Act::Reveal => "reveal".to_owned(),
        Act::Compare(compare) => compared(*compare),
        Act::SetIndicator => "set the heading indicator by the compass".to_owned(),
    }
}

fn speed_words(speed: Speed) -> &'static str {
    match speed {
        Speed::Eighth => "an eighth",
        Speed::Quarter => "a quarter",
        Speed::Half => "half",
        Speed::Real => "real time",
        Speed::Double => "double",
        Speed::Fourfold => "four times",
        Speed::Eightfold => "eight times",
    }
}

fn part_words(part: Part) -> &'static str {
    match part {
        Part::Nothing => "nothing",
        Part::Compass => "the compass",
        Part::Heading => "the heading",
        Part::Beside => "what stands beside the card",
        Part::Reasons => "the reasons",
        Part::Chart => "the chart",
    }
}

fn compared(compare: Compare) -> String {
    match compare {
        Compare::Alone => "compare with nothing".to_owned(),
        Compare::OtherHemisphere => "compare with the other hemisphere".to_owned(),
        Compare::LatitudeDeg(degrees) => format!("compare with latitude {degrees}°"),
        Compare::NoVerticalField => "compare with the horizontal field alone".to_owned(),
        Compare::NoSwirl => "compare with a liquid that does not swirl".to_owned(),
        Compare::OtherIron => "compare with and without iron".to_owned(),
    }
}

fn asked(out: &mut String, at: &str, flown: &Flown, question: &Question) {
    let Some(posed) = flown.posed(question) else {
        let nothing = format!(
            "question: {} (nothing to ask)",
            flown.said(&question.question)
        );
        return paragraph(out, at, &nothing);
    };
    paragraph(out, at, &format!("question: {}", posed.question));
    for (index, choice) in posed.choices.iter().enumerate() {
        let mark = if index == posed.right { '*' } else { ' ' };
        let _ = writeln!(
            out,
            "{:width$}{mark} {choice}",
            "",
            width = at.chars().count()
        );
    }
}

/// Each figure in words, its number, and what is claimed of it.
fn figures(out: &mut String, flown: &Flown) {
    if flown.figures().is_empty() {
        return;
    }
    out.push_str("\nfigures\n");
    let names = flown.figures().keys().map(|name| name.chars().count());
    let names = names.max().unwrap_or_default();
    for (name, measured) in flown.figures() {
        let _ = write!(out, "  {name:<names$}  {}", measured.words());
        if let Some(number) = measured.number() {
            let _ = write!(out, " ({number:.2}");
            for Claim { least, most, .. } in claims(flown, name) {
                let _ = write!(out, ", claimed {least} to {most}");
            }
            out.push(')');
        }
        out.push('\n');
    }
}

fn claims<'a>(flown: &'a Flown, name: &'a str) -> impl Iterator<Item = &'a Claim> {
    let claims = flown.demonstration().claims.iter();
    claims.filter(move |claim| claim.figure == name)
}

/// Words in lines of [`WIDTH`], all but the first indented under the text; nothing for no text.
fn paragraph(out: &mut String, opening: &str, text: &str) {
    if text.is_empty() {
        return;
    }
    let indent = opening.chars().count();
    let mut line = opening.to_owned();
    let mut length = indent;
    for word in text.split_whitespace() {
        let count = word.chars().count();
        if length > indent && length + 1 + count > WIDTH {
            out.push_str(&line);
            out.push('\n');
            line = " ".repeat(indent);
            length = indent;
        }
        if length > indent {
            line.push(' ');
            length += 1;
        }
        line.push_str(word);
        length += count;
    }
    out.push_str(&line);
    out.push('\n');
}
