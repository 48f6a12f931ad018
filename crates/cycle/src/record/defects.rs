//! What was wrong with the rows of a cycle, as findings.

use super::convert::Converted;
use super::parting::Raw;
use super::repair::Repaired;
use super::stamp::SECOND;
use crate::finding::{Code, Finding};

/// One finding for each kind of defect, from the first to the last place of it.
pub(super) fn defects(
    raw: &Raw,
    rows: &Converted,
    repaired: &Repaired,
    truncated: bool,
) -> Vec<Finding> {
    let at = |i: usize| repaired.since_start[i] as f64 / SECOND as f64;
    let spot = |code: Code, text: String, places: &[usize]| -> Option<Finding> {
        let (first, last) = (*places.iter().min()?, *places.iter().max()?);
        // Behind a jump, a later row of the file may be an earlier one of the cycle.
        let times = places.iter().map(|&i| at(i));
        let (from, to) = times
            .fold((f64::INFINITY, f64::NEG_INFINITY), |(from, to), at| (from.min(at), to.max(at)));
        Some(Finding {
            code,
            text,
            at_s: Some((from, to)),
            lines: Some((rows.line[first], rows.line[last])),
        })
    };
    let jumps: Vec<usize> = repaired.jumps.iter().map(|jump| jump.0).collect();
    let gaps: Vec<usize> = repaired.gaps.iter().flat_map(|(a, b)| [*a, *b]).collect();
    let (doubled, swapped) = (&repaired.doubled, &repaired.swapped);
    let mut found = Vec::new();
    found.extend(spot(Code::ClockJump, jump_text(repaired), &jumps));
    let text = format!("about {} rows are missing", repaired.dropped);
    found.extend(spot(Code::RowsMissing, text, &gaps));
    found.extend(left_out(raw, rows));
    let text = format!("{} rows repeat an earlier time and are left out", doubled.len());
    found.extend(spot(Code::RowsDoubled, text, doubled));
    let text = format!("{} rows stand behind a later one and are put right", swapped.len());
    found.extend(spot(Code::RowsSwapped, text, swapped));
    if truncated {
        let text = "the record ends before the cycle does".to_owned();
        let last = rows.line.len().checked_sub(1);
        found.extend(spot(Code::Truncated, text, last.as_slice()));
    }
    found
}

fn jump_text(repaired: &Repaired) -> String {
    let jumps = repaired.jumps.iter().take(5);
    let by: Vec<String> = jumps.map(|(_, by)| format!("{:+} s", by / SECOND)).collect();
    format!("the clock jumps ({}); each jump counts as one usual step", by.join(", "))
}

/// Rows that could not be used, whose time nobody knows or whose readings nobody believes.
fn left_out(raw: &Raw, rows: &Converted) -> Vec<Finding> {
    let missing = |count: usize, why: &str, lines: Option<(u32, u32)>| {
        (count > 0).then(|| Finding {
            code: Code::RowsMissing,
            text: format!("{count} rows {why} and are left out"),
            at_s: None,
            lines,
        })
    };
    let impossible = &rows.impossible;
    let lines = impossible.first().copied().zip(impossible.last().copied());
    [
        missing(raw.missing, "have no usable time or reading", raw.missing_lines),
        missing(impossible.len(), "show what no sterilizer can", lines),
    ]
    .into_iter()
    .flatten()
    .collect()
}
