//! Whether the washing can be done in time.
//!
//! Work of all kinds shares the hands of each slot, may be broken off at any time, begins when a
//! set comes back used and must be over some slots before its run starts. Runs are made in the
//! order of their starts, so that each promise has the latest end so far and takes what the earlier
//! ones leave: the first free minutes after the set is back. Serving the earliest deadline first is
//! optimal for such work (Horn, "Some simple scheduling algorithms", 1974), and that is what this
//! comes to: a promise is refused only where no order of washing could keep them all.

use super::answer::HandWork;

/// What the washing of a day takes, as far as runs have been made.
#[derive(Debug, Clone, Default)]
pub(super) struct Washing {
    /// Minutes left in each slot.
    left: Vec<i32>,
    /// For each slot a slot that is not after the first one with minutes left, seen from there.
    skip: Vec<u16>,
    /// Who washed what, where that is asked for.
    pub work: Option<Vec<HandWork>>,
}

impl Washing {
    /// Nothing promised yet; `minutes` are the hands of each slot.
    pub fn begin(&mut self, minutes: &[i32]) {
        self.left.clear();
        self.left.extend_from_slice(minutes);
        self.skip.clear();
        self.skip.extend(0..=minutes.len() as u16);
    }

    /// Hands of slot `t`, not yet given away, go into a machine if there are enough.
    pub fn take(&mut self, t: usize, minutes: i32) {
        self.left[t] -= minutes;
    }

    /// Minutes left in slot `t`.
    pub fn left(&self, t: usize) -> i32 {
        self.left.get(t).copied().unwrap_or(0)
    }

    /// Promises `minutes` of work on a set of `kind` that is back at slot `back`, to be over before
    /// slot `until`; `false` where that cannot be kept.
    pub fn promise(&mut self, kind: usize, back: usize, until: usize, minutes: u32) -> bool {
        let mut missing = minutes as i32;
        let mut slot = self.first_left(back);
        while slot < until && missing > self.left[slot] {
            missing -= self.left[slot];
            slot = self.first_left(slot + 1);
        }
        if slot >= until {
            return false;
        }
        let mut missing = minutes as i32;
        let mut slot = self.first_left(back);
        while missing > 0 {
            let here = missing.min(self.left[slot]);
            self.left[slot] -= here;
            missing -= here;
            if let Some(work) = &mut self.work {
                note(work, HandWork { kind, slot, minutes: here.unsigned_abs() });
            }
            slot = self.first_left(slot);
        }
        true
    }

    /// The first slot from `slot` on with minutes left; as many as there are slots where none is.
    fn first_left(&mut self, slot: usize) -> usize {
        let mut found = slot;
        while found < self.left.len() && self.left[found] <= 0 {
            found = usize::from(self.skip[found]).max(found + 1);
        }
        if let Some(skip) = self.skip.get_mut(slot) {
            *skip = found as u16;
        }
        found
    }
}

/// Adds minutes to the line of their kind and slot.
fn note(work: &mut Vec<HandWork>, more: HandWork) {
    match work.iter_mut().find(|w| w.slot == more.slot && w.kind == more.kind) {
        Some(line) => line.minutes += more.minutes,
        None => work.push(more),
    }
}
