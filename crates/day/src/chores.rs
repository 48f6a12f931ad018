//! Chores: which falls due when, by the calendar and by count, whichever comes first.
//!
//! Days are days of the salon's own calendar, counted from any fixed one, so that a day of 23 or 25
//! hours is one day. Where nobody said how often, nothing is guessed.
//!
//! ```
//! use day::chores::{Due, Late, Part, Past, Rule, Today, due};
//! use measure::Instant;
//! let weekly = Rule { days: Some(7), runs: None, part: Part::AnyTime, stops_work: false };
//! let past = Past { since: 0, done: Some(10), left: &[], runs: 0 };
//! let (now, closes) = (Instant::from_millis(0), Instant::from_millis(1));
//! let on = |day, closed| Today { day, now, closes, closed };
//! assert_eq!(due(&weekly, &past, &on(16, &[])), Due::Next(Some(17)));
//! assert_eq!(due(&weekly, &past, &on(17, &[])), Due::Now);
//! assert_eq!(due(&weekly, &past, &on(19, &[])), Due::Overdue(Late::Since(17)));
//! // The salon was closed on days 17 and 18: it is due on the first day that is open.
//! assert_eq!(due(&weekly, &past, &on(19, &[(17, 19)])), Due::Now);
//! ```

use measure::Instant;

/// A day of the salon's calendar, counted from any fixed day.
pub type DayNumber = i64;

/// At which time of the day a chore is done.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Part {
    /// Before the first client: due as soon as the day begins.
    Opening,
    /// After the last client: due when the salon closes.
    Closing,
    /// Whenever hands are free: due as soon as the day begins.
    AnyTime,
}

/// How often.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Rule {
    /// At the latest so many days after it was last done, from 1; `None`: not by the calendar.
    pub days: Option<u32>,
    /// At the latest after so many runs, from 1; `None`: not by count.
    pub runs: Option<u32>,
    /// When in the day.
    pub part: Part,
    /// Work stops where it is overdue.
    pub stops_work: bool,
}

/// What became of it so far.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Past<'a> {
    /// The first day on which it was looked after here; counts while it was never done.
    pub since: DayNumber,
    /// When it was last done.
    pub done: Option<DayNumber>,
    /// Days since on which it was left out. Each covers its own day and no other.
    pub left: &'a [DayNumber],
    /// Runs since it was last done, or since it is looked after.
    pub runs: u32,
}

/// The day that is asked about.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Today<'a> {
    /// Which.
    pub day: DayNumber,
    /// The moment.
    pub now: Instant,
    /// When the last client has gone.
    pub closes: Instant,
    /// Days on which the salon is closed: first, and the first open one after.
    pub closed: &'a [(DayNumber, DayNumber)],
}

/// How a chore stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Due {
    /// Nobody said how often.
    NotKnown,
    /// It should have been done before.
    Overdue(Late),
    /// Due now.
    Now,
    /// Due later today.
    Later(Instant),
    /// Done today.
    Done,
    /// Left out today.
    Left,
    /// Not due: by the calendar on that day; `None`: only the count tells.
    Next(Option<DayNumber>),
}

/// What passed before it was done.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Late {
    /// It was due on that day.
    Since(DayNumber),
    /// So many runs too many were made.
    Runs(u32),
}

/// How a chore stands, by the calendar and by count, whichever comes first.
///
/// What was never done has to be done once within its first `days` days, the first one among them.
/// A day on which the salon is closed, or on which it was left out, is never the day on which it was
/// due. A chore that stops work cannot be left out: leaving it out is not heard.
#[must_use]
pub fn due(rule: &Rule, past: &Past<'_>, today: &Today<'_>) -> Due {
    if let Some(most) = rule.runs.filter(|most| past.runs >= *most) {
        let over = past.runs - most;
        return if over > 0 { Due::Overdue(Late::Runs(over)) } else { Due::Now };
    }
    if past.done == Some(today.day) {
        return Due::Done;
    }
    let Some(days) = rule.days.map(i64::from) else {
        return if rule.runs.is_some() { Due::Next(None) } else { Due::NotKnown };
    };
    let left = if rule.stops_work { &[] } else { past.left };
    if left.contains(&today.day) {
        return Due::Left;
    }
    let first = past.done.map_or(past.since.saturating_add(days - 1), |d| d.saturating_add(days));
    let day = first_open(first, today.closed, left);
    if day < today.day {
        Due::Overdue(Late::Since(day))
    } else if day > today.day {
        Due::Next(Some(day))
    } else if rule.part == Part::Closing && today.now < today.closes {
        Due::Later(today.closes)
    } else {
        Due::Now
    }
}

/// Does work stop? By the calendar when it is overdue; by count when the next run would be one too
/// many.
#[must_use]
pub fn stops(rule: &Rule, past: &Past<'_>, today: &Today<'_>) -> bool {
    let full = rule.runs.is_some_and(|most| past.runs >= most);
    rule.stops_work && (full || matches!(due(rule, past, today), Due::Overdue(_)))
}

/// The first day from `day` on that is neither closed nor left out.
fn first_open(
    mut day: DayNumber,
    closed: &[(DayNumber, DayNumber)],
    left: &[DayNumber],
) -> DayNumber {
    loop {
        let span = closed.iter().find(|(from, to)| (*from..*to).contains(&day));
        match span {
            Some((_, to)) => day = *to,
            None if left.contains(&day) => day = day.saturating_add(1),
            None => return day,
        }
    }
}

#[cfg(test)]
mod tests;
