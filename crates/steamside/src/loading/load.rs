//! One load: what it is, what it weighs, and what the steam has to heat.

use super::kinds::{Kind, Kinds, MassFrom};
use super::trays::Item;
use cycle::balance::{Charge, Drying, Heated, Part, ROOM_C, specific};
use load::chamber::{Inside, Pattern};
use load::pouch::Refused;
use load::{Contents, ImplementWord, SetKind};
use logbook::fact::ProgrammeFigures;

/// A load as it would go in.
#[derive(Debug, Clone)]
pub struct Load {
    /// The most demanding thing in it.
    pub contents: Contents,
    /// Sets and pouches, grams.
    pub mass_g: u32,
    /// The heaviest piece, grams.
    pub heaviest_g: u32,
    /// The least heat that any piece stands, °C; `None` where nothing is known of the pieces.
    pub most_c: Option<u32>,
    /// Pieces and pouches, as the steam heats them.
    pub heated: Vec<Heated>,
    /// Sets of kinds that nobody described: their masses are not in the figures.
    pub unknown: Vec<SetKind>,
    /// Pieces that must not go in, each once, with the reason: they are not in the figures either.
    pub refused: Vec<(ImplementWord, Refused)>,
    /// Some figure rests on typical pieces that nobody confirmed.
    pub typical: bool,
}

/// What is known of the drying part: by the record of a run, or by the programme.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct DriedFor {
    /// Minutes.
    pub minutes: f64,
    /// Pressure, kPa absolute; `None`: no vacuum.
    pub vacuum_kpa: Option<f64>,
}

impl DriedFor {
    /// As the programme is set.
    pub fn set(figures: &ProgrammeFigures) -> Self {
        let vacuum_kpa = figures.drying_pa.map(|pa| f64::from(pa) / 1_000.0);
        Self { minutes: f64::from(figures.drying_min), vacuum_kpa }
    }

    /// As a record measured it, where it did.
    pub fn measured(self, ms: Option<i64>, pa: Option<i64>) -> Self {
        Self {
            minutes: ms.map_or(self.minutes, |ms| ms as f64 / 60_000.0),
            vacuum_kpa: pa.map(|pa| pa as f64 / 1_000.0).or(self.vacuum_kpa),
        }
    }
}

impl Load {
    /// These sets together; `hollow` where somebody said that something hollow is among them.
    pub fn of(items: &[Item], hollow: bool, kinds: &Kinds) -> Self {
        let mut load = Self::of_counts(&[], kinds);
        for item in items {
            load.add(&item.kind, 1, item.pouched, kinds);
        }
        let mut of_items = items.iter().filter_map(|item| kinds.get(&item.kind));
        load.contents = if hollow || of_items.any(|kind| kind.going().any(|piece| piece.hollow)) {
            Contents::Hollow
        } else if items.iter().any(|item| item.pouched) {
            Contents::Pouched
        } else if items.is_empty() {
            Contents::Unknown
        } else {
            Contents::Unwrapped
        };
        load
    }

    /// So many sets of each kind.
    pub fn of_counts(counts: &[(SetKind, u32, bool)], kinds: &Kinds) -> Self {
        let mut load = Self {
            contents: Contents::Unknown,
            mass_g: 0,
            heaviest_g: 0,
            most_c: None,
            heated: Vec::new(),
            unknown: Vec::new(),
            refused: Vec::new(),
            typical: false,
        };
        for (kind, count, pouched) in counts {
            load.add(kind, *count, *pouched, kinds);
        }
        if counts.iter().any(|(_, _, pouched)| *pouched) {
            load.contents = Contents::Pouched;
        } else if !counts.is_empty() {
            load.contents = Contents::Unwrapped;
        }
        load
    }

