//! Whether the washing can be done in time.
//!
//! Work of all kinds shares the hands of each slot, may be broken off at any time, begins when sets
//! come back used and must be over some slots before their run starts. Such work can be done in
//! time if and only if it fits into every stretch `[a, b)`: what comes back from `a` on and must be
//! over by `b` is not more than the hands in between (the condition of preemptive scheduling with
//! release times and deadlines on one resource; earliest deadline first then does it). Runs are
//! made in the order of their starts, so that each new set has the latest deadline so far, and one
//! row `load[a]` decides: hands before `a` and work that cannot begin before `a`.

use super::answer::HandWork;

/// What the washing of a day takes, as far as runs have been made.
#[derive(Debug, Clone, Default)]
pub(super) struct Washing {
    /// `hands[a]`: minutes in the slots before `a`, without loading and unloading.
    hands: Vec<i32>,
    /// `load[a]`: `hands[a]` and the promised work that comes back at `a` or later.
    load: Vec<i32>,
}

impl Washing {
    /// Nothing promised yet; `minutes` are the hands of each slot.
    pub fn begin(&mut self, minutes: &[i32]) {
        self.hands.clear();
        self.hands.push(0);
        let mut sum = 0_i32;
        self.hands.extend(minutes.iter().map(|&m| {
            sum = sum.saturating_add(m);
            sum
        }));
        self.load.clone_from(&self.hands);
    }

    /// Hands of slot `t` go into a machine. No earlier promise may end after `t`.
    pub fn take(&mut self, t: usize, minutes: i32) {
        self.hands[t + 1..].iter_mut().for_each(|h| *h -= minutes);
        self.load[t + 1..].iter_mut().for_each(|h| *h -= minutes);
    }

    /// Promises `minutes` of work on a set that is back at slot `back`, to be over before slot
    /// `until`; `false` where that cannot be kept.
    pub fn promise(&mut self, back: usize, until: usize, minutes: i32) -> bool {
        if back >= until {
            return false;
        }
        let fullest = self.load[..=back].iter().fold(i32::MIN, |most, &l| most.max(l));
        let fits = fullest + minutes <= self.hands[until];
        if fits {
            self.load[..=back].iter_mut().for_each(|l| *l += minutes);
        }
        fits
    }
}

/// One set to wash.
#[derive(Debug, Clone, Copy)]
pub(super) struct Job {
    pub kind: usize,
    pub back: usize,
    pub until: usize,
    pub minutes: u32,
}

/// Who washes what when: of the sets that are back, the one that must be over first. `hands` are
/// the minutes left in each slot.
pub(super) fn earliest_deadline_first(hands: &[i32], jobs: &[Job]) -> Vec<HandWork> {
    let mut waiting: Vec<Job> = jobs.to_vec();
    waiting.sort_by_key(|job| (job.until, job.kind, job.back));
    let mut work: Vec<HandWork> = Vec::new();
    for (slot, &minutes) in hands.iter().enumerate() {
        let mut left = minutes.unsigned_abs();
        for job in waiting.iter_mut().filter(|job| job.back <= slot) {
            let here = job.minutes.min(left);
            job.minutes -= here;
            left -= here;
            match work.iter_mut().rev().find(|w| w.slot == slot && w.kind == job.kind) {
                _ if here == 0 => {}
                Some(line) => line.minutes += here,
                None => work.push(HandWork { kind: job.kind, slot, minutes: here }),
            }
        }
        waiting.retain(|job| job.minutes > 0);
    }
    work
}
