//! The least cost, drying and exposure for one machine once unmet, short and runs are known.
//!
//! With so little unmet one can go through all ways of leaving just that unmet. Then it is known
//! who is served, which sets come back, and which arrival is due when, and a second programme walks
//! through sequences of runs with the exact slot of the last unloading, by price.
//!
//! **Why it is a bound.** As in [`super::one`], with these additions. A run without delay starts in
//! the first slot in which it can. Later starts only help the next run: if that is not a warm one
//! that would find the machine cold otherwise, starting sooner keeps every rule here, costs the
//! same, and no set comes later. Runs without drying are tried in every slot. Exposure is a sum over
//! arrivals, see [`super::exposure`]. A state whose price, with the cheapest loads for all that is
//! still to come whatever the time, is not below the known one cannot lead to anything better.
//!
//! **What it leaves out:** loading and unloading take no minutes from the washing; two runs without
//! drying may both count on the same needs.

use super::super::decode::{Genome, Wish, penalty};
use super::super::problem::{Drying, MOST_KINDS};
use super::super::table::{CycleTable, Table};
use super::Stopped;
use super::exposure::{AtOnce, Exposure};
use super::ground::{Counts, Ground, Load};
use super::machine::Lone;
use super::worth::{NEVER, Price};
use std::collections::BTreeMap;

#[derive(Debug, Clone, Copy)]
struct Node {
    loaded: Counts,
    price: Price,
    /// Slot of the last unloading; of the first possible start where there was none.
    free: usize,
    /// The next run must be a warm one that starts after this slot; none where it need not.
    only_after: Option<i64>,
    parent: u32,
    /// Cycle and start of the run that led here; none at the start.
    run: Option<(u8, u16)>,
}

/// What is asked.
#[derive(Debug)]
pub(super) struct Asked<'a> {
    /// Needs that are left unmet, see [`super::refusals`].
    pub refused: &'a [u16],
    pub short: u64,
    pub runs: u64,
    /// Only less than this is looked for.
    pub below: Price,
}

struct Programme<'t> {
    ground: Ground<'t>,
    machine: Lone<'t>,
    exposure: Exposure,
    asked: &'t Asked<'t>,
    runs: usize,
    /// The least price so far.
    below: Price,
    /// `rest[n * size + place]`: the least price of so many sets in at most `n` runs.
    rest: Vec<Price>,
    nodes: Vec<Node>,
    work: usize,
}

/// Vectors times runs up to which a day is looked at.
const MOST_CELLS: usize = 1 << 21;
const MOST_LOADS: usize = 1 << 13;

/// What was found below the known price: nothing, or the least and a path to it. The work is taken
/// from the budget.
pub(super) fn prove(
    table: &Table,
    asked: &Asked,
    budget: &mut usize,
    stop: &dyn Fn() -> bool,
) -> Result<Option<(Price, Genome)>, Stopped> {
    let mut programme = Programme::new(table, asked).ok_or(Stopped::TooLarge)?;
    let done = programme.run(*budget, stop).ok_or(Stopped::Budget);
    *budget = budget.saturating_sub(programme.work);
    done
}

impl<'t> Programme<'t> {
    fn new(table: &'t Table, asked: &'t Asked) -> Option<Self> {
        let runs = usize::try_from(asked.runs).ok()?;
        let ground = Ground::new(table, asked.refused, MOST_CELLS / (runs + 1))?;
        Some(Self {
            machine: Lone::new(&ground, MOST_LOADS)?,
            exposure: Exposure::new(&ground),
            ground,
            asked,
            runs,
            below: asked.below,
            rest: Vec::new(),
            nodes: Vec::new(),
            work: 0,
        })
    }

    fn run(&mut self, budget: usize, stop: &dyn Fn() -> bool) -> Option<Option<(Price, Genome)>> {
        self.price_the_rest(budget)?;
        let mut layer = vec![Node {
            loaded: Counts::default(),
            price: Price::default(),
            free: self.machine.table.free_from,
            only_after: None,
            parent: u32::MAX,
            run: None,
        }];
        let mut best = None;
        for left in (0..=self.runs).rev() {
            let mut next = BTreeMap::new();
            for (i, node) in layer.into_iter().enumerate() {
                if (i % 64 == 0 && stop()) || self.work > budget {
                    return None;
                }
                if self.enough(&node.loaded) {
                    if node.price < self.below && node.only_after.is_none() {
                        self.below = node.price;
                        best = Some(node);
                    }
                } else if left > 0 {
                    self.runs_from(node, left, &mut next);
                }
            }
            layer = next.into_values().collect();
        }
        Some(best.map(|node| (node.price, self.path(node))))
    }

