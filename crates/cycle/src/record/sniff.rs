//! Finding the table in the first lines of a file: its separator, its rows and its heading.

use super::cells::{Cells, Split, json_object, json_paths, pairs};
use super::heading::{heading, is_glued};
use super::names::Name;
use super::number;
use super::source::{LONGEST_LINE, position, text};
use super::stamp::{Order, Scan, Shape, iso};
use std::cell::OnceCell;

/// Lines looked at when the first few do not settle it.
const MOST_LINES: usize = 4_000;

/// Lines looked at first.
const FIRST_LINES: usize = 60;

/// Rows looked at where the first do not tell.
const MOST_ROWS: usize = 10_000;

/// Rows of the same width that settle it.
const ENOUGH_ROWS: usize = 24;

/// What a cell looks like.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Kind {
    Empty,
    Number,
    Time(Shape),
    /// AM or PM on its own.
    HalfDay,
    Text,
}

/// The table found.
#[derive(Debug)]
pub(super) struct Table<'a> {
    pub split: Split,
    pub width: usize,
    /// Its first rows, and nothing else.
    pub rows: Vec<&'a [u8]>,
    /// Every row, looked for only where the first do not tell.
    every: OnceCell<Vec<&'a [u8]>>,
    lines: Lines<'a>,
    /// Kind of each column.
    pub kinds: Vec<Kind>,
    /// What the heading says of each column.
    pub names: Vec<Name>,
    /// Decimal commas and commas between the columns cannot be told apart.
    pub glued: bool,
    /// The heading's lines.
    pub heading: Vec<&'a [u8]>,
    /// Every line before the rows.
    pub before: Vec<&'a [u8]>,
}

/// The bytes in which the table must begin.
#[derive(Debug, Clone, Copy)]
pub(super) struct Lines<'a> {
    pub window: &'a [u8],
    pub line_end: u8,
    /// The file ends with the window.
    pub complete: bool,
}

impl<'a> Lines<'a> {
    /// The first lines; a last one without its end is left out unless the file ends there.
    fn first(self, most: usize) -> Vec<&'a [u8]> {
        let mut all = Vec::new();
        let mut rest = self.window;
        while !rest.is_empty() && all.len() < most {
            let (line, next) = match position(rest, self.line_end) {
                Some(at) => (&rest[..at], &rest[at + 1..]),
                None if self.complete => (rest, &rest[rest.len()..]),
                None => break,
            };
            let line = line.strip_suffix(b"\r").unwrap_or(line);
            all.push(&line[..line.len().min(LONGEST_LINE)]);
            rest = next;
        }
        all
    }
}

impl<'a> Table<'a> {
    /// Looks for the table that most lines agree on.
    pub fn find(lines: Lines<'a>) -> Option<Self> {
        let first = lines.first(FIRST_LINES);
        match best_split(&first) {
            Some(found) if found.fit.rows >= ENOUGH_ROWS => Self::build(lines, &first, found),
            _ => {
                let all = lines.first(MOST_LINES);
                let found = best_split(&all)?;
                Self::build(lines, &all, found)
            }
        }
    }

