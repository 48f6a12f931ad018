//! `sets`: how many sets to own.

mod options;
mod text;

use super::{described_day, unusable};
use crate::wire;
use day::plan::{MOST_SETS, Problem, Unusable};
use day::sets::{Assumptions, Bought, Confirmed, Days, Point, Prices, Purchase};
use day::sets::{buy, confirm, curve, owning, tally};
use options::Format;
pub use options::SetsArgs;
use std::process::ExitCode;

/// Everything that was found out about one kind.
struct Found {
    kind: usize,
    points: Vec<(Point, Option<Confirmed>)>,
}

/// Simulates; 0 done, 2 not usable.
pub fn run(args: SetsArgs) -> ExitCode {
    let found = described_day(&args.instance).and_then(|problem| {
        let (assumptions, prices) = (args.assumptions(), args.prices());
        let found = find(&problem, &args, &assumptions).map_err(|Unusable(why)| why)?;
        let bought = match args.what_if {
            true => {
                purchases(&problem, &args, &assumptions, &prices).map_err(|Unusable(why)| why)?
            }
            false => Vec::new(),
        };
        Ok((problem, assumptions, prices, found, bought))
    });
    let (problem, assumptions, prices, found, bought) = match found {
        Ok(found) => found,
        Err(why) => return unusable(format_args!("{}: {why}", args.instance.display())),
    };
    match args.format {
        Format::Json => {
            for found in &found {
                let kind = &problem.kinds[found.kind].id;
                for (point, confirmed) in &found.points {
                    println!("{}", wire::sets::point(kind, point, args.seed, confirmed.as_ref()));
                }
            }
            bought.iter().for_each(|b| println!("{}", wire::sets::bought(&problem, b)));
        }
        Format::Text => {
            found.iter().for_each(|found| text::found(&problem, found));
            text::purchases(&problem, &bought, &prices);
            text::assumptions(&assumptions, args.days);
        }
    }
    ExitCode::SUCCESS
}

fn find(
    problem: &Problem,
    args: &SetsArgs,
    assumptions: &Assumptions,
) -> Result<Vec<Found>, Unusable> {
    let days = args.simulated(assumptions);
    let sample = Days { days: args.confirm.min(args.days), ..days };
    let mut found = Vec::new();
    for kind in args.kinds(problem)? {
        let owned = problem.kinds[kind].owned;
        let from = args.from.unwrap_or(owned.saturating_sub(2));
        let to = args.to.unwrap_or((owned + 4).min(MOST_SETS).max(from));
        let mut points = Vec::new();
        for point in curve(problem, kind, from..=to, &days)? {
            let confirmed = match sample.days {
                0 => None,
                _ => Some(confirm(&owning(problem, kind, point.owned), &sample)?),
            };
            points.push((point, confirmed));
        }
        found.push(Found { kind, points });
    }
    Ok(found)
}

/// One more set of each kind, one more machine, a longer lunch; each beside what is owned now.
fn purchases(
    problem: &Problem,
    args: &SetsArgs,
    assumptions: &Assumptions,
    prices: &Prices,
) -> Result<Vec<Bought>, Unusable> {
    let days = args.simulated(assumptions);
    let before = tally(problem, &days)?;
    let sets = (0..problem.kinds.len()).map(Purchase::Set);
    let all = sets.chain([Purchase::Machine, Purchase::Lunch(args.longer_lunch)]);
    all.map(|purchase| buy(problem, &before, purchase, &days, prices)).collect()
}
