//! Words into lines.

use super::measure::width;

/// Breaks words into lines that are at most `room` wide, in the units of `size`. A word wider than
/// that is broken too, so that nothing is lost beyond the edge. A no-break space parts nothing.
pub(super) fn lines(words: &str, room: f64, size: f64, weight: u16) -> Vec<String> {
    let fits = |line: &str| width(line, size, weight) <= room;
    let mut lines = Vec::new();
    for stretch in words.lines() {
        let mut line = String::new();
        for word in stretch.split([' ', '\t']).filter(|word| !word.is_empty()) {
            let longer = match line.as_str() {
                "" => word.to_owned(),
                before => format!("{before} {word}"),
            };
            if fits(&longer) {
                line = longer;
                continue;
            }
            if !line.is_empty() {
                lines.push(std::mem::take(&mut line));
            }
            for letter in word.chars() {
                line.push(letter);
                if !fits(&line) && line.chars().count() > 1 {
                    line.pop();
                    lines.push(std::mem::replace(&mut line, letter.to_string()));
                }
            }
        }
        lines.push(line);
    }
    lines
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn lines_break_at_spaces_and_long_words_break_where_they_must() {
        // At size 1000 the widths are those of the font's own table: "aa" is 1050 wide.
        let broken = lines("aa aa aaaaa", 2400.0, 1000.0, 400);
        assert_eq!(broken, ["aa aa", "aaaa", "a"]);
        assert_eq!(lines("a\n\nb", 2400.0, 1000.0, 400), ["a", "", "b"]);
        assert_eq!(lines("", 10.0, 10.0, 400), [""; 0]);
    }

    proptest! {
        #[test]
        fn nothing_is_lost_and_nothing_is_too_wide(words in "[a-zA-Z0-9° ]{0,200}", room in 5.0..300.0_f64) {
            let broken = lines(&words, room, 10.0, 400);
            let letters = |text: &str| text.chars().filter(|c| *c != ' ').collect::<String>();
            prop_assert_eq!(letters(&broken.concat()), letters(&words));
            for line in &broken {
                prop_assert!(width(line, 10.0, 400) <= room || line.chars().count() == 1);
            }
        }
    }
}
