//! Part 3: the runs, one line each, with late, copied and corrected ones marked.

use super::table::{is_late, marks, sign, table};
use super::{Kept, day, full};
use crate::pages::{say, telling, when};
use crate::web::Ctx;
use crate::words::Arg;
use logbook::fact::{Body, Fact, Known};
use logbook::view::ShownRun;
use maud::{Markup, html};
use measure::PersonId;
use release::verdict::Outcome;

const HEADS: [&str; 10] = [
    "folder-col-day",
    "folder-col-run",
    "folder-col-end",
    "folder-col-programme",
    "folder-col-inside",
    "folder-col-steam",
    "folder-col-known",
    "folder-col-looks",
    "folder-col-signs",
    "folder-col-notes",
];

/// One line for each run.
pub fn draw(ctx: &Ctx, kept: &Kept) -> Markup {
    let words = ctx.words();
    let rows = html! { @for shown in &kept.runs { (row(ctx, kept, shown)) } };
    html! {
        @if kept.runs.is_empty() {
            p { (words.say("folder-none-span")) }
        } @else {
            p { (words.tell("folder-runs-count", &[("count", kept.runs.len().into())])) }
            div class="runs-shown" { (table(ctx, &words.say("folder-part-3"), &HEADS, &rows)) }
        }
    }
}

fn row(ctx: &Ctx, kept: &Kept, shown: &ShownRun) -> Markup {
    let words = ctx.words();
    let run = &shown.run;
    let known =
        shown.verdict.as_ref().map_or(Known::ByClock, |judged| say::basis_known(&judged.basis));
    let carried = run.outcome != Some(Outcome::Lethal)
        || shown.verdict.as_ref().is_some_and(|judged| judged.proven_for.contains(&run.contents));
    let inside = words.tell("pouch-count", &[("count", run.pouches.into())]);
    html! {
        tr class=[run.undone.then_some("struck")] {
            td { (day(ctx, run.started.0)) " " (when::clock_of(ctx, run.started.0)) }
            th scope="row" { (telling::run_name(ctx, run.machine_number, run.number)) }
            td { @match run.unloaded {
                Some(at) if when::same_day(ctx, at, run.started.0) => (when::clock_of(ctx, at)),
                Some(at) => (full(ctx, at)),
                None => (words.say("folder-not-out")),
            } }
            td { @match &run.programme {
                Some(programme) => (say::programme(ctx, programme)),
                None => (words.say("not-known")),
            } }
            td { (inside) ", " (words.say(say::contents_key(run.contents))) }
            td { (say::outcome(ctx, run.outcome)) @if !carried { " " strong { (words.say("verdict-not-carried")) } } }
            td { (words.say(say::known_key(known))) }
            td { (looks(ctx, shown)) }
            td { (signs(ctx, kept, shown)) }
            td { (notes(ctx, kept, shown)) }
        }
    }
}

/// What the looks say, all of them together: the first answer stands.
fn looks(ctx: &Ctx, shown: &ShownRun) -> Markup {
    let words = ctx.words();
    let (mut marks, mut dry, mut inner_bad) = (false, false, false);
    let [mut not_turned, mut is_wet, mut is_torn, mut fell] = [0_usize; 4];
    for fact in &shown.looks {
        let Body::Looked {
            marks_looked,
            inner_mark,
            dry_looked,
            marks_not_turned,
            wet,
            torn,
            dropped,
            ..
        } = &fact.body
        else {
            continue;
        };
        marks |= *marks_looked;
        dry |= *dry_looked;
        inner_bad |= *inner_mark == Some(false);
        not_turned += marks_not_turned.len();
        is_wet += wet.len();
        is_torn += torn.len();
        fell += dropped.len();
    }
    if shown.looks.is_empty() {
        return html! { (words.say("folder-not-looked")) };
    }
    let count = |count: usize| Arg::from(count.to_string());
    let dry_bad = is_wet + is_torn + fell > 0;
    html! {
        @if not_turned > 0 {
            strong { (words.tell("folder-marks-bad", &[("count", not_turned.into())])) }
        } @else if marks {
            (words.say("folder-marks-all"))
        } @else {
            (words.say("folder-marks-none"))
        }
        "; "
        @if dry_bad {
            strong { (words.tell("folder-dry-bad", &[("wet", count(is_wet)), ("torn", count(is_torn)), ("dropped", count(fell))])) }
        } @else if dry {
            (words.say("folder-dry-all"))
        } @else {
            (words.say("folder-dry-none"))
        }
        @if inner_bad { "; " strong { (words.say("folder-inner-bad")) } }
    }
}

/// Whose signs; one alone where the same person did it all.
fn signs(ctx: &Ctx, kept: &Kept, shown: &ShownRun) -> String {
    let start = ("folder-signed-start", shown.run.started.1);
    let looks = shown.looks.iter().map(|fact| ("folder-signed-look", fact.stamp.sign));
    let released = shown.released_by.iter().map(|who| ("folder-signed-release", Some(*who)));
    let mut done: Vec<(&str, Option<PersonId>)> =
        [start].into_iter().chain(looks).chain(released).collect();
    done.dedup();
    if done.iter().all(|(_, who)| *who == done[0].1) && done.len() > 1 {
        return sign(ctx, kept, done[0].1);
    }
    let said = |(key, who): &(&str, Option<PersonId>)| {
        ctx.words().tell(key, &[("sign", sign(ctx, kept, *who).into())])
    };
    done.iter().map(said).collect::<Vec<_>>().join("; ")
}

fn notes(ctx: &Ctx, kept: &Kept, shown: &ShownRun) -> Markup {
    let words = ctx.words();
    let run = &shown.run;
    let mut notes = Vec::new();
    if let Some(written) = shown.written.filter(|written| is_late(run.started.0, *written)) {
        notes.push(words.tell("log-later", &[("at", full(ctx, written).into())]));
    }
    if shown.known == Some(Known::FromPaper) {
        notes.push(words.say("known-from-paper"));
    }
    let of_looks = |fact: &Fact| marks(ctx, kept, &fact.stamp);
    notes.extend(shown.looks.iter().flat_map(of_looks));
    if shown.corrected {
        notes.push(words.say("folder-corrected"));
    }
    if shown.contradicted {
        notes.push(words.say("folder-differ"));
    }
    if run.undone {
        notes.push(words.say("run-undone"));
    }
    notes.dedup();
    html! {
        @if let Some((_, why)) = run.stopped {
            strong { (words.tell("folder-aside-why", &[("why", words.say(say::stop_key(why)).into())])) } " "
        }
        @for note in notes { em { (note) } " " }
    }
}
