//! Every page of the program in every language, on a tablet, a phone and the narrowest screen, put
//! before axe, an accessibility engine written by others, and before checks of our own: nothing
//! wider than the screen, targets as large as wet hands need, a ring around what has the focus,
//! everything reached by Tab. The pages are found by following every link, and compared with the
//! list of addresses in `web/mod.rs`, so that a new page cannot be forgotten.

use super::browser::{Browser, TABLET, browser};
use super::salon::{Salon, id};
use fantoccini::Locator;
use load::SetState;
use logbook::book::Book;
use serde_json::{Value, json};
use std::collections::{BTreeMap, BTreeSet, VecDeque};
use std::path::Path;
use std::time::Duration;

const AXE: &str = include_str!("axe/axe.min.js");
const CHECKS: &str = include_str!("axe/checks.js");
const ROUTES: &str = include_str!("../../src/web/mod.rs");

/// Width and height of a screen, and the least side of a main key on it (WORK 6.1).
const SCREENS: [(u32, u32, u32); 3] = [(1280, 800, 120), (360, 740, 96), (320, 640, 96)];

/// All rules of WCAG 2.0, 2.1 and 2.2, A and AA, and axe's own best practices. On the narrowest
/// screen, which has the styles of a phone, only the rules that the room itself can break.
const RUN: &str = "
    const done = arguments[arguments.length - 1];
    const rules = { 'target-size': { enabled: true } };
    const all = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];
    const room = ['target-size', 'color-contrast', 'scrollable-region-focusable'];
    axe.run(document, {
        ...(arguments[0] < 360 ? { runOnly: { type: 'rule', values: room } } : { runOnly: all, rules }),
        resultTypes: ['violations'], preload: false,
    }).then((said) => done(said.violations.flatMap((rule) => rule.nodes.map((node) =>
        'axe ' + rule.id + ': ' + node.target.join(' ') + ' ' + node.html.slice(0, 120)
        + ' ' + node.any.concat(node.all, node.none).map((c) => c.message).join(' ').slice(0, 160)))))
    .catch((error) => done(['axe: ' + error]));";

/// Most pages that are read for one address; a page is looked at only if its forms differ.
const SAME: usize = 30;

/// The address without its ids, and the names in its query.
pub fn pattern(path: &str) -> (String, String) {
    let (path, query) = path.split_once('?').unwrap_or((path, ""));
    let id = |part: &str| part.len() >= 32 || part.parse::<u32>().is_ok();
    let parts = path.split('/').map(|part| if id(part) { "{}" } else { part });
    let names = query.split('&').map(|pair| pair.split('=').next().unwrap_or_default());
    let names: Vec<_> = names.filter(|name| *name != "did").collect();
    (parts.collect::<Vec<_>>().join("/"), names.join("&"))
}

/// What stands in quotes after `mark`, everywhere in a page.
fn quoted(page: &str, mark: &str) -> Vec<String> {
    let all = page.split(mark).skip(1).filter_map(|rest| rest.split('"').next());
    all.map(|text| text.replace("&amp;", "&")).collect()
}

/// One address for every page that differs from the others by its address or by its forms.
pub fn crawl(salon: &Salon, begin: &[String]) -> Vec<String> {
    let mut open: VecDeque<String> = begin.iter().cloned().collect();
    let mut met: BTreeSet<String> = begin.iter().cloned().collect();
    let mut read: BTreeMap<(String, String), usize> = BTreeMap::new();
    let (mut kinds, mut pages) = (BTreeSet::new(), Vec::new());
    while let Some(path) = open.pop_front() {
        let so_far = read.entry(pattern(&path)).or_default();
        *so_far += 1;
        if *so_far > SAME {
            continue;
        }
        let (_, page) = salon.get(&path);
        let forms: BTreeSet<_> = quoted(&page, "action=\"").into_iter().collect();
        let looks = page.contains("full-stop").to_string();
        if kinds.insert((pattern(&path), forms, looks)) {
            pages.push(path);
        }
        for href in quoted(&page, "href=\"/") {
            let link = format!("/{}", href.split('#').next().unwrap_or_default());
            let page = !link.starts_with("/assets") && !link.ends_with(".crt");
            if page && met.insert(link.clone()) {
                open.push_back(link);
            }
        }
    }
    pages
}

