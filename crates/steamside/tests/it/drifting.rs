//! The judge of drift watches the log: a made-up book of a machine whose heater fades.

use super::salon::Salon;
use load::Contents;
use logbook::book::{Book, BookError};
use logbook::fact::{
    AirRemoval, Basis, Body, BookKind, DryingRan, Judged, KeyFigures, Known, Stamp, Way,
};
use logbook::{DrawerKind, Opening};
use measure::{Id, Instant, MachineId, RecordHash, RunId};
use release::verdict::Outcome;
use std::path::Path;

/// Made-up series of features with known truth: in the first the heater fades after run 180.
const FADING: &str = include_str!("../../../cycle/tests/drift/series/drift_a.csv");
const QUIET: &str = include_str!("../../../cycle/tests/drift/series/drift_none.csv");
const MACHINE: u8 = 3;

fn id<T>(kind: u8, number: u32) -> Id<T> {
    let mut bytes = [kind; 16];
    bytes[12..].copy_from_slice(&number.to_be_bytes());
    Id::from_bytes(bytes)
}

fn stamp(act: u32, happened: i64) -> Stamp {
    let happened = Instant::from_millis(happened);
    Stamp {
        act: id(1, act),
        happened,
        written: happened,
        station: id(2, 0),
        sign: None,
        known: Known::Measured,
    }
}

/// A row of the series: is it the first of its day, and its figures.
fn figures(heading: &[&str], row: &str) -> (bool, KeyFigures) {
    let cells: Vec<&str> = row.split(',').collect();
    let at = |name: &str| heading.iter().position(|column| *column == name).expect("a column");
    let thousandths = |name: &str| {
        let value: f64 = cells[at(name)].parse().expect("a number");
        Some((value * 1_000.0).round() as i64)
    };
    let figures = KeyFigures {
        preheat_ms: thousandths("preheat_s"),
        heat_up_ms: thousandths("heat_up_s"),
        held_ms: thousandths("plateau_s"),
        lowest_mc: thousandths("plateau_t_min_c"),
        highest_mc: thousandths("plateau_t_max_c"),
        deviation_mk: thousandths("satdev_mean_k"),
        pulse_depth_pa: thousandths("vac3_kpa"),
        first_pulse_ms: thousandths("vac1_s"),
        dry_vacuum_pa: thousandths("dry_vac_kpa"),
        air_in_ms: thousandths("air_in_s"),
        total_ms: thousandths("total_s"),
        ..KeyFigures::default()
    };
    (cells[at("first_of_day")] == "1", figures)
}

/// A run with a record of its own and the verdict on it.
fn write_run(book: &Book, run: u32, number: u32, (at, figures): (i64, KeyFigures)) {
    let bytes = format!("run {run}");
    let record: RecordHash = logbook::drawer::record_hash(bytes.as_bytes());
    let this: RunId = id(4, run);
    let written = book.act::<BookError>(stamp(10 + run, at), |_, draft| {
        draft.fact(Body::RunStarted {
            run: this,
            machine: id(MACHINE, 0),
            number,
            programme: None,
            contents: Contents::Pouched,
            pouches: Vec::new(),
        });
        draft.fact(Body::RunUnloaded { run: this });
        let kept = draft.put(DrawerKind::Record, bytes.as_bytes())?;
        let (bytes, way) = (bytes.len() as u64, Way::Folder);
        draft.fact(Body::RecordTaken { record, kept, bytes, way, continues: None, cycles: 1 });
        draft.fact(Body::RecordClaimed { record, cycle: 0, run: this });
        draft.fact(Body::Judged(Box::new(Judged {
            run: Some(this),
            basis: Basis::Record { record, cycle: 0 },
            judge: "1".to_owned(),
            limits: Vec::new(),
            contents: Contents::Pouched,
            outcome: Outcome::Lethal,
            proven_for: vec![Contents::Pouched],
            conforming: None,
            drying: DryingRan::AsSet,
            reasons: Vec::new(),
            figures,
            start_clock: None,
        })));
        Ok(())
    });
    written.expect("it is written");
}

/// A book with the runs of a series, four hours apart; how many.
fn made_up_book(folder: &Path, series: &str) -> u32 {
    const BEGIN: i64 = 1_738_569_600_000; // 3 February 2025, 08:00 UTC
    let book = Book::create(
        folder,
        Opening {
            salon: id(9, 0),
            zone: "Etc/UTC".to_owned(),
            book: BookKind::Practice,
            stamp: stamp(1, BEGIN),
        },
    )
    .expect("a new book");
    let machine = Body::MachineAdded {
        machine: id(MACHINE, 0),
        number: 1,
        air_removal: AirRemoval::Vacuum,
        writes_files: true,
        most_pouches: None,
    };
    let added = book.act::<BookError>(stamp(2, BEGIN), |_, draft| {
        draft.fact(machine);
        Ok(())
    });
    added.expect("it is written");
    let mut lines = series.lines();
    let heading: Vec<&str> = lines.next().expect("a heading").split(',').collect();
    let (mut run, mut number) = (0, 0);
    for line in lines {
        let (first, figures) = figures(&heading, line);
        number = if first { 1 } else { number + 1 };
        run += 1;
        write_run(&book, run, number, (BEGIN + i64::from(run) * 4 * 3_600_000, figures));
    }
    run
}

#[test]
fn a_fading_heater_is_told_quietly_on_the_page_of_its_machine() {
    let home = tempfile::tempdir().expect("a folder");
    let runs = made_up_book(home.path(), FADING);
    let salon = Salon::serve(home.path(), &[]);
    let (status, page) = salon.get("/machine");
    assert_eq!(status, 200);
    assert!(page.contains("Time to heat up: +"), "the figure that changed");
    assert!(page.contains("points to the heater"), "the part that it points to");
    assert!(page.contains("ask the engineer"));
    assert!(!page.contains("DO NOT USE"), "never loud");
    let book = Book::open(home.path()).expect("it opens beside the program");
    let machine: MachineId = id(MACHINE, 0);
    let judged =
        |most| book.read::<_, BookError>(|view| view.judged_runs(machine, most)).expect("the runs");
    let all = judged(10_000);
    assert_eq!(all.len(), runs as usize);
    assert!(all[0].first_of_day && all[0].number == 1 && !all[1].first_of_day);
    // The window moves in steps of a hundred.
    assert_eq!(judged(all.len() - 1).len(), all.len() - 100);
}

#[test]
fn a_machine_that_stays_as_it_is_has_no_such_line() {
    let home = tempfile::tempdir().expect("a folder");
    made_up_book(home.path(), QUIET);
    let (status, page) = Salon::serve(home.path(), &[]).get("/machine");
    assert_eq!(status, 200);
    assert!(!page.contains("Changing from run to run"));
}
