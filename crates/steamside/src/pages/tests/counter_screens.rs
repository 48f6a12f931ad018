//! Handing over, correcting, from paper, the weekly sheet; and what the log says of such facts.

use super::made_up::*;
use super::markup::{tags, visible};
use crate::acts::{Correctable, Count, WeighTray};
use crate::pages::outage::Outage;
use crate::pages::{correct, hand_over, later, outage, telling, week};
use crate::web::Ctx;
use crate::words::Language;
use load::SetState;
use logbook::fact::{About, Body, Counter, Fact, GapWhy, Units};
use logbook::view::{HandOver, Machine};
use maud::{Markup, html};
use measure::Span;

fn offered(taken: bool) -> HandOver {
    HandOver {
        act: id(70),
        given: (ago(42), Some(id(11))),
        to: None,
        drying: 2,
        note: None,
        taken: taken.then(|| (ago(2), Some(id(12)))),
    }
}

fn five(offer: Option<bool>) -> hand_over::Seen {
    let note = || Some("seal on machine 2 looks worn".to_owned());
    hand_over::Seen {
        people: people(),
        running: vec![hand_over::Runs {
            name: (1, 4),
            ends: Some(now() + Span::from_minutes(31)),
            pouches: 9,
        }],
        to_check: vec![(2, 3)],
        bin: 5,
        aside: 0,
        jars: vec![(2, now() + Span::from_minutes(180))],
        not_fine: vec![("door seal".parse().unwrap(), About::Machine(id(21)))],
        machines: vec![machine_row(1), machine_row(2)],
        offered: offer.map(|taken| (offered(taken), note())),
    }
}

fn correction(what: Correctable) -> correct::Seen {
    let fact = facts().remove(1);
    correct::Seen {
        stamp: fact.stamp,
        sign: Some("HL fish".to_owned()),
        text: telling::line(&ctx(Language::En), &names(), &fact),
        inside: pouches(9, SetState::ToCheck),
        bagged: vec![pouch(40, SetState::Bagged)],
        what,
        people: people(),
    }
}

fn from_paper() -> later::Seen {
    later::Seen {
        chores: vec![("salon foil test".to_owned(), "foil test".to_owned())],
        people: people(),
        machines: vec![machine_row(1), machine_row(2)],
        kinds: kinds(),
        bagged: pouches(3, SetState::Bagged),
        to_check: vec![running()],
        look: None,
    }
}

/// The screens with their names; those of the sink, of the desk, and the sheet that stands alone.
pub fn counter_screens(ctx: &Ctx) -> (Vec<(&'static str, Markup)>, (&'static str, String)) {
    let manicure = || "manicure".parse().unwrap();
    let counted = Count { kind: manicure(), owned: Some(24), loose: Some((6, 2)) };
    let tray = WeighTray { grams: 1_240, empty_g: 310, sets: vec![(manicure(), 9)], pouched: true };
    let looked =
        later::Seen { look: Some((running(), pouches(2, SetState::ToCheck))), ..from_paper() };
    let cut = Outage { run: id(41), machine: 1, number: 4, span: (ago(160), ago(153)) };
    let alone = hand_over::Seen { people: people()[..1].to_vec(), ..five(None) };
    let washed = vec![(manicure(), 8)];
    let screens = vec![
        ("hand-over", hand_over::draw(ctx, &five(None))),
        ("hand-over-offered", hand_over::draw(ctx, &five(Some(false)))),
        ("hand-over-taken", hand_over::draw(ctx, &five(Some(true)))),
        ("hand-over-alone", hand_over::draw(ctx, &alone)),
        ("correct-washed", correct::draw(ctx, &correction(Correctable::Washed(washed)))),
        ("correct-counted", correct::draw(ctx, &correction(Correctable::Counted(counted)))),
        ("correct-run", correct::draw(ctx, &correction(Correctable::Started(id(41))))),
        (
            "correct-chair",
            correct::draw(ctx, &correction(Correctable::Opened(id(5), id(6), Some(4)))),
        ),
        ("correct-tray", correct::draw(ctx, &correction(Correctable::Weighed(tray)))),
        ("later", later::draw(ctx, &from_paper())),
        ("later-look", later::draw(ctx, &looked)),
        ("outage", html! { (outage::card(ctx, &cut)) }),
    ];
    let sheet = week::Seen {
        monday: jiff::civil::date(2026, 11, 23),
        spores: vec![(1, vec![2])],
        closed: vec![6],
    };
    (screens, ("week", week::draw(ctx, &sheet).into_string()))
}

