//! Reads a table of run features: one heading, one row a run.

use cycle::drift::{Figure, RunFeatures};
use std::fmt;
use std::fs::File;
use std::io::Read;
use std::path::Path;

/// Largest table that is read: a run is under 200 bytes, so this is the life of many machines.
const MOST_BYTES: u64 = 64 << 20;

/// The runs, oldest first.
#[derive(Debug)]
pub struct Table {
    pub runs: Vec<RunFeatures>,
    /// The columns that are watched.
    pub watched: Vec<&'static str>,
    /// What was left out or assumed, one sentence each.
    pub notes: Vec<String>,
}

/// Why a table could not be used: one plain sentence with the way out.
#[derive(Debug)]
pub struct Unusable(String);

impl fmt::Display for Unusable {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.0)
    }
}

fn unusable(what: impl Into<String>) -> Unusable {
    Unusable(what.into())
}

/// Reads and orders the runs of the file at `path`.
pub fn read(path: &Path) -> Result<Table, Unusable> {
    let cannot = |error: std::io::Error| {
        unusable(format!("cannot be read ({error}); check the path and its rights"))
    };
    let mut bytes = Vec::new();
    let file = File::open(path).map_err(cannot)?;
    file.take(MOST_BYTES + 1).read_to_end(&mut bytes).map_err(cannot)?;
    if bytes.len() as u64 > MOST_BYTES {
        return Err(unusable("is larger than 64 MB; give the table of one machine, one row a run"));
    }
    parse(&bytes)
}

/// The table in `bytes`.
fn parse(bytes: &[u8]) -> Result<Table, Unusable> {
    let text = std::str::from_utf8(bytes)
        .map_err(|_| unusable("is not UTF-8 text; save the table as CSV in UTF-8"))?;
    let text = text.strip_prefix('\u{feff}').unwrap_or(text);
    let mut reader =
        csv::ReaderBuilder::new().flexible(true).trim(csv::Trim::All).from_reader(text.as_bytes());
    let heading = reader.headers().map_err(|error| unusable(format!("line 1: {error}")))?;
    let heading: Vec<String> = heading.iter().map(str::to_ascii_lowercase).collect();
    let columns = Columns::find(&heading)?;
    let mut notes = Vec::new();
    let mut rows = Vec::new();
    let mut odd_lines = Vec::new();
    let mut impossible = 0;
    for record in reader.records() {
        let record = record.map_err(|error| unusable(format!("is no table: {error}")))?;
        let line = record.position().map_or(0, csv::Position::line);
        if record.len() != heading.len() {
            odd_lines.push(line);
            continue;
        }
        let row = columns.row(&record, line)?;
        impossible += row.impossible;
        rows.push(row);
    }
    if let Some(first) = odd_lines.first() {
        notes.push(format!(
            "{} rows with another number of fields than the heading were left out, the first in line {first}",
            odd_lines.len()
        ));
    }
    if impossible > 0 {
        notes.push(format!("{impossible} values that no machine can have count as not measured"));
    }
    if rows.is_empty() {
        return Err(unusable("has a heading and no run; add one row a run"));
    }
    let runs = in_order(rows, &columns, &mut notes);
    Ok(Table { runs, watched: columns.watched(), notes })
}

/// Where the known columns are.
struct Columns {
    cycle: Option<usize>,
    start: Option<usize>,
    first_of_day: Option<usize>,
    preheat: Option<usize>,
    figures: Vec<(Figure, usize)>,
}

/// One row before it is put in its place.
struct Row {
    cycle: Option<u64>,
    start: String,
    impossible: usize,
    features: RunFeatures,
}

impl Columns {
    fn find(heading: &[String]) -> Result<Self, Unusable> {
        let place = |name: &str| {
            let mut places = heading.iter().enumerate().filter(|(_, head)| *head == name);
            match (places.next(), places.next()) {
                (Some(_), Some(_)) => {
                    Err(unusable(format!("line 1: the column {name} stands there twice; keep one")))
                }
                (first, _) => Ok(first.map(|(at, _)| at)),
            }
        };
        let mut figures = Vec::new();
        for figure in Figure::ALL {
            figures.extend(place(figure.column())?.map(|at| (figure, at)));
        }
        if figures.is_empty() {
            return Err(unusable(format!(
                "line 1: no column that can be watched; the heading needs at least one of {}",
                Figure::ALL.map(Figure::column).join(", ")
            )));
        }
        Ok(Self {
            cycle: place("cycle")?,
            start: place("start")?,
            first_of_day: place("first_of_day")?,
            preheat: place("preheat_s")?,
            figures,
        })
    }

