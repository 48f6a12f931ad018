//! Pages: which address shows which screen, read from one consistent state of the book.

pub mod screens;
pub mod spores;

use super::guard::At;
use super::head::Head;
use super::{Ctx, Served};
use crate::acts::Refusal;
use crate::app::App;
use crate::pages;
use crate::photo::NotRead;
use axum::extract::{Path, Query, State};
use axum::http::{HeaderValue, StatusCode, header};
use axum::response::{IntoResponse, Response};
use logbook::book::BookError;
use logbook::fact::BookKind;
use logbook::view::View;
use maud::Markup;
use measure::{ActId, MachineId, PouchId, RecordHash, RunId};
use serde::Deserialize;

/// What a page makes of the book; `None`: there is no such thing.
pub type Page = Result<Option<Markup>, Refusal>;

/// Draws a page away from the threads that answer requests.
pub async fn show(
    served: &Served,
    head: Head,
    draw: impl FnOnce(&View<'_>, &Ctx) -> Page + Send + 'static,
) -> Response {
    let for_page = head.clone();
    let work = move |app: &App| {
        app.book.read(|view| {
            let ctx = for_page.ctx(app, view)?;
            draw(view, &ctx)
        })
    };
    match served.app.look(work).await {
        Ok(Ok(Some(page))) => (head.jar, page).into_response(),
        Ok(Ok(None)) => missing(served, head).await,
        Ok(Err(refusal)) => answer_refusal(served, head, refusal, About::default()).await,
        Err(error) => trouble(&head, &error.to_string()),
    }
}

/// An address that is none of ours.
pub async fn nowhere(State(served): State<Served>, head: Head) -> Response {
    // Somebody who was not let in is told nothing of the salon, not even that a page is missing.
    if head.at == At::Stranger {
        return StatusCode::NOT_FOUND.into_response();
    }
    missing(&served, head).await
}

/// There is no such page.
pub async fn missing(served: &Served, head: Head) -> Response {
    let refusal = Refusal::rule("refused-no-such-page");
    let mut response = answer_refusal(served, head, refusal, About::default()).await;
    *response.status_mut() = StatusCode::NOT_FOUND;
    response
}

/// What a refused form was about.
#[derive(Debug, Clone, Copy, Default)]
pub struct About<'a> {
    /// Where to go back to.
    pub back: Option<&'a str>,
    /// The run that it named.
    pub run: Option<RunId>,
}

/// The one place that turns a refusal into a page.
pub async fn answer_refusal(
    served: &Served,
    head: Head,
    refusal: Refusal,
    about: About<'_>,
) -> Response {
    // A figure that no fact may hold was typed by somebody: that is no fault of the program.
    let refusal = match refusal {
        Refusal::Book(BookError::Unfit(why)) => Refusal::rule_with("refused-unfit", "why", why),
        other => other,
    };
    let status = match &refusal {
        Refusal::Rule(_) | Refusal::Stop(_) => StatusCode::CONFLICT,
        Refusal::NoSuchCode(_) => StatusCode::NOT_FOUND,
        Refusal::Book(_) | Refusal::Chance(_) => {
            eprintln!("steamside: {refusal}");
            return trouble(&head, &refusal.to_string());
        }
    };
    let (back, run) = (about.back.unwrap_or("/").to_owned(), about.run);
    let for_page = head.clone();
    let work = move |app: &App| {
        app.book.read(|view| {
            let ctx = for_page.ctx(app, view)?;
            draw_refusal(view, &ctx, &refusal, (&back, run))
        })
    };
    match served.app.look(work).await {
        Ok(Ok(page)) => (status, head.jar, page).into_response(),
        Ok(Err(refusal)) => trouble(&head, &refusal.to_string()),
        Err(error) => trouble(&head, &error.to_string()),
    }
}

