//! What is looked after, as the book answers it: jars, basins, chores, stock.

use crate::common::{at, id, new_book, packed, stamp};
use load::ChoreWord;
use logbook::fact::{
    About, AirRemoval, BasinAfter, Body, ChoreRule, DayPart, Found, LeftOut, Stamp, ThingKind,
    Upkeep, UsedBy,
};
use logbook::typical::chores::ChoreSource;
use logbook::view::{Chore, Thing};
use logbook::{Book, BookError};

/// An act `minute` minutes after the morning, written at that moment.
fn says(book: &Book, act: u32, minute: i64, said: Upkeep) {
    writes(book, Stamp { act: id(act), ..stamp(act, minute) }, Body::Upkeep(Box::new(said)));
}

fn writes(book: &Book, stamp: Stamp, body: Body) {
    book.act(stamp, |_, draft| -> Result<(), BookError> {
        draft.fact(body);
        Ok(())
    })
    .unwrap();
}

fn undo(book: &Book, act: u32, what: u32) {
    writes(book, stamp(act, 900), Body::Undone { act: id(what) });
}

fn book(what: ThingKind) -> (tempfile::TempDir, Book, Thing) {
    let (folder, book) = new_book();
    let machine = Body::MachineAdded {
        machine: id(1),
        number: 1,
        air_removal: AirRemoval::Vacuum,
        writes_files: false,
        most_pouches: None,
    };
    writes(&book, stamp(1, 0), machine);
    says(&book, 2, 0, Upkeep::ThingAdded { thing: id(5), what, number: 1 });
    let thing = book.read(|view| view.things()).unwrap().remove(0);
    (folder, book, thing)
}

#[test]
fn a_jar_is_as_old_as_its_mix_and_counts_from_what_went_in_last() {
    let (_folder, book, thing) = book(ThingKind::Jar);
    let jar = || {
        let jar = book.read(|view| view.jar(thing)).unwrap();
        let since = |stamp: Option<Stamp>| stamp.map(|stamp| stamp.happened);
        (since(jar.mixed), since(jar.last_in), jar.label.map(|label| label.contact_min))
    };
    assert_eq!(jar(), (None, None, None));
    says(&book, 3, 1, Upkeep::JarSet { jar: id(5), contact_min: 8, lasts_h: None, label: None });
    says(&book, 4, 10, Upkeep::JarMixed { jar: id(5) });
    says(&book, 5, 20, Upkeep::JarIn { jar: id(5) });
    says(&book, 6, 30, Upkeep::JarIn { jar: id(5) });
    assert_eq!(jar(), (Some(at(10)), Some(at(30)), Some(8)));
    undo(&book, 7, 6);
    assert_eq!(jar(), (Some(at(10)), Some(at(20)), Some(8)), "that tap was a slip");
    // Written later: what went into the mix before does not count for the new one.
    says(&book, 8, 60, Upkeep::JarMixed { jar: id(5) });
    says(&book, 9, 40, Upkeep::JarIn { jar: id(5) });
    assert_eq!(jar(), (Some(at(60)), None, Some(8)));
    says(&book, 10, 70, Upkeep::JarEmptied { jar: id(5) });
    assert_eq!(jar(), (None, None, Some(8)));
    says(&book, 11, 80, Upkeep::ThingEnded { thing: id(5) });
    assert_eq!(book.read(|view| view.things()).unwrap(), []);
    assert_eq!(book.read(|view| view.things_ever()).unwrap().len(), 1, "the log names it still");
}

#[test]
fn a_basin_is_wet_until_it_is_drained() {
    let (_folder, book, thing) = book(ThingKind::FootBasin);
    let basin = || book.read(|view| view.basin(thing)).unwrap();
    assert_eq!((basin().wet, basin().wet_min, basin().not_used.len()), (None, None, 0));
    let wet = |after| Upkeep::BasinWet { basin: id(5), after };
    says(&book, 3, 10, wet(BasinAfter::Week));
    says(&book, 4, 21, Upkeep::BasinDrained { basin: id(5) });
    assert_eq!(basin().drained.map(|stamp| stamp.happened), Some(at(21)));
    says(&book, 5, 30, wet(BasinAfter::Client));
    let now = basin();
    assert_eq!(
        now.wet.map(|(stamp, after)| (stamp.happened, after)),
        Some((at(30), BasinAfter::Client))
    );
    assert_eq!(now.drained, None);
    assert_eq!(now.week.map(|stamp| stamp.happened), Some(at(10)));
    assert_eq!(now.day_end, now.week, "the weekly cleaning is one at the day's end as well");
    assert_eq!(book.read(|view| view.basins_cleaned(at(0), at(30))).unwrap(), 1);
    undo(&book, 6, 5);
    assert_eq!(basin().drained.map(|stamp| stamp.happened), Some(at(21)));
    says(&book, 7, 40, Upkeep::NotUsed { thing: id(5) });
    assert_eq!(basin().not_used, [at(40)]);
}

fn rule(chore: &str, about: About, days: Option<u32>, runs: Option<u32>, stops: bool) -> Upkeep {
    Upkeep::ChoreSet(ChoreRule {
        chore: chore.parse().unwrap(),
        about,
        part: DayPart::AnyTime,
        days,
        runs,
        minutes: 1,
        stops_work: stops,
        manual_page: None,
    })
}

fn found(book: &Book, word: &str, about: About) -> Option<Chore> {
    let chores = book.read(|view| view.chores()).unwrap();
    chores.into_iter().find(|row| row.rule.chore.word() == word && row.rule.about == about)
}

