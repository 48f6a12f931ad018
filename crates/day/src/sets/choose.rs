//! Whether to start a run now, and which.

use super::life::Life;
use super::random::Day;
use super::template::{Cycle, NEVER};
use crate::plan::MOST_KINDS;

/// A run that could be started now.
#[derive(Debug, Clone, Copy)]
pub(super) struct Choice {
    pub cycle: usize,
    pub warm: bool,
    pub end: usize,
    pub unload: usize,
    pub ready: usize,
    pub load: [u16; MOST_KINDS],
    /// Number among the runs of the day, where they are written down.
    pub number: usize,
}

/// How well a run serves.
#[derive(Debug, Clone, Copy)]
struct Worth {
    /// Booked sets that come due before it is ready.
    missed: u32,
    sets: u32,
    slots: u32,
    /// Without drying, for use at once and not for the shelf.
    at_once: bool,
    /// When the first of its sets is asked for.
    due: u16,
}

/// A run and how well it serves.
#[derive(Debug, Clone, Copy)]
struct Offer {
    choice: Choice,
    worth: Worth,
}

impl Worth {
    /// Fewer missed, then dried, then more sets a slot of the machine.
    fn beats(&self, other: &Self) -> bool {
        (self.missed, self.at_once, u64::from(self.slots) * u64::from(other.sets))
            < (other.missed, other.at_once, u64::from(other.slots) * u64::from(self.sets))
    }
}

impl Life<'_> {
    /// The run that machine `m` starts in slot `t`, if it is to start one.
    pub fn choose(&self, t: usize, m: usize, day: &Day) -> Option<Choice> {
        let machine = &self.template.machines[m];
        let warm = t as i64 <= self.machines[m].warm_until;
        let mut best: Option<Offer> = None;
        for (number, cycle) in machine.cycles.iter().enumerate() {
            if self.left[t] < cycle.load_min {
                continue;
            }
            let end = t + cycle.long[usize::from(warm)];
            let Some(unload) = self.unloading(t, cycle, end, day) else { continue };
            let ready = unload + cycle.after;
            let mut choice = Choice {
                cycle: number,
                warm,
                end,
                unload,
                ready,
                load: [0; MOST_KINDS],
                number: 0,
            };
            let worth = self.fill(t, cycle, &mut choice);
            if worth.sets > 0 && best.as_ref().is_none_or(|known| worth.beats(&known.worth)) {
                best = Some(Offer { choice, worth });
            }
        }
        let best = best?;
        self.is_time(t, &machine.cycles[best.choice.cycle], &best, day).then_some(best.choice)
    }

    /// When a run that is over at `end` is unloaded: by whoever is free first, and without drying
    /// at once. `None` where those hands are taken, or it would be ready after the day.
    fn unloading(&self, t: usize, cycle: &Cycle, end: usize, day: &Day) -> Option<usize> {
        let hands = day.hands.get(end..)?;
        let unload = match cycle.dries {
            false => end,
            true => end + hands.iter().position(|&h| h >= cycle.unload_min)?,
        };
        let taken = if unload == t { cycle.load_min } else { 0 };
        let there = *self.left.get(unload)? - taken >= cycle.unload_min;
        (there && unload + cycle.after < self.template.slots).then_some(unload)
    }

    /// Loads what the book asks for soonest until the machine is full.
    fn fill(&self, t: usize, cycle: &Cycle, choice: &mut Choice) -> Worth {
        let template = self.template;
        let ready = choice.ready as u16;
        let last = (choice.end + template.window) as u16;
        let mut worth = Worth {
            at_once: !cycle.dries,
            missed: 0,
            sets: 0,
            slots: (choice.unload - t) as u32,
            due: NEVER,
        };
        let mut next = [0_usize; MOST_KINDS];
        let mut left = [0_u32; MOST_KINDS];
        for k in 0..template.kinds {
            let sets = &self.sets[k];
            next[k] = (sets.seen + sets.secured) as usize;
            left[k] = sets.loadable;
            let due = template.booked[k].get(next[k]..).unwrap_or_default();
            let missed =
                due.iter().take(left[k] as usize).take_while(|&&slot| slot < ready).count();
            worth.missed += missed as u32;
            if !cycle.dries {
                // Any client in its time may open such a set, which leaves a dried one to another.
                let awaited = template.booked[k].get(sets.seen as usize..).unwrap_or_default();
                let soon = awaited
                    .iter()
                    .skip_while(|&&slot| slot < ready)
                    .take_while(|&&slot| slot <= last);
                let soon = soon.count() as u32;
                left[k] = left[k].min(soon.saturating_sub(self.at_once_of(k)));
            }
        }
        let (mut mass, mut area) = (cycle.max_mass, cycle.max_area);
        loop {
            let mut soonest = None;
            for k in 0..template.kinds {
                let fits = template.mass[k] <= mass && (!cycle.wrapped || template.area[k] <= area);
                if left[k] > 0 && fits {
                    let due = template.booked[k].get(next[k]).copied().unwrap_or(NEVER);
                    if soonest.is_none_or(|(known, _)| due < known) {
                        soonest = Some((due, k));
                    }
                }
            }
            let Some((due, k)) = soonest else { return worth };
            worth.due = worth.due.min(due);
            worth.sets += 1;
            choice.load[k] += 1;
            left[k] -= 1;
            next[k] += 1;
            mass -= template.mass[k];
            area -= if cycle.wrapped { template.area[k] } else { 0 };
        }
    }

    /// A run starts when the book asks for its sets within two hours of when they would be ready if
    /// it waited, when it is full, or when nothing more could be loaded before it would be over. It
    /// waits in any case where its sets would be ready no later for it: hands are short then.
    fn is_time(&self, t: usize, cycle: &Cycle, offer: &Offer, day: &Day) -> bool {
        let Offer { choice, worth } = offer;
        let template = self.template;
        let sets = &self.sets[..template.kinds];
        let later = self.ready_if_later(t, cycle, choice, day);
        if later > choice.ready
            && worth.due != NEVER
            && later + template.ahead >= usize::from(worth.due)
        {
            return true;
        }
        let loadable: u32 = sets.iter().map(|sets| sets.loadable).sum();
        let mass: u32 =
            template.mass.iter().zip(&choice.load).map(|(&m, &n)| m * u32::from(n)).sum();
        if loadable > worth.sets || mass + template.lightest > cycle.max_mass {
            return true;
        }
        if sets.iter().any(|sets| sets.dirty > 0 || sets.soaking > 0) {
            return false;
        }
        let until = (choice.unload.saturating_sub(template.passive + 1) + 1).max(t + 1);
        self.returns[(t + 1) * template.kinds..until * template.kinds].iter().all(|&n| n == 0)
    }

    /// When the sets would be ready if the run began the next time that somebody can load it.
    fn ready_if_later(&self, t: usize, cycle: &Cycle, choice: &Choice, day: &Day) -> usize {
        let never = self.template.slots;
        let next = (t + 1..self.template.slots).find(|&s| self.left[s] >= cycle.load_min);
        let Some(next) = next else { return never };
        let end = next + choice.end - t;
        self.unloading(next, cycle, end, day).map_or(never, |unload| unload + cycle.after)
    }
}
