//! Which steps of a card were right: a pure function of what was staged and of what was done since.
//!
//! Right is what the trade demands: no talking back after a failed number, mark or look; how far
//! one bad pouch reaches (torn or dropped: that pouch; wet: that pouch, look at all again; two wet,
//! a mark, the numbers: all); in doubt the safer side. What was taken back in time counts as not
//! done; what was put right later was wrong first.

use super::cards::Card;
use super::machine::LENGTH;
use load::ShelfCode;
use logbook::fact::{BasinAfter, Basis, Body, Counter, Fact, StopReason, Upkeep};
use measure::{Instant, MachineId, PouchId, RunId, Span, TestId, ThingId};
use std::collections::{BTreeMap, BTreeSet};

/// What the display of the card "cannot tell" says: lowest temperature in thousandths of °C, time
/// in seconds, pressure in kPa. The saturation pressure of 134.7 °C by IF97 is 311 kPa.
pub const DISPLAY: (i64, i64, u32) = (134_600, 245, 311);

/// The programme of the made-up machine that does not dry.
const NO_DRYING: &str = "fast";

/// One step: key of its line (`.why` says why it matters), and whether it was right.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Step {
    /// Key of the line.
    pub key: &'static str,
    /// It was right.
    pub right: bool,
}

/// What lies on the table when a card is dealt.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Table {
    /// The staged run.
    pub run: Option<RunId>,
    /// Its machine.
    pub machine: Option<MachineId>,
    /// Everything that was packed, in order.
    pub pouches: Vec<(PouchId, ShelfCode)>,
    /// Most pouches that each machine was tested with.
    pub most: BTreeMap<MachineId, u32>,
    /// The spore test.
    pub test: Option<TestId>,
    /// The foot bath, and how many minutes it stays wet.
    pub basin: Option<(ThingId, u32)>,
}

impl Table {
    /// From the facts that were staged.
    pub fn of(
        staged: &[Fact],
        most: BTreeMap<MachineId, u32>,
        basin: Option<(ThingId, u32)>,
    ) -> Self {
        let mut table = Self { most, basin, ..Self::default() };
        for fact in staged {
            match &fact.body {
                Body::Packed { pouches } => {
                    table.pouches.extend(pouches.iter().map(|pouch| (pouch.pouch, pouch.code)));
                }
                Body::RunStarted { run, machine, .. } => {
                    (table.run, table.machine) = (Some(*run), Some(*machine));
                }
                Body::Upkeep(said) => {
                    if let Upkeep::SporePlaced { test, .. } = **said {
                        table.test = Some(test);
                    }
                }
                _ => {}
            }
        }
        table
    }

    /// The pouches that the card speaks of.
    pub fn odd(&self, card: Card) -> Vec<(PouchId, ShelfCode)> {
        self.pouches.iter().take(card.odd()).copied().collect()
    }
}

/// What was done since, as sets of pouches.
struct Done<'a> {
    facts: &'a [Fact],
    all: BTreeSet<PouchId>,
    odd: BTreeSet<PouchId>,
    released: BTreeSet<PouchId>,
    opened: BTreeSet<PouchId>,
    aside: BTreeSet<PouchId>,
    apart: BTreeSet<PouchId>,
    lifted: BTreeSet<PouchId>,
}

impl<'a> Done<'a> {
    fn of(card: Card, table: &Table, facts: &'a [Fact]) -> Self {
        let mut done = Self {
            facts,
            all: table.pouches.iter().map(|(pouch, _)| *pouch).collect(),
            odd: table.odd(card).iter().map(|(pouch, _)| *pouch).collect(),
            released: BTreeSet::new(),
            opened: BTreeSet::new(),
            aside: BTreeSet::new(),
            apart: BTreeSet::new(),
            lifted: BTreeSet::new(),
        };
        for fact in facts {
            match &fact.body {
                Body::Released { pouches, .. } => done.released.extend(pouches),
                Body::SetAside { pouches, .. } => done.aside.extend(pouches),
                Body::TakenApart { pouches } => done.apart.extend(pouches),
                Body::StopLifted { pouches, .. } => done.lifted.extend(pouches),
                Body::Opened { pouch, .. } => {
                    done.opened.insert(*pouch);
                }
                _ => {}
            }
        }
        done
    }

