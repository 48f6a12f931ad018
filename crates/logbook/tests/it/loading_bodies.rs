//! Any fact about what goes in, over few words, so that facts meet.

use crate::common::{id, kind};
use load::chamber::{Chamber, Face, Inside, Pattern, Rack, Tray};
use load::implement::{Form, Implement, Material, Stands};
use load::pouch::PouchSize;
use logbook::fact::{Loading, ProgrammeFigures};
use proptest::collection::vec;
use proptest::option;
use proptest::prelude::*;
use proptest::sample::select;

fn implement() -> impl Strategy<Value = Implement> {
    let shape = (select(Form::ALL.to_vec()), select(Material::ALL.to_vec()));
    let stands = || select(Stands::ALL.to_vec());
    let word = select(vec!["pusher", "cuticle nipper", "kềm"]);
    let measures = (10_u32..300, 2_u32..=10, 1_u32..=2, 10_u32..5_000);
    (word, shape, measures, any::<[bool; 3]>(), (stands(), stands(), 40_u32..=300)).prop_map(
        |(word, (form, material), measures, flags, (steam, ultrasonic, most_c))| Implement {
            word: word.parse().unwrap(),
            form,
            length_mm: measures.0,
            width_mm: measures.1,
            thick_mm: measures.2,
            mass_dg: measures.3,
            material,
            hinged: flags[0],
            hollow: flags[1],
            single_use: flags[2],
            steam,
            ultrasonic,
            most_c,
        },
    )
}

fn pouch() -> impl Strategy<Value = PouchSize> {
    let word = select(vec!["small", "long"]);
    (word, 50_u32..400, 100_u32..600, 3_u32..20, 5_u32..40, 1_u32..200).prop_map(
        |(word, width_mm, length_mm, seam_mm, fold_mm, mass_dg)| PouchSize {
            word: word.parse().unwrap(),
            width_mm,
            length_mm,
            seam_mm,
            fold_mm,
            mass_dg,
        },
    )
}

fn inside() -> impl Strategy<Value = Inside> {
    let chamber = prop_oneof![
        Just(Chamber::Round { diameter_mm: 240, depth_mm: 400 }),
        Just(Chamber::Box { width_mm: 200, height_mm: 130, depth_mm: 300 }),
    ];
    let tray = (100_u32..180, 200_u32..300, 10_u32..40, 0_u32..900).prop_map(
        |(width_mm, depth_mm, height_mm, mass_g)| Tray { width_mm, depth_mm, height_mm, mass_g },
    );
    let rack = Rack { places: 6, pitch_mm: 25, height_mm: 60, depth_mm: 250, mass_g: 300 };
    let lies = (select(Pattern::ALL.to_vec()), select(Face::ALL.to_vec()));
    let free = (0_u32..20, 0_u32..20, option::of(1_u32..300));
    (chamber, vec(tray, 1..4), any::<bool>(), lies, free).prop_map(
        move |(chamber, trays, racked, (pattern, face), (wall_mm, between_mm, manual_page))| {
            // On edge needs a rack.
            let rack = (racked || pattern == Pattern::OnEdge).then_some(rack);
            Inside { chamber, trays, rack, pattern, face, wall_mm, between_mm, manual_page }
        },
    )
}

fn programme() -> impl Strategy<Value = ProgrammeFigures> {
    let runs = (100_u32..=150, 1_u32..2_000, 0_u32..=20, 0_u32..90);
    let grams = || option::of(1_u32..9_000);
    let said = (option::of(0_u32..=110_000), grams(), grams(), option::of(1_u32..300));
    (1_u32..4, runs, any::<[bool; 2]>(), said).prop_map(
        |(machine, (set_c, hold_s, pulses, drying_min), [for_pouches, for_hollow], said)| {
            ProgrammeFigures {
                machine: id(machine),
                programme: "long".parse().unwrap(),
                set_c,
                hold_s,
                pulses,
                drying_min,
                drying_pa: said.0,
                for_pouches,
                for_hollow,
                most_pouched_g: said.1,
                most_unwrapped_g: said.2,
                manual_page: said.3,
            }
        },
    )
}

fn weighed() -> impl Strategy<Value = Loading> {
    (1_000_u32..9_000, option::of(0_u32..1_000), 1_u32..9, any::<bool>()).prop_map(
        |(grams, empty_g, count, pouched)| Loading::TrayWeighed {
            grams,
            empty_g,
            sets: vec![(kind("manicure"), count), (kind("bits"), 1)],
            pouched,
        },
    )
}

/// Any fact about what goes in.
pub fn loading() -> impl Strategy<Value = Loading> {
    let pieces = (1_u32..9).prop_map(|count| vec![("pusher".parse().unwrap(), count)]);
    prop_oneof![
        implement().prop_map(Loading::ImplementSet),
        Just("pusher").prop_map(|word| Loading::ImplementEnded { word: word.parse().unwrap() }),
        pieces.prop_map(|pieces| Loading::SetOf { kind: kind("manicure"), pieces }),
        pouch().prop_map(Loading::PouchSet),
        Just("small").prop_map(|word| Loading::PouchEnded { word: word.parse().unwrap() }),
        ((1_u32..4), inside())
            .prop_map(|(machine, inside)| Loading::InsideSet { machine: id(machine), inside }),
        weighed(),
        programme().prop_map(Loading::ProgrammeSet),
    ]
}
