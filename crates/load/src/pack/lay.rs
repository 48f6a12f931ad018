//! Do these rectangles go onto this tray? First a good guess, then every way there is.

use super::kinds::{Kind, Tally};
use super::work::Work;

/// A place for a pouch of one kind, mm from the near left corner.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Slot {
    /// Which kind.
    pub kind: usize,
    /// From the left.
    pub x: i32,
    /// From the near side.
    pub y: i32,
    /// Its long side goes across.
    pub turned: bool,
}

/// What is known of a set of rectangles on a tray.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Answer {
    /// They go in like this.
    Fits(Vec<Slot>),
    /// They do not, proven; so many do.
    Never(Vec<Slot>),
    /// The steps ran out; so many do.
    Open(Vec<Slot>),
}

/// A rectangle that is still free: left, near, right, far.
type Free = (i32, i32, i32, i32);

/// Free places of one tray, each as large as it can be; they overlap.
#[derive(Debug, Clone)]
pub struct Board {
    free: Vec<Free>,
}

/// Which free place is taken.
#[derive(Debug, Clone, Copy)]
pub enum Taste {
    /// Where it leaves the least along one side.
    ShortRest,
    /// As near as possible.
    Near,
    /// As far to the left as possible.
    Left,
    /// The smallest place.
    Area,
}

const TASTES: [Taste; 4] = [Taste::ShortRest, Taste::Near, Taste::Left, Taste::Area];

impl Board {
    /// An empty tray.
    pub fn new(across: i32, depth: i32) -> Self {
        Self { free: vec![(0, 0, across, depth)] }
    }

    /// Takes the best place for one of this kind, if there is one.
    pub fn place(
        &mut self,
        kind: usize,
        own: &Kind,
        taste: Taste,
        work: &mut Work,
    ) -> Option<Slot> {
        let score = |(left, near, right, far): Free, (w, h): (i32, i32)| {
            let (wide, deep) = (right - left - w, far - near - h);
            match taste {
                Taste::ShortRest => (wide.min(deep), wide.max(deep)),
                Taste::Near => (near + h, left),
                Taste::Left => (left + w, near),
                Taste::Area => ((right - left).saturating_mul(far - near), wide.min(deep)),
            }
        };
        let ways = [false, true].into_iter().filter(|&turned| !turned || own.short != own.long);
        let all = ways.flat_map(|turned| self.free.iter().map(move |&free| (turned, free)));
        let fitting = all.filter(|&(turned, (left, near, right, far))| {
            let (w, h) = own.sides(turned);
            w <= right - left && h <= far - near
        });
        let best =
            fitting.min_by_key(|&(turned, free)| (score(free, own.sides(turned)), free, turned));
        let (turned, (x, y, ..)) = best?;
        let (w, h) = own.sides(turned);
        self.take((x, y, x + w, y + h), work);
        Some(Slot { kind, x, y, turned })
    }

    fn take(&mut self, (left, near, right, far): Free, work: &mut Work) {
        let mut rest: Vec<Free> = Vec::with_capacity(self.free.len() + 4);
        for &(l, n, r, f) in &self.free {
            if left >= r || right <= l || near >= f || far <= n {
                rest.push((l, n, r, f));
                continue;
            }
            let parts = [(l, n, left, f), (right, n, r, f), (l, n, r, near), (l, far, r, f)];
            rest.extend(parts.into_iter().filter(|&(l, n, r, f)| l < r && n < f));
        }
        let inside = |a: &Free, b: &Free| a.0 >= b.0 && a.1 >= b.1 && a.2 <= b.2 && a.3 <= b.3;
        rest.sort_unstable();
        rest.dedup();
        work.spend(50 + 20 * rest.len() + rest.len() * rest.len());
        let lone = |own: &&Free| !rest.iter().any(|other| other != *own && inside(own, other));
        self.free = rest.iter().filter(lone).copied().collect();
    }
}

