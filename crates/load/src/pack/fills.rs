//! What one tray may hold: the fillings that no other one beats.

use super::kinds::{Kinds, MOST_KINDS, Tally};
use super::lay::Slot;
use super::rows::Row;
use super::scales::Rule;
use super::work::Work;
use std::collections::BTreeSet;

/// A tray laid out.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Plan {
    /// Place by place.
    Flat(Vec<Slot>),
    /// In rows.
    Rows {
        /// They go across, not from door to back.
        across: bool,
        /// From the edge on.
        rows: Vec<Row>,
    },
}

impl Plan {
    /// How many places of each kind.
    pub fn numbers(&self) -> Tally {
        let mut numbers = Tally::default();
        match self {
            Self::Flat(slots) => slots.iter().for_each(|slot| numbers[slot.kind] += 1),
            Self::Rows { rows, .. } => {
                rows.iter().flat_map(|row| &row.kinds).for_each(|&kind| numbers[kind] += 1);
            }
        }
        numbers
    }
}

/// What is known of a filling.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Known {
    /// Nothing speaks against it yet.
    Untried,
    /// It goes in like this.
    Fits(Plan),
    /// The search ended without an answer.
    Open,
}

/// So many of each kind on one tray, in running form.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Filling {
    /// Running form, never more than there are.
    pub form: Tally,
    /// What is known of it.
    pub known: Known,
}

/// Trays of one size and height.
#[derive(Debug, Clone)]
pub struct Class {
    /// Room across and in depth, mm; with the free way of the last pouch where they lie flat.
    pub room: (i32, i32),
    /// Pouches up to this height rank go on it.
    pub rank: usize,
    /// What it may hold; none beats another.
    pub fillings: Vec<Filling>,
    /// Fillings that are proven not to go in.
    pub never: Vec<Tally>,
}

/// Is each number of `a` at least that of `b`?
pub fn covers(a: &Tally, b: &Tally) -> bool {
    a.iter().zip(b).all(|(a, b)| a >= b)
}

/// The smaller of each number.
pub fn least(a: &Tally, b: &Tally) -> Tally {
    std::array::from_fn(|at| a[at].min(b[at]))
}

/// The larger of each number.
pub fn most(a: &Tally, b: &Tally) -> Tally {
    std::array::from_fn(|at| a[at].max(b[at]))
}

/// Sum of each number.
pub fn sum(a: &Tally, b: &Tally) -> Tally {
    std::array::from_fn(|at| a[at].saturating_add(b[at]))
}

impl Class {
    /// Adds a filling that none beats, and drops those that it beats.
    pub fn add(&mut self, form: Tally, known: Known) {
        self.add_with(form, || known);
    }

    /// The same with something that takes a while to put together.
    pub fn add_with(&mut self, form: Tally, known: impl FnOnce() -> Known) {
        if self.fillings.iter().any(|other| covers(&other.form, &form)) {
            return;
        }
        self.fillings.retain(|other| !covers(&form, &other.form));
        self.fillings.push(Filling { form, known: known() });
    }

    /// A filling does not go in (or is given up): what is next below it takes its place. `false`:
    /// not all of it, it would take too long.
    pub fn lower(&mut self, kinds: &Kinds, form: &Tally, work: &mut Work) -> bool {
        let mut open = vec![*form];
        let mut seen = BTreeSet::new();
        self.never.push(*form);
        self.fillings.retain(|other| other.form != *form);
        while let Some(form) = open.pop() {
            for kind in 0..kinds.all.len() {
                let next = if kind + 1 < MOST_KINDS && kinds.chain { form[kind + 1] } else { 0 };
                if form[kind] <= next {
                    continue;
                }
                let mut below = form;
                below[kind] -= 1;
                if !seen.insert(below) {
                    continue;
                }
                if !work.spend(LOWERED + 4 * (self.never.len() + self.fillings.len())) {
                    return false;
                }
                if self.never.iter().any(|never| covers(&below, never)) {
                    open.push(below);
                } else {
                    self.add(below, Known::Untried);
                }
            }
        }
        true
    }

    /// Every filling at once, and more: no filling holds more of any kind.
    pub fn join(&self) -> Tally {
        self.fillings.iter().fold(Tally::default(), |join, filling| most(&join, &filling.form))
    }
}

