//! The watched folder: a memory stick that gets mounted, a share that a machine writes to.
//!
//! It is polled, because a network share tells nobody when it changes. A file is taken in when it
//! has not changed for ten seconds; a longer version of the same file comes in again and replaces
//! the shorter one's verdict, both kept.

use super::appointments::{self, bring_file, is_appointments};
use super::growing::{self, Grown};
use super::take::{Arrived, LARGEST, take};
use crate::acts::Refusal;
use crate::app::{App, Who};
use crate::clock;
use logbook::drawer::record_hash;
use logbook::fact::{Known, Way};
use measure::{Instant, MachineId, Span, StationId};
use std::collections::HashMap;
use std::path::{Path, PathBuf};
use std::time::{Duration, SystemTime};

/// A file counts as complete when it has not changed for this long.
const STILL: Span = Span::from_seconds(10);
/// Time between two looks at the folder.
const PAUSE: Duration = Duration::from_secs(2);
/// A file that nobody wrote to for longer is not that of a running run.
const FRESH: Duration = Duration::from_secs(10 * 60);
/// Folders inside the watched one are looked into, down to here.
const DEEPEST: usize = 4;
/// More files than this in one folder are not a memory stick.
const MOST_FILES: usize = 20_000;

/// A watched folder.
#[derive(Debug, Clone)]
pub struct Watched {
    /// The folder. It may be away for a while: a stick is pulled and put back.
    pub folder: PathBuf,
    /// The machine that writes there, where only one does.
    pub machine: Option<MachineId>,
    /// The station in whose name files come in.
    pub station: StationId,
}

/// What a file looked like.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
struct Look {
    bytes: u64,
    changed: Option<SystemTime>,
}

/// What is known of a file: its look, since when it looks so, and whether that was taken in.
#[derive(Debug, Clone, Copy)]
struct Seen {
    look: Look,
    since: Instant,
    taken: bool,
}

/// What has been seen of one folder so far.
#[derive(Debug, Default)]
pub struct Watch {
    seen: HashMap<PathBuf, Seen>,
}

impl Watch {
    /// One look at the folder; takes in every file that has been still for long enough, and
    /// returns a line for each, for the person at the command line.
    pub fn poll(&mut self, app: &App, watched: &Watched, now: Instant) -> Vec<String> {
        let mut files = Vec::new();
        list(&watched.folder, 0, &mut files);
        self.seen.retain(|path, _| files.iter().any(|(known, _)| known == path));
        let mut said = Vec::new();
        for (path, look) in files {
            let seen =
                self.seen.entry(path.clone()).or_insert(Seen { look, since: now, taken: false });
            let grew = seen.look != look;
            if grew {
                *seen = Seen { look, since: now, taken: false };
            }
            if grew || seen.since == now {
                hear(app, watched, (&path, look), grew);
            }
            if !seen.taken && clock::since(seen.since, now) >= STILL {
                seen.taken = true;
                said.extend(take_file(app, watched, &path, look));
            }
        }
        said
    }
}

fn list(folder: &Path, depth: usize, files: &mut Vec<(PathBuf, Look)>) {
    // A folder that cannot be read is a stick that is away; the next look finds it.
    let Ok(entries) = std::fs::read_dir(folder) else {
        return;
    };
    for entry in entries.flatten() {
        let Ok(about) = entry.metadata() else {
            continue;
        };
        let hidden = entry.file_name().to_string_lossy().starts_with('.');
        if hidden || files.len() >= MOST_FILES {
            continue;
        }
        if about.is_dir() && depth < DEEPEST {
            list(&entry.path(), depth + 1, files);
        } else if about.is_file() && about.len() > 0 {
            let look = Look { bytes: about.len(), changed: about.modified().ok() };
            files.push((entry.path(), look));
        }
    }
}

/// What a running machine has just written, for the screens. A file that was only found may be old:
/// its own time says so. Nothing that fails here is lost, the file is taken in as ever.
fn hear(app: &App, watched: &Watched, (path, look): (&Path, Look), grew: bool) {
    let age = look.changed.and_then(|at| SystemTime::now().duration_since(at).ok());
    let age = age.filter(|_| !grew).unwrap_or_default();
    if look.bytes > growing::LARGEST || age > FRESH {
        return;
    }
    let Ok(bytes) = std::fs::read(path) else {
        return;
    };
    let heard = app.now() - Span::from_millis(age.as_millis() as i64);
    let grown = Grown { bytes: &bytes, machine: watched.machine, heard, grew };
    if let Ok(Some(word)) = app.book.read(|view| growing::last_word(view, grown)) {
        app.live.word(word);
    }
}

fn take_file(app: &App, watched: &Watched, path: &Path, look: Look) -> Option<String> {
    let name = path.display();
    if look.bytes > LARGEST as u64 {
        return Some(format!("{name}: larger than any cycle record; left where it is"));
    }
    let bytes = match std::fs::read(path) {
        Ok(bytes) => bytes,
        Err(error) => return Some(format!("{name}: could not be read ({error}); still there")),
    };
    let taken = if is_appointments(&bytes) {
        let called = path.file_name().unwrap_or_default().to_string_lossy();
        let arrived = appointments::Arrived { bytes: &bytes, name: &called, now: app.now() };
        Who::program(watched.station, Known::WorkedOut)
            .map_err(Refusal::from)
            .and_then(|who| bring_file(app, who, arrived))
    } else {
        take_bytes(app, watched, &bytes)
    };
    match taken {
        Ok(Some(line)) => Some(format!("{name}: {line}")),
        Ok(None) => None,
        Err(refusal) => Some(format!("{name}: {refusal}")),
    }
}

