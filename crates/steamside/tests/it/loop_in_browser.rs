//! The whole loop once in real Chromium, on a tablet and on a phone: every control is found by the
//! name that a person reads.

use super::browser::{Browser, PHONE, Screen, TABLET, browser};
use super::salon::{Salon, id};
use super::story::{GOOD, record};
use fantoccini::Locator;
use load::SetState;
use logbook::book::Book;

/// Three manicure sets from the sink to a chair.
async fn round(screen: Screen) {
    let Some(browser) = browser(screen, "en").await else {
        return;
    };
    let home = tempfile::tempdir().expect("a folder");
    let salon = Salon::serve(&home.path().join("book"), &["--zone", "Etc/UTC"]);
    for (path, fields) in [
        ("/act/person", [("sign-text", "HL"), ("act", &*id()), ("", "")]),
        ("/act/machine", [("number", "1"), ("files", "yes"), ("act", &*id())]),
    ] {
        assert_eq!(salon.post(path, &fields), Some(303));
    }
    let shot = |name: &str| format!("{}-{name}", screen.name);
    wash_pack_start(&browser, &salon, &shot).await;
    take_and_release(&browser, &salon, &home.path().join("run.csv"), &shot).await;
    open_and_recall(&browser, &salon, &shot).await;
    browser.close().await;
}

async fn fill(browser: &Browser, field: &str, value: &str) {
    let found = browser.client.find(Locator::Css(field)).await;
    let found = found.unwrap_or_else(|error| panic!("no field {field}: {error}"));
    found.clear().await.expect("it can be emptied");
    found.send_keys(value).await.expect("it can be typed in");
}

async fn wash_pack_start(browser: &Browser, salon: &Salon, shot: &impl Fn(&str) -> String) {
    browser.goto(&format!("{}/wash", salon.url)).await;
    fill(browser, "[name='count.manicure']", "3").await;
    browser.picture(&shot("1-wash")).await;
    browser.tap("Washed, hands clean: tap your sign HL").await;
    browser.picture(&shot("2-pack")).await;
    browser.tap("Packed: tap your sign HL").await;
    browser.picture(&shot("3-labels")).await;
    browser.goto(&format!("{}/start", salon.url)).await;
    browser.picture(&shot("4-start")).await;
    browser.tap("START: tap your sign HL").await;
    browser.picture(&shot("5-running")).await;
}

async fn take_and_release(
    browser: &Browser,
    salon: &Salon,
    file: &std::path::Path,
    shot: &impl Fn(&str) -> String,
) {
    browser.goto(&format!("{}/machine", salon.url)).await;
    browser.tap("Out of the machine, on the rack: tap your sign HL").await;
    std::fs::write(file, record(GOOD)).expect("a record");
    let path = file.to_str().expect("a path");
    browser.goto(&format!("{}/machine", salon.url)).await;
    let chooser = browser.client.find(Locator::Css("input[type=file]")).await.expect("a chooser");
    chooser.send_keys(path).await.expect("a file can be chosen");
    browser.picture(&shot("6-machine")).await;
    browser.tap("Take it in").await;
    browser.goto(&salon.url).await;
    browser.picture(&shot("7-now")).await;
    browser.tap("CHECK").await;
    let text = browser.text().await;
    assert!(text.contains("Steam did its work"), "{text}");
    browser.picture(&shot("8-run")).await;
    // A typical figure says that it is hot still; whoever stands there knows better.
    browser.click("Cool enough to touch already? Look now").await;
    browser.tap("I looked at every pouch. ALL GOOD, RELEASE: tap your sign HL").await;
    browser.goto(&format!("{}/ready", salon.url)).await;
    browser.picture(&shot("9-ready")).await;
}

async fn open_and_recall(browser: &Browser, salon: &Salon, shot: &impl Fn(&str) -> String) {
    let book = Book::open(&salon.book).expect("it opens");
    let ready = book.read(|view| view.pouches_in(&[SetState::Ready])).expect("pouches");
    assert_eq!(ready.len(), 3);
    let code = ready[0].code.to_string();
    let chair = format!("{}/chair?chair=4", salon.url);
    browser.goto(&chair).await;
    fill(browser, "[name=code]", &code).await;
    browser.picture(&shot("10-chair")).await;
    browser.tap("LOOK IT UP").await;
    browser.picture(&shot("11-pouch")).await;
    browser.tap("OPENED at chair 4: tap your sign HL").await;
    browser.goto(&chair).await;
    fill(browser, "[name=code]", &code).await;
    browser.tap("LOOK IT UP").await;
    let stop = browser.text().await;
    assert!(stop.contains("DO NOT USE"), "a pouch is never used twice: {stop}");
    browser.picture(&shot("12-stop")).await;
    let run = ready[0].run.expect("it was in a run");
    browser.goto(&format!("{}/recall?run={run}", salon.url)).await;
    let recall = browser.text().await;
    assert!(recall.contains(&code), "the visit is found: {recall}");
    browser.picture(&shot("13-recall")).await;
}

#[tokio::test]
async fn the_loop_on_a_tablet() {
    round(TABLET).await;
}

#[tokio::test]
async fn the_loop_on_a_phone() {
    round(PHONE).await;
}
