//! All ways of leaving just so much unmet.

use super::super::table::{Need, Table};

/// Ways up to which a day is looked at.
const MOST_WAYS: usize = 1 << 11;

/// Each way, as indices into [`Table::needs`], one for each set, sorted. Of needs that are alike
/// the first is refused. `None` where there are too many ways, or where a need weighs nothing, so
/// that leaving it unmet shows in no level.
pub(super) fn all(table: &Table, unmet: u64) -> Option<Vec<Vec<u16>>> {
    if table.needs.iter().any(|need| need.weight == 0) {
        return None;
    }
    let mut ways = Vec::new();
    more(table, 0, unmet, &mut Vec::new(), &mut ways)?;
    Some(ways)
}

fn more(
    table: &Table,
    from: usize,
    unmet: u64,
    way: &mut Vec<u16>,
    ways: &mut Vec<Vec<u16>>,
) -> Option<()> {
    if unmet == 0 {
        ways.push(way.clone());
        return (ways.len() <= MOST_WAYS).then_some(());
    }
    for (i, need) in table.needs.iter().enumerate().skip(from) {
        let here = way.iter().filter(|&&w| usize::from(w) == i).count() as u32;
        let weight = u64::from(need.weight);
        if here >= need.n || weight > unmet || skips_one_alike(table, i, need, way) {
            continue;
        }
        way.push(i as u16);
        more(table, i, unmet - weight, way, ways)?;
        way.pop();
    }
    Some(())
}

/// Whether another need, alike and before this one, has a set that is not refused.
fn skips_one_alike(table: &Table, i: usize, need: &Need, way: &[u16]) -> bool {
    let alike = |other: &Need| {
        (other.kind, other.start, other.end, other.weight)
            == (need.kind, need.start, need.end, need.weight)
    };
    table.needs.iter().enumerate().take(i).any(|(j, other)| {
        alike(other) && (way.iter().filter(|&&w| usize::from(w) == j).count() as u32) < other.n
    })
}
