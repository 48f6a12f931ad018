//! Measures a long book through its own face: `cargo run --release -p logbook --example long_book
//! -- [FACTS] [FOLDER]`, by default 1,000,000 facts in a folder of its own. Figures and what was
//! decided on them stand in `docs/performance.md`.

use load::{Contents, ShelfCode};
use logbook::fact::{
    AirRemoval, Basis, Body, BookKind, DryingRan, Judged, KeyFigures, Known, PackedPouch, Reason,
    Stamp,
};
use logbook::{Book, BookError, Opening, verify};
use measure::{Id, Instant, PouchId, Span};
use release::verdict::Outcome;
use std::error::Error;
use std::path::{Path, PathBuf};
use std::time::Instant as Clock;

/// Pouches in a run.
const POUCHES: u32 = 6;
/// From one run to the next.
const EVERY: Span = Span::from_minutes(60);
/// Runs written in one act while the long book is made.
const AT_ONCE: u32 = 100;

fn main() -> Result<(), Box<dyn Error>> {
    let mut args = std::env::args().skip(1);
    let facts: u64 = args.next().map_or(Ok(1_000_000), |text| text.parse())?;
    let own = std::env::temp_dir().join(format!("long-book-{}", std::process::id()));
    let folder = args.next().map_or(own, PathBuf::from);
    let measured = measure(&folder, facts);
    std::fs::remove_dir_all(&folder)?;
    measured
}

fn measure(folder: &Path, facts: u64) -> Result<(), Box<dyn Error>> {
    let book = Book::create(
        folder,
        Opening {
            salon: id(1, 0),
            zone: "America/Chicago".to_owned(),
            book: BookKind::Practice,
            stamp: stamp(0, moment(0)),
        },
    )?;
    let runs = timed("write it", || fill(&book, facts))?;
    println!("{runs} runs, {} MB", size(folder)? / 1_000_000);
    let acts = 1_000;
    let took = Clock::now();
    for act in 0..acts {
        book.act::<BookError>(stamp(1_000_000_000 + act, moment(runs)), |_, draft| {
            draft.fact(Body::Washed { kind: "manicure".parse().map_err(unfit)?, count: 1 });
            Ok(())
        })?;
    }
    let rate = f64::from(acts) / took.elapsed().as_secs_f64();
    println!("append one act at a time: {rate:.0} acts/s");
    drop(book);
    let book = timed("open", || Book::open(folder))?;
    for weeks in [1, 4] {
        // Six pouches in each hour: about a thousand visits in a week.
        let from = moment(runs) - Span::from_minutes(weeks * 7 * 24 * 60);
        let reached = timed("recall", || {
            book.read::<_, BookError>(|view| view.recall_input(id(2, 0), from, moment(runs)))
        })?;
        let visits: usize = reached.iter().map(|run| run.visits.len()).sum();
        println!("  {} runs, {visits} visits", reached.len());
    }
    let looks =
        timed("looks for dryness", || book.read::<_, BookError>(|view| view.dry_looks(id(2, 0))))?;
    println!("  {} runs", looks.len());
    let from = moment(runs) - Span::from_millis(2_000 * EVERY.millis());
    let shown = timed("2,000 runs as the record shows them", || {
        book.read::<_, BookError>(|view| view.shown_runs(from, moment(runs)))
    })?;
    let stops = timed("what was set aside in that time", || {
        book.read::<_, BookError>(|view| view.shown_stops(from, moment(runs)))
    })?;
    println!("  {} runs, {} stops", shown.len(), stops.len());
    let verified = timed("verify", || verify(folder))?;
    println!("  {} facts, ok: {}", verified.facts, verified.ok);
    let folded = timed("fold again", || book.rebuild())?;
    println!("  {folded} facts");
    Ok(())
}

fn timed<T, E>(what: &str, work: impl FnOnce() -> Result<T, E>) -> Result<T, E> {
    let start = Clock::now();
    let done = work()?;
    println!("{what}: {:.3} s", start.elapsed().as_secs_f64());
    Ok(done)
}

fn unfit(error: impl std::fmt::Display) -> BookError {
    BookError::Unfit(error.to_string())
}

fn size(folder: &Path) -> Result<u64, std::io::Error> {
    Ok(std::fs::metadata(folder.join(logbook::book::FILE))?.len())
}

