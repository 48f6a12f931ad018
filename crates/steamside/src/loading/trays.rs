//! A load on the trays of a machine.

use super::kinds::Kinds;
use load::chamber::Inside;
use load::pack::{Bag, Packing, STEPS, pack};
use load::{SetKind, ShelfCode};
use logbook::view::Pouch;

/// A set that wants to go in.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Item {
    /// Its kind.
    pub kind: SetKind,
    /// In a pouch; otherwise open.
    pub pouched: bool,
    /// Its code, where it has one.
    pub code: Option<ShelfCode>,
}

impl Item {
    /// A pouch of the book.
    pub fn of(pouch: &Pouch) -> Self {
        Self { kind: pouch.kind.clone(), pouched: pouch.pouched, code: Some(pouch.code) }
    }
}

/// A load on its trays.
#[derive(Debug, Clone)]
pub struct Laid {
    /// The pouches, as they were handed to the packing: which item each belongs to.
    pub of: Vec<usize>,
    /// Where they lie.
    pub packing: Packing,
    /// Items of which nobody knows how large they are: no pouch takes their pieces.
    pub unknown: Vec<usize>,
}

impl Laid {
    /// Items that did not go in whole.
    pub fn left(&self) -> Vec<usize> {
        let mut left: Vec<usize> =
            self.packing.left.iter().filter_map(|bag| self.of.get(*bag).copied()).collect();
        left.dedup();
        left
    }

    /// Does all of it go in?
    pub fn fits(&self) -> bool {
        self.packing.left.is_empty() && self.unknown.is_empty()
    }
}

/// Lays a load on the trays; `most_g` is what the run may weigh.
pub fn lay(items: &[Item], kinds: &Kinds, inside: &Inside, most_g: Option<u32>) -> Laid {
    let mut bags: Vec<Bag> = Vec::new();
    let (mut of, mut unknown) = (Vec::new(), Vec::new());
    for (number, item) in items.iter().enumerate() {
        let kind = kinds.get(&item.kind);
        let these: Vec<Bag> = match kind {
            Some(kind) if item.pouched => kind.bags.clone(),
            Some(kind) => kind.open.into_iter().collect(),
            None => Vec::new(),
        };
        if these.is_empty() {
            unknown.push(number);
        }
        of.extend(these.iter().map(|_| number));
        bags.extend(these);
    }
    Laid { of, packing: pack(&bags, inside, most_g, STEPS), unknown }
}

/// How many sets of one kind alone go in, at most `up_to`.
pub fn most_of(kind: &SetKind, kinds: &Kinds, inside: &Inside, up_to: u32) -> u32 {
    let item = Item { kind: kind.clone(), pouched: true, code: None };
    let items = vec![item; up_to as usize];
    let laid = lay(&items, kinds, inside, None);
    up_to - laid.left().len() as u32 - laid.unknown.len() as u32
}
