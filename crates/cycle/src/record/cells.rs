//! A line, cut into cells.

use super::source::text;
use serde_json::Value;

/// How a line falls into cells.
#[derive(Debug, Clone, PartialEq)]
pub(super) enum Split {
    /// At this byte, with quotes as in CSV.
    At(u8),
    /// At runs of blanks and tabs.
    Blanks,
    /// One JSON object a line; cells are the values of these paths.
    Json(Vec<String>),
    /// `name=value` pairs; cells are the values of these names.
    Pairs(Vec<String>),
}

/// Cells of one line. Reused from line to line, so that an ordinary line allocates nothing.
#[derive(Debug, Default)]
pub(super) struct Cells {
    ends: Vec<(u32, u32)>,
    /// Text of cells that do not stand in the line as they are.
    own: Vec<u8>,
    owned: bool,
}

impl Cells {
    /// Cuts a line; only the first `most` cells are looked for.
    pub fn cut(&mut self, split: &Split, line: &[u8], most: usize) {
        self.ends.clear();
        self.own.clear();
        self.owned = false;
        match split {
            Split::At(separator) if line.contains(&b'"') => self.cut_quoted(*separator, line),
            Split::At(separator) => self.cut_at(*separator, line, most),
            Split::Blanks => self.cut_blanks(line),
            Split::Json(paths) => self.cut_json(paths, line),
            Split::Pairs(names) => self.cut_pairs(names, line),
        }
    }

    /// How many cells there are.
    pub fn len(&self) -> usize {
        self.ends.len()
    }

    /// The cell, or nothing where the line has fewer.
    pub fn get<'a>(&'a self, line: &'a [u8], index: usize) -> Option<&'a [u8]> {
        let (start, end) = *self.ends.get(index)?;
        let from: &[u8] = if self.owned { &self.own } else { line };
        from.get(start as usize..end as usize)
    }

    /// Where the cell stands in the line; meaningless for JSON and pairs.
    pub fn span(&self, index: usize) -> Option<(u32, u32)> {
        self.ends.get(index).copied()
    }

    fn cut_at(&mut self, separator: u8, line: &[u8], most: usize) {
        let mut start = 0;
        for (at, b) in line.iter().enumerate() {
            if *b == separator {
                self.ends.push((start, at as u32));
                start = at as u32 + 1;
                if self.ends.len() == most {
                    return;
                }
            }
        }
        self.ends.push((start, line.len() as u32));
    }

    fn cut_blanks(&mut self, line: &[u8]) {
        let mut at = 0;
        while at < line.len() {
            let blanks = line[at..].iter().take_while(|b| is_blank(**b)).count();
            at += blanks;
            let word = line[at..].iter().take_while(|b| !is_blank(**b)).count();
            let mut end = at + word;
            // A separator before a blank belongs to neither cell: `56,5, 1,00`.
            if word > 1 && matches!(line[end - 1], b',' | b';' | b'|') {
                end -= 1;
            }
            if word > 0 {
                self.ends.push((at as u32, end as u32));
            }
            at += word;
        }
    }

    fn cut_quoted(&mut self, separator: u8, line: &[u8]) {
        let mut reader = csv::ReaderBuilder::new()
            .delimiter(separator)
            .has_headers(false)
            .flexible(true)
            .from_reader(line);
        let mut record = csv::ByteRecord::new();
        // Reading from memory cannot fail, and a flexible reader takes any number of cells.
        if reader.read_byte_record(&mut record).unwrap_or(false) {
            for cell in &record {
                self.push_own(cell);
            }
        }
        self.owned = true;
    }

    fn cut_json(&mut self, paths: &[String], line: &[u8]) {
        self.owned = true;
        let Some(object) = json_object(line) else {
            return;
        };
        for path in paths {
            let mut value = object.get(path.as_str());
            if let (None, Some((outer, inner))) = (value, path.split_once('.')) {
                value = object.get(outer).and_then(|v| v.get(inner));
            }
            match value {
                Some(Value::String(text)) => self.push_own(text.as_bytes()),
                Some(Value::Number(number)) => self.push_own(number.to_string().as_bytes()),
                Some(Value::Bool(flag)) => self.push_own(flag.to_string().as_bytes()),
                _ => self.push_own(b""),
            }
        }
    }

