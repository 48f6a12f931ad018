//! Now: what needs hands in the next hour, the most urgent first.

use super::frame::{self, Frame, Place};
use super::meanwhile::{self, Told};
use super::outage::{self, Outage};
use super::parts::{self, Caution, Form, Ground};
use super::shapes::Shape;
use super::strip;
use super::{hand_over, say, setup, spores, stop, telling, upkeep, wash, when};
use crate::clock;
use crate::web::Ctx;
use day::Expected;
use load::SetState;
use logbook::book::BookError;
use logbook::fact::StopReason;
use logbook::view::{HandOver, KindCount, Machine, Person, Pouch, Run, TakenCycle, View};
use maud::{Markup, html};
use measure::RunId;
use release::verdict::Outcome;

/// Read again every minute, while nobody has typed.
const AGAIN_S: u32 = 60;

/// What the page shows.
#[derive(Debug, Clone, Default)]
pub struct Seen {
    /// All machines.
    pub machines: Vec<Machine>,
    /// Who may sign.
    pub people: Vec<Person>,
    /// Runs that nobody has decided on, with how long such runs take.
    pub runs: Vec<(Run, Option<Expected>)>,
    /// Loose sets.
    pub kinds: Vec<KindCount>,
    /// Pouches waiting for a machine.
    pub bagged: usize,
    /// Pouches to take apart: set aside, or for use at once and too late.
    pub apart: Vec<Pouch>,
    /// Cycles that belong to no run.
    pub unclaimed: Vec<TakenCycle>,
    /// Two did different things, and nobody in charge has signed it yet.
    pub unseen: Vec<Told>,
    /// Runs that were in a machine while the box was off.
    pub outages: Vec<Outage>,
    /// The work was offered, and nobody has taken it.
    pub offered: Option<HandOver>,
    /// Spore tests that failed or whose answer is late.
    pub spores: Markup,
    /// Foot basins that wait, and chores that are due within the hour.
    pub soon: upkeep::Soon,
}

/// Records that no run has claimed, shown as cards; the rest is folded.
const UNCLAIMED: usize = 2;

/// The page.
pub fn page(view: &View<'_>, ctx: &Ctx) -> Result<Markup, BookError> {
    let mut runs = Vec::new();
    for run in view.runs_open()? {
        let usual = strip::usual(view, &run)?;
        runs.push((run, usual));
    }
    let late = |pouch: &Pouch| {
        pouch.state == SetState::SetAside || pouch.use_until.is_some_and(|until| until < ctx.now)
    };
    let outages = outage::outages(view)?;
    // Their own card says what to do with them.
    let cut = |pouch: &Pouch| {
        pouch.stopped == Some(StopReason::NotSure)
            && outages.iter().any(|cut| Some(cut.run) == pouch.run)
    };
    let seen = Seen {
        machines: view.machines()?,
        people: view.people()?,
        runs,
        kinds: view.kinds()?,
        bagged: view.pouches_in(&[SetState::Bagged])?.len(),
        apart: view
            .pouches_in(&[SetState::SetAside, SetState::UseNow])?
            .into_iter()
            .filter(|pouch| late(pouch) && !cut(pouch))
            .collect(),
        outages: outages.clone(),
        offered: view.last_hand_over()?.filter(|offered| {
            offered.taken.is_none() && when::same_day(ctx, offered.given.0, ctx.now)
        }),
        unclaimed: view.taken_unclaimed()?.into_iter().filter(could_be_a_run).collect(),
        unseen: meanwhile::unseen(view, ctx)?,
        spores: spores::on_now(view, ctx)?,
        soon: upkeep::soon_of(view, ctx)?,
    };
    let frame = Frame {
        title: ctx.words().say("now-title"),
        place: Place::Now,
        desk: false,
        again_s: Some(AGAIN_S),
        did: frame::did(view, ctx)?,
    };
    Ok(frame::page(ctx, &frame, &draw(ctx, &seen)))
}

