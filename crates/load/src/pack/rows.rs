//! Overlapped pouches: rows, counted through completely.
//!
//! In a row all lie the same way round, each over the one before it by [`OVERLAP_MM`], film on
//! film and paper on paper. What is not longer along the row than twice the overlap would lie on
//! two others or slip: such ones lie flat at the beginning of the row, with the free way between.
//! One and the next but one may come nearer than the free way, never over each other: the one
//! between them lies on one and under the other anyway.

use super::fills::{Class, Known, Plan, covers, least, sum};
use super::kinds::{Kind, Kinds, Tally};
use super::work::Work;
use crate::chamber::OVERLAP_MM;

const OVERLAP: i32 = OVERLAP_MM as i32;

/// A row of pouches, in the order in which they lie.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Row {
    /// The long side lies along the row.
    pub turned: bool,
    /// Kinds, as places: those that lie flat first.
    pub kinds: Vec<usize>,
    /// The widest of them, mm.
    pub cross: i32,
}

/// Is it too short along the row to lie over another?
pub const fn lies_flat(along: i32) -> bool {
    along <= 2 * OVERLAP
}

/// Where each of a row begins, mm, from its sizes along it, and whether it lies over the one before.
pub fn begins(along: &[i32], between: i32) -> Vec<(i32, bool)> {
    let mut at = 0;
    let mut begins = Vec::with_capacity(along.len());
    for (i, &own) in along.iter().enumerate() {
        let over = i.checked_sub(1).and_then(|before| along.get(before));
        let over = over.is_some_and(|&before| !lies_flat(before) && !lies_flat(own));
        if i > 0 {
            at += if over { -OVERLAP } else { between };
        }
        begins.push((at, over));
        at += own;
    }
    begins
}

/// May any kind lie flat in a row? Then a smaller one is no better than a larger one.
pub fn any_flat(kinds: &[Kind]) -> bool {
    kinds.iter().any(|kind| lies_flat(kind.short))
}

struct Rows<'a> {
    kinds: &'a Kinds,
    supply: Tally,
    cap: Tally,
    between: i32,
    /// So many rows are enough.
    most: usize,
    steps: u32,
    work: &'a mut Work,
}

/// So many states before it is given up.
const COUNTED: u32 = 40_000;
/// So many fillings side by side before it is given up.
const KEPT: usize = 1_500;

/// A row that no other of its width beats.
struct Kept {
    cross: i32,
    form: Tally,
    row: Row,
}

/// Some rows on a tray.
struct State {
    cross: i32,
    form: Tally,
    rows: Vec<usize>,
}

/// One row more than on a state before.
struct Step {
    cross: i32,
    form: Tally,
    before: usize,
    row: usize,
}

/// All fillings of the class by rows both ways; `false`: not all, it would take too long.
pub fn fillings(kinds: &Kinds, between: i32, class: &mut Class, work: &mut Work) -> bool {
    let (supply, cap) = (kinds.up_to(class.rank), kinds.supply[class.rank]);
    let (across, depth) = class.room;
    let mut whole = true;
    let ways = [(false, depth, across), (true, across, depth)];
    for (shares, (is_across, length, room)) in [2, 1].into_iter().zip(ways) {
        whole &= work.share(shares, |work| {
            let mut rows = Rows { kinds, supply, cap, between, most: 0, steps: 0, work };
            rows.tray(is_across, length, room, class)
        });
    }
    whole
}

