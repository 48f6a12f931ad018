//! What `sets` may be told.

use clap::{Args, ValueEnum};
use day::plan::{Problem, Unusable};
use day::sets::{Assumptions, Basis, Days, Event, Prices, Rate};
use std::path::PathBuf;

/// Which day, and how days differ from it. Rates and prices that are not said are assumptions.
#[derive(Debug, Args)]
pub struct SetsArgs {
    /// A day in the form `dayplan-1`: random days grow out of it.
    pub instance: PathBuf,
    /// Sentences for people, or one JSON object a line for programs.
    #[arg(long, value_enum, default_value_t = Format::Text)]
    pub format: Format,
    /// The kind of set; every kind if not said.
    #[arg(long)]
    kind: Option<String>,
    /// The fewest sets to try; two below what is owned if not said.
    #[arg(long, value_name = "N")]
    pub from: Option<u32>,
    /// The most sets to try; four above what is owned if not said. Sets more begin the day ready.
    #[arg(long, value_name = "N")]
    pub to: Option<u32>,
    /// How many random days.
    #[arg(long, value_name = "N", default_value_t = 10_000, value_parser = clap::value_parser!(u32).range(1..=100_000_000))]
    pub days: u32,
    /// The same seed gives the same days.
    #[arg(long, value_name = "N", default_value_t = 1)]
    pub seed: u64,
    /// Threads; all processors if not said. The answer is the same for any number.
    #[arg(long, value_name = "N")]
    threads: Option<usize>,
    /// How many of the days to plan as well, so that the simulation does not lie.
    #[arg(long, value_name = "N", default_value_t = 50)]
    pub confirm: u32,
    /// Say also what one more set, one more machine and a longer lunch would buy.
    #[arg(long)]
    pub what_if: bool,
    /// By how much lunch would be longer, minutes.
    #[arg(long, value_name = "MINUTES", default_value_t = 30)]
    pub longer_lunch: u32,
    /// Walk-ins for each appointment.
    #[arg(long, value_name = "SHARE", value_parser = share)]
    walk_ins: Option<f64>,
    /// Appointments to which nobody comes.
    #[arg(long, value_name = "SHARE", value_parser = share)]
    no_shows: Option<f64>,
    /// Appointments to which the client comes late.
    #[arg(long, value_name = "SHARE", value_parser = share)]
    late: Option<f64>,
    /// Appointments that take longer.
    #[arg(long, value_name = "SHARE", value_parser = share)]
    overruns: Option<f64>,
    /// Runs that fail.
    #[arg(long, value_name = "SHARE", value_parser = share)]
    failed: Option<f64>,
    /// Dried loads that come out wet.
    #[arg(long, value_name = "SHARE", value_parser = share)]
    wet: Option<f64>,
    /// What one more set costs.
    #[arg(long, value_name = "MONEY", default_value_t = Prices::default().set, value_parser = money)]
    set_price: f64,
    /// What one more machine costs.
    #[arg(long, value_name = "MONEY", default_value_t = Prices::default().machine, value_parser = money)]
    machine_price: f64,
    /// What the longer lunch costs each day.
    #[arg(long, value_name = "MONEY", default_value_t = Prices::default().lunch_a_day, value_parser = money)]
    lunch_price: f64,
    /// What a client who waits costs.
    #[arg(long, value_name = "MONEY", default_value_t = Prices::default().waiting, value_parser = money)]
    waiting_price: f64,
    /// Days a year on which the salon is open.
    #[arg(long, value_name = "DAYS", default_value_t = Prices::default().working_days, value_parser = working_days)]
    working_days: f64,
}

/// How to answer.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub enum Format {
    /// For people.
    Text,
    /// One JSON object a line.
    Json,
}

fn number(text: &str, most: f64, what: &str) -> Result<f64, String> {
    match text.parse() {
        Ok(value) if (0.0..=most).contains(&value) => Ok(value),
        _ => Err(what.to_owned()),
    }
}

fn share(text: &str) -> Result<f64, String> {
    number(text, 1.0, "a share from 0 to 1, such as 0.05")
}

fn money(text: &str) -> Result<f64, String> {
    number(text, 1e9, "an amount of money from 0 to 1000000000")
}

fn working_days(text: &str) -> Result<f64, String> {
    number(text, 366.0, "a number of days from 0 to 366")
}

impl SetsArgs {
    /// Which kinds are asked about.
    pub fn kinds(&self, problem: &Problem) -> Result<Vec<usize>, Unusable> {
        let Some(asked) = &self.kind else { return Ok((0..problem.kinds.len()).collect()) };
        match problem.kinds.iter().position(|kind| kind.id == *asked) {
            Some(kind) => Ok(vec![kind]),
            None => {
                let known: Vec<&str> = problem.kinds.iter().map(|kind| kind.id.as_str()).collect();
                Err(Unusable(format!("there is no kind \"{asked}\", only {}", known.join(", "))))
            }
        }
    }

    /// How days differ from the booked one.
    pub fn assumptions(&self) -> Assumptions {
        let mut assumptions = Assumptions::default();
        let said = [self.walk_ins, self.no_shows, self.late, self.overruns, self.failed, self.wet];
        for (event, share) in Event::ALL.into_iter().zip(said) {
            if let Some(share) = share {
                assumptions[event] = Rate { share, basis: Basis::Assumed };
            }
        }
        assumptions
    }

    /// The days that are simulated.
    pub fn simulated<'a>(&self, assumptions: &'a Assumptions) -> Days<'a> {
        let all = || std::thread::available_parallelism().map_or(1, usize::from);
        let threads = self.threads.unwrap_or_else(all).clamp(1, MOST_THREADS);
        Days { assumptions, days: self.days, seed: self.seed, threads }
    }

    /// What things cost.
    pub fn prices(&self) -> Prices {
        Prices {
            set: self.set_price,
            machine: self.machine_price,
            lunch_a_day: self.lunch_price,
            waiting: self.waiting_price,
            working_days: self.working_days,
        }
    }
}

/// More threads than this only cost memory.
const MOST_THREADS: usize = 256;
