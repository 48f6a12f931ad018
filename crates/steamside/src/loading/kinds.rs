//! A kind of set as it goes into steam: its pieces, its pouch, its mass.

use load::SetKind;
use load::implement::Implement;
use load::pack::Bag;
use load::pouch::{Bagging, PouchSize, bag};
use logbook::book::BookError;
use logbook::view::{View, Weighed};

/// How the mass of a set is known.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum MassFrom {
    /// A full tray on a scale; the place of that fact.
    Scale(u64),
    /// The salon said so; the place of that fact.
    Said(u64),
    /// Typical pieces, nobody measured.
    Typical,
}

/// One kind of set.
#[derive(Debug, Clone)]
pub struct Kind {
    /// Its word.
    pub kind: SetKind,
    /// Every piece of one set.
    pub pieces: Vec<Implement>,
    /// The place of the fact that says what it is made of; `None`: typical.
    pub said: Option<u64>,
    /// Its pouches.
    pub bagging: Bagging,
    /// One set without pouch, grams.
    pub set_g: u32,
    /// How that is known.
    pub from: MassFrom,
    /// Its pouches as they lie on a tray.
    pub bags: Vec<Bag>,
    /// Without a pouch, as it lies open on a tray.
    pub open: Option<Bag>,
}

impl Kind {
    /// Paper and film of one set, grams.
    pub fn pouch_g(&self) -> f64 {
        let bags: u32 = self.bags.iter().map(|bag| bag.mass_g).sum();
        f64::from(bags.saturating_sub(self.set_g))
    }
}

/// What is known of one kind before anything is worked out.
#[derive(Debug, Clone)]
pub struct Described {
    /// Its word.
    pub kind: SetKind,
    /// Every piece of one set.
    pub pieces: Vec<Implement>,
    /// The place of the fact that says so; `None`: typical.
    pub said: Option<u64>,
    /// Its mass in grams as the salon said it, and the place of that fact.
    pub own: Option<(u64, u32)>,
}

/// All kinds of the book, and the sizes of pouches that they are bagged in.
#[derive(Debug, Clone)]
pub struct Kinds {
    /// The kinds.
    pub kinds: Vec<Kind>,
    /// The sizes of pouches.
    pub sizes: Vec<PouchSize>,
}

impl Kinds {
    /// Reads every kind that the book knows, and these besides.
    pub fn read(view: &View<'_>, besides: &[SetKind]) -> Result<Self, BookError> {
        let mut words: Vec<SetKind> = view.kinds()?.into_iter().map(|row| row.kind).collect();
        words.extend(besides.iter().cloned());
        words.sort();
        words.dedup();
        let sizes: Vec<PouchSize> =
            view.pouch_sizes()?.into_iter().map(|setting| setting.value).collect();
        let implements: Vec<Implement> =
            view.implements()?.into_iter().map(|setting| setting.value).collect();
        let mut parts = Vec::new();
        for kind in words {
            let made_of = view.set_of(&kind)?;
            // A piece whose implement is gone is in no set any more.
            let pieces: Vec<Implement> = (made_of.value.iter())
                .filter_map(|(word, count)| {
                    let implement = implements.iter().find(|known| known.word == *word)?;
                    Some(std::iter::repeat_n(implement.clone(), *count as usize))
                })
                .flatten()
                .collect();
            let own = view.kind_figures(&kind)?;
            let own = own.said.map(|seq| (seq, own.value.mass_g));
            parts.push(Described { kind, pieces, said: made_of.said, own });
        }
        Ok(Self::of(parts, &view.trays_weighed()?, sizes))
    }

    /// From what is known of each kind, and the trays that were weighed, the newest first.
    pub fn of(parts: Vec<Described>, weighed: &[Weighed], sizes: Vec<PouchSize>) -> Self {
        let typical: Vec<(SetKind, u32)> = (parts.iter())
            .map(|part| {
                let typical_dg = part.pieces.iter().map(|piece| piece.mass_dg).sum();
                (part.kind.clone(), typical_dg)
            })
            .collect();
        let kinds = parts.into_iter().map(|part| {
            let mass = mass(&part.kind, &typical, weighed, part.own, &sizes);
            Self::kind(part.kind, part.pieces, part.said, mass, &sizes)
        });
        Self { kinds: kinds.collect(), sizes }
    }

    /// The kind with this word.
    pub fn get(&self, kind: &SetKind) -> Option<&Kind> {
        self.kinds.iter().find(|known| known.kind == *kind)
    }

    fn kind(
        kind: SetKind,
        pieces: Vec<Implement>,
        said: Option<u64>,
        (set_g, from): (u32, MassFrom),
        sizes: &[PouchSize],
    ) -> Kind {
        let bagging = bag(&pieces, sizes);
        let typical_dg: u32 = pieces.iter().map(|piece| piece.mass_dg).sum::<u32>().max(1);
        let bags = bagging.pouches.iter().filter_map(|filled| {
            let size = sizes.get(filled.size)?;
            let pieces_dg = filled.mass_dg.saturating_sub(size.mass_dg);
            let share = u64::from(set_g) * u64::from(pieces_dg);
            let own_g = share.div_ceil(u64::from(typical_dg)) as u32;
            Some(Bag {
                width_mm: size.width_mm,
                length_mm: size.length_mm,
                thick_mm: filled.thick_mm.max(1),
                mass_g: own_g + size.mass_dg.div_ceil(10),
            })
        });
        let bags: Vec<Bag> = bags.collect();
        let open = bags.iter().copied().reduce(|a, b| Bag {
            width_mm: a.width_mm.max(b.width_mm),
            length_mm: a.length_mm.max(b.length_mm),
            thick_mm: a.thick_mm.max(b.thick_mm),
            mass_g: set_g,
        });
        let open = open.map(|open| Bag { mass_g: set_g, ..open });
        Kind { kind, pieces, said, bagging, set_g, from, bags, open }
    }
}

