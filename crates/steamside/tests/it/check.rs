//! `steamside check`, from outside: what scripts read.

use serde_json::Value;
use std::collections::BTreeSet;
use std::path::{Path, PathBuf};
use std::process::{Command, Output};

fn records() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../cycle/tests/records")
}

fn check(args: &[&str], files: &[PathBuf]) -> (Output, Vec<Value>) {
    let output = Command::new(env!("CARGO_BIN_EXE_steamside"))
        .arg("check")
        .args(args)
        .args(files)
        .output()
        .unwrap();
    let text = String::from_utf8(output.stdout.clone()).unwrap();
    let objects = if args.contains(&"json") {
        text.lines().map(|line| serde_json::from_str(line).unwrap()).collect()
    } else {
        Vec::new()
    };
    (output, objects)
}

fn named(names: &[&str]) -> Vec<PathBuf> {
    names.iter().map(|name| records().join(name)).collect()
}

fn keys(value: &Value) -> BTreeSet<&str> {
    value.as_object().unwrap().keys().map(String::as_str).collect()
}

const JSON: [&str; 2] = ["--format", "json"];

/// Every key of `docs/contract.md`, in every object, whatever became of the file.
#[test]
fn every_key_is_always_there() {
    let files = named(&["p01.csv", "p29.csv", "p22.csv", "none.csv"]);
    let (output, objects) = check(&JSON, &files);
    assert_eq!(output.status.code(), Some(2));
    let wanted: BTreeSet<&str> = "file cycle kind verdict proven_for conforming reasons layout \
        known_from start_clock set_C needed_hold_s hold_s f0_min f0_low_min plateau steady \
        vacuum_depths_kpa leak_kpa_per_min drying phases record"
        .split_whitespace()
        .collect();
    for object in &objects {
        assert_eq!(keys(object), wanted);
        for reason in object["reasons"].as_array().unwrap() {
            assert_eq!(keys(reason), ["code", "text", "at_s", "lines"].into());
        }
    }
    let run = &objects[0];
    let stretch = "start_s end_s min_C max_C satdev_mean_K satdev_maxabs_K";
    for (part, wanted) in [
        ("plateau", stretch),
        ("steady", stretch),
        ("drying", "phase_s vacuum min_kpa ran"),
        ("layout", "time temperature_unit pressure_unit pressure_reference decimal encoding"),
        ("known_from", "temperature_unit pressure_unit pressure_reference set_C"),
        ("record", "rows dropped duplicated out_of_order clock_jumps largest_gap_s truncated"),
    ] {
        assert_eq!(keys(&run[part]), wanted.split_whitespace().collect(), "{part}");
    }
    let said = |key: &str| objects.iter().map(|o| o[key].clone()).collect::<Vec<_>>();
    assert_eq!(said("kind"), ["run", "leak test", "run", "unknown"]);
    assert_eq!(said("verdict"), ["lethal", "pass", "cannot tell", "cannot tell"]);
    assert_eq!(objects[3]["reasons"][0]["code"], "unreadable");
}

/// All files, many threads: the order of the arguments, cycle by cycle.
#[test]
fn the_order_is_that_of_the_arguments() {
    let mut files = Vec::new();
    for n in (1..=34).rev() {
        let name = format!("p{n:02}.");
        let found =
            std::fs::read_dir(records()).unwrap().map(|entry| entry.unwrap().path()).find(|path| {
                let file = path.file_name().unwrap().to_string_lossy().into_owned();
                file.starts_with(&name) && !file.ends_with("json")
            });
        files.push(found.unwrap());
    }
    let (output, objects) = check(&JSON, &files);
    assert_eq!(output.status.code(), Some(1));
    assert_eq!(objects.len(), 37);
    let said: Vec<(String, u64)> = objects
        .iter()
        .map(|o| (o["file"].as_str().unwrap().to_owned(), o["cycle"].as_u64().unwrap()))
        .collect();
    let mut wanted = Vec::new();
    for file in &files {
        let cycles = if file.ends_with("p13.csv") { 4 } else { 1 };
        wanted.extend((0..cycles).map(|cycle| (file.to_string_lossy().into_owned(), cycle)));
    }
    assert_eq!(said, wanted);
    let words = [
        "preheat",
        "heat-up",
        "equilibration",
        "plateau",
        "exhaust",
        "drying",
        "air-in",
        "ambient",
        "evacuate",
        "settle",
        "measure",
        "unknown",
    ];
    for object in &objects {
        for phase in object["phases"].as_array().unwrap() {
            let name = phase["name"].as_str().unwrap();
            let counted = name.strip_prefix("vacuum ").or_else(|| name.strip_prefix("steam "));
            assert!(
                words.contains(&name) || counted.is_some_and(|n| n.parse::<u32>().is_ok()),
                "{name}"
            );
        }
    }
}

