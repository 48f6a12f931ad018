//! Services, and the figures of kinds and machines that a plan needs.

use super::Refusal;
use crate::chance;
use load::{ServiceWord, SetKind};
use logbook::book::Draft;
use logbook::fact::{Body, Day, DayRules, KindFigures, MachineFigures, Service};
use logbook::view::View;
use measure::ServiceId;

/// Most sets of one kind that a service needs: more is a slip of the finger.
const MOST_SETS: u32 = 20;
/// Most services that a page can show as buttons.
const MOST_SERVICES: usize = 60;

/// A service as somebody describes it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct SetService {
    /// Which one is described anew; `None`: a new one.
    pub service: Option<ServiceId>,
    /// What it is called.
    pub word: ServiceWord,
    /// How long it takes, minutes.
    pub minutes: u32,
    /// What one missing set of it counts.
    pub weight: u32,
    /// Cleaning a foot basin afterwards, minutes; 0: no basin.
    pub basin_min: u32,
    /// How many sets of which kind; kinds with none are left out.
    pub needs: Vec<(SetKind, u32)>,
}

/// Describes a service.
pub fn set_service(view: &View<'_>, draft: &mut Draft, set: SetService) -> Result<(), Refusal> {
    let services = view.services()?;
    let other =
        |service: &Service| service.word == set.word && Some(service.service) != set.service;
    if services.iter().any(other) {
        return Err(Refusal::rule_with("refused-service-taken", "word", &set.word));
    }
    if set.service.is_none() && services.len() >= MOST_SERVICES {
        return Err(Refusal::rule_with("refused-too-many", "most", MOST_SERVICES));
    }
    let known = view.kinds()?;
    let needs: Vec<_> = set.needs.into_iter().filter(|(_, count)| *count > 0).collect();
    for (kind, count) in &needs {
        if known.iter().all(|row| row.kind != *kind) || *count > MOST_SETS {
            return Err(Refusal::rule_with("refused-too-many", "most", MOST_SETS));
        }
    }
    if set.minutes == 0 || set.weight == 0 {
        return Err(Refusal::rule_with("refused-field-misread", "field", "length"));
    }
    let service = match set.service {
        Some(service) => service,
        None => chance::id()?,
    };
    let (word, minutes, weight, basin_min) = (set.word, set.minutes, set.weight, set.basin_min);
    let service = Service { service, word, minutes, weight, basin_min, needs };
    draft.fact(Body::Day(Day::ServiceSet(service)));
    Ok(())
}

/// A service is no longer offered.
pub fn end_service(view: &View<'_>, draft: &mut Draft, service: ServiceId) -> Result<(), Refusal> {
    if view.services()?.iter().all(|row| row.service != service) {
        return Err(Refusal::rule("refused-no-such-service"));
    }
    draft.fact(Body::Day(Day::ServiceEnded { service }));
    Ok(())
}

/// The salon's own figures of a kind.
pub fn set_kind_figures(
    view: &View<'_>,
    draft: &mut Draft,
    figures: KindFigures,
) -> Result<(), Refusal> {
    if view.kinds()?.iter().all(|row| row.kind != figures.kind) {
        return Err(Refusal::rule_with("refused-field-misread", "field", "kind"));
    }
    draft.fact(Body::Day(Day::KindFigures(figures)));
    Ok(())
}

/// The salon's own figures of a machine.
pub fn set_machine_figures(
    view: &View<'_>,
    draft: &mut Draft,
    figures: MachineFigures,
) -> Result<(), Refusal> {
    if view.machine(figures.machine)?.is_none() {
        return Err(Refusal::rule("refused-no-such-machine"));
    }
    if figures.cycles.is_empty() {
        return Err(Refusal::rule("refused-no-programme"));
    }
    draft.fact(Body::Day(Day::MachineFigures(figures)));
    Ok(())
}

/// What holds for every plan.
pub fn set_rules(draft: &mut Draft, rules: DayRules) {
    draft.fact(Body::Day(Day::Rules(rules)));
}
