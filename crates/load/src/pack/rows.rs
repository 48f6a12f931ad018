//! Overlapped pouches: rows, counted through completely.
//!
//! In a row all lie the same way round, each over the one before it by [`OVERLAP_MM`], film on
//! film and paper on paper. What is not longer along the row than twice the overlap would lie on
//! two others or slip: such ones lie flat at the beginning of the row, with the free way between.
//! One and the next but one may come nearer than the free way, never over each other: the one
//! between them lies on one and under the other anyway.

use super::fills::{Class, Known, Plan, covers, least, sum};
use super::kinds::{Kind, Kinds, Tally};
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
    steps: u32,
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
#[derive(Clone)]
struct State {
    cross: i32,
    form: Tally,
    rows: Vec<usize>,
}

/// All fillings of the class by rows both ways; `false`: not all, it would take too long.
pub fn fillings(kinds: &Kinds, between: i32, class: &mut Class) -> bool {
    let (supply, cap) = (kinds.up_to(class.rank), kinds.supply[class.rank]);
    let mut rows = Rows { kinds, supply, cap, between, steps: 0 };
    let (across, depth) = class.room;
    let mut whole = true;
    for (is_across, length, room) in [(false, depth, across), (true, across, depth)] {
        whole &= rows.tray(is_across, length, room, class);
    }
    whole
}

impl Rows<'_> {
    fn tray(&mut self, across: bool, length: i32, room: i32, class: &mut Class) -> bool {
        let mut kept: Vec<Kept> = Vec::new();
        let mut whole = true;
        for turned in [false, true] {
            let mut numbers = Tally::default();
            whole &=
                self.row(self.kinds.all.len(), (length, room, turned), &mut numbers, &mut kept);
        }
        kept.sort_by_key(|kept| std::cmp::Reverse((kept.cross, kept.form)));
        let mut layer = vec![State { cross: 0, form: Tally::default(), rows: Vec::new() }];
        while !layer.is_empty() {
            let mut next: Vec<State> = Vec::new();
            for state in &layer {
                let from = state.rows.last().copied().unwrap_or(0);
                for (at, row) in kept.iter().enumerate().skip(from) {
                    let used = if state.rows.is_empty() { 0 } else { state.cross + self.between };
                    if used + row.cross > room {
                        continue;
                    }
                    self.steps += 1;
                    let form = least(&sum(&state.form, &row.form), &self.cap);
                    if form == state.form {
                        continue;
                    }
                    let rows = state.rows.iter().copied().chain([at]).collect();
                    next.push(State { cross: used + row.cross, form, rows });
                }
                if self.steps > COUNTED {
                    whole = false;
                    break;
                }
            }
            layer = undominated(next);
            if layer.len() > KEPT {
                layer.truncate(KEPT);
                whole = false;
            }
            for state in &layer {
                let rows = state.rows.iter().map(|&at| kept[at].row.clone()).collect();
                class.add(state.form, Known::Fits(Plan::Rows { across, rows }));
            }
        }
        whole
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
        if self.steps > COUNTED || kept.len() > KEPT / 4 {
            return false;
        }
        let Some(kind) = kinds_left.checked_sub(1) else {
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
fn undominated(mut states: Vec<State>) -> Vec<State> {
    let weight =
        |state: &State| std::cmp::Reverse(state.form.iter().map(|&n| u64::from(n)).sum::<u64>());
    states.sort_by(|a, b| {
        (weight(a), a.cross, a.form, &a.rows).cmp(&(weight(b), b.cross, b.form, &b.rows))
    });
    let mut kept: Vec<State> = Vec::new();
    for state in states {
        let last = |state: &State| state.rows.last().copied();
        let beaten = kept.iter().any(|other| {
            other.cross <= state.cross
                && last(other) <= last(&state)
                && covers(&other.form, &state.form)
        });
        if !beaten && kept.len() <= KEPT {
            kept.push(state);
        }
    }
    kept
}
