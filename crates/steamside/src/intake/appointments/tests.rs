//! What comes in from calendars and tables, on a real book: nothing twice, nothing lost, no name
//! kept.

#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)] // tests may stop at once

mod tables;

use super::*;
use crate::acts::{self, Answer};
use crate::app::{App, Who};
use crate::chance;
use load::SetKind;
use logbook::book::{Book, Opening};
use logbook::fact::{BookKind, Known, Stamp};
use logbook::view::{Visit, VisitState};
use measure::{Instant, ServiceId, Span};

/// Monday, 2 June 2025, 08:00 in Chicago.
const NOW: i64 = 1_748_869_200_000;

fn now() -> Instant {
    Instant::from_millis(NOW)
}

/// A book that goes away, in Chicago.
struct Salon {
    folder: tempfile::TempDir,
    app: App,
}

impl Salon {
    fn new() -> Self {
        let folder = tempfile::tempdir().unwrap();
        let stamp = Stamp {
            act: chance::id().unwrap(),
            happened: now(),
            written: now(),
            station: chance::id().unwrap(),
            sign: None,
            known: Known::Setting,
        };
        let zone = "America/Chicago".to_owned();
        let opening = Opening { salon: chance::id().unwrap(), zone, book: BookKind::Salon, stamp };
        let book = Book::create(folder.path(), opening).unwrap();
        let app = App::new(book, folder.path().to_owned());
        let salon = Self { folder, app };
        for kind in ["manicure", "pedicure"] {
            let count = acts::Count { kind: kind.parse().unwrap(), owned: Some(9), loose: None };
            salon.act(|view, draft| acts::count(view, draft, count));
        }
        salon
    }

