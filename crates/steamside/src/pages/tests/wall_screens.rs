//! The wall and the strip of running runs.

use super::made_up::*;
use super::markup::{tags, visible};
use crate::live::{Phase, Word};
use crate::pages::frame;
use crate::pages::strip::{self, Running};
use crate::pages::upkeep::WallSign;
use crate::pages::wall::{self, Seen, Stopped, Tile};
use crate::web::Ctx;
use crate::words::Language;
use measure::Span;

fn tile(number: u32) -> Tile {
    Tile { number, out: false, ends: None, time_up: false, check: false }
}

fn busy() -> Seen {
    Seen {
        ready: [("manicure", 14), ("pedicure", 6), ("bits", 0)]
            .map(|(kind, count)| (kind.parse().unwrap(), count))
            .into(),
        stops: Vec::new(),
        machines: vec![
            Tile { ends: Some(Some("11:05".to_owned())), check: true, ..tile(1) },
            Tile { ends: Some(None), time_up: true, ..tile(2) },
            Tile { out: true, ..tile(3) },
            tile(4),
        ],
        plan: vec!["Start machine 4 at 11:20".to_owned()],
        bin: 8,
        nobody: true,
        upkeep: Some(WallSign {
            says: ctx(Language::En).words().tell("wall-upkeep", &[("count", 2_u32.into())]),
            count: Some(2),
        }),
    }
}

/// The wall as it is on a good day, with a stop, and where clients wait.
pub fn wall_screens(ctx: &Ctx) -> Vec<(&'static str, String)> {
    let stops = vec![Stopped { machine: 1, run: 3, pouches: 11, whole: true }];
    let stopped = Seen { stops, ..busy() };
    let front = Seen { ready: busy().ready, ..Seen::default() };
    vec![
        ("wall", wall::draw(ctx, &busy(), false).into_string()),
        ("wall-stop", wall::draw(ctx, &stopped, false).into_string()),
        ("wall-front", wall::draw(ctx, &front, true).into_string()),
        ("strip", framed(&heard(ctx, 4))),
    ]
}

/// Any page while a measured run goes on.
fn framed(ctx: &Ctx) -> String {
    let title = ctx.words().say("log-title");
    let frame =
        frame::Frame { title, place: frame::Place::Log, desk: true, again_s: Some(60), did: None };
    frame::page(ctx, &frame, &maud::html! { (strip::draw(ctx, &running(), expected())) })
        .into_string()
}

/// A run whose machine said something so many seconds ago.
fn heard(ctx: &Ctx, seconds: i64) -> Ctx {
    let word = Word {
        run: running().run,
        phase: Some(Phase::AtTemperature),
        temp_mc: 134_260,
        held_ms: 130_000,
        heard: now() - Span::from_seconds(seconds),
    };
    let running = vec![Running { run: running(), usual: expected(), word: Some(word) }];
    Ctx { running, ..ctx.clone() }
}

#[test]
fn a_stop_on_the_wall_is_eight_words_at_most() {
    let stop = |whole, pouches| Stopped { machine: 12, run: 3, pouches, whole };
    for language in Language::ALL {
        for stops in [
            vec![stop(true, 11)],
            vec![stop(false, 1)],
            vec![stop(false, 2)],
            vec![stop(true, 11), stop(false, 2)],
        ] {
            let html = wall::draw(&ctx(language), &Seen { stops, ..busy() }, false).into_string();
            let tags = tags(&html);
            let main = tags.iter().position(|tag| tag.name == "main").unwrap();
            let said = visible(&tags, main);
            assert!(said.split_whitespace().count() <= 8, "{said}");
            let alert = |tag: &&super::markup::Tag| tag.get("role") == Some("alert");
            assert_eq!(tags[main..].iter().filter(alert).count(), 1, "a screen reader says it too");
            assert!(!html.contains("wall-top"), "nothing else stands on it");
        }
    }
}

/// Seconds since the last word, what is said, and what is not.
#[test]
fn a_silent_machine_is_by_clock_again() {
    let check = |seconds: i64, says: &[&str], not: &[&str]| {
        let html = strip::every(&heard(&ctx(Language::En), seconds)).into_string();
        for part in says {
            assert!(html.contains(part), "{seconds} s: {part} in {html}");
        }
        for part in not {
            assert!(!html.contains(part), "{seconds} s: {part} in {html}");
        }
    };
    let measured = ["MEASURED: at temperature, 134.2", "so far 2:10", "Last word 4 s ago"];
    check(4, &measured, &["CLOCK", "No word"]);
    check(40, &["No word for 40 s", "BY CLOCK: usually 55 to 60 min"], &["MEASURED"]);
    check(600, &["No word for 10 min", "BY CLOCK"], &["MEASURED", "134.2"]);
}

/// The slowest tenth of the made-up runs took 60 minutes; it has been 22.
#[test]
fn no_strip_says_that_a_run_is_over() {
    let expected = expected();
    let over = now() + Span::from_minutes(60);
    let word = |phase, ago| Word {
        run: id(1),
        phase: Some(phase),
        temp_mc: 60_000,
        held_ms: 240_000,
        heard: now() - Span::from_seconds(ago),
    };
    assert!(!strip::time_is_up(now(), expected, None));
    assert!(strip::time_is_up(over, expected, None));
    assert!(!strip::time_is_up(over, None, None), "too few runs to tell");
    let drying = Word { heard: over, ..word(Phase::Drying, 0) };
    assert!(!strip::time_is_up(over, expected, Some(drying)), "the machine says otherwise");
    assert!(!strip::time_is_up(now(), expected, Some(word(Phase::AirIn, 4))));
    assert!(strip::time_is_up(now(), expected, Some(word(Phase::AirIn, 50))));
    assert!(!strip::time_is_up(now(), expected, Some(word(Phase::Drying, 50))));
    for language in Language::ALL {
        let late = Ctx { now: over, ..heard(&ctx(language), 4) };
        let html = strip::every(&late).into_string();
        assert!(html.contains(&late.words().say("strip-time-up")), "{html}");
        assert!(!html.to_lowercase().contains("done"), "{html}");
    }
}

/// Clients see the wall: nothing that a person or a visit is known by, no spore test.
#[test]
fn the_wall_holds_nothing_of_anybody() {
    for language in Language::ALL {
        for (name, html) in wall_screens(&ctx(language)).iter().filter(|row| row.0 != "strip") {
            let tags = tags(html);
            assert!(tags.iter().all(|tag| tag.name != "a" && tag.name != "form"), "{name}");
            for person in people() {
                assert!(!html.contains(&person.sign.unwrap()), "{name}");
            }
            let front = *name == "wall-front";
            assert_eq!(html.contains("wall-machines"), *name == "wall", "{name}");
            assert_eq!(html.contains("wall-bin"), *name == "wall", "{name}");
            assert_eq!(html.contains("UPKEEP 2"), *name == "wall", "{name}");
            assert_eq!(html.contains("11:20"), *name == "wall", "{name} {front}");
        }
    }
}
