//! What goes in: implements, what a set is made of, pouches, trays, what a programme can do, and a
//! tray on the kitchen scale.

use super::Refusal;
use crate::loading::kinds::Kinds;
use load::chamber::NoRoom;
use load::implement::{Implement, NoImplement};
use load::pouch::PouchSize;
use load::{ImplementWord, PouchWord, SetKind};
use logbook::book::Draft;
use logbook::fact::{Body, Loading, ProgrammeFigures};
use logbook::view::View;
use measure::MachineId;

/// Most pieces of one implement in a set: more is a slip of the finger.
const MOST_PIECES: u32 = 60;
/// Most implements, and most sizes of pouches, that a page can list.
const MOST: usize = 120;

/// An implement as somebody describes it, new or anew.
pub fn set_implement(
    view: &View<'_>,
    draft: &mut Draft,
    implement: Implement,
) -> Result<(), Refusal> {
    if let Err(why) = implement.check() {
        return Err(Refusal::rule(match why {
            NoImplement::Measure => "refused-implement-measure",
            NoImplement::Mass => "refused-implement-mass",
            NoImplement::Heat => "refused-implement-heat",
        }));
    }
    let known = view.implements()?;
    let is_new = known.iter().all(|row| row.value.word != implement.word);
    if is_new && known.len() >= MOST {
        return Err(Refusal::rule_with("refused-too-many", "most", MOST));
    }
    draft.fact(Body::Loading(Box::new(Loading::ImplementSet(implement))));
    Ok(())
}

/// An implement that is no longer about. A set that is made of it keeps it from going.
pub fn end_implement(
    view: &View<'_>,
    draft: &mut Draft,
    word: ImplementWord,
) -> Result<(), Refusal> {
    if view.implement(&word)?.is_none() {
        return Err(Refusal::rule("refused-no-such-implement"));
    }
    for row in view.kinds()? {
        if view.set_of(&row.kind)?.value.iter().any(|(piece, _)| *piece == word) {
            return Err(Refusal::rule_with("refused-implement-in-set", "kind", row.kind));
        }
    }
    draft.fact(Body::Loading(Box::new(Loading::ImplementEnded { word })));
    Ok(())
}

/// What a set of a kind is made of; implements with none are left out.
pub fn set_of(
    view: &View<'_>,
    draft: &mut Draft,
    kind: SetKind,
    mut pieces: Vec<(ImplementWord, u32)>,
) -> Result<(), Refusal> {
    if view.kinds()?.iter().all(|row| row.kind != kind) {
        return Err(Refusal::rule_with("refused-field-misread", "field", "kind"));
    }
    pieces.retain(|(_, count)| *count > 0);
    if pieces.is_empty() {
        return Err(Refusal::rule("refused-nothing-counted"));
    }
    if pieces.iter().map(|(_, count)| u64::from(*count)).sum::<u64>() > u64::from(MOST_PIECES) {
        return Err(Refusal::rule_with("refused-too-many", "most", MOST_PIECES));
    }
    for (word, _) in &pieces {
        if view.implement(word)?.is_none() {
            return Err(Refusal::rule("refused-no-such-implement"));
        }
    }
    draft.fact(Body::Loading(Box::new(Loading::SetOf { kind, pieces })));
    Ok(())
}

/// A size of pouch that the salon keeps, new or measured anew.
pub fn set_pouch(view: &View<'_>, draft: &mut Draft, size: PouchSize) -> Result<(), Refusal> {
    if size.check().is_err() {
        return Err(Refusal::rule("refused-pouch-size"));
    }
    if view.pouch_sizes()?.len() >= MOST {
        return Err(Refusal::rule_with("refused-too-many", "most", MOST));
    }
    draft.fact(Body::Loading(Box::new(Loading::PouchSet(size))));
    Ok(())
}

