//! Task 2: wet hands wash. Drops on the glass do nothing, the glass is wiped, and five of six sets are
//! washed.

use super::{LANGUAGES, Task};
use crate::browser::{Browser, TABLET};
use crate::story::Story;
use serde_json::{Value, json};
use std::time::Duration;

/// One touch of so many milliseconds; the browser is told when it began and when it ended. A moment
/// ago: a time that is still to come would be made shorter.
async fn touch(browser: &Browser, (x, y): (f64, f64), long_ms: f64) {
    let at = jiff::Timestamp::now().as_millisecond() as f64 / 1_000.0 - 0.1;
    let points = json!([{ "x": x, "y": y }]);
    let start = json!({ "type": "touchStart", "touchPoints": points, "timestamp": at });
    let end = json!({ "type": "touchEnd", "touchPoints": [], "timestamp": at + long_ms / 1_000.0 });
    browser.devtools("Input.dispatchTouchEvent", start).await;
    browser.devtools("Input.dispatchTouchEvent", end).await;
    tokio::time::sleep(Duration::from_millis(40)).await;
}

/// The middle of every key that is on the screen.
async fn keys(task: &Task) -> Vec<(f64, f64)> {
    let keys = task
        .script(
            "return Array.from(document.querySelectorAll('a, button'), (key) => {
                const { left, top, width, height } = key.getBoundingClientRect();
                return [left + width / 2, top + height / 2];
            }).filter(([x, y]) => x > 0 && y > 0 && x < 1280 && y < 700)",
        )
        .await;
    let keys: Vec<(f64, f64)> = serde_json::from_value(keys).expect("places");
    assert!(keys.len() > 5, "{keys:?}");
    keys
}

/// Forty drops, one after the other, on keys and anywhere on the glass.
async fn rain(task: &Task, keys: &[(f64, f64)]) {
    let mut chance = [0; 120];
    getrandom::fill(&mut chance).expect("random bytes");
    for drop in 0..40 {
        let [x, y, long] = [0, 1, 2].map(|part| f64::from(chance[drop * 3 + part]));
        let on_a_key = keys.get(drop % (2 * keys.len())).copied();
        let place = on_a_key.unwrap_or((x * 5.0, y * 2.7));
        touch(&task.browser, place, 10.0 + long / 12.8).await;
    }
    tokio::time::sleep(Duration::from_millis(600)).await;
}

#[tokio::test]
async fn wet_hands_wash() {
    for language in LANGUAGES {
        let home = tempfile::tempdir().expect("a folder");
        let story = Story::begin(&home.path().join("book"));
        story.act("sets", &[("kind", "manicure"), ("owned", "9"), ("used", "6"), ("washed", "0")]);
        let Some(mut task) = Task::begin(("2-wet-hands", TABLET), language, &story.salon).await
        else {
            return;
        };
        let seq = || story.book.read(|view| view.last_seq()).expect("a book");
        let before = seq();
        task.open("/").await;
        let keys = keys(&task).await;
        rain(&task, &keys).await;
        assert_eq!((seq(), task.browser.path().await.as_str()), (before, "/"), "a drop acted");
        let sets = "return Array.from(document.querySelectorAll('main input[type=number]'), (f) => f.value)";
        let sets: Vec<Value> = serde_json::from_value(task.script(sets).await).expect("numbers");
        assert_eq!(sets.iter().filter(|set| **set == json!("6")).count(), 1, "no drop counted");
        // Fifteen seconds in one language are enough.
        if language == "en" {
            task.touch("button", &task.say("wipe-glass")).await;
            task.picture("wiping").await;
            for key in keys.iter().take(6) {
                touch(&task.browser, *key, 90.0).await;
            }
            task.expect(&task.say("wipe-says")).await;
            assert_eq!((seq(), task.browser.path().await.as_str()), (before, "/"), "frozen");
            tokio::time::sleep(Duration::from_secs(16)).await;
            assert!(!task.text().await.contains(&task.say("wipe-says")), "the time is over");
        }
        let kind = task.say("kind-manicure");
        task.touch("button", &task.tell("one-fewer", &[("what", kind.into())])).await;
        task.tap("button", &task.sign("wash-asks", "HL")).await;
        let left =
            task.script("return document.querySelector('.did [data-left]').dataset.left").await;
        let left: u32 = left.as_str().expect("an undo bar").parse().expect("seconds");
        assert!((20..=30).contains(&left), "{left} of thirty seconds");
        let kinds = story.book.read(|view| view.kinds()).expect("kinds");
        let manicure = kinds.iter().find(|row| row.kind.word() == "manicure").expect("it is there");
        assert_eq!((manicure.used, manicure.washed), (1, 5));
        let bin = task.tell("bin-about", &[("count", 1.into())]);
        task.expect(&bin).await;
        task.end(3).await;
    }
}
