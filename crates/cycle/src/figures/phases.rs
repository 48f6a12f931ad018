//! Names and borders of the phases.

use super::Phase;
use super::drying::After;
use super::heat::{Marks, Pulse};
use super::view::{Stretch, View};

/// Puts one phase after the other.
struct Row<'a, 'b> {
    view: &'a View<'b>,
    phases: Vec<Phase>,
    at: usize,
}

impl Row<'_, '_> {
    /// The phase that ends at this sample and begins where the last one ended.
    fn to(&mut self, name: &str, end: usize) {
        if end <= self.at {
            return;
        }
        self.phases.push(Phase {
            name: name.to_owned(),
            start_s: self.view.t[self.at],
            end_s: self.view.t[end],
        });
        self.at = end;
    }
}

/// Phases of a run with pressure. `held` says whether the set temperature was reached.
pub(super) fn of_run(view: &View, marks: &Marks, after: Option<After>, held: bool) -> Vec<Phase> {
    let last = view.len() - 1;
    let mut row = Row { view, phases: Vec::new(), at: 0 };
    if let Some(purge) = marks.purge {
        row.to("preheat", purge);
    }
    let (mut vacuums, mut steams, mut releases) = (0, 0, 0);
    for pulse in &marks.pulses {
        let waiting = if marks.purge.is_some() { "purge" } else { "preheat" };
        let (Pulse::Vacuum(stretch, _) | Pulse::Steam(stretch) | Pulse::Release(stretch)) = *pulse;
        row.to(if vacuums + steams + releases == 0 { waiting } else { "unknown" }, stretch.first);
        match pulse {
            Pulse::Vacuum(..) => {
                vacuums += 1;
                row.to(&format!("vacuum {vacuums}"), stretch.last);
            }
            Pulse::Steam(_) => {
                steams += 1;
                row.to(&format!("steam {steams}"), stretch.last);
            }
            Pulse::Release(_) => {
                releases += 1;
                row.to(&format!("release {releases}"), stretch.last);
            }
        }
    }
    let waiting = if marks.purge.is_some() { "purge" } else { "preheat" };
    row.to(if marks.pulses.is_empty() { waiting } else { "unknown" }, marks.climb);
    row.to("heat-up", marks.top);
    let exhaust = marks.exhaust.unwrap_or(last);
    row.to(if held { "plateau" } else { "heat-up" }, exhaust);
    row.to("exhaust", marks.emptied.unwrap_or(last));
    if let Some(after) = after {
        row.to("drying", after.drying.map_or(0, |(_, to)| to));
        row.to("air-in", after.air_in.map_or(0, |(_, to)| to));
        row.to("ambient", last);
    }
    row.phases
}

/// Without pressure only the plateau shows.
pub(super) fn by_temperature(view: &View, run: Option<Stretch>) -> Vec<Phase> {
    let Some(last) = view.len().checked_sub(1) else {
        return Vec::new();
    };
    let mut row = Row { view, phases: Vec::new(), at: 0 };
    if let Some(run) = run {
        row.to("unknown", run.first);
        row.to("plateau", run.last);
    }
    row.to("unknown", last);
    row.phases
}
