//! The practice book in real Chromium: a card played wrong, then right, and its sheet on paper; and
//! the word PRACTICE on every page of it and on none of a salon's own book.

use super::access::{crawl, pattern};
use super::browser::{TABLET, browser};
use super::salon::{Salon, id, program};
use logbook::book::{Book, Draft};
use logbook::fact::{Body, Counter, Known, Stamp};
use logbook::view::View;
use measure::PersonId;

/// The word in each language, with the page's code.
const WORDS: [(&str, &str); 3] = [("en", "PRACTICE"), ("vi", "THỰC HÀNH"), ("es", "PRÁCTICA")];

/// The sign of who learns, and a look into the book.
fn learner(salon: &Salon) -> String {
    let book = Book::open(&salon.book).expect("it opens");
    let people = book.read(|view: &View<'_>| view.people()).expect("people");
    people
        .iter()
        .find(|person| person.sign.as_deref() == Some("L1"))
        .expect("L1")
        .person
        .to_string()
}

/// The act that dealt the newest card, the run that is to be looked at, and the card's pouch.
fn dealt(salon: &Salon) -> (String, String, String) {
    let book = Book::open(&salon.book).expect("it opens");
    book.read(|view: &View<'_>| {
        let card = view.cards()?.pop().expect("a card");
        let run = view.runs_open()?.pop().expect("a run");
        let pouches = view.pouches_of_run(run.run)?;
        let text = pouches.iter().map(|pouch| (pouch.pouch.to_string(), pouch.code.to_string()));
        let pouch = text.collect::<Vec<_>>();
        Ok::<_, logbook::book::BookError>((
            card.dealt.to_string(),
            run.run.to_string(),
            pouch.iter().map(|(id, code)| format!("{id} {code}")).collect::<Vec<_>>().join("\n"),
        ))
    })
    .expect("it reads")
}

/// The code that the page of the cards names, as the id of its pouch.
fn named(salon: &Salon, pouches: &str) -> String {
    let (_, page) = salon.get("/cards");
    let named: Vec<_> = pouches
        .lines()
        .filter_map(|line| line.split_once(' '))
        .filter(|(_, code)| page.contains(&format!("Pouch {code} is wet")))
        .collect();
    assert_eq!(named.len(), 1, "{pouches}");
    named[0].0.to_owned()
}

#[tokio::test]
async fn a_wet_pouch_played_wrong_then_right_and_its_sheet() {
    let Some(browser) = browser(TABLET, "en").await else { return };
    let home = tempfile::tempdir().expect("a folder");
    let salon = Salon::practice(&home.path().join("lesson"));
    let sign = learner(&salon);
    // Wrong: everything is said to be good.
    browser.goto(&format!("{}/cards", salon.url)).await;
    browser.picture("practice-cards").await;
    browser.tap("2 · A wet pouch").await;
    let (_, run, pouches) = dealt(&salon);
    named(&salon, &pouches);
    browser.picture("practice-dealt").await;
    browser.goto(&format!("{}/run/{run}", salon.url)).await;
    browser.tap("I looked at every pouch. ALL GOOD, RELEASE: tap your sign L1").await;
    browser.goto(&format!("{}/cards", salon.url)).await;
    browser.tap("End this card").await;
    let text = browser.text().await;
    assert!(text.contains("0 of 4 right"), "{text}");
    assert!(text.contains("The first answer stands: dry later is still wet."), "{text}");
    // Right: the wet one is named, the others are looked at again, its set goes back.
    browser.goto(&format!("{}/cards", salon.url)).await;
    browser.tap("2 · A wet pouch").await;
    let (card, run, pouches) = dealt(&salon);
    let wet = named(&salon, &pouches);
    let act = [("act", id()), ("sign", sign.clone()), ("run", run), ("back", "/".to_owned())];
    let send = |path: &str, more: &[(&str, &str)]| {
        let fields: Vec<(&str, &str)> = act
            .iter()
            .map(|(name, value)| (*name, value.as_str()))
            .filter(|(name, _)| *name != "act")
            .chain(more.iter().copied())
            .collect();
        let new = id();
        let fields: Vec<_> = fields.into_iter().chain([("act", new.as_str())]).collect();
        assert_eq!(salon.post(path, &fields), Some(303), "{path}");
    };
    send("/act/look", &[("dry", "not"), ("wet", &wet)]);
    send("/act/look", &[("marks", "all"), ("dry", "all"), ("counted", "3")]);
    send("/act/apart", &[("pouch", &wet)]);
    browser.goto(&format!("{}/cards", salon.url)).await;
    browser.tap("End this card").await;
    assert_eq!(
        browser.path().await.split("&did").next(),
        Some(&*format!("/cards/sheet?card={card}"))
    );
    let text = browser.text().await;
    assert!(text.contains("4 of 4 right"), "{text}");
    browser.picture("practice-sheet").await;
    for (name, size) in [("a4", (8.27, 11.69)), ("letter", (8.5, 11.0))] {
        let Some(said) = printed(&browser, name, size).await else { continue };
        for line in [
            "PRACTICE",
            "Name:",
            "L1",
            "A wet pouch",
            "4 of 4 right",
            "said by a person",
            "Teacher, date:",
        ] {
            assert!(said.contains(line), "{name}: {line}: {said}");
        }
        assert!(!said.contains("End this card") && !said.contains("Print the sheet"), "{said}");
    }
    browser.goto(&format!("{}/cards/sheet?learner={sign}", salon.url)).await;
    if let Some(said) = printed(&browser, "all", (8.27, 11.69)).await {
        assert!(said.contains("0 of 4 right") && said.contains("4 of 4 right"), "both: {said}");
        assert_eq!(said.matches("Name:").count(), 2);
    }
    browser.close().await;
}

