//! How the times of a table are written.

use super::Known;
use super::names::Channel;
use super::plan::{TimeForm, TimePlan};
use super::sniff::{Kind, Table};
use super::stamp::{Order, Scan, Shape};

/// Where the time stands, and in what form; nothing where there is none.
pub(super) fn time_plan(
    table: &Table<'_>,
    mark: u8,
    known: &Known,
    american: bool,
    complete: bool,
) -> Option<TimePlan> {
    let of_kind = |wanted: fn(Shape) -> bool| {
        (0..table.width).find(|c| matches!(table.kinds[*c], Kind::Time(shape) if wanted(shape)))
    };
    let half_day = (0..table.width).find(|c| table.kinds[*c] == Kind::HalfDay);
    let clock = of_kind(|shape| matches!(shape, Shape::Clock(_)));
    if let Some(column) = of_kind(|shape| shape == Shape::Dated) {
        let form = TimeForm::Dated(day_order(table, column, known, american));
        return Some(TimePlan {
            form,
            column,
            clock: None,
            half_day: None,
        });
    }
    if let (Some(column), Some(clock)) = (of_kind(|shape| shape == Shape::Day), clock) {
        let form = TimeForm::Dated(day_order(table, column, known, american));
        return Some(TimePlan {
            form,
            column,
            clock: Some(clock),
            half_day,
        });
    }
    if let Some(column) = clock {
        return Some(TimePlan {
            form: clock_form(table, column),
            column,
            clock: None,
            half_day,
        });
    }
    let column = number_time_column(table, mark)?;
    Some(TimePlan {
        form: number_form(table, column, mark, complete),
        column,
        clock: None,
        half_day: None,
    })
}

/// Which of the three numbers is the day.
fn day_order(table: &Table<'_>, column: usize, known: &Known, american: bool) -> Order {
    let numbers_of = |texts: Vec<Vec<u8>>| -> Vec<([u32; 3], bool)> {
        texts
            .iter()
            .filter_map(|cell| Scan::read(cell)?.day_numbers())
            .collect()
    };
    let first = numbers_of(table.first_texts(column));
    let plain = |(n, by_name): &([u32; 3], bool)| *by_name || n[0] > 12 || n[1] > 12;
    let days = if first.iter().any(plain) {
        first
    } else {
        numbers_of(table.texts(column))
    };
    let any = |of: fn(&[u32; 3]) -> bool| days.iter().any(|(numbers, _)| of(numbers));
    if any(|n| n[0] > 31) {
        return Order::Ymd;
    }
    if days.iter().any(|(_, by_name)| *by_name) {
        return if any(|n| n[1] > 12) {
            Order::Mdy
        } else {
            Order::Dmy
        };
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
    let points = table
        .first_texts(column)
        .iter()
        .take(1)
        .any(|cell| cell.contains(&b'.'));
    match known.day_first {
        Some(true) => Order::Dmy,
        Some(false) => Order::Mdy,
        None if american && !points => Order::Mdy,
        None => Order::Dmy,
    }
}

/// A clock of the day, or a time counted from the start.
fn clock_form(table: &Table<'_>, column: usize) -> TimeForm {
    let scans: Vec<Scan> = table
        .texts(column)
        .iter()
        .filter_map(|cell| Scan::read(cell))
        .collect();
    if scans.iter().any(Scan::has_half_day) {
        return TimeForm::Clock;
    }
    let elapsed: Vec<i64> = scans.iter().filter_map(Scan::elapsed).collect();
    let (Some(first), Some(last)) = (elapsed.first(), elapsed.last()) else {
        return TimeForm::Clock;
    };
    let second = super::stamp::SECOND;
    let beyond_clock = scans.iter().any(|scan| scan.clock().is_none());
    let two_parts = table.kinds[column] == Kind::Time(Shape::Clock(2));
    // Hours and minutes hold the same number for many rows unless the record is a slow one.
    let fast = elapsed
        .windows(2)
        .all(|pair| pair[1] - pair[0] < 120 * second);
    let hours_and_minutes = two_parts && elapsed.windows(2).any(|pair| pair[0] == pair[1]);
    let counted = table.names[column].elapsed
        || beyond_clock
        || (*first < 60 * second && *last >= *first)
        || (two_parts && fast && !hours_and_minutes && last - first > 300 * second);
    if counted {
        TimeForm::Elapsed
    } else {
        TimeForm::Clock
    }
}

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

fn number_form(table: &Table<'_>, column: usize, mark: u8, complete: bool) -> TimeForm {
    let name = &table.names[column];
    let values: Vec<f64> = table
        .numbers(column, mark)
        .into_iter()
        .filter(|v| v.is_finite())
        .collect();
    let (Some(first), Some(last)) = (values.first(), values.last()) else {
        return TimeForm::Number(1e6);
    };
    for (range, micros) in [
        (9e8..5e9, 1e6),
        (9e11..5e12, 1e3),
        (9e14..5e15, 1.0),
        (9e17..5e18, 1e-3),
    ] {
        if range.contains(first) {
            return TimeForm::Epoch(micros);
        }
    }
    let mut steps: Vec<f64> = values.windows(2).map(|pair| pair[1] - pair[0]).collect();
    let usual = if steps.is_empty() {
        1.0
    } else {
        super::physics::quantile(&mut steps, 0.5)
    };
    if (20_000.0..80_000.0).contains(first) && usual < 0.02 && name.time_unit_s.is_none() {
        return TimeForm::Serial;
    }
    if let Some(unit) = name.time_unit_s {
        return TimeForm::Number(unit * 1e6);
    }
    let span = last - first;
    // A step of two minutes or more is too coarse for a record: thousandths are meant.
    if usual > 120.0 || span > 6.0 * 3_600.0 && usual >= 50.0 {
        return TimeForm::Number(1e3);
    }
    // Minutes make a hold sixty times as long, so they are taken only where seconds cannot be: a
    // whole file that shows heat and cooling in less time than any cycle needs.
    let fractions = values.iter().any(|v| v.fract() != 0.0);
    if complete && fractions && span < 240.0 && span > 5.0 && usual < 2.0 && values.len() > 10 {
        return TimeForm::Number(60e6);
    }
    TimeForm::Number(1e6)
}
