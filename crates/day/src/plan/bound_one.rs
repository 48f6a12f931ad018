//! The least that any plan for one machine can come to: a dynamic programme over sequences of runs.
//!
//! A state is what has been loaded of each kind, how many needs were given up, and when the machine
//! is free. What it leaves out: minutes of loading and unloading are not taken from the washing,
//! a machine counts as warm after its first run, a set used at once serves whoever comes later as
//! well, and needs that are given up are the lightest. Every real plan is a path here, so the best
//! path is a bound; it is often a plan too.

use super::decode::{Genome, Wish};
use super::problem::{Drying, MOST_KINDS};
use super::table::{CycleTable, NEVER, Table};
use std::collections::HashMap;

type Counts = [u8; MOST_KINDS];

#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
struct Key {
    loaded: Counts,
    unmet: Counts,
    short: Counts,
}

impl Key {
    /// Arrivals of a kind that are there or given up.
    fn done(&self, k: usize) -> usize {
        [self.loaded[k], self.unmet[k], self.short[k]].into_iter().map(usize::from).sum()
    }
}

#[derive(Debug, Clone, Copy)]
struct Node {
    key: Key,
    /// Earliest and latest slot in which the last run can have been unloaded.
    free: usize,
    latest: i64,
    parent: usize,
    /// Cycle and start of the run that led here; none for a need given up.
    run: Option<(u8, u16)>,
}

/// What was proven.
#[derive(Debug, Clone)]
pub(super) struct Proof {
    /// Lower bounds of unmet, short and runs, each given the ones before.
    pub least: [u64; 3],
    /// The path that comes to them, as wishes.
    pub path: Genome,
}

struct Programme<'t> {
    table: &'t Table,
    due: Vec<Vec<u16>>,
    /// `washed[a * kinds + k]`: sets of `k` back before slot `a`, were everybody served.
    back: Vec<u32>,
    hands: Vec<i32>,
    /// Weights of the needs of each kind, the lightest first.
    weights: Vec<Vec<u32>>,
    washed_by: HashMap<Counts, usize>,
    nodes: Vec<Node>,
    /// Loads that were tried.
    work: usize,
    reached: HashMap<Key, Vec<(usize, i64)>>,
}

/// The bound for a table with one machine; `at_most` is what a known plan comes to. `None` where
/// the day is too large.
pub(super) fn prove(
    table: &Table,
    at_most: [u64; 3],
    budget: usize,
    stop: &dyn Fn() -> bool,
) -> Option<Proof> {
    let [machine] = table.machines.as_slice() else {
        return None;
    };
    let mut programme = Programme::new(table)?;
    let start = Key { loaded: [0; MOST_KINDS], unmet: [0; MOST_KINDS], short: [0; MOST_KINDS] };
    programme.nodes.push(Node {
        key: start,
        free: machine.free_from,
        latest: machine.warm_until - machine.warm_window as i64,
        parent: usize::MAX,
        run: None,
    });
    let mut best: Option<([u64; 3], usize)> = None;
    let mut layer = vec![0_usize];
    for runs in 0_u64.. {
        let mut next = Vec::new();
        let mut i = 0;
        while i < layer.len() {
            if (i % 64 == 0 && stop()) || programme.work > budget {
                return None;
            }
            let node = layer[i];
            i += 1;
            let (unmet, short) = programme.given_up(&programme.nodes[node].key);
            let value = [unmet, short, runs];
            let limit = best.map_or(at_most, |(b, _)| b.min(at_most));
            let first_known = best.is_none() && value == at_most;
            if value > limit || (value == limit && !first_known) {
                continue;
            }
            if programme.all_served(&programme.nodes[node].key) {
                best = Some((value, node));
                continue;
            }
            programme.give_up(node, &mut layer);
            programme.run_from(node, &mut next);
        }
        if next.is_empty() {
            break;
        }
        layer = next;
    }
    // Nothing below the known plan: the plan itself is the least.
    match best {
        Some((least, node)) => Some(Proof { least, path: programme.path(node) }),
        None => Some(Proof { least: at_most, path: Genome::default() }),
    }
}

