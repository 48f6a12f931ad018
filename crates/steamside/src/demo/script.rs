//! What happened in the demo salon, tap by tap, in the order of the clock.

mod rooms;
mod spores;
mod upkeep;
mod visits;

use super::records::Series;
use crate::acts::{self, Refusal};
use crate::app::App;
use crate::intake::take::{Arrived, take};
use crate::{chance, clock};
use jiff::tz::TimeZone;
use load::SetState;
use logbook::book::Draft;
use logbook::fact::{AirRemoval, Known, Stamp, Way};
use logbook::view::{Machine, View};
use measure::{Celsius, Instant, Kilopascal, PersonId, PouchId, RunId, Span, StationId};

/// A file to be tried.
pub struct Try {
    /// Its name says what is in it.
    pub name: &'static str,
    /// Its text.
    pub text: String,
}

/// Kinds of sets with a count each.
type Kinds = &'static [(&'static str, u32)];

/// How a run of the script ends.
#[derive(Clone, Copy)]
enum End {
    /// Its record came in and everything was in order.
    Record(Series),
    /// Three numbers were read off and everything was in order.
    Reading,
    /// The same, but one pouch came out wet: it is washed and bagged again.
    OneWet,
    /// The load is out; nobody has looked yet.
    ToCheck,
    /// Still going.
    Running,
}

/// One tap; rounds are numbered in the order in which they were planned.
#[derive(Clone, Copy)]
enum Step {
    Wash(Kinds),
    Pack(usize, Kinds),
    Start(usize, u32),
    Unload(usize),
    Record(usize, Series),
    ReadOff(usize),
    AllGood(usize),
    OneWet(usize),
    Apart(usize),
    Open(u32),
    /// A spore test in the machine with this number.
    PlaceTest(u32),
    /// No growth, the control grew.
    ReadTest(u32),
    Tend(upkeep::Tend),
}

/// One trip of a load through a machine.
struct Round {
    machine: u32,
    start: Instant,
    minutes: i64,
    kinds: Kinds,
    end: End,
}

/// The week: first planned, then played in the order of the clock.
pub struct Script<'a> {
    app: &'a App,
    station: StationId,
    now: Instant,
    zone: TimeZone,
    people: Vec<PersonId>,
    machines: Vec<Machine>,
    steps: Vec<(Instant, Step)>,
    pouches: Vec<Vec<PouchId>>,
    runs: Vec<Option<RunId>>,
    turn: usize,
}

const SEVEN: Kinds = &[("manicure", 5), ("pedicure", 2)];
const SIX: Kinds = &[("manicure", 4), ("pedicure", 2)];
const FOUR: Kinds = &[("manicure", 3), ("bits", 1)];
const THREE: Kinds = &[("manicure", 2), ("pedicure", 1)];
const TWO: Kinds = &[("manicure", 2)];

/// The records that wait to be tried: name, series, minutes ago, length in minutes.
const TRIES: [(&str, Series, i64, i64); 4] = [
    ("1-short-at-temperature.csv", Series::Short, 180, 21),
    ("2-air-left-in.csv", Series::AirLeft, 145, 21),
    ("3-cut-off.csv", Series::CutOff, 112, 24),
    ("4-good-run.csv", Series::GoodA, 75, 24),
];

impl<'a> Script<'a> {
    /// A script that ends now.
    pub fn new(app: &'a App, station: StationId, now: Instant, zone: TimeZone) -> Self {
        Self {
            app,
            station,
            now,
            zone,
            people: Vec::new(),
            machines: Vec::new(),
            steps: Vec::new(),
            pouches: Vec::new(),
            runs: Vec::new(),
            turn: 0,
        }
    }

    /// Everything, oldest first. Returns the records that wait to be tried.
    pub fn play(&mut self) -> Result<Vec<Try>, Refusal> {
        self.set_up(&["HL", "TN", "MR"])?;
        for day in (1..=6).rev() {
            self.plan_past_day(day);
        }
        self.plan_today();
        self.plan_weekly();
        self.plan_upkeep_today();
        self.play_steps()?;
        self.book_days()?;
        Ok(TRIES
            .iter()
            .map(|(name, series, ago, _)| {
                let start = clock::civil(self.ago(*ago), &self.zone);
                Try { name, text: series.file(start) }
            })
            .collect())
    }

