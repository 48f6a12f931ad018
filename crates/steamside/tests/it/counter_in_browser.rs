//! Wet hands, and handing over with a correction, in real Chromium. Every control is found by the
//! name that a person reads, taken from the word files.

use super::browser::{Browser, TABLET, browser};
use super::salon::{Salon, id};
use fantoccini::Locator;
use load::SetState;
use logbook::book::Book;
use serde_json::{Value, json};
use std::time::Duration;

const FILES: [(&str, &str); 3] = [
    ("en", include_str!("../../i18n/en.ftl")),
    ("vi", include_str!("../../i18n/vi.ftl")),
    ("es", include_str!("../../i18n/es.ftl")),
];

/// A line of one text, with its values put in.
fn word(language: &str, key: &str, values: &[(&str, &str)]) -> String {
    let (_, lines) = FILES.iter().find(|(code, _)| *code == language).expect("a language");
    let begin = format!("{key} = ");
    let found = lines.lines().find_map(|line| line.strip_prefix(&begin));
    let mut text = found.unwrap_or_else(|| panic!("{key} in {language}")).to_owned();
    for (name, value) in values {
        text = text.replace(&format!("{{ ${name} }}"), value);
    }
    text
}

/// Two people, two machines, nine pouches in the first one.
struct Counter {
    browser: Browser,
    salon: Salon,
    _home: tempfile::TempDir,
    language: &'static str,
}

impl Counter {
    async fn open(language: &'static str) -> Option<Self> {
        let browser = browser(TABLET, language).await?;
        let home = tempfile::tempdir().expect("a folder");
        let salon = Salon::serve(&home.path().join("book"), &["--zone", "Etc/UTC"]);
        for (path, fields) in [
            ("/act/person", [("sign-text", "HL"), ("act", &*id())]),
            ("/act/person", [("sign-text", "TN"), ("act", &*id())]),
            ("/act/machine", [("number", "1"), ("act", &*id())]),
            ("/act/machine", [("number", "2"), ("act", &*id())]),
        ] {
            assert_eq!(salon.post(path, &fields), Some(303));
        }
        Some(Self { browser, salon, _home: home, language })
    }

    fn book(&self) -> Book {
        Book::open(&self.salon.book).expect("it opens beside the program")
    }

    fn word(&self, key: &str) -> String {
        word(self.language, key, &[])
    }

    async fn goto(&self, path: &str) {
        self.browser.goto(&format!("{}{path}", self.salon.url)).await;
    }

    async fn sees(&self, text: &str) {
        let seen = self.browser.text().await;
        assert!(seen.contains(text), "{}: {text:?} in\n{seen}", self.language);
    }

    async fn tap_xpath(&self, xpath: &str) {
        let found = self.browser.client.find(Locator::XPath(xpath)).await;
        let found = found.unwrap_or_else(|error| panic!("{xpath}: {error}"));
        let place = serde_json::to_value(&found).expect("an element");
        let into_view = "arguments[0].scrollIntoView({block: 'center'})";
        self.browser.client.execute(into_view, vec![place]).await.expect("it scrolls");
        self.browser.press(&found).await;
        tokio::time::sleep(Duration::from_millis(500)).await;
    }

    fn start_nine(&self) {
        let book = self.book();
        let people = book.read(|view| view.people()).expect("people");
        let machines = book.read(|view| view.machines()).expect("machines");
        let sign = people[0].person.to_string();
        let post = |path: &str, fields: &[(&str, &str)]| {
            let act = id();
            let mut all = vec![("act", act.as_str()), ("sign", sign.as_str())];
            all.extend(fields);
            assert_eq!(self.salon.post(path, &all), Some(303), "{path}");
        };
        post("/act/sets", &[("kind", "manicure"), ("used", "14"), ("washed", "0")]);
        post("/act/wash", &[("count.manicure", "9")]);
        post("/act/pack", &[("kind", "manicure"), ("count", "9"), ("wrap", "pouched")]);
        let pouches = book.read(|view| view.pouches_in(&[SetState::Bagged])).expect("pouches");
        let ids: Vec<String> = pouches.iter().map(|held| held.pouch.to_string()).collect();
        let machine = machines[0].machine.to_string();
        let mut fields =
            vec![("machine", machine.as_str()), ("programme", "middle"), ("over", "yes")];
        fields.extend(ids.iter().map(|pouch| ("pouch", pouch.as_str())));
        post("/act/start", &fields);
    }
}

