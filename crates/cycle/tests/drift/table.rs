//! Reads the series beside this file.

use cycle::drift::RunFeatures;
use std::path::Path;

/// The runs of `series/NAME.csv`.
pub fn runs(name: &str) -> Vec<RunFeatures> {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/drift/series").join(name);
    let text = std::fs::read_to_string(path.with_extension("csv")).unwrap();
    let mut lines = text.lines();
    let heading: Vec<&str> = lines.next().unwrap().trim_end().split(',').collect();
    lines.map(|line| run(&heading, line)).collect()
}

fn run(heading: &[&str], line: &str) -> RunFeatures {
    let cells: Vec<&str> = line.trim_end().split(',').collect();
    let number = |name: &str| {
        let at = heading.iter().position(|head| *head == name)?;
        cells.get(at)?.parse::<f64>().ok()
    };
    RunFeatures {
        cycle: number("cycle").unwrap() as u64,
        first_of_day: number("first_of_day").map(|cold| cold > 0.5),
        preheat_s: number("preheat_s"),
        heat_up_s: number("heat_up_s"),
        plateau_s: number("plateau_s"),
        plateau_t_min_c: number("plateau_t_min_c"),
        plateau_t_max_c: number("plateau_t_max_c"),
        satdev_mean_k: number("satdev_mean_k"),
        vac3_kpa: number("vac3_kpa"),
        vac1_s: number("vac1_s"),
        dry_vac_kpa: number("dry_vac_kpa"),
        air_in_s: number("air_in_s"),
        exhaust_s: None,
        leak_kpa_per_min: None,
        total_s: number("total_s"),
    }
}
