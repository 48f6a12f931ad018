//! Tasks 3 to 5: print, load, start; a good release; a mark that did not turn.

use super::{LANGUAGES, Task};
use crate::browser::{PHONE, TABLET, browser};
use crate::salon::id;
use crate::story::{GOOD, Story, record};
use load::SetState;
use measure::RunId;
use std::collections::BTreeSet;

/// A run that is over, with its record taken in.
fn over(story: &Story, sets: usize) -> RunId {
    let run = story.start(sets);
    story.act("unload", &[("run", &run.to_string())]);
    story.drop_file(&record(GOOD));
    run
}

/// A rack for fourteen.
fn room(story: &Story, machine: &str) {
    let fields = [
        ("machine", machine),
        ("chamber", "box"),
        ("across", "300"),
        ("high", "250"),
        ("depth", "400"),
        ("0.width", "280"),
        ("0.depth", "380"),
        ("0.height", "60"),
        ("0.mass", "400"),
        ("places", "14"),
        ("pitch", "20"),
        ("rack-height", "180"),
        ("rack-depth", "360"),
        ("rack-mass", "700"),
        ("pattern", "on edge"),
        ("face", "film"),
        ("wall", "5"),
        ("between", "5"),
    ];
    story.act("inside", &fields);
}

#[tokio::test]
async fn print_load_start() {
    for language in LANGUAGES {
        let home = tempfile::tempdir().expect("a folder");
        let story = Story::begin(&home.path().join("book"));
        room(&story, &story.machine);
        story.act("sets", &[("kind", "manicure"), ("owned", "30"), ("used", "0"), ("washed", "9")]);
        let Some(mut task) =
            Task::begin(("3-print-load-start", TABLET), language, &story.salon).await
        else {
            return;
        };
        task.open("/wash").await;
        task.tap("button", &task.sign("pack-asks", "HL")).await;
        let text = task.text().await;
        let codes: BTreeSet<String> =
            story.pouches(SetState::Bagged).iter().map(|pouch| pouch.code.to_string()).collect();
        assert_eq!(codes.len(), 9, "nine different codes");
        assert!(codes.iter().all(|code| text.contains(code)), "{text}");
        task.picture("labels").await;
        if let Some(sheets) = task.browser.printed("task-3-labels", (8.5, 11.0)).await {
            assert_eq!(sheets.len(), 1, "one sheet and none without labels: {sheets:?}");
            assert!(codes.iter().all(|code| sheets[0].contains(code)), "{sheets:?}");
        }
        task.open("/start").await;
        task.tap("button", &task.sign("start-asks", "HL")).await;
        task.picture("running").await;
        let going = story.book.read(|view| view.runs_open()).expect("runs");
        assert_eq!((going.len(), going[0].pouches), (1, 9));
        task.end(2).await;
    }
}

/// Thirteen where twelve were tested: amber, and a second tap.
#[tokio::test]
async fn one_more_than_was_tested_asks_for_a_second_tap() {
    let home = tempfile::tempdir().expect("a folder");
    let story = Story::begin(&home.path().join("book"));
    let second = [("number", "2"), ("air", "vacuum"), ("files", "yes"), ("most", "12")];
    story.act("machine", &second);
    story.act("sets", &[("kind", "manicure"), ("owned", "30"), ("used", "0"), ("washed", "13")]);
    story.act("pack", &[("kind", "manicure"), ("count", "13"), ("wrap", "pouched")]);
    let machines = story.book.read(|view| view.machines()).expect("machines");
    let machine = machines.iter().find(|machine| machine.number == 2).expect("the second").machine;
    room(&story, &machine.to_string());
    let Some(mut task) = Task::begin(("3-thirteen", TABLET), "en", &story.salon).await else {
        return;
    };
    task.open(&format!("/start?machine={machine}")).await;
    task.expect(&task.tell("start-over", &[("most", 12.into())])).await;
    task.tap("button", &task.sign("start-asks", "HL")).await;
    assert_eq!(story.pouches(SetState::InMachine).len(), 0, "one tap is not enough");
    task.open(&format!("/start?machine={machine}")).await;
    task.touch("checkbox", &task.say("start-against")).await;
    task.tap("button", &task.sign("start-asks", "HL")).await;
    assert_eq!(story.pouches(SetState::InMachine).len(), 13);
    task.end(3).await;
}