/// Every address of the program that answers with a page.
fn routes() -> BTreeSet<String> {
    let named = |line: &str| {
        let (path, answers) = line.trim().strip_prefix(".route(\"")?.split_once("\", get(")?;
        if !answers.starts_with("show::") && !answers.starts_with("folder::") {
            return None;
        }
        let part = |part: &str| if part.starts_with('{') { "{}".to_owned() } else { part.into() };
        Some(path.split('/').map(part).collect::<Vec<String>>().join("/"))
    };
    ROUTES.lines().filter_map(named).filter(|path| path != "/assets/{}").collect()
}

/// Pages of the demo that no link leads to: after acts, after codes, after a record.
pub fn not_linked(salon: &Salon) -> Vec<String> {
    let book = Book::open(&salon.book).expect("it opens");
    let (people, machines) = book
        .read(|v| Ok::<_, logbook::book::BookError>((v.people()?, v.machines()?)))
        .expect("a salon");
    let sign = people[0].person.to_string();
    let code = |state| {
        let pouches = book.read(|view| view.pouches_in(&[state])).expect("pouches");
        format!("/chair?chair=4&code={}", pouches.first().expect("one").code)
    };
    let washed = [("act", &*id()), ("sign", &*sign), ("count.manicure", "2"), ("back", "/wash")];
    let washed = salon.location("/act/wash", &washed);
    let act = id();
    let packed = [
        ("act", &*act),
        ("sign", &*sign),
        ("kind", "manicure"),
        ("count", "2"),
        ("wrap", "pouched"),
    ];
    assert_eq!(salon.post("/act/pack", &packed), Some(303));
    let record =
        std::fs::read_to_string(salon.book.join("records/2-air-left-in.csv")).expect("a record");
    let machine = machines[0].machine.to_string();
    assert_eq!(salon.upload(&[("act", &*id()), ("machine", &*machine)], &record), 303);
    let late = super::story::record(super::story::GOOD);
    assert_eq!(
        salon.upload(&[("act", &*id()), ("machine", &*machines[1].machine.to_string())], &late),
        303
    );
    // Spores that grew, in the machine that runs: its way on, the recall, the letter.
    let placed = [("act", &*id()), ("sign", &*sign), ("machine", &*machine), ("control", "yes")];
    assert_eq!(salon.post("/act/spore-place", &placed), Some(303));
    let tests = book.read(|view| view.spore_tests(1)).expect("tests");
    let test = tests[0].test.to_string();
    let grew = [("act", &*id()), ("test", &*test), ("grew", "yes")];
    assert_eq!(salon.post("/act/spore-read", &grew), Some(303));
    vec![
        format!("/letter?test={test}&asked=yes"),
        "/".to_owned(),
        washed,
        format!("/labels?act={act}"),
        code(SetState::Ready),
        code(SetState::Opened),
        code(SetState::ToCheck),
        "/chair?code=0000".to_owned(),
        "/nowhere/at/all".to_owned(),
        "/run/none".to_owned(),
        format!("/recall?machine={machine}&from=2020-01-01&to=2030-01-01"),
        "/setup".to_owned(),
        "/kept".to_owned(),
        "/trust".to_owned(),
        "/pair?code=3K7P9W".to_owned(),
        // Linked only on a day that comes up short.
        "/plan/ways".to_owned(),
        // Under an address that nobody can guess, and what is said of one that nobody opened.
        salon.location("/show", &[]),
        format!("/folder/{}", id()),
    ]
}

/// One language: its pages, looked at on every screen.
struct Tour {
    browser: Browser,
    language: &'static str,
    faults: BTreeSet<String>,
}

impl Tour {
    /// An engine may take a while on a busy computer.
    async fn patient(&self) {
        let minute = Some(Duration::from_secs(60));
        let times = fantoccini::wd::TimeoutConfiguration::new(minute, None, None);
        self.browser.client.update_timeouts(times).await.expect("patience");
    }

    async fn list(&self, script: &str) -> Vec<String> {
        let said = self.browser.client.execute(script, vec![]).await.expect("a script");
        said.as_array().into_iter().flatten().filter_map(Value::as_str).map(str::to_owned).collect()
    }

    fn note(&mut self, path: &str, size: &str, faults: impl IntoIterator<Item = String>) {
        let (address, query) = pattern(path);
        let place = format!("{} {address}?{query} at {size}", self.language);
        self.faults.extend(faults.into_iter().map(|fault| format!("{place}: {fault}")));
    }

    async fn screen(&self, (width, height, _): (u32, u32, u32)) {
        let size = json!({ "width": width, "height": height, "deviceScaleFactor": 1, "mobile": width < 900 });
        self.browser.devtools("Emulation.setDeviceMetricsOverride", size).await;
    }