    fn cut_pairs(&mut self, names: &[String], line: &[u8]) {
        self.owned = true;
        let line = text(line);
        let found = pairs(&line);
        if found.len() < 2 {
            return;
        }
        for name in names {
            let value = found.iter().find(|(k, _)| k == name).map_or("", |(_, v)| v);
            self.push_own(value.as_bytes());
        }
    }

    fn push_own(&mut self, cell: &[u8]) {
        let start = self.own.len() as u32;
        self.own.extend_from_slice(cell);
        self.ends.push((start, self.own.len() as u32));
    }
}

const fn is_blank(b: u8) -> bool {
    matches!(b, b' ' | b'\t')
}

/// The object on a line; a comma behind it is allowed, as inside an array written line by line.
pub(super) fn json_object(line: &[u8]) -> Option<serde_json::Map<String, Value>> {
    let line = line.trim_ascii();
    let line = line.strip_suffix(b",").unwrap_or(line);
    if !line.starts_with(b"{") {
        return None;
    }
    serde_json::from_slice(line).ok()
}

/// Names of the plain values in an object; those of an inner object as `outer.inner`.
pub(super) fn json_paths(object: &serde_json::Map<String, Value>) -> Vec<String> {
    let mut paths = Vec::new();
    for (name, value) in object {
        match value {
            Value::Object(inner) => {
                let plain = inner.iter().filter(|(_, v)| !v.is_object() && !v.is_array());
                paths.extend(plain.map(|(inner, _)| format!("{name}.{inner}")));
            }
            Value::Array(_) => {}
            _ => paths.push(name.clone()),
        }
    }
    paths
}

/// The `name=value` pairs of a line; a value goes on to the next name.
pub(super) fn pairs(line: &str) -> Vec<(&str, &str)> {
    let mut found: Vec<(&str, &str)> = Vec::new();
    for piece in line.split(['\t', ';', ',', '|', ' ']) {
        if let Some((name, value)) = piece.split_once('=')
            && !name.is_empty()
        {
            found.push((name, value.trim_matches('"')));
        }
    }
    found
}

#[cfg(test)]
mod tests {
    // tests may stop at once
    #![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]
    use super::*;
    use proptest::prelude::*;

    fn cut(split: &Split, line: &str) -> Vec<String> {
        let mut cells = Cells::default();
        cells.cut(split, line.as_bytes(), usize::MAX);
        (0..cells.len())
            .map(|i| String::from_utf8_lossy(cells.get(line.as_bytes(), i).unwrap()).into_owned())
            .collect()
    }

    #[test]
    fn lines_fall_into_cells() {
        assert_eq!(cut(&Split::At(b';'), "a;;b"), ["a", "", "b"]);
        assert_eq!(cut(&Split::At(b','), "\"a,b\",c"), ["a,b", "c"]);
        assert_eq!(cut(&Split::Blanks, "  10:49   56,5, 1,00 "), ["10:49", "56,5", "1,00"]);
        let json = Split::Json(vec!["t".into(), "a.p".into(), "x".into()]);
        assert_eq!(cut(&json, "{\"a\":{\"p\":1.5},\"t\":\"12:00\"},"), ["12:00", "1.5", ""]);
        assert_eq!(cut(&json, "{\"a\":"), Vec::<String>::new());
        let pairs = Split::Pairs(vec!["T".into(), "p".into()]);
        assert_eq!(cut(&pairs, "p=1.5 T=20; x=2"), ["20", "1.5"]);
    }

    proptest! {
        /// The CSV library is the yardstick.
        #[test]
        fn cells_are_those_of_the_library(line in "[a-z0-9. -]{1,8}([;][a-z0-9. -]{0,8}){0,5}") {
            let mut theirs = csv::ReaderBuilder::new().delimiter(b';').has_headers(false).from_reader(line.as_bytes());
            let theirs: Vec<String> = theirs.records().next().unwrap().unwrap().iter().map(str::to_owned).collect();
            prop_assert_eq!(cut(&Split::At(b';'), &line), theirs);
        }
    }
}
