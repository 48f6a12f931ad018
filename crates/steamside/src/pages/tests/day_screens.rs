//! The pages of the day: visits, what a calendar brought, services.

use super::made_up::{id, kinds, machine_row, now, people};
use crate::intake::appointments::{Brought, Question};
use crate::intake::calendar::{Odd, WholeDays, Why};
use crate::pages::{services, sets, visits};
use crate::web::Ctx;
use day::sets::Assumptions;
use jiff::civil::date;
use logbook::fact::{Day, Service, Source};
use logbook::typical;
use logbook::view::{HandTimes, Setting, Shift, Spread, Visit, VisitState};
use maud::Markup;
use measure::{Instant, Span};
use std::sync::LazyLock;

fn later(minutes: i64) -> Instant {
    now() + Span::from_minutes(minutes)
}

pub fn gel() -> Service {
    Service {
        service: id(40),
        word: "gel manicure".parse().unwrap(),
        minutes: 60,
        weight: 2,
        basin_min: 0,
        needs: vec![("manicure".parse().unwrap(), 1)],
    }
}

fn visit(number: u8, minutes: i64, state: VisitState) -> Visit {
    Visit {
        visit: id(number),
        booked_start: later(minutes),
        booked_end: later(minutes + 60),
        late_min: u32::from(number % 2) * 15,
        chair: number.is_multiple_of(2).then_some(3),
        service: (!number.is_multiple_of(3)).then(|| id(40)),
        state,
        sequence: 0,
        source: number.is_multiple_of(2).then_some(Source::Calendar),
    }
}

fn seen(chosen: bool) -> visits::Seen {
    let states = [
        VisitState::Booked,
        VisitState::Booked,
        VisitState::Booked,
        VisitState::Missed,
        VisitState::Cancelled,
    ];
    let visits = (0..).zip(states).map(|(n, state)| visit(41 + n, i64::from(n) * 30, state));
    let shift = Shift {
        shift: id(50),
        person: people()[0].person,
        from: later(-60),
        to: later(480),
        lunch: Some((later(200), later(230))),
    };
    let day = |from, to, visits| visits::SeenDay {
        span: (later(from), later(to)),
        visits,
        shifts: if from < 0 { vec![shift] } else { vec![] },
        closed: if from < 0 { vec![] } else { vec![(later(from), later(to))] },
    };
    visits::Seen {
        days: vec![day(-642, 798, visits.collect()), day(798, 2_238, vec![])],
        services: vec![gel()],
        ever: vec![gel()],
        people: people(),
        chosen: chosen.then(|| id(40)),
    }
}

fn brought() -> Brought {
    let title = "Gel manicure, Zuzana".to_owned();
    Brought {
        booked: 7,
        changed: 1,
        called_off: 2,
        same: 30,
        questions: vec![
            Question {
                titles: vec![title.clone()],
                phrases: vec![("gel manicure".to_owned(), vec![id(41), id(42)])],
                visits: vec![id(41), id(42)],
            },
            Question { titles: vec!["Ondine".to_owned()], phrases: vec![], visits: vec![id(43)] },
        ],
        whole_days: vec![WholeDays {
            from: date(2026, 7, 4),
            to: date(2026, 7, 5),
            title: "Holiday".to_owned(),
        }],
        odd: [Why::Zone("Central Standard Time".to_owned()), Why::Rule, Why::Time]
            .map(|why| Odd { why, title: title.clone() })
            .into(),
    }
}

fn figures() -> services::Seen {
    let spread = Spread { count: 31, lower_s: 95, median_s: 130, upper_s: 185 };
    let machine = machine_row(1);
    let figures = Setting { value: typical::machine(machine.machine), said: None };
    services::Seen {
        services: vec![gel()],
        kinds: kinds()
            .iter()
            .map(|row| Setting { value: typical::kind(&row.kind), said: Some(4) })
            .collect(),
        machines: vec![(machine, figures)],
        rules: Some(Setting { value: typical::RULES, said: None }),
        hands: HandTimes { wash: Some(spread), pack: None },
    }
}

/// Each with its name.
/// A made-up day, lived a few times; once for all screens.
static SETS: LazyLock<sets::Seen> = LazyLock::new(|| {
    let day = include_bytes!("../../../tests/it/days/small.json");
    let problem = crate::wire::dayplan::read(day).unwrap();
    sets::find(&problem, now(), Assumptions::default(), (200, 10)).unwrap().unwrap()
});

pub fn day_screens(ctx: &Ctx) -> Vec<(&'static str, Markup)> {
    vec![
        ("visits", visits::draw(ctx, &seen(false))),
        ("visits-time", visits::draw(ctx, &seen(true))),
        ("visits-empty", visits::draw(ctx, &visits::Seen::default())),
        ("visits-brought", visits::draw_brought(ctx, &[gel()], &brought())),
        ("visits-brought-early", visits::draw_brought(ctx, &[], &brought())),
        ("services", services::draw(ctx, &figures())),
        ("services-empty", services::draw(ctx, &services::Seen::default())),
        ("sets", sets::draw(ctx, Some(&SETS))),
        ("sets-none", sets::draw(ctx, None)),
    ]
}

/// Every kind of fact of the day has a line of its own in the log.
#[test]
fn every_fact_of_the_day_is_told() {
    let names = super::made_up::names();
    let ctx = super::made_up::ctx(crate::words::Language::En);
    let (visit, service) = (id(41), Some(id(40)));
    let (start, end) = (later(0), later(60));
    let said = [
        Day::ServiceSet(gel()),
        Day::ServiceEnded { service: id(40) },
        Day::VisitBooked { visit, start, end, chair: None, service, origin: None },
        Day::VisitMoved { visit, start, end, chair: None, sequence: 0 },
        Day::VisitIs { visit, service },
        Day::VisitLate { visit, minutes: 15 },
        Day::VisitCancelled { visit },
        Day::VisitMissed { visit },
        Day::ShiftSet { shift: id(1), person: id(2), from: start, to: end, lunch: None },
        Day::ShiftEnded { shift: id(1) },
        Day::ClosedSet { from: start, to: end, closed: true },
        Day::ClosedSet { from: start, to: end, closed: false },
        Day::KindFigures(typical::kind(&"bits".parse().unwrap())),
        Day::MachineFigures(typical::machine(id(3))),
        Day::Rules(typical::RULES),
        Day::PlanAccepted { from: start, to: end, runs: vec![] },
    ];
    let lines: std::collections::BTreeSet<String> =
        said.iter().map(|day| visits::line(&ctx, &names, day)).collect();
    assert_eq!(lines.len(), said.len(), "{lines:?}");
    assert!(lines.iter().all(|line| line.ends_with('.')), "{lines:?}");
}