/// Mass of one set without its pouch, grams: what was weighed or said last, or else its typical
/// pieces added up.
fn mass(
    kind: &SetKind,
    typical: &[(SetKind, u32)],
    weighed: &[Weighed],
    own: Option<(u64, u32)>,
    sizes: &[PouchSize],
) -> (u32, MassFrom) {
    let typical_dg = |kind: &SetKind| {
        typical.iter().find(|known| known.0 == *kind).map_or(0, |known| u64::from(known.1))
    };
    let scale = weighed.iter().find(|tray| tray.sets.iter().any(|(known, _)| known == kind));
    let scale = scale.and_then(|tray| {
        let all_dg: u64 =
            tray.sets.iter().map(|(known, count)| typical_dg(known) * u64::from(*count)).sum();
        let count: u64 = tray.sets.iter().map(|(_, count)| u64::from(*count)).sum();
        // A pouch of a middling size each; a few grams either way.
        let pouch_dg = sizes.get(sizes.len() / 2).map_or(0, |size| u64::from(size.mass_dg));
        let pouches_dg = if tray.pouched { pouch_dg * count } else { 0 };
        let empty_g = tray.empty_g?;
        let net_dg = (u64::from(tray.grams.checked_sub(empty_g)?) * 10).checked_sub(pouches_dg)?;
        let own_dg = (net_dg * typical_dg(kind)).checked_div(all_dg)?;
        u32::try_from(own_dg.div_ceil(10)).ok().map(|grams| (tray.seq, grams.max(1)))
    });
    match (scale, own) {
        (Some(scale), Some(own)) if own.0 > scale.0 => (own.1, MassFrom::Said(own.0)),
        (Some((seq, grams)), _) => (grams, MassFrom::Scale(seq)),
        (None, Some((seq, grams))) => (grams, MassFrom::Said(seq)),
        (None, None) => (typical_dg(kind).div_ceil(10) as u32, MassFrom::Typical),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use load::catalogue;
    use measure::Instant;

    fn described(word: &str, own: Option<(u64, u32)>) -> Described {
        let kind: SetKind = word.parse().unwrap();
        let all = catalogue::implements();
        let pieces = catalogue::set_of(&kind).into_iter().flat_map(|(word, count)| {
            let found = all.iter().find(|known| known.word == word).unwrap();
            std::iter::repeat_n(found.clone(), count as usize)
        });
        Described { pieces: pieces.collect(), kind, said: None, own }
    }

    fn tray(seq: u64, grams: u32, sets: &[(&str, u32)]) -> Weighed {
        let sets = sets.iter().map(|(kind, count)| (kind.parse().unwrap(), *count)).collect();
        let at = Instant::from_millis(0);
        Weighed { seq, at, grams, empty_g: Some(300), sets, pouched: false }
    }

    /// By hand: a typical manicure set is 70 + 30 + 30 + 20 g. Four of them that weigh 800 g without
    /// the tray are 200 g each. What was said or weighed last holds.
    #[test]
    fn a_tray_on_the_scale_goes_past_typical_figures() {
        let check = |own, weighed: &[Weighed], expected: (u32, MassFrom)| {
            let kinds = Kinds::of(
                vec![described("manicure", own), described("pedicure", None)],
                weighed,
                catalogue::pouch_sizes(),
            );
            let kind = kinds.get(&"manicure".parse().unwrap()).unwrap();
            assert_eq!((kind.set_g, kind.from), expected);
            assert_eq!(kind.bags.len(), 1);
            assert!(kind.bags[0].mass_g > kind.set_g, "the pouch weighs something");
        };
        check(None, &[], (150, MassFrom::Typical));
        check(Some((3, 180)), &[], (180, MassFrom::Said(3)));
        check(None, &[tray(5, 1_100, &[("manicure", 4)])], (200, MassFrom::Scale(5)));
        check(Some((9, 180)), &[tray(5, 1_100, &[("manicure", 4)])], (180, MassFrom::Said(9)));
        check(Some((3, 180)), &[tray(5, 1_100, &[("manicure", 4)])], (200, MassFrom::Scale(5)));
        // Of two kinds together, each has its share by typical mass: 940 g for 4 × 150 + 1 × 340.
        let two = tray(6, 1_240, &[("manicure", 4), ("pedicure", 1)]);
        let both = described("pedicure", None);
        assert_eq!(both.pieces.iter().map(|piece| piece.mass_dg).sum::<u32>(), 3_200);
        // 940 × 150 / 920 = 153.3, rounded up.
        check(None, &[two], (154, MassFrom::Scale(6)));
    }
}
