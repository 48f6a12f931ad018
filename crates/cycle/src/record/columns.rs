//! Readings that are written as one list for each column.

use super::Unreadable;
use serde_json::Value;
use std::collections::VecDeque;

/// Bytes that the columns of one object may hold together: half a million rows of a usual record
/// need a third of it.
const MOST_HELD: usize = 64 * 1024 * 1024;

/// Rows written at a time.
const BATCH: usize = 500;

/// A list of plain values.
#[derive(Debug, Default)]
pub(super) struct Column {
    name: String,
    /// The values as they stand in the file, one behind the other.
    text: Vec<u8>,
    ends: Vec<u32>,
    /// Physical line of each.
    lines: Vec<u32>,
    only_texts: bool,
}

impl Column {
    pub fn new(name: String) -> Self {
        Self { name, only_texts: true, ..Self::default() }
    }

    /// One more value.
    pub fn push(&mut self, value: &[u8], line: u32) -> Result<(), Unreadable> {
        self.text.extend_from_slice(value);
        self.only_texts &= value.first() == Some(&b'"');
        self.ends.push(self.text.len() as u32);
        self.lines.push(line);
        if self.held() > MOST_HELD { Err(too_long()) } else { Ok(()) }
    }

    fn held(&self) -> usize {
        self.text.len() + 8 * self.ends.len()
    }

    fn value(&self, row: usize) -> Option<&[u8]> {
        let end = *self.ends.get(row)?;
        let start = row.checked_sub(1).map_or(0, |before| self.ends[before]);
        Some(&self.text[start as usize..end as usize])
    }

    fn texts(&self) -> Vec<String> {
        let value = |row| self.value(row).and_then(|text| serde_json::from_slice(text).ok());
        (0..self.ends.len()).filter_map(value).collect()
    }
}

/// The lists of one object.
#[derive(Debug, Default)]
pub(super) struct Columns {
    all: Vec<Column>,
    held: usize,
    /// Rows written.
    row: usize,
}

impl Columns {
    pub fn is_empty(&self) -> bool {
        self.all.is_empty()
    }

    /// One more list.
    pub fn add(&mut self, column: Column) -> Result<(), Unreadable> {
        self.held += column.held();
        if self.held > MOST_HELD {
            return Err(too_long());
        }
        self.all.push(column);
        Ok(())
    }

    /// A list of names that stands before rows without names.
    pub fn take_heading(&mut self) -> Option<Vec<u8>> {
        let at = self.all.iter().position(|column| column.only_texts && column.ends.len() > 1)?;
        let names: Vec<Value> = self.all.remove(at).texts().into_iter().map(Value::from).collect();
        Some(line_of(&names))
    }

    /// The longest lists make a table; of shorter ones the texts are notes. In a file that was `cut`
    /// off the last list may be short.
    pub fn into_table(self, cut: bool) -> Result<(Option<Self>, Vec<String>), Unreadable> {
        let rows = self.all.iter().map(|column| column.ends.len()).max().unwrap_or(0);
        let is_column = |column: &Column| 2 * column.ends.len() >= rows && rows > 2;
        let (table, asides): (Vec<Column>, Vec<Column>) = self.all.into_iter().partition(is_column);
        let mut notes = Vec::new();
        for aside in asides {
            notes.extend(aside.texts().iter().map(|text| format!("{}: {text}", aside.name)));
        }
        if !cut && table.iter().any(|column| column.ends.len() != rows) {
            return Err(Unreadable::new(
                table[0].lines.first().copied(),
                "the columns are not equally long, so that it is not sure which readings belong together",
                "export the record again, if it can be with one row a reading",
            ));
        }
        let table = (table.len() > 1).then_some(Self { all: table, held: self.held, row: 0 });
        Ok((table, notes))
    }

    /// Writes some rows as one object a line each. Gives whether there are more.
    pub fn write_rows(&mut self, out: &mut Vec<u8>, lines: &mut VecDeque<u32>) -> bool {
        let rows = self.all.iter().map(|column| column.ends.len()).max().unwrap_or(0);
        let until = rows.min(self.row + BATCH);
        let names: Vec<String> =
            self.all.iter().map(|column| Value::from(column.name.as_str()).to_string()).collect();
        let longest = self.all.iter().find(|column| column.ends.len() == rows);
        for row in self.row..until {
            for (at, (column, name)) in self.all.iter().zip(&names).enumerate() {
                out.push(if at == 0 { b'{' } else { b',' });
                out.extend_from_slice(name.as_bytes());
                out.push(b':');
                out.extend_from_slice(column.value(row).unwrap_or(b"null"));
            }
            out.extend_from_slice(b"}\n");
            lines.push_back(longest.and_then(|column| column.lines.get(row)).copied().unwrap_or(1));
        }
        self.row = until;
        until < rows
    }
}

fn too_long() -> Unreadable {
    Unreadable::new(
        None,
        format!("the columns are longer than {} MB together", MOST_HELD / (1024 * 1024)),
        "split the file into one for each cycle, or export it with one row a reading",
    )
}

/// Values as a line with commas between them, quoted where they have to be.
pub(super) fn line_of(values: &[Value]) -> Vec<u8> {
    let cell = |value: &Value| match value {
        Value::String(text) if text.contains([',', '"']) => {
            format!("\"{}\"", text.replace('"', "\"\""))
        }
        Value::String(text) => text.clone(),
        Value::Number(number) => number.to_string(),
        Value::Bool(flag) => flag.to_string(),
        _ => String::new(),
    };
    values.iter().map(cell).collect::<Vec<_>>().join(",").into_bytes()
}
