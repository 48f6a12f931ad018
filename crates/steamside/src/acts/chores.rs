//! Chores: how often, done, left out; and what is kept of things that are used up.

use super::Refusal;
use super::upkeep::{here, says};
use crate::intake::take::salon_zone;
use crate::upkeep::{Days, Kept};
use load::{ChoreWord, StockWord};
use logbook::book::{Draft, DrawerKind};
use logbook::fact::{About, ChoreRule, Found, LeftOut, Upkeep, UsedBy};
use logbook::typical::chores::SPORE_TEST;
use logbook::view::View;
use measure::Instant;

/// Most chores, and most kinds of stock, that a page can list.
const MOST: usize = 120;

fn find(
    view: &View<'_>,
    chore: &ChoreWord,
    about: About,
    now: Instant,
) -> Result<Option<Kept>, Refusal> {
    let days = Days::read(view, now, &salon_zone(view)?)?;
    let all = view.chores()?;
    let known = all.into_iter().find(|row| row.rule.chore == *chore && row.rule.about == about);
    Ok(known.map(|chore| days.kept(chore)))
}

fn known(view: &View<'_>, chore: &ChoreWord, about: About, now: Instant) -> Result<Kept, Refusal> {
    find(view, chore, about, now)?.ok_or_else(|| Refusal::rule("refused-no-such-chore"))
}

fn is_here(view: &View<'_>, about: About) -> Result<(), Refusal> {
    match about {
        About::Salon => Ok(()),
        About::Machine(machine) => match view.machine(machine)? {
            Some(_) => Ok(()),
            None => Err(Refusal::rule("refused-no-such-machine")),
        },
        About::Thing(thing) => here(view, thing).map(drop),
    }
}

/// When a chore falls due, said anew or for the first time. A chore that has stopped work is changed
/// only with the page of the manual that says so: nobody is to be talked round.
pub fn set_chore(
    view: &View<'_>,
    draft: &mut Draft,
    rule: ChoreRule,
    now: Instant,
) -> Result<(), Refusal> {
    is_here(view, rule.about)?;
    if rule.stops_work && !matches!(rule.about, About::Machine(_)) {
        return Err(Refusal::rule("refused-stops-machine"));
    }
    if rule.stops_work && rule.days.is_none() && rule.runs.is_none() {
        return Err(Refusal::rule("refused-stops-how-often"));
    }
    match find(view, &rule.chore, rule.about, now)? {
        Some(before) if before.stops && rule.manual_page.is_none() => {
            return Err(Refusal::rule_with("refused-chore-stopped", "chore", rule.chore));
        }
        None if view.chores()?.len() >= MOST => {
            return Err(Refusal::rule_with("refused-too-many", "most", MOST));
        }
        _ => {}
    }
    says(draft, Upkeep::ChoreSet(rule));
    Ok(())
}

/// A chore that is not done here. One that has stopped work is done first.
pub fn end_chore(
    view: &View<'_>,
    draft: &mut Draft,
    (chore, about): (ChoreWord, About),
    now: Instant,
) -> Result<(), Refusal> {
    if known(view, &chore, about, now)?.stops {
        return Err(Refusal::rule_with("refused-chore-stopped", "chore", chore));
    }
    says(draft, Upkeep::ChoreEnded { chore, about });
    Ok(())
}

/// Done. A spore test is placed, not signed for.
pub fn do_chore(
    view: &View<'_>,
    draft: &mut Draft,
    (chore, about): (ChoreWord, About),
    (found, note, now): (Found, Option<&str>, Instant),
) -> Result<(), Refusal> {
    known(view, &chore, about, now)?;
    if chore.word() == SPORE_TEST && matches!(about, About::Machine(_)) {
        return Err(Refusal::rule("refused-spore-placed"));
    }
    let note = note.map(|note| draft.put(DrawerKind::Note, note.as_bytes())).transpose()?;
    says(draft, Upkeep::ChoreDone { chore, about, found, note });
    Ok(())
}

/// Left out today. What stops work is not left out.
pub fn leave_chore(
    view: &View<'_>,
    draft: &mut Draft,
    (chore, about): (ChoreWord, About),
    (why, now): (LeftOut, Instant),
) -> Result<(), Refusal> {
    if known(view, &chore, about, now)?.chore.rule.stops_work {
        return Err(Refusal::rule_with("refused-chore-stops", "chore", chore));
    }
    says(draft, Upkeep::ChoreLeft { chore, about, why });
    Ok(())
}

/// What is kept of something that is used up.
pub fn set_stock(
    view: &View<'_>,
    draft: &mut Draft,
    item: StockWord,
    (used_by, least): (UsedBy, u32),
) -> Result<(), Refusal> {
    if view.stock()?.len() >= MOST {
        return Err(Refusal::rule_with("refused-too-many", "most", MOST));
    }
    says(draft, Upkeep::StockSet { item, used_by, least });
    Ok(())
}

fn is_kept(view: &View<'_>, item: &StockWord) -> Result<(), Refusal> {
    let known = view.stock()?.iter().any(|row| row.item == *item);
    if known { Ok(()) } else { Err(Refusal::rule("refused-no-such-stock")) }
}

/// It is not kept any more.
pub fn end_stock(view: &View<'_>, draft: &mut Draft, item: StockWord) -> Result<(), Refusal> {
    is_kept(view, &item)?;
    says(draft, Upkeep::StockEnded { item });
    Ok(())
}

/// So many are here.
pub fn count_stock(
    view: &View<'_>,
    draft: &mut Draft,
    item: StockWord,
    count: u32,
) -> Result<(), Refusal> {
    is_kept(view, &item)?;
    says(draft, Upkeep::StockCounted { item, count });
    Ok(())
}

/// So many came.
pub fn buy_stock(
    view: &View<'_>,
    draft: &mut Draft,
    item: StockWord,
    count: u32,
) -> Result<(), Refusal> {
    is_kept(view, &item)?;
    if count == 0 {
        return Err(Refusal::rule("refused-nothing-counted"));
    }
    says(draft, Upkeep::StockBought { item, count, lot: None });
    Ok(())
}
