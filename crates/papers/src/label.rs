//! One label: where its parts lie, and drawing them.

use crate::fit::{BASE, LINE, Sizes, fit, width};
use crate::payload::label_payload;
use crate::refuse::{Unprintable, plain};
use crate::sheet::{QUIET, SIDE, Sheet};
use crate::sheets::Words;
use crate::svg::{Page, Place, Weight, mm};
use fast_qr::{ECL, Mode, QRBuilder, QRCode, Version};
use load::ShelfCode;
use measure::PouchId;
use std::fmt::Write;

/// What one label says. Nothing on it tells of a client.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Label {
    /// The pouch; its id goes into the code.
    pub pouch: PouchId,
    /// The four symbols that name it on the shelf.
    pub code: ShelfCode,
    /// The kind of set, in the reader's language.
    pub kind: String,
    /// The one sentence, in the reader's language, its month in letters: 03/04 is two days in two
    /// countries. A no-break space keeps day and month in one line.
    pub sentence: String,
    /// Where machine and run stand.
    pub run: Run,
}

/// Where the machine and the run stand on a label.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Run {
    /// The sentence names them.
    InTheSentence,
    /// Nobody knows them yet: two lines are left to write on.
    ToWriteIn,
}

/// Height of a capital over the size of the letters: 0.729 in DejaVu Sans, 0.688 in
/// Liberation Sans, 0.714 in Noto Sans (from memory); the lowest counts for what a person sees.
#[cfg(test)]
const CAPITAL: f64 = 0.68;

/// Height of a capital in the tallest face, and how far its J reaches below the line.
const TALLEST: f64 = 0.73;
const TAIL: f64 = 0.22;

/// The widest code, two digits and two W in DejaVu Sans Bold 2.37 (0.696 and 1.103, read from
/// its `hmtx` table), over the letter size.
const WIDEST_CODE: f64 = 2.0 * 0.696 + 2.0 * 1.103;

/// Least size of letters on a label, mm; 1.8 mm is about 5 points, the smallest print that food
/// packs may carry in the EU is 0.9 mm of x-height on small ones (from memory), which is this.
const LEAST_TEXT: f64 = 1.8;

/// Where the parts of a label lie.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Layout {
    pub(crate) qr: Place,
    pub(crate) kind: Place,
    pub(crate) code: Place,
    pub(crate) sentence: Place,
    pub(crate) write_in: Place,
    narrow: bool,
}

impl Layout {
    /// For a label in this place. The code for a camera lies right; a label less than twice as
    /// wide as that code has its four symbols above instead of beside it.
    pub(crate) fn new(label: Place, sheet: &Sheet) -> Self {
        let side = SIDE as f64 * sheet.module();
        if label.width < 2.0 * side { Self::narrow(label, side) } else { Self::wide(label, side) }
    }

    fn wide(label: Place, side: f64) -> Self {
        const MARGIN: f64 = 2.0;
        let x = label.x + MARGIN;
        // The quiet zone is the gap, so the text may come up to it.
        let width = label.width - side - 2.0 * MARGIN;
        let room = label.height - 2.0 * MARGIN;
        let row = |from: f64, share: f64| Place {
            x,
            y: label.y + MARGIN + from * room,
            width,
            height: share * room,
        };
        Self {
            qr: Place {
                x: label.x + label.width - side - MARGIN / 2.0,
                y: label.y + (label.height - side) / 2.0,
                width: side,
                height: side,
            },
            kind: row(0.0, 0.17),
            code: row(0.17, 0.41),
            sentence: row(0.58, 0.24),
            write_in: row(0.82, 0.18),
            narrow: false,
        }
    }

    fn narrow(label: Place, side: f64) -> Self {
        const MARGIN: f64 = 1.0;
        const KIND: f64 = 2.3;
        const END: f64 = 0.4;
        let x = label.x + MARGIN;
        let inner = label.width - 2.0 * MARGIN;
        // The quiet zone is itself a margin, so the code may end at the label's edge.
        let code = (label.height - side - MARGIN - KIND).min(5.4);
        // Beside the code for a camera the text begins at once under the kind of set.
        let top = label.y + MARGIN + code + KIND;
        let room = label.y + label.height - END - top;
        let beside = |from: f64, share: f64| Place {
            x,
            y: top + from * room,
            width: label.width - side - MARGIN,
            height: share * room,
        };
        Self {
            qr: Place {
                x: label.x + label.width - side,
                y: label.y + label.height - side,
                width: side,
                height: side,
            },
            code: Place { x, y: label.y + MARGIN, width: inner, height: code },
            kind: Place { x, y: top - KIND, width: inner, height: KIND },
            sentence: beside(0.0, 0.82),
            write_in: beside(0.82, 0.18),
            narrow: true,
        }
    }

    /// Size of the letters of the four symbols: as large as the widest code allows.
    pub(crate) fn symbols(&self) -> f64 {
        (self.code.width / WIDEST_CODE).min(self.code.height / (TALLEST + TAIL))
    }
}

