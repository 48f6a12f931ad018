//! 3.6.5 (read) and 3.3.5 (from memory): wall clocks and moments.

use super::*;

/// 3.6.5, "all the time zone rules for New York City since April 30, 1967".
const ALL_RULES: &str = include_str!("new_york.ics");
/// 3.6.5, "a fictitious time zone where the Daylight Time rule has an effective end date".
const ENDS: &str = include_str!("fictitious.ics");
/// 3.6.5, "There is a second Daylight Time rule that picks up where the other left off".
const SECOND: &str = include_str!("fictitious_second.ics");
/// 3.6.5, "using only the "DTSTART" property".
const ONE_YEAR: &str = include_str!("one_year.ics");

/// A wall clock in a zone that the calendar describes, and the moment it means.
fn check(zone: &str, name: &str, wall: &str, expected: &str) {
    let lines = format!("DTSTART;TZID=\"{name}\":{wall}\nDURATION:PT1H");
    let said = read(&calendar(&lines, zone), &asked("Asia/Ho_Chi_Minh")).unwrap();
    assert_eq!(starts(&said, "UTC"), [format!("{expected} 0")], "{wall}");
}

/// The table of 3.6.5: the hour before each change and the hour after it.
#[test]
fn new_york_by_its_own_rules() {
    let check = |wall, expected| check(ALL_RULES, "America/New_York", wall, expected);
    // 1967-1973: last Sunday in April and in October, 02:00.
    check("19670430T010000", "1967-04-30 06:00");
    check("19670430T030000", "1967-04-30 07:00");
    check("19671029T020000", "1967-10-29 07:00");
    // 1974: January 6; 1975: February 23.
    check("19740106T030000", "1974-01-06 07:00");
    check("19750223T010000", "1975-02-23 06:00");
    check("19750223T030000", "1975-02-23 07:00");
    // 1976-1986: last Sunday in April; 1987-2006: first Sunday.
    check("19860427T030000", "1986-04-27 07:00");
    check("19870405T030000", "1987-04-05 07:00");
    check("19970406T010000", "1997-04-06 06:00");
    check("19971026T030000", "1997-10-26 08:00");
    // From 2007: second Sunday in March, first Sunday in November.
    check("20070311T030000", "2007-03-11 07:00");
    check("20071104T020000", "2007-11-04 07:00");
    check("20110701T120000", "2011-07-01 16:00");
}

#[test]
fn zones_that_nobody_else_knows() {
    let winter = |wall, expected| check(ENDS, "Fictitious", wall, expected);
    winter("19970701T120000", "1997-07-01 16:00");
    // The first Sunday of April 1998 lies after the end of the rule.
    winter("19980701T120000", "1998-07-01 17:00");
    winter("20050701T120000", "2005-07-01 17:00");
    let second = |wall, expected| check(SECOND, "Fictitious", wall, expected);
    second("19980701T120000", "1998-07-01 17:00");
    second("19990424T030000", "1999-04-24 07:00");
    second("20050701T120000", "2005-07-01 16:00");
    let year = |wall, expected| check(ONE_YEAR, "America/New_York", wall, expected);
    year("20070601T080000", "2007-06-01 12:00");
    year("20071228T080000", "2007-12-28 13:00");
}

/// 3.3.5: "DTSTART;TZID=America/New_York:20071104T013000 indicates November 4, 2007 at 1:30 A.M.
/// EDT (UTC-04:00)" and "20070311T023000 indicates March 11, 2007 at 3:30 A.M. EDT (UTC-04:00)".
#[test]
fn the_hour_that_comes_twice_and_the_one_that_does_not() {
    for zone in [ALL_RULES, ""] {
        check(zone, "America/New_York", "20071104T013000", "2007-11-04 05:30");
        check(zone, "America/New_York", "20070311T023000", "2007-03-11 07:30");
    }
}

/// 3.3.5, forms 1 to 3: on the salon's own clock, in UTC, in a named zone.
#[test]
fn three_forms_of_a_time() {
    let at = |line: &str| {
        let said =
            read(&calendar(&format!("{line}\nDURATION:PT1H"), ""), &asked("America/Chicago"));
        starts(&said.unwrap(), "UTC")
    };
    assert_eq!(at("DTSTART:19970714T133000"), ["1997-07-14 18:30 0"]);
    assert_eq!(at("DTSTART:19970714T173000Z"), ["1997-07-14 17:30 0"]);
    assert_eq!(at("DTSTART;TZID=America/New_York:19970714T133000"), ["1997-07-14 17:30 0"]);
}

#[test]
fn a_zone_that_nobody_describes_is_a_question() {
    // A name of one maker's list, a made-up one, and a description that lacks an offset.
    let broken = "BEGIN:VTIMEZONE\nTZID:Broken\nBEGIN:STANDARD\nDTSTART:19700101T000000\n\
                  TZOFFSETTO:+0100\nEND:STANDARD\nEND:VTIMEZONE\n";
    for name in ["Central Standard Time", "/example.org/Nowhere", "Broken"] {
        let lines = format!("DTSTART;TZID={name}:20070714T133000\nDURATION:PT1H");
        let said = read(&calendar(&lines, broken), &asked("UTC")).unwrap();
        assert_eq!(said.items, []);
        assert_eq!(
            said.odd,
            [Odd { why: Why::Zone(name.to_owned()), title: "Gel manicure".to_owned() }]
        );
    }
}