    fn build(lines: Lines<'a>, first: &[&'a [u8]], found: Found) -> Option<Self> {
        let Found { split, fit: Fit { width, rows: count, .. }, looked } = found;
        if count < 2 {
            return None;
        }
        let (mut rows, mut begins) = (Vec::with_capacity(count), None);
        let mut votes: Vec<Vec<Kind>> = vec![Vec::with_capacity(count); width];
        for (line, kinds) in looked.rows().filter(|(_, kinds)| kinds.len() == width) {
            begins.get_or_insert(line);
            for (column, kind) in kinds.iter().enumerate() {
                votes[column].push(*kind);
            }
            rows.push(first[line]);
        }
        let before = &first[..begins?];
        let glued = is_glued(before, &split, width);
        let (names, heading) = match &split {
            Split::Json(names) | Split::Pairs(names) => {
                (names.iter().map(|n| Name::read(n)).collect(), Vec::new())
            }
            _ => heading(before, &split, width, rows.first()?),
        };
        Some(Self {
            kinds: votes.iter().map(|votes| majority(votes)).collect(),
            names,
            split,
            width,
            rows,
            every: OnceCell::new(),
            lines,
            glued,
            heading,
            before: before.to_vec(),
        })
    }

    /// Every row in the window.
    fn every(&self) -> &[&'a [u8]] {
        self.every.get_or_init(|| {
            let mut cells = Cells::default();
            let first = self.rows.first().map(|row| row.as_ptr());
            let mut rows = self.lines.first(MOST_ROWS);
            rows.drain(..rows.iter().position(|l| Some(l.as_ptr()) == first).unwrap_or(0));
            rows.retain(|line| {
                cells.cut(&self.split, line, usize::MAX);
                cells.len() == self.width
            });
            rows
        })
    }

    /// Numbers of a column, not-a-number where there is none.
    pub fn numbers(&self, column: usize, mark: u8) -> Vec<f64> {
        let mut cells = Cells::default();
        self.every()
            .iter()
            .map(|row| {
                cells.cut(&self.split, row, column + 1);
                cells
                    .get(row, column)
                    .and_then(|cell| number::parse(cell, mark))
                    .map_or(f64::NAN, |n| n.value)
            })
            .collect()
    }

    /// Texts of a column in the first rows.
    pub fn first_texts(&self, column: usize) -> Vec<Vec<u8>> {
        self.texts_of(&self.rows, column)
    }

    /// Texts of a column in every row.
    pub fn texts(&self, column: usize) -> Vec<Vec<u8>> {
        self.texts_of(self.every(), column)
    }

    /// Text of a column in one row.
    pub fn text_of(&self, row: &[u8], column: usize) -> Vec<u8> {
        let mut cells = Cells::default();
        cells.cut(&self.split, row, column + 1);
        cells.get(row, column).unwrap_or_default().to_vec()
    }

    fn texts_of(&self, rows: &[&[u8]], column: usize) -> Vec<Vec<u8>> {
        let mut cells = Cells::default();
        rows.iter()
            .map(|row| {
                cells.cut(&self.split, row, column + 1);
                cells.get(row, column).unwrap_or_default().to_vec()
            })
            .collect()
    }

    /// The decimal mark: the last mark in a number that has two kinds, else one that is not
    /// followed by exactly three digits, else whichever there is.
    pub fn decimal_mark(&self) -> u8 {
        let mut cells = Cells::default();
        let (mut sure, mut perhaps) = ([0_usize; 2], [0_usize; 2]);
        for row in &self.rows {
            cells.cut(&self.split, row, self.width);
            for column in 0..self.width {
                let cell = cells.get(row, column).unwrap_or_default().trim_ascii();
                if self.kinds[column] != Kind::Number {
                    continue;
                }
                let Some(last) = cell.iter().rposition(|b| matches!(b, b'.' | b',')) else {
                    continue;
                };
                let which = usize::from(cell[last] == b',');
                let marks = |m: u8| cell.iter().filter(|b| **b == m).count();
                let behind = cell[last + 1..].iter().take_while(|b| b.is_ascii_digit()).count();
                if marks(b'.') > 0 && marks(b',') > 0 || behind != 3 {
                    sure[which] += 1;
                } else if marks(cell[last]) > 1 {
                    sure[1 - which] += 1;
                } else {
                    perhaps[which] += 1;
                }
            }
        }
        let comma = match sure {
            [0, 0] => perhaps[1] > perhaps[0],
            [points, commas] => commas > points,
        };
        if comma { b',' } else { b'.' }
    }
}

/// The lines, looked at under one split: the kinds of the cells of those that are rows.
#[derive(Debug, Default)]
struct Looked {
    kinds: Vec<Kind>,
    /// The row's line, and where its kinds end.
    ends: Vec<(usize, usize)>,
}

