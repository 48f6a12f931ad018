//! Counted: how many sets of a kind the salon owns, and where the loose ones lie.

use super::Refusal;
use load::SetKind;
use logbook::book::Draft;
use logbook::fact::Body;
use logbook::view::View;

/// More than any salon owns of one kind.
const MOST: u32 = 2_000;

/// A count made by a person.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Count {
    /// The kind.
    pub kind: SetKind,
    /// How many the salon owns, where that was counted.
    pub owned: Option<u32>,
    /// In the used bin, and washed, where that was counted.
    pub loose: Option<(u32, u32)>,
}

/// Writes a count as it was made.
pub fn count(_view: &View<'_>, draft: &mut Draft, count: Count) -> Result<(), Refusal> {
    let numbers = [count.owned, count.loose.map(|l| l.0), count.loose.map(|l| l.1)];
    if numbers.iter().all(Option::is_none) {
        return Err(Refusal::rule("refused-nothing-counted"));
    }
    if numbers.iter().flatten().any(|number| *number > MOST) {
        return Err(Refusal::rule_with("refused-too-many", "most", MOST));
    }
    if let Some(owned) = count.owned {
        draft.fact(Body::SetsOwned { kind: count.kind.clone(), count: owned });
    }
    if let Some((used, washed)) = count.loose {
        draft.fact(Body::Counted { kind: count.kind, used, washed });
    }
    Ok(())
}