fn id<T>(kind: u8, number: u32) -> Id<T> {
    // Ids made at a station are random; these are spread over their range as random ones are.
    let spread = u64::from(number).wrapping_mul(0x9e37_79b9_7f4a_7c15);
    let mut bytes = [kind; 16];
    bytes[..8].copy_from_slice(&spread.to_be_bytes());
    bytes[8..12].copy_from_slice(&number.to_be_bytes());
    Id::from_bytes(bytes)
}

/// When run number `run` begins.
fn moment(run: u32) -> Instant {
    Instant::from_millis(1_500_000_000_000 + i64::from(run) * EVERY.millis())
}

fn stamp(act: u32, at: Instant) -> Stamp {
    Stamp {
        act: id(3, act),
        happened: at,
        written: at,
        station: id(4, 0),
        sign: Some(id(5, 0)),
        known: Known::Tapped,
    }
}

/// Writes rounds until there are so many facts; how many runs that were.
fn fill(book: &Book, facts: u64) -> Result<u32, BookError> {
    book.act::<BookError>(stamp(1, moment(0)), |_, draft| {
        draft.fact(Body::MachineAdded {
            machine: id(2, 0),
            number: 1,
            air_removal: AirRemoval::Vacuum,
            writes_files: true,
            most_pouches: Some(POUCHES),
        });
        Ok(())
    })?;
    let mut runs = 0;
    loop {
        let first = runs;
        runs += AT_ONCE;
        let written = book.act::<BookError>(stamp(10 + first, moment(first)), |_, draft| {
            for run in first..runs {
                for body in round(run)? {
                    draft.fact(body);
                }
            }
            Ok(())
        })?;
        if written.last_seq >= facts {
            return Ok(runs);
        }
    }
}

/// What the book takes in around one run.
fn round(number: u32) -> Result<Vec<Body>, BookError> {
    let kind: load::SetKind = "manicure".parse().map_err(unfit)?;
    let run = id(6, number);
    let pouches: Vec<PouchId> = (0..POUCHES).map(|at| id(7, number * POUCHES + at)).collect();
    let packed = (0..).zip(&pouches).map(|(at, pouch)| PackedPouch {
        pouch: *pouch,
        code: ShelfCode::from_number(number * POUCHES + at),
        kind: kind.clone(),
        pouched: true,
        hollow: false,
    });
    let mut facts = vec![
        Body::Washed { kind: kind.clone(), count: POUCHES },
        Body::Packed { pouches: packed.collect() },
        Body::RunStarted {
            run,
            machine: id(2, 0),
            number: number % 24 + 1,
            programme: Some("134 pouched".to_owned()),
            contents: Contents::Pouched,
            pouches: pouches.clone(),
        },
        Body::RunUnloaded { run },
        Body::Judged(Box::new(verdict(number))),
        Body::Looked {
            run,
            marks_looked: true,
            inner_mark: Some(true),
            dry_looked: true,
            marks_not_turned: Vec::new(),
            wet: Vec::new(),
            torn: Vec::new(),
            dropped: Vec::new(),
        },
        Body::Released { run, pouches: pouches.clone(), use_until: None },
    ];
    facts.extend(pouches.into_iter().zip(0..).map(|(pouch, at)| Body::Opened {
        pouch,
        visit: id(8, number * POUCHES + at),
        chair: Some(at),
    }));
    Ok(facts)
}

fn verdict(number: u32) -> Judged {
    Judged {
        run: Some(id(6, number)),
        basis: Basis::Reading { lowest_mc: 134_200, held_s: 240, press_pa: Some(306_000) },
        judge: "1".to_owned(),
        limits: vec![("band_k".to_owned(), 3_000), ("hold_134_s".to_owned(), 180_000)],
        contents: Contents::Pouched,
        outcome: Outcome::Lethal,
        proven_for: vec![Contents::Unwrapped, Contents::Pouched],
        conforming: Some(true),
        drying: DryingRan::CannotTell,
        reasons: vec![Reason {
            code: cycle::finding::Code::HoldMet,
            at_ms: Some((373_000, 637_000)),
            lines: Some((210, 342)),
        }],
        figures: KeyFigures {
            set_mc: Some(134_000),
            needed_ms: Some(180_000),
            held_ms: Some(240_000),
            ..KeyFigures::default()
        },
        start_clock: None,
    }
}
