//! Task 10: an inspector stands in the door. Two taps to a page to read, no client in its source, a
//! time to choose, marks that show, paper with its parts and page numbers, and an end after which it
//! leads nowhere.

use super::{LANGUAGES, Task};
use crate::browser::{Browser, TABLET};
use crate::salon::{Salon, id};
use crate::story::{GOOD, Story, record};
use load::SetState;
use logbook::book::{BookError, Draft, DrawerKind};
use logbook::fact::{
    About, Body, Counter, Found, GapWhy, Known, Serviced, Stamp, ThingKind, Upkeep,
};
use measure::{Id, Instant, RunId, Span};
use serde_json::json;

/// Never to be found in the page: a client, a number, whoever came to repair.
const SECRETS: [&str; 4] = ["Zuzana", "555 0134", "Repairs & Sons", "thumb, left hand"];

fn chance<T>() -> Id<T> {
    id().parse().expect("an id")
}

fn now() -> Instant {
    Instant::from_millis(jiff::Timestamp::now().as_millisecond())
}

impl Story {
    /// Writes facts that no form of the program writes yet; they happened so many minutes ago.
    fn says(
        &self,
        (minutes, known): (i64, Known),
        say: impl FnOnce(&mut Draft) -> Result<(), BookError>,
    ) {
        let stamp = Stamp {
            act: chance(),
            happened: now() - Span::from_minutes(minutes),
            written: now(),
            station: chance(),
            sign: Some(self.sign.parse().expect("an id")),
            known,
        };
        self.book.act::<BookError>(stamp, |_, draft| say(draft)).expect("it is written");
    }
}

/// A salon with a good run, one copied from paper, a stop, and notes about people in the drawer.
fn salon(folder: &std::path::Path) -> (Story, String) {
    let story = Story::begin(folder);
    let run = story.start(3);
    let named = run.to_string();
    story.act("unload", &[("run", &named)]);
    story.drop_file(&record(GOOD));
    story.act("look", &[("run", &named), ("marks", "all"), ("dry", "all")]);
    let ready = story.pouches(SetState::Ready);
    story.act("open", &[("pouch", &ready[0].pouch.to_string()), ("chair", "4")]);
    story.act("set-aside", &[("pouch", &ready[1].pouch.to_string()), ("why", "not-sure")]);
    let visit = story.pouches(SetState::Opened)[0].opened.expect("opened").1.to_string();
    let machine = story.machine.parse().expect("an id");
    let paper: RunId = chance();
    story.says((180, Known::FromPaper), |draft| {
        draft.fact(Body::RunStarted {
            run: paper,
            machine,
            number: 9,
            programme: None,
            contents: load::Contents::Unknown,
            pouches: Vec::new(),
        });
        Ok(())
    });
    story.says((0, Known::Tapped), |draft| {
        let (bath, jar, basin) = (chance(), chance(), chance());
        for (thing, what) in
            [(bath, ThingKind::Ultrasonic), (jar, ThingKind::Jar), (basin, ThingKind::FootBasin)]
        {
            upkeep(draft, Upkeep::ThingAdded { thing, what, number: 1 });
        }
        upkeep(draft, Upkeep::JarMixed { jar });
        upkeep(draft, Upkeep::BasinWet { basin, after: logbook::fact::BasinAfter::Client });
        let note = Some(draft.put(DrawerKind::Note, SECRETS[2].as_bytes())?);
        upkeep(draft, Upkeep::MachineServiced { machine, what: Serviced::Repair, note });
        let note = Some(draft.put(DrawerKind::Note, SECRETS[1].as_bytes())?);
        let (chore, about) = ("foil test".parse().expect("a word"), About::Thing(bath));
        upkeep(draft, Upkeep::ChoreDone { chore, about, found: Found::Fine, note });
        let note = Some(draft.put(DrawerKind::Note, SECRETS[3].as_bytes())?);
        counter(draft, Counter::ExposureNoted { chair: Some(4), note });
        let note = Some(draft.put(DrawerKind::Note, SECRETS[0].as_bytes())?);
        counter(draft, Counter::HandedOver { to: None, drying: 2, note });
        let (to, why) = (now() - Span::from_minutes(600), GapWhy::Power);
        let from = to - Span::from_minutes(300);
        counter(draft, Counter::GapExplained { from, to, why });
        Ok(())
    });
    (story, visit)
}

fn upkeep(draft: &mut Draft, said: Upkeep) {
    draft.fact(Body::Upkeep(Box::new(said)));
}

fn counter(draft: &mut Draft, said: Counter) {
    draft.fact(Body::Counter(Box::new(said)));
}