    fn watched(&self) -> Vec<&'static str> {
        self.figures.iter().map(|(figure, _)| figure.column()).collect()
    }

    fn row(&self, record: &csv::StringRecord, line: u64) -> Result<Row, Unusable> {
        let cell =
            |at: Option<usize>| at.and_then(|at| record.get(at)).filter(|cell| !is_missing(cell));
        let number = |at: Option<usize>, name: &str| match cell(at) {
            None => Ok(None),
            Some(cell) => cell.parse::<f64>().map(Some).map_err(|_| {
                unusable(format!(
                    "line {line}: {name} is not a number; write it with a point, or leave it empty"
                ))
            }),
        };
        let mut features =
            RunFeatures { preheat_s: number(self.preheat, "preheat_s")?, ..RunFeatures::default() };
        let mut impossible = 0;
        for (figure, at) in &self.figures {
            let value = number(Some(*at), figure.column())?;
            let (low, high) = figure.plausible();
            impossible += usize::from(value.is_some_and(|value| !(low..=high).contains(&value)));
            *slot(&mut features, *figure) = value;
        }
        features.first_of_day =
            match cell(self.first_of_day).map(str::to_ascii_lowercase).as_deref() {
                None => None,
                Some("1" | "1.0" | "true" | "yes") => Some(true),
                Some("0" | "0.0" | "false" | "no") => Some(false),
                Some(_) => {
                    return Err(unusable(format!("line {line}: first_of_day is neither 1 nor 0")));
                }
            };
        let cycle = match cell(self.cycle) {
            None => None,
            Some(cell) => Some(cell.parse().map_err(|_| {
                unusable(format!("line {line}: cycle is not a whole number; number the runs"))
            })?),
        };
        let start = cell(self.start).unwrap_or_default().to_owned();
        Ok(Row { cycle, start, impossible, features })
    }
}

fn is_missing(cell: &str) -> bool {
    matches!(cell.to_ascii_lowercase().as_str(), "" | "-" | "na" | "n/a" | "nan" | "null" | "none")
}

fn slot(features: &mut RunFeatures, figure: Figure) -> &mut Option<f64> {
    match figure {
        Figure::HeatUp => &mut features.heat_up_s,
        Figure::AirIn => &mut features.air_in_s,
        Figure::FirstPulse => &mut features.vac1_s,
        Figure::PulseDepth => &mut features.vac3_kpa,
        Figure::DryDepth => &mut features.dry_vac_kpa,
        Figure::Leak => &mut features.leak_kpa_per_min,
        Figure::Exhaust => &mut features.exhaust_s,
        Figure::Total => &mut features.total_s,
        Figure::PlateauLow => &mut features.plateau_t_min_c,
        Figure::PlateauHigh => &mut features.plateau_t_max_c,
        Figure::PlateauLength => &mut features.plateau_s,
        Figure::Saturation => &mut features.satdev_mean_k,
    }
}

/// Puts the runs in order: by their number where every row has one, else by their start where
/// every row has one (ISO form sorts as text), else as they stand. A row that stands there twice
/// counts once.
fn in_order(mut rows: Vec<Row>, columns: &Columns, notes: &mut Vec<String>) -> Vec<RunFeatures> {
    let numbered = rows.iter().all(|row| row.cycle.is_some());
    if numbered {
        rows.sort_by(|a, b| (a.cycle, &a.start).cmp(&(b.cycle, &b.start)));
    } else {
        if rows.iter().all(|row| !row.start.is_empty()) {
            rows.sort_by(|a, b| a.start.cmp(&b.start));
        }
        notes.push("not every run has a number in the column cycle; they are numbered from 1 in their order".to_owned());
    }
    let before = rows.len();
    rows.dedup_by(|b, a| {
        numbered && a.cycle == b.cycle && a.start == b.start && a.features == b.features
    });
    if rows.len() < before {
        notes.push(format!("{} rows stood there twice and count once", before - rows.len()));
    }
    let mut day = "";
    let mut runs = Vec::with_capacity(rows.len());
    for (place, row) in (1..).zip(&rows) {
        let mut run = row.features;
        run.cycle = row.cycle.filter(|_| numbered).unwrap_or(place);
        // Without the column, the first run of a date is the cold one.
        let date = row.start.split(['T', ' ']).next().unwrap_or_default();
        if columns.first_of_day.is_none() && !date.is_empty() {
            run.first_of_day = Some(date != day);
            day = date;
        }
        runs.push(run);
    }
    runs
}

#[cfg(test)]
#[path = "table_tests.rs"]
mod tests;
