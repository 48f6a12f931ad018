//! Posted forms about the day: visits, services, working times, figures; and calendars.

use super::head::Head;
use super::show::{About, answer_refusal, trouble};
use super::take_posts::{Upload, upload};
use super::{Fields, Served};
use crate::acts::{self, Refusal};
use crate::app::{App, Who};
use crate::intake::appointments::{Arrived, Brought, bring as bring_in};
use crate::intake::take::salon_zone;
use crate::{pace, pages};
use axum::extract::{Multipart, State};
use axum::response::{IntoResponse, Redirect, Response};
use jiff::civil::{Date, DateTime, Time};
use load::{Programme, SetKind};
use logbook::book::Draft;
use logbook::fact::{DayCycle, DayRules, Drying, KindFigures, Known, MachineFigures, PlanOrder};
use logbook::view::View;
use maud::Markup;
use measure::{ActId, Instant, MachineId};
use std::str::FromStr;

/// Where calendars come in.
const VISITS: About<'_> = About { back: Some("/visits"), run: None };

/// The acts of this file.
const ACTS: [&str; 14] = [
    "visit",
    "visit-late",
    "visit-missed",
    "visit-off",
    "visit-is",
    "learn",
    "closed",
    "service",
    "service-ended",
    "kind-figures",
    "machine-figures",
    "day-rules",
    "shift",
    "shift-ended",
];
/// Most questions, phrases or programmes in one form.
const MOST: usize = 60;

/// Is it an act of this file? They ask for no sign: two taps are two taps.
pub fn knows(name: &str) -> bool {
    ACTS.contains(&name)
}

/// Does the act set something, rather than say what happened?
pub fn is_setting(name: &str) -> bool {
    matches!(
        name,
        "learn" | "service" | "service-ended" | "kind-figures" | "machine-figures" | "day-rules"
    )
}

/// Decides an act of this file.
pub fn decide(
    name: &str,
    view: &View<'_>,
    draft: &mut Draft,
    fields: &Fields,
) -> Result<(), Refusal> {
    match name {
        "visit" => {
            let start = Instant::from_millis(fields.need("start")?);
            let chair = fields.maybe("chair")?;
            acts::book(view, draft, acts::Book { service: fields.need("service")?, start, chair })
        }
        "visit-late" => acts::late(view, draft, fields.need("visit")?, fields.need("later")?),
        "visit-missed" => acts::missed(view, draft, fields.need("visit")?),
        "visit-off" => acts::call_off(view, draft, fields.need("visit")?),
        "visit-is" => acts::visit_is(view, draft, fields.need("visit")?, fields.need("service")?),
        "learn" => acts::learn(view, draft, answers(fields)?),
        "closed" => acts::closed(view, draft, days(view, fields)?, fields.yes("closed")),
        "service" => acts::set_service(view, draft, service(fields)?),
        "service-ended" => acts::end_service(view, draft, fields.need("service")?),
        "kind-figures" => acts::set_kind_figures(view, draft, kind_figures(view, fields)?),
        "machine-figures" => acts::set_machine_figures(view, draft, machine_figures(view, fields)?),
        "day-rules" => {
            let order = match fields.one("order") {
                Some("comparing") => PlanOrder::Comparing,
                _ => PlanOrder::Salon,
            };
            let passive_min = fields.need("passive")?;
            let immediate_min = fields.need("immediate")?;
            acts::set_rules(draft, DayRules { passive_min, immediate_min, order });
            Ok(())
        }
        "shift" => acts::set_shift(view, draft, shift(view, fields)?),
        "shift-ended" => acts::end_shift(view, draft, fields.need("shift")?, pace::now(view)?),
        _ => Err(Refusal::rule("refused-no-such-act")),
    }
}

fn misread(field: &str) -> Refusal {
    Refusal::rule_with("refused-field-misread", "field", field)
}

/// A field whose name was put together.
fn read<T: FromStr>(fields: &Fields, name: &str) -> Result<Option<T>, Refusal> {
    fields.one(name).map(|text| text.parse().map_err(|_| misread(name))).transpose()
}

fn must<T: FromStr>(fields: &Fields, name: &str) -> Result<T, Refusal> {
    let missing = || Refusal::rule_with("refused-field-missing", "field", name);
    read(fields, name)?.ok_or_else(missing)
}

fn ids<T: FromStr>(fields: &Fields, name: &str) -> Result<Vec<T>, Refusal> {
    let all = fields.one(name).unwrap_or_default();
    all.split(' ')
        .filter(|id| !id.is_empty())
        .map(|id| id.parse().map_err(|_| misread(name)))
        .collect()
}

/// The answers of a page of questions; a question without one waits for the next time.
fn answers(fields: &Fields) -> Result<Vec<acts::Answer>, Refusal> {
    let mut answers = Vec::new();
    for number in 0..MOST {
        let name = |part: &str| format!("{number}.{part}");
        let service = match fields.one(&name("service")) {
            None => continue,
            Some("none") => None,
            Some(_) => Some(must(fields, &name("service"))?),
        };
        let typed = fields.one(&name("words")).map(str::to_owned);
        let pick = fields.one(&name("pick")).filter(|_| typed.is_none());
        let phrase = pick.map(|at| must(fields, &name(&format!("phrase.{at}")))).transpose()?;
        let visits = match pick {
            Some(at) => ids(fields, &name(&format!("visits.{at}")))?,
            None => ids(fields, &name("visits"))?,
        };
        answers.push(acts::Answer { phrase: typed.or(phrase), service, visits });
    }
    Ok(answers)
}