/// HL hands over, TN takes it; HL corrects nine pouches to eight; a count of yesterday is copied in.
async fn hand_over_and_correct(language: &'static str) {
    let Some(it) = Counter::open(language).await else { return };
    it.start_nine();
    it.goto("/").await;
    it.browser.tap(&it.word("go-hand-over")).await;
    let run = word(language, "run-name", &[("machine", "1"), ("run", "1")]);
    for key in ["hand-over-1", "hand-over-2", "hand-over-3", "hand-over-4", "hand-over-5"] {
        it.sees(&it.word(key)).await;
    }
    it.sees(&run).await;
    it.sees(&word(language, "if-machine-stops", &[("machine", "1"), ("other", "2")])).await;
    let more = word(language, "one-more", &[("what", &it.word("hand-over-drying"))]);
    it.tap_xpath(&format!("//button[@aria-label={more:?}]")).await;
    it.browser.tap(&format!("{} HL", it.word("hand-over-asks"))).await;
    it.sees(&word(language, "hand-over-dries", &[("count", "1")])).await;
    it.browser.picture(&format!("tablet-hand-over-{language}")).await;
    it.browser.tap(&format!("{} TN", it.word("take-over-asks"))).await;
    let offered = it.book().read(|view| view.last_hand_over()).expect("a book").expect("offered");
    assert!(offered.taken.is_some(), "{language}");

    it.goto("/log").await;
    let key = it.word("correct-key");
    it.tap_xpath(&format!(
        "//a[starts-with(normalize-space(.), {key:?}) and contains(., {run:?})]"
    ))
    .await;
    let inside = it.book().read(|view| view.pouches_in(&[SetState::InMachine])).expect("pouches");
    let code = inside[0].code.to_string();
    it.tap_xpath(&format!("//label[contains(normalize-space(.), {code:?})]")).await;
    it.browser.tap(&format!("{} HL", it.word("correct-asks"))).await;
    let struck = "return document.querySelectorAll('.log s').length";
    assert_eq!(it.browser.client.execute(struck, vec![]).await.expect("a script"), json!(1));
    it.sees(&word(language, "line-run-out", &[("what", &code)])).await;
    it.browser.picture(&format!("tablet-corrected-{language}")).await;
    let run = it.book().read(|view| view.runs_open()).expect("runs").remove(0);
    assert_eq!(run.pouches, 8, "{language}");

    it.goto("/later").await;
    let washed = it.word("later-wash");
    it.tap_xpath(&format!("//summary[normalize-space(.)={washed:?}]")).await;
    let yesterday = (jiff::Timestamp::now() - jiff::SignedDuration::from_hours(24))
        .strftime("%Y-%m-%d")
        .to_string();
    let fill = "
        document.getElementById('wash-on').value = arguments[0];
        document.getElementById('wash-at').value = '17:30';
        document.getElementById('later-washed-1').value = 3;";
    it.browser.client.execute(fill, vec![json!(yesterday)]).await.expect("a script");
    let asks = it.word("later-asks");
    it.tap_xpath(&format!(
        "//form[@action='/act/later-wash']//button[contains(normalize-space(.), {asks:?}) and \
         contains(., 'HL')]"
    ))
    .await;
    it.goto("/log").await;
    let later = it.word("log-later");
    it.sees(later.split('{').next().expect("a beginning").trim()).await;
    it.sees(&it.word("known-from-paper")).await;
    it.browser.close().await;
}

#[tokio::test]
async fn hand_over_and_correct_in_three_languages() {
    for (language, _) in FILES {
        hand_over_and_correct(language).await;
    }
}