/// What stands on it.
pub fn draw(ctx: &Ctx, seen: &Seen) -> Markup {
    let words = ctx.words();
    if seen.machines.is_empty() || seen.people.is_empty() {
        return setup::first_steps(ctx, &seen.machines, &seen.people);
    }
    let (to_check, running): (Vec<_>, Vec<_>) =
        seen.runs.iter().partition(|(run, _)| run.unloaded.is_some());
    let used: u32 = seen.kinds.iter().map(|kind| kind.used).sum();
    let washed: u32 = seen.kinds.iter().map(|kind| kind.washed).sum();
    let out: Vec<_> = seen.machines.iter().filter(|machine| machine.out_since.is_some()).collect();
    let quiet = seen.runs.is_empty()
        && seen.apart.is_empty()
        && seen.unclaimed.is_empty()
        && seen.unseen.is_empty()
        && seen.outages.is_empty()
        && seen.spores.0.is_empty()
        && used + washed == 0
        && seen.soon == upkeep::Soon::default()
        && seen.bagged == 0;
    html! {
        @if !seen.runs.is_empty() { (parts::cautions(ctx, &[Caution::Hot])) }
        div class="cards" {
            (seen.spores)
            (meanwhile::cards(ctx, &seen.unseen, &seen.people))
            @for cut in &seen.outages { (outage::card(ctx, cut)) }
            @if let Some(offered) = &seen.offered { (offered_card(ctx, offered, &seen.people)) }
            @for (run, _) in &to_check { (check_card(ctx, run)) }
            @for (run, usual) in &running { (running_card(ctx, run, *usual, &seen.people)) }
            @if used > 0 { (wash::wash_card(ctx, &seen.kinds, &seen.people)) }
            @if washed > 0 { (way_card(ctx, Shape::Waves, ("washed-waiting", washed), ("/wash", "go-pack"))) }
            @if seen.bagged > 0 {
                (way_card(ctx, Shape::Envelope, ("bagged-waiting", seen.bagged as u32), ("/start", "go-start")))
            }
            @for cycle in seen.unclaimed.iter().take(UNCLAIMED) { (unclaimed_card(ctx, cycle)) }
            @if let Some(rest) = seen.unclaimed.get(UNCLAIMED..).filter(|rest| !rest.is_empty()) {
                (more_unclaimed(ctx, rest))
            }
            @for (run, pouches) in by_run(&seen.apart) { (apart_card(ctx, run, &pouches, seen)) }
            @for machine in out { (out_card(ctx, machine)) }
            (upkeep::soon_cards(ctx, &seen.soon))
            @if quiet { p class="fact quiet" { (words.say("now-quiet")) } }
        }
        p class="ways" {
            (parts::way("/chair", Shape::Chair, &words.say("go-chair")))
            (parts::way("/wash", Shape::Waves, &words.say("wash-title")))
            (parts::way("/start", Shape::Drum, &words.say("go-start")))
            (parts::way("/plan", Shape::Tape, &words.say("go-plan")))
            (parts::way("/visits", Shape::Hourglass, &words.say("visits-title")))
        }
        p class="ways quiet-ways" {
            @if seen.people.len() > 1 {
                a class="key" href="/hand-over" { (words.say("go-hand-over")) }
            }
            button type="button" class="key" hidden data-wipes=(words.say("wipe-says")) { (words.say("wipe-glass")) }
        }
    }
}

/// Offered, and not taken; after a while nobody has it.
fn offered_card(ctx: &Ctx, offered: &HandOver, people: &[Person]) -> Markup {
    let words = ctx.words();
    let late = clock::since(offered.given.0, ctx.now) >= hand_over::NOBODY_AFTER;
    let heading = words.say(if late { "nobody-has-it" } else { "hand-over-title" });
    let sign = people.iter().find(|person| Some(person.person) == offered.given.1);
    let sign = sign.and_then(|person| person.sign.clone());
    let sign = sign.unwrap_or_else(|| words.say("sign-gone"));
    let args = [("at", when::moment(ctx, offered.given.0).into()), ("sign", sign.into())];
    let ground = if late { Ground::Turn } else { Ground::Fine };
    parts::card(
        ground,
        Shape::Hourglass,
        &heading,
        &html! {
            p { (words.tell("hand-over-from", &args)) }
            p { a class="key main-key" href="/hand-over" { (words.say("go-take-over")) } }
        },
    )
}

fn check_card(ctx: &Ctx, run: &Run) -> Markup {
    let words = ctx.words();
    if run.outcome == Some(Outcome::NotLethal) {
        // Nothing is waited for but hands that take it apart: that is a stop.
        return stop::card(
            ctx,
            &telling::run_name(ctx, run.machine_number, run.number),
            &html! {
                p class="fact" { (words.say(say::outcome_key(run.outcome))) }
                p { a class="key main-key" href=(format!("/run/{}", run.run)) { (words.say("go-check")) } }
            },
        );
    }
    let heading = words.tell("check-pouches", &[("count", run.pouches.into())]);
    parts::card(
        Ground::Turn,
        Shape::Hourglass,
        &heading,
        &html! {
            p class="fact" { (telling::run_name(ctx, run.machine_number, run.number)) }
            p { (say::outcome(ctx, run.outcome)) }
            @if let Some(at) = run.unloaded { p { (strip::since_unloaded(ctx, at)) } }
            p { a class="key main-key" href=(format!("/run/{}", run.run)) { (words.say("go-check")) } }
        },
    )
}

