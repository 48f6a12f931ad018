//! The wall in real Chromium on a screen of 1920 x 1080, in three languages; pages that follow the
//! book by themselves; the strip of a running run on every page.

use super::browser::{Browser, PHONE, Screen, TABLET, browser};
use super::salon::{Salon, id};
use super::story::{GOOD, Story, record};
use fantoccini::Locator;
use load::SetState;
use logbook::book::Book;
use serde_json::Value;
use std::time::{Duration, Instant};

/// A 32-inch screen.
const WALL: Screen = Screen { size: (1920, 1080), name: "wall" };

/// Language, and the stop word.
const STOP: [(&str, &str); 3] = [("en", "DO NOT USE"), ("vi", "KHÔNG DÙNG"), ("es", "NO USAR")];

async fn ask(browser: &Browser, script: &str) -> Value {
    browser.client.execute(script, vec![]).await.expect("a script")
}

/// Waits until a script answers yes, at most so many seconds; how long it took.
async fn until(browser: &Browser, seconds: u64, script: &str) -> Duration {
    let begun = Instant::now();
    while ask(browser, script).await != Value::Bool(true) {
        let text = browser.text().await;
        assert!(begun.elapsed() < Duration::from_secs(seconds), "never: {script}\n{text}");
        tokio::time::sleep(Duration::from_millis(100)).await;
    }
    begun.elapsed()
}

/// Sizes, edges, and nothing of anybody in the source.
async fn fits(browser: &Browser, book: &Book, language: &str, address: &str) {
    browser.goto(address).await;
    let size = |part: &str| {
        format!(
            "return Math.round(parseFloat(getComputedStyle(document.querySelector('{part}')).fontSize))"
        )
    };
    assert_eq!(ask(browser, &size(".wall-time")).await, 140, "{language}");
    for part in ["main", ".wall-ready li"] {
        assert_eq!(ask(browser, &size(part)).await, 96, "{language} {part}");
    }
    let over = "const e = document.documentElement; const out = [...document.querySelectorAll('main *')]\
                .filter((p) => p.getBoundingClientRect().right > innerWidth + 1); \
                return [e.scrollWidth - innerWidth, e.scrollHeight - innerHeight, out.length]";
    let over = ask(browser, over).await;
    assert!(over[0].as_i64().is_some_and(|wide| wide <= 0), "{language}: {over} too wide");
    assert_eq!(over[2], 0, "{language}: parts stand out of the screen");
    assert!(over[1].as_i64().is_some_and(|high| high <= 0), "{language}: {over} too high");
    let source = browser.client.source().await.expect("the source");
    let people = book.read(|view| view.people()).expect("people");
    let every = SetState::ALL;
    let pouches = book.read(|view| view.pouches_in(&every)).expect("pouches");
    assert!(people.len() > 1 && pouches.len() > 20, "the demo is a busy salon");
    for sign in people.iter().filter_map(|person| person.sign.as_deref()) {
        assert!(!source.contains(sign), "{language}: {sign}");
    }
    for pouch in &pouches {
        assert!(!source.contains(&pouch.code.to_string()), "{language}: {}", pouch.code);
    }
    assert!(!source.contains("href=\"/run/"), "{language}: no way to a run");
}

#[tokio::test]
async fn the_wall_in_three_languages() {
    for (language, stop) in STOP {
        let Some(browser) = browser(WALL, language).await else {
            return;
        };
        let home = tempfile::tempdir().expect("a folder");
        let salon = Salon::demo(&home.path().join("demo"));
        let book = Book::open(&salon.book).expect("it opens beside the program");
        clear(&salon, &book);
        let wall = format!("{}/wall", salon.url);
        fits(&browser, &book, language, &format!("{wall}?front=yes")).await;
        browser.picture(&format!("wall-front-{language}")).await;
        let front = browser.text().await;
        fits(&browser, &book, language, &wall).await;
        browser.picture(&format!("wall-{language}")).await;
        let all = browser.text().await;
        assert!(all.lines().count() > front.lines().count(), "{language}: the back says more");
        // A machine's load is set aside while the wall hangs there.
        let run = book.read(|view| view.runs_open()).expect("runs").remove(0).run.to_string();
        let form = [("act", &*id()), ("run", &run), ("why", "not-sure")];
        assert_eq!(salon.post("/act/set-aside", &form), Some(303), "{language}");
        let whole = "const m = document.querySelector('main.wall-stop'); if (!m) return false; \
                     const r = m.getBoundingClientRect(); \
                     return r.width === innerWidth && r.height === innerHeight";
        until(&browser, 3, whole).await;
        browser.picture(&format!("wall-stop-{language}")).await;
        let said = browser.text().await;
        assert!(said.contains(stop) && said.split_whitespace().count() <= 8, "{language}: {said}");
        browser.goto(&format!("{wall}?front=yes")).await;
        assert!(!browser.text().await.contains(stop), "clients are not told to worry");
        browser.close().await;
    }
}

