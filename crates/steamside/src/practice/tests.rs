//! Each card played right and played wrong, through the acts that a tap is made of.

#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)] // tests may stop at once
use super::cards::Card;
use super::checks::DISPLAY;
use super::deal::{self, Played};
use super::machine::{LENGTH, write_due};
use super::*;
use crate::acts::{self, Look, PracticeClock};
use load::SetState;
use measure::{ActId, Celsius, Kilopascal, PersonId, PouchId, RunId};

/// A practice book, who learns, and the card that was dealt.
struct Lesson {
    app: App,
    station: StationId,
    learner: PersonId,
    dealt: ActId,
    _folder: tempfile::TempDir,
}

impl Lesson {
    fn of(card: Card) -> Self {
        let folder = tempfile::tempdir().unwrap();
        let app = open(&folder.path().join("practice"), false).unwrap();
        let learner = app.read(|view| view.people()).unwrap()[1].person;
        let (station, dealt) = (chance::id().unwrap(), chance::id().unwrap());
        let lesson = Self { app, station, learner, dealt, _folder: folder };
        let who = Who { act: dealt, ..lesson.who() };
        deal::deal(&lesson.app, who, card, Some(learner)).unwrap();
        // Sent twice it is dealt once.
        let head = lesson.app.read(|view| view.last_seq()).unwrap();
        deal::deal(&lesson.app, who, card, Some(learner)).unwrap();
        assert_eq!(lesson.app.read(|view| view.last_seq()).unwrap(), head);
        lesson
    }

    fn who(&self) -> Who {
        Who {
            act: chance::id().unwrap(),
            station: self.station,
            sign: Some(self.learner),
            happened: None,
            known: Known::Tapped,
        }
    }