#[tokio::test]
async fn a_good_release_waits_until_the_load_is_cool() {
    for language in LANGUAGES {
        let home = tempfile::tempdir().expect("a folder");
        let story = Story::begin(&home.path().join("book"));
        cools(&story, "15");
        let run = over(&story, 11);
        let Some(mut task) = Task::begin(("4-good-release", TABLET), language, &story.salon).await
        else {
            return;
        };
        let release = task.sign("looks-asks", "HL");
        task.open(&format!("/run/{run}")).await;
        assert!(!task.has("button", &release).await, "hot still: nothing is offered");
        task.picture("hot").await;
        cools(&story, "0");
        task.open(&format!("/run/{run}")).await;
        task.tap("button", &release).await;
        assert_eq!(story.pouches(SetState::Ready).len(), 11);
        task.open("/wall").await;
        task.expect("11").await;
        task.end(1).await;
    }
}

/// What the salon says of how long a load cools.
fn cools(story: &Story, minutes: &str) {
    let fields = [
        ("machine", story.machine.as_str()),
        ("warm-window", "45"),
        ("0.programme", "middle"),
        ("0.cold", "30"),
        ("0.warm", "25"),
        ("0.mass", "2000"),
        ("0.drying", "full"),
        ("0.wrapped", "yes"),
        ("0.load", "2"),
        ("0.unload", "2"),
        ("0.cool", minutes),
        ("0.cost-cold", "50"),
        ("0.cost-warm", "40"),
    ];
    story.act("machine-figures", &fields);
}

#[tokio::test]
async fn one_mark_not_turned_stops_the_run_on_every_screen() {
    for language in LANGUAGES {
        let home = tempfile::tempdir().expect("a folder");
        let story = Story::begin(&home.path().join("book"));
        cools(&story, "0");
        let run = over(&story, 4);
        let Some(mut task) =
            Task::begin(("5-mark-not-turned", TABLET), language, &story.salon).await
        else {
            return;
        };
        let Some(wall) = browser(TABLET, language).await else { return };
        wall.goto(&format!("{}/wall", story.salon.url)).await;
        let pouch = story.pouches(SetState::ToCheck)[2].clone();
        task.open(&format!("/run/{run}")).await;
        task.touch("DisclosureTriangle", &task.say("one-not")).await;
        task.touch("checkbox", &pouch.code.to_string()).await;
        task.tap("button", &task.sign("one-not-asks", "HL")).await;
        task.expect(&task.say("do-not-use")).await;
        task.picture("stopped").await;
        assert_eq!(story.pouches(SetState::SetAside).len(), 4, "the whole run");
        // The wall hears of it by itself.
        let stop = task.say("do-not-use");
        for _ in 0..40 {
            if wall.text().await.contains(&stop) {
                break;
            }
            tokio::time::sleep(std::time::Duration::from_millis(50)).await;
        }
        assert!(wall.text().await.contains(&stop), "{language}: the wall");
        wall.close().await;
        // A pouch of it at a chair: over the whole screen, and said at once to who hears the page.
        let Some(phone) = browser(PHONE, language).await else { return };
        let other = &story.pouches(SetState::SetAside)[0];
        phone.goto(&format!("{}/chair?chair=4&code={}", story.salon.url, other.code)).await;
        assert!(phone.text().await.contains(&stop));
        let loud = "return !!document.querySelector('[role=alert], [aria-live=assertive]')";
        let loud = phone.client.execute(loud, vec![]).await.expect("a script");
        assert_eq!(loud, true, "{language}: assertive");
        phone.close().await;
        let refused = [("pouch", &*other.pouch.to_string()), ("why", "mistake")];
        story.refused("lift", &refused); // a failed mark has no way back but a new run
        assert_eq!(
            story.salon.post("/act/open", &[("act", &*id()), ("code", &*other.code.to_string())]),
            Some(409)
        );
        task.end(3).await;
    }
}
