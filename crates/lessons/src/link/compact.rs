//! JSON in few bytes, for files whose words are known.
//!
//! | first byte | what follows |
//! |---|---|
//! | 0, 1, 2 | nothing: null, false, true |
//! | 3 | a list: its length, and each value |
//! | 4 | an object: its length, and each name and value |
//! | 5 | text: its length in bytes, and UTF-8 |
//! | 6 | a number: an `f64`, low byte first |
//! | 7, 8 | a whole number, or one below zero: how much it is |
//! | 9, 10 | a decimal number, or one below zero: how many places, and its figures |
//! | 32 and more | nothing: a word of the vocabulary, 32 the first |
//!
//! Lengths, whole numbers and figures are given seven bits a byte, the lowest first, the top bit
//! set where more follow. A name is text or a word.

use super::vocabulary::WORDS;
use serde_json::{Number, Value};

const NULL: u8 = 0;
const FALSE: u8 = 1;
const TRUE: u8 = 2;
const LIST: u8 = 3;
const OBJECT: u8 = 4;
const TEXT: u8 = 5;
const FLOAT: u8 = 6;
const WHOLE: u8 = 7;
const DECIMAL: u8 = 9;
/// Added to [`WHOLE`] and [`DECIMAL`] for a number below zero.
const BELOW_ZERO: u8 = 1;
const FIRST_WORD: u8 = 32;

/// The most lists and objects within each other; chosen, twice what a demonstration has.
const DEEPEST: usize = 16;
/// The most places of a decimal number: more are given as an `f64`.
const MOST_PLACES: u8 = 17;

/// The compact form of JSON text; none for text that is no JSON.
pub fn write(json: &str) -> Option<Vec<u8>> {
    let mut bytes = Vec::new();
    write_value(&serde_json::from_str(json).ok()?, &mut bytes);
    Some(bytes)
}

/// The JSON text of a compact form; none for what is no compact form.
pub fn read(bytes: &[u8]) -> Option<String> {
    let mut reader = Reader {
        bytes,
        json: String::new(),
    };
    reader.value(0)?;
    reader.bytes.is_empty().then_some(reader.json)
}

fn write_value(value: &Value, bytes: &mut Vec<u8>) {
    match value {
        Value::Null => bytes.push(NULL),
        Value::Bool(false) => bytes.push(FALSE),
        Value::Bool(true) => bytes.push(TRUE),
        Value::Number(number) => write_number(number, bytes),
        Value::String(text) => write_text(text, bytes),
        Value::Array(values) => {
            bytes.push(LIST);
            write_count(values.len() as u64, bytes);
            for value in values {
                write_value(value, bytes);
            }
        }
        Value::Object(entries) => {
            bytes.push(OBJECT);
            write_count(entries.len() as u64, bytes);
            for (name, value) in entries {
                write_text(name, bytes);
                write_value(value, bytes);
            }
        }
    }
}

fn write_text(text: &str, bytes: &mut Vec<u8>) {
    match WORDS.iter().position(|word| *word == text) {
        Some(place) => bytes.push(FIRST_WORD + place as u8),
        None => {
            bytes.push(TEXT);
            write_count(text.len() as u64, bytes);
            bytes.extend_from_slice(text.as_bytes());
        }
    }
}

/// As a decimal number where the shortest text that gives it again is one, so that what is typed
/// stays short and exact.
fn write_number(number: &Number, bytes: &mut Vec<u8>) {
    let text = number.to_string();
    let (below, size) = match text.strip_prefix('-') {
        Some(size) => (BELOW_ZERO, size),
        None => (0, text.as_str()),
    };
    let (whole, places) = size.split_once('.').unwrap_or((size, ""));
    let places = if places == "0" { "" } else { places };
    let short = places.len() <= usize::from(MOST_PLACES);
    match format!("{whole}{places}").parse() {
        Ok(figures) if short => {
            if places.is_empty() {
                bytes.push(WHOLE + below);
            } else {
                bytes.extend([DECIMAL + below, places.len() as u8]);
            }
            write_count(figures, bytes);
        }
        _ => {
            bytes.push(FLOAT);
            bytes.extend(number.as_f64().unwrap_or_default().to_le_bytes());
        }
    }
}

fn write_count(mut count: u64, bytes: &mut Vec<u8>) {
    while count > 0x7f {
        bytes.push(0x80 | (count & 0x7f) as u8);
        count >>= 7;
    }
    bytes.push(count as u8);
}

/// What is left to read, and the JSON so far.
struct Reader<'a> {
    bytes: &'a [u8],
    json: String,
}