    fn act(&self, decide: impl FnOnce(&View<'_>, &mut Draft) -> Result<(), Refusal>) {
        self.app.act(self.who(), decide).unwrap();
    }

    fn refused(&self, decide: impl FnOnce(&View<'_>, &mut Draft) -> Result<(), Refusal>) {
        assert!(self.app.act(self.who(), decide).is_err());
    }

    /// Puts the clock on.
    fn later(&self, minutes: i64) {
        let set = PracticeClock { real: clock::now(), times: None, later_min: minutes };
        self.act(|view, draft| acts::practice_clock(view, draft, set));
    }

    fn played(&self) -> Played {
        self.app.read(|view| deal::find(view, self.dealt)).unwrap().unwrap()
    }

    fn odd(&self) -> Vec<PouchId> {
        self.played().odd.iter().map(|(pouch, _)| *pouch).collect()
    }

    /// The run that the card is about: the one that began last.
    fn run(&self) -> RunId {
        let machine = self.app.read(|view| view.machines()).unwrap()[0].clone();
        let last = |programme| {
            let runs = self.app.read(|view| view.last_runs(machine.machine, Some(programme), 1));
            runs.unwrap().first().map(|run| run.run)
        };
        machine.running.or_else(|| last("fast")).or_else(|| last("middle")).unwrap()
    }

    fn pouches(&self) -> Vec<PouchId> {
        let rows = self.app.read(|view| view.pouches_of_run(self.run())).unwrap();
        rows.iter().map(|row| row.pouch).collect()
    }

    fn look(&self, marks: &[PouchId], dry: [&[PouchId]; 3]) {
        let waiting = self.app.read(|view| view.pouches_of_run(self.run())).unwrap();
        let waiting = waiting.iter().filter(|row| row.state == SetState::ToCheck).count() as u32;
        let look = Look {
            run: self.run(),
            marks_not_turned: Some(marks.to_vec()),
            inner_mark: Some(true),
            dry_whole: Some(dry.map(<[PouchId]>::to_vec)),
            count: dry.iter().all(|list| list.is_empty()).then_some(waiting),
            seen_to: None,
            kept: false,
            by: Some(self.learner),
            now: self.app.now(),
        };
        self.act(|view, draft| acts::look(view, draft, look));
    }

    fn apart(&self, pouches: Vec<PouchId>) {
        self.act(|view, draft| acts::apart(view, draft, pouches));
    }

    fn open_at(&self, pouch: PouchId, chair: u32) -> Result<(), Refusal> {
        let what = acts::What::Pouch(pouch);
        let open =
            acts::Open { what, chair: Some(chair), opened: None, kept: false, now: self.app.now() };
        self.app.act(self.who(), |view, draft| acts::open(view, draft, open)).map(drop)
    }

    fn aside(&self, run: Option<RunId>, pouches: Vec<PouchId>) {
        let why = logbook::fact::StopReason::Interrupted;
        self.act(|view, draft| acts::set_aside(view, draft, acts::SetAside { run, pouches, why }));
    }

    /// Ends the card: the keys of the steps that were wrong.
    fn wrong(&self) -> Vec<&'static str> {
        let before = self.played().steps;
        self.act(|view, draft| acts::end_card(view, draft, self.dealt));
        let played = self.played();
        assert_eq!(played.steps, before, "what is written after the end changes nothing");
        let end = played.dealt.ended.unwrap();
        let wrong: Vec<_> =
            played.steps.iter().filter(|step| !step.right).map(|step| step.key).collect();
        assert_eq!(end.asked as usize, before.len());
        assert_eq!((end.asked - end.right) as usize, wrong.len());
        self.refused(|view, draft| acts::end_card(view, draft, self.dealt));
        wrong
    }
}

#[test]
fn a_good_load() {
    let right = Lesson::of(Card::GoodLoad);
    let kind = || "manicure".parse::<load::SetKind>().unwrap();
    let bagged = |lesson: &Lesson, programme: &str| {
        lesson.act(|view, draft| acts::wash(view, draft, vec![(kind(), 2)]));
        let pack = acts::Pack { kind: kind(), count: 2, pouched: true, hollow: false };
        lesson.act(|view, draft| acts::pack(view, draft, pack));
        let rows = lesson.app.read(|view| view.pouches_in(&[SetState::Bagged])).unwrap();
        let start = acts::Start {
            machine: lesson.app.read(|view| view.machines()).unwrap()[0].machine,
            programme: Some(programme.to_owned()),
            pouches: rows.iter().map(|row| row.pouch).collect(),
            over: programme == "fast",
            day: (lesson.app.now(), lesson.app.now()),
            at: lesson.app.now(),
            copied: false,
        };
        lesson.act(|view, draft| acts::start(view, draft, start));
    };
    let unloaded = |lesson: &Lesson, minutes: i64| {
        assert_eq!(write_due(&lesson.app, lesson.station).unwrap(), 0, "its time has not come");
        lesson.later(minutes);
        lesson.act(|view, draft| acts::unload(view, draft, lesson.run()));
        assert_eq!(write_due(&lesson.app, lesson.station).unwrap(), 1);
        assert_eq!(write_due(&lesson.app, lesson.station).unwrap(), 0, "once");
        lesson.look(&[], [&[], &[], &[]]);
    };
    bagged(&right, "middle");
    unloaded(&right, LENGTH.minutes() + 1);
    assert_eq!(right.wrong(), [""; 0]);
    let wrong = Lesson::of(Card::GoodLoad);
    bagged(&wrong, "fast");
    unloaded(&wrong, 9);
    assert_eq!(wrong.wrong(), ["step-drying", "step-not-early", "step-released"]);
    assert_eq!(Lesson::of(Card::GoodLoad).wrong().len(), 6, "nothing was done");
}

#[test]
fn a_wet_pouch() {
    let right = Lesson::of(Card::Wet);
    right.look(&[], [&right.odd(), &[], &[]]);
    right.look(&[], [&[], &[], &[]]);
    right.apart(right.odd());
    assert_eq!(right.wrong(), [""; 0]);
    let wrong = Lesson::of(Card::Wet);
    wrong.look(&[], [&[], &[], &[]]);
    // Put right later: it was on the shelf.
    wrong.aside(None, wrong.odd());
    wrong.apart(wrong.odd());
    assert_eq!(wrong.wrong(), ["step-wet-said", "step-others-again", "step-not-used"]);
}

#[test]
fn two_wet_pouches() {
    let right = Lesson::of(Card::TwoWet);
    right.look(&[], [&right.odd(), &[], &[]]);
    right.apart(right.pouches());
    assert_eq!(right.wrong(), [""; 0]);
    let wrong = Lesson::of(Card::TwoWet);
    wrong.look(&[], [&wrong.odd()[..1], &[], &[]]);
    wrong.look(&[], [&[], &[], &[]]);
    wrong.apart(wrong.odd()[..1].to_vec());
    assert_eq!(wrong.wrong(), ["step-two-wet-said", "step-none-released", "step-all-apart"]);
}

#[test]
fn a_mark_that_did_not_turn() {
    let right = Lesson::of(Card::Mark);
    right.look(&right.odd(), [&[], &[], &[]]);
    right.apart(right.pouches());
    assert_eq!(right.wrong(), [""; 0]);
    let wrong = Lesson::of(Card::Mark);
    wrong.look(&wrong.odd(), [&[], &[], &[]]);
    wrong.apart(wrong.odd());
    assert_eq!(wrong.wrong(), ["step-all-apart"]);
}

#[test]
fn torn_and_dropped() {
    let right = Lesson::of(Card::Torn);
    let odd = right.odd();
    right.look(&[], [&[], &odd[..1], &odd[1..]]);
    right.apart(odd);
    assert_eq!(right.wrong(), [""; 0]);
    let wrong = Lesson::of(Card::Torn);
    wrong.look(&[], [&[], &wrong.odd()[..1], &[]]);
    assert_eq!(wrong.wrong(), ["step-torn-said", "step-not-used", "step-apart"]);
}

#[test]
fn a_power_cut() {
    let right = Lesson::of(Card::Power);
    right.act(|view, draft| acts::unload(view, draft, right.run()));
    right.aside(Some(right.run()), Vec::new());
    right.apart(right.pouches());
    assert_eq!(right.wrong(), [""; 0]);
    let wrong = Lesson::of(Card::Power);
    wrong.act(|view, draft| acts::unload(view, draft, wrong.run()));
    wrong.apart(wrong.pouches()[..2].to_vec());
    assert_eq!(wrong.wrong(), ["step-power-aside", "step-none-released", "step-all-apart"]);
}

#[test]
fn a_failed_spore_test() {
    let test = |lesson: &Lesson| lesson.app.read(|view| view.spore_tests(1)).unwrap()[0].test;
    let read = |lesson: &Lesson, grew: bool| {
        let (test, now) = (test(lesson), lesson.app.now());
        let read = acts::ReadTest { test, grew, control_grew: Some(true), now };
        lesson.act(|view, draft| acts::read_test(view, draft, read));
    };
    let right = Lesson::of(Card::Spore);
    read(&right, true);
    assert_eq!(right.wrong(), [""; 0]);
    let wrong = Lesson::of(Card::Spore);
    read(&wrong, false);
    wrong.open_at(wrong.pouches()[0], 1).unwrap();
    assert_eq!(
        wrong.wrong(),
        [
            "step-spore-read",
            "step-machine-out",
            "step-shelf-frozen",
            "step-nothing-opened",
            "step-stays-out"
        ]
    );
}

#[test]
fn the_wrong_pouch_at_the_chair() {
    let right = Lesson::of(Card::WrongPouch);
    let odd = right.odd()[0];
    assert!(matches!(right.open_at(odd, 3), Err(Refusal::Stop(_))));
    let other = right.pouches().into_iter().find(|pouch| *pouch != odd).unwrap();
    right.open_at(other, 3).unwrap();
    assert_eq!(right.wrong(), [""; 0]);
    let wrong = Lesson::of(Card::WrongPouch);
    let kind = "manicure".parse().unwrap();
    wrong.act(|_, draft| {
        let visit = chance::id()?;
        let said = Counter::OpenedNoCode { kind, visit, chair: Some(3) };
        draft.fact(Body::Counter(Box::new(said)));
        Ok(())
    });
    assert_eq!(wrong.wrong(), ["step-another-opened", "step-code-read"]);
}

#[test]
fn the_fast_cycle() {
    let right = Lesson::of(Card::Fast);
    right.look(&[], [&[], &[], &[]]);
    right.open_at(right.odd()[0], 2).unwrap();
    assert_eq!(right.wrong(), [""; 0]);
    let wrong = Lesson::of(Card::Fast);
    wrong.look(&[], [&[], &[], &[]]);
    wrong.later(61);
    assert!(matches!(wrong.open_at(wrong.odd()[0], 2), Err(Refusal::Stop(_))), "its time is up");
    assert_eq!(wrong.wrong(), ["step-in-time"]);
}

#[test]
fn a_record_that_cannot_tell() {
    let read = |lesson: &Lesson, held_s: f64| {
        let read = acts::ReadOff {
            run: lesson.run(),
            lowest: Celsius::new(DISPLAY.0 as f64 / 1_000.0).unwrap(),
            held_s,
            pressure: Some(Kilopascal::new(DISPLAY.2.into()).unwrap()),
        };
        lesson.act(|view, draft| acts::read_off(view, draft, read));
    };
    let right = Lesson::of(Card::CannotTell);
    read(&right, DISPLAY.1 as f64);
    right.look(&[], [&[], &[], &[]]);
    assert_eq!(right.wrong(), [""; 0]);
    let again = Lesson::of(Card::CannotTell);
    again.aside(Some(again.run()), Vec::new());
    again.apart(again.pouches());
    assert_eq!(again.wrong(), [""; 0], "run again is right as well");
    let wrong = Lesson::of(Card::CannotTell);
    read(&wrong, 600.0);
    wrong.look(&[], [&[], &[], &[]]);
    assert_eq!(wrong.wrong(), ["step-read-or-again"]);
    let looks = Lesson::of(Card::CannotTell);
    looks.look(&[], [&[], &[], &[]]);
    assert_eq!(looks.wrong(), ["step-read-or-again", "step-not-on-looks"]);
}

#[test]
fn too_many_pouches() {
    let start = |lesson: &Lesson, many: usize, programme: &str| {
        let rows = lesson.app.read(|view| view.pouches_in(&[SetState::Bagged])).unwrap();
        assert_eq!(rows.len(), 14);
        let start = acts::Start {
            machine: lesson.app.read(|view| view.machines()).unwrap()[0].machine,
            programme: Some(programme.to_owned()),
            pouches: rows.iter().take(many).map(|row| row.pouch).collect(),
            over: many > 10,
            day: (lesson.app.now(), lesson.app.now()),
            at: lesson.app.now(),
            copied: false,
        };
        lesson.act(|view, draft| acts::start(view, draft, start));
    };
    let right = Lesson::of(Card::TooMany);
    start(&right, 6, "middle");
    assert_eq!(right.wrong(), [""; 0]);
    let wrong = Lesson::of(Card::TooMany);
    start(&wrong, 14, "middle");
    assert_eq!(wrong.wrong(), ["step-tested-most"]);
}

#[test]
fn a_foot_basin_after_a_client() {
    let said = |lesson: &Lesson, said: Upkeep| {
        lesson.act(|_, draft| {
            draft.fact(Body::Upkeep(Box::new(said)));
            Ok(())
        });
    };
    let check = |minutes: i64, wrong: &[&str]| {
        let lesson = Lesson::of(Card::FootBath);
        let (basin, _) = lesson.app.read(|view| view.first_basin()).unwrap().unwrap();
        let after = logbook::fact::BasinAfter::Client;
        said(&lesson, Upkeep::BasinWet { basin, after });
        lesson.later(minutes);
        said(&lesson, Upkeep::BasinDrained { basin });
        assert_eq!(lesson.wrong(), wrong);
    };
    check(10, &[]);
    check(9, &["step-bath-time"]);
}

/// A sign of somebody else is not the learner's work.
#[test]
fn what_another_did_does_not_count() {
    let lesson = Lesson::of(Card::Mark);
    let other = lesson.app.read(|view| view.people()).unwrap()[2].person;
    let look = Look {
        run: lesson.run(),
        marks_not_turned: Some(lesson.odd()),
        inner_mark: None,
        dry_whole: Some([Vec::new(), Vec::new(), Vec::new()]),
        count: None,
        seen_to: None,
        kept: false,
        by: Some(other),
        now: lesson.app.now(),
    };
    let who = Who { sign: Some(other), ..lesson.who() };
    lesson.app.act(who, |view, draft| acts::look(view, draft, look)).unwrap();
    assert_eq!(lesson.wrong().len(), 3);
}

#[test]
fn a_pace_never_jumps_and_a_salon_has_none() {
    let lesson = Lesson::of(Card::FootBath);
    let set = |times| PracticeClock { real: clock::now(), times: Some(times), later_min: 0 };
    let before = lesson.app.now();
    lesson.act(|view, draft| acts::practice_clock(view, draft, set(30)));
    let after = lesson.app.now();
    assert!(after >= before && (after - before).minutes() < 10, "{before:?} {after:?}");
    assert_eq!(lesson.app.pace().times(), 30);
    for times in [0, 31] {
        lesson.refused(|view, draft| acts::practice_clock(view, draft, set(times)));
    }
    // Closed and opened again it goes on where the book ends, and not thirty times as fast.
    let folder = (*lesson.app.folder).clone();
    let again = open(&folder, false).unwrap();
    assert_eq!(again.pace().times(), 1);
    let last = again.read(|view| view.log(None, 1)).unwrap()[0].fact.stamp.written;
    assert!((again.now() - last).minutes() < 10);
    let home = tempfile::tempdir().unwrap();
    let stamp = stamp(lesson.station, before).unwrap();
    let zone = "Etc/UTC".to_owned();
    let opening = Opening { salon: chance::id().unwrap(), zone, book: BookKind::Salon, stamp };
    let book = Book::create(home.path(), opening).unwrap();
    let salon = App::new(book, home.path().to_owned()).at_its_pace().unwrap();
    let refused = salon.act(lesson.who(), |view, draft| acts::practice_clock(view, draft, set(10)));
    assert!(refused.is_err());
    assert!(deal::deal(&salon, lesson.who(), Card::Wet, None).is_err());
    // A salon's own book is never taken for one, marked or not.
    assert!(matches!(open(home.path(), true), Err(NoPractice::SomethingElse)));
    std::fs::write(home.path().join(MARK), MARK_TEXT).unwrap();
    assert!(matches!(open(home.path(), true), Err(NoPractice::SomethingElse)));
    assert!(Book::exists(home.path()));
}
