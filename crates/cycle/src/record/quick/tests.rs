// tests may stop at once
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]
use super::super::cells::Cells;
use super::super::plan::{Row, TimeForm, TimePlan};
use super::super::stamp::Order;
use super::*;
use proptest::prelude::*;

fn plan(form: TimeForm) -> Plan {
    let time = TimePlan { form, doubt: None, column: 0, clock: None, half_day: None };
    Plan {
        split: Split::At(b';'),
        needed: 4,
        width: 4,
        time,
        mark: b'.',
        body: Body::Wide { temperature: 3, pressure: Some(1), phase: None, set: None },
        temperature_said: Default::default(),
        pressure_said: Default::default(),
        heading: Vec::new(),
        american: false,
    }
}

/// Reads each line both ways; gives how many went the short one.
fn both_ways(form: TimeForm, lines: &[String]) -> usize {
    let plan = plan(form);
    let mut quick = Quick::of(&plan).unwrap();
    let mut taken = 0;
    for line in lines {
        let whole = format!("{line}\n");
        if let Some((reading, length)) = quick.row(&plan, whole.as_bytes()) {
            let line = line.strip_suffix('\r').unwrap_or(line);
            assert_eq!(length, whole.len(), "{line}");
            let long = plan.row(&mut Cells::default(), line.as_bytes());
            assert_eq!(long, Row::Sample(reading), "{line}");
            taken += 1;
        }
    }
    taken
}

#[test]
fn ordinary_rows_go_the_short_way() {
    let lines: Vec<String> = (0..180)
        .map(|s| format!("2025-03-04 23:{:02}:{:02};{}.5;x;-{s}", 57 + s / 60, s % 60, 100 + s))
        .collect();
    assert_eq!(both_ways(TimeForm::Dated(Order::Ymd), &lines), 180);
    let lines: Vec<String> = (0..90).map(|s| format!("{s};1;;2.25;more\r")).collect();
    assert_eq!(both_ways(TimeForm::Number(1e6), &lines), 90);
}

/// Takes all lines as a file is read: the short way as far as it goes, then one the long way.
/// Gives how many went the short one.
fn as_a_file(form: TimeForm, lines: &[String]) -> usize {
    let plan = plan(form);
    let mut quick = Quick::of(&plan).unwrap();
    let text: String = lines.iter().map(|line| format!("{line}\n")).collect();
    let (mut raw, mut wanted) = (Raw::default(), Raw::default());
    let (mut bytes, mut next, mut short) = (0, 0, 0);
    let mut cells = Cells::default();
    let (mut cycles, mut wanted_cycles) = (Vec::new(), Vec::new());
    while next < lines.len() {
        if raw.len() > 0 {
            let taken = quick.rows(&plan, &text.as_bytes()[bytes..], next as u32, &mut raw);
            cycles.extend(taken.earlier);
            for line in &lines[next..next + taken.rows as usize] {
                let line = line.strip_suffix('\r').unwrap_or(line);
                let Row::Sample(reading) = plan.row(&mut cells, line.as_bytes()) else {
                    panic!("{line}");
                };
                next += 1;
                wanted_cycles.extend(wanted.push(reading, next as u32));
            }
            bytes += taken.bytes;
            short += taken.rows as usize;
        }
        if let Some(line) = lines.get(next) {
            bytes += line.len() + 1;
            next += 1;
            let line = line.strip_suffix('\r').unwrap_or(line);
            if let Row::Sample(reading) = plan.row(&mut cells, line.as_bytes()) {
                cycles.extend(raw.push(reading, next as u32));
                wanted_cycles.extend(wanted.push(reading, next as u32));
            }
        }
    }
    cycles.push(raw);
    wanted_cycles.push(wanted);
    let all = |cycles: &[Raw]| -> Vec<_> {
        let columns = |raw: &Raw| {
            let numbers = (raw.temperature.clone(), raw.pressure.clone(), raw.decimals);
            (raw.at.clone(), raw.line.clone(), numbers, raw.zone, raw.ends_under_way())
        };
        cycles.iter().map(columns).collect()
    };
    assert_eq!(all(&cycles), all(&wanted_cycles), "{text}");
    short
}

#[test]
fn rows_are_taken_in_blocks() {
    let lines: Vec<String> = (0..400)
        .map(|s| {
            let (minute, second) = (s / 60, s % 60);
            let pressure = 90 + s % 30;
            format!("2025-03-04 23:{minute:02}:{second:02};{pressure}.5;7;{}.25", 7 + s / 9)
        })
        .collect();
    assert_eq!(as_a_file(TimeForm::Dated(Order::Ymd), &lines), 399);
}

#[test]
fn what_is_out_of_the_ordinary_goes_the_long_way() {
    for line in ["10:20:30;1;x", "10:20:30;1;\"x\";2", "10:20:30;1 ;;2", "10:20:30;;;2", ""] {
        assert_eq!(both_ways(TimeForm::Clock, &[line.to_owned()]), 0, "{line}");
    }
    // Minutes stand last: two digits of them are no seconds.
    assert_eq!(both_ways(TimeForm::Clock, &["10:20;1;;2".to_owned()]), 0);
}

fn a_time() -> impl Strategy<Value = String> {
    prop_oneof![
        "2025-0[1-3]-0[1-9]T0[0-1]:0[0-1]:[0-6][0-9]Z?",
        "0?[1-3]\\.02\\.25 2[34]:0[01]:[0-6][0-9]",
        "2[3-5]:0[01]:[0-6][0-9]( pm|\\.5)?",
        "[0-9]{1,3}:[0-6][0-9]",
        "[0-9.]{0,6}",
    ]
}

proptest! {
    #[test]
    fn both_ways_are_one(
        rows in proptest::collection::vec(
            (a_time(), "[+-]?[0-9]{0,3}[.,]?[0-9]{0,17}", "[a \"]?", "[-+ ]?[0-9]{1,3}\\.?[0-9 e]?(;\"?)?\r?"),
            1..30,
        ),
        form in prop_oneof![
            Just(TimeForm::Dated(Order::Ymd)), Just(TimeForm::Dated(Order::Dmy)),
            Just(TimeForm::Clock), Just(TimeForm::Elapsed), Just(TimeForm::Number(6e7)),
            Just(TimeForm::Serial), Just(TimeForm::Epoch(1e3)),
        ],
    ) {
        let lines: Vec<String> =
            rows.iter().map(|(time, p, x, t)| format!("{time};{p};{x};{t}")).collect();
        both_ways(form, &lines);
        as_a_file(form, &lines);
    }

    /// Rows much alike, some of them spoilt, so that stencils fit and do not.
    #[test]
    fn alike_and_not(
        rows in proptest::collection::vec(
            ("10:(0[01]|59):[0-6][0-9]", "(9|10)[0-9]\\.[05]|[0-9]", "[0-9]{1,2}\\.[0-9]", "[-x,;\r]?"),
            1..60,
        ),
    ) {
        let lines: Vec<String> =
            rows.iter().map(|(time, p, t, end)| format!("{time};{p};;{t}{end}")).collect();
        as_a_file(TimeForm::Clock, &lines);
    }
}
