//! JSON that is not written an object a line, cut into lines that are.
//!
//! An array on one line, objects that go over several, one that holds the readings in a list or a
//! list for each column: each becomes one line a reading, in front of it and behind it one line for
//! each thing that the file says of itself. Every line keeps the number of the physical line on
//! which it began. Only the element under way is held, and of lists for each column the columns.

use super::Unreadable;
use super::columns::{Column, Columns};
use super::pieces::{
    Whole, begins_like_json, end_of_text, is_an_object_a_line, note, plain_text, whole,
    without_not_a_number,
};
use super::source::LONGEST_LINE;
use std::collections::VecDeque;

/// Deeper than this no record is nested.
const DEEPEST: usize = 32;

/// Bytes of lines made at a time.
const ENOUGH: usize = 64 * 1024;

/// What is open around the place that is being read.
#[derive(Debug)]
enum Frame {
    Object(Columns),
    /// Of objects or lists.
    List,
    /// Of plain values.
    Column(Column),
}

/// Did something come of the bytes that are there?
#[derive(PartialEq)]
enum Went {
    On,
    /// More bytes are needed.
    Hungry,
}

/// A file of JSON being cut into lines.
#[derive(Debug)]
pub(super) struct Reshape {
    input: Vec<u8>,
    at: usize,
    /// Physical line at `at`.
    line: u32,
    line_end: u8,
    open: Vec<Frame>,
    /// Name of the value that comes next in an object.
    name: Option<String>,
    /// In a text that is too long to be of use.
    in_long_text: bool,
    /// Columns whose rows are being written.
    table: Option<Columns>,
    rows_since_blank: bool,
    /// Physical lines of the lines made and not yet taken.
    lines: VecDeque<u32>,
    last: bool,
    done: bool,
}

impl Reshape {
    /// For a file that begins so; nothing where its lines can be read as they are.
    pub fn wanted(head: &[u8], line_end: u8) -> Option<Self> {
        if !begins_like_json(head) || is_an_object_a_line(head, line_end) {
            return None;
        }
        Some(Self {
            input: Vec::new(),
            at: 0,
            line: 1,
            line_end,
            open: Vec::new(),
            name: None,
            in_long_text: false,
            table: None,
            rows_since_blank: false,
            lines: VecDeque::new(),
            last: false,
            done: false,
        })
    }

    /// Takes more of the file; after the `last` of it nothing comes.
    pub fn feed(&mut self, bytes: &[u8], last: bool) {
        self.input.drain(..self.at);
        self.at = 0;
        self.input.extend_from_slice(bytes);
        self.last = last;
    }

    /// Has everything become lines?
    pub fn is_done(&self) -> bool {
        self.done
    }

    /// Number of the next line, without taking it.
    pub fn coming(&self) -> Option<u32> {
        self.lines.front().copied()
    }

    /// Number of the next line.
    pub fn take(&mut self) -> u32 {
        self.lines.pop_front().unwrap_or(self.line)
    }

    /// The line with this number comes again.
    pub fn back(&mut self, no: u32) {
        self.lines.push_front(no);
    }

    /// Makes lines of what is there. Gives whether more of the file is needed.
    ///
    /// # Errors
    ///
    /// [`Unreadable`] where columns do not belong together or are too long.
    pub fn go(&mut self, out: &mut Vec<u8>) -> Result<bool, Unreadable> {
        let from = out.len();
        while out.len() - from < ENOUGH && !self.done {
            if let Some(table) = &mut self.table {
                if !table.write_rows(out, &mut self.lines) {
                    self.table = None;
                }
                continue;
            }
            if self.step(out)? == Went::Hungry {
                if !self.last {
                    return Ok(true);
                }
                self.finish(out)?;
            }
        }
        Ok(false)
    }

    fn step(&mut self, out: &mut Vec<u8>) -> Result<Went, Unreadable> {
        if self.in_long_text {
            return Ok(self.leave_long_text());
        }
        while let Some(b) = self.input.get(self.at)
            && (b.is_ascii_whitespace() || matches!(b, b',' | b':'))
        {
            self.pass(1);
        }
        let Some(&b) = self.input.get(self.at) else {
            return Ok(Went::Hungry);
        };
        match b {
            b'{' | b'[' => Ok(self.begin(b, out)),
            b'}' | b']' => {
                self.end(b, out)?;
                Ok(Went::On)
            }
            _ => self.plain(out),
        }
    }

    /// Goes past so many bytes.
    fn pass(&mut self, count: usize) {
        let passed = &self.input[self.at..self.at + count];
        let ends = passed.iter().filter(|b| **b == self.line_end).count();
        self.line = self.line.saturating_add(u32::try_from(ends).unwrap_or(u32::MAX));
        self.at += count;
    }

    /// One more line.
    fn write(&mut self, text: &[u8], out: &mut Vec<u8>) {
        out.extend(text.iter().map(|b| if matches!(b, b'\n' | b'\r') { b' ' } else { *b }));
        out.push(b'\n');
        self.lines.push_back(self.line);
    }

