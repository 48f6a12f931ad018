//! `drift`: what changes from run to run on one machine.

mod table;

use super::unusable;
use crate::drifting::Certainty;
use crate::wire;
use clap::Args;
use cycle::drift::{Alarm, Figure, Part, Settings, watch};
use std::path::PathBuf;
use std::process::ExitCode;
use table::Table;

/// Which runs, and how to answer.
#[derive(Debug, Args)]
pub struct DriftArgs {
    /// A comma-separated table of the runs of one machine, one row a run.
    file: PathBuf,
    /// How to answer.
    #[arg(long, value_enum, default_value_t = Format::Text)]
    format: Format,
    /// False alarms per 1000 runs that a machine with nothing wrong may raise, over all figures
    /// together.
    #[arg(long, value_name = "RATE", default_value_t = Settings::default().false_alarms_per_1000_runs)]
    false_alarms: f64,
}

/// How to answer.
#[derive(Debug, Clone, Copy, PartialEq, Eq, clap::ValueEnum)]
enum Format {
    /// For people.
    Text,
    /// One JSON object a line.
    Json,
}

/// Judges the runs in order; 0 nothing changed, 1 an alarm, 2 not readable.
pub fn run(args: DriftArgs) -> ExitCode {
    let settings = match Settings::with_rate(args.false_alarms) {
        Ok(settings) => settings,
        Err(error) => return unusable(format_args!("--false-alarms: {error}")),
    };
    let table = match table::read(&args.file) {
        Ok(table) => table,
        Err(error) => return unusable(format_args!("{}: {error}", args.file.display())),
    };
    for note in &table.notes {
        eprintln!("steamside: {}: {note}", args.file.display());
    }
    let alarms = watch(&table.runs, &settings);
    match args.format {
        Format::Json => alarms.iter().for_each(|alarm| println!("{}", wire::drift::alarm(alarm))),
        Format::Text => print_for_people(&table, &alarms, &settings),
    }
    ExitCode::from(u8::from(!alarms.is_empty()))
}

fn print_for_people(table: &Table, alarms: &[Alarm], settings: &Settings) {
    for alarm in alarms {
        println!("{}", sentence(alarm));
    }
    let runs = table.runs.len();
    if runs <= settings.learn_runs {
        println!(
            "{runs} runs: the first {} only teach what is usual, so nothing was judged yet.",
            settings.learn_runs
        );
    } else if alarms.is_empty() {
        println!("{runs} runs: no lasting change in {}.", table.watched.join(", "));
    } else {
        println!(
            "Have the machine off, cold and without pressure before anyone touches a part; its own \
             manual comes first. An alarm says what changed, not what is broken."
        );
    }
}

/// One alarm in the words of the salon.
fn sentence(alarm: &Alarm) -> String {
    let certainty = match Certainty::of(alarm) {
        Certainty::Very => "very sure",
        Certainty::Sure => "sure",
        Certainty::JustPast => "just past the mark",
    };
    format!(
        "Run {}: {} changed by {} since about run {} ({certainty}). {}",
        alarm.alarm_at_cycle,
        plain(alarm.figure),
        alarm.change(),
        alarm.since_cycle,
        advice(alarm),
    )
}

const fn plain(figure: Figure) -> &'static str {
    match figure {
        Figure::HeatUp => "the time to heat up",
        Figure::AirIn => "the time to let in air",
        Figure::FirstPulse => "the time of the first vacuum pulse",
        Figure::PulseDepth => "the depth of the vacuum pulses",
        Figure::DryDepth => "the vacuum while drying",
        Figure::Leak => "the leak in a vacuum hold",
        Figure::Exhaust => "the time to let off the steam",
        Figure::Total => "the length of the run beyond its known parts",
        Figure::PlateauLow => "the lowest temperature at the set point",
        Figure::PlateauHigh => "the highest temperature at the set point",
        Figure::PlateauLength => "the time at temperature",
        Figure::Saturation => "the distance from saturated steam",
    }
}

/// What to look at, by the part; common practice, no source.
fn advice(alarm: &Alarm) -> String {
    let look = match alarm.part {
        Part::Heater => "Look at the heater: scale, a loose connection, a weak element.",
        Part::Seal => "Look at the door seal: clean it, look for cuts, run a leak test.",
        Part::Pump => "Look at the vacuum pump; a leak test tells it from the door seal.",
        Part::Filter if alarm.shift < 0.0 => {
            "Look at the air filter: new, torn, or left out? Without it unfiltered air gets in."
        }
        Part::Filter => "Look at the air filter: clogged or wet.",
        Part::Drain => "Look at the drain: strainer, exhaust valve, hose.",
        Part::Unclear => {
            return "Which part it is cannot be told from these figures: have the machine looked at."
                .to_owned();
        }
    };
    format!("{look} (This part: {:.0} in 100.)", 100.0 * alarm.part_share)
}
