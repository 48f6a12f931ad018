//! The least unmet, short and runs that any plan can come to, however many machines there are.
//!
//! Runs are taken in the order in which they are ready. A state is what the runs so far hold of each
//! kind and which needs were given up, and for how long its runs keep each machine busy.
//!
//! **Why it is a bound.** As in [`super::one`], whatever is due before a run is ready has arrived or
//! was given up. So the run is ready by the next due slot, and it starts in the last slot from which
//! it can be. What is in it and in the runs before it was loaded by the latest start among them, so
//! it was washed by then, each kind for itself with all the hands. Of two states the one that holds
//! at least as much of each kind and starts as late or later leads as far with no more runs: it can
//! do what the other does and leave out what it has. So only fullest loads count, and states may be
//! joined into one that holds the most of each; that keeps a layer small and the bound a bound.
//!
//! Beside its vector a state keeps a weight (pouch area, or mass where nothing is wrapped), of which
//! a run adds no more than its cycle holds. States that are joined add up to more than either of
//! them; their weights do not.
//!
//! **What it leaves out:** that a machine waits for washed sets, or is cold; that kinds share the
//! hands; loading and unloading take no minutes; sets used at once serve whoever comes later as well.

use super::super::problem::MOST_KINDS;
use super::super::table::{NEVER, Table};
use super::Stopped;
use super::filling::Filling;
use super::given_up::Ledger;
use super::ground::{Counts, Ground};
use super::latest::{Latest, TRACKED, latest, sort_twins, twins};
use std::collections::BTreeMap;

#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
struct State {
    loaded: Counts,
    /// No run so far started later.
    started: u16,
    /// No more weight is there or given up.
    weight: u64,
    /// Until when each of the first machines is busy, at least.
    busy: [u16; TRACKED],
}

impl State {
    fn covers(&self, other: &Self) -> bool {
        // Byte by byte: each is below 128, so no byte borrows from the next.
        const HIGH: u128 = u128::from_ne_bytes([0x80; MOST_KINDS]);
        let (more, less) = (u128::from_ne_bytes(self.loaded), u128::from_ne_bytes(other.loaded));
        ((more | HIGH) - less) & HIGH == HIGH
            && self.started >= other.started
            && self.weight >= other.weight
            && self.busy.iter().zip(&other.busy).all(|(busy, other)| busy <= other)
    }

    fn join(&self, other: &Self) -> Self {
        let mut loaded = self.loaded;
        loaded.iter_mut().zip(&other.loaded).for_each(|(n, other)| *n = (*n).max(*other));
        let started = self.started.max(other.started);
        let mut busy = self.busy;
        busy.iter_mut().zip(&other.busy).for_each(|(busy, other)| *busy = (*busy).min(*other));
        Self { loaded, started, weight: self.weight.max(other.weight), busy }
    }

    fn sets(&self) -> u32 {
        self.loaded.iter().map(|&n| u32::from(n)).sum()
    }
}

/// States by what was given up: how many needs, and the number in the ledger.
type Layer = BTreeMap<(u32, u32), Vec<State>>;

struct Programme<'t> {
    ground: Ground<'t>,
    ledger: Ledger,
    cycles: Vec<Latest<'t>>,
    /// For each machine one before it that is just like it.
    twins: [Option<usize>; TRACKED],
    /// How many sets of each kind can be washed by a slot, if the hands did nothing else.
    washed: Vec<Counts>,
    weights: Vec<u64>,
    /// What must be there by each slot, by weight, if nothing is given up.
    asked: Vec<u64>,
    limit: [u64; 3],
    width: usize,
    joined: bool,
    work: usize,
}

