//! How many sets to own: the busiest day that is booked, lived many times with what may come in
//! between, for each number of sets; and what else would buy time.

mod curve;
mod history;

use super::frame::{self, Frame, Place};
use super::parts::{self, Ground};
use super::shapes::Shape;
use super::when;
use crate::clock;
use crate::planning::explain::kind_word;
use crate::planning::today::{self, Today};
use crate::web::Ctx;
use crate::words::Arg;
use day::plan::{Carry, MOST_SETS, Problem, Unusable};
use day::sets::{Assumptions, Basis, Bought, Confirmed, Days, Event, Point, Prices, Purchase};
use day::sets::{buy, confirm, curve as shares, tally};
use logbook::book::BookError;
use logbook::view::View;
use maud::{Markup, html};
use measure::{Instant, Span};
use std::sync::{Mutex, PoisonError};

/// How far ahead the busiest day is looked for, days.
const LOOK_AHEAD: u32 = 7;
/// Random days: about two in 100 either way, and done while somebody waits for the page.
const DAYS: u32 = 2_000;
/// Days that are planned as well.
const PLANNED: u32 = 30;
/// The page says the same each time it is opened.
const SEED: u64 = 1;
/// How many sets fewer and more are shown than where the curve bends.
const AROUND: (u32, u32) = (4, 3);
/// Random days for finding the bend.
const ROUGH: u32 = 100;
/// A lunch longer by so many minutes.
const LUNCH_MIN: u32 = 30;
/// Nobody waits on so many days: enough (ours: about one day a month is bad).
const ENOUGH: f64 = 0.95;

/// What was found out about one kind.
#[derive(Debug, Clone)]
pub struct Curve {
    /// Its name in the book.
    pub kind: String,
    /// As many as are owned.
    pub now: Point,
    /// The shares, by number of sets.
    pub points: Vec<Point>,
}

/// What the page shows.
#[derive(Debug, Clone)]
pub struct Seen {
    /// The day that random days grow out of.
    pub day: Instant,
    /// How many random days there are.
    pub days: u32,
    /// How they differ from the booked one.
    pub assumptions: Assumptions,
    /// The kinds that the day asks for.
    pub curves: Vec<Curve>,
    /// Some of the days as owned now, planned.
    pub confirmed: Confirmed,
    /// What else would buy time; sets of a kind by its place in the day's kinds.
    pub bought: Vec<Bought>,
    /// The day's kinds.
    pub kinds: Vec<String>,
    /// What things cost.
    pub prices: Prices,
}

/// The page.
pub fn page(view: &View<'_>, ctx: &Ctx) -> Result<Markup, BookError> {
    let seen = match busiest(view, ctx)? {
        // Where a day cannot be planned, the page of the plan says why.
        Some(today) => {
            ctx.lived.find(&today.problem, today.origin, history::counted(view, ctx.now)?)
        }
        None => None,
    };
    let frame = Frame {
        title: ctx.words().say("own-title"),
        place: Place::Now,
        desk: true,
        again_s: None,
        did: frame::did(view, ctx)?,
    };
    Ok(frame::page(ctx, &frame, &draw(ctx, seen.as_ref())))
}

/// The day with the most appointments from today on, as it would begin with every set ready.
fn busiest(view: &View<'_>, ctx: &Ctx) -> Result<Option<Today>, BookError> {
    let mut busiest: Option<Today> = None;
    let mut dawn = clock::day_start(ctx.now, &ctx.zone);
    for _ in 0..LOOK_AHEAD {
        let most = busiest.as_ref().map_or(0, |known| known.problem.services.len());
        if let Some(today) = today::today(view, dawn, &ctx.zone)?
            && today.problem.services.len() > most
        {
            busiest = Some(today);
        }
        // Of a civil day no more than 25 hours.
        dawn = clock::day_start(dawn + Span::from_minutes(26 * 60), &ctx.zone);
    }
    if let Some(today) = &mut busiest {
        at_rest(&mut today.problem, &today.spares);
    }
    Ok(busiest)
}

/// Where sets and machines are now says nothing about that morning.
fn at_rest(problem: &mut Problem, spares: &[u32]) {
    for (k, kind) in problem.kinds.iter_mut().enumerate() {
        kind.ready = kind.owned.saturating_sub(spares.get(k).copied().unwrap_or(0));
    }
    problem.carry.fill(Carry::default());
    for machine in &mut problem.machines {
        machine.free_from = 0;
        machine.warm_until = None;
    }
}

/// What was found out last, kept for as long as the same day would be lived: that takes most of a
/// second.
#[derive(Default)]
pub struct Lived {
    last: Mutex<Option<Asked>>,
}

/// What was asked and what was found.
struct Asked {
    problem: Problem,
    day: Instant,
    assumptions: Assumptions,
    found: Option<Seen>,
}

