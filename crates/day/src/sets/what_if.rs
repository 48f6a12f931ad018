//! Other ways to buy time than one more set.

use super::tally::owning;
use crate::plan::{MOST_MACHINES, MOST_SETS, MOST_SLOTS, Problem, Unusable};

/// Something that a salon could buy.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Purchase {
    /// One more set of a kind (index into the kinds); it begins the day ready.
    Set(usize),
    /// A second machine like the first, with all its cycles; it begins the day as the first does.
    Machine,
    /// A longer lunch: for so many minutes no appointment begins, and one person is at the back.
    Lunch(u32),
}

impl Purchase {
    /// `problem` with it.
    ///
    /// # Errors
    /// What cannot be bought any more: too many sets, machines or slots, or no machine to be like.
    pub fn bought(self, problem: &Problem) -> Result<Problem, Unusable> {
        match self {
            Self::Set(kind) => match problem.kinds.get(kind) {
                Some(k) if k.owned < MOST_SETS => Ok(owning(problem, kind, k.owned + 1)),
                Some(k) => Err(Unusable(format!("kind {}: no more than {MOST_SETS} sets", k.id))),
                None => Err(Unusable("there is no such kind of set".to_owned())),
            },
            Self::Machine => second_machine(problem),
            Self::Lunch(minutes) => longer_lunch(problem, minutes),
        }
    }
}

fn second_machine(problem: &Problem) -> Result<Problem, Unusable> {
    let mut changed = problem.clone();
    let first =
        problem.machines.first().ok_or_else(|| Unusable("there is no machine".to_owned()))?;
    if problem.machines.len() >= MOST_MACHINES {
        return Err(Unusable(format!("no more than {MOST_MACHINES} machines")));
    }
    changed
        .machines
        .push(crate::plan::Machine { id: format!("{}, a second one", first.id), ..first.clone() });
    Ok(changed)
}

/// Everything that begins from the middle of the day on moves back; the day gets as much longer.
fn longer_lunch(problem: &Problem, minutes: u32) -> Result<Problem, Unusable> {
    let longer = problem.slots_up(minutes);
    if problem.slots + longer > MOST_SLOTS {
        return Err(Unusable(format!("no more than {MOST_SLOTS} slots a day")));
    }
    let Some(lunch) = lunch(problem) else { return Ok(problem.clone()) };
    let mut changed = problem.clone();
    changed.slots += longer;
    for service in changed.services.iter_mut().filter(|service| service.start >= lunch) {
        service.start += longer;
        service.end += longer;
    }
    let at_the_back = problem.hands[lunch].max(problem.slot_min);
    changed.hands.splice(lunch..lunch, std::iter::repeat_n(at_the_back, longer));
    for carry in &mut changed.carry {
        let later = [&mut carry.dirty_at, &mut carry.loadable_at, &mut carry.ready_at];
        let entries = later.into_iter().flatten().filter(|(slot, _)| *slot >= lunch);
        entries.for_each(|(slot, _)| *slot += longer);
    }
    Ok(changed)
}

/// The slot after the first and up to the last appointment with the fewest under way, of those the one
/// nearest the middle.
fn lunch(problem: &Problem) -> Option<usize> {
    let starts = || problem.services.iter().map(|service| service.start);
    let (first, last) = (starts().min()?, starts().max()?);
    let under_way = |t: usize| problem.services.iter().filter(|s| s.start < t && t < s.end).count();
    (first + 1..=last).min_by_key(|&t| (under_way(t), (2 * t).abs_diff(first + last)))
}
