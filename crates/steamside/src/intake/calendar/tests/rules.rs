//! 3.8.5.3, "Examples" (all of them, read), and 3.3.10 (from memory).

use super::*;

const NEW_YORK: &str = "America/New_York";
const SEP_2: &str = "19970902T090000";

/// Months with days, as the standard prints them: `Sep 2,9-11;Oct 7`, in one year at one offset.
type Printed<'a> = (i16, &'a str, &'a str);

fn day_list(list: &str) -> Vec<i8> {
    let mut days = Vec::new();
    for part in list.split(',').map(str::trim) {
        let (from, to) = part.split_once('-').unwrap_or((part, part));
        days.extend(from.parse::<i8>().unwrap()..=to.parse().unwrap());
    }
    days
}

/// The lines of the standard as single starts, at these times of the day.
fn printed(lines: &[Printed<'_>], times: &[&str]) -> Vec<String> {
    let months =
        ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"];
    let mut starts = Vec::new();
    for (year, zone, list) in lines {
        let hours = if *zone == "EDT" { -4 } else { -5 };
        for part in list.split(';') {
            let (month, days) = part.trim().split_once(' ').unwrap();
            let month = months.iter().position(|name| *name == month).unwrap() + 1;
            for day in day_list(days) {
                for time in times {
                    starts.push(format!("{year}-{month:02}-{day:02} {time} {hours}"));
                }
            }
        }
    }
    starts
}

fn found(start: &str, rule: &str) -> Vec<String> {
    let lines = format!("DTSTART;TZID={NEW_YORK}:{start}\nDURATION:PT1H\n{rule}");
    starts(&read(&calendar(&lines, ""), &asked("UTC")).unwrap(), NEW_YORK)
}

/// A rule that ends: exactly what is printed.
fn check(start: &str, rule: &str, expected: &[Printed<'_>]) {
    let mut expected = printed(expected, &["09:00"]);
    expected.sort();
    assert_eq!(found(start, &format!("RRULE:{rule}")), expected, "{rule}");
}

/// A rule that goes on for ever: what is printed comes first.
fn opens(start: &str, rule: &str, expected: &[Printed<'_>]) {
    let expected = printed(expected, &["09:00"]);
    let mut starts = found(start, rule);
    assert!(starts.len() > expected.len(), "{rule}");
    starts.truncate(expected.len());
    assert_eq!(starts, expected, "{rule}");
}

#[test]
fn daily() {
    check(SEP_2, "FREQ=DAILY;COUNT=10", &[(1997, "EDT", "Sep 2-11")]);
    check(
        SEP_2,
        "FREQ=DAILY;UNTIL=19971224T000000Z",
        &[(1997, "EDT", "Sep 2-30;Oct 1-25"), (1997, "EST", "Oct 26-31;Nov 1-30;Dec 1-23")],
    );
    opens(
        SEP_2,
        "RRULE:FREQ=DAILY;INTERVAL=2",
        &[
            (1997, "EDT", "Sep 2,4,6,8,10,12,14,16,18,20,22,24,26,28,30"),
            (1997, "EDT", "Oct 2,4,6,8,10,12,14,16,18,20,22,24"),
            (1997, "EST", "Oct 26,28,30;Nov 1,3,5,7,9,11,13,15,17,19,21,23,25,27,29;Dec 1,3"),
        ],
    );
    check(SEP_2, "FREQ=DAILY;INTERVAL=10;COUNT=5", &[(1997, "EDT", "Sep 2,12,22;Oct 2,12")]);
    for rule in [
        "FREQ=YEARLY;UNTIL=20000131T140000Z;\n BYMONTH=1;BYDAY=SU,MO,TU,WE,TH,FR,SA",
        "FREQ=DAILY;UNTIL=20000131T140000Z;BYMONTH=1",
    ] {
        let january = [1998, 1999, 2000].map(|year| (year, "EST", "Jan 1-31"));
        check("19980101T090000", rule, &january);
    }
}

#[test]
fn weekly() {
    check(
        SEP_2,
        "FREQ=WEEKLY;COUNT=10",
        &[(1997, "EDT", "Sep 2,9,16,23,30;Oct 7,14,21"), (1997, "EST", "Oct 28;Nov 4")],
    );
    check(
        SEP_2,
        "FREQ=WEEKLY;UNTIL=19971224T000000Z",
        &[
            (1997, "EDT", "Sep 2,9,16,23,30;Oct 7,14,21"),
            (1997, "EST", "Oct 28;Nov 4,11,18,25;Dec 2,9,16,23"),
        ],
    );
    opens(
        SEP_2,
        "RRULE:FREQ=WEEKLY;INTERVAL=2;WKST=SU",
        &[
            (1997, "EDT", "Sep 2,16,30;Oct 14"),
            (1997, "EST", "Oct 28;Nov 11,25;Dec 9,23"),
            (1998, "EST", "Jan 6,20;Feb 3,17"),
        ],
    );
    for rule in [
        "FREQ=WEEKLY;UNTIL=19971007T000000Z;WKST=SU;BYDAY=TU,TH",
        "FREQ=WEEKLY;COUNT=10;WKST=SU;BYDAY=TU,TH",
    ] {
        check(SEP_2, rule, &[(1997, "EDT", "Sep 2,4,9,11,16,18,23,25,30;Oct 2")]);
    }
    check(
        "19970901T090000",
        "FREQ=WEEKLY;INTERVAL=2;UNTIL=19971224T000000Z;WKST=SU;\n BYDAY=MO,WE,FR",
        &[
            (1997, "EDT", "Sep 1,3,5,15,17,19,29;Oct 1,3,13,15,17"),
            (1997, "EST", "Oct 27,29,31;Nov 10,12,14,24,26,28;Dec 8,10,12,22"),
        ],
    );
    check(
        SEP_2,
        "FREQ=WEEKLY;INTERVAL=2;COUNT=8;WKST=SU;BYDAY=TU,TH",
        &[(1997, "EDT", "Sep 2,4,16,18,30;Oct 2,14,16")],
    );
    // "An example where the days generated makes a difference because of WKST".
    let aug = "19970805T090000";
    let rule = "FREQ=WEEKLY;INTERVAL=2;COUNT=4;BYDAY=TU,SU;WKST=";
    check(aug, &format!("{rule}MO"), &[(1997, "EDT", "Aug 5,10,19,24")]);
    check(aug, &format!("{rule}SU"), &[(1997, "EDT", "Aug 5,17,19,31")]);
}

#[test]
fn monthly_on_days_of_the_week() {
    let sep_5 = "19970905T090000";
    check(
        sep_5,
        "FREQ=MONTHLY;COUNT=10;BYDAY=1FR",
        &[
            (1997, "EDT", "Sep 5;Oct 3"),
            (1997, "EST", "Nov 7;Dec 5"),
            (1998, "EST", "Jan 2;Feb 6;Mar 6;Apr 3"),
            (1998, "EDT", "May 1;Jun 5"),
        ],
    );
    check(
        sep_5,
        "FREQ=MONTHLY;UNTIL=19971224T000000Z;BYDAY=1FR",
        &[(1997, "EDT", "Sep 5;Oct 3"), (1997, "EST", "Nov 7;Dec 5")],
    );
    check(
        "19970907T090000",
        "FREQ=MONTHLY;INTERVAL=2;COUNT=10;BYDAY=1SU,-1SU",
        &[
            (1997, "EDT", "Sep 7,28"),
            (1997, "EST", "Nov 2,30"),
            (1998, "EST", "Jan 4,25;Mar 1,29"),
            (1998, "EDT", "May 3,31"),
        ],
    );
    check(
        "19970922T090000",
        "FREQ=MONTHLY;COUNT=6;BYDAY=-2MO",
        &[
            (1997, "EDT", "Sep 22;Oct 20"),
            (1997, "EST", "Nov 17;Dec 22"),
            (1998, "EST", "Jan 19;Feb 16"),
        ],
    );
    opens(
        SEP_2,
        "RRULE:FREQ=MONTHLY;INTERVAL=2;BYDAY=TU",
        &[
            (1997, "EDT", "Sep 2,9,16,23,30"),
            (1997, "EST", "Nov 4,11,18,25"),
            (1998, "EST", "Jan 6,13,20,27;Mar 3,10,17,24,31"),
        ],
    );
    check(
        "19970904T090000",
        "FREQ=MONTHLY;COUNT=3;BYDAY=TU,WE,TH;BYSETPOS=3",
        &[(1997, "EDT", "Sep 4;Oct 7"), (1997, "EST", "Nov 6")],
    );
    opens(
        "19970929T090000",
        "RRULE:FREQ=MONTHLY;BYDAY=MO,TU,WE,TH,FR;BYSETPOS=-2",
        &[
            (1997, "EDT", "Sep 29"),
            (1997, "EST", "Oct 30;Nov 27;Dec 30"),
            (1998, "EST", "Jan 29;Feb 26;Mar 30"),
        ],
    );
}

#[test]
fn monthly_on_days_of_the_month() {
    opens(
        "19970928T090000",
        "RRULE:FREQ=MONTHLY;BYMONTHDAY=-3",
        &[
            (1997, "EDT", "Sep 28"),
            (1997, "EST", "Oct 29;Nov 28;Dec 29"),
            (1998, "EST", "Jan 29;Feb 26"),
        ],
    );
    check(
        SEP_2,
        "FREQ=MONTHLY;COUNT=10;BYMONTHDAY=2,15",
        &[
            (1997, "EDT", "Sep 2,15;Oct 2,15"),
            (1997, "EST", "Nov 2,15;Dec 2,15"),
            (1998, "EST", "Jan 2,15"),
        ],
    );
    check(
        "19970930T090000",
        "FREQ=MONTHLY;COUNT=10;BYMONTHDAY=1,-1",
        &[
            (1997, "EDT", "Sep 30;Oct 1"),
            (1997, "EST", "Oct 31;Nov 1,30;Dec 1,31"),
            (1998, "EST", "Jan 1,31;Feb 1"),
        ],
    );
    check(
        "19970910T090000",
        "FREQ=MONTHLY;INTERVAL=18;COUNT=10;BYMONTHDAY=10,11,12,\n 13,14,15",
        &[(1997, "EDT", "Sep 10,11,12,13,14,15"), (1999, "EST", "Mar 10,11,12,13")],
    );
    // "Every Friday the 13th, forever".
    opens(
        SEP_2,
        "EXDATE;TZID=America/New_York:19970902T090000\nRRULE:FREQ=MONTHLY;BYDAY=FR;BYMONTHDAY=13",
        &[(1998, "EST", "Feb 13;Mar 13;Nov 13"), (1999, "EDT", "Aug 13"), (2000, "EDT", "Oct 13")],
    );
    opens(
        "19970913T090000",
        "RRULE:FREQ=MONTHLY;BYDAY=SA;BYMONTHDAY=7,8,9,10,11,12,13",
        &[
            (1997, "EDT", "Sep 13;Oct 11"),
            (1997, "EST", "Nov 8;Dec 13"),
            (1998, "EST", "Jan 10;Feb 7;Mar 7"),
            (1998, "EDT", "Apr 11;May 9;Jun 13"),
        ],
    );
    // "An example where an invalid date (i.e., February 30) is ignored." (Also 3.3.10.)
    check(
        "20070115T090000",
        "FREQ=MONTHLY;BYMONTHDAY=15,30;COUNT=5",
        &[(2007, "EST", "Jan 15,30;Feb 15"), (2007, "EDT", "Mar 15,30")],
    );
}

#[test]
fn yearly() {
    let june_july = [1997, 1998, 1999, 2000, 2001].map(|year| (year, "EDT", "Jun 10;Jul 10"));
    check("19970610T090000", "FREQ=YEARLY;COUNT=10;BYMONTH=6,7", &june_july);
    check(
        "19970310T090000",
        "FREQ=YEARLY;INTERVAL=2;COUNT=10;BYMONTH=1,2,3",
        &[
            (1997, "EST", "Mar 10"),
            (1999, "EST", "Jan 10;Feb 10;Mar 10"),
            (2001, "EST", "Jan 10;Feb 10;Mar 10"),
            (2003, "EST", "Jan 10;Feb 10;Mar 10"),
        ],
    );
    check(
        "19970101T090000",
        "FREQ=YEARLY;INTERVAL=3;COUNT=10;BYYEARDAY=1,100,200",
        &[
            (1997, "EST", "Jan 1"),
            (1997, "EDT", "Apr 10;Jul 19"),
            (2000, "EST", "Jan 1"),
            (2000, "EDT", "Apr 9;Jul 18"),
            (2003, "EST", "Jan 1"),
            (2003, "EDT", "Apr 10;Jul 19"),
            (2006, "EST", "Jan 1"),
        ],
    );
    opens(
        "19970519T090000",
        "RRULE:FREQ=YEARLY;BYDAY=20MO",
        &[(1997, "EDT", "May 19"), (1998, "EDT", "May 18"), (1999, "EDT", "May 17")],
    );
    opens(
        "19970512T090000",
        "RRULE:FREQ=YEARLY;BYWEEKNO=20;BYDAY=MO",
        &[(1997, "EDT", "May 12"), (1998, "EDT", "May 11"), (1999, "EDT", "May 17")],
    );
    opens(
        "19970313T090000",
        "RRULE:FREQ=YEARLY;BYMONTH=3;BYDAY=TH",
        &[
            (1997, "EST", "Mar 13,20,27"),
            (1998, "EST", "Mar 5,12,19,26"),
            (1999, "EST", "Mar 4,11,18,25"),
        ],
    );
    opens(
        "19970605T090000",
        "RRULE:FREQ=YEARLY;BYDAY=TH;BYMONTH=6,7,8",
        &[
            (1997, "EDT", "Jun 5,12,19,26;Jul 3,10,17,24,31;Aug 7,14,21,28"),
            (1998, "EDT", "Jun 4,11,18,25;Jul 2,9,16,23,30;Aug 6,13,20,27"),
            (1999, "EDT", "Jun 3,10,17,24;Jul 1,8,15,22,29;Aug 5,12,19,26"),
        ],
    );
    opens(
        "19961105T090000",
        "RRULE:FREQ=YEARLY;INTERVAL=4;BYMONTH=11;BYDAY=TU;\n BYMONTHDAY=2,3,4,5,6,7,8",
        &[(1996, "EST", "Nov 5"), (2000, "EST", "Nov 7"), (2004, "EST", "Nov 2")],
    );
}

#[test]
fn within_a_day() {
    let check = |rule: &str, days: &str, times: &[&str]| {
        let expected = printed(&[(1997, "EDT", days)], times);
        let mut starts = found(SEP_2, &format!("RRULE:{rule}"));
        starts.truncate(expected.len());
        assert_eq!(starts, expected, "{rule}");
    };
    // The standard prints UNTIL=19970902T170000Z here, which is 13:00 in New York, and yet 15:00
    // among the results. The end that it means, "from 9:00 AM to 5:00 PM", is 21:00 UTC.
    let rule = "FREQ=HOURLY;INTERVAL=3;UNTIL=";
    let three = ["09:00", "12:00", "15:00"];
    check(&format!("{rule}19970902T210000Z"), "Sep 2", &three);
    assert_eq!(found(SEP_2, &format!("RRULE:{rule}19970902T210000Z")).len(), 3);
    assert_eq!(found(SEP_2, &format!("RRULE:{rule}19970902T170000Z")).len(), 2);
    let quarters = ["09:00", "09:15", "09:30", "09:45", "10:00", "10:15"];
    check("FREQ=MINUTELY;INTERVAL=15;COUNT=6", "Sep 2", &quarters);
    let halves = ["09:00", "10:30", "12:00", "13:30"];
    check("FREQ=MINUTELY;INTERVAL=90;COUNT=4", "Sep 2", &halves);
    assert_eq!(found(SEP_2, "RRULE:FREQ=MINUTELY;INTERVAL=90;COUNT=4").len(), 4);
    let times: Vec<String> = (9..17)
        .flat_map(|hour| [0, 20, 40].map(|minute| format!("{hour:02}:{minute:02}")))
        .collect();
    let times: Vec<&str> = times.iter().map(String::as_str).collect();
    // "..." stands for the days that follow; three weeks of them stay below what one rule may give.
    for rule in [
        "FREQ=DAILY;UNTIL=19970930T000000Z;BYHOUR=9,10,11,12,13,14,15,16;BYMINUTE=0,20,40",
        "FREQ=MINUTELY;UNTIL=19970930T000000Z;INTERVAL=20;BYHOUR=9,10,11,12,13,14,15,16",
    ] {
        check(rule, "Sep 2,3", &times);
    }
}

/// What cannot be an appointment's rule is said, not cut short.
#[test]
fn a_rule_without_an_end_in_sight_is_a_question() {
    for rule in ["FREQ=SECONDLY", "FREQ=HOURLY;BYMONTHDAY=40", "FREQ=NEVER", "COUNT=3"] {
        let lines = format!("DTSTART:19970902T090000Z\nRRULE:{rule}");
        let said = read(&calendar(&lines, ""), &asked("UTC")).unwrap();
        assert_eq!((said.items.len(), &said.odd[0].why), (0, &Why::Rule), "{rule}");
    }
}
