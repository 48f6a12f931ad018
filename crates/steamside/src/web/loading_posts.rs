//! Posted forms about what goes in.

use super::Fields;
use crate::acts::{self, Refusal};
use load::chamber::{Chamber, Face, Inside, Pattern, Rack, Tray};
use load::implement::{Form, Implement, Material, Stands};
use load::pouch::PouchSize;
use logbook::book::Draft;
use logbook::fact::ProgrammeFigures;
use logbook::view::View;

/// The acts of this file.
const ACTS: [&str; 8] = [
    "implement",
    "implement-ended",
    "set-of",
    "pouch-size",
    "pouch-size-ended",
    "inside",
    "tray-weighed",
    "programme",
];
/// Most trays in a form.
const MOST_TRAYS: usize = 12;

/// Is it an act of this file? They ask for no sign.
pub fn knows(name: &str) -> bool {
    ACTS.contains(&name)
}

/// Decides an act of this file.
pub fn decide(
    name: &str,
    view: &View<'_>,
    draft: &mut Draft,
    fields: &Fields,
) -> Result<(), Refusal> {
    match name {
        "implement" => acts::set_implement(view, draft, implement(fields)?),
        "implement-ended" => acts::end_implement(view, draft, fields.need("word")?),
        "set-of" => {
            let pieces = fields.counted("piece.")?;
            acts::set_of(view, draft, fields.need("kind")?, pieces)
        }
        "pouch-size" => acts::set_pouch(view, draft, pouch_size(fields)?),
        "pouch-size-ended" => acts::end_pouch(view, draft, fields.need("word")?),
        "inside" => acts::set_inside(view, draft, fields.need("machine")?, inside(fields)?),
        "tray-weighed" => acts::weigh_tray(
            view,
            draft,
            acts::WeighTray {
                grams: fields.need("grams")?,
                empty_g: fields.need("empty")?,
                sets: fields.counted("count.")?,
                pouched: fields.one("wrap") != Some("open"),
            },
        ),
        "programme" => acts::set_programme(view, draft, programme(fields)?),
        _ => Err(Refusal::rule("refused-no-such-act")),
    }
}

fn misread(field: &str) -> Refusal {
    Refusal::rule_with("refused-field-misread", "field", field)
}

/// A word from a closed list.
fn chosen<T>(
    fields: &Fields,
    name: &'static str,
    from_word: fn(&str) -> Option<T>,
) -> Result<T, Refusal> {
    let word: String = fields.need(name)?;
    from_word(&word).ok_or_else(|| misread(name))
}

/// Grams as a person types them, to a tenth.
fn tenths(fields: &Fields, name: &'static str) -> Result<u32, Refusal> {
    let grams: f64 = fields.need(name)?;
    if (0.0..=measure::bounds::MASS.most).contains(&grams) {
        Ok((grams * 10.0).round() as u32)
    } else {
        Err(misread(name))
    }
}

fn implement(fields: &Fields) -> Result<Implement, Refusal> {
    Ok(Implement {
        word: fields.need("word")?,
        form: chosen(fields, "form", Form::from_word)?,
        length_mm: fields.need("length")?,
        width_mm: fields.need("width")?,
        thick_mm: fields.need("thick")?,
        mass_dg: tenths(fields, "mass")?,
        material: chosen(fields, "material", Material::from_word)?,
        hinged: fields.yes("hinged"),
        hollow: fields.yes("hollow"),
        single_use: fields.yes("single"),
        steam: chosen(fields, "steam", Stands::from_word)?,
        ultrasonic: chosen(fields, "ultrasonic", Stands::from_word)?,
        most_c: fields.need("most-c")?,
    })
}

fn pouch_size(fields: &Fields) -> Result<PouchSize, Refusal> {
    Ok(PouchSize {
        word: fields.need("word")?,
        width_mm: fields.need("width")?,
        length_mm: fields.need("length")?,
        seam_mm: fields.need("seam")?,
        fold_mm: fields.need("fold")?,
        mass_dg: tenths(fields, "mass")?,
    })
}

fn inside(fields: &Fields) -> Result<Inside, Refusal> {
    let depth_mm = fields.need("depth")?;
    let chamber = match fields.one("chamber") {
        Some("round") => Chamber::Round { diameter_mm: fields.need("across")?, depth_mm },
        Some("box") => Chamber::Box {
            width_mm: fields.need("across")?,
            height_mm: fields.need("high")?,
            depth_mm,
        },
        _ => return Err(misread("chamber")),
    };
    let mut trays = Vec::new();
    for number in 0..MOST_TRAYS {
        let part = |name: &str| -> Result<Option<u32>, Refusal> {
            let name = format!("{number}.{name}");
            fields.one(&name).map(|text| text.parse().map_err(|_| misread(&name))).transpose()
        };
        let (width, depth) = (part("width")?, part("depth")?);
        if let (Some(width_mm), Some(depth_mm)) = (width, depth) {
            let height_mm = part("height")?.ok_or_else(|| misread("height"))?;
            let mass_g = part("mass")?.ok_or_else(|| misread("mass"))?;
            trays.push(Tray { width_mm, depth_mm, height_mm, mass_g });
        } else if width.or(depth).is_some() {
            return Err(misread(if width.is_some() { "depth" } else { "width" }));
        }
    }
    let places: Option<u32> = fields.maybe("places")?.filter(|places| *places > 0);
    let rack = match places {
        Some(places) => Some(Rack {
            places,
            pitch_mm: fields.need("pitch")?,
            height_mm: fields.need("rack-height")?,
            depth_mm: fields.need("rack-depth")?,
            mass_g: fields.need("rack-mass")?,
        }),
        None => None,
    };
    Ok(Inside {
        chamber,
        trays,
        rack,
        pattern: chosen(fields, "pattern", Pattern::from_word)?,
        face: chosen(fields, "face", Face::from_word)?,
        wall_mm: fields.need("wall")?,
        between_mm: fields.need("between")?,
        manual_page: fields.maybe("page")?,
    })
}

fn programme(fields: &Fields) -> Result<ProgrammeFigures, Refusal> {
    let drying_kpa: Option<f64> = fields.maybe("dry-kpa")?;
    let drying_pa = match drying_kpa {
        Some(kpa) if (0.7..=110.0).contains(&kpa) => Some((kpa * 1_000.0).round() as u32),
        Some(_) => return Err(misread("dry-kpa")),
        None => None,
    };
    Ok(ProgrammeFigures {
        machine: fields.need("machine")?,
        programme: fields.need("programme")?,
        set_c: fields.need("set")?,
        hold_s: fields.need("hold")?,
        pulses: fields.need("pulses")?,
        drying_min: fields.need("dry-min")?,
        drying_pa,
        for_pouches: fields.yes("pouches"),
        for_hollow: fields.yes("hollow"),
        most_pouched_g: fields.maybe("most-pouched")?,
        most_unwrapped_g: fields.maybe("most-open")?,
        manual_page: fields.maybe("page")?,
    })
}