impl Lived {
    fn find(&self, problem: &Problem, day: Instant, assumptions: Assumptions) -> Option<Seen> {
        // What is kept is whole, whatever became of a thread that held the lock.
        let mut last = self.last.lock().unwrap_or_else(PoisonError::into_inner);
        let same = |asked: &&Asked| {
            asked.problem == *problem && asked.day == day && asked.assumptions == assumptions
        };
        if let Some(asked) = last.as_ref().filter(same) {
            return asked.found.clone();
        }
        let found = find(problem, day, assumptions, (DAYS, PLANNED)).ok().flatten();
        let problem = problem.clone();
        *last = Some(Asked { problem, day, assumptions, found: found.clone() });
        found
    }
}

/// Lives the day many times; so many random days, and so many of them planned as well.
pub fn find(
    problem: &Problem,
    day: Instant,
    assumptions: Assumptions,
    (number, planned): (u32, u32),
) -> Result<Option<Seen>, Unusable> {
    let threads = std::thread::available_parallelism().map_or(1, usize::from);
    let days = Days { assumptions: &assumptions, days: number, seed: SEED, threads };
    let asked = |k: usize| problem.services.iter().any(|s| s.needs.iter().any(|need| need.0 == k));
    let asked: Vec<usize> = (0..problem.kinds.len()).filter(|&k| asked(k)).collect();
    if asked.is_empty() {
        return Ok(None);
    }
    let mut curves = Vec::new();
    for &k in &asked {
        let kind = &problem.kinds[k];
        let bend = bend(problem, k, &days)?;
        let counts = bend.saturating_sub(AROUND.0)..=(bend + AROUND.1).min(MOST_SETS);
        let points = shares(problem, k, counts, &days)?;
        let now = shares(problem, k, kind.owned..=kind.owned, &days)?;
        curves.extend(now.into_iter().map(|now| Curve {
            kind: kind.id.clone(),
            now,
            points: points.clone(),
        }));
    }
    let before = tally(problem, &days)?;
    let prices = Prices::default();
    let sets = asked.iter().map(|&k| Purchase::Set(k));
    let all = sets.chain([Purchase::Machine, Purchase::Lunch(LUNCH_MIN)]);
    // What cannot be bought, such as a second machine like none, is not offered.
    let bought = all.filter_map(|one| buy(problem, &before, one, &days, &prices).ok()).collect();
    Ok(Some(Seen {
        day,
        days: number,
        assumptions,
        curves,
        confirmed: confirm(problem, &Days { days: planned, ..days })?,
        bought,
        kinds: problem.kinds.iter().map(|kind| kind.id.clone()).collect(),
        prices,
    }))
}

/// The fewest sets that do on enough days, or with which as much is reached as with any number.
fn bend(problem: &Problem, k: usize, days: &Days<'_>) -> Result<u32, Unusable> {
    let needs = problem.services.iter().flat_map(|service| &service.needs);
    // Each appointment and a walk-in for each: nobody asks for more.
    let most = 2 * needs.filter(|need| need.0 == k).map(|need| need.1).sum::<u32>();
    let points = shares(problem, k, 0..=most.min(MOST_SETS), &Days { days: ROUGH, ..*days })?;
    let reached = points.iter().map(|point| point.tally.share().share).fold(0.0, f64::max);
    let bend = points.iter().find(|point| point.tally.share().share >= reached.min(ENOUGH));
    Ok(bend.map_or(0, |point| point.owned))
}

/// What stands on it.
pub fn draw(ctx: &Ctx, seen: Option<&Seen>) -> Markup {
    let words = ctx.words();
    let Some(seen) = seen else {
        return parts::card(
            Ground::Fine,
            Shape::Hourglass,
            &words.say("own-none"),
            &html! {
                p { (words.say("own-none-do")) }
                p class="ways" { (parts::way("/visits", Shape::Chair, &words.say("go-visits"))) }
            },
        );
    };
    html! {
        p {
            (words.tell("own-how", &[
                ("day", when::day_of(ctx, seen.day).into()),
                ("days", seen.days.into()),
            ]))
        }
        @for curve in &seen.curves { (one_kind(ctx, curve)) }
        (planned(ctx, seen))
        @if !seen.bought.is_empty() { (bought(ctx, seen)) }
        (assumed(ctx, &seen.assumptions))
    }
}

fn one_kind(ctx: &Ctx, curve: &Curve) -> Markup {
    let words = ctx.words();
    let kind = kind_word(words, &curve.kind);
    let heading = words
        .tell("own-kind", &[("kind", kind.as_str().into()), ("owned", curve.now.owned.into())]);
    let enough = curve.points.iter().find(|point| point.tally.share().share >= ENOUGH);
    html! {
        section class="card" {
            h2 { (Shape::Envelope.draw()) span { (heading) } }
            p class="fact" { (words.tell("own-now", &of_100(&curve.now))) }
            (curve::draw(ctx, curve))
            p {
                @match enough {
                    Some(point) if point.owned <= curve.now.owned => {
                        (words.tell("own-enough-now", &[("owned", point.owned.into())]))
                    }
                    Some(point) => (words.tell("own-enough", &[("owned", point.owned.into())])),
                    None => (words.say("own-never-enough")),
                }
            }
        }
    }
}