fn told(said: Counter) -> String {
    let fact = Fact { body: Body::Counter(Box::new(said)), ..facts().remove(0) };
    telling::entry(&ctx(Language::En), &names(), &[fact])
}

#[test]
fn each_fact_of_the_counter_has_its_own_line() {
    let (from, to) = (ago(160), ago(153));
    let corrected = |out: usize, put: usize| {
        let ids = |count| (0..count).map(|at| id(100 + at as u8)).collect();
        Counter::RunCorrected { run: id(41), out: ids(out), put: ids(put) }
    };
    let check = |said, expected: &str| assert_eq!(told(said), expected);
    check(
        Counter::HandedOver { to: None, drying: 2, note: None },
        "Handed over to whoever takes it. Drying on the rack: 2.",
    );
    check(Counter::TakenOver { given: id(70) }, "Took it over: I have it.");
    let line = told(corrected(1, 2));
    assert!(
        line.contains("Not in it: 1 pouch.") && line.contains("In it too: 2 pouches."),
        "{line}"
    );
    assert!(!told(corrected(1, 0)).contains("In it too"));
    check(
        Counter::GapExplained { from, to, why: GapWhy::Power },
        "Nothing written from 08:02 to 08:09: No power.",
    );
    check(Counter::BoxWasOff { from, to }, "The salon's box was off from 08:02 to 08:09.");
    check(
        Counter::PersonSpeaks { person: id(11), language: "vi".to_owned() },
        "HL fish reads Tiếng Việt.",
    );
    let is =
        |learns, teaches| Counter::PersonIs { person: id(11), learns, in_charge: false, teaches };
    check(is(true, true), "HL fish: learns, teaches.");
    check(is(false, false), "HL fish: nothing particular.");
    check(
        Counter::RecordShows { language: "en".to_owned(), units: Units::Us },
        "The record is written in English, °F, psi, in, oz.",
    );
}

/// Line 5 names the machine that takes over, and says so where there is none.
#[test]
fn the_fifth_line_is_made_from_the_machines_that_there_are() {
    let out = |number| Machine { out_since: Some(ago(5)), ..machine_row(number) };
    let check = |machines: Vec<Machine>, says: &str| {
        let seen = hand_over::Seen { machines, ..five(None) };
        let html = hand_over::draw(&ctx(Language::En), &seen).into_string();
        assert!(html.contains(says), "{says}");
    };
    check(
        vec![machine_row(1), machine_row(2)],
        "If machine 1 stops: set its run aside, bag again, use machine 2.",
    );
    check(vec![out(1), machine_row(2)], "If machine 2 stops: set its run aside, use what is ready");
    check(vec![out(1)], "No machine is in use");
}

/// A week of seven days, three languages in each heading, a box only where something is due.
#[test]
fn the_sheet_says_everything_three_times_and_marks_what_is_due() {
    let (_, (_, html)) = counter_screens(&ctx(Language::Vi));
    let tags = tags(&html);
    let count =
        |name: &str, value: &str| tags.iter().filter(|t| t.get(name) == Some(value)).count();
    let rows = count("scope", "row");
    assert_eq!(count("scope", "col"), 7);
    for language in ["en", "vi", "es"] {
        // The page itself is marked with its language as well.
        let own = usize::from(language == "vi");
        assert_eq!(count("lang", language), rows + 7 + own, "{language}");
    }
    let runs = 6;
    assert_eq!(count("class", "box"), 7 * 5 + 1 + 7 * 2 * runs);
    let title = tags.iter().position(|tag| tag.get("id") == Some("week-title")).unwrap();
    assert!(visible(&tags, title).contains("2026"));
}