    /// Two quiet days that are over, and nobody's visits.
    pub fn play_quiet(&mut self, signs: &[&str]) -> Result<(), Refusal> {
        self.set_up(signs)?;
        for day in [2, 1] {
            self.plan_past_day(day);
        }
        self.play_steps()
    }

    fn play_steps(&mut self) -> Result<(), Refusal> {
        self.steps.sort_by_key(|(at, _)| *at);
        for (at, step) in std::mem::take(&mut self.steps) {
            self.step(at, step)?;
        }
        Ok(())
    }

    fn ago(&self, minutes: i64) -> Instant {
        self.now - Span::from_minutes(minutes)
    }

    fn set_up(&mut self, signs: &[&str]) -> Result<(), Refusal> {
        let begun = self.ago(7 * 24 * 60);
        for sign in signs {
            self.act(begun, Known::Setting, |v, d| acts::join(v, d, sign))?;
        }
        for (number, writes_files, most) in [(1, true, 10), (2, false, 8)] {
            let new = acts::AddMachine {
                number,
                air_removal: AirRemoval::Vacuum,
                writes_files,
                most_pouches: Some(most),
            };
            self.act(begun, Known::Setting, |v, d| acts::add_machine(v, d, new))?;
        }
        for (kind, owned) in [("manicure", 30), ("pedicure", 18), ("bits", 12)] {
            let count =
                acts::Count { kind: word(kind)?, owned: Some(owned), loose: Some((owned, 0)) };
            self.act(begun, Known::Read, |v, d| acts::count(v, d, count))?;
        }
        self.people = self.app.read(|v| v.people())?.iter().map(|p| p.person).collect();
        self.machines = self.app.read(|v| v.machines())?;
        self.describe_rooms(begun)?;
        self.set_up_upkeep(begun)
    }

    /// A day that is over: two runs in the first machine, one in the second, most pouches opened.
    fn plan_past_day(&mut self, days: i64) {
        let begin = self.ago(days * 24 * 60 + 260);
        let later = |minutes| begin + Span::from_minutes(minutes);
        let rounds = [
            (1, later(0), 29, SIX, End::Record(Series::GoodCold)),
            (2, later(20), 44 + days % 3, FOUR, if days == 3 { End::OneWet } else { End::Reading }),
            (1, later(130), 24 + days % 2, SIX, End::Record(Series::GoodA)),
        ];
        for (machine, start, minutes, kinds, end) in rounds {
            self.plan(Round { machine, start, minutes, kinds, end });
        }
        self.plan_spores(days, later(0));
        self.plan_openings(later(190), 14, 4);
        self.plan_upkeep_of(days, begin);
    }

    fn plan_today(&mut self) {
        let rounds = [
            (1, 330, 29, SIX, End::Record(Series::GoodCold)),
            (2, 320, 45, FOUR, End::Reading),
            (1, 250, 24, SIX, End::Record(Series::GoodB)),
            (2, 64, 46, TWO, End::ToCheck),
            (1, 11, 0, TWO, End::Running),
        ];
        for (machine, ago, minutes, kinds, end) in rounds {
            self.plan(Round { machine, start: self.ago(ago), minutes, kinds, end });
        }
        for (_, _, ago, minutes) in TRIES {
            let start = self.ago(ago);
            self.plan(Round { machine: 1, start, minutes, kinds: THREE, end: End::ToCheck });
        }
        self.plan_openings(self.ago(285), 6, 9);
        self.plan_openings(self.ago(200), 5, 9);
        self.plan_openings(self.ago(70), 3, 6);
        self.steps.push((self.ago(24), Step::Wash(SEVEN)));
        self.steps.push((self.ago(21), Step::Pack(self.runs.len(), SIX)));
        self.pouches.push(Vec::new());
        self.runs.push(None);
        self.steps.push((self.ago(4), Step::Wash(TWO)));
    }

