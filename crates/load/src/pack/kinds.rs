//! Pouches of one size are one kind; what may stand in for what; how many of them a set of places
//! holds.

use super::Bag;
use std::collections::BTreeMap;

/// At most so many kinds are told apart; with more sizes, neighbours share a kind.
pub const MOST_KINDS: usize = 8;

/// A number for each kind. In a [`Kinds::chain`] its running form counts "this kind or larger".
pub type Tally = [u32; MOST_KINDS];

/// Pouches of one size, on the same trays.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub struct Kind {
    /// Shorter side, mm.
    pub short: i32,
    /// Longer side, mm.
    pub long: i32,
    /// Goes on trays of this height rank and above.
    pub rank: usize,
}

impl Kind {
    /// Size along the first and the second axis; turned: the long side along the first.
    pub const fn sides(&self, turned: bool) -> (i32, i32) {
        if turned { (self.long, self.short) } else { (self.short, self.long) }
    }

    const fn within(&self, other: &Self) -> bool {
        self.short <= other.short && self.long <= other.long && self.rank <= other.rank
    }
}

/// All kinds of one load.
#[derive(Debug, Clone)]
pub struct Kinds {
    /// Small ones first.
    pub all: Vec<Kind>,
    /// Each kind goes into any place of a later kind.
    pub chain: bool,
    /// The pouches of each kind: mass, index; light ones first.
    pub bags: Vec<Vec<(u32, usize)>>,
    /// How many there are, in running form.
    pub supply: Tally,
    /// All pouches as mass, index, kind: light ones first.
    light: Vec<(u32, usize, usize)>,
    /// The same in the order in which they were handed in.
    listed: Vec<(u32, usize, usize)>,
}

/// Which way sizes are rounded where there are more than [`MOST_KINDS`].
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Rounded {
    /// Up: what fits then fits.
    Up,
    /// Down: what does not fit then does not fit.
    Down,
}

impl Kinds {
    /// Sorts the pouches that fit somewhere by kind. `single` says that no kind may stand in a
    /// place of another.
    pub fn new(bags: &[Bag], fits: &[(usize, Kind)], rounded: Rounded, single: bool) -> Self {
        let mut groups: BTreeMap<(i64, Kind), Vec<usize>> = BTreeMap::new();
        for &(bag, kind) in fits {
            let area = i64::from(kind.short) * i64::from(kind.long);
            groups.entry((area, kind)).or_default().push(bag);
        }
        let groups: Vec<(Kind, Vec<usize>)> = groups.into_iter().map(|((_, k), b)| (k, b)).collect();
        let size = groups.len().div_ceil(MOST_KINDS).max(1);
        let mut merged: Vec<(Kind, Vec<usize>)> = groups
            .chunks(size)
            .map(|chunk| {
                let pick = |of: fn(&Kind) -> i32| {
                    let all = chunk.iter().map(|(kind, _)| of(kind));
                    let found = if rounded == Rounded::Up { all.max() } else { all.min() };
                    found.unwrap_or(1)
                };
                let ranks = chunk.iter().map(|(kind, _)| kind.rank);
                let rank = if rounded == Rounded::Up { ranks.max() } else { ranks.min() };
                let kind =
                    Kind { short: pick(|k| k.short), long: pick(|k| k.long), rank: rank.unwrap_or(0) };
                (kind, chunk.iter().flat_map(|(_, bags)| bags.iter().copied()).collect())
            })
            .collect();
        merged.sort_by_key(|(kind, _)| (kind.short, kind.long, kind.rank));
        Self::sorted(bags, merged, single)
    }