/// The fillings that keep all rules of a tray, found by counting through: how many of each kind
/// lie each way.
pub struct Counting<'a> {
    kinds: &'a Kinds,
    rules: &'a [Rule],
    supply: Tally,
    class: Class,
    steps: u32,
    work: &'a mut Work,
}

/// What one filling below another costs, besides comparing it.
const LOWERED: usize = 100;
/// So many ways to count before it is given up.
const COUNTED: u32 = 60_000;
/// So many fillings that none beats before it is given up.
const KEPT: usize = 1_500;

impl<'a> Counting<'a> {
    /// All fillings of the class by its rules; where that takes too long, one that holds the most
    /// of each kind at once.
    pub fn of(kinds: &'a Kinds, rules: &'a [Rule], class: Class, work: &'a mut Work) -> Class {
        let supply = kinds.up_to(class.rank);
        let mut counting = Self { kinds, rules, supply, class, steps: 0, work };
        let mut rest: Vec<i64> = rules.iter().map(|rule| rule.room).collect();
        if !counting.deeper(kinds.all.len(), &mut Tally::default(), &mut rest) {
            counting.class.fillings.clear();
            let mut all = Tally::default();
            for kind in 0..kinds.all.len() {
                let alone = counting.alone(kind);
                all[kind] = alone.min(supply[kind]);
            }
            let form = least(&kinds.running(&all), &kinds.supply[counting.class.rank]);
            counting.class.add(form, Known::Untried);
        }
        counting.class
    }

    /// More of one kind alone than ever go in.
    fn alone(&self, kind: usize) -> u32 {
        let own = self.kinds.all[kind];
        let way = |turned: bool| {
            let (w, h) = own.sides(turned);
            w <= self.class.room.0 && h <= self.class.room.1
        };
        let area = i64::from(own.short) * i64::from(own.long);
        let all = i64::from(self.class.room.0) * i64::from(self.class.room.1);
        if way(false) || way(true) {
            u32::try_from(all / area.max(1)).unwrap_or(u32::MAX)
        } else {
            0
        }
    }

    fn most(&self, kind: usize, turned: bool, rest: &[i64]) -> u32 {
        let (w, h) = self.kinds.all[kind].sides(turned);
        if w > self.class.room.0 || h > self.class.room.1 {
            return 0;
        }
        let mut most = i64::from(u32::MAX);
        for (rule, &rest) in self.rules.iter().zip(rest) {
            let need = rule.need[kind][usize::from(turned)];
            if need > 0 {
                most = most.min(rest / need);
            }
        }
        u32::try_from(most).unwrap_or(0)
    }

    fn change(&self, kind: usize, turned: bool, number: i64, rest: &mut [i64]) {
        for (rule, rest) in self.rules.iter().zip(rest) {
            *rest -= number * rule.need[kind][usize::from(turned)];
        }
    }

    fn deeper(&mut self, kinds_left: usize, numbers: &mut Tally, rest: &mut [i64]) -> bool {
        let Some(kind) = kinds_left.checked_sub(1) else {
            let form = least(&self.kinds.running(numbers), &self.kinds.supply[self.class.rank]);
            self.class.add(form, Known::Untried);
            return self.work.spend(20 + 4 * self.class.fillings.len());
        };
        let most = self.most(kind, false, rest).min(self.supply[kind]);
        // In a chain a place for a larger one is as good, but fewer of them is another filling.
        for upright in 0..=most {
            self.steps += 1;
            if self.steps > COUNTED || self.class.fillings.len() > KEPT {
                return false;
            }
            self.change(kind, false, i64::from(upright), rest);
            let turned = self.most(kind, true, rest).min(self.supply[kind] - upright);
            let from = if kind == 0 { turned } else { 0 };
            let mut whole = true;
            for turned in from..=turned {
                whole = self.work.spend(10 + 6 * self.rules.len());
                if !whole {
                    break;
                }
                numbers[kind] = upright + turned;
                self.change(kind, true, i64::from(turned), rest);
                whole = self.deeper(kind, numbers, rest);
                self.change(kind, true, -i64::from(turned), rest);
                if !whole {
                    break;
                }
            }
            numbers[kind] = 0;
            self.change(kind, false, -i64::from(upright), rest);
            if !whole {
                return false;
            }
        }
        true
    }
}
