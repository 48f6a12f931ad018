//! 500 made-up loads: how much of the bound is reached, and how long it takes. Run by hand:
//! `cargo run --release -p load --example packing -- [STEPS] [LOADS]`.

#![allow(clippy::disallowed_types, reason = "it measures time; the packing itself knows no clock")]
#![allow(clippy::disallowed_methods, reason = "it is started by hand with its settings")]

use load::chamber::{Chamber, Face, Inside, Pattern, Rack, Tray};
use load::pack::{Bag, STEPS, pack};
use std::time::Instant;

/// Sizes of pouches (typical, common practice, no source), mm.
const SIZES: [(u32, u32); 5] = [(60, 100), (90, 165), (90, 230), (135, 260), (190, 330)];

/// Numbers that only look like chance: the same on every machine (xorshift).
struct Draw(u64);

impl Draw {
    fn below(&mut self, most: u32) -> u32 {
        self.0 ^= self.0 << 13;
        self.0 ^= self.0 >> 7;
        self.0 ^= self.0 << 17;
        u32::try_from((self.0 >> 33) % u64::from(most)).unwrap_or(0)
    }

    fn between(&mut self, least: u32, most: u32) -> u32 {
        least + self.below(most - least + 1)
    }
}

struct Load {
    bags: Vec<Bag>,
    inside: Inside,
    most_g: Option<u32>,
}

/// The load of this number: few pouches to clearly too many, one to five trays, each pattern.
fn load(number: u64) -> Load {
    let mut draw = Draw(0x9E37_79B9_7F4A_7C15 ^ (number + 1).wrapping_mul(0xD134_2543_DE82_EF95));
    (0..8).for_each(|_| _ = draw.below(2));
    let pattern = [Pattern::Flat, Pattern::Overlapped, Pattern::OnEdge][(number % 3) as usize];
    let same = draw.below(2) == 0;
    let tray = |draw: &mut Draw| Tray {
        width_mm: draw.between(180, 300),
        depth_mm: draw.between(280, 400),
        height_mm: draw.between(20, 45),
        mass_g: draw.between(200, 600),
    };
    let first = tray(&mut draw);
    let trays: Vec<Tray> =
        (0..draw.between(1, 5)).map(|_| if same { first } else { tray(&mut draw) }).collect();
    let rack = Rack {
        places: draw.between(6, 24),
        pitch_mm: draw.between(10, 20),
        height_mm: draw.between(95, 200),
        depth_mm: draw.between(240, 340),
        mass_g: 400,
    };
    let most = [4, 10, 25, 60, 120][draw.below(5) as usize];
    let kinds = draw.between(1, 5);
    let bags: Vec<Bag> = (0..draw.between(1, most))
        .map(|_| {
            let (width_mm, length_mm) = SIZES[draw.below(kinds) as usize];
            let mass_g = width_mm * length_mm / 400 + draw.below(80);
            Bag { width_mm, length_mm, thick_mm: draw.between(5, 28), mass_g }
        })
        .collect();
    let most_g = (draw.below(3) == 0).then(|| draw.between(300, 4_000));
    let inside = Inside {
        chamber: Chamber::Box { width_mm: 400, height_mm: 400, depth_mm: 500 },
        trays,
        rack: Some(rack),
        pattern,
        face: Face::Film,
        wall_mm: draw.between(0, 10),
        between_mm: draw.between(0, 8),
        manual_page: None,
    };
    Load { bags, inside, most_g }
}

fn main() -> Result<(), std::num::ParseIntError> {
    let mut args = std::env::args().skip(1);
    let steps = args.next().map_or(Ok(STEPS), |text| text.parse())?;
    let loads: u64 = args.next().map_or(Ok(500), |text| text.parse())?;
    let mut all: Vec<(Pattern, f64, f64, u64)> = Vec::new();
    for number in 0..loads {
        let Load { bags, inside, most_g } = load(number);
        let began = Instant::now();
        let packing = pack(&bags, &inside, most_g, steps);
        let ms = began.elapsed().as_secs_f64() * 1e3;
        let share = match packing.bound {
            0 => 1.0,
            bound => packing.count() as f64 / bound as f64,
        };
        if share < 1.0 || ms > 25.0 {
            let (count, bound) = (packing.count(), packing.bound);
            println!(
                "load {number}: {:?}, {} trays, {} pouches: {count} of {bound}, {ms:.1} ms",
                inside.pattern,
                inside.trays.len(),
                bags.len()
            );
        }
        all.push((inside.pattern, share, ms, number));
    }
    println!("steps {steps}            loads  reached   median    worst   ms median  ms worst");
    row("all", &all);
    for pattern in [Pattern::Flat, Pattern::Overlapped, Pattern::OnEdge] {
        let own: Vec<_> = all.iter().filter(|(of, ..)| *of == pattern).copied().collect();
        row(&format!("{pattern:?}"), &own);
    }
    Ok(())
}

fn row(name: &str, all: &[(Pattern, f64, f64, u64)]) {
    let mut shares: Vec<f64> = all.iter().map(|(_, share, ..)| *share).collect();
    let mut times: Vec<f64> = all.iter().map(|(_, _, ms, _)| *ms).collect();
    shares.sort_by(f64::total_cmp);
    times.sort_by(f64::total_cmp);
    let reached = shares.iter().filter(|share| **share >= 1.0).count();
    println!(
        "{name:<16} {:>10} {reached:>8} {:>8.3} {:>8.3} {:>11.2} {:>9.1}",
        all.len(),
        shares.get(shares.len() / 2).copied().unwrap_or(1.0),
        shares.first().copied().unwrap_or(1.0),
        times.get(times.len() / 2).copied().unwrap_or(0.0),
        times.last().copied().unwrap_or(0.0)
    );
}
