//! Upkeep: things that are here, jars, foot basins.

use super::Refusal;
use crate::intake::take::salon_zone;
use crate::upkeep::{BasinStep, Days, Mix};
use crate::{chance, clock};
use logbook::book::{Draft, DrawerKind};
use logbook::fact::{BasinAfter, Body, ThingKind, Upkeep};
use logbook::view::{Thing, View};
use measure::{Instant, ThingId};

/// Most things of one kind: more is a slip of the finger.
const MOST: usize = 60;
/// Longest text of a label, in characters: name, number, strength.
const LONGEST_LABEL: usize = 120;

/// Writes what was said.
pub(super) fn says(draft: &mut Draft, said: Upkeep) {
    draft.fact(Body::Upkeep(Box::new(said)));
}

/// The thing, where it is here.
pub(super) fn here(view: &View<'_>, thing: ThingId) -> Result<Thing, Refusal> {
    let known = view.things()?.into_iter().find(|known| known.thing == thing);
    known.ok_or_else(|| Refusal::rule("refused-no-such-thing"))
}

fn of_kind(view: &View<'_>, thing: ThingId, what: ThingKind) -> Result<Thing, Refusal> {
    let known = here(view, thing)?;
    if known.what == what { Ok(known) } else { Err(Refusal::rule("refused-no-such-thing")) }
}

/// A jar, a foot basin or a bath is here; it takes the next free number.
pub fn add_thing(view: &View<'_>, draft: &mut Draft, what: ThingKind) -> Result<(), Refusal> {
    let things = view.things()?;
    let of_kind = things.iter().filter(|thing| thing.what == what);
    let taken: Vec<u32> = of_kind.map(|thing| thing.number).collect();
    if taken.len() >= MOST {
        return Err(Refusal::rule_with("refused-too-many", "most", MOST));
    }
    let number = (1..).find(|number| !taken.contains(number)).unwrap_or(1);
    says(draft, Upkeep::ThingAdded { thing: chance::id()?, what, number });
    Ok(())
}

/// A thing that is here no longer.
pub fn end_thing(view: &View<'_>, draft: &mut Draft, thing: ThingId) -> Result<(), Refusal> {
    here(view, thing)?;
    says(draft, Upkeep::ThingEnded { thing });
    Ok(())
}

/// What the label in a jar asks, as somebody read it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct SetJar {
    /// The jar.
    pub jar: ThingId,
    /// Minutes fully under.
    pub contact_min: u32,
    /// Hours that a mix lasts; `None`: to the end of the day.
    pub lasts_h: Option<u32>,
    /// Name, number and strength; may be empty.
    pub label: String,
}

/// Writes what the label asks.
pub fn set_jar(view: &View<'_>, draft: &mut Draft, set: SetJar) -> Result<(), Refusal> {
    of_kind(view, set.jar, ThingKind::Jar)?;
    let text = set.label.trim();
    if text.chars().count() > LONGEST_LABEL {
        return Err(Refusal::rule_with("refused-field-misread", "field", "label"));
    }
    let label = match text {
        "" => None,
        text => Some(draft.put(DrawerKind::Note, text.as_bytes())?),
    };
    let SetJar { jar, contact_min, lasts_h, .. } = set;
    says(draft, Upkeep::JarSet { jar, contact_min, lasts_h, label });
    Ok(())
}

/// Emptied, rinsed and mixed anew.
pub fn mix_jar(view: &View<'_>, draft: &mut Draft, jar: ThingId) -> Result<(), Refusal> {
    of_kind(view, jar, ThingKind::Jar)?;
    says(draft, Upkeep::JarMixed { jar });
    Ok(())
}

/// Something went in: the time under counts from now. Nothing goes into an empty jar or into a mix
/// that is past its time.
pub fn into_jar(
    view: &View<'_>,
    draft: &mut Draft,
    jar: ThingId,
    now: Instant,
) -> Result<(), Refusal> {
    let thing = of_kind(view, jar, ThingKind::Jar)?;
    let days = Days::read(view, now, &salon_zone(view)?)?;
    match days.jar(view.jar(thing)?).mix {
        Mix::Empty => Err(Refusal::rule_with("refused-jar-empty", "number", thing.number)),
        Mix::Past(_) => Err(Refusal::rule_with("refused-jar-past", "number", thing.number)),
        Mix::Good(_) | Mix::NotKnown => {
            says(draft, Upkeep::JarIn { jar });
            Ok(())
        }
    }
}

/// Emptied and rinsed.
pub fn empty_jar(view: &View<'_>, draft: &mut Draft, jar: ThingId) -> Result<(), Refusal> {
    let thing = of_kind(view, jar, ThingKind::Jar)?;
    if view.jar(thing)?.mixed.is_none() {
        return Err(Refusal::rule_with("refused-jar-empty", "number", thing.number));
    }
    says(draft, Upkeep::JarEmptied { jar });
    Ok(())
}

/// For how long a foot basin stays wet, by the label.
pub fn set_basin(
    view: &View<'_>,
    draft: &mut Draft,
    basin: ThingId,
    wet_min: u32,
) -> Result<(), Refusal> {
    of_kind(view, basin, ThingKind::FootBasin)?;
    says(draft, Upkeep::BasinSet { basin, wet_min });
    Ok(())
}

/// Drained, cleaned, rinsed and full of disinfectant: the wet time begins, also anew.
pub fn wet_basin(
    view: &View<'_>,
    draft: &mut Draft,
    basin: ThingId,
    after: BasinAfter,
) -> Result<(), Refusal> {
    of_kind(view, basin, ThingKind::FootBasin)?;
    says(draft, Upkeep::BasinWet { basin, after });
    Ok(())
}

/// Drained and dry. Not before the minutes on the label are over.
pub fn drain_basin(
    view: &View<'_>,
    draft: &mut Draft,
    basin: ThingId,
    now: Instant,
) -> Result<(), Refusal> {
    let thing = of_kind(view, basin, ThingKind::FootBasin)?;
    let zone = salon_zone(view)?;
    let seen = Days::read(view, now, &zone)?.basin(view.basin(thing)?);
    match seen.step {
        BasinStep::Dry => Err(Refusal::rule_with("refused-basin-dry", "number", thing.number)),
        BasinStep::Wet(until) => {
            let until = clock::civil(until, &zone);
            let until = format!("{:02}:{:02}", until.hour(), until.minute());
            let args = vec![("number", thing.number.to_string()), ("until", until)];
            Err(Refusal::Rule(super::refusal::Rule { key: "refused-basin-wet", args }))
        }
        BasinStep::Drain(_) => {
            says(draft, Upkeep::BasinDrained { basin });
            Ok(())
        }
    }
}

/// Not used today. A basin that was cleaned after a client today was used.
pub fn not_used(
    view: &View<'_>,
    draft: &mut Draft,
    thing: ThingId,
    now: Instant,
) -> Result<(), Refusal> {
    let known = here(view, thing)?;
    if known.what == ThingKind::FootBasin {
        let dawn = clock::day_start(now, &salon_zone(view)?);
        let wet = view.basin(known)?.wet;
        if wet.is_some_and(|(stamp, _)| stamp.happened >= dawn) {
            return Err(Refusal::rule_with("refused-basin-used", "number", known.number));
        }
    }
    says(draft, Upkeep::NotUsed { thing });
    Ok(())
}