fn draw_refusal(
    view: &View<'_>,
    ctx: &Ctx,
    refusal: &Refusal,
    (back, run): (&str, Option<RunId>),
) -> Result<Markup, Refusal> {
    let stop = |pouch, code, run| {
        pages::stop::page(ctx, &pages::stop::Stop { pouch, code, run, chair: None })
    };
    Ok(match refusal {
        Refusal::Stop(pouch) => {
            let run = pouch.run.map(|run| view.run(run)).transpose()?.flatten();
            let run = run.map(|run| (run.machine_number, run.number));
            stop(Some(&**pouch), &pouch.code.to_string(), run)
        }
        Refusal::NoSuchCode(code) => stop(None, code, None),
        Refusal::Rule(rule) => {
            // Somebody else may have been quicker: who, when, and what holds now.
            let holds = run.map(|run| pages::meanwhile::holds(view, ctx, run)).transpose()?;
            let holds = holds.flatten();
            let said = pages::refused::Said { key: rule.key, args: &rule.args, back, holds };
            pages::refused::page(ctx, &said)
        }
        Refusal::Book(error) => trouble_in(ctx, &error.to_string()),
        Refusal::Chance(error) => trouble_in(ctx, &error.to_string()),
    })
}

fn trouble_in(ctx: &Ctx, what: &str) -> Markup {
    pages::trouble::page(ctx.language, ctx.book == BookKind::Practice, what)
}

/// The program itself could not go on.
pub fn trouble(head: &Head, what: &str) -> Response {
    let page = pages::trouble::page(head.language, head.practice, what);
    (StatusCode::INTERNAL_SERVER_ERROR, head.jar.clone(), page).into_response()
}

/// Which service the time is being chosen for.
#[derive(Debug, Deserialize)]
pub struct ForService {
    service: Option<String>,
}

/// Who comes when, without names; today and tomorrow.
pub async fn visits(
    State(served): State<Served>,
    head: Head,
    Query(query): Query<ForService>,
) -> Response {
    let service = query.service.and_then(|text| text.parse().ok());
    let draw = move |view: &View<'_>, ctx: &Ctx| Ok(Some(pages::visits::page(view, ctx, service)?));
    show(&served, head, draw).await
}

/// Services, and the figures that plans are made with.
pub async fn services(State(served): State<Served>, head: Head) -> Response {
    show(&served, head, |view, ctx| Ok(Some(pages::services::page(view, ctx)?))).await
}

/// What needs hands. An empty book leads to its first steps.
pub async fn now(State(served): State<Served>, head: Head) -> Response {
    show(&served, head, |view, ctx| Ok(Some(pages::now::page(view, ctx)?))).await
}

/// The first minute: a sign starts the clock.
pub async fn first(
    State(served): State<Served>,
    Query(asked): Query<Asked>,
    head: Head,
) -> Response {
    let machines = read(asked.machines.as_ref()).unwrap_or(1);
    show(&served, head, move |view, ctx| Ok(pages::first::page(view, ctx, machines)?)).await
}

/// The day plan.
pub async fn plan(State(served): State<Served>, head: Head) -> Response {
    show(&served, head, |view, ctx| Ok(Some(pages::plan::page(view, ctx)?))).await
}

/// Ways out of a day on which somebody would wait.
pub async fn ways(State(served): State<Served>, head: Head) -> Response {
    show(&served, head, |view, ctx| Ok(Some(pages::ways::page(view, ctx)?))).await
}

/// How many sets to own.
pub async fn sets(State(served): State<Served>, head: Head) -> Response {
    show(&served, head, |view, ctx| Ok(Some(pages::sets::page(view, ctx)?))).await
}

/// Wash and pack.
pub async fn wash(State(served): State<Served>, head: Head) -> Response {
    show(&served, head, |view, ctx| Ok(Some(pages::wash::page(view, ctx)?))).await
}

/// What an address may say after its question mark. What cannot be read counts as not said.
#[derive(Debug, Default, Deserialize)]
#[serde(default)]
pub struct Asked {
    machine: Option<String>,
    machines: Option<String>,
    run: Option<String>,
    act: Option<String>,
    code: Option<String>,
    pouch: Option<String>,
    chair: Option<String>,
    photo: Option<String>,
    before: Option<String>,
    from: Option<String>,
    to: Option<String>,
    sheet: Option<String>,
    start: Option<String>,
    kind: Option<String>,
    implement: Option<String>,
    print: Option<String>,
    test: Option<String>,
    visit: Option<String>,
    asked: Option<String>,
    about: Option<String>,
    chore: Option<String>,
}

