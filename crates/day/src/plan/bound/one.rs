//! The least unmet, short and runs that any plan for one machine can come to.
//!
//! A dynamic programme over sequences of runs. A state is what the runs so far hold of each kind,
//! which needs were given up, and between which slots the last run can have been unloaded.
//!
//! **Why it is a bound.** Take any plan and walk through its runs in order. Before a run that is
//! ready at `r`, whatever is due before `r` has arrived or is unmet, so giving up just that, the
//! soonest first, never gives up more of a kind than the plan leaves unmet, and the lightest needs
//! of the kind weigh no more than the plan's. Sets that nobody needs are left out of the loads; a
//! run of which nothing is left stays as an empty one, since it warms the machine. The run starts
//! no sooner than its sets can be washed ([`Ground::washed_by`], everybody served, so that as many
//! sets as possible come back). So each plan is a path of this programme and the best path is a
//! bound.
//!
//! **What it leaves out:** loading and unloading take no minutes from the washing; the last run may
//! be thought of as unloaded early for the next start and late for the warmth; sets used at once
//! serve whoever comes later as well.

use super::super::decode::{Genome, Wish};
use super::super::problem::{Drying, MOST_KINDS};
use super::super::table::{CycleTable, MachineTable, NEVER, Table};
use super::Stopped;
use super::given_up::Ledger;
use super::ground::{Counts, Ground, Load};
use super::machine::Lone;
use std::collections::BTreeMap;

/// What was proven.
#[derive(Debug, Clone)]
pub(super) struct Proof {
    /// Lower bounds of unmet, short and runs, each given the ones before.
    pub least: [u64; 3],
    /// A path to less than what was known, as wishes.
    pub path: Option<Genome>,
}

#[derive(Debug, Clone, Copy)]
struct Node {
    loaded: Counts,
    place: u32,
    /// Number in the ledger.
    given_up: u32,
    /// Earliest and latest slot in which the last run can have been unloaded.
    free: usize,
    latest: i64,
    parent: u32,
    /// Cycle and start of the run that led here; none for a need given up.
    run: Option<(u8, u16)>,
}

/// A run that is tried.
struct Try<'a> {
    /// From when on its sets are washed.
    washed: usize,
    /// By when it must be ready.
    due: usize,
    load: &'a Load,
    cycle: &'a CycleTable,
    warm: bool,
}

struct Programme<'t> {
    ground: Ground<'t>,
    machine: Lone<'t>,
    ledger: Ledger,
    nodes: Vec<Node>,
    /// Where each state was reached: free and latest, none better than another.
    reached: BTreeMap<u64, Vec<(usize, i64)>>,
    /// Loads that were tried.
    work: usize,
    /// Only less than this is looked for.
    limit: [u64; 3],
}

/// Vectors of loaded sets up to which a day is looked at.
const MOST_VECTORS: usize = 1 << 21;
/// Loads of a cycle up to which a day is looked at.
const MOST_LOADS: usize = 1 << 14;

/// The bound for a table with one machine, if what is in `refused` is left unmet and does not
/// count; `known` is what some plan comes to, and only less is looked for.
pub(super) fn prove(
    table: &Table,
    refused: &[u16],
    known: [u64; 3],
    budget: &mut usize,
    stop: &dyn Fn() -> bool,
) -> Result<Proof, Stopped> {
    let mut programme = Programme::new(table, refused, known).ok_or(Stopped::TooLarge)?;
    let proof = programme.run(*budget, stop);
    *budget = budget.saturating_sub(programme.work);
    proof
}

impl<'t> Programme<'t> {
    fn new(table: &'t Table, refused: &[u16], known: [u64; 3]) -> Option<Self> {
        let ground = Ground::new(table, refused, MOST_VECTORS)?;
        let machine = Lone::new(&ground, MOST_LOADS)?;
        let start = Node {
            loaded: Counts::default(),
            place: 0,
            given_up: 0,
            free: machine.table.free_from,
            latest: i64::MIN / 2,
            parent: u32::MAX,
            run: None,
        };
        Some(Self {
            ground,
            machine,
            ledger: Ledger::new(table),
            nodes: vec![start],
            reached: BTreeMap::new(),
            work: 0,
            limit: known,
        })
    }

    fn run(&mut self, budget: usize, stop: &dyn Fn() -> bool) -> Result<Proof, Stopped> {
        let mut best = None;
        let mut layer = vec![0];
        for runs in 0_u64.. {
            let mut next = Vec::new();
            let mut i = 0;
            while let Some(&node) = layer.get(i) {
                if (i % 64 == 0 && stop()) || self.work > budget {
                    return Err(Stopped::Budget);
                }
                i += 1;
                let Some(value) = self.worth_a_look(node, runs) else {
                    continue;
                };
                if self.next_due(node).0 == NEVER {
                    self.limit = value;
                    best = Some(node);
                    continue;
                }
                self.give_up(node, &mut layer);
                self.run_from(node, &mut next);
            }
            if next.is_empty() {
                break;
            }
            layer = next;
        }
        Ok(Proof { least: self.limit, path: best.map(|node| self.path(node)) })
    }

    /// Arrivals of each kind that are there or given up.
    fn done(&self, node: u32) -> Counts {
        let node = &self.nodes[node as usize];
        self.ledger.done(node.given_up, &node.loaded)
    }

    fn next_due(&self, node: u32) -> (u16, usize) {
        self.ground.next_due(&self.done(node))
    }