#[test]
fn exit_status() {
    let folder = tempfile::tempdir().unwrap();
    let rubbish = folder.path().join("rubbish");
    std::fs::write(&rubbish, [0, 159, 146, 150].repeat(5_000)).unwrap();
    let empty = folder.path().join("empty");
    std::fs::write(&empty, "").unwrap();
    // Neither a writer nor an end: to open the one or to read the other would wait for ever.
    let pipe = folder.path().join("pipe");
    assert!(Command::new("mkfifo").arg(&pipe).status().unwrap().success());
    let device = PathBuf::from("/dev/zero");
    let system = PathBuf::from("/proc/kmsg");
    let missing = folder.path().join("missing");
    let unusable = [folder.path().to_path_buf(), rubbish, empty, missing, pipe, device, system];
    let link = folder.path().join("link");
    std::os::unix::fs::symlink(records().join("p01.csv"), &link).unwrap();
    for (status, files) in [
        (0, named(&["p01.csv"])),
        (0, named(&["p01.csv", "p29.csv"])),
        (0, vec![link]),
        (1, named(&["p01.csv", "p14.csv"])),
        (1, named(&["p30.csv"])),
        (1, named(&["p26.csv"])),
        (2, unusable.to_vec()),
    ] {
        for format in ["text", "json"] {
            let (output, _) = check(&["--format", format], &files);
            assert_eq!(output.status.code(), Some(status), "{files:?}");
            let messages = String::from_utf8(output.stderr).unwrap();
            let about = messages.lines().filter(|line| line.starts_with("steamside: ")).count();
            assert_eq!(about, if status == 2 { files.len() } else { 0 }, "{messages}");
        }
    }
}

#[test]
fn options_reach_the_judge() {
    let verdict = |args: &[&str], file: &str| {
        let (output, objects) = check(&[&JSON[..], args].concat(), &named(&[file]));
        (output.status.code(), objects.first().map_or(Value::Null, |o| o["verdict"].clone()))
    };
    assert_eq!(verdict(&[], "p07.tsv"), (Some(0), "lethal".into()));
    assert_eq!(verdict(&["--load", "pouched"], "p07.tsv"), (Some(1), "cannot tell".into()));
    assert_eq!(verdict(&["--load", "pouched"], "p01.csv"), (Some(0), "lethal".into()));
    assert_eq!(verdict(&["--load", "hollow"], "p01.csv"), (Some(1), "cannot tell".into()));
    assert_eq!(verdict(&["--hold", "5min"], "p01.csv"), (Some(1), "not lethal".into()));
    assert_eq!(verdict(&["--hold", "1s"], "p14.csv"), (Some(1), "not lethal".into()));
    assert_eq!(verdict(&["--rule", "hold_134_s=300"], "p01.csv"), (Some(1), "not lethal".into()));
    // A laxer rule is not taken, and said so.
    assert_eq!(verdict(&["--rule", "hold_134_s=100"], "p14.csv"), (Some(1), "not lethal".into()));
    assert_eq!(verdict(&["--set-temp", "137"], "p01.csv"), (Some(1), "not lethal".into()));
    for bad in
        [["--rule", "nonsense=1"], ["--set-temp", "999"], ["--z", "0"], ["--altitude", "1e9"]]
    {
        assert_eq!(verdict(&bad, "p01.csv").0, Some(2), "{bad:?}");
    }
}

/// People never read the words that belong to programs.
#[test]
fn sentences_for_people() {
    let files = named(&["p01.csv", "p14.csv", "p21.csv", "p29.csv", "p30.csv"]);
    let (output, _) = check(&[], &files);
    let text = String::from_utf8(output.stdout).unwrap();
    for said in [
        "steam did its work",
        "steam did not do its work",
        "cannot tell",
        "leak test passed",
        "leak test failed",
    ] {
        assert!(text.contains(said), "{said:?} is not in {text}");
    }
    for never in ["lethal", "sterile", "safe"] {
        assert!(!text.contains(never), "{never:?} is in {text}");
    }
}
