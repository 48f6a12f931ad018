//! A phone comes in by the code that the box shows, in real Chromium over the network's address, and
//! is let go.

use super::browser::{Browser, PHONE, browser};
use super::salon::{Salon, id};
use logbook::book::Book;
use serde_json::Value;
use std::time::Duration;

async fn until(browser: &Browser, true_of_page: &str) {
    for _ in 0..200 {
        let script = format!("return !!({true_of_page})");
        let said = browser.client.execute(&script, vec![]).await.unwrap_or_default();
        if said == Value::Bool(true) {
            return;
        }
        tokio::time::sleep(Duration::from_millis(50)).await;
    }
    panic!("never came: {true_of_page}:\n{}", browser.text().await);
}

/// What stands between two texts of a page.
fn between<'a>(page: &'a str, before: &str, after: &str) -> Option<&'a str> {
    page.split(before).nth(1)?.split(after).next()
}

#[tokio::test]
async fn a_phone_is_let_in_by_its_code_and_let_go() {
    let home = tempfile::tempdir().expect("a folder");
    let salon = Salon::serve_all(&home.path().join("book"));
    assert_eq!(salon.post("/act/person", &[("act", &id()), ("sign-text", "HL")]), Some(303));
    for language in ["en", "vi"] {
        let Some(browser) = browser(PHONE, language).await else { return };
        assert_eq!(salon.post("/stations/code", &[]), Some(303));
        let (_, page) = salon.get("/stations");
        let code = between(&page, "pair-code\">", "<").expect("a code").to_owned();
        let Some(at) = between(&page, "<p class=\"fact\">http://", "/pair<") else {
            eprintln!("skipped: this machine is on no network");
            return;
        };
        browser.goto(&format!("http://{at}/ready")).await;
        until(&browser, "document.querySelector('#pair-code')").await;
        assert!(!browser.text().await.contains("HL"), "nothing of the salon");
        browser.picture(&format!("pair-{language}")).await;
        let form = format!(
            "document.querySelector('#pair-code').value = '{}';\
             document.querySelector('input[value=phone]').click();\
             document.querySelector('#pair-name').value = 'chair 4';\
             document.querySelector('main form button').click()",
            code.to_lowercase()
        );
        browser.client.execute(&form, vec![]).await.expect("a script");
        until(&browser, "document.querySelector('.places')").await;
        browser.goto(&format!("http://{at}/stations")).await;
        browser.picture(&format!("stations-phone-{language}")).await;
        browser.goto(&format!("http://{at}/ready")).await;
        let book = Book::open(&salon.book).expect("it opens");
        let station = book.read(|view| view.stations()).expect("stations").pop().expect("one");
        let form = [("act", &*id()), ("station", &*station.station.to_string())];
        assert_eq!(salon.post("/act/station-parted", &form), Some(303));
        // Nobody touches the phone.
        until(&browser, "document.querySelector('#pair-code')").await;
        browser.goto(&format!("{}/stations", salon.url)).await;
        browser.picture(&format!("stations-{language}")).await;
        let (_, trust) = salon.get("/trust");
        assert!(trust.contains("--secure"), "how to have a secure address");
        browser.close().await;
    }
}