fn read<T: std::str::FromStr>(text: Option<&String>) -> Option<T> {
    text.and_then(|text| text.trim().parse().ok())
}

/// Start a run.
pub async fn start(
    State(served): State<Served>,
    Query(asked): Query<Asked>,
    head: Head,
) -> Response {
    let machine: Option<MachineId> = read(asked.machine.as_ref());
    show(&served, head, move |view, ctx| Ok(Some(pages::start::page(view, ctx, machine)?))).await
}

/// How a load goes on the trays.
pub async fn tray(
    State(served): State<Served>,
    Query(asked): Query<Asked>,
    head: Head,
) -> Response {
    let asked = pages::tray::Asked {
        machine: read(asked.machine.as_ref()),
        run: read(asked.run.as_ref()),
        print: asked.print.is_some(),
    };
    show(&served, head, move |view, ctx| Ok(pages::tray::page(view, ctx, asked)?)).await
}

/// Which pouch for a kind of set.
pub async fn bag(State(served): State<Served>, Query(asked): Query<Asked>, head: Head) -> Response {
    let kind: Option<load::SetKind> = read(asked.kind.as_ref());
    show(&served, head, move |view, ctx| match &kind {
        Some(kind) => Ok(pages::bag::page(view, ctx, kind)?),
        None => Ok(None),
    })
    .await
}

/// What goes in.
pub async fn goes_in(
    State(served): State<Served>,
    Query(asked): Query<Asked>,
    head: Head,
) -> Response {
    let implement: Option<load::ImplementWord> = read(asked.implement.as_ref());
    show(&served, head, |view, ctx| Ok(Some(pages::goes_in::page(view, ctx, implement)?))).await
}

/// The machines.
pub async fn machine(State(served): State<Served>, head: Head) -> Response {
    show(&served, head, |view, ctx| Ok(Some(pages::machine::page(view, ctx)?))).await
}

/// What is looked after, or one chore of it.
pub async fn upkeep(
    State(served): State<Served>,
    Query(asked): Query<Asked>,
    head: Head,
) -> Response {
    let about = asked.about.as_deref().and_then(super::about_of);
    let one = read::<load::ChoreWord>(asked.chore.as_ref()).zip(about);
    show(&served, head, move |view, ctx| Ok(Some(pages::upkeep::page(view, ctx, one)?))).await
}

/// How often, how long, how many.
pub async fn upkeep_set(State(served): State<Served>, head: Head) -> Response {
    show(&served, head, |view, ctx| Ok(Some(pages::upkeep::set::page(view, ctx)?))).await
}

/// One run.
pub async fn run(State(served): State<Served>, Path(run): Path<String>, head: Head) -> Response {
    let run: Option<RunId> = run.parse().ok();
    show(&served, head, move |view, ctx| match run {
        Some(run) => Ok(pages::run::page(view, ctx, run)?),
        None => Ok(None),
    })
    .await
}

/// The shelf.
pub async fn ready(State(served): State<Served>, head: Head) -> Response {
    show(&served, head, |view, ctx| Ok(Some(pages::ready::page(view, ctx)?))).await
}

/// At a chair.
pub async fn chair(
    State(served): State<Served>,
    Query(asked): Query<Asked>,
    head: Head,
) -> Response {
    show(&served, head, move |view, ctx| {
        let asked = pages::chair::Asked {
            code: asked.code.as_deref(),
            pouch: read::<PouchId>(asked.pouch.as_ref()),
            chair: read(asked.chair.as_ref()),
            photo: asked.photo.as_deref().and_then(NotRead::from_word),
        };
        Ok(Some(pages::chair::page(view, ctx, asked)?))
    })
    .await
}

/// Need another.
pub async fn another(
    State(served): State<Served>,
    Query(asked): Query<Asked>,
    head: Head,
) -> Response {
    let asked = pages::another::Asked {
        pouch: read(asked.pouch.as_ref()),
        chair: read(asked.chair.as_ref()),
    };
    show(&served, head, move |view, ctx| Ok(Some(pages::another::page(view, ctx, asked)?))).await
}