/// Bounds of unmet, short and runs; only less than `known` is looked for. `width` states are kept
/// of what was given up alike. Says also whether more would be worth it.
pub(super) fn prove(
    table: &Table,
    known: [u64; 3],
    width: usize,
    budget: &mut usize,
    stop: &dyn Fn() -> bool,
) -> Result<([u64; 3], bool), Stopped> {
    let mut programme = Programme::new(table, known, width).ok_or(Stopped::TooLarge)?;
    let done = programme.run(*budget, stop);
    *budget = budget.saturating_sub(programme.work);
    done.ok_or(Stopped::Budget)?;
    let worth_more = programme.joined && programme.limit < known;
    Ok((programme.limit, worth_more))
}

impl<'t> Programme<'t> {
    fn new(table: &'t Table, limit: [u64; 3], width: usize) -> Option<Self> {
        let ground = Ground::new(table, &[], usize::MAX)?;
        if ground.due.iter().any(|due| due.len() > 127) {
            return None;
        }
        let mut washed = vec![Counts::default(); table.slots];
        for (k, due) in ground.due.iter().enumerate() {
            let mut sets = Counts::default();
            for n in 1..=due.len() as u8 {
                sets[k] = n;
                let from = ground.washed_by(&sets).unwrap_or(table.slots);
                washed[from..].iter_mut().for_each(|washed| washed[k] = n);
            }
        }
        let wrapped = table.machines.iter().flat_map(|m| &m.cycles).any(|c| c.wrapped);
        let each = if wrapped { &table.area } else { &table.mass };
        let weights: Vec<u64> = each.iter().map(|&w| u64::from(w)).collect();
        let cycles = (0..table.machines.len()).flat_map(|m| latest(table, m, &weights)).collect();
        let by = |t: u16| -> u64 {
            let kinds = ground.due.iter().zip(&weights);
            kinds.map(|(due, w)| due.partition_point(|&due| due <= t) as u64 * w).sum()
        };
        let asked = (0..=table.slots as u16).map(by).collect();
        let ledger = Ledger::new(table);
        Some(Self {
            ground,
            ledger,
            cycles,
            twins: twins(table),
            washed,
            weights,
            asked,
            limit,
            width,
            joined: false,
            work: 0,
        })
    }

    fn run(&mut self, budget: usize, stop: &dyn Fn() -> bool) -> Option<()> {
        let start = State { loaded: Counts::default(), started: 0, weight: 0, busy: [0; TRACKED] };
        let mut layer = Layer::from([((0, 0), vec![start])]);
        for runs in 0_u64.. {
            let mut next = Layer::new();
            while let Some(((count, number), mut states)) = layer.pop_first() {
                self.narrow(&mut states);
                for state in states {
                    if stop() || self.work > budget {
                        return None;
                    }
                    self.work += 1;
                    if let Some(one_more) = self.look(&state, (count, number), runs, &mut next) {
                        reach(layer.entry((count + 1, one_more.0)).or_default(), one_more.1);
                    }
                }
            }
            if next.values().all(Vec::is_empty) {
                break;
            }
            layer = next;
        }
        Some(())
    }

    /// All runs from a state; what it comes to if one more need is given up.
    fn look(
        &mut self,
        state: &State,
        (count, number): (u32, u32),
        runs: u64,
        next: &mut Layer,
    ) -> Option<(u32, State)> {
        let [unmet, short] = self.ledger.value(number);
        let all = self.asked.last().copied().unwrap_or(0);
        let fullest = self.cycles.iter().map(|latest| latest.weight).max().unwrap_or(0);
        let alike = [unmet, short] == self.limit[..2];
        let more = (all - state.weight).div_ceil(fullest.max(1));
        if [unmet, short, runs + if alike { more } else { 0 }] >= self.limit {
            return None;
        }
        let done = self.ledger.done(number, &state.loaded);
        let (due, k) = self.ground.next_due(&done);
        if due == NEVER && !(alike && state.weight < all) {
            self.limit = [unmet, short, runs];
            return None;
        }
        // Where nothing may be given up any more, too little weight makes a run due as well.
        let heavy = self.asked.partition_point(|&asked| asked <= state.weight);
        let soonest =
            if alike && number == 0 { usize::from(due).min(heavy) } else { usize::from(due) };
        self.runs_from(state, &done, soonest, next.entry((count, number)).or_default());
        if due == NEVER {
            return None;
        }
        let one_more = self.ledger.one_more(number, due, k);
        let [unmet, short] = self.ledger.value(one_more);
        let weight = (state.weight + self.weights[k]).min(all);
        ([unmet, short, runs] < self.limit).then_some((one_more, State { weight, ..*state }))
    }

