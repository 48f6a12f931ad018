//! A kind of set as it goes into steam: its pieces, its pouch, its mass.

use load::SetKind;
use load::implement::Implement;
use load::pack::Bag;
use load::pouch::{Bagging, PouchSize, Refused, bag};
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
    /// The pieces that go in.
    pub fn going(&self) -> impl Iterator<Item = &Implement> {
        let refused = |at: &usize| self.bagging.refused.iter().any(|(piece, _)| piece == at);
        self.pieces.iter().enumerate().filter(move |(at, _)| !refused(at)).map(|(_, piece)| piece)
    }

    /// The pieces that must not, with the reason.
    pub fn refused(&self) -> impl Iterator<Item = (&Implement, Refused)> {
        self.bagging.refused.iter().filter_map(|(at, why)| Some((self.pieces.get(*at)?, *why)))
    }

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
        let bagged: Vec<(Described, Bagging)> = (parts.into_iter())
            .map(|part| {
                let bagging = bag(&part.pieces, &sizes);
                (part, bagging)
            })
            .collect();
        let typical: Vec<Typical> =
            bagged.iter().map(|(part, bagging)| Typical::of(part, bagging, &sizes)).collect();
        let kinds = bagged.into_iter().zip(&typical).map(|((part, bagging), own)| {
            let mass = mass(own, &typical, weighed, part.own);
            Kind::of(part, bagging, mass, (own.pieces_dg, &sizes))
        });
        Self { kinds: kinds.collect(), sizes }
    }

    /// The kind with this word.
    pub fn get(&self, kind: &SetKind) -> Option<&Kind> {
        self.kinds.iter().find(|known| known.kind == *kind)
    }
}

/// One set by its typical pieces.
struct Typical {
    kind: SetKind,
    /// The pieces that go in, tenths of a gram.
    pieces_dg: u32,
    /// Its pouches, tenths of a gram.
    pouches_dg: u32,
}

impl Typical {
    fn of(part: &Described, bagging: &Bagging, sizes: &[PouchSize]) -> Self {
        let sizes_of = bagging.pouches.iter().filter_map(|filled| sizes.get(filled.size));
        let pouches_dg = sizes_of.map(|size| size.mass_dg).sum();
        let refused = |at: usize| bagging.refused.iter().any(|(piece, _)| *piece == at);
        let going = part.pieces.iter().enumerate().filter(|(at, _)| !refused(*at));
        let pieces_dg = going.map(|(_, piece)| piece.mass_dg).sum();
        Self { kind: part.kind.clone(), pieces_dg, pouches_dg }
    }
}

impl Kind {
    fn of(
        part: Described,
        bagging: Bagging,
        (set_g, from): (u32, MassFrom),
        (typical_dg, sizes): (u32, &[PouchSize]),
    ) -> Self {
        let bags = bagging.pouches.iter().filter_map(|filled| {
            let size = sizes.get(filled.size)?;
            let pieces_dg = filled.mass_dg.saturating_sub(size.mass_dg);
            let share = u64::from(set_g) * u64::from(pieces_dg);
            let own_g = share.div_ceil(u64::from(typical_dg.max(1)));
            Some(Bag {
                width_mm: size.width_mm,
                length_mm: size.length_mm,
                thick_mm: filled.thick_mm.max(1),
                mass_g: u32::try_from(own_g).unwrap_or(u32::MAX / 2) + size.mass_dg.div_ceil(10),
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
        let Described { kind, pieces, said, .. } = part;
        Self { kind, pieces, said, bagging, set_g, from, bags, open }
    }
}

/// What a weighed tray says of one set of a kind, grams: its share by typical mass. `None` where it
/// says nothing of it.
fn weighed_g(tray: &Weighed, kind: &Typical, all: &[Typical]) -> Option<u32> {
    tray.sets.iter().find(|(known, _)| *known == kind.kind)?;
    let sum = |of: fn(&Typical) -> u32| -> Option<u64> {
        tray.sets.iter().try_fold(0, |sum, (known, count)| {
            let typical = all.iter().find(|typical| typical.kind == *known)?;
            Some(sum + u64::from(of(typical)) * u64::from(*count))
        })
    };
    let pouches_dg = if tray.pouched { sum(|typical| typical.pouches_dg)? } else { 0 };
    let net_g = u64::from(tray.grams.checked_sub(tray.empty_g?)?);
    let net_dg = (net_g * 10).checked_sub(pouches_dg)?;
    let own_dg = (net_dg * u64::from(kind.pieces_dg)).checked_div(sum(|t| t.pieces_dg)?)?;
    u32::try_from(own_dg.div_ceil(10)).ok().filter(|grams| *grams > 0)
}

/// Mass of one set without its pouch, grams: what was weighed or said last, or else its typical
/// pieces added up.
fn mass(
    kind: &Typical,
    all: &[Typical],
    weighed: &[Weighed],
    own: Option<(u64, u32)>,
) -> (u32, MassFrom) {
    let scale = weighed.iter().find_map(|tray| Some((tray.seq, weighed_g(tray, kind, all)?)));
    match (scale, own) {
        (Some(scale), Some(own)) if own.0 > scale.0 => (own.1, MassFrom::Said(own.0)),
        (Some((seq, grams)), _) => (grams, MassFrom::Scale(seq)),
        (None, Some((seq, grams))) => (grams, MassFrom::Said(seq)),
        (None, None) => (kind.pieces_dg.div_ceil(10), MassFrom::Typical),
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
