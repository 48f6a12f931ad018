//! The strip of a running run: since when, and when it usually ends here. MEASURED as far as the
//! machine's file has a word on it, BY CLOCK where it has none or falls silent; never a word that
//! the run is over.

use super::shapes::Shape;
use super::{parts, telling, units, when};
use crate::clock;
use crate::live::{Live, Phase, Word};
use crate::web::Ctx;
use day::{Expected, expected_end};
use logbook::book::BookError;
use logbook::view::{Run, View};
use maud::{Markup, html};
use measure::{Instant, Span};

/// How many earlier runs are looked at.
const RUNS: u32 = 30;
/// A machine that has said nothing for longer has fallen silent (ours: the slowest records have a
/// line every ten seconds).
const SILENT: Span = Span::from_seconds(30);
/// A silence is told in seconds up to here, then in minutes.
const IN_SECONDS: Span = Span::from_seconds(120);

/// A run that is in a machine now.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Running {
    /// The run.
    pub run: Run,
    /// How long such runs take here.
    pub usual: Option<Expected>,
    /// What its machine's file said last.
    pub word: Option<Word>,
}

/// The runs that are in a machine now, the one that was started first in front.
pub fn running(view: &View<'_>, live: &Live) -> Result<Vec<Running>, BookError> {
    let mut all = Vec::new();
    for run in view.runs_open()?.into_iter().filter(|run| run.unloaded.is_none()) {
        all.push(Running { usual: usual(view, &run)?, word: live.word_on(run.run), run });
    }
    Ok(all)
}

/// When the run should be over, by how long runs like it took here; `None` where there are too
/// few to tell.
pub fn usual(view: &View<'_>, run: &Run) -> Result<Option<Expected>, BookError> {
    let earlier = view.last_runs(run.machine, run.programme.as_deref(), RUNS)?;
    let lengths: Vec<Span> = earlier
        .iter()
        .filter(|earlier| earlier.run != run.run && !earlier.undone)
        .filter_map(|earlier| Some(earlier.unloaded? - earlier.started.0))
        .collect();
    Ok(expected_end(run.started.0, &lengths))
}

/// Is the time up, as far as anybody can tell from outside? By the slowest of earlier runs, or by a
/// record that has let the air in and says nothing more.
pub fn time_is_up(now: Instant, usual: Option<Expected>, word: Option<Word>) -> bool {
    match word {
        Some(word) if clock::since(word.heard, now) <= SILENT => false,
        Some(word) if word.phase == Some(Phase::AirIn) => true,
        _ => usual.is_some_and(|usual| now > usual.latest),
    }
}

/// One thin line for each running run, on every page. Empty where none runs.
pub fn every(ctx: &Ctx) -> Markup {
    let words = ctx.words();
    // A page that shows a measured run looks at its strip again by itself.
    let heard = ctx.running.iter().any(|running| running.word.is_some());
    html! {
        section id="strip" class="strips" aria-label=(words.say("strip-running"))
            data-heard=[heard.then_some("yes")] {
            @if !ctx.running.is_empty() {
                ul {
                    @for running in &ctx.running { li { (line(ctx, running)) } }
                }
            }
        }
    }
}

fn line(ctx: &Ctx, running: &Running) -> Markup {
    let run = &running.run;
    html! {
        a href=(format!("/run/{}", run.run)) {
            (Shape::Drum.draw())
            strong { (telling::run_name(ctx, run.machine_number, run.number)) }
            span { (ends(ctx, running.usual, running.word)) }
        }
        (how(ctx, running.usual, run.started.0, running.word))
    }
}

/// When it usually ends, or that its time is up.
fn ends(ctx: &Ctx, usual: Option<Expected>, word: Option<Word>) -> String {
    let words = ctx.words();
    match usual {
        _ if time_is_up(ctx.now, usual, word) => words.say("strip-time-up"),
        Some(usual) => {
            words.tell("strip-ends", &[("at", when::clock_of(ctx, usual.median).into())])
        }
        None => words.say("strip-too-few"),
    }
}

/// How that is known: what the machine says and how old that is, or by the clock.
fn how(ctx: &Ctx, usual: Option<Expected>, started: Instant, word: Option<Word>) -> Markup {
    let words = ctx.words();
    let by_clock = || match usual {
        Some(usual) => words.tell("strip-clock-usual", &spread(usual, started)),
        None => words.say("strip-clock"),
    };
    let Some(word) = word else {
        return html! { span class="how" { (by_clock()) } };
    };
    let age = clock::since(word.heard, ctx.now);
    let seconds = |span: Span| (span.millis() / 1_000).to_string();
    if age <= SILENT {
        return html! {
            span class="how measured" {
                (measured(ctx, word)) " "
                (words.tell("strip-word", &[("seconds", seconds(age).into())]))
            }
        };
    }
    let silence = if age <= IN_SECONDS {
        words.tell("strip-silent", &[("seconds", seconds(age).into())])
    } else {
        words.tell("strip-silent-long", &[("minutes", age.minutes().to_string().into())])
    };
    html! {
        span class="how silent" { strong { (silence) } " " (by_clock()) }
    }
}