    fn add(&mut self, kind: &SetKind, count: u32, pouched: bool, kinds: &Kinds) {
        let Some(known) = kinds.get(kind).filter(|known| !known.pieces.is_empty()) else {
            self.unknown.push(kind.clone());
            return;
        };
        let pouch_g = if pouched { known.pouch_g() } else { 0.0 };
        let each_g = known.set_g.saturating_add(pouch_g.ceil() as u32);
        self.mass_g = self.mass_g.saturating_add(count.saturating_mul(each_g));
        self.typical |= known.from == MassFrom::Typical;
        for (piece, why) in known.refused() {
            if self.refused.iter().all(|(word, _)| *word != piece.word) {
                self.refused.push((piece.word.clone(), why));
            }
        }
        let scale = known.scale();
        for piece in known.going() {
            let grams = f64::from(piece.mass_dg) / 10.0 * scale;
            self.heaviest_g = self.heaviest_g.max(grams.ceil() as u32);
            let most_c = piece.most_c;
            self.most_c = Some(self.most_c.map_or(most_c, |least| least.min(most_c)));
            self.heat(
                Part::Pieces,
                grams * f64::from(count),
                f64::from(piece.material.specific_heat()),
            );
        }
        self.heat(Part::Pouches, pouch_g * f64::from(count), specific::PAPER);
    }

    /// Masses of one part with one specific heat are one mass.
    fn heat(&mut self, part: Part, grams: f64, specific_heat: f64) {
        let same = |heated: &&mut Heated| {
            heated.part == part && (heated.specific_heat - specific_heat).abs() < 1e-9
        };
        match self.heated.iter_mut().find(same) {
            Some(heated) => heated.grams += grams,
            None if grams > 0.0 => self.heated.push(Heated { part, grams, specific_heat }),
            None => {}
        }
    }

    /// One kilogram of the same mix. The loads of a year together are no load that a balance could be
    /// worked out for.
    pub fn one_kilogram(mut self) -> Self {
        let all_g: f64 = self.heated.iter().map(|heated| heated.grams).sum();
        if all_g > 0.0 {
            self.heated.iter_mut().for_each(|heated| heated.grams *= 1_000.0 / all_g);
            self.mass_g = 1_000;
        }
        self
    }

    /// The load in a machine: with its trays or its rack, in a programme.
    pub fn charge(&self, inside: &Inside, figures: &ProgrammeFigures, dried: DriedFor) -> Charge {
        let mut heated = self.heated.clone();
        let trays_g = match (inside.pattern, &inside.rack) {
            (Pattern::OnEdge, Some(rack)) => rack.mass_g,
            _ => inside.trays.iter().map(|tray| tray.mass_g).sum(),
        };
        let specific_heat = specific::STEEL_304;
        heated.push(Heated { part: Part::Trays, grams: f64::from(trays_g), specific_heat });
        Charge {
            heated,
            from_c: ROOM_C,
            steam_c: f64::from(figures.set_c),
            drying: Drying { minutes: dried.minutes, vacuum_kpa: dried.vacuum_kpa },
        }
    }
}

impl Kind {
    /// Grams of the salon's own for each gram of typical pieces.
    fn scale(&self) -> f64 {
        let typical_dg: u32 = self.going().map(|piece| piece.mass_dg).sum();
        if typical_dg == 0 { 1.0 } else { f64::from(self.set_g) * 10.0 / f64::from(typical_dg) }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use cycle::balance::{Unknowns, Usual};
    use cycle::limit::Prior;
    use load::catalogue;

    /// Four hundred loads of 1.2 kg are 480 kg, more than a balance believes of one load; their mix is
    /// learnt from all the same.
    #[test]
    fn a_year_of_loads_is_still_a_mix() {
        let pieces = Heated { part: Part::Pieces, grams: 480_000.0, specific_heat: 480.0 };
        let empty = Kinds { kinds: Vec::new(), sizes: Vec::new() };
        let mut load = Load::of_counts(&[], &empty);
        (load.mass_g, load.heated) = (480_000, vec![pieces]);
        let machine = measure::MachineId::from_bytes([1; 16]);
        let cycle = logbook::typical::machine(machine).cycles.pop().unwrap();
        let figures = logbook::typical::programme(machine, &cycle);
        let charge =
            |load: &Load| load.charge(&catalogue::inside(), &figures, DriedFor::set(&figures));
        assert!(Usual::of(&charge(&load)).is_err());
        let mix = load.one_kilogram();
        assert_eq!(mix.mass_g, 1_000);
        assert!(Usual::of(&charge(&mix)).is_ok());
        assert!(Prior::of(&charge(&mix), &Unknowns::TYPICAL).is_ok());
    }
}