/// From the first moment of one day to the first moment of another.
fn days(view: &View<'_>, fields: &Fields) -> Result<(Instant, Instant), Refusal> {
    let zone = salon_zone(view)?;
    let start = |name: &'static str| -> Result<Instant, Refusal> {
        let day: Date = fields.need(name)?;
        let at = day.to_zoned_datetime(zone.clone()).map_err(|_| misread(name))?;
        Ok(Instant::from_millis(at.timestamp().as_millisecond()))
    };
    Ok((start("from")?, start("to")?))
}

fn service(fields: &Fields) -> Result<acts::SetService, Refusal> {
    Ok(acts::SetService {
        service: fields.maybe("service")?,
        word: fields.need("word")?,
        minutes: fields.need("length")?,
        weight: fields.maybe("weight")?.unwrap_or(1),
        basin_min: fields.maybe("basin")?.unwrap_or(0),
        needs: fields.counted("need.")?,
    })
}

/// The room that a set takes is worked out from its pouch and the trays; what an older form said of
/// it stays as it was.
fn kind_figures(view: &View<'_>, fields: &Fields) -> Result<KindFigures, Refusal> {
    let kind: SetKind = fields.need("kind")?;
    let area_cm2 = view.kind_figures(&kind)?.value.area_cm2;
    Ok(KindFigures {
        kind,
        mass_g: fields.need("mass")?,
        area_cm2,
        hand_min: fields.need("hand")?,
        pouch_cents: fields.need("pouch")?,
        target_ready: fields.need("target")?,
        spares: fields.need("spares")?,
    })
}

fn machine_figures(view: &View<'_>, fields: &Fields) -> Result<MachineFigures, Refusal> {
    let machine: MachineId = fields.need("machine")?;
    let known = view.machine_figures(machine)?.value.cycles;
    let mut cycles = Vec::new();
    for number in 0..MOST {
        let name = |part: &str| format!("{number}.{part}");
        let Some(programme) = read::<Programme>(fields, &name("programme"))? else { continue };
        let before = known.iter().find(|cycle| cycle.programme == programme);
        cycles.push(DayCycle {
            max_area_cm2: before.map_or(0, |cycle| cycle.max_area_cm2),
            programme,
            cold_min: must(fields, &name("cold"))?,
            warm_min: must(fields, &name("warm"))?,
            max_mass_g: must(fields, &name("mass"))?,
            drying: match fields.one(&name("drying")) {
                Some("none") => Drying::None,
                Some("short") => Drying::Short,
                Some("full") => Drying::Full,
                _ => return Err(misread("drying")),
            },
            wrapped: fields.yes(&name("wrapped")),
            load_min: must(fields, &name("load"))?,
            unload_min: must(fields, &name("unload"))?,
            cool_min: must(fields, &name("cool"))?,
            cold_cents: must(fields, &name("cost-cold"))?,
            warm_cents: must(fields, &name("cost-warm"))?,
        });
    }
    let warm_window_min = fields.need("warm-window")?;
    Ok(MachineFigures { machine, warm_window_min, cycles })
}

fn shift(view: &View<'_>, fields: &Fields) -> Result<acts::SetShift, Refusal> {
    let day: Date = fields.need("day")?;
    let wall = |time: Time| -> DateTime { day.to_datetime(time) };
    let lunch = fields.maybe("lunch-from")?.zip(fields.maybe("lunch-to")?);
    Ok(acts::SetShift {
        person: fields.need("person")?,
        from: wall(fields.need("from")?),
        to: wall(fields.need("to")?),
        lunch: lunch.map(|(from, to)| (wall(from), wall(to))),
        weeks: fields.maybe("weeks")?.unwrap_or(0),
        zone: salon_zone(view)?,
    })
}

/// A calendar or a table of appointments, chosen on a page.
pub async fn bring(State(served): State<Served>, head: Head, form: Multipart) -> Response {
    match upload(form).await {
        Ok(upload) => bring_upload(&served, head, upload).await,
        Err(refusal) => answer_refusal(&served, head, refusal, VISITS).await,
    }
}

/// Brings appointments in and answers with what is open. Titles are on this page and nowhere else:
/// it is not kept, and not gone back to.
pub async fn bring_upload(served: &Served, head: Head, upload: Upload) -> Response {
    let work = {
        let head = head.clone();
        move |app: &App| bring_all(app, &head, &upload)
    };
    match served.app.look(work).await {
        Ok(Ok(Some(page))) => (head.jar, page).into_response(),
        Ok(Ok(None)) => (head.jar, Redirect::to("/visits")).into_response(),
        Ok(Err(refusal)) => answer_refusal(served, head, refusal, VISITS).await,
        Err(error) => trouble(&head, &error.to_string()),
    }
}

fn bring_all(app: &App, head: &Head, upload: &Upload) -> Result<Option<Markup>, Refusal> {
    let Some((name, bytes)) = upload.files.first() else {
        return Err(Refusal::rule("refused-no-file"));
    };
    if upload.files.len() > 1 {
        return Err(Refusal::rule("refused-one-calendar"));
    }
    let act: ActId = upload.fields.need("act")?;
    let sign = upload.fields.maybe("sign")?;
    let who = Who { act, station: head.station, sign, happened: None, known: Known::WorkedOut };
    let mut brought: Option<Brought> = None;
    app.act(who, |view, draft| {
        brought = Some(bring_in(view, draft, Arrived { bytes, name, now: app.now() })?);
        Ok(())
    })?;
    // The same page sent twice was written once; there is nothing to ask twice.
    let Some(brought) = brought else { return Ok(None) };
    app.book.read(|view| Ok(Some(pages::visits::brought(view, &head.ctx(app, view)?, &brought)?)))
}
