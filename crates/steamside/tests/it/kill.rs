//! Nothing that was acknowledged is ever lost: `kill -9` at random instants in the middle of acts.

use super::salon::{Salon, id};
use logbook::book::Book;
use measure::ActId;
use std::sync::mpsc;
use std::time::Duration;

/// Acts to be acknowledged before the test ends.
const ACTS: usize = 200;

fn set_up(salon: &Salon) -> String {
    assert_eq!(salon.post("/act/person", &[("act", &id()), ("sign-text", "HL")]), Some(303));
    let machine = [("act", &*id()), ("number", "1"), ("air", "vacuum"), ("files", "yes")];
    assert_eq!(salon.post("/act/machine", &machine), Some(303));
    let book = Book::open(&salon.book).expect("the book opens beside the running program");
    let people = book.read(|view| view.people()).expect("people");
    people.first().expect("one joined").person.to_string()
}

/// Sends acts until one is not answered; the acknowledged ones come back.
fn send_until_gone(salon: &Salon, sign: &str, sent: &mut Vec<(String, bool)>) {
    while sent.iter().filter(|(_, acknowledged)| *acknowledged).count() < ACTS {
        let act = id();
        let kind = if sent.len().is_multiple_of(2) { "count.manicure" } else { "count.pedicure" };
        let answer = salon.post("/act/wash", &[("act", &act), ("sign", sign), (kind, "1")]);
        sent.push((act, answer == Some(303)));
        if answer.is_none() {
            return;
        }
    }
}

#[test]
fn two_hundred_acts_survive_kill_nine() {
    let home = tempfile::tempdir().expect("a folder");
    let folder = home.path().join("book");
    let mut salon = Salon::serve(&folder, &[]);
    let sign = set_up(&salon);
    let mut sent = Vec::new();
    let mut kills = 0;
    while sent.iter().filter(|(_, acknowledged)| *acknowledged).count() < ACTS {
        let (stop, stopped) = mpsc::channel::<()>();
        let pid = salon.pid();
        let mut chance = [0; 2];
        getrandom::fill(&mut chance).expect("random bytes");
        let wait = Duration::from_micros(u64::from(u16::from_le_bytes(chance)) / 2);
        let killer = std::thread::spawn(move || {
            // A word on the channel means that all acts are through: then nothing is killed.
            if stopped.recv_timeout(wait).is_err() {
                let sent = std::process::Command::new("kill").args(["-9", &pid]).status();
                assert!(sent.expect("kill runs").success());
                return true;
            }
            false
        });
        send_until_gone(&salon, &sign, &mut sent);
        // The killer may have fired already; then nobody listens any more.
        stop.send(()).unwrap_or_default();
        if killer.join().expect("the killer ends") {
            kills += 1;
            salon.kill();
            salon = Salon::serve(&folder, &[]);
        }
    }
    salon.kill();
    println!("{} acts sent, {ACTS} acknowledged, {kills} times killed", sent.len());
    assert!(kills > 0, "the test killed nothing, so it shows nothing");
    let verified = logbook::verify::verify(&folder).expect("it can be read");
    assert!(verified.ok, "{:?}", verified.first_bad);
    let book = Book::open(&folder).expect("it opens");
    for (act, _) in sent.iter().filter(|(_, acknowledged)| *acknowledged) {
        let act: ActId = act.parse().expect("an id");
        let facts = book.read(|view| view.facts_of_act(act)).expect("facts");
        assert_eq!(facts.len(), 1, "act {act} was acknowledged and is not there");
    }
}
