//! Whether a plan keeps the rules of its day, worked out slot by slot and apart from the search.

use super::answer::{LEVELS, Objective, Plan, Run};
use super::decode::penalty;
use super::problem::{Cycle, Drying, Problem};

/// What a plan comes to, if it keeps every rule.
///
/// # Errors
/// The first rule that is broken, in a sentence.
pub fn audit(problem: &Problem, plan: &Plan) -> Result<Objective, String> {
    runs(problem, plan)?;
    hands(problem, plan)?;
    needs(problem, plan)?;
    let mut sum = [0; LEVELS];
    for kind in 0..problem.kinds.len() {
        let (short, exposure) = sets(problem, plan, kind)?;
        sum[1] += short;
        sum[5] += exposure;
    }
    sum[0] = plan
        .unmet
        .iter()
        .map(|u| u64::from(problem.services[u.service].weight) * u64::from(u.n))
        .sum();
    sum[2] = plan.runs.len() as u64;
    for run in &plan.runs {
        let cycle = cycle(problem, run);
        sum[3] += u64::from(if run.warm { cycle.cost_warm } else { cycle.cost_cold });
        for (kind, &n) in problem.kinds.iter().zip(&run.load) {
            sum[3] += if cycle.wrapped { u64::from(n) * u64::from(kind.pouch_cost) } else { 0 };
            sum[4] += u64::from(n) * penalty(cycle.drying);
        }
    }
    sum[5] += plan.immediate.iter().map(|i| 30 * u64::from(i.n)).sum::<u64>();
    Ok(sum)
}

fn cycle<'p>(problem: &'p Problem, run: &Run) -> &'p Cycle {
    &problem.machines[run.machine].cycles[run.cycle]
}

/// Loads, lengths, unloading, and no machine twice at a time.
fn runs(problem: &Problem, plan: &Plan) -> Result<(), String> {
    for (m, machine) in problem.machines.iter().enumerate() {
        let mut of_machine: Vec<(usize, &Run)> =
            plan.runs.iter().enumerate().filter(|(_, run)| run.machine == m).collect();
        of_machine.sort_by_key(|(_, run)| run.start);
        let (mut free, mut unloaded) = (machine.free_from, None);
        for (i, run) in of_machine {
            let cycle = machine.cycles.get(run.cycle).ok_or(format!("run {i}: no such cycle"))?;
            let warm = unloaded
                .is_some_and(|u| run.start - u <= problem.slots_down(machine.warm_window_min))
                || machine.warm_until.is_some_and(|t| run.start <= t);
            if run.start < free {
                return Err(format!("run {i}: the machine is not free"));
            }
            if run.warm && !warm {
                return Err(format!("run {i}: the machine is cold"));
            }
            one_run(problem, run, cycle).map_err(|why| format!("run {i}: {why}"))?;
            free = run.unload;
            unloaded = Some(run.unload);
        }
    }
    Ok(())
}

fn one_run(problem: &Problem, run: &Run, cycle: &Cycle) -> Result<(), String> {
    let long = if run.warm { cycle.dur_warm_min } else { cycle.dur_cold_min };
    if run.end != run.start + problem.slots_up(cycle.load_min + long) {
        return Err("it does not end when it ends".to_owned());
    }
    let free = |t: usize| problem.hands.get(t).is_some_and(|&h| h >= cycle.unload_min);
    let unload = match cycle.drying {
        Drying::None => run.end,
        _ => (run.end..problem.slots).find(|&t| free(t)).unwrap_or(problem.slots),
    };
    if run.unload != unload || !free(unload) {
        return Err("nobody unloads it then".to_owned());
    }
    let ready = unload + problem.slots_up(cycle.unload_min + cycle.cool_min);
    if run.ready != ready || ready > problem.slots {
        return Err("it is not ready then".to_owned());
    }
    let sum = |each: fn(&super::problem::Kind) -> u32| -> u64 {
        let loads = problem.kinds.iter().zip(&run.load);
        loads.map(|(kind, &n)| u64::from(each(kind)) * u64::from(n)).sum()
    };
    if run.load.len() != problem.kinds.len() || run.load.iter().all(|&n| n == 0) {
        return Err("it is empty".to_owned());
    }
    if sum(|k| k.mass_g) > u64::from(cycle.max_mass_g) {
        return Err("it is too heavy".to_owned());
    }
    if cycle.wrapped && sum(|k| k.area) > u64::from(cycle.max_area) {
        return Err("its pouches do not fit".to_owned());
    }
    Ok(())
}

/// Nobody does two things at a time.
fn hands(problem: &Problem, plan: &Plan) -> Result<(), String> {
    let mut used = vec![0_u64; problem.slots];
    for run in &plan.runs {
        let cycle = cycle(problem, run);
        used[run.start] += u64::from(cycle.load_min);
        used[run.unload] += u64::from(cycle.unload_min);
    }
    for work in &plan.hand_work {
        let slot = used.get_mut(work.slot).ok_or("washing after the day")?;
        *slot += u64::from(work.minutes);
    }
    match used.iter().zip(&problem.hands).position(|(&u, &h)| u > u64::from(h)) {
        Some(slot) => Err(format!("slot {slot}: more work than hands")),
        None => Ok(()),
    }
}

