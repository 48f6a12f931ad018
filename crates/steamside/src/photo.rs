//! A photo of a pouch, read here where the phone's browser cannot read codes itself.
//!
//! The picture is decoded to grey, looked at from coarse to fine, and let go: it is never written
//! anywhere. Whatever is sent gets an answer in bounded work (12 million dots of noise took 1.5 s in an unoptimised build) and memory: too many bytes or dots are
//! refused before the dots are unpacked.

mod grey;

use grey::Grey;
use measure::PouchId;
use std::cell::Cell;
use std::collections::BTreeSet;
use std::panic::UnwindSafe;

/// Bytes of a photo that are read at most. Phones write a fifth to a third of a byte a dot in
/// JPEG (from memory); this leaves room for a busy picture and for PNG.
pub const LARGEST: usize = 16 * 1024 * 1024;
/// Dots of a picture that are unpacked at most: 24 million and some, the size of a phone's common
/// large setting (assumption).
const MOST_DOTS: usize = 26_000_000;
/// The longer side at which looking begins. A pouch that fills the picture is read there already,
/// and the grain of a picture taken in the dark has been averaged away.
const COARSE: usize = 500;
/// The longer side beyond which nothing is looked at: a code that needs more is too far away, and
/// the finder takes a minute over the bare grain of a picture twice as large (tried once).
const FINE: usize = 2_050;

/// Why a photo names no pouch.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum NotRead {
    /// Neither JPEG nor PNG, or broken.
    NoPicture,
    /// More bytes or dots than are unpacked here.
    TooLarge,
    /// No code was found in it.
    NoCode,
    /// A code, but none of a pouch label.
    OtherCode,
    /// Codes of more than one pouch: nobody guesses which.
    Several,
}

impl NotRead {
    /// All of them, with the word that stands for each in an address.
    pub const WORDS: [(Self, &'static str); 5] = [
        (Self::NoPicture, "no-picture"),
        (Self::TooLarge, "too-large"),
        (Self::NoCode, "no-code"),
        (Self::OtherCode, "other-code"),
        (Self::Several, "several"),
    ];

    /// The word for an address.
    pub fn word(self) -> &'static str {
        Self::WORDS.iter().find(|(known, _)| *known == self).map_or("no-picture", |(_, word)| word)
    }

    /// The reason that a word stands for.
    pub fn from_word(word: &str) -> Option<Self> {
        Self::WORDS.iter().find(|(_, known)| *known == word).map(|(reason, _)| *reason)
    }
}

thread_local! {
    /// This thread does work of other people's whose faults are answered and not reported.
    static QUIET: Cell<bool> = const { Cell::new(false) };
}

/// Keeps faults that [`pouch_in`] answers off the standard error; all others are told as ever. Once,
/// at the start of the program.
pub fn quieten() {
    let told = std::panic::take_hook();
    std::panic::set_hook(Box::new(move |fault| {
        if !QUIET.get() {
            told(fault);
        }
    }));
}

/// Work whose fault ends only itself; `None`: it had one.
fn contained<T>(work: impl FnOnce() -> T + UnwindSafe) -> Option<T> {
    QUIET.set(true);
    let done = std::panic::catch_unwind(work);
    QUIET.set(false);
    done.ok()
}

/// The one pouch whose label is in the picture.
///
/// # Errors
/// [`NotRead`] for everything else; bytes of any kind get an answer.
pub fn pouch_in(bytes: &[u8]) -> Result<PouchId, NotRead> {
    if bytes.len() > LARGEST {
        return Err(NotRead::TooLarge);
    }
    // A fault in a decoder of other people ends its own work and nothing else.
    let picture = contained(|| grey::unpack(bytes, MOST_DOTS));
    find(picture.unwrap_or(Err(NotRead::NoPicture))?)
}

/// From coarse to fine, and no further than the first look that finds one of our labels.
fn find(picture: Grey) -> Result<PouchId, NotRead> {
    let mut looks = vec![picture];
    while let Some(last) = looks.last().filter(|last| last.longer_side() > COARSE) {
        let half = last.halved();
        looks.push(half);
    }
    let mut other = false;
    for look in looks.iter().rev().filter(|look| look.longer_side() <= FINE && !look.mere_grain()) {
        let texts = codes(look);
        let ours: BTreeSet<PouchId> =
            texts.iter().filter_map(|text| papers::read_payload(text).ok()).collect();
        let mut ours = ours.into_iter();
        match (ours.next(), ours.next()) {
            (Some(pouch), None) => return Ok(pouch),
            (Some(_), Some(_)) => return Err(NotRead::Several),
            _ => other |= !texts.is_empty(),
        }
    }
    Err(if other { NotRead::OtherCode } else { NotRead::NoCode })
}

/// Every code in the picture that can be read, as text.
///
/// The finder stops on an assertion where three spots look like the corners of a code and lie badly
/// (found by the tests with spoilt pictures); such a look finds nothing, and the next one goes on.
fn codes(look: &Grey) -> Vec<String> {
    let found = contained(|| {
        let (width, height) = (look.width(), look.height());
        let mut image =
            rqrr::PreparedImage::prepare_from_greyscale(width, height, |x, y| look.at(x, y));
        let grids = image.detect_grids();
        grids.iter().filter_map(|grid| grid.decode().ok()).map(|(_, text)| text).collect()
    });
    found.unwrap_or_default()
}

#[cfg(test)]
mod tests;
