//! Two ways to SQLite on the book's own tables, side by side in one run over one SQLite.
//!
//! Both libraries are handed the same statements in the same order: appending one act at a time,
//! reading a long book from end to end while checking its chain, and folding it again. What
//! differs is the library alone, so the ratios are worth more than the figures.
//!
//! `cargo run --release -- [FACTS] [ACTS]`, in `bench/storage`; by default 1,000,000 and 2,000.

mod driver;
mod work;

// The book's own canonical form, not a copy of it.
#[allow(dead_code)] // the text form is not needed here
#[path = "../../../crates/logbook/src/wire/tree.rs"]
mod tree;

use driver::{Driver, Rusqlite, Sqlx};
use std::error::Error;
use std::path::Path;
use std::time::Instant;

pub type Answer<T> = Result<T, Box<dyn Error>>;

/// Seconds for each of the three.
struct Took {
    append: f64,
    verify: f64,
    fold: f64,
}

fn main() -> Answer<()> {
    let mut numbers = std::env::args().skip(1).map(|number| number.parse::<u32>());
    let facts = numbers.next().transpose()?.unwrap_or(1_000_000);
    let acts = numbers.next().transpose()?.unwrap_or(2_000);
    let folder = std::env::temp_dir().join(format!("storage-bench-{}", std::process::id()));
    std::fs::create_dir(&folder)?;
    let measured = compare(&folder, facts, acts);
    std::fs::remove_dir_all(&folder)?;
    measured
}

fn compare(folder: &Path, facts: u32, acts: u32) -> Answer<()> {
    let runtime = tokio::runtime::Builder::new_current_thread().build()?;
    runtime.block_on(async {
        let long = folder.join("long.sqlite");
        let mut maker = Rusqlite::open(&long)?;
        work::make(&mut maker, facts).await?;
        drop(maker);
        println!("{facts} facts, {acts} acts, SQLite {}", rusqlite::version());
        // Each library goes first once: a warm cache or a busy neighbour shows as a difference.
        let mut rusqlite = Vec::new();
        let mut sqlx = Vec::new();
        for round in 0..4 {
            let file = folder.join(format!("round-{round}.sqlite"));
            std::fs::copy(&long, &file)?;
            if round % 4 == 0 || round % 4 == 3 {
                rusqlite.push(measure("rusqlite", Rusqlite::open(&file)?, facts, acts).await?);
            } else {
                sqlx.push(measure("sqlx", Sqlx::open(&file).await?, facts, acts).await?);
            }
            std::fs::remove_file(&file)?;
        }
        let ratio = |of: fn(&Took) -> f64| least(&sqlx, of) / least(&rusqlite, of);
        println!(
            "sqlx / rusqlite, best of two: append {:.2}, verify {:.2}, fold {:.2}",
            ratio(|took| took.append),
            ratio(|took| took.verify),
            ratio(|took| took.fold),
        );
        Ok(())
    })
}

fn least(all: &[Took], of: fn(&Took) -> f64) -> f64 {
    all.iter().map(of).fold(f64::INFINITY, f64::min)
}

async fn measure(name: &str, mut driver: impl Driver, facts: u32, acts: u32) -> Answer<Took> {
    let start = Instant::now();
    work::verify(&mut driver, facts).await?;
    let verify = start.elapsed().as_secs_f64();
    let start = Instant::now();
    work::fold_all(&mut driver).await?;
    let fold = start.elapsed().as_secs_f64();
    let start = Instant::now();
    work::append(&mut driver, acts).await?;
    let append = start.elapsed().as_secs_f64();
    println!(
        "{name:>8}: append {:.0} acts/s, scan and verify {verify:.1} s, fold {fold:.1} s",
        f64::from(acts) / append
    );
    Ok(Took {
        append,
        verify,
        fold,
    })
}
