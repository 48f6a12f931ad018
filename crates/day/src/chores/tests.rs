#![allow(clippy::unwrap_used)] // tests may stop at once
use super::*;
use proptest::prelude::*;

const DAILY: Rule = Rule { days: Some(1), runs: None, part: Part::AnyTime, stops_work: false };
const CLOSING: Rule = Rule { part: Part::Closing, ..DAILY };
const WEEKLY: Rule = Rule { days: Some(7), ..DAILY };
const FILTER: Rule = Rule { days: None, runs: Some(100), part: Part::AnyTime, stops_work: true };
const NOBODY_KNOWS: Rule = Rule { days: None, runs: None, part: Part::AnyTime, stops_work: true };
const NEVER: Past<'_> = Past { since: 100, done: None, left: &[], runs: 0 };

fn at(day: DayNumber, hour: i64) -> Today<'static> {
    let moment = |hour: i64| Instant::from_millis((day * 24 + hour) * 3_600_000);
    Today { day, now: moment(hour), closes: moment(18), closed: &[] }
}

/// Counted by hand on a calendar.
#[test]
fn by_the_calendar() {
    let check = |rule: &Rule, past: Past<'_>, today: Today<'_>, expected: Due| {
        assert_eq!(due(rule, &past, &today), expected, "{rule:?} {past:?} {today:?}");
    };
    let done = |day| Past { done: Some(day), ..NEVER };
    check(&DAILY, NEVER, at(100, 9), Due::Now);
    check(&DAILY, done(100), at(100, 9), Due::Done);
    check(&DAILY, done(100), at(101, 9), Due::Now);
    check(&DAILY, done(100), at(103, 9), Due::Overdue(Late::Since(101)));
    check(&CLOSING, done(100), at(101, 9), Due::Later(at(101, 18).now));
    check(&CLOSING, done(100), at(101, 18), Due::Now);
    check(&CLOSING, done(99), at(101, 9), Due::Overdue(Late::Since(100)));
    check(&WEEKLY, NEVER, at(105, 9), Due::Next(Some(106)));
    check(&WEEKLY, NEVER, at(106, 9), Due::Now);
    check(&WEEKLY, done(100), at(106, 9), Due::Next(Some(107)));
    check(&NOBODY_KNOWS, NEVER, at(900, 9), Due::NotKnown);
    check(&NOBODY_KNOWS, done(900), at(900, 9), Due::Done);
    // Closed on the day on which it was due and the one after: due when the door opens again.
    let closed = |day, spans| Today { closed: spans, ..at(day, 9) };
    check(&DAILY, done(100), closed(101, &[(101, 103)]), Due::Next(Some(103)));
    check(&DAILY, done(100), closed(103, &[(101, 103)]), Due::Now);
    check(&DAILY, done(100), closed(104, &[(101, 103)]), Due::Overdue(Late::Since(103)));
    // Left out covers its own day.
    let left = |day| Past { left: &[101], ..done(day) };
    check(&DAILY, left(100), at(101, 9), Due::Left);
    check(&DAILY, left(100), at(102, 9), Due::Now);
    check(&WEEKLY, left(94), at(102, 9), Due::Now);
    check(&WEEKLY, left(93), at(101, 9), Due::Left);
    check(&WEEKLY, left(93), at(102, 9), Due::Overdue(Late::Since(100)));
}

#[test]
fn by_count_and_whichever_comes_first() {
    let check = |rule: &Rule, runs, day, expected: Due, stopped| {
        let past = Past { runs, done: Some(100), ..NEVER };
        assert_eq!(due(rule, &past, &at(day, 9)), expected, "{runs} {day}");
        assert_eq!(stops(rule, &past, &at(day, 9)), stopped, "{runs} {day}");
    };
    check(&FILTER, 34, 500, Due::Next(None), false);
    check(&FILTER, 99, 500, Due::Next(None), false);
    // The hundred and first run would be one too many.
    check(&FILTER, 100, 500, Due::Now, true);
    check(&FILTER, 103, 500, Due::Overdue(Late::Runs(3)), true);
    let both = Rule { days: Some(30), ..FILTER };
    check(&both, 34, 129, Due::Next(Some(130)), false);
    check(&both, 100, 129, Due::Now, true);
    check(&both, 34, 131, Due::Overdue(Late::Since(130)), true);
    check(&Rule { stops_work: false, ..both }, 34, 131, Due::Overdue(Late::Since(130)), false);
    check(&NOBODY_KNOWS, 34, 500, Due::NotKnown, false);
}

