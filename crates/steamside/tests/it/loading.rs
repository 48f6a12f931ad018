//! What goes in, from outside: what a set is made of, the pouch, the trays, which programme, what
//! looks teach; and that a page of trays stands in a real browser as it should.

use super::browser::{Browser, PHONE, TABLET, browser};
use super::salon::Salon;
use super::story::{GOOD, Story, record};
use load::SetState;
use serde_json::Value;

/// The pouches that wait, as fields of a form.
fn bagged(story: &Story) -> Vec<String> {
    story.pouches(SetState::Bagged).iter().map(|pouch| pouch.pouch.to_string()).collect()
}

fn start<'a>(story: &'a Story, programme: &'a str, ids: &'a [String]) -> Vec<(&'a str, &'a str)> {
    let mut fields = vec![("machine", story.machine.as_str()), ("programme", programme)];
    fields.extend(ids.iter().map(|pouch| ("pouch", pouch.as_str())));
    fields
}

#[test]
fn pouches_do_not_start_in_a_programme_without_drying_unless_somebody_says_so() {
    let home = tempfile::tempdir().expect("a folder");
    let story = Story::begin(&home.path().join("book"));
    story.act("wash", &[("count.manicure", "4")]);
    story.act("pack", &[("kind", "manicure"), ("count", "4"), ("wrap", "pouched")]);
    let ids = bagged(&story);
    story.refused("start", &start(&story, "fast", &ids));
    let (status, page) = story.salon.get("/start");
    assert_eq!(status, 200);
    assert!(page.contains("Proposed: "), "a programme is proposed");
    assert!(!page.contains("Proposed: fast"), "never one without drying");
    assert!(page.contains("It does not dry, and pouches must be dry."), "and the reason is told");
    let mut anyway = start(&story, "fast", &ids);
    anyway.push(("over", "yes"));
    story.act("start", &anyway);
    let inside = story.pouches(SetState::InMachine);
    assert_eq!(inside.len(), 4, "a machine that runs already is recorded");
}

#[test]
fn the_salons_own_things_beat_the_typical_ones() {
    let home = tempfile::tempdir().expect("a folder");
    let story = Story::begin(&home.path().join("book"));
    story.act("sets", &[("kind", "manicure"), ("owned", "8"), ("used", "8"), ("washed", "0")]);
    let pusher = [
        ("word", "long pusher"),
        ("form", "stick"),
        ("length", "180"),
        ("width", "8"),
        ("thick", "8"),
        ("mass", "41.5"),
        ("material", "stainless 304"),
        ("steam", "yes"),
        ("ultrasonic", "yes"),
        ("most-c", "200"),
    ];
    story.act("implement", &pusher);
    let mut too_hot = pusher;
    too_hot[9] = ("most-c", "9000");
    story.refused("implement", &too_hot);
    story.act("set-of", &[("kind", "manicure"), ("piece.long pusher", "2")]);
    story.refused("set-of", &[("kind", "manicure"), ("piece.no such thing", "1")]);
    // What a set is made of is not taken away under it.
    story.refused("implement-ended", &[("word", "long pusher")]);
    let (_, page) = story.salon.get("/bag?kind=manicure");
    assert!(page.contains("long pusher") && page.contains("<svg"), "its pouch is drawn");
    // Four sets in pouches and the tray: 700 g, of which 300 g are the tray.
    story.act("tray-weighed", &[("grams", "700"), ("empty", "300"), ("count.manicure", "4")]);
    story.refused("tray-weighed", &[("grams", "300"), ("empty", "300"), ("count.manicure", "4")]);
    let (_, page) = story.salon.get("/in");
    // 400 g less four pouches of a few grams, by four: a little under 100 g each.
    assert!(
        (95..=99).any(|grams| page.contains(&format!("{grams}\u{a0}g"))),
        "weighed, not typical"
    );
    let room = [
        ("machine", story.machine.as_str()),
        ("chamber", "round"),
        ("across", "250"),
        ("depth", "350"),
        ("0.width", "200"),
        ("0.depth", "320"),
        ("0.height", "40"),
        ("0.mass", "300"),
        ("pattern", "flat"),
        ("face", "paper"),
        ("wall", "5"),
        ("between", "5"),
        ("page", "17"),
    ];
    story.act("inside", &room);
    let mut too_wide = room;
    too_wide[4] = ("0.width", "260");
    story.refused("inside", &too_wide);
    let mut no_rack = room;
    no_rack[8] = ("pattern", "on edge");
    story.refused("inside", &no_rack);
    story.act("wash", &[("count.manicure", "3")]);
    story.act("pack", &[("kind", "manicure"), ("count", "3"), ("wrap", "pouched")]);
    let (_, page) = story.salon.get(&format!("/tray?machine={}", story.machine));
    assert!(page.contains("As the machine’s manual says, page 17."));
    assert!(page.contains("paper side up"));
    let (_, sheet) = story.salon.get(&format!("/tray?machine={}&print=a5", story.machine));
    assert!(sheet.contains("sheet-of-labels a5"), "and can be printed");
}