impl<'t> Programme<'t> {
    fn new(table: &'t Table) -> Option<Self> {
        let due = table.due(&[]).0;
        if due.iter().any(|d| d.len() > usize::from(u8::MAX)) {
            return None;
        }
        let mut back = vec![0_u32; (table.slots + 2) * table.kinds];
        for k in 0..table.kinds {
            let mut sum = table.dirty[k];
            for a in 1..=table.slots + 1 {
                let t = a - 1;
                if t <= table.slots {
                    sum += u32::from(table.dirty_at[t * table.kinds + k]);
                    sum += table
                        .needs
                        .iter()
                        .filter(|n| n.kind == k && n.end == t)
                        .map(|n| n.n)
                        .sum::<u32>();
                }
                back[a * table.kinds + k] = sum;
            }
        }
        let mut hands = vec![0_i32; table.slots + 1];
        for t in 0..table.slots {
            hands[t + 1] = hands[t].saturating_add(table.hands[t]);
        }
        let weights = (0..table.kinds)
            .map(|k| {
                let of_kind = table.needs.iter().filter(|n| n.kind == k);
                let mut w: Vec<u32> =
                    of_kind.flat_map(|n| std::iter::repeat_n(n.weight, n.n as usize)).collect();
                w.sort_unstable();
                w
            })
            .collect();
        Some(Self {
            table,
            due,
            back,
            hands,
            weights,
            washed_by: HashMap::new(),
            nodes: Vec::new(),
            work: 0,
            reached: HashMap::new(),
        })
    }

    /// By when the next arrival must be there: slot and kind.
    fn next_due(&self, key: &Key) -> (u16, usize) {
        (0..self.table.kinds)
            .map(|k| {
                let j = key.done(k);
                (self.due[k].get(j).copied().unwrap_or(NEVER), k)
            })
            .min()
            .unwrap_or((NEVER, 0))
    }

    fn all_served(&self, key: &Key) -> bool {
        self.next_due(key).0 == NEVER
    }

    /// Unmet and short at least, from how many needs of each kind were given up.
    fn given_up(&self, key: &Key) -> (u64, u64) {
        let lightest =
            |(w, &n): (&Vec<u32>, &u8)| w.iter().take(n.into()).map(|&w| u64::from(w)).sum::<u64>();
        let unmet = self.weights.iter().zip(&key.unmet).map(lightest).sum();
        (unmet, key.short.iter().map(|&n| u64::from(n)).sum())
    }

    fn give_up(&mut self, node: usize, layer: &mut Vec<usize>) {
        let Node { mut key, free, latest, .. } = self.nodes[node];
        let (due, k) = self.next_due(&key);
        let given_up =
            if usize::from(due) < self.table.slots { &mut key.unmet } else { &mut key.short };
        given_up[k] += 1;
        self.reach(Node { key, free, latest, parent: node, run: None }, layer);
    }

    fn reach(&mut self, node: Node, layer: &mut Vec<usize>) {
        let known = self.reached.entry(node.key).or_default();
        if known.iter().any(|&(free, latest)| free <= node.free && latest >= node.latest) {
            return;
        }
        known.retain(|&(free, latest)| free < node.free || latest > node.latest);
        known.push((node.free, node.latest));
        layer.push(self.nodes.len());
        self.nodes.push(node);
    }

    fn run_from(&mut self, node: usize, next: &mut Vec<usize>) {
        let table = self.table;
        let from = self.nodes[node];
        for (c, cycle) in table.machines[0].cycles.iter().enumerate() {
            let mut load = Counts::default();
            loop {
                if !self.next_load(cycle, &from.key, &mut load) {
                    break;
                }
                let mut key = from.key;
                for k in 0..table.kinds {
                    key.loaded[k] += load[k];
                }
                self.work += 1;
                for warm in [true, false] {
                    if let Some((start, free, latest)) =
                        self.earliest(&from, &key, &load, cycle, warm)
                    {
                        let run = Some((c as u8, start as u16));
                        self.reach(Node { key, free, latest, parent: node, run }, next);
                    }
                }
            }
        }
    }

    /// The next load in counting order that fits and is needed some time; `false` after the last.
    fn next_load(&self, cycle: &CycleTable, key: &Key, load: &mut Counts) -> bool {
        let table = self.table;
        for k in 0..table.kinds {
            load[k] += 1;
            let asked = usize::from(load[k]) + key.done(k);
            let weigh = |each: &[u32]| -> u32 {
                each.iter().zip(load.iter()).map(|(&e, &n)| e * u32::from(n)).sum()
            };
            let fits = weigh(&table.mass) <= cycle.max_mass
                && (!cycle.wrapped || weigh(&table.area) <= cycle.max_area);
            if asked <= self.due[k].len() && fits {
                return true;
            }
            load[k] = 0;
        }
        false
    }