    fn act(
        &self,
        decide: impl FnOnce(&logbook::View<'_>, &mut logbook::Draft) -> Result<(), acts::Refusal>,
    ) {
        let who = Who::program(chance::id().unwrap(), Known::Tapped).unwrap();
        self.app.act(who, decide).unwrap();
    }

    fn service(&self, word: &str, kind: &str) -> ServiceId {
        let set = acts::SetService {
            service: None,
            word: word.parse().unwrap(),
            minutes: 45,
            weight: 2,
            basin_min: 0,
            needs: vec![(kind.parse::<SetKind>().unwrap(), 1)],
        };
        self.act(|view, draft| acts::set_service(view, draft, set));
        let services = self.app.read(|view| view.services()).unwrap();
        services.iter().find(|service| service.word.word() == word).unwrap().service
    }

    fn bring(&self, text: &str) -> Brought {
        self.bring_at(text, now())
    }

    fn bring_at(&self, text: &str, now: Instant) -> Brought {
        let mut brought = None;
        self.act(|view, draft| {
            let arrived = Arrived { bytes: text.as_bytes(), name: "a.ics", now };
            brought = Some(bring(view, draft, arrived)?);
            Ok(())
        });
        brought.unwrap()
    }

    fn learn(&self, phrase: &str, service: Option<ServiceId>, visits: Vec<measure::VisitId>) {
        let answer = Answer { phrase: Some(phrase.to_owned()), service, visits };
        self.act(|view, draft| acts::learn(view, draft, vec![answer]));
    }

    fn visits(&self) -> Vec<Visit> {
        let span = Span::from_minutes(90 * 24 * 60);
        self.app.read(|view| view.visits(now() - span, now() + span)).unwrap()
    }

    /// When, what became of it, with a service or not: in minutes after now.
    fn seen(&self) -> Vec<(i64, VisitState, bool)> {
        let shown =
            |v: &Visit| ((v.start() - now()).millis() / 60_000, v.state, v.service.is_some());
        self.visits().iter().map(shown).collect()
    }

    /// Every byte of the book, its journal too.
    fn bytes(&self) -> Vec<u8> {
        let files = std::fs::read_dir(self.folder.path()).unwrap();
        files.flat_map(|file| std::fs::read(file.unwrap().path()).unwrap()).collect()
    }
}

fn counts(brought: &Brought) -> [usize; 4] {
    [brought.booked, brought.changed, brought.called_off, brought.same]
}

/// Entries by their `UID`, start on 2 June and more lines.
fn calendar(events: &[(&str, &str, &str)]) -> String {
    let event = |(uid, clock, more): &(&str, &str, &str)| {
        format!(
            "BEGIN:VEVENT\r\nUID:{uid}\r\nDTSTAMP:20250601T000000Z\r\n\
             DTSTART;TZID=America/Chicago:20250602T{clock}00\r\nDURATION:PT1H\r\n{}\r\n\
             END:VEVENT\r\n",
            more.replace('\n', "\r\n")
        )
    };
    let events: String = events.iter().map(event).collect();
    format!(
        "BEGIN:VCALENDAR\r\nVERSION:2.0\r\nX-WR-CALNAME:Front desk\r\n{events}END:VCALENDAR\r\n"
    )
}

#[test]
fn the_same_file_twice_books_once() {
    use VisitState::Booked;
    let salon = Salon::new();
    let text = calendar(&[("1", "1000", "SUMMARY:Gel"), ("2", "1130", "SUMMARY:Gel")]);
    assert_eq!(counts(&salon.bring(&text)), [2, 0, 0, 0]);
    let facts = salon.app.read(|view| view.last_seq()).unwrap();
    assert_eq!(counts(&salon.bring(&text)), [0, 0, 0, 2]);
    assert_eq!(salon.app.read(|view| view.last_seq()).unwrap(), facts, "nothing was written");
    assert_eq!(salon.seen(), [(120, Booked, false), (210, Booked, false)]);
}

#[test]
fn what_the_calendar_moves_or_calls_off() {
    use VisitState::{Booked, Cancelled};
    let salon = Salon::new();
    let three =
        [("1", "1000", "SUMMARY:a"), ("2", "1100", "SUMMARY:b"), ("3", "1200", "SUMMARY:c")];
    salon.bring(&calendar(&three));
    // One moved, one called off, one no longer in the list.
    let later = calendar(&[
        ("1", "1015", "SUMMARY:a\nSEQUENCE:1"),
        ("2", "1100", "SUMMARY:b\nSTATUS:CANCELLED\nSEQUENCE:1"),
    ]);
    assert_eq!(counts(&salon.bring(&later)), [0, 1, 2, 0]);
    assert_eq!(
        salon.seen(),
        [(135, Booked, false), (180, Cancelled, false), (240, Cancelled, false)]
    );
    // An older file changes nothing about the one that was moved; the others are back.
    assert_eq!(counts(&salon.bring(&calendar(&three))), [0, 2, 0, 1]);
    assert_eq!(salon.seen().len(), 3);
    assert_eq!(salon.seen()[0], (135, Booked, false));
}

#[test]
fn another_calendar_calls_nothing_off() {
    let salon = Salon::new();
    salon.bring(&calendar(&[("1", "1000", "SUMMARY:a")]));
    let other = calendar(&[("2", "1100", "SUMMARY:b")]);
    let brought = salon.bring(&other.replace("Front desk", "Back room"));
    assert_eq!(counts(&brought), [1, 0, 0, 0]);
    // A message about one visit is no list.
    let message = calendar(&[("3", "1200", "SUMMARY:c")]);
    let brought = salon.bring(&message.replace("VERSION:2.0", "METHOD:REQUEST"));
    assert_eq!(counts(&brought), [1, 0, 0, 0]);
    let off = message.replace("VERSION:2.0", "METHOD:CANCEL");
    assert_eq!(counts(&salon.bring(&off)), [0, 0, 1, 0]);
    // What is over stays as it was, whatever a later list says.
    let evening = now() + Span::from_minutes(600);
    let brought = salon.bring_at(&calendar(&[("9", "1000", "SUMMARY:x")]), evening);
    assert_eq!(counts(&brought), [1, 0, 0, 0]);
}

#[test]
fn what_was_said_here_stays_until_the_calendar_moves_it() {
    use VisitState::{Booked, Missed};
    let salon = Salon::new();
    let text = calendar(&[("1", "1000", "SUMMARY:a"), ("2", "1100", "SUMMARY:b")]);
    salon.bring(&text);
    let [first, second] = [salon.visits()[0].visit, salon.visits()[1].visit];
    salon.act(|view, draft| acts::late(view, draft, first, 15));
    salon.act(|view, draft| acts::missed(view, draft, second));
    assert_eq!(counts(&salon.bring(&text)), [0, 0, 0, 2]);
    assert_eq!(salon.seen(), [(135, Booked, false), (180, Missed, false)]);
    let moved = calendar(&[("1", "1030", "SUMMARY:a"), ("2", "1130", "SUMMARY:b")]);
    assert_eq!(counts(&salon.bring(&moved)), [0, 2, 0, 0]);
    assert_eq!(salon.seen(), [(150, Booked, false), (210, Booked, false)]);
}

#[test]
fn a_series_and_what_is_taken_out_of_it() {
    let salon = Salon::new();
    let weekly = "SUMMARY:Gel\nRRULE:FREQ=WEEKLY;COUNT=4";
    assert_eq!(counts(&salon.bring(&calendar(&[("s", "1000", weekly)]))), [4, 0, 0, 0]);
    let three = format!("{weekly}\nEXDATE;TZID=America/Chicago:20250609T100000");
    assert_eq!(counts(&salon.bring(&calendar(&[("s", "1000", &three)]))), [0, 0, 1, 3]);
    // One instance moved: the same visit at another time.
    let change = "RECURRENCE-ID;TZID=America/Chicago:20250616T100000\nSUMMARY:Gel";
    let moved = calendar(&[("s", "1000", &three), ("s", "0900", change)]);
    assert_eq!(counts(&salon.bring(&moved)), [0, 1, 0, 2]);
    assert_eq!(salon.visits().len(), 4);
    // A message that calls off the series, and only that.
    let off = calendar(&[("s", "1000", weekly)]).replace("VERSION:2.0", "METHOD:CANCEL");
    assert_eq!(counts(&salon.bring(&off)), [0, 0, 3, 0]);
}

#[test]
fn a_title_is_asked_about_once() {
    let salon = Salon::new();
    let (gel, pedi) =
        (salon.service("gel manicure", "manicure"), salon.service("pedi", "pedicure"));
    let text = calendar(&[
        ("1", "1000", "SUMMARY:Gel Manicure - Zuzana Quist"),
        ("2", "1100", "SUMMARY:gel manicure (Oriel Pendragon)"),
        ("3", "1200", "SUMMARY:PEDI Ondine"),
        ("4", "1300", "SUMMARY:Staff meeting"),
    ]);
    let brought = salon.bring(&text);
    let asked: Vec<usize> = brought.questions.iter().map(|q| q.visits.len()).collect();
    assert_eq!(asked, [2, 1, 1]);
    let question = &brought.questions[0];
    assert_eq!(question.phrases[0].0, "gel manicure");
    assert_eq!(question.phrases[0].1, question.visits);
    salon.learn("Gel  Manicure!", Some(gel), question.visits.clone());
    salon.learn("pedi", Some(pedi), vec![]);
    salon.learn("staff meeting", None, vec![salon.visits()[3].visit]);
    let services: Vec<_> = salon.visits().iter().map(|visit| visit.service).collect();
    assert_eq!(services, [Some(gel), Some(gel), None, None]);
    // The same file once more: the pedicure is known now, nothing is asked, no meeting is booked.
    let brought = salon.bring(&text);
    assert_eq!((counts(&brought), brought.questions), ([0, 1, 0, 2], vec![]));
    let appointments =
        salon.app.read(|view| view.appointments(now(), now() + Span::from_minutes(600))).unwrap();
    let needs: Vec<_> = appointments.iter().map(|a| a.needs[0].0.to_string()).collect();
    assert_eq!(needs, ["manicure", "manicure", "pedicure"]);
}

#[test]
fn the_longest_phrase_in_a_title_counts() {
    let salon = Salon::new();
    let (plain, gel) = (salon.service("plain", "manicure"), salon.service("gel", "pedicure"));
    salon.learn("manicure", Some(plain), vec![]);
    salon.learn("gel manicure", Some(gel), vec![]);
    salon.learn("sơn gel", Some(gel), vec![]);
    let check = |title: &str, expected: Option<ServiceId>| {
        let book = &salon.app;
        let meaning = book.read(|view| {
            let mut learnt = titles::Learnt::new(view.book_key()?.unwrap(), view.phrases()?);
            Ok(learnt.meaning(title))
        });
        let expected = expected.map_or(titles::Meaning::Unknown, titles::Meaning::Service);
        assert_eq!(meaning.unwrap(), expected, "{title:?}");
    };
    check("Manicure, Anna", Some(plain));
    check("Anna: GEL-manicure", Some(gel));
    check("gel and manicure", Some(plain));
    check("Chị Lan sơn  Gel 2 bàn tay", Some(gel));
    check("manicured", None);
    check("", None);
}

/// The whole of a calendar with people in it, and not one of their names in the book: not in a
/// fact, not in a table, not in the drawer, not in the journal beside it.
#[test]
fn no_name_is_kept() {
    let salon = Salon::new();
    let gel = salon.service("gel manicure", "manicure");
    let text = calendar(&[
        (
            "zuzana-1@example.com",
            "1000",
            "SUMMARY:Gel manicure Zuzana Quist\nATTENDEE;CN=Zuzana:mailto:zuzana@example.com",
        ),
        (
            "2",
            "1100",
            "SUMMARY:Gel manicure Oriel\nDESCRIPTION:Oriel Pendragon 0151 2345678\nLOCATION:Chair 2",
        ),
        ("3", "1200", "SUMMARY:Ondine Fairweather"),
        ("4", "1300", "SUMMARY:Zuzana\nDTSTART;TZID=Mars/Base:20250602T130000"),
    ]);
    let brought = salon.bring(&text);
    let question = brought.questions.iter().find(|q| q.titles[0].contains("Gel")).unwrap();
    salon.learn(&question.phrases[0].0, Some(gel), question.visits.clone());
    salon.bring(&text);
    assert_eq!(salon.visits()[1].chair, Some(2));
    let csv = "Date;Time;Service;Client\n2025-06-03;10:00;Gel manicure;Oriel Pendragon\n";
    assert_eq!(counts(&salon.bring(csv)), [1, 0, 0, 0]);
    let bytes = salon.bytes().to_ascii_lowercase();
    let there = |name: &[u8]| bytes.windows(name.len()).any(|part| part == name);
    for name in
        ["zuzana", "quist", "oriel", "pendragon", "ondine", "fairweather", "2345678", "front desk"]
    {
        assert!(!there(name.as_bytes()), "{name} is in the book");
    }
    // What the salon itself calls its service is there, so the search does find what is there.
    assert!(there(b"gel manicure"));
    assert!(logbook::verify(salon.folder.path()).unwrap().ok);
}

#[test]
fn whole_days_and_odd_entries_are_questions() {
    let salon = Salon::new();
    let text = "BEGIN:VCALENDAR\r\nBEGIN:VEVENT\r\nUID:1\r\nSUMMARY:Holiday\r\n\
                DTSTART;VALUE=DATE:20250704\r\nEND:VEVENT\r\nBEGIN:VEVENT\r\nUID:2\r\n\
                SUMMARY:Gel\r\nDTSTART;TZID=Central Standard Time:20250603T100000\r\n\
                END:VEVENT\r\nEND:VCALENDAR\r\n";
    let brought = salon.bring(text);
    assert_eq!(brought.whole_days[0].title, "Holiday");
    let zone = calendar::Why::Zone("Central Standard Time".to_owned());
    assert_eq!(brought.odd[0].why, zone);
    assert_eq!((counts(&brought), salon.visits().len()), ([0, 0, 0, 0], 0));
}

/// A file may be cut anywhere, or hold anything: it is refused or read, and nothing breaks.
#[test]
fn a_calendar_cut_anywhere_breaks_nothing() {
    let text = calendar(&[(
        "s",
        "1000",
        "SUMMARY:Sơn gel\nRRULE:FREQ=WEEKLY;COUNT=4\nEXDATE:20250609T150000Z",
    )]);
    let zone = jiff::tz::TimeZone::UTC;
    let asked = calendar::Asked { from: now(), to: now() + Span::from_minutes(50_000), zone };
    for end in (0..text.len()).filter(|end| text.is_char_boundary(*end)) {
        let (before, after) = text.split_at(end);
        let whole = calendar::read(before, &asked).is_ok_and(|said| !said.items.is_empty());
        assert!(!whole || after.trim().is_empty(), "{before}");
        // One byte of it replaced by each of a few that mean something.
        for sign in [":", ";", "\r\n", "\"", "99999999999"] {
            let rest: String = after.chars().skip(1).collect();
            drop(calendar::read(&format!("{before}{sign}{rest}"), &asked));
        }
    }
}