impl Rows<'_> {
    fn tray(&mut self, across: bool, length: i32, room: i32, class: &mut Class) -> bool {
        let (mut kept, mut whole) = (Vec::new(), true);
        for turned in [false, true] {
            whole &= self.row_share((length, room, turned), &mut kept);
        }
        kept.sort_by_key(|kept| std::cmp::Reverse((kept.cross, kept.form)));
        let mut layer = vec![State { cross: 0, form: Tally::default(), rows: Vec::new() }];
        let mut all: Vec<State> = Vec::new();
        while !layer.is_empty() {
            let (next, seen) = self.next(&layer, room, &kept);
            let (next, compared) = self.work.share(4, |work| undominated(next, work));
            whole &= seen && compared;
            let with = |step: &Step| {
                let rows = layer[step.before].rows.iter().copied().chain([step.row]).collect();
                State { cross: step.cross, form: step.form, rows }
            };
            let next: Vec<State> = next.iter().map(with).collect();
            all.append(&mut layer);
            layer = next;
        }
        // Those with the most rows first: they beat most of the others.
        for state in all.iter().rev() {
            self.work.spend(20 + 4 * class.fillings.len());
            if self.work.is_over() && !class.fillings.is_empty() {
                whole = false;
                break;
            }
            let rows = || state.rows.iter().map(|&at| kept[at].row.clone()).collect();
            class.add_with(state.form, || Known::Fits(Plan::Rows { across, rows: rows() }));
        }
        whole
    }

    /// All rows of one way round, for a part of the work that is left.
    fn row_share(&mut self, way: (i32, i32, bool), kept: &mut Vec<Kept>) -> bool {
        let (kinds, supply, cap, between) = (self.kinds, self.supply, self.cap, self.between);
        let most = kept.len() + KEPT / 4;
        self.work.share(4, |work| {
            let mut rows = Rows { kinds, supply, cap, between, most, steps: 0, work };
            rows.row(kinds.all.len(), way, &mut Tally::default(), kept)
        })
    }

    /// One row more on each; `false`: not each row on each.
    fn next(&mut self, layer: &[State], room: i32, kept: &[Kept]) -> (Vec<Step>, bool) {
        let mut next: Vec<Step> = Vec::new();
        let enough = self.work.left() - self.work.left() / 4;
        for (before, state) in layer.iter().enumerate() {
            let from = state.rows.last().copied().unwrap_or(0);
            for (row, own) in kept.iter().enumerate().skip(from) {
                let used = if state.rows.is_empty() { 0 } else { state.cross + self.between };
                if used + own.cross > room {
                    continue;
                }
                self.steps += 1;
                self.work.spend(50 + state.rows.len());
                let form = least(&sum(&state.form, &own.form), &self.cap);
                if form != state.form {
                    next.push(Step { cross: used + own.cross, form, before, row });
                }
            }
            // One of them goes on to the end in any case.
            if self.steps > COUNTED || self.work.is_over() || self.work.left() < enough {
                return (next, before + 1 == layer.len());
            }
        }
        (next, true)
    }

    /// Counts through what a row may hold, large kinds first.
    fn row(
        &mut self,
        kinds_left: usize,
        (length, room, turned): (i32, i32, bool),
        numbers: &mut Tally,
        kept: &mut Vec<Kept>,
    ) -> bool {
        self.steps += 1;
        let goes_on = self.work.spend(30);
        if !goes_on || self.steps > COUNTED || kept.len() > self.most {
            return false;
        }
        let Some(kind) = kinds_left.checked_sub(1) else {
            self.work.spend(60 + 6 * kept.len());
            self.keep(turned, numbers, kept);
            return true;
        };
        let (_, cross) = self.kinds.all[kind].sides(turned);
        let mut whole = true;
        let most = if cross > room { 0 } else { self.supply[kind] };
        for number in 0..=most {
            numbers[kind] = number;
            if !self.goes(numbers, turned, length) {
                break;
            }
            whole = self.row(kind, (length, room, turned), numbers, kept);
            if !whole {
                break;
            }
        }
        numbers[kind] = 0;
        whole
    }

    fn goes(&self, numbers: &Tally, turned: bool, length: i32) -> bool {
        let (mut flat, mut over) = (0_i64, 0_i64);
        let mut any_over = false;
        for (kind, &number) in self.kinds.all.iter().zip(numbers) {
            let (along, _) = kind.sides(turned);
            if lies_flat(along) {
                flat += i64::from(number) * i64::from(along + self.between);
            } else if number > 0 {
                over += i64::from(number) * i64::from(along - OVERLAP);
                any_over = true;
            }
        }
        let end = if any_over { i64::from(OVERLAP) } else { -i64::from(self.between) };
        flat + over == 0 || flat + over + end <= i64::from(length)
    }

    fn keep(&self, turned: bool, numbers: &Tally, kept: &mut Vec<Kept>) {
        let mut kinds: Vec<usize> = Vec::new();
        let mut cross = 0;
        for flat in [true, false] {
            for (at, kind) in self.kinds.all.iter().enumerate().rev() {
                let (along, own) = kind.sides(turned);
                if numbers[at] > 0 && lies_flat(along) == flat {
                    kinds.extend((0..numbers[at]).map(|_| at));
                    cross = cross.max(own);
                }
            }
        }
        let form = least(&self.kinds.running(numbers), &self.cap);
        if kinds.is_empty() || kept.iter().any(|k| k.cross <= cross && covers(&k.form, &form)) {
            return;
        }
        kept.retain(|k| !(cross <= k.cross && covers(&form, &k.form)));
        kept.push(Kept { cross, form, row: Row { turned, kinds, cross } });
    }
}

/// Without those that another one beats in width and in every number, whatever rows may follow.
/// `false`: some were dropped without being beaten.
fn undominated(mut steps: Vec<Step>, work: &mut Work) -> (Vec<Step>, bool) {
    let weight =
        |step: &Step| std::cmp::Reverse(step.form.iter().map(|&n| u64::from(n)).sum::<u64>());
    steps.sort_by_key(|step| (weight(step), step.cross, step.form, step.before, step.row));
    let mut kept: Vec<Step> = Vec::new();
    for step in steps {
        let beats = |other: &Step| {
            other.cross <= step.cross && other.row <= step.row && covers(&other.form, &step.form)
        };
        if kept.iter().any(beats) {
            continue;
        }
        if kept.len() == KEPT || (!work.spend(20 + 4 * kept.len()) && !kept.is_empty()) {
            return (kept, false);
        }
        kept.push(step);
    }
    (kept, true)
}