/// A run in its machine: the strip, and a sign takes the load out.
pub fn running_card(ctx: &Ctx, run: &Run, usual: Option<Expected>, people: &[Person]) -> Markup {
    let heading = telling::run_name(ctx, run.machine_number, run.number);
    let then = format!("/run/{}", run.run);
    let id = run.run.to_string();
    let form = Form { then: Some(&then), ..Form::new("unload", &id) };
    parts::card(
        Ground::Fine,
        Shape::Drum,
        &heading,
        &html! {
            (strip::draw(ctx, run, usual))
            (form.draw(ctx, &html! {
                (parts::hidden("run", run.run))
                (parts::sign_line(ctx, people, &ctx.words().say("unload-asks")))
            }))
            p { a href=(then) { (ctx.words().say("go-run")) } }
        },
    )
}

fn way_card(ctx: &Ctx, shape: Shape, says: (&str, u32), way: (&str, &str)) -> Markup {
    let words = ctx.words();
    parts::card(
        Ground::Turn,
        shape,
        &words.tell(says.0, &[("count", says.1.into())]),
        &html! {
            p { a class="key main-key" href=(way.0) { (words.say(way.1)) } }
        },
    )
}

/// A leak test belongs to no run; its line is in the log.
fn could_be_a_run(cycle: &TakenCycle) -> bool {
    !matches!(cycle.outcome, Some(Outcome::LeakPass | Outcome::LeakFail))
}

/// The others, folded: a stick full of old files must not bury the work of the day.
fn more_unclaimed(ctx: &Ctx, rest: &[TakenCycle]) -> Markup {
    let words = ctx.words();
    html! {
        details class="card fine" {
            summary { (words.tell("unclaimed-more", &[("count", rest.len().into())])) }
            ul {
                @for cycle in rest {
                    li { a href=(format!("/unclaimed/{}/{}", cycle.record, cycle.cycle)) {
                        @match cycle.start_clock.as_deref() {
                            Some(clock) => (when::machine_clock(ctx, clock)),
                            None => (when::moment(ctx, cycle.taken)),
                        }
                    } }
                }
            }
        }
    }
}

fn unclaimed_card(ctx: &Ctx, cycle: &TakenCycle) -> Markup {
    let words = ctx.words();
    parts::card(
        Ground::Turn,
        Shape::Tape,
        &words.say("unclaimed-title"),
        &html! {
            @if let Some(clock) = &cycle.start_clock {
                p class="fact" { (words.tell("unclaimed-clock", &[("clock", when::machine_clock(ctx, clock).into())])) }
            }
            p { (say::outcome(ctx, cycle.outcome)) }
            p {
                a class="key main-key" href=(format!("/unclaimed/{}/{}", cycle.record, cycle.cycle)) {
                    (words.say("go-claim"))
                }
            }
        },
    )
}

/// Pouches of one run together, in the order in which the runs come up.
fn by_run(pouches: &[Pouch]) -> Vec<(Option<RunId>, Vec<&Pouch>)> {
    let mut groups: Vec<(Option<RunId>, Vec<&Pouch>)> = Vec::new();
    for pouch in pouches {
        match groups.iter_mut().find(|(run, _)| *run == pouch.run) {
            Some((_, group)) => group.push(pouch),
            None => groups.push((pouch.run, vec![pouch])),
        }
    }
    groups
}

fn apart_card(ctx: &Ctx, run: Option<RunId>, pouches: &[&Pouch], seen: &Seen) -> Markup {
    let words = ctx.words();
    let mut reasons: Vec<StopReason> = Vec::new();
    for why in pouches.iter().filter_map(|pouch| pouch.stopped) {
        if !reasons.contains(&why) {
            reasons.push(why);
        }
    }
    let on = run.map_or_else(|| "none".to_owned(), |run| run.to_string());
    let heading = words.tell("apart-title", &[("count", pouches.len().into())]);
    stop::card(
        ctx,
        &heading,
        &html! {
            @for why in &reasons { p { (words.say(say::stop_key(*why))) } }
            @if reasons.is_empty() { p { (words.say("stop-too-late")) } }
            p class="codes" { @for pouch in pouches { span class="code" { (pouch.code) } " " } }
            p { (words.say("apart-do")) }
            @if let Some(run) = run { p { a href=(format!("/run/{run}")) { (words.say("go-run")) } } }
            details {
                summary { (words.say("apart-open")) }
                (Form::new("apart", &on).draw(ctx, &html! {
                    @for pouch in pouches { (parts::hidden("pouch", pouch.pouch)) }
                    (parts::sign_line(ctx, &seen.people, &words.say("apart-asks")))
                }))
            }
        },
    )
}

fn out_card(ctx: &Ctx, machine: &Machine) -> Markup {
    let words = ctx.words();
    let name = words.tell("machine-name", &[("machine", machine.number.to_string().into())]);
    stop::card(
        ctx,
        &name,
        &html! {
            p class="fact" { (words.say("machine-out")) }
            @if let Some(since) = machine.out_since { p { (words.say("since")) " " (parts::time(ctx, since)) } }
            p { a href="/machine" { (words.say("place-machine")) } }
        },
    )
}
