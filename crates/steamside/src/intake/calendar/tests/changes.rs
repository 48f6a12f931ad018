//! 3.8.4.4, 3.8.5.1, 3.8.5.2, 3.8.1.11, 3.8.7.4 and 3.6.1, each from memory: what was moved, added,
//! taken out, called off.

use super::*;

const WEEKLY: &str = "DTSTART;TZID=America/New_York:19970902T090000\nDURATION:PT1H\n\
                      RRULE:FREQ=WEEKLY;COUNT=4\nSEQUENCE:1";

/// A weekly entry, and beside it others with the same `UID`.
fn with(change: &str) -> Said {
    let beside: String = change
        .split("\n\n")
        .filter(|lines| !lines.is_empty())
        .map(|lines| {
            format!("BEGIN:VEVENT\nUID:a@example.com\nSUMMARY:Pedicure\n{lines}\nEND:VEVENT\n")
        })
        .collect();
    read(&calendar(WEEKLY, &beside), &asked("UTC")).unwrap()
}

fn check(change: &str, expected: &[&str]) {
    assert_eq!(starts(&with(change), "America/New_York"), expected, "{change}");
}

#[test]
fn one_instance_is_moved_or_called_off() {
    let all = [
        "1997-09-02 09:00 -4",
        "1997-09-09 09:00 -4",
        "1997-09-16 09:00 -4",
        "1997-09-23 09:00 -4",
    ];
    check("", &all);
    let moved = "RECURRENCE-ID;TZID=America/New_York:19970909T090000\n\
                 DTSTART;TZID=America/New_York:19970910T140000\nDURATION:PT30M";
    check(moved, &[all[0], "1997-09-10 14:00 -4", all[2], all[3]]);
    // The moved one keeps the moment that it was first meant for: 9:00 EDT is 13:00 UTC.
    let said = with(moved);
    let meant = "1997-09-09T13:00:00Z".parse::<jiff::Timestamp>().unwrap().as_millisecond();
    let item = said.items.iter().find(|item| item.title == "Pedicure").unwrap();
    assert_eq!(item.recurrence, Some(Instant::from_millis(meant)));
    // 3.8.4.4: the identifier may be in UTC, or a date alone.
    let in_utc = moved.replace(";TZID=America/New_York:19970909T090000", ":19970909T130000Z");
    check(&in_utc, &[all[0], "1997-09-10 14:00 -4", all[2], all[3]]);
    // 3.8.1.11: called off.
    let off = "RECURRENCE-ID;TZID=America/New_York:19970909T090000\n\
               DTSTART;TZID=America/New_York:19970909T090000\nSTATUS:CANCELLED";
    check(off, &[all[0], all[2], all[3]]);
    assert_eq!(
        with(off).called_off,
        [("a@example.com".to_owned(), Some(Instant::from_millis(meant)))]
    );
    // 3.8.7.4: of two revisions the later one counts, whatever their order.
    let later = moved.replace("T140000", "T160000") + "\nSEQUENCE:3";
    for two in [format!("{moved}\n\n{later}"), format!("{later}\n\n{moved}")] {
        check(&two, &[all[0], "1997-09-10 16:00 -4", all[2], all[3]]);
    }
}

/// 3.8.4.4: RANGE=THISANDFUTURE, "the subsequent instances are also to be rescheduled by the same
/// time difference".
#[test]
fn one_instance_and_all_after_it() {
    check(
        "RECURRENCE-ID;RANGE=THISANDFUTURE;TZID=America/New_York:19970916T090000\n\
         DTSTART;TZID=America/New_York:19970917T113000\nDURATION:PT2H",
        &[
            "1997-09-02 09:00 -4",
            "1997-09-09 09:00 -4",
            "1997-09-17 11:30 -4",
            "1997-09-24 11:30 -4",
        ],
    );
    check(
        "RECURRENCE-ID;RANGE=THISANDFUTURE;TZID=America/New_York:19970916T090000\n\
         DTSTART;TZID=America/New_York:19970916T090000\nSTATUS:CANCELLED",
        &["1997-09-02 09:00 -4", "1997-09-09 09:00 -4"],
    );
}

