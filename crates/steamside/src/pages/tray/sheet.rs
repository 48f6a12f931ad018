//! The trays as a page of A5 for the machine's door.

use super::{Seen, clearance, heading, mass, whose_pattern, with_words};
use crate::pages::parts::{self, Ground};
use crate::pages::shapes::Shape;
use crate::pages::{frame, proposal, say, when};
use crate::web::Ctx;
use load::picture::{Picture, of_layer};
use maud::{Markup, PreEscaped, html};
use papers::{TrayOfSheet, TrayWords, Unprintable, tray_sheet};

/// The pages, with a key to print them.
pub fn draw(ctx: &Ctx, seen: &Seen) -> Markup {
    let words = ctx.words();
    // A way that is too short to write on stands beside the picture all the same.
    let record = ctx.for_record();
    let sheets = sheets(&record, seen, true).or_else(|_| sheets(&record, seen, false));
    html! {
        div class="no-print" {
            (parts::card(Ground::Fine, Shape::Tape, &words.say("tray-print"), &html! {
                @match &sheets {
                    Ok(_) => p {
                        button type="button" class="key main-key" hidden data-prints="yes" { (words.say("labels-print")) }
                    },
                    Err(why) => {
                        p class="fact" { (words.say("labels-refused")) }
                        p lang="en" { (why) }
                    }
                }
                p class="ways" {
                    (parts::way(&super::address(seen), Shape::Drum, &words.say("back")))
                }
            }))
        }
        @if let Ok(sheets) = &sheets {
            div class="sheets a5" {
                @for sheet in sheets { div class="sheet-of-labels a5" { (PreEscaped(sheet)) } }
            }
        }
    }
}

/// Everything on it is said in the record's language; nothing is cut off.
fn sheets(ctx: &Ctx, seen: &Seen, ways: bool) -> Result<Vec<String>, Unprintable> {
    let words = ctx.words();
    let laid: Vec<_> =
        seen.laid.packing.layers.iter().filter(|layer| !layer.placed.is_empty()).collect();
    let picture = |layer: &&load::pack::Layer| {
        let mut picture = of_layer(layer, &seen.inside.value);
        picture.distances.retain(|_| ways);
        picture
    };
    let pictures: Vec<Picture> = laid.iter().map(picture).collect();
    let texts: Vec<(String, String, Option<String>)> = (laid.iter())
        .map(|layer| (heading(ctx, seen, layer), mass(ctx, seen, layer), clearance(ctx, layer)))
        .collect();
    let trays: Vec<TrayOfSheet<'_>> = (pictures.iter().zip(&texts))
        .map(|(picture, (heading, mass, clearance))| TrayOfSheet {
            picture,
            heading,
            mass,
            clearance: clearance.as_deref(),
        })
        .collect();
    let number = seen.machine.number.to_string();
    let title = words.tell("tray-sheet-title", &[("machine", number.into())]);
    let title = frame::on_paper(ctx, title);
    let printed = words.tell("print-printed", &[("at", when::day_of(ctx, ctx.now).into())]);
    let page = |page: usize, of: usize| {
        let args = [("page", page.to_string().into()), ("of", of.to_string().into())];
        words.tell("print-page", &args)
    };
    let scale = |tenths: u32| {
        let ratio = match tenths % 10 {
            0 => (tenths / 10).to_string(),
            part => format!("{}.{part}", tenths / 10),
        };
        words.tell("tray-scale", &[("ratio", ratio.into())])
    };
    let total = words.tell("tray-total", &[("grams", seen.laid.packing.mass_g.into())]);
    let limit = proposal::limit_alone(ctx, &seen.proposal);
    let programme = match &seen.programme {
        Some(programme) => {
            let name = say::programme(ctx, programme);
            words.tell("run-programme", &[("programme", name.into())])
        }
        None => proposal::line(ctx, &seen.proposal),
    };
    let cautions =
        [words.say("caution-hot"), words.say("start-cautions"), whose_pattern(ctx, seen)];
    let cautions: Vec<&str> = cautions.iter().map(String::as_str).collect();
    let bar = words.say("print-scale");
    with_words(ctx, seen, |picture| {
        let words = TrayWords {
            id: "tray",
            title: &title,
            printed: &printed,
            page: &page,
            scale: &scale,
            bar: &bar,
            picture,
            total: &total,
            limit: &limit,
            programme: &programme,
            cautions: &cautions,
        };
        tray_sheet(&trays, &words)
    })
}
