//! Appointments from outside, through the real program: the command line, a page, two taps.

use super::salon::{Salon, id, program};
use jiff::ToSpan;
use jiff::tz::TimeZone;
use logbook::fact::Service;
use logbook::view::{Appointment, VisitState};
use logbook::{Book, BookError};
use measure::{Instant, Span};
use std::path::{Path, PathBuf};

/// A calendar of tomorrow, with a name in each title.
fn calendar(folder: &Path, hour: i8) -> PathBuf {
    let today = TimeZone::system().to_datetime(jiff::Timestamp::now()).date();
    let tomorrow = today.checked_add(1.day()).expect("a date");
    let day = tomorrow.strftime("%Y%m%d");
    let event = |uid: u32, hour: i8, title: &str| {
        format!(
            "BEGIN:VEVENT\r\nUID:{uid}\r\nDTSTAMP:20250101T000000Z\r\nSUMMARY:{title}\r\n\
             DTSTART:{day}T{hour:02}0000\r\nDTEND:{day}T{hour:02}4500\r\nEND:VEVENT\r\n"
        )
    };
    let text = format!(
        "BEGIN:VCALENDAR\r\nX-WR-CALNAME:Desk\r\n{}{}END:VCALENDAR\r\n",
        event(1, 10, "Gel manicure Zuzana"),
        event(2, hour, "Gel manicure Ondine"),
    );
    let file = folder.join("week.ics");
    std::fs::write(&file, text).expect("a file");
    file
}

fn take(book: &Path, file: &Path) -> (Option<i32>, String) {
    let out = program().arg("take").arg(file).arg("--book").arg(book).output().expect("it runs");
    (out.status.code(), String::from_utf8_lossy(&out.stdout).into_owned())
}

fn coming(book: &Path) -> Vec<Appointment> {
    let book = Book::open(book).expect("a book");
    let now = Instant::from_millis(jiff::Timestamp::now().as_millisecond());
    let week = Span::from_minutes(7 * 24 * 60);
    book.read::<_, BookError>(|view| view.appointments(now, now + week)).expect("readable")
}

fn services(book: &Path) -> Vec<Service> {
    let book = Book::open(book).expect("a book");
    book.read::<_, BookError>(|view| view.services()).expect("readable")
}

fn post(salon: &Salon, act: &str, fields: &[(&str, &str)]) -> Option<u16> {
    let id = id();
    let mut all = vec![("act", id.as_str())];
    all.extend(fields);
    salon.post(&format!("/act/{act}"), &all)
}

/// A salon of its own with one service.
fn salon(book: &Path) -> (Salon, Service) {
    let salon = Salon::serve(book, &[]);
    let gel = [("word", "gel manicure"), ("length", "45"), ("need.manicure", "1")];
    assert_eq!(post(&salon, "service", &gel), Some(303));
    let gel = services(book).pop().expect("a service");
    (salon, gel)
}

#[test]
fn a_calendar_from_the_command_line_and_again() {
    let home = tempfile::tempdir().expect("a folder");
    let book = home.path().join("book");
    drop(salon(&book));
    let (status, said) = take(&book, &calendar(home.path(), 14));
    assert_eq!(status, Some(0));
    assert!(said.contains("2 visits booked") && said.contains("2 without a service"), "{said}");
    assert!(!said.contains("Zuzana"), "a name in what may end in a log: {said}");
    let (_, said) = take(&book, &calendar(home.path(), 14));
    assert!(said.contains("nothing has changed"), "{said}");
    let (_, said) = take(&book, &calendar(home.path(), 15));
    assert!(said.contains("1 changed"), "{said}");
    assert_eq!(coming(&book).len(), 2);
}