    /// A page that is open.
    async fn look(&mut self, path: &str) {
        self.browser
            .client
            .execute(&format!("{AXE}\n{CHECKS}\nown.open()"), vec![])
            .await
            .expect("axe");
        for screen in SCREENS {
            self.screen(screen).await;
            let size = screen.0.to_string();
            self.picture(path, &size).await;
            let said = self
                .browser
                .client
                .execute_async(RUN, vec![json!(screen.0)])
                .await
                .expect("axe answers");
            let said: Vec<String> = serde_json::from_value(said).expect("lines");
            self.note(path, &size, said);
            let own = format!(
                "return own.wide({0}).concat(own.small({1}), own.ringless())",
                screen.0, screen.2
            );
            let said = self.list(&own).await;
            self.note(path, &size, said);
        }
        for screen in [SCREENS[0], SCREENS[1]] {
            self.screen(screen).await;
            self.letters(32).await;
            let said = self.list(&format!("return own.wide({})", screen.0)).await;
            self.note(path, &format!("{} with letters twice as large", screen.0), said);
            self.picture(path, &format!("{}-large", screen.0)).await;
            self.letters(16).await;
        }
    }

    /// The browser's own setting of the size of letters.
    async fn letters(&self, size: u32) {
        let sizes = json!({ "fontSizes": { "standard": size, "fixed": size } });
        self.browser.devtools("Page.setFontSizes", sizes).await;
    }

    async fn picture(&self, path: &str, size: &str) {
        let name: String =
            path.chars().take(24).map(|c| if c.is_alphanumeric() { c } else { '-' }).collect();
        self.browser.picture(&format!("access-{}-{name}-{size}", self.language)).await;
    }

    async fn pages(&mut self, salon: &Salon, pages: &[String]) {
        for path in pages {
            self.screen(SCREENS[0]).await;
            self.browser.goto(&format!("{}{path}", salon.url)).await;
            let said = self.list("return [document.documentElement.lang]").await;
            // The record can be read in a language that is chosen on it.
            if !pattern(path).1.split('&').any(|name| name == "in") {
                assert_eq!(said, [self.language], "{path}");
            }
            self.look(path).await;
        }
    }

    /// What the page says of a calendar that was chosen on it.
    async fn brought(&mut self, salon: &Salon, calendar: &Path) {
        self.screen(SCREENS[0]).await;
        self.browser.goto(&format!("{}/visits", salon.url)).await;
        let field = Locator::Css("form[action='/act/bring'] input[type=file]");
        let field = self.browser.client.find(field).await.expect("a chooser");
        field.send_keys(calendar.to_str().expect("a path")).await.expect("a file");
        let send = "document.querySelector(\"form[action='/act/bring']\").requestSubmit()";
        self.browser.client.execute(send, vec![]).await.expect("it is sent");
        let there = Locator::Css("form[action='/act/learn']");
        self.browser.client.wait().for_element(there).await.expect("questions");
        self.look("/act/bring").await;
    }

    /// Everything is reached by Tab, and seen when it is.
    async fn tab(&mut self, salon: &Salon, pages: &[String]) {
        self.screen(SCREENS[1]).await;
        for path in pages {
            self.browser.goto(&format!("{}{path}", salon.url)).await;
            let script = format!("{CHECKS}\nreturn own.begin()");
            let many = self.browser.client.execute(&script, vec![]).await.expect("a script");
            for _ in 0..many.as_u64().expect("a count") + 3 {
                for kind in ["rawKeyDown", "keyUp"] {
                    let key = json!({ "type": kind, "key": "Tab", "code": "Tab", "windowsVirtualKeyCode": 9 });
                    self.browser.devtools("Input.dispatchKeyEvent", key).await;
                }
                let said = self.list("return own.pressed()").await;
                self.note(path, "Tab", said);
            }
            let said = self.list("return own.end()").await;
            self.note(path, "Tab", said);
        }
    }
}

/// Pages that are worked with while hands are wet: reached by keys alone, all of it.
fn worked_with(pages: &[String]) -> Vec<String> {
    let places = ["/", "/wash", "/start", "/run/{}", "/chair"];
    let first = |place: &&str| pages.iter().find(|path| pattern(path).0 == **place).cloned();
    places.iter().filter_map(first).collect()
}

