//! Texts below each other in a column: the same share of their size for all, as large as fits.

use crate::fit::{BASE, LINE, broken, width};
use crate::lettering::factor;
use crate::painter::Painter;
use crate::refuse::Unprintable;
use crate::svg::{Page, Place, Weight};
use load::picture::Role;

/// Least size of letters on a page that hangs on a wall, mm; a little more than on a label, which
/// is held in the hand (assumption).
const LEAST: f64 = 2.0;

/// Hatch beside a word, mm.
const SAMPLE: (f64, f64) = (8.0, 4.4);

/// One text of a column.
#[derive(Debug, Clone)]
pub(crate) struct Entry<'a> {
    pub(crate) text: &'a str,
    pub(crate) weight: Weight,
    /// Size where there is room, mm.
    pub(crate) size: f64,
    /// Free above it, mm.
    pub(crate) above: f64,
    /// A hatch that stands before it.
    pub(crate) sample: Option<Role>,
}

/// A text in its place.
#[derive(Debug, Clone)]
pub(crate) struct Set {
    lines: Vec<String>,
    weight: Weight,
    size: f64,
    at: (f64, f64),
    sample: Option<(Role, Place)>,
}

/// Sets the texts from the top of the place.
///
/// # Errors
/// [`Unprintable::TooLong`] with the longest text when not even the smallest letters fit.
pub(crate) fn column(place: Place, entries: &[Entry<'_>]) -> Result<Vec<Set>, Unprintable> {
    let longest = || entries.iter().map(|entry| entry.text).max_by_key(|text| text.len());
    let too_long = || Unprintable::TooLong { text: longest().unwrap_or_default().to_owned() };
    (0..=15)
        .find_map(|step| at_share(place, entries, 1.0 - 0.03 * f64::from(step)))
        .ok_or_else(too_long)
}

fn at_share(place: Place, entries: &[Entry<'_>], share: f64) -> Option<Vec<Set>> {
    let (mut sets, mut y) = (Vec::with_capacity(entries.len()), place.y);
    for (number, entry) in entries.iter().enumerate() {
        let size = (entry.size * share).max(LEAST);
        y += if number == 0 { 0.0 } else { entry.above * share };
        let before = if entry.sample.is_some() { SAMPLE.0 + 1.5 } else { 0.0 };
        let room = place.width - before;
        let lines = broken(entry.text, room / size / factor(entry.weight));
        let long = lines.iter().map(|line| width(line)).fold(0.0, f64::max);
        let text_high = lines.len() as f64 * LINE * size;
        let high = if before > 0.0 { text_high.max(SAMPLE.1) } else { text_high };
        if long * size * factor(entry.weight) > room || y + high > place.y + place.height {
            return None;
        }
        let sample = Place { x: place.x, y, width: SAMPLE.0, height: SAMPLE.1 };
        sets.push(Set {
            lines,
            weight: entry.weight,
            size,
            at: (place.x + before, y + (high - text_high) / 2.0),
            sample: entry.sample.map(|role| (role, sample)),
        });
        y += high;
    }
    Some(sets)
}

impl Set {
    /// Moved into the middle (a half) or to the right end (one) of a column of this width.
    pub(crate) fn towards(mut self, share: f64, column: f64) -> Self {
        let long = self.lines.iter().map(|line| width(line)).fold(0.0, f64::max);
        self.at.0 += (column - long * self.size * factor(self.weight)) * share;
        self
    }

    pub(crate) fn draw(&self, page: &mut Page, painter: &Painter<'_>) {
        if let Some((role, place)) = self.sample {
            painter.sample(page, role, place);
        }
        for (number, line) in self.lines.iter().enumerate() {
            let base = self.at.1 + self.size * (BASE + LINE * number as f64);
            page.ink((self.at.0, base), self.size, self.weight, line);
        }
    }
}
