//! Hand over: five lines made by the tool, one tap by the giver and one by the receiver. Not where
//! one person works alone.

use super::frame::{self, Frame, Place};
use super::parts::{self, Counter, Form, Ground};
use super::shapes::Shape;
use super::{telling, when};
use crate::acts::{LONGEST_NOTE, MOST_DRYING};
use crate::clock;
use crate::upkeep::{Days, Mix};
use crate::web::Ctx;
use load::{ChoreWord, SetState};
use logbook::book::BookError;
use logbook::fact::{About, ThingKind};
use logbook::view::{HandOver, Machine, Person, View};
use maud::{Markup, html};
use measure::{Instant, PersonId, Span};

/// After so long somebody should have taken it.
pub const NOBODY_AFTER: Span = Span::from_minutes(20);
/// A jar is named so long before its mix is past its time.
const JAR_SOON: Span = Span::from_minutes(4 * 60);
/// What was found not to be fine is told for so long.
const NOT_FINE_FOR: Span = Span::from_minutes(7 * 24 * 60);

/// A run in a machine.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Runs {
    /// Numbers of the machine and of the run.
    pub name: (u32, u32),
    /// When it usually ends.
    pub ends: Option<Instant>,
    /// How many pouches are in it.
    pub pouches: u32,
}

/// What the page shows.
#[derive(Debug, Clone, Default)]
pub struct Seen {
    /// Who works here.
    pub people: Vec<Person>,
    /// What runs.
    pub running: Vec<Runs>,
    /// Loads that are out and wait for their looks: machine and run.
    pub to_check: Vec<(u32, u32)>,
    /// About how many sets lie in the bin.
    pub bin: u32,
    /// How many pouches are set aside.
    pub aside: usize,
    /// Jars whose mix is past its time soon.
    pub jars: Vec<(u32, Instant)>,
    /// Chores that were found not to be fine.
    pub not_fine: Vec<(ChoreWord, About)>,
    /// All machines.
    pub machines: Vec<Machine>,
    /// What was offered last, and its note.
    pub offered: Option<(HandOver, Option<String>)>,
}

/// The page.
pub fn page(view: &View<'_>, ctx: &Ctx) -> Result<Markup, BookError> {
    let frame = Frame {
        title: ctx.words().say("hand-over-title"),
        place: Place::Now,
        desk: false,
        again_s: None,
        did: frame::did(view, ctx)?,
    };
    Ok(frame::page(ctx, &frame, &draw(ctx, &seen(view, ctx)?)))
}

fn seen(view: &View<'_>, ctx: &Ctx) -> Result<Seen, BookError> {
    let running = ctx.running.iter().map(|running| Runs {
        name: (running.run.machine_number, running.run.number),
        ends: running.usual.map(|usual| usual.median),
        pouches: running.run.pouches,
    });
    let open = view.runs_open()?.into_iter();
    let to_check = open.filter(|run| run.unloaded.is_some());
    let days = Days::read(view, ctx.now, &ctx.zone)?;
    let mut jars = Vec::new();
    for thing in view.things()?.into_iter().filter(|thing| thing.what == ThingKind::Jar) {
        let number = thing.number;
        if let Mix::Good(until) | Mix::Past(until) = days.jar(view.jar(thing)?).mix {
            jars.push((number, until));
        }
    }
    jars.retain(|(_, at)| *at <= ctx.now + JAR_SOON);
    jars.sort_by_key(|(number, at)| (*at, *number));
    let offered =
        view.last_hand_over()?.filter(|offered| when::same_day(ctx, offered.given.0, ctx.now));
    let note = |offered: &HandOver| {
        let kept = offered.note.map(|note| view.kept(&note)).transpose()?.flatten();
        Ok::<_, BookError>(kept.and_then(|bytes| String::from_utf8(bytes).ok()))
    };
    Ok(Seen {
        people: view.people()?,
        running: running.collect(),
        to_check: to_check.map(|run| (run.machine_number, run.number)).collect(),
        bin: view.kinds()?.iter().map(|kind| kind.used).sum(),
        aside: view.pouches_in(&[SetState::SetAside])?.len(),
        jars,
        not_fine: view.chores_not_fine(ctx.now - NOT_FINE_FOR)?,
        machines: view.machines()?,
        offered: match offered {
            Some(offered) => {
                let note = note(&offered)?;
                Some((offered, note))
            }
            None => None,
        },
    })
}

