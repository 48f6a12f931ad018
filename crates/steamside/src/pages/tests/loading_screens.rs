//! Screens of what goes in: a load on its trays, a pouch, the settings.

use super::made_up::*;
use crate::loading::kinds::{Described, Kinds};
use crate::loading::load::Load;
use crate::loading::propose::{Programme, Proposal};
use crate::loading::trays::{Item, lay};
use crate::pages::{bag, goes_in, tray};
use crate::web::Ctx;
use cycle::choose::{Change, Choice, No, Proposed, Refused, Why};
use load::{SetKind, SetState, catalogue};
use logbook::fact::Drying;
use logbook::typical;
use logbook::view::Setting;
use maud::Markup;

fn made_up_kinds() -> Kinds {
    let all = catalogue::implements();
    let described = |word: &str| {
        let kind: SetKind = word.parse().unwrap();
        let pieces = catalogue::set_of(&kind).into_iter().flat_map(|(word, count)| {
            let found = all.iter().find(|known| known.word == word).unwrap();
            std::iter::repeat_n(found.clone(), count as usize)
        });
        Described { pieces: pieces.collect(), kind, said: None, own: None }
    };
    let parts = ["bits", "manicure", "pedicure"].map(described).to_vec();
    Kinds::of(parts, &[], catalogue::pouch_sizes())
}

/// Thirteen pouches for a machine that takes eight.
pub fn seen_tray() -> tray::Seen {
    let kinds = made_up_kinds();
    let inside = Setting { value: catalogue::inside(), said: None };
    let items: Vec<Item> = pouches(13, SetState::Bagged).iter().map(Item::of).collect();
    let laid = lay(&items, &kinds, &inside.value, None);
    let machine = machine_row(1);
    let programmes: Vec<Programme> = (typical::machine(machine.machine).cycles.into_iter())
        .map(|cycle| Programme {
            figures: Setting { value: typical::programme(machine.machine, &cycle), said: None },
            pouched_g: (cycle.drying == Drying::Full).then_some(1_800),
            open_g: None,
            set_g: None,
            usual: None,
            cycle,
            learnt: None,
            limit_g: None,
            advice: None,
            left_out: 0,
        })
        .collect();
    let choice = Choice {
        ranked: vec![Proposed { offer: 2, why: Why::LongerDryingForWeight }],
        refused: vec![
            Refused { offer: 0, reasons: vec![No::NoDryingForPouches, No::NotForPouches] },
            Refused { offer: 1, reasons: vec![No::TooHeavyToDry] },
        ],
        changes: vec![Change::Split { offer: 1, grams: 900 }],
    };
    let load = Load::of(&items, false, &kinds);
    let proposal = Proposal { load, programmes, choice, outlook: None, air_known: true };
    tray::Seen { machine, inside, items, laid, proposal, run: None, programme: None }
}

pub fn loading_screens(ctx: &Ctx) -> Vec<(&'static str, Markup)> {
    let kinds = made_up_kinds();
    let bits = kinds.get(&"bits".parse().unwrap()).unwrap();
    let settings = goes_in::Seen {
        kinds: kinds.clone(),
        implements: (catalogue::implements().into_iter())
            .map(|value| Setting { value, said: None })
            .collect(),
        sizes: (catalogue::pouch_sizes().into_iter())
            .map(|value| Setting { value, said: Some(7) })
            .collect(),
        machines: vec![goes_in::Room {
            machine: machine_row(1),
            inside: Setting { value: catalogue::inside(), said: Some(8) },
            programmes: (seen_tray().proposal.programmes.into_iter())
                .map(|programme| programme.figures)
                .collect(),
        }],
        asked: Some("handpiece".parse().unwrap()),
    };
    vec![
        ("tray", tray::draw(ctx, &seen_tray())),
        ("tray-sheet", tray::sheet_of(ctx, &seen_tray())),
        ("bag", bag::draw(ctx, bits, &kinds.sizes)),
        ("goes-in", goes_in::draw(ctx, &settings)),
    ]
}