    fn plan(&mut self, round: Round) {
        let number = self.runs.len();
        self.runs.push(None);
        self.pouches.push(Vec::new());
        let at = |minutes| round.start + Span::from_minutes(minutes);
        let mut steps = vec![
            (at(-15), Step::Wash(round.kinds)),
            (at(-3), Step::Pack(number, round.kinds)),
            (at(0), Step::Start(number, round.machine)),
        ];
        let out = round.minutes;
        match round.end {
            End::Running => {}
            End::ToCheck => steps.push((at(out), Step::Unload(number))),
            End::Record(series) => steps.extend([
                (at(out), Step::Unload(number)),
                (at(out + 1), Step::Record(number, series)),
                (at(out + 11), Step::AllGood(number)),
            ]),
            End::OneWet => steps.extend([
                (at(out), Step::Unload(number)),
                (at(out), Step::ReadOff(number)),
                (at(out + 11), Step::OneWet(number)),
                // The others were looked at again.
                (at(out + 14), Step::AllGood(number)),
                (at(out + 30), Step::Apart(number)),
            ]),
            End::Reading => steps.extend([
                (at(out), Step::Unload(number)),
                (at(out), Step::ReadOff(number)),
                (at(out + 11), Step::AllGood(number)),
            ]),
        }
        self.steps.extend(steps);
    }

    fn plan_openings(&mut self, from: Instant, many: u32, apart: i64) {
        for place in 0..many {
            let at = from + Span::from_minutes(i64::from(place) * apart);
            self.steps.push((at, Step::Open(place % 6 + 1)));
        }
    }

