//! Appointments in a table (CSV): columns are found by their names, in the languages of salons.

use crate::intake::calendar::{CalledOff, Item, Odd, Said, Why};
use crate::intake::calendar::{chair_in, duration_ms};
use jiff::civil::{Date, DateTime, Time};
use jiff::tz::TimeZone;
use measure::{Instant, Span};
use std::collections::BTreeMap;

/// The line of names is looked for in so many first lines.
const FIRST_LINES: usize = 15;
/// Most rows that are read.
const MOST_ROWS: usize = 50_000;

/// What a column holds.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
enum Column {
    Id,
    Start,
    Date,
    Time,
    End,
    EndTime,
    Minutes,
    Title,
    Chair,
    Status,
}

/// Names of columns in small letters: English, Vietnamese, Spanish, French, German.
const NAMES: [(Column, &[&str]); 10] = [
    (
        Column::Id,
        &["id", "uid", "booking id", "appointment id", "mã", "mã hẹn", "nummer", "código"],
    ),
    (
        Column::Start,
        &["start", "starts", "begin", "start date time", "bắt đầu", "inicio", "début", "beginn"],
    ),
    (
        Column::Date,
        &["date", "day", "start date", "ngày", "ngày hẹn", "fecha", "día", "datum", "jour"],
    ),
    (
        Column::Time,
        &[
            "time",
            "start time",
            "giờ",
            "giờ hẹn",
            "hora",
            "hora de inicio",
            "heure",
            "uhrzeit",
            "zeit",
        ],
    ),
    (Column::End, &["end", "ends", "end date time", "kết thúc", "fin", "ende"]),
    (
        Column::EndTime,
        &["end time", "giờ kết thúc", "hora de fin", "hora fin", "heure de fin", "bis"],
    ),
    (
        Column::Minutes,
        &[
            "minutes",
            "duration",
            "min",
            "length",
            "phút",
            "thời gian",
            "duración",
            "durée",
            "dauer",
        ],
    ),
    (
        Column::Title,
        &[
            "service",
            "services",
            "treatment",
            "title",
            "subject",
            "summary",
            "appointment",
            "dịch vụ",
            "tiêu đề",
            "servicio",
            "servicios",
            "tratamiento",
            "asunto",
            "prestation",
            "soin",
            "leistung",
            "behandlung",
            "betreff",
        ],
    ),
    (
        Column::Chair,
        &["chair", "station", "seat", "ghế", "silla", "puesto", "fauteuil", "platz", "stuhl"],
    ),
    (Column::Status, &["status", "state", "trạng thái", "estado", "statut"]),
];

/// Words by which a row says that it was called off.
const CALLED_OFF: [&str; 12] = [
    "cancelled",
    "canceled",
    "cancel",
    "called off",
    "hủy",
    "đã hủy",
    "huỷ",
    "đã huỷ",
    "cancelado",
    "cancelada",
    "annulé",
    "abgesagt",
];

/// Names that only a cycle record has.
const OF_A_RECORD: [&str; 6] = ["temp", "°c", "press", "bar", "kpa", "nhiệt"];

type Columns = BTreeMap<Column, usize>;

/// The rows of a text, by the sign that parts its line of names best.
fn rows(text: &str) -> Vec<Vec<String>> {
    let head: Vec<&str> = text.lines().take(FIRST_LINES).collect();
    let count = |sign: char| head.iter().map(|line| line.matches(sign).count()).max().unwrap_or(0);
    let sign = [';', '\t', ','].into_iter().max_by_key(|sign| count(*sign)).unwrap_or(',');
    let mut reader = csv::ReaderBuilder::new()
        .has_headers(false)
        .flexible(true)
        .delimiter(sign as u8)
        .from_reader(text.as_bytes());
    let cells = |row: csv::StringRecord| row.iter().map(|cell| cell.trim().to_owned()).collect();
    reader.records().take(MOST_ROWS).map_while(Result::ok).map(cells).collect()
}

/// Which column is which, where this row is the line of names.
fn columns(row: &[String]) -> Option<Columns> {
    let mut columns = Columns::new();
    for (at, cell) in row.iter().enumerate() {
        let name = super::normal(cell).join(" ");
        if OF_A_RECORD.iter().any(|word| name.contains(word)) {
            return None;
        }
        let found = NAMES.iter().find(|(_, names)| names.contains(&name.as_str()));
        if let Some((column, _)) = found {
            columns.entry(*column).or_insert(at);
        }
    }
    let dated = columns.contains_key(&Column::Start)
        || (columns.contains_key(&Column::Date) && columns.contains_key(&Column::Time));
    (dated && columns.contains_key(&Column::Title)).then_some(columns)
}