    /// Joins states that differ least until there are few.
    fn narrow(&mut self, states: &mut Vec<State>) {
        while states.len() > self.width {
            self.joined = true;
            states.sort_unstable();
            let grown = |i: usize| {
                let [a, b] = [states[i], states[i + 1]];
                a.join(&b).sets() - a.sets().max(b.sets())
            };
            let mut pairs: Vec<(u32, usize)> =
                (0..states.len() - 1).map(|i| (grown(i), i)).collect();
            pairs.sort_unstable();
            let mut gone = vec![false; states.len()];
            let mut joins = Vec::new();
            for (_, i) in pairs.into_iter().take(states.len() - self.width) {
                if !gone[i] && !gone[i + 1] {
                    gone[i] = true;
                    gone[i + 1] = true;
                    joins.push(states[i].join(&states[i + 1]));
                }
            }
            let mut fewer = Vec::new();
            let rest =
                states.iter().zip(&gone).filter(|&(_, &gone)| !gone).map(|(state, _)| *state);
            joins.into_iter().chain(rest).for_each(|state| reach(&mut fewer, state));
            self.work += states.len();
            *states = fewer;
        }
    }

    /// All fullest loads of each cycle.
    fn runs_from(&mut self, from: &State, done: &Counts, due: usize, next: &mut Vec<State>) {
        let Self { ground, cycles, twins, washed, weights, width, joined, work, .. } = self;
        let by = due.min(ground.table.slots);
        let sum = |counts: &Counts| -> u64 {
            weights.iter().zip(counts).map(|(w, &n)| w * u64::from(n)).sum()
        };
        for latest in cycles.iter() {
            let Some(start) = latest.start[by] else {
                continue;
            };
            let mut busy = from.busy;
            if let Some(until) = busy.get_mut(latest.machine) {
                let twin = twins[latest.machine].is_some_and(|twin| from.busy[twin] == *until);
                if twin || *until > start {
                    continue;
                }
                *until = latest.unload[usize::from(*until)];
                sort_twins(&mut busy, twins);
            }
            let started = from.started.max(start);
            let mut most = latest.room[by];
            for (k, most) in most.iter_mut().enumerate().take(ground.table.kinds) {
                let missing = ground.due[k].len() as u8 - done[k];
                let washed = washed[usize::from(started)][k].saturating_sub(from.loaded[k]);
                *most = (*most).min(missing).min(washed);
            }
            let filling = Filling { table: ground.table, cycle: latest.cycle, most };
            let mut look = |load: &Counts| {
                *work += 1 + next.len() / 64;
                let (mut loaded, mut there) = (from.loaded, *done);
                loaded.iter_mut().zip(load).for_each(|(loaded, n)| *loaded += n);
                there.iter_mut().zip(load).for_each(|(there, n)| *there += n);
                let weight = (from.weight + latest.weight).min(sum(&there));
                if weight > from.weight || loaded != from.loaded {
                    reach(next, State { loaded, started, weight, busy });
                }
            };
            if *width == 1 {
                *joined = true;
                look(&filling.joined());
            } else {
                filling.each(&mut look);
            }
        }
    }
}

/// Keeps the states that no other covers.
fn reach(states: &mut Vec<State>, state: State) {
    if !states.iter().any(|other| other.covers(&state)) {
        states.retain(|other| !state.covers(other));
        states.push(state);
    }
}