    /// One act at a moment in the past, signed by the people in turn.
    fn act(
        &mut self,
        at: Instant,
        known: Known,
        decide: impl FnOnce(&View<'_>, &mut Draft) -> Result<(), Refusal>,
    ) -> Result<(), Refusal> {
        self.turn += 1;
        let sign = match self.people.len() {
            0 => None,
            many => self.people.get(self.turn / 3 % many).copied(),
        };
        let stamp = Stamp {
            act: chance::id()?,
            happened: at,
            written: at,
            station: self.station,
            sign,
            known,
        };
        self.app.book.act(stamp, decide).map(|_| ())
    }

    fn step(&mut self, at: Instant, step: Step) -> Result<(), Refusal> {
        match step {
            Step::Wash(kinds) => {
                let counts = counts(kinds)?;
                self.act(at, Known::Tapped, |v, d| acts::wash(v, d, counts))
            }
            Step::Pack(round, kinds) => self.pack(at, round, kinds),
            Step::Start(round, machine) => self.start(at, round, machine),
            Step::Unload(round) => {
                let run = self.run(round)?;
                self.act(at, Known::Tapped, |v, d| acts::unload(v, d, run))
            }
            Step::Record(round, series) => self.record(at, round, series),
            Step::ReadOff(round) => {
                let read = reading(self.run(round)?)?;
                self.act(at, Known::Read, |v, d| acts::read_off(v, d, read))
            }
            Step::AllGood(round) => self.look(at, round, 0),
            Step::OneWet(round) => self.look(at, round, 1),
            Step::Apart(round) => {
                let pouches = self.wet(round, 1);
                self.act(at, Known::Tapped, |v, d| acts::apart(v, d, pouches))
            }
            Step::Open(chair) => self.open(at, chair),
            Step::PlaceTest(machine) => self.place_test(at, machine),
            Step::ReadTest(machine) => self.read_test(at, machine),
            Step::Tend(tend) => self.tended(at, tend),
        }
    }

    /// All good but for so many wet pouches.
    fn look(&mut self, at: Instant, round: usize, wet: usize) -> Result<(), Refusal> {
        let run = self.run(round)?;
        let pouches = self.app.read(|view| view.pouches_of_run(run))?;
        let waiting = pouches.iter().filter(|pouch| pouch.state == SetState::ToCheck).count();
        let waiting = u32::try_from(waiting).unwrap_or(u32::MAX);
        let look = acts::Look {
            run: self.run(round)?,
            marks_not_turned: Some(Vec::new()),
            inner_mark: Some(true),
            dry_whole: Some([self.wet(round, wet), Vec::new(), Vec::new()]),
            seen_to: None,
            kept: false,
            count: (wet == 0).then_some(waiting),
            by: None,
            now: at,
        };
        self.act(at, Known::Tapped, |v, d| acts::look(v, d, look))
    }

    fn wet(&self, round: usize, many: usize) -> Vec<PouchId> {
        let pouches = self.pouches.get(round).map(Vec::as_slice).unwrap_or_default();
        pouches.iter().take(many).copied().collect()
    }

    fn pack(&mut self, at: Instant, round: usize, kinds: Kinds) -> Result<(), Refusal> {
        let before = self.bagged()?;
        for (kind, count) in counts(kinds)? {
            let pack = acts::Pack { kind, count, pouched: true, hollow: false };
            self.act(at, Known::Tapped, |v, d| acts::pack(v, d, pack))?;
        }
        let mut packed = self.bagged()?;
        packed.retain(|pouch| !before.contains(pouch));
        if let Some(pouches) = self.pouches.get_mut(round) {
            *pouches = packed;
        }
        Ok(())
    }

    fn bagged(&self) -> Result<Vec<PouchId>, Refusal> {
        let rows = self.app.read(|v| v.pouches_in(&[SetState::Bagged]))?;
        Ok(rows.iter().map(|row| row.pouch).collect())
    }

    fn start(&mut self, at: Instant, round: usize, number: u32) -> Result<(), Refusal> {
        let no_machine = || Refusal::rule("refused-no-such-machine");
        let machine = self.machines.iter().find(|row| row.number == number);
        let machine = machine.ok_or_else(no_machine)?.machine;
        let start = acts::Start {
            machine,
            programme: Some(if number == 1 { "middle" } else { "long" }.to_owned()),
            pouches: self.pouches.get(round).cloned().unwrap_or_default(),
            over: false,
            day: clock::day(at, &self.zone),
            at,
            copied: false,
        };
        self.act(at, Known::Tapped, |v, d| acts::start(v, d, start))?;
        let running = self.app.read(|v| v.machine(machine))?.and_then(|row| row.running);
        if let Some(run) = self.runs.get_mut(round) {
            *run = running;
        }
        Ok(())
    }

    fn record(&mut self, at: Instant, round: usize, series: Series) -> Result<(), Refusal> {
        let run = self.run(round)?;
        let row = self.app.read(|v| v.run(run))?;
        let row = row.ok_or_else(|| Refusal::rule("refused-no-such-run"))?;
        let file = series.file(clock::civil(row.started.0, &self.zone));
        let machine = Some(row.machine);
        self.act(at, Known::Measured, |v, d| {
            let bytes = file.as_bytes();
            take(v, d, Arrived { bytes, way: Way::Folder, machine, run: None }).map(|_| ())
        })
    }

    /// Opens the oldest ready pouch.
    fn open(&mut self, at: Instant, chair: u32) -> Result<(), Refusal> {
        let ready = self.app.read(|v| v.pouches_in(&[SetState::Ready]))?;
        let Some(pouch) = ready.first() else {
            return Ok(());
        };
        let what = acts::What::Pouch(pouch.pouch);
        let open = acts::Open { what, chair: Some(chair), opened: None, kept: false, now: at };
        self.act(at, Known::Scanned, |v, d| acts::open(v, d, open))
    }

    fn run(&self, round: usize) -> Result<RunId, Refusal> {
        let run = self.runs.get(round).copied().flatten();
        run.ok_or_else(|| Refusal::rule("refused-no-such-run"))
    }
}

fn counts(kinds: Kinds) -> Result<Vec<(load::SetKind, u32)>, Refusal> {
    kinds.iter().map(|(kind, count)| Ok((word(kind)?, *count))).collect()
}

fn word(text: &str) -> Result<load::SetKind, Refusal> {
    text.parse().map_err(|_| Refusal::rule_with("refused-field-misread", "field", "kind"))
}

/// 134.6 °C for 4 min 5 s at 311 kPa: the saturation pressure of 134.7 °C by IF97.
fn reading(run: RunId) -> Result<acts::ReadOff, Refusal> {
    let misread = |_| Refusal::rule_with("refused-field-misread", "field", "reading");
    Ok(acts::ReadOff {
        run,
        lowest: Celsius::new(134.6).map_err(misread)?,
        held_s: 245.0,
        pressure: Some(Kilopascal::new(311.0).map_err(misread)?),
    })
}
