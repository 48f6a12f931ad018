//! Prints how often the learnt interval holds a hidden limit, in made-up salons:
//! `cargo run --release -p cycle --example limit_table [salons]`.
#![allow(clippy::expect_used)] // an example may stop at once

#[path = "../tests/limit/salons.rs"]
mod salons;

fn main() {
    let charge = salons::charge();
    let prior = cycle::limit::Prior::of(&charge, &cycle::balance::Unknowns::TYPICAL);
    println!("{prior:?}, the usual mix asks {:?} W", cycle::balance::demand(&charge));
    println!("kind | looks | covered | limit below it | high/low | width g | advice > 1.2 x limit");
    for (kind, word) in salons::KINDS {
        for looks in [20, 50, 200] {
            let cell = salons::cell(kind, looks, 400, 20_261_129 + looks as u64);
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
