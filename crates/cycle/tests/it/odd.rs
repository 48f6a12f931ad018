//! Where one cycle ends and the next begins, and files that are not whole.

use crate::made::{File, HEADING, codes, csv, cycle};
use cycle::finding::Code;
use cycle::record::{CycleRecord, Known, read};

fn lengths(found: &[CycleRecord]) -> Vec<usize> {
    found.iter().map(|record| record.samples.t_s.len()).collect()
}

#[test]
fn cycles_are_parted_by_what_the_contract_names() {
    let rows = cycle().len();
    let two = vec![rows, rows];
    let known = Known::default();
    let blank = File::new(HEADING).whole().line("").wait(60).whole();
    assert_eq!(lengths(&blank.read(&known)), two, "a blank line");
    let heading = File::new(HEADING).whole().line(HEADING).wait(60).whole();
    assert_eq!(lengths(&heading.read(&known)), two, "a repeated heading");
    let gap = File::new(HEADING).whole().wait(700).whole();
    assert_eq!(lengths(&gap.read(&known)), two, "a gap of more than ten minutes at ambient");
    let long_gap = File::new(HEADING).whole().wait(7_200).whole();
    assert_eq!(lengths(&long_gap.read(&known)), two, "a gap that could be a clock jump");
    let next_day = File::new(HEADING).whole().wait(20 * 3_600).whole();
    assert_eq!(lengths(&next_day.read(&known)), two, "a clock that shows an earlier hour");
    let short_gap = File::new(HEADING).whole().wait(120).whole();
    assert_eq!(short_gap.read(&known).len(), 1, "two minutes part nothing");
}

#[test]
fn other_tables_may_follow_in_the_same_file() {
    let other = |clock: &str, celsius: f64, kpa: f64| {
        format!("{clock};{:.1};{:.3}", celsius * 1.8 + 32.0, kpa / 6.894_757)
    };
    let file = File::new(HEADING)
        .whole()
        .line("")
        .line("Uhrzeit;Temperatur °F;Druck psi abs")
        .wait(900)
        .rows(0..usize::MAX, other);
    let found = file.read(&Known::default());
    assert_eq!(found.len(), 2);
    assert_eq!(found[1].layout.temperature_unit, "F");
    assert_eq!(found[1].layout.pressure_unit.as_deref(), Some("psi"));
    let hottest = |record: &CycleRecord| record.samples.temp_c.iter().copied().fold(0.0, f64::max);
    assert!((hottest(&found[0]) - hottest(&found[1])).abs() < 0.2);
}

#[test]
fn a_new_page_parts_nothing_while_the_chamber_is_under_steam() {
    let file =
        File::new(HEADING).rows(0..200, csv).line("").line(HEADING).rows(200..usize::MAX, csv);
    let record = file.only();
    assert_eq!(record.samples.t_s.len(), cycle().len());
    let doubled: String = File::new(HEADING).whole().text.replace('\n', "\n\n");
    assert_eq!(
        read(doubled.as_bytes(), &Known::default()).unwrap().len(),
        1,
        "a blank line after every row"
    );
}

#[test]
fn gaps_at_heat_and_clock_jumps_part_nothing() {
    let gap = File::new(HEADING).rows(0..200, csv).wait(900).rows(200..usize::MAX, csv).only();
    assert_eq!(gap.integrity.largest_gap_s, 902.0);
    assert!(codes(&gap).contains(&Code::RowsMissing));
    let jump = File::new(HEADING).rows(0..200, csv).wait(3_600).rows(200..usize::MAX, csv).only();
    assert_eq!(jump.integrity.clock_jumps, [(400.0, 3_602.0)]);
    assert_eq!(codes(&jump), [Code::ClockJump]);
    let before_steam =
        File::new(HEADING).rows(0..5, csv).wait(-3_600).rows(5..usize::MAX, csv).only();
    assert_eq!(before_steam.integrity.clock_jumps, [(10.0, -3_598.0)]);
    let after = cycle().len() - 4;
    let cooling =
        File::new(HEADING).rows(0..after, csv).wait(-3_600).rows(after..usize::MAX, csv).only();
    assert_eq!(cooling.integrity.clock_jumps.len(), 1);
}

#[test]
fn a_file_cut_short() {
    let whole = File::new(HEADING).rows(0..250, csv).text;
    let clean = read(whole.as_bytes(), &Known::default()).unwrap().remove(0);
    assert!(clean.integrity.truncated, "ends under steam");
    assert_eq!(clean.samples.t_s.len(), 250);
    for lost in 2..18 {
        let cut = &whole[..whole.len() - lost];
        let record = read(cut.as_bytes(), &Known::default()).unwrap().remove(0);
        assert_eq!(record.samples.t_s.len(), 249, "{lost} bytes lost");
        assert!(record.integrity.truncated && codes(&record).contains(&Code::Truncated));
    }
    let text = File::new(HEADING).whole().text;
    let unclosed = read(text.trim_end().as_bytes(), &Known::default()).unwrap().remove(0);
    assert!(!unclosed.integrity.truncated, "a whole file may lack the last line end");
    assert_eq!(unclosed.samples.t_s.len(), cycle().len());
}
