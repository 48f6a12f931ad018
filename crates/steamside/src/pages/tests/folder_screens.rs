//! The record as somebody from outside reads it.

use super::made_up::*;
use super::markup::{Tag, tags, visible};
use crate::pages::folder::gather::{Kept, MachineShown, TestShown};
use crate::pages::folder::period::Choice;
use crate::pages::folder::{self, Asked, Open, PARTS, Period};
use crate::pages::show;
use crate::web::Ctx;
use crate::words::{Language, Words};
use load::SetState;
use logbook::fact::{
    About, BasinAfter, Body, Counter, DrawerRef, Fact, Found, GapWhy, Known, LeftOut, Serviced,
    StopReason, ThingKind, Upkeep,
};
use logbook::view::{LastDone, Roles, ShownRun, ShownUpkeep, SporeAnswer, SporeTest};
use measure::{DrawerId, Span};
use release::verdict::Outcome;

const PATH: &str = "/folder/0123456789abcdef0123456789abcdef";

fn period(ctx: &Ctx, asked: &Asked) -> Period {
    folder::period::of(ctx, asked)
}

/// The record of the made-up salon, with one of everything, and of an empty book.
pub fn folder_screens(ctx: &Ctx) -> Vec<(&'static str, String)> {
    let seen = |kept| folder::Seen {
        path: PATH.to_owned(),
        until: now() + Span::from_minutes(30),
        period: period(ctx, &Asked::default()),
        chosen: false,
        kept,
    };
    let open = Open { path: PATH.to_owned(), until: now() + Span::from_minutes(12) };
    let show = show::Seen { minutes: 30, open: vec![open], origin: "salon.local:7420".to_owned() };
    vec![
        ("folder", folder::draw(ctx, &seen(full())).into_string()),
        ("folder-empty", folder::draw(ctx, &seen(empty())).into_string()),
        ("folder-over", folder::over(ctx).into_string()),
        ("show", super::screens::desk(ctx, &show::draw(ctx, &show).into_string())),
    ]
}

fn empty() -> Kept {
    Kept { zone: "America/Chicago".to_owned(), ..Kept::default() }
}

fn said(seq: u64, minutes: i64, upkeep: Upkeep) -> Fact {
    fact(seq, minutes, 0, Body::Upkeep(Box::new(upkeep)))
}

fn counted(seq: u64, minutes: i64, counter: Counter) -> Fact {
    fact(seq, minutes, 0, Body::Counter(Box::new(counter)))
}

fn look(bad: bool) -> Fact {
    let looked = Body::Looked {
        run: id(41),
        marks_looked: true,
        inner_mark: None,
        dry_looked: true,
        marks_not_turned: Vec::new(),
        wet: if bad { vec![id(101)] } else { Vec::new() },
        torn: Vec::new(),
        dropped: Vec::new(),
    };
    fact(31, 3, 0, looked)
}

fn runs() -> Vec<ShownRun> {
    let shown = |number, outcome: Option<Outcome>, looks| ShownRun {
        run: logbook::view::Run { outcome, ..run_row(number) },
        written: Some(ago(50)),
        known: Some(Known::Tapped),
        verdict: outcome.map(judged),
        looks,
        released_by: vec![id(12)],
        corrected: false,
        contradicted: false,
    };
    let good = shown(1, Some(Outcome::Lethal), vec![look(false)]);
    let wet = ShownRun {
        corrected: true,
        contradicted: true,
        ..shown(2, Some(Outcome::CannotTell), vec![look(true)])
    };
    let paper = ShownRun {
        written: Some(ago(2)),
        known: Some(Known::FromPaper),
        ..shown(3, None, Vec::new())
    };
    let mut undone = shown(4, None, Vec::new());
    undone.run.undone = true;
    let mut not_carried = shown(5, Some(Outcome::Lethal), vec![look(false)]);
    not_carried.run.contents = load::Contents::Hollow;
    vec![good, wet, paper, undone, not_carried]
}