/// Everything that happened.
pub async fn log(State(served): State<Served>, Query(asked): Query<Asked>, head: Head) -> Response {
    let before: Option<u64> = read(asked.before.as_ref());
    let print = asked.print.is_some();
    show(&served, head, move |view, ctx| Ok(Some(pages::log::page(view, ctx, before, print)?)))
        .await
}

/// An entry that was wrong, and how it was in truth.
pub async fn correct(
    State(served): State<Served>,
    Path(act): Path<String>,
    head: Head,
) -> Response {
    let act: Option<ActId> = act.parse().ok();
    show(&served, head, move |view, ctx| match act {
        Some(act) => Ok(pages::correct::page(view, ctx, act)?),
        None => Ok(None),
    })
    .await
}

/// Hand over.
pub async fn hand_over(State(served): State<Served>, head: Head) -> Response {
    show(&served, head, |view, ctx| Ok(Some(pages::hand_over::page(view, ctx)?))).await
}

/// What was kept on paper.
pub async fn later(
    State(served): State<Served>,
    Query(asked): Query<Asked>,
    head: Head,
) -> Response {
    let run: Option<RunId> = read(asked.run.as_ref());
    show(&served, head, move |view, ctx| Ok(pages::later::page(view, ctx, run)?)).await
}

/// The sheet for the wall, for a week without power.
pub async fn week(State(served): State<Served>, head: Head) -> Response {
    show(&served, head, |view, ctx| Ok(Some(pages::week::page(view, ctx)?))).await
}

/// Which visits.
pub async fn recall(
    State(served): State<Served>,
    Query(asked): Query<Asked>,
    head: Head,
) -> Response {
    show(&served, head, move |view, ctx| {
        let asked = pages::recall::Asked {
            run: read(asked.run.as_ref()),
            machine: read(asked.machine.as_ref()),
            from: asked.from.as_deref(),
            to: asked.to.as_deref(),
            test: read(asked.test.as_ref()),
        };
        Ok(Some(pages::recall::page(view, ctx, asked)?))
    })
    .await
}

/// A record that no run has claimed.
pub async fn unclaimed(
    State(served): State<Served>,
    Path((record, cycle)): Path<(String, String)>,
    head: Head,
) -> Response {
    let named: Option<(RecordHash, u32)> = record.parse().ok().zip(cycle.parse().ok());
    show(&served, head, move |view, ctx| match named {
        Some((record, cycle)) => Ok(pages::unclaimed::page(view, ctx, record, cycle)?),
        None => Ok(None),
    })
    .await
}

/// Every state with its shape and its word.
pub async fn legend(State(served): State<Served>, head: Head) -> Response {
    show(&served, head, |view, ctx| Ok(Some(pages::legend::page(view, ctx)?))).await
}

/// Machines, signs, sets.
pub async fn setup(State(served): State<Served>, head: Head) -> Response {
    show(&served, head, |view, ctx| Ok(Some(pages::setup::page(view, ctx)?))).await
}

/// Labels of what was packed in one act.
pub async fn labels(
    State(served): State<Served>,
    Query(asked): Query<Asked>,
    head: Head,
) -> Response {
    let act: Option<ActId> = read(asked.act.as_ref());
    show(&served, head, move |view, ctx| match act {
        Some(act) => {
            let asked = pages::labels::Asked {
                act,
                sheet: asked.sheet.as_deref(),
                start: read(asked.start.as_ref()),
            };
            Ok(pages::labels::page(view, ctx, asked)?)
        }
        None => Ok(None),
    })
    .await
}

/// The style sheet, the script, the icon: compiled in.
pub async fn asset(Path(name): Path<String>) -> Response {
    let Some((kind, bytes)) = pages::asset(&name) else {
        return StatusCode::NOT_FOUND.into_response();
    };
    let headers = [
        (header::CONTENT_TYPE, HeaderValue::from_static(kind)),
        // The page names the program's version with the file; a new version asks anew.
        (header::CACHE_CONTROL, HeaderValue::from_static("max-age=3600")),
    ];
    (headers, bytes).into_response()
}
