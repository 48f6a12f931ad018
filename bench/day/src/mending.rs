//! Changes in the middle of a day.

use crate::{Outcome, read, threads};
use day::Chance;
use day::plan::{Change, Options, Plan, Problem, Service, audit, mend, rest, solve};
use std::time::Instant;

pub fn run(changes: usize, seconds: f64, files: &[&str]) -> Outcome<()> {
    println!("| day | changes | median ms | p95 ms | worst ms | worse than {seconds} s | better | runs changed, mean |");
    println!("|---|---|---|---|---|---|---|---|");
    for file in files {
        let problem = read(file)?;
        let begun = Instant::now();
        let options = Options { threads: threads(), ..Options::default() };
        let plan = solve(&problem, &options, &|| begun.elapsed().as_secs_f64() > 1.0)?.plan;
        let mut chance = Chance::from_seed(1);
        let (mut times, mut worse, mut better, mut changed) = (Vec::new(), 0, 0, 0);
        for i in 0..changes {
            let now = 1 + chance.below(problem.slots - 2);
            let change = change(&problem, &plan, now, i, &mut chance);
            let rest = rest(&problem, &plan, now, &change);
            let begun = Instant::now();
            let mended = mend(&rest, &|| false)?;
            times.push(begun.elapsed().as_secs_f64() * 1e3);
            changed += mended.new.len() + mended.dropped.len();
            let mended = audit(&rest.problem, &mended.plan)?;
            let begun = Instant::now();
            let full = solve(&rest.problem, &options, &|| begun.elapsed().as_secs_f64() > seconds)?.objective;
            if mended[..2] > full[..2] {
                worse += 1;
                eprintln!("{} now {now} {change:?}: {mended:?} against {full:?}", problem.name);
            }
            better += usize::from(mended[..2] < full[..2]);
        }
        times.sort_by(f64::total_cmp);
        let at = |share: f64| times[((times.len() - 1) as f64 * share) as usize];
        println!(
            "| {} | {changes} | {:.1} | {:.1} | {:.1} | {worse} | {better} | {:.2} |",
            problem.name,
            at(0.5),
            at(0.95),
            at(1.0),
            changed as f64 / changes as f64
        );
    }
    Ok(())
}

/// One change of each sort in turn: a late client, a walk-in, a wet or failed load, a machine out.
fn change(problem: &Problem, plan: &Plan, now: usize, i: usize, chance: &mut Chance) -> Vec<Change> {
    let to_come: Vec<usize> = (0..problem.services.len()).filter(|&s| problem.services[s].end > now).collect();
    let started: Vec<usize> = (0..plan.runs.len()).filter(|&r| plan.runs[r].start < now).collect();
    match i % 5 {
        0 if !to_come.is_empty() => {
            vec![Change::Late { service: to_come[chance.below(to_come.len())], by: 1 + chance.below(6) }]
        }
        1 => {
            let like = &problem.services[chance.below(problem.services.len())];
            let start = (now + chance.below(6)).min(problem.slots - 1);
            let end = start + like.end - like.start;
            vec![Change::WalkIn(Service { start, end, id: "walk-in".to_owned(), ..like.clone() })]
        }
        2 if !started.is_empty() => vec![Change::Lost { run: started[chance.below(started.len())] }],
        3 => vec![Change::Out {
            machine: chance.below(problem.machines.len()),
            until: now + 6 + chance.below(problem.slots),
        }],
        _ if !to_come.is_empty() => vec![Change::Gone { service: to_come[chance.below(to_come.len())] }],
        _ => Vec::new(),
    }
}