/// Where every link, form, script and picture of the open page leads.
const LEADS: &str = "
    const all = [...document.querySelectorAll('a, form, button, script, iframe, object, img, link, base')];
    return all.map((e) => [e.localName, e.getAttribute('href') ?? e.getAttribute('action') ??
        e.getAttribute('formaction') ?? e.getAttribute('src') ?? '', e.getAttribute('method') ?? '']);";

async fn leads(browser: &Browser, own: &str) {
    let said = browser.client.execute(LEADS, vec![]).await.expect("a script");
    let all: Vec<[String; 3]> = serde_json::from_value(said).expect("lists");
    for [name, target, method] in all {
        let own = target.starts_with(own) || target.starts_with('#');
        let good = match name.as_str() {
            "a" => own,
            "form" => own && method == "get",
            "button" => target.is_empty(),
            "link" => target.starts_with("/assets/"),
            _ => false,
        };
        assert!(good, "{name} leads to {target:?} ({method})");
    }
}

/// Its parts in order, and each page with its number and how many there are.
fn reads(task: &Task, text: &str) {
    let mut at = 0;
    let plain = text.split_whitespace().collect::<Vec<_>>().join(" ");
    for part in 0..14 {
        let head = format!("{part}. {}", task.say(&format!("folder-part-{part}")));
        // A heading may be cut into two lines, and its first words are enough.
        let head: String = head.chars().take(18).collect();
        let found = plain[at..].find(head.trim());
        at += found.unwrap_or_else(|| panic!("no {head:?} in {plain}"));
    }
    let pages = text.split('\u{c}').count();
    assert!(pages >= 3, "{pages} pages");
    let (page, of) = (task.say("folder-page"), task.say("folder-of"));
    for number in 1..=pages {
        let foot = format!("{page} {number} {of} {pages}");
        assert!(plain.contains(&foot), "no {foot:?} in {plain}");
    }
    assert!(plain.contains(&task.say_before("folder-printed", "at")), "{plain}");
}

#[tokio::test]
async fn somebody_asks_to_see_the_record() {
    for language in LANGUAGES {
        let home = tempfile::tempdir().expect("a folder");
        let (story, visit) = salon(&home.path().join("book"));
        let Some(mut task) = Task::begin(("10-inspector", TABLET), language, &story.salon).await
        else {
            return;
        };
        for screen in ["/", "/ready", "/machine", "/log", "/setup"] {
            task.open(screen).await;
            assert!(task.has("link", &task.say("show-title")).await, "{screen}");
        }
        task.open("/wash").await;
        task.tap("link", &task.say("show-title")).await;
        task.tap("button", &task.say("show-do")).await;
        let own = task.browser.path().await;
        assert!(own.starts_with("/folder/") && own.len() == "/folder/".len() + 32, "{own}");
        task.expect(&task.say_before("folder-until", "at")).await;
        for mark in ["known-from-paper", "folder-gap-power", "do-not-use"] {
            task.expect(&task.say(mark)).await;
        }
        task.expect(&task.say_before("log-later", "at")).await;
        task.picture("record").await;
        leads(&task.browser, &own).await;
        let source = task.browser.client.source().await.expect("its source");
        for secret in SECRETS.iter().copied().chain([visit.as_str()]) {
            assert!(!source.contains(secret), "{secret}");
        }
        for (name, paper) in [("a4", (8.27, 11.69)), ("letter", (8.5, 11.0))] {
            let name = format!("task-10-{language}-{name}");
            if let Some(sheets) = task.browser.printed(&name, paper).await {
                reads(&task, &sheets.join("\u{c}"));
            }
        }
        chooses(&task, &own).await;
        // Over when it is closed: it says so, and nothing more.
        task.open("/show").await;
        task.browser.tap(&task.say("show-close")).await;
        task.open(&own).await;
        is_over(&task).await;
        task.end(2).await;
    }
}

/// The time that is shown, by a link and by two days.
async fn chooses(task: &Task, own: &str) {
    task.browser.tap(&task.say("folder-days-90")).await;
    assert_eq!(task.browser.path().await, format!("{own}?time=90"));
    let set = "document.querySelector('#folder-from').value = '2020-02-01';
               document.querySelector('#folder-to').value = '2020-02-29';";
    task.script(set).await;
    task.browser.tap(&task.say("folder-choose")).await;
    assert_eq!(task.browser.path().await, format!("{own}?from=2020-02-01&to=2020-02-29"));
    task.expect(&task.say("folder-none-span")).await;
    leads(&task.browser, own).await;
}

