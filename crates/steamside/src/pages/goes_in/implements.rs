//! Implements and sizes of pouches.

use super::{Seen, choice, number, ticked, typical};
use crate::pages::bag;
use crate::pages::parts::{self, Form as PostForm, Ground};
use crate::pages::shapes::Shape;
use crate::pages::{say, units};
use crate::web::Ctx;
use load::implement::{Caution, Form, Implement, Material, Stands};
use load::pouch::PouchSize;
use maud::{Markup, html};

/// A new implement, until somebody says more: an all-steel rod.
const LENGTH_MM: u32 = 130;
const WIDTH_MM: u32 = 10;
const THICK_MM: u32 = 8;
const MASS_DG: u32 = 200;
/// The hottest common cycle stays below this. (Common practice, no source.)
const MOST_C: u32 = 140;

/// The cards.
pub fn cards(ctx: &Ctx, seen: &Seen) -> Markup {
    let words = ctx.words();
    html! {
        (parts::card(Ground::Fine, Shape::Bowl, &words.say("implements-title"), &html! {
            p { (words.say("implements-how")) }
            @for (at, implement) in seen.implements.iter().enumerate() {
                @let open = seen.asked.as_ref() == Some(&implement.value.word);
                details open[open] id=[open.then_some("asked")] {
                    summary { span { (say::implement(ctx, &implement.value.word)) (typical(ctx, implement)) } }
                    (cautions(ctx, &implement.value))
                    // A form for each would be a heavy page: one at a time.
                    @if open {
                        (form(ctx, &format!("{at}"), Some(&implement.value)))
                        (PostForm::new("implement-ended", implement.value.word.word()).draw(ctx, &html! {
                            (parts::hidden("word", &implement.value.word))
                            button class="key" { (words.say("implement-end")) }
                        }))
                    } @else {
                        p { a class="key" href=(format!("/in?{}#asked", bag::asks("implement", implement.value.word.word()))) { (words.say("implement-change")) } }
                    }
                }
            }
            details { summary { (words.say("implement-add")) } (form(ctx, "new", None)) }
        }))
        (parts::card(Ground::Fine, Shape::Envelope, &words.say("pouch-sizes-title"), &html! {
            p { (words.say("pouch-sizes-how")) }
            @for (at, size) in seen.sizes.iter().enumerate() {
                details {
                    summary {
                        span {
                            (size.value.word) " · " (size.value.width_mm) " × " (size.value.length_mm) " mm"
                            (typical(ctx, size))
                        }
                    }
                    (pouch(ctx, &format!("{at}"), Some(&size.value)))
                    (PostForm::new("pouch-size-ended", size.value.word.word()).draw(ctx, &html! {
                        (parts::hidden("word", &size.value.word))
                        button class="key" { (words.say("pouch-size-end")) }
                    }))
                }
            }
            details { summary { (words.say("pouch-size-add")) } (pouch(ctx, "new", None)) }
        }))
    }
}

/// What must be watched with it, each in one line.
fn cautions(ctx: &Ctx, implement: &Implement) -> Markup {
    let cautions = implement.cautions();
    let chemicals: Vec<String> = (implement.material.harmed_by().iter())
        .map(|chemical| ctx.words().say(&format!("chemical-{}", chemical.word().replace(' ', "-"))))
        .collect();
    html! {
        @if !cautions.is_empty() || !chemicals.is_empty() {
            ul class="reasons" {
                @for caution in cautions { li { (watch(ctx, caution)) } }
                @if !chemicals.is_empty() {
                    li { (ctx.words().tell("watch-chemicals", &[("what", chemicals.join(", ").into())])) }
                }
            }
        }
    }
}

fn watch(ctx: &Ctx, caution: Caution) -> String {
    let words = ctx.words();
    match caution {
        Caution::SingleUse => words.say("watch-single-use"),
        Caution::NeverSteam => words.say("watch-never-steam"),
        Caution::AskMakerSteam => words.say("watch-ask-steam"),
        Caution::NeverUltrasonic => words.say("watch-never-ultrasonic"),
        Caution::AskMakerUltrasonic => words.say("watch-ask-ultrasonic"),
        Caution::RustsInSteam => words.say("watch-rusts"),
        Caution::HeatBelow(celsius) => {
            words.tell("watch-heat", &[("celsius", units::degrees(ctx, celsius).into())])
        }
        Caution::Apart(metal) => {
            let metal = words.say(&format!("metal-{}", metal.word()));
            words.tell("watch-apart", &[("metal", metal.into())])
        }
        Caution::OpenHinge => words.say("watch-hinge"),
        Caution::HollowNeedsVacuum => words.say("watch-hollow"),
    }
}