    fn sorted(bags: &[Bag], merged: Vec<(Kind, Vec<usize>)>, single: bool) -> Self {
        let all: Vec<Kind> = merged.iter().map(|(kind, _)| *kind).collect();
        let chain = !single && all.windows(2).all(|two| matches!(two, [a, b] if a.within(b)));
        let of = |&bag: &usize| bags.get(bag).map(|b| (b.mass_g, bag));
        let mut own: Vec<Vec<(u32, usize)>> =
            merged.iter().map(|(_, list)| list.iter().filter_map(of).collect()).collect();
        own.iter_mut().for_each(|list| list.sort_unstable());
        let mut listed: Vec<(u32, usize, usize)> = own
            .iter()
            .enumerate()
            .flat_map(|(kind, list)| list.iter().map(move |&(mass, bag)| (mass, bag, kind)))
            .collect();
        let mut light = listed.clone();
        light.sort_unstable();
        listed.sort_unstable_by_key(|&(_, bag, _)| bag);
        let mut kinds = Self { all, chain, bags: own, supply: Tally::default(), light, listed };
        kinds.supply = kinds.running(&kinds.numbers());
        kinds
    }

    /// How many there are of each kind.
    pub fn numbers(&self) -> Tally {
        let mut numbers = Tally::default();
        for (number, bags) in numbers.iter_mut().zip(&self.bags) {
            *number = u32::try_from(bags.len()).unwrap_or(u32::MAX);
        }
        numbers
    }

    /// In a chain: "so many of this kind or larger". Else as it is.
    pub fn running(&self, numbers: &Tally) -> Tally {
        let mut running = *numbers;
        if self.chain {
            for kind in (0..MOST_KINDS - 1).rev() {
                running[kind] += running[kind + 1];
            }
        }
        running
    }

    /// How many pouches such places hold at most, whatever they weigh. Both in running form.
    pub fn held(&self, places: &Tally) -> u32 {
        if !self.chain {
            return places.iter().zip(&self.supply).map(|(a, b)| *a.min(b)).sum();
        }
        let mut held = 0;
        for kind in (0..MOST_KINDS).rev() {
            let larger = if kind + 1 < MOST_KINDS { self.supply[kind + 1] } else { 0 };
            held = places[kind].min(held + self.supply[kind] - larger);
        }
        held
    }

    /// Which pouches go into such places: as many as can be, the earlier ones of the list; by mass
    /// only where the limit asks for it. Sets of pouches that go into given places form a matroid,
    /// so the light ones first give the least mass for every number.
    pub fn chosen(&self, places: &Tally, most_g: Option<u32>) -> Vec<(usize, usize)> {
        let limit = most_g.map_or(u64::MAX, u64::from);
        let by_mass = self.greedy(&self.light, places, limit);
        let by_list = self.greedy(&self.listed, places, u64::MAX);
        let mass = |chosen: &[(u32, usize, usize)]| -> u64 {
            chosen.iter().map(|&(mass, ..)| u64::from(mass)).sum()
        };
        let chosen = if by_list.len() == by_mass.len() && mass(&by_list) <= limit {
            by_list
        } else {
            by_mass
        };
        chosen.into_iter().map(|(_, bag, kind)| (bag, kind)).collect()
    }

    fn greedy(
        &self,
        order: &[(u32, usize, usize)],
        places: &Tally,
        limit: u64,
    ) -> Vec<(u32, usize, usize)> {
        let most = self.held(places) as usize;
        let (mut used, mut mass, mut chosen) = (Tally::default(), 0_u64, Vec::new());
        for &(own, bag, kind) in order {
            if chosen.len() == most || mass + u64::from(own) > limit {
                break;
            }
            let first = if self.chain { 0 } else { kind };
            if (first..=kind).all(|k| used[k] < places[k]) {
                (first..=kind).for_each(|k| used[k] += 1);
                mass += u64::from(own);
                chosen.push((own, bag, kind));
            }
        }
        chosen
    }

    /// How many the light ones first bring in under a limit of mass, and no more than `held`.
    pub fn count(&self, places: &Tally, most_g: Option<u32>) -> u32 {
        let limit = most_g.map_or(u64::MAX, u64::from);
        let held = self.held(places);
        if most_g.is_none() {
            return held;
        }
        u32::try_from(self.greedy(&self.light, places, limit).len()).unwrap_or(held)
    }
}
