//! Forms about what a person saw: numbers on a display, marks, dry and whole.

use super::{Fields, chair_posts};
use crate::acts::{self, Refusal};
use crate::intake::{judge, known};
use crate::pace;
use logbook::view::View;
use measure::{Celsius, RunId};

/// Numbers that somebody read off a display.
pub fn read_off(view: &View<'_>, fields: &Fields) -> Result<acts::ReadOff, Refusal> {
    let run: RunId = fields.need("run")?;
    let machine = view.run(run)?.map(|run| run.machine);
    let altitude_m = known::of_machine(&view.machines()?, machine).altitude_m;
    let lowest: f64 = fields.need("lowest")?;
    let lowest = match fields.one("degrees") {
        Some("F") => (lowest - 32.0) / 1.8,
        _ => lowest,
    };
    let minutes: f64 = fields.need("minutes")?;
    let seconds: f64 = fields.maybe("seconds")?.unwrap_or(0.0);
    let pressure = fields
        .maybe("pressure")?
        .map(|value| judge::absolute(value, &fields.need::<String>("unit")?, altitude_m))
        .transpose()?;
    let lowest = Celsius::new(lowest)
        .map_err(|_| Refusal::rule_with("refused-field-misread", "field", "lowest"))?;
    Ok(acts::ReadOff { run, lowest, held_s: minutes * 60.0 + seconds, pressure })
}

/// What somebody saw of a load.
pub fn look(view: &View<'_>, fields: &Fields) -> Result<acts::Look, Refusal> {
    let all_good = |name: &'static str| fields.all(name).any(|answer| answer == "all");
    let named = |name: &'static str| fields.all(name).next().is_some();
    let good_and_bad = (all_good("marks") && named("mark"))
        || (all_good("dry") && ["wet", "torn", "dropped"].into_iter().any(named));
    let twice = ["marks", "dry", "inner"].into_iter().any(|name| fields.all(name).count() > 1);
    if good_and_bad || twice {
        return Err(Refusal::rule("refused-two-answers"));
    }
    let marks_not_turned = match fields.one("marks") {
        Some("all") => Some(Vec::new()),
        Some("not") => Some(fields.many("mark")?),
        _ => None,
    };
    // "One not" without saying which would count as none; ask instead.
    if fields.one("marks") == Some("not") && marks_not_turned.as_ref().is_some_and(Vec::is_empty) {
        return Err(Refusal::rule("refused-which-mark"));
    }
    let which = [fields.many("wet")?, fields.many("torn")?, fields.many("dropped")?];
    let dry_whole = match fields.one("dry") {
        Some("all") => Some(Default::default()),
        Some("not") if which.iter().all(Vec::is_empty) => {
            return Err(Refusal::rule("refused-which-wet"));
        }
        Some("not") => Some(which),
        _ => None,
    };
    let inner_mark = match fields.one("inner") {
        Some("yes") => Some(true),
        Some("no") => Some(false),
        _ => None,
    };
    let run = fields.need("run")?;
    let now = pace::now(view)?;
    let at = chair_posts::happened("look", fields, now)?;
    Ok(acts::Look {
        run,
        marks_not_turned,
        inner_mark,
        dry_whole,
        count: fields.maybe("counted")?,
        by: fields.maybe("sign")?,
        seen_to: fields.maybe("head")?,
        kept: at.is_some(),
        now: at.unwrap_or(now),
    })
}
