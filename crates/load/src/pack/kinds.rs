//! Pouches of one size are one kind; what may stand in for what; how many of them a set of places
//! holds.

use super::Bag;
use std::collections::BTreeMap;

/// At most so many kinds are told apart; with more sizes, neighbours share a kind.
pub const MOST_KINDS: usize = 8;

/// At most so many heights are told apart.
pub const MOST_RANKS: usize = 5;

/// A number for each kind. In a [`Kinds::chain`] its running form counts "this kind or larger".
pub type Tally = [u32; MOST_KINDS];

/// A tally for the trays of each height, low ones first.
pub type Places = [Tally; MOST_RANKS];

/// Pouches of one size.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub struct Kind {
    /// Shorter side, mm.
    pub short: i32,
    /// Longer side, mm.
    pub long: i32,
}

impl Kind {
    /// Size along the first and the second axis; turned: the long side along the first.
    pub const fn sides(&self, turned: bool) -> (i32, i32) {
        if turned { (self.long, self.short) } else { (self.short, self.long) }
    }

    /// Square millimetres.
    pub const fn area(&self) -> i64 {
        self.short as i64 * self.long as i64
    }
}

/// A pouch that fits somewhere.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Fit {
    /// Which.
    pub bag: usize,
    /// Its size.
    pub kind: Kind,
    /// It goes on trays of this height rank and above.
    pub rank: usize,
}

/// A pouch of the load.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Item {
    /// Grams.
    pub mass_g: u32,
    /// Which.
    pub bag: usize,
    /// Its kind.
    pub kind: usize,
    /// It goes on trays of this height rank and above.
    pub rank: usize,
}

/// All kinds of one load.
#[derive(Debug, Clone)]
pub struct Kinds {
    /// Small ones first.
    pub all: Vec<Kind>,
    /// Each kind goes into any place of a later kind.
    pub chain: bool,
    /// How many there are of each height rank and kind.
    pub numbers: Places,
    /// For the trays of each rank: how many may go there, in running form.
    pub supply: Places,
    /// All pouches, light ones first.
    light: Vec<Item>,
    /// The same in the order in which they were handed in.
    pub listed: Vec<Item>,
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
    pub fn new(bags: &[Bag], fits: &[Fit], rounded: Rounded, single: bool) -> Self {
        let mut groups: BTreeMap<(i64, Kind), Vec<&Fit>> = BTreeMap::new();
        for fit in fits {
            groups.entry((fit.kind.area(), fit.kind)).or_default().push(fit);
        }
        let groups: Vec<(Kind, Vec<&Fit>)> = groups.into_iter().map(|((_, k), b)| (k, b)).collect();
        let size = groups.len().div_ceil(MOST_KINDS).max(1);
        let mut merged: Vec<(Kind, Vec<&Fit>)> = groups
            .chunks(size)
            .map(|chunk| {
                let pick = |of: fn(&Kind) -> i32| {
                    let all = chunk.iter().map(|(kind, _)| of(kind));
                    let found = if rounded == Rounded::Up { all.max() } else { all.min() };
                    found.unwrap_or(1)
                };
                let kind = Kind { short: pick(|k| k.short), long: pick(|k| k.long) };
                (kind, chunk.iter().flat_map(|(_, fits)| fits.iter().copied()).collect())
            })
            .collect();
        merged.sort_by_key(|(kind, _)| *kind);
        Self::sorted(bags, &merged, single)
    }

    fn sorted(bags: &[Bag], merged: &[(Kind, Vec<&Fit>)], single: bool) -> Self {
        let all: Vec<Kind> = merged.iter().map(|(kind, _)| *kind).collect();
        let grows = |two: &[Kind]| matches!(two, [a, b] if a.short <= b.short && a.long <= b.long);
        let chain = !single && all.windows(2).all(grows);
        let mut numbers = Places::default();
        let mut listed = Vec::new();
        for (kind, (_, fits)) in merged.iter().enumerate() {
            for fit in fits {
                let mass_g = bags.get(fit.bag).map_or(0, |bag| bag.mass_g);
                listed.push(Item { mass_g, bag: fit.bag, kind, rank: fit.rank });
                numbers[fit.rank][kind] += 1;
            }
        }
        listed.sort_unstable_by_key(|item| item.bag);
        let mut light = listed.clone();
        light.sort_by_key(|item| item.mass_g);
        let supply = Places::default();
        let mut kinds = Self { all, chain, numbers, supply, light, listed };
        for rank in 0..MOST_RANKS {
            kinds.supply[rank] = kinds.running(&kinds.up_to(rank));
        }
        kinds
    }

