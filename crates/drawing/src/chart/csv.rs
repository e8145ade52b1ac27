//! Series as comma-separated text (RFC 4180, lines ended by a line feed).

/// A table: a line of names, then lines of numbers with six decimals. What is no finite number
/// is left empty.
pub fn table<const N: usize>(names: [&str; N], rows: impl IntoIterator<Item = [f64; N]>) -> String {
    let mut out = names.map(field).join(",");
    out.push('\n');
    for row in rows {
        out.push_str(&row.map(number).join(","));
        out.push('\n');
    }
    out
}

/// Six decimals, nought without a sign; empty for what is no finite number.
pub fn number(value: f64) -> String {
    if !value.is_finite() {
        return String::new();
    }
    let text = format!("{value:.6}");
    match text.strip_prefix('-') {
        Some(rest) if rest.bytes().all(|b| matches!(b, b'0' | b'.')) => rest.to_owned(),
        _ => text,
    }
}

/// A heading in degrees to six decimals, kept within [0, 360).
pub fn heading(degrees: f64) -> f64 {
    let rounded = (degrees * 1e6).round() / 1e6;
    if rounded >= 360.0 { 0.0 } else { rounded }
}

/// Words as one field, quoted where they need to be. A leading sign that a spreadsheet would take
/// for a formula is kept off by an apostrophe.
pub fn field(words: &str) -> String {
    let words = if words.starts_with(['=', '+', '-', '@', '\t', '\r']) {
        format!("'{words}")
    } else {
        words.to_owned()
    };
    if words.contains(['"', ',', '\n', '\r']) {
        format!("\"{}\"", words.replace('"', "\"\""))
    } else {
        words
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn six_decimals_and_no_negative_nought() {
        let text = table(["a", "b"], [[1.0, -0.000_000_1], [f64::NAN, -2.5]]);
        assert_eq!(text, "a,b\n1.000000,0.000000\n,-2.500000\n");
        assert_eq!(number(heading(359.999_999_9)), "0.000000");
        assert_eq!(number(heading(f64::NAN)), "");
    }

    #[test]
    fn words_cannot_break_out_of_their_field() {
        assert_eq!(field("lag, then \"lead\""), "\"lag, then \"\"lead\"\"\"");
        assert_eq!(field("=1+1"), "'=1+1");
        assert_eq!(field("rule of thumb"), "rule of thumb");
    }
}
