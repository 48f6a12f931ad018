//! Posted forms about the counter: handing over, corrections, gaps, what people are and read.

use super::Fields;
use crate::acts::{self, Refusal};
use crate::app::App;
use crate::pace;
use crate::words::Language;
use load::SetKind;
use logbook::book::Draft;
use logbook::fact::{GapWhy, Known, Units};
use logbook::view::{Roles, View};
use measure::{ActId, Instant, PouchId};

/// The reasons that a gap may have, each with its word in a form and the key of its line.
pub const REASONS: [(GapWhy, &str, &str); 6] = [
    (GapWhy::Closed, "closed", "gap-closed"),
    (GapWhy::Holiday, "holiday", "gap-holiday"),
    (GapWhy::Power, "power", "gap-power"),
    (GapWhy::NothingToDo, "nothing", "gap-nothing"),
    (GapWhy::OnPaper, "paper", "gap-paper"),
    (GapWhy::Forgotten, "forgotten", "gap-forgotten"),
];

/// Is it an act of this file?
pub fn knows(name: &str) -> bool {
    matches!(name, "hand-over" | "take-over" | "correct" | "gap" | "person-is" | "record-shows")
}

/// Does it ask for a sign? A reason for a gap and a setting do not.
pub fn needs_sign(name: &str) -> bool {
    matches!(name, "hand-over" | "take-over" | "correct")
}

/// How an act of this file is known.
pub fn known(name: &str) -> Known {
    match name {
        "person-is" | "record-shows" => Known::Setting,
        _ => Known::Tapped,
    }
}

/// A correction happened when the entry did that it corrects.
pub fn happened(app: &App, name: &str, fields: &Fields) -> Result<Option<Instant>, Refusal> {
    if name != "correct" {
        return Ok(None);
    }
    let old: ActId = fields.need("old")?;
    let facts = app.read(|view| view.facts_of_act(old))?;
    Ok(facts.first().map(|fact| fact.stamp.happened))
}

/// Decides an act of this file.
pub fn decide(
    name: &str,
    view: &View<'_>,
    draft: &mut Draft,
    fields: &Fields,
) -> Result<(), Refusal> {
    match name {
        "hand-over" => acts::hand_over(
            view,
            draft,
            acts::HandOver {
                to: fields.maybe("to")?,
                drying: fields.maybe("drying")?.unwrap_or(0),
                note: fields.one("note").map(str::to_owned),
            },
        ),
        "take-over" => acts::take_over(view, draft, fields.need("given")?),
        "correct" => {
            let old: ActId = fields.need("old")?;
            acts::correct(view, draft, old, truth(view, old, fields)?)
        }
        "gap" => {
            let moment = |name| Ok::<_, Refusal>(Instant::from_millis(fields.need(name)?));
            let word: String = fields.need("why")?;
            let why = REASONS.iter().find(|(_, known, _)| *known == word).map(|(why, ..)| *why);
            let why = why.ok_or_else(|| misread("why"))?;
            acts::explain(draft, (moment("from")?, moment("to")?), why, pace::now(view)?)
        }
        "person-is" => acts::person_is(
            view,
            draft,
            acts::PersonIs {
                person: fields.need("person")?,
                language: language(fields)?,
                roles: Roles {
                    learns: fields.yes("learns"),
                    in_charge: fields.yes("in-charge"),
                    teaches: fields.yes("teaches"),
                },
            },
        ),
        "record-shows" => {
            let units = match fields.one("units") {
                Some("metric") => Units::Metric,
                Some("us") => Units::Us,
                _ => return Err(misread("units")),
            };
            let language = language(fields)?.ok_or_else(|| misread("language"))?;
            acts::record_shows(view, draft, language, units)
        }
        _ => Err(Refusal::rule("refused-no-such-act")),
    }
}

fn misread(field: &str) -> Refusal {
    Refusal::rule_with("refused-field-misread", "field", field)
}

fn language(fields: &Fields) -> Result<Option<Language>, Refusal> {
    let said = fields.one("language");
    said.map(|code| Language::from_code(code).ok_or_else(|| misread("language"))).transpose()
}

/// How it was in truth, as the form of the old entry says it.
fn truth(view: &View<'_>, old: ActId, fields: &Fields) -> Result<acts::InTruth, Refusal> {
    use acts::{Correctable, InTruth};
    let facts = view.facts_of_act(old)?;
    let was = acts::correctable(&facts).ok_or_else(|| Refusal::rule("refused-not-correctable"))?;
    Ok(match was {
        Correctable::Washed(_) => InTruth::Washed(fields.counted::<SetKind>("count.")?),
        Correctable::Counted(_) => InTruth::Counted(acts::Count {
            kind: fields.need("kind")?,
            owned: fields.maybe("owned")?,
            loose: fields.maybe("used")?.zip(fields.maybe("washed")?),
        }),
        Correctable::Opened(..) => InTruth::Chair(fields.maybe("chair")?),
        Correctable::Started(run) => {
            let inside: Vec<PouchId> = fields.many("in")?;
            let before: Vec<PouchId> =
                view.pouches_of_run(run)?.into_iter().map(|held| held.pouch).collect();
            let not = |these: &[PouchId], those: &[PouchId]| -> Vec<PouchId> {
                these.iter().filter(|pouch| !those.contains(pouch)).copied().collect()
            };
            InTruth::Inside(not(&before, &inside), not(&inside, &before))
        }
        Correctable::Weighed(tray) => InTruth::Weighed(acts::WeighTray {
            grams: fields.need("grams")?,
            empty_g: fields.need("empty")?,
            ..tray
        }),
    })
}