/// Lays so many of each kind on a tray: guesses in several orders, then a search through all
/// normal positions for at most `budget` steps. Gives the steps used, too.
pub fn lay(
    kinds: &[Kind],
    room: (i32, i32),
    numbers: &Tally,
    budget: u32,
    work: &mut Work,
) -> (Answer, u32) {
    let total: usize = numbers.iter().map(|&n| n as usize).sum();
    let many = total > FEW;
    let guess =
        if many { shelves(kinds, room, numbers) } else { guess(kinds, room, numbers, work) };
    let used = 20 + u32::try_from(total).unwrap_or(u32::MAX) / 4;
    if guess.len() == total {
        return (Answer::Fits(guess), used);
    }
    if many {
        return (Answer::Open(guess), used);
    }
    let mut search = Search::new(kinds, room, numbers, work);
    let found = search.deeper(0, 0, budget);
    let used = used + search.steps;
    let answer = match found {
        Some(true) => Answer::Fits(search.slots),
        Some(false) => Answer::Never(guess),
        None => Answer::Open(guess),
    };
    (answer, used)
}

/// More on one tray than this, and they are laid in plain shelves.
const FEW: usize = 150;

/// Shelf after shelf, the deep ones first, each pouch with its long side across.
fn shelves(kinds: &[Kind], room: (i32, i32), numbers: &Tally) -> Vec<Slot> {
    let mut order: Vec<usize> = (0..kinds.len()).collect();
    order.sort_by_key(|&kind| std::cmp::Reverse(kinds[kind]));
    let (mut x, mut y, mut deep) = (0, 0, 0);
    let mut slots = Vec::new();
    for kind in order {
        let (w, h) = kinds[kind].sides(true);
        for _ in 0..numbers[kind] {
            if x + w > room.0 {
                (x, y, deep) = (0, y + deep, 0);
            }
            if w > room.0 || y + h > room.1 {
                break;
            }
            slots.push(Slot { kind, x, y, turned: true });
            (x, deep) = (x + w, deep.max(h));
        }
    }
    slots
}

fn guess(kinds: &[Kind], room: (i32, i32), numbers: &Tally, work: &mut Work) -> Vec<Slot> {
    let total: usize = numbers.iter().map(|&n| n as usize).sum();
    let mut orders: Vec<Vec<usize>> = Vec::new();
    let mut order: Vec<usize> = (0..kinds.len()).filter(|&kind| numbers[kind] > 0).collect();
    order.sort_by_key(|&kind| std::cmp::Reverse(kinds[kind].area()));
    orders.push(order.clone());
    order.sort_by_key(|&kind| std::cmp::Reverse((kinds[kind].long, kinds[kind].short)));
    orders.push(order.clone());
    order.sort_by_key(|&kind| std::cmp::Reverse(kinds[kind]));
    orders.push(order.clone());
    orders.push(order.into_iter().rev().collect());
    orders.dedup();
    let mut best: Vec<Slot> = Vec::new();
    for order in &orders {
        for taste in TASTES {
            let mut board = Board::new(room.0, room.1);
            let mut slots = Vec::with_capacity(total);
            for &kind in order {
                for _ in 0..numbers[kind] {
                    if work.is_over() {
                        break;
                    }
                    match board.place(kind, &kinds[kind], taste, work) {
                        Some(slot) => slots.push(slot),
                        None => break,
                    }
                }
            }
            if slots.len() > best.len() {
                best = slots;
            }
            if best.len() == total || work.is_over() {
                return best;
            }
        }
    }
    best
}

/// Every way to lay the rectangles. Pushed as far near and left as they go, each lies on the edge
/// or on another, and its left side is a sum of sides of others; so it is enough to go through the
/// tray from the near left and try each kind both ways wherever one could begin.
struct Search<'a> {
    kinds: &'a [Kind],
    room: (i32, i32),
    left: Tally,
    /// Positions across at which one may begin, and where the last one ends.
    across: Vec<i32>,
    /// How far each column from one position to the next is taken.
    top: Vec<i32>,
    area_left: i64,
    slots: Vec<Slot>,
    steps: u32,
    work: &'a mut Work,
}