fn tests() -> Vec<TestShown> {
    let placed = |number: u8, days: i64| SporeTest {
        test: id(number),
        machine: id(21),
        run: Some(id(41)),
        control: true,
        lot: Some(DrawerRef { entry: DrawerId::from_bytes([7; 16]), commitment: [0; 32] }),
        placed: fact(50, days * 24 * 60, 0, Body::RunUnloaded { run: id(41) }).stamp,
        answer_by: None,
        answers: Vec::new(),
        lost: false,
        unfrozen: None,
    };
    let read = said(61, 900, Upkeep::SporeRead { test: id(2), grew: true, control_grew: None });
    let out = fact(61, 900, 0, Body::MachineOut { machine: id(21) });
    let back = fact(62, 400, 0, Body::MachineBack { machine: id(21) });
    let answer = |grew| SporeAnswer { seq: 61, stamp: read.stamp, grew, control_grew: Some(true) };
    let mut good = placed(1, 9);
    good.answers = vec![answer(false)];
    let mut grew = placed(2, 2);
    grew.answers = vec![answer(true)];
    vec![
        TestShown { test: good, path: Vec::new() },
        TestShown { test: grew, path: vec![read, out, back] },
        TestShown { test: SporeTest { lot: None, run: None, ..placed(3, 1) }, path: Vec::new() },
    ]
}

fn upkeep() -> ShownUpkeep {
    let thing = |seq, number: u8, what| {
        said(seq, 9_000, Upkeep::ThingAdded { thing: id(number), what, number: 1 })
    };
    let label = Some(DrawerRef { entry: DrawerId::from_bytes([8; 16]), commitment: [0; 32] });
    let foil = |found| Upkeep::ChoreDone {
        chore: "foil test".parse().unwrap(),
        about: About::Thing(id(83)),
        found,
        note: None,
    };
    let seal = Upkeep::ChoreLeft {
        chore: "door seal".parse().unwrap(),
        about: About::Machine(id(21)),
        why: LeftOut::Closed,
    };
    let foiled = said(76, 700, foil(Found::NotFine));
    let gap = Counter::GapExplained { from: ago(9_000), to: ago(8_000), why: GapWhy::Holiday };
    let service =
        Upkeep::MachineServiced { machine: id(21), what: Serviced::Validation, note: None };
    ShownUpkeep {
        things: vec![
            thing(70, 81, ThingKind::Jar),
            thing(71, 82, ThingKind::FootBasin),
            thing(72, 83, ThingKind::Ultrasonic),
        ],
        jar_labels: vec![said(
            73,
            9_000,
            Upkeep::JarSet { jar: id(81), contact_min: 10, lasts_h: None, label },
        )],
        jars: vec![said(74, 800, Upkeep::JarMixed { jar: id(81) })],
        basins: vec![
            said(78, 600, Upkeep::BasinWet { basin: id(82), after: BasinAfter::Client }),
            said(79, 590, Upkeep::BasinDrained { basin: id(82) }),
            said(80, 300, Upkeep::NotUsed { thing: id(82) }),
        ],
        chores: vec![foiled.clone(), said(77, 650, seal)],
        chores_last: vec![foiled],
        rules: Vec::new(),
        serviced: vec![said(75, 5_000, service)],
        exposures: vec![counted(85, 200, Counter::ExposureNoted { chair: Some(4), note: None })],
        gaps: vec![
            counted(86, 100, gap),
            counted(87, 90, Counter::BoxWasOff { from: ago(95), to: ago(91) }),
        ],
    }
}

fn full() -> Kept {
    let stopped: Vec<_> = pouches(3, SetState::SetAside);
    let aside = |seq, why| {
        let pouches = stopped.iter().map(|pouch| pouch.pouch).collect();
        fact(seq, 120, 0, Body::SetAside { pouches, run: None, why })
    };
    Kept {
        machines: vec![
            MachineShown {
                machine: logbook::view::Machine { out_since: Some(ago(900)), ..machine_row(1) },
                good: Some(ago(9 * 24 * 60)),
                counted: vec![("bacteria filter".parse().unwrap(), 200, Some(37))],
            },
            MachineShown { machine: machine_row(2), good: None, counted: Vec::new() },
        ],
        people: people()
            .into_iter()
            .zip([
                Roles { in_charge: true, ..Roles::default() },
                Roles::default(),
                Roles { learns: true, ..Roles::default() },
            ])
            .collect(),
        runs: runs(),
        tests: tests(),
        stops: vec![aside(90, StopReason::Wet), aside(91, StopReason::Recall)],
        pouches: stopped.iter().map(|pouch| (pouch.pouch, pouch.clone())).collect(),
        aside: stopped,
        upkeep: upkeep(),
        last: LastDone { packed: Some(ago(280)), mixed: Some(ago(800)), ..LastDone::default() },
        names: names(),
        begun: [(id(41), ago(50))].into(),
        labels: [
            (DrawerId::from_bytes([7; 16]), "LOT 123, use by 2027-05".to_owned()),
            (DrawerId::from_bytes([8; 16]), "Surface mix, reg. 12-34, 1:64".to_owned()),
        ]
        .into(),
        ..empty()
    }
}