/// Takes apart what the demo has set aside, so that the wall begins on a good day.
fn clear(salon: &Salon, book: &Book) {
    let aside = book.read(|view| view.pouches_in(&[SetState::SetAside])).expect("pouches");
    let sign = book.read(|view| view.people()).expect("people")[0].person.to_string();
    for pouch in aside {
        let pouch = pouch.pouch.to_string();
        let form = [("act", &*id()), ("sign", &sign), ("pouch", &pouch)];
        assert_eq!(salon.post("/act/apart", &form), Some(303));
    }
}

/// One person taps, another looks: within three seconds, without loading the page again, and not
/// while somebody is typing.
#[tokio::test]
async fn an_act_here_shows_there() {
    let Some(browser) = browser(TABLET, "en").await else {
        return;
    };
    let home = tempfile::tempdir().expect("a folder");
    let story = Story::begin(&home.path().join("book"));
    browser.goto(&story.salon.url).await;
    ask(&browser, "window.same = 1; document.querySelector('main a').focus()").await;
    let run = story.start(3);
    let shows = "return document.querySelector('main').textContent.includes('Machine 1, run 1')";
    until(&browser, 3, shows).await;
    assert_eq!(ask(&browser, "return window.same").await, 1, "it is the same page");
    for page in ["/ready", "/log", "/chair", "/wash", "/setup", "/plan", "/visits"] {
        browser.goto(&format!("{}{page}", story.salon.url)).await;
        let strip = browser.client.find(Locator::Css("#strip li")).await;
        let strip = strip.unwrap_or_else(|_| panic!("no strip on {page}"));
        assert!(strip.is_displayed().await.expect("shown"), "{page}");
        let said = strip.text().await.expect("text");
        assert!(said.contains("Machine 1, run 1") && said.contains("BY CLOCK"), "{page}: {said}");
        assert!(!said.to_lowercase().contains("done"), "{page}: {said}");
    }
    browser.picture("tablet-strip").await;
    // Somebody ticks something on the page of the run: it is left alone, the strip is not.
    browser.goto(&format!("{}/run/{run}", story.salon.url)).await;
    let ticks = "window.same = 2; const d = document.querySelector('main'); d.dataset.mine = 'yes'; \
                 document.body.dispatchEvent(new Event('input', { bubbles: true }))";
    ask(&browser, ticks).await;
    story.act("unload", &[("run", &run.to_string())]);
    until(&browser, 3, "return !document.querySelector('#strip li')").await;
    let mine = "return window.same === 2 && document.querySelector('main').dataset.mine === 'yes'";
    assert_eq!(ask(&browser, mine).await, Value::Bool(true));
    browser.close().await;
}

/// The machine's file grows in the watched folder: measured, then silent; nothing is judged yet.
#[tokio::test]
async fn a_growing_file_is_the_last_word() {
    let home = tempfile::tempdir().expect("a folder");
    let stick = home.path().join("stick");
    std::fs::create_dir_all(&stick).expect("a folder");
    let story = Story::begin_watching(&home.path().join("book"), &stick);
    let run = story.start(2);
    let text = record(GOOD);
    let lines: Vec<&str> = text.lines().collect();
    let file = stick.join("run.csv");
    let write =
        |to: usize| std::fs::write(&file, lines[..to].join("\n")).expect("it can be written");
    // Pressure has fallen to 36 kPa in this line of the demo's record.
    write(20);
    // The watched folder is looked at every two seconds.
    let mut strip = String::new();
    for _ in 0..50 {
        strip = story.salon.get("/strip").1;
        if strip.contains("MEASURED") {
            break;
        }
        tokio::time::sleep(Duration::from_millis(100)).await;
    }
    assert!(strip.contains("MEASURED: air out"), "{strip}");
    assert!(strip.contains("Last word") && strip.contains(&format!("/run/{run}")), "{strip}");
    assert_eq!(story.run(run).record, None, "nothing is taken in and nothing is judged");
    let Some(browser) = browser(PHONE, "en").await else {
        return;
    };
    browser.goto(&format!("{}/ready", story.salon.url)).await;
    write(lines.len() / 2);
    until(
        &browser,
        4,
        "return document.querySelector('#strip').textContent.includes('At temperature so far')",
    )
    .await;
    browser.picture("phone-strip-measured").await;
    browser.close().await;
}

/// The box goes away and comes back: the page says since when it has heard nothing, and stays.
#[tokio::test]
async fn a_page_says_since_when_it_is_cut_off() {
    let Some(browser) = browser(TABLET, "en").await else {
        return;
    };
    let home = tempfile::tempdir().expect("a folder");
    let mut story = Story::begin(&home.path().join("book"));
    browser.goto(&format!("{}/ready", story.salon.url)).await;
    until(&browser, 3, "return document.querySelector('#not-joined').hidden").await;
    assert!(
        story.salon.interrupt().success(),
        "an open page does not keep the program from ending"
    );
    until(&browser, 10, "return !document.querySelector('#not-joined').hidden").await;
    let said = browser.text().await;
    assert!(
        said.contains("Not joined to the salon’s box since") && !said.contains("--:--"),
        "{said}"
    );
    assert!(said.contains("Nothing") || said.contains("ready"), "the page is still there: {said}");
    browser.picture("tablet-not-joined").await;
    browser.close().await;
}