impl Reader<'_> {
    fn value(&mut self, depth: usize) -> Option<()> {
        let first = self.byte()?;
        match first {
            NULL => self.json.push_str("null"),
            FALSE => self.json.push_str("false"),
            TRUE => self.json.push_str("true"),
            LIST | OBJECT if depth == DEEPEST => return None,
            LIST => {
                self.json.push('[');
                for index in 0..self.count()? {
                    self.comma(index);
                    self.value(depth + 1)?;
                }
                self.json.push(']');
            }
            OBJECT => {
                self.json.push('{');
                for index in 0..self.count()? {
                    self.comma(index);
                    let name = self.byte()?;
                    self.text(name)?;
                    self.json.push(':');
                    self.value(depth + 1)?;
                }
                self.json.push('}');
            }
            FLOAT => {
                let (number, rest) = self.bytes.split_first_chunk()?;
                self.bytes = rest;
                let number = Number::from_f64(f64::from_le_bytes(*number))?;
                self.json.push_str(&number.to_string());
            }
            WHOLE..=10 => {
                if matches!(first, 8 | 10) {
                    self.json.push('-');
                }
                self.decimal(first >= DECIMAL)?;
            }
            _ => self.text(first)?,
        }
        Some(())
    }

    /// A number without its sign.
    fn decimal(&mut self, has_places: bool) -> Option<()> {
        let places = if has_places { self.byte()? } else { 0 };
        if places > MOST_PLACES || (has_places && places == 0) {
            return None;
        }
        let places = usize::from(places);
        let figures = format!("{:0>1$}", self.count()?, places + 1);
        let (whole, part) = figures.split_at(figures.len() - places);
        self.json.push_str(whole);
        if has_places {
            self.json.push('.');
            self.json.push_str(part);
        }
        Some(())
    }

    /// Text or a word that begins with this byte.
    fn text(&mut self, first: u8) -> Option<()> {
        let text = if first == TEXT {
            let length = usize::try_from(self.count()?).ok()?;
            let (text, rest) = self.bytes.split_at_checked(length)?;
            self.bytes = rest;
            str::from_utf8(text).ok()?
        } else {
            WORDS.get(usize::from(first.checked_sub(FIRST_WORD)?))?
        };
        self.json.push_str(&serde_json::to_string(text).ok()?);
        Some(())
    }

    fn comma(&mut self, index: u64) {
        if index > 0 {
            self.json.push(',');
        }
    }

    fn byte(&mut self) -> Option<u8> {
        let (byte, rest) = self.bytes.split_first()?;
        self.bytes = rest;
        Some(*byte)
    }

    fn count(&mut self) -> Option<u64> {
        let mut count = 0;
        for shift in (0..64).step_by(7) {
            let byte = self.byte()?;
            let part = u64::from(byte & 0x7f);
            if (part << shift) >> shift != part {
                return None;
            }
            count |= part << shift;
            if byte < 0x80 {
                return Some(count);
            }
        }
        None
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn again(json: &str) -> String {
        read(&write(json).unwrap()).unwrap()
    }

    #[test]
    fn every_kind_of_value_comes_back() {
        for json in [
            "null",
            "[true,false,[],{}]",
            "{\"field\":{\"latitude_deg\":-52.25},\"what\":\"rose\"}",
            "\"a \\\"quoted\\\" caf\u{e9}\\n\"",
            "[0,127,128,18446744073709551615,-9223372036854775808]",
            "[0.5,-0.005,12345.678,0.00001,1e-7,-1.7976931348623157e308,0.1234567890123456]",
        ] {
            let value = |json: &str| serde_json::from_str::<Value>(json).unwrap();
            assert_eq!(value(&again(json)), value(json), "{json}");
        }
        // Whole numbers are written without places, which is the same number.
        assert_eq!(again("[15.0,-3.0,1e3]"), "[15,-3,1000]");
        assert_eq!(write("not JSON"), None);
    }

    #[test]
    fn known_words_and_small_numbers_are_short() {
        let bytes = write("{\"time_s\": 3.405, \"bank_deg\": 15}").unwrap();
        assert_eq!(bytes.len(), 10);
    }

    #[test]
    fn what_is_no_compact_form_is_refused() {
        let deep = [LIST, 1].repeat(DEEPEST + 1);
        let endless = [
            WHOLE, 0xff, 0xff, 0xff, 0xff, 0xff, 0xff, 0xff, 0xff, 0xff, 0x7f,
        ];
        let nan = [&[FLOAT][..], &f64::NAN.to_le_bytes()].concat();
        for bytes in [
            &[][..],
            &[11],
            &[255],
            &[NULL, NULL],
            &[LIST, 2, NULL],
            &[OBJECT, 1, NULL, NULL],
            &[TEXT, 1, 0xff],
            &[TEXT, 9, b'a'],
            &[DECIMAL, 0, 1],
            &[DECIMAL, 200, 1],
            &deep,
            &endless,
            &nan,
        ] {
            assert_eq!(read(bytes), None, "{bytes:?}");
        }
    }
}
