//! What all bounds stand on: which sets must arrive by when, and by when they can be washed.

use super::super::problem::MOST_KINDS;
use super::super::table::{CycleTable, NEVER, Table, refused};

/// A number of sets of each kind.
pub(super) type Counts = [u8; MOST_KINDS];

/// What one cycle can hold, one of many.
#[derive(Debug, Clone, Copy)]
pub(super) struct Load {
    pub counts: Counts,
    /// What the load adds to the place of a vector, see [`Ground::place`].
    pub place: usize,
    pub sets: u64,
    /// Price of its pouches.
    pub pouches: u64,
}

/// The day without the machines' times.
#[derive(Debug)]
pub(super) struct Ground<'t> {
    pub table: &'t Table,
    /// Per kind, the slot by which arrival number `j` must be there, were everybody served but the
    /// refused; the last ones are due after the last slot: tomorrow's.
    pub due: Vec<Vec<u16>>,
    /// Sets of each kind that need no washing: slot from which on, and how many until then.
    carried: Vec<(usize, Counts)>,
    /// Slots in which used sets come back: hand minutes before it, and sets that were back before.
    releases: Vec<(i32, Vec<u32>)>,
    /// Sets that come back in all.
    returned: Vec<u32>,
    /// Hand minutes before each slot.
    minutes: Vec<i32>,
    /// Flat over slots and kinds.
    wanted: Vec<u16>,
    stride: Vec<usize>,
    /// How many vectors there are.
    pub size: usize,
}

impl<'t> Ground<'t> {
    /// The day if those needs are refused and all others met. `None` where it has more vectors
    /// than `most`.
    pub fn new(table: &'t Table, refusals: &[u16], most: usize) -> Option<Self> {
        let due = table.due(refusals).0;
        let mut stride = Vec::new();
        let mut size = 1_usize;
        for arrivals in &due {
            stride.push(size);
            let values = u8::try_from(arrivals.len()).ok()?;
            size = size.checked_mul(usize::from(values) + 1).filter(|&size| size <= most)?;
        }
        let mut minutes = vec![0_i32; table.slots + 1];
        for t in 0..table.slots {
            minutes[t + 1] = minutes[t].saturating_add(table.hands[t]);
        }
        let (releases, returned) = releases(table, refusals, &minutes);
        let mut wanted = vec![0; table.slots * table.kinds];
        for (i, need) in table.needs.iter().enumerate() {
            wanted[need.start * table.kinds + need.kind] += (need.n - refused(refusals, i)) as u16;
        }
        Some(Self {
            table,
            due,
            carried: carried(table),
            releases,
            returned,
            minutes,
            wanted,
            stride,
            size,
        })
    }

    /// The vectors counted through, the first kind fastest.
    pub fn place(&self, counts: &Counts) -> usize {
        self.stride.iter().zip(counts).map(|(stride, &n)| stride * usize::from(n)).sum()
    }

    /// Each vector but the empty one with its place, in order.
    pub fn each(&self, mut look: impl FnMut(usize, &Counts)) {
        let all = self.all();
        let mut counts = Counts::default();
        for place in 1..self.size {
            for k in 0..self.table.kinds {
                if counts[k] < all[k] {
                    counts[k] += 1;
                    break;
                }
                counts[k] = 0;
            }
            look(place, &counts);
        }
    }

    /// All that must arrive.
    pub fn all(&self) -> Counts {
        let mut all = Counts::default();
        all.iter_mut().zip(&self.due).for_each(|(n, due)| *n = due.len() as u8);
        all
    }

    /// By when the next arrival must be there, and its kind, if those are there or given up.
    pub fn next_due(&self, done: &Counts) -> (u16, usize) {
        let next = |(k, due): (usize, &Vec<u16>)| {
            (due.get(usize::from(done[k])).copied().unwrap_or(NEVER), k)
        };
        self.due.iter().enumerate().map(next).min().unwrap_or((NEVER, 0))
    }

    /// Sets of kind `k` that are asked for in slot `t` and not refused.
    pub fn wanted(&self, t: usize, k: usize) -> u32 {
        u32::from(self.wanted[t * self.table.kinds + k])
    }

    /// Whether one more set of kind `k` is needed by nobody, though a run could hold it.
    pub fn to_spare(&self, cycle: &CycleTable, done: &Counts) -> bool {
        let one = |k: usize| {
            let mut one = Counts::default();
            one[k] = 1;
            one
        };
        (0..self.table.kinds)
            .any(|k| usize::from(done[k]) >= self.due[k].len() && fits(self.table, cycle, &one(k)))
    }

