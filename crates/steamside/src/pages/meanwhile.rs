//! Two did different things to one pouch or run: who, when, and which of the two holds. The safer
//! one does; both stay in the log.

use super::frame::{self, Frame, Place};
use super::parts::{self, Form};
use super::shapes::Shape;
use super::{say, stop, telling, when};
use crate::web::Ctx;
use load::SetState;
use logbook::book::BookError;
use logbook::fact::{Body, Fact, StopReason};
use logbook::view::{Person, Pouch, View};
use maud::{Markup, html};
use measure::{ActId, PersonId, PouchId, RunId};

/// Such entries that are shown at once; the next come up when these are signed.
const SHOWN: u32 = 6;

/// What is told of one entry.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Told {
    /// Place of the entry.
    pub seq: u64,
    /// Said in a few words.
    pub title: String,
    /// What each did, what holds, what to do.
    pub lines: Vec<String>,
}

/// What is to be told of an act that was just written; `None`: it fits what stood before it.
pub fn after(view: &View<'_>, ctx: &Ctx, act: ActId) -> Result<Option<Told>, BookError> {
    for fact in view.facts_of_act(act)? {
        if view.contradicted(fact.seq)?
            && let Some(told) = tell(view, ctx, &fact)?
        {
            return Ok(Some(told));
        }
    }
    Ok(None)
}

/// What nobody has signed as seen yet.
pub fn unseen(view: &View<'_>, ctx: &Ctx) -> Result<Vec<Told>, BookError> {
    let mut all = Vec::new();
    for fact in view.unseen(SHOWN)? {
        if view.act_undone(fact.stamp.act)?.is_none() {
            all.extend(tell(view, ctx, &fact)?);
        }
    }
    Ok(all)
}

fn tell(view: &View<'_>, ctx: &Ctx, fact: &Fact) -> Result<Option<Told>, BookError> {
    match &fact.body {
        Body::Opened { pouch, chair, .. } => opened(view, ctx, fact, (*pouch, *chair)),
        Body::Released { run, pouches, .. } => released(view, ctx, fact, (*run, pouches)),
        _ => Ok(None),
    }
}

/// A pouch was opened before anybody there could tell that it must not be.
fn opened(
    view: &View<'_>,
    ctx: &Ctx,
    fact: &Fact,
    (pouch, chair): (PouchId, Option<u32>),
) -> Result<Option<Told>, BookError> {
    let Some(row) = view.pouch(pouch)? else { return Ok(None) };
    let words = ctx.words();
    let code = || row.code.to_string();
    let chair = chair.map_or_else(
        || words.say("chair-some"),
        |chair| words.tell("chair-name", &[("chair", chair.to_string().into())]),
    );
    let opened = words.tell(
        "meanwhile-opened",
        &[
            ("code", code().into()),
            ("at", when::moment(ctx, fact.stamp.happened).into()),
            ("chair", chair.into()),
            ("who", who(view, ctx, fact.stamp.sign)?.into()),
        ],
    );
    let against = match view.stop_of(pouch)? {
        Some(stop) => aside(view, ctx, &code(), &stop)?,
        None => not_ready(view, ctx, fact, &row)?,
    };
    Ok(Some(Told {
        seq: fact.seq,
        title: words.say("meanwhile-opened-title"),
        lines: vec![opened, against, words.say("meanwhile-opened-do")],
    }))
}

/// Not set aside: opened by another before, or never released.
fn not_ready(view: &View<'_>, ctx: &Ctx, fact: &Fact, row: &Pouch) -> Result<String, BookError> {
    let code = ("code", row.code.to_string().into());
    let earlier = view.openings_of(row.pouch)?.into_iter().find(|other| other.seq < fact.seq);
    Ok(match earlier {
        Some(earlier) => {
            let at = when::moment(ctx, earlier.stamp.happened).into();
            let who = who(view, ctx, earlier.stamp.sign)?.into();
            ctx.words().tell("meanwhile-twice", &[code, ("at", at), ("who", who)])
        }
        None => ctx.words().tell("meanwhile-not-released", &[code]),
    })
}