fn take_bytes(app: &App, watched: &Watched, bytes: &[u8]) -> Result<Option<String>, Refusal> {
    // A stick that is put back brings every file again: most are known, and nothing is written.
    if !app.read(|view| view.taken(record_hash(bytes)))?.is_empty() {
        return Ok(None);
    }
    let who = Who::program(watched.station, Known::Measured)?;
    let mut taken = None;
    app.act(who, |view, draft| {
        let arrived = Arrived { bytes, way: Way::Folder, machine: watched.machine, run: None };
        taken = Some(take(view, draft, arrived)?);
        Ok(())
    })?;
    Ok(taken.filter(|taken| !taken.known_before).map(|taken| {
        let claimed = taken.cycles.iter().flatten().count();
        format!("taken in; {claimed} of {} cycles belong to a run", taken.cycles.len())
    }))
}

/// Watches until the program ends.
pub async fn watch(app: App, watched: Watched) {
    let mut state = Watch::default();
    loop {
        let watched = watched.clone();
        let polled = app
            .look(move |app| {
                let said = state.poll(app, &watched, clock::now());
                (state, said)
            })
            .await;
        match polled {
            Ok((next, said)) => {
                state = next;
                said.iter().for_each(|line| eprintln!("{line}"));
            }
            Err(error) => {
                eprintln!("watching the folder failed once ({error}); it goes on from the start");
                state = Watch::default();
            }
        }
        tokio::time::sleep(PAUSE).await;
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)] // tests may stop at once
    use super::*;
    use crate::chance;
    use logbook::book::{Book, Opening};
    use logbook::fact::{BookKind, Stamp};

    fn app(folder: &Path) -> App {
        let at = Instant::from_millis(0);
        let stamp = Stamp {
            act: chance::id().unwrap(),
            happened: at,
            written: at,
            station: chance::id().unwrap(),
            sign: None,
            known: Known::Setting,
        };
        let opening = Opening {
            salon: chance::id().unwrap(),
            zone: "Etc/UTC".to_owned(),
            book: BookKind::Salon,
            stamp,
        };
        let book = Book::create(folder, opening).unwrap();
        App::new(book, folder.to_owned())
    }

    /// Seconds after the first look, and how many records the book has then.
    #[test]
    fn a_file_is_taken_in_when_it_has_been_still_for_ten_seconds() {
        let home = tempfile::tempdir().unwrap();
        let stick = home.path().join("stick");
        let app = app(home.path());
        let watched =
            Watched { folder: stick.join("deep"), machine: None, station: chance::id().unwrap() };
        let mut watch = Watch::default();
        let mut kept = |second: i64| {
            watch.poll(&app, &watched, Instant::from_millis(second * 1_000));
            app.read(|view| view.taken_unclaimed()).unwrap().len()
        };
        assert_eq!(kept(0), 0, "the stick is away");
        std::fs::create_dir_all(&watched.folder).unwrap();
        let file = watched.folder.join("a.csv");
        let text = include_str!("../../demo/good_a.csv");
        let half = &text[..text.len() / 2];
        std::fs::write(&file, half).unwrap();
        assert_eq!(kept(1), 0);
        assert_eq!(kept(10), 0, "nine seconds are not ten");
        std::fs::write(&file, text).unwrap();
        assert_eq!(kept(12), 0, "it has just grown");
        assert_eq!(kept(22), 1);
        assert_eq!(kept(40), 1, "the same file once");
        std::fs::write(watched.folder.join(".hidden"), half).unwrap();
        assert_eq!(kept(60), 1);
        assert_eq!(kept(80), 1);
    }
    /// A calendar beside the records becomes visits, not a record; put there again it says nothing.
    #[test]
    fn a_calendar_in_the_folder_becomes_visits() {
        let home = tempfile::tempdir().unwrap();
        let folder = home.path().join("share");
        std::fs::create_dir_all(&folder).unwrap();
        let app = app(home.path());
        let watched = Watched { folder, machine: None, station: chance::id().unwrap() };
        let now = clock::now();
        let tomorrow = clock::civil(now, &jiff::tz::TimeZone::UTC).date().tomorrow().unwrap();
        let text = format!(
            "BEGIN:VCALENDAR\nBEGIN:VEVENT\nUID:1\nSUMMARY:Gel Zuzana\nDTSTART:{}T100000Z\n\
             END:VEVENT\nEND:VCALENDAR\n",
            tomorrow.strftime("%Y%m%d")
        );
        let file = watched.folder.join("week.ics");
        let mut watch = Watch::default();
        let mut said = |second: i64| {
            watch.poll(&app, &watched, Instant::from_millis(second * 1_000)).join("\n")
        };
        std::fs::write(&file, &text).unwrap();
        assert_eq!(said(1), "");
        let line = said(11);
        assert!(line.contains("1 visits booked") && !line.contains("Zuzana"), "{line}");
        std::fs::remove_file(&file).unwrap();
        assert_eq!(said(12), "");
        std::fs::write(&file, &text).unwrap();
        assert_eq!(said(13), "");
        assert_eq!(said(30), "", "nothing has changed");
        let day = Span::from_minutes(48 * 60);
        let visits = app.read(|view| view.appointments(now, now + day)).unwrap();
        assert_eq!((visits.len(), app.read(|view| view.taken_unclaimed()).unwrap().len()), (1, 0));
    }
}
