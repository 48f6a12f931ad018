//! `plan`: the day plan of a described day.

use super::{described_day, unusable};
use crate::planning::explain::Telling;
use crate::wire;
use crate::words::{Language, Words};
use clap::{Args, ValueEnum};
use day::plan::{Answer, DAYPLAN, LEVEL_NAMES, Options, SALON, reasons, solve, ways_out};
use std::path::PathBuf;
use std::process::ExitCode;
use std::time::Instant;

/// Which day, and how to plan it.
#[derive(Debug, Args)]
pub struct PlanArgs {
    /// A day in the form `dayplan-1`.
    instance: PathBuf,
    /// Sentences for people, or one JSON object for programs.
    #[arg(long, value_enum, default_value_t = Format::Text)]
    format: Format,
    /// What counts first. `dayplan`: unmet, short, runs, cost, drying, exposure, for comparing.
    /// `salon`: nobody waits, tomorrow begins well, as little as can be without drying, few runs;
    /// then what lies overnight is dried in full before it is cheap.
    #[arg(long, value_enum, default_value_t = OrderName::Dayplan)]
    order: OrderName,
    /// Seconds after which the best plan so far is the answer.
    #[arg(long, value_name = "SECONDS", default_value_t = 1.0, value_parser = seconds)]
    time_limit: f64,
    /// Threads; all processors if not said. The steps are the same for any number.
    #[arg(long, value_name = "N")]
    threads: Option<usize>,
}

#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
enum Format {
    Text,
    Json,
}

#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
enum OrderName {
    Dayplan,
    Salon,
}

fn seconds(text: &str) -> Result<f64, String> {
    match text.parse() {
        Ok(seconds) if (0.0..=86_400.0).contains(&seconds) => Ok(seconds),
        _ => Err("a number of seconds from 0 to 86400".to_owned()),
    }
}

/// Plans the day; 0 all served, 1 something is unmet or short, 2 not usable.
pub fn run(args: PlanArgs) -> ExitCode {
    let problem = match described_day(&args.instance) {
        Ok(problem) => problem,
        Err(why) => return unusable(format_args!("{}: {why}", args.instance.display())),
    };
    let threads =
        args.threads.unwrap_or_else(|| std::thread::available_parallelism().map_or(1, usize::from));
    let order = match args.order {
        OrderName::Dayplan => DAYPLAN,
        OrderName::Salon => SALON,
    };
    let begun = Instant::now();
    let over = || begun.elapsed().as_secs_f64() >= args.time_limit;
    let options = Options { order, threads: threads.max(1), ..Options::default() };
    let answer = match solve(&problem, &options, &over) {
        Ok(answer) => answer,
        Err(why) => return unusable(format_args!("{}: {why}", args.instance.display())),
    };
    let seconds = begun.elapsed().as_secs_f64();
    let clock = |slot: usize| into_the_day(slot as u64 * u64::from(problem.slot_min));
    let telling = Telling { problem: &problem, words: Words::of(Language::En), clock: &clock };
    let explain: Vec<String> =
        reasons(&problem, &answer.plan).iter().map(|why| telling.run(&answer.plan, why)).collect();
    match args.format {
        Format::Json => {
            let salon = (args.order == OrderName::Salon).then_some(order);
            println!("{}", wire::dayplan::answer(&problem, &answer, &explain, seconds, salon));
        }
        Format::Text => print_for_people(&telling, &answer, &explain, seconds),
    }
    ExitCode::from(u8::from(!all_served(&answer)))
}

/// Nobody goes without, however little they count, and tomorrow begins as wanted.
fn all_served(answer: &Answer) -> bool {
    answer.plan.unmet.is_empty() && answer.objective[1] == 0
}

/// A described day has no date: `3:35` is three hours and 35 minutes after it begins.
fn into_the_day(minutes: u64) -> String {
    format!("{}:{:02}", minutes / 60, minutes % 60)
}

fn print_for_people(telling: &Telling<'_>, answer: &Answer, explain: &[String], seconds: f64) {
    for sentence in explain {
        println!("{sentence}");
    }
    for unmet in &answer.plan.unmet {
        println!("{}", telling.unmet(unmet));
    }
    if answer.objective[1] > 0 {
        println!("Tomorrow morning {} sets are short.", answer.objective[1]);
    }
    if all_served(answer) {
        println!("Everybody is served, and tomorrow begins as wanted.");
    }
    // A day that works needs no way out; looking for one has its own time.
    let begun = Instant::now();
    let over = || begun.elapsed().as_secs_f64() >= WAYS_SECONDS;
    for way in
        ways_out(telling.problem, &answer.plan, [answer.objective[0], answer.objective[1]], &over)
            .unwrap_or_default()
            .iter()
            .take(WAYS)
    {
        println!("A way out: {}", telling.way(way));
    }
    let proven =
        answer.bound.iter().zip(&answer.objective).take_while(|(b, v)| **b == Some(**v)).count();
    match proven {
        0 => println!("It is not proven that no plan does better ({seconds:.1} s)."),
        _ => println!(
            "No plan can do better in {} ({seconds:.1} s).",
            LEVEL_NAMES[..proven].join(", ")
        ),
    }
    println!(
        "Times count from the beginning of the day. Hot loads: tongs or heat gloves, let cool."
    );
}

/// How long ways out are looked for, seconds, and how many are told.
const WAYS_SECONDS: f64 = 3.0;
const WAYS: usize = 4;
