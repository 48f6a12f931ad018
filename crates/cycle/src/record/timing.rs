//! How the times of a table are written.

use super::Known;
use super::interval::{self, Stated};
use super::names::Channel;
use super::physics::quantile;
use super::plan::{TimeForm, TimePlan};
use super::sniff::{Kind, Table};
use super::source::text;
use super::stamp::{Order, SECOND, Scan, Shape};

/// Where the time stands, and in what form; nothing where there is none.
pub(super) fn time_plan(
    table: &Table<'_>,
    mark: u8,
    known: &Known,
    american: bool,
) -> Option<TimePlan> {
    let of_kind = |wanted: fn(Shape) -> bool| {
        (0..table.width).find(|c| matches!(table.kinds[*c], Kind::Time(shape) if wanted(shape)))
    };
    let half_day = (0..table.width).find(|c| table.kinds[*c] == Kind::HalfDay);
    let clock = of_kind(|shape| matches!(shape, Shape::Clock(_)));
    let dated = of_kind(|shape| shape == Shape::Dated);
    let day = of_kind(|shape| shape == Shape::Day);
    let plan = |column, form: (TimeForm, Option<&'static str>)| TimePlan {
        form: form.0,
        doubt: form.1,
        column,
        clock: None,
        half_day: None,
    };
    let order = |column| TimeForm::Dated(day_order(table, column, known, american));
    Some(match (dated, day, clock) {
        (Some(column), _, _) => plan(column, (order(column), None)),
        (None, Some(column), Some(clock)) => {
            TimePlan { clock: Some(clock), half_day, ..plan(column, (order(column), None)) }
        }
        (None, None, Some(column)) => {
            TimePlan { half_day, ..plan(column, clock_form(table, column)) }
        }
        _ => {
            let column = number_time_column(table, mark)?;
            plan(column, number_form(table, column, mark))
        }
    })
}

/// Which of the three numbers is the day.
fn day_order(table: &Table<'_>, column: usize, known: &Known, american: bool) -> Order {
    let numbers_of = |texts: Vec<Vec<u8>>| -> Vec<([u32; 3], bool)> {
        texts.iter().filter_map(|cell| Scan::read(cell)?.day_numbers()).collect()
    };
    // A year in front settles it, and most records have one.
    let leading = |row: &&[u8]| Scan::read(&table.text_of(row, column))?.day_numbers();
    if table.rows.first().and_then(leading).is_some_and(|(numbers, _)| numbers[0] > 31) {
        return Order::Ymd;
    }
    let first = numbers_of(table.first_texts(column));
    let plain = |(n, by_name): &([u32; 3], bool)| *by_name || n[0] > 12 || n[1] > 12;
    let days = if first.iter().any(plain) { first } else { numbers_of(table.texts(column)) };
    let any = |of: fn(&[u32; 3]) -> bool| days.iter().any(|(numbers, _)| of(numbers));
    if any(|n| n[0] > 31) {
        return Order::Ymd;
    }
    if days.iter().any(|(_, by_name)| *by_name) {
        return if any(|n| n[1] > 12) { Order::Mdy } else { Order::Dmy };
    }
    if any(|n| n[0] > 12) {
        return Order::Dmy;
    }
    if any(|n| n[1] > 12) {
        return Order::Mdy;
    }
    // Over midnight only the day moves, by one.
    let moves = |i: usize| days.windows(2).any(|pair| pair[0].0[i] != pair[1].0[i]);
    match (moves(0), moves(1)) {
        (true, false) => return Order::Dmy,
        (false, true) => return Order::Mdy,
        _ => {}
    }
    let points = table.first_texts(column).iter().take(1).any(|cell| cell.contains(&b'.'));
    match known.day_first {
        Some(true) => Order::Dmy,
        Some(false) => Order::Mdy,
        None if american && !points => Order::Mdy,
        None => Order::Dmy,
    }
}

/// A clock of the day, or a time counted from the start.
///
/// Of two numbers, hours and minutes make a hold sixty times as long as minutes and seconds, so
/// they are taken only where the heading says so.
fn clock_form(table: &Table<'_>, column: usize) -> (TimeForm, Option<&'static str>) {
    let scans: Vec<Scan> = table.texts(column).iter().filter_map(|cell| Scan::read(cell)).collect();
    let name = &table.names[column];
    let elapsed: Vec<i64> = scans.iter().filter_map(Scan::elapsed).collect();
    let (Some(first), Some(last)) = (elapsed.first(), elapsed.last()) else {
        return (TimeForm::Clock, None);
    };
    if scans.iter().any(Scan::has_half_day) {
        return (TimeForm::Clock, None);
    }
    let from_zero = *first < 60 * SECOND && last >= first;
    let beyond_clock = scans.iter().any(|scan| scan.clock().is_none());
    if table.kinds[column] == Kind::Time(Shape::Clock(2)) {
        let said = name.words.windows(2).any(|w| w[0] == "hh" && w[1] == "mm");
        // Minutes stand still for many rows, seconds at most for as many as there are channels.
        let still = elapsed.windows(2).filter(|pair| pair[0] == pair[1]).count();
        let stands_still = still * 10 > elapsed.len() * 9;
        let doubt = !name.elapsed && !beyond_clock && (!from_zero || stands_still);
        return match said {
            true => (TimeForm::Clock, None),
            false => (TimeForm::Elapsed, doubt.then_some(TWO_NUMBERS)),
        };
    }
    let counted = name.elapsed || beyond_clock || from_zero;
    let form = if counted { TimeForm::Elapsed } else { TimeForm::Clock };
    (form, None)
}

