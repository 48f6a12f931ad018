//! Prints how often the learnt interval holds a hidden limit, in made-up salons:
//! `cargo run --release -p cycle --example limit_table [salons]`.
#![allow(clippy::expect_used)] // an example may stop at once
#![allow(clippy::disallowed_methods)] // and it may be told how many

#[path = "../tests/limit/salons.rs"]
mod salons;

fn main() {
    let charge = salons::charge();
    let prior = cycle::limit::Prior::of(&charge, &cycle::balance::Unknowns::TYPICAL);
    figures(&charge);
    println!("{prior:?}, the usual mix asks {:?} W", cycle::balance::demand(&charge));
    let salons = std::env::args().nth(1).and_then(|count| count.parse().ok()).unwrap_or(400);
    println!("kind | looks | covered | limit below it | high/low | width g | advice > 1.2 x limit");
    for (kind, word) in salons::KINDS {
        for looks in [20, 50, 200] {
            let cell = salons::cell(kind, looks, salons, 77_000_123 + looks as u64);
            println!(
                "{word} | {looks} | {:.1} % | {:.1} % | {:.2} | {:.0} | {:.1} %",
                100.0 * cell.covered,
                100.0 * cell.below,
                cell.times,
                cell.grams,
                100.0 * cell.bold
            );
        }
    }
}

/// The same load's balance after 15 minutes of drying, and the water of its run.
fn figures(charge: &cycle::balance::Charge) {
    use cycle::balance::{Filling, Heated, Part, Unknowns, balance, run_water, specific};
    let mut charge = charge.clone();
    for minutes in [0.0, 5.0, 15.0] {
        charge.drying.minutes = minutes;
        println!("{minutes} min: {:#?}", balance(&charge, &Unknowns::TYPICAL));
    }
    let (part, grams) = (Part::Walls, 2_300.0);
    charge.heated.push(Heated { part, grams, specific_heat: specific::STEEL_304 });
    let chamber = load::chamber::Chamber::Round { diameter_mm: 250, depth_mm: 350 };
    for (pulses, pulse_kpa) in [(3, 180.0), (3, 130.0), (1, 180.0)] {
        let filling = Filling { chamber, pulses, pulse_kpa };
        println!(
            "{pulses} x {pulse_kpa} kPa: {:#?}",
            run_water(&charge, &filling, &Unknowns::TYPICAL)
        );
    }
}