/// A size of pouch that the salon no longer keeps; the last one stays.
pub fn end_pouch(view: &View<'_>, draft: &mut Draft, word: PouchWord) -> Result<(), Refusal> {
    let sizes = view.pouch_sizes()?;
    if sizes.iter().all(|row| row.value.word != word) || sizes.len() < 2 {
        return Err(Refusal::rule("refused-last-pouch-size"));
    }
    draft.fact(Body::Loading(Box::new(Loading::PouchEnded { word })));
    Ok(())
}

/// The room inside a machine.
pub fn set_inside(
    view: &View<'_>,
    draft: &mut Draft,
    machine: MachineId,
    inside: load::chamber::Inside,
) -> Result<(), Refusal> {
    if view.machine(machine)?.is_none() {
        return Err(Refusal::rule("refused-no-such-machine"));
    }
    if let Err(why) = inside.check() {
        return Err(Refusal::rule(match why {
            NoRoom::Measure => "refused-inside-measure",
            NoRoom::Trays => "refused-inside-trays",
            NoRoom::NoRack => "refused-inside-no-rack",
            NoRoom::DoesNotGoIn => "refused-inside-too-large",
        }));
    }
    draft.fact(Body::Loading(Box::new(Loading::InsideSet { machine, inside })));
    Ok(())
}

/// One full tray on a kitchen scale.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct WeighTray {
    /// All of it, grams.
    pub grams: u32,
    /// The tray alone, grams; 0 where the scale was set to zero with it.
    pub empty_g: u32,
    /// What lay on it; kinds with none are left out.
    pub sets: Vec<(SetKind, u32)>,
    /// In their pouches.
    pub pouched: bool,
}

/// A tray that weighs more than so many times what its sets typically weigh, or less than that part
/// of it, was weighed or counted wrongly (ours).
const ODD: u64 = 3;

/// Keeps what the scale said.
pub fn weigh_tray(view: &View<'_>, draft: &mut Draft, weighed: WeighTray) -> Result<(), Refusal> {
    let WeighTray { grams, empty_g, mut sets, pouched } = weighed;
    sets.retain(|(_, count)| *count > 0);
    if sets.is_empty() {
        return Err(Refusal::rule("refused-nothing-counted"));
    }
    if empty_g >= grams {
        return Err(Refusal::rule("refused-tray-lighter"));
    }
    let kinds = Kinds::read(view, &[])?;
    let mut typical_g = 0;
    for (kind, count) in &sets {
        let known = kinds.get(kind).filter(|known| !known.pieces.is_empty());
        let known =
            known.ok_or_else(|| Refusal::rule_with("refused-not-described", "kind", kind))?;
        let set_dg: u64 = known.going().map(|piece| u64::from(piece.mass_dg)).sum();
        typical_g += set_dg.div_ceil(10) * u64::from(*count);
    }
    let net_g = u64::from(grams - empty_g);
    if net_g > ODD * typical_g || net_g * ODD < typical_g {
        return Err(Refusal::rule_with("refused-weight-odd", "grams", typical_g));
    }
    let empty_g = Some(empty_g);
    draft.fact(Body::Loading(Box::new(Loading::TrayWeighed { grams, empty_g, sets, pouched })));
    Ok(())
}

/// What the machine's manual says of a programme.
pub fn set_programme(
    view: &View<'_>,
    draft: &mut Draft,
    figures: ProgrammeFigures,
) -> Result<(), Refusal> {
    let known = view.machine_figures(figures.machine)?.value.cycles;
    if view.machine(figures.machine)?.is_none()
        || known.iter().all(|cycle| cycle.programme != figures.programme)
    {
        return Err(Refusal::rule("refused-no-programme"));
    }
    // What no balance of heat and water can be worked out for would be learnt from by nobody.
    for (field, fits) in
        [("set", (105..=140).contains(&figures.set_c)), ("dry-min", figures.drying_min <= 240)]
    {
        if !fits {
            return Err(Refusal::rule_with("refused-field-misread", "field", field));
        }
    }
    draft.fact(Body::Loading(Box::new(Loading::ProgrammeSet(figures))));
    Ok(())
}
