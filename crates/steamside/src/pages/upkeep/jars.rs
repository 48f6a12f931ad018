//! Jars of disinfectant: mixed, something went in, emptied; the time under starts again with each
//! piece that goes in.

use super::Seen;
use crate::pages::parts::{self, Form, Ground};
use crate::pages::shapes::Shape;
use crate::pages::{say, when};
use crate::upkeep::{JarSeen, Mix};
use crate::web::Ctx;
use maud::{Markup, html};

/// Name of a jar.
pub(super) fn name(ctx: &Ctx, seen: &JarSeen) -> String {
    let thing = seen.jar.thing;
    ctx.words().tell(say::thing_key(thing.what), &[("number", thing.number.to_string().into())])
}

/// All jars.
pub(super) fn draw(ctx: &Ctx, seen: &Seen) -> Markup {
    html! {
        h2 { (Shape::Jar.draw()) span { (ctx.words().say("jars-title")) } }
        div class="cards" {
            @for (at, jar) in seen.upkeep.jars.iter().enumerate() {
                (card(ctx, seen, jar, seen.labels.get(at).and_then(Option::as_deref)))
            }
        }
    }
}

fn card(ctx: &Ctx, seen: &Seen, jar: &JarSeen, label: Option<&str>) -> Markup {
    let words = ctx.words();
    let (ground, shape) = match jar.mix {
        Mix::Past(_) => (Ground::Stop, Shape::Palm),
        _ if jar.under.is_some_and(|until| until > ctx.now) => (Ground::Turn, Shape::Jar),
        _ => (Ground::Fine, Shape::Jar),
    };
    parts::card(
        ground,
        shape,
        &name(ctx, jar),
        &html! {
            (under(ctx, jar))
            p class="fact" { (mix(ctx, jar)) }
            p class="known" { (asks(ctx, jar)) @if let Some(label) = label { " " (label) } }
            @match jar.mix {
                Mix::Empty | Mix::Past(_) => { (form(ctx, seen, jar, ("jar-mixed", "jar-mixed-asks"))) }
                Mix::Good(_) | Mix::NotKnown => {
                    p { (words.say("jar-again")) }
                    (form(ctx, seen, jar, ("jar-in", "jar-in-asks")))
                    details {
                        summary { (words.say("jar-change")) }
                        p { (words.say("jar-cloudy")) }
                        (form(ctx, seen, jar, ("jar-mixed", "jar-mixed-asks")))
                        (form(ctx, seen, jar, ("jar-emptied", "jar-emptied-asks")))
                    }
                }
            }
        },
    )
}

/// The clock of what is in it.
fn under(ctx: &Ctx, jar: &JarSeen) -> Markup {
    let words = ctx.words();
    html! {
        @if let Some(until) = jar.under {
            @let time = when::moment(ctx, until);
            p class="fact" {
                @if until > ctx.now { strong { (words.tell("jar-under", &[("time", time.into())])) } }
                @else { (words.tell("jar-out", &[("time", time.into())])) }
            }
        }
    }
}

fn mix(ctx: &Ctx, jar: &JarSeen) -> String {
    let words = ctx.words();
    match jar.mix {
        Mix::Empty => words.say("jar-empty"),
        Mix::NotKnown => words.say("jar-not-known"),
        Mix::Good(until) => words.tell("jar-good", &[("time", when::moment(ctx, until).into())]),
        Mix::Past(since) => words.tell("jar-past", &[("time", when::moment(ctx, since).into())]),
    }
}

/// What the label asks.
fn asks(ctx: &Ctx, jar: &JarSeen) -> String {
    let words = ctx.words();
    match jar.jar.label {
        Some(label) => words.tell("jar-contact", &[("count", label.contact_min.into())]),
        None => words.say("jar-contact-not-known"),
    }
}

fn form(ctx: &Ctx, seen: &Seen, jar: &JarSeen, (act, asks): (&str, &str)) -> Markup {
    let id = jar.jar.thing.thing.to_string();
    Form { then: Some("/upkeep"), ..Form::new(act, &id) }.draw(
        ctx,
        &html! {
            (parts::hidden("jar", &id))
            (parts::sign_line_for(ctx, &seen.people, &name(ctx, jar), &ctx.words().say(asks)))
        },
    )
}
