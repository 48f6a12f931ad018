//! Correct: an old entry as it stands, and how it was in truth.

use super::frame::{self, Frame, Place};
use super::parts::{self, Counter, Form, Ground};
use super::shapes::Shape;
use super::telling::{self, Names};
use super::{say, when};
use crate::acts::{self, Correctable, Count, WeighTray};
use crate::web::Ctx;
use load::{SetKind, SetState};
use logbook::book::BookError;
use logbook::fact::Stamp;
use logbook::view::{Person, Pouch, View};
use maud::{Markup, html};
use measure::ActId;

/// The most that a counter takes: more is a slip of the finger.
const MOST: u32 = 200;

/// What the page shows.
#[derive(Debug, Clone)]
pub struct Seen {
    /// Who did it, and when.
    pub stamp: Stamp,
    /// Whose sign stands under it.
    pub sign: Option<String>,
    /// The entry, in words.
    pub text: String,
    /// What can be corrected in it.
    pub what: Correctable,
    /// Of a run: what is in it.
    pub inside: Vec<Pouch>,
    /// Pouches that wait for a run.
    pub bagged: Vec<Pouch>,
    /// Who may sign.
    pub people: Vec<Person>,
}

/// The page; `None` where there is no such entry, or none that can be corrected.
pub fn page(view: &View<'_>, ctx: &Ctx, act: ActId) -> Result<Option<Markup>, BookError> {
    let facts = view.facts_of_act(act)?;
    let undone = view.act_undone(act)?.is_some();
    let (Some(what), Some(first), false) = (acts::correctable(&facts), facts.first(), undone)
    else {
        return Ok(None);
    };
    let names = Names::of(view, &facts)?;
    let (inside, bagged) = match what {
        Correctable::Started(run) => {
            (view.pouches_of_run(run)?, view.pouches_in(&[SetState::Bagged])?)
        }
        _ => (Vec::new(), Vec::new()),
    };
    let seen = Seen {
        stamp: first.stamp,
        sign: first.stamp.sign.and_then(|who| names.signs.get(&who).cloned()),
        text: telling::entry(ctx, &names, &facts),
        what,
        inside,
        bagged,
        people: view.people()?,
    };
    let frame = Frame {
        title: ctx.words().say("correct-title"),
        place: Place::Log,
        desk: true,
        again_s: None,
        did: frame::did(view, ctx)?,
    };
    Ok(Some(frame::page(ctx, &frame, &draw(ctx, &seen))))
}

/// What stands on it.
pub fn draw(ctx: &Ctx, seen: &Seen) -> Markup {
    let words = ctx.words();
    let act = seen.stamp.act.to_string();
    let form = Form { then: Some("/log"), ..Form::new("correct", &act) };
    html! {
        (parts::card(Ground::Fine, Shape::Tape, &words.say("correct-was"), &html! {
            p class="fact" { (parts::time(ctx, seen.stamp.happened)) ": " (seen.text) }
            p {
                @match &seen.sign {
                    Some(sign) => span class="signed" { (sign) },
                    None => (words.say("log-program")),
                }
            }
            p { (words.say("correct-stays")) }
        }))
        (parts::card(Ground::Turn, Shape::Tape, &words.say("correct-is"), &form.draw(ctx, &html! {
            (parts::hidden("old", &act))
            @match &seen.what {
                Correctable::Washed(counts) => { (washed(ctx, counts)) }
                Correctable::Counted(count) => { (counted(ctx, count)) }
                Correctable::Opened(_, _, chair) => { (opened(ctx, *chair)) }
                Correctable::Started(run) => {
                    (inside(ctx, seen))
                    p { (words.say("correct-programme")) }
                    p { a href=(format!("/run/{run}")) { (words.say("go-run")) } }
                }
                Correctable::Weighed(tray) => { (weighed(ctx, tray)) }
            }
            (parts::sign_line(ctx, &seen.people, &words.say("correct-asks")))
        })))
        p class="ways" { (parts::way("/log", Shape::Tape, &words.say("back"))) }
    }
}

fn counter(ctx: &Ctx, name: &str, (id, label): (&str, &str), value: u32) -> Markup {
    Counter { name, id, label, value, most: MOST.max(value) }.draw(ctx)
}

fn washed(ctx: &Ctx, counts: &[(SetKind, u32)]) -> Markup {
    html! {
        div class="counters" {
            @for (index, (kind, count)) in counts.iter().enumerate() {
                (counter(ctx, &format!("count.{kind}"), (&format!("washed-{index}"), &say::kind(ctx, kind)), *count))
            }
        }
    }
}

fn counted(ctx: &Ctx, count: &Count) -> Markup {
    let words = ctx.words();
    html! {
        p class="fact" { (say::kind(ctx, &count.kind)) }
        (parts::hidden("kind", &count.kind))
        div class="counters" {
            @if let Some(owned) = count.owned {
                (counter(ctx, "owned", ("owned", &words.say("sets-owned")), owned))
            }
            @if let Some((used, washed)) = count.loose {
                (counter(ctx, "used", ("used", &words.say("sets-used")), used))
                (counter(ctx, "washed", ("washed", &words.say("sets-washed")), washed))
            }
        }
    }
}

fn opened(ctx: &Ctx, chair: Option<u32>) -> Markup {
    html! {
        p class="field" {
            label for="correct-chair" { (ctx.words().say("correct-chair")) }
            input type="number" inputmode="numeric" id="correct-chair" name="chair" min="1" max="99" value=[chair];
        }
    }
}

fn inside(ctx: &Ctx, seen: &Seen) -> Markup {
    let words = ctx.words();
    let boxes = |pouches: &[Pouch], in_it: bool| {
        html! {
            @for pouch in pouches {
                label class="pouch-box" {
                    input type="checkbox" name="in" value=(pouch.pouch) checked[in_it];
                    span class="code" { (pouch.code) }
                }
            }
        }
    };
    html! {
        fieldset class="pouches" {
            legend { (words.say("correct-inside")) }
            (boxes(&seen.inside, true))
        }
        @if !seen.bagged.is_empty() {
            fieldset class="pouches" {
                legend { (words.say("correct-too")) }
                (boxes(&seen.bagged, false))
            }
        }
    }
}

fn weighed(ctx: &Ctx, tray: &WeighTray) -> Markup {
    let words = ctx.words();
    let kinds = tray.sets.iter().map(|(kind, count)| format!("{count} {}", say::kind(ctx, kind)));
    html! {
        p { (kinds.collect::<Vec<_>>().join(", ")) }
        @for (name, key, value) in [("grams", "scale-grams", tray.grams), ("empty", "scale-empty", tray.empty_g)] {
            @let id = format!("correct-{name}");
            p class="field" {
                label for=(id) { (words.say(key)) }
                input type="number" inputmode="numeric" id=(id) name=(name) min="0" max="20000" value=(value) required;
            }
        }
    }
}

/// The line beside an entry that was corrected.
pub fn beside(ctx: &Ctx, said: &super::log::Beside) -> String {
    let at = when::moment(ctx, said.written);
    let sign = said.sign.clone().unwrap_or_else(|| ctx.words().say("log-program"));
    let args = [("at", at.into()), ("sign", sign.into()), ("what", said.text.as_str().into())];
    ctx.words().tell("log-corrected", &args)
}
