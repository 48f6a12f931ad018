//! Task 13 in real Chromium: the foot basin after a client, in a language given by the caller.
//! Controls are found as a screen reader finds them: by role and accessible name, and the names are
//! read from the word files.

use super::browser::{Browser, TABLET, browser};
use super::salon::id;
use super::story::Story;
use logbook::book::Book;
use logbook::fact::{BasinAfter, Body, Known, Stamp, ThingKind, Upkeep};
use logbook::view::Thing;
use measure::{Instant, Span};
use serde_json::{Value, json};
use std::time::Duration;

/// A line of a language with its values put in; only lines that choose nothing.
fn say(language: &str, key: &str, values: &[(&str, &str)]) -> String {
    let file = match language {
        "vi" => include_str!("../../i18n/vi.ftl"),
        "es" => include_str!("../../i18n/es.ftl"),
        _ => include_str!("../../i18n/en.ftl"),
    };
    let start = format!("{key} = ");
    let line = file.lines().find_map(|line| line.strip_prefix(&start));
    let mut line = line.unwrap_or_else(|| panic!("{language} has no line {key}")).to_owned();
    for (name, value) in values {
        line = line.replace(&format!("{{ ${name} }}"), value);
    }
    line
}

/// The controls of the page that is open: role, accessible name, and where it is in the document.
async fn controls(browser: &Browser) -> Vec<(String, String, i64)> {
    let tree = browser.devtools("Accessibility.getFullAXTree", json!({})).await;
    let text =
        |node: &Value, name: &str| node[name]["value"].as_str().unwrap_or_default().to_owned();
    let nodes = tree["nodes"].as_array().expect("a tree").iter();
    nodes
        .filter(|node| node["ignored"] != Value::Bool(true))
        .filter_map(|node| {
            let name = text(node, "name").split_whitespace().collect::<Vec<_>>().join(" ");
            Some((text(node, "role"), name, node["backendDOMNodeId"].as_i64()?))
        })
        .collect()
}

async fn find(browser: &Browser, role: &str, name: &str) -> Option<i64> {
    let all = controls(browser).await;
    all.into_iter().find(|control| control.0 == role && control.1 == name).map(|found| found.2)
}

/// Taps the control with this role and name, and waits for the page that it leads to.
async fn tap(browser: &Browser, role: &str, name: &str) {
    let Some(node) = find(browser, role, name).await else {
        let all = controls(browser).await;
        let all: Vec<_> = all.iter().filter(|control| control.0 == role).collect();
        panic!("no {role} named {name:?} on {}: {all:#?}", browser.path().await);
    };
    let node = json!({ "backendNodeId": node });
    browser.devtools("DOM.scrollIntoViewIfNeeded", node.clone()).await;
    let middle = "document.activeElement && window.scrollBy(0, 0); window.tapped = true";
    browser.client.execute(middle, vec![]).await.expect("a script");
    let place = browser.devtools("DOM.getBoxModel", node).await;
    let corner = |at: usize| place["model"]["border"][at].as_f64().expect("a place");
    let (x, y) = ((corner(0) + corner(4)) / 2.0, (corner(1) + corner(5)) / 2.0);
    for kind in ["mousePressed", "mouseReleased"] {
        let at = json!({ "type": kind, "x": x, "y": y, "button": "left", "clickCount": 1 });
        browser.devtools("Input.dispatchMouseEvent", at).await;
    }
    let there = "return !window.tapped && document.readyState === 'complete'";
    for _ in 0..400 {
        if browser.client.execute(there, vec![]).await.unwrap_or_default() == Value::Bool(true) {
            return;
        }
        tokio::time::sleep(Duration::from_millis(50)).await;
    }
    panic!("no page came after {name:?}");
}