    fn none_of(&self, these: &BTreeSet<PouchId>) -> bool {
        let used = |pouch| self.released.contains(pouch) || self.opened.contains(pouch);
        !these.iter().any(used)
    }

    fn others(&self) -> BTreeSet<PouchId> {
        self.all.difference(&self.odd).copied().collect()
    }

    /// The first answers to marks and to dry and whole.
    fn first_look(&self, run: Option<RunId>) -> FirstLook {
        let mut first = FirstLook::default();
        for fact in self.facts {
            let Body::Looked {
                run: of,
                marks_looked,
                dry_looked,
                marks_not_turned,
                wet,
                torn,
                dropped,
                ..
            } = &fact.body
            else {
                continue;
            };
            if Some(*of) != run {
                continue;
            }
            if *marks_looked && first.marks.is_none() {
                first.marks = Some(set(marks_not_turned));
            }
            if *dry_looked && first.dry.is_none() {
                first.dry = Some([set(wet), set(torn), set(dropped)]);
            }
        }
        first
    }
}

#[derive(Default)]
struct FirstLook {
    marks: Option<BTreeSet<PouchId>>,
    dry: Option<[BTreeSet<PouchId>; 3]>,
}

fn set(pouches: &[PouchId]) -> BTreeSet<PouchId> {
    pouches.iter().copied().collect()
}

/// Which steps were right. `facts`: those since the deal that the learner did.
pub fn check(card: Card, table: &Table, facts: &[Fact]) -> Vec<Step> {
    let done = Done::of(card, table, facts);
    let steps: Vec<(&'static str, bool)> = match card {
        Card::GoodLoad => good_load(facts),
        Card::Wet => {
            let said = done.first_look(table.run).dry.is_some_and(|[wet, ..]| wet == done.odd);
            vec![
                ("step-wet-said", said),
                ("step-others-again", said && done.others().is_subset(&done.released)),
                ("step-not-used", done.none_of(&done.odd) && done.odd.is_subset(&done.aside)),
                ("step-apart", done.odd.is_subset(&done.apart)),
            ]
        }
        Card::TwoWet => {
            let said = done.first_look(table.run).dry.is_some_and(|[wet, ..]| wet == done.odd);
            whole_load("step-two-wet-said", said, &done)
        }
        Card::Mark => {
            let said = done.first_look(table.run).marks.is_some_and(|marks| marks == done.odd);
            whole_load("step-mark-said", said, &done)
        }
        Card::Torn => torn(table, &done),
        Card::Power => whole_load("step-power-aside", done.all.is_subset(&done.aside), &done),
        Card::Spore => spore(table, &done),
        Card::WrongPouch => {
            let no_code = |fact: &Fact| matches!(&fact.body, Body::Counter(said) if matches!(**said, Counter::OpenedNoCode { .. }));
            vec![
                ("step-another-opened", done.opened.iter().any(|pouch| !done.odd.contains(pouch))),
                ("step-code-read", !done.opened.is_empty() && !facts.iter().any(no_code)),
                ("step-stop-stands", done.lifted.is_disjoint(&done.odd) && done.none_of(&done.odd)),
            ]
        }
        Card::Fast => fast(&done),
        Card::CannotTell => cannot_tell(table, &done),
        Card::TooMany => too_many(table, facts),
        Card::FootBath => foot_bath(table, facts),
    };
    steps.into_iter().map(|(key, right)| Step { key, right }).collect()
}

/// Nothing of the load may be used; all of it is washed and bagged again.
fn whole_load(first: &'static str, said: bool, done: &Done<'_>) -> Vec<(&'static str, bool)> {
    let aside = done.all.is_subset(&done.aside);
    vec![
        (first, said),
        ("step-none-released", done.none_of(&done.all) && aside),
        ("step-all-apart", done.all.is_subset(&done.apart)),
    ]
}

