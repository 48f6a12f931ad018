//! What planning a day takes and how good it is. `cargo run --release -- VERB ...`:
//!
//! - `table SECONDS OUT INSTANCE...` plans each day, writes `OUT/NAME.plan.json` for a checker, and
//!   prints value, bound and seconds.
//! - `growth SECONDS INSTANCE...` plans the first fifth, two fifths, ... of each day's appointments
//!   and prints how long it takes until the best value of that time is there.
//! - `mend CHANGES SECONDS INSTANCE...` changes each planned day so many times in its middle, mends
//!   it, and compares with planning the rest for so many seconds.

#[path = "../../../crates/steamside/src/wire/dayplan.rs"]
#[allow(dead_code)] // the sentences that only the command prints
mod dayplan;
mod mending;

use day::plan::{DAYPLAN, Options, Problem, solve};
use std::time::Instant;

/// Any failure here is a sentence and the end.
pub type Outcome<T> = Result<T, Box<dyn std::error::Error>>;

fn main() -> Outcome<()> {
    let arguments: Vec<String> = std::env::args().skip(1).collect();
    let words: Vec<&str> = arguments.iter().map(String::as_str).collect();
    match words.as_slice() {
        ["table", seconds, out, files @ ..] => table(seconds.parse()?, out, files),
        ["growth", seconds, files @ ..] => growth(seconds.parse()?, files),
        ["mend", changes, seconds, files @ ..] => mending::run(changes.parse()?, seconds.parse()?, files),
        _ => Err("table SECONDS OUT FILES | growth SECONDS FILES | mend CHANGES SECONDS FILES".into()),
    }
}

pub fn read(file: &str) -> Outcome<Problem> {
    Ok(dayplan::read(&std::fs::read(file)?)?)
}

pub fn threads() -> usize {
    std::thread::available_parallelism().map_or(1, usize::from)
}

fn table(seconds: f64, out: &str, files: &[&str]) -> Outcome<()> {
    println!("| day | machines | services | value | bound | days tried | seconds |\n|---|---|---|---|---|---|---|");
    for file in files {
        let problem = read(file)?;
        let begun = Instant::now();
        let options = Options { order: DAYPLAN, threads: threads(), ..Options::default() };
        let answer = solve(&problem, &options, &|| begun.elapsed().as_secs_f64() > seconds)?;
        let bound = answer.bound.map(|b| b.map_or("-".to_owned(), |b| b.to_string())).join(" ");
        let value = answer.objective.map(|v| v.to_string()).join(" ");
        println!(
            "| {} | {} | {} | {value} | {bound} | {} | {:.2} |",
            problem.name,
            problem.machines.len(),
            problem.services.len(),
            answer.tried,
            begun.elapsed().as_secs_f64()
        );
        let mut plan = dayplan::plan(&problem, &answer.plan);
        plan["objective"] = serde_json::json!(answer.objective);
        std::fs::write(format!("{out}/{}.plan.json", problem.name), plan.to_string())?;
    }
    Ok(())
}

fn growth(seconds: f64, files: &[&str]) -> Outcome<()> {
    println!("| day | services | first three levels | seconds to them |\n|---|---|---|---|");
    for file in files {
        let whole = read(file)?;
        for fifth in 1..=5 {
            let mut problem = whole.clone();
            problem.services.truncate(whole.services.len() * fifth / 5);
            let least = until(&problem, seconds)?;
            let mut needed = seconds;
            while needed > 0.002 && until(&problem, needed / 2.0)? <= least {
                needed /= 2.0;
            }
            println!("| {} | {} | {least:?} | {needed:.3} |", whole.name, problem.services.len());
        }
    }
    Ok(())
}

/// The first three levels after so many seconds.
fn until(problem: &Problem, seconds: f64) -> Outcome<[u64; 3]> {
    let begun = Instant::now();
    let options = Options { order: DAYPLAN, threads: threads(), ..Options::default() };
    let answer = solve(problem, &options, &|| begun.elapsed().as_secs_f64() > seconds)?;
    Ok([answer.objective[0], answer.objective[1], answer.objective[2]])
}