    /// How many there are of each kind that go on trays of this rank.
    pub fn up_to(&self, rank: usize) -> Tally {
        std::array::from_fn(|kind| self.numbers.iter().take(rank + 1).map(|own| own[kind]).sum())
    }

    /// In a chain: "so many of this kind or larger". Else as it is.
    pub fn running(&self, numbers: &Tally) -> Tally {
        let mut running = *numbers;
        if self.chain {
            for kind in (0..MOST_KINDS - 1).rev() {
                running[kind] = running[kind].saturating_add(running[kind + 1]);
            }
        }
        running
    }

    /// How many of each kind, from the running form.
    pub fn plain(&self, form: &Tally) -> Tally {
        let mut numbers = *form;
        if self.chain {
            for kind in 0..MOST_KINDS - 1 {
                numbers[kind] -= form[kind + 1];
            }
        }
        numbers
    }

    /// How many pouches such places hold at most, whatever they weigh.
    pub fn held(&self, places: &Places) -> u32 {
        self.hosted(&self.numbers, places)
    }

    /// How many of these pouches find a place of their own. Low trays first, each place takes the
    /// largest that is still without one: no assignment takes more (matching of points in the plane
    /// by dominance).
    fn hosted(&self, numbers: &Places, places: &Places) -> u32 {
        let mut waiting = Tally::default();
        let mut hosted = 0;
        for (own, form) in numbers.iter().zip(places) {
            waiting.iter_mut().zip(own).for_each(|(all, own)| *all += own);
            if form[..] == [0; MOST_KINDS] {
                continue;
            }
            let free = self.plain(form);
            for kind in (0..self.all.len()).rev() {
                let mut left = free[kind];
                let least = if self.chain { 0 } else { kind };
                for size in (least..=kind).rev() {
                    let taken = left.min(waiting[size]);
                    waiting[size] -= taken;
                    left -= taken;
                    hosted += taken;
                }
            }
        }
        hosted
    }

    /// Which pouches go into such places: as many as can be, the earlier ones of the list; by mass
    /// only where the limit asks for it. Sets of pouches that go into given places form a matroid,
    /// so the light ones first give the least mass for every number.
    pub fn chosen(&self, places: &Places, most_g: Option<u32>) -> Vec<Item> {
        let limit = most_g.map_or(u64::MAX, u64::from);
        let by_mass = self.greedy(&self.light, places, limit);
        let by_list = self.greedy(&self.listed, places, u64::MAX);
        let mass: u64 = by_list.iter().map(|item| u64::from(item.mass_g)).sum();
        if by_list.len() == by_mass.len() && mass <= limit { by_list } else { by_mass }
    }

    fn greedy(&self, order: &[Item], places: &Places, limit: u64) -> Vec<Item> {
        let most = self.held(places) as usize;
        let (mut used, mut mass, mut chosen) = (Places::default(), 0_u64, Vec::new());
        // What found no place once finds none later either.
        let mut closed = [[false; MOST_KINDS]; MOST_RANKS];
        for item in order {
            if chosen.len() == most || mass + u64::from(item.mass_g) > limit {
                break;
            }
            if closed[item.rank][item.kind] {
                continue;
            }
            used[item.rank][item.kind] += 1;
            if self.hosted(&used, places) as usize == chosen.len() + 1 {
                mass += u64::from(item.mass_g);
                chosen.push(*item);
            } else {
                used[item.rank][item.kind] -= 1;
                closed[item.rank][item.kind] = true;
            }
        }
        chosen
    }

    /// How many such places hold under a limit of mass.
    pub fn count(&self, places: &Places, most_g: Option<u32>) -> u32 {
        let held = self.held(places);
        let Some(limit) = most_g else { return held };
        u32::try_from(self.greedy(&self.light, places, u64::from(limit)).len()).unwrap_or(held)
    }

    /// How many the mass alone allows.
    pub fn by_mass(&self, most_g: Option<u32>) -> u32 {
        let mut left = most_g.map_or(u64::MAX, u64::from);
        let held =
            self.light.iter().take_while(|item| match left.checked_sub(u64::from(item.mass_g)) {
                Some(rest) => {
                    left = rest;
                    true
                }
                None => false,
            });
        u32::try_from(held.count()).unwrap_or(u32::MAX)
    }
}