/// Two visits with titles that nobody has explained yet, a whole day, and an entry without a time.
fn calendar_of_tomorrow() -> String {
    let day = jiff::Timestamp::now() + jiff::SignedDuration::from_hours(24);
    let day = day.strftime("%Y%m%d");
    let entry = |number: u32, when: &str, title: &str| {
        format!(
            "BEGIN:VEVENT\r\nUID:{number}@example\r\n{when}\r\nSUMMARY:{title}\r\nEND:VEVENT\r\n"
        )
    };
    let at = |hour: u32| format!("DTSTART:{day}T{hour:02}0000Z\r\nDTEND:{day}T{hour:02}4500Z");
    let entries = [
        entry(1, &at(9), "Gel manicure Zuzana"),
        entry(2, &at(11), "Something else"),
        entry(3, &format!("DTSTART;VALUE=DATE:{day}"), "Holiday"),
        entry(4, "DTSTART:never", "Odd"),
    ];
    format!(
        "BEGIN:VCALENDAR\r\nVERSION:2.0\r\nPRODID:-//x//x//EN\r\n{}END:VCALENDAR\r\n",
        entries.concat()
    )
}

/// The cards, with one open and one ended, its sheet, and two pages that every book has.
fn lesson_pages(lesson: &Salon) -> Vec<String> {
    let book = Book::open(&lesson.book).expect("it opens");
    let people = book.read(|view| view.people()).expect("people");
    let (ended, sign) = (id(), people[1].person.to_string());
    for (act, card) in [(&ended, "wet"), (&id(), "power")] {
        let deal = [("act", &**act), ("card", card), ("learner", &*sign)];
        assert_eq!(lesson.post("/act/card-deal", &deal), Some(303), "{card}");
    }
    assert_eq!(lesson.post("/act/card-end", &[("act", &*id()), ("dealt", &*ended)]), Some(303));
    assert_eq!(lesson.post("/act/practice-clock", &[("act", &*id()), ("times", "10")]), Some(303));
    let pages = ["/", "/cards", "/chair?code=0000"].map(str::to_owned);
    pages.into_iter().chain([format!("/cards/sheet?card={ended}")]).collect()
}

async fn tour(language: &'static str) {
    let Some(browser) = browser(TABLET, language).await else { return };
    let home = tempfile::tempdir().expect("a folder");
    let salon = Salon::demo_for_all(&home.path().join("demo"));
    assert_eq!(
        salon.post("/stations/code", &[]),
        Some(303),
        "the page of the screens shows a code"
    );
    let empty = Salon::serve(&home.path().join("book"), &["--zone", "Etc/UTC"]);
    let mut tour = Tour { browser, language, faults: BTreeSet::new() };
    tour.patient().await;
    let pages = crawl(&salon, &not_linked(&salon));
    let reached: BTreeSet<String> = pages.iter().map(|path| pattern(path).0).collect();
    let mut missed: Vec<_> = routes().difference(&reached).cloned().collect();
    // Only an empty book has a first minute.
    missed.retain(|path| path != "/first");
    assert_eq!(missed, [""; 0], "of {reached:?}");
    tour.pages(&salon, &pages).await;
    let calendar = home.path().join("calendar.ics");
    std::fs::write(&calendar, calendar_of_tomorrow()).expect("a calendar");
    tour.brought(&salon, &calendar).await;
    let places = crawl(
        &empty,
        &[
            "/".to_owned(),
            "/first?machines=1".to_owned(),
            "/wash".to_owned(),
            "/start".to_owned(),
            "/chair".to_owned(),
        ],
    );
    tour.pages(&empty, &places).await;
    tour.tab(&salon, &worked_with(&pages)).await;
    eprintln!("{language}: {} pages and {} of an empty book", pages.len(), places.len());
    let faults: Vec<String> = tour.faults.into_iter().collect();
    tour.browser.close().await;
    assert!(faults.is_empty(), "{} faults:\n{}\n", faults.len(), faults.join("\n"));
}

#[tokio::test]
async fn every_page_in_english() {
    tour("en").await;
}

#[tokio::test]
async fn every_page_in_vietnamese() {
    tour("vi").await;
}

#[tokio::test]
async fn every_page_in_spanish() {
    tour("es").await;
}

/// The pages that only a practice book has, and two of the others on its hatched ground.
#[tokio::test]
async fn pages_of_a_practice_book() {
    let home = tempfile::tempdir().expect("a folder");
    let lesson = Salon::practice(&home.path().join("lesson"));
    let pages = lesson_pages(&lesson);
    for language in ["en", "vi", "es"] {
        let Some(browser) = browser(TABLET, language).await else { return };
        let mut tour = Tour { browser, language, faults: BTreeSet::new() };
        tour.patient().await;
        tour.pages(&lesson, &pages).await;
        tour.browser.close().await;
        let faults: Vec<String> = tour.faults.into_iter().collect();
        assert!(faults.is_empty(), "{} faults:\n{}\n", faults.len(), faults.join("\n"));
    }
}