impl Looked {
    /// Each row's line, and the kinds of its cells.
    fn rows(&self) -> impl Iterator<Item = (usize, &[Kind])> {
        let mut from = 0;
        self.ends.iter().map(move |&(line, end)| {
            let kinds = &self.kinds[from..end];
            from = end;
            (line, kinds)
        })
    }
}

/// A split, how well it fits, and what it shows.
#[derive(Debug)]
struct Found {
    split: Split,
    fit: Fit,
    looked: Looked,
}

/// The split under which most lines are rows of one width.
fn best_split(lines: &[&[u8]]) -> Option<Found> {
    let present = Present::of(lines);
    let at = [b'\t', b';', b'|', b','].into_iter().filter(|separator| present.has(*separator));
    let mut candidates: Vec<Split> = at.map(Split::At).collect();
    if present.has(b' ') || present.has(b'\t') {
        candidates.push(Split::Blanks);
    }
    if let Some(paths) = present.has(b'{').then(|| paths_of_objects(lines)).flatten() {
        candidates = vec![Split::Json(paths)];
    } else if let Some(names) = present.has(b'=').then(|| names_of_pairs(lines)).flatten() {
        candidates.insert(0, Split::Pairs(names));
    }
    let mut best: Option<Found> = None;
    for split in candidates {
        let looked = look(&split, lines);
        if let Some(fit) = rows_of_one_width(&looked)
            && best.as_ref().is_none_or(|most| fit.better_than(&most.fit))
        {
            best = Some(Found { split, fit, looked });
        }
    }
    best
}

/// Which bytes stand anywhere in the lines.
struct Present([bool; 256]);

impl Present {
    fn of(lines: &[&[u8]]) -> Self {
        let mut present = [false; 256];
        for byte in lines.iter().copied().flatten() {
            present[usize::from(*byte)] = true;
        }
        Self(present)
    }

    fn has(&self, byte: u8) -> bool {
        self.0[usize::from(byte)]
    }
}

/// How well lines fall into rows of one width.
#[derive(Debug, Clone, Copy, Default)]
struct Fit {
    width: usize,
    rows: usize,
    cells: usize,
    texts: usize,
}

impl Fit {
    /// More rows; of about as many, those in which fewer cells are words: a wrong separator
    /// leaves numbers glued together.
    fn better_than(&self, other: &Self) -> bool {
        let clean = |fit: &Self| (fit.cells - fit.texts) * 1_000 / fit.cells.max(1);
        if self.rows * 10 > other.rows * 9 && other.rows * 10 > self.rows * 9 {
            clean(self) > clean(other)
        } else {
            self.rows > other.rows
        }
    }
}

fn look(split: &Split, lines: &[&[u8]]) -> Looked {
    let mut cells = Cells::default();
    let mut looked = Looked::default();
    for (line, bytes) in lines.iter().enumerate() {
        // A line without the separator is one cell, which is no row.
        let whole = match split {
            Split::At(separator) => !bytes.contains(separator),
            Split::Blanks => !bytes.contains(&b' ') && !bytes.contains(&b'\t'),
            Split::Json(_) | Split::Pairs(_) => false,
        };
        if whole {
            continue;
        }
        let from = looked.kinds.len();
        looked.kinds.extend(each_kind(&mut cells, split, bytes));
        if is_row(&looked.kinds[from..]) {
            looked.ends.push((line, looked.kinds.len()));
        } else {
            looked.kinds.truncate(from);
        }
    }
    looked
}

fn rows_of_one_width(looked: &Looked) -> Option<Fit> {
    let mut fits: std::collections::BTreeMap<usize, Fit> = std::collections::BTreeMap::new();
    for (_, kinds) in looked.rows() {
        let fit = fits.entry(kinds.len()).or_default();
        fit.width = kinds.len();
        fit.rows += 1;
        fit.cells += kinds.len();
        fit.texts += kinds.iter().filter(|kind| **kind == Kind::Text).count();
    }
    fits.into_values().max_by_key(|fit| fit.rows)
}