/// For a table without times: rows as far apart as somebody said or the lines before them say, by
/// the numbers of the rows where they have some.
pub(super) fn counted_plan(table: &Table<'_>, known: &Known) -> TimePlan {
    let lines: Vec<_> = table.before.iter().map(|line| text(line)).collect();
    let said = interval::stated(lines.iter().map(AsRef::as_ref));
    let known = known.interval_s.filter(|seconds| super::INTERVAL_S.contains(seconds));
    let (seconds, doubt) = match (known, said) {
        (Some(seconds), _) | (None, Stated::Seconds(seconds)) => (seconds, None),
        (None, Stated::Unlike) => (1.0, Some(UNLIKE_INTERVALS)),
        (None, Stated::Nowhere) => (1.0, Some(NO_INTERVAL)),
    };
    let is_index =
        |c: &usize| table.names[*c].channel == Channel::Index && table.kinds[*c] == Kind::Number;
    let index = (0..table.width).find(is_index);
    TimePlan {
        form: match index {
            Some(_) => TimeForm::Number(seconds * 1e6),
            None => TimeForm::Counted((seconds * 1e6) as i64),
        },
        doubt,
        column: index.unwrap_or(0),
        clock: None,
        half_day: None,
    }
}

const NO_INTERVAL: &str = "the rows have no times and it is not said how far apart they are, so they are shown a second apart: how many seconds lie between two rows?";
const UNLIKE_INTERVALS: &str = "the rows have no times and two intervals are stated, so they are shown a second apart: how many seconds lie between two rows?";
const TWO_NUMBERS: &str = "the times could be minutes and seconds or hours and minutes; they are read as minutes and seconds";
const SCALE: &str =
    "it is not said in what unit the times are, and the numbers do not tell it safely";
const TOO_SLOW: &str = "in the unit that is said of the times the rows lie minutes apart";

/// Rows further apart than this are no record of a cycle, seconds.
const SLOWEST_S: f64 = 120.0;

/// The numeric column that the heading calls a time, else the first one that only rises.
fn number_time_column(table: &Table<'_>, mark: u8) -> Option<usize> {
    let numeric = |c: &usize| table.kinds[*c] == Kind::Number;
    let named = |c: &usize| table.names[*c].channel == Channel::Time;
    let columns = || (0..table.width).filter(numeric);
    if let Some(column) = columns().find(named) {
        return Some(column);
    }
    let unnamed = |c: &usize| {
        let name = &table.names[*c];
        name.channel == Channel::Unknown || name.time_unit_s.is_some()
    };
    let mut rising: Vec<(usize, bool)> = Vec::new();
    for column in columns().filter(unnamed) {
        let values = table.numbers(column, mark);
        let steps: Vec<f64> = values.windows(2).map(|pair| pair[1] - pair[0]).collect();
        let ahead = steps.iter().filter(|step| **step > 0.0).count();
        if ahead * 10 >= steps.len() * 9 && !steps.is_empty() {
            rising.push((column, steps.iter().all(|step| *step == 1.0)));
        }
    }
    // Of two the one that merely counts rows is not the time.
    let telling = rising.iter().find(|(_, counts)| !counts);
    telling.or(rising.first()).map(|(column, _)| *column)
}

fn number_form(table: &Table<'_>, column: usize, mark: u8) -> (TimeForm, Option<&'static str>) {
    let name = &table.names[column];
    let values: Vec<f64> =
        table.numbers(column, mark).into_iter().filter(|v| v.is_finite()).collect();
    let (Some(first), Some(last)) = (values.first(), values.last()) else {
        return (TimeForm::Number(1e6), Some(SCALE));
    };
    for (range, micros) in
        [(9e8..5e9, 1e6), (9e11..5e12, 1e3), (9e14..5e15, 1.0), (9e17..5e18, 1e-3)]
    {
        if range.contains(first) {
            return (TimeForm::Epoch(micros), None);
        }
    }
    let mut steps: Vec<f64> =
        values.windows(2).map(|pair| pair[1] - pair[0]).filter(|step| *step > 0.0).collect();
    let usual = match steps.is_empty() {
        true => 1.0,
        false => quantile(&mut steps, 0.5),
    };
    if (20_000.0..80_000.0).contains(first) && usual < 0.02 && name.time_unit_s.is_none() {
        return (TimeForm::Serial, None);
    }
    if let Some(unit) = name.time_unit_s {
        let slow = usual * unit > SLOWEST_S;
        return (TimeForm::Number(unit * 1e6), slow.then_some(TOO_SLOW));
    }
    // Thousandths make every stretch shorter, and so can be taken where seconds cannot be.
    if usual > SLOWEST_S {
        return (TimeForm::Number(1e3), Some(SCALE));
    }
    // Minutes would make a hold sixty times as long; a short record with fractions may be one.
    let fractions = values.iter().any(|v| v.fract() != 0.0);
    let perhaps_minutes = fractions && last - first < 300.0;
    (TimeForm::Number(1e6), perhaps_minutes.then_some(SCALE))
}
