//! A phone and a tablet that are cut off from the salon's box, in real Chromium: the box is killed and
//! started again at the same port: the touches at the sink. The chair is task 8.

use super::browser::{Browser, TABLET, browser};
use super::story::{GOOD, Story, record};
use logbook::fact::Body;
use serde_json::Value;
use std::time::Duration;

pub async fn ask(browser: &Browser, script: &str) -> Value {
    browser.client.execute(script, vec![]).await.unwrap_or_default()
}

/// Waits until the page says so.
pub async fn until(browser: &Browser, true_of_page: &str) {
    for _ in 0..400 {
        if ask(browser, &format!("return !!({true_of_page})")).await == Value::Bool(true) {
            return;
        }
        tokio::time::sleep(Duration::from_millis(50)).await;
    }
    panic!("never came: {true_of_page} on {}:\n{}", browser.path().await, browser.text().await);
}

pub async fn says(browser: &Browser, text: &str) {
    until(browser, &format!("document.body.innerText.includes('{text}')")).await;
}

/// Waits until the browser keeps this page, as it does by itself after any page.
pub async fn keeps(browser: &Browser, path: &str) {
    let script = format!(
        "const done = arguments[0]; navigator.serviceWorker.ready.then(async () => {{\
         for (let i = 0; i < 300; i += 1) {{\
         if (await caches.match('{path}') && await caches.match('/assets/outbox.js')) return done(true);\
         await new Promise((next) => setTimeout(next, 50)); }} done(false); }});"
    );
    let kept = browser.client.execute_async(&script, vec![]).await.expect("a script");
    assert_eq!(kept, Value::Bool(true), "{path} is not kept");
}

/// How many taps the band says are waiting.
pub async fn waiting(browser: &Browser, many: u32) {
    let shown = format!(
        "(document.getElementById('kept-count').hidden ? '0' : document.getElementById('kept-count').textContent).match(/[0-9]+/)[0] === '{many}'"
    );
    until(browser, &shown).await;
}

#[tokio::test]
async fn the_touches_at_the_sink_are_kept_in_their_order() {
    let Some(browser) = browser(TABLET, "en").await else { return };
    let home = tempfile::tempdir().expect("a folder");
    let mut story = Story::begin(&home.path().join("book"));
    let run = story.start(2);
    story.act("unload", &[("run", &run.to_string())]);
    story.drop_file(&record(GOOD));
    story.act("wash", &[("count.manicure", "2")]);
    story.act("pack", &[("kind", "manicure"), ("count", "2"), ("wrap", "pouched")]);
    let url = story.salon.url.clone();
    browser.goto(&url).await;
    for path in ["/kept", "/wash", "/start", &*format!("/run/{run}")] {
        keeps(&browser, path).await;
    }
    let head = story.book.read(|view| view.last_seq()).expect("a book");
    story.salon.kill();

    let wash = "const f = document.querySelector(\"form[action='/act/wash']\");\
        f.querySelector('[name=\"count.manicure\"]').value = 1; f.querySelector('button.sign').click()";
    browser.goto(&format!("{url}/wash")).await;
    says(&browser, "Not joined").await;
    ask(&browser, wash).await;
    says(&browser, "Kept here: washed").await;
    waiting(&browser, 1).await;
    // Taken out again: nothing of it is sent.
    ask(&browser, "document.querySelector('.did button').click()").await;
    waiting(&browser, 0).await;
    says(&browser, "Taken back").await;
    for many in [1, 2] {
        browser.goto(&format!("{url}/wash")).await;
        ask(&browser, wash).await;
        waiting(&browser, many).await;
    }
    browser.goto(&format!("{url}/run/{run}")).await;
    // All good: the sign alone says so.
    let look = "document.querySelector('input[name=marks][value=all]').form.querySelector('button.sign').click()";
    until(&browser, "document.querySelector(\"form[action='/act/look'] button.sign\")").await;
    ask(&browser, look).await;
    waiting(&browser, 3).await;
    browser.picture("outbox-sink").await;
    browser.goto(&format!("{url}/start")).await;
    until(&browser, "document.querySelector(\"form[action='/act/start'] button.sign\")").await;
    ask(&browser, "document.querySelector(\"form[action='/act/start'] button.sign\").click()")
        .await;
    waiting(&browser, 4).await;
    // One mark not turned, without saying which: the box will ask.
    browser.goto(&format!("{url}/run/{run}")).await;
    let which = "document.querySelector('input[name=marks][value=not]').form.querySelector('button.sign').click()";
    ask(&browser, which).await;
    waiting(&browser, 5).await;
    browser.client.refresh().await.expect("a page");
    waiting(&browser, 5).await;
    // What is not kept says so, and leads to what is.
    browser.goto(&format!("{url}/log")).await;
    says(&browser, "this page is not kept here").await;
    browser.goto(&format!("{url}/kept")).await;
    until(&browser, "document.querySelectorAll('[data-kept-waits] li').length === 5").await;
    browser.picture("outbox-list").await;
    only_hands_pages(&browser).await;
    back_at_the_sink(&browser, &mut story, head).await;
    browser.close().await;
}

/// Nothing but the pages of the touches is kept.
async fn only_hands_pages(browser: &Browser) {
    let kept = "const done = arguments[0]; caches.open('pages-1').then((kept) => kept.keys())\
        .then((all) => done(all.map((one) => new URL(one.url).pathname)))";
    let kept = browser.client.execute_async(kept, vec![]).await.expect("a script");
    let hands = ["/", "/kept", "/ready", "/wash", "/start", "/chair"];
    for path in kept.as_array().expect("paths").iter().filter_map(Value::as_str) {
        let known =
            hands.contains(&path) || path.starts_with("/assets/") || path.starts_with("/run/");
        assert!(known, "{path} is kept");
    }
}

/// The box is back: what waited is written in its order, and what it refuses is said until it is read.
async fn back_at_the_sink(browser: &Browser, story: &mut Story, head: u64) {
    let url = story.salon.url.clone();
    story.salon.again();
    waiting(browser, 0).await;
    says(browser, "Which mark did not turn?").await;
    browser.picture("outbox-refused").await;
    browser.goto(&url).await;
    says(browser, "Which mark did not turn?").await;
    ask(browser, "document.querySelector('#kept button').click()").await;
    until(browser, "!document.querySelector('#kept section')").await;
    let mut lines = story.book.read(|view| view.log(None, 40)).expect("a log");
    lines.retain(|line| line.fact.seq > head);
    lines.reverse();
    let told = |body: &Body| match body {
        Body::Washed { .. } => "washed",
        Body::Looked { .. } => "looked",
        Body::Released { .. } => "released",
        Body::RunStarted { .. } => "started",
        _ => "something else",
    };
    let order: Vec<&str> = lines.iter().map(|line| told(&line.fact.body)).collect();
    assert_eq!(order, ["washed", "washed", "looked", "released", "started"]);
    assert!(lines.iter().all(|line| !line.contradicted), "nothing was set aside");
    let stamps: Vec<_> = lines.iter().map(|line| line.fact.stamp.happened).collect();
    assert!(stamps.is_sorted(), "{stamps:?}");
    assert!(lines.iter().all(|line| line.fact.stamp.happened < line.fact.stamp.written));
    assert!(logbook::verify::verify(&story.salon.book).expect("a book").ok);
}