impl Label {
    /// Draws the label in its place.
    pub(crate) fn draw(
        &self,
        page: &mut Page,
        place: Place,
        sheet: &Sheet,
        words: &Words<'_>,
    ) -> Result<(), Unprintable> {
        let layout = Layout::new(place, sheet);
        page.shape((layout.qr.x, layout.qr.y), &self.modules(sheet.module())?);
        draw_text(page, layout.kind, plain(&self.kind)?, 3.0)?;
        let size = layout.symbols();
        let base = layout.code.y + size * TALLEST;
        let code = self.code.to_string();
        page.text((layout.code.x, base), size, Weight::Bold, &code);
        let mut sentence = layout.sentence;
        match self.run {
            Run::InTheSentence => sentence.height += layout.write_in.height,
            Run::ToWriteIn => write_in(page, &layout, words)?,
        }
        draw_text(page, sentence, plain(&self.sentence)?, 3.2)
    }

    /// The code as one path.
    fn modules(&self, module: f64) -> Result<String, Unprintable> {
        let code = QRBuilder::new(label_payload(self.pouch))
            .mode(Mode::Alphanumeric)
            .version(Version::V02)
            .ecl(ECL::M)
            .build()
            .map_err(|why| Unprintable::Code(why.to_string()))?;
        modules(&code, module)
    }
}

/// The dark modules of a code as one path, a row of touching ones drawn in one go.
pub fn modules(code: &QRCode, module: f64) -> Result<String, Unprintable> {
    let mut path = String::new();
    for y in 0..code.size {
        let mut x = 0;
        while x < code.size {
            let dark = (x..code.size).take_while(|&at| code[y][at].value()).count();
            if dark > 0 {
                let at = |modules: usize| mm((modules + QUIET) as f64 * module);
                let (long, high) = (mm(dark as f64 * module), mm(module));
                write!(path, "M{} {}h{long}v{high}h-{long}z", at(x), at(y))
                    .map_err(|why| Unprintable::Code(why.to_string()))?;
            }
            x += dark.max(1);
        }
    }
    Ok(path)
}

/// Two words with a line after each, for a pen.
fn write_in(page: &mut Page, layout: &Layout, words: &Words<'_>) -> Result<(), Unprintable> {
    let (machine, run) = if layout.narrow {
        (words.machine_short, words.run_short)
    } else {
        (words.machine, words.run)
    };
    let Place { x, y, width: room, height } = layout.write_in;
    let half = room / 2.0;
    let most = if layout.narrow { LEAST_TEXT } else { 2.6 };
    for (at, word) in [(x, plain(machine)?), (x + half, plain(run)?)] {
        // At least two fifths of the half are left for the pen.
        let sizes = Sizes { most, least: LEAST_TEXT };
        let size = fit(word, (half * 0.6, sizes.most * LINE), sizes)?.size;
        let base = y + height - 0.6;
        page.text((at, base), size, Weight::Regular, word);
        let from = width(word) * size + 0.3;
        page.rule(at + from, base, half - from - 0.5);
    }
    Ok(())
}

/// Sets a text into its place, from the top, as large as fits up to `most`.
fn draw_text(page: &mut Page, place: Place, text: &str, most: f64) -> Result<(), Unprintable> {
    let sizes = Sizes { most, least: LEAST_TEXT };
    let fitted = fit(text, (place.width, place.height), sizes)?;
    for (number, line) in fitted.lines.iter().enumerate() {
        let base = place.y + fitted.size * (BASE + LINE * number as f64);
        page.text((place.x, base), fitted.size, Weight::Regular, line);
    }
    Ok(())
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)] // tests may stop at once
    use super::*;
    use crate::sheet::DotsPerInch;

    fn sheets() -> Vec<Sheet> {
        let mut all = vec![Sheet::LETTER_30, Sheet::A4_21, Sheet::ROLL_25];
        for dpi in [203, 300, 600] {
            let dots = DotsPerInch::new(dpi).unwrap();
            all.extend(
                [Sheet::LETTER_30, Sheet::A4_21, Sheet::ROLL_25].map(|s| s.for_printer(dots)),
            );
        }
        all
    }

    #[test]
    fn the_parts_lie_on_the_label_and_not_on_each_other() {
        for sheet in sheets() {
            let label = sheet.place(sheet.labels() - 1);
            let l = Layout::new(label, &sheet);
            let parts = [l.qr, l.kind, l.code, l.sentence, l.write_in];
            for (number, part) in parts.iter().enumerate() {
                assert!(label.holds(part), "{sheet:?} part {number}: {part:?}");
                for other in &parts[number + 1..] {
                    let apart = part.x + part.width <= other.x + 0.001
                        || other.x + other.width <= part.x + 0.001
                        || part.y + part.height <= other.y + 0.001
                        || other.y + other.height <= part.y + 0.001;
                    assert!(apart, "{sheet:?}: {part:?} on {other:?}");
                }
            }
        }
    }

    /// Ours: read across a room from the sheet labels, at arm's length from the roll label.
    #[test]
    fn the_symbols_are_as_large_as_stated() {
        for sheet in sheets() {
            let capital = Layout::new(sheet.place(0), &sheet).symbols() * CAPITAL;
            let stated = if sheet.labels() > 1 { 6.2 } else { 3.7 };
            assert!(capital >= stated, "{sheet:?}: {capital}");
        }
    }
}
