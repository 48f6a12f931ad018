//! What the book is made to look like when a card is dealt: the same acts as real taps, each with
//! an id that follows from the deal, so that a deal that is sent twice is made once.

use super::cards::Card;
use crate::acts::{self, Refusal};
use crate::app::App;
use crate::clock;
use crate::demo::records::Series;
use crate::intake::take::{Arrived, salon_zone, take};
use load::SetKind;
use logbook::book::Draft;
use logbook::drawer::record_hash;
use logbook::fact::{Body, Fact, Known, Stamp, Upkeep, Way};
use logbook::view::{Machine, Run, View};
use measure::{ActId, Instant, PersonId, PouchId, RunId, Span, StationId, TestId};
use sha2::{Digest, Sha256};

/// More acts than any card is made of.
const MOST: u8 = 30;
/// Minutes from the start of a staged run to its end.
const RUN_MIN: i64 = 24;

/// The id of an act of a deal, by its number.
fn staged(deal: ActId, number: u8) -> ActId {
    let mut digest = Sha256::new();
    digest.update(b"practice card");
    digest.update(deal.bytes());
    digest.update([number]);
    let mut id = [0; 16];
    id.copy_from_slice(&digest.finalize()[..16]);
    ActId::from_bytes(id)
}

/// The facts that were staged for a deal, in order.
pub fn facts(view: &View<'_>, deal: ActId) -> Result<Vec<Fact>, logbook::book::BookError> {
    let mut facts = Vec::new();
    for number in 0..MOST {
        facts.extend(view.facts_of_act(staged(deal, number))?);
    }
    Ok(facts)
}

/// The setting of a card, while it is put up.
pub struct Stage<'a> {
    app: &'a App,
    deal: ActId,
    station: StationId,
    /// Who did what was done before the card began: not the learner.
    sign: Option<PersonId>,
    now: Instant,
    next: u8,
}

/// A run that was staged.
struct Staged {
    run: Run,
    pouches: Vec<PouchId>,
}

impl<'a> Stage<'a> {
    /// A setting that ends now.
    pub fn new(app: &'a App, deal: ActId, station: StationId, sign: Option<PersonId>) -> Self {
        Self { app, deal, station, sign, now: app.now(), next: 0 }
    }

    /// Puts up what a card needs.
    pub fn put_up(&mut self, card: Card) -> Result<(), Refusal> {
        match card {
            Card::GoodLoad => self.something_used(),
            Card::Wet | Card::TwoWet | Card::Mark | Card::Torn => self.unlooked(4).map(drop),
            Card::Power => self.power_cut(),
            Card::Spore => self.failed_spores(),
            Card::WrongPouch => self.one_aside(),
            Card::Fast => self.fast(),
            Card::CannotTell => self.gap_in_record(),
            Card::TooMany => self.pack(14, 6, true).map(drop),
            Card::FootBath => Ok(()),
        }
    }

    fn ago(&self, minutes: i64) -> Instant {
        self.now - Span::from_minutes(minutes)
    }