    /// What a state has come to, if it can still come to less than the limit.
    fn worth_a_look(&self, node: u32, runs: u64) -> Option<[u64; 3]> {
        let [unmet, short] = self.ledger.value(self.nodes[node as usize].given_up);
        let value = [unmet, short, runs];
        let mut least = value;
        if value[..2] == self.limit[..2] {
            least[2] += self.machine.runs_for(&self.ground, &self.done(node));
        }
        (least < self.limit).then_some(value)
    }

    fn give_up(&mut self, node: u32, layer: &mut Vec<u32>) {
        let (due, k) = self.next_due(node);
        let from = self.nodes[node as usize];
        let given_up = self.ledger.one_more(from.given_up, due, k);
        self.reach(Node { given_up, parent: node, run: None, ..from }, layer);
    }

    fn reach(&mut self, node: Node, layer: &mut Vec<u32>) {
        let key = u64::from(node.given_up) << 32 | u64::from(node.place);
        let known = self.reached.entry(key).or_default();
        if known.iter().any(|&(free, latest)| free <= node.free && latest >= node.latest) {
            return;
        }
        known.retain(|&(free, latest)| free < node.free || latest > node.latest);
        known.push((node.free, node.latest));
        layer.push(self.nodes.len() as u32);
        self.nodes.push(node);
    }

    fn run_from(&mut self, parent: u32, next: &mut Vec<u32>) {
        let from = self.nodes[parent as usize];
        let done = self.done(parent);
        let due = usize::from(self.ground.next_due(&done).0);
        let all = self.ground.all();
        let table: &'t MachineTable = self.machine.table;
        for (c, cycle) in table.cycles.iter().enumerate() {
            let empty = cycle.long[1] < cycle.long[0] && self.ground.to_spare(cycle, &done);
            for l in usize::from(!empty)..self.machine.loads[c].len() {
                let load = self.machine.loads[c][l];
                if (0..MOST_KINDS).any(|k| done[k] + load.counts[k] > all[k]) {
                    continue;
                }
                self.work += 1;
                let mut loaded = from.loaded;
                loaded.iter_mut().zip(&load.counts).for_each(|(loaded, n)| *loaded += n);
                let place = from.place + load.place as u32;
                let Some(washed) = self.machine.washed_by(&self.ground, &loaded, place as usize)
                else {
                    continue;
                };
                for warm in [true, false] {
                    if let Some((start, free, latest)) =
                        self.earliest(&from, &Try { washed, due, load: &load, cycle, warm })
                    {
                        let run = Some((c as u8, start as u16));
                        self.reach(Node { loaded, place, free, latest, parent, run, ..from }, next);
                    }
                }
            }
        }
    }

    /// Earliest start of a run, and between which slots it can be unloaded.
    fn earliest(&self, from: &Node, run: &Try) -> Option<(usize, usize, i64)> {
        let Try { washed, due, load, cycle, warm } = *run;
        let table = self.ground.table;
        let machine = self.machine.table;
        let warm_until = machine.warm_until.max(from.latest + machine.warm_window as i64);
        let mut start = from.free.max(washed);
        loop {
            start += table.hands.get(start..)?.iter().position(|&h| h >= cycle.load_min)?;
            if warm && start as i64 > warm_until {
                return None;
            }
            let end = start + cycle.long[usize::from(warm)];
            let wait = table.hands.get(end..)?.iter().position(|&h| h >= cycle.unload_min)?;
            let ready = end + wait + cycle.after;
            let counted_ready = end + wait + self.machine.after(cycle);
            if ready > table.slots || counted_ready > due {
                return None;
            }
            let at_once = cycle.drying == Drying::None;
            if !at_once || (wait == 0 && self.room(load, ready, end + table.window)) {
                let mut latest =
                    (table.slots - cycle.after).min(due - self.machine.after(cycle)) as i64;
                if warm {
                    let end = usize::try_from(warm_until)
                        .map_or(usize::MAX, |s| s.saturating_add(cycle.long[1]));
                    latest = latest.min(self.unloaded_by(end, cycle));
                }
                return Some((start, end + wait, latest));
            }
            start += 1;
        }
    }

    /// When a run that is over at `end` is unloaded.
    fn unloaded_by(&self, end: usize, cycle: &CycleTable) -> i64 {
        let hands = self.ground.table.hands.get(end..).unwrap_or(&[]);
        hands
            .iter()
            .position(|&h| h >= cycle.unload_min)
            .map_or(i64::MAX, |wait| (end + wait) as i64)
    }

    /// Whether so many sets can be opened in the slots `ready..=last`.
    fn room(&self, load: &Load, ready: usize, last: usize) -> bool {
        let table = self.ground.table;
        (0..table.kinds).filter(|&k| load.counts[k] > 0).all(|k| {
            let needs = (ready..=last.min(table.slots - 1)).flat_map(|t| table.needs_at(t));
            needs.filter(|n| n.kind == k).map(|n| n.n).sum::<u32>() >= u32::from(load.counts[k])
        })
    }

    fn path(&self, mut node: u32) -> Genome {
        let mut wishes = Vec::new();
        while let Some(&Node { loaded, parent, run, .. }) = self.nodes.get(node as usize) {
            if let Some((cycle, start)) = run {
                let before = self.nodes[parent as usize].loaded;
                let mut most = [0; MOST_KINDS];
                for k in 0..MOST_KINDS {
                    most[k] = loaded[k] - before[k];
                }
                wishes.push(Wish { start, machine: 0, cycle, most });
            }
            node = parent;
        }
        wishes.reverse();
        Genome { wishes, refused: Vec::new() }
    }
}