/// A share in days of 100, with its interval.
fn of_100(point: &Point) -> [(&'static str, Arg); 4] {
    let share = point.tally.share();
    let whole = |value: f64| days_of_100(value).into();
    [
        ("owned", point.owned.into()),
        ("share", whole(share.share)),
        ("low", whole(share.low)),
        ("high", whole(share.high)),
    ]
}

/// Whole days; what is short of all of them, or above none, never reads as all or none.
fn days_of_100(share: f64) -> String {
    let days = (100.0 * share).round();
    let days = if share > 0.0 && share < 1.0 { days.clamp(1.0, 99.0) } else { days };
    format!("{days:.0}")
}

fn planned(ctx: &Ctx, seen: &Seen) -> Markup {
    let Confirmed { days, policy, planner } = seen.confirmed;
    let args = [("days", days.into()), ("policy", policy.into()), ("planner", planner.into())];
    html! { p class="known" { span { (ctx.words().tell("own-planned", &args)) } } }
}

fn bought(ctx: &Ctx, seen: &Seen) -> Markup {
    let words = ctx.words();
    html! {
        section class="card" {
            h2 { (Shape::Hourglass.draw()) span { (words.say("own-buy")) } }
            ul { @for one in &seen.bought { li { (purchase(ctx, seen, one)) } } }
            p class="known" {
                span {
                    (words.tell("own-prices", &[
                        ("waiting", money(seen.prices.waiting).into()),
                        ("set", money(seen.prices.set).into()),
                        ("machine", money(seen.prices.machine).into()),
                        ("lunch", money(seen.prices.lunch_a_day).into()),
                        ("days", money(seen.prices.working_days).into()),
                    ]))
                }
            }
        }
    }
}

fn purchase(ctx: &Ctx, seen: &Seen, one: &Bought) -> Markup {
    let words = ctx.words();
    let what = match one.purchase {
        Purchase::Set(k) => {
            let kind = seen.kinds.get(k).map(|kind| kind_word(words, kind)).unwrap_or_default();
            words.tell("own-buy-set", &[("kind", kind.into())])
        }
        Purchase::Machine => words.say("own-buy-machine"),
        Purchase::Lunch(minutes) => words.tell("own-buy-lunch", &[("count", minutes.into())]),
    };
    let year = |share: f64| money(share * seen.prices.working_days);
    let args = [
        ("days", money(one.days_a_year).into()),
        ("low", year(one.gain.low).into()),
        ("high", year(one.gain.high).into()),
        ("clients", money(one.clients_a_year).into()),
        ("money", money(one.saved_a_year).into()),
    ];
    html! {
        strong { (what) } " "
        // An interval that holds nothing says that nothing was seen.
        @if one.gain.low > 0.0 { (words.tell("own-gain", &args)) } @else { (words.say("own-no-gain")) }
    }
}

/// Whole days, clients and money; nothing is never minus nothing.
fn money(value: f64) -> String {
    format!("{:.0}", value.round() + 0.0)
}

fn assumed(ctx: &Ctx, assumptions: &Assumptions) -> Markup {
    let words = ctx.words();
    let line = |event: Event| {
        let args = [
            ("share", format!("{:.0}", 100.0 * assumptions[event].share).into()),
            ("late", assumptions.late_most_min.into()),
            ("longer", assumptions.overrun_most_min.into()),
        ];
        words.tell(event_key(event), &args)
    };
    html! {
        section class="card" {
            h2 { (Shape::Tape.draw()) span { (words.say("own-assumed")) } }
            ul {
                @for event in Event::ALL {
                    li {
                        (line(event)) " "
                        @match assumptions[event].basis {
                            Basis::Assumed => em { (words.say("own-assumption")) },
                            Basis::Counted(of) => em { (words.tell("own-counted", &[("of", of.into())])) },
                        }
                    }
                }
            }
            p { (words.say("own-begin")) }
        }
    }
}

const fn event_key(event: Event) -> &'static str {
    match event {
        Event::WalkIn => "own-walk-ins",
        Event::NoShow => "own-no-shows",
        Event::Late => "own-late",
        Event::Overrun => "own-overruns",
        Event::Failed => "own-failed",
        Event::Wet => "own-wet",
    }
}

#[cfg(test)]
mod tests {
    use super::days_of_100;

    #[test]
    fn nearly_all_days_are_not_all() {
        let check =
            |share: f64, expected: &str| assert_eq!(days_of_100(share), expected, "{share}");
        check(0.0, "0");
        check(0.001, "1");
        check(0.504, "50");
        check(0.997, "99");
        check(1.0, "100");
    }
}
