//! How heavy the pages are and how soon they stand on a slow tablet, as a table for
//! `docs/performance.md`. Nothing is judged here: a time in a test says more of the machine than of
//! the program.

use super::access::{crawl, not_linked, pattern};
use super::browser::{Browser, TABLET, browser};
use super::salon::Salon;
use serde_json::{Value, json};
use std::collections::BTreeMap;
use std::io::Write;
use std::process::{Command, Stdio};

/// Times in the page that is open: first paint, largest paint, shift of the layout, requests.
const TIMES: &str = "
    const done = arguments[arguments.length - 1];
    const seen = { largest: 0, shift: 0 };
    new PerformanceObserver((list) => list.getEntries().forEach((e) => { seen.largest = e.startTime; }))
        .observe({ type: 'largest-contentful-paint', buffered: true });
    new PerformanceObserver((list) => list.getEntries().forEach((e) => { seen.shift += e.value; }))
        .observe({ type: 'layout-shift', buffered: true });
    setTimeout(() => {
        const paint = performance.getEntriesByName('first-contentful-paint')[0];
        seen.first = paint ? paint.startTime : 0;
        seen.requests = 1 + performance.getEntriesByType('resource').length;
        const tapped = Number(sessionStorage.tapped || 0);
        seen.answer = tapped ? performance.timeOrigin + seen.first - tapped : 0;
        delete sessionStorage.tapped;
        done(seen);
    }, 400);";

/// The place of a control, and the moment at which it is tapped, kept for the next page.
const AIM: &str = "
    document.addEventListener('click', () => {
        sessionStorage.tapped = performance.timeOrigin + performance.now();
    }, true);
    const control = document.querySelector(arguments[0]);
    control.scrollIntoView({ block: 'center' });
    const { left, top, width, height } = control.getBoundingClientRect();
    return [left + width / 2, top + height / 2];";

fn compressed(text: &str) -> usize {
    let mut gzip = Command::new("gzip")
        .args(["-9", "-c"])
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .spawn()
        .expect("gzip");
    gzip.stdin.take().expect("piped").write_all(text.as_bytes()).expect("it takes it");
    gzip.wait_with_output().expect("it ends").stdout.len()
}

async fn tap(browser: &Browser, selector: &str) {
    let place = browser.client.execute(AIM, vec![json!(selector)]).await.expect("a control");
    for kind in ["mousePressed", "mouseReleased"] {
        let at = json!({ "type": kind, "x": place[0], "y": place[1], "button": "left", "clickCount": 1 });
        browser.devtools("Input.dispatchMouseEvent", at).await;
    }
    tokio::time::sleep(std::time::Duration::from_millis(1_500)).await;
}

/// How long until the tapped key looks tapped: the browser's own measure of an interaction. The way
/// to the next page is held back, or the page would be gone before it can be asked.
async fn pressed(browser: &Browser, selector: &str) -> f64 {
    let watch = "
        window.told = 0;
        new PerformanceObserver((list) => list.getEntries().forEach((e) => {
            if (e.interactionId) window.told = Math.max(window.told, e.duration);
        })).observe({ type: 'event', durationThreshold: 16, buffered: true });
        addEventListener('submit', (event) => event.preventDefault());
        addEventListener('click', (event) => event.preventDefault());";
    browser.client.execute(watch, vec![]).await.expect("a script");
    tap(browser, selector).await;
    let told = browser.client.execute("return window.told", vec![]).await.expect("a script");
    told.as_f64().unwrap_or_default()
}

async fn times(browser: &Browser) -> Value {
    browser.client.execute_async(TIMES, vec![]).await.expect("times")
}

#[tokio::test]
#[ignore = "prints a table for docs/performance.md"]
async fn weights_and_times() {
    let browser = browser(TABLET, "en").await.expect("a browser");
    let home = tempfile::tempdir().expect("a folder");
    let salon = Salon::demo(&home.path().join("demo"));
    let mut one_each = BTreeMap::new();
    for path in crawl(&salon, &not_linked(&salon)) {
        let (_, html) = salon.get(&path);
        let best = one_each.entry(pattern(&path).0).or_insert_with(|| (path.clone(), html.clone()));
        if best.1.len() < html.len() {
            *best = (path, html);
        }
    }
    let asset = |name: &str| compressed(&salon.get(name).1);
    let shared = asset("/assets/steamside.css") + asset("/assets/steamside.js");
    browser.devtools("Emulation.setCPUThrottlingRate", json!({ "rate": 4 })).await;
    println!("| page | bytes | gzip | requests | first paint | largest | shift |");
    let mut all = shared;
    for (place, (path, html)) in &one_each {
        let (plain, packed) = (html.len(), compressed(html));
        all += packed;
        browser.goto(&format!("{}{path}", salon.url)).await;
        let seen = times(&browser).await;
        let number = |name: &str| seen[name].as_f64().unwrap_or_default();
        println!(
            "| {place} | {plain} | {packed} | {} | {:.0} ms | {:.0} ms | {:.3} |",
            number("requests"),
            number("first"),
            number("largest"),
            number("shift"),
        );
    }
    println!(
        "style and script {shared}, first page with them {}, everything {all}",
        shared + compressed(&one_each["/"].1)
    );
    for (from, control) in [
        ("/", ".places a[href='/ready']"),
        ("/wash", ".sign"),
        ("/upkeep", ".sign"),
        ("/", ".languages button:not([aria-pressed=true])"),
    ] {
        browser.goto(&format!("{}{from}", salon.url)).await;
        tap(&browser, control).await;
        let answer = times(&browser).await["answer"].as_f64().unwrap_or_default();
        browser.goto(&format!("{}{from}", salon.url)).await;
        let pressed = pressed(&browser, control).await;
        println!(
            "tap on {control} of {from}: {pressed:.0} ms until the key looks tapped, \
             {answer:.0} ms until the next page is painted"
        );
    }
    browser.close().await;
}