    /// First slot in which a run may start if so many sets are in it and the runs before it.
    ///
    /// Sets of a kind are alike, so the first that come back are the first to be washed, and what
    /// must be washed by the end of slot `b - 1` can be, if and only if for each slot `a` the sets
    /// that come back from `a` on and are wanted fit into the hands of `a..b`. That is necessary
    /// whatever else the hands do; here they do nothing else. A kind that takes no washing time is
    /// always there, which is how the rules read it.
    pub fn washed_by(&self, loaded: &Counts) -> Option<usize> {
        for (i, &(from, carried)) in self.carried.iter().enumerate() {
            let Some(slot) = self.washed_with(loaded, &carried) else {
                continue;
            };
            let until = self.carried.get(i + 1).map_or(usize::MAX, |next| next.0);
            let slot = slot.max(from);
            if slot < until {
                return (slot < self.table.slots).then_some(slot);
            }
        }
        None
    }

    fn washed_with(&self, loaded: &Counts, carried: &Counts) -> Option<usize> {
        let table = self.table;
        let mut wanted = [0_u32; MOST_KINDS];
        let mut any = false;
        for k in 0..table.kinds {
            if table.hand_min[k] > 0 {
                wanted[k] = u32::from(loaded[k].saturating_sub(carried[k]));
                any |= wanted[k] > 0;
                if wanted[k] > self.returned[k] {
                    return None;
                }
            }
        }
        if !any {
            return Some(0);
        }
        let mut fullest = 0_i32;
        for (before, back) in &self.releases {
            // The first set of a kind may be half washed; it lies there from the beginning.
            let begun = |k: usize| if back[k] == 0 { table.worked[k] } else { 0 };
            let work: u32 = (0..table.kinds)
                .map(|k| {
                    (wanted[k].saturating_sub(back[k]) * table.hand_min[k]).saturating_sub(begun(k))
                })
                .sum();
            if work > 0 {
                fullest = fullest.max(before.saturating_add_unsigned(work));
            }
        }
        Some(self.minutes.partition_point(|&m| m < fullest) + table.passive)
            .filter(|_| self.minutes.last().is_some_and(|&m| m >= fullest))
    }

    /// Every load of a cycle that some day could ask for, the empty one first. `None` where there
    /// are more than `most`.
    pub fn loads(&self, cycle: &CycleTable, most: usize) -> Option<Vec<Load>> {
        let table = self.table;
        let all = self.all();
        let mut loads = Vec::new();
        let mut counts = Counts::default();
        'next: loop {
            if loads.len() == most {
                return None;
            }
            let pouches: u64 =
                table.pouch_cost.iter().zip(&counts).map(|(p, &n)| p * u64::from(n)).sum();
            loads.push(Load {
                counts,
                place: self.place(&counts),
                sets: counts.iter().map(|&n| u64::from(n)).sum(),
                pouches: if cycle.wrapped { pouches } else { 0 },
            });
            for k in 0..table.kinds {
                counts[k] += 1;
                if counts[k] <= all[k] && fits(table, cycle, &counts) {
                    continue 'next;
                }
                counts[k] = 0;
            }
            return Some(loads);
        }
    }
}

fn fits(table: &Table, cycle: &CycleTable, counts: &Counts) -> bool {
    let sum = |each: &[u32]| -> u64 {
        each.iter().zip(counts).map(|(&e, &n)| u64::from(e) * u64::from(n)).sum()
    };
    sum(&table.mass) <= u64::from(cycle.max_mass)
        && (!cycle.wrapped || sum(&table.area) <= u64::from(cycle.max_area))
}

fn carried(table: &Table) -> Vec<(usize, Counts)> {
    let mut now = table.loadable.clone();
    let mut carried = Vec::new();
    for t in 0..table.slots {
        let more = &table.loadable_at[t * table.kinds..(t + 1) * table.kinds];
        if t == 0 || more.iter().any(|&n| n > 0) {
            now.iter_mut().zip(more).for_each(|(now, &more)| *now += u32::from(more));
            let mut counts = Counts::default();
            counts
                .iter_mut()
                .zip(&now)
                .for_each(|(n, &now)| *n = u8::try_from(now).unwrap_or(u8::MAX));
            carried.push((t, counts));
        }
    }
    carried
}

/// Slots in which used sets come back, and how many come back in all.
fn releases(table: &Table, refusals: &[u16], minutes: &[i32]) -> (Vec<(i32, Vec<u32>)>, Vec<u32>) {
    let mut at: Vec<Vec<u32>> = (0..=table.slots)
        .map(|t| {
            table.dirty_at[t * table.kinds..(t + 1) * table.kinds]
                .iter()
                .map(|&n| u32::from(n))
                .collect()
        })
        .collect();
    at[0].iter_mut().zip(&table.dirty).for_each(|(at, dirty)| *at += dirty);
    for (i, need) in table.needs.iter().enumerate().filter(|(_, need)| need.end <= table.slots) {
        at[need.end][need.kind] += need.n - refused(refusals, i);
    }
    let mut back = vec![0; table.kinds];
    let mut releases = Vec::new();
    for (t, returned) in
        at.iter().enumerate().filter(|(_, returned)| returned.iter().any(|&n| n > 0))
    {
        releases.push((minutes[t], back.clone()));
        back.iter_mut().zip(returned).for_each(|(back, n)| *back += n);
    }
    (releases, back)
}