impl<'a> Search<'a> {
    fn new(kinds: &'a [Kind], room: (i32, i32), numbers: &Tally, work: &'a mut Work) -> Self {
        let mut sums = vec![false; usize::try_from(room.0).unwrap_or(0) + 1];
        sums[0] = true;
        let mut area = 0;
        for (kind, &number) in kinds.iter().zip(numbers) {
            area += i64::from(number) * kind.area();
            let sides =
                [kind.short, kind.long].map(|side| usize::try_from(side).unwrap_or(0).max(1));
            let most = usize::try_from(room.0).unwrap_or(0) / sides[0];
            work.spend(2 * sums.len() * most.min(number as usize));
            for _ in 0..most.min(number as usize) {
                for at in (sides[0]..sums.len()).rev() {
                    sums[at] |= sums[at - sides[0]] || (at >= sides[1] && sums[at - sides[1]]);
                }
            }
        }
        let held = kinds.iter().zip(numbers).filter(|(_, n)| **n > 0).map(|(kind, _)| kind.short);
        let least = held.min().unwrap_or(1);
        let mut across: Vec<i32> =
            (0..=room.0 - least).filter(|&x| usize::try_from(x).is_ok_and(|x| sums[x])).collect();
        let top = vec![0; across.len()];
        across.push(room.0);
        Self {
            kinds,
            room,
            left: *numbers,
            across,
            top,
            area_left: area,
            slots: Vec::new(),
            steps: 0,
            work,
        }
    }

    /// `Some(true)`: all lie. `Some(false)`: they cannot. `None`: out of steps. Goes on at the
    /// height `y` and the column `from`.
    fn deeper(&mut self, y: i32, from: usize, budget: u32) -> Option<bool> {
        if self.area_left == 0 {
            return Some(true);
        }
        let (mut y, mut from) = (y, from);
        loop {
            if !self.work.spend(20 + 8 * self.top.len()) {
                return None;
            }
            if self.free_area(y, from) < self.area_left {
                return Some(false);
            }
            for column in from..self.top.len() {
                if self.top[column] > y {
                    continue;
                }
                for kind in (0..self.kinds.len()).rev() {
                    if self.left[kind] > 0 {
                        self.work.spend(20);
                        match self.both_ways(kind, column, y, budget) {
                            Some(false) => {}
                            other => return other,
                        }
                    }
                }
            }
            match self.top.iter().copied().filter(|&top| top > y && top < self.room.1).min() {
                Some(next) => (y, from) = (next, 0),
                None => return Some(false),
            }
        }
    }

    /// What is free beyond `y`, and in the columns from `from` on at `y` itself.
    fn free_area(&self, y: i32, from: usize) -> i64 {
        let next = self.top.iter().copied().filter(|&top| top > y).min().unwrap_or(self.room.1);
        let deep = |(column, &top): (usize, &i32)| {
            let wide = i64::from(self.across[column + 1] - self.across[column]);
            // Nothing begins left of `from` at this height any more.
            let begin = if column < from && top <= y { next } else { top.max(y) };
            wide * i64::from((self.room.1 - begin).max(0))
        };
        self.top.iter().enumerate().map(deep).sum()
    }

    fn both_ways(&mut self, kind: usize, column: usize, y: i32, budget: u32) -> Option<bool> {
        let own = self.kinds[kind];
        let area = own.area();
        for turned in [false, true] {
            let (w, h) = own.sides(turned);
            let x = self.across[column];
            if (turned && own.short == own.long) || x + w > self.room.0 || y + h > self.room.1 {
                continue;
            }
            let end = column + self.across[column..].partition_point(|&at| at < x + w);
            let end = end.min(self.top.len());
            let under = &self.top[column..end];
            let lies = y == 0 || under.contains(&y);
            if !lies || under.iter().any(|&top| top > y) {
                continue;
            }
            self.steps += 1;
            if self.steps > budget {
                return None;
            }
            let before: Vec<i32> = under.to_vec();
            self.top[column..end].fill(y + h);
            self.left[kind] -= 1;
            self.area_left -= area;
            self.slots.push(Slot { kind, x, y, turned });
            match self.deeper(y, column + 1, budget) {
                Some(false) => {}
                other => return other,
            }
            self.slots.pop();
            self.area_left += area;
            self.left[kind] += 1;
            self.top[column..end].copy_from_slice(&before);
        }
        Some(false)
    }
}
