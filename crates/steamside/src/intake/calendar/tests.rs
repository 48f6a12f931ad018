//! The examples of RFC 5545, through our own intake. Dates and offsets are those that the standard
//! prints, in the section named beside each.

#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)] // tests may stop at once

mod changes;
mod rules;
mod zones;

use super::*;

/// All of the standard's examples lie between these.
fn asked(zone: &str) -> Asked {
    let moment = |text: &str| {
        Instant::from_millis(text.parse::<jiff::Timestamp>().unwrap().as_millisecond())
    };
    Asked {
        from: moment("1960-01-01T00:00:00Z"),
        to: moment("2012-01-01T00:00:00Z"),
        zone: TimeZone::get(zone).unwrap(),
    }
}

/// A calendar around these lines of one entry, and what else lies in it.
fn calendar(lines: &str, beside: &str) -> String {
    let text = format!(
        "BEGIN:VCALENDAR\nVERSION:2.0\n{beside}BEGIN:VEVENT\nUID:a@example.com\nDTSTAMP:19970101T000000Z\n\
         SUMMARY:Gel manicure\n{lines}\nEND:VEVENT\nEND:VCALENDAR\n"
    );
    text.replace('\n', "\r\n")
}

/// Where an appointment begins, in a zone: `1997-09-02 09:00 -4`.
fn starts(said: &Said, zone: &str) -> Vec<String> {
    assert_eq!(said.odd, []);
    let zone = TimeZone::get(zone).unwrap();
    let mut starts: Vec<Instant> = said.items.iter().map(|item| item.start).collect();
    starts.sort();
    let shown = |at: &Instant| {
        let at = jiff::Timestamp::from_millisecond(at.millis()).unwrap();
        let hours = zone.to_offset(at).seconds() / 3_600;
        format!("{} {hours}", zone.to_datetime(at).strftime("%Y-%m-%d %H:%M"))
    };
    starts.iter().map(shown).collect()
}

#[test]
fn what_is_no_calendar_is_refused() {
    for bad in
        ["", "BEGIN:VCALENDAR", "BEGIN:VCALENDAR\nBEGIN:VEVENT\nEND:VCALENDAR\n", "a;b\n1;2\n"]
    {
        assert_eq!(read(bad, &asked("UTC")), Err(NoCalendar), "{bad:?}");
    }
    // The reader goes down once a level: ten thousand levels would be its end.
    let deep = format!("BEGIN:VCALENDAR\n{}", "BEGIN:VEVENT\n".repeat(10_000));
    assert_eq!(read(&deep, &asked("UTC")), Err(NoCalendar));
    assert!(is_calendar(b"\xef\xbb\xbf\r\nbegin:vcalendar\r\n"));
    assert!(!is_calendar(b"Date;Service\r\n"));
}

/// Folded lines (3.1) and escapes (3.3.11; both from memory), with letters of more than one byte.
#[test]
fn folded_lines_and_escapes() {
    let lines = "DTSTART:19970714T120000Z\nDTEND:19970714T130000Z\n\
                 SUMMARY:Sơn gel\\, cắt da\\; ch\n âm sóc\\nbàn \n\ttay";
    let text = calendar(lines, "").replace("SUMMARY:Gel manicure\r\n", "");
    let said = read(&text, &asked("UTC")).unwrap();
    assert_eq!(said.items[0].title, "Sơn gel, cắt da; châm sóc\nbàn tay");
}

#[test]
fn a_chair_is_a_number_with_a_word_or_alone() {
    let check = |text, expected| assert_eq!(events::chair_in(text), expected, "{text:?}");
    check("Chair 3", Some(3));
    check("ghế 12", Some(12));
    check(" 4 ", Some(4));
    check("Silla #2, abajo", Some(2));
    check("12 Main Street", None);
    check("Main Street", None);
    check("", None);
}