/// What was offered and nobody has taken for too long.
pub fn nobody_has_it(view: &View<'_>, ctx: &Ctx) -> Result<Option<HandOver>, BookError> {
    let open = |offered: &HandOver| {
        let at = offered.given.0;
        // Yesterday's is over with its day.
        offered.taken.is_none()
            && when::same_day(ctx, at, ctx.now)
            && clock::since(at, ctx.now) >= NOBODY_AFTER
    };
    Ok(view.last_hand_over()?.filter(open))
}

/// What stands on it.
pub fn draw(ctx: &Ctx, seen: &Seen) -> Markup {
    let words = ctx.words();
    if seen.people.len() < 2 {
        return parts::card(
            Ground::Fine,
            Shape::Hourglass,
            &words.say("hand-over-alone"),
            &html! {
                p { (words.say("hand-over-alone-how")) }
            },
        );
    }
    let open = seen.offered.as_ref().filter(|(offered, _)| offered.taken.is_none());
    html! {
        @match open {
            Some((offered, note)) => { (receive(ctx, seen, offered, note.as_deref())) }
            None => {
                @if let Some((offered, _)) = &seen.offered { (taken(ctx, seen, offered)) }
                (give(ctx, seen))
            }
        }
    }
}

/// The card of the giver.
fn give(ctx: &Ctx, seen: &Seen) -> Markup {
    let words = ctx.words();
    let card = html! {
        (five(ctx, seen, None))
        (Form::new("hand-over", "give").draw(ctx, &html! {
            (Counter {
                name: "drying", id: "drying", label: &words.say("hand-over-drying"),
                value: 0, most: MOST_DRYING,
            }.draw(ctx))
            p class="field" {
                label for="hand-over-note" { (words.say("hand-over-note")) }
                input id="hand-over-note" name="note" maxlength=(LONGEST_NOTE) autocomplete="off";
            }
            details {
                summary { (words.say("hand-over-to")) }
                fieldset class="choices" {
                    legend { (words.say("hand-over-to")) }
                    label { input type="radio" name="to" value="" checked; span { (words.say("hand-over-whoever")) } }
                    @for person in &seen.people {
                        label {
                            input type="radio" name="to" value=(person.person);
                            span { (sign_of(ctx, &seen.people, Some(person.person))) }
                        }
                    }
                }
            }
            (parts::sign_line(ctx, &seen.people, &words.say("hand-over-asks")))
        }))
    };
    parts::card(Ground::Fine, Shape::Hourglass, &words.say("hand-over-give"), &card)
}

/// The card of the receiver: the same five lines, as they are now.
fn receive(ctx: &Ctx, seen: &Seen, offered: &HandOver, note: Option<&str>) -> Markup {
    let words = ctx.words();
    let given = [
        ("at", when::moment(ctx, offered.given.0).into()),
        ("sign", sign_of(ctx, &seen.people, offered.given.1).into()),
    ];
    let to = offered
        .to
        .map_or_else(|| words.say("hand-over-whoever"), |to| sign_of(ctx, &seen.people, Some(to)));
    let id = offered.act.to_string();
    let card = html! {
        p class="fact" { (words.tell("hand-over-from", &given)) }
        p { (words.tell("hand-over-for", &[("sign", to.into())])) }
        (five(ctx, seen, Some((offered.drying, note))))
        (Form::new("take-over", &id).draw(ctx, &html! {
            (parts::hidden("given", offered.act))
            (parts::sign_line(ctx, &seen.people, &words.say("take-over-asks")))
        }))
    };
    parts::card(Ground::Turn, Shape::Hourglass, &words.say("hand-over-title"), &card)
}

fn taken(ctx: &Ctx, seen: &Seen, offered: &HandOver) -> Markup {
    let words = ctx.words();
    html! {
        @if let Some((at, who)) = offered.taken {
            p class="fact" {
                (words.tell("hand-over-has", &[
                    ("at", when::moment(ctx, at).into()),
                    ("sign", sign_of(ctx, &seen.people, who).into()),
                ]))
            }
        }
    }
}

