//! At a chair in real Chromium, on a phone, in three languages: a scanner that types, a photo, a
//! wrong pouch, an unknown code, the keys by keyboard alone.

use super::browser::{Browser, PHONE, browser};
use super::salon::{Salon, id};
use fantoccini::actions::{InputSource, KeyAction, KeyActions};
use load::SetState;
use logbook::book::Book;
use logbook::view::Pouch;
use resvg::{tiny_skia, usvg};
use serde_json::Value;
use std::time::Duration;

const LANGUAGES: [(&str, &str); 3] =
    [("en", "DO NOT USE"), ("vi", "KHÔNG DÙNG"), ("es", "NO USAR")];

fn in_state(salon: &Salon, state: SetState) -> Pouch {
    let book = Book::open(&salon.book).expect("it opens");
    let pouches = book.read(|view| view.pouches_in(&[state])).expect("pouches");
    pouches.into_iter().next().unwrap_or_else(|| panic!("the demo has one in {state:?}"))
}

async fn ask(browser: &Browser, script: &str) -> Value {
    browser.client.execute(script, vec![]).await.unwrap_or_default()
}

/// Types on the page, wherever the focus is, as fast as a scanner.
async fn types(browser: &Browser, text: &str) {
    let mut keys = KeyActions::new("scanner".to_owned());
    for value in text.chars() {
        keys = keys.then(KeyAction::Down { value }).then(KeyAction::Up { value });
    }
    browser.client.perform_actions(keys).await.expect("it types");
}

/// Waits until the page says so.
async fn until(browser: &Browser, true_of_page: &str) {
    for _ in 0..200 {
        if ask(browser, &format!("return !!({true_of_page})")).await == Value::Bool(true) {
            return;
        }
        tokio::time::sleep(Duration::from_millis(50)).await;
    }
    panic!("never came: {true_of_page} on {}:\n{}", browser.path().await, browser.text().await);
}

async fn at_chair(browser: &Browser, salon: &Salon) {
    browser.goto(&format!("{}/chair?chair=4", salon.url)).await;
}

/// Opened for this pouch: its symbols stand large on a page that offers a sign.
async fn shown(browser: &Browser, pouch: &Pouch) {
    let code = pouch.code;
    until(browser, &format!("document.querySelector('.good p.code')?.textContent === '{code}'"))
        .await;
}

#[tokio::test]
async fn a_scanner_types_where_nothing_has_the_focus_and_into_the_field() {
    let Some(browser) = browser(PHONE, "en").await else { return };
    let home = tempfile::tempdir().expect("a folder");
    let salon = Salon::demo(&home.path().join("demo"));
    let ready = in_state(&salon, SetState::Ready);
    let label = papers::label_payload(ready.pouch);
    for typed in [label.clone(), label.to_lowercase(), ready.code.to_string()] {
        for focus in [
            "document.activeElement.blur()",
            "document.querySelector('.key[data-types]').focus()",
            "1",
        ] {
            at_chair(&browser, &salon).await;
            ask(&browser, focus).await;
            types(&browser, &format!("{typed}\u{e007}")).await;
            shown(&browser, &ready).await;
            assert!(browser.path().await.contains("chair=4"), "the chair is kept");
        }
    }
    // Another product's code while the sign has the focus: its Enter presses nothing.
    ask(&browser, "document.querySelector('button.sign').focus()").await;
    types(&browser, "4006381333931\u{e007}").await;
    until(&browser, "document.querySelector('.full-stop')").await;
    assert_eq!(in_state(&salon, SetState::Ready).pouch, ready.pouch, "nothing was opened");
    browser.close().await;
}

/// The label of a page of the program, drawn as a printer would, on a grey table.
fn picture_of(svg: &str) -> Vec<u8> {
    let tree = usvg::Tree::from_str(svg, &usvg::Options::default()).expect("our page is SVG");
    let mut dots = tiny_skia::Pixmap::new(900, 700).expect("a picture");
    dots.fill(tiny_skia::Color::from_rgba8(140, 140, 140, 255));
    let place =
        tiny_skia::Transform::from_rotate(20.0).post_scale(4.0, 4.0).post_translate(420.0, 100.0);
    let paper = tiny_skia::Rect::from_xywh(0.0, 0.0, 94.0, 94.0).expect("a square");
    let mut white = tiny_skia::Paint::default();
    white.set_color_rgba8(240, 240, 240, 255);
    dots.fill_rect(paper, &white, place, None);
    resvg::render(&tree, place, &mut dots.as_mut());
    dots.encode_png().expect("a PNG file")
}

fn label_of(pouch: &Pouch) -> String {
    let words = papers::Words {
        printed: "",
        page: &|_, _| String::new(),
        scale: "",
        stock: "",
        machine: "Machine",
        run: "Run",
        machine_short: "M",
        run_short: "R",
    };
    let label = papers::Label {
        pouch: pouch.pouch,
        code: pouch.code,
        kind: "manicure".to_owned(),
        sentence: "Packed. Look: dry? whole?".to_owned(),
        run: papers::Run::ToWriteIn,
    };
    papers::label_sheets(&[label], &papers::Sheet::ROLL_25, &words, 1).expect("a label").remove(0)
}

