//! Pieces of JSON: where they end, and what they are.

use super::cells::{json_object, json_paths};
use super::source::{LONGEST_LINE, text as words};
use super::words::split;

/// A list of so many plain values is a column, and what holds it no reading.
const LONG_LIST: usize = 10;

/// What an element turns out to be.
#[derive(Debug, PartialEq, Eq)]
pub(super) enum Whole {
    /// A reading, of so many bytes.
    Row(usize),
    /// Something that holds readings.
    Holder,
    /// It is not all there yet.
    Unknown,
}

/// Brackets, then the first name or value. Other files may begin with a word in brackets.
pub(super) fn begins_like_json(head: &[u8]) -> bool {
    let marks = head.iter().copied().filter(|b| !b.is_ascii_whitespace());
    let (mut lists, mut objects) = (0, 0);
    for mark in marks {
        match mark {
            b'[' if objects == 0 => lists += 1,
            b'{' if objects == 0 => objects += 1,
            b'"' => return objects > 0 || lists > 1,
            b'-' | b'0'..=b'9' => return objects == 0 && lists > 1,
            _ => return false,
        }
    }
    false
}

/// Such a file is read line by line: there a garbled line costs no more than itself.
pub(super) fn is_an_object_a_line(head: &[u8], line_end: u8) -> bool {
    let mut lines = head.split(|b| *b == line_end).filter(|line| !line.trim_ascii().is_empty());
    let is_row = |line: &&[u8]| {
        json_object(line).is_some_and(|object| {
            json_paths(&object).len() >= 2 && !object.values().any(holds_readings)
        })
    };
    let Some(first) = lines.next() else {
        return false;
    };
    let opens = first.trim_ascii() == b"[";
    (opens || is_row(&first)) && lines.take(60).filter(is_row).count() + usize::from(!opens) >= 2
}

/// A list that is more than an aside of a reading.
fn holds_readings(value: &serde_json::Value) -> bool {
    value.as_array().is_some_and(|list| {
        list.len() >= LONG_LIST || list.first().is_some_and(|v| v.is_array() || v.is_object())
    })
}

/// The element at the front of `rest`: a reading, unless a list of lists or objects or a long list
/// of values lies in it, or it is longer than any line.
pub(super) fn whole(rest: &[u8]) -> Whole {
    let row = rest[0] == b'[';
    let (mut open, mut values, mut at) = (Vec::new(), 0, 0);
    while let Some(&b) = rest.get(at) {
        match b {
            b'"' => match end_of_text(&rest[at..]) {
                Some(length) => at += length - 1,
                None => break,
            },
            b'{' | b'[' if !row && open.last() == Some(&b'[') => return Whole::Holder,
            b'{' | b'[' => (values, _) = (0, open.push(b)),
            b'}' | b']' => {
                open.pop();
                if open.is_empty() {
                    return Whole::Row(at + 1);
                }
            }
            b',' if !row && open.last() == Some(&b'[') => {
                values += 1;
                if values >= LONG_LIST {
                    return Whole::Holder;
                }
            }
            _ => {}
        }
        at += 1;
        if at > LONGEST_LINE {
            break;
        }
    }
    if rest.len() > LONGEST_LINE { Whole::Holder } else { Whole::Unknown }
}

/// Length of the text at the front, with its quotes.
pub(super) fn end_of_text(rest: &[u8]) -> Option<usize> {
    let mut escaped = false;
    for (at, b) in rest.iter().enumerate().skip(1).take(LONGEST_LINE) {
        match b {
            b'"' if !escaped => return Some(at + 1),
            b'\\' => escaped = !escaped,
            _ => escaped = false,
        }
    }
    None
}

/// Some writers put words where JSON has nothing but `null`.
pub(super) fn without_not_a_number(text: &[u8]) -> Vec<u8> {
    const WORDS: [&[u8]; 3] = [b"-Infinity", b"Infinity", b"NaN"];
    let mut plain = Vec::with_capacity(text.len());
    let mut at = 0;
    while at < text.len() {
        let rest = &text[at..];
        if rest[0] == b'"' {
            let length = end_of_text(rest).unwrap_or(rest.len());
            plain.extend_from_slice(&rest[..length]);
            at += length;
        } else if let Some(word) = WORDS.iter().find(|word| rest.starts_with(word)) {
            plain.extend_from_slice(b"null");
            at += word.len();
        } else {
            plain.push(rest[0]);
            at += 1;
        }
    }
    plain
}

/// A value as a person would write it.
pub(super) fn plain_text(value: &[u8]) -> String {
    serde_json::from_slice::<String>(value).unwrap_or_else(|_| words(value).into_owned())
}

/// `name: value`, and the unit behind it where the name ends with one, as `hold_s` does.
pub(super) fn note(name: &str, value: &[u8]) -> String {
    let words = split(name);
    let unit = words.last().filter(|_| words.len() > 1).map_or("", String::as_str);
    let number = value.first().is_some_and(|b| b.is_ascii_digit() || *b == b'-');
    format!(
        "{name}: {}{}",
        plain_text(value),
        if number { format!(" {unit}") } else { String::new() }
    )
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn files_that_are_cut_into_lines() {
        let check = |head: &str, expected: bool| {
            let head = head.as_bytes();
            let found = begins_like_json(head) && !is_an_object_a_line(head, b'\n');
            assert_eq!(found, expected, "{}", words(head));
        };
        check(r#"[{"t":0,"temp":20},{"t":1,"temp":20}]"#, true);
        check("{\n  \"header\": {\"set\": 134},", true);
        check("[\n  [0, 20.1],\n  [1, 20.2]\n]", true);
        check("[{\"t\":0,\"temp\":20},\n{\"t\":1,\"temp\":20},\n{\"t\":2,\"temp\":20}]", true);
        check("{\"t\":0,\"temp\":20}\n{\"t\":1,\"temp\":20}\n", false);
        check("[\n{\"t\":0,\"temp\":20},\n{\"t\":1,\"temp\":20}\n]", false);
        check("[Record 12]\ntime;temp", false);
        check("[12:00:00] 20.1 1.01", false);
        check("[[run]]\nset = 134", false);
        check("time;temp", false);
    }

    #[test]
    fn elements() {
        let check = |piece: &str, expected: Whole| {
            assert_eq!(whole(piece.as_bytes()), expected, "{piece}");
        };
        check(r#"{"t":0,"a":{"b":"}"}}, {"#, Whole::Row(21));
        check(r#"{"t":0,"alarms":[1,2]}"#, Whole::Row(22));
        check(r#"{"t":0,"samples":[{"#, Whole::Holder);
        check(r#"{"t":[0,1,2,3,4,5,6,7,8,9,10]"#, Whole::Holder);
        check(r#"{"t":0,"name":"a\""#, Whole::Unknown);
        check("[0,1,2,3,4,5,6,7,8,9,10,11]]", Whole::Row(27));
    }

    #[test]
    fn notes_and_values() {
        assert_eq!(note("hold_s", b"240"), "hold_s: 240 s");
        assert_eq!(note("programme", br#""B \"134\"""#), r#"programme: B "134""#);
        assert_eq!(
            without_not_a_number(br#"{"NaN":NaN,"b":-Infinity}"#),
            br#"{"NaN":null,"b":null}"#
        );
    }
}