fn torn(table: &Table, done: &Done<'_>) -> Vec<(&'static str, bool)> {
    let look = done.first_look(table.run).dry;
    let said: BTreeSet<PouchId> =
        look.iter().flat_map(|[_, torn, dropped]| torn.union(dropped)).copied().collect();
    vec![
        ("step-torn-said", said == done.odd),
        ("step-others-released", done.others().is_subset(&done.released)),
        ("step-not-used", done.none_of(&done.odd) && done.odd.is_subset(&done.aside)),
        ("step-apart", done.odd.is_subset(&done.apart)),
    ]
}

fn spore(table: &Table, done: &Done<'_>) -> Vec<(&'static str, bool)> {
    let any = |is: &dyn Fn(&Body) -> bool| done.facts.iter().any(|fact| is(&fact.body));
    let out = any(
        &|body| matches!(body, Body::MachineOut { machine } if Some(*machine) == table.machine),
    );
    let back = any(
        &|body| matches!(body, Body::MachineBack { machine } if Some(*machine) == table.machine),
    );
    let read = done.facts.iter().find_map(|fact| match &fact.body {
        Body::Upkeep(said) => match **said {
            Upkeep::SporeRead { test, grew, .. } if Some(test) == table.test => Some(grew),
            _ => None,
        },
        _ => None,
    });
    vec![
        ("step-spore-read", read == Some(true)),
        ("step-machine-out", out),
        ("step-shelf-frozen", done.all.is_subset(&done.aside)),
        ("step-nothing-opened", done.opened.is_disjoint(&done.all)),
        ("step-stays-out", out && !back),
    ]
}

fn fast(done: &Done<'_>) -> Vec<(&'static str, bool)> {
    let until = done.facts.iter().find_map(|fact| match &fact.body {
        Body::Released { pouches, use_until, .. }
            if pouches.iter().any(|pouch| done.all.contains(pouch)) =>
        {
            *use_until
        }
        _ => None,
    });
    let opened = done.facts.iter().find_map(|fact| match fact.body {
        Body::Opened { pouch, .. } if done.all.contains(&pouch) => Some(fact.stamp.happened),
        _ => None,
    });
    let in_time = until.zip(opened).is_some_and(|(until, opened)| opened <= until);
    vec![("step-use-now", until.is_some()), ("step-in-time", in_time)]
}

/// The display was read, all numbers as they stand there, or the load goes through again.
fn cannot_tell(table: &Table, done: &Done<'_>) -> Vec<(&'static str, bool)> {
    let read = |fact: &Fact| match &fact.body {
        Body::Judged(judged) if judged.run == table.run => match judged.basis {
            Basis::Reading { lowest_mc, held_s, press_pa } => {
                let pressure =
                    press_pa.is_some_and(|pa| (pa - i64::from(DISPLAY.2) * 1_000).abs() < 1_000);
                Some(lowest_mc == DISPLAY.0 && held_s == DISPLAY.1 && pressure)
            }
            Basis::Record { .. } => None,
        },
        _ => None,
    };
    let first = done.facts.iter().find_map(|fact| Some((fact.seq, read(fact)?)));
    let again = done.all.is_subset(&done.apart) && done.none_of(&done.all);
    let release = done
        .facts
        .iter()
        .find(|fact| matches!(&fact.body, Body::Released { run, .. } if Some(*run) == table.run));
    let inner = done.facts.iter().any(|fact| {
        matches!(&fact.body, Body::Looked { run, inner_mark: Some(true), .. } if Some(*run) == table.run)
    });
    let before = release.is_some_and(|fact| first.is_none_or(|(seq, _)| fact.seq < seq));
    vec![
        ("step-read-or-again", again || first.is_some_and(|(_, right)| right)),
        ("step-not-on-looks", !before && (again || release.is_some())),
        ("step-inner-mark", again || inner),
    ]
}