/// A load was released that somebody else had set aside.
fn released(
    view: &View<'_>,
    ctx: &Ctx,
    fact: &Fact,
    (run, pouches): (RunId, &[PouchId]),
) -> Result<Option<Told>, BookError> {
    let words = ctx.words();
    let name = run_name(view, ctx, run)?;
    let said = words.tell(
        "meanwhile-released",
        &[
            ("what", name.as_str().into()),
            ("at", when::moment(ctx, fact.stamp.happened).into()),
            ("who", who(view, ctx, fact.stamp.sign)?.into()),
        ],
    );
    let mut lines = vec![said];
    for pouch in pouches {
        if let Some(stop) = view.stop_of(*pouch)? {
            lines.push(aside(view, ctx, &name, &stop)?);
            break;
        }
    }
    lines.push(words.say("meanwhile-released-do"));
    Ok(Some(Told { seq: fact.seq, title: words.say("meanwhile-released-title"), lines }))
}

/// Who set it aside, when and why.
fn aside(view: &View<'_>, ctx: &Ctx, what: &str, stop: &Fact) -> Result<String, BookError> {
    let why = match &stop.body {
        Body::SetAside { why, .. } => *why,
        _ => StopReason::NotSure,
    };
    let args = [
        ("what", what.into()),
        ("at", when::moment(ctx, stop.stamp.happened).into()),
        ("who", who(view, ctx, stop.stamp.sign)?.into()),
        ("why", ctx.words().say(say::stop_key(why)).into()),
    ];
    Ok(ctx.words().tell("meanwhile-aside", &args))
}

fn who(view: &View<'_>, ctx: &Ctx, sign: Option<PersonId>) -> Result<String, BookError> {
    let Some(sign) = sign else { return Ok(ctx.words().say("meanwhile-nobody")) };
    let sign = view.person(sign)?.and_then(|person| person.sign);
    Ok(sign.unwrap_or_else(|| ctx.words().say("sign-gone")))
}

fn run_name(view: &View<'_>, ctx: &Ctx, run: RunId) -> Result<String, BookError> {
    Ok(match view.run(run)? {
        Some(run) => telling::run_name(ctx, run.machine_number, run.number),
        None => ctx.words().say("run-unnamed"),
    })
}

/// What somebody has decided on a run, and what holds now; `None` where nobody has.
pub fn holds(view: &View<'_>, ctx: &Ctx, run: RunId) -> Result<Option<String>, BookError> {
    let name = run_name(view, ctx, run)?;
    let pouches = view.pouches_of_run(run)?;
    for pouch in pouches.iter().filter(|pouch| pouch.state == SetState::SetAside) {
        if let Some(stop) = view.stop_of(pouch.pouch)? {
            return aside(view, ctx, &name, &stop).map(Some);
        }
    }
    if let Some((at, sign)) = pouches.iter().find_map(|pouch| pouch.released) {
        let args = [
            ("what", name.into()),
            ("at", when::moment(ctx, at).into()),
            ("who", who(view, ctx, sign)?.into()),
        ];
        return Ok(Some(ctx.words().tell("meanwhile-released", &args)));
    }
    let unloaded = view.run(run)?.and_then(|run| run.unloaded);
    Ok(unloaded.map(|at| {
        let args = [("what", name.into()), ("at", when::moment(ctx, at).into())];
        ctx.words().tell("meanwhile-unloaded", &args)
    }))
}

/// The answer to an act that does not fit: it is written, and this holds.
pub fn page(ctx: &Ctx, told: &Told, back: Option<&str>) -> Markup {
    let words = ctx.words();
    let frame = Frame {
        title: words.say("meanwhile-title"),
        place: Place::Now,
        desk: false,
        again_s: None,
        did: None,
    };
    let body = html! {
        div role="alert" {
            (stop::card(ctx, &told.title, &html! {
                @for line in &told.lines { p { (line) } }
                p { (words.say("meanwhile-both")) }
            }))
        }
        p { a class="key main-key" href=(back.unwrap_or("/")) { (words.say("back")) } }
    };
    frame::page(ctx, &frame, &body)
}

/// Cards for who is in charge, until somebody signs them.
pub fn cards(ctx: &Ctx, told: &[Told], people: &[Person]) -> Markup {
    let words = ctx.words();
    html! {
        @for told in told {
            @let seq = told.seq.to_string();
            (parts::card(parts::Ground::Turn, Shape::Palm, &told.title, &html! {
                @for line in &told.lines { p { (line) } }
                (Form::new("seen", &seq).draw(ctx, &html! {
                    (parts::hidden("seq", &seq))
                    (parts::sign_line(ctx, people, &words.say("meanwhile-asks")))
                }))
            }))
        }
    }
}