#[tokio::test]
async fn a_photo_opens_its_pouch_and_a_bad_one_is_answered_with_a_sentence() {
    let home = tempfile::tempdir().expect("a folder");
    let salon = Salon::demo(&home.path().join("demo"));
    let ready = in_state(&salon, SetState::Ready);
    let (good, bad) = (home.path().join("good.png"), home.path().join("bad.png"));
    std::fs::write(&good, picture_of(&label_of(&ready))).expect("a photo");
    std::fs::write(&bad, "no picture").expect("a file");
    for (language, _) in LANGUAGES {
        let Some(browser) = browser(PHONE, language).await else { return };
        at_chair(&browser, &salon).await;
        for (file, came) in [
            (&bad, "document.querySelector('main [role=alert]')"),
            (&good, "document.querySelector('.good')"),
        ] {
            let field = browser.client.find(fantoccini::Locator::Css("#photo")).await.expect("it");
            field.send_keys(file.to_str().expect("a path")).await.expect("a file can be chosen");
            until(&browser, came).await;
            browser
                .picture(&format!("chair-{language}-{}", file.file_stem().unwrap().display()))
                .await;
        }
        shown(&browser, &ready).await;
        browser.close().await;
    }
    let kept = std::fs::read_dir(home.path().join("demo")).expect("the folder");
    let kept: Vec<_> = kept.map(|entry| entry.expect("an entry").file_name()).collect();
    assert!(kept.iter().all(|name| !name.to_string_lossy().ends_with(".png")), "{kept:?}");
}

#[tokio::test]
async fn a_wrong_pouch_fills_the_screen_and_an_unknown_code_offers_its_choices() {
    let home = tempfile::tempdir().expect("a folder");
    let salon = Salon::demo(&home.path().join("demo"));
    let ready = in_state(&salon, SetState::Ready);
    let fields = [("act", id()), ("pouch", ready.pouch.to_string()), ("why", "torn".to_owned())];
    let fields = fields.each_ref().map(|(name, value)| (*name, value.as_str()));
    assert_eq!(salon.post("/act/set-aside", &fields), Some(303));
    let aside = in_state(&salon, SetState::SetAside);
    for (language, stop) in LANGUAGES {
        let Some(browser) = browser(PHONE, language).await else { return };
        at_chair(&browser, &salon).await;
        ask(&browser, "document.activeElement.blur()").await;
        types(&browser, &format!("{}\u{e007}", papers::label_payload(aside.pouch))).await;
        until(&browser, "document.querySelector('.full-stop')").await;
        let told = "return document.activeElement.textContent + '|' + \
                    !!document.activeElement.closest('[role=alert]') + '|' + \
                    !!document.querySelector('main [role=alert] > svg.shape') + '|' + \
                    getComputedStyle(document.body).backgroundColor + '|' + \
                    (document.body.getBoundingClientRect().height >= innerHeight)";
        let expected = format!("{stop}|true|true|rgb(161, 18, 31)|true");
        assert_eq!(ask(&browser, told).await, Value::String(expected), "{language}");
        browser.picture(&format!("chair-{language}-stop")).await;
        at_chair(&browser, &salon).await;
        // Slowly, as a person would, and in the field: a code of the right shape that nobody has.
        types(&browser, "9Y9Y\u{e007}").await;
        until(&browser, "document.querySelectorAll('.full-stop details').length === 2").await;
        let first = "return document.querySelector('main a, main summary').textContent";
        let first = ask(&browser, first).await;
        assert!(first.as_str().expect("text").starts_with(stop), "the safe one first: {first}");
        types(&browser, "\u{e004}\u{e004}\u{e007}").await;
        until(&browser, "document.querySelector('details[open] p')").await;
        browser.picture(&format!("chair-{language}-unknown")).await;
        browser.close().await;
    }
}

#[tokio::test]
async fn the_keys_are_large_far_apart_and_reached_by_keyboard_alone() {
    let home = tempfile::tempdir().expect("a folder");
    let salon = Salon::demo(&home.path().join("demo"));
    let ready = in_state(&salon, SetState::Ready);
    let Some(browser) = browser(PHONE, "en").await else { return };
    at_chair(&browser, &salon).await;
    browser.picture("chair-en-keys").await;
    let sizes = "const keys = Array.from(document.querySelectorAll('.keypad .key'));\
        const boxes = keys.map((key) => key.getBoundingClientRect());\
        const small = boxes.filter((box) => box.width < 64 || box.height < 64).length;\
        const near = boxes.filter((box, at) => { const next = boxes[at + 1];\
            return next && next.top === box.top && next.left - box.right < 15.5; }).length;\
        return keys.length + '|' + small + '|' + near + '|' + document.querySelector('.keypad').getAttribute('aria-label')";
    let expected = "25|0|0|Keys for the four signs";
    assert_eq!(ask(&browser, sizes).await, Value::String(expected.to_owned()));
    for symbol in ready.code.to_string().chars() {
        for _ in 0..60 {
            types(&browser, "\u{e004}").await;
            let here = "return document.activeElement.dataset.types || ''";
            if ask(&browser, here).await == Value::String(symbol.to_string()) {
                break;
            }
        }
        types(&browser, " ").await;
    }
    shown(&browser, &ready).await;
    browser.goto(&format!("{}/chair/another?pouch={}&chair=4", salon.url, ready.pouch)).await;
    browser.picture("chair-en-another").await;
    browser.close().await;
}