#[test]
fn dates_put_in_and_taken_out() {
    let check = |lines: &str, expected: &[&str]| {
        let lines = format!("{WEEKLY}\n{lines}");
        let said = read(&calendar(&lines, ""), &asked("UTC")).unwrap();
        assert_eq!(starts(&said, "America/New_York"), expected, "{lines}");
        said
    };
    let [one, two, three, four] = [
        "1997-09-02 09:00 -4",
        "1997-09-09 09:00 -4",
        "1997-09-16 09:00 -4",
        "1997-09-23 09:00 -4",
    ];
    check("EXDATE:19970909T130000Z", &[one, three, four]);
    check("EXDATE;VALUE=DATE:19970909,19970916", &[one, four]);
    check(
        "RDATE;TZID=America/New_York:19970904T083000",
        &[one, "1997-09-04 08:30 -4", two, three, four],
    );
    // 3.8.5.2: a date of the rule that is also put in counts once; a period has its own length.
    check("RDATE:19970909T130000Z", &[one, two, three, four]);
    let said = check(
        "RDATE;VALUE=PERIOD:19970903T140000Z/19970903T160000Z,\n 19970904T140000Z/PT3H",
        &[one, "1997-09-03 10:00 -4", "1997-09-04 10:00 -4", two, three, four],
    );
    let hours =
        |at: usize| (said.items[at].end.unwrap() - said.items[at].start).millis() / 3_600_000;
    assert_eq!([hours(0), hours(1), hours(2)], [1, 2, 3]);
}

#[test]
fn a_message_that_calls_off() {
    let text = calendar(WEEKLY, "METHOD:CANCEL\n");
    let said = read(&text, &asked("UTC")).unwrap();
    assert_eq!((said.items.len(), said.list), (0, false));
    assert_eq!(said.called_off, [("a@example.com".to_owned(), None)]);
}

/// 3.6.1: "the "DTSTART" property with a DATE value type" are whole days; its own example is an
/// anniversary on November 2, and one that lasts from June 28 up to and not including July 9.
#[test]
fn whole_days_are_no_appointments() {
    let days = |lines: &str| {
        let said = read(&calendar(lines, ""), &asked("America/Chicago")).unwrap();
        assert_eq!((said.items.len(), said.odd.len()), (0, 0), "{lines}");
        said.whole_days.iter().map(|d| format!("{} {}", d.from, d.to)).collect::<Vec<_>>()
    };
    assert_eq!(days("DTSTART;VALUE=DATE:19971102"), ["1997-11-02 1997-11-03"]);
    assert_eq!(
        days("DTSTART;VALUE=DATE:20070628\nDTEND;VALUE=DATE:20070709"),
        ["2007-06-28 2007-07-09"]
    );
    let yearly = days("DTSTART;VALUE=DATE:20081102\nRRULE:FREQ=YEARLY");
    assert_eq!(yearly[..2], ["2008-11-02 2008-11-03", "2009-11-02 2009-11-03"]);
    // A course of two days with times is no visit either.
    assert_eq!(days("DTSTART:20070628T150000Z\nDTEND:20070629T150000Z").len(), 1);
}

/// A visit that begins before the clocks change and ends after: its length is exact (3.8.5.3).
#[test]
fn a_visit_over_the_change_of_the_clocks() {
    let lines = "DTSTART;TZID=America/New_York:20070311T013000\n\
                 DTEND;TZID=America/New_York:20070311T033000";
    let said = read(&calendar(lines, ""), &asked("UTC")).unwrap();
    assert_eq!(starts(&said, "UTC"), ["2007-03-11 06:30 0"]);
    assert_eq!((said.items[0].end.unwrap() - said.items[0].start).millis(), 3_600_000);
}