fn sign_of(ctx: &Ctx, people: &[Person], who: Option<PersonId>) -> String {
    let person = people.iter().find(|person| Some(person.person) == who);
    person.and_then(|person| person.sign.clone()).unwrap_or_else(|| ctx.words().say("sign-gone"))
}

/// The five lines. Of what the giver said there is a note and a number, or a field for each.
fn five(ctx: &Ctx, seen: &Seen, said: Option<(u32, Option<&str>)>) -> Markup {
    let words = ctx.words();
    let watch = watch(ctx, seen, said.and_then(|(_, note)| note));
    let ifs = ifs(ctx, &seen.machines);
    let line = |key: &str, says: &[String]| {
        html! {
            li {
                h3 { (words.say(key)) }
                @if says.is_empty() { p { (words.say("hand-over-none")) } }
                @for said in says { p { (said) } }
            }
        }
    };
    let running: Vec<String> = seen.running.iter().map(|runs| running(ctx, runs)).collect();
    let mut waiting = vec![words.tell("bin-about", &[("count", seen.bin.into())])];
    for (machine, run) in &seen.to_check {
        let name = telling::run_name(ctx, *machine, *run);
        waiting.push(words.tell("hand-over-check", &[("run", name.into())]));
    }
    if let Some((drying, _)) = said {
        waiting.push(words.tell("hand-over-dries", &[("count", drying.into())]));
    }
    let aside: Vec<String> = match seen.aside {
        0 => Vec::new(),
        count => vec![words.tell("pouch-count", &[("count", count.into())])],
    };
    html! {
        ol class="five" {
            (line("hand-over-1", &running))
            (line("hand-over-2", &waiting))
            (line("hand-over-3", &aside))
            (line("hand-over-4", &watch))
            (line("hand-over-5", &ifs))
        }
    }
}

fn running(ctx: &Ctx, runs: &Runs) -> String {
    let words = ctx.words();
    let name = telling::run_name(ctx, runs.name.0, runs.name.1);
    let mut args = vec![("run", name.into()), ("count", runs.pouches.into())];
    match runs.ends {
        Some(ends) => {
            args.push(("at", when::clock_of(ctx, ends).into()));
            words.tell("hand-over-runs-until", &args)
        }
        None => words.tell("hand-over-runs", &args),
    }
}

fn watch(ctx: &Ctx, seen: &Seen, note: Option<&str>) -> Vec<String> {
    let words = ctx.words();
    let mut watch: Vec<String> = (seen.jars.iter())
        .map(|(jar, at)| {
            let at = when::moment(ctx, *at);
            words.tell("hand-over-jar", &[("jar", jar.to_string().into()), ("at", at.into())])
        })
        .collect();
    for (chore, about) in &seen.not_fine {
        let machine = match about {
            About::Machine(id) => seen.machines.iter().find(|row| row.machine == *id),
            _ => None,
        };
        let place = machine.map_or_else(String::new, |row| {
            let name = words.tell("machine-name", &[("machine", row.number.to_string().into())]);
            format!("{name}: ")
        });
        let chore = super::say::chore(ctx, chore);
        watch.push(format!(
            "{place}{}",
            words.tell("hand-over-not-fine", &[("chore", chore.into())])
        ));
    }
    watch.extend(note.map(str::to_owned));
    watch
}

/// What to do when a machine stops, from the machines that there are.
fn ifs(ctx: &Ctx, machines: &[Machine]) -> Vec<String> {
    let words = ctx.words();
    let usable: Vec<&Machine> = machines.iter().filter(|row| row.out_since.is_none()).collect();
    let number = |row: &Machine| row.number.to_string();
    match usable.as_slice() {
        [] => vec![words.say("if-no-machine")],
        [one] => vec![words.tell("if-only-machine", &[("machine", number(one).into())])],
        [first, second, ..] => vec![words.tell(
            "if-machine-stops",
            &[("machine", number(first).into()), ("other", number(second).into())],
        )],
    }
}
