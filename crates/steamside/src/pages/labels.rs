//! The codes of what was just packed, large; label sheets to print; and writing by hand, which is
//! always good enough.

use super::frame::{self, Frame, Place};
use super::parts::{self, Ground};
use super::shapes::Shape;
use super::{say, when};
use crate::web::Ctx;
use logbook::book::BookError;
use logbook::fact::{Body, Fact, PackedPouch};
use logbook::view::View;
use maud::{Markup, PreEscaped, html};
use measure::{ActId, Instant};
use papers::{Label, Run, Sheet, Unprintable, label_sheets};

/// What was asked for.
#[derive(Debug, Clone, Copy)]
pub struct Asked<'a> {
    /// The act in which the pouches were packed.
    pub act: ActId,
    /// The stock: `letter`, `a4`, `roll`.
    pub sheet: Option<&'a str>,
    /// First label of the first sheet that is still there, from 1.
    pub start: Option<usize>,
}

/// The stocks that are known, by the word in the address.
const SHEETS: [(&str, Sheet); 3] =
    [("letter", Sheet::LETTER_30), ("a4", Sheet::A4_21), ("roll", Sheet::ROLL_25)];

/// What the page shows.
#[derive(Debug, Clone)]
pub struct Seen {
    /// The act.
    pub act: ActId,
    /// When it was packed.
    pub packed: Instant,
    /// What was packed.
    pub pouches: Vec<PackedPouch>,
    /// Word of the stock.
    pub stock: &'static str,
    /// First label that is still there.
    pub start: usize,
    /// The sheets, or why there are none.
    pub sheets: Result<Vec<String>, Unprintable>,
}

/// The page; `None` where the book has no such act.
pub fn page(view: &View<'_>, ctx: &Ctx, asked: Asked<'_>) -> Result<Option<Markup>, BookError> {
    let facts = view.facts_of_act(asked.act)?;
    let Some(first) = facts.first() else {
        return Ok(None);
    };
    let seen = seen(ctx, asked, &facts, first.stamp.happened);
    let frame = Frame {
        title: ctx.words().say("labels-title"),
        place: Place::Now,
        desk: false,
        again_s: None,
        did: frame::did(view, ctx)?,
    };
    Ok(Some(frame::page(ctx, &frame, &draw(ctx, &seen))))
}

/// The sheets of the pouches that were packed in these facts.
pub fn seen(ctx: &Ctx, asked: Asked<'_>, facts: &[Fact], packed: Instant) -> Seen {
    let pouches: Vec<PackedPouch> = facts
        .iter()
        .filter_map(|fact| match &fact.body {
            Body::Packed { pouches } => Some(pouches.clone()),
            _ => None,
        })
        .flatten()
        .collect();
    let (stock, sheet) =
        SHEETS.into_iter().find(|(word, _)| Some(*word) == asked.sheet).unwrap_or(SHEETS[0]);
    let start = asked.start.unwrap_or(1);
    // A label outlives the screen that it was made on.
    let sheets = sheets(&ctx.for_record(), &pouches, packed, (&sheet, start));
    Seen { act: asked.act, packed, pouches, stock, start, sheets }
}

/// Numbered tags are steel and used again: only pouches get a label.
fn sheets(
    ctx: &Ctx,
    pouches: &[PackedPouch],
    packed: Instant,
    onto: (&Sheet, usize),
) -> Result<Vec<String>, Unprintable> {
    let words = ctx.words();
    // A no-break space keeps day and month in one line.
    let day = when::day_and_month(ctx, packed).replace(' ', "\u{a0}");
    let sentence = words.tell("label-sentence", &[("day", day.as_str().into())]);
    let sentence = frame::on_paper(ctx, sentence);
    let labels: Vec<Label> = pouches
        .iter()
        .filter(|pouch| pouch.pouched)
        .map(|pouch| Label {
            pouch: pouch.pouch,
            code: pouch.code,
            kind: pouch.kind.word().to_owned(),
            sentence: sentence.clone(),
            run: Run::ToWriteIn,
        })
        .collect();
    let page = |page: usize, of: usize| {
        let args = [("page", page.to_string().into()), ("of", of.to_string().into())];
        words.tell("print-page", &args)
    };
    let printed = words.tell("print-printed", &[("at", when::day_of(ctx, ctx.now).into())]);
    let printed = frame::on_paper(ctx, printed);
    let (scale, stock) = (words.say("print-scale"), words.say("print-stock"));
    let (machine, run) = (words.say("print-machine"), words.say("print-run"));
    let (machine_short, run_short) =
        (words.say("print-machine-short"), words.say("print-run-short"));
    let texts = papers::Words {
        printed: &printed,
        page: &page,
        scale: &scale,
        stock: &stock,
        machine: &machine,
        run: &run,
        machine_short: &machine_short,
        run_short: &run_short,
    };
    label_sheets(&labels, onto.0, &texts, onto.1)
}

/// What stands on it.
pub fn draw(ctx: &Ctx, seen: &Seen) -> Markup {
    let words = ctx.words();
    html! {
        div class="no-print" {
            @if seen.pouches.is_empty() {
                p class="fact" { (words.say("labels-none")) }
            } @else {
                (parts::card(Ground::Fine, Shape::Envelope, &heading(ctx, seen), &html! {
                    p class="codes large" {
                        @for pouch in &seen.pouches { span class="code" { (pouch.code) } " " }
                    }
                    p { (parts::time(ctx, seen.packed)) }
                    p { (words.say("labels-hand")) }
                    p { (words.say("pack-cautions")) }
                }))
            }
            p class="ways" { (parts::way("/start", Shape::Drum, &words.say("go-start"))) }
            @if seen.pouches.iter().any(|pouch| pouch.pouched) { (printing(ctx, seen)) }
        }
        @if let Ok(sheets) = &seen.sheets {
            div class="sheets" {
                @for sheet in sheets { div class=(format!("sheet-of-labels {}", seen.stock)) { (PreEscaped(sheet)) } }
            }
        }
    }
}

fn heading(ctx: &Ctx, seen: &Seen) -> String {
    let kind = seen.pouches.first().map(|pouch| say::kind(ctx, &pouch.kind)).unwrap_or_default();
    ctx.words().tell("line-packed", &[("count", seen.pouches.len().into()), ("kind", kind.into())])
}

fn printing(ctx: &Ctx, seen: &Seen) -> Markup {
    let words = ctx.words();
    parts::card(
        Ground::Fine,
        Shape::Tape,
        &words.say("labels-print"),
        &html! {
            p { (words.say("labels-steam")) }
            form method="get" action="/labels" {
                (parts::hidden("act", seen.act))
                fieldset class="choices" {
                    legend { (words.say("labels-stock")) }
                    @for (word, _) in SHEETS {
                        label {
                            input type="radio" name="sheet" value=(word) checked[word == seen.stock];
                            span { (words.say(&format!("labels-{word}"))) }
                        }
                    }
                }
                p class="field" {
                    label for="labels-start" { (words.say("labels-start")) }
                    input type="number" id="labels-start" name="start" min="1" max="30" value=(seen.start);
                }
                p { button class="key" { (words.say("labels-show")) } }
            }
            @match &seen.sheets {
                Ok(_) => p {
                    button type="button" class="key main-key" hidden data-prints="yes" { (words.say("labels-print")) }
                },
                Err(why) => {
                    p class="fact" { (words.say("labels-refused")) }
                    p lang="en" { (why) }
                }
            }
        },
    )
}
