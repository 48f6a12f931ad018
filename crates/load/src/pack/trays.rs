//! Which filling on which tray: all that could be best, tray by tray, and a proof of how many go in.

use super::fills::{Class, Filling, Known, Plan, covers, least, sum};
use super::kinds::{Item, Kinds, Places, Tally};
use super::lay::{Answer, Board, Taste, lay};
use super::work::Work;
use std::collections::{BTreeMap, BTreeSet};

/// The load as it is, for which an easier one is searched.
pub struct Real<'a> {
    /// The pouches.
    pub kinds: &'a Kinds,
    /// Height rank of each tray.
    pub ranks: Vec<usize>,
    /// The kinds that are searched have these sizes.
    pub same: bool,
    /// Limit of mass.
    pub most_g: Option<u32>,
}

impl Real<'_> {
    /// Takes the plans where they hold more of the real load.
    fn better(&self, plans: &[Plan], best: &mut Found) {
        if !self.same {
            return;
        }
        let count = self.kinds.count(&places(self.kinds, plans, &self.ranks), self.most_g);
        if count > best.count {
            best.count = count;
            best.plans = plans.to_vec();
        }
    }
}

/// A search over the trays of one load.
pub struct Trays<'a> {
    /// The pouches.
    pub kinds: &'a Kinds,
    /// Trays of one size and height.
    pub classes: Vec<Class>,
    /// Class of each tray.
    pub trays: Vec<usize>,
    /// The load as it is.
    pub real: &'a Real<'a>,
    /// The best plans for it.
    pub best: &'a mut Found,
    /// The fillings hold everything that could be.
    pub whole: bool,
    /// Steps left.
    pub steps: u32,
    /// Work left.
    pub work: Work,
}

/// The places of all plans, for each height in running form.
fn places(kinds: &Kinds, plans: &[Plan], ranks: &[usize]) -> Places {
    let mut places = Places::default();
    for (plan, &rank) in plans.iter().zip(ranks) {
        places[rank] = sum(&places[rank], &kinds.running(&plan.numbers()));
    }
    places
}

/// What was found.
#[derive(Debug, Clone)]
pub struct Found {
    /// A plan for each tray.
    pub plans: Vec<Plan>,
    /// So many pouches it holds.
    pub count: u32,
    /// No more than so many could.
    pub bound: u32,
}

/// So many steps for one question whether rectangles go onto a tray.
const QUESTION: u32 = 3_000;
/// So many states side by side before the proof is given up.
const STATES: usize = 1_200;

/// What looking at one filling for one state costs.
const LOOKED: usize = 400;
/// What counting the pouches of one state costs, or finding a place for one pouch.
const COUNTED: usize = 200;

struct State {
    form: Places,
    before: usize,
    filling: usize,
}

/// The best choice of a filling for each tray.
struct Choice {
    count: u32,
    fillings: Vec<usize>,
}

