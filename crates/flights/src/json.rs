//! Where in a JSON text a reader found what it could not read.

use std::fmt::Write;

/// An object or a list that is open, and what of it stands last.
enum Open<'a> {
    /// An object, and its key; none before the first and after a comma.
    Object(Option<&'a str>),
    /// A list, and the place in it, from 0.
    List(usize),
}

/// The path of what `error` is about, as `legs[2].bank_deg`; empty for the whole text. The reader
/// says where it stood, and the keys before that place are the path: so nothing has to be noted
/// while a text is read that has no errors.
pub fn path_of(json: &str, error: &serde_json::Error) -> String {
    let before = json
        .split_inclusive('\n')
        .take(error.line().saturating_sub(1));
    let read = before.map(str::len).sum::<usize>() + error.column();
    let mut open = Vec::new();
    // Where the string begins that is open now, and whether its next character is escaped.
    let mut string: Option<(usize, bool)> = None;
    for (at, byte) in json.bytes().enumerate().take(read) {
        match (string, byte) {
            (Some((from, true)), _) => string = Some((from, false)),
            (Some((from, _)), b'\\') => string = Some((from, true)),
            (Some((from, _)), b'"') => {
                if let Some(Open::Object(key @ None)) = open.last_mut() {
                    *key = json.get(from..at);
                }
                string = None;
            }
            (Some(_), _) => {}
            (None, b'"') => string = Some((at + 1, false)),
            (None, b'{') => open.push(Open::Object(None)),
            (None, b'[') => open.push(Open::List(0)),
            (None, b'}' | b']') => {
                open.pop();
            }
            (None, b',') => match open.last_mut() {
                Some(Open::Object(key)) => *key = None,
                Some(Open::List(place)) => *place += 1,
                None => {}
            },
            (None, _) => {}
        }
    }
    let mut path = String::new();
    for it in open {
        match it {
            Open::Object(None) => {}
            Open::Object(Some(key)) if path.is_empty() => path.push_str(key),
            // Writing to a string does not fail.
            Open::Object(Some(key)) => drop(write!(path, ".{key}")),
            Open::List(place) => drop(write!(path, "[{place}]")),
        }
    }
    path
}

#[cfg(test)]
mod tests {
    use super::*;
    use serde::Deserialize;

    #[derive(Debug, Deserialize)]
    #[serde(deny_unknown_fields)]
    #[allow(dead_code, reason = "only the errors are looked at")]
    struct Whole {
        name: String,
        #[serde(default)]
        parts: Vec<Part>,
        #[serde(default)]
        kind: Kind,
    }

    #[derive(Debug, Deserialize)]
    #[serde(deny_unknown_fields)]
    #[allow(dead_code, reason = "only the errors are looked at")]
    struct Part {
        at: [f64; 2],
        #[serde(default)]
        count: u8,
    }

    #[derive(Debug, Default, Deserialize)]
    #[serde(rename_all = "lowercase")]
    #[allow(dead_code, reason = "only the errors are looked at")]
    enum Kind {
        #[default]
        Plain,
        Of(Part),
    }

    fn path(json: &str) -> String {
        path_of(json, &serde_json::from_str::<Whole>(json).unwrap_err())
    }

    #[test]
    fn an_error_is_placed_by_the_keys_before_it() {
        for (json, expected) in [
            ("[]", ""),
            ("{}", ""),
            (r#"{"name": 1}"#, "name"),
            (r#"{"name": "a", "other": {}}"#, "other"),
            (
                r#"{"parts": [{"at": [1, 2]}, {"count": 1}], "name": ""}"#,
                "parts[1]",
            ),
            (
                r#"{"parts": [{"at": [1, 2]}, {"at": [1, "2"]}]}"#,
                "parts[1].at[1]",
            ),
            (r#"{"parts": [{"at": [1]}]}"#, "parts[0].at"),
            (
                r#"{"parts": [{"at": [1, 2], "count": 300}]}"#,
                "parts[0].count",
            ),
            (
                r#"{"parts": [{"at": [1, 2], "cuont": 3}]}"#,
                "parts[0].cuont",
            ),
            (r#"{"kind": "round"}"#, "kind"),
            (r#"{"kind": {"of": {"at": 3}}}"#, "kind.of.at"),
            (
                "{\n  \"name\": \"ä\\\"{[,\",\n  \"parts\": [\n    {\"at\": null}\n  ]\n}",
                "parts[0].at",
            ),
        ] {
            assert_eq!(path(json), expected, "{json}");
        }
    }

    #[test]
    fn a_text_cut_short_anywhere_has_a_place() {
        let whole = "{\"name\": \"a\\\\\",\n \"parts\": [{\"at\": [1, 2.5]}], \"kind\": \"plain\"}";
        serde_json::from_str::<Whole>(whole).unwrap();
        for end in 0..whole.len() {
            path(&whole[..end]);
        }
    }
}