    /// An object or a list opens.
    fn begin(&mut self, bracket: u8, out: &mut Vec<u8>) -> Went {
        let in_object = matches!(self.open.last(), Some(Frame::Object(_)));
        let inner = self.input[self.at + 1..].iter().copied().find(|b| !b.is_ascii_whitespace());
        let Some(inner) = inner else {
            if self.input.len() - self.at > LONGEST_LINE {
                self.give_up(out);
                return Went::On;
            }
            return Went::Hungry;
        };
        let of_plain = bracket == b'[' && !matches!(inner, b'{' | b'[');
        if !in_object && (bracket == b'{' || of_plain) {
            match whole(&self.input[self.at..]) {
                Whole::Row(length) => {
                    let row = self.input[self.at..self.at + length].to_vec();
                    self.row(&row, out);
                    self.pass(length);
                    return Went::On;
                }
                Whole::Unknown => return Went::Hungry,
                Whole::Holder => {}
            }
        }
        if self.open.len() >= DEEPEST {
            self.give_up(out);
            return Went::On;
        }
        let name = self.name.take().unwrap_or_default();
        let frame = if bracket == b'{' {
            if self.rows_since_blank && !in_object {
                self.write(b"", out);
                self.rows_since_blank = false;
            }
            Frame::Object(Columns::default())
        } else if of_plain && in_object {
            Frame::Column(Column::new(name))
        } else {
            if let (b'[', Some(Frame::Object(columns))) = (inner, self.open.last_mut())
                && let Some(heading) = columns.take_heading()
            {
                self.write(&heading, out);
            }
            Frame::List
        };
        self.open.push(frame);
        self.pass(1);
        Went::On
    }

    /// A reading: an object as it is, a list as a line of values.
    fn row(&mut self, row: &[u8], out: &mut Vec<u8>) {
        let row = without_not_a_number(row);
        self.rows_since_blank = true;
        if row.first() == Some(&b'{') {
            return self.write(&row, out);
        }
        match serde_json::from_slice::<Vec<serde_json::Value>>(&row) {
            Ok(values) => self.write(&super::columns::line_of(&values), out),
            Err(_) => self.write(&row, out),
        }
    }

    /// An object or a list closes.
    fn end(&mut self, bracket: u8, out: &mut Vec<u8>) -> Result<(), Unreadable> {
        self.name = None;
        match (self.open.pop(), bracket) {
            (Some(Frame::Object(columns)), b'}') => self.end_object(columns, false, out)?,
            (Some(Frame::List), b']') => {}
            (Some(Frame::Column(column)), b']') => {
                if let Some(Frame::Object(columns)) = self.open.last_mut() {
                    columns.add(column)?;
                }
            }
            _ => {
                self.give_up(out);
                return Ok(());
            }
        }
        self.pass(1);
        Ok(())
    }

    fn end_object(
        &mut self,
        columns: Columns,
        cut: bool,
        out: &mut Vec<u8>,
    ) -> Result<(), Unreadable> {
        let (table, texts) = columns.into_table(cut)?;
        for text in texts {
            self.write(text.as_bytes(), out);
        }
        self.rows_since_blank |= table.is_some();
        self.table = table;
        Ok(())
    }

    /// A text, a number or a word.
    fn plain(&mut self, out: &mut Vec<u8>) -> Result<Went, Unreadable> {
        let rest = &self.input[self.at..];
        let is_text = rest[0] == b'"';
        let length = if is_text {
            end_of_text(rest)
        } else {
            rest.iter().position(|b| b.is_ascii_whitespace() || b"{}[],:\"".contains(b))
        };
        let length = match length {
            Some(length) => length,
            None if self.last && !is_text => rest.len(),
            None if rest.len() > LONGEST_LINE => {
                self.in_long_text = is_text;
                self.pass(rest.len());
                return Ok(Went::On);
            }
            None => return Ok(Went::Hungry),
        };
        let value = without_not_a_number(&rest[..length]);
        let line = self.line;
        match self.open.last_mut() {
            Some(Frame::Object(_)) => match self.name.take() {
                Some(name) => self.write(note(&name, &value).as_bytes(), out),
                None => self.name = Some(plain_text(&value)),
            },
            Some(Frame::Column(column)) => column.push(&value, line)?,
            _ if is_text => self.write(plain_text(&value).as_bytes(), out),
            // Words behind the last bracket.
            None => self.write(&value, out),
            Some(Frame::List) => {}
        }
        self.pass(length);
        Ok(Went::On)
    }

    fn leave_long_text(&mut self) -> Went {
        let rest = &self.input[self.at..];
        let end = rest.iter().position(|b| *b == b'"').map(|quote| quote + 1);
        self.pass(end.unwrap_or(rest.len()));
        self.in_long_text = end.is_none();
        self.name = None;
        if self.in_long_text { Went::Hungry } else { Went::On }
    }

    /// The file is over: whatever is still open was cut off.
    fn finish(&mut self, out: &mut Vec<u8>) -> Result<(), Unreadable> {
        if self.table.is_some() {
            return Ok(());
        }
        let left = self.at < self.input.len();
        while let Some(frame) = self.open.pop() {
            match frame {
                Frame::Column(column) => {
                    if let Some(Frame::Object(columns)) = self.open.last_mut() {
                        columns.add(column)?;
                    }
                }
                Frame::Object(columns) if columns.is_empty() => {}
                Frame::Object(columns) => {
                    self.open.clear();
                    self.input.clear();
                    self.at = 0;
                    // Once its rows are written, what was cut off is said.
                    self.input.push(b'}');
                    return self.end_object(columns, true, out);
                }
                Frame::List => {}
            }
            if self.open.is_empty() {
                self.give_up(out);
                return Ok(());
            }
        }
        if left {
            self.give_up(out);
        }
        self.done = true;
        Ok(())
    }

    /// Ends with a line that no line end closes, as a file does that was cut off.
    fn give_up(&mut self, out: &mut Vec<u8>) {
        out.push(b'{');
        self.lines.push_back(self.line);
        self.done = true;
    }
}
