//! Reads the words of a PDF back: what a reader gets who selects and copies them.
//!
//! Only what is needed: objects written one after another, streams packed by Flate, fonts of two
//! bytes to a letter with a table that says which characters they are.

use flate2::read::ZlibDecoder;
use std::collections::HashMap;
use std::io::Read;

/// The words of each page, line by line; parts of a line that stand apart are parted by a tab.
pub(crate) fn pages(pdf: &[u8]) -> Vec<String> {
    let objects = objects(pdf);
    let mut kids: Vec<usize> = (objects.iter())
        .filter(|(_, object)| object.head.contains("/Type/Page/"))
        .map(|(number, _)| *number)
        .collect();
    kids.sort_unstable();
    (kids.into_iter())
        .map(|page| {
            let page = &objects[&page].head;
            let resources = &objects[&reference(page, "/Resources ").unwrap()].head;
            let content = &objects[&reference(page, "/Contents ").unwrap()].stream;
            words(content, &fonts(resources, &objects))
        })
        .collect()
}

/// How many fonts are inside, as files.
pub(crate) fn embedded_fonts(pdf: &[u8]) -> usize {
    let objects = objects(pdf);
    let files = objects
        .values()
        .filter_map(|object| reference(&object.head, "/FontFile2 "));
    files
        .filter(|file| objects[file].stream.len() > 1000)
        .count()
}

struct Object {
    head: String,
    stream: Vec<u8>,
}

fn objects(pdf: &[u8]) -> HashMap<usize, Object> {
    let mut found = HashMap::new();
    let mut rest = pdf;
    while let Some(start) = find(rest, b" 0 obj\n") {
        let digits = rest[..start]
            .iter()
            .rev()
            .take_while(|it| it.is_ascii_digit())
            .count();
        let number = text(&rest[start - digits..start]).parse().unwrap();
        rest = &rest[start + 7..];
        let end = find(rest, b"endobj").unwrap();
        let stream = find(&rest[..end], b"stream\n");
        let head = text(&rest[..stream.unwrap_or(end)]);
        let mut unpacked = Vec::new();
        if let Some(from) = stream {
            // Packed bytes may hold anything, so their length is taken from the head.
            let length: usize = value(&head, "/Length ").unwrap().parse().unwrap();
            let packed = &rest[from + 7..from + 7 + length];
            if head.contains("/FlateDecode") {
                ZlibDecoder::new(packed).read_to_end(&mut unpacked).unwrap();
            }
            rest = &rest[from + 7 + length..];
        }
        found.insert(
            number,
            Object {
                head,
                stream: unpacked,
            },
        );
    }
    found
}

fn find(bytes: &[u8], what: &[u8]) -> Option<usize> {
    bytes.windows(what.len()).position(|window| window == what)
}

fn text(bytes: &[u8]) -> String {
    String::from_utf8_lossy(bytes).into_owned()
}

fn value<'a>(head: &'a str, name: &str) -> Option<&'a str> {
    let after = &head[head.find(name)? + name.len()..];
    after.split(['/', '>', ' ', '\n']).next()
}

fn reference(head: &str, name: &str) -> Option<usize> {
    value(head, name)?.parse().ok()
}

/// Which characters each font's letters are.
type Letters = HashMap<u16, String>;

fn fonts(resources: &str, objects: &HashMap<usize, Object>) -> HashMap<String, Letters> {
    let list = resources
        .split("/Font<<")
        .nth(1)
        .unwrap()
        .split(">>")
        .next()
        .unwrap();
    (list.split('/').filter(|font| !font.is_empty()))
        .map(|font| {
            let (name, number) = font.split_once(' ').unwrap();
            let number: usize = number.split(' ').next().unwrap().parse().unwrap();
            let table = reference(&objects[&number].head, "/ToUnicode ").unwrap();
            (name.to_owned(), letters(&text(&objects[&table].stream)))
        })
        .collect()
}

fn letters(table: &str) -> Letters {
    let hex = |it: &str| u16::from_str_radix(it, 16).unwrap();
    let mut letters = Letters::new();
    for line in table.lines().filter(|line| line.starts_with('<')) {
        let parts: Vec<&str> = line
            .split(['<', '>', ' '])
            .filter(|it| !it.is_empty())
            .collect();
        if let [letter, characters] = parts[..] {
            let units: Vec<u16> = (0..characters.len() / 4)
                .map(|index| hex(&characters[4 * index..4 * index + 4]))
                .collect();
            letters.insert(hex(letter), String::from_utf16(&units).unwrap());
        }
    }
    letters
}

/// Each letter stands at a place of its own: `1 0 0 -1 x y cm`, then `/font size Tf`, `(…)Tj`.
fn words(content: &[u8], fonts: &HashMap<String, Letters>) -> String {
    let mut words = String::new();
    let mut last: Option<[f64; 2]> = None;
    let mut rest = content;
    while let Some(start) = find(rest, b"BT ") {
        let before = text(&rest[..start]);
        let place = before.rsplit(" cm").nth(1).unwrap_or("");
        let numbers: Vec<f64> = place
            .rsplit([' ', '\n'])
            .take(2)
            .map(|it| it.parse().unwrap())
            .collect();
        let [y, x] = numbers[..] else {
            panic!("no place before {before}");
        };
        let end = start + find(&rest[start..], b")Tj").unwrap();
        let op = &rest[start..end];
        let open = op.iter().position(|byte| *byte == b'(').unwrap();
        let head = text(&op[..open]);
        let mut font = head.split('/').nth(1).unwrap().split(' ');
        let letters = &fonts[font.next().unwrap()];
        let size: f64 = font.next().unwrap().parse().unwrap();
        if let Some([before, line]) = last {
            if (line - y).abs() > 0.3 {
                words.push('\n');
            } else if x - before > 1.05 * size || x < before {
                words.push('\t');
            }
        }
        last = Some([x, y]);
        let bytes = unescaped(&op[open + 1..]);
        for pair in bytes.chunks(2) {
            words.push_str(&letters[&u16::from_be_bytes([pair[0], pair[1]])]);
        }
        rest = &rest[end + 3..];
    }
    words
}

fn unescaped(literal: &[u8]) -> Vec<u8> {
    let mut bytes = Vec::new();
    let mut rest = literal.iter().copied().peekable();
    while let Some(byte) = rest.next() {
        if byte != b'\\' {
            bytes.push(byte);
            continue;
        }
        let next = rest.next().unwrap();
        bytes.push(match next {
            b'n' => b'\n',
            b'r' => b'\r',
            b't' => b'\t',
            b'b' => 8,
            b'f' => 12,
            b'0'..=b'7' => {
                let mut value = next - b'0';
                for _ in 0..2 {
                    if let Some(digit) = rest.next_if(|it| (b'0'..=b'7').contains(it)) {
                        value = value * 8 + (digit - b'0');
                    }
                }
                value
            }
            other => other,
        });
    }
    bytes
}