#[test]
fn what_stops_work_cannot_be_left_out() {
    let rule = Rule { stops_work: true, ..DAILY };
    let past = Past { done: Some(100), left: &[101, 102], ..NEVER };
    assert!(stops(&rule, &past, &at(102, 9)));
    assert_eq!(due(&rule, &past, &at(102, 9)), Due::Overdue(Late::Since(101)));
}

fn urgency(due: Due) -> u8 {
    match due {
        Due::Overdue(_) => 3,
        Due::Now => 2,
        Due::Later(_) => 1,
        _ => 0,
    }
}

prop_compose! {
    fn rules()(
        days in prop::option::of(1..40_u32), runs in prop::option::of(1..40_u32),
        part in prop::sample::select(vec![Part::Opening, Part::Closing, Part::AnyTime]),
        stops_work: bool,
    ) -> Rule {
        Rule { days, runs, part, stops_work }
    }
}

prop_compose! {
    fn days_off()(from in 60..160_i64, many in 0..9_i64) -> (DayNumber, DayNumber) {
        (from, from + many)
    }
}

proptest! {
    #[test]
    fn a_day_on_which_the_salon_is_closed_is_never_the_day_on_which_it_was_due(
        rule in rules(), done in prop::option::of(60..140_i64), runs in 0..60_u32,
        left in prop::collection::vec(60..160_i64, 0..5),
        closed in prop::collection::vec(days_off(), 0..5), day in 100..160_i64, hour in 0..24_i64,
    ) {
        let past = Past { since: 80, done: done.filter(|done| *done <= day), left: &left, runs };
        let today = Today { closed: &closed, ..at(day, hour) };
        if let Due::Overdue(Late::Since(since)) | Due::Next(Some(since)) = due(&rule, &past, &today) {
            prop_assert!(closed.iter().all(|(from, to)| !(*from..*to).contains(&since)));
        }
        // Closing one day more makes nothing more urgent.
        let more: Vec<_> = closed.iter().copied().chain([(day - 3, day - 1)]).collect();
        let after = Today { closed: &more, ..today };
        prop_assert!(urgency(due(&rule, &past, &after)) <= urgency(due(&rule, &past, &today)));
        // By calendar and by count: the more urgent one of both.
        let alone = |rule: Rule| urgency(due(&rule, &past, &today));
        let both = alone(rule);
        let by_days = alone(Rule { runs: None, ..rule });
        let by_runs = alone(Rule { days: None, ..rule });
        prop_assert!(both >= by_runs);
        prop_assert!(both >= by_days || rule.runs.is_some_and(|most| runs == most));
        // Work stops by a rule that says so, and only then.
        prop_assert!(rule.stops_work || !stops(&rule, &past, &today));
        prop_assert!(!stops(&rule, &past, &today) || both >= 2);
    }

    #[test]
    fn time_makes_it_more_urgent_and_doing_it_ends_that(
        rule in rules(), done in 60..100_i64, runs in 0..60_u32, day in 100..140_i64, more in 1..20_i64,
    ) {
        let past = Past { since: 50, done: Some(done), left: &[], runs };
        let (now, later) = (due(&rule, &past, &at(day, 9)), due(&rule, &past, &at(day + more, 9)));
        prop_assert!(urgency(later) >= urgency(now));
        let done = Past { done: Some(day), runs: 0, ..past };
        prop_assert_eq!(due(&rule, &done, &at(day, 9)), Due::Done);
        prop_assert!(!stops(&rule, &done, &at(day, 9)));
    }
}