    /// Whether nothing is missing but what may be short tomorrow.
    fn enough(&self, loaded: &Counts) -> bool {
        let missing = |(k, due): (usize, &Vec<u16>)| due.len() - usize::from(loaded[k]);
        let due = &self.ground.due;
        usize::from(self.ground.next_due(loaded).0) >= self.ground.table.slots
            && due.iter().enumerate().map(missing).sum::<usize>() as u64 <= self.asked.short
    }

    /// The least that each number of sets can come to in so many runs, if time did not count.
    fn price_the_rest(&mut self, budget: usize) -> Option<()> {
        let Self { ground, machine, exposure, asked, runs, .. } = self;
        let size = ground.size;
        let loads: Vec<(usize, Counts, Price)> = least_loads(machine, exposure);
        self.work += *runs * size * loads.len() / 8;
        if self.work > budget {
            return None;
        }
        let all = ground.all();
        let mut rest = vec![NEVER; size * (*runs + 1)];
        let mut free = Vec::new();
        ground.each(|place, counts| {
            let mut loaded = all;
            loaded.iter_mut().zip(counts).for_each(|(all, n)| *all -= n);
            let tomorrow = usize::from(ground.next_due(&loaded).0) >= ground.table.slots;
            if tomorrow && counts.iter().map(|&n| u64::from(n)).sum::<u64>() <= asked.short {
                free.push(place);
            }
        });
        for n in 0..=*runs {
            rest[n * size] = Price::default();
            free.iter().for_each(|place| rest[n * size + place] = Price::default());
        }
        for n in 1..=*runs {
            let (before, now) = rest.split_at_mut(n * size);
            let before = &before[(n - 1) * size..];
            ground.each(|place, counts| {
                let fits = |load: &&(usize, Counts, Price)| {
                    load.1.iter().zip(counts).all(|(n, all)| n <= all)
                };
                let least =
                    loads.iter().filter(fits).map(|load| before[place - load.0] + load.2).min();
                now[place] = now[place].min(before[place]).min(least.unwrap_or(NEVER));
            });
        }
        self.rest = rest;
        Some(())
    }

    fn runs_from(&mut self, from: Node, left: usize, next: &mut BTreeMap<u64, Node>) {
        let machine = self.machine.table;
        let all = self.ground.all();
        let place = self.ground.place(&from.loaded);
        let rest = self.ground.size * left - 1 - place;
        self.nodes.push(from);
        for (c, cycle) in machine.cycles.iter().enumerate() {
            let warmth = cycle.long[1] < cycle.long[0] || cycle.cost[1] < cycle.cost[0];
            let empty = warmth && self.ground.to_spare(cycle, &from.loaded);
            for l in usize::from(!empty)..self.machine.loads[c].len() {
                let load = self.machine.loads[c][l];
                if (0..MOST_KINDS).any(|k| from.loaded[k] + load.counts[k] > all[k]) {
                    continue;
                }
                self.work += 1;
                let rest = self.rest[rest - load.place];
                let least = from.price + least_price(cycle, &load, &self.exposure) + rest;
                if least >= self.below {
                    continue;
                }
                let mut loaded = from.loaded;
                loaded.iter_mut().zip(&load.counts).for_each(|(loaded, n)| *loaded += n);
                let Some(washed) =
                    self.machine.washed_by(&self.ground, &loaded, place + load.place)
                else {
                    continue;
                };
                for warm in [true, false] {
                    let run = Run { c, load, loaded, washed, warm, rest, left };
                    self.starts(&from, &run, next);
                }
            }
        }
    }

    /// All starts of a run that may be worth it.
    fn starts(&mut self, from: &Node, run: &Run, next: &mut BTreeMap<u64, Node>) {
        let table = self.ground.table;
        let machine = self.machine.table;
        let cycle = &machine.cycles[run.c];
        let warm_until = match from.run {
            Some(_) => machine.warm_until.max((from.free + machine.warm_window) as i64),
            None => machine.warm_until,
        };
        if from.only_after.is_some() && !run.warm {
            return;
        }
        let due = usize::from(self.ground.next_due(&from.loaded).0);
        let at_once = cycle.drying == Drying::None;
        let mut sooner: Option<usize> = None;
        for start in from.free.max(run.washed)..table.slots {
            if (run.warm && start as i64 > warm_until)
                || (sooner.is_some() && !at_once && run.left == 1)
            {
                return;
            }
            self.work += 1;
            let end = start + cycle.long[usize::from(run.warm)];
            let Some(hands) = table.hands.get(end..) else { return };
            let Some(wait) = hands.iter().position(|&h| h >= cycle.unload_min) else { return };
            let free = end + wait;
            if free + cycle.after > table.slots || free + self.machine.after(cycle) > due {
                return;
            }
            if table.hands[start] < cycle.load_min
                || sooner == Some(free)
                || (at_once
                    && (wait > 0 || !self.room(&run.load, free + cycle.after, end + table.window)))
            {
                continue;
            }
            let late_for = sooner.filter(|_| !at_once);
            sooner = Some(free);
            if from.only_after.is_some_and(|after| start as i64 <= after) {
                continue;
            }
            let price = from.price + self.price(from, run, free);
            if price + run.rest >= self.below {
                continue;
            }
            let only_after = late_for
                .map(|sooner| machine.warm_until.max((sooner + machine.warm_window) as i64));
            let parent = self.nodes.len() as u32 - 1;
            let node = Node {
                loaded: run.loaded,
                price,
                free,
                only_after,
                parent,
                run: Some((run.c as u8, start as u16)),
            };
            reach(next, self.ground.place(&run.loaded), node);
        }
    }