#[test]
fn a_wet_load_is_learnt_from() {
    let home = tempfile::tempdir().expect("a folder");
    let story = Story::begin(&home.path().join("book"));
    let manual = [
        ("machine", story.machine.as_str()),
        ("programme", "middle"),
        ("set", "134"),
        ("hold", "240"),
        ("pulses", "3"),
        ("dry-min", "10"),
        ("dry-kpa", "8"),
        ("pouches", "yes"),
        ("most-pouched", "1500"),
        ("page", "24"),
    ];
    story.act("programme", &manual);
    let mut no_pressure = manual;
    no_pressure[6] = ("dry-kpa", "0");
    story.refused("programme", &no_pressure);
    let run = story.start(3);
    let named = run.to_string();
    story.act("unload", &[("run", &named)]);
    story.drop_file(&record(GOOD));
    let wet = story.pouches(SetState::ToCheck)[0].pouch.to_string();
    let looked = [("run", named.as_str()), ("marks", "all"), ("dry", "not"), ("wet", wet.as_str())];
    story.act("look", &looked);
    let (_, page) = story.salon.get("/machine");
    assert!(page.contains("the maker’s limit, 1500\u{a0}g, stands. 1 looks, 1 wet."));
    let machine = story.machine.parse().expect("an id");
    let looks = story.book.read(|view| view.dry_looks(machine)).expect("looks");
    assert_eq!((looks.len(), looks[0].wet), (1, true));
}

async fn ask(browser: &Browser, script: &str) -> Value {
    browser.client.execute(script, vec![]).await.expect("a script")
}

#[tokio::test]
async fn trays_are_drawn_to_scale_on_a_tablet_and_on_a_phone_in_three_languages() {
    for language in ["en", "vi", "es"] {
        for screen in [TABLET, PHONE] {
            let Some(browser) = browser(screen, language).await else {
                return;
            };
            let home = tempfile::tempdir().expect("a folder");
            let salon = Salon::demo(&home.path().join("demo"));
            for (name, path) in [("tray", "/tray"), ("bag", "/bag?kind=pedicure"), ("in", "/in")] {
                browser.goto(&format!("{}{path}", salon.url)).await;
                let wide = ask(
                    &browser,
                    "return document.documentElement.scrollWidth - window.innerWidth",
                )
                .await;
                assert!(
                    wide.as_i64().is_some_and(|w| w <= 0),
                    "{path} {language}: {wide} too wide"
                );
                browser.picture(&format!("{}-{name}-{language}", screen.name)).await;
            }
            browser.goto(&format!("{}/tray", salon.url)).await;
            // True to scale: the drawing on the screen has the sides of its view box.
            let scale = "const svg = document.querySelector('svg.drawing');
                const box = svg.viewBox.baseVal, at = svg.getBoundingClientRect();
                return Math.abs(at.width / at.height - box.width / box.height)";
            assert!(ask(&browser, scale).await.as_f64().is_some_and(|off| off < 0.01));
            let named = "const svg = document.querySelector('svg.drawing');
                return svg.getAttribute('role') === 'img' && svg.querySelector('title').textContent.length > 0";
            assert_eq!(ask(&browser, named).await, Value::Bool(true));
            browser.close().await;
        }
    }
}