fn paths_of_objects(lines: &[&[u8]]) -> Option<Vec<String>> {
    let objects: Vec<_> = lines.iter().take(60).filter_map(|l| json_object(l)).collect();
    let mut paths: Vec<String> = objects.iter().flat_map(json_paths).collect();
    paths.sort();
    paths.dedup();
    (objects.len() >= 2 && paths.len() >= 2 && paths.len() <= 60).then_some(paths)
}

fn names_of_pairs(lines: &[&[u8]]) -> Option<Vec<String>> {
    let mut names: Vec<String> = Vec::new();
    let mut found = 0;
    for line in lines.iter().take(60).filter(|line| line.contains(&b'=')) {
        let line = text(line);
        let pairs = pairs(&line);
        if pairs.len() >= 2 {
            found += 1;
            for (name, _) in pairs {
                if !names.iter().any(|n| n == name) {
                    names.push(name.to_owned());
                }
            }
        }
    }
    (found >= 2 && names.len() <= 60).then_some(names)
}

/// Kinds of the cells of a line.
pub(super) fn kinds_of(cells: &mut Cells, split: &Split, line: &[u8]) -> Vec<Kind> {
    each_kind(cells, split, line).collect()
}

fn each_kind<'c>(
    cells: &'c mut Cells,
    split: &Split,
    line: &'c [u8],
) -> impl Iterator<Item = Kind> + use<'c> {
    cells.cut(split, line, usize::MAX);
    (0..cells.len().min(200)).map(|i| kind(cells.get(line, i).unwrap_or_default()))
}

/// What machines write where they have nothing to write, in any case of the letters.
const MISSING: &[&str] =
    &["", "-", "--", "---", "n/a", "na", "nan", "null", "none", "inf", "-inf", "err"];

/// Kind of one cell.
pub(super) fn kind(cell: &[u8]) -> Kind {
    let cell = cell.trim_ascii();
    let among = |words: &[&str]| words.iter().any(|w| cell.eq_ignore_ascii_case(w.as_bytes()));
    // The two commonest kinds first; nothing that is a day and a clock is a number as well.
    if iso(cell).is_some() {
        return Kind::Time(Shape::Dated);
    }
    if cell.first().is_some_and(u8::is_ascii_digit) && number::parse(cell, b'.').is_some() {
        return Kind::Number;
    }
    if among(MISSING) || cell.iter().all(|b| *b == b'*') {
        return Kind::Empty;
    }
    if number::parse(cell, b'.').is_some() || number::parse(cell, b',').is_some() {
        return Kind::Number;
    }
    if among(&["am", "pm", "a.m.", "p.m."]) {
        return Kind::HalfDay;
    }
    let Some(scan) = Scan::read(cell) else {
        return Kind::Text;
    };
    let day_exists =
        [Order::Ymd, Order::Dmy, Order::Mdy].into_iter().any(|order| scan.day(order).is_some());
    match scan.shape() {
        Some(shape @ Shape::Clock(_)) => Kind::Time(shape),
        Some(shape) if day_exists => Kind::Time(shape),
        _ => Kind::Text,
    }
}

/// At least a time and a number, or two numbers, and no more words than the half.
fn is_row(kinds: &[Kind]) -> bool {
    let count = |of: fn(&Kind) -> bool| kinds.iter().filter(|kind| of(kind)).count();
    let numbers = count(|k| *k == Kind::Number);
    let times = count(|k| matches!(k, Kind::Time(_)));
    let texts = count(|k| *k == Kind::Text);
    numbers >= 1 && numbers + times >= 2 && 2 * texts <= kinds.len()
}

fn majority(votes: &[Kind]) -> Kind {
    let mut best = (Kind::Empty, 0);
    for vote in votes {
        let count = votes.iter().filter(|v| *v == vote).count();
        if *vote != Kind::Empty && count > best.1 {
            best = (*vote, count);
        }
        if best.1 * 2 > votes.len() {
            break;
        }
    }
    best.0
}