    /// Earliest start of a run to `key`, and when the machine is free again.
    fn earliest(
        &mut self,
        from: &Node,
        key: &Key,
        load: &Counts,
        cycle: &CycleTable,
        warm: bool,
    ) -> Option<(usize, usize, i64)> {
        let table = self.table;
        let machine = &table.machines[0];
        let washed = self.washed_by(&key.loaded)?;
        let (due, _) = self.next_due(&from.key);
        let mut start = from.free.max(washed);
        loop {
            start += table.hands.get(start..)?.iter().position(|&h| h >= cycle.load_min)?;
            let warm_until = from.latest + machine.warm_window as i64;
            if warm && start as i64 > warm_until {
                return None;
            }
            let end = start + cycle.long[usize::from(warm)];
            let wait = table.hands.get(end..)?.iter().position(|&h| h >= cycle.unload_min)?;
            let ready = end + wait + cycle.after;
            if ready > table.slots || ready > usize::from(due) {
                return None;
            }
            let at_once = cycle.drying == Drying::None;
            if !at_once || (wait == 0 && self.room(load, ready, end + table.window)) {
                let last_ready = usize::from(due).min(table.slots);
                let mut latest = (last_ready - cycle.after) as i64;
                if warm {
                    latest =
                        latest.min(self.unloaded_by(warm_until as usize + cycle.long[1], cycle));
                }
                return Some((start, end + wait, latest));
            }
            start += 1;
        }
    }

    /// When a run that is over at `end` is unloaded.
    fn unloaded_by(&self, end: usize, cycle: &CycleTable) -> i64 {
        let hands = self.table.hands.get(end..).unwrap_or(&[]);
        hands
            .iter()
            .position(|&h| h >= cycle.unload_min)
            .map_or(i64::MAX, |wait| (end + wait) as i64)
    }

    /// Whether so many sets can be opened in the slots `ready..=last`.
    fn room(&self, load: &Counts, ready: usize, last: usize) -> bool {
        let table = self.table;
        (0..table.kinds).filter(|&k| load[k] > 0).all(|k| {
            let needs = (ready..=last.min(table.slots - 1)).flat_map(|t| table.needs_at(t));
            needs.filter(|n| n.kind == k).map(|n| n.n).sum::<u32>() >= u32::from(load[k])
        })
    }

    /// First slot in which a run may start once so many sets were washed in all.
    fn washed_by(&mut self, loaded: &Counts) -> Option<usize> {
        let table = self.table;
        if let Some(&slot) = self.washed_by.get(loaded) {
            return (slot <= table.slots).then_some(slot);
        }
        let mut fullest = 0;
        let mut any = false;
        for a in 0..=table.slots {
            let mut work = 0_u32;
            for k in 0..table.kinds {
                let later: u32 = (0..=table.slots)
                    .map(|t| u32::from(table.loadable_at[t * table.kinds + k]))
                    .sum();
                let washed = u32::from(loaded[k]).saturating_sub(table.loadable[k] + later);
                let open = washed.saturating_sub(self.back[a * table.kinds + k]);
                any |= open > 0;
                work += open * table.hand_min[k];
            }
            if work > 0 {
                fullest = fullest.max(self.hands[a].saturating_add(work as i32));
            }
        }
        let slot = match self.hands.iter().position(|&h| h >= fullest) {
            Some(b) if any => b + table.passive,
            Some(_) => 0,
            None => usize::MAX,
        };
        self.washed_by.insert(*loaded, slot);
        (slot <= table.slots).then_some(slot)
    }

    fn path(&self, mut node: usize) -> Genome {
        let mut wishes = Vec::new();
        while node != usize::MAX {
            let Node { key, parent, run, .. } = self.nodes[node];
            if let Some((cycle, start)) = run {
                let before = self.nodes[parent].key.loaded;
                let mut most = [0; MOST_KINDS];
                for k in 0..MOST_KINDS {
                    most[k] = key.loaded[k] - before[k];
                }
                wishes.push(Wish { start, machine: 0, cycle, most });
            }
            node = parent;
        }
        wishes.reverse();
        Genome { wishes, refused: Vec::new() }
    }
}