    fn act(
        &mut self,
        (happened, known): (Instant, Known),
        decide: impl FnOnce(&View<'_>, &mut Draft) -> Result<(), Refusal>,
    ) -> Result<ActId, Refusal> {
        let act = staged(self.deal, self.next);
        self.next += 1;
        let (station, sign) = (self.station, self.sign);
        let stamp = Stamp { act, happened, written: self.now, station, sign, known };
        self.app.book.act(stamp, decide)?;
        Ok(act)
    }

    /// So many sets of one kind in the used bin, at least.
    fn something_used(&mut self) -> Result<(), Refusal> {
        let kind = kind()?;
        let known = self.app.read(|view| view.kinds())?;
        let known = known.into_iter().find(|row| row.kind == kind);
        let (used, washed) = known.map_or((0, 0), |row| (row.used, row.washed));
        let count = acts::Count { kind, owned: None, loose: Some((used.max(6), washed)) };
        self.act((self.now, Known::Tapped), |view, draft| acts::count(view, draft, count)).map(drop)
    }

    /// Washed and packed so many minutes ago.
    fn pack(&mut self, count: u32, minutes: i64, pouched: bool) -> Result<Vec<PouchId>, Refusal> {
        let (kind, at) = (kind()?, self.ago(minutes));
        let washed = vec![(kind.clone(), count)];
        self.act((at, Known::Tapped), |view, draft| acts::wash(view, draft, washed))?;
        let pack = acts::Pack { kind, count, pouched, hollow: false };
        let act = self.act((at, Known::Tapped), |view, draft| acts::pack(view, draft, pack))?;
        let facts = self.app.read(|view| view.facts_of_act(act))?;
        Ok(facts.iter().flat_map(packed).collect())
    }

    /// A machine that is in use, empty, and writes records.
    fn free_machine(&self) -> Result<Machine, Refusal> {
        let machines = self.app.read(|view| view.machines())?;
        let free =
            |row: &Machine| row.writes_files && row.out_since.is_none() && row.running.is_none();
        machines.into_iter().find(free).ok_or_else(|| Refusal::rule("refused-card-machine"))
    }

    /// A run that began so many minutes ago.
    fn start(
        &mut self,
        pouches: &[PouchId],
        programme: &str,
        minutes: i64,
    ) -> Result<Staged, Refusal> {
        let (machine, at) = (self.free_machine()?.machine, self.ago(minutes));
        let zone = self.app.read(|view| Ok(salon_zone(view)))?;
        let start = acts::Start {
            machine,
            programme: Some(programme.to_owned()),
            pouches: pouches.to_vec(),
            over: true,
            day: clock::day(at, &zone?),
            at,
            copied: false,
        };
        self.act((at, Known::Tapped), |view, draft| acts::start(view, draft, start))?;
        let running = self.app.read(|view| {
            let run = view.machine(machine)?.and_then(|row| row.running);
            Ok(run.map(|run| view.run(run)).transpose()?.flatten())
        })?;
        let run = running.ok_or_else(|| Refusal::rule("refused-no-such-run"))?;
        Ok(Staged { run, pouches: pouches.to_vec() })
    }

    fn unload(&mut self, run: RunId, minutes: i64) -> Result<(), Refusal> {
        let at = self.ago(minutes);
        self.act((at, Known::Tapped), |view, draft| acts::unload(view, draft, run)).map(drop)
    }

    /// Takes a record of the run in. Two runs that began in the same second have the same record:
    /// the second one begins a second later.
    fn record(
        &mut self,
        run: &Run,
        write: impl Fn(jiff::civil::DateTime) -> String,
    ) -> Result<(), Refusal> {
        let zone = self.app.read(|view| Ok(salon_zone(view)))??;
        let mut at = run.started.0;
        let mut file = write(clock::civil(at, &zone));
        while !self.app.read(|view| view.taken(record_hash(file.as_bytes())))?.is_empty() {
            at = at + Span::from_seconds(1);
            file = write(clock::civil(at, &zone));
        }
        let (machine, run) = (Some(run.machine), Some(run.run));
        self.act((self.now, Known::Measured), |view, draft| {
            let arrived = Arrived { bytes: file.as_bytes(), way: Way::Folder, machine, run };
            take(view, draft, arrived).map(drop)
        })
        .map(drop)
    }

    /// A load whose numbers are good and that nobody has looked at.
    fn unlooked(&mut self, count: u32) -> Result<Staged, Refusal> {
        let begun = RUN_MIN + 12;
        let pouches = self.pack(count, begun + 4, true)?;
        let staged = self.start(&pouches, "middle", begun)?;
        self.unload(staged.run.run, begun - RUN_MIN)?;
        self.record(&staged.run, |start| Series::GoodA.file(start))?;
        Ok(staged)
    }

    /// A run in the machine whose record breaks off.
    fn power_cut(&mut self) -> Result<(), Refusal> {
        let pouches = self.pack(4, 14, true)?;
        let staged = self.start(&pouches, "middle", 10)?;
        self.record(&staged.run, |start| Series::CutOff.file(start))
    }

    /// A load that somebody released yesterday, and a spore test of the same machine that failed.
    fn failed_spores(&mut self) -> Result<(), Refusal> {
        let staged = self.unlooked(3)?;
        self.look(staged.run.run, 10, Vec::new(), Some(3))?;
        let (machine, run) = (staged.run.machine, Some(staged.run.run));
        let test = test_of(self.deal);
        let placed = Upkeep::SporePlaced { test, machine, run, control: true, lot: None };
        let begun = self.ago(RUN_MIN + 13);
        self.act((begun, Known::Tapped), |_, draft| {
            draft.fact(Body::Upkeep(Box::new(placed)));
            Ok(())
        })
        .map(drop)
    }

    fn look(
        &mut self,
        run: RunId,
        minutes: i64,
        torn: Vec<PouchId>,
        count: Option<u32>,
    ) -> Result<(), Refusal> {
        let at = self.ago(minutes);
        let look = acts::Look {
            run,
            marks_not_turned: Some(Vec::new()),
            inner_mark: None,
            dry_whole: Some([Vec::new(), torn, Vec::new()]),
            count,
            seen_to: None,
            kept: false,
            by: self.sign,
            now: at,
        };
        self.act((at, Known::Tapped), |view, draft| acts::look(view, draft, look)).map(drop)
    }

    /// One pouch of a load is torn and set aside, the others are on the shelf.
    fn one_aside(&mut self) -> Result<(), Refusal> {
        let staged = self.unlooked(3)?;
        let torn = staged.pouches.first().copied().into_iter().collect();
        self.look(staged.run.run, 9, torn, None)
    }

    /// One set without a pouch, through the fast programme.
    fn fast(&mut self) -> Result<(), Refusal> {
        let pouches = self.pack(1, RUN_MIN + 6, false)?;
        let staged = self.start(&pouches, "fast", RUN_MIN + 2)?;
        self.unload(staged.run.run, 2)?;
        self.record(&staged.run, |start| Series::GoodA.file(start))
    }

    /// A load whose record lacks two minutes of the time at temperature.
    fn gap_in_record(&mut self) -> Result<(), Refusal> {
        let pouches = self.pack(4, RUN_MIN + 12, true)?;
        let staged = self.start(&pouches, "middle", RUN_MIN + 8)?;
        self.unload(staged.run.run, 8)?;
        self.record(&staged.run, |start| Series::GoodA.file_with_gap(start, (500, 620)))
    }
}

/// The spore test of a deal.
fn test_of(deal: ActId) -> TestId {
    TestId::from_bytes(*staged(deal, MOST).bytes())
}

/// Pouches that a fact packed.
fn packed(fact: &Fact) -> Vec<PouchId> {
    match &fact.body {
        Body::Packed { pouches } => pouches.iter().map(|pouch| pouch.pouch).collect(),
        _ => Vec::new(),
    }
}

fn kind() -> Result<SetKind, Refusal> {
    "manicure".parse().map_err(|_| Refusal::rule_with("refused-field-misread", "field", "kind"))
}
