//! Posted forms about upkeep.

use super::Fields;
use crate::acts::{self, Refusal};
use crate::pace;
use logbook::book::Draft;
use logbook::fact::{About, BasinAfter, ChoreRule, DayPart, Found, LeftOut, ThingKind, UsedBy};
use logbook::view::View;

/// What happened, and who says so.
const SIGNED: [&str; 6] =
    ["chore-done", "jar-mixed", "jar-in", "jar-emptied", "basin-wet", "basin-drained"];
/// One tap, without a sign.
const TAPPED: [&str; 4] = ["chore-left", "not-used", "stock-counted", "stock-bought"];
/// Settings.
const SET: [&str; 8] = [
    "thing",
    "thing-ended",
    "jar-set",
    "basin-set",
    "chore-set",
    "chore-ended",
    "stock-set",
    "stock-ended",
];

/// Is it an act of this file?
pub fn knows(name: &str) -> bool {
    SIGNED.contains(&name) || TAPPED.contains(&name) || SET.contains(&name)
}

/// Does it ask for a sign?
pub fn is_signed(name: &str) -> bool {
    SIGNED.contains(&name)
}

/// Does the act set something, rather than say what happened?
pub fn is_setting(name: &str) -> bool {
    SET.contains(&name)
}

/// Decides an act of this file.
pub fn decide(
    name: &str,
    view: &View<'_>,
    draft: &mut Draft,
    fields: &Fields,
) -> Result<(), Refusal> {
    let now = pace::now(view)?;
    match name {
        "thing" => acts::add_thing(view, draft, thing_kind(fields)?),
        "thing-ended" => acts::end_thing(view, draft, fields.need("thing")?),
        "jar-set" => acts::set_jar(
            view,
            draft,
            acts::SetJar {
                jar: fields.need("jar")?,
                contact_min: fields.need("contact")?,
                lasts_h: fields.maybe("lasts")?,
                label: fields.one("label").unwrap_or_default().to_owned(),
            },
        ),
        "jar-mixed" => acts::mix_jar(view, draft, fields.need("jar")?),
        "jar-in" => acts::into_jar(view, draft, fields.need("jar")?, now),
        "jar-emptied" => acts::empty_jar(view, draft, fields.need("jar")?),
        "basin-set" => acts::set_basin(view, draft, fields.need("basin")?, fields.need("wet")?),
        "basin-wet" => acts::wet_basin(view, draft, fields.need("basin")?, after(fields)?),
        "basin-drained" => acts::drain_basin(view, draft, fields.need("basin")?, now),
        "not-used" => acts::not_used(view, draft, fields.need("thing")?, now),
        _ => decide_chore(name, view, draft, fields),
    }
}

fn decide_chore(
    name: &str,
    view: &View<'_>,
    draft: &mut Draft,
    fields: &Fields,
) -> Result<(), Refusal> {
    let now = pace::now(view)?;
    let which = || Ok::<_, Refusal>((fields.need("chore")?, about(fields)?));
    match name {
        "chore-set" => acts::set_chore(view, draft, rule(fields)?, now),
        "chore-ended" => acts::end_chore(view, draft, which()?, now),
        "chore-done" => {
            let found = if fields.yes("not-fine") { Found::NotFine } else { Found::Fine };
            acts::do_chore(view, draft, which()?, (found, fields.one("note"), now))
        }
        "chore-left" => {
            let why = match fields.one("why") {
                Some("closed") => LeftOut::Closed,
                _ => LeftOut::NotUsed,
            };
            acts::leave_chore(view, draft, which()?, (why, now))
        }
        "stock-set" => {
            let keeps = (used_by(fields)?, fields.need("least")?);
            acts::set_stock(view, draft, fields.need("item")?, keeps)
        }
        "stock-ended" => acts::end_stock(view, draft, fields.need("item")?),
        "stock-counted" => {
            acts::count_stock(view, draft, fields.need("item")?, fields.need("count")?)
        }
        "stock-bought" => acts::buy_stock(view, draft, fields.need("item")?, fields.need("count")?),
        _ => Err(Refusal::rule("refused-no-such-act")),
    }
}

fn misread(field: &str) -> Refusal {
    Refusal::rule_with("refused-field-misread", "field", field)
}

fn thing_kind(fields: &Fields) -> Result<ThingKind, Refusal> {
    match fields.one("what") {
        Some("jar") => Ok(ThingKind::Jar),
        Some("basin") => Ok(ThingKind::FootBasin),
        Some("bath") => Ok(ThingKind::Ultrasonic),
        _ => Err(misread("what")),
    }
}

fn after(fields: &Fields) -> Result<BasinAfter, Refusal> {
    match fields.one("after") {
        Some("client") => Ok(BasinAfter::Client),
        Some("day") => Ok(BasinAfter::DayEnd),
        Some("week") => Ok(BasinAfter::Week),
        _ => Err(misread("after")),
    }
}

fn used_by(fields: &Fields) -> Result<UsedBy, Refusal> {
    match fields.one("used-by") {
        Some("pouch") => Ok(UsedBy::Pouch),
        Some("run") => Ok(UsedBy::Run),
        Some("test") => Ok(UsedBy::Test),
        Some("counting") => Ok(UsedBy::Counting),
        _ => Err(misread("used-by")),
    }
}

/// `salon`, `machine.ID` or `thing.ID`.
pub fn about_of(text: &str) -> Option<About> {
    match text.split_once('.') {
        None if text == "salon" => Some(About::Salon),
        Some(("machine", id)) => id.parse().ok().map(About::Machine),
        Some(("thing", id)) => id.parse().ok().map(About::Thing),
        _ => None,
    }
}

fn about(fields: &Fields) -> Result<About, Refusal> {
    fields.one("about").and_then(about_of).ok_or_else(|| misread("about"))
}

fn rule(fields: &Fields) -> Result<ChoreRule, Refusal> {
    Ok(ChoreRule {
        chore: fields.need("chore")?,
        about: about(fields)?,
        part: match fields.one("part") {
            Some("opening") => DayPart::Opening,
            Some("closing") => DayPart::Closing,
            _ => DayPart::AnyTime,
        },
        days: fields.maybe("days")?,
        runs: fields.maybe("runs")?,
        minutes: fields.maybe("takes")?.unwrap_or(0),
        stops_work: fields.yes("stops"),
        manual_page: fields.maybe("page")?,
    })
}
