//! Bits into holders: they are not laid by themselves then (a bit basket is common practice, no
//! source).

use super::{MOST_HELD, Piece};
use crate::implement::{Form, Implement, Metal};
use std::cmp::Reverse;
use std::collections::BTreeMap;

/// What is laid, and which piece is held by which, sorted by piece. `wanted` is in its sorted order,
/// so that the same set in any order is held alike.
pub(super) fn hold(
    mut wanted: Vec<Piece>,
    pieces: &[Implement],
) -> (Vec<Piece>, Vec<(usize, usize)>) {
    let of_form = |form: Form| {
        let all = wanted.iter().enumerate();
        let these = all.filter(|(_, piece)| pieces[piece.at].form == form);
        these.map(|(i, _)| i).collect::<Vec<usize>>()
    };
    let (holders, bits) = (of_form(Form::Holder), of_form(Form::Bit));
    let (mut groups, mut free): (BTreeMap<Metal, Vec<usize>>, Vec<usize>) = Default::default();
    for bit in bits {
        match wanted[bit].metal {
            Some(metal) => groups.entry(metal).or_default().push(bit),
            None => free.push(bit),
        }
    }
    let mut groups: Vec<(Metal, Vec<usize>)> = groups.into_iter().collect();
    // The most bits first; what has no metal goes where there is room left.
    groups.sort_by_key(|(metal, bits)| (Reverse(bits.len()), *metal));
    let mut places: Vec<(usize, Vec<usize>)> = holders.iter().map(|&i| (i, Vec::new())).collect();
    let takes = |holder: usize, bit: usize| {
        let sides = |i: usize| {
            let piece = &pieces[wanted[i].at];
            (piece.length_mm.min(piece.width_mm), piece.length_mm.max(piece.width_mm))
        };
        let (holder, bit) = (sides(holder), sides(bit));
        bit.0 <= holder.0 && bit.1 <= holder.1
    };
    let mut metals: BTreeMap<usize, Metal> = BTreeMap::new();
    let bits = groups.iter().flat_map(|(metal, bits)| bits.iter().map(|&bit| (bit, Some(*metal))));
    for (bit, metal) in bits.chain(free.iter().map(|&bit| (bit, None))) {
        let room = places.iter_mut().find(|(holder, inside)| {
            let own = metals.get(holder).copied();
            let apart = metal.is_some_and(|metal| own.is_some_and(|own| !own.may_touch(metal)));
            inside.len() < MOST_HELD && !apart && takes(*holder, bit)
        });
        if let Some((holder, inside)) = room {
            inside.push(bit);
            if let Some(metal) = metal {
                metals.insert(*holder, metal);
            }
        }
    }
    for (holder, metal) in metals {
        wanted[holder].metal = Some(metal);
    }
    let pairs = |(holder, bits): &(usize, Vec<usize>)| {
        let holder = *holder;
        bits.iter().map(move |&bit| (bit, holder)).collect::<Vec<_>>()
    };
    let inside: BTreeMap<usize, usize> = places.iter().flat_map(pairs).collect();
    let mut held: Vec<(usize, usize)> =
        inside.iter().map(|(&bit, &holder)| (wanted[bit].at, wanted[holder].at)).collect();
    held.sort_unstable();
    let laid = wanted.into_iter().enumerate().filter(|(i, _)| !inside.contains_key(i));
    (laid.map(|(_, piece)| piece).collect(), held)
}