async fn is_over(task: &Task) {
    task.expect(&task.say("folder-over")).await;
    let left = task.script("return document.querySelectorAll('a, form, button').length").await;
    assert_eq!(left, json!(0), "it leads nowhere");
}

/// Nobody has to touch it: the page that is open closes itself.
#[tokio::test]
async fn the_page_closes_itself_after_its_time() {
    let home = tempfile::tempdir().expect("a folder");
    let more = ["--zone", "Etc/UTC", "--folder-minutes", "1"];
    let salon = Salon::serve(&home.path().join("book"), &more);
    let begun = Task::begin(("10-inspector-over", TABLET), "en", &salon).await;
    let Some(mut task) = begun else { return };
    task.open("/show").await;
    task.tap("button", &task.say("show-do")).await;
    task.expect(&task.say_before("folder-until", "at")).await;
    for _ in 0..150 {
        if task.text().await.contains(&task.say("folder-over-title")) {
            break;
        }
        tokio::time::sleep(std::time::Duration::from_millis(500)).await;
    }
    is_over(&task).await;
    task.end(1).await;
}

/// A reader becomes no screen of the salon, nothing is kept by the browser, and an address that nobody
/// opened says the same as one that is over.
#[test]
fn it_gives_no_cookie_is_not_kept_and_tells_nothing_by_guessing() {
    let home = tempfile::tempdir().expect("a folder");
    let salon = Salon::serve(&home.path().join("book"), &["--zone", "Etc/UTC"]);
    let own = salon.location("/show", &[]);
    let agent: ureq::Agent =
        ureq::Agent::config_builder().http_status_as_error(false).build().into();
    let ask = |path: &str| agent.get(format!("{}{path}", salon.url)).call().expect("an answer");
    let open = ask(&own);
    assert_eq!(open.status(), 200);
    let closed = ask(&format!("/folder/{}", id()));
    assert_eq!(closed.status(), 410);
    for answer in [&open, &closed] {
        assert_eq!(answer.headers().get("cache-control").expect("said"), "no-store");
        assert!(answer.headers().get("set-cookie").is_none());
    }
    assert_eq!(salon.post("/show/close", &[]), Some(303));
    let same = |mut answer: ureq::http::Response<ureq::Body>| {
        answer.body_mut().read_to_string().expect("text")
    };
    assert_eq!(same(ask(&own)), same(closed));
    assert_eq!(salon.post(&own, &[("act", "x")]), Some(405), "it takes no form");
}

/// Two thousand runs with all that belongs to them, as a figure for `docs/performance.md`.
#[test]
#[ignore = "prints a figure for docs/performance.md"]
fn two_thousand_runs() {
    let home = tempfile::tempdir().expect("a folder");
    let story = Story::begin(&home.path().join("book"));
    let machine = story.machine.parse().expect("an id");
    let day = 24 * 60;
    for batch in 0..20_i64 {
        story.says((80 * day - batch * 4 * day, Known::Tapped), |draft| {
            for number in 0..100 {
                let run: RunId = chance();
                let code = |at: u32| load::ShelfCode::from_number(number * 12 + at);
                let packed: Vec<_> = (0..12)
                    .map(|at| logbook::fact::PackedPouch {
                        pouch: chance(),
                        code: code(at),
                        kind: "manicure".parse().expect("a word"),
                        pouched: true,
                        hollow: false,
                    })
                    .collect();
                let pouches: Vec<_> = packed.iter().map(|pouch| pouch.pouch).collect();
                draft.fact(Body::Packed { pouches: packed });
                draft.fact(Body::RunStarted {
                    run,
                    machine,
                    number: number + 1,
                    programme: Some("middle".to_owned()),
                    contents: load::Contents::Pouched,
                    pouches: pouches.clone(),
                });
                draft.fact(Body::RunUnloaded { run });
                draft.fact(Body::Looked {
                    run,
                    marks_looked: true,
                    inner_mark: None,
                    dry_looked: true,
                    marks_not_turned: Vec::new(),
                    wet: Vec::new(),
                    torn: Vec::new(),
                    dropped: Vec::new(),
                });
                draft.fact(Body::Released { run, pouches, use_until: None });
            }
            Ok(())
        });
    }
    let own = story.salon.location("/show", &[]);
    for _ in 0..3 {
        let begun = std::time::Instant::now();
        let (status, page) = story.salon.get(&format!("{own}?time=90"));
        assert_eq!(status, 200);
        let runs = page.matches("<th scope=\"row\">").count();
        println!("{} kB, {runs} rows: {:.2} s", page.len() / 1000, begun.elapsed().as_secs_f64());
    }
}