fn spread(usual: Expected, started: Instant) -> [(&'static str, crate::words::Arg); 2] {
    [
        ("low", (usual.earliest - started).minutes().to_string().into()),
        ("high", (usual.latest - started).minutes().to_string().into()),
    ]
}

/// Phase, temperature, time at temperature so far: what the last line of the file holds.
fn measured(ctx: &Ctx, word: Word) -> String {
    let words = ctx.words();
    let temperature = units::temperature(ctx, word.temp_mc);
    let mut told = match word.phase {
        Some(phase) => words.tell(
            "strip-measured",
            &[("phase", words.say(phase_key(phase)).into()), ("temperature", temperature.into())],
        ),
        None => words.tell("strip-measured-only", &[("temperature", temperature.into())]),
    };
    if word.held_ms > 0 {
        told.push(' ');
        told += &words.tell("strip-held", &[("held", when::length(word.held_ms).into())]);
    }
    told
}

const fn phase_key(phase: Phase) -> &'static str {
    match phase {
        Phase::HeatingUp => "phase-heating-up",
        Phase::AirOut => "phase-air-out",
        Phase::AtTemperature => "phase-at-temperature",
        Phase::SteamOut => "phase-steam-out",
        Phase::Drying => "phase-drying",
        Phase::AirIn => "phase-air-in",
    }
}

/// The strip on the card of a run.
pub fn draw(ctx: &Ctx, run: &Run, usual: Option<Expected>) -> Markup {
    let words = ctx.words();
    let started = run.started.0;
    let word = ctx.running.iter().find(|known| known.run.run == run.run).and_then(|r| r.word);
    html! {
        div class="strip" {
            p class="fact" { (ends(ctx, usual, word)) }
            @if let Some(usual) = usual { (bar(ctx.now - started, started, usual)) }
            p {
                (words.tell("strip-started", &[("at", when::moment(ctx, started).into())])) " "
                @if let Some(usual) = usual {
                    (words.tell("strip-usual", &[
                        ("low", (usual.earliest - started).minutes().to_string().into()),
                        ("high", (usual.latest - started).minutes().to_string().into()),
                        ("runs", usual.from.into()),
                    ]))
                }
            }
            @match word {
                Some(_) => { p class="known" { (Shape::Drum.draw()) (how(ctx, usual, started, word)) } }
                None => {
                    p class="known" { (Shape::Drum.draw()) span { (words.say("strip-by-clock")) } }
                }
            }
        }
    }
}

/// Time gone against the usual span. The same is said in words above it.
fn bar(gone: Span, started: Instant, usual: Expected) -> Markup {
    let (low, high) = (usual.earliest - started, usual.latest - started);
    let end = (high.millis() * 11 / 10).max(1);
    let x = |span: Span| span.millis().clamp(0, end) * 1_000 / end;
    html! {
        svg class="strip-bar" viewBox="0 0 1000 40" preserveAspectRatio="none" aria-hidden="true"
            focusable="false" {
            rect class="strip-ground" x="0" y="0" width="1000" height="40" {}
            rect class="strip-gone" x="0" y="0" width=(x(gone)) height="40" {}
            rect class="strip-usual" x=(x(low)) y="4" width=((x(high) - x(low)).max(8)) height="32" {}
        }
    }
}

/// Until when a load that came out of its machine is hot, and whether the salon said how long it
/// cools; otherwise that is typical.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Hot {
    /// Until then.
    pub until: Instant,
    /// The salon's own figure.
    pub said: bool,
}

/// Is the load of this run still hot at `now`? `None`: it is not, or is still in the machine.
pub fn hot(view: &View<'_>, run: &Run, now: Instant) -> Result<Option<Hot>, BookError> {
    let Some(out) = run.unloaded else { return Ok(None) };
    let figures = view.machine_figures(run.machine)?;
    let named = |word: &str| Some(word) == run.programme.as_deref();
    let known = figures.value.cycles.iter().find(|cycle| named(cycle.programme.word()));
    // A programme that nobody knows cools as long as the slowest.
    let minutes = match known {
        Some(cycle) => cycle.cool_min,
        None => figures.value.cycles.iter().map(|cycle| cycle.cool_min).max().unwrap_or(0),
    };
    let until = out + Span::from_minutes(i64::from(minutes));
    Ok((now < until).then_some(Hot { until, said: figures.said.is_some() }))
}

/// Since when a run is over, as far as a person said so.
pub fn since_unloaded(ctx: &Ctx, at: Instant) -> Markup {
    html! { (ctx.words().say("unloaded-at")) " " (parts::time(ctx, at)) }
}