impl Trays<'_> {
    /// Takes the best choice, asks whether its fillings go in, lowers those that do not, and again,
    /// until the best choice is no better than what was found.
    pub fn search(&mut self, start: Found) -> Found {
        let mut found = start;
        let mut proving = self.whole;
        let mut first = true;
        while first || (self.steps > 0 && !self.work.is_over()) {
            first = false;
            let (choice, whole) = self.choose(found.count);
            proving &= whole;
            let Some(choice) = choice else {
                if proving {
                    found.bound = found.bound.min(found.count);
                }
                break;
            };
            if proving {
                found.bound = found.bound.min(choice.count);
            }
            let changed = self.ask(&choice, proving, &mut found);
            proving &= self.whole;
            if !changed {
                if !proving {
                    break;
                }
                // All that is left is what could not be answered: from here on only for the plan.
                proving = false;
            }
            if found.count >= found.bound || self.best.count >= found.bound {
                break;
            }
        }
        found
    }

    /// Asks for each filling of the choice. Did anything change?
    fn ask(&mut self, choice: &Choice, proving: bool, found: &mut Found) -> bool {
        let mut changed = false;
        let mut plans: Vec<Plan> = Vec::new();
        let mut lower: BTreeSet<(usize, Tally)> = BTreeSet::new();
        let mut answered: BTreeMap<(usize, usize), Plan> = BTreeMap::new();
        for (class, &at) in self.trays.clone().into_iter().zip(&choice.fillings) {
            let Some(filling) = self.classes[class].fillings.get(at).cloned() else {
                plans.push(Plan::Flat(Vec::new()));
                continue;
            };
            if let Some(plan) = answered.get(&(class, at)) {
                plans.push(plan.clone());
                continue;
            }
            let (plan, never) = self.answer(class, at, &filling);
            answered.insert((class, at), plan.clone());
            let open = self.classes[class].fillings[at].known == Known::Open;
            changed |= filling.known == Known::Untried;
            if never || (open && !proving) {
                lower.insert((class, filling.form));
            }
            plans.push(plan);
        }
        for (class, form) in lower {
            self.whole &= self.classes[class].lower(self.kinds, &form, &mut self.work);
            changed = true;
        }
        self.better(plans, found);
        changed
    }

    /// What the filling holds for certain, and whether the whole of it is proven not to go in.
    fn answer(&mut self, class: usize, at: usize, filling: &Filling) -> (Plan, bool) {
        if let Known::Fits(plan) = &filling.known {
            return (plan.clone(), false);
        }
        let own = &mut self.classes[class];
        let numbers = self.kinds.plain(&filling.form);
        let again = filling.known == Known::Open;
        let budget = if again { 0 } else { QUESTION };
        let (answer, used) = lay(&self.kinds.all, own.room, &numbers, budget, &mut self.work);
        self.steps = self.steps.saturating_sub(used);
        match answer {
            Answer::Fits(slots) => {
                own.fillings[at].known = Known::Fits(Plan::Flat(slots.clone()));
                (Plan::Flat(slots), false)
            }
            Answer::Never(slots) => (Plan::Flat(slots), !again),
            Answer::Open(slots) => {
                own.fillings[at].known = Known::Open;
                (Plan::Flat(slots), false)
            }
        }
    }

    fn better(&mut self, plans: Vec<Plan>, found: &mut Found) {
        let ranks: Vec<usize> = self.trays.iter().map(|&class| self.classes[class].rank).collect();
        let count = self.kinds.count(&places(self.kinds, &plans, &ranks), self.real.most_g);
        self.real.better(&plans, self.best);
        if self.real.most_g.is_some() {
            self.work.spend(2 * COUNTED * count as usize);
        }
        if count > found.count || found.plans.is_empty() {
            found.count = count;
            found.plans = plans;
        }
    }

    /// With such a filling on a tray of this rank; never more than there are pouches for.
    fn with(&self, places: &Places, rank: usize, form: &Tally) -> Places {
        let mut all = *places;
        all[rank] = least(&sum(&all[rank], form), &self.kinds.supply[rank]);
        all
    }

    /// How many one filling holds.
    fn alone(&self, class: &Class, form: &Tally) -> u32 {
        self.kinds.held(&self.with(&Places::default(), class.rank, form))
    }

    /// For each tray and the end: the most that the trays from there on hold, kind by kind and as
    /// a number.
    fn rest(&mut self) -> Vec<(Places, u32)> {
        let mut rest = vec![(Places::default(), 0_u32)];
        for &class in self.trays.iter().rev() {
            self.work.spend(COUNTED * self.classes[class].fillings.len());
            let (join, most) = rest.last().copied().unwrap_or_default();
            let own = &self.classes[class];
            let best = own.fillings.iter().map(|f| self.alone(own, &f.form)).max().unwrap_or(0);
            rest.push((self.with(&join, own.rank, &own.join()), most.saturating_add(best)));
        }
        rest.reverse();
        rest
    }

    /// The choice that holds the most, if it holds more than `floor`; and whether all were seen.
    fn choose(&mut self, floor: u32) -> (Option<Choice>, bool) {
        let rest = self.rest();
        let mut layers = vec![vec![State { form: Places::default(), before: 0, filling: 0 }]];
        let (mut whole, mut seen) = (true, 0_u32);
        for (tray, &class) in self.trays.iter().enumerate() {
            let Some(before) = layers.last() else { break };
            let (join, most) = rest.get(tray + 1).copied().unwrap_or_default();
            let none = [Filling { form: Tally::default(), known: Known::Untried }];
            let rank = self.classes[class].rank;
            let own = &self.classes[class].fillings;
            let own: &[Filling] = if own.is_empty() { &none } else { own };
            let mut next: Vec<State> = Vec::new();
            let shares = self.trays.len() - tray;
            let left = self.work.left();
            // Half for looking at them, half for comparing them.
            let enough = left - left / shares as u64 / 2;
            'all: for (at, state) in before.iter().enumerate() {
                for (filling, more) in own.iter().enumerate() {
                    if !self.work.spend(LOOKED) || self.work.left() < enough {
                        whole = false;
                        break 'all;
                    }
                    seen += 1;
                    let form = self.with(&state.form, rank, &more.form);
                    let mut all = form;
                    for (rank, join) in join.iter().enumerate() {
                        all = self.with(&all, rank, join);
                    }
                    let hope = self.kinds.held(&all);
                    if hope > floor && self.kinds.held(&form).saturating_add(most) > floor {
                        next.push(State { form, before: at, filling });
                    }
                }
            }
            let (kept, all) = self.work.share(shares, |work| undominated(next, work));
            whole &= all;
            layers.push(kept);
        }
        self.steps = self.steps.saturating_sub(seen / 8);
        let (choice, all) = self.best(&layers, floor);
        (choice, whole && all)
    }

    /// The best of the last layer; `false`: not all were looked at.
    fn best(&mut self, layers: &[Vec<State>], floor: u32) -> (Option<Choice>, bool) {
        let (mut count, mut end, mut whole) = (floor, None, true);
        for (at, state) in layers.last().into_iter().flatten().enumerate() {
            let held = self.kinds.held(&state.form);
            if held > count {
                // By mass it is worked out pouch by pouch.
                let cost = if self.real.most_g.is_some() { held as usize + 1 } else { 1 };
                if !self.work.spend(COUNTED * cost) && end.is_some() {
                    whole = false;
                    break;
                }
                let own = self.kinds.count(&state.form, self.real.most_g);
                if own > count {
                    (count, end) = (own, Some(at));
                }
            }
        }
        let Some(mut at) = end else { return (None, whole) };
        let mut fillings = Vec::new();
        for layer in layers.iter().skip(1).rev() {
            let Some(state) = layer.get(at) else { return (None, false) };
            fillings.push(state.filling);
            at = state.before;
        }
        fillings.reverse();
        (Some(Choice { count, fillings }), whole)
    }

    /// A first plan: as many of the small ones as one can hope for, the large ones of them first,
    /// each on the first tray that takes it.
    pub fn guess(&mut self, bound: u32) -> Found {
        let mut found = Found { plans: Vec::new(), count: 0, bound };
        let mut list: Vec<Item> = self.kinds.listed.clone();
        list.sort_by_key(|item| (self.kinds.all[item.kind].area(), item.rank));
        list.truncate(GUESSED.min(bound as usize));
        for fewer in 0..6 {
            let wanted = list.get(..list.len().saturating_sub(fewer)).unwrap_or_default();
            for taste in [Taste::ShortRest, Taste::Near] {
                let plans = self.first_fit(wanted, taste);
                self.better(plans, &mut found);
            }
            if found.count as usize >= wanted.len() || self.work.is_over() {
                break;
            }
        }
        found
    }

    /// A first plan of fillings that are known to go in: tray by tray the one that adds the most.
    pub fn greedy(&mut self, bound: u32) -> Found {
        let mut found = Found { plans: Vec::new(), count: 0, bound };
        let (mut places, mut plans) = (Places::default(), Vec::new());
        for at in 0..self.trays.len() {
            let own = &self.classes[self.trays[at]];
            self.work.spend(COUNTED * own.fillings.len());
            let held =
                |filling: &&Filling| self.kinds.held(&self.with(&places, own.rank, &filling.form));
            let best = own.fillings.iter().rev().max_by_key(held);
            if let Some(best) = best {
                places = self.with(&places, own.rank, &best.form);
            }
            plans.push(match best.map(|best| &best.known) {
                Some(Known::Fits(plan)) => plan.clone(),
                _ => Plan::Flat(Vec::new()),
            });
        }
        self.better(plans, &mut found);
        found
    }

    fn first_fit(&mut self, wanted: &[Item], taste: Taste) -> Vec<Plan> {
        let mut boards: Vec<Board> = self
            .trays
            .iter()
            .map(|&class| Board::new(self.classes[class].room.0, self.classes[class].room.1))
            .collect();
        let mut slots = vec![Vec::new(); boards.len()];
        let mut full = BTreeSet::new();
        for &Item { kind, rank, .. } in wanted.iter().rev() {
            let own = self.kinds.all[kind];
            for (tray, board) in boards.iter_mut().enumerate() {
                if rank > self.classes[self.trays[tray]].rank || full.contains(&(tray, kind)) {
                    continue;
                }
                if self.work.is_over() {
                    break;
                }
                if let Some(slot) = board.place(kind, &own, taste, &mut self.work) {
                    slots[tray].push(slot);
                    break;
                }
                full.insert((tray, kind));
            }
        }
        slots.into_iter().map(Plan::Flat).collect()
    }

    /// At most as many as area allows, tray by tray for the best filling, and as there are.
    pub fn bound(&self) -> u32 {
        let of_class = |&class: &usize| {
            let own = &self.classes[class];
            let fillings = own.fillings.iter();
            fillings.map(|filling| self.alone(own, &filling.form)).max().unwrap_or(0)
        };
        let by_tray = self.trays.iter().map(of_class).fold(0_u32, u32::saturating_add);
        by_tray.min(self.kinds.by_mass(self.real.most_g))
    }
}

/// So many are laid by the first guess; more are a matter of the search over trays.
const GUESSED: usize = 200;

/// Without those that another one covers; `false`: some were dropped without being covered.
fn undominated(mut states: Vec<State>, work: &mut Work) -> (Vec<State>, bool) {
    let weight = |state: &State| {
        let all: u64 = state.form.as_flattened().iter().map(|&n| u64::from(n)).sum();
        std::cmp::Reverse(all)
    };
    states.sort_by_key(|state| (weight(state), state.form, state.before, state.filling));
    states.dedup_by_key(|state| state.form);
    let mut kept: Vec<State> = Vec::new();
    for state in states {
        let beats = |other: &State| {
            other.form.iter().zip(&state.form).all(|(other, own)| covers(other, own))
        };
        if kept.iter().any(beats) {
            continue;
        }
        if kept.len() == STATES || !work.spend(10 + 6 * kept.len()) {
            return (kept, false);
        }
        kept.push(state);
    }
    (kept, true)
}