    fn price(&self, from: &Node, run: &Run, free: usize) -> Price {
        let cycle = &self.machine.table.cycles[run.c];
        // The rules let a warm machine be run at the cold price.
        let cost = if run.warm { cycle.cost[0].min(cycle.cost[1]) } else { cycle.cost[0] };
        let longest = self.machine.table.cycles.iter().map(|c| c.after).max().unwrap_or(0);
        let before = from.run.map_or(i64::MIN / 2, |_| (from.free + longest) as i64);
        let mut exposure = 0;
        for k in (0..self.ground.table.kinds).filter(|&k| run.load.counts[k] > 0) {
            let n = usize::from(run.load.counts[k]);
            exposure += self.exposure.late(
                k,
                free + self.machine.after(cycle),
                usize::from(from.loaded[k]),
                n,
            );
            if cycle.drying == Drying::None {
                exposure += self.exposure.at_once(&AtOnce {
                    kind: k,
                    ready: free + cycle.after,
                    first: usize::from(from.loaded[k]),
                    n,
                    before,
                });
            }
        }
        Price {
            cost: cost + run.load.pouches,
            drying: run.load.sets * penalty(cycle.drying),
            exposure,
        }
    }

    /// Whether so many sets can be opened in the slots `ready..=last`.
    fn room(&self, load: &Load, ready: usize, last: usize) -> bool {
        let ground = &self.ground;
        (0..ground.table.kinds).filter(|&k| load.counts[k] > 0).all(|k| {
            let asked = (ready..=last.min(ground.table.slots - 1))
                .map(|t| ground.wanted(t, k))
                .sum::<u32>();
            asked >= u32::from(load.counts[k])
        })
    }

    fn path(&self, last: Node) -> Genome {
        let mut wishes = Vec::new();
        let mut node = last;
        while let Some((cycle, start)) = node.run {
            let before = self.nodes[node.parent as usize];
            let mut most = node.loaded;
            most.iter_mut().zip(&before.loaded).for_each(|(most, before)| *most -= before);
            wishes.push(Wish { start, machine: 0, cycle, most });
            node = before;
        }
        wishes.reverse();
        Genome { wishes, refused: self.asked.refused.to_vec() }
    }
}

/// A run as it is tried.
struct Run {
    c: usize,
    load: Load,
    loaded: Counts,
    washed: usize,
    warm: bool,
    /// The least price of all that comes after it.
    rest: Price,
    /// Runs from this one on.
    left: usize,
}

/// Keeps the cheapest way to each state; of two conditions for the next run the weaker one.
fn reach(next: &mut BTreeMap<u64, Node>, place: usize, node: Node) {
    let key = ((place as u64) << 16 | node.free as u64) << 1 | u64::from(node.only_after.is_some());
    let known = next.entry(key).or_insert(node);
    let only_after = known.only_after.min(node.only_after);
    if node.price < known.price {
        *known = node;
    }
    known.only_after = only_after;
}

fn least_loads(machine: &Lone, exposure: &Exposure) -> Vec<(usize, Counts, Price)> {
    let mut loads = Vec::new();
    for (cycle, of_cycle) in machine.table.cycles.iter().zip(&machine.loads) {
        let filled = of_cycle.iter().filter(|load| load.sets > 0);
        loads.extend(
            filled.map(|load| (load.place, load.counts, least_price(cycle, load, exposure))),
        );
    }
    loads
}

/// The least that a load can come to, whenever.
fn least_price(cycle: &CycleTable, load: &Load, exposure: &Exposure) -> Price {
    let at_once = cycle.drying == Drying::None;
    let each = load.counts.iter().enumerate().filter(|&(_, &n)| at_once && n > 0);
    Price {
        cost: cycle.cost[0].min(cycle.cost[1]) + load.pouches,
        drying: load.sets * penalty(cycle.drying),
        exposure: each.map(|(k, &n)| exposure.least_at_once(k) * i64::from(n)).sum(),
    }
}