fn too_many(table: &Table, facts: &[Fact]) -> Vec<(&'static str, bool)> {
    let starts: Vec<_> = facts
        .iter()
        .filter_map(|fact| match &fact.body {
            Body::RunStarted { machine, pouches, programme, .. } => {
                Some((*machine, pouches.len(), programme.clone()))
            }
            _ => None,
        })
        .collect();
    let fits = |(machine, count, _): &(MachineId, usize, Option<String>)| {
        table.most.get(machine).is_none_or(|most| *count <= *most as usize)
    };
    let dries = |(_, _, programme): &(MachineId, usize, Option<String>)| {
        programme.as_deref().is_some_and(|programme| programme != NO_DRYING)
    };
    vec![
        ("step-tested-most", !starts.is_empty() && starts.iter().all(fits)),
        ("step-drying", !starts.is_empty() && starts.iter().all(dries)),
    ]
}

fn foot_bath(table: &Table, facts: &[Fact]) -> Vec<(&'static str, bool)> {
    let (mut wet, mut drained): (Option<Instant>, Option<Instant>) = (None, None);
    let Some((basin, minutes)) = table.basin else {
        return vec![("step-bath-wet", false), ("step-bath-time", false)];
    };
    for fact in facts {
        let Body::Upkeep(said) = &fact.body else { continue };
        match **said {
            Upkeep::BasinWet { basin: of, after: BasinAfter::Client } if of == basin => {
                wet = wet.or(Some(fact.stamp.happened));
            }
            Upkeep::BasinDrained { basin: of } if of == basin => {
                drained = drained.or(Some(fact.stamp.happened));
            }
            _ => {}
        }
    }
    let long = wet
        .zip(drained)
        .is_some_and(|(wet, drained)| drained - wet >= Span::from_minutes(minutes.into()));
    vec![("step-bath-wet", wet.is_some()), ("step-bath-time", long)]
}

/// From the used bin to the shelf, in this order.
fn good_load(facts: &[Fact]) -> Vec<(&'static str, bool)> {
    let first = |is: &dyn Fn(&Body) -> bool| facts.iter().find(|fact| is(&fact.body));
    let washed = first(&|body| matches!(body, Body::Washed { .. }));
    let packed = first(
        &|body| matches!(body, Body::Packed { pouches } if pouches.iter().all(|pouch| pouch.pouched)),
    );
    let started = first(&|body| matches!(body, Body::RunStarted { .. }));
    let (run, dries) = match started.map(|fact| &fact.body) {
        Some(Body::RunStarted { run, programme, .. }) => {
            (Some(*run), programme.as_deref().is_some_and(|programme| programme != NO_DRYING))
        }
        _ => (None, false),
    };
    let unloaded = first(&|body| matches!(body, Body::RunUnloaded { run: of } if Some(*of) == run));
    let looked = first(
        &|body| matches!(body, Body::Looked { run: of, marks_looked: true, dry_looked: true, .. } if Some(*of) == run),
    );
    let released =
        first(&|body| matches!(body, Body::Released { run: of, .. } if Some(*of) == run));
    let aside = facts.iter().any(|fact| {
        matches!(
            &fact.body,
            Body::SetAside {
                why: StopReason::Interrupted | StopReason::Numbers | StopReason::CannotTell,
                ..
            }
        )
    });
    let after = |one: Option<&Fact>, two: Option<&Fact>| {
        one.zip(two).is_some_and(|(one, two)| one.seq < two.seq)
    };
    let full = started
        .zip(unloaded)
        .is_some_and(|(start, end)| end.stamp.happened - start.stamp.happened >= LENGTH);
    vec![
        ("step-washed", after(washed, packed)),
        ("step-bagged", after(packed, started)),
        ("step-drying", started.is_some() && dries),
        ("step-not-early", full),
        ("step-all-looked", after(unloaded, looked)),
        ("step-released", released.is_some() && !aside),
    ]
}
