//! Why each run is in the plan, in numbers that a sentence can be made of.

use super::answer::{Plan, Run};
use super::problem::{Drying, Problem};

/// When sets would be missing.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum When {
    /// At the appointments that begin in this slot.
    Slot(usize),
    /// When the next day begins.
    Tomorrow,
}

/// What would be missing, first, without one run.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Why {
    /// Which run of the plan.
    pub run: usize,
    /// When something would be missing first; `None` where nothing would.
    pub when: Option<When>,
    /// What would be missing then: kind and number.
    pub missing: Vec<(usize, u32)>,
}

/// For each run of `plan`, what would be missing first without it, all else as planned.
///
/// Sets of a kind count alike, so a run "is for" the first appointments that the other runs and
/// the sets that are ready cannot serve.
#[must_use]
pub fn reasons(problem: &Problem, plan: &Plan) -> Vec<Why> {
    (0..plan.runs.len()).map(|run| why(problem, plan, run)).collect()
}

fn why(problem: &Problem, plan: &Plan, left_out: usize) -> Why {
    let drying = |run: &Run| problem.machines[run.machine].cycles[run.cycle].drying;
    if drying(&plan.runs[left_out]) == Drying::None {
        return at_once(problem, plan, left_out);
    }
    let mut missing: Vec<(When, usize, u32)> = Vec::new();
    for (k, kind) in problem.kinds.iter().enumerate() {
        if plan.runs[left_out].load[k] == 0 {
            continue;
        }
        let mut stock = i64::from(kind.ready);
        for t in 0..=problem.slots {
            stock += problem.carry[k]
                .ready_at
                .iter()
                .filter(|r| r.0 == t)
                .map(|r| i64::from(r.1))
                .sum::<i64>();
            let others =
                plan.runs.iter().enumerate().filter(|&(i, run)| {
                    i != left_out && run.ready == t && drying(run) != Drying::None
                });
            stock += others.map(|(_, run)| i64::from(run.load[k])).sum::<i64>();
            stock -= from_stock(problem, plan, k, t);
            let wanted = if t == problem.slots { i64::from(kind.target_ready) } else { 0 };
            if stock < wanted {
                let when = if t == problem.slots { When::Tomorrow } else { When::Slot(t) };
                let n = u32::try_from(wanted - stock).unwrap_or(0).min(plan.runs[left_out].load[k]);
                missing.push((when, k, n));
                break;
            }
        }
    }
    let when = missing.iter().map(|m| m.0).min();
    let missing = missing.iter().filter(|m| Some(m.0) == when).map(|m| (m.1, m.2)).collect();
    Why { run: left_out, when, missing }
}

/// A run without drying is for the first appointments that open its sets.
fn at_once(problem: &Problem, plan: &Plan, run: usize) -> Why {
    let opened = || plan.immediate.iter().filter(|i| i.run == run);
    let start = |service: usize| problem.services[service].start;
    let first = opened().map(|i| start(i.service)).min();
    let mut missing: Vec<(usize, u32)> = Vec::new();
    for i in opened().filter(|i| Some(start(i.service)) == first) {
        match missing.iter_mut().find(|m| m.0 == i.kind) {
            Some(m) => m.1 += i.n,
            None => missing.push((i.kind, i.n)),
        }
    }
    Why { run, when: first.map(When::Slot), missing }
}

/// Sets of a kind that leave the stock in slot `t`.
fn from_stock(problem: &Problem, plan: &Plan, kind: usize, t: usize) -> i64 {
    let starts = |service: usize| problem.services[service].start == t;
    let asked: i64 = problem
        .services
        .iter()
        .filter(|s| s.start == t)
        .flat_map(|s| &s.needs)
        .filter(|n| n.0 == kind)
        .map(|n| i64::from(n.1))
        .sum();
    let unmet: i64 = plan
        .unmet
        .iter()
        .filter(|u| u.kind == kind && starts(u.service))
        .map(|u| i64::from(u.n))
        .sum();
    let at_once: i64 = plan
        .immediate
        .iter()
        .filter(|i| i.kind == kind && starts(i.service))
        .map(|i| i64::from(i.n))
        .sum();
    asked - unmet - at_once
}
