//! Typical chores of a salon, until it says its own.
//!
//! How often is common practice and has no source, but where a source stands beside it. Filters and
//! the change of a door seal have no default at all: only the machine's manual knows.

use crate::fact::{About, ChoreRule, DayPart};
use load::ChoreWord;
use measure::{MachineId, ThingId};

/// The chore whose last time is the last spore test that was placed.
pub const SPORE_TEST: &str = "spore test";
/// Minutes for which a foot basin stays wet, until somebody has read the label: a publication of the
/// United States' environment agency names ten for circulating basins. The label comes first.
pub const BASIN_WET_MIN: u32 = 10;

/// Where a typical rhythm is from.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum ChoreSource {
    /// Common practice, no source.
    CommonPractice,
    /// The dental guideline of the United States' disease agency, 2003: a spore test once a week.
    DentalGuideline,
    /// A dental trade paper on ultrasonic cleaners: the foil test once a month.
    FoilTest,
    /// The public health regulation of New South Wales, 2022: validation once in twelve months.
    NewSouthWales,
    /// No default: the manual says after how many runs.
    Manual,
}

/// A typical chore.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct TypicalChore {
    /// When it falls due.
    pub rule: ChoreRule,
    /// Where that is from.
    pub source: ChoreSource,
}

/// Word, part of the day, days, minutes, where it is from.
type Row = (&'static str, DayPart, Option<u32>, u32, ChoreSource);

use ChoreSource::{CommonPractice, DentalGuideline, FoilTest, Manual, NewSouthWales};
use DayPart::{AnyTime, Closing, Opening};

const SALON: [Row; 5] = [
    ("used bin", Closing, Some(1), 2, CommonPractice),
    ("last load", Closing, Some(1), 2, CommonPractice),
    ("stock count", AnyTime, Some(30), 5, CommonPractice),
    ("sharpness", AnyTime, Some(30), 10, CommonPractice),
    ("eyewash", AnyTime, Some(30), 2, CommonPractice),
];

const MACHINE: [Row; 9] = [
    ("water level", Opening, Some(1), 1, CommonPractice),
    ("door seal", Opening, Some(1), 2, CommonPractice),
    ("chamber", AnyTime, Some(7), 10, CommonPractice),
    ("tank", AnyTime, Some(7), 10, CommonPractice),
    (SPORE_TEST, AnyTime, Some(7), 2, DentalGuideline),
    ("bacteria filter", AnyTime, None, 5, Manual),
    ("dust filter", AnyTime, None, 5, Manual),
    ("door seal change", AnyTime, None, 5, Manual),
    ("validation", AnyTime, Some(365), 0, NewSouthWales),
];

const BATH: [Row; 3] = [
    ("bath fresh", Opening, Some(1), 4, CommonPractice),
    ("bath drained", Closing, Some(1), 3, CommonPractice),
    ("foil test", AnyTime, Some(30), 2, FoilTest),
];

/// What is typically done for the place as a whole.
#[must_use]
pub fn of_salon() -> Vec<TypicalChore> {
    listed(&SALON, About::Salon)
}

/// What is typically done for a machine.
#[must_use]
pub fn of_machine(machine: MachineId) -> Vec<TypicalChore> {
    listed(&MACHINE, About::Machine(machine))
}

/// What is typically done for an ultrasonic bath.
#[must_use]
pub fn of_bath(bath: ThingId) -> Vec<TypicalChore> {
    listed(&BATH, About::Thing(bath))
}

fn listed(rows: &[Row], about: About) -> Vec<TypicalChore> {
    let one = |&(word, part, days, minutes, source): &Row| {
        let chore: ChoreWord = word.parse().ok()?;
        let rule = ChoreRule {
            chore,
            about,
            part,
            days,
            runs: None,
            minutes,
            // A typical figure alone stops nothing.
            stops_work: false,
            manual_page: None,
        };
        Some(TypicalChore { rule, source })
    };
    rows.iter().filter_map(one).collect()
}

/// What is typically bought, as words to choose from.
pub const STOCK: [&str; 9] = [
    "pouches",
    "marks",
    "spore tests",
    "distilled water",
    "oil",
    "brushes",
    "gloves",
    "detergent",
    "disinfectant",
];

/// Every word of a typical chore.
#[must_use]
pub fn words() -> Vec<&'static str> {
    SALON.iter().chain(&MACHINE).chain(&BATH).map(|row| row.0).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn each_typical_word_is_a_word_and_none_stops_work() {
        let (machine, bath) = (MachineId::from_bytes([1; 16]), ThingId::from_bytes([2; 16]));
        let all: Vec<_> = [of_salon(), of_machine(machine), of_bath(bath)].concat();
        assert_eq!(all.len(), words().len());
        for chore in &all {
            assert!(!chore.rule.stops_work && chore.rule.manual_page.is_none(), "{chore:?}");
            // Who has no default says so, and nobody else.
            assert_eq!(chore.rule.days.is_none(), chore.source == Manual, "{chore:?}");
        }
        let filters: Vec<_> = all.iter().filter(|chore| chore.source == Manual).collect();
        let words = filters.iter().map(|chore| chore.rule.chore.word()).collect::<Vec<_>>();
        assert_eq!(words, ["bacteria filter", "dust filter", "door seal change"]);
        assert!(STOCK.iter().all(|word| word.parse::<load::StockWord>().is_ok()));
    }
}