/// What is unmet was asked for; what is used at once comes from a run and in time, all of it.
fn needs(problem: &Problem, plan: &Plan) -> Result<(), String> {
    let unmet = |service, kind| -> u32 {
        plan.unmet.iter().filter(|u| (u.service, u.kind) == (service, kind)).map(|u| u.n).sum()
    };
    let asked = |service: usize, kind| -> u32 {
        problem.services[service].needs.iter().filter(|n| n.0 == kind).map(|n| n.1).sum()
    };
    for u in &plan.unmet {
        if unmet(u.service, u.kind) > asked(u.service, u.kind) {
            return Err(format!("service {}: more unmet than asked", u.service));
        }
    }
    for i in &plan.immediate {
        let run = plan.runs.get(i.run).ok_or("a set used at once comes from no run")?;
        let start = problem.services[i.service].start;
        let last = run.end + problem.slots_down(problem.immediate_window_min);
        if cycle(problem, run).drying != Drying::None || start < run.ready || start > last {
            return Err(format!("service {}: opened outside the time of run {}", i.service, i.run));
        }
        let at_once: u32 = plan
            .immediate
            .iter()
            .filter(|j| (j.service, j.kind) == (i.service, i.kind))
            .map(|j| j.n)
            .sum();
        if at_once + unmet(i.service, i.kind) > asked(i.service, i.kind) {
            return Err(format!("service {}: more used at once than asked", i.service));
        }
    }
    for (r, run) in
        plan.runs.iter().enumerate().filter(|(_, run)| cycle(problem, run).drying == Drying::None)
    {
        for (kind, &n) in run.load.iter().enumerate() {
            let opened: u32 =
                plan.immediate.iter().filter(|i| (i.run, i.kind) == (r, kind)).map(|i| i.n).sum();
            if opened != n {
                return Err(format!("run {r}: {opened} of {n} sets are opened in time"));
            }
        }
    }
    Ok(())
}

/// The sets of one kind through the day: short and exposure.
fn sets(problem: &Problem, plan: &Plan, k: usize) -> Result<(u64, u64), String> {
    let kind = &problem.kinds[k];
    let carry = &problem.carry[k];
    let at = |list: &[(usize, u32)], t: usize| -> u32 {
        list.iter().filter(|l| l.0 == t).map(|l| l.1).sum()
    };
    let (mut stock, mut dirty, mut loadable) = (kind.ready, carry.dirty, carry.loadable);
    let (mut loaded, mut worked, mut taken, mut there) = (0_u32, carry.worked, 0_u32, kind.ready);
    let (mut worked_by, mut there_by) = (Vec::new(), Vec::new());
    let mut exposure = 0;
    for t in 0..=problem.slots {
        let arrived = at(&carry.ready_at, t) + arrivals(problem, plan, k, t);
        stock += arrived;
        there += arrived;
        there_by.push(there);
        loadable += at(&carry.loadable_at, t);
        dirty += at(&carry.dirty_at, t) + services(problem, plan, k, |s| s.end == t).1;
        let (asked, served) = services(problem, plan, k, |s| s.start == t);
        let at_once =
            plan.immediate.iter().filter(|i| i.kind == k && problem.services[i.service].start == t);
        let from_stock = served - at_once.map(|i| i.n).sum::<u32>();
        stock = stock
            .checked_sub(from_stock)
            .ok_or(format!("{}: nothing ready in slot {t}", kind.id))?;
        taken += from_stock;
        if asked > 0 {
            for delay in 1..=6 {
                let before = t.checked_sub(delay).map_or(kind.ready, |b| there_by[b]);
                exposure += u64::from(taken.saturating_sub(before)) * u64::from(problem.slot_min);
            }
        }
        if t == problem.slots {
            break;
        }
        loaded += plan.runs.iter().filter(|run| run.start == t).map(|run| run.load[k]).sum::<u32>();
        let done: u32 = t
            .checked_sub(problem.slots_up(problem.passive_min) + 1)
            .map_or(carry.worked, |before| worked_by[before]);
        if loaded.saturating_sub(loadable) * kind.hand_min > done {
            return Err(format!("{}: not washed in slot {t}", kind.id));
        }
        worked += plan
            .hand_work
            .iter()
            .filter(|w| (w.kind, w.slot) == (k, t))
            .map(|w| w.minutes)
            .sum::<u32>();
        if worked > dirty * kind.hand_min {
            return Err(format!("{}: washed before it is used in slot {t}", kind.id));
        }
        worked_by.push(worked);
    }
    Ok((u64::from(kind.target_ready.saturating_sub(stock)), exposure))
}

fn arrivals(problem: &Problem, plan: &Plan, kind: usize, t: usize) -> u32 {
    let dried = |run: &&Run| run.ready == t && cycle(problem, run).drying != Drying::None;
    plan.runs.iter().filter(dried).map(|run| run.load[kind]).sum()
}

/// Sets of a kind that some services ask for, and how many of them they get.
fn services(
    problem: &Problem,
    plan: &Plan,
    kind: usize,
    which: impl Fn(&super::problem::Service) -> bool,
) -> (u32, u32) {
    let (mut asked, mut served) = (0, 0);
    for (i, service) in problem.services.iter().enumerate().filter(|(_, s)| which(s)) {
        let n: u32 = service.needs.iter().filter(|n| n.0 == kind).map(|n| n.1).sum();
        let unmet: u32 =
            plan.unmet.iter().filter(|u| (u.service, u.kind) == (i, kind)).map(|u| u.n).sum();
        asked += n;
        served += n.saturating_sub(unmet);
    }
    (asked, served)
}