/// Is there a line of names near the top that only appointments have?
pub fn is_table(bytes: &[u8]) -> bool {
    let end = bytes.len().min(16 * 1024);
    let text = decoded(&bytes[..end]);
    rows(&text).iter().take(FIRST_LINES).any(|row| columns(row).is_some())
}

/// The text of a table: UTF-8, UTF-16 with its mark, or else the most common single bytes.
pub fn decoded(bytes: &[u8]) -> String {
    if let Some((encoding, mark)) = encoding_rs::Encoding::for_bom(bytes) {
        return encoding.decode_without_bom_handling(&bytes[mark..]).0.into_owned();
    }
    match std::str::from_utf8(bytes) {
        Ok(text) => text.to_owned(),
        // A letter cut in two at the end of a first look is no other encoding.
        Err(error) if error.error_len().is_none() => {
            String::from_utf8_lossy(&bytes[..error.valid_up_to()]).into_owned()
        }
        Err(_) => encoding_rs::WINDOWS_1252.decode_without_bom_handling(bytes).0.into_owned(),
    }
}

/// Does the day come first in `03/04/2025`? `None`: the table does not say.
fn day_first(dates: impl Iterator<Item = (u16, u16)>) -> Option<bool> {
    let (mut first, mut second) = (false, false);
    for (one, two) in dates {
        first |= one > 12;
        second |= two > 12;
    }
    (first != second).then_some(first)
}

/// The numbers of a date, and whether it begins with the year.
fn numbers(text: &str) -> Option<([u16; 3], bool)> {
    let mut parts = text.split(['-', '/', '.']).map(|part| part.trim().parse::<u16>());
    let three = [parts.next()?.ok()?, parts.next()?.ok()?, parts.next()?.ok()?];
    (parts.next().is_none()).then_some((three, three[0] > 31))
}

fn date(text: &str, day_first: Option<bool>) -> Option<Date> {
    let ([one, two, three], year_first) = numbers(text)?;
    let (year, month, day) = match (year_first, day_first) {
        (true, _) => (one, two, three),
        // With points the day comes first wherever points are used.
        (false, _) if text.contains('.') => (three, two, one),
        (false, Some(true)) => (three, two, one),
        (false, Some(false)) => (three, one, two),
        (false, None) if one == two => (three, one, two),
        (false, None) => return None,
    };
    let year = if year < 100 { 2_000 + year } else { year };
    Date::new(i16::try_from(year).ok()?, i8::try_from(month).ok()?, i8::try_from(day).ok()?).ok()
}

/// `9:30`, `09:30:00`, `9.30`, `9h30`, `9:30 pm`.
fn time(text: &str) -> Option<Time> {
    let lower = text.trim().to_lowercase();
    let half = ["am", "a.m.", "sa", "pm", "p.m.", "ch"].into_iter().find(|h| lower.ends_with(h));
    let clock = half.map_or(lower.as_str(), |half| lower.trim_end_matches(half)).trim();
    let mut parts = clock.split([':', '.', 'h']).filter(|part| !part.is_empty());
    let hour: i8 = parts.next()?.parse().ok()?;
    let minute: i8 = parts.next().map_or(Some(0), |text| text.parse().ok())?;
    let afternoon = matches!(half, Some("pm" | "p.m." | "ch"));
    let hour = match (half, hour) {
        (Some(_), 12) => {
            if afternoon {
                12
            } else {
                0
            }
        }
        (Some(_), hour) if afternoon => hour + 12,
        (_, hour) => hour,
    };
    Time::new(hour, minute, 0, 0).ok()
}

/// A date and a time in one cell: `2025-06-02 09:30`, `2025-06-02T09:30`.
fn both(text: &str) -> Option<(&str, &str)> {
    let (day, time) = text.trim().split_once([' ', 'T'])?;
    Some((day, time.trim_end_matches('Z')))
}

struct Table<'a> {
    columns: Columns,
    rows: &'a [Vec<String>],
    day_first: Option<bool>,
    zone: &'a TimeZone,
}