fn form(ctx: &Ctx, on: &str, implement: Option<&Implement>) -> Markup {
    let words = ctx.words();
    let id = |part: &str| format!("implement-{part}-{on}");
    let value = |read: fn(&Implement) -> u32, usual: u32| implement.map_or(usual, read);
    let forms = Form::ALL.map(|form| {
        let said = words.say(&format!("form-{}", form.word().replace(' ', "-")));
        (form.word(), said, implement.map_or(form == Form::Stick, |i| i.form == form))
    });
    let materials = Material::ALL.map(|material| {
        let said = words.say(&format!("material-{}", material.word().replace(' ', "-")));
        let usual = material == Material::Steel420;
        (material.word(), said, implement.map_or(usual, |i| i.material == material))
    });
    let stands = |of: Option<Stands>| {
        Stands::ALL.map(|stands| {
            let said = words.say(&format!("stands-{}", stands.word().replace(' ', "-")));
            (stands.word(), said, of.map_or(stands == Stands::AskMaker, |s| s == stands))
        })
    };
    PostForm::new("implement", on).draw(ctx, &html! {
        @if let Some(known) = implement {
            (parts::hidden("word", &known.word))
        } @else {
            p class="field" {
                label for=(id("word")) { (words.say("implement-word")) }
                input type="text" id=(id("word")) name="word" maxlength="24" required autocomplete="off";
            }
        }
        (choice(ctx, &id("form"), ("form", "implement-form"), &forms))
        (number(ctx, &id("length"), ("length", "implement-length"), value(|i| i.length_mm, LENGTH_MM)))
        (number(ctx, &id("width"), ("width", "implement-width"), value(|i| i.width_mm, WIDTH_MM)))
        (number(ctx, &id("thick"), ("thick", "implement-thick"), value(|i| i.thick_mm, THICK_MM)))
        (grams(ctx, &id("mass"), "implement-mass", value(|i| i.mass_dg, MASS_DG)))
        (choice(ctx, &id("material"), ("material", "implement-material"), &materials))
        fieldset class="choices" {
            legend { (words.say("implement-is")) }
            (ticked(ctx, ("hinged", "implement-hinged"), implement.is_some_and(|i| i.hinged)))
            (ticked(ctx, ("hollow", "implement-hollow"), implement.is_some_and(|i| i.hollow)))
            (ticked(ctx, ("single", "implement-single"), implement.is_some_and(|i| i.single_use)))
        }
        (choice(ctx, &id("steam"), ("steam", "implement-steam"), &stands(implement.map(|i| i.steam))))
        (choice(ctx, &id("ultrasonic"), ("ultrasonic", "implement-ultrasonic"), &stands(implement.map(|i| i.ultrasonic))))
        (number(ctx, &id("most-c"), ("most-c", "implement-most-c"), value(|i| i.most_c, MOST_C)))
        button class="key main-key" { (words.say("figures-keep")) }
    })
}

/// Grams to a tenth.
fn grams(ctx: &Ctx, id: &str, key: &str, tenths: u32) -> Markup {
    html! {
        p class="field" {
            label for=(id) { (ctx.words().say(key)) }
            input type="number" inputmode="decimal" id=(id) name="mass" min="0" step="0.1" required
                value=(format!("{}.{}", tenths / 10, tenths % 10));
        }
    }
}

fn pouch(ctx: &Ctx, on: &str, size: Option<&PouchSize>) -> Markup {
    let words = ctx.words();
    let id = |part: &str| format!("pouch-{part}-{on}");
    let value = |read: fn(&PouchSize) -> u32, usual: u32| size.map_or(usual, read);
    PostForm::new("pouch-size", on).draw(ctx, &html! {
        @if let Some(size) = size {
            (parts::hidden("word", &size.word))
        } @else {
            p class="field" {
                label for=(id("word")) { (words.say("pouch-size-word")) }
                input type="text" id=(id("word")) name="word" maxlength="24" required autocomplete="off";
            }
        }
        (number(ctx, &id("width"), ("width", "pouch-size-width"), value(|s| s.width_mm, 90)))
        (number(ctx, &id("length"), ("length", "pouch-size-length"), value(|s| s.length_mm, 230)))
        (number(ctx, &id("seam"), ("seam", "pouch-size-seam"), value(|s| s.seam_mm, 8)))
        (number(ctx, &id("fold"), ("fold", "pouch-size-fold"), value(|s| s.fold_mm, 20)))
        (grams(ctx, &id("mass"), "pouch-size-mass", value(|s| s.mass_dg, 50)))
        button class="key main-key" { (words.say("figures-keep")) }
    })
}
