//! What goes on the trays and comes out dry, as a plan counts it: a share of the trays for each
//! set, and grams for each programme. The same limits as on the pages of the load.

use super::today::Today;
use crate::loading::kinds::Kinds;
use crate::loading::load::Load;
use crate::loading::propose::{self, Programme};
use crate::loading::trays::{Item, lay, most_of};
use day::plan::Plan;
use load::SetKind;
use load::chamber::Inside;
use logbook::book::BookError;
use logbook::view::{Machine, View};

/// All trays of the first machine, in the unit in which a plan counts room.
const WHOLE: u32 = 10_000;
/// More sets than this of one kind are not counted out for a machine (ours).
const MOST_SETS: u32 = 24;
/// So many sets of a kind that nobody described go in (common practice, no source).
const USUAL_SETS: u32 = 8;
/// A mix that does not go on the trays takes this much of the room away, hundredths (ours).
const TIGHTER: u32 = 8;

/// Trays of each machine, and what goes on them.
#[derive(Debug, Clone)]
pub struct Room {
    words: Vec<SetKind>,
    loading: Kinds,
    insides: Vec<Inside>,
    areas: Vec<u32>,
    holds: Vec<Vec<u32>>,
}

impl Room {
    /// Counts out how many sets of each kind go into each machine.
    pub fn read(
        view: &View<'_>,
        words: &[SetKind],
        machines: &[Machine],
    ) -> Result<Self, BookError> {
        let loading = Kinds::read(view, words)?;
        let mut insides = Vec::new();
        for machine in machines {
            insides.push(view.inside(machine.machine)?.value);
        }
        let holds: Vec<Vec<u32>> = (insides.iter())
            .map(|inside| {
                words.iter().map(|kind| most_of(kind, &loading, inside, MOST_SETS)).collect()
            })
            .collect();
        let first = |kind: usize| holds.first().and_then(|holds| holds.get(kind)).copied();
        let known = |kind: usize| loading.get(&words[kind]).is_some_and(|k| !k.bags.is_empty());
        let areas = (0..words.len())
            .map(|kind| match first(kind) {
                _ if !known(kind) => WHOLE / USUAL_SETS,
                Some(0) | None => WHOLE,
                Some(most) => WHOLE.div_ceil(most),
            })
            .collect();
        Ok(Self { words: words.to_vec(), loading, insides, areas, holds })
    }

    /// The share of the trays that one set of a kind takes.
    pub fn area(&self, kind: usize) -> u32 {
        self.areas.get(kind).copied().unwrap_or(WHOLE)
    }

    /// Mass of one set in its pouch, grams.
    pub fn mass_g(&self, kind: usize) -> Option<u32> {
        let known = self.loading.get(self.words.get(kind)?)?;
        let pouch_g = known.pouch_g().ceil() as u32;
        (known.set_g > 0).then_some(known.set_g + pouch_g)
    }

    /// The room of a machine, in the same unit: no kind alone is let in oftener than it goes in.
    pub fn most_area(&self, machine: usize) -> u32 {
        let Some(holds) = self.holds.get(machine) else { return WHOLE };
        let rooms = holds.iter().zip(&self.areas).filter(|(most, _)| **most > 0);
        rooms.map(|(most, area)| most * area).min().unwrap_or(0)
    }

    /// What each programme of a machine takes, in the machine's order of programmes.
    pub fn takes(&self, view: &View<'_>, machine: &Machine) -> Result<Vec<Takes>, BookError> {
        let inside = view.inside(machine.machine)?.value;
        // The salon's own mix stands in for loads that nobody has made yet.
        let each: Vec<_> = self.words.iter().map(|kind| (kind.clone(), 1, true)).collect();
        let load = Load::of_counts(&each, &self.loading);
        let programmes = propose::programmes(view, machine.machine, &inside, &load)?;
        let takes = |programme: &Programme| Takes {
            most_g: programme.most_g(),
            pouches: programme.takes_pouches(machine),
        };
        Ok(programmes.iter().map(takes).collect())
    }
}

/// What a programme takes.
#[derive(Debug, Clone, Copy)]
pub struct Takes {
    /// Grams; `None`: nothing but a typical figure is known.
    pub most_g: Option<u32>,
    /// Sets in pouches: it dries, and gets the air out as they ask.
    pub pouches: bool,
}

/// Takes room away from every machine into which the plan puts a mix that does not go on its
/// trays. `false`: all of them go.
pub fn tighten(today: &mut Today, plan: &Plan) -> bool {
    let mut too_full = Vec::new();
    for run in &plan.runs {
        let machine = &today.problem.machines[run.machine];
        if !machine.cycles[run.cycle].wrapped {
            continue;
        }
        let items: Vec<Item> = (run.load.iter().zip(&today.room.words))
            .flat_map(|(count, kind)| {
                let item = Item { kind: kind.clone(), pouched: true, code: None };
                std::iter::repeat_n(item, *count as usize)
            })
            .collect();
        let Some(inside) = today.room.insides.get(run.machine) else { continue };
        if !lay(&items, &today.room.loading, inside, None).packing.left.is_empty() {
            let used: u32 = run.load.iter().zip(&today.room.areas).map(|(n, area)| n * area).sum();
            too_full.push((run.machine, used));
        }
    }
    for (machine, used) in &too_full {
        for cycle in &mut today.problem.machines[*machine].cycles {
            let tighter = cycle.max_area - cycle.max_area * TIGHTER / 100;
            cycle.max_area = tighter.min(used.saturating_sub(1));
        }
    }
    !too_full.is_empty()
}