#[test]
fn the_salons_own_rule_outranks_the_typical_one_and_can_be_taken_back() {
    let (_folder, book, _) = book(ThingKind::Ultrasonic);
    let seal = || found(&book, "door seal", About::Machine(id(1)));
    assert_eq!(seal().unwrap().source, Some(ChoreSource::CommonPractice));
    says(&book, 3, 5, rule("door seal", About::Machine(id(1)), Some(3), None, false));
    let own = seal().unwrap();
    assert_eq!((own.rule.days, own.source, own.since), (Some(3), None, at(5)));
    says(&book, 4, 6, rule("door seal", About::Machine(id(1)), Some(9), None, false));
    assert_eq!(seal().unwrap().since, at(5), "saying it again does not begin anew");
    let chore: ChoreWord = "door seal".parse().unwrap();
    says(&book, 5, 7, Upkeep::ChoreEnded { chore, about: About::Machine(id(1)) });
    assert_eq!(seal(), None);
    for act in [5, 4, 3] {
        undo(&book, 20 + act, act);
    }
    assert_eq!(seal().unwrap().said, None, "typical again");
    says(&book, 6, 8, rule("hót bụi", About::Salon, Some(2), None, false));
    assert_eq!(found(&book, "hót bụi", About::Salon).unwrap().rule.days, Some(2));
    let bath = found(&book, "foil test", About::Thing(id(5))).unwrap();
    assert_eq!(bath.source, Some(ChoreSource::FoilTest));
    says(&book, 7, 9, Upkeep::ThingEnded { thing: id(5) });
    assert_eq!(found(&book, "foil test", About::Thing(id(5))), None, "nothing to look after");
}

fn start(book: &Book, run: u32, minute: i64) {
    let started = Body::RunStarted {
        run: id(run),
        machine: id(1),
        number: run,
        programme: None,
        contents: load::Contents::Pouched,
        pouches: Vec::new(),
    };
    writes(book, stamp(500 + run, minute), started);
    writes(book, stamp(600 + run, minute + 1), Body::RunUnloaded { run: id(run) });
}

#[test]
fn runs_count_from_the_last_time_that_was_found_fine() {
    let (_folder, book, _) = book(ThingKind::Jar);
    let about = About::Machine(id(1));
    says(&book, 3, 5, rule("bacteria filter", about, None, Some(4), true));
    let filter = || found(&book, "bacteria filter", about).unwrap();
    let done = |found| Upkeep::ChoreDone {
        chore: "bacteria filter".parse().unwrap(),
        about,
        found,
        note: None,
    };
    for run in 1..=3 {
        start(&book, run, 10 * i64::from(run));
    }
    assert_eq!(filter().runs, 3);
    says(&book, 4, 25, done(Found::Fine));
    assert_eq!((filter().runs, filter().counts), (1, Some(at(25))));
    // Found torn: it was looked at, but it is not done.
    says(&book, 5, 45, done(Found::NotFine));
    let torn = filter();
    assert_eq!((torn.runs, torn.counts), (1, Some(at(25))));
    assert_eq!(torn.last.map(|last| last.found), Some(Found::NotFine));
    let stops = book.read(|view| view.chores_that_stop(id(1))).unwrap();
    assert_eq!(stops, [filter()]);
    assert_eq!(book.read(|view| view.chores_that_stop(id(2))).unwrap(), []);
    undo(&book, 6, 4);
    assert_eq!(filter().runs, 3);
    let left =
        Upkeep::ChoreLeft { chore: "water level".parse().unwrap(), about, why: LeftOut::NotUsed };
    says(&book, 7, 50, left);
    let water = found(&book, "water level", about).unwrap();
    assert_eq!((water.left, water.counts), (vec![(at(50), LeftOut::NotUsed)], None));
}

#[test]
fn stock_is_what_was_counted_and_bought_less_what_the_book_used() {
    let (_folder, book, _) = book(ThingKind::Jar);
    let item = || "pouches".parse().unwrap();
    let pouches = || book.read(|view| view.stock()).unwrap().remove(0);
    says(&book, 3, 1, Upkeep::StockSet { item: item(), used_by: UsedBy::Pouch, least: 9 });
    assert_eq!(pouches().left(), None, "nobody has counted");
    assert!(!pouches().is_low());
    writes(&book, stamp(4, 2), Body::Packed { pouches: vec![packed(1)] });
    says(&book, 5, 3, Upkeep::StockCounted { item: item(), count: 10 });
    assert_eq!(pouches().left(), Some(10), "the one before is in the count");
    writes(&book, stamp(6, 4), Body::Packed { pouches: vec![packed(2), packed(3)] });
    assert_eq!((pouches().left(), pouches().is_low()), (Some(8), true));
    says(&book, 7, 5, Upkeep::StockBought { item: item(), count: 50, lot: None });
    assert_eq!((pouches().left(), pouches().is_low()), (Some(58), false));
    says(&book, 8, 6, Upkeep::StockEnded { item: item() });
    assert_eq!(book.read(|view| view.stock()).unwrap(), []);
}

/// The last spore test that was placed is the last time of its chore.
#[test]
fn a_spore_test_is_done_when_it_is_placed() {
    let (_folder, book, _) = book(ThingKind::Jar);
    let chore = || found(&book, "spore test", About::Machine(id(1))).unwrap();
    assert_eq!((chore().counts, chore().source), (None, Some(ChoreSource::DentalGuideline)));
    let placed =
        Upkeep::SporePlaced { test: id(1), machine: id(1), run: None, control: true, lot: None };
    says(&book, 3, 30, placed);
    assert_eq!(chore().counts, Some(at(30)));
    book.rebuild().unwrap();
    assert_eq!(chore().counts, Some(at(30)));
}