/// The page on paper, which says PRACTICE on every sheet; `None` where no program reads such a file.
async fn printed(
    browser: &super::browser::Browser,
    name: &str,
    paper: (f64, f64),
) -> Option<String> {
    let pages = browser.printed(name, paper).await?;
    assert!(pages.iter().all(|page| page.contains("PRACTICE")), "{name}: {pages:?}");
    Some(pages.join("\n"))
}

/// Every page that a link leads to, and the first ones after a card was dealt.
#[test]
fn every_page_of_a_practice_book_says_so_and_none_of_a_real_one() {
    let home = tempfile::tempdir().expect("a folder");
    let lesson = Salon::practice(&home.path().join("lesson"));
    let sign = learner(&lesson);
    for card in ["wet", "too-many"] {
        let deal = [("act", &*id()), ("card", card), ("learner", &*sign), ("back", "/cards")];
        assert_eq!(lesson.post("/act/card-deal", &deal), Some(303), "{card}");
    }
    let (card, run, _) = dealt(&lesson);
    let begin =
        ["/", "/cards", "/setup", "/wall", "/wall?front=yes", "/nowhere", "/chair?code=0000"];
    let mut begin: Vec<String> = begin.map(str::to_owned).into();
    begin.extend([format!("/cards/sheet?card={card}"), format!("/run/{run}")]);
    let pages = crawl(&lesson, &begin);
    assert!(pages.len() > 15, "{pages:?}");
    for (language, word) in WORDS {
        for path in &pages {
            let (_, page) = lesson.get_in(path, language);
            // A part of a page that is put into one has no head.
            if pattern(path).0 == "/strip" {
                continue;
            }
            assert!(page.contains(&format!("<title>{word}: ")), "{path} {language}");
            assert!(page.matches(word).count() >= 2, "{path} {language}: not on the page itself");
        }
    }
    let real = Salon::serve(&home.path().join("book"), &["--zone", "Etc/UTC"]);
    let demo = Salon::demo(&home.path().join("demo"));
    for salon in [&real, &demo] {
        let begin: Vec<String> = ["/", "/setup", "/wall", "/practice"].map(str::to_owned).into();
        for path in crawl(salon, &begin) {
            let (_, page) = salon.get(&path);
            assert!(!page.contains("PRACTICE") && !page.contains("class=\"practice\""), "{path}");
        }
        assert_eq!(salon.get("/cards").0, 404);
        let (_, _, sign) = ("", "", id());
        let pace = [("act", &*id()), ("times", "30"), ("sign", &*sign)];
        assert_ne!(salon.post("/act/practice-clock", &pace), Some(303), "a real clock has no pace");
    }
    let not_new = program()
        .args(["practice", "--new", "--listen", "127.0.0.1:0", "--folder"])
        .arg(home.path().join("book"))
        .output()
        .expect("it runs");
    assert_eq!(not_new.status.code(), Some(2), "a salon's own book is left alone");
}

/// What the page of the people writes.
fn say_teaches(book: &Book, person: &str) {
    let at = measure::Instant::from_millis(jiff::Timestamp::now().as_millisecond());
    let stamp = Stamp {
        act: id().parse().expect("an id"),
        happened: at,
        written: at,
        station: id().parse().expect("an id"),
        sign: None,
        known: Known::Setting,
    };
    let person = person.parse().expect("a person");
    let teaches = Counter::PersonIs { person, learns: false, in_charge: false, teaches: true };
    book.act(stamp, |_, draft: &mut Draft| {
        draft.fact(Body::Counter(Box::new(teaches)));
        Ok::<_, logbook::book::BookError>(())
    })
    .expect("it is written");
}

/// Who teaches opens it, at a port of its own; what is done there does not reach the salon's book.
#[test]
fn a_teacher_opens_the_practice_book_of_a_salon() {
    let home = tempfile::tempdir().expect("a folder");
    let salon = Salon::serve(&home.path().join("book"), &["--zone", "Etc/UTC"]);
    let sign_up = [("act", &*id()), ("sign-text", "HL")];
    assert_eq!(salon.post("/act/person", &sign_up), Some(303));
    let book = || Book::open(&salon.book).expect("it opens");
    let person: PersonId = book().read(|view: &View<'_>| view.people()).expect("people")[0].person;
    let person = person.to_string();
    assert_eq!(salon.post("/practice", &[("sign", &person)]), Some(409), "does not teach");
    assert_eq!(salon.post("/practice", &[("", "")]), Some(409), "nobody");
    say_teaches(&book(), &person);
    assert!(!salon.get("/practice").1.contains("http://"), "closed");
    assert_eq!(salon.post("/practice", &[("sign", &person)]), Some(200));
    let (_, page) = salon.get("/practice");
    let address = page.split("http://").nth(1).expect("an address").split('/').next().expect("it");
    let before = book().read(|view: &View<'_>| view.last_seq()).expect("a place");
    let lesson = Salon::at(&format!("http://{address}"), &salon.book.join("practice"));
    assert!(lesson.get("/cards").1.contains("<title>PRACTICE: "));
    assert_eq!(lesson.post("/act/card-deal", &[("act", &*id()), ("card", "wet")]), Some(303));
    let after = book().read(|view: &View<'_>| view.last_seq()).expect("a place");
    assert_eq!(before, after, "the salon's own book did not grow");
    assert_eq!(salon.post("/practice", &[("sign", &person)]), Some(200));
    assert!(salon.get("/practice").1.contains(address), "opened once");
}