#[test]
fn a_page_asks_once_which_sets_a_title_needs() {
    let home = tempfile::tempdir().expect("a folder");
    let book = home.path().join("book");
    let (salon, gel) = salon(&book);
    let text = std::fs::read_to_string(calendar(home.path(), 14)).expect("the file");
    let page = salon.upload_page("/act/bring", &[("act", &*id())], &text);
    assert!(page.contains("Gel manicure Zuzana"), "the title is shown once");
    assert!(page.contains("value=\"gel manicure\""), "the phrase that both titles hold");
    // The answer as the page's form sends it: the phrase that was picked, for both visits.
    let field = |name: &str| {
        let start = page.find(&format!("name=\"{name}\" value=\"")).expect("a field");
        let rest = &page[start..];
        rest.split('"').nth(3).expect("a value").to_owned()
    };
    let visits = field("0.visits.0");
    assert_eq!(visits.split(' ').count(), 2);
    let service = gel.service.to_string();
    let answer = [
        ("0.pick", "0"),
        ("0.phrase.0", "gel manicure"),
        ("0.visits.0", &*visits),
        ("0.service", &*service),
    ];
    assert_eq!(post(&salon, "learn", &answer), Some(303));
    let needs: Vec<_> = coming(&book).into_iter().map(|visit| visit.needs).collect();
    assert_eq!(needs, [gel.needs.clone(), gel.needs.clone()]);
    // Dropped where records go, it is understood all the same, and nothing is asked any more.
    let page = salon.upload_page("/act/take", &[("act", &*id())], &text);
    assert!(page.contains("2 visits were here already") && !page.contains("Zuzana"), "{page}");
    let (_, page) = salon.get("/visits");
    assert!(page.contains("gel manicure") && !page.contains("Zuzana"));
    assert!(logbook::verify(&book).expect("readable").ok);
}

#[test]
fn two_taps_book_a_visit_and_one_puts_it_back() {
    let home = tempfile::tempdir().expect("a folder");
    let book = home.path().join("book");
    let (salon, gel) = salon(&book);
    let service = gel.service.to_string();
    let (_, page) = salon.get("/visits");
    assert!(page.contains(&format!("/visits?service={service}")), "the first tap is a link");
    let (_, page) = salon.get(&format!("/visits?service={service}"));
    // The last button is tomorrow's, whatever time it is now.
    let start = page.rsplit("name=\"start\" value=\"").next().expect("a time");
    let start = start.split('"').next().expect("a value").to_owned();
    let taps = [("service", service.as_str()), ("start", start.as_str())];
    assert_eq!(post(&salon, "visit", &taps), Some(303));
    let visit = coming(&book).pop().expect("a visit");
    assert_eq!((visit.start.millis().to_string(), visit.needs), (start, gel.needs));
    let named = visit.visit.to_string();
    let late = [("visit", named.as_str()), ("later", "15")];
    assert_eq!(post(&salon, "visit-late", &late), Some(303));
    assert_eq!(coming(&book)[0].start - visit.start, Span::from_minutes(15));
    assert_eq!(post(&salon, "visit-missed", &[("visit", &*named)]), Some(303));
    assert_eq!(post(&salon, "visit-missed", &[("visit", &*named)]), Some(409), "once is enough");
    assert_eq!(coming(&book), []);
    let row = Book::open(&book).expect("a book");
    let row = row.read::<_, BookError>(|view| view.visit(visit.visit)).expect("readable");
    assert_eq!(row.map(|row| row.state), Some(VisitState::Missed));
}

#[test]
fn the_demo_has_appointments_and_people_for_today_and_tomorrow() {
    let home = tempfile::tempdir().expect("a folder");
    let folder = home.path().join("demo");
    let salon = Salon::demo(&folder);
    for page in ["/visits", "/services"] {
        let (status, text) = salon.get(page);
        assert_eq!(status, 200, "{page}");
        assert!(text.contains("gel manicure"), "{page}");
    }
    let visits = coming(&folder);
    assert!(visits.len() > 10, "{}", visits.len());
    assert!(visits.iter().all(|visit| !visit.needs.is_empty()));
    let now = Instant::from_millis(jiff::Timestamp::now().as_millisecond());
    let book = Book::open(&folder).expect("a book");
    let shifts =
        book.read::<_, BookError>(|view| view.shifts(now, now + Span::from_minutes(2_000)));
    assert_eq!(shifts.expect("readable").len(), 6, "three people, two days");
    let hands = book.read::<_, BookError>(|view| view.hand_times()).expect("readable");
    assert!(hands.pack.is_some_and(|spread| spread.count > 3), "{hands:?}");
}