fn page(language: Language, name: &str) -> (String, Vec<Tag>) {
    let ctx = ctx(language);
    let found = folder_screens(&ctx).into_iter().find(|(known, _)| *known == name).unwrap();
    let tags = tags(&found.1);
    (found.1, tags)
}

#[test]
fn its_parts_stand_in_the_order_in_which_they_are_asked_for() {
    for language in [Language::En, Language::Vi, Language::Es] {
        for name in ["folder", "folder-empty"] {
            let (_, tags) = page(language, name);
            let heads = tags.iter().enumerate().filter(|(_, tag)| tag.name == "h2");
            let heads: Vec<String> = heads.map(|(at, _)| visible(&tags, at)).collect();
            let expected = PARTS.iter().enumerate();
            let expected =
                expected.map(|(n, key)| format!("{n}. {}", Words::of(language).say(key)));
            let mut expected: Vec<String> = expected.collect();
            expected.push(Words::of(language).say("folder-show-title"));
            let heads: Vec<String> = heads.iter().map(|head| head.replace(" .", ".")).collect();
            assert_eq!(heads, expected, "{name}");
        }
    }
}

/// Nothing on it leads to a place where something could be changed.
#[test]
fn it_leads_nowhere_but_to_itself() {
    for name in ["folder", "folder-empty", "folder-over"] {
        let (html, tags) = page(Language::En, name);
        assert!(!html.contains("<script"), "{name}");
        for tag in &tags {
            match tag.name.as_str() {
                "a" => {
                    let href = tag.get("href").unwrap();
                    assert!(href.starts_with('#') || href.starts_with(PATH), "{name}: {href}");
                }
                "form" => {
                    assert_eq!((tag.get("method"), tag.get("action")), (Some("get"), Some(PATH)));
                }
                "button" => assert_eq!(tag.get("formaction"), None),
                _ => {}
            }
        }
    }
    let (_, tags) = page(Language::En, "folder-over");
    assert!(tags.iter().all(|tag| tag.name != "a" && tag.name != "form"), "it is over");
}

#[test]
fn what_was_late_copied_or_put_right_is_marked_and_a_stop_is_told_by_its_shape() {
    let (html, tags) = page(Language::En, "folder");
    for mark in ["written later", "from paper", "corrected", "two entries differ", "start undone"] {
        assert!(html.contains(mark), "{mark}");
    }
    assert!(html.contains("do not cover what was inside"));
    for (at, tag) in tags.iter().enumerate() {
        if tag.name == "li" && tag.get("class") == Some("loud") {
            assert_eq!(tags[at + 1].name, "svg", "{}", visible(&tags, at));
        }
    }
}

/// The last 30 days with today among them; New Year's Day; from day to day in either order; and what
/// cannot be read is said to be so.
#[test]
fn the_time_is_what_was_asked_for() {
    let ctx = ctx(Language::En);
    let check = |time: Option<&str>, from: Option<&str>, to: Option<&str>, expected: &str| {
        let own = |text: Option<&str>| text.map(str::to_owned);
        let asked = Asked { time: own(time), from: own(from), to: own(to), language: None };
        let found = period(&ctx, &asked);
        let day = |at| crate::clock::civil(at, &ctx.zone).date();
        let unread = if found.unread { " unread" } else { "" };
        let shown = format!("{} {}{unread}", day(found.from), day(found.last()));
        assert_eq!(shown, expected, "{time:?} {from:?} {to:?}");
    };
    check(None, None, None, "2026-10-30 2026-11-28");
    check(Some("90"), None, None, "2026-08-31 2026-11-28");
    check(Some("year"), None, None, "2026-01-01 2026-11-28");
    check(None, Some("2026-03-01"), Some("2026-03-08"), "2026-03-01 2026-03-08");
    check(None, Some("2026-03-08"), Some("2026-03-01"), "2026-03-01 2026-03-08");
    check(None, Some("2026-11-20"), None, "2026-11-20 2026-11-28");
    check(None, Some("yesterday"), None, "2026-10-30 2026-11-28 unread");
    check(None, None, Some("2026-11-20"), "2026-10-30 2026-11-28 unread");
    check(Some("7"), None, None, "2026-10-30 2026-11-28 unread");
    let asked = Asked { time: Some("year".to_owned()), ..Asked::default() };
    assert_eq!(period(&ctx, &asked).choice, Choice::Year);
}