/// One touch of so many milliseconds; the browser is told when it began and when it ended.
async fn touch(browser: &Browser, (x, y): (f64, f64), at: f64, long_ms: f64) {
    let start = json!({
        "type": "touchStart", "touchPoints": [{ "x": x, "y": y }], "timestamp": at
    });
    let end = json!({ "type": "touchEnd", "touchPoints": [], "timestamp": at + long_ms / 1_000.0 });
    browser.devtools("Input.dispatchTouchEvent", start).await;
    browser.devtools("Input.dispatchTouchEvent", end).await;
}

fn seconds() -> f64 {
    jiff::Timestamp::now().as_millisecond() as f64 / 1_000.0
}

/// Forty drops, one after the other, on keys and anywhere on the glass, do nothing; while the glass
/// is wiped nothing does; then five of six sets are washed in two taps.
#[tokio::test]
async fn wet_hands_wash() {
    let Some(it) = Counter::open("en").await else { return };
    let counted =
        [("act", &*id()), ("kind", "manicure"), ("owned", "9"), ("used", "6"), ("washed", "0")];
    assert_eq!(it.salon.post("/act/sets", &counted), Some(303));
    let seq = || it.book().read(|view| view.last_seq()).expect("a book");
    let before = seq();
    it.goto("/").await;
    let keys = it
        .browser
        .client
        .execute(
            "return Array.from(document.querySelectorAll('a, button'), (key) => {
                const { left, top, width, height } = key.getBoundingClientRect();
                return [left + width / 2, top + height / 2];
            }).filter(([x, y]) => x > 0 && y > 0 && x < 1280 && y < 700)",
            vec![],
        )
        .await
        .expect("keys");
    let keys: Vec<(f64, f64)> = serde_json::from_value(keys).expect("places");
    assert!(keys.len() > 5, "{keys:?}");
    let mut chance = [0; 120];
    getrandom::fill(&mut chance).expect("random bytes");
    for drop in 0..40 {
        let [x, y, long] = [0, 1, 2].map(|part| f64::from(chance[drop * 3 + part]));
        let on_a_key = keys.get(drop % (2 * keys.len())).copied();
        let place = on_a_key.unwrap_or((x * 5.0, y * 2.7));
        // A moment ago: a time that is still to come would be made shorter.
        touch(&it.browser, place, seconds() - 0.1, 10.0 + long / 12.8).await;
        tokio::time::sleep(Duration::from_millis(40)).await;
    }
    tokio::time::sleep(Duration::from_millis(600)).await;
    assert_eq!(seq(), before, "a drop did something");
    assert_eq!(it.browser.path().await, "/", "a drop went somewhere");
    assert_eq!(number(&it, "washed-1").await, json!("6"));

    it.tap_xpath(&format!("//button[normalize-space(.)={:?}]", it.word("wipe-glass"))).await;
    for key in keys.iter().take(6) {
        touch(&it.browser, *key, seconds() - 0.1, 90.0).await;
        tokio::time::sleep(Duration::from_millis(40)).await;
    }
    it.sees(&it.word("wipe-says")).await;
    assert_eq!((seq(), it.browser.path().await.as_str()), (before, "/"), "frozen");
    tokio::time::sleep(Duration::from_secs(16)).await;
    assert!(!it.browser.text().await.contains(&it.word("wipe-says")), "the time is over");

    let fewer = word("en", "one-fewer", &[("what", &it.word("kind-manicure"))]);
    it.tap_xpath(&format!("//button[@aria-label={fewer:?}]")).await;
    it.browser.tap(&format!("{} HL", it.word("wash-asks"))).await;
    let left = "return document.querySelector('.did form[data-left]').dataset.left";
    let left = it.browser.client.execute(left, vec![]).await.expect("an undo bar");
    let left: u32 = left.as_str().expect("seconds").parse().expect("a number");
    assert!((20..=30).contains(&left), "{left}");
    let kinds = it.book().read(|view| view.kinds()).expect("kinds");
    let manicure = kinds.iter().find(|row| row.kind.word() == "manicure").expect("it is there");
    assert_eq!((manicure.used, manicure.washed), (1, 5));
    it.browser.close().await;
}

async fn number(it: &Counter, field: &str) -> Value {
    let script = format!("return document.getElementById({field:?}).value");
    it.browser.client.execute(&script, vec![]).await.expect("a field")
}