impl Table<'_> {
    fn cell<'r>(&self, row: &'r [String], column: Column) -> Option<&'r str> {
        let cell = row.get(*self.columns.get(&column)?)?.as_str();
        (!cell.is_empty()).then_some(cell)
    }

    fn wall(&self, day: &str, clock: &str) -> Option<DateTime> {
        Some(date(day, self.day_first)?.to_datetime(time(clock)?))
    }

    fn moment(&self, wall: DateTime) -> Option<Instant> {
        let at = self.zone.to_ambiguous_timestamp(wall).compatible().ok()?;
        Some(Instant::from_millis(at.as_millisecond()))
    }

    fn start(&self, row: &[String]) -> Option<DateTime> {
        match self.cell(row, Column::Start) {
            Some(text) => match both(text) {
                Some((day, clock)) => self.wall(day, clock),
                // Start alone is a time beside a date, or a day that no time belongs to.
                None => self.wall(self.cell(row, Column::Date)?, text),
            },
            None => self.wall(self.cell(row, Column::Date)?, self.cell(row, Column::Time)?),
        }
    }

    fn end(&self, row: &[String], start: DateTime, at: Instant) -> Option<Instant> {
        let clock = |text: &str| self.moment(start.date().to_datetime(time(text)?));
        let end = match (self.cell(row, Column::End), self.cell(row, Column::EndTime)) {
            (Some(text), _) => match both(text) {
                Some((day, time)) => self.moment(self.wall(day, time)?),
                None => clock(text),
            },
            (None, Some(text)) => clock(text),
            (None, None) => {
                let text = self.cell(row, Column::Minutes)?;
                let minutes: Option<i64> = text.split(' ').next()?.parse().ok();
                let length = minutes.map(Span::from_minutes);
                Some(at + length.or_else(|| duration_ms(text).map(Span::from_millis))?)
            }
        };
        end.filter(|end| *end > at)
    }

    fn called_off(&self, row: &[String]) -> bool {
        let status = self.cell(row, Column::Status).map(str::to_lowercase).unwrap_or_default();
        CALLED_OFF.contains(&status.trim())
    }
}

/// What a table says; `None` where it has no line of names.
pub fn read(text: &str, asked: &crate::intake::calendar::Asked) -> Option<Said> {
    let rows = rows(text);
    let names = rows.iter().take(FIRST_LINES).position(|row| columns(row).is_some())?;
    let columns = columns(&rows[names])?;
    let dates = [Column::Start, Column::Date].into_iter().filter_map(|column| columns.get(&column));
    let cells = dates.flat_map(|at| rows[names + 1..].iter().filter_map(|row| row.get(*at)));
    let slashed = cells
        .map(|cell| both(cell).map_or(cell.as_str(), |(day, _)| day))
        .filter(|day| !day.contains('.'))
        .filter_map(numbers)
        .filter_map(|(three, year_first)| (!year_first).then_some((three[0], three[1])));
    let day_first = day_first(slashed);
    let table = Table { columns, rows: &rows[names + 1..], day_first, zone: &asked.zone };
    // Tables with the same names come from the same place.
    let name = rows[names].join("\n");
    let mut said = Said { name: Some(name), list: true, ..Said::default() };
    let mut same: BTreeMap<String, u32> = BTreeMap::new();
    for row in table.rows {
        let title = table.cell(row, Column::Title).unwrap_or_default().to_owned();
        if row.iter().all(String::is_empty) {
            continue;
        }
        let start = table.start(row).and_then(|wall| Some((wall, table.moment(wall)?)));
        let Some((wall, at)) = start else {
            said.odd.push(Odd { why: Why::Time, title });
            continue;
        };
        let chair = table.cell(row, Column::Chair).and_then(chair_in);
        let uid = match table.cell(row, Column::Id) {
            Some(id) => format!("id {id}"),
            None => {
                // Without an id a row is what it says; two that say the same are a pair.
                let said =
                    format!("row {} {chair:?} {}", at.millis(), super::normal(&title).join(" "));
                let number = same.entry(said.clone()).or_insert(0);
                *number += 1;
                format!("{said} {number}")
            }
        };
        if table.called_off(row) {
            let off: CalledOff = (uid, None);
            said.called_off.push(off);
        } else if at >= asked.from && at < asked.to {
            let end = table.end(row, wall, at);
            let item = Item { uid, recurrence: None, sequence: 0, start: at, end, title, chair };
            said.items.push(item);
        }
    }
    Some(said)
}