/// Three foot basins, the third of them wet for eleven minutes; the label says ten.
fn basins(story: &Story) -> Vec<Thing> {
    for _ in 0..3 {
        story.act("thing", &[("what", "basin")]);
    }
    let things = story.book.read(|view| view.things()).expect("things");
    assert!(things.iter().all(|thing| thing.what == ThingKind::FootBasin));
    for thing in &things {
        story.act("basin-set", &[("basin", &thing.thing.to_string()), ("wet", "10")]);
    }
    let now = Instant::from_millis(jiff::Timestamp::now().as_millisecond());
    let then = now - Span::from_minutes(11);
    let stamp = Stamp {
        act: id().parse().expect("an id"),
        happened: then,
        written: then,
        station: id().parse().expect("an id"),
        sign: story.sign.parse().ok(),
        known: Known::Tapped,
    };
    let wet = Upkeep::BasinWet { basin: things[2].thing, after: BasinAfter::Client };
    let written: Result<_, logbook::BookError> = story.book.act(stamp, |_, draft| {
        draft.fact(Body::Upkeep(Box::new(wet)));
        Ok(())
    });
    written.expect("it is written");
    things
}

/// When the wet time of a basin began, and whether it was drained since.
fn wet(book: &Book, thing: Thing) -> (bool, bool) {
    let basin = book.read(|view| view.basin(thing)).expect("a basin");
    (basin.wet.is_some(), basin.drained.is_some())
}

/// Wet with one tap, no draining before the minutes are over, *not used today* with one tap, all of
/// it in the log.
async fn foot_basin(language: &str) {
    let Some(browser) = browser(TABLET, language).await else { return };
    let home = tempfile::tempdir().expect("a folder");
    let story = Story::begin(&home.path().join("book"));
    let things = basins(&story);
    let name = |number: &str| say(language, "thing-basin", &[("number", number)]);
    let minutes = say(language, "basin-wet-asks", &[("count", "10")]);
    let drain = say(language, "basin-drain-asks", &[]);
    let sign = |number: &str, asks: &str| format!("{}: {asks} HL", name(number));

    browser.goto(&format!("{}/", story.salon.url)).await;
    tap(&browser, "link", &say(language, "place-upkeep", &[])).await;
    assert_eq!(find(&browser, "button", &sign("1", &drain)).await, None, "nothing to drain");
    // A client has left: one tap, and the wet time of ten minutes begins.
    tap(&browser, "button", &sign("1", &minutes)).await;
    assert_eq!(wet(&story.book, things[0]), (true, false));
    assert_eq!(find(&browser, "button", &sign("1", &drain)).await, None, "not before its time");
    let said = browser.text().await;
    let until = say(language, "basin-wet-until", &[("time", "")]);
    assert!(said.contains(until.trim()), "{language}: {said}");
    browser.picture(&format!("basin-wet-{language}")).await;
    // By another way it is refused, with the sentence.
    let basin = things[0].thing.to_string();
    story.refused("basin-drained", &[("basin", &basin)]);
    assert_eq!(wet(&story.book, things[0]), (true, false));
    // The second was not used today: one tap.
    let not_used = say(language, "chore-not-used", &[]);
    tap(&browser, "button", &format!("{not_used} {}", name("2"))).await;
    let second = story.book.read(|view| view.basin(things[1])).expect("a basin");
    assert_eq!(second.not_used.len(), 1, "{language}");
    // The minutes of the third are over: it is offered, and drained.
    tap(&browser, "button", &sign("3", &drain)).await;
    assert_eq!(wet(&story.book, things[2]), (true, true));

    tap(&browser, "link", &say(language, "place-log", &[])).await;
    let log = browser.text().await;
    let client = say(language, "basin-after-client", &[]);
    for line in [
        say(language, "line-basin-wet", &[("what", &name("1")), ("after", &client)]),
        say(language, "line-not-used", &[("what", &name("2"))]),
        say(language, "line-basin-drained", &[("what", &name("3"))]),
    ] {
        assert!(log.contains(&line), "{language}: {line} in {log}");
    }
    browser.close().await;
}

#[tokio::test]
async fn the_foot_basin_after_a_client() {
    foot_basin("en").await;
}
